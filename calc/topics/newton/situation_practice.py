"""What practice draws of the situation page: an arrangement for each draw, with numbers that can be worked."""

from __future__ import annotations

from math import radians, sin
from typing import Any

from calc.model.constants import Settings
from calc.model.questions import Data, Refusal
from calc.topics.forces.words import typed_as
from calc.topics.newton import situation_charges as charges
from calc.topics.newton.situation_back import LINKS, MASSES, solved, split
from calc.topics.newton.situation_chain import FURTHER, START, Setup, needed, set_up
from calc.topics.newton.situation_extras import ALSO, CHARGES, FIELD, FIXED, NEARBY
from calc.topics.newton.situation_shapes import CHAIN, FORCE, SHAPES, Shape
from calc.topics.shared.connected import MOST
from calc.working.chain import worth

NAMES = ("m1", "m2", "m3", "theta", "P", "phi", "mu_s", "mu_k", "theta2")
DRAWN = ("m1", "m2", "m3", "P", "phi", "mu_s", "mu_k", "theta")  # what practice asks for besides what happens
DRAWN_LATER = {"Q1": 6, "r": 6}  # the same from a rule of drawing on; these are held on to, so two are enough
EACH_DRAW = 5  # the rule of drawing from which an arrangement is settled for a draw, and other things are asked
TRIES = 12  # set-ups of one arrangement tried at once
CHARGED = 6  # the rule from which fixed charges are drawn, and strings that go slack
G = 9.8
KNOWN = {"g": G, "k": 9.0e9}
FORCES = {  # that have room, by arrangement
    "one": ("none", "pull-on", "push-on", "pull-back", "push-back"),
    "tow2": ("pull-on", "pull-on", "pull-back"),
    "touch2": ("push-on", "push-back"),
    "edge": ("none", "none", "pull-back", "push-on"),
    "pulley": ("none",),
    "tow3": ("pull-on", "pull-on", "pull-back"),
    "touch3": ("push-on", "push-back"),
    "towedge": ("none", "pull-back"),
    "ends": ("none",),
    "ridge": ("none", "none", "pull-on"),
}
LIKELY = {"m1": (3, 9), "m2": (3, 9), "m3": (3, 9), "P": (30, 120), "phi": (19, 34), "theta": (20, 40)}
LIMITS = {"P": (5, 250), "mu_s": (0.08, 0.95), "mu_k": (0.05, 0.9), "r": (0.05, 0.8)} | dict.fromkeys(MASSES, (0.5, 30))
LIMITS |= dict.fromkeys((*CHARGES, "Q"), (8e-7, 6e-5))
ANGLES = (radians(6), radians(62))


def practise(typed: dict[str, object], chance: Any, level: int) -> dict[str, object]:
    """Only the boxes that apply, in an arrangement that can be worked."""
    if getattr(chance, "rule", 1) < EACH_DRAW:
        return settled(typed)
    asked = next((name for name in DRAWN if not typed[name]), "a")
    if chance.asked in DRAWN_LATER:
        asked = chance.asked
    shapes = [key for key in SHAPES if key != "ridge"]
    if chance.rule >= CHARGED and level > 1:
        # Asked what happens, its mistakes lie close together; and no charge is asked of it, so it comes up seldom.
        shapes += ["ridge", "ridge"]
    chain = chance.kept.setdefault("chain", chance.choice(shapes))
    if chance.rule >= CHARGED and not has_room(chain, asked):
        chain = chance.choice([key for key in shapes if has_room(key, asked)])
    ready = typed | {"chain": chain, "also": "none", "field": "none", "fixed": "none"}
    for _ in range(TRIES):
        ready |= {"force": chance.choice(FORCES[chain])}
        ready |= likely(chance, SHAPES[chain], str(ready["force"]), asked)
        if SHAPES[chain].ridge:
            ready |= ridged(chance)
        ready |= further(chance, SHAPES[chain]) if level > 1 else {}
        if asked in charges.ASKED:
            ready |= electrified(chance, SHAPES[chain], asked)
        if loose(chance, SHAPES[chain], asked):
            ready |= parting(chance, SHAPES[chain])
        found = happening(ready, chance) if asked == "a" else asking(ready, asked, chance)
        if found:
            return found
    return ready


