"""MkDocs hook: a fenced block in a page becomes a worked example with its live form.

```question            ```laws         ```cautions      ```data-sheet      ```drawn        (and ```formulas, alone)
coulomb.force          coulomb         coulomb          ```                coulomb.force seed=3 level=2
Q1 = +8 nC             ```             ```                                 ```
find = r
```

The build runs the same calc code as the page, so the example can be read with scripts off. A wrong
block stops the build with its file, line and what to change. First mentions of glossary terms
(docs/glossary.md, one heading each) are linked.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from html import escape
from pathlib import Path
from typing import Any

from mkdocs.exceptions import PluginError
from mkdocs.structure.pages import Page

import licences
from calc import topics
from calc.__main__ import entries
from calc.language.expressions import equation
from calc.language.printing import exact
from calc.language.symbols import symbol
from calc.language.units import parse_unit
from calc.model.constants import SHEET, Settings
from calc.model.questions import Question, Refusal, Topic
from calc.practice.drawing import draw
from calc.renderings import form, html, paper_form
from calc.renderings import practice as practice_html
from calc.working.reading import Refusals, read
from calc.working.working import work
from fences import BlockError, find_blocks

_SPOT = re.compile(r'<div data-block="(\d+)"></div>')


DOCS = Path(__file__).resolve().parent.parent / "docs"


def on_page_markdown(markdown: str, page: Page, **_: object) -> str:
    """Build every block of the page; leave a marker in its place until Markdown has run."""
    lines = markdown.split("\n")
    text: list[str] = []
    built: list[str] = []
    keys: set[str] = set()
    done = at = 0
    try:
        for block in find_blocks(markdown, BLOCKS):
            at = block.start
            if block.kind == "question" and (key := block.body[0].strip() if block.body else ""):
                if key in keys:
                    raise BlockError(f"{key} stands twice on this page; keep one of its blocks.")
                keys.add(key)
            text += [*lines[done:at], "", f'<div data-block="{len(built)}"></div>', ""]
            built.append(BLOCKS[block.kind]([line for line in block.body if line.strip()]))
            done = block.end
    except BlockError as error:
        whole = page.file.content_string
        # What MkDocs has taken off the page: its front matter, and empty lines after that.
        front = whole.removesuffix(markdown).count("\n") if whole.endswith(markdown) else 0
        line = front + (at if error.line is None else error.line) + 1
        raise PluginError(f"docs/{page.file.src_uri}, line {line}: {error}") from error
    page.meta["blocks"] = built
    return "\n".join([*text, *lines[done:]])


def on_page_content(content: str, page: Page, **_: object) -> str:
    """Link glossary terms, then put the built blocks in."""
    if page.file.src_uri not in ("glossary.md", "index.md"):
        content = link_terms(content, Path(page.file.abs_src_path).parent / "glossary.md")
    built = page.meta.get("blocks", [])
    return _SPOT.sub(lambda match: built[int(match[1])], content)


def question_block(lines: list[str]) -> str:
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
        f'<div class="answer-area">{html.render(worked, open_parts=not question.scenario)}</div>'
        f'<p class="practise"><a href="practice.html#practice={escape(key)}&amp;seed=1&amp;level=1">'
        "Practise this with fresh numbers</a></p></section>"
    )


def laws_block(lines: list[str]) -> str:
    """The laws of a topic, with the phrases marks hang on."""
    items = "".join(
        f"<dt>{escape(law.name)}</dt><dd>{html.emphasised(law.words, law.keys)}</dd>" for law in _topic(lines).laws
    )
    return f'<dl class="laws">{items}</dl>'


def cautions_block(lines: list[str]) -> str:
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
            f'maxlength="60" spellcheck="false"><span class="unit">{escape(parse_unit(line.unit).text)}</span></span>'
            '<p class="problem" hidden></p></div>'
        )
    return (
        '<form class="settings numbers-like" novalidate autocomplete="off"><div class="fields">'
        + rows
        + '<div class="entry" data-field="settings.decimals"><label for="set-decimals">Decimals in an'
        ' answer</label><span class="box"><input type="text" id="set-decimals" name="decimals" value="2"'
        ' data-usual="2" maxlength="1"></span><p class="problem" hidden></p></div><div class="entry"><label'
        ' for="set-comma">Decimal sign</label><span class="box"><select id="set-comma" name="comma"'
        ' data-usual="comma"><option value="comma">comma: 0,15</option><option value="point">point:'
        ' 0.15</option></select></span></div></div><p class="buttons"><button type="submit">Keep'
        ' these</button><button type="button" class="usual">Back to the school values</button></p><p class="status"'
        ' role="status"></p></form>'
    )


def formulas_block() -> str:
    """Every formula of the data sheet with the law it belongs to, by group."""
    groups: dict[str, dict[str, str]] = {}
    for topic in topics.topics().values():
        for law in topic.laws:
            for line in law.formulas:
                groups.setdefault(law.group, {}).setdefault(line, law.name)
    tables = ""
    for group, forms in groups.items():
        rows = "".join(
            f'<tr><th scope="row">{escape(name)}</th><td>{html.maths(equation(line).maths())}</td></tr>'
            for line, name in forms.items()
        )
        tables += f"<h3>{escape(group)}</h3><table><tbody>{rows}</tbody></table>"
    return f'<div class="formulas">{tables}</div>'


def contents_block() -> str:
    """Every question that stands in a page, by topic, linked to its place."""
    pages: dict[str, str] = {}
    for path in sorted(DOCS.glob("*.md")):
        try:
            blocks = find_blocks(path.read_text(encoding="utf-8"), BLOCKS)
        except BlockError:
            continue  # that page stops the build itself, and names the place
        for block in blocks:
            if block.kind == "question" and block.body:
                key = block.body[0].strip()
                pages.setdefault(key, f"{path.stem}.html#form-{key.replace('.', '-')}")
    body = ""
    for topic in topics.topics().values():
        items = "".join(
            f'<li><a href="{escape(pages[key])}">{escape(question.title)}</a>'
            f"{' <small>whole question, several parts</small>' if question.scenario else ''}</li>"
            for question in topic.questions
            if (key := f"{topic.key}.{question.key}") in pages
        )
        if items:
            body += f"<section><h3>{escape(topic.title)}</h3><ul>{items}</ul></section>"
    return f'<div class="contents">{body}</div>'


def practice_block() -> str:
    """The place where questions are drawn; the script inside runs before what follows it is laid out."""
    room = '<script src="assets/practice-room.js"></script>'
    return practice_html.picker(topics.topics().values(), between=room)


def drawn_block(lines: list[str]) -> str:
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


def _alone(build: Callable[[], str]) -> Callable[[list[str]], str]:
    """The builder of a block that has no lines."""

    def built(lines: list[str]) -> str:
        if lines:
            raise BlockError(f"this block has no lines; take away {lines[0].strip()!r}.")
        return build()

    return built


BLOCKS: dict[str, Callable[[list[str]], str]] = {
    "question": question_block,
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


def link_terms(content: str, glossary: Path) -> str:
    """``content`` with the first mention of each glossary term, in running text, linked to it."""
    if not glossary.is_file():
        return content
    terms = re.findall(r"^## (.+?)[ \t]*$", glossary.read_text(encoding="utf-8"), re.M)
    waiting = {term.lower(): re.sub(r"[^a-z0-9]+", "-", term.lower()).strip("-") for term in terms}
    words = "|".join(re.escape(term) for term in sorted(waiting, key=len, reverse=True))
    mention = re.compile(rf"\b({words})(s?)\b(?!['’]s)", re.I)

    def link(found: re.Match[str]) -> str:
        anchor = waiting.pop(found[1].lower(), "")
        return f'<a class="term" href="glossary.html#{anchor}">{found[0]}</a>' if anchor else found[0]

    pieces = re.split(r"(<[^>]+>)", content)
    closed_to_links = 0
    for index, piece in enumerate(pieces):
        tag = re.match(r"<(/?)(a|h\d|code|pre|span|div)\b", piece)
        if tag:
            closed_to_links += -1 if tag[1] else 1
        elif not piece.startswith("<") and not closed_to_links and waiting:
            pieces[index] = mention.sub(link, piece)
    return "".join(pieces)
