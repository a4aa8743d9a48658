"""Formulas as they are met: by a screen reader, on paper, and on a page enlarged to four times its size."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any
from unicodedata import normalize

import pytest
from playwright.sync_api import BrowserContext, Page, expect

pytestmark = pytest.mark.browser

SLOW = 30_000
# A laptop's 1280 px at 400 % (WCAG 2.2, 1.4.10: a width of 320 CSS pixels).
FOURFOLD = {"viewport": {"width": 320, "height": 256}, "device_scale_factor": 4}

# What of a formula stands outside all that shows it, and scrolls nowhere; test_every_page.py looks for it on paper.
CUT = """() => [...document.querySelectorAll("math")]
  .filter((math) => math.checkVisibility({ contentVisibilityAuto: true }))
  .flatMap((math) => {
    const box = math.getBoundingClientRect();
    if (!box.width) return [];
    for (let node = math.parentElement; node; node = node.parentElement) {
      const style = getComputedStyle(node);
      if (["auto", "scroll"].includes(style.overflowX) && !node.matches("html, body")) return [];
      const around = node.getBoundingClientRect();
      const clips = style.overflowX !== "visible" || node === document.documentElement;
      if (clips && (box.right > around.right + 1.5 || box.left < around.left - 1.5)) {
        return [`${math.getAttribute("alttext") ?? math.textContent} in ${node.tagName}.${node.className}`];
      }
    }
    return [];
  })"""


def tree(page: Page, selector: str) -> list[dict[str, Any]]:
    """What a screen reader is given below the first element found, each node after its parent."""
    session = page.context.new_cdp_session(page)
    session.send("DOM.enable")
    root = session.send("DOM.getDocument")["root"]["nodeId"]
    node = session.send("DOM.querySelector", {"nodeId": root, "selector": selector})["nodeId"]
    backend = session.send("DOM.describeNode", {"nodeId": node})["node"]["backendNodeId"]
    nodes = {one["nodeId"]: one for one in session.send("Accessibility.getFullAXTree")["nodes"]}
    top = next(one for one in nodes.values() if one.get("backendDOMNodeId") == backend)

    def below(one: dict[str, Any]) -> list[dict[str, Any]]:
        return [one, *(found for child in one["childIds"] if child in nodes for found in below(nodes[child]))]

    return [{**one, "below": below(one)} for one in below(top)]


def words(node: dict[str, Any]) -> str:
    """The text below a node of the tree, without spaces; a sloping letter of formulas is that letter."""
    said = [one["name"]["value"] for one in node["below"] if one["role"]["value"] == "StaticText"]
    return normalize("NFKC", "".join("".join(said).split()))


def test_a_screen_reader_is_given_the_fraction_of_a_step(served: str, page: Page) -> None:
    """The formula of the worked example's step: a fraction whose two sides are told apart, and its plain words."""
    page.goto(served + "coulombs-law/force.html")
    step = "li.step math:has(mfrac)"
    expect(page.locator(step).first).to_be_visible()
    fraction = next(one for one in tree(page, step) if one["role"]["value"] == "MathMLFraction")
    sides = [one for one in fraction["below"][1:] if one["nodeId"] in fraction["childIds"]]
    shown = page.locator(f"{step} mfrac").first.evaluate("(node) => [...node.children].map((side) => side.textContent)")
    assert len(sides) == 2
    told = [words({"below": below_of(one, fraction)}) for one in sides]
    assert told == ["".join(side.split()) for side in shown]
    assert told == ["kQ1Q2", "r2"]
    assert page.locator(step).first.get_attribute("alttext") == "F = kQ₁Q₂/r²"


def below_of(top: dict[str, Any], whole: dict[str, Any]) -> list[dict[str, Any]]:
    """A node of a tree with what stands below it."""
    by_id = {one["nodeId"]: one for one in whole["below"]}
    return [top, *(found for child in top["childIds"] if child in by_id for found in below_of(by_id[child], whole))]


def test_a_formula_that_is_cut_off_is_seen(served: str, page: Page) -> None:
    """What looks for them finds formulas in a column that is made too narrow, and none before."""
    page.goto(served + "coulombs-law/force.html")
    assert page.locator("li.step math").count() > 3
    assert page.evaluate(CUT) == []
    page.add_style_tag(content="li.step .tex { display: block; width: 20px; overflow: hidden; }")
    assert page.evaluate(CUT)


WIDE = (
    "coulombs-law/force.html",
    "several-charges/line.html",
    "several-charges/plane.html",
    "equilibrium/museum-ramp.html",
    "data-sheet.html",
    "electric-field.html",
    "practice.html#practice=several-charges.line&seed=3&level=3",
    "worksheet.html#paper=several-charges.line,momentum.join&level=3&seed=2",
)


@pytest.mark.parametrize("address", WIDE)
def test_no_formula_is_cut_off_at_four_times_the_size(
    served: str, open_context: Callable[..., BrowserContext], address: str
) -> None:
    """At 400 % a formula breaks, or scrolls inside its line, which a keyboard reaches; the page itself does not."""
    page = open_context(**FOURFOLD).new_page()
    page.goto(served + address)
    if "#" in address:
        expect(page.locator(".practice-sheet .story, .sheets > .memo .paper-total").first).to_be_visible(timeout=SLOW)
    page.evaluate("document.querySelectorAll('details').forEach((node) => { node.open = true; })")
    page.evaluate("dispatchEvent(new Event('resize'))")
    page.wait_for_timeout(300)
    assert page.evaluate(CUT) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    unreached = """() => [...document.querySelectorAll(".tex.display")]
        .filter((node) => node.scrollWidth > node.clientWidth + 1 && node.tabIndex !== 0)
        .map((node) => node.textContent)"""
    assert page.evaluate(unreached) == []
