"""Whole questions about electric fields: one set of data, parts that feed each other.

Two charges and a point beside them (field, electron, null point); a drop held between plates and
let go. The set-ups and their numbers are our own. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Charge, Figure, On, spheres_on_line
from calc.model.answers import Point
from calc.model.directions import LEFT_RIGHT
from calc.model.questions import Check, Data, Draw, Mistake, Part, Plan, Question, Refusal, Values
from calc.topics.electric_field.drop import (
    balanced_mass,
    changed_part,
    changed_voltage,
    drop_parts,
    drop_scene,
    fbd_part,
    holding,
    mass,
    sign_part,
    whole_warning,
)
from calc.topics.electric_field.laws import written
from calc.topics.electric_field.net import line_net, on_line
from calc.topics.electric_field.null import NONE, null_checks, null_steps, pair_pattern, rejected_place
from calc.topics.electric_field.particle import acceleration, electron_force
from calc.topics.electric_field.shared import (
    ADDING,
    DEFINE,
    FIELD,
    TEST_CHARGE,
    UNIFORM,
    by_value,
    define,
    field_along,
    gap,
    in_air,
    memo,
    pattern_part,
    refuse_zero,
    upper_plate,
    words_of,
)
from calc.topics.electric_field.sources import field_step
from calc.topics.several_charges.shared import Body, sideways
from calc.topics.shared.electrostatics import EQUILIBRIUM, QUANTISATION, SECOND, charge, distance
from calc.topics.shared.quantities import among
from calc.working.working import run

# --- two domes and a point -----------------------------------------------------------------------------------


NAMES = ("Q_A", "Q_B")


FROM_A = written(
    "r_A = D + r_B",
    "m",
    marks=(),
    what="Distance from dome A to P",
    why="P lies beyond B, so A is further away by the distance between the domes.",
    plain="Add the two stretches.",
    mistakes=(
        Mistake(
            "wrong-distance",
            "r_A",
            "D",
            "You used {D}, the distance between the domes. Measure from dome A to P: add {r_B}.",
        ),
    ),
)
NOT_UNIFORM = memo(
    "later",
    "explain",
    "May the equations of motion be used to find its speed further on? Give a reason.",
    ("No.",),
    (
        (
            "The field is not the same everywhere: it changes with the distance from the charges, so the force"
            " and the acceleration change as the electron moves."
        ),
        "changes with the distance",
    ),
)
ONCE_MORE = Check(
    "The net field once more, with the signs of the charges put in",
    "E_net = abs(k*(Q_A/r_A^2 + Q_B/r_B^2))",
    "Both domes are on the same side of P, so the signs alone settle the directions.",
    tolerance=1e-6,
)


def plan_domes(data: Data) -> Plan:
    refuse_zero(data, "Q_A", "Q_B")
    length, beyond = data.values["D"], data.values["r_B"]
    a, b = domes = (
        Body("A", data.values["Q_A"], 0.0, kind="dome"),
        Body("B", data.values["Q_B"], length, kind="dome"),
    )
    if a.charge == -b.charge:
        raise Refusal("Q_B", NONE)
    at = Body("P", 1.0, length + beyond, kind="point")
    k = data.settings.constant("k")
    sizes = [k * abs(a.charge) / at.x**2, k * abs(b.charge) / beyond**2]
    net, positive = line_net(domes, at, sizes)
    if not positive:
        raise Refusal("r_B", "P is the null point itself: no force acts there. Choose another distance.")
    first, second = (field_step(s, *on_line(s, at), s is a) for s in domes)
    parts = (
        DEFINE,
        arrows_part(domes, at),
        Part("net", "calculate", "Calculate the net electric field at P.", (FROM_A, first, second, net)),
        *electron_parts(positive),
        Part(
            "null",
            "calculate",
            "Find the point on the line through the domes where the net electric field is zero.",
            null_steps(a.charge, b.charge, NAMES),
            answer="x",
        ),
        pattern_part(
            "the two domes", lambda v: pair_pattern({**v, "Q1": v["Q_A"], "Q2": v["Q_B"]}), a.charge, b.charge
        ),
    )
    plan = Plan(
        story=data.pick(
            f"On a stand in a science museum two small metal domes, A and B, are {data.said['D']} apart. A carries"
            f" {data.said['Q_A']} and B {data.said['Q_B']}. A sensor sits at P, on the line through the domes,"
            f" {data.said['r_B']} beyond B on the side away from A.",
            f"For a show about lightning two small metal domes, A ({data.said['Q_A']}) and B ({data.said['Q_B']}),"
            f" stand {data.said['D']} apart on plastic rods. P is a point on the line through A and B,"
            f" {data.said['r_B']} beyond B.",
            later=(
                (
                    f"Two small metal domes, A and B, stand on a laboratory bench, {data.said['D']} from each other; a"
                    f" charge of {data.said['Q_A']} was put on A and one of {data.said['Q_B']} on B. On the line from A"
                    f" through B the field is explored at P, {data.said['r_B']} beyond B."
                ),
            ),
        ),
        parts=parts,
        values=dict(data.values),
        scene=lambda v: domes_figure(v, domes, at, False),
        checks=(
            ONCE_MORE,
            *null_checks(a.charge, b.charge, NAMES),
        ),
        notes=dropped_root(a, b),
    )
    return in_air(plan, data, "E_A", "E_B", "E_net")


def arrows_part(domes: tuple[Body, Body], at: Body) -> Part:
    """Both fields at P as arrows."""
    arrows = (
        f"Arrow E_{s.tag} at P points {'away from' if s.charge > 0 else 'towards'} dome {s.tag}, {on_line(s, at)[1]}."
        for s in domes
    )
    return Part(
        "arrows",
        "draw",
        "Draw the field of each dome at P as an arrow.",
        points=tuple(Point(arrow, 1) for arrow in arrows),
        figure=lambda v: domes_figure(v, domes, at, True),
    )


def dropped_root(a: Body, b: Body) -> tuple[str, ...]:
    """Where the root lies that is no null point; equal charges have none."""
    if a.charge == b.charge:
        return ()
    where = rejected_place(a.charge, b.charge).split(" (")[0]
    return (
        f"The other root lies {where}: there the fields are equal in size but point the same way, so it is rejected.",
    )


def electron_parts(positive: str) -> tuple[Part, ...]:
    """What the net field does to an electron at P, and for how long that holds."""
    return (
        Part(
            "force",
            "calculate",
            "A stray electron passes through P. Calculate the electrostatic force on it.",
            (electron_force("E_net", "electron", by_value(LEFT_RIGHT, positive, "E_net", sign=-1)),),
        ),
        Part(
            "acceleration",
            "calculate",
            "Calculate the acceleration of the electron at P.",
            (acceleration("F", "a", "m_e", by_value(LEFT_RIGHT, positive, "F", sign=-1)),),
        ),
        NOT_UNIFORM,
    )


def domes_figure(v: Values, domes: tuple[Body, Body], at: Body, arrows: bool) -> Figure:
    forces = [On(2, f"E_{s.tag}", v[f"E_{s.tag}"], sideways(s, at) > 0, "field") for s in domes]
    return spheres_on_line(
        [Charge(s.tag, s.charge, s.x, shows=(s.name,)) for s in domes],
        points=[("P", at.x)],
        forces=forces if arrows else (),
        distances=[] if arrows else [(0, 1, "D"), (1, 2, "r_B")],
        title="Fields at P" if arrows else "Two domes and the point P",
    )


DOMES = Question(
    key="museum-domes",
    title="Two domes in a museum",
    fields=(
        charge("Q_A", "Charge on A"),
        charge("Q_B", "Charge on B"),
        distance("D", "Distance between the domes"),
        distance("r_B", "Distance from B to P"),
    ),
    plan=plan_domes,
    constants=("e", "k", "m_e", "m_p"),
    laws=(FIELD.name, TEST_CHARGE.name, ADDING.name, SECOND.name),
    example={"Q_A": "+45 nC", "Q_B": "-20 nC", "D": "40 cm", "r_B": "20 cm"},
    draws={
        "Q_A": Draw((25, 36, 49, -25, -36), "nC", harder=(18, 32, -54, -27)),
        "Q_B": Draw((-9, -16, 4, 9), "nC", harder=(-8, -12, 6, 15)),
        "D": Draw((20, 30, 40, 50), "cm"),
        "r_B": Draw((10, 15, 20, 30), "cm", harder=(8, 12, 25)),
    },
    scenario=True,
)

# --- a drop let go ---------------------------------------------------------------------------------------------------


def plan_sprayer(data: Data) -> Plan:
    base = Plan(
        story=data.pick(
            f"In a school workshop a paint sprayer is tested. A charged drop of {data.said['m']} is seen hanging at"
            f" rest between two level plates {data.said['d']} apart. The potential difference between the plates is"
            f" {data.said['V']}; the upper plate is {data.choices['upper']}.",
            f"A charged drop of {data.said['m']} from a garden mister hangs still between two level metal plates,"
            f" {data.said['d']} apart, with {data.said['V']} between them. The upper plate is {data.choices['upper']}.",
            later=(
                (
                    f"In an experiment two level plates are {data.said['d']} apart and the upper one is"
                    f" {data.choices['upper']}. At a potential difference of {data.said['V']} a charged ink drop of"
                    f" {data.said['m']} stays where it is between them."
                ),
            ),
        ),
        parts=(
            define(UNIFORM, "Describe the electric field between the plates in words."),
            fbd_part(),
            sign_part(data),
            *drop_parts(data, "n"),
        ),
        values=dict(data.values),
        scene=lambda _: drop_scene(data, data.said["V"], data.said["d"]),
    )
    values = run(base, data.settings.constants())
    changed, more = changed_part(data, values)
    apart = memo(
        "apart",
        "explain",
        f"The potential difference is set back to {data.said['V']}; then the plates are moved a little further apart"
        " with the supply still connected. What happens to the drop? Explain.",
        ("V stays the same and d increases, so E = V/d decreases.", "decreases"),
        ("The electrostatic force qE becomes smaller than the weight.", "smaller than the weight"),
        ("The net force is downwards, so the drop accelerates downwards.", "downwards"),
    )
    plan = replace(
        base,
        parts=(*base.parts, changed, apart),
        checks=(
            Check(
                "Weight against electrostatic force, in one line",
                "m*g = n*e*V/d",
                "Both sides in newtons.",
                tolerance=1e-6,
            ),
            *more,
        ),
        warnings=whole_warning(values["n"]),
        notes=(f"The field points {words_of(field_along(data))}; the electrostatic force on the drop points upwards.",),
    )
    return in_air(plan, data, "E", "E_2")


def practise_sprayer(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """A whole number of electrons; the potential difference doubled, trebled or half as much again."""
    draw = cast(Random, random)
    volts = draw.choice(among(random, (350, 420, 490, 560, 700), range(350, 705, 5)))
    millimetres = draw.choice(among(random, (4, 5, 6, 8, 10), range(4, 11)))
    n = draw.choice((2, 3, 4) if level == 1 else (5, 6, 7, 8))
    factor = 2 if level == 1 else draw.choice((2, 3, 1.5))
    return {
        **typed,
        "m": balanced_mass(n, volts, millimetres / 1000),
        "V": f"{volts} V",
        "d": f"{millimetres} mm",
        "V_2": f"{volts * factor:.0f} V",
    }


SPRAYER = Question(
    key="paint-drop",
    title="A drop from a paint sprayer",
    fields=(
        mass(),
        holding(),
        gap(),
        upper_plate(),
        replace(changed_voltage(), words="Potential difference changed to", optional=False),
    ),
    plan=plan_sprayer,
    constants=("e", "g"),
    laws=(UNIFORM.name, EQUILIBRIUM.name, QUANTISATION.name, SECOND.name),
    example={"m": "8 x 10^-15 kg", "V": "588 V", "d": "6 mm", "upper": "positive", "V_2": "1 176 V"},
    draws={"upper": Draw(("positive", "negative"))},
    adjust=practise_sprayer,
    scenario=True,
)
