"""An electron or a proton in an electric field: F = eE, then a = F/m with the mass of the data sheet.

The weight is left out where it is less than a thousandth of the electrostatic force.
Marks and ranges: common practice, no source.
"""

from __future__ import annotations

from calc.model.answers import Direction, Point
from calc.model.questions import Check, Choice, Data, Draw, Input, Mistake, Part, Plan, Question, Refusal, Step
from calc.model.relations import Towards
from calc.topics.electric_field.charge import along_or_against, follows_field, force_scene
from calc.topics.electric_field.laws import NEWTON, PER_CHARGE, force_step, step
from calc.topics.electric_field.shared import FIELD, FOUR, field, follows, in_air, one_of
from calc.topics.shared.electrostatics import SECOND

PARTICLES = {"electron": ("m_e", -1), "proton": ("m_p", 1)}


def plan_particle(data: Data) -> Plan:
    name = data.choices["particle"]
    mass, sign = PARTICLES[name]
    along = data.choices["along"]
    way = one_of(follows(along, sign), FOUR)
    if data.asked == "a":
        parts: tuple[Part, ...] = (
            Part(
                "force",
                "calculate",
                f"Calculate the electrostatic force on the {name}.",
                (electron_force("E", name, way),),
            ),
            Part(
                "acceleration",
                "calculate",
                f"Calculate the acceleration of the {name}.",
                (acceleration("F", "a", mass, way),),
            ),
        )
        story = f"{_an(name)} is released in a field of {data.said['E']} {dict(FOUR)[along]}."
    else:
        parts = (
            Part(
                "force",
                "calculate",
                f"Calculate the electrostatic force on the {name}.",
                (
                    step(
                        NEWTON.renamed(m=mass),
                        "F",
                        direction=way,
                        plain="Force is mass times acceleration.",
                        why="The electrostatic force is the only force worth counting; the weight is far smaller.",
                    ),
                ),
            ),
            Part(
                "field",
                "calculate",
                "Calculate the electric field.",
                (
                    step(
                        PER_CHARGE.renamed(q="e"),
                        "E",
                        follows_field("E", "F/e", sign < 0),
                        sizes=(),
                        what="Force per unit charge",
                        direction=one_of(along, FOUR),
                        why=f"The charge of the {name} has the size e. " + along_or_against(sign < 0),
                        plain="Share the force out over the charge.",
                    ),
                ),
            ),
        )
        story = f"{_an(name)} accelerates at {data.said['a']} in a field that points {dict(FOUR)[along]}."
    words = dict(FOUR)
    explain = Part(
        "direction",
        "explain",
        f"Explain which way the {name} accelerates.",
        points=(
            Point(
                f"The {name} is {'negative' if sign < 0 else 'positive'}, so the force on it is"
                f" {'opposite to' if sign < 0 else 'in the direction of'} the field.",
                1,
            ),
            Point(f"It accelerates in the direction of the net force: {words[way.key]}.", 1, (words[way.key],)),
        ),
    )
    plan = Plan(
        story=story,
        parts=(*parts, explain),
        values=dict(data.values),
        scene=lambda v: force_scene(v, along, way.key, sign),
        checks=(
            Check("Work backwards from the acceleration to the field", f"{mass}*a/e = E"),
            Check(
                "May the weight be left out?",
                words="The weight is less than a thousandth of the electrostatic force.",
                holds=lambda v: v[mass] * v["g"] < v["F"] / 1000,
            ),
        ),
    )
    values = data.settings.constants()
    if data.has("E") and values["e"] * data.values["E"] < 1000 * values[mass] * values["g"]:
        raise Refusal("E", "In so weak a field the weight counts as well. Type a stronger field.")
    if data.has("a") and data.values["a"] < 1000 * values["g"]:
        raise Refusal("a", "At so small an acceleration the weight counts as well. Type a larger one.")
    return in_air(plan, data, "E")


def _an(name: str) -> str:
    return f"{'An' if name[0] in 'aeiou' else 'A'} {name}"


def electron_force(at: str, name: str, way: Direction | Towards | None, makes: str = "F") -> Step:
    """F = eE on an electron or a proton."""
    negative = name == "electron"
    return force_step(
        at,
        "e",
        makes,
        follows_field(makes, f"e*{at}", negative),
        sizes=(),
        direction=way,
        what="Find the force from the field",
        why=f"The charge of the {name} has the size e. " + along_or_against(negative),
        plain=(
            "The field says how hard one coulomb is pushed. An electron or a proton has only a tiny part of a coulomb."
        ),
    )


def acceleration(force: str, makes: str, mass: str, way: Direction | Towards | None) -> Step:
    """a = F/m from Newton's second law."""
    other = "m_p" if mass == "m_e" else "m_e"
    look = "Look again at the data sheet: electrons and protons have different masses."
    relation = NEWTON.renamed(F=force, m=mass, a=makes)
    return step(relation, makes, (Mistake("other-mass", makes, f"{force}/{other}", look),), direction=way)


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
