"""What the site and the offline zip are made of, and under whose terms: one text file for each part.

Texts come from the installed packages where these carry them, else from the folder licences/ here.
"""

from __future__ import annotations

import csv
import json
import re
from dataclasses import dataclass
from html import escape
from importlib.metadata import distribution
from pathlib import Path

from toolbox import NODE_MODULES, SCRIPTS, SetupError

TEXTS = SCRIPTS / "licences"
# Below the site: one folder for all texts.
FOLDER = "licences"


@dataclass(frozen=True)
class Part:
    """Something shipped.

    `texts`: where its licence stands: "npm:PACKAGE/FILE", "pypi:PACKAGE/END OF A PATH", or a file of TEXTS.
    `version`: "npm:PACKAGE", "pypi:PACKAGE", the version itself, or nothing.
    """

    name: str
    does: str
    terms: str
    texts: tuple[str, ...]
    source: str
    version: str = ""

    @property
    def file(self) -> str:
        """The name of its text file."""
        return "-".join(re.findall(r"[a-z0-9]+", self.name.lower())) + ".txt"


def _github(path: str) -> str:
    return f"github.com/{path}"


PARTS = (
    Part(
        "Physics, Line by Line",
        "the pages, the physics and the diagrams",
        "MIT",
        ("../../LICENSE",),
        "where you got this booklet",
    ),
    Part(
        "Pyodide",
        "Python in a browser. Changed: exports that nothing here uses are left out, and so are parts of "
        "the library; site-scripts/runtime/slim_core.py holds every change",
        "MPL-2.0",
        ("mpl-2.0.txt",),
        _github("pyodide/pyodide"),
        "npm:pyodide",
    ),
    Part(
        "CPython",
        "the Python language and its standard library, compiled, without what is not used",
        "PSF-2.0",
        ("cpython.txt", "cpython-incorporated.txt"),
        _github("python/cpython"),
        "python",
    ),
    Part(
        "Emscripten",
        "the ground Python stands on in a browser",
        "MIT OR NCSA",
        ("emscripten.txt",),
        _github("emscripten-core/emscripten"),
    ),
    Part("musl", "the C library under Python", "MIT", ("musl.txt",), "musl.libc.org"),
    Part(
        "LLVM libraries",
        "under Python: libc++, libc++abi and compiler-rt",
        "Apache-2.0 WITH LLVM-exception",
        ("llvm.txt",),
        _github("llvm/llvm-project"),
    ),
    Part("zlib", "unpacking, in Python", "Zlib", ("zlib.txt",), "zlib.net"),
    Part("bzip2", "unpacking, in Python", "bzip2-1.0.6", ("bzip2.txt",), "sourceware.org/bzip2"),
    Part("libffi", "calls, in Python", "MIT", ("libffi.txt",), _github("libffi/libffi")),
    Part(
        "error-stack-parser",
        "reading errors, in Pyodide, with stackframe",
        "MIT",
        ("error-stack-parser.txt", "stackframe.txt"),
        _github("stacktracejs/error-stack-parser"),
    ),
    Part(
        "STIX Two Math",
        "the letters of formulas, cut down to those used",
        "OFL-1.1",
        ("npm:@fontsource/stix-two-math/LICENSE",),
        _github("stipub/stixfonts"),
        "npm:@fontsource/stix-two-math",
    ),
    Part(
        "Source Serif 4",
        "the letters of the text. Copyright Adobe, with Reserved Font Name “Source”",
        "OFL-1.1",
        ("npm:@fontsource/source-serif-4/LICENSE",),
        _github("adobe-fonts/source-serif"),
        "npm:@fontsource/source-serif-4",
    ),
    Part(
        "Source Sans 3",
        "the letters of the forms. Copyright Adobe, with Reserved Font Name “Source”",
        "OFL-1.1",
        ("npm:@fontsource/source-sans-3/LICENSE",),
        _github("adobe-fonts/source-sans"),
        "npm:@fontsource/source-sans-3",
    ),
    Part(
        "qrcode-generator",
        "the square code on a printed page",
        "MIT",
        ("qrcode-generator.txt",),
        _github("kazuhikoarase/qrcode-generator"),
        "npm:qrcode-generator",
    ),
    Part(
        "Material for MkDocs",
        "the frame of the pages: menu, search, colours",
        "MIT",
        ("pypi:mkdocs-material/licenses/LICENSE",),
        _github("squidfunk/mkdocs-material"),
        "pypi:mkdocs-material",
    ),
    Part(
        "MkDocs",
        "making pages out of Markdown",
        "BSD-2-Clause",
        ("pypi:mkdocs/licenses/LICENSE",),
        _github("mkdocs/mkdocs"),
        "pypi:mkdocs",
    ),
    Part(
        "Icons",
        "the signs in the frame, from three collections",
        "Apache-2.0 AND MIT AND CC-BY-4.0",
        (
            "pypi:mkdocs-material/.icons/material/LICENSE",
            "pypi:mkdocs-material/.icons/octicons/LICENSE",
            "pypi:mkdocs-material/.icons/fontawesome/LICENSE.txt",
        ),
        "the package of Material for MkDocs, folder .icons",
    ),
    Part("lunr", "searching the pages", "MIT", ("lunr.txt",), _github("olivernn/lunr.js"), "2.3.9"),
    Part("RxJS", "events, in the frame", "Apache-2.0", ("rxjs.txt",), _github("ReactiveX/rxjs")),
    Part(
        "tslib",
        "helpers of scripts, in the frame",
        "0BSD",
        ("tslib.txt",),
        _github("microsoft/tslib"),
    ),
    Part(
        "clipboard",
        "copying code, in the frame",
        "MIT",
        ("clipboard.txt",),
        _github("zenorocha/clipboard.js"),
    ),
    Part(
        "escape-html",
        "safe text, in the frame",
        "MIT",
        ("escape-html.txt",),
        _github("component/escape-html"),
    ),
    Part(
        "focus-visible",
        "showing where the keyboard is, in the frame",
        "W3C-20150513",
        ("focus-visible.txt",),
        _github("WICG/focus-visible"),
    ),
    Part(
        "material-design-color",
        "names of colours, in the frame's style",
        "MIT",
        ("material-design-color.txt",),
        _github("mrmlnc/material-color"),
    ),
)


