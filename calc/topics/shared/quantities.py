"""The quantities of school physics: the unit, the sensible range and the refusal of each, said once.

A question names one with its words and numbers: ``mass("m", "Mass of the ball", "The ball has a mass of {}.",
"50 g; 20 40 80; 25 65")``. Ranges and refusals: common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from calc.language.quantities import QuantityError, parse_number
from calc.language.units import parse_unit
from calc.model.directions import LEFT_RIGHT, UP_DOWN
from calc.model.questions import DeclarationError, Draw, Input
from calc.working.declaring import Given
from calc.working.solving import Way

RIGHT: Way = (LEFT_RIGHT, "right")
UP: Way = (UP_DOWN, "up")


@dataclass(frozen=True)
class Quantity:
    """One kind of quantity; called, it declares one of them for a question.

    unit: of the box; typed: the same as a keyboard gives it, where that differs. low, high: sensible range (SI,
    degrees for an angle). refusal, over, under, whole, result, counted: as in Input. way: the kind of direction and the
    positive one, for a quantity whose sign is data; ``signed`` without one for a sign that is no direction.
    """

    unit: str
    low: float
    high: float
    refusal: str = ""
    typed: str = ""
    over: float | None = 0.0
    under: float | None = None
    whole: bool = False
    signed: bool = False
    help: str = ""
    way: Way | None = None
    result: Literal["", "measured", "laid out"] = ""
    counted: str = ""

    def __call__(
        self,
        name: str,
        words: str,
        tell: str,
        numbers: str = "?",
        *,
        unit: str = "",
        ask: str = "",
        unfit: str = "",
        way: Way | None = None,
        result: Literal["", "measured", "laid out"] = "",
        high: float | None = None,
        former: tuple[str, ...] = (),
        told_at: Mapping[float, str] | None = None,
    ) -> Given:
        """One such quantity: its name in the laws, the words of its box, the sentence that tells it, its numbers.

        numbers: the example, what practice draws, what it draws from level 2 on, parted by semicolons: "12 cm;
        8 10 12 15; 7,5 12,5". "?" is the quantity the example asks for. The example's unit is that of the box and
        of the draws, unless ``unit`` or a unit behind the draws says otherwise. The rest as in
        :class:`~calc.working.declaring.Given` and Input. Raises DeclarationError for numbers that are none.
        """
        way = way or self.way
        example, drawn, harder = (*(text.strip() for text in numbers.split(";")), "", "")[:3]
        if example == "?":
            example = ""
        typed = UNIT_TYPED.match(example)
        typed_unit = typed[1] if typed else ""
        box = Input(
            name,
            words,
            unit or (parse_unit(typed_unit).text if typed_unit else self.unit),
            self.low,
            self.high if high is None else high,
            refusal=self.refusal,
            over=self.over,
            under=self.under,
            signed=self.signed or way is not None,
            whole=self.whole,
            help=self.help or (f"{way[0].of(way[0].opposite(way[1])).words} is negative" if way else ""),
            former=former,
            result=result or self.result,
            counted=self.counted,
        )
        values, own = _numbers(name, drawn)
        draw = Draw(values, own or typed_unit or unit or self.typed or self.unit, _numbers(name, harder)[0])
        return Given(box, tell, example, draw if values else None, way, ask, told_at or {}, unfit)


UNIT_TYPED = re.compile(r"[+−-]?[\d,.]+(?:\s*[x×]\s*10\^[+−-]?\d+)?\s*([^\d\s,.].*)")


def among[T](random: object, first: Sequence[T], since: Sequence[T]) -> Sequence[T]:
    """What a question's own practice draws from: ``since`` by the rules of drawing that draw between, else ``first``.

    Stored addresses keep the numbers they were drawn with (see ``calc.practice.drawing.BETWEEN``).
    """
    return since if getattr(random, "rule", 1) >= 4 else first


def _numbers(name: str, text: str) -> tuple[tuple[float, ...], str]:
    """Numbers parted by spaces, and the unit behind them, if there is one."""
    words = text.split()
    values: list[float] = []
    for place, word in enumerate(words):
        try:
            values.append(float(parse_number(word)))
        except QuantityError as problem:
            if place and place == len(words) - 1:
                return tuple(values), word
            raise DeclarationError(f"quantity {name!r}, draws {text!r}: {problem.sentence}") from None
    return tuple(values), ""


SIZE = "Enter the size; choose the direction."
mass = Quantity("kg", 1e-4, 1e6, "Mass must be greater than zero.")
time = Quantity("s", 1e-3, 600, "Time must be greater than zero.")
delay = Quantity("s", 1e-3, 600, "A delay cannot be negative: call the body that starts first A.", over=None)
length = distance = Quantity("m", 1e-3, 1e4, "Distance must be greater than zero.")
extension = Quantity("m", 1e-3, 2, "Distance must be greater than zero.")
height = Quantity("m", 1e-3, 1e4, over=None)
speed = Quantity("m·s⁻¹", 1e-3, 1e3, typed="m/s", over=None)
velocity = Quantity("m·s⁻¹", 1e-3, 500, typed="m/s", way=RIGHT)
AGAINST = "minus sign: against the positive direction"  # where that direction is picked
velocity_along = Quantity("m·s⁻¹", 1e-3, 300, typed="m/s", signed=True, help=AGAINST)
displacement_along = Quantity("m", 1e-3, 1e4, signed=True, help=AGAINST)
acceleration = Quantity("m·s⁻²", 1e-3, 1e3, typed="m/s^2", over=None)
force = Quantity("N", 1e-3, 1e6, SIZE, over=None)
electrostatic_force = Quantity(
    "N", 1e-9, 1e3, "Enter the size of the force; choose the direction separately.", over=None
)
momentum = Quantity("kg·m·s⁻¹", 1e-3, 1e7, typed="kg m/s", way=RIGHT)
impulse = Quantity("N·s", 1e-3, 1e7, typed="N s", way=RIGHT)
energy = Quantity("J", 1e-3, 1e9, over=None)
work = Quantity("J", 1e-3, 1e9, signed=True, help="with its sign")
power = Quantity("W", 1e-3, 1e9, "Power must be greater than zero.")
spring_constant = Quantity("N·m⁻¹", 1, 1e5, "The spring constant must be greater than zero.", typed="N/m")
friction_coefficient = Quantity("", 1e-3, 1.5, "A coefficient of friction cannot be negative.", over=None)
slope_angle = Quantity("°", 0.1, 90, "Angle lies between 0° and 90°; choose above or below.", over=None, under=90)
charge = Quantity("nC", 1e-12, 1e-4, signed=True, help="with its sign")
field_strength = Quantity("N·C⁻¹", 1, 3e6, "Field strength must be greater than zero.", typed="N/C")
voltage = Quantity("V", 1e-3, 5e4, "Potential difference must be greater than zero.")
current = Quantity("A", 1e-6, 1e3, "Current must be greater than zero.")
resistance = Quantity("Ω", 1e-3, 1e8, "Resistance must be greater than zero.")
frequency = Quantity("Hz", 1, 1e20, "Frequency must be greater than zero.")
wavelength = Quantity("m", 1e-12, 1e3, "Wavelength must be greater than zero.")


_factor = Quantity(
    "",
    0.01,
    100,
    "A factor is greater than zero: 2 for doubled, 0,5 for halved, 1 for no change.",
    help="1: no change",
)


def factor(name: str, words: str, what: str, numbers: str, *, ask: str = "", follows: bool = False) -> Given:
    """How many times as large a quantity becomes; 1 leaves it as it is.

    what: begins its sentence, "The charge on A"; follows: it changes because others do.
    """
    inside = f"{what[0].lower()}{what[1:]}"
    return _factor(
        name,
        words,
        f"{what} {'becomes' if follows else 'is made'} {{}} times as large.",
        numbers,
        ask=ask or f"By what factor {'does' if follows else 'must'} {inside} change?",
        told_at={1.0: f"{what} stays the same."},
    )
