"""A circuit in words: "R1 2 Ω in series with (R2 4 Ω in parallel with R3 12 Ω)" becomes a tree of parts.

A bracket holds parts in series or parts in parallel, never both; ``+`` and ``||`` are the short forms. What a text
has wrong is said with the words at which it goes wrong.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from typing import Literal

from calc.language.quantities import QuantityError, parse_quantity
from calc.language.units import UnitError, parse_unit, same_kind
from calc.model.questions import Refusal

type Kind = Literal["resistor", "lamp", "rheostat", "switch", "ammeter", "voltmeter"]
MOST_PARTS = 12
CELL = "cell"
# What a part is called, and the kind it is.
KINDS: dict[str, Kind] = {
    "light bulb": "lamp",
    "bulb": "lamp",
    "lamp": "lamp",
    "variable resistor": "rheostat",
    "rheostat": "rheostat",
    "resistor": "resistor",
    "switch": "switch",
    "ammeter": "ammeter",
    "voltmeter": "voltmeter",
}
LETTERS: dict[str, Kind] = {"R": "resistor", "L": "lamp", "S": "switch", "A": "ammeter", "V": "voltmeter"}
MEASURED = {"A": "I", "V": "V", "W": "P"}  # what a reading in this unit measures
HOW = "Write for example R1 2 Ω in series with (R2 4 Ω in parallel with R3 12 Ω)."
LIVE: frozenset[str] = frozenset(("resistor", "lamp", "rheostat"))


@dataclass(frozen=True)
class Element:
    """One part. ohms: of what has a resistance, None where that is asked ("?"). closed: of a switch.

    readings: by I, V or P, in SI. across: of a voltmeter, the name of the part it lies across.
    """

    kind: Kind
    name: str
    ohms: float | None = None
    typed: str = ""
    closed: bool = True
    readings: dict[str, float] = field(default_factory=dict, hash=False)
    across: str = ""

    @property
    def suffix(self) -> str:
        """What lowers the letters of its quantities: 1 of R1, L1 of L1."""
        return self.name[1:] if self.kind != "lamp" and self.name.startswith("R") else self.name

    @property
    def asked(self) -> bool:
        return self.kind in LIVE and self.ohms is None


@dataclass(frozen=True)
class Group:
    """Parts in series, or in parallel."""

    how: Literal["series", "parallel"]
    parts: tuple[Tree, ...]


type Tree = Element | Group


@dataclass(frozen=True)
class Network:
    """The tree between the terminals, and the voltmeters that a text adds to it."""

    tree: Tree
    voltmeters: tuple[Element, ...] = ()

    @property
    def elements(self) -> tuple[Element, ...]:
        return tuple(elements(self.tree))

    def named(self, name: str) -> Element | None:
        """The part of this name, however it is typed; None where there is none."""
        bare = _bare(name)
        return next((one for one in (*self.elements, *self.voltmeters) if one.name.lower() == bare), None)


def elements(tree: Tree) -> Iterator[Element]:
    """Every part of a tree, in the order of the text."""
    if isinstance(tree, Element):
        yield tree
        return
    for part in tree.parts:
        yield from elements(part)


def changed(tree: Tree, name: str, new: Tree) -> Tree:
    """The tree with another part in place of the one called ``name``."""
    if isinstance(tree, Element):
        return new if tree.name == name else tree
    return grouped(tree.how, tuple(changed(part, name, new) for part in tree.parts))


def grouped(how: Literal["series", "parallel"], parts: tuple[Tree, ...]) -> Tree:
    """Parts put together; a bracket that does the same as what it stands in is no group of its own."""
    flat = list[Tree]()
    for part in parts:
        flat += part.parts if isinstance(part, Group) and part.how == how else [part]
    return flat[0] if len(flat) == 1 else Group(how, tuple(flat))


_TOKEN = re.compile(
    r"(?P<open>[(\[])|(?P<close>[)\]])|(?P<parallel>\bin\s+parallel\s+with\b|\|\||∥|//)"
    r"|(?P<series>\bin\s+series\s+with\b|(?<![eE^])\+)",
    re.IGNORECASE,
)
_KIND = "|".join(KINDS)
_READS = re.compile(r"\s*,?\s*\b(?:carrying|taking|using|reading|reads|with)\s+(?=\d)", re.IGNORECASE)
_PART = re.compile(
    rf"(?:(?:an?|the)\s+)?(?:(?P<before>open|closed)\s+)?(?:(?P<kind>{_KIND})\b\s*)?(?P<name>[A-Z]\d{{0,2}}(?![\w.,])\s*)?"
    r"(?:(?:=|:|of|is)\s*)?(?:(?P<after>open|closed)\b)?\s*(?P<value>.*)",
    re.IGNORECASE | re.DOTALL,
)


@dataclass(frozen=True)
class _Token:
    kind: str
    text: str


def _tokens(text: str) -> list[_Token]:
    found, at = list[_Token](), 0
    for match in _TOKEN.finditer(text):
        if before := text[at : match.start()].strip():
            found.append(_Token("part", before))
        found.append(_Token(match.lastgroup or "", match[0]))
        at = match.end()
    if rest := text[at:].strip():
        found.append(_Token("part", rest))
    return found


class _Reader:
    """Reads one text; ``box`` is where a refusal stands."""

    def __init__(self, text: str, box: str) -> None:
        self.box = box
        self.tokens = _tokens(text)
        self.at = 0

    def no(self, sentence: str) -> Refusal:
        return Refusal(self.box, sentence)

    @property
    def next(self) -> _Token:
        return self.tokens[self.at] if self.at < len(self.tokens) else _Token("end", "")

    def take(self) -> _Token:
        token = self.next
        self.at += 1
        return token

    def whole(self) -> Tree:
        tree = self.group()
        if self.next.kind == "close":
            raise self.no(f"A bracket closes after “{self.before()}” that was never opened. Open it, or leave it out.")
        if self.next.kind != "end":
            raise self.missing()
        return tree

    def before(self) -> str:
        """The last words read, for a sentence."""
        return self.tokens[self.at - 1].text if self.at else ""

    def missing(self) -> Refusal:
        return self.no(
            f"Between “{self.before()}” and “{self.next.text}” it is not said how they are connected. Write “in series"
            " with” or “in parallel with” there."
        )

    def group(self) -> Tree:
        """Parts with one kind of connection between them."""
        parts, how = [self.single()], ""
        while self.next.kind in ("series", "parallel"):
            if how and self.next.kind != how:
                raise self.no(
                    f"After “{self.before()}” the text goes on with “{self.next.text}”: in series and in parallel"
                    " stand side by side. Put brackets round the parts that belong together, as in R1 2 Ω in series"
                    " with (R2 4 Ω in parallel with R3 12 Ω)."
                )
            how = self.take().kind
            parts.append(self.single())
        if not how:
            return parts[0]
        return grouped("series" if how == "series" else "parallel", tuple(parts))

    def single(self) -> Tree:
        """One part or one bracket."""
        token = self.next
        if token.kind == "open":
            self.take()
            inner = self.group()
            if self.next.kind == "part" or self.next.kind == "open":
                raise self.missing()
            if self.next.kind != "close":
                raise self.no(f"The bracket before “{_first(inner)}” is never closed. Close it after its last part.")
            self.take()
            return inner
        if token.kind == "part":
            self.take()
            return read_part(token.text, self.box)
        if not self.at:
            raise self.no(f"The circuit begins with “{token.text}”. Begin with a part. {HOW}")
        found = f"“{token.text}”" if token.text else "nothing"
        raise self.no(f"After “{self.before()}” a part is missing: {found} stands there. {HOW}")


def _first(tree: Tree) -> str:
    return next(elements(tree)).typed


def _bare(name: str) -> str:
    return "".join(name.split()).replace("_", "").translate(str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")).lower()


def read_part(text: str, box: str) -> Element:
    """One part: "lamp L1 4 Ω", "R2 ? taking 6 W", "open switch S", "ammeter A1 reading 2 A"."""
    plain = text.translate(str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")).replace("_", "")
    words = _READS.split(plain)
    found = _PART.fullmatch(words[0].strip())
    if not found:  # the last group takes anything, so this cannot be
        raise Refusal(box, f"“{text}” is no part. {HOW}")
    name = (found["name"] or "").strip().upper()
    kind = KINDS[re.sub(r"\s+", " ", found["kind"].lower())] if found["kind"] else LETTERS.get(name[:1], "resistor")
    value = found["value"].strip()
    state = (found["before"] or found["after"] or "").lower()
    part = Element(kind, name, typed=text, closed=state != "open", readings=_readings(words[1:], text, box))
    if state and kind != "switch":
        raise Refusal(box, f"“{text}” is {state}: only a switch can be. Leave the word out, or call it a switch.")
    if kind not in LIVE:
        return _without_value(part, value, box)
    if value in ("?", "? Ω", "?Ω", "unknown"):
        return part
    return replace(part, ohms=_ohms(value, part, found, box))


def _without_value(part: Element, value: str, box: str) -> Element:
    """A switch or a meter, which is ideal; a bare reading may stand behind a meter."""
    if value and part.kind != "switch":
        part = replace(part, readings={**part.readings, **_readings([value], part.typed, box)})
        value = ""
    if value:
        raise Refusal(
            box,
            f"“{part.typed}”: a {part.kind} has no resistance here. Write for example “switch S open” or “switch S"
            " closed”.",
        )
    wrong = {"ammeter": ("V", "P"), "voltmeter": ("I", "P"), "switch": ("I", "V", "P")}[part.kind]
    if any(one in part.readings for one in wrong):
        reads = {"ammeter": "a current, such as 2 A", "voltmeter": "a potential difference, such as 6 V"}
        said = f"{part.kind} reads {reads[part.kind]}" if part.kind in reads else "switch has no reading"
        raise Refusal(box, f"“{part.typed}”: a{'n' if said[0] == 'a' else ''} {said}. Correct it.")
    return part


def _ohms(value: str, part: Element, found: re.Match[str], box: str) -> float:
    if not value and not (found["kind"] or part.name):
        raise Refusal(box, f"A part is missing. {HOW}")
    if not value:
        raise Refusal(
            box,
            f"“{part.typed}” has no resistance. Write it behind the name, as in {part.name or 'R1'} 2 Ω, or ? where it"
            " is to be found.",
        )
    try:
        quantity = parse_quantity(value, "Ω")
    except QuantityError:
        raise Refusal(
            box,
            f"“{part.typed}” is not read as a part: “{value}” is no resistance. Write its name and its resistance, as"
            " in R2 4 Ω; between two parts write “in series with” or “in parallel with”.",
        ) from None
    if quantity.value < 0:
        raise Refusal(box, f"“{part.typed}”: a resistance cannot be negative. Leave the minus sign out.")
    if quantity.value == 0:
        raise Refusal(
            box, f"“{part.typed}” has no resistance at all. For a plain wire write “switch closed”, or leave it out."
        )
    return quantity.value


def _readings(words: list[str], text: str, box: str) -> dict[str, float]:
    readings = dict[str, float]()
    for one in words:
        said = re.sub(r"\s+(?:across|through|in)\s+it$|\s+and$", "", one.strip(), flags=re.IGNORECASE)
        found = re.search(r"[^\d\s,.x×^*eE+−-].*$", said)
        which = ""
        if found:
            try:
                unit = parse_unit(found[0].strip())
                which = next((n for own, n in MEASURED.items() if same_kind(unit, parse_unit(own))), "")
            except UnitError:
                which = ""
        if not which:
            raise Refusal(
                box,
                f"“{text}”: “{one.strip()}” is no reading. Write a current, a voltage or a power with its unit:"
                " 2 A, 6 V, 9 W.",
            )
        try:
            quantity = parse_quantity(said, {"I": "A", "V": "V", "P": "W"}[which])
        except QuantityError as problem:
            raise Refusal(box, f"“{text}”: {problem.sentence}") from None
        if quantity.value <= 0:
            raise Refusal(box, f"“{text}”: a reading is a size greater than zero. Correct “{one.strip()}”.")
        readings[which] = quantity.value
    return readings


def read_network(text: str, box: str = "network") -> Network:
    """The circuit that a text tells. Raises Refusal, which names the words at which it goes wrong."""
    main, *clauses = text.split(";")
    if not main.strip():
        raise Refusal(box, f"Type the circuit between the terminals of the cell. {HOW}")
    if inside := re.search(r"\bacross\b(?!\s+it\b)", main, re.IGNORECASE):
        raise Refusal(
            box,
            f"“{main[inside.start() :].strip()}” stands inside the circuit. Write the voltmeter at the end,"
            " behind a semicolon, as in R1 2 Ω in series with R2 4 Ω; voltmeter V1 across R2.",
        )
    tree = _Reader(main, box).whole()
    count = sum(one.kind in LIVE for one in elements(tree))
    if not count:
        raise Refusal(
            box, "Short circuit without resistance: the circuit has no resistor and no lamp. Add one, as in R1 2 Ω."
        )
    if len(list(elements(tree))) > MOST_PARTS:
        raise Refusal(box, f"At most {MOST_PARTS} parts can be drawn and worked. Leave some out.")
    tree = _named(tree, box)
    found = Network(tree)
    meters = tuple(_voltmeter(clause, found, n, box) for n, clause in enumerate(filter(str.strip, clauses), 1))
    _placed(tree, box, in_series=True)
    return replace(found, voltmeters=_unlike(meters, found, box))


def _voltmeter(clause: str, found: Network, n: int, box: str) -> Element:
    """ "voltmeter V1 across R2 reading 6 V", in either order."""
    match = re.search(r"\bacross\s+(?:the\s+)?(?P<name>[A-Za-z]\w*)", clause, re.IGNORECASE)
    if not match:
        raise Refusal(
            box,
            f"“{clause.strip()}”: behind a semicolon stands a voltmeter: write voltmeter V1 across R2.",
        )
    part = read_part((clause[: match.start()] + clause[match.end() :]).strip(), box)
    name = match["name"]
    if part.kind != "voltmeter":
        raise Refusal(box, f"“{clause.strip()}”: only a voltmeter is put across a part. Write voltmeter V1 across R2.")
    if name.lower() in (CELL, "battery", "terminals"):
        return replace(part, name=part.name or f"V{n}", across=CELL)
    at = found.named(name)
    if at is None or at.kind in ("voltmeter", "ammeter"):
        parts = ", ".join(one.name for one in found.elements if one.kind in LIVE)
        raise Refusal(box, f"“{clause.strip()}”: the circuit has no {name}. Its parts are {parts}; or write the cell.")
    return replace(part, name=part.name or f"V{n}", across=at.name)


def _unlike(meters: tuple[Element, ...], found: Network, box: str) -> tuple[Element, ...]:
    names = [one.name for one in (*found.elements, *meters)]
    for name in names:
        if names.count(name) > 1:
            raise Refusal(box, f"Two parts are called {name}. Give each a name of its own.")
    return meters


def _named(tree: Tree, box: str) -> Tree:
    """Every part with a name: R1, R2 … for those that have none."""
    taken = {one.name for one in elements(tree) if one.name}
    letter = {"resistor": "R", "rheostat": "R", "lamp": "L", "switch": "S", "ammeter": "A", "voltmeter": "V"}

    def of(part: Tree) -> Tree:
        if isinstance(part, Group):
            return Group(part.how, tuple([of(one) for one in part.parts]))
        if part.name and part.name not in ("R", "T"):  # R_T is the total
            return part
        start = letter[part.kind]
        name = next(f"{start}{n}" for n in range(1, 2 * MOST_PARTS) if f"{start}{n}" not in taken)
        taken.add(name)
        return replace(part, name=name)

    return of(tree)


def _placed(tree: Tree, box: str, in_series: bool) -> None:
    """Refuse meters where they cannot measure."""
    if isinstance(tree, Element):
        if tree.kind == "voltmeter" and in_series:
            raise Refusal(
                box,
                f"The voltmeter {tree.name} stands in series: it would let no current through. Put it in parallel with"
                " what it measures, or write at the end: ; voltmeter across R2.",
            )
        if tree.kind == "ammeter" and not in_series:
            raise Refusal(
                box,
                f"The ammeter {tree.name} stands in parallel: it has no resistance and would short what is beside it."
                " Put it in series with the part whose current it measures.",
            )
        return
    for part in tree.parts:
        _placed(part, box, tree.how == "series")
