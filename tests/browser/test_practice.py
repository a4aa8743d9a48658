"""The practice page in a real browser, served and from disk: draw, hints, marking, progress."""

from __future__ import annotations

import json
import re
from pathlib import Path
from time import sleep
from typing import Any

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from calc import desk, topics
from tests.browser.page_modules import in_module

pytestmark = pytest.mark.browser

SLOW = 30_000
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


def test_a_new_question_is_in_the_address(served: str, page: Page) -> None:
    """Picking a question draws one and puts it into the address, short and readable."""
    page.goto(served + "practice.html")
    page.locator("#practice-question").select_option("electric-field.plates")
    page.locator("#practice-level").select_option("2")
    page.get_by_role("button", name="New question").click()
    expect(page.locator(".practice-question .mark-it")).to_be_visible(timeout=30_000)
    assert re.search(r"#practice=electric-field\.plates&seed=\d{1,4}&level=2&draw=\d$", page.url)
    first = page.url
    page.get_by_role("button", name="Another one like it").click()
    for _ in range(50):
        if page.url != first:
            break
        page.wait_for_timeout(100)
    assert page.url != first


def test_hints_open_one_at_a_time(served: str, page: Page) -> None:
    """Each press opens one more hint of that part, until there are no more; none holds the answer."""
    area = open_question(page, served)
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


def test_an_answer_looked_up_first_is_not_kept(served: str, page: Page) -> None:
    """Opening the worked answer before marking does no harm, but does not count."""
    area = open_question(page, served)
    area.locator(".practice-memo > summary").click()
    expect(area.locator(".practice-answer .total")).to_be_visible()
    area.locator('[name="answers.find.value"]').fill("1 N")
    area.locator(".mark-it").click()
    expect(area.locator(".kept")).to_contain_text("Not kept")
    assert page.evaluate(f"localStorage.getItem('{STORE}')") is None


def test_an_empty_sheet_is_not_kept(served: str, page: Page) -> None:
    """Marking nothing says what to do."""
    area = open_question(page, served)
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
    "no list": (json.dumps({"kind": KIND, "version": 1}), "it has no list of attempts"),
}


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


UNUSABLE = {
    "markup": attempt(question="<img src=x onerror=alert(1)>"),
    "prototype": attempt(question="__proto__"),
    "day": attempt(day="2026-02-31"),
    "level": attempt(level=9),
    "marks": attempt(earned=15),
    "text for marks": attempt(earned="2"),
    "mistake": attempt(mistakes=["<b>x</b>"]),
    "nothing": None,
}


@pytest.mark.parametrize("name", UNUSABLE)
def test_an_entry_that_cannot_be_used_is_kept_aside(served: str, page: Page, tmp_path: Path, name: str) -> None:
    """The good entry of a file is read; the other is kept as it is, counted, and never shown or run."""
    page.goto(served + "practice.html")
    page.on("dialog", lambda dialog: pytest.fail(f"a dialog: {dialog.message}"))
    read_file(page, progress_file(tmp_path, UNUSABLE[name], attempt()))
    expect(told(page)).to_have_text("Read: 1 attempt, and 1 entry kept aside, added to what was here.")
    expect(page.locator(".revision tbody tr")).to_have_count(1, timeout=SLOW)
    expect(page.locator(".kept-aside")).to_have_text(
        "1 entry cannot be read by this version of the booklet; it is kept aside, unchanged, and goes into the saved"
        " file."
    )
    assert stored(page)["aside"] == [UNUSABLE[name]]
    assert page.locator(".progress img, .progress b").count() == 0


def test_nesting_without_end_breaks_nothing(served: str, page: Page, tmp_path: Path) -> None:
    """A file nested a million deep gets a sentence, and the page goes on keeping attempts."""
    path = tmp_path / "nested.json"
    depth = 1_000_000
    path.write_text(f'{{"kind": "{KIND}", "version": 1, "attempts": [{"[" * depth}{"]" * depth}]}}')
    page.goto(served + "practice.html")
    read_file(page, path)
    expect(told(page)).not_to_be_empty(timeout=SLOW)
    assert mark(page) == ""
    expect_attempts(page, 1)


def stored(page: Page) -> Any:
    """What the browser keeps of the progress, read as JSON; None if it keeps nothing."""
    return json.loads(page.evaluate(f"localStorage.getItem('{STORE}')") or "null")


