"""Two questions in several parts, each part fed by those before it: a rail in line, and pucks at a right angle.

Marks: charge from electrons 3, one force 3, drawing 1 an arrow, net force 4, unknown third charge 5;
plane forces 2 + 2; common practice, no source.
"""

from __future__ import annotations

from calc.figures.charges import Charge, spheres_on_line
from calc.model.answers import Direction, Point
from calc.model.questions import (
    SA,
    Check,
    Choice,
    Data,
    Draw,
    Input,
    Mistake,
    Part,
    Plan,
    Question,
    Refusal,
    Step,
)
from calc.topics.several_charges.line import forces_at, net_steps, side_pull, signed, sum_figure
from calc.topics.several_charges.plane import plane_parts, rough_net
from calc.topics.several_charges.right_angle import corner, corner_net, corner_pull, corner_scene
from calc.topics.several_charges.shared import (
    NOISE,
    PLAIN_NET,
    QUADRANTS,
    SIDES,
    SUPERPOSITION,
    Body,
    added,
    bounds_words,
    compass,
    draw_part,
    pair,
    pull_ask,
    pull_of,
    pull_on_line,
    side,
    sideways,
    within_bounds,
)
from calc.topics.several_charges.third import positive_if
from calc.topics.shared.electrostatics import (
    COULOMB,
    NOT_SQUARED,
    QUANTISATION,
    SECOND,
    charge,
    distance,
    force,
    refuse_zero_charge,
    sign_of_charge,
    state,
)

# --- three spheres on a rail --------------------------------------------------------------------------------


def plan_rail(data: Data) -> Plan:
    refuse_zero_charge(data, "Q_B", "Q_C")
    values, style = data.values, data.settings.style
    first = Body("A", data.settings.constant("e") * values["n"], -values["r_AB"], kind="sphere")
    on = Body("B", values["Q_B"], kind="sphere")
    last = Body("C", values["Q_C"], values["r_BC"], kind="sphere")
    sources = [first, last]
    refuse_nothing_left(data, first, on)
    return Plan(
        story=story_rail(data),
        parts=(
            state(COULOMB),
            Part("charge", "calculate", "Calculate the charge on sphere A, with its sign.", (charge_from_electrons(),)),
            Part(
                "force-A",
                "calculate",
                pull_ask(first, on),
                (
                    side_pull(
                        first,
                        on,
                        [("r_BC", "the distance of sphere C was used")] if values["r_AB"] != values["r_BC"] else (),
                    ),
                ),
            ),
            Part(
                "force-C",
                "calculate",
                pull_ask(last, on),
                (side_pull(last, on, [("r_AB + r_BC", "the distance from A to C was used")]),),
            ),
            draw_part(on, sources, style, lambda v: forces_at(sources, on, v)),
            Part(
                "net",
                "calculate",
                "Calculate the net electrostatic force on sphere B.",
                net_steps(data, sources, on, 1),
                figure=lambda v: sum_figure(sources, on, v),
            ),
            Part(
                "farther",
                "explain",
                "Sphere C stays where it is, but sphere A is moved to twice its distance from B. Explain, without new"
                " numbers, what happens to the force of A on B.",
                points=(
                    Point(
                        "The force is inversely proportional to the square of the distance.",
                        1,
                        ("inversely proportional to the square",),
                    ),
                    Point(
                        "Twice the distance gives a quarter of the force; its direction stays the same.",
                        1,
                        ("quarter",),
                    ),
                ),
            ),
            Part(
                "new-charge",
                "calculate",
                "Sphere A is back in its place. Sphere C is exchanged for sphere D at the same place, and the net"
                f" force on B becomes {data.said['F_D']} {dict(SIDES)[data.choices['way']]}. Calculate the charge on D,"
                " with its sign.",
                new_charge(data, first, on),
            ),
        ),
        values=dict(values),
        scene=lambda _: spheres_on_line(
            [Charge(b.tag, b.charge, b.x) for b in (first, on, last)],
            distances=[(0, 1, data.said["r_AB"]), (1, 2, data.said["r_BC"])],
            title="Three spheres on a rail",
        ),
        checks=(
            Check(
                "Is the size of the net force possible?",
                words=bounds_words(2),
                holds=lambda v: within_bounds(v, ("F_AB", "F_CB"), "F_net"),
            ),
            Check("Count the electrons of A back", "Q_A/e = n"),
            Check(
                "With D in place the net force must come out as stated",
                exchange(data, first, on),
                "Plus for a force in the stated direction, minus for the opposite one.",
                sizes=("Q_A", "Q_B"),
                tolerance=1e-6,
            ),
        ),
    )


