"""Directions of the electric-field steps follow the values, a learner's own carried-in values among them."""

import pytest

from calc.model.answers import Direction
from calc.model.questions import Step
from calc.topics import find
from calc.working.reading import read
from calc.working.working import direction, run
from tests.cases import KEYS, cases


def pointing(key: str, name: str, typed: dict[str, object], **carried: float) -> Direction | None:
    """The direction of the last step that makes ``name``, with a learner's own values carried in."""
    _, question = find(f"electric-field.{key}")
    found = read(question, typed)
    plan = question.plan(found.data)
    step: Step = [step for step in plan.steps if step.makes == name][-1]
    return direction(step, run(plan, found.data.settings.constants(), carry=carried))


DROP = {
    "m": "3,2e-15 kg",
    "V": "490 V",
    "d": "5 mm",
    "upper": "positive",
}  # two electrons: mg = 3,136e-14 N


@pytest.mark.parametrize(
    ("volts", "own", "way"),
    [
        ("980 V", 1.96e5, "up"),
        ("980 V", 4.9e4, "down"),
        ("245 V", 4.9e4, "down"),
        ("245 V", 1.96e5, "up"),
        ("490 V", 9.8e4, None),
    ],
)
def test_a_drop_let_go_goes_the_way_of_the_larger_force(volts: str, own: float, way: str | None) -> None:
    """qE₂ against mg decides, with the learner's own E₂ (V·m⁻¹) as well as with the right one."""
    found = pointing("drop", "a", {**DROP, "V_2": volts}, E_2=own)
    assert (found.key if found else None) == way


LINE = {
    "charges": [{"Q": "+8 nC", "x": "0 cm"}, {"Q": "-5 nC", "x": "50 cm"}, {"Q": "+9 nC", "x": "60 cm"}],
    "x_P": "30 cm",
}


@pytest.mark.parametrize(("own", "way"), [(900.0, "left"), (100.0, "right")])
def test_the_net_field_on_a_line_follows_the_fields_carried_in(own: float, way: str) -> None:
    """E₃ points left against E₁ and E₂ (together 600 N/C here): the larger side wins; an electron goes the
    other way."""
    typed: dict[str, object] = {**LINE, "q": "-1,6e-19 C"}
    carried = {"E_1": 300.0, "E_2": 300.0, "E_3": own}
    net, force = (pointing("line", name, typed, **carried) for name in ("E_net", "F"))
    assert net is not None
    assert force is not None
    assert net.key == way
    assert force.key == {"left": "right", "right": "left"}[way]


PLANE = {
    "charges": [{"Q": "+9 nC", "x": "-30 cm", "y": "0 cm"}, {"Q": "-8 nC", "x": "0 cm", "y": "-20 cm"}],
    "x_P": "0",
    "y_P": "0",
}


@pytest.mark.parametrize(("x", "y", "angle"), [(300.0, 300.0, 45.0), (-300.0, 300.0, 135.0), (300.0, -300.0, 315.0)])
def test_the_net_field_in_a_plane_follows_the_components_carried_in(x: float, y: float, angle: float) -> None:
    """The quadrant comes from the components, and the force on a negative charge is turned by 180°."""
    typed: dict[str, object] = {**PLANE, "q": "-2 nC"}
    for name, turn in (("E_net", 0.0), ("theta", 0.0), ("F", 180.0)):
        found = pointing("plane", name, typed, E_x=x, E_y=y)
        assert found is not None
        assert found.angle == pytest.approx((angle + turn) % 360)


@pytest.mark.parametrize(("own", "field", "electron"), [(5000.0, "right", "left"), (1.0, "left", "right")])
def test_the_electron_at_the_domes_follows_the_net_field(own: float, field: str, electron: str) -> None:
    """With the field of dome A carried in larger or smaller than that of B, net field, force and acceleration turn."""
    _, question = find("electric-field.museum-domes")
    typed = dict(question.example)
    for name, way in (("E_net", field), ("F", electron), ("a", electron)):
        found = pointing("museum-domes", name, typed, E_A=own)
        assert found is not None
        assert found.key == way, name


