"""Drawn questions, hints, revision."""
