"""The page runtime in a real browser: each way to start, to ask and to fail.

The package that runs is a stand-in (tests/runtime/stand_in), whose requests tell what the runtime
does; test_same_answers.py runs the real one.
"""

from __future__ import annotations

import gzip
import json
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Route

from runtime.build_runtime import build_runtime
from serve import serving
from toolbox import BUILD, REPO

pytestmark = pytest.mark.browser

PREFIX = "any/sub-path/"
STAND_IN = REPO / "tests" / "runtime" / "stand_in" / "calc"
POLICY = (
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self' blob: data:;"
    " worker-src {}"
)
PAGE = (
    '<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,">'
    '<meta http-equiv="Content-Security-Policy" content="{policy}; img-src data:">'
    '<title>Test</title><script src="{base}assets/runtime/loader.js"></script>'
)
FAILED = "could not start in this browser"
STOPPED = "stopped unexpectedly"
ASK = "([operation, data, options]) => bookletRuntime.ask(operation, data, options)"

Open = Callable[..., Page]


def ask(page: Page, operation: str, **data: object) -> dict[str, Any]:
    """One question to the runtime of a page, and its reply."""
    reply: dict[str, Any] = page.evaluate(ASK, [operation, data, {}])
    return reply


def how(page: Page) -> dict[str, str]:
    """How the runtime of a page came to run; asks one question first."""
    assert ask(page, "root", of=2)["data"]["root"] == 2**0.5
    found: dict[str, str] = page.evaluate("bookletRuntime.how")
    return found


@pytest.fixture(scope="module")
def stand_in_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the stand-in's runtime, a page, one in a folder, and one that bars workers."""
    site = tmp_path_factory.mktemp("site")
    build_runtime(site, BUILD / "cache-stand-in", package_dir=STAND_IN)
    usual = POLICY.format("'self' blob:")
    (site / "page.html").write_text(PAGE.format(policy=usual, base=""), "utf-8")
    (site / "no-worker.html").write_text(
        PAGE.format(policy=POLICY.format("'none'"), base=""), "utf-8"
    )
    (site / "deep").mkdir()
    (site / "deep" / "page.html").write_text(PAGE.format(policy=usual, base="../"), "utf-8")
    return site


@pytest.fixture(scope="module")
def stand_in_address(stand_in_site: Path) -> Iterator[str]:
    """The stand-in site over http, below a sub-path."""
    with serving(stand_in_site, PREFIX) as address:
        yield address


@pytest.fixture
def bare(chromium: Browser) -> Iterator[BrowserContext]:
    """A context whose pages may complain: these tests break things on purpose."""
    context = chromium.new_context()
    yield context
    context.close()


@pytest.fixture(params=["http", "disk"])
def address(request: pytest.FixtureRequest, stand_in_site: Path) -> str:
    """Both ways to open the stand-in site."""
    if request.param == "http":
        found: str = request.getfixturevalue("stand_in_address")
        return found
    return f"{stand_in_site.as_uri()}/"


def without(site: Path, folder: Path, *patterns: str) -> str:
    """Copy a site without the files of some patterns; return its file:// address."""
    shutil.copytree(site, folder, ignore=shutil.ignore_patterns(*patterns))
    return f"{folder.as_uri()}/"


# --- The usual start -------------------------------------------------------------------------


def test_starts_from_the_memory_image_in_a_worker(address: str, page: Page) -> None:
    """Over http and from disk, under the content policy, the fast way is taken."""
    page.goto(f"{address}page.html")
    source = "disk" if address.startswith("file:") else "http"
    assert how(page) == {"place": "worker", "start": "snapshot", "source": source}


def test_finds_its_files_from_a_page_in_a_folder(address: str, page: Page) -> None:
    """The loader's own address leads to the files, not the page's."""
    page.goto(f"{address}deep/page.html")
    assert how(page)["start"] == "snapshot"


def test_a_usual_start_asks_for_nothing_it_does_not_use(stand_in_address: str, page: Page) -> None:
    """Page, loader, worker, engine, core and memory image, each once: no library, no wheel."""
    asked: list[str] = []
    page.context.on("request", lambda r: asked.append(r.url.rsplit("/", 1)[-1].split("-")[0]))
    page.goto(f"{stand_in_address}page.html")
    how(page)
    files = [name for name in asked if not name.startswith("data:")]
    assert sorted(files) == ["core", "engine", "loader.js", "memory", "page.html", "worker"]


def test_states_are_told_in_order(address: str, page: Page) -> None:
    """A listener hears "starting", then "ready"; start() twice starts once."""
    page.goto(f"{address}page.html")
    told = page.evaluate(
        """async () => {
          const told = [bookletRuntime.state];
          bookletRuntime.onchange((state) => told.push(state));
          bookletRuntime.start();
          bookletRuntime.start();
          await bookletRuntime.ask("echo", {});
          return told;
        }"""
    )
    assert told == ["idle", "starting", "ready"]


