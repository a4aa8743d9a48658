"""A charge, its distance or its angle in a plane from a stated net force: by components, or its size, or both size
and direction.

Charge 1 at the origin, charge 2 on the +x axis, charge 3 on a line at the angle φ:
F_x = F₂₁ + F₃₁ cos φ, F_y = F₃₁ sin φ with a pull counted positive and a push negative, each from Coulomb's law.
The size alone leaves two answers: F_net² = (F₃₁ + F₂₁ cos φ)² + (F₂₁ sin φ)², along and across a joining line.
Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import cos, degrees, hypot, radians, sin
from random import Random
from typing import cast

from calc.figures import Figure, Force, tail_to_head
from calc.figures.charges import DISTANCES, Charge
from calc.figures.plane import charges_in_plane
from calc.language.printing import Style
from calc.model.answers import Point
from calc.model.constants import Settings
from calc.model.directions import LEFT_RIGHT, UP_DOWN
from calc.model.questions import Check, Data, Draw, Input, Part, Refusal, Values
from calc.topics.several_charges.shared import (
    NOISE,
    SUPERPOSITION,
    apart,
    charge,
    check,
    compass,
    explain,
    signed,
    size,
)
from calc.topics.several_charges.stated_laws import (
    SLACK,
    Second,
    along,
    by_angle,
    by_size,
    by_the_others,
    components,
    given,
    of_pair,
    only_size,
    per_coulomb,
    pulls,
    quarter,
    sign_of_first,
    stated_net,
)
from calc.topics.shared.electrostatics import COULOMB, refuse_zero_charge, state
from calc.working.declaring import Given, boxes
from calc.working.solving import Situation, question
from calc.working.working import measure

NOTHING_LEFT = (
    "Charge {} alone already gives this component, so there is nothing left for charge {} to do. Change the net force."
)
WRONG_WAY = (
    "Charge {} would have to {} charge 1, but {}: no distance fits. Change the sign of one of them, or the net force."
)
ON_THE_AXIS = "At {} charge 3 is on the x-axis as well: use a question about charges on a line, or change the angle."
NOT_THIS = (
    "This does not fit the other numbers: with the stated component along {} that along {} is {}. Correct it, or leave"
    " this box empty."
)
NOT_THERE = (
    "This direction does not fit the other numbers: no value of what is asked makes the net force point this way."
    " Correct it, or give one component instead."
)
NO_PUSH = (
    "For any charge 1 the other charges give no force along {}, so this component says nothing about it. Give the other"
    " component."
)
ZERO = "A net force of zero along {} would need a charge 1 of zero. Give a component that is not zero."
NO_CHARGE = (
    "Charge {} would exert no force on charge 1, so charge 1 would be zero. Change the net force, or the angle of"
    " charge 3."
)


# --- the question ---------------------------------------------------------------------------------------------------


def more_than_one(data: Data) -> Second:
    """What the size of the net force alone gives, or an angle."""
    if "phi" in data.asked_names:
        return by_angle(data)
    tags = [tag for tag in "23" if {f"Q{tag}", f"r_1{tag}"} & set(data.asked_names)]
    if only_size(data) and len(data.asked_names) == 1 and tags and data.has("phi"):
        return by_size(data, tags[0])
    return Second()


def situation(data: Data) -> Situation:
    refuse_zero_charge(data, "Q1", "Q2", "Q3")
    if quarter(data, "phi") in (0, 2, 4):
        raise Refusal("phi", ON_THE_AXIS.format(data.said["phi"]))
    own = by_the_others(data)
    if own:
        refuse_no_push(data)
    second = more_than_one(data)
    laws = per_coulomb(data) if own else (*second.laws, *along(data), of_pair(data, "2"), of_pair(data, "3"))
    return Situation(
        relations=(*laws, *components(data)),
        openings=OPENINGS,
        tell=TELL,
        ask={
            **{f"Q{n}": f"Calculate charge {n}, with its sign." for n in "123"},
            **{f"r_1{n}": f"Calculate the distance of charge {n} from charge 1." for n in "23"},
            **({"Q1": "Calculate the size of charge 1."} if own and only_size(data) else {}),
        },
        ways={"F_x": (LEFT_RIGHT, "right"), "F_y": (UP_DOWN, "up")},
        stated=(state(SUPERPOSITION),),
        later=lambda data, values: (*again(second), *later(data, values)),
        refuse=refuse,
        proofs=lambda values: proofs(data, values, second),
        scene=lambda _: scene(data),
    )


def again(second: Second) -> tuple[Part, ...]:
    """The other answer that fits."""
    if not second.steps:
        return ()
    name = second.steps[-1].makes
    which = {"Q": "charge, with its sign,", "r": "distance", "p": "angle"}[name[0]]
    return (Part("second", "calculate", f"Another {which} fits as well. Calculate it.", second.steps),)


OPENINGS = (
    (
        "Three small charged balls are fixed on a pegboard with x- and y-axes: charge 1 where the axes meet,"
        " charge 2 on the x-axis to the right of it, charge 3 off the axis."
    ),
    (
        "Three charged buttons lie on squared paper. Charge 1 is at the origin, charge 2 on the positive"
        " x-axis, charge 3 somewhere else on the paper."
    ),
    (
        "Charged foam beads are pinned to a board on which axes are drawn; charge 1 is at the origin, charge 2"
        " to the right of it on the x-axis, and charge 3 on a slanting line through charge 1."
    ),
)
TELL = {
    "Q1": "Charge 1 is {}.",
    "Q2": "Charge 2 is {}.",
    "r_12": "Charge 2 is {} from charge 1.",
    "Q3": "Charge 3 is {}.",
    "r_13": "Charge 3 is {} from charge 1.",
    "phi": "The line from charge 1 to charge 3 is at {}, counted anticlockwise from the +x axis.",
    "F_x": "The net force on charge 1 has a component along x of {}.",
    "F_y": "The net force on charge 1 has a component along y of {}.",
    "F_net": "The net force on charge 1 is {}.",
    "theta": "It points at {}, counted anticlockwise from the +x axis.",
}


def refuse_no_push(data: Data) -> None:
    """Charge 1 follows from a component only where the others give one."""
    v = data.values
    level, slanting = v["Q2"] / v["r_12"] ** 2, v["Q3"] / v["r_13"] ** 2 * cos(v["phi"])
    if abs(level + slanting) <= NOISE * abs(level) and not data.has("F_y"):
        raise Refusal("F_x" if data.has("F_x") else "F_net", NO_PUSH.format("x"))


def refuse(data: Data, values: Values) -> None:
    """No zero charge, no distance for a force that would point the wrong way, no components that contradict
    each other."""
    asked = set(data.asked_names)
    for axis in "xy" if by_the_others(data) else "":
        if f"E_{axis}" in values and values.get(f"F_{axis}") == 0:
            raise Refusal(f"F_{axis}" if data.has(f"F_{axis}") else "F_net", ZERO.format(axis))
    for tag, other in (("2", "3"), ("3", "2")):
        pull = f"F_{tag}1"
        if pull not in values or not {"Q1", f"Q{tag}", f"r_1{tag}"} & asked:
            continue
        if abs(values[pull]) <= NOISE * abs(values.get(f"F_{other}1", 0.0)):
            sentence = NO_CHARGE.format(tag) if "Q1" in asked else NOTHING_LEFT.format(other, tag)
            raise Refusal("F_x" if data.has("F_x") else None, sentence)
        way = pulls(data, tag)
        if way is None and given(data, f"Q{tag}"):
            way = -1 if sign_of_first(data, values) * data.values[f"Q{tag}"] > 0 else 1
            right = values[pull] * way > 0
        else:
            right = values[pull] > 0
        if way and not right:
            act = ("attract", "like charges repel") if way < 0 else ("repel", "unlike charges attract")
            raise Refusal(f"Q{tag}", WRONG_WAY.format(tag, *act))
    refuse_contradiction(data)


def refuse_contradiction(data: Data) -> None:
    """Both components for one unknown: one of them is enough, so the other must agree."""
    v, k = data.values, data.settings.constant("k")
    whole, (x, y) = data.has("F_net") and data.has("theta"), stated_net(data)
    if x is None or y is None or len(data.asked_names) > 1 or not given(data, "phi"):
        return
    phi = v["phi"]
    each = {n: -k * v[f"Q{n}"] / v[f"r_1{n}"] ** 2 for n in "23" if data.has(f"Q{n}") and data.has(f"r_1{n}")}
    if data.asked == "Q1":
        if len(each) < 2:
            return
        across, up = each["2"] + each["3"] * cos(phi), each["3"] * sin(phi)
        if abs(x * up - y * across) > SLACK * hypot(x, y) * hypot(across, up):
            raise Refusal(
                "theta" if whole else "F_y",
                NOT_THERE if whole else _not_this(data, "x", "y", up * x / across if across else 0.0),
            )
        return
    if not data.has("Q1"):
        return
    pull = {n: v["Q1"] * one for n, one in each.items()}
    scale = hypot(x, y) + sum(map(abs, pull.values()))
    if data.asked in ("Q3", "r_13"):
        if "2" not in pull:
            return
        if quarter(data, "phi") is None:
            other, wrong = (x - pull["2"]) / cos(phi) * sin(phi), ("x", "y")
            gap = other - y
        else:
            other, wrong = pull["2"], ("y", "x")
            gap = other - x
    elif "3" in pull:
        other, wrong = pull["3"] * sin(phi), ("x", "y")
        gap = other - y
    else:
        return
    if abs(gap) > SLACK * scale:
        raise Refusal("theta" if whole else f"F_{wrong[1]}", NOT_THERE if whole else _not_this(data, *wrong, other))


def _not_this(data: Data, right: str, wrong: str, value: float) -> str:
    return NOT_THIS.format(right, wrong, measure(value, "N", data.settings.style).text)


def proofs(data: Data, values: Values, second: Second) -> tuple[Check, ...]:
    """The stated component, or the size, once more from the answer put back with its sign."""
    if second.laws and only_size(data):
        made = {step.makes.removesuffix("b").removesuffix("_"): step.makes for step in second.steps}
        names = [{}, made] if made else [{}]
        signs = [pulls(data, tag) or 1 for tag in "23"]
        return tuple(
            check(
                "Put it back along both axes: the size of the net force must come out as stated",
                f"F_net^2 = ({signed([(signs[0], f), (signs[1], f'{g}*cos({phi})')])})^2 + ({g}*sin({phi}))^2",
            )
            for g, f, phi in ([named.get(n, n) for n in ("F_31", "F_21", "phi")] for named in names)
        )
    if not {"Q1", "Q2", "Q3", "r_12", "r_13", "phi", "F_x"} <= values.keys() or "Q1" in data.asked_names:
        return ()
    if any(abs(values["F_x"]) < 1e-3 * abs(values.get(f"F_{tag}1", 0.0)) for tag in "23"):
        return ()  # printed digits could not show a difference so small
    ways = [pulls(data, tag) or (1 if values.get(f"F_{tag}1", 1.0) > 0 else -1) for tag in "23"]
    terms = [(ways[0], "k*Q1*Q2/r_12^2")]
    if quarter(data, "phi") is None:
        terms.append((ways[1], "k*Q1*Q3*cos(phi)/r_13^2"))
    what = "Put everything back: the component along x must come out as stated"
    return (check(what, f"F_x = {signed(terms)}", "Plus for a pull, minus for a push.", ("Q1", "Q2", "Q3")),)


def later(data: Data, values: Values) -> tuple[Part, ...]:
    """The forces drawn where both are known; else why one component was enough."""
    if by_the_others(data):
        double = explain(
            "double",
            "Charge 1 is doubled, the others stay as they are. Explain what happens to the net force on it.",
            ("Each of the two forces is directly proportional to charge 1, so each doubles.", "doubles"),
            ("Their sum doubles too, and its direction stays the same.", "direction"),
        )
        sign = explain(
            "sign",
            "Explain why the sign of charge 1 does not follow from these data.",
            (
                "With the other sign each of the two forces on charge 1 turns round, and so does their sum.",
                "turns round",
            ),
            ("Its size stays the same, and only the size of the net force is given.", "size"),
        )
        return (sign, double) if only_size(data) else (double,)
    if {"F_21", "F_31"} <= values.keys():
        arrows = (
            "Arrow F₂₁ along the x-axis and arrow F₃₁ along the line through charges 1 and 3, each with head and label."
        )
        return (
            Part(
                "draw",
                "draw",
                "Draw the two forces on charge 1 head to tail, with their sum.",
                points=(Point(arrows), Point("The sum runs from the first tail to the last head.")),
                figure=lambda v: forces_figure(data, v),
            ),
        )
    return (
        explain(
            "enough",
            "Explain why the component along y is enough here.",
            ("Charge 2 is on the x-axis, so its force on charge 1 has no component along y.", "no component along y"),
            ("The whole component along y comes from charge 3.", "charge 3"),
        ),
    )


def forces_figure(data: Data, values: Values) -> Figure:
    """Both forces on charge 1 head to tail."""
    phi = degrees(values["phi"])
    drawn = []
    for tag, turn in (("2", 0.0), ("3", phi)):
        size = values[f"F_{tag}1"] * (pulls(data, tag) or 1)
        drawn.append(Force(f"F_{{{tag}1}}", abs(size), (turn + (0 if size > 0 else 180)) % 360))
    return tail_to_head(drawn, title="Sum of the forces on charge 1")


def scene(data: Data) -> Figure:
    """The three charges; a sign that is asked for is left out, and so is a distance."""
    phi = data.values["phi"] if given(data, "phi") else radians(60)
    gaps = {n: data.values.get(f"r_1{n}") for n in "23"}
    usual = next((gap for gap in gaps.values() if gap), 1.0)
    two, three = (gaps[n] or usual for n in "23")
    asked = set(data.asked_names)
    places = ((0.0, 0.0), (two, 0.0), (three * cos(phi), three * sin(phi)))
    bodies = [
        Charge(f"Q_{n}", data.values.get(f"Q{n}", 1.0), x, y, signed=f"Q{n}" not in asked and data.has(f"Q{n}"))
        for n, (x, y) in zip("123", places, strict=True)
    ]
    return charges_in_plane(
        bodies,
        distances=[(0, int(n) - 1, data.said.get(f"r_1{n}", f"r_{{1{n}}}")) for n in "23"],
        angle=(0.0, degrees(phi), "φ"),
        title="Three charges in a plane",
        notes=(
            *(() if all(gaps.values()) else (DISTANCES,)),
            *(() if given(data, "phi") else ("The angle φ is not drawn true.",)),
        ),
    )


NAMES = ("Q1", "Q2", "r_12", "Q3", "r_13", "phi", "F_x", "F_y", "F_net", "theta")


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Charges and places that give the net force told; of that one component first, later its size and direction."""
    draw = cast(Random, random)
    asked = next((n for n in NAMES if typed.get(n) == ""), "Q3")
    nano = {n: draw.choice((1, -1)) * draw.choice((2, 3, 4, 5, 6, 8, 9)) for n in ("Q1", "Q2", "Q3")}
    gap = {"r_12": draw.choice((15, 20, 25, 30)), "r_13": draw.choice((12, 18, 24, 30, 40))}
    phi = draw.choice((30, 40, 60, 120, 135, 150) if level < 3 else (35, 65, 110, 145, 210, 240, 310))
    k = Settings().constant("k")
    size = {n: -k * nano["Q1"] * nano[f"Q{n}"] * 1e-18 / (gap[f"r_1{n}"] / 100) ** 2 for n in "23"}
    x = size["2"] + size["3"] * cos(radians(phi))
    y = size["3"] * sin(radians(phi))
    told = {"F_x": f"{x * 1e6:.3g} µN", "F_y": f"{y * 1e6:.3g} µN"}
    whole = {"F_net": f"{(x * x + y * y) ** 0.5 * 1e6:.4g} µN", "theta": f"{degrees(compass_of(x, y)):.4g}°"}
    third = asked in ("Q3", "r_13", "Q1")
    if level == 1 or (level == 2 and draw.choice((True, False))):
        net = {"F_y" if third and draw.choice((True, False)) else "F_x": ""}
        net = {name: told[name] for name in net}
    else:
        net = whole
    boxes = {n: f"{q} nC" for n, q in nano.items()} | {n: f"{r} cm" for n, r in gap.items()}
    boxes = {**boxes, "phi": f"{phi}°", **net}
    boxes = {name: text.replace(".", ",") for name, text in boxes.items()}
    return {**typed, **{name: boxes.get(name, "") if name != asked else "" for name in NAMES}}


