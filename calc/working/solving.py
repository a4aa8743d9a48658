"""Any givens, any unknowns: the plan of a question that is declared by its relations alone.

A ``Situation`` names the laws that hold, tells the data as a story and draws them. ``question``
makes a Question of it: whichever boxes are filled, the steps are put together from the laws;
several unknowns become parts, in the order in which they need each other.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property

from calc.figures import Figure
from calc.language.expressions import equation, expression
from calc.language.units import parse_unit
from calc.model.answers import Direction
from calc.model.directions import Kind
from calc.model.questions import (
    Check,
    Data,
    Draw,
    Field,
    Input,
    Mistake,
    Part,
    Plan,
    Question,
    Refusal,
    Step,
    Values,
)
from calc.model.relations import Relation, Together
from calc.working.chain import NoWay, core, fits, follows, lead, spread, worked
from calc.working.working import measure

SAME_VALUE = 2  # names of a law that says one value under two of them
Laws = tuple[Relation | Together, ...]
Way = tuple[Kind, str]  # the kind of direction, and the key that is positive


@dataclass(frozen=True)
class Limit:
    """An expression that must come out above zero; ``sentence`` says why and what to do, beside the box ``at``
    if that is given. It is judged as soon as all its names have values."""

    above_zero: str
    sentence: str
    at: str = ""


@dataclass(frozen=True)
class Situation:
    """What holds, and how it is told.

    relations: the laws, or a function of the data where a choice decides which hold. openings: the
    first sentence, in at least three wordings. tell: by datum, the sentence that gives it, ``{}``
    standing for the value; empty where the opening gives it. ask: by unknown, what to calculate, where
    "Calculate" and the box's words will not do. ways: by signed quantity, its kind of direction and the
    positive one; its value is told as a size with words. stated: the parts that come first. later: parts
    that follow from the values. refuse: raises Refusal for values that cannot be; judge: the same for each value, asked
    for or not, that follows from the data, None for one that is not real.
    warn: sentences about values that are worked all the same. proofs: checks beside those the laws give.
    told_at: by datum, values with a sentence of their own. limits: what must be above zero, and why. unfit: by
    unknown, why no value fits, where the engine's words will not do.
    A relation that declares no units takes those of the boxes and, for names without a box, of ``units``.
    """

    relations: Laws | Callable[[Data], Laws]
    openings: tuple[str, ...]
    tell: Mapping[str, str]
    ask: Mapping[str, str] = field(default_factory=dict)
    ways: Mapping[str, Way] = field(default_factory=dict)
    stated: tuple[Part, ...] = ()
    later: Callable[[Data, Values], tuple[Part, ...]] = lambda data, values: ()
    refuse: Callable[[Data, Values], None] = lambda data, values: None
    judge: Callable[[str, float | None], None] = lambda name, value: None
    warn: Callable[[Values], tuple[str, ...]] = lambda values: ()
    proofs: Callable[[Values], tuple[Check, ...]] = lambda values: ()
    scene: Callable[[Values], Figure] | None = None
    mistakes: tuple[Mistake, ...] = ()
    notes: tuple[str, ...] = ()
    told_at: Mapping[str, Mapping[float, str]] = field(default_factory=dict)
    limits: tuple[Limit, ...] = ()
    unfit: Mapping[str, str] = field(default_factory=dict)
    units: Mapping[str, str] = field(default_factory=dict)

    def measured(self, inputs: Mapping[str, Input]) -> Situation:
        """The same with the units of the boxes in its laws, where these declare none."""
        units = {name: "°" if item.unit == "°" else parse_unit(item.unit).si().text for name, item in inputs.items()}
        units |= self.units
        first = self.relations
        if callable(first):
            return replace(self, relations=lambda data: tuple(law.in_units(units) for law in first(data)))
        return replace(self, relations=tuple(law.in_units(units) for law in first))

    def laws(self, data: Data) -> Laws:
        """The relations that hold for these data."""
        return self.relations(data) if callable(self.relations) else self.relations

    def steps(self, data: Data) -> list[Step]:
        """Every step that the laws allow, those for one unknown in the order of the laws."""
        return [*(self._made(self.relations(data)) if callable(self.relations) else self._always)]

    @cached_property
    def _always(self) -> tuple[Step, ...]:
        """The steps where no data decide which laws hold: the same for every answer."""
        return () if callable(self.relations) else self._made(self.relations)

    def _made(self, laws: Laws) -> tuple[Step, ...]:
        return tuple([self._turned(step) for relation in laws for step in relation.steps()])

    def _turned(self, step: Step) -> Step:
        way = self.ways.get(step.makes)
        if step.direction is not None or way is None:
            return step
        kind, positive = way
        name = step.makes

        def towards(values: Values) -> Direction | None:
            return kind.by_sign(values[name], positive)

        return replace(step, direction=towards)


def question(
    key: str,
    title: str,
    situation: Situation | Callable[[Data], Situation],
    fields: tuple[Field, ...],
    example: Mapping[str, object],
    *,
    laws: tuple[str, ...],
    draws: Mapping[str, Draw],
    constants: tuple[str, ...] = (),
    unknowns: tuple[str, ...] | None = None,
    drawn: tuple[str, ...] = (),
    drawn_later: Mapping[str, int] | None = None,
    asks: str = "",
    adjust: Callable[[dict[str, object], object, int], dict[str, object]] | None = None,
    levels: tuple[int, ...] = (1, 2, 3),
    scenario: bool = False,
    since: int = 1,
    any_givens: bool = True,
    former: tuple[str, ...] = (),
) -> Question:
    """The question that a situation makes: any box may be asked, any that lead to it are enough.

    situation: a function of the data where choices decide what holds and how it is told; it may raise
    Refusal. unknowns: the boxes that may be asked, where that is not each of them. any_givens: False where
    one box alone stays empty. adjust, asks, drawn, drawn_later: as in Question.
    """
    inputs = {item.name: item for item in fields if isinstance(item, Input)}
    always = situation.measured(inputs) if isinstance(situation, Situation) else None

    def planned(data: Data) -> Plan:
        if isinstance(situation, Situation):
            return _plan(data, always or situation, inputs)
        return plan(data, situation(data), inputs)

    fixed = always.relations if always else ()
    return Question(
        key=key,
        title=title,
        fields=fields,
        unknowns=tuple(inputs) if unknowns is None else unknowns,
        asks=asks,
        drawn=drawn,
        drawn_later=drawn_later or {},
        any_givens=any_givens,
        plan=planned,
        relations=() if callable(fixed) else fixed,
        laws=laws,
        constants=constants,
        example=example,
        draws=draws,
        adjust=adjust,
        levels=levels,
        scenario=scenario,
        since=since,
        former=former,
    )


def plan(data: Data, situation: Situation, inputs: Mapping[str, Input], rests: Data | None = None) -> Plan:
    """One set of data worked: a part for each unknown. Raises Refusal.

    rests: the data that the answer rests on, where they are not those that ``core`` leaves.
    """
    return _plan(data, situation.measured(inputs), inputs, rests)


def _plan(data: Data, situation: Situation, inputs: Mapping[str, Input], rests: Data | None = None) -> Plan:
    ways = situation.steps(data)
    units = {step.makes: step.unit for step in ways}
    boxes = {name: item.unit for name, item in inputs.items()}
    angles = {name: "°" for name, unit in (boxes | units).items() if unit == "°"}
    needed = rests or core(data, ways, *data.asked_names)
    follow = spread(needed.values, ways, data.settings.constants(), situation.judge)
    chains = put_back(led(needed, ways, inputs), situation.laws(data), set(needed.known))
    steps = tuple(step for _, chain in chains for step in chain)
    values = possible(needed, steps, situation, inputs, follow)
    made = {step.makes for step in steps}
    situation.refuse(data, values)
    return Plan(
        story=story(data, situation),
        parts=(
            *situation.stated,
            *(
                Part(
                    f"find-{name}" if len(chains) > 1 else "find",
                    "calculate",
                    asked(name, situation, inputs),
                    chain,
                    answer=name,
                )
                for name, chain in chains
            ),
            *situation.later(data, values),
        ),
        values={name: value for name, value in data.values.items() if name not in made},
        units=angles,
        scene=situation.scene,
        checks=checks(situation.laws(data), steps, values, situation.proofs(values)),
        warnings=situation.warn(values),
        notes=(*situation.notes, *fits(data, ways, steps, units)),
        mistakes=tuple(m for m in situation.mistakes if data.has(m.at) and m.at not in made),
    )


def possible(
    data: Data, steps: Sequence[Step], situation: Situation, inputs: Mapping[str, Input], follow: Values
) -> Values:
    """The values of the steps. Refuses data that leave one without a real value, a size that comes out below
    what its box allows, and what a limit forbids. ``follow``: all that follows from the data."""
    try:
        values = worked(data, steps)
    except Refusal:
        for step in steps:
            if step.makes not in follow and step.makes in situation.unfit:
                raise Refusal(None, situation.unfit[step.makes]) from None
        within(data, {**data.known, **follow}, situation)
        raise
    for step in steps:
        sentence = unfit(step, values[step.makes], inputs.get(step.makes), data, situation)
        if sentence:
            raise Refusal(None, situation.unfit.get(step.makes, sentence))
    within(data, {**data.known, **follow, **values}, situation)
    return values


def within(data: Data, values: Values, situation: Situation) -> None:
    """Refuses values that break a limit of the situation."""
    for limit in situation.limits:
        line = expression(limit.above_zero)
        if set(line.names) <= values.keys() and line.value(values) <= 0:
            raise Refusal(limit.at if data.has(limit.at) else None, limit.sentence)


def unfit(step: Step, value: float, item: Input | None, data: Data, situation: Situation) -> str:
    """Why a value found cannot be, by the limits of its box; '' if it can."""
    if item is None or item.signed:
        return ""
    counted = math.degrees(value) if item.unit == "°" else value
    least = item.over or 0.0
    too_small = counted < least or (counted == least and item.over is not None)
    if not too_small and (item.under is None or counted < item.under):
        return ""
    must = f"be {'greater than' if item.over is not None else 'at least'} {least:g}".replace(" 0", " zero")
    if not too_small:
        must = f"be less than {item.under:g}{'°' if item.unit == '°' else ''}"
    shown = measure(value, step.unit, data.settings.style).text
    directions = " and their directions" if any(data.has(name) for name in situation.ways) else ""
    said = the(item.words)
    return (
        f"{said[0].upper()}{said[1:]} would come out as {shown}, but it must {must}: no such value fits these data."
        f" Check the numbers{directions}."
    )


def put_back(
    chains: Sequence[tuple[str, tuple[Step, ...]]], laws: Laws, known: set[str]
) -> list[tuple[str, tuple[Step, ...]]]:
    """The chains, each with what dropped out of two equations put together and is to be known as well."""
    pairs = [law for law in laws if isinstance(law, Together) and law.back]
    made = known | {step.makes for _, chain in chains for step in chain}
    longer = list[tuple[str, tuple[Step, ...]]]()
    for name, chain in chains:
        extra = list[Step]()
        for pair in pairs:
            if pair.drop not in made and pair.steps()[0].make in {step.make for step in chain}:
                extra.append(pair.put_back())
                made = made | {pair.drop}
        longer.append((name, (*chain, *extra)))
    return longer


def led(data: Data, ways: Sequence[Step], inputs: Mapping[str, Input]) -> list[tuple[str, tuple[Step, ...]]]:
    """The unknowns with the steps to each, those first that others need; no step stands twice."""
    waiting = dict.fromkeys(data.asked_names)
    known, found = set(data.known), list[tuple[str, tuple[Step, ...]]]()
    while waiting:
        chains = {name: _lead(known, data, ways, name, inputs) for name in waiting}
        # the one whose steps make none of the others first
        name = min(
            waiting,
            key=lambda one: sum(step.makes in waiting for step in chains[one]) * 100 + len(chains[one]),
        )
        found.append((name, chains[name]))
        known |= {step.makes for step in chains[name]}
        del waiting[name]
    return found


def _lead(
    known: set[str], data: Data, ways: Sequence[Step], name: str, inputs: Mapping[str, Input]
) -> tuple[Step, ...]:
    try:
        return lead(known, ways, name)
    except NoWay:
        raise Refusal(None, missing(known, ways, name, {n: the(item.words) for n, item in inputs.items()})) from None


def missing(known: set[str], ways: Sequence[Step], target: str, words: Mapping[str, str]) -> str:
    """What is asked, that it does not follow, and which single one of the others in ``words`` would be enough."""
    asked = words[target]
    helpful = [
        said
        for name, said in words.items()
        if name not in known and name != target and follows({*known, name}, ways, target)
    ]
    more = f"Add {' or '.join(helpful)}." if helpful else "More of the boxes must be filled."
    return f"{asked[0].upper()}{asked[1:]} does not follow from these data. {more}"


def the(words: str) -> str:
    """A box's words inside a sentence: "Mass of the ball" -> "the mass of the ball"; "Charge 3" -> "charge 3"."""
    lowered = words[0].lower() + words[1:] if words[1:2].islower() else words
    if re.fullmatch(r"\w+ \d+", words):  # what has a number is a name
        return lowered
    return f"the {lowered}"


