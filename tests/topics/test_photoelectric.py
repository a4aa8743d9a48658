"""The photoelectric effect: published cases, independent routes for every unknown, limits, refusals, words."""

import json
import re
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants as codata
from scipy import stats

from calc import desk
from calc.figures import Arrow, Curve, Plate
from calc.figures.photo import photocell
from calc.model.answers import WorkedAnswer
from calc.model.constants import Settings
from calc.model.questions import Refusal
from calc.practice.drawing import DRAWS, draw
from calc.topics import find, topics
from calc.topics.photoelectric.metals import METALS
from calc.working.reading import read
from calc.working.working import work
from tests.topics.asking import Chapter, mistakes_said

CHAPTER = Chapter("photoelectric")
H, C, E, M = 6.63e-34, 3e8, 1.6e-19, 9.11e-31  # a school data sheet's
KEYS = [question.key for question in topics()["photoelectric"].questions]
FULLER = {"h": codata.h, "c": codata.c, "e": codata.e, "m_e": codata.m_e}


def value(key: str, find_: str, constants: dict[str, float] | None = None, **typed: str) -> float:
    """One value, with constants of one's own."""
    topic, question = find(f"photoelectric.{key}")
    return work(topic, question, read(question, typed, find_, Settings(changed=constants or {}))).values[find_]


def test_the_constants_are_codatas() -> None:
    """The school's h, c, e and mass of an electron are CODATA's to two or three figures."""
    sheet = Settings()
    for name, exact in FULLER.items():
        assert sheet.constant(name) == pytest.approx(exact, rel=2e-3)


# --- one photon ---


@given(st.floats(100e-9, 900e-9))
def test_a_photon_gives_wavelength_frequency_and_energy_back(wave: float) -> None:
    """Plain arithmetic with the data sheet's constants, every unknown from every other."""
    told = {"lamda": f"{wave!r} m", "f": f"{C / wave!r} Hz", "E": f"{H * C / wave!r} J"}
    exact = {"lamda": wave, "f": C / wave, "E": H * C / wave}
    for unknown in exact:
        for given_ in set(exact) - {unknown}:
            assert value("photon", unknown, **{given_: told[given_]}) == pytest.approx(exact[unknown], rel=1e-9)


def test_an_energy_in_electronvolts_is_typed_and_answered() -> None:
    """2,69 eV is right for the part in electronvolts, and so is the same in joules; 4,30 eV is not."""
    for text, right in (
        ("2,69 eV", True),
        ("2.69 eV", True),
        ("4,30e-19 J", True),
        ("4,30 eV", False),
        ("2,76 eV", False),
    ):
        data = {"question": "photoelectric.photon", "inputs": {"lamda": "462 nm"}, "find": "E"}
        reply = json.loads(
            desk.answer(json.dumps({"operation": "mark", "data": data | {"answers": {"E-in-eV": {"value": text}}}}))
        )
        (part,) = [one for one in reply["data"]["parts"] if one["part"] == "E-in-eV"]
        assert (part["state"] == "right") == right, text
    assert value("photon", "f", E="2 eV") == pytest.approx(2 * E / H)
    assert value("photon", "f", FULLER, E="2 eV") == pytest.approx(2 * codata.e / codata.h)


# --- published ---

SHORT_HC = {**FULLER, "h": 1240e-9 * codata.e / codata.c}  # the source rounds hc to 1240 eV·nm
WAYS = {  # by case: the question, the unknown, the names of what is given
    "silver-threshold": ("emission", "lamda_0", {"phi": "W_0"}, 1e9),
    "threshold-from-stopping": ("emission", "f_0", {"wavelength": "lamda", "V_stop": "V_s"}, 1.0),
    "photon-430nm": ("photon", "E", {"wavelength": "lamda"}, 1 / codata.e),
    "calcium-kinetic": ("emission", "E_k", {"wavelength": "lamda", "phi": "W_0"}, 1 / codata.e),
    "stopping-589nm": ("emission", "V_s", {"wavelength": "lamda", "phi": "W_0"}, 1.0),
    "magnesium": ("emission", "W_0", {"lambda_cutoff": "lamda_0"}, 1 / codata.e),
    "photon-420nm": ("photon", "E", {"wavelength": "lamda"}, 1.0),
    "silver-300nm": ("emission", "lamda_0", {"W0": "W_0"}, 1.0),
}


