"""What a reader of the situation page sees beside the numbers: directions of arrows, tasks, phrases that earn marks."""

from __future__ import annotations

from math import atan2, cos, degrees, radians
from typing import Any

import pytest

from calc.model.questions import Choice, Part
from tests.topics.asking import mistakes_said
from tests.topics.test_situation import QUESTION, said, typed, worked
from tests.topics.test_situation_back import typed as typed_back
from tests.topics.test_situation_back import worked as worked_back

PARTS_AWAY = typed("touch2", "none", theta="15°", mu_s="0,1", mu_k="0,05") | {"mu_s2": "0,8", "mu_k2": "0,7"}
RUNS_UP = typed("tow2", "none", "rest", mu_s="0,1", mu_k="0,08") | {"also": "on-1", "F": "8 N"}
PAIR_AHEAD = typed("tow3", "none", "on", mu_s="0,6", mu_k="0,1") | {"mu_k3": "0,5"}
FORMS = {
    "stays": typed("one", "pull-on", P="5 N", theta="10°"),
    "slides on a slope": typed("one", "none", theta="35°"),
    "slows down": typed("one", "none", "on"),
    "slows down and slides back": typed("one", "none", "on", theta="35°"),
    "slows down and stays": typed("one", "none", "on", theta="10°"),
    "several slow down": typed("tow2", "none", "on"),
    "speeds up": typed("tow2", "pull-on", "on", P="80 N"),
    "over an edge": typed("edge"),
    "over a pulley": typed("pulley"),
    "pushed": typed("touch3", "push-on", P="120 N"),
    "parts": PARTS_AWAY,
    "goes slack": RUNS_UP,
    "two stay together": PAIR_AHEAD,
}


def part(form: dict[str, str], key: str) -> Part:
    """One part of a worked form."""
    return next(one for one in worked(form)[1].parts if one.key == key)


@pytest.mark.parametrize("form", FORMS.values(), ids=FORMS)
def test_the_phrases_that_earn_marks_stand_in_their_points(form: dict[str, str]) -> None:
    """Whoever writes the memo's own sentence earns the mark."""
    for one in worked(form)[1].parts:
        for point in one.points:
            assert [key for key in point.keys if key not in point.words] == [], (one.key, point.words)
        assert one.kind in ("state", "calculate", "explain", "draw")
        assert one.ask[-1] in ".?"


@pytest.mark.parametrize(("force", "where", "sign"), [("pull-on", "to the left", -1), ("pull-back", "to the right", 1)])
@pytest.mark.parametrize("P", ["0,4 N", "12 N"])
def test_friction_holds_against_the_pull_in_words_and_arrow(force: str, where: str, sign: int, P: str) -> None:
    """However small the pull: friction points the other way, as told and as drawn."""
    answer = worked(typed("one", force, P=P, phi="0°"))[3]
    assert f"f: friction on it, {where}." in said(answer, "draw-1")
    drawn: Any = next(one.figure for one in answer.parts if one.key == "draw-1")
    (arrow,) = [item for item in drawn.items if getattr(item, "label", "") == "f"]
    assert (arrow.end[0] - arrow.start[0]) * sign > 0


def test_what_does_not_move_has_neither_net_force_nor_acceleration() -> None:
    """The task asks for both, and each earns its mark."""
    one = part(FORMS["stays"], "acceleration")
    assert (one.kind, one.ask) == ("explain", "Give the net force and the acceleration of the body.")
    assert [(point.words, point.marks) for point in one.points] == [
        ("All forces balance: the net force is zero.", 1),
        ("The acceleration is zero.", 1),
    ]


def test_every_normal_force_is_asked_for_where_bodies_part() -> None:
    """One for each body on the surface, all of them answers."""
    for form, names in ((PARTS_AWAY, ("N_1", "N_2")), (PAIR_AHEAD, ("N_1", "N_2", "N_3"))):
        one = part(form, "normal")
        assert one.ask == "Calculate the normal force on each body on the surface."
        assert (*one.also, one.steps[-1].makes) == names


def test_what_stays_behind_has_its_friction_asked_for() -> None:
    """The upper body is held alone: its friction is calculated, and all forces together give all accelerations."""
    answer = worked(PARTS_AWAY)[3]
    held = part(PARTS_AWAY, "holds-2")
    assert (held.kind, held.ask) == ("calculate", "Calculate the friction that acts on it.")
    assert [check.what for check in answer.checks] == ["Forces and masses times accelerations of all of them, added"]


