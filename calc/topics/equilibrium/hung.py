"""The question about two charged spheres on threads: type what is known, pick what is asked."""

from __future__ import annotations

from dataclasses import replace
from math import degrees, sin, tan

from calc.figures import Figure
from calc.model.answers import Point
from calc.model.questions import Check, Choice, Data, Mistake, Part, Plan, Question, Refusal, Step, Values
from calc.topics.equilibrium.held import SCHOOL_G, SCHOOL_K
from calc.topics.equilibrium.practised import one_of, si
from calc.topics.equilibrium.relations import alone, steps_of
from calc.topics.equilibrium.shared import (
    ACTING,
    APART,
    AT_CUT,
    COUNT,
    EQUAL,
    FBD_RULES,
    GAP,
    GROWS,
    HALF_LEAN,
    HUNG_MASS,
    LENGTH,
    LENGTHS,
    NO_SPEED,
    PULL,
    PUSH,
    WHICH,
    WHOLE_LEAN,
    by_choice,
    optional,
    refuse_unaskable,
    refuse_uncharged,
    wanted,
)
from calc.topics.equilibrium.threads import (
    HALF,
    NO_ANGLE,
    Pair,
    exact_part,
    judge_pair,
    pair_checks,
    pair_draw,
    pair_figure,
    pair_of,
)
from calc.topics.shared.electrostatics import COULOMB, EQUILIBRIUM, SECOND
from calc.topics.shared.quantities import charge
from calc.working.chain import FIT, NoWay, core, follows, inputs, lead, spread, worked
from calc.working.declaring import boxes, told
from calc.working.solving import Situation

ASKED = {
    "F_E": "Calculate the electrostatic force on each sphere.",
    "s": "Calculate the distance between the supports.",
    "n": "Calculate how many electrons the first sphere has too many or too few.",
    "a": "The thread of one sphere is cut. Calculate the acceleration of that sphere at that instant.",
}
SAGGING = "A thread that carries a sphere is pulled: its tension is at least the weight. Type more than zero."
EACH = "Calculate the size of the charge on each sphere."
WORDS = {
    "T": "the tension in a thread",
    "F_E": "the electrostatic force",
    "alpha": "the angle of a thread with the vertical",
    "beta": "the angle between the threads",
    "r": "the distance between the spheres",
    "s": "the distance between the supports",
    "L": "the length of a thread",
    "m": "the mass of a sphere",
    "Q1": "the charge on the first sphere",
    "Q2": "the charge on the second sphere",
    "n": "the number of electrons too many or too few",
    "a": "the acceleration when a thread is cut",
}
EQUAL_ANGLES = (
    Point(
        "The spheres exert equal and opposite forces on each other, even when their charges differ.",
        1,
        ("equal and opposite forces",),
    ),
    Point(
        "The masses are equal too, so tan α = F_E/(mg) is the same for both: equal angles.", 1, ("tan α = F_E/(mg)",)
    ),
)
WHOLE = Mistake("whole-angle", "alpha", "2*alpha", HALF, "the whole angle stands in for its half")
NO_SHORTCUT = "These data need no shortcut: every step is exact, whatever the size of the angle."
TWO_ANGLES = (
    "More than one angle fits. At the smallest the spheres come to rest: moved a little closer they swing back. "
    "At the next larger one the equilibrium is unstable: a little closer and the attraction wins."
)


def plan_threads(data: Data) -> Plan:
    """The free-body diagram, what is asked, and what follows from it."""
    wants = wanted(data)
    for want in wants:
        refuse_before(data, want)
    pair = pair_of(data)
    roots = searched(data, pair)
    situation = hanging(data, pair, roots[:1], wants)
    rests = surer(data, situation.steps(data), wants)
    searched_for = "alpha" in wants and not pair.shortcut and not follows(rests.known, steps_of(*pair.laws()), "alpha")
    more = roots[1:] if searched_for else ()

    def checks(names: set[str], steps: tuple[Step, ...]) -> tuple[Check, ...]:
        return pair_checks(pair, names, steps)

    made = by_choice(data, situation, WORDS, "m L alpha s r F_E T Q1 Q2", checks, rests, {"alpha": more})
    if more:
        parts = tuple(
            replace(part, ask=f"{part.ask} List every angle that fits.") if part.answers == "alpha" else part
            for part in made.parts
        )
        return replace(made, parts=parts, notes=(*made.notes, TWO_ANGLES))
    if pair.shortens(made.steps):
        return replace(made, parts=(*made.parts, exact_part(pair)))
    if pair.shortcut:
        return replace(
            made,
            notes=(*made.notes, NO_SHORTCUT),
        )
    return made


