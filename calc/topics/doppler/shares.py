"""How much higher or lower a note is heard, in per cent, and the wavelength that reaches the listener.

Both follow from f_L = f_S (v ± v_L)/(v ∓ v_S): k = f_L/f_S is enough for the speeds, and λ = (v ∓ v_S)/f_S lies in the
air. Mistakes: common practice, no source.
"""

from __future__ import annotations

from functools import lru_cache

from calc.model.questions import Mistake
from calc.model.relations import Relation
from calc.topics.doppler.laws import DOPPLER, MARKS, PLAIN, over
from calc.topics.shared.quantities import Quantity

HIGHER, LOWER = "1 + p/100", "1 - p/100"
OF_SOUND = (
    "You took that per cent of the speed of sound. That holds for a moving listener; a moving source stands below the"
    " fraction line: use {%s}."
)
AS_SOURCE = (
    "You worked as for a moving source. A moving listener stands above the fraction line: take that per cent of {v}."
)
OF_HEARD = "You took the per cent of the note heard. It counts from the note of the source: divide by {f_S}."
ONLY_RATIO = "You have the whole ratio in per cent. By how much it differs from 100 is asked: use {f_L/f_S}, less 1."
BOTH_PLACES = "You put the two speeds in each other's place. Source below, listener above: {1 + p/100} is {%s}."
OTHER_WAY = (
    "You turned the change round. A higher note has more than 100 per cent of the note of the source, a lower one less:"
    " use {1 + p/100}, with the sign of {p}."
)
BY_NOTES = "Per cent are counted from the note of the source"
BY_SPEEDS = "Divide the Doppler formula by the frequency of the source"
HUNDREDTHS = "So many hundredths of the own note are added or taken off."
NO_PER_CENT = (
    "No relative motion: a change of zero means that neither comes closer. Type how many per cent, above zero; choose"
    " towards for higher and away for lower."
)
ALL_GONE = "A note cannot be lower by all of its frequency. Give less than 100 %."

per_cent = Quantity("%", 0.1, 40, NO_PER_CENT)


@lru_cache(maxsize=8)
def shares(source: int, listener: int, printed: str = "p") -> tuple[Relation, Relation]:
    """The note heard in per cent above or below that of the source, by the frequencies and by the speeds.

    One of the two moves: 1 for towards, −1 for away, 0 for at rest. printed: how p is called in the reasons.
    """
    sign = source or listener
    ratio, way = (HIGHER, "higher") if sign > 0 else (LOWER, "lower")
    said = f"1 {'+' if sign > 0 else '−'} {printed}/100"
    change = "f_L - f_S" if sign > 0 else "f_S - f_L"
    by_notes = Relation(
        f"f_L = f_S*({ratio})",
        what=BY_NOTES,
        why=f"The note heard is {way}: it is (100 {'+' if sign > 0 else '−'} {printed}) per cent of the note of the"
        " source.",
        plain=HUNDREDTHS,
        units={"f_L": "Hz", "f_S": "Hz", "p": "%"},
        judged_by={"f_L": "f_S", "f_S": "f_L"},
        mistakes=(
            Mistake("of-the-note-heard", "p", f"({change})/f_L*100", OF_HEARD),
            Mistake("whole-ratio", "p", "f_L/f_S*100", ONLY_RATIO),
        ),
    )
    of_source = f"v - v/({ratio})" if sign > 0 else f"v/({ratio}) - v"
    swapped = (
        Mistake("roles-swapped", "v_S", "v*p/100", OF_SOUND % of_source)
        if source
        else Mistake("roles-swapped", "v_L", of_source, AS_SOURCE)
    )
    by_speeds = Relation(
        f"{ratio} = {over(source, listener)}",
        what=BY_SPEEDS,
        why=f"Only the ratio of the frequencies counts: f_L/f_S is {said}, for the note is {way}.",
        plain=PLAIN,
        units={"p": "%", "v": "m·s⁻¹", **({"v_S": "m·s⁻¹"} if source else {"v_L": "m·s⁻¹"})},
        marks=MARKS,
        mistakes=(swapped,),
        quotes=(DOPPLER.name,),
    )
    return by_notes, by_speeds


AFTER = "You took the per cent of the note after passing. A drop counts from the note before: divide by {f_1}."
FROM_SOURCE = (
    "You took the drop for the change from the note of the source. It is the change from one heard note to the other:"
    " use {1 - p/100} as {f_2/f_1}."
)


@lru_cache(maxsize=4)
def drops(who: str) -> tuple[Relation, Relation]:
    """By how many per cent the note drops in passing, by the two notes and by the speeds."""
    speed = "v_S" if who == "source" else "v_L"
    notes = Relation(
        "f_2 = f_1*(1 - p/100)",
        what="The drop counts from the note before passing",
        why="After passing (100 − p) per cent of the note before are heard.",
        plain="So many hundredths of the first note are taken off.",
        units={"f_1": "Hz", "f_2": "Hz", "p": "%"},
        judged_by={"f_1": "f_2", "f_2": "f_1"},
        mistakes=(Mistake("of-the-note-after", "p", "(f_1 - f_2)/f_2*100", AFTER),),
    )
    speeds = Relation(
        f"1 - p/100 = (v - {speed})/(v + {speed})",
        what="Divide the Doppler formula of the note after passing by that of the note before",
        why="The frequency of the source is the same in both formulas, so it drops out: f₂/f₁ is 1 − p/100.",
        plain="The same speed raises the one note and lowers the other.",
        units={"p": "%", "v": "m·s⁻¹", speed: "m·s⁻¹"},
        marks=MARKS,
        mistakes=(
            Mistake("from-the-source", speed, "v/(1 - p/100) - v" if who == "source" else "v*p/100", FROM_SOURCE),
        ),
        quotes=(DOPPLER.name,),
    )
    return notes, speeds


