"""The processes in which ``mutate.py`` runs tests: one that has collected them, one that has loaded no ``calc`` yet.

    python site-scripts/mutation_plugin.py note|warm|cold SETTINGS

Each change is tried in a fork, so that nothing is loaded twice and nothing of one change reaches the next.
``warm`` puts the changed code into the functions that stand; that is exact for lines that did not run while
``calc`` and the tests were loaded. For those, ``cold`` loads ``calc`` and the tests anew with the change.
``note`` writes down which lines each test runs, counting those of a kept result for every test that uses it.
"""

from __future__ import annotations

import functools
import gc
import importlib
import importlib.machinery
import json
import os
import pickle
import resource
import signal
import sys
import time
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from types import CodeType, FunctionType, MethodType
from typing import Any

import pytest

TREE = str(Path.cwd() / "calc") + os.sep
TOOL = sys.monitoring.COVERAGE_ID
MEMORY = 4 << 30  # bytes: a change that fills the memory fails its test, not the machine
# A test may take so many times its noted processor time, and so many seconds more.
SLOWER, GRACE = 10.0, 20.0
TOGETHER = 3  # test files loaded at a time with a change of what runs while calc is loaded
FULLY = 5  # runs of a remembering function of which every line is noted, also those that ran just before

OPTIONS = ["-q", "-s", "--tb=no", "--assert=plain", "-o", "timeout=0"] + [
    part for name in ("cacheprovider", "xdist") for part in ("-p", f"no:{name}")
]


def same_change(source: bytes, change: dict[str, Any]) -> bytes:
    """The source with the change made."""
    return source[: change["start"]] + change["after"].encode() + source[change["end"] :]


# --- running tests until one fails ---


class Failed:
    """Hears of failures."""

    def __init__(self) -> None:
        self.seen = False

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """A test, or what it needs, failed."""
        self.seen = self.seen or report.failed


def run_until_seen(session: pytest.Session, change: dict[str, Any], tell: Callable[[str], None]) -> None:
    """Run the wanted tests (id, noted seconds) in their order, ending at the first failure or when the time is spent.

    A result that tests share is made by the first that needs it, so the time is measured, not added up.
    """
    wanted: Sequence[tuple[str, float]] = change["tests"]
    by_id = {item.nodeid: item for item in session.items}
    wanted = [one for one in wanted if one[0] in by_id]  # a change may give a test another name
    failed = Failed()
    session.config.pluginmanager.register(failed)
    items = [by_id[name] for name, _ in wanted]
    for (name, seconds), item, following in zip(wanted, items, [*items[1:], None], strict=True):
        if time.process_time() > change["seconds"]:
            tell("end spent")
            return
        tell(f"at {name}")
        signal.setitimer(signal.ITIMER_PROF, SLOWER * seconds + GRACE)  # ends this process when it runs out
        item.ihook.pytest_runtest_protocol(item=item, nextitem=following)
        if failed.seen:
            tell(f"seen {name}")
            return
    tell("end")


# --- forks ---


def serve(
    attempt: Callable[[dict[str, Any], Callable[[str], None]], None], asked: int, answered: int, seconds: float
) -> None:
    """Try what is asked, each in a fork with another that waits for it and answers."""
    signal.signal(signal.SIGCHLD, signal.SIG_IGN)
    with os.fdopen(asked, encoding="utf-8") as requests:
        for line in requests:
            if os.fork() == 0:
                try:
                    answer = supervised({**json.loads(line), "seconds": seconds}, attempt)
                    os.write(answered, (json.dumps(answer) + "\n").encode())
                finally:
                    os._exit(0)


def supervised(change: dict[str, Any], attempt: Callable[[dict[str, Any], Callable[[str], None]], None]) -> Any:
    """What came of a change: the last word of the process that tried it, the test it was at, and its end."""
    signal.signal(signal.SIGCHLD, signal.SIG_DFL)
    heard, said = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(heard)

        def tell(text: str) -> None:
            os.write(said, (text.replace("\n", " ")[:500] + "\n").encode())

        try:
            resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
            attempt(change, tell)
        except BaseException as problem:
            tell(f"broken {problem!r}")
        finally:
            os._exit(0)
    os.close(said)
    at, word = "", ""
    with os.fdopen(heard, encoding="utf-8") as words:
        for line in words:
            first, _, rest = line.rstrip("\n").partition(" ")
            if first == "at":
                at = rest
            else:
                word = line.rstrip("\n")
    _, status, usage = os.wait4(child, 0)
    ended = os.WTERMSIG(status) if os.WIFSIGNALED(status) else 0
    return {"id": change["id"], "word": word, "at": at, "signal": ended, "seconds": usage.ru_utime + usage.ru_stime}


