"""What the situation page says, word for word: each arrangement told, and the memo of each unknown; read by eye."""

from __future__ import annotations

import math

import pytest

from calc.topics.newton.situation_back import DROPS_OUT
from tests.topics.test_situation import refusal as refused_forwards
from tests.topics.test_situation import typed as typed_forwards
from tests.topics.test_situation import worked as worked_forwards
from tests.topics.test_situation_back import refusal, typed, worked

FORCES = {"tow2": "pull-on", "tow3": "pull-back", "touch2": "push-on", "touch3": "push-back"}
STORIES = [
    (
        "one",
        (
            "A crate stands on a ramp that rises to the right. Its mass is 5 kg. The slope makes 20° with the"
            " horizontal. The coefficients of friction are 0,4 (static) and 0,3 (kinetic). At first it moves up the"
            " slope."
        ),
    ),
    (
        "tow2",
        (
            "Two crates stand on a ramp that rises to the right, the first the lowest, and are joined by a string."
            " Strings are light and do not stretch. In order the masses are 5 kg and 4 kg. The slope makes 20° with the"
            " horizontal. A rope pulls the second up the slope with a force P of 70 N, at 20° to the slope, above it."
            " The coefficients of friction are 0,4 (static) and 0,3 (kinetic). At first everything is held at rest and"
            " then let go."
        ),
    ),
    (
        "touch2",
        (
            "Two crates stand on a level floor, the first on the left, and touch each other. In order the masses are 5"
            " kg and 4 kg. A rod pushes the first to the right with a force P of 70 N, at 20° to the level, slanting"
            " down. The coefficients of friction are 0,4 (static) and 0,3 (kinetic). At first everything is held at"
            " rest and then let go."
        ),
    ),
    (
        "edge",
        (
            "A crate stands on a ramp that rises to the right. A string runs from it over a pulley at the top to a"
            " second body, which hangs. Strings are light and do not stretch; pulleys are light and without friction."
            " In order the masses are 5 kg and 4 kg. The slope makes 20° with the horizontal. The coefficients of"
            " friction are 0,4 (static) and 0,3 (kinetic). At first everything is held at rest and then let go."
        ),
    ),
    (
        "pulley",
        (
            "Two crates hang from one string over a fixed pulley, the first on the left. Strings are light and do not"
            " stretch; pulleys are light and without friction. In order the masses are 5 kg and 4 kg. At first the body"
            " on the left moves upwards."
        ),
    ),
    (
        "tow3",
        (
            "Three crates stand on a ramp that rises to the right, the first the lowest, and are joined by strings,"
            " each to the next. Strings are light and do not stretch. In order the masses are 5 kg, 4 kg and 9 kg. The"
            " slope makes 20° with the horizontal. A rope pulls the first down the slope with a force P of 70 N, at 20°"
            " to the slope, above it. The coefficients of friction are 0,4 (static) and 0,3 (kinetic). At first"
            " everything is held at rest and then let go."
        ),
    ),
    (
        "touch3",
        (
            "Three crates stand on a ramp that rises to the right, the first the lowest, and touch each other. In order"
            " the masses are 5 kg, 4 kg and 9 kg. The slope makes 20° with the horizontal. A rod pushes the third down"
            " the slope with a force P of 70 N, at 20° to the slope, slanting down. The coefficients of friction are"
            " 0,4 (static) and 0,3 (kinetic). At first everything is held at rest and then let go."
        ),
    ),
    (
        "towedge",
        (
            "Two crates stand on a ramp that rises to the right, the first the lowest, and are joined by a string. A"
            " string runs from the second over a pulley at the top to a third body, which hangs. Strings are light and"
            " do not stretch; pulleys are light and without friction. In order the masses are 5 kg, 4 kg and 9 kg. The"
            " slope makes 20° with the horizontal. The coefficients of friction are 0,4 (static) and 0,3 (kinetic). At"
            " first everything is held at rest and then let go."
        ),
    ),
    (
        "ends",
        (
            "A crate stands on a level floor. At each end a string runs from it over a pulley at the edge to a body"
            " that hangs: the first on the left, the third on the right; the crate is the second. Strings are light and"
            " do not stretch; pulleys are light and without friction. In order the masses are 5 kg, 4 kg and 9 kg. The"
            " coefficients of friction are 0,4 (static) and 0,3 (kinetic). At first everything is held at rest and then"
            " let go."
        ),
    ),
]


