"""The worksheet page in a real browser: made, printed, saved, linked, one for each learner."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from calc import desk, topics

pytestmark = pytest.mark.browser

PAGE = "worksheet.html"
LINK = f"{PAGE}#paper=coulomb,several-charges&n=4&level=2&seed=41&heading=Forces_between_charges"
SLOW = 30_000


def paper(page: Page) -> Locator:
    """The question papers on screen."""
    return page.locator(".sheets > .paper:not(.memo)")


def memo(page: Page) -> Locator:
    """The memos on screen."""
    return page.locator(".sheets > .memo")


def open_made(page: Page, address: str) -> None:
    """Open a link and wait for its paper and memo."""
    page.goto("about:blank")
    page.goto(address)
    expect(memo(page).first).to_be_visible(timeout=SLOW)
    expect(page.locator(".worksheet-form .status")).to_contain_text("marks.", timeout=SLOW)


def make_for(page: Page, place: str, *names: str) -> None:
    """Make the papers of a class list and wait until all are made."""
    page.goto(place + PAGE)
    page.get_by_text("A different paper for each learner").click()
    page.locator('textarea[name="names"]').fill("\n".join(names))
    page.get_by_role("button", name="Make the paper").click()
    expect(page.locator(".worksheet-form .status")).to_contain_text("marks.", timeout=SLOW)


def link_in(place: str, text: str) -> str:
    """The link in a text, whole: a page opened from disk leaves out the folder."""
    found = re.search(r"\S*worksheet\.html#\S+", text)
    assert found, text
    return found[0] if found[0].startswith("http") else place + found[0]


def choose(page: Page, number: int) -> None:
    """Show one of several papers and wait until its memo is there to the end."""
    page.locator('select[name="shown"]').select_option(str(number))
    expect(memo(page).locator(".paper-total")).to_be_visible(timeout=6 * SLOW)


def saved(page: Page, notation: str) -> str:
    """The text of the file that a save button writes."""
    with page.expect_download() as download:
        page.locator(f'[data-save="{notation}"]').click()
    return Path(download.value.path()).read_text(encoding="utf-8")


def test_a_link_makes_the_paper(served: str, page: Page) -> None:
    """Topics, number of questions, level, number and heading come from the address."""
    open_made(page, served + LINK)
    expect(paper(page).locator("h2")).to_have_text("Forces between charges")
    expect(paper(page).locator(".paper-question")).to_have_count(4)
    expect(page.locator('input[name="seed"]')).to_have_value("41")
    expect(memo(page).locator("math").first).to_be_visible()


def test_the_page_gives_the_bytes_of_cpython(served: str, page: Page) -> None:
    """Python in the page and CPython write the same papers, in every notation."""
    for level in (1, "rising"):
        data = {
            "topics": ["coulomb", "electric-field", "equilibrium", "several-charges"],
            "marks": 60,
            "level": level,
            "seed": 12,
            "learner": "Thabo M",
            "space": "lined",
            "as": ["paper_html", "memo_html", "markdown", "markdown_memo", "latex", "latex_memo"],
        }
        page.goto(served + PAGE)
        here = page.evaluate("(data) => bookletRuntime.ask('paper', data, { limit: 60000 })", data)
        assert here == json.loads(desk.answer(json.dumps({"operation": "paper", "data": data})))


def test_made_by_keyboard_alone(served: str, page: Page) -> None:
    """Space ticks a topic, typing fills a box, Enter makes the paper, and the address follows."""
    page.goto(served + PAGE)
    page.locator('input[name="topic"][value="equilibrium"]').focus()
    page.keyboard.press("Space")
    page.locator('input[name="count"]').focus()
    page.keyboard.press("Control+A")
    page.keyboard.type("2")
    page.keyboard.press("Enter")
    expect(paper(page).locator(".paper-question")).to_have_count(2, timeout=SLOW)
    assert "#paper=" in page.url


def test_the_link_of_a_paper_makes_it_again(place: str, page: Page) -> None:
    """What the copy button offers opens the same paper and memo."""
    open_made(page, place + LINK)
    page.evaluate("() => { Clipboard.prototype.writeText = () => Promise.reject(); }")
    page.get_by_role("button", name="Copy a link to this paper").click()
    link = link_in(place, page.locator(".worksheet-tools .copy-box").input_value())
    assert len(link.partition("#")[2]) < 300
    first = [paper(page).inner_text(), memo(page).inner_text()]
    other = page.context.new_page()
    open_made(other, link)
    again = [paper(other).inner_text(), memo(other).inner_text()]
    assert again == first


def test_each_learner_gets_a_paper_and_no_link_has_a_name(served: str, page: Page) -> None:
    """Three names, three papers with other numbers; the list survives a reload and is wiped on request."""
    make_for(page, served, "Thabo M", "Ayşe K", "", "Li W", "Thabo M")
    expect(page.locator(".worksheet-form .status")).to_contain_text("stands twice in the list")
    expect(page.locator('select[name="shown"] option')).to_have_text(["1: Thabo M", "2: Ayşe K", "3: Li W"])
    stories, links = set(), [page.url]
    for number, name in enumerate(("Thabo M", "Ayşe K", "Li W")):
        choose(page, number)
        expect(paper(page)).to_contain_text(name)
        stories.add(tuple(paper(page).locator(".paper-story").all_inner_texts()))
        links += page.locator(".print-link p").all_inner_texts()
    assert len(stories) == 3
    assert not re.search(r"Thabo|Ay|Li%|Li_", " ".join(link.partition("#")[2] for link in links))
    assert len(set(links)) == 4
    page.goto("about:blank")
    page.goto(served + PAGE)
    expect(page.locator('textarea[name="names"]')).to_have_value("Thabo M\nAyşe K\n\nLi W\nThabo M")
    page.get_by_role("button", name="Wipe the class list").click()
    expect(page.locator('textarea[name="names"]')).to_have_value("")
    assert page.evaluate("JSON.stringify({...localStorage})").find("Thabo") == -1


def test_a_learners_link_opens_that_learners_paper(served: str, page: Page) -> None:
    """The number in a learner's link makes the same questions; the name stays behind."""
    make_for(page, served, "Ayşe K")
    link = link_in(served, page.locator(".print-link p").first.inner_text())
    stories = paper(page).locator(".paper-story").all_inner_texts()
    other = page.context.new_page()
    other.goto("about:blank")
    open_made(other, link)
    expect(memo(other)).to_have_count(1)
    assert paper(other).locator(".paper-story").all_inner_texts() == stories