@pytest.mark.parametrize("case", WAYS)
def test_published_cases(case: str) -> None:
    """Each published answer comes out, with hc as its source has it and to its tolerance."""
    key, unknown, names, scale = WAYS[case]
    given_ = CHAPTER.cases[case]["given"]
    typed = {names[name]: f"{one['value']!r} {one['unit']}" for name, one in given_.items() if name in names}
    found = value(key, unknown, None if case == "photon-420nm" else SHORT_HC, **typed)
    assert found * scale == CHAPTER.published(case)


def test_published_constants_come_out_of_one_photon() -> None:
    """h in eV·s is the energy of a photon of 1 Hz, and hc in eV·nm that of 1 nm, with CODATA's constants."""
    assert value("photon", "E", FULLER, f="1e15 Hz") / codata.e / 1e15 == CHAPTER.published("h-in-electronvolts")
    assert value("photon", "E", FULLER, lamda="100 nm") / codata.e * 100 == CHAPTER.published("hc")


def test_the_published_light_that_ejects_nothing_from_silver() -> None:
    """The source's 300 nm lies beyond the threshold wavelength, and its photon has 4,13 eV of 4,73 eV."""
    worked = CHAPTER.solve("emission", "E_k", lamda="300 nm", W_0="4,73 eV")
    assert worked.values["E_m"] / E == pytest.approx(4.73 - 1240 / 300, abs=0.02)
    assert "E_k" not in worked.values


def test_planck_from_a_published_estimate() -> None:
    """The source's threshold, frequency and stopping potential are two points of a line with its gradient."""
    f_0, f, volts = (float(text) for text in CHAPTER.given("planck-estimate", "f_cutoff", "f", "V_stop"))
    low = f_0 + (f - f_0) / 4
    typed = {
        "f_P": f"{low!r} Hz",
        "E_P": f"{E * volts / 4!r} J",
        "f_Q": f"{f!r} Hz",
        "E_Q": f"{E * volts!r} J",
        "f_3": f"{f!r} Hz",
        "W_2": "2 eV",
    }
    assert CHAPTER.whole("graph", **typed).values["h"] == CHAPTER.published("planck-estimate")


def test_the_catalogues_reference_case() -> None:
    """400 nm on 3,2 × 10⁻¹⁹ J: f₀, E_k and v to three figures (common practice, no source)."""
    typed = {"lamda": "400 nm", "W_0": "3,2e-19 J"}
    expected = {"f_0": 4.83e14, "E_k": 1.77e-19, "v": 6.24e5}
    for name, rounded in expected.items():
        assert float(f"{value('emission', name, **typed):.2e}") == rounded


# --- emission ---

SIZES = {"lamda": "m", "f": "Hz", "E": "J", "W_0": "J", "f_0": "Hz", "lamda_0": "m", "E_k": "J", "v": "m/s", "V_s": "V"}
LEADS = [
    ("E_k", "lamda W_0"),
    ("E_k", "f f_0"),
    ("E_k", "v"),
    ("E_k", "lamda lamda_0"),
    ("v", "E W_0"),
    ("v", "V_s"),
    ("V_s", "lamda f_0"),
    ("V_s", "v"),
    ("W_0", "f E_k"),
    ("W_0", "lamda v"),
    ("W_0", "lamda_0"),
    ("f_0", "lamda V_s"),
    ("lamda_0", "E v"),
    ("lamda_0", "f_0"),
    ("f", "W_0 v"),
    ("lamda", "f_0 V_s"),
    ("E", "lamda_0 E_k"),
]


@pytest.mark.parametrize(("unknown", "names"), LEADS)
@given(work_=st.floats(2, 5), left=st.floats(0.1, 6))
def test_every_way_to_a_quantity_of_the_emission(unknown: str, names: str, work_: float, left: float) -> None:
    """A metal and a light made by plain arithmetic give each quantity back, from whatever is told of them."""
    work_function, kinetic = work_ * E, left * E
    energy = work_function + kinetic
    exact = {"E": energy, "f": energy / H, "lamda": H * C / energy, "W_0": work_function, "f_0": work_function / H}
    exact |= {"lamda_0": H * C / work_function, "E_k": kinetic, "v": (2 * kinetic / M) ** 0.5, "V_s": left}
    typed = {name: f"{exact[name]!r} {SIZES[name]}" for name in names.split()}
    assert value("emission", unknown, **typed) == pytest.approx(exact[unknown], rel=1e-6)


