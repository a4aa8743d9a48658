"""A whole question: a listener passes a source at rest; both notes, a graph in time, another listener, f and speed.

The set-up and its numbers are our own. f = f_S (v ± v_L)/v, the upper sign for towards. Marks: common practice, no
source.
"""

from __future__ import annotations

from calc.figures import Figure, GraphLine, graph
from calc.figures.graph_marks import Key
from calc.model.answers import Point
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal, Values
from calc.topics.doppler.crossing import SAME
from calc.topics.doppler.laws import DOPPLER, doppler
from calc.topics.doppler.moving import F_S, NEVER, V, mover, sound
from calc.topics.doppler.passing import scene as passing_scene
from calc.working.declaring import boxes, state
from calc.working.working import measure

FASTEST = 60.0  # m/s: beyond it no listener of these stories goes
TOO_FAST = (
    "To hear this the second {} would have to move at {}, which none does. Type a frequency closer to that of the {}."
)
OPENINGS = (
    "The bell of a level crossing sounds steadily at {f_S}. On a windless day a train comes along a straight track and"
    " passes it at a constant {v_L}; the driver hears the bell. The speed of sound in air is {v}.",
    "A loudspeaker beside a closed test track plays a steady tone of {f_S}. In still air a motorcyclist passes it in a"
    " straight line at a constant {v_L}. The speed of sound is {v}.",
    "A horn on a pier sounds steadily at {f_S}. The pilot of a racing boat passes the pier in a straight line at a"
    " constant {v_L}. The air is still, and the speed of sound is {v}.",
)
TALK = (("driver", "bell"), ("motorcyclist", "loudspeaker"), ("pilot", "horn"))
IN_TIME = (
    Point("Axes labelled f and t.", 1, ("labelled",)),
    Point("Before: a level line, above the frequency of the {}.", 1, ("level", "above")),
    Point("A drop at the moment of passing.", 1, ("drop", "passing")),
    Point("After: a level line, below the frequency of the {}.", 1, ("level", "below")),
)
STEADY = (
    Point("It stays the same: the frequency depends on the speed, not on the distance.", 1, ("stays the same",)),
    Point("What changes on the way is the loudness, which grows.", 1, ("loudness",)),
)
WITH_SPEED = (
    Point("Axes labelled f and v_L.", 1, ("labelled",)),
    Point("A straight line that rises.", 1, ("straight", "rises")),
    Point("For a speed of zero it begins at the frequency of the {}, not at the origin.", 1, ("not at the origin",)),
)
WAYS = {
    1: ("The second {} moves towards the {}.", "The note heard is higher than that of the {}.", "towards", "higher"),
    -1: ("The second {} moves away from the {}.", "The note heard is lower than that of the {}.", "away", "lower"),
}


def in_time(v: Values) -> Figure:
    """f against t: level, a drop, level."""
    return graph(
        "t",
        "f",
        [GraphLine([(0.0, 3.2), (2.0, 3.2), (2.0, 2.0), (4.0, 2.0)])],
        keys=[Key(2.0, 3.2, y_label="f_1"), Key(2.0, 2.0, y_label="f_2")],
        ticks=False,
        title="The frequency heard against time",
        description="Graph of f against t: a level line at f1, a drop at the moment of passing, a level line at f2.",
        notes=("Not to scale: the drop is far smaller.",),
    )


def with_speed(v: Values) -> Figure:
    """f against the speed of a listener who comes closer."""
    return graph(
        "v_L",
        "f",
        [GraphLine([(0.0, 2.0), (4.0, 3.4)])],
        marks=[(0.0, 2.0, "f_S")],
        ticks=False,
        title="The frequency heard against the speed",
        description="Graph of f against v_L: a straight line that rises from f of the source on the f axis.",
        notes=("Not to scale: at ordinary speeds it rises far less.",),
    )


def points(these: tuple[Point, ...], *names: str) -> tuple[Point, ...]:
    """The points, with the names of this telling put in."""
    return tuple(Point(one.words.format(*names), one.marks, one.keys) for one in these)


