"""What every part and meter of a network carries and has across it, those without current too.

Ohm's law from the outside in: in series the current is shared and a gap takes the whole potential difference, in
parallel the potential difference is shared and a wire takes the whole current. Meters are ideal (common practice, no
source).
"""

from __future__ import annotations

from math import inf

from calc.topics.circuits.network_drawn import the
from calc.topics.circuits.network_live import TERMINAL, Live
from calc.topics.circuits.network_text import CELL, LIVE, Element, Network, Tree


def ohms(tree: Tree) -> float:
    """The resistance in ohms of a part or a group: 0 of a wire, infinite where it is open."""
    if isinstance(tree, Element):
        if tree.kind in LIVE:
            return tree.ohms or 0.0
        return inf if tree.kind == "voltmeter" or not tree.closed else 0.0
    each = [ohms(part) for part in tree.parts]
    if tree.how == "series":
        return sum(each)
    return 0.0 if 0.0 in each else 1 / total if (total := sum(1 / one for one in each)) else inf


def measured(network: Network, emf: float, inner: float) -> dict[str, tuple[float, float]]:
    """Volts across and amperes in every part and meter by its name; the voltmeters of the text with what they span.

    Two gaps in one branch: a voltmeter across one of them shows nothing. Raises ZeroDivisionError where nothing limits
    the current.
    """
    found = dict[str, tuple[float, float]]()

    def lay(tree: Tree, volts: float, amps: float) -> None:
        if isinstance(tree, Element):
            found[tree.name] = (volts, amps)
            return
        each = [ohms(part) for part in tree.parts]
        gaps, wires = each.count(inf), each.count(0.0)
        for part, own in zip(tree.parts, each, strict=True):
            if tree.how == "series":
                across = (volts if gaps == 1 else 0.0) if own == inf else amps * own
                lay(part, across, amps)
            else:
                lay(part, volts, volts / own if own else amps / wires)

    total = ohms(network.tree)
    current = emf / (total + inner)
    terminal = emf - current * inner
    lay(network.tree, terminal, current)
    for name in [one for one in found if f"_{one}" in found]:  # a gap where the part burnt out, a wire that shorts it
        found[name] = (found[name][0] + found[f"_{name}"][0], found[name][1])
    for meter in network.voltmeters:
        found[meter.name] = (terminal if meter.across == CELL else found[meter.across][0], 0.0)
    return found


def read_by(found: Live) -> dict[str, str]:
    """The meters that show a quantity without its reading being given, by its letter: "ammeter A₁"."""
    read: dict[str, list[str]] = {}
    for node in found.root.nodes() if found.root else ():
        own = [meter for meter in found.network.voltmeters if node.element and meter.across == node.element.name]
        for letter, meters in ((node.I, node.ammeters), (node.V, (*node.voltmeters, *own))):
            read.setdefault(letter, []).extend(the(meter) for meter in meters if not meter.readings)
    at_cell = [the(one) for one in found.network.voltmeters if one.across == CELL and not one.readings]
    read[TERMINAL] = at_cell + read.get(TERMINAL, [])
    return {letter: " and ".join(dict.fromkeys(meters)) for letter, meters in read.items() if meters}
