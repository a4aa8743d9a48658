"""What is drawn of a situation: the set-up, which tells nothing of the motion, and each free-body diagram."""

from __future__ import annotations

from math import degrees, radians

from calc.figures import Figure
from calc.figures.chains import Acting, Fixed, Lying, chain
from calc.figures.ridges import over_a_ridge
from calc.figures.surfaces import Pulled
from calc.model.questions import Data, Part
from calc.topics.newton.situation_chain import Setup
from calc.topics.newton.situation_charges import attracted
from calc.topics.newton.situation_extras import Extra
from calc.topics.newton.situation_words import name
from calc.topics.shared.free_bodies import free_body

SOME_SLOPE = SOME_LEAN = radians(25)  # drawn where the angle is asked


def labelled(extra: Extra) -> tuple[str, str]:
    """The label of a further force, and what it is."""
    if not extra.charge:
        return "F", "the second force"
    if not extra.side:
        return "F_E", "the electrostatic force"
    return "F_E", f"the electrostatic force, {'towards' if attracted(extra) else 'away from'} the fixed charge"


def rows_of(data: Data, here: Setup, n: int) -> tuple[tuple[str, str, str, float], ...] | None:
    """The forces on body n, each with where it points; None where one of them does not follow."""
    shape, body, moved = here.shape, here.bodies[n - 1], here.found.bodies[n - 1]
    tilt, hang, tiny = degrees(body.rise), shape.hangs(n), 1e-9 * body.mass
    rows = [("F_g", f"w{n}", "the weight, straight down", 270.0)]
    if not hang:
        up = "away from the slope at right angles to it" if here.slope else "upwards"
        rows.append(("N", f"N_{n}", f"the normal force, {up}", tilt + 90))
    if n == here.acted:
        slant = degrees(body.pulls[0].angle) if here.force > 0 else 180 - degrees(body.pulls[0].angle)
        side = f", at φ {'below' if here.push else 'above'} the surface" if slant else ""
        way = slant if here.force > 0 else 180 - slant
        rows.append(
            ("P", "P", f"the {'push' if here.push else 'pull'}, {here.where(here.force, n).words}{side}", way + tilt)
        )
    for extra in (one for one in here.extras if one.n == n):
        label, what = labelled(extra)
        angle = tilt + (0 if extra.way > 0 else 180)
        rows.append((label, label, f"{what}, {here.where(extra.way, n).words}", angle))
    for link, ahead in ((n, 1), (n - 1, -1)):
        if not 1 <= link < shape.count:
            continue
        force = here.found.links[link - 1].force
        if force is None:
            return None
        if force > tiny:
            way = ahead * (-1 if here.link == "R" else 1)
            what = "the tension" if here.link == "T" else f"the force of {name(here, n + ahead)}"
            where, angle = ("upwards", 90.0) if hang else (here.where(way, n).words, tilt + (0 if way > 0 else 180))
            rows.append((f"{here.link}_{link}", f"{here.link}_{link}", f"{what}, {where}", angle))
    if moved.friction is None:
        return None
    if abs(moved.friction) > tiny:
        way = 1 if moved.friction > 0 else -1
        rows.append(("f", f"f_{n}", f"friction on it, {here.where(way, n).words}", tilt + (0 if way > 0 else 180)))
    return tuple(rows)


def diagrams(data: Data, here: Setup) -> list[Part]:
    """A free-body diagram of each body all of whose forces follow."""
    g, parts = data.settings.constants()["g"], list[Part]()
    sizes = {f"{here.link}_{n}": link.force for n, link in enumerate(here.found.links, 1) if link.force is not None}
    for n, (body, moved) in enumerate(zip(here.bodies, here.found.bodies, strict=True), 1):
        rows = rows_of(data, here, n)
        if rows is None:
            continue
        own: dict[str, float] = sizes | {
            f"w{n}": body.mass * g,
            f"N_{n}": moved.normal,
            f"f_{n}": abs(moved.friction or 0.0),
            **{"F_E" if one.charge else "F": one.size for one in here.extras},
        }
        guide = degrees(body.rise) if here.slope and not body.hangs else None
        who = name(here, n)
        parts.append(free_body(f"draw-{n}", who, rows, (), data, f"Free-body diagram of {who}", guide, own.__or__))
    return parts


def scene(data: Data, here: Setup) -> Figure:
    """The surface, the bodies, what joins them and the force."""
    shape, count = here.shape, here.shape.count
    pulled = None
    if here.force:
        pulled = Pulled("P", degrees(data.values.get("phi", SOME_LEAN)), here.push, back=here.force == -1)
    second = field = fixed = None
    signs = {one: (data.values[one] > 0) - (data.values[one] < 0) for one in here.sizes if data.has(one)}
    for extra in here.extras:
        place = here.numbers.index(extra.n)
        if extra.side:
            one, other = (signs.get(of, 0) for of in extra.charges)
            fixed = Fixed(place, one, other, f"Q_{extra.n}", back=extra.side < 0)
        elif extra.charge:
            field = Lying(
                place, signs[extra.charge] > 0 if extra.charge in signs else None, f"Q_{extra.n}", back=here.field < 0
            )
        else:
            second = Acting(place, back=extra.way < 0)
    if shape.ridge:
        left, right = (degrees(data.values.get(name, SOME_SLOPE)) for name in ("theta", "theta2"))
        return over_a_ridge(left, right, pulled=pulled, second=second)
    return chain(
        degrees(data.values.get("theta", SOME_SLOPE if here.slope else 0.0)),
        tuple(f"m_{n}" for n in here.numbers),
        touch=shape.touch,
        pulled=pulled,
        front=f"m_{count}" if shape.ahead else "",
        back="m_1" if shape.behind else "",
        second=second,
        field=field,
        fixed=fixed,
    )