def test_a_slow_start_is_told_in_its_own_direction() -> None:
    """Pushed to the right with 0,82 m·s⁻² the rear body runs up to the one that rests; nothing points to the left."""
    _, _, v, answer = worked(RUNS_UP)
    assert v["a_1"] == pytest.approx((8 - 0.08 * 5 * 9.8) / 5)
    assert said(answer, "apart").replace("\N{NO-BREAK SPACE}", " ") == (
        "On their own they accelerate: the first body 0,82 m·s⁻² to the right; the second body none. So the first body"
        " gains on the second body: a string cannot push, it goes slack and T₁ = 0."
    )
    step = part(RUNS_UP, "alone-1").steps[-1]
    assert step.why == "Nothing else pulls or pushes along its path now. The positive direction is to the right."


def test_two_that_stay_together_are_told_as_one() -> None:
    """The first two gain on the third: their string pulls on, the one ahead is slack; the equation is that of both."""
    _, plan, v, answer = worked(PAIR_AHEAD)
    keys = [one.key for one in plan.parts]
    assert keys.count("alone-1") == 1
    assert "alone-2" not in keys
    together = part(PAIR_AHEAD, "alone-1")
    assert together.ask == (
        "Suppose the strings no longer pull. Calculate the acceleration of the first body and the second body."
    )
    assert together.steps[-1].why == (
        "These still move together; the forces between them cancel. The positive direction is to the right."
    )
    assert v["a_1"] == pytest.approx(-0.98)
    assert "So the second body gains on the third body: a string cannot push, it goes slack and T₂ = 0." in said(
        answer, "apart"
    )
    link = part(PAIR_AHEAD, "link-1")
    assert link.ask == "Calculate the tension, between the first body and the second body."
    assert link.steps[-1].what == "Use the equation of the first body alone"
    assert link.steps[-1].why == "What joins two bodies has the same size in both equations."


@pytest.mark.parametrize(
    ("form", "told"),
    [
        ("slows down", ("a is against the motion: it slows down until at rest.", "Then it stays at rest.")),
        (
            "slows down and slides back",
            ("a is against the motion: it slows down until at rest.", "Then it starts to move back."),
        ),
        ("slows down and stays", ("a is against the motion: it slows down until at rest.", "Then it stays at rest.")),
        ("several slow down", ("a is against the motion: they slow down until at rest.", "Then they stay at rest.")),
        ("speeds up", ("a has the direction of the motion: they speed up.",)),
    ],
)
def test_what_becomes_of_a_motion_is_told(form: str, told: tuple[str, ...]) -> None:
    """Against the motion it slows down; then it is tested again from rest."""
    words = [point.words for one in worked(FORMS[form])[1].parts for point in one.points]
    at = words.index(told[0])
    assert tuple(words[at : at + len(told)]) == told


@pytest.mark.parametrize(
    ("start", "a", "tells"),
    [
        ("goes-on", "0,5", "It moves off from rest to the right, with an acceleration of 0,5 m·s⁻²."),
        ("on", "0,5", "It moves to the right. The speed grows, with an acceleration of 0,5 m·s⁻²."),
        ("on", "-0,5", "It moves to the right. The speed falls, with an acceleration of 0,5 m·s⁻²."),
        ("on", "0", "It moves to the right. The velocity stays the same: the acceleration is 0 m·s⁻²."),
    ],
)
def test_a_motion_that_is_given_is_told_with_its_change(start: str, a: str, tells: str) -> None:
    """However small the acceleration: grows, falls, stays the same."""
    answer = worked_back(typed_back("m1", "one", "pull-on", start, a=a, P="40 N"), "m1")[2]
    assert answer.story.replace("\N{NO-BREAK SPACE}", " ").endswith(tells)


@pytest.mark.parametrize(
    ("P", "state", "words"),
    [
        ("19,5 N", "smaller", "Friction can hold it: it stays at rest."),
        ("19,6 N", "the same", "Friction just holds it: it stays at rest, at the limit."),
        ("19,7 N", "larger", "It starts to move to the right."),
    ],
)
def test_on_each_side_of_the_limit(P: str, state: str, words: str) -> None:
    """4 kg with μₛ 0,5: a tenth of a newton below 19,6 N it stays, at it it just stays, above it goes. A mark for the
    comparison, one for what follows."""
    form = typed("one", "pull-on", m1="4 kg", phi="0°", P=P, mu_s="0,5", mu_k="0,4")
    first, second = part(form, "decide").points
    assert state in first.words
    assert (first.marks, second.marks) == (1, 1)
    assert second.words == words


