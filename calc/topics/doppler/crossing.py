"""A whole question: what is stated, which way a train moves, its speed, its other note, a use, and red shift.

The set-up and its numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.waves import Listener, wavefronts
from calc.model.answers import Point
from calc.model.questions import Check, Data, Part, Plan, Question, Refusal
from calc.topics.doppler.laws import DOPPLER, doppler
from calc.topics.doppler.moving import F_L, F_S, V
from calc.working.declaring import boxes, state

SAME = "No relative motion: both frequencies are the same. Enter two different frequencies."
OPENINGS = (
    (
        "A keeper stands at the gate of a level crossing on a windless day. A train on a straight track sounds its"
        " hooter at {f_S}, and she hears {f_L}. The speed of sound in air is {v}."
    ),
    (
        "The horn of a speedboat sounds at {f_S}. A lifeguard who stands on a jetty hears {f_L} while the boat keeps to"
        " a straight line past the jetty at constant speed. There is no wind, and the speed of sound is {v}."
    ),
    (
        "A drone with a buzzer of {f_S} flies along a straight line past a microphone on a post. In still air, where"
        " the speed of sound is {v}, the microphone records {f_L}."
    ),
)
TALK = (("train", "keeper"), ("speedboat", "lifeguard"), ("drone", "microphone"))
WAY = {1: ("towards", "higher"), -1: ("away from", "lower")}
USE = Part(
    "use",
    "explain",
    "Name one use of the Doppler effect and say what it measures.",
    points=(
        Point("Ultrasound scanner, blood-flow meter, heartbeat monitor of an unborn child, or traffic radar.", 1),
        Point("It measures the speed of what reflects the waves: of blood, of a heart wall, of a car.", 1),
    ),
)
STAR = Part(
    "red-shift",
    "explain",
    "The light of a distant star shows red shift. Explain in words what that is and what it tells of the universe.",
    points=(
        Point("Its light reaches us with a longer wavelength and a lower frequency.", 1, ("longer", "lower")),
        Point("The star is receding, so the universe is expanding.", 1, ("expanding",)),
    ),
)


def scene(sign: int) -> Figure:
    """The source on the left, the listener on the right; not for a reader who is to find which way it moves."""
    drawn = wavefronts("S", "right" if sign == 1 else "left", "v_S", [Listener("L")], title="Source and listener")
    return replace(drawn, drawn_from=("v_S",))


def plan(data: Data) -> Plan:
    """The parts for these frequencies: the heard one says which way the source moves."""
    rises = data.values["f_L"] - data.values["f_S"]
    if not rises:
        raise Refusal("f_L", SAME)
    sign = 1 if rises > 0 else -1
    source, listener = data.pick(*(" ".join(pair) for pair in TALK)).split()
    way, pitch = WAY[sign]
    heard, other = doppler(sign, 0), doppler(-sign, 0).renamed(f_L="f_2")
    reason = Part(
        "way",
        "explain",
        f"Does the {source} move towards the {listener} or away? Give a reason.",
        points=(
            Point(f"It moves {way} the {listener}.", 1, (way.split()[0],)),
            Point(f"The frequency heard is {pitch} than the frequency of the source.", 1, (pitch,)),
        ),
    )
    speed = heard.step("v_S")
    note = replace(other.step("f_2"), what="Use the Doppler formula for the other note")
    return Plan(
        story=data.pick(*OPENINGS).format(**data.said),
        parts=(
            state(DOPPLER),
            reason,
            Part("speed", "calculate", f"Calculate the speed of the {source}.", (speed,)),
            Part(
                "other-note",
                "calculate",
                f"On the other side of the {listener}, at the same speed, the {source} is heard with another note."
                " Calculate its frequency.",
                (note,),
            ),
            USE,
            STAR,
        ),
        values=dict(data.values),
        scene=lambda v: scene(sign),
        checks=(
            Check(
                "Both notes and the source: the frequency of the source from the two notes",
                "f_S = 2*f_L*f_2/(f_L + f_2)",
            ),
        ),
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """The frequency heard from an ordinary speed, one way or the other."""
    toss = chance.random  # type: ignore[attr-defined]
    f, v = (float(str(typed[name]).split()[0].replace(",", ".")) for name in ("f_S", "v"))
    speed = (16 + round(14 * toss())) * (1 if toss() < 0.5 else -1)
    return {**typed, "f_L": f"{f * v / (v - speed):.4g} Hz".replace(".", ",")}


CROSSING = Question(
    "crossing",
    "A hooter at the crossing",
    plan=plan,
    laws=(DOPPLER.name,),
    scenario=True,
    since=4,
    adjust=practise,
    **boxes(F_S, replace(F_L, example="540 Hz"), V),
)