@pytest.mark.parametrize("unknown", ["E_k", "v", "V_s"])
def test_below_the_threshold_nothing_is_emitted_and_it_is_said(unknown: str) -> None:
    """No refusal: what is missing is worked out, and no intensity helps."""
    worked = CHAPTER.solve("emission", unknown, lamda="600 nm", W_0="2,9 eV")
    assert worked.values["E_m"] == pytest.approx(2.9 * E - H * C / 600e-9)
    assert not {"E_k", "v", "V_s"} & worked.values.keys()
    assert [point.words for part in worked.parts if part.key == "none" for point in part.points] == [
        "No: the energy of one photon is smaller than the work function (the frequency is below the threshold"
        " frequency), so there is no emission, and no kinetic energy, speed or stopping potential to be found.",
        "Brighter light brings more photons a second, but each electron takes one photon only: there is no emission,"
        " whatever the intensity.",
    ]
    assert worked.figure is not None
    assert "No electron leaves it." in worked.figure.description


def test_just_below_the_threshold_there_is_none_and_other_things_are_found_all_the_same() -> None:
    """A part in a thousand below it nothing is emitted; a threshold frequency has no need of an emission."""
    worked = CHAPTER.solve("emission", "E_k", f="6,993e14 Hz", f_0="7e14 Hz")
    assert worked.values["E_m"] == pytest.approx(H * 7e11)
    found = CHAPTER.solve("emission", "f_0", lamda="600 nm", W_0="2,9 eV").values
    assert found["f_0"] == pytest.approx(2.9 * E / H)
    assert "E_m" not in found


def test_the_supply_holds_electrons_back_where_the_stopping_potential_is_asked() -> None:
    """Else it pulls them to the collector."""
    for unknown, word in (("V_s", "slowed down"), ("E_k", "cross to the collector")):
        figure = CHAPTER.solve("emission", unknown, lamda="400 nm", W_0="2 eV").figure
        assert figure is not None
        assert word in figure.description


def test_at_the_threshold_emission_is_just_possible() -> None:
    """With f = f₀ the kinetic energy is zero and that is explained."""
    worked = CHAPTER.solve("emission", "E_k", f="7e14 Hz", f_0="7e14 Hz")
    assert worked.values["E_k"] == 0
    assert "Emission is just possible." in [point.words for part in worked.parts for point in part.points]


REFUSED = [
    (
        {"lamda": "400 nm", "W_0": "", "E_k": "-1e-19 J"},
        "W_0",
        "Kinetic energy cannot be negative: type zero at the threshold, else a value above zero.",
    ),
    (
        {"lamda": "400 nm", "E_k": "6e-19 J"},
        "W_0",
        "The kinetic energy is at least as large as the energy of one photon, so nothing would be left to free the"
        " electron. Check both: E_k must be smaller than hf.",
    ),
    (
        {"E_k": "3000 eV"},
        "v",
        "Classical formula unsuitable: at a tenth of the speed of light and above ½mv² no longer holds. Check the"
        " energies and the speed.",
    ),
    ({"lamda": "0 nm", "W_0": "2 eV"}, "E_k", "Wavelength must be greater than zero."),
    ({"f": "-3 Hz", "W_0": "2 eV"}, "E_k", "Frequency must be greater than zero."),
    ({"f": "9e14 Hz", "W_0": "0 eV"}, "E_k", "The work function must be greater than zero."),
]


@pytest.mark.parametrize(("typed", "unknown", "sentence"), REFUSED)
def test_what_cannot_be_is_refused(typed: dict[str, str], unknown: str, sentence: str) -> None:
    """Each refusal gives its reason and what to do."""
    assert sentence in CHAPTER.refused("emission", unknown, **typed)


LIGHT = {"lamda": "400 nm", "W_0": "3,2e-19 J"}
PHOTON_400 = H * C / 400e-9
SLIPS = [
    ("photon", "E", {"lamda": "400 nm"}, f"{H * 400e-9} J", "You put the wavelength in the place of the frequency."),
    ("emission", "E_k", LIGHT, f"{PHOTON_400 + 3.2e-19} J", "You added the work function."),
    ("emission", "E_k", LIGHT, f"{PHOTON_400} J", "You left out the work function."),
    ("emission", "f_0", {"W_0": "3,2e-19 J"}, f"{2 / H} Hz", "You left an energy in electronvolts. Multiply by"),
    ("emission", "v", {"E_k": "1,77e-19 J"}, f"{(1.77e-19 / M) ** 0.5} m/s", "You left out the ½ in ½mv²."),
    ("emission", "v", {"E_k": "1,77e-19 J"}, f"{2 * 1.77e-19 / M} m/s", "Take its square root."),
]


@pytest.mark.parametrize(("key", "unknown", "typed", "wrong", "said"), SLIPS)
def test_a_usual_mistake_is_named(key: str, unknown: str, typed: dict[str, str], wrong: str, said: str) -> None:
    """The number that each mistake of the catalogue gives is recognised as that mistake."""
    told = mistakes_said(f"photoelectric.{key}", typed, "find", wrong, unknown)
    assert any(said in line for line in told), told


