"""Two bodies that meet on one vertical line: both free, one perhaps later, or one at constant velocity.

Heights are measured from the ground, the time from the start of A; either direction may be the positive one. Both
heights are equated; where both fall freely ½gt² stands on both sides and cancels. Refusals, mistakes and marks: common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from random import Random
from typing import NamedTuple, cast

from calc.figures import Figure
from calc.figures.vertical import Height, Place, vertical
from calc.model.answers import Mark
from calc.model.directions import UP_DOWN
from calc.model.questions import Choice, Data, Mistake, Part, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.projectile.apart import under_names
from calc.topics.projectile.equations import YOUNGER, sense_stated, settled, turned, written
from calc.topics.projectile.laws import DOWNWARDS, EQUATIONS, FREE_FALL
from calc.topics.shared.quantities import AGAINST, Quantity, delay, height, time
from calc.working.chain import lead
from calc.working.declaring import boxes, state, told
from calc.working.solving import Situation, question
from calc.working.working import measure

SAME_MOMENT = "Both start at the same moment."
OTHER = Choice("other", "B", (("free", "moves freely too"), ("steady", "moves at constant velocity")))
signed = Quantity("m·s⁻¹", 1e-3, 500, typed="m/s", signed=True, help=AGAINST)
QUANTITIES = (
    height(
        "y_A",
        "Height of A at its start",
        "A starts {} above the ground.",
        "0 m; 2 10; 1,5 12",
        told_at={0.0: "A starts on the ground."},
    ),
    signed(
        "u_A",
        "Velocity of A at its start",
        "A starts with a velocity of {}.",
        "20 m/s; 15 24; 16 26",
        told_at={0.0: "A starts from rest."},
    ),
    height(
        "y_B",
        "Height of B at its start",
        "B starts {} above the ground.",
        "30 m; 20 40; 18 45",
        told_at={0.0: "B starts on the ground."},
    ),
    signed(
        "u_B",
        "Velocity of B at its start",
        "B starts with a velocity of {}.",
        "0 m/s; -2 -5; -1,5 -6",
        told_at={0.0: "B starts from rest."},
    ),
    delay("t_0", "Delay of B", "B starts {} after A.", "1 s; 0,5 1; 0,6 1,2", told_at={0.0: SAME_MOMENT}),
    time("t", "Time from the start of A until they meet", "They meet {} after the start of A.", "; 1 2; 0,9 2,5"),
    height("y", "Height at which they meet", "They meet {} above the ground.", "; 5 18; 4,5 20"),
)
# what is told of a body at constant velocity
STEADY = {
    "y_B": ("At that moment B is {} above the ground.", "At that moment B passes the ground."),
    "u_B": ("B moves at a constant velocity of {}.", "B does not move."),
}
BOTH_SIDES = (Mark("formula"), Mark("substitution", 2), Mark("answer"))  # one for each side of the equation
NEVER = "They never meet: A never comes nearer to B. Check the heights and the velocities with their signs."
ALWAYS = "They are always together: they start at the same height and move alike. Change one of the values."
BEFORE = "They do not meet: the equation gives {}, before they both move. Check the heights and the velocities."
LANDED = "A has landed: the equation gives a time of {}, and by then A has reached the ground. Check the values."
TOO_LOW = "They never meet: A does not reach B, which moves away too fast or starts too high. Check the values."
NO_DELAY = "B moves all the time at constant velocity, and its height is that at the start of A: leave its delay empty."
WAITED = "You have the time that B moves. Its delay is asked: subtract that time from {t}."
OTHER_DELAY = "You have the delay for meeting B on its way %s. This part asks for its way %s: take the other root."
# why the other root of the equation for the delay is not the answer, or is one as well
WENT_UP = "By that B would start after they have met: drop it."
CAME_DOWN = "By that B would start before A: drop it."
BOTH_DELAYS = "It is right as well: then they meet while B goes up, which the next part asks for."
DELAY_DOWN = "B passes there twice. Calculate the delay of B if they meet while B comes down."
DELAY_UP = "Calculate the delay of B if they meet while B goes up."
TINY = 1e-12
SIGNED = ("u_A", "u_B")
SENSE = "Upwards is positive, and heights are measured from the ground."
AT_ONCE = "B moves all the time at constant velocity, and has no delay. Pick something else to find."
NO_REACH = "B never gets there: its highest point is {} above the ground, and they meet {} above it. Check the values."
GONE = "A has landed: {} after its start it would be below the ground. Check the values."
FIRST_B = "B would have to start before A: call the body that starts first A."
NOT_LATER = "B does not come there after its start. Check the height and the velocity of B, and where they meet."
FIRST = "They meet twice. Calculate the time from the start of A until they meet for the first time."
AGAIN = "Calculate the time from the start of A until they meet again."
FIRST_AT = "They meet twice. Calculate the height at which they meet for the first time."
AGAIN_AT = "Calculate the height at which they meet again."
TWICE = 2
OPENINGS = {
    True: (
        "Two stones, A and B, move freely on vertical lines close to each other; air resistance is left out.",
        (
            "At the face of a quarry two steel balls, A and B, start close to each other. Both move freely, straight up"
            " or down."
        ),
        (
            "Beside an empty tower two heavy darts, A and B, move on vertical paths, one next to the other. Leave air"
            " resistance out."
        ),
    ),
    False: (
        (
            "A stone, A, moves freely on a vertical line close beside a lift, B, on the outside of a building. Air"
            " resistance is left out."
        ),
        (
            "A drone, B, keeps to a vertical line and a constant velocity; close beside it a steel ball, A, moves"
            " freely. Air resistance is left out."
        ),
        (
            "Close beside a balloon, B, on a vertical course a heavy dart, A, moves freely, straight up or down. Leave"
            " air resistance out."
        ),
    ),
}
DELAY = "You let both start at the same moment. B moves for a shorter time: use {t - t_0} for B."
FALL_OFF = "You left out the fall of A. B does not fall freely, so {1/2*g*t^2} does not cancel: keep it."
RAISED = "You added {1/2*g*t^2}. Gravity takes height away from {y}, so subtract it."
START = "You found how far A is from its own start. The height above the ground is asked: add {y_A}."
WHY = {
    True: "They meet where both are at the same height at the same time. Each position is y₀ + ut − ½gt², upwards"
    " positive.",
    False: "They meet where both are at the same height at the same time. The displacement of each is ut + ½gt²,"
    " downwards positive, so its height is y₀ − ut − ½gt².",
}
PLAIN = "Same place, same moment: write down where each one is, and put the two equal."
UNITS = {"y_A": "m", "y_B": "m", "u_A": "m·s⁻¹", "u_B": "m·s⁻¹", "t": "s"}


@lru_cache(maxsize=2)
def same_level(up: bool = True) -> Relation:
    """The height of A at the time of the meeting."""
    way, back = ("+", "-") if up else ("-", "+")
    return Relation(
        f"y = y_A {way} u_A*t - 1/2*g*t^2",
        what="The height of A at that time",
        why=(
            "From Δy = ut + ½at² with a = −g: the height is that of the start and the displacement together."
            if up
            else "From Δy = ut + ½at² with a = g: downwards is positive, so the displacement is taken from the height"
            " of the start."
        ),
        plain="Where it began, and how far it has come since.",
        units={"y": "m", "y_A": "m", "u_A": "m·s⁻¹"},
        mistakes=(
            Mistake("signs-mixed", "y", f"y_A {way} u_A*t + 1/2*g*t^2", RAISED),
            Mistake("start-height-forgotten", "y", f"abs(u_A*t {back} 1/2*g*t^2)", START),
        ),
    )


def meet(
    law: str, why: str, *, up: bool = True, marks: tuple[Mark, ...] = BOTH_SIDES, mistakes: tuple[Mistake, ...] = ()
) -> Relation:
    """Both positions equated."""
    return Relation(
        law,
        what="Put the two positions equal" if up else "Put the two heights equal",
        why=f"{WHY[up]} {why}",
        plain=PLAIN,
        units=UNITS,
        marks=marks,
        mistakes=mistakes,
    )


def by_hand(law: Relation, make: str, line: str, other: str = "", dropped: str = "", unit: str = "s") -> Relation:
    """The law with its step for a time, where no rule of algebra reads as a teacher writes."""
    step = Step(
        law=law.law,
        make=make,
        lines=(line,),
        what=law.what,
        why=law.why,
        plain=law.plain,
        unit=unit,
        marks=law.marks,
        mistakes=tuple(one for one in law.mistakes if one.at == make.partition(" ")[0]),
        other=other,
        dropped=dropped,
    )
    return replace(law, by_hand={step.makes: step})


def straight(up: bool) -> str:
    """When they would meet if both went on at their first velocities."""
    return "(y_B - y_A)/(u_A - u_B)" if up else "(y_A - y_B)/(u_A - u_B)"


def free_together(up: bool) -> Relation:
    """Both free from the same moment on."""
    return meet(
        "y_A + u_A*t = y_B + u_B*t" if up else "y_A - u_A*t = y_B - u_B*t",
        "Both fall alike, so −½gt² stands on both sides and has been left out.",
        up=up,
    )


def free_later(up: bool) -> Relation:
    """Both free, B later by t_0."""
    way = "+" if up else "-"
    law = meet(
        f"y_A {way} u_A*t - 1/2*g*t^2 = y_B {way} u_B*(t - t_0) - 1/2*g*(t - t_0)^2",
        "B moves for the time t − t₀ only. The square of t stands on both sides and cancels.",
        up=up,
        mistakes=(Mistake("delay-ignored", "t", straight(up), DELAY),),
    )
    if up:
        return by_hand(
            law,
            "t = (y_B - y_A - u_B*t_0 - 1/2*g*t_0^2)/(u_A - u_B - g*t_0)",
            "y_A + u_A*t = y_B + u_B*t - u_B*t_0 + g*t_0*t - 1/2*g*t_0^2",
        )
    return by_hand(
        law,
        "t = (y_A - y_B - u_B*t_0 + 1/2*g*t_0^2)/(u_A - u_B + g*t_0)",
        "y_A - u_A*t = y_B - u_B*t + u_B*t_0 + g*t_0*t - 1/2*g*t_0^2",
    )


def steady(up: bool, late: bool, other: bool, dropped: str) -> Relation:
    """A free, B at constant velocity. late: the later of the two roots; other: there is another root."""
    way = "+" if up else "-"
    law = meet(
        f"y_A {way} u_A*t - 1/2*g*t^2 = y_B {way} u_B*t",
        "B does not fall freely: its position is y₀ + ut."
        if up
        else "B does not fall freely: its displacement is ut alone.",
        up=up,
        mistakes=(Mistake("fall-forgotten", "t", straight(up), FALL_OFF),),
    )
    law = replace(
        law, why=law.why.replace("Each position is", "The position of A is").replace("ment of each is", "ment of A is")
    )
    root = "sqrt((u_A - u_B)^2 + 2*g*(y_A - y_B))"
    first = "u_A - u_B" if up else "u_B - u_A"
    make, second = (f"t = ({first} {sign} {root})/g" for sign in ("+-" if late else "-+"))
    line = f"g*t^2 {'-' if up else '+'} 2*(u_A - u_B)*t - 2*(y_A - y_B) = 0"
    return by_hand(law, make, line, second if other else "", dropped)


def of_b(up: bool, rising: bool, dropped: str, *, twice: bool = False) -> Relation:
    """The height of B, for its delay. rising: B passes there on its way up; twice: both ways are answers."""
    way, first = ("+", "u_B") if up else ("-", "-u_B")
    slips = [Mistake("time-of-B", "t_0", delayed(first, rising, "0"), WAITED)]
    if twice:
        say = OTHER_DELAY % (("up", "down") if not rising else ("down", "up"))
        slips.append(Mistake("other-delay", "t_0", delayed(first, not rising), say))
    law = Relation(
        f"y = y_B {way} u_B*(t - t_0) - 1/2*g*(t - t_0)^2",
        what="B is there too, after a shorter time",
        why=(
            "B moves for the time t − t₀ only. This is a quadratic equation for t − t₀;"
            " take its root from t to find the delay."
        ),
        plain="First find how long B needs to that height; the rest of the time it waited.",
        units={"t_0": "s"},
        mistakes=tuple(slips),
    )
    return by_hand(
        law,
        f"t_0 = {delayed(first, rising)}",
        f"g*(t - t_0)^2 {'-' if up else '+'} 2*u_B*(t - t_0) - 2*(y_B - y) = 0",
        f"t_0 = {delayed(first, not rising)}" if dropped else "",
        dropped,
    )


def delayed(first: str, rising: bool, start: str = "t") -> str:
    """The delay of B from the time it takes to the height of the meeting; from 0 that time itself."""
    taken = f"({first} {'-' if rising else '+'} sqrt(u_B^2 + 2*g*(y_B - y)))/g"
    return f"t - {taken}" if start == "t" else taken


def lands(high: float, u: float, g: float) -> float:
    """The time a free body takes to the ground."""
    return float((u + (u * u + 2 * g * high) ** 0.5) / g)


def fault(data: Data, values: Values, now: float) -> str:
    """Why they cannot meet at a time: B has not started yet, or A has landed; '' if they can."""
    g, t_0 = data.settings.constant("g"), values.get("t_0", 0.0)
    said = measure(now, "s", data.settings.style).text
    if now < t_0 or now <= 0:
        return BEFORE.format(said)
    # where they meet both are at one height: B is below the ground only if A is
    if now > lands(values["y_A"], values["u_A"], g) * (1 + 1e-9):
        return LANDED.format(said)
    return ""


def meetings(data: Data) -> tuple[float, ...]:
    """The times at which they meet, where all that decides is given. Raises Refusal where there is none."""
    v, g = data.values, data.settings.constant("g")
    if not {"y_A", "u_A", "y_B", "u_B"} <= v.keys():
        return ()
    gap, closing, t_0 = v["y_B"] - v["y_A"], v["u_A"] - v["u_B"], v.get("t_0", 0.0)
    if data.choices.get("other") == "steady":
        under = settled(closing**2 - 2 * g * gap, closing**2)
        if under < 0:
            raise Refusal(None, TOO_LOW)
        times = sorted({(closing - under**0.5) / g, (closing + under**0.5) / g})
        ahead = [one for one in times if one > 1e-12]
        if not ahead:
            raise Refusal(None, NEVER)
        return tuple(one for n, one in enumerate(ahead) if not n or not fault(data, v, one))
    above = gap - v["u_B"] * t_0 - g * t_0**2 / 2
    below = closing - g * t_0
    if abs(below) <= 1e-12 * max(abs(v["u_A"]), abs(v["u_B"]), g * t_0):
        raise Refusal(None, ALWAYS if abs(above) <= 1e-9 * max(abs(gap), 1.0) else NEVER)
    return (above / below,)


def upwards(data: Data) -> Data:
    """The same data with upwards positive."""
    if is_up(data):
        return data
    values = {name: -value if name in SIGNED else value for name, value in data.values.items()}
    return replace(data, values=values)


def is_up(data: Data) -> bool:
    """Whether upwards is the positive direction."""
    return data.choices["positive"] == "up"


def laws(data: Data, found: tuple[float, ...]) -> tuple[Relation, ...]:
    """The positions equated, and the height."""
    up = is_up(data)
    if data.choices["other"] == "steady":
        late = data_late(data)
        return (steady(up, late, other=not touching(data), dropped=dropped(data, found)), same_level(up))
    if "t_0" in data.asked_names:
        taken = delays(upwards(data))
        rising = taken.down is None and taken.up is not None
        words = CAME_DOWN if rising else WENT_UP if taken.up is None else BOTH_DELAYS
        return (of_b(up, rising, "" if taken.touches else words, twice=taken.twice), same_level(up))
    return (free_later(up) if data.values.get("t_0") else free_together(up), same_level(up))


class Taken(NamedTuple):
    """How long B takes to the height of the meeting, coming down and going up, where that leaves it a delay.

    touches: it is the highest point of B, which it passes once.
    """

    down: float | None = None
    up: float | None = None
    touches: bool = False

    @property
    def twice(self) -> bool:
        """Whether there are two delays."""
        return self.down is not None and self.up is not None


def delays(data: Data) -> Taken:
    """The times that B may take, upwards positive; none where too little is given. Raises Refusal where there is no
    delay."""
    v, g = data.values, data.settings.constant("g")
    high = v.get("y", v["y_A"] + v["u_A"] * v["t"] - g * v["t"] ** 2 / 2 if {"y_A", "u_A", "t"} <= v.keys() else None)
    if high is None or not {"y_B", "u_B", "t"} <= v.keys():
        return Taken()
    if high < 0:
        raise Refusal(None, GONE.format(measure(v["t"], "s", data.settings.style).text))
    under = settled(v["u_B"] ** 2 + 2 * g * (v["y_B"] - high), v["u_B"] ** 2)
    if under < 0:
        top = v["y_B"] + max(v["u_B"], 0.0) ** 2 / (2 * g)
        said = (measure(one, "m", data.settings.style).text for one in (top, high))
        raise Refusal(None, NO_REACH.format(*said))
    falls, rises = ((v["u_B"] + sign * under**0.5) / g for sign in (1, -1))
    if falls <= TINY:
        raise Refusal(None, NOT_LATER)
    down = falls if falls <= v["t"] * (1 + TINY) else None
    going = rises if TINY < rises <= v["t"] * (1 + TINY) and under else None
    if down is None and going is None:
        raise Refusal(None, FIRST_B)
    return Taken(down, going, not under)


def touching(data: Data) -> bool:
    """Whether A just reaches B and no more: the two roots are one."""
    v = data.values
    if not {"y_A", "u_A", "y_B", "u_B"} <= v.keys():
        return False
    closing = v["u_A"] - v["u_B"]
    return not settled(closing**2 - 2 * data.settings.constant("g") * (v["y_B"] - v["y_A"]), closing**2)


def data_late(data: Data) -> bool:
    """Whether the later of the two roots is the first meeting: the other lies before the start."""
    v = data.values
    return v.get("y_A", 0.0) >= v.get("y_B", 0.0)


def dropped(data: Data, found: tuple[float, ...]) -> str:
    """Why the other root is not the answer."""
    if data_late(data):
        same = data.values.get("y_A") == data.values.get("y_B")
        return f"It belongs to {'the start itself' if same else 'a time before the start'}: drop it."
    if len(found) >= TWICE:
        return "It is right as well: they meet again, which the next part asks for."
    return "By then A has landed: drop it."


def situation(data: Data) -> Situation:
    """The two bodies as they were picked."""
    free, up = data.choices["other"] == "free", is_up(data)
    if not free and data.values.get("t_0"):
        raise Refusal("t_0", NO_DELAY)
    if not free and "t_0" in data.asked_names:
        raise Refusal(None, AT_ONCE)
    found = () if "t_0" in data.asked_names else meetings(upwards(data))
    if found and (why := fault(data, upwards(data).values, found[0])):
        raise Refusal(None, why)
    base = told(QUANTITIES)
    alone = {name: words[0] for name, words in STEADY.items()}
    at_zero = {name: {0.0: words[1]} for name, words in STEADY.items()}
    late = data.has("t_0") or "t_0" in data.asked_names
    moment = "" if late or not free else f" {SAME_MOMENT}"
    return replace(
        base,
        relations=laws(data, found),
        openings=tuple(f"{one}{moment} {sense_stated(SENSE, up)}" for one in OPENINGS[free]),
        tell={**base.tell, **({} if free else alone)},
        told_at={**base.told_at, **({} if free else at_zero)},
        ask={**base.ask, **asks(data, found)},
        ways=dict.fromkeys(SIGNED, (UP_DOWN, "up" if up else "down")),
        stated=(state(DOWNWARDS),),
        later=lambda data, values: tuple(again(data, found)),
        refuse=refuse,
        scene=lambda v: scene(v, up),
    )


def asks(data: Data, found: tuple[float, ...]) -> dict[str, str]:
    """What is asked where there are two answers, the first of them."""
    if len(found) >= TWICE:
        return {"t": FIRST, "y": FIRST_AT}
    if "t_0" in data.asked_names and delays(upwards(data)).twice:
        return {"t_0": DELAY_DOWN}
    return {}


def refuse(data: Data, values: Values) -> None:
    """Refuses values found that would let a body start below the ground or meet when one has landed."""
    way = 1 if is_up(data) else -1
    upward = {name: value * way if name in SIGNED else value for name, value in values.items()}
    if {"y_A", "u_A", "y_B", "u_B", "t"} <= values.keys() and (why := fault(data, upward, values["t"])):
        raise Refusal(None, why)


def again(data: Data, found: tuple[float, ...]) -> Iterator[Part]:
    """The parts that ask for the second meeting, or for the other delay."""
    up = is_up(data)
    if "t_0" in data.asked_names and delays(upwards(data)).twice:
        other = of_b(up, rising=True, dropped="It belongs to B coming down: drop it here.", twice=True).step("t_0")
        yield Part("again-t_0", "calculate", DELAY_UP, (under_names(other, {"t_0": "t_01"}, up=True),))
    if len(found) < TWICE:
        return
    first = steady(up, late=True, other=True, dropped="It belongs to the first meeting: drop it here.").step("t")
    when, where = (under_names(one, {"t": "t1", "y": "y1"}, up=True) for one in (first, same_level(up).step("y")))
    when, where = replace(when, direction=None), replace(where, direction=None)
    known = {"g", *data.values}
    for name, ask in (("t1", AGAIN), ("y1", AGAIN_AT)):
        if name[0] in data.asked_names:
            chain = lead(known, (when, where), name)
            known |= {step.makes for step in chain}
            yield Part(f"again-{name[0]}", "calculate", ask, chain)


def scene(v: Values, up: bool = True) -> Figure:
    """A and B at their starts, side by side."""
    y_a, y_b = v.get("y_A", 0.0), v.get("y_B", 0.0)

    def moves(name: str) -> bool | None:
        return (v[name] > 0) == up if v.get(name) else None

    return vertical(
        [
            Place("A", y_a, "u_A" if "u_A" in v else "", moves("u_A")),
            Place("B", y_b, "u_B" if "u_B" in v else "", moves("u_B"), 1),
        ],
        [Height(0.0, y, name, line) for line, (name, y) in enumerate((("y_A", y_a), ("y_B", y_b))) if y > 0],
        ground=0.0,
        positive="up" if up else "down",
        title="A and B at their starts",
        drawn_from=("y_A", "y_B"),
    )


GIVEN = {
    "t": "y_A u_A y_B u_B t_0",
    "y": "y_A u_A y_B u_B t_0",
    "u_A": "y_A y_B u_B t_0 t",
    "y_A": "u_A y_B u_B t_0 t",
    "y_B": "y_A u_A u_B t_0 t",
    "u_B": "y_A u_A y_B t_0 t",
    "t_0": "y_A u_A y_B u_B t",
}


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """Bodies that meet in the air: A thrown up from below, B above it."""
    draw = cast(Random, random)
    asked = next(name for name in GIVEN if not typed[name])
    if asked == "t_0":
        typed = {**typed, "other": "free"}
    free = typed["other"] == "free"
    u_a = float(draw.choice((16, 18, 20, 22, 24) if level == 1 else (17, 19, 21, 23, 25)))
    u_b = float(draw.choice((0, 0, -2, -4) if free else (1, 2, 3, -1, -2)))
    t_0 = draw.choice((0.0, 0.5, 1.0)) if free and asked != "y_A" else 0.0
    y_a = float(draw.choice((2, 3, 5, 8) if asked == "y_A" else (0, 0, 2, 3, 5)))
    if asked == "t_0":
        t_0 = draw.choice((0.5, 0.8, 1.0, 1.2))
    t = t_0 + 0.4 + draw.random() * 1.2
    fall = 4.9 * (t - t_0) ** 2 if free else 0.0
    y_b = round(y_a + u_a * t - 4.9 * t * t - u_b * (t - t_0) + fall, 0 if level == 1 else 1)
    values = {"y_A": (y_a, "m"), "u_A": (u_a, "m/s"), "y_B": (y_b, "m"), "u_B": (u_b, "m/s"), "t_0": (t_0, "s")}
    values["t"] = (t, "s")
    names = [name for name in GIVEN[asked].split() if free or name != "t_0"]
    emptied = {**typed, **dict.fromkeys((*values, "y"), "")}
    return turned(emptied | {name: written(*values[name], 3) for name in names}, *SIGNED)


MEETING = question(
    "meeting",
    "Two bodies meet",
    situation,
    **boxes(YOUNGER, OTHER, *QUANTITIES),
    unknowns=("t", "y", "u_A", "u_B", "y_A", "y_B", "t_0"),
    laws=(DOWNWARDS.name, FREE_FALL.name, EQUATIONS.name),
    constants=("g",),
    drawn=tuple(name for name in GIVEN if name != "t_0"),
    drawn_later={"t_0": 5},
    asks="t",
    adjust=practise,
    since=4,
)
