"""What sentences claim about directions, signs and sizes, held against the charges, the places and the drawn arrows.

Each rule reads one kind of sentence wherever it stands and works its claim out again. A rule must be
met in each of its forms ("attracts" and "repels"), and every sentence that is found in two forms with
opposite words must be read by a rule: a new topic is tested here without a line of its own, or asks for a rule.
"""

from __future__ import annotations

import json
import os
import re
from collections import defaultdict
from collections.abc import Callable, Iterator
from functools import cache
from math import atan2, degrees, sin
from pathlib import Path
from typing import NamedTuple

import pytest

from calc.figures import Plate, Sphere
from calc.model.questions import Choice, Worded
from calc.topics import find
from calc.working.working import direction
from tests.cases import KEYS, LEVELS, SEEDS, Case, cases
from tests.cases import case as worked_case
from tests.test_arrows import arrows, bare, heading, turn

_LOWERED = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")
WAY = (
    r"(?:at )?(?:to the (?:left|right) and (?:up|down)|to the (?:left|right)|upwards|downwards|(?:up|down) the slope|"
    r"[\d,]+° (?:above|below) the [+−]x axis)"
)


def told_beside(case: Case) -> Iterator[str]:
    """What only repeats the data or a figure: other tests hold these against the data (test_arrows)."""
    yield case.worked.story
    if case.worked.figure:
        yield case.worked.figure.description
    for part in case.worked.parts:
        yield part.ask
        if part.figure:
            yield part.figure.description
        for step in part.steps:
            yield f"[{step.makes}] {step.direction.words if step.direction else ''}"


def sentences(case: Case) -> Iterator[str]:
    """Every sentence that draws a conclusion from the data, with the name a step makes before its own."""
    for part in case.worked.parts:
        for step in part.steps:
            yield f"[{step.makes}] {step.what}. {step.why}"
        yield " ".join(point.words for point in part.points)
    for check in case.worked.checks:
        yield f"{check.what} {check.words}"
    yield from case.worked.notes


@cache
def told(case_name: str, key: str) -> dict[str, str]:
    """The words of each step's direction."""
    seed, level = map(int, case_name.split()[1].split("/"))
    one = worked_case(key, seed, level)
    return {s.makes: way.words for s in one.plan.steps if (way := direction(s, one.values))}


def ways(case: Case) -> dict[str, str]:
    """The words of each step's direction, for a case."""
    return told(case.name, case.name.split()[0])


def keys(case: Case) -> dict[str, str]:
    """The key of each step's direction."""
    return {s.makes: w.key for s in case.plan.steps if (w := direction(s, case.values))}


def positive(case: Case, tag: str) -> bool:
    """Whether charge ``tag`` (1, A, q) is positive, by its value or, where it is asked, by its direction."""
    for name in (f"Q{tag}", f"Q_{tag}", tag, "Q" if tag in ("1", "A") else tag):
        key = keys(case).get(name)
        if key in ("positive", "negative"):
            return key == "positive"
        if name in case.values:
            return case.values[name] > 0
    raise AssertionError(f"{case.name}: no charge {tag}")


def alike(case: Case, first: str, second: str) -> bool:
    """Whether two charges have the same sign."""
    return positive(case, first) == positive(case, second)


def angle(case: Case, words: str) -> float:
    """The heading of a way in words; up a slope as the slope rises."""
    if words.endswith("slope"):
        return degrees(case.values["theta"]) + (180 if words.startswith("down") else 0)
    return angle_of(words)


def angle_of(words: str) -> float:
    """The heading of a way in words on the page."""
    words = words.removeprefix("at ")
    plain = {"to the right": 0.0, "upwards": 90.0, "to the left": 180.0, "downwards": 270.0}
    if words in plain:
        return plain[words]
    if " and " in words:  # a quarter of the page, where the angle is still to be found
        return {
            "right and up": 45.0,
            "left and up": 135.0,
            "left and down": 225.0,
            "right and down": 315.0,
        }[words.removeprefix("to the ")]
    found = re.fullmatch(r"([\d,]+)° (above|below) the ([+−])x axis", words)
    assert found, words
    size = float(found[1].replace(",", "."))
    up = size if found[3] == "+" else 180 - size
    return up if found[2] == "above" else -up % 360


def drawn(case: Case, label: str) -> float:
    """The heading of the arrow with this label in the part that asks for the forces."""
    figure = next(part.figure for part in case.worked.parts if part.key == "draw")
    assert figure
    return heading(next(a for a in arrows(figure) if bare(a.label) == label))


def close(case: Case, label: str, words: str) -> bool:
    """Whether the drawn arrow has the direction in words."""
    return turn(drawn(case, label), angle(case, words)) < (45 if " and " in words else 0.2)


def agrees(words: str, direction_: str) -> bool:
    """Whether a way in words is that of a direction; where it leaves the angle open, only its quarter is held
    against it."""
    if " and " in words:
        return turn(angle_of(words), angle_of(direction_.split(" (")[0])) < 45
    return words.removeprefix("at ") in direction_


def attracted(case: Case) -> bool:
    """Whether the one electrostatic force on a body at rest is attraction, by the charges or by what is told."""
    acting = case.data.choices.get("acting")
    if acting in ("attract", "repel"):
        return acting == "attract"
    if case.data.choices.get("hang") in ("towards", "apart"):
        return case.data.choices["hang"] == "towards"
    if "hook" in case.worked.story and case.data.choices.get("supports", "one") == "one":
        return False  # on one hook they would touch
    return not alike(case, "1", "2")


def plates(case: Case) -> str:
    """'upper' or 'lower': the negative plate of the scene."""
    scene = case.worked.figure
    assert scene
    upper = max((i for i in scene.items if isinstance(i, Plate)), key=lambda plate: plate.start[1])
    return "upper" if upper.sign == "-" else "lower"


