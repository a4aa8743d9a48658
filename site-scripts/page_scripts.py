"""The scripts of the pages: modules in pages/, bundled by esbuild into one classic script for each kind of page.

Classic, because a page opened from disk may load no module. A page's kind is the blocks on it: a module in
pages/blocks/ named after a block runs where that block stands, and nothing lists pages or blocks. Those in
pages/early/ run where they stand in a page, before the rest of it is laid out.
"""

from __future__ import annotations

import json
import os
import re
import subprocess
import tempfile
from collections.abc import Iterable
from pathlib import Path

from kept_results import Kept
from toolbox import NODE_MODULES, SCRIPTS, SetupError, digest

FOLDER = SCRIPTS / "pages"
PLACE = "assets/scripts"
# Oldest browsers with everything the runtime needs, which the pages do not go below (runtime/build_runtime.py).
BROWSERS = "chrome112,firefox113,safari16.4"
_SCRIPT = re.compile(rf'<script(?: defer)? src="((?:\.\./)*){PLACE}/([\w-]+)\.js"></script>')
_LAST_STYLE = re.compile(r'<link rel="stylesheet" href="((?:[^"]*/)?)assets/booklet\.css">')
_DOOR = "runtime"  # the module that needs the loader of the runtime in the page before it
_FIRST = "head"  # the script in the head of each page


def bundle_of(blocks: Iterable[str]) -> str:
    """The name of the script of a page with these blocks: “reading” where none of them needs one."""
    return "_".join(sorted({kind for kind in blocks if (FOLDER / "blocks" / f"{kind}.js").is_file()})) or "reading"


def write_scripts(site: Path) -> None:
    """Write each script that a page asks for, and put the runtime's loader into the head of pages that need it.

    There, a page that follows another joins the Python of that one while it is still being read.
    A page gets the styles of the modules in its script, and no others: a style is named after its module.
    Raises SetupError with what esbuild says of a wrong module.
    """
    pages = {path: path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html"))}
    names = sorted({found[2] for text in pages.values() for found in _SCRIPT.finditer(text)})
    defined = [
        f"--define:{name}={json.dumps(f'../vendor/{file.relative_to(site / "assets/vendor").as_posix()}')}"
        for name, kind in (("QR_LIBRARY", "qrcode"), ("PAPER_FONTS", "fonts"))
        for file in (site / "assets/vendor" / kind).glob("*.js")
    ]
    modules = _bundle(names, site / PLACE, *defined)
    styles = {file.stem for file in (site / "assets").glob("*.css")}

    def with_loader(found: re.Match[str]) -> str:
        loader = f'\n  <script src="{found[1]}assets/runtime/loader.js"></script>'
        return found[0] + (loader if found[2] == _FIRST else "")

    for path, text in pages.items():
        used = list(dict.fromkeys(name for found in _SCRIPT.finditer(text) for name in modules[found[2]]))
        links = [name for name in used if name in styles]
        text = _LAST_STYLE.sub(lambda found, links=links: found[0] + _links(found[1], links), text)
        path.write_text(_SCRIPT.sub(with_loader, text) if _DOOR in used else text, encoding="utf-8")


def _links(home: str, styles: Iterable[str]) -> str:
    return "".join(f'\n      <link rel="stylesheet" href="{home}assets/{name}.css">' for name in styles)


def _entry(name: str) -> str:
    """The text that a bundle starts from: an early script, else what every page and each of the blocks needs."""
    if (FOLDER / "early" / f"{name}.js").is_file():
        return f'import "./early/{name}.js";\n'
    blocks = [] if name == "reading" else name.split("_")
    return "".join(f'import "./{module}.js";\n' for module in ("every-page", *(f"blocks/{kind}" for kind in blocks)))


def _bundle(names: list[str], target: Path, *more: str) -> dict[str, list[str]]:
    """Bundle each name; return the modules in each, a module after those it imports, by their names alone."""
    kept: Kept[tuple[str, list[str]]] = Kept("scripts", digest([FOLDER, SCRIPTS / "package-lock.json", Path(__file__)]))
    modules = {}
    target.mkdir(parents=True, exist_ok=True)
    for name in names:
        text, modules[name] = kept.get(" ".join([name, *more]), lambda name=name: _bundled(_entry(name), *more))
        (target / f"{name}.js").write_text(text, encoding="utf-8")
    kept.write()
    return modules


def _bundled(entry: str, *more: str) -> tuple[str, list[str]]:
    """The script that starts from this text, and the modules in it."""
    with tempfile.TemporaryDirectory() as scratch:
        script, told = Path(scratch) / "script.js", Path(scratch) / "told.json"
        esbuild(entry, FOLDER, "--bundle", "--format=iife", f"--metafile={told}", f"--outfile={script}", *more)
        (made,) = json.loads(told.read_text(encoding="utf-8"))["outputs"].values()
        return script.read_text(encoding="utf-8"), [Path(used).stem for used in made["inputs"]]


def esbuild(source: str, folder: Path, *options: str) -> str:
    """The output of esbuild for a text that stands in a folder; raises SetupError with its message."""
    program = NODE_MODULES / ".bin" / ("esbuild.cmd" if os.name == "nt" else "esbuild")
    command = [str(program), "--minify", f"--target={BROWSERS}", "--log-level=error", *options]
    done = subprocess.run(command, input=source, cwd=folder, capture_output=True, text=True, encoding="utf-8")
    if done.returncode != 0:
        raise SetupError(f"A script of the pages could not be bundled: {done.stderr[:2000]}")
    return done.stdout
