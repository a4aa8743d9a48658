"""The sentences of the situation page: the story of what is set up, and what the numbers decide."""

from __future__ import annotations

from calc.language.expressions import expression
from calc.language.symbols import symbol
from calc.model.answers import Point
from calc.model.questions import Data, Values
from calc.topics.newton.situation_chain import Setup
from calc.topics.newton.situation_extras import Extra
from calc.topics.newton.situation_laws import STEADY, equation
from calc.topics.shared.connected import Outcome
from calc.working.working import measure

TELLINGS = (
    (
        "crate|a level floor|a ramp|Strings are light and do not stretch|"
        "In order the masses are|Its mass is|At first everything is held at rest and then let go|At first"
    ),
    (
        "sledge|level ground|an even hillside|The strings have no mass worth counting and keep their length|"
        "Counted from the first, they have masses of|It has a mass of|All of it starts from rest|To begin with"
    ),
    (
        "chest|a level deck|a sloping deck|Take the strings as light and of fixed length|"
        "Their masses, first to last:|With all that it holds it has a mass of|Nothing moves until it is released|"
        "When the clock is started"
    ),
)
COUNT = {2: "Two", 3: "Three"}
NEAR = {1: "first", 2: "second", 3: "third"}


def name(here: Setup, n: int) -> str:
    """What body n is called inside a sentence."""
    shape = here.shape
    if shape.count == 1:
        return "the body"
    if here.left or (shape.behind and shape.hangs(n)):
        side = "left" if n == 1 else "right"
        return f"the body on the {side}" if here.left else f"the body that hangs on the {side}"
    if shape.hangs(n):
        return "the body that hangs"
    return "the body on the surface" if shape.on == 1 else f"the {NEAR[n]} body"


def on_surface(here: Setup) -> str:
    """What the motion is told of."""
    if here.left:
        return "the body on the left"
    if here.shape.on == here.shape.count:
        return "the body" if here.shape.on == 1 else "the bodies"
    return "the body on the surface" if here.shape.on == 1 else "the bodies on the surface"


def story(data: Data, here: Setup) -> str:
    """The data told; nothing in it says what happens."""
    thing, floor, ramp, taut, *told_ = data.pick(*TELLINGS).split("|")
    return " ".join(filter(None, (placed(here, thing, ramp if here.slope else floor, taut), *facts(data, here, told_))))


def placed(here: Setup, thing: str, ground: str, taut: str) -> str:
    """What stands where, and what joins it."""
    shape, rises = here.shape, " that rises to the right" if here.slope else ""
    wheels = shape.behind or shape.ahead or shape.ridge
    taut = f"{taut}; pulleys are light and without friction." if wheels else f"{taut}."
    if shape.on == 0:
        return f"Two {thing}s hang from one string over a fixed pulley, the first on the left. {taut}"
    if shape.ridge:
        return (
            f"Two {thing}s stand on two slopes that meet at a ridge, the first on the left, the second on the right,"
            f" and a string over a fixed pulley at the ridge joins them. {taut}"
        )
    if shape.on == 1:
        said = f"A {thing} stands on {ground}{rises}."
    else:
        order = "lowest" if here.slope else "on the left"
        first = f"the first {'the ' if here.slope else ''}{order}"
        how = "touch each other" if shape.touch else "are joined by a string" + ("s" if shape.on > 2 else "")
        said = f"{COUNT[shape.on]} {thing}s stand on {ground}{rises}, {first}, and {how}."
        said = said.replace("by a strings", "by strings, each to the next")
    if shape.behind:
        said += (
            " At each end a string runs from it over a pulley at the edge to a body that hangs: the first on the left,"
            f" the third on the right; the {thing} is the second."
        )
    elif shape.ahead:
        front = "it" if shape.on == 1 else "the second"
        where = "at the top" if here.slope else "at the right edge"
        number = NEAR[shape.count]
        said += f" A string runs from {front} over a pulley {where} to a {number} body, which hangs."
    return said if shape.touch or shape.count == 1 else f"{said} {taut}"


