"""The angle of a rough slope by energy: with tan ε = µ_k the terms with sin θ and cos θ become one sine.

Up: mgL(sin θ + µ_k cos θ) = mgL sin(θ + ε)/cos ε; down: with θ − ε. Angle sums, school mathematics.
"""

from __future__ import annotations

from calc.language.expressions import expression
from calc.model.questions import Data, Part, Values
from calc.model.relations import Relation
from calc.topics.energy.laws import THEOREM
from calc.topics.shared.one_angle import OTHER_ASK, STEEPER, leaning, named, other_slope
from calc.working.declaring import Mistake
from calc.working.working import measure

NAMED = named("mu_k", "those of the weight and of friction")
PULLING = named("mu_k", "those of the pull")


def angle_laws(rise: int, pulled: str, with_mass: bool) -> tuple[Relation, ...]:
    """The theorem for θ. rise: +1 up, −1 down. pulled: the work of the pull, with what it takes off friction."""
    mass = "m*" if with_mass else ""
    end, start = f"1/2*{mass}v^2", f"1/2*{mass}u^2"
    if rise > 0:
        rest = f"({start} - {end}{f' + {pulled}' if pulled else ''})".replace("+ -", "- ")
    else:
        rest = f"({end} - {start}{f' - {pulled}' if pulled else ''})".replace("- -", "+ ")
    sign, turned = ("+", "-") if rise > 0 else ("-", "+")
    return (
        NAMED,
        Relation(
            f"{mass}g*L*sin(theta {sign} epsilon) = {rest}*cos(epsilon)",
            what="Net work equals the change in kinetic energy, for the angle",
            why=(
                "On the way up the weight and friction both take energy: sin θ + μₖ cos θ is sin(θ + ε)/cos ε."
                if rise > 0
                else "On the way down the weight gives and friction takes energy: sin θ − μₖ cos θ is sin(θ − ε)/cos ε."
            ),
            units={"theta": "°"},
            plain="The steeper the slope, the more energy the weight takes going up or gives coming down.",
            quotes=(THEOREM.name,),
            mistakes=(
                Mistake(
                    "turned",
                    "theta",
                    f"asin({rest}*cos(epsilon)/({mass}g*L)) {sign} epsilon",
                    f"You turned {{epsilon}} the wrong way. The sine is that of {{theta {sign} epsilon}}:"
                    f" {'add' if turned == '+' else 'subtract'} {{epsilon}} at the end.",
                ),
            ),
        ),
    )


def pull_angle(rise: int, carried: str, data: Data) -> tuple[tuple[Relation, ...], tuple[Part, ...]]:
    """The laws for φ from the coefficient, and the part that asks for the other angle where two hold."""
    known = data.known
    side = {
        1: " + m*g*L*(sin(theta) + mu_k*cos(theta))",
        0: " + mu_k*m*g*L",
        -1: " - m*g*L*(sin(theta) - mu_k*cos(theta))",
    }[rise]
    rest = f"(1/2*m*v^2 - 1/2*m*u^2{side})"
    names = set(expression(f"{rest}*F*L").names) | {"mu_k"}
    if not names <= known.keys():
        return (), ()

    def normal(phi: float) -> float:
        return expression(carried).value({**known, "phi": phi})

    found = leaning("F*L", rest, known["mu_k"], known, normal)
    words = (
        "Net work equals the change in kinetic energy, for the angle",
        "The pull drives by F cos φ and takes F sin φ off the normal force: cos φ + μₖ sin φ is cos(φ − ε)/cos ε.",
        "Pulling a little upwards helps, because it lightens the contact; pulling too steeply wastes the pull.",
        (THEOREM.name,),
    )
    step = found.step(*words)
    law = Relation(
        step.law,
        what=step.what,
        why=step.why,
        units={"phi": "°"},
        plain=step.plain,
        quotes=step.quotes,
        by_hand={"phi": step},
    )
    second = Part("other", "calculate", OTHER_ASK, (found.step(*words, name="phi_2"),))
    return (PULLING, law), (second,) if found.other == "also" else ()


def second_angle(rise: int, carried: str, values: Values, data: Data) -> tuple[str, ...]:
    """The other angle that fits, on a very steep way up, told as a warning. carried: the normal force."""
    if rise < 0 or not {"theta", "epsilon"} <= values.keys():
        return ()
    other = other_slope(values)
    known = {"m": 1.0, **data.known, **values}
    if other is None or expression(carried).value({**known, "theta": other}) < 0:
        return ()
    return (STEEPER.format(measure(other, "°", data.settings.style).text),)
