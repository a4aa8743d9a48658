"""A question paper and its memo: questions chosen from topics and drawn with numbers, as data.

The same request gives the same paper, everywhere and always. A paper is chosen by count, by marks,
or by both; or its questions are named one by one, and then later questions of a topic cannot change
it. A learner's own paper has the questions and marks of the common one and numbers of its own.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache

from calc import topics
from calc.figures import Arrow, Curve, Figure, Segment
from calc.figures.pieces import Told
from calc.language.expressions import equation
from calc.language.maths import Maths
from calc.model.answers import ConstantShown, WorkedAnswer
from calc.model.constants import Settings
from calc.model.data_sheet import forms
from calc.model.questions import Plan, Question, Refusal, Topic
from calc.practice.drawing import draw, offered
from calc.practice.fair import fair_scene, found_values
from calc.working.reading import Read, read
from calc.working.working import run, show

MOST_QUESTIONS = 30
MOST_MARKS = 300
USUAL_QUESTIONS = 4
LONGEST_HEADING = 120  # characters
USUAL_MARKS = 11  # of one question, where only the marks are asked for
LARGEST_SEED = 999_999
RISING = 0  # the level of a paper whose questions go from easier to harder
COPIES = 3  # how often one question may come, each time with other numbers
KEPT = 200  # draws of a common paper whose marks are remembered for the papers of a class
TRIES = 24  # draws for a learner until one has the marks of the common paper


@dataclass(frozen=True)
class Pick:
    """One chosen question: ``topic.question``, its level (1 to 3), and which of its copies it is."""

    key: str
    level: int
    copy: int = 0


@dataclass(frozen=True)
class Wanted:
    """What a teacher asked for. entries: topic keys, question keys, or question keys with a level
    (``coulomb.force:3``).

    own: the number of a learner's own paper; 0 for the paper all share. rule: the draw number of its address.
    """

    entries: tuple[str, ...]
    count: int | None = None
    marks: int | None = None
    level: int = 1
    seed: int = 1
    own: int = 0
    rule: int = 1
    heading: str = ""
    learner: str = ""
    settings: Settings = field(default_factory=Settings)


@dataclass(frozen=True)
class Item:
    """A numbered question of a paper.

    scene: its diagram without what is asked; None if it has none.
    """

    number: int
    pick: Pick
    worked: WorkedAnswer
    scene: Figure | None

    @property
    def marks(self) -> int:
        return self.worked.marks


@dataclass(frozen=True)
class Paper:
    """A paper with all that its memo needs. sheet: constants in force; formulas: general forms."""

    wanted: Wanted
    items: tuple[Item, ...]
    sheet: tuple[ConstantShown, ...]
    formulas: tuple[Maths, ...]

    @property
    def marks(self) -> int:
        return sum(item.marks for item in self.items)

    @property
    def heading(self) -> str:
        return self.wanted.heading or "Worksheet"

    @property
    def named(self) -> tuple[str, ...]:
        """The entries that name this paper's questions one by one."""
        rising = self.wanted.level == RISING
        return tuple(f"{item.pick.key}:{item.pick.level}" if rising else item.pick.key for item in self.items)


def make(wanted: Wanted) -> Paper:
    """The paper that was asked for. Raises Refusal where an entry or the choice cannot be."""
    picks = _named(wanted)
    if picks is None:
        picks = _chosen(wanted)
    items = tuple(_item(number, pick, wanted) for number, pick in enumerate(picks, 1))
    sheet = {shown.name: shown for item in items for shown in item.worked.constants}
    laws = forms(law for item in items for law in item.worked.laws)
    return Paper(
        wanted,
        items,
        tuple(sheet[name] for name in sorted(sheet)),
        tuple(equation(form).maths(comma=wanted.settings.comma) for some in laws.values() for form in some),
    )


def own_number(seed: int, learner: str) -> int:
    """The number of a learner's own paper (1 to LARGEST_SEED): the same for the same name and seed."""
    name = " ".join(learner.split()).casefold()
    return 1 + int(random.Random(f"learner/{seed}/{name}").random() * LARGEST_SEED)


# --- choosing ---