# --- the rules: a pattern, and whether its words are true of a case ---

Rule = Callable[[Case, re.Match[str]], bool]
RULES: dict[str, tuple[re.Pattern[str], Rule, tuple[int, ...]]] = {}


def rule(pattern: str, *forms: int) -> Callable[[Rule], Rule]:
    """Note a rule. forms: the groups that must be met with more than one word."""

    def note(check: Rule) -> Rule:
        RULES[check.__name__[1:]] = (re.compile(pattern.replace("WAY", WAY)), check, forms)
        return check

    return note


@rule(
    r"\[(\w+)\] [^\[]*?(Like|Unlike) charges (repel|attract): \w+ (\w+) (pushes|pulls) \w+ (\w+) (WAY)\.",
    2,
    3,
    5,
)
def _like_charges_repel(case: Case, m: re.Match[str]) -> bool:
    same = alike(case, m[4], m[6])
    said = (m[2] == "Like", m[3] == "repel", m[5] == "pushes")
    return said == (same,) * 3 and agrees(m[7], ways(case)[m[1]])


@rule(
    r"\[(E_\w+)\] [^\[]*?(?:Charge|Dome) (\w+) (attracts|repels) a small positive test charge: its field points"
    r" (towards|away from) it, (WAY)\.",
    3,
    4,
)
def _a_test_charge_is_repelled_by_a_positive_one(case: Case, m: re.Match[str]) -> bool:
    plus = positive(case, m[2])
    return (m[3] == "repels", m[4] == "away from") == (plus, plus) and m[5].removeprefix("at ") in ways(case)[m[1]]


@rule(
    r"Arrow F_?(\w)(\w) starts on \w+ (\w+) and points (away from|towards) \w+ (\w+) \((WAY)\), with a head",
    4,
)
def _a_drawn_force_starts_on_the_body_it_acts_on(case: Case, m: re.Match[str]) -> bool:
    names = (m[1], m[2]) == (m[5], m[3])
    return names and (m[4] == "away from") == alike(case, m[1], m[2]) and close(case, f"F{m[1]}{m[2]}", m[6])


@rule(r"Arrow F_?(\w)(\w) points (to the left|to the right), with head and label", 3)
def _a_listed_arrow_is_drawn_so(case: Case, m: re.Match[str]) -> bool:
    return ways(case)[f"F_{m[1]}{m[2]}"].startswith(m[3])


@rule(r"Arrow E_?(\w) at P points (away from|towards) \w+ (\w+), (WAY)\.", 2)
def _a_drawn_field_points_away_from_plus(case: Case, m: re.Match[str]) -> bool:
    return (
        m[1] == m[3]
        and (m[2] == "away from") == positive(case, m[1])
        and m[4].removeprefix("at ") in ways(case)[f"E_{m[1]}"]
    )


@rule(
    r"The charge(?: of the (\w+) has the size e\. The charge)? is (positive|negative): the force (has the direction"
    r" of|is opposite to) the field",
    2,
    3,
)
def _a_force_is_along_the_field_for_plus_only(case: Case, m: re.Match[str]) -> bool:
    plus = m[1] == "proton" if m[1] else positive(case, "q")
    return (m[2] == "positive", m[3].startswith("has")) == (plus, plus)


@rule(
    r"The charge is (positive|negative), so a small positive test charge at P is (attracted|repelled)\. .*?: (away"
    r" from|towards) the charge",
    1,
    2,
    3,
)
def _a_field_is_the_way_a_test_charge_is_pushed(case: Case, m: re.Match[str]) -> bool:
    plus = positive(case, "Q")
    return (m[1] == "positive", m[2] == "repelled", m[3] == "away from") == (plus,) * 3


@rule(r"[Ss]ubtract the (smaller|larger) from the (smaller|larger)(?:[;,] the (smaller|larger) gives the direction)?")
def _the_smaller_is_subtracted_and_the_larger_gives_the_direction(case: Case, m: re.Match[str]) -> bool:
    return (m[1], m[2], m[3] or "larger") == ("smaller", "larger", "larger")


@rule(
    r"The field E points (WAY)\. The charge q is (positive|negative)\. The force F on it points (WAY)\.",
    1,
    2,
    3,
)
def _a_scene_tells_field_force_and_sign_that_fit(case: Case, m: re.Match[str]) -> bool:
    apart = turn(angle(case, m[1]), angle(case, m[3]))
    return apart == (0 if m[2] == "positive" else 180)


@rule(
    r"The field points (WAY) and the force (WAY)\. .*?the charge is (positive|negative)|The charge is"
    r" (positive|negative): the direction of the force on it is (opposite to|[^.]*?) (?:that of )?the field",
    5,
)
def _a_memo_tells_field_force_and_sign_that_fit(case: Case, m: re.Match[str]) -> bool:
    if m[1]:
        return (angle(case, m[1]) == angle(case, m[2])) == (m[3] == "positive")
    return (m[4] == "positive") == (m[5] != "opposite to") == positive(case, "q")


@rule(
    r"pushed along the field, a negative one against it, so the (?:charge is (positive|negative)|(?:field|force on it)"
    r" points (WAY))",
    1,
    2,
)
def _what_follows_from_the_push_is_the_answer(case: Case, m: re.Match[str]) -> bool:
    answers = [shown.direction.words for shown in case.worked.answers if shown.direction]
    return any((m[1] or m[2]) in words for words in answers)


@rule(
    r"The (electron|proton) is (negative|positive), so the force on it is (opposite to|in the direction of) the"
    r" field\..*?It accelerates in the direction of the net force: (WAY)",
    1,
    2,
    3,
    4,
)
def _a_particle_is_pushed_by_its_own_sign(case: Case, m: re.Match[str]) -> bool:
    plus = m[1] == "proton"
    return (m[2] == "positive", m[3].startswith("in")) == (plus, plus) and any(
        m[4] in words for words in ways(case).values()
    )