# In place of calc: a paper at once for each learner; of paper number `window.gate` on, only when it is opened.
STAND_IN = """(reply) => {
    const real = window.bookletRuntime.ask;
    let made = 0;
    window.bookletRuntime.ask = async (operation, data) => {
        if (operation !== "paper") return real(operation, data);
        if (data.learner && !data.as) made += 1;
        if (made > (window.gate ?? 999)) await new Promise(() => {});
        const theirs = (text) => text.replaceAll("LEARNER", data.learner || "");
        const own = JSON.parse(theirs(JSON.stringify(reply)));
        return { ok: true, data: { ...own, own: 7,
            markdown: theirs("# LEARNER\\n"), markdown_memo: theirs("# memo LEARNER\\n") } };
    };
}"""

# What one slice of work does: elements put into the page between two turns of the page's own loop.
WATCH = """() => {
    const seen = (window.seen = { added: 0, elements: 0 });
    const size = (node) => (node.nodeType === 1 ? 1 + node.querySelectorAll("*").length : 0);
    new MutationObserver((records) => {
        let added = 0;
        for (const record of records) for (const node of record.addedNodes) if (node.isConnected) added += size(node);
        seen.added = Math.max(seen.added, added);
        seen.elements = Math.max(seen.elements, document.querySelectorAll("*").length);
    }).observe(document.body, { childList: true, subtree: true });
}"""


def with_stand_in(page: Page, place: str, count: int, learners: int, gate: int = 999) -> None:
    """The worksheet page with a list of learners, where a paper of so many questions comes at once."""
    data = {"topics": list(topics.topics()), "count": count, "level": 2, "seed": 4, "learner": "LEARNER"}
    made = json.loads(desk.answer(json.dumps({"operation": "paper", "data": data})))["data"]
    page.goto(place + PAGE)
    page.evaluate(STAND_IN, made)
    page.evaluate(WATCH)
    page.evaluate("(gate) => { window.gate = gate; }", gate)
    page.get_by_text("A different paper for each learner").click()
    names = "\n".join(f"Learner {number}" for number in range(1, learners + 1))
    page.locator('textarea[name="names"]').fill(names)
    page.get_by_role("button", name="Make the paper").click()


