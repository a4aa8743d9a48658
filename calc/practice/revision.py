"""What to revise next: boxes with growing gaps between one try and the next.

The rule is Sebastian Leitner's, So lernt man lernen (1972), given here from memory: every
question begins in the first of five boxes; done well it moves one box on, done badly it goes
back to the first. Leitner worked a box when it was full; a fixed number of days for each box,
doubling from one to the next, is common practice, no source. So is counting four fifths of the
marks as "done well". A question moves on at most once a day.

The day is always given by the caller: nothing here reads a clock. A try dated after tomorrow (tomorrow
may be a day that has begun elsewhere) comes from a wrong clock: it counts, as older than every dated
one, and a question with no other try is due now. Our own rule, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

GAPS = (1, 2, 4, 8, 16)  # days a question rests in boxes 1 to 5
WELL = 0.8
TOP_LEVEL = 3


@dataclass(frozen=True)
class Attempt:
    """One marked try: the day, the level (1 to 3), marks earned and possible, keys of recognised mistakes."""

    day: date
    level: int
    earned: int
    possible: int
    mistakes: tuple[str, ...] = ()

    @property
    def well(self) -> bool:
        """Whether this counts as done well; a question without marks never does."""
        return self.possible > 0 and self.earned >= WELL * self.possible


@dataclass(frozen=True)
class Revision:
    """When a question is due. box: 1 to 5. late: days past ``due`` (negative: days to go). level: to try next."""

    question: str
    box: int
    due: date
    late: int
    level: int
    last: Attempt


def box_of(attempts: Iterable[Attempt]) -> int:
    """The box, 1 to 5, in which these attempts (oldest first) leave a question."""
    box, moved_on = 1, None
    for attempt in attempts:
        if not attempt.well:
            box = 1
        elif moved_on != attempt.day:
            box, moved_on = min(box + 1, len(GAPS)), attempt.day
    return box


def next_level(attempts: Sequence[Attempt]) -> int:
    """One level up after two good tries at the last level, one down after two bad ones."""
    last = attempts[-1]
    pair = [attempt for attempt in attempts[-2:] if attempt.level == last.level]
    if len(pair) == 2 and all(attempt.well for attempt in pair):
        return min(last.level + 1, TOP_LEVEL)
    if len(pair) == 2 and not any(attempt.well for attempt in pair):
        return max(last.level - 1, 1)
    return last.level


def revise(history: Mapping[str, Sequence[Attempt]], today: date) -> tuple[Revision, ...]:
    """Every tried question, the most overdue first; of equals the lower box, then by key.

    Attempts may come in any order of days; those of one day keep theirs.
    """
    tomorrow = _after(today, 1)
    lines = []
    for question, tries in history.items():
        attempts = sorted(tries, key=lambda one: one.day if one.day <= tomorrow else date.min)
        if not attempts:
            continue
        box, last = box_of(attempts), attempts[-1]
        due = _after(last.day, GAPS[box - 1]) if last.day <= tomorrow else today
        lines.append(Revision(question, box, due, (today - due).days, next_level(attempts), last))
    return tuple(sorted(lines, key=lambda line: (-line.late, line.box, line.question)))


def _after(day: date, days: int) -> date:
    """``days`` later, or the last day there is."""
    return day + min(timedelta(days=days), date.max - day)