def hanging(data: Data, pair: Pair, root: tuple[Step, ...], wants: tuple[str, ...]) -> Situation:
    """What holds for a pair on threads, and how it is told; the search for the angle is the last resort."""
    ways = steps_of(*pair.laws())
    constants = data.settings.constants()
    laws = (*pair.laws(), *map(alone, root))
    if not all(follows(data.known, ways, want) for want in wants):
        known = spread(data.values, ways, constants)
        if pair.bare <= known.keys():
            if not root:
                raise Refusal("Q1" if data.has("Q1") else None, NO_ANGLE)
            if pair.shortcut:
                laws = (*laws, alone(pair.small_angle(known, constants["k"], constants["g"])))

    def drawn(values: Values) -> Figure:
        alpha = spread({n: x for n, x in values.items() if n not in constants}, ways, constants).get("alpha", 0.4)
        return pair_figure(pair, alpha)

    return replace(
        told(GIVEN),
        relations=laws,
        openings=(story(data, pair),),
        ask=ASKED | ({"Q1": EACH} if pair.equal else {}),
        stated=(pair_draw(pair, data, ways),),
        later=lambda data, values: later_parts(pair, data, ways, wants),
        judge=judge_pair(pair, data),
        scene=drawn,
        mistakes=(WHOLE,),
        notes=(FBD_RULES,),
    )


def searched(data: Data, pair: Pair) -> tuple[Step, ...]:
    """The searches for the angles, from what is not measured where that is enough."""
    constants = data.settings.constants()
    for left_out in (data.measured, frozenset[str]()):
        base = {name: value for name, value in data.values.items() if name not in left_out}
        known = spread(base, steps_of(*pair.laws()), constants)
        if pair.bare <= known.keys():
            return tuple(pair.roots(known, constants["k"], constants["g"]))
    return ()


def surer(data: Data, ways: list[Step], wants: tuple[str, ...]) -> Data:
    """The data to work from: an angle from a rounded force can be far out, and where it is, the masses, lengths and
    charges decide."""
    needed = core(data, ways, *wants)
    bare = replace(data, values={n: v for n, v in data.values.items() if n not in data.measured})
    try:
        for want in wants:
            steps = lead(needed.known, ways, want)
            if not inputs(data.values, steps) & data.measured:
                continue
            found, sure = worked(needed, steps)[want], worked(bare, lead(bare.known, ways, want))[want]
            if abs(abs(sure) - abs(found)) > FIT * abs(sure):
                return bare
    except (NoWay, Refusal):
        return needed
    return needed


def refuse_before(data: Data, want: str) -> None:
    """What no set of numbers can answer."""
    refuse_uncharged(data)
    refuse_unaskable(data, want)
    two = data.choices["supports"] == "two"
    if not two and (data.has("s") or want == "s"):
        raise Refusal(
            "s" if data.has("s") else "want",
            "There is one support only. Choose two supports, or leave the distance between them out.",
        )
    if two and (data.has("beta") or want == "beta"):
        raise Refusal(
            "beta" if data.has("beta") else "want",
            "With two supports the threads do not meet: use the angle of one thread with the vertical.",
        )
    if data.values.get("T") == 0:
        raise Refusal("T", SAGGING)
    if want == "Q2" and data.choices["equal"] == "equal":
        raise Refusal("want", "The charges are equal in size: ask for the charge on the first sphere instead.")


def later_parts(pair: Pair, data: Data, ways: list[Step], wants: tuple[str, ...]) -> tuple[Part, ...]:
    if "a" in wants:
        cut = pair_draw(pair, data, ways, "draw-cut", cut=True)
        return (cut, Part("later", "explain", GROWS, points=pair.after()))
    if data.has("Q1") and data.has("Q2") and abs(data.values["Q1"]) != abs(data.values["Q2"]):
        ask = "The charges differ. Explain why both threads still make the same angle with the vertical."
        return (Part("angles", "explain", ask, points=EQUAL_ANGLES),)
    return ()


