"""Copy the libraries the pages use out of node_modules into the built site.

Nothing here is committed and nothing is fetched by a reader from anywhere but the site itself.
"""

from __future__ import annotations

import base64
import json
import shutil
import sys
from pathlib import Path

import fontTools
from fontTools.subset import Options, Subsetter, load_font, save_font

from licences import TEXTS
from page_policy import content_named
from toolbox import BUILD, NODE_MODULES, REPO, digest

sys.path.insert(0, str(REPO))
from calc.renderings.mathml import GLYPHS

# (package, family in CSS, faces as (weight, style)): text in the serif, controls in the sans.
FONTS = (
    ("source-serif-4", "Source Serif 4", ((400, "normal"), (400, "italic"), (700, "normal"))),
    ("source-sans-3", "Source Sans 3", ((400, "normal"), (600, "normal"))),
)
# Greek is for letters such as θ, μ and Ω in running text.
SUBSETS = ("latin", "greek")
PAPER_FONT = "Source Serif 4"
_HERE = "FILE"  # where a rule names its font, until that is known
# No part of its name is reserved, so the cut-down font may keep it.
MATHS_FONT = "stix-two-math"
# A single letter in a formula slopes: a browser prints it with the mathematical italic letters of Unicode.
SLOPING = (*range(0x1D434, 0x1D468), 0x210E, *range(0x1D6E2, 0x1D71C))


def vendor(site: Path) -> None:
    """Write assets/vendor/{fonts,qrcode} below the site, each with its licence."""
    target = site / "assets" / "vendor"
    _fonts(target / "fonts")
    _copy(NODE_MODULES / "qrcode-generator/dist/qrcode.js", target / "qrcode/qrcode.js")
    _by_content(target / "qrcode/qrcode.js")
    _copy(TEXTS / "qrcode-generator.txt", target / "qrcode/LICENSE")


def _by_content(file: Path) -> str:
    """Name a file by its content, which readers then fetch once; return its name."""
    named = content_named(file)
    if named != file:
        file.unlink()
    return named.name


def _copy(source: Path, target: Path) -> None:
    target.parent.mkdir(parents=True, exist_ok=True)
    shutil.copyfile(source, target)


def _fonts(target: Path) -> None:
    rules: list[tuple[str, Path]] = []
    for package, family, faces in FONTS:
        folder = NODE_MODULES / "@fontsource" / package
        ranges = json.loads((folder / "unicode.json").read_text(encoding="utf-8"))
        _copy(folder / "LICENSE", target / f"{package}-LICENSE")
        for weight, style in faces:
            for subset in SUBSETS:
                name = f"{package}-{subset}-{weight}-{style}.woff2"
                _copy(folder / "files" / name, target / name)
                name = _by_content(target / name)
                rule = (
                    f'@font-face{{font-family:"{family}";font-style:{style};font-weight:{weight};'
                    f'font-display:swap;src:url({_HERE}) format("woff2");'
                    f"unicode-range:{ranges[subset]}}}"
                )
                rules.append((rule, target / name))
    folder = NODE_MODULES / "@fontsource" / MATHS_FONT
    _copy(folder / "LICENSE", target / f"{MATHS_FONT}-LICENSE")
    name = f"{MATHS_FONT}-latin-400-normal.woff2"
    _cut_down(folder / "files" / name, target / name)
    name = _by_content(target / name)
    rule = f'@font-face{{font-family:"STIX Two Math";font-display:swap;src:url({_HERE}) format("woff2")}}'
    rules.append((rule, target / name))
    text = "\n".join(rule.replace(_HERE, file.name) for rule, file in rules)
    (target / "fonts.css").write_text(text + "\n", encoding="utf-8")
    _for_papers(target, rules)


def _for_papers(target: Path, rules: list[tuple[str, Path]]) -> None:
    """A script that holds the fonts of papers themselves, for files that are saved (pages/paper-fonts.js)."""
    held = [
        rule.replace(_HERE, f"data:font/woff2;base64,{base64.b64encode(file.read_bytes()).decode()}")
        for rule, file in rules
        if PAPER_FONT in rule or "Math" in rule
    ]
    script = target / "paper-fonts.js"
    script.write_text(f"window.bookletPaperFonts = {json.dumps('\n'.join(held))};\n", encoding="utf-8")
    _by_content(script)


def _cut_down(source: Path, target: Path) -> None:
    """The font with the signs of formulas alone, their sloping forms, and what grows with a bracket or a root.

    One that was cut before is kept in the build's folder.
    """
    key = digest([source, Path(__file__)], extra=f"{sorted(GLYPHS)} {fontTools.version}")[:20]
    kept = BUILD / "cache" / f"maths-font-{key}.woff2"
    if not kept.is_file():
        kept.parent.mkdir(parents=True, exist_ok=True)
        for old in kept.parent.glob("maths-font-*"):
            old.unlink()
        _cut(source, made := kept.with_suffix(".new"))
        made.replace(kept)
    shutil.copyfile(kept, target)


def _cut(source: Path, target: Path) -> None:
    options = Options(flavor="woff2", layout_features=["math", "ssty"], notdef_outline=True, hinting=False)
    cut = Subsetter(options)
    cut.populate(unicodes=[*map(ord, GLYPHS), *SLOPING])
    with load_font(str(source), options) as font:
        cut.subset(font)
        save_font(font, str(target), options)