@rule(
    r"the field points (upwards|downwards), so the force is (opposite to|in the direction of) the field.*?(?:charge"
    r" is|drop is|so it is) (positive|negative)|the field points (upwards|downwards), so the force is (opposite to|in"
    r" the direction of) the field",
    4,
    5,
)
def _a_hovering_drop_is_pushed_up_along_or_against_the_field(case: Case, m: re.Match[str]) -> bool:
    up = (m[1] or m[4]) == "upwards"
    return up == ((m[2] or m[5]) == "in the direction of") == (plates(case) == "upper")


@rule(
    r"towards the negative plate, here the (upper|lower) one|towards the negative plate, (upwards|downwards)",
    1,
    2,
)
def _arrows_go_to_the_negative_plate(case: Case, m: re.Match[str]) -> bool:
    return ("upper" if m[1] == "upper" or m[2] == "upwards" else "lower") == plates(case)


@rule(r"Both charges are (positive|negative) afterwards", 1)
def _a_charge_shared_has_the_sign_told(case: Case, m: re.Match[str]) -> bool:
    return (case.values["Q_new"] > 0) == (m[1] == "positive")


@rule(r"They (attract|repel), so the charges have (opposite signs|the same sign)")
def _unlike_charges_attract(case: Case, m: re.Match[str]) -> bool:
    same = case.values["Q1"] * case.values["Q2"] > 0
    return (m[1] == "repel", m[2] == "the same sign") == (same, same)


@rule(r"F_E: the electrostatic force, to the (right|left), (along|against) the field", 1, 2)
def _a_horizontal_push_is_drawn_and_goes_with_the_field_or_not(case: Case, m: re.Match[str]) -> bool:
    field = re.search(r"(?:points|field) to the (right|left)", case.plan.story)
    assert field is not None
    right = m[1] == "right"
    return turn(drawn(case, "FE"), 0.0 if right else 180.0) < 1e-6 and (field[1] == m[1]) == (m[2] == "along")


@rule(r"the (upper|lower) plate is (positive|negative)", 2)
def _a_story_tells_the_plates_as_drawn(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == plates(case)) == (m[2] == "negative")


@rule(
    r"The field points (upwards|downwards); the electrostatic force on the drop points (upwards|downwards)",
    1,
)
def _a_note_tells_the_field_between_the_plates(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "upwards") == (plates(case) == "upper") and m[2] == "upwards"


@rule(r"Take (up|down) as positive: the (weight|electrostatic force) is now the larger", 1, 2)
def _the_larger_force_gives_the_start(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "up") == (m[2] != "weight") == (keys(case)["a"] == "up")


@rule(
    r"qE becomes (smaller|larger) than the weight\..*?The net force is (upwards|downwards), so the drop accelerates"
    r" (upwards|downwards)"
)
def _a_smaller_push_lets_the_drop_fall(case: Case, m: re.Match[str]) -> bool:
    grows = m[1] == "larger"
    return grows == (m[2] == "upwards") == (m[3] == "upwards")


@rule(r"V stays the same and d (increases|decreases), so E = V/d (increases|decreases)\..*?qE becomes (smaller|larger)")
def _further_plates_make_a_weaker_field(case: Case, m: re.Match[str]) -> bool:
    return m[1] != m[2] and (m[2] == "increases") == (m[3] == "larger")


@rule(
    r"F_E: the electrostatic force, (?:horizontally, )?(away from|towards) the (?:fixed charge|other sphere)(?:,"
    r" (WAY))?",
    1,
)
def _a_push_is_away_and_a_pull_towards(case: Case, m: re.Match[str]) -> bool:
    pulled = m[1] == "towards"
    return pulled == attracted(case) and (not m[2] or close(case, "FE", m[2]))


@rule(r"f: friction, (WAY)", 1)
def _friction_is_drawn_against_the_other_forces_or_the_motion(case: Case, m: re.Match[str]) -> bool:
    way = angle(case, m[1])
    if "D" in case.values:
        along = case.values.get("theta", 0.0)
        return turn(way, degrees(along) + (180 if case.values["D"] > 0 else 0)) < 0.2
    if "slope" not in m[1]:  # pairs on the level are drawn to the right
        return m[1] == "to the left"
    way_ = case.data.choices.get("motion") or case.data.choices.get("way") or "up"  # a box pushed up a ramp
    up = way_.endswith("up")
    if way_ == "unsaid":  # released from rest: the heavier pull along the string wins
        up = case.values["m2"] > case.values["m1"] * sin(case.values["theta"])
    return m[1] == ("down the slope" if up else "up the slope")


@rule(r"D is [\d,]+\sN and the largest static friction is [\d,]+\sN: D is (smaller|larger)", 1)
def _what_is_to_be_held_beside_what_can_be(case: Case, m: re.Match[str]) -> bool:
    pressed = sum(value for name, value in case.values.items() if re.fullmatch(r"N(_\d)?", name))
    return (m[1] == "larger") == (abs(case.values["D"]) > case.values["mu_s"] * pressed)


def onwards(case: Case) -> float:
    """Which way a chain of bodies of the reader's own moves or would: above zero forwards."""
    start = {"rest": 0.0, "on": 1.0, "back": -1.0}[case.data.choices["start"]]
    return start or case.values["D"]


def forwards(words: str) -> bool:
    """Whether a way in words is to the right or up."""
    return words in ("to the right", "up the slope", "upwards")


@rule(r"f: friction on it, (WAY)", 1)
def _friction_on_a_chain_is_against_its_motion(case: Case, m: re.Match[str]) -> bool:
    return forwards(m[1]) == (onwards(case) < 0)


@rule(r"(?:It|They) starts? to move(?:, the (?:body|bodies) on the (?:surface|left))? (WAY)", 1)
def _a_chain_starts_to_move_along_d(case: Case, m: re.Match[str]) -> bool:
    return forwards(m[1]) == (case.values["D"] > 0)