CANCEL = {"charges": [{"Q": "+4 nC", "x": "0 cm"}, {"Q": "+4 nC", "x": "40 cm"}], "x_P": "20 cm"}


@pytest.mark.parametrize(("carried", "net", "force"), [("E_1", "right", "left"), ("E_2", "left", "right")])
def test_fields_that_cancel_have_a_direction_with_a_learners_own(carried: str, net: str, force: str) -> None:
    """Half-way between equal charges there is no direction; with one field carried in larger there is, and a
    negative charge goes against it."""
    typed: dict[str, object] = {**CANCEL, "q": "-2 nC"}
    right = pointing("line", "E_net", typed)
    assert right is not None
    assert right.key == "none"
    assert pointing("line", "F", typed) is None
    for name, way in (("E_net", net), ("F", force)):
        found = pointing("line", name, typed, **{carried: 2000.0})
        assert found is not None
        assert found.key == way


@pytest.mark.parametrize(("own", "angle"), [(250.0, 0.0), (-250.0, 180.0)])
def test_components_that_cancel_have_a_direction_with_a_learners_own(own: float, angle: float) -> None:
    """Between equal charges of a plane E_x is zero; carried in as ±250 N/C it turns net field and force."""
    rows = [{"Q": "+4 nC", "x": f"{x} cm", "y": "0 cm"} for x in (-30, 30)]
    typed: dict[str, object] = {"charges": rows, "x_P": "0", "y_P": "0", "q": "-2 nC"}
    right = pointing("plane", "E_net", typed)
    assert right is not None
    assert right.key == "none"
    for name, turn in (("E_net", 0.0), ("F", 180.0)):
        found = pointing("plane", name, typed, E_x=own)
        assert found is not None
        assert found.angle == pytest.approx((angle + turn) % 360)


@pytest.mark.parametrize("upper", ["positive", "negative"])
def test_no_voltage_means_a_field_without_direction(upper: str) -> None:
    """With the potential difference changed to 0 V the new field is zero and points nowhere; with 300 V it points
    to the negative plate."""
    assert pointing("drop", "E_2", {**DROP, "upper": upper, "V_2": "0 V"}) is None
    found = pointing("drop", "E_2", {**DROP, "upper": upper, "V_2": "300 V"})
    assert found is not None
    assert found.key == {"positive": "down", "negative": "up"}[upper]


@pytest.mark.parametrize(
    ("key", "zero", "name", "typed"),
    [
        ("charge", "E", "F", {"Q": "-6 nC", "r": "30 cm", "q": "2 nC"}),
        ("particle", "F", "a", {"E": "6e3 N/C", "particle": "electron", "along": "up"}),
        ("particle", "F", "E", {"a": "4e14 m/s^2", "particle": "proton", "along": "left"}),
        ("line", "E_net", "F", {**LINE, "q": "2 nC"}),
        ("museum-domes", "E_net", "a", {"Q_A": "45 nC", "Q_B": "-20 nC", "D": "40 cm", "r_B": "20 cm"}),
    ],
)
def test_what_comes_of_nothing_has_no_direction(key: str, zero: str, name: str, typed: dict[str, object]) -> None:
    """A field or a force of zero carried in makes what follows zero as well, and it points nowhere."""
    assert pointing(key, name, typed) is not None
    assert pointing(key, name, typed, **{zero: 0.0}) is None


@pytest.mark.parametrize("key", [key for key in KEYS if key.startswith("electric-field.")])
def test_no_direction_is_fixed_when_the_plan_is_made(key: str) -> None:
    """Every direction is worked out from the values: what is carried in can always turn it."""
    for case in cases(key):
        fixed = [step.makes for part in case.plan.parts for step in part.steps if isinstance(step.direction, Direction)]
        assert fixed == [], case.name
