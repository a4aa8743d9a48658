"""Runs inside Pyodide while the runtime is built: import the package, warm it up, list modules.

Executed into a throw-away namespace by make_snapshot.mjs; nothing of it stays in the image.
"""

import ast
import importlib
import importlib._bootstrap_external as bootstrap
import io
import pkgutil
import sys
import zipfile

STDLIB_ZIP = f"/lib/python{sys.version_info[0]}{sys.version_info[1]}.zip"


def import_package() -> None:
    """Import calc and each of its modules: after the image is restored their files are gone."""
    importlib.invalidate_caches()  # the image maker's clock stands still, so folders look unchanged
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


def forget_drawings() -> None:
    """Empty the caches of what is drawn, set and printed: the first answer needs one of hundreds that are kept."""
    for name, module in list(sys.modules.items()):
        if name.startswith(("calc.renderings.", "calc.desk", "calc.working.", "calc.language.printing")):
            for value in vars(module).values():
                if hasattr(value, "cache_clear"):
                    value.cache_clear()


def named_imports() -> str:
    """Return the modules the package's sources name, also inside functions, separated by spaces."""
    names = set()
    package = importlib.import_module("calc")
    for module in pkgutil.walk_packages(package.__path__, "calc."):
        source = module.module_finder.find_spec(module.name).loader.get_source(module.name)
        for node in ast.walk(ast.parse(source)):
            if isinstance(node, ast.Import):
                names.update(alias.name for alias in node.names)
            elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
                names.add(node.module)
    return " ".join(sorted(names))


def import_named(names: str) -> None:
    """Import modules given by name, separated by spaces."""
    for name in names.split():
        importlib.import_module(name)


def strip_stdlib() -> bytes:
    """Return a zip of the standard library modules loaded by now, as byte code.

    Stored, not deflated: the file is compressed as a whole, and imports read it faster.
    Docstrings and asserts of the standard library are left out.
    """
    packed = io.BytesIO()
    with zipfile.ZipFile(STDLIB_ZIP) as full, zipfile.ZipFile(packed, "w") as slim:
        for name in sorted(full.namelist()):
            module = name.removesuffix(".py").replace("/", ".").removesuffix(".__init__")
            if name.endswith(".py") and module in sys.modules:
                slim.writestr(zipfile.ZipInfo(name + "c"), byte_code(full.read(name), name, 2))
    return packed.getvalue()


def byte_code(source: bytes, name: str, optimize: int) -> bytes:
    """Return the .pyc content of one source file, never checked against the source again."""
    code = compile(source, name, "exec", dont_inherit=True, optimize=optimize)
    return bytes(bootstrap._code_to_hash_pyc(code, bytes(8), False))


def pack_package(wheel: str) -> bytes:
    """Return the wheel's modules as a zip of byte code, to be written next to the image's maker."""
    packed = io.BytesIO()
    with zipfile.ZipFile(wheel) as source, zipfile.ZipFile(packed, "w") as slim:
        for name in sorted(source.namelist()):
            content = source.read(name)
            if name.endswith(".py"):
                name, content = name + "c", byte_code(content, name, 0)
            slim.writestr(zipfile.ZipInfo(name), content)
    return packed.getvalue()
