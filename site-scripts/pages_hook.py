"""MkDocs hook: a fenced block in a page becomes a worked example with its live form.

```question            ```laws         ```questions      ```data-sheet      ```drawn        (and ```formulas, alone)
coulomb.force          coulomb         coulomb           ```                coulomb.force seed=3 level=2
Q1 = +8 nC             ```             ```                                  ```
find = r
```

A question's own page (see chapters.py) gets its title, its block where none stands, and the ways on from here.

The build runs the same calc code as the page, so the example can be read with scripts off. A wrong
block stops the build with its file, line and what to change. First mentions of glossary terms
(docs/glossary.md, one heading each) are linked.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Callable
from functools import cache
from html import escape
from pathlib import Path
from typing import Any

from mkdocs.exceptions import PluginError
from mkdocs.structure.files import Files
from mkdocs.structure.pages import Page

import licences
from calc import topics
from calc.__main__ import entries
from calc.figures import Figure
from calc.language.expressions import equation
from calc.language.printing import counted, exact
from calc.language.symbols import symbol
from calc.language.units import parse_unit
from calc.model.answers import WorkedAnswer
from calc.model.constants import SHEET, Settings
from calc.model.data_sheet import forms
from calc.model.questions import Question, Refusal, Topic
from calc.practice.drawing import draw
from calc.renderings import form, html, paper_form, svg
from calc.renderings import practice as practice_html
from calc.working.reading import Refusals, read
from calc.working.working import work
from chapters import DOCS, Chapter, Entry, chapters, entry_at, whole_questions_using
from fences import BlockError, find_blocks
from kept_results import Kept
from page_scripts import bundle_of
from toolbox import SCRIPTS, digest

_SPOT = re.compile(r'<div data-block="(\d+)"></div>')
# What the search passes over is put in after it has read the page, which takes it a while.
_NOT_SEARCHED = re.compile(r"<[^>]* data-search-exclude[ >]")
_kept: Kept[str] | None = None


def on_files(files: Files, **_: object) -> Files:
    """Find the blocks that the last build made of the same code, styles and chapters."""
    global _kept
    order = [
        (chapter.address, chapter.title, chapter.about, [(e.page, e.when, e.was) for e in chapter.entries])
        for chapter in chapters()
    ]
    _kept = Kept(
        "blocks", digest([Path(topics.__file__).parents[1], SCRIPTS, DOCS / "assets"], f"{sys.version}{order}")
    )
    return files


def on_post_build(**_: object) -> None:
    """Keep the blocks of this build."""
    if _kept:
        _kept.write()


def _built(kind: str, lines: list[str], home: str) -> str:
    """The HTML of a block; one that was built before with the same lines is not built again."""
    if not _kept:
        return BLOCKS[kind](lines, home)
    return _kept.get("\n".join([kind, home, *lines]), lambda: BLOCKS[kind](lines, home))


def on_page_markdown(markdown: str, page: Page, **_: object) -> str:
    """Build every block of the page; leave a marker in its place until Markdown has run."""
    here = entry_at(page.file.src_uri.removesuffix(".md"))
    home = "../" * page.file.src_uri.count("/")
    lines = markdown.split("\n")
    text: list[str] = []
    built: list[str] = []
    keys: set[str] = set()
    kinds: set[str] = set()
    done = at = 0
    try:
        for block in find_blocks(markdown, BLOCKS):
            at = block.start
            if block.kind == "question" and (key := block.body[0].strip() if block.body else ""):
                if key in keys:
                    raise BlockError(f"{key} stands twice on this page; keep one of its blocks.")
                keys.add(key)
            text += [*lines[done:at], "", f'<div data-block="{len(built)}"></div>', ""]
            built.append(_built(block.kind, [line for line in block.body if line.strip()], home))
            kinds.add(block.kind)
            done = block.end
        if here and keys - {here[1].key}:
            raise BlockError(f"this page is for {here[1].key}; give each question a file of its own.")
    except BlockError as error:
        whole = page.file.content_string
        # What MkDocs has taken off the page: its front matter, and empty lines after that.
        front = whole.removesuffix(markdown).count("\n") if whole.endswith(markdown) else 0
        line = front + (at if error.line is None else error.line) + 1
        raise PluginError(f"docs/{page.file.src_uri}, line {line}: {error}") from error
    text += lines[done:]
    if here:
        text = _question_page(page, *here, text, built, home)
        kinds.add("question")
    page.meta["blocks"] = built
    page.meta["script"] = bundle_of(kinds)
    page.meta["question_pages"] = next((c.pages for c in chapters() if f"{c.page}.md" == page.file.src_uri), None)
    return "\n".join(text)


def _question_page(
    page: Page, chapter: Chapter, entry: Entry, text: list[str], built: list[str], home: str
) -> list[str]:
    """The text of a question's page with its title above, its form, and the ways on from here below."""
    page.meta.setdefault("title", entry.question.title)
    page.meta.setdefault("description", f"{entry.question.title}. {entry.when}")
    above = (
        f'<p class="running"><a href="{home}{chapter.address}">{escape(chapter.title)}</a></p>\n\n'
        f'# {page.meta["title"]}\n\n<p class="when">{escape(entry.when)}</p>\n'
    )
    if not any('class="question"' in block for block in built):
        text = [*text, "", f'<div data-block="{len(built)}"></div>', ""]
        built.append(_built("question", [entry.key], home))
    text = [above, *text, "", f'<div data-block="{len(built)}"></div>', ""]
    built.append(_ways_on(chapter, entry, home))
    return text


