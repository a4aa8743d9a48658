"""Mechanical energy at two places A and B: conserved on a smooth way, changed by friction on a rough one.

E_p = mgh, E_k = ½mv², W_nc = ΔE_k + ΔE_p: data-sheet equations. Ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Curve, Dimension, Dot, Figure, Segment
from calc.figures.pieces import Item, Point
from calc.figures.telling import composed
from calc.model.directions import SIGN_OF_WORK
from calc.model.questions import Choice, Data, Draw, Mistake, Refusal, Values
from calc.model.relations import Relation
from calc.topics.energy.laws import CONSERVED, NON_CONSERVATIVE
from calc.topics.energy.rough import GIVE, LEGS, MASSLESS, MU, NOT_LEVEL, ON_PART, RUBS, TOLD, WHERE, drawn
from calc.topics.shared.quantities import distance, force, height, mass, speed, work
from calc.working.declaring import boxes, state, told
from calc.working.solving import Situation, question
from calc.working.working import measure

SPEEDS = dict.fromkeys(("v", "u"), "A speed has no sign: it is dropped.")
UNFIT = {
    "v": "It does not reach B: the height there takes more energy than there is. Check the heights and the speeds.",
    "u": "No speed at A fits: without any it would already be faster at B. Check the heights and the speeds.",
    "h_A": "No height of A fits: A would lie below the level from which heights are measured. Check the numbers.",
    "h_B": "No height of B fits: B would lie below the level from which heights are measured. Check the numbers.",
    "m": "No mass fits: the work and the change in energy have opposite signs. Check the sign of the work.",
    "f": "No friction fits: it only takes energy, and here the body has more at B than at A. Check the numbers.",
    "L": "No way fits: friction only takes energy, and here the body has more at B than at A. Check the numbers.",
}
MORE_AT_B = (
    "No coefficient fits: friction only takes energy, and here the body has more at B than at A. Check the numbers."
)
ROUGH_UNFIT = {
    **UNFIT,
    "v": "It stops before B: friction and the height take more energy than it has. Check the numbers.",
    "u": "No speed at A fits: without any it would already be faster at B. Check the work and the speed at B.",
}
# --- mistakes, in the learner's words -----------------------------------------------------------------------

U_DROPPED = "You left out the kinetic energy at A. It moves there already: add {1/2*m*u^2} to the energy at A."
B_DROPPED = "You left out the potential energy at B. B is above the level too: subtract {m*g*h_B}."
HALF_LOST = "You lost the ½. Kinetic energy is {1/2*m*v^2}: multiply the rest by 2 before you take the root."
ROOT_LOST = "You stopped at {v^2}. Take its square root: that is the speed {v}."
TURNED = "You turned the heights round. What it loses in height it gains in speed: subtract {h_B} from {h_A}."
TWICE = "You counted the weight twice. Its work is the change in potential energy already: leave it out of {W_nc}."
BACKWARDS = "You took initial minus final. A change is final minus initial: subtract what there was at A."
KINETIC_ALONE = "You used the kinetic energy alone. The height changes too: add {m*g*h_B - m*g*h_A}."
POTENTIAL_ALONE = "You used the potential energy alone. The speed changes too: add {1/2*m*v^2 - 1/2*m*u^2}."
CONSERVED_ANYWAY = "You left out {W_nc}. Mechanical energy is not conserved here: add the work, with its sign."
SIGN_LOST = "You left the sign of {W_nc} out. Friction takes energy: put its work in with the minus sign."
FRICTION_PLUS = "You gave friction a plus sign. It acts against the motion: put a minus sign before its work."


def _b_dropped(mass_given: bool) -> Mistake:
    """The potential energy at B left out; without the mass, its part of the equation."""
    if mass_given:
        return Mistake("height-at-b", "v", "sqrt(u^2 + 2*g*h_A)", B_DROPPED)
    return Mistake("height-at-b", "v", "sqrt(u^2 + 2*g*h_A)", B_DROPPED.replace("m*g", "g"), since=6)


def smooth(mass_given: bool, at_rest: bool, b_low: bool) -> Relation:
    """The total mechanical energy at A and at B; without the mass, which cancels, where it is not given."""
    law = "m*g*h_A + 1/2*m*u^2 = m*g*h_B + 1/2*m*v^2" if mass_given else "g*h_A + 1/2*u^2 = g*h_B + 1/2*v^2"
    why = "Only the weight does work, so the total mechanical energy stays the same."
    drop = "2*g*(h_A - h_B)"
    slips = (
        () if at_rest else (Mistake("initial-dropped", "v", f"sqrt({drop})", U_DROPPED),),
        () if b_low else (_b_dropped(mass_given),),
        (
            Mistake("half-lost", "v", "sqrt(u^2 + g*(h_A - h_B))", HALF_LOST),
            Mistake("root-lost", "v", f"u^2 + {drop}", ROOT_LOST, "the answer is the square of the speed"),
            Mistake("turned", "v", "sqrt(u^2 + 2*g*(h_B - h_A))", TURNED),
        ),
    )
    return Relation(
        law,
        what="Total mechanical energy at A equals total mechanical energy at B",
        why=why if mass_given else f"{why} The mass stands in every term and cancels.",
        units={"v": "m·s⁻¹", "u": "m·s⁻¹", "h_A": "m", "h_B": "m"},
        plain="What it loses in height it gains in speed, and the other way round.",
        mistakes=tuple(one for several in slips for one in several if mass_given or "{m*" not in one.say),
        dropped=SPEEDS,
        quotes=(CONSERVED.name,),
    )


CHANGED = Relation(
    "W_nc = 1/2*m*v^2 - 1/2*m*u^2 + m*g*h_B - m*g*h_A",
    what="Work of the non-conservative forces equals the change in mechanical energy",
    why="W_nc = ΔE_k + ΔE_p. The work of the weight is in ΔE_p already; each change is final minus initial.",
    units={"W_nc": "J", "m": "kg", "v": "m·s⁻¹", "u": "m·s⁻¹", "h_A": "m", "h_B": "m"},
    plain="Energy at the end, less energy at the start, is what friction has taken or a push has given.",
    directions={"W_nc": lambda v: SIGN_OF_WORK.by_sign(v["W_nc"], "positive")},
    dropped=SPEEDS,
    quotes=(NON_CONSERVATIVE.name,),
    mistakes=(
        Mistake("kinetic-alone", "W_nc", "1/2*m*v^2 - 1/2*m*u^2", KINETIC_ALONE),
        Mistake("potential-alone", "W_nc", "m*g*h_B - m*g*h_A", POTENTIAL_ALONE),
        Mistake("weight-twice", "W_nc", "1/2*m*v^2 - 1/2*m*u^2 + 2*(m*g*h_B - m*g*h_A)", TWICE),
        Mistake("backwards", "W_nc", "1/2*m*u^2 - 1/2*m*v^2 + m*g*h_A - m*g*h_B", BACKWARDS, turns=True),
        Mistake("conserved-anyway", "v", "sqrt(u^2 + 2*g*(h_A - h_B))", CONSERVED_ANYWAY),
        Mistake("sign-lost", "v", "sqrt(u^2 + 2*g*(h_A - h_B) + 2*abs(W_nc)/m)", SIGN_LOST),
        Mistake("conserved-anyway", "h_B", "h_A + (u^2 - v^2)/(2*g)", CONSERVED_ANYWAY),
        Mistake("sign-lost", "h_B", "h_A + (u^2 - v^2)/(2*g) + abs(W_nc)/(m*g)", SIGN_LOST),
    ),
)
TAKEN = Relation(
    "W_nc = f*L*cos(deg180)",
    what="Work of friction along the way",
    why="Friction acts against the motion all along: the angle between them is 180°, and its work is negative.",
    units={"W_nc": "J", "f": "N", "L": "m"},
    plain="Friction only takes energy: the longer the way, the more.",
    directions=CHANGED.directions,
    mistakes=(Mistake("friction-positive", "W_nc", "f*L", FRICTION_PLUS, turns=True),),
)

TAKEN_THERE = replace(
    TAKEN,
    what="Work of friction on the rough part",
    why="Only there is friction, against the motion: the angle between them is 180°, and its work is negative.",
)

# --- the boxes, the drawing --------------------------------------------------------------------------------

WAY = Choice(
    "way",
    "The body",
    (
        ("slide", "slides on a smooth track"),
        ("fly", "is thrown or falls without air resistance"),
    ),
)
H_A = height(
    "h_A", "Height of A", "A is {} above the level.", "3,2 m; 2 3 4 5; 2,4 3,6 4,8", told_at={0.0: "A is on the level."}
)
H_B = height(
    "h_B",
    "Height of B",
    "B is {} above the level.",
    "1,4 m; 0,5 1 1,5; 0,4 0,8 1,6",
    told_at={0.0: "B is on the level."},
)
U = speed(
    "u", "Speed at A", "At A its speed is {}.", "2 m/s; 2 3 4; 2,2 3,4 4,5", told_at={0.0: "It starts from rest at A."}
)
V = speed("v", "Speed at B", "At B its speed is {}.", "?; 5 6 7 8; 5,5 6,5 7,5", told_at={0.0: "At B it is at rest."})
M = mass("m", "Mass of the body", "The mass that moves is {}.", "40 kg; 20 30 45 60; 25 35 55")
SMOOTH = (replace(M, example="", draw=None), H_A, U, H_B, V)
ROUGH = (
    M,
    H_A,
    U,
    H_B,
    replace(V, example="5 m/s"),
    work(
        "W_nc",
        "Work of the non-conservative forces",
        "The non-conservative forces do {} of work on it.",
        "?; -120 -200 -300; -150 -260",
    ),
    force("f", "Friction (average size)", "The average friction on it is {}.", "?; 20 30 40"),
    distance("L", "Length of the way", "The way from A to B is {} long.", "?; 6 8 10"),
)
ON_TRACK = (
    "A child on a sledge slides along a smooth icy track from A to B. Heights are measured from one level.",
    (
        "A small car without a motor rolls along a smooth toy railway from A to B."
        " Heights are measured from the level of the table."
    ),
    (
        "A skateboarder rolls freely through a smooth concrete bowl from A to B."
        " Heights are measured from the level of the ground."
    ),
)
IN_AIR = (
    (
        "A stone flies freely from A and passes B. Air resistance is left out."
        " Heights are measured from the level of the ground."
    ),
    (
        "A pebble leaves a wall at A and later passes B; the air hardly slows it."
        " Heights are measured from the level of the beach."
    ),
    (
        "A drop leaves a fountain at A and passes B without air resistance."
        " Heights are measured from the level of the pool."
    ),
)
ON_ROUGH = (
    "A child on a sledge slides along a track of rough snow from A to B. Heights are measured from one level.",
    (
        "A crate slides down a bent loading chute from A to B, and rubs on it."
        " Heights are measured from the level of the ground."
    ),
    "A cyclist rolls from A to B without pedalling, against friction and air. Heights are measured from one level.",
)


def track(v: Values, title: str, opening: str, *, flying: bool = False) -> Figure:
    """A on the left, B on the right, the way between and both heights over one level; not to scale."""
    a, b = v.get("h_A", 1.0), v.get("h_B", 0.0)
    top, low = 6.5, 2.6
    heights = {True: top, False: low}
    y_a = 0.0 if not a else heights[a >= b]
    y_b = 0.0 if not b else heights[b >= a]
    if a == b:
        y_a = y_b = 4.0 if a else 0.0
    dip = max(min(y_a, y_b) - (1.8 if min(y_a, y_b) > 0 else 0.0), 0.0)
    left, right = (2.0, y_a), (15.0, y_b)
    way = _thrown(left, right) if flying else _curve(left, (8.5, dip), right)
    items: list[Item] = [
        Segment((0.0, 0.0), (17.5, 0.0), "guide"),
        Curve(way, "guide" if flying else "outline"),
        Dot(left, "A"),
        Dot(right, "B"),
    ]
    for x, y, label in ((left[0] - 1.6, y_a, "h_A"), (right[0] + 1.6, y_b, "h_B")):
        if y:
            items.append(Dimension((x, 0.0), (x, y), label, 0.0, 0.0))
    return composed(title, items, opening=opening, notes=("Not to scale.",), drawn_from=("h_A", "h_B"))


def _curve(start: Point, middle: Point, end: Point) -> tuple[Point, ...]:
    """A track through three points, level at each of them."""
    return (*eased(start, middle), *eased(middle, end))


def eased(start: Point, end: Point) -> tuple[Point, ...]:
    """A track between two points, level at both."""
    shares = [step / 12 for step in range(13)]
    return tuple(
        (start[0] + s * (end[0] - start[0]), start[1] + s * s * (3 - 2 * s) * (end[1] - start[1])) for s in shares
    )


def _thrown(start: Point, end: Point) -> tuple[Point, ...]:
    """A parabola between two points: the line between them and an arch above it."""
    shares = [step / 24 for step in range(25)]
    return tuple(
        (start[0] + s * (end[0] - start[0]), start[1] + s * (end[1] - start[1]) + 12 * s * (1 - s)) for s in shares
    )


def refuse_short(data: Data) -> None:
    """A body that would need more energy at B than it has: how high it comes."""
    if data.asked_names != ("v",) or not all(map(data.has, ("h_A", "h_B", "u"))):
        return
    g = data.known["g"]
    most = data.values["h_A"] + data.values["u"] ** 2 / (2 * g)
    if data.values["h_B"] > most:
        highest = measure(most, "m", data.settings.style).text
        raise Refusal("h_B", f"It does not reach B: with this energy it rises to a height of {highest} at most.")


def on_smooth(data: Data) -> Situation:
    """Without friction: one equation between A and B."""
    refuse_short(data)
    flying = data.choices["way"] == "fly"
    law = smooth(data.has("m"), data.values.get("u") == 0, data.values.get("h_B") == 0)
    return replace(
        told(SMOOTH),
        relations=(law,),
        openings=IN_AIR if flying else ON_TRACK,
        stated=(state(CONSERVED),),
        unfit=UNFIT,
        scene=lambda v: track(
            v,
            "From A to B",
            f"A body {'flies' if flying else 'slides'} from A to B; the level of height zero is dotted.",
            flying=flying,
        ),
        notes=("Neither the shape of the way nor the mass changes the speed at B.",) if not flying else (),
    )


def on_rough(data: Data) -> Situation:
    """With friction, all the way or on a level part: its work is the change in mechanical energy."""
    if data.choices["where"] == "part":
        return on_part(data)
    if data.has("mu_k"):
        raise Refusal("mu_k", NOT_LEVEL)
    if "mu_k" in data.asked_names:
        raise Refusal(None, NOT_LEVEL.replace("leave this empty", "ask for something else"))
    return replace(
        told(ROUGH),
        relations=(CHANGED, TAKEN),
        openings=ON_ROUGH,
        stated=(state(NON_CONSERVATIVE),),
        unfit=ROUGH_UNFIT,
        scene=lambda v: track(
            v, "From A to B", "A body moves from A to B against friction; the level of height zero is dotted."
        ),
    )


def on_part(data: Data) -> Situation:
    """Friction on a level part alone."""
    if not (data.has("W_nc") or data.has("f") or {"W_nc", "f"} & set(data.asked_names)):
        for name, sentence in GIVE.items():
            if not data.has(name) and name not in data.asked_names:
                raise Refusal(name, sentence)
    basis = told((*ROUGH, MU))
    alone = not (data.has("m") or data.has("f") or data.has("W_nc")) and not {"m", "f", "W_nc"} & set(data.asked_names)
    return replace(
        basis,
        relations=(MASSLESS,) if alone else (CHANGED, TAKEN_THERE, RUBS),
        tell={**basis.tell, **TOLD},
        openings=ON_PART,
        stated=(state(NON_CONSERVATIVE), LEGS),
        unfit={**ROUGH_UNFIT, "mu_k": MORE_AT_B, "f": UNFIT["f"], "L": UNFIT["L"]},
        scene=drawn,
    )


SLIDE = question(
    "two-places",
    "Speed and height at two places, without friction",
    on_smooth,
    **boxes(WAY, *SMOOTH, draws={"way": Draw(("slide", "fly"))}),
    unknowns=("v", "u", "h_A", "h_B"),
    asks="v",
    constants=("g",),
    laws=(CONSERVED.name,),
    since=4,
)


def on_strip(names: tuple[str, ...], typed: dict[str, object], chance: object) -> dict[str, object]:
    """Numbers for a rough level part: it takes a part of the energy there is; without the mass where that cancels."""
    toss = chance.random  # type: ignore[attr-defined]
    asked = next((name for name in (*names, "f", "L") if not typed[name]), "W_nc")
    h_a, u = 2 + round(30 * toss()) / 10, 2 + round(20 * toss()) / 10
    h_b, mu = round(h_a * (0.2 + 0.3 * toss()), 1), 0.2 + round(20 * toss()) / 100
    energy = 9.8 * (h_a - h_b) + u * u / 2  # of each kilogram
    way = round((0.3 + 0.3 * toss()) * energy / (9.8 * mu), 1)
    v = (2 * (energy - 9.8 * mu * way)) ** 0.5
    massive = asked in ("m", "f", "W_nc")
    shown = {
        "m": f"{20 + round(40 * toss())} kg" if massive else "",
        "h_A": f"{h_a:g} m",
        "u": f"{u:g} m/s",
        "h_B": f"{h_b:g} m",
        "v": f"{v:.3g} m/s",
        "W_nc": "",
        "f": "",
        "L": f"{way:g} m",
        "mu_k": "" if asked in ("f", "W_nc") else f"{mu:g}",
    }
    return {**typed, **{name: one.replace(".", ",") for name, one in shown.items()}, asked: ""}


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Friction takes a part of the energy there is; at level 3 its size and the way are given or asked."""
    toss = chance.random  # type: ignore[attr-defined]
    names = ("m", "h_A", "u", "h_B", "v")
    if typed["where"] == "part":
        return on_strip(names, typed, chance)
    asked = next((name for name in (*names, "f", "L") if not typed[name]), "W_nc")
    given = {"m": 20 + round(40 * toss()), "h_A": 2 + round(30 * toss()) / 10, "u": 2 + round(20 * toss()) / 10}
    h_b = round(given["h_A"] * (0.2 + 0.3 * toss()), 1)
    energy = given["m"] * (9.8 * (given["h_A"] - h_b) + given["u"] ** 2 / 2)
    lost = energy * (0.3 + 0.3 * toss())
    way = 4 + round(6 * toss())
    v = (2 * (energy - lost) / given["m"]) ** 0.5
    by_friction = asked in ("f", "L") or (level > 1 and asked != "W_nc" and toss() < 0.5)
    shown = {
        "m": f"{given['m']} kg",
        "h_A": f"{given['h_A']:g} m",
        "u": f"{given['u']:g} m/s",
        "h_B": f"{h_b:g} m",
        "v": f"{v:.3g} m/s",
        "W_nc": "" if by_friction else f"{-lost:.3g} J",
        "f": f"{lost / way:.3g} N" if by_friction else "",
        "L": f"{way} m" if by_friction else "",
    }
    return {**{name: one.replace(".", ",") for name, one in shown.items()}, asked: ""}


LOSS = question(
    "friction-loss",
    "Energy that friction takes between two places",
    on_rough,
    **boxes(WHERE, *ROUGH, MU),
    unknowns=("W_nc", "v", "u", "h_A", "h_B", "f", "L", "m", "mu_k"),
    drawn=("W_nc", "v", "h_B", "f", "L", "u"),
    asks="W_nc",
    constants=("g",),
    laws=(NON_CONSERVATIVE.name, CONSERVED.name),
    adjust=practise,
    since=4,
)