def test_two_that_are_held_together_share_a_load_that_nobody_can_part() -> None:
    """The lowest slides away; of the two frictions above it only the sum is known, so no check adds all forces up."""
    form = typed("touch3", "none", theta="15°", mu_s="0,1", mu_k="0,05")
    form |= {name: words for n in (2, 3) for name, words in ((f"mu_s{n}", "0,8"), (f"mu_k{n}", "0,7"))}
    answer = worked(form)[3]
    assert answer.checks == ()
    assert part(form, "rests-2").ask == (
        "Suppose the bodies no longer push each other. Do the second body and the third body stay at rest or move? Give"
        " a reason."
    )
    assert "They stay at rest: their acceleration is zero." in said(answer, "rests-2")
    keys = [one.key for one in answer.parts]
    assert ("rests-2" in keys, "holds-2" in keys) == (True, False)


@pytest.mark.parametrize(("also", "way"), [("on-1", 0.0), ("back-1", 180.0)])
def test_a_second_force_is_drawn_along_the_floor(also: str, way: float) -> None:
    """Straight to the right or straight to the left."""
    answer = worked(typed("one") | {"also": also, "F": "30 N"})[3]
    drawn: Any = next(one.figure for one in answer.parts if one.key == "draw-1")
    (arrow,) = [item for item in drawn.items if getattr(item, "label", "") == "F"]
    x, y = (end - start for start, end in zip(arrow.start, arrow.end, strict=True))
    assert degrees(atan2(y, x)) % 360 == pytest.approx(way, abs=1e-6)


@pytest.mark.parametrize(
    ("find", "chain", "start", "ask"),
    [
        (
            "mu_s",
            "one",
            "slips-on",
            "Write Newton's second law for the body along its path. The positive direction is that in which it would"
            " slip: to the right.",
        ),
        (
            "mu_k",
            "tow2",
            "on",
            "Write Newton's second law for each body along its path. The positive direction is that of the motion: to"
            " the right.",
        ),
    ],
)
def test_the_equation_of_each_body_is_asked_for(find: str, chain: str, start: str, ask: str) -> None:
    """Of the body where there is one, of each where there are several, with the positive direction."""
    given = {"a": "1"} if start == "on" else {"P": "20 N"}
    answer = worked_back(typed_back(find, chain, "pull-on", start, **given), find)[2]
    assert next(one.ask for one in answer.parts if one.key == "equations") == ask


def test_friction_left_out_is_told() -> None:
    """A pull that would do without friction: 5 kg at 1 m·s⁻², at 20°."""
    choices = {item.name: item.options[0][0] for item in QUESTION.fields if isinstance(item, Choice)}
    form = dict.fromkeys((item.name for item in QUESTION.fields), "") | choices
    form |= typed_back("P", "one", "pull-on", "on", a="1")
    assert mistakes_said("newton.situation", form, "find", f"{5 / cos(radians(20)):.6g} N", "P") == [
        "You left friction out. It acts against the motion: put μₖ(m₁g − P sin φ) in as well."
    ]


def test_at_the_limit_every_friction_and_tension_follows() -> None:
    """0,5 of (4 + 6) kg × 9,8 holds 49 N just so: 19,6 N on the first, which is the tension, 29,4 N on the other."""
    answer = worked(typed("tow2", "pull-on", m1="4 kg", m2="6 kg", P="49 N", phi="0°", mu_s="0,5", mu_k="0,4"))[3]
    steps = {step.makes: step.value for one in answer.parts for step in one.steps}
    assert (steps["f_1"], steps["f_2"], steps["T_1"]) == pytest.approx((19.6, 29.4, 19.6))
    assert "Friction just holds them: they stay at rest, at the limit." in said(answer, "decide")
    assert "shared" not in [one.key for one in answer.parts]


def test_short_of_the_limit_the_frictions_cannot_be_found() -> None:
    """With 48 N they may share it in many ways."""
    answer = worked(typed("tow2", "pull-on", m1="4 kg", m2="6 kg", P="48 N", phi="0°", mu_s="0,5", mu_k="0,4"))[3]
    assert "shared" in [one.key for one in answer.parts]
    assert "link-1" not in [one.key for one in answer.parts]


def test_nothing_along_its_path_is_said_in_words() -> None:
    """A body that no force acts on along the floor has no equation of friction."""
    answer = worked(RUNS_UP)[3]
    assert "For the second body: nothing acts along its path, so F_net = 0." in said(answer, "equations")
