"""Drawn questions of every topic: the same for the same seed, workable, sensible, and with mistakes that can
be told apart."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from calc import desk, topics
from calc.figures import Arrow
from calc.figures.pieces import Told
from calc.language.quantities import parse_quantity
from calc.model.constants import Settings
from calc.model.questions import Choice, Input, Plan, Rows, Topic
from calc.model.relations import Relation
from calc.practice.drawing import APART, DRAWS, Chance, Drawn, as_request, draw, near_answers
from calc.practice.fair import fair_scene
from calc.topics.shared import quantities
from calc.working.declaring import declare
from calc.working.reading import Read, read
from calc.working.working import run, work
from tests.cases import KEYS, LEVELS, SEEDS, drawn

STORED = json.loads((Path(__file__).parent / "practice_draws.json").read_text(encoding="utf-8"))

# Mistakes that cannot be kept 5 % from the right answer, whatever the numbers, or only by giving up variety.
NEAR = {
    # A slip in one row takes that reading off the line, and the others give the same gradient.
    "coulomb.graph": {f"{key}@x{n}" for key in ("not-squared", "not-inverted") for n in range(4, 7)},
    "electric-field.drop": {"multiplied@E_2"},  # a field far too small leaves the weight alone
    "electric-field.paint-drop": {"multiplied@E_2"},
    "equilibrium.hovering-ball": {"root-omitted@r"},  # drops out of a later ratio
    "equilibrium.foil-balls": {"sin-for-tan@F_E"},  # alike for the small angles of real threads
    # Several sources, and dozens of slips with a small share in the sum.
    "electric-field.plane": {"angle-inverted@theta_2"},
    "several-charges.plane": {
        "wrong-pair-1@F_21",
        "wrong-pair-1@F_41",
        "wrong-pair@F_41",
        "sin-for-cos@F_31y",
    },
    "several-charges.square": {"angle-inverted@theta_24"},  # its diagonal force makes little of the sum
}
LISTED = ("coulomb", "electric-field", "equilibrium", "several-charges")


def planned(one: Drawn) -> tuple[Read, Plan]:
    """A draw read and planned."""
    _, question = topics.find(one.question)
    found = read(question, one.inputs, one.find, variant=one.variant)
    return found, question.plan(found.data)


def by_rule(key: str) -> list[tuple[int, Drawn]]:
    """A few draws at each level, by the first rule and by the newest, each with its rule; what came with the newest
    is drawn by no other."""
    question = topics.find(key)[1]
    newest = [(DRAWS, drawn(key, seed, level, DRAWS)) for level in question.levels for seed in SEEDS]
    if question.since == DRAWS:
        return newest
    return [(1, drawn(key, seed, level)) for level in LEVELS for seed in SEEDS] + newest


def every_draw(key: str) -> list[Drawn]:
    """The same without their rules."""
    return [one for _, one in by_rule(key)]


def ask(operation: str, **data: Any) -> dict[str, Any]:
    """A request through the one boundary."""
    reply: dict[str, Any] = json.loads(desk.answer(json.dumps({"operation": operation, "data": data})))
    return reply


@pytest.mark.parametrize("level", LEVELS)
def test_a_younger_choice_stays_at_its_first_option_by_older_rules(level: int) -> None:
    """A choice that came with a rule changes no draw of an older one, and is picked by its own."""
    topic, question = topics.find("doppler.one-moves")
    younger = Choice("sense", "Positive direction", (("up", "upwards"), ("down", "downwards")), since=DRAWS)
    longer = replace(question, fields=(younger, *question.fields))
    picked = set()
    for seed in range(6):
        before, after = (draw(topic, one, seed, level, DRAWS - 1) for one in (question, longer))
        assert after.inputs == {**before.inputs, "sense": "up"}
        assert (after.find, after.variant) == (before.find, before.variant)
        picked.add(draw(topic, longer, seed, level, DRAWS).inputs["sense"])
    assert picked == {"up", "down"}


@pytest.mark.parametrize("key", [key for key in KEYS if topics.find(key)[1].drawn_later])
def test_later_unknowns_are_asked_from_their_own_rule_on(key: str) -> None:
    """Each of them comes up within a few seeds; by a rule before theirs none does, and it draws what it drew."""
    topic, question = topics.find(key)
    before = replace(question, drawn_later={})
    first = min(question.drawn_later.values())
    asked: set[str] = set()
    for seed in range(60):
        asked.add(draw(topic, question, seed, 2 + seed % 2, DRAWS).find)
        if asked >= set(question.drawn_later):
            break
    assert asked >= set(question.drawn_later)
    for seed in range(4):
        older = draw(topic, question, seed, 3, first - 1)
        assert older == draw(topic, before, seed, 3, first - 1)
        assert older.find not in question.drawn_later


@pytest.mark.parametrize("case", STORED, ids=lambda c: f"{c['question']}-{c['seed']}-{c['level']}")
def test_a_seed_gives_the_stored_question(case: dict[str, Any]) -> None:
    """Links to drawn questions stay good: these draws were stored once and must come back."""
    one = draw(*topics.find(case["question"]), case["seed"], case["level"])
    assert {**as_request(one), "seed": one.seed, "level": one.level} == case


@pytest.mark.parametrize("key", KEYS)
def test_the_same_seed_gives_the_same_question_and_others_differ(key: str) -> None:
    """A draw depends on nothing but key, seed and level; new seeds bring new questions."""
    topic, question = topics.find(key)
    assert draw(topic, question, 3, 2) == draw(topic, question, 3, 2)
    for rule in (1, DRAWS):
        draws = [drawn(key, seed, level, rule) for level in LEVELS for seed in SEEDS]
        several = {json.dumps([one.inputs, one.find], sort_keys=True) for one in draws}
        assert len(several) > len(draws) / 2, rule


@pytest.mark.parametrize("key", KEYS)
def test_every_draw_is_worked_without_a_warning(key: str) -> None:
    """Drawn data are never doubtful, every answer prints as something, and its second ways agree."""
    topic, question = topics.find(key)
    for one in every_draw(key):
        worked = work(topic, question, read(question, one.inputs, one.find, variant=one.variant))
        assert worked.warnings == ()
        assert worked.unproven == ()
        for answer in worked.answers:
            assert re.search(r"[1-9]", answer.shown.text), (one, answer)


@pytest.mark.parametrize("key", [k for k in KEYS if 3 in topics.find(k)[1].levels])
def test_level_3_gives_quantities_as_an_examiner_writes_them(key: str) -> None:
    """By the newest rule no quantity in a prefixed unit is below a tenth; by the third, levels 1 and 2 draw as
    by the first."""
    topic, question = topics.find(key)
    for seed in range(1, 6):
        newest = draw(topic, question, seed, 3, DRAWS)
        for item in (item for item in question.fields if isinstance(item, Input)):
            typed = str(newest.inputs.get(item.name, ""))
            if not typed or "10^" in typed or "× 10" in typed:
                continue
            number = abs(parse_quantity(typed, item.unit).number)
            assert number == 0 or number >= Decimal("0.1"), (item.name, typed)
    for level in (1, 2):
        assert draw(topic, question, 2, level, 3) == draw(topic, question, 2, level, 1)


def test_a_small_charge_is_not_restated_as_a_fraction_of_a_larger_unit() -> None:
    """The first rule gave a few nanocoulombs as thousandths of a microcoulomb; the third never does."""
    topic, question = topics.find("coulomb.force")
    told = {rule: [str(draw(topic, question, seed, 3, rule).inputs) for seed in range(40)] for rule in (1, DRAWS)}
    assert any(re.search(r"0,00\d* uC|0,00\d* µC", text) for text in told[1])
    assert not any(re.search(r"0,0\d* [µu]C", text) for text in told[DRAWS])


# Wider than any school worksheet, narrower than a slip of a power of ten in a draw. Common practice, no source.
IONS = (1e-27, 1e-25)  # kg
SENSIBLE = {"kg": (1e-16, 5), "C": (1.6e-19, 5e-6), "m": (1e-3, 5)}


@pytest.mark.parametrize("key", [k for k in KEYS if k.split(".")[0] in LISTED])
def test_bodies_are_of_a_size_that_could_be_on_a_table(key: str) -> None:
    """No 40-tonne balls, no charges of a thundercloud, no spheres inside each other."""
    for one in every_draw(key):
        found, _ = planned(one)
        for path, quantity in found.quantities.items():
            low, high = SENSIBLE.get(quantity.unit.si().text, (0, float("inf")))
            place = path.split(".")[-1] in ("x", "y", "x_P", "y_P")  # may be 0 or negative
            if path == "m" and found.data.choices.get("particle") == "body":  # an ion beside electron and proton
                low, high = IONS
            assert place or low <= abs(quantity.value) <= high, (path, quantity)


@pytest.mark.parametrize("key", KEYS)
def test_mistakes_lie_apart_at_their_step(key: str) -> None:
    """Every declared mistake is more than 5 % from the right value and from the others of its step."""
    constants = Settings().constants()
    from calc.language.expressions import ExpressionError, expression
    from calc.working.working import sized

    for rule, one in by_rule(key):
        _, plan = planned(one)
        values = run(plan, constants)
        for step in plan.steps:
            base = values.get(step.judged_by, 0.0)  # what such a value is judged by is the difference
            sizes = [abs(values[step.makes]) - base]
            for mistake in step.mistakes:
                if mistake.turns or mistake.since > rule:
                    continue
                try:
                    wrong = expression(mistake.instead).value(sized(values, step.sizes))
                except ExpressionError:
                    continue
                shift = abs(wrong) - base
                for other in sizes:
                    assert abs(shift - other) > APART * 0.999 * max(abs(shift), abs(other)), (one, mistake.key)
                sizes.append(shift)


@pytest.mark.parametrize("key", KEYS)
def test_answers_tell_mistakes_from_right(key: str) -> None:
    """A mistake changes the answer by more than 5 %; the exceptions are few, named by the draw, and listed above."""
    for rule, one in by_rule(key):
        _, plan = planned(one)
        assert one.near == near_answers(plan, rule)
        assert len(one.near) <= 2, one
        if key.split(".")[0] in LISTED:
            assert set(one.near) <= NEAR.get(key, set()), one


@pytest.mark.parametrize("key", KEYS)
def test_a_near_answer_comes_from_a_slip_that_can_reach_it(key: str) -> None:
    """By the newest rule each mistake that is named as near changes an answer of the very question it is named for."""
    for level in topics.find(key)[1].levels:
        for seed in SEEDS:
            one = drawn(key, seed, level, DRAWS)
            _, plan = planned(one)
            constants = Settings().constants()
            right = run(plan, constants)
            declared = [*plan.mistakes, *(mistake for step in plan.steps for mistake in step.mistakes)]
            for mistake in declared:
                if f"{mistake.key}@{mistake.at}" not in one.near or mistake.turns:
                    continue
                wrong = run(plan, constants, instead={mistake.at: mistake.instead})
                answers = {name for part in plan.parts for name in part.asked}
                assert any(abs(wrong[name] / right[name] - 1) > 1e-6 for name in answers if right[name]), one


def test_a_slip_that_drops_out_is_not_near() -> None:
    """A root forgotten in r cancels in the ratio of two distances; by the first rule it counted as a near answer."""
    topic, question = topics.find("equilibrium.hovering-ball")
    old, new = (draw(topic, question, 1, 1, rule) for rule in (1, DRAWS))
    assert "root-omitted@r" in old.near
    assert "root-omitted@r" not in new.near


@pytest.mark.parametrize("key", [k for k in KEYS if len(topics.find(k)[1].unknowns) > 1])
def test_the_levels_ask_for_more(key: str) -> None:
    """Level 1 asks what the example asks, level 3 always something else."""
    _, question = topics.find(key)
    empty = {name for name in question.unknowns if not str(question.example.get(name, "")).strip()}
    usual = {question.asks} & empty or empty
    rule = question.drawn_since  # from which on practice asks for one
    assert {drawn(key, seed, 1, rule).find for seed in SEEDS} <= usual
    assert not {drawn(key, seed, 3, rule).find for seed in SEEDS} & usual


def test_a_number_is_drawn_between_those_declared() -> None:
    """Not from among them: by the newest rule a charge has any size from the least declared to the largest."""
    topic, question = topics.find("coulomb.electrons")
    by_rule = {
        rule: {str(draw(topic, question, seed, 1, rule).inputs["Q"]) for seed in range(30)} for rule in (3, DRAWS)
    }
    assert by_rule[3] <= {"-2 nC", "-3,2 nC", "4 nC", "-5 nC", "6,4 nC", "-8 nC"}
    sizes = [abs(parse_quantity(text, "nC").number) for text in by_rule[DRAWS]]
    assert min(sizes) >= 2
    assert max(sizes) <= 8
    assert len(by_rule[DRAWS]) > 20


def test_level_three_mixes_prefixes() -> None:
    """At level 3 some data come in another prefix."""
    units = {
        found.quantities["r"].unit.text
        for seed in range(12)
        if "r" in (found := planned(drawn("coulomb.contact", seed, 3))[0]).quantities
    }
    assert {"cm", "mm"} <= units


def test_chance_is_pinned() -> None:
    """Draws by name were written down once; CPython's own choice and sample may change, these may not."""
    chance = Chance("a bag of numbers")
    assert [chance.choice(range(100)) for _ in range(5)] == [79, 94, 42, 5, 97]
    assert chance.sample(range(100), 5) == [68, 91, 82, 52, 8]
    assert sorted(chance.sample("abcdef", 6)) == list("abcdef")
    with pytest.raises(ValueError, match="3 cannot be drawn from 2"):
        chance.sample("ab", 3)


