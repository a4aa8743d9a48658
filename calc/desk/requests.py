"""What every operation reads from a request: the question asked for, its data, and the reader's settings."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from calc import topics
from calc.language.printing import exact, with_unit
from calc.language.quantities import QuantityError, parse_quantity
from calc.language.units import parse_unit
from calc.model.constants import SHEET, Constant, Settings
from calc.model.questions import Pick, Question, Refusal, Topic
from calc.working.reading import Read, Refusals, read


def asked_for(data: Mapping[str, Any]) -> tuple[Topic, Question, Read]:
    """The question of a request with its data read. data: question, inputs, find, settings, variant, typed.

    ``typed``: the boxes in which a bare number of a doubtful size is asked about; in any other it is
    taken in the box's unit. Raises Refusal or Refusals.
    """
    topic, question = find_question(data)
    settings = read_settings(data.get("settings", {}))
    inputs = data.get("inputs", {})
    if not isinstance(inputs, dict):
        raise Refusal(None, "The numbers of this link cannot be read. Type them again.")
    typed = data.get("typed", [])
    asking = frozenset(filter(is_text, typed)) if isinstance(typed, list) else frozenset()
    found = read(question, inputs, str(data.get("find", "")), settings, variant_of(data), asking)
    return topic, question, found


def is_text(value: object) -> bool:
    """Whether an entry of a list is text."""
    return isinstance(value, str)


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

    Raises Refusals, field ``settings.k`` and so on, each with a pick that takes the setting away.
    """
    if not isinstance(typed, Mapping):
        return Settings()
    changed: dict[str, float] = {}
    decimals, comma = 2, True
    refusals: list[Refusal] = []
    for name, entry in typed.items():
        try:
            if name in SHEET:
                changed |= _constant(SHEET[name], entry)
            elif name == "decimals":
                decimals = _decimals(entry)
            elif name == "comma":
                comma = _comma(entry)
            else:
                raise _wrong(str(name), entry, "there is no setting of this name", "Leave it out")
        except Refusal as refusal:
            refusals.append(refusal)
    if refusals:
        raise Refusals(tuple(refusals))
    return Settings(changed, decimals, comma)


def _constant(line: Constant, entry: object) -> dict[str, float]:
    """The constant by name, or nothing where none was typed."""
    if isinstance(entry, str) and not entry.strip():
        return {}
    school = with_unit(exact(line.school), parse_unit(line.unit)).text
    way_out = f"Use the data sheet's {line.name} = {school}"
    if not isinstance(entry, str):
        raise _wrong(line.name, entry, f"type {line.words} as text, such as {school}", way_out)
    try:
        value = parse_quantity(entry, line.unit, example=school).value
    except QuantityError as problem:
        raise Refusal(
            f"settings.{line.name}",
            f"The setting {line.name} ({line.words}) cannot be used. {problem.sentence}",
            (Pick(way_out, ""),),
        ) from None
    if value <= 0:
        raise _wrong(line.name, entry, f"{line.words} must be greater than zero", way_out)
    return {line.name: value}


def _decimals(entry: object) -> int:
    text = str(entry) if isinstance(entry, int) and not isinstance(entry, bool) else entry
    if text == "":
        return 2
    if not (isinstance(text, str) and text in {"0", "1", "2", "3", "4", "5", "6"}):
        rule = "decimals are a whole number from 0 to 6"
        raise _wrong("decimals", entry, rule, "Use 2 decimals")
    return int(text)


def _comma(entry: object) -> bool:
    if entry in ("", "comma") or entry is True:
        return True
    if entry == "point" or entry is False:
        return False
    raise _wrong("comma", entry, "the decimal sign is comma or point", "Use the decimal comma")


def _wrong(name: str, entry: object, rule: str, way_out: str) -> Refusal:
    """The refusal of one setting, with the button that puts its usual value back."""
    shown = entry if isinstance(entry, str) else json.dumps(entry, ensure_ascii=False)
    shown = f"{shown[:20]}…" if len(shown) > 20 else shown
    sentence = f"The setting {name[:20]} cannot be “{shown}”: {rule}."
    return Refusal(f"settings.{name}", sentence, (Pick(way_out, ""),))
