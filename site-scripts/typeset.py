"""Set the formulas of the pages' prose as MathML, with the writer that sets calc's own.

A formula in a page is `<span class="tex" data-tex="F = ma">F = ma</span>`, with the class "display"
too for one on its own line; site_hooks.py makes it of `$F = ma$` in Markdown.
"""

from __future__ import annotations

import html
import re
from pathlib import Path

from calc.language.expressions import Maths
from calc.renderings import mathml
from toolbox import SetupError

_ELEMENT = re.compile(r"<(?P<tag>span|div)(?P<attributes>(?:\s+[\w-]+(?:=\"[^\"]*\")?)*)\s*>" r"[^<]*</(?P=tag)>")
# Every start tag that claims to be a formula; each must also match _ELEMENT.
_CLAIM = re.compile(r"<\w+(?:\s+[\w-]+(?:=\"[^\"]*\")?)*?\s+class=\"(?:[^\"]*\s)?tex(?:\s[^\"]*)?\"")
_ATTRIBUTE = re.compile(r"([\w-]+)=\"([^\"]*)\"")


def find_formulas(page: str) -> list[tuple[re.Match[str], str]]:
    """Return the formula elements of a page that are still to be set, with their TeX.

    Raises ValueError for an element that claims to be a formula and is not written as one.
    """
    found = []
    for match in _ELEMENT.finditer(page):
        attributes = dict(_ATTRIBUTE.findall(match["attributes"]))
        classes = attributes.get("class", "").split()
        if "tex" in classes and attributes.get("data-tex"):
            found.append((match, html.unescape(attributes["data-tex"])))
    claims = sum(not page.startswith("<math", claim.end() + 1) for claim in _CLAIM.finditer(page))
    if claims != len(found):
        raise ValueError(
            f"{claims} elements have the class tex but {len(found)} are formulas. Write each as "
            '<span class="tex" data-tex="TeX">plain text</span>, with no tag inside.'
        )
    return found


def set_formulas(page: str, name: str) -> str:
    """Return the page with every formula set.

    Raises SetupError naming the page and the formula that cannot be set.
    """
    try:
        found = find_formulas(page)
    except ValueError as error:
        raise SetupError(f"{name}: {error}") from error
    parts, end = [], 0
    for match, tex in found:
        try:
            done = mathml.render(mathml.of_tex(tex))
        except mathml.FormulaError as error:
            raise SetupError(f"{name}: the formula {tex!r} is wrong. {error}") from error
        attributes = re.sub(r' data-tex="[^"]*"', "", match["attributes"])
        parts += [page[end : match.start()], f"<{match['tag']}{attributes}>{done}</{match['tag']}>"]
        end = match.end()
    return "".join([*parts, page[end:]])
