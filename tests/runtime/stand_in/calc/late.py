"""A module nothing imports at start."""

WORD = "found"
