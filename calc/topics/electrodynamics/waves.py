"""The curve of an alternating emf."""

from __future__ import annotations

from math import pi, sin

STEPS = 48  # points in a period, so that peaks and zeros are among them


def sine(periods: float, size: float = 1.0, period: float = 1.0) -> list[tuple[float, float]]:
    """Points of a sine from time 0 on; its zeros are exact."""
    count = round(periods * STEPS)
    return [(n * period / STEPS, size * round(sin(2 * pi * n / STEPS), 12)) for n in range(count + 1)]
