"""Every law that a topic declares, with its words, units and mistakes, as it was read.

``approved/laws/declared.txt`` holds them: also what no example and no draw happens to need. After a change on purpose:

    .venv/bin/python -m tests.model.test_relations_kept
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from calc.model.relations import Relation
from tests.model.test_relations import declared

KEPT = Path(__file__).parents[1] / "approved" / "laws" / "declared.txt"


def told(relation: Relation) -> Iterator[str]:
    """A law in lines."""
    yield f"  {relation.what} | {relation.why} | {relation.plain}"
    yield "  " + ", ".join(
        [f"{name} in {unit or 'no unit'}" for name, unit in relation.units.items()]
        + [f"size of {name}" for name in relation.sizes]
        + ["marks: " + " ".join(f"{mark.count} {mark.kind}" for mark in relation.marks)]
        + [f"quotes {name}" for name in relation.quotes]
    )
    yield from (f"  second root of {name} dropped: {why}" for name, why in relation.dropped.items())
    for one in relation.mistakes:
        more = " ".join(filter(None, (one.why, "turns" * one.turns, *one.former)))
        yield f"  {one.key} at {one.at}: {one.instead}: {one.say} {more}".rstrip()
    for name in relation.names:
        if name in relation.directions and not callable(relation.directions[name]):
            yield f"  {name} points: {relation.directions[name]}"


def lines() -> list[str]:
    """All laws in the order of their letters; one that is declared in several places stands once."""
    texts = {"\n".join([f"=== {relation.law}", *told(relation)]) for _, relation in declared()}
    return "\n".join(sorted(texts)).split("\n")


def test_the_laws_are_those_that_were_read() -> None:
    """Words, units, marks and mistakes of each declared law."""
    assert lines() == KEPT.read_text(encoding="utf-8").splitlines()


if __name__ == "__main__":
    KEPT.write_text("".join(f"{line}\n" for line in lines()), encoding="utf-8")
