"""The Doppler effect: the laws in words, and the relation of the two frequencies for whatever moves.

f_L = f_S (v ± v_L)/(v ∓ v_S), the upper signs for towards: data-sheet equation; a speed of zero is left out.
"""

from __future__ import annotations

from functools import lru_cache

from calc.model.answers import Law, Mark
from calc.model.questions import Mistake
from calc.model.relations import Relation

DOPPLER = Law(
    "Doppler effect",
    "The Doppler effect is the change in the observed frequency (pitch) of a sound because source and listener have"
    " different velocities relative to the medium.",
    ("change in the observed frequency", "different velocities", "relative to the medium"),
    formulas=("f_L = f_S*(v +- v_L)/(v +- v_S)",),
    group="Waves and sound",
)
RED_SHIFT = Law(
    "Red shift",
    "Light of a receding star is shifted to a longer wavelength and a lower frequency; it shows that the universe is"
    " expanding.",
    ("longer wavelength", "lower frequency", "expanding"),
)

MARKS = (Mark("formula"), Mark("substitution", 3), Mark("answer"))  # each side of the fraction, and the numbers
UNITS = {"f_L": "Hz", "f_S": "Hz", "v_L": "m·s⁻¹", "v_S": "m·s⁻¹", "v": "m·s⁻¹"}
JUDGED = {"f_L": "f_S", "f_S": "f_L"}
PLAIN = "Coming closer squeezes the waves together and the pitch is higher; going away stretches them and it is lower."
ROLES = (
    "You put the speed of the one who moves on the wrong side of the fraction. Source below, listener above: use {f_L}"
    " = {%s}."
)
ON_TOP = "You have the fraction upside down. Listener on top: use {f_L} = {%s}."
SIGN = {
    1: "Your sign makes the frequency lower. Towards must raise f: use {f_L} = {%s}.",
    -1: "Your sign makes the frequency higher. Away must lower f: use {f_L} = {%s}.",
}
MIXED = "You took a wrong sign. Towards must raise f, away must lower it: use {f_L} = {%s}."
NO_SOUND = "You left out {v}. Include speed of sound, with each speed added to it or taken from it: use {f_L} = {%s}."
PLACES = "You put the two speeds in each other's place. Source below, listener above: use {f_L} = {%s}."


def over(source: int, listener: int, above: str = "v_L", below: str = "v_S") -> str:
    """The fraction of the data sheet; 1 for towards, −1 for away, 0 for at rest."""
    top = {1: f"(v + {above})", -1: f"(v - {above})", 0: "v"}[listener]
    return f"{top}/{ {1: f'(v - {below})', -1: f'(v + {below})', 0: 'v'}[source] }"


def turned(fraction: str) -> str:
    """The fraction upside down."""
    top, bottom = fraction.split("/")
    return f"{bottom}/{top}"


def frequencies(source: int, listener: int) -> tuple[Mistake, ...]:
    """The catalogue's mistakes with the fraction, for both frequencies."""
    right = over(source, listener)
    both = bool(source and listener)
    same = source if source == listener or not listener else listener if not source else 0
    wrong = {
        "sign-swapped": (over(-source, -listener), SIGN.get(same, MIXED)),
        "roles-swapped": (over(listener, source, "v_S", "v_L"), PLACES if both else ROLES),
        "upside-down": (turned(right), ON_TOP),
    }
    if both:
        wrong["source-sign"] = (over(-source, listener), MIXED)
        wrong["listener-sign"] = (over(source, -listener), MIXED)
        wrong["speed-of-sound-omitted"] = ("v_L/v_S", NO_SOUND)
    return tuple(
        Mistake(key, name, f"{other}*{how if name == 'f_L' else turned(how)}", say % f"f_S*{right}")
        for key, (how, say) in wrong.items()
        for name, other in (("f_L", "f_S"), ("f_S", "f_L"))
    )


def _signed(sign: int, text: str) -> str:
    return text if sign > 0 else f"-({text})"


def speeds(source: int, listener: int) -> tuple[Mistake, ...]:
    """Speeds from the fraction with source and listener in each other's place."""
    right = f"f_S*{over(source, listener)}"
    places = PLACES if source and listener else ROLES
    top, bottom = over(listener, source, "v_S", "v_L").split("/")
    found = []
    if source:
        found.append(Mistake("roles-swapped", "v_S", _signed(source, f"f_L/f_S*{bottom} - v"), places % right))
    if listener:
        found.append(Mistake("roles-swapped", "v_L", _signed(listener, f"v - f_S/f_L*{top}"), places % right))
    terms = [*([_signed(listener, "f_L*v_L")] if listener else []), *([_signed(source, "f_S*v_S")] if source else [])]
    found.append(Mistake("roles-swapped", "v", f"({' + '.join(terms)})/(f_L - f_S)", places % right))
    return tuple(found)


def told(source: int, listener: int) -> str:
    """Why the fraction is as it is, one clause for each that moves."""
    clauses = {
        (1, "S"): "The source moves towards the listener: below, its speed is taken from the speed of sound.",
        (-1, "S"): "The source moves away from the listener: below, its speed is added to the speed of sound.",
        (1, "L"): "The listener moves towards the source: above, its speed is added to the speed of sound.",
        (-1, "L"): "The listener moves away from the source: above, its speed is taken from the speed of sound.",
    }
    said = [clauses[key] for key in ((source, "S"), (listener, "L")) if key in clauses]
    return " ".join([*said, *([] if source and listener else ["A speed of zero is left out."])])


@lru_cache(maxsize=16)
def doppler(source: int, listener: int) -> Relation:
    """The law with the signs of this motion: 1 for towards, −1 for away, 0 for at rest."""
    return Relation(
        f"f_L = f_S*{over(source, listener)}",
        what="Use the Doppler formula",
        why=told(source, listener),
        plain=PLAIN,
        units={name: UNITS[name] for name in ("f_L", "f_S", *("v_L",) * bool(listener), *("v_S",) * bool(source), "v")},
        marks=MARKS,
        judged_by=JUDGED,
        mistakes=(*frequencies(source, listener), *speeds(source, listener)),
        quotes=(DOPPLER.name,),
    )
