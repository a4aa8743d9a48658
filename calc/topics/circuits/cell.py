"""A cell with internal resistance: any of emf, resistances, current, terminal p.d., lost volts, largest current.

ε = I(R + r), V_ext = ε − Ir while it supplies current; V_ext = ε + Ir while it is charged (data-sheet equations; the
second is the first with the current driven in reverse). Refusals: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.figures import Figure
from calc.figures.circuits import Part, circuit, parallel, series
from calc.model.questions import Choice, Data, Draw, Mistake, Refusal
from calc.model.relations import Relation
from calc.topics.circuits.laws import (
    ACROSS,
    ELECTRIC_POWER,
    EMF,
    HEAT_INSIDE,
    LOST_VOLTS,
    SHARED_OUT,
    SHORT,
    TERMINAL,
    WHOLE,
    current,
    emf,
    inside,
    load,
    power,
    volts,
)
from calc.working.declaring import boxes, state, told
from calc.working.solving import Laws, Situation, question

MORE_THAN_EMF = (
    "Terminal p.d. cannot exceed emf while the cell supplies current. Type a smaller value, or choose that the cell is"
    " charged."
)
LESS_THAN_EMF = (
    "A cell that is charged has a terminal potential difference above its emf: the charger must drive the current"
    " against it. Type a"
    " larger value, or choose that the cell supplies current."
)
MORE_LOST = "The lost volts cannot exceed the emf: they are a part of it. Type a smaller value, or a larger emf."
MORE_CURRENT = (
    "More than the short-circuit current, ε ÷ r: the cell can never drive it. Type a smaller current, or check the"
    " emf and the internal resistance."
)
NO_RESISTANCE = (
    "Short circuit without resistance: with R and r both zero nothing limits the current. Type a value above zero for"
    " one of them."
)
NO_LIMIT = (
    "Without internal resistance nothing limits the short-circuit current. Type a value above zero for the internal"
    " resistance."
)
CHARGER = (
    "While the cell is charged no external resistance is connected to it. Leave this empty, or choose that the cell"
    " supplies current."
)
NOT_CHARGED = (
    "While the cell is charged neither an external resistance nor a short circuit is connected to it. Pick something"
    " else to find, or choose that the cell supplies current."
)
TOO_SMALL = (
    "No resistance fits: these data need less than zero ohms. The current or a potential difference is too large"
    " for this emf."
)
NO_CURRENT = (
    "Terminal potential difference and emf are equal, so there are no lost volts and no current. Type a terminal"
    " potential difference that differs"
    " from the emf."
)

WORKS = Choice(
    "state", "The cell", (("supplies", "supplies the current"), ("charged", "is charged: current driven in reverse"))
)
BOXES = (
    emf("epsilon", "Emf", "The emf of the cell is {}.", "12 V; 6 9 12; 4,5 13,5"),
    inside(
        "r",
        "Internal resistance",
        "The internal resistance is {}.",
        "0,5 Ω; 0,4 0,5 0,8 1; 0,25 0,65 1,4",
        told_at={0.0: "The internal resistance may be left out."},
        unfit=TOO_SMALL,
    ),
    load(
        "R",
        "External resistance",
        "The external resistance is {}.",
        "5,5 Ω; 4 5,5 7,2 9; 3,6 6,4 8,5",
        unfit=TOO_SMALL,
    ),
    current("I", "Current", "The current in the cell is {}.", "?; 0,5 0,8 1; 0,45 0,7 0,95", unfit=NO_CURRENT),
    volts(
        "V_ext",
        "Terminal potential difference",
        "A voltmeter across the terminals of the cell reads {}.",
        "?; 5,2 5,4 5,6; 4,1 4,3",
        result="measured",
        unfit=MORE_CURRENT,
    ),
    volts("V_r", "Lost volts", "The lost volts are {}.", "?; 0,4 0,6; 0,35 0,75", result="measured"),
    current(
        "I_s",
        "Short-circuit current",
        "The largest current it could drive, with its terminals joined, is {}.",
        "?; 15 18; 14 22",
        ask="Calculate the current if the terminals were joined by a thick wire (calculate it; never do it).",
        high=1e3,
    ),
    power(
        "P_r",
        "Power transferred inside the cell",
        "Inside the cell energy is transferred at {}.",
        "?; 0,4 0,5; 0,35 0,6",
        result="measured",
    ),
)
OPENINGS = {
    "supplies": (
        "A cell drives a current through an external resistance.",
        "A lamp of a bicycle is connected to a rechargeable cell; the wires have no resistance worth counting.",
        "In a laboratory one cell drives a current through a single resistor, and good meters are used.",
    ),
    "charged": (
        "A charger drives a current through a cell in reverse.",
        "A flat cell is charged: the current enters at its positive terminal.",
        "The cell of a garden lamp is charged by its solar panel, which drives the current through it in reverse.",
    ),
}
CHARGED = Relation(
    "V_ext = epsilon + I*r",
    what="The charger must supply the emf and the lost volts",
    why=(
        "The current is driven through the cell in reverse: against its emf, and through its internal resistance"
        " besides."
    ),
    plain="To push charge back in, the charger must push harder than the cell does.",
    units={"V_ext": "V", "epsilon": "V", "I": "A", "r": "Ω"},
    mistakes=(
        Mistake(
            "subtracted",
            "V_ext",
            "epsilon - I*r",
            "You subtracted the lost volts. That holds for a cell that supplies current; the charger must supply them"
            " besides: add {I*r}.",
        ),
        Mistake("lost-volts", "V_ext", "I*r", "You gave the lost volts, {I*r}. Add them to the emf."),
        Mistake(
            "added",
            "epsilon",
            "V_ext + I*r",
            "You added the lost volts. A charger shows more than the emf: subtract {I*r}.",
        ),
        Mistake(
            "load-for-internal",
            "r",
            "V_ext/I",
            (
                "You divided the whole potential difference by {I}. Only {V_ext - epsilon} drops across the"
                " internal resistance."
            ),
        ),
    ),
)
SHARED_IN = Relation(
    "V_ext = epsilon + V_r",
    what="The charger's potential difference is the emf and the lost volts together",
    why="Each coulomb gets V_ext from the charger: a part is stored by the cell, the rest only makes it warm.",
    plain="What is stored and what is wasted make up what was paid.",
    units={"V_ext": "V", "epsilon": "V", "V_r": "V"},
    mistakes=(
        Mistake("subtracted", "V_ext", "epsilon - V_r", "You subtracted. The charger must supply both: add {V_r}."),
        Mistake("added", "epsilon", "V_ext + V_r", "You added. The emf is the smaller one: subtract {V_r}."),
    ),
)


def scene(charged: bool) -> Figure:
    """The cell with its internal resistance and a voltmeter across both; below, the load or the charger's wires."""
    terminals = parallel(Part("voltmeter"), series(Part("cell", "ε"), Part("resistor", "r")))
    if charged:
        return circuit(
            terminals,
            series(Part("ammeter"), Part("battery", "charger")),
            title="A cell that is charged",
            notes=("Positive terminals are joined: the charger drives the current against the emf of the cell.",),
        )
    return circuit(terminals, series(Part("ammeter"), Part("resistor", "R")), title="A cell and its load")


