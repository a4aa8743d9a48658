"""Answers requests that tell a test what the runtime does, in the shape of the real desk."""

import json
import math
import os
import random
import sys
import time
from collections.abc import Callable, Iterator
from itertools import count
from typing import Any


def _echo(data: dict[str, Any]) -> Any:
    return data


def _root(data: dict[str, Any]) -> Any:
    return {"root": math.sqrt(data["of"]), "text": f"√{data['of']}"}


def _draw(_data: dict[str, Any]) -> Any:
    return {"number": random.random()}


def _late(_data: dict[str, Any]) -> Any:
    from calc.late import WORD

    return {"word": WORD, "platform": sys.platform}


def _late_library(_data: dict[str, Any]) -> Any:
    import colorsys

    return {"hue": colorsys.rgb_to_hsv(1.0, 0.0, 0.0)[0]}


def _kept_library(_data: dict[str, Any]) -> Any:
    # Imports _strptime: in the shipped library, but not in the memory image.
    return {"year": time.strptime("1987", "%Y").tm_year}


def _slow(data: dict[str, Any]) -> Any:
    until = time.monotonic() + data["seconds"]
    while time.monotonic() < until:
        pass
    return data


TURNS = count(1)


def _turn(_data: dict[str, Any]) -> Any:
    return {"turn": next(TURNS)}


def _stuck(_data: dict[str, Any]) -> Any:
    return sum(range(10**18))  # in one instruction of Python's, which nothing interrupts


def _broken(_data: dict[str, Any]) -> Any:
    raise RuntimeError("a mistake in the package")


def _end(_data: dict[str, Any]) -> Any:
    os.abort()


OPERATIONS: dict[str, Callable[[dict[str, Any]], Any]] = {
    "echo": _echo,
    "root": _root,
    "draw": _draw,
    "late": _late,
    "late library": _late_library,
    "kept library": _kept_library,
    "slow": _slow,
    "turn": _turn,
    "stuck": _stuck,
    "broken": _broken,
    "end": _end,
}


def answer(request: str) -> str:
    """Answer one request; "raw" is answered with a text of its own, "broken" raises and "end" ends Python."""
    asked = json.loads(request)
    if asked["operation"] == "raw":
        return str(asked["data"]["text"])
    return json.dumps({"ok": True, "data": OPERATIONS[asked["operation"]](asked["data"])})


def example_requests() -> Iterator[str]:
    """Yield requests the build answers once so that caches are filled."""
    yield json.dumps({"operation": "root", "data": {"of": 2.0}})
