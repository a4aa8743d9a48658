"""Drawings of every builder against pictures that were looked at: ``approved/`` holds them, to open in a browser.

The other tests of figures state rules (no label struck, every arrow as its step says). These hold the rest still:
proportions of a trolley, the heads of arrows, the words of the text alternative. After a change on purpose:

    .venv/bin/python -m tests.renderings.test_approved_drawings

writes them anew; look at each picture that git shows as changed. Symbols: IEC 60617; hatched surfaces, hollow heads
of velocities, dashed components: common practice, no source.
"""

import random
import re
from pathlib import Path

import pytest

from calc.renderings import svg, tikz
from tests.drawn_figures import BUILDERS

APPROVED = Path(__file__).parent / "approved"
NUMBER = re.compile(r"-?\d*\.?\d+")
PRINTED = 0.011  # coordinates have two decimals; the last may differ where sin and cos do


def drawings(kind: str) -> dict[str, str]:
    """By file name: two drawings of a builder as SVG, the first in TikZ too."""
    name = kind.replace(" ", "-")
    first, second = (BUILDERS[kind](random.Random(f"{kind}/approved/{seed}")) for seed in (1, 2))
    return {
        f"{name}-1.svg": svg.render(first),
        f"{name}-2.svg": svg.render(second),
        f"{name}-1.tex": tikz.render(first),
    }


def lined(text: str) -> str:
    """One element a line, as the files hold them."""
    return re.sub(r">(?=<)", ">\n", text).strip() + "\n"


def changed(before: str, after: str) -> list[tuple[str, str]]:
    """The lines that differ by more than the printed place of a coordinate."""
    old, new = before.splitlines(), after.splitlines()
    if len(old) != len(new):
        return [(f"{len(old)} elements", f"{len(new)} elements")]
    found = []
    for one, other in zip(old, new, strict=True):
        pairs = zip(NUMBER.findall(one), NUMBER.findall(other), strict=False)
        same = NUMBER.sub("#", one) == NUMBER.sub("#", other)
        if not same or any(abs(float(a) - float(b)) > PRINTED for a, b in pairs):
            found.append((one, other))
    return found


@pytest.mark.parametrize("kind", BUILDERS)
def test_a_drawing_is_the_one_that_was_looked_at(kind: str) -> None:
    """Every stroke, head, label, word and weight of two drawings of each builder."""
    for name, text in drawings(kind).items():
        approved = (APPROVED / name).read_text(encoding="utf-8")
        assert changed(approved, lined(text)) == [], name


def test_a_changed_drawing_is_seen() -> None:
    """A stroke moved by a twentieth, a turned word, an element more: each is a change."""
    text = lined(svg.render(BUILDERS["slope"](random.Random("seen"))))
    number = re.search(r'd="M(-?[\d.]+)', text)
    assert number
    moved = text[: number.start(1)] + f"{float(number[1]) + 0.05:.2f}" + text[number.end(1) :]
    assert len(changed(text, moved)) == 1
    assert changed(text, text.replace("<desc>", "<desc>Not ", 1))
    assert changed(text, text + "<g/>\n")
    assert changed(text, text) == []


if __name__ == "__main__":
    APPROVED.mkdir(exist_ok=True)
    for every in BUILDERS:
        for name, text in drawings(every).items():
            (APPROVED / name).write_text(lined(text), encoding="utf-8")
