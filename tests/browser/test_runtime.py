"""The page runtime in a real browser: each way to start, to ask and to fail.

The package that runs is a stand-in (tests/runtime/stand_in), whose requests tell what the runtime
does; test_same_answers.py runs the real one.
"""

from __future__ import annotations

import gzip
import json
import re
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from threading import Thread
from time import sleep
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Route

from runtime.build_runtime import build_runtime
from serve import SiteHandler, SiteServer, serving
from toolbox import BUILD, REPO

pytestmark = pytest.mark.browser

PREFIX = "any/sub-path/"
STAND_IN = REPO / "tests" / "runtime" / "stand_in" / "calc"
POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self' blob: data:; worker-src {}"
PAGE = (
    '<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,">'
    '<meta http-equiv="Content-Security-Policy" content="{policy}; img-src data:">'
    '<title>Test</title><script src="{base}assets/runtime/loader.js"></script>'
)
NOT_FETCHED = "missing or could not be fetched"
REPLACED = "arrived damaged, or another page came in its place"
NO_MEMORY = "could not get the memory it needs"
TOO_OLD = "lacks WebAssembly"
UPDATED = "This booklet was updated"
STOPPED = "stopped unexpectedly"
TOO_LONG = "took too long and was stopped"
UNSENDABLE = "cannot be handed to the calculator"
ASK = "([operation, data, options]) => bookletRuntime.ask(operation, data, options)"

# In every page: when a worker says that it has begun with a question, from which its time counts.
LISTEN_TO_WORKERS = """
const Plain = window.Worker;
window.Worker = class extends Plain {
  constructor(...given) {
    super(...given);
    this.addEventListener("message", ({ data }) => { if ("begun" in data) window.begun = true; });
  }
};
"""
ASK_WITHOUT_END = """() => {
  window.begun = false;
  window.asked = bookletRuntime.ask("slow", { seconds: 600 }).then((reply) => (window.reply = reply));
}"""

Open = Callable[..., Page]


def ask(page: Page, operation: str, **data: object) -> dict[str, Any]:
    """One question to the runtime of a page, and its reply."""
    reply: dict[str, Any] = page.evaluate(ASK, [operation, data, {}])
    return reply


def ask_without_end(page: Page) -> None:
    """Ask what never ends, and wait until the worker is at it; the page's clock may stand still meanwhile."""
    page.evaluate(ASK_WITHOUT_END)
    while not page.evaluate("window.begun"):
        sleep(0.02)


def how(page: Page) -> dict[str, str]:
    """How the runtime of a page came to run; asks one question first."""
    assert ask(page, "root", of=2)["data"]["root"] == 2**0.5
    found: dict[str, str] = page.evaluate("bookletRuntime.how")
    return found


@pytest.fixture(scope="module")
def stand_in_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the stand-in's runtime: a page, one in a folder, one that bars workers, one that waits for none."""
    site = tmp_path_factory.mktemp("site")
    build_runtime(site, BUILD / "cache-stand-in", package_dir=STAND_IN)
    usual = POLICY.format("'self' blob:")
    (site / "page.html").write_text(PAGE.format(policy=usual, base=""), "utf-8")
    (site / "no-worker.html").write_text(PAGE.format(policy=POLICY.format("'none'"), base=""), "utf-8")
    hasty = PAGE.format(policy=usual, base="").replace("<script ", '<script data-patience="1000" ')
    (site / "hasty.html").write_text(hasty, "utf-8")
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
    """A context whose pages may complain: these tests break things on purpose.

    Its browser has no shared worker, whose requests could not be answered wrongly; test_shared_worker.py has one.
    """
    context = chromium.new_context()
    context.add_init_script("delete window.SharedWorker;")
    yield context
    context.close()


@pytest.fixture(params=["stand_in_address", "disk_address"], ids=["http", "disk"])
def address(request: pytest.FixtureRequest) -> str:
    """Both ways to open the stand-in site."""
    found: str = request.getfixturevalue(request.param)
    return found


@pytest.fixture(scope="module")
def disk_address(stand_in_site: Path) -> str:
    """The stand-in site's file:// address."""
    return f"{stand_in_site.as_uri()}/"