def begin_with(page: Page, place: str, text: str) -> None:
    """Open the practice page of a browser that keeps this text as progress."""
    page.goto(place + "practice.html")
    page.evaluate(f"(text) => localStorage.setItem('{STORE}', text)", text)
    page.reload()


def mark(page: Page, **changed: Any) -> str:
    """Keep one attempt as the page does after marking; returns the trouble there was, '' for none."""
    trouble: str = in_module(
        page,
        "progress",
        "(progress, entry) => progress.add(entry)",
        attempt(question="coulomb.force", day="2026-03-02", possible=5) | changed,
    )
    return trouble


def mark_on_page(page: Page, place: str, seed: int) -> None:
    """Answer and mark a drawn question as a reader does: the page's own scripts keep it."""
    area = open_question(page, place, LINK.replace("seed=3", f"seed={seed}"))
    box = area.locator('[name="answers.find.value"]')
    expect(box).to_have_value("", timeout=SLOW)
    box.fill("1 N")
    area.locator(".mark-it").click()


def expect_attempts(page: Page, count: int) -> None:
    """Wait until the page knows of this many attempts: tabs hear of each other a little later."""
    for _ in range(100):
        if in_module(page, "progress", "(progress) => progress.load().length") == count:
            return
        page.wait_for_timeout(50)
    assert in_module(page, "progress", "(progress) => progress.load().length") == count


def save_file(page: Page, path: Path) -> Path:
    """Save the progress to a file."""
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Save to a file").click()
    waiting.value.save_as(path)
    return path


def wipe(page: Page) -> None:
    """Wipe what is kept."""
    page.get_by_role("button", name="Wipe", exact=True).click()
    page.get_by_role("button", name="Yes, wipe it").click()
    expect(told(page)).to_have_text("Wiped: nothing is kept here now.")


def whole(*attempts: Any, **head: Any) -> str:
    """The text of a progress file."""
    return json.dumps({"kind": KIND, "version": 1, "attempts": list(attempts)} | head, separators=(",", ":"))


NEWER = attempt(level=4, hints=2)
FIFTY = [attempt(seed=seed) for seed in range(50)]


def test_one_bad_entry_costs_no_other(served: str, page: Page, tmp_path: Path) -> None:
    """Among fifty attempts, a damaged and a newer entry hide nothing, and the next mark erases nothing."""
    begin_with(page, served, whole(*FIFTY, NEWER, {"day": 7}))
    expect(page.locator(".revision tbody tr")).to_have_count(1, timeout=SLOW)
    expect(page.locator(".kept-aside")).to_contain_text("2 entries cannot be read")
    assert mark(page) == ""
    assert stored(page)["attempts"][:50] == FIFTY
    assert len(stored(page)["attempts"]) == 51
    assert stored(page)["aside"] == [NEWER, {"day": 7}]
    before = stored(page)
    saved = save_file(page, tmp_path / "saved.json")
    expect(told(page)).to_have_text("Saved: 51 attempts, and 2 entries kept aside.")
    wipe(page)
    expect(page.locator(".kept-aside")).to_be_hidden()
    read_file(page, saved)
    expect(told(page)).to_contain_text("Read: 51 attempts, and 2 entries kept aside")
    assert stored(page) == before
    read_file(page, saved)
    expect(told(page)).to_have_text("Everything in this file was here already.")
    assert stored(page) == before


@pytest.mark.parametrize(
    "text",
    [
        whole(*FIFTY)[:-9],
        whole(*FIFTY, version=2),
        whole(*FIFTY, kind="something else"),
        whole(attempts={"a": 1}),
    ],
    ids=["cut short", "newer version", "other kind", "no list"],
)
def test_what_was_not_understood_is_never_overwritten(served: str, page: Page, text: str) -> None:
    """Progress of another version, or damaged as a whole, is still there after the next mark."""
    begin_with(page, served, text)
    expect(page.locator(".kept-aside")).to_contain_text("kept aside, unchanged")
    assert mark(page) == ""
    (aside,) = stored(page)["aside"]
    assert text in (aside, json.dumps(aside, separators=(",", ":")))
    assert len(stored(page)["attempts"]) == 1