# --- photons and electrons a second ---


@given(st.floats(0.1, 50), st.floats(150, 500), st.floats(1, 1e5))
def test_photons_electrons_and_current(milliwatts: float, nanometres: float, each: float) -> None:
    """Plain arithmetic: power over photon energy, one electron of so many photons, e each; every unknown back."""
    energy = H * C / (nanometres * 1e-9)
    photons = milliwatts * 1e-3 / energy
    exact = {"P": milliwatts * 1e-3, "lamda": nanometres * 1e-9, "k": each, "I": photons / each * E}
    units = {"P": "W", "lamda": "m", "k": "", "I": "A"}
    typed = {name: f"{size!r} {units[name]}" for name, size in exact.items()}
    for unknown, size in exact.items():
        rest = {name: text for name, text in typed.items() if name != unknown}
        assert value("intensity", unknown, **rest) == pytest.approx(size, rel=1e-6)


def test_never_more_electrons_than_photons() -> None:
    """A current that would need more electrons than photons arrive is refused with that reason."""
    told = CHAPTER.refused("intensity", "k", P="1 mW", lamda="400 nm", I="1 mA")
    assert told.startswith("Never more electrons than photons: each photon frees at most one electron.")
    for few in ("0,5", "0,999995"):
        told = CHAPTER.refused("intensity", "I", P="1 mW", lamda="400 nm", k=few)
        assert told == "Never more electrons than photons: one photon at least for each electron, so type 1 or more."


CHANGES = {
    "brighter": [
        "The intensity is raised while the frequency stays the same, above the threshold. Explain what happens to the"
        " current and to the maximum kinetic energy of the electrons.",
        "More photons arrive per second.",
        "More electrons are ejected per second.",
        "So the current increases.",
        "Photons of the same energy leave the maximum kinetic energy unchanged: intensity counts photons,"
        " frequency sets energy.",
    ],
    "photons-fixed": [
        "The frequency is raised while as many photons arrive per second as before. Explain what happens to the maximum"
        " kinetic energy of the electrons and to the saturation current.",
        "Each photon has more energy (E = hf), while the work function is the same.",
        "So the maximum kinetic energy increases.",
        "As many photons free as many electrons per second: the saturation current stays the same.",
    ],
    "power-fixed": [
        "The frequency is raised while the intensity stays the same. Explain what happens to the maximum kinetic energy"
        " of the electrons and to the saturation current.",
        "Each photon has more energy, so the maximum kinetic energy increases.",
        "The same power is carried by fewer photons per second.",
        "With the same share of photons, fewer electrons are ejected and the saturation current decreases.",
    ],
}


def test_the_changes_of_the_light_are_offered_in_words() -> None:
    """Each says what is held fixed."""
    assert [words for _, words in find("photoelectric.intensity")[1].find("change").options] == [
        "the light is made brighter, of the same frequency",
        "the frequency is raised, with as many photons a second",
        "the frequency is raised, at the same intensity",
    ]


@pytest.mark.parametrize("change", CHANGES)
def test_what_brightness_and_colour_do(change: str) -> None:
    """What is held fixed decides what the current does, word for word; a usual photocurrent needs no warning."""
    worked = CHAPTER.solve("intensity", "I", P="1 mW", lamda="300 nm", k="50", change=change)
    (part,) = [part for part in worked.parts if part.key == "change"]
    assert [part.ask, *(point.words for point in part.points)] == CHANGES[change]
    assert not worked.warnings
    assert not CHAPTER.solve("intensity", "P", I="5 nA", lamda="300 nm", k="50").warnings


# --- graphs ---


@given(st.floats(4e14, 8e14), st.floats(1.1, 1.6), st.floats(1.7, 3))
def test_a_line_gives_its_constants_back(first: float, near: float, far: float) -> None:
    """numpy's line through the two points has the gradient, the intercept and the threshold that are found."""
    points = [(first * share, H * first * (share - 1)) for share in (near, far)]
    slope, start = np.polyfit(*zip(*[(x / 1e14, y / 1e-19) for x, y in points], strict=True), 1)
    (f_p, e_p), (f_q, e_q) = points
    typed = {"f_P": f"{f_p!r} Hz", "E_P": f"{e_p!r} J", "f_Q": f"{f_q!r} Hz", "E_Q": f"{e_q!r} J"}
    found = CHAPTER.whole("graph", **typed, f_3=f"{f_q!r} Hz", also="inverse").values
    assert found["h"] == pytest.approx(slope * 1e-33, rel=1e-6)
    assert found["W_0"] == pytest.approx(-start * 1e-19, rel=1e-6)
    assert found["f_0"] == pytest.approx(first, rel=1e-6)
    assert found["k"] == pytest.approx(slope * 1e-33 * C, rel=1e-6)