def facts(data: Data, here: Setup, telling: list[str]) -> tuple[str, ...]:
    """The numbers in sentences; what is asked stands as a letter."""
    several, alone, *_ = telling
    masses = [letter(data, f"m{n}") for n in range(1, here.shape.count + 1)]
    some = f"{alone} {masses[0]}."
    if len(masses) > 1:
        some = f"{several} {', '.join(masses[:-1])} and {masses[-1]}."
    tilt = f"The slope makes {letter(data, 'theta')} with the horizontal." if here.slope else ""
    if here.shape.ridge:
        both = f"{letter(data, 'theta')} with the horizontal, that on the right {letter(data, 'theta2')}"
        tilt = f"The slope on the left makes {both}."
    return (
        some,
        tilt,
        forced(data, here),
        *further(data, here),
        rubbing(data, here),
        *rubs_otherwise(data, here),
        begins(data, here, telling),
    )


def letter(data: Data, name: str) -> str:
    """A datum as a sentence has it, or its letter, where it is asked."""
    return data.said.get(name) or f"{'an angle ' * (name in ('theta', 'theta2', 'phi'))}{symbol(name).text}"


def rubbing(data: Data, here: Setup) -> str:
    """Friction: both coefficients, or what is told of them."""
    if not here.shape.on:
        return ""
    given = [(data.said[name], kind) for name, kind in (("mu_s", "static"), ("mu_k", "kinetic")) if data.has(name)]
    if all(data.values.get(name, 0.0) == 0 for name in ("mu_s", "mu_k")) and data.asked not in ("mu_s", "mu_k"):
        return "The surface is smooth: there is no friction."
    if len(given) > 1:
        return f"The coefficients of friction are {given[0][0]} (static) and {given[1][0]} (kinetic)."
    return f"The coefficient of {given[0][1]} friction is {given[0][0]}." if given else "The surface is rough."


def rubs_otherwise(data: Data, here: Setup) -> tuple[str, ...]:
    """The coefficients of a body that has its own."""
    said = list[str]()
    for n in here.numbers:
        kinds = (("s", "static"), ("k", "kinetic"))
        given = [f"{data.said[f'mu_{k}{n}']} ({kind})" for k, kind in kinds if data.has(f"mu_{k}{n}")]
        if given:
            said.append(f"For the {NEAR[n]} alone: {' and '.join(given)}.")
    return tuple(said)


def begins(data: Data, here: Setup, telling: list[str]) -> str:
    """How it moves at first, or what is known of its motion."""
    _, _, rest, first = telling
    if here.told:
        return moved(data, here)
    if not here.start:
        return f"{rest}."
    subject = "it moves" if here.shape.count == 1 else "everything moves"
    if here.left:
        return f"{first} the body on the left moves {here.where(here.start).words}."
    if here.shape.count == here.shape.on:
        return f"{first} {subject} {here.where(here.start).words}."
    return f"{first} {subject}, on the surface {here.where(here.start).words}."


def moved(data: Data, here: Setup) -> str:
    """What is known of the motion, where something else is asked."""
    way, alone = here.where(here.way).words, here.shape.count == 1
    who, s = ("It", "s") if alone else ("They", "")
    verb = "is" if alone else "are"
    where = f", {on_surface(here)} {way}" if here.of_one else f" {way}"
    if here.told == "slips":
        return f"{who} {verb} just about to slip{where}." if here.shape.on else f"{who} hang{s} at rest."
    if here.told == "steady":
        return f"{who} move{s} with a constant velocity{where}."
    opens = f"{who} move{s} off from rest{where}" if here.told == "goes" else f"{who} move{s}{where}"
    if data.has("a"):
        a, size = data.values["a"], data.said["a"].lstrip("+−-")
        if here.told == "goes":
            return f"{opens}, with an acceleration of {size}."
        turns = "velocity stays the same: the acceleration is"
        if a:
            turns = f"speed {'grows' if a > 0 else 'falls'}, with an acceleration of"
        return f"{opens}. The {turns} {size}."
    link = next(name for name in ("T_1", "T_2", "R_1", "R_2") if data.has(name))
    n = int(link[2])
    pair = f"{name(here, n)} and {name(here, n + 1)}"
    what = "The tension between" if here.link == "T" else "The force that acts between"
    return f"{opens}. {what} {pair} is {data.said[link]} meanwhile."


def forced(data: Data, here: Setup) -> str:
    """The pull or push."""
    if not here.force:
        return ""
    said, one = data.said, "it" if here.shape.on == 1 else f"the {NEAR[here.acted]}"
    side, ground = ("below" if here.push else "above"), "slope" if here.slope else "level"
    at = "along the surface"
    if data.values.get("phi", 1.0):
        at = f"at {letter(data, 'phi')} to the {ground}, {'slanting down' if here.push else f'{side} it'}"
    noun, verb = ("rod", "pushes") if here.push else ("rope", "pulls")
    size = f"a force P of {said['P']}" if data.has("P") else "a force P"
    return f"A {noun} {verb} {one} {here.where(here.force, here.acted).words} with {size}, {at}."


