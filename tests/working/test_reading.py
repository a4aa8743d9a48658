"""What a reader types becomes data, or a sentence beside the field."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.language.quantities import parse_quantity
from calc.model.constants import Settings
from calc.model.questions import Input, Refusal, Rows
from calc.topics import find, question_keys
from calc.working.reading import Refusals, _Reader, read

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
def test_bad_input_gets_a_sentence_at_its_field(field: str, typed: str, sentence: str | None) -> None:
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
    assert (
        warnings[0].replace("\N{NO-BREAK SPACE}", " ")
        == "Charge on A looks very large (usual: at most 1 × 10⁻⁴ C). Check the prefix; it is worked out all the same."
    )


# --- a bare number of a doubtful size ---


def asked_about(key: str, typed: dict[str, object], *boxes: str) -> dict[str | None, Refusal]:
    """The refusals of a question when bare numbers are asked about in ``boxes``, by field."""
    _, question = find(key)
    with pytest.raises(Refusals) as caught:
        read(question, typed, asking=frozenset(boxes))
    return {refusal.field: refusal for refusal in caught.value.refusals}


def plain(text: str) -> str:
    """The text with ordinary spaces."""
    return text.replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("key", "field", "typed", "sentence", "texts"),
    [
        (
            "coulomb.force",
            "Q1",
            "3 × 10⁻⁹",
            "No unit was typed: 3 × 10⁻⁹ C, or 3 × 10⁻⁹ nC?",
            ["3 × 10⁻⁹ C", "3 × 10⁻⁹ nC"],
        ),
        ("coulomb.force", "Q1", "-3e-9", "No unit was typed: −3 × 10⁻⁹ C, or −3 × 10⁻⁹ nC?", ["-3e-9 C", "-3e-9 nC"]),
        ("coulomb.force", "r", "12", "No unit was typed: 12 cm, or 12 m?", ["12 cm", "12 m"]),
        ("coulomb.force", "r", "12.", "No unit was typed: 12 cm, or 12 m?", ["12 cm", "12 m"]),
        (
            "coulomb.force",
            "F",
            "4000",
            "No unit was typed: 4000 mN, 4000 µN, or 4000 N?",
            ["4000 mN", "4000 µN", "4000 N"],
        ),
        ("electric-field.plates", "d", "0,015", "No unit was typed: 0,015 m, or 0,015 mm?", ["0,015 m", "0,015 mm"]),
        ("electric-field.plates", "V", "0,5", "No unit was typed: 0,5 kV, or 0,5 V?", ["0,5 kV", "0,5 V"]),
        ("equilibrium.slope", "theta", "0,5", "No unit was typed: 0,5 rad, or 0,5°?", ["0,5 rad", "0,5°"]),
    ],
)
def test_a_bare_number_of_a_doubtful_size_is_asked_about(
    key: str, field: str, typed: str, sentence: str, texts: list[str]
) -> None:
    """Where the box's unit makes no sensible size and another does, the reader chooses; each choice is read as
    it says."""
    _, question = find(key)
    item = question.find(field)
    assert isinstance(item, Input)
    refusal = asked_about(key, {**question.example, field: typed}, field)[field]
    assert plain(refusal.sentence) == sentence
    assert [pick.text for pick in refusal.picks] == texts
    for pick in refusal.picks:
        meant, shown = (parse_quantity(text, item.unit) for text in (pick.text, pick.words))
        assert meant.unit_typed
        assert meant.value == shown.value


@pytest.mark.parametrize(
    ("field", "typed"),
    [("Q1", "5"), ("r", "3"), ("r", "0,12"), ("Q1", "3e-9 nC"), ("r", "12 m"), ("r", "1e250")],
)
def test_a_number_that_leaves_no_doubt_is_not_asked_about(field: str, typed: str) -> None:
    """A sensible size, a unit that was typed, or a size no unit makes sensible: it is worked out."""
    assert read(FORCE, {**GOOD, field: typed}, asking=frozenset(GOOD)).notes == ()


def test_a_linked_bare_number_is_answered_with_a_note() -> None:
    """Where nothing may be asked, the number is taken in the box's unit, and the question is put beside it."""
    found = read(FORCE, {**GOOD, "r": "12"})
    assert found.data.values["r"] == 12
    [note] = found.notes
    assert note.field == "r"
    assert plain(note.sentence) == "No unit was typed, so this was taken as 12 m. Did you mean 12 cm?"
    assert [pick.text for pick in note.picks] == ["12 m", "12 cm"]


