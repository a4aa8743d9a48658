"""Small wrong changes in ``calc``, one at a time: which of them does no test see?

    .venv/bin/python site-scripts/mutate.py --count 200 --seed 1
    .venv/bin/python site-scripts/mutate.py --count 30 --module calc/figures
    .venv/bin/python site-scripts/mutate.py --again                  # those that survived last time

A change turns a comparison, an arithmetic sign, an ``and``, a ``not``, a truth value, a number, a
word of direction, the two branches of a choice, two arguments, an angle, or drops what a function
returns. Three of five fall on figures, sentences and thresholds. For each, the tests that run its
line (noted once, kept under ``build/mutants``) are run in a copy of the tree, the quickest first,
until one fails. A change no test sees is a survivor, whether or not it could be called equivalent.
Ends with 0 when fewer than a tenth survive. Browser, site and runtime tests are not run.

A change is seen when a test fails, when ``calc`` or a test file cannot be loaded with it ("import"), or when
a test takes more than ten times its processor time and 20 s ("time"); the last two are counted apart.
"""

from __future__ import annotations

import argparse
import ast
import hashlib
import json
import os
import pickle
import random
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import threading
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from mutation_sites import Mutant, Sites

REPO = Path(__file__).resolve().parents[1]
KEPT = REPO / "build" / "mutants"
LAST = KEPT / "survivors.json"
NOT_RUN = ("browser", "site", "runtime")
GROUPS = ("figures", "sentences", "thresholds", "other", "other")
ACCEPTED = 0.1


# --- which tests run a line ---


def files_tested() -> list[str]:
    """The test files that need no browser and no built site."""
    found = sorted((REPO / "tests").rglob("test_*.py"))
    return [
        path.relative_to(REPO).as_posix() for path in found if path.relative_to(REPO / "tests").parts[0] not in NOT_RUN
    ]


def digest(paths: Sequence[Path]) -> str:
    """A hash of names and contents."""
    total = hashlib.sha256()
    for path in paths:
        total.update(path.relative_to(REPO).as_posix().encode() + b"\0" + path.read_bytes())
    return total.hexdigest()[:16]


def held_beside(test: Path) -> list[Path]:
    """What lies beside a test file to be compared with: a test that failed by it has to be noted again."""
    return [*test.parent.glob("*.json"), *test.parent.glob("approved/*")]


class Notes:
    """Which tests run which lines.

    tests: by test its seconds of processor time, its file, and its lines as bits of that file's index.
    imported: the lines run while calc and the tests are loaded. modules: what the tests load from elsewhere.
    """

    def __init__(self, names: Sequence[str]) -> None:
        self.tests: dict[str, tuple[float, str, int]] = {}
        self.index: dict[str, dict[tuple[str, int], int]] = {}
        self.imported: set[tuple[str, int]] = set()
        self.modules: list[str] = []
        for name in names:
            noted = pickle.loads((KEPT / f"{name.replace('/', '-')}.noted").read_bytes())
            self.index[name] = noted["index"]
            self.imported |= noted["imported"]
            self.modules = noted["modules"]
            for test, (seconds, bits) in noted["tests"].items():
                self.tests[test] = seconds, name, bits

    def loaded(self, mutant: Mutant) -> bool:
        """Whether the line runs while calc and the tests are loaded."""
        return any((mutant.file.removeprefix("calc/"), line) in self.imported for line in mutant.lines)

    def covering(self, mutant: Mutant) -> list[tuple[str, float]]:
        """The tests to run for a change, the quickest first, with their seconds. For what runs while calc is loaded,
        those that run anything of the file later on (all, where none does)."""
        inner = mutant.file.removeprefix("calc/")
        places = [(inner, line) for line in mutant.lines]
        hit = {n: sum(1 << index[one] for one in places if one in index) for n, index in self.index.items()}
        found = sorted((seconds, test) for test, (seconds, name, bits) in self.tests.items() if bits & hit[name])
        if self.loaded(mutant):
            whole = {
                n: sum(1 << i for (file, _), i in index.items() if file == inner) for n, index in self.index.items()
            }
            near = [(test, one) for test, one in self.tests.items() if one[2] & whole[one[1]]]
            found = sorted(
                (seconds * (1 if bits & hit[name] else 2), test)
                for test, (seconds, name, bits) in near or self.tests.items()
            )
        return [(test, self.tests[test][0]) for _, test in found]


