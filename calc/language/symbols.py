"""The printed form of a quantity's name: ``Q1`` is Q with a lowered 1.

A name used in formulas is ``letter(s)[digits][_subscript]``; ``theta`` and the
other Greek names become their letters, ``DeltaQ`` a change in Q, and a name
ending in ``_after`` gets a prime.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

_GREEK = {
    "alpha": "α",
    "beta": "β",
    "gamma": "γ",
    "eta": "η",
    "theta": "θ",
    "phi": "φ",
    "mu": "μ",
    "epsilon": "ε",
    "lambda": "λ",
    "lamda": "λ",  # alone in a formula, where Python keeps the other spelling for itself
    "rho": "ρ",
    "omega": "ω",
    "sigma": "σ",
    "Phi": "Φ",
    "Sigma": "Σ",
    "Delta": "Δ",
}
_GREEK_TEX = {"epsilon": r"\varepsilon", "lamda": r"\lambda"}
_LOWERED = str.maketrans("0123456789+-aehijklmnoprstuvx", "₀₁₂₃₄₅₆₇₈₉₊₋ₐₑₕᵢⱼₖₗₘₙₒₚᵣₛₜᵤᵥₓ")
_BESIDE = (("perp", "⊥", r"\perp"), ("par", "∥", r"\parallel"))
_RAISABLE = set("0123456789+-aehijklmnoprstuvx")
_NAME = re.compile(r"(Delta(?=[A-Za-z])|Sigma(?=[A-Z]))?([A-Za-z]+?)(\d*)(?:_((?!after$)\w+?))?(_after)?$")


@dataclass(frozen=True)
class Symbol:
    """A symbol in TeX, in plain text, and in the figures' label form (``F_E``)."""

    tex: str
    text: str
    label: str


@lru_cache(maxsize=1024)
def symbol(name: str) -> Symbol:
    """The symbol for ``name``; raises ValueError for a name that is not of the form above."""
    found = _NAME.match(name)
    if not found:
        raise ValueError(f"{name!r} is not a symbol name: letters, then digits, then _subscript")
    change, letters, digits, subscript, after = found.groups()
    lowered = digits + (subscript or "")
    base_text = _GREEK.get(letters, letters)
    base_tex = _GREEK_TEX.get(letters, rf"\{letters}") if letters in _GREEK else letters
    if len(letters) > 1 and letters not in _GREEK:
        base_tex = rf"\mathrm{{{letters}}}"
    text, tex, label = base_text, base_tex, base_text
    beside = next((part for part in _BESIDE if (subscript or "").endswith(part[0])), None)
    if beside:
        stem = lowered.removesuffix(beside[0])
        tex += rf"_{{\text{{{stem}}}{beside[2]}}}" if stem else f"_{{{beside[2]}}}"
        text += f"_{stem}{beside[1]}" if stem else f"_{beside[1]}"
        label += f"_{{{stem}{beside[1]}}}"
    elif lowered:
        upright = len(lowered) > 1 and not lowered.isdigit()
        tex += rf"_{{\text{{{lowered}}}}}" if upright else f"_{{{lowered}}}"
        text += lowered.translate(_LOWERED) if set(lowered) <= _RAISABLE else f"_{lowered}"
        label += f"_{{{lowered}}}"
    if after:
        tex, text, label = tex + "'", text + "′", label + "′"
    if change:
        mark = _GREEK[change]
        tex, text, label = rf"\{change} {tex}", mark + text, mark + label
    return Symbol(tex, text, label)
