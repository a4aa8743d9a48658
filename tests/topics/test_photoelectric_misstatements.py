"""Brighter is faster, higher is more: in the words of learners, and right sentences that are like them.

The sentences are of our own; that learners hold these beliefs is common practice, no source.
"""

from time import process_time

import pytest

from calc.marking.misstatements import misstatements_said
from calc.model.questions import Misstatement
from calc.topics.photoelectric.misstatements import (
    DARK,
    ENOUGH,
    FASTER,
    FASTER_HERE,
    FREES_MORE,
    FREES_MORE_HERE,
    LIGHT,
)
from tests.topics.asking import statement_marked

BRIGHTER_FASTER = """
Brighter light makes faster electrons.
brighter light makes the electrons move faster
Brighter light gives the electrons more kinetic energy.
A greater intensity increases the kinetic energy of the electrons.
Greater intensity increases kinetic energy
If the intensity is increased, the maximum kinetic energy of the electrons increases.
When the light is made brighter, the electrons are ejected at a higher speed.
As the intensity increases the speed of the electrons also increases.
The kinetic energy increases because the light is brighter.
The electrons move faster when the light is brighter.
The electrons come out faster because the intensity is higher.
More intense light has photons with more energy.
Brighter light means each photon has more energy.
If the light is brighter the photons have more energy.
The kinetic energy depends on the intensity of the light.
Ek is directly proportional to the intensity.
Intensity determines the kinetic energy.
The intensity of the light affects the speed of the electrons.
The brighter the light, the faster the electrons.
Stronger light knocks the electrons out harder.
More light gives the electrons more energy.
The electrons get more energy from the brighter light.
Doubling the intensity doubles the kinetic energy.
With twice the intensity the electrons have twice the energy
Because the light is more intense, the electrons leave with a greater velocity.
An increase in intensity will increase Ek
The light is brighter so E_k is larger.
If we make it brighter, the maximum kinetic energy will be greater.
Brighter light = faster electrons
brighter light so the ke increases
A stronger beam gives more energetic electrons.
The higher the intensity the higher the kinetic energy of the ejected photoelectrons.
brightness increases, therefore more electrons are emitted and their kinetic energy increases
Increasing the brightness raises the maximum kinetic energy.
The stopping potential increases if the intensity is increased.
The light being brighter makes the electrons travel faster.
A brighter lamp gives each electron more energy.
The electrons will have a higher velocity because of the greater intensity.
If you increase the brightness, the electrons' speed goes up.
Since the light is more intense, each photon carries more energy.
The energy of the electrons increases when intensity increases.
The energy of the photons increases with intensity.
Raising the light's intensity means that the kinetic energy is larger.
Increasing intensity increases both the current and the kinetic energy.
The intensity of light increases, so does the kinetic energy of electrons.
The electrons are ejected with greater energy by brighter light.
when we use brighter light the electrons shoot out faster
As light intensity increases, photon energy increases
The brighter light hits harder so the electrons have more kinetic energy.
The electrons are faster due to the brighter light.
Because the intensity is greater, so is the kinetic energy.
A more intense beam means the electrons come off with more speed.
Ek increases as the intensity increases.
If light intensity is doubled Ek doubles.
The intensity sets the energy of the electrons.
Light with a greater intensity has more energetic photons.
""".strip().splitlines()
FASTER_ALONE = """
The electrons move faster.
The maximum kinetic energy of the electrons increases.
The current increases and the kinetic energy also increases.
More electrons are ejected and they have more kinetic energy.
The current increases, and so does the speed: the electrons are faster.
Ek increases
Their kinetic energy becomes larger.
Each photon has more energy, so the electrons have more energy.
The photons carry more energy.
The speed of the electrons is higher.
the kinetic energy of the emitted electrons will increase
More photons per second, faster electrons.
Each electron gets more energy.
Both current and maximum kinetic energy increase
The current becomes larger because the electrons move faster.
The electrons gain more kinetic energy since they absorb more light.
The electrons will be faster
electrons have higher kinetic energy
The kinetic energy doubles.
Maximum kinetic energy rises as well
The electrons' kinetic energy increases.
the electrons' speed increases
Electrons leave the metal with more energy.
The current increases and Ek max increases.
The kinetic energy would increase.
KE of electrons goes up
they will have more kinetic energy
The light has more energy so the electrons have more kinetic energy
The electrons fly off faster.
so they move faster
The electrons have more energy
Max Ek is greater
The kinetic energy of the photo-electrons is bigger
The current and the maximum kinetic energy will both be larger.
Speed of electrons increases, current increases.
More energy for each electron.
They gain extra kinetic energy.
""".strip().splitlines()
HIGHER_MORE = """
A higher frequency gives more electrons.
Higher frequency means a larger current.
If the frequency increases, more electrons are ejected.
When the frequency of the light is raised the current increases.
The current increases because the frequency is higher.
More electrons are emitted when the frequency is increased.
The number of electrons depends on the frequency.
The current is directly proportional to the frequency.
The higher the frequency the more electrons are freed.
The higher the frequency, the larger the current.
Light of a higher frequency ejects more photoelectrons.
Increasing the frequency increases the current.
A higher frequency has more photons.
Ultraviolet light frees more electrons.
A shorter wavelength gives a larger photocurrent.
The number of electrons emitted per second increases with the frequency when the frequency increases.
If the frequency is higher, the rate of emission increases.
Higher frequency, so more photoelectrons
A greater frequency ejects a larger number of electrons.
Raising the frequency gives a stronger current
With a higher frequency there are more electrons.
a higher frequency knocks out more electrons
When f increases the current increases
Light with higher frequency releases more electrons
The current increases with frequency.
As the frequency increases, the number of emitted electrons increases.
Increasing frequency means more photons hit the metal.
High frequency light frees more electrons
Blue light gives more current than red.
The larger frequency makes more electrons come out.
More electrons leave due to the higher frequency.
Since the frequency is larger, more electrons leave the metal each second.
""".strip().splitlines()
MORE_ALONE = """
More electrons are ejected.
The current increases.
The saturation current increases too.
The electrons are faster, so the current increases.
The electrons have more energy and more of the electrons escape, so more electrons are emitted.
The current will be larger.
A larger current flows.
Ek increases and the current increases.
Photons have more energy so they free more electrons per second.
The number of electrons ejected per second increases.
the saturation current becomes higher
The photocurrent is greater because the electrons move faster.
The kinetic energy and the saturation current both increase.
There are more photons.
More photoelectrons are emitted per second
The current gets bigger.
current goes up
Ammeter reading increases because the current increases
There will be more electrons emitted, so a greater current.
more photo-electrons are released
The photocurrent increases
The current also increases because the electrons are faster
The number of photoelectrons increases
More electrons per second leave the surface.
The current would increase
The current becomes bigger because the electrons arrive quicker.
A higher saturation current.
more electrons will leave the metal
Current rises
The rate of emission of electrons increases.
The ammeter shows a larger current.
""".strip().splitlines()
BRIGHT_ENOUGH = """
If the light is much brighter electrons are emitted.
If the light is bright enough electrons will be emitted.
Brighter light gives the electrons enough energy to escape.
Brighter light will free electrons.
Electrons are emitted when the light is brighter.
Emission starts if the intensity is increased.
With a higher intensity electrons can escape.
Electrons will be ejected if the light is bright enough.
The photons add up to the work function.
An electron can absorb several photons until it has enough.
The electrons collect energy until they can leave.
After a while the electrons have enough energy.
No, but if the light is made brighter, electrons will be emitted.
A brighter lamp would work.
Increasing the intensity will cause emission.
The electron takes two photons.
If it is brighter, then electrons come out.
More light means that electrons are released.
The energy builds up and then electrons leave.
Yes, if we make the light bright enough.
If the light is made much brighter, electrons will start to be emitted.
The electrons need brighter light to be emitted.
A more intense light would be able to eject electrons.
Two photons together have enough energy.
Many photons together have enough energy to free an electron.
More photons give more energy so electrons are ejected.
If the intensity increases the electrons get enough energy and are released.
Then more photons hit the electron and it will escape.
Brighter light would give a small current.
Only if the light is bright enough will electrons come out.
When the lamp is brighter there is enough energy for emission.
Making the light brighter will make electrons come out.
No because the light is not bright enough.
The light is too weak to free electrons.
It will emit if more light falls on it.
""".strip().splitlines()
RIGHT_EVERYWHERE = """
Brighter light makes more electrons, not faster ones.
Brighter light does not make the electrons faster.
Intensity counts photons; frequency sets energy.
The intensity does not affect the kinetic energy.
The kinetic energy does not depend on the intensity.
The kinetic energy depends on the frequency only.
A higher frequency gives each photon more energy.
A higher frequency gives faster electrons, not more electrons.
If the frequency is raised, the kinetic energy increases.
The number of electrons does not depend on the frequency.
The current does not depend on the frequency.
Even if the light is brighter, no electrons are emitted.
Brighter light does not help.
However bright the light is, no electron is emitted.
No matter how bright the light, no electrons leave the metal.
There is no emission, whatever the intensity.
Brighter light brings more photons, but each electron takes one photon only.
Brighter light has more photons but none has enough energy.
Making it brighter only gives more photons, each of which still has too little energy.
The energy of one photon is smaller than the work function.
Each electron absorbs one photon only, so photons do not add up.
An electron cannot absorb two photons.
The photon energy is too small, no matter the intensity.
Nothing changes if the light is brighter, since each photon has less than the work function.
If the light is brighter, there are more photons per second but still no electrons are emitted.
Increasing the intensity will not cause emission.
It will not work with brighter light either.
The brighter light changes nothing.
Only light of a higher frequency would free electrons.
Electrons are emitted only if the frequency is higher than the threshold frequency.
Below the threshold frequency there is no emission.
Some people think that brighter light makes the electrons faster.
It is wrong that brighter light gives faster electrons.
The photon of higher frequency has more energy and frees an electron.
The gradient is Planck's constant; the intercept is the threshold frequency.
With brighter light, the electrons would still not have enough energy.
Waiting longer does not help, because energy does not build up.
Brighter light frees no electrons.
The photons have a higher frequency and so each electron leaves with more kinetic energy.
The light has too low a frequency, so brightness plays no part.
No electrons are emitted, even when the light is much brighter.
Electrons are not emitted when the light is brighter.
Brighter light means more photons per second, not photons with more energy.
Brighter light consists of more photons, and not of photons with more energy.
Brighter light has more photons of the same energy.
No. The photon energy is smaller than the work function. Brighter light only increases the number of photons.
Yes, the photon energy is larger than the work function.
The electrons are slower than those of A because less energy is left over.
Electrons are emitted because the photon energy is greater than the work function.
No, hf is less than W0, so no electrons come out however intense the light.
There are more photons in brighter light, but every photon has too little energy.
An electron that absorbs one photon cannot save its energy.
If brighter light is used, the number of photons increases but their energy does not.
It makes no difference how bright the light is.
The intensity of the light has no effect.
The brightness makes no difference because one electron absorbs only one photon.
Making the light brighter will not release any electrons.
The work function is greater than the energy of a photon.
Not even very bright light can free electrons.
Very bright light cannot free electrons.
Light of low frequency does not free electrons even when it is very bright.
The photon energy is larger than the work function, so electrons are emitted.
The gradient is h, the energy intercept is minus the work function.
More photons do not help.
More photons per second arrive, but the energy of each is too small to free an electron.
Brighter light only gives more photons and each photon frees no electron.
The energy of a photon of red light is too small, so even a strong lamp does not free electrons.
Higher intensity means more photons, not more energy per photon.
Intensity has nothing to do with the energy of one photon.
With a brighter lamp nothing happens: no electron gets enough energy from its one photon.
Bright light cannot help because one photon gives its energy to one electron.
Brightness only changes the number of photons.
The frequency is below the threshold, so no matter how much the intensity is increased no electrons are emitted.
It does not depend on the intensity but on the frequency.
Yes. The photon has more energy than the work function.
The electrons leave with the rest of the energy as kinetic energy.
The kinetic energy is the photon energy minus the work function.
""".strip().splitlines()
RIGHT_WHEN_BRIGHTER = """
The current increases but the kinetic energy stays the same.
The current increases while the maximum kinetic energy of the electrons remains constant.
The electrons do not move faster.
Their kinetic energy does not increase.
The electrons have the same speed as before.
The energy of each photon does not change.
More energy arrives per second.
More photons bring more energy per second, but each has the same energy.
The number of photons increases, so the number of electrons increases.
The maximum kinetic energy is not affected.
No electron is faster.
Each photon still has the same energy hf, so the kinetic energy stays the same.
Only a higher frequency would make the electrons faster.
The frequency is unchanged so Ek is unchanged; only the current becomes larger.
The kinetic energy is unaffected, the current is larger.
The current increases because more electrons leave per second, not because they are faster.
The kinetic energy depends only on the frequency, which is the same.
More photons hit the metal, so more electrons are released and the current is greater, yet none of them is faster.
Ek(max) remains the same because the photon energy is unchanged.
Since kinetic energy depends on frequency and the frequency is not raised, it stays the same.
KE stays the same.
The speed of the electrons stays the same.
Number of electrons goes up, energy of each stays the same.
More photons, so more electrons; a larger current. Ek doesn't change.
The electrons' kinetic energy remains unchanged.
The frequency isn't changed, so the photon energy and Ek don't change.
There is no change in kinetic energy.
Kinetic energy: no change. Current: increases.
The max kinetic energy will not be higher.
Current is greater, kinetic energy is the same.
The current is larger because more electrons flow each second.
The total energy of all the electrons increases.
A larger current, but electrons of the same energy.
The kinetic energy of the electrons does not increase but more electrons are emitted, so the current increases.
Brighter means more photons: more electrons: more current. Same photon energy: same Ek.
Since hf is unchanged the electrons are as fast as before.
The light has more photons, each of energy hf as before.
Ek = hf - W0 does not change as f and W0 do not change.
The electrons are no faster.
The electrons will not have more energy.
The maximum kinetic energy neither increases nor decreases.
current up, Ek same
There are more electrons with the same maximum kinetic energy, so a larger current.
The kinetic energy isn't larger.
The photon energy stays hf, hence the speed cannot increase.
""".strip().splitlines()
RIGHT_WHEN_HIGHER = """
Each photon has more energy, so the maximum kinetic energy increases.
The saturation current stays the same because the number of photons is the same.
The current does not increase.
The number of electrons per second is unchanged.
As many photons free as many electrons, so the current is unchanged.
Not more electrons, but faster ones.
There are no more electrons than before.
Fewer photons arrive per second, so fewer electrons are ejected and the current decreases.
The kinetic energy increases but the current stays constant.
More energetic electrons leave the metal.
Each photon gives more energy to the electron.
The same number of photons per second, thus the same number of electrons per second: same current.
The electrons leave with more kinetic energy.
The speed of the electrons is larger; the current is not.
There are fewer photons per second, so the current becomes smaller.
More energy per photon means fewer photons for the same power.
Only brighter light would free more electrons.
The current decreases because fewer electrons are emitted each second.
For the current to increase, the intensity would have to be increased.
The current is not affected.
The saturation current remains unchanged while the electrons are faster.
The number of electrons stays the same, their kinetic energy increases.
The electrons gain more energy.
It is not true that more electrons are emitted.
The current stays the same although the electrons move faster.
The photon energy increases and Ek increases.
The energy of the electrons is larger.
Each electron leaves with more energy, but the number of electrons does not increase.
As many electrons as before leave in a second.
The number of emitted electrons decreases and so the current decreases.
hf increases, W0 is the same, so Ek increases. The number of photons is the same, so the current is the same.
The electrons leave faster but in equal numbers.
The current does not become larger even though the electrons are faster.
More energy per photon, so more kinetic energy per electron.
At the same intensity there are fewer photons, thus fewer electrons and less current.
The current gets smaller.
No more electrons leave than before.
""".strip().splitlines()
WRONG = [
    ("brighter-faster", LIGHT, BRIGHTER_FASTER),
    ("brighter-faster", (FASTER_HERE,), FASTER_ALONE),
    ("higher-more", LIGHT, HIGHER_MORE),
    ("higher-more", (FREES_MORE_HERE,), MORE_ALONE),
    ("bright-enough", DARK, BRIGHT_ENOUGH),
]
RIGHT = [
    (DARK, RIGHT_EVERYWHERE),
    ((FASTER_HERE, FREES_MORE), RIGHT_WHEN_BRIGHTER),
    ((FASTER, FREES_MORE_HERE), RIGHT_WHEN_HIGHER),
]


