"""The curve of an alternating emf."""

from __future__ import annotations

from math import cos, pi, sin

STEPS = 48  # points in a period, so that peaks and zeros are among them


def sine(periods: float, size: float = 1.0, period: float = 1.0, *, cosine: bool = False) -> list[tuple[float, float]]:
    """Points of a sine, or of a cosine, from time 0 on."""
    shape = cos if cosine else sin
    count = round(periods * STEPS)
    return [(n * period / STEPS, size * shape(2 * pi * n / STEPS)) for n in range(count + 1)]
