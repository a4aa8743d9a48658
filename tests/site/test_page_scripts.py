"""The scripts of the pages: types, lint, tests without a browser, and which page loads which."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

from page_scripts import FOLDER, bundle_of
from toolbox import script_checks

CHECKS = dict(script_checks())


@pytest.mark.parametrize("name", CHECKS)
def test_the_scripts_pass(name: str) -> None:
    """Each tool that checks the page scripts ends without a complaint."""
    done = subprocess.run(CHECKS[name], cwd=FOLDER, capture_output=True, text=True)
    assert done.returncode == 0, f"{done.stdout}\n{done.stderr}"


@pytest.mark.parametrize(
    ("tool", "wrong"),
    [
        ("tsc", "/** @type {number} */\nexport const a = 'b';\n"),
        ("tsc", "export const same = (entry) => entry;\n"),
        ("tsc", "export const title = () => document.querySelector('h1').textContent;\n"),
        ("tsc", "export function f() {\n  try {\n    f();\n  } catch (e) {\n    f(e.message);\n  }\n}\n"),
        ("tsc", "export const ask = () => window.bookletRuntime?.ask('solve', { question: 1 });\n"),
        ("biome", "export function f() {\n  let a = 1;\n  return a;\n}\n"),
    ],
)
def test_the_tools_complain_of_a_wrong_script(tmp_path: Path, tool: str, wrong: str) -> None:
    """What is not of its type or has none, what may be missing, or is never changed and no constant, is found."""
    for name in ("tsconfig.json", "biome.json", "globals.d.ts", "desk.d.ts"):
        (tmp_path / name).write_text((FOLDER / name).read_text(encoding="utf-8"), encoding="utf-8")
    (tmp_path / "a.js").write_text(wrong, encoding="utf-8")
    (command,) = (command for name, command in CHECKS.items() if name.startswith(tool))
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True)
    assert done.returncode != 0
    assert "a.js" in done.stdout + done.stderr


def test_no_type_is_anything_and_nothing_is_left_unchecked() -> None:
    """All that is strict is on, no type in a comment says "any", and no comment turns the checks off."""
    assert '"strict": true' in (FOLDER / "tsconfig.json").read_text(encoding="utf-8")
    assert not re.search(r'": false', (FOLDER / "tsconfig.json").read_text(encoding="utf-8"))
    for file in sorted([*FOLDER.rglob("*.js"), *FOLDER.rglob("*.d.ts")]):
        text = file.read_text(encoding="utf-8")
        types = "\n".join(re.findall(r"/\*\*.*?\*/", text, re.DOTALL)) if file.suffix == ".js" else text
        assert not re.search(r"@ts-|\{any\b|[:<|&(] ?any\b|=> any\b|, any[>,]|\*}", types), file.name


def test_a_page_gets_the_script_of_its_blocks() -> None:
    """A block with a module of its name brings it; without any, a page is only read."""
    assert bundle_of(["laws", "questions"]) == "reading"
    assert bundle_of({"question"}) == "question"
    assert bundle_of(["worksheet", "practice", "drawn"]) == "practice_worksheet"


def test_pages_load_one_script_of_their_kind(built_site: Path) -> None:
    """Beside the early ones each page has one; what is only read asks for no calculator."""
    seen = set()
    for page in built_site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        if page.name == "404.html":
            continue
        names = re.findall(r'<script defer src="[./]*assets/scripts/([\w-]+)-[0-9a-f]{10}\.js"', text)
        assert len(names) == 1, page.name
        seen.add(names[0])
        assert ("runtime/loader.js?v=" in text) == (names[0] not in {"reading", "contents"}), page.name
        assert ('form class="numbers' in text) == (names[0] == "question"), page.name
    assert seen == {"reading", "contents", "question", "practice", "worksheet", "data-sheet"}


# What each kind of page shows that needs a style of its own: the elements by which a reader would miss it.
NEEDS = {
    "sheet": 'class="check-mine"|class="practice-sheet"',
    "practice": 'class="practice"',
    "worksheet": 'class="worksheet"',
}


def test_pages_load_the_styles_they_use(built_site: Path) -> None:
    """A page has the style of own answers, of practice, of papers where these stand, and nowhere else; none twice."""
    for page in built_site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        names = re.findall(
            r'<link rel="stylesheet" href="[./]*/?(?:[\w./-]*/)?assets/([\w-]+)-[0-9a-f]{10}\.css"', text
        )
        assert len(names) == len(set(names)), page.name
        assert {"maths", "figures", "booklet", "print-link"} <= set(names) or page.name == "404.html", page.name
        for name, shown in NEEDS.items():
            assert (name in names) == bool(re.search(shown, text)), (page.name, name)
