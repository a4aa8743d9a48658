"""The boundary between page and physics: JSON in, JSON out, never a traceback."""

import json
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import desk, topics


def ask(operation: str, **data: object) -> dict:
    """One request and its reply."""
    return json.loads(desk.answer(json.dumps({"operation": operation, "data": data})))


INPUTS = {"Q1": "6 nC", "Q2": "-2 nC", "r": "15 cm", "F": ""}


def test_a_solved_question_comes_back_in_three_renderings() -> None:
    """html, text and latex say the same answer."""
    reply = ask(
        "solve", question="coulomb.force", inputs=INPUTS, **{"as": ["html", "text", "latex"]}
    )
    assert reply["ok"]
    assert reply["data"]["asked"] == "F"
    assert "4,80 × 10⁻⁶" in reply["data"]["text"].replace("\N{NO-BREAK SPACE}", " ")
    assert r"4{,}80 \times 10^{-6}" in reply["data"]["latex"]
    assert "4{,}80" in reply["data"]["html"]


def test_settings_change_constants_decimals_and_sign() -> None:
    """A reader's k, three decimals and a point are used."""
    settings = {"k": "8,99e9", "decimals": "3", "comma": "point"}
    reply = ask(
        "solve", question="coulomb.force", inputs=INPUTS, settings=settings, **{"as": ["text"]}
    )
    assert "4.795 × 10⁻⁶" in reply["data"]["text"].replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("settings", "field", "message"),
    [
        ({"k": "0"}, "k", "The setting k cannot be “0”: Coulomb's constant must be greater than zero."),
        ({"k": "-9e9"}, "k", "The setting k cannot be “-9e9”: Coulomb's constant must be greater than zero."),
        ({"k": "nine"}, "k", 'The setting k (Coulomb\'s constant) cannot be used. "nine" does not start with a number. '
         "Type a number, for example 9 × 10⁹ N·m²·C⁻²."),
        ({"k": 5}, "k", "The setting k cannot be “5”: type Coulomb's constant as text, such as 9 × 10⁹ N·m²·C⁻²."),
        ({"g": "0"}, "g", "The setting g cannot be “0”: acceleration due to gravity must be greater than zero."),
        ({"decimals": "9"}, "decimals", "The setting decimals cannot be “9”: decimals are a whole number from 0 to 6."),
        ({"decimals": "²"}, "decimals", "The setting decimals cannot be “²”: decimals are a whole number from 0 to 6."),
        ({"decimals": "9" * 5000}, "decimals",
         "The setting decimals cannot be “99999999999999999999…”: decimals are a whole number from 0 to 6."),
        ({"decimals": True}, "decimals", "The setting decimals cannot be “true”: decimals are a whole number from 0 to 6."),
        ({"comma": "both"}, "comma", "The setting comma cannot be “both”: the decimal sign is comma or point."),
        ({"zork": "3"}, "zork", "The setting zork cannot be “3”: there is no setting of this name."),
    ],
)  # fmt: skip
def test_impossible_settings_are_refused(settings: dict, field: str, message: str) -> None:
    """Each wrong setting is named with what is wrong, and one choice takes it away."""
    reply = ask("settings", settings=settings)
    assert not reply["ok"]
    [error] = reply["errors"]
    assert error["field"] == f"settings.{field}"
    assert error["message"].replace("\N{NO-BREAK SPACE}", " ") == message
    assert [choice["text"] for choice in error["choices"]] == [""]


def test_the_way_out_of_a_wrong_constant_names_the_usual_value() -> None:
    """The choice beside a wrong constant says what comes instead."""
    [error] = ask("settings", settings={"g": "0"})["errors"]
    words = error["choices"][0]["words"].replace("\N{NO-BREAK SPACE}", " ")
    assert words == "Use the data sheet's g = 9,8 m·s⁻²"


# Any JSON value: what a page, a link or a stored file might hold.
SHAPES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=12),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner, max_size=3)
    ),
    max_leaves=6,
)
KEYS = st.sampled_from(["question", "inputs", "find", "settings", "variant", "typed"])


@given(st.sampled_from(["solve", "settings", "sheet"]), st.dictionaries(KEYS, SHAPES), SHAPES)
def test_any_shape_of_request_is_answered(operation: str, changed: dict, cell: object) -> None:
    """Whatever JSON stands where text or a list belongs, the reply is an answer or sentences."""
    data = {
        "question": "several-charges.line",
        "inputs": {"charges": [cell, {"Q": cell, "x": cell}], "on": cell},
    }
    reply = ask(operation, **{**data, **changed})
    assert reply["ok"] or all(error["message"].endswith((".", "?")) for error in reply["errors"])


