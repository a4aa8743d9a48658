"""A coil that turns steadily in a uniform field: the largest emf, frequency and period, and the graph of two speeds.

ε_max = 2πfNBA, from Faraday's law for Φ = BA cos(2πft). Mistakes and marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.coils import coil_in_field
from calc.figures.graphs import GraphLine, graph
from calc.model.answers import Point
from calc.model.questions import A, Data, Mistake, Part, Values
from calc.model.relations import Relation, Said
from calc.topics.electrodynamics.emf import EACH_TURN, warn
from calc.topics.electrodynamics.flux import RECTANGLE, ROUND
from calc.topics.electrodynamics.laws import FARADAY, area, emf, frequency, magnetic_field, radius, side, turns
from calc.topics.electrodynamics.waves import sine
from calc.topics.shared.quantities import Quantity
from calc.working.declaring import declare

NO_TWO_PI = (
    "You left out 2π. In one period the coil turns through 2π, so the emf is at most {2*pi*f} times NBA: use it."
)
LARGEST = Relation(
    "epsilon_max = 2*pi*f*N*B*A",
    what="The largest emf of a turning coil",
    why=(
        "The emf is largest while the plane of the coil is parallel to the field: there the flux is zero but changes"
        " fastest, by 2πf times NBA each second."
    ),
    plain="A larger coil, more turns, a stronger field and faster turning all give more.",
    units={"epsilon_max": "V", "f": "Hz", "N": "", "B": "T", "A": "m²"},
    quotes=(FARADAY.name,),
    said={"N": Said(count=True)},
    mistakes=(
        Mistake("two-pi-left-out", "epsilon_max", "f*N*B*A", NO_TWO_PI),
        Mistake("turns-left-out", "epsilon_max", "2*pi*f*B*A", EACH_TURN, "the answer is {1/N} of the right one"),
        Mistake("two-pi-left-out", "f", "epsilon_max/(N*B*A)", NO_TWO_PI),
        Mistake("two-pi-left-out", "B", "epsilon_max/(f*N*A)", NO_TWO_PI),
        Mistake("two-pi-left-out", "A", "epsilon_max/(f*N*B)", NO_TWO_PI),
        Mistake("two-pi-left-out", "N", "epsilon_max/(f*B*A)", NO_TWO_PI),
    ),
)
UPSIDE_DOWN = "You gave the other of the two. Frequency counts periods in a second: divide 1 by it."
PERIOD = Relation(
    "f = 1/T",
    what="Frequency and period",
    why="The frequency is the number of periods in a second.",
    plain="Fifty turns a second means a fiftieth of a second for each.",
    units={"f": "Hz", "T": "s"},
    marks=A,
    mistakes=(Mistake("not-inverted", "f", "T", UPSIDE_DOWN), Mistake("not-inverted", "T", "f", UPSIDE_DOWN)),
)
REVOLUTIONS = Relation(
    "f = n/60",
    what="Turns in a second",
    why="There are 60 seconds in a minute.",
    units={"f": "Hz", "n": ""},
    marks=A,
    mistakes=(
        Mistake(
            "minutes-kept",
            "f",
            "n",
            "You used the turns in a minute. The hertz counts those in a second: divide by 60.",
        ),
    ),
)
revolutions = Quantity("", 10, 24000, "The turns in a minute must be more than zero.")
period = Quantity("s", 2.5e-3, 1, "Time must be greater than zero.")
SIDE_ASKED = "The coil is a rectangle. Calculate the length of the side that is not given."
QUANTITIES = (
    turns("N", "Number of turns", "The coil has {} turns.", "120; 50 100 150 200; 80 125 240"),
    magnetic_field("B", "Magnetic field", "The magnetic field is {}.", "0,2 T; 0,1 0,2 0,4; 0,15 0,25 0,35"),
    area("A", "Area of the coil", "The coil has an area of {}.", "80 cm^2; 40 60 100; 35 75 120", unit="cm²"),
    radius(
        "r",
        "Radius of a round coil",
        "The coil is round, with a radius of {}.",
        "; 4 5 6 cm; 3,5 5,5",
        unit="cm",
        ask="The coil is round. Calculate its radius.",
    ),
    side(
        "s",
        "Length of a rectangular coil",
        "One side of the coil is {} long.",
        "; 8 10 12 cm; 7,5 9,5",
        unit="cm",
        ask=SIDE_ASKED,
    ),
    side(
        "s2",
        "Width of a rectangular coil",
        "The coil is a rectangle; its other side is {} long.",
        "; 5 6 8 cm; 4,5 6,5",
        unit="cm",
        ask=SIDE_ASKED,
    ),
    frequency(
        "f",
        "Frequency",
        "The coil turns at {}.",
        "; 20 25 40 50 Hz; 15 35 60",
        ask="Calculate how many times the coil turns in a second.",
    ),
    period("T", "Period", "Each turn takes {}.", "; 20 40 50 ms; 25 80", unit="ms", ask="Calculate the period."),
    revolutions(
        "n",
        "Turns in a minute",
        "The coil makes {} turns in a minute.",
        "1500; 1200 1500 3000; 900 1800 2400",
        ask="Calculate how many turns the coil makes in a minute.",
    ),
    emf("epsilon_max", "Largest emf", "The largest emf is {}.", "?; 20 40 60 90; 12 35 75", result="measured"),
)
CURVES = (
    Point("Axes labelled emf, in volts, and time, in seconds.", 1, ("labelled",)),
    Point("A sine over one full turn at the first speed, with peak and period marked.", 1, ("full turn",)),
    Point("At twice the speed the peak is twice as large.", 1, ("twice as large",)),
    Point("Its period is half as long, so there are two full waves in the time of one.", 1, ("half as long",)),
)
PARALLEL = Part(
    "parallel",
    "explain",
    "In which position of the coil is the emf largest, and how large is the flux through it then?",
    points=(
        Point("The emf is largest while the plane of the coil is parallel to the field.", 1, ("parallel",)),
        Point("The flux is zero there, but it changes fastest.", 1, ("zero", "changes fastest")),
    ),
)


def curves(v: Values) -> Figure:
    """One turn, and two at twice the speed."""
    top, once = v["epsilon_max"], 1 / v["f"]
    return graph(
        "t (s)",
        "ε (V)",
        [
            GraphLine(sine(1, top, once), "first speed"),
            GraphLine(sine(2, 2 * top, once / 2), "twice the speed", "dashed"),
        ],
        title="The emf over one turn, and at twice the speed",
        description=(
            "Two graphs of the emf against time. Solid: one full wave over the period. Dashed, at twice the speed: two"
            " full waves in the same time, with twice the peak."
        ),
        drawn_from=("epsilon_max", "f", "T", "n"),
    )


def later(data: Data, values: Values) -> tuple[Part, ...]:
    """The position of the largest emf; and the graph of two speeds, where peak and frequency are known."""
    if not {"epsilon_max", "f"} <= values.keys():
        return (PARALLEL,)
    ask = (
        "Draw the graph of the emf against time for one full turn, beginning with an emf of zero. On the same axes draw"
        " the graph for the same time at twice the speed."
    )
    return (PARALLEL, Part("graph", "draw", ask, points=CURVES, figure=curves))


def scene(v: Values) -> Figure:
    """The coil as it passes an angle, edge-on."""
    return coil_in_field(50.0, "", title="A coil that turns in a magnetic field")


TURNING = declare(
    "peak",
    "A turning coil: the largest emf and its graph",
    (LARGEST, PERIOD, REVOLUTIONS, ROUND, RECTANGLE),
    openings=(
        "A flat coil turns steadily in a uniform magnetic field, about an axis at right angles to the field.",
        "The coil of a small generator spins at a steady rate in the uniform field of two magnets.",
        "A wind wheel turns a coil steadily between the poles of a magnet, where the field is uniform.",
    ),
    given=QUANTITIES,
    scene=scene,
    states=(FARADAY,),
    later=later,
    warn=warn,
    notes=("In radians one turn is 2π, about 6,28.",),
    units={"epsilon_max": "V"},
    practised={
        "epsilon_max": "N B A n",
        "f": "N B A epsilon_max",
        "T": "N B r epsilon_max",
        "n": "N B A epsilon_max",
        "N": "B A f epsilon_max",
        "B": "N A T epsilon_max",
        "A": "N B f epsilon_max",
        "r": "N B f epsilon_max",
        "s": "s2 N B f epsilon_max",
        "s2": "s N B n epsilon_max",
    },
    asks="epsilon_max",
    since=6,
)
