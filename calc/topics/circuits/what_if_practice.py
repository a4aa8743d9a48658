"""Circuits and changes that practice draws: a branch that breaks first, then shorts, switches and other resistances."""

from __future__ import annotations

from typing import Protocol, cast


class _Chance(Protocol):
    kept: dict[str, str]

    def choice(self, items: tuple[str, ...]) -> str: ...


PAIRS = ("4 12", "6 3", "6 12", "10 15", "20 5", "8 24", "9 18", "3 15")
FIRST = ("2", "3", "5", "1,5", "2,5", "4")
GROUP = "R1 {a} Ω in series with (lamp L1 {b} Ω in parallel with lamp L2 {c} Ω)"
SWITCHED = "R1 {a} Ω in series with (lamp L1 {b} Ω in parallel with (switch S1 {now} in series with lamp L2 {c} Ω))"
METERED = (
    "ammeter A1 in series with R1 {a} Ω in series with ((ammeter A2 in series with lamp L1 {b} Ω) in parallel with lamp"
    " L2 {c} Ω); voltmeter V1 across the cell; voltmeter V2 across L1"
)
ROW = "ammeter A1 in series with lamp L1 {b} Ω in series with lamp L2 {c} Ω; voltmeter V1 across L1; V2 across the cell"
LEVELS = {
    1: (("burns", "L2", GROUP),),
    2: (
        ("burns", "L1", GROUP),
        ("switch", "S1", SWITCHED),
        ("parallel", "L2", GROUP),
        ("shorted", "R1", GROUP),
        ("burns", "R1", GROUP),
        ("burns", "L2", METERED),
        ("burns", "L1", ROW),
    ),
    3: (
        ("shorted", "L1", GROUP),
        ("becomes", "R1", GROUP.replace("R1", "rheostat R1")),
        ("series", "L2", GROUP),
        ("switch", "S1", SWITCHED),
        ("burns", "L2", "lamp L1 {b} Ω in parallel with lamp L2 {c} Ω"),
        ("becomes", "R1", METERED.replace("with R1", "with rheostat R1")),
        ("shorted", "L2", ROW),
    ),
}


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """A change of the level, on a circuit of one resistor and two lamps."""
    draw = cast(_Chance, chance)
    b, c = draw.choice(PAIRS).split()
    a = draw.choice(FIRST)
    # settled once for all tries: those that are compared would pick the same few changes again and again
    new = draw.kept.setdefault("new", draw.choice(("1", "6", "7", "9", "0,8")))
    which = draw.kept.setdefault("which", draw.choice(tuple(map(str, range(len(LEVELS[level]))))))
    change, of, text = LEVELS[level][int(which)]
    now = draw.choice(("open", "closed"))
    out = {**typed, "change": change, "of": of, "network": text.format(a=a, b=b, c=c, now=now), "R_new": ""}
    if change in ("becomes", "parallel", "series"):
        out["R_new"] = f"{new} Ω"
    if text.startswith("lamp"):
        out["r"] = draw.choice(("0 Ω", str(typed["r"])))
    return out