@rule(r"The positive direction is that of (the motion|D)(?:, told of the body on the left)?: (WAY)", 2)
def _the_positive_direction_of_a_chain_is_told(case: Case, m: re.Match[str]) -> bool:
    return forwards(m[2]) == (onwards(case) > 0) or (not onwards(case) and m[1] == "D")


@rule(
    r"P: the (pull|push), (to the left|to the right|up the slope|down the slope), at φ (above|below) the surface", 2, 3
)
def _a_force_on_a_chain_is_told_as_chosen(case: Case, m: re.Match[str]) -> bool:
    noun, _, way = case.data.choices["force"].partition("-")
    return m[1] == noun and forwards(m[2]) == (way == "on") and (m[3] == "above") == (noun == "pull")


@rule(
    r"[TR]([₁₂12]): the (tension|force of the (first|second|third) body), "
    r"(to the left|to the right|(?:up|down) the slope)",
    4,
)
def _what_joins_a_chain_acts_both_ways(case: Case, m: re.Match[str]) -> bool:
    if m[3]:  # contact pushes away from the other body
        return forwards(m[4]) == (m[3] == {"1": "first", "2": "second"}[m[1].translate(_LOWERED)])
    ways = [
        forwards(point.words.rstrip(".").rpartition(", ")[2])
        for part in case.worked.parts
        if part.kind == "draw"
        for point in part.points
        if point.words.translate(_LOWERED).startswith(f"T{m[1].translate(_LOWERED)}: ") and "upwards" not in point.words
    ]
    return ways in ([True, False], [True], [False])


@rule(
    r"For the body (?:that hangs )?on the (left|right): "
    r"(T[₁₂12] − m[₁₂₃123]g|m[₁₂₃123]g − T[₁₂12]) = (?:m([₁₂₃123])a|0)",
    1,
    2,
)
def _one_end_of_a_string_rises_and_the_other_falls(case: Case, m: re.Match[str]) -> bool:
    rises = (onwards(case) > 0) == (m[1] == "left")
    return m[2].startswith("T") == rises and (not m[3] or (m[3] in "₁1") == (m[1] == "left"))


@rule(r"\[T_([12])\] Use the equation of the body that hangs on the (left|right) alone", 2)
def _the_string_on_the_left_is_the_first(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "1") == (m[2] == "left")


@rule(r"T([₁₂12]): the tension of the (left|right) string", 1, 2)
def _the_first_string_is_the_left_one(case: Case, m: re.Match[str]) -> bool:
    to_left = abs(turn(drawn(case, f"T{m[1].translate(_LOWERED)}"), 180)) < 90
    return to_left == (m[2] == "left")


@rule(r"([TR]): the (?:tension|force of the (?:first|second) body), (to the left|to the right)", 2)
def _what_joins_two_bodies_acts_both_ways(case: Case, m: re.Match[str]) -> bool:
    both = [part for part in case.worked.parts if part.key in ("draw-1", "draw-2")]
    told = [point.words for part in both for point in part.points if point.words.startswith(f"{m[1]}: ")]
    ways = [heading(a) for part in both if part.figure for a in arrows(part.figure) if bare(a.label) == m[1]]
    if len(told) < 2 or not any("to the left" in words for words in told):  # over a pulley the other end points up
        return m[2] == "to the right"
    return [angle_of(words.rstrip(".").rpartition(", ")[2]) for words in told] == [round(way) % 360 for way in ways]


@rule(r"\[phi_([12])\] Balance along and across the level, for the (smaller|larger) angle", 2)
def _the_smaller_of_two_angles_is_called_so(case: Case, m: re.Match[str]) -> bool:
    other = case.values.get("phi_2" if m[1] == "1" else "phi_1", 0.0)
    return (m[2] == "larger") == (case.values[f"phi_{m[1]}"] > other)


@rule(r"Moving (upwards|downwards) it (speeds up|slows down)", 1, 2)
def _a_lift_speeds_up_along_its_acceleration(case: Case, m: re.Match[str]) -> bool:
    return (m[2] == "speeds up") == ((m[1] == "upwards") == (case.values["a"] > 0))


@rule(r"T: the tension, along the string, (WAY)", 1)
def _a_tension_is_along_the_string_as_drawn(case: Case, m: re.Match[str]) -> bool:
    string = case.data.choices.get("string", "up" if "up" in m[1] else "down")
    return close(case, "T", m[1]) and string in ("up", "down") and m[1].startswith(string)


@rule(
    r"(?:^|\. |\] )[^.]*?(\w+(?: and \w+)?) acts? (up the slope|upwards); ([^.;]*?) pulls? (down the slope|downwards)",
    1,
)
def _the_two_sides_of_a_balance_are_as_drawn(case: Case, m: re.Match[str]) -> bool:
    up, down = m[1].split(" and "), re.findall(r"\bT\b|F_E", m[3])
    rise = 1 if m[2].startswith("up") else -1
    heads = {name: drawn(case, name.replace("_", "")) for name in (*up, *down)}
    return (
        m[2][:2] == "up" and all((0 < heads[n] < 180) == (rise > 0) for n in up) and all(heads[n] > 180 for n in down)
    )


def with_motion(case: Case) -> bool:
    """After the cut the body moves against the tension: whether F_E points the same way."""
    return turn(drawn(case, "FE"), drawn(case, "T")) > 90