def likely(chance: Any, shape: Shape, force: str, asked: str) -> dict[str, str]:
    """Numbers for an arrangement. Three stand on the level where what happens is asked, and a force is about twice what
    resists: else a slip at one would be lost in what all of them feel. What is pulled is heavy enough to stay."""
    found, on = dict[str, str](), shape.on
    for name, (low, high) in LIKELY.items():
        value = low + (high - low) * chance.random()
        unit = "°" if name in ("theta", "phi") else "N" if name == "P" else "kg"
        found[name] = typed_as(value, unit, 2).replace(" °", "°")
    if (shape.count == MOST and asked == "a") or chance.random() < 0.2:
        found["theta"] = "0°"
    mu = (0.2 if on > 1 else 0.1) + 0.2 * chance.random()
    found |= {"mu_k": typed_as(mu, "", 2).strip(), "mu_s": typed_as(mu * 1.4, "", 2).strip()}
    if on > 1 and force.startswith("pull"):
        heavy = f"m{on}" if force == "pull-on" else "m1"
        found |= {name: typed_as((11 if name == heavy else 3) + 3 * chance.random(), "kg", 2) for name in MASSES[:on]}
    if on > 1:
        resists = mu + (sin(number(found["theta"])) if force.endswith("on") else 0.0)
        resists *= G * sum(number(found[name]) for name in MASSES[:on])
        found["P"] = typed_as((1.6 + 0.8 * chance.random()) * resists, "N", 2)
    return found


def ridged(chance: Any) -> dict[str, str]:
    """A steep slope and a flat one, so that something moves although friction is not small."""
    mu, steep, flat = 0.13 + 0.1 * chance.random(), 42 + 17 * chance.random(), 12 + 13 * chance.random()
    first, second = chance.choice(((steep, flat), (flat, steep)))
    angles = {"theta": first, "theta2": second}
    found = {name: typed_as(angle, "°", 2).replace(" °", "°") for name, angle in angles.items()}
    return found | {"mu_k": typed_as(mu, "", 2).strip(), "mu_s": typed_as(mu * 1.4, "", 2).strip()}


def further(chance: Any, shape: Shape) -> dict[str, str]:
    """Now and then a second force, or a charge in a field."""
    found = {"also": "none", "field": "none", **dict.fromkeys(FURTHER, "")}
    places = [n for n in range(1, shape.count + 1) if not shape.hangs(n)]
    if not places or chance.random() < 0.7:
        return found
    n, way = chance.choice(places), chance.choice(("on", "back"))
    if shape.ridge or chance.random() < 0.5:
        return found | {"also": f"{way}-{n}", "F": typed_as(8 + 14 * chance.random(), "N", 2)}
    if chance.rule >= CHARGED and chance.random() < 0.5:
        return found | electrified(chance, shape, "Q")
    sign, charge = chance.choice(("", "-")), typed_as(5 + 4 * chance.random(), "uC", 2)
    field = typed_as(1.2 + 1.6 * chance.random(), "x 10^6 N/C", 2)
    return found | {"field": way, f"Q{n}": sign + charge, "E": field}


def has_room(chain: str, asked: str) -> bool:
    """Whether this can be asked of an arrangement."""
    shape = SHAPES[chain]
    if shape.ridge and asked in (*NEARBY, *CHARGES):
        return False
    if asked in NEARBY:
        return bool(shape.standing) and not (shape.ahead and shape.behind)
    if asked in CHARGES:
        return int(asked[1]) in shape.standing
    return asked in {"a", *needed({"chain": chain, "force": FORCES[chain][-1]})}


