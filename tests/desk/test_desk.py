"""The boundary between page and physics: JSON in, JSON out, never a traceback."""

import json
import re
import sys
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import desk, topics
from calc.figures import Figure, field
from calc.model.questions import Rows
from calc.renderings import html, svg
from calc.working.reading import read
from calc.working.working import work


def ask(operation: str, **data: object) -> dict:
    """One request and its reply."""
    return json.loads(desk.answer(json.dumps({"operation": operation, "data": data})))


INPUTS = {"Q1": "6 nC", "Q2": "-2 nC", "r": "15 cm", "F": ""}


def test_a_solved_question_comes_back_in_three_renderings() -> None:
    """html, text and latex say the same answer."""
    reply = ask("solve", question="coulomb.force", inputs=INPUTS, **{"as": ["html", "text", "latex"]})
    assert reply["ok"]
    assert reply["data"]["asked"] == "F"
    assert "4,80 × 10⁻⁶" in reply["data"]["text"].replace("\N{NO-BREAK SPACE}", " ")
    assert r"4{,}80 \times 10^{-6}" in reply["data"]["latex"]
    assert "<mn>4,80</mn>" in reply["data"]["html"]


def test_settings_change_constants_decimals_and_sign() -> None:
    """A reader's k, three decimals and a point are used."""
    settings = {"k": "8,99e9", "decimals": "3", "comma": "point"}
    reply = ask("solve", question="coulomb.force", inputs=INPUTS, settings=settings, **{"as": ["text"]})
    assert "4.795 × 10⁻⁶" in reply["data"]["text"].replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("settings", "field", "message"),
    [
        ({"k": "0"}, "k", "The setting k cannot be “0”: Coulomb's constant must be greater than zero."),
        ({"k": "-9e9"}, "k", "The setting k cannot be “-9e9”: Coulomb's constant must be greater than zero."),
        (
            {"k": "nine"},
            "k",
            (
                'The setting k (Coulomb\'s constant) cannot be used. "nine" does not start with a number. '
                "Type a number, for example 9 × 10⁹ N·m²·C⁻²."
            ),
        ),
        ({"k": 5}, "k", "The setting k cannot be “5”: type Coulomb's constant as text, such as 9 × 10⁹ N·m²·C⁻²."),
        ({"g": "0"}, "g", "The setting g cannot be “0”: acceleration due to gravity must be greater than zero."),
        ({"decimals": "9"}, "decimals", "The setting decimals cannot be “9”: decimals are a whole number from 0 to 6."),
        ({"decimals": "²"}, "decimals", "The setting decimals cannot be “²”: decimals are a whole number from 0 to 6."),
        (
            {"decimals": "9" * 5000},
            "decimals",
            "The setting decimals cannot be “99999999999999999999…”: decimals are a whole number from 0 to 6.",
        ),
        (
            {"decimals": True},
            "decimals",
            "The setting decimals cannot be “true”: decimals are a whole number from 0 to 6.",
        ),
        ({"comma": "both"}, "comma", "The setting comma cannot be “both”: the decimal sign is comma or point."),
        ({"zork": "3"}, "zork", "The setting zork cannot be “3”: there is no setting of this name."),
    ],
)
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
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner, max_size=3),
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
    assert reply["errors"][0]["message"] == "An answer is shown as html, text, latex, and nothing else."


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

    for charge in ("5 nC", "7 nC"):  # the last two answers are kept: this one shall be worked
        ask("solve", question="coulomb.electrons", inputs={"Q": charge, "n": ""})
    field._traced.cache_clear()  # and its field lines followed
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
    """Charges and places of wildly different sizes are answered within 450 000 calls, and four times the work that as
    many charges of ordinary sizes and places make. (The most that was counted is 430 000, in the plane.)"""
    rows, usual = [], []
    for number, charge in enumerate(charges.split(", ")):
        size, place = charge.split("@")
        row = {"Q": f"{size} nC"}
        row.update(zip(("x", "y"), (f"{text} cm" for text in place.split("_")), strict=False))
        rows.append(row)
        x, y = 7 * number, 5 * number % 13
        usual.append(
            {"Q": f"{'-+'[number % 2]}{number + 2} nC", "x": f"{x} cm"} | ({"y": f"{y} cm"} if "y" in row else {})
        )
    calls, reply = calls_of(question, {"charges": rows, "x_P": "30 cm", "y_P": "40 cm", "q": ""})
    ordinary, expected = calls_of(question, {"charges": usual, "x_P": "30 cm", "y_P": "40 cm", "q": ""})
    assert reply["ok"]
    assert expected["ok"]
    assert calls < min(4 * ordinary, 450_000), ordinary