@rule(
    r"The sphere moves (towards|away from) the (?:fixed charge|other one): r becomes (smaller|larger), so F_E becomes"
    r" (larger|smaller)\. ?(?:F_E acts (WAY), (with|against) the motion, so the net force and the acceleration"
    r" (grow|shrink))?",
    1,
    2,
    3,
    5,
    6,
)
def _after_the_cut_the_force_changes_with_the_distance(case: Case, m: re.Match[str]) -> bool:
    nearer = m[1] == "towards"
    chain = nearer == (m[2] == "smaller") == (m[3] == "larger")
    if not m[4]:
        return chain and nearer == attracted(case)
    along = with_motion(case)
    return (
        chain
        and close(case, "FE", m[4])
        and (m[5] == "with") == along
        and nearer == (along == attracted(case))
        and (m[6] == "grow") == (along == nearer)
    )


@rule(
    r"Closer, r is smaller, so the (attraction|repulsion) F_E becomes larger\. The net force now points (WAY),"
    r" (towards|away from) the fixed charge: the sphere (comes back|does not come back), the equilibrium is"
    r" (stable|unstable)",
    1,
    3,
    4,
    5,
)
def _attraction_makes_an_equilibrium_unstable(case: Case, m: re.Match[str]) -> bool:
    pulled = attracted(case)
    said = (m[1] == "attraction", m[3] == "towards", m[4] != "comes back", m[5] == "unstable")
    return said == (pulled,) * 4 and close(case, "FE", m[2])


@rule(
    r"(?:fixed|is fixed) (?:on the slope, )?(?:[\d,]+ \w+ )?(?:straight )?(further up|further down|above|below)\b",
    1,
)
def _a_story_puts_the_fixed_charge_where_it_is_drawn(case: Case, m: re.Match[str]) -> bool:
    scene = case.worked.figure
    if scene is None:
        return True
    at = {s.label: s.centre[1] for s in scene.items if isinstance(s, Sphere)}
    return (at["B"] > at["A"]) == (m[1] in ("further up", "above"))


@rule(
    r"The (fixed charge|sphere|ball) is (positive|negative): its field points (towards|away from) it, (up|down) the"
    r" slope",
    2,
    3,
)
def _the_field_of_each_charge_on_a_slope(case: Case, m: re.Match[str]) -> bool:
    plus = positive(case, "2" if m[1] == "fixed charge" else "1")
    return (m[2] == "positive", m[3] == "away from") == (plus, plus)


@rule(
    r"\[(\w+)\] [^\[]*?(All the forces point the same way|Opposite directions get opposite signs)[^.]*\. A positive sum"
    r" points to the (left|right)",
    2,
    3,
)
def _a_sum_on_a_line_is_read_with_its_positive_direction(case: Case, m: re.Match[str]) -> bool:
    sides = {key for name, key in keys(case).items() if re.fullmatch(r"F_\d\d|F_[A-C]B", name)}
    net = keys(case)["F_net"]
    fits = net == "none" or (net == m[3]) == (case.values[m[1]] > 0)
    return fits and (len(sides) == 1) == m[2].startswith("All")


@rule(r"A plus sign means to the (left|right), a minus sign the opposite", 1)
def _the_sign_of_a_net_force_means_what_is_said(case: Case, m: re.Match[str]) -> bool:
    net = keys(case)["F_net"]
    total = next(value for name, value in case.values.items() if name == "SigmaF")
    return net == "none" or (net == m[1]) == (total > 0)


@rule(r"(The fields at P all point the same way|fields the other way count as negative)", 1)
def _fields_are_added_or_subtracted_as_they_point(case: Case, m: re.Match[str]) -> bool:
    sides = {key for name, key in keys(case).items() if re.fullmatch(r"E_[\dAB]", name) and key in ("left", "right")}
    return len(sides) == (1 if "same" in m[1] else 2)


@rule(r"\[(\w+?)[xy]\] [^\[]*?(?:The force|This field) points (WAY)\. Resolve it")
def _a_component_is_of_the_direction_told_before(case: Case, m: re.Match[str]) -> bool:
    return agrees(m[2], ways(case)[m[1]])


@rule(
    r"The resultant points (above|below) the ([+−])x axis, so θ is measured from the ([+−])x axis",
    1,
    2,
)
def _the_angle_is_from_the_nearer_end_of_the_axis(case: Case, m: re.Match[str]) -> bool:
    key = keys(case)["theta"]
    return m[2] == m[3] and ("up" in key) == (m[1] == "above") and ("right" in key) == (m[2] == "+")


@rule(
    r"Between (like|unlike) charges the two fields point (opposite ways|the same way); outside them (opposite ways|the"
    r" same way)",
    1,
    2,
    3,
)
def _fields_between_like_charges_are_opposite(case: Case, m: re.Match[str]) -> bool:
    same = alike(case, "1", "2") if "Q1" in case.values else alike(case, "A", "B")
    return same == (m[1] == "like") == m[2].startswith("opposite") == m[3].startswith("the same")


@rule(
    r"Between the charges (?:both forces on a third charge|the two forces) point (opposite ways|the same way), so they"
    r" (can cancel|cannot cancel)",
    1,
    2,
)
def _forces_between_like_charges_can_cancel(case: Case, m: re.Match[str]) -> bool:
    same = alike(case, "1", "2")
    return same == m[1].startswith("opposite") == (m[2] == "can cancel")


@rule(
    r"Beyond charge (\d), the (smaller|larger) one, the forces (?:are|on the third charge are)"
    r" opposite(?:[^.]*?(nearer|farther away))?",
    2,
)
def _of_two_unlike_charges_the_named_one_is_the_smaller(case: Case, m: re.Match[str]) -> bool:
    sizes = {tag: abs(case.values[f"Q{tag}"]) for tag in "12"}
    smaller = sizes[m[1]] == min(sizes.values())
    return smaller == (m[2] == "smaller") and m[3] in (
        None,
        "farther away" if smaller else "nearer",
    )


