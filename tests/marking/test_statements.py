"""A law in the learner's own sentence. The sentences are of our own; what a memo wants in them is common practice."""

import json
from typing import Any

import pytest

from calc import desk
from calc.marking.statements import phrases_said

COULOMB = (
    "directly proportional to the product of the magnitudes of the charges",
    "inversely proportional to the square of the distance",
)


@pytest.mark.parametrize(
    ("said", "found"),
    [
        (
            "The force varies directly with the product of the charges and inversely with r².",
            (0, 1),
        ),
        (
            "The force is inversely proportional to the distance squared and directly proportional to the product of"
            " the charges.",
            (0, 1),
        ),
        (
            "It is proportional to the charges multiplied and inversely proportional to the square of the separation.",
            (0, 1),
        ),
        ("The force is proportional to the square of the distance.", ()),
        ("", ()),
    ],
)
def test_phrases_in_other_words_and_order(said: str, found: tuple[int, ...]) -> None:
    """Synonyms and order do not matter; what is proportional to what does."""
    assert phrases_said(said, COULOMB)[0] == found


def test_a_misstatement_is_named() -> None:
    """The distance for its square, the sum for the product."""
    said = "directly proportional to the sum of the charges and inversely proportional to the distance"
    assert phrases_said(said, COULOMB) == (
        (),
        (
            "It is the product of the charges, not their sum.",
            "It is the square of the distance, not the distance itself.",
        ),
    )


def state(**answer: Any) -> dict[str, Any]:
    """The verdict on the part that asks for Coulomb's law."""
    data = {"question": "coulomb.force", "inputs": {"Q1": "+8 nC", "Q2": "-5 nC", "r": "12 cm"}}
    request = {"operation": "mark", "data": {**data, "answers": {"state": answer}}}
    return next(
        part for part in json.loads(desk.answer(json.dumps(request)))["data"]["parts"] if part["part"] == "state"
    )


def test_the_learner_can_overrule() -> None:
    """A phrase that is not found may be ticked and then counts."""
    half = "The force is directly proportional to the product of the charges."
    assert state(statement=half)["earned"] == 1
    assert state(statement=half, said=[1])["earned"] == 2
    assert state(statement=half)["head"] == "Marked by its key phrases"


@pytest.mark.parametrize(
    ("law", "said", "marks"),
    [
        ("momentum.join", "In an isolated system the total linear momentum is conserved.", 2),
        ("momentum.join", "The total linear momentum remains constant.", 1),
        ("momentum.join", "The total momentum of a closed system stays constant.", 2),
        ("momentum.join", "The momentum of a closed system stays constant.", 1),
        ("momentum.join", "Momentum is mass times velocity.", 0),
        ("momentum.pulse", "The net force on a body multiplied by the time for which it acts.", 2),
        ("forces.crew", "It stays at rest or keeps a uniform velocity unless an unbalanced force acts on it.", 2),
        ("newton.contact", "If A exerts a force on B, B at the same time exerts an equal but opposite force on A.", 2),
        ("energy.friction-loss", "The work it does between two points is dependent on the path.", 2),
        ("energy.spring-launch", "The sum of kinetic and potential energy of an isolated system stays constant.", 2),
        ("energy.average-power", "The rate at which energy is transferred.", 2),
        (
            "doppler.crossing",
            "The change in pitch heard as source and observer have different velocities relative to the medium.",
            2,
        ),
        (
            "gravitation.force",
            "Each object attracts every other object with a gravitational force directly proportional"
            " to the product of the masses and inversely proportional to the square of the distance between their"
            " centers.",
            2,
        ),
    ],
)
def test_laws_of_mechanics_in_a_learners_words(law: str, said: str, marks: int) -> None:
    """A law that is one point is searched for its phrases; each that is missing costs a mark."""
    drawn = {"operation": "practice", "data": {"question": law, "level": 1, "seed": 1}}
    draw = json.loads(desk.answer(json.dumps(drawn)))["data"]
    request = {name: draw[name] for name in ("question", "inputs", "find", "variant")}
    reply = desk.answer(
        json.dumps({"operation": "mark", "data": {**request, "answers": {"state": {"statement": said}}}})
    )
    assert next(p for p in json.loads(reply)["data"]["parts"] if p["part"] == "state")["earned"] == marks


def test_what_is_not_found_is_said() -> None:
    """Of a law that is one point, the phrases that are missing are told; of masses nothing is said of charges."""
    found, told = phrases_said(
        "directly proportional to the sum of their masses", ("directly proportional to the product of their masses",)
    )
    assert (found, told) == ((), ("It is the product of the masses, not their sum.",))


@pytest.mark.parametrize(
    ("phrases", "said", "found"),
    [
        (
            ("potential difference is the same", "currents add up"),
            "The voltage is the same over all of them; the currents add.",
            (0, 1),
        ),
        (("potential difference is the same", "currents add up"), "The current is the same in every branch.", ()),
        (
            ("maximum energy", "per coulomb of charge"),
            "The maximum work done by the battery per unit charge passing through it.",
            (0, 1),
        ),
        (("maximum energy", "per coulomb of charge"), "The force that drives the charges.", ()),
        (("rate", "energy is transferred"), "Electrical energy transferred per unit time.", (0, 1)),
        (("rate", "energy is transferred"), "The electrical energy that is transferred.", ()),
    ],
)
def test_laws_of_circuits_in_other_words(phrases: tuple[str, ...], said: str, found: tuple[int, ...]) -> None:
    """Voltage is potential difference, per unit time is a rate, work done by the battery is its energy."""
    assert phrases_said(said, phrases)[0] == found


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("The emf is directly proportional to the rate of change of magnetic flux linkage.", (0, 1)),
        ("The emf varies as the rate of change of magnetic flux linkage.", (0, 1)),
        ("The emf is inversely proportional to the rate of change of magnetic flux linkage.", (1,)),
        ("The emf is directly proportional to the magnetic flux linkage.", (0,)),
    ],
)
def test_inversely_proportional_is_not_heard_as_directly(said: str, found: tuple[int, ...]) -> None:
    """A phrase that says nothing but how one thing goes with the other is not found in the opposite."""
    assert phrases_said(said, ("directly proportional", "rate of change of magnetic flux linkage"))[0] == found
