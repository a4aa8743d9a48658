"""Scenarios of charged bodies at rest: one set of data, parts that feed each other.

Each story is a list of parts over the same steps as the single questions; change a
number and every part follows.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Literal

from calc.figures import Figure
from calc.language.wording import called
from calc.model.answers import Point
from calc.model.directions import UP_DOWN
from calc.model.questions import (
    FSA,
    NO_MARKS,
    SA,
    Check,
    Data,
    Mistake,
    Part,
    Plan,
    Question,
    Refusal,
    Step,
    Values,
)
from calc.model.relations import Relation
from calc.topics.equilibrium.along import Line
from calc.topics.equilibrium.along_drawn import draw_part, judge, line_checks
from calc.topics.equilibrium.held import WEIGHT, nudge_points
from calc.topics.equilibrium.held_scene import scene
from calc.topics.equilibrium.hung import EQUAL_ANGLES, PARTS
from calc.topics.equilibrium.relations import steps_of
from calc.topics.equilibrium.shared import (
    APART,
    FBD_RULES,
    GROWS,
    HALF_LEAN,
    HUNG_MASS,
    INCLINE,
    LENGTH,
    LENGTHS,
    PULL,
    UNSTABLE,
    WHOLE_LEAN,
    kind,
    refuse_uncharged,
    signs,
)
from calc.topics.equilibrium.threads import Pair, judge_pair, pair_checks, pair_draw, pair_figure
from calc.topics.shared.electrostatics import (
    COULOMB,
    EQUILIBRIUM,
    PLAIN_LAW,
    QUANTISATION,
    SECOND,
    state,
)
from calc.topics.shared.quantities import Quantity, charge
from calc.working.chain import lead, spread
from calc.working.declaring import boxes

INCLINED = "Angle of the slope with the horizontal"
MUST_REPEL = "In this story the spheres repel: give both charges the same sign."
MUST_ATTRACT = "In this story the spheres attract: give the charges opposite signs."


def told_of(**names: str) -> Callable[[Callable[[Data], Plan]], Callable[[Data], Plan]]:
    """A story's plan with its body and string called as the story calls them: ``sphere="bead"``."""

    def of(written: Callable[[Data], Plan]) -> Callable[[Data], Plan]:
        def plan(data: Data) -> Plan:
            try:
                return called(written(data), names)
            except Refusal as refusal:
                raise Refusal(refusal.field, called(refusal.sentence, names)) from None

        return plan

    return of


AT_REST = Part(
    "state",
    "state",
    "State when a body is in equilibrium.",
    points=(Point(EQUILIBRIUM.words, EQUILIBRIUM.marks, EQUILIBRIUM.keys),),
)


class Chapters:
    """Parts one after the other: what an earlier part made, a later one may use.

    laws: those that hold; judge: refuses what cannot be. scene: drawn from all values. checks: second ways, from
    the names known and the steps.
    """

    def __init__(
        self,
        data: Data,
        laws: Sequence[Relation],
        judge: Callable[[str, float | None], None],
        scene: Callable[[Values], Figure],
        checks: Callable[[set[str], tuple[Step, ...]], tuple[Check, ...]],
    ) -> None:
        self.data, self.scene, self.checks = data, scene, checks
        self.known, self.ways = set(data.values), steps_of(*laws)
        self.steps: list[Step] = []
        spread(data.values, self.ways, data.settings.constants(), judge)

    def calculate(self, key: str, ask: str, target: str) -> Part:
        """The part that asks for ``target``, with the steps that are still missing."""
        return self.own(key, ask, *lead(self.known | set(self.data.settings.constants()), self.ways, target))

    def own(self, key: str, ask: str, *steps: Step) -> Part:
        """A part with steps of its own."""
        self.steps += steps
        self.known |= {step.makes for step in steps}
        return Part(key, "calculate", ask, steps)

    def plan(
        self, story: str, parts: tuple[Part, ...], checks: tuple[Check, ...] = (), notes: tuple[str, ...] = ()
    ) -> Plan:
        """The whole story."""
        return Plan(
            story=story,
            parts=parts,
            values=dict(self.data.values),
            units={name: "°" for name in ("theta", "alpha", "beta") if self.data.has(name) or name in self.known},
            scene=self.scene,
            checks=(*self.checks(self.known, tuple(self.steps)), *checks),
            notes=(FBD_RULES, *notes),
        )


