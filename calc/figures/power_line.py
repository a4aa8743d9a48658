"""A line from where electrical power is made to where it is used."""

from __future__ import annotations

from calc.figures.figure import Figure
from calc.figures.pieces import Block, Segment, Text
from calc.figures.telling import composed


def power_line(sent: str = "generator", used: str = "users", title: str = "A line that carries power") -> Figure:
    """Two wires between two boxes; the resistance R of both wires together is named at the upper one."""
    return composed(
        title,
        [
            Block((-6.5, 0.0), 4.6, 4.0),
            Text((-6.5, 0.0), sent, "centre"),
            Block((6.5, 0.0), 4.6, 4.0),
            Text((6.5, 0.0), used, "centre"),
            Segment((-4.2, 1.2), (-0.4, 1.2), "graph", "I", arrow=True),
            Segment((-0.4, 1.2), (4.2, 1.2), "graph"),
            Segment((-4.2, -1.2), (4.2, -1.2), "graph"),
            Text((1.8, 1.2), "line, R", "above"),
        ],
        description=(
            f"Two wires run from a box marked {sent} on the left to a box marked {used} on the right. R is the"
            " resistance of both wires together; the current I flows in them."
        ),
        notes=("R is the resistance of both wires together.",),
    )
