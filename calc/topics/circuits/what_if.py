"""What happens when: a switch, a fault, another resistance. All readings before and after, and the reasons for them.

Both circuits are combined and worked; letters of the second carry a prime where they change. The chain of reasons is
that of a memo (common practice, no source).
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.answers import Point
from calc.model.questions import Check, Choice, Data, Draw, Input, Misstatement, Part, Plan, Question, Refusal, Worded
from calc.model.relations import Relation
from calc.topics.circuits.laws import EMF, OHM, PARALLEL, SERIES, emf, inside, resistance
from calc.topics.circuits.misstatements import CURRENT, USED_UP
from calc.topics.circuits.network import CIRCUIT, EXAMPLE_LAMPS, SHORTED, notes
from calc.topics.circuits.network_asked import asks, boxes, no_part
from calc.topics.circuits.network_drawn import amount, called, drawn, readings, the
from calc.topics.circuits.network_drawn import told as network_told
from calc.topics.circuits.network_laws import relations
from calc.topics.circuits.network_live import MAIN, TERMINAL, Live, live
from calc.topics.circuits.network_meters import read_by
from calc.topics.circuits.network_text import LIVE, Element, Network, Tree, changed, grouped, read_network
from calc.topics.circuits.what_if_practice import practise
from calc.topics.circuits.what_if_words import State, chain, changes, meter_readings, shared, state, verdicts
from calc.working.declaring import boxes as form_boxes
from calc.working.solving import Situation
from calc.working.solving import plan as solve
from calc.working.working import measure

CHANGE = Choice(
    "change",
    "What happens",
    (
        ("burns", "a lamp or resistor burns out: its branch breaks"),
        ("shorted", "a lamp or resistor is shorted: a wire lies across it"),
        ("switch", "a switch is opened, or closed if it is open"),
        ("becomes", "a rheostat or resistor is set to another resistance"),
        ("parallel", "a resistor is added in parallel with a part"),
        ("series", "a resistor is added in series with a part"),
    ),
)
WHICH = Worded("of", "To which part", help="its name, such as L2; empty: the last")
NEW = resistance("R_new", "New or added resistance", "", "")
NEW_BOX = replace(NEW, box=replace(NEW.box, optional=True, help="where one is set or added"))
NO_SWITCH = "The circuit has no switch “{}”. Put one into the text, as in switch S1 closed, and type its name here."
NEEDS_NEW = "Type the new resistance: it is needed where a resistor is set or added."
NO_UNKNOWN = "Every resistance must be known here: “{}” has none. Type it instead of the question mark."
NO_READINGS = "Readings follow from the numbers here: leave the one of “{}” out."
AFTER_SHORT = (
    "After this change nothing but the cell would limit the current: a short circuit, which burns. Choose another part,"
    " or put a resistor in series with it."
)
IDLE = "Nothing changes: no current passes {} before, nor after. Pick another part, or close the switch of its branch."

UNCHANGED = "Nothing changes: after it the total resistance is {} as well. Take another part or resistance."


def element_of(data: Data, network: Network) -> Element:
    """The part that the change happens to. Raises Refusal."""
    name = data.texts["of"]
    switch = data.choices["change"] == "switch"
    fitting = [one for one in network.elements if (one.kind == "switch" if switch else one.kind in LIVE)]
    if not fitting:
        raise Refusal("network", NO_SWITCH.format(name or "S1"))
    found = network.named(name) if name else fitting[-1]
    if found not in fitting:
        raise Refusal("of", NO_SWITCH.format(name) if switch else no_part(name, network.elements))
    return found


def altered(data: Data, network: Network, one: Element) -> Network:
    """The circuit after the change."""
    change = data.choices["change"]
    gap, wire = (Element("switch", f"_{one.name}", closed=closed) for closed in (False, True))
    if change in ("becomes", "parallel", "series") and not data.has("R_new"):
        raise Refusal("R_new", NEEDS_NEW)
    new: Tree
    if change == "switch":
        new = replace(one, closed=not one.closed)
    elif change == "burns":
        new = grouped("series", (one, gap))
    elif change == "shorted":
        new = grouped("parallel", (one, wire))
    elif change == "becomes":
        new = replace(one, ohms=data.values["R_new"])
    else:
        added = Element("resistor", fresh(network), data.values["R_new"])
        new = grouped("parallel" if change == "parallel" else "series", (one, added))
    return replace(network, tree=changed(network.tree, one.name, new))


def fresh(network: Network) -> str:
    """A name that no resistor has yet."""
    names = {one.name for one in network.elements}
    return next(f"R{n}" for n in range(1, 30) if f"R{n}" not in names)


def happens(data: Data, one: Element, added: str) -> str:
    """The change in a sentence."""
    name = the(one)
    size = data.said.get("R_new", "")
    return {
        "burns": f"Then {name} burns out, so that its branch breaks.",
        "shorted": f"Then a thick wire is laid across {name} by mistake.",
        "switch": f"Then {name} is {'opened' if one.closed else 'closed'}.",
        "becomes": f"Then {name} is set to {size}.",
        "parallel": f"Then a resistor {added} of {size} is connected in parallel with {name}.",
        "series": f"Then a resistor {added} of {size} is connected in series with {name}.",
    }[data.choices["change"]]


def because(data: Data, one: Element, first: State, then: State) -> str:
    """Why the total resistance changes."""
    change = data.choices["change"]
    if change == "switch":
        change = "burns" if one.closed else "joins"
        across = [gone for gone in first.found.dead if gone not in then.found.dead] if one.closed else []
        wired = [gone for gone in then.found.dead if gone not in first.found.dead] if not one.closed else []
        if across:
            return f"The way past {called(across[0])} is gone: the current must go through it."
        if wired:
            return f"The closed switch carries the whole current past {called(wired[0])}, which no longer counts."
    larger = data.values.get("R_new", 0.0) > (one.ohms or 0.0)
    return {
        "burns": "One path for the current is taken away.",
        "joins": "One more path for the current is opened.",
        "shorted": f"The wire carries the whole current past {called(one)}, which no longer counts.",
        "becomes": f"The resistance of {called(one)} becomes {'larger' if larger else 'smaller'}.",
        "parallel": "One more path for the current is opened.",
        "series": "One more resistor stands in the way of the current.",
    }[change]


def primed(first: Live, then: Live) -> dict[str, str]:
    """The new letters of the second circuit: all but those of resistors that stay what they were."""
    kept = {one.R for one in then.ones for other in first.ones if one.element == other.element}
    new = {one.R for one in then.ones} - {one.R for one in first.ones} - kept
    return {
        name: f"{name}_after"
        for node in (then.root.nodes() if then.root else ())
        for name in (node.R, node.V, node.I, node.P)
        if name and name not in kept and name not in new
    }


def laws_of(first: Live, then: Live) -> tuple[Relation, ...]:
    """The laws of both circuits."""
    found = relations(first.root) if first.root else ()
    later = relations(then.root) if then.root else ()
    names = primed(first, then)
    return (*found, *(law.renamed(**names) for law in later))


def known(data: Data, first: Live, then: Live) -> dict[str, float]:
    """The cell, and every resistance by its letter."""
    names = primed(first, then)
    values = {name: data.values[name] for name in ("epsilon", "r")}
    values |= {one.R: one.element.ohms for one in first.ones if one.element and one.element.ohms}
    values |= {names.get(one.R, one.R): one.element.ohms for one in then.ones if one.element and one.element.ohms}
    return values


def words_of(first: Live, then: Live) -> tuple[dict[str, Input], dict[str, str]]:
    """The letters of both circuits as boxes, and how each is asked."""
    letters, words = dict[str, Input](), dict[str, str]()
    for found, names, when in ((first, {}, " before the change"), (then, primed(first, then), " after the change")):
        if found.root is None:
            continue
        for name, box in boxes(found.root).items():
            own = names.get(name, name)
            letters.setdefault(own, replace(box, name=own))
        for name, ask in asks(found.root, read_by(found), when).items():
            words.setdefault(names.get(name, name), ask)
    return letters, words


def refuse_unfit(network: Network) -> None:
    """Every number must be there, and none twice."""
    for one in network.elements:
        if one.asked:
            raise Refusal("network", NO_UNKNOWN.format(one.typed))
    for one in (*network.elements, *network.voltmeters):
        if one.readings:
            raise Refusal("network", NO_READINGS.format(one.typed))


def story(data: Data, first: Live, one: Element, added: str) -> str:
    """The circuit, the cell, and what happens."""
    style = data.settings.style
    network = network_told(first.network.tree, style)
    begins = data.pick(
        f"A battery is connected to {network}.",
        f"For a model of a room's lighting a learner connects a battery to {network}.",
        f"A circuit on a practice board consists of a battery and, between its terminals, {network}.",
    )
    inner = f"its internal resistance is {data.said['r']}" if data.values["r"] else "its internal resistance is zero"
    cell = f"The emf is {data.said['epsilon']}, and {inner}."
    return " ".join((begins, *readings(first.network, style), cell, happens(data, one, added)))


def readings_before_and_after(first: Live, then: Live) -> list[str]:
    """The letters that are asked: current, terminals, every part's p.d., every meter; before and after."""
    asked = [MAIN, TERMINAL, *shared(first.root), *read_by(first)] if first.root else []
    if then.root:
        names = primed(first, then)
        asked += [names.get(name, name) for name in (MAIN, TERMINAL, *shared(then.root), *read_by(then))]
    return list(dict.fromkeys(asked))


