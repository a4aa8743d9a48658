"""What each kind of direction prints, is called, and understands: written out as a reader meets it."""

from __future__ import annotations

import pytest

from calc.model import directions
from calc.model.directions import KINDS, meant, turned, turned_round

# kind · key: what is printed · what a learner may say for it, by hand
WORDS = """
sign of a charge · positive: positive charge · positive, positively charged, plus, +
sign of a charge · negative: negative charge · negative, negatively charged, minus, −, -
sign of work · positive: positive: the force transfers energy to the body · positive, plus, +, the body gains energy
sign of work · negative: negative: the force takes energy from the body \
· negative, minus, −, -, the body loses energy
attraction or repulsion · attract: attraction: each is pulled towards the other \
· attraction, they attract, it attracts, B is attracted, attractive force, towards each other
attraction or repulsion · repel: repulsion: each is pushed away from the other \
· repulsion, they repel, it repels, B is repelled, repulsive force, away from each other
electrons too many or too few · excess: too many electrons: the charge is negative \
· too many, an excess, surplus, it gained electrons, extra electrons
electrons too many or too few · lacking: too few electrons: the charge is positive \
· too few, electrons are missing, a deficit, it lost electrons
left or right · right: to the right · right, rightwards, rightward, east, eastwards, +x, along +x, positive x
left or right · left: to the left · left, leftwards, leftward, west, westwards, -x, along −x, negative x
up or down · up: upwards · up, upward, vertically upwards, vertically up, straight up, +y, along +y, positive y
up or down · down: downwards \
· down, downward, vertically downwards, vertically down, straight down, -y, along −y, negative y
left, right, up or down · right: to the right · right, east, +x
left, right, up or down · left: to the left · left, west, −x
left, right, up or down · up: upwards · up, +y, straight up
left, right, up or down · down: downwards · down, −y, straight down
along a slope · up-slope: up the slope · upslope, up the incline, up the plane, uphill, up
along a slope · down-slope: down the slope · downslope, down the incline, down the plane, downhill, down
away from or towards · away: away from the charge · away, outwards, outward
away from or towards · towards: towards the charge · towards, toward, inwards, inward
along a thread, down or sideways · away: along the line of the thread, away from the support · away from the support
along a thread, down or sideways · to: along the line of the thread, towards the support \
· towards the support, to the support
along a thread, down or sideways · down: straight down · vertically downwards, downwards
along a thread, down or sideways · sideways: horizontally · horizontal, to the side
along the arc of a swing · outwards: outwards along the arc · outward, away from the vertical, further out
along the arc of a swing · back: back along the arc, towards the vertical · inwards, backwards, towards the vertical
away from a slope or into it · away: at right angles to the slope, away from it \
· away from the slope, out of the slope
away from a slope or into it · into: at right angles to the slope, into it · into the slope, towards the slope
clockwise or anticlockwise · clockwise: clockwise · clockwise
clockwise or anticlockwise · anticlockwise: anticlockwise · anticlockwise, counterclockwise, counter-clockwise
sign of a component along x · positive: along +x: to the right · to the right, along +x, +x
sign of a component along x · negative: along −x: to the left · to the left, along −x, −x
sign of a component along y · positive: along +y: upwards · upwards, along +y, +y
sign of a component along y · negative: along −y: downwards · downwards, along −y, −y
left, right or no net force · left: to the left · left, west
left, right or no net force · right: to the right · right, east
left, right or no net force · none: no direction: the net force is zero · the net force is zero
in a plane, or no net force · right: to the right: along +x · to the right, along +x, east
in a plane, or no net force · right-up: to the right and up: above the +x axis · right and up, north-east
in a plane, or no net force · up: upwards: along +y · upwards, along +y, north
in a plane, or no net force · left-up: to the left and up: above the −x axis · up and left, north-west
in a plane, or no net force · left: to the left: along −x · to the left, along −x, west
in a plane, or no net force · left-down: to the left and down: below the −x axis · left and down, south-west
in a plane, or no net force · down: downwards: along −y · downwards, along −y, south
in a plane, or no net force · right-down: to the right and down: below the +x axis · down and right, south-east
in a plane, or no net force · none: no direction: the net force is zero · the net force is zero
forwards or backwards · forwards: forwards · forward, in the direction of motion, in the original direction
forwards or backwards · backwards: backwards \
· backward, opposite to the direction of motion, in the opposite direction
compass · north: north · northwards, due north
compass · south: south · southwards, due south
compass · east: east · eastwards, due east
compass · west: west · westwards, due west
into or out of the page · in: into the page · into, inwards
into or out of the page · out: out of the page · out, outwards
higher or lower note · higher: higher · raised, rises
higher or lower note · lower: lower · lowered, falls, drops
values above or below an end · more: all values above this one · greater, above, at least, longer, farther, further
values above or below an end · less: all values below this one · smaller, below, at most, shorter, nearer
"""
ROWS = [tuple(part.strip() for part in line.split(" · ")) for line in WORDS.strip().splitlines()]
BY_NAME = {kind.name: kind for kind in KINDS}
OPPOSITES = {
    ("positive", "negative"),
    ("attract", "repel"),
    ("excess", "lacking"),
    ("right", "left"),
    ("up", "down"),
    ("up-slope", "down-slope"),
    ("away", "towards"),
    ("away", "to"),
    ("outwards", "back"),
    ("away", "into"),
    ("clockwise", "anticlockwise"),
    ("right-up", "left-down"),
    ("left-up", "right-down"),
    ("forwards", "backwards"),
    ("north", "south"),
    ("east", "west"),
    ("in", "out"),
    ("higher", "lower"),
    ("more", "less"),
}


