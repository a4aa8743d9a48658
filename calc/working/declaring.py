"""A question in one piece: its laws, and for each quantity one line that says all there is to say of it.

``declare`` makes a Question of laws, openings and a ``Given`` for each quantity; the quantities of school
physics, with their units, ranges and refusals, stand in :mod:`calc.topics.shared.quantities`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from calc.figures import Figure
from calc.model.answers import Law, Point
from calc.model.questions import (
    Check,
    Choice,
    Data,
    Draw,
    Field,
    Input,
    Mistake,
    Part,
    Question,
    Refusal,
    Values,
    Worded,
)
from calc.model.relations import Relation, Together
from calc.working.solving import Laws, Limit, Situation, Way, question, the

# All that most declarations need beside the quantities and a figure.
__all__ = ["Choice", "Given", "Law", "Limit", "Mistake", "Part", "Refusal", "Relation", "Together", "declare", "state"]

type Names = Mapping[str, str]  # by unknown, what practice gives: "a b d"
type Practised = Callable[[Mapping[str, object], int], Names]  # from what was drawn and the level


@dataclass(frozen=True)
class Given:
    """All that is said of one quantity, wherever it is given or asked.

    tell: the sentence that gives it, ``{}`` standing for the value. example: what the page's form holds, '' where
    it is asked there. draw: what practice draws. way: the kind of its direction and the positive one, for a signed
    quantity. ask: what to calculate, where "Calculate" and the box's words, less what they have in brackets, will not
    do. told_at: values with a sentence of their own. unfit: why no value fits, where the engine's words will not do.
    """

    box: Input
    tell: str
    example: str = ""
    draw: Draw | None = None
    way: Way | None = None
    ask: str = ""
    told_at: Mapping[float, str] = field(default_factory=dict)
    unfit: str = ""


def declare(
    key: str,
    title: str,
    relations: Laws,
    *,
    openings: tuple[str, ...],
    given: tuple[Given, ...],
    scene: Callable[[Values], Figure] | None = None,
    told_first: tuple[str, ...] = (),
    limits: tuple[Limit, ...] = (),
    unfit: Mapping[str, str] | None = None,
    states: tuple[Law, ...] = (),
    laws: tuple[Law, ...] = (),
    constants: tuple[str, ...] = (),
    units: Mapping[str, str] | None = None,
    choices: tuple[Choice, ...] = (),
    later: Callable[[Data, Values], tuple[Part, ...]] = lambda data, values: (),
    refuse: Callable[[Data, Values], None] = lambda data, values: None,
    warn: Callable[[Values], tuple[str, ...]] = lambda values: (),
    proofs: Callable[[Values], tuple[Check, ...]] = lambda values: (),
    mistakes: tuple[Mistake, ...] = (),
    notes: tuple[str, ...] = (),
    practised: Names | Practised | None = None,
    unknowns: tuple[str, ...] | None = None,
    asks: str = "",
    levels: tuple[int, ...] = (1, 2, 3),
    since: int = 1,
    former: tuple[str, ...] = (),
) -> Question:
    """The question that laws and quantities make: any box may be asked, any that lead to it are enough.

    relations: one without units has those of the boxes and, for names without a box, of ``units``.
    told_first: data that the story gives before the others; else it has the order of the form. limits: what must be
    above zero, with the reason. unfit: by unknown, why no value fits, where one reason serves several.
    states: laws that are asked for in words first; laws: others the question rests on. choices: boxes that are
    picked. practised: by unknown, the names practice gives (all others, if left out), or a function of what was
    drawn and the level. The rest as in :class:`~calc.working.solving.Situation` and
    :class:`~calc.model.questions.Question`.
    """
    return question(
        key,
        title,
        replace(
            told(given, told_first),
            relations=relations,
            openings=openings,
            unfit={**{one.box.name: one.unfit for one in given if one.unfit}, **(unfit or {})},
            units=units or {},
            limits=limits,
            stated=tuple(state(law, f"state-{n}" if len(states) > 1 else "state") for n, law in enumerate(states, 1)),
            later=later,
            refuse=refuse,
            warn=warn,
            proofs=proofs,
            scene=scene,
            mistakes=mistakes,
            notes=notes,
        ),
        fields=(*choices, *(one.box for one in given)),
        example={**{one.name: one.options[0][0] for one in choices}, **{one.box.name: one.example for one in given}},
        laws=tuple(law.name for law in (*states, *laws)),
        draws={one.box.name: one.draw for one in given if one.draw},
        constants=constants,
        unknowns=unknowns,
        asks=asks,
        adjust=_kept(tuple(one.box.name for one in given), practised) if practised else None,
        levels=levels,
        since=since,
        former=former,
    )


type Item = Given | Choice | Input | Worded


def boxes(
    *items: Item, draws: Mapping[str, Draw] | None = None, example: Mapping[str, str] | None = None
) -> dict[str, Any]:
    """The fields, the example and the draws of a question whose situation hangs on its data, or that has a plan.

    Boxes and choices stand in the order of the form; a choice shows its first option where ``example`` says no other.
    """
    fields, shown, drawn = list[Field](), dict[str, str](), dict[str, Draw]()
    for item in items:
        fields.append(item.box if isinstance(item, Given) else item)
        if isinstance(item, Choice):
            shown[item.name] = item.options[0][0]
        elif isinstance(item, Given):
            shown[item.box.name] = item.example
            if item.draw:
                drawn[item.box.name] = item.draw
    return {"fields": tuple(fields), "example": shown | dict(example or {}), "draws": drawn | dict(draws or {})}


def told(items: tuple[Item, ...], first: tuple[str, ...] = ()) -> Situation:
    """The part of a situation that its quantities say: how each is told, asked and directed."""
    given = [item for item in items if isinstance(item, Given)]
    return Situation(
        relations=(),
        openings=(),
        tell={one.box.name: one.tell for one in sorted(given, key=lambda one: one.box.name not in first)},
        told_at={one.box.name: one.told_at for one in given},
        ask={one.box.name: one.ask or f"Calculate {the(one.box.words.partition(' (')[0])}." for one in given},
        ways={one.box.name: one.way for one in given if one.way},
    )


def _kept(
    boxes: tuple[str, ...], practised: Names | Practised
) -> Callable[[dict[str, object], object, int], dict[str, object]]:
    """Empties the boxes that practice does not give for the unknown drawn."""

    def adjust(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
        names = practised if isinstance(practised, Mapping) else practised(typed, level)
        asked = next((name for name in names if not typed[name]), None)
        keep = boxes if asked is None else names[asked].split()
        return {name: "" if name in boxes and name not in keep else text for name, text in typed.items()}

    return adjust


def state(law: Law, key: str = "state") -> Part:
    """The part that asks for a law or definition in words."""
    return Part(key, "state", f"State {named(law)} in words.", points=(Point(law.words, law.marks, law.keys),))


def named(law: Law) -> str:
    """A law's name inside a sentence: "Coulomb's law", "the conservation of charge"."""
    if "'s " in law.name:
        return law.name
    person = f" {law.name} " in law.words  # the Doppler effect keeps its capital inside a sentence
    return f"the {law.name}" if person else f"the {law.name[0].lower()}{law.name[1:]}"
