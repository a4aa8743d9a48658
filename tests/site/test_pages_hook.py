"""Fenced blocks of a page: built at build time, or stopped with file, line and remedy."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace

import pytest
from mkdocs.exceptions import PluginError

from pages_hook import BlockError, link_terms, on_page_content, on_page_markdown, on_post_page, question_block


def page(text: str) -> SimpleNamespace:
    """As much of a MkDocs page as the hook uses."""
    path = Path(__file__).parent / "some-topic.md"
    file = SimpleNamespace(content_string=text, src_uri="some-topic.md", abs_src_path=str(path))
    return SimpleNamespace(file=file, meta={})


FRONT = "---\ntitle: A page\n---\n"


def built(body: str) -> str:
    """The content of a page whose Markdown is ``body``, with the blocks put in."""
    made = page(FRONT + body)
    return on_post_page(on_page_content(on_page_markdown(body, made), made), made)


def test_a_question_block_becomes_form_and_worked_example() -> None:
    """The built page holds the form, filled, and the answer, worked."""
    content = built("# A page\n\n```question\ncoulomb.force\nQ1 = +6 nC\nfind = F\n```\n")
    assert 'data-question="coulomb.force"' in content
    assert 'value="+6 nC"' in content
    assert 'class="answer"' in content
    assert 'href="practice.html#practice=coulomb.force&amp;seed=1&amp;level=1"' in content
    assert "```" not in content


def test_the_search_reads_laws_and_no_worked_answer() -> None:
    """What the search is given of a page has the laws in it; a question's form and answer come after."""
    body = "# A page\n\n```laws\ncoulomb\n```\n\n```question\ncoulomb.force\n```\n"
    made = page(FRONT + body)
    read = on_page_content(on_page_markdown(body, made), made)
    assert 'class="laws"' in read
    assert "<form" not in read
    assert "<form" in on_post_page(read, made)


@pytest.mark.parametrize(
    ("block", "line", "remedy"),
    [
        ("coulomb.nothing", 5, "no question 'coulomb.nothing'; there are coulomb.force"),
        ("heat.loss", 5, "no topic 'heat'; there are"),
        ("coulomb.force\nQ9 = 3 nC", 5, "names here: F, Q1, Q2, R, acting, find, r"),
        ("coulomb.force\nQ1", 5, "is not “name = value”"),
        ("coulomb.force\nQ1 = 3 kg", 5, "Q1: "),
        ("coulomb.contact\nQ2 = +9 nC", 5, "Q2: The charges are already equal"),
        ("", 5, "name a question on the first line"),
    ],
)
def test_a_wrong_block_stops_the_build(block: str, line: int, remedy: str) -> None:
    """The error names the file, the line of the block in it, and what to change."""
    body = f"# A page\n\n```question\n{block}\n```\n"
    with pytest.raises(PluginError) as caught:
        on_page_markdown(body, page(FRONT + body))
    assert str(caught.value).startswith(f"docs/some-topic.md, line {line + 1}: ")
    assert remedy in str(caught.value)


def test_laws_cautions_and_data_sheet_are_blocks_too() -> None:
    """The other kinds are made from declarations as well."""
    content = built("```laws\ncoulomb\n```\n\n```cautions\ncoulomb\n```\n\n```data-sheet\n```\n")
    assert '<dl class="laws"><dt>Coulomb&#x27;s law</dt>' in content
    assert "own safety rules" in content
    assert 'class="settings' in content


def test_the_formulas_of_the_data_sheet_stand_once_beside_their_law() -> None:
    """A law of several formulas is named once for all of them; the Doppler formula and each equation of motion stand
    once, with either sign and one letter for the displacement."""
    content = built("```formulas\n```\n")
    assert content.count("Equations of motion") == content.count("Doppler effect") == 1
    assert 'rowspan="4">Equations of motion' in content
    assert "Motion with constant acceleration" not in content
    assert content.count("f_S (v ± v_L)/(v ± v_S)") == 1
    assert content.count("<table>") == content.count("<h3>") == 10


def test_an_unknown_topic_in_a_laws_block_is_named() -> None:
    """A law block of a topic that does not exist says which there are."""
    with pytest.raises(PluginError, match="no topic 'heat'; there are circuits, coulomb"):
        on_page_markdown("```laws\nheat\n```\n", page("```laws\nheat\n```\n"))


def test_a_question_with_impossible_data_is_refused() -> None:
    """A block is worked like a reader's numbers, refusals included."""
    with pytest.raises(BlockError, match="Distance must be greater than zero"):
        question_block(["coulomb.force", "r = 0 m"])


def test_the_first_mention_of_a_term_is_linked(tmp_path: Path) -> None:
    """One link a term, in running text, not inside another link or a possessive."""
    glossary = tmp_path / "glossary.md"
    glossary.write_text("# Glossary\n\n## charge\n\nText.\n\n## newton\n\nText.\n", encoding="utf-8")
    linked = link_terms("<p>Newton's charges and a charge; one newton.</p>", glossary)
    assert (
        linked == '<p>Newton\'s <a class="term" href="glossary.html#charge">charges</a> and a charge; '
        'one <a class="term" href="glossary.html#newton">newton</a>.</p>'
    )
