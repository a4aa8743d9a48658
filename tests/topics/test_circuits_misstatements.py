"""Current used up, a cell that fixes the current: in the words of learners, and right sentences that are like them.

The sentences are of our own; that learners hold these beliefs is common practice, no source.
"""

import json
from typing import Any

import pytest

from calc import desk
from calc.marking.misstatements import misstatements_said
from calc.topics import find
from calc.topics.circuits.misstatements import CURRENT

USED_UP = """
The current is used up by the first lamp.
Current gets used up along the circuit.
the current is partly used up in R1 so L2 gets less
Some of the current is used by lamp 1, so less reaches lamp 2.
R1 uses up the current
The first lamp uses some of the current and the rest goes to the second.
L1 uses most of the current so L2 is dimmer
Each lamp consumes current, therefore the current decreases.
The current is consumed by the resistors.
The current decreases along the circuit.
The current gets weaker as it passes through each lamp.
The current becomes less after passing the first lamp.
Because the current drops after each resistor, L2 is dimmer.
The current is smaller after the first lamp.
The current decreases after lamp L1, so L2 glows less.
Less current is left for the second lamp.
There is less current left for L2.
L1 eats up some of the current.
The bulb drains the current of the battery
The current runs out before it reaches the last lamp
current that was used by L2 is now left for L1
The current used by L2 is no longer needed.
R1 takes away some of the current.
The current isn't the same everywhere because it is used up. The current is used up by L1.
The total resistance increases, so the current is used up more slowly. The current gets used up by R₁.
The current has been used up
Current is lost in the first resistor.
The lamp leaves less current for the next one.
Less current comes out of the lamp.
The current is all used up at the end of the circuit
the second lamp is dimmer since the first lamp is using up the current
The resistor R2 uses current so there is less for R3
The current decreases, because it is used up.
R1 comes first and uses up some current, so there is less for the lamps.
By the time it reaches L2 some current has been used up.
the current gets less and less along the wire
L1 absorbs some of the current
Lamp L2 gets only what current is left over after L1.
as the current goes through R1 it gets weaker
the charge is used up in the lamp
the current is turned into heat in R1
The current is shared and used up
""".strip().splitlines()
FIXED = """
The current stays the same because the cell is the same.
The current stays the same because the battery has not changed.
The cell gives a fixed current.
The battery always supplies the same current.
the battery still gives the same current, so L1 gets all of it
The battery provides a constant current
The total current remains constant since the emf is constant.
The total current does not change.
The current doesn't change because the battery is the same one
The current from the battery is unchanged.
The current in the circuit stays the same, so the lost volts stay the same.
The battery is a constant current source.
The current is fixed by the battery.
The current only depends on the battery
The current depends only on the cell.
The cell determines the current.
Because the emf is constant the current is constant too.
The emf is the same so the current is the same.
The same current now flows through L1 alone.
The same current is shared by fewer lamps, so each gets more.
The current that went through L2 now goes through L1.
The current which passed L2 must now flow through L1
the current of the battery is still the same
L1 gets L2's current as well
The battery still gives 2 A
The source delivers the same amount of current as before.
Same battery, so the current will stay the same
The cell keeps pushing out the same current
The current won't change as the cell didn't change
The emf provides the same current no matter what is connected
The battery's current does not change.
The current supplied stays constant since the cell wasn't changed.
The battery pushes out the same current all the time
The same current as before flows out of the battery.
I stays the same as the cell is the same
The current of 2 A is fixed.
The total current is still 2 A.
The current does not depend on the resistance.
All the current that L2 had goes to L1
the current in L2 goes to L1 instead
There's still the same current in the circuit but fewer lamps
""".strip().splitlines()
RIGHT = """
The current is not used up.
The current isn't used up by the lamps, it is the same everywhere.
Current is never used up.
It is wrong to say that the current is used up.
Energy is used up, not the current.
It is the energy that is used up by the lamp.
No current is used up.
If the current were used up, the second lamp would be dimmer.
Some people think that the current is used up by the first lamp.
The idea that the current is used up is wrong.
The current is used to calculate the lost volts.
We use the total current to find V.
The emf is fixed.
The emf and the internal resistance stay the same, so the current decreases.
The cell has a fixed emf, so a larger total resistance means a smaller current.
The cell doesn't fix the current; the total resistance does.
The battery does not give a fixed current.
The cell does not always give the same current
The total resistance increases, so the total current decreases.
The current decreases because one path is taken away.
The current decreases after lamp L2 burns out.
After L2 fails the current is smaller.
The current drops after the switch is opened.
The current in R1 and in the battery is the same because they are in series.
In series the current is the same everywhere.
The current is the same before and after the lamp.
The current in L1 stays the same because the terminal p.d. stays the same.
The current through L1 does not change: r = 0 and the emf is constant.
The current is zero, so there are no lost volts.
The current does not stay the same because the total resistance changes.
The current divides at the junction: L1 takes 1,5 A and L2 takes 0,5 A.
Less current flows through the battery.
More current flows through L1 because its potential difference is larger.
All the current now passes L1, since L2 is broken.
Lamp L2 carries no current any more.
L2 draws more current because its resistance is smaller.
The current is determined by the emf and the total resistance.
The current depends on the total resistance, not only on the cell.
The same current passes R1 and the battery because they are in series.
The lost volts are used up inside the cell.
The resistance stays the same and the current decreases, so V_ext increases.
R1 stays the same; the current through it decreases.
The potential difference stays the same. The current decreases.
The internal resistance is constant. The current rises as the total resistance falls.
The current is not constant.
The battery cannot keep the current the same when the resistance changes
The voltage of the cell remains the same but the current becomes less.
The current decreases along with the lost volts.
Because there are fewer branches the total resistance increases and the total current decreases.
The emf does not change. The total resistance increases, so I = emf/(R+r) decreases.
Without L2 there is one path less for the current.
As the current decreases, less energy is used up in the cell each second.
Charge is conserved, so the current entering the junction equals the current leaving it.
The battery supplies more current than before.
When the current is smaller, Ir is smaller and the cell keeps less for itself.
No current flows through L2 because its branch is broken, so it goes out.
The current through R1 equals the total current, which decreases.
The p.d. across L1 is the same as before because r is zero, so its current is the same as before.
The current in the other lamp remains the same.
The current takes the wire instead of the lamp.
""".strip().splitlines()


