"""What a reader types becomes data, or a sentence beside the field."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.reading import Refusals, read
from calc.topics import find

_, FORCE = find("coulomb.force")
GOOD = {"Q1": "6 nC", "Q2": "-2 nC", "r": "15 cm", "F": ""}


def refusals(**changes: str) -> dict[str | None, str]:
    """The sentences for ``GOOD`` with some boxes changed."""
    with pytest.raises(Refusals) as caught:
        read(FORCE, {**GOOD, **changes})
    return {refusal.field: refusal.sentence for refusal in caught.value.refusals}


def test_the_empty_box_is_the_unknown() -> None:
    """With one box empty there is nothing to pick."""
    assert read(FORCE, GOOD).data.asked == "F"


def test_a_picked_unknown_may_keep_its_text() -> None:
    """What stands in the picked box is ignored, not lost."""
    found = read(FORCE, {**GOOD, "F": "3 N"}, "r")
    assert found.data.asked == "r"
    assert not found.data.has("r")


def test_no_empty_box_is_refused() -> None:
    """The reader is told to leave one empty."""
    assert refusals(F="3 N") == {
        None: "Leave exactly one box empty, the one to find; every box is filled. Or pick what to find."
    }


def test_two_empty_boxes_are_named() -> None:
    """Both boxes get a sentence, and the whole form too."""
    found = refusals(Q2="")
    assert set(found) == {None, "Q2", "F"}
    assert "electrostatic force (size) and charge on B are all empty" in str(found[None])


def test_an_empty_box_is_told_once() -> None:
    """Of two empty boxes each has one sentence, not two."""
    with pytest.raises(Refusals) as caught:
        read(FORCE, {**GOOD, "Q2": ""})
    fields = [refusal.field for refusal in caught.value.refusals]
    assert len(fields) == 3
    assert set(fields) == {"F", "Q2", None}


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("r", "0", "Distance must be greater than zero."),
        ("r", "-3 cm", "Distance must be greater than zero."),
        ("r", "twelve", None),
        ("Q1", "5 kg", None),
        ("Q1", "1,2.3 nC", None),
    ],
)
def test_bad_input_gets_a_sentence_at_its_field(
    field: str, typed: str, sentence: str | None
) -> None:
    """Each wrong box has one sentence, at that box."""
    found = refusals(**{field: typed})
    assert set(found) == {field}
    assert found[field].endswith(".")
    if sentence:
        assert found[field] == sentence


def test_a_negative_size_is_refused_with_the_way_out() -> None:
    """A force is typed as a size."""
    with pytest.raises(Refusals) as caught:
        read(FORCE, {**GOOD, "F": "-3 N", "r": ""})
    assert [r.sentence for r in caught.value.refusals] == [
        "Enter the size of the force; choose the direction separately."
    ]


def test_an_unlikely_value_is_warned_about_and_solved() -> None:
    """Six coulombs is no school charge, but it can be worked."""
    warnings = read(FORCE, {**GOOD, "Q1": "6 C"}).warnings
    assert len(warnings) == 1
    assert warnings[0].replace("\N{NO-BREAK SPACE}", " ") == (
        "Charge on A looks very large (usual: at most 1 × 10⁻⁴ C). "
        "Check the prefix; it is worked out all the same."
    )


@given(
    st.dictionaries(
        st.sampled_from(["Q1", "Q2", "r", "F", "acting", "other"]),
        st.text(max_size=80) | st.integers() | st.none(),
    )
)
def test_no_text_brings_any_other_error(typed: dict[str, object]) -> None:
    """Whatever is typed, it is read or refused in sentences."""
    sentences = ["All read."]
    try:
        read(FORCE, typed)
    except Refusals as caught:
        sentences = [refusal.sentence for refusal in caught.refusals]
    assert sentences
    assert all(sentence.strip().endswith((".", "?")) for sentence in sentences)
