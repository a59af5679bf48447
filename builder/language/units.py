"""Units as exponents of base units, exact to the factor.

Feet and inches are separate base units, so that a forgotten 12 is a fault and not a small error.
Pounds are pounds of force.  Dollars and degrees are base units too.  A conversion is one of the
closed list below; the tests prove the list, and every formula, a second time with pint.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from .faults import Fault

BASES = ("lb", "ft", "in", "$", "deg", "mile", "h", "s", "bd ft", "day")
Dimension = tuple[Fraction | int, ...]
NONE: Dimension = (0,) * len(BASES)


def _of(**powers: int) -> Dimension:
    names = ("lb", "ft", "inch", "usd", "deg", "mile", "h", "s", "bdft", "day")
    return tuple(powers.get(name, 0) for name in names)


UNITS: dict[str, Dimension] = {
    "": NONE,
    "each": NONE,
    "lb": _of(lb=1),
    "ft": _of(ft=1),
    "ft²": _of(ft=2),
    "ft³": _of(ft=3),
    "ft⁴": _of(ft=4),
    "in": _of(inch=1),
    "in²": _of(inch=2),
    "in³": _of(inch=3),
    "in⁴": _of(inch=4),
    "psf": _of(lb=1, ft=-2),
    "pcf": _of(lb=1, ft=-3),
    "psi": _of(lb=1, inch=-2),
    "lb/ft": _of(lb=1, ft=-1),
    "lb/in": _of(lb=1, inch=-1),
    "lb·ft": _of(lb=1, ft=1),
    "lb·in": _of(lb=1, inch=1),
    "lb·in²": _of(lb=1, inch=2),
    "lb·ft²": _of(lb=1, ft=2),
    "lb/ft⁴": _of(lb=1, ft=-4),
    "ft/ft": NONE,
    "$": _of(usd=1),
    "$/ft": _of(usd=1, ft=-1),
    "$/ft²": _of(usd=1, ft=-2),
    "deg": _of(deg=1),
    "mph": _of(mile=1, h=-1),
    "ft/s": _of(ft=1, s=-1),
    "s": _of(s=1),
    "each/ft²": _of(ft=-2),
    "$/lb": _of(usd=1, lb=-1),
    "$/mile": _of(usd=1, mile=-1),
    "$/h": _of(usd=1, h=-1),
    "mile": _of(mile=1),
    "h": _of(h=1),
    "h/ft": _of(h=1, ft=-1),
    "h/ft²": _of(h=1, ft=-2),
    "bd ft": _of(bdft=1),
    "day": _of(day=1),
}
"""Every unit a row may have.  ``text`` is no unit: it marks a row whose value is a word."""

TEXT = "text"

_CHAINS = [
    ("ft", "in", 12, "12 in/ft"),
    ("ft²", "in²", 144, "144 in²/ft²"),
    ("ft³", "in³", 1728, "1728 in³/ft³"),
    ("ft⁴", "in⁴", 20736, "20736 in⁴/ft⁴"),
    ("psi", "psf", 144, "144 in²/ft²"),
    ("lb/in", "lb/ft", 12, "12 in/ft"),
    ("lb·ft", "lb·in", 12, "12 in/ft"),
    ("lb·ft²", "lb·in²", 144, "144 in²/ft²"),
]
CONVERSIONS: dict[tuple[str, str], tuple[str, int, str]] = {}
for _big, _small, _factor, _text in _CHAINS:
    CONVERSIONS[_big, _small] = ("*", _factor, _text)
    CONVERSIONS[_small, _big] = ("/", _factor, _text)
"""(from, to) → (operator, whole number, text shown): the only conversions there are."""

_NAMES: dict[Dimension, list[str]] = {}
for _name, _powers in UNITS.items():
    _NAMES.setdefault(_powers, []).append(_name)


def dimension(unit: str) -> Dimension:
    """Return the exponents of a unit of the closed list.

    Raises:
        Fault: the unit is not in the list.
    """
    try:
        return UNITS[unit]
    except KeyError:
        raise Fault(f"unit '{unit}' is not in the list of units") from None


def spelled(powers: Dimension) -> str:
    """Name a dimension: the list's own name where there is one, else its powers."""
    if powers in _NAMES:
        return _NAMES[powers][0] or "a bare number"
    return "·".join(
        base if power == 1 else f"{base}^{power}"
        for base, power in zip(BASES, powers, strict=True)
        if power
    )


def conversion(powers: Dimension, to: str) -> tuple[str, int, str]:
    """Return operator, factor and text that turn a dimension into a unit.

    Raises:
        Fault: there is no such conversion in the closed list.
    """
    for name in _NAMES.get(powers, []):
        if (name, to) in CONVERSIONS:
            return CONVERSIONS[name, to]
    raise Fault(f"no conversion from {spelled(powers)} to {to} in the list")


@cache
def times(a: Dimension, b: Dimension) -> Dimension:
    """Return the dimension of a product."""
    return tuple(i + j for i, j in zip(a, b, strict=True))


@cache
def power(a: Dimension, exponent: Fraction | int) -> Dimension:
    """Return the dimension of a power."""
    return tuple(i * exponent for i in a)
