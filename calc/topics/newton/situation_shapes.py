"""The arrangements of the situation page: what stands or hangs where, what joins it, where a force has room."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from calc.model.questions import Choice, Refusal

IN_THE_WAY = (
    "The string to the pulley is in the way at the front. Choose a pull backwards or a push forwards: both act from"
    " behind."
)
CLOSES = (
    "A push would close the gap between bodies in tow, and the string would hang loose. Choose a pull, or bodies that"
    " touch."
)
TAKES = "A pull would take bodies that touch apart. Choose a push, or bodies in tow."
NO_HOLD = "Both ends hold strings here, so there is no room for a pull or push: choose “no pull or push”."
NOT_THERE = "There is no such body on the surface in this arrangement: choose another body."
CHAIN = Choice(
    "chain",
    "Bodies and what joins them",
    (
        ("one", "one body on the surface"),
        ("tow2", "two in tow, a string between"),
        ("touch2", "two that touch"),
        ("edge", "one, and one hanging at the front"),
        ("ridge", "one on each of two slopes, over the ridge"),
        ("pulley", "two that hang over one pulley"),
        ("tow3", "three in tow"),
        ("touch3", "three that touch"),
        ("towedge", "two in tow, one hanging at the front"),
        ("ends", "one, and one hanging at each end"),
    ),
    never=(
        (
            "four",
            "four bodies or more",
            "One chain of at most three bodies can be worked here: count those that always move together as one body.",
        ),
        (
            "moving-pulley",
            "a pulley that moves",
            "The pulleys here are fixed. With one that moves the bodies no longer have the same acceleration.",
        ),
        (
            "branch",
            "a string that branches, or a body on top of another",
            "The bodies stand in one chain here, each joined to the next. Treat other arrangements body by body.",
        ),
    ),
)
FORCE = Choice(
    "force",
    "Pull or push",
    (
        ("none", "no pull or push"),
        ("pull-on", "a pull forwards, on the front body"),
        ("push-on", "a push forwards, on the rear body"),
        ("pull-back", "a pull backwards, on the rear body"),
        ("push-back", "a push backwards, on the front body"),
    ),
    quiet=("none",),
)


@dataclass(frozen=True)
class Shape:
    """An arrangement. on: bodies on the surface; behind, ahead: whether one hangs at that end; touch: they touch.

    ridge: two slopes meet, the second body stands on the one that falls to the right.
    """

    on: int
    behind: bool = False
    ahead: bool = False
    touch: bool = False
    ridge: bool = False

    @property
    def count(self) -> int:
        """How many bodies."""
        return self.on + self.behind + self.ahead

    @property
    def slopes(self) -> bool:
        """Whether the surface may slope."""
        return self.on > 0 and not self.behind

    @property
    def standing(self) -> tuple[int, ...]:
        """The numbers of the bodies on the surface."""
        return tuple(n for n in range(1, self.count + 1) if not self.hangs(n))

    def hangs(self, body: int) -> bool:
        """Whether a body, numbered from 1, hangs."""
        return (self.behind and body == 1) or (self.ahead and body == self.count)


SHAPES = {
    "one": Shape(1),
    "tow2": Shape(2),
    "touch2": Shape(2, touch=True),
    "edge": Shape(1, ahead=True),
    "pulley": Shape(0, behind=True, ahead=True),
    "tow3": Shape(3),
    "touch3": Shape(3, touch=True),
    "towedge": Shape(2, ahead=True),
    "ends": Shape(1, behind=True, ahead=True),
    "ridge": Shape(2, ridge=True),
}


def room(choices: Mapping[str, str]) -> None:
    """Refuses a force that has no room."""
    shape, force = SHAPES[choices["chain"]], choices["force"]
    if force != "none" and shape.behind:
        raise Refusal("force", NO_HOLD)
    if force in ("pull-on", "push-back") and shape.ahead:
        raise Refusal("force", IN_THE_WAY)
    if force.startswith("push") and shape.on > 1 and not shape.touch:
        raise Refusal("force", CLOSES)
    if force.startswith("pull") and shape.touch:
        raise Refusal("force", TAKES)


def force_of(choice: str, shape: Shape) -> tuple[int, bool, int]:
    """Which way the force acts (0: there is none), whether it is a push, and the number of the body it acts on."""
    noun, _, towards = choice.partition("-")
    way = {"on": 1, "back": -1}.get(towards, 0)
    return way, noun == "push", (shape.on if (way > 0) != (noun == "push") else 1) if way else 0