def open_part(emf_: str, one: Element, after: bool, wrong: tuple[Misstatement, ...]) -> Part:
    """What the meters show in a circuit that the part opens, or that is open before."""
    gap = f"open switch {called(one)}" if one.kind == "switch" else f"burnt-out {the(one)}"
    others = "resistors and lamps" if one.kind == "switch" else "the other resistors and lamps"
    points = (
        Point(f"The circuit is open, so the current {'becomes' if after else 'is'} zero everywhere.", 1, ("zero",)),
        Point(f"Without current there are no lost volts: the terminals show the emf, {emf_}.", 1, ("emf",)),
        Point(f"Across {others} there is no potential difference; across the {gap} it is {emf_}.", 1, ("across emf",)),
    )
    ask = (
        "Give the current, the terminal potential difference and the potential difference across the gap"
        f" {'after' if after else 'before'} the change, with reasons."
    )
    return Part("open", "explain", ask, points=points, misstatements=wrong)


def reasons(data: Data, one: Element, first: State, then: State) -> tuple[Part, ...]:
    """The chain of reasons, and what becomes of each part."""
    style, emf_ = data.settings.style, data.said["epsilon"]
    parts = list[Part]()
    wrong = CURRENT if changes(first.current, then.current) != "stays the same" else (USED_UP,)
    if first.open or then.open:
        parts.append(open_part(emf_, one, then.open, wrong))
    else:
        points = chain(first, then, because(data, one, first, then), data.values["r"], style)
        ask = "Explain step by step how the terminal potential difference changes: begin with the total resistance."
        parts.append(Part("chain", "explain", ask, points=points, misstatements=wrong))
    ask = "What becomes of each part: does its potential difference change, and does a lamp become brighter or dimmer?"
    if meters := meter_readings(first, then, style):
        asked = "Give the reading of each meter before and after the change."
        parts.append(Part("meters", "explain", asked, points=meters, misstatements=wrong))
    parts.append(Part("verdict", "explain", ask, points=verdicts(first, then, style), misstatements=wrong))
    return tuple(parts)