def refuse(data: Data, who: str, what: str) -> int:
    """Refuse what cannot be; whether the second listener comes closer (1) or goes away (−1)."""
    v = data.values
    if v["v_L"] >= v["v"]:
        raise Refusal("v_L", NEVER)
    if v["f_3"] == v["f_S"]:
        raise Refusal("f_3", SAME)
    fast = v["v"] * abs(v["f_3"] / v["f_S"] - 1)
    if fast > FASTEST:
        raise Refusal("f_3", TOO_FAST.format(who, measure(fast, "m·s⁻¹", data.settings.style).text, what))
    return 1 if v["f_3"] > v["f_S"] else -1


def second(data: Data, who: str, what: str, sign: int) -> tuple[Part, ...]:
    """Which way another listener moves, and how fast; sign: 1 towards the source."""
    way, reason, *keys = WAYS[sign]
    return (
        Part(
            "second-way",
            "explain",
            f"A second {who} on the same line hears {data.said['f_3']}. Does this {who} move towards the {what} or"
            " away? Give a reason.",
            points=(
                Point(way.format(who, what), 1, (keys[0],)),
                Point(reason.format(what), 1, (keys[1],)),
            ),
        ),
        Part(
            "second-speed",
            "calculate",
            f"Calculate the speed of the second {who}.",
            (doppler(0, sign).renamed(f_L="f_3", v_L="v_3").step("v_3"),),
        ),
    )


def plan(data: Data) -> Plan:
    """State, both notes, f against t, closer and closer, another listener, f against the speed."""
    who, what = data.pick(*(" ".join(pair) for pair in TALK)).split()
    sign = refuse(data, who, what)
    before, after = (doppler(0, way).renamed(f_L=name) for way, name in ((1, "f_1"), (-1, "f_2")))
    return Plan(
        story=data.pick(*OPENINGS).format(**data.said),
        parts=(
            state(DOPPLER),
            Part(
                "before",
                "calculate",
                f"Calculate the frequency that the {who} hears before passing the {what}.",
                (before.step("f_1"),),
            ),
            Part(
                "after",
                "calculate",
                f"Calculate the frequency that the {who} hears after passing the {what}.",
                (after.step("f_2"),),
            ),
            Part(
                "graph",
                "draw",
                f"Sketch a graph of the frequency f that the {who} hears against time t, from well before passing the"
                f" {what} until well after.",
                points=points(IN_TIME, what),
                figure=in_time,
            ),
            Part(
                "closer",
                "explain",
                f"While the {who} comes closer and closer, does the note rise, fall or stay the same? What about the"
                " loudness?",
                points=STEADY,
            ),
            *second(data, who, what, sign),
            Part(
                "speeds",
                "draw",
                f"More follow, each at another speed. Sketch a graph of the frequency f heard by those who come closer"
                f" to the {what} against their speed v_L.",
                points=points(WITH_SPEED, what),
                figure=with_speed,
            ),
        ),
        values=dict(data.values),
        scene=lambda v: passing_scene("listener"),
        checks=(
            Check("The mean of the two notes is the frequency of the source", "f_S = (f_1 + f_2)/2"),
            Check("The two notes give back the speed", "v_L = v*(f_1 - f_2)/(f_1 + f_2)"),
        ),
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """The note of a second listener, who comes or goes, at another speed."""
    toss = chance.random  # type: ignore[attr-defined]
    f, v, first = (float(str(typed[name]).split()[0].replace(",", ".")) for name in ("f_S", "v", "v_L"))
    speed = 20 + round(14 * toss())
    speed = (speed + 3 if abs(speed - first) < 2 else speed) * (1 if toss() < 0.5 else -1)
    return {**typed, "f_3": f"{f * (1 + speed / v):.4g} Hz".replace(".", ",")}


BELL = Question(
    "bell",
    "Riding past a bell",
    plan=plan,
    laws=(DOPPLER.name,),
    scenario=True,
    since=4,
    adjust=practise,
    **boxes(
        F_S,
        mover("v_L", "Speed of the first listener", "", "25 m/s; 20 22 24 26 28 30; 21,5 23,5 27,5 33"),
        V,
        sound("f_3", "Frequency the second listener hears", "", "468 Hz"),
    ),
)