def line_story(data: Data, side: int, string: str, lift: int | None = None) -> tuple[Line, Chapters]:
    """The set-up of a story on a slope or a vertical line, found possible."""
    refuse_uncharged(data)
    acting = -lift * side if lift else kind(data)
    line = Line("theta" in data.values, side, -acting * side, string, False, *signs(data, acting))
    return line, Chapters(data, line.laws(), judge(line, data), partial(scene, line), partial(line_checks, line))


def pair_story(data: Data, two: bool, equal: bool, acting: Literal[1, -1]) -> tuple[Pair, Chapters]:
    """The set-up of a story on threads, found possible."""
    refuse_uncharged(data)
    pair = Pair(acting, two, equal, False, *signs(data, acting))

    def drawn(values: Values) -> Figure:
        return pair_figure(pair, values["alpha"])

    return pair, Chapters(data, pair.laws(), judge_pair(pair, data), drawn, partial(pair_checks, pair))


# --- a ramp in a museum: fixed charge below, cord to the top ------------------------------------------------


@told_of(sphere="bead", string="cord")
def plan_museum(data: Data) -> Plan:
    line, told = line_story(data, -1, "up")
    said = data.said
    story = data.pick(
        f"In a science museum a bead of mass {said['m']} with a charge of {said['Q1']} rests on a smooth glass ramp at"
        f" {said['theta']} to the horizontal. A light cord parallel to the ramp ties it to a peg at the top. A second"
        f" bead with a charge of {said['Q2']} is glued to the ramp {said['r']} further down. A visitor may cut the"
        " cord.",
        later=(
            (
                f"An exhibit shows a charged bead ({said['Q1']}) of mass {said['m']} on a smooth glass ramp, which"
                f" makes an angle of {said['theta']} with the horizontal. From a peg at the top a light cord runs down"
                f" along the ramp and holds the bead. Glued to the ramp {said['r']} below it is a second bead, charged"
                f" with {said['Q2']}. There are scissors for the visitor."
            ),
            (
                f"Visitors of a museum see a smooth glass ramp at {said['theta']} to the horizontal and two charged"
                f" beads on it. The lower one, {said['Q2']}, is glued on; the upper one, {said['Q1']} and {said['m']},"
                f" is {said['r']} away from it and hangs on a light cord along the ramp from a peg at the top. One"
                " visitor is allowed to cut the cord."
            ),
        ),
    )
    parts = (
        state(COULOMB),
        draw_part(line, data, told.ways, body="the upper bead"),
        told.calculate("force", "Calculate the electrostatic force on the upper bead.", "F_E"),
        told.calculate("tension", "Calculate the tension in the cord.", "T"),
        told.calculate("electrons", "Calculate how many electrons the upper bead has too many or too few.", "n"),
        told.calculate(
            "cut", "The visitor cuts the cord. Calculate the acceleration of the bead at that instant.", "a"
        ),
        draw_part(line, data, told.ways, "draw-cut", cut=True, body="the upper bead"),
        Part("later", "explain", GROWS, points=line.after()),
    )
    return told.plan(story, parts)


MUSEUM = Question(
    key="museum-ramp",
    title="A bead on the museum's glass ramp",
    plan=plan_museum,
    constants=("k", "g", "e"),
    laws=(COULOMB.name, EQUILIBRIUM.name, SECOND.name),
    **boxes(
        HUNG_MASS("m", "Mass of the upper bead", "", "16 g; 12 14 16 18 22; 13,5 17,2 24,5"),
        INCLINE("theta", INCLINED, "", "28°; 22 25 28 32 36; 23,5 34 41"),
        charge("Q1", "Charge on the upper bead", "", "-64 nC; -40 -48 -64 55 62; -37,5 52,4 -71"),
        charge("Q2", "Charge on the glued bead", "", "-45 nC; -30 -45 35 50 -55; -33,5 47,2"),
        APART("r", "Distance between the beads", "", "2,8 cm; 2,8 3 3,5 4; 3,2 3,7 4,6", unit="m"),
        *(WEIGHT, LENGTHS),
    ),
    scenario=True,
)


# --- a stage: attracting charge above, when does the cord go slack? ------------------------------------------