@pytest.fixture(scope="module", params=["stand_in_address", "disk_address"], ids=["http", "disk"])
def running(request: pytest.FixtureRequest, chromium: Browser) -> Iterator[Page]:
    """A page of its own whose Python runs, for tests that only ask: they share it, and each leaves it answering."""
    context = chromium.new_context()
    context.add_init_script("delete window.SharedWorker;")
    page = context.new_page()
    page.goto(f"{request.getfixturevalue(request.param)}page.html")
    how(page)
    yield page
    context.close()


def without(site: Path, folder: Path, *patterns: str) -> str:
    """Copy a site without the files of some patterns; return its file:// address."""
    shutil.copytree(site, folder, ignore=shutil.ignore_patterns(*patterns))
    return f"{folder.as_uri()}/"


# --- The usual start -------------------------------------------------------------------------


def test_starts_from_the_memory_image_in_a_worker(address: str, bare: BrowserContext) -> None:
    """Over http and from disk, under the content policy, the fast way is taken."""
    page = bare.new_page()
    page.goto(f"{address}page.html")
    source = "disk" if address.startswith("file:") else "http"
    assert how(page) == {"place": "worker", "start": "snapshot", "source": source}


def test_finds_its_files_from_a_page_in_a_folder(address: str, own_page: Page) -> None:
    """The loader's own address leads to the files, not the page's."""
    own_page.goto(f"{address}deep/page.html")
    assert how(own_page)["start"] == "snapshot"


def test_a_usual_start_asks_for_nothing_it_does_not_use(stand_in_address: str, bare: BrowserContext) -> None:
    """Page, loader, worker, engine, core and memory image, each once: no library, no wheel."""
    page = bare.new_page()
    asked: list[str] = []
    page.context.on("request", lambda r: asked.append(r.url.rsplit("/", 1)[-1].split("-")[0]))
    page.goto(f"{stand_in_address}page.html")
    how(page)
    files = [name for name in asked if not name.startswith("data:")]
    assert sorted(files) == ["core", "engine", "loader.js", "memory", "page.html", "worker"]


def test_states_are_told_in_order(address: str, own_page: Page) -> None:
    """A listener hears "starting", then "ready"; start() twice starts once."""
    own_page.goto(f"{address}page.html")
    told = own_page.evaluate("""async () => {
          const told = [bookletRuntime.state];
          bookletRuntime.onchange((state) => told.push(state));
          bookletRuntime.start();
          bookletRuntime.start();
          await bookletRuntime.ask("echo", {});
          return told;
        }""")
    assert told == ["idle", "starting", "ready"]


def test_text_passes_unchanged(running: Page) -> None:
    """Signs outside ASCII come back as they went."""
    data = {"typed": "−3,2 × 10⁻⁹ µC ∠ 𝑄₁"}
    assert ask(running, "echo", **data) == {"ok": True, "data": data}


def test_random_numbers_are_new_at_each_start(address: str, bare: BrowserContext) -> None:
    """The image's random state is not what a reader gets."""
    page = bare.new_page()
    drawn = set()
    for _ in range(3):
        page.goto(f"{address}page.html")
        drawn.add(ask(page, "draw")["data"]["number"])
    assert len(drawn) == 3


@pytest.mark.parametrize("start", ["snapshot", "plain"])
def test_late_imports_work(
    address: str,
    bare: BrowserContext,
    stand_in_site: Path,
    tmp_path: Path,
    start: str,
) -> None:
    """Modules first imported by a question are found, after either start."""
    if start == "plain":
        bare.route("**/memory-*", lambda route: route.abort())
        if address.startswith("file:"):
            address = without(stand_in_site, tmp_path / "copy", "disk-memory-*")
    page = bare.new_page()
    page.goto(f"{address}page.html")
    for operation in ("kept library", "late", "late library"):
        assert ask(page, operation)["ok"], operation
    assert how(page)["start"] == start


def test_a_late_import_without_the_library_spoils_nothing(stand_in_address: str, bare: BrowserContext) -> None:
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


def test_answers_come_in_the_order_of_asking(running: Page) -> None:
    """A slow first question is answered before a quick second."""
    order = running.evaluate("""async () => {
          const order = [];
          await Promise.all([
            bookletRuntime.ask("slow", { seconds: 0.2 }).then(() => order.push("slow")),
            bookletRuntime.ask("echo", {}).then(() => order.push("quick")),
          ]);
          return order;
        }""")
    assert order == ["slow", "quick"]


