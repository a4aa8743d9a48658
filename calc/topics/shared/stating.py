"""The part that asks for a law in words."""

from __future__ import annotations

from calc.model.answers import Law, Point
from calc.model.questions import Part


def state(law: Law, key: str = "state") -> Part:
    """The part that asks for a law or definition in words."""
    return Part(
        key,
        "state",
        f"State {named(law)} in words.",
        points=(Point(law.words, law.marks, law.keys),),
    )


def named(law: Law) -> str:
    """A law's name inside a sentence: "Coulomb's law", "the conservation of charge"."""
    return law.name if "'s " in law.name else f"the {law.name[0].lower()}{law.name[1:]}"
