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
from calc.model.relations import Relation
from calc.topics.doppler.laws import DOPPLER, MARKS, doppler
from calc.topics.doppler.moving import AT_REST, F_S, NEVER, NOT_ASKED, SHOCK, V_L, V_S, V, known, sound
from calc.topics.doppler.shares import ALL_GONE, drops, linked, per_cent, shares
from calc.working.declaring import boxes, told
from calc.working.solving import Laws, Situation, question

HIGHER = "Approaching is the higher note. Enter the higher frequency as the one heard before passing."
BETWEEN = (
    "The frequency of the source lies between the two notes: the one before passing is higher, the one after is lower."
    " Check the three frequencies."
)
NO_PASSING = "No relative motion: with a speed of zero nothing passes. Enter a speed above zero."
NO_CHANGE = (
    "Before passing the note is higher, after passing lower, whatever moves. Type how many per cent, above zero and"
    " without a sign."
)
NO_SPEED = "These frequencies leave no speed that fits. Check which note is heard before passing and which after."
ONLY_LISTENER = (
    "You took the mean of the notes. Only for a moving listener is that the frequency of the source: use"
    " {2*f_1*f_2/(f_1 + f_2)}."
)
ONLY_SOURCE = (
    "You worked as for a moving source. For a moving listener both notes lie equally far from {f_S}: use"
    " {(f_1 + f_2)/2}."
)
SECOND_NOTE = "You took {f_2} for the frequency of the source. Both notes are shifted: use {%s}."
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
FROM_SOURCE = "Calculate by how many per cent the note %s passing is %s than that of the source."
DECLARED = (
    per_cent(
        "p_1",
        "Change of the note before passing",
        "Before passing the note is {} higher than that of the source.",
        "; 5 12",
        ask=FROM_SOURCE % ("before", "higher"),
        unfit=BETWEEN,
    ),
    per_cent(
        "p_2",
        "Change of the note after passing",
        "After passing the note is {} lower than that of the source.",
        "; 5 12",
        ask=FROM_SOURCE % ("after", "lower"),
        unfit=BETWEEN,
    ),
    per_cent(
        "p",
        "Drop of the note in passing",
        "In passing the note heard drops by {}.",
        "; 9 20",
        ask="Calculate by how many per cent the note heard drops in passing.",
        unfit=BETWEEN,
    ),
)
CHANGES = tuple(replace(one, box=replace(one.box, since=6, refusal=NO_CHANGE)) for one in DECLARED)
OPENINGS = {
    "source": (
        (
            "A hooter on a train sounds one steady note while the train passes a keeper at a gate at constant speed."
            " There is no wind."
        ),
        (
            "On a windless day a speedboat sounds its siren steadily and passes a beacon, where a girl listens, at"
            " constant speed."
        ),
        "A light aircraft hums one steady note and flies past a microphone on a tower at constant speed, in still air.",
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
        (
            "A microphone on a racing car, the listener, passes a loudspeaker that plays one steady note. The air is"
            " still and the speed constant."
        ),
    ),
}


TWO_NOTES = "Divide the Doppler formula of one note by that of the other"
DROPS_OUT = "The frequency of the source is the same in both formulas, so it drops out."
TWO_TOLD = "Two notes, two equations: together they give what neither gives alone."
RATIO = "(f_1 - f_2)/(f_1 + f_2)"
# v/f_1 and v/f_2 are the wavelengths ahead and behind, (v − v_S)/f_S and (v + v_S)/f_S.
WAVELENGTHS = Relation(
    "2/f_S = 1/f_1 + 1/f_2",
    what="Add the Doppler formulas of the two notes, upside down",
    why="1/f₁ = (v − v_S)/(v f_S) and 1/f₂ = (v + v_S)/(v f_S): added, the speed of the source drops out.",
    plain=TWO_TOLD,
    units={"f_S": "Hz"},
    marks=MARKS,
    judged_by={"f_S": "f_1"},
    mistakes=(Mistake("mean-of-notes", "f_S", "(f_1 + f_2)/2", ONLY_LISTENER),),
    quotes=(DOPPLER.name,),
)
EQUALLY_FAR = Relation(
    "2*f_S = f_1 + f_2",
    what="Add the Doppler formulas of the two notes",
    why="f₁ = f_S(v + v_L)/v and f₂ = f_S(v − v_L)/v: added, the speed of the listener drops out.",
    plain=TWO_TOLD,
    units={"f_S": "Hz"},
    marks=MARKS,
    judged_by={"f_S": "f_1"},
    mistakes=(Mistake("mean-of-source", "f_S", "2*f_1*f_2/(f_1 + f_2)", ONLY_SOURCE),),
    quotes=(DOPPLER.name,),
)


