"""Addresses: old links open the same answers, forms stand in frames of other pages, prints carry their link."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import cycle
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from calc import topics
from calc.practice.drawing import draw
from calc.working.reading import read
from chapters import Chapter, Entry, chapters
from serve import serving
from tests.browser.conftest import DESKTOP, PHONE
from tests.browser.page_modules import in_module
from tests.browser.test_every_page import fits_and_works

pytestmark = pytest.mark.browser

SLOW = 30_000
CHAPTERS = chapters()
ENTRIES = [entry for chapter in CHAPTERS for entry in chapter.entries]

# Links as they were given out. They must open the same, now and in every later version: add, never change.
SOLVED = [
    (
        "coulombs-law.html#q=coulomb.force&Q1=+8nC&Q2=-3nC&r=12cm&find=F",
        "1,50 times 10 to the power minus 5 newtons, attraction",
    ),
    (
        "coulombs-law.html#q=coulomb.force&Q1=%2B8%20nC&Q2=-3%20nC&r=12%20cm",
        "1,50 times 10 to the power minus 5 newtons, attraction",
    ),
    ("coulombs-law.html#q=coulomb.force&Q1=6nC&Q2=-2nC&F=4.8e-6N&find=r", "0,15 metres"),
    (
        "coulombs-law.html#q=coulomb.force&Q2=-2nC&F=4,8µN&r=15cm&acting=attract&find=Q1",
        "6,00 times 10 to the power minus 9 coulombs, positive charge",
    ),
    (
        "coulombs-law.html#q=coulomb.force&Q1=+8nC&Q2=-3nC&r=12cm&find=F&part=find",
        "1,50 times 10 to the power minus 5 newtons",
    ),
    (
        "coulombs-law.html#q=coulomb.force&Q1=+8nC&Q2=-3nC&r=12cm&find=F&set.k=8,99e9&set.comma=point&set.decimals=3",
        "1.498 times 10 to the power minus 5 newtons",
    ),
    ("coulombs-law.html#q=coulomb.contact&Q1=+9nC&Q2=-4nC&r=20cm", "electrons move from B to A"),
    (
        "several-charges.html#q=several-charges.line&charges=+6nC_0cm~-4nC_20cm~+5nC_50cm&on=2&positive=right",
        "3,40 times 10 to the power minus 6 newtons, to the left",
    ),
    (
        "several-charges.html#q=several-charges.line&charges=%2B6nC_0cm~-4nC_20cm~%2B5nC_50cm~-2nC_70cm&on=1&positive=left",
        "4,54 times 10 to the power minus 6 newtons, to the right",
    ),
    (
        "electric-field.html#q=electric-field.plates&V=1,5kV&d=1,25cm&find=E",
        "1,20 times 10 to the power 5 volts per metre, downwards",
    ),
    (
        "coulombs-law.html#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm&find=F&only=form",
        "4,80 times 10 to the power minus 6 newtons",
    ),
    # a box q beside the q of the question, in either order
    (
        "electric-field.html#q=electric-field.force&E=4500N/C&q=-2nC&along=right&pushed=right&find=F",
        "9,00 times 10 to the power minus 6 newtons, to the left",
    ),
    (
        "electric-field.html#E=4500N/C&q=-2nC&along=right&q=electric-field.force&find=F",
        "9,00 times 10 to the power minus 6 newtons, to the left",
    ),
    (
        "electric-field.html#q=electric-field.charge&Q=-6nC&r=30cm&pointing=unsaid&q=+2nC&find=E",
        "1,20 times 10 to the power minus 6 newtons",
    ),
    (
        "electric-field.html#q=electric-field.drop-charge&V=784V&m=4,8x10^-15kg&d=8mm&upper=positive&find=q",
        "4,80 times 10 to the power minus 19 coulombs",
    ),
    # the key of today
    (
        "electric-field.html#open.question=electric-field.force&E=4500N/C&q=-2nC&along=right&pushed=right&find=F",
        "9,00 times 10 to the power minus 6 newtons, to the left",
    ),
    (
        "electric-field.html#open.question=electric-field.line&charges=+8nC_0cm~-5nC_50cm&x_P=30cm&q=-2nC",
        "newtons, to the left",
    ),
    (
        "coulombs-law.html#open.question=coulomb.force&Q1=+8nC&Q2=-3nC&r=12cm&acting=unsaid&find=F&set.k=8,99e9&set.decimals=3&set.comma=point",
        "1.498 times 10 to the power minus 5 newtons",
    ),
    (
        "equilibrium.html#open.question=equilibrium.slope&want=theta&where=below&string=up&m=25g&Q1=+80nC&Q2=+50nC&r=3cm&a=2m%20s^-2&acting=signs",
        "degrees",
    ),
]

# Headings of the chapters' pages as links were made to them, and the question that each stood above.
OLD_HEADINGS = [
    ("coulombs-law#the-force-a-charge-or-the-distance", "force"),
    ("coulombs-law#two-spheres-touch-and-part", "contact"),
    ("coulombs-law#three-spheres-in-turn", "three-spheres"),
    ("coulombs-law#counting-electrons", "electrons"),
    ("coulombs-law#what-if-something-changes", "scaling"),
    ("coulombs-law#the-force-as-a-graph", "graph"),
    ("coulombs-law#the-touch-worked-backwards", "contact-back"),
    ("coulombs-law#two-forces-two-unknown-charges", "two-forces"),
    ("several-charges#on-a-line", "line"),
    ("several-charges#two-forces-at-right-angles", "right-angle"),
    ("several-charges#anywhere-in-a-plane", "plane"),
    ("several-charges#at-the-corners-of-a-triangle-or-a-square", "triangle"),
    ("several-charges#a-third-charge-from-a-stated-net-force", "third"),
    ("several-charges#where-is-there-no-net-force", "balance"),
    ("electric-field#the-field-of-one-charge", "charge"),
    ("electric-field#a-charge-placed-in-a-field", "force"),
    ("electric-field#an-electron-or-a-proton-in-a-field", "particle"),
    ("electric-field#the-net-field-on-a-line", "line"),
    ("electric-field#the-net-field-in-a-plane", "plane"),
    ("electric-field#where-is-the-field-zero", "null"),
    ("electric-field#the-picture-of-a-field", "pattern"),
    ("electric-field#between-parallel-plates", "plates"),
    ("electric-field#a-drop-that-hangs-still", "drop"),
    ("electric-field#a-charge-let-go-in-a-uniform-field", "released"),
    ("electric-field#a-charge-that-crosses-between-plates", "crossing"),
    ("electric-field#two-domes-in-a-museum", "museum-domes"),
    ("electric-field#a-drop-from-a-paint-sprayer", "paint-drop"),
    ("equilibrium#on-a-smooth-slope", "slope"),
    ("equilibrium#straight-above-or-below-a-charge", "vertical"),
    ("equilibrium#on-threads", "threads"),
    ("equilibrium#one-sphere-on-a-thread", "thread-beside-charge"),
    ("equilibrium#two-unequal-spheres", "unequal-threads"),
    ("equilibrium#a-bead-on-a-glass-ramp", "museum-ramp"),
    ("equilibrium#a-stage-trick-attraction-from-above", "stage-slope"),
    ("equilibrium#from-the-tension-to-the-electrons", "sensor-chute"),
    ("equilibrium#a-ball-that-hovers", "hovering-ball"),
    ("equilibrium#foil-balls-on-threads", "foil-balls"),
    ("equilibrium#two-nails-two-threads-attraction", "barn-traps"),
    ("energy#a-ball-shot-upwards-by-a-spring", "spring-launch"),
    ("momentum#two-trolleys-that-join", "join"),
    ("equilibrium#when-the-string-is-cut", "slope"),
]

PRACTICE = [
    (
        "practice.html#practice=coulomb.force&seed=3&level=2",
        "B carries +2,5 nC. Their centres are 65 cm apart. They attract and exert a force of 3,6 µN",
    ),
    ("practice.html#practice=coulomb.scaling&seed=3&level=1", "Two point charges exert a force"),
]

WORKSHEETS = [
    (
        "worksheet.html#paper=coulomb.force,coulomb.scaling,coulomb.contact&level=2&seed=41",
        "A carries −2,4 nC and B carries −1,6 nC.",
        3,
    ),
    ("worksheet.html#paper=coulomb.force:1,coulomb.force:3&level=rising&seed=5&own=670576&space=lined", "", 2),
    ("worksheet.html#paper=coulomb,several-charges&n=6&level=2&seed=41&heading=Forces_1", "", 6),
    ("worksheet.html#paper=coulomb&marks=20&seed=1", "", 0),
]


# From disk one of each way to name the question.
OPENED = [("served", number) for number in range(len(SOLVED))] + [("from_disk", number) for number in (0, 12, 17)]


@pytest.mark.parametrize(("place", "number"), OPENED, indirect=["place"])
def test_old_links_open_solved(place: str, page: Page, number: int) -> None:
    """A stored link to a form gives the answer it gave when it was stored."""
    link, answer = SOLVED[number]
    page.goto(place + link)
    key = re.search(r"=([a-z-]+\.[a-z-]+)(&|$)", link)[1]
    section = page.locator(f'section.question[data-question="{key}"]')
    expect(section.locator(".heard")).to_contain_text(answer, timeout=SLOW)
    expect(section.locator(".problem:visible")).to_have_count(0)


def test_a_link_to_a_part_opens_that_part(served: str, page: Page) -> None:
    """A whole question opens with the asked part unfolded and the others folded."""
    page.goto(
        f"{served}several-charges.html#q=several-charges.rail&n=5x10^10&Q_B=-6nC&Q_C=-9nC&r_AB=20cm&r_BC=30cm&F_D=2,4uN&way=right&part=net"
    )
    section = page.locator('section.question[data-question="several-charges.rail"]')
    expect(section.locator('details.part[data-part="net"]')).to_have_attribute("open", "", timeout=SLOW)
    expect(section.locator("details.part[open]")).to_have_count(1)


# From disk, where the same script writes the same addresses, for one chapter.
LED_ON = [*(("served", chapter) for chapter in CHAPTERS), ("from_disk", CHAPTERS[0])]


@pytest.mark.parametrize(("place", "chapter"), LED_ON, ids=lambda one: getattr(one, "page", one), indirect=["place"])
def test_an_address_of_the_chapter_opens_the_questions_page(place: str, page: Page, chapter: Chapter) -> None:
    """What stands after # goes along letter by letter, whichever word names the question; a frame stays a frame."""
    page.goto(f"{place}{chapter.page}.html")
    listed = page.evaluate("JSON.parse(document.getElementById('question-pages').textContent)")
    assert {key: page.evaluate("(to) => new URL(to, location.href).href", to) for key, to in listed.items()} == {
        entry.key: f"{place}{entry.address}" for entry in chapter.entries
    }
    for entry, state in zip(
        cycle((chapter.entries[-1], chapter.entries[0])),
        ("q={}&r=12cm", "open.question={}&part=net&set.comma=point", "q={}&only=form"),
        strict=False,
    ):
        page.goto("about:blank")
        page.goto(f"{place}{chapter.page}.html#{state.format(entry.key)}", wait_until="commit")
        page.wait_for_url(f"{place}{entry.address}#{state.format(entry.key)}", wait_until="commit")