# --- warm: the changed code put into the functions that stand ---


def inner_codes(code: CodeType) -> Iterator[CodeType]:
    """A code object and those in it, in order."""
    yield code
    for one in code.co_consts:
        if isinstance(one, CodeType):
            yield from inner_codes(one)


def functions_by_code() -> dict[CodeType, list[FunctionType]]:
    """Every function of calc that stands."""
    gc.unfreeze()  # what the tests have set aside is not found
    found: defaultdict[CodeType, list[FunctionType]] = defaultdict(list)
    for one in gc.get_objects():
        if type(one) is FunctionType and one.__code__.co_filename.startswith(TREE):
            found[one.__code__].append(one)
    return found


def put_in(change: dict[str, Any], functions: dict[CodeType, list[FunctionType]]) -> bool:
    """Give the functions of a file their changed code; False when that is not possible."""
    path = Path(change["file"]).resolve()
    source = path.read_bytes()
    before, after = (compile(text, str(path), "exec") for text in (source, same_change(source, change)))
    old, new = list(inner_codes(before)), list(inner_codes(after))
    if [one.co_qualname for one in old] != [one.co_qualname for one in new]:
        return False
    if any(one.co_freevars != other.co_freevars for one, other in zip(old, new, strict=True)):
        return False
    standing: defaultdict[tuple[str, int], list[CodeType]] = defaultdict(list)
    for code in functions:
        if code.co_filename == str(path):
            standing[code.co_qualname, code.co_firstlineno].append(code)
    changed = 0
    for one, other in zip(old[1:], new[1:], strict=True):
        if one == other:
            continue
        for code in standing[one.co_qualname, one.co_firstlineno]:
            if code == one:
                for function in functions[code]:
                    function.__code__ = other
                    changed += 1
    return changed > 0


class Warm:
    """A session that has collected every test and tries changes when it should run them."""

    def __init__(self, asked: int, answered: int, seconds: float) -> None:
        self.asked, self.answered, self.seconds = asked, answered, seconds

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Serve, in place of running the tests."""
        functions = functions_by_code()
        gc.collect()
        gc.freeze()

        def attempt(change: dict[str, Any], tell: Callable[[str], None]) -> None:
            if put_in(change, functions):
                run_until_seen(session, change, tell)
            else:
                tell("unfit")

        serve(attempt, self.asked, self.answered, self.seconds)
        return True


# --- cold: calc and the tests loaded with the change ---


class Loaded:
    """A session that loads the files and runs the wanted tests."""

    def __init__(self, change: dict[str, Any], tell: Callable[[str], None]) -> None:
        self.change, self.tell, self.refused = change, tell, ""

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        """A test file that cannot be loaded."""
        if report.failed and not self.refused:
            self.refused = f"import {report.nodeid}: {str(report.longrepr).strip().splitlines()[-1]}"

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Run them."""
        if self.refused:
            self.tell(self.refused)
        else:
            run_until_seen(session, self.change, self.tell)
        return True


def load_and_run(change: dict[str, Any], tell: Callable[[str], None]) -> None:
    """Load calc with the change, then the test files, and run the tests."""
    path = str(Path(change["file"]).resolve())
    source = same_change(Path(path).read_bytes(), change)
    usual = importlib.machinery.SourceFileLoader.get_code

    def get_code(self: Any, fullname: str) -> Any:
        return compile(source, path, "exec", dont_inherit=True) if self.path == path else usual(self, fullname)

    importlib.machinery.SourceFileLoader.get_code = get_code  # type: ignore[method-assign]
    files = list(dict.fromkeys(name.partition("::")[0] for name, _ in change["tests"]))
    for few in (files[n : n + TOGETHER] for n in range(0, len(files), TOGETHER)):
        tests = [one for one in change["tests"] if one[0].partition("::")[0] in few]
        said: list[str] = []
        session = Loaded({**change, "tests": tests}, lambda text, said=said: (said.append(text), tell(text))[1])
        code = pytest.main([*OPTIONS, *few], plugins=[session])
        if code == pytest.ExitCode.USAGE_ERROR:  # the conftest of the tests could not be loaded
            tell("import conftest")
        elif code == pytest.ExitCode.INTERNAL_ERROR:
            tell("broken pytest ended with an internal error")
        if not said or said[-1] != "end":
            return


