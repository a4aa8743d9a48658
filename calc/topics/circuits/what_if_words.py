"""Why readings change: the chain of reasons of a memo, from recomputed numbers, and what becomes of each part.

Order of the chain: total resistance, total current, lost volts, terminal potential difference, each part that is left
(common practice of memos, no source).
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.language.printing import Style
from calc.model.answers import Point
from calc.topics.circuits.network_drawn import called, the
from calc.topics.circuits.network_live import Live, Node
from calc.topics.circuits.network_nodes import solved
from calc.topics.circuits.network_text import LIVE, Element
from calc.working.working import measure

SAME = 1e-9


@dataclass(frozen=True)
class State:
    """A circuit at one time, solved: total resistance, current, terminal p.d., and volts and watts by part."""

    found: Live
    total: float
    current: float
    terminal: float
    volts: dict[str, float]
    watts: dict[str, float]

    @property
    def open(self) -> bool:
        return self.found.root is None


def state(found: Live, emf: float, inner: float) -> State:
    """The circuit solved by its junctions; an open one has no current."""
    parts = [one.name for one in found.network.elements if one.kind in LIVE]
    nothing = dict.fromkeys(parts, 0.0)
    root = found.root
    if root is None:
        return State(found, float("inf"), 0.0, emf, nothing, nothing)
    ohms = {one.R: one.element.ohms or 0.0 for one in root.ones() if one.element}
    current, drops = solved(root, ohms, emf, inner)
    volts, watts = dict(nothing), dict(nothing)
    for one in root.ones():
        if one.element:
            volts[one.element.name] = drops[one.R]
            watts[one.element.name] = drops[one.R] ** 2 / ohms[one.R]
    return State(found, emf / current - inner, current, emf - current * inner, volts, watts)


def changes(before: float, after: float) -> str:
    """Increases, decreases or stays the same."""
    if abs(after - before) <= SAME * max(abs(before), abs(after)):
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
    R = told(first.total, then.total, "Ω", style)
    amps = told(first.current, then.current, "A", style)
    key = changes(first.total, then.total)
    points = [
        Point(f"{why} The total resistance {R}.", 1, (f"total resistance {key}",)),
        Point(
            f"The emf and the internal resistance do not change, so the total current {amps}.",
            1,
            (f"current {changes(first.current, then.current)}",),
        ),
    ]
    if not inner:
        points.append(
            Point(
                "The internal resistance is zero: there are no lost volts, and the terminal potential difference stays"
                " equal to the emf.",
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
        Point(
            f"The lost volts Ir change in step: Ir {lost}.", 1, (f"lost volts {changes(first.current, then.current)}",)
        ),
        Point(
            f"As V_ext = ε − Ir, the terminal potential difference {volts}.",
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
    words = f"The branches in parallel get what is left: V_p = ε − I({sum_}) {how}."
    return (Point(words, 1, (f"parallel {changes(first.volts[name], then.volts[name])}",)),)


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
    if one.kind != "lamp":
        how = changes(before, after)
        key = f"{one.name} {how if how != 'stays the same' else 'unaltered'}"
        return Point(f"The potential difference across {called(one)} {volts}.", 1, (key,))
    bright = _brightness(first.watts[one.name], then.watts[one.name])
    watts = told(first.watts[one.name], then.watts[one.name], "W", style)
    return Point(
        f"{name[0].upper()}{name[1:]} {bright}: the potential difference across it {volts}, and its power {watts}.",
        1,
        (f"{one.name} {_HEARD[bright]}",),
    )


# The word of calc.marking.statements for each verdict.
_HEARD = {
    "becomes brighter": "brighter",
    "becomes dimmer": "dimmer",
    "goes out": "dark",
    "stays dark": "dark",
    "lights up": "lit",
    "is as bright as before": "unaltered",
}


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