@pytest.mark.parametrize("chapter", sorted({name.split("#")[0] for name, _ in OLD_HEADINGS}))
def test_a_heading_of_the_former_chapter_leads_to_its_question(served: str, page: Page, chapter: str) -> None:
    """The line of the list stands under the name that the heading had, and is in view; newer chapters never had any."""
    headings = [(name.split("#")[1], key) for name, key in OLD_HEADINGS if name.split("#")[0] == chapter]
    for anchor, key in headings:
        page.goto(f"{served}{chapter}.html#{anchor}")
        line = page.locator(f'.question-list li:has([id="{anchor}"])')
        expect(line.get_by_role("link")).to_have_attribute("href", f"{chapter}/{key}.html")
        expect(line).to_be_in_viewport()


@pytest.mark.parametrize(("link", "story"), PRACTICE, ids=range(len(PRACTICE)))
def test_old_practice_links_draw_the_same(served: str, page: Page, link: str, story: str) -> None:
    """A stored practice link draws the question it drew when it was stored."""
    page.goto(served + link)
    expect(page.locator(".practice-sheet .story")).to_contain_text(story, timeout=SLOW)


@pytest.mark.parametrize(("link", "story", "count"), WORKSHEETS, ids=range(len(WORKSHEETS)))
def test_old_worksheet_links_make_the_same(served: str, page: Page, link: str, story: str, count: int) -> None:
    """A stored worksheet link makes a paper and its memo."""
    page.goto(served + link)
    paper = page.locator(".sheets > .paper:not(.memo)")
    expect(paper).to_contain_text(story, timeout=SLOW)
    expect(page.locator(".sheets > .memo")).to_have_count(1)
    if count:
        expect(paper.locator(".paper-question")).to_have_count(count)
    else:
        expect(paper.locator(".paper-total")).to_have_text("Total: 20 marks")