def laws(charged: bool, ideal: bool) -> Laws:
    """What holds while it supplies current, or is charged; without internal resistance nothing limits a short."""
    if charged:
        return (CHARGED, LOST_VOLTS, SHARED_IN, HEAT_INSIDE)
    return (WHOLE, TERMINAL, ACROSS, LOST_VOLTS, SHARED_OUT, HEAT_INSIDE, *(() if ideal else (SHORT,)))


def refuse_given(data: Data, charged: bool) -> None:
    """Refuse readings that no cell shows."""
    v, beyond = data.values, 1 + 1e-12
    if data.has("epsilon") and data.has("V_ext"):
        if charged and v["V_ext"] < v["epsilon"]:
            raise Refusal("V_ext", LESS_THAN_EMF)
        if not charged and v["V_ext"] > v["epsilon"] * beyond:
            raise Refusal("V_ext", MORE_THAN_EMF)
    if charged:
        if data.has("R"):
            raise Refusal("R", CHARGER)
        if data.has("I_s") or {"R", "I_s"} & {*data.asked_names}:
            raise Refusal("I_s" if data.has("I_s") else "state", NOT_CHARGED)
        return
    if v.get("R") == 0 == v.get("r"):
        raise Refusal("r", NO_RESISTANCE)
    if "I_s" in data.asked_names and v.get("r") == 0:
        raise Refusal("r", NO_LIMIT)
    if data.has("epsilon") and v.get("V_r", 0.0) > v["epsilon"] * beyond:
        raise Refusal("V_r", MORE_LOST)
    most = v["I_s"] if data.has("I_s") else v["epsilon"] / v["r"] if data.has("epsilon") and v.get("r") else 0.0
    if most and v.get("I", 0.0) > most * beyond:
        raise Refusal("I", MORE_CURRENT)


def situation(data: Data) -> Situation:
    """What holds for the choice made."""
    charged = data.choices["state"] == "charged"
    refuse_given(data, charged)
    return replace(
        told(BOXES),
        relations=laws(charged, data.values.get("r") == 0),
        openings=OPENINGS[data.choices["state"]],
        stated=(state(EMF),),
        unfit={one.box.name: one.unfit for one in BOXES if one.unfit},
        scene=lambda v: scene(charged),
        notes=(
            ("The emf is the work the charger does on each coulomb against the cell; that energy is stored.",)
            if charged
            else ("With no current there are no lost volts: a good voltmeter across an unused cell shows its emf.",)
        ),
    )


SUPPLYING = {
    "I": "epsilon r R",
    "V_ext": "epsilon r R",
    "epsilon": "I r R",
    "r": "epsilon I R",
    "R": "epsilon I r",
    "V_r": "epsilon r R",
    "I_s": "epsilon r",
    "P_r": "epsilon r R",
}
IN_REVERSE = {
    "I": "epsilon r V_r",
    "V_ext": "epsilon r I",
    "epsilon": "V_ext r I",
    "r": "epsilon I V_r",
    "V_r": "I r",
    "P_r": "I r",
}


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Three data for the unknown drawn; a charged cell has neither load nor short circuit."""
    asked = next((name for name in SUPPLYING if not typed[name]), "I")
    how = str(typed["state"]) if asked in IN_REVERSE and level > 1 else "supplies"
    kept = (IN_REVERSE if how == "charged" else SUPPLYING)[asked].split()
    out = {**typed, "state": how} | {name: "" for name in SUPPLYING if name not in kept}
    if how == "charged" and "V_ext" in kept:
        out["V_ext"] = f"{13 + round(20 * chance.random()) / 10:g} V".replace(".", ",")  # type: ignore[attr-defined]
    return out


CELL = question(
    "cell",
    "A cell with internal resistance",
    situation,
    **boxes(WORKS, *BOXES, draws={"state": Draw(("supplies", "charged"))}),
    laws=(EMF.name, ELECTRIC_POWER.name),
    asks="I",
    adjust=practise,
    since=6,
)