@pytest.mark.timeout(600)  # a long paper is set twice; a busy machine takes its time
def test_a_class_of_sixty_with_thirty_questions_leaves_the_page_small(served: str, page: Page) -> None:
    """Sixty long papers: one is in the page, put there and set in small pieces."""
    with_stand_in(page, served, count=30, learners=60)
    status = page.locator(".worksheet-form .status")
    expect(status).to_contain_text("60 papers, each with numbers of its own.", timeout=6 * SLOW)
    expect(page.locator(".sheets > article")).to_have_count(2)
    page.get_by_role("button", name="The next paper").click()
    expect(paper(page)).to_contain_text("Learner 2")
    choose(page, 59)
    expect(paper(page)).to_contain_text("Learner 60")
    expect(page.get_by_role("button", name="The next paper")).to_be_disabled()
    seen = page.evaluate("window.seen")
    assert seen["elements"] < 80_000
    assert seen["added"] < 8_000
    assert seen["added"] > 0


def test_typing_and_stopping_while_papers_are_made(served: str, page: Page) -> None:
    """The bar tells how far it is, boxes take what is typed, and stopping keeps what is made, under its own heading."""
    with_stand_in(page, served, count=3, learners=40, gate=25)
    doing = page.locator(".worksheet-work .doing")
    expect(doing).to_have_text("Making paper 26 of 40", timeout=SLOW)
    bar = page.locator(".worksheet-work progress")
    assert bar.evaluate("(node) => [node.value, node.max]") == [25, 40]
    page.locator('input[name="heading"]').press_sequentially("Later")
    expect(page.locator('input[name="heading"]')).to_have_value("Later")
    page.get_by_role("button", name="Stop").click()
    expect(page.locator(".worksheet-form .status")).to_contain_text("Stopped: 25 papers of 40 made, and kept below.")
    expect(doing).to_be_hidden()
    expect(page.locator('select[name="shown"] option')).to_have_count(25)
    choose(page, 24)
    expect(paper(page)).to_contain_text("Learner 25")
    assert "Later" not in page.locator(".print-link p").first.inner_text()
    text = saved(page, "html")
    assert text.count("<article") == 51  # a paper and a memo for each of 25, and the answer table


def test_a_page_that_never_rests_makes_its_papers(served: str, page: Page) -> None:
    """What waits for a quiet moment does not wait for ever: here the browser calls back only when told by when."""
    page.add_init_script("""window.requestIdleCallback = (run, { timeout } = {}) => {
        if (timeout) setTimeout(run, timeout);
    };""")
    with_stand_in(page, served, count=2, learners=3)
    expect(page.locator(".worksheet-form .status")).to_contain_text("3 papers", timeout=SLOW)


def test_every_paper_is_printed_and_saved(served: str, page: Page) -> None:
    """Print and files hold all papers, then all memos, then the answers of the class, whichever is shown."""
    with_stand_in(page, served, count=2, learners=60)
    expect(page.locator(".worksheet-form .status")).to_contain_text("60 papers", timeout=SLOW)
    page.evaluate("""() => { window.print = () => {
            window.onpaper = [...document.querySelectorAll(".printed > article")].map((node) => node.innerText);
            window.dispatchEvent(new Event("afterprint"));
        }; }""")
    page.locator(".print").click()
    for _ in range(600):
        if page.evaluate("window.onpaper !== undefined"):
            break
        page.wait_for_timeout(100)
    on_paper = page.evaluate("window.onpaper")
    assert len(on_paper) == 121
    assert ["memo" in text for text in on_paper] == [False] * 60 + [True] * 60 + [False]
    assert "answers of the class" in on_paper[120]
    assert "Learner 60" in on_paper[59]
    assert "Learner 60" in on_paper[119]
    assert page.locator(".printed > article").count() == 0
    assert page.evaluate("window.seen")["added"] < 8_000
    text = saved(page, "html")
    assert text.count("<article") == 121
    assert "<math" in text
    assert "Learner 37" in text
    text = saved(page, "markdown")
    assert len(re.findall(r"^# ", text, re.M)) == 121
    assert "answers of the class" in text
    assert text.count("Learner 37") == 2 + 2  # paper, memo, and a row for each of two questions


