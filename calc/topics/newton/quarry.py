"""A whole question: a loaded sledge on a slope and a counterweight; does it move, which way, and with what tension.

D = m₂g − m₁g sin θ is what friction would have to hold: they stay while |D| is at most μs m₁g cos θ, with T = m₂g; else
a = (|D| − μk m₁g cos θ)/(m₁ + m₂), and T = m₂(g − a) where the counterweight falls, m₂(g + a) where it rises. The story
and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, degrees, radians, sin

from calc.figures.connected import over_the_top
from calc.model.answers import Direction, Point
from calc.model.directions import ALONG_SLOPE
from calc.model.questions import NO_MARKS, Check, Data, Part, Plan, Question, Refusal, Step
from calc.model.relations import Relation
from calc.topics.forces.moves import ODD
from calc.topics.forces.words import BY_WEIGHT, PLAIN_F, PLAIN_N, STILL_AT_REST, TWO, typed_as
from calc.topics.newton.incline import LEVEL_N, NORMAL_SINE
from calc.topics.newton.pairs import PLAIN_ONE, masses, sizes
from calc.topics.shared.connected import HANGING, Body, Outcome, outcome
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import KINETIC, SECOND, STATIC, THIRD
from calc.topics.shared.quantities import friction_coefficient, slope_angle
from calc.working.declaring import Mistake, boxes, state
from calc.working.working import measure, run

HELD = (
    "With these coefficients kinetic friction would stop them as soon as they start: μₖ may not be larger than μₛ."
    " Check the coefficients."
)
NORMAL = Relation(
    "N = m1*g*cos(theta)",
    what="Balance the forces across the slope",
    why="The sledge does not leave the slope: N is as large as the part of its weight that presses into it.",
    units={"N": "N"},
    plain=PLAIN_N,
    mistakes=(
        Mistake("normal-is-weight", "N", "m1*g", LEVEL_N),
        Mistake("sin-cos", "N", "m1*g*sin(theta)", NORMAL_SINE),
    ),
)
DRIVE = Relation(
    "D = m2*g - m1*g*sin(theta)",
    what="Compare the weight that hangs with the part of the other weight along the slope",
    why="Along the string, up the slope is positive: m₂g pulls the sledge up, m₁g sin θ pulls it down.",
    units={"D": "N"},
    plain="Two pulls at the two ends of one string: what is left over is what friction would have to hold.",
    directions={"D": ALONG_SLOPE.of("up-slope")},
    mistakes=(
        Mistake("whole-weight", "D", "m2*g - m1*g", "You used the whole weight of the sledge. Use {m1*g*sin(theta)}."),
        Mistake(
            "sin-cos",
            "D",
            "m2*g - m1*g*cos(theta)",
            "You took the cosine for the part along the slope. Use the sine: {m1*g*sin(theta)}.",
        ),
    ),
)
HOLDS = Relation(
    "f_smax = mu_s*N",
    what="The largest static friction",
    why="Static friction can have any size up to this one.",
    units={"f_smax": "N"},
    plain=PLAIN_F,
    marks=TWO,
    quotes=(STATIC.name,),
    mistakes=(
        Mistake("weight-for-normal", "f_smax", "mu_s*m1*g", BY_WEIGHT.replace("{N}", "{m1*g*cos(theta)}")),
        Mistake("kinetic-for-static", "f_smax", "mu_k*N", STILL_AT_REST, since=6),
    ),
)
QUANTITIES = (
    *masses("the sledge", "the counterweight", "40 kg; 30 40 50; 25 35 45", "30 kg"),
    slope_angle("theta", "Angle of the slope", "", "30°; 20 25 30 35; 22 28 33"),
    friction_coefficient("mu_s", "Coefficient of static friction", "", "0,3; 0,3 0,35 0,4; 0,28 0,34 0,42"),
    friction_coefficient("mu_k", "Coefficient of kinetic friction", "", "0,2; 0,15 0,2 0,25; 0,12 0,18 0,24"),
)


@dataclass(frozen=True)
class Decided:
    """What the numbers decide. way: of the sledge, or of what it is held against: +1 up the slope."""

    found: Outcome
    way: int

    @property
    def stays(self) -> bool:
        """Whether nothing moves."""
        return self.found.state != "moves"

    def where(self, way: int) -> Direction:
        """Up or down the slope."""
        return ALONG_SLOPE.of("up-slope" if way > 0 else "down-slope")


def decided(data: Data) -> Decided:
    """Rest or motion, by the numbers."""
    v = data.values
    drive, across = abs(v["m2"] - v["m1"] * sin(v["theta"])), v["m1"] * cos(v["theta"])
    if v["mu_s"] * across < drive <= v["mu_k"] * across:
        raise Refusal("mu_k", HELD)
    pair = [Body(v["m1"], v["theta"], v["mu_s"], v["mu_k"]), Body(v["m2"], -HANGING)]
    g = data.settings.constants()["g"]
    return Decided(outcome(pair, ["string"], g=g), -1 if v["m2"] < v["m1"] * sin(v["theta"]) else 1)


def tension(here: Decided) -> tuple[Step, ...]:
    """T, three marks whatever happens; where they move a comes first."""
    if here.stays:
        return (
            Relation(
                "T = m2*g",
                what="Balance the forces on the counterweight",
                why="It stays at rest, so the tension carries its whole weight.",
                units={"T": "N"},
                plain=PLAIN_ONE,
                mistakes=(
                    Mistake(
                        "other-part",
                        "T",
                        "m1*g*sin(theta)",
                        "You forgot that friction helps. Use the counterweight alone: {m2*g}.",
                    ),
                ),
            ).step("T"),
        )
    return (together(here.way > 0).step("a"), counterweight(here.way > 0).step("T"))


def together(up: bool) -> Relation:
    """Both bodies at once, for a, without marks."""
    return Relation(
        f"{'D' if up else '-D'} - mu_k*N = (m1 + m2)*a",
        what="Use Newton's second law for both together",
        why="They move with one acceleration; inside forces cancel. Friction is kinetic now, against the motion.",
        units={"a": "m·s⁻²"},
        plain="What is left of the pull after friction speeds up everything on the string.",
        marks=NO_MARKS,
        quotes=(SECOND.name,),
        mistakes=(
            Mistake(
                "one-mass",
                "a",
                f"({'D' if up else '-D'} - mu_k*N)/m2",
                "You divided by one mass alone. Divide by {m1 + m2}.",
            ),
            Mistake(
                "static-for-kinetic",
                "a",
                f"({'D' if up else '-D'} - mu_s*N)/(m1 + m2)",
                "You used the static coefficient although they slide. Use {mu_k}.",
            ),
        ),
    )


def counterweight(up: bool) -> Relation:
    """The counterweight alone, for T."""
    return Relation(
        "m2*g - T = m2*a" if up else "T - m2*g = m2*a",
        what="Use Newton's second law for the counterweight",
        why=(
            f"It moves {'down' if up else 'up'}, so"
            f" {'its weight beats the tension' if up else 'the tension beats its weight'}."
        ),
        units={"T": "N"},
        plain=PLAIN_ONE,
        quotes=(SECOND.name,),
        mistakes=(
            Mistake(
                "hanging-weight",
                "T",
                "m2*g",
                "You made {T} as large as the weight. Then it could not accelerate: put {m2*a} in.",
            ),
            Mistake(
                "sign-slip",
                "T",
                f"m2*(g {'+' if up else '-'} a)",
                "You have the sign of {m2*a} the wrong way round. Subtract the smaller of the two forces from the"
                " larger.",
            ),
        ),
    )


def words(data: Data, here: Decided, v: dict[str, float]) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """What decides, and what they do then."""

    def told(value: float, unit: str = "N") -> str:
        return measure(abs(value), unit, data.settings.style).text

    sizes_ = f"D is {told(v['D'])} and the largest static friction is {told(v['f_smax'])}"
    if here.stays:
        same = "the same" if here.found.state == "limit" else "smaller"
        return (
            (
                Point(
                    f"{sizes_}: D is {same if same == 'smaller' else 'not larger'}.",
                    1,
                    (same if same == "smaller" else "not larger",),
                ),
                Point("Static friction can hold it: they stay at rest.", 1, ("stay at rest",)),
            ),
            (
                Point("The net force on each of them is zero.", 1, ("zero",)),
                Point("The acceleration is zero.", 1, ("acceleration is zero",)),
            ),
        )
    way = here.where(here.way).words
    net = abs(v["D"]) - data.values["mu_k"] * v["N"]
    return (
        (
            Point(f"{sizes_}: D is larger.", 1, ("larger",)),
            Point(f"Static friction cannot hold it: the sledge starts to slide {way}.", 1, ("slide", way)),
        ),
        (
            Point(f"Kinetic friction leaves a net force of {told(net)} along the string.", 1, (told(net),)),
            Point(f"a = F_net/(m₁ + m₂) = {told(v['a'], 'm·s⁻²')}, for the sledge {way}.", 1, (told(v["a"], "m·s⁻²"),)),
        ),
    )


def facts(data: Data) -> str:
    """The data in sentences."""
    said = data.said
    return (
        f"The sledge has a mass of {said['m1']}, the counterweight {said['m2']}. The slope makes {said['theta']} with"
        f" the horizontal. The coefficients of friction between sledge and slope are {said['mu_s']} (static) and"
        f" {said['mu_k']} (kinetic). The sledge is held at rest and then let go."
    )


def story(data: Data) -> str:
    """The data told."""
    told = data.pick(
        "In an old quarry a sledge for stones stands on a slope. A light string runs from it, parallel to the"
        " slope, over a smooth wheel at the top and carries a counterweight.",
        "On a farm a loaded sledge stands on a sloping track of planks. A light string leads from it up the track,"
        " over a wheel that turns without friction, to a counterweight that hangs.",
        "In a museum a hillside lift for goods is shown: a sledge on a slope, a light string parallel to the slope,"
        " a smooth wheel at the top, and a counterweight that hangs from the string.",
    )
    return f"{told} {facts(data)}"


def plan(data: Data) -> Plan:
    """State, normal force, D, limit, diagram, decide, what they do, tension, the pair of the third law."""
    here = decided(data)
    work = (
        Part("normal", "calculate", "Calculate the normal force on the sledge.", (NORMAL.step("N"),)),
        Part(
            "along",
            "calculate",
            "Calculate D, the sum of the forces along the string on both bodies without friction.",
            (DRIVE.step("D"),),
        ),
        Part("limit", "calculate", "Calculate the largest static friction on the sledge.", (HOLDS.step("f_smax"),)),
    )
    pull = Part("tension", "calculate", "Calculate the tension in the string.", tension(here))
    v = run(Plan("", (*work, pull), dict(data.values)), data.settings.constants())
    compared, then = words(data, here, v)
    tilt = degrees(data.values["theta"])
    back = here.where(-here.way).words
    rows = (
        ("F_g", "w1", "the weight, straight down", 270.0),
        ("N", "N", "the normal force, away from the slope at right angles to it", tilt + 90),
        ("T", "T", "the tension, up the slope", tilt),
        ("f", "f", f"friction, {back}", tilt + (180 if here.way > 0 else 0)),
    )
    friction_size = abs(v["D"]) if here.stays else data.values["mu_k"] * v["N"]
    return Plan(
        story=story(data),
        parts=(
            state(SECOND),
            *work,
            free_body(
                "draw",
                "the sledge",
                rows,
                (),
                data,
                guide=tilt,
                derived=lambda known: {**sizes(known), "f": friction_size},
            ),
            Part("decide", "explain", "Do they stay at rest or move? Give a reason.", points=compared),
            Part("then", "explain", "Give the net force and the acceleration then.", points=then),
            pull,
            PAIR,
        ),
        values=dict(data.values),
        units={"theta": "°"},
        scene=lambda values: over_the_top(min(max(tilt, 6.0), 70.0)),
        checks=(
            Check(
                "The parts of the weight of the sledge and its weight make a right-angled triangle",
                "sqrt(N^2 + (m2*g - D)^2) = m1*g",
            ),
        ),
        notes=(FBD_RULES,),
        warnings=(ODD,) if data.values["mu_k"] > data.values["mu_s"] else (),
    )


PAIR = Part(
    "pair",
    "explain",
    "Name the force that forms a pair by Newton's third law with the normal force on the sledge.",
    points=(
        Point("The force of the sledge on the slope, as large as N.", 1, ("sledge on the slope",)),
        Point(
            "It is at right angles to the slope, into it. The weight is no partner: it acts on the same body.",
            1,
            ("into it",),
        ),
    ),
)


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """A counterweight with which they stay, move up or move down, about as often."""
    toss = chance.random  # type: ignore[attr-defined]
    m1, theta, mu = (
        float(str(typed[name]).split("°")[0].split()[0].replace(",", ".")) for name in ("m1", "theta", "mu_s")
    )
    theta = radians(theta)
    lot = toss()
    share = 1.25 + 0.4 * toss() if lot < 0.35 else 0.6 * toss() - 0.3 if lot < 0.7 else -1.25 - 0.2 * toss()
    m2 = max(m1 * (sin(theta) + share * mu * cos(theta)), 2.0)
    return {**typed, "m2": typed_as(m2, "kg", 2)}


QUARRY = Question(
    key="quarry",
    title="A sledge and a counterweight",
    **boxes(*QUANTITIES),
    plan=plan,
    laws=(SECOND.name, STATIC.name, KINETIC.name, THIRD.name),
    constants=("g",),
    adjust=practise,
    scenario=True,
    since=4,
)