@pytest.mark.parametrize(("key", "known", "said"), [(key, known, one) for key, known, all_ in WRONG for one in all_])
def test_a_wrong_belief_about_light_is_heard(key: str, known: tuple[Misstatement, ...], said: str) -> None:
    """However a learner says it."""
    assert key in [one.key for one in misstatements_said(said, known)]


@pytest.mark.parametrize(("known", "said"), [(known, one) for known, all_ in RIGHT for one in all_])
def test_right_sentences_about_light_are_left_alone(known: tuple[Misstatement, ...], said: str) -> None:
    """What is denied, or said of the other cause, is right."""
    assert not misstatements_said(said, known)


SAY = "Intensity counts photons; frequency sets energy."
COST = " A reason that contradicts the memo costs a mark."
FULL = {
    "brighter": "More photons arrive per second, more electrons leave, the current increases; photon energy unchanged.",
    "photons-fixed": "Photons have more energy: the kinetic energy increases. The current is unchanged.",
    "power-fixed": "The kinetic energy increases. Fewer photons arrive, fewer electrons leave, the current decreases.",
}
BELIEFS = {
    "brighter": ("The electrons are faster.", FASTER.say),
    "photons-fixed": ("More electrons are freed.", FREES_MORE.say),
    "power-fixed": ("More electrons are freed.", FREES_MORE.say),
}


