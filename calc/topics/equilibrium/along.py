"""A charged sphere held on one line, up or down a smooth slope or straight up and down.

The string and the electrostatic force lie along the line; the weight acts along it with
F_g∥ = mg sin θ on a slope and with F_g = mg on a vertical line. With "up" positive
T + F_E − F_g∥ = 0, each force with its own sign; across a slope N = mg cos θ.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from calc.figures import Force
from calc.model.answers import Direction, Mark, Point
from calc.model.directions import ALONG_SLOPE, FROM_SLOPE, UP_DOWN
from calc.model.questions import FSA, NO_MARKS, A, Data, Mistake, Refusal, Step, Values
from calc.model.relations import Relation
from calc.topics.equilibrium.line_laws import BARE_CUT, COMPONENTS, NORMAL, PARALLEL, WEIGHT, balance, mass_from_cut
from calc.topics.equilibrium.relations import alone, coulomb, counting, cut, directed, steps_of
from calc.topics.equilibrium.shared import arrow_points, kind, neutral, signs
from calc.working.chain import spread

NO_LIFT = (
    "No equilibrium this way: the electrostatic force points {down}, like the weight, and nothing pulls {up}. "
    "Turn one charge's sign, or put the fixed charge on the other side."
)
WHOSE_DISTANCE = "You used {r}, which ends at the sphere. Measure from the fixed charge to the point instead."
SAME_WAY = "You subtracted the fields. Draw an arrow for each at the point: they point the same way, so add them."
OPPOSITE_WAYS = "You added the fields. Draw an arrow for each at the point: they point opposite ways, so subtract them."
FIELD_SQUARED = "You divided by the distance only once. The field falls with its square, so square the distance first."
STILL_ACTS = (
    "You counted the weight alone. The charges still act on each other after the cut: keep {F_E} in the net force."
)


@dataclass(frozen=True)
class Line:
    """One set-up. side: +1 with the fixed charge further up, −1 further down.

    lift: +1 where F_E points up, −1 down, 0 where nothing tells or there is none. string: "up" (it pulls up),
    "down" or "none". sign_1, sign_2: signs of the charges, 0 where not known. neutral: a charge or the force is zero.
    """

    slope: bool
    side: int
    lift: int
    string: str
    equal: bool = False
    sign_1: int = 0
    sign_2: int = 0
    neutral: bool = False

    @property
    def other(self) -> str:
        """The name of the fixed charge."""
        return "Q1" if self.equal else "Q2"

    @property
    def weight(self) -> str:
        """The name of the part of the weight that acts along the line."""
        return "F_gpar" if self.slope else "F_g"

    @property
    def motion(self) -> int:
        """Which way the sphere starts when the string is cut: +1 up, −1 down."""
        return -1 if self.string == "up" else 1

    def way(self, up: int) -> Direction:
        """Up or down the line as a direction that can be asked for."""
        if self.slope:
            return ALONG_SLOPE.of("up-slope" if up > 0 else "down-slope")
        return UP_DOWN.of("up" if up > 0 else "down")

    def words(self, up: int) -> str:
        return self.way(up).words

    # --- the laws that hold

    def laws(self) -> tuple[Relation, ...]:
        """Every law of this set-up, with the directions it gives."""
        return _laws(self)

    def weight_laws(self) -> tuple[Relation, ...]:
        """The weight, on a slope its part along it and the normal force."""
        down = self.way(-1)
        if not self.slope:
            return (directed(WEIGHT, {"F_g": down}),)
        return directed(PARALLEL, {"F_gpar": down}), directed(NORMAL, {"N": FROM_SLOPE.of("away")}), COMPONENTS

    def balance_laws(self) -> tuple[Relation, ...]:
        """F_net = 0 along the line, for T, F_E and the weight's part; none while the direction of F_E is open."""
        if not (self.lift or self.neutral):
            return ()
        up, down = self.words(1), self.words(-1)
        other = "the weight's component" if self.slope else "the weight"
        if self.neutral:
            why = (
                f"Without charge there is no electrostatic force. At rest, F_net = 0: T acts {up}, {other} pulls"
                f" {down}."
            )
        else:
            lifting = ["T"] * (self.string == "up") + ["F_E"] * (self.lift > 0)
            pulling = ["F_E"] * (self.lift < 0) + ["T"] * (self.string == "down") + [other]
            act, pull = ("act" if lifting[1:] else "acts", "pull" if pulling[1:] else "pulls")
            why = (
                f"At rest, so F_net = 0. Take {up} as positive: {' and '.join(lifting)} {act} {up};"
                f" {' and '.join(pulling)} {pull} {down}."
            )
        ways = {
            "T": self.way(1 if self.string == "up" else -1),
            "F_E": self.way(self.lift or 1),
            self.weight: self.way(-1),
        }
        law = directed(balance(self.string, self.lift, self.weight, why), ways)
        return (law, directed(BARE_CUT, {"a": self.way(-1)})) if self.neutral and self.slope else (law,)

    def field_laws(self, d: float | None, r: float | None) -> tuple[Relation, ...]:
        """The net field at the string's far end, d from the sphere; needs both signs."""
        if d is None or r is None or not (self.sign_1 and self.sign_2):
            return ()
        end = 1 if self.string == "up" else -1  # the sphere is at 0, up is positive
        beside = self.side == end
        if beside and abs(r - d) <= 1e-9 * r:
            raise Refusal(
                "d", "Field is undefined there: the fixed charge is at that very point. Change one of the distances."
            )
        apart = ("D = r - d" if r > d else "D = d - r") if beside else "D = r + d"
        first = self.sign_1 * end
        second = self.sign_2 * (1 if end * d > self.side * r else -1)
        return (
            self.field_of("Q1", "E_1 = k*Q1/d^2", "The sphere", self.sign_1, first),
            alone(
                Step(
                    apart,
                    apart,
                    "Measure the distance from the fixed charge to that point",
                    "Each field has its own distance, from its own charge.",
                    "m",
                    NO_MARKS,
                    mistakes=(Mistake("wrong-distance", "D", "r", WHOSE_DISTANCE),),
                )
            ),
            self.field_of(self.other, f"E_2 = k*{self.other}/D^2", "The fixed charge", self.sign_2, second),
            self.net_field(first, second),
        )

    def field_of(self, charge: str, law: str, who: str, sign: int, up: int) -> Relation:
        """The field of one charge at the string's end, where it points ``up``."""
        name, run = ("positive", "away from") if sign > 0 else ("negative", "towards")
        first = who == "The sphere"
        step = Step(
            law,
            law,
            f"Find the field of {who.lower()} there",
            f"{who} is {name}: its field points {run} it, {self.words(up)}.",
            "N·C⁻¹",
            FSA if first else (Mark("substitution"),),
            sizes=(charge,),
            direction=self.way(up),
            plain="A field says what a positive charge would feel, newton for each coulomb." if first else "",
        )
        slip = Mistake("not-squared", step.makes, step.how.removesuffix("^2"), FIELD_SQUARED)
        return alone(replace(step, mistakes=(slip,)))

    def net_field(self, first: int, second: int) -> Relation:
        """Both fields together; ``first`` and ``second``: which way each points, up positive."""
        same = first == second
        added, taken = "E_1 + E_2", "abs(E_1 - E_2)"
        net = f"E_net = {added if same else taken}"

        def way(v: Values) -> Direction | None:
            return self.way(first if same or v["E_1"] > v["E_2"] else second) if v["E_net"] else None

        return alone(
            Step(
                net,
                net,
                "Add the fields as vectors",
                "Both fields point the same way: add them."
                if same
                else "The fields point opposite ways: subtract the smaller from the larger; the larger gives the"
                " direction.",
                "N·C⁻¹",
                A,
                direction=way,
                plain="Two winds along one line: together they are stronger, against each other weaker.",
                mistakes=(
                    Mistake("wrong-sum", "E_net", taken if same else added, SAME_WAY if same else OPPOSITE_WAYS),
                ),
            )
        )

    # --- words and drawings

    def forces(self, v: Values, cut: bool = False, angle: float = 0.0) -> list[Force]:
        """The real forces on the sphere, on the page; sizes from the values."""
        along = angle if self.slope else 90.0
        forces = [Force("F_g", v["F_gtotal"], 270.0)]
        if self.slope:
            forces.append(Force("N", v["N"], angle + 90))
        if self.string != "none" and not cut:
            forces.append(Force("T", v["T"], along if self.string == "up" else along + 180))
        if not self.neutral:
            forces.append(Force("F_E", v["F_E"], along if self.lift > 0 else along + 180))
        return forces

    def arrows(self, v: Values | None = None, cut: bool = False) -> tuple[Point, ...]:
        """The memo of the free-body diagram; a string that is slack has no arrow."""
        rows = [("F_g", "the weight, straight down")]
        if self.slope:
            rows.append(("N", "the normal force, away from the slope at right angles to it"))
        if self.string != "none" and not cut and not (v and v.get("T", 1.0) == 0):
            rows.append(("T", f"the tension, along the string, {self.words(1 if self.string == 'up' else -1)}"))
        if self.neutral:
            return arrow_points(*rows)
        fixed = "the fixed charge"
        push = f"away from {fixed}" if self.side * self.lift < 0 else f"towards {fixed}"
        rows.append(("F_E", f"the electrostatic force, {push}, {self.words(self.lift)}"))
        return arrow_points(*rows)

    def after(self) -> tuple[Point, ...]:
        """Why the acceleration grows or shrinks once the sphere moves, or neither: two marks."""
        if self.neutral:
            alone = (
                "the weight's component alone acts along the slope"
                if self.slope
                else "the weight alone acts along the vertical"
            )
            return (
                Point(f"There is no electrostatic force: {alone}.", 1, ("no electrostatic force",)),
                Point(
                    "It does not depend on where the sphere is, so the acceleration stays the same.",
                    1,
                    ("stays the same",),
                ),
            )
        towards = self.motion == self.side
        rises = "larger" if towards else "smaller"
        first = (
            f"The sphere moves {'towards' if towards else 'away from'} the fixed charge: r becomes"
            f" {'smaller' if towards else 'larger'}, so F_E becomes {rises}."
        )
        if self.lift == self.motion:
            helps, grows = "with the motion", towards
        else:
            helps, grows = "against the motion", not towards
        second = (
            f"F_E acts {self.words(self.lift)}, {helps}, so the net force and the acceleration"
            f" {'grow' if grows else 'shrink'}."
        )
        return (Point(first, 1, (f"F_E becomes {rises}",)), Point(second, 1, ("grow" if grows else "shrink",)))

    @property
    def grows(self) -> bool:
        """Whether the acceleration grows just after the cut."""
        return (self.motion == self.side) == (self.lift == self.motion)

    @property
    def unstable(self) -> bool:
        """Held by nothing but attraction from above."""
        return self.string == "none" and self.side > 0