def charge_from_electrons() -> Step:
    return Step(
        law="n = Q_A/e",
        make="Q_A = n*e",
        unit="C",
        what="Each electron taken away leaves +e behind",
        why="Electrons are negative: a body that has lost some is positive.",
        direction=sign_of_charge(1.0),
        plain="Multiply the number of electrons taken away by the charge of one of them.",
        mistakes=(
            Mistake("divided", "Q_A", "n/e", "Multiply: each electron brings e."),
            Mistake("number-as-charge", "Q_A", "n", "The number of electrons is not yet a charge: multiply by e."),
        ),
    )


def refuse_nothing_left(data: Data, first: Body, on: Body) -> None:
    """The exchanged sphere must have something to do."""
    positive = 1 if data.choices["way"] == "right" else -1
    has = pull_on_line(data, first, on)
    if abs(positive * data.values["F_D"] - has) <= NOISE * abs(has):
        raise Refusal(
            "F_D",
            "Sphere A alone already gives this net force, so sphere D would carry no charge. Change the new net force.",
        )


def new_charge(data: Data, first: Body, on: Body) -> tuple[Step, Step]:
    """What D must add, then its charge."""
    positive = 1 if data.choices["way"] == "right" else -1
    told = data.values["F_D"] != 0
    add = added(
        "F_D",
        "F_DB",
        "F_AB",
        ways=(sideways(first, on), positive),
        what=f"Superposition again, taking {side(positive).words} as positive",
        why="The force of A on B is the same as before. A minus sign in the result means the opposite direction.",
        plain=PLAIN_NET,
        alone="The net force is the sum of all the forces: sphere A acts as well." if told else "",
        wrong="F_AB was taken in the opposite direction",
    )
    law = pair(
        "F_DB",
        "Q_D",
        "Q_B",
        "r_BC",
        why=(
            "D is to the right of B. A force on B to the right is attraction (unlike signs), to the left repulsion"
            " (like signs)."
        ),
        directions={"Q_D": lambda v: sign_of_charge(positive_if(v["F_DB"] * positive, v["Q_B"]))},
        mistakes=(
            Mistake("not-squared", "Q_D", "F_DB*r_BC/(k*Q_B)", NOT_SQUARED),
            *(
                (Mistake("net-used", "Q_D", "F_D*r_BC^2/(k*Q_B)", "D gives only its own share of the net force."),)
                if told
                else ()
            ),
        ),
    )
    return add, law.step("Q_D")


def exchange(data: Data, first: Body, on: Body) -> str:
    """The new net force from both charges, each with the sign of its direction."""
    positive = 1 if data.choices["way"] == "right" else -1
    has = sideways(first, on) * positive
    need = data.values["F_D"] - positive * pull_on_line(data, first, on)
    terms = [(1 if need > 0 else -1, "k*Q_D*Q_B/r_BC^2"), (has, "k*Q_A*Q_B/r_AB^2")]
    return f"F_D = {signed(sorted(terms, reverse=True))}"


def story_rail(data: Data) -> str:
    said = data.said
    return data.pick(
        "For an open day three small metal spheres, A, B and C, are clamped in a row on a plastic rail, A on the left"
        f" and C on the right. {said['n']} electrons have been taken off A. B carries {said['Q_B']} and C"
        f" {said['Q_C']}. The centres of A and B are {said['r_AB']} apart, those of B and C {said['r_BC']}.",
        f"Three charged spheres stand on glass stems in a straight row: A, then B {said['r_AB']} to its right, then C"
        f" {said['r_BC']} farther right. A has lost {said['n']} electrons; B carries {said['Q_B']} and C carries"
        f" {said['Q_C']}.",
    )


