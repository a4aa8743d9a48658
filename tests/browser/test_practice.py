"""The practice page in a real browser, served and from disk: draw, hints, marking, progress."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

pytestmark = pytest.mark.browser

LINK = "practice.html#practice=coulomb.force&seed=3&level=1"
STORE = "physics-line-by-line.progress"
KIND = "physics-line-by-line progress"


def open_question(page: Page, place: str, link: str = LINK) -> Locator:
    """The drawn question of a link, with its sheet there."""
    page.goto(place + link)
    area = page.locator(".practice-question")
    expect(area.locator(".mark-it")).to_be_visible(timeout=30_000)
    return area


def told(page: Page) -> Locator:
    """What the page says about the progress kept."""
    return page.locator(".progress > .status")


def attempt(**changed: Any) -> dict[str, Any]:
    """One attempt of a progress file."""
    return {
        "question": "coulomb.contact",
        "day": "2026-03-01",
        "level": 1,
        "seed": 4,
        "earned": 2,
        "possible": 14,
        "mistakes": ["signs-dropped@Q_new"],
    } | changed


def progress_file(tmp_path: Path, *attempts: Any, **head: Any) -> Path:
    """A progress file with these attempts."""
    path = tmp_path / "progress.json"
    whole = {"kind": KIND, "version": 1, "attempts": list(attempts)} | head
    path.write_text(json.dumps(whole), encoding="utf-8")
    return path


def read_file(page: Page, path: Path) -> None:
    """Choose a progress file on the page."""
    page.locator(".progress-import input").set_input_files(path)


def test_a_link_draws_the_same_question_everywhere(place: str, page: Page) -> None:
    """The address alone gives the question: story, level and numbers."""
    area = open_question(page, place)
    story = area.locator(".story").first.text_content()
    expect(area.locator(".practice-title")).to_have_text("Coulomb's law: Force between two charges")
    other = page.context.new_page()
    assert open_question(other, place).locator(".story").first.text_content() == story
    assert story
    assert "nC" in story


def test_a_new_question_is_in_the_address(place: str, page: Page) -> None:
    """Picking a question draws one and puts it into the address, short and readable."""
    page.goto(place + "practice.html")
    page.locator("#practice-question").select_option("electric-field.plates")
    page.locator("#practice-level").select_option("2")
    page.get_by_role("button", name="New question").click()
    expect(page.locator(".practice-question .mark-it")).to_be_visible(timeout=30_000)
    assert re.search(r"#practice=electric-field\.plates&seed=\d{1,4}&level=2$", page.url)
    first = page.url
    page.get_by_role("button", name="Another one like it").click()
    for _ in range(50):
        if page.url != first:
            break
        page.wait_for_timeout(100)
    assert page.url != first


def test_hints_open_one_at_a_time(place: str, page: Page) -> None:
    """Each press opens one more hint of that part, until there are no more; none holds the answer."""
    area = open_question(page, place)
    part = area.locator('.answer-part[data-part="find"]')
    button = part.locator(".next-hint")
    count = int(re.findall(r"\d+", button.text_content() or "")[0])
    assert count >= 3
    for opened in range(1, count + 1):
        button.click()
        expect(part.locator(".hints li")).to_have_count(opened)
    expect(button).to_be_disabled()
    hints = part.locator(".hints").inner_text()
    area.locator(".practice-memo > summary").click()
    answer = area.locator(".practice-answer .answer .spoken").last
    expect(answer).to_contain_text("newtons")
    size = re.search(r"\d+,\d\d", answer.text_content() or "")
    assert size
    assert size[0] not in hints


def test_work_is_marked_and_kept_once(place: str, page: Page) -> None:
    """The first marking is kept on the device; the second is not."""
    area = open_question(page, place)
    area.locator('[name="answers.find.value"]').fill("1 N")
    area.locator(".mark-it").click()
    expect(area.locator('.verdict[data-part="find"]')).to_be_visible()
    expect(area.locator(".kept")).to_contain_text("Kept on this device: 0 of 5")
    expect(page.locator(".revision tbody tr")).to_have_count(1)
    expect(page.locator(".revision")).to_contain_text("in 1 day")
    area.locator(".mark-it").click()
    expect(area.locator(".kept")).to_contain_text("Only the first marking")
    stored = json.loads(page.evaluate(f"localStorage.getItem('{STORE}')"))
    assert len(stored["attempts"]) == 1
    assert stored["attempts"][0]["question"] == "coulomb.force"
    page.reload()
    expect(page.locator(".revision tbody tr")).to_have_count(1, timeout=30_000)


def test_an_answer_looked_up_first_is_not_kept(place: str, page: Page) -> None:
    """Opening the worked answer before marking does no harm, but does not count."""
    area = open_question(page, place)
    area.locator(".practice-memo > summary").click()
    expect(area.locator(".practice-answer .total")).to_be_visible()
    area.locator('[name="answers.find.value"]').fill("1 N")
    area.locator(".mark-it").click()
    expect(area.locator(".kept")).to_contain_text("Not kept")
    assert page.evaluate(f"localStorage.getItem('{STORE}')") is None


def test_an_empty_sheet_is_not_kept(place: str, page: Page) -> None:
    """Marking nothing says what to do."""
    area = open_question(page, place)
    area.locator(".mark-it").click()
    expect(area.locator(".kept")).to_contain_text("Nothing to mark yet")


def test_progress_goes_to_a_file_and_back(place: str, page: Page, tmp_path: Path) -> None:
    """Saved, wiped after a question, and read again from the file that was saved."""
    page.goto(place + "practice.html")
    read_file(page, progress_file(tmp_path, attempt(), attempt(question="coulomb.force", seed=1)))
    expect(told(page)).to_have_text("Read: 2 attempts, added to what was here.")
    expect(page.locator(".revision tbody tr")).to_have_count(2, timeout=30_000)
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Save to a file").click()
    saved = tmp_path / "saved.json"
    waiting.value.save_as(saved)
    assert re.fullmatch(r"physics-progress-\d{4}-\d\d-\d\d\.json", waiting.value.suggested_filename)
    page.get_by_role("button", name="Wipe", exact=True).click()
    page.get_by_role("button", name="Keep it").click()
    assert page.evaluate(f"localStorage.getItem('{STORE}')")
    page.get_by_role("button", name="Wipe", exact=True).click()
    page.get_by_role("button", name="Yes, wipe it").click()
    expect(told(page)).to_have_text("Wiped: nothing is kept here now.")
    assert page.evaluate(f"localStorage.getItem('{STORE}')") is None
    expect(page.locator(".revision")).to_have_count(0)
    read_file(page, saved)
    expect(told(page)).to_have_text("Read: 2 attempts, added to what was here.")
    read_file(page, saved)
    expect(told(page)).to_have_text("Everything in this file was here already.")


BAD = {
    "not json": ("{", "not a progress file, or it is damaged"),
    "other": ('{"a": 1}', "holds something else than progress"),
    "none": ("null", "holds something else than progress"),
    "version": (json.dumps({"kind": KIND, "version": 9, "attempts": []}), "another version"),
    **{
        name: (
            json.dumps({"kind": KIND, "version": 1, "attempts": [attempt(), bad]}),
            f"Entry 2 of this file has no usable {what}. Nothing was read from it.",
        )
        for name, bad, what in (
            ("markup", attempt(question="<img src=x onerror=alert(1)>"), "question"),
            ("prototype", attempt(question="__proto__"), "question"),
            ("day", attempt(day="2026-02-31"), "day"),
            ("level", attempt(level=9), "level"),
            ("marks", attempt(earned=15), "marks"),
            ("text for marks", attempt(earned="2"), "marks"),
            ("mistake", attempt(mistakes=["<b>x</b>"]), "list of mistakes"),
            ("nothing", None, "content"),
        )
    },
}  # fmt: skip


@pytest.mark.parametrize("name", BAD)
def test_a_bad_file_is_refused_whole(served: str, page: Page, tmp_path: Path, name: str) -> None:
    """A file that is none of ours, damaged or hostile gets a sentence; nothing of it is kept or run."""
    text, sentence = BAD[name]
    path = tmp_path / "bad.json"
    path.write_text(text, encoding="utf-8")
    page.goto(served + "practice.html")
    page.on("dialog", lambda dialog: pytest.fail(f"a dialog: {dialog.message}"))
    read_file(page, path)
    expect(told(page)).to_contain_text(sentence)
    assert page.evaluate(f"localStorage.getItem('{STORE}')") is None
    assert page.locator(".progress img, .progress b").count() == 0


def test_a_hostile_file_is_refused_from_disk(from_disk: str, page: Page, tmp_path: Path) -> None:
    """The same holds for a page opened from disk."""
    page.goto(from_disk + "practice.html")
    read_file(page, progress_file(tmp_path, attempt(question="<img src=x onerror=alert(1)>")))
    expect(told(page)).to_contain_text("Entry 1 of this file has no usable question.")


def test_what_was_missed_comes_next(place: str, page: Page, tmp_path: Path) -> None:
    """“What to revise next” opens the most overdue question."""
    page.goto(place + "practice.html")
    read_file(page, progress_file(tmp_path, attempt()))
    expect(page.locator(".revision")).to_contain_text("late", timeout=30_000)
    page.get_by_role("button", name="New question").click()
    expect(page.locator(".practice-title")).to_have_text(
        "Coulomb's law: Two spheres touch and part"
    )
    assert page.locator("#practice-question").input_value() == ""


def test_a_wrong_link_gets_a_sentence(place: str, page: Page) -> None:
    """A link to a question that is none, or with a seed that is none, says so and shows nothing as markup."""
    page.goto(place + "practice.html#practice=<img src=x>&seed=1")
    status = page.locator(".practice-picker .status")
    expect(status).to_contain_text("There is no such question to practise", timeout=30_000)
    expect(page.locator(".practice-question")).to_be_hidden()
    page.goto(place + "practice.html#practice=coulomb.force&seed=many")
    expect(status).to_contain_text("a whole number from 0 to 999999", timeout=30_000)


def test_the_keyboard_is_enough(place: str, page: Page) -> None:
    """Pick, draw, open a hint and mark without a pointer."""
    page.goto(place + "practice.html")
    page.locator("#practice-question").focus()
    page.keyboard.type("Force between")
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.locator(".practice-title")).to_be_focused(timeout=30_000)
    hint = page.locator(".next-hint").last
    hint.focus()
    page.keyboard.press("Enter")
    expect(page.locator(".hints li")).to_have_count(1)
    page.locator('[name="answers.find.value"]').focus()
    page.keyboard.type("1 N")
    page.keyboard.press("Enter")
    expect(page.locator(".verdict").first).to_be_visible()


def test_a_phone_shows_it_without_sideways_scrolling(place: str, phone_page: Page) -> None:
    """At 360 px nothing is wider than the screen, hints and worked answer open."""
    area = open_question(phone_page, place, "practice.html#practice=coulomb.contact&seed=3&level=3")
    for button in area.locator(".next-hint").all():
        button.click()
    area.locator(".practice-memo > summary").click()
    expect(area.locator(".practice-answer .total")).to_be_visible()
    wide = phone_page.evaluate("document.documentElement.scrollWidth - window.innerWidth")
    assert wide <= 0


# The sum of layout shifts once the fonts are there; their own swap is not this page's.
SHIFT = """() => new Promise((done) => {
  const fonts = performance.getEntriesByType("resource").filter((e) => e.name.includes(".woff"));
  const from = Math.max(0, ...fonts.map((e) => e.responseEnd)) + 80;
  const late = (list) => list.filter((e) => !e.hadRecentInput && e.startTime > from);
  const sum = (list) => late(list).reduce((total, e) => total + e.value, 0);
  new PerformanceObserver((list) => done(sum(list.getEntries()))).observe({ type: "layout-shift", buffered: true });
  setTimeout(() => done(0), 500);
})"""


def test_nothing_jumps_while_a_link_opens(served: str, page: Page, tmp_path: Path) -> None:
    """What is on screen stays where it is while the question and the list of progress arrive."""
    page.goto(served + "practice.html")
    read_file(page, progress_file(tmp_path, attempt()))
    expect(page.locator(".revision")).to_be_visible(timeout=30_000)
    for link in (LINK, "practice.html"):
        page.goto("about:blank")
        page.goto(served + link)
        expect(page.locator(".revision")).to_be_attached(timeout=30_000)
        page.wait_for_timeout(500)
        assert page.evaluate(SHIFT) < 0.02, link


def test_a_drawn_question_prints_alone(place: str, page: Page) -> None:
    """On paper stands the question, not its answer nor the page about practice; printing is no looking up."""
    area = open_question(page, place)
    page.emulate_media(media="print")
    expect(area.locator(".story")).to_be_visible()
    for other in (
        ".practice-picker",
        ".practice-question .practice-memo",
        ".progress",
        ".mark-it",
        "#the-three-levels",
    ):
        expect(page.locator(other)).to_be_hidden()
    page.wait_for_timeout(300)
    page.emulate_media(media="screen")
    area.locator("[name='answers.find.value']").fill("1 N")
    area.locator(".mark-it").click()
    expect(area.locator(".kept")).to_contain_text("Kept on this device")
    area.locator(".practice-memo > summary").click()
    expect(area.locator(".practice-answer .result").first).to_be_visible()
    page.emulate_media(media="print")
    expect(area.locator(".practice-answer .result").first).to_be_visible()


def test_without_scripts_there_are_questions_to_work(served: str, chromium: Browser) -> None:
    """The built page holds drawn questions with their memo folded away, and no dead controls."""
    context = chromium.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(served + "practice.html")
    expect(page.locator(".practice-picker")).to_be_hidden()
    assert page.locator(".drawn").count() == 6
    memo = page.locator(".drawn .practice-memo").first
    expect(memo.locator(".answer").first).to_be_hidden()
    memo.locator("summary").first.click()
    expect(memo.locator(".answer").first).to_be_visible()
    context.close()
