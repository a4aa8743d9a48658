"""The sentences of the situation page: the story of what is set up, and what the numbers decide."""

from __future__ import annotations

from calc.language.expressions import expression
from calc.model.answers import Point
from calc.model.questions import Data, Values
from calc.topics.newton.situation_chain import Setup
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
    if shape.on == 0 or (shape.behind and shape.hangs(n)):
        side = "left" if n == 1 else "right"
        return f"the body on the {side}" if shape.on == 0 else f"the body that hangs on the {side}"
    if shape.hangs(n):
        return "the body that hangs"
    return "the body on the surface" if shape.on == 1 else f"the {NEAR[n]} body"


def on_surface(here: Setup) -> str:
    """What the motion is told of."""
    if not here.shape.on:
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
    wheels = shape.behind or shape.ahead
    taut = f"{taut}; pulleys are light and without friction." if wheels else f"{taut}."
    if shape.on == 0:
        return f"Two {thing}s hang from one string over a fixed pulley, the first on the left. {taut}"
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
    """The numbers in sentences."""
    said, count = data.said, here.shape.count
    several, alone, rest, first = telling
    masses = [said[f"m{n}"] for n in range(1, count + 1)]
    some = f"{alone} {masses[0]}."
    if count > 1:
        some = f"{several} {', '.join(masses[:-1])} and {masses[-1]}."
    tilt = f"The slope makes {said['theta']} with the horizontal." if here.slope else ""
    rub = ""
    if here.shape.on:
        rub = f"The coefficients of friction are {said['mu_s']} (static) and {said['mu_k']} (kinetic)."
        if not here.rough:
            rub = "The surface is smooth: there is no friction."
    start = f"{rest}."
    if here.start:
        subject = "it moves" if here.shape.count == 1 else "everything moves"
        start = f"{first} {subject}, on the surface {here.where(here.start).words}."
        if not here.shape.on:
            start = f"{first} the body on the left moves {here.where(here.start).words}."
        elif here.shape.count == here.shape.on:
            start = f"{first} {subject} {here.where(here.start).words}."
    return (some, tilt, forced(data, here), rub, start)


def forced(data: Data, here: Setup) -> str:
    """The pull or push."""
    if not here.force:
        return ""
    said, one = data.said, "it" if here.shape.on == 1 else f"the {NEAR[here.acted]}"
    side, ground = ("below" if here.push else "above"), "slope" if here.slope else "level"
    at = "along the surface"
    if data.values["phi"]:
        at = f"at {said['phi']} to the {ground}, {'slanting down' if here.push else f'{side} it'}"
    noun, verb = ("rod", "pushes") if here.push else ("rope", "pulls")
    return f"A {noun} {verb} {one} {here.where(here.force).words} with a force P of {said['P']}, {at}."


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
        if here.shape.on < here.shape.count:
            whose = f", {on_surface(here)} {where}" if here.shape.on else f", the body on the left {where}"
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
