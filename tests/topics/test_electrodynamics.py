"""Electrodynamics: published cases, independent routes for every unknown, limits, refusals, mistakes, words."""

import itertools
import math
import re

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.figures import Arrow, Curve, Figure, Text
from calc.figures.coils import magnet_and_coil
from calc.language.units import parse_unit
from calc.marking.marking import mark_question
from calc.model.answers import WorkedAnswer
from calc.model.constants import Settings
from calc.model.questions import Refusal
from calc.topics import find
from calc.working.reading import Refusals, read
from calc.working.working import work
from tests.cases import reckoned
from tests.topics.asking import Chapter


def solve(key: str, unknown: str = "", constants: Settings | None = None, **typed: str) -> WorkedAnswer:
    """The worked answer of ``electrodynamics.key``, without its figures."""
    topic, question = find(f"electrodynamics.{key}")
    return reckoned(topic, question, read(question, typed, unknown, constants))


def refusal(key: str, unknown: str = "", **typed: str) -> tuple[str | None, str]:
    """The field and the sentence of the one refusal of these data."""
    with pytest.raises((Refusal, Refusals)) as caught:
        solve(key, unknown, **typed)
    found = caught.value.refusals[0] if isinstance(caught.value, Refusals) else caught.value
    return found.field, found.sentence


def m(value: float, unit: str = "") -> str:
    """A value as a reader may type it, in full precision."""
    return f"{value!r} {unit}".strip()


# --- flux ---

FIELDS, AREAS = st.floats(1e-3, 4), st.floats(1e-4, 0.5)