def test_printing_can_be_stopped(served: str, page: Page) -> None:
    """Stopping while sheets are set prints nothing, says so, and keeps the papers."""
    with_stand_in(page, served, count=2, learners=20)
    expect(page.locator(".worksheet-form .status")).to_contain_text("20 papers", timeout=SLOW)
    page.evaluate("""() => {
            window.print = () => { window.printed = true; };
            document.querySelector(".print").click();
            setTimeout(() => document.querySelector(".worksheet-work .stop").click());
        }""")
    expect(page.locator(".worksheet-tools .status")).to_have_text("Stopped: nothing was printed. The papers are kept.")
    assert page.evaluate("window.printed") is None
    assert page.locator(".printed > article").count() == 0
    expect(page.locator('select[name="shown"] option')).to_have_count(20)


def test_the_browsers_own_print_holds_all_papers(served: str, page: Page) -> None:
    """Without the page's button, too, each paper and memo begins a page of its own."""
    make_for(page, served, "Thabo M", "Ayşe K", "Li W")
    whole = page.pdf()
    assert len(re.findall(rb"/Type\s*/Page\b", whole)) >= 6
    page.locator('select[name="piece"]').select_option("memo")
    assert 3 <= len(re.findall(rb"/Type\s*/Page\b", page.pdf())) < len(re.findall(rb"/Type\s*/Page\b", whole))
    assert page.locator(".printed > article").count() == 0


def test_paper_from_disk_names_no_folder(from_disk: str, page: Page, tmp_path: Path) -> None:
    """From disk, paper, files and links tell what to open, and nothing of where the reader keeps the booklet."""
    open_made(page, from_disk + LINK)
    stamp = page.locator(".print-link p").first
    expect(stamp).to_contain_text("Paper 41, level 2, 4 questions. In the folder of the booklet:")
    expect(page.locator(".sheets .print-code")).to_have_count(0)
    first = paper(page).inner_text()
    page.evaluate("() => { Clipboard.prototype.writeText = () => Promise.reject(); }")
    page.get_by_role("button", name="Copy a link to this paper").click()
    expect(page.locator(".worksheet-tools .status")).to_contain_text(
        "put the address of the folder of a booklet in front of it"
    )
    copied = page.locator(".worksheet-tools .copy-box").input_value()
    folder = from_disk.removeprefix("file://")
    for text in (stamp.inner_text(), copied, saved(page, "html")):
        assert "file:" not in text
        assert folder not in text
    for link in (stamp.inner_text(), copied):
        other = page.context.new_page()
        open_made(other, link_in(from_disk, link))
        assert paper(other).inner_text() == first
    for name in ("coulombs-law/force.html#q=coulomb.force&Q1=8nC&Q2=2nC&r=5cm", "practice.html"):
        page.goto(from_disk + name)
        # solving may renew what stands after #
        opened = page.evaluate("() => { dispatchEvent(new Event('beforeprint')); return location.href; }")
        printed = page.locator(".md-content__inner > .print-link").text_content() or ""
        assert printed.endswith(f"In the folder of the booklet: {opened.removeprefix(from_disk)}")
        assert name.split("#")[0] in printed
        assert "#" not in name or "=coulomb.force&Q1=8nC&Q2=2nC&r=5cm" in printed
        assert "file:" not in printed


def test_without_storage_a_class_list_is_said_to_be_forgotten(served: str, page: Page) -> None:
    """Where the browser denies storage, papers are made all the same, and the page says what is not kept."""
    page.add_init_script("""Object.defineProperty(window, "localStorage", { configurable: true,
            get() { throw new DOMException("denied", "SecurityError"); } });""")
    make_for(page, served, "Thabo M", "Li W")
    expect(page.locator(".worksheet-form .status")).to_contain_text(
        "This browser does not store the class list: it holds until the page is closed."
    )


def test_the_saved_page_needs_nothing_else(place: str, page: Page, chromium: Browser) -> None:
    """The HTML file has no script, no other file and no colour of the site; its formulas read without scripts."""
    open_made(page, place + LINK)
    text = saved(page, "html")
    assert not re.search(r"<script|<link|<img|@import|url\((?!data:font/)|\bsrc=|\son\w+=", text)
    context = chromium.new_context(java_script_enabled=False)
    asked: list[str] = []
    context.on("request", lambda request: asked.append(request.url))
    alone = context.new_page()
    alone.set_content(text)
    expect(alone.locator(".memo math").first).to_be_visible()
    expect(alone.locator(".paper-figure svg").first).to_be_visible()
    assert not [url for url in asked if url.startswith("http")]
    context.close()


