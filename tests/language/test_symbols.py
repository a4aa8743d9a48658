"""Names of quantities and how they are printed."""

import pytest

from calc.language.symbols import symbol


@pytest.mark.parametrize(
    ("name", "text", "tex", "label"),
    [
        ("F", "F", "F", "F"),
        ("Q1", "Q₁", "Q_{1}", "Q_{1}"),
        ("F_E", "F_E", "F_{E}", "F_{E}"),
        ("F_net", "Fₙₑₜ", r"F_{\text{net}}", "F_{net}"),
        ("theta", "θ", r"\theta", "θ"),
        ("eta", "η", r"\eta", "η"),
        ("mu_k", "μₖ", r"\mu_{k}", "μ_{k}"),
        ("DeltaQ", "ΔQ", r"\Delta Q", "ΔQ"),
        ("F_gpar", "F_g∥", r"F_{\text{g}\parallel}", "F_{g∥}"),
        ("E_perp", "E_⊥", r"E_{\perp}", "E_{⊥}"),
        ("Q_after", "Q′", "Q'", "Q′"),
    ],
)
def test_a_name_has_three_printed_forms(name: str, text: str, tex: str, label: str) -> None:
    """Plain text, TeX and the figures' label form come from the one name."""
    found = symbol(name)
    assert (found.text, found.tex, found.label) == (text, tex, label)


def test_a_name_that_is_no_symbol_is_refused() -> None:
    """The error says how a name is built."""
    with pytest.raises(ValueError, match="letters, then digits, then _subscript"):
        symbol("1F")
