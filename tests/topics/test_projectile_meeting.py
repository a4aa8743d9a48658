"""Two bodies that meet: scipy's roots of the gap between them, reference cases, refusals, every unknown."""

import itertools
import re

import pytest
from scipy import optimize

from calc import topics
from calc.figures import Arrow
from calc.figures.bodies import Ball
from calc.figures.pieces import Dimension, Surface
from calc.topics.projectile.equations import other_sign
from calc.working.reading import read
from calc.working.working import work
from tests.topics.asking import mistakes_said
from tests.topics.test_projectile import G, refused, solve, value

NAMES = ("y_A", "u_A", "y_B", "u_B", "t_0")


def typed(*numbers: float | None) -> dict[str, str]:
    """The boxes; None leaves one empty."""
    units = ("m", "m/s", "m", "m/s", "s")
    return {
        name: f"{number:.12g} {unit}"
        for name, number, unit in zip(NAMES, numbers, units, strict=True)
        if number is not None
    }


def height(start: float, u: float, t: float, free: bool = True) -> float:
    """Where a body is after a time of its own."""
    return start + u * t - (G / 2 * t * t if free else 0.0)


CASES = [(0, 20, 30, 0, 0.0), (0, 20, 30, 0, 1.0), (2, 18, 25, -3, 0.4), (40, -2, 45, -12, 0.3), (5, 24, 5, 20, 1.5)]


@pytest.mark.parametrize("case", CASES)
def test_free_bodies_meet_where_the_gap_is_nothing(case: tuple[float, ...]) -> None:
    """Brent's method on the gap between two integrated places gives the same time and height."""
    y_a, u_a, y_b, u_b, t_0 = case
    found = solve("meeting", "t,y", other="free", **typed(*case)).values

    def gap(t: float) -> float:
        return height(y_a, u_a, t) - height(y_b, u_b, t - t_0)

    expected = optimize.brentq(gap, t_0 + 1e-9, 6)
    assert found["t"] == pytest.approx(expected, rel=1e-9)
    assert found["y"] == pytest.approx(height(y_a, u_a, expected), rel=1e-9)


def test_the_reference_cases() -> None:
    """A up 20 m/s, B dropped from 30 m: 1,50 s at 18,98 m; B 1 s later: 2,46 s at 19,54 m (recomputed by hand)."""
    for t_0, t, y in ((None, 1.50, 18.975), (1.0, 2.46, 19.54)):
        found = solve("meeting", "t,y", other="free", **typed(0, 20, 30, 0, t_0)).values
        assert (found["t"], found["y"]) == pytest.approx((t, y), abs=0.006)


@pytest.mark.parametrize("case", CASES)
@pytest.mark.parametrize("find", ["u_A", "u_B", "y_A", "y_B"])
def test_every_other_unknown_comes_back(case: tuple[float, ...], find: str) -> None:
    """From the time of the meeting each height and velocity follows again."""
    t = value("meeting", "t", other="free", **typed(*case))
    data = {name: text for name, text in typed(*case).items() if name != find}
    number = case[NAMES.index(find)]
    assert value("meeting", find, other="free", t=f"{t:.13g} s", **data) == pytest.approx(number, rel=1e-6, abs=1e-6)


@pytest.mark.parametrize(
    ("case", "t"),
    [
        ((0, 20, 30, -1), 2.4),
        ((0, 20, 18, 9), 1.8),
        ((2, 18, 8, 6), 3.4),
        ((30, 0, 5, 14), 2.0),
        ((0, 20, 10, 14), 0.9),
    ],
)
def test_the_delay_of_b_from_the_time_of_the_meeting(case: tuple[float, ...], t: float) -> None:
    """Every delay from zero to the meeting that brings B to the place of A is an answer, and no other (Brent's method
    between the turns of the gap)."""
    y_a, u_a, y_b, u_b = case
    there = height(y_a, u_a, t)

    def gap(t_0: float) -> float:
        return height(y_b, u_b, t - t_0) - there

    ends = sorted({0.0, min(max(t - u_b / G, 0.0), t), t})
    roots = [optimize.brentq(gap, low, high) for low, high in itertools.pairwise(ends) if gap(low) * gap(high) < 0]
    found = solve("meeting", "t_0", **typed(*case, None), t=f"{t} s")
    assert sorted(shown.value for shown in found.answers) == pytest.approx(sorted(roots))
    assert len(found.answers) == len(roots) > 0
    later = [part.ask for part in found.parts if "going" in part.ask or "goes up" in part.ask]
    assert len(later) == len(roots) - 1
    for shown in found.answers:  # and it meets A then
        again = solve("meeting", "t", **typed(*case, shown.value))
        assert again.answers[0].value == pytest.approx(t, rel=1e-6)


