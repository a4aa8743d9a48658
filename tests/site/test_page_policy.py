"""Sealing built pages: what is allowed in, and what stops the build."""

from __future__ import annotations

import re
from hashlib import sha256
from pathlib import Path

import pytest

from page_policy import policy, with_content_names, with_policy, with_script_files
from toolbox import SetupError

THEME_SCRIPT = (
    'var tabs=__md_get("__tabs");if(Array.isArray(tabs))e:for(var set of '
    'document.querySelectorAll(".tabbed-set")){var labels=set.querySelector(".tabbed-labels");'
    'for(var tab of tabs)for(var label of labels.getElementsByTagName("label"))'
    "if(label.innerText.trim()===tab){var input=document.getElementById(label.htmlFor);"
    "input.checked=!0;continue e}}"
)


def test_theme_script_becomes_a_file(tmp_path: Path) -> None:
    """An inline script of the theme's templates moves into a file and runs where it stood."""
    page = f"<p>a</p><script>{THEME_SCRIPT}</script><p>b</p>"
    moved = with_script_files(page, tmp_path / "index.html", tmp_path / "assets")
    (file,) = (tmp_path / "assets").iterdir()
    assert moved == f'<p>a</p><script src="assets/{file.name}"></script><p>b</p>'
    assert file.read_text(encoding="utf-8").strip() == THEME_SCRIPT
    assert policy(moved, "a.html") == policy("<p></p>", "a.html")


def test_data_in_a_script_element_may_stay() -> None:
    """JSON in a script element does not run, so it is not refused."""
    data = '<script type="application/json">{"a": 1}</script>'
    assert policy(data, "a.html") == policy("<p></p>", "a.html")


@pytest.mark.parametrize("script", ["alert(1)", f"{THEME_SCRIPT};alert(1)"], ids=["own", "theme's with more"])
def test_inline_script_of_ours_stops_the_build(script: str, tmp_path: Path) -> None:
    """A script that is not exactly the theme's is named, with the remedy."""
    page = f"<p>x</p><script>{script}</script>"
    with pytest.raises(SetupError, match=r"^a\.html: the inline script .* move it to a file"):
        with_script_files(page, tmp_path / "a.html", tmp_path)
    with pytest.raises(SetupError, match=r"^a\.html: the inline script .* move it to a file"):
        policy(page, "a.html")


@pytest.mark.parametrize("element", ['<p onclick="go()">', '<img ONERROR="go()">', '<a href=" javascript:go()">'])
def test_code_in_an_attribute_stops_the_build(element: str) -> None:
    """Event-handler attributes and javascript: links are refused."""
    with pytest.raises(SetupError, match="runs code from an attribute"):
        policy(element, "a.html")


def test_policy_comes_right_after_the_charset() -> None:
    """The policy is the second element of the head, ahead of all it governs."""
    page = with_policy('<head>\n<meta charset="utf-8">\n<script src="a.js"></script></head>', "a")
    assert page.index("charset") < page.index("Content-Security-Policy") < page.index("<script")


def test_page_without_charset_is_refused() -> None:
    """A page the policy cannot be put into stops the build."""
    with pytest.raises(SetupError, match=r"^a\.html: no <meta charset"):
        with_policy("<head></head>", "a.html")


def test_the_name_changes_with_the_file(tmp_path: Path) -> None:
    """A reference names the file by its content, so an update is picked up and what stayed is not fetched again."""
    page = '<script src="a.js"></script><link rel="stylesheet" href="b.css"><a href="c.html">'
    (tmp_path / "b.css").write_text("", encoding="utf-8")
    seen = set()
    for content in ("one", "two", "one"):
        (tmp_path / "a.js").write_text(content, encoding="utf-8")
        seen.add(with_content_names(page, tmp_path / "index.html"))
    assert len(seen) == 2
    for text, content in zip(sorted(seen), ("one", "two"), strict=True):
        assert 'href="c.html"' in text
        (name,) = re.findall(r'src="(a-[0-9a-f]{10}\.js)"', text)
        assert (tmp_path / name).read_text(encoding="utf-8") in {"one", "two"}, content
        assert sha256((tmp_path / name).read_bytes()).hexdigest()[:10] in name


@pytest.mark.parametrize("address", ["gone.js", "https://cdn.example/a.js", "/a.js"])
def test_reference_outside_the_site_stops_the_build(tmp_path: Path, address: str) -> None:
    """A missing file, another host and an absolute path are each refused."""
    with pytest.raises(SetupError, match="which is not a file of the built site"):
        with_content_names(f'<script defer src="{address}"></script>', tmp_path / "index.html")