# --- every question, there and back ---

HELD = {"d": "5 cm"}
# What the examples lack for each thing that may be wanted; a speed after a cut is refused, which goes round too.
WANTED = {
    "equilibrium.slope": {
        "Q1": {"T": "0,3 N"},
        "Q2": {"T": "0,3 N"},
        "r": {"F_E": "40 mN"},
        "m": {"T": "0,3 N"},
        "theta": {"a": "2 m s^-2"},
        "E_net": HELD,
        "f": {"string": "none", "mu_s": "0,6"},
    },
    "equilibrium.vertical": {
        "T": {"r": "30 cm", "string": "up"},
        "Q1": {"r": "30 cm"},
        "Q2": {"r": "30 cm"},
        "m": {"F_E": "40 mN"},
        "a": {"r": "30 cm", "string": "up"},
        "E_net": {"r": "30 cm", "string": "up", **HELD},
    },
    "equilibrium.threads": {
        "alpha": {"F_E": "40 mN"},
        "s": {"supports": "two", "r": "30 cm", "acting": "repel"},
        "L": {"r": "30 cm"},
        "m": {"F_E": "40 mN"},
        "Q2": {"Q1": "+80 nC", "equal": "own"},
    },
}
# Unknowns that practice never draws.
UNDRAWN = {
    "circuits.two-loads": {"V1": {"V1": "", "R1": "11,5 Ω"}},
    "electrodynamics.peak": {"N": {"N": "", "epsilon_max": "30 V"}},
    "electrodynamics.line": {
        "P": {"P": "", "I": "20 A"},
        "V": {"V": "", "I": "20 A"},
        "R": {"R": "", "P_lost": "3,2 kW"},
        "V_2": {"P_lost2": "32 W"},
        "P_lost2": {"V_2": "23 kV"},
    },
    "energy.average-power": {"u": {"u": "", "P": "2 kW"}},
    "energy.moved": {
        "m": {"m": "", "v": "4 m/s"},
        "theta": {"theta": "", "v": "4 m/s"},
        "phi": {"phi": "", "pull": "above", "v": "4 m/s"},
    },
    "forces.level": {"phi": {"phi": "", "a": "2 m/s^2"}},
    "forces.slope": {
        "theta": {"theta": "", "a": "2 m/s^2"},
        "phi": {"how": "pull", "motion": "up", "P": "60 N", "phi": "", "a": "1 m/s^2"},
    },
    "energy.tied": {"m1": {"m1": "", "v": "2 m/s"}},
    "energy.friction-loss": {
        "h_A": {"h_A": "", "W_nc": "-200 J"},
        "m": {"m": "", "W_nc": "-200 J"},
        "mu_k": {"mu_k": "", "where": "part", "L": "3 m"},
    },
    "momentum.impulse": {"F_net": {"also": "longer"}},
    "momentum.join": {"v": {"also": "elastic"}},
    "momentum.part": {"v1": {"v1": "", "v2": "2 m/s"}, "v2": {"how": "pierce", "v1": "3 m/s"}},
    "momentum.pulse": {"v": {"also": "pair"}},
    "projectile.bounce": {"p": {"positive": "down", "h_1": "", "h_2": "", "v_1": "6 m/s", "v_2": "-4 m/s"}},
    "projectile.meeting": {"t_0": {"positive": "down", "u_A": "-20 m/s", "t_0": "", "t": "2,4 s"}},
    "newton.incline": {"a": {"way": "unsaid", "m2": "2,2 kg"}, "T": {"also": "cut"}},
    "newton.situation": {
        "F": {"start": "goes-on", "a": "2 m/s^2", "also": "on-1"},
        "E": {"start": "goes-on", "a": "2 m/s^2", "field": "on", "Q1": "5 uC"},
        "Q1": {"start": "slips-on", "field": "on", "E": "20000 N/C"},
        "Q2": {"chain": "tow2", "force": "pull-on", "P": "90 N", "phi": "0°", "start": "slips-on", "field": "on"}
        | {"E": "20000 N/C"},
        "Q3": {"chain": "tow3", "force": "pull-on", "P": "90 N", "phi": "0°", "m3": "3 kg", "start": "slips-on"}
        | {"field": "back", "E": "20000 N/C"},
        "theta2": {"chain": "ridge", "m1": "3 kg", "start": "goes-on", "a": "1 m/s^2", "theta2": ""},
        "Q": {"start": "slips-on", "fixed": "back", "Q1": "5 uC", "r": "0,2 m"},
        "r": {"start": "slips-on", "fixed": "back", "Q1": "5 uC", "Q": "-5 uC"},
    },
    "newton.lift": {"a": {"a": "", "N": "678 N"}},
    "equilibrium.thread-beside-charge": {"a_0": {"Q1": "60 nC"}},
    "equilibrium.thread-in-field": {"a_0": {"alpha": "10°"}},
    "electric-field.drop": {"d": {"n": "3", "d": ""}},
    "several-charges.stated": {"phi": {"Q3": "-5 nC", "phi": ""}},
}
SETTINGS = {"k": "8,99e9", "g": "9,81 m s^-2", "decimals": "3", "comma": "point"}

