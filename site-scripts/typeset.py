"""Set the formulas of built pages, so that they read with scripts off.

A formula in a page is `<span class="tex" data-tex="F = ma">F = ma</span>`, with the class "display"
too for one on its own line; site_hooks.py turns `$F = ma$` in Markdown into the same.
"""

from __future__ import annotations

import html
import json
import re
import subprocess
from pathlib import Path

from toolbox import SCRIPTS, SetupError

_ELEMENT = re.compile(r"<(?P<tag>span|div)(?P<attributes>(?:\s+[\w-]+(?:=\"[^\"]*\")?)*)\s*>" r"[^<]*</(?P=tag)>")
# Every start tag that claims to be a formula; each must also match _ELEMENT.
_CLAIM = re.compile(r"<\w+(?:\s+[\w-]+(?:=\"[^\"]*\")?)*?\s+class=\"(?:[^\"]*\s)?tex(?:\s[^\"]*)?\"")
_ATTRIBUTE = re.compile(r"([\w-]+)=\"([^\"]*)\"")

Formula = tuple[str, bool]


def find_formulas(page: str) -> list[tuple[re.Match[str], Formula]]:
    """Return the formula elements of a page with (TeX, on its own line?).

    Raises ValueError for an element that claims to be a formula and is not written as one.
    """
    found = []
    for match in _ELEMENT.finditer(page):
        attributes = dict(_ATTRIBUTE.findall(match["attributes"]))
        classes = attributes.get("class", "").split()
        if "tex" in classes and attributes.get("data-tex"):
            found.append((match, (html.unescape(attributes["data-tex"]), "display" in classes)))
    claims = len(_CLAIM.findall(page))
    if claims != len(found):
        raise ValueError(
            f"{claims} elements have the class tex but {len(found)} are formulas. Write each as "
            '<span class="tex" data-tex="TeX">plain text</span>, with no tag inside.'
        )
    return found


def set_formulas(pages: dict[Path, str], node: Path) -> dict[Path, str]:
    """Return the pages (text by path) with every formula set, using one Node process for all.

    Raises SetupError naming page and formula when one cannot be set.
    """
    found = {}
    for path, text in pages.items():
        try:
            found[path] = find_formulas(text)
        except ValueError as error:
            raise SetupError(f"{path.name}: {error}") from error
    wanted = sorted({formula for matches in found.values() for _, formula in matches})
    ready = dict(zip(wanted, _ask_katex(wanted, node), strict=True))
    return {path: _replace(path, text, found[path], ready) for path, text in pages.items()}


def _replace(
    path: Path,
    text: str,
    matches: list[tuple[re.Match[str], Formula]],
    ready: dict[Formula, dict[str, str]],
) -> str:
    parts = []
    end = 0
    for match, formula in matches:
        answer = ready[formula]
        if "error" in answer:
            raise SetupError(f"{path.name}: the formula {formula[0]!r} is wrong. {answer['error']}")
        tag = match["tag"]
        parts += [text[end : match.start()], f"<{tag}{match['attributes']}>", answer["html"]]
        parts.append(f"</{tag}>")
        end = match.end()
    return "".join([*parts, text[end:]])


def _ask_katex(formulas: list[Formula], node: Path) -> list[dict[str, str]]:
    if not formulas:
        return []
    done = subprocess.run(
        [str(node), str(SCRIPTS / "typeset.js")],
        input=json.dumps([{"tex": tex, "display": display} for tex, display in formulas]),
        capture_output=True,
        encoding="utf-8",
    )
    if done.returncode != 0:
        raise SetupError(f"The formulas could not be set: {done.stderr.strip()}")
    answers: list[dict[str, str]] = json.loads(done.stdout)
    return answers