def test_a_later_question_replaces_earlier_ones_of_its_channel(running: Page) -> None:
    """Of three in one channel only the last is answered; another channel is left alone."""
    replies = running.evaluate("""async () => {
          await bookletRuntime.ask("echo", {});
          return Promise.all([
            bookletRuntime.ask("slow", { seconds: 0.1 }, { channel: "a" }),
            bookletRuntime.ask("echo", { turn: 1 }, { channel: "b" }),
            bookletRuntime.ask("echo", { turn: 2 }, { channel: "a" }),
            bookletRuntime.ask("echo", { turn: 3 }, { channel: "a" }),
          ]);
        }""")
    assert [reply.get("superseded", False) for reply in replies] == [True, False, True, False]
    assert [reply["ok"] for reply in replies] == [False, True, False, True]
    assert replies[3]["data"] == {"turn": 3}


def test_a_mistake_in_the_package_is_one_sentence(running: Page) -> None:
    """An exception of Python never reaches the reader, and the next question is answered."""
    reply = ask(running, "broken")
    assert not reply["ok"]
    assert STOPPED in reply["errors"][0]["message"]
    assert "Traceback" not in json.dumps(reply)
    assert ask(running, "echo", a=1)["ok"]


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


# --- Questions that never end, and such as cannot be sent ------------------------------------


def test_a_calculation_without_end_is_stopped(address: str, bare: BrowserContext) -> None:
    """It gets a sentence, the worker is started afresh, and those waiting behind it are answered."""
    page = bare.new_page()
    page.goto(f"{address}page.html")
    how(page)
    first, second = page.evaluate("""() => Promise.all([
          bookletRuntime.ask("slow", { seconds: 600 }, { limit: 100 }),
          bookletRuntime.ask("echo", { turn: 2 }),
        ])""")
    assert [error["field"] for error in first["errors"]] == [None]
    assert TOO_LONG in first["errors"][0]["message"]
    assert second == {"ok": True, "data": {"turn": 2}}
    assert how(page)["place"] == "worker"


def test_stopping_has_no_end_of_its_own(stand_in_address: str, bare: BrowserContext) -> None:
    """However often a calculation has to be stopped, the next one is answered."""
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    how(page)
    for _ in range(5):
        reply = page.evaluate(ASK, ["slow", {"seconds": 600}, {"limit": 50}])
        assert TOO_LONG in reply["errors"][0]["message"]
    assert how(page)["start"] == "snapshot"


def test_three_seconds_is_the_usual_limit(stand_in_address: str, bare: BrowserContext) -> None:
    """By the page's own clock, which stands still here but for what the test moves it."""
    bare.add_init_script(LISTEN_TO_WORKERS)
    page = bare.new_page()
    page.clock.install()
    page.goto(f"{stand_in_address}page.html")
    how(page)
    page.clock.pause_at(page.evaluate("Date.now()") + 1000)
    ask_without_end(page)
    page.clock.run_for(2900)
    assert page.evaluate("window.reply") is None
    page.clock.run_for(200)
    assert TOO_LONG in page.evaluate("window.asked")["errors"][0]["message"]


def test_a_late_timer_stops_nothing(stand_in_address: str, bare: BrowserContext) -> None:
    """A machine that slept did not calculate meanwhile: the question gets its time again."""
    bare.add_init_script(LISTEN_TO_WORKERS)
    page = bare.new_page()
    page.clock.install()
    page.goto(f"{stand_in_address}page.html")
    how(page)
    page.clock.pause_at(page.evaluate("Date.now()") + 1000)
    ask_without_end(page)
    page.clock.fast_forward(3_600_000)
    page.clock.run_for(2900)
    assert page.evaluate("window.reply") is None
    page.clock.run_for(200)
    assert TOO_LONG in page.evaluate("window.asked")["errors"][0]["message"]