# In every page: a form tells the document of its answers, and with them of itself.
LISTENER = """
window.heard = new Map();
document.addEventListener("booklet:answer", ({ detail: { form } }) => heard.set(form.question, form));
"""
# In the page: types a case as a reader would, shows the working, and takes what there is to see.
HELPERS = """
window.formOf = (question) => {
  if (!heard.has(question)) {
    document.querySelector(`form.numbers[data-question="${question}"] .back-to-example`).click();
  }
  return heard.get(question);
};
// What there is to see: of an answer its lines, or, where they are asked for, also the figures that follow them.
window.opened = async (form, figures) => {
  while (figures && form.area.querySelector(".waiting")) await new Promise((resolve) => setTimeout(resolve, 5));
  const answer = form.area.cloneNode(true);
  if (!figures) answer.querySelectorAll("figure, .waiting").forEach((node) => node.remove());
  const stale = form.area.classList.contains("stale"); // a refusal leaves the answer before
  return {
    boxes: form.inputs(), asked: form.asked(), stale, text: stale ? "" : answer.textContent,
    told: [...form.node.querySelectorAll(".problem:not([hidden]), .status")].map((node) => node.textContent).join("|")
      .replace("This link uses", "Your settings"),
    notice: [...document.querySelectorAll(".notice")].map((node) => node.textContent).join("|"),
  };
};
window.typedIn = async ({ question, inputs, find, figures }) => {
  const form = formOf(question);
  const type = (box, text) => { box.value = text;
    box.dispatchEvent(new Event(box.tagName === "SELECT" ? "change" : "input", { bubbles: true })); };
  const solve = form.solve;
  form.solve = async () => {}; // not once for every box
  form.reset();
  if (find) {
    for (const box of form.node.querySelectorAll('input[name="find"]')) box.checked = box.value === find;
  }
  for (const [name, value] of Object.entries(inputs)) {
    const several = form.node.querySelectorAll(`fieldset.several[data-field="${name}"] input`);
    if (several.length) {
      for (const tick of several) tick.checked = value.split(",").includes(tick.value);
      several[0].dispatchEvent(new Event("input", { bubbles: true }));
      continue;
    }
    if (!Array.isArray(value)) {
      if (name !== find) type(form.node.querySelector(`.entry [name="${name}"]:not([type=radio])`), value);
      continue;
    }
    const table = form.node.querySelector(`.entry.table[data-field="${name}"]`);
    const rows = () => table.querySelectorAll("tbody tr");
    while (rows().length > value.length) table.querySelector(".remove-row").click();
    while (rows().length < value.length) table.querySelector(".add-row").click();
    value.forEach((row, index) => Object.entries(row).forEach(([column, text]) =>
      type(form.node.querySelector(`[name="${name}.${index}.${column}"]`), text)));
  }
  if (find) type(form.node.querySelector(`.entry > .box > [name="${find}"]`), "");
  form.solve = solve;
  await form.solve({ announce: true });
  const answer = await opened(form, figures); // before the copying is told of
  let link = "";
  Clipboard.prototype.writeText = async (text) => { link = text; };
  form.node.querySelector(".copy-link").click();
  return { ...answer, link };
};
window.loaded = async ({ question }) => {
  const form = heard.get(question);
  return { ...await opened(form, true), link: form.link() };
};
window.followed = async ({ question, link, figures }) => {
  const form = heard.get(question);
  const solve = form.solve;
  const asked = new Promise((resolve) => {
    form.solve = (...given) => { form.solve = solve;
      const done = solve.apply(form, given); resolve(done); return done; };
  });
  location.hash = new URL(link, location.href).hash;
  await asked;
  return { ...await opened(form, figures), link: form.link() };
};
const unseen = document.createElement("style"); // what is compared is text, which needs no laying out
unseen.textContent = ".answer-area { display: none; }";
document.head.append(unseen);
"helpers"
"""


def cases(entry: Entry) -> Iterator[dict[str, Any]]:
    """Data for a question and everything it can be asked to find."""
    for topic, question in [topics.find(entry.key)]:
        key = entry.key
        empty = {item.name: "" for item in question.fields if item.name not in question.example}
        wanted = dict(question.find("want").options) if "want" in question.example else {}
        for want in wanted:
            sought = {want: ""} if want in {item.name for item in question.fields} else {}
            inputs = {**empty, **question.example, "want": want, **sought}
            inputs |= WANTED[key].get(want, {})
            yield {"question": key, "inputs": inputs, "find": ""}
        if wanted:
            continue
        left = set(question.unknowns) or {""}
        for find, changes in UNDRAWN.get(key, {}).items():
            left.discard(find)
            yield {
                "question": key,
                "inputs": {**empty, **question.example, **changes},
                "find": find,
            }
        for seed in range(1, 40):
            drawn = draw(topic, question, seed, 2, question.drawn_since)
            if drawn.find not in left:
                continue
            left.discard(drawn.find)
            inputs = {**empty, **drawn.inputs}
            if inputs.get("q") == "" and drawn.find != "q" and not question.any_givens:
                inputs["q"] = "-3 nC"
            yield {"question": key, "inputs": inputs, "find": drawn.find}
            if not left:
                break
        # What no draw asks follows, where any givens will do, from what the example gives.
        for find in sorted(left) if question.any_givens else ():
            inputs = {**empty, **question.example, find: ""}
            question.plan(read(question, inputs, find).data)
            left.discard(find)
            yield {"question": key, "inputs": inputs, "find": find}
        assert not left, f"{key}: no case finds {left}"