def test_what_lay_aside_is_read_once_it_can_be(served: str, page: Page) -> None:
    """A file laid aside whole by another version is taken up again by the version that wrote it."""
    begin_with(page, served, whole(attempt(), aside=[json.loads(whole(*FIFTY)), NEWER]))
    expect(page.locator(".kept-aside")).to_contain_text("1 entry cannot be read")
    assert in_module(page, "progress", "(progress) => progress.load().length") == 51


def test_members_of_a_newer_booklet_are_kept(served: str, page: Page) -> None:
    """An entry, or the file, with more to it than this version knows is used and stays as it is."""
    more = attempt(hints=3)
    begin_with(page, served, whole(more, goal="daily"))
    expect(page.locator(".revision tbody tr")).to_have_count(1, timeout=SLOW)
    mark(page)
    assert stored(page)["attempts"][0] == more
    assert stored(page)["goal"] == "daily"


def test_a_day_to_come_blocks_nothing(served: str, page: Page) -> None:
    """Attempts dated 2099 and 9999 are listed as due, and the next mark counts as the newest."""
    wrong = [attempt(question="coulomb.force", day="9999-12-31", seed=n) for n in range(9)]
    begin_with(page, served, whole(*wrong, attempt(day="2099-01-01")))
    rows = page.locator(".revision tbody tr")
    expect(rows).to_have_count(2, timeout=SLOW)
    expect(rows.nth(0)).to_contain_text("today")
    expect(rows.nth(1)).to_contain_text("today")
    today = in_module(page, "due", "({ today }) => today()")
    mark(page, question="coulomb.force", day=today, earned=1)
    page.reload()
    expect(rows.filter(has_text="Force between two charges")).to_contain_text("in 1 day", timeout=SLOW)
    expect(rows.filter(has_text="Force between two charges")).to_contain_text("1 of 5")


@pytest.mark.parametrize("now", ["1970-01-01", "2003-05-05", "9999-12-31"])
def test_a_wrong_clock_loses_nothing(served: str, own_page: Page, now: str) -> None:
    """With the clock far back or far on, marking is kept and counts as the newest attempt."""
    own_page.goto(served + "practice.html")
    own_page.evaluate(
        f"(text) => localStorage.setItem('{STORE}', text)",
        whole(attempt(question="coulomb.force", day="2026-11-01", earned=5, possible=5)),
    )
    own_page.goto("about:blank")  # timers of a page that has begun cannot be stopped by a clock set later
    own_page.clock.set_fixed_time(f"{now}T12:00:00Z")
    area = open_question(own_page, served)
    area.locator('[name="answers.find.value"]').fill("1 N")
    area.locator(".mark-it").click()
    expect(area.locator(".kept")).to_contain_text("Kept on this device: 0 of 5")
    expect(own_page.locator(".revision tbody tr")).to_have_count(1)
    expect(own_page.locator(".revision tbody tr")).to_contain_text("0 of 5")
    assert [entry["day"] for entry in stored(own_page)["attempts"]] == ["2026-11-01", now]


def test_questions_the_booklet_does_not_have_hide_none(served: str, page: Page) -> None:
    """Two thousand attempts of unknown questions leave the list as it is, are counted, and stay."""
    strange = [attempt(question=f"thermal.q{n}", day="2026-09-09") for n in range(2000)]
    begin_with(page, served, whole(attempt(), *strange))
    expect(page.locator(".revision tbody tr")).to_have_count(1, timeout=SLOW)
    expect(page.locator(".kept-aside")).to_have_text(
        "2000 attempts are of questions this booklet does not have; they are kept as well."
    )
    mark(page)
    assert len(stored(page)["attempts"]) == 2002
    assert stored(page)["attempts"][0] == attempt()


