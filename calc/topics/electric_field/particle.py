"""An electron or a proton in an electric field: F = eE, then a = F/m with the mass of the data sheet.

The weight is left out where it is less than a thousandth of the electrostatic force.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.directions import FOUR_WAYS
from calc.model.questions import Check, Choice, Data, Draw, Input, Plan, Question, Refusal, Step
from calc.model.relations import Towards
from calc.topics.electric_field.charge import force_scene
from calc.topics.electric_field.laws import (
    NEWTON,
    PER_CHARGE,
    along_or_against,
    between,
    follows_field,
    force_step,
    step,
)
from calc.topics.electric_field.shared import FIELD, FOUR, by_value, field, follows, in_air, memo, part_a_step, words_of
from calc.topics.electric_field.uniform import PARTICLES, TIMES, an, other_mass
from calc.topics.shared.electrostatics import SECOND
from calc.working.chain import lead


def told(data: Data, who: str, along: str) -> str:
    """Who is let go in which field, by the field or by the acceleration."""
    return (
        data.pick(
            f"{who} is released in a field of {data.said['E']} {along}.",
            later=(
                f"In a vacuum the electric field is {data.said['E']} {along}. {who} is let go in it.",
                (
                    f"{who} starts from rest at a point in a vacuum where the electric field has a size of"
                    f" {data.said['E']} and points {along}."
                ),
            ),
        )
        if data.has("E")
        else data.pick(
            f"{who} accelerates at {data.said['a']} in a field that points {along}.",
            later=(
                (
                    f"In a vacuum the electric field points {along}. {who} that is let go in it has an"
                    f" acceleration of {data.said['a']}."
                ),
                (
                    f"{who} starts from rest in an electric field {along}. Its acceleration is measured:"
                    f" {data.said['a']}."
                ),
            ),
        )
    )


def plan_particle(data: Data) -> Plan:
    name = data.choices["particle"]
    _, mass, sign = PARTICLES[name]
    along = data.choices["along"]
    pushed = follows(along, sign)
    refuse_weight(data, mass)
    chain = lead(data.known, particle_steps(name, mass, sign, along), data.asked)
    who = f"{an(name)[0].upper()}{an(name)[1:]}"
    explain = memo(
        "direction",
        "explain",
        f"Explain which way the {name} accelerates.",
        (
            (
                f"The {name} is {'negative' if sign < 0 else 'positive'}, so the force on it is"
                f" {'opposite to' if sign < 0 else 'in the direction of'} the field."
            ),
        ),
        (f"It accelerates in the direction of the net force: {words_of(pushed)}.", words_of(pushed)),
    )
    asks = {
        "F": ("force", f"Calculate the electrostatic force on the {name}."),
        "a": ("acceleration", f"Calculate the acceleration of the {name}."),
        "E": ("field", "Calculate the electric field."),
    }
    plan = Plan(
        story=told(data, who, words_of(along)),
        parts=(*part_a_step(chain, asks), explain),
        values=dict(data.values),
        # A particle without its field would be a sphere alone: there is nothing to look at where E is asked.
        scene=lambda v: replace(force_scene(v, along, pushed, sign), drawn_from=("E",)),
        checks=(
            Check("Work backwards from the acceleration to the field", f"{mass}*a/e = E"),
            Check(
                "May the weight be left out?",
                words="The weight is less than a thousandth of the electrostatic force.",
                holds=lambda v: v[mass] * v["g"] < v["F"] / TIMES,
            ),
        ),
    )
    return in_air(plan, data, "E")


def refuse_weight(data: Data, mass: str) -> None:
    """Both formulas leave the weight out, so it may not count."""
    sheet = data.settings.constants()
    if data.has("E") and sheet["e"] * data.values["E"] < TIMES * sheet[mass] * sheet["g"]:
        raise Refusal("E", "In so weak a field the weight counts as well. Type a stronger field.")
    if data.has("a") and data.values["a"] < TIMES * sheet["g"]:
        raise Refusal("a", "At so small an acceleration the weight counts as well. Type a larger one.")


def particle_steps(name: str, mass: str, sign: int, along: str) -> tuple[Step, ...]:
    """F = eE and F = ma, each way round."""
    pushed = follows(along, sign)
    return (
        electron_force("E", name, by_value(FOUR_WAYS, pushed, "E")),
        acceleration("F", "a", mass, by_value(FOUR_WAYS, pushed, "F")),
        step(
            between(NEWTON, m=mass),
            "F",
            direction=by_value(FOUR_WAYS, pushed, "a"),
            plain="Force is mass times acceleration.",
            why="The electrostatic force is the only force worth counting; the weight is far smaller.",
        ),
        step(
            between(PER_CHARGE, q="e"),
            "E",
            follows_field("E", "F/e", sign < 0),
            what="Force per unit charge",
            direction=by_value(FOUR_WAYS, along, "F"),
            why=f"The charge of the {name} has the size e. {along_or_against(sign < 0)}",
            plain="Share the force out over the charge.",
        ),
    )


def electron_force(at: str, name: str, way: Towards) -> Step:
    """F = eE on an electron or a proton."""
    negative = name == "electron"
    return force_step(
        at,
        "e",
        "F",
        follows_field("F", f"e*{at}", negative),
        direction=way,
        what="Find the force from the field",
        why=f"The charge of the {name} has the size e. {along_or_against(negative)}",
        plain=(
            "The field says how hard one coulomb is pushed. An electron or a proton has only a tiny part of a coulomb."
        ),
    )


def acceleration(force: str, makes: str, mass: str, way: Towards) -> Step:
    """a = F/m from Newton's second law."""
    return step(between(NEWTON, F=force, m=mass, a=makes), makes, other_mass(force, makes, mass), direction=way)


PARTICLE = Question(
    key="particle",
    title="An electron or a proton in a field",
    fields=(
        field(),
        Input("a", "Acceleration (size)", "m·s⁻²", 1e8, 1e18, refusal="Acceleration must be greater than zero."),
        Choice("particle", "Particle", (("electron", "electron"), ("proton", "proton"))),
        Choice("along", "The field points", FOUR),
    ),
    unknowns=("a", "E"),
    plan=plan_particle,
    constants=("e", "m_e", "m_p", "g"),
    laws=(FIELD.name, SECOND.name),
    example={"E": "6 × 10^3 N/C", "a": "", "particle": "electron", "along": "up"},
    draws={
        "E": Draw((500, 1500, 2000, 4000, 7500), "N/C", harder=("3,6 x 10^4 N/C", "2,5 x 10^5 N/C")),
        "a": Draw(
            ("5 x 10^14 m/s^2", "8 x 10^13 m/s^2", "2 x 10^15 m/s^2"), harder=("3,5 x 10^12 m/s^2", "7,2 x 10^14 m/s^2")
        ),
        "particle": Draw(("electron", "proton")),
        "along": Draw(("right", "left", "up", "down")),
    },
)