@pytest.mark.parametrize(("chain", "story"), STORIES)
def test_each_arrangement_is_told(chain: str, story: str) -> None:
    """Who stands or hangs where, what joins them, the force, and how they move at first."""
    start = "on" if chain in ("one", "pulley") else "rest"
    form = typed_forwards(chain, FORCES.get(chain, "none"), start, theta="0°" if chain == "touch2" else "20°", P="70 N")
    assert worked_forwards(form)[3].story.replace("\u00a0", " ") == story


MEMOS = [
    (
        "m1",
        typed("m1", "one", "pull-on", "goes-on", a="2", P="40 N"),
        "Calculate m₁, the mass of the body.",
        (
            (
                "Newton's second law: P cos φ − μₖ(m₁g − P sin φ) = m₁a. The positive direction is that of the motion:"
                " to the right."
            ),
        ),
    ),
    (
        "P",
        typed("P", "touch2", "push-on", "slips-on"),
        "Calculate the size of P, the push.",
        (
            (
                "Balance the forces across the surface: N₂ = m₂g. It does not leave the surface, so the forces at right"
                " angles to it balance."
            ),
            (
                "Friction from the normal force: f₂ = μₛN₂. It is about to slip, so static friction has its largest"
                " size, against the way it would slip."
            ),
            (
                "Put the equations of all bodies together: P cos φ − μₛ(m₁g + P sin φ) − f₂ = 0. The positive direction"
                " is that in which they would slip: to the right. Nothing speeds up, so the net force is zero."
            ),
        ),
    ),
    (
        "phi",
        typed("phi", "one", "pull-on", "slips-on", P="30 N"),
        "Calculate the angle φ, the smaller one if two fit.",
        (
            (
                "Name the angle whose tangent is the coefficient: tan ε = μₛ. Then both terms with the unknown angle"
                " become one."
            ),
            (
                "Put the known terms on one side: F₀ = μₛm₁g. Sorted: what depends on φ stands on one side, everything"
                " else on the other."
            ),
            (
                "Make it one cosine, and solve: P cos (φ − ε) = F₀ cos ε. sin ε/cos ε takes the place of the"
                " coefficient; the two products make one cosine."
            ),
        ),
    ),
    (
        "phi",
        typed("phi", "one", "push-on", "steady-on", P="30 N"),
        "Calculate the angle φ, the smaller one if two fit.",
        (
            (
                "Name the angle whose tangent is the coefficient: tan ε = μₖ. Then both terms with the unknown angle"
                " become one."
            ),
            (
                "Put the known terms on one side: F₀ = μₖm₁g. Sorted: what depends on φ stands on one side, everything"
                " else on the other."
            ),
            (
                "Make it one cosine, and solve: P cos (φ + ε) = F₀ cos ε. sin ε/cos ε takes the place of the"
                " coefficient; the two products make one cosine."
            ),
        ),
    ),
    (
        "mu_k",
        typed("mu_k", "tow2", "pull-on", "on", a="1"),
        "Calculate the coefficient of kinetic friction.",
        (
            (
                "Balance the forces across the surface: N₁ = m₁g. It does not leave the surface, so the forces at right"
                " angles to it balance."
            ),
            (
                "Balance the forces across the surface: N₂ = m₂g − P sin φ. It does not leave the surface, so the"
                " forces at right angles to it balance: P sin φ takes away from what presses it down."
            ),
            (
                "Put the equations of all bodies together: P cos φ − μₖ(N₁ + N₂) = (m₁ + m₂)a. The positive direction"
                " is that of the motion: to the right. All have the same size of acceleration; the forces between them"
                " cancel."
            ),
        ),
    ),
    (
        "theta",
        typed("theta", "one", "pull-on", "slips-on", P="40 N"),
        "Calculate the angle θ of the slope, the smaller one if two fit.",
        (
            (
                "Name the angle whose tangent is the coefficient: tan ε = μₛ. Then both terms with the unknown angle"
                " become one."
            ),
            (
                "Put the known terms on one side: F₀ = P cos φ + μₛP sin φ. Sorted: what depends on θ stands on one"
                " side, everything else on the other."
            ),
            (
                "Make it one sine, and solve: F₀ = m₁g(sin θ + μₛ cos θ). sin ε/cos ε takes the place of the"
                " coefficient: the two products make one sine."
            ),
        ),
    ),
    (
        "theta",
        typed("theta", "one", "pull-back", "steady-back", P="10 N"),
        "Calculate the angle θ of the slope, the smaller one if two fit.",
        (
            (
                "Name the angle whose tangent is the coefficient: tan ε = μₖ. Then both terms with the unknown angle"
                " become one."
            ),
            (
                "Put the known terms on one side: F₀ = P cos φ + μₖP sin φ. Sorted: what depends on θ stands on one"
                " side, everything else on the other."
            ),
            (
                "Make it one sine, and solve: F₀ = m₁g(μₖ cos θ − sin θ). sin ε/cos ε takes the place of the"
                " coefficient: the two products make one sine."
            ),
        ),
    ),
    (
        "theta",
        typed("theta", "edge", "none", "goes-on", a="1", mu_k="0"),
        "Calculate the angle θ of the slope, the smaller one if two fit.",
        (
            (
                "Put the known terms on one side: F₀ = m₂g − (m₁ + m₂)a. Sorted: what depends on θ stands on one side,"
                " everything else on the other."
            ),
            "Solve for the angle: F₀ = m₁g sin θ. Only the part of the weight along the slope depends on θ.",
        ),
    ),
    (
        "theta",
        typed("theta", "one", "none", "slips-back"),
        "Calculate the angle θ of the slope, the smaller one if two fit.",
        (
            (
                "The tangent of the angle is the coefficient: tan θ = μₛ. Along the slope mg sin θ = f, across it N ="
                " mg cos θ, and f = μN: divided, mg drops out."
            ),
        ),
    ),
    (
        "m2",
        typed("m2", "edge", "none", "goes-on", T_1="25 N"),
        "Calculate m₂, the mass of the body that hangs.",
        (
            (
                "Balance the forces across the surface: N₁ = m₁g. It does not leave the surface, so the forces at right"
                " angles to it balance."
            ),
            "Friction from the normal force: f₁ = μₖN₁. It slides, so friction is kinetic, against the motion.",
            (
                "Use the equation of the body on the surface for the acceleration: T₁ − f₁ = m₁a. All have the same"
                " size of acceleration, and here everything else is known."
            ),
            (
                "Use the equation of the body that hangs: m₂g − T₁ = m₂a. The positive direction is that of the motion:"
                " to the right, for the body on the surface."
            ),
        ),
    ),
]