def _ways_on(chapter: Chapter, entry: Entry, home: str) -> str:
    """Links from a question to its neighbours, its chapter, and the whole questions that use it."""

    def link(to: Entry, kind: str, words: str) -> str:
        return (
            f'<a class="{kind}" rel="{kind}" href="{home}{to.address}"><small>{words}</small> '
            f"{escape(to.question.title)}</a>"
        )

    at = chapter.entries.index(entry)
    before = link(chapter.entries[at - 1], "prev", "The question before") if at else ""
    after = link(chapter.entries[at + 1], "next", "The question after") if at + 1 < len(chapter.entries) else ""
    uses = "".join(
        f'<li><a href="{home}{one.address}">{escape(one.question.title)}</a></li>'
        for one in whole_questions_using(chapter, entry)
    )
    wholes = f"<p>Whole questions that use it:</p><ul>{uses}</ul>" if uses else ""
    return (
        f'<nav class="ways-on" aria-label="On from here" data-search-exclude>{wholes}<div class="neighbours">{before}'
        f'<a class="up" href="{home}{chapter.address}"><small>The chapter</small> {escape(chapter.title)}</a>'
        f"{after}</div></nav>"
    )


def on_page_content(content: str, page: Page, **_: object) -> str:
    """Link glossary terms, then put in the built blocks that the search reads."""
    if page.file.src_uri not in ("glossary.md", "index.md"):
        content = link_terms(content, DOCS / "glossary.md", "../" * page.file.src_uri.count("/"))
    built = page.meta.get("blocks", [])

    def put(match: re.Match[str]) -> str:
        block = built[int(match[1])]
        return match[0] if _NOT_SEARCHED.match(block) else block

    return _SPOT.sub(put, content)


def on_post_page(output: str, page: Page, **_: object) -> str:
    """Put in the blocks that the search does not read."""
    built = page.meta.get("blocks", [])
    return _SPOT.sub(lambda match: built[int(match[1])], output)


@cache
def _example(key: str) -> WorkedAnswer:
    """The worked answer of a question's own example."""
    topic, question = topics.find(key)
    typed = dict(question.example)
    find = str(typed.pop("find", ""))
    return work(topic, question, read(question, typed, find, Settings()))


def _sketch(key: str) -> str:
    """The example's figure without its labels; the first there is, or nothing."""
    worked = _example(key)
    figures: list[Figure | None] = [worked.figure, *(part.figure for part in worked.parts)]
    drawn = next((figure for figure in figures if figure), None)
    return svg.sketch(drawn) if drawn else ""


