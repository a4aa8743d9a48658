"""Electric circuits: cells and their internal resistance, resistors, power and cost, readings, whole networks."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.circuits.boat import BOAT
from calc.topics.circuits.cell import CELL
from calc.topics.circuits.lanterns import LANTERNS
from calc.topics.circuits.laws import ELECTRIC_POWER, EMF, OHM, PARALLEL, SERIES
from calc.topics.circuits.load import LOAD_POWER, TWO_LOADS
from calc.topics.circuits.network import NETWORK
from calc.topics.circuits.network_bridge import BRIDGE
from calc.topics.circuits.network_two_cells import TWO_CELLS
from calc.topics.circuits.power import POWER
from calc.topics.circuits.readings import OHMIC, READINGS
from calc.topics.circuits.resistors import RESISTORS
from calc.topics.circuits.urn import URN
from calc.topics.circuits.what_if import WHAT_IF

TOPIC = Topic(
    key="circuits",
    title="Electric circuits",
    laws=(OHM, EMF, SERIES, PARALLEL, ELECTRIC_POWER),
    questions=(
        RESISTORS,
        OHMIC,
        CELL,
        TWO_LOADS,
        READINGS,
        LOAD_POWER,
        POWER,
        NETWORK,
        BRIDGE,
        TWO_CELLS,
        WHAT_IF,
        LANTERNS,
        BOAT,
        URN,
    ),
    cautions=(
        (
            "Low voltage only: use cells or a school supply of a few volts, never the mains. What is connected to a"
            " wall socket is for a qualified electrician."
        ),
        (
            "Never join the terminals of a cell or battery by a wire: such a short circuit can burn skin and start a"
            " fire. A short-circuit current is worked out on paper."
        ),
        (
            "Close the switch only for as long as a reading takes: wires, resistors and cells become hot, and their"
            " resistance changes. Follow the rules of your school, under supervision."
        ),
    ),
)
