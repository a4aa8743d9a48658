"""Formulas as MathML, which a browser lays out by itself.

The TeX of a piece carries its structure, so it is read here once; the plain text goes along as ``alttext``
and stands in the formula's place where a browser lays out no MathML (site-scripts/pages/formulas.js). What is read is
what ``calc`` writes and what the pages' prose needs, and nothing else: :class:`FormulaError` names the rest.
Elements and attributes are those of MathML Core (W3C).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache
from html import escape
from string import ascii_letters

from calc.language.maths import ANY, Maths, Shape, Shown

_LONG = 28  # signs of plain text from which a line may have to break
_COLUMN = 40.0  # signs that a column of a printed page holds in one row
_BROAD = 50.0  # and when they are a fifth smaller
_THIN = "0.17em"
_GREEK = {
    "alpha": "α",
    "beta": "β",
    "gamma": "γ",
    "eta": "η",
    "theta": "θ",
    "phi": "φ",
    "mu": "μ",
    "varepsilon": "ε",
    "epsilon": "ε",
    "lambda": "λ",
    "rho": "ρ",
    "omega": "ω",
    "sigma": "σ",
    "pi": "π",
}
_UPRIGHT = {"Phi": "Φ", "Sigma": "Σ", "Delta": "Δ", "Omega": "Ω"}
_RELATIONS = {"=": "=", "neq": "≠", "approx": "≈", "<": "<", ">": ">"}
_SIGNS = {"+": "+", "-": "−"}
_BETWEEN = {"times": "×", "cdot": "·", "pm": "±"}
_MARKS = {"perp": "⊥", "parallel": "∥", "square": "□", "ldots": "…", "%": "%"}
_FUNCTIONS = ("sin", "cos", "tan")
_RAISED = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
# Where a number stands in a shape: a sign of those that Unicode leaves to private use.
_FIRST_PLACE, _LAST_PLACE = 0xE000, 0xF8FF
_PLACES = re.compile(f"[{chr(_FIRST_PLACE)}-{chr(_LAST_PLACE)}]")
_SIGN = r"\\(?:[a-zA-Z]+|.)|\d+(?:(?:\{,\}|[.,])\d+)?|\s+|."
_TOKEN = re.compile(_SIGN, re.DOTALL)
_GROUP = r"\{(?:[^{}]|\{[^{}]*\})*\}"
# What comes back in line after line is read as one: a number with its power of ten, a unit with the space before it,
# words, a lowered name. Spaces after a token say nothing.
_NUMBER = r"\d+(?:(?:\{,\}|[.,])\d+)? \\times 10\^\{-?\d+\}"
_LOWERED = rf"(?:[a-zA-Z]|\\(?:{'|'.join(_GREEK)}))_{_GROUP}"
_UPRIGHT_WORDS = rf"(?:\\[ ,]|\\quad)?\\mathrm{_GROUP}|\\text{_GROUP}"
_WHOLES = re.compile(rf"({_NUMBER}|{_UPRIGHT_WORDS}|{_LOWERED}|{_SIGN})\s*", re.DOTALL)
# Every sign that a formula, present or to come, may print: what the font must hold.
GLYPHS = "".join(
    (
        "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ",
        *_GREEK.values(),
        *_UPRIGHT.values(),
        *_RELATIONS.values(),
        *_SIGNS.values(),
        *_BETWEEN.values(),
        *_MARKS.values(),
        "()|/,.:;√′°µ% \N{NO-BREAK SPACE}⁰¹²³⁴⁵⁶⁷⁸⁹⁻",
    )
)


class FormulaError(ValueError):
    """TeX that is not read here, or is written wrongly."""


class Node:
    """One element: its text, or the elements in it. role: how a line is spaced and where it may break.

    Roles: 'relation', 'sign' (a plus or minus between terms), 'operator', 'open', 'space', 'function', 'atom'.
    markup: the element written out; wide: about how many signs wide it is, what is lowered or raised being smaller,
    a fraction as wide as its wider side. Elements are shared between formulas, and never changed.
    """

    __slots__ = ("inside", "markup", "role", "tag", "text", "wide")

    def __init__(
        self, tag: str, text: str = "", inside: tuple[Node, ...] = (), attributes: str = "", role: str = "atom"
    ) -> None:
        self.tag, self.text, self.inside, self.role = tag, text, inside, role
        self.wide: float
        if inside:
            body = _markup(inside)
            self.wide = _signs(tag, [kid.wide for kid in inside])
        else:
            body = text if text.isalnum() else escape(text, quote=False)
            self.wide = 2.0 if tag == "mo" and role in ("relation", "sign", "operator") else len(text)
        self.markup = f"<{tag}{attributes}>{body}</{tag}>"


def _markup(nodes: tuple[Node, ...]) -> str:
    return "".join([node.markup for node in nodes])


def _signs(tag: str, wide: list[float]) -> float:
    if tag in ("mfrac", "mtable"):
        return max(wide)
    if tag in ("msub", "msup", "msubsup"):
        return wide[0] + 0.7 * max(wide[1:])
    return sum(wide)


def render(piece: Maths) -> str:
    """The formula; a long one as several, so that its line breaks before a relation, a plus or a minus.

    Raises :class:`FormulaError`.
    """
    if piece.shape is None:
        return _alone(piece.tex, piece.text)
    return _filled(piece.shape, piece.numbers)


@lru_cache(maxsize=4096)
def _alone(tex: str, text: str) -> str:
    """A formula without places for numbers."""
    return "".join([run.markup for run in _runs(tex, text, len(text))])


def _filled(shape: Shape, numbers: Sequence[Shown]) -> str:
    """A shape, which is read once, with its numbers."""
    texts = [number.text for number in numbers]
    made = ""
    for run in _runs_of_shape(shape, shape.size + sum(map(len, texts)) > _LONG):
        if not run.to_fill:
            made += run.markup
            continue
        inside = [_number(numbers[at].tex, how) for at, how in run.places]
        filled = run.markup % (*[texts[at] for at in run.told], *[markup for markup, _ in inside])
        if run.most + sum([wide for _, wide in inside]) > _COLUMN:
            filled = _opened(_width(run, inside)) + filled[len(_OPENED) :]
        made += filled
    return made


@lru_cache(maxsize=4096)
def _number(tex: str, how: str) -> tuple[str, float]:
    """The elements of a number, and about how many signs wide it is. how: a kind of place, see :func:`_place`."""
    digits, power, exponent = tex.removesuffix(_DEGREES).partition(r" \times 10^{")
    bare = digits.removeprefix("-").replace("{,}", ",")
    if not bare[0].isdigit():  # a blank in the place of a number
        nodes = read(tex)
        return _markup(nodes), sum([node.wide for node in nodes])
    markup, wide = f"<mn>{bare}</mn>", float(len(bare))
    if power:
        exponent = exponent[:-1].replace("-", _SIGNS["-"])
        markup += f"{_PLAIN[_TIMES].markup}<msup><mn>10</mn><mn>{exponent}</mn></msup>"
        wide += _PLAIN[_TIMES].wide + _signs("msup", [2, len(exponent)])
    if tex.endswith(_DEGREES):
        markup, wide = markup + "<mtext>°</mtext>", wide + 1
    if digits[0] == "-" and how != _UNSIGNED:
        minus = Node("mo", _SIGNS["-"], (), "" if how == _FIRST else ' form="prefix"', "operator")
        markup, wide = minus.markup + markup, wide + minus.wide
    return markup, wide


_DEGREES, _TIMES = r"^\circ", r"\times"
_FIRST, _AFTER, _UNSIGNED = "first", "after", "unsigned"


@lru_cache(maxsize=4096)
def _runs_of_shape(shape: Shape, long: bool) -> tuple[_Run, ...]:
    tex, text = shape.around_tex[0], shape.around_text[0]
    for at, kind in enumerate(shape.kinds):
        tex += _place(at, kind) + shape.around_tex[at + 1]
        text += chr(_FIRST_PLACE + at) + shape.around_text[at + 1]
    return _runs(tex, text, _LONG + long)


def _place(at: int, kind: str) -> str:
    """A place for a number as it is read: one sign for its number, one for its kind, the minus of a known kind before.

    A number of any kind brings its minus; "first" where nothing stands before it, else "after".
    """
    if kind == ANY:
        return chr(_FIRST_PLACE + 4 * at)
    many = kind not in ("", "-")
    return ("-" if "-" in kind else "") + chr(_FIRST_PLACE + 4 * at + 1 + many)


class _Run:
    """One formula, to be filled: its text for those who do not see it, then its elements.

    told: the numbers in its text. places: those in its elements, each with its kind of place.
    most: about how many signs wide it is at most, its numbers not counted.
    """

    __slots__ = ("markup", "most", "nodes", "places", "to_fill", "told")

    def __init__(self, nodes: tuple[Node, ...], text: str) -> None:
        markup, alternative = _markup(nodes), escape(text.strip())
        self.told = [ord(place) - _FIRST_PLACE for place in _PLACES.findall(alternative)]
        self.places = [(at // 4, _HOW[at % 4]) for at in map(_at, _PLACES.findall(markup))]
        self.nodes, self.most = nodes, _leaves(nodes)
        self.to_fill = bool(self.told or self.places)
        opened = _OPENED if self.to_fill else _opened(_width(self, ()))
        self.markup = f'{opened} alttext="{alternative}">{markup}</math>'
        if self.to_fill:
            self.markup = _PLACES.sub("%s", self.markup.replace("%", "%%"))


_HOW = (_AFTER, _UNSIGNED, _UNSIGNED, _FIRST)


def _at(place: str) -> int:
    return ord(place) - _FIRST_PLACE


_OPENED = "<math"


def _opened(wide: float) -> str:
    """The start of a formula so many signs wide: one that a column on paper does not hold is printed smaller."""
    if wide <= _COLUMN:
        return _OPENED
    return f'{_OPENED} class="{"broad" if wide <= _BROAD else "broad broader"}"'


def _runs(tex: str, text: str, length: int) -> tuple[_Run, ...]:
    """The runs into which a formula may break that is ``length`` signs long. Raises :class:`FormulaError`."""
    nodes = read(tex)
    if length > _LONG:
        cut_runs, cut_texts = _cut(nodes), _cut_text(text)
        if len(cut_runs) == len(cut_texts):
            return tuple(map(_Run, cut_runs, cut_texts))
    return (_Run(nodes, text),)


def _leaves(nodes: Sequence[Node]) -> float:
    return sum([_leaves(node.inside) if node.inside else node.wide for node in nodes])


def _width(run: _Run, inside: Sequence[tuple[str, float]]) -> float:
    """About how many signs wide a run is with these numbers in its places."""
    numbers = iter(inside)

    def width(node: Node) -> float:
        if node.inside:
            return _signs(node.tag, [width(kid) for kid in node.inside])
        return next(numbers)[1] if node.tag == _NUMBER_PLACE else node.wide

    return sum([width(node) for node in run.nodes])


_NUMBER_PLACE = "number"


def _node_of_place(at: int) -> Node:
    node = Node(_NUMBER_PLACE)
    node.markup, node.wide = chr(_FIRST_PLACE + at), 0.0
    return node


def _of_several(node: Node) -> bool:
    """Whether the place is one for a number of several elements."""
    return node.tag == _NUMBER_PLACE and (ord(node.markup) - _FIRST_PLACE) % 4 == 2


def _is_place(token: str) -> bool:
    return len(token) == 1 and _FIRST_PLACE <= ord(token) <= _LAST_PLACE


def of_tex(tex: str) -> Maths:
    """The piece a writer of prose gave in TeX alone. Raises :class:`FormulaError`."""
    return Maths(tex, linear(read(tex)))


def read(tex: str) -> tuple[Node, ...]:
    """The elements of a formula. Raises :class:`FormulaError` naming what is not understood."""
    reader = _Reader(tex)
    return reader.run("")


class _Reader:
    def __init__(self, tex: str, tokens: re.Pattern[str] = _WHOLES) -> None:
        self.tex = tex
        self.tokens: list[str] = [*tokens.findall(tex), ""]
        self.at = 0

    def wrong(self, why: str) -> FormulaError:
        return FormulaError(f"{self.tex}: {why}")

    def peek(self) -> str:
        return self.tokens[self.at]

    def take(self) -> str:
        token = self.tokens[self.at]
        if not token:
            raise self.wrong("it ends too early")
        self.at += 1
        return token

    def skip(self) -> None:
        while self.peek().isspace():
            self.at += 1

    def run(self, *ends: str) -> tuple[Node, ...]:
        """Elements up to one of ``ends``, which is left to be taken; '' is the end of the formula."""
        found: list[Node] = []
        after_nothing = False  # an empty group: a sign after it stands between terms
        while self.tokens[self.at] not in ends:
            token = self.take()
            if plain := _PLAIN.get(token):
                found.append(plain)
            elif _several(token):
                found += self.whole(token)
            elif token == "{" and self.peek() == "}":
                self.at += 1
                after_nothing = True
                continue
            elif token.isspace():
                continue
            else:
                self.add(found, token, after_nothing)
            after_nothing = False
        return tuple(found)

    def whole(self, token: str) -> tuple[Node, ...]:
        try:
            return _whole(token)
        except FormulaError as problem:
            raise self.wrong(str(problem)) from None

    def add(self, found: list[Node], token: str, after_nothing: bool) -> None:
        name = token.removeprefix("\\")
        before = found[-1].role if found else ""
        if token in ("_", "^", "'"):
            self.attach(found, token)
        elif token in _SIGNS:
            between = after_nothing or before in ("atom", "space")
            form = "" if bool(found) == between else f' form="{"infix" if between else "prefix"}"'
            found.append(Node("mo", _SIGNS[token], (), form, "sign" if between else "operator"))
        elif token == "|":
            opens = before in ("", "operator", "relation", "sign", "open")
            form = "prefix" if opens else "postfix"
            found.append(Node("mo", "|", (), f' stretchy="false" form="{form}"', "open" if opens else "atom"))
        elif token in (r"\ ", r"\,") or token == r"\quad":
            found.append(self.space(token))
        elif token.startswith("\\") and name in _FUNCTIONS:
            if before == "atom":
                found.append(_thin())
            found.append(Node("mi", name, role="function"))
            if self.gap_after_function():
                found.append(_thin())
        elif _is_place(token):
            at = ord(token) - _FIRST_PLACE
            found.append(_node_of_place(at + 3 if at % 4 == 0 and not found else at))
        else:
            found.append(self.atom(token))

    def gap_after_function(self) -> bool:
        """True where a function's argument follows it without brackets; a power of it comes first."""
        self.skip()
        return self.peek() not in ("^", "(", r"\left", "")

    def attach(self, found: list[Node], token: str) -> None:
        """Lower or raise something at the last element."""
        if token == "^":
            self.skip()
            if self.peek() == r"\circ":
                self.take()
                found.append(Node("mtext", "°"))
                return
        if not found:
            raise self.wrong(f"nothing stands before {token}")
        base = found.pop()
        if base.text == ")":  # the power of all that is bracketed
            start = max((at for at, node in enumerate(found) if node.text == "(" and node.role == "open"), default=-1)
            if start < 0:
                raise self.wrong("a bracket ) was not opened")
            base = Node("mrow", "", (*found[start:], base))
            del found[start:]
        raised = Node("mo", "′") if token == "'" else self.script()
        tag = "msub" if token == "_" else "msup"
        if base.tag in ("msub", "msup") and base.tag != tag:
            inner, script = base.inside
            pair = (raised, script) if tag == "msub" else (script, raised)
            found.append(Node("msubsup", "", (inner, *pair), "", base.role))
        elif base.tag.startswith("msu") and base.tag != "msub" and tag == "msub":
            raise self.wrong("lowered twice")
        else:
            found.append(Node(tag, "", (base, raised), "", base.role))
        if base.role == "function" and self.gap_after_function():
            found.append(_thin())

    def script(self) -> Node:
        """What is lowered or raised: a power such as −9 is one number."""
        node = self.argument()
        kids = node.inside
        if node.tag == "mrow" and len(kids) == 2 and kids[0].text == "−" and (kids[0].tag, kids[1].tag) == ("mo", "mn"):
            return Node("mn", "−" + kids[1].text)
        return node

    def argument(self) -> Node:
        """A group, or the next sign alone: of ``\\tfrac12`` the 1."""
        self.skip()
        token = self.take()
        if token == "{":
            inside = self.run("}", "")
            if self.peek() != "}":
                raise self.wrong("a bracket { is not closed")
            self.take()
            return inside[0] if len(inside) == 1 and not _of_several(inside[0]) else Node("mrow", "", inside)
        if len(token) > 1 and (token.isdigit() or _several(token)):
            self.at -= 1
            self.tokens[self.at : self.at + 1] = list(token) if token.isdigit() else _TOKEN.findall(token)
            token = self.take()
        return self.atom(token)

    def words(self) -> str:
        """The raw text of a group, as in ``\\text{net}``."""
        if self.take() != "{":
            raise self.wrong("a group { } is missing")
        deep, parts = 1, []
        while deep:
            token = self.take()
            deep += (token == "{") - (token == "}")
            parts.append(token)
        return "".join(parts[:-1])

    def space(self, token: str) -> Node:
        """A space; with the unit after it one piece of text, which is how a unit is read out."""
        if self.peek() == r"\mathrm":
            self.take()
            return Node("mtext", "\N{NO-BREAK SPACE}" + self.unit())
        if token == r"\,":
            return _thin()
        return Node("mtext", "\N{NO-BREAK SPACE}", role="space")

    def unit(self) -> str:
        """The text of an upright group: N·m²·C⁻²."""
        words = self.words()
        words = re.sub(r"\{\}\^\\circ", "°", words)
        for name, sign in (("cdot", "·"), ("mu", "µ"), ("Omega", "Ω"), ("%", "%")):
            words = re.sub(rf"\\{name} ?", sign, words)
        words = re.sub(r"\^\{([-\d]+)\}", lambda power: power[1].translate(_RAISED), words)
        if re.search(r"[\\{}^_]", words):
            raise self.wrong(f"{words} is not a unit")
        return words

    def atom(self, token: str) -> Node:
        if plain := _PLAIN.get(token):
            return plain
        if token[0].isdigit():
            return Node("mn", token.replace("{,}", ","))
        if token == "{":
            self.at -= 1
            return self.argument()
        made = _COMMANDS.get(token[1:]) if token.startswith("\\") else None
        if not made:
            raise self.wrong(f"{token} is not understood in a formula")
        return made(self)

    def fraction(self, attributes: str = "") -> Node:
        top = self.argument()
        return Node("mfrac", "", (top, self.argument()), attributes)

    def root(self) -> Node:
        inside = self.argument()
        return Node("msqrt", "", inside.inside if inside.tag == "mrow" else (inside,))

    def brackets(self) -> Node:
        open_, inside = self.take(), self.run(r"\right", "")
        self.take()
        close = self.take()
        if open_ + close not in ("()", "||"):
            raise self.wrong(f"{open_} and {close} do not belong together")
        kinds = ("", "") if open_ == "(" else (' form="prefix"', ' form="postfix"')
        if inside and inside[0].text == _SIGNS["-"]:  # second in its row, it is taken for a sign between terms
            inside = (Node("mo", inside[0].text, (), ' form="prefix"', inside[0].role), *inside[1:])
        ends = (Node("mo", end, (), kind) for end, kind in zip((open_, close), kinds, strict=True))
        return Node("mrow", "", (next(ends), *inside, next(ends)))

    def rows(self) -> Node:
        if self.words() != "gathered":
            raise self.wrong("only rows under one another are understood")
        rows = []
        while self.peek() != r"\end":
            cell = Node("mtd", "", self.run(r"\cr", r"\end", ""))
            rows.append(Node("mtr", "", (cell,)))
            if self.peek() == r"\cr":
                self.take()
        self.take()
        self.words()
        return Node("mtable", "", tuple(rows))