@lru_cache(maxsize=2)
def linked(who: str) -> tuple[Relation, Relation]:
    """What joins the changes before and after passing and the drop, whatever the frequencies and the speed."""
    if who == "source":
        sides = Relation(
            "1/(1 + p_1/100) + 1/(1 - p_2/100) = 2",
            what="Add the two ratios, upside down",
            why="f_S/f₁ = (v − v_S)/v and f_S/f₂ = (v + v_S)/v: added, the speeds drop out and 2 is left.",
            plain="Ahead of the source each wave is as much shorter as it is longer behind.",
            units={"p_1": "%", "p_2": "%"},
        )
    else:
        sides = Relation(
            "p_1 = p_2",
            what="The note lies as far above as below",
            why="f₁ = f_S(v + v_L)/v and f₂ = f_S(v − v_L)/v: both differ by v_L/v from the note of the source.",
            plain="What a listener gains on the way in is lost on the way out.",
            units={"p_1": "%", "p_2": "%"},
        )
    whole = Relation(
        "1 - p_2/100 = (1 + p_1/100)*(1 - p/100)",
        what="Rise and drop, one after the other",
        why="f₂/f_S is f₁/f_S times f₂/f₁: ratios that follow each other are multiplied.",
        plain="First so many hundredths more, then of that so many hundredths less.",
        units={"p_1": "%", "p_2": "%", "p": "%"},
        mistakes=(Mistake("per-cent-added", "p", "p_1 + p_2", ADDED),),
    )
    return sides, whole


ADDED = (
    "You added the per cents. They count from different notes: the ratios are multiplied, {1 - p/100} is"
    " {(1 - p_2/100)/(1 + p_1/100)}."
)


@lru_cache(maxsize=4)
def shares_of_both(source: int, listener: int) -> tuple[Relation, Relation]:
    """The same where both move, each 1 for towards or −1 for away: p is above zero for a higher note."""
    fraction = over(source, listener)
    by_notes = Relation(
        "f_L = f_S*(1 + p/100)",
        what=BY_NOTES,
        why=(
            "The note heard is (100 + p) per cent of the note of the source: p is above zero for a higher note, below"
            " zero for a lower one."
        ),
        plain=HUNDREDTHS,
        units={"f_L": "Hz", "f_S": "Hz", "p": "%"},
        judged_by={"f_L": "f_S", "f_S": "f_L"},
        mistakes=(
            Mistake("of-the-note-heard", "p", "(f_L - f_S)/f_L*100", OF_HEARD),
            Mistake("whole-ratio", "p", "f_L/f_S*100", ONLY_RATIO),
            Mistake("change-turned-round", "f_L", "f_S*(1 - p/100)", OTHER_WAY),
            Mistake("change-turned-round", "f_S", "f_L/(1 - p/100)", OTHER_WAY),
        ),
    )
    top, bottom = over(listener, source, "v_S", "v_L").split("/")
    swapped = {
        "v_S": f"(1 + p/100)*{bottom} - v" if source > 0 else f"v - (1 + p/100)*{bottom}",
        "v_L": f"v - {top}/(1 + p/100)" if listener > 0 else f"{top}/(1 + p/100) - v",
    }
    by_speeds = Relation(
        f"1 + p/100 = {fraction}",
        what=BY_SPEEDS,
        why="Only the ratio of the frequencies counts: f_L/f_S is 1 + p/100, below 1 for a lower note.",
        plain=PLAIN,
        units={"p": "%", "v": "m·s⁻¹", "v_S": "m·s⁻¹", "v_L": "m·s⁻¹"},
        marks=MARKS,
        mistakes=tuple(Mistake("roles-swapped", name, how, BOTH_PLACES % fraction) for name, how in swapped.items()),
        quotes=(DOPPLER.name,),
    )
    return by_notes, by_speeds


@lru_cache(maxsize=4)
def met(source: int, listener: int) -> Relation:
    """The frequency heard from the wavelength in the air and the speed at which the waves meet the listener."""
    speed = {1: "(v + v_L)", -1: "(v - v_L)", 0: "v"}[listener]
    return Relation(
        f"f_L = {speed}/lambda_L",
        what="As many waves are heard in a second as meet the listener",
        why=(
            "In a second the waves come closer to the listener by this speed, and they lie one wavelength apart."
            if listener
            else "The listener is at rest, so v = fλ holds for what is heard."
        ),
        plain="Divide how far they come in a second by how far apart they are.",
        units={"f_L": "Hz", "lambda_L": "m", "v": "m·s⁻¹"},
    )