GOES_SLACK = Step(
    "k*Q1*Q2/r_0^2 = F_gpar",
    "r_0 = sqrt(k*Q1*Q2/F_gpar)",
    "Let the attraction alone balance the weight's component",
    "With a slack cord T = 0, so F_E = mg sin θ. Closer than this the attraction wins.",
    "m",
    FSA,
    sizes=("Q1", "Q2"),
    plain=PLAIN_LAW,
    mistakes=(
        Mistake(
            "root-omitted",
            "r_0",
            "k*Q1*Q2/F_gpar",
            "You stopped at {r_0^2}. Take its square root: that is the distance {r_0}.",
            "the answer is the square of the distance",
        ),
        Mistake(
            "weight-for-component",
            "r_0",
            "sqrt(k*Q1*Q2/(m*g))",
            "You used the whole weight. Only its component along the slope has to be balanced: use {F_gpar}.",
        ),
    ),
)


@told_of(sphere="ball", string="cord")
def plan_stage(data: Data) -> Plan:
    refuse_uncharged(data)
    if kind(data) > 0:
        raise Refusal("Q2", MUST_ATTRACT)
    line, told = line_story(data, 1, "up")
    told.ways += steps_of(*line.field_laws(data.values["d"], data.values["r"]))
    said = data.said
    story = data.pick(
        f"On a theatre stage a foil-covered ball of mass {said['m']} with a charge of {said['Q1']} seems to rest by"
        f" magic on a smooth plastic slope at {said['theta']}. A second ball with a charge of {said['Q2']} is hidden in"
        f" the slope, {said['r']} further up. A thin cord parallel to the slope, tied {said['d']} further up than the"
        " first ball, helps to hold it.",
        later=(
            (
                f"For a play a ball covered with foil ({said['m']}, {said['Q1']}) has to stay where it is on a smooth"
                f" plastic slope, {said['theta']} steep. A charge of {said['Q2']} on a second ball inside the slope,"
                f" {said['r']} further up, pulls at it, and so does a thin cord along the slope that is fastened"
                f" {said['d']} further up than the ball."
            ),
            (
                f"A school play needs magic: on a smooth plastic slope at {said['theta']} a ball of {said['m']} in"
                f" silver foil does not slide. It carries {said['Q1']}. What the audience cannot see: {said['r']}"
                f" further up a second ball with {said['Q2']} lies in the slope, and a thin cord, parallel to the slope"
                f" and tied {said['d']} further up than the first ball, helps."
            ),
        ),
    )
    parts = (
        AT_REST,
        draw_part(line, data, told.ways, body="the lower ball"),
        told.calculate("normal", "Calculate the normal force on the lower ball.", "N"),
        told.calculate("force", "Calculate the electrostatic force on the lower ball.", "F_E"),
        told.calculate("tension", "Calculate the tension in the cord.", "T"),
        told.own(
            "slack",
            "The hidden ball is brought closer. Calculate the distance between the balls at which the cord just goes"
            " slack.",
            GOES_SLACK,
        ),
        Part(
            "steady",
            "explain",
            "With the cord slack, the ball is nudged a little up the slope. Does it come back? Explain.",
            points=nudge_points(Line(True, 1, 1, "none")),
        ),
        told.calculate(
            "field",
            f"The balls are {said['r']} apart again. Calculate the net electric field where the cord is tied.",
            "E_net",
        ),
    )
    back = Check(
        "With the slack distance, Coulomb's law gives the weight's component",
        "k*Q1*Q2/r_0^2 = m*g*sin(theta)",
        sizes=("Q1", "Q2"),
    )
    return told.plan(story, parts, (back,), (UNSTABLE,))


STAGE = Question(
    key="stage-slope",
    title="The ball that will not roll: a stage trick",
    plan=plan_stage,
    constants=("k", "g"),
    laws=(EQUILIBRIUM.name, COULOMB.name),
    **boxes(
        HUNG_MASS("m", "Mass of the lower ball", "", "9 g; 8 9 10 12; 8,5 11,4"),
        INCLINE("theta", INCLINED, "", "24°; 20 24 27 30 33; 21,5 38"),
        charge("Q1", "Charge on the lower ball", "", "+52 nC; 40 46 52 60; 43,5 57,2"),
        charge("Q2", "Charge on the hidden ball", "", "-70 nC; -50 -60 -70; -54,5 -66"),
        APART("r", "Distance between the balls", "", "4 cm; 4 4,5 5; 4,2 5,4", unit="m"),
        APART("d", "Distance from the ball to where the cord is tied", "", "10 cm; 9 10 12 15; 8,5 13", unit="m"),
        *(WEIGHT, LENGTHS),
        example={"weight": "components"},
    ),
    scenario=True,
)


# --- a cord that pulls down: tension, charge, electrons -------------------------------------------------------


