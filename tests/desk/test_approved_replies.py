"""Whole conversations with the desk against replies that were read: ``approved/`` holds them.

The other tests state rules. These hold the rest still: every sentence, mark, attribute and notation of a few replies
about two short questions of mechanics. The numbers were worked by hand: p before = 3·4 − 2·1,5 = 9 kg·m·s⁻¹, so
v = 9/5 = 1,8 m·s⁻¹ to the right; ½kx² = ½·400·0,12² = 2,88 J; mgh = 0,05·9,8·1,5 = 0,735 J;
v = √(2·2,145/0,05) = 9,26 m·s⁻¹. After a change on purpose:

    .venv/bin/python -m tests.desk.test_approved_replies

writes them anew; read what git shows as changed.
"""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from calc import desk
from calc.renderings import form, paper_form
from calc.topics import find, topics

APPROVED = Path(__file__).parent / "approved"
JOIN = {"question": "momentum.join", "inputs": {"m1": "3 kg", "u1": "4 m/s", "m2": "2 kg", "u2": "-1,5 m/s", "v": ""}}
LAUNCH = {
    "question": "energy.spring-launch",
    "inputs": {"k": "400 N/m", "x": "12 cm", "m": "50 g", "h": "1,5 m", "v": ""},
}
ALL = ["html", "text", "latex"]
PAPERS = ["paper_html", "memo_html", "markdown", "markdown_memo", "latex", "latex_memo"]
VALUES: list[dict[str, Any]] = [
    {},
    {"value": "1,8 m/s", "direction": "right"},
    {"value": "1,8 m/s", "direction": "left"},
    {"value": "1,8 m/s"},
    {"value": "1,8"},
    {"value": "1,8 N", "direction": "right"},
    {"value": "1800 m/s", "direction": "right"},
    {"value": "0,018 m/s", "direction": "right"},
    {"value": "-1,8 m/s"},
    {"value": "3 m/s", "direction": "right"},
    {"value": "3 m/s", "direction": "right", "formula": {"v": "directions-ignored"}},
    {
        "value": "5 m/s",
        "direction": "right",
        "formula": {"v": "law"},
        "substitution": {"v": "(3*4 + 2*(-1,5))/(3 + 2)"},
    },
    {"value": "5 m/s", "direction": "right", "formula": {"v": "law"}, "substitution": {"v": "(3*4 + 2*1,5)/(3 + 2)"}},
    {"value": "1,8 m/s", "direction": "right", "substitution": {"v": "(3*4 + 2*(-1,5))/(3 + 2)"}},
    {"value": "1,81 m/s", "direction": "right"},
    {"value": "1,9 m/s", "direction": "right"},
    {"value": "about two"},
]
Conversation = tuple[str, dict[str, Any]]
CONVERSATIONS: dict[str, list[Conversation]] = {
    "worked": [
        ("solve", {**JOIN, "as": ALL}),
        ("solve", {**LAUNCH, "as": ALL, "settings": {"comma": "point", "decimals": "3"}}),
        ("solve", {**JOIN, "inputs": {**JOIN["inputs"], "v": "1,8 m/s", "m2": ""}, "as": ["text"]}),
        ("solve", {**LAUNCH, "inputs": {**LAUNCH["inputs"], "v": "9,26 m/s", "x": ""}, "as": ["text"]}),
        ("solve", {**JOIN, "inputs": {**JOIN["inputs"], "m1": "3000000 kg"}, "as": ["text"]}),
    ],
    "refused": [
        ("solve", {**JOIN, "inputs": {**JOIN["inputs"], **wrong}})
        for wrong in (
            {"m1": "3 N"},
            {"m1": "0 kg"},
            {"m1": "-3 kg"},
            {"m1": "three"},
            {"m1": "", "u1": ""},
            {"u1": "-4 m/s"},
            {"v": "9 m/s"},
            {"m1": "x" * 201},
            {"m1": "3,4,5 kg"},
            {"m1": "3 Kg"},
        )
    ],
    "marked": [("sheet", JOIN), ("sheet", LAUNCH)]
    + [("mark", {**JOIN, "answers": {"state": {"said": [0]}, "find": value}}) for value in VALUES],
    "practised": [
        ("practice", {"question": key, "seed": seed, "level": level})
        for key in ("momentum.join", "energy.spring-launch")
        for seed, level in ((1, 1), (2, 2), (3, 3))
    ],
    "paper": [
        (
            "paper",
            {
                "topics": ["momentum.join:1", "energy.spring-launch:2"],
                "level": "rising",
                "seed": 7,
                "heading": "Energy & momentum",
                "learner": "A. Learner",
                "space": "lined",
                "as": PAPERS,
            },
        ),
        ("paper", {"topics": ["momentum", "energy"], "count": 2, "marks": 12, "seed": 3, "as": ["markdown_memo"]}),
    ],
    "papers-refused": [
        ("paper", {"topics": ["momentum"], "count": 1, **wrong})
        for wrong in (
            {"topics": []},
            {"topics": ["momentum"] * 61},
            {"topics": ["magnets"]},
            {"count": 31},
            {"count": 12},
            {"level": 4},
            {"seed": -1},
            {"own": 1_000_000},
            {"heading": "x" * 121},
            {"learner": "x" * 81},
            {"space": "wide"},
            {"as": ["pdf"]},
        )
    ],
    "revised": [
        ("revision", {"today": "2026-03-09", "history": history})
        for history in (
            {},
            {"momentum.join": [{"day": "2026-03-01", "level": 1, "earned": 5, "possible": 5, "mistakes": []}]},
            {"momentum.join": [{"day": "2026-03-01", "level": 1, "earned": 6, "possible": 5, "mistakes": []}]},
        )
    ],
}


