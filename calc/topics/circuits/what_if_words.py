"""Why readings change: the chain of reasons of a memo, from recomputed numbers, and what becomes of each part.

Order of the chain: total resistance, total current, lost volts, terminal potential difference, each part that is left
(common practice of memos, no source).
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.language.printing import Style
from calc.model.answers import Point
from calc.topics.circuits.network_drawn import called, the
from calc.topics.circuits.network_live import MAIN, TERMINAL, Live, Node
from calc.topics.circuits.network_meters import measured, read_by
from calc.topics.circuits.network_nodes import solved
from calc.topics.circuits.network_text import LIVE, Element
from calc.working.working import measure

SAME = 1e-9


@dataclass(frozen=True)
class State:
    """A circuit at one time, solved: total resistance, current, terminal p.d.; volts, amperes, watts by name."""

    found: Live
    total: float
    current: float
    terminal: float
    volts: dict[str, float]
    amps: dict[str, float]
    watts: dict[str, float]

    @property
    def open(self) -> bool:
        return self.found.root is None


def state(found: Live, emf: float, inner: float) -> State:
    """The circuit solved by its junctions, its parts and meters from the outside in; an open one has no current."""
    each = measured(found.network, emf, inner)
    volts = {name: one[0] for name, one in each.items()}
    amps = {name: one[1] for name, one in each.items()}
    watts = {one.name: amps[one.name] ** 2 * (one.ohms or 0.0) for one in found.network.elements if one.kind in LIVE}
    root = found.root
    if root is None:
        return State(found, float("inf"), 0.0, emf, volts, amps, watts)
    current, _ = solved(root, {one.R: one.element.ohms or 0.0 for one in root.ones() if one.element}, emf, inner)
    return State(found, emf / current - inner, current, emf - current * inner, volts, amps, watts)


def changes(before: float, after: float) -> str:
    """Increases, decreases or stays the same."""
    if abs(after - before) <= SAME * min(abs(before), abs(after)):
        return "stays the same"
    return "increases" if after > before else "decreases"


def told(before: float, after: float, unit: str, style: Style) -> str:
    """The change with its numbers: "increases from 6,00 V to 6,86 V"."""
    how = changes(before, after)
    if how == "stays the same":
        return f"stays the same, {measure(after, unit, style).text}"
    return f"{how} from {measure(before, unit, style).text} to {measure(after, unit, style).text}"


def chain(first: State, then: State, why: str, inner: float, style: Style) -> tuple[Point, ...]:
    """Total resistance, total current, lost volts, terminal potential difference, in this order."""
    meters = read_by(first.found)
    shown = {name: f", shown by {meters[name]}," if name in meters else "" for name in (MAIN, TERMINAL)}
    R = told(first.total, then.total, "Ω", style)
    amps = told(first.current, then.current, "A", style)
    key = changes(first.total, then.total)
    points = [
        Point(f"{why} The total resistance {R}.", 1, (f"total resistance {key}",)),
        Point(
            f"The emf and the internal resistance do not change, so the total current{shown[MAIN]} {amps}.",
            1,
            (f"current {changes(first.current, then.current)}",),
        ),
    ]
    if not inner:
        points.append(
            Point(
                "The internal resistance is zero: there are no lost volts, and the terminal potential difference"
                f"{shown[TERMINAL]} stays equal to the emf.",
                1,
                ("no lost volts", "equal to the emf"),
            )
        )
        return tuple(points)
    lost = told(first.current * inner, then.current * inner, "V", style)
    volts = told(first.terminal, then.terminal, "V", style)
    how = changes(first.terminal, then.terminal)
    return (
        *points,
        Point(f"The lost volts Ir change in step: Ir {lost}.", 1, (f"Ir {changes(first.current, then.current)}",)),
        Point(
            f"As V_ext = ε − Ir, the terminal potential difference{shown[TERMINAL]} {volts}.",
            1,
            (f"terminal potential difference {how}",),
        ),
    )


def left_over(first: State, then: State, style: Style) -> tuple[Point, ...]:
    """What the parts in series leave to the branches: V_p = ε − I(r + R), where only the branches changed."""
    root, after = first.found.root, then.found.root
    if root is None or after is None or root.how != "series" or after.how != "series":
        return ()
    single = [one.element for one in root.parts if one.element]
    if len(single) != len(root.parts) - 1 or not all(one in [two.element for two in after.parts] for one in single):
        return ()
    group = next(one for one in root.parts if not one.element)
    kept = [one.element.name for one in group.ones() if one.V == group.V and one.element]
    name = next((one for one in kept if then.volts[one]), "")
    if group.how != "parallel" or not name:
        return ()
    how = told(first.volts[name], then.volts[name], "V", style)
    sum_ = " + ".join(["r", *(f"R{called(one)[1:]}" if one.kind == "resistor" else f"R_{one.name}" for one in single)])
    words = f"The branches in parallel get what is left, V_p = ε − I({sum_}): V_p {how}."
    return (Point(words, 1, (f"V_p {changes(first.volts[name], then.volts[name])}",)),)


def verdicts(first: State, then: State, style: Style) -> tuple[Point, ...]:
    """What becomes of every part: its potential difference, and a lamp's brightness by its power."""
    points = list(left_over(first, then, style))
    for one in then.found.network.elements:
        if one.kind not in LIVE or one.name not in first.volts:
            continue
        points.append(_verdict(one, first, then, style))
    return tuple(points)