@pytest.mark.parametrize("said", USED_UP)
def test_current_used_up_is_heard(said: str) -> None:
    """However a learner says it."""
    assert "current-used-up" in [one.key for one in misstatements_said(said, CURRENT)]


@pytest.mark.parametrize("said", FIXED)
def test_a_current_that_the_cell_fixes_is_heard(said: str) -> None:
    """However a learner says it."""
    assert "current-fixed" in [one.key for one in misstatements_said(said, CURRENT)]


@pytest.mark.parametrize("said", RIGHT)
def test_right_sentences_are_left_alone(said: str) -> None:
    """What is denied, asked with if, or said of the emf or of a series, is right."""
    assert not misstatements_said(said, CURRENT)


def marked(question: str, part: str, statement: str, **changed: Any) -> tuple[int, list[str]]:
    """Marks and sentences for what is typed as the reason of one part; the rest of the question is its example."""
    example = dict(find(question)[1].example)
    answers = {part: {"statement": statement, **changed}}
    data = {"question": question, "inputs": example, "answers": answers}
    reply = json.loads(desk.answer(json.dumps({"operation": "mark", "data": data})))
    verdict = next(one for one in reply["data"]["parts"] if one["part"] == part)
    return verdict["earned"], [one["say"] if isinstance(one, dict) else one for one in verdict["sentences"]]


CHAIN = "The total resistance increases, so the total current decreases. Ir decreases, so V_ext increases."
FIXES = "The cell doesn't fix current; total R does. Another total resistance means another current from the same cell."
USES = "Current is not used up: as much leaves a lamp as enters it. The cell doesn't fix current; total R does."
COST = " A reason that contradicts the memo costs a mark."


def test_a_belief_costs_the_mark_of_the_link_that_it_contradicts() -> None:
    """A full chain has 4 marks; with the current used up in it 3, and with both beliefs about current still 3."""
    assert marked("circuits.what-if", "chain", CHAIN)[0] == 4
    earned, told = marked("circuits.what-if", "chain", f"{CHAIN} The current is used up by L1.")
    assert (earned, told[0]) == (3, USES + COST)
    earned, told = marked("circuits.what-if", "chain", f"{CHAIN} Current is used up. The cell gives a fixed current.")
    assert (earned, told[:2]) == (3, [USES + COST, FIXES])
    earned, told = marked("circuits.what-if", "chain", "The current stays the same because the cell is the same.")
    assert (earned, told[0]) == (0, FIXES)


def test_a_point_ticked_is_the_learners_own_word() -> None:
    """Ticks are not taken away; what is wrong in the sentence is told all the same."""
    earned, told = marked("circuits.what-if", "chain", "The cell gives a fixed current.", said=[0, 1, 2, 3])
    assert (earned, told[0]) == (4, FIXES)


@pytest.mark.parametrize(
    ("question", "part", "reason"),
    [
        ("circuits.what-if", "verdict", "L1 becomes brighter."),
        ("circuits.lanterns", "voltmeter", "Total resistance increases; the current decreases; the reading increases."),
        ("circuits.lanterns", "brighter", "The current decreases; the p.d. increases; it becomes brighter."),
        ("circuits.boat", "lower", "The resistance decreases; the current increases; lost volts increase."),
    ],
)
def test_every_chain_of_the_chapter_is_marked_so(question: str, part: str, reason: str) -> None:
    """One mark less, and the sentence, wherever reasons about a current are asked for."""
    full = marked(question, part, reason)[0]
    earned, told = marked(question, part, f"{reason} The battery always gives the same current.")
    assert full >= 1
    assert (earned, told[0]) == (full - 1, FIXES + COST)
