"""What is known of a network, what is missing, and the words in which each of its quantities is asked."""

from __future__ import annotations

from collections.abc import Mapping

from calc.language.printing import Style
from calc.model.questions import Data, Input, Refusal
from calc.topics.circuits.network_drawn import amount, called, the
from calc.topics.circuits.network_live import MAIN, TERMINAL, Live, Node
from calc.topics.circuits.network_text import CELL, LIVE, Element

MORE_THAN_EMF = (
    "Terminal p.d. cannot exceed emf while the cell supplies current: {} is more than {}. Correct one of them."
)
MORE_CURRENT = "More than the short-circuit current, ε ÷ r: the cell can never drive {}. Correct it, or the emf and r."
TWICE = "Two readings tell the same quantity, {} and {}. Leave one of them out."
SAME = 0.01  # how far two readings of one quantity may differ


def known(data: Data, found: Live) -> dict[str, float]:
    """The values of the letters that are given: emf, r, resistances, readings. Raises Refusal."""
    values = {name: data.values[name] for name in ("epsilon", "r") if data.has(name)}
    values |= {one.R: one.element.ohms for one in found.ones if one.element and one.element.ohms is not None}
    style = data.settings.style
    for name, value, unit in _readings(found):
        if name in values and abs(values[name] - value) > SAME * value:
            raise Refusal("network", TWICE.format(amount(values[name], unit, style), amount(value, unit, style)))
        values.setdefault(name, value)
    _possible(values, style)
    return values


def _readings(found: Live) -> list[tuple[str, float, str]]:
    """Each reading with the letter it tells of, and its unit."""
    told = list[tuple[str, float, str]]()
    for node in found.root.nodes() if found.root else ():
        told += [(node.I, one.readings["I"], "A") for one in node.ammeters if one.readings]
        told += [(node.V, one.readings["V"], "V") for one in node.voltmeters if one.readings]
        if node.element:
            letters = {"I": (node.I, "A"), "V": (node.V, "V"), "P": (node.P, "W")}
            told += [(letters[which][0], value, letters[which][1]) for which, value in node.element.readings.items()]
    for meter in found.network.voltmeters:
        node_ = found.node(meter.across)
        if meter.readings and (node_ or meter.across == CELL):
            told.append((node_.V if node_ else TERMINAL, meter.readings["V"], "V"))
        elif meter.readings:
            raise Refusal("network", f"Nothing is read across {meter.across}: no current passes it. Leave it out.")
    for dead in found.dead:
        if dead.readings:
            raise Refusal(
                "network", f"“{dead.typed}” has a reading, but no current passes it: leave it out, or close the switch."
            )
    return told


def _possible(values: dict[str, float], style: Style) -> None:
    emf, inner = values.get("epsilon"), values.get("r")
    if emf is None:
        return
    for name, value in values.items():
        if name.startswith("V") and value > emf * (1 + 1e-12):
            raise Refusal("network", MORE_THAN_EMF.format(amount(value, "V", style), amount(emf, "V", style)))
        if name.startswith("I") and inner and value > emf / inner * (1 + 1e-12):
            raise Refusal("network", MORE_CURRENT.format(amount(value, "A", style)))


def missing(values: dict[str, float], found: Live) -> list[str]:
    """What is to be found before all else: resistances written “?”, an emf or r left empty."""
    unknown = [one.R for one in found.ones if one.element and one.element.asked]
    return unknown + [name for name in ("epsilon", "r") if name not in values]


def boxes(root: Node) -> dict[str, Input]:
    """Every letter as a box, so that it can be asked and its value judged."""
    found = {"epsilon": Input("epsilon", "Emf", "V", 0.5, 240)}
    found["r"] = Input("r", "Internal resistance", "Ω", 1e-3, 10, over=None)
    for node in root.nodes():
        of = _of(node, root)
        found.setdefault(node.R, Input(node.R, f"Resistance of {of}", "Ω", 0.1, 1e6))
        found.setdefault(node.V, Input(node.V, f"Potential difference across {of}", "V", 1e-3, 240))
        found.setdefault(node.I, Input(node.I, f"Current in {of}", "A", 1e-6, 20))
        if node.P:
            found[node.P] = Input(node.P, f"Power of {of}", "W", 1e-3, 3e3)
    return found


def _of(node: Node, root: Node) -> str:
    if node.element:
        return the(node.element)
    if node is root:
        return "the external circuit"
    names = [called(one.element) for one in node.ones() if one.element]
    joined = f"{', '.join(names[:-1])} and {names[-1]}"
    return f"{joined} in {node.how}" if all(part.how == "one" for part in node.parts) else f"{joined} together"


def asks(root: Node, read: Mapping[str, str], when: str = "") -> dict[str, str]:
    """How each quantity is asked for. read: the meters that show it, by its letter. when: said at the end."""
    words = {
        "epsilon": "Calculate the emf of the cell.",
        "r": "Calculate the internal resistance of the cell.",
        MAIN: "Calculate the total current.",
        TERMINAL: "Calculate the terminal potential difference.",
    }
    for node in root.nodes():
        of = _of(node, root)
        if node is root and node.how != "one":
            words[node.R] = "Calculate the total resistance of the external circuit."
        words.setdefault(node.R, f"Calculate the resistance of {of}.")
        words.setdefault(node.V, f"Calculate the potential difference across {of}.")
        words.setdefault(node.I, f"Calculate the current in {of}.")
        if node.P:
            words[node.P] = f"Calculate the power of {of}."
    for name, ask in words.items():
        shown = f", shown by {read[name]}{',' if when else ''}" if name in read else ""
        words[name] = f"{ask[:-1]}{shown}{when}."
    return words


def everything(root: Node) -> list[str]:
    """The order of a memo: total resistance, total current, terminals, branch by branch, power."""
    found = [root.R, MAIN, TERMINAL]
    for node in root.nodes():
        found += [node.V, node.I] if node.element or node.how == "parallel" else [node.I]
    found += [one.P for one in root.ones()]
    return list(dict.fromkeys(found))


def one_quantity(data: Data, found: Live) -> str:
    """The letter of what is asked of one part. Raises Refusal."""
    wanted, name = data.choices["ask"], data.texts["of"]
    at = found.network.named(name) if name else (found.ones[-1].element if found.ones else None)
    if at is None or at.kind not in LIVE:
        raise Refusal("of", no_part(name, found.network.elements))
    node = found.node(at.name)
    if node is None:
        raise Refusal(
            "of",
            f"No current passes {the(at)}: its current, potential difference and power are zero. Pick another part.",
        )
    return {"V_x": node.V, "I_x": node.I, "P_x": node.P}[wanted]


def no_part(name: str, elements: tuple[Element, ...]) -> str:
    """That a circuit has no such part, and which it has."""
    parts = ", ".join(one.name for one in elements if one.kind in LIVE)
    return f"The circuit has no part “{name}” with a resistance. Type one of its names: {parts}."
