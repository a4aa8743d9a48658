"""Measure every page of the built site: bytes of HTML, elements, and screens on a laptop and on a phone; and what is
fetched: to read a page of each kind, to have a live form, and as the zip.

A question's page is measured with its example as it stands open; folds are as the page opens them.
"""

from __future__ import annotations

import gzip
import re
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from build_site import ZIP, build
from chapters import chapters, entry_at
from serve import serving
from toolbox import CHROMIUM_ARGUMENTS, ensure_chromium

LAPTOP = (1366, 768)
PHONE = (390, 844)
# By kind of page: bytes of HTML, screens on a laptop, screens on a phone.
LIMITS = {"chapter": (150_000, 5.0, None), "question": (150_000, 6.0, 9.0)}


# Compressed bytes a first visit fetches.
READABLE = 250_000
# A live form brings all questions' code: so many bytes with so many questions, and in proportion between the two.
LIVE_FORM = {35: 6_500_000, 120: 7_300_000}
ZIPPED = 12_000_000
_ANSWERED = """async () => {
  const inputs = { Q1: "6 nC", Q2: "-2 nC", r: "15 cm" };
  return (await bookletRuntime.ask("solve", { question: "coulomb.force", inputs })).ok;
}"""
_SCRIPT = re.compile(r"assets/scripts/([\w-]+)-[0-9a-f]{10}\.js")


@dataclass(frozen=True)
class Measure:
    """One page: ``name`` is its path in the site; screens are heights of the page over the window's."""

    name: str
    kind: str
    size: int
    elements: int
    laptop: float
    phone: float

    @property
    def over(self) -> str:
        """What is above its limit, in words; '' if nothing is."""
        limits = LIMITS.get(self.kind)
        if not limits:
            return ""
        had = zip(
            ("bytes", "screens on a laptop", "screens on a phone"),
            limits,
            (self.size, self.laptop, self.phone),
            strict=True,
        )
        return "; ".join(f"{value:g} {what}, at most {most:g}" for what, most, value in had if most and value > most)


def _kind(name: str) -> str:
    page = name.removesuffix(".html")
    if entry_at(page):
        return "question"
    return "chapter" if page in {chapter.page for chapter in chapters()} else "other"


def _look(browser: Browser, address: str, names: list[str]) -> Iterator[tuple[int, float, float]]:
    # Without scripts the pages stand as built, and a hundred are measured in seconds.
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    for name in names:
        page.set_viewport_size({"width": LAPTOP[0], "height": LAPTOP[1]})
        page.goto(address + name)
        elements, laptop = page.evaluate("[document.querySelectorAll('*').length, document.body.scrollHeight]")
        page.set_viewport_size({"width": PHONE[0], "height": PHONE[1]})
        yield elements, laptop / LAPTOP[1], page.evaluate("document.body.scrollHeight") / PHONE[1]
    context.close()


def measure(site: Path, browser: Browser) -> list[Measure]:
    """Every page of the site but the one for addresses not found."""
    names = sorted(f.relative_to(site).as_posix() for f in site.rglob("*.html") if f.name != "404.html")
    with serving(site, "") as address:
        seen = list(_look(browser, address, names))
    return [
        Measure(name, _kind(name), (site / name).stat().st_size, *found)
        for name, found in zip(names, seen, strict=True)
    ]


def compressed(file: Path) -> int:
    """Bytes of a file as a server that compresses sends it."""
    content = file.read_bytes()
    return len(content) if file.suffix in {".woff2", ".gz", ".png"} else len(gzip.compress(content, 6))


def heaviest_by_script(site: Path) -> list[str]:
    """Of the pages that load the same script the one with the most HTML, for each script there is."""
    found: dict[tuple[str, ...], tuple[int, str]] = {}
    for file in site.rglob("*.html"):
        scripts = tuple(sorted(set(_SCRIPT.findall(file.read_text(encoding="utf-8")))))
        if scripts:
            found[scripts] = max(found.get(scripts, (0, "")), (compressed(file), file.relative_to(site).as_posix()))
    return sorted(name for _, name in found.values())


def to_read(site: Path, browser: Browser, name: str) -> int:
    """Bytes a first visit fetches before the calculator: page, styles, fonts, scripts, the loader of the runtime."""
    context = browser.new_context(viewport={"width": LAPTOP[0], "height": LAPTOP[1]})
    context.route("**/runtime/*-*", lambda route: route.abort())
    asked: set[str] = set()
    with serving(site, "") as address:
        context.on("request", lambda request: asked.add(request.url.split("?")[0].split("#")[0].removeprefix(address)))
        page = context.new_page()
        page.goto(address + name)
        page.evaluate("document.fonts.ready.then(() => 0)")
        context.close()
    files = [site / name for name in asked if "runtime/" not in name or name.endswith("loader.js")]
    return sum(compressed(file) for file in files if file.is_file())


def live_form() -> int:
    """The most that a live form may bring with the questions there are."""
    (few, small), (many, large) = LIVE_FORM.items()
    questions = sum(len(chapter.entries) for chapter in chapters())
    return round(small + (large - small) * max(0, questions - few) / (many - few))


def to_use(site: Path, browser: Browser, name: str) -> dict[str, int]:
    """Bytes of each file that a first visit to a question's page fetches until its form has answered."""
    asked: set[str] = set()
    with serving(site, "", asked) as address:
        page = browser.new_page()
        page.goto(address + name)
        if not page.evaluate(_ANSWERED):
            raise ValueError(f"{name}: its form gives no answer.")
        page.close()
    return {name: compressed(site / name) for name in sorted(asked) if (site / name).is_file()}


def main() -> int:
    """Print the table; 1 if a page is above a limit."""
    site = build()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=str(ensure_chromium()), args=CHROMIUM_ARGUMENTS)
        found = measure(site, browser)
        visits = {name: to_read(site, browser, name) for name in heaviest_by_script(site)}
        live = to_use(site, browser, "coulombs-law/force.html")
        browser.close()
    print(f"{'page':44} {'bytes':>9} {'elements':>8} {'laptop':>6} {'phone':>6}")
    for one in found:
        told = f"  {one.over}" if one.over else ""
        print(f"{one.name:44} {one.size:9} {one.elements:8} {one.laptop:6.1f} {one.phone:6.1f}{told}")
    lines = [(f"first visit to read {name}", size, READABLE) for name, size in visits.items()]
    lines.append(("live form", sum(live.values()), live_form()))
    lines.append(("the zip", ZIP.stat().st_size, ZIPPED))
    print()
    for what, size, most in lines:
        print(f"{what:58} {size / 1000:8.0f} kB{f', at most {most / 1000:.0f}' if size > most else ''}")
    return int(any(one.over for one in found) or any(size > most for _, size, most in lines))


if __name__ == "__main__":
    sys.exit(main())