def _verdict(one: Element, first: State, then: State, style: Style) -> Point:
    name = the(one)
    before, after = first.volts[one.name], then.volts[one.name]
    volts = told(before, after, "V", style)
    if f"_{one.name}" in then.volts and then.amps[f"_{one.name}"] == 0:
        return _burnt(one, first, then, style)
    if one.kind != "lamp":
        how = changes(before, after)
        key = f"{called(one)} {how}"
        return Point(f"The potential difference across {called(one)} {volts}.", 1, (key,))
    bright = _brightness(first.watts[one.name], then.watts[one.name])
    watts = told(first.watts[one.name], then.watts[one.name], "W", style)
    return Point(
        f"{name[0].upper()}{name[1:]} {bright}: the potential difference across it {volts}, and its power {watts}.",
        1,
        (f"{called(one)} {bright}",),
    )


def _burnt(one: Element, first: State, then: State, style: Style) -> Point:
    """A part that burnt out: nothing passes it, and what was shared lies across its gap."""
    name, key = the(one), f"{called(one)} goes out" if one.kind == "lamp" else "no current"
    out = "goes out: no current passes it" if one.kind == "lamp" else "carries no current"
    volts = told(first.volts[one.name], then.volts[one.name], "V", style)
    return Point(f"{name[0].upper()}{name[1:]} {out}, but the potential difference across its gap {volts}.", 1, (key,))


def meter_readings(first: State, then: State, style: Style) -> tuple[Point, ...]:
    """What every meter of the circuit shows before and after."""
    network = first.found.network
    points = []
    for one in (*network.elements, *network.voltmeters):
        if one.kind not in ("ammeter", "voltmeter"):
            continue
        unit = "A" if one.kind == "ammeter" else "V"
        before, after = ((at.amps if unit == "A" else at.volts)[one.name] for at in (first, then))
        how = changes(before, after)
        key = f"{called(one)} {how}"
        points.append(Point(f"The reading of {the(one)} {told(before, after, unit, style)}.", 1, (key,)))
    return tuple(points)


def _brightness(before: float, after: float) -> str:
    if not after:
        return "stays dark" if not before else "goes out"
    if not before:
        return "lights up"
    how = changes(before, after)
    words = {"increases": "becomes brighter", "decreases": "becomes dimmer"}
    return words.get(how, "is as bright as before")


def shared(root: Node | None) -> list[str]:
    """The letters of all potential differences that are not the terminal one."""
    return list(dict.fromkeys(one.V for one in root.ones() if one.V != "V_ext")) if root else []
