"""Every law that a topic declares: sympy proves each rearranged form, and that its slips are wrong."""

import importlib
import math
import pkgutil
import re
from collections.abc import Iterator
from functools import cache
from random import Random

import pytest
import sympy

import calc.topics
from calc.language.expressions import ExpressionError, equation, expression
from calc.marking.algebra_slips import algebra_slips
from calc.model.constants import SHEET
from calc.model.questions import NO_MARKS, Mistake, Question, Step
from calc.model.relations import Relation, Said, Together

KEEP_SMALL = {"theta", "alpha", "beta", "phi", "gamma"}  # angles, in radians


def declared() -> Iterator[tuple[str, Relation]]:
    """Every relation that stands in a module of a topic, alone or among others."""
    for module in pkgutil.walk_packages(calc.topics.__path__, "calc.topics."):
        for name, value in vars(importlib.import_module(module.name)).items():
            for relation in found_in(value):
                yield f"{module.name.removeprefix('calc.topics.')}:{name}:{relation.law}", relation
            if isinstance(value, Question):  # its laws with the units of its boxes
                for relation in found_in(value.relations):
                    yield f"{module.name.removeprefix('calc.topics.')}:{name}:{relation.law}", relation


def found_in(value: object) -> Iterator[Relation]:
    """The relations in a value: itself, in a collection, or the two of a pair."""
    if isinstance(value, Relation):
        yield value
    elif isinstance(value, Together):
        yield from (value.first, value.second)
    elif isinstance(value, tuple | list):
        for item in value:
            yield from found_in(item)
    elif isinstance(value, dict):
        yield from found_in(list(value.values()))


RELATIONS = dict(declared())
# A law that several modules declare counts once for each set of mistakes, of unknowns and of angles that it has there.
DISTINCT = {
    (
        r.law,
        tuple(sorted((name, unit == "°") for name, unit in r.units.items())),
        tuple(sorted(m.instead for m in r.mistakes)),
    ): r
    for r in RELATIONS.values()
}
CASES = [
    pytest.param(relation, step, id=f"{relation.law} for {step.makes}, number {number}")
    for number, relation in enumerate(DISTINCT.values(), start=1)
    for step in relation.steps()
    if not step.root
]


@cache
def in_sympy(text: str) -> sympy.Expr:
    """An expression of ours as sympy reads it."""
    names = {name: sympy.Symbol(name) for name in expression(text).names}
    angles = {"deg90": sympy.pi / 2, "deg180": sympy.pi, "deg360": 2 * sympy.pi}  # that a line prints in degrees
    return sympy.sympify(text.replace("^", "**").replace("abs(", "Abs("), locals=names | angles)


def worth(text: str, values: dict[str, float]) -> complex:
    """An expression of ours worked by sympy."""
    tree = in_sympy(text)
    return complex(sympy.N(tree, subs={name: values[str(name)] for name in tree.free_symbols}))


def some_values(relation: Relation, step: Step) -> dict[str, float]:
    """Numbers for which the step has a real value, drawn from a seed."""
    chance = Random(f"{relation.law} {step.makes}")
    # where a mistake leaves a sign out, one sign has to be there
    unsigned = re.findall(r"abs\((\w+)\)", " ".join(m.instead for m in relation.mistakes))
    turned = [name for name in unsigned if name != step.makes][-1:]
    for tried in range(500):
        widest = 3 if tried < 250 else 30  # g/a below 1 needs more than any 3
        values = {
            name: (
                SHEET[name].school
                if name in SHEET and name not in relation.units
                else (
                    chance.uniform(0.1, 0.7)
                    if name in KEEP_SMALL or relation.units.get(name) == "°"
                    else chance.uniform(0.2, widest)
                )
            )
            for name in equation(relation.law).names
            if name != step.makes
        }
        values |= {name: -values[name] for name in turned if name in values}
        if values.get("h") == SHEET["h"].school:  # frequencies as large as it is small: no term of a sum is lost
            values |= {name: value / values["h"] for name, value in values.items() if name.partition("_")[0] == "f"}
        try:
            values[step.makes] = expression(step.how).value(values)
        except ExpressionError:
            continue
        return values
    raise AssertionError(f"no numbers for {relation.law} and {step.makes}")


@pytest.mark.parametrize(("relation", "step"), CASES)
def test_every_rearranged_form_puts_its_law_right(relation: Relation, step: Step) -> None:
    """Sympy puts the value of the form into the law, and both sides agree; so do the lines between."""
    values = some_values(relation, step)
    values[step.makes] = worth(step.how, values).real
    for line in (relation.law, *step.lines):
        left, right = line.split("=")
        one, other = worth(left, values), worth(right, values)
        scale = max(abs(one), abs(other), 1e-3)
        assert abs(one - other) < 1e-7 * scale, line