@given(FIELDS, AREAS, st.floats(1, 179).filter(lambda a: abs(a - 90) > 1))
def test_the_flux_is_the_dot_product_of_field_and_normal(field: float, area: float, degrees: float) -> None:
    """The field times the component of the unit normal along it, for every unknown; past 90° it is negative."""
    normal = complex(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
    through = (field * normal).real * area
    world = {"B": m(field, "T"), "A": m(area, "m^2"), "theta": m(degrees, "°"), "Phi": m(through, "Wb")}
    for unknown, expected in (("B", field), ("A", area), ("theta", math.radians(degrees)), ("Phi", through)):
        rest = {name: text for name, text in world.items() if name != unknown}
        assert solve("flux", unknown, **rest).values[unknown] == pytest.approx(expected, rel=1e-6)


@given(FIELDS, st.floats(0.01, 0.5), st.floats(1, 89))
def test_angles_from_the_plane_and_areas_of_shapes(field: float, size: float, plane: float) -> None:
    """From the plane the sine counts; circle, square and rectangle have the areas of plane geometry."""
    share = field * math.sin(math.radians(plane))
    told = {"B": m(field, "T"), "beta": m(plane, "°")}
    shapes = (
        ({"r": size}, math.pi * size**2),
        ({"D": size}, math.pi * size**2 / 4),
        ({"s": size}, size**2),
        ({"s": size, "s2": 2 * size}, 2 * size**2),
    )
    for sides, area in shapes:
        typed = {name: m(value, "m") for name, value in sides.items()}
        assert solve("flux", "Phi", **told, **typed).values["Phi"] == pytest.approx(share * area)
        last = list(sides)[-1]
        rest = {name: text for name, text in typed.items() if name != last}
        back = solve("flux", last, **told, **rest, Phi=m(share * area, "Wb"))
        assert back.values[last] == pytest.approx(sides[last])


def test_flux_at_the_ends() -> None:
    """Edge-on there is none; face-on there is BA, also where floats give a cosine a little above 1."""
    assert solve("flux", "Phi", B="2 T", A="3 cm^2", theta="90°").values["Phi"] == 0
    assert solve("flux", "Phi", B="2 T", A="3 cm^2", beta="0°").values["Phi"] == 0
    assert solve("flux", "Phi", B="2 T", A="3 cm^2", theta="180°").values["Phi"] == pytest.approx(-6e-4)
    for field, area, through in (("0,3", "0,1", "0,03"), ("0,7", "0,1", "0,07"), ("0,1", "0,1", "0,01")):
        found = solve("flux", "theta", B=f"{field} T", A=f"{area} m^2", Phi=f"{through} Wb")
        assert found.values["theta"] == pytest.approx(0, abs=1e-7)
    behind = solve("flux", "beta", B="2 T", A="0,01 m^2", Phi="-0,01 Wb")
    assert math.degrees(behind.values["beta"]) == pytest.approx(30)
    assert math.degrees(behind.values["theta"]) == pytest.approx(120)


# --- emf ---

CHANGES = [("B_2", 0.12), ("A_2", 1.5e-3), ("alpha_2", 75.0)]
EMF_UNITS = {"N": "", "B": "T", "B_2": "T", "A": "m^2", "A_2": "m^2", "alpha": "°", "alpha_2": "°", "Deltat": "s"}


def through(world: dict[str, float], after: bool, measured: str) -> float:
    """The flux by the component of the field along the unit normal, as a dot product of vectors."""
    field, area, angle = (world.get(f"{name}_2", world[name]) if after else world[name] for name in ("B", "A", "alpha"))
    turn = math.radians(angle if measured == "normal" else 90 - angle)
    normal = numpy.array([math.cos(turn), math.sin(turn)])
    return area * float(numpy.dot(numpy.array([field, 0.0]), normal))


@pytest.mark.parametrize("measured", ["normal", "plane"])
@pytest.mark.parametrize(("name", "value"), CHANGES)
def test_every_unknown_of_faradays_law(name: str, value: float, measured: str) -> None:
    """A coil made by plain vectors gives back the emf, and from the emf everything that was told of it."""
    world = {"N": 250.0, "B": 0.4, "A": 4e-3, "alpha": 20.0, "Deltat": 0.08, name: value}
    change = through(world, True, measured) - through(world, False, measured)
    emf = 250 * abs(change) / 0.08
    typed = {one: m(number, EMF_UNITS[one]) for one, number in world.items()} | {"N": "250", "measured": measured}
    typed["grows"] = "more" if change > 0 else "less"
    assert solve("emf", "epsilon", **typed).values["epsilon"] == pytest.approx(emf)
    for one, number in world.items():
        rest = {key: text for key, text in typed.items() if key != one} | {"epsilon": m(emf, "V")}
        if one == name and name == "A_2":
            rest |= {"A": typed["A"]}
        expected = math.radians(number) if one.startswith("alpha") else number
        assert solve("emf", one, **rest).values[one] == pytest.approx(expected, rel=1e-6), one


def test_two_final_values_where_only_the_size_of_the_change_is_known() -> None:
    """Φ₁ = 4 mWb and |ΔΦ| = 1 mWb leave 5 mWb and 3 mWb; the fields that go with them are listed too."""
    typed = {"N": "100", "Deltat": "0,1 s", "epsilon": "1 V", "grows": "either"}
    both = solve("emf", "Phi_2", Phi_1="4 mWb", **typed).values
    assert (both["Phi_2"], both["Phi_3"]) == (pytest.approx(5e-3), pytest.approx(3e-3))
    coil = {"B": "0,4 T", "A": "0,01 m^2", "alpha": "0°"}
    fields = solve("emf", "B_2", **coil, **typed).values
    assert (fields["B_2"], fields["B_3"]) == (pytest.approx(0.5), pytest.approx(0.3))
    angles = solve("emf", "alpha_2", **coil, **typed)  # it cannot become larger than BA
    assert angles.values["alpha_2"] == pytest.approx(math.acos(0.75))
    assert [part.key for part in angles.parts if part.key == "other"] == []
    tilted = solve("emf", "alpha_2", **(coil | {"alpha": "60°"}), **typed).values
    assert tilted["alpha_2"] == pytest.approx(math.acos(0.75))
    assert tilted["alpha_3"] == pytest.approx(math.acos(0.25))
    plane = solve("emf", "alpha_2", **(coil | {"alpha": "30°"}), **typed, measured="plane").values
    assert (plane["alpha_2"], plane["alpha_3"]) == (pytest.approx(math.asin(0.75)), pytest.approx(math.asin(0.25)))
    first = solve("emf", "B", B_2="0,4 T", A="0,01 m^2", alpha="0°", **typed).values
    assert (first["B"], first["B_3"]) == (pytest.approx(0.3), pytest.approx(0.5))


@pytest.mark.parametrize(("unknown", "given_"), [("Phi_2", {"Phi_1": "4 mWb"}), ("Phi_1", {"Phi_2": "1 mWb"})])
def test_a_flux_that_becomes_smaller_is_worked_with_signs_that_fit(unknown: str, given_: dict[str, str]) -> None:
    """ε = −NΔΦ/Δt with a negative change holds line by line, so nothing is said of lines that do not show it."""
    typed = {"N": "100", "Deltat": "0,1 s", "epsilon": "1 V", "grows": "less", **given_}
    solved = solve("emf", unknown, **typed)
    assert solved.values["DeltaPhi"] == pytest.approx(-1e-3)
    assert not [note for note in solved.notes if "differ so much" in note]
    step = next(part for part in solved.parts if part.answers).steps[0]
    assert step.why.startswith("The flux becomes smaller, so ΔΦ is negative")


def test_no_change_means_no_emf() -> None:
    """ΔΦ = 0 gives an emf of zero; the other way round there is nothing to be found."""
    assert solve("emf", "epsilon", N="50", Phi_1="3 mWb", Phi_2="3 mWb", Deltat="2 s").values["epsilon"] == 0


def test_a_number_of_turns_that_is_not_whole_is_rounded_with_a_warning() -> None:
    """N is shown as it comes out, and the warning names the whole number."""
    worked = solve("emf", "N", DeltaPhi="3 mWb", Deltat="0,1 s", epsilon="1 V")
    assert worked.values["N"] == pytest.approx(100 / 3)
    assert worked.warnings == ("Turns are counted, and 33,33 is no whole number: take 33 turns, or check the numbers.",)
    assert solve("emf", "N", DeltaPhi="3 mWb", Deltat="0,1 s", epsilon="6 V").warnings == ()


def test_the_reference_coil() -> None:
    """Common practice, no source: 200 turns, 0,5 T, 0,01 m², from 0° to 90° in 0,05 s give 20 V."""
    typed = {"N": "200", "B": "0,5 T", "A": "0,01 m^2", "alpha": "0°", "alpha_2": "90°", "Deltat": "0,05 s"}
    assert solve("emf", "epsilon", **typed).values["epsilon"] == pytest.approx(20)


# --- turning coils ---


@given(st.integers(1, 500), FIELDS, AREAS, st.floats(1, 300))
def test_the_largest_emf_is_the_steepest_flux(count: int, field: float, area: float, hertz: float) -> None:
    """The largest slope of the flux linkage, found by differences over one turn; and every unknown of it."""
    times = numpy.linspace(0, 1 / hertz, 20001)
    linkage = count * field * area * numpy.cos(2 * math.pi * hertz * times)
    steepest = float(numpy.abs(numpy.gradient(linkage, times)).max())
    typed = {"N": m(count), "B": m(field, "T"), "A": m(area, "m^2"), "f": m(hertz, "Hz")}
    assert solve("peak", "epsilon_max", **typed).values["epsilon_max"] == pytest.approx(steepest, rel=1e-5)
    exact = 2 * math.pi * hertz * count * field * area
    for name, value in {"N": count, "B": field, "A": area, "f": hertz}.items():
        rest = {one: text for one, text in typed.items() if one != name} | {"epsilon_max": m(exact, "V")}
        assert solve("peak", name, **rest).values[name] == pytest.approx(value)
    sides = {"N": typed["N"], "B": typed["B"], "f": typed["f"], "s": m(2 * math.sqrt(area), "m")}
    assert solve("peak", "s2", **sides, epsilon_max=m(exact, "V")).values["s2"] == pytest.approx(math.sqrt(area) / 2)
    rest = {"N": typed["N"], "B": typed["B"], "A": typed["A"], "epsilon_max": m(exact, "V")}
    assert solve("peak", "T", **rest).values["T"] == pytest.approx(1 / hertz)
    assert solve("peak", "n", **rest).values["n"] == pytest.approx(60 * hertz)


def off_the_axes(figure: Figure, name: str = "ε") -> list[list[tuple[float, float]]]:
    """The drawn lines in the numbers along the axes, found from the ticks alone; powers of ten are on the names."""
    level, upright = (
        next(one for one in figure.items if isinstance(one, Arrow) and one.label.startswith(n)) for n in ("t", name)
    )
    ticks: tuple[list[tuple[float, float]], ...] = ([], [])
    for one in figure.items:
        if isinstance(one, Text) and one.small:
            across = one.place == "left"
            number = float(one.text.replace("−", "-").replace(",", "."))
            ticks[across].append((one.at[1 if across else 0], number))
    axes = []
    for marks, label in zip(ticks, (level.label, upright.label), strict=True):
        (a, one), (b, two) = marks[0], marks[-1]
        power = re.search(r"10\^{(-?\d+)}", label)
        size = (two - one) / (b - a) * (10.0 ** int(power[1]) if power else 1.0)
        axes.append((a, one * (10.0 ** int(power[1]) if power else 1.0), size))
    (x0, t0, across), (y0, v0, up) = axes
    curves = [one.points for one in figure.items if isinstance(one, Curve)]
    return [[(t0 + (x - x0) * across, v0 + (y - y0) * up) for x, y in points] for points in curves]


@pytest.mark.parametrize(("key", "turns"), [("peak", "1500"), ("stream", "1200"), ("stream", "1650")])
def test_the_graph_of_two_speeds_against_the_numbers_along_its_axes(key: str, turns: str) -> None:
    """Each drawn point is the emf by Faraday's law, from the flux a moment before and after; at twice the speed too."""
    topic, question = find(f"electrodynamics.{key}")
    data = {**question.example, "N": "120", "B": "0,2 T", "A": "80 cm^2", "n": turns}
    if key == "stream":
        data |= {"P": "10 W", "V_2": "200 V"}
    found = read(question, data, "epsilon_max" if key == "peak" else "")
    figure = next(part.figure for part in question.plan(found.data).parts if part.key == "graph")
    assert figure is not None
    lines = off_the_axes(figure(work(topic, question, found).values))
    assert len(lines) == 2

    def emf(t: float, rate: float) -> float:
        """Beginning with the coil square to the field: no emf, and the flux about to become smaller."""
        before, after = (120 * 0.2 * 80e-4 * math.cos(2 * math.pi * rate * (t + step)) for step in (-1e-6, 1e-6))
        return -(after - before) / 2e-6

    for line, rate in zip(lines, (float(turns) / 60, float(turns) / 30), strict=True):
        largest = 2 * math.pi * rate * 120 * 0.2 * 80e-4
        assert max(v for _, v in line) == pytest.approx(largest, rel=1e-3)
        assert line[0] == (pytest.approx(0, abs=1e-9), pytest.approx(0, abs=1e-6 * largest))
        assert line[-1][0] == pytest.approx(60 / float(turns), rel=1e-6)
        for t, v in line:
            assert v == pytest.approx(emf(t, rate), abs=1e-3 * largest)


# --- graphs that are read ---

DRAWN_FLUX = {"N": "240", "Phi_m": "4,5 mWb", "t_A": "0,15 s", "t_B": "0,6 s", "t_C": "1,1 s", "R": "24 ohm"}


def test_the_emf_of_a_graph_of_flux_is_its_slope() -> None:
    """The slopes of the drawn flux, read off its axes: the values have their size, the drawn emf the other sign."""
    topic, question = find("electrodynamics.flux-graph")
    found = read(question, DRAWN_FLUX)
    plan, values = question.plan(found.data), work(topic, question, found).values
    (flux,) = off_the_axes(plan.scene(values), "Φ")  # type: ignore[misc]
    slopes = [(y2 - y1) / 1000 / (t2 - t1) for (t1, y1), (t2, y2) in itertools.pairwise(flux)]
    assert [values["epsilon_1"], 0, values["epsilon_2"]] == pytest.approx([abs(240 * one) for one in slopes])
    assert values["I"] == pytest.approx(abs(240 * slopes[2]) / 24)
    (emf,) = off_the_axes(next(part.figure for part in plan.parts if part.key == "graph")(values))  # type: ignore[misc]
    for (start, _), (end, _), slope in zip(flux, flux[1:], slopes, strict=False):
        middle = (start + end) / 2
        level = next(y for (t, y), (u, _) in itertools.pairwise(emf) if t <= middle <= u)
        assert level == pytest.approx(-240 * slope, abs=1e-9)


def test_a_graph_of_an_emf_gives_period_rms_and_power() -> None:
    """From a sampled sine: the time between two upward crossings, the root of the mean square, the mean of v²/R."""
    topic, question = find("electrodynamics.trace")
    found = read(question, {"t_P": "7,5 ms", "epsilon_max": "15,5 V", "R": "33 ohm"})
    values = work(topic, question, found).values
    (line,) = off_the_axes(question.plan(found.data).scene(values))  # type: ignore[misc]
    times, volts = numpy.array(line).T
    crossings = times[:-1][(volts[:-1] <= 1e-9) & (volts[1:] > 1e-9)]
    assert values["T"] == pytest.approx(crossings[1] - crossings[0])
    assert values["f"] * values["T"] == pytest.approx(1)
    turn = volts[(times >= -1e-9) & (times < values["T"] * (1 - 1e-9))]
    assert values["epsilon_rms"] == pytest.approx(float(numpy.sqrt(numpy.mean(turn**2))), rel=1e-3)
    assert values["P_av"] == pytest.approx(float(numpy.mean(turn**2)) / 33, rel=1e-3)


# --- alternating current ---


@settings(max_examples=6)
@given(st.floats(1, 1000), st.floats(0.5, 500))
def test_rms_and_average_power_are_means_over_a_period(peak: float, ohms: float) -> None:
    """The means of a sampled sine, by numpy; every quantity from each two that fix the rest."""
    wave = peak * numpy.sin(2 * math.pi * numpy.arange(1000) / 1000)
    rms, mean = float(numpy.sqrt(numpy.mean(wave**2))), float(numpy.mean(wave**2 / ohms))
    world = {"V_max": peak, "V_rms": rms, "I_rms": rms / ohms, "I_max": peak / ohms, "R": ohms, "P_av": mean}
    world["P_max"] = float(numpy.max(wave**2 / ohms))
    units = {"V_max": "V", "V_rms": "V", "I_rms": "A", "I_max": "A", "R": "ohm", "P_av": "W", "P_max": "W"}
    for pair in itertools.combinations(world, 2):
        if pair in (("V_max", "V_rms"), ("I_rms", "I_max"), ("P_av", "P_max")):
            continue
        typed = {name: m(world[name], units[name]) for name in pair}
        for unknown, expected in world.items():
            if unknown not in pair:
                assert solve("rms", unknown, **typed).values[unknown] == pytest.approx(expected), (pair, unknown)


def test_the_reference_element() -> None:
    """Common practice, no source: 230 V rms and 46 Ω give 5 A rms, 7,07 A at the peak and 1 150 W."""
    typed = {"V_rms": "230 V", "R": "46 ohm"}
    assert solve("rms", "I_rms", **typed).values["I_rms"] == pytest.approx(5)
    assert solve("rms", "I_max", **typed).values["I_max"] == pytest.approx(7.0710678)
    assert solve("rms", "P_av", **typed).values["P_av"] == pytest.approx(1150)


# --- a line ---


@given(st.floats(1e3, 1e6), st.floats(200, 1e5), st.floats(0.01, 50))
def test_a_line_against_its_own_voltage_drop(sent: float, volts: float, ohms: float) -> None:
    """What arrives is the voltage left at the far end times the current; ten times the voltage loses a hundredth."""
    amperes = sent / volts
    arrives = (volts - amperes * ohms) * amperes
    typed = {"P": m(sent, "W"), "V": m(volts, "V"), "R": m(ohms, "ohm")}
    if arrives <= 1e-6 * sent:
        return
    assert solve("line", "P_out", **typed).values["P_out"] == pytest.approx(arrives, rel=1e-6)
    lost = solve("line", "P_lost", **typed).values["P_lost"]
    again = solve("line", "P_lost2", **typed, V_2=m(10 * volts, "V")).values["P_lost2"]
    assert lost / again == pytest.approx(100)
    share = solve("line", "p", **typed).values["p"]
    assert share == pytest.approx(100 * amperes * ohms / volts)
    back = {**typed, "p": m(share, "%")}
    for name, value in {"P": sent, "V": volts, "R": ohms}.items():
        rest = {one: text for one, text in back.items() if one != name}
        assert solve("line", name, **rest).values[name] == pytest.approx(value, rel=1e-6)


# --- published: OpenStax, CC BY 4.0; section, data and tolerance of each stand in electrodynamics_published.json ---

CASES = Chapter("electrodynamics")


def test_published_generator() -> None:
    """Fifty turns of 15 cm by 40 cm at 3600 rev/min: the largest emf, and the largest power it gives 1000 Ω."""
    turns, length, width, field, rate = CASES.given("G02a", "N", "a", "b", "B", "rev_per_min")
    typed = {"N": turns, "s": f"{length} m", "s2": f"{width} m", "B": f"{field} T", "n": rate}
    largest = CASES.value("peak", "epsilon_max", **typed)
    assert largest == CASES.published("G02a")
    (ohms,) = CASES.given("G02b", "R")
    assert CASES.value("rms", "P_max", V_max=m(largest, "V"), R=f"{ohms} ohm") == CASES.published("G02b")


def test_published_heating_in_a_coil() -> None:
    """Heating tells the emf, and that the change of the field in each second."""
    turns, radius, ohms, watts = CASES.given("F02", "N", "radius", "R", "P")
    emf = CASES.value("rms", "V_rms", P_av=f"{watts} W", R=f"{ohms} ohm")
    typed = {"N": turns, "r": f"{radius} m", "B": "0 T", "alpha": "0°", "Deltat": "1 s", "grows": "more"}
    assert CASES.value("emf", "B_2", **typed, epsilon=m(emf, "V")) == CASES.published("F02")


def test_published_loop() -> None:
    """One turn in which the field along the normal grows: the emf."""
    turns, radius, change, seconds = CASES.given("faraday-loop", "N", "radius", "delta B cos", "t")
    typed = {"N": turns, "r": f"{radius} m", "B": "0,05 T", "alpha": "0°", "Deltat": f"{seconds} s"}
    found = CASES.value("emf", "epsilon", **typed, B_2=f"{float(change) + 0.05} T")
    assert found == CASES.published("faraday-loop")


def test_published_rms_values() -> None:
    """From the peak to the rms value, and back."""
    (peak,) = CASES.given("A02a", "V_peak")
    assert CASES.value("rms", "V_rms", V_max=f"{peak} V") == CASES.published("A02a")
    (rms,) = CASES.given("ac-peak", "Vrms")
    assert CASES.value("rms", "V_max", V_rms=f"{rms} V") == CASES.published("ac-peak")


def test_published_average_power() -> None:
    """In a resistor behind a coil and a capacitor: the peak current as the source has it, then the power."""
    peak, rate, henry, farad, ohms = map(float, CASES.given("A02c", "V_peak", "omega", "L", "C", "R"))
    current = peak / math.hypot(ohms, rate * henry - 1 / (rate * farad))
    assert CASES.value("rms", "P_av", I_max=m(current, "A"), R=m(ohms, "ohm")) == CASES.published("A02c")


# --- directions and machines ---


def test_a_magnet_that_rests_induces_nothing() -> None:
    """No arrows, no pole, and the reason."""
    worked = solve("direction", pole="N", moves="still", side="left", N="50", DeltaPhi="2 mWb", Deltat="0,5 s")
    words = " ".join(point.words for part in worked.parts for point in part.points)
    assert "No current flows. The flux through the coil does not change, so no emf is induced." in words
    assert not [one for one in magnet_and_coil("N", "still", "left").items if isinstance(one, Arrow)]


@pytest.mark.parametrize(
    ("kind", "joint", "way"),
    [
        ("ac", "slip rings", "So the current outside alternates as it does in the coil."),
        ("dc", "split-ring commutator", "So the current outside always flows in one direction."),
        ("motor", "split-ring commutator", "It reverses the current in the coil each half-turn."),
    ],
)
def test_each_machine_has_its_rings(kind: str, joint: str, way: str) -> None:
    """Slip rings for the AC generator, a split ring for the other two; the sheet shows letters alone."""
    topic, question = find("electrodynamics.machines")
    worked = work(topic, question, read(question, {"kind": kind, "n": "600", "t": "20 s"}, ""))
    words = [point.words for part in worked.parts for point in part.points]
    assert f"C: {joint}." in words
    assert worked.values["z"] == pytest.approx(400)  # 200 turns in 20 s, two reversals in each
    assert way in words
    assert worked.figure is not None
    shown = " ".join(getattr(one, "text", "") for one in worked.figure.items)
    assert shown.split() == ["N", "S", *(("+", "−") if kind == "motor" else ()), "A", "B", "C", "D"]


# --- whole questions ---


def test_the_whole_questions_against_plain_arithmetic() -> None:
    """Every answer from the data alone, by the laws in one line each."""
    coil = solve("search-coil", N="150", D="6 cm", B="0,4 T", Deltat="0,2 s", R="30 ohm").values
    assert coil["I"] == pytest.approx(150 * 0.4 * math.pi * 0.03**2 / 0.2 / 30)
    kiln = solve("kiln", V_max="340 V", R="24 ohm", Deltat="6 h", k_1="2,4").values
    assert kiln["P_av"] == pytest.approx(340**2 / 2 / 24)
    assert kiln["I_max"] == pytest.approx(340 / 24)
    assert kiln["c"] == pytest.approx(340**2 / 2 / 24 / 1000 * 6 * 2.4)
    typed = {"N": "500", "B": "0,25 T", "A": "0,02 m^2", "n": "1500", "P": "3 kW", "R": "2 ohm", "V_2": "2800 V"}
    stream = solve("stream", **typed).values
    rms = 2 * math.pi * 25 * 500 * 0.25 * 0.02 / math.sqrt(2)
    assert stream["V"] == pytest.approx(rms)
    assert stream["P_lost"] == pytest.approx((3000 / rms) ** 2 * 2)
    assert stream["P_lost2"] == pytest.approx((3000 / 2800) ** 2 * 2)
    speck = {"N": "400", "B": "0,3 T", "A": "40 cm^2", "n": "1800", "d": "5 mm", "q": "0,02 nC", "m": "5 mg"}
    moved = solve("dynamo", **speck).values
    assert moved["a"] == pytest.approx(2e-11 * (2 * math.pi * 30 * 400 * 0.3 * 4e-3) / 5e-3 / 5e-6)


# --- usual mistakes ---

FLUX = {"N": "200", "Phi_1": "2 mWb", "Phi_2": "5 mWb", "Deltat": "0,1 s"}
SLIPS = [
    ("flux", "Phi", {"B": "0,4 T", "A": "50 cm^2", "theta": "60°"}, 0.4 * 5e-3 * math.sin(math.pi / 3), "plane-angle"),
    (
        "flux",
        "Phi",
        {"B": "0,4 T", "r": "3 cm", "theta": "20°"},
        0.4 * math.pi * 0.06**2 * math.cos(math.pi / 9),
        "diameter-as-radius",
    ),
    ("emf", "epsilon", FLUX, 0.03, "turns-left-out"),
    ("emf", "epsilon", FLUX, 10.0, "final-flux-only"),
    ("rms", "V_rms", {"V_max": "340 V"}, 340 * math.sqrt(2), "multiplied"),
    ("rms", "P_av", {"V_max": "20 V", "I_max": "3 A"}, 60.0, "peak-times-peak"),
    ("rms", "P_av", {"V_max": "20 V", "I_rms": "3 A"}, 60.0, "mixed"),
    ("peak", "epsilon_max", {"N": "50", "B": "0,2 T", "A": "40 cm^2", "f": "25 Hz"}, 1.0, "two-pi-left-out"),
]


@pytest.mark.parametrize(("key", "unknown", "typed", "wrong", "slip"), SLIPS)
def test_a_usual_mistake_is_named(key: str, unknown: str, typed: dict[str, str], wrong: float, slip: str) -> None:
    """The number that each mistake of the catalogue gives is recognised as that mistake."""
    _, question = find(f"electrodynamics.{key}")
    found = read(question, typed, unknown)
    unit = parse_unit(question.find(unknown).unit).si().text  # type: ignore[union-attr]
    marked = mark_question(question.plan(found.data), found, {"find": {"value": f"{wrong!r} {unit}"}})
    blamed = next(part.blamed or part.answer for part in marked if part.part.key == "find")
    assert blamed is not None
    assert slip in [one.key for suspect in blamed.fits for one in suspect.slips]


# --- refusals ---

ALL_LOST = (
    "More would be lost in the line than is sent: at this voltage the line cannot carry so much power. Raise the"
    " voltage, or type a smaller power or resistance."
)

TOO_MUCH = (
    "More flux than BA: a coil that faces the field squarely has the flux BA, and no other position has more. Check the"
    " flux, the field and the area."
)
COIL = {"B": "0,5 T", "A": "20 cm^2", "theta": "30°"}
NO_CHANGE = (
    "No change, no emf: the flux is the same before and after, so the emf is zero. Type two different fluxes, or leave"
    " the emf to be found."
)
NO_END = (
    "No position or field fits: this emf needs more flux than the coil can have, or flux of the other sign. Check the"
    " emf, the time, the turns, and whether the flux becomes larger or smaller."
)
TURN = {"N": "100", "B": "0,4 T", "A": "0,01 m^2", "alpha": "0°", "Deltat": "0,1 s"}
STILL = {"Phi_1": "3 mWb", "Phi_2": "3 mWb", "epsilon": "2 V"}
LATER = "The points follow each other: type a later time than that of the point before."
STREAM = {"N": "500", "B": "0,25 T", "A": "0,02 m^2", "n": "1500", "P": "3 kW", "R": "2 ohm", "V_2": "2800 V"}
REFUSED = [
    ("flux-graph", "", {**DRAWN_FLUX, "t_B": "0,15 s"}, "t_B", LATER),
    ("flux-graph", "", {**DRAWN_FLUX, "t_C": "0,6 s"}, "t_C", LATER),
    ("flux-graph", "", {**DRAWN_FLUX, "Phi_m": "0 Wb"}, "Phi_m", "The largest flux must be greater than zero."),
    (
        "trace",
        "",
        {"t_P": "5 ms", "epsilon_max": "0 V", "R": "20 ohm"},
        "epsilon_max",
        "A peak lies above zero: type an emf greater than zero.",
    ),
    ("trace", "", {"t_P": "0 s", "epsilon_max": "9 V", "R": "2 ohm"}, "t_P", "Time must be greater than zero."),
    ("stream", "", {**STREAM, "P": "60 kW"}, "P", ALL_LOST),
    (
        "stream",
        "",
        {**STREAM, "V_2": "100 V"},
        "V_2",
        "The transformer raises the voltage. Type a voltage above the rms value of the generator.",
    ),
    ("line", "P_lost", {"P": "50 kW", "V": "100 V", "R": "8 ohm"}, "P", ALL_LOST),
    ("peak", "f", {"N": "20", "B": "1 T", "A": "1 cm^2", "T": "0 s"}, "T", "Time must be greater than zero."),
    ("peak", "T", {"f": "0 Hz"}, "f", "Frequency must be greater than zero."),
    ("rms", "P_av", {"V_rms": "12 V", "R": "0 ohm"}, "R", "Resistance must be greater than zero."),
    ("emf", "N", {**STILL, "Deltat": "2 s"}, None, NO_CHANGE),
    ("emf", "Deltat", {**STILL, "N": "20"}, None, NO_CHANGE),
    ("emf", "alpha_2", {**TURN, "epsilon": "1 V", "grows": "more"}, None, NO_END),
    ("emf", "B_2", {**TURN, "epsilon": "6 V", "grows": "less"}, None, NO_END),
    (
        "emf",
        "Phi_2",
        {"N": "100", "Phi_1": "2 mWb", "Deltat": "1 s", "epsilon": "0 V"},
        "epsilon",
        "An emf of zero means that the flux did not change, whatever the time and the turns. Type an emf above zero.",
    ),
    (
        "emf",
        "epsilon",
        {**TURN, "alpha_2": "90°", "Deltat": "0 s"},
        "Deltat",
        "Change needs time: type a time greater than zero.",
    ),
    (
        "emf",
        "epsilon",
        {**TURN, "alpha_2": "90°", "N": "20,5"},
        "N",
        "Number of turns is counted: type a whole number.",
    ),
    ("emf", "epsilon", {**TURN, "alpha_2": "90°", "N": "0"}, "N", "Turns are counted: type a whole number, 1 or more."),
    (
        "emf",
        "epsilon",
        {**TURN, "alpha_2": "120°", "measured": "plane"},
        "alpha_2",
        "The angle with the plane lies from 0° to 90°.",
    ),
    ("flux", "theta", {"B": "0,5 T", "A": "20 cm^2", "Phi": "2 mWb"}, None, TOO_MUCH),
    ("flux", "beta", {"B": "0,5 T", "A": "20 cm^2", "Phi": "2 mWb"}, None, TOO_MUCH),
    ("flux", "Phi", {**COIL, "B": "-0,5 T"}, "B", "A field strength is never negative: type its size."),
    ("flux", "Phi", {**COIL, "A": "0 cm^2"}, "A", "Area must be greater than zero."),
    ("flux", "Phi", {**COIL, "theta": "190°"}, "theta", "The angle with the normal lies from 0° to 180°."),
    ("flux", "Phi", {**COIL, "theta": "", "beta": "95°"}, "beta", "The angle with the plane lies from 0° to 90°."),
    (
        "flux",
        "Phi",
        {"B": "0,5 T", "theta": "0°", "r": "2 cm", "s": "3 cm"},
        "s",
        "A coil is round or has straight sides, not both: leave the radius and the diameter empty, or the sides.",
    ),
]


@pytest.mark.parametrize(("key", "unknown", "typed", "at", "sentence"), REFUSED)
def test_refusals_word_for_word(key: str, unknown: str, typed: dict[str, str], at: str | None, sentence: str) -> None:
    """What cannot be is refused at its box, with the reason."""
    assert refusal(key, unknown, **typed) == (at, sentence)
