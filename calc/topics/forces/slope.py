"""A body on a slope, alone or pulled at an angle, that slides or is about to slip, up or down.

N + P sin φ = mg cos θ, f = μN; sliding up P cos φ − mg sin θ − f = ma, sliding down mg sin θ − P cos φ − f = ma; about
to slip a = 0 and μ is μs, so tan θ = μ where nothing pulls. Components of Newton's second law, a data-sheet equation.
Marks: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from math import cos, degrees, radians, sin

from calc.figures import Figure
from calc.figures.surfaces import Pulled, on_surface
from calc.language.expressions import equation
from calc.model.questions import Check, Choice, Data, Draw, Part, Refusal, Values
from calc.topics.forces.tilts import (
    NO_LEAN,
    NO_SLOPE,
    found_angle,
    second_slope,
    slope_angle_of_pull,
    slope_laws,
)
from calc.topics.forces.words import (
    ALL_ALONG,
    AT_REST,
    BY_WEIGHT,
    COSINE_SLOPE,
    EACH_AXIS,
    EACH_AXIS_MARKS,
    HEAVIER,
    HELPS,
    IGNORED,
    JAMS,
    LIFTS,
    LIGHTER,
    NO_G,
    ONWARDS,
    PLAIN_A,
    PLAIN_F,
    PLAIN_N,
    PLAIN_REST,
    SINE_SLOPE,
    SLIPS_ASKED,
    SWAPPED,
    TWO,
    WEIGHT_ALWAYS,
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
from calc.topics.shared.quantities import acceleration, friction_coefficient, mass, slope_angle
from calc.working.declaring import Limit, Mistake, Relation, Together, boxes, state, told
from calc.working.solving import Laws, Situation, question

NOT_CHOSEN = "No pull is chosen: leave this box empty, or choose the pull P."
GIVE = {
    "P": "A {0} is chosen: type its size, or choose “no other force”.",
    "phi": "A {0} is chosen: type its angle with the slope, 0° if it is along the slope.",
}
NO_PULL_ASKED = "No pull is chosen, so there is none to calculate: choose the pull P, or ask for something else."
NOTHING_UP = "Nothing pulls it up the slope, so it cannot be about to slip up: choose the pull P, or “down”."
DROPS_OUT = (
    "Without a pull the mass drops out of the equation along the slope and cannot be found: choose the pull P, or ask"
    " for something else."
)
ALL_WEIGHT = "You let the whole weight act along the slope. Only a part of it does: use {m*g*sin(theta)}."
PER_MASS = "Every force here grows with the mass, so the mass drops out of the equation along the slope."
FORCE = Choice(
    "how",
    "Besides the slope there is",
    (("none", "no other force"), ("pull", "a pull P, up the slope"), ("push", "a push P, up the slope")),
)
MOTION = Choice(
    "motion",
    "The body",
    (
        ("down", "slides down"),
        ("up", "slides up"),
        ("slip-down", "is just about to slip down"),
        ("slip-up", "is just about to slip up"),
    ),
)
BOXES = (
    mass("m", "Mass", "Its mass is {}.", "6 kg; 3 4 5 8; 3,5 6,5 8,5"),
    slope_angle("theta", "Angle of the slope", "The slope makes {} with the horizontal.", "25°; 20 25 30 35; 22 28 36"),
    pull("P", "Force", "The pull has a size of {}.", "; 30 40 60"),
    lean(
        "phi",
        "Angle of the force with the slope",
        "The pull makes an angle of {} with the slope, away from it.",
        "; 0 15 20 25; 0 12 18 24",
        told_at={0.0: "The pull is parallel to the slope."},
    ),
    friction_coefficient("mu", "Coefficient of friction", "", "0,2; 0,1 0,15 0,2 0,3; 0,12 0,18 0,26"),
    normal("N", "Normal force", "The normal force on it is {}.", "; 30 40 60"),
    friction("f", "Friction", "The friction on it is {}.", "; 5 8 12"),
    replace(acceleration, refusal="")(
        "a",
        "Acceleration",
        "Its acceleration is {}.",
        "?; 3 4 5 6; 2,5 4,5 6,5",
        way=ONWARDS,
        told_at={0.0: "It slides at constant velocity."},
    ),
)
UNITS = {"m": "kg", "theta": "°", "P": "N", "phi": "°", "N": "N", "f": "N", "mu": "", "a": "m·s⁻²"}
TALES = {
    "none": (
        "A crate lies on a ramp.",
        "A wooden chest stands on a sloping plank.",
        "A loaded tray rests on the sloping floor of a lorry.",
    ),
    "pull": (
        "A crate on a ramp is pulled by a rope up the ramp.",
        "A winch pulls with its rope at a chest on a sloping plank, up the plank.",
        "A sledge on an even hillside is pulled by a rope, up the hill.",
    ),
    "push": (
        "A pole pushes at a crate on a ramp, up the ramp.",
        "With a stick somebody pushes at a chest on a sloping plank, up the plank.",
        "On an even hillside a bar pushes at a sledge, up the hill.",
    ),
}
ASK = {"P": "Calculate the {}.", "phi": "Calculate the angle of the {} with the slope."}
PUSHED = {
    "P": "The push has a size of {}.",
    "phi": "The push makes an angle of {} with the slope, into it.",
}
ENDS = {
    "down": "It slides down the slope.",
    "up": "It slides up the slope.",
    "slip-down": "It is at rest and just about to slip down the slope.",
    "slip-up": "It is at rest and just about to slip up the slope.",
}


@dataclass(frozen=True)
class Set:
    """The choices. pulled: whether P acts; way: +1 for up the slope, −1 for down; slides: or about to slip; push: P
    presses into the slope."""

    pulled: bool
    way: int
    slides: bool
    push: bool = False

    @property
    def across(self) -> str:
        """N, solved for."""
        return f"m*g*cos(theta) {'+' if self.push else '-'} P*sin(phi)" if self.pulled else "m*g*cos(theta)"

    @property
    def drive(self) -> str:
        """What acts along the slope in the direction of motion, friction left out."""
        weight_part = "m*g*sin(theta)"
        if not self.pulled:
            return f"-{weight_part}" if self.way > 0 else weight_part
        return f"P*cos(phi) - {weight_part}" if self.way > 0 else f"{weight_part} - P*cos(phi)"

    @property
    def words(self) -> str:
        """Which forces act which way."""
        up, down = ("P cos φ acts up the slope," if self.pulled else ""), " mg sin θ acts down the slope"
        friction_way = "down" if self.way > 0 else "up"
        return f"{up}{down}, friction {friction_way} the slope.".strip()


def chosen(data: Data) -> Set:
    """The choices made; refuses what they leave no room for."""
    motion, how = data.choices["motion"], data.choices["how"]
    pulled, way = how != "none", 1 if motion.endswith("up") else -1
    here = Set(pulled, way, not motion.startswith("slip"), how == "push")
    asked = data.asked_names
    if not pulled:
        for name in ("P", "phi"):
            if data.has(name):
                raise Refusal(name, NOT_CHOSEN)
        if {"P", "phi"} & set(asked):
            raise Refusal(None, NO_PULL_ASKED)
        if "m" in asked and not (data.has("N") or data.has("f")):
            raise Refusal(None, DROPS_OUT)
        if not here.slides and here.way == 1:
            raise Refusal("motion", NOTHING_UP)
    elif {"a", "N", "f"} & set(asked) and not (data.has("N") or data.has("f")):
        for name, sentence in GIVE.items():
            if not data.has(name) and name not in asked:
                raise Refusal(name, sentence.format("push" if here.push else "pull"))
    if not here.slides:
        if data.has("a"):
            raise Refusal("a", AT_REST)
        if "a" in asked:
            raise Refusal(None, SLIPS_ASKED)
    return here


@lru_cache(maxsize=16)
def laws(here: Set, by_mass: bool) -> Laws:
    """The laws of these choices. by_mass: the mass is given or asked, so the forces are worked one by one."""
    if not by_mass and not here.pulled and here.slides:
        return (normal_law(here), rubbing(here), without_mass(here))
    if not here.pulled:
        return (normal_law(here), rubbing(here), along(here))
    as_weight = Mistake("normal-is-weight", "m", weight_for_normal(here), WEIGHT_ALWAYS % here.across)
    second = replace(normal_law(here), units=UNITS, mistakes=(as_weight,))
    pairs = (Together(both_in_one(here), second, name, "N", EACH_AXIS, PLAIN_A, back=True) for name in ("P", "m"))
    return (normal_law(here), rubbing(here), along(here), *pairs)


def weight_for_normal(here: Set) -> str:
    """The mass as it comes out with N = mg."""
    turn = "+" if here.way == 1 else "-"
    under = f"g*sin(theta) {turn} mu*g" + (f" {turn} a" if here.slides else "")
    return f"P*cos(phi)/({under})"


PART_WAY = {False: LIGHTER, True: HEAVIER}


def turned_round(across: str) -> str:
    """N with the part of P the wrong way."""
    return across.replace(" - ", " + ") if " - " in across else across.replace(" + ", " - ")


def normal_law(here: Set) -> Relation:
    """Forces across the slope."""
    slips = [
        Mistake("normal-is-weight", "N", here.across.replace("*cos(theta)", ""), WEIGHT_ALWAYS % here.across),
        Mistake("sin-cos", "N", here.across.replace("cos(theta)", "sin(theta)"), SWAPPED),
        Mistake("mass-for-weight", "N", here.across.replace("m*g", "m"), NO_G),
    ]
    if here.pulled:
        slips += [
            Mistake("vertical-part-wrong-way", "N", turned_round(here.across), PART_WAY[here.push]),
            Mistake("sin-cos-pull", "N", here.across.replace("sin(phi)", "cos(phi)"), COSINE_SLOPE),
        ]
    return Relation(
        "N + P*sin(phi) = m*g*cos(theta)" if here.pulled and not here.push else f"N = {here.across}",
        what="Balance the forces across the slope",
        why=(
            "It does not leave the slope, so the forces at right angles to it balance. Across the slope the weight has"
            " the part mg cos θ"
        )
        + ((", and P sin φ presses." if here.push else ", and P sin φ lifts.") if here.pulled else "."),
        units={"N": "N", "m": "kg", "phi" if here.pulled else "theta": "°"},
        plain=PLAIN_N,
        mistakes=tuple(slips),
    )


def rubbing(here: Set) -> Relation:
    """f = μN."""
    return Relation(
        "f = mu*N",
        what="Friction from the normal force",
        why=WHY_F["slides" if here.slides else "about"],
        units={"f": "N", "N": "N", "mu": ""},
        plain=PLAIN_F,
        marks=TWO,
        quotes=((KINETIC if here.slides else STATIC).name,),
        mistakes=(Mistake("weight-for-normal", "f", "mu*m*g", BY_WEIGHT),),
    )


def along(here: Set) -> Relation:
    """Forces along the slope, with f."""
    drive = here.drive
    wrong = [
        Mistake("friction-helps", "a", f"({drive} + f)/m", HELPS),
        Mistake("friction-ignored", "a", f"({drive})/m", IGNORED),
        Mistake("sin-cos", "a", f"({drive.replace('sin(theta)', 'cos(theta)')} - f)/m", SINE_SLOPE),
        Mistake("whole-weight", "a", f"({drive.replace('*sin(theta)', '')} - f)/m", ALL_WEIGHT),
    ]
    if here.pulled:
        wrong.append(Mistake("all-along", "a", f"({drive.replace('*cos(phi)', '')} - f)/m", ALL_ALONG))
    if not here.slides:
        up = here.way == 1
        return Relation(
            f"P*cos(phi) = m*g*sin(theta) {'+' if up else '-'} f" if here.pulled else "f = m*g*sin(theta)",
            what="Balance the forces along the slope",
            why=f"It is still at rest, so the net force is zero.{' ' if here.pulled else ' Only '}{here.words}",
            units={"f": "N", "theta": "°"} | ({"P": "N", "phi": "°"} if here.pulled else {}),
            plain=PLAIN_REST,
            mistakes=(
                Mistake("sin-cos", "f", f"abs({drive.replace('sin(theta)', 'cos(theta)')})", SINE_SLOPE),
                Mistake("whole-weight", "f", f"abs({drive.replace('*sin(theta)', '')})", ALL_WEIGHT),
            ),
        )
    return Relation(
        f"{drive} - f = m*a",
        what="Use Newton's second law along the slope",
        why=f"The direction of motion is positive: {here.words}",
        units={"a": "m·s⁻²", "f": "N", "theta": "°"} | ({"phi": "°"} if here.pulled else {}),
        plain=PLAIN_A,
        quotes=(SECOND.name,),
        directions={"a": lambda v: ONWARDS[0].by_sign(v["a"], ONWARDS[1])},
        mistakes=tuple(wrong),
    )


def both_in_one(here: Set) -> Relation:
    """Forces along the slope with f = μN, to be put together with those across it."""
    up, held = here.way == 1, "m*a" if here.slides else "0"
    sign, wrong = ("+", "-") if up else ("-", "+")
    wrong = sign if here.push else wrong
    top = f"m*(g*sin(theta) {sign} mu*g*cos(theta){f' {sign} a' if here.slides else ''})"
    if here.slides:
        law, why = f"{here.drive} - mu*N = {held}", f"The direction of motion is positive: {here.words}"
    else:
        law, why = f"P*cos(phi) = m*g*sin(theta) {sign} mu*N", f"At rest the net force is zero: {here.words}"
    return Relation(
        law,
        what="Write one equation along the slope, with f = μN",
        why=why,
        units={name: UNITS[name] for name in ("P", "m", "a", "mu", "N")},
        plain=PLAIN_A if here.slides else PLAIN_REST,
        marks=EACH_AXIS_MARKS,
        quotes=(SECOND.name,) if here.slides else (),
        mistakes=(
            Mistake("normal-is-weight", "P", top.replace("*cos(theta)", "") + "/cos(phi)", WEIGHT_ALWAYS % here.across),
            Mistake("vertical-part-wrong-way", "P", f"{top}/(cos(phi) {wrong} mu*sin(phi))", PART_WAY[here.push]),
        ),
    )


def without_mass(here: Set) -> Relation:
    """Where neither a pull nor a mass is given: a = g sin θ − μg cos θ."""
    first = "g*sin(theta)" if here.way == -1 else "-g*sin(theta)"
    return Relation(
        f"a = {first} - mu*g*cos(theta)",
        what="Use Newton's second law along the slope, divided by the mass",
        why=f"{PER_MASS} The direction of motion is positive.",
        units={"a": "m·s⁻²", "mu": ""},
        plain="Heavy or light, it makes no difference: what drives it and what holds it both grow with its mass.",
        quotes=(SECOND.name,),
        directions={"a": lambda v: ONWARDS[0].by_sign(v["a"], ONWARDS[1])},
        mistakes=(
            Mistake("friction-helps", "a", f"{first} + mu*g*cos(theta)", HELPS_SLOPE),
            Mistake("friction-ignored", "a", first, IGNORED_SLOPE),
            Mistake("normal-is-weight", "a", f"{first} - mu*g", NORMAL_SLOPE),
            Mistake("sin-cos", "a", f"{first.replace('sin', 'cos')} - mu*g*sin(theta)", SINE_SLOPE_ALONE),
        ),
    )


HELPS_SLOPE = "You let friction help the motion. Friction opposes sliding: subtract {mu*g*cos(theta)}."
IGNORED_SLOPE = "You left friction out. It opposes sliding: subtract {mu*g*cos(theta)}."
NORMAL_SLOPE = "You took {mu*g} for the friction. Only {g*cos(theta)} of each kilogram presses into the slope: use it."
SINE_SLOPE_ALONE = (
    "You have sine and cosine the wrong way round. Along the slope use the part of the weight with the sine."
)


def scene(here: Set, v: Values) -> Figure:
    """The body on its slope, with its rope."""
    angle = min(max(degrees(v.get("theta", 0.5)), 4.0), 75.0)
    rope = Pulled("P", min(degrees(v.get("phi", 0.0)), 85.0), here.push) if here.pulled else None
    return on_surface(angle, rope, title="The body on the slope")


def by_angle(data: Data, here: Set, known: Laws) -> tuple[Laws, tuple[Part, ...]]:
    """The laws, with those for an angle that is asked; and the part for a second angle."""
    asked = data.asked_names
    if "theta" in asked and data.has("mu"):
        return (*known, *slope_laws(here.way, pulled=here.pulled, push=here.push, slides=here.slides)), ()
    if "phi" in asked:
        more, second = slope_angle_of_pull(here.way, here.push, here.slides, data)
        return (*known, *more), second
    return known, ()


def situation(data: Data) -> Situation:
    """The situation of the choices made."""
    here = chosen(data)
    by_mass = data.has("m") or "m" in data.asked_names or data.has("N") or data.has("f")
    kind = "kinetic" if here.slides else "static"
    relations, more = by_angle(data, here, laws(here, by_mass))
    tilt, lift = (degrees(found_angle(name, relations, data)) for name in ("theta", "phi"))
    back = "down the slope" if here.way == 1 else "up the slope"
    noun, side = ("push", "below") if here.push else ("pull", "above")
    pulls = f"at φ {side} the slope" if data.values.get("phi") or "phi" in data.asked_names else "up the slope"
    rows = [
        ("F_g", "F_g", "the weight, straight down", 270.0),
        ("N", "N", "the normal force, away from the slope at right angles to it", tilt + 90),
        *([("P", "P", f"the {noun}, {pulls}", tilt + (-lift if here.push else lift))] if here.pulled else []),
        ("f", "f", f"friction, {back}", tilt + (180 if here.way == 1 else 0)),
    ]
    basis = replace(
        told(BOXES),
        relations=relations,
        openings=tuple(f"{tale} {ENDS[data.choices['motion']]}" for tale in TALES[data.choices["how"]]),
        limits=(Limit("N", LIFTS),) if here.pulled and not here.push else (),
        unfit={
            "theta": NO_SLOPE,
            "phi": NO_LEAN,
            **({"P": JAMS} if here.push and here.way == 1 else {} if here.push else {"N": LIFTS}),
        },
        units=UNITS,
        notes=(FBD_RULES,),
        later=lambda data, values: more,
        warn=lambda v: second_slope(here.way, here.pulled and not here.push, v, data),
        proofs=lambda v: put_back(data, here, v),
        scene=lambda v: scene(here, v),
    )
    steps = basis.steps(data)
    return replace(
        basis,
        tell={
            **basis.tell,
            **(PUSHED if here.push else {}),
            "mu": f"The coefficient of {kind} friction is {{}}.",
        },
        told_at={**basis.told_at, **({"phi": {0.0: "The push is parallel to the slope."}} if here.push else {})},
        ask={
            **basis.ask,
            **{name: one.format(noun) for name, one in ASK.items()},
            "mu": f"Calculate the coefficient of {kind} friction.",
            "f": f"Calculate the {kind} friction on it.",
        },
        stated=(
            state(KINETIC if here.slides else STATIC),
            free_body("draw", "the body", rows, steps, data, guide=tilt, derived=weight),
        ),
    )


def put_back(data: Data, here: Set, values: Values) -> tuple[Check, ...]:
    """Where two equations were put together: the answer in one line, without N; without a pull: other routes."""
    if not here.pulled:
        first = "-g*sin(theta)" if here.way == 1 else "g*sin(theta)"
        checks = [
            Check(
                "The two parts of the weight and the weight itself make a right-angled triangle",
                "sqrt(N^2 + (m*g*sin(theta))^2) = m*g",
            ),
            Check("The same without the mass, which drops out", f"a = {first} - mu*g*cos(theta)"),
            Check("Sine over cosine is the tangent", "sin(theta) = mu*cos(theta)", "Both sides, times mg, are f."),
        ]
        by_angle_alone = "theta" in data.asked_names and not here.slides
        checks = [checks[0], checks[2] if by_angle_alone else checks[1]]
        if "theta" in data.asked_names and "m" not in values and here.slides:
            checks.pop()  # it is the second way already
        return tuple(one for one in checks if set(equation(one.equation).names) <= {*values, "g"})
    if not {"P", "m", "theta", "phi"} & set(data.asked_names):
        return ()
    line = f"{here.drive} = mu*({here.across}){' + m*a' if here.slides else ''}"
    return (Check(put_back_words(here.slides), line),) if set(equation(line).names) <= {*values, "g"} else ()


ENOUGH = {
    ("none", "slides"): {"a": "m theta mu", "N": "m theta", "f": "m theta mu", "mu": "m theta a", "theta": "mu a"},
    ("none", "about"): {"mu": "m theta", "N": "m theta", "f": "m theta", "theta": "mu"},
    ("pull", "slides"): {
        "a": "m theta P phi mu",
        "N": "m theta P phi",
        "f": "m theta P phi mu",
        "mu": "m theta P phi a",
        "P": "m theta phi mu a",
        "m": "theta P phi mu a",
        "theta": "m P phi mu a",
        "phi": "m theta P mu a",
    },
    ("pull", "about"): {
        "P": "m theta phi mu",
        "m": "theta P phi mu",
        "mu": "m theta P phi",
        "N": "m theta P phi",
        "f": "m theta P phi",
        "theta": "m P phi mu",
        "phi": "m theta P mu",
    },
}


PUSHES = 5  # the rule of drawing from which practice also pushes


def fitting(typed: dict[str, object], way: int, slides: bool, push: bool, lean: float = 0.0) -> tuple[str, str]:
    """A pull or push that gives the acceleration drawn, 0 where it is about to slip, and that acceleration, typed.

    lean: its angle with the slope (°), where that is asked.
    """
    usual = {"m": 5.0, "theta": 28.0, "phi": lean, "mu": 0.2, "a": 1.2}
    m, theta, phi, mu, a = (
        float(str(typed[name]).split("°")[0].split()[0].replace(",", ".")) if typed[name] else usual[name]
        for name in usual
    )
    theta, phi, a = radians(theta), radians(phi), a if slides else 0.0
    free = 9.8 * (sin(theta) + way * mu * cos(theta))
    if way < 0:  # slower than without the pull
        a = min(a, 0.6 * free)
    pull_ = m * (free + way * a) / (cos(phi) + (-way if push else way) * mu * sin(phi))
    return typed_as(pull_, "N", 3), typed_as(a, "m/s^2", 3)


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """Numbers that fit: the pull is what gives the acceleration drawn, and only the boxes that lead to the answer."""
    names = tuple(one.box.name for one in BOXES)
    find = next(name for name in names if not typed[name])
    how, motion = str(typed["how"]), str(typed["motion"])
    if find in ("P", "m", "phi"):
        how = "pull"
    if find == "a":
        motion = motion.removeprefix("slip-")
    if find == "theta" and motion.endswith("up"):  # going up, the angle would hang too much on g
        motion = motion.replace("up", "down")
    if how == "none" and (motion == "slip-up" or (find == "mu" and motion == "up")):
        motion = "down"
    slides = not motion.startswith("slip")
    way = 1 if motion.endswith("up") else -1
    ready = dict(typed)
    if find in ("theta", "phi"):  # rough enough to tell the tangent of ε from its sine
        ready["mu"] = typed_as(0.34 + round(12 * chance.random()) / 100, "", 2).strip()  # type: ignore[attr-defined]
    if how == "pull" and getattr(chance, "rule", 0) >= PUSHES and chance.random() < 0.6:  # type: ignore[attr-defined]
        how = "push"
    if how != "none":
        lean = 40 + 25 * chance.random() if find == "phi" else 0.0  # type: ignore[attr-defined]
        ready["P"], ready["a"] = fitting(ready, way, slides, how == "push", lean)
    elif find == "mu" and slides:  # an acceleration that some friction gives
        theta = radians(float(str(typed["theta"]).split("°")[0].replace(",", ".")))
        share = 0.4 + 0.4 * chance.random()  # type: ignore[attr-defined]
        ready["a"] = typed_as(share * 9.8 * sin(theta), "m/s^2", 3)
    keep = ENOUGH["none" if how == "none" else "pull", "slides" if slides else "about"][find].split()
    return {**ready, "how": how, "motion": motion, **{name: ready[name] if name in keep else "" for name in names}}


SLOPE = question(
    "slope",
    "A body on a slope",
    situation,
    **boxes(FORCE, MOTION, *BOXES, draws={"how": Draw(("none", "pull"))}),  # a push is drawn by the newest rule alone
    laws=(KINETIC.name, STATIC.name, SECOND.name),
    unknowns=("a", "P", "m", "mu", "N", "f", "theta", "phi"),
    drawn=("a", "P", "m", "mu", "N", "f"),
    drawn_later={"theta": 6, "phi": 6},
    constants=("g",),
    asks="a",
    adjust=practise,
    since=4,
)
