"""The three graphs of one motion: thrown from a height, to the ground, and after a bounce where there is one.

Times, velocities and heights of the key points are calculated first; each graph is then drawn and marked by criterion.
Positions are measured from the ground. Mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure
from calc.model.answers import Point
from calc.model.directions import UP_DOWN
from calc.model.questions import SA, Data, Mistake, Part, Plan, Question, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.projectile.bounce import ADDS
from calc.topics.projectile.equations import POSITIVE, Known, Pass, Roots, equations, falling, passes, written
from calc.topics.projectile.flight import SENSE
from calc.topics.projectile.from_height import below, scene, tops
from calc.topics.projectile.laws import DOWNWARDS, EQUATIONS
from calc.topics.shared.phase_graphs import Mark, acceleration_graph, position_graph, table, velocity_graph
from calc.topics.shared.phases import Motion, free
from calc.topics.shared.quantities import length, velocity_along
from calc.working.declaring import boxes, state
from calc.working.working import measure, run

QUANTITIES = (
    velocity_along("u", "Velocity at the start", "", "8 m/s; 5 12; 4,5 14"),
    length("H", "Height of the start above the ground", "", "12 m; 4 20; 3,5 24"),
)
RISES_TO = replace(
    length("h_2", "Height it rises to after the bounce", "", "").box, optional=True, help="only if it bounces"
)
OPENINGS = (
    "From S, {H} above the ground, a ball {starts} and moves freely along a vertical line.",
    "A ball leaves a machine at S, {H} above a stone yard: it {starts}, straight along a vertical line.",
    "S is a platform {H} above the ground. From there a ball {starts}; it keeps to one vertical line.",
)
REBOUND = "On the ground it bounces, in a very short contact, and rises to {}."
LEVEL = "Air resistance is left out, and positions are measured from the ground."
SIGN = "You gave it the direction it had before the bounce. It leaves the ground upwards: turn the sign of {v_2}."
ONE_WAY = "You have the time to the highest point of the rebound. {t_2} is the time until it lands again: double yours."
GROUND = ("zero at the ground", "ground")


def rebound(up: bool) -> Step:
    """The velocity with which it leaves the ground."""
    law = Relation(
        "v_2^2 = 2*g*h_2",
        what="From the ground to the highest point of the rebound",
        why="From v² = u² + 2aΔy with v = 0: at the top of the rebound it is at rest. It leaves the ground upwards.",
        plain="How high it comes tells how fast it left the ground.",
        units={"v_2": "m·s⁻¹", "h_2": "m"},
        dropped={"v_2": "It would point downwards, and it leaves the ground upwards: drop it."},
    )
    step = replace(law.step("v_2"), direction=lambda v: UP_DOWN.by_sign(v["v_2"], "up" if up else "down"))
    return step if up else replace(step, make="v_2 = -sqrt(2*g*h_2)", other="v_2 = sqrt(2*g*h_2)")


IN_THE_AIR = Step(
    law="0 = v_2*t_2 + 1/2*a*t_2^2",
    make="t_2 = -2*v_2/a",
    what="From the ground back to the ground",
    why="The displacement from the bounce until it lands again is zero: Δy = ut + ½at² with Δy = 0.",
    plain="Up and down again take equally long.",
    unit="s",
    lines=("v_2 + 1/2*a*t_2 = 0",),
    other="t_2 = 0*v_2/a",
    dropped="That is the moment of the bounce itself: drop it.",
    mistakes=(Mistake("one-way", "t_2", "-v_2/a", ONE_WAY),),
)


def flight_of(data: Data, up: bool) -> Pass:
    """The way to the ground, upwards positive."""
    u = data.values["u"] * (1 if up else -1)
    g = data.settings.constant("g")
    (found,) = passes(Known(u=u, y=-data.values["H"]), g)
    if data.has("h_2") and data.values["h_2"] > found.v**2 / (2 * g) * (1 + 1e-9):
        raise Refusal("h_2", ADDS)
    return found


def motion(v: Values, up: bool) -> Motion:
    """The phases in the signs of the positive direction, the ground at zero."""
    first = free(v["H"], v["u"] * (1 if up else -1), v["g"])
    phases = [first]
    if "h_2" in v:
        after = (2 * v["g"] * v["h_2"]) ** 0.5
        phases.append(first.then(2 * after / v["g"], u=after))
    made = Motion(tuple(phases))
    return made if up else made.turned()


def marks(v: Values, one: Motion) -> list[Mark]:
    """The key points of the graphs with their letters."""
    first = one.phases[0]
    top = [] if first.turning is None else [Mark(first.turning, "t_{top}", "h")]
    after = [Mark(first.end, "", "", "v_2")] if "h_2" in v else []
    return [Mark(0.0, "", "H", "u"), *top, Mark(first.end, "t", "", "v", after=False), *after]


def draw_velocity(v: Values, up: bool) -> Figure:
    """v against t, its areas shaded and a slope triangle."""
    one = motion(v, up)
    first = one.phases[0]
    turn = first.turning or 0.0
    areas = [(0.0, turn, ""), (turn, first.end, "")] if turn else [(0.0, first.end, "")]
    long = first.end - turn
    drawn = velocity_graph(one, marks(v, one), areas=areas, slope=(turn + 0.5 * long, turn + 0.8 * long))
    return replace(drawn, table=table(one, [turn]))


def draw_position(v: Values, up: bool) -> Figure:
    """y against t, zero at the ground."""
    one = motion(v, up)
    drawn = position_graph(one, marks(v, one))
    return replace(drawn, table=table(one, [turn for phase in one.phases if (turn := phase.turning)]))


def draw_acceleration(v: Values, up: bool) -> Figure:
    """a against t."""
    one = motion(v, up)
    return replace(acceleration_graph(one), table=table(one, []))


def said(data: Data, value: float, unit: str) -> str:
    """A value of a key point, with its sign."""
    return measure(value, unit, data.settings.style).text


def points(data: Data, v: Values, up: bool) -> dict[str, tuple[Point, ...]]:
    """What each graph is marked by."""
    bounces, turns = data.has("h_2"), "t_top" in v
    at = {name: said(data, v[name], "s") for name in ("t", "t_top", "t_2") if name in v}
    speed = {name: said(data, v[name], "m·s⁻¹") for name in ("u", "v", "v_2") if name in v}
    way = 1 if up else -1
    starts, highest = (said(data, way * v[name], "m") if name in v else "" for name in ("H", "h"))
    velocity = [
        Point("Axes labelled v (m·s⁻¹) and t (s), with the positive direction stated.", 1, ("labelled",)),
        Point(f"A straight line from {speed['u']} at the start to {speed['v']} at {at['t']}.", 1, ("straight",)),
    ]
    position = [
        Point("Axes labelled y (m) and t (s), with zero at the ground.", 1, ("labelled", "zero at the ground")),
        Point(f"A curve (part of a parabola) that starts at {starts} and reaches zero at {at['t']}.", 1, ("curve",)),
    ]
    acceleration = [
        Point(f"A level line at {said(data, v['a'], 'm·s⁻²')}, axes labelled.", 1, ("level",)),
    ]
    if turns:
        velocity.append(Point(f"It crosses the time axis at {at['t_top']}.", 1, ("crosses",)))
        position.append(Point(f"Its turning point lies at {at['t_top']} and {highest}.", 1, ("turning point",)))
        acceleration.append(Point(f"It goes on unbroken through {at['t_top']}.", 1, ("unbroken",)))
    if bounces:
        rise = said(data, way * v["h_2"], "m")
        velocity.append(Point(f"At {at['t']} it jumps to {speed['v_2']}.", 1, ("jumps",)))
        velocity.append(Point("The line after the bounce is parallel to the first.", 1, ("parallel",)))
        position.append(
            Point(f"After the bounce a second such curve, with its turning point at {rise}.", 1, ("second",))
        )
        acceleration.append(Point("During the contact a spike the other way.", 1, ("spike", "other way")))
    return {"velocity": tuple(velocity), "position": tuple(position), "acceleration": tuple(acceleration)}


MEANING = Part(
    "meaning",
    "explain",
    "What do the gradient of the velocity graph, the area under it and the gradient of the position graph tell?",
    points=(
        Point("The gradient of the velocity graph is the acceleration.", 1, ("acceleration",)),
        Point("The area between it and the time axis is the displacement.", 1, ("displacement",)),
        Point("The gradient of the position graph is the velocity.", 1, ("velocity",)),
    ),
)


def calculated(data: Data, up: bool, one: Pass) -> tuple[Part, ...]:
    """The parts that find the key points."""
    laws = equations(up, Roots(one))
    ways = {step.makes: step for law in (falling(up), below(up)) for step in law.steps() if step.makes != "H"}
    velocity = replace(laws[0].step("v"), direction=lambda v: UP_DOWN.by_sign(v["v"], "up" if up else "down"), marks=SA)
    time = (ways["a"], ways["Deltay"], laws[2].step("t"))
    parts = [
        Part("time", "calculate", "Calculate the time until it reaches the ground.", time),
        Part("velocity", "calculate", "Calculate the velocity with which it reaches the ground.", (velocity,)),
    ]
    if one.turned:
        height, moment = tops(up)
        rise = replace(height.step("h"), marks=SA)
        parts.append(
            Part(
                "top",
                "calculate",
                "Calculate the time to its highest point.",
                (replace(moment.step("t_top"), marks=SA),),
            )
        )
        parts.append(Part("height", "calculate", "Calculate its greatest height above the ground.", (rise,)))
    if data.has("h_2"):
        parts.append(Part("rebound", "calculate", "Calculate the velocity just after the bounce.", (rebound(up),)))
        parts.append(
            Part("air", "calculate", "Calculate the time from the bounce until it lands again.", (IN_THE_AIR,))
        )
    return tuple(parts)


def plan(data: Data) -> Plan:
    """State, the key points, the three graphs, what they mean."""
    up = data.choices["positive"] == "up"
    one = flight_of(data, up)
    found = calculated(data, up, one)
    values = run(Plan("", found, dict(data.values)), data.settings.constants())
    marked = points(data, values, up)
    size, way = data.said["u"].lstrip("+−-"), UP_DOWN.by_sign(one.u, "up")
    starts = f"starts at {size} {way.words}" if way else "is let go from rest"
    bounce = f" {REBOUND.format(data.said['h_2'])}" if data.has("h_2") else ""
    graphs = (
        ("velocity", "Draw the graph of velocity against time.", lambda v: draw_velocity(v, up)),
        ("position", "Draw the graph of position against time.", lambda v: draw_position(v, up)),
        ("acceleration", "Draw the graph of acceleration against time.", lambda v: draw_acceleration(v, up)),
    )
    drawn = tuple(Part(f"{key}-graph", "draw", ask, points=marked[key], figure=make) for key, ask, make in graphs)
    opening = data.pick(*OPENINGS).format(H=data.said["H"], starts=starts)
    return Plan(
        story=f"{opening}{bounce} {LEVEL} {SENSE[up]}",
        parts=(state(DOWNWARDS), *found, *drawn, MEANING),
        values=dict(data.values),
        scene=lambda v: scene({name: value for name, value in v.items() if name != "v"}, up),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Thrown up or down from a wall or a tower, mostly with a bounce that takes energy away."""
    draw = cast(Random, random)
    way = 1 if typed["positive"] == "up" else -1
    u = float(draw.choice((5, 6, 8, 10, 12) if level == 1 else (4.5, 7, 9, 11, -3, -5)))
    high = round(4 + 16 * draw.random(), 0 if level == 1 else 1)
    most = high + (u * u / 19.6)
    rises = written(most * (0.2 + 0.4 * draw.random()), "m", 2) if draw.random() < 0.6 else ""
    return {**typed, "u": written(u * way, "m/s", 3), "H": written(high, "m", 3), "h_2": rises}


GRAPHS = Question(
    "graphs",
    "The three graphs of a motion",
    plan=plan,
    **boxes(POSITIVE, *QUANTITIES, RISES_TO, example={"h_2": "5 m"}),
    laws=(DOWNWARDS.name, EQUATIONS.name),
    constants=("g",),
    adjust=practise,
    scenario=True,
    since=4,
)
