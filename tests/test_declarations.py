"""What every declared question promises, whatever its topic. A new topic is tested here without a line of its own."""

import json
import math
import re
from html.parser import HTMLParser
from pathlib import Path

import pytest

from calc import desk
from calc.language.expressions import equation, expression
from calc.model.constants import Settings
from calc.model.questions import (
    ADDRESS_WORDS,
    Choice,
    Data,
    DeclarationError,
    Field,
    Input,
    Plan,
    Question,
    Refusal,
    Rows,
    Topic,
)
from calc.renderings import form, html, latex, text
from calc.topics import find, question_keys
from calc.working.reading import Read, read
from calc.working.working import run, sized, work

KEYS = question_keys()
ROOT = Path(__file__).parents[1]


def solved(key: str) -> tuple[Topic, Question, Read]:
    """The example of a question, read."""
    topic, question = find(key)
    return topic, question, read(question, question.example)


@pytest.mark.parametrize("key", KEYS)
def test_the_example_is_worked_and_its_checks_agree(key: str) -> None:
    """Every example is solved, gives marks, and its second ways agree."""
    topic, question, found = solved(key)
    worked = work(topic, question, found)
    assert worked.parts
    assert worked.marks > 0
    assert worked.unproven == ()
    assert worked.warnings == ()


@pytest.mark.parametrize("key", KEYS)
def test_each_rearranged_line_satisfies_its_law(key: str) -> None:
    """The value a step makes fits the law the step quotes."""
    _, question, found = solved(key)
    plan = question.plan(found.data)
    values = run(plan, Settings().constants())
    for step in plan.steps:
        scope = sized(values, step.sizes)
        law = equation(step.law)
        left, right = law.left.value(scope), law.right.value(scope)
        scale = max(abs(left), abs(right), max((abs(scope[n]) for n in law.names), default=0) * 1e-12)
        assert abs(left - right) <= 1e-9 * scale or math.isclose(abs(left), abs(right), rel_tol=1e-9), step.law


@pytest.mark.parametrize("key", [key for key in KEYS if find(key)[1].unknowns])
def test_every_unknown_can_be_asked_and_comes_back(key: str) -> None:
    """Leaving out any quantity that may be asked gives back the value that was left out, or a choice is named with
    which it can be asked."""
    topic, question, found = solved(key)
    first = found.data.asked
    values = dict(work(topic, question, found).values)
    typed = {**question.example, first: repr_of(question, first, values[first])}
    # With any givens the example need not lead to every unknown; what it leads to is typed as well.
    led_to = [name for name in question.unknowns if name in values or not question.any_givens]
    assert first in led_to
    for name in led_to:
        if name in values and not str(typed.get(name, "")).strip():
            typed[name] = repr_of(question, name, values[name])
    choices = {item.name for item in question.fields if isinstance(item, Choice)}
    for unknown in led_to:
        found = read(question, typed, unknown)
        if unknown != first and refused_at(question, found) in choices:
            continue
        again = work(topic, question, found)
        assert abs(again.values[unknown]) == pytest.approx(abs(values[unknown]), rel=1e-6), unknown


def refused_at(question: Question, found: Read) -> str:
    """The box or choice beside which these data are refused; '' where they are worked."""
    try:
        question.plan(found.data)
    except Refusal as refusal:
        return refusal.field or ""
    return ""


def repr_of(question: Question, name: str, value: float) -> str:
    """A value as a reader could type it, in SI."""
    item = question.find(name)
    assert isinstance(item, Input)
    if item.unit == "°":
        return f"{math.degrees(value)!r} °"
    if item.whole:
        return str(round(value))
    from calc.language.units import parse_unit

    return f"{value!r} {parse_unit(item.unit).si().text}" if item.unit else repr(value)


@pytest.mark.parametrize("key", KEYS)
def test_known_mistakes_are_real_and_different(key: str) -> None:
    """Each mistake names a value of the plan, can be computed, and does not give the right answer."""
    _, question, found = solved(key)
    plan = question.plan(found.data)
    constants = Settings().constants()
    right = run(plan, constants)
    for mistake in (*plan.mistakes, *(m for step in plan.steps for m in step.mistakes)):
        assert mistake.at in right, mistake.key
        assert mistake.said.strip().endswith((".", "?", "!")), mistake.key
        scope = {**constants, **plan.values} if mistake.at in plan.values else right
        try:
            wrong = expression(mistake.instead).value({**right, **scope})
        except ValueError:
            continue  # no real value with these numbers: nobody can have written it down
        if not mistake.turns:
            assert not math.isclose(wrong, right[mistake.at], rel_tol=1e-3), mistake.key


@pytest.mark.parametrize("key", KEYS)
def test_all_renderings_carry_the_same_digits(key: str) -> None:
    """HTML, text and LaTeX print every answer with the same characters."""
    topic, question, found = solved(key)
    worked = work(topic, question, found)
    page, plain, notes = html.render(worked), text.render(worked), latex.render(worked)
    seen = levelled(unescaped(re.sub(r"<[^>]+>", "", page)))
    for answer in worked.answers:
        assert answer.shown.text in plain
        assert answer.shown.tex in notes
        assert levelled(answer.shown.text) in seen
        assert digits(answer.shown.text) == digits(answer.shown.tex)


RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻₀₁₂₃₄₅₆₇₈₉ₖ", "0123456789−0123456789k")


def levelled(shown: str) -> str:
    """What is printed, raised and lowered signs on the line and without spaces: how a page reads without its layout."""
    return re.sub(r"[\s\u2061-\u2064]", "", shown.translate(RAISED))


def digits(shown: str) -> str:
    """Only the digits of a printed value, raised and lowered ones included."""
    return re.sub(r"\D", "", shown.translate(RAISED))


def unescaped(page: str) -> str:
    """A page with its entities resolved."""
    import html as standard

    return standard.unescape(page)


class _Balanced(HTMLParser):
    VOID = ("input", "br", "img", "hr")

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert not [name for name, _ in attrs if name.startswith("on") or name == "style"]
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag closed at once changes nothing."""

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


@pytest.mark.parametrize("key", KEYS)
def test_html_is_balanced_and_holds_no_handlers(key: str) -> None:
    """The answer and the form close every tag and carry no handler or style attribute."""
    topic, question, found = solved(key)
    for piece in (
        html.render(work(topic, question, found)),
        form.render(key, question, question.example),
    ):
        parser = _Balanced()
        parser.feed(piece)
        assert parser.open == []


@pytest.mark.parametrize("key", KEYS)
def test_every_declared_name_is_used(key: str) -> None:
    """Examples, draws and unknowns name fields that exist; choices start with a key of theirs."""
    _, question = find(key)
    names = {item.name for item in question.fields}
    assert set(question.example) <= names
    assert set(question.draws) <= names
    assert set(question.unknowns) <= names
    for item in question.fields:
        if isinstance(item, Choice):
            assert str(question.example.get(item.name, item.options[0][0])) in dict(item.options)
        elif isinstance(item, Rows):
            assert isinstance(question.example[item.name], list | tuple)


def declared(*fields: Field) -> Topic:
    """A topic of one question with these fields."""
    return Topic("magnets", "Magnets", (), (Question("pull", "A pull", fields, _unplanned, {}),))


def _unplanned(data: Data) -> Plan:
    raise AssertionError("never planned")


def box(name: str) -> Input:
    """An input of this name."""
    return Input(name, "Length", "m", 0.1, 1)


RESERVED = "this word has a meaning of its own in addresses, so no field can have it"
SPELLING = "a field's name is a letter, then letters, digits and _ (31 at most)"


@pytest.mark.parametrize(
    ("fields", "name", "rule"),
    [
        *(((box(word),), word, RESERVED) for word in sorted(ADDRESS_WORDS)),
        ((Choice("find", "Which", (("a", "a"),)),), "find", RESERVED),
        ((Rows("charges", "Charges", "charge", (box("part"),)),), "part", RESERVED),
        ((box("open.question"),), "open.question", SPELLING),
        ((box("set.k"),), "set.k", SPELLING),
        ((box("F E"),), "F E", SPELLING),
        ((box("1r"),), "1r", SPELLING),
        ((box("α"),), "α", SPELLING),
        ((box(""),), "", SPELLING),
        ((box("r"), box("r")), "r", "another field of this question has the same name"),
    ],
)
def test_a_name_an_address_cannot_carry_is_refused(fields: tuple[Field, ...], name: str, rule: str) -> None:
    """Such a topic cannot be declared; the error names topic, question, field and rule."""
    with pytest.raises(DeclarationError) as refused:
        declared(*fields)
    assert str(refused.value) == f"topic magnets, question pull, field {name!r}: {rule}. Give it another name."


def test_a_field_may_be_called_q() -> None:
    """A charge q is a usual name; the question of an address has a key no field can have."""
    assert declared(box("q")).questions[0].find("q")


def test_every_key_the_form_pages_read_is_refused_as_a_name() -> None:
    """Each key that a script of a form page takes out of an address has a dot or is a reserved word."""
    read_there = set()
    for script in ("forms.js", "only-form.js", "address.js", "settings.js", "early/practice-room.js"):
        script_text = (ROOT / "site-scripts" / "pages" / script).read_text(encoding="utf-8")
        read_there |= set(re.findall(r'state\.(?:get|has)\("([^"]+)"\)', script_text))
        read_there |= set(re.findall(r"\b(only|practice|paper)=", script_text))
    assert {"find", "part", "only", "practice"} <= read_there
    assert {key for key in read_there if "." not in key} <= ADDRESS_WORDS


@pytest.mark.parametrize("key", KEYS)
def test_each_step_says_what_and_why(key: str) -> None:
    """No step goes without its reason, and no part without its words."""
    _, question, found = solved(key)
    plan = question.plan(found.data)
    for part in plan.parts:
        assert part.ask.strip().endswith((".", "?"))
        assert part.marks > 0
        assert bool(part.steps) == (part.kind == "calculate")
    for step in plan.steps:
        assert step.what.strip()
        assert step.why.strip()


@pytest.mark.parametrize("key", KEYS)
def test_the_desk_solves_every_example(key: str) -> None:
    """Each example goes through the JSON boundary."""
    _, question = find(key)
    reply = json.loads(
        desk.answer(json.dumps({"operation": "solve", "data": {"question": key, "inputs": question.example}}))
    )
    assert reply["ok"], reply
