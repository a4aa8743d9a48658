"""What readers see today, kept, and compared with what they see after a change of the engine.

    .venv/bin/python site-scripts/answers_snapshot.py /tmp/before.jsonl.gz
    .venv/bin/python site-scripts/answers_snapshot.py --compare /tmp/before.jsonl.gz

The first draws about 3,100 questions as practice does (every question, unknown and level, many
wordings, some with a reader's settings) and keeps what is said of each: a gzip file, one JSON object
a line, to lie outside the repository. The second asks the same again and prints every difference by
question and kind; lines that differ in the same way but for their numbers stand together, with one
example and their count. A question that is gone or new is named; ``--renamed OLD=NEW`` follows one.

Everything goes through the JSON boundary, so that the tree of ``calc`` may change between the two.
"""

from __future__ import annotations

import argparse
import difflib
import gzip
import hashlib
import html
import json
import re
import sys
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calc import desk, topics

SEEDS = range(1, 31)
LEVELS = (1, 2, 3)
MARKED = 3  # one draw in so many is marked as well
# Some readers change their settings; both kinds are kept.
SETTINGS: tuple[Mapping[str, object], ...] = (
    {},
    {},
    {},
    {},
    {"comma": "point", "decimals": 3, "g": "9.81"},
)
Seen = dict[str, list[str]]


def ask(operation: str, data: Mapping[str, object]) -> dict[str, Any]:
    """A reply of the desk."""
    text = json.dumps({"operation": operation, "data": data})
    reply: dict[str, Any] = json.loads(desk.answer(text))
    return reply


def requests(within: str) -> Iterator[dict[str, Any]]:
    """Every draw to keep, of questions whose key begins so: question, seed, level, and the request it comes to."""
    for key in filter(lambda key: key.startswith(within), topics.question_keys()):
        for level in LEVELS:
            for seed in SEEDS:
                yield drawn(key, seed, level)


def drawn(key: str, seed: int, level: int) -> dict[str, Any]:
    """One draw of practice, with its request and its hints; ``request`` is None where it is refused."""
    settings = SETTINGS[seed % len(SETTINGS)]
    reply = ask("practice", {"question": key, "seed": seed, "level": level, "settings": settings})
    found: dict[str, Any] = {"question": key, "seed": seed, "level": level, "request": None}
    if not reply["ok"]:
        return {**found, "hints": [error["message"] for error in reply["errors"]]}
    data = reply["data"]
    request = {name: data[name] for name in ("question", "inputs", "find", "variant")}
    hints = [words(hint) for part in data["hints"] for hint in part["html"]]
    return {**found, "request": {**request, "settings": settings}, "hints": hints}


def seen(one: Mapping[str, Any]) -> Seen:
    """What is said of a draw, as lines by kind."""
    request = one["request"]
    kinds: Seen = {"hint": list(one["hints"])}
    if request is None:
        return kinds
    solved = ask("solve", {**request, "as": ["text", "html"]})
    if not solved["ok"]:
        return {**kinds, "refusal": [error["message"] for error in solved["errors"]]}
    kinds |= parts_of(solved["data"]["text"])
    page = solved["data"]["html"]
    kinds["spoken"] = solved["data"]["spoken"].split("; ")
    kinds["plain words"] = [words(found) for found in re.findall(r'<details class="plain">.*?<p>(.*?)</p>', page, re.S)]
    drawings = re.findall(r"<svg.*?</svg>", page, re.S)
    kinds["figure labels"] = [
        words(label) for drawing in drawings for label in re.findall(r"<text.*?</text>", drawing, re.S)
    ]
    kinds["drawing"] = [digest(re.sub(r'\bid="[^"]*"|#[\w-]+', "", d)) for d in drawings]
    sheet = ask("sheet", request)
    if sheet["ok"]:
        spaced = re.sub(r"</(?:p|li|legend|option|label|summary|h\d)>", "\n", sheet["data"]["html"])
        kinds["sheet"] = [line for raw in spaced.split("\n") if (line := words(raw))]
        if one["seed"] % MARKED == 0:
            kinds["marking"] = marking(request, kinds, sheet["data"], one["seed"])
    return kinds