def test_a_long_history_is_short_enough_to_be_read(served: str, page: Page) -> None:
    """Eight attempts of every question there is, with the longest lists of mistakes, still make a list."""
    keys = topics.question_keys()
    long = [f"{'m' * 70}@Q_{n}" for n in range(40)]
    entries = [attempt(question=key, seed=n, mistakes=long) for key in keys for n in range(9)]
    begin_with(page, served, whole(*entries))
    expect(page.locator(".revision tbody tr")).to_have_count(len(keys), timeout=SLOW)
    many = in_module(
        page,
        "progress",
        """(progress, keys) => {
            const all = keys.concat(
              Array.from({ length: 165 - keys.length }, (_, n) => `more-topics.question-number-${n}`));
            const made = all.map((question) => ({ question, day: "2026-03-01", level: 1, seed: 1,
              earned: 1, possible: 5,
              mistakes: Array.from({ length: 40 }, (_, n) => "m".repeat(78) + String(n).padStart(2, "0")) }));
            const text = JSON.stringify({ kind: "physics-line-by-line progress", version: 1, attempts:
            [].concat(...Array(9).fill(made)) });
            localStorage.setItem("physics-line-by-line.progress", text);
            const told = progress.history(new Set(all));
            return [Object.keys(told).length, JSON.stringify(told).length];
        }""",
        keys,
    )
    assert many[0] == 165  # as many as a browser's room for one site holds
    assert many[1] < desk.LONGEST_REQUEST - 1000


def test_two_tabs_lose_nothing(place: str, page: Page) -> None:
    """Two tabs that mark at the same time both keep what they earned."""
    page.goto(place + "practice.html")
    other = page.context.new_page()
    other.goto(place + "practice.html")
    for tab, first in ((page, 0), (other, 100)):
        in_module(
            tab,
            "progress",
            """(progress, [entry, first]) => {
              for (let n = 0; n < 20; n += 1) progress.add({ ...entry, seed: first + n }); }""",
            [attempt(), first],
        )
    for tab in (page, other):
        expect_attempts(tab, 40)
    assert len(stored(page)["attempts"]) == 40


def test_a_tab_that_wrote_over_another_is_put_right(place: str, page: Page) -> None:
    """When a tab writes what it read before another had written, the other's attempts come back."""
    begin_with(page, place, whole(attempt()))
    mark_on_page(page, place, 3)
    expect_attempts(page, 2)
    other = page.context.new_page()
    other.goto(place + "practice.html")
    other.evaluate(f"(text) => localStorage.setItem('{STORE}', text)", whole(attempt(), attempt(seed=9)))
    expect_attempts(page, 3)
    assert sorted(entry["seed"] for entry in stored(page)["attempts"]) == [3, 4, 9]
    expect(page.locator(".revision tbody tr")).to_have_count(2, timeout=SLOW)
    wipe(other)
    expect_attempts(page, 0)
    mark(other, seed=5)
    expect_attempts(page, 1)
    assert [entry["seed"] for entry in stored(page)["attempts"]] == [5]


def test_a_full_store_drops_nothing(place: str, page: Page, tmp_path: Path) -> None:
    """With no room left the mark is listed, said to be unstored with the way out, and stored once there is room."""
    begin_with(page, place, whole(*FIFTY))
    page.evaluate("""() => {
            for (let size = 1 << 22; size; size >>= 1) {
                try { localStorage.setItem(`filler-${size}`, "x".repeat(size)); } catch { /* full */ }
            }
        }""")
    area = open_question(page, place)
    area.locator('[name="answers.find.value"]').fill("1 N")
    area.locator(".mark-it").click()
    expect(area.locator(".kept")).to_have_text(
        "0 of 5 is listed below, but not stored. The room this browser gives the booklet is full, so it is held only "
        "until this page is closed. Save it to a file, below, to keep it."
    )
    expect(page.locator(".revision tbody tr")).to_have_count(2)
    assert stored(page)["attempts"] == FIFTY
    saved = json.loads(save_file(page, tmp_path / "saved.json").read_text(encoding="utf-8"))
    assert len(saved["attempts"]) == 51
    page.evaluate(
        "Object.keys(localStorage).filter((key) => key.startsWith('filler')).forEach((key) =>"
        " localStorage.removeItem(key))"
    )
    mark_on_page(page, place, 8)
    expect_attempts(page, 52)
    assert [entry["seed"] for entry in stored(page)["attempts"]][-2:] == [3, 8]


DENIED = """Object.defineProperty(window, "localStorage", { configurable: true,
  get() { throw new DOMException("denied", "SecurityError"); } });"""


