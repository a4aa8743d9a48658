"""Two trolleys that join: m₁u₁ + m₂u₂ = (m₁ + m₂)v, a data-sheet principle. Marks and ranges: common practice,
no source."""

from calc.figures import Figure
from calc.figures.motion import Moving, before_after
from calc.model.answers import Law
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Data, Draw, Input, Mistake, Refusal, Values
from calc.model.relations import Relation
from calc.topics.shared.stating import state
from calc.working.solving import Situation, question

MOMENTUM = Law(
    "Conservation of linear momentum",
    "The total linear momentum of an isolated system remains constant.",
    ("total linear momentum", "isolated system", "constant"),
    formulas=("p = m*v",),
    group="Momentum",
)
JOINED = Relation(
    "m1*u1 + m2*u2 = (m1 + m2)*v",
    what="Total momentum before equals total momentum after",
    why="No net external force acts on the two, so their total momentum stays the same. To the right is positive.",
    plain="What the two bring in motion together, they still have together once they have joined.",
    units={"m1": "kg", "u1": "m·s⁻¹", "m2": "kg", "u2": "m·s⁻¹", "v": "m·s⁻¹"},
    mistakes=(
        Mistake(
            "directions-ignored",
            "v",
            "(m1*abs(u1) + m2*abs(u2))/(m1 + m2)",
            "Opposite velocities have opposite signs: keep the minus of the one to the left.",
        ),
        Mistake(
            "masses-not-added", "v", "(m1*u1 + m2*u2)/m1", "They move as one body: divide by both masses together."
        ),
    ),
)


def scene(v: Values) -> Figure:
    """Before: each with its velocity; after: both together."""

    def moving(label: str, velocity: str, value: float, joined: bool = False) -> Moving:
        return Moving(label, velocity, abs(value), value >= 0, joined=joined)

    return before_after(
        [moving("1", "u_1", v["u1"]), moving("2", "u_2", v["u2"])],
        [moving("1", "v", v["v"]), moving("2", "", v["v"], joined=True)],
    )


def possible(data: Data, v: Values) -> None:
    """Masses are positive, and the two can meet."""
    if min(v["m1"], v["m2"]) <= 0:
        raise Refusal(
            None,
            "No mass fits: these velocities would need a mass of zero or less. Check the directions.",
        )
    if v["u1"] <= v["u2"]:
        raise Refusal(
            "u2" if data.has("u2") else None,
            "They never meet: the first is on the left and must be the faster one to the right. Check the velocities.",
        )


def mass(name: str, which: str) -> Input:
    return Input(name, f"Mass of the {which}", "kg", 1e-3, 1e6, "Mass must be greater than zero.")


def velocity(name: str, words: str) -> Input:
    return Input(name, words, "m·s⁻¹", 1e-3, 500, signed=True, help="to the left is negative")


JOIN = question(
    "join",
    "Two trolleys that join",
    Situation(
        relations=(JOINED,),
        openings=(
            (
                "Two trolleys run on a level track without friction, the first on the left; they collide and stay"
                " together."
            ),
            (
                "Two loaded carts roll on a smooth level floor. The one on the left, the first, runs into the other and"
                " they lock together."
            ),
            "Two air-track gliders meet and couple; the first comes from the left.",
        ),
        tell={
            "m1": "The first has a mass of {}.",
            "u1": "Before the collision the first moves at {}.",
            "m2": "The second has a mass of {}.",
            "u2": "Before the collision the second moves at {}.",
            "v": "Afterwards they move together at {}.",
        },
        ways=dict.fromkeys(("u1", "u2", "v"), (LEFT_RIGHT, "right")),
        stated=(state(MOMENTUM),),
        refuse=possible,
        scene=scene,
    ),
    fields=(
        mass("m1", "first"),
        velocity("u1", "Velocity of the first before"),
        mass("m2", "second"),
        velocity("u2", "Velocity of the second before"),
        velocity("v", "Velocity of both afterwards"),
    ),
    example={"m1": "3 kg", "u1": "4 m/s", "m2": "2 kg", "u2": "-1,5 m/s", "v": ""},
    since=2,
    laws=(MOMENTUM.name,),
    draws={
        "m1": Draw((2, 3, 4, 5, 8), "kg", harder=(1.2, 2.4, 3.6)),
        "u1": Draw((3, 4, 5, 6), "m/s", harder=(2.8, 4.5, 7.2)),
        "m2": Draw((1, 2, 6, 7), "kg", harder=(0.8, 1.5, 2.5)),
        "u2": Draw((-1, -2, 1, -3), "m/s", harder=(-1.5, 0.5, -2.4)),
        "v": Draw((1, 1.5, 2), "m/s", harder=(0.9, 1.6, 2.2)),
    },
)