@pytest.mark.parametrize(
    "sent",
    [
        "'echo', { a: 1n }",
        "'echo', { a: () => 1 }",
        "'echo', { a: Symbol('a') }",
        "'echo', Symbol('a')",
        "'echo', (() => { const a = {}; a.a = a; return a; })()",
        "'echo', { toJSON() { throw new Error('no'); } }",
        "'echo', { get a() { throw new Error('no'); } }",
        "Symbol('echo'), {}",
        "undefined, {}",
        "null, {}",
        "12, {}",
        "{ toString() { throw new Error('no'); } }, {}",
        "'echo', {}, { get channel() { throw new Error('no'); } }",
    ],
)
def test_what_cannot_be_sent_is_refused_in_a_sentence(running: Page, sent: str) -> None:
    """Whatever is handed over, ask() resolves to one sentence, and the next question is answered."""
    reply = running.evaluate(f"() => bookletRuntime.ask({sent})")
    assert not reply["ok"]
    assert [error["field"] for error in reply["errors"]] == [None]
    assert UNSENDABLE in reply["errors"][0]["message"]
    assert how(running)["place"] == "worker"


@pytest.mark.parametrize("sent", ["'echo', {}, null", "'echo', {}, 'a'", "'echo', {}, { channel: Symbol() }"])
def test_odd_options_are_no_trouble(running: Page, sent: str) -> None:
    """Options of any kind are read as far as they go."""
    assert running.evaluate(f"() => bookletRuntime.ask({sent})")["ok"]


@pytest.mark.parametrize("text", ["", "<html>", "null", "12", '{"data": {}}', "{"])
def test_a_reply_that_is_none_is_one_sentence(running: Page, text: str) -> None:
    """Text from Python that is not a reply never reaches the page; the next question is answered."""
    assert STOPPED in ask(running, "raw", text=text)["errors"][0]["message"]
    assert ask(running, "echo", a=1)["ok"]


def test_a_listener_that_throws_stops_nothing(stand_in_address: str, bare: BrowserContext) -> None:
    """An error in a page's listener leaves the start alone."""
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    page.evaluate("() => { bookletRuntime.onchange(() => { throw new Error('mine'); }); }")
    assert how(page)["start"] == "snapshot"


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


def test_a_server_that_undoes_the_gzip_is_no_trouble(stand_in_site: Path, bare: BrowserContext) -> None:
    """Some servers label .gz files as encoded, and the browser then unpacks them itself."""

    class Handler(SiteHandler):
        prefix = "/"

        def __init__(self, *args: object) -> None:
            super().__init__(*args, directory=str(stand_in_site))

        def end_headers(self) -> None:
            if self.path.endswith(".gz"):
                self.send_header("Content-Encoding", "gzip")
            super().end_headers()

    with SiteServer(("127.0.0.1", 0), Handler) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        page = bare.new_page()
        page.goto(f"http://127.0.0.1:{server.server_address[1]}/page.html")
        assert how(page) == {"place": "worker", "start": "snapshot", "source": "http"}
        server.shutdown()


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


def test_a_calculation_without_end_is_stopped_on_the_page_too(address: str, bare: BrowserContext) -> None:
    """No timer of the page could end it: Python looks at the clock itself, and answers the next question."""
    page = bare.new_page()
    page.goto(f"{address}no-worker.html")
    assert how(page)["place"] == "page"
    reply = page.evaluate(ASK, ["slow", {"seconds": 600}, {"limit": 100}])
    assert TOO_LONG in reply["errors"][0]["message"]
    assert ask(page, "echo", a=1)["ok"]


def test_runs_on_the_page_without_the_worker_script(stand_in_address: str, bare: BrowserContext) -> None:
    """The worker's file is missing: the same."""
    bare.route("**/worker-*", lambda route: route.fulfill(status=404))
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    assert how(page)["place"] == "page"


@pytest.mark.parametrize("missing", ["core-*", "engine-*"])
def test_a_start_that_cannot_succeed_says_so(stand_in_address: str, bare: BrowserContext, missing: str) -> None:
    """Every question is answered with one sentence, and the state says "failed"."""
    bare.route(f"**/{missing}", lambda route: route.abort())
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    for _ in range(2):
        reply = ask(page, "root", of=2)
        assert not reply["ok"]
        assert [error["field"] for error in reply["errors"]] == [None]
        assert NOT_FETCHED in reply["errors"][0]["message"]
    assert page.evaluate("bookletRuntime.state") == "failed"
    assert NOT_FETCHED in page.evaluate("bookletRuntime.message")