def test_without_storage_the_page_says_so_and_works(place: str, page: Page, tmp_path: Path) -> None:
    """Where the browser denies storage, marking and the list work until the page is closed, and it is said."""
    page.add_init_script(DENIED)
    area = open_question(page, place)
    expect(page.locator(".kept-aside")).to_contain_text("This browser lets the page store nothing")
    area.locator('[name="answers.find.value"]').fill("1 N")
    area.locator(".mark-it").click()
    expect(area.locator(".kept")).to_contain_text(
        "0 of 5 is listed below, but not stored. This browser lets the page store nothing"
    )
    expect(page.locator(".revision tbody tr")).to_have_count(1)
    saved = json.loads(save_file(page, tmp_path / "saved.json").read_text(encoding="utf-8"))
    assert len(saved["attempts"]) == 1
    wipe(page)
    expect(page.locator(".revision")).to_have_count(0)


def test_a_hostile_file_is_refused_from_disk(from_disk: str, page: Page, tmp_path: Path) -> None:
    """A page opened from disk refuses what is no progress as well."""
    page.goto(from_disk + "practice.html")
    path = tmp_path / "bad.json"
    path.write_text('{"a": 1}', encoding="utf-8")
    read_file(page, path)
    expect(told(page)).to_contain_text("holds something else than progress")


def test_what_was_missed_comes_next(served: str, page: Page, tmp_path: Path) -> None:
    """“What to revise next” opens the most overdue question."""
    page.goto(served + "practice.html")
    read_file(page, progress_file(tmp_path, attempt()))
    expect(page.locator(".revision")).to_contain_text("late", timeout=30_000)
    page.get_by_role("button", name="New question").click()
    expect(page.locator(".practice-title")).to_have_text("Coulomb's law: Two spheres touch and part")
    assert page.locator("#practice-question").input_value() == ""


def test_a_wrong_link_gets_a_sentence(served: str, page: Page) -> None:
    """A link to a question that is none, or with a seed that is none, says so and shows nothing as markup."""
    page.goto(served + "practice.html#practice=<img src=x>&seed=1")
    notice = page.locator(".md-content .link-problem")
    expect(notice).to_have_text(
        "This link draws no question. There is no such question to practise. Pick one from the list.",
        timeout=SLOW,
    )
    expect(page.locator(".practice-question")).to_be_hidden()
    page.goto(served + "practice.html#practice=coulomb.force&seed=many")
    expect(notice).to_contain_text("a whole number from 0 to 999999", timeout=SLOW)


def test_the_keyboard_is_enough(served: str, page: Page) -> None:
    """Pick, draw, open a hint and mark without a pointer."""
    page.goto(served + "practice.html")
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


def test_a_phone_shows_it_without_sideways_scrolling(served: str, phone_page: Page) -> None:
    """At 360 px nothing is wider than the screen, hints and worked answer open."""
    area = open_question(phone_page, served, "practice.html#practice=coulomb.contact&seed=3&level=3")
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


# The height of the list in every frame from the first on; the fonts do not change it.
HEIGHTS = """() => {
  window.heights = new Set();
  const look = () => {
    const list = document.querySelector(".progress-list");
    if (list && document.querySelector(".progress .status")) window.heights.add(list.offsetHeight);
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}"""


@pytest.mark.parametrize("tried", [1, "all"])
def test_the_list_has_its_room_before_it_comes(served: str, page: Page, phone_page: Page, tried: int | str) -> None:
    """However late the scripts are, the list of progress takes the room it takes when it is there."""
    keys = topics.question_keys()
    keys = keys if tried == "all" else keys[:tried]
    text = whole(*(attempt(question=key, mistakes=["signs-dropped@Q_new"]) for key in keys))
    for tab in (page, phone_page):
        begin_with(tab, served, text)
        tab.goto("about:blank")
        tab.add_init_script(f"({HEIGHTS})()")
        tab.route("**/progress.js", lambda route: (sleep(0.4), route.continue_()))
        tab.goto(served + "practice.html")
        expect(tab.locator(".revision tbody tr")).to_have_count(len(keys), timeout=SLOW)
        tab.wait_for_timeout(200)
        heights = tab.evaluate("[...window.heights]")
        assert len(heights) == 1, heights


def test_a_drawn_question_prints_alone(served: str, page: Page) -> None:
    """On paper stands the question, not its answer nor the page about practice; printing is no looking up."""
    area = open_question(page, served)
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
