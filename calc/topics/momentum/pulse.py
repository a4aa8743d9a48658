"""A push that grows and dies away evenly: the area of the triangle under F–t is the change in momentum."""

from calc.figures import Figure
from calc.figures.graph_marks import Area, Key
from calc.figures.graphs import GraphLine, graph
from calc.model.questions import Values
from calc.topics.momentum.besides import PAIR, pair
from calc.topics.momentum.impulse import CHANGE_ALONE, CHANGED, DISAGREE, SIZES
from calc.topics.momentum.laws import IMPULSE
from calc.topics.shared.quantities import RIGHT, force, impulse, mass, time, velocity
from calc.working.declaring import Mistake, Relation, declare

AREA = "You multiplied the peak by the time. That is the area of a rectangle: for the triangle, take half of it."
ALL_ALONG = "You took the peak for the whole time. On average the force is half of it: double {Deltat}."
WHY = "The force grows evenly and dies away evenly, so the area under the graph is that of a triangle."
PLAIN = "On average the force is half of its peak."
PUSH = Relation(
    "1/2*F_max*Deltat = m*(v - u)",
    what="The area under the graph is the change in momentum",
    why=f"{WHY} To the right is positive.",
    plain=PLAIN,
    mistakes=(
        Mistake("peak-times-time", "v", "u + F_max*Deltat/m", AREA),
        Mistake("change-alone", "v", "F_max*Deltat/(2*m)", CHANGE_ALONE),
        Mistake("peak-times-time", "u", "v - F_max*Deltat/m", AREA),
        Mistake("peak-times-time", "m", "F_max*Deltat/(v - u)", AREA),
        Mistake(
            "average-for-peak",
            "F_max",
            "m*(v - u)/Deltat",
            "You found the average of the force. Double it to get the peak {F_max}.",
        ),
        Mistake("sizes-subtracted", "F_max", "2*m*(abs(v) - abs(u))/Deltat", SIZES),
        Mistake("peak-all-along", "Deltat", "m*(v - u)/F_max", ALL_ALONG),
    ),
)
TRIANGLE = Relation(
    "Deltap = 1/2*F_max*Deltat",
    what="The impulse is the area under the graph",
    why=WHY,
    plain=PLAIN,
    mistakes=(Mistake("peak-times-time", "Deltap", "F_max*Deltat", AREA),),
)
QUANTITIES = (
    mass("m", "Mass of the puck", "The puck has a mass of {}.", "160 g; 120 150 180 240; 135 165 225"),
    velocity("u", "Velocity before", "Before the push it moves at {}.", "-4 m/s; -3 -5 -6 -8; -2,5 -4,5 -7,5"),
    velocity(
        "v",
        "Velocity afterwards",
        "Afterwards it moves at {}.",
        "?; 5 8 10 12; 6,5 9,5 14",
        told_at={0.0: "Afterwards it is at rest."},
    ),
    force(
        "F_max",
        "Peak of the net force",
        "The net force grows evenly to a peak of {} and dies away evenly.",
        "320 N; 200 300 400 500; 240 350 460",
        way=RIGHT,
    ),
    time("Deltat", "Time of contact", "The whole push lasts {}.", "15 ms; 8 10 12 20; 9 14 18"),
    impulse("Deltap", "Impulse on the puck", "The impulse on it is {}.", "?; 2 2,5 3; 1,8 2,4 3,2"),
)
GIVEN = {
    "v": "m u F_max Deltat",
    "Deltap": "F_max Deltat",
    "m": "u v F_max Deltat",
    "u": "m v F_max Deltat",
    "F_max": "m u v Deltat",
    "Deltat": "m u v F_max",
}


def pulse(v: Values) -> Figure:
    """The net force against time: a triangle over the time of contact, its area the impulse."""
    end = v["Deltat"] * 1e3
    corners = ((0.0, 0.0), (end / 2, v["F_max"]), (end, 0.0))
    return graph(
        "t (ms)",
        "F_{net} (N)",
        [GraphLine(corners)],
        keys=[Key(end / 2, v["F_max"], y_label="F_{max}")],
        areas=[Area(corners, "Δp", ("F_max", "Deltat"))],
        title="Net force against time",
        drawn_from=("F_max", "Deltat"),
    )


PULSE = declare(
    "pulse",
    "A push drawn as a graph",
    (PUSH, TRIANGLE, CHANGED),
    openings=(
        (
            "A puck slides on smooth ice and a stick strikes it; the graph of the net force on it against time is a"
            " triangle."
        ),
        (
            "On an air table a puck runs against a plate that is pushed forward. The net force is recorded against"
            " time; its graph has the shape of a triangle."
        ),
        "A sensor on a stick draws how the net force on a puck grows and dies away: a triangle.",
    ),
    given=QUANTITIES,
    unfit={"m": DISAGREE, "Deltat": DISAGREE},
    scene=pulse,
    notes=("The force of the puck on the stick gives the mirror image: the same triangle, on the other side of zero.",),
    choices=(PAIR,),
    later=lambda data, values: pair(values) if data.choices["also"] == "pair" else (),
    states=(IMPULSE,),
    practised=GIVEN,
    asks="v",
    since=4,
)