RAIL = Question(
    key="rail",
    title="Three spheres on a rail",
    fields=(
        Input(
            "n",
            "Electrons taken off sphere A",
            "",
            1e6,
            1e14,
            whole=True,
            refusal="The number of electrons must be greater than zero.",
        ),
        charge("Q_B", "Charge on sphere B"),
        charge("Q_C", "Charge on sphere C"),
        distance("r_AB", "Distance between A and B"),
        distance("r_BC", "Distance between B and C"),
        force("F_D", "New net force on B, with D in place of C (size)"),
        Choice("way", "Direction of the new net force", SIDES),
    ),
    plan=plan_rail,
    constants=("k", "e"),
    laws=(COULOMB.name, QUANTISATION.name, SUPERPOSITION.name),
    example={
        "n": "5 x 10^10",
        "Q_B": "-6 nC",
        "Q_C": "-9 nC",
        "r_AB": "20 cm",
        "r_BC": "30 cm",
        "F_D": "2,4 uN",
        "way": "right",
    },
    draws={
        "n": Draw(("2,5 x 10^10", "5 x 10^10", "7,5 x 10^10"), harder=("3,75 x 10^10", "6,25 x 10^10")),
        "Q_B": Draw((4, 6, -3, -5), "nC", harder=(2.5, -6.4)),
        "Q_C": Draw((3, 7, -4, -9), "nC", harder=(5.6, -8.5)),
        "r_AB": Draw((10, 15, 20, 25), "cm"),
        "r_BC": Draw((12, 18, 30, 40), "cm"),
        "F_D": Draw((1.5, 2.4, 3.5), "µN"),
        "way": Draw(("left", "right")),
    },
    scenario=True,
)


# --- three pucks on an air table ----------------------------------------------------------------------------


def plan_pucks(data: Data) -> Plan:
    refuse_zero_charge(data, "Q_A", "Q_B", "Q_C")
    style = data.settings.style
    on, across, along = bodies = corner(data, "ABC", "puck")
    net = rough_net((across, along), on)
    way = compass(*net, style)
    draw, find, _ = plane_parts(bodies, on, corner_net(across, along, on, style), net, data)
    return Plan(
        story=story_pucks(data),
        parts=(
            state(SUPERPOSITION),
            Part("force-B", "calculate", pull_ask(across, on), (corner_pull(across, along, on, style),)),
            Part("force-C", "calculate", pull_ask(along, on), (corner_pull(along, across, on, style),)),
            draw,
            find,
            Part(
                "acceleration",
                "calculate",
                "Puck A is let go; the others stay clamped. Calculate its acceleration at that moment.",
                (acceleration(way),),
            ),
            Part(
                "later",
                "explain",
                "Explain whether the acceleration of A stays the same as it moves.",
                points=(
                    Point(
                        "As A moves its distances from B and C change, and the forces depend on the inverse square of"
                        " the distance.",
                        1,
                        ("distances",),
                    ),
                    Point(
                        "So the net force and the acceleration change: equations for constant acceleration may not be"
                        " used.",
                        1,
                        ("change",),
                    ),
                ),
            ),
            Part(
                "doubled",
                "calculate",
                "Before A is let go, both distances are made twice as large. Calculate the new net force on A without"
                " going back to the charges.",
                (doubled(way),),
            ),
        ),
        values=dict(data.values),
        scene=lambda _: corner_scene(data, bodies),
        checks=(
            Check(
                "The same by the angle: a force over its share of the resultant",
                f"F_net = {pull_of(along, on)}/sin(theta)",
                tolerance=1e-6,
            ),
            Check("Multiply back: mass times acceleration is the net force", "m*a = F_net"),
            Check(
                "The force of B at twice the distance, straight from the law, is its share of the new net force",
                "k*Q_B*Q_A/(2*r_AB)^2 = F_new*cos(theta)",
                sizes=("Q_A", "Q_B"),
                tolerance=1e-6,
            ),
        ),
        notes=("The cushion of air carries the weight, so only the electrostatic forces act along the table.",),
    )