@told_of(sphere="pellet", string="cord")
def plan_gauge(data: Data) -> Plan:
    line, told = line_story(data, -1, "down", lift=1)
    if data.values["T"] == 0:
        raise Refusal("T", "Here the cord pulls: type a tension above zero.")
    said = data.said
    story = data.pick(
        f"In a workshop a plastic pellet of mass {said['m']} lies on a smooth chute at {said['theta']} to the"
        f" horizontal. A fixed ball with a charge of {said['Q2']}, {said['r']} further down the chute, repels it so"
        " strongly that a light cord to the foot of the chute has to hold it down. A force sensor in the cord reads"
        f" {said['T']}.",
        later=(
            (
                f"On a test bench for packing machines a smooth chute stands at {said['theta']} to the horizontal. On"
                f" it lies a charged plastic pellet of mass {said['m']}, and {said['r']} further down is a fixed ball"
                f" with a charge of {said['Q2']}. The pellet would be driven up the chute, but for a light cord to the"
                f" foot of the chute, whose tension a sensor gives as {said['T']}."
            ),
            (
                f"A plastic pellet ({said['m']}) picked up charge on its way down a smooth chute that slopes at"
                f" {said['theta']}. Now it is at rest {said['r']} further up than a fixed ball with {said['Q2']}: the"
                f" ball repels it, and a light cord pulls it down the chute with {said['T']}, read from a force sensor."
            ),
        ),
    )
    parts = (
        draw_part(line, data, told.ways, body="the pellet"),
        told.calculate("force", "Calculate the electrostatic force on the pellet.", "F_E"),
        told.calculate("charge", "Calculate the charge on the pellet.", "Q1"),
        state(QUANTISATION),
        told.calculate("electrons", "Calculate how many electrons the pellet has too many or too few.", "n"),
        told.calculate("normal", "Calculate the normal force on the pellet.", "N"),
        told.calculate("cut", "The cord snaps. Calculate the acceleration of the pellet at that instant.", "a"),
        Part("later", "explain", GROWS, points=line.after()),
    )
    return told.plan(story, parts)


GAUGE = Question(
    key="sensor-chute",
    title="From the tension to the electrons",
    plan=plan_gauge,
    constants=("k", "g", "e"),
    laws=(EQUILIBRIUM.name, COULOMB.name, QUANTISATION.name, SECOND.name),
    **boxes(
        HUNG_MASS("m", "Mass of the pellet", "", "5 g; 4 5 6 7; 4,4 5,6 6,5"),
        INCLINE("theta", INCLINED, "", "32°; 20 26 32 35; 23 29 41"),
        called(PULL, {"string": "cord"})("T", "Tension in the cord", "", "18 mN; 9 12 15 18; 7,5 13,6 17,4", unit="N"),
        charge("Q2", "Charge on the fixed ball", "", "-75 nC; -60 -75 80 90; -64 83"),
        APART("r", "Distance between ball and pellet", "", "3,5 cm; 3 3,5 4 5; 3,3 4,4", unit="m"),
        *(WEIGHT, LENGTHS),
    ),
    scenario=True,
)


# --- hovering in a glass tube ---------------------------------------------------------------------------------


NEXT_DAY = (
    Step(
        "Q2_after = f*Q2",
        "Q2_after = f*Q2",
        "Find the charge that is left",
        "Only the fixed ball lost charge.",
        "C",
        NO_MARKS,
        plain="A part of what was there.",
    ),
    Step(
        "m*g = k*Q1*Q2_after/r_after^2",
        "r_after = sqrt(k*Q1*Q2_after/(m*g))",
        "Let the new force carry the same weight",
        "The weight has not changed, so at the new height F_E is what it was.",
        "m",
        FSA,
        sizes=("Q1", "Q2_after"),
        plain=PLAIN_LAW,
        mistakes=(
            Mistake(
                "in-proportion",
                "r_after",
                "f*r",
                "You multiplied the height by {f} itself. The force goes with 1/r², so multiply by the square"
                " root of {f}.",
            ),
            Mistake(
                "old-charge",
                "r_after",
                "sqrt(k*Q1*Q2/(m*g))",
                "You used {Q2}, the charge it had before. Put in {Q2_after}, the charge that is left.",
            ),
        ),
    ),
)
SUNK = Step(
    "DeltaH = r - r_after",
    "DeltaH = r - r_after",
    "Compare the two heights",
    "Both are measured from the same fixed ball.",
    "m",
    SA,
    direction=UP_DOWN.of("down"),
    plain="How far down it came overnight.",
)


