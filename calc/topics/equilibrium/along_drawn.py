"""A charged sphere on one line: what cannot be, its free-body diagram, and second routes to its values."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import degrees

from calc.figures import Figure, Resolved, free_body_diagram
from calc.figures.vectors import Angle
from calc.model.questions import Check, Data, Part, Refusal, Step, Values
from calc.topics.equilibrium.along import Line
from calc.topics.equilibrium.relations import COUNTED, provable
from calc.topics.equilibrium.shared import FBD_ASK, NO_PUSH
from calc.working.chain import spread

# --- impossible data ----------------------------------------------------------------------------------------


def judge(line: Line, data: Data) -> Callable[[str, float | None], None]:
    """Refuses what follows from the data and cannot be, with the reason."""
    up, down = line.words(1), line.words(-1)
    pull = "mg sin θ" if line.slope else "the weight"
    where = {
        ("up", 1): f"F_E is larger than {pull}: the string goes slack and the sphere moves {up}.",
        ("down", 1): f"F_E is smaller than {pull}: the string goes slack and the sphere moves {down}.",
    }.get((line.string, line.lift), "")

    def see(name: str, value: float | None) -> None:
        field = name if data.has(name) else None
        if name == "T" and value is not None and value < 0:
            raise Refusal(field, f"{NO_PUSH} {where} Change the charges, the distance or the side of the string.")
        if name == "F_E" and value is not None and value <= 0:
            less = "larger" if line.string == "up" and line.lift > 0 else "smaller"
            raise Refusal(
                "T" if data.has("T") else None,
                f"With this tension F_E would have to point {down if line.lift > 0 else up}: the tension cannot be"
                f" {less} than {pull} here. Change T, or the signs.",
            )
        if name == line.weight and value is not None and value <= 0:
            raise Refusal(
                "T" if data.has("T") else None,
                f"These forces leave nothing for {pull}, which must be greater than zero. Change T or the charges.",
            )
        if name == "m" and value is not None and value <= 0:
            raise Refusal(
                None, "These numbers would need a mass of zero or less. Check the acceleration and the forces."
            )
        if name == "theta" and (value is None or not 0 < degrees(value) < 90):
            raise Refusal(
                None,
                "No slope fits: a component cannot be as large as the weight itself. Use a larger mass or smaller"
                " forces.",
            )

    return see


# --- free-body diagrams -------------------------------------------------------------------------------------


def draw_part(
    line: Line, data: Data, ways: list[Step], key: str = "draw", cut: bool = False, body: str = "the sphere"
) -> Part:
    """The part that asks for the free-body diagram, before the cut or just after it."""
    when = " just after the string is cut" if cut else ""
    ask = FBD_ASK.format(body=body).rstrip(".") + when
    resolved = line.slope and data.choices.get("weight") == "components"
    ask += ". Show the components of the weight as dashed lines." if resolved else "."
    constants = data.settings.constants()

    def figure(v: Values) -> Figure:
        return diagram(
            line,
            spread({n: x for n, x in v.items() if n not in constants}, ways, constants),
            constants["g"],
            cut=cut,
            resolved=resolved,
            equal=data.choices.get("lengths") == "equal",
        )

    known = spread(data.values, ways, constants)
    return Part(key, "draw", ask, points=line.arrows(known, cut), figure=figure)


def diagram(
    line: Line, known: Values, g: float, *, cut: bool = False, resolved: bool = False, equal: bool = False
) -> Figure:
    """All forces on the sphere, to the numbers where all are known."""
    sizes, angle = dict(known), degrees(known.get("theta", 0.5))
    if "m" in known:
        sizes["F_gtotal"] = known["m"] * g
    wanted = [
        "F_gtotal",
        *([] if line.neutral else ["F_E"]),
        *(["N"] if line.slope else []),
        *(["T"] if line.string != "none" else []),
    ]
    unknown = [name for name in wanted if name not in sizes]
    sizes.update(dict.fromkeys(unknown, max((sizes[n] for n in wanted if n in sizes), default=0.0) or 1.0))
    components = [Resolved("F_g", angle, "mg sin θ", "mg cos θ")] if resolved else []
    angles = [Angle(270.0, 270.0 + angle, "θ")] if line.slope else []
    return free_body_diagram(
        line.forces(sizes, cut, angle),
        body="",
        title="Free-body diagram" + (" just after the cut" if cut else ""),
        equal_lengths=equal or bool(unknown),
        min_fraction=0.02 if resolved else 0.14,  # components only fit to scale
        components=components,
        angles=angles if resolved else [],
        guides=[angle] if line.slope else [],
    )


# --- second routes ------------------------------------------------------------------------------------------


def line_checks(line: Line, names: set[str], steps: Sequence[Step]) -> tuple[Check, ...]:
    """Other routes to the same values than ``steps``, as far as their quantities are among ``names``."""
    up = {("up", 1): "T + F_E", ("up", -1): "T - F_E", ("down", 1): "F_E - T"}.get((line.string, line.lift), "F_E")
    up = "T" if line.neutral else up
    rows: list[Check] = []
    if line.slope and (line.lift or line.neutral):
        rows.append(replace(VERTICAL_PARTS, equation=f"({up})*sin(theta) + m*g*cos(theta)^2 = m*g"))
    if line.slope:
        rows.append(RIGHT_ANGLED)
    elif line.lift or line.neutral:
        rows.append(Check("Put the forces back: they must carry the weight", f"{up} = m*g"))
    if line.neutral:
        return provable(names, *rows, Check("Work the acceleration from the pull of the string", "a = T/m"))
    weight, sign = "g*sin(theta)" if line.slope else "g", "-" if line.lift > 0 else "+"
    left = f"a = ({weight} {sign} F_E/m)" if line.string == "up" else f"a = F_E/m - {weight}"
    if line.lift:
        rows.append(Check("Work the acceleration from the forces that are left", left))
    both, sizes = ("Q1^2", ("Q1",)) if line.equal else ("Q1*Q2", ("Q1", "Q2"))
    law = f"k*{both}/r^2"
    if all(step.make != f"F_E = {law}" for step in steps):
        back = "Put the charges and the distance back into Coulomb's law"
        rows.append(Check(back, f"{law} = F_E", sizes=sizes))
    elif "T" not in names:
        by_ratio = f"F_E = k*10^-12*(Q1/10^-6)*({line.other}/10^-6)*(1/r)^2"
        rows.append(replace(BY_RATIO, equation=by_ratio, sizes=sizes))
    fields = (BETWEEN,) if "E_net" in names else ()
    return (*provable(names, *rows, COUNTED), *fields)


VERTICAL_PARTS = Check(
    "Add the vertical components instead: they must carry the weight",
    words="The forces along the slope each have a vertical component with sin θ, the normal force mg cos θ one with"
    " cos θ.",
)
RIGHT_ANGLED = Check(
    "The two components of the weight and the weight itself make a right-angled triangle",
    "sqrt(N^2 + (m*g*sin(theta))^2) = m*g",
)
BY_RATIO = Check(
    "Compare with 1 µC and 1 µC at 1 m, which feel k × 10⁻¹² newtons",
    words="Each charge scales the force in step; the distance scales it by the square, downwards.",
)
BETWEEN = Check(
    "The net field lies between the difference and the sum of the two",
    holds=lambda v: abs(v["E_1"] - v["E_2"]) * (1 - 1e-9) <= v["E_net"] <= (v["E_1"] + v["E_2"]) * (1 + 1e-9),
    words="Fields along one line add or subtract, nothing else.",
)
