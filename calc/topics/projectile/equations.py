"""The equations of motion for one free flight, and which of two roots the physics keeps.

v = u + at, Δy = ut + ½at², v² = u² + 2aΔy, Δy = ½(u + v)t (data-sheet equations), with a = g downwards. Either
direction may be the positive one. Mistakes and refusals: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from calc.model.directions import UP_DOWN
from calc.model.questions import NO_MARKS, Check, Choice, Mistake, Step, Values
from calc.model.relations import Relation

POSITIVE = Choice("positive", "Positive direction", (("up", "upwards"), ("down", "downwards")))
YOUNGER = replace(POSITIVE, since=5)  # of a question that knew only upwards before
SIGNS = (
    "You mixed the signs. Choose the positive direction first, and put a minus sign before whatever points the other"
    " way."
)
AT_REST = "You put in zero for {v}. It is zero only at the highest point: put in the velocity it really has."
DISTANCE = (
    "You added the way up and the way down. That is the distance; {Deltay} runs straight from the start to the end:"
    " subtract the way up from the way down."
)
START_FORGOTTEN = "You left out the initial velocity. It does not start from rest: keep {u}."
FINAL = "You multiplied the final velocity by the time. The velocity changes all the way: use {1/2*(u + v)}."
EARLIER = "It belongs to a time before the start: drop it."
AT_START = "It belongs to the start itself: drop it."
SIZES = "You subtracted the sizes. It turns round, so the signs of {u} and {v} are opposite: add the sizes."
HALF_WAY = "You have the time to the highest point. Coming down to the same level takes as long again: double it."
OTHER_SIZE = (
    "You have the size of the other root. A time below zero lies before the start: check the signs of {u} and {a}, and"
    " take the root above zero."
)
ON_THE_WAY = "You have the time at which it passes going %s. This part asks for the way %s: take the other root."


@dataclass(frozen=True)
class Pass:
    """One way in which the data can come about: velocities and displacement with upwards positive, and the time."""

    u: float
    v: float
    y: float
    t: float

    @property
    def turned(self) -> bool:
        """Whether it has gone up first and come down again."""
        return self.u > 0 > self.v


@dataclass(frozen=True)
class Known:
    """What is given of a flight, upwards positive; None for what is not."""

    u: float | None = None
    v: float | None = None
    y: float | None = None
    t: float | None = None

    @property
    def names(self) -> tuple[str, ...]:
        """The names of what is given."""
        return tuple(name for name in "uvyt" if getattr(self, name) is not None)

    def only(self, *names: str) -> Known:
        """The same with nothing but these."""
        return Known(**{name: getattr(self, name) for name in names})


def roots(first: float, second: float) -> tuple[float, ...]:
    """Two values, or one where they are the same."""
    return (first,) if abs(first - second) <= 1e-12 * max(abs(first), abs(second)) else (first, second)


def settled(value: float, scale: float) -> float:
    """A difference under a root, without the noise of the subtraction."""
    return 0.0 if abs(value) <= 1e-12 * scale else value


def passes(known: Known, g: float) -> tuple[Pass, ...]:
    """Every flight that two given values allow, the earlier first; those that lie before the start are left out."""
    return tuple(sorted((one for one in _found(known, g) if one.t > 1e-12), key=lambda one: one.t))


def _found(known: Known, g: float) -> list[Pass]:
    u, v, y, t = known.u, known.v, known.y, known.t
    if u is not None and v is not None:
        return [Pass(u, v, (u * u - v * v) / (2 * g), (u - v) / g)]
    if u is not None and t is not None:
        return [Pass(u, u - g * t, u * t - g * t * t / 2, t)]
    if v is not None and t is not None:
        return [Pass(v + g * t, v, v * t + g * t * t / 2, t)]
    if y is not None and t is not None:
        return [Pass(y / t + g * t / 2, y / t - g * t / 2, y, t)]
    if u is not None and y is not None:
        under = settled(u * u - 2 * g * y, u * u)
        return [Pass(u, end, y, (u - end) / g) for end in _both(under)]
    if v is not None and y is not None:
        under = settled(v * v + 2 * g * y, v * v)
        return [Pass(start, v, y, (start - v) / g) for start in _both(under)]
    return []


def _both(under: float) -> tuple[float, ...]:
    """Both square roots; none of a negative number."""
    return () if under < 0 else roots(under**0.5, -(under**0.5))


def written(value: float, unit: str, figures: int) -> str:
    """A number of a few figures as a learner types it."""
    return f"{float(f'{value:.{figures}g}') + 0.0:g} {unit}".replace(".", ",")


BACK = (
    ({"u", "t", "Deltay"}, "Put the time back: the displacement comes out", "Deltay = u*t + 1/2*a*t^2"),
    ({"u", "v", "Deltay"}, "Put the velocities back: both squares agree", "v^2 = u^2 + 2*a*Deltay"),
    ({"u", "v", "t"}, "Put the time back: the final velocity comes out", "v = u + a*t"),
    ({"v", "t", "Deltay"}, "Put the time back: the displacement comes out", "Deltay = v*t - 1/2*a*t^2"),
)


def put_back(values: Values) -> tuple[Check, ...]:
    """A check of three values of a flight; of four, the equations that were not used are checks."""
    known = {"u", "v", "t", "Deltay"} & values.keys()
    # a root of numbers of very different size carries fewer digits
    return tuple(Check(what, line, tolerance=1e-6) for names, what, line in BACK if names == known)


def sense(up: bool) -> str:
    """The positive direction told, with what follows for the signs."""
    return (
        "Upwards is positive, so whatever points downwards is negative."
        if up
        else "Downwards is positive, so whatever points upwards is negative."
    )


def sense_stated(words: str, up: bool) -> str:
    """Words that state upwards as the positive direction, or the same that state downwards."""
    return words if up else words.replace("upwards", "downwards").replace("Upwards", "Downwards")


def directed(step: Step, up: bool) -> Step:
    """A step whose value has a direction by its sign."""
    name = step.makes
    return replace(step, direction=lambda v: UP_DOWN.by_sign(v[name], "up" if up else "down"))


def only_given(typed: Mapping[str, object], given: Mapping[str, str], names: Iterable[str]) -> dict[str, object]:
    """Drawn data with those boxes of ``names`` emptied that practice does not give for the unknown drawn."""
    asked = next(name for name in given if not typed[name])
    keep = given[asked].split()
    return {name: "" if name in names and name not in keep else text for name, text in typed.items()}


def turned(typed: Mapping[str, object], *names: str) -> dict[str, object]:
    """Numbers typed for upwards positive as they are for the positive direction picked: the signed ones turned."""
    if typed["positive"] == "up":
        return {**typed}
    over = {name: other_sign(str(typed[name])) for name in names if typed[name]}
    return {**typed, **over}


def other_sign(text: str) -> str:
    """A number as typed with the other sign; zero stays."""
    if not text.strip("+-0, ").strip("ms/N"):
        return text
    return text[1:] if text.startswith("-") else f"-{text.removeprefix('+')}"


def falling(up: bool) -> Relation:
    """a = ∓g, the acceleration of free fall with its sign."""
    return Relation(
        "a = -g" if up else "a = g",
        what="The acceleration, with its sign",
        why=f"Only the gravitational force acts, so the acceleration is g downwards all the way. {sense(up)}",
        plain="Everything that is let go or thrown is pulled down, and always equally hard.",
        units={"a": "m·s⁻²"},
        marks=NO_MARKS,
        directions={"a": lambda v: UP_DOWN.by_sign(v["a"], "up" if up else "down")},
    )


PLAIN = "The velocity changes evenly, by g in each second; the rest is counting."
UNITS = {"u": "m·s⁻¹", "v": "m·s⁻¹", "Deltay": "m", "t": "s"}
LATER_ROOT = {True: "t = (-u - sqrt(u^2 + 2*a*Deltay))/a", False: "t = (-u + sqrt(u^2 + 2*a*Deltay))/a"}  # by up?
ROOT = {"v": "sqrt(u^2 + 2*a*Deltay)", "u": "sqrt(v^2 - 2*a*Deltay)"}


@dataclass(frozen=True)
class Roots:
    """Which root of a square is kept, and why not the other.

    kept: the flight that is worked. other: the flight of the other root where that is one too. apart: it is asked for
    in a part of its own.
    """

    kept: Pass
    other: Pass | None = None
    apart: bool = False

    def why_not(self, name: str) -> str:
        """Why the other root is not the answer here."""
        if self.other is None:
            return AT_START if not self.kept.y else EARLIER
        if name == "u":
            belongs = "a throw upwards" if self.other.turned else "a throw downwards"
            reason = "here it passes its highest point first" if self.kept.turned else "here it does not turn round"
        else:
            belongs, asked = ("the way down", "the way up") if self.other.turned else ("the way up", "the way down")
            reason = f"the words ask for {asked}"
        if self.apart:
            return f"It is right as well: it belongs to {belongs}, which the next part asks for."
        return f"It belongs to {belongs}, and {reason}: drop it."

    def step(self, law: Relation, name: str, up: bool) -> Step:
        """The step of a law for ``name`` with the root that is kept."""
        if name == "t":
            later = self.other is None or self.kept.t > self.other.t
            make, other = LATER_ROOT[up == later], LATER_ROOT[up != later]
        else:
            value = (self.kept.v if name == "v" else self.kept.u) * (1 if up else -1)
            signs = ("-", "") if value < 0 else ("", "-")
            make, other = (f"{name} = {sign}{ROOT[name]}" for sign in signs)
        single = self.other is None and not (self.kept.v if name != "u" else self.kept.u)
        return replace(law.step(name), make=make, other="" if single else other, dropped=self.why_not(name))


def equations(up: bool, roots: Roots, forgotten: str = START_FORGOTTEN) -> tuple[Relation, ...]:
    """The four equations for one flight, with the roots and the mistakes that belong to it.

    forgotten: what is said to whoever leaves out the initial velocity.
    """
    one = roots.kept
    why = "The acceleration stays the same all the way. Every value goes in with its sign."

    def law(form: str, what: str, *mistakes: Mistake) -> Relation:
        return Relation(form, what=what, why=why, plain=PLAIN, units=UNITS, mistakes=mistakes)

    squares = law("v^2 = u^2 + 2*a*Deltay", "Use the equation without the time", *of_squares(one, forgotten))
    places = law(
        "Deltay = u*t + 1/2*a*t^2", "Use the equation without the final velocity", *of_places(up, roots, forgotten)
    )
    return (
        law("v = u + a*t", "Use the equation without the displacement", *of_velocities(one)),
        replace(squares, by_hand={name: roots.step(squares, name, up) for name in ("v", "u")}),
        replace(places, by_hand={"t": roots.step(places, "t", up)}),
        law("Deltay = 1/2*(u + v)*t", "Use the mean of the two velocities", *of_means(one)),
    )


def of_velocities(one: Pass) -> tuple[Mistake, ...]:
    """Mistakes with v = u + at."""
    found = list[Mistake]()
    if one.u:
        found.append(Mistake("signs-mixed", "v", "u - a*t", SIGNS))
    if one.v:
        found.append(Mistake("signs-mixed", "u", "v + a*t", SIGNS))
    if one.turned and one.u != -one.v:
        found.append(Mistake("sizes-subtracted", "t", "abs(abs(v) - abs(u))/abs(a)", SIZES))
    if one.turned:
        found.append(Mistake("zero-at-the-end", "t", "-u/a", AT_REST))
    return tuple(found)


def of_squares(one: Pass, forgotten: str) -> tuple[Mistake, ...]:
    """Mistakes with v² = u² + 2aΔy."""
    found = list[Mistake]()
    if one.y:
        found.append(Mistake("signs-mixed", "v", "sqrt(u^2 - 2*a*Deltay)", SIGNS))
        found.append(Mistake("signs-mixed", "u", "sqrt(v^2 + 2*a*Deltay)", SIGNS))
        if one.u and one.y < 0:
            found.append(Mistake("start-forgotten", "v", "sqrt(2*a*Deltay)", forgotten))
    if one.turned and one.y <= 0:
        found.append(Mistake("distance", "Deltay", "(u^2 + v^2)/(2*abs(a))", DISTANCE))
    if one.u and one.v:
        found.append(Mistake("zero-at-the-end", "Deltay", "-u^2/(2*a)", AT_REST))
    return tuple(found)


def of_places(up: bool, roots: Roots, forgotten: str) -> tuple[Mistake, ...]:
    """Mistakes with Δy = ut + ½at²."""
    one, found = roots.kept, list[Mistake]()
    if one.u:
        found.append(Mistake("signs-mixed", "Deltay", "u*t - 1/2*a*t^2", SIGNS))
        found.append(Mistake("start-forgotten", "Deltay", "1/2*a*t^2", forgotten))
        if one.y < 0:
            found.append(Mistake("start-forgotten", "t", "sqrt(2*Deltay/a)", forgotten))
    if one.y:
        found.append(Mistake("signs-mixed", "u", "(Deltay + 1/2*a*t^2)/t", SIGNS))
    if one.turned:
        found.append(Mistake("zero-at-the-end", "t", "-u/a", AT_REST if one.y else HALF_WAY))
        if one.y <= 0:
            found.append(Mistake("distance", "Deltay", "u^2/abs(a) + abs(u*t + 1/2*a*t^2)", DISTANCE))
    later = roots.other is None or one.t > roots.other.t
    unused = LATER_ROOT[up != later].partition(" = ")[2]
    if roots.other is not None:
        say = ON_THE_WAY % (("down", "up") if roots.other.turned else ("up", "down"))
        found.append(Mistake("other-root", "t", unused, say))
    elif one.y and one.u:
        found.append(Mistake("other-root", "t", f"abs({unused})", OTHER_SIZE))
    return tuple(found)


def of_means(one: Pass) -> tuple[Mistake, ...]:
    """Mistakes with Δy = ½(u + v)t."""
    found = [Mistake("final-velocity", "Deltay", "v*t", FINAL)] if one.v else []
    if one.turned and one.u != -one.v:
        found.append(Mistake("signs-mixed", "Deltay", "1/2*(abs(u) + abs(v))*t", SIGNS))
        found.append(Mistake("signs-mixed", "t", "2*abs(Deltay)/(abs(u) + abs(v))", SIGNS))
    return tuple(found)