def test_text_passes_unchanged(address: str, page: Page) -> None:
    """Signs outside ASCII come back as they went."""
    page.goto(f"{address}page.html")
    data = {"typed": "−3,2 × 10⁻⁹ µC ∠ 𝑄₁"}
    assert ask(page, "echo", **data) == {"ok": True, "data": data}


def test_random_numbers_are_new_at_each_start(address: str, page: Page) -> None:
    """The image's random state is not what a reader gets."""
    drawn = set()
    for _ in range(3):
        page.goto(f"{address}page.html")
        drawn.add(ask(page, "draw")["data"]["number"])
    assert len(drawn) == 3


@pytest.mark.parametrize("operation", ["late", "late library", "kept library"])
@pytest.mark.parametrize("start", ["snapshot", "plain"])
def test_late_imports_work(
    address: str,
    bare: BrowserContext,
    stand_in_site: Path,
    tmp_path: Path,
    operation: str,
    start: str,
) -> None:
    """Modules first imported by a question are found, after either start."""
    if start == "plain":
        bare.route("**/memory-*", lambda route: route.abort())
        if address.startswith("file:"):
            address = without(stand_in_site, tmp_path / "copy", "disk-memory-*")
    page = bare.new_page()
    page.goto(f"{address}page.html")
    assert ask(page, operation)["ok"]
    assert how(page)["start"] == start


def test_a_late_import_without_the_library_spoils_nothing(
    stand_in_address: str, bare: BrowserContext
) -> None:
    """Offline, the question that needs a further module is refused; the next is answered."""
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    how(page)
    bare.set_offline(True)
    assert STOPPED in ask(page, "kept library")["errors"][0]["message"]
    assert ask(page, "echo", a=1)["ok"]
    bare.set_offline(False)
    assert ask(page, "kept library")["data"] == {"year": 1987}


# --- Questions -------------------------------------------------------------------------------


def test_answers_come_in_the_order_of_asking(address: str, page: Page) -> None:
    """A slow first question is answered before a quick second."""
    page.goto(f"{address}page.html")
    order = page.evaluate(
        """async () => {
          const order = [];
          await Promise.all([
            bookletRuntime.ask("slow", { seconds: 0.2 }).then(() => order.push("slow")),
            bookletRuntime.ask("echo", {}).then(() => order.push("quick")),
          ]);
          return order;
        }"""
    )
    assert order == ["slow", "quick"]


def test_a_later_question_replaces_earlier_ones_of_its_channel(address: str, page: Page) -> None:
    """Of three in one channel only the last is answered; another channel is left alone."""
    page.goto(f"{address}page.html")
    replies = page.evaluate(
        """async () => {
          await bookletRuntime.ask("echo", {});
          return Promise.all([
            bookletRuntime.ask("slow", { seconds: 0.1 }, { channel: "a" }),
            bookletRuntime.ask("echo", { turn: 1 }, { channel: "b" }),
            bookletRuntime.ask("echo", { turn: 2 }, { channel: "a" }),
            bookletRuntime.ask("echo", { turn: 3 }, { channel: "a" }),
          ]);
        }"""
    )
    assert [reply.get("superseded", False) for reply in replies] == [True, False, True, False]
    assert [reply["ok"] for reply in replies] == [False, True, False, True]
    assert replies[3]["data"] == {"turn": 3}


def test_a_mistake_in_the_package_is_one_sentence(address: str, bare: BrowserContext) -> None:
    """An exception of Python never reaches the reader, and the next question is answered."""
    page = bare.new_page()
    page.goto(f"{address}page.html")
    reply = ask(page, "broken")
    assert not reply["ok"]
    assert STOPPED in reply["errors"][0]["message"]
    assert "Traceback" not in json.dumps(reply)
    assert ask(page, "echo", a=1)["ok"]


def test_python_that_ended_is_started_again(address: str, bare: BrowserContext) -> None:
    """After Python itself is gone the question gets a sentence and the next one an answer."""
    page = bare.new_page()
    page.goto(f"{address}page.html")
    assert STOPPED in ask(page, "end")["errors"][0]["message"]
    assert how(page)["start"] == "snapshot"


def test_python_that_keeps_ending_is_given_up(address: str, bare: BrowserContext) -> None:
    """The third end is the last: the state is "failed" and questions get its sentence."""
    page = bare.new_page()
    page.goto(f"{address}page.html")
    for _ in range(3):
        assert STOPPED in ask(page, "end")["errors"][0]["message"]
    assert STOPPED in ask(page, "echo")["errors"][0]["message"]
    assert page.evaluate("bookletRuntime.state") == "failed"