@rule(
    r"To the (left|right) of charge (\d), charge (\d) would give a force to the (left|right)"
    r" \((attraction|repulsion)\), (the wrong way|which is what is needed)",
    1,
    4,
    5,
    6,
)
def _a_third_charge_is_looked_for_on_both_sides(case: Case, m: re.Match[str]) -> bool:
    pull = not alike(case, m[2], m[3])
    way = m[1] if pull else {"left": "right", "right": "left"}[m[1]]
    needed = keys(case)[f"F_{m[3]}{m[2]}"]
    return (m[5] == "attraction") == pull and m[4] == way and (m[6] == "which is what is needed") == (way == needed)


@rule(r"\[(\w+)\] [^\[]*?(?:Charge )?(\w) is to the (left|right) of (?:charge )?(\w)\.", 3)
def _a_stated_side_gives_the_sign(case: Case, m: re.Match[str]) -> bool:
    pull = keys(case)[f"F_{m[2]}{m[4]}"] == m[3]
    return pull != alike(case, m[2], m[4])


@rule(
    r"\[(\w+)\] [^\[]*?Here the two forces point (opposite ways|the same way); plus for a force in the stated"
    r" direction\. \w is measured from charge (\d), to the (left|right)",
    2,
    4,
)
def _the_place_of_a_third_charge_is_read_from_the_named_charge(case: Case, m: re.Match[str]) -> bool:
    words = ways(case)[m[1]]
    between = words.startswith("between")
    return (m[2] == "opposite ways") == (between == alike(case, "1", "2")) and f"charge {m[3]}, to the {m[4]}" in words


@rule(
    r"Superposition[^.\[]*?, taking to the (left|right) as positive\.(?:[^\[.]*\. A positive sum points to the"
    r" (left|right))?",
    1,
)
def _the_stated_net_force_is_taken_as_positive(case: Case, m: re.Match[str]) -> bool:
    if m[2]:
        return m[1] == m[2] == case.data.choices.get("positive", m[2])
    given = case.worked.story + " ".join(part.ask for part in case.worked.parts)
    return f"to the {m[1]}" in given


@rule(
    r"Both forces on charge \d point to the (left|right) there\.( The net force has the wrong direction)?",
    1,
)
def _where_both_forces_help_they_have_the_stated_direction(case: Case, m: re.Match[str]) -> bool:
    return (re.findall(r"to the (left|right)\.", case.worked.story)[-1] != m[1]) == bool(m[2])


@rule(
    r"electrons too (many|few)(?! or)|too (many|few) electrons: the charge is (negative|positive)",
    1,
    2,
)
def _a_charge_lacks_electrons_where_it_is_positive(case: Case, m: re.Match[str]) -> bool:
    if m[3]:
        return (m[2] == "few") == (m[3] == "positive")
    lacking = case.data.choices.get("which") or ("lacking" if plates(case) == "upper" else "")
    return (m[1] == "few") == (lacking == "lacking")


@rule(r"they (attract|repel), so it is (negative|positive)")
def _the_product_of_two_charges_has_the_sign_of_the_force(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "repel") == (m[2] == "positive") == (case.values["P"] > 0)


@rule(r"Unlike charges attract: the second charge is (negative|positive)", 1)
def _the_other_charge_is_unlike(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "positive") == (case.values["Q1"] < 0)


@rule(r"hang (apart|towards each other)", 1)
def _threads_lean_as_the_force_pulls(case: Case, m: re.Match[str]) -> bool:
    return (m[1] != "apart") == attracted(case)


def moving_positive(case: Case) -> bool:
    """Whether the body that moves in a uniform field is positive."""
    particle = case.data.choices["particle"]
    return particle == "proton" or (particle == "body" and positive(case, "q"))


def pushed(case: Case) -> float:
    """The heading of the force on it, from the plates of the scene and its sign."""
    scene = case.worked.figure
    assert scene
    at = {
        i.sign: (sum(p[0] for p in (i.start, i.end)), sum(p[1] for p in (i.start, i.end)))
        for i in scene.items
        if isinstance(i, Plate)
    }
    along = degrees(atan2(at["-"][1] - at["+"][1], at["-"][0] - at["+"][0]))
    return (along if moving_positive(case) else along + 180) % 360


@rule(r"F points (WAY), (opposite to|in the direction of) the field", 1, 2)
def _a_released_charge_is_pushed_by_its_sign(case: Case, m: re.Match[str]) -> bool:
    along = m[2] == "in the direction of"
    return along == moving_positive(case) and turn(pushed(case), angle(case, m[1])) < 1e-6


@rule(r"v points (WAY) as well", 1)
def _from_rest_it_moves_the_way_it_is_pushed(case: Case, m: re.Match[str]) -> bool:
    return turn(pushed(case), angle(case, m[1])) < 1e-6


@rule(
    r"The charge is (positive|negative), so the force on it is (opposite to|in the direction of) the field: it moves"
    r" (WAY)",
    1,
    2,
    3,
)
def _it_moves_along_the_field_if_positive(case: Case, m: re.Match[str]) -> bool:
    plus = moving_positive(case)
    said = (m[1] == "positive", m[2].startswith("in"))
    return said == (plus, plus) and turn(pushed(case), angle(case, m[3])) < 1e-6


@rule(
    r"The path starts parallel to the plates and bends towards the (upper|lower) plate.*?v_y (upwards|downwards),"
    r" and v",
    1,
    2,
)
def _a_path_bends_the_way_of_the_force(case: Case, m: re.Match[str]) -> bool:
    up = turn(pushed(case), 90) < 1e-6
    return (m[1] == "upper", m[2] == "upwards") == (up, up)


@rule(
    r"The charge is (positive|negative), so it is pulled towards the (positive|negative) plate, here the"
    r" (upper|lower) one",
    1,
    2,
    3,
)
def _it_is_pulled_towards_the_unlike_plate(case: Case, m: re.Match[str]) -> bool:
    up = turn(pushed(case), 90) < 1e-6
    return m[1] != m[2] and (m[1] == "positive") == moving_positive(case) and (m[3] == "upper") == up


