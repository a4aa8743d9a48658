"""The equations of a chain of bodies, written for what is set up: across and along the surface, body by body."""

from __future__ import annotations

from calc.language.symbols import symbol
from calc.model.answers import Law, Mark
from calc.model.questions import Mistake
from calc.model.relations import Relation, Towards
from calc.topics.forces.words import (
    ALL_ALONG,
    HEAVIER,
    LIGHTER,
    PLAIN_A,
    PLAIN_F,
    PLAIN_N,
    TWO,
    WEIGHT_ALWAYS,
)
from calc.topics.newton.pairs import PLAIN_ONE
from calc.topics.newton.situation_chain import Setup
from calc.topics.shared.motion_laws import KINETIC, PLAIN_STATIC, SECOND, STATIC

STEADY = 1e-9  # m·s⁻² or N; below it rounding alone
EACH_MARKS = (Mark("formula", 2), Mark("substitution"), Mark("answer"))
SINE_N = "You took the sine for the part of the weight across the slope. Use the cosine: {m%s*g*cos(%s)}."
COSINE_D = "You took the cosine for the part of the weight along the slope. Use the sine: {sin(theta)}."
BY_WEIGHT = "You put the weight in for the normal force. Only what presses the surfaces together counts: use {N_%s}."
STATIC_SLIDES = "You used the static coefficient although it slides. Use {%s*N_%s}."
WRONG_MU = "You used the kinetic coefficient. It is at rest here: use {%s}."
STILL = "You used the largest static friction although it stays at rest. It only matches {D}: use that."
ONE_MASS = "You divided by the mass of one body. All of them accelerate: divide by {%s}."
NO_FRICTION = "You left friction out. It acts against the motion: subtract {%s}."
WEIGHT_T = "You made {%s} as large as the weight that hangs. Then it could not accelerate: put {%s*a} in."
NEGATIVE = "You let {%s} point along the field. {%s} is negative: its force points against the field."
REVERSED = "You took {F_E} the other way. Say first whether the charges attract or repel, and draw it."
NET_T = "You made {%s} as large as the net force. Put the other forces on this body in as well."


def joined(terms: list[tuple[int, str]]) -> str:
    """Signed terms as a sum, one with a plus first if there is one."""
    terms = sorted(terms, key=lambda term: -term[0])
    first, *rest = terms
    return (f"-({first[1]})" if first[0] < 0 and "*" in first[1] else "-"[first[0] > 0 :] + first[1]) + "".join(
        f" {'+' if s > 0 else '-'} {t}" for s, t in rest
    )


def drives(here: Setup, n: int) -> list[tuple[int, str]]:
    """The forces on body n along the positive direction, forwards, without friction and strings."""
    if here.shape.hangs(n):
        return [(-1 if n == 1 and here.shape.behind else 1, f"m{n}*g")]
    terms = [(here.force, "P*cos(phi)")] if n == here.acted else []
    terms += [(extra.way, extra.term) for extra in here.extras if extra.n == n]
    return [*terms, (1 if here.falls(n) else -1, f"m{n}*g*sin({here.angle(n)})")] if here.slope else terms


def presses(here: Setup, n: int) -> str:
    """What presses body n against its surface."""
    weight = f"m{n}*g*cos({here.angle(n)})" if here.slope else f"m{n}*g"
    return f"{weight} {'+' if here.push else '-'} P*sin(phi)" if n == here.acted else weight


def normal(here: Setup, n: int) -> Relation:
    """The balance across the surface."""
    weight = f"m{n}*g*cos({here.angle(n)})" if here.slope else f"m{n}*g"
    acted, across = n == here.acted, presses(here, n)
    slips = list[Mistake]()
    if acted or here.slope:
        say = (WEIGHT_ALWAYS % across).replace("{N}", f"{{N_{n}}}")
        slips.append(Mistake("normal-is-weight", f"N_{n}", f"m{n}*g", say))
    if here.slope:
        slips.append(
            Mistake("sin-cos", f"N_{n}", across.replace("cos(theta", "sin(theta"), SINE_N % (n, here.angle(n)))
        )
    if acted:
        other = f"{weight} {'-' if here.push else '+'} P*sin(phi)"
        slips.append(Mistake("vertical-part-wrong-way", f"N_{n}", other, HEAVIER if here.push else LIGHTER))
    return Relation(
        f"N_{n} = {across}",
        what="Balance the forces across the surface",
        why="It does not leave the surface, so the forces at right angles to it balance"
        + (f": P sin φ {'adds to' if here.push else 'takes away from'} what presses it down." if acted else "."),
        units={f"N_{n}": "N"},
        plain=PLAIN_N,
        mistakes=tuple(slips),
    )