ON_A_LINE = {"f_P": "7e14 Hz", "E_P": "1,32e-19 J", "f_Q": "1,2e15 Hz", "E_Q": "4,64e-19 J"}


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"f_Q": "7e14 Hz"}, "f_Q"),
        ({"f_Q": "6e14 Hz"}, "f_Q"),
        ({"E_Q": "1,32e-19 J"}, "E_Q"),
        ({"E_Q": "1e-19 J"}, "E_Q"),
        ({"E_P": "4,6e-19 J"}, "E_P"),
    ],
)
def test_points_that_make_no_line_of_a_metal_are_refused_at_their_box(changed: dict[str, str], field: str) -> None:
    """Q lies to the right of P and above it, and the line begins at a frequency above zero."""
    assert CHAPTER.refusal("graph", **{**ON_A_LINE, **changed})[0] == field


@pytest.mark.parametrize(("off", "right"), [(1.045, True), (0.955, True), (1.055, False), (0.945, False)])
def test_an_energy_read_off_the_line_may_be_five_per_cent_off(off: float, right: bool) -> None:
    """As much as an eye and a pencil allow (common practice, no source)."""
    exact = (4.64e-19 - 1.32e-19) / 5e14 * 3e14 + 1.32e-19
    inputs = {**find("photoelectric.graph")[1].example, **ON_A_LINE, "f_3": "1e15 Hz"}
    data = {"question": "photoelectric.graph", "inputs": inputs, "answers": {"read": {"value": f"{exact * off!r} J"}}}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    (part,) = [one for one in reply["data"]["parts"] if one["part"] == "read"]
    assert (part["state"] == "right") == right


def test_both_lines_are_drawn_from_their_own_work_functions() -> None:
    """Parallel, each from the axis of frequency on; the meaning of the line is asked for four marks."""
    worked = CHAPTER.whole("graph", **ON_A_LINE, W_2="2,9 eV")
    (part,) = [part for part in worked.parts if part.draws is not None]
    assert part.draws is not None
    lines = [item.points for item in part.draws().items if isinstance(item, Curve) and item.kind == "graph"]
    starts, ends = [points[0] for points in lines], [points[-1] for points in lines]
    slopes = [(y - v) / (x - u) for (u, v), (x, y) in zip(starts, ends, strict=True)]
    assert slopes[0] == pytest.approx(slopes[1])
    assert starts[1][0] > starts[0][0] > 0
    assert starts[0][1] == pytest.approx(starts[1][1])
    assert worked.figure is not None
    assert worked.figure.description.endswith("continued dashed down to the axis of energy.")
    (meaning,) = [part for part in worked.parts if part.key == "meaning"]
    assert meaning.ask.endswith("why is the line dashed below the axis?")
    assert [point.marks for point in meaning.points] == [1, 1, 1, 1]


ROWS = [(4.5e14, 0.0), (6e14, 0.66e-19), (7e14, 1.36e-19), (8e14, 1.93e-19), (9.1e14, 2.74e-19)]


def table(rows: list[tuple[float, float]]) -> list[dict[str, str]]:
    """Readings as typed."""
    return [{"f": f"{f!r} Hz", "E": f"{energy!r} J"} for f, energy in rows]


def fitted(rows: list[tuple[float, float]]) -> WorkedAnswer:
    """The worked answer for a table of readings."""
    topic, question = find("photoelectric.readings")
    return work(topic, question, read(question, {"readings": table(rows)}))


def test_the_best_line_is_scipys() -> None:
    """Gradient, intercept and the standard errors of both are scipy's, without the reading of zero, which is told."""
    used = ROWS[1:]
    exact = stats.linregress([f for f, _ in used], [energy for _, energy in used])
    worked = fitted(ROWS)
    assert worked.values["h"] == pytest.approx(exact.slope, rel=1e-9)
    assert worked.values["W_0"] == pytest.approx(-exact.intercept, rel=1e-9)
    assert worked.values["Deltah"] == pytest.approx(exact.stderr, rel=1e-6)
    assert worked.values["DeltaW_0"] == pytest.approx(exact.intercept_stderr, rel=1e-6)
    assert any("Left out of the line, for nothing was emitted: the reading of zero at" in one for one in worked.notes)


