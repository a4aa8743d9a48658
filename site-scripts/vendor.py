"""Copy the libraries the pages use out of node_modules into the built site.

Nothing here is committed and nothing is fetched by a reader from anywhere but the site itself.
"""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

from licences import TEXTS
from toolbox import NODE_MODULES

# (package, family in CSS, faces as (weight, style)): text in the serif, controls in the sans.
FONTS = (
    ("source-serif-4", "Source Serif 4", ((400, "normal"), (400, "italic"), (700, "normal"))),
    ("source-sans-3", "Source Sans 3", ((400, "normal"), (600, "normal"))),
)
# Greek is for letters such as θ, μ and Ω in running text.
SUBSETS = ("latin", "greek")


def vendor(site: Path) -> None:
    """Write assets/vendor/{katex,fonts,qrcode} below the site, each with its licence."""
    target = site / "assets" / "vendor"
    _katex(target / "katex")
    _fonts(target / "fonts")
    _copy(NODE_MODULES / "qrcode-generator/dist/qrcode.js", target / "qrcode/qrcode.js")
    _copy(TEXTS / "qrcode-generator.txt", target / "qrcode/LICENSE")


def _copy(source: Path, target: Path) -> None:
    target.parent.mkdir(parents=True, exist_ok=True)
    shutil.copyfile(source, target)


def _katex(target: Path) -> None:
    package = NODE_MODULES / "katex"
    _copy(package / "dist/katex.min.js", target / "katex.js")
    _copy(package / "LICENSE", target / "LICENSE")
    _copy(TEXTS / "katex-fonts.txt", target / "fonts/LICENSE")
    for font in sorted((package / "dist/fonts").glob("*.woff2")):
        _copy(font, target / "fonts" / font.name)
    # Every browser the runtime needs reads woff2, so the older formats stay behind.
    css = (package / "dist/katex.min.css").read_text(encoding="utf-8")
    css = re.sub(r",url\([^)]*\.(?:woff|ttf)\) format\(\"(?:woff|truetype)\"\)", "", css)
    if ".ttf" in css or ".woff2" not in css:
        raise ValueError("KaTeX names its fonts in a new way: mend the pattern in vendor.py.")
    (target / "katex.css").write_text(css, encoding="utf-8")


def _fonts(target: Path) -> None:
    rules = []
    for package, family, faces in FONTS:
        folder = NODE_MODULES / "@fontsource" / package
        ranges = json.loads((folder / "unicode.json").read_text(encoding="utf-8"))
        _copy(folder / "LICENSE", target / f"{package}-LICENSE")
        for weight, style in faces:
            for subset in SUBSETS:
                name = f"{package}-{subset}-{weight}-{style}.woff2"
                _copy(folder / "files" / name, target / name)
                rules.append(
                    f'@font-face{{font-family:"{family}";font-style:{style};font-weight:{weight};'
                    f'font-display:swap;src:url({name}) format("woff2");'
                    f"unicode-range:{ranges[subset]}}}"
                )
    (target / "fonts.css").write_text("\n".join(rules) + "\n", encoding="utf-8")
