"""Formulas as MathML, read again by a reader of its own: nothing here asks ``calc`` how it writes them."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Collection, Iterator
from functools import cache

import pytest

from calc.language.expressions import equation, expression
from calc.language.maths import EQUALS, Maths, Shown
from calc.language.symbols import symbol
from calc.model.answers import WorkedAnswer
from calc.model.questions import Plan
from calc.renderings import mathml
from calc.topics import find, question_keys
from calc.working.working import run, show
from tests.draws import data_sets, planned
from tests.printed import Token, Unreadable, Worked, text_tokens
from tests.strategies import examples

CLOSE = 1e-9  # both readings hold the same printed digits


def elements(piece: Maths) -> ET.Element:
    """The formula as one element, however many it may break into."""
    whole = ET.fromstring(f"<line>{mathml.render(piece)}</line>")
    return ET.fromstring("<mrow>" + "".join(inner(part) for part in whole) + "</mrow>")


def inner(element: ET.Element) -> str:
    """The elements inside one, as text."""
    return "".join(ET.tostring(kid, encoding="unicode") for kid in element)


def tokens(element: ET.Element, names: dict[str, str]) -> list[Token]:
    """Tokens as school notation has them: a fraction, a root and a power bring the brackets the eye supplies."""
    found: list[Token] = []
    kids = iter(element)
    for kid in kids:
        if kid.text in ("Δ", "Σ"):  # a change's or a sum's mark is one name with the letter after it
            name = printed(kid) + printed(next(kids))
            base, _, power = name.rpartition(RAISE)
            raised = [("^", ""), ("number", power)] if name not in names else []
            found += [("name", names[base if raised else name]), *raised]
        else:
            found += one(kid, names)
    return found


def one(node: ET.Element, names: dict[str, str]) -> list[Token]:
    """Tokens of one element."""
    text = (node.text or "").strip("\N{NO-BREAK SPACE} ")
    kids = list(node)
    base = [("(", "")], [(")", "")]
    match node.tag:
        case "mrow" | "mtable" | "mtr" | "mtd":
            return tokens(node, names)
        case "mspace":
            return []
        case "mfrac":
            top, bottom = (one(kid, names) for kid in kids)
            return [*base[0], *base[0], *top, *base[1], ("/", ""), *base[0], *bottom, *base[1], *base[1]]
        case "msqrt":
            return [("√", ""), *base[0], *tokens(node, names), *base[1]]
        case "msub" | "msup" | "msubsup" if (name := printed(node)) in names:
            return [("name", names[name])]
        case "msubsup":
            lowered = f"{printed(kids[0])}{LOWER}{printed(kids[1])}"
            return [("name", names[lowered]), ("^", ""), *base[0], *one(kids[2], names), *base[1]]
        case "msup":
            if kids[0].text in ("sin", "cos", "tan") and kids[1].text == "−1":
                return [("function", "a" + kids[0].text)]
            return [*one(kids[0], names), ("^", ""), *base[0], *one(kids[1], names), *base[1]]
        case "mi" if text in ("sin", "cos", "tan"):
            return [("function", text)]
        case "mi" if text == "π":
            return text_tokens("π", {})
        case "mi" if text in names:
            return [("name", names[text])]
        case "mn":
            return text_tokens(text, {})
        case "mo" if text in "+−×/()|=":
            return [(text, "")]
        case "mtext" if text in ("", "°"):
            return [("°", "")] if text else []
        case _ if text in names:
            return [("name", names[text])]
    raise Unreadable(ET.tostring(node, encoding="unicode"))


LOWER, RAISE = "_", "^"
POWER = re.compile("[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+")


def printed(node: ET.Element) -> str:
    """A symbol as one text: base, then what is lowered, then a prime."""
    kids = list(node)
    match node.tag:
        case "msub":
            return f"{printed(kids[0])}{LOWER}{printed(kids[1])}"
        case "msup":
            return f"{printed(kids[0])}{RAISE}{printed(kids[1])}"
        case "msubsup":
            return f"{printed(kids[0])}{LOWER}{printed(kids[1])}{RAISE}{printed(kids[2])}"
        case "mrow":
            return "".join(map(printed, kids))
    return node.text or ""


@pytest.fixture(scope="module", params=question_keys())
def key(request: pytest.FixtureRequest) -> str:
    """Each question: its answers are worked once for all that look at them."""
    return request.param


@cache
def answers(key: str) -> list[tuple[Plan, dict[str, float], WorkedAnswer]]:
    """Worked answers of a question, for data drawn and every unknown."""
    topic, question = find(key)
    worked = []
    for typed, asked in data_sets(key, examples(1).max_examples):
        made = planned(question, typed, asked)
        if made is not None:
            found, plan = made
            values = run(plan, found.data.settings.constants())
            worked.append((plan, values, show(topic, question, found, plan, values)))
    return worked


def lines(key: str) -> Iterator[tuple[Maths, Collection[str], dict[str, float]]]:
    """Every equation of the answers of a question, with the names that stand in it by their size and the values of the
    answer it was first met in: in symbols most answers have the same lines."""
    met: set[Maths] = set()
    for plan, values, worked in answers(key):
        for line, sizes in equations(plan, worked):
            if line not in met:
                met.add(line)
                yield line, sizes, values


def equations(plan: Plan, worked: WorkedAnswer) -> Iterator[tuple[Maths, Collection[str]]]:
    """Every equation of a worked answer, and the names that stand in it by their size."""
    steps = [step for part in worked.parts for step in part.steps]
    for step, shown in zip(plan.steps, steps, strict=True):
        for line in (shown.formula, shown.substitution, *shown.algebra):
            yield line, step.sizes
    sizes = {check.what: check.sizes for check in plan.checks}
    for check in worked.checks:
        for line in check.lines:
            yield line, sizes[check.what]


def sides(all_: list[Token]) -> list[list[Token]]:
    """The two sides of one equation."""
    at = [i for i, token in enumerate(all_) if token[0] == "="]
    assert len(at) == 1
    return [all_[: at[0]], all_[at[0] + 1 :]]


def test_a_formula_says_what_its_plain_line_says(key: str) -> None:
    """Worked out from MathML and from plain text, both sides of every line of every question agree."""
    for line, sizes, values in lines(key):
        in_text = {symbol(name).text: name for name in values}
        in_marks = {mark_of(name): name for name in values}
        sized = {name: abs(value) if name in sizes else value for name, value in values.items()}
        mine, theirs = tokens(elements(line), in_marks), text_tokens(line.text, in_text)
        for one_side, other in zip(sides(mine), sides(theirs), strict=True):
            agreed = pytest.approx(Worked(other, sized).value, rel=CLOSE, abs=1e-300)
            assert Worked(one_side, sized).value == agreed, line.text


@cache
def mark_of(name: str) -> str:
    """A name as its MathML is read."""
    return "".join(map(printed, elements(Maths(symbol(name).tex, ""))))


def test_every_fraction_root_and_power_is_one(key: str) -> None:
    """As many fractions, roots and raised numbers in MathML as strokes, root signs and raised digits in the text."""
    for line, _, _ in lines(key):
        root = elements(line)
        assert sum(1 for _ in root.iter("mfrac")) == line.text.count("/"), line.text
        assert sum(1 for _ in root.iter("msqrt")) == line.text.count("√"), line.text
        raised = [node for node in root.iter() if node.tag in ("msup", "msubsup")]
        powers = sum(1 for node in raised if (list(node)[-1].text or "").lstrip("−").isdigit())
        assert powers == len(POWER.findall(line.text)), line.text


def test_a_long_line_may_break_before_each_relation_and_term() -> None:
    """Its pieces are formulas of their own, whose words together are the whole line."""
    line = equation("F_net = F_1 + F_2 - F_3 + k*Q1*Q2/r^2").maths()
    pieces = list(ET.fromstring(f"<line>{mathml.render(line)}</line>"))
    assert [piece.get("alttext") for piece in pieces] == [
        "Fₙₑₜ",
        "= F₁",
        "+ F₂",
        "− F₃",
        "+ kQ₁Q₂/r²",
    ]
    assert pieces[3][0].get("form") == "infix", "a term's sign keeps its room at the start of a row"


def test_a_short_line_is_one_formula() -> None:
    """What always fits is not cut up."""
    assert mathml.render(equation("F = m*a").maths()).count("<math") == 1


def test_a_sum_inside_a_root_is_never_cut() -> None:
    """A line breaks outside all brackets, roots and bars only."""
    law = expression("sqrt(F_12^2 + F_32^2 + 2*F_12*F_32*cos(theta) + 25)")
    assert mathml.render(law.maths()).count("<math") == 1


@pytest.mark.parametrize(
    ("tex", "words"),
    [
        (r"F = \dfrac{kQ_1Q_2}{r^2}", "F = kQ_1Q_2/r²"),
        (r"W = \tfrac12 mv^2", "W = (1/2)mv²"),
        (r"F_2 = \sqrt{F_{\text{net}}^2 - F_1^2}", "F_2 = √(F_net² − F_1²)"),
        (r"\tan\theta = |E_y|/|E_x|", "tan θ = |E_y|/|E_x|"),
        (r"k = \dfrac{a + b}{cd}", "k = (a + b)/(cd)"),
        (r"3 \times 10^6", "3 × 10⁶"),
    ],
)
def test_a_formula_of_the_prose_has_words_too(tex: str, words: str) -> None:
    """They stand in for it where it cannot be laid out, and no fraction loses its bar."""
    assert mathml.of_tex(tex).text == words


@pytest.mark.parametrize("tex", [r"\frac{a", r"\int x", "^2", r"\left(a\right]", "a)^2"])
def test_what_is_not_understood_is_refused(tex: str) -> None:
    """The refusal names the formula."""
    with pytest.raises(mathml.FormulaError) as refused:
        mathml.read(tex)
    assert tex in str(refused.value)


@pytest.mark.parametrize(
    "tex", [r"a + \left(-6\right)", r"\left|-6\right|", r"a (-6)^{2}", r"\left(-b + c\right)", "-a"]
)
def test_the_minus_of_a_number_stands_close_to_it(tex: str) -> None:
    """After a bracket or a bar, and at the beginning, no formula has the room of a minus between terms."""
    row = ET.fromstring(f"<mrow>{mathml.render(mathml.of_tex(tex))}</mrow>")
    for parent in row.iter():
        for at, kid in enumerate(parent):
            if kid.text == "−":
                assert at == 0 or kid.get("form") == "prefix"


LINES = (
    "F = k*Q1*Q2/r^2",
    "E = (a + b)/(Q1*r) - a",
    "a = -Q1 + b",
    "a*b = sqrt(Q1^2 + r^2)",
    "r = -Q1/b",
    "F = sin(theta)*Q1/(a - b*cos(theta))",
    "x = (a + b + Q1 + r + a*b + Q1*r)/(a - b)",
    "t = atan(Q1/b)",
    "y = a*(b - Q1)^2",
    "y = Q1^r",
)
NUMBERS = (
    "6",
    "-12",
    "0{,}15",
    r"9 \times 10^{9}",
    r"-1{,}60 \times 10^{-19}",
    r"4.00 \times 10^{-6}",
    "-1234567{,}89",
)


def as_text(tex: str) -> str:
    """The plain text of a number."""
    text = (
        tex.replace("{,}", ",").replace("-", "−").replace(r" \times 10^{", "\N{NO-BREAK SPACE}×\N{NO-BREAK SPACE}10^")
    )
    if tex == r"\square":
        return "▢"
    head, _, power = text.removesuffix("}").partition("^")
    return head + power.translate(str.maketrans("0123456789−", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻"))


@pytest.mark.parametrize("source", LINES)
def test_numbers_in_a_line_seen_before_stand_as_in_a_line_made_afresh(source: str) -> None:
    """What a line looked like with other numbers leaves no trace, nor in where it breaks and how wide it is."""
    line, seen = equation(source), set()
    for turn in range(3 * len(NUMBERS)):
        shown = {}
        for at, name in enumerate(line.names[turn % 2 :]):
            tex = NUMBERS[(turn + (2 + turn // len(NUMBERS)) * at) % len(NUMBERS)]
            shown[name] = Shown(tex, as_text(tex))
            if name == "theta":
                shown[name] = Shown(rf"{2 + turn}{{,}}5^\circ", f"{2 + turn},5°")
        piece, sides = line.maths(shown), (line.left.maths(shown), line.right.maths(shown))
        assert (piece.tex, piece.text) == (f"{sides[0].tex} = {sides[1].tex}", f"{sides[0].text} = {sides[1].text}")
        assert mathml.render(piece) == mathml.render(Maths(piece.tex, piece.text))
        seen.add(piece.tex)
    assert len(seen) > len(NUMBERS)


@pytest.mark.parametrize("key", question_keys()[::2])
def test_every_piece_of_an_answer_is_set_as_its_notations_say(key: str) -> None:
    """Lines, values and their sums: with numbers put into a shape, or read from TeX, the formula is the same."""
    for _, _, worked in answers(key):
        shown = [
            line
            for part in worked.parts
            for step in part.steps
            for line in (step.substitution, *step.algebra, step.result)
        ]
        shown += [line for check in worked.checks for line in check.lines]
        shown += [given.symbol + EQUALS + (given.conversion or given.shown) for given in worked.given]
        for piece in shown:
            assert mathml.render(piece) == mathml.render(Maths(piece.tex, piece.text))


def test_signs_of_markup_are_escaped() -> None:
    """Words and relations cannot become elements."""
    made = mathml.render(Maths("a < b", 'a < "b"'))
    assert 'alttext="a &lt; &quot;b&quot;"' in made
    assert "<mo>&lt;</mo>" in made


def test_a_wide_number_alone_makes_a_formula_broad() -> None:
    """The same line is printed smaller for its numbers alone, and smaller still: a column is forty signs wide."""
    short, long, longest = (
        mathml.render(Maths(tex, "F"))
        for tex in (
            rf"F = (1{{,}}5) ({size}) (2{{,}}5) ({size}) ({size})"
            for size in ("0{,}1", "1234567{,}89", "123456789012{,}89")
        )
    )
    assert "broad" not in short
    assert 'class="broad"' in long
    assert 'class="broad broader"' in longest


def test_a_wrong_formula_is_named_as_it_was_written() -> None:
    """The error shows the formula with its numbers."""
    with pytest.raises(mathml.FormulaError, match=r"^x = 0\{,\}15 \\wrong: "):
        mathml.render(Maths(r"x = 0{,}15 \wrong", "x"))
