"""Small wrong changes in ``calc``, one at a time: which of them does no test see?

    .venv/bin/python site-scripts/mutate.py --count 200 --seed 1
    .venv/bin/python site-scripts/mutate.py --count 30 --module calc/figures

A change turns a comparison, an arithmetic sign, an ``and``, a ``not``, a truth value, a number, a
word of direction, the two branches of a choice, two arguments, an angle, or drops what a function
returns. Three of five fall on figures, sentences and thresholds. For each, the test files that
run its line (noted once, kept under ``build/mutants``) are run in a copy of the tree, the quickest
tests first, until one fails. A change no test sees is a survivor, whether or not it could be called
equivalent. Ends with 0 when fewer than a tenth survive.

Left out on purpose: docstrings, annotations, decorators, ``strict=`` of zip, and the order of arguments
that have none (``min``, ``max``, ``hypot``, ``isclose``). Browser, site and runtime tests are not run.
"""

from __future__ import annotations

import argparse
import ast
import hashlib
import itertools
import json
import os
import random
import re
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from queue import SimpleQueue

REPO = Path(__file__).resolve().parents[1]
KEPT = REPO / "build" / "mutants"
NOT_RUN = ("browser", "site", "runtime")
LIMIT = 5.0  # times the processor time of the unchanged run
GROUPS = ("figures", "sentences", "thresholds", "other", "other")
ACCEPTED = 0.1

COMPARED: dict[type[ast.cmpop], tuple[str, tuple[str, ...]]] = {
    ast.Lt: ("<", ("<=", ">=")),
    ast.LtE: ("<=", ("<", ">")),
    ast.Gt: (">", (">=", "<=")),
    ast.GtE: (">=", (">", "<")),
    ast.Eq: ("==", ("!=",)),
    ast.NotEq: ("!=", ("==",)),
    ast.In: ("in", ("not in",)),
    ast.NotIn: ("not in", ("in",)),
    ast.Is: ("is", ("is not",)),
    ast.IsNot: ("is not", ("is",)),
}
SIGNS: dict[type[ast.operator], tuple[str, str]] = {
    ast.Add: ("+", "-"),
    ast.Sub: ("-", "+"),
    ast.Mult: ("*", "/"),
    ast.Div: ("/", "*"),
}
WORDS = (
    ("larger", "smaller"),
    ("greater", "less"),
    ("Yes", "No"),
    ("left", "right"),
    ("upwards", "downwards"),
    ("up", "down"),
    ("above", "below"),
    ("opposite to", "in the direction of"),
    ("attract", "repel"),
    ("towards", "away from"),
    ("positive", "negative"),
    ("more", "fewer"),
    ("at least", "at most"),
    ("gain", "lose"),
    ("like", "unlike"),
    ("Like", "Unlike"),
    ("same", "opposite"),
    ("clockwise", "anticlockwise"),
    ("pull", "push"),
    ("stronger", "weaker"),
    ("before", "after"),
    ("first", "last"),
)
NO_ORDER = {"min", "max", "hypot", "isclose", "isinstance", "getattr", "gcd"}
TURNED = {"polar", "Force", "Vector"}
LIMITS = re.compile(r"least|most|low|high|over|under|tolerance|limit|apart|near|early|clear|fraction", re.I)


@dataclass(frozen=True)
class Mutant:
    """One change. start, end: of the bytes replaced. lines: where the tests must come past."""

    file: str
    line: int
    start: int
    end: int
    before: str
    after: str
    kind: str
    group: str
    lines: tuple[int, ...]