@told_of(sphere="ball")
def plan_hover(data: Data) -> Plan:
    refuse_uncharged(data)
    if kind(data) < 0:
        raise Refusal("Q2", MUST_REPEL)
    line, told = line_story(data, -1, "none")
    said = data.said
    story = data.pick(
        f"For the school's open day a charged ball of mass {said['m']} ({said['Q1']}) is dropped into a smooth upright"
        f" glass tube. It comes to rest above a second ball with a charge of {said['Q2']}, fixed at the bottom."
        f" Overnight charge leaks away: next morning the fixed ball keeps only {said['f']} times its charge; the"
        " hovering ball keeps all of its own.",
        later=(
            (
                f"Above a ball with a charge of {said['Q2']}, fixed at the bottom of a smooth upright glass tube, a"
                f" second ball of mass {said['m']} and charge {said['Q1']} hovers. By next morning damp air has left"
                f" the fixed ball {said['f']} times its charge, while the hovering ball has lost nothing."
            ),
            (
                f"A charged ball ({said['Q1']}, {said['m']}) hovers in a smooth upright glass tube in the school's"
                f" entrance: the ball below it is fixed and carries {said['Q2']}. A day later the charge of the fixed"
                f" ball is only {said['f']} times what it was; that of the hovering ball is the same as before."
            ),
        ),
    )
    half = data.values["f"]
    parts = (
        AT_REST,
        draw_part(line, data, told.ways, body="the hovering ball"),
        told.calculate("height", "Calculate the distance between the two balls on the first day.", "r"),
        told.calculate("electrons", "Calculate how many electrons the hovering ball has too many or too few.", "n"),
        Part(
            "steady",
            "explain",
            "The hovering ball is pushed down a little and let go. Does it come back? Explain.",
            points=nudge_points(line),
        ),
        told.own("next-day", "Calculate the distance between the balls next morning.", *NEXT_DAY),
        told.own("sunk", "How far has the ball moved overnight, and which way?", SUNK),
    )
    same = Check(
        "The square of the height goes with the charge",
        "(r_after/r)^2 = f",
        "F_E and Q₁ are unchanged, so r² is proportional to the fixed charge.",
    )
    if half >= 1:
        raise Refusal("f", "Charge leaks away: type a part between 0 and 1, such as 0,5.")
    return told.plan(story, parts, (same,))


HOVER = Question(
    key="hovering-ball",
    title="The hovering ball on open day",
    plan=plan_hover,
    constants=("k", "g", "e"),
    laws=(EQUILIBRIUM.name, COULOMB.name),
    **boxes(
        HUNG_MASS("m", "Mass of the hovering ball", "", "2,4 g; 1,5 2 2,4 3 4; 1,8 2,7 3,3"),
        charge("Q1", "Charge on the hovering ball", "", "+48 nC; 30 36 48 55; 33,5 51,2"),
        charge("Q2", "Charge on the fixed ball", "", "+85 nC; 60 70 85 95; 64,5 78,2"),
        Quantity("", 0.01, 0.99)(
            "f", "Part of its charge that the fixed ball keeps", "", "0,6; 0,25 0,4 0,5 0,6 0,8; 0,36 0,55 0,72"
        ),
        LENGTHS,
    ),
    scenario=True,
)


# --- threads --------------------------------------------------------------------------------------------------


@told_of(sphere="ball")
def plan_hall(data: Data) -> Plan:
    pair, told = pair_story(data, two=False, equal=True, acting=1)
    said = data.said
    story = data.pick(
        f"Two foil balls of mass {said['m']} each hang from one hook in the school hall, on light nylon threads"
        f" {said['L']} long. Rubbed with the same cloth, both carry the same charge, and the threads now make an angle"
        f" of {said['beta']} with each other.",
        later=(
            (
                f"In the school hall a pair of foil balls, {said['m']} each, hangs on two light nylon threads of"
                f" {said['L']} from the same hook. After both were given the same charge the angle between the threads"
                f" is {said['beta']}."
            ),
            (
                f"As a decoration two balls are made of foil; the mass of each is {said['m']}. Light nylon threads,"
                f" both {said['L']} long, tie them to one hook. They were charged alike and have come to rest with an"
                f" angle of {said['beta']} between the threads."
            ),
        ),
    )
    parts = (
        pair_draw(pair, data, told.ways, body="the right-hand ball"),
        told.calculate("distance", "Calculate the distance between the balls.", "r"),
        told.calculate("force", "Calculate the electrostatic force on each ball.", "F_E"),
        told.calculate("charge", "Calculate the size of the charge on each ball.", "Q1"),
        told.calculate("tension", "Calculate the tension in a thread.", "T"),
        state(SECOND),
        told.calculate(
            "cut",
            "The thread of the right-hand ball is cut. Calculate the acceleration of that ball at that instant.",
            "a",
        ),
        pair_draw(pair, data, told.ways, "draw-cut", cut=True, body="the right-hand ball"),
        Part("later", "explain", GROWS, points=pair.after()),
    )
    return told.plan(story, parts)


