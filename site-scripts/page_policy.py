"""Finish the built pages: no script inline, scripts and styles named by content, and a content policy.

The policy lets a page load only from its own site. It is a <meta> because the site must be safe on
any host and from disk, where no server sends headers. No inline script is allowed, so that a server
may send a policy of its own without knowing any page: the theme's become files, ours have to be.
"""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import sys
from functools import cache
from html.parser import HTMLParser
from pathlib import Path

import material

from kept_results import Kept
from toolbox import SetupError, digest

_REFERENCE = re.compile(r"(?P<start><(?:script|link)\b[^>]*\s(?:src|href)=\")(?P<to>[^\"?#]+)\"")
_INLINE = re.compile(r"<script>(.*?)</script>", re.DOTALL)
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


def with_script_files(page: str, path: Path, folder: Path) -> str:
    """Return the page with the theme's inline scripts moved into files of `folder`.

    Raises SetupError for an inline script that is not the theme's.
    """

    def moved(match: re.Match[str]) -> str:
        script = match[1]
        if not any(pattern.fullmatch(script) for pattern in _theme_scripts()):
            raise SetupError(
                f"{path.name}: the inline script {script.strip()[:60]!r} is not the theme's; "
                "move it to a file in site-scripts/pages/."
            )
        folder.mkdir(parents=True, exist_ok=True)
        file = folder / f"{hashlib.sha256(f'{script}\n'.encode()).hexdigest()[:12]}.js"
        if not file.is_file():
            file.write_text(f"{script}\n", encoding="utf-8")
        # Neither deferred nor async: it runs where it stood.
        return f'<script src="{Path(os.path.relpath(file, path.parent)).as_posix()}"></script>'

    return _INLINE.sub(moved, page)


def policy(page: str, name: str) -> str:
    """Return the content policy for one page.

    Raises SetupError for a script in the page itself or in an attribute.
    """
    found = _Scripts()
    found.feed(page)
    found.close()
    if found.handlers:
        raise SetupError(f"{name}: {found.handlers[0]} runs code from an attribute; move it to site-scripts/pages/.")
    if found.inline:
        raise SetupError(
            f"{name}: the inline script {found.inline[0].strip()[:60]!r} would not run; "
            "move it to a file in site-scripts/pages/."
        )
    rules = {
        "default-src": "'none'",
        "script-src": "'self' 'wasm-unsafe-eval'",
        # Figures and the theme place parts with style attributes.
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


def kept_policies() -> Kept[str]:
    """The policies of pages by the content of each: a page that is as it was is not read through again."""
    return Kept("policies", digest([Path(__file__)], sys.version))


def with_policy(page: str, name: str, kept: Kept[str] | None = None) -> str:
    """Return the page with its policy right after the charset, before anything it governs."""
    if kept:
        rules = kept.get(hashlib.sha256(page.encode()).hexdigest(), lambda: policy(page, name))
    else:
        rules = policy(page, name)
    tag = f'<meta http-equiv="Content-Security-Policy" content="{rules}">'
    finished, count = _CHARSET.subn(lambda match: f"{match[0]}\n    {tag}", page, count=1)
    if count != 1:
        raise SetupError(f'{name}: no <meta charset="utf-8"> to put the content policy after.')
    return finished


def with_content_names(page: str, path: Path) -> str:
    """Return the page with each script and style of the site named by its content; their files are made.

    Only the runtime's loader keeps its name, which pages of an earlier build ask for, and says its content after ?v=.
    Raises SetupError for a reference to a file that is not there.
    """

    def named(match: re.Match[str]) -> str:
        to = match["to"]
        if not to.endswith((".js", ".css")):
            return match[0]
        file = path.parent / to
        if ":" in to or to.startswith("/") or not file.is_file():
            raise SetupError(f"{path.name} asks for {to}, which is not a file of the built site.")
        if file.name == "loader.js":
            return f'{match["start"]}{to}?v={content_hash(file)}"'
        return f'{match["start"]}{to[: -len(file.name)]}{content_named(file).name}"'

    return _REFERENCE.sub(named, page)


def content_hash(file: Path) -> str:
    """The first digits of a file's SHA-256."""
    about = file.stat()
    return _hash(file, about.st_mtime_ns, about.st_size)


@cache
def _hash(file: Path, _changed: int, _size: int) -> str:
    return hashlib.sha256(file.read_bytes()).hexdigest()[:10]


def content_named(file: Path) -> Path:
    """The file, or a copy beside it, with its content in its name: the same content, the same name in each build."""
    if content_hash(file)[:8] in file.name:  # as the theme names its own
        return file
    copy = file.with_name(f"{file.stem}-{content_hash(file)}{file.suffix}")
    if not copy.is_file():
        shutil.copyfile(file, copy)
    return copy


def references(page: str) -> list[str]:
    """The scripts and styles a page asks for, as it writes them."""
    return [match["to"] for match in _REFERENCE.finditer(page) if match["to"].endswith((".js", ".css"))]
