"""A whole question: a buzzer let fall down a tall shaft, heard from below and from above.

The set-up and its numbers are our own. v² = u² + 2aΔy from rest, and the Doppler formula with the speed of that moment.
Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.vertical import Height, Place, vertical
from calc.model.answers import Point
from calc.model.questions import Check, Data, Mistake, Part, Plan, Question, Refusal, Values
from calc.model.relations import Relation
from calc.topics.doppler.laws import DOPPLER, doppler
from calc.topics.doppler.moving import F_S, SHOCK, V, sound
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import boxes, state

FLOOR = (
    "Direction and frequencies disagree: the source falls towards the floor, where a higher frequency than its own is"
    " heard. Enter one above the frequency of the source."
)
FALL = Relation(
    "v_S^2 = 2*g*h",
    what="It falls from rest: v² = u² + 2aΔy with u = 0",
    why="Only the gravitational force acts, so the acceleration is g; downwards is positive here.",
    plain="The farther it has fallen, the faster it is; four times as far is twice as fast.",
    units={"v_S": "m·s⁻¹", "h": "m"},
    mistakes=(
        Mistake("root-omitted", "v_S", "2*g*h", "You stopped at {v_S^2}. Take its square root: that is {v_S}."),
        Mistake(
            "two-left-out",
            "v_S",
            "sqrt(g*h)",
            "You left out the 2. The equation is v² = u² + 2aΔy: put {2*g*h} under the root.",
        ),
        Mistake(
            "not-squared",
            "h",
            "v_S/(2*g)",
            "You did not square {v_S}. The equation is v² = u² + 2aΔy: divide {v_S^2} by {2*g}.",
        ),
        Mistake("two-left-out", "h", "v_S^2/g", "You left out the 2. The equation is v² = u² + 2aΔy: divide by {2*g}."),
    ),
)
OPENINGS = (
    "A buzzer of {f_S} is let go at the top of a deep, dry shaft and falls freely. One microphone, B, lies on the floor"
    " straight below it; another, T, stays at the top. The speed of sound in the shaft is {v}. Air resistance is left"
    " out.",
    "In a tall empty grain tower a whistle that sounds steadily at {f_S} is let go under the roof. A microphone B on"
    " the floor straight below and a microphone T under the roof record it. The speed of sound there is {v}. Air"
    " resistance is left out.",
    "For a radio play a tiny loudspeaker with a tone of {f_S} is let go from the top gallery inside a lighthouse. A"
    " microphone B on the floor straight below and a microphone T on the gallery pick it up. The speed of sound is {v}."
    " Air resistance is left out.",
)
TALK = ("buzzer", "whistle", "loudspeaker")
RISING = (
    Point("It rises.", 1, ("rises",)),
    Point("The speed of the {} grows all the way, so v − v_S below the fraction line becomes smaller.", 1, ("speed",)),
)


def scene(v: Values) -> Figure:
    """Where it was let go, where it is after falling h, and the floor."""
    return vertical(
        [Place("T", 2.0), Place("S", 1.0, "v_S", False, spot=True), Place("B", 0.0)],
        [Height(1.0, 2.0, "h")],
        ground=0.0,
        positive="down",
        title="The fall past S",
    )


def plan(data: Data) -> Plan:
    """State, the speed after the fall, the notes below and above, how the note goes on, and a height from a note."""
    v = data.values
    if 2 * data.settings.constant("g") * v["h"] >= v["v"] ** 2:
        raise Refusal("h", SHOCK)
    if v["f_3"] <= v["f_S"]:
        raise Refusal("f_3", FLOOR)
    what, said = data.pick(*TALK), data.said
    below, above = doppler(1, 0), doppler(-1, 0).renamed(f_L="f_2")
    again, back = doppler(1, 0).renamed(f_L="f_3", v_S="v_3"), FALL.renamed(v_S="v_3", h="h_3")
    return Plan(
        story=data.pick(*OPENINGS).format(**said),
        parts=(
            state(DOPPLER),
            Part(
                "speed",
                "calculate",
                f"Calculate the speed of the {what} when it has fallen {said['h']}.",
                (FALL.step("v_S"),),
            ),
            Part(
                "below",
                "calculate",
                "Calculate the frequency at which the microphone on the floor records what is sent out at that moment.",
                (below.step("f_L"),),
            ),
            Part(
                "above",
                "calculate",
                "Calculate the frequency at which the upper microphone records what is sent out at that moment.",
                (above.step("f_2"),),
            ),
            Part(
                "pitch",
                "explain",
                f"While the {what} falls, does the note on the floor rise, fall or stay the same? Give a reason.",
                points=tuple(Point(one.words.format(what), one.marks, one.keys) for one in RISING),
            ),
            Part(
                "depth",
                "calculate",
                f"A sound that reaches the floor has the frequency {said['f_3']}. Calculate how far the {what} had"
                " fallen when it sent it out.",
                (again.step("v_3"), back.step("h_3")),
            ),
        ),
        values=dict(v),
        scene=scene,
        checks=(
            Check("Both notes give back the frequency of the source", "f_S = 2*f_L*f_2/(f_L + f_2)"),
            Check("The height found gives back the last note", "f_3 = f_S*v/(v - sqrt(2*g*h_3))"),
        ),
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """The note from another height of the same fall."""
    toss = chance.random  # type: ignore[attr-defined]
    f, v, h = (float(str(typed[name]).split()[0].replace(",", ".")) for name in ("f_S", "v", "h"))
    other = h * (1.3 + round(12 * toss()) / 10)
    return {**typed, "f_3": f"{f * v / (v - (19.6 * other) ** 0.5):.4g} Hz".replace(".", ",")}


SHAFT = Question(
    "shaft",
    "A buzzer that falls",
    plan=plan,
    laws=(DOPPLER.name,),
    constants=("g",),
    scenario=True,
    since=4,
    adjust=practise,
    **boxes(
        F_S,
        V,
        Quantity("m", 0.1, 500, "Distance must be greater than zero.")(
            "h", "Distance it has fallen at S", "", "20 m; 10 12 15 20 25 30; 8,5 14,5 22,5 34"
        ),
        sound("f_3", "Another frequency heard on the floor", "", "550 Hz"),
    ),
)