def test_an_outlier_is_pointed_out_explained_and_kept() -> None:
    """A reading far from the line of the others is named in a warning and still counts; the others are not named."""
    rows = [*ROWS, (10e14, 2.2e-19), (11e14, 3.95e-19)]
    rest = [*ROWS[1:], rows[-1]]
    line = stats.linregress(*zip(*rest, strict=True))
    off = line.intercept + line.slope * 10e14 - 2.2e-19
    worked = fitted(rows)
    (told,) = worked.warnings
    assert told.replace("\xa0", " ") == (
        f"Reading 6 (1 × 10¹⁵ Hz and 2,2 × 10⁻¹⁹ J) lies {off * 1e19:.2f} × 10⁻¹⁹ J below the line of all the others,"
        " further than their scatter explains. It has not been left out. Look for a slip in reading or typing, light of"
        " another colour that came through the filter, or a metal that was not clean, and take this reading again."
    ).replace(".", ",", 1)
    assert worked.values["h"] == pytest.approx(stats.linregress(*zip(*rows[1:], strict=True)).slope, rel=1e-9)
    assert not fitted(ROWS).warnings


def test_a_reading_above_the_line_of_the_others_is_said_to_be_above() -> None:
    """However little the joules are."""
    (told,) = fitted([*ROWS, (10e14, 5e-19), (11e14, 3.95e-19)]).warnings
    assert " above the line of all the others, further than their scatter explains." in told


@pytest.mark.parametrize(("zero", "warned"), [(4.5e14, False), (7.5e14, True)])
def test_nothing_emitted_above_the_threshold_is_pointed_out(zero: float, warned: bool) -> None:
    """A reading of zero belongs below the threshold frequency of the line."""
    told = fitted([(zero, 0.0), *ROWS[1:]]).warnings
    assert any(one.startswith("Nothing was emitted at") and "take this reading again." in one for one in told) == warned


SLOPE = float(stats.linregress(*zip(*ROWS[1:], strict=True)).slope)


@pytest.mark.parametrize(
    ("part", "wrong", "said"),
    [
        ("gradient", SLOPE * 1e14, "You left out the power of ten."),
        ("gradient", 1 / SLOPE, "You turned the gradient upside down."),
        (
            "gradient",
            sum(e for _, e in ROWS[1:]) / sum(f for f, _ in ROWS[1:]),
            "You drew the line through the origin.",
        ),
        ("work", 6.9e-19, "You added the kinetic energy."),
    ],
)
def test_a_usual_mistake_with_readings_is_named(part: str, wrong: float, said: str) -> None:
    """The number that each gives, from scipy's line, is recognised."""
    if part == "work":
        f_m, e_m = (sum(column) / 4 for column in zip(*ROWS[1:], strict=True))
        wrong = SLOPE * f_m + e_m
    value_ = f"{wrong!r} {'J' if part == 'work' else 'J s'}"
    told = mistakes_said("photoelectric.readings", {"readings": table(ROWS)}, part, value_)
    assert any(said in line for line in told), told


@pytest.mark.parametrize(
    ("rows", "words"),
    [
        (ROWS[:3], "At least three readings with a kinetic energy above zero"),
        ([(6e14, 1e-19), (6e14, 2e-19), (6e14, 3e-19)], "All readings have the same frequency"),
        ([(6e14, 3e-19), (7e14, 2e-19), (8e14, 1e-19)], "Check whether the columns are exchanged."),
        ([(6e14, 3e-19), (7e14, 3.1e-19), (8e14, 3.2e-19)], "at a frequency of zero or less"),
    ],
)
def test_readings_that_make_no_line_are_refused(rows: list[tuple[float, float]], words: str) -> None:
    """Each refusal of a table says what is wrong with it."""
    with pytest.raises(Refusal) as caught:
        fitted(rows)
    assert words in caught.value.sentence


def test_the_line_is_dashed_below_the_axis() -> None:
    """Solid above the axis of frequency only; the dashed part ends at minus the work function."""
    figure = fitted(ROWS).figure
    assert figure is not None
    solid = [item for item in figure.items if isinstance(item, Curve) and item.kind == "graph"]
    dashed = [item for item in figure.items if isinstance(item, Curve) and item.kind == "extrapolation"]
    assert len(solid) == len(dashed) == 1
    assert min(y for _, y in solid[0].points) == pytest.approx(max(y for _, y in dashed[0].points))
    assert min(x for x, _ in dashed[0].points) == pytest.approx(0)


# --- levels and metals ---


