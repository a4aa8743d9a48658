"""A charged sphere held on one line, up or down a smooth slope or straight up and down.

The string and the electrostatic force lie along the line; the weight acts along it with
F_g∥ = mg sin θ on a slope and with F_g = mg on a vertical line. With "up" positive
T + F_E − F_g∥ = 0, each force with its own sign; across a slope N = mg cos θ.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.figures import Force
from calc.model.answers import Direction, Mark, Point
from calc.model.questions import FSA, NO_MARKS, SA, A, Data, Mistake, Refusal, Step, Values
from calc.topics.equilibrium.relations import PLAIN_BALANCE, coulomb, counting, cut, steps_of
from calc.topics.equilibrium.shared import (
    BALANCE_MARKS,
    arrow_points,
    kind,
    neutral,
    signs,
)
from calc.working.chain import spread

NO_LIFT = (
    "No equilibrium this way: the electrostatic force points {down}, like the weight, and nothing pulls {up}. "
    "Turn one charge's sign, or put the fixed charge on the other side."
)  # fmt: skip


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
            options = (("up-slope", "up the slope"), ("down-slope", "down the slope"))
        else:
            options = (("up", "upwards"), ("down", "downwards"))
        return Direction(*options[0 if up > 0 else 1], options=options)

    def words(self, up: int) -> str:
        return self.way(up).words

    # --- the ways from one quantity to another

    def weight_steps(self) -> list[Step]:
        if not self.slope:
            return [
                Step("F_g = m*g", "F_g = m*g", "Find the weight", "The weight acts straight down.", "N", NO_MARKS, direction=self.way(-1),
                     plain="How hard the earth pulls on the sphere."),
                Step("F_g = m*g", "m = F_g/g", "Find the mass from the weight", "The weight is m times g.", "kg", SA,
                     mistakes=(Mistake("multiplied", "m", "F_g*g", "Divide by g: m = F_g/g."),)),
            ]  # fmt: skip
        swapped = "Small θ: small pull down the slope. The component along the slope has sin θ."
        across = "N balances the component across the slope, which has cos θ: nearly the whole weight on a gentle slope."
        law = "F_gpar = m*g*sin(theta)"
        return [
            Step(law, law, "Resolve the weight along the slope", "Only this component of the weight acts along the slope.", "N", NO_MARKS, direction=self.way(-1),
                 plain="On a gentle slope gravity pulls only a little along it; on a steep one nearly with all its strength.",
                 mistakes=(Mistake("sin-cos", "F_gpar", "m*g*cos(theta)", swapped, "sin and cos are exchanged"),
                           Mistake("not-resolved", "F_gpar", "m*g", "Only a component of the weight acts along the slope: use mg sin θ."))),
            Step("N = m*g*cos(theta)", "N = m*g*cos(theta)", "Balance the forces across the slope", "T and F_E have no component across the slope, so N alone balances mg cos θ.", "N", FSA,
                 direction=PERPENDICULAR, plain="The slope pushes back just as hard as the sphere presses on it.",
                 mistakes=(Mistake("sin-cos", "N", "m*g*sin(theta)", across, "sin and cos are exchanged"),
                           Mistake("not-resolved", "N", "m*g", "On a slope N is less than the weight: use mg cos θ."))),
            Step(law, "m = F_gpar/(g*sin(theta))", "Find the mass from the component along the slope", "F_g∥ = mg sin θ, with m alone on one side.", "kg", SA,
                 mistakes=(Mistake("sin-cos", "m", "F_gpar/(g*cos(theta))", swapped, "sin and cos are exchanged"),)),
            Step("N = m*g*cos(theta)", "m = N/(g*cos(theta))", "Find the mass from the normal force", "N = mg cos θ, with m alone on one side.", "kg", FSA,
                 mistakes=(Mistake("sin-cos", "m", "N/(g*sin(theta))", across, "sin and cos are exchanged"),)),
            Step(law, "theta = asin(F_gpar/(m*g))", "Find the angle from the component along the slope", "F_g∥ = mg sin θ: the inverse sine gives the angle.", "°", SA,
                 mistakes=(Mistake("sin-cos", "theta", "acos(F_gpar/(m*g))", swapped, "sin and cos are exchanged"),)),
            Step("N = m*g*cos(theta)", "theta = acos(N/(m*g))", "Find the angle from the normal force", "N = mg cos θ: the inverse cosine gives the angle.", "°", FSA,
                 mistakes=(Mistake("sin-cos", "theta", "asin(N/(m*g))", across, "sin and cos are exchanged"),)),
            Step("tan(theta) = F_gpar/N", "theta = atan(F_gpar/N)", "Find the angle from both components of the weight", "F_g∥ = mg sin θ and N = mg cos θ: divided, m and g cancel.", "°", FSA),
        ]  # fmt: skip

    def balance_steps(self) -> list[Step]:
        """F_net = 0 along the line, for T, F_E and the weight's part; none while the direction of F_E is open."""
        if self.neutral:
            return self.bare_balance_steps()
        if not self.lift:
            return []
        w, up, down = self.weight, self.words(1), self.words(-1)
        law = {("up", 1): f"T + F_E - {w} = 0", ("up", -1): f"T - F_E - {w} = 0",
               ("down", 1): f"F_E - T - {w} = 0"}.get((self.string, self.lift), f"F_E - {w} = 0")  # fmt: skip
        makes = {
            ("up", 1): (f"T = {w} - F_E", f"F_E = {w} - T", f"{w} = T + F_E"),
            ("up", -1): (f"T = {w} + F_E", f"F_E = T - {w}", f"{w} = T - F_E"),
            ("down", 1): (f"T = F_E - {w}", f"F_E = T + {w}", f"{w} = F_E - T"),
        }.get((self.string, self.lift), (f"F_E = {w}", f"{w} = F_E"))
        pull = (
            "T and F_E"
            if self.string == "up" and self.lift > 0
            else "T"
            if self.string == "up"
            else "F_E"
        )
        other = "the weight" if not self.slope else "the weight's component"
        against = {("up", -1): f"F_E and {other} pull", ("down", 1): f"T and {other} pull"}.get((self.string, self.lift), f"{other} pulls")  # fmt: skip
        why = f"At rest, so F_net = 0. Take {up} as positive: {pull} {'act' if ' and ' in pull else 'acts'} {up}; {against} {down}."
        whole = "m*g*sin(theta)" if self.slope else "m*g"
        steps = []
        for make in makes:
            name = make.split(" = ")[0]
            marks: tuple[Mark, ...] = BALANCE_MARKS
            if self.string == "none":
                marks = (Mark("formula"), Mark("answer"))
            elif name == w:
                marks = (Mark("formula"), Mark("substitution"))
            mistakes = {
                "T": (
                    Mistake("reversed", "T", turned(make), "Like repels, unlike attracts: which way does F_E point? Then add or subtract.", "the answer differs by 2F_E"),
                    Mistake("charge-forgotten", "T", whole, "The charge still acts: F_E belongs in the sum."),
                ),
                "F_E": (
                    Mistake("reversed", "F_E", turned(make), "Draw the forces again: which of them point the same way?", "one force is taken the other way"),
                ) if " - " in make or " + " in make else (),
            }.get(name, ())  # fmt: skip
            toward = {
                "T": self.way(1 if self.string == "up" else -1),
                "F_E": self.way(self.lift),
                w: self.way(-1),
            }[name]
            steps.append(
                Step(law, make, f"Let the forces along the {'slope' if self.slope else 'vertical'} add up to zero", why, "N", marks, direction=toward,
                     plain=PLAIN_BALANCE, mistakes=mistakes)
            )  # fmt: skip
        return steps

    def bare_balance_steps(self) -> list[Step]:
        """F_net = 0 along the line without an electrostatic force: the string carries the weight's part alone."""
        w, up, down = self.weight, self.words(1), self.words(-1)
        part = "the weight's component" if self.slope else "the weight"
        what = f"Let the forces along the {'slope' if self.slope else 'vertical'} add up to zero"
        why = f"Without charge there is no electrostatic force. At rest, F_net = 0: T acts {up}, {part} pulls {down}."
        steps = [
            Step(f"T - {w} = 0", f"T = {w}", what, why, "N", BALANCE_MARKS, direction=self.way(1), plain=PLAIN_BALANCE),
            Step(f"T - {w} = 0", f"{w} = T", what, why, "N", (Mark("formula"), Mark("substitution")), direction=self.way(-1), plain=PLAIN_BALANCE),
        ]  # fmt: skip
        if self.slope:
            law, reason = "m*a = m*g*sin(theta)", "Once the string is cut only the weight's component acts along the slope; m cancels."  # fmt: skip
            steps += [
                Step(law, "a = g*sin(theta)", "Write the second law just after the cut", reason, "m·s⁻²", direction=self.way(-1),
                     mistakes=(Mistake("sin-cos", "a", "g*cos(theta)", "Small θ: small pull down the slope. The component along the slope has sin θ.", "sin and cos are exchanged"),)),
                Step(law, "theta = asin(a/g)", "Write the second law just after the cut", reason, "°"),
            ]  # fmt: skip
        return steps

    def field_steps(self, d: float | None, r: float | None) -> list[Step]:
        """The net field at the string's far end, d from the sphere; needs both signs."""
        if d is None or r is None or not (self.sign_1 and self.sign_2):
            return []
        end = 1 if self.string == "up" else -1  # the sphere is at 0, up is positive
        beside = self.side == end
        if beside and abs(r - d) <= 1e-9 * r:
            raise Refusal("d", "Field is undefined there: the fixed charge is at that very point. Change one of the distances.")  # fmt: skip
        apart = ("D = r - d" if r > d else "D = d - r") if beside else "D = r + d"
        first = self.sign_1 * end
        second = self.sign_2 * (1 if end * d > self.side * r else -1)
        one = self.said(self.sign_1, first, "The sphere")
        two = self.said(self.sign_2, second, "The fixed charge")
        second_charge = "Q1" if self.equal else "Q2"
        steps = [
            Step("E_1 = k*Q1/d^2", "E_1 = k*Q1/d^2", "Find the field of the sphere there", one, "N·C⁻¹", FSA, sizes=("Q1",), direction=self.way(first),
                 plain="A field says what a positive charge would feel, newton for each coulomb.",
                 mistakes=(Mistake("not-squared", "E_1", "k*Q1/d", "Inverse square: square the distance."),)),
            Step(apart, apart, "Measure the distance from the fixed charge to that point", "Each field has its own distance, from its own charge.", "m", NO_MARKS,
                 mistakes=(Mistake("wrong-distance", "D", "r", "Measure from the fixed charge to the point, not to the sphere."),)),
            Step(f"E_2 = k*{second_charge}/D^2", f"E_2 = k*{second_charge}/D^2", "Find the field of the fixed charge there", two, "N·C⁻¹", (Mark("substitution"),), sizes=(second_charge,),
                 direction=self.way(second), mistakes=(Mistake("not-squared", "E_2", f"k*{second_charge}/D", "Inverse square: square the distance."),)),
        ]  # fmt: skip
        net = "E_net = E_1 + E_2" if first == second else "E_net = abs(E_1 - E_2)"
        why = "Both fields point the same way: add them." if first == second else "The fields point opposite ways: subtract the smaller from the larger; the larger gives the direction."  # fmt: skip

        def net_way(v: Values) -> Direction | None:
            return (
                self.way(first if first == second or v["E_1"] > v["E_2"] else second)
                if v["E_net"]
                else None
            )

        other = "abs(E_1 - E_2)" if first == second else "E_1 + E_2"
        steps.append(
            Step(net, net, "Add the fields as vectors", why, "N·C⁻¹", A, direction=net_way,
                 plain="Two winds along one line: together they are stronger, against each other weaker.",
                 mistakes=(Mistake("wrong-sum", "E_net", other, "Draw an arrow for each field at the point: same way, add; opposite ways, subtract."),))
        )  # fmt: skip
        return steps

    def said(self, sign: int, up: int, who: str) -> str:
        """Why the field of one charge points as it does."""
        name, run = ("positive", "away from") if sign > 0 else ("negative", "towards")
        return f"{who} is {name}: its field points {run} it, {self.words(up)}."

    def mass_from_cut(self) -> list[Step]:
        """m where only F_E, the angle and the acceleration after the cut are given."""
        if not self.slope or self.string == "none" or not self.lift:
            return []
        law = {
            ("up", 1): "m*a = m*g*sin(theta) - F_E", ("up", -1): "m*a = m*g*sin(theta) + F_E",
            ("down", 1): "m*a = F_E - m*g*sin(theta)",
        }[self.string, self.lift]  # fmt: skip
        make = {
            ("up", 1): "m = F_E/(g*sin(theta) - a)", ("up", -1): "m = F_E/(a - g*sin(theta))",
            ("down", 1): "m = F_E/(a + g*sin(theta))",
        }[self.string, self.lift]  # fmt: skip
        return [
            Step(law, make, "Write the second law just after the cut", "The tension is gone; the other two forces along the slope are unchanged and give the acceleration.", "kg", BALANCE_MARKS),
        ]  # fmt: skip

    def ways(self, data: Data) -> list[Step]:
        """Every step this set-up allows."""
        steps = self.weight_steps() + self.balance_steps()
        if not self.neutral:
            toward = self.way(self.lift) if self.lift else None
            steps += steps_of(
                coulomb(toward, self.sign_1, self.sign_2, self.equal), counting(self.sign_1)
            )
        if self.string != "none":
            alone = "m*(g*sin(theta))" if self.slope else "m*(g)"
            forgot = Mistake("charge-forgotten", "F_net", alone, "The charge still acts: keep F_E in the net force.")  # fmt: skip
            steps += steps_of(*cut(self.way(self.motion), forgot))
            steps += self.mass_from_cut()
        return steps

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
            rows.append(("T", f"the tension, along the string, {self.words(1 if self.string == 'up' else -1)}"))  # fmt: skip
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
                Point("It does not depend on where the sphere is, so the acceleration stays the same.", 1, ("stays the same",)),
            )  # fmt: skip
        towards = self.motion == self.side
        rises = "larger" if towards else "smaller"
        first = f"The sphere moves {'towards' if towards else 'away from'} the fixed charge: r becomes {'smaller' if towards else 'larger'}, so F_E becomes {rises}."
        if self.lift == self.motion:
            helps, grows = "with the motion", towards
        else:
            helps, grows = "against the motion", not towards
        second = f"F_E acts {self.words(self.lift)}, {helps}, so the net force and the acceleration {'grow' if grows else 'shrink'}."
        return (
            Point(first, 1, (f"F_E becomes {rises}",)),
            Point(second, 1, ("grow" if grows else "shrink",)),
        )

    @property
    def grows(self) -> bool:
        """Whether the acceleration grows just after the cut."""
        return (self.motion == self.side) == (self.lift == self.motion)

    @property
    def unstable(self) -> bool:
        """Held by nothing but attraction from above."""
        return self.string == "none" and self.side > 0