class Sites(ast.NodeVisitor):
    """Every change that could be made in one file."""

    def __init__(self, path: Path) -> None:
        self.file = path.relative_to(REPO).as_posix()
        self.source = path.read_bytes()
        starts = [0]
        for line in self.source.splitlines(keepends=True):
            starts.append(starts[-1] + len(line))
        self.starts = starts
        self.found: list[Mutant] = []
        self.above: list[ast.AST] = []
        drawn = re.search(r"figures/|_drawn|_scene|renderings/(svg|tikz|shapes|placing|drawing|layout)", self.file)
        self.usual = "figures" if drawn else "other"
        self.visit(ast.parse(self.source))

    def place(self, node: ast.AST) -> tuple[int, int]:
        """The bytes of a node."""
        at = self.starts
        return (
            at[node.lineno - 1] + node.col_offset,  # type: ignore[attr-defined]
            at[node.end_lineno - 1] + node.end_col_offset,  # type: ignore[attr-defined]
        )

    def text(self, node: ast.AST) -> str:
        """The source of a node."""
        start, end = self.place(node)
        return self.source[start:end].decode()

    def add(self, node: ast.AST, span: tuple[int, int], after: str, kind: str, group: str = "") -> None:
        """Note one change."""
        start, end = span
        statement = next((one for one in reversed([*self.above, node]) if isinstance(one, ast.stmt)), node)
        last = statement.end_lineno if not hasattr(statement, "body") else node.end_lineno  # type: ignore[attr-defined]
        before = self.source[start:end].decode()
        line = self.source[:start].count(b"\n") + 1
        lines = tuple(range(statement.lineno, last + 1))  # type: ignore[attr-defined]
        self.found.append(Mutant(self.file, line, start, end, before, after, kind, group or self.usual, lines))

    def operator(self, left: ast.AST, right: ast.AST, sign: str) -> tuple[int, int] | None:
        """The bytes of the sign between two operands."""
        start, end = self.place(left)[1], self.place(right)[0]
        words = r"\s+".join(map(re.escape, sign.split()))
        found = re.search(rf"(?<![=<>!]){words}(?![=<>])", self.source[start:end].decode())
        if not found:
            return None
        ahead = len(self.source[start:end].decode()[: found.start()].encode())
        return start + ahead, start + ahead + len(found[0].encode())

    def visit(self, node: ast.AST) -> None:
        """Look at a node, then at what is in it."""
        handler = getattr(self, f"see_{type(node).__name__}", None)
        if handler:
            handler(node)
        self.above.append(node)
        for name, value in ast.iter_fields(node):
            if name in ("annotation", "returns", "decorator_list", "type_params", "format_spec"):
                continue
            for child in value if isinstance(value, list) else [value]:
                if isinstance(child, ast.AST) and not isinstance(child, ast.TypeAlias):
                    self.visit(child)
        self.above.pop()

    def see_Compare(self, node: ast.Compare) -> None:
        """A comparison moved by its edge, or turned round."""
        sides = [node.left, *node.comparators]
        for left, sign, right in zip(sides, node.ops, sides[1:], strict=False):
            old, news = COMPARED[type(sign)]
            span = self.operator(left, right, old)
            number = any(isinstance(n, ast.Constant) and isinstance(n.value, float | int) for n in (left, right))
            named = any(isinstance(n, ast.Name | ast.Attribute) and LIMITS.search(self.text(n)) for n in (left, right))
            ordered = old[0] in "<>"
            for new in news if span else ():
                group = "thresholds" if ordered and (number or named) else self.guard()
                self.add(node, span, new, "comparison", group)  # type: ignore[arg-type]

    def guard(self) -> str:
        """'sentences' where the choice is one between words."""
        for one in reversed(self.above):
            if isinstance(one, ast.IfExp):
                return "sentences" if words_in(one.body) and words_in(one.orelse) else ""
            if isinstance(one, ast.stmt):
                break
        return ""

    def see_BinOp(self, node: ast.BinOp) -> None:
        """+ for −, × for ÷."""
        if type(node.op) in SIGNS and not words_in(node.left) and not words_in(node.right):
            old, new = SIGNS[type(node.op)]
            span = self.operator(node.left, node.right, old)
            if span:
                self.add(node, span, new, "arithmetic")

    def see_BoolOp(self, node: ast.BoolOp) -> None:
        """``and`` for ``or``."""
        old, new = ("and", "or") if isinstance(node.op, ast.And) else ("or", "and")
        for left, right in zip(node.values, node.values[1:], strict=False):
            span = self.operator(left, right, old)
            if span:
                self.add(node, span, new, "and/or", self.guard())

    def see_UnaryOp(self, node: ast.UnaryOp) -> None:
        """A ``not`` or a minus dropped."""
        kind = {ast.Not: "not dropped", ast.USub: "minus dropped"}.get(type(node.op))
        if kind:
            self.add(node, (self.place(node)[0], self.place(node.operand)[0]), "", kind, self.guard())

    def see_Constant(self, node: ast.Constant) -> None:
        """A truth value turned, a number moved, a word of direction turned."""
        parent = self.above[-1]
        if isinstance(parent, ast.Expr) or (isinstance(parent, ast.keyword) and parent.arg == "strict"):
            return
        if isinstance(node.value, bool):
            self.add(node, self.place(node), str(not node.value), "truth value")
        elif isinstance(node.value, int | float):
            self.number(node, parent)
        elif isinstance(node.value, str) and not any(
            isinstance(a, ast.Subscript) and self.text(a).startswith("Literal") for a in self.above
        ):
            self.words(node)

    def number(self, node: ast.Constant, parent: ast.AST) -> None:
        """Another number in place of this one."""
        text = self.text(node)
        edge = isinstance(parent, ast.Compare) or (isinstance(parent, ast.keyword) and LIMITS.search(parent.arg or ""))
        top = isinstance(parent, ast.Assign | ast.AnnAssign) and len(self.above) < 4
        group = "thresholds" if edge or top or self.file.endswith("constants.py") else ""
        mantissa, power, exponent = text.partition("e")
        if text in ("1e-6", "1e-9", "1e-12"):
            self.add(node, self.place(node), "0.1", "tolerance", "thresholds")
        elif re.fullmatch(r"[\d._]+", mantissa):
            digits = [i for i, sign in enumerate(mantissa) if sign.isdigit()]
            last = digits[-1]
            if mantissa[last] == "0" and "." in mantissa and mantissa.rstrip("0")[-1] != ".":
                last = max(i for i in digits if mantissa[i] != "0")
            new = str((int(mantissa[last]) + 1) % 10)
            changed = mantissa[:last] + new + mantissa[last + 1 :] + power + exponent
            self.add(node, self.place(node), changed, "number", group)
        if self.usual == "figures" and node.value in (0.0, 90.0, 180.0, 270.0) and "." in text:
            turned = str((float(node.value) + 180) % 360)
            self.add(node, self.place(node), turned, "turned by 180°")

    def words(self, node: ast.Constant) -> None:
        """A word of direction or size in a sentence, turned into its opposite."""
        start, end = self.place(node)
        # A piece of an f-string has no quotes of its own, and may hold escapes: look at the bytes.
        source = self.source[start:end].decode()
        for pair in WORDS:
            for old, new in (pair, pair[::-1]):
                for found in re.finditer(rf"(?<![\w-]){old}(?![\w-]|s\b)", source):
                    ahead = start + len(source[: found.start()].encode())
                    self.add(node, (ahead, ahead + len(old.encode())), new, "word", "sentences")

    def see_IfExp(self, node: ast.IfExp) -> None:
        """The two branches of a choice, each in the other's place."""
        body, test, other = self.text(node.body), self.text(node.test), self.text(node.orelse)
        both = words_in(node.body) and words_in(node.orelse)
        if "\n" in body + other and not both:
            return
        self.add(
            node, self.place(node), f"({other}) if ({test}) else ({body})", "branches", "sentences" if both else ""
        )

    def see_Call(self, node: ast.Call) -> None:
        """Two arguments in each other's place; an angle turned round."""
        name = self.text(node.func).rpartition(".")[2]
        plain = [one for one in node.args if not isinstance(one, ast.Starred)]
        if len(plain) == len(node.args) >= 2 and name not in NO_ORDER:
            for first, second in itertools.pairwise(plain):
                span = (self.place(first)[0], self.place(second)[1])
                between = self.source[self.place(first)[1] : self.place(second)[0]].decode()
                if self.text(first) != self.text(second):
                    self.add(first, span, self.text(second) + between + self.text(first), "argument order")
        if name in TURNED and len(plain) == 3:
            self.add(plain[2], self.place(plain[2]), f"({self.text(plain[2])}) + 180", "turned by 180°", "figures")
        for one in node.keywords:
            if one.arg and one.arg.endswith("_deg"):
                self.add(
                    one.value, self.place(one.value), f"({self.text(one.value)}) + 180", "turned by 180°", "figures"
                )

    def see_Return(self, node: ast.Return) -> None:
        """What a function returns, dropped."""
        if node.value is not None and self.text(node.value) != "None":
            self.add(node, self.place(node.value), "None", "return dropped")


