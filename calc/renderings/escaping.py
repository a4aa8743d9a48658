"""Text for HTML and XML: most of it has nothing to escape, and is not looked through five times over."""

from __future__ import annotations

import re
from html import escape

_SPECIAL = re.compile("[&<>\"']")


def escaped(text: str, *, quote: bool = True) -> str:
    """``text`` as ``html.escape`` gives it."""
    return escape(text, quote) if _SPECIAL.search(text) else text