HALL = Question(
    key="foil-balls",
    title="Foil balls in the school hall",
    plan=plan_hall,
    constants=("k", "g"),
    laws=(EQUILIBRIUM.name, COULOMB.name, SECOND.name),
    **boxes(
        HUNG_MASS("m", "Mass of each ball", "", "1,6 g; 1,2 1,6 2 2,5; 1,4 2,2 2,8"),
        LENGTH("L", "Length of a thread", "", "55 cm; 45 50 55 60 70; 48 62", unit="m"),
        WHOLE_LEAN("beta", "Angle between the threads", "", "36°; 24 30 36 40 44; 27 33 52"),
        *(PARTS, LENGTHS),
    ),
    scenario=True,
)


@told_of(sphere="trap")
def plan_barn(data: Data) -> Plan:
    pair, told = pair_story(data, two=True, equal=False, acting=-1)
    said = data.said
    story = data.pick(
        f"Two light plastic fly traps of mass {said['m']} each hang in a barn on nylon threads {said['L']} long, from"
        f" two nails {said['s']} apart. The first carries {said['Q1']}; the second is charged as well. They hang"
        f" towards each other, each thread {said['alpha']} from the vertical.",
        later=(
            (
                f"A farmer hangs two plastic fly traps, {said['m']} each, from two nails in a beam, {said['s']} from"
                f" nail to nail, on nylon threads that are {said['L']} long. There is charge on both, on the first"
                f" {said['Q1']}. The threads lean in, each by {said['alpha']} from the vertical."
            ),
            (
                f"From nails {said['s']} apart two nylon threads of {said['L']} hang in a stable, each with a light fly"
                f" trap of plastic, {said['m']}. Dry dust has charged them: the first carries {said['Q1']}, the charge"
                f" of the second is not known. Each thread makes {said['alpha']} with the vertical, the traps towards"
                " each other."
            ),
        ),
    )
    rows = (
        Point("They hang towards each other, so they attract.", 1, ("attract",)),
        Point(
            f"Unlike charges attract: the second charge is {'negative' if pair.sign_2 < 0 else 'positive'}.",
            1,
            ("Unlike charges attract",),
        ),
    )
    parts = (
        Part(
            "sign",
            "explain",
            "Is the charge of the second trap positive or negative? Give a reason.",
            points=rows,
            asks_sign=True,
        ),
        pair_draw(pair, data, told.ways, body="the right-hand trap"),
        told.calculate("distance", "Calculate the distance between the traps.", "r"),
        told.calculate("force", "Calculate the electrostatic force on each trap.", "F_E"),
        told.calculate("charge", "Calculate the charge on the second trap.", "Q2"),
        told.calculate("tension", "Calculate the tension in a thread.", "T"),
        Part(
            "angles",
            "explain",
            "The charges need not be equal. Explain why both threads still make the same angle with the vertical.",
            points=EQUAL_ANGLES,
        ),
    )
    return told.plan(story, parts)


BARN = Question(
    key="barn-traps",
    title="Two traps in the barn",
    plan=plan_barn,
    constants=("k", "g"),
    laws=(EQUILIBRIUM.name, COULOMB.name),
    **boxes(
        HUNG_MASS("m", "Mass of each trap", "", "0,9 g; 0,6 0,8 0,9 1,2; 0,75 1,05"),
        LENGTH("L", "Length of a thread", "", "26 cm; 24 25 26 28; 24,5 27", unit="m"),
        APART("s", "Distance between the supports", "", "30 cm; 29 30 32 34; 30,5 33", unit="m"),
        HALF_LEAN("alpha", "Angle of a thread with the vertical", "", "21°; 20 21 23 24 26; 20,5 22,5 25"),
        charge("Q1", "Charge on the first trap", "", "+58 nC; 45 58 70 -50 -66; 47,5 -62"),
        *(PARTS, LENGTHS),
        example={"parts": "components"},
    ),
    scenario=True,
)