def test_markdown_and_latex_are_saved(served: str, page: Page) -> None:
    """Both files hold the paper and then the memo; a part can be saved alone."""
    open_made(page, served + LINK)
    markdown = saved(page, "markdown")
    assert markdown.startswith("# Forces between charges\n")
    assert "# Forces between charges: memo" in markdown
    latex = saved(page, "latex")
    assert latex.count(r"\begin{document}") == latex.count(r"\end{document}") == 1
    assert r"\newpage" in latex
    page.locator('select[name="piece"]').select_option("paper")
    assert ": memo" not in saved(page, "markdown")


def test_only_papers_are_printed_and_the_memo_begins_a_page(served: str, page: Page) -> None:
    """In print the site's furniture is gone, a question keeps together and the memo starts on a new page."""
    open_made(page, served + LINK)
    page.emulate_media(media="print")
    for furniture in (".md-header", ".worksheet-form", ".worksheet-tools", "h1", ".md-footer"):
        expect(page.locator(furniture).first).to_be_hidden()
    style = "(node) => { const s = getComputedStyle(node); return [s.breakInside, s.breakBefore]; }"
    assert paper(page).locator(".paper-question").first.evaluate(style)[0] == "avoid"
    assert memo(page).first.evaluate(style)[1] == "page"
    page.emulate_media(media="screen")
    page.locator('select[name="piece"]').select_option("memo")
    page.emulate_media(media="print")
    expect(paper(page)).to_be_hidden()
    expect(memo(page)).to_be_visible()


def test_the_link_can_be_kept_off_the_paper(served: str, page: Page) -> None:
    """For a test, only the memo carries the link that opens the memo."""
    open_made(page, served + LINK)
    expect(page.locator(".paper .print-link svg")).to_have_count(2)
    page.locator('select[name="link"]').select_option("memo")
    expect(page.locator(".paper:not(.memo) .print-link")).to_have_count(0)
    expect(page.locator(".memo .print-link")).to_have_count(1)


def test_wrong_wishes_get_a_sentence_beside_their_box(served: str, page: Page) -> None:
    """A number that cannot be is said at its box and stays typed."""
    page.goto(served + PAGE)
    page.locator('input[name="count"]').fill("99")
    page.get_by_role("button", name="Make the paper").click()
    problem = page.locator('[data-field="count"] .problem')
    expect(problem).to_have_text("Number of questions: a whole number from 1 to 30.", timeout=SLOW)
    expect(page.locator('input[name="count"]')).to_have_value("99")
    page.locator('input[name="count"]').fill("2")
    page.get_by_role("button", name="Make the paper").click()
    expect(memo(page)).to_be_visible(timeout=SLOW)
    expect(problem).to_be_hidden()


HOSTILE = [
    "#paper=%3Cscript%3Ewindow.hit%3D1%3C/script%3E",
    "#paper=coulomb&n=1e99&seed=-5",
    "#paper=coulomb&level=%3Cb%3E",
    "#paper=coulomb&own=%3Cimg%20src%3Dx%20onerror%3Dwindow.hit%3D1%3E",
    "#paper=coulomb&heading=" + "x" * 1000,
    "#paper=" + "coulomb," * 12_500,
    "#paper=%E0%A4%A",
    "#paper=" + "coulomb.force," * 61,
]


@pytest.mark.parametrize("hash_", HOSTILE, ids=range(len(HOSTILE)))
def test_a_hostile_link_is_a_sentence(served: str, page: Page, hash_: str) -> None:
    """What a link asks wrongly is said; nothing of it becomes markup."""
    page.goto(served + PAGE + hash_)
    said = page.locator(".link-problem:visible, .worksheet-form .problem:visible")
    expect(said.first).not_to_be_empty(timeout=SLOW)
    assert page.evaluate("window.hit") is None
    assert page.locator(".md-content img, .md-content b, .sheets script").count() == 0


def test_markup_in_a_heading_is_printed_as_text(served: str, page: Page) -> None:
    """A heading with tags shows its tags."""
    open_made(page, f"{served}{PAGE}#paper=coulomb.force&heading=%3Cb%20onclick%3Dx%3EHi%3C/b%3E")
    expect(paper(page).locator("h2")).to_have_text("<b onclick=x>Hi</b>")


def test_a_phone_needs_no_sideways_scrolling(served: str, phone_page: Page) -> None:
    """At 360 px form, paper and memo fit the screen."""
    open_made(phone_page, f"{served}{PAGE}#paper=several-charges,equilibrium&n=5&level=2&seed=3")
    widths = phone_page.evaluate("[document.documentElement.scrollWidth, innerWidth]")
    assert widths[0] <= widths[1]
