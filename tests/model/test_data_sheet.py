"""The data sheet: each form once, whatever the letter of the displacement."""

from collections import Counter

from calc.model.answers import Law
from calc.model.data_sheet import forms
from calc.topics import topics

IN_S = Law("Motion in s", "", formulas=("v = u + a*t", "s = u*t + 1/2*a*t^2"))
IN_Y = Law("Motion in Δy", "", formulas=("v = u + a*t", "Deltay = u*t + 1/2*a*t^2", "Deltay = 1/2*(u + v)*t"))
WEIGHT = Law("Weight", "", formulas=("w = m*g", "v = u + a*t"))
WORDS = Law("In words only", "")


def test_a_law_whose_forms_another_has_is_left_out() -> None:
    """s = ut + ½at² is not printed beside Δy = ut + ½at², in whichever order the chapters come."""
    assert forms((IN_S, IN_Y, WORDS)) == forms((IN_Y, IN_S)) == {IN_Y: IN_Y.formulas}
    assert forms((IN_S,)) == {IN_S: IN_S.formulas}, "alone it keeps its letter"


def test_a_form_stands_once_under_the_first_law_that_has_it() -> None:
    """A law that has a form of its own keeps that, and not those printed before."""
    assert forms((IN_Y, WEIGHT)) == {IN_Y: IN_Y.formulas, WEIGHT: ("w = m*g",)}


def test_the_booklet_prints_no_form_twice() -> None:
    """Of all laws of all chapters each form is on the sheet once, the Doppler formula and the equations of motion too;
    no law's form is lost but for the letter of the displacement."""
    laws = [law for topic in topics().values() for law in topic.laws]
    printed = [form for some in forms(laws).values() for form in some]
    in_one_letter = [form.replace("Deltay", "s").replace("Deltax", "s") for form in printed]
    assert not [form for form, times in Counter(in_one_letter).items() if times > 1]
    assert len([form for form in printed if form.startswith("f_L")]) == 1
    every = {form.replace("Deltay", "s").replace("Deltax", "s") for law in laws for form in law.formulas}
    assert every == set(in_one_letter)
    assert not [form for form in printed if form.startswith("s =")]