@pytest.mark.parametrize("change", FULL)
def test_a_belief_about_light_costs_a_mark(change: str) -> None:
    """Full marks for the chain; one less, and the catalogue's sentence, with the belief beside it."""
    full, told = statement_marked("photoelectric.intensity", "change", FULL[change], change=change)
    assert full == (4 if change == "brighter" else 3)
    assert not any(SAY in one for one in told)
    belief, sentence = BELIEFS[change]
    earned, told = statement_marked("photoelectric.intensity", "change", f"{FULL[change]} {belief}", change=change)
    assert (earned, told[0]) == (full - 1, sentence + COST)
    assert sentence.startswith(SAY)
    earned, told = statement_marked("photoelectric.intensity", "change", belief, change=change)
    assert (earned, told[0]) == (0, sentence)


@pytest.mark.parametrize(
    ("words", "change"),
    [
        ("The number of photons increases, so the number of photoelectrons ejected is greater.", "brighter"),
        ("A greater number of photons strikes, so a larger number of electrons leaves.", "brighter"),
        ("The number of photons decreases, so the current is smaller.", "power-fixed"),
        ("The photon energy increases; E_k is larger.", "photons-fixed"),
    ],
)
def test_more_and_fewer_are_heard_as_numbers_that_change(words: str, change: str) -> None:
    """A number that increases is more; two points of the memo are found in each."""
    assert statement_marked("photoelectric.intensity", "change", words, change=change)[0] == 2


