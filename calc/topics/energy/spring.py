"""A spring, a height and a speed: ½kx² = mgh + ½mv², data-sheet equations. Marks and ranges: common practice,
no source."""

from calc.figures import Figure
from calc.figures.energy import energy_bars
from calc.model.answers import Law
from calc.model.questions import Data, Draw, Input, Mistake, Refusal, Values
from calc.model.relations import Relation
from calc.topics.shared.stating import state
from calc.working.solving import Situation, question

CONSERVED = Law(
    "Conservation of mechanical energy",
    "The total mechanical energy of an isolated system remains constant.",
    ("total mechanical energy", "isolated system", "constant"),
    formulas=("E_k = 1/2*m*v^2", "E_p = m*g*h", "E_s = 1/2*k*x^2"),
    group="Energy",
)
SPRING = Relation(
    "1/2*k*x^2 = m*g*h + 1/2*m*v^2",
    what="Energy of the spring before equals energy of the ball at P",
    why="Only the weight and the spring do work: what the spring gives up becomes height and speed.",
    plain="The spring pays, and the ball gets all of it: some as height, the rest as speed.",
    units={"k": "N·m⁻¹", "x": "m", "m": "kg", "h": "m", "v": "m·s⁻¹"},
    mistakes=(
        Mistake("height-forgotten", "v", "sqrt(k*x^2/m)", "Part of the energy lifts the ball: subtract mgh first."),
        Mistake(
            "speed-forgotten", "h", "k*x^2/(2*m*g)", "The ball still moves at P: subtract its kinetic energy first."
        ),
    ),
)


def scene(v: Values) -> Figure:
    """The energy of the spring, and what becomes of it."""
    height, speed = v["m"] * v["g"] * v["h"], v["m"] * v["v"] ** 2 / 2
    return energy_bars(
        [
            ("Start", [("E_s", v["k"] * v["x"] ** 2 / 2)]),
            ("At P", [("E_p", height), ("E_k", speed)]),
        ],
        title="Energy at the start and at P",
        description=(
            "Bars to one scale. At the start all the energy is in the spring; at P it is shared between height and"
            " speed."
        ),
    )


def possible(data: Data, v: Values) -> None:
    """Every size is a size: the spring has energy enough for the height."""
    if v["h"] < 0 or v["m"] <= 0:
        raise Refusal(
            None,
            "The spring cannot give so much: at P the ball would have more energy than the spring had. Check the"
            " numbers.",
        )


LAUNCH = question(
    "spring-launch",
    "A ball shot upwards by a spring",
    Situation(
        relations=(SPRING,),
        openings=(
            (
                "A toy cannon holds a spring upright; pressed and let go, it shoots a small ball straight up. There is"
                " no friction."
            ),
            (
                "A ball lies on a pressed upright spring without mass. The spring is set free and throws the ball up;"
                " nothing rubs."
            ),
            "A spring in a smooth vertical tube fires a steel ball upwards. Air resistance is left out.",
        ),
        tell={
            "k": "The spring constant is {}.",
            "x": "The spring is pressed in by {}.",
            "m": "The ball has a mass of {}.",
            "h": "P is a point {} above the start.",
            "v": "At P the speed of the ball is {}.",
        },
        stated=(state(CONSERVED),),
        refuse=possible,
        scene=scene,
    ),
    fields=(
        Input("k", "Spring constant", "N·m⁻¹", 1, 1e5, "The spring constant must be greater than zero."),
        Input("x", "Distance the spring is pressed in", "cm", 1e-3, 2, "Distance must be greater than zero."),
        Input("m", "Mass of the ball", "g", 1e-4, 100, "Mass must be greater than zero."),
        Input("h", "Height of P above the start", "m", 1e-3, 1e3, over=None),
        Input("v", "Speed of the ball at P", "m·s⁻¹", 1e-2, 1e3, over=None),
    ),
    example={"k": "400 N/m", "x": "12 cm", "m": "50 g", "h": "1,5 m", "v": ""},
    constants=("g",),
    since=2,
    laws=(CONSERVED.name,),
    draws={
        "k": Draw((200, 300, 400, 500), "N/m", harder=(240, 360, 620)),
        "x": Draw((8, 10, 12, 15), "cm", harder=(7.5, 12.5, 14)),
        "m": Draw((20, 40, 50, 80), "g", harder=(25, 35, 65)),
        "h": Draw((0.5, 0.8, 1.2, 1.5), "m", harder=(0.65, 1.1, 1.35)),
        "v": Draw((3, 5, 6, 8), "m/s", harder=(3.6, 5.5, 7.2)),
    },
)
