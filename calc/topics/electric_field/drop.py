"""A charged drop held at rest between plates, and what happens when the potential difference is changed.

mg = qE = neV/d; afterwards qE − mg = ma, upwards positive. Electrons come whole: below 20 of them the
number found must be within 0,1 of a whole number. Ranges and marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import cast

from calc.figures import Figure
from calc.language.printing import counted
from calc.model.answers import Direction, Mark
from calc.model.directions import ELECTRONS, SIGN_OF_CHARGE, UP_DOWN
from calc.model.questions import SA, Check, Data, Draw, Input, Mistake, Part, Plan, Question, Step, Values
from calc.model.relations import Relation
from calc.topics.coulomb.electrons import refuse_part_of_one
from calc.topics.electric_field.laws import COUNT, HELD, PLATES, step
from calc.topics.electric_field.plates import PLATES_ASK, between_plates
from calc.topics.electric_field.shared import (
    UNIFORM,
    by_value,
    field_along,
    field_way,
    gap,
    held_drop,
    in_air,
    memo,
    part_a_step,
    plates,
    school,
    typed_number,
    upper_plate,
    upper_sign,
    voltage,
    words_of,
)
from calc.topics.shared.electrostatics import EQUILIBRIUM, QUANTISATION, SECOND
from calc.topics.shared.quantities import among
from calc.working.chain import lead
from calc.working.working import run

SIGN_OF_DROP = SIGN_OF_CHARGE.worded(negative="the drop is negative", positive="the drop is positive")
NO_HOLD = (
    "No field can hold it: without a potential difference there is no field. Type a potential difference greater than"
    " zero."
)


def drop_sign(data: Data) -> int:
    """Negative below a positive upper plate: the electrostatic force must point upwards."""
    return -1 if data.choices["upper"] == "positive" else 1


def sign_key(data: Data) -> str:
    return "negative" if drop_sign(data) < 0 else "positive"


def drop_steps(data: Data) -> tuple[Step, ...]:
    """Every step about a drop at rest: n = q/e, E = V/d, mg = qE."""
    size = by_value(SIGN_OF_DROP, sign_key(data), "q")
    count = replace(
        COUNT, marks=SA, directions={"n": by_value(ELECTRONS, "excess" if drop_sign(data) < 0 else "lacking", "n")}
    )
    of_electrons = step(
        count,
        "q",
        what="The charge of these electrons",
        direction=size,
        why="Each electron carries e, so n of them carry n times e. This is the size of the charge.",
        plain="Count times the charge of one.",
    )
    held = replace(HELD, directions={"q": size, "E": field_way(data)})
    return (of_electrons, *between_plates(data).steps(), *held.steps(), step(count, "n", count=True))


def drop_parts(data: Data, asked: str) -> tuple[Part, ...]:
    """The calculations up to ``asked``, one part a step."""
    balanced = "Calculate the electric field that holds the drop."
    asks = {
        "E": ("field", PLATES_ASK["E"] if data.has("V") and data.has("d") else balanced),
        "q": ("charge", "Calculate the size of the charge on the drop."),
        "n": ("electrons", "Calculate how many electrons too many or too few the drop has."),
        "m": ("find", "Calculate the mass of the drop."),
        "V": ("find", "Calculate the potential difference that holds the drop."),
        "d": ("find", PLATES_ASK["d"]),
    }
    return part_a_step(lead(data.known, drop_steps(data), asked), asks)


def drop_scene(data: Data, *labels: str) -> Figure:
    """The drop between the plates. labels: what is written at the plates and between them."""
    return plates(upper_sign(data), labels or ("V", "d"), "drop", "-" if drop_sign(data) < 0 else "+")


def fbd_part() -> Part:
    return memo(
        "forces",
        "draw",
        "Draw a labelled free-body diagram of the drop at rest.",
        ("F_E upwards, from the dot, with a head and its label.", "upwards"),
        ("F_g (weight) downwards, as long as F_E.", "downwards"),
        figure=held_drop,
    )


def sign_part(data: Data) -> Part:
    sign = sign_key(data)
    way = words_of(field_along(data))
    return memo(
        "sign",
        "explain",
        "Is the charge on the drop positive or negative? Give a reason.",
        (f"{sign.capitalize()}.", sign),
        (
            (
                f"The electrostatic force must point upwards to balance the weight; the field points {way}, so the"
                f" force is {'opposite to' if sign == 'negative' else 'in the direction of'} the field."
            ),
            "upwards",
        ),
        asks_sign=True,
    )


UNBALANCED = (
    Mistake(
        "weight-forgotten",
        "a",
        "q*E_2/m",
        "You divided {q*E_2} alone by {m}. The weight still acts on the drop: subtract the smaller force"
        " from the larger first.",
    ),
    Mistake(
        "forces-added",
        "a",
        "(q*E_2 + m*g)/m",
        "You added the two forces. The weight acts downwards and {q*E_2} upwards: subtract the smaller from"
        " the larger.",
    ),
)


def changed_part(data: Data, values: dict[str, float]) -> tuple[Part, tuple[Check, ...]]:
    """The potential difference is changed: the drop accelerates. values: of the balanced drop."""
    more = values["V_2"] - values["V"]
    still = abs(more) <= 1e-9 * values["V"]
    up = more > 0 or still
    positive = "up" if up else "down"

    def way(found: Values) -> Direction | None:
        """By the values: a learner's own new field may turn it round."""
        rest = abs(found["a"]) <= 1e-9 * found["g"]
        return None if rest else UP_DOWN.by_sign(found["a"], positive)

    second = Relation(
        "q*E_2 - m*g = m*a" if up else "m*g - q*E_2 = m*a",
        what="Newton's second law",
        quotes=(SECOND.name,),
        why=(
            "The field is the same as before, so the forces still balance."
            if still
            else (
                f"The forces no longer balance. Take {positive} as positive:"
                f" {'the electrostatic force' if up else 'the weight'} is now the larger."
            )
        ),
        plain="What is left over of the two forces moves the drop.",
        units={"a": "m·s⁻²"},
        directions={"a": way},
        mistakes=() if still else UNBALANCED,
    )
    steps = (
        step(
            PLATES.renamed(E="E_2", V="V_2"),
            "E_2",
            marks=(Mark("substitution"),),
            what="The new field",
            why="The charge and the weight stay; only the field has changed.",
            direction=field_way(data, "E_2"),
        ),
        second.step("a"),
    )
    part = Part(
        "changed",
        "calculate",
        f"The potential difference is changed to {data.said['V_2']}. Calculate the acceleration of the drop at that"
        " moment.",
        steps,
    )
    check = Check(
        "Compare the forces: the electrostatic force grows in step with V",
        "a = g*(V_2/V - 1)" if up else "a = g*(1 - V_2/V)",
        "At first F_E = mg, so F_E is now V₂/V times mg. With V doubled the acceleration is g upwards.",
        tolerance=1e-6,
    )
    return part, (check,)