DARK_LIGHT = {"lamda": "600 nm", "W_0": "2,9 eV", "f": "", "E_k": ""}
BRIGHT_OUT = "Electrons will be emitted if the light is bright enough."


@pytest.mark.parametrize(
    ("question", "part", "changed", "belief", "sentence"),
    [
        ("emission", "none", DARK_LIGHT, BRIGHT_OUT, ENOUGH.say),
        ("gate", "verdict", {"W_2": "3,7 eV"}, BRIGHT_OUT, ENOUGH.say),
        ("gate", "verdict", {"W_2": "2,1 eV"}, "Brighter light makes the electrons faster.", FASTER.say),
        ("gate", "change", {}, "The kinetic energy increases.", FASTER.say),
        ("lamp", "weaker", {"E_3": "-3,7 eV"}, BRIGHT_OUT, ENOUGH.say),
        ("lamp", "weaker", {"E_3": "-2,4 eV"}, "A higher frequency frees more electrons.", FREES_MORE.say),
        ("metals", "emits-2", {}, BRIGHT_OUT, ENOUGH.say),
        ("craft", "twice", {}, "The maximum kinetic energy doubles.", FASTER.say),
        ("graph", "meaning", {}, "The kinetic energy depends on the intensity.", FASTER.say),
        ("readings", "meaning", {}, "The kinetic energy depends on the intensity.", FASTER.say),
    ],
)
def test_it_is_heard_wherever_reasons_about_light_are_marked(
    question: str, part: str, changed: dict[str, str], belief: str, sentence: str
) -> None:
    """Each part of the chapter in which a learner explains what light does."""
    _, told = statement_marked(f"photoelectric.{question}", part, belief, **changed)
    assert told[0].removesuffix(COST) == sentence


