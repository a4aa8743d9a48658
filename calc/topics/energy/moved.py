"""A body pulled or sliding along a surface: the work of each force with its sign, then the work-energy theorem.

W = FΔx cos θ for each force, W_net = ΔE_k, f = µ_k N: data-sheet equations. Ranges: common practice, no source.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from math import cos, degrees, radians, sin, sqrt

from calc.figures import Figure
from calc.language.expressions import expression
from calc.model.answers import Point
from calc.model.directions import SIGN_OF_WORK
from calc.model.questions import SA, A, Choice, Data, Draw, Mistake, Part, Refusal, Values
from calc.model.relations import Relation, Towards
from calc.topics.energy.drawn import surface
from calc.topics.energy.laws import THEOREM, WORK
from calc.topics.energy.tilted import angle_laws, pull_angle, second_angle
from calc.topics.shared.quantities import distance, force, friction_coefficient, mass, slope_angle, speed, work
from calc.working.declaring import boxes, state, told
from calc.working.solving import Laws, Limit, Situation, question
from calc.working.working import measure

LIFTS = "The pull would lift the body off the surface: the normal force would be less than zero. Make the pull smaller."
LEVEL_ANGLE = "A level floor has no angle: leave this empty, or choose a slope."
NO_PHI = "This pull is along the surface: leave its angle empty, or choose a pull at an angle."
NO_PULL = "There is no pull: leave this empty, or choose a pull."
STANDS = (
    "It does not start that way: from rest the net work would be less than zero. Check the forces and the directions."
)
UNFIT = {
    "v": "It stops first: the net work takes away more kinetic energy than the body has. Check the numbers.",
    "u": "No initial speed fits: the net work alone would make the body faster than this. Check the numbers.",
    "L": "No distance fits: these forces do not change the speed that way. Check the speeds and the forces.",
    "F": "No pull fits: the other forces alone already change the speed by more. Check the numbers.",
    "mu_k": "No coefficient fits: friction would have to push the body along. Check the speeds and the other numbers.",
    "f": "No friction fits: it would have to push the body along. Check the speeds and the other numbers.",
    "theta": (
        "No angle fits: the weight would have to give or take more energy than a fall over the whole distance, or act"
        " the other way. Check the speeds, the distance and the forces."
    ),
    "phi": (
        "No angle fits: the pull would have to do more work than force times distance, or act against the motion."
        " Check the pull, the friction and the speeds."
    ),
    "m": "No mass fits: these forces and speeds would need a mass of zero or less. Check the numbers.",
}

# --- mistakes, in the learner's words -----------------------------------------------------------------------

TO_VERTICAL = (
    "You took the angle from the wrong line. Use the angle between the force and the displacement: {cos(phi)}."
)
ANGLE_OF_SLOPE = (
    "You used the angle of the slope. The pull acts along the displacement, so there is no angle between them: use"
    " {F*L}."
)
WHOLE_PULL = "You used the whole pull. Only its component along the motion does work: multiply by {cos(phi)}."
LENGTH_AS_HEIGHT = (
    "You used the length of the slope as the height. The weight does work over the vertical height only: use"
    " {L*sin(theta)}."
)
WEIGHT_SIGN = {
    1: "You made the work of the weight positive. The body rises against the weight: put a minus sign before it.",
    -1: "You made the work of the weight negative. The body comes down with the weight: leave the minus sign out.",
}
FRICTION_PLUS = "You gave friction a plus sign. It acts against the motion: put a minus sign before its work."
FRICTION_ADDED = "You added the work of friction as if it were positive. Friction takes energy: subtract it."
TWICE = "You counted the weight twice. Its work is in the sum already: add {W_w} once only."
NORMAL_IS_WEIGHT = (
    "You took the weight for the normal force. On a slope the surface carries a part of the weight: use"
    " {m*g*cos(theta)}."
)
NORMAL_SINE = (
    "You used the sine. The component of the weight into the slope goes with the cosine: use {m*g*cos(theta)}."
)
PULL_LIFTS = "You left out the pull. Its component {F*sin(phi)} carries a part of the weight: subtract it."
PULL_ADDED = "You added {F*sin(phi)}. The pull acts away from the surface, so the surface carries less: subtract it."
U_DROPPED = "You left out the initial kinetic energy. {W_net} is the change: add {1/2*m*u^2}."
BACKWARDS = "You took initial minus final. A change is final minus initial: add {2*W_net/m} to {u^2}."
HALF_LOST = "You lost the ½. Kinetic energy is {1/2*m*v^2}, so multiply {W_net} by 2 before you divide by {m}."
ROOT_LOST = "You stopped at {v^2}. Take its square root: that is the speed {v}."
U_AS_V = "You left out the final kinetic energy. {W_net} is final minus initial: put {1/2*m*v^2} in as well."
FINAL_ALONE = "You used the final kinetic energy alone. {W_net} is the change: subtract {1/2*m*u^2}."
BACK_NET = "You took initial minus final. A change is final minus initial: subtract the other way round."


def signed(name: str) -> dict[str, Towards]:
    """The sign of a work as what is asked in words."""
    return {name: lambda values: SIGN_OF_WORK.by_sign(values[name], "positive")}


@dataclass(frozen=True)
class Way:
    """How the body moves: up (1), down (-1) or along the level (0), and how it is pulled."""

    rise: int
    pull: str  # none, along, above, back

    @property
    def carried(self) -> str:
        """The normal force."""
        return ("m*g*cos(theta)" if self.rise else "m*g") + (" - F*sin(phi)" if self.pull == "above" else "")

    def driven(self, friction: str) -> str:
        """The net force along the motion in symbols, with this for the friction."""
        ahead = {"along": ["F"], "above": ["F*cos(phi)"]}.get(self.pull, [])
        against = ["F"] if self.pull == "back" else []
        if self.rise:
            (against if self.rise > 0 else ahead).append("m*g*sin(theta)")
        against.append(friction)
        return f"({' + '.join(ahead)} - {' - '.join(against)})" if ahead else f"-({' + '.join(against)})"

    def along(self, values: Values) -> float:
        """The net force along the motion without friction (N)."""
        turn = {"none": 0.0, "along": 1.0, "above": cos(values.get("phi", 0.0)), "back": -1.0}[self.pull]
        slope = values["m"] * values["g"] * sin(values["theta"]) if self.rise else 0.0
        return turn * values.get("F", 0.0) - self.rise * slope


def pull_law(way: Way) -> tuple[Relation, ...]:
    """The work of the pull."""
    if way.pull == "none":
        return ()
    why = {
        "along": (
            "The pull acts in the direction of the motion: the angle between them is 0°, and its work is positive."
        ),
        "above": "Only the component of the pull along the motion does work; it helps the motion, so it is positive.",
        "back": "The pull acts against the motion: the angle between them is 180°, and its work is negative.",
    }[way.pull]
    law = {"along": "W_F = F*L", "above": "W_F = F*L*cos(phi)", "back": "W_F = F*L*cos(deg180)"}[way.pull]
    slips = (
        (
            Mistake("angle-to-vertical", "W_F", "F*L*sin(phi)", TO_VERTICAL),
            Mistake("cosine-left-out", "W_F", "F*L", WHOLE_PULL),
        )
        if way.pull == "above"
        else (Mistake("angle-of-slope", "W_F", "F*L*cos(theta)", ANGLE_OF_SLOPE, since=6),)
        if way.pull == "along" and way.rise
        else ()
    )
    return (Relation(law, "Work of the pull", why, plain=GIVES, mistakes=slips, directions=signed("W_F")),)


def weight_law(way: Way) -> tuple[Relation, ...]:
    """The work of the weight, over the vertical height."""
    if not way.rise:
        return ()
    sign, moves = ("-", "rises") if way.rise > 0 else ("", "comes down")
    against = "against its motion, so its work is negative" if way.rise > 0 else "with its motion: its work is positive"
    why = f"The body {moves} by L sin θ. The weight pulls downwards, {against}."
    return (
        Relation(
            "W_w = -(m*g*L*sin(theta))" if sign else "W_w = m*g*L*sin(theta)",
            "Work of the weight",
            why,
            plain="Only going up or down counts for the weight, not how long the slope is.",
            directions=signed("W_w"),
            mistakes=(
                Mistake("length-as-height", "W_w", f"{sign}m*g*L", LENGTH_AS_HEIGHT),
                Mistake("sign", "W_w", f"{'' if sign else '-'}m*g*L*sin(theta)", WEIGHT_SIGN[way.rise], turns=True),
            ),
        ),
    )


GIVES = "A force that helps the motion gives energy; one that holds back takes energy."


def friction_laws(way: Way) -> tuple[Relation, ...]:
    """The normal force, friction and its work."""
    slips: tuple[Mistake, ...] = ()
    if way.rise:
        slips += (
            Mistake("weight-for-normal", "N", way.carried.replace("*cos(theta)", ""), NORMAL_IS_WEIGHT),
            Mistake("sine", "N", way.carried.replace("cos(theta)", "sin(theta)"), NORMAL_SINE),
        )
    if way.pull == "above":
        bare = way.carried.split(" - ")[0]
        slips += (
            Mistake("pull-left-out", "N", bare, PULL_LIFTS),
            Mistake("pull-added", "N", f"{bare} + F*sin(phi)", PULL_ADDED),
        )
    why = "At right angles to the surface the forces balance" + (
        ": surface and pull together carry the weight's component into it."
        if way.pull == "above" and way.rise
        else (
            ": surface and pull together carry the weight."
            if way.pull == "above"
            else (
                ": the surface carries the weight's component into it."
                if way.rise
                else ": the surface carries the weight."
            )
        )
    )
    return (
        Relation(
            f"N = {way.carried}",
            "Normal force",
            f"{why} The normal force itself does no work: it is at right angles to the motion.",
            {"N": "N"},
            plain="The surface pushes back as hard as the body is pressed onto it.",
            marks=SA,
            mistakes=slips,
        ),
        Relation(
            "f = mu_k*N",
            "Kinetic friction",
            "The body slides, so friction is the coefficient of kinetic friction times the normal force.",
            {"f": "N", "mu_k": "", "N": "N"},
            plain="The harder the surfaces are pressed together, the more they rub.",
            marks=SA,
        ),
        Relation(
            "W_f = f*L*cos(deg180)",
            "Work of friction",
            "Friction acts against the motion: the angle between them is 180°, and its work is negative.",
            {"W_f": "J", "f": "N", "L": "m"},
            plain=GIVES,
            directions=signed("W_f"),
            mistakes=(Mistake("friction-positive", "W_f", "f*L", FRICTION_PLUS, turns=True),),
        ),
    )


def net_laws(way: Way, from_rest: bool) -> tuple[Relation, ...]:
    """The net work, and the theorem."""
    terms = [name for name, there in (("W_F", way.pull != "none"), ("W_w", way.rise), ("W_f", True)) if there]
    slips = [Mistake("friction-added", "W_net", " + ".join(terms).replace("+ W_f", "- W_f"), FRICTION_ADDED)]
    if way.rise:
        slips.append(Mistake("weight-twice", "W_net", " + ".join(terms).replace("W_w", "2*W_w"), TWICE))
    alone = len(terms) == 1
    total = Relation(
        f"W_net = {' + '.join(terms)}",
        "Net work",
        "Only friction does work here." if alone else "Add the work of every force, each with its sign.",
        plain="What the body gains altogether: what it is given less what is taken.",
        directions=signed("W_net"),
        marks=A if alone else SA,
        mistakes=tuple(slips) if not alone else (),
    )
    slips = [one for one in CHANGE.mistakes if one.key not in NOT_FROM_REST or not from_rest]
    return total, replace(CHANGE, mistakes=tuple(slips))


NOT_FROM_REST = ("initial-dropped", "final-alone")  # with u = 0 they change nothing


CHANGE = Relation(
    "W_net = 1/2*m*v^2 - 1/2*m*u^2",
    "Net work equals the change in kinetic energy",
    "A change is final minus initial. The net work says how much kinetic energy the body gains or loses.",
    plain="Energy of motion at the end, less what there was at the start, is what the forces have given.",
    directions=signed("W_net"),
    quotes=(THEOREM.name,),
    dropped={"v": "A speed has no sign: it is dropped.", "u": "A speed has no sign: it is dropped."},
    mistakes=(
        Mistake("initial-dropped", "v", "sqrt(2*W_net/m)", U_DROPPED),
        Mistake("backwards", "v", "sqrt(u^2 - 2*W_net/m)", BACKWARDS),
        Mistake("half-lost", "v", "sqrt(W_net/m + u^2)", HALF_LOST),
        Mistake("root-lost", "v", "2*W_net/m + u^2", ROOT_LOST, "the answer is the square of the speed"),
        Mistake("final-dropped", "u", "sqrt(-2*W_net/m)", U_AS_V),
        Mistake("final-alone", "W_net", "1/2*m*v^2", FINAL_ALONE),
        Mistake("backwards", "W_net", "1/2*m*u^2 - 1/2*m*v^2", BACK_NET, turns=True),
    ),
)


def one_line(way: Way) -> tuple[Relation, ...]:
    """The theorem in one line, for what stands in several of the works."""
    if not way.rise and way.pull == "none":
        return ()  # friction alone: each step follows from the one before
    what = "Net force times distance equals the change in kinetic energy"
    why = "What is asked stands in the work of several forces: put them into one equation. Against the motion is minus."
    plain = "All the forces along the way, times the way, change the energy of motion."
    change = "1/2*m*v^2 - 1/2*m*u^2"
    by_friction = Relation(
        f"{way.driven('f')}*L = {change}", what, why, {"L": "m", "m": "kg"}, plain, quotes=(THEOREM.name,)
    )
    names = {"m": "kg", "F": "N"} if way.pull == "above" else {"m": "kg"}
    by_coefficient = Relation(
        f"{way.driven(f'mu_k*({way.carried})')}*L = {change}", what, why, names, plain, quotes=(THEOREM.name,)
    )
    return by_friction, by_coefficient


# --- what may not be ---------------------------------------------------------------------------------------


def refuse_empty(data: Data, way: Way) -> None:
    """A box for what is not there stays empty."""
    for name, there, sentence in (
        ("theta", way.rise, LEVEL_ANGLE),
        ("phi", way.pull == "above", NO_PHI if way.pull != "none" else NO_PULL),
        ("F", way.pull != "none", NO_PULL),
        ("W_F", way.pull != "none", NO_PULL),
    ):
        if data.has(name) and not there:
            raise Refusal(name, sentence)
        if name in data.asked_names and not there:
            raise Refusal(None, re.sub("leave (this|its angle) empty", "ask for something else", sentence))


def refuse_stop(data: Data, way: Way) -> None:
    """A body whose kinetic energy would come out below zero has stopped before: where, and whether it stays."""
    known = {"m": 1.0, **data.known} if way.pull == "none" and not data.has("f") else data.known
    needed = {"m", "u", "L"}
    needed |= {"theta"} if way.rise else set()
    needed |= {"F"} if way.pull != "none" else set()
    needed |= {"phi"} if way.pull == "above" else set()
    if data.asked_names != ("v",) or not needed <= known.keys() or not {"f", "mu_k"} & known.keys():
        return
    normal = expression(way.carried).value(known)
    friction = known["f"] if "f" in known else known["mu_k"] * normal
    drive, kinetic = way.along(known), known["m"] * known["u"] ** 2 / 2
    if normal < 0:
        raise Refusal("F", LIFTS)
    if kinetic + (drive - friction) * known["L"] >= 0:
        return
    if not known["u"]:
        raise Refusal("u", STANDS)
    stop = measure(kinetic / (friction - drive), "m", data.settings.style).text
    raise Refusal("L", f"It stops first, after d = {stop}. {rests(data, way, drive, friction, normal)}")


def rests(data: Data, way: Way, drive: float, friction: float, normal: float) -> str:
    """Whether a body that has stopped stays: µs is at least as large as the µk that is given."""
    uphill = way.pull == "none" and way.rise > 0
    share = measure(-drive / normal, "", data.settings.style).text
    if -drive <= friction:
        reason = f", since tan θ = {share} is not larger than µs, which is at least µk" if uphill else ""
        return f"Then it stays at rest{reason}. Type a shorter distance."
    if uphill:
        return f"Then it slides back only if tan θ = {share} is larger than µs. Type a shorter distance."
    return f"Then it moves back only if µs is less than {share}. Type a shorter distance."


# --- the question ------------------------------------------------------------------------------------------

MASSLESS = "The mass stands in every term and cancels. Against the motion is minus."


def massless(way: Way) -> tuple[Relation, ...]:
    """The theorem without the mass, for a body that nothing pulls."""
    force = {1: "-g*L*(sin(theta) + mu_k*cos(theta))", 0: "-mu_k*g*L", -1: "g*L*(sin(theta) - mu_k*cos(theta))"}
    return (
        Relation(
            f"{force[way.rise]} = 1/2*v^2 - 1/2*u^2",
            "Net work equals the change in kinetic energy, divided by the mass",
            MASSLESS,
            {"v": "m·s⁻¹", "u": "m·s⁻¹", "L": "m", "mu_k": ""},
            plain="Heavy or light: the speed comes out the same.",
            quotes=(THEOREM.name,),
            dropped=CHANGE.dropped,
        ),
    )


RISE = {"up": 1, "level": 0, "down": -1}
WAY = Choice("way", "The body moves", (("up", "up a slope"), ("down", "down a slope"), ("level", "along the level")))
PULL = Choice(
    "pull",
    "A rope pulls it",
    (
        ("along", "with the motion"),
        ("above", "at φ above the motion"),
        ("back", "against the motion"),
        ("none", "not at all"),
    ),
)
UNKNOWN = ["v", "L", "F", "mu_k", "u", "m", "theta", "phi", "f", "W_F", "W_w", "W_f", "W_net"]
BOXES = (
    mass("m", "Mass of the body", "It has a mass of {}.", "12 kg; 4 5 8 10 15 20; 3,5 6,5 12,5"),
    slope_angle(
        "theta",
        "Angle of the slope with the horizontal",
        "The slope makes an angle of {} with the horizontal.",
        "20°; 15 20 25 30; 18 22 28 33",
    ),
    force("F", "Pull of the rope (size)", "The pull of the rope is {}.", "110 N; 60 90 120; 75 105"),
    slope_angle(
        "phi",
        "Angle of the pull with the direction of motion",
        "The rope makes an angle of {} with the direction of motion, away from the surface.",
        "?; 15 20 25 30; 18 24 35",
    ),
    friction_coefficient(
        "mu_k",
        "Coefficient of kinetic friction",
        "The coefficient of kinetic friction is {}.",
        "0,25; 0,1 0,15 0,2 0,3; 0,12 0,18 0,28",
        told_at={0.0: "The surface is smooth."},
    ),
    force("f", "Kinetic friction (size)", "The kinetic friction is {}.", told_at={0.0: "There is no friction."}),
    distance("L", "Distance along the surface", "It moves {} along the surface.", "5 m; 2 3 4 6; 2,5 3,5 4,5"),
    speed(
        "u",
        "Initial speed",
        "Its speed at the start is {}.",
        "0 m/s; 0 1 2 3; 0,8 1,5 2,5",
        told_at={0.0: "It starts from rest."},
    ),
    speed(
        "v",
        "Final speed",
        "Its speed at the end is {}.",
        "?; 2 3 4; 2,5 3,5",
        told_at={0.0: "At the end it is at rest."},
    ),
    work("W_F", "Work done by the pull", "The pull does {} of work.", result="measured"),
    work("W_w", "Work done by the weight", "The weight does {} of work.", result="measured"),
    work("W_f", "Work done by friction", "Friction does {} of work.", result="measured"),
    work("W_net", "Net work", "The net work on the body is {}.", result="measured"),
)
NOUNS = (("crate", "ramp", "floor"), ("sledge", "slope", "snow field"), ("chest", "loading ramp", "corridor"))
MOVES = {
    ("up", "none"): "A {0} slides up a {1}; nothing pushes or pulls it any more.",
    ("down", "none"): "A {0} slides down a {1} by itself.",
    ("level", "none"): "A {0} slides along a level {2}; nothing pushes or pulls it any more.",
    ("up", "along"): "A {0} is pulled up a {1} by a rope parallel to the {1}.",
    ("down", "along"): "A {0} is pulled down a {1} by a rope parallel to the {1}.",
    ("level", "along"): "A {0} is pulled along a level {2} by a horizontal rope.",
    ("up", "above"): "A {0} is pulled up a {1} by a rope that rises more steeply than the {1}.",
    ("down", "above"): "A {0} is pulled down a {1} by a rope that leads away from the {1}.",
    ("level", "above"): "A {0} is pulled along a level {2} by a rope that slants upwards.",
    ("up", "back"): "A {0} slides up a {1} while a rope parallel to the {1} pulls it back.",
    ("down", "back"): "A {0} slides down a {1} while a rope parallel to the {1} holds it back.",
    ("level", "back"): "A {0} slides along a level {2} while a horizontal rope pulls it back.",
}


def signs_part(way: Way, known: Values) -> Part:
    """The table of signs: which forces do positive, negative and no work, and why. known: the data."""
    points = []
    if way.pull != "none":
        sign, why = ("negative", "against") if way.pull == "back" else ("positive", "along")
        component = "has a component" if way.pull == "above" else "acts"
        points.append(Point(f"The pull does {sign} work: it {component} {why} the motion.", 1, (sign,)))
    if way.rise > 0:
        points.append(Point("The weight does negative work: the body rises.", 1, ("negative",)))
    elif way.rise < 0:
        points.append(Point("The weight does positive work: the body comes down.", 1, ("positive",)))
    rubs = [abs(known[name]) for name in ("mu_k", "f", "W_f") if name in known]
    if not rubs or max(rubs):  # on a smooth surface there is none to be named
        doubt = "" if rubs else ", if there is any,"
        words = f"Friction{doubt} does negative work: it acts against the motion."
        points.append(Point(words, 1, ("negative",)))
    none = "The normal force does" if way.rise else "The normal force and the weight do"
    points.append(Point(f"{none} no work: at right angles to the motion, cos 90° = 0.", 1, ("no work",)))
    return Part(
        "signs",
        "explain",
        "Name every force on the body and say whether its work is positive, negative or zero. Give a reason.",
        points=tuple(points),
    )


def situation(data: Data) -> Situation:
    """What holds for the choices made, and how it is told."""
    move, pull = data.choices["way"], data.choices["pull"]
    way = Way(RISE[move], pull)
    refuse_empty(data, way)
    refuse_stop(data, way)
    with_mass = data.has("m") or pull != "none" or "m" in data.asked_names or data.has("f")
    by_angle = "theta" in data.asked_names and data.has("mu_k")
    laws: Laws = (
        *pull_law(way),
        *weight_law(way),
        *friction_laws(way),
        *net_laws(way, data.values.get("u") == 0),
        *one_line(way),
    )
    if not with_mass and (data.has("mu_k") or "mu_k" in data.asked_names):
        laws = massless(way)
    if by_angle:
        laws += angle_laws(way.rise, PULLED[pull], with_mass)
    more: tuple[Part, ...] = ()
    if "phi" in data.asked_names and data.has("mu_k") and not data.has("f"):
        by_pull, more = pull_angle(way.rise, way.carried, data)
        laws += by_pull
    return replace(
        told(BOXES),
        relations=laws,
        openings=tuple(MOVES[move, pull].format(*nouns) for nouns in NOUNS),
        stated=(state(THEOREM), signs_part(way, data.values)),
        limits=(Limit("N", LIFTS, at="F"),) if pull == "above" else (),
        unfit=UNFIT,
        units={"N": "N"},
        later=lambda data, values: more,
        warn=lambda v: second_angle(way.rise, way.carried, v, data) if by_angle else (),
        scene=lambda v: scene(way, v),
    )


# The work of the pull, with what it takes off friction.
PULLED = {"none": "", "along": "F*L", "above": "F*L*(cos(phi) + mu_k*sin(phi))", "back": "-F*L"}


def scene(way: Way, v: Values) -> Figure:
    """The body on its surface, how it moves and how it is pulled."""
    turn = {"none": None, "along": 0.0, "above": degrees(v.get("phi", 0.4)), "back": 180.0}
    place = "a level floor" if not way.rise else "a slope"
    goes = {1: "up the slope", 0: "to the right", -1: "down the slope"}[way.rise]
    return surface(
        v,
        level=not way.rise,
        down=way.rise < 0,
        pull=turn[way.pull],
        above=way.pull == "above",
        title="A body moved along a surface",
        opening=f"A body on {place} moves {goes} over the distance L.",
    )


# What practice gives where a friction or a single work is asked, which need no speed.
ENOUGH = {"f": "m theta F phi mu_k", "W_F": "F phi L", "W_w": "m theta L", "W_f": "m theta F phi mu_k L"}


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Numbers that fit together: the pull is enough to move the body, a body without one does not stop."""
    toss = chance.random  # type: ignore[attr-defined]
    asked = next((name for name in ("v", "L", "F", "mu_k", "u", "m", "theta", "phi") if not typed[name]), "W_net")
    if getattr(chance, "asked", "") in ENOUGH:
        asked = chance.asked  # type: ignore[attr-defined]
    text: dict[str, object] = {**typed, **dict.fromkeys(("f", "W_F", "W_w", "W_f", "W_net", "phi"), "")}
    if asked in ("F", "m", "W_F") and text["pull"] == "none":
        text["pull"] = "along"
    if asked == "W_w" and text["way"] == "level":
        text["way"] = "up"
    if asked == "phi":
        text["pull"] = "above"
    if asked == "theta":  # going up, the angle would hang too much on g
        text["way"] = "down"
    if asked in ("theta", "phi"):  # rough enough to tell the tangent of ε from its sine
        text["mu_k"] = f"{0.34 + round(12 * toss()) / 100:g}"
    way = Way(RISE[str(text["way"])], str(text["pull"]))
    size = {"m": 5 + round(10 * toss()), "mu_k": 0.1 + round(20 * toss()) / 100, "L": 2 + round(3 * toss())}
    steep, lean = (30 if asked == "theta" else 15), (58 if asked == "phi" else 15)
    size |= {"theta": steep + round(15 * toss()), "phi": lean + round(15 * toss()), "g": 9.8}
    for name in size:
        if text.get(name):
            size[name] = float(str(text[name]).split()[0].rstrip("°").replace(",", "."))
    values = {**size, "theta": radians(size["theta"]), "phi": radians(size["phi"]), "F": 0.0}
    resist = size["mu_k"] * expression(way.carried).value(values) - way.along(values)  # without a pull
    enough = max(resist, 0.0) * (1.2 + 0.5 * toss()) + 10
    values["F"] = float(round(enough)) if way.pull != "none" else 0.0
    net = way.along(values) - size["mu_k"] * expression(way.carried).value(values)
    gain = 2 * net * size["L"] / size["m"]  # of v² - u²
    u = round((1.2 + 0.4 * toss()) * sqrt(-gain) if gain < 0 else (0.4 + 0.2 * toss()) * sqrt(gain), 1)
    v = sqrt(max(u * u + gain, 0.0))
    shown = {
        "m": f"{size['m']:g} kg",
        "theta": f"{size['theta']:g}°" if way.rise else "",
        "F": f"{values['F']:g} N" if way.pull != "none" else "",
        "phi": f"{size['phi']:g}°" if way.pull == "above" else "",
        "mu_k": f"{size['mu_k']:g}",
        "L": f"{size['L']:g} m",
        "u": f"{u:g} m/s",
        "v": f"{v:.{4 if asked in ('theta', 'phi') else 3}g} m/s" if asked not in ("v", "W_net") else "",
    }
    keep = ENOUGH.get(asked, " ".join(shown)).split()
    return {**text, **{name: one.replace(".", ",") if name in keep else "" for name, one in shown.items()}, asked: ""}


MOVED = question(
    "moved",
    "A body moved along a slope or the level",
    situation,
    **boxes(
        WAY,
        PULL,
        *BOXES,
        draws={
            "way": Draw(("up", "down", "up"), "", ("up", "down", "up", "down", "level")),
            "pull": Draw(("along", "above", "none", "along")),
        },
    ),
    unknowns=tuple(UNKNOWN),
    drawn=("v", "L", "F", "mu_k", "u", "W_net"),
    drawn_later=dict.fromkeys(("m", "theta", "phi", *ENOUGH), 6),
    asks="v",
    constants=("g",),
    laws=(THEOREM.name, WORK.name),
    adjust=practise,
    since=4,
)
