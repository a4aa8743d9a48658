"""A charged body on a rough slope: what friction has to hold, the least coefficient, and whether it stays.

D = F_E ± T − mg sin θ, each force with its own sign, up the slope positive; N = mg cos θ; it stays where |D| is no
larger than μsN. The decision is that of calc.topics.shared.connected. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import degrees

from calc.figures import Figure, Force, Resolved, free_body_diagram
from calc.figures.vectors import Angle
from calc.model.answers import Direction, Mark, Point
from calc.model.directions import FROM_SLOPE
from calc.model.questions import FSA, SA, Check, Data, Mistake, Part, Plan, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.equilibrium.along import Line
from calc.topics.equilibrium.held_scene import slope_figure
from calc.topics.equilibrium.line_laws import NORMAL, PARALLEL
from calc.topics.equilibrium.relations import coulomb, directed
from calc.topics.equilibrium.shared import SAY_ACTING, kind, refuse_uncharged, signs
from calc.topics.shared.connected import Body, Outcome, outcome
from calc.topics.shared.free_bodies import FBD_ASK, FBD_RULES, arrow_points
from calc.topics.shared.motion_laws import PLAIN_STATIC
from calc.working.working import measure, run

TINY = 1e-9
ALONE = "Ask for the friction alone: it is worked with all that it rests on."
WITH_FRICTION = (
    "With friction nothing else follows: it may take any share up to its limit. Ask for the friction and whether it"
    " stays, or leave the coefficient empty."
)
NOT_NEEDED = "The friction does not need this: leave this box empty."
FILL = {
    "m": "Fill in the mass of the sphere.",
    "theta": "Fill in the angle of the slope.",
    "T": "Fill in the pull of the string, or choose “there is no string”.",
    "Q1": "Fill in the charge on the sphere, or the electrostatic force.",
    "Q2": "Fill in the fixed charge, or the electrostatic force.",
    "r": "Fill in the distance between the charges, or the electrostatic force.",
}
ONE_FORCE = "The charges and their distance give this force: leave this box empty, or leave them empty."
PLAIN_D = "This is what friction would have to hold."
TURNED = "You took {F_E} the other way. Say first whether the charges attract or repel, and draw it."
WHOLE = "You used the whole weight. Only its component along the slope counts: use {F_gpar}."
MOST = "You used the largest static friction although it stays at rest. It only matches {D}: use that."
BY_WEIGHT = "You put the weight in for the normal force. Only what presses into the slope counts: use {N}."
TAN = "You left the electrostatic force out. It acts along the slope too: use {D}."


def refuse(data: Data) -> None:
    """What the friction cannot be found with or from."""
    if data.choices["want"] != "f":
        raise Refusal("want", ALONE if "f" in data.choices["want"].split(",") else WITH_FRICTION)
    refuse_uncharged(data)
    for name in ("n", "N", "a", "d"):
        if data.has(name):
            raise Refusal(name, NOT_NEEDED)
    pull = ("T",) if data.choices["string"] != "none" else ()
    charges = ("Q1", "r") if data.choices["equal"] == "equal" else ("Q1", "Q2", "r")
    if data.choices["string"] == "none" and data.has("T"):
        raise Refusal("T", "Without a string there is nothing to pull or to cut: leave this empty.")
    if data.has("F_E") and all(data.has(name) for name in charges):
        raise Refusal("F_E", ONE_FORCE)
    for name in ("m", "theta", *pull, *(() if data.has("F_E") else charges)):
        if not data.has(name):
            raise Refusal(name, FILL[name])


def rough_line(data: Data) -> Line:
    """The set-up, with which way the electrostatic force points."""
    side = 1 if data.choices["where"] == "above" else -1
    acting = kind(data)
    if not acting:
        raise Refusal("acting", SAY_ACTING)
    equal = data.choices["equal"] == "equal"
    return Line(True, side, -acting * side, data.choices["string"], equal, *signs(data, acting))


def pull_of(line: Line) -> int:
    """Which way a string pulls: +1 up, −1 down, 0 without one."""
    return {"up": 1, "down": -1}.get(line.string, 0)


def drive_law(line: Line) -> Relation:
    """D, up the slope positive."""
    terms = [(line.lift, "F_E"), (-1, "F_gpar")] + ([(pull_of(line), "T")] if pull_of(line) else [])
    plus = [term for sign, term in terms if sign > 0]
    minus = [term for sign, term in terms if sign < 0]
    sum_ = " + ".join(plus) + "".join(f" - {term}" for term in minus) if plus else "-" + " - ".join(minus)
    other = f"{sum_} {'-' if line.lift > 0 else '+'} 2*F_E"
    return Relation(
        f"D = {sum_}",
        "Add the forces along the slope, friction left out",
        "Up the slope is positive; each force counts with its own sign.",
        {"D": "N"},
        PLAIN_D,
        mistakes=(
            Mistake("reversed", "D", other, TURNED),
            Mistake("not-resolved", "D", sum_.replace("F_gpar", "m*g"), WHOLE),
        ),
        directions={"D": lambda v: towards(line, v["D"])},
    )


def towards(line: Line, value: float) -> Direction | None:
    """Up or down the slope; nowhere for zero."""
    return None if abs(value) < TINY else line.way(1 if value > 0 else -1)


LIMIT = Relation(
    "f_smax = mu_s*N",
    "The largest static friction",
    "Static friction can have any size up to this one.",
    {"f_smax": "N"},
    PLAIN_STATIC,
    marks=(Mark("formula"), Mark("answer")),
    mistakes=(Mistake("weight-for-normal", "f_smax", "mu_s*m*g", BY_WEIGHT),),
)


def friction(line: Line, limited: bool) -> Step:
    """Static friction at rest, against D."""
    return Step(
        "f = abs(D)",
        "f = abs(D)",
        "The friction that acts",
        "It is at rest, so the net force is zero: static friction is as large as what it holds, and opposite.",
        "N",
        (Mark("formula"), Mark("answer")),
        direction=lambda v: towards(line, -v["D"]),
        plain=PLAIN_STATIC,
        mistakes=(Mistake("largest-although-at-rest", "f", "f_smax", MOST),) if limited else (),
    )


NEEDED = Step(
    "mu_min*N = abs(D)",
    "mu_min = abs(D)/N",
    "The least coefficient with which it stays",
    "At the limit the largest static friction is just what has to be held.",
    "",
    FSA,
    plain="The steeper the slope and the harder the push along it, the rougher it has to be.",
    mistakes=(
        Mistake("charge-forgotten", "mu_min", "tan(theta)", TAN),
        Mistake("weight-for-normal", "mu_min", "abs(D)/(m*g)", BY_WEIGHT),
    ),
)


def decided(data: Data, line: Line, v: Values, found: Outcome) -> tuple[Point, ...]:
    """Whether it stays, or which way it slips."""
    style = data.settings.style
    drive, most = (measure(abs(v[name]), "N", style).text for name in ("D", "f_smax"))
    if found.state == "moves":
        where = line.words(1 if v["D"] > 0 else -1)
        return (
            Point(f"D is {drive} and the largest static friction is {most}: D is larger.", 1, ("larger",)),
            Point(f"It slips {where}.", 1, (where,)),
        )
    if abs(v["D"]) < TINY:
        return (
            Point("D is zero.", 1, ("zero",)),
            Point("The forces balance without friction: it stays at rest.", 1, ("at rest",)),
        )
    if found.state == "limit":
        return (
            Point(f"D is {drive} and the largest static friction is {most}: they are the same.", 1, ("the same",)),
            Point("Friction just holds it: it stays at rest, at the limit.", 1, ("at the limit",)),
        )
    return (
        Point(f"D is {drive} and the largest static friction is {most}: D is smaller.", 1, ("smaller",)),
        Point("Friction can hold it: it stays at rest.", 1, ("stays at rest",)),
    )


def diagram(data: Data, line: Line, v: Values, slips: bool) -> Part:
    """The forces on it, friction among them."""
    tilt = degrees(data.values["theta"])
    rows = [
        ("F_g", "w", "the weight, straight down", 270.0),
        ("N", "N", "the normal force, away from the slope at right angles to it", tilt + 90),
    ]
    pull = pull_of(line)
    if pull and v.get("T"):
        rows.append(("T", "T", f"the tension, along the string, {line.words(pull)}", tilt + (0 if pull > 0 else 180)))
    push = "away from" if line.side * line.lift < 0 else "towards"
    rows.append(
        (
            "F_E",
            "F_E",
            f"the electrostatic force, {push} the fixed charge, {line.words(line.lift)}",
            tilt + (0 if line.lift > 0 else 180),
        )
    )
    if abs(v["D"]) > TINY and not (slips and v["f_smax"] < TINY):
        up = v["D"] < 0
        rows.append(("f", "f_acts", f"friction, {line.words(1 if up else -1)}", tilt + (0 if up else 180)))
    held = min(abs(v["D"]), v.get("f_smax", abs(v["D"])))
    sizes = {**v, "w": v["m"] * v["g"], "f_acts": held}
    forces = [Force(label, abs(sizes[name]), way) for label, name, _, way in rows]
    resolved = data.choices["weight"] == "components"
    ask = FBD_ASK.format(body="the sphere")
    if resolved:
        ask = ask.rstrip(".") + ". Show the components of the weight as dashed lines."

    def figure(values: Values) -> Figure:
        return free_body_diagram(
            forces,
            title="Free-body diagram",
            equal_lengths=data.choices["lengths"] == "equal",
            min_fraction=0.02 if resolved else 0.14,
            components=[Resolved("F_g", tilt, "mg sin θ", "mg cos θ")] if resolved else [],
            angles=[Angle(270.0, 270.0 + tilt, "θ")] if resolved else [],
            guides=[tilt],
        )

    return Part(
        "draw", "draw", ask, points=arrow_points(*((label, where) for label, _, where, _ in rows)), figure=figure
    )


def told(data: Data, line: Line) -> str:
    """The data in sentences; nothing in them says what happens."""
    said, values = data.said, data.values
    ramp = data.pick("a rough plastic slope", "a rough wooden ramp", "a sloping board covered with felt")
    rests = "is put down at rest on" if data.has("mu_s") else "is at rest on"
    charge = f" and charge {said['Q1']}" if values.get("Q1") else ""
    first = (
        f"A small charged sphere of mass {said['m']}{charge}, on a light pad so that it cannot roll, {rests} {ramp} at"
        f" {said['theta']} to the horizontal."
    )
    pull = f"A light string parallel to the slope pulls it {line.words(pull_of(line))} with {said.get('T')}."
    other = f" with charge {said['Q2']}" if values.get("Q2") else " with a charge of the same size" * line.equal
    away = f"{said['r']} " if data.has("r") else ""
    side = "further up" if line.side > 0 else "further down"
    facts = [first, pull * bool(pull_of(line)), f"A second small sphere{other} is fixed on the slope, {away}{side}."]
    if data.choices["acting"] != "signs":
        facts.append(f"The spheres {data.choices['acting']} each other.")
    if data.has("F_E"):
        facts.append(f"The electrostatic force on the sphere is {said['F_E']}.")
    if data.has("mu_s"):
        facts.append(f"The coefficient of static friction is {said['mu_s']}.")
    return " ".join(fact for fact in facts if fact)


def scene(line: Line, v: Values) -> Figure:
    """The set-up, not to scale."""
    return replace(slope_figure(line, v), title="Charged sphere on a rough slope")


def plan_rough(data: Data) -> Plan:
    """F_E, N, what friction has to hold, whether it can, the least coefficient, and the diagram."""
    refuse(data)
    line = rough_line(data)
    down = line.way(-1)
    parts = list[Part]()
    if not data.has("F_E"):
        force = coulomb(line.way(line.lift), line.sign_1, line.sign_2, line.equal).step("F_E")
        parts.append(Part("force", "calculate", "Calculate the electrostatic force on the sphere.", (force,)))
    across = directed(NORMAL, {"N": FROM_SLOPE.of("away")}).step("N")
    if not pull_of(line):
        across = replace(across, why="F_E has no component across the slope, so N alone balances mg cos θ.")
    parts.append(Part("normal", "calculate", "Calculate the normal force on the sphere.", (across,)))
    weight = replace(directed(PARALLEL, {"F_gpar": down}).step("F_gpar"), marks=SA)
    ask = "Calculate D, the sum of the forces along the slope without friction."
    parts.append(Part("along", "calculate", ask, (weight, drive_law(line).step("D"))))
    limited = data.has("mu_s")
    if limited:
        parts.append(Part("limit", "calculate", "Calculate the largest static friction.", (LIMIT.step("f_smax"),)))
    constants = data.settings.constants()
    v = {**constants, **run(Plan("", tuple(parts), dict(data.values)), constants)}
    slips = False
    if limited:
        mu = v["mu_s"]
        body = Body(v["m"], v["theta"], mu, mu, along=line.lift * v["F_E"] + pull_of(line) * v.get("T", 0.0))
        found = outcome([body], g=v["g"])
        slips = found.state == "moves"
        ask = "Does the sphere stay at rest or slip? Give a reason."
        parts.append(Part("decide", "explain", ask, points=decided(data, line, v, found)))
    if not slips and abs(v["D"]) > TINY:
        steps = (friction(line, limited),)
        parts.append(Part("find", "calculate", "Calculate the friction that acts on the sphere.", steps))
    if abs(v["D"]) > TINY:
        ask = "Calculate the least coefficient of static friction with which it stays at rest."
        parts.append(Part("needed", "calculate", ask, (NEEDED,)))
    parts.append(diagram(data, line, v, slips))
    return Plan(
        story=told(data, line),
        parts=tuple(parts),
        values=dict(data.values),
        units={"theta": "°"},
        scene=lambda values: scene(line, values),
        checks=(Check("The parts of the weight make it up again", "sqrt(N^2 + F_gpar^2) = m*g"),),
        notes=(FBD_RULES,),
    )
