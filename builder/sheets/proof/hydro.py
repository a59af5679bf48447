"""Published examples of floating bodies, worked by the rows of Buoyancy.

Each hull of an example is a float, or a group of floats, of the sheet.  Where an example gives
the draft, the weight put in is the water displaced at that draft, and the sheet finds the draft
again.  What does not enter an example (the depth of a hull, a length in a formula of breadth
alone) is given as a size that leaves the answer as it is.
"""

from __future__ import annotations

from collections.abc import Iterator

from builder.language import Case, Row, Table, family

from .. import buoyancy, parts, weight
from .. import inputs as job
from .. import sections as sec
from ..reference import table

FACTORS = table("unit_factors")
SOURCES_UNITS = {
    "m, t": ("m", "t", "t/m³"),
    "m, kg": ("m", "kg", "kg/m³"),
    "m, N": ("m", "N", "N/m³"),
    "ft, long ton": ("ft", "long ton", "long ton/ft³"),
    "ft, lb": ("ft", "lb", "pcf"),
    "ft": ("ft", "lb", "pcf"),
}
"""Units of a check table → length, weight, weight of water."""
OWN = "units of the sheets"
WANTS = {
    "W": buoyancy.capacity, "V": buoyancy.displaced, "draft": buoyancy.draft_service,
    "KB": buoyancy.KB, "BM": buoyancy.BM, "KM": buoyancy.KM, "GM": buoyancy.GM,
    "draft 2": buoyancy.draft_launch, "A/d²": buoyancy.share_allowed,
    "w/d": buoyancy.waterline_round, "draft [in]": buoyancy.draft_service,
    "PPI [lb/in]": buoyancy.sinkage, "I [ft⁴]": buoyancy.inertia_across,
    "BM [ft]": buoyancy.BM, "GM [ft]": buoyancy.GM,
}
"""Quantity of a check table → the row that works it out."""
CROWD_WANTS = {"draft [in]": buoyancy.draft_capacity, "GM [ft]": buoyancy.GM_crowd}
Values = dict[Row, float | str]


def _lines(of: Table) -> Iterator[dict]:
    """Yield the lines of a check table as name → value, with key, clause, status and note."""
    for key, line, notes in zip(of.keys, of.lines, of.notes, strict=True):
        yield {"row": key, **dict(zip(of.columns, line, strict=True)),
               **dict(zip(("clause", "status", "note"), notes, strict=True))}


def _factor(unit: str, to: str) -> tuple[str, float]:
    """Return (unit of the source, factor to a unit of the sheets)."""
    if unit == to:
        return unit, 1
    return unit, FACTORS.entries("factor")[FACTORS.keys.index(f"{unit} to {to}")]


def _units(system: str, rows) -> dict[Row, tuple[str, float]]:
    """Return, for each row, the unit and factor of a system of units; none for the sheets' own."""
    if system == OWN:
        return {}
    length, heavy, water = SOURCES_UNITS[system]
    source = {"ft": length, "in": length, "lb": heavy, "pcf": water, "ft³": f"{length}³"}
    return {row: _factor(source[row.unit], row.unit) for row in rows
            if row.unit in source and source[row.unit] != row.unit}


def _merge(cases: dict[str, dict], name: str, line: dict, given: Values, row: Row) -> None:
    """Add the printed answer of a line to the case of that name, making it where it is new."""
    case = cases.setdefault(name, {
        "name": name, "given": given, "printed": {}, "step": {}, "wrong": {},
        "source": line["clause"], "printed_by": line["printed by"].partition(" ")[0],
        "note": line["note"]})
    printed = line.get("printed", line.get("value"))
    case["printed"][row] = line.get("right", printed)
    case["step"][row] = 2 * line["tolerance"]
    if line.get("trap"):
        case["wrong"][row] = printed


def _made(cases: dict[str, dict]) -> list[Case]:
    return [Case(**case) for case in cases.values()]


def _hull(length, breadth, depth, water, count=1) -> Values:
    """Return the given values of box floats: sizes, number, weight of water."""
    return {parts.float_l: length, parts.float_b: breadth, parts.float_depth: depth,
            parts.floats: count, parts.float_round: 0, buoyancy.fullness: 1,
            job.water_weight: water}


def _spread(across: float, along: float) -> Values:
    """Return the mean squares of the floats about the centre of flotation."""
    return {sec.float_turned: "along", buoyancy.spread_yy: across, buoyancy.spread_xx: along,
            buoyancy.spread_xy: 0}


def _family(key: str, title: str, cases: dict[str, dict], system: str):
    """Make a family; its wants are all rows printed in any of its cases."""
    made = _made(cases)
    wants = list(dict.fromkeys(row for case in made for row in case.printed))
    units = _units(system, [*made[0].given, *wants])
    return family(key, title, wants, made, units=units,
                  tolerance="half the last printed decimal; more where the source rounds between")


def _carried():
    """Load that a box carries when it is wetted to its full depth."""
    found: dict[str, dict[str, dict]] = {}
    for name in ("checks_boxes", "checks_water_change"):
        for line in _lines(table(name)):
            if line["quantity"] == "W":
                water = line.get("water weight", line.get("water 1"))
                given = _hull(line["length"], line["breadth"], line["draft"], water)
                given[buoyancy.rated_volume] = 0
                _merge(found.setdefault(line["units"], {}), line["row"].split()[0], line, given,
                       WANTS["W"])
    return [_family(f"carried_{k}", f"Archimedes: load carried by a box ({system})", cases, system)
            for k, (system, cases) in enumerate(found.items(), 1)]