def electrified(chance: Any, shape: Shape, asked: str) -> dict[str, str]:
    """A charged body in a field or beside a fixed charge, every box filled; nothing where there is no room for it."""
    places = [n for n in shape.standing if asked in (f"Q{n}", "Q", "r")]
    sides = [key for key, taken in (("on", shape.ahead), ("back", shape.behind)) if not taken]
    found = {"also": "none", "field": "none", "fixed": "none", **dict.fromkeys(FURTHER, "")}
    if not places:
        return found
    n, way = chance.choice(places), chance.choice(("on", "back"))
    one, other = (chance.choice(("", "-")) + typed_as(5 + 4 * chance.random(), "uC", 2) for _ in range(2))
    if asked in NEARBY or (sides and chance.random() < 0.5):
        if not sides:
            return found
        far = typed_as(0.14 + 0.16 * chance.random(), "m", 2)
        return found | {"fixed": chance.choice(sides), f"Q{n}": one, "Q": other, "r": far}
    return found | {"field": way, f"Q{n}": one, "E": typed_as(1.2 + 1.6 * chance.random(), "x 10^6 N/C", 2)}


def loose(chance: Any, shape: Shape, asked: str) -> bool:
    """Whether this draw is one of bodies in a row that part, or whose string goes slack."""
    if chance.rule < CHARGED or asked != "a" or shape.on < 2 or shape.ahead or shape.ridge:
        return False
    return bool(chance.kept.setdefault("loose", "yes" if chance.random() < 0.3 else ""))


def parting(chance: Any, shape: Shape) -> dict[str, str]:
    """Bodies that slide on the level: the second slows less than the first where they touch, more where it is tied."""
    smooth, rough = 0.08 + 0.06 * chance.random(), 0.3 + 0.15 * chance.random()
    one, two = (rough, smooth) if shape.touch else (smooth, rough)
    found = {"also": "none", "field": "none", "fixed": "none", **dict.fromkeys(FURTHER, "")}
    found |= {"force": "push-on" if shape.touch else "pull-on", "theta": "0°"}
    found |= {f"mu_k{own}": typed_as(mu, "", 2).strip() for own, mu in (("", one), ("2", two))}
    found |= {f"mu_s{own}": typed_as(mu * 1.4, "", 2).strip() for own, mu in (("", one), ("2", two))}
    return found | {"P": typed_as(5 + 7 * chance.random(), "N", 2)}


def happening(typed: dict[str, object], chance: Any) -> dict[str, object] | None:
    """A set-up of which is asked what happens; None where it cannot be worked in full."""
    ready = typed | {"start": chance.choice(("rest", "rest", "on", "back"))}
    if SHAPES[str(typed["chain"])].on == MOST and ready["start"] != "rest":
        ready["start"] = str(typed["force"]).partition("-")[2]
    apart = bool(chance.kept.get("loose"))
    kept = applying(ready | {"start": "on"} if apart else ready)
    try:
        here = set_up(choices_of(kept), values_of(kept) | KNOWN)
    except Refusal:
        return None
    if here.found.slack != apart:
        return None
    return kept if here.moves or len(here.rough) < 2 else None  # where several share the load, less is left to ask


def asking(typed: dict[str, object], asked: str, chance: Any) -> dict[str, object] | None:
    """A set-up of which something else is asked, its motion told; None where it cannot be."""
    kinds = {"mu_s": ("slips",), "mu_k": ("goes", "moves", "steady")}.get(asked, ("goes", "moves", "slips", "steady"))
    kind, way = chance.choice(kinds), chance.choice(("on", "back"))
    electric = asked in charges.ASKED
    if not typed[asked] if electric else asked not in needed(choices_of(typed)):
        return None
    ready = typed | {asked: "", "start": way if kind == "moves" else f"{kind}-{way}"}
    if kind in ("goes", "moves"):
        some = {} if electric else likely(chance, SHAPES[str(typed["chain"])], str(typed["force"]), asked)
        told = motion(typed | {asked: some.get(asked, typed[asked])}, kind, way, chance)
        if told is None:
            return None
        ready |= told
    kept = applying(ready, asked)
    data = Data(values_of(kept), {}, choices_of(kept), {}, {}, asked, Settings())
    try:
        steps = solved(data).steps
    except Refusal:
        return None
    value = worth(data.values, steps, data.settings.constants())[asked]
    low, high = LIMITS.get(asked, ANGLES)
    return kept if low <= value <= high else None