_COMMANDS: dict[str, Callable[[_Reader], Node]] = {
    "dfrac": _Reader.fraction,
    "frac": _Reader.fraction,
    "tfrac": lambda reader: reader.fraction(' displaystyle="false"'),
    "sqrt": _Reader.root,
    "left": _Reader.brackets,
    "begin": _Reader.rows,
    "text": lambda reader: Node("mtext", reader.words()),
    "mathrm": lambda reader: Node("mtext", reader.unit()),
}


def _thin() -> Node:
    return Node("mspace", "", (), f' width="{_THIN}"', "space")


def _plain_tokens() -> Iterator[tuple[str, Node]]:
    """Every token that is one element wherever it stands."""
    for sign in _RELATIONS:
        token = sign if sign in "=<>" else f"\\{sign}"
        yield token, Node("mo", _RELATIONS[sign], role="relation")
    for letter in ascii_letters:
        yield letter, Node("mi", letter)
    for name, sign in _GREEK.items():
        yield f"\\{name}", Node("mi", sign)
    for name, sign in _UPRIGHT.items():
        yield f"\\{name}", Node("mi", sign, (), ' mathvariant="normal"')
    for name, sign in _MARKS.items():
        yield f"\\{name}", Node("mtext", sign)
    for name, sign in _BETWEEN.items():
        yield f"\\{name}", Node("mo", sign, role="operator")
    for bracket, role in ("(", "open"), (")", "atom"):
        yield bracket, Node("mo", bracket, (), ' stretchy="false"', role)
    yield "/", Node("mo", "/", (), ' lspace="0" rspace="0"', "operator")
    for stop in ",.;:":
        yield stop, Node("mtext", stop)