def drive(here: Setup) -> Relation | None:
    """D: all forces along the chain, friction left out; None where there is none."""
    terms = [term for n in range(1, here.shape.count + 1) for term in drives(here, n)]
    if not terms:
        return None
    sum_ = joined(terms)
    slips = list[Mistake]()
    if here.slope:
        slips.append(Mistake("sin-cos", "D", sum_.replace("sin(theta", "cos(theta"), COSINE_D))
    if here.force:
        slips.append(Mistake("all-along", "D", sum_.replace("*cos(phi)", ""), ALL_ALONG))
    field = ""
    if here.beside:
        other = joined([(-sign, term) if term == "F_E" else (sign, term) for sign, term in terms])
        slips.append(Mistake("electric-reversed", "D", other, REVERSED))
    for extra in (one for one in here.extras if one.charge and not one.side):
        kind = (
            "positive, so its force points along"
            if extra.way == here.field
            else "negative, so its force points against"
        )
        field = f" {symbol(extra.charge).text} is {kind} the field: {here.where(extra.way).words}."
        if extra.way != here.field:
            other = joined([(-sign, term) if term == extra.term else (sign, term) for sign, term in terms])
            slips.append(Mistake("negative-along-field", "D", other, NEGATIVE % (extra.term, extra.charge)))
    hang = here.shape.behind or here.shape.ahead or here.shape.ridge
    inner = " The forces between the bodies come in pairs and cancel." if here.shape.count > 1 else ""
    return Relation(
        f"D = {sum_}",
        what="Add the forces along the surface, friction left out" if not hang else "Add the forces along the string",
        why=f"{'For the body on the left, ' if here.left else ''}{positive(here)} is positive.{inner}{field}",
        units={"D": "N"},
        sizes=here.sizes,
        plain="This is what friction would have to hold." if here.rough else PLAIN_A,
        directions={"D": pointing(here, "D", 1)},
        mistakes=tuple(slips),
    )


def positive(here: Setup) -> str:
    """The positive direction, at the head of a sentence."""
    said = here.where(1).words
    return said if here.left else said[0].upper() + said[1:]


def limit(here: Setup) -> Relation:
    """The largest static friction, of all that touch the surface."""
    several = len(here.rough) > 1
    static, wrong = (shared(here, kind) for kind in ("s", "k"))
    return Relation(
        f"f_smax = {static}",
        what="The largest static friction" + (" on all of them together" if several else ""),
        why="Static friction can have any size up to this one.",
        units={"f_smax": "N"},
        plain=PLAIN_F,
        marks=TWO,
        quotes=(STATIC.name,),
        mistakes=(Mistake("kinetic-for-static", "f_smax", wrong, WRONG_MU % here.mu("s", here.rough[0])),),
    )


def shared(here: Setup, kind: str) -> str:
    """What friction can be on all bodies together, one coefficient before a bracket where they share it."""
    names = {here.mu(kind, n) for n in here.rough}
    if len(names) == 1 and len(here.rough) > 1:
        return f"{names.pop()}*({' + '.join(f'N_{n}' for n in here.rough)})"
    return " + ".join(f"{here.mu(kind, n)}*N_{n}" for n in here.rough)


def greatest(here: Setup, n: int) -> Relation:
    """Static friction on body n, about to slip."""
    why = "It is about to slip, so static friction has its largest size, against the way it would slip."
    return rubbing(here, n, "s", why, STATIC)


def kinetic(here: Setup, n: int) -> Relation:
    """Kinetic friction on body n."""
    other = STATIC_SLIDES % (here.mu("k", n), n)
    swapped = Mistake("static-for-kinetic", f"f_{n}", f"{here.mu('s', n)}*N_{n}", other)
    return rubbing(here, n, "k", "It slides, so friction is kinetic, against the motion.", KINETIC, swapped)


def rubbing(here: Setup, n: int, kind: str, why: str, law: Law, *mistakes: Mistake) -> Relation:
    """Friction on body n by the coefficient of a kind, static or kinetic, against the way it goes or would go."""
    mu = here.mu(kind, n)
    by_weight = Mistake("weight-for-normal", f"f_{n}", f"{mu}*m{n}*g", BY_WEIGHT % n)
    return Relation(
        f"f_{n} = {mu}*N_{n}",
        what="Friction from the normal force",
        why=why,
        units={f"f_{n}": "N"},
        plain=PLAIN_F,
        marks=TWO,
        quotes=(law.name,),
        directions={f"f_{n}": here.where(-here.way, n)},
        mistakes=(*mistakes, by_weight) if here.slope or n == here.acted else mistakes,
    )


