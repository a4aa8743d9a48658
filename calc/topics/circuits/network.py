"""A network built in words: combined, total current, terminal potential difference, branch by branch; any one unknown.

Marks, as in a memo: combine and use Ohm's law formula, substitution, answer; adding in series without a formula.
Meters are ideal and the resistance of a lamp stays the same (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from calc.figures import Figure
from calc.language.expressions import ExpressionError
from calc.model.answers import Point
from calc.model.questions import Check, Choice, Data, Part, Plan, Question, Refusal, Values, Worded
from calc.topics.circuits import network_roots
from calc.topics.circuits.laws import ELECTRIC_POWER, EMF, OHM, PARALLEL, SERIES, emf, inside
from calc.topics.circuits.misstatements import CURRENT
from calc.topics.circuits.network_asked import asks, boxes, everything, known, missing, one_quantity
from calc.topics.circuits.network_drawn import amount, called, drawn, readings, the, told
from calc.topics.circuits.network_laws import relations
from calc.topics.circuits.network_live import MAIN, TERMINAL, Live, Node, dead_why, live
from calc.topics.circuits.network_meters import read_by
from calc.topics.circuits.network_nodes import solved
from calc.topics.circuits.network_practice import practise
from calc.topics.circuits.network_text import read_network
from calc.working.chain import follows
from calc.working.declaring import Given
from calc.working.declaring import boxes as form_boxes
from calc.working.solving import Situation
from calc.working.solving import plan as solve
from calc.working.working import measure, run

EXAMPLE = "R1 2 Ω in series with (R2 4 Ω in parallel with R3 12 Ω)"
EXAMPLE_LAMPS = "R1 2 Ω in series with (lamp L1 4 Ω in parallel with lamp L2 12 Ω)"
CIRCUIT = Worded(
    "network",
    "The circuit between the terminals",
    help="in series with, in parallel with, brackets; lamp, rheostat, switch S open, ammeter; ? where it is asked",
    long=True,
)
PART = Worded("of", "Which part, where one part is asked about", help="its name, such as R2; empty: the last")
ASK = Choice(
    "ask",
    "What is to be found",
    (
        ("all", "what is missing, and everything in the circuit"),
        ("missing", "only what is missing: a resistance written ?, or emf or r left empty"),
        ("I", "the total current"),
        ("V_ext", "the terminal potential difference"),
        ("V_x", "the potential difference across one part"),
        ("I_x", "the current in one part"),
        ("P_x", "the power of one part"),
    ),
    finds=True,
)
SHORTED = (
    "Short circuit: a closed switch joins the terminals of the cell, and nothing but the cell limits the current. Never"
    " do this. Open the switch, or put it in series with a resistor."
)
NO_RESISTANCE_FITS = (
    "No resistance fits these readings: it would come out as zero or less. In parallel the combined resistance is"
    " smaller than each branch, and no reading exceeds what the emf gives. Compare the readings."
)
NO_R = (
    "No internal resistance fits these readings: it would come out below zero. Compare emf, readings and resistances."
)
EMPTY_R = "The internal resistance is empty and does not follow from these data. Type it; 0 where it may be left out."
LAMP = "The resistance of a lamp is taken as constant; that of a real one rises as it heats up."


def openings(data: Data, network_words: str) -> tuple[str, ...]:
    """The first sentences: the circuit, told three ways."""
    return (
        f"A cell is connected to a circuit: {network_words}.",
        f"On a bench a learner connects to the terminals of a battery {network_words}.",
        f"The circuit diagram of a small appliance shows, between the terminals of its battery, {network_words}.",
    )


def story(data: Data, found: Live) -> str:
    """The circuit, the meters, and what is known of the cell."""
    style = data.settings.style
    parts = [data.pick(*openings(data, told(found.network.tree, style))), *readings(found.network, style)]
    if data.has("epsilon"):
        parts.append(f"The emf is {data.said['epsilon']}.")
    if data.has("r"):
        has = f"The internal resistance is {data.said['r']}."
        parts.append(has if data.values["r"] else "The internal resistance may be left out.")
    return " ".join(parts)


def picture(data: Data, found: Live) -> Callable[[Values], Figure]:
    """The diagram, as a function of the values."""
    inner = None if data.values.get("r") == 0 else data.said.get("r", "")
    return lambda values: drawn(found.network, data.said.get("epsilon", ""), inner, data.settings.style)


def balance(data: Data, root: Node, values: Values) -> Check:
    """Power of the cell against that of all resistances, the currents from Kirchhoff's equations at the junctions."""
    style = data.settings.style
    emf_, inner = values["epsilon"], values["r"]
    current, volts = solved(root, values, emf_, inner)
    parts = [volts[name] ** 2 / values[name] for name in volts]
    total = current**2 * inner + sum(parts)

    def watt(value: float) -> str:
        return measure(value, "W", style).text

    shares = " + ".join(watt(one) for one in ([current**2 * inner] if inner else []) + parts)
    inside_ = "the cell itself and all parts" if inner else "all parts"
    words = (
        f"The cell supplies εI = {watt(emf_ * current)}; {inside_} take {shares} = {watt(total)}. The currents are"
        " those from Kirchhoff's equations at the junctions."
    )
    return Check(
        "Power balance: what the cell supplies, the resistances take",
        words=words,
        holds=lambda v: (
            abs(emf_ * current - total) <= 1e-9 * total
            and abs(v.get(MAIN, current) - current) <= 1e-9 * current
            and all(abs(v.get(one.V, volts[one.R]) - volts[one.R]) <= 1e-9 * abs(volts[one.R]) for one in root.ones())
        ),
    )