def _boxes():
    """Draft, centres and metacentric height of single boxes."""
    found: dict[str, dict[str, dict]] = {}
    for line in _lines(table("checks_boxes")):
        if line["quantity"] not in ("V", "draft", "KB", "BM", "KM", "GM"):
            continue
        breadth, water = line["breadth"], line["water weight"]
        # Where the length does not enter the table holds 1; the least metacentre is then asked
        # for across, as printed, only with a hull longer than broad.
        length = line["length"] if line["length"] > breadth else 2 * breadth
        heavy = line["weight"] or water * length * breadth * line["draft"]
        given = {**_hull(length, breadth, breadth, water), **_spread(0, 0),
                 weight.service: heavy, weight.service_kg: line["KG"]}
        _merge(found.setdefault(line["units"], {}), line["id"], line, given,
               WANTS[line["quantity"]])
    return [_family(f"boxes_{k}", f"Boxes: draft and metacentre ({system})", cases, system)
            for k, (system, cases) in enumerate(found.items(), 1)]


def _other_water():
    """Draft of a box in other water, and on the plan left when a part is flooded."""
    found: dict[str, dict[str, dict]] = {}
    for name in ("checks_water_change", "checks_lost_buoyancy"):
        for line in _lines(table(name)):
            if line["quantity"] != "draft 2":
                continue
            lost = line.get("lost length", 0)
            first, second = line.get("water 1", 1), line.get("water 2", 1)
            length, breadth = line["length"], line["breadth"]
            given = _hull(length - lost, breadth, 2 * line["draft"], second)
            given[weight.launch] = first * length * breadth * line["draft"]
            _merge(found.setdefault(line["units"], {}), line["row"].split()[0], line, given,
                   WANTS["draft 2"])
    return [_family(f"other_water_{k}",
                    f"Draft in other water, or with a part flooded ({system})", cases, system)
            for k, (system, cases) in enumerate(found.items(), 1)]


def _segments():
    """Areas and breadths of the part-full circle, of a diameter of 1 in the unit of the row."""
    areas: dict[str, dict] = {}
    breadths: dict[str, dict] = {}
    steps = buoyancy.STEPS
    inch = FACTORS.entries("factor")[FACTORS.keys.index("ft to in")]
    for line in _lines(table("checks_segments")):
        depth = line["T/d"]
        if line["quantity"] == "A/d²":
            given: Values = {parts.float_round: 1, parts.float_depth: 1,
                             buoyancy.draft_allowed: depth}
            _merge(areas, line["row"], line, given, WANTS["A/d²"])
        else:
            given = {parts.float_round: 1, parts.float_depth: inch,
                     buoyancy.draft_service: depth * inch,
                     buoyancy.line_service: round(depth * steps) + 1}
            _merge(breadths, line["row"], line, given, WANTS["w/d"])
    return [_family("segment_areas", "Part-full circle: area over d²", areas, OWN),
            _family("segment_breadths", "Part-full circle of 1 ft: breadth at the waterline",
                    breadths, OWN)]


def _catamaran():
    """Two hulls: the spread of the floats carries the inertia."""
    cases: dict[str, dict] = {}
    for line in _lines(table("checks_catamaran")):
        breadth, draft = line["hull breadth"], line["draft"]
        length, half = 10 * line["centre distance"], line["centre distance"] / 2
        given = {**_hull(length, breadth, 2 * draft, 1, 2), **_spread(half ** 2, 0),
                 weight.service: 2 * length * breadth * draft}
        _merge(cases, line["row"].split()[0], line, given, buoyancy.BM)
    return _family("catamaran", "Catamaran: metacentric radius of two hulls", cases, "ft, lb")


def _groups():
    """Our own benchmark: eight floats in two rows, empty and with a load put on."""
    empty: dict[str, dict] = {}
    loaded: dict[str, dict] = {}
    for line in _lines(table("checks_float_groups")):
        count, length = line["floats a row"], line["float length"]
        # The benchmark is one of list; along, its floats lie end to end.
        along = length ** 2 * (count ** 2 - 1) / 12
        given = {**_hull(length, line["float breadth"], line["float depth"],
                         line["water weight"], line["rows"] * count),
                 **_spread(line["row centre"] ** 2, along), weight.service: line["weight"],
                 weight.service_kg: line["KG"]}
        name, quantity = line["row"].split()[0], line["quantity"]
        if line["added weight"] and quantity in CROWD_WANTS:
            given |= {buoyancy.live_capacity: line["added weight"],
                      parts.deck_top: line["added height"], job.person_height: 0}
            _merge(loaded, name, line, given, CROWD_WANTS[quantity])
        elif not line["added weight"] and quantity in WANTS:
            _merge(empty, name, line, given, WANTS[quantity])
    return [_family("float_group", "Two rows of floats (our own benchmark)", empty, OWN),
            _family("float_group_loaded", "The same with a load put on (our own benchmark)",
                    loaded, OWN)]


families = [*_carried(), *_boxes(), *_other_water(), *_segments(), _catamaran(), *_groups()]