@pytest.mark.parametrize("key", ["coulomb.force", "coulomb.contact", "electric-field.charge"])
def test_wordings_vary(key: str) -> None:
    """Different seeds tell the same kind of question in different words."""
    stories = {re.sub(r"[^a-z ]", "", planned(drawn(key, seed, 1))[1].story.lower())[:25] for seed in range(10)}
    assert len(stories) > 1


@pytest.mark.parametrize("key", KEYS)
def test_a_drawn_question_goes_through_the_desk(key: str) -> None:
    """What practice gives can be asked as a sheet, marked and solved; hints come for each part."""
    reply = ask("practice", question=key, seed=2, level=2)
    assert reply["ok"], reply
    data = reply["data"]
    request = {name: data[name] for name in ("question", "inputs", "find", "variant")}
    for operation in ("sheet", "mark", "solve"):
        assert ask(operation, **request)["ok"]
    assert [hint["part"] for hint in data["hints"]] == [
        part["part"] for part in ask("sheet", **request)["data"]["parts"]
    ]


@pytest.mark.parametrize("key", KEYS)
def test_the_scene_keeps_the_answer(key: str) -> None:
    """A scene shown with a question shows no force or field but a given one, and never an angle that is asked."""
    for one in every_draw(key):
        found, plan = planned(one)
        scene = fair_scene(plan, found)
        if scene is None:
            continue
        for arrow in (i for i in scene.items if isinstance(i, Arrow) and i.kind in ("force", "field", "resultant")):
            told = {arrow.label} - {""} or set(arrow.shows)
            assert told
            assert told <= set(plan.values) - {step.makes for step in plan.steps}
            assert isinstance(arrow, Told)
        asked = {part.answers for part in plan.parts if part.kind == "calculate"}
        assert not [s.makes for s in plan.steps if s.makes in asked and s.unit == "°"]


