"""Charges shared by contact: two identical spheres, or three that touch in turn; any one charge unknown.

Sharing between identical conductors keeps signs: Q′ = (Q₁ + Q₂)/2.
A charge is a whole number of electron charges: n = |ΔQ|/e.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from calc.figures import Figure
from calc.figures.charges import Charge, spheres_on_line
from calc.model.answers import Direction
from calc.model.directions import SIGN_OF_CHARGE
from calc.model.questions import (
    NO_MARKS,
    SA,
    Check,
    Choice,
    Data,
    Draw,
    Mistake,
    Part,
    Plan,
    Question,
    Refusal,
    Step,
    Values,
)
from calc.model.relations import Relation, Towards
from calc.topics.coulomb.electrons import few_electrons, refuse_part_of_one
from calc.topics.shared.electrostatics import CONSERVATION, QUANTISATION, charge, state
from calc.working.chain import worked

KEPT = "Keep signs when sharing."
MADE = "What is on both afterwards is twice what one of them has."
ALREADY_EQUAL = "The charges are already equal: nothing would move. Change one of them."


def by_sign(name: str) -> Towards:
    """The sign of the charge ``name``, from its value."""
    return lambda values: SIGN_OF_CHARGE.by_sign(values[name], "positive")


def _shared() -> Relation:
    relation = Relation(
        "Q_new = (Q1+Q2)/2",
        what="Share the net charge equally",
        why="Identical conductors share the net charge equally. Here the signs do count: keep them.",
        plain="Put the two charges in one pot, minus signs included, and give each sphere half.",
        units={"Q_new": "C", "Q1": "C", "Q2": "C"},
        directions={name: by_sign(name) for name in ("Q_new", "Q1", "Q2")},
        mistakes=(
            Mistake("sizes-averaged", "Q_new", "(abs(Q1)+abs(Q2))/2", KEPT),
            Mistake("not-halved", "Q_new", "Q1+Q2", "Shared by two: halve it.", "the answer is twice the right one"),
            *(
                mistake
                for one, other in (("Q1", "Q2"), ("Q2", "Q1"))
                for mistake in (
                    Mistake("not-doubled", one, f"Q_new - {other}", f"{MADE} Double it first."),
                    Mistake(
                        "sign-turned",
                        one,
                        f"2*Q_new + {other}",
                        "Taking away a negative charge makes the rest larger: keep both minus signs.",
                    ),
                )
            ),
        ),
    )
    back = {
        name: replace(
            relation.step(name),
            what="Undo the sharing",
            why=f"{MADE} Nothing is lost, so taking away the other sphere's charge leaves this one's. Keep the signs.",
            plain="Put both halves back into one pot, then take out what the other sphere had brought.",
        )
        for name in ("Q1", "Q2")
    }
    return replace(relation, by_hand=back)


SHARING = _shared()


def shared_as(first: str, second: str, after: str) -> Relation:
    """The sharing of two named charges."""
    names = {"Q1": first, "Q2": second, "Q_new": after}
    hands = {
        names[old]: replace(SHARING.renamed(**names).step(names[old]), what=step.what, why=step.why, plain=step.plain)
        for old, step in SHARING.by_hand.items()
    }
    return replace(SHARING.renamed(**names), by_hand=hands)


def moved(
    spheres: tuple[str, str],
    donor: str,
    names: Mapping[str, str] | None = None,
) -> tuple[Step, ...]:
    """The electrons that moved between two spheres, from the first one's change of charge.

    names: this touch's own names for Q1 (the first sphere before), Q_new, DeltaQ and n.
    """
    q1, q_new, change, n = (dict(names or {}).get(name, name) for name in ("Q1", "Q_new", "DeltaQ", "n"))
    first, second = spheres
    options = tuple(
        (f"{one}-to-{other}", f"electrons move from {one} to {other}") for one, other in (spheres, (second, first))
    )
    key = f"{donor}-to-{second if donor == first else first}"
    return (
        Step(
            law=f"{change} = {q_new} - {q1}",
            make=f"{change} = {q_new} - {q1}",
            unit="C",
            marks=NO_MARKS,
            what=f"Find the change in {first}'s charge",
            why="Only electrons move, so the change of charge counts them. Final minus initial.",
            plain=f"How much more (or less) charge {first} has now than before.",
            mistakes=(Mistake("final-charge", change, q_new, "Count the change, not the final charge."),),
        ),
        Step(
            law=f"{n} = abs({change})/e",
            make=f"{n} = abs({change})/e",
            unit="",
            count=True,
            what="Count the electrons",
            why="Each electron carries e in size. Electrons leave the more negative sphere.",
            plain="Divide the charge that moved by the charge of one electron.",
            direction=Direction(key, dict(options)[key], options),
            mistakes=(Mistake("multiplied", n, f"abs({change})*e", "Divide by the charge of one electron: n = Q/e."),),
        ),
    )


def refuse_idle_touch(charge_moved: float, scale: float, data: Data, field: str) -> None:
    """Refuses a touch in which no electron moves."""
    if abs(charge_moved) <= 1e-9 * scale:
        raise Refusal(field, ALREADY_EQUAL)
    refuse_part_of_one(abs(charge_moved) / data.settings.constant("e"), field)


def scene(values: Values, *names: str) -> Figure:
    """The spheres in a row before they touch, with the signs of their charges."""
    return spheres_on_line(
        [
            Charge(letter, values[name], float(place), shows=(name,))
            for place, (letter, name) in enumerate(zip("ABC", names, strict=False))
        ],
        title=f"The {'two' if len(names) == 2 else 'three'} spheres before they touch",
        notes=("Distances not to scale.",),
    )


def last_typed(data: Data, *names: str) -> str:
    """The last of these boxes that is filled: where data that do not suit each other are refused."""
    return next(name for name in reversed(names) if data.has(name))


# --- two spheres -------------------------------------------------------------------------------------------

TWO_ASKED = {
    "Q_new": "Calculate the charge on each sphere after they have touched.",
    "Q1": "Calculate the charge that A carried before the touch.",
    "Q2": "Calculate the charge that B carried before the touch.",
}


def plan_sharing(data: Data) -> Plan:
    step = SHARING.step(data.asked)
    values = worked(data, (step,))
    q1, q2, q_new = (values[name] for name in ("Q1", "Q2", "Q_new"))
    field = last_typed(data, "Q1", "Q2", "Q_new")
    refuse_idle_touch(q_new - q1, max(abs(q1), abs(q2)), data, field)
    donor = "A" if q1 < q2 else "B"
    facts = [
        f"{letter} {was} {data.said[name]}"
        for letter, name, was in (("A", "Q1", "carries"), ("B", "Q2", "carries"))
        if data.has(name)
    ]
    ends = f" Afterwards each carries {data.said['Q_new']}." if data.has("Q_new") else ""
    story = data.pick(
        "Two identical metal spheres, A and B, stand on insulating stems. At first {}. They are made to touch and are"
        " then separated.{}",
        "A and B are equal metal spheres on glass rods. At first {}. They are brought together and taken apart"
        " again.{}",
        "Two identical conducting spheres, A and B, hang on nylon threads. At first {}. They swing together, touch once"
        " and are held apart.{}",
    )
    return Plan(
        story=story.format(" and ".join(facts), ends),
        parts=(
            state(CONSERVATION),
            Part("find", "calculate", TWO_ASKED[data.asked], (step,)),
            Part(
                "electrons",
                "calculate",
                "Calculate how many electrons moved, and say from which sphere to which.",
                moved(("A", "B"), donor),
            ),
        ),
        values=dict(data.values),
        scene=lambda v: scene(v, "Q1", "Q2"),
        checks=(
            Check("The charge together is the same before and after", "Q1 + Q2 = 2*Q_new"),
            Check("What one sphere lost the other gained", "Q_new - Q1 = Q2 - Q_new"),
        ),
        warnings=few_electrons(abs(q_new - q1) / data.settings.constant("e")),
    )


TWO_SPHERES = Question(
    key="sharing",
    title="Two spheres share their charge",
    fields=(
        charge("Q1", "Charge on A before"),
        charge("Q2", "Charge on B before"),
        charge("Q_new", "Charge on each sphere afterwards"),
    ),
    unknowns=("Q_new", "Q1", "Q2"),
    plan=plan_sharing,
    constants=("e",),
    since=2,
    laws=(CONSERVATION.name, QUANTISATION.name),
    example={"Q1": "+7 nC", "Q2": "-3 nC", "Q_new": ""},
    draws={
        "Q1": Draw((5, 6, 7, 9, -8), "nC", harder=(3.6, -5.2, 7.8)),
        "Q2": Draw((-2, -3, -4, -6, 1.5), "nC", harder=(-1.4, -4.6, 2.2)),
        "Q_new": Draw((2, 2.5, -1, 3.5), "nC", harder=(1.3, -2.7, 4.1)),
    },
)

# --- three spheres in turn ---------------------------------------------------------------------------------

FIRST_TOUCH = shared_as("Q_A", "Q_B", "Q_AB")
SECOND_TOUCH = shared_as("Q_AB", "Q_C", "Q_BC")
BETWEEN = "Calculate the charge that A and B each carry between the two touches."
THREE_ASKED = {
    "Q_BC": "Calculate the charge on B and on C after the second touch.",
    "Q_A": "Calculate the charge that A carried at the start.",
    "Q_B": "Calculate the charge that B carried at the start.",
    "Q_C": "Calculate the charge that C carried at the start.",
}
TOUCH_1 = {"Q1": "Q_A", "Q_new": "Q_AB", "DeltaQ": "DeltaQ_1", "n": "n_1"}
THIRD_TOUCH = shared_as("Q_BC", "Q_AB", "Q_CA")
TOUCH_3 = {"Q1": "Q_BC", "Q_new": "Q_CA", "DeltaQ": "DeltaQ_3", "n": "n_3"}
TOUCH_2 = {"Q1": "Q_AB", "Q_new": "Q_BC", "DeltaQ": "DeltaQ_2", "n": "n_2"}


def three_mistakes(step: Step) -> Step:
    """The slips that only a second touch makes possible."""
    forgotten = "After the first touch B has its new charge: use that, not the charge it began with."
    further = {
        "Q_BC": (
            Mistake("first-touch-forgotten", "Q_BC", "(Q_B + Q_C)/2", forgotten),
            Mistake(
                "shared-by-three",
                "Q_BC",
                "(Q_A + Q_B + Q_C)/3",
                "Only two spheres touch at a time: halve twice, do not divide by three.",
            ),
        ),
        "Q_C": (Mistake("first-touch-forgotten", "Q_C", "2*Q_BC - Q_B", forgotten),),
    }
    return replace(step, mistakes=(*step.mistakes, *further.get(step.makes, ())))


def plan_three(data: Data) -> Plan:
    asked = data.asked
    between = SECOND_TOUCH.step("Q_AB") if asked in ("Q_A", "Q_B") else FIRST_TOUCH.step("Q_AB")
    relation = FIRST_TOUCH if asked in ("Q_A", "Q_B") else SECOND_TOUCH
    between, found = replace(between, marks=SA), three_mistakes(relation.step(asked))
    v = worked(data, (between, found))
    scale = max(abs(v[name]) for name in ("Q_A", "Q_B", "Q_C"))
    refuse_idle_touch(v["Q_AB"] - v["Q_A"], scale, data, last_typed(data, "Q_A", "Q_B", "Q_BC"))
    refuse_idle_touch(v["Q_BC"] - v["Q_AB"], scale, data, last_typed(data, "Q_C", "Q_BC"))
    counts = (
        electrons_part(1, "A", "B", v["Q_A"] < v["Q_B"], TOUCH_1),
        electrons_part(2, "B", "C", v["Q_AB"] < v["Q_C"], TOUCH_2),
    )
    third: tuple[Part, ...] = ()
    if data.choices["then"] == "third":
        refuse_idle_touch((v["Q_AB"] - v["Q_BC"]) / 2, scale, data, last_typed(data, "Q_C", "Q_BC"))
        ask = "Calculate the charge on C and on A after they have touched."
        third = (
            Part("third", "calculate", ask, (THIRD_TOUCH.step("Q_CA"),)),
            electrons_part(3, "C", "A", v["Q_BC"] < v["Q_AB"], TOUCH_3),
        )
    asks = (Part("between", "calculate", BETWEEN, (between,)), Part("find", "calculate", THREE_ASKED[asked], (found,)))
    carried = [
        f"{letter} {data.said[name]}"
        for letter, name in zip("ABC", ("Q_A", "Q_B", "Q_C"), strict=True)
        if data.has(name)
    ]
    listed = " and ".join([", ".join(carried[:-1]), carried[-1]])
    story = data.pick(
        "Three identical metal spheres, A, B and C, stand on insulating stems. At the start the charges are: {}. A"
        " touches B and is taken away; then B touches C and is taken away.{}",
        "A, B and C are equal metal spheres on plastic rods. At the start the charges are: {}. First A and B are"
        " brought together and parted, then B and C.{}",
        "Three identical conducting spheres, A, B and C, hang on nylon threads. At the start the charges are: {}. B is"
        " held against A and let go; after that it is held against C and let go.{}",
    )
    end = f" After the second touch B and C each carry {data.said['Q_BC']}." if data.has("Q_BC") else ""
    end += " In the end C touches A." if third else ""
    last = (
        (
            Check(
                "Nor did the third touch change the charge of all three",
                "Q_A + Q_B + Q_C = Q_BC + 2*Q_CA",
            ),
        )
        if third
        else ()
    )
    return Plan(
        story=story.format(listed, end),
        parts=(*asks, *counts, *third),
        values=dict(data.values),
        scene=lambda values: scene(values, "Q_A", "Q_B", "Q_C"),
        checks=(
            Check(
                "The charge of all three together is the same at the start and after the second touch",
                "Q_A + Q_B + Q_C = Q_AB + 2*Q_BC",
            ),
            Check("In the second touch C gained what B lost", "Q_BC - Q_C = Q_AB - Q_BC"),
            *last,
        ),
        notes=("Sphere A keeps the charge of the first touch through the second: it has no part in that.",),
        warnings=few_electrons(
            min(abs(v["Q_AB"] - v["Q_A"]), abs(v["Q_BC"] - v["Q_AB"])) / data.settings.constant("e")
        ),
    )


def electrons_part(touch: int, first: str, second: str, first_gives: bool, names: Mapping[str, str]) -> Part:
    """How many electrons move in one touch, and which way."""
    ask = f"Calculate how many electrons moved when {first} and {second} touched, and say from which sphere to which."
    steps = moved((first, second), first if first_gives else second, names)
    return Part(f"electrons-{touch}", "calculate", ask, steps)


THREE_SPHERES = Question(
    key="three-spheres",
    title="Three spheres touch in turn",
    fields=(
        charge("Q_A", "Charge on A at the start"),
        charge("Q_B", "Charge on B at the start"),
        charge("Q_C", "Charge on C at the start"),
        charge("Q_BC", "Charge on B and on C after the second touch"),
        Choice("then", "Afterwards", (("parted", "they stay apart"), ("third", "C touches A")), quiet=("parted",)),
    ),
    unknowns=("Q_BC", "Q_A", "Q_B", "Q_C"),
    plan=plan_three,
    constants=("e",),
    since=2,
    laws=(CONSERVATION.name, QUANTISATION.name),
    example={"Q_A": "+8 nC", "Q_B": "-2 nC", "Q_C": "-5 nC", "Q_BC": "", "then": "parted"},
    draws={
        "Q_A": Draw((4, 6, 8, -6, 12), "nC", harder=(5.6, -4.8, 9.2)),
        "Q_B": Draw((-2, 3, -4, 5), "nC", harder=(-1.6, 2.8, -6.4)),
        "Q_C": Draw((-5, 9, -8, 7), "nC", harder=(-3.4, 8.6, -7.2)),
        "Q_BC": Draw((-1, 1.5, 2, -3), "nC", harder=(1.7, -2.3, 3.9)),
        "then": Draw(("parted",), harder=("parted", "third")),
    },
)
