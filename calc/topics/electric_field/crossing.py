"""A charge that crosses between charged plates: it enters at right angles to the field and is deflected.

Along the plates the velocity stays u: L = ut. Across, from rest: v_y = at, y = ½at². At the end
v² = u² + v_y² and tan θ = v_y/u; the field has done W = qEy. Marks: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import sqrt
from random import Random

from calc.figures import Figure
from calc.model.directions import UP_DOWN
from calc.model.questions import Check, Choice, Data, Draw, Input, Part, Refusal, Values
from calc.topics.electric_field.laws import ALONG_PLATES, ANGLE_LEFT, BOTH_VELOCITIES, PLATES, WORK_BY_FIELD
from calc.topics.electric_field.motion_drawn import crossing_figure
from calc.topics.electric_field.shared import (
    FIELD,
    MOTION,
    UNIFORM,
    by_value,
    field_along,
    follows,
    memo,
    typed_number,
    upper_plate,
    upper_sign,
    words_of,
)
from calc.topics.electric_field.uniform import (
    TELL,
    Charged,
    an,
    ask_of,
    boxes,
    charged,
    energy,
    fitted,
    following,
    for_body,
    force_of,
    from_rest,
    length,
    newton,
    only_size,
    refuse_light,
    refuse_weight,
    speed,
    time,
    told_by,
    warned,
    weight_check,
)
from calc.topics.shared.electrostatics import SECOND
from calc.working.solving import Situation, question
from calc.working.working import measure

PLATE = {"up": "upper", "down": "lower"}
TURNED = UP_DOWN.worded(up="above the direction in which it entered", down="below the direction in which it entered")


TOLD = TELL | {
    "u": "It enters with a speed of {}.",
    "L": "The plates are {} long.",
    "t": "It is between the plates for {}.",
    "y": "Where it leaves the plates it has been deflected by {}.",
    "v_y": "There its speed across the plates is {}.",
    "v": "It leaves with a speed of {}.",
    "theta": "It leaves at {} to the direction in which it entered.",
    "W": "In all, the field does {} of work on it.",
}
ASK = {
    "u": "Calculate the speed with which it enters.",
    "L": "Calculate the length of the plates.",
    "t": "Calculate how long it is between the plates.",
    "y": "Calculate how far it is deflected at the end of the plates.",
    "v_y": "Calculate its speed across the plates where it leaves.",
    "v": "Calculate the speed with which it leaves.",
    "theta": "Calculate the angle between its velocity where it leaves and the direction in which it entered.",
    "W": "Calculate the work that the field does on it.",
}


def situation(data: Data) -> Situation:
    upper = upper_sign(data)
    along = field_along(data)
    bends = data.choices["bends"]
    body = charged(data, along, "bends", 0 if bends == "charge" else 1 if bends == along else -1, ("y", "v_y"))
    edge = data.choices["enters"] == "edge"
    angle = for_body(ANGLE_LEFT, body)
    turned = {"theta": by_value(TURNED, body.pushed, "theta")} if body.sign else {}
    laws = (
        PLATES,
        force_of(body),
        newton(body),
        ALONG_PLATES,
        for_body(BOTH_VELOCITIES, body),
        replace(angle, directions={**angle.directions, **turned}),
        *from_rest(body, "Across the plates it starts from rest.", s="y", v="v_y"),
        for_body(WORK_BY_FIELD, body, s="y"),
    )
    who = an(body.name)
    place = "just beside the plate from which it then moves away" if edge else "half-way between the plates"
    way = f"The upper plate is {data.choices['upper']}; the weight may be left out."
    if body.q == "q" and body.sign and not data.has("q"):
        way += f" It bends towards the {PLATE[body.pushed]} plate."
    room = 1.0 if edge else 0.5

    def refuse(data: Data, values: Values) -> None:
        found = following(data, [step for law in laws for step in law.steps()])
        if {"y", "d"} <= found.keys() and found["y"] > room * found["d"] * (1 + 1e-9):
            raise Refusal("y" if data.has("y") else None, hits(data, found, room * found["d"], body))
        refuse_weight(data, found)
        refuse_light(data, found, "u", "v")

    def drawn(values: Values, path: bool) -> Figure:
        share = values["y"] / (room * values["d"]) if {"y", "d"} <= values.keys() else 0.6
        return crossing_figure(upper, body.sign, body.pushed, share, edge, path=path)

    return Situation(
        relations=laws,
        openings=(
            (
                f"In a vacuum {who} enters {place}, at right angles to the uniform field between two level charged"
                f" plates. {way}"
            ),
            (
                f"Two level charged plates deflect a beam in an evacuated tube. Follow {who} that enters parallel to"
                f" the plates, {place}. {way}"
            ),
            f"Moving parallel to two level charged plates in a vacuum, {who} flies in {place}. {way}",
        ),
        tell=TOLD,
        ask=ask_of(body) | ASK,
        later=lambda data, values: (path_part(body, lambda v: drawn(v, True)), explain_part(body)) if body.sign else (),
        refuse=refuse,
        proofs=lambda values: proofs(values, body),
        warn=lambda v: warned(v, "u", "v"),
        scene=lambda v: drawn(v, False),
        notes=only_size(data, body),
    )


def proofs(values: Values, body: Charged) -> tuple[Check, ...]:
    """The deflection and the energy once more, each in one line."""
    q, m = body.q, body.m
    sizes = ("q",) if q == "q" else ()
    deflection = Check("The deflection in one line", f"y = {q}*V*L^2/(2*{m}*d*u^2)", tolerance=1e-6, sizes=sizes)
    balance = Check(
        "Energy: what the field gives, the body has more than before",
        f"{q}*E*y = 1/2*{m}*v^2 - 1/2*{m}*u^2",
        "Both sides in joules.",
        tolerance=1e-6,
        sizes=sizes,
    )
    return told_by(values, deflection, balance) + weight_check(values, body)


def hits(data: Data, found: Values, free: float, body: Charged) -> str:
    """That it does not come through, and after which distance it ends at a plate."""
    style = data.settings.style
    plate = f"the {PLATE[body.pushed]} plate" if body.sign else "a plate"
    gap = f"There are only {measure(free, 'm', style, data=True).text} between it and {plate}."
    if {"a", "u"} <= found.keys():
        reach = found["u"] * sqrt(2 * free / found["a"])
        return (
            f"It hits {plate} after {measure(reach, 'm', style).text} along the plates, before their end. {gap} Take"
            " shorter plates, a larger speed or a smaller potential difference."
        )
    return (
        f"It hits {plate} before the end. {gap} Make the deflection smaller or the distance between the plates larger."
    )


def path_part(body: Charged, figure: Callable[[Values], Figure]) -> Part:
    plate, where = PLATE[body.pushed], words_of(body.pushed)
    return memo(
        "path",
        "draw",
        "Draw the path between the plates, and the velocity where it leaves with its two parts.",
        (
            f"The path starts parallel to the plates and bends towards the {plate} plate, part of a parabola.",
            f"{plate} plate",
        ),
        (f"Where it leaves: u along the plates as at first, v_y {where}, and v from both.", where),
        figure=figure,
    )


def explain_part(body: Charged) -> Part:
    plate = PLATE[body.pushed]
    other = "positive" if body.sign < 0 else "negative"
    return memo(
        "explain",
        "explain",
        "Explain towards which plate it bends, and why its velocity along the plates stays the same.",
        (
            f"The charge is {body.kind}, so it is pulled towards the {other} plate, here the {plate} one.",
            f"{other} plate",
        ),
        (
            (
                "The force is at right angles to the plates: no force acts along them, so that part of the velocity"
                " stays u."
            ),
            "no force acts along",
        ),
    )


BENT = ("V", "d", "u", "L")
GIVEN = {
    **dict.fromkeys(("y", "v_y", "v", "theta", "W"), BENT),
    "t": ("u", "L"),
    **dict.fromkeys(("a", "F"), ("V", "d")),
    "E": ("u", "L", "y"),
    "V": ("d", "u", "L", "y"),
    "d": ("V", "u", "L", "y"),
    "u": ("V", "d", "L", "y"),
    "L": ("V", "d", "u", "y"),
    **dict.fromkeys(("q", "m"), (*BENT, "y")),
}


def numbers(draw: Random, q: float, m: float, level: int) -> dict[str, str]:
    """A voltage, plates and a deflection that comes through, and the speed that gives it (SI)."""
    volts = draw.choice((60, 80, 90, 120) if level == 1 else (72, 96, 110, 140, 150))
    millimetres, long = draw.choice((16, 20, 24, 30)), draw.choice((40, 50, 60))
    d, length_of = millimetres / 1000, long / 1000
    y = d * draw.choice((0.1, 0.15, 0.2, 0.25, 0.3, 0.4))
    u = (q * volts / (d * m) * length_of**2 / (2 * y)) ** 0.5
    return {
        "V": f"{volts} V",
        "d": f"{millimetres} mm",
        "L": f"{long} mm",
        "y": f"{y * 1000:.4g} mm".replace(".", ","),
        "u": typed_number(u, "m/s"),
    }


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Numbers that fit each other; the plate it bends to is told where its charge is asked."""
    drawn, q = fitted(typed, random, GIVEN, lambda draw, size, m: numbers(draw, size, m, level))
    field = "down" if typed["upper"] == "positive" else "up"
    return {**drawn, "bends": follows(field, q) if q else "charge"}