_PLAIN = dict(_plain_tokens())


def _several(token: str) -> bool:
    """Whether a token is more than one sign, and no command."""
    return len(token) > 2 and token[-1] == "}"


@lru_cache(maxsize=512)
def _whole(token: str) -> tuple[Node, ...]:
    return _Reader(token, _TOKEN).run("")


def _cut(nodes: tuple[Node, ...]) -> list[tuple[Node, ...]]:
    """The runs a line may break into, each after the first with its sign before it."""
    runs: list[list[Node]] = [[]]
    for node in nodes:
        if node.role in ("relation", "sign") and runs[-1]:
            runs.append([])
            if node.role == "sign":
                node = Node("mo", node.text, (), ' form="infix"', "sign")
        runs[-1].append(node)
    return [tuple(run) for run in runs]


def _cut_text(text: str) -> list[str]:
    """The same for plain text: before " = ", " + " and " − " outside all brackets."""
    parts, at, deep, bars = list[str](), 0, 0, False
    for found in _CUTS.finditer(text):
        sign = found[0]
        deep += (sign == "(") - (sign == ")")
        bars ^= sign == "|"
        if sign not in "()|" and not deep and not bars:
            parts.append(text[at : found.start()])
            at = found.start()
    return [*parts, text[at:]]


_CUTS = re.compile(r"[()|]|(?<= )[=+−≠≈<>](?= )")


