"""A situation solved backwards: a mass, the force or its angle, a coefficient or the slope from the motion.

The equations of the bodies are put together for the way they move or would slip; with a known force in a link each side
of it has its own. What is found is set up and decided forwards once more, and has to do what was told. Standard school
mechanics.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from calc.language.expressions import ExpressionError
from calc.language.expressions import equation as line
from calc.language.rearranging import rearranged
from calc.language.trees import NotRearranged
from calc.model.answers import Mark
from calc.model.questions import Check, Data, Mistake, Refusal, Step
from calc.model.relations import Relation
from calc.topics.forces.words import JAMS, LIFTS, PLAIN_A
from calc.topics.newton import situation_charges as charges
from calc.topics.newton.pairs import FREE, PLAIN_ONE
from calc.topics.newton.situation_angles import of_force, of_slope
from calc.topics.newton.situation_chain import FILL, FURTHER, LEAVE, ODD, OWN, Setup, Told, needed, placed, set_up
from calc.topics.newton.situation_extras import CHARGES, NEARBY, charged, extras_of
from calc.topics.newton.situation_laws import drives, joined, presses
from calc.topics.newton.situation_shapes import NOT_THERE as NO_BODY
from calc.topics.newton.situation_shapes import SHAPES, room
from calc.topics.newton.situation_side import Side, bracket
from calc.topics.newton.situation_words import name as called
from calc.topics.newton.situation_words import positive
from calc.topics.shared.connected import Outcome
from calc.topics.shared.motion_laws import SECOND
from calc.working.chain import possible_mistakes, worth
from calc.working.working import sized

TINY = 1e-9
NO_CHARGE = 1e-21  # C: smaller than any there is
MASSES = ("m1", "m2", "m3")
ASKED = (*MASSES, "P", "phi", "mu_s", "mu_k", "theta", "theta2", "F", "E", *charges.ASKED)
UNITS = {
    "F_E": "N",
    "F_B": "N",
    "F": "N",
    "E": "N·C⁻¹",
    "P": "N",
    "phi": "°",
    "theta": "°",
    "theta2": "°",
    "mu_s": "",
    "mu_k": "",
} | dict.fromkeys(MASSES, "kg")
LINKS = ("T_1", "T_2", "R_1", "R_2")
KNOWN = ("a", *LINKS)

CHOSEN_BY = {"F": "also", "E": "field"}

SAY_WAY = (
    "To find something else than what happens, the motion must be known: choose that they move off, move, are about to"
    " slip or have a constant velocity, and which way."
)
TWO_WAYS = "They could move off either way with these numbers: choose “at rest, then off forwards” or “backwards”."
WHAT_HAPPENS = (
    "This says what happens already. Choose how it is at first, at rest or moving, or ask for a mass, the force, a"
    " coefficient or an angle."
)
FOUND_HERE = "This follows from what is set up: leave this box empty, or ask for something else."
ONE_IS_ENOUGH = "The motion is known without it: leave this box empty."
GIVE = "Give the acceleration, or the force between two of the bodies."
GIVE_ALONE = "Give the acceleration."
NO_STRING = "The bodies touch here: give the force between them, R, or leave this box empty."
NO_CONTACT = "Strings join the bodies here: give the tension, T, or leave this box empty."
NOT_THERE = "These bodies have no such link between them: leave this box empty, or choose another arrangement."
ABSENT = {
    "m2": ("chain", "There is one body: choose more bodies, or ask for something else."),
    "m3": ("chain", "There are only two bodies: choose three, or ask for something else."),
    "theta2": ("chain", "There is no second slope: choose bodies on two slopes, or ask for something else."),
    "theta": ("chain", "No body stands on a slope in this arrangement: choose another, or ask for something else."),
    "P": ("force", "There is no pull or push: choose one, or ask for something else."),
    "phi": ("force", "There is no pull or push: choose one, or ask for something else."),
    "mu_s": ("chain", "No body touches a surface here: ask for something else."),
    "mu_k": ("chain", "No body touches a surface here: ask for something else."),
    "F": ("also", "There is no second force: choose one, or ask for something else."),
    "E": ("field", "There is no electric field: choose one, or ask for something else."),
    **dict.fromkeys(NEARBY, ("fixed", "There is no fixed charge: choose one, or ask for something else.")),
    **dict.fromkeys(
        CHARGES,
        (
            "field",
            "Nothing acts on a charge here: choose an electric field or a fixed charge, or ask for something else.",
        ),
    ),
}
NO_CHARGED_BODY = (
    "No such body stands on the surface here: choose another arrangement, or ask for the charge of another body."
)
NOT_STEADY = (
    "The force of a fixed charge changes with the distance, so no constant velocity lasts: choose a motion and give an"
    " acceleration of zero for this moment."
)
MU_S_MOVES = "Once it slides, μₛ no longer counts: choose “about to slip”, or ask for μₖ."
MU_K_SLIPS = "μₖ counts only while it slides: choose a motion, or ask for μₛ."
DROPS_OUT = {
    "m": "This mass drops out of the equations: any mass does the same. Ask for something else.",
    "P": "The force drops out of the equations: any size does the same. Ask for something else.",
    "F": "The second force drops out of the equations: any size does the same. Ask for something else.",
    "E": "The field drops out of the equations: any strength does the same. Ask for something else.",
    "mu": "Friction drops out of the equations: any coefficient does the same. Ask for something else.",
}
BOTH = (
    "What is asked stands in the equations on both sides of this force, so it does not follow from it here. Give the"
    " acceleration instead."
)
OWN_ANGLE = (
    "With different coefficients the angle of the slope is not worked out here: leave this box empty, or ask for"
    " something else."
)
HEAVY = "No mass fits: it would have to be zero or less. Check the forces, the acceleration and which way they move."
AGAINST = (
    "No force this way fits: it would have to act the other way. Turn the pull or push round, or check the numbers."
)
TURN_ROUND = "Nothing this way fits: it would have to point the other way. Turn it round, or check the numbers."
HELPS = (
    "A coefficient of friction cannot be negative: with these numbers friction would have to help the motion. Check the"
    " acceleration and the forces."
)
WOULD_LIFT = (
    "With these numbers the pull would lift it off the surface: no normal force would be left. Check the numbers."
)
NOT_OFF = "What moves off from rest speeds up: give an acceleration above zero."
SLOWS_OFF = "With this force between them they would not speed up this way. Check it, or which way they move."
HOLDS = (
    "With these numbers it would stay at rest: static friction can hold it. Choose that it moves at first, or check μₛ."
)
OTHER_WAY = "With these numbers it would go the other way. Check which way it moves, or the numbers."
SLACKENED = (
    "With these numbers the string between {pair} would have to push: it is slack, and each has a motion of its own, so"
    " that of the one says nothing about the other. Treat them one by one (“one body”), or check the numbers."
)
PARTED = (
    "With these numbers {pair} would have to pull each other: they part, and each has a motion of its own, so that of"
    " the one says nothing about the other. Treat them one by one (“one body”), or check the numbers."
)
NEVER_SLIPS = "With these numbers it is not about to slip this way. Check the numbers."
NO_FRICTION = "You left friction out. It acts against the motion: put {%s} in as well."
NO_A = "You made the forces balance. They speed the bodies up: put {%s} in as well."
WEIGHT_N = "You put the weight in for the normal force. Only what presses the surfaces together counts: use {%s}."


def split(choices: Mapping[str, str]) -> tuple[dict[str, str], int, Told]:
    """The choices as they are forwards, the way it moves, and what is told of the motion ("" for nothing)."""
    noun, _, way = choices["start"].partition("-")
    told: Told = "" if noun == "rest" else "moves"
    if noun in ("goes", "slips", "steady"):
        told = noun  # type: ignore[assignment]
    way = way or (noun if told else "")
    start = {"goes": "rest", "slips": "rest"}.get(noun, way or "rest")
    return {**choices, "start": start}, {"on": 1, "back": -1}.get(way, 0), told


def apply(choices: Mapping[str, str], name: str, filled: set[str]) -> None:
    """Refuses what cannot be asked here, a box that does not apply, and one that is missing."""
    told = split(choices)[2]
    there = needed(choices) | {box for box, by in CHOSEN_BY.items() if choices.get(by, "none") != "none"}
    if choices.get("fixed", "none") != "none":
        there |= set(NEARBY)
    if name not in there | (set(CHARGES) if charged(choices) else set()):
        raise Refusal(*ABSENT[name])
    if not told:
        raise Refusal("start", SAY_WAY)
    room(choices)
    if name in CHARGES and int(name[1]) not in SHAPES[choices["chain"]].standing:
        raise Refusal("chain", NO_CHARGED_BODY)
    if told == "steady" and choices.get("fixed", "none") != "none":
        raise Refusal("start", NOT_STEADY)
    if name == "mu_s" and told != "slips":
        raise Refusal("start", MU_S_MOVES)
    if name == "mu_k" and told == "slips":
        raise Refusal("start", MU_K_SLIPS)
    spare = "mu_k" if told == "slips" else "mu_s"
    for box in ("m1", *LEAVE):
        if box in filled and box not in there:
            raise Refusal(box, LEAVE[box])
        if box in there - {name, spare} and box not in filled:
            raise Refusal(box, FILL[box])
    shape = SHAPES[choices["chain"]]
    for box in OWN:
        if box in filled and int(box[-1]) not in shape.standing:
            raise Refusal(box, NO_BODY)
    motion(choices, filled, told)


def motion(choices: Mapping[str, str], filled: set[str], told: str) -> None:
    """Refuses a missing acceleration or force between bodies, and one too many."""
    shape = SHAPES[choices["chain"]]
    given = [box for box in KNOWN if box in filled]
    for box in given:
        if box == "a":
            continue
        if int(box[2]) >= shape.count:
            raise Refusal(box, NOT_THERE)
        if box[0] != ("R" if shape.touch else "T"):
            raise Refusal(box, NO_STRING if shape.touch else NO_CONTACT)
    known = told in ("slips", "steady")
    if len(given) > (0 if known else 1):
        raise Refusal(given[-1], ONE_IS_ENOUGH)
    if not known and not given:
        raise Refusal("a", GIVE if shape.count > 1 else GIVE_ALONE)


def tried(choices: Mapping[str, str], v: Mapping[str, float], name: str, force: str) -> Setup:
    """The set-up for writing its equations, with some value for what is asked; the force on a charge is called
    ``force`` where it has to be found."""
    forwards, way, told = split(choices)
    mu = "mu_s" if told == "slips" else "mu_k"
    some = {"phi": 0.3, "theta": 0.5, "theta2": 0.5}.get(name, 1.0)
    w = {"P": 0.0, **v, name: some}
    w |= {"mu_s": w.get(mu, 0.0), "mu_k": w.get(mu, 0.0)}
    for n in ("2", "3"):
        counts = w.get(mu + n, w[mu])
        w |= {f"mu_s{n}": counts, f"mu_k{n}": counts}
    extras = extras_of(choices, {**v, name: some} if name in (*CHOSEN_BY, *charges.ASKED) else v)
    here = replace(
        placed(forwards, w, extras),
        found=Outcome("limit" if told == "slips" else "moves", (), ()),
        way=way,
        told=told,
        own=frozenset(v) & set(OWN),
    )
    return charges.trial(here, force) if name in charges.ASKED else here


def parts(here: Setup, name: str, link: str) -> tuple[Side, Side | None]:
    """The bodies in whose equation what is asked stands, and those on the other side of a known force."""
    count = here.shape.count
    if not link:
        return Side(here, 1, count, name), None
    at = int(link[2])
    sides = Side(here, 1, at, name), Side(here, at + 1, count, name)
    if all(side.held_in for side in sides):
        raise Refusal(link, BOTH)
    return sides if sides[0].held_in else (sides[1], sides[0])


def helper(side: Side, who: str) -> tuple[Step, ...]:
    """The acceleration, from the bodies on the other side of a known force."""
    law = Relation(
        side.law,
        what=f"Use the equation of {who} for the acceleration",
        why="All have the same size of acceleration, and here everything else is known.",
        units={"a": "m·s⁻²"},
        sizes=side.here.sizes,
        plain=PLAIN_ONE,
        quotes=(SECOND.name,),
    )
    return (*side.before, law.step("a"))


def linear(side: Side, v: Mapping[str, float]) -> float:
    """What stands in the equation to the first power. Refuses where it drops out or comes out impossible.

    An electrostatic force is below zero where it points against the motion.
    """
    here, name = side.here, side.name
    known = sized({k: x for k, x in v.items() if k != name}, here.sizes)
    letter = name.partition("_")[0].rstrip("123")
    try:
        level, one = (line(side.law).gap({**known, name: x}) for x in (0.0, 1.0))
    except ExpressionError:
        raise Refusal(None, DROPS_OUT[letter]) from None
    slope = one - level
    if letter == "m" and abs(level) < TINY:
        raise Refusal(None, DROPS_OUT[letter])
    jams = name == "P" and here.push and here.force == here.way and slope < TINY
    if abs(slope) < (NO_CHARGE if name == "E" else TINY) or not side.held_in:
        raise Refusal("phi" if jams else None, JAMS if jams else DROPS_OUT[letter])
    value = -level / slope
    if side.name in (charges.FORCE, charges.ANOTHER):
        return value
    if letter == "m" and value <= TINY:
        raise Refusal(None, HEAVY)
    if letter == "P" and value <= TINY:
        raise Refusal("phi" if jams else "force", JAMS if jams else AGAINST)
    if name in CHOSEN_BY and value <= TINY:
        raise Refusal(CHOSEN_BY[name], TURN_ROUND)
    if letter == "mu" and value < -TINY:
        raise Refusal(None, HELPS)
    return value


def together(side: Side) -> Relation:
    """The equation of all bodies of one side, for what is asked."""
    here, name = side.here, side.name
    whole = side.last - side.first + 1 == here.shape.count
    what = "Newton's second law" if here.shape.count == 1 else "Put the equations of all bodies together"
    zero = " Nothing speeds up, so the net force is zero."
    electric = name in (charges.FORCE, charges.ANOTHER)
    inner = " All have the same size of acceleration; the forces between them cancel." if side.last > side.first else ""
    return Relation(
        side.law,
        what=what if whole else f"Use the equation of {whose(here, side)}",
        why=f"{positive(here)}." + (zero if here.balanced else inner) + (charges.reason(here) if electric else ""),
        units={name: UNITS[name]},
        directions={name: here.where(charges.electric(here).way)} if electric else {},
        sizes=here.sizes,
        plain=PLAIN_A,
        marks=(Mark("formula", 2), Mark("substitution"), Mark("answer")),
        quotes=(SECOND.name,),
        mistakes=tuple(slips(side)),
    )


def slips(side: Side) -> list[Mistake]:
    """Friction left out, the acceleration left out, the weight for the normal force."""
    name, found = side.name, list[Mistake]()
    driven = joined(side.drive) if side.drive else "0"
    wrong = list[tuple[str, str, str]]()
    if side.rubs:
        wrong.append(("friction-ignored", f"{driven} = {side.gains}", NO_FRICTION % joined([(1, side.rubs[0][1])])))
    if not side.here.balanced:
        left = joined([*side.drive, *side.rubs])
        wrong.append(("no-acceleration", f"{left} = 0", NO_A % side.gains))
    for n in side.rough:
        full = presses(side.here, n)
        asked = name == side.of(n)
        if full != f"m{n}*g" and not side.apart(n):
            old, new = (f"N_{n}", f"m{n}*g") if asked else (bracket(full), f"m{n}*g")
            say = WEIGHT_N % (f"N_{n}" if asked else full)
            wrong.append(("weight-for-normal", side.law.replace(old, new), say))
            break
    for key, law, say in wrong:
        try:
            found.append(Mistake(key, name, rearranged(law, name).how, say))
        except (NotRearranged, ExpressionError):
            continue
    return found


@dataclass(frozen=True)
class Solved:
    """What is set up with what was asked, the steps to that, and those to another that fits as well."""

    here: Setup
    steps: tuple[Step, ...]
    other: Solved | None = None


def solved(data: Data) -> Solved:
    """What was asked. Refuses what does not fit together.

    From rest with a known acceleration or force it moves off whichever way fits. A charge or its distance has two
    answers where friction may act either way.
    """
    electric = data.asked in charges.ASKED
    noun, _, way = data.choices["start"].partition("-")
    if noun == "slips" and electric:
        found = one_way(data)
        return replace(found, other=another(found, data, f"slips-{'back' if way == 'on' else 'on'}"))
    if noun != "rest" or not any(data.has(box) for box in KNOWN):
        return one_way(data)
    fits, reasons = list[Solved](), list[Refusal]()
    for start in ("goes-on", "goes-back"):
        try:
            fits.append(one_way(begun(data, start)))
        except Refusal as refusal:
            reasons.append(refusal)
    if not fits:
        raise reasons[0]
    if len(fits) == 1:
        return fits[0]
    other = another(fits[0], data, "goes-back") if electric else None
    if not other:
        raise Refusal("start", TWO_WAYS)
    return replace(fits[0], other=other)


def begun(data: Data, start: str) -> Data:
    """The same with this motion told."""
    return replace(data, choices={**data.choices, "start": start})


def another(found: Solved, data: Data, start: str) -> Solved | None:
    """The charge or distance with which they go the other way, under names of its own.

    None where there is none, where it is the same, or where a step on the way comes out otherwise as well.
    """
    try:
        other = one_way(begun(data, start), charges.ANOTHER, f"{data.asked[0]}_B")
    except Refusal:
        return None
    known = {step.makes: step.how for step in found.steps}
    if any(known.get(step.makes, step.how) != step.how for step in other.steps):
        return None
    ways = [step for step in other.steps if step.makes not in known]
    values = (worth(data.values, one.steps, data.settings.constants()) for one in (found, other))
    first, second = (v[one.steps[-1].makes] for v, one in zip(values, (found, other), strict=True))
    same = found.here.extras[-1].way == other.here.extras[-1].way and abs(first - second) <= TINY * first
    return None if same else replace(other, steps=tuple(ways))


def one_way(data: Data, force: str = charges.FORCE, label: str = "") -> Solved:
    """The same where the way they move is chosen. force, label: the names of the electrostatic force and of what
    follows from it."""
    name, constants = data.asked, data.settings.constants()
    apply(data.choices, name, set(data.values))
    here = tried(data.choices, data.known, name, force)
    link = next((box for box in LINKS if data.has(box)), "")
    side, other = parts(here, force if name in charges.ASKED else name, link)
    steps = list[Step]()
    if here.beside and name not in charges.ASKED:
        steps.append(charges.coulomb(here).step(charges.FORCE))
    if other:
        steps += helper(other, whose(here, other))
    v = {**constants, **data.values, **worth(data.values, steps, constants)}
    possible(here, v, name, link)
    sign = 1
    if name in ("theta", "theta2"):
        if len({side.of(n) for n in side.rough if here.angle(n) == name}) > 1:
            raise Refusal(next(box for box in OWN if data.has(box)), OWN_ANGLE)
        v |= worth(v, side.elsewhere, constants)
        steps += [*side.elsewhere, *of_slope(side, v)]
    else:
        v |= worth(v, side.before, constants)
        if name == "phi":
            steps += of_force(side, v)
        elif name in charges.ASKED:
            last, sign = by_force(side, v, name, label or name)
            steps += [*side.before, *last]
        else:
            linear(side, v)
            steps += [*side.before, together(side).step(name)]
    value = sign * worth(data.values, steps, constants)[label or name]
    real = forward(data, here, name, value)
    return Solved(real, possible_mistakes({*constants, *data.values} - {name}, steps))


def possible(here: Setup, v: Mapping[str, float], name: str, link: str) -> None:
    """Refuses an acceleration that cannot be, typed or found from a force."""
    if here.told == "goes" and v["a"] <= 0:
        raise Refusal(link or "a", SLOWS_OFF if link else NOT_OFF)
    falls = any(here.shape.hangs(n) and drives(here, n)[0][0] == here.way for n in range(1, here.shape.count + 1))
    if falls and v.get("a", 0.0) > v["g"] - TINY:
        raise Refusal(link or "a", FREE)


def by_force(side: Side, v: Mapping[str, float], name: str, label: str) -> tuple[tuple[Step, ...], int]:
    """The electrostatic force from the equation, and what is asked from it; the sign of a charge."""
    way = charges.reachable(side.here, v, name, linear(side, v))
    here = charges.turned(side.here, way)
    last, sign = charges.found(here, v, name, label)
    return (together(replace(side, here=here)).step(side.name), last), sign


def whose(here: Setup, side: Side) -> str:
    """What the bodies of a side are called."""
    if side.first == side.last:
        return called(here, side.first)
    return f"{called(here, side.first)} and {called(here, side.last)} together"


def forward(data: Data, here: Setup, name: str, value: float) -> Setup:
    """The set-up with what was found, decided forwards. Refuses where it does not do what was told."""
    choices, way, told = split(data.choices)
    v = {**data.known, name: value if name in charges.ASKED else max(value, 0.0)}
    used, spare = ("mu_s", "mu_k") if told == "slips" else ("mu_k", "mu_s")
    for n in ("", "2", "3"):
        if used + n in v:
            v.setdefault(spare + n, v[used + n])
    if v.get("mu_k", 0.0) > v.get("mu_s", 0.0) + TINY:
        raise Refusal("mu_k" if data.has("mu_k") else "mu_s", ODD)
    apply_ = needed(choices) | {*FURTHER, *data.settings.constants()}
    try:
        real = set_up(choices, {box: x for box, x in v.items() if box in apply_})
    except Refusal as refusal:
        lifts = refusal.sentence == LIFTS and name in ("P", "phi")
        hidden = lifts or refusal.field == name
        raise Refusal(None if hidden else refusal.field, WOULD_LIFT if lifts else refusal.sentence) from None
    if real.found.slack:
        raise Refusal("chain", loose(real))
    state, drive = real.found.state, sum(body.drive(v["g"]) for body in real.bodies)
    if told == "slips" and here.rough and (state != "limit" or drive * way < 0):
        raise Refusal(None, NEVER_SLIPS)
    if told == "goes":
        if state != "moves":
            raise Refusal("mu_s" if data.has("mu_s") else None, HOLDS)
        if real.found.bodies[0].a * way <= 0:
            raise Refusal("start", OTHER_WAY)
    return replace(real, way=way, told=told)


def loose(here: Setup) -> str:
    """Why nothing follows where a string is slack or bodies part."""
    at = next(n for n, link in enumerate(here.found.links, 1) if not link.acts)
    pair = f"{called(here, at)} and {called(here, at + 1)}"
    if here.link == "R":
        return PARTED.format(pair=pair)
    return SLACKENED.format(pair=pair)


def put_back(here: Setup, data: Data) -> tuple[Check, ...]:
    """What was found, put into the equation of all bodies with every force written out, none of them negative."""
    whole = {one.term: one.whole for one in here.extras}
    every = [term for n in range(1, here.shape.count + 1) for term in drives(here, n)]
    terms = [(here.way * sign, whole.get(term, term)) for sign, term in every]
    names = [(here.mu("s" if here.slips else "k", n), n) for n in here.numbers]
    terms += [(-1, f"{mu}*{bracket(presses(here, n))}") for mu, n in names if data.values.get(mu, 1.0) > 0]
    masses = " + ".join(f"m{n}" for n in range(1, here.shape.count + 1))
    if not here.balanced:
        terms.append((-1, f"{bracket(masses)}*a"))
    for_, against = ([(1, term) for sign, term in terms if sign == way] for way in (1, -1))
    if not (for_ and against):
        return ()
    what = "What drives them is what holds them" + ("" if here.balanced else " and what speeds them up")
    if here.shape.count == 1:
        what = what.replace("them", "it")
    return (Check(what, f"{joined(for_)} = {joined(against)}", sizes=here.sizes),)
