"""A worked answer as LaTeX for a teacher's own notes: one section, amsmath only, no preamble."""

from __future__ import annotations

from calc.language.printing import counted
from calc.model.answers import PartShown, StepShown, WorkedAnswer
from calc.renderings.text import marks

_SPECIAL = {
    "\\": r"\textbackslash{}",
    "&": r"\&",
    "%": r"\%",
    "$": r"\$",
    "#": r"\#",
    "_": r"\_",
    "{": r"\{",
    "}": r"\}",
    "~": r"\textasciitilde{}",
    "^": r"\textasciicircum{}",
    "−": r"$-$",
    "×": r"$\times$",
    "·": r"$\cdot$",
    "°": r"$^\circ$",
    "µ": r"$\mu$",
    "Ω": r"$\Omega$",
    "√": r"$\surd$",
    "′": r"$'$",
    "\N{NO-BREAK SPACE}": "~",
    "α": r"$\alpha$",
    "ε": r"$\varepsilon$",
    "β": r"$\beta$",
    "η": r"$\eta$",
    "θ": r"$\theta$",
    "φ": r"$\varphi$",
    "Δ": r"$\Delta$",
    "Φ": r"$\Phi$",
    "Σ": r"$\Sigma$",
    "✓": r"$\checkmark$",
    "≤": r"$\leq$",
    "≥": r"$\geq$",
    "≠": r"$\neq$",
    "≈": r"$\approx$",
}
_RAISED = dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹⁻₀₁₂₃₄₅₆₇₈₉", "0123456789-0123456789", strict=True))


def escape(text: str) -> str:
    """``text`` safe in LaTeX text, with raised and lowered digits and signs as maths."""
    out = []
    for character in text:
        if character in _RAISED:
            mark = "^" if character in "⁰¹²³⁴⁵⁶⁷⁸⁹⁻" else "_"
            out.append(f"${mark}{{{_RAISED[character]}}}$")
        else:
            out.append(_SPECIAL.get(character, character))
    return "".join(out)


def render(answer: WorkedAnswer) -> str:
    """The whole answer, to be put inside a document that loads amsmath."""
    blocks = [rf"\section*{{{escape(answer.title)}}}", escape(answer.story)]
    rows = [
        (
            f"{escape(line.words)} & ${line.symbol.tex} = {(line.conversion or line.shown).tex}$"
            if line.symbol.tex
            else f"{escape(line.words)} & {escape(line.shown.text)}"
        )
        for line in answer.given
    ] + [f"{escape(line.words)} & ${line.symbol.tex} = {line.shown.tex}$" for line in answer.constants]
    if rows:
        body = " \\\\\n".join(rows)
        blocks.append(f"\\begin{{tabular}}{{ll}}\n{body}\n\\end{{tabular}}")
    blocks += [rf"\textbf{{{escape(law.name)}}}: {escape(law.words)}" for law in answer.laws]
    blocks += [_part(part) for part in answer.parts]
    for check in answer.checks:
        blocks.append(rf"\emph{{Check: {escape(check.what)}}}" + _align([line.tex for line in check.lines]))
        blocks.append(escape(check.words))
    blocks += [escape(note) for note in (*answer.notes, *answer.warnings)]
    blocks.append(rf"\textbf{{Total: {counted(answer.marks, 'mark')}}}")
    return "\n\n".join(block for block in blocks if block) + "\n"


def _part(part: PartShown) -> str:
    head = rf"\paragraph{{{escape(part.number)}}} {escape(part.ask)} \hfill ({part.marks})"
    body = [_step(step) for step in part.steps]
    body += [rf"\noindent {escape(point.words)} \hfill $\checkmark${point.marks}" for point in part.points]
    if part.figure:
        body.append(rf"\noindent\emph{{Diagram: {escape(part.figure.description)}}}")
    for answer in part.answers:
        where = f", {escape(answer.direction.words)}" if answer.direction else ""
        body.append(rf"\noindent\textbf{{Answer:}} ${answer.shown.tex}${where}")
    return "\n\n".join([head, *body])


def _step(step: StepShown) -> str:
    lines = [
        step.formula.tex,
        step.substitution.tex,
        *(line.tex for line in step.algebra),
        step.result.tex,
    ]
    earned = rf" \hfill {marks(step.marks)}" if step.marks else ""
    return rf"\noindent {escape(step.what)}: {escape(step.why)}{earned}" + _align(list(dict.fromkeys(lines)))


def _align(lines: list[str]) -> str:
    if not lines:
        return ""
    body = " \\\\\n".join(line.replace(" = ", " &= ", 1) for line in lines)
    return f"\n\\begin{{align*}}\n{body}\n\\end{{align*}}"
