"""Two trolleys that collide and part: m₁u₁ + m₂u₂ = m₁v₁ + m₂v₂, and whether the collision is elastic.

Chosen so, the first goes through the second; then it is the faster one afterwards too.
"""

from dataclasses import replace

from calc.figures import Figure
from calc.figures.motion import before_after, moving
from calc.model.questions import Choice, Data, Plan, Refusal, Values
from calc.topics.momentum.join import APART, NO_MASS, SIGNS
from calc.topics.momentum.laws import ELASTIC, MOMENTUM
from calc.topics.momentum.two_bodies import afterwards, before, exchanged, mass_of, parting
from calc.topics.momentum.verdict import NEARLY, kinetic, verdict
from calc.working.declaring import Limit, Mistake, Part, Relation, declare
from calc.working.working import measure

THROUGH = (
    "They would pass through each other: afterwards the first, on the left, cannot be the faster one to the right."
    " Check the velocities and their signs, or choose “the first goes through the second”."
)
NOT_THROUGH = (
    "It does not get through: afterwards the first must still be the faster one to the right. Check the velocities, or"
    " choose “collide and part again”."
)
SPRING = (
    "Needs an explosion or spring: the total kinetic energy would rise from {} to {}. In a collision it cannot rise;"
    " check the numbers."
)
KEPT = "You kept the kinetic energy the same. That holds only if the collision is elastic: use the momentum."
FORGOTTEN = "You left out the momentum that the other trolley has afterwards. Subtract it from the total."
PARTED = Relation(
    "m1*u1 + m2*u2 = m1*v1 + m2*v2",
    what="Total momentum before equals total momentum after",
    why="No net external force acts on the two, so their total momentum stays the same. To the right is positive.",
    plain="What one loses in motion the other gains.",
    mistakes=(
        Mistake("directions-ignored", "v2", "(m1*abs(u1) + m2*abs(u2) - m1*abs(v1))/m2", SIGNS),
        Mistake("other-forgotten", "v2", "(m1*u1 + m2*u2)/m2", FORGOTTEN),
        Mistake("energy-kept", "v2", "sqrt((m1*u1^2 + m2*u2^2 - m1*v1^2)/m2)", KEPT),
        Mistake("directions-ignored", "v1", "(m1*abs(u1) + m2*abs(u2) - m2*abs(v2))/m1", SIGNS),
        Mistake("other-forgotten", "v1", "(m1*u1 + m2*u2)/m1", FORGOTTEN),
        Mistake("energy-kept", "v1", "sqrt((m1*u1^2 + m2*u2^2 - m2*v2^2)/m1)", KEPT),
    ),
)
QUANTITIES = (
    mass_of("first", "2 kg; 2 3 4 5; 1,2 2,4 3,6"),
    before("first", "5 m/s; 4 5 6; 3,5 5,4", may_rest=False),
    mass_of("second", "3 kg; 2 3 4 6; 1,5 2,5 4,5"),
    before("second", "-2 m/s; -1 -2 1; -1,5 0,5 -2,4"),
    afterwards("first", "-1 m/s; -1 -2 -1,5; -0,6 -1,2 0,8"),
    afterwards("second", "?; 2 3 2,5; 1,6 2,4 2,8"),
)


def refuse(data: Data, values: Values) -> None:
    """No collision gives kinetic energy; what is within the rounding of the data may be."""
    earlier, later = (kinetic(values, *speeds) for speeds in (("u1", "u2"), ("v1", "v2")))
    if later > earlier * (1 + NEARLY):
        style = data.settings.style
        raise Refusal(None, SPRING.format(*(measure(one, "J", style).text for one in (earlier, later))))


def energies(data: Data, values: Values) -> tuple[Part, ...]:
    """Whether the collision is elastic: both totals, then the comparison."""
    return verdict(data, values, ("u1", "u2"), ("v1", "v2"))


HOW = Choice(
    "how",
    "The two",
    (("part", "collide and part again"), ("pierce", "the first goes through the second")),
    since=5,
)
STRUCK = declare(
    "part",
    "Two trolleys that collide and part",
    (PARTED,),
    openings=(
        (
            "Two trolleys with buffers run on a level track without friction, the first on the left; they collide and"
            " part again."
        ),
        (
            "On a smooth level floor two crates on castors bump into each other and move apart; the first comes from"
            " the left."
        ),
        "Two air-track gliders with bumpers meet, the first on the left, and separate after the collision.",
    ),
    given=QUANTITIES,
    limits=(Limit("u1 - u2", APART, at="u2"), Limit("v2 - v1", THROUGH)),
    unfit={"m1": NO_MASS, "m2": NO_MASS},
    refuse=refuse,
    later=energies,
    proofs=lambda v: (exchanged("u1", "u2"),),
    scene=parting,
    states=(MOMENTUM,),
    laws=(ELASTIC,),
    since=4,
)


def beyond(v: Values) -> Figure:
    """Before, and afterwards with the first on the far side."""
    together = [moving("1", "u_1", v["u1"]), moving("2", "u_2", v["u2"])]
    return before_after(together, [moving("2", "v_2", v["v2"]), moving("1", "v_1", v["v1"])])


PIERCED = declare(
    "part",
    "Through and on",
    (PARTED,),
    openings=(
        (
            "On smooth ice an iron bar, the first, slides from the left and goes through a loose block of snow, the"
            " second. Both slide on; no piece comes off."
        ),
        (
            "A blunt dart, the first, flies level from the left and goes through a block of foam, the second, that"
            " slides on a level air table; both go on."
        ),
        (
            "On a level track without friction the first, a pointed rod on wheels, comes from the left and goes through"
            " the second, a roll of wet paper, which slides as well."
        ),
    ),
    given=QUANTITIES,
    limits=(Limit("u1 - u2", APART, at="u2"), Limit("v1 - v2", NOT_THROUGH)),
    unfit={"m1": NO_MASS, "m2": NO_MASS},
    refuse=refuse,
    later=energies,
    proofs=lambda v: (exchanged("u1", "u2"),),
    scene=beyond,
    states=(MOMENTUM,),
    laws=(ELASTIC,),
    since=4,
)


def plan(data: Data) -> Plan:
    """As chosen: they part, or the first goes through."""
    return (PIERCED if data.choices["how"] == "pierce" else STRUCK).plan(data)


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Where the first goes through: velocities afterwards that keep the momentum and lose energy."""
    if typed["how"] != "pierce":
        return typed
    v = {name: float(str(typed[name] or usual).split()[0].replace(",", ".")) for name, usual in USUAL.items()}
    common = (v["m1"] * v["u1"] + v["m2"] * v["u2"]) / (v["m1"] + v["m2"])
    first = common + (0.3 + 0.4 * chance.random()) * (v["u1"] - common)  # type: ignore[attr-defined]
    first = float(f"{first:.2g}")
    second = (v["m1"] * (v["u1"] - first)) / v["m2"] + v["u2"]
    ready = {"v1": f"{first:.2g} m/s", "v2": f"{second:.3g} m/s"}
    return {**typed, **{name: text.replace(".", ",") for name, text in ready.items() if typed[name]}}


USUAL = {"m1": "3", "u1": "5", "m2": "3", "u2": "-1"}
PART = replace(
    STRUCK,
    fields=(HOW, *STRUCK.fields),
    example={"how": "part", **STRUCK.example},
    plan=plan,
    adjust=practise,
)