def test_b_may_be_met_at_its_highest_point() -> None:
    """B thrown up at 14 m/s turns 10 m higher: met there it has one delay, and no other root is named."""
    found = solve("meeting", "t_0", y="20 m", y_B="10 m", u_B="14 m/s", t="2 s")
    assert [shown.value for shown in found.answers] == pytest.approx([2 - 14 / G])
    assert not any("other root" in step.method for part in found.parts for step in part.steps)


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (
            {"y_B": "18 m", "u_B": "5", "u_A": "20", "t": "1,8 s"},
            "B never gets there: its highest point is 19,28 m above the ground, and they meet 20,12 m above it.",
        ),
        (
            {"y_B": "80 m", "u_B": "0", "u_A": "20", "t": "1,8 s"},
            "B would have to start before A: call the body that starts first A.",
        ),
        (
            {"y_B": "19,5 m", "u_B": "-5", "u_A": "20", "t": "1,8 s"},
            "B does not come there after its start. Check the height and the velocity of B, and where they meet.",
        ),
        (
            {"y_B": "30 m", "u_B": "0", "u_A": "20", "t": "1,8 s", "other": "steady"},
            "B moves all the time at constant velocity, and has no delay. Pick something else to find.",
        ),
        (
            {"y_B": "30 m", "u_B": "0", "u_A": "5", "t": "1,8 s"},
            "A has landed: 1,80 s after its start it would be below the ground. Check the values.",
        ),
    ],
)
def test_a_delay_that_cannot_be_is_refused(data: dict[str, str], sentence: str) -> None:
    """Where B cannot be there at that time after A has started, the reason is said."""
    assert sentence in refused("meeting", "t_0", y_A="0 m", **data)


@pytest.mark.parametrize(
    ("case", "count"),
    [((0, 20, 10, 2), 2), ((30, -2, 10, 2), 1), ((0, 20, 0, 5), 1), ((0, 12, 4, -1), 2), ((0, 12, 4, -2), 1)],
)
def test_a_body_at_constant_velocity_may_be_met_twice(case: tuple[float, ...], count: int) -> None:
    """Every crossing of the two places before one of them reaches the ground is an answer, and no other."""
    y_a, u_a, y_b, u_b = case
    grid = [n / 500 + 1e-6 for n in range(5000)]
    over = [
        t
        for t in grid
        if (height(y_a, u_a, t) - height(y_b, u_b, t, False))
        * (height(y_a, u_a, t + 1 / 500) - height(y_b, u_b, t + 1 / 500, False))
        < 0
        and min(height(y_a, u_a, t), height(y_b, u_b, t, False)) >= 0
    ]
    found = solve("meeting", "t", other="steady", **typed(*case, None))
    times = [shown.value for shown in found.answers]
    assert len(times) == count
    assert times == pytest.approx(over, abs=0.003)


def test_a_body_that_stands_lower_than_the_top_is_passed_twice() -> None:
    """14,7 m/s carries A 11,025 m up: a lift that stands at 7,35 m is passed after 0,63 s and after 2,37 s."""
    found = solve("meeting", "t", other="steady", **typed(0, 14.7, 7.35, 0, None))
    assert [shown.value for shown in found.answers] == pytest.approx([1.5 - 0.75**0.5, 1.5 + 0.75**0.5])
    said = [step.method.replace("\N{NO-BREAK SPACE}", " ") for part in found.parts for step in part.steps]
    assert said[0].startswith("The other root is t = 2,37 s. It is right as well")
    assert said[1].startswith("The other root is t₁ = 0,63 s. It belongs to the first meeting")


def test_a_body_may_be_just_reached() -> None:
    """14 m/s carries A 10 m up: at its highest point it touches a lift that stands there, once."""
    found = solve("meeting", "t", other="steady", **typed(0, 14, 10, 0, None))
    assert [shown.value for shown in found.answers] == pytest.approx([14 / G])
    assert not any(step.method for part in found.parts for step in part.steps)