def linear(nodes: tuple[Node, ...]) -> str:
    """Elements in one line of plain text."""
    parts = []
    for at, node in enumerate(nodes):
        beside = (*nodes[max(at - 1, 0) : at], *nodes[at + 1 : at + 2])
        tight = node.tag == "mfrac" and any(other.role == "atom" for other in beside)
        parts.append(f"({_linear(node)})" if tight else _linear(node))
    return "".join(parts).strip()


def _linear(node: Node) -> str:
    parts = [linear(kid.inside) if kid.tag == "mrow" else _linear(kid) for kid in node.inside]
    match node.tag:
        case "mfrac":
            over = f"({parts[0]})" if any(kid.role == "sign" for kid in node.inside[0].inside) else parts[0]
            return f"{over}/{_grouped(parts[1], node.inside[1])}"
        case "msqrt":
            return f"√{_grouped(linear(node.inside), *node.inside)}"
        case "msub":
            return f"{parts[0]}_{parts[1]}"
        case "msup":
            return parts[0] + _power(parts[1])
        case "msubsup":
            return f"{parts[0]}_{parts[1]}{_power(parts[2])}"
        case "mspace":
            return " "
        case "mo" if node.role in ("relation", "sign") or node.text == "×":
            return f" {node.text} "
    return node.text + "".join(parts)


def _grouped(text: str, *nodes: Node) -> str:
    return text if len(nodes) == 1 and nodes[0].tag not in ("mrow", "mfrac") else f"({text})"


def _power(text: str) -> str:
    plain = text.replace("−", "-")
    if text == "′":
        return text
    return plain.translate(_RAISED) if plain.lstrip("-").isdigit() else f"^({text})"
