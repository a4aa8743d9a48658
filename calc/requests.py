"""What every operation reads from a request: the question asked for, its data, and the reader's settings."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc import topics
from calc.constants import SHEET, Settings
from calc.quantities import QuantityError, parse_quantity
from calc.questions import Question, Refusal, Topic
from calc.reading import Read, Refusals, read


def asked_for(data: Mapping[str, Any]) -> tuple[Topic, Question, Read]:
    """The question of a request with its data read. data: question, inputs, find, settings, variant.

    Raises Refusal or Refusals.
    """
    topic, question = find_question(data)
    settings = read_settings(data.get("settings", {}))
    inputs = data.get("inputs", {})
    if not isinstance(inputs, dict):
        raise Refusal(None, "The numbers of this link cannot be read. Type them again.")
    found = read(question, inputs, str(data.get("find", "")), settings, variant_of(data))
    return topic, question, found


def find_question(data: Mapping[str, Any]) -> tuple[Topic, Question]:
    """The declared topic and question named in ``data``; a refusal names what there is."""
    try:
        return topics.find(str(data.get("question", "")))
    except KeyError:
        raise Refusal(
            None, "There is no such question in this booklet. Follow a link from the contents page."
        ) from None


def variant_of(data: Mapping[str, Any]) -> int:
    """The wording number of a request; 0 when it has none."""
    value = data.get("variant", 0)
    return value if isinstance(value, int) and 0 <= value < 10**9 else 0


def comma_of(data: Mapping[str, Any]) -> bool:
    """The decimal sign a request asks for, whatever else is wrong with it."""
    settings = data.get("settings")
    return not isinstance(settings, Mapping) or settings.get("comma", True) in (True, "comma")


def read_settings(typed: object) -> Settings:
    """The reader's settings: constants as typed text by name, ``decimals`` (0 to 6) and ``comma``.

    Raises Refusals, field ``settings.k`` and so on.
    """
    if not isinstance(typed, Mapping):
        return Settings()
    changed: dict[str, float] = {}
    refusals: list[Refusal] = []
    for name, line in SHEET.items():
        entry = typed.get(name, "")
        if not isinstance(entry, str) or not entry.strip():
            continue
        try:
            value = parse_quantity(entry, line.unit).value
        except QuantityError as problem:
            refusals.append(Refusal(f"settings.{name}", problem.sentence))
            continue
        if value <= 0:
            refusals.append(
                Refusal(
                    f"settings.{name}",
                    f"{line.words[0].upper()}{line.words[1:]} must be greater than zero.",
                )
            )
        else:
            changed[name] = value
    decimals = typed.get("decimals", 2)
    if isinstance(decimals, str) and decimals.isdigit():
        decimals = int(decimals)
    if not isinstance(decimals, int) or not 0 <= decimals <= 6:
        refusals.append(Refusal("settings.decimals", "Decimals: a whole number from 0 to 6."))
        decimals = 2
    if refusals:
        raise Refusals(tuple(refusals))
    return Settings(changed, decimals, comma_of({"settings": typed}))
