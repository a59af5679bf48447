"""Published examples of list, trim and righting arm, worked by the rows of Stability.

Formulas of textbooks that the sheet replaces by exact ones (list by one line, trim by the moment
that trims an inch) or does not use (inclining test, draught when listed, free water inside) stand
here only, each a row of its own.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator

from builder.language import (
    Case,
    Row,
    Sheet,
    absolute,
    adopt,
    arc_tangent,
    cosine,
    degrees,
    family,
    radians,
    sine,
    tangent,
)

from .. import buoyancy, parts, weight
from .. import inputs as job
from .. import stability as st
from ..reference import table

sheet = Sheet("Proof", "Textbook formulas")
FACTORS = table("unit_factors")
POINT = st.afloat["point"]
LOST = st.afloat["lost"]
MOST = 1e9


def _ask(label: str, symbol: str, unit: str) -> Row:
    """Declare a quantity that every case gives."""
    return sheet.ask(label, symbol, unit, 0, MOST, "given")


def _factor(conversion: str) -> float:
    return FACTORS.entries("factor")[FACTORS.keys.index(conversion)]


def _lines(name: str) -> Iterator[dict]:
    """Yield the lines of a check table as name → value, with clause and note."""
    of = table(name)
    for key, line, (clause, _, note) in zip(of.keys, of.lines, of.notes, strict=True):
        yield {"row": key, **dict(zip(of.columns, line, strict=True)), "clause": clause,
               "note": note}


def _case(line: dict, given: dict, row: Row, value: str = "printed", name: str = "") -> Case:
    """Return the case of a line that prints one quantity."""
    return Case(name or line["row"], given, {row: line[value]}, line["clause"],
                {row: 2 * line["tolerance"]}, printed_by=line["printed by"].partition(" ")[0],
                note=line["note"])


def _pair(lines: list[dict], given: dict, rows: list[Row], value: str = "printed") -> Case:
    """Return the case of several lines with the same given values."""
    first = lines[0]
    both = list(zip(rows, lines, strict=True))
    return Case(first["row"].split()[0], given, {r: one[value] for r, one in both},
                first["clause"], {r: 2 * one["tolerance"] for r, one in both},
                printed_by=first["printed by"].partition(" ")[0], note=first["note"])


moved_weight = _ask("Weight put on or shifted", "w", "lb")
moved = _ask("How far off the middle, or shifted", "d", "ft")
whole = _ask("Weight of the whole", "W", "lb")
heel = _ask("List", "φ", "deg")
height = _ask("Metacentric height", "GM", "ft")
inch_moment = _ask("Moment that trims a unit", "ITM", "lb")
draft_forward = _ask("Draft forward before", "T_f", "ft")
draft_aft = _ask("Draft aft before", "T_a", "ft")
breadth = _ask("Breadth", "B", "ft")
draft = _ask("Draft upright", "T", "ft")
floor_rise = _ask("Rise of floor", "r", "ft")
tank_length = _ask("Tank, length", "l", "ft")
tank_breadth = _ask("Tank, breadth", "b", "ft")
tank_weight = _ask("Specific gravity of what is in it", "s", "")
water_weight = _ask("Specific gravity of the water", "s_w", "")
tanks = _ask("Tanks", "n", "each")
volume = _ask("Volume displaced", "∇", "ft³")

STATICS = "statics"
list_one_line = sheet.row("List by one line", "φ_1", "deg",
                          degrees(arc_tangent(moved_weight * moved / (whole * height))), STATICS)
inclining = sheet.row("Metacentric height by the inclining test", "GM_i", "ft",
                      moved_weight * moved / (whole * tangent(radians(heel))), STATICS)
trim_forward = sheet.row("Draft forward after", "T_f1", "ft",
                         draft_forward - moved_weight * moved / inch_moment / 2, STATICS)
trim_aft = sheet.row("Draft aft after", "T_a1", "ft",
                     draft_aft + moved_weight * moved / inch_moment / 2, STATICS)
listed_draft = sheet.row("Draft when listed", "T_1", "ft",
                         (draft - floor_rise) * cosine(radians(heel))
                         + breadth / 2 * sine(radians(heel)), STATICS)
free_water = sheet.row("Metacentric height lost to free water", "ΔGM", "ft",
                       tanks * tank_weight / water_weight * tank_length * tank_breadth ** 3 / 12
                       / volume, STATICS)
righting_moment = sheet.row("Righting moment", "M", "lb·ft", whole * st.arm_GZ[-1], STATICS)
sinkage = sheet.row("Sinkage when a part is lost", "ΔT", "in",
                    LOST.draft - buoyancy.draft_service, STATICS)
float_top = sheet.row("Float top above water at the low corner", "f", "in",
                      parts.float_depth - POINT.draft
                      - (absolute(st.tan_trim["edge"]) * st.reach_x
                         + absolute(st.tan_list["edge"]) * st.reach_y).in_("in"), STATICS)
adopt(sys.modules[__name__])

_TON = ("long ton", _factor("long ton to lb"))


def _trim():
    by: dict[str, list[dict]] = {}
    for line in _lines("checks_trim"):
        by.setdefault(line["row"].split()[0], []).append(line)
    cases = [_pair(lines, {moved_weight: lines[0]["weight"], moved: lines[0]["distance"],
                           inch_moment: lines[0]["inch trim moment"],
                           draft_forward: lines[0]["draft forward"],
                           draft_aft: lines[0]["draft aft"]}, [trim_forward, trim_aft])
             for lines in by.values()]
    units = {moved_weight: _TON,
             inch_moment: ("ft·long ton/in", _factor("long ton to lb") * _factor("ft to in"))}
    return family("trim", "Trim from a shifted weight", [trim_forward, trim_aft], cases,
                  units=units, tolerance="half the last printed decimal")


def _inclining():
    cases = [_case(line, {moved_weight: line["shifted weight"], moved: line["distance"],
                          whole: line["weight"], heel: line["heel"]}, inclining)
             for line in _lines("checks_inclining")]
    return family("inclining", "Inclining test", [inclining], cases,
                  units={moved_weight: _TON, whole: _TON},
                  tolerance="half the last printed decimal")


def _righting_arm():
    """The righting arm of a ship, by the row of the last step of the arm."""
    lines = list(_lines("checks_wall_sided"))
    first = lines[0]
    given = {st.KB["point"]: first["KB"], st.BM_a["point"]: first["KM"] - first["KB"],
             POINT.kg: first["KG"], st.arm_angle[-1]: first["heel"], whole: first["weight"]}
    foot, ton = _factor("m to ft"), _factor("t to lb")
    rows = [st.arm_GZ[-1], righting_moment]
    units = {st.KB["point"]: ("m", foot), st.BM_a["point"]: ("m", foot), POINT.kg: ("m", foot),
             whole: ("t", ton), rows[0]: ("m", foot), rows[1]: ("t·m", ton * foot)}
    return family("righting_arm", "Wall-sided righting arm", rows,
                  [_pair(lines, given, rows)], units=units,
                  tolerance="half the last printed decimal; more where the source rounds between")


def _listed():
    found: dict[str, list[Case]] = {}
    for line in _lines("checks_list_draft"):
        given = {breadth: line["breadth"], draft: line["draft"],
                 floor_rise: line["rise of floor"], heel: line["list"]}
        found.setdefault(line["units"], []).append(_case(line, given, listed_draft))
    foot = _factor("m to ft")
    lengths = (breadth, draft, floor_rise, listed_draft)
    return [family(f"listed_{unit}", f"Draft when listed ({unit})", [listed_draft], cases,
                   units={r: ("m", foot) for r in lengths} if unit == "m" else {},
                   tolerance="half the last printed decimal")
            for unit, cases in found.items()]


def _lost():
    """A box in three parts as three floats, one of them lost."""
    lines = list(_lines("checks_lost_buoyancy"))
    one = lines[0]
    count = one["length"] / one["lost length"]
    given = {parts.float_l: one["lost length"], parts.float_b: one["breadth"],
             parts.float_depth: 2 * one["draft"], parts.floats: count, parts.float_round: 0,
             buoyancy.fullness: 1, job.water_weight: 1,
             weight.service: one["length"] * one["breadth"] * one["draft"]}
    inch = ("ft", _factor("ft to in"))
    rows = [sinkage, LOST.draft]
    return family("lost_float", "A box with one of its parts lost", rows,
                  [_pair(lines, given, rows)],
                  units={parts.float_depth: inch, sinkage: inch, LOST.draft: inch},
                  tolerance="half the last printed decimal")


def _two_hulls():
    cases = [_case(line, {buoyancy.spread_yy: (line["centre distance"] / 2) ** 2,
                          buoyancy.spread_xy: 0, st.held_square: 0, st.turn: 0, st.round_b: 0,
                          parts.float_b: line["hull breadth"], st.breadth["service"]: 1,
                          st.depth["service"]: line["draft"]}, st.BM_a["service"],
                   name=line["row"].split()[0]) for line in _lines("checks_catamaran")]
    return family("two_hulls", "Two hulls: metacentric radius on the leaning axis",
                  [st.BM_a["service"]], cases,
                  tolerance="0.09: the print leaves out the hulls' own inertia")


def _free_water():
    cases = [_case(line, {tank_length: line["length"], tank_breadth: line["breadth"],
                          tank_weight: line["specific gravity"],
                          water_weight: line["water specific gravity"], tanks: line["number"],
                          volume: line["weight"] * line["volume a ton"]}, free_water)
             for line in _lines("checks_free_surface")]
    return family("free_water", "Free water: loss of metacentric height; foam-filled floats have "
                  "none", [free_water], cases, tolerance="half the last printed decimal")


def _groups():
    """Our own benchmark of eight floats: range and arm of the righting arm, and list under load."""
    found: dict[str, dict[str, dict]] = {"O01": {}, "O02": {}}
    for line in _lines("checks_float_groups"):
        found[line["row"].split()[0]][line["quantity"]] = line
    lines, loaded = found["O01"], found["O02"]
    base = lines["BM [ft]"]
    foot = _factor("ft to in")
    reach = base["row centre"] + base["float breadth"] / 2
    ends = [st.emerge, st.immerse]
    span = family("arm_range", "Range of the righting arm (our own benchmark)", ends, [
        _pair([lines["emerge [deg]"], lines["immerse [deg]"]],
              {POINT.draft: lines["draft [in]"]["value"], st.reach_y: reach,
               parts.float_depth: base["float depth"]}, ends, "value")])
    before = {st.KB["point"]: lines["draft [in]"]["value"] / foot / 2,
              st.BM_a["point"]: base["value"], POINT.kg: base["KG"]}
    arms = [_case(line, {**before, st.arm_angle[-1]: float(name.split()[2])}, st.arm_GZ[-1],
                  "value", " ".join(line["row"].split()[:4]))
            for name, line in lines.items() if name.startswith("GZ")]
    arm = family("arm_group", "Righting arm of eight floats (our own benchmark)",
                 [st.arm_GZ[-1]], arms)
    return [span, arm, *_listed_groups(loaded, lines["I [ft⁴]"]["value"], reach)]


def _listed_groups(lines: dict[str, dict], inertia: float, reach: float):
    """The same floats with a load off the middle: by the passes, and by the one-line formula."""
    line = lines["list, exact [deg]"]
    added = line["added weight"]
    total = line["weight"] + added
    deep = lines["draft [in]"]["value"]
    radius = inertia * line["water weight"] / total
    kg = (line["weight"] * line["KG"] + added * line["added height"]) / total
    stiff = deep / _factor("ft to in") / 2 + radius - kg
    given = {st.BM_a["point"]: radius, st.GM_a["point"]: stiff, st.BM_b["point"]: radius,
             st.GM_b["point"]: stiff, st.arm_a["edge"]: added * line["added off centre"] / total,
             st.arm_b["edge"]: 0, st.turn: 0, st.turn_length: 1, st.reach_x: reach,
             st.reach_y: reach, parts.float_depth: line["float depth"], POINT.draft: deep}
    rows = [st.tilt["edge"], float_top]
    passes = family("listed_group", "List of eight floats under a load off the middle (our own "
                    "benchmark)", rows,
                    [_pair([line, lines["low float edge freeboard [in]"]], given, rows, "value")])
    straight = _case(line, {moved_weight: added, moved: line["added off centre"], whole: total,
                            height: lines["GM [ft]"]["value"]}, list_one_line, "value")
    return [passes, family("list_one_line", "The same by the one-line formula, which Stability "
                           "does not use", [list_one_line], [straight])]


families = [_trim(), _inclining(), _righting_arm(), *_listed(), _lost(), _two_hulls(),
            _free_water(), *_groups()]
