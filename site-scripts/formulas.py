"""The formulas of a page while it is built: those of the prose set as MathML, and what the search reads of all.

Set by the writer that sets calc's own, so that a formula looks the same wherever it stands.
"""

from __future__ import annotations

import hashlib
import re
from html import unescape

from mkdocs.exceptions import PluginError

from calc.renderings import mathml

_INLINE = re.compile(r'<span class="arithmatex">\\\((.*?)\\\)</span>', re.DOTALL)
_DISPLAY = re.compile(r'<div class="arithmatex">\s*\\\[(.*?)\\\]\s*</div>', re.DOTALL)
_SET = re.compile(r'<math(?: class="\w+")? alttext="([^"]*)">.*?</math>', re.DOTALL)
_WORDS = re.compile(r'<i data-formula="(\w+)">[^<]*</i>')
_kept: dict[str, str] = {}


def set_prose(page: str, name: str) -> str:
    """The page with the formulas of its Markdown set. Raises PluginError naming page and formula."""

    def made(tag: str, attributes: str, tex: str) -> str:
        try:
            return f"<{tag} {attributes}>{mathml.render(mathml.of_tex(unescape(tex)))}</{tag}>"
        except mathml.FormulaError as error:
            raise PluginError(f"{name}: the formula {tex.strip()!r} is wrong. {error}") from error

    # Displayed ones would only clutter what the search finds.
    page = _DISPLAY.sub(lambda match: made("div", 'class="tex display" data-search-exclude', match[1]), page)
    return _INLINE.sub(lambda match: made("span", 'class="tex"', match[1]), page)


def in_words(page: str) -> str:
    """The page with each formula's plain text in its place: of MathML a search would read "kQ1Q2r2"."""

    def put(match: re.Match[str]) -> str:
        key = hashlib.sha256(match[0].encode()).hexdigest()[:16]
        _kept[key] = match[0]
        return f'<i data-formula="{key}">{match[1]}</i>'

    return _SET.sub(put, page)


def put_back(page: str) -> str:
    """The page with the formulas again that ``in_words`` took out."""
    return _WORDS.sub(lambda match: _kept[match[1]], page)