@pytest.mark.parametrize(
    "request_text",
    [
        "",
        "[]",
        "null",
        "{}",
        '{"operation": "open"}',
        '{"operation": "solve", "data": 3}',
        "x" * 200_000,
        "[" * 5000,
    ],
)
def test_a_malformed_request_is_a_sentence(request_text: str) -> None:
    """Whatever arrives, a reply with a message goes back."""
    reply = json.loads(desk.answer(request_text))
    assert reply["ok"] is False
    assert reply["errors"][0]["message"].endswith(".")


def test_an_unknown_notation_is_refused() -> None:
    """Only the declared renderings can be asked for."""
    reply = ask("solve", question="coulomb.force", inputs=INPUTS, **{"as": ["pdf"]})
    assert (
        reply["errors"][0]["message"]
        == "An answer is shown as html, text, latex, and nothing else."
    )


def test_an_unknown_question_is_a_sentence() -> None:
    """A link to a question that is gone says so."""
    reply = ask("solve", question="nothing.here", inputs={})
    assert reply["errors"][0]["message"].startswith("There is no such question")


HOSTILE = "<img src=x onerror=alert(1)>\"'&"


@pytest.mark.parametrize("field", ["Q1", "Q2", "r", "F", "acting"])
def test_markup_in_a_field_never_comes_back_as_markup(field: str) -> None:
    """Typed markup is quoted in a plain sentence only; no html is sent with it."""
    reply = ask(
        "solve",
        question="coulomb.force",
        inputs={**INPUTS, field: HOSTILE},
        find="F" if field != "F" else "r",
    )
    assert not reply["ok"]
    assert "data" not in reply


@given(st.text(max_size=60), st.text(max_size=60), st.text(max_size=20))
def test_fuzzed_inputs_never_raise(q1: str, r: str, find: str) -> None:
    """Any text in any box gives a reply."""
    reply = ask("solve", question="coulomb.force", inputs={**INPUTS, "Q1": q1, "r": r}, find=find)
    assert reply["ok"] or all(error["message"] for error in reply["errors"])


def calls_of(question: str, inputs: object) -> tuple[int, dict]:
    """How many functions are called for an answer, and the reply."""
    calls = 0

    def count(_frame: object, event: str, _value: object) -> None:
        nonlocal calls
        calls += event in {"call", "c_call"}

    sys.setprofile(count)
    try:
        reply = ask("solve", question=question, inputs=inputs)
    finally:
        sys.setprofile(None)
    return calls, reply


FAR_APART = [
    (
        "electric-field.line",
        "-1,06e-9@50, -5@6,48e-6, -4,45@0, -5@8,91e5, -4,85@5,12e-2, -5@4,68e-6",
    ),
    ("electric-field.line", "5,32@6,22e6, 7,74e-6@5,94, 8@9,27e-5, 8@1,76, 6,69e-3@5,21, 8@0"),
    ("electric-field.pattern", "6@3e-26_9, 6@8_2, 5e-2@20_5e18, -6@7_5e9"),
    ("electric-field.pattern", "-3@8e3_4e5, -5e-6@20_9e-4, 7@9e-4_1e-25, 8@4e-5_0, 6@5_7e3"),
    (
        "electric-field.plane",
        "-4e-25@-30_0, -6@0_-6, -8@5e-2_-20, 9@4_8, 9@3_9, 9@-1_4, -1@8e-11_6",
    ),
]


@pytest.mark.parametrize(("question", "charges"), FAR_APART)
def test_hostile_data_take_bounded_work(question: str, charges: str) -> None:
    """Charges and places of wildly different sizes are answered within a dozen ordinary answers' work."""
    ordinary, _ = calls_of("electric-field.null", topics.find("electric-field.null")[1].example)
    rows = []
    for charge in charges.split(", "):
        size, place = charge.split("@")
        row = {"Q": f"{size} nC"}
        row.update(zip(("x", "y"), (f"{text} cm" for text in place.split("_")), strict=False))
        rows.append(row)
    calls, reply = calls_of(question, {"charges": rows, "x_P": "30 cm", "y_P": "40 cm", "q": ""})
    assert reply["ok"]
    assert calls < 12 * ordinary
