"""Leave out of Pyodide's core what only native extension modules would use.

Pyodide exports some 9700 C functions so that extension modules can link to them. calc is pure
Python, so nothing here loads one; without those exports the core is smaller and instantiates and
links faster. The code of the functions stays; only the names under which they are offered go.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

from toolbox import SetupError

_IMPORT, _EXPORT, _DATA = 2, 7, 11
# Where Emscripten puts the data of a main module.
_STATIC_START = 1024
# The statement Emscripten writes for each export, whether or not anything uses it.
_ASSIGNMENT = re.compile(r'(?:var )?[\w$]+=Module\["[\w$]+"\]=wasmExports\["([\w$]+)"\]')
_NAME = re.compile(r"[\w$]+")


# Changes to Pyodide's own scripts: (file, what stands there once, what takes its place).
_PATCHES = (
    # The engine fills the heap itself, from an image that leaves out the core's own data. It sees
    # that data once all addresses in it are set and before any code has run.
    (
        "pyodide.asm.js",
        '__RELOC_FUNCS__.push(wasmExports["__wasm_apply_data_relocs"]);',
        (
            '__RELOC_FUNCS__.push(wasmExports["__wasm_apply_data_relocs"]);'
            "__RELOC_FUNCS__.push(()=>Module.API.config._seeData?.(HEAP8));"
        ),
    ),
    ("pyodide.asm.js", "Module.HEAP8.set(t),l}", "API.config._fillHeap(Module.HEAP8,t),l}"),
    ("pyodide.js", "INITIAL_MEMORY=i.length", "INITIAL_MEMORY=e._heapSize"),
    ("pyodide.mjs", "INITIAL_MEMORY=i.length", "INITIAL_MEMORY=e._heapSize"),
    # Never used, as every start names its own base; but no foreign address stays in.
    ("pyodide.js", "https://cdn.jsdelivr.net/pyodide/v${x}/full/", "memory:/"),
)


def slim_pyodide(pyodide: Path, out: Path) -> int:
    """Copy the files of a Pyodide folder to `out`, changed as described above.

    Returns the address in memory at which the core's own data ends.
    """
    shutil.copytree(pyodide, out, ignore=shutil.ignore_patterns("*.map", "*.html", "*.d.ts"))
    script = (pyodide / "pyodide.asm.js").read_text("utf-8")
    core = (pyodide / "pyodide.asm.wasm").read_bytes()
    used = set(_NAME.findall(_ASSIGNMENT.sub("", script)))
    used.update(_NAME.findall((pyodide / "pyodide.js").read_text("utf-8")))
    slim, dropped = drop_exports(core, used | {name.removeprefix("_") for name in used})
    (out / "pyodide.asm.wasm").write_bytes(slim)
    (out / "pyodide.asm.js").write_text(_ASSIGNMENT.sub(lambda m: "" if m[1] in dropped else m[0], script), "utf-8")
    for name, old, new in _PATCHES:
        text = (out / name).read_text("utf-8")
        if text.count(old) != 1:
            raise SetupError(f"{old!r} stands {text.count(old)} times in Pyodide's {name}, not once.")
        (out / name).write_text(text.replace(old, new), "utf-8")
    size = next(len(content) for number, content in _sections(core) if number == _DATA)
    return (_STATIC_START + size) & ~4095  # whole pages


def drop_exports(core: bytes, used: set[str]) -> tuple[bytes, set[str]]:
    """Return a WebAssembly module with only exports named in `used` or linked by the module itself.

    Emscripten's own linking ("GOT." imports) looks names up among the exports; those stay too.
    Layout: WebAssembly core specification, section "Binary Format". Also returns what was dropped.
    """
    linked: set[str] = set()
    dropped: set[str] = set()
    slim = bytearray(core[:8])
    for number, content in _sections(core):
        if number == _IMPORT:
            linked.update(_linked_names(content))
        if number == _EXPORT:
            entries = list(_exports(content))
            kept = [entry for name, entry in entries if name in used or name in linked]
            dropped = {name for name, _ in entries if name not in used and name not in linked}
            content = _number(len(kept)) + b"".join(kept)
        slim += bytes([number]) + _number(len(content)) + content
    return bytes(slim), dropped


def _sections(core: bytes) -> Iterator[tuple[int, bytes]]:
    at = 8
    while at < len(core):
        size, start = _read_number(core, at + 1)
        yield core[at], core[start : start + size]
        at = start + size


def _linked_names(content: bytes) -> Iterator[str]:
    count, at = _read_number(content, 0)
    for _ in range(count):
        module, at = _read_name(content, at)
        name, at = _read_name(content, at)
        kind, at = content[at], at + 1
        if kind == 3:  # global: type, mutability
            at += 2
        elif kind in (1, 2):  # table (with an element type) or memory: limits
            at += kind == 1
            bounds, at = content[at] & 1, at + 1
            for _ in range(1 + bounds):
                _, at = _read_number(content, at)
        else:  # function: type; tag: attribute, type
            _, at = _read_number(content, at + (kind == 4))
        if module.startswith("GOT."):
            yield name


def _exports(content: bytes) -> Iterator[tuple[str, bytes]]:
    count, at = _read_number(content, 0)
    for _ in range(count):
        begin = at
        name, at = _read_name(content, at)
        _, at = _read_number(content, at + 1)
        yield name, content[begin:at]


def _read_name(content: bytes, at: int) -> tuple[str, int]:
    size, at = _read_number(content, at)
    return content[at : at + size].decode(), at + size


def _read_number(content: bytes, at: int) -> tuple[int, int]:
    """Read an unsigned LEB128 number; return it and the place after it."""
    value = shift = 0
    while True:
        byte = content[at]
        at += 1
        value |= (byte & 127) << shift
        shift += 7
        if byte < 128:
            return value, at


def _number(value: int) -> bytes:
    """Write an unsigned LEB128 number."""
    out = bytearray()
    while value > 127:
        out.append(value & 127 | 128)
        value >>= 7
    out.append(value)
    return bytes(out)