def note(names: Sequence[str], jobs: int, tree: Path) -> Notes:
    """Note the lines of the test files that are not noted yet."""
    KEPT.mkdir(parents=True, exist_ok=True)
    shared = [
        *(REPO / "calc").rglob("*.py"),
        *(REPO / "tests").glob("*.json"),
        *(REPO / "site-scripts").glob("mutation*"),
    ]
    shared += [one for one in (REPO / "tests").glob("*.py") if not one.name.startswith("test_")]
    common = digest(sorted(shared))
    stale = []
    for name in names:
        own = common + digest([REPO / name, *sorted(held_beside(REPO / name))])
        mark = KEPT / f"{name.replace('/', '-')}.digest"
        if not mark.exists() or mark.read_text() != own:
            (KEPT / f"{name.replace('/', '-')}.noted").unlink(missing_ok=True)
            stale.append((name, mark, own))
    if stale:
        print(f"· noting the lines of {len(stale)} test files", flush=True)
        settings = {"files": [name for name, _, _ in stale], "to": str(KEPT), "jobs": jobs}
        process = subprocess.run(command("note", settings), cwd=tree, env=environment(), stdout=subprocess.DEVNULL)
        for name, mark, own in stale:
            if not (KEPT / f"{name.replace('/', '-')}.noted").exists():
                raise SystemExit(f"The lines of {name} could not be noted (pytest ended with {process.returncode}).")
            mark.write_text(own)
    return Notes(names)


# --- trying one ---


def command(mode: str, settings: dict[str, Any]) -> list[str]:
    """A process of the test side."""
    return [sys.executable, "site-scripts/mutation_plugin.py", mode, json.dumps(settings)]


def environment() -> dict[str, str]:
    """The environment of a test run: always the same, no failing example made smaller."""
    return {**os.environ, "BOOKLET_HYPOTHESIS": "mutants", "PYTHONHASHSEED": "0"}


class Server:
    """A process that tries changes in forks of itself."""

    def __init__(self, mode: str, tree: Path, settings: dict[str, Any]) -> None:
        asked, self.ask = os.pipe()
        self.answers, answered = os.pipe()
        self.waiting: dict[int, Future[dict[str, Any]]] = {}
        self.lock = threading.Lock()
        self.process = subprocess.Popen(
            command(mode, {**settings, "asked": asked, "answered": answered}),
            cwd=tree,
            env=environment(),
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,  # what cannot be loaded is told in the answer
            pass_fds=(asked, answered),
        )
        os.close(asked)
        os.close(answered)
        threading.Thread(target=self.listen, daemon=True).start()

    def listen(self) -> None:
        """Hand every answer to who waits for it."""
        with os.fdopen(self.answers, encoding="utf-8") as answers:
            for line in answers:
                answer = json.loads(line)
                self.waiting.pop(answer["id"]).set_result(answer)
        for one in self.waiting.values():
            one.set_exception(SystemExit("The process that runs the tests ended."))

    def attempt(self, number: int, mutant: Mutant, tests: list[tuple[str, float]]) -> dict[str, Any]:
        """What came of a change."""
        future: Future[dict[str, Any]] = Future()
        self.waiting[number] = future
        asked = {"id": number, "file": mutant.file, "start": mutant.start, "end": mutant.end, "after": mutant.after}
        line = (json.dumps({**asked, "tests": tests}) + "\n").encode()
        with self.lock:
            while line:
                line = line[os.write(self.ask, line) :]
        return future.result()

    def close(self) -> None:
        """No more is asked."""
        os.close(self.ask)
        self.process.wait()


@dataclass(frozen=True)
class Verdict:
    """What came of a change. by: the test that saw it, 'import ...', 'time ...', or '' for a survivor."""

    mutant: Mutant
    by: str
    seconds: float
    tests: int


def verdict(mutant: Mutant, answer: dict[str, Any], tests: int) -> Verdict:
    """The answer read; what the runner itself did wrong is no verdict."""
    kind, _, rest = answer["word"].partition(" ")
    if answer["signal"] == signal.SIGPROF:
        return Verdict(mutant, f"time: {answer['at']}", answer["seconds"], tests)
    if kind == "seen":
        return Verdict(mutant, rest, answer["seconds"], tests)
    if kind == "import":
        return Verdict(mutant, answer["word"], answer["seconds"], tests)
    if kind == "end" and not answer["signal"]:
        return Verdict(mutant, "", answer["seconds"], tests)
    raise SystemExit(f"The runner failed at {told(mutant)}\n{answer}")


def copy_tree(to: Path) -> Path:
    """A copy of what the tests need."""
    for name in ("calc", "tests", "docs", "site-scripts"):
        shutil.copytree(REPO / name, to / name, ignore=shutil.ignore_patterns("node_modules", "__pycache__"))
    for name in ("pyproject.toml", "mkdocs.yml", "README.md", "DEVELOPERS.md"):
        shutil.copy2(REPO / name, to / name)
    return to