# --- noting ---

Place = tuple[str, int]  # a file of calc, and a line
_running: list[set[Place]] = [set()]
_owed = [0.0]  # seconds that a test did not take because another had made what it uses
_places: dict[Place, Place] = {}


def _line(code: CodeType, number: int) -> object:
    if code.co_filename.startswith(TREE):
        place = code.co_filename.removeprefix(TREE), number
        _running[-1].add(_places.setdefault(place, place))
    return sys.monitoring.DISABLE  # once is enough


class Kept:
    """``functools.cache`` of a function of calc: every use counts as the lines of all its runs so far."""

    def __init__(self, function: Callable[..., Any]) -> None:
        functools.update_wrapper(self, function)
        self.function = function
        self.kept: dict[Any, Any] = {}
        self.lines: set[Place] = set()
        self.runs = 0

    def __call__(self, *args: Any, **named: Any) -> Any:
        key = (args, tuple(sorted(named.items())))
        if key in self.kept:
            _running[-1].update(self.lines)
            return self.kept[key]
        _running.append(set())
        self.runs += 1
        if self.runs <= FULLY:
            sys.monitoring.restart_events()
        try:
            self.kept[key] = self.function(*args, **named)
        finally:
            self.lines |= _running.pop()
            _running[-1].update(self.lines)
        return self.kept[key]

    def cache_clear(self) -> None:
        """Forget."""
        self.kept.clear()


class Remembered:
    """``functools.cache`` of a function of the tests, that also keeps the lines which made a result."""

    def __init__(self, function: Callable[..., Any]) -> None:
        functools.update_wrapper(self, function)
        self.function = function
        self.kept: dict[Any, tuple[Any, set[Place], float]] = {}

    def __call__(self, *args: Any, **named: Any) -> Any:
        key = (args, tuple(sorted(named.items())))
        if key in self.kept:
            value, lines, seconds = self.kept[key]
            _owed[0] += seconds  # a test that runs alone has to make it
            _running[-1].update(lines)
            return value
        _running.append(set())
        sys.monitoring.restart_events()
        began = processor_time()
        try:
            value = self.function(*args, **named)
            self.kept[key] = value, _running[-1], processor_time() - began
        finally:
            lines = _running.pop()
            _running[-1].update(lines)
        return value

    def __get__(self, owner: object, kind: type | None = None) -> Any:
        return self if owner is None else MethodType(self, owner)

    def cache_clear(self) -> None:
        """Forget."""
        self.kept.clear()


def noting_caches() -> None:
    """Let the caches of the tests and of calc keep lines."""
    usual = functools.lru_cache

    def lru_cache(maxsize: Any = 128, typed: bool = False) -> Any:
        def wrap(function: Any) -> Any:
            owner = function.__module__.partition(".")[0]
            if owner == "tests":
                return Remembered(function)
            return Kept(function) if owner == "calc" else usual(size, typed)(function)

        size = 128 if callable(maxsize) else maxsize
        return wrap(maxsize) if callable(maxsize) else wrap

    functools.lru_cache = lru_cache  # type: ignore[assignment]
    functools.cache = lambda function: lru_cache(None)(function)  # type: ignore[assignment]


