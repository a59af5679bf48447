"""Two values are the same within 1e-9 of the larger, texts to the letter."""

from __future__ import annotations

import pytest

from builder.engine.compare import differences, same


@pytest.mark.parametrize(
    ("a", "b", "alike"),
    [
        (1.0, 1.0 + 0.9e-9, True),
        (1.0, 1.0 + 1.1e-9, False),
        (0.0, 0.9e-9, True),
        (0.0, 1.1e-9, False),
        (1e6, 1e6 + 0.9e-3, True),
        (1e6, 1e6 + 1.1e-3, False),
        (-5.0, 5.0, False),
        (True, 1.0, True),
        (False, 1.0, False),
        ("OK", "OK", True),
        ("OK", "ok", False),
        ("1", 1.0, False),
        (0.0, "", False),
        ("-0.00", "0.00", True),
        ("-0", "0", True),
        ("-0.01", "0.01", False),
        ("greatest of (-0, -873)", "greatest of (0, -873)", True),
        ("2 x -0.00 lb", "2 x 0.00 lb", True),
        ("2 x -0.01 lb", "2 x 0.01 lb", False),
        ("2-0", "20", False),
        ("10,948,032,207,919.2188 lb", "10,948,032,207,919.2000 lb", True),
        ("10,948,032,207,919.2188 lb", "10,948,032,307,919.2188 lb", False),
        ("1 / 12,345.678901", "1 / 12,345.678902", False),
        ("–", "-", False),
        ("-", "", False),
    ],
)
def test_same(a, b, alike):
    assert same(a, b) is alike
    assert same(b, a) is alike


def test_a_value_that_is_missing_is_a_difference():
    a = {("S", 0, 0): 1.0, ("S", 1, 0): 2.0}
    b = {("S", 0, 0): 1.0, ("S", 0, 27): "x"}
    assert differences(a, b) == [
        "S!A2: no value in the second",
        "S!AB1: no value in the first",
    ]
    assert differences(a, b, [("S", 0, 0)]) == []
    assert differences(a, b, [("S", 9, 9)]) == ["S!J10: no value in the first and second"]