def resting(here: Setup) -> Relation:
    """Static friction on the only body that has any."""
    (n,) = here.rough
    return Relation(
        f"f_{n} = D" if here.way > 0 else f"f_{n} = -D",
        what="The friction that acts",
        why="Nothing moves, so the net force is zero: static friction is just as large as what it holds.",
        units={f"f_{n}": "N"},
        plain=PLAIN_STATIC,
        marks=TWO,
        directions={f"f_{n}": pointing(here, f"f_{n}", -here.way, n)},
        mistakes=(Mistake("largest-although-at-rest", f"f_{n}", "f_smax", STILL),),
    )


def sliding(here: Setup, n: int) -> bool:
    """Whether a friction that is known acts on body n."""
    if here.slips:
        return n in here.rough
    if here.all_at_limit:
        return n in here.rough
    if not here.moves:
        return here.rough == (n,) and drive(here) is not None
    return not here.shape.hangs(n) and here.bodies[n - 1].mu_k > 0


def equation(here: Setup, n: int) -> str:
    """F_net = ma of body n along the chain, positive the way it moves or D points; at rest 0."""
    terms = [(here.way * sign, term) for sign, term in (*drives(here, n), *held(here, n, n))]
    if sliding(here, n):
        terms.append((-1, f"f_{n}"))
    return f"{joined(terms)} = {0 if here.balanced else f'm{n}*a'}"


def held(here: Setup, first: int, last: int) -> list[tuple[int, str]]:
    """The forces along the positive direction that the links at both ends of these bodies have on them."""
    pulls = -1 if here.link == "R" else 1
    ahead = [(pulls, f"{here.link}_{last}")] if last < here.shape.count else []
    return [*ahead, (-pulls, f"{here.link}_{first - 1}")] if first > 1 else ahead


def whole(here: Setup) -> Relation:
    """The equations of all bodies put together, for a."""
    rubs = [f"f_{n}" for n in range(1, here.shape.count + 1) if sliding(here, n)]
    masses = " + ".join(f"m{n}" for n in range(1, here.shape.count + 1))
    alone = here.shape.count == 1
    all_ = masses if alone else f"({masses})"
    pull = [(here.way, "D")] if drive(here) else []
    left = joined([*pull, *((-1, rub) for rub in rubs)])
    slips = list[Mistake]()
    if not alone:
        slips.append(Mistake("one-mass", "a", f"({left})/m1", ONE_MASS % masses))
    if rubs and pull:
        bare = joined(pull)
        slips.append(Mistake("friction-ignored", "a", f"({bare})/{all_}", NO_FRICTION % " + ".join(rubs)))
    return Relation(
        f"{left} = {all_}*a",
        what="Newton's second law" if alone else "Put the equations of all bodies together",
        why=(
            f"The positive direction is that of {'the motion' if here.moves else 'D'}"
            f"{', told of the body on the left' if here.left else ''}: {here.where(here.way).words}."
            + ("" if alone else " All have the same size of acceleration; the forces between them cancel.")
        ),
        units={"a": "m·s⁻²"},
        plain=PLAIN_A,
        marks=EACH_MARKS,
        quotes=(SECOND.name,),
        directions={"a": pointing(here, "a", here.way)},
        mistakes=tuple(slips),
    )


def pointing(here: Setup, name: str, way: int, n: int = 1) -> Towards:
    """The direction of a value of body n whose positive sense is ``way``; none where it is zero, rounding apart."""
    ahead, back = here.where(way, n), here.where(-way, n)
    return lambda v: None if abs(v[name]) < STEADY else ahead if v[name] > 0 else back


def between(here: Setup, link: int, body: int, name: str) -> Relation:
    """The force in a link from the equation of one body."""
    force = f"{here.link}_{link}"
    slips = list[Mistake]()
    if here.moves and here.shape.hangs(body):
        slips.append(Mistake("hanging-weight", force, f"m{body}*g", WEIGHT_T % (force, f"m{body}")))
    elif here.moves:
        slips.append(Mistake("net-force-alone", force, f"m{body}*abs(a)", NET_T % force))
    return Relation(
        equation(here, body),
        what=f"Use the equation of {name} alone",
        why="What joins two bodies has the same size in both equations.",
        units={force: "N"},
        sizes=here.sizes,
        plain=PLAIN_ONE,
        quotes=(SECOND.name,),
        mistakes=tuple(slips),
    )


def links(here: Setup) -> tuple[tuple[int, int], ...]:
    """For each force between bodies that can be found: its number, and the body whose equation gives it."""
    last = here.shape.count
    ends = [(n, body) for n, body in ((1, 1), (last - 1, last)) if last > 1]
    if not here.moves and not here.all_at_limit:  # friction of the others may be anything up to its limit
        ends = [
            (n, body) for n, body in ends if here.shape.hangs(body) or (here.shape.ridge and body not in here.rough)
        ]
    return tuple({n: (n, body) for n, body in reversed(ends)}.values())[::-1]