def without_spaces(boxes: dict[str, Any]) -> dict[str, Any]:
    """The boxes as they read: spaces do not matter."""
    return {
        name: [without_spaces(row) for row in text] if isinstance(text, list) else "".join(text.split())
        for name, text in boxes.items()
    }


@pytest.mark.parametrize("entry", ENTRIES, ids=[entry.key for entry in ENTRIES])
def test_every_question_works_and_its_links_come_back(
    served: str, shared_page: Callable[..., Page], entry: Entry
) -> None:
    """It fits a phone and works; a copied link, opened on a laptop, has the same boxes, unknown and answer text."""
    mine, theirs = (shared_page(script=LISTENER, **device) for device in (PHONE, DESKTOP))
    mine.goto(served + entry.address)
    fits_and_works(mine, entry)
    mine.evaluate("document.querySelectorAll('.check-mine').forEach((node) => { node.open = false; })")
    mine.evaluate(HELPERS)
    # the figures of the first and, with settings, of the last
    everything = [{**case, "figures": number == 0} for number, case in enumerate(cases(entry))]
    assert {case["question"] for case in everything} == {entry.key}
    sent = [(case, mine.evaluate("typedIn", case)) for case in everything]
    in_module(mine, "settings", "({ keep }, settings) => keep(settings)", SETTINGS)
    sent.append((everything[0], mine.evaluate("typedIn", everything[0])))
    unsolved = [
        (case["question"], case["inputs"].get("want"), seen["told"])
        for case, seen in sent
        if seen["stale"] and case["inputs"].get("want") != "v"
    ]
    assert unsolved == []
    # the first opens with its page, the others on it
    theirs.goto(sent[0][1]["link"])
    first = theirs.locator(f'section.question[data-question="{entry.key}"] .heard')
    expect(first).not_to_be_empty(timeout=SLOW)
    theirs.evaluate(HELPERS)
    for case, seen in sent:
        request = {"question": case["question"], "link": seen["link"], "figures": case["figures"]}
        loaded = seen is sent[0][1]
        got = theirs.evaluate("loaded" if loaded else "followed", request)
        assert without_spaces(got["boxes"]) == without_spaces(
            {**seen["boxes"], **({case["find"]: ""} if case["find"] else {})}
        )
        assert {**got, "boxes": ""} == {**seen, "boxes": ""}
    assert theirs.evaluate("localStorage.getItem('physics-line-by-line.settings')") is None


@pytest.mark.parametrize(
    ("typed", "link"),
    [
        ("5 m s^-2", "5%20m%20s^-2"),
        ("12 00 m", "12%2000%20m"),
        ("1 200,5 m", "1200,5m"),
        ("5 x 10^-2 m", "5x10^-2m"),
        ("0 500", "0%20500"),
    ],
)
def test_a_space_that_means_something_stays_in_the_link(served: str, page: Page, typed: str, link: str) -> None:
    """Spaces go only where a number and its unit read the same without."""
    page.goto(f"{served}coulombs-law/force.html")
    written = in_module(page, "address", '({ write }, text) => write([["r", text]])', typed)
    assert written.replace("%5E", "^") == f"r={link}"


def test_a_parting_sign_in_a_cell_comes_back(served: str, page: Page) -> None:
    """Cells that hold the signs of a table's address keep them."""
    page.goto(f"{served}several-charges/line.html")
    rows = [["5_3 nC", "1~2"], ["", "4 cm"]]
    back = in_module(
        page,
        "address",
        "({ read, write, rowsToText, textToRows }, rows) => textToRows(read('#open.question=x&c=' + write([['c',"
        " rowsToText(rows)]]).slice(2)).get('c'))",
        rows,
    )
    assert back == [["5_3nC", "1~2"], ["", "4cm"]] or back == [["5_3 nC", "1~2"], ["", "4cm"]]


def test_a_reload_and_a_frame_open_a_question_with_a_box_q(served: str, page: Page) -> None:
    """The address a page gives itself opens the same after a reload, and alone in a frame."""
    page.goto(f"{served}electric-field.html#q=electric-field.force&E=4500N/C&q=-2nC&along=right&find=F")
    section = page.locator('section.question[data-question="electric-field.force"]')
    heard = "9,00 times 10 to the power minus 6 newtons, to the left"
    expect(section.locator(".heard")).to_contain_text(heard, timeout=SLOW)
    assert "#open.question=electric-field.force&" in page.url
    page.reload()
    expect(section.locator(".heard")).to_contain_text(heard, timeout=SLOW)
    page.goto("about:blank")
    page.goto(f"{served}electric-field.html#q=electric-field.force&E=4500N/C&q=-2nC&along=right&find=F&only=form")
    expect(section.locator(".heard")).to_contain_text(heard, timeout=SLOW)
    expect(section).to_be_visible()
    expect(page.locator('section.question[data-question="electric-field.charge"]')).to_be_hidden()


