"""MkDocs hooks: the order of the pages, formulas in Markdown, and search without another host."""

from __future__ import annotations

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import event_priority
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page
from mkdocs.utils.meta import get_data

import formulas
import licences
from calc import VERSION

SEARCH_FROM_DISK = "assets/search-from-disk.js"


@event_priority(-50)
def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """Put our own script where the offline plugin, which ran before, put one from a CDN; tell the version."""
    config.extra["polyfills"] = [SEARCH_FROM_DISK]
    config.extra["version"] = VERSION
    return config


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Order the pages by front matter, so a new page needs no entry anywhere else; add the licences.

    `order: 30` places a page (without it, it comes last, by file name); `group: Electricity`
    files it under that heading, which stands where its first page stands.
    """
    pages = []
    for file in files.documentation_pages():
        _, meta = get_data(file.content_string)
        place = (file.src_uri != "index.md", float(meta.get("order", "inf")), file.src_uri)
        pages.append((place, str(meta.get("group", "")), file.src_uri))
    nav: list[str | dict[str, list[str]]] = []
    groups: dict[str, list[str]] = {}
    for _, group, uri in sorted(pages):
        if not group:
            nav.append(uri)
        elif group in groups:
            groups[group].append(uri)
        else:
            groups[group] = [uri]
            nav.append({group: groups[group]})
    config.nav = nav
    for part in licences.PARTS:
        place = f"{licences.FOLDER}/{part.file}"
        files.append(File.generated(config, place, content=licences.text(part)))
    return files


@event_priority(-100)
def on_page_content(html: str, page: Page, **_: object) -> str:
    """Set `$...$` and `$$...$$`; until the page is written every formula stands in words, for the search."""
    return formulas.in_words(formulas.set_prose(html, page.file.src_uri))


def on_post_page(output: str, **_: object) -> str:
    """Put the formulas back in the places of their words."""
    return formulas.put_back(output)
