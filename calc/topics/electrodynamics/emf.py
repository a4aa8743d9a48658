"""Faraday's law: the emf while field, area, angle or flux change, and every quantity of it, two final values included.

ε = −N ΔΦ/Δt with Φ = BA cos θ: data-sheet equations; sizes are worked out, the minus sign is told in words. Mistakes
and marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import cos, degrees, inf, pi, sin
from random import Random
from typing import cast

from calc.figures import Figure
from calc.figures.coils import coil_in_field
from calc.figures.words import listing
from calc.model.answers import Mark
from calc.model.questions import A, Choice, Data, Mistake, Part, Refusal, Step, Values
from calc.model.relations import Relation, Said
from calc.topics.electrodynamics.flux import (
    SHAPE,
    SQUARE_ASKED,
    SQUARE_TOLD,
    THROUGH,
    TILTED,
    TOO_MUCH,
    felt,
    shaped,
    wanted,
)
from calc.topics.electrodynamics.laws import (
    FARADAY,
    FLUX,
    area,
    change_time,
    emf,
    flux,
    from_normal,
    magnetic_field,
    turns,
)
from calc.topics.electrodynamics.numbers import asked_of, number, typed_as, units_of
from calc.working.declaring import boxes, state, told
from calc.working.solving import Limit, Situation, question

NO_CHANGE = (
    "No change, no emf: the flux is the same before and after, so the emf is zero. Type two different fluxes, or leave"
    " the emf to be found."
)
NO_EMF = "An emf of zero means that the flux did not change, whatever the time and the turns. Type an emf above zero."
NO_END = (
    "No position or field fits: this emf needs more flux than the coil can have, or flux of the other sign. Check the"
    " emf, the time, the turns, and whether the flux becomes larger or smaller."
)
WRONG_PLANE = "The angle with the plane lies from 0° to 90°."
EACH_TURN = "You left out the turns. Each turn contributes the same emf: multiply by {N}."
FINAL_ONLY = "You used the final flux. The law has the change, final minus initial: use {Phi_2 - Phi_1}."
TIME_OVER = "You multiplied by the time. It is the change in each second that counts: divide by {Deltat}."
INDUCED = Relation(
    "epsilon = N*DeltaPhi/Deltat",
    what="Use Faraday's law",
    why=(
        "The law is ε = −NΔΦ/Δt. The minus sign says that the emf opposes the change; for its size only the size of ΔΦ"
        " goes in."
    ),
    plain="The faster the flux changes, and the more turns it changes through, the larger the emf.",
    units={"epsilon": "V", "N": "", "DeltaPhi": "Wb", "Deltat": "s"},
    sizes=("DeltaPhi",),
    quotes=(FARADAY.name,),
    said={"N": Said(count=True)},
    mistakes=(
        Mistake("turns-left-out", "epsilon", "abs(DeltaPhi)/Deltat", EACH_TURN, "the answer is {1/N} of the right one"),
        Mistake("final-flux-only", "epsilon", "N*abs(Phi_2)/Deltat", FINAL_ONLY),
        Mistake("time-multiplied", "epsilon", "N*abs(DeltaPhi)*Deltat", TIME_OVER),
        Mistake("turns-left-out", "Deltat", "abs(DeltaPhi)/epsilon", EACH_TURN),
        Mistake("final-flux-only", "Deltat", "N*abs(Phi_2)/epsilon", FINAL_ONLY),
        Mistake("final-flux-only", "N", "epsilon*Deltat/abs(Phi_2)", FINAL_ONLY),
        Mistake(
            "turns-left-out",
            "DeltaPhi",
            "epsilon*Deltat",
            "You left out the turns. Each turn contributes to the emf, so the change through one is smaller: divide by"
            " {N}.",
        ),
    ),
)
CHANGED = Relation(
    "DeltaPhi = Phi_2 - Phi_1",
    what="Final minus initial flux",
    why="A change is always final minus initial; where the flux becomes smaller it is negative.",
    plain="What is there afterwards, less what was there before.",
    units={"DeltaPhi": "Wb", "Phi_2": "Wb", "Phi_1": "Wb"},
    marks=A,
    said={
        "Phi_2": Said("The final flux", "Initial flux and change together give the final flux.", "Add the change."),
        "Phi_1": Said("The initial flux", "Take the change away from the final flux.", "Go back by the change."),
    },
)
TURNED_BY = Mistake(
    "angle-difference",
    "DeltaPhi",
    "B*A*cos(alpha_2 - alpha)",
    "You put the angle turned into the cosine. Work out the flux at each of the two angles, then subtract.",
)
AGAIN = {"B": "B_2", "A": "A_2", "alpha": "alpha_2"}
SELF = {name: name for name in AGAIN}
SI = {"B": "T", "A": "m²", "alpha": "°"}
SHAPES = ("r", "D", "s", "s2")
FIRST = Said("The flux at first", marks=(Mark("formula"), Mark("substitution")))
LAST = Said("The flux afterwards", marks=())  # its mark is that of the change
LATER_NAMES = tuple(AGAIN.values())
WHAT = {"B_2": "the magnetic field", "A_2": "the area of the coil", "alpha_2": "the angle of the coil"}
OPEN = ("DeltaPhi", "Phi_1", "Phi_2", *AGAIN, *LATER_NAMES, *SHAPES)
MEASURED = Choice(
    "measured",
    "The angles are measured from",
    (("normal", "the normal of the coil"), ("plane", "the plane of the coil")),
    quiet=("normal",),
)
GROWS = Choice(
    "grows",
    "While the emf acts, the flux",
    (("less", "becomes smaller"), ("more", "becomes larger"), ("either", "is only said to change: both are worked")),
    asked=OPEN,
)
coil_angle = replace(
    from_normal, refusal="The angle lies from 0° to 180°.", help="with the normal or the plane, as chosen"
)
BOXES = (
    turns(
        "N",
        "Number of turns",
        "The coil has {} turns.",
        "200; 50 100 200 400; 120 250 360",
        told_at={1.0: "The coil is a single turn."},
    ),
    magnetic_field("B", "Magnetic field at first", "", "0,5 T; 0,2 0,4 0,5 0,8; 0,15 0,35 0,65"),
    magnetic_field(
        "B_2",
        "Magnetic field afterwards (if it changes)",
        "The magnetic field becomes {}.",
        "0,1 T; 0,1 0,2 0,3; 0,05 0,12",
    ),
    area("A", "Area of the coil", "", "0,01 m^2; 20 40 50 80 cm^2; 35 64 125", unit="m²"),
    area(
        "A_2", "Area afterwards (if it changes)", "The area of the coil becomes {}.", "; 10 15 cm^2; 8 12", unit="cm²"
    ),
    *SHAPE,
    coil_angle("alpha", "Angle of the field at first", "", "30°; 15 20 30; 12 25 35"),
    coil_angle("alpha_2", "Angle afterwards (if it changes)", "", "; 60 75 85 °; 55 70"),
    flux(
        "Phi_1",
        "Flux at first",
        "At first the flux through the coil is {}.",
        "; 2 4 6 mWb",
        unit="mWb",
        result="measured",
    ),
    flux(
        "Phi_2",
        "Flux afterwards",
        "Afterwards the flux through the coil is {}.",
        "; 0 1 9 mWb",
        unit="mWb",
        result="measured",
    ),
    flux("DeltaPhi", "Change in flux", "The flux through the coil changes by {}.", "?", unit="mWb", result="measured"),
    change_time("Deltat", "Time the change takes", "The change takes {}.", "0,2 s; 0,1 0,2 0,5; 0,12 0,25", unit="s"),
    emf(
        "epsilon",
        "Induced emf (size)",
        "The average induced emf is {}.",
        "?",
        ask="Calculate the size of the average emf induced in the coil.",
        result="measured",
    ),
)
UNITS = units_of(BOXES)


def told_as(data: Data) -> dict[str, str]:
    """The sentences of the data that hang on what changes and on how the angles are measured."""
    names = wanted(data)
    line = "plane" if data.choices["measured"] == "plane" else "normal"
    angle = f"the angle between the field and the {line} of the coil"
    base = told(BOXES).tell
    return {
        **base,
        "B": "At first the magnetic field is {}." if "B_2" in names else "The magnetic field is {}.",
        "A": "At first the coil has an area of {}." if "A_2" in names else "The coil has an area of {}.",
        "alpha": f"At first {angle} is {{}}." if "alpha_2" in names else f"T{angle[1:]} is {{}}.",
        "alpha_2": f"Afterwards {angle} is {{}}.",
        "s": base["s"] if "s2" in names else SQUARE_TOLD,
    }


def asked_as(data: Data) -> dict[str, str]:
    """What is asked of field, area and angle: at first and afterwards, or at all where it stays the same."""
    names = wanted(data)
    line = "plane" if data.choices["measured"] == "plane" else "normal"
    words = {
        "B": "the magnetic field",
        "A": "the area of the coil",
        "alpha": f"the angle between the field and the {line} of the coil",
    }
    ask = dict(told(BOXES).ask)
    for one, two in AGAIN.items():
        ask[one] = f"Calculate {words[one]}{' at first' if two in names else ''}."
        ask[two] = f"Calculate {words[one]} afterwards."
    return {**ask, "s": ask["s"] if "s2" in names else SQUARE_ASKED}


def fluxes(data: Data) -> tuple[Relation, ...]:
    """The flux at first and, where something of it changes, afterwards; from the plane by way of the normal."""
    names = wanted(data)
    changed = {one: two if two in names else one for one, two in AGAIN.items()}
    made, plane = list[Relation](), data.choices["measured"] == "plane"
    places = [("Phi_1", SELF)]
    if any(two in names for two in LATER_NAMES):
        places.append(("Phi_2", changed))
    for flux_, called in places:
        theta = called["alpha"].replace("alpha", "theta") if plane else called["alpha"]
        through = THROUGH.renamed(Phi=flux_, B=called["B"], A=called["A"], theta=theta)
        kept = felt(through.mistakes, data.values.get(called["alpha"]), plane)
        made.append(replace(through, mistakes=kept, said={flux_: FIRST if flux_ == "Phi_1" else LAST}))
        if plane:
            made.append(TILTED.renamed(theta=theta, beta=called["alpha"]))
    return tuple({one.law: one for one in made}.values())


def known_flux(data: Data, which: int) -> float | None:
    """The flux at first (1) or afterwards (2), where the data have it."""
    v = data.values
    if f"Phi_{which}" in v:
        return v[f"Phi_{which}"]
    called = AGAIN if which == 2 else SELF
    parts = [v.get(two if two in wanted(data) else one) for one, two in called.items()]
    if any(part is None for part in parts):
        return None
    field, area_, angle = cast(list[float], parts)
    return field * area_ * (sin(angle) if data.choices["measured"] == "plane" else cos(angle))


def factored(data: Data) -> tuple[Relation, ...]:
    """The change in flux with what stays the same in front of a bracket, to find one of those."""
    names = wanted(data)
    same = [one for one, two in AGAIN.items() if two not in names]
    if len(same) == len(AGAIN):
        return ()
    angle = "theta" if data.choices["measured"] == "plane" else "alpha"

    def written(name: str) -> str:
        return f"cos({name.replace('alpha', angle)})" if name.startswith("alpha") else name

    front = "*".join(map(written, same))
    after, before = ("*".join(written(called[one]) for one in AGAIN if one not in same) for called in (AGAIN, SELF))
    return (
        Relation(
            f"DeltaPhi = {front}*({after} - {before})",
            what="The change in flux, with what stays the same in front",
            why="Both fluxes are BA cos θ; what does not change is a factor of both and stands before the bracket.",
            plain="Only what differs before and after stands in the bracket.",
            units={angle if one == "alpha" else one: SI[one] for one in same},
        ),
    )


def steps_of_change(data: Data) -> int:
    """+1 where the flux becomes larger, -1 where it becomes smaller."""
    before, after = known_flux(data, 1), known_flux(data, 2)
    if before is not None and after is not None:
        return 1 if after >= before else -1
    bracket = in_bracket(data)
    if not open_end(data) and bracket:
        return 1 if bracket > 0 else -1
    if data.choices["grows"] == "either":
        return 1 if possible(data, 1) else -1
    return 1 if data.choices["grows"] == "more" else -1


def in_bracket(data: Data) -> float:
    """What is in the bracket where something else in front of it is asked; 0 where it cannot be known."""
    v = data.values
    sizes = list[float]()
    turn = sin if data.choices["measured"] == "plane" else cos
    for called in (AGAIN, SELF):
        size = 1.0
        for one in AGAIN:
            name = called[one] if AGAIN[one] in wanted(data) else one
            value = v.get(name)
            if value is None and name != one:
                return 0.0
            if one == "alpha" and value is not None:
                value = turn(value)
            size *= 1.0 if value is None else value
        sizes.append(size)
    return sizes[0] - sizes[1]


def open_end(data: Data) -> str:
    """What is asked of one end of the change alone: a flux, or what changes; '' for anything else."""
    names = wanted(data)
    ends = {"DeltaPhi", "Phi_1", "Phi_2"} | {name for one, two in AGAIN.items() if two in names for name in (one, two)}
    if "A" in ends:
        ends |= set(SHAPES)
    return next((name for name in data.asked_names if name in ends), "")


def possible(data: Data, sign: int) -> bool:
    """Whether a change of this sign leaves what is asked of one end a value."""
    v, name = data.values, open_end(data)
    if not {"epsilon", "Deltat", "N"} <= v.keys() or name in ("", "DeltaPhi", "Phi_1", "Phi_2"):
        return True
    first = name in AGAIN or name in SHAPES
    other = known_flux(data, 2 if first else 1)
    if other is None:
        return True
    change = sign * v["epsilon"] * v["Deltat"] / v["N"]
    return fits(data, name, other - change if first else other + change)


def fits(data: Data, name: str, through: float) -> bool:
    """Whether this flux can be that of a coil of which ``name`` is asked."""
    v, plane = data.values, data.choices["measured"] == "plane"
    first = name in AGAIN
    called = {one: one if first or two not in wanted(data) else two for one, two in AGAIN.items()}
    if name.startswith("alpha"):
        most = v.get(called["B"], inf) * v.get(called["A"], inf)
        return (0 if plane else -most) <= through <= most
    angle = v.get(called["alpha"])
    if angle is None:
        return True
    return through * (sin(angle) if plane else cos(angle)) >= 0


def other_end(data: Data, values: Values) -> tuple[Part, ...]:
    """The other final (or initial) value, where the flux is only said to change."""
    name = open_end(data)
    known = {"Phi_1", "Phi_2", "DeltaPhi"} <= values.keys()
    if data.choices["grows"] != "either" or data.has("DeltaPhi") or not known or name in ("", "DeltaPhi", *SHAPES):
        return ()
    first = name in AGAIN or name == "Phi_1"
    through = values["Phi_2"] + values["DeltaPhi"] if first else values["Phi_1"] - values["DeltaPhi"]
    if values["DeltaPhi"] <= 0 or not (name.startswith("Phi") or fits(data, name, through)):
        return ()
    back = Relation(
        "Phi_3 = Phi_2 + DeltaPhi" if first else "Phi_3 = Phi_1 - DeltaPhi",
        what="The flux becomes smaller by as much",
        why="The size of the emf does not tell whether the flux becomes larger or smaller, so both are possible.",
        plain="The same change the other way.",
        units={"Phi_3": "Wb"},
        marks=A,
    )
    steps: list[Step] = [back.step("Phi_3")]
    if not name.startswith("Phi"):
        steps += from_third(data, name)
    asked = {"Phi": "the flux", "B": "the magnetic field", "A": "the area of the coil", "alpha": "the angle"}[
        name.partition("_")[0]
    ]
    when = "at first" if first else "afterwards"
    return (
        Part(
            "other",
            "calculate",
            f"The flux may also have become smaller. Calculate {asked} {when} in that case.",
            tuple(steps),
        ),
    )


def from_third(data: Data, name: str) -> list[Step]:
    """From the other flux to what is asked."""
    kind, plane = name.partition("_")[0], data.choices["measured"] == "plane"
    names = wanted(data)
    called = {one: one if name in AGAIN or two not in names else two for one, two in AGAIN.items()}
    called[kind] = f"{kind}_3"
    theta = called["alpha"].replace("alpha", "theta") if plane else called["alpha"]
    through = THROUGH.renamed(Phi="Phi_3", B=called["B"], A=called["A"], theta=theta)
    if kind != "alpha":
        return [through.step(called[kind])]
    if not plane:
        return [through.step(theta)]
    return [through.step(theta), TILTED.renamed(theta=theta, beta=called["alpha"]).step(called["alpha"])]


def opening(data: Data) -> tuple[str, ...]:
    """Three beginnings: what changes, and which way where that is not seen from the numbers."""
    changed = [WHAT[name] for name in LATER_NAMES if name in wanted(data)]
    what = listing(changed) if changed else "the flux through it"
    verb = "change" if len(changed) > 1 else "changes"
    end = ""
    if open_end(data) and data.has("epsilon") and not data.has("DeltaPhi"):
        end = {"less": " The flux becomes smaller.", "more": " The flux becomes larger.", "either": ""}[
            data.choices["grows"]
        ]
    said = f"{what} {verb}, and an emf is induced.{end}"
    return (
        f"A flat coil is in a uniform magnetic field. Then {said}",
        f"For an experiment a coil is held in a uniform magnetic field; {said}",
        f"A coil of thin wire is joined to a voltmeter and put into a uniform magnetic field. Then {said}",
    )


def warn(v: Values) -> tuple[str, ...]:
    """Turns that came out as no whole number."""
    count = v.get("N", 1.0)
    if abs(count - round(count)) <= 1e-6 * count:
        return ()
    exact = f"{count:.2f}".replace(".", ",")
    return (f"Turns are counted, and {exact} is no whole number: take {round(count)} turns, or check the numbers.",)


def scene(v: Values) -> Figure:
    """The coil edge-on, at its angle or at one of our own, and turned where it is turned."""
    plane = "theta" in v
    before = v.get("theta" if plane else "alpha")
    after = v.get("theta_2" if plane else "alpha_2")
    shows = tuple(name for name in ("alpha", "alpha_2", "theta", "theta_2") if name in v)
    label = "" if plane else "α"
    return coil_in_field(
        40.0 if before is None else degrees(before),
        label,
        after=None if after is None or after == before else degrees(after),
        after_label="" if plane else "α_2",
        plane="α" if plane and before is not None else "",
        shows=shows,
    )


def situation(data: Data) -> Situation:
    """The coil as it is told, and the sign of the change."""
    v = data.values
    if data.has("epsilon") and not v["epsilon"]:
        raise Refusal("epsilon", NO_EMF)
    if data.choices["measured"] == "plane":
        for name in ("alpha", "alpha_2"):
            if v.get(name, 0.0) > pi / 2 * 1.000001:
                raise Refusal(name, WRONG_PLANE)
    step = INDUCED.step("DeltaPhi")
    if steps_of_change(data) < 0:
        step = replace(
            step,
            law="epsilon = -N*DeltaPhi/Deltat",
            make="DeltaPhi = -epsilon*Deltat/N",
            why="The flux becomes smaller, so ΔΦ is negative, and the minus sign of the law makes the emf positive.",
        )
    changed = replace(CHANGED, mistakes=(TURNED_BY,)) if {"alpha_2"} == wanted(data) & set(LATER_NAMES) else CHANGED
    return replace(
        told(BOXES),
        tell=told_as(data),
        ask=asked_as(data),
        relations=(
            replace(INDUCED, by_hand={"DeltaPhi": step}),
            changed,
            *fluxes(data),
            *factored(data),
            *shaped(data),
        ),
        openings=opening(data),
        unfit={
            "N": NO_CHANGE,
            "Deltat": NO_CHANGE,
            **dict.fromkeys(("B_2", "A_2", "alpha", "alpha_2", "theta", "theta_2"), NO_END),
        },
        limits=(Limit("1.000001*B*A - abs(Phi_1) + 1e-300", TOO_MUCH, at="Phi_1"),),
        stated=(state(FARADAY),),
        later=other_end,
        warn=warn,
        scene=scene,
        notes=("The direction of the current follows from opposing the change; the size does not need it.",),
    )


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """One thing that changes, and an emf that fits."""
    draw = cast(Random, random)
    names = [one.box.name for one in BOXES]
    asked = asked_of(random, "epsilon")
    kind = asked if asked in LATER_NAMES else draw.choice(LATER_NAMES)
    if asked in ("N", "Phi_1", "Phi_2", "DeltaPhi"):
        return with_fluxes(typed, asked, draw)
    shape = asked if asked in SHAPES else draw.choice(("A", "r", "D", "s")) if kind != "A_2" and asked != "A" else "A"
    if asked in ("A", *SHAPES) and kind == "A_2":
        kind = "B_2"
    given = {"N", "B", "alpha", "Deltat", kind, shape} | ({"s"} if shape == "s2" else set())
    usual = {"B": 0.5, "A": 4e-3, "alpha": 0.0, "B_2": 0.1, "A_2": 1e-3, "alpha_2": pi / 3, "N": 200.0, "Deltat": 0.1}
    world = {name: number(typed, name, UNITS) if typed[name] else usual.get(name, 0.08) for name in given}
    sides = world.get("s", 0.0) * world.get("s2", world.get("s", 0.0))
    world["A"] = world.get("A") or pi * (world.get("r") or world.get("D", 0.0) / 2) ** 2 or sides
    turn = sin if typed["measured"] == "plane" else cos
    first, last = (
        world[called["B"] if called["B"] in world else "B"]
        * world[called["A"] if called["A"] in world else "A"]
        * turn(world[called["alpha"] if called["alpha"] in world else "alpha"])
        for called in (SELF, AGAIN)
    )
    out = {**typed, **{name: "" for name in names if name not in given or name == asked}}
    if typed["grows"] != "either" or level < 3:
        out["grows"] = "more" if last > first else "less"
    if asked == "epsilon":
        return out
    return {**out, "epsilon": typed_as(world["N"] * abs(last - first) / world["Deltat"], "V")}


def with_fluxes(typed: dict[str, object], asked: str, draw: Random) -> dict[str, object]:
    """Fluxes told as they are; with turns to be found an emf that gives back a whole number."""
    usual = {"N": draw.choice(range(40, 400, 20)), "Phi_1": 4e-3, "Phi_2": 1e-3}
    if asked == "N":
        first, last = draw.choice(((6, 1), (2, 5), (8, 4), (3, 9)))
        typed = {
            **typed,
            "Phi_1": f"{first} mWb",
            "Phi_2": f"{last} mWb",
            "Deltat": f"{draw.choice((0.1, 0.2, 0.5))} s",
        }
    world = {name: number(typed, name, UNITS) if typed[name] else value for name, value in usual.items()}
    change = world["Phi_2"] - world["Phi_1"]
    kept = {"N", "Phi_1", "Phi_2", "Deltat"} - {asked} - ({"Phi_1", "Phi_2"} if asked == "DeltaPhi" else set())
    emf_ = typed_as(world["N"] * abs(change) / number(typed, "Deltat", UNITS), "V", 6 if asked == "N" else 3)
    out = {**typed, **{one.box.name: "" for one in BOXES if one.box.name not in kept}, "epsilon": emf_}
    return {**out, "grows": "more" if change > 0 else "less"}


INDUCTION = question(
    "emf",
    "Faraday's law: the emf of a changing flux",
    situation,
    **boxes(GROWS, MEASURED, *BOXES),
    laws=(FARADAY.name, FLUX.name),
    asks="epsilon",
    adjust=practise,
    since=6,
)
