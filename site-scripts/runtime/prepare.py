"""Runs inside Pyodide while the runtime is built: import the package, warm it up, list modules.

Executed into a throw-away namespace by make_snapshot.mjs; nothing of it stays in the image.
"""

import ast
import functools
import gc
import importlib
import importlib._bootstrap_external as bootstrap
import io
import pkgutil
import sys
import types

STDLIB_ZIP = f"/lib/python{sys.version_info[0]}{sys.version_info[1]}.zip"
# What the image has in the place of modules that calc never calls: Pyodide's event loop with asyncio, its loader of
# packages with files and archives, the files inside packages, and the names of a thousand characters, for
# html.unescape. What Pyodide's own ask of the page while they are imported is asked for still: an image is restored
# with just these objects of the page.
STAND_INS = {
    "asyncio/__init__.py": "",
    "pyodide/webloop.py": """
from pyodide_js._api import scheduleCallback
def _initialize_event_loop(): pass
""",
    "pyodide/_package_loader.py": """
from pyodide_js import loadedPackages
class _Folder:
    def __init__(self, path): self.path = path
    def __str__(self): return self.path
SITE_PACKAGES, DSO_DIR = _Folder("/lib/site-packages"), _Folder("/usr/lib")
def init_loaded_packages(): pass
""",
    "importlib/resources/__init__.py": "",
    "importlib/resources/abc.py": "__all__ = []",
    "html/entities.py": """
class _Absent:
    def __contains__(self, name): raise NotImplementedError("The image has no names of characters.")
html5 = _Absent()
""",
}
# An entry for eight instructions without a place, as the interpreter reads such tables.
_NO_PLACE = b"\xff"


def import_package() -> None:
    """Import calc and each of its modules: after the image is restored their files are gone."""
    package = importlib.import_module("calc")
    for module in pkgutil.walk_packages(package.__path__, "calc."):
        importlib.import_module(module.name)


def warm_up(requests: list[str]) -> int:
    """Answer requests, so that every cache is filled; return how many were answered.

    Raises ValueError for one that is refused: an example must have an answer.
    """
    desk = importlib.import_module("calc.desk")
    for request in requests:
        if '"ok": true' not in (reply := desk.answer(request)):
            raise ValueError(f"{request} is answered by {reply}")
    return len(requests)


# All but calc.topics itself, which has found its topics once for all.
REMEMBERED = tuple(
    f"calc.{part}"
    for part in ("renderings.", "desk", "working.", "figures.", "language.", "marking.", "model.", "topics.")
)


def forget_answers() -> None:
    """Empty the caches of what was read, drawn, set and printed for the examples.

    The first answer needs one of a hundred: it is there some milliseconds later, and the image a tenth smaller.
    """
    for name, module in list(sys.modules.items()):
        if name.startswith(REMEMBERED):
            for value in vars(module).values():
                if hasattr(value, "cache_clear"):
                    value.cache_clear()
    for thing in gc.get_objects():
        kind = type(thing)
        if kind.__module__.startswith("calc."):
            for name, value in vars(kind).items():
                if isinstance(value, functools.cached_property):
                    vars(thing).pop(name, None)


def import_named(names: str) -> None:
    """Import modules given by name, separated by spaces."""
    for name in names.split():
        importlib.import_module(name)


def strip_stdlib() -> list[bytes]:
    """Return zips of the standard library modules loaded by now, as byte code: for the page, and for its image.

    Stored, not deflated: the file is compressed as a whole, and imports read it faster. The image's has stand-ins.
    """
    codes = {name: compiled(source, name) for name, source in _loaded_sources().items()}
    bare = {name: without_places(code) for name, code in codes.items()}
    stand_ins = {name: compiled(text.encode(), name) for name, text in STAND_INS.items()}
    return [_zipped(codes), _zipped({**bare, **stand_ins})]


def _loaded_sources() -> dict[str, bytes]:
    import zipfile  # here and below: not to be in the image

    found = {}
    with zipfile.ZipFile(STDLIB_ZIP) as full:
        for name in sorted(full.namelist()):
            module = name.removesuffix(".py").replace("/", ".").removesuffix(".__init__")
            if name.endswith(".py") and module in sys.modules:
                found[name] = full.read(name)
    return found


def compiled(source: bytes | ast.Module, name: str) -> types.CodeType:
    """Return the byte code of one source file, without docstrings and asserts."""
    return compile(source, name, "exec", dont_inherit=True, optimize=2)


def without_places(code: types.CodeType) -> types.CodeType:
    """Return the code without which instruction is of which line: told in tracebacks only, which no page shows."""
    inner = tuple(without_places(part) if isinstance(part, types.CodeType) else part for part in code.co_consts)
    table = _NO_PLACE * -(-len(code.co_code) // 16)
    return code.replace(co_consts=inner, co_linetable=table)


def without_hints(source: bytes) -> ast.Module:
    """The tree of a source without the types of arguments and results, which each function would carry along.

    Those of a class's fields stay: dataclasses and named tuples are made of them.
    """
    tree = ast.parse(source)
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            node.returns = None
        elif isinstance(node, ast.arg):
            node.annotation = None
    return tree


def pack_package(wheel: str) -> bytes:
    """Return the wheel's modules as a zip of byte code for the image."""
    import zipfile

    with zipfile.ZipFile(wheel) as source:
        names = sorted(name for name in source.namelist() if name.endswith(".py"))
        return _zipped({name: without_places(compiled(without_hints(source.read(name)), name)) for name in names})


def _zipped(codes: dict[str, types.CodeType]) -> bytes:
    """A zip of .pyc files, which are never checked against their sources again."""
    import zipfile

    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as slim:
        for name, code in codes.items():
            content = bytes(bootstrap._code_to_hash_pyc(code, bytes(8), False))
            slim.writestr(zipfile.ZipInfo(name + "c"), content)
    return packed.getvalue()