@lru_cache(maxsize=64)
def _laws(line: Line) -> tuple[Relation, ...]:
    """Made once for a set-up, with the steps they allow: every answer asks for them."""
    laws = [*line.weight_laws(), *line.balance_laws()]
    if not line.neutral:
        toward = line.way(line.lift) if line.lift else None
        laws += [coulomb(toward, line.sign_1, line.sign_2, line.equal), counting(line.sign_1)]
    if line.string != "none":
        alone = "m*(g*sin(theta))" if line.slope else "m*(g)"
        forgot = Mistake("charge-forgotten", "F_net", alone, STILL_ACTS)
        laws += cut(line.way(line.motion), forgot)
        if line.slope and line.lift:
            laws.append(mass_from_cut(line.string, line.lift))
    return tuple(laws)


def line_of(data: Data, slope: bool) -> Line:
    """The set-up the data describe; refuses one that cannot be at rest, or whose direction nothing tells."""
    side = 1 if data.choices["where"] == "above" else -1
    string, equal = data.choices["string"], data.choices.get("equal") == "equal"
    acting = kind(data)
    if neutral(data):
        return neutral_line(data, Line(slope, side, 0, string, equal, *signs(data, 0), neutral=True))
    lift = -acting * side
    if not acting:
        lift = told_by_sizes(data, slope, string)
    acting = -lift * side
    line = Line(slope, side, lift, string, equal, *signs(data, acting))
    if lift < 0 and string != "up":
        raise Refusal(
            "acting" if data.choices.get("acting") != "signs" else "string",
            NO_LIFT.format(up=line.words(1), down=line.words(-1)),
        )
    return line


