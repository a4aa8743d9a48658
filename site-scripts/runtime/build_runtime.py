"""Build the page runtime: Python, the calc package and a memory image of both, ready to restore.

Writes assets/runtime/ of the built site. One content hash names all files but ``loader.js``, so
files of two builds never mix. Each big file is there twice: gzip for a server (decoded by the
page, so a server that cannot compress stays as small) and base64 of the same gzip inside a
classic script, because a page opened from disk may load nothing else.
"""

from __future__ import annotations

import base64
import gzip
import hashlib
import io
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import zipfile
from collections.abc import Mapping
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

HERE = Path(__file__).resolve().parent
if str(HERE.parent) not in sys.path:
    sys.path.insert(0, str(HERE.parent))

from pyodide_lock import PackageSpec, PyodideLockSpec  # noqa: E402

from runtime.slim_core import slim_pyodide  # noqa: E402
from toolbox import NODE_MODULES, REPO, SetupError, digest, find_node, run, say  # noqa: E402

REMEDY = "Run `python3 site-scripts/test.py` once more; if it fails again, report this output."
# Python of the runtime; byte code made by a host of another version would not load there.
RUNTIME_PYTHON = (3, 13)
# Standard-library modules that nothing imports by name but Python reaches for at run time:
# strptime's tables, the two other codecs a program without files may meet, text of an exception.
KEEP = ("_strptime", "calendar", "encodings.ascii", "encodings.latin_1", "traceback")
# Oldest browsers with everything the runtime needs (DecompressionStream is the youngest part).
BROWSERS = "chrome112,firefox113,safari16.4"
VERSION = "1.0"
_IMPORT = re.compile(r"^[ \t]*(?:from ([\w]+(?:\.\w+)*) import |import (\w.*))", re.MULTILINE)
FILES = {
    "engine": "engine-{}.js",
    "worker": "worker-{}.js",
    "core": "core-{}.wasm.gz",
    "memory": "memory-{}.bin.gz",
    "stdlib": "stdlib-{}.zip.gz",
    "wheel": "calc-{}.whl.gz",
    "lock": "lock-{}.json",
}
DISK = {name: f"disk-{name}-{{}}.js" for name in ("core", "memory", "stdlib", "wheel", "lock")}


def build_runtime(
    site_dir: Path,
    cache_dir: Path,
    *,
    package_dir: Path = REPO / "calc",
    node_modules: Path = NODE_MODULES,
) -> None:
    """Write the runtime into site_dir/assets/runtime, working only if an input has changed; see `made_runtime`."""
    made = made_runtime(cache_dir, package_dir=package_dir, node_modules=node_modules)
    target = site_dir / "assets" / "runtime"
    if target.exists():
        shutil.rmtree(target)
    shutil.copytree(made, target)


def made_runtime(cache_dir: Path, *, package_dir: Path = REPO / "calc", node_modules: Path = NODE_MODULES) -> Path:
    """Return the folder below cache_dir with the runtime of these inputs, made if it is not there.

    package_dir: a package named ``calc`` with ``calc.desk.answer(str) -> str``.
    Raises SetupError with a remedy when a tool is missing or fails.
    """
    pyodide = node_modules / "pyodide"
    if not pyodide.is_dir():
        raise SetupError(f"{pyodide} is missing. {REMEDY}")
    tools = [node_modules / name / "package.json" for name in ("pyodide", "esbuild")]
    key = digest([package_dir, HERE, *tools], extra=f"{sys.version_info[:2]}")[:20]
    made = cache_dir / f"runtime-{key}"
    if not made.is_dir():
        say("Building the page runtime: Python, calc and a memory image of both (10 s or so)")
        cache_dir.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(dir=cache_dir) as scratch:
            finished = _make(Path(scratch), package_dir, pyodide, node_modules)
            if not made.is_dir():  # another build may have been quicker
                finished.replace(made)
        for old in cache_dir.glob("runtime-*"):
            if old != made:
                shutil.rmtree(old)
    return made