@pytest.mark.parametrize(("asked", "form", "ask", "steps"), MEMOS)
def test_each_unknown_is_worked_as_a_memo_does(
    asked: str, form: dict[str, str], ask: str, steps: tuple[str, ...]
) -> None:
    """The heading, the equation and the reason of every step, in order."""
    part = worked(form, asked)[2].parts[-1]
    assert part.ask == ask
    assert tuple(f"{step.what}: {step.formula.text}. {step.why}" for step in part.steps) == steps


def test_from_rest_the_way_it_moves_off_follows_or_is_asked_for() -> None:
    """Over an edge it can only go forwards; two that hang could go either way, with another mass for each."""
    _, v, answer = worked(typed("m2", "edge", "none", "rest", a="2"), "m2")
    assert v["m2"] == pytest.approx(5 * (2 + 0.3 * 9.8) / (9.8 - 2))
    assert "They move off from rest, the body on the surface to the right" in answer.story
    assert refusal(typed("m1", "pulley", "none", "rest", a="1"), "m1") == (
        "start",
        "They could move off either way with these numbers: choose “at rest, then off forwards” or “backwards”.",
    )


@pytest.mark.parametrize(
    ("form", "asked", "sentence"),
    [
        (
            typed("P", "one", "pull-on", "slips-on") | {"force": "none"},
            "P",
            "There is no pull or push: choose one, or ask for something else.",
        ),
        (
            typed("m3", "tow2", "pull-on", "slips-on"),
            "m3",
            "There are only two bodies: choose three, or ask for something else.",
        ),
        (
            typed("m2", "one", "pull-on", "slips-on"),
            "m2",
            "There is one body: choose more bodies, or ask for something else.",
        ),
        (
            typed("mu_k", "pulley", "none", "steady-on"),
            "mu_k",
            "No body touches a surface here: ask for something else.",
        ),
        (
            typed("theta", "ends", "none", "steady-on"),
            "theta",
            "No body stands on a slope in this arrangement: choose another, or ask for something else.",
        ),
    ],
)
def test_what_is_not_there_is_said_word_for_word(form: dict[str, str], asked: str, sentence: str) -> None:
    """Each quantity that an arrangement does not have."""
    assert refusal(form, asked)[1] == sentence