@pytest.mark.parametrize("way", ["emits", "absorbs"])
@given(low=st.floats(-13, -4), step=st.floats(0.5, 3.5))
def test_a_photon_is_the_step_between_two_levels(way: str, low: float, step: float) -> None:
    """Plain arithmetic in electronvolts: every unknown from the others."""
    exact = {"E_1": low * E, "E_2": (low + step) * E, "E": step * E, "f": step * E / H, "lamda": H * C / (step * E)}
    units = {"E_1": "J", "E_2": "J", "E": "J", "f": "Hz", "lamda": "m"}
    typed = {name: f"{size!r} {units[name]}" for name, size in exact.items()}
    for unknown, names in (("f", "E_1 E_2"), ("lamda", "E_1 E_2"), ("E_2", "E_1 lamda"), ("E_1", "E_2 f")):
        found = value("levels", unknown, None, way=way, **{name: typed[name] for name in names.split()})
        assert found == pytest.approx(exact[unknown], rel=1e-6)


@pytest.mark.parametrize(("way", "down"), [("emits", True), ("absorbs", False)])
def test_the_arrow_between_levels_points_the_way_of_the_electron(way: str, down: bool) -> None:
    """Down where a photon is sent out, up where one is taken in."""
    figure = CHAPTER.solve("levels", "f", way=way, E_1="-5 eV", E_2="-3 eV").figure
    assert figure is not None
    (arrow,) = [item for item in figure.items if isinstance(item, Arrow)]
    assert (arrow.end[1] < arrow.start[1]) == down


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        (
            {"E_1": "-3 eV", "E_2": "-5 eV"},
            "The upper level must lie above the lower one: a level with a minus sign lies below zero, and −2 eV lies"
            " above −3 eV. Check both.",
        ),
        ({"E_1": "-5 eV", "f": "0 Hz"}, "Frequency must be greater than zero."),
        ({"E_1": "-5 eV", "lamda": "-300 nm"}, "Wavelength must be greater than zero."),
    ],
)
def test_levels_that_cannot_be_are_refused(typed: dict[str, str], sentence: str) -> None:
    """The upper level lies above the lower one; sizes are above zero."""
    assert CHAPTER.refused("levels", "E_2" if "E_2" not in typed else "f", **typed) == sentence


LINES = {
    "emits": [
        "Explain why a hot gas of such atoms sends out a spectrum of separate lines.",
        "The atoms have certain energy levels only.",
        "When an electron falls to a lower level, a photon with the difference of the two levels is sent out.",
        "So only certain frequencies occur, and each is a bright line.",
    ],
    "absorbs": [
        "White light passes through a cool gas of such atoms. Explain why there are dark lines in its spectrum.",
        "The atoms have certain energy levels only.",
        "An electron rises to a higher level by taking in a photon with the difference of the two levels.",
        "These frequencies are taken out of the light (and sent out again in all directions), so there is a dark line"
        " for each: the same lines that the hot gas sends out.",
    ],
}


@pytest.mark.parametrize("way", LINES)
def test_why_a_spectrum_has_lines(way: str) -> None:
    """Word for word, a mark each; usual levels need no warning."""
    worked = CHAPTER.solve("levels", "lamda", way=way, E_1="-5 eV", E_2="-3 eV")
    (part,) = [part for part in worked.parts if part.key == "lines"]
    assert [part.ask, *(point.words for point in part.points)] == LINES[way]
    assert [point.marks for point in part.points] == [1, 1, 1]
    assert not worked.warnings
    assert not CHAPTER.solve("levels", "E_2", way=way, E_1="-5 eV", lamda="500 nm").warnings


def test_the_table_of_metals_is_that_of_the_question() -> None:
    """The page has the work functions the question uses, and the wavelengths that follow from them."""
    page = (Path(__file__).parents[2] / "docs" / "photoelectric.md").read_text(encoding="utf-8")
    rows = re.findall(r"^\| (\w+) \| (\d,\d+) \| (\d+) \|$", page, re.M)
    assert {name: float(size.replace(",", ".")) for name, size, _ in rows} == METALS
    for name, _, nanometres in rows:
        assert int(nanometres) == pytest.approx(H * C / (METALS[name] * E) * 1e9, abs=0.6)


@pytest.mark.parametrize("first", METALS)
def test_a_metal_emits_where_the_photon_is_larger_than_its_work_function(first: str) -> None:
    """The verdict for each metal of the table follows from 1240 eV·nm over the wavelength (hc, published)."""
    second = "lead" if first != "lead" else "zinc"
    for nanometres in (280, 350, 480, 600):
        worked = CHAPTER.solve("metals", first=first, second=second, lamda=f"{nanometres} nm")
        told = next(part for part in worked.parts if part.key == "emits-1").points[0].words
        assert told.startswith("Yes" if 1240 / nanometres > METALS[first] else "No")