def drop_story(data: Data, body: str) -> str:
    facts = [f"{body} hangs at rest between two level metal plates; the upper plate is {data.choices['upper']}."]
    for name, words in (
        ("m", "Its mass is {}."),
        ("q", "Its charge has the size {}."),
        ("d", "The plates are {} apart."),
        ("V", "The potential difference between them is {}."),
    ):
        if data.has(name):
            facts.append(words.format(data.said[name]))
    if data.has("n"):
        facts.append(
            f"It has {data.said['n']} electron{'' if data.values['n'] == 1 else 's'} too"
            f" {'many' if drop_sign(data) < 0 else 'few'}."
        )
    return " ".join(facts)


def whole(n: float) -> int:
    """The nearest number of electrons a charged drop can have: at least one."""
    return max(1, round(n))


def whole_warning(n: float) -> tuple[str, ...]:
    if n < 20 and abs(n - whole(n)) > 0.1:
        return ("n is not near a whole number: a drop carries a whole number of electron charges, so check the data.",)
    return ()


def plan_drop(data: Data) -> Plan:
    """A drop at rest, its charge given or asked as a number of electrons or as a size."""
    asked, usual = data.asked, drop_parts(data, "n" if data.asked == "q" else data.asked)
    calculations = (replace(part, key="find") if part.answers == asked else part for part in usual)
    parts = [fbd_part(), sign_part(data), *calculations]
    plan = Plan(
        story=drop_story(
            data,
            data.pick(
                "A tiny charged oil drop",
                "A tiny charged drop of water",
                "A tiny charged drop of paint",
                later=(
                    "Through a microscope a charged droplet from a spray is watched: it",
                    "In a dark chamber a single charged drop, lit from the side,",
                ),
            ),
        ),
        parts=tuple(parts),
        values=dict(data.values),
        scene=lambda _: drop_scene(data),
    )
    return finish_drop(plan, data)


