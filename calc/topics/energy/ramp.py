"""A whole question: a chest winched up a ramp; theorem, forces, work of each, speed, a smoother ramp, power.

The story and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import cos, degrees, radians, sin

from calc.figures import Figure, Force, free_body_diagram
from calc.model.answers import Mark, Point
from calc.model.questions import A, Check, Data, Part, Plan, Question, Refusal, Values
from calc.topics.energy.drawn import surface
from calc.topics.energy.laws import POWER, THEOREM, WORK
from calc.topics.energy.moved import CHANGE, Way, friction_laws, net_laws, pull_law, weight_law
from calc.topics.energy.rate import MEAN, PUSHED
from calc.topics.shared.quantities import distance, force, friction_coefficient, mass, slope_angle
from calc.working.declaring import boxes, state

UPWARDS = Way(1, "along")
UNITS = {"W_F": "J", "W_w": "J", "W_f": "J", "W_net": "J", "N": "N", "f": "N", "v": "m·s⁻¹", "P": "W", "v_av": "m·s⁻¹"}
(PULLED,) = (law.in_units(UNITS).step("W_F") for law in pull_law(UPWARDS))
(WEIGHED,) = (law.in_units(UNITS).step("W_w") for law in weight_law(UPWARDS))
NORMAL, FRICTION, RUBBED = (
    law.in_units(UNITS).step(name) for law, name in zip(friction_laws(UPWARDS), ("N", "f", "W_f"), strict=True)
)
TOTAL, _ = net_laws(UPWARDS, from_rest=True)
AT_TOP = replace(
    CHANGE,
    law="W_net = 1/2*m*v^2",
    why="The chest starts from rest, so the change in kinetic energy is all the kinetic energy at the end.",
    units={"v": "m·s⁻¹"},
    mistakes=tuple(
        replace(one, instead=instead)
        for one in CHANGE.mistakes
        for key, instead in (("half-lost", "sqrt(W_net/m)"), ("root-lost", "2*W_net/m"))
        if one.key == key
    ),
    marks=(Mark("formula"), Mark("substitution"), Mark("answer")),
)
HALF = replace(
    MEAN,
    law="v_av = v/2",
    why="All forces are constant, so the speed grows evenly: from rest its average is half of the last.",
    units={"v_av": "m·s⁻¹"},
    marks=A,
    mistakes=(),
)
FORCES = (
    Point("Pull F, up along the slope.", 1, ("up along",)),
    Point("Weight w, straight down.", 1, ("straight down",)),
    Point("Normal force N, at right angles to the slope, away from it.", 1, ("right angles",)),
    Point("Friction f, down along the slope, against the motion.", 1, ("against the motion",)),
)
WAXED = Part(
    "waxed",
    "explain",
    "The slope is now covered with a smoother board. Pull and distance stay the same. Explain, without calculating, how"
    " this changes the final speed.",
    points=(
        Point("The coefficient of friction is smaller, so friction takes less energy.", 1, ("takes less energy",)),
        Point(
            "The work of the pull and of the weight stay the same, so the net work is larger.",
            1,
            ("net work is larger",),
        ),
        Point(
            "By the work-energy theorem the gain in kinetic energy is larger: the speed is larger.",
            1,
            ("speed is larger",),
        ),
    ),
)
NO_WORK = Part(
    "normal",
    "explain",
    "How much work does the normal force do? Give a reason.",
    points=(Point("No work at all: it acts at right angles to the motion, and cos 90° = 0.", 1, ("right angles",)),),
)
QUANTITIES = (
    mass("m", "Mass of the chest", "", "30 kg; 20 25 35 40; 18 28 36"),
    slope_angle("theta", "Angle of the ramp with the horizontal", "", "22°; 15 18 20 25; 16 21 24"),
    force("F", "Pull of the winch (size)", "", "230 N; 200 250 300; 210 260"),
    friction_coefficient("mu_k", "Coefficient of kinetic friction", "", "0,2; 0,15 0,2 0,25 0,3; 0,18 0,22 0,28"),
    distance("L", "Distance along the ramp", "", "4 m; 3 4 5 6; 2,8 4,5 5,5"),
)
TOO_WEAK = "The pull is too weak: it does not bring the chest up the ramp. Make it larger."


def plan(data: Data) -> Plan:
    """Theorem, diagram, work of each force, none by the normal force, speed, smoother ramp, power."""
    known = data.known
    drive = UPWARDS.along(known) - known["mu_k"] * known["m"] * known["g"] * cos(known["theta"])
    if drive <= 0:
        raise Refusal("F", TOO_WEAK)
    said = data.said
    return Plan(
        story=data.pick(
            f"A winch pulls a chest of {said['m']} from rest up a straight loading ramp. The ramp makes an angle of"
            f" {said['theta']} with the horizontal, and the rope is parallel to it.",
            f"In a theatre a chest of {said['m']} is pulled from rest up a straight ramp at {said['theta']} to the"
            " horizontal, by a rope parallel to the ramp.",
            f"A chest of {said['m']} starts from rest at the foot of a ship's straight gangway, which rises at"
            f" {said['theta']} to the horizontal; a rope parallel to the gangway pulls it up.",
        )
        + f" The pull is constant, {said['F']}; the coefficient of kinetic friction is {said['mu_k']}. The chest moves"
        f" {said['L']} along the slope.",
        parts=(
            state(THEOREM),
            Part(
                "draw",
                "draw",
                "Draw a labelled free-body diagram of the chest while it moves up.",
                points=FORCES,
                figure=diagram,
            ),
            Part("pull", "calculate", "Calculate the work done by the pull.", (PULLED,)),
            Part("weight", "calculate", "Calculate the work done by the weight.", (WEIGHED,)),
            Part("friction", "calculate", "Calculate the work done by friction.", (NORMAL, FRICTION, RUBBED)),
            NO_WORK,
            Part(
                "speed",
                "calculate",
                "Use energy principles to calculate the speed of the chest after this distance.",
                (TOTAL.in_units(UNITS).step("W_net"), AT_TOP.step("v")),
            ),
            WAXED,
            Part(
                "power",
                "calculate",
                "Calculate the average power of the pull over this distance.",
                (HALF.step("v_av"), PUSHED.in_units(UNITS).step("P")),
            ),
        ),
        values=dict(data.values),
        units={"theta": "°"},
        scene=scene,
        checks=(
            Check(
                "By the equations of motion: the net force over the mass is the acceleration, and v² = 2aL",
                "v^2 = 2*(F - m*g*sin(theta) - f)/m*L",
                "Both ways give the same speed.",
            ),
        ),
        notes=("“Energy principles” are asked for: equations of motion earn no marks here, only a check.",),
    )


def diagram(v: Values) -> Figure:
    """The four forces; the ramp rises to the right."""
    tilt, g = degrees(v["theta"]), v["g"]
    return free_body_diagram(
        [
            Force("F", v["F"], tilt),
            Force("w", v["m"] * g, 270.0, ("m",)),
            Force("N", v["m"] * g * cos(v["theta"]), 90 + tilt),
            Force("f", v["mu_k"] * v["m"] * g * cos(v["theta"]), 180 + tilt),
        ],
        title="Forces on the chest",
        min_fraction=0.14,
    )


def scene(v: Values) -> Figure:
    """The chest at the foot of the ramp."""
    return surface(v, level=False, title="A chest on a ramp", opening="A body on a slope moves up over the distance L.")


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """A pull that is enough for the ramp."""
    toss = chance.random  # type: ignore[attr-defined]
    m, theta, mu = (float(str(typed[name]).split()[0].rstrip("°").replace(",", ".")) for name in ("m", "theta", "mu_k"))
    resist = m * 9.8 * (sin(radians(theta)) + mu * cos(radians(theta)))
    return {**typed, "F": f"{5 * round(resist * (1.15 + 0.35 * toss()) / 5 + 1)} N"}


RAMP = Question(
    key="ramp",
    title="A chest is winched up a ramp",
    plan=plan,
    **boxes(*QUANTITIES),
    constants=("g",),
    laws=(THEOREM.name, WORK.name, POWER.name),
    adjust=practise,
    scenario=True,
    since=4,
)