@pytest.mark.parametrize(("against", "side"), [(False, 1), (True, -1)])
def test_the_polarity_of_a_photocell(against: bool, side: int) -> None:
    """The positive plate is joined to the positive terminal; electrons leave the cathode, away from its plate."""
    figure = photocell(against=against)
    plates = {item.sign: item.start[0] for item in figure.items if isinstance(item, Plate)}
    assert plates["+"] < 0 < plates["-"]
    light, electron = [item for item in figure.items if isinstance(item, Arrow)]
    assert light.end[0] * side > 0
    assert electron.start[0] * side > 0
    assert (electron.end[0] - electron.start[0]) * side < 0
    pole = "positive" if against else "negative"
    assert f"the cathode is at the {pole} terminal" in figure.description


# --- whole questions ---


def test_the_gate_against_plain_arithmetic() -> None:
    """Work function, kinetic energy, speed and the comparison, from the two wavelengths alone."""
    values = CHAPTER.whole("gate", lamda_0="560 nm", lamda="420 nm", W_2="3,7 eV").values
    left = H * C * (1 / 420e-9 - 1 / 560e-9)
    assert values["W_0"] == pytest.approx(H * C / 560e-9)
    assert values["E_k"] == pytest.approx(left)
    assert values["v"] == pytest.approx((2 * left / M) ** 0.5)
    assert values["E_d"] == pytest.approx(H * C / 420e-9 - 3.7 * E)
    assert CHAPTER.refusal("gate", lamda="570 nm")[0] == "lamda"


def test_the_plate_against_plain_arithmetic() -> None:
    """Photons, electrons, charge and the last potential."""
    values = CHAPTER.whole("craft", f="1,6e15 Hz", W_0="4,2 eV", P="5 mW", k="80", t="2 s").values
    assert values["N"] == pytest.approx(5e-3 / (H * 1.6e15))
    assert values["Q"] == pytest.approx(5e-3 / (H * 1.6e15) / 80 * 2 * E)
    assert values["V_s"] == pytest.approx(H * 1.6e15 / E - 4.2)
    assert CHAPTER.refusal("craft", f="9e14 Hz")[0] == "f"


@pytest.mark.parametrize(("third", "enough"), [("-3,7 eV", False), ("-2,4 eV", True)])
def test_the_lamp_against_plain_arithmetic(third: str, enough: bool) -> None:
    """Wavelength and stopping potential from the levels, and what the smaller step does."""
    worked = CHAPTER.whole("lamp", E_1="-10,4 eV", E_2="-5,5 eV", E_3=third, W_0="2,3 eV")
    assert worked.values["lamda"] == pytest.approx(H * C / (4.9 * E))
    assert worked.values["V_s"] == pytest.approx(2.6)
    told = next(part for part in worked.parts if part.key == "weaker").points[0].words
    assert told.startswith("Yes" if enough else "No")
    assert CHAPTER.refusal("lamp", W_0="5,2 eV")[0] == "W_0"


# --- practice ---


@pytest.mark.parametrize("key", KEYS)
def test_practice_draws_light_that_can_be(key: str) -> None:
    """At every level twelve draws give ten sets of data at least, and keep the mistakes apart from the answer."""
    topic, question = find(f"photoelectric.{key}")
    for level in (1, 2, 3):
        drawn = [draw(topic, question, seed, level, DRAWS) for seed in range(12)]
        assert len({json.dumps(one.inputs, sort_keys=True) for one in drawn}) >= 10
        assert sum(one.apart for one in drawn) >= 10


def test_practice_never_draws_two_metals_that_stay_dark_nor_photons_out_of_the_ultraviolet() -> None:
    """One metal at least emits; a photon whose energy follows from a current has 3 eV to 6 eV."""
    for key in ("metals", "intensity"):
        topic, question = find(f"photoelectric.{key}")
        for seed in range(24):
            one = draw(topic, question, seed, 2 + seed % 2, DRAWS)
            worked = work(topic, question, read(question, one.inputs, one.find))
            if key == "metals":
                told = [part.points[0].words for part in worked.parts if part.key.startswith("emits")]
                assert any(words.startswith("Yes") for words in told), one.inputs
            else:
                assert 3 * E < worked.values["E"] < 6 * E, one.inputs
                assert "." not in str(one.inputs["P"]), "as written here, with a comma"