STATED = {
    "intensity": """
Electrons are ejected from the surface of a metal when light of suitable frequency shines on it.
The emission of electrons from a metal surface when light of high enough frequency falls on it.
When light of a suitable frequency shines on a metal, electrons are emitted from its surface.
Electrons are emitted from a metal's surface when light with a high enough frequency shines on the surface.
Electrons are released from a metal's surface if light of a frequency higher than the threshold falls on it.
""",
    "photon": """
The energy of a photon is directly proportional to the frequency of the light.
The energy of a photon is directly proportional to its frequency.
Photon energy is proportional to the frequency.
The energy of a photon equals Planck's constant times its frequency.
""",
    "emission": """
The work function of a metal is the minimum energy that an electron needs to be emitted from its surface.
The minimum energy needed to eject an electron from a metal surface.
The minimum energy required to remove an electron from the surface of the metal.
The least energy an electron needs to leave the metal.
Minimum energy needed to release an electron from the surface.
""",
    "graph": """
The threshold frequency is the minimum frequency of light that ejects electrons from the surface of a metal.
The minimum frequency of light needed to emit electrons from a certain metal surface.
The lowest frequency of light at which electrons are emitted from the metal.
The minimum frequency required to eject electrons.
""",
}
MISSTATED = {
    "intensity": """
Electrons are ejected from a metal when it is heated.
Light is emitted when electrons strike a metal.
""",
    "photon": """
The energy of a photon is directly proportional to the wavelength.
The energy of a photon is inversely proportional to the frequency.
""",
    "emission": """
The minimum frequency needed to emit electrons.
The maximum kinetic energy of the emitted electron.
""",
    "graph": """
The maximum frequency at which electrons are emitted.
The minimum energy needed to emit electrons.
The minimum wavelength of light that ejects electrons.
""",
}


def each(told: dict[str, str]) -> list[tuple[str, str]]:
    """Every line with its question."""
    return [(question, line) for question, lines in told.items() for line in lines.strip().splitlines()]


@pytest.mark.parametrize(("question", "words"), each(STATED))
def test_a_definition_in_other_words_has_full_marks(question: str, words: str) -> None:
    """Ejected, emitted, released, removed are one; so are minimum and least."""
    assert statement_marked(f"photoelectric.{question}", "state", words)[0] == 2


@pytest.mark.parametrize(("question", "words"), each(MISSTATED))
def test_a_wrong_definition_has_no_full_marks(question: str, words: str) -> None:
    """A definition of something else, or one turned round; half of one that is half right."""
    assert statement_marked(f"photoelectric.{question}", "state", words)[0] <= (question == "graph")


@pytest.mark.parametrize(
    "words", ["brighter light ", "higher frequency ", "more electrons ", "photon energy increases "]
)
def test_no_sentence_keeps_a_reader_waiting(words: str) -> None:
    """The longest text that is read, of one cause or effect over and over, is searched within two seconds."""
    start = process_time()
    misstatements_said((words * 60)[:600], (*DARK, FASTER_HERE, FREES_MORE_HERE))
    assert process_time() - start < 2
