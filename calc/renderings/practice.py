"""Practice as HTML: the picker, hints, what to revise next, and drawn questions for a page without scripts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from html import escape

from calc.model.answers import WorkedAnswer
from calc.model.questions import Topic
from calc.practice.drawing import DRAWS
from calc.practice.hints import Hint
from calc.practice.revision import Revision
from calc.renderings import html

LEVEL_WORDS = (
    ("1", "1: as in the example"),
    ("2", "2: harder numbers"),
    ("3", "3: something else is asked"),
)


@dataclass(frozen=True)
class RevisionRow:
    """One line of the revision list. slip: the sentence about the last try's mistake, or ''."""

    title: str
    line: Revision
    slip: str


_NOTHING_YET = "<p>Nothing has been marked on this device yet. Mark a question, and it is listed here.</p>"


def picker(topics: Iterable[Topic], between: str = "") -> str:
    """The form to pick a question, the place where it is drawn, and the progress kept on the device.

    between: markup put after the form, before the two places.
    """
    groups = "".join(
        f'<optgroup label="{escape(topic.title)}"><option value="{escape(topic.key)}">{escape(topic.title)}: any'
        " question</option>"
        + "".join(
            f'<option value="{escape(topic.key)}.{escape(question.key)}">{escape(question.title)}</option>'
            for question in topic.questions
        )
        + "</optgroup>"
        for topic in topics
    )
    levels = "".join(f'<option value="{key}">{escape(words)}</option>' for key, words in LEVEL_WORDS)
    return (
        f'<div class="practice" data-draw="{DRAWS}" data-search-exclude><form class="practice-picker numbers-like"'
        ' novalidate autocomplete="off"><div class="fields"><div class="entry"><label'
        ' for="practice-question">Question</label><span class="box"><select id="practice-question"'
        f' name="question"><option value="">what to revise next</option>{groups}</select></span></div><div'
        ' class="entry"><label for="practice-level">Level</label><span class="box"><select id="practice-level"'
        f' name="level">{levels}</select></span></div></div><p class="buttons"><button type="submit">New'
        f' question</button></p><p class="status" role="status"></p></form>{between}<section class="practice-question"'
        ' hidden><h2 class="practice-title" tabindex="-1"></h2><div class="practice-figure"></div><div'
        ' class="practice-sheet"></div><p class="kept" role="status"></p><details class="practice-memo"><summary>The'
        ' worked answer</summary><div class="practice-answer"></div></details><p class="buttons"><button type="button"'
        ' class="practice-again">Another one like it</button><button type="button" class="practice-link">Copy a link'
        ' to this question</button></p></section><section class="progress"><h2>On this device</h2><div'
        f' class="progress-list">{_NOTHING_YET}</div><p class="kept-aside"></p><p class="buttons"><button type="button"'
        ' class="progress-export">Save to a file</button><label class="progress-import">Read from a file <input'
        ' type="file" accept=".json,application/json"></label><button type="button"'
        ' class="progress-wipe">Wipe</button></p><p class="progress-sure" hidden><span>Wipe everything kept here? It'
        ' cannot be brought back.</span> <button type="button" class="progress-yes">Yes, wipe it</button> <button'
        ' type="button" class="progress-no">Keep it</button></p><p class="status" role="status"></p></section></div>'
    )


def hint(told: Hint) -> str:
    """One opened hint."""
    lines = "".join(f'<div class="hint-line">{html.maths(line, display=True)}</div>' for line in told.lines)
    return f"<p>{html.prose(told.words)}</p>{lines}"


def drawn(worked: WorkedAnswer, level: int, number: int) -> str:
    """A drawn question with its memo folded away; it needs no script."""
    parts = "".join(f"<li>{html.prose(part.ask)} <span>({part.marks})</span></li>" for part in worked.parts)
    return (
        f'<section class="drawn"><h2>{number}. {escape(worked.title)} <small>level {level}</small></h2>'
        f'<p class="story">{html.prose(worked.story)}</p><ol class="drawn-parts">{parts}</ol>'
        f'<details class="practice-memo"><summary>The worked answer</summary>{html.render(worked)}</details></section>'
    )


def revision(rows: Sequence[RevisionRow], fresh: Sequence[tuple[str, str]]) -> str:
    """The list of tried questions, most overdue first, and a few not tried yet."""
    if not rows:
        return _NOTHING_YET
    lines = "".join(
        f'<tr><th scope="row">{escape(row.title)}{_slip(row.slip)}</th>'
        f"<td>{row.line.last.earned} of {row.line.last.possible}, level {row.line.last.level}</td>"
        f"<td>{_when(row.line.late)}</td><td>{_go(row.line.question, row.line.level, row.title)}</td></tr>"
        for row in rows
    )
    offers = "".join(f"<li>{escape(title)} {_go(key, 1, title)}</li>" for key, title in fresh)
    more = f'<p>Not tried yet:</p><ul class="fresh">{offers}</ul>' if offers else ""
    return (
        '<table class="revision"><thead><tr><th scope="col">Question</th><th scope="col">Last time</th>'
        f'<th scope="col">Revise</th><td></td></tr></thead><tbody>{lines}</tbody></table>{more}'
    )


def _slip(words: str) -> str:
    return f'<small class="slip">Last time: {html.prose(words)}</small>' if words else ""


def _when(late: int) -> str:
    if late == 0:
        return "today"
    days = f"{abs(late)} {'day' if abs(late) == 1 else 'days'}"
    return f"now, {days} late" if late > 0 else f"in {days}"


def _go(key: str, level: int, title: str) -> str:
    return (
        f'<button type="button" data-practise="{escape(key)}" data-level="{level}" '
        f'aria-label="Practise {escape(title)}">Practise</button>'
    )
