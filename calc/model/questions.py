"""Declarations: what a question takes, what may be asked of it, and how it is worked.

Forms, links, the command line, practice, marking and the pages all read these;
a topic module holds nothing else. Physics goes into a question's ``plan``: a
function from the reader's data to parts made of steps.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING, Literal

from calc.figures import Figure
from calc.language.decimal_sign import in_sign
from calc.language.expressions import equation, expression
from calc.model.answers import Direction, Law, Mark, PartKind, Point
from calc.model.constants import Settings

if TYPE_CHECKING:
    from calc.model.relations import Relation, Together

Values = Mapping[str, float]
Textual = Mapping[str, str]


@dataclass(frozen=True)
class Pick:
    """One way out that is offered beside a box: its words, and the text it puts into the box."""

    words: str
    text: str


class Refusal(Exception):
    """Data that cannot be, or cannot be worked: the sentence says why and what to do.

    ``field`` is the input's name (``charges.2.x`` for a table cell), or None for the whole question.
    ``picks`` are the ways out, where the sentence is a question with few answers.
    """

    def __init__(self, field: str | None, sentence: str, picks: tuple[Pick, ...] = ()) -> None:
        super().__init__(sentence)
        self.field = field
        self.sentence = sentence
        self.picks = picks


@dataclass(frozen=True)
class Input:
    """A quantity the reader types.

    unit: the unit a bare number is taken in, shown beside the box; '' for a pure number.
    low, high: sensible range in SI (for an angle in degrees); outside it is solved with a warning.
    over, under: limits that may not be reached (SI, degrees for an angle); ``refusal`` says why.
    signed: the sign is data (a charge); otherwise a negative value is refused.
    former: names this box had before, which old addresses still use.
    whole: counts (turns, electrons). optional: may stay empty without being the unknown.
    counted: what a pure number counts, a unit ("kWh") or money (see ``language/counts.py``).
    result: usually found, not given; "measured" (a force, an acceleration, a count) or "laid out" (a
    distance, an angle that others fix). Where more is given than is needed, results are left out first.
    since: the draw number of addresses from which on practice fills it; older ones do not know the box.
    """

    name: str
    words: str
    unit: str
    low: float
    high: float
    refusal: str = ""
    over: float | None = 0.0
    under: float | None = None
    signed: bool = False
    whole: bool = False
    optional: bool = False
    help: str = ""
    former: tuple[str, ...] = ()
    result: Literal["", "measured", "laid out"] = ""
    since: int = 1
    counted: str = ""


@dataclass(frozen=True)
class Choice:
    """A datum picked from a list of (key, words).

    A ``quiet`` key is not printed among the data. asked: the unknowns for which the choice matters at all;
    empty: always. former: names it had before; renamed: (old, new) keys. finds: it picks what is to be found;
    several: one thing or more, keys with commas between. counts: the table whose rows it picks from, one
    after the other. by_drawing: a way of drawing and no datum, picked beside the drawing. besides: it picks a part that
    is asked besides, and is no datum; it stands below what is to be found. since: the draw number of
    addresses from which on practice picks; by an older one it has its first option, as before there was one.
    never: (key, words, why) of what a reader may look for here and no data can answer.
    """

    name: str
    words: str
    options: tuple[tuple[str, str], ...]
    quiet: tuple[str, ...] = ()
    asked: tuple[str, ...] = ()
    former: tuple[str, ...] = ()
    renamed: tuple[tuple[str, str], ...] = ()
    finds: bool = False
    several: bool = False
    counts: str = ""
    by_drawing: bool = False
    besides: bool = False
    since: int = 1
    never: tuple[tuple[str, str, str], ...] = ()


@dataclass(frozen=True)
class Rows:
    """A table the reader may lengthen: one row a body, the same columns in each."""

    name: str
    words: str
    row_words: str
    columns: tuple[Input, ...]
    at_least: int = 2
    at_most: int = 8


@dataclass(frozen=True)
class Worded:
    """A text that the question reads by itself, such as a circuit in words; what is wrong with it the plan refuses.

    long: it is given the width of several boxes. former, since: as for an Input.
    """

    name: str
    words: str
    help: str = ""
    long: bool = False
    former: tuple[str, ...] = ()
    since: int = 1


MOST_LETTERS = 300  # of a text in words

Field = Input | Choice | Rows | Worded

# An address gives the boxes their own names ("Q1=+8nC"); what it says besides has a dot in its key
# ("open.question", "set.k"), or is one of these older words, which links already given out contain.
FIELD_NAME = re.compile(r"[A-Za-z][A-Za-z0-9_]{0,30}")
ADDRESS_WORDS = frozenset(
    ("find", "part", "only", "practice", "paper", "seed", "level", "own", "heading", "space", "marks", "names")
)


class DeclarationError(ValueError):
    """A topic that cannot be used as declared; the message names topic, question, field and rule."""


IN_BRACES = re.compile(r"\{([^{}]*)\}")
NAME = re.compile(r"[A-Za-z]\w*")


@lru_cache(maxsize=4096)
def _printed(words: str) -> str:
    """Words with each formula in braces as a page prints it."""
    return IN_BRACES.sub(lambda found: expression(found[1]).maths().text, words)


def in_names(words: str, names: Mapping[str, str]) -> str:
    """Words whose formulas in braces speak of other quantities: ``{r^2}`` of ``{r_12^2}``."""
    return IN_BRACES.sub(lambda found: NAME.sub(lambda name: names.get(name[0], name[0]), found[0]), words)


@dataclass(frozen=True)
class Mistake:
    """A known wrong way to make one value.

    at: the step's or datum's name; instead: the expression the learner used
    there (it may use ``at`` itself for a datum: ``r*100``).
    say: the sentences to the learner; why: how it shows, in words. Formulas of the question's quantities stand in
    braces: ``You added {Q1} and {Q2}.`` (see ``said`` and ``shows``).
    turns: the size stays right and the direction turns round.
    former: keys it had before, which progress kept on a reader's device still has; "old@Q1" where it stood elsewhere.
    since: the rule of drawing it came with; draws of older rules do not keep it apart from the right value.
    """

    key: str
    at: str
    instead: str
    say: str
    why: str = ""
    turns: bool = False
    former: tuple[str, ...] = ()
    since: int = 1

    @property
    def said(self) -> str:
        """``say`` as a page prints it."""
        return _printed(self.say)

    @property
    def shows(self) -> str:
        """``why`` as a page prints it."""
        return _printed(self.why)

    @property
    def names(self) -> tuple[str, ...]:
        """How progress calls it: the key it has now and those it had, each with where it stands."""
        return tuple(key if "@" in key else f"{key}@{self.at}" for key in (self.key, *self.former))


@dataclass(frozen=True)
class Root:
    """A value with no formula of its own: the root of ``equation`` between ``low`` and ``high``."""

    equation: str
    low: float
    high: float
    method: str


FSA = (Mark("formula"), Mark("substitution"), Mark("answer"))
SA = (Mark("substitution"), Mark("answer"))
A = (Mark("answer"),)
NO_MARKS: tuple[Mark, ...] = ()


@dataclass(frozen=True)
class Step:
    """One step. ``law`` is the data-sheet equation, ``make`` the same rearranged: ``r = sqrt(k*Q1*Q2/F)``.

    lines: equations shown between the two, in symbols. unit: of the value.
    sizes: signed names of which only the size is substituted (charges in a force).
    why: the reason, for a learner; plain: the same for someone who has forgotten the physics.
    direction: that of a value above zero (one below zero points the other way), or a function of all values.
    mistakes: known wrong ways to do this step.
    count: the value counts things, and is printed whole when it is whole.
    other: the second root of a square, as an equation; dropped: why it is not an answer.
    quotes: the names of the laws that the step applies; a hint tells them in words.
    judged_by: the name of the value that this one differs little from (two notes of a sound): an answer is held against
    the difference of the two, not against its whole size.
    read_off: how far a value that is read off a drawing may lie from the right one, as a share of it.
    counted: what a pure number counts, a unit or money (see ``language/counts.py``).
    """

    law: str
    make: str
    what: str
    why: str
    unit: str
    marks: tuple[Mark, ...] = FSA
    lines: tuple[str, ...] = ()
    direction: Direction | Callable[[Values], Direction | None] | None = None
    mistakes: tuple[Mistake, ...] = ()
    root: Root | None = None
    sizes: tuple[str, ...] = ()
    plain: str = ""
    count: bool = False
    other: str = ""
    dropped: str = ""
    read_off: float = 0.0
    quotes: tuple[str, ...] = ()
    judged_by: str = ""
    counted: str = ""

    @cached_property
    def makes(self) -> str:
        return self.make.split("=")[0].strip()

    @cached_property
    def how(self) -> str:
        """The right side of ``make``."""
        return self.make.split("=", 1)[1].strip()

    @cached_property
    def needs(self) -> frozenset[str]:
        """The names it starts from, constants among them."""
        return frozenset(equation(self.root.equation if self.root else self.make).names) - {self.makes}


@dataclass(frozen=True)
class Misstatement:
    """A wrong belief that shows in a learner's reasons, and what is said of it.

    says: patterns, one of which it is said with. They are matched with the text as ``marking/misstatements.py`` writes
    it: small letters, "not" for "n't", one blank between words and signs. unless: a pattern of sentences that are right
    all the same. denies: a word of the key phrases whose mark it costs.
    """

    key: str
    says: tuple[str, ...]
    say: str
    denies: str
    unless: str = ""


@dataclass(frozen=True)
class Part:
    """One part of a question: its words, its marks, and how it is answered.

    asks_sign: the sign of a charge is asked for, so no diagram before may show it.
    answer: the name of the value that answers a part to calculate (the last step's if left empty).
    also: names of further values the part asks for, found on the way: the other of two charges.
    former: keys it had before, which links and answers still use.
    figure: drawn from all values, for a part to draw or beside the steps.
    misstatements: wrong beliefs looked for in reasons that are typed.
    """

    key: str
    kind: PartKind
    ask: str
    steps: tuple[Step, ...] = ()
    points: tuple[Point, ...] = ()
    figure: Callable[[Values], Figure] | None = None
    answer: str = ""
    asks_sign: bool = False
    also: tuple[str, ...] = ()
    former: tuple[str, ...] = ()
    misstatements: tuple[Misstatement, ...] = ()

    @property
    def marks(self) -> int:
        if self.kind == "calculate":
            return sum(mark.count for step in self.steps for mark in step.marks)
        return sum(point.marks for point in self.points)

    @property
    def answers(self) -> str:
        """The name of the value that answers this part; '' if it has none."""
        return self.answer or (self.steps[-1].makes if self.steps else "")

    @property
    def asked(self) -> tuple[str, ...]:
        """The names of every value this part asks for, the marked one last; empty if it has none."""
        return (*self.also, self.answers) if self.steps else ()


@dataclass(frozen=True)
class Check:
    """A second way to a value: ``equation``'s sides must agree, or ``holds`` be true, for the values found."""

    what: str
    equation: str = ""
    words: str = ""
    holds: Callable[[Values], bool] | None = None
    tolerance: float = 1e-9
    sizes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Plan:
    """How one set of data is worked.

    story: the data told in words. values: the names expressions start from
    (SI, radians, charges with their sign). units: '°' for the angles among them.
    scene: the figure that goes with the data. mistakes: known wrong ways with a
    datum, besides those the steps declare.
    """

    story: str
    parts: tuple[Part, ...]
    values: dict[str, float]
    units: dict[str, str] = field(default_factory=dict)
    scene: Callable[[Values], Figure] | None = None
    checks: tuple[Check, ...] = ()
    notes: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    mistakes: tuple[Mistake, ...] = ()

    @cached_property
    def steps(self) -> tuple[Step, ...]:
        return tuple([step for part in self.parts for step in part.steps])

    def part(self, key: str) -> Part:
        return next(part for part in self.parts if part.key == key)


LATER = 1000  # variants from here on may tell a question in words that came later (see Data.pick)


@dataclass(frozen=True)
class Data:
    """The reader's data, read and found possible.

    values: SI by name (angles in radians, charges with sign). said: each as printed in a sentence.
    choices: the picked key by name. rows: table rows. asked: the unknown ('' when the question fixes it);
    several are parted by commas.
    halves: half a unit of the last figure typed, SI, by name; figures: how many figures were typed.
    results, measured: the names declared as such (see Input), those left out first standing first.
    texts: what was typed in words, by name.
    """

    values: dict[str, float]
    said: dict[str, str]
    choices: dict[str, str]
    rows: dict[str, tuple[dict[str, float], ...]]
    rows_said: dict[str, tuple[dict[str, str], ...]]
    asked: str
    settings: Settings
    variant: int = 0
    halves: Mapping[str, float] = field(default_factory=dict)
    figures: Mapping[str, int] = field(default_factory=dict)
    results: tuple[str, ...] = ()
    measured: frozenset[str] = frozenset()
    texts: Mapping[str, str] = field(default_factory=dict)

    @property
    def asked_names(self) -> tuple[str, ...]:
        """The unknowns one by one."""
        return tuple(name for name in self.asked.split(",") if name)

    @property
    def known(self) -> dict[str, float]:
        """The data and the question's constants together, SI by name."""
        return {**self.settings.constants(), **self.values}

    def has(self, name: str) -> bool:
        return name in self.values

    def pick(self, *wordings: str, later: tuple[str, ...] = ()) -> str:
        """One of several wordings of the same sentence, by the variant number.

        later: those that came after addresses had been given out with a variant below LATER: none of these tells them.
        """
        told = (*wordings, *later) if self.variant >= LATER else wordings
        return told[self.variant % len(told)]

    def sign(self, name: str) -> int:
        """+1, -1 or 0, for a signed quantity."""
        value = self.values[name]
        return (value > 0) - (value < 0)


@dataclass(frozen=True)
class Draw:
    """How practice draws one datum: a number from ``values`` in ``unit`` (typed text is made from both).

    levels: the first level (1, 2, 3) at which the value may be awkward; ``harder`` replaces ``values`` from level 2 on.
    """

    values: Sequence[float | str]
    unit: str = ""
    harder: Sequence[float | str] = ()


@dataclass(frozen=True)
class Question:
    """One question of a topic.

    fields: in the order of the form. unknowns: names of which exactly one is
    left empty; empty when the question always asks the same. any_givens: several may be
    left empty and several asked, as long as what is asked follows from the rest.
    asks: the unknown taken where several boxes are empty and none is picked, as in the example.
    constants: names of the data sheet that its formulas may use; any other letter is a quantity.
    drawn: the unknowns that practice asks for, where that is not each of them. drawn_since: the draw number from
    which on it asks for one; by older ones, from when the question always asked the same, none is named.
    drawn_later: unknowns that practice asks for besides, each with the draw number from which on it does.
    example: typed text by field name (a Rows field: list of row dicts), the page's worked example.
    since: the draw number of addresses from which on a topic's list holds it. former: keys it had before.
    draws: how practice makes new data. relations: the laws it is put together from, where they are the same for
    all data.
    """

    key: str
    title: str
    fields: tuple[Field, ...]
    plan: Callable[[Data], Plan]
    example: Mapping[str, object]
    unknowns: tuple[str, ...] = ()
    asks: str = ""
    drawn: tuple[str, ...] = ()
    drawn_since: int = 1
    drawn_later: Mapping[str, int] = field(default_factory=dict)
    constants: tuple[str, ...] = ()
    laws: tuple[str, ...] = ()
    draws: Mapping[str, Draw] = field(default_factory=dict)
    adjust: Callable[[dict[str, object], object, int], dict[str, object]] | None = None
    levels: tuple[int, ...] = (1, 2, 3)
    scenario: bool = False
    any_givens: bool = False
    since: int = 1
    former: tuple[str, ...] = ()
    relations: tuple[Relation | Together, ...] = ()

    def __post_init__(self) -> None:
        """Whoever asks for the plan gets its words, figures and refusals with the reader's decimal sign."""
        written = self.plan

        def plan(data: Data) -> Plan:
            comma = data.settings.comma
            try:
                return in_sign(written(data), comma)
            except Refusal as refusal:
                raise Refusal(refusal.field, in_sign(refusal.sentence, comma)) from None

        object.__setattr__(self, "plan", plan)

    def find(self, name: str) -> Field:
        """The declared field called ``name``; KeyError lists those there are."""
        for item in self.fields:
            if item.name == name:
                return item
        raise KeyError(f"question {self.key} has no field {name!r}; it has {', '.join(f.name for f in self.fields)}")


@dataclass(frozen=True)
class Topic:
    """A page's worth of questions, with the laws they quote and the cautions that go with the practical work."""

    key: str
    title: str
    laws: tuple[Law, ...]
    questions: tuple[Question, ...]
    cautions: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        for question in self.questions:
            for item in question.fields:
                self._check_names(question, item)

    def _check_names(self, question: Question, item: Field) -> None:
        """Refuse a name that an address could not carry as the name of a box."""
        columns = item.columns if isinstance(item, Rows) else ()
        for name in (item.name, *(column.name for column in columns)):
            rule = ""
            if not FIELD_NAME.fullmatch(name):
                rule = "a field's name is a letter, then letters, digits and _ (31 at most)"
            elif name in ADDRESS_WORDS:
                rule = "this word has a meaning of its own in addresses, so no field can have it"
            elif [field.name for field in question.fields].count(item.name) > 1:
                rule = "another field of this question has the same name"
            if rule:
                where = f"topic {self.key}, question {question.key}, field {name!r}"
                raise DeclarationError(f"{where}: {rule}. Give it another name.")

    def law(self, name: str) -> Law:
        return next(law for law in self.laws if law.name == name)