def test_a_link_without_settings_brings_back_the_readers_own(served: str, page: Page) -> None:
    """Settings of one link do not stay for the next one opened on the same page."""
    page.goto(f"{served}coulombs-law.html#open.question=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm&find=F&set.comma=point")
    heard = page.locator('section.question[data-question="coulomb.force"] .heard')
    expect(heard).to_contain_text("4.80 times", timeout=SLOW)
    page.goto(f"{served}coulombs-law.html#open.question=coulomb.force&Q1=6nC&Q2=-2nC&r=30cm&find=F")
    expect(heard).to_contain_text("1,20 times", timeout=SLOW)


# --- links and settings that cannot be ---

NOTICES = [
    (
        "coulombs-law.html#open.question=coulomb.zork&Q1=6nC",
        "This link asks for a question that is not on this page. Look for it in the contents.",
    ),
    (
        "coulombs-law.html#q=coulomb.force&Q1=%E0%A4%A",
        "This link is damaged: a part of it cannot be read. Ask for it again, or type the numbers.",
    ),
    (
        "coulombs-law.html#q=coulomb.force&Q1=" + "9" * 5000,
        "This link is too long to be one of this booklet's. Ask for it again, or type the numbers.",
    ),
    (
        "coulombs-law.html#open.question=coulomb.force&Q1=6nC&Q2=-2nC&r=12cm&R7=3cm",
        "The link has a value for “R7”, and this question has no such box. It was left out.",
    ),
    (
        "coulombs-law.html#open.question=coulomb.force&Q1=6nC&Q2=-2nC&r=12cm&acting=sideways",
        "The link has “sideways” for “A and B”, which this list does not have. Choose it anew.",
    ),
    (
        "coulombs-law.html#open.question=coulomb.force&Q1=6nC&Q2=-2nC&r=12cm&find=zork",
        "The link asks to find “zork”, which this question cannot. Leave the box to find empty, or pick it.",
    ),
    (
        "practice.html#practice=coulomb.zork&seed=3",
        "This link draws no question. There is no such question to practise. Pick one from the list.",
    ),
    (
        "practice.html#practice=%E0%A4%A",
        "This link is damaged: a part of it cannot be read. Ask for it again, or type the numbers.",
    ),
    (
        "worksheet.html#paper=%E0%A4%A",
        "This link is damaged: a part of it cannot be read. Ask for it again, or type the numbers.",
    ),
]


@pytest.mark.parametrize(("link", "sentence"), NOTICES, ids=range(len(NOTICES)))
def test_a_link_that_cannot_be_read_is_a_notice_in_the_text(served: str, page: Page, link: str, sentence: str) -> None:
    """The sentence stands in the text column, as large as the text, below the header and in view."""
    page.goto(served + link)
    notice = page.locator(".md-content__inner .notice")
    expect(notice).to_have_text(sentence, timeout=SLOW)
    expect(notice).to_be_in_viewport(ratio=1)
    place, head = notice.bounding_box(), page.locator(".md-header").bounding_box()
    assert place
    assert head
    assert place["y"] >= head["y"] + head["height"]
    sizes = [
        node.evaluate("(node) => parseFloat(getComputedStyle(node).fontSize)")
        for node in (notice, page.locator(".md-content__inner > p").first)
    ]
    assert sizes[0] >= sizes[1]


K_WRONG = "The setting k cannot be “0”: Coulomb's constant must be greater than zero."


def test_a_wrong_setting_of_a_link_is_named_and_put_back(served: str, page: Page) -> None:
    """The page says which setting is wrong, marks no box, and one button brings the data sheet's value and the
    answer."""
    page.goto(
        f"{served}coulombs-law.html#open.question=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm&find=F&set.k=0&set.decimals=3"
    )
    section = page.locator('section.question[data-question="coulomb.force"]')
    notice = page.locator(".notice")
    expect(notice.locator("p")).to_have_text(f"{K_WRONG} It comes with the link.", timeout=SLOW)
    expect(section.locator(".status")).to_have_text(
        "The working below is for the numbers before. Put the setting right, above, to go on."
    )
    expect(section.locator("[aria-invalid], .problem:visible")).to_have_count(0)
    notice.get_by_role("button", name="Use the data sheet's k = 9 × 10⁹ N·m²·C⁻²").click()
    expect(notice).to_have_count(0)
    expect(section.locator(".heard")).to_contain_text("4,800 times 10 to the power minus 6 newtons", timeout=SLOW)
    assert "set.k" not in page.url
    assert "set.decimals=3" in page.url


STORED = [
    ('{"decimals":"²"}', "The setting decimals cannot be “²”: decimals are a whole number from 0 to 6."),
    ('{"k":"0"}', K_WRONG),
    ('{"k":0}', K_WRONG),
    ('{"zork":"1"}', "The setting zork cannot be “1”: there is no setting of this name."),
    ("{", "The setting kept cannot be “{”: there is no setting of this name."),
    ("[3]", "The setting kept cannot be “[3]”: there is no setting of this name."),
]


@pytest.mark.parametrize(("kept", "sentence"), STORED, ids=range(len(STORED)))
def test_a_wrong_stored_setting_stops_no_form(served: str, page: Page, kept: str, sentence: str) -> None:
    """What is kept and cannot be is named once; every form answers with the usual value, and one button wipes it."""
    page.goto(f"{served}glossary.html")
    page.evaluate("(kept) => localStorage.setItem('physics-line-by-line.settings', kept)", kept)
    page.goto(f"{served}coulombs-law/force.html")
    notice = page.locator(".notice")
    told = f"{sentence} It is kept on this device; the usual value is used meanwhile."
    expect(notice.locator("p")).to_have_text(told, timeout=SLOW)
    section = page.locator('section.question[data-question="coulomb.force"]')
    section.locator('input[type=text][name="r"]').fill("15 cm")
    section.locator('input[name="Q1"]').fill("6 nC")
    section.locator('input[name="Q2"]').fill("-2 nC")
    expect(section.locator(".heard")).to_contain_text("4,80 times 10 to the power minus 6", timeout=SLOW)
    expect(page.locator(".problem:visible, .answer-area.stale")).to_have_count(0)
    notice.get_by_role("button").click()
    expect(notice).to_have_count(0)
    assert page.evaluate("localStorage.getItem('physics-line-by-line.settings')") is None