def further(data: Data, here: Setup) -> tuple[str, ...]:
    """A second force, and a charge in a field."""
    said = list[str]()
    for extra in here.extras:
        body = "it" if here.shape.on == 1 else f"the {NEAR[extra.n]}"
        if extra.charge:
            who = f"{body[0].upper()}{body[1:]}"
            carries = f"{who} carries a charge of {letter(data, extra.charge)}"
            said.append(f"{carries}, {near(data, here, extra) if extra.side else within(data, here)}.")
        else:
            size = f" of {data.said['F']}" if data.has("F") else ""
            said.append(
                f"A second force F{size} acts on {body} along the surface, {here.where(extra.way, extra.n).words}."
            )
    return tuple(said)


def within(data: Data, here: Setup) -> str:
    """The field that a charge is in."""
    where = here.where(here.field).words
    return f"in a uniform electric field of {letter(data, 'E')} that points {where}"


def near(data: Data, here: Setup, extra: Extra) -> str:
    """The fixed charge that acts on it."""
    charge = f"Q of {data.said['Q']}" if data.has("Q") else "Q"
    away = data.said["r"] if data.has("r") else "a distance r"
    side = ("further up" if extra.side > 0 else "further down") if here.slope else here.where(extra.side).words
    return f"and a small charge {charge} is fixed {away} {side}, in line with it"


def told(data: Data, value: float, unit: str = "N") -> str:
    """A value as a sentence has it."""
    return measure(abs(value), unit, data.settings.style).text


def decided(data: Data, here: Setup, found: Outcome, v: Values) -> tuple[Point, ...]:
    """D beside what friction can hold, and what follows from rest. found: what they do from rest."""
    drive, most = v.get("D", 0.0), v.get("f_smax", 0.0)
    them, stay = ("it", "stays at rest") if here.shape.count == 1 else ("them", "stay at rest")
    who, verb = ("It", "starts to move") if here.shape.count == 1 else ("They", "start to move")
    if found.state == "moves":
        where, whose = here.where(1 if drive > 0 else -1).words, ""
        if here.of_one:
            whose = f", {on_surface(here)} {where}"
        why = (
            f"D is {told(data, drive)} and the largest static friction is {told(data, most)}: D is larger."
            if here.rough
            else f"D is {told(data, drive)} and there is no friction to hold {them}."
        )
        key = "larger" if here.rough else "no friction"
        return (Point(why, 1, (key,)), Point(f"{who} {verb}{whose or f' {where}'}.", 1, (where,)))
    if not here.rough:
        return (Point("D is zero.", 1, ("zero",)), Point(f"The forces balance: {who.lower()} {stay}.", 1, ("at rest",)))
    if abs(drive) < STEADY:
        still = Point(f"There is nothing for friction to hold: {who.lower()} {stay}.", 1, (stay,))
        return (Point("D is zero.", 1, ("zero",)), still)
    sizes = f"D is {told(data, drive)} and the largest static friction is {told(data, most)}"
    if found.state == "limit":
        return (
            Point(f"{sizes}: they are the same.", 1, ("the same",)),
            Point(f"Friction just holds {them}: {who.lower()} {stay}, at the limit.", 1, ("at the limit",)),
        )
    return (
        Point(f"{sizes}: D is smaller.", 1, ("smaller",)),
        Point(f"Friction can hold {them}: {who.lower()} {stay}.", 1, (stay,)),
    )


def printed(law: str) -> str:
    """An equation as a sentence has it."""
    return " = ".join(expression(side.strip()).maths().text for side in law.split("="))


def equations(here: Setup) -> tuple[Point, ...]:
    """The second law of each body along the surface or string."""
    found = []
    for n in range(1, here.shape.count + 1):
        law, body = printed(equation(here, n)), name(here, n)
        found.append(Point(f"For {body}: {law}.", 1, (law,)))
    return tuple(found)


