"""The form of the worksheet page, made from the declared topics."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from calc.model.questions import Topic
from calc.papers.papers import (
    LARGEST_SEED,
    LONGEST_HEADING,
    MOST_MARKS,
    MOST_QUESTIONS,
    USUAL_QUESTIONS,
)
from calc.practice.drawing import DRAWS

LEVELS = (
    ("1", "1: as in the examples"),
    ("2", "2: harder numbers"),
    ("3", "3: something else is asked"),
    ("rising", "rising, from easier to harder"),
)
SPACES = (("none", "none: answers on own paper"), ("blank", "blank"), ("lined", "lined"))
LINKS = (("both", "on paper and memo"), ("memo", "on the memo only"), ("none", "nowhere"))
MEMOS = (("short", "the lines that earn marks"), ("full", "full working"))
PIECES = (("both", "paper and memo"), ("paper", "the paper only"), ("memo", "the memo only"))


def render(topics: Iterable[Topic]) -> str:
    """The form, the tools for a paper that is made, and the place where papers are shown."""
    chosen = "".join(_topic(topic) for topic in topics)
    return (
        f'<div class="worksheet" data-draw="{DRAWS}" data-search-exclude>'
        "<noscript><p>Papers are made by a script of this page: allow scripts to make one.</p></noscript>"
        '<form class="worksheet-form numbers-like" novalidate autocomplete="off">'
        f'<fieldset class="worksheet-topics" data-field="topics"><legend>Topics</legend>{chosen}'
        '<p class="problem" hidden></p></fieldset><div class="fields">'
        + _box(
            "count",
            "Number of questions",
            f"1 to {MOST_QUESTIONS}; empty: as the marks ask",
            str(USUAL_QUESTIONS),
            3,
            digits=True,
        )
        + _box("marks", "Marks", f"1 to {MOST_MARKS}; empty: whatever it comes to", "", 4, digits=True)
        + _select("level", "Difficulty", LEVELS)
        + _box(
            "seed", "Number of the paper", f"0 to {LARGEST_SEED}; the same number, the same paper", "1", 7, digits=True
        )
        + _box("heading", "Heading", "", "", LONGEST_HEADING)
        + _select("space", "Room for answers", SPACES)
        + _select("memo", "Memo", MEMOS)
        + _select("link", "Print the link", LINKS)
        + '</div><details class="worksheet-class"><summary>A different paper for each learner</summary>'
        '<div class="entry wide" data-field="learner"><label for="worksheet-names">Class list, one name a line '
        '<small class="hint">Every paper has the same questions and marks, and numbers of its own. '
        "The names stay on this device and are in no link.</small></label>"
        '<textarea id="worksheet-names" name="names" rows="5" spellcheck="false"></textarea>'
        '<p class="problem" hidden></p></div>'
        '<p class="buttons"><button type="button" class="wipe-class">Wipe the class list</button></p></details>'
        '<p class="buttons"><button type="submit">Make the paper</button>'
        '<button type="button" class="another">Another paper like it</button></p>'
        '<p class="problem whole" role="alert" hidden></p><p class="status" role="status"></p></form>'
        '<div class="worksheet-work" hidden><progress aria-labelledby="worksheet-doing"></progress>'
        '<span class="doing" id="worksheet-doing"></span><button type="button" class="stop">Stop</button></div>'
        '<div class="worksheet-tools numbers-like" hidden><div class="fields">'
        + _select("piece", "Print or save", PIECES)
        + '<div class="entry" data-field="shown" hidden><label for="worksheet-shown">Shown below</label><span'
        ' class="box"><button type="button" class="before" aria-label="The paper before">‹</button><select'
        ' id="worksheet-shown" name="shown"></select><button type="button" class="after" aria-label="The next'
        ' paper">›</button></span></div></div><p class="buttons"><button type="button"'
        ' class="print">Print</button><button type="button" data-save="html">Save as HTML</button><button'
        ' type="button" data-save="markdown">Save as Markdown</button><button type="button" data-save="latex">Save as'
        ' LaTeX</button><button type="button" class="copy-link">Copy a link to this paper</button></p><p'
        ' class="status" role="status"></p></div><div class="sheets" data-piece="both"></div></div>'
    )


def _topic(topic: Topic) -> str:
    questions = "".join(
        f'<li><label><input type="checkbox" name="question" value="{escape(topic.key)}.{escape(question.key)}"> '
        f"{escape(question.title)}{' <small>whole question</small>' if question.scenario else ''}</label></li>"
        for question in topic.questions
    )
    return (
        f'<div class="worksheet-topic"><label><input type="checkbox" name="topic" value="{escape(topic.key)}">'
        f' {escape(topic.title)}</label><details><summary>Which questions<span class="spoken"> of'
        f" {escape(topic.title)}</span></summary><ul>{questions}</ul></details></div>"
    )


def _box(name: str, words: str, hint: str, value: str, longest: int, *, digits: bool = False) -> str:
    small = f'<small class="hint">{escape(hint)}</small>' if hint else ""
    mode = ' inputmode="numeric"' if digits else ""
    return (
        f'<div class="entry" data-field="{name}"><label for="worksheet-{name}">{escape(words)}{small}</label>'
        f'<span class="box"><input type="text" id="worksheet-{name}" name="{name}" value="{escape(value)}" '
        f'maxlength="{longest}"{mode} aria-describedby="worksheet-{name}-problem"></span>'
        f'<p class="problem" id="worksheet-{name}-problem" hidden></p></div>'
    )


def _select(name: str, words: str, options: Iterable[tuple[str, str]]) -> str:
    listed = "".join(f'<option value="{key}">{escape(said)}</option>' for key, said in options)
    return (
        f'<div class="entry" data-field="{name}"><label for="worksheet-{name}">{escape(words)}</label><span'
        f' class="box"><select id="worksheet-{name}" name="{name}">{listed}</select></span><p class="problem"'
        " hidden></p></div>"
    )
