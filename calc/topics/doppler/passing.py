"""Two notes, before and after passing: v_S = v(f_1 − f_2)/(f_1 + f_2) and f_S = 2f_1f_2/(f_1 + f_2); a listener who
passes hears f_S = (f_1 + f_2)/2.

All follow from the data-sheet equation written twice. Refusals and mistakes: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from itertools import pairwise

from calc.figures import Figure
from calc.figures.waves import Listener, wavefronts
from calc.model.questions import Check, Choice, Data, Mistake, Refusal, Values
from calc.model.relations import Together
from calc.topics.doppler.laws import DOPPLER, doppler
from calc.topics.doppler.moving import AT_REST, F_S, NEVER, SHOCK, V_L, V_S, V, sound
from calc.working.declaring import boxes, told
from calc.working.solving import Laws, Situation, question

HIGHER = "Approaching is the higher note. Enter the higher frequency as the one heard before passing."
BETWEEN = (
    "The frequency of the source lies between the two notes: the one before passing is higher, the one after is lower."
    " Check the three frequencies."
)
NO_PASSING = "No relative motion: with a speed of zero nothing passes. Enter a speed above zero."
NO_SPEED = "These frequencies leave no speed that fits. Check which note is heard before passing and which after."
ONLY_LISTENER = (
    "Only for a moving listener: the mean of the notes is not the frequency of a moving source. Work from both"
    " equations: use {2*f_1*f_2/(f_1 + f_2)}."
)
ONLY_SOURCE = (
    "Only for a moving source: for a moving listener both notes lie equally far from the frequency of the source. Use"
    " {(f_1 + f_2)/2}."
)
SECOND_NOTE = (
    "You took {f_2} for the frequency of the source. Both notes are shifted: write an equation for each, divide one by"
    " the other, and you get {%s}."
)
F_1 = sound("f_1", "Frequency before passing", "Before passing {} is heard.", "548,4 Hz; 560 640 720", unfit=BETWEEN)
F_2 = sound("f_2", "Frequency after passing", "After passing {} is heard.", "459,5 Hz; 480 520 600", unfit=BETWEEN)
FOUND = replace(F_S, example="", tell="The source sounds at {}.", unfit=BETWEEN)
PASSES = Choice(
    "passing",
    "What moves",
    (("source", "the source passes the listener"), ("listener", "the listener passes the source")),
)
SOURCE_SPEED, LISTENER_SPEED, SPEED_OF_SOUND = (replace(one, example="", unfit=NO_SPEED) for one in (V_S, V_L, V))
BOXES = (F_1, F_2, replace(SPEED_OF_SOUND, example="340 m/s"), SOURCE_SPEED, LISTENER_SPEED, FOUND)
OPENINGS = {
    "source": (
        (
            "A hooter on a train sounds one steady note while the train passes a keeper at a gate at constant speed."
            " There is no wind."
        ),
        (
            "On a windless day a ferry sounds its horn steadily and passes a beacon, where a girl listens, at constant"
            " speed."
        ),
        "A toy aeroplane on a straight wire buzzes at one steady note and flies past a microphone at constant speed.",
    ),
    "listener": (
        (
            "An alarm at a gate sounds one steady note. A passenger in a train, the listener, passes it at constant"
            " speed; there is no wind."
        ),
        (
            "A siren stands at a straight road in still air. The driver of a car, the listener, passes it at constant"
            " speed."
        ),
        "A microphone on a trolley is pulled past a loudspeaker that plays one steady note; its speed is constant.",
    ),
}


@lru_cache(maxsize=4)
def laws(who: str) -> Laws:
    """The law for each note, and both together."""
    source, listener, speed = (1, 0, "v_S") if who == "source" else (0, 1, "v_L")
    before = doppler(source, listener).renamed(f_L="f_1")
    after = doppler(-source, -listener).renamed(f_L="f_2")
    mean, other, said = "(f_1 + f_2)/2", "2*f_1*f_2/(f_1 + f_2)", ONLY_LISTENER
    if listener:
        mean, other, said = other, mean, ONLY_SOURCE
    note = "f_1" if source else "f_2"
    ratio = "(f_1 - f_2)/(f_1 + f_2)"
    slips = (
        Mistake("mean-of-notes" if source else "mean-of-source", "f_S", mean, said),
        Mistake("second-note", speed, f"v*(f_1 - f_2)/{note}", SECOND_NOTE % f"v*{ratio}"),
        Mistake("second-note", "v", f"{speed}*{note}/(f_1 - f_2)", SECOND_NOTE % f"{speed}*(f_1 + f_2)/(f_1 - f_2)"),
    )
    one, two = replace(before, mistakes=slips), replace(after, mistakes=())
    what = "Write the Doppler formula for both notes"
    plain = "Two notes, two equations: together they give two unknowns."
    return (
        *(Together(one, two, name, drop, what, plain) for name, drop in ((speed, "f_S"), ("f_S", speed), ("v", "f_S"))),
        before,
        after,
    )


def refuse(data: Data, who: str) -> None:
    """Refuse a speed of what is at rest, a lower note before passing, and a source outside its notes."""
    for name, body in (("v_S", "source"), ("v_L", "listener")):
        if data.has(name) and body != who:
            raise Refusal(name, AT_REST.format(body))
        if data.has(name) and not data.values[name]:
            raise Refusal(name, NO_PASSING)
        if data.has(name) and data.has("v") and data.values[name] >= data.values["v"]:
            raise Refusal(name, SHOCK if who == "source" else NEVER)
    notes = [name for name in ("f_1", "f_S", "f_2") if data.has(name)]
    for one, other in pairwise(notes):
        if data.values[one] <= data.values[other]:
            between = "f_S" in (one, other)
            raise Refusal("f_S" if between else "f_1", BETWEEN if between else HIGHER)


def proofs(who: str, values: Values) -> tuple[Check, ...]:
    """Another way, where the unknown that drops out leaves no law to put the values into."""
    speed = "v_S" if who == "source" else "v_L"
    if speed in values and "f_S" not in values:
        return (Check("A second way: divide one note by the other", f"f_1/f_2 = (v + {speed})/(v - {speed})"),)
    if speed in values:
        return ()
    if who == "source":
        words = "The wavelength of the source at rest lies half-way between those ahead and behind."
        return (
            Check("A second way: by the wavelengths, v divided by each frequency", "2*v/f_S = v/f_1 + v/f_2", words),
        )
    words = "A moving listener hears as much more on the way in as less on the way out."
    return (Check("A second way: both notes lie equally far from that of the source", "f_1 - f_S = f_S - f_2", words),)


def scene(who: str) -> Figure:
    """The two sides of the source, where the two notes are heard."""
    title = "The waves on both sides"
    if who == "source":
        return wavefronts(
            "S", "right", "v_S", [Listener("L", "right", hears="f_1"), Listener("L", "left", hears="f_2")], title=title
        )
    sides = [Listener("L", "left", "right", "v_L", "f_1"), Listener("L", "right", "right", "v_L", "f_2")]
    return wavefronts("S", "", "", sides, title=title)


def situation(data: Data) -> Situation:
    """The situation of the choice made."""
    who = data.choices["passing"]
    refuse(data, who)
    return replace(
        told(BOXES),
        relations=laws(who),
        openings=OPENINGS[who],
        unfit={one.box.name: one.unfit for one in BOXES},
        scene=lambda v: scene(who),
        proofs=lambda v: proofs(who, v),
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Both notes of a drawn source and speed; where the source is given one of the notes is asked."""
    toss = chance.random  # type: ignore[attr-defined]
    asked = next(name for name in ("v_S", "v_L", "f_S", "v", "f_1", "f_2") if not typed[name])
    who = {"v_S": "source", "v_L": "listener"}.get(asked, str(typed["passing"]))
    speed = "v_S" if who == "source" else "v_L"
    f, v, u = 400 + round(400 * toss()), 332 + round(14 * toss()), 18 + round(24 * toss())
    first, second = (v / (v - u), v / (v + u)) if who == "source" else ((v + u) / v, (v - u) / v)
    notes = {"f_1": f"{f * first:.4g} Hz".replace(".", ","), "f_2": f"{f * second:.4g} Hz".replace(".", ",")}
    whole = {**notes, "f_S": f"{f} Hz", "v": f"{v} m/s", speed: f"{u} m/s"}
    keep = {"v": ("f_1", "f_2", speed), "f_1": ("f_2", "v", speed), "f_2": ("f_1", "v", speed)}.get(
        asked, ("f_1", "f_2", "v")
    )
    return {**typed, "passing": who} | {
        name: whole.get(name, "") if name in keep else "" for name in (*whole, "v_S", "v_L")
    }


PASSING = question(
    "passing",
    "Two notes: before and after passing",
    situation,
    **boxes(PASSES, *BOXES),
    laws=(DOPPLER.name,),
    asks="v_S",
    adjust=practise,
    since=4,
)
