"""Questions declared in one piece: how long that is, and what follows without being said."""

from dataclasses import replace
from pathlib import Path

import pytest

import calc
from calc.model.questions import Choice, DeclarationError, Draw, Input, Question, Refusal, Step, Topic
from calc.model.relations import Relation
from calc.topics import find
from calc.topics.shared import quantities
from calc.topics.shared.quantities import Quantity, factor, mass, time, velocity
from calc.working.declaring import Limit, boxes, declare, told
from calc.working.reading import Refusals, read
from calc.working.solving import Situation, question, unfit
from calc.working.working import work

DECLARED = ("momentum/join.py", "energy/spring.py", "coulomb/ratio.py")


@pytest.mark.parametrize("module", DECLARED)
def test_a_question_is_declared_in_under_sixty_lines(module: str) -> None:
    """The whole module counts, imports and docstring too, in lines of at most 120 characters."""
    lines = (Path(calc.__file__).parent / "topics" / module).read_text(encoding="utf-8").splitlines()
    assert len(lines) < 60
    assert max(map(len, lines)) <= 120
    assert not any("fmt:" in line for line in lines)


def steady(**more: object) -> Question:
    """m v = p t, a law of no chapter, with a mass, a velocity and a time; p has no box."""
    return declare(
        "steady",
        "A trial",
        (Relation("p = m*v", "First", "So it is."), Relation("z = p*t", "Then", "So it is.")),
        openings=("One.", "Two.", "Three."),
        given=(
            mass("m", "Mass of the sled", "The sled has a mass of {}.", "3 kg; 2 3; 2,5"),
            velocity("v", "Velocity", "It moves at {}.", "-4 m/s; 3 -4"),
            time("t", "Time (whole)", "It takes {}.", "2 min; 1 2 s"),
            Quantity("", 1, 9, signed=True)("z", "Number z", "The number is {}."),
        ),
        units={"p": "N·s"},
        **more,  # type: ignore[arg-type]
    )


def worked(question: Question, asked: str, **typed: str) -> dict[str, float]:
    """Every value for these boxes."""
    return dict(work(Topic("trial", "Trial", (), (question,)), question, read(question, typed, asked)).values)


def refused(question: Question, asked: str, **typed: str) -> tuple[str | None, str]:
    """The box and the sentence of the refusal of these boxes."""
    with pytest.raises((Refusal, Refusals)) as caught:
        worked(question, asked, **typed)
    refusal = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    assert isinstance(refusal, Refusal)
    return refusal.field, refusal.sentence


def test_a_law_takes_the_units_of_the_boxes() -> None:
    """A law without units is worked in those of the boxes, and of ``units`` for what has no box."""
    question = steady()
    plan = question.plan(read(question, {"m": "3 kg", "v": "-4 m/s", "t": "2 min"}, "z").data)
    assert [(step.makes, step.unit) for step in plan.steps] == [("p", "N·s"), ("z", "")]
    found = read(question, {"v": "4 m/s", "t": "2 min", "z": "960"}, "m")
    assert question.plan(found.data).steps[-1].unit == "kg"


def test_one_line_gives_box_example_draws_and_telling() -> None:
    """Unit, range, refusal, sign, example, both draws and the sentence come from one line each."""
    question = steady()
    sled, moving, lasting = (item for item in question.fields[:3] if isinstance(item, Input))
    assert (sled.unit, sled.refusal, sled.signed) == ("kg", "Mass must be greater than zero.", False)
    assert (moving.unit, moving.signed, moving.help) == ("m·s⁻¹", True, "to the left is negative")
    assert lasting.unit == "min"
    assert question.example == {"m": "3 kg", "v": "-4 m/s", "t": "2 min", "z": ""}
    assert [(tuple(d.values), d.unit, tuple(d.harder)) for d in question.draws.values()] == [
        ((2, 3), "kg", (2.5,)),
        ((3, -4), "m/s", ()),
        ((1, 2), "s", ()),
    ]
    plan = question.plan(read(question, question.example).data)
    assert (
        plan.story == "One. The sled has a mass of 3\N{NO-BREAK SPACE}kg. It moves at 4\N{NO-BREAK SPACE}m·s⁻¹ to"
        " the left. It takes 2\N{NO-BREAK SPACE}min."
    )


def test_a_bracket_in_the_words_of_a_box_is_not_asked_for() -> None:
    """What a box says in brackets is for who types it."""
    question = steady()
    plan = question.plan(read(question, {"m": "3 kg", "v": "4 m/s", "z": "24"}, "t").data)
    assert plan.parts[-1].ask == "Calculate the time."


def test_a_size_that_comes_out_below_zero_is_refused() -> None:
    """The sentence names the quantity, the value, the rule and what to check."""
    assert refused(steady(), "m", v="-4 m/s", t="2 min", z="960") == (
        None,
        "The mass of the sled would come out as −2,00\N{NO-BREAK SPACE}kg, but it must be greater than zero: no such"
        " value fits these data. Check the numbers and their directions.",
    )


@pytest.mark.parametrize(
    ("over", "under", "value", "must"),
    [
        (0.0, None, 0.0, "must be greater than zero:"),
        (2.0, None, 2.0, "must be greater than 2:"),
        (None, None, -1.0, "must be at least zero:"),
        (None, None, 0.0, ""),
        (0.0, 5.0, 5.0, "must be less than 5:"),
        (0.0, 5.0, 4.9, ""),
    ],
)
def test_a_value_found_is_held_to_the_limits_of_its_box(
    over: float | None, under: float | None, value: float, must: str
) -> None:
    """At the limit itself it is refused where the limit may not be reached, and taken where it may."""
    item = Input("n", "height", "m", 0.0, 9.0, over=over, under=under)
    example = steady()
    data = read(example, example.example).data
    step = Step("n = a", "n = a", "Height", "", "m")
    said = unfit(step, value, item, data, Situation((), ("One.",), {}))
    assert (must in said) if must else said == ""