@pytest.mark.parametrize(
    "wanted",
    [["html", "html"], ["text", "html", "text"], [["html"]], [{}], [None], "html", {}, [1]],
)
def test_each_notation_is_given_once_or_refused(wanted: object) -> None:
    """Doubles are answered once; what is no notation's name is refused with a sentence."""
    reply = ask("solve", question="coulomb.force", inputs=INPUTS, **{"as": wanted})
    if reply["ok"]:
        assert isinstance(wanted, list)
        assert set(reply["data"]) & set(desk.NOTATIONS) == set(wanted)
    else:
        assert reply["errors"][0]["message"].startswith("An answer is shown as")


@pytest.mark.parametrize("key", topics.question_keys())
def test_figures_asked_for_later_are_those_of_the_answer(key: str) -> None:
    """Lines without figures, and the figures put into their places, are the answer in one piece."""
    data = {"question": key, "inputs": dict(topics.find(key)[1].example)}
    whole, lines = ask("solve", **data)["data"], ask("solve", **data, drawn=False)["data"]
    figures = ask("drawings", **data)["data"]["drawings"]
    assert "<svg" not in lines["html"]
    html = lines["html"]
    for place, picture in figures.items():
        empty = f'data-drawing="{place}"></figure>'
        assert html.count(empty) == 1
        html = html.replace(empty, f'data-drawing="{place}">{picture}</figure>')
    assert html == whole["html"]
    assert {**lines, "html": html} == whole


@pytest.mark.parametrize("key", topics.question_keys())
@pytest.mark.parametrize("chosen", [slice(0), slice(1, 2), slice(None)], ids=["none open", "one open", "all open"])
def test_folded_parts_asked_for_later_are_those_of_the_answer(key: str, chosen: slice) -> None:
    """Of parts that nobody has open only the heads come first; with the rest put in it is the answer in one piece."""
    data = {"question": key, "inputs": dict(topics.find(key)[1].example)}
    whole = ask("solve", **data, drawn=False)["data"]["html"]
    keys = re.findall(r'<details class="part" data-part="([^"]+)"', whole)
    opened = keys[chosen]
    lines = ask("solve", **data, drawn=False, opened=opened)["data"]["html"]
    later = ask("drawings", **data, opened=opened)["data"]["parts"]
    assert list(later) == [part for part in sorted(keys) if part not in opened]
    for part in later.values():
        head = part[: part.index("</summary>") + len("</summary>")] + "</details>"
        assert lines.count(head) == 1
        lines = lines.replace(head, part)
    assert lines == whole


def test_lines_of_folded_parts_are_not_made_before_they_are_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    """A long answer of which nothing is open is answered with its heads, and no step is written out."""
    made: list[str] = []
    step = html.step
    monkeypatch.setattr(html, "step", lambda shown, index: made.append(shown.makes) or step(shown, index))
    data = {"question": "several-charges.rail", "inputs": topics.find("several-charges.rail")[1].example}
    assert ask("solve", **data, drawn=False, opened=[])["ok"]
    assert made == []
    assert ask("drawings", **data, opened=[])["ok"]
    assert len(made) > 5


def test_an_open_part_is_known_by_its_former_key() -> None:
    """An old link to a renamed part brings the lines of that part at once."""
    topic, question = topics.find("several-charges.rail")
    worked = work(topic, question, read(question, question.example))
    worked = replace(worked, parts=(replace(worked.parts[0], key="new", former=("old",)), *worked.parts[1:]))
    assert "new" not in html.folded_parts(worked, open_parts=False, opened=["old"])
    assert "new" in html.folded_parts(worked, open_parts=False, opened=[])


