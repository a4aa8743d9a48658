"""Modules of the page scripts, run in a page by themselves: pages hand nothing out for tests."""

from __future__ import annotations

from functools import cache
from typing import Any

from playwright.sync_api import Page

from page_scripts import FOLDER, esbuild


@cache
def _source(module: str) -> str:
    """The module and what it imports as one classic script that leaves modules.<name>."""
    return esbuild(
        f'export * from "./{module}.js";', FOLDER, "--bundle", "--format=iife", f"--global-name=modules.{module}"
    )


def in_module(page: Page, module: str, run: str, argument: object = None) -> Any:
    """What `run`, a JavaScript function of the module and the argument, returns in the page.

    The module has a state of its own, as the same module in another tab has.
    """
    if not page.evaluate(f"Boolean(window.modules?.{module})"):
        page.evaluate(_source(module))
    return page.evaluate(f"(argument) => ({run})(modules.{module}, argument)", argument)
