"""A bounce: fall from a height, rebound to another, the change in velocity, and the force of the floor.

v² = 2gh before and after (v² = u² + 2aΔy from rest, and to rest at the top), Δv = v₂ − v₁ with signs, F_net Δt = mΔv
and N = F_net + mg with upwards positive. Either direction may be the positive one. Refusals, mistakes and marks: common
practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from calc.figures import Figure
from calc.figures.vertical import Height, Place, vertical
from calc.model.directions import UP_DOWN
from calc.model.questions import SA, Check, Data, Mistake, Refusal, Values
from calc.model.relations import Relation
from calc.topics.projectile.equations import YOUNGER, only_given, sense_stated, turned
from calc.topics.projectile.laws import EQUATIONS, FREE_FALL
from calc.topics.shared.quantities import AGAINST, SIZE, Quantity, force, height, length, mass, time
from calc.working.declaring import boxes, state, told
from calc.working.solving import Situation, question

ADDS = "A bounce cannot add energy: it cannot rise higher than the height it fell from. Check both heights."
NOT_DOWN = {
    True: "Just before the bounce it moves downwards: give this velocity a minus sign.",
    False: "Just before the bounce it moves downwards, which is positive: give this velocity without a minus sign.",
}
NOT_UP = {
    True: "Just after the bounce it moves upwards, or stays at rest: this velocity cannot be negative.",
    False: "Just after the bounce it moves upwards, or stays at rest: this velocity cannot be positive.",
}
PULLS = "The floor only pushes: its force must be larger than the weight to stop what falls. Check the numbers."
SUBTRACTED = (
    "You subtracted the sizes. The velocity turns round: upwards is positive and downwards negative, so add the sizes"
    " for {Deltav}.",
    "You subtracted the sizes. The velocity turns round: downwards is positive and upwards negative, so add the sizes"
    " for {Deltav}.",
)
SIGN_OFF = (
    "You left out the minus sign of {v_1}. It points downwards: subtract its size from {Deltav}.",
    "You left out the minus sign of {Deltav}. It points upwards: subtract its size from {v_1}.",
)
NO_ROOT = "You stopped at the square. Take its square root: that is the size of {%s}."
OTHER_HEIGHT = "You took the other height. Use {%s} for {%s}: the one that belongs to this part of the motion."
WEIGHT = "You left the weight out. The floor also carries the weight: add {m*g} to {F_net}."
TAKEN_OFF = "You subtracted the weight. The floor makes the net force and carries the weight too: add {m*g}."
WEIGHT_OFF = "You left the weight out. {N} also carries it: subtract {m*g} from {N}."
WEIGHT_DOWN = "You left the weight out. The floor also carries the weight: add {m*g} to the size of {F_net}."
WEIGHT_OFF_DOWN = "You left the weight out. {N} also carries it: subtract {N} from {m*g}."
LOSES = (
    "The share that is lost lies between 0 % and 100 %: a bounce adds no energy, and there is no more than all of it to"
    " lose."
)
WHOLE_ENERGY = "You took the part that is lost. What is left is asked: use {1 - p/100}."


def before(up: bool) -> Relation:
    """From rest down to the floor."""
    sign, other = ("-", "") if up else ("", "-")
    what = "Upwards is positive, so v₁ is negative." if up else "Downwards is positive, and so is v₁."
    law = Relation(
        "v_1^2 = 2*g*h_1",
        what="From rest to the floor",
        why=f"From v² = u² + 2aΔy with u = 0: it falls from rest over the whole of h₁. {what}",
        plain="The higher it falls from, the faster it arrives.",
        dropped={"v_1": "It would point upwards, and it comes down: drop it."},
        mistakes=(
            Mistake("root-omitted", "v_1", "2*g*h_1", NO_ROOT % "v_1"),
            Mistake("other-height", "v_1", f"{sign}sqrt(2*g*h_2)", OTHER_HEIGHT % ("h_1", "v_1")),
        ),
    )
    units = {"v_1": "m·s⁻¹", "h_1": "m"}
    root = "sqrt(2*g*h_1)"
    step = replace(law.in_units(units).step("v_1"), make=f"v_1 = {sign}{root}", other=f"v_1 = {other}{root}")
    return replace(law, by_hand={"v_1": step}, units=units)


def after(up: bool) -> Relation:
    """From the floor up to rest."""
    what = "" if up else " Downwards is positive, so v₂ is negative."
    law = Relation(
        "v_2^2 = 2*g*h_2",
        what="From the floor to the highest point of the rebound",
        why=(
            "From v² = u² + 2aΔy with v = 0: at the top of the rebound it is at rest. It leaves the floor upwards."
            f"{what}"
        ),
        plain="How high it comes tells how fast it left the floor.",
        dropped={"v_2": "It would point downwards, and it leaves the floor upwards: drop it."},
        mistakes=(
            Mistake("root-omitted", "v_2", "2*g*h_2", NO_ROOT % "v_2"),
            Mistake("other-height", "v_2", f"{'' if up else '-'}sqrt(2*g*h_1)", OTHER_HEIGHT % ("h_2", "v_2")),
        ),
    )
    if up:
        return law
    units, root = {"v_2": "m·s⁻¹", "h_2": "m"}, "sqrt(2*g*h_2)"
    step = replace(law.in_units(units).step("v_2"), make=f"v_2 = -{root}", other=f"v_2 = {root}")
    return replace(law, by_hand={"v_2": step}, units=units)


def change(up: bool) -> Relation:
    """The change in velocity."""
    first, minus = ("Upwards", "v₁") if up else ("Downwards", "v₂")
    return Relation(
        "Deltav = v_2 - v_1",
        what="The change in velocity, with signs",
        why=(
            f"A change is final minus initial. {first} is positive, so {minus} goes in with its minus sign and the"
            " sizes add up."
        ),
        plain="First it has to lose all of its velocity downwards, then gain some upwards.",
        marks=SA,
        directions={"Deltav": lambda v: UP_DOWN.by_sign(v["Deltav"], "up" if up else "down")},
        mistakes=(
            Mistake(
                "sizes-subtracted",
                "Deltav",
                "abs(v_2) - abs(v_1)" if up else "abs(v_1) - abs(v_2)",
                SUBTRACTED[not up],
            ),
            Mistake(
                "sign-left-out",
                "v_2",
                "Deltav + abs(v_1)" if up else "abs(Deltav) + v_1",
                SIGN_OFF[not up],
            ),
        ),
    )


def pushed(up: bool) -> Relation:
    """Impulse equals change in momentum."""
    return Relation(
        "F_net*Deltat = m*Deltav",
        what="Impulse equals change in momentum",
        why="The net force during the contact changes the momentum of the body by mΔv, upwards.",
        plain="The shorter the contact, the larger the force.",
        directions={"F_net": lambda v: UP_DOWN.by_sign(v["F_net"], "up" if up else "down")},
    )


def carried(up: bool) -> Relation:
    """The force of the floor, its size."""
    plain = "The floor has two jobs: it turns the body round, and it holds it up."
    what = "The floor makes the net force and carries the weight"
    if up:
        return Relation(
            "N = F_net + m*g",
            what=what,
            why="Two forces act: N upwards and the weight downwards. The net force is N less the weight.",
            plain=plain,
            marks=SA,
            mistakes=(
                Mistake("weight-left-out", "N", "F_net", WEIGHT),
                Mistake("weight-subtracted", "N", "abs(F_net - m*g)", TAKEN_OFF),
                Mistake("weight-left-out", "F_net", "N", WEIGHT_OFF),
            ),
        )
    return Relation(
        "F_net = m*g - N",
        what=what,
        why="Two forces act: N upwards, which is negative, and the weight downwards. The net force is mg less N.",
        plain=plain,
        marks=SA,
        mistakes=(
            Mistake("weight-left-out", "N", "-F_net", WEIGHT_DOWN),
            Mistake("weight-subtracted", "N", "abs(F_net + m*g)", TAKEN_OFF),
            Mistake("weight-left-out", "F_net", "-N", WEIGHT_OFF_DOWN),
        ),
    )


def in_one(up: bool) -> Relation:
    """Impulse and the two forces together."""
    return Relation(
        "(N - m*g)*Deltat = m*Deltav" if up else "(m*g - N)*Deltat = m*Deltav",
        what=f"Impulse equals change in momentum, with the net force as {'N less the weight' if up else 'mg less N'}",
        why=f"The net force is {'N less the weight' if up else 'mg less N'}, and the mass stands in both.",
        units={"m": "kg"},  # for any other quantity there are two steps
        plain="The floor turns the body round and holds it up at the same time.",
    )


LOST = Relation(
    "h_2 = h_1*(1 - p/100)",
    what="The share of the energy that is left",
    why=(
        "Before the bounce the kinetic energy is mgh₁, after it mgh₂: what is left of it is h₂/h₁ of it, and p per"
        " cent are lost."
    ),
    plain="It comes as high again as the part of its energy that is left.",
    mistakes=(
        Mistake("part-lost", "h_2", "h_1*p/100", WHOLE_ENERGY),
        Mistake("part-lost", "h_1", "h_2/(p/100)", WHOLE_ENERGY),
        Mistake(
            "part-left",
            "p",
            "h_2/h_1*100",
            "You have the share that is left. The share that is lost is asked: subtract yours from the whole.",
        ),
    ),
)


@lru_cache(maxsize=2)
def laws(up: bool) -> tuple[Relation, ...]:
    """What holds, with upwards or downwards positive."""
    return (before(up), after(up), change(up), pushed(up), carried(up), in_one(up), LOST)


push = replace(force, refusal="The floor can only push: give the size of its force, zero or more.")
signed_velocity = Quantity("m·s⁻¹", 1e-3, 500, typed="m/s", signed=True, help=AGAINST)
signed_force = Quantity("N", 1e-3, 1e6, SIZE, over=None, signed=True, help=AGAINST)
share = Quantity("%", 1, 100, LOSES, over=None, under=100.000001)
QUANTITIES = (
    length(
        "h_1", "Height it falls from", "It is let go from rest at A, {} above the floor.", "2 m; 1,2 1,8 2; 0,95 1,95"
    ),
    height(
        "h_2",
        "Height it rises to",
        "It rises to B, {} above the floor.",
        "1,2 m; 0,5 0,8 1; 0,45 0,85",
        told_at={0.0: "It does not rise again."},
    ),
    signed_velocity("v_1", "Velocity just before the bounce", "It reaches the floor at {}.", "; -4 -7; -4,4 -7,4"),
    signed_velocity("v_2", "Velocity just after the bounce", "It leaves the floor at {}.", "; 2,5 4; 2,4 3,8"),
    mass("m", "Mass of the body", "It has a mass of {}.", "200 g; 150 200 400; 125 450"),
    time("Deltat", "Time of contact", "The contact lasts {}.", "50 ms; 20 40 60; 25 75"),
    push("N", "Force of the floor (average)", "The floor pushes it with an average force of {}.", "; 30 80; 25 95"),
    signed_velocity("Deltav", "Change in velocity", "Its velocity changes by {}.", "; 7 11; 6,5 11,5"),
    signed_force("F_net", "Net force (average)", "The average net force during the contact is {}.", "; 30 80; 25 90"),
    share(
        "p",
        "Kinetic energy lost in the bounce",
        "In the bounce it loses {} of its kinetic energy.",
        "; 20 60",
        ask="Calculate what percentage of its kinetic energy it loses in the bounce.",
    ),
)
YOUNG = QUANTITIES[-1]
QUANTITIES = (*QUANTITIES[:-1], replace(YOUNG, box=replace(YOUNG.box, since=5)))
SIGNED = ("v_1", "v_2", "Deltav", "F_net")


def refuse(data: Data, values: Values) -> None:
    """No bounce adds energy, none starts upwards or goes on downwards, and a floor does not pull."""
    up = data.choices["positive"] == "up"
    way = 1 if up else -1
    v_1, v_2 = values.get("v_1"), values.get("v_2")
    if v_1 is not None and v_1 * way >= 0:
        raise Refusal("v_1" if data.has("v_1") else None, NOT_DOWN[up])
    if v_2 is not None and v_2 * way < 0:
        raise Refusal("v_2" if data.has("v_2") else None, NOT_UP[up])
    fell = values.get("h_1", v_1**2 / (2 * values["g"]) if v_1 is not None else None)
    rose = values.get("h_2", v_2**2 / (2 * values["g"]) if v_2 is not None else None)
    if fell is not None and rose is not None and rose > fell * (1 + 1e-9):
        raise Refusal(next((name for name in ("h_2", "v_2") if data.has(name)), None), ADDS)
    if "N" in values and values["N"] <= values.get("m", 0.0) * values["g"]:
        raise Refusal("N" if data.has("N") else None, PULLS)


def scene(v: Values, up: bool = True) -> Figure:
    """The two heights side by side, with the velocities at the floor."""
    return vertical(
        [
            Place("A", 2.0, spot=True),
            Place("", 0.0, "v_1", False),
            Place("", 0.0, "v_2", True, 1),
            Place("B", 1.0, line=1, spot=True),
        ],
        [Height(0.0, 2.0, "h_1"), Height(0.0, 1.0, "h_2", 1)],
        ground=0.0,
        positive="up" if up else "down",
        title="Before and after the bounce",
    )


LOSS_GIVEN = 6  # the rule of drawing from which practice also gives the share of the energy that is lost
RATIO = Check("The ratio of the speeds, from the heights alone", "v_2/v_1 = -sqrt(h_2/h_1)")
GIVEN = {
    "N": "h_1 h_2 m Deltat",
    "F_net": "h_1 h_2 m Deltat",
    "Deltav": "h_1 h_2",
    "v_1": "h_1",
    "v_2": "v_1 Deltav",
    "h_1": "v_1",
    "h_2": "v_1 Deltav",
    "m": "h_1 h_2 Deltat N",
    "Deltat": "h_1 h_2 m N",
    "p": "h_1 h_2",
}
OPENINGS = (
    "A ball of soft rubber falls straight down on a stone floor and bounces. Air resistance is left out; upwards is"
    " positive.",
    "A toy cube of foam drops straight onto a level floor and jumps up again. Take upwards as positive and leave"
    " air resistance out.",
    "In a sports hall a ball is let go above the floor, and a sensor in the floor records the bounce. Upwards is"
    " positive; air resistance may be ignored.",
)


def situation(data: Data) -> Situation:
    """The bounce in the signs of the positive direction."""
    up = data.choices["positive"] == "up"
    return replace(
        told(QUANTITIES),
        relations=laws(up),
        openings=tuple(sense_stated(one, up) for one in OPENINGS),
        ways=dict.fromkeys(SIGNED, (UP_DOWN, "up" if up else "down")),
        stated=(state(FREE_FALL),),
        refuse=refuse,
        proofs=lambda v: (RATIO,) if {"v_1", "v_2", "h_1", "h_2"} <= v.keys() and v["h_2"] else (),
        scene=lambda v: scene(v, up),
        notes=("During the contact the body is not in free fall: the floor pushes it.",),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """What leads to the unknown drawn, with the signs of the positive direction; the loss, now and then, for h₂."""
    out = only_given(typed, GIVEN, [one.box.name for one in QUANTITIES])
    losing = getattr(random, "rule", 0) >= LOSS_GIVEN and out["h_1"] and out["h_2"] and typed["p"]
    if losing and random.random() < 0.4:  # type: ignore[attr-defined]
        out = {**out, "h_2": "", "p": typed["p"]}
    return turned(out, *SIGNED)


BOUNCE = question(
    "bounce",
    "A bounce: two heights, a change in velocity and a force",
    situation,
    **boxes(YOUNGER, *QUANTITIES),
    laws=(FREE_FALL.name, EQUATIONS.name),
    constants=("g",),
    drawn=tuple(name for name in (one.box.name for one in QUANTITIES) if name != "p"),
    drawn_later={"p": 5},
    asks="N",
    adjust=practise,
    since=4,
)