@pytest.mark.parametrize(("relation", "step"), CASES)
def test_no_slip_is_the_right_form(relation: Relation, step: Step) -> None:
    """Each slip of the form, and each mistake declared for it, gives another value, for sympy too."""
    values = some_values(relation, step)
    right = worth(step.how, values)
    slips: list[Mistake | object] = [*algebra_slips(step.how), *step.mistakes]
    for slip in slips:
        instead = slip.instead  # type: ignore[attr-defined]
        if getattr(slip, "turns", False) or not set(expression(instead).names) <= values.keys():
            continue
        wrong = worth(instead, values)
        if math.isfinite(abs(wrong)):
            assert abs(wrong - right) > 1e-9 * abs(right), instead


def test_the_relations_are_found() -> None:
    """The walk sees the laws of several chapters."""
    laws = {relation.law for relation in RELATIONS.values()}
    assert len(laws) >= 8
    assert "m1*u1 + m2*u2 = (m1 + m2)*v" in laws


def test_a_step_with_words_of_its_own_keeps_them_under_other_names() -> None:
    """What is said of one unknown goes with it when the law is renamed; the rest is the law's."""
    law = Relation(
        "Q = (A + B)/2",
        "Share",
        "Both get half.",
        {"Q": "C", "A": "C", "n": ""},
        said={"A": Said("Undo the sharing"), "Q": Said(marks=NO_MARKS, count=True)},
    )
    back, share = law.renamed(A="C").step("C"), law.step("Q")
    assert (back.what, back.why, back.make) == ("Undo the sharing", "Both get half.", "C = 2*Q - B")
    assert (share.what, share.marks, share.count, back.count) == ("Share", (), True, False)


def test_a_mistake_at_what_the_law_does_not_have_is_refused() -> None:
    """It would never be looked for; the key and the quantity are not to be mixed up."""
    lost = Mistake("upside-down", "x", "E/V", "Divide the volts by the metres.")
    with pytest.raises(ValueError, match=r"The mistake 'upside-down' is at 'x', which E = V/d does not have\."):
        Relation("E = V/d", "Use the field", "Uniform.", {"E": "V·m⁻¹"}, "Share out.", mistakes=(lost,))


def test_two_relations_become_one_step_that_shows_both() -> None:
    """Two bodies on a string: T drops out by adding; the step shows both laws, the reason, and what is learnt."""
    units = {"T": "N", "a": "m·s⁻²", "m1": "kg", "m2": "kg", "f": "N", "g": "m·s⁻²"}
    slip = Mistake("one-mass", "a", "(m2*g - f)/m2", "You divided by one mass. Both bodies move: divide by both.")
    table = Relation("T - f = m1*a", "Body on the table", "Newton's second law.", {}, "Net force.", quotes=("second",))
    hanging = Relation(
        "m2*g - T = m2*a",
        "Hanging body",
        "Newton's second law.",
        {},
        "Net force.",
        mistakes=(slip,),
        quotes=("second",),
    )
    (step,) = Together(table, hanging, "a", "T", "Acceleration", "Both speed up alike.").in_units(units).steps()
    assert (step.what, step.law, step.unit, step.plain) == (
        "Acceleration",
        "T - f = m1*a",
        "m·s⁻²",
        "Both speed up alike.",
    )
    assert step.lines == ("m2*g - T = m2*a", "m2*g - f = m1*a + m2*a", "a*(m1 + m2) = m2*g - f")
    assert step.make == "a = (m2*g - f)/(m1 + m2)"
    assert step.why == "T stands with opposite signs in the two equations: added, it drops out."
    assert (step.mistakes, step.quotes, step.other) == ((slip,), ("second",), "")


def test_a_law_under_other_names_is_made_once_and_forgotten_in_the_end() -> None:
    """The same names and units give the law that is there already, whatever others were asked for between."""
    law = Relation("F = m*a", "Use the second law", "A net force", {"F": "N", "m": "kg", "a": "m/s^2"})
    first = law.renamed(m="M")
    assert law.renamed(m="m2").law == "F = m2*a"
    assert law.renamed(m="M") is first
    assert [step.make for step in first.steps()] == ["F = M*a", "M = F/a", "a = F/M"]
    bare = Relation("p = m*v", "Momentum", "By definition")
    grams, kilograms = ({"p": "", "m": unit, "v": "m/s"} for unit in ("g", "kg"))
    assert [bare.in_units(units).units["m"] for units in (grams, kilograms, grams)] == ["g", "kg", "g"]
    for number in range(200):
        assert law.renamed(m=f"m{number}").law == f"F = m{number}*a"
    assert len(law._made) <= 64