def divided(speed: str, note: str) -> Relation:
    """One note divided by the other; ``note``: the one that stands alone where f_2 is taken for the source."""
    return Relation(
        f"f_1/f_2 = (v + {speed})/(v - {speed})",
        what=TWO_NOTES,
        why=DROPS_OUT,
        plain=TWO_TOLD,
        units={speed: "m·s⁻¹", "v": "m·s⁻¹"},
        marks=MARKS,
        mistakes=(
            Mistake("second-note", speed, f"v*(f_1 - f_2)/{note}", SECOND_NOTE % f"v*{RATIO}"),
            Mistake(
                "second-note", "v", f"{speed}*{note}/(f_1 - f_2)", SECOND_NOTE % f"{speed}*(f_1 + f_2)/(f_1 - f_2)"
            ),
        ),
        quotes=(DOPPLER.name,),
    )


@lru_cache(maxsize=4)
def laws(who: str) -> Laws:
    """Both notes together, then the law for each."""
    source, listener = (1, 0) if who == "source" else (0, 1)
    both = (divided("v_S", "f_1"), WAVELENGTHS) if source else (divided("v_L", "f_2"), EQUALLY_FAR)
    notes = ((doppler(source, listener), "f_1"), (doppler(-source, -listener), "f_2"))
    return (*both, *(law.renamed(f_L=name) for law, name in notes))


def refuse(data: Data, who: str) -> None:
    """Refuse a speed of what is at rest, a lower note before passing, and a source outside its notes."""
    for name, body in (("v_S", "source"), ("v_L", "listener")):
        if data.has(name) and body != who:
            raise Refusal(name, AT_REST.format(body))
        if name in data.asked_names and body != who:
            raise Refusal(None, NOT_ASKED.format(body))
        if data.has(name) and not data.values[name]:
            raise Refusal(name, NO_PASSING)
        if data.has(name) and data.has("v") and data.values[name] >= data.values["v"]:
            raise Refusal(name, SHOCK if who == "source" else NEVER)
    for name in ("p_2", "p"):
        if data.has(name) and data.values[name] >= 100:
            raise Refusal(name, ALL_GONE)
    if who == "listener" and data.values.get("p_1", 0.0) >= 100:
        raise Refusal("p_1", NEVER)
    notes = [name for name in ("f_1", "f_S", "f_2") if data.has(name)]
    for one, other in pairwise(notes):
        if data.values[one] <= data.values[other]:
            between = "f_S" in (one, other)
            raise Refusal("f_S" if between else "f_1", BETWEEN if between else HIGHER)


def proofs(who: str, values: Values) -> tuple[Check, ...]:
    """Another way where only one of the speed and the source is found: with the other one found as well."""
    speed = "v_S" if who == "source" else "v_L"
    if {speed, "f_S"} <= values.keys():
        return ()
    if speed in values:
        gap = "The two notes differ by as many per cent of their sum as the speed is of the speed of sound."
        return known(Check("A second way: difference of the notes over their sum", f"{speed}/v = {RATIO}", gap), values)
    if who == "source":
        words = "1/f is that time, and the source's own lies half-way between the two heard."
        crests = Check("A second way: by the time from one crest to the next", "1/f_S - 1/f_1 = 1/f_2 - 1/f_S", words)
        return known(crests, values)
    words = "A moving listener hears as much more on the way in as less on the way out."
    equally = Check("A second way: both notes lie equally far from that of the source", "f_1 - f_S = f_S - f_2", words)
    return known(equally, values)


def scene(who: str) -> Figure:
    """The two sides of the source, where the two notes are heard."""
    title = "The waves on both sides"
    if who == "source":
        return wavefronts(
            "S", "right", "v_S", [Listener("L", "right", hears="f_1"), Listener("L", "left", hears="f_2")], title=title
        )
    sides = [Listener("L", "left", "right", "v_L", "f_1"), Listener("L", "right", "right", "v_L", "f_2")]
    return wavefronts("S", "", "", sides, title=title)