def _make(scratch: Path, package_dir: Path, published: Path, node_modules: Path) -> Path:
    pyodide = scratch / "pyodide"
    data_end = slim_pyodide(published, pyodide)
    source_wheel = build_wheel(package_dir, scratch)
    lock, wheel = lock_and_compile(source_wheel, pyodide, scratch / "locked")
    stdlib, image = scratch / "stdlib.zip", scratch / "image.bin"
    plan = {
        "pyodide": str(pyodide),
        "dataEnd": data_end,
        "wheel": str(wheel),
        "sourceWheel": str(source_wheel),
        "lock": str(lock),
        "named": " ".join(named_imports(package_dir)),
        "keep": KEEP,
        "prepare": [str(HERE / "prepare.py"), str(HERE / "example_requests.py")],
        "resident": str(HERE / "resident.py"),
        "imageStdlib": str(scratch / "image-stdlib.zip"),
        "stdlibOut": str(stdlib),
        "imageOut": str(image),
        "packageOut": str(scratch / "package.zip"),
    }
    (scratch / "plan.json").write_text(json.dumps(plan), encoding="utf-8")
    node = find_node()
    if node is None:
        raise SetupError(f"Node is missing. {REMEDY}")
    core = (pyodide / "pyodide.asm.wasm").read_bytes()
    with ThreadPoolExecutor() as beside:
        packed_core = beside.submit(pack, core)
        run([node, HERE / "make_snapshot.mjs", scratch / "plan.json"], remedy=REMEDY, timeout=300)

    with zipfile.ZipFile(scratch / "package.zip") as code:
        write_wheel(wheel, undated(wheel, code), lock)
    build_id = hashlib.sha256(core + stdlib.read_bytes() + image.read_bytes()).hexdigest()
    with ThreadPoolExecutor() as beside:  # packing lets other threads run
        memory = beside.submit(pack, build_id.encode() + image.read_bytes())
        library = beside.submit(pack, stdlib.read_bytes())
    worker, worker_id = make_worker(node_modules, build_id)
    files: dict[str, bytes] = {
        "engine": make_engine(pyodide, node_modules, build_id, lock, worker).encode(),
        "worker": worker.encode(),
        "core": packed_core.result(),
        "memory": memory.result(),
        "stdlib": library.result(),
        "wheel": pack(wheel.read_bytes()),
        "lock": lock.read_bytes(),
    }
    return write_files(files, scratch / "finished", node_modules, worker_id)


def write_files(files: Mapping[str, bytes], folder: Path, node_modules: Path, worker_id: str) -> Path:
    """Write each file under its hashed name, the disk scripts and the loader that names them."""
    total = hashlib.sha256(b"".join(hashlib.sha256(files[n]).digest() for n in sorted(files)))
    tag = total.hexdigest()[:12]
    names = {name: pattern.format(tag) for name, pattern in FILES.items()}
    disk = {name: pattern.format(tag) for name, pattern in DISK.items()}
    folder.mkdir()
    for name, content in files.items():
        (folder / names[name]).write_bytes(content)
    for name, file in disk.items():
        text = base64.b64encode(files[name]).decode()
        (folder / file).write_text(f'(self.bookletDisk??={{}}).{name}="{text}";\n', "ascii")
    constants = {"FILES": {**names, "disk": disk}, "WORKER_ID": worker_id}
    loader = minify(_with_unpack("loader.js"), node_modules, *_defines(constants))
    (folder / "loader.js").write_text(loader, "utf-8")
    return folder


def pack(content: bytes) -> bytes:
    """Return gzip of the content, the same bytes for the same content; a level more takes twice as long for 0,4 %."""
    return gzip.compress(content, 8, mtime=0)


# --- The package -----------------------------------------------------------------------------


def build_wheel(package_dir: Path, scratch: Path) -> Path:
    """Return a pure-Python wheel of the package with its sources, made with `wheel pack`."""
    root = scratch / f"calc-{VERSION}"
    shutil.copytree(package_dir, root / "calc", ignore=shutil.ignore_patterns("__pycache__"))
    info = root / f"calc-{VERSION}.dist-info"
    info.mkdir()
    (info / "METADATA").write_text(f"Metadata-Version: 2.1\nName: calc\nVersion: {VERSION}\n")
    (info / "WHEEL").write_text(
        "Wheel-Version: 1.0\nGenerator: build_runtime\nRoot-Is-Purelib: true\nTag: py3-none-any\n"
    )
    _python_tool("wheel", "pack", root, "--dest-dir", scratch)
    return next(scratch.glob("calc-*.whl"))


def named_imports(package_dir: Path) -> list[str]:
    """Return the modules the package's sources name, also inside functions."""
    names: set[str] = set()
    for file in package_dir.rglob("*.py"):
        for found in _IMPORT.finditer(file.read_text("utf-8")):
            several = re.sub(r" as \w+", "", found[2] or "").split(",")
            names.update([found[1]] if found[1] else (name.strip() for name in several))
    return sorted(names)


