"""What each piece of a figure is called in words, alone. The names are the field's; common practice, no source."""

import pytest

from calc.figures import AngleMark, Arrow, Block, Curve, Dimension, Dot, Plate, Segment, Sphere, Surface, Text
from calc.figures.bodies import Ball, Cord, Lift, Pulley, Slope, Spring, Table, Trolley
from calc.figures.circuit_pieces import Junction, Symbol, Wire
from calc.figures.pieces import Column, Piece, Shade
from calc.figures.telling import composed, tell

ORIGIN, X, Y = (0.0, 0.0), (1.0, 0.0), (0.0, 1.0)
WORDS: list[tuple[Piece, str]] = [
    (Arrow(ORIGIN, X, "F_{1}"), "a force arrow labelled F1, to the right"),
    (Arrow(X, ORIGIN), "a force arrow, to the left"),
    (Arrow(ORIGIN, Y, "v", "velocity"), "a velocity arrow (hollow head) labelled v, upwards"),
    (Arrow(Y, ORIGIN, "E", "field"), "a field arrow (open head) labelled E, downwards"),
    (Arrow(ORIGIN, X, "R", "resultant"), "a dashed resultant arrow labelled R, to the right"),
    (Arrow(ORIGIN, X, "F_x", "component"), "a dashed component arrow labelled F x, to the right"),
    (Arrow(ORIGIN, X, "x", "axis"), "an axis labelled x"),
    (Sphere(ORIGIN, 1, "+", "A"), "a positive sphere labelled A"),
    (Sphere(ORIGIN, 1, "-", "A"), "a negative sphere labelled A"),
    (Sphere(ORIGIN, 1), "a sphere"),
    (Segment(ORIGIN, X, "outline", "d"), "a line labelled d"),
    (Segment(ORIGIN, X), ""),
    (Segment(ORIGIN, X, "string"), "a string"),
    (Curve((ORIGIN, X, Y), "fieldline"), "a field line"),
    (Plate(ORIGIN, X, "+", "P"), "a positive plate labelled P"),
    (Plate(ORIGIN, X, "-"), "a negative plate"),
    (Plate(ORIGIN, X), "a plate"),
    (Surface(ORIGIN, X), "a floor"),
    (Surface(X, ORIGIN), "a ceiling"),
    (Surface(ORIGIN, Y), "a wall"),
    (Surface(Y, ORIGIN), "a wall"),
    (Surface(ORIGIN, (1.0, 1.0)), "a slope, 45° above the right"),
    (Surface(ORIGIN, (1.0, 0.05)), "a slope, 2,9° above the right"),
    (Surface(ORIGIN, (0.05, 1.0)), "a slope, 87,1° above the right"),
    (AngleMark(ORIGIN, 0, 30, "θ"), "the angle θ"),
    (AngleMark(ORIGIN, 0, 90), "a right angle"),
    (Dimension(ORIGIN, X, "r"), "a distance labelled r"),
    (Text(ORIGIN, "Before"), "the words Before"),
    (Text(ORIGIN, "5", small=True), ""),
    (Slope(ORIGIN, 3, 30, "θ"), "a slope that rises to the right at 30° (marked θ)"),
    (Slope(ORIGIN, -3, 30), "a slope that rises to the left at 30°"),
    (Table(ORIGIN, X, 1), "a table"),
    (Cord(ORIGIN, X, Y, 0.1, "T"), "a string labelled T over the pulley"),
    (Symbol("resistor", ORIGIN, "R_{1}"), "a resistor labelled R1"),
    (Symbol("ammeter", ORIGIN), "an ammeter"),
    (Wire((ORIGIN, X)), ""),
    (Junction(ORIGIN), ""),
    (Dot(ORIGIN, "P"), "a dot labelled P"),
    (Block(ORIGIN, 1, 1, 0, "m"), "a box labelled m"),
    (Column(ORIGIN, 1, 1, "5 J"), "a bar labelled 5 J"),
    (Shade((ORIGIN, X, Y), "s"), "a shaded area labelled s"),
    (Ball(ORIGIN, 1, "A"), "a ball labelled A"),
    (Trolley(ORIGIN, 1, 1, "A"), "a trolley labelled A"),
    (Lift(ORIGIN, 1, 1, "L"), "a lift labelled L"),
    (Pulley(ORIGIN, 1, Y, "P"), "a fixed pulley labelled P"),
    (Spring(ORIGIN, X, "k"), "a spring labelled k"),
]


@pytest.mark.parametrize(("piece", "said"), WORDS)
def test_a_piece_is_called_by_its_name(piece: Piece, said: str) -> None:
    """The noun, its label, and where it points or how it lies."""
    assert tell(piece) == said


def test_pieces_are_told_one_after_the_other() -> None:
    """An opening, then a sentence for each piece that has words; a velocity brings its note."""
    figure = composed(
        "T", [Dot(ORIGIN, "P"), Segment(ORIGIN, X), Arrow(ORIGIN, X, "v", "velocity")], opening="A point moves."
    )
    assert (
        figure.description
        == "A point moves. A dot labelled P. A velocity arrow (hollow head) labelled v, to the right."
    )
    assert figure.notes == ("Hollow heads: velocities, not forces; lengths not to scale.",)
    assert composed("T", [Dot(ORIGIN, "P")]).notes == ()
