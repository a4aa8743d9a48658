"""The small wrong changes that ``mutate.py`` can make in a file of ``calc``.

Left out on purpose: docstrings, annotations, decorators, ``strict=`` of zip, and the order of arguments
that have none (``min``, ``max``, ``hypot``, ``isclose``).
"""

from __future__ import annotations

import ast
import itertools
import re
from dataclasses import dataclass
from pathlib import Path

COMPARED: dict[type[ast.cmpop], tuple[str, tuple[str, ...]]] = {
    ast.Lt: ("<", ("<=", ">=")),
    ast.LtE: ("<=", ("<", ">")),
    ast.Gt: (">", (">=", "<=")),
    ast.GtE: (">=", (">", "<")),
    ast.Eq: ("==", ("!=",)),
    ast.NotEq: ("!=", ("==",)),
    ast.In: ("in", ("not in",)),
    ast.NotIn: ("not in", ("in",)),
    ast.Is: ("is", ("is not",)),
    ast.IsNot: ("is not", ("is",)),
}
SIGNS: dict[type[ast.operator], tuple[str, str]] = {
    ast.Add: ("+", "-"),
    ast.Sub: ("-", "+"),
    ast.Mult: ("*", "/"),
    ast.Div: ("/", "*"),
}
WORDS = (
    ("larger", "smaller"),
    ("greater", "less"),
    ("Yes", "No"),
    ("left", "right"),
    ("upwards", "downwards"),
    ("up", "down"),
    ("above", "below"),
    ("opposite to", "in the direction of"),
    ("attract", "repel"),
    ("towards", "away from"),
    ("positive", "negative"),
    ("more", "fewer"),
    ("at least", "at most"),
    ("gain", "lose"),
    ("like", "unlike"),
    ("Like", "Unlike"),
    ("same", "opposite"),
    ("clockwise", "anticlockwise"),
    ("pull", "push"),
    ("stronger", "weaker"),
    ("before", "after"),
    ("first", "last"),
)
NO_ORDER = {"min", "max", "hypot", "isclose", "isinstance", "getattr", "gcd"}
TURNED = {"polar", "Force", "Vector"}
LIMITS = re.compile(r"least|most|low|high|over|under|tolerance|limit|apart|near|early|clear|fraction", re.I)


@dataclass(frozen=True)
class Mutant:
    """One change. start, end: of the bytes replaced. lines: where the tests must come past."""

    file: str
    line: int
    start: int
    end: int
    before: str
    after: str
    kind: str
    group: str
    lines: tuple[int, ...]


