"""Marks and verdicts as HTML. Every string is escaped here; class names are styled in docs/assets/booklet.css."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape
from typing import Any

from calc.marking.sentences import FitTold, Sentence
from calc.renderings.html import maths

_LETTERS = {"formula": "F", "substitution": "S", "answer": "A", "point": "✓"}
_WORDS = {
    "formula": "formula",
    "substitution": "substitution",
    "answer": "answer",
    "point": "point",
}
_GOOD = ("right", "rounded early", "carried")


def part(verdict: Mapping[str, Any], told: Sequence[Sentence], fits: Sequence[FitTold]) -> str:
    """One verdict: head, sentences, the mistakes that fit, where to look, the marks with their reasons.

    verdict: the plain data of ``calc.desk.marking.verdict``.
    """
    state = str(verdict["state"])
    kind = "won" if state in _GOOD else "open" if state in ("blank", "self-marked") else "lost"
    body = "".join(f"<p>{_sentence(sentence)}</p>" for sentence in told)
    body += _fits(fits)
    if verdict["where"] and state not in _GOOD and state != "blank":
        body += (
            '<p class="where">Look at: <a href="#"'
            f' data-look="{escape(str(verdict["step"]), quote=True)}">{escape(str(verdict["where"]))}</a></p>'
        )
    body += "" if state == "blank" else _marks(verdict["marks"])
    return (
        f'<section class="verdict {kind}" data-part="{escape(str(verdict["part"]), quote=True)}"'
        f' data-state="{escape(state, quote=True)}"><p class="verdict-head">{escape(str(verdict["head"]))} <span'
        f' class="earned">{verdict["earned"]} of {verdict["possible"]}</span></p>{body}</section>'
    )


def total(verdicts: Sequence[Mapping[str, Any]], self_marked: int) -> str:
    """Every verdict, then the marks together."""
    earned = sum(int(verdict["earned"]) for verdict in verdicts)
    possible = sum(int(verdict["possible"]) for verdict in verdicts)
    ticked = f" ({self_marked} of them ticked by yourself)" if self_marked else ""
    rows = "".join(f"<li>{_numbered(verdict)}{verdict['html']}</li>" for verdict in verdicts)
    return (
        f'<div class="marked"><ol class="verdicts">{rows}</ol>'
        f'<p class="total">Marks: {earned} of {possible}{ticked}</p></div>'
    )


def _numbered(verdict: Mapping[str, Any]) -> str:
    number = str(verdict["number"])
    return f'<span class="part-number">{escape(number)}</span> ' if number else ""


def _sentence(sentence: Sentence) -> str:
    lines = " and ".join(maths(piece) for piece in sentence.maths)
    return f"{escape(sentence.words)} {lines}." if lines else escape(sentence.words)


def _fits(fits: Sequence[FitTold]) -> str:
    items = "".join(f"<li>{_fit(fit)}</li>" for fit in fits)
    return f'<ul class="fits">{items}</ul>' if items else ""


def _fit(fit: FitTold) -> str:
    together = '<span class="together">Two mistakes together.</span> ' if len(fit.say) > 1 else ""
    say = " ".join(escape(words) for words in fit.say)
    why = " ".join(f"{_capital(escape(words.rstrip('.')))}." for words in fit.why)
    lines = " and ".join(maths(line) for line in fit.lines)
    using = f"worked with {lines} it gives" if lines else "worked that way it gives"
    shows = f" How it shows: {why}" if why else ""
    return (
        f'{together}<strong class="say">{say}</strong> <span class="fits-because">Why it fits: '
        f"{using} {maths(fit.value)}, as you typed.{shows}</span>"
    )


def _capital(words: str) -> str:
    return words if words[1:2] in ("", " ", "=") else words[0].upper() + words[1:]


def _marks(marks: Sequence[Mapping[str, Any]]) -> str:
    if not marks:
        return ""
    rows = "".join(
        f'<tr class="{"earned" if mark["earned"] else "not-earned"}"><td>{_mark(mark)}</td>'
        f"<td>{mark['earned']} of {mark['possible']}</td><td>{escape(str(mark['reason']))}</td></tr>"
        for mark in marks
    )
    return (
        '<table class="mark-list"><caption class="spoken">Marks</caption><thead'
        f' class="spoken"><tr><th>Mark</th><th>Earned</th><th>Reason</th></tr></thead><tbody>{rows}</tbody></table>'
    )


def _mark(mark: Mapping[str, Any]) -> str:
    kind = str(mark["kind"])
    letter = _LETTERS[kind]
    return f'<abbr title="{_WORDS[kind]}">{letter}</abbr>'
