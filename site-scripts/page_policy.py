"""Finish the built pages: versioned references to scripts and styles, and a content policy.

The policy lets a page load only from its own site. It is a <meta> because the site must be safe on
any host and from disk, where no server sends headers. Inline scripts are allowed by hash, and only
those that the theme's own templates contain: a script of ours has to be a file.
"""

from __future__ import annotations

import base64
import hashlib
import re
from functools import cache
from html.parser import HTMLParser
from pathlib import Path

import material

from toolbox import SetupError

_REFERENCE = re.compile(r"(?P<start><(?:script|link)\b[^>]*\s(?:src|href)=\")(?P<to>[^\"?#]+)\"")
_CHARSET = re.compile(r"<meta charset=\"utf-8\">", re.IGNORECASE)


class _Scripts(HTMLParser):
    """Collect inline scripts that run, and event-handler attributes."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=False)
        self.inline: list[str] = []
        self.handlers: list[str] = []
        self._open = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = dict(attrs)
        for name, value in attrs:
            if name.startswith("on") or (value or "").strip().lower().startswith("javascript:"):
                self.handlers.append(f"<{tag} {name}>")
        if tag == "script" and "src" not in names and names.get("type") != "application/json":
            self._open = True
            self.inline.append("")

    def handle_data(self, data: str) -> None:
        if self._open:
            self.inline[-1] += data

    def handle_endtag(self, tag: str) -> None:
        if tag == "script":
            self._open = False


@cache
def _theme_scripts() -> list[re.Pattern[str]]:
    """Patterns of the inline scripts in the theme's templates, their placeholders left open."""
    folder = Path(material.__file__).parent / "templates"
    scripts = []
    for file in folder.rglob("*.html"):
        for text in re.findall(r"<script>(.*?)</script>", file.read_text(encoding="utf-8")):
            fixed = [re.escape(part) for part in re.split(r"\{\{.*?\}\}", text)]
            scripts.append(re.compile(".*?".join(fixed)))
    return scripts


def policy(page: str, name: str) -> str:
    """Return the content policy for one page.

    Raises SetupError for an inline script that is not the theme's, or an event-handler attribute.
    """
    found = _Scripts()
    found.feed(page)
    found.close()
    if found.handlers:
        raise SetupError(
            f"{name}: {found.handlers[0]} runs code from an attribute; move it to docs/assets/."
        )
    hashes = []
    for script in found.inline:
        if not any(pattern.fullmatch(script) for pattern in _theme_scripts()):
            raise SetupError(
                f"{name}: the inline script {script.strip()[:60]!r} is not the theme's; "
                "move it to a file in docs/assets/."
            )
        hashed = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
        hashes.append(f"'sha256-{hashed}'")
    rules = {
        "default-src": "'none'",
        "script-src": " ".join(["'self'", "'wasm-unsafe-eval'", *dict.fromkeys(hashes)]),
        # KaTeX places its parts with style attributes.
        "style-src": "'self' 'unsafe-inline'",
        "img-src": "'self' data: blob:",
        "font-src": "'self'",
        "connect-src": "'self' blob: data:",
        "worker-src": "'self' blob:",
        "manifest-src": "'self'",
        "form-action": "'none'",
        "base-uri": "'none'",
        "object-src": "'none'",
    }
    return "; ".join(f"{rule} {sources}" for rule, sources in rules.items())


def with_policy(page: str, name: str) -> str:
    """Return the page with its policy right after the charset, before anything it governs."""
    tag = f'<meta http-equiv="Content-Security-Policy" content="{policy(page, name)}">'
    finished, count = _CHARSET.subn(lambda match: f"{match[0]}\n    {tag}", page, count=1)
    if count != 1:
        raise SetupError(f'{name}: no <meta charset="utf-8"> to put the content policy after.')
    return finished


def with_versions(page: str, path: Path) -> str:
    """Return the page with ?v=<content hash> on each script and style of the site.

    Raises SetupError for a reference to a file that is not there.
    """

    def versioned(match: re.Match[str]) -> str:
        to = match["to"]
        if not to.endswith((".js", ".css")):
            return match[0]
        file = path.parent / to
        if ":" in to or to.startswith("/") or not file.is_file():
            raise SetupError(f"{path.name} asks for {to}, which is not a file of the built site.")
        return f'{match["start"]}{to}?v={hashlib.sha256(file.read_bytes()).hexdigest()[:10]}"'

    return _REFERENCE.sub(versioned, page)
