"""How much higher or lower a note is heard, in per cent, and the wavelength that reaches the listener.

Both follow from f_L = f_S (v ± v_L)/(v ∓ v_S): k = f_L/f_S is enough for the speeds, and λ = (v ∓ v_S)/f_S lies in the
air. Mistakes: common practice, no source.
"""

from __future__ import annotations

from functools import lru_cache

from calc.model.questions import Mistake
from calc.model.relations import Relation
from calc.topics.doppler.laws import DOPPLER, MARKS, PLAIN, over

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


@lru_cache(maxsize=4)
def shares(source: int, listener: int) -> tuple[Relation, Relation]:
    """The note heard in per cent above or below that of the source, by the frequencies and by the speeds.

    One of the two moves: 1 for towards, −1 for away, 0 for at rest.
    """
    sign = source or listener
    ratio, way = (HIGHER, "higher") if sign > 0 else (LOWER, "lower")
    said = "1 + p/100" if sign > 0 else "1 − p/100"
    change = "f_L - f_S" if sign > 0 else "f_S - f_L"
    by_notes = Relation(
        f"f_L = f_S*({ratio})",
        what="Per cent are counted from the note of the source",
        why=f"The note heard is {way}: it is (100 {'+' if sign > 0 else '−'} p) per cent of the note of the source.",
        plain="So many hundredths of the own note are added or taken off.",
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
        what="Divide the Doppler formula by the frequency of the source",
        why=f"Only the ratio of the frequencies counts: f_L/f_S is {said}, for the note is {way}.",
        plain=PLAIN,
        units={"p": "%", "v": "m·s⁻¹", **({"v_S": "m·s⁻¹"} if source else {"v_L": "m·s⁻¹"})},
        marks=MARKS,
        mistakes=(swapped,),
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