def comes_closer(case: Case, body: str, name: str) -> bool:
    """Whether the source or the listener moves towards the other, in the step that makes ``name``."""
    picked = case.data.choices
    if f"{body}_way" in picked:
        return picked[f"{body}_way"] == "towards"
    law = next(step.law for step in case.plan.steps if step.makes == name)
    note = next((case.values[one] for one in ("f_1", "f_2", "f_3", "f_L") if one in law and one in case.values), 0.0)
    return note > case.values["f_S"]


@rule(
    r"\[(\w+)\] [^\[]*?The (source|listener) moves (towards|away from) the (?:listener|source): (above|below), its"
    r" speed is (added to|taken from) the speed of sound",
    2,
    3,
    4,
    5,
)
def _a_speed_stands_where_it_raises_or_lowers_the_note(case: Case, m: re.Match[str]) -> bool:
    closer = comes_closer(case, m[2], m[1])
    above = m[2] == "listener"
    return (m[3] == "towards", m[4] == "above", m[5] == "added to") == (closer, above, closer == above)


@rule(r"between two crests it moves on, so they lie (closer|wider)", 1)
def _waves_are_short_ahead_and_long_behind(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "closer") == (case.values["lambda_L"] < case.values["v"] / case.values["f_S"])


@rule(r"It moves (towards|away from) the \w+\. The frequency heard is (higher|lower) than", 1, 2)
def _a_higher_note_means_towards(case: Case, m: re.Match[str]) -> bool:
    higher = case.values["f_L"] > case.values["f_S"]
    return (m[1] == "towards", m[2] == "higher") == (higher, higher)


@rule(
    r"The second \w+ moves (towards|away from) the \w+\. The note heard is (higher|lower) than that of the \w+",
    1,
    2,
)
def _a_second_listener_hears_higher_when_coming_closer(case: Case, m: re.Match[str]) -> bool:
    higher = case.values["f_3"] > case.values["f_S"]
    return (m[1] == "towards", m[2] == "higher") == (higher, higher)


@rule(
    r"The total kinetic energy is [\d, ×⁻⁰¹²³⁴⁵⁶⁷⁸⁹\u00a0]+J before and [\d, ×⁻⁰¹²³⁴⁵⁶⁷⁸⁹\u00a0]+J after: (not )?"
    r"the same(?: within 1 %)?, so the collision is (elastic|inelastic)"
)
def _a_collision_is_elastic_if_no_kinetic_energy_is_lost(case: Case, m: re.Match[str]) -> bool:
    v = case.values
    after = (v["v"], v["v"]) if "v" in v else (v["v1"], v["v2"])
    before, left = (v["m1"] * one**2 + v["m2"] * two**2 for one, two in ((v["u1"], v["u2"]), after))
    kept = abs(left / before - 1) <= 0.01
    return (not m[1], m[2] == "elastic") == (kept, kept)


@rule(r"Two straight lines: away from zero, then back to it, (above|below) the time axis", 1)
def _a_push_is_drawn_on_its_own_side_of_the_axis(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "above") == (case.values["F_max"] > 0)


def whole_circuit(case: Case, later: bool) -> tuple[float, float, float]:
    """Total external resistance, total current and terminal potential difference, before or after a change."""
    v, tag = case.values, "_after" if later else ""
    current = v[f"I{tag}"]
    return v["epsilon"] / current - v["r"], current, v["epsilon"] - current * v["r"]


@rule(
    r"(total resistance|total current|terminal potential difference|Ir)(?:, shown by [^,]*,)? (increases|decreases)"
    r" from [\d,]+[^.\d]*?to [\d,]+",
    2,
)
def _the_chain_of_reasons_follows_the_numbers(case: Case, m: re.Match[str]) -> bool:
    at = {"total resistance": 0, "total current": 1, "Ir": 1, "terminal potential difference": 2}[m[1]]
    before, after = (whole_circuit(case, later)[at] for later in (False, True))
    return (m[2] == "increases") == (after > before)


@rule(
    r"(?:left, V_p = ε − I\([^)]*\): V_p|across \w+|across it|across its gap|its power|reading of \w+ \w+)"
    r" (increases|decreases) from ([\d,]+)[^.\d]*?to ([\d,]+)",
    1,
)
def _a_reading_goes_the_way_of_its_numbers(case: Case, m: re.Match[str]) -> bool:
    before, after = (float(one.replace(",", ".")) for one in (m[2], m[3]))
    return (m[1] == "increases") == (after > before)


@rule(r"The resistance of \w+ becomes (larger|smaller)\.", 1)
def _another_resistance_turns_the_total_its_way(case: Case, m: re.Match[str]) -> bool:
    before, after = (whole_circuit(case, later)[0] for later in (False, True))
    return (m[1] == "larger") == (after > before)


@rule(r"Lamp \w+ becomes (brighter|dimmer): the potential difference across it (increases|decreases)", 1, 2)
def _a_lamp_with_more_volts_is_brighter(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "brighter") == (m[2] == "increases")


# --- the tests ---


def every_form(key: str) -> list[Case]:
    """Draws enough to meet the forms of a question that can be put in many ways."""
    fields = find(key)[1].fields
    many = sum(isinstance(item, Choice) for item in fields) > 2 or any(isinstance(item, Worded) for item in fields)
    more = range(SEEDS.stop, SEEDS.stop + 8) if many else ()
    return cases(key) + [worked_case(key, seed, level) for seed in more for level in LEVELS]


def pole_beside(case: Case) -> bool:
    """Whether the end of the coil next to the magnet is a north pole: like poles repel, and what comes is repelled."""
    picked = case.data.choices
    return (picked["pole"] == "N") == (picked["moves"] == "towards")


@rule(r"The size of the flux (increases|decreases)", 1)
def _a_magnet_that_comes_brings_more_flux(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "increases") == (case.data.choices["moves"] == "towards")