def test_a_topic_key_picks_one_of_its_questions() -> None:
    """“Any question” of a topic is a question of it, the same each time for a seed."""
    picked = {ask("practice", question="coulomb", seed=s, level=1)["data"]["question"] for s in range(9)}
    assert all(key.startswith("coulomb.") for key in picked)
    assert len(picked) > 2
    first = ask("practice", question="coulomb", seed=5, level=1)
    assert first == ask("practice", question="coulomb", seed="5", level="1")


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        ({"question": "coulomb.nothing", "seed": 1}, "There is no such question to practise. Pick one from the list."),
        (
            {"question": "coulomb.force", "seed": -1},
            "The number of a drawn question is a whole number from 0 to 999999.",
        ),
        (
            {"question": "coulomb.force", "seed": "x<b>"},
            "The number of a drawn question is a whole number from 0 to 999999.",
        ),
        ({"question": "coulomb.force"}, "The number of a drawn question is a whole number from 0 to 999999."),
        (
            {"question": "coulomb.force", "seed": True},
            "The number of a drawn question is a whole number from 0 to 999999.",
        ),
        ({"question": "coulomb.force", "seed": 1, "level": 4}, "There are three levels: 1, 2 and 3."),
    ],
)
def test_a_bad_request_gets_a_sentence(data: dict[str, Any], sentence: str) -> None:
    """Whatever a link asks for, the reply says what is wrong."""
    reply = ask("practice", **data)
    assert not reply["ok"]
    assert reply["errors"] == [{"field": None, "message": sentence}]


