"""Free-body diagrams: how they are asked for, what earns a mark, and the part that draws one to its numbers."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from calc.figures import Figure, Force, free_body_diagram
from calc.language.symbols import symbol
from calc.model.answers import Point
from calc.model.questions import Data, Part, Step, Values
from calc.working.chain import spread

SUBSCRIPT = re.compile(r"^([A-Za-z])_(\d)$")
FBD_ASK = "Draw a labelled free-body diagram of all the forces acting on {body}."
FBD_RULES = (
    "One mark for each arrow with its label. Every arrow starts on the dot and points away from it; an arrow too many, "
    "a missing head or a component drawn as a force costs a mark."
)


def arrow_points(*arrows: tuple[str, str]) -> tuple[Point, ...]:
    """One mark for each arrow with its label: (label, where it points)."""
    return tuple(Point(f"{label}: {where}.", 1, (label,)) for label, where in arrows)


def printed(label: str) -> str:
    """A label of a figure as a sentence has it: ``T_1`` is T₁, ``F_g`` stays."""
    return symbol(SUBSCRIPT.sub(r"\1\2", label)).text


def free_body(
    key: str,
    body: str,
    rows: Sequence[tuple[str, str, str, float]],
    ways: Sequence[Step],
    data: Data,
    title: str = "Free-body diagram",
    guide: float | None = None,
    derived: Callable[[dict[str, float]], dict[str, float]] = lambda known: {},
) -> Part:
    """The part that asks for the forces on ``body``.

    rows: for each force its label, the name of its size, where it points in words and in degrees on the page.
    ways: steps by which sizes follow from the values; ``derived`` adds others. guide: the direction of a surface.
    Where one size does not follow all arrows are drawn of equal length.
    """
    constants = data.settings.constants()

    def figure(v: Values) -> Figure:
        known = spread({name: x for name, x in v.items() if name not in constants}, list(ways), constants)
        known |= derived({**constants, **known})
        missing = [name for _, name, _, _ in rows if name not in known]
        usual = max((abs(known[name]) for _, name, _, _ in rows if name in known), default=0.0) or 1.0
        sizes = [abs(known.get(name, usual)) for _, name, _, _ in rows]
        if not any(sizes):
            missing, sizes = [name for _, name, _, _ in rows], [1.0] * len(rows)
        return free_body_diagram(
            [Force(label, size, way) for (label, _, _, way), size in zip(rows, sizes, strict=True)],
            title=title,
            equal_lengths=bool(missing),
            min_fraction=0.14,
            guides=[] if guide is None else [guide],
        )

    return Part(
        key,
        "draw",
        FBD_ASK.format(body=body),
        points=arrow_points(*((printed(label), where) for label, _, where, _ in rows)),
        figure=figure,
    )