def test_a_start_that_cannot_succeed_says_so_from_disk(
    stand_in_site: Path, tmp_path: Path, bare: BrowserContext
) -> None:
    """The same from disk, with the core's file gone."""
    address = without(stand_in_site, tmp_path / "copy", "disk-core-*")
    page = bare.new_page()
    page.goto(f"{address}page.html")
    assert NOT_FETCHED in ask(page, "root", of=2)["errors"][0]["message"]


SIGN_IN = "<!doctype html><title>Sign in</title><p>Sign in to use this network."


@pytest.mark.parametrize(
    "replaced",
    [
        ("engine-*",),
        ("core-*",),
        ("memory-*", "stdlib-*"),
        ("memory-*", "wheel-*", "calc-*"),
        ("*-*",),
    ],
)
def test_a_sign_in_page_in_place_of_a_file_is_told(
    stand_in_address: str, bare: BrowserContext, replaced: tuple[str, ...]
) -> None:
    """A network's sign-in page answers every address with status 200; the sentence says what to do."""
    for pattern in replaced:
        bare.route(
            f"**/runtime/{pattern}",
            lambda route: route.fulfill(content_type="text/html", body=SIGN_IN),
        )
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    reply = ask(page, "root", of=2)
    assert REPLACED in reply["errors"][0]["message"]
    assert page.evaluate("bookletRuntime.state") == "failed"