def words_in(node: ast.AST) -> bool:
    """Whether a node is text."""
    if isinstance(node, ast.BinOp):
        return words_in(node.left) or words_in(node.right)
    return isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str))


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


@dataclass(frozen=True)
class Covered:
    """What one test file runs: lines by file of calc; seconds of processor time; seconds by test."""

    lines: dict[str, list[int]]
    seconds: float
    durations: dict[str, float]


def covered(name: str, calc_digest: str) -> Covered:
    """The lines one test file runs, noted now or earlier."""
    text = (REPO / name).read_text(encoding="utf-8")
    data = [path for path in sorted((REPO / "tests").rglob("*.json")) if path.name in text]
    shared = [REPO / "tests" / "strategies.py", REPO / "tests" / "cases.py"]
    own = digest([REPO / name, *shared, *data])
    path = KEPT / f"{name.replace('/', '-')}-{calc_digest}-{own}.json"
    if not path.exists():
        print(f"· noting the lines of {name}", flush=True)
        for old in KEPT.glob(f"{name.replace('/', '-')}-*.json"):
            old.unlink()
        raw = KEPT / f"noted-{os.getpid()}"
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        done = subprocess.run(
            pytest_command([name]),
            cwd=REPO,
            env=environment(BOOKLET_LINES_TO=str(raw)),
            capture_output=True,
            text=True,
        )
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        if done.returncode != 0:
            raise SystemExit(f"{name} fails without any change:\n{done.stdout[-2000:]}")
        noted = json.loads(raw.read_text(encoding="utf-8"))
        raw.unlink()
        noted["seconds"] = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
        path.write_text(json.dumps(noted), encoding="utf-8")
    noted = json.loads(path.read_text(encoding="utf-8"))
    return Covered(noted["lines"], noted["seconds"], noted["durations"])