def broken(data: Data, found: Live) -> Plan:
    """The circuit is open: no current, and the emf across the gap."""
    elements = found.network.elements
    gap = next((one for one in elements if one.kind == "switch" and not one.closed), elements[0])
    emf_ = data.said.get("epsilon", "the emf")
    words = (
        ("The current is zero everywhere: the circuit is open.", "open"),
        (f"The terminal potential difference equals the emf, {emf_}: without current there are no lost volts.", "emf"),
        (
            f"Across the open switch {called(gap)} it is {emf_} as well; across resistors and lamps it is zero.",
            "zero",
        ),
    )
    ask = (
        f"Switch {called(gap)} is open. Give the current, the terminal potential difference and that across the switch"
        " and the resistors, with reasons."
    )
    points = tuple(Point(said, 1, (key,)) for said, key in words)
    return Plan(
        story=story(data, found),
        parts=(Part("open", "explain", ask, points=points, misstatements=CURRENT),),
        values=dict(data.values),
        scene=picture(data, found),
    )


def notes(found: Live) -> tuple[str, ...]:
    """What carries no current, and what is taken as ideal."""
    told_ = [f"No current passes {the(one)}: {dead_why(found, one)}." for one in found.dead]
    if any(one.kind == "lamp" for one in found.network.elements):
        told_.append(LAMP)
    if found.network.voltmeters or any(one.kind in ("ammeter", "voltmeter") for one in found.network.elements):
        told_.append("Meters are ideal: an ammeter has no resistance, a voltmeter lets no current through.")
    return tuple(told_)


def targets(data: Data, found: Live, root: Node, values: dict[str, float]) -> list[str]:
    """The letters to be found, in the order of a memo."""
    first, ask = missing(values, found), data.choices["ask"]
    if ask == "all" or (ask == "missing" and not first):
        rest = everything(root)
    elif ask == "missing":
        rest = []
    else:
        rest = [ask if ask in (MAIN, TERMINAL) else one_quantity(data, found)]
    asked = [name for name in dict.fromkeys((*first, *rest)) if name not in values]
    if not asked:
        raise Refusal("ask", "This is given already, as a reading in the text. Pick something else to find.")
    return asked


def plan(data: Data) -> Plan:
    """The network combined and worked. Raises Refusal."""
    found = live(read_network(data.texts["network"]))
    if found.wire:
        raise Refusal("network", SHORTED)
    root = found.root
    if root is None:
        return broken(data, found)
    values = known(data, found)
    asked, unknown = targets(data, found, root, values), missing(values, found)
    letters = boxes(root)
    laws = relations(root)
    steps = [step for law in laws for step in law.steps()]
    if any(not follows(set(values), steps, name) for name in asked):
        laws = relations(root, searching=True)
        steps = [step for law in laws for step in law.steps()]
    if unknown == ["r"] and not follows(set(values), steps, "r"):
        raise Refusal("r", EMPTY_R)
    alone = network_roots.needed(values, steps, unknown)
    if alone and (roots := network_roots.plan(data, found, root, values, unknown)):
        return replace(roots, story=story(data, found), scene=picture(data, found), notes=notes(found))
    no_fit = {name: NO_R if name == "r" else NO_RESISTANCE_FITS for name in unknown if name != "epsilon"}
    situation = Situation(
        relations=laws,
        openings=("",),
        tell={},
        ask=asks(root, read_by(found)),
        unfit=no_fit,
        scene=picture(data, found),
        notes=notes(found),
    )
    given = replace(
        data,
        values=values,
        said={name: amount(value, letters[name].unit, data.settings.style) for name, value in values.items()},
        asked=",".join(asked),
    )
    worked = solve(given, situation, letters)
    worked = replace(worked, story=story(data, found))
    return replace(worked, checks=proofs(data, root, worked))


def proofs(data: Data, root: Node, worked: Plan) -> tuple[Check, ...]:
    """The power balance, once all resistances and the cell are known."""
    try:
        values = run(worked, data.settings.constants())
    except ExpressionError:
        return worked.checks
    if not {"epsilon", "r", *(one.R for one in root.ones())} <= values.keys():
        return worked.checks
    return (balance(data, root, values),)


def maybe(given: Given, hint: str) -> Given:
    """A box that may stay empty."""
    return replace(given, box=replace(given.box, optional=True, help=hint))


EMF_BOX = maybe(emf("epsilon", "Emf of the cell", "", "12 V; 6 9 12 24; 4,5 7,5 13,5"), "empty: to be found")
INNER_BOX = maybe(inside("r", "Internal resistance", "", "1 Ω; 0,5 1 2; 0,4 0,8 1,5"), "0: none; empty: to be found")
NETWORK = Question(
    key="network",
    title="A network of your own",
    plan=plan,
    laws=(EMF.name, OHM.name, SERIES.name, PARALLEL.name, ELECTRIC_POWER.name),
    **form_boxes(
        ASK,
        CIRCUIT,
        EMF_BOX,
        INNER_BOX,
        PART,
        example={"network": EXAMPLE, "of": ""},
    ),
    adjust=practise,
    since=6,
)