def _listed(entries: list[Entry], home: str) -> str:
    items = ""
    for entry in entries:
        names = "".join(f'<span id="{escape(name)}"></span>' for name in entry.was)
        items += (
            f'<li id="form-{entry.key.replace(".", "-")}">{names}<a href="{home}{entry.address}">'
            f'<span class="drawing">{_sketch(entry.key)}</span><span class="words">'
            f"<b>{escape(entry.question.title)}</b>"
            f"<small>{escape(entry.when)}</small></span></a></li>"
        )
    return f'<ul class="question-list">{items}</ul>'


def questions_block(lines: list[str], home: str = "") -> str:
    """The questions of a chapter that have one part or a few, to choose from by sight."""
    return _listed([entry for entry in _chapter(lines).entries if not entry.question.scenario], home)


def whole_questions_block(lines: list[str], home: str = "") -> str:
    """The questions of a chapter that are one story in several parts."""
    return _listed([entry for entry in _chapter(lines).entries if entry.question.scenario], home)


def _chapter(lines: list[str]) -> Chapter:
    topic = _topic(lines)
    for chapter in chapters():
        if chapter.topic.key == topic.key:
            return chapter
    raise BlockError(f"no page says “topic: {topic.key}” in its front matter; put it at the head of its chapter.")


def question_block(lines: list[str], home: str = "") -> str:
    """The form and the worked example of one question."""
    if not lines:
        raise BlockError("name a question on the first line, for example coulomb.force.")
    key, words = lines[0].strip(), [line.strip() for line in lines[1:]]
    topic, question = _question(key)
    known = {item.name for item in question.fields} | {"find"}
    pairs: dict[str, str] = {}
    for word in words:
        name, equals, value = (piece.strip() for piece in word.partition("="))
        if not equals or name not in known:
            raise BlockError(f"{word!r} is not “name = value”; names here: {', '.join(sorted(known))}.")
        if name in pairs:
            raise BlockError(f"{name} stands twice; keep one of its lines.")
        pairs[name] = value
    asked = pairs["find"].split(",") if "find" in pairs else []
    if not set(asked) <= set(question.unknowns) or (len(asked) > 1 and not question.any_givens):
        can = f"it can find {', '.join(question.unknowns)}" if question.unknowns else "it has no choice"
        raise BlockError(f"{key} cannot find {pairs['find']!r}; {can}.")
    given = [f"{name}={value}" for name, value in pairs.items()]
    typed: dict[str, Any] = {**question.example, **entries(question, given)}
    find = str(typed.pop("find", ""))
    try:
        worked = work(topic, question, read(question, typed, find, Settings()))
    except Refusals as several:
        raise BlockError("; ".join(f"{r.field}: {r.sentence}" for r in several.refusals)) from None
    except Refusal as refusal:
        raise BlockError(f"{refusal.field}: {refusal.sentence}") from None
    return (
        f'<section class="question" data-search-exclude data-question="{escape(key)}">'
        f"{form.render(key, question, typed, worked.asked)}"
        '<details class="check-mine"><summary>Check my own answer</summary><div class="sheet-place"></div></details>'
        f'<div class="answer-area">{_answer_html(key, question, typed, worked)}</div>'
        f'<p class="practise"><a href="{home}practice.html#practice={escape(key)}&amp;seed=1&amp;level=1">'
        "Practise this with fresh numbers</a></p></section>"
    )


def _answer_html(key: str, question: Question, typed: dict[str, Any], worked: WorkedAnswer) -> str:
    choices = form.by_drawing(key, question, {name: str(entry) for name, entry in typed.items()})
    return html.render(worked, open_parts=not question.scenario, by_drawing=choices)


def laws_block(lines: list[str], _home: str = "") -> str:
    """The laws of a topic, with the phrases marks hang on."""
    items = "".join(
        f"<dt>{escape(law.name)}</dt><dd>{html.emphasised(law.words, law.keys)}</dd>" for law in _topic(lines).laws
    )
    return f'<dl class="laws">{items}</dl>'