@pytest.mark.parametrize(
    ("link", "made"),
    [
        ("practice.html#practice=coulomb.force&seed=3&level=2&set.k=0", ".practice-sheet .story"),
        ("worksheet.html#paper=coulomb.force&seed=41&set.k=0", ".sheets > .paper:not(.memo)"),
    ],
)
def test_a_wrong_setting_is_put_back_on_every_page(served: str, page: Page, link: str, made: str) -> None:
    """Practice and worksheet name the setting too, and go on when the usual value is put back."""
    page.goto(served + link)
    notice = page.locator(".notice")
    expect(notice.locator("p")).to_have_text(f"{K_WRONG} It comes with the link.", timeout=SLOW)
    expect(page.locator(".md-content")).not_to_contain_text("Mend the marked box")
    notice.get_by_role("button").click()
    expect(page.locator(made)).to_be_visible(timeout=SLOW)
    expect(notice).to_have_count(0)


# --- a bare number of a doubtful size ---


def test_a_bare_number_is_asked_about_before_it_is_answered(served: str, page: Page) -> None:
    """The question stands beside the box with its choices; one of them goes into the box and is answered."""
    page.goto(f"{served}coulombs-law/force.html")
    section = page.locator('section.question[data-question="coulomb.force"]')
    section.locator('input[name="Q1"]').fill("3 x 10^-9")
    entry = section.locator('.entry[data-field="Q1"]')
    expect(entry.locator(".problem")).to_contain_text("No unit was typed: 3 × 10⁻⁹ C, or 3 × 10⁻⁹ nC?", timeout=SLOW)
    expect(section.locator(".status")).to_have_text(
        "The working below is for the numbers before. Answer the question beside the box to go on."
    )
    expect(section.locator('input[name="Q1"]')).to_have_value("3 x 10^-9")
    entry.get_by_role("button", name="3 × 10⁻⁹ C", exact=True).click()
    expect(section.locator('input[name="Q1"]')).to_have_value("3 x 10^-9 C")
    expect(section.locator(".story")).to_contain_text("A carries +3 × 10⁻⁹ C", timeout=SLOW)
    expect(section.locator(".problem:visible")).to_have_count(0)


def test_a_bare_number_in_a_table_is_asked_about_in_its_cell(served: str, page: Page) -> None:
    """A cell has its own question, and its choice goes into that cell."""
    page.goto(f"{served}several-charges/line.html")
    section = page.locator('section.question[data-question="several-charges.line"]')
    section.locator('input[name="charges.1.x"]').fill("22")
    cell = section.locator('[data-field="charges.1.x"]')
    expect(cell.locator(".problem")).to_contain_text("No unit was typed: 22 cm, or 22 m?", timeout=SLOW)
    cell.get_by_role("button", name="22 cm").click()
    expect(section.locator('input[name="charges.1.x"]')).to_have_value("22 cm")
    expect(section.locator(".problem:visible")).to_have_count(0)


def test_an_old_link_with_a_bare_number_answers_as_before_with_a_note(served: str, page: Page) -> None:
    """The number is taken in the box's unit, the doubt stands beside the box, and the new link says the unit."""
    page.goto(f"{served}coulombs-law/force.html#q=coulomb.force&Q1=6&Q2=-2nC&r=12&find=F")
    section = page.locator('section.question[data-question="coulomb.force"]')
    expect(section.locator(".heard")).to_contain_text("7,50 times 10 to the power minus 10 newtons", timeout=SLOW)
    note = section.locator('.entry[data-field="r"] .unit-note')
    expect(note).to_contain_text("No unit was typed, so this was taken as 12 m. Did you mean 12 cm?")
    expect(section.locator(".unit-note")).to_have_count(1)
    expect(section.locator('input[type=text][name="r"]')).to_have_value("12")
    assert "&Q1=6nC&" in page.url
    assert "&r=12m&" in page.url
    note.get_by_role("button", name="12 cm").click()
    expect(section.locator(".heard")).to_contain_text("7,50 times 10 to the power minus 6 newtons", timeout=SLOW)
    expect(section.locator(".unit-note")).to_have_count(0)


@pytest.mark.parametrize(
    ("changed", "remedy"),
    [
        ({"r": "0 m"}, "Mend the marked box to go on."),
        ({"r": "0 m", "Q1": "six"}, "Mend the marked boxes to go on."),
        ({"F": "3 mN"}, "What is in the way stands above the buttons."),
    ],
)
def test_the_status_names_what_is_to_be_mended(served: str, page: Page, changed: dict[str, str], remedy: str) -> None:
    """A marked box is spoken of only where one is marked."""
    page.goto(f"{served}coulombs-law/force.html")
    section = page.locator('section.question[data-question="coulomb.force"]')
    if "F" in changed:
        section.get_by_text("I know something else").click()
    for name, text in changed.items():
        section.locator(f'input[type=text][name="{name}"]').fill(text)
    expect(section.locator(".status")).to_have_text(
        f"The working below is for the numbers before. {remedy}", timeout=SLOW
    )
    marked = section.locator("[aria-invalid]").count()
    assert ("marked box" in remedy) == bool(marked)


# --- in a frame ---


