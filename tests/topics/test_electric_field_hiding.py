"""What the figures of the electric-field questions keep for themselves while it is still to be found."""

import pytest

from calc.figures import Arrow, Figure, Segment, Sphere
from calc.topics import find
from calc.working.reading import read
from calc.working.working import run


def scene(key: str, asked: str = "", **typed: str) -> Figure:
    """The scene of a question's data."""
    _, question = find(f"electric-field.{key}")
    found = read(question, {**question.example, **typed}, asked)
    plan = question.plan(found.data)
    assert plan.scene is not None
    return plan.scene(run(plan, found.data.settings.constants()))


FORCE = {"E": "900 N/C", "F": "", "q": "-2 nC", "along": "right", "pushed": "right"}


@pytest.mark.parametrize(
    ("asked", "gone", "kept"),
    [
        ("E", "field E points", "F on it points to the left"),
        ("F", "F on it points", "field E points to the right"),
        ("q", "negative", "F on it points to the left"),
    ],
)
def test_a_charge_in_a_field_hides_what_is_asked(asked: str, gone: str, kept: str) -> None:
    """Sentence and pieces of the asked quantity are gone: all lines of E, the arrow F, the sign of q."""
    whole = scene("force", **FORCE)
    left = whole.without({asked})
    assert left is not None
    assert gone in whole.description
    assert gone not in left.description
    assert kept in left.description
    assert any(isinstance(item, Segment) and item.kind == "fieldline" for item in left.items) == (asked != "E")
    assert any(isinstance(item, Arrow) for item in left.items) == (asked != "F")
    assert [item.sign for item in left.items if isinstance(item, Sphere)] == ["" if asked == "q" else "-"]


@pytest.mark.parametrize("key", ["drop", "drop-charge", "paint-drop", "released", "crossing"])
def test_the_sign_of_a_charge_that_is_asked_is_not_drawn(key: str) -> None:
    """The sphere between the plates keeps its place and loses its sign."""
    whole = scene(key)
    assert [bool(item.sign) for item in whole.items if isinstance(item, Sphere)] == [True]
    left = whole.without({"q"})
    assert left is not None
    assert [item.sign for item in left.items if isinstance(item, Sphere)] == [""]


def test_spheres_called_by_letters_hide_the_signs_of_their_charges() -> None:
    """A and B of a null point carry Q₁ and Q₂, the domes Q_A and Q_B."""
    for key, names in (("null", ("Q1", "Q2")), ("museum-domes", ("Q_A", "Q_B"))):
        for at, name in enumerate(names):
            left = scene(key).without({name})
            assert left is not None
            signs = [item.sign for item in left.items if isinstance(item, Sphere)]
            assert [bool(sign) for sign in signs] == [at != 0, at != 1], (key, name)
            assert "positive" not in left.description


@pytest.mark.parametrize(
    ("key", "asked", "words"),
    [
        ("released", "E", "Two parallel charged plates. The charged body is between the plates."),
        (
            "crossing",
            "E",
            "Upper plate positive, lower plate negative. From the left the charge enters with velocity u, parallel to"
            " the plates.",
        ),
        ("drop", "E", "Upper plate positive, lower plate negative. The drop is half-way between the plates."),
    ],
)
def test_plates_without_their_field_are_still_told_in_words(key: str, asked: str, words: str) -> None:
    """The lines and what is said of them are gone; the plates and the body stay, in picture and words."""
    left = scene(key).without({asked})
    assert left is not None
    assert left.description == words
    assert not [item for item in left.items if isinstance(item, Segment) and item.kind == "fieldline"]


def test_a_particle_is_not_shown_alone() -> None:
    """Where its field is to be found there is no picture."""
    assert scene("particle", E="", a="4e14 m/s^2").without({"E"}) is None
    assert scene("particle").without({"F"}) is not None