@pytest.mark.parametrize(
    ("case", "other", "sentence"),
    [
        (
            (0, 10, 30, 10, None),
            "free",
            "They never meet: A never comes nearer to B. Check the heights and the velocities",
        ),
        (
            (5, 10, 5, 10, None),
            "free",
            "They are always together: they start at the same height and move alike. Change one of the values.",
        ),
        (
            (0, 10, 30, 0, None),
            "free",
            (
                "A has landed: the equation gives a time of 3,00 s, and by then A has reached the ground. Check the"
                " values."
            ),
        ),
        ((0, 40, 1, 0, 3.0), "free", "They do not meet: the equation gives"),
        ((0, 5, 30, 8, None), "free", "They do not meet: the equation gives −10,00 s, before they both move."),
        (
            (0, 8, 30, 2, None),
            "steady",
            "They never meet: A does not reach B, which moves away too fast or starts too high. Check the values.",
        ),
        ((0, 20, 30, -2, 1.0), "steady", "leave its delay empty."),
        ((0, 20, 30, -2, -1.0), "free", "A delay cannot be negative: call the body that starts first A."),
    ],
)
def test_what_never_meets_is_refused(case: tuple[float, ...], other: str, sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    assert sentence in refused("meeting", "t", other=other, **typed(*case))


@pytest.mark.parametrize(
    ("data", "said"),
    [
        # u_B down: the other root would lie after the meeting
        (
            {"y_B": "30 m", "u_B": "-1", "u_A": "20", "t": "2,4 s"},
            "By that B would start after they have met: drop it.",
        ),
        # B is still going up when they meet: coming down it would have had to start before A
        (
            {"y_A": "30 m", "y_B": "5 m", "u_B": "14", "u_A": "0", "t": "2 s"},
            "By that B would start before A: drop it.",
        ),
        (
            {"y_B": "18 m", "u_B": "9", "u_A": "20", "t": "1,8 s"},
            "It is right as well: then they meet while B goes up, which the next part asks for.",
        ),
    ],
)
@pytest.mark.parametrize("positive", ["up", "down"])
def test_why_the_other_delay_is_dropped(data: dict[str, str], said: str, positive: str) -> None:
    """By where it lies on the time line; where both are answers, that is said."""
    given = {"y_A": "0 m", **data}
    if positive == "down":
        given |= {name: other_sign(given[name]) for name in ("u_A", "u_B")}
    found = solve("meeting", "t_0", positive=positive, **given)
    (step,) = [one for one in found.parts[1].steps if "other root" in one.method]
    assert step.method.partition(". ")[2] == said


def test_how_the_heights_are_worked_is_told_for_each_positive_direction() -> None:
    """Upwards a displacement adds to the height, downwards it is taken from it."""
    told = {
        positive: solve("meeting", "y", positive=positive, y_A="2 m", u_A=u, t="1 s").parts[-1].steps[0].why
        for positive, u in (("up", "12"), ("down", "-12"))
    }
    assert told == {
        "up": "From Δy = ut + ½at² with a = −g: the height is that of the start and the displacement together.",
        "down": "From Δy = ut + ½at² with a = g: downwards is positive, so the displacement is taken from the height of"
        " the start.",
    }


def test_where_b_turns_is_told_whole() -> None:
    """The refusal names both heights and says what to do."""
    assert refused("meeting", "t_0", y_A="0 m", y_B="18 m", u_B="5", u_A="20", t="1,8 s") == (
        "B never gets there: its highest point is 19,28 m above the ground, and they meet 20,12 m above it. Check the"
        " values."
    )


def test_they_may_meet_close_to_the_ground() -> None:
    """Half a metre up is above the ground; B dropped from 5 m is there after √(2 · 4,5/g)."""
    assert value("meeting", "t_0", y="0,5 m", y_B="5 m", u_B="0", t="2 s") == pytest.approx(2 - (9 / G) ** 0.5)


def test_a_body_that_comes_down_steadily_is_met_before_it_lands() -> None:
    """B comes down 10 m at 2 m/s in 5 s: A, thrown up fast, would pass its height only after that, below the ground."""
    assert refused("meeting", "t", other="steady", **typed(30, 23, 10, -2, None)).startswith("A has landed: ")
    found = solve("meeting", "t", other="steady", **typed(12, 15, 10, -2, None))
    assert found.answers[0].value == pytest.approx((17 + (17**2 + 4 * G) ** 0.5) / G)


@pytest.mark.parametrize(("u", "positive", "way"), [("0,5", "up", 1), ("-0,5", "up", -1), ("0,5", "down", -1)])
def test_the_arrow_at_the_start_points_as_the_body_moves(u: str, positive: str, way: int) -> None:
    """Slow or fast, with either positive direction."""
    figure = solve("meeting", "y", y_A="5 m", u_A=u, t="0,4 s", positive=positive).figure
    assert figure is not None
    (arrow,) = [one for one in figure.items if isinstance(one, Arrow) and one.label == "u_A"]
    assert (arrow.end[1] - arrow.start[1]) * way > 0


DELAYED = {"y_A": "0 m", "u_A": "20", "y_B": "18 m", "u_B": "9", "t": "1,8 s", "t_0": ""}  # B passes there twice
LATER = {"y_A": "0 m", "u_A": "20", "y_B": "30 m", "u_B": "0", "t_0": "1 s"}
LONE = {"y_A": "2 m", "u_A": "10", "y_B": "", "u_B": "", "t": "1 s", "t_0": ""}
MISTAKES = [
    (
        "t",
        "find",
        "1,5 s",  # 30 m at 20 m/s, as if both fell from the first moment
        LATER,
        "You let both start at the same moment. B moves for a shorter time: use t − t₀ for B.",
    ),
    (
        "t",
        "find",
        "0,5556 s",  # 10 m at 18 m/s
        {"other": "steady", "y_A": "0 m", "u_A": "20", "y_B": "10 m", "u_B": "2"},
        "You left out the fall of A. B does not fall freely, so (1/2)gt² does not cancel: keep it.",
    ),
    (
        "y",
        "find",
        "16,9 m",  # 2 m + 10 m + 4,9 m
        LONE,
        "You added (1/2)gt². Gravity takes height away from y, so subtract it.",
    ),
    (
        "y",
        "find",
        "5,1 m",  # 10 m − 4,9 m
        LONE,
        "You found how far A is from its own start. The height above the ground is asked: add y_A.",
    ),
    (
        "t_0",
        "find",
        "1,5219 s",
        DELAYED,
        "You have the delay for meeting B on its way up. This part asks for its way down: take the other root.",
    ),
    (
        "t_0",
        "again-t_0",
        "0,24137 s",
        DELAYED,
        "You have the delay for meeting B on its way down. This part asks for its way up: take the other root.",
    ),
    (
        "t_0",
        "find",
        "1,5586 s",  # 1,8 s − 0,2414 s
        DELAYED,
        "You have the time that B moves. Its delay is asked: subtract that time from t.",
    ),
]


@pytest.mark.parametrize(
    ("find", "part", "value", "data", "sentence"), MISTAKES, ids=[f"{row[1]}-{row[2]}" for row in MISTAKES]
)
@pytest.mark.parametrize("positive", ["up", "down"])
def test_mistakes_are_told_in_words(
    find: str, part: str, value: str, data: dict[str, str], sentence: str, positive: str
) -> None:
    """The wrong number is told as what gives it, whichever direction is positive."""
    given = {"other": "free", "t": "", "y": "", **data, "positive": positive}
    if positive == "down":
        given |= {name: other_sign(given[name]) for name in ("u_A", "u_B") if given[name]}
    assert mistakes_said("projectile.meeting", given, part, value, find) == [sentence]


@pytest.mark.parametrize("variant", range(3))
@pytest.mark.parametrize("other", ["free", "steady"])
def test_every_telling_says_how_each_of_them_moves(other: str, variant: int) -> None:
    """Both freely from the same moment; or A freely and B, a lift, a drone or a balloon, at constant velocity."""
    topic, question = topics.find("projectile.meeting")
    given = {"positive": "up", "other": other, **typed(0, 20, 10, 2, None)}
    story = work(topic, question, read(question, given, "t", variant=variant)).story.replace("\N{NO-BREAK SPACE}", " ")
    opening, _, rest = story.partition(" Upwards is positive, and heights are measured from the ground. ")
    assert "straight up or down" in opening or "vertical" in opening
    assert re.search(r"air resistance .*out|move freely", opening, re.IGNORECASE)
    start = "A starts on the ground. A starts with a velocity of 20 m·s⁻¹ upwards. "
    if other == "free":
        assert opening.endswith(" Both start at the same moment.")
        assert re.search(r"two (stones|steel balls|heavy darts), A and B", opening, re.IGNORECASE)
        assert rest == start + "B starts 10 m above the ground. B starts with a velocity of 2 m·s⁻¹ upwards."
    else:
        assert "same moment" not in opening
        assert re.search(r"(lift|drone|balloon), B,", opening)
        assert re.search(r"(stone|ball|dart), A,", opening)
        assert rest == start + (
            "At that moment B is 10 m above the ground. B moves at a constant velocity of 2 m·s⁻¹ upwards."
        )


@pytest.mark.parametrize(
    ("other", "numbers", "tells"),
    [
        ("free", (30, 0, 0, 15, None), ["A starts from rest.", "B starts on the ground."]),
        ("free", (0, 20, 30, 0, 0.0), ["B starts from rest.", "Both start at the same moment."]),
        ("free", (0, 20, 30, 0, 0.5), ["B starts 0,5 s after A."]),
        ("free", (20, -3, 0, 15, None), ["A starts with a velocity of 3 m·s⁻¹ downwards."]),
        ("steady", (10, 20, 0, 0, None), ["At that moment B passes the ground.", "B does not move."]),
        ("steady", (0, 12, 4, -1, None), ["B moves at a constant velocity of 1 m·s⁻¹ downwards."]),
    ],
)
def test_what_is_nothing_is_told_in_words(other: str, numbers: tuple[float | None, ...], tells: list[str]) -> None:
    """From rest, on the ground, at the same moment; and which way a velocity points."""
    story = solve("meeting", "t", other=other, **typed(*numbers)).story.replace("\N{NO-BREAK SPACE}", " ")
    assert [one for one in tells if one not in story] == []


def test_a_second_meeting_is_asked_for_and_its_other_root_is_the_first() -> None:
    """A lift that rises past: A comes up to it and falls back to it; both times and both heights are asked for."""
    found = solve("meeting", "t,y", other="steady", **typed(0, 20, 10, 2, None))
    asked = {part.key: part.ask for part in found.parts if part.kind == "calculate"}
    assert asked == {
        "find-t": "They meet twice. Calculate the time from the start of A until they meet for the first time.",
        "find-y": "They meet twice. Calculate the height at which they meet for the first time.",
        "again-t": "Calculate the time from the start of A until they meet again.",
        "again-y": "Calculate the height at which they meet again.",
    }
    said = [step.method.replace("\N{NO-BREAK SPACE}", " ") for part in found.parts for step in part.steps]
    assert [one for one in said if one] == [
        "The other root is t = 2,99 s. It is right as well: they meet again, which the next part asks for.",
        "The other root is t₁ = 0,68 s. It belongs to the first meeting: drop it here.",
    ]
    heights = [shown.value for shown in found.answers]
    assert heights[1::2] == pytest.approx([10 + 2 * t for t in heights[::2]])


@pytest.mark.parametrize(
    ("numbers", "said"),
    [
        ((10, 20, 10, 2, None), "The other root is t = 0 s. It belongs to the start itself: drop it."),
        ((10, 20, 0, 2, None), "The other root is t = −0,49 s. It belongs to a time before the start: drop it."),
        ((0, 12, 4, -2, None), "The other root is t = 2,54 s. By then A has landed: drop it."),
    ],
)
def test_why_the_other_meeting_is_dropped(numbers: tuple[float | None, ...], said: str) -> None:
    """They began together, A began above B, or A has landed."""
    found = solve("meeting", "t", other="steady", **typed(*numbers))
    methods = [step.method.replace("\N{NO-BREAK SPACE}", " ") for part in found.parts for step in part.steps]
    assert [one for one in methods if one] == [said]
    assert not any(part.key.startswith("again") for part in found.parts)


@pytest.mark.parametrize("positive", ["up", "down"])
def test_the_picture_shows_both_starts_above_the_ground(positive: str) -> None:
    """B above A and beside it, each with its height from the ground to its middle; at rest a body has no arrow."""
    way = 1 if positive == "up" else -1
    figure = solve("meeting", "t", positive=positive, **typed(5, 20 * way, 15, 0, None)).figure
    assert figure is not None
    balls = {item.label: item.centre for item in figure.items if isinstance(item, Ball)}
    (ground,) = [item.start[1] for item in figure.items if isinstance(item, Surface)]
    marked = {item.label: (item.start, item.end) for item in figure.items if isinstance(item, Dimension)}
    assert ground < balls["A"][1] < balls["B"][1]
    assert balls["A"][0] < balls["B"][0]
    assert marked == {f"y_{name}": ((x, ground), (x, y)) for name, (x, y) in balls.items()}
    arrows = {item.label: item.end[1] > item.start[1] for item in figure.items if isinstance(item, Arrow)}
    assert arrows == {"u_A": True, "+": positive == "up"}
    assert figure.title == "A and B at their starts"
    assert figure.drawn_from == ("y_A", "y_B")


@pytest.mark.parametrize(("y_a", "y_b", "names"), [(0, 15, ["y_B"]), (15, 0, ["y_A"])])
def test_a_body_on_the_ground_has_no_height_to_mark(y_a: float, y_b: float, names: list[str]) -> None:
    """Only the one above the ground has its height beside it."""
    numbers = (y_a, 20, y_b, 0) if not y_a else (y_a, 0, y_b, 18)
    figure = solve("meeting", "t", **typed(*numbers, None)).figure
    assert figure is not None
    assert [item.label for item in figure.items if isinstance(item, Dimension)] == names


def test_a_meeting_at_the_very_start_of_b_is_one() -> None:
    """B starts as A comes past on its way up, at 14 m after one second less half a g: they meet then, 1 s after A."""
    found = solve("meeting", "t,y", **typed(0, 20, 20 - G / 2, 3, 1.0)).values
    assert (found["t"], found["y"]) == pytest.approx((1, 20 - G / 2))


@pytest.mark.parametrize(
    ("positive", "what", "each"),
    [
        ("up", "Put the two positions equal", "Each position is y₀ + ut − ½gt², upwards positive."),
        (
            "down",
            "Put the two heights equal",
            "The displacement of each is ut + ½gt², downwards positive, so its height is y₀ − ut − ½gt².",
        ),
    ],
)
@pytest.mark.parametrize(
    ("other", "t_0", "said"),
    [
        ("free", None, ("Both fall alike, so −½gt² stands on both sides and has been left out.",)),
        ("free", 0.5, ("B moves for the time t − t₀ only. The square of t stands on both sides and cancels.",)),
        (
            "steady",
            None,
            (
                "B does not fall freely: its position is y₀ + ut.",
                "B does not fall freely: its displacement is ut alone.",
            ),
        ),
    ],
)
def test_the_reasons_of_a_meeting_in_both_senses(
    other: str, t_0: float | None, said: tuple[str, ...], positive: str, what: str, each: str
) -> None:
    """Why the two are equated, what stands on each side, and what cancels."""
    way = 1 if positive == "up" else -1
    found = solve("meeting", "t,y", positive=positive, other=other, **typed(0, 20 * way, 15, 2 * way, t_0))
    when, where = found.parts[1].steps[0], found.parts[2].steps[0]
    assert when.what == what
    if other == "steady":  # only A has the term with g
        each = each.replace("Each position", "The position of A").replace("of each", "of A")
    assert when.why == " ".join(
        ["They meet where both are at the same height at the same time.", each, said[-1 if positive == "down" else 0]]
    )
    assert when.plain == "Same place, same moment: write down where each one is, and put the two equal."
    assert where.what == "The height of A at that time"
    assert where.plain == "Where it began, and how far it has come since."
    assert [(mark.kind, mark.count) for mark in when.marks] == [("formula", 1), ("substitution", 2), ("answer", 1)]


def test_the_reasons_of_a_delay() -> None:
    """B is at the same height after a shorter time: first that time, then what is left of t."""
    step = solve("meeting", "t_0", **{name: text for name, text in DELAYED.items() if text}).parts[1].steps[-1]
    assert step.what == "B is there too, after a shorter time"
    assert step.why == (
        "B moves for the time t − t₀ only. This is a quadratic equation for t − t₀; take its root from t to find the"
        " delay."
    )
    assert step.plain == "First find how long B needs to that height; the rest of the time it waited."


@pytest.mark.parametrize(
    ("positive", "said"),
    [
        (
            "up",
            "The position of A is y₀ + ut − ½gt², upwards positive. B does not fall freely: its position is y₀ + ut.",
        ),
        (
            "down",
            "The displacement of A is ut + ½gt², downwards positive, so its height is y₀ − ut − ½gt². B does not fall"
            " freely: its displacement is ut alone.",
        ),
    ],
)
def test_the_reason_tells_the_free_body_from_the_steady_one(positive: str, said: str) -> None:
    """Only A has the term with g."""
    sign = 1 if positive == "up" else -1
    data = {"positive": positive, "other": "steady", "y_A": "2 m", "u_A": f"{sign * 20} m/s", "y_B": "20 m"}
    found = solve("meeting", "t", **data, u_B=f"{-sign} m/s", t_0="0 s")
    whys = [step.why for part in found.parts for step in part.steps]
    assert any(why.endswith(said) for why in whys), whys
