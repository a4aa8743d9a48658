"""Two connected bodies: an equation for each, put together for a, a mass or μ; T from one body alone.

What the questions of this chapter share: their boxes, the sentences of mistakes and refusals, their laws' reasons, the
free-body diagram of each body. A light string that does not stretch, over a light pulley without friction, pulls both
with the same T, and both have the same size of acceleration. Ranges and marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from calc.figures import Figure
from calc.language.expressions import equation
from calc.model.answers import Law, Mark
from calc.model.questions import Check, Data, Part, Question, Values
from calc.topics.forces.words import TWO, pull
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import SECOND
from calc.topics.shared.quantities import Quantity, acceleration, friction_coefficient, mass
from calc.working.declaring import Given, Limit, Mistake, Relation, Together, boxes, state, told
from calc.working.solving import Laws, Situation, question

UNITS = {
    "m1": "kg",
    "m2": "kg",
    "P": "N",
    "mu": "",
    "a": "m·s⁻²",
    "T": "N",
    "R": "N",
    "f": "N",
    "f_1": "N",
    "f_2": "N",
    "N_1": "N",
    "theta": "°",
}
EACH = "Write Newton's second law for each body and put the two together"
PLAIN_EACH = "Each body has its own sum of forces; what joins them has the same size in both, so it can be got rid of."
PLAIN_ONE = "Look at one body alone: what is left of its forces is what speeds it up."
PLAIN_F = "The harder two surfaces are pressed together, the harder it is to slide one on the other."
EACH_MARKS = (Mark("formula"), Mark("substitution", 2), Mark("answer", 2))  # the law once, each body, solving
FREE = "A hanging mass cannot accelerate it at g or more: the string pulls it back. Give an acceleration below g."
SLACK = "The string goes slack: treat the bodies separately, or check the numbers."
HANGING_WEIGHT = "You made {T} as large as the weight of what hangs. Then it could not accelerate: use {%s}."
ONE_MASS = "You divided by one mass alone. Both bodies accelerate: divide by {m1 + m2}."
NO_FRICTION = "You left friction out. It acts against the motion: subtract {f}."
ONE_FRICTION = "You counted the friction on one body. Each touching body has its own: subtract {f_1 + f_2}."
ADDED = "You added {m2*a} to the weight. It falls, so its weight beats the tension: use {m2*g - m2*a}."
NET_ONLY = "You made the tension as large as the net force. Net force is not tension: put the other forces in as well."
ADDED_G = "You added {g} and {a}. It falls, so its weight beats the tension: use {g - a}."
AGAINST = "You let friction help the motion. It acts against it: add {f} to {m1*a}."
ALL_TENSION = "You made friction as large as the tension. Then it would not accelerate: use {T - m1*a}."
AT_ONCE = "Both bodies at once: what drives them less what holds them back, over all the mass"
OTHER_BODY = "The tension from the other body must be the same"
INTERNAL = "You kept the tension in the equation of both together. Internal forces cancel: leave it out."

tension = Quantity("N", 1e-3, 1e6, f"A string only pulls: the tension must be greater than zero. {SLACK}")
contact = Quantity("N", 1e-3, 1e6, "Bodies that touch only push each other: give the size, greater than zero.")
SPEEDS = replace(acceleration, refusal="Enter the size; they move in the direction of the story.")

type Rows = tuple[tuple[str, str, str, float], ...]  # of a free-body diagram, see free_body


def masses(first: str, second: str, numbers_1: str, numbers_2: str) -> tuple[Given, Given]:
    """The boxes m1 and m2. first, second: what the bodies are called in the story."""
    return (
        mass("m1", f"Mass of {first}", f"The mass of {first} is {{}}.", numbers_1),
        mass("m2", f"Mass of {second}", f"The mass of {second} is {{}}.", numbers_2),
    )


def coefficient(where: str, numbers: str) -> Given:
    """The box μ. where: "of each body with the floor"."""
    tell = f"The coefficient of kinetic friction {where} is {{}}."
    return friction_coefficient("mu", "Coefficient of kinetic friction", tell, numbers)


def common(numbers: str, tell: str = "They accelerate at {}.") -> Given:
    """The box a."""
    return SPEEDS("a", "Acceleration", tell, numbers, told_at={0.0: "They move at constant velocity."})


def string(numbers: str) -> Given:
    """The box T."""
    return tension("T", "Tension in the string", "The tension in the string is {}.", numbers)


def pulling(numbers: str, words: str) -> Given:
    """The box P. words: "The pull P is {}."."""
    return pull("P", "Force", words, numbers)


def friction(name: str, body: str) -> Relation:
    """f = μmg on the level."""
    return Relation(
        f"{name} = mu*{body}*g",
        what=f"Friction on {'the first' if body == 'm1' else 'the second'} body",
        why="On the level N = mg, and it slides, so friction is μN, against the motion.",
        units={name: "N"},
        plain=PLAIN_F,
        marks=TWO,
    )


def put_together(first: Relation, second: Relation, find: str, drop: str, slips: tuple[Mistake, ...] = ()) -> Together:
    """The equations of both bodies, put together. slips: mistakes at ``find``."""
    one = replace(first, units=UNITS, marks=EACH_MARKS, mistakes=slips)
    return Together(one, replace(second, units=UNITS, mistakes=()), find, drop, EACH, PLAIN_EACH, back=True)


def sizes(known: dict[str, float]) -> dict[str, float]:
    """Weights, as far as they are known."""
    return {f"w{n}": known[f"m{n}"] * known["g"] for n in (1, 2) if f"m{n}" in known}


@dataclass(frozen=True)
class Set:
    """One set-up of two bodies.

    boxes: its quantities. laws, rows (per body: key, name, rows of its diagram, guide), sizes (of forces that are no
    values of their own) and figure may hang on the data. enough: for each unknown, what practice gives.
    """

    key: str
    title: str
    boxes: tuple[Given, ...]
    laws: Callable[[Data], Laws]
    openings: Callable[[Data], tuple[str, ...]]
    diagrams: Callable[[Data], tuple[tuple[str, str, Rows, float | None], ...]]
    sizes: Callable[[dict[str, float]], dict[str, float]]
    figure: Callable[[Values], Figure]
    enough: Mapping[str, str]
    limits: tuple[Limit, ...] = ()
    unfit: Mapping[str, str] | Callable[[Data], Mapping[str, str]] | None = None
    proofs: tuple[Check, ...] = ()
    checks_of: Callable[[Data], tuple[Check, ...]] = lambda data: ()
    states: Law = SECOND
    also: tuple[Law, ...] = ()
    later: Callable[[Data, Values], tuple[Part, ...]] = lambda data, values: ()
    refuse: Callable[[Data, Values], None] = lambda data, values: None


def situation(here: Set, data: Data) -> Situation:
    """The situation of a set-up."""
    unfit = here.unfit(data) if callable(here.unfit) else here.unfit or {}
    basis = replace(
        told(here.boxes),
        relations=here.laws(data),
        openings=here.openings(data),
        limits=here.limits,
        unfit=unfit,
        units=UNITS,
        notes=(FBD_RULES,),
        proofs=lambda v: tuple(
            one for one in (*here.proofs, *here.checks_of(data)) if set(equation(one.equation).names) <= {*v, "g"}
        ),
        later=here.later,
        refuse=here.refuse,
        scene=here.figure,
    )
    steps = basis.steps(data)
    return replace(
        basis,
        stated=(
            state(here.states),
            *(
                free_body(f"draw-{key}", name, rows, steps, data, f"Free-body diagram of {name}", guide, here.sizes)
                for key, name, rows, guide in here.diagrams(data)
            ),
        ),
    )


def connected(
    here: Set, choices: tuple[object, ...] = (), adjust: Callable[..., dict[str, object]] | None = None
) -> Question:
    """The question of a set-up. adjust: on what is drawn, before the boxes not needed are emptied."""
    names = tuple(one.box.name for one in here.boxes)

    def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
        find = next(name for name in names if not typed[name])
        ready = adjust(typed, chance, find) if adjust else typed
        keep = here.enough[find].split()
        return {**ready, **{name: ready[name] if name in keep else "" for name in names}}

    return question(
        here.key,
        here.title,
        lambda data: situation(here, data),
        **boxes(*choices, *here.boxes),  # type: ignore[arg-type]
        laws=tuple(dict.fromkeys((here.states.name, SECOND.name, *(law.name for law in here.also)))),
        unknowns=tuple(here.enough),
        constants=("g",),
        asks=next(iter(here.enough)),
        adjust=practise,
        since=4,
    )
