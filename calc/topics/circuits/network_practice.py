"""Networks that practice draws: three parts first, then lamps, switches, brackets in brackets, and unknowns."""

from __future__ import annotations

from typing import Protocol, cast


class _Chance(Protocol):
    kept: dict[str, str]

    def random(self) -> float: ...
    def choice(self, items: tuple[str, ...]) -> str: ...


# Pairs whose combined resistance is short in decimals.
PAIRS = ("4 12", "6 3", "6 12", "10 15", "20 5", "8 24", "12 6", "30 20", "9 18", "5 20", "7 42", "3 15")
FIRST = ("2", "3", "5", "1,5", "2,5", "4", "6", "8")
SHAPES = {
    1: ("R1 {a} Ω in series with (R2 {b} Ω in parallel with R3 {c} Ω)",),
    2: (
        "R1 {a} Ω in series with (R2 {b} Ω in parallel with R3 {c} Ω)",
        "ammeter A1 in series with R1 {a} Ω in series with (lamp L1 {b} Ω in parallel with lamp L2 {c} Ω)",
        "(R1 {a} Ω in series with R2 {d} Ω) in parallel with R3 {c} Ω",
        "R1 {a} Ω in series with (R2 {b} Ω in parallel with R3 {c} Ω); voltmeter V1 across R1",
        "(R1 {b} Ω in parallel with R2 {c} Ω) in series with R3 {a} Ω in series with R4 {d} Ω",
    ),
    3: (
        "R1 {a} Ω in series with (R2 {b} Ω in parallel with (R3 {c} Ω in series with R4 {d} Ω))",
        "switch S1 closed in series with R1 {a} Ω in series with lamp L1 {d} Ω in series with"
        " (R2 {b} Ω in parallel with R3 {c} Ω)",
        "R1 {a} Ω in series with (R2 {b} Ω in parallel with R3 {c} Ω in parallel with (switch S1 open in series"
        " with R4 {d} Ω))",
        "(R1 {b} Ω in parallel with R2 {c} Ω) in series with (R3 {c} Ω in parallel with R4 {d} Ω)",
    ),
}
# One thing at the later levels: a circuit asked for all it has is a paper of its own.
ASKED = {1: ("all",), 2: ("I", "V_ext", "P_x", "V_x"), 3: ("I_x", "P_x", "missing", "missing")}


def practise(typed: dict[str, object], chance: object, level: int) -> dict[str, object]:
    """A circuit of the level's shapes; at the last level sometimes with emf or r left out and an ammeter read."""
    draw = cast(_Chance, chance)
    b, c = draw.choice(PAIRS).split()
    a, d = draw.choice(FIRST), draw.choice(FIRST)
    # settled once for all tries: those that are compared would pick the same few again and again
    ask = draw.kept.setdefault("ask", draw.choice(ASKED[level]))
    text = draw.kept.setdefault("shape", draw.choice(SHAPES[level])).format(a=a, b=b, c=c, d=d)
    out = {**typed, "ask": ask, "of": "", "network": text}
    if ask == "missing":
        left = draw.choice(("epsilon", "r", "R1"))
        if left == "R1":
            volts = draw.choice(("1,5", "2", "2,4", "3"))
            group = f"(R2 {b} Ω in parallel with R3 {c} Ω)"
            out["network"] = f"R1 ? in series with {group}; voltmeter V1 reading {volts} V across R2"
        else:
            ohms = number(a) + 1 / (1 / number(b) + 1 / number(c))
            if left == "epsilon":
                amps = float(draw.choice(("0.5", "0.8", "1.2", "0.25")))
            else:  # what a cell of an ordinary internal resistance would drive
                amps = number(typed["epsilon"]) / (ohms + float(draw.choice(("0.5", "0.8", "1.2", "1.6"))))
            main = f"R1 {a} Ω in series with (R2 {b} Ω in parallel with R3 {c} Ω)"
            out["network"] = f"ammeter A1 reading {f'{amps:.2f}'.replace('.', ',')} A in series with {main}"
            out[left] = ""
    return out


def number(text: object) -> float:
    """The number at the start of what is typed."""
    return float(str(text).split()[0].replace(",", "."))