def finish_drop(plan: Plan, data: Data) -> Plan:
    """Checks, warnings and, with V_2 given, the part about the changed potential difference."""
    values = run(plan, data.settings.constants())
    checks = [
        Check(
            "Weight against electrostatic force, in one line", "m*g = q*V/d", "Both sides in newtons.", tolerance=1e-6
        )
    ]
    names = ["E"]
    if data.has("V_2"):
        part, more = changed_part(data, values)
        plan = replace(plan, parts=(*plan.parts, part))
        checks += more
        names.append("E_2")
    n = values["q"] / data.settings.constant("e")
    refuse_part_of_one(n, "q" if data.has("q") else None)
    notes: tuple[str, ...] = ()
    if not whole_warning(n) and n < 20 and "n" in values and data.asked != "m":
        notes = (f"n is whole: {counted(whole(n), 'electron')}.",)
    plan = replace(plan, checks=tuple(checks), warnings=(*plan.warnings, *whole_warning(n)), notes=notes)
    return in_air(plan, data, *names)


def mass() -> Input:
    return Input("m", "Mass of the drop", "kg", 1e-17, 1e-9, refusal="Mass must be greater than zero.")


def holding() -> Input:
    return replace(voltage(), refusal=NO_HOLD)


def electrons() -> Input:
    return Input(
        "n",
        "Electrons too many or too few",
        "",
        1,
        1e6,
        whole=True,
        refusal="The number of electrons must be greater than zero.",
    )


def size_of_charge() -> Input:
    return Input(
        "q",
        "Charge on the drop (size)",
        "C",
        1.5e-19,
        1e-12,
        refusal="Enter the size of the charge, greater than zero; its sign follows from the plates.",
    )


def changed_voltage() -> Input:
    return Input(
        "V_2",
        "Potential difference changed to, if at all",
        "V",
        1,
        5e4,
        over=None,
        optional=True,
        refusal="Potential difference cannot be negative: choose the sign of the upper plate instead.",
    )


def balanced_mass(n: int, volts: float, metres: float) -> str:
    """The mass that n electron charges hold, as typed text."""
    sheet = school("e", "g")
    return typed_number(n * sheet["e"] * volts / (sheet["g"] * metres), "kg")


def practise_drop(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Numbers that give a whole number of electrons, whatever is asked; V doubled, trebled or cut to a quarter
    from level 2 on."""
    draw = cast(Random, random)
    volts = draw.choice(among(random, (280, 350, 420, 490, 630, 840), range(280, 844, 4)))
    millimetres = draw.choice(among(random, (4, 5, 6, 8, 10), range(4, 11)))
    n = draw.choice((2, 3, 4) if level == 1 else (3, 5, 6, 7, 8))
    filled = {
        "m": balanced_mass(n, volts, millimetres / 1000),
        "n": str(n),
        "q": typed_number(n * school("e")["e"], "C"),
        "V": f"{volts} V",
        "d": f"{millimetres} mm",
        "V_2": "" if level == 1 else f"{draw.choice((2 * volts, volts // 4, 3 * volts))} V",
    }
    changed = {name: text for name, text in filled.items() if name in typed and (typed[name] or name == "V_2")}
    return {**typed, **changed}


LAWS = (EQUILIBRIUM.name, UNIFORM.name, QUANTISATION.name, SECOND.name)


def chances(*names: str) -> dict[str, Draw]:
    """The plates' sign; for the other data placeholders, which practise_drop replaces by numbers that fit."""
    units = {"m": "kg", "n": "", "q": "C", "V": "V", "d": "mm"}
    return {"upper": Draw(("positive", "negative")), **{n: Draw((1,), units[n]) for n in names}}


DROP = Question(
    key="drop",
    title="A charged drop held between plates",
    fields=(mass(), electrons(), holding(), gap(), upper_plate(), changed_voltage()),
    unknowns=("n", "m", "V", "d"),
    plan=plan_drop,
    constants=("e", "g"),
    laws=LAWS,
    example={"m": "4,8 x 10^-15 kg", "n": "", "V": "784 V", "d": "8 mm", "upper": "positive", "V_2": ""},
    draws=chances("m", "n", "V", "d"),
    adjust=practise_drop,
)

DROP_CHARGE = Question(
    key="drop-charge",
    title="A drop with a given charge held between plates",
    fields=(mass(), size_of_charge(), holding(), gap(), upper_plate(), changed_voltage()),
    unknowns=("V", "q", "m", "d"),
    plan=plan_drop,
    constants=("e", "g"),
    laws=LAWS,
    example={
        "m": "6,4 x 10^-15 kg",
        "q": "6,4 x 10^-19 C",
        "V": "",
        "d": "6 mm",
        "upper": "negative",
        "V_2": "1 176 V",
    },
    draws=chances("m", "q", "V", "d"),
    adjust=practise_drop,
)