def acceleration(way: Direction) -> Step:
    return Step(
        law="F_net = m*a",
        make="a = F_net/m",
        unit="m·s⁻²",
        what="Newton's second law",
        quotes=(SECOND.name,),
        why=(
            "There is no friction on the air cushion, so the net force is the electrostatic one. The acceleration has"
            " its direction."
        ),
        plain="The same push speeds up a small mass more.",
        direction=Direction(way.key, f"in the direction of the net force, {way.words}", QUADRANTS, way.angle),
        mistakes=(
            Mistake("multiplied", "a", "F_net*m", "F = ma: divide the force by the mass."),
            Mistake("upside-down", "a", "m/F_net", "F = ma: divide the force by the mass, not the mass by the force."),
        ),
    )


def doubled(way: Direction) -> Step:
    return Step(
        law="F_new = F_net/2^2",
        make="F_new = F_net/2^2",
        unit="N",
        marks=SA,
        what="Compare: every force falls to a quarter",
        why=(
            "Each force goes with the inverse square of its distance, so both become a quarter. The triangle of forces"
            " keeps its shape: the net force is a quarter too, in the same direction."
        ),
        plain="Twice as far is four times weaker, for each of the pushes and so for their sum.",
        direction=way,
        mistakes=(
            Mistake("not-squared", "F_new", "F_net/2", "Inverse square: square the factor of the distance."),
            Mistake("multiplied", "F_new", "F_net*2^2", "Further apart means a smaller force: divide."),
            Mistake("each-distance", "F_new", "F_net/2^4", "Each force has only its own distance: divide by 2² once."),
        ),
    )


def story_pucks(data: Data) -> str:
    said = data.said
    return data.pick(
        "On the air table of a science museum three light plastic pucks are clamped at first. Seen from above, B is"
        f" {said['r_AB']} to the right of A, and C is {said['r_AC']} from A, straight up the table. A carries"
        f" {said['Q_A']}, B {said['Q_B']} and C {said['Q_C']}. The mass of A is {said['m']}.",
        f"Three charged foam pucks hover on a level table with air holes, held in place. Puck A, {said['Q_A']},"
        f" {said['m']}, is at the corner of a right angle; puck B, {said['Q_B']}, is {said['r_AB']} to its right, and"
        f" puck C, {said['Q_C']}, is {said['r_AC']} above it on the plan.",
    )


PUCKS = Question(
    key="pucks",
    title="Three pucks on an air table",
    fields=(
        charge("Q_A", "Charge on puck A, at the corner"),
        charge("Q_B", "Charge on puck B, to the right of A"),
        charge("Q_C", "Charge on puck C, above A"),
        distance("r_AB", "Distance between A and B"),
        distance("r_AC", "Distance between A and C"),
        Input("m", "Mass of puck A", "g", 1e-5, 1, refusal="Mass must be greater than zero."),
    ),
    plan=plan_pucks,
    constants=("k",),
    laws=(SUPERPOSITION.name, COULOMB.name, SECOND.name),
    example={"Q_A": "-40 nC", "Q_B": "+60 nC", "Q_C": "-50 nC", "r_AB": "30 cm", "r_AC": "25 cm", "m": "5 g"},
    draws={
        "Q_A": Draw((20, 30, 40, -25, -50), "nC", harder=(36, -48)),
        "Q_B": Draw((40, 60, 80, -45, -70), "nC", harder=(52, -64)),
        "Q_C": Draw((35, 55, -30, -65), "nC", harder=(42, -58)),
        "r_AB": Draw((20, 30, 40), "cm"),
        "r_AC": Draw((15, 25, 35), "cm"),
        "m": Draw((2, 4, 5, 8), "g", harder=(2.5, 6.4)),
    },
    scenario=True,
)
