"""Find the blocks of a page, and refuse what is almost one.

Each fence of a page is a block of ours, written exactly so, or code in a language that has a name.
Anything else would be published as plain code, and the form it was meant to be would be missing.
"""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass
from difflib import get_close_matches

from pygments.lexers import get_lexer_by_name
from pygments.util import ClassNotFound

FENCE = "```"
# Spaces, and the marks of quotes and lists, may stand before a fence in Markdown.
_OPENING = re.compile(r"(?P<before>(?:[ \t]|>|[-*+][ \t]|\d+[.)][ \t])*)(?P<fence>`{3,}|~{3,})(?P<info>[^`]*)")
_TOO_SHORT = re.compile(r"\s*(?:`{1,2}|~{1,2})\s*([\w-]+)\s*")
_QUESTION_KEY = re.compile(r"\s*[a-z][a-z-]*\.[a-z][a-z-]*\s*")


class BlockError(ValueError):
    """A block that cannot be built; the message is the remedy.

    `line` is its place in the page's Markdown, the first being 0; None is the opening of the block.
    """

    def __init__(self, message: str, line: int | None = None) -> None:
        super().__init__(message)
        self.line = line


@dataclass(frozen=True)
class Block:
    """A block of ours: its kind, the lines between the fences, and the lines it takes (`end` excluded)."""

    kind: str
    body: list[str]
    start: int
    end: int


def find_blocks(markdown: str, kinds: Collection[str]) -> list[Block]:
    """Return the blocks of a page. Raises BlockError for a fence that is neither ours nor code."""
    lines = markdown.split("\n")
    found = []
    at = 0
    while at < len(lines):
        short = _TOO_SHORT.fullmatch(lines[at])
        if short and short[1] in kinds:
            raise BlockError(f"a block opens with three backticks: {FENCE}{short[1]}.", at)
        opening = _OPENING.fullmatch(lines[at])
        if opening is None:
            at += 1
            continue
        kind = _kind(opening, lines[at + 1 : at + 2], kinds, at)
        end = _end_of_block(lines, at, kind) if kind else _end_of_code(lines, at, opening, kinds)
        if kind:
            found.append(Block(kind, lines[at + 1 : end - 1], at, end))
        at = end
    return found


def _kind(opening: re.Match[str], following: list[str], kinds: Collection[str], at: int) -> str | None:
    """The kind of block a fence opens; None for code."""
    info = opening["info"].rstrip()
    words = re.findall(r"[\w+#-]+", info)
    if not words:
        if following and _QUESTION_KEY.fullmatch(following[0]):
            raise BlockError(f"say what this block is: {FENCE}question. For plain text write {FENCE}text.", at)
        return None
    kind = words[0].casefold()
    if kind in kinds:
        _must_be_exact(opening["before"], opening["fence"], info, kind, at)
        return kind
    try:
        get_lexer_by_name(words[0])
    except ClassNotFound:
        near = get_close_matches(kind, kinds, 1)
        remedy = (
            f"did you mean {FENCE}{near[0]}?"
            if near
            else f"the blocks are {', '.join(sorted(kinds))}; for plain text write {FENCE}text."
        )
        raise BlockError(f"no block and no language is called “{words[0]}”; {remedy}", at) from None
    return None


def _must_be_exact(before: str, fence: str, info: str, kind: str, at: int) -> None:
    written = f"{FENCE}{kind}"
    if before:
        raise BlockError(f"a block starts at the left edge; take away what stands before {written}.", at)
    if fence != FENCE:
        raise BlockError(f"a block opens with three backticks, not with {fence}: {written}.", at)
    if info.lower() == kind and info != kind:
        raise BlockError(f"the kind of a block is in small letters: {written}.", at)
    if info != kind:
        rest = info.strip().removeprefix(kind).strip()
        where = f"; “{rest}” belongs on the next line" if rest else ""
        raise BlockError(f"{written} stands alone on its line, without spaces{where}.", at)


def _end_of_block(lines: list[str], at: int, kind: str) -> int:
    """The line after the closing fence of a block of ours."""
    for number in range(at + 1, len(lines)):
        if lines[number].rstrip() == FENCE:
            return number + 1
        if lines[number].lstrip().startswith(("`", "~~~")):
            raise BlockError(
                f"the {kind} block is not closed: {lines[number].strip()!r}, {number - at} lines on, "
                f"is not {FENCE} alone at the left edge.",
                at,
            )
    raise BlockError(f"the {kind} block is not closed; put {FENCE} on a line after it.", at)


def _end_of_code(lines: list[str], at: int, opening: re.Match[str], kinds: Collection[str]) -> int:
    fence = opening["fence"]
    for number in range(at + 1, len(lines)):
        line = lines[number].strip(" \t>")
        if line == fence:
            return number + 1
        if line.startswith(fence) and line.removeprefix(fence) in kinds:
            break
    raise BlockError(
        f"the code that {lines[at].strip()!r} opens is not closed; put {fence} on a line after it.",
        at,
    )