def test_lines_alone_are_answered_without_making_a_figure(monkeypatch: pytest.MonkeyPatch) -> None:
    """Neither a field line is followed nor a label placed before figures are asked for."""
    made: list[str] = []
    monkeypatch.setattr(svg, "render", lambda figure: made.append(figure.title) or "")
    monkeypatch.setattr(Figure, "__post_init__", lambda figure: made.append(figure.title))
    data = {
        "question": "electric-field.null",
        "inputs": {**topics.find("electric-field.null")[1].example, "D": "31 cm"},
    }
    assert ask("solve", **data, drawn=False)["ok"]
    assert made == []
    assert ask("drawings", **data)["ok"]
    assert made != []


def test_figures_of_refused_data_are_refused_as_the_answer_is() -> None:
    """Whoever asks only for the figures hears the same sentence."""
    data = {"question": "coulomb.force", "inputs": {**INPUTS, "r": "0 cm"}}
    assert ask("drawings", **data) == ask("solve", **data)
    assert not ask("drawings", **data)["ok"]


@pytest.mark.parametrize(("at", "key"), [*enumerate(topics.question_keys())])
def test_a_question_is_rehearsed(at: int, key: str) -> None:
    """Each question works in a turn, one question in another turn than the next."""
    turn = at % desk.REHEARSALS
    more = turn < desk.REHEARSALS - 1
    assert ask("rehearse", question=key, turn=turn) == {"ok": True, "data": {"more": more}}


def test_a_question_is_rehearsed_in_turns() -> None:
    """The last turn says that it is the last."""
    turns = 0
    while ask("rehearse", question="coulomb.force", turn=turns) == {"ok": True, "data": {"more": True}}:
        turns += 1
    assert turns == desk.REHEARSALS - 1 == 8


@pytest.mark.parametrize("turn", [-1, 9, "0", None, 1.5])
def test_a_turn_that_is_none_is_refused(turn: object) -> None:
    """What is no number of a turn is answered with a sentence."""
    sentence = "A question is rehearsed in turns numbered from 0 to 8."
    assert ask("rehearse", question="coulomb.force", turn=turn)["errors"][0]["message"] == sentence


def test_rehearsing_leaves_the_answer_on_view_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    """What a reader had solved is not worked anew for its drawings."""
    worked: list[str] = []
    work = desk.work
    monkeypatch.setattr(desk, "work", lambda topic, question, found: worked.append("") or work(topic, question, found))
    data = {"question": "coulomb.force", "inputs": {**INPUTS, "r": "17 cm"}}
    ask("solve", **data, drawn=False)
    for turn in range(3):
        ask("rehearse", question="coulomb.force", turn=turn)
    before = len(worked)
    ask("drawings", **data)
    assert len(worked) == before


def test_a_notation_asked_twice_is_worked_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """A request cannot make the booklet render one answer over and over."""
    made = []
    monkeypatch.setattr(desk, "NOTATIONS", {"text": lambda worked, *_: made.append(worked) or "seen"})
    ask("solve", question="coulomb.force", inputs=INPUTS, **{"as": ["text"] * 50})
    assert len(made) == 1


@pytest.mark.parametrize("text", ["1e300", "-1e300", "1e-300", "-1e300 N", "9e299 N", "1e-320", "1e999"])
def test_an_answer_of_any_size_is_marked(text: str) -> None:
    """A hopeless number is wrong, and the part before it still gets its marks."""
    data = {"question": "coulomb.contact", "inputs": {"Q1": "+9 nC", "Q2": "-4 nC", "r": "20 cm", "r2": ""}}
    right = {"before": {"value": "8,1e-6 N", "direction": "attract"}}
    alone = ask("mark", **data, answers=right)
    both = ask("mark", **data, answers={**right, "shared": {"value": text}, "electrons": {"value": text}})
    assert alone["ok"], alone
    assert both["ok"], both
    assert both["data"]["earned"] == alone["data"]["earned"] > 0