def _split(entry: str, level: int) -> tuple[str, int]:
    key, colon, own = entry.partition(":")
    if colon and own not in ("1", "2", "3"):
        raise Refusal("topics", f"“{entry[:60]}” names no level: the levels are 1, 2 and 3.")
    return key, int(own) if colon else level


def _named(wanted: Wanted) -> list[Pick] | None:
    """The questions named one by one, or None where topics, a count or marks leave a choice."""
    keys = [_split(entry, wanted.level or 1) for entry in wanted.entries]
    if wanted.count or wanted.marks or any("." not in key for key, _ in keys):
        return None
    seen: dict[str, int] = {}
    picks = []
    for key, level in keys:
        _find(key)
        picks.append(Pick(key, level, seen.get(key, 0)))
        seen[key] = seen.get(key, 0) + 1
    return picks


def _find(key: str) -> tuple[Topic, Question]:
    try:
        return topics.find(key)
    except KeyError:
        raise Refusal(
            "topics",
            f"This booklet has no question “{key[:60]}”. Choose from the topics on the page.",
        ) from None


def _candidates(wanted: Wanted) -> list[Pick]:
    """Every question that may be chosen, best first: shuffled by the seed, topic after topic in turn."""
    groups: dict[str, list[Pick]] = {}
    for entry in dict.fromkeys(wanted.entries):
        key, level = _split(entry, wanted.level)
        if "." in key:
            _find(key)
            keys = [key]
        elif key in topics.topics():
            keys = [f"{key}.{question.key}" for question in offered(topics.topics()[key], wanted.rule)]
        else:
            raise Refusal(
                "topics",
                f"This booklet has no topic “{key[:60]}”. Choose from the topics on the page.",
            )
        for one in keys:
            _, question = topics.find(one)
            fits = level in question.levels or "." in key
            if level == RISING:
                at = question.levels[int(_chance(wanted.seed, one, "level") * len(question.levels))]
                groups.setdefault(one.partition(".")[0], []).append(Pick(one, at))
            elif fits:
                groups.setdefault(one.partition(".")[0], []).append(Pick(one, level))
    for group in groups.values():
        group.sort(key=lambda pick: _chance(wanted.seed, pick.key))
    turns = sorted(groups, key=lambda key: _chance(wanted.seed, key))
    longest = max((len(group) for group in groups.values()), default=0)
    once = [groups[key][place] for place in range(longest) for key in turns if place < len(groups[key])]
    return [replace(pick, copy=copy) for copy in range(COPIES) for pick in once]


def _chance(seed: int, *words: str) -> float:
    """A number from 0 to 1 that belongs to these words: a new question elsewhere does not change it."""
    return random.Random(f"paper/{seed}/{'/'.join(words)}").random()


def _chosen(wanted: Wanted) -> list[Pick]:
    candidates = _candidates(wanted)
    count = wanted.count or (None if wanted.marks else USUAL_QUESTIONS)
    if not candidates or (count or 0) > len(candidates):
        raise Refusal(
            "count",
            f"These topics have {len(candidates)} {'question' if len(candidates) == 1 else 'questions'} to choose from"
            " at this level, other numbers counted: ask for fewer, or choose more topics.",
        )
    if wanted.marks:
        worth = [_marks(pick, _common_seed(pick, wanted), wanted) for pick in candidates]
        taken = [candidates[place] for place in nearest(worth, wanted.marks, count)]
    else:
        taken = candidates[:count]
    place = {key: index for index, key in enumerate(topics.question_keys())}
    rising = wanted.level == RISING
    return sorted(taken, key=lambda pick: (pick.level if rising else 0, place[pick.key], pick.copy))


def nearest(worth: Sequence[int], total: int, count: int | None = None) -> tuple[int, ...]:
    """Places in ``worth`` whose sum comes nearest to ``total``, early places first; exactly ``count`` of them if given.

    Of two sums equally near, the smaller one is taken; without a count, questions of usual length.
    """
    most = count or min(len(worth), MOST_QUESTIONS)
    # after[i][n]: the sums that n of the places from i on can make, as bits of a whole number
    after = [[0] * (most + 1) for _ in range(len(worth) + 1)]
    after[-1][0] = 1
    for place in range(len(worth) - 1, -1, -1):
        for n in range(most + 1):
            taken = after[place + 1][n - 1] << worth[place] if n else 0
            after[place][n] = after[place + 1][n] | taken
    reachable = [
        (abs(size - total), size, abs(n - total / USUAL_MARKS), n)
        for n in ([count] if count else range(1, most + 1))
        for size in range(after[0][n].bit_length())
        if after[0][n] >> size & 1
    ]
    _, left, _, n = min(reachable)
    picked = []
    for place, size in enumerate(worth):
        if n and left >= size and after[place + 1][n - 1] >> (left - size) & 1:
            picked.append(place)
            left, n = left - size, n - 1
    return tuple(picked)