class Sites(ast.NodeVisitor):
    """Every change that could be made in one file."""

    def __init__(self, path: Path, tree: Path) -> None:
        self.file = path.relative_to(tree).as_posix()
        self.source = path.read_bytes()
        starts = [0]
        for line in self.source.splitlines(keepends=True):
            starts.append(starts[-1] + len(line))
        self.starts = starts
        self.found: list[Mutant] = []
        self.above: list[ast.AST] = []
        drawn = re.search(r"figures/|_drawn|_scene|renderings/(svg|tikz|shapes|placing|drawing|layout)", self.file)
        self.usual = "figures" if drawn else "other"
        self.visit(ast.parse(self.source))

    def place(self, node: ast.AST) -> tuple[int, int]:
        """The bytes of a node."""
        at = self.starts
        return (
            at[node.lineno - 1] + node.col_offset,  # type: ignore[attr-defined]
            at[node.end_lineno - 1] + node.end_col_offset,  # type: ignore[attr-defined]
        )

    def text(self, node: ast.AST) -> str:
        """The source of a node."""
        start, end = self.place(node)
        return self.source[start:end].decode()

    def add(self, node: ast.AST, span: tuple[int, int], after: str, kind: str, group: str = "") -> None:
        """Note one change."""
        start, end = span
        statement = next((one for one in reversed([*self.above, node]) if isinstance(one, ast.stmt)), node)
        last = statement.end_lineno if not hasattr(statement, "body") else node.end_lineno  # type: ignore[attr-defined]
        before = self.source[start:end].decode()
        line = self.source[:start].count(b"\n") + 1
        lines = tuple(range(statement.lineno, last + 1))  # type: ignore[attr-defined]
        self.found.append(Mutant(self.file, line, start, end, before, after, kind, group or self.usual, lines))

    def operator(self, left: ast.AST, right: ast.AST, sign: str) -> tuple[int, int] | None:
        """The bytes of the sign between two operands."""
        start, end = self.place(left)[1], self.place(right)[0]
        words = r"\s+".join(map(re.escape, sign.split()))
        found = re.search(rf"(?<![=<>!]){words}(?![=<>])", self.source[start:end].decode())
        if not found:
            return None
        ahead = len(self.source[start:end].decode()[: found.start()].encode())
        return start + ahead, start + ahead + len(found[0].encode())

    def visit(self, node: ast.AST) -> None:
        """Look at a node, then at what is in it."""
        handler = getattr(self, f"see_{type(node).__name__}", None)
        if handler:
            handler(node)
        self.above.append(node)
        for name, value in ast.iter_fields(node):
            if name in ("annotation", "returns", "decorator_list", "type_params", "format_spec"):
                continue
            for child in value if isinstance(value, list) else [value]:
                if isinstance(child, ast.AST) and not isinstance(child, ast.TypeAlias):
                    self.visit(child)
        self.above.pop()

    def see_Compare(self, node: ast.Compare) -> None:
        """A comparison moved by its edge, or turned round."""
        sides = [node.left, *node.comparators]
        for left, sign, right in zip(sides, node.ops, sides[1:], strict=False):
            old, news = COMPARED[type(sign)]
            span = self.operator(left, right, old)
            number = any(isinstance(n, ast.Constant) and isinstance(n.value, float | int) for n in (left, right))
            named = any(isinstance(n, ast.Name | ast.Attribute) and LIMITS.search(self.text(n)) for n in (left, right))
            ordered = old[0] in "<>"
            for new in news if span else ():
                group = "thresholds" if ordered and (number or named) else self.guard()
                self.add(node, span, new, "comparison", group)  # type: ignore[arg-type]

    def guard(self) -> str:
        """'sentences' where the choice is one between words."""
        for one in reversed(self.above):
            if isinstance(one, ast.IfExp):
                return "sentences" if words_in(one.body) and words_in(one.orelse) else ""
            if isinstance(one, ast.stmt):
                break
        return ""

    def see_BinOp(self, node: ast.BinOp) -> None:
        """+ for −, × for ÷."""
        if type(node.op) in SIGNS and not words_in(node.left) and not words_in(node.right):
            old, new = SIGNS[type(node.op)]
            span = self.operator(node.left, node.right, old)
            if span:
                self.add(node, span, new, "arithmetic")

    def see_BoolOp(self, node: ast.BoolOp) -> None:
        """``and`` for ``or``."""
        old, new = ("and", "or") if isinstance(node.op, ast.And) else ("or", "and")
        for left, right in zip(node.values, node.values[1:], strict=False):
            span = self.operator(left, right, old)
            if span:
                self.add(node, span, new, "and/or", self.guard())

    def see_UnaryOp(self, node: ast.UnaryOp) -> None:
        """A ``not`` or a minus dropped."""
        kind = {ast.Not: "not dropped", ast.USub: "minus dropped"}.get(type(node.op))
        if kind:
            self.add(node, (self.place(node)[0], self.place(node.operand)[0]), "", kind, self.guard())

    def see_Constant(self, node: ast.Constant) -> None:
        """A truth value turned, a number moved, a word of direction turned."""
        parent = self.above[-1]
        if isinstance(parent, ast.Expr) or (isinstance(parent, ast.keyword) and parent.arg == "strict"):
            return
        if isinstance(node.value, bool):
            self.add(node, self.place(node), str(not node.value), "truth value")
        elif isinstance(node.value, int | float):
            self.number(node, parent)
        elif isinstance(node.value, str) and not any(
            isinstance(a, ast.Subscript) and self.text(a).startswith("Literal") for a in self.above
        ):
            self.words(node)

    def number(self, node: ast.Constant, parent: ast.AST) -> None:
        """Another number in place of this one."""
        text = self.text(node)
        edge = isinstance(parent, ast.Compare) or (isinstance(parent, ast.keyword) and LIMITS.search(parent.arg or ""))
        top = isinstance(parent, ast.Assign | ast.AnnAssign) and len(self.above) < 4
        group = "thresholds" if edge or top or self.file.endswith("constants.py") else ""
        mantissa, power, exponent = text.partition("e")
        if text in ("1e-6", "1e-9", "1e-12"):
            self.add(node, self.place(node), "0.1", "tolerance", "thresholds")
        elif re.fullmatch(r"[\d._]+", mantissa):
            digits = [i for i, sign in enumerate(mantissa) if sign.isdigit()]
            last = digits[-1]
            if mantissa[last] == "0" and "." in mantissa and mantissa.rstrip("0")[-1] != ".":
                last = max(i for i in digits if mantissa[i] != "0")
            new = str((int(mantissa[last]) + 1) % 10)
            changed = mantissa[:last] + new + mantissa[last + 1 :] + power + exponent
            self.add(node, self.place(node), changed, "number", group)
        if self.usual == "figures" and node.value in (0.0, 90.0, 180.0, 270.0) and "." in text:
            turned = str((float(node.value) + 180) % 360)
            self.add(node, self.place(node), turned, "turned by 180°")

    def words(self, node: ast.Constant) -> None:
        """A word of direction or size in a sentence, turned into its opposite."""
        start, end = self.place(node)
        # A piece of an f-string has no quotes of its own, and may hold escapes: look at the bytes.
        source = self.source[start:end].decode()
        for pair in WORDS:
            for old, new in (pair, pair[::-1]):
                for found in re.finditer(rf"(?<![\w-]){old}(?![\w-]|s\b)", source):
                    ahead = start + len(source[: found.start()].encode())
                    self.add(node, (ahead, ahead + len(old.encode())), new, "word", "sentences")

    def see_IfExp(self, node: ast.IfExp) -> None:
        """The two branches of a choice, each in the other's place."""
        body, test, other = self.text(node.body), self.text(node.test), self.text(node.orelse)
        both = words_in(node.body) and words_in(node.orelse)
        if "\n" in body + other and not both:
            return
        self.add(
            node, self.place(node), f"({other}) if ({test}) else ({body})", "branches", "sentences" if both else ""
        )

    def see_Call(self, node: ast.Call) -> None:
        """Two arguments in each other's place; an angle turned round."""
        name = self.text(node.func).rpartition(".")[2]
        plain = [one for one in node.args if not isinstance(one, ast.Starred)]
        if len(plain) == len(node.args) >= 2 and name not in NO_ORDER:
            for first, second in itertools.pairwise(plain):
                span = (self.place(first)[0], self.place(second)[1])
                between = self.source[self.place(first)[1] : self.place(second)[0]].decode()
                if self.text(first) != self.text(second):
                    self.add(first, span, self.text(second) + between + self.text(first), "argument order")
        if name in TURNED and len(plain) == 3:
            self.add(plain[2], self.place(plain[2]), f"({self.text(plain[2])}) + 180", "turned by 180°", "figures")
        for one in node.keywords:
            if one.arg and one.arg.endswith("_deg"):
                self.add(
                    one.value, self.place(one.value), f"({self.text(one.value)}) + 180", "turned by 180°", "figures"
                )

    def see_Return(self, node: ast.Return) -> None:
        """What a function returns, dropped."""
        if node.value is not None and self.text(node.value) != "None":
            self.add(node, self.place(node.value), "None", "return dropped")


def words_in(node: ast.AST) -> bool:
    """Whether a node is text."""
    if isinstance(node, ast.BinOp):
        return words_in(node.left) or words_in(node.right)
    return isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str))