OPERATIONS = ["solve", "settings", "sheet", "mark", "practice", "revision", "paper"]
ODD = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.just(10**400)
    | st.floats()
    | st.text(st.characters(), max_size=12)
    | st.just("\ud800")
    | st.just("1e300")
    | st.sampled_from(["coulomb.force", "equilibrium.threads", "F", "html", "6 nC", "Q1", "k"])
)
NAMES = st.sampled_from(
    [
        "question",
        "inputs",
        "find",
        "settings",
        "variant",
        "as",
        "answers",
        "Q1",
        "Q2",
        "r",
        "F",
        "value",
        "steps",
        "direction",
        "substitution",
        "formula",
        "said",
        "seed",
        "level",
        "items",
        "marks",
        "entries",
        "copies",
        "learners",
        "k",
        "decimals",
        "comma",
    ]
) | st.text(max_size=5)
NESTED = st.recursive(
    ODD, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(NAMES, inner, max_size=5), max_leaves=25
)


@given(
    operation=st.sampled_from(OPERATIONS) | NESTED, data=st.dictionaries(NAMES, NESTED, max_size=8), real=st.booleans()
)
def test_whatever_is_sent_is_answered(operation: object, data: dict, real: bool) -> None:
    """Any JSON, with NaN, Infinity, huge numbers and half characters in it, gets a reply that can be passed on."""
    if real:
        data = {"question": "coulomb.force", "inputs": INPUTS, **data}
    reply = desk.answer(json.dumps({"operation": operation, "data": data}))
    reply.encode()
    told = json.loads(reply)
    assert told["ok"] in (True, False)
    assert told["ok"] or all(error["message"].strip() for error in told["errors"])
    assert told["ok"] or told["errors"][0]["message"] != desk.OURS, told


@pytest.mark.parametrize("depth", [50, 900, 5000, 49_000])
def test_deep_nesting_is_a_sentence(depth: int) -> None:
    """Brackets in brackets end in a reply, in the request and in its data."""
    deep = "[" * depth + "]" * depth
    for request in (deep, f'{{"operation": "solve", "data": {{"inputs": {deep[:98_000]}}}}}'):
        assert json.loads(desk.answer(request))["ok"] is False


@pytest.mark.parametrize("key", topics.question_keys())
def test_a_number_of_any_size_in_any_box_is_answered(key: str) -> None:
    """Each box takes sizes at the end of what floats carry: solved or refused, never a fault of the booklet."""
    _, question = topics.find(key)
    for item in question.fields:
        if isinstance(item, Rows):
            example = question.example[item.name]
            assert isinstance(example, list | tuple)
            boxes = [(item.name, column.name) for column in item.columns]
        else:
            boxes, example = [(item.name, "")], ()
        for name, column in boxes:
            for number in ("1e300", "-1e300", "1e-290", "1e-320", "-1e150", "1e160"):
                first = {**example[0], column: number} if column else None
                entry = [first, *example[1:]] if column else number
                reply = ask("solve", question=key, inputs={**question.example, name: entry})
                assert reply["ok"] or reply["errors"][0]["message"] != desk.OURS, (name, number, reply)


@pytest.mark.parametrize("key", topics.question_keys())
def test_a_screen_reader_hears_of_every_answer(key: str) -> None:
    """A solved question always has a line to be heard, one that ends in a drawing too."""
    _, question = topics.find(key)
    reply = ask("solve", question=key, inputs=dict(question.example))
    assert reply["data"]["spoken"].strip()


@pytest.mark.parametrize(
    ("key", "seen"),
    [("coulomb.force", False), ("momentum.join", False), ("equilibrium.slope", True), ("several-charges.line", True)],
)
def test_a_sheet_says_whether_the_drawing_tells_the_answer(key: str, seen: bool) -> None:
    """A drawing with the force that is asked for stays folded while a learner works; one of the data alone need not."""
    _, question = topics.find(key)
    assert ask("sheet", question=key, inputs=question.example)["data"]["scene"] is seen
