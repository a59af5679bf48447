"""Ratio and verdict of a check, second calculation: two templates and no other."""

from __future__ import annotations

from tests.second.given import constants

OVER = 1.000000001
"""A ratio up to this is 1 but for the last digit."""
LEAST_SHARE = 99
"""A value that has to be at least its limit counts no less than this part of it."""


def at_most(key: str, value: float, limit: float, look: float | None = None,
            worst: str = "NOT OK") -> dict[str, float | str]:
    """Return ratio and verdict of a value that has a greatest limit."""
    return _judged(key, value / limit, look, worst)


def at_least(key: str, value: float, limit: float, look: float | None = None,
             worst: str = "NOT OK") -> dict[str, float | str]:
    """Return ratio and verdict of a value that has a least limit."""
    return _judged(key, limit / max(value, limit / LEAST_SHARE), look, worst)


def _judged(key: str, ratio: float, look: float | None, worst: str) -> dict[str, float | str]:
    if look is None:
        look = constants("own")["look_from"]
    if ratio > OVER:
        word = worst
    elif worst != "LOOK" and ratio > look + 1e-9:
        word = "LOOK"
    else:
        word = "OK"
    return {f"{key}_ratio": ratio, f"{key}_verdict": word}
