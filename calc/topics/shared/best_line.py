"""The straight line that fits readings best, as steps: mean of each column, gradient, intercept, their uncertainty.

Least squares with the distances taken along y: m = Σ(x − x̄)(y − ȳ)/Σ(x − x̄)², through the mean point; standard
errors from the scatter about the line with n − 2 degrees of freedom (NIST/SEMATECH e-Handbook of Statistical
Methods, 4.1.4.1 and 4.4.3). How far off a reading must lie to be pointed out is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from math import sqrt

from calc.model.questions import FSA, NO_MARKS, SA, A, Check, Mistake, Step, Values

BY_EYE = 0.05  # of a gradient or an intercept read from a line drawn by eye. Common practice, no source.
EXACT = 1e-9  # of the largest y: readings that lie on the line
# Student's t, 99,5 %, by degrees of freedom (NIST/SEMATECH e-Handbook, 1.3.6.7.2), and for more of them.
STUDENT = (63.657, 9.925, 5.841, 4.604, 4.032, 3.707, 3.499, 3.355, 3.250)
MANY = 3.25
LEAST_OFF = 0.02  # of the largest y: nothing nearer to the line is pointed out
UPSIDE_DOWN = "You turned the gradient upside down. Divide the change upwards by the change along."


class Line:
    """The readings y against x by the names of their columns: V1, V2, … against I1, I2, …

    without: the numbers of readings that do not belong to the line.
    """

    def __init__(self, x: str, y: str, count: int, without: Collection[int] = ()) -> None:
        self.x, self.y = x, y
        self.numbers = tuple(n for n in range(1, count + 1) if n not in without)
        self.count = len(self.numbers)
        self.squares = " + ".join(f"({x}{n} - {x}_m)^2" for n in self.numbers)
        self.products = " + ".join(f"({x}{n} - {x}_m)*({y}{n} - {y}_m)" for n in self.numbers)

    def values(self, rows: Sequence[Values]) -> dict[str, float]:
        """All readings under their numbered names."""
        return {f"{name}{n}": row[name] for n, row in enumerate(rows, 1) for name in (self.x, self.y)}

    def mean(self, name: str, unit: str, words: str) -> Step:
        """The mean of one column."""
        how = f"({' + '.join(f'{name}{n}' for n in self.numbers)})/{self.count}"
        return Step(
            law=f"{name}_m = {how}",
            make=f"{name}_m = {how}",
            unit=unit,
            marks=NO_MARKS,
            what=f"Mean {words}",
            why="The best line passes through the mean point of all readings.",
            plain="The middle of the readings.",
        )

    def gradient(self, name: str, unit: str, mistakes: tuple[Mistake, ...] = ()) -> Step:
        """The gradient of the best line, once the means are known."""
        return Step(
            law=f"{name} = ({self.products})/({self.squares})",
            make=f"{name} = ({self.products})/({self.squares})",
            unit=unit,
            marks=FSA,
            read_off=BY_EYE,
            what="Gradient of the line of best fit",
            why=(
                "Of all straight lines this one lies nearest to the readings (least squares). On paper: take two points"
                " far apart on your line, not two readings, and divide the change up by the change along."
            ),
            plain="Steepness is how far up for each step to the right.",
            mistakes=(Mistake("upside-down", name, f"({self.squares})/({self.products})", UPSIDE_DOWN), *mistakes),
        )

    def intercept(self, name: str, gradient: str, unit: str, what: str, why: str) -> Step:
        """Where the line meets the vertical axis."""
        return Step(
            law=f"{name} = {self.y}_m - {gradient}*{self.x}_m",
            make=f"{name} = {self.y}_m - {gradient}*{self.x}_m",
            unit=unit,
            marks=SA,
            read_off=BY_EYE,
            what=what,
            why=why,
            plain="Where the line begins.",
        )

    def scatter(self, gradient: str, intercept: str, unit: str) -> Step:
        """The standard deviation of the readings about the line."""
        off = " + ".join(f"({self.y}{n} - {intercept} - {gradient}*{self.x}{n})^2" for n in self.numbers)
        return Step(
            law=f"s = sqrt(({off})/({self.count} - 2))",
            make=f"s = sqrt(({off})/({self.count} - 2))",
            unit=unit,
            marks=NO_MARKS,
            what="Scatter of the readings about the line",
            why=(
                "Each reading lies a little above or below the line. Two of the readings are used up by the line"
                " itself."
            ),
            plain="How far off the line a reading usually lies.",
        )

    def of_gradient(self, name: str, unit: str) -> Step:
        """The standard error of the gradient, from the scatter s."""
        return Step(
            law=f"{name} = s/sqrt({self.squares})",
            make=f"{name} = s/sqrt({self.squares})",
            unit=unit,
            marks=A,
            what="Uncertainty of the gradient",
            why="The further apart the readings lie along the axis, the less their scatter can tilt the line.",
            plain="How far the line could be tilted and still fit.",
        )

    def of_intercept(self, name: str, unit: str) -> Step:
        """The standard error of the intercept, from the scatter s."""
        how = f"s*sqrt(1/{self.count} + {self.x}_m^2/({self.squares}))"
        return Step(
            law=f"{name} = {how}",
            make=f"{name} = {how}",
            unit=unit,
            marks=A,
            what="Uncertainty of the intercept",
            why="A tilt of the line moves its intercept the more, the further the readings lie from the axis.",
            plain="How far up or down the line could start and still fit.",
        )

    def balance(self, gradient: str, intercept: str) -> Check:
        """What proves that no line lies nearer."""

        def holds(v: Values) -> bool:
            off = [v[f"{self.y}{n}"] - v[intercept] - v[gradient] * v[f"{self.x}{n}"] for n in self.numbers]
            size = sum(abs(v[f"{self.y}{n}"]) for n in self.numbers)
            most = max(abs(v[f"{self.x}{n}"]) for n in self.numbers)
            turned = sum(one * v[f"{self.x}{n}"] for one, n in zip(off, self.numbers, strict=True))
            return abs(sum(off)) <= EXACT * size and abs(turned) <= EXACT * size * most

        return Check(
            "Readings above the line and readings below it balance",
            words="What they lie above and what they lie below comes to nothing: no other straight line lies nearer.",
            holds=holds,
        )


def fitted(points: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """Gradient and intercept of the best line; x must not be the same everywhere."""
    x_m, y_m = (sum(column) / len(points) for column in zip(*points, strict=True))
    m = sum((x - x_m) * (y - y_m) for x, y in points) / sum((x - x_m) ** 2 for x, _ in points)
    return m, y_m - m * x_m


def scattered(points: Sequence[tuple[float, float]]) -> bool:
    """Whether the readings lie off their line at all."""
    m, b = fitted(points)
    return max(abs(y - m * x - b) for x, y in points) > EXACT * max(abs(y) for _, y in points)


def far_off(points: Sequence[tuple[float, float]]) -> dict[int, float]:
    """The readings that lie further from the line of all the others than their scatter explains: how far above it.

    Four readings at least are needed. A reading is left in: to leave it out is for who took it.
    """
    found = dict[int, float]()
    for n, (x, y) in enumerate(points):
        others = [*points[:n], *points[n + 1 :]]
        if len(others) < 3 or len({one for one, _ in others}) == 1:
            continue
        m, b = fitted(others)
        off = y - m * x - b
        free = len(others) - 2
        s = sqrt(sum((v - m * u - b) ** 2 for u, v in others) / free)
        x_m = sum(u for u, _ in others) / len(others)
        lever = 1 + 1 / len(others) + (x - x_m) ** 2 / sum((u - x_m) ** 2 for u, _ in others)
        t = STUDENT[free - 1] if free <= len(STUDENT) else MANY
        if abs(off) > max(t * s * sqrt(lever), LEAST_OFF * max(abs(v) for _, v in points)):
            found[n] = off
    return found
