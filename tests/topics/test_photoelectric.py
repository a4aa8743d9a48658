"""The photoelectric effect: published cases, independent routes for every unknown, limits, refusals, words."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants as codata

from calc import desk
from calc.model.constants import Settings
from calc.practice.drawing import DRAWS, draw
from calc.topics import find, topics
from calc.working.reading import read
from calc.working.working import work
from tests.topics.asking import Chapter

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
    assert value("photon", "f", E="2 eV") == pytest.approx(2 * codata.e / H)


# --- practice ---


@pytest.mark.parametrize("key", KEYS)
def test_practice_draws_light_that_can_be(key: str) -> None:
    """At every level twelve draws give ten sets of data at least, and keep the mistakes apart from the answer."""
    topic, question = find(f"photoelectric.{key}")
    for level in (1, 2, 3):
        drawn = [draw(topic, question, seed, level, DRAWS) for seed in range(12)]
        assert len({json.dumps(one.inputs, sort_keys=True) for one in drawn}) >= 10
        assert sum(one.apart for one in drawn) >= 10