def proof(first: State, then: State) -> tuple[Check, ...]:
    """Both circuits once more by Kirchhoff's equations."""
    names = primed(first.found, then.found)

    def holds(values: object) -> bool:
        v = dict(values)  # type: ignore[call-overload]
        pairs = []
        for one, letters in ((first, {}), (then, names)):
            if one.found.root is None:
                continue
            pairs += [(v[letters.get(MAIN, MAIN)], one.current), (v[letters.get(TERMINAL, TERMINAL)], one.terminal)]
        return all(abs(a - b) <= 1e-9 * abs(b) for a, b in pairs)

    words = "Currents and potential differences from the equations of the junctions are the same as those above."
    return (Check("Kirchhoff's equations for both circuits", words=words, holds=holds),)


def plan(data: Data) -> Plan:
    """Both circuits worked, and the reasons. Raises Refusal."""
    network = read_network(data.texts["network"])
    refuse_unfit(network)
    one = element_of(data, network)
    first, then = live(network), live(altered(data, network, one))
    if first.wire or then.wire:
        raise Refusal("network" if first.wire else "of", SHORTED if first.wire else AFTER_SHORT)
    if (first.root is None and then.root is None) or (one.kind in LIVE and first.node(one.name) is None):
        raise Refusal("of", IDLE.format(the(one)))
    values = known(data, first, then)
    cell, style = (data.values["epsilon"], data.values["r"]), data.settings.style
    states = state(first, *cell), state(then, *cell)
    if changes(states[0].total, states[1].total) == "stays the same":
        raise Refusal(
            "of" if one.kind == "switch" else "R_new", UNCHANGED.format(measure(states[0].total, "Ω", style).text)
        )
    letters, words = words_of(first, then)
    inner = data.said["r"] if data.values["r"] else None
    situation = Situation(
        relations=laws_of(first, then),
        openings=("",),
        tell={},
        ask=words,
        scene=lambda v: drawn(network, data.said["epsilon"], inner, style, title="The circuit before the change"),
        notes=notes(first),
    )
    given = replace(
        data,
        values=values,
        said={name: amount(value, letters[name].unit, style) for name, value in values.items()},
        asked=",".join(readings_before_and_after(first, then)),
    )
    worked = solve(given, situation, letters)
    second = set(primed(first, then).values())
    parts = sorted(worked.parts, key=lambda part: part.answer in second)  # neither circuit needs the other
    return replace(
        worked,
        story=story(data, first, one, called(Element("resistor", fresh(network)))),
        parts=(*parts, *reasons(data, one, *states)),
        checks=proof(*states),
    )


WHAT_IF = Question(
    key="what-if",
    title="What happens when",
    plan=plan,
    laws=(EMF.name, OHM.name, SERIES.name, PARALLEL.name),
    **form_boxes(
        CHANGE,
        CIRCUIT,
        WHICH,
        NEW_BOX,
        emf("epsilon", "Emf of the cell", "", "12 V; 6 9 12; 4,5 7,5 10,5"),
        inside("r", "Internal resistance", "", "1 Ω; 0,5 1 2; 0,4 0,8 1,5"),
        draws={"change": Draw(("burns",))},
        example={"network": EXAMPLE_LAMPS, "of": "L2", "R_new": ""},
    ),
    adjust=practise,
    since=6,
)