def test_a_question_without_draws_gets_changed_example_numbers() -> None:
    """A question that declares no draws is drawn from its example, fields and tables alike."""
    from dataclasses import replace

    topic, question = topics.find("several-charges.line")
    bare = replace(question, draws={}, adjust=None)
    one = draw(topic, bare, 1, 1)
    assert one.inputs != question.example
    assert {item.name for item in bare.fields if isinstance(item, Input | Rows)} <= set(one.inputs)


@pytest.mark.parametrize(("height", "drawn_it"), [("20 30 45", True), ("1 1,5 1,9", False)])
def test_out_of_doors_a_place_is_as_far_as_the_longest_length_drawn(height: str, drawn_it: bool) -> None:
    """A fall of 2 s, nearly 20 m, is practised where the question itself draws a tower, not where it draws a table."""
    tower = declare(
        "tower",
        "A tower",
        (Relation("h = 1/2*g*t^2", "First", "So it is."),),
        openings=("One.", "Two.", "Three."),
        given=(
            quantities.height("h", "Height", "It is {} high.", f"?; {height}"),
            quantities.time("t", "Time", "It takes {}.", "1,1 s; 1,8 1,9 2"),
        ),
        constants=("g",),
    )
    one = draw(Topic("trial", "Trial", (), (tower,)), tower, 1, 1, DRAWS)
    assert (one.inputs != tower.example) == drawn_it


def test_a_younger_mistake_changes_no_draw_of_an_older_rule() -> None:
    """A mistake learnt later need not lie apart in draws given out before: they stay what they were."""
    key = "forces.ramp"
    _, plan = planned(drawn(key, 3, 1))
    young = {mistake.key for step in plan.steps for mistake in step.mistakes if mistake.since > 5}
    assert young == {"static-for-kinetic", "kinetic-for-static"}
    near = {one.partition("@")[0] for seed in range(6) for one in near_answers(planned(drawn(key, seed, 1))[1], 5)}
    assert not near & young