def pytest_command(names: Sequence[str]) -> list[str]:
    """Run these test files, ending at the first failure."""
    return [
        sys.executable,
        "-m",
        "pytest",
        "-x",
        "-q",
        "--tb=line",
        "-p",
        "no:cacheprovider",
        "-p",
        "no:xdist",
        "-p",
        "mutation_plugin",
        "-o",
        "timeout=0",
        *names,
    ]


def environment(**more: str) -> dict[str, str]:
    """The environment of a test run: no byte code written, no failing example made smaller."""
    return {
        **os.environ,
        "PYTHONPATH": "site-scripts",
        "PYTHONDONTWRITEBYTECODE": "1",
        "BOOKLET_HYPOTHESIS": "mutants",
        **more,
    }


# --- trying one ---


@dataclass(frozen=True)
class Verdict:
    """What came of a change. by: the test that saw it, 'time', or '' for a survivor."""

    mutant: Mutant
    by: str
    seconds: float
    files: int


def attempt(mutant: Mutant, tree: Path, tests: dict[str, Covered], durations: Path, budget: float) -> Verdict:
    """Make one change in a copy of the tree and run what covers it, the cheapest files first, as far as the
    budget goes."""
    inner = mutant.file.removeprefix("calc/")
    lines = set(mutant.lines)
    names: list[str] = []
    for name, one in sorted(tests.items(), key=lambda item: item[1].seconds):
        fits = not budget or sum(tests[n].seconds for n in names) + one.seconds <= budget
        if fits and lines & set(one.lines.get(inner, ())):
            names.append(name)
    if not names:
        return Verdict(mutant, "", 0.0, 0)
    allowed = LIMIT * sum(tests[name].seconds for name in names) + 10
    path = tree / mutant.file
    source, stamp = path.read_bytes(), path.stat().st_mtime
    began = time.monotonic()
    try:
        path.write_bytes(source[: mutant.start] + mutant.after.encode() + source[mutant.end :])
        os.utime(path, (stamp + 1000, stamp + 1000))  # not the time the byte code was made for
        done = subprocess.run(
            pytest_command(names),
            cwd=tree,
            env=environment(BOOKLET_DURATIONS=str(durations)),
            capture_output=True,
            text=True,
            preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_CPU, (int(allowed), int(allowed) + 5)),
        )
    finally:
        path.write_bytes(source)
        os.utime(path, (stamp, stamp))
    took = time.monotonic() - began
    if done.returncode == 0:
        return Verdict(mutant, "", took, len(names))
    if done.returncode < 0:
        return Verdict(mutant, "time", took, len(names))
    seen = re.search(r"^(?:FAILED|ERROR) (\S+)", done.stdout, re.M)
    return Verdict(mutant, seen[1] if seen else f"ended with {done.returncode}", took, len(names))


