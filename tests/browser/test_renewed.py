"""A changed answer takes the place of the one before: lines first, figures after, what did not change left alone."""

from __future__ import annotations

import json

import pytest
from playwright.sync_api import Page, expect

from calc import desk, topics
from calc.practice.drawing import draw
from tests.browser.page_modules import in_module

pytestmark = pytest.mark.browser

RENEW = """(renewed, answers) => {
  const area = document.createElement("div");
  area.innerHTML = answers[0].whole;
  const wrong = [];
  for (const { key, whole, lines, drawings, parts } of answers) {
    renewed.renew(area, lines);
    const places = area.querySelectorAll("figure[data-drawing]");
    const marked = [...places].every((place) => place.classList.contains("waiting"))
      && area.querySelectorAll("details.part.waiting").length === Object.keys(parts).length
      && (Object.keys(parts).length > 0 || places.length === Object.keys(drawings).length);
    renewed.draw(area, drawings, parts);
    const right = document.createElement("div");
    right.innerHTML = whole;
    if (area.innerHTML !== right.innerHTML || !marked) wrong.push(key);
  }
  return wrong;
}"""


def reply(operation: str, **data: object) -> dict[str, object]:
    """What calc replies."""
    found: dict[str, object] = json.loads(desk.answer(json.dumps({"operation": operation, "data": data})))["data"]
    return found


def answered(key: str, seed: int, opened: list[str] | None) -> dict[str, object]:
    """An answer in one piece and in two, of drawn numbers; with only these of its folded parts in the first."""
    topic, question = topics.find(key)
    drawn = draw(topic, question, seed, 1 + seed % 3)
    data = {"question": key, "inputs": drawn.inputs, "find": drawn.find}
    later = reply("drawings", **data, opened=opened)
    return {
        "key": f"{key} {seed} {opened}",
        "whole": reply("solve", **data)["html"],
        "lines": reply("solve", **data, drawn=False, opened=opened)["html"],
        "drawings": later["drawings"],
        "parts": later.get("parts", {}),
    }


@pytest.mark.parametrize("opened", [None, [], ["before", "force", "net"]], ids=["whole", "folded", "some open"])
def test_an_answer_after_another_is_the_same_as_one_set_afresh(page: Page, opened: list[str] | None) -> None:
    """Whatever answer stood there before, of the same question or of another: nothing of it is left."""
    page.goto("about:blank")
    answers = [answered(key, seed, opened) for key in topics.question_keys()[::2] for seed in (1, 2, 2)]
    assert in_module(page, "renewed", RENEW, answers) == []


def test_a_folded_part_keeps_its_lines_until_the_next_come(page: Page) -> None:
    """The head is that of the new answer at once; of a part whose lines do not come none is left."""
    page.goto("about:blank")
    seen = in_module(
        page,
        "renewed",
        """(renewed) => {
          const part = (head, line) =>
            `<details class="part" data-part="a"><summary>${head}</summary>${line}</details>`;
          const area = document.createElement("div");
          area.innerHTML = part("old", "<p>1</p>");
          const seen = [];
          const see = () => seen.push([area.textContent, area.firstElementChild.classList.contains("waiting")]);
          renewed.renew(area, part("new", ""));
          see();
          renewed.draw(area, {}, { a: part("new", "<p>2</p>") });
          see();
          renewed.renew(area, part("newest", ""));
          renewed.draw(area, {}, {});
          see();
          return seen;
        }""",
    )
    assert seen == [["new1", True], ["new2", False], ["newest", False]]


def test_what_did_not_change_stays(page: Page) -> None:
    """Of an answer with one other line only that line is new; the same figure is not set anew."""
    page.goto("about:blank")
    kept = in_module(
        page,
        "renewed",
        """(renewed) => {
          const answer = (number) => `<article><p class="story">Two</p><table class="given"><tbody><tr><td>1</td></tr>
            </tbody></table><figure data-drawing="data"></figure><p class="result">${number}</p></article>`;
          const area = document.createElement("div");
          renewed.renew(area, answer(1));
          renewed.draw(area, { data: "<svg><title>a</title></svg>" });
          const before = [...area.querySelectorAll("*")];
          renewed.renew(area, answer(2));
          renewed.draw(area, { data: "<svg><title>a</title></svg>" });
          const after = [...area.querySelectorAll("*")];
          return [area.querySelector(".result").textContent, before.every((node, index) => node === after[index])];
        }""",
    )
    assert kept == ["2", True]


