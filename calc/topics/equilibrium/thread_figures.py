"""Bodies on threads, drawn: the free-body diagram of one, and the scenes of those that are no equal pair."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import cos, degrees, radians, sin, tan

from calc.figures import Dimension, Figure, Force, Resolved, Segment, Sphere, Surface, free_body_diagram
from calc.figures.charges import RADIUS, sign_of
from calc.figures.figure import Tells
from calc.figures.pieces import AngleMark, Item, Plate, polar
from calc.figures.vectors import Angle
from calc.model.answers import Point
from calc.model.questions import Data, Part, Step, Values
from calc.topics.equilibrium.shared import FBD_ASK
from calc.working.chain import spread

NOT_TO_SCALE = "Not to scale."
SEEN = (6.0, 70.0)  # degrees: a drawn angle stays within what can be seen


# --- the free-body diagram ----------------------------------------------------------------------------------


def thread_draw(
    data: Data,
    ways: Sequence[Step],
    push: int,
    points: tuple[Point, ...],
    *,
    body: str,
    key: str = "draw",
    cut: bool = False,
    title: str = "",
    names: Mapping[str, str] | None = None,
) -> Part:
    """The part that asks for the free-body diagram of a body on a thread, before the cut or just after it.

    push: +1 where F_E points to the right, −1 to the left. names: what m, alpha, T and F_E are called here.
    """
    resolved = data.choices.get("parts") == "components" and not cut
    ask = FBD_ASK.format(body=body).rstrip(".") + (" just after its thread is cut" if cut else "")
    ask += ". Show the components of the tension as dashed lines." if resolved else "."
    constants, called = data.settings.constants(), names or {}

    def figure(v: Values) -> Figure:
        known = spread({n: x for n, x in v.items() if n not in constants}, ways, constants)
        own = {n: known[called.get(n, n)] for n in ("m", "alpha", "T", "F_E") if called.get(n, n) in known}
        return thread_diagram(
            own,
            push,
            constants["g"],
            cut=cut,
            resolved=resolved,
            equal=data.choices.get("lengths") == "equal",
            title=title or f"Free-body diagram of {body}",
            named=called,
        )

    kept = tuple(point for point in points if not (cut and point.keys[0] == called.get("T", "T")))
    return Part(key, "draw", ask, points=kept, figure=figure)


def thread_diagram(
    known: Mapping[str, float],
    push: int,
    g: float,
    *,
    cut: bool = False,
    resolved: bool = False,
    equal: bool = False,
    title: str = "Free-body diagram",
    named: Mapping[str, str] | None = None,
) -> Figure:
    """All forces on one body on a thread, to the numbers where all are known; angles in radians, forces in newtons."""
    angle, called = known.get("alpha", 0.5), named or {}
    sizes = {n: known[n] for n in ("T", "F_E") if n in known}
    if "m" in known:
        sizes["F_g"] = known["m"] * g
    if len(sizes) < 3:  # the angle fixes the shape of the triangle
        sizes = {"F_g": cos(angle), "T": 1.0, "F_E": sin(angle)}
    lean = 90 + degrees(angle) * push

    def label(name: str, letter: str) -> str:
        """α₁ where the angle of this body is called so."""
        return letter + called.get(name, name).removeprefix(name)

    tension = label("T", "T_" if "T" in called else "T")
    forces = [Force("F_g", sizes["F_g"], 270.0), Force("F_E", sizes["F_E"], 0.0 if push > 0 else 180.0)]
    if not cut:
        forces.insert(1, Force(tension, sizes["T"], lean))
    alpha = label("alpha", "α")
    arc = Angle(90.0, lean, alpha) if push > 0 else Angle(lean, 90.0, alpha)
    parts = (
        [Resolved(tension, 90.0, f"{tension} cos {alpha}", f"{tension} sin {alpha}")] if resolved and not cut else []
    )
    return free_body_diagram(
        forces,
        title=title + (" just after the cut" if cut else ""),
        equal_lengths=equal,
        min_fraction=0.02 if resolved else 0.14,  # components only fit to scale
        components=parts,
        angles=[] if cut else [arc],
        guides=[] if cut else [90.0],
    )


# --- scenes -------------------------------------------------------------------------------------------------


def seen(angle: float) -> float:
    """An angle in degrees as it is drawn."""
    return min(max(degrees(angle), SEEN[0]), SEEN[1])


def hung(
    lean: float, reach: float, label: str, sign: int, charge: str, *, angle: str = "α", thread: str = ""
) -> list[Item]:
    """A sphere on a thread from (0, 0): ``lean`` degrees to the right (below 0: left), ``reach`` long."""
    centre = polar((0.0, 0.0), reach, lean - 90)
    start, stop = sorted((-90.0, lean - 90))
    return [
        Segment((0.0, 0.0), polar((0.0, 0.0), reach - RADIUS, lean - 90), "string", thread),
        AngleMark((0.0, 0.0), start, stop, angle, 2.6),
        Sphere(centre, RADIUS, sign_of(sign), label, shows=(charge,)),
    ]


def told_signs(*bodies: tuple[str, int, str]) -> tuple[Tells, ...]:
    """A sentence for each body (name, sign, name of its charge) whose sign is told."""
    return tuple(
        Tells(f"{name} is {'positive' if sign > 0 else 'negative'}.", (charge,))
        for name, sign, charge in bodies
        if sign
    )


def beside_scene(angle: float, repel: int, sign_1: int, sign_2: int) -> Figure:
    """Sphere A on a thread, sphere B fixed at its level to the left; A leans away from B or towards it."""
    reach, lean = 8.5, repel * seen(angle)
    hanging = polar((0.0, 0.0), reach, lean - 90)
    fixed = (min(hanging[0], 0.0) - (5.0 if repel > 0 else 6.0), hanging[1])
    items = [
        Surface((3.0, 0.0), (-3.0, 0.0)),
        Segment((0.0, 0.0), (0.0, -6.0), "guide"),
        *hung(lean, reach, "A", sign_1, "Q1"),
        Sphere(fixed, RADIUS, sign_of(sign_2), "B", shows=("Q2",)),
        Dimension(fixed, hanging, "r", -1.9, RADIUS + 0.3),
    ]
    way = "away from it" if repel > 0 else "towards it"
    signs = told_signs(("A", sign_1, "Q1"), ("B", sign_2, "Q2"))
    said = (
        "Sphere A hangs on a thread from the ceiling. Sphere B is fixed to its left at the same level; the thread"
        f" leans {way}."
    )
    return scene("A charged sphere beside a fixed charge", said, items, signs, ("B is fixed.",))


def field_scene(angle: float, field: int, push: int, sign: int) -> Figure:
    """Sphere A on a thread between two upright plates; ``field`` +1: from left to right."""
    reach, lean, half = 7.0, push * seen(angle), 8.2
    items = [
        Surface((3.0, 0.0), (-3.0, 0.0)),
        Segment((0.0, 0.0), (0.0, -5.0), "guide"),
        Plate((-half, -1.6), (-half, -9.0), sign_of(field)),
        Plate((half, -9.0), (half, -1.6), sign_of(-field)),
        *hung(lean, reach, "A", sign, "Q"),
        Dimension((-half, -9.0), (half, -9.0), "d", -1.6, 0.3),
    ]
    plus, minus = ("left", "right") if field > 0 else ("right", "left")
    said = (
        f"Sphere A hangs on a thread between two upright plates; the {plus} plate is positive, the {minus} one"
        " negative."
    )
    lean_said = Tells(f"The thread leans to the {'right' if push > 0 else 'left'}.", ("F_E", "Q"))
    return scene("A charged sphere in a horizontal field", said, items, (lean_said, *told_signs(("A", sign, "Q"))))


def unequal_scene(first: float, second: float, sign_1: int, sign_2: int) -> Figure:
    """Spheres A (left) and B (right) at one level, on threads of their own lengths from one hook."""
    one, two = seen(first), seen(second)
    depth = max(7.0, 5.0 / (tan(radians(one)) + tan(radians(two))))
    lengths = [depth / cos(radians(angle)) for angle in (one, two)]
    left, right = (
        polar((0.0, 0.0), length, side * angle - 90)
        for length, side, angle in zip(lengths, (-1, 1), (one, two), strict=True)
    )
    items = [
        Surface((3.0, 0.0), (-3.0, 0.0)),
        Segment((0.0, 0.0), (0.0, -0.75 * depth), "guide"),
        *hung(-one, lengths[0], "A", sign_1, "Q1", angle="α_1", thread="L_1"),
        *hung(two, lengths[1], "B", sign_2, "Q2", angle="α_2", thread="L_2"),
        Dimension(left, right, "r", -1.9, RADIUS + 0.3),
    ]
    said = "Spheres A (left) and B (right) hang apart at the same level, on two threads from one hook."
    return scene("Two unequal spheres on threads", said, items, told_signs(("A", sign_1, "Q1"), ("B", sign_2, "Q2")))


def scene(
    title: str, said: str, items: Sequence[Item], tells: tuple[Tells, ...], notes: tuple[str, ...] = ()
) -> Figure:
    """A scene whose angles are drawn true; ``tells`` are the sentences after ``said``."""
    angles = {"α": "alpha", "α_1": "alpha_1", "α_2": "alpha_2"}
    true = tuple(angles[item.label] for item in items if isinstance(item, AngleMark))
    words = " ".join((said, *(one.sentence for one in tells)))
    return Figure(
        title, words, tuple(items), (" ".join((NOT_TO_SCALE, *notes)),), unit=1.0, drawn_from=true, tells=tells
    )
