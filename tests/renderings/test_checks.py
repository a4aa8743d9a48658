"""The checks below a worked answer, as a page shows them."""

import re

from calc import topics
from calc.renderings import html
from calc.working.reading import read
from calc.working.working import work


def headings(key: str) -> list[str]:
    """What stands above the checks of a question's example."""
    topic, question = topics.find(key)
    page = html.render(work(topic, question, read(question, question.example)), drawn=False)
    below = page.split("Check it another way", 1)[1]
    return re.findall(r'<p class="what">(.*?)</p>', below)


def test_what_two_checks_do_alike_is_said_once() -> None:
    """Two laws put back stand under one heading; checks of two kinds have a heading each."""
    assert headings("energy.pendulum") == ["Put the values back into the law: both sides must agree"]
    assert len(set(headings("several-charges.triangle"))) == len(headings("several-charges.triangle")) == 2