PERPENDICULAR = Direction(
    "away",
    "at right angles to the slope, away from it",
    (("away", "at right angles to the slope, away from it"), ("into", "at right angles to the slope, into it")),
)  # fmt: skip


def turned(make: str) -> str:
    """The right side with its plus and minus exchanged; its size only."""
    right = make.split(" = ")[1]
    if " - " in right:
        return right.replace(" - ", " + ")
    return f"abs({right.replace(' + ', ' - ')})"


def line_of(data: Data, slope: bool) -> Line:
    """The set-up the data describe; refuses one that cannot be at rest, or whose direction nothing tells."""
    side = 1 if data.choices["where"] == "above" else -1
    string, equal = data.choices["string"], data.choices.get("equal") == "equal"
    acting = kind(data)
    if neutral(data):
        return neutral_line(
            data, Line(slope, side, 0, string, equal, *signs(data, 0), neutral=True)
        )
    lift = -acting * side
    if not acting:
        lift = told_by_sizes(data, slope, string)
    acting = -lift * side
    line = Line(slope, side, lift, string, equal, *signs(data, acting))
    if lift < 0 and string != "up":
        raise Refusal("acting" if data.choices.get("acting") != "signs" else "string",
                      NO_LIFT.format(up=line.words(1), down=line.words(-1)))  # fmt: skip
    return line