def cautions_block(lines: list[str], _home: str = "") -> str:
    """The cautions of a topic's practical work."""
    items = "".join(f"<li>{escape(caution)}</li>" for caution in _topic(lines).cautions)
    local = "<li>Follow your school's own safety rules, and work only where a teacher is watching.</li>"
    return f'<aside class="cautions"><p class="title">Take care</p><ul>{items}{local}</ul></aside>'


def data_sheet_block() -> str:
    """The data sheet as a form of settings."""
    rows = ""
    style = Settings().style
    for name, line in SHEET.items():
        usual = exact(line.school, style).text.replace("\N{NO-BREAK SPACE}", " ")
        fuller = exact(line.fuller, style).text
        rows += (
            f'<div class="entry" data-field="settings.{name}"><label for="set-{name}">'
            f'{escape(line.words[0].upper() + line.words[1:])} <i class="symbol">{escape(symbol(name).text)}</i>'
            f'<small class="hint">fuller value {escape(fuller)}</small></label><span class="box">'
            f'<input type="text" id="set-{name}" name="{name}" value="{escape(usual)}" data-usual="{escape(usual)}" '
            f'maxlength="60" spellcheck="false" aria-describedby="set-{name}-problem"><span class="unit">'
            f"{escape(parse_unit(line.unit).text)}</span></span>"
            f'<p class="problem" id="set-{name}-problem" hidden></p></div>'
        )
    return (
        '<form class="settings numbers-like" novalidate autocomplete="off"><div class="fields">'
        + rows
        + '<div class="entry" data-field="settings.decimals"><label for="set-decimals">Decimals in an'
        ' answer</label><span class="box"><input type="text" id="set-decimals" name="decimals" value="2"'
        ' data-usual="2" maxlength="1" aria-describedby="set-decimals-problem"></span><p class="problem"'
        ' id="set-decimals-problem" hidden></p></div><div class="entry"><label'
        ' for="set-comma">Decimal sign</label><span class="box"><select id="set-comma" name="comma"'
        ' data-usual="comma"><option value="comma">comma: 0,15</option><option value="point">point:'
        ' 0.15</option></select></span></div></div><p class="buttons"><button type="submit">Keep'
        ' these</button><button type="button" class="usual">Back to the school values</button></p><p class="status"'
        ' role="status"></p></form>'
    )


def formulas_block() -> str:
    """Every formula of the data sheet with the law it belongs to, by group."""
    order = {chapter.topic.key: at for at, chapter in enumerate(chapters())}
    every = sorted(topics.topics().values(), key=lambda topic: order.get(topic.key, len(order)))
    groups: dict[str, str] = {}
    for law, lines in forms(law for topic in every for law in topic.laws).items():
        name = f'<th scope="rowgroup" rowspan="{len(lines)}">{escape(law.name)}</th>'
        cells = [f"<td>{html.maths(equation(line).maths())}</td>" for line in lines]
        rows = "</tr><tr>".join(cells)
        groups[law.group] = f"{groups.get(law.group, '')}<tbody><tr>{name}{rows}</tr></tbody>"
    tables = "".join(
        f"<section><h3>{escape(group)}</h3><table>{bodies}</table></section>" for group, bodies in groups.items()
    )
    return f'<div class="formulas">{tables}</div>'


def contents_block() -> str:
    """The chapters in their order, each with the drawing of its first question."""
    items = "".join(
        f'<li><a href="{chapter.address}"><span class="drawing">{_sketch(chapter.entries[0].key)}</span>'
        f'<span class="words"><b>{escape(chapter.title)}</b><small>{escape(chapter.about)}</small>'
        f"<small>{counted(len(chapter.entries), 'question')}</small></span></a></li>"
        for chapter in chapters()
        if chapter.entries
    )
    return f'<ul class="chapter-list">{items}</ul>'