@pytest.mark.parametrize(("name", "option", "said"), ROWS, ids=[f"{row[0]}, {row[1]}" for row in ROWS])
def test_a_direction_is_printed_and_understood_in_these_words(name: str, option: str, said: str) -> None:
    """Each key has its words; every way a learner says it means it, and no other key of its kind."""
    kind, (key, words) = BY_NAME[name], option.split(": ", 1)
    assert kind.of(key).words == words
    understood = {phrase: meant(phrase, dict(kind.options)) for phrase in said.split(", ")}
    assert understood == dict.fromkeys(understood, key)


def test_no_key_is_left_out_above() -> None:
    """A kind that is added is written out with its words."""
    written = [(name, option.split(":")[0]) for name, option, _ in ROWS]
    assert sorted(written) == sorted((kind.name, key) for kind in KINDS for key, _ in kind.options)


def test_opposites_are_what_physics_calls_opposite() -> None:
    """Nothing is the opposite of something else, and each is turned round to its opposite."""
    assert {pair for kind in KINDS for pair in kind.opposites} == OPPOSITES
    for one, other in OPPOSITES:
        assert turned_round(one, other)
        assert turned_round(other, one)
    assert not turned_round("right", "up")
    assert not turned_round("right-up", "right-down")
    assert turned(directions.UP_DOWN.of("up")).key == "down"


def test_a_sign_stands_for_the_words_only_along_one_line() -> None:
    """A sign says which way where there are two ways along a stated direction; not for attraction or a compass."""
    assert sorted(kind.name for kind in KINDS if kind.signed) == [
        "along a slope",
        "along the arc of a swing",
        "forwards or backwards",
        "higher or lower note",
        "left or right",
        "sign of a charge",
        "sign of a component along x",
        "sign of a component along y",
        "sign of work",
        "up or down",
    ]


def test_what_names_both_or_neither_is_not_understood() -> None:
    """ "Left or right", "not left" and another kind's words mean nothing."""
    sides = dict(directions.LEFT_RIGHT.options)
    for said in ("left or right", "not left", "neither left nor right", "", "left?", "upwards", "blue"):
        assert meant(said, sides) is None