def lock_and_compile(source: Path, pyodide: Path, folder: Path) -> tuple[Path, Path]:
    """Return a lock file with the wheel as its only package, and that wheel.

    The wheel is in byte code, or still has its sources when this Python is not the runtime's.
    """
    folder.mkdir()
    shutil.copy(source, folder)
    spec = PyodideLockSpec.from_json(pyodide / "pyodide-lock.json")
    package = PackageSpec(
        name="calc",
        version=VERSION,
        file_name=source.name,
        install_dir="site",
        sha256=hashlib.sha256(source.read_bytes()).hexdigest(),
        imports=["calc"],
    )
    lock = folder / "pyodide-lock.json"
    PyodideLockSpec(info=spec.info, packages={"calc": package}).to_json(lock)
    if sys.version_info[:2] == RUNTIME_PYTHON:
        # Renames the wheel after the Python its byte code is for, in the lock file too.
        _python_tool("pyodide_cli", "py-compile", "--silent", folder)
    return lock, folder / json.loads(lock.read_text("utf-8"))["packages"]["calc"]["file_name"]


def write_wheel(wheel: Path, content: bytes, lock: Path) -> None:
    """Write the wheel, and what it is known by in the lock file."""
    wheel.write_bytes(content)
    locked = json.loads(lock.read_text("utf-8"))
    locked["packages"]["calc"]["sha256"] = hashlib.sha256(content).hexdigest()
    lock.write_text(json.dumps(locked, sort_keys=True), "utf-8")


def undated(archive: Path, code: zipfile.ZipFile) -> bytes:
    """Return a zip of the same files without what differs from build to build: times and rights.

    code: byte code that takes the place of files of its names: that of the image, which tells less.
    """
    packed, compiled = io.BytesIO(), set(code.namelist())
    with zipfile.ZipFile(archive) as given, zipfile.ZipFile(packed, "w") as plain:
        for name in sorted(given.namelist()):
            entry = zipfile.ZipInfo(name)
            entry.external_attr = 0o644 << 16
            entry.create_system = 3  # Unix, wherever it is made
            content = (code if name in compiled else given).read(name)
            plain.writestr(entry, content, zipfile.ZIP_STORED)  # packed as a whole, which is smaller by far
    return packed.getvalue()


def _python_tool(module: str, *arguments: str | Path) -> None:
    # A fixed date, so that the same sources give the same byte code.
    settings = {"SOURCE_DATE_EPOCH": "1577836800"}
    run([sys.executable, "-m", module, *arguments], remedy=REMEDY, timeout=120, settings=settings)


# --- The scripts -----------------------------------------------------------------------------


def make_engine(pyodide: Path, node_modules: Path, build_id: str, lock: Path, worker: str) -> str:
    """Return one classic script: the function bookletEngine and the worker's source as text."""
    parts = [
        (HERE / "engine_head.js").read_text("utf-8"),
        (pyodide / "pyodide.asm.js").read_text("utf-8"),
        (pyodide / "pyodide.js").read_text("utf-8"),
        (HERE / "unpack.js").read_text("utf-8"),
        (HERE / "engine.js").read_text("utf-8"),
    ]
    # In parentheses, so that browsers compile the function at once instead of skimming it first.
    source = "self.bookletEngine=(function(){" + "\n".join(parts) + "\n});\n"
    source += f"self.bookletWorkerSource={json.dumps(worker)};\n"
    # As text: esbuild would move an object out of the function, whose own text a worker runs.
    info = json.dumps(json.loads(lock.read_text("utf-8"))["info"])
    constants = {"RUNTIME_ID": build_id, "LOCK_INFO": info}
    return minify(source, node_modules, *_defines(constants))


def make_worker(node_modules: Path, build_id: str) -> tuple[str, str]:
    """Return the worker's script, and the name by which a loader of the same build knows it."""
    source = _with_unpack("worker.js")
    name = hashlib.sha256((source + build_id).encode()).hexdigest()[:12]
    return minify(source, node_modules, *_defines({"WORKER_ID": name})), name


def _with_unpack(name: str) -> str:
    """A script in one function with what it shares with others, so that it leaves no other names."""
    shared, own = ((HERE / file).read_text("utf-8") for file in ("unpack.js", name))
    return f"(()=>{{{shared}{own}}})();"


def _defines(constants: Mapping[str, object]) -> list[str]:
    return [f"--define:{name}={json.dumps(value)}" for name, value in constants.items()]


def minify(source: str, node_modules: Path, *options: str) -> str:
    """Return the script minified by esbuild for the oldest browsers supported."""
    esbuild = node_modules / ".bin" / ("esbuild.cmd" if os.name == "nt" else "esbuild")
    command = [str(esbuild), "--minify", f"--target={BROWSERS}", "--log-level=error", *options]
    done = subprocess.run(command, input=source, capture_output=True, text=True, encoding="utf-8")
    if done.returncode != 0:
        raise SetupError(f"esbuild failed: {done.stderr[:2000]} {REMEDY}")
    return done.stdout


if __name__ == "__main__":
    build_runtime(REPO / "build" / "site", REPO / "build" / "cache")