def changes(who: str, names: set[str]) -> Laws:
    """The laws of those changes in per cent that are given or asked."""
    source, listener = (1, 0) if who == "source" else (0, 1)
    there = [one.box.name for one in CHANGES if one.box.name in names]
    found = list[Relation]()
    if "p_1" in there:
        found += [law.renamed(f_L="f_1", p="p_1") for law in shares(source, listener, "p₁")]
    if "p_2" in there:
        found += [law.renamed(f_L="f_2", p="p_2") for law in shares(-source, -listener, "p₂")]
    if "p" in there:
        found += drops(who)
    return (*found, *(linked(who) if len(there) > 1 else ()))


def situation(data: Data) -> Situation:
    """The situation of the choice made."""
    who = data.choices["passing"]
    refuse(data, who)
    boxes = (*BOXES, *CHANGES)
    return replace(
        told(boxes),
        relations=(*laws(who), *changes(who, {*data.values, *data.asked_names})),
        openings=OPENINGS[who],
        unfit={one.box.name: one.unfit for one in boxes},
        scene=lambda v: scene(who),
        proofs=lambda v: proofs(who, v),
    )


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Both notes of a drawn source and speed; where the source is given one of the notes is asked."""
    toss = chance.random  # type: ignore[attr-defined]
    asked = next(name for name in ("v_S", "v_L", "f_S", "v", "f_1", "f_2", "p_1", "p_2", "p") if not typed[name])
    who = {"v_S": "source", "v_L": "listener"}.get(asked, str(typed["passing"]))
    speed = "v_S" if who == "source" else "v_L"
    f, v, u = 400 + round(400 * toss()), 332 + round(14 * toss()), 18 + round(24 * toss())
    first, second = (v / (v - u), v / (v + u)) if who == "source" else ((v + u) / v, (v - u) / v)
    notes = {"f_1": f"{f * first:.4g} Hz".replace(".", ","), "f_2": f"{f * second:.4g} Hz".replace(".", ",")}
    whole = {**notes, "f_S": f"{f} Hz", "v": f"{v} m/s", speed: f"{u} m/s"}
    keep = {"v": ("f_1", "f_2", speed), "f_1": ("f_2", "v", speed), "f_2": ("f_1", "v", speed)}.get(
        asked, ("f_1", "f_2", "v")
    )
    out = {**typed, "passing": who} | {
        name: whole.get(name, "") if name in keep else "" for name in (*whole, "v_S", "v_L")
    }
    return with_changes(out, asked, whole, speed, chance) if "p" in typed else out


def with_changes(
    out: dict[str, object], asked: str, whole: dict[str, str], speed: str, chance: object
) -> dict[str, object]:
    """The same where changes in per cent are drawn: one of them asked, or now and then given for the notes."""
    emptied = {**out, "p_1": "", "p_2": "", "p": ""}
    toss = chance.random()  # type: ignore[attr-defined]
    if asked in ("p_1", "p_2", "p"):
        keep = ("f_1", "f_2") if toss < 0.5 else ("v", speed)
        return {**emptied, **{name: text if name in keep else "" for name, text in whole.items()}}
    if asked not in (speed, "v") or toss < 0.5:
        return emptied
    first, second, own = (float(whole[name].split()[0].replace(",", ".")) for name in ("f_1", "f_2", "f_S"))
    shares = {"p_1": first / own - 1, "p_2": 1 - second / own, "p": 1 - second / first}
    name = ("p_1", "p_2", "p")[int(toss * 6) % 3]
    return {**emptied, "f_1": "", "f_2": "", name: f"{shares[name] * 100:.3g} %".replace(".", ",")}


PASSING = question(
    "passing",
    "Two notes: before and after passing",
    situation,
    **boxes(PASSES, *BOXES, *CHANGES),
    laws=(DOPPLER.name,),
    drawn=tuple(one.box.name for one in BOXES),
    drawn_later={"p_1": 6, "p_2": 6, "p": 6},
    asks="v_S",
    adjust=practise,
    since=4,
)