def practice_block() -> str:
    """The place where questions are drawn; the script inside runs before what follows it is laid out."""
    room = '<script src="assets/scripts/practice-room.js"></script>'
    return practice_html.picker(topics.topics().values(), between=room)


def drawn_block(lines: list[str], _home: str = "") -> str:
    """Questions drawn at build time, one a line: ``coulomb.force seed=3 level=2``."""
    if not lines:
        raise BlockError("draw at least one question, for example “coulomb.force seed=3 level=2”.")
    built = ""
    for number, line in enumerate(lines, 1):
        match = re.fullmatch(r"(\S+) seed=(\d+) level=([123])", line.strip())
        if not match:
            raise BlockError(f"{line!r} is not like “coulomb.force seed=3 level=2”.")
        topic, question = _question(match[1])
        drawn = draw(topic, question, int(match[2]), int(match[3]))
        found = read(question, drawn.inputs, drawn.find, Settings(), drawn.variant)
        built += practice_html.drawn(work(topic, question, found), drawn.level, number)
    return f'<div class="ready-drawn" data-search-exclude>{built}</div>'


def worksheet_block() -> str:
    """The form of the worksheet page, with the style of papers inside: saved files take it from there."""
    style = (DOCS / "assets" / "paper.css").read_text(encoding="utf-8")
    return f'<style id="paper-style">\n{style}</style>{paper_form.render(topics.topics().values())}'


def _topic(lines: list[str]) -> Topic:
    key = lines[0].strip() if lines else ""
    if key not in topics.topics():
        raise BlockError(f"no topic {key!r}; there are {', '.join(topics.topics())}.")
    if len(lines) > 1:
        raise BlockError(f"only the topic stands here; take away {lines[1].strip()!r}.")
    return topics.topics()[key]


def _question(key: str) -> tuple[Topic, Question]:
    try:
        return topics.find(key)
    except KeyError as unknown:
        raise BlockError(f"{unknown.args[0]}.") from None


def _alone(build: Callable[[], str]) -> Callable[[list[str], str], str]:
    """The builder of a block that has no lines."""

    def built(lines: list[str], _home: str) -> str:
        if lines:
            raise BlockError(f"this block has no lines; take away {lines[0].strip()!r}.")
        return build()

    return built


BLOCKS: dict[str, Callable[[list[str], str], str]] = {
    "question": question_block,
    "questions": questions_block,
    "whole-questions": whole_questions_block,
    "laws": laws_block,
    "licences": _alone(licences.listing),
    "cautions": cautions_block,
    "data-sheet": _alone(data_sheet_block),
    "formulas": _alone(formulas_block),
    "contents": _alone(contents_block),
    "practice": _alone(practice_block),
    "drawn": drawn_block,
    "worksheet": _alone(worksheet_block),
}


def link_terms(content: str, glossary: Path, home: str = "") -> str:
    """``content`` with the first mention of each glossary term, in running text, linked to it."""
    if not glossary.is_file():
        return content
    terms = re.findall(r"^## (.+?)[ \t]*$", glossary.read_text(encoding="utf-8"), re.M)
    waiting = {term.lower(): re.sub(r"[^a-z0-9]+", "-", term.lower()).strip("-") for term in terms}
    words = "|".join(re.escape(term) for term in sorted(waiting, key=len, reverse=True))
    mention = re.compile(rf"\b({words})(s?)\b(?!['’]s)", re.I)

    def link(found: re.Match[str]) -> str:
        anchor = waiting.pop(found[1].lower(), "")
        return f'<a class="term" href="{home}glossary.html#{anchor}">{found[0]}</a>' if anchor else found[0]

    pieces = re.split(r"(<[^>]+>)", content)
    closed_to_links = 0
    for index, piece in enumerate(pieces):
        tag = re.match(r"<(/?)(a|h\d|code|pre|span|div)\b", piece)
        if tag:
            closed_to_links += -1 if tag[1] else 1
        elif not piece.startswith("<") and not closed_to_links and waiting:
            pieces[index] = mention.sub(link, piece)
    return "".join(pieces)
