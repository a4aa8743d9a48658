"""MkDocs hooks: the order of the pages, formulas in Markdown, and search without another host."""

from __future__ import annotations

from jinja2 import Environment, FileSystemBytecodeCache
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import event_priority
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation, Section
from mkdocs.structure.pages import Page
from mkdocs.utils.meta import get_data

import formulas
import kept_results
import licences
from calc import VERSION
from chapters import chapters


@event_priority(-50)
def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """Take away the script from a CDN that the offline plugin, which ran before, put in; tell the version."""
    config.extra["polyfills"] = []  # pages/search-worker.js does it
    config.extra["version"] = VERSION
    return config


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Order the pages by front matter, so a new page needs no entry anywhere else; add what has no file.

    `order: 30` places a page (without it, it comes last, by file name); `group: Electricity`
    files it under that heading, which stands where its first page stands.
    """
    chapters.cache_clear()
    own = {f"{entry.page}.md" for chapter in chapters() for entry in chapter.entries}
    for uri in sorted(own):
        if files.get_file_from_path(uri) is None:
            files.append(File.generated(config, uri, content=""))
    pages = []
    for file in files.documentation_pages():
        if file.src_uri in own:
            file.inclusion = InclusionLevel.NOT_IN_NAV  # the leaf of contents shows those of the open chapter
            continue
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


def on_env(env: Environment, **_: object) -> Environment:
    """Keep the compiled templates of the theme from build to build."""
    folder = kept_results.FOLDER / "templates"
    folder.mkdir(parents=True, exist_ok=True)
    env.bytecode_cache = FileSystemBytecodeCache(str(folder))
    return env


def on_page_context(context: dict[str, object], page: Page, nav: Navigation, **_: object) -> dict[str, object]:
    """The leaf of contents: every page by group; below the open one its questions, or its headings."""
    leaf: list[tuple[str, list[dict[str, object]]]] = []
    for item in nav.items:
        if isinstance(item, Section):
            leaf.append((item.title, [_line(one, page) for one in item.children if isinstance(one, Page)]))
        elif isinstance(item, Page):
            leaf.append(("", [_line(item, page)]))
    context["leaf"] = leaf
    return context


def _line(listed: Page, shown: Page) -> dict[str, object]:
    """One line of the leaf: title, url, whether it is the page shown, and the lines below it."""
    below: list[dict[str, object]] = []
    stem = listed.file.src_uri.removesuffix(".md")
    chapter = next((chapter for chapter in chapters() if chapter.page == stem), None)
    inside = shown.file.src_uri.startswith(f"{stem}/")
    if chapter and (listed is shown or inside):
        below = [
            {"title": entry.question.title, "url": entry.address, "current": f"{entry.page}.md" == shown.file.src_uri}
            for entry in chapter.entries
        ]
    elif listed is shown and listed.file.src_uri != "index.md":
        heads = [head for top in shown.toc for head in top.children]
        below = [{"title": head.title, "url": f"{shown.url}{head.url}", "current": False} for head in heads]
    return {"title": listed.title, "url": listed.url, "current": listed is shown, "open": inside, "below": below}


def on_post_page(output: str, **_: object) -> str:
    """Put the formulas back in the places of their words."""
    return formulas.put_back(output)
