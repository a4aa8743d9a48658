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