def marking(request: Mapping[str, Any], kinds: Seen, sheet: Mapping[str, Any], seed: int) -> list[str]:
    """What is said of right answers (even seeds) and of ones with their first digit changed."""
    answers = {}
    for part, value in zip(
        [part["part"] for part in sheet["parts"] if part.get("kind", "calculate") == "calculate"],
        kinds.get("result of a part", ()),
        strict=False,
    ):
        wrong = re.sub(r"[1-9]", lambda digit: str(int(digit[0]) % 9 + 1), value, count=1)
        answers[part] = {"value": value if seed % 2 == 0 else wrong}
    reply = ask("mark", {**request, "answers": answers})
    text = json.dumps(reply.get("data") or reply.get("errors"), ensure_ascii=False, sort_keys=True)
    return [line for raw in re.split(r"</(?:p|li|td|h\d)>", text) if (line := words(raw))]


def parts_of(text: str) -> Seen:
    """The text rendering of an answer, sorted into kinds."""
    kinds: defaultdict[str, list[str]] = defaultdict(list)
    blocks = text.rstrip("\n").split("\n\n")
    kinds["title"].append(blocks[0].split("\n")[0])
    kinds["story"].append(blocks[1])
    heads = {
        "Diagram: ": "figure words",
        "Note: ": "note",
        "Look again: ": "warning",
        "Total: ": "marks",
    }
    for block in blocks[2:]:
        first, _, rest = block.partition("\n")
        head = next((name for name in heads if first.startswith(name)), "")
        if head:
            kinds[heads[head]].append(block.removeprefix(head))
        elif first in ("Given", "Data sheet"):
            kinds["given" if first == "Given" else "data sheet"] += rest.split("\n")
        elif first.startswith("Check: "):
            kinds["check"] += block.split("\n")
        elif re.search(r"\(\d+\)$", first):
            part(kinds, block.split("\n"))
        else:
            kinds["law"] += block.split("\n")
    return dict(kinds)


def part(kinds: defaultdict[str, list[str]], lines: list[str]) -> None:
    """The lines of one part, sorted into ``kinds``."""
    kinds["part"].append(lines[0])
    for number, line in enumerate(lines[1:], 1):
        following = lines[number + 1] if number + 1 < len(lines) else ""
        if line.startswith("  Step "):
            kinds["step"].append(line.partition(". ")[2])
        elif line.startswith("  Diagram: "):
            kinds["figure words"].append(line.removeprefix("  Diagram: "))
        elif line.startswith("  Answer: "):
            value, _, where = line.removeprefix("  Answer: ").partition(", ")
            kinds["result of a part"].append(value)
            kinds["direction"].append(where)
        elif line.startswith("  • "):
            kinds["memo point"].append(line[4:])
        elif line.startswith("       "):
            kinds["step line" if following.startswith("     ") else "result"].append(line.strip())
        else:
            kinds["reason"].append(line.strip())


def words(markup: str) -> str:
    """Markup as the words in it."""
    return " ".join(html.unescape(re.sub(r"<[^>]*>", " ", markup)).split())


def digest(text: str) -> str:
    """A short name of a text."""
    return hashlib.sha256(text.encode()).hexdigest()[:12]


def keep(path: Path, within: str) -> int:
    """Write the snapshot; the number of draws."""
    count = 0
    with gzip.open(path, "wt", encoding="utf-8", compresslevel=6) as file:
        for one in requests(within):
            lines = seen(one)
            kept_of = {name: one[name] for name in ("question", "seed", "level", "request")}
            file.write(json.dumps({**kept_of, "seen": lines}, ensure_ascii=False) + "\n")
            count += 1
    return count


def kept(path: Path) -> Iterator[dict[str, Any]]:
    """The draws of a snapshot."""
    with gzip.open(path, "rt", encoding="utf-8") as file:
        for line in file:
            yield json.loads(line)


