"""A page block is written exactly so or stops the build: none is published as plain code."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest
from mkdocs.exceptions import PluginError

from pages_hook import on_page_markdown
from toolbox import REPO

FRONT = "---\ntitle: A page\n---\n\n"
GOOD = "```question\ncoulomb.force\nQ1 = +6 nC\nfind = F\n```"
KINDS = (
    "cautions, contents, data-sheet, drawn, formulas, laws, licences, practice, question, questions, whole-questions, "
    "worksheet"
)

# What is typed (a page's Markdown from its line 5 on), the line that is named, and what is said.
WRONG = {
    "never closed": (
        "```question\ncoulomb.force\n",
        5,
        "the question block is not closed; put ``` on a line after it.",
    ),
    "closed by the next block's opening": (
        "```laws\ncoulomb\n\n```cautions\ncoulomb\n```\n",
        5,
        "the laws block is not closed: '```cautions', 3 lines on, is not ``` alone at the left edge.",
    ),
    "closed by an indented fence": (
        "```laws\ncoulomb\n  ```\n",
        5,
        "the laws block is not closed: '```', 2 lines on, is not ``` alone at the left edge.",
    ),
    "closed by two backticks": (
        "```laws\ncoulomb\n``\n",
        5,
        "the laws block is not closed: '``', 2 lines on, is not ``` alone at the left edge.",
    ),
    "opened by two backticks": (
        "``question\ncoulomb.force\n``\n",
        5,
        "a block opens with three backticks: ```question.",
    ),
    "four backticks": (
        "````laws\ncoulomb\n````\n",
        5,
        "a block opens with three backticks, not with ````: ```laws.",
    ),
    "tildes": (
        "Text.\n\n~~~question\ncoulomb.force\n~~~\n",
        7,
        "a block opens with three backticks, not with ~~~: ```question.",
    ),
    "a misspelt kind": (
        "```qustion\ncoulomb.force\n```\n",
        5,
        "no block and no language is called “qustion”; did you mean ```question?",
    ),
    "a kind nothing resembles": (
        "```zzz\ncoulomb.force\n```\n",
        5,
        f"no block and no language is called “zzz”; the blocks are {KINDS}; for plain text write ```text.",
    ),
    "an underscore": (
        "```data_sheet\n```\n",
        5,
        "no block and no language is called “data_sheet”; did you mean ```data-sheet?",
    ),
    "capitals": (
        "```Question\ncoulomb.force\n```\n",
        5,
        "the kind of a block is in small letters: ```question.",
    ),
    "spaces before": (
        "  ```question\n  coulomb.force\n  ```\n",
        5,
        "a block starts at the left edge; take away what stands before ```question.",
    ),
    "a tab before": (
        "\t```question\n\tcoulomb.force\n\t```\n",
        5,
        "a block starts at the left edge; take away what stands before ```question.",
    ),
    "in a list": (
        "- ```laws\n  coulomb\n  ```\n",
        5,
        "a block starts at the left edge; take away what stands before ```laws.",
    ),
    "in a quotation": (
        "> ```laws\n> coulomb\n> ```\n",
        5,
        "a block starts at the left edge; take away what stands before ```laws.",
    ),
    "a space before the kind": (
        "``` laws\ncoulomb\n```\n",
        5,
        "```laws stands alone on its line, without spaces.",
    ),
    "a tab before the kind": (
        "```\tlaws\ncoulomb\n```\n",
        5,
        "```laws stands alone on its line, without spaces.",
    ),
    "text after the kind": (
        "```question coulomb.force\nQ1 = 3 nC\n```\n",
        5,
        "```question stands alone on its line, without spaces; “coulomb.force” belongs on the next line.",
    ),
    "no kind": (
        "```\ncoulomb.force\nQ1 = 3 nC\n```\n",
        5,
        "say what this block is: ```question. For plain text write ```text.",
    ),
    "code that swallows a block": (
        "```text\nSome words.\n\n```laws\ncoulomb\n```\n",
        5,
        "the code that '```text' opens is not closed; put ``` on a line after it.",
    ),
    "code never closed": (
        "~~~python\nprint(1)\n",
        5,
        "the code that '~~~python' opens is not closed; put ~~~ on a line after it.",
    ),
    "an empty question": (
        "```question\n\n```\n",
        5,
        "name a question on the first line, for example coulomb.force.",
    ),
    "empty laws": (
        "```laws\n```\n",
        5,
        "no topic ''; there are ",
    ),
    "nothing drawn": (
        "```drawn\n```\n",
        5,
        "draw at least one question, for example “coulomb.force seed=3 level=2”.",
    ),
    "an unknown question": (
        "```drawn\ncoulomb.nothing seed=1 level=1\n```\n",
        5,
        "no question 'coulomb.nothing'; there are ",
    ),
    "an unknown field": (
        "```question\ncoulomb.force\nQ9 = 3 nC\n```\n",
        5,
        "'Q9 = 3 nC' is not “name = value”; names here: F, Q1, Q2, R, acting, find, r.",
    ),
    "a field in the other case": (
        "```question\ncoulomb.force\nq1 = 3 nC\n```\n",
        5,
        "'q1 = 3 nC' is not “name = value”; names here: F, Q1, Q2, R, acting, find, r.",
    ),
    "a name twice": (
        "```question\ncoulomb.force\nQ1 = 3 nC\nQ1 = 4 nC\n```\n",
        5,
        "Q1 stands twice; keep one of its lines.",
    ),
    "an unknown find": (
        "```question\ncoulomb.force\nfind = x\n```\n",
        5,
        "coulomb.force cannot find 'x'; it can find F, Q1, Q2, r.",
    ),
    "a find that is a choice": (
        "```question\ncoulomb.force\nfind = acting\n```\n",
        5,
        "coulomb.force cannot find 'acting'; it can find F, Q1, Q2, r.",
    ),
    "an extra line in laws": (
        "```laws\ncoulomb\nequilibrium\n```\n",
        5,
        "only the topic stands here; take away 'equilibrium'.",
    ),
    "an extra line in a data sheet": (
        "```data-sheet\nk = 9e9\n```\n",
        5,
        "this block has no lines; take away 'k = 9e9'.",
    ),
    "a question twice on a page": (
        f"{GOOD}\n\n{GOOD}\n",
        11,
        "coulomb.force stands twice on this page; keep one of its blocks.",
    ),
}


def page(text: str) -> SimpleNamespace:
    """As much of a MkDocs page as the hook uses."""
    file = SimpleNamespace(content_string=text, src_uri="some-topic.md")
    return SimpleNamespace(file=file, meta={})


@pytest.mark.parametrize(("body", "line", "said"), WRONG.values(), ids=WRONG)
def test_a_block_that_is_almost_right_stops_the_build(body: str, line: int, said: str) -> None:
    """The error names the file, the line in it, what is wrong and what to write."""
    with pytest.raises(PluginError) as caught:
        on_page_markdown(body, page(FRONT + body))
    message = str(caught.value)
    if said.endswith(" "):
        assert message.startswith(f"docs/some-topic.md, line {line}: {said}")
    else:
        assert message == f"docs/some-topic.md, line {line}: {said}"


def test_a_right_block_becomes_its_form_with_spaces_nobody_sees() -> None:
    """Blanks at the end of a fence, and empty lines in it, change nothing."""
    made, spaced = page(GOOD), page(GOOD)
    on_page_markdown(GOOD, made)
    on_page_markdown(GOOD.replace("coulomb.force", "coulomb.force\n").replace("nC", "nC \t"), spaced)
    assert made.meta["blocks"] == spaced.meta["blocks"]
    assert 'data-question="coulomb.force"' in made.meta["blocks"][0]


def built(folder: Path, body: str) -> tuple[str, str]:
    """The page and the messages of MkDocs, with our hooks and settings, for a page of this text."""
    (folder / "docs").mkdir()
    (folder / "docs/index.md").write_text(FRONT + body, encoding="utf-8")
    settings = (REPO / "mkdocs.yml").read_text(encoding="utf-8")
    extensions = settings[settings.index("markdown_extensions:") : settings.index("validation:")]
    hook = REPO / "site-scripts/pages_hook.py"
    (folder / "mkdocs.yml").write_text(f"site_name: A\nplugins: []\nhooks: [{hook}]\n{extensions}", encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--quiet"],
        cwd=folder,
        capture_output=True,
        encoding="utf-8",
        env={**os.environ, "PYTHONPATH": f"{REPO}:{REPO / 'site-scripts'}"},
    )
    made = folder / "site/index.html"
    text = made.read_text(encoding="utf-8") if made.is_file() else ""
    return text, done.stderr if done.returncode else ""


def test_the_real_build_stops_with_file_and_line(tmp_path: Path) -> None:
    """MkDocs itself ends with the sentence, and no page is written."""
    text, message = built(tmp_path, "# A\n\n~~~question\ncoulomb.force\n~~~\n")
    assert "docs/index.md, line 7: a block opens with three backticks, not with ~~~" in message
    assert not text


def test_code_that_is_plainly_not_ours_stays_code(tmp_path: Path) -> None:
    """Fences with the name of a language, or none, are published as code beside a real block."""
    body = (
        "```python\nprint(1)\n```\n\n```html\n<p>2</p>\n```\n\n~~~text\nthree\n~~~\n\n```\nfour = 4\n```\n\n"
        "- a list\n\n    ```sh\n    echo 5\n    ```\n\n````text\n```question\ncoulomb.force\n```\n````\n\n"
        f"Inline ```code``` too.\n\n{GOOD}\n"
    )
    text, message = built(tmp_path, body)
    assert not message
    assert text.count('class="highlight"') == 6
    assert text.count('class="question"') == 1
    assert "```question" in text.split('class="question"')[0]