REFUSED = [
    (
        typed_forwards("ends", "pull-on"),
        ("force", "Both ends hold strings here, so there is no room for a pull or push: choose “no pull or push”."),
    ),
    (
        typed_forwards("edge", "pull-on"),
        (
            "force",
            (
                "The string to the pulley is in the way at the front. Choose a pull backwards or a push forwards: both"
                " act from behind."
            ),
        ),
    ),
    (
        typed_forwards("tow2", "push-on"),
        (
            "force",
            (
                "A push would close the gap between bodies in tow, and the string would hang loose. Choose a pull, or"
                " bodies that touch."
            ),
        ),
    ),
    (
        typed_forwards("touch2", "pull-on"),
        ("force", "A pull would take bodies that touch apart. Choose a push, or bodies in tow."),
    ),
    (
        typed_forwards("one"),
        (
            "force",
            (
                "Nothing acts along the surface and everything is at rest, so nothing happens: friction is zero. Choose"
                " a force, a slope, or a motion at first."
            ),
        ),
    ),
    (
        typed_forwards("one", "none", "on", mu_s="0", mu_k="0"),
        (
            "force",
            (
                "Nothing acts along a smooth, level surface, so by Newton's first law the velocity stays as it is: a is"
                " zero. Choose a force, a slope or friction."
            ),
        ),
    ),
    (typed_forwards("one", theta="71°"), ("theta", "The page draws slopes up to 70°: use a smaller angle.")),
    (
        typed_forwards("one", theta="20°", mu_k="0,5"),
        ("mu_k", "μₖ may not be larger than μₛ: friction would stop it as soon as it starts. Check the coefficients."),
    ),
]


@pytest.mark.parametrize(("form", "said"), REFUSED)
def test_what_is_not_worked_is_said_word_for_word(form: dict[str, str], said: tuple[str, str]) -> None:
    """A force without room, nothing that acts, a slope that is not drawn, coefficients that cannot be."""
    assert refused_forwards(form) == said


def test_what_makes_no_difference_is_said() -> None:
    """A second force that what is given already fixes, at a body whose mass drops out."""
    assert DROPS_OUT == {
        "m": "This mass drops out of the equations: any mass does the same. Ask for something else.",
        "P": "The force drops out of the equations: any size does the same. Ask for something else.",
        "F": "The second force drops out of the equations: any size does the same. Ask for something else.",
        "E": "The field drops out of the equations: any strength does the same. Ask for something else.",
        "mu": "Friction drops out of the equations: any coefficient does the same. Ask for something else.",
    }


RIDGE = {"theta": "20°", "theta2": "40°"}