def test_what_a_reader_opened_stays_open(page: Page) -> None:
    """A part and plain words that were opened are open in the next answer too."""
    page.goto("about:blank")
    opened = in_module(
        page,
        "renewed",
        """(renewed) => {
          const answer = (number) => `<details class="part" data-part="a"><summary>1</summary>${number}</details>`;
          const area = document.createElement("div");
          renewed.renew(area, answer(1));
          area.firstElementChild.open = true;
          renewed.renew(area, answer(2));
          return area.firstElementChild.open && area.textContent;
        }""",
    )
    assert opened == "12"


def test_the_figure_is_that_of_the_lines(served: str, page: Page) -> None:
    """Typing on cancels a figure under way; when what was typed last is refused, the lines on view get theirs."""
    page.goto(f"{served}several-charges/line.html")
    form = page.locator("form.numbers").first
    assert page.evaluate("bookletRuntime.ask('settings', {})")["ok"]
    area = page.locator(".answer-area").first
    box = form.locator('[name="charges.2.x"]')
    page.evaluate("""() => {
      const box = document.querySelector('form.numbers [name="charges.2.x"]');
      for (const text of ["61 cm", "62 cm", "63 cm"]) {
        box.value = text;
        box.dispatchEvent(new Event("input", { bubbles: true }));
      }
    }""")
    expect(area.locator("figure.scene svg").first).to_contain_text("0,43")
    expect(area.locator("figure.waiting")).to_have_count(0)
    # The lines of 64 cm have come, their figure has not, and 6x cm is none.
    page.evaluate("""() => new Promise((done) => {
      const box = document.querySelector('form.numbers [name="charges.2.x"]');
      const type = (text) => {
        box.value = text;
        box.dispatchEvent(new Event("input", { bubbles: true }));
      };
      document.addEventListener("booklet:answer", () => { type("6x cm"); done(); }, { once: true });
      type("64 cm");
    })""")
    expect(area).to_have_class("answer-area stale")
    expect(area.locator(".given")).to_contain_text("64")
    expect(area.locator("figure.scene svg").first).to_contain_text("0,44")
    expect(area.locator("figure.waiting")).to_have_count(0)
    expect(box).to_have_value("6x cm")


def test_parts_folded_and_open_follow_what_is_typed(served: str, page: Page) -> None:
    """Whether a reader has a part open or not, its lines and figures are soon those of the numbers typed."""
    page.goto(f"{served}several-charges/rail.html")
    assert page.evaluate("bookletRuntime.ask('settings', {})")["ok"]
    area = page.locator(".answer-area").first
    parts = area.locator("details.part")
    assert parts.count() > 2
    parts.nth(1).locator(":scope > summary").click()
    before = [part.inner_html() for part in parts.all()]
    page.locator('form.numbers [name="Q_B"]').first.fill("-6,5 nC")
    expect(area.locator(".given")).to_contain_text("6,5")
    expect(area.locator(".waiting")).to_have_count(0)
    after = [part.inner_html() for part in parts.all()]
    assert sum("6,5" in part for part in after) > sum("6,5" in part for part in before)
    assert [was != part for was, part in zip(before, after, strict=True)].count(True) > 2
    page.reload()
    page.locator('form.numbers [name="Q_B"]').first.fill("-6,5 nC")
    expect(area.locator(".given")).to_contain_text("6,5")
    expect(area.locator(".waiting")).to_have_count(0)
    parts.nth(1).locator(":scope > summary").click()
    assert [part.inner_html() for part in parts.all()] == after


def test_back_to_the_example_is_not_overtaken(served: str, page: Page) -> None:
    """An answer under way when the example is asked back does not take its place."""
    page.goto(f"{served}coulombs-law/force.html")
    assert page.evaluate("bookletRuntime.ask('settings', {})")["ok"]
    area = page.locator(".answer-area").first
    before = area.inner_text()
    page.evaluate("""() => {
      const box = document.querySelector('form.numbers [name="r"]');
      box.value = "37 cm";
      box.dispatchEvent(new Event("input", { bubbles: true }));
      document.querySelector("form.numbers .back-to-example").click();
    }""")
    assert page.evaluate("bookletRuntime.ask('settings', {})")["ok"]
    assert area.inner_text() == before
