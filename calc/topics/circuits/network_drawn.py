"""A network drawn with the symbols of IEC 60617, and told in a sentence."""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.circuit_pieces import SymbolKind
from calc.figures.circuits import Branch, Parallel, Part, Series, circuit, parallel, series
from calc.language.printing import Style, exact
from calc.topics.circuits.network_live import letter
from calc.topics.circuits.network_text import CELL, LIVE, Element, Network, Tree

SYMBOLS: dict[str, SymbolKind] = {
    "resistor": "resistor",
    "lamp": "lamp",
    "rheostat": "variable resistor",
    "ammeter": "ammeter",
    "voltmeter": "voltmeter",
}
LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
UNITS = {"I": "A", "V": "V", "P": "W"}


def called(element: Element) -> str:
    """The name as a sentence has it: R₁."""
    return element.name.translate(LOWERED)


def amount(value: float, unit: str, style: Style) -> str:
    """A datum in a sentence or a label: "4 Ω"."""
    return f"{exact(value, style).text}\N{NO-BREAK SPACE}{unit}"


def _label(element: Element, style: Style) -> str:
    if element.kind not in LIVE:
        return f"{element.name[0]}_{element.name[1:]}" if element.name[1:] else element.name
    name = element.suffix
    written = f"R_{{{name}}}" if not name.isdigit() else f"R_{name}"
    return written if element.ohms is None else f"{written} = {amount(element.ohms, 'Ω', style)}"


def _part(element: Element, style: Style) -> Part:
    shows = (letter("R", element.suffix),) if element.kind in LIVE else ()
    if element.kind == "switch":
        return Part("closed switch" if element.closed else "open switch", _label(element, style))
    return Part(SYMBOLS[element.kind], _label(element, style), shows)


def _branch(tree: Tree, network: Network, style: Style) -> Branch:
    if isinstance(tree, Element):
        own = _part(tree, style)
        across = [meter for meter in network.voltmeters if meter.across == tree.name]
        return parallel(own, *(_part(meter, style) for meter in across)) if across else own
    parts = list[Branch]()
    for one in tree.parts:
        branch = _branch(one, network, style)
        # A part with its voltmeter in a group of branches: the voltmeter is one more branch.
        parts += branch.parts if tree.how == "parallel" and isinstance(branch, Parallel) else [branch]
    return series(*parts) if tree.how == "series" else parallel(*parts)


def drawn(network: Network, emf: str, inner: str | None, style: Style, *, title: str = "The circuit") -> Figure:
    """The circuit: the cell with its internal resistance above, the network below. emf, inner: as printed; ''
    where they are asked, and no internal resistance where it is None."""
    source = list[Branch]([Part("cell", f"ε = {emf}" if emf else "ε", ("epsilon",))])
    if inner is not None:
        source.append(Part("resistor", f"r = {inner}" if inner else "r", ("r",)))
    cell: Branch = Series(tuple(source)) if len(source) > 1 else source[0]
    meters = [_part(meter, style) for meter in network.voltmeters if meter.across == CELL]
    if meters:
        cell = parallel(*meters, cell)
    return circuit(cell, _branch(network.tree, network, style), title=title)


def noun(element: Element) -> str:
    """The kind of a part, in a sentence."""
    if element.kind == "switch":
        return f"{'a closed' if element.closed else 'an open'} switch"
    return {"lamp": "a lamp", "rheostat": "a rheostat", "ammeter": "an ammeter", "voltmeter": "a voltmeter"}.get(
        element.kind, "a resistor"
    )


def the(element: Element) -> str:
    """A part that was told of before: "lamp L₁", "R₂"."""
    return called(element) if element.kind == "resistor" else f"{noun(element).split()[-1]} {called(element)}"


def told(tree: Tree, style: Style) -> str:
    """What is in series and in parallel with what, in one sentence."""
    if isinstance(tree, Element):
        if tree.kind not in LIVE:
            return f"{noun(tree)} {called(tree)}"
        size = "of unknown resistance" if tree.ohms is None else f"of {amount(tree.ohms, 'Ω', style)}"
        return f"{noun(tree)} {called(tree)} {size}"
    how = f" in {tree.how} with "
    return how.join(told(one, style) if isinstance(one, Element) else f"({told(one, style)})" for one in tree.parts)


def readings(network: Network, style: Style) -> list[str]:
    """A sentence for every meter across a part, and for every reading."""
    found = []
    for one in network.voltmeters:
        where = "the terminals of the cell" if one.across == CELL else one.across.translate(LOWERED)
        reads = f" reads {amount(one.readings['V'], 'V', style)}" if one.readings else ""
        told_ = f"{called(one)} across {where}"
        found.append(f"Voltmeter {told_}{reads}." if reads else f"Voltmeter {called(one)} is connected across {where}.")
    for one in network.elements:
        for which, value in one.readings.items():
            size = amount(value, UNITS[which], style)
            if one.kind not in LIVE:
                found.append(f"{noun(one).split()[-1].capitalize()} {called(one)} reads {size}.")
            else:
                what = {
                    "I": f"The current in {the(one)} is {size}.",
                    "V": f"The potential difference across {the(one)} is {size}.",
                    "P": f"The power of {the(one)} is {size}.",
                }
                found.append(what[which])
    return found