def test_a_question_may_refuse_in_its_own_words() -> None:
    """Its own reason stands in place of the engine's."""
    own = "No sled is so light. Check the directions."
    assert refused(steady(unfit={"m": own}), "m", v="-4 m/s", t="2 min", z="960") == (None, own)
    assert worked(steady(unfit={"m": own}), "m", v="4 m/s", t="2 min", z="960")["m"] == pytest.approx(2)


def test_a_limit_refuses_beside_the_box_that_is_given() -> None:
    """What must be above zero is judged with what was found too; nought is refused."""
    slow = steady(limits=(Limit("3 - v", "Too fast. Slow down.", at="v"),))
    assert refused(slow, "z", m="3 kg", v="3 m/s", t="2 min") == ("v", "Too fast. Slow down.")
    assert refused(slow, "v", m="3 kg", t="2 s", z="24") == (None, "Too fast. Slow down.")
    assert worked(slow, "z", m="3 kg", v="2,9 m/s", t="2 s")["z"] == pytest.approx(17.4)


@pytest.mark.parametrize(
    ("unknown", "typed"),
    [
        ("v", {"k": "400 N/m", "x": "1 cm", "m": "50 g", "h": "1 m"}),
        ("h", {"k": "400 N/m", "x": "1 cm", "m": "50 g", "v": "9 m/s"}),
    ],
)
def test_a_spring_with_too_little_energy_is_refused_with_its_reason(unknown: str, typed: dict[str, str]) -> None:
    """Whether a root of a negative number or a height below zero comes out, the reader sees why."""
    assert refused(find("energy.spring-launch")[1], unknown, **typed) == (
        None,
        "The spring cannot give so much: at P the ball would have more energy than the spring had. Check the numbers.",
    )


def test_a_factor_of_one_changes_nothing() -> None:
    """A factor of 1 has a sentence of its own; any other is told."""
    one = factor("a", "Factor of the mass", "The mass", "2; 1 2")
    assert one.told_at == {1.0: "The mass stays the same."}
    assert one.tell == "The mass is made {} times as large."
    assert one.ask == "By what factor must the mass change?"
    assert factor("f", "Factor", "The force", "?", follows=True).ask == "By what factor does the force change?"


def test_practice_gives_what_the_question_names() -> None:
    """Boxes that are not named for the unknown drawn are emptied; choices and the rest stay."""
    question = steady(practised={"z": "m t", "m": "v t z"})
    assert question.adjust
    assert question.adjust({"m": "1", "v": "2", "t": "3", "z": ""}, None, 1) == {"m": "1", "v": "", "t": "3", "z": ""}
    assert question.adjust({"m": "", "v": "2", "t": "3", "z": "4"}, None, 1) == {"m": "", "v": "2", "t": "3", "z": "4"}


def test_draws_that_are_no_numbers_are_refused() -> None:
    """The error names the quantity and what was written."""
    with pytest.raises(DeclarationError, match=r"quantity 'm', draws '2 kg 3': "):
        mass("m", "Mass", "It has {}.", "3 kg; 2 kg 3")


@pytest.mark.parametrize("name", [n for n, q in vars(quantities).items() if isinstance(q, Quantity)])
def test_every_quantity_of_the_catalogue_makes_a_box(name: str) -> None:
    """Its range is one, its unit is known, and its refusal is a sentence."""
    kind = vars(quantities)[name]
    box = kind("x", "Some words", "It is {}.", "?; 1 2").box
    assert 0 < box.low < box.high
    assert box.refusal == "" or box.refusal.endswith(".")
    assert kind("x", "Some words", "It is {}.", "?; 1 2").draw.unit == (kind.typed or kind.unit)


def test_quantities_make_the_boxes_of_a_question_with_a_plan() -> None:
    """Fields in the order of the form; a choice shows its first option where the example says no other."""
    where = Choice("where", "It stands", (("left", "on the left"), ("right", "on the right")))
    items = (mass("m", "Mass", "", "3 kg; 2 3; 2,5"), where, velocity("v", "Velocity", "", "?"))
    made = boxes(*items, draws={"where": Draw(("right",))})
    assert [item.name for item in made["fields"]] == ["m", "where", "v"]
    assert list(made["example"].items()) == [("m", "3 kg"), ("where", "left"), ("v", "")]
    assert made["draws"] == {"m": Draw((2.0, 3.0), "kg", (2.5,)), "where": Draw(("right",))}
    assert boxes(*items, example={"where": "right"})["example"]["where"] == "right"


def test_a_datum_without_a_sentence_is_told_by_the_opening() -> None:
    """No gap is left in the story where a quantity has no sentence of its own."""
    items = (mass("m", "Mass", "", "3 kg"), time("t", "Time", "It takes {}.", "2 s"), velocity("v", "Velocity", ""))
    law = Relation("v = m*t", "So", "It is.")
    tells = replace(told(items), relations=(law,), openings=("Three kilograms move.",))
    trial = question("trial", "A trial", tells, **boxes(*items), laws=())
    story = trial.plan(read(trial, trial.example).data).story
    assert story.replace("\N{NO-BREAK SPACE}", " ") == "Three kilograms move. It takes 2 s."


def test_an_example_without_a_unit_may_have_a_decimal_sign() -> None:
    """A number alone, as 0,6: its box has no unit and its draws none."""
    one = Quantity("", 0.01, 0.99)("f", "Part that is kept", "", "0,6; 0,25 0,5")
    assert (one.box.unit, one.example) == ("", "0,6")
    assert one.draw == Draw((0.25, 0.5), "")