@pytest.mark.parametrize("damaged", [("core-*",), ("memory-*", "stdlib-*")])
def test_a_file_that_was_cut_short_is_told(
    stand_in_address: str, stand_in_site: Path, bare: BrowserContext, damaged: tuple[str, ...]
) -> None:
    """A download that ended early is damage, not a mystery."""
    halves = {
        file.name: file.read_bytes()[: file.stat().st_size // 2]
        for pattern in damaged
        for file in (stand_in_site / "assets" / "runtime").glob(pattern)
    }
    for name in halves:
        bare.route(f"**/{name}", lambda route: route.fulfill(body=halves[route.request.url.split("/")[-1]]))
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    assert REPLACED in ask(page, "root", of=2)["errors"][0]["message"]


@pytest.mark.parametrize(
    ("handicap", "sentence"),
    [
        ("delete window.WebAssembly;", TOO_OLD),
        (
            "WebAssembly.compileStreaming = async () => { throw new RangeError('no room'); };",
            NO_MEMORY,
        ),
    ],
)
def test_a_browser_that_cannot_is_told_why(address: str, bare: BrowserContext, handicap: str, sentence: str) -> None:
    """Without WebAssembly, or without memory for it, the sentence names that."""
    bare.add_init_script(handicap)
    page = bare.new_page()
    page.goto(f"{address}page.html")
    assert sentence in ask(page, "root", of=2)["errors"][0]["message"]


def test_a_worker_that_never_speaks_is_given_up(stand_in_address: str, bare: BrowserContext) -> None:
    """An empty script in the worker's place says nothing, not even that it failed."""
    bare.route("**/worker-*", lambda route: route.fulfill(content_type="text/javascript", body=""))
    page = bare.new_page()
    page.clock.install()
    page.goto(f"{stand_in_address}page.html")
    page.evaluate("() => { bookletRuntime.start(); }")  # not waited for: the clock is moved meanwhile
    page.clock.fast_forward(21_000)
    assert how(page)["place"] == "page"


def test_a_worker_of_another_build_is_refused(stand_in_address: str, stand_in_site: Path, bare: BrowserContext) -> None:
    """An old loader never talks to a new worker: their messages may differ."""
    worker = next((stand_in_site / "assets" / "runtime").glob("worker-*")).read_text("utf-8")
    other, count = re.subn(r'worker:"[0-9a-f]{12}"', 'worker:"0123456789ab"', worker)
    assert count == 1
    bare.route("**/worker-*", lambda route: route.fulfill(content_type="text/javascript", body=other))
    page = bare.new_page()
    page.goto(f"{stand_in_address}page.html")
    assert how(page)["place"] == "page"


# --- After an update of the site -------------------------------------------------------------

NO_STORAGE = """
for (const name of ["localStorage", "sessionStorage"]) {
  Object.defineProperty(window, name, { get() { throw new DOMException("denied", "SecurityError"); } });
}
"""
TYPED = """() => {
  document.addEventListener("booklet:leaving", (event) => { event.detail.typed = "12 cm"; });
}"""


@pytest.fixture
def updatable(stand_in_site: Path, tmp_path: Path) -> Iterator[tuple[str, Callable[[], None]]]:
    """A site's address, and what replaces the site by a later build, as a deployment does."""
    site = tmp_path / "updatable"
    shutil.copytree(stand_in_site, site)
    runtime = site / "assets" / "runtime"

    def update() -> None:
        old = re.search(r"worker-([0-9a-f]{12})", next(runtime.glob("worker-*")).name)
        assert old
        for file in list(runtime.glob("*-*")):
            file.rename(runtime / file.name.replace(old[1], "0123456789ab"))
        loader = runtime / "loader.js"
        loader.write_text(loader.read_text("utf-8").replace(old[1], "0123456789ab"), "utf-8")

    with serving(site, PREFIX) as address:
        yield address, update


@pytest.mark.parametrize("handicap", ["", NO_STORAGE])
def test_an_old_page_of_an_updated_site_recovers(
    updatable: tuple[str, Callable[[], None]], bare: BrowserContext, handicap: str
) -> None:
    """It reloads itself, once, takes along what scripts kept, and then answers."""
    address, update = updatable
    bare.add_init_script(handicap)
    page = bare.new_page()
    loads: list[str] = []
    page.on("load", lambda opened: loads.append(opened.url))
    page.goto(f"{address}page.html#r=12cm")
    page.evaluate(TYPED)
    update()
    with page.expect_event("load"):
        page.evaluate("() => { bookletRuntime.ask('root', { of: 2 }); }")
    assert page.evaluate("bookletRuntime.kept") == {"typed": "12 cm"}
    assert how(page) == {"place": "worker", "start": "snapshot", "source": "http"}
    assert loads == [f"{address}page.html#r=12cm"] * 2
    page.reload()
    assert page.evaluate("bookletRuntime.kept") is None


@pytest.mark.parametrize("handicap", ["", NO_STORAGE])
def test_a_page_that_stays_old_does_not_reload_for_ever(
    updatable: tuple[str, Callable[[], None]], bare: BrowserContext, handicap: str
) -> None:
    """Where the reload brings the old loader again, out of a cache, a sentence is all that is left."""
    address, update = updatable
    bare.add_init_script(handicap)
    page = bare.new_page()
    loads: list[str] = []
    page.on("load", lambda opened: loads.append(opened.url))
    page.goto(f"{address}page.html")
    old = page.evaluate("fetch('assets/runtime/loader.js').then((found) => found.text())")

    def cached(route: Route) -> None:
        if route.request.resource_type == "script":
            route.fulfill(content_type="text/javascript", body=old)
        else:
            route.continue_()

    bare.route("**/loader.js", cached)
    update()
    with page.expect_event("load"):
        page.evaluate("() => { bookletRuntime.ask('root', { of: 2 }); }")
    assert UPDATED in ask(page, "root", of=2)["errors"][0]["message"]
    assert len(loads) == 2


def test_a_page_that_may_not_note_its_reload_stays(
    updatable: tuple[str, Callable[[], None]], bare: BrowserContext
) -> None:
    """Without a place for the note there could be no end of reloading, so the reader is asked to."""
    address, update = updatable
    bare.add_init_script("history.replaceState = () => { throw new Error('not here'); };")
    page = bare.new_page()
    page.goto(f"{address}page.html")
    update()
    assert UPDATED in ask(page, "root", of=2)["errors"][0]["message"]


def test_a_missing_file_alone_is_no_update(updatable: tuple[str, Callable[[], None]], bare: BrowserContext) -> None:
    """While the site's loader names the same files the page is not reloaded."""
    address, _ = updatable
    bare.route("**/core-*", lambda route: route.fulfill(status=404))
    page = bare.new_page()
    page.goto(f"{address}page.html")
    assert NOT_FETCHED in ask(page, "root", of=2)["errors"][0]["message"]
    assert page.evaluate("bookletRuntime.kept") is None