def asked(name: str, situation: Situation, inputs: Mapping[str, Input]) -> str:
    """What the part for ``name`` asks."""
    return situation.ask.get(name, f"Calculate {the(inputs[name].words)}.")


def story(data: Data, situation: Situation) -> str:
    """The opening, then the sentence of every datum that is given."""
    told = [data.pick(*situation.openings)]
    for name, words in situation.tell.items():
        if data.has(name):
            own = situation.told_at.get(name, {}).get(data.values[name], words)
            told.append(own.format(said(data, name, situation)))
    return " ".join(filter(None, told))


def said(data: Data, name: str, situation: Situation) -> str:
    """A datum in the story: a signed one as a size and the words of its direction."""
    way = situation.ways.get(name)
    if way is None or not data.values[name]:
        return data.said[name]
    where = way[0].by_sign(data.values[name], way[1])
    size = data.said[name].lstrip("+−-")
    return f"{size} {where.words}" if where else size


def checks(laws: Laws, steps: Sequence[Step], values: Values, proofs: tuple[Check, ...] = ()) -> tuple[Check, ...]:
    """Every law that the answer did not use and whose values are all known, and the proofs; else the laws
    used, put back. A law of two names, such as a = −g, only gives a value its sign, and proves nothing."""
    used = {step.law for step in steps} | {line for step in steps for line in step.lines}
    relations = [r for r in laws if isinstance(r, Relation)]
    for relation in laws:
        if isinstance(relation, Together):
            relations += [relation.first, relation.second]
    open_ = {r.law: r for r in relations if set(equation(r.law).names) <= values.keys()}
    open_ = {law: r for law, r in open_.items() if len(equation(law).names) > SAME_VALUE}
    second = [r for law, r in open_.items() if law not in used]
    if second or proofs:
        return (
            *(Check(f"A second way: {r.what[0].lower()}{r.what[1:]}", r.law, sizes=r.sizes) for r in second),
            *proofs,
        )
    return tuple(
        Check("Put the values back into the law: both sides must agree", r.law, sizes=r.sizes)
        for law, r in open_.items()
        if law in used
    )
