"""A spring, a height and a speed: ½kx² = mgh + ½mv², data-sheet equations."""

from calc.figures.energy import energy_bars
from calc.topics.energy.laws import CONSERVED
from calc.topics.shared.quantities import extension, height, mass, speed, spring_constant
from calc.working.declaring import Mistake, Relation, declare

NO_SPEED = "You gave all the energy to the height. The ball still moves at P: subtract {1/2*m*v^2} first."
LIFTED = "You gave all the energy to the speed. Part of it lifts the ball: subtract {m*g*h} first."
SPENT = "The spring cannot give so much: at P the ball would have more energy than the spring had. Check the numbers."
BARS = "Bars to one scale. At the start all the energy is in the spring; at P it is shared between height and speed."
SPRING = Relation(
    "1/2*k*x^2 = m*g*h + 1/2*m*v^2",
    what="Energy of the spring before equals energy of the ball at P",
    why="Only the weight and the spring do work: what the spring gives up becomes height and speed.",
    plain="The spring pays, and the ball gets all of it: some as height, the rest as speed.",
    mistakes=(
        Mistake("height-forgotten", "v", "sqrt(k*x^2/m)", LIFTED),
        Mistake("speed-forgotten", "h", "k*x^2/(2*m*g)", NO_SPEED),
    ),
)
QUANTITIES = (
    spring_constant("k", "Spring constant", "The spring constant is {}.", "400 N/m; 200 300 400 500; 240 360 620"),
    extension(
        "x", "Distance the spring is pressed in", "The spring is pressed in by {}.", "12 cm; 8 10 12 15; 7,5 12,5 14"
    ),
    mass("m", "Mass of the ball", "The ball has a mass of {}.", "50 g; 20 40 50 80; 25 35 65"),
    height(
        "h", "Height of P above the start", "P is a point {} above the start.", "1,5 m; 0,5 0,8 1,2 1,5; 0,65 1,1 1,35"
    ),
    speed("v", "Speed of the ball at P", "At P the speed of the ball is {}.", "?; 3 5 6 8; 3,6 5,5 7,2"),
)
LAUNCH = declare(
    "spring-launch",
    "A ball shot upwards by a spring",
    (SPRING,),
    openings=(
        "A toy cannon holds a spring upright; pressed and let go, it shoots a small ball straight up. There is no"
        " friction.",
        "A ball lies on a pressed upright spring without mass. The spring is set free and throws the ball up; nothing"
        " rubs.",
        "A spring in a smooth vertical tube fires a steel ball upwards. Air resistance is left out.",
    ),
    given=QUANTITIES,
    unfit={"h": SPENT, "v": SPENT},
    scene=lambda v: energy_bars(
        [
            ("Start", [("E_s", v["k"] * v["x"] ** 2 / 2)]),
            ("At P", [("E_p", v["m"] * v["g"] * v["h"]), ("E_k", v["m"] * v["v"] ** 2 / 2)]),
        ],
        title="Energy at the start and at P",
        description=BARS,
    ),
    constants=("g",),
    states=(CONSERVED,),
    since=2,
)
