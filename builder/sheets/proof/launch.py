"""Published examples of what a measured draft, trim or list says, worked by the rows of AsBuilt.

The trim examples are worked backwards: the drafts they print are given, the shift that made them
is asked for.
"""

from __future__ import annotations

from collections.abc import Iterator

from builder.language import Case, Family, Row, family

from .. import as_built, buoyancy, launch, parts, readings
from .. import inputs as job
from ..reference import table
from ..stability_group import F_Y, turn, turn_length

FACTORS = table("unit_factors")

def _factor(conversion: str) -> float:
    return FACTORS.entries("factor")[FACTORS.keys.index(conversion)]


def _lines(name: str) -> Iterator[dict]:
    """Yield the lines of a check table as name → value, with key, clause and note."""
    of = table(name)
    for key, line, (clause, _, remark) in zip(of.keys, of.lines, of.notes, strict=True):
        yield {"row": key, **dict(zip(of.columns, line, strict=True)), "clause": clause,
               "note": remark}


def _weights() -> Family:
    """Weight of one box float from its draft; the float is given twice that depth."""
    cases = []
    for line in _lines("checks_water_change"):
        if line["quantity"] == "W":
            given = {parts.float_l: line["length"], parts.float_b: line["breadth"],
                     parts.float_depth: 2 * line["draft"], parts.floats: 1, parts.float_round: 0,
                     buoyancy.fullness: 1, job.water_weight: line["water 1"],
                     as_built.draft: line["draft"]}
            cases.append(Case(line["row"], given, {as_built.found: line["printed"]},
                              line["clause"], {as_built.found: 2 * line["tolerance"]},
                              printed_by=line["printed by"], note=line["note"]))
    foot, inch = ("m", _factor("m to ft")), ("m", _factor("m to in"))
    units = {parts.float_l: foot, parts.float_b: foot, parts.float_depth: inch,
             as_built.draft: inch, as_built.found: ("kg", _factor("kg to lb")),
             job.water_weight: ("kg/m³", _factor("kg/m³ to pcf"))}
    return family("weight_found", "Weight from a measured draft", [as_built.found], cases,
                  units=units, tolerance="half the last printed decimal")


def _shift() -> Family:
    """Shift found from the drafts fore and aft that it made; the length cancels out."""
    by: dict[str, dict[str, dict]] = {}
    for line in _lines("checks_trim"):
        by.setdefault(line["row"].split()[0], {})[line["quantity"]] = line
    inch, ton = _factor("ft to in"), _factor("long ton to lb")
    cases = []
    for name, both in by.items():
        line, aft = both["draft forward"], both["draft aft"]
        rise = line["draft forward"] - line["printed"], line["draft aft"] - aft["printed"]
        given: dict[Row, float] = {
            **{corner: rise[1] for corner in readings.launch_corner[:2]},
            **{corner: rise[0] for corner in readings.launch_corner[2:]},
            parts.overall_length: line["distance"], as_built.tan_list: 0, turn: 0, turn_length: 1,
            as_built.righting_b: line["inch trim moment"] * line["distance"],
            as_built.stiffening: 0, as_built.moment_a: 0, readings.shift_weight: line["weight"]}
        read = (line["tolerance"] + aft["tolerance"]) * line["inch trim moment"] * inch
        cases.append(Case(name, given, {as_built.shift_x: line["distance"]}, line["clause"],
                          {as_built.shift_x: 2 * read / line["weight"]},
                          printed_by=line["printed by"], note=line["note"]))
    units: dict[Row, tuple[str, float]] = {
        corner: ("ft", inch) for corner in readings.launch_corner}
    units |= {as_built.righting_b: ("ft²·long ton/in", ton * inch),
              readings.shift_weight: ("long ton", ton)}
    return family("shift_found", "Shift found from the drafts it made", [as_built.shift_x], cases,
                  units=units, tolerance="what half the last printed decimal of the drafts makes")


def _weight_test() -> Family:
    """The weight test as an inclining test."""
    ton = ("long ton", _factor("long ton to lb"))
    cases = [Case(line["row"], {readings.test_weight: line["shifted weight"],
                                launch.test_y: line["distance"], F_Y: 0,
                                launch.test_total: line["weight"],
                                as_built.test_list: line["heel"]},
                  {as_built.test_GM: line["printed"]}, line["clause"],
                  {as_built.test_GM: 2 * line["tolerance"]}, printed_by=line["printed by"],
                  note=line["note"]) for line in _lines("checks_inclining")]
    return family("weight_test", "Metacentric height by the weight test", [as_built.test_GM],
                  cases, units={readings.test_weight: ton, launch.test_total: ton},
                  tolerance="half the last printed decimal")


families = [_weights(), _shift(), _weight_test()]