def neutral_line(data: Data, line: Line) -> Line:
    """The set-up without an electrostatic force, found possible."""
    if data.choices.get("acting", "signs") != "signs":
        raise Refusal("acting", "A force of zero neither attracts nor repels. Choose “do what their signs say”, or change the zero.")  # fmt: skip
    zero = any(data.has(name) and data.values[name] == 0 for name in ("Q1", "Q2"))
    if data.values.get("F_E") and zero:
        raise Refusal("F_E", "Without charge there is no electrostatic force: leave this box empty, or type a charge.")  # fmt: skip
    if not zero and data.has("Q1") and (data.has("Q2") or line.equal):
        raise Refusal("F_E", "Two charges always exert a force on each other: leave this box empty, or change a charge.")  # fmt: skip
    if line.string != "up":
        raise Refusal("string", f"Without charge there is no electrostatic force, and nothing pulls the sphere {line.words(1)}. Choose a string that does, or type a charge.")  # fmt: skip
    return line


def told_by_sizes(data: Data, slope: bool, string: str) -> int:
    """Which way F_E points where signs do not tell: against the weight without a pull up, else by T beside the weight's part."""
    if string != "up":
        return 1
    known = Line(slope, -1, 1, "none")
    follows = spread(data.values, known.weight_steps(), data.settings.constants())
    pull = follows.get(known.weight)
    if pull is None or not data.has("T"):
        return 0
    return 1 if data.values["T"] < pull else -1 if data.values["T"] > pull else 0