# --- drawing ---


def _item(number: int, pick: Pick, wanted: Wanted) -> Item:
    seed = _common_seed(pick, wanted)
    if not wanted.own:
        return replace(_worked(pick, *_planned(pick, seed, wanted), wanted), number=number)
    worth = _marks(pick, seed, wanted)
    for attempt in range(TRIES):
        found, plan = _planned(pick, _own_seed(pick, wanted, attempt), wanted)
        if _worth(plan) == worth:
            break
    return replace(_worked(pick, found, plan, wanted), number=number)


def _own_seed(pick: Pick, wanted: Wanted, attempt: int) -> int:
    return int(_chance(wanted.seed, pick.key, str(pick.copy), str(wanted.own), str(attempt)) * LARGEST_SEED)


def _common_seed(pick: Pick, wanted: Wanted) -> int:
    """The draw of the common paper: of the first copy, the one practice draws for the same seed."""
    return wanted.seed if pick.copy == 0 else int(_chance(wanted.seed, pick.key, str(pick.copy)) * LARGEST_SEED)


def _planned(pick: Pick, seed: int, wanted: Wanted) -> tuple[Read, Plan]:
    topic, question = topics.find(pick.key)
    drawn = draw(topic, question, seed, pick.level, wanted.rule)
    found = read(question, drawn.inputs, drawn.find, wanted.settings, drawn.variant)
    return found, question.plan(found.data)


def _worth(plan: Plan) -> int:
    """The marks of a draw, which its plan tells: nothing is worked for it."""
    return sum(part.marks for part in plan.parts)


def _marks(pick: Pick, seed: int, wanted: Wanted) -> int:
    settings = wanted.settings
    changed = tuple(sorted(settings.changed.items()))
    return _marks_kept(pick, seed, wanted.rule, changed, settings.decimals, settings.comma)


@lru_cache(maxsize=KEPT)
def _marks_kept(
    pick: Pick, seed: int, rule: int, changed: tuple[tuple[str, float], ...], decimals: int, comma: bool
) -> int:
    """The marks of the common paper's draw, asked for by each learner's."""
    settings = Settings(dict(changed), decimals, comma)
    return _worth(_planned(pick, seed, Wanted((), rule=rule, settings=settings))[1])


def _worked(pick: Pick, found: Read, plan: Plan, wanted: Wanted) -> Item:
    topic, question = topics.find(pick.key)
    values = run(plan, wanted.settings.constants())
    worked = show(topic, question, found, plan, values)
    return Item(0, pick, worked, plain_scene(plan, found))


def plain_scene(plan: Plan, found: Read) -> Figure | None:
    """The scene without the arrows and field lines that are the learner's to find; None where it still tells an
    answer."""
    if plan.scene is None:
        return None
    scene = plan.scene(run(plan, found.data.settings.constants())).without(found_values(plan))
    bare = _bare(scene) if scene else None
    return fair_scene(replace(plan, scene=lambda _: bare), found) if bare else None


def _bare(scene: Figure) -> Figure | None:
    kept = tuple(
        item
        for item in scene.items
        if not (isinstance(item, Arrow) and not isinstance(item, Told) and item.kind not in ("axis", "velocity"))
        and not (isinstance(item, Segment | Curve) and item.kind == "fieldline")
    )
    if len(kept) == len(scene.items):
        return scene
    if all(isinstance(item, Segment | Curve) for item in kept):
        return None  # nothing left to look at but guide lines
    labels = [str(getattr(item, "label", "") or getattr(item, "text", "")) for item in kept]
    words = "The data as a diagram. Labelled: " + ", ".join(label for label in labels if label) + "."
    return replace(scene, title="The data as a diagram", description=words, items=kept, tells=())