def motion(typed: dict[str, object], kind: str, way: str, chance: Any) -> dict[str, object] | None:
    """How the set-up moves, as it may be told: the way, and a or a force between bodies."""
    kept = applying(typed | {"start": "rest" if kind == "goes" else way})
    try:
        here = set_up(choices_of(kept), values_of(kept) | KNOWN)
    except Refusal:
        return None
    a = here.found.bodies[0].a * (1 if kind == "goes" or way == "on" else -1)
    if here.found.slack or not here.moves or abs(a) < 0.2:
        return None
    start = f"goes-{'on' if a > 0 else 'back'}" if kind == "goes" else way
    if here.shape.count > 1 and chance.random() < 0.4:
        return {"start": start, **link(here, chance)}
    return {"start": start, "a": typed_as(abs(a) if kind == "goes" else a, "m/s^2", 3)}


def link(here: Setup, chance: Any) -> dict[str, object]:
    """A force between two of the bodies."""
    n = int(chance.choice([n + 1 for n in range(here.shape.count - 1)]))
    return {f"{here.link}_{n}": typed_as(here.found.links[n - 1].force or 0.0, "N", 3)}


def choices_of(typed: dict[str, object]) -> dict[str, str]:
    """The choices."""
    return {one.name: str(typed[one.name]) for one in (CHAIN, FORCE, START, ALSO, FIELD, FIXED)}


def values_of(typed: dict[str, object]) -> dict[str, float]:
    """What the boxes hold, in SI."""
    return {name: number(str(typed[name])) for name in (*NAMES, "a", *LINKS, *FURTHER) if typed.get(name)}


def applying(typed: dict[str, object], asked: str = "") -> dict[str, object]:
    """Without the boxes that do not apply, and without the coefficient that does not count for what is asked."""
    choices, _, told = split(choices_of(typed))
    there = needed(choices)
    if asked:
        there = there - {asked, "mu_k" if told == "slips" else "mu_s"}
    return {name: "" if name in NAMES and name not in there else text for name, text in typed.items()}


def settled(typed: dict[str, object]) -> dict[str, object]:
    """Only the boxes that apply, in an arrangement that can be worked; else one that always can."""
    shape = SHAPES[str(typed["chain"])]
    ready, (noun, _, way) = dict(typed), str(typed["force"]).partition("-")
    if shape.touch or shape.on > 1:
        noun, way = "push" if shape.touch else "pull", way or "on"  # without one they pull or push with no force
    if shape.ahead and noun != "none":
        noun, way = ("pull", "back") if shape.on > 1 else (noun, "on" if noun == "push" else "back")
    if noun == "none" or shape.behind or not way:
        ready["force"] = "none"
    else:
        ready["force"] = f"{noun}-{way}"
    for tried in (ready, ready | {"P": "110 N"}, ready | {"force": "none", "start": "rest", "chain": "edge"}):
        choices = {one.name: str(tried[one.name]) for one in (CHAIN, FORCE, START)}
        apply = needed(choices)
        kept = {name: tried[name] if name in apply or name not in NAMES else "" for name in tried}
        try:
            here = set_up(choices, {"g": G} | {name: number(str(kept[name])) for name in NAMES if kept.get(name)})
        except Refusal:
            continue
        if not here.found.slack and (here.moves or len(here.rough) < 2):
            return kept
    return {**kept, "m2": typed_as(9.0, "kg", 2)}


def number(text: str) -> float:
    """What practice typed, in SI."""
    value = float(text.split("°")[0].split()[0].replace(",", "."))
    if "°" in text:
        return radians(value)
    return value * (1e-6 if text.endswith("uC") else 1e6 if "10^6" in text else 1.0)
