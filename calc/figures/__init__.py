"""Figures as data: exam-style drawings made from a question's numbers.

A topic builds a `Figure`; ``calc.renderings.svg.render(figure)`` draws it.
World coordinates have y upwards and any scale; directions are in degrees,
anticlockwise, 0° to the right. Vectors are ``Force(label, size, direction_deg)``
or plain tuples like it. Labels take ``F_E``, ``F_{AB}``, ``10^{-2}``.

Whole drawings
    free_body_diagram(forces, *, body, components, angles, guides, equal_lengths, min_fraction)
    tail_to_head(vectors, *, resultant, angle, scale)
    spheres_on_line(charges, *, forces, distances, points)
    charges_in_plane(charges, *, on, forces, resultant, components, distances, angle, axes)
    slope_scene(angle_deg, bodies, *, string, string_on, string_to, forces_on, forces, distances)
    hanging_pair(angle_deg, *, labels, signs, two_supports, attracting, forces, angle_label,
                 thread_label, distance_label, supports_label)
    plates_scene(*, upper_sign, lines, upright, particle, particle_sign, forces, voltage, separation)
    field_pattern(charges, *, lines_each)
    graph(x_label, y_label, lines, *, marks, x_zero, y_zero, ticks)
Parts for your own drawing
    Sphere Dot Block Arrow Segment Curve Dimension AngleMark Surface Plate Text -> Figure
    field_lines(charges, *, radius, margin) -> tuple of Curve;  drawn_lengths(sizes);  polar(origin, length, direction)

Mechanics, circuits, graphs (in modules of their own)
    telling.composed(title, items)              any pieces of yours; the words are written
    bodies: Ball Trolley Lift Pulley Cord Table Slope Spring;  pieces: Column Shade
    motion.before_after(before, after, *, positive)     two sketches with velocities
    planets.planet_scene(arrow, *, kind, above) a planet, its radius, a body at its surface or at a height
    energy.energy_bars(stages)                  bars of energy and work
    circuits.circuit(source, load)              Part, series(...), parallel(...): laid out, IEC 60617
    graph_marks: Key Area Gradient              for ``graph``: key points, shaded areas, slope triangles
What a reader is to find
    Piece.shows, Figure.without(names)          the figure without all that tells of those values

Every builder takes `title`, `description` and `notes`; a description is
written for you where you give none.
"""

from calc.figures.charges import Charge, Mass, On, spheres_on_line
from calc.figures.field import field_at, field_lines, field_pattern
from calc.figures.figure import Figure
from calc.figures.graphs import GraphLine, graph
from calc.figures.pieces import (
    AngleMark,
    Arrow,
    Block,
    Curve,
    Dimension,
    Dot,
    Item,
    Piece,
    Plate,
    Point,
    Segment,
    Sphere,
    Surface,
    Text,
    polar,
)
from calc.figures.plane import charges_in_plane
from calc.figures.plates import plates_scene
from calc.figures.scenes import Body, hanging_pair, slope_scene
from calc.figures.sums import tail_to_head
from calc.figures.vectors import (
    Angle,
    Force,
    Resolved,
    drawn_lengths,
    free_body_diagram,
)

__all__ = [
    "Angle",
    "AngleMark",
    "Arrow",
    "Block",
    "Body",
    "Charge",
    "Curve",
    "Dimension",
    "Dot",
    "Figure",
    "Force",
    "GraphLine",
    "Item",
    "Mass",
    "On",
    "Piece",
    "Plate",
    "Point",
    "Resolved",
    "Segment",
    "Sphere",
    "Surface",
    "Text",
    "charges_in_plane",
    "drawn_lengths",
    "field_at",
    "field_lines",
    "field_pattern",
    "free_body_diagram",
    "graph",
    "hanging_pair",
    "plates_scene",
    "polar",
    "slope_scene",
    "spheres_on_line",
    "tail_to_head",
]
