"""Published examples of timber, worked by the rows of Framing and Weight.

The deck tables print the largest span of a joist in whole feet and inches; the stringer of
Framing stands for the joist, and the largest length a table lists stands for the longest stock.
What does not enter an example is given as a value that leaves the answer as it is.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from builder.language import Case, Family, Row, family

from .. import framing, parts, weight
from .. import inputs as job
from .. import sections as sec
from ..framing_lifting import (
    le_long,
    le_short,
    lift_free,
    lift_length,
    lift_load,
    lift_star,
    lifted,
    sling_angle,
    sling_tension,
)
from ..framing_rails import rail
from ..framing_sizes import span_spread
from ..framing_spans import point_check, spread_check, stringer
from ..reference import LUMBER, TIMBER_PAIRS, WOODS, nds, table

FACTORS = table("unit_factors")
INCHES = FACTORS.entries("factor")[FACTORS.keys.index("ft to in")]
"""Inches in a foot."""
Values = dict[Row, float | str]


def _lines(name: str) -> Iterator[dict]:
    """Yield the lines of a check table as name → value, with key, clause and note."""
    of = table(name)
    for key, line, notes in zip(of.keys, of.lines, of.notes, strict=True):
        yield {"row": key, **dict(zip(of.columns, line, strict=True)),
               **dict(zip(("clause", "status", "note"), notes, strict=True))}


def _case(line: dict, given: Values, printed: dict[Row, float], step: dict[Row, float],
          wrong: dict[Row, float] | None = None) -> Case:
    return Case(line["row"], given, printed, line["clause"], step, wrong or {},
                line["printed by"], line["note"])


def _wood_line(wood: str, size: str) -> int:
    """Return the place of a wood's design values, from 0: by width where its table has widths."""
    first = WOODS.keys.index(wood)
    wide = LUMBER.entries("width class")[LUMBER.keys.index(size)]
    by_width = WOODS.entries("by width")[first]
    return int(first + by_width * (min(wide, 5) - 1))


def _joist(line: dict) -> Values:
    """Return what a line of the joist tables gives: wood, size, spacing, loads, the table's cap.

    The group of other species takes bending from one wood and stiffness from another.
    """
    longest = line["cap"] / INCHES
    return {
        job.wood: line["bending wood"], job.timber_wood: TIMBER_PAIRS.keys[0],
        job.sawn: "dressed", job.incised: "yes" if line["incised"] else "no",
        job.longest_stock: longest, job.deflection_live: line["live deflection limit"],
        sec.stringer_size: line["size"], sec.spacing: line["spacing"],
        sec.deck: "boards", sec.deck_overhang: 0, sec.strength_load: line["live"],
        parts.stringer_lines: nds.Cr_members_least.value, parts.stringer_length: longest,
        weight.deck_dead: line["dead"], framing.snow: 0,
        stringer.E: WOODS.entries("E")[_wood_line(line["stiffness wood"], line["size"])],
    }


def _spans() -> Family:
    """Joist spans of the deck tables, by bending and live deflection, up to the table's cap."""
    cases = []
    for line in _lines("checks_joist_spans"):
        given = _joist(line)
        wrong = {span_spread: line["printed"]} if line["trap"] else {}
        cases.append(_case(line, given, {span_spread: line["right"]},
                           {span_spread: 2 * line["tolerance"]}, wrong))
    return family("joist_spans", "Joist spans of the deck tables", [span_spread], cases,
                  units={span_spread: ("in", 1 / INCHES)},
                  tolerance="three quarters of an inch: the tables print whole inches")


SPREAD: dict[str, tuple[Row, Callable[[float], float]]] = {
    "M": (stringer.M_spread, lambda v: v / INCHES),
    "V": (stringer.R, float),
    "V at d": (stringer.V_spread, float),
    "fb": (stringer.fb_spread, float),
    "bending ratio": (spread_check.ratio, float),
    "fv at d": (stringer.fv, float),
    "bearing stress": (stringer.fc, float),
    "deflection": (stringer.sag_spread, float),
}
"""Quantity of a beam under spread load → the row, and its value in the row's unit."""
POINT: dict[str, tuple[Row, Callable[[float], float]]] = {
    "M": (stringer.M_point, lambda v: v / INCHES),
    "fb": (stringer.fb_point, float),
    "bending ratio": (point_check.ratio, float),
    "deflection": (stringer.sag_point, float),
}
"""The same under one load at mid-span."""