def neutral_line(data: Data, line: Line) -> Line:
    """The set-up without an electrostatic force, found possible."""
    if data.choices.get("acting", "signs") != "signs":
        raise Refusal(
            "acting",
            "A force of zero neither attracts nor repels. Choose “do what their signs say”, or change the zero.",
        )
    zero = any(data.has(name) and data.values[name] == 0 for name in ("Q1", "Q2"))
    if data.values.get("F_E") and zero:
        raise Refusal("F_E", "Without charge there is no electrostatic force: leave this box empty, or type a charge.")
    if not zero and data.has("Q1") and (data.has("Q2") or line.equal):
        raise Refusal(
            "F_E", "Two charges always exert a force on each other: leave this box empty, or change a charge."
        )
    if line.string != "up":
        raise Refusal(
            "string",
            f"Without charge there is no electrostatic force, and nothing pulls the sphere {line.words(1)}. Choose a"
            " string that does, or type a charge.",
        )
    return line


def told_by_sizes(data: Data, slope: bool, string: str) -> int:
    """Which way F_E points where signs do not tell: against the weight without a pull up, else by T beside the
    weight's part."""
    if string != "up":
        return 1
    known = Line(slope, -1, 1, "none")
    follows = spread(data.values, steps_of(*known.weight_laws()), data.settings.constants())
    pull = follows.get(known.weight)
    if pull is None or not data.has("T"):
        return 0
    return 1 if data.values["T"] < pull else -1 if data.values["T"] > pull else 0
