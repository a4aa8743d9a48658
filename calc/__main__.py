"""A worked answer in the terminal: ``python -m calc coulomb.force Q1=6nC Q2=-2nC r=15cm``.

Without arguments it lists the questions. The unknown is the quantity left out,
or ``find=r``. ``--latex`` prints LaTeX, ``--version`` the version. Table rows: ``charges=+2uC_0_0~-3uC_0,3_0``.
"""

from __future__ import annotations

import sys

from calc import VERSION, topics
from calc.model.constants import Settings
from calc.model.questions import Question, Refusal, Rows
from calc.renderings import latex, text
from calc.working.reading import Refusals, read
from calc.working.working import work


def main(arguments: list[str]) -> int:
    """Print the worked answer; 0 when it worked, 1 when the data were refused, 2 for an unknown question."""
    render = latex.render if "--latex" in arguments else text.render
    if "--version" in arguments:
        print(VERSION)
        return 0
    words = [argument for argument in arguments if not argument.startswith("--")]
    if not words:
        for topic in topics.topics().values():
            print(topic.title)
            for question in topic.questions:
                print(f"  {topic.key}.{question.key}: {question.title} ({', '.join(f.name for f in question.fields)})")
        return 0
    try:
        topic, question = topics.find(words[0])
    except KeyError as unknown:
        print(unknown.args[0], file=sys.stderr)
        return 2
    typed = entries(question, words[1:])
    find = str(typed.pop("find", ""))
    try:
        found = read(question, typed if words[1:] else question.example, find, Settings())
        print(render(work(topic, question, found)), end="")
    except Refusals as several:
        return _refused(*several.refusals)
    except Refusal as refusal:
        return _refused(refusal)
    return 0


def entries(question: Question, words: list[str]) -> dict[str, object]:
    """Typed data from ``name=text`` words; a table's rows are parted by ``~`` and its cells by ``_``."""
    typed: dict[str, object] = {}
    tables = {item.name: item for item in question.fields if isinstance(item, Rows)}
    for word in words:
        name, _, value = word.partition("=")
        if name in tables:
            columns = [column.name for column in tables[name].columns]
            typed[name] = [dict(zip(columns, row.split("_"), strict=False)) for row in value.split("~")]
        else:
            typed[name] = value
    return typed


def _refused(*refusals: Refusal) -> int:
    for refusal in refusals:
        print(f"{refusal.field or 'the question'}: {refusal.sentence}", file=sys.stderr)
    return 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