def lined(text: str) -> list[str]:
    """A reply's text in lines: a tag a line, so that a change is seen at its place."""
    return re.sub(r">(?=<)", ">\n", text).split("\n")


def readable(value: Any) -> Any:
    """A reply with its texts in lines."""
    if isinstance(value, dict):
        return {name: readable(entry) for name, entry in value.items()}
    if isinstance(value, list):
        return [readable(entry) for entry in value]
    return lined(value) if isinstance(value, str) and len(value) > 100 else value


def replies(name: str) -> Any:
    """What the desk answers in a conversation. Of what is offered for revision only what was tried."""
    found = []
    for operation, data in CONVERSATIONS[name]:
        reply = json.loads(desk.answer(json.dumps({"operation": operation, "data": data})))
        if operation == "revision" and reply["ok"]:
            reply["data"].pop("next")
            reply["data"]["html"] = reply["data"]["html"].partition("Not tried yet")[0]
        found.append({"asked": operation, "reply": readable(reply)})
    return found


def forms() -> Any:
    """The forms of both questions and of the worksheet page."""
    asked = [form.render(one["question"], find(one["question"])[1], one["inputs"], "v") for one in (JOIN, LAUNCH)]
    return readable([*asked, paper_form.render([topics()["momentum"], topics()["energy"]])])


@pytest.mark.parametrize("name", CONVERSATIONS)
def test_replies_are_those_that_were_read(name: str) -> None:
    """Every word, mark and attribute of a conversation."""
    assert replies(name) == json.loads((APPROVED / f"{name}.json").read_text(encoding="utf-8"))


def test_forms_are_those_that_were_read() -> None:
    """Every box, hint and button of two questions' forms and the worksheet's."""
    assert forms() == json.loads((APPROVED / "forms.json").read_text(encoding="utf-8"))


if __name__ == "__main__":
    APPROVED.mkdir(exist_ok=True)
    for every in [*CONVERSATIONS, "forms"]:
        kept = forms() if every == "forms" else replies(every)
        text = json.dumps(kept, ensure_ascii=False, indent=1, sort_keys=True)
        (APPROVED / f"{every}.json").write_text(text + "\n", encoding="utf-8")