# --- The plain start -------------------------------------------------------------------------


def _of_another_build(route: Route, content: bytes) -> bytes:
    image = gzip.decompress(content)
    return gzip.compress(bytes(64) + image[64:], 1)


def _cut_short(route: Route, content: bytes) -> bytes:
    return content[: len(content) // 2]


def _of_another_core(route: Route, content: bytes) -> bytes:
    # The third word behind the id is the check over the core's data.
    image = bytearray(gzip.decompress(content))
    image[64 + 8] ^= 1
    return gzip.compress(bytes(image), 1)


@pytest.mark.parametrize("change", [_of_another_build, _cut_short, _of_another_core])
def test_a_memory_image_that_does_not_fit_is_passed_over(
    stand_in_address: str,
    stand_in_site: Path,
    bare: BrowserContext,
    change: Callable[[Route, bytes], bytes],
) -> None:
    """An image of other files, or a damaged one, leads to the plain start in the worker."""
    content = next((stand_in_site / "assets" / "runtime").glob("memory-*")).read_bytes()
    bare.route("**/memory-*", lambda route: route.fulfill(body=change(route, content)))
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    assert how(page) == {"place": "worker", "start": "plain", "source": "http"}


def test_a_missing_memory_image_is_passed_over(stand_in_address: str, bare: BrowserContext) -> None:
    """Without the image file Python starts from library and wheel."""
    bare.route("**/memory-*", lambda route: route.fulfill(status=404))
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    assert how(page) == {"place": "worker", "start": "plain", "source": "http"}


def test_a_missing_memory_image_is_passed_over_from_disk(
    stand_in_site: Path, tmp_path: Path, bare: BrowserContext
) -> None:
    """The same from disk."""
    address = without(stand_in_site, tmp_path / "copy", "disk-memory-*")
    page = bare.new_page()
    page.goto(f"{address}page.html")
    assert how(page) == {"place": "worker", "start": "plain", "source": "disk"}


def test_a_server_that_undoes_the_gzip_is_no_trouble(
    stand_in_address: str, stand_in_site: Path, bare: BrowserContext
) -> None:
    """Some servers label .gz files as encoded, and the browser then unpacks them itself."""
    files = {file.name: file for file in (stand_in_site / "assets" / "runtime").glob("*.gz")}

    def unpack(route: Route) -> None:
        file = files[route.request.url.rsplit("/", 1)[-1]]
        route.fulfill(body=gzip.decompress(file.read_bytes()))

    bare.route("**/*.gz", unpack)
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    assert how(page)["start"] == "snapshot"


# --- On the page, and not at all -------------------------------------------------------------


def test_runs_on_the_page_where_workers_are_barred(address: str, bare: BrowserContext) -> None:
    """A content policy without workers: the same engine runs in the page."""
    page = bare.new_page()
    page.goto(f"{address}no-worker.html")
    found = how(page)
    assert (found["place"], found["start"]) == ("page", "snapshot")
    assert ask(page, "kept library")["data"] == {"year": 1987}


def test_runs_on_the_page_where_there_are_no_workers(address: str, bare: BrowserContext) -> None:
    """A browser whose Worker throws: the same."""
    bare.add_init_script("window.Worker = function () { throw new Error('no workers here'); };")
    page = bare.new_page()
    page.goto(f"{address}page.html")
    assert how(page)["place"] == "page"


def test_runs_on_the_page_without_the_worker_script(
    stand_in_address: str, bare: BrowserContext
) -> None:
    """The worker's file is missing: the same."""
    bare.route("**/worker-*", lambda route: route.fulfill(status=404))
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    assert how(page)["place"] == "page"


@pytest.mark.parametrize("missing", ["core-*", "engine-*"])
def test_a_start_that_cannot_succeed_says_so(
    stand_in_address: str, bare: BrowserContext, missing: str
) -> None:
    """Every question is answered with one sentence, and the state says "failed"."""
    bare.route(f"**/{missing}", lambda route: route.abort())
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    for _ in range(2):
        reply = ask(page, "root", of=2)
        assert not reply["ok"]
        assert [error["field"] for error in reply["errors"]] == [None]
        assert FAILED in reply["errors"][0]["message"]
    assert page.evaluate("bookletRuntime.state") == "failed"
    assert FAILED in page.evaluate("bookletRuntime.message")


def test_a_start_that_cannot_succeed_says_so_from_disk(
    stand_in_site: Path, tmp_path: Path, bare: BrowserContext
) -> None:
    """The same from disk, with the core's file gone."""
    address = without(stand_in_site, tmp_path / "copy", "disk-core-*")
    page = bare.new_page()
    page.goto(f"{address}page.html")
    assert FAILED in ask(page, "root", of=2)["errors"][0]["message"]