def copy_tree(to: Path) -> Path:
    """A copy of what the tests need, with what is only read linked."""
    for name in ("calc", "tests", "docs", "site-scripts"):
        shutil.copytree(REPO / name, to / name, ignore=shutil.ignore_patterns("node_modules"))
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


def trial(mutants: Sequence[Mutant], jobs: int, budget: float, only: str) -> Iterator[Verdict]:
    """Try every change, ``jobs`` at a time."""
    KEPT.mkdir(parents=True, exist_ok=True)
    calc_digest = digest(sorted((REPO / "calc").rglob("*.py")))
    tests = {name: covered(name, calc_digest) for name in files_tested() if re.search(only, name)}
    with tempfile.TemporaryDirectory(prefix="mutants-") as folder:
        durations = Path(folder) / "durations.json"
        every = {test: seconds for one in tests.values() for test, seconds in one.durations.items()}
        durations.write_text(json.dumps(every), encoding="utf-8")
        trees: SimpleQueue[Path] = SimpleQueue()
        for number in range(jobs):
            trees.put(copy_tree(Path(folder) / str(number)))

        def run(mutant: Mutant) -> Verdict:
            tree = trees.get()
            try:
                return attempt(mutant, tree, tests, durations, budget)
            finally:
                trees.put(tree)

        with ThreadPoolExecutor(jobs) as pool:
            yield from pool.map(run, mutants)


def main() -> int:
    """Try the changes, tell of each survivor as it is found, and end with the counts."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    parser.add_argument("--count", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--module", default="calc", help="only files whose path begins so")
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument(
        "--budget",
        type=float,
        default=0.0,
        help="seconds of tests a change, dear test files left out (0: all that cover it)",
    )
    parser.add_argument("--tests", default="", metavar="PATTERN", help="only test files whose path fits")
    parser.add_argument("--list", action="store_true", help="print the changes, try none")
    given = parser.parse_args()
    mutants = chosen(given.count, given.seed, given.module)
    if given.list:
        print("\n".join(told(mutant) for mutant in mutants))
        return 0
    verdicts: list[Verdict] = []
    for number, verdict in enumerate(trial(mutants, given.jobs, given.budget, given.tests), 1):
        verdicts.append(verdict)
        if verdict.by:
            print(f"{number:4} seen in {verdict.seconds:.0f} s by {verdict.by}", flush=True)
        else:
            none = "" if verdict.files else " (no test runs this line)"
            print(f"{number:4} SURVIVED{none} {told(verdict.mutant)}", flush=True)
    left = [verdict for verdict in verdicts if not verdict.by]
    print(f"\n{len(left)} of {len(verdicts)} survived ({100 * len(left) / max(1, len(verdicts)):.0f} %)")
    for name in ("group", "kind"):
        tried = Counter(getattr(verdict.mutant, name) for verdict in verdicts)
        survived = Counter(getattr(verdict.mutant, name) for verdict in left)
        print(", ".join(f"{key} {survived[key]}/{tried[key]}" for key in sorted(tried)))
    print("\n".join(told(verdict.mutant) for verdict in left))
    return 0 if len(left) < ACCEPTED * len(verdicts) else 1


if __name__ == "__main__":
    sys.exit(main())