def changing(here: Setup, v: Values, rest: Outcome | None) -> tuple[Point, ...]:
    """For what moves at first: whether it speeds up, and what it does if it comes to rest."""
    alone = here.shape.count == 1
    who, s = ("It", "s") if alone else ("They", "")
    if abs(v["a"]) < STEADY:
        return (Point(f"a is zero: {who.lower()} keep{s} a constant velocity.", 1, ("constant velocity",)),)
    if v["a"] > 0:
        return (Point(f"a has the direction of the motion: {who.lower()} speed{s} up.", 1, (f"speed{s} up",)),)
    first = Point(f"a is against the motion: {who.lower()} slow{s} down until at rest.", 1, (f"slow{s} down",))
    if rest is None:
        return (first,)
    if rest.state == "moves":
        return (first, Point(f"Then {who.lower()} start{s} to move back.", 1, ("move back",)))
    return (first, Point(f"Then {who.lower()} stay{s} at rest.", 1, (f"stay{s} at rest",)))


def at_once(here: Setup, v: Values) -> tuple[Point, ...]:
    """Beside a fixed charge only this moment is told: whether what moves speeds up."""
    alone = here.shape.count == 1
    who, s = ("it", "s") if alone else ("they", "")
    if abs(v["a"]) < STEADY:
        return (Point("a is zero at this moment: the velocity just now does not change.", 1, ("does not change",)),)
    if v["a"] > 0:
        return (Point(f"a has the direction of the motion: {who} speed{s} up.", 1, (f"speed{s} up",)),)
    return (Point(f"a is against the motion: {who} slow{s} down.", 1, (f"slow{s} down",)),)


def later(here: Setup) -> tuple[Point, ...]:
    """How the force of a fixed charge changes as they move on, and with it the acceleration."""
    extra = here.beside
    if not extra:
        return ()
    nearer, helps = here.way == extra.side, here.way == extra.way
    more, shorter = ("larger", "smaller") if nearer else ("smaller", "larger")
    first = f"The charges move {'closer together' if nearer else 'further apart'}: r becomes {shorter}, F_E {more}."
    grows = "larger" if nearer == helps else "smaller"
    second = (
        f"F_E acts {'with' if helps else 'against'} the motion, so the net force in the direction of the motion becomes"
        f" {grows}: the acceleration does not stay the same."
    )
    return (Point(first, 1, (more,)), Point(second, 1, ("not stay the same",)))


def positive(here: Setup) -> str:
    """Which direction is positive, where the motion is known: a sentence without its stop."""
    way = here.where(here.way).words
    if here.of_one:
        way += f", for {on_surface(here)}"
    they = "it" if here.shape.count == 1 else "they"
    which = f"that in which {they} would slip" if here.told == "slips" else "that of the motion"
    return f"The positive direction is {which}: {way}"


def other_way(here: Setup, asked: str) -> str:
    """What else is asked where a second charge or distance fits."""
    noun, letter_ = ("distance", "r") if asked == "r" else ("charge", "Q")
    alone = here.shape.count == 1
    who, s, verb = ("it", "s", "is") if alone else ("they", "", "are")
    does = f"{verb} about to slip" if here.told == "slips" else f"move{s} off with the same acceleration, but"
    where = here.where(here.way).words
    if here.of_one:
        where = f"{on_surface(here)} {where}"
    return (
        f"With another {noun} {who} {does} the other way: {where}. Calculate this {noun},"
        f" {symbol(f'{letter_}_B').text}."
    )


def sought(here: Setup, asked: str) -> str:
    """What is to be calculated, where it is not what happens."""
    if asked.startswith("m") and asked[1:].isdigit():
        return f"Calculate {symbol(asked).text}, the mass of {name(here, int(asked[1:]))}."
    return {
        "P": f"Calculate the size of P, the {'push' if here.push else 'pull'}.",
        "phi": "Calculate the angle φ, the smaller one if two fit.",
        "F": "Calculate the size of F, the second force.",
        "E": "Calculate E, the strength of the electric field.",
        "Q": "Calculate Q, the fixed charge, and give its sign.",
        "r": "Calculate r, the distance between the two charges.",
        **{
            f"Q{n}": f"Calculate {symbol(f'Q{n}').text}, the charge of {name(here, n)}, and give its sign."
            for n in here.numbers
        },
        "mu_s": "Calculate the coefficient of static friction.",
        "mu_k": "Calculate the coefficient of kinetic friction.",
        "theta": f"Calculate the angle θ of the slope{' on the left' * here.shape.ridge}, the smaller one if two fit.",
        "theta2": "Calculate the angle θ₂ of the slope on the right, the smaller one if two fit.",
    }[asked]
