"""Questions declared by their relations alone: data that are spare, boxes left empty, values that cannot be."""

import pytest

from calc.model.questions import Input, Question, Refusal, Topic
from calc.model.relations import Relation, Together
from calc.working.reading import Refusals, read
from calc.working.solving import Situation, question
from calc.working.working import work

UNITS = {"u": "m", "w": "m", "z": "N", "y": "N"}


def boxes(*results: str) -> tuple[Input, ...]:
    """Four quantities no other question has; those named are declared as results."""
    return tuple(
        Input(name, f"Size {name}", unit, 1e-9, 1e9, result="measured" if name in results else "")
        for name, unit in UNITS.items()
    )


def declared(*results: str, judge: object = None) -> Question:
    """z = 3u and y = z w, with any of the four to be found; y where none is picked."""
    laws = (
        Relation("z = 3*u", "Triple it", "So it is.", UNITS),
        Relation("y = z*w", "Multiply", "So it is.", UNITS),
    )
    return question(
        "four",
        "Four sizes",
        Situation(laws, ("A.", "B.", "C."), {}, judge=judge or (lambda name, value: None)),
        boxes(*results),
        {"u": "2 m", "w": "5 m", "z": "", "y": ""},
        laws=(),
        draws={},
        asks="y",
    )


def found(one: Question, asked: str = "", **typed: str) -> float:
    """The value of ``asked`` for these boxes."""
    worked = work(Topic("trial", "Trial", (), (one,)), one, read(one, typed, asked))
    return worked.values[asked or one.asks]


@pytest.mark.parametrize(("results", "right"), [(("z",), 30.6), ((), 30.5)])
def test_what_is_declared_a_result_is_left_out_where_it_is_spare(results: tuple[str, ...], right: float) -> None:
    """z is typed rounded: declared a result it is worked anew, otherwise it is used as it stands."""
    worked = found(declared(*results), u="2,04 m", w="5,00 m", z="6,1 N")
    assert worked == pytest.approx(right)


def test_a_form_tells_its_results_from_the_foot_upwards() -> None:
    """Reading hands on which boxes are declared results, the last of the form first."""
    data = read(declared("z", "y"), {"u": "2 m"}, "w").data
    assert data.results == ("y", "z")
    assert data.measured == {"y", "z"}


def test_of_several_empty_boxes_the_declared_one_is_found() -> None:
    """The example leaves z and y empty; y is asked."""
    one = declared()
    assert read(one, one.example).data.asked == "y"
    assert found(one, u="2 m", w="5 m") == pytest.approx(30)


def test_without_a_declared_one_the_reader_is_asked_which() -> None:
    """Where the declared unknown is filled, several empty boxes are named."""
    with pytest.raises(Refusals, match="Pick what to find: size u and size z are empty"):
        read(declared(), {"w": "5 m", "y": "30 N"})


def test_each_value_that_follows_is_judged() -> None:
    """A judge sees z on the way to y, and refuses it."""

    def see(name: str, value: float | None) -> None:
        if name == "z" and value == 6:
            raise Refusal("u", "No z of six.")

    with pytest.raises(Refusal, match="No z of six"):
        found(declared(judge=see), u="2 m", w="5 m")
    assert found(declared(judge=see), u="3 m", w="5 m") == pytest.approx(45)


def test_a_law_of_two_names_is_no_proof() -> None:
    """z = u, as a = g with its sign, is not put back as a check of y = zw: it would say one value twice."""
    laws = (
        Relation("z = u", "Name it", "So it is.", UNITS),
        Relation("y = z*w", "Multiply", "So it is.", UNITS),
    )
    one = question("named", "Named", Situation(laws, ("A.", "B.", "C."), {}), boxes(), {}, laws=(), draws={}, asks="y")
    worked = work(Topic("trial", "Trial", (), (one,)), one, read(one, {"u": "2 m", "w": "5 m"}, "y"))
    assert len(worked.checks) == 1


def put_together(back: bool) -> Question:
    """z = 3u + y and z = 5u − y: two unknowns z and y, of which y drops out."""
    first = Relation("z = 3*u + y", "Add", "So it is.", UNITS)
    second = Relation("z = 5*u - y", "Subtract", "So it is.", UNITS)
    both = Together(first, second, "z", "y", "Put the two together", back=back)
    laws = (Relation("w = 2*u", "Double it", "So it is.", UNITS), both)
    return question(
        "two",
        "Two laws",
        Situation(laws, ("A.", "B.", "C."), {}),
        boxes(),
        {"u": "2 m", "w": "", "z": "", "y": ""},
        laws=(),
        draws={},
        asks="z",
    )


def test_what_dropped_out_is_put_back_where_it_is_asked_for() -> None:
    """The answer stays the one asked; the other unknown follows in the same part, without a mark."""
    for back in (False, True):
        one = put_together(back)
        worked = work(Topic("t", "T", (), (one,)), one, read(one, {"u": "2 m"}, "z"))
        (part,) = worked.parts
        assert [answer.name for answer in part.answers] == ["z"]
        assert worked.values["z"] == 8
        assert ("y" in worked.values) is back
        assert part.marks == 3
    assert worked.values["y"] == 2


def test_steps_are_made_anew_where_the_data_decide_which_laws_hold() -> None:
    """Laws that always hold have the same steps for every answer; laws that hang on the data have theirs."""
    triple = Relation("z = 3*u", "Triple it", "So it is.", UNITS)
    double = Relation("z = 2*u", "Double it", "So it is.", UNITS)
    one, two = (read(declared(), {"u": size, "w": "5 m"}, "y").data for size in ("2 m", "4 m"))
    always = Situation((triple,), ("A.", "B.", "C."), {})
    assert all(a is b for a, b in zip(always.steps(one), always.steps(two), strict=True))
    hanging = Situation(lambda data: (triple if data.values["u"] == 2 else double,), ("A.", "B.", "C."), {})
    makes = [hanging.steps(data)[0].make for data in (one, two, one)]
    assert makes == ["z = 3*u", "z = 2*u", "z = 3*u"]
