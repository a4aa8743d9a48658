"""A source and a listener of whom one moves, or both: f_L = f_S (v ± v_L)/(v ∓ v_S), data-sheet equation.

Refusals and mistakes: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import replace

from calc.figures import Figure
from calc.figures.waves import Listener, Way, wavefronts
from calc.language.expressions import equation
from calc.model.directions import PITCH
from calc.model.questions import Check, Choice, Data, Mistake, Part, Refusal, Values
from calc.model.relations import Relation
from calc.topics.doppler.laws import DOPPLER, doppler
from calc.topics.doppler.shares import ALL_GONE, met, per_cent, shares, shares_of_both
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import boxes, state, told
from calc.working.solving import Limit, Situation, question

SHOCK = (
    "At or beyond the speed of sound the formula fails (shock wave). Enter a speed of the source below the speed of"
    " sound."
)
NEVER = (
    "Sound never catches the listener: a listener who moves away must be slower than sound. Enter a smaller speed, or"
    " choose towards."
)
NO_MOTION = (
    "No relative motion: equal frequencies, or a speed of zero, mean that neither comes closer. Enter a speed above"
    " zero and two different frequencies."
)
DISAGREE = (
    "Direction and frequencies disagree: towards, the listener hears the higher frequency; away, the lower. Check the"
    " direction and both frequencies."
)
BEYOND = (
    "The source moves at the speed of sound or faster. Behind it the formula still holds, but it drags a shock wave"
    " along."
)
AT_REST = "The {0} is at rest here. Leave this box empty, or choose that the {0} moves."
NOT_ASKED = "The {0} is at rest here, so its speed is zero. Pick something else to find, or choose that the {0} moves."
SIGNS = {"towards": 1, "away": -1}
HIGHER_NOTE = (
    "Directions and change disagree: both move towards each other, so the note heard is higher. Type the change above"
    " zero."
)
LOWER_NOTE = (
    "Directions and change disagree: both move away from each other, so the note heard is lower. Type the change below"
    " zero, with a minus sign."
)
NO_SPEED = (
    "Directions and change disagree: with these directions no speed gives this change. Check both directions, the"
    " change and whether it is higher or lower."
)

wavelength_heard = Quantity("m", 1e-6, 100, "Wavelength must be greater than zero.")
sound = Quantity("Hz", 20, 20e6, "Frequency must be greater than zero.")
in_medium = Quantity("m·s⁻¹", 300, 1600, "The speed of sound must be greater than zero.", typed="m/s")
mover = Quantity(
    "m·s⁻¹", 0.1, 100, "A speed cannot be negative. Choose towards or away instead.", typed="m/s", over=None
)

F_S = sound("f_S", "Frequency of the source", "The source sounds at {}.", "500 Hz; 400 500 600 800; 420 650 880")
F_L = sound("f_L", "Frequency the listener hears", "The listener hears {}.", unfit=DISAGREE)
V_S = mover("v_S", "Speed of the source", "The source moves at {}.", "30 m/s; 20 25 30 40; 22 34 45", unfit=DISAGREE)
V_L = mover("v_L", "Speed of the listener", "The listener moves at {}.", "; 20 25 30 40 m/s; 22 34 45", unfit=DISAGREE)
V = in_medium(
    "v", "Speed of sound", "The speed of sound is {}.", "340 m/s; 330 335 340 345; 332 338 346", unfit=DISAGREE
)
BOXES = (F_S, V_S, V_L, F_L, V)
# of one that moves besides
P = per_cent(
    "p", "Change of the note heard", "The note heard is {} %s than that of the source.", "; 5 12", unfit=DISAGREE
)
LAMBDA_L = wavelength_heard(
    "lambda_L",
    "Wavelength that reaches the listener",
    "The waves that reach the listener are {} long.",
    "; 0,5 0,8",
    unfit=DISAGREE,
)
MORE = tuple(replace(one, box=replace(one.box, since=5)) for one in (P, LAMBDA_L))

# --- the wavelength that reaches the listener -----------------------------------------------------------------

SHORTER = "The source follows its own waves: between two crests it moves on, so they lie closer. Use {v - v_S}."
LONGER = "The source runs away from its own waves: between two crests it moves on, so they lie wider. Use {v + v_S}."
SAME_WAVES = "A moving listener changes nothing in the air: the waves are as long as the source at rest makes them."

HEARD = "You divided by the frequency heard. A moving listener changes nothing in the air: divide {v} by {f_S}."


def wavelength(source: int) -> Relation:
    """The distance between wavefronts on the side of the listener."""
    how = {1: "(v - v_S)/f_S", -1: "(v + v_S)/f_S", 0: "v/f_S"}[source]
    why = SAME_WAVES
    slips: tuple[Mistake, ...] = (Mistake("heard-frequency", "lambda_L", "v/f_L", HEARD),)
    if source:
        why = SHORTER if source == 1 else LONGER
        other = "(v + v_S)/f_S" if source == 1 else "(v - v_S)/f_S"
        slips = (
            Mistake("other-side", "lambda_L", other, "You took the wrong side of the source. " + why),
            Mistake("source-at-rest", "lambda_L", "v/f_S", "You let the source stand still. " + why),
        )
    return Relation(
        f"lambda_L = {how}",
        what="Divide by the number of waves sent out in a second",
        why=why.partition(" Use")[0],
        plain="In one second so many waves lie along this distance.",
        units={"lambda_L": "m"},
        mistakes=slips,
    )


def in_air(source: int) -> Relation:
    """The same, for any of its quantities."""
    speeds = {"v": "m·s⁻¹"} | ({"v_S": "m·s⁻¹"} if source else {})
    return replace(wavelength(source), units={"lambda_L": "m", "f_S": "Hz", **speeds})


def waves(source: int) -> Part:
    """The part that asks for the wavelength."""
    ask = "Calculate the wavelength of the sound that reaches the listener."
    return Part("wavelength", "calculate", ask, (wavelength(source).step("lambda_L"),))


def second_way(source: int, listener: int) -> Check:
    """The frequency from the wavelength in the air and the speed at which it is met."""
    length = {1: "(v - v_S)/f_S", -1: "(v + v_S)/f_S", 0: "v/f_S"}[source]
    met = {1: "(v + v_L)", -1: "(v - v_L)", 0: "v"}[listener]
    return Check(
        "A second way: the wavelength in the air, and how fast the waves meet the listener",
        f"f_L = {met}/({length})",
        "As many waves are heard in a second as fit into what passes the listener in that time.",
    )


# --- what they share ------------------------------------------------------------------------------------------


def refuse(data: Data, source: int, listener: int) -> None:
    """Refuse a speed of what is at rest, no motion, and frequencies that the directions cannot give."""
    for name, who, moves in (("v_S", "source", source), ("v_L", "listener", listener)):
        if data.has(name) and not moves:
            raise Refusal(name, AT_REST.format(who))
        if name in data.asked_names and not moves:
            raise Refusal(None, NOT_ASKED.format(who))
        if data.has(name) and not data.values[name] and not (source and listener):
            raise Refusal(name, NO_MOTION)
    for name, sentence, moves in (("v_S", SHOCK, source), ("v_L", NEVER, -listener)):
        if moves > 0 and data.has(name) and data.has("v") and data.values[name] >= data.values["v"]:
            raise Refusal(name, sentence)
    if not (data.has("f_S") and data.has("f_L")):
        return
    rises = data.values["f_L"] - data.values["f_S"]
    same = source if source == listener or not listener else listener if not source else 0
    if not rises and not (source and listener):
        raise Refusal("f_L", NO_MOTION)
    if same and rises * same <= 0:
        raise Refusal("f_L", DISAGREE)


def scene(source: int, listener: int) -> Figure:
    """Source on the left, listener on the right."""
    ways: dict[int, Way] = {1: "right", -1: "left", 0: ""}
    return wavefronts(
        "S",
        ways[source],
        "v_S",
        [Listener("L", "right", ways[-listener], "v_L")],
        title="Source, wavefronts and listener",
    )


def known(check: Check, v: Values) -> tuple[Check, ...]:
    """The check, where all its quantities are known."""
    return (check,) if set(equation(check.equation).names) <= v.keys() else ()


def held(source: int, listener: int, openings: tuple[str, ...]) -> Situation:
    """What holds for these directions, told with these openings."""
    limits = [Limit("v - v_S", DISAGREE)] if source == 1 else []
    limits += [Limit("v - v_L", DISAGREE)] if listener < 0 else []
    return replace(
        told(BOXES),
        relations=(doppler(source, listener),),
        openings=openings,
        limits=tuple(limits),
        unfit={one.box.name: DISAGREE for one in BOXES},
        warn=lambda v: (BEYOND,) if source < 0 and v.get("v_S", 0.0) >= v.get("v", math.inf) else (),
        proofs=lambda v: known(second_way(source, listener), v),
        scene=lambda v: scene(source, listener),
    )


def heard(typed: dict[str, object], chance: object, source: int, listener: int) -> dict[str, object]:
    """Practice with a frequency to be heard: drawn numbers put through the law, and only the boxes that count."""
    toss = chance.random  # type: ignore[attr-defined]
    given = {name: str(typed[name]) for name in ("f_S", "v_S", "v_L", "v")}
    asked = next((name for name in ("f_S", "v_S", "v_L", "v", "f_L") if not typed[name]), "f_L")
    number = {name: float(text.split()[0].replace(",", ".")) for name, text in given.items() if text}
    f, v = number.get("f_S", 0) or 400 + round(400 * toss()), number.get("v", 0) or 332 + round(14 * toss())
    v_s, v_l = (number.get(name, 0) or 18 + round(24 * toss()) for name in ("v_S", "v_L"))
    note = f * (v + listener * v_l) / (v - source * v_s)
    out = {**typed, "f_L": "" if asked == "f_L" else f"{note:.4g} Hz".replace(".", ",")}
    return out | {name: "" for name, moves in (("v_S", source), ("v_L", listener)) if not moves}


# --- one of them moves ----------------------------------------------------------------------------------------

MOVES = Choice(
    "moving",
    "What moves",
    (("source", "the source alone"), ("listener", "the listener alone")),
)
WAY = Choice("way", "It moves", (("towards", "towards the other"), ("away", "away from the other")))
TOLD = {
    "source": (
        (
            "A light aircraft hums one steady note. In still air it flies straight {way} a watcher on a tower, at her"
            " height."
        ),
        (
            "An express train sounds its hooter on a straight track. It moves {way} a keeper who stands at a gate;"
            " there is no wind."
        ),
        (
            "On a straight test track a racing car with a squealing belt drives {way} a marshal who stands behind the"
            " barrier. The air is still."
        ),
    ),
    "listener": (
        (
            "A siren on a mast sounds one steady note on a windless day. The driver of a car, the listener, drives"
            " straight {way} it."
        ),
        (
            "An alarm rings at a closed gate. A passenger in a train, the listener, moves along a straight track {way}"
            " it; there is no wind."
        ),
        (
            "A loudspeaker on a roof plays one note in still air, and a motorcyclist, the listener, rides straight"
            " {way} it."
        ),
    ),
}
WAYS = {"towards": "towards", "away": "away from"}


def told_all(data: Data, values: Values, source: int) -> bool:
    """Whether the wavelength follows from what is given."""
    return data.has("f_S") and "v" in values and (data.has("v_S") or not source)


def one_moves(data: Data) -> Situation:
    """The situation of the choices made."""
    who, sign = data.choices["moving"], SIGNS[data.choices["way"]]
    source, listener = (sign, 0) if who == "source" else (0, sign)
    refuse(data, source, listener)
    if data.values.get("p", 0.0) >= 100 and sign < 0:
        raise Refusal("p", ALL_GONE)
    openings = tuple(one.format(way=WAYS[data.choices["way"]]) for one in TOLD[who])
    base = held(source, listener, openings)
    higher = "higher" if sign == 1 else "lower"
    share, waved = (name in {*data.values, *data.asked_names} for name in ("p", "lambda_L"))
    more = told((replace(P, tell=P.tell % higher, ask=SHARE_ASKED % higher), LAMBDA_L))
    return replace(
        base,
        relations=(
            doppler(source, listener),
            *(shares(source, listener) if share else ()),
            *((in_air(source), met(source, listener)) if waved else ()),
        ),
        tell={**base.tell, **more.tell},
        ask={**base.ask, **more.ask},
        unfit={**base.unfit, **{one.box.name: one.unfit for one in MORE}},
        stated=(state(DOPPLER),),
        # not after a frequency or a speed of the source that was asked for: a wrong one hardly shows in it
        later=lambda data, values: (waves(source),) if not waved and told_all(data, values, source) else (),
    )


SHARE_ASKED = "Calculate by how many per cent the note heard is %s than that of the source."


def practise_one(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """The mover whose speed is asked moves."""
    asked = {"v_S": "source", "v_L": "listener"}
    who = next((asked[name] for name in asked if not typed[name]), str(typed["moving"]))
    sign = SIGNS[str(typed["way"])]
    source, listener = (sign, 0) if who == "source" else (0, sign)
    return with_more(typed, heard({**typed, "moving": who}, chance, source, listener), chance)


def with_more(typed: dict[str, object], out: dict[str, object], chance: object) -> dict[str, object]:
    """The same where the younger boxes are drawn: one of them asked, or now and then the change given for the notes."""
    if "p" not in typed:
        return out
    emptied = {**out, "p": "", "lambda_L": ""}
    if not typed["p"]:
        return {**emptied, "f_S": "", "f_L": ""}
    if not typed["lambda_L"]:
        return {**emptied, "f_L": ""}
    if (typed["v_S"] and typed["v_L"] and typed["v"]) or chance.random() < 0.5:  # type: ignore[attr-defined]
        return emptied
    f, note = (float(str(out[name]).split()[0].replace(",", ".")) for name in ("f_S", "f_L"))
    share = f"{abs(note / f - 1) * 100:.3g} %".replace(".", ",")
    return {**emptied, "f_S": "", "f_L": "", "p": share}


ONE = question(
    "one-moves",
    "One moves: the source or the listener",
    one_moves,
    **boxes(MOVES, WAY, *BOXES, *MORE),
    laws=(DOPPLER.name,),
    drawn=tuple(one.box.name for one in BOXES),
    drawn_later={"p": 5, "lambda_L": 5},
    asks="f_L",
    adjust=practise_one,
    since=4,
)

# --- both move ------------------------------------------------------------------------------------------------

SOURCE_WAY = Choice(
    "source_way", "The source moves", (("towards", "towards the listener"), ("away", "away from the listener"))
)
LISTENER_WAY = Choice(
    "listener_way", "The listener moves", (("towards", "towards the source"), ("away", "away from the source"))
)
BOTH_TOLD = (
    (
        "Two trains run on parallel straight tracks in still air. One, the source, sounds its hooter and moves {source}"
        " the other; the driver of the other, the listener, moves {listener} it."
    ),
    (
        "On a straight road without wind a van with a siren, the source, drives {source} a motorcyclist, the listener,"
        " who rides {listener} the van."
    ),
    (
        "Two light aircraft fly at one height along the same straight line in still air. The first, the source, hums"
        " one note and moves {source} the second; the pilot of the second, the listener, flies {listener} the first."
    ),
)


# Higher or lower hangs on both directions, and with one towards and one away on the speeds too: the sign says it.
P_BOTH = Quantity("%", 0.1, 90, way=(PITCH, "higher"), help="a lower note is negative")(
    "p",
    "Change of the note heard",
    "The note heard is {} than that of the source.",
    "; 5 12",
    ask="Calculate by how many per cent the note heard is higher or lower than that of the source.",
    told_at={0.0: "The note heard is that of the source."},
    unfit=NO_SPEED,
)
P_BOTH = replace(P_BOTH, box=replace(P_BOTH.box, since=6))


def both_move(data: Data) -> Situation:
    """The situation of the choices made."""
    ways = data.choices["source_way"], data.choices["listener_way"]
    source, listener = (SIGNS[way] for way in ways)
    refuse(data, source, listener)
    openings = tuple(one.format(source=WAYS[ways[0]], listener=WAYS[ways[1]]) for one in BOTH_TOLD)
    base = held(source, listener, openings)
    if "p" not in {*data.values, *data.asked_names}:
        return base
    change = data.values.get("p")
    if change is not None and change <= -100:
        raise Refusal("p", ALL_GONE)
    if change is not None and source == listener and change * source <= 0:
        raise Refusal("p", HIGHER_NOTE if source > 0 else LOWER_NOTE)
    more = told((P_BOTH,))
    return replace(
        base,
        relations=(*base.relations, *shares_of_both(source, listener)) if isinstance(base.relations, tuple) else (),
        tell={**base.tell, **more.tell},
        told_at={**base.told_at, **more.told_at},
        ask={**base.ask, **more.ask},
        ways=more.ways,
        limits=tuple(replace(one, sentence=NO_SPEED) for one in base.limits) if change is not None else base.limits,
        unfit=dict.fromkeys((*base.unfit, "p"), NO_SPEED) if change is not None else base.unfit,
    )


def practise_both(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Both move as chosen."""
    out = heard(typed, chance, SIGNS[str(typed["source_way"])], SIGNS[str(typed["listener_way"])])
    if "p" not in typed:
        return out
    if not typed["p"]:
        return {**out, "f_S": "", "f_L": ""}
    if (typed["v_S"] and typed["v_L"] and typed["v"]) or chance.random() < 0.5:  # type: ignore[attr-defined]
        return {**out, "p": ""}
    f, note = (float(str(out[name]).split()[0].replace(",", ".")) for name in ("f_S", "f_L"))
    return {**out, "f_S": "", "f_L": "", "p": f"{(note / f - 1) * 100:+.3g} %".replace(".", ",")}


BOTH = question(
    "both-move",
    "Source and listener both move",
    both_move,
    **boxes(SOURCE_WAY, LISTENER_WAY, *BOXES, P_BOTH, example={"v_L": "20 m/s"}),
    laws=(DOPPLER.name,),
    drawn=tuple(one.box.name for one in BOXES),
    drawn_later={"p": 6},
    adjust=practise_both,
    since=4,
)
