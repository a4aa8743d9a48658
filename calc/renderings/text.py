"""A worked answer as plain text: for a terminal, and for reading aloud."""

from __future__ import annotations

from calc.language.printing import counted
from calc.model.answers import Given, Mark, PartShown, StepShown, WorkedAnswer

_MARK = {"formula": "F", "substitution": "S", "answer": "A", "point": "✓"}


def render(answer: WorkedAnswer) -> str:
    """The whole answer, about 78 columns wide; ends with a newline."""
    blocks = [_underlined(answer.title), answer.story]
    if answer.given:
        blocks.append("\n".join(["Given", *(f"  {_given_line(line)}" for line in answer.given)]))
    if answer.constants:
        lines = [f"  {c.words}: {c.symbol.text} = {c.shown.text}" for c in answer.constants]
        blocks.append("\n".join(["Data sheet", *lines]))
    if answer.laws:
        blocks.append("\n".join(f"{law.name}: {law.words}" for law in answer.laws))
    if answer.figure:
        blocks.append(f"Diagram: {answer.figure.description}")
    blocks += [_part(part) for part in answer.parts]
    blocks += [_check(check.what, [line.text for line in check.lines], check.words) for check in answer.checks]
    blocks += [f"Note: {note}" for note in answer.notes] + [f"Look again: {warning}" for warning in answer.warnings]
    blocks.append(f"Total: {counted(answer.marks, 'mark')}")
    return "\n\n".join(blocks) + "\n"


def marks(given: tuple[Mark, ...]) -> str:
    """Marks as a memo letters them: ``F S A``."""
    return " ".join(_MARK[mark.kind] + (str(mark.count) if mark.count > 1 else "") for mark in given)


def _underlined(title: str) -> str:
    return f"{title}\n{'=' * len(title)}"


def _given_line(line: Given) -> str:
    head = f"{line.words}: " + (f"{line.symbol.text} = " if line.symbol.text else "")
    note = f" ({line.note})" if line.note else ""
    return head + (line.conversion or line.shown).text + note


def _part(part: PartShown) -> str:
    head = f"{part.number + ' ' if part.number else ''}{part.ask} ({part.marks})"
    lines = [head]
    for index, step in enumerate(part.steps, 1):
        lines += _step(step, index)
    lines += [f"  • {point.words} ({point.marks})" for point in part.points]
    if part.figure:
        lines.append(f"  Diagram: {part.figure.description}")
    for answer in part.answers:
        where = f", {answer.direction.words}" if answer.direction else ""
        lines.append(f"  Answer: {answer.shown.text}{where}")
    return "\n".join(lines)


def _step(step: StepShown, index: int) -> list[str]:
    lines = [f"  Step {index}. {step.what}", f"     {step.why}", f"       {step.formula.text}"]
    lines.append(f"       {step.substitution.text}")
    lines += [f"       {line.text}" for line in step.algebra]
    if step.method:
        lines.append(f"     {step.method}")
    earned = f"   [{marks(step.marks)}]" if step.marks else ""
    return [*lines, f"       {step.result.text}{earned}"]


def _check(what: str, lines: list[str], words: str) -> str:
    return "\n".join(
        [
            f"Check: {what}",
            *(f"       {line}" for line in lines),
            *([f"  {words}"] if words else []),
        ]
    )
