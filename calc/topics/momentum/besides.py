"""Parts that are asked besides, where the form says so: a contact that lasts longer, the graph of the other force."""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.graphs import GraphLine, graph
from calc.model.answers import Point
from calc.model.questions import Choice, Data, Part, Values


def besides(key: str, words: str) -> Choice:
    """The choice of one part more. key: of the option, and of the part; words: "for …"."""
    return Choice("also", "Ask besides", (("nothing", "nothing more"), (key, words)), besides=True, since=5)


LONGER = besides("longer", "why airbags, mats and bent knees help")
PAIR = besides("pair", "for the graph of the force on the stick")
LASTS = (
    (
        "In a crash test a dummy is brought to rest once by a hard panel and once, from the same velocity, by an"
        " airbag. Explain, with an equation, why the average net force on it is smaller with the airbag."
    ),
    (
        "Somebody who jumps down from a low wall bends the knees on landing. Explain, with an equation, why the average"
        " net force is smaller than with stiff legs."
    ),
    (
        "A crate that is dropped is brought to rest once by a concrete floor and once, from the same velocity, by a"
        " thick mat. Explain, with an equation, why the average net force on it is smaller on the mat."
    ),
)


def longer(data: Data) -> Part:
    """Why a contact that lasts longer means a smaller force (3): the same Δp, a longer Δt, F_net = Δp/Δt."""
    return Part(
        "longer",
        "explain",
        data.pick(*LASTS),
        points=(
            Point("The mass and both velocities are the same, so the change in momentum Δp is the same.", 1, ("Δp",)),
            Point("It takes longer: the time Δt is longer.", 1, ("longer",)),
            Point("The net force is Δp/Δt, so it is smaller.", 1, ("smaller",)),
        ),
    )


def pair(values: Values) -> tuple[Part, ...]:
    """The graph of the force of the puck on the stick (3): the mirror image; none where peak or time are not known."""
    if not {"F_max", "Deltat"} <= values.keys():
        return ()
    side, other = ("above", "below") if values["F_max"] > 0 else ("below", "above")
    part = Part(
        "pair",
        "draw",
        "Draw the graph of the net force on the puck and, on the same axes, that of the force of the puck on the stick."
        " Only the force of the stick acts on the puck along the ice.",
        points=(
            Point(f"The triangle of the puck lies {side} the time axis, that of the stick {other} it.", 1, (other,)),
            Point("Both begin, peak and end at the same moments, for the forces act for the same time.", 1, ("same",)),
            Point("Both peaks have the same size, by Newton's third law.", 1, ("same size", "third law")),
        ),
        figure=mirrored,
    )
    return (part,)


def mirrored(v: Values) -> Figure:
    """Both pulses: triangles over one time of contact, on both sides of zero."""
    end = v["Deltat"] * 1e3
    names = (("on the puck", v["F_max"]), ("on the stick", -v["F_max"]))
    return graph(
        "t (ms)",
        "F (N)",
        [GraphLine(((0.0, 0.0), (end / 2, peak), (end, 0.0)), name) for name, peak in names],
        title="The forces on puck and stick against time",
        drawn_from=("F_max", "Deltat"),
    )
