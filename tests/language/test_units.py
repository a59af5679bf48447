"""Units: every conversion and rule of ours proved a second time with pint, pounds as force."""

from __future__ import annotations

import math
from fractions import Fraction

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.language import (
    Ask,
    Constant,
    Fault,
    Series,
    Sheet,
    absolute,
    all_of,
    any_of,
    arc_cosine,
    arc_tangent,
    bare,
    choose,
    cosine,
    degrees,
    exponential,
    greatest,
    largest,
    least,
    logarithm,
    nearest,
    no,
    radians,
    root,
    sine,
    sum_over,
    tally,
    tangent,
    to_cent,
    total,
    when,
    whole_down,
    whole_up,
)
from builder.language.expressions import Bare, Call, Convert, Negative, Num, Op
from builder.language.functions import FUNCTIONS
from builder.language.proofs import unit_fault, unit_of
from builder.language.rows import Calculated
from builder.language.units import (
    BASES,
    CONVERSIONS,
    NONE,
    TEXT,
    UNITS,
    conversion,
    dimension,
    power,
    spelled,
    times,
)
from builder.language.values import value_of
from tests.language.trees import COLOUR, PARTS

pint_units = pint.UnitRegistry()
pint_units.define("dollar = [money]")
NAMES = {"lb": "force_pound", "ft": "foot", "in": "inch", "$": "dollar", "deg": "degree",
         "mile": "mile", "h": "hour", "s": "second"}
SPELLED = {"psf": "force_pound/foot**2", "pcf": "force_pound/foot**3",
           "psi": "force_pound/inch**2", "mph": "mile/hour", "": "", "each": "", "ft/ft": ""}
RAISED = {"²": "**2", "³": "**3", "⁴": "**4"}


def by_name(unit: str):
    """Read a unit of ours as pint's, by its name alone."""
    if unit in SPELLED:
        return pint_units.Unit(SPELLED[unit])
    text = unit.replace("·", "*").replace("each", "1")
    for mark, exponent in RAISED.items():
        text = text.replace(mark, exponent)
    for name in sorted(NAMES, key=len, reverse=True):
        text = "*".join("/".join(NAMES[name] + p.removeprefix(name)
                                 if p.partition("**")[0] == name or p == name else p
                                 for p in part.split("/")) if "**" not in part
                        else part for part in text.split("*")) if "**" not in text else text
    return pint_units.parse_units(_words(unit))


def _words(unit: str) -> str:
    out = []
    for k, side in enumerate(unit.split("/")):
        for part in side.split("·"):
            name = part.rstrip("²³⁴")
            exponent = {"²": 2, "³": 3, "⁴": 4, "": 1}[part[len(name):]]
            if name != "each":
                out.append(f"{NAMES[name]}**{exponent if k == 0 else -exponent}")
    return "*".join(out)


def by_powers(powers):
    """Read a dimension of ours as pint's, from its exponents."""
    made = pint_units.Quantity(1.0)
    for base, exponent in zip(BASES, powers, strict=True):
        made = made * pint_units.Quantity(1.0, NAMES[base]) ** float(exponent)
    return made