Groups = defaultdict[tuple[str, str, str, str], list[tuple[str, str, str]]]


def compare(path: Path, renamed: Mapping[str, str], within: str) -> tuple[Groups, set[str], set[str]]:
    """Differences by (question, kind, old pattern, new pattern), and the questions gone and new."""
    groups: Groups = defaultdict(list)
    now = set(topics.question_keys())
    were: set[str] = set()
    for old in kept(path):
        key = renamed.get(old["question"], old["question"])
        were.add(key)
        if key not in now or not key.startswith(within):
            continue
        where = f"seed {old['seed']}, level {old['level']}"
        new = drawn(key, old["seed"], old["level"])
        request = old["request"] and {**old["request"], "question": key}
        for before, after in changes([canonical(request)], [canonical(new["request"])]):
            groups[key, "draw", "", ""].append((where, before, after))
        # The answer to the old request, so that a changed draw does not hide a changed answer.
        lines = seen({**new, "request": request})
        for kind in sorted({*old["seen"], *lines}):
            for before, after in changes(old["seen"].get(kind, []), lines.get(kind, [])):
                same = ("", "") if kind == "drawing" else (pattern(before), pattern(after))
                groups[key, kind, *same].append((where, before, after))
    return groups, were - now, {key for key in now - were if key.startswith(within)}


def canonical(value: object) -> str:
    """JSON with its names in order."""
    return json.dumps(value, ensure_ascii=False, sort_keys=True)


def changes(old: list[str], new: list[str]) -> Iterator[tuple[str, str]]:
    """Pairs of differing lines; '' where one is missing."""
    if old == new:
        return
    for tag, a, b, c, d in difflib.SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        if tag == "equal":
            continue
        for place in range(max(b - a, d - c)):
            before = old[a + place] if a + place < b else ""
            yield before, new[c + place] if c + place < d else ""


def pattern(line: str) -> str:
    """A line without its numbers."""
    return re.sub(r"[−-]?[\d⁰¹²³⁴⁵⁶⁷⁸⁹⁻][\d⁰¹²³⁴⁵⁶⁷⁸⁹⁻.,\u00a0]*", "#", line)


def report(groups: Groups, gone: Iterable[str], new: Iterable[str], show_all: bool) -> None:
    """Print the differences, the most frequent first within each question and kind."""
    for name, keys in (("gone", gone), ("new", new)):
        for key in sorted(keys):
            print(f"{name}: {key}")
    totals: Counter[tuple[str, str]] = Counter()
    for (key, kind, *_), found in groups.items():
        totals[key, kind] += len(found)
    for (key, kind), total in sorted(totals.items()):
        print(f"\n{key}: {kind} ({total})")
        mine = [found for group, found in groups.items() if group[:2] == (key, kind)]
        for found in sorted(mine, key=len, reverse=True):
            for where, before, after in found if show_all else found[:1]:
                more = "" if show_all or len(found) == 1 else f" and {len(found) - 1} more like it"
                print(f"  {where}{more}\n    - {before}\n    + {after}")
    print(f"\n{sum(totals.values())} differences in {len(totals)} kinds of {len({k for k, _ in totals})} questions")


def main() -> int:
    """Keep or compare; 1 when something differs."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    parser.add_argument("file", type=Path, help="the snapshot (gzip JSON lines)")
    parser.add_argument("--compare", action="store_true", help="compare with it; write nothing")
    parser.add_argument("--only", default="", metavar="KEY", help="questions whose key begins so")
    parser.add_argument("--renamed", action="append", default=[], metavar="OLD=NEW")
    parser.add_argument("--all", action="store_true", help="print every difference, not one a pattern")
    given = parser.parse_args()
    if not given.compare:
        print(f"{keep(given.file, given.only)} draws kept in {given.file}")
        return 0
    renamed = dict(entry.split("=", 1) for entry in given.renamed)
    groups, gone, new = compare(given.file, renamed, given.only)
    report(groups, gone, new, given.all)
    return 1 if groups or gone else 0


if __name__ == "__main__":
    sys.exit(main())
