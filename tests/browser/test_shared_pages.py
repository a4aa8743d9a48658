"""Tests share a browser's context, so what one of them does may not reach another."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from tests.browser.conftest import DESKTOP, SharedContexts

pytestmark = pytest.mark.browser

KEEP = """async () => {
  localStorage.setItem("kept", "1");
  sessionStorage.setItem("kept", "1");
  if (location.protocol !== "file:") {
    document.cookie = "kept=1; max-age=600";
    await (await caches.open("kept")).put("kept", new Response("1"));
  }
  await new Promise((done) => {
    indexedDB.open("kept").onsuccess = ({ target }) => { target.result.close(); done(); };
  });
}"""
KEPT = """async () => [
  localStorage.getItem("kept") && "local", sessionStorage.getItem("kept") && "session", document.cookie && "cookie",
  ...(await indexedDB.databases()).map(() => "database"), ...(await caches.keys()).map(() => "cache"),
].filter(Boolean)"""


def test_a_page_finds_nothing_that_another_kept(shared_contexts: SharedContexts, place: str) -> None:
    """Storage of every kind, of the site and of files, is empty when a test begins."""
    context = shared_contexts.get(**DESKTOP)
    page = context.new_page()
    page.goto(f"{place}coulombs-law.html")
    page.evaluate(KEEP)
    served = [] if place.startswith("file:") else ["cookie", "cache"]
    assert set(page.evaluate(KEPT)) == {"local", "session", "database", *served}
    context.close_pages()
    page = context.new_page()
    page.goto(f"{place}coulombs-law.html")
    assert page.evaluate(KEPT) == []
    context.close_pages()


def test_a_page_finds_python_running(shared_contexts: SharedContexts, served: str) -> None:
    """One worker of all pages lives on from test to test, and answers."""
    context = shared_contexts.get(**DESKTOP)
    workers = []
    for _ in range(2):
        page = context.new_page()
        page.goto(f"{served}coulombs-law/contact.html")
        assert page.evaluate("bookletRuntime.ask('settings', {})")["ok"]
        targets = page.context.new_cdp_session(page).send("Target.getTargets")["targetInfos"]
        workers.append({target["targetId"] for target in targets if target["type"] == "shared_worker"})
        context.close_pages()
    assert workers[0] == workers[1] != set()


def test_complaints_of_shared_pages_are_heard(chromium: Browser, served: str) -> None:
    """An error on a page, an address that leads nowhere, a warning: each is noted while its page is open."""
    contexts = SharedContexts(chromium, f"{served}coulombs-law/force.html")
    context = contexts.get(**DESKTOP)
    page = context.new_page()
    page.goto(f"{served}coulombs-law.html")
    page.evaluate("() => { setTimeout(() => { throw new Error('mine'); }); console.warn('this too'); }")
    page.evaluate("fetch('nowhere.html')")
    context.close_pages()
    told = "\n".join(context.complaints)
    assert "uncaught: mine" in told
    assert "console: this too" in told
    assert "status of 404" in told
    contexts.close()