def chosen(count: int, seed: int, within: str) -> list[Mutant]:
    """``count`` changes at random sites, three of five in figures, sentences and thresholds."""
    groups: defaultdict[str, list[Mutant]] = defaultdict(list)
    for path in sorted((REPO / "calc").rglob("*.py")):
        if path.relative_to(REPO).as_posix().startswith(within):
            for mutant in Sites(path).found:
                groups[mutant.group].append(mutant)
    print("· sites: " + ", ".join(f"{name} {len(groups[name])}" for name in dict.fromkeys(GROUPS)))
    chance = random.Random(seed)
    for group in groups.values():
        chance.shuffle(group)
    picked: list[Mutant] = []
    places: set[tuple[str, int]] = set()
    for turn in range(20 * count):
        group = groups[GROUPS[turn % len(GROUPS)]]
        if group and len(picked) < count:
            mutant = group.pop()
            if (mutant.file, mutant.start) not in places and readable(mutant):
                places.add((mutant.file, mutant.start))
                picked.append(mutant)
    return picked


def readable(mutant: Mutant) -> bool:
    """Whether the file is still Python with the change."""
    source = (REPO / mutant.file).read_bytes()
    try:
        ast.parse(source[: mutant.start] + mutant.after.encode() + source[mutant.end :])
    except SyntaxError:
        return False
    return True


def told(mutant: Mutant) -> str:
    """One line: where, what, and what it became, with the line it stands in."""
    text = (REPO / mutant.file).read_bytes()
    start = text.rfind(b"\n", 0, mutant.start) + 1
    end = text.find(b"\n", mutant.end)
    line = text[start:end].decode().strip()
    change = f"{mutant.before!r} → {mutant.after!r}"
    return f"{mutant.file}:{mutant.line}: {change} ({mutant.kind}, {mutant.group})\n      {line[:160]}"


def trial(mutants: Sequence[Mutant], jobs: int, only: str) -> Iterator[Verdict]:
    """Try every change, ``jobs`` at a time."""
    with tempfile.TemporaryDirectory(prefix="mutants-") as folder:
        tree = copy_tree(Path(folder).resolve())
        files = [name for name in files_tested() if re.search(only, name)]
        notes = note(files, jobs, tree)
        warm = Server("warm", tree, {"files": files})
        cold = Server("cold", tree, {"modules": notes.modules})

        def run(numbered: tuple[int, Mutant]) -> Verdict:
            number, mutant = numbered
            tests = notes.covering(mutant)
            if not tests:
                return Verdict(mutant, "", 0.0, 0)
            if not notes.loaded(mutant):
                answer = warm.attempt(number, mutant, tests)
                if answer["word"] != "unfit":
                    return verdict(mutant, answer, len(tests))
            return verdict(mutant, cold.attempt(number, mutant, tests), len(tests))

        try:
            with ThreadPoolExecutor(jobs) as pool:
                yield from pool.map(run, enumerate(mutants))
        finally:
            warm.close()
            cold.close()


def last_survivors() -> list[Mutant]:
    """The survivors of the last trial whose place still reads the same."""
    kept = [Mutant(**{**one, "lines": tuple(one["lines"])}) for one in json.loads(LAST.read_text(encoding="utf-8"))]
    sites = {file: Sites(REPO / file).found for file in {one.file for one in kept}}
    return [one for one in kept if one in sites[one.file]]


def main() -> int:
    """Try the changes, tell of each survivor as it is found, and end with the counts."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    parser.add_argument("--count", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--module", default="calc", help="only files whose path begins so")
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--tests", default="", metavar="PATTERN", help="only test files whose path fits")
    parser.add_argument("--list", action="store_true", help="print the changes, try none")
    parser.add_argument("--again", action="store_true", help="the survivors of the last trial")
    given = parser.parse_args()
    mutants = last_survivors() if given.again else chosen(given.count, given.seed, given.module)
    if given.list:
        print("\n".join(told(mutant) for mutant in mutants))
        return 0
    verdicts: list[Verdict] = []
    for number, one in enumerate(trial(mutants, given.jobs, given.tests), 1):
        verdicts.append(one)
        if one.by:
            print(f"{number:4} seen in {one.seconds:.1f} s by {one.by}", flush=True)
        else:
            print(f"{number:4} SURVIVED {one.tests} tests, {one.seconds:.0f} s: {told(one.mutant)}", flush=True)
    left = [one for one in verdicts if not one.by]
    print(f"\n{len(left)} of {len(verdicts)} survived ({100 * len(left) / max(1, len(verdicts)):.0f} %)")
    for how in ("time", "import"):
        print(f"seen by {how}: {sum(one.by.startswith(how) for one in verdicts)}")
    for name in ("group", "kind"):
        tried = Counter(getattr(one.mutant, name) for one in verdicts)
        survived = Counter(getattr(one.mutant, name) for one in left)
        print(", ".join(f"{key} {survived[key]}/{tried[key]}" for key in sorted(tried)))
    print("\n".join(told(one.mutant) for one in left))
    LAST.write_text(json.dumps([asdict(one.mutant) for one in left]), encoding="utf-8")
    return 0 if len(left) < ACCEPTED * len(verdicts) else 1


if __name__ == "__main__":
    sys.exit(main())
