"""A body on the level, pulled or pushed at an angle, that slides or is about to slip.

N + P sin φ = mg (a push: N = mg + P sin φ), f = μN, P cos φ − f = ma; about to slip a = 0 and μ is μs. Components of
Newton's second law, a data-sheet equation. Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from math import atan, cos, degrees, radians, sin

from calc.figures import Figure
from calc.figures.surfaces import Pulled, on_surface
from calc.model.questions import Check, Choice, Data, Refusal, Values
from calc.topics.forces.tilts import NO_LEAN, found_angle, level_angle
from calc.topics.forces.words import (
    ALL_ALONG,
    AT_REST,
    BY_WEIGHT,
    COSINE,
    EACH_AXIS,
    EACH_AXIS_MARKS,
    HEAVIER,
    HELPS,
    IGNORED,
    JAMS,
    LIFTS,
    LIGHTER,
    NO_G,
    NO_MOTION,
    ONWARDS,
    PLAIN_A,
    PLAIN_F,
    PLAIN_N,
    PLAIN_REST,
    SINE,
    SLIPS_ASKED,
    TWO,
    WEIGHT_ALWAYS,
    WHOLE_PUSH,
    WHY_F,
    friction,
    lean,
    normal,
    pull,
    put_back_words,
    typed_as,
    weight,
)
from calc.topics.shared.free_bodies import FBD_RULES, free_body
from calc.topics.shared.motion_laws import KINETIC, SECOND, STATIC
from calc.topics.shared.quantities import acceleration, friction_coefficient, mass
from calc.working.declaring import Limit, Mistake, Relation, Together, boxes, state, told
from calc.working.solving import Laws, Situation, question

UNITS = {"m": "kg", "P": "N", "N": "N", "f": "N", "mu": "", "a": "m·s⁻²"}
HOW = Choice("how", "The force is", (("pull", "a pull, slanting upwards"), ("push", "a push, slanting downwards")))
STATE = Choice("state", "The body", (("slides", "slides"), ("about", "is just about to slip")))
BOXES = (
    mass("m", "Mass", "Its mass is {}.", "8 kg; 3 4 5 8; 3,5 6,5 8,5"),
    pull("P", "Force", "", "50 N; 30 40 50 60; 35 45 65"),
    lean("phi", "Angle of the force with the level", "", "30°; 15 20 25 30 35; 18 24 36"),
    friction_coefficient("mu", "Coefficient of friction", "", "0,25; 0,1 0,15 0,2 0,3; 0,12 0,18 0,26"),
    normal("N", "Normal force", "The normal force on it is {}.", "; 30 40 60"),
    friction("f", "Friction", "The friction on it is {}.", "; 5 8 12"),
    replace(acceleration, refusal="")(
        "a",
        "Acceleration",
        "It slides with an acceleration of {}.",
        "?; 0,5 1 1,5 2; 0,6 1,2 1,8",
        way=ONWARDS,
        told_at={0.0: "It slides at constant velocity."},
    ),
)
ENOUGH = {
    "slides": {
        "a": "m P phi mu",
        "N": "m P phi",
        "f": "m P phi mu",
        "mu": "m P phi a",
        "P": "m phi mu a",
        "m": "P phi mu a",
        "phi": "m P mu a",
    },
    "about": {
        "P": "m phi mu",
        "m": "P phi mu",
        "mu": "m P phi",
        "N": "m phi mu",
        "f": "m phi mu",
        "phi": "m P mu",
    },
}
TALES = {
    "pull": (
        "A rope pulls a sledge over level ground.",
        "On the level floor of a warehouse a loaded crate is pulled by a rope.",
        "A strap pulls a trunk along a level corridor.",
    ),
    "push": (
        "A stiff pole pushes a sledge over level ground.",
        "On the level floor of a warehouse a loaded crate is pushed with a pole.",
        "Somebody pushes a trunk along a level corridor with a rod.",
    ),
}
ENDS = {"slides": "It slides forwards.", "about": "It is at rest and just about to slip forwards."}


@lru_cache(maxsize=8)
def laws(how: str, state_: str) -> Laws:
    """Normal force, friction, and the forces along the surface; the last two together for P and m."""
    up = how == "pull"
    across, wrong = ("m*g - P*sin(phi)", "m*g + P*sin(phi)")[:: 1 if up else -1]
    normal_law = Relation(
        "N + P*sin(phi) = m*g" if up else "N = m*g + P*sin(phi)",
        what="Balance the forces across the surface",
        why="It does not move up or down, so the vertical forces balance: "
        + ("N and the vertical part of P carry the weight." if up else "N carries the weight and the push downwards."),
        units={"N": "N", "m": "kg", "phi": "°"},
        plain=PLAIN_N,
        mistakes=(
            Mistake("normal-is-weight", "N", "m*g", WEIGHT_ALWAYS % across),
            Mistake("vertical-part-wrong-way", "N", wrong, LIGHTER if up else HEAVIER),
            Mistake("sin-cos", "N", across.replace("sin", "cos"), COSINE),
            Mistake("mass-for-weight", "N", across.replace("m*g", "m"), NO_G),
        ),
    )
    rubbing = Relation(
        "f = mu*N",
        what="Friction from the normal force",
        why=WHY_F[state_],
        units={"f": "N", "N": "N", "mu": ""},
        plain=PLAIN_F,
        marks=TWO,
        quotes=((KINETIC if state_ == "slides" else STATIC).name,),
        mistakes=(Mistake("weight-for-normal", "f", "mu*m*g", BY_WEIGHT),),
    )
    slides = state_ == "slides"
    along, both = (moving, moving_both) if slides else (resting, resting_both)
    as_weight = f"P*cos(phi)/({'mu*g + a' if slides else 'mu*g'})"
    second = replace(
        normal_law, mistakes=(Mistake("normal-is-weight", "m", as_weight, WEIGHT_ALWAYS % across),), units=UNITS
    )
    pairs = tuple(Together(both(up), second, name, "N", EACH_AXIS, PLAIN_A, back=True) for name in ("P", "m"))
    return (normal_law, rubbing, along(), *pairs)


def moving() -> Relation:
    """P cos φ − f = ma."""
    return Relation(
        "P*cos(phi) - f = m*a",
        what="Use Newton's second law along the surface",
        why="Only forces along the surface speed it up. Forwards is positive: P cos φ is forwards, friction backwards.",
        units={"a": "m·s⁻²", "f": "N", "phi": "°"},
        plain=PLAIN_A,
        quotes=(SECOND.name,),
        directions={"a": lambda v: ONWARDS[0].by_sign(v["a"], ONWARDS[1])},
        mistakes=(
            Mistake("all-along", "a", "(P - f)/m", ALL_ALONG),
            Mistake("sine-along", "a", "(P*sin(phi) - f)/m", SINE),
            Mistake("friction-helps", "a", "(P*cos(phi) + f)/m", HELPS),
            Mistake("friction-ignored", "a", "P*cos(phi)/m", IGNORED),
            Mistake("all-along", "f", "P - m*a", ALL_ALONG),
            Mistake("no-acceleration", "f", "P*cos(phi)", NO_MOTION),
        ),
    )


def moving_both(up: bool) -> Relation:
    """P cos φ − μN = ma, to be put together with the forces across the surface."""
    signed = "-" if up else "+"
    return Relation(
        "P*cos(phi) - mu*N = m*a",
        what="Use Newton's second law along the surface, with f = μN",
        why="P cos φ acts forwards, friction μN backwards.",
        units=UNITS,
        plain=PLAIN_A,
        marks=EACH_AXIS_MARKS,
        quotes=(SECOND.name,),
        mistakes=(
            Mistake("normal-is-weight", "P", "m*(mu*g + a)/cos(phi)", WEIGHT_ALWAYS % f"m*g {signed} P*sin(phi)"),
            Mistake(
                "vertical-part-wrong-way",
                "P",
                f"m*(mu*g + a)/(cos(phi) {signed} mu*sin(phi))",
                LIGHTER if up else HEAVIER,
            ),
            Mistake("all-along", "P", f"m*(mu*g + a)/(1 {'+' if up else '-'} mu*sin(phi))", ALL_ALONG),
        ),
    )


def resting() -> Relation:
    """P cos φ = f: about to slip, still at rest."""
    return Relation(
        "P*cos(phi) = f",
        what="Balance the forces along the surface",
        why="It is still at rest, so the net force is zero: friction is as large as the part of P along the surface.",
        units={"P": "N", "f": "N", "phi": "°"},
        plain=PLAIN_REST,
        mistakes=(
            Mistake("all-along", "f", "P", WHOLE_PUSH),
            Mistake("sine-along", "f", "P*sin(phi)", SINE),
        ),
    )


def resting_both(up: bool) -> Relation:
    """P cos φ = μN, to be put together with the forces across the surface."""
    signed = "-" if up else "+"
    across = f"m*g {signed} P*sin(phi)"
    return Relation(
        "P*cos(phi) = mu*N",
        what="Balance the forces along the surface, with f = μN",
        why="It is still at rest, and static friction has its largest size, μN.",
        units=UNITS,
        plain=PLAIN_REST,
        marks=EACH_AXIS_MARKS,
        mistakes=(
            Mistake("normal-is-weight", "P", "mu*m*g/cos(phi)", WEIGHT_ALWAYS % across),
            Mistake(
                "vertical-part-wrong-way", "P", f"mu*m*g/(cos(phi) {signed} mu*sin(phi))", LIGHTER if up else HEAVIER
            ),
        ),
    )


def refuse(data: Data) -> None:
    """No acceleration of what is at rest, and no push that jams."""
    if data.choices["state"] == "about":
        if data.has("a"):
            raise Refusal("a", AT_REST)
        if "a" in data.asked_names:
            raise Refusal(None, SLIPS_ASKED)


def scene(data: Data, v: Values) -> Figure:
    """The body with its rope or pole."""
    push = data.choices["how"] == "push"
    return on_surface(0.0, Pulled("P", degrees(v.get("phi", 0.5)), push), title="The body and the force P")


def situation(data: Data) -> Situation:
    """The situation of the choices made."""
    refuse(data)
    how, now = data.choices["how"], data.choices["state"]
    up, slides = how == "pull", now == "slides"
    by_angle, more = level_angle(up, slides, data) if "phi" in data.asked_names else ((), ())
    noun, side = ("pull", "upwards") if up else ("push", "downwards")
    kind = "kinetic" if slides else "static"
    relations = (*laws(how, now), *by_angle)
    slant = degrees(found_angle("phi", relations, data))
    slant = slant if up else -slant
    rows = (
        ("F_g", "F_g", "the weight, straight down", 270.0),
        ("N", "N", "the normal force, straight up, away from the surface", 90.0),
        ("P", "P", f"the {noun}, forwards, at φ {'above' if up else 'below'} the level", slant),
        ("f", "f", "friction, along the surface, backwards", 180.0),
    )
    here = replace(
        told(BOXES),
        relations=relations,
        openings=tuple(f"{tale} {ENDS[now]}" for tale in TALES[how]),
        limits=(Limit("N", LIFTS),),
        unfit={"phi": NO_LEAN, **({"N": LIFTS} if up else {"P": JAMS})},
        later=lambda data, values: more,
        units=UNITS,
        notes=(FBD_RULES,),
        proofs=lambda v: put_back(data, up, slides, v),
        scene=lambda v: scene(data, v),
    )
    said = {
        "P": f"The {noun} has a size of {{}}.",
        "phi": f"It makes an angle of {{}} with the level, {side}.",
        "mu": f"The coefficient of {kind} friction is {{}}.",
    }
    ask = {
        "P": f"Calculate the size of the {noun}.",
        "mu": f"Calculate the coefficient of {kind} friction.",
        "f": f"Calculate the {kind} friction on it.",
    }
    steps = here.measured({}).steps(data)
    return replace(
        here,
        tell={**here.tell, **said},
        told_at={**here.told_at, "phi": {0.0: f"The {noun} is level."}},
        ask={**here.ask, **ask},
        stated=(
            state(KINETIC if slides else STATIC),
            free_body("draw", "the body", rows, steps, data, derived=weight),
        ),
    )


def put_back(data: Data, up: bool, slides: bool, values: Values) -> tuple[Check, ...]:
    """Where two equations were put together: the answer in one line, without N."""
    if not {"P", "m", "phi"} & set(data.asked_names) or "mu" not in values or (slides and "a" not in values):
        return ()
    line = f"P*cos(phi) = mu*(m*g {'-' if up else '+'} P*sin(phi)){' + m*a' if slides else ''}"
    return (Check(put_back_words(slides), line),)


def leaning_force(typed: dict[str, object], slides: bool, chance: object) -> tuple[str, str]:
    """A coefficient large enough to tell its ε from a sine's, and a force whose angle hangs little on g."""
    toss = chance.random  # type: ignore[attr-defined]
    m, a = (float(str(typed[name]).split()[0].replace(",", ".")) for name in ("m", "a"))
    mu, up = 0.34 + round(12 * toss()) / 100, typed["how"] == "pull"
    slant = atan(mu) + radians(40 + 15 * toss()) if up else radians(35 + 10 * toss())
    force = m * (9.8 * mu + (a if slides else 0.0)) / (cos(slant) + (mu if up else -mu) * sin(slant))
    return typed_as(mu, "", 2).strip(), typed_as(force, "N", 3)


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Only the boxes that lead to what is asked; an acceleration is asked of what slides."""
    names = tuple(one.box.name for one in BOXES)
    find = next(name for name in names if not typed[name])
    now = "slides" if find == "a" else str(typed["state"])
    keep = ENOUGH[now][find].split()
    ready = dict(typed)
    if find == "phi":
        ready["mu"], ready["P"] = leaning_force(typed, now == "slides", chance)
    return {**ready, "state": now, **{name: ready[name] if name in keep else "" for name in names}}


LEVEL = question(
    "level",
    "Pulled or pushed along the level",
    situation,
    **boxes(HOW, STATE, *BOXES),
    laws=(KINETIC.name, STATIC.name, SECOND.name),
    unknowns=("a", "P", "m", "mu", "N", "f", "phi"),
    drawn=("a", "P", "m", "mu", "N", "f"),
    drawn_later={"phi": 6},
    constants=("g",),
    asks="a",
    adjust=practise,
    since=4,
)