def text(part: Part) -> str:
    """Return the licence texts of a part. Raises SetupError where a package no longer carries its own."""
    return "\n\n".join(_one(place).strip() + "\n" for place in part.texts)


def _one(place: str) -> str:
    kind, _, rest = place.rpartition(":")
    if not kind:
        return (TEXTS / place).read_text(encoding="utf-8")
    if kind == "npm":
        file = NODE_MODULES / rest
    else:
        package, _, name = rest.partition("/")
        installed = distribution(package)
        # Not its list of files, which looks at each of ten thousand on the disk.
        record = csv.reader((installed.read_text("RECORD") or "").splitlines())
        found = [row[0] for row in record if row[0].endswith(f"/{name}")]
        if not found:
            raise SetupError(f"{package} carries no {name} any more; mend it in licences.py.")
        file = Path(str(installed.locate_file(found[0])))
    return file.read_text(encoding="utf-8")


def version(part: Part) -> str:
    """Return the version of a part, read from what is installed; "" where it has none of its own."""
    kind, _, package = part.version.rpartition(":")
    if kind == "npm":
        described = (NODE_MODULES / package / "package.json").read_text(encoding="utf-8")
        return str(json.loads(described)["version"])
    if kind == "pypi":
        return distribution(package).version
    if part.version == "python":
        lock = (NODE_MODULES / "pyodide/pyodide-lock.json").read_text(encoding="utf-8")
        return str(json.loads(lock)["info"]["python"])
    return part.version


def listing() -> str:
    """Return the parts as a list in HTML; each links to its text."""
    items = "".join(
        f"<dt><strong>{escape(f'{part.name} {version(part)}'.strip())}</strong></dt>"
        f"<dd><p>{escape(part.does[0].upper() + part.does[1:])}.</p>"
        f'<p>Terms: <a href="{FOLDER}/{escape(part.file)}">{escape(part.terms)}</a>. '
        # An address may break after each stroke.
        f"Source: {escape(part.source).replace('/', '/<wbr>')}.</p></dd>"
        for part in PARTS
    )
    return f"<dl>{items}</dl>"