def test_every_bare_number_comes_back_with_its_unit() -> None:
    """What was understood can be typed again, and means the same; a pure number and a typed unit stay."""
    found = read(FORCE, {**GOOD, "Q1": "6", "r": "0,15"})
    assert found.understood == {"Q1": "6 nC", "r": "0,15 m"}
    again = read(FORCE, {**GOOD, **found.understood})
    assert again.data.values == found.data.values
    assert again.understood == {}


def test_a_cell_of_a_table_is_asked_about_in_its_own_row() -> None:
    """Rows are counted as they stand on the page, empty ones too."""
    rows = [{}, {"Q": "3 nC", "x": "12"}, {"Q": "4 nC", "x": "five"}]
    told = asked_about("several-charges.line", {"charges": rows}, "charges.1.x")
    assert set(told) == {"charges.1.x", "charges.2.x"}
    assert plain(told["charges.1.x"].sentence) == "No unit was typed: 12 cm, or 12 m?"


# --- the example in a refusal ---


@pytest.mark.parametrize(
    ("key", "field", "typed", "point", "sentence"),
    [
        (
            "coulomb.force",
            "r",
            "twelve",
            False,
            '"twelve" does not start with a number. Type a number, for example 12 cm.',
        ),
        ("coulomb.force", "r", "1/4 m", False, '"1/4 m" is a fraction. Type it as a decimal number: 0,25 m.'),
        ("coulomb.force", "r", "1/4 m", True, '"1/4 m" is a fraction. Type it as a decimal number: 0.25 m.'),
        ("coulomb.force", "Q2", "two", False, '"two" does not start with a number. Type a number, for example −5 nC.'),
        ("coulomb.force", "R", "one", False, '"one" does not start with a number. Type a number, for example 1 cm.'),
        ("electric-field.plates", "V", "", True, "Type a value, for example 1.2 kV."),
        ("coulomb.scaling", "a", "two", False, '"two" does not start with a number. Type a number, for example 2.'),
        ("equilibrium.slope", "theta", "x", False, '"x" does not start with a number. Type a number, for example 35°.'),
    ],
)
def test_the_example_of_a_refusal_is_of_its_own_box(
    key: str, field: str, typed: str, point: bool, sentence: str
) -> None:
    """A refusal shows a value such as this very box takes, with the reader's decimal sign."""
    _, question = find(key)
    typed_in = {**question.example, field: typed}
    asked = next((name for name in question.unknowns if name != field), "")
    with pytest.raises(Refusals) as caught:
        read(question, typed_in, asked, Settings(comma=not point))
    assert {refusal.field: plain(refusal.sentence) for refusal in caught.value.refusals} == {field: sentence}


@pytest.mark.parametrize("key", question_keys())
def test_the_example_of_every_box_is_read_in_it(key: str) -> None:
    """What a refusal shows as an example can be typed into that box without a refusal or a warning."""
    _, question = find(key)
    reader = _Reader(question, Settings(), frozenset())
    for item in question.fields:
        for box in item.columns if isinstance(item, Rows) else [item]:
            if isinstance(box, Input):
                path = f"{item.name}.0.{box.name}" if isinstance(item, Rows) else box.name
                reader.quantity(box, path, reader.example(box, path))
    assert reader.refusals == []
    assert reader.warnings == []


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
