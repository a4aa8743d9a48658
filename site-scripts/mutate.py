"""Small wrong changes in ``calc``, one at a time: which of them does no test see?

    .venv/bin/python site-scripts/mutate.py --count 200 --seed 1
    .venv/bin/python site-scripts/mutate.py --count 30 --module calc/figures
    .venv/bin/python site-scripts/mutate.py --again                  # those that survived last time
    .venv/bin/python site-scripts/mutate.py --count 200 --seed 1 --anew   # a stopped run begun anew

A change turns a comparison, an arithmetic sign, an ``and``, a ``not``, a truth value, a number, a
word of direction, the two branches of a choice, two arguments, an angle, or drops what a function
returns. Three of five fall on figures, sentences and thresholds. For each, the tests that run its
line (noted once, kept under ``build/mutants``) are run in a copy of the tree until one fails: first those that run
most lines of the changed file for a second of theirs. After ``--seconds`` of processor time for one change no further
test is begun. A change no test sees is a survivor, whether or not it could be called equivalent.
Ends with 0 when fewer than a tenth survive. Browser, site and runtime tests are not run.

A change is seen when a test fails, when ``calc`` or a test file cannot be loaded with it ("import"), or when
a test takes more than ten times its processor time and 20 s ("time"); the last two are counted apart.

A run is kept under ``build/mutants/run-...`` with its copy of the tree: stopped, it goes on where it was, on the
``calc`` it began with and the tests it began with.
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
import threading
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import asdict, dataclass
from math import inf
from pathlib import Path
from typing import Any

from mutation_sites import Mutant, Sites

REPO = Path(__file__).resolve().parents[1]
KEPT = REPO / "build" / "mutants"
LAST = KEPT / "survivors.json"
NOT_RUN = ("browser", "site", "runtime")
GROUPS = ("figures", "sentences", "thresholds", "other", "other")
ACCEPTED = 0.1
LEAST = 0.3  # seconds: no test costs less, where it has to make what tests share
NEAR = 10  # so much more a test of the chapter, or of the module by name, is worth
MANY = 8  # tests of one file before others are worth as much
KEEPING = re.compile(r"approved|swept|wild|_kept")  # files that hold what is printed and drawn, whatever made it
KEPT_WORTH = 10  # so much more one of their tests is worth
DECLARED = re.compile(r"relations_kept")  # holds what stands once calc is loaded; runs no line of the files it is from
LONGEST = 30.0  # seconds: a test that takes more is left out


# --- which tests run a line ---


def files_tested(tree: Path) -> list[str]:
    """The test files that need no browser and no built site."""
    found = sorted((tree / "tests").rglob("test_*.py"))
    return [
        path.relative_to(tree).as_posix() for path in found if path.relative_to(tree / "tests").parts[0] not in NOT_RUN
    ]


def digest(paths: Sequence[Path], tree: Path) -> str:
    """A hash of names and contents."""
    total = hashlib.sha256()
    for path in paths:
        total.update(path.relative_to(tree).as_posix().encode() + b"\0" + path.read_bytes())
    return total.hexdigest()[:16]


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
        self.saw: Counter[tuple[str, str]] = Counter()  # how many changes of a folder the tests of a file saw
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

    def note_seen(self, found: Verdict) -> None:
        """Count what saw a change."""
        self.saw[found.by.partition("::")[0], found.mutant.file.split("/")[1]] += 1

    def covering(self, mutant: Mutant) -> list[tuple[str, float]]:
        """The tests to run for a change, with their seconds: first those that run most lines of its file for a second,
        those of its own chapter or called like it before others, those that hold all that is printed and drawn, and
        of files whose tests saw many changes; never many of one test file in a row. For what runs while calc is
        loaded, first those that hold what is declared, then those that run anything of the file later on (all, where
        none does)."""
        inner = mutant.file.removeprefix("calc/")
        chapter = inner.split("/")[1].replace("_", "-") if inner.startswith("topics/") else ""
        question = f"[{chapter}.{Path(inner).stem.replace('_', '-')}" if chapter else "\0"
        hit, whole = {}, {}
        for name, index in self.index.items():
            places = {place: 1 << bit for place, bit in index.items() if place[0] == inner}
            hit[name] = sum(places.get((inner, line), 0) for line in set(mutant.lines))
            whole[name] = sum(places.values())
        loaded = self.loaded(mutant)
        wanted = hit if not loaded else whole
        tests = {test: one for test, one in self.tests.items() if one[2] & wanted[one[1]]}
        found: defaultdict[str, list[tuple[float, str]]] = defaultdict(list)
        for test, (cost, name, bits) in (tests or self.tests if loaded else tests).items():
            worth = (1 + (bits & whole[name]).bit_count()) * (4 if bits & hit[name] else 1) / (cost + LEAST)
            worth *= KEPT_WORTH if KEEPING.search(name) else 1
            near = (chapter and chapter in test) or Path(name).stem == f"test_{Path(inner).stem}"
            own = question in test or Path(name).stem.endswith(f"_{Path(inner).stem}")  # tests of a question by its key
            worth *= (NEAR if near else 1) * (NEAR if own else 1)
            worth *= 1 + self.saw[name, inner.split("/")[0]]
            found[name].append((worth, test))
        for test, (_, name, _) in self.tests.items() if loaded else ():
            if DECLARED.search(name):
                found[name] = [*(one for one in found[name] if one[1] != test), (inf, test)]
        order = [
            (worth / (1 + place / MANY), test)
            for one in found.values()
            for place, (worth, test) in enumerate(sorted(one, reverse=True))
        ]
        return [(test, self.tests[test][0]) for _, test in sorted(order, reverse=True)]


def note(names: Sequence[str], jobs: int, tree: Path) -> Notes:
    """Note the lines of the test files that are not noted yet."""
    shared = [
        *(tree / "calc").rglob("*.py"),
        *(tree / "tests").glob("*.json"),
        tree / "site-scripts" / "mutation_plugin.py",
    ]
    shared += [one for one in (tree / "tests").glob("*.py") if not one.name.startswith("test_")]
    common = digest(sorted(shared), tree) + f" {LONGEST:g} "
    stale = []
    for name in names:
        own = common + digest([tree / name, *sorted((tree / name).parent.glob("*.json"))], tree)
        mark = KEPT / f"{name.replace('/', '-')}.digest"
        if not mark.exists() or mark.read_text() != own:
            (KEPT / f"{name.replace('/', '-')}.noted").unlink(missing_ok=True)
            stale.append((name, mark, own))
    if stale:
        print(f"· noting the lines of {len(stale)} test files", flush=True)
        settings = {"files": [name for name, _, _ in stale], "to": str(KEPT), "jobs": jobs, "seconds": LONGEST}
        settings["marks"] = {name: [str(mark), own] for name, mark, own in stale}
        process = subprocess.run(command("note", settings), cwd=tree, env=environment(), stdout=subprocess.DEVNULL)
        for name, _, _ in stale:
            if not (KEPT / f"{name.replace('/', '-')}.noted").exists():
                raise SystemExit(f"The lines of {name} could not be noted (pytest ended with {process.returncode}).")
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
    raise SystemExit(f"The runner failed at {mutant}\n{answer}")


def copy_tree(to: Path) -> Path:
    """A copy of what the tests need."""
    for name in ("calc", "tests", "docs", "site-scripts"):
        shutil.copytree(REPO / name, to / name, ignore=shutil.ignore_patterns("node_modules", "__pycache__"))
    for name in ("pyproject.toml", "mkdocs.yml", "README.md", "DEVELOPERS.md"):
        shutil.copy2(REPO / name, to / name)
    return to


def chosen(count: int, seed: int, within: str, tree: Path) -> list[Mutant]:
    """``count`` changes at random sites, three of five in figures, sentences and thresholds."""
    groups: defaultdict[str, list[Mutant]] = defaultdict(list)
    for path in sorted((tree / "calc").rglob("*.py")):
        if path.relative_to(tree).as_posix().startswith(within):
            for mutant in Sites(path, tree).found:
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
            if (mutant.file, mutant.start) not in places and readable(mutant, tree):
                places.add((mutant.file, mutant.start))
                picked.append(mutant)
    return picked


def readable(mutant: Mutant, tree: Path) -> bool:
    """Whether the file is still Python with the change."""
    source = (tree / mutant.file).read_bytes()
    try:
        ast.parse(source[: mutant.start] + mutant.after.encode() + source[mutant.end :])
    except SyntaxError:
        return False
    return True


def told(mutant: Mutant, tree: Path) -> str:
    """One line: where, what, and what it became, with the line it stands in."""
    text = (tree / mutant.file).read_bytes()
    start = text.rfind(b"\n", 0, mutant.start) + 1
    end = text.find(b"\n", mutant.end)
    line = text[start:end].decode().strip()
    change = f"{mutant.before!r} → {mutant.after!r}"
    return f"{mutant.file}:{mutant.line}: {change} ({mutant.kind}, {mutant.group})\n      {line[:160]}"


class Trial:
    """A run, kept in a folder: the copy of the tree it looks at, and a line for each change that was tried."""

    def __init__(self, folder: Path, anew: bool) -> None:
        if anew and folder.exists():
            shutil.rmtree(folder)
        self.tree = folder / "tree"
        if not (folder / "whole").exists():
            shutil.rmtree(folder, ignore_errors=True)
            folder.mkdir(parents=True)
            copy_tree(self.tree)
            (folder / "whole").touch()
        self.log = folder / "verdicts.jsonl"
        self.lock = threading.Lock()

    def tried(self) -> list[Verdict]:
        """What was found so far."""
        lines = self.log.read_text(encoding="utf-8").splitlines() if self.log.exists() else []
        return [Verdict(**{**found, "mutant": restored(found["mutant"])}) for found in map(json.loads, lines)]

    def keep(self, found: Verdict) -> Verdict:
        """Write a verdict down at once."""
        with self.lock, self.log.open("a", encoding="utf-8") as log:
            log.write(json.dumps(asdict(found)) + "\n")
        return found

    def verdicts(self, mutants: Sequence[Mutant], jobs: int, only: str, seconds: float) -> Iterator[Verdict]:
        """Try every change that was not tried yet, ``jobs`` at a time."""
        before = {one.mutant: one for one in self.tried()}
        yield from (before[one] for one in mutants if one in before)
        left = [one for one in mutants if one not in before]
        if not left:
            return
        files = [name for name in files_tested(self.tree) if re.search(only, name)]
        notes = note(files, jobs, self.tree)
        for one in before.values():
            notes.note_seen(one)
        warm = Server("warm", self.tree, {"files": files, "seconds": seconds})
        cold = Server("cold", self.tree, {"modules": notes.modules, "seconds": seconds})

        def run(numbered: tuple[int, Mutant]) -> Verdict:
            number, mutant = numbered
            tests = notes.covering(mutant)
            if not tests:
                return self.keep(Verdict(mutant, "", 0.0, 0))
            answer = {"word": "unfit"} if notes.loaded(mutant) else warm.attempt(number, mutant, tests)
            if answer["word"] == "unfit":
                answer = cold.attempt(number, mutant, tests)
            found = self.keep(verdict(mutant, answer, len(tests)))
            notes.note_seen(found)
            return found

        try:
            with ThreadPoolExecutor(jobs) as pool:
                yield from pool.map(run, enumerate(left))
        finally:
            warm.close()
            cold.close()


def restored(kept: dict[str, Any]) -> Mutant:
    """A change as it was written down."""
    return Mutant(**{**kept, "lines": tuple(kept["lines"])})


def last_survivors(tree: Path) -> list[Mutant]:
    """The survivors of the last trial, where their line still stands: at the same place of its file, or once in it."""
    sites: dict[str, list[Mutant]] = {}
    found = []
    for kept in json.loads(LAST.read_text(encoding="utf-8")):
        one = restored(kept["mutant"])
        if not (tree / one.file).exists():
            continue
        there = sites.setdefault(one.file, Sites(tree / one.file, tree).found)
        same = [
            site
            for site in there
            if (site.before, site.after, site.kind) == (one.before, one.after, one.kind)
            and told(site, tree).partition("\n")[2] == kept["told"].partition("\n")[2]
        ]
        found += [one] if one in same else same[:1]
    return found


def report(verdicts: Sequence[Verdict], tree: Path) -> None:
    """The counts, and the list of survivors."""
    left = [one for one in verdicts if not one.by]
    print(f"\n{len(left)} of {len(verdicts)} survived ({100 * len(left) / max(1, len(verdicts)):.0f} %)")
    for how in ("time", "import"):
        print(f"seen by {how}: {sum(one.by.startswith(how) for one in verdicts)}")
    for name in ("group", "kind"):
        tried = Counter(getattr(one.mutant, name) for one in verdicts)
        survived = Counter(getattr(one.mutant, name) for one in left)
        print(", ".join(f"{key} {survived[key]}/{tried[key]}" for key in sorted(tried)))
    print("\n".join(told(one.mutant, tree) for one in left))
    LAST.write_text(
        json.dumps([{"mutant": asdict(one.mutant), "told": told(one.mutant, tree)} for one in left]), encoding="utf-8"
    )


def main() -> int:
    """Try the changes, tell of each survivor as it is found, and end with the counts."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    parser.add_argument("--count", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--module", default="calc", help="only files whose path begins so")
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--seconds", type=float, default=20, help="processor time of the tests run for one change")
    parser.add_argument("--tests", default="", metavar="PATTERN", help="only test files whose path fits")
    parser.add_argument("--list", action="store_true", help="print the changes, try none")
    parser.add_argument("--again", action="store_true", help="the survivors of the last trial")
    parser.add_argument("--anew", action="store_true", help="do not go on with a run that was stopped")
    given = parser.parse_args()
    if given.list:
        changes = last_survivors(REPO) if given.again else chosen(given.count, given.seed, given.module, REPO)
        print("\n".join(told(mutant, REPO) for mutant in changes))
        return 0
    KEPT.mkdir(parents=True, exist_ok=True)
    what = re.sub(r"\W+", "-", f"{given.count} {given.seed} {given.module} {given.tests} {given.seconds:g}")
    if len(what) > 100:  # a folder's name has a limit
        what = hashlib.sha256(what.encode()).hexdigest()[:16]
    trial = Trial(KEPT / ("run-again" if given.again else f"run-{what}"), given.anew or given.again)
    changes = last_survivors(trial.tree) if given.again else chosen(given.count, given.seed, given.module, trial.tree)
    verdicts: list[Verdict] = []
    try:
        for number, one in enumerate(trial.verdicts(changes, given.jobs, given.tests, given.seconds), 1):
            verdicts.append(one)
            if one.by:
                print(f"{number:4} seen in {one.seconds:.1f} s by {one.by}", flush=True)
            else:
                shown = told(one.mutant, trial.tree)
                print(f"{number:4} SURVIVED {one.tests} tests, {one.seconds:.0f} s: {shown}", flush=True)
    finally:
        report(verdicts, trial.tree)
    return 0 if sum(not one.by for one in verdicts) < ACCEPTED * len(verdicts) else 1


if __name__ == "__main__":
    sys.exit(main())