def story(data: Data, pair: Pair) -> str:
    """Who hangs from what, and what drives them apart; what is not given is not mentioned."""
    said = data.said
    who = data.pick("Two small spheres", "Two light spheres", "Two foil-covered spheres")
    each = f" of mass {said['m']} each" if data.has("m") else " of equal mass"
    threads = f"threads of length {said['L']}" if data.has("L") else "threads of equal length"
    hooks = "one hook" if not pair.two else f"two hooks {said['s']} apart" if data.has("s") else "two hooks"
    facts = [
        data.pick(
            f"{who}{each} hang on light insulating {threads} from {hooks}.",
            later=(
                f"From {hooks} two foam balls{each} hang side by side on light insulating {threads}.",
                f"A learner ties light insulating {threads} to two pith balls{each} and hangs both from {hooks}.",
            ),
        )
    ]
    if pair.equal:
        facts.append(f"Their charges are equal in size{': ' + said['Q1'] + ' on the first' if data.has('Q1') else ''}.")
    else:
        facts += [
            f"The {which} carries {said[name]}."
            for which, name in (("first", "Q1"), ("second", "Q2"))
            if data.has(name)
        ]
    if data.has("n"):
        facts.append(
            f"The first has {said['n']} electrons too {'many' if data.choices['which'] == 'excess' else 'few'}."
        )
    facts.append(f"They {'repel' if pair.repel > 0 else 'attract'} each other and are at rest.")
    return " ".join(facts)


# --- practice -----------------------------------------------------------------------------------------------


def practise(typed: dict[str, object], random: object, level: int) -> dict[str, object]:
    """One support at first; charges worked out from the angle, then angles from charges, then two supports."""
    text = {name: str(value) for name, value in typed.items()}
    m, length, alpha = si(text["m"], "g"), si(text["L"], "cm"), si(text["alpha"], "°")
    text.update(supports="one", equal="equal", acting="signs", method="exact", Q1="", beta="", r="", s="")
    want = one_of(random, {1: ("F_E", "T", "Q1"), 2: ("Q1", "a", "alpha"), 3: ("alpha", "Q1")}[level])
    r = 2 * length * sin(alpha)
    if level == 3 and one_of(random, ("one", "two")) == "two":
        gap = one_of(random, ("6 cm", "8 cm", "10 cm"))
        text.update(supports="two", s=gap, acting="repel")
        r += si(gap, "cm")
    if want == "alpha":
        size = r * (m * SCHOOL_G * tan(alpha) / SCHOOL_K) ** 0.5
        text.update(alpha="", Q1=f"{size * 1e9:.3g} nC")
    elif want == "Q1" and text["supports"] == "one" and level > 1:
        text.update(alpha="", beta=f"{2 * degrees(alpha):g}°")
    text["want"] = want
    return {name: text[name] for name in typed}


# --- the form -----------------------------------------------------------------------------------------------


PARTS = Choice(
    "parts",
    "The tension in the free-body diagram",
    (("whole", "as one arrow"), ("components", "with its two components dashed")),
    quiet=("whole", "components"),
    by_drawing=True,
)

GIVEN = optional(
    HUNG_MASS("m", "Mass of each sphere", "", "2 g; 1 2 3 4 5; 1,5 2,4 3,6"),
    LENGTH("L", "Length of a thread", "", "40 cm; 20 25 30 40 50 60; 35 45 75", unit="m"),
    HALF_LEAN(
        "alpha",
        "Angle of a thread with the vertical",
        "Each thread makes an angle of {} with the vertical.",
        "20°; 20 22 24 25 28 30 35; 21,5 26,5 33 38",
    ),
    WHOLE_LEAN("beta", "Angle between the threads", "The angle between the threads is {}."),
    APART("s", "Distance between the supports", ""),
    GAP("r", "Distance between the spheres", "The distance between their centres is {}."),
    charge("Q1", "Charge on the first sphere", ""),
    COUNT("n", "Electrons too many or too few on the sphere", ""),
    charge("Q2", "Charge on the second sphere", ""),
    PUSH("F_E", "Electrostatic force (size)", "The electrostatic force on each is {}."),
    PULL("T", "Tension in the thread", "The tension in each thread is {}."),
    AT_CUT(
        "a",
        "Acceleration at the instant the thread is cut",
        "Were a thread cut, its sphere would start with an acceleration of {}.",
    ),
)
SAME_SIZE = (("equal", "are equal in size: use the first box only"), ("own", "may differ"))
METHODS = Choice(
    "method",
    "An angle asked for from the charges",
    (("exact", "is worked out exactly"), ("small", "by the small-angle shortcut, with its error")),
    quiet=("exact",),
)
THREADS = Question(
    key="threads",
    title="Two charged spheres on threads",
    **boxes(
        Choice("want", "What is to be found", tuple(WORDS.items()), finds=True, several=True, never=(NO_SPEED,)),
        Choice("supports", "The threads hang from", (("one", "one support"), ("two", "two supports, side by side"))),
        *GIVEN,
        *(ACTING, replace(EQUAL, options=SAME_SIZE), WHICH, METHODS, PARTS, LENGTHS),
        example={"want": "Q1"},
    ),
    plan=plan_threads,
    constants=("k", "g", "e"),
    laws=(EQUILIBRIUM.name, COULOMB.name, SECOND.name),
    adjust=practise,
)