CROSSING = question(
    "crossing",
    "A charge that crosses between charged plates",
    situation,
    fields=(
        *boxes(),
        speed("u", "Speed with which it enters"),
        length("L", "Length of the plates"),
        time("Time between the plates"),
        length("y", "Deflection at the end of the plates"),
        speed("v_y", "Speed across, where it leaves"),
        speed("v", "Speed with which it leaves"),
        Input(
            "theta",
            "Angle with its first direction, where it leaves",
            "°",
            0.1,
            89,
            "The angle is more than 0° and less than 90°.",
            under=90.0,
        ),
        energy("Work done by the field"),
        upper_plate(),
        Choice(
            "enters",
            "It enters",
            (("middle", "half-way between the plates"), ("edge", "just beside the plate it moves away from")),
        ),
        Choice(
            "bends",
            "It bends towards",
            (("charge", "the plate its charge tells"), ("up", "the upper plate"), ("down", "the lower plate")),
            quiet=("charge",),
        ),
    ),
    example={
        **dict.fromkeys(GIVEN, ""),
        "V": "90 V",
        "d": "20 mm",
        "particle": "body",
        "q": "+3,2 x 10^-19 C",
        "m": "6,64 x 10^-27 kg",
        "u": "2,5 x 10^5 m/s",
        "L": "50 mm",
        "upper": "positive",
        "enters": "middle",
        "bends": "charge",
    },
    asks="y",
    since=2,
    laws=(UNIFORM.name, FIELD.name, SECOND.name, MOTION.name),
    constants=("e", "m_e", "m_p", "g", "c"),
    draws={
        **{name: Draw((1,)) for name in GIVEN},
        "particle": Draw(("electron", "proton", "body")),
        "upper": Draw(("positive", "negative")),
        "enters": Draw(("middle",), harder=("middle", "edge")),
        "bends": Draw(("charge",)),
    },
    adjust=practise,
)
