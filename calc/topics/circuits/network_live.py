"""What of a network carries current, with the letters of every resistance, potential difference and current in it.

An open switch takes its branch out; a closed switch alone in a branch takes all current past the branches beside it.
Meters are ideal: an ammeter is a wire, a voltmeter no connection (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from calc.topics.circuits.network_text import LIVE, Element, Group, Network, Tree, elements

TOTAL, TERMINAL, MAIN = "R_T", "V_ext", "I"


@dataclass(frozen=True)
class Node:
    """A part or a group that carries current. R, V, I: the letters of its resistance, p.d. and current.

    ammeters: those that its current passes. voltmeters: those across it that stand in the text as a branch.
    """

    how: Literal["one", "series", "parallel"]
    element: Element | None = None
    parts: tuple[Node, ...] = ()
    ammeters: tuple[Element, ...] = ()
    voltmeters: tuple[Element, ...] = ()
    R: str = ""
    V: str = ""
    I: str = ""  # noqa: E741 (the letter of the quantity)

    def nodes(self) -> Iterator[Node]:
        """Itself and everything in it, outermost first."""
        yield self
        for part in self.parts:
            yield from part.nodes()

    def ones(self) -> Iterator[Node]:
        """The parts that have a resistance, in order."""
        return (node for node in self.nodes() if node.how == "one")

    @property
    def P(self) -> str:
        return letter("P", self.element.suffix) if self.element else ""


def letter(quantity: str, suffix: str) -> str:
    """The name of a part's quantity: I2 for R2, I_L1 for a lamp L1."""
    return f"{quantity}{suffix}" if suffix.isdigit() else f"{quantity}_{suffix}"


OPEN, WIRE = "open", "wire"
type Reduced = Node | Literal["open", "wire"]


def reduced(tree: Tree) -> Reduced:
    """The tree without what carries no current and what has no resistance."""
    if isinstance(tree, Element):
        if tree.kind in LIVE:
            return Node("one", tree)
        if tree.kind == "voltmeter" or (tree.kind == "switch" and not tree.closed):
            return "open"
        return "wire"
    found = [reduced(part) for part in tree.parts]
    if tree.how == "series":
        return _in_series(tree, found)
    live = [one for one in found if isinstance(one, Node)]
    if "wire" in found:
        return "wire"
    if not live:
        return "open"
    across = tuple(one for one in tree.parts if isinstance(one, Element) and one.kind == "voltmeter")
    one = live[0] if len(live) == 1 else Node("parallel", parts=tuple(live))
    return replace(one, voltmeters=(*one.voltmeters, *across))


def _in_series(tree: Group, found: list[Reduced]) -> Reduced:
    live = [one for one in found if isinstance(one, Node)]
    if "open" in found:
        return "open"
    if not live:
        return "wire"
    meters = tuple(one for one in tree.parts if isinstance(one, Element) and one.kind == "ammeter")
    if len(live) == 1:
        return replace(live[0], ammeters=(*live[0].ammeters, *meters))
    flat = list[Node]()
    for one in live:  # a branch that is left alone of several is part of the series, unless a voltmeter spans it
        flat += one.parts if one.how == "series" and not one.voltmeters else [one]
    passed = tuple(meter for one in live if one.how == "series" and not one.voltmeters for meter in one.ammeters)
    return Node("series", parts=tuple(flat), ammeters=(*meters, *passed))


def lettered(node: Node) -> Node:
    """The same with letters: R_T, V_ext and I for the whole; R_p for what is in parallel; R_s for what is in series."""
    counts = {"p": 0, "s": 0}
    for inner in node.nodes():
        if inner is not node:
            counts["p"] += inner.how == "parallel"
            counts["s"] += inner.how == "series"
    used = {"p": 0, "s": 0}

    def suffix(which: Literal["p", "s"]) -> str:
        used[which] += 1
        return which if counts[which] == 1 else f"{which}{used[which]}"

    def named(one: Node, volts: str, amps: str, resistance: str = "") -> Node:
        own = one.element.suffix if one.element else ""
        last = own or (suffix("p" if one.how == "parallel" else "s") if not resistance else "")
        ohms = letter("R", own) if own else resistance or f"R_{last}"
        v = volts or letter("V", last)
        i = amps or letter("I", last)
        if one.how == "series":
            parts = tuple(named(part, "", i) for part in one.parts)
        else:
            parts = tuple(named(part, v, "") for part in one.parts)
        return replace(one, R=ohms, V=v, I=i, parts=parts)

    return named(node, TERMINAL, MAIN, TOTAL)


@dataclass(frozen=True)
class Live:
    """A network with what of it carries current; root None where the circuit is broken."""

    network: Network
    root: Node | None
    wire: bool = False

    @property
    def ones(self) -> tuple[Node, ...]:
        return tuple(self.root.ones()) if self.root else ()

    def node(self, name: str) -> Node | None:
        """The part of this name, if it carries current."""
        return next((one for one in self.ones if one.element and one.element.name == name), None)

    @property
    def dead(self) -> tuple[Element, ...]:
        """The parts with a resistance that carry no current."""
        at = {one.element.name for one in self.ones if one.element}
        return tuple(one for one in self.network.elements if one.kind in LIVE and one.name not in at)


def live(network: Network) -> Live:
    """What of a network carries current."""
    found = reduced(network.tree)
    if isinstance(found, Node):
        return Live(network, lettered(found))
    return Live(network, None, wire=found == "wire")


def dead_why(found: Live, element: Element) -> str:
    """Why a part carries no current: "an open switch" or "a closed switch"."""

    def inside(tree: Tree) -> list[Group]:
        if isinstance(tree, Element) or element not in elements(tree):
            return []
        return [tree, *(group for part in tree.parts for group in inside(part))]

    for group in reversed(inside(found.network.tree)):
        for part in group.parts:
            if element in elements(part):
                continue
            state = reduced(part)
            if group.how == "series" and state == "open":
                return "its branch is open"
            if group.how == "parallel" and state == "wire":
                return "a closed switch lies across it"
    return "the circuit is open"