def compass_of(x: float, y: float) -> float:
    """The direction of a vector in radians, 0 up to a full turn."""
    return radians(compass(x, y, Style()).angle or 0.0)


def turn(name: str, words: str, help: str, example: str = "") -> Given:
    box = Input(name, words, "°", 1, 359, "Type an angle from 0° up to 360°.", over=None, under=360.0, help=help)
    return Given(box, TELL[name], example)


def component(name: str, words: str, help: str, example: str = "") -> Given:
    given = size(name, words, example)
    return replace(given, box=replace(given.box, signed=True, refusal="", help=help, result="measured"))


STATED = question(
    "stated",
    "A charge or its distance in a plane from a stated net force",
    situation,
    **boxes(
        charge("Q1", "Charge 1", "+4 nC"),
        charge("Q2", "Charge 2", "-6 nC"),
        apart("r_12", "Distance between charges 1 and 2", "20 cm"),
        charge("Q3", "Charge 3", "?"),
        apart("r_13", "Distance between charges 1 and 3", "30 cm"),
        turn("phi", "Angle of the line from charge 1 to charge 3", "anticlockwise from the +x axis", "60°"),
        component("F_x", "Net force along x", "to the left is negative", "4,4 uN"),
        component("F_y", "Net force along y", "downwards is negative"),
        size("F_net", "Net force (size)", ""),
        turn("theta", "Direction of the net force", "anticlockwise from the +x axis"),
        draws={name: Draw((1,)) for name in NAMES},
    ),
    unknowns=("Q3", "r_13", "Q2", "r_12", "Q1", "phi"),
    drawn=("Q3", "r_13", "Q2", "r_12", "Q1"),
    asks="Q3",
    laws=(SUPERPOSITION.name, COULOMB.name),
    constants=("k",),
    adjust=practise,
    since=2,
)