@pytest.fixture
def host(served: str, tmp_path: Path) -> Iterator[str]:
    """A page on another port with one question in a frame, as a learning platform would have it."""
    (tmp_path / "lesson.html").write_text(
        '<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,"><title>Lesson</title><h1>Lesson</h1><p'
        ' id="height"></p><iframe title="Question" width="700" height="900"'
        f' src="{served}coulombs-law.html#q=coulomb.force&amp;Q1=6nC&amp;Q2=-2nC&amp;r=15cm&amp;find=F&amp;only=form">'
        "</iframe><script>addEventListener('message',"
        " (event) => { document.getElementById('height').textContent = JSON.stringify(event.data); });</script>",
        encoding="utf-8",
    )

    with serving(tmp_path) as address:
        yield f"{address}lesson.html"


def test_a_form_stands_alone_in_a_frame(host: str, page: Page) -> None:
    """The frame shows one question, solved, and none of the site around it."""
    page.goto(host)
    frame = page.frame_locator("iframe")
    section = frame.locator('section.question[data-question="coulomb.force"]')
    expect(section.locator(".heard")).to_contain_text("4,80 times 10", timeout=SLOW)
    expect(section.locator(".answer").first).to_be_visible()
    title = frame.locator("h1").bounding_box()  # heard, not seen
    assert title
    assert title["width"] <= 1 >= title["height"]
    for furniture in (".md-header", ".foot", ".md-sidebar--primary", '[data-question="coulomb.contact"]'):
        expect(frame.locator(furniture).first).to_be_hidden()
    expect(page.locator("#height")).to_contain_text("bookletHeight")


def test_a_form_in_a_frame_answers_what_is_typed(host: str, page: Page) -> None:
    """Other numbers are worked in the frame, the link stays that of a form alone, and the whole page is one
    link away."""
    page.goto(host)
    frame = page.frame_locator("iframe")
    section = frame.locator('section.question[data-question="coulomb.force"]')
    expect(section.locator(".heard")).to_contain_text("4,80 times 10", timeout=SLOW)
    section.locator('input[type=text][name="r"]').fill("30 cm")
    expect(section.locator(".heard")).to_contain_text("1,20 times 10", timeout=SLOW)
    inner = next(one for one in page.frames if "coulombs-law" in one.url)
    assert "r=30cm" in inner.url
    assert "only=form" in inner.url
    link = section.get_by_role("link", name="The whole page, with explanations")
    assert "only=form" not in (link.get_attribute("href") or "")
    expect(link).to_have_attribute("target", "_blank")


def test_an_unknown_question_in_a_frame_says_so(served: str, page: Page) -> None:
    """A frame that asks for a question of no such name shows the sentence, and no markup of the link."""
    page.goto(f"{served}coulombs-law.html#q=%3Cimg%20src=x%3E&only=form")
    expect(page.locator(".link-problem")).to_contain_text("not on this page", timeout=SLOW)
    expect(page.locator(".link-problem")).to_be_visible()
    assert page.locator(".md-content img").count() == 0


# --- on paper ---


def test_a_printed_page_carries_its_link(place: str, page: Page) -> None:
    """Before printing, the link with its numbers is put at the end; served, with a QR code; from disk, without."""
    address = f"{place}coulombs-law.html#q=coulomb.force&Q1=6nC&Q2=-2nC&r=15cm&find=F"
    page.goto(address)
    expect(page.locator(".heard").first).to_contain_text("4,80 times 10", timeout=SLOW)
    wait_for_codes(page)
    page.evaluate("() => window.dispatchEvent(new Event('beforeprint'))")
    line = page.locator(".md-content__inner > .print-link")
    expect(line).to_be_hidden()
    page.emulate_media(media="print")
    expect(line).to_be_visible()
    # From disk the page is named, not the reader's folder.
    assert (
        line.locator("p").inner_text().endswith(page.url.removeprefix(place) if place.startswith("file:") else page.url)
    )
    assert "file:" not in line.inner_text()
    expect(line.locator("svg.print-code")).to_have_count(1 if address.startswith("http") else 0)
    page.evaluate("() => window.dispatchEvent(new Event('beforeprint'))")
    expect(line).to_have_count(1)


def wait_for_codes(page: Page) -> None:
    """Wait until the page can draw codes, where it ever does."""
    if page.url.startswith("http"):
        for _ in range(200):  # the page's policy forbids wait_for_function
            if page.evaluate("typeof window.qrcode") == "function":
                return
            page.wait_for_timeout(50)
        raise AssertionError("the library never came")


def test_the_code_library_waits_until_the_page_rests(served: str, own_page: Page) -> None:
    """The library is fetched after the page has loaded, and only when the page is served."""
    loaded: list[bool] = []
    own_page.on("load", lambda _: loaded.append(True))
    own_page.on("request", lambda request: "qrcode" in request.url and loaded.append(False))
    own_page.goto(f"{served}coulombs-law/force.html")
    wait_for_codes(own_page)
    assert loaded == [True, False]


@pytest.mark.parametrize("name", ["glossary.html", "coulombs-law.html", "index.html"])
def test_a_page_without_numbers_leaves_the_code_library_alone(served: str, own_page: Page, name: str) -> None:
    """Its link is its own name, which a reader can type: printed as text."""
    asked: list[str] = []
    own_page.on("request", lambda request: asked.append(request.url))
    own_page.goto(served + name)
    own_page.wait_for_load_state("networkidle")
    own_page.wait_for_timeout(2000)  # longer than a page waits before it fetches the library
    assert [url for url in asked if "qrcode" in url] == []
    own_page.evaluate("() => window.dispatchEvent(new Event('beforeprint'))")
    expect(own_page.locator(".md-content__inner > .print-link p")).to_have_text(own_page.url)


def test_pages_from_disk_leave_the_code_library_alone(from_disk: str, own_page: Page) -> None:
    """From disk nobody else can open the link, so no code is made."""
    own_page.goto(f"{from_disk}coulombs-law/force.html")
    own_page.wait_for_timeout(2000)  # longer than a served page waits before it fetches the library
    assert own_page.evaluate("typeof window.qrcode") == "undefined"