def processor_time() -> float:
    """Seconds, with those of ended children."""
    used = [resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    return sum(one.ru_utime + one.ru_stime for one in used)


class TooDearError(BaseException):
    """A test that takes longer than all the tests of one change may; no ``except Exception`` holds it up."""


class Noting:
    """A session that writes down the lines of each test, a file of tests at a time, each in a fork."""

    def __init__(self, settings: dict[str, Any]) -> None:
        self.to, self.jobs = Path(settings["to"]), settings["jobs"]
        self.seconds: float = settings["seconds"]
        self.marks: dict[str, list[str]] = settings["marks"]
        self.refused = ""

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        """A test file that cannot be loaded."""
        if report.failed:
            self.refused = f"{report.nodeid}: {report.longrepr}"

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Note, in place of running the tests."""
        if self.refused:
            raise SystemExit(self.refused)
        imported = set(_running[0])
        sys.monitoring.set_events(TOOL, 0)
        for code in functions_by_code():
            for one in inner_codes(code):
                sys.monitoring.set_local_events(TOOL, one, sys.monitoring.events.LINE)
        files: defaultdict[str, list[pytest.Item]] = defaultdict(list)
        for item in session.items:
            files[item.nodeid.partition("::")[0]].append(item)
        modules = [
            name
            for name, module in sys.modules.items()
            if (place := str(getattr(getattr(module, "__spec__", None), "origin", None) or ""))
            and (not place.startswith(str(Path.cwd())) or "site-packages" in place)
        ]
        running = 0
        for name, items in files.items():
            if running == self.jobs:
                os.wait()
                running -= 1
            if os.fork() == 0:
                try:
                    self.note(session, name, items, imported, modules)
                except BaseException as problem:
                    print(f"noting {name}: {problem!r}", file=sys.stderr)
                finally:
                    os._exit(0)
            running += 1
        for _ in range(running):
            os.wait()
        return True

    def note(
        self,
        session: pytest.Session,
        name: str,
        items: Sequence[pytest.Item],
        imported: set[Place],
        modules: list[str],
    ) -> None:
        """The lines of each test of one file."""
        failed = Failed()
        session.config.pluginmanager.register(failed)
        index: dict[Place, int] = {}
        tests: dict[str, tuple[float, int]] = {}
        shared = 0

        def too_dear(*_: object) -> None:
            raise TooDearError

        signal.signal(signal.SIGPROF, too_dear)
        for item, following in zip(items, [*items[1:], None], strict=True):
            _running[:] = [set()]
            _owed[0] = 0.0
            sys.monitoring.restart_events()
            began = processor_time()
            signal.setitimer(signal.ITIMER_PROF, self.seconds)
            item.ihook.pytest_runtest_protocol(item=item, nextitem=following)
            signal.setitimer(signal.ITIMER_PROF, 0)
            seconds = processor_time() - began
            if failed.seen:  # it can tell nothing of a change
                why = f"takes {seconds:.0f} s" if seconds >= self.seconds else "fails without any change"
                print(f"· {item.nodeid} {why}: left out", file=sys.stderr, flush=True)
                failed.seen = False
                continue
            bits = 0
            for place in _running[0]:
                bits |= 1 << index.setdefault(place, len(index))
            tests[item.nodeid] = seconds + _owed[0], bits
            shared |= bits
        if 'scope="' in Path(name).read_text(encoding="utf-8"):  # what one test made others use as well
            tests = {test: (seconds, shared) for test, (seconds, _) in tests.items()}
        path = self.to / (name.replace("/", "-") + ".noted")
        noted = {"tests": tests, "index": index, "imported": imported, "modules": modules}
        path.with_suffix(".part").write_bytes(pickle.dumps(noted, pickle.HIGHEST_PROTOCOL))
        path.with_suffix(".part").rename(path)
        mark, own = self.marks[name]
        Path(mark).write_text(own, encoding="utf-8")


def main(mode: str, settings: dict[str, Any]) -> int:
    """Note, or serve."""
    sys.path.insert(0, str(Path.cwd()))
    if mode == "cold":
        for name in settings["modules"]:
            try:
                importlib.import_module(name)
            except Exception:
                continue
        gc.freeze()
        serve(load_and_run, settings["asked"], settings["answered"], settings["seconds"])
        return 0
    if mode == "warm":
        return int(
            pytest.main(
                [*OPTIONS, *settings["files"]],
                plugins=[Warm(settings["asked"], settings["answered"], settings["seconds"])],
            )
        )
    noting_caches()
    sys.monitoring.use_tool_id(TOOL, "mutate")
    sys.monitoring.register_callback(TOOL, sys.monitoring.events.LINE, _line)
    sys.monitoring.set_events(TOOL, sys.monitoring.events.LINE)
    return int(pytest.main([*OPTIONS, *settings["files"]], plugins=[Noting(settings)]))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], json.loads(sys.argv[2])))