@rule(r"opposes the change, so the coil (repels|attracts) the magnet", 1)
def _the_coil_repels_a_magnet_that_comes(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "repels") == (case.data.choices["moves"] == "towards")


@rule(r"The end next to the magnet becomes a (north|south) pole", 1)
def _the_end_opposes_the_motion(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "north") == pole_beside(case)


@rule(r"Arrows on the front wires point (down|up)\.", 1)
def _the_front_wires_follow_from_the_cross_product(case: Case, m: re.Match[str]) -> bool:
    """The current runs along the moment of the coil (to its north pole) crossed into the way out to the reader."""
    outwards = 1 if case.data.choices["side"] == "right" else -1
    moment = outwards if pole_beside(case) else -outwards
    upwards = -moment  # x × z = −y
    return (m[1] == "up") == (upwards > 0)


@rule(r"Seen from the magnet, the current flows (anticlockwise|clockwise)", 1)
def _a_north_pole_is_seen_anticlockwise(case: Case, m: re.Match[str]) -> bool:
    return (m[1] == "anticlockwise") == pole_beside(case)


class Met(NamedTuple):
    """What was read in the sentences of a question: claims that are false, with the name of their rule; of each claim
    the rule, the group and the word met; and the sentences that no rule reads, with the cases they stand in."""

    false: list[str]
    words: set[tuple[str, int, str]]
    unread: dict[str, list[str]]


@cache
def met(key: str) -> Met:
    """Every claim of a question, read."""
    seen = Met([], set(), {})
    for case in every_form(key):
        beside = list(told_beside(case))
        for place, raw in enumerate((*beside, *sentences(case))):
            text = raw.translate(_LOWERED)
            covered: list[tuple[int, int]] = []
            for name, (pattern, check, _) in RULES.items():
                for found in pattern.finditer(text):
                    covered.append(found.span())
                    seen.words.update((name, group, word) for group, word in enumerate(found.groups(), 1) if word)
                    try:
                        true = check(case, found)
                    except (KeyError, StopIteration, AssertionError) as problem:
                        true = False
                        text += f" [{problem!r}]"
                    if not true:
                        seen.false.append(f"{name}: {case.name}: {found[0]}")
            for found in re.finditer(r"[^.!?]+", text):
                if place >= len(beside) and not any(a < found.end() and found.start() < b for a, b in covered):
                    pattern_ = re.sub(r"[−-]?\d[\d,. ×⁻⁰¹²³⁴⁵⁶⁷⁸⁹\u00a0]*", "#", found[0]).strip()
                    seen.unread.setdefault(pattern_, []).append(case.name)
    return seen


@pytest.fixture(scope="module")
def words_met(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder of this run, which its processes share: a file for each question with the words met in it."""
    folder = tmp_path_factory.getbasetemp()
    folder = (folder.parent if "PYTEST_XDIST_WORKER" in os.environ else folder) / "words-met"
    folder.mkdir(exist_ok=True)
    return folder


def keep_words(folder: Path, key: str) -> Path:
    """The file of a question, written once it is whole."""
    file = folder / f"{key}.json"
    if not file.exists():
        part = file.with_suffix(f".{os.getpid()}")
        part.write_text(json.dumps(sorted(met(key).words)), encoding="utf-8")
        part.replace(file)
    return file


@pytest.mark.parametrize("key", KEYS)
def test_what_the_sentences_of_a_question_claim_is_true(words_met: Path, key: str) -> None:
    """Every sentence a rule reads is true of the data it stands beside."""
    keep_words(words_met, key)
    assert met(key).false[:3] == []


OPPOSITES = (
    ("larger", "smaller"),
    ("left", "right"),
    ("up", "down"),
    ("upwards", "downwards"),
    ("upper", "lower"),
    ("above", "below"),
    ("attract", "repel"),
    ("attracts", "repels"),
    ("attraction", "repulsion"),
    ("towards", "away from"),
    ("positive", "negative"),
    ("many", "few"),
    ("like", "unlike"),
    ("Like", "Unlike"),
    ("same", "opposite"),
    ("opposite to", "in the direction of"),
    ("pushes", "pulls"),
    ("stronger", "weaker"),
    ("grow", "shrink"),
    ("further", "nearer"),
    ("stable", "unstable"),
    ("with", "against"),
    ("Yes", "No"),
    ("between", "outside"),
    ("beyond", "between"),
    ("increases", "decreases"),
)


def turned_words(sentence: str) -> Iterator[str]:
    """The sentence with one pair of opposites, wherever it stands, the other way round; and with two."""
    once = set()
    for pair in OPPOSITES:
        both = "|".join(rf"\b{word}\b" for word in pair)
        other = re.sub(both, lambda m, p=pair: p[m[0] == p[0]], sentence)  # type: ignore[misc]
        if other != sentence:
            once.add(other)
    yield from once


@pytest.mark.parametrize("key", KEYS)
def test_a_sentence_that_depends_on_the_data_is_read_by_a_rule(key: str) -> None:
    """A sentence met in two forms with opposite words says something of the data: a rule here must check it."""
    unread = met(key).unread
    pairs = [(one, other) for one in unread for other in turned_words(one) if other in unread]
    assert pairs == []


def test_each_claim_is_met_both_ways(words_met: Path) -> None:
    """Among the draws each rule meets each of its words: none of the forms goes unread, and no rule reads nothing."""
    words = defaultdict[str, defaultdict[int, set[str]]](lambda: defaultdict(set))
    for key in KEYS:
        for name, group, word in json.loads(keep_words(words_met, key).read_text(encoding="utf-8")):
            words[name][group].add(word)
    alone = [(name, group, *words[name][group]) for name, rule_ in RULES.items() for group in rule_[2]]
    assert [one for one in alone if len(one) < 4] == []
