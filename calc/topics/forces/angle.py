"""The angle at which a given pull just moves a body on the level: none, one or two.

P cos φ = μs(mg − P sin φ) is P cos(φ − ε) = μs mg cos ε with tan ε = μs, so φ = ε ± cos⁻¹(μs mg cos ε/P). A pull with
P√(1 + μs²) < μs mg is too small at every angle; where P is larger than μs mg the smaller root lies below the level.
Marks: common practice, no source.
"""

from __future__ import annotations

from calc.figures import Figure
from calc.figures.surfaces import Pulled, on_surface
from calc.model.answers import Mark, Point
from calc.model.questions import Check, Data, Mistake, Part, Plan, Question, Refusal, Step
from calc.topics.forces.words import LIFTS, pull, typed_as
from calc.topics.shared.motion_laws import STATIC
from calc.topics.shared.quantities import friction_coefficient, mass
from calc.working.declaring import boxes, state

TOO_SMALL = "Too small at every angle: even at the best angle this pull cannot move it. Use a larger pull."
BELOW = "It lies below the level: there P would be a push, not a pull."
WEIGHT = "You made {N} as large as the weight. The pull lightens the contact: use {m*g - P*sin(phi_2)}."
BOXES = (
    mass("m", "Mass", "", "8 kg; 4 6 8 10; 3,5 6,5 8,5"),
    pull("P", "Pull", "", "43 N; 20 30 40; 25 35 45"),
    friction_coefficient("mu_s", "Coefficient of static friction", "", "0,6; 0,4 0,5 0,6; 0,45 0,55 0,65"),
)
HELPER = Step(
    "tan(epsilon) = mu_s",
    "epsilon = atan(mu_s)",
    "Name the angle whose tangent is the coefficient",
    "With μₛ = sin ε/cos ε both terms with P become one cosine. ε is also the angle at which the pull works best.",
    "°",
    (Mark("answer"),),
    plain="Pulling a little upwards helps, because it lightens the contact; pulling too steeply wastes the pull.",
    mistakes=(
        Mistake("sine", "epsilon", "asin(mu_s)", "You took the sine. Use the tangent: {mu_s} is sine over cosine."),
    ),
)


def root(name: str, sign: str, other: str = "", dropped: str = "") -> Step:
    """One of the two angles."""
    return Step(
        f"P*cos({name} - epsilon) = mu_s*m*g*cos(epsilon)",
        f"{name} = epsilon {sign} acos(mu_s*m*g*cos(epsilon)/P)",
        f"Balance along and across the level, for the {'larger' if sign == '+' else 'smaller'} angle",
        "P cos φ = μₛN with N = mg − P sin φ; multiplied by cos ε the two terms with P are P cos(φ − ε).",
        "°",
        (Mark("formula"), Mark("substitution"), Mark("answer")) if sign == "+" else (Mark("answer"),),
        other=other,
        dropped=dropped,
        mistakes=(Mistake("normal-is-weight", name, "acos(mu_s*m*g/P)", WEIGHT),) if sign == "+" else (),
    )


BETWEEN = "At which angles does the pull move it, and at which does it stay? Give a reason."


def words(two: bool) -> Part:
    """Between which angles it moves."""
    moves = "between the two angles" if two else "at every angle from the level up to this one"
    stays = "flatter or steeper than that" if two else "steeper than that"
    return Part(
        "between",
        "explain",
        BETWEEN,
        points=(
            Point(f"It moves {moves}: there P cos φ is larger than the largest static friction.", 1, (moves,)),
            Point(f"It stays where the pull is {stays}.", 1, (stays,)),
        ),
    )


def plan(data: Data) -> Plan:
    """State the law, find every angle, and say where it moves."""
    v, g = data.values, data.settings.constants()["g"]
    weight = v["m"] * g
    if not v["P"] or v["P"] * (1 + v["mu_s"] ** 2) ** 0.5 < v["mu_s"] * weight:
        raise Refusal("P", TOO_SMALL)
    if v["P"] >= weight:
        raise Refusal("P", LIFTS)
    two = v["P"] < v["mu_s"] * weight
    second = "phi_2 = epsilon - acos(mu_s*m*g*cos(epsilon)/P)"
    steps = (HELPER, root("phi_1", "-"), root("phi_2", "+")) if two else (HELPER, root("phi_2", "+", second, BELOW))
    return Plan(
        story=data.pick(
            f"A chest of {data.said['m']} stands on a level floor. A rope pulls it with {data.said['P']}, first along"
            f" the floor and then more and more steeply. The coefficient of static friction is {data.said['mu_s']}.",
            f"A sledge of {data.said['m']} stands on level ground and is pulled with {data.said['P']} by a strap whose"
            f" angle with the ground can be chosen. The coefficient of static friction is {data.said['mu_s']}.",
            f"On a level deck a crate of {data.said['m']} is pulled with {data.said['P']} by a cable from a crane that"
            f" can be raised. The coefficient of static friction is {data.said['mu_s']}.",
        ),
        parts=(
            state(STATIC),
            Part(
                "find",
                "calculate",
                "Calculate every angle above the level at which the pull just moves it.",
                steps,
                also=("phi_1",) if two else (),
            ),
            words(two),
        ),
        values=dict(v),
        scene=lambda values: scene(),
        checks=tuple(
            Check("Put the angle back: what drives it is what friction can hold", line)
            for line in (
                f"P*cos({name}) = mu_s*(m*g - P*sin({name}))" for name in (("phi_1", "phi_2") if two else ("phi_2",))
            )
        ),
    )


def scene() -> Figure:
    """The body with its rope at some angle, which is no answer."""
    said = (
        "A box on a level surface. A rope labelled P pulls it to the right and upwards, at an angle φ above the"
        " surface."
    )
    return on_surface(0.0, Pulled("P", 25.0), title="The body and its rope", description=said)


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """A pull a little below or above the one that moves it along the level."""
    m, mu = (float(str(typed[name]).split()[0].replace(",", ".")) for name in ("m", "mu_s"))
    least, toss = 1 / (1 + mu**2) ** 0.5, chance.random  # type: ignore[attr-defined]
    share = least + (1 - least) * (0.3 + 0.4 * toss()) if toss() < 0.6 else 1.05 + 0.2 * toss()
    return {**typed, "P": typed_as(share * mu * m * 9.8, "N", 3)}


ANGLE = Question(
    key="angle",
    title="At what angle does it just move?",
    **boxes(*BOXES),
    plan=plan,
    laws=(STATIC.name,),
    constants=("g",),
    adjust=practise,
    since=4,
)