@pytest.mark.parametrize(
    ("force", "start", "told"),
    [
        (
            "pull-back",
            "on",
            (
                "A rope pulls the first down the slope with a force P of 20 N, at 20° to the slope, above it. The"
                " coefficients of friction are 0,4 (static) and 0,3 (kinetic). At first the body on the left moves up"
                " the slope."
            ),
        ),
        (
            "pull-on",
            "back",
            (
                "A rope pulls the second down the slope with a force P of 20 N, at 20° to the slope, above it. The"
                " coefficients of friction are 0,4 (static) and 0,3 (kinetic). At first the body on the left moves down"
                " the slope."
            ),
        ),
    ],
)
def test_two_slopes_are_told_with_both_angles(force: str, start: str, told: str) -> None:
    """Who stands on which side, each angle, which way a rope pulls on its slope, and the motion of the left body."""
    answer = worked_forwards(typed_forwards("ridge", force, start, P="20 N", **RIDGE))[3]
    assert answer.story.replace("\u00a0", " ") == (
        "Two crates stand on two slopes that meet at a ridge, the first on the left, the second on the right, and a"
        " string over a fixed pulley at the ridge joins them. Strings are light and do not stretch; pulleys are light"
        " and without friction. In order the masses are 5 kg and 4 kg. The slope on the left makes 20° with the"
        f" horizontal, that on the right 40°. {told}"
    )
    assert answer.figure
    side = "m1" if force == "pull-back" else "m2"
    assert answer.figure.description == (
        "Two slopes meet at a ridge. Box m1 stands on the left one, at 20° (marked θ), box m2 on the right one, at 40°"
        " (marked θ2). A string joins them over a pulley at the ridge. A rope labelled P pulls"
        f" {side} down the slope, at 20° above the surface."
    )


def test_over_a_ridge_what_is_up_for_one_is_down_for_the_other() -> None:
    """Friction on each body is told against its own motion, D and a of the body on the left."""
    answer = worked_forwards(typed_forwards("ridge", "none", "on", **RIDGE))[3]
    ways = {step.makes: step.direction.words for part in answer.parts for step in part.steps if step.direction}
    assert ways == {"D": "up the slope", "f_1": "down the slope", "f_2": "up the slope", "a": "down the slope"}
    asks = [part.ask for part in answer.parts]
    assert "Calculate the acceleration of the body on the left." in asks
    still = worked_forwards(typed_forwards("ridge", **RIDGE))[3]
    shared = next(part for part in still.parts if part.key == "shared")
    assert shared.points[0].words.replace("\u00a0", " ") == (
        "Only the sum of the frictions can be found: it balances D, so it is 8,44 N along the string, on the left down"
        " the slope."
    )


@pytest.mark.parametrize(
    ("more", "field", "sentence"),
    [
        ({"theta2": ""}, "theta2", "Fill in the angle of the slope on the right."),
        (
            {"theta": "0°"},
            "theta",
            "A ridge has a slope on each side: give an angle above zero, or choose another arrangement.",
        ),
        (
            {"theta2": "71°"},
            "theta2",
            "The page draws slopes up to 70°: use a smaller angle.",
        ),
        (
            {"fixed": "on"},
            "fixed",
            (
                "The line of the bodies bends at the ridge, so no field or fixed charge is in line with both: choose"
                " “no field” and “no fixed charge”, or another arrangement."
            ),
        ),
        (
            {"force": "push-on", "P": "3 N", "phi": "0°"},
            "force",
            (
                "A push would close the gap between bodies in tow, and the string would hang loose. Choose a pull, or"
                " bodies that touch."
            ),
        ),
    ],
)
def test_what_two_slopes_cannot_have(more: dict[str, str], field: str, sentence: str) -> None:
    """A level side, one too steep to be drawn, a field, a push: refused beside the box."""
    assert refused_forwards(typed_forwards("ridge", **RIDGE) | more) == (field, sentence)


def test_the_angle_of_either_slope_balances_what_is_smooth() -> None:
    """Without friction m₁ sin θ = m₂ sin θ₂; too heavy a body has no such slope."""
    steady = {"m1": "5 kg", "m2": "4 kg", "mu_k": "0"}
    _, v, _ = worked(typed("theta2", "ridge", "none", "steady-on", theta="20°", **steady), "theta2")
    assert math.sin(v["theta2"]) == pytest.approx(5 * math.sin(math.radians(20)) / 4)
    _, v, _ = worked(typed("theta", "ridge", "none", "steady-on", theta2="20°", **steady), "theta")
    assert math.sin(v["theta"]) == pytest.approx(4 * math.sin(math.radians(20)) / 5)
    sentence = (
        "No slope on this side fits: it would have to be level or fall away. Check the numbers and which way they"
    )
    assert sentence in refusal(typed("theta", "ridge", "none", "goes-on", a="6", theta2="20°", **steady), "theta")[1]