def _beams(point: bool) -> Family:
    """Joists worked through, under spread load or with one person at mid-span.

    Left out: lines that give the live share of the load in words only, and the shear of a person
    at mid-span, since the sheet lets the person walk to the end.
    """
    wanted = POINT if point else SPREAD
    merged: dict[str, dict] = {}
    for line in _lines("checks_beams"):
        name, _, quantity = line["row"].rpartition(": ")
        if line["flat"] or bool(line["point load"]) != point or quantity not in wanted:
            continue
        row, turned = wanted[quantity]
        load = line["uniform load"] * INCHES
        given: Values = {
            stringer.t: line["breadth"], stringer.d: line["depth"],
            parts.stringer_length: line["span"] / INCHES, sec.point_load: line["point load"],
            stringer.w: load, stringer.w_live: load, stringer.w_dead: 0,
            stringer.E_adj: line["E prime"], stringer.Fb_adj: line["Fb prime"],
            stringer.Fb_single: line["Fb prime"],
        }
        case = merged.setdefault(name, {"line": {**line, "row": name}, "given": given,
                                        "printed": {}, "step": {}})
        case["printed"][row] = turned(line["value"])
        case["step"][row] = turned(2 * line["tolerance"])
    cases = [_case(c["line"], c["given"], c["printed"], c["step"]) for c in merged.values()]
    wants = list(dict.fromkeys(r for c in cases for r in c.printed))
    key = "joist_point" if point else "joist_spread"
    title = "Joist with one person at mid-span" if point else "Joists under spread load"
    return family(key, title, wants, cases, tolerance="half the last printed decimal")


def _stability() -> Family:
    """Beam stability factor of beams without side support."""
    wants = {"le": lift_length, "RB": lifted.RB, "FbE": lifted.FbE, "CL": lifted.CL,
             "Fb prime": lifted.Fb}
    cases = []
    for line in _lines("checks_beam_stability"):
        short, long = ((nds.le_point_short, nds.le_point_long) if line["point load"]
                       else (nds.le_uniform_short, nds.le_uniform_long))
        given: Values = {
            rail.t: line["b"], rail.d: line["d"], rail.Emin_adj: line["Emin prime"],
            lift_free: line["unsupported length"], lift_star: line["Fb star"],
            le_short: short.value, le_long: long.value}
        cases.append(_case(line, given,
                           {row: line[f"printed {name}"] for name, row in wants.items()},
                           {row: 2 * line[f"tolerance {name}"] for name, row in wants.items()}))
    return family("beam_stability", "Beam stability factor", list(wants.values()), cases,
                  tolerance="half the last printed decimal; FbE and le as the examples round them")


def _slings() -> Family:
    """Tension in the legs of a two-leg sling."""
    cases = []
    for line in _lines("checks_sling"):
        given: Values = {lift_load: line["load"], sling_angle: line["angle from horizontal"]}
        wrong = {sling_tension: line["printed"]} if line["trap"] else {}
        cases.append(_case(line, given, {sling_tension: line["right"]},
                           {sling_tension: 2 * line["tolerance"]}, wrong))
    return family("slings", "Sling of two legs", [sling_tension], cases,
                  tolerance="half the last printed digit; one that is cut off, not rounded")


def _density() -> Family:
    """Weight of wood with moisture, up to the moisture at which it stops swelling."""
    cases = []
    for line in _lines("checks_density"):
        if not line["oven-dry G"] or "volume held" in line["note"]:
            continue
        given: Values = {weight.gravity: line["G"], weight.moisture: line["moisture percent"]}
        cases.append(_case(line, given, {weight.density_moist: line["value"]},
                           {weight.density_moist: 2 * line["tolerance"]}))
    return family("wood_density", "Weight of wood with moisture", [weight.density_moist], cases,
                  tolerance="half the last printed decimal")


families = [_spans(), _beams(point=False), _beams(point=True), _stability(), _slings(), _density()]
