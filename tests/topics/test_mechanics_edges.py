"""What questions of mechanics say and draw at their edges: small speeds, rest, equal forces, a pull along the slope.

Expected words follow from the data by common sense; nothing is taken from the declarations.
"""

import json
from functools import cache

import pytest

from calc import desk, topics

# question, what is asked, data besides those of the example, what must be told, what must not
ROWS: list[tuple[str, str, dict[str, str], tuple[str, ...], tuple[str, ...]]] = [
    # A velocity below 1 m/s has a direction all the same.
    (
        "momentum.impulse",
        "F_net",
        {"u": "0,5 m/s", "v": "-0,5 m/s", "m": "150 g", "Deltat": "5 ms"},
        ("Before, a body moves to the right with u. After, a body moves to the left with v.",),
        (),
    ),
    (
        "momentum.impulse",
        "F_net",
        {"u": "-0,5 m/s", "v": "0,5 m/s", "m": "150 g", "Deltat": "5 ms"},
        ("Before, a body moves to the left with u. After, a body moves to the right with v.",),
        (),
    ),
    ("momentum.bat", "", {"u": "0,5 m/s", "v": "-0,5 m/s"}, ("right with u. After, a body moves to the left",), ()),
    ("momentum.bat", "", {"u": "-0,5 m/s", "v": "0,5 m/s"}, ("left with u. After, a body moves to the right",), ()),
    (
        "momentum.canister",
        "",
        {"u": "0,5 m/s", "v1": "-0,5 m/s"},
        ("1 moves to the right with u.", "1 moves to the left with v1", "2 moves to the right with v2"),
        (),
    ),
    (
        "momentum.canister",
        "",
        {"u": "-0,5 m/s", "v1": "-0,9 m/s"},
        ("1 moves to the left with u.", "1 moves to the left with v1"),
        (),
    ),
    ("momentum.join", "v", {"u1": "0,5 m/s", "u2": "-0,5 m/s"}, ("1 moves to the right", "2 moves to the left"), ()),
    ("momentum.elastic", "v1", {"u1": "0 m/s", "u2": "-3 m/s"}, ("moves at 0",), ("the first is at rest",)),
    ("projectile.meeting", "t", {"u_A": "0,5 m/s", "y_A": "9 m", "y_B": "9,01 m", "t_0": "0 s"}, ("A moves up",), ()),
    # A pull lifts, a push presses.
    ("forces.level", "a", {"how": "pull", "P": "120 N", "phi": "60°", "m": "5 kg", "mu": "0,2"}, ("lifts it off",), ()),
    ("forces.level", "a", {"how": "push", "P": "120 N", "phi": "20°", "m": "5 kg", "mu": "0,2"}, ("a =",), ("lifts",)),
    (
        "forces.slope",
        "a",
        {"how": "pull", "motion": "up", "P": "60 N", "phi": "0°", "m": "6 kg", "theta": "25°", "mu": "0,2"},
        ("The pull is parallel to the slope.", "pulls it up the slope, along the surface", "P 25° above the right"),
        (),
    ),
    # At rest as long as the drive is not larger than the largest static friction, and at its very edge.
    (
        "forces.moves",
        "",
        {"how": "pull", "P": "9,8 N", "phi": "0°", "theta": "0°", "m": "2 kg", "mu_s": "0,5", "mu_k": "0,6"},
        ("Static friction can hold it: it stays at rest.",),
        (),
    ),
    # A weight just a little smaller than on the ground is a weight at a height.
    ("gravitation.lander", "", {"n": "1,05"}, ("Answer:",), ("greater than 1",)),
    ("gravitation.lander", "", {"n": "1"}, ("greater than 1",), ("Answer:",)),
    # Two at one pulley: the heavier goes down.
    (
        "newton.situation",
        "",
        {"chain": "pulley", "force": "none", "m1": "3 kg", "m2": "5 kg", "theta": "", "P": "", "phi": ""}
        | {"mu_s": "", "mu_k": ""},
        ("a = 2,45", "upwards"),
        (),
    ),
    (
        "newton.situation",
        "",
        {"chain": "pulley", "force": "none", "m1": "5 kg", "m2": "3 kg", "theta": "", "P": "", "phi": ""}
        | {"mu_s": "", "mu_k": ""},
        ("a = 2,45", "downwards"),
        (),
    ),
]


@cache
def told(key: str, find: str, inputs: tuple[tuple[str, str], ...]) -> str:
    """The worked answer as text, or what is said when it is refused."""
    given = {**topics.find(key)[1].example, **dict(inputs), **({find: ""} if find else {})}
    data = {"question": key, "inputs": given, "find": find, "as": ["text"]}
    reply = json.loads(desk.answer(json.dumps({"operation": "solve", "data": data})))
    text: str = reply["data"]["text"] if reply["ok"] else json.dumps(reply["errors"], ensure_ascii=False)
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("key", "find", "inputs", "says", "never"), ROWS, ids=[f"{row[0]} {n}" for n, row in enumerate(ROWS)]
)
def test_at_its_edges(
    key: str, find: str, inputs: dict[str, str], says: tuple[str, ...], never: tuple[str, ...]
) -> None:
    """Directions of small speeds, rest, a lifted body, equality: words and picture say what the data say."""
    text = told(key, find, tuple(inputs.items()))
    assert [words for words in says if words not in text] == []
    assert [words for words in never if words in text] == []
