"""Stability, third part: every load case: arms, list and trim, tilt, low corner.

The rise e of the centre of buoyancy answers e = g(e), g(e) = (BM_a v_a² + BM_b v_b²)/2 with
v = y/(GM + e).  g falls as e grows, so that the answer always lies between e and g(e).  Six passes,
a row each:

    e₁ = g(0)       e₂ = g(e₁)       e₃ = e₁ (e₂/e₁)^((GM + e₁)/(GM + 3e₁)), GM the least of both
    e₄ = g(e₃)      e₅: where the line through (e₁, e₂) and (e₃, e₄) meets g(e) = e
    e = the less of e₅ and g(e₅)

The third is Newton's rule in logarithms and exact for a lean on one axis with little or much
stiffening.  The less of the last two never gives less tilt than there is, however small GM.
Tried on 200,000 random sections up to 8°, the angles are right to 3e-7 relative while e₁ is not
above 8 % of the least GM, which is so up to 8° where GM is a fifth of BM, and up to 5° where it is
a tenth.  Past that the state, in :mod:`.stability_shown`, reads NEAR UNSTABLE.  (Four plain
passes from e = 0 reach 1e-4.)
"""

from __future__ import annotations

from dataclasses import dataclass

from builder.language import (
    Row,
    absolute,
    arc_tangent,
    degrees,
    greatest,
    least,
    root,
    when,
)

from . import buoyancy, parts, weight
from . import sections as sec
from .reference import own
from .stability_group import (
    F_X,
    F_Y,
    LEAST_RATIO,
    LEAST_RISE,
    ROUND,
    along_axes,
    centre_a,
    centre_b,
    half_length,
    half_width,
    lost_F_x,
    lost_F_y,
    lost_reach_x,
    lost_reach_y,
    lost_turn,
    lost_turn_length,
    moment_a,
    moment_b,
    reach_x,
    reach_y,
    turn,
    turn_length,
)
from .stability_loads import gangway_more, half_load, snow_half_load
from .stability_sheet import (
    OURS,
    STABLE,
    STATICS,
    block,
    note,
    row,
)
from .stability_weights import NAMES, BM_a, BM_b, GM_a, GM_b, afloat, stable

block("Where the loads stand")
note("Each on the side where the section tilts more, to the first order. With extra floats off "
     "the middle a corner may come lower on another side, by up to 3 1/2 in on random sections "
     "tried: test such a section with a weight at every corner. Snow lies on the half that lowers "
     "its corner more; a lean that the section has already adds alike to both.")


def _ratio(key: str) -> Row:
    """Declare how much stiffer axis a is than b under a load, squared."""
    return row(f"Metacentric heights a over b, squared: {NAMES[key]}", f"g[{key}]", "",
               (GM_a[key] / greatest(GM_b[key], own.least_length)) ** 2, STATICS, digits=4)


def _sides(load, key: str, names: tuple[str, str], arms: tuple) -> tuple[Row, Row]:
    """Declare the places across and along of a load off the middle [ft].

    With the load at the middle the section has some moment already; the side is the one on which
    tan² φ + tan² θ grows more.
    """
    ratio = ratios[key]
    at_a, at_b = moment_a - load * centre_a, moment_b - load * centre_b
    across = row(f"{names[0]}: across", f"y_{key}", "ft",
                 when(at_a >= turn * ratio * at_b, 1, -1) * arms[0], STATICS)
    along = row(f"{names[1]}: along", f"x_{key}", "ft",
                when(turn * at_a + ratio * at_b >= 0, 1, -1) * arms[1], STATICS)
    return across, along


ratios = {key: _ratio(key) for key in ("point", "half", "snow_half")}
_inside = own.point_from_edge.in_("ft")
edge_y, end_x = _sides(sec.point_load, "point",
                       ("Point load at mid edge", "Point load at the end"),
                       (half_width - _inside, half_length - _inside))
half_y, half_x = _sides(half_load, "half", ("Half load, its middle", "Half load, its middle"),
                        (half_width / 2, half_length / 2))
_snow_y, _snow_x = _sides(snow_half_load, "snow_half",
                          ("Snow, its middle", "Snow, its middle"),
                          (half_width / 2, half_length / 2))
snow_across = row("Snow lies on the half: 1 across, 0 along, where its corner comes lower", "k_s",
                  "", when(half_width ** 2 * GM_b["snow_half"]
                           >= half_length ** 2 * GM_a["snow_half"], 1, 0), STATICS, digits=0)
snow_y = row("Snow, its middle, as it counts: across", "y_s", "ft", snow_across * _snow_y, STATICS)
snow_x = row("Snow, its middle, as it counts: along", "x_s", "ft", (1 - snow_across) * _snow_x,
             STATICS)


def _arms(load, y, x, total):
    """Return the arms on both axes of the section in service with a load at (x, y)."""
    total = greatest(total, own.least_weight)
    if (y, x) == (0, 0):
        return (moment_a - load * centre_a) / total, (moment_b - load * centre_b) / total
    a, b = along_axes(y, x, turn, turn_length)
    return (moment_a + load * (a - centre_a)) / total, (moment_b + load * (b - centre_b)) / total


_total = afloat["point"].total
_tried = [
    [row(f"Point load at corner {i}, arm on axis {axis}", f"y_{axis}{i}", "ft", arm, STATICS,
         digits=4)
     for axis, arm in zip("ab", _arms(sec.point_load, edge_y, x, _total), strict=True)]
    for i, x in ((1, end_x), (2, -end_x))]
corner_x = row("Point load at the corner: along", "x_c", "ft",
               end_x * when(_tried[0][0] ** 2 - _tried[1][0] ** 2
                            >= ratios["point"] * (_tried[1][1] ** 2 - _tried[0][1] ** 2),
                            1, -1), STATICS)


@dataclass
class Case:
    """A load case: the weight it has, and its arms on the leaning axes [ft]."""

    name: str
    weight: str
    arms: tuple


def _loaded(name: str, key: str, load, y, x) -> Case:
    return Case(name, key, _arms(load, y, x, afloat[key].total))


def _itself(name: str, key: str, y, x, at_a, at_b, t, n) -> Case:
    a, b = along_axes(y, x, t, n)
    return Case(name, key, (a - at_a, b - at_b))


_lost_a, _lost_b = along_axes(weight.service_y - lost_F_y, weight.service_x - lost_F_x,
                              lost_turn, lost_turn_length)
CASES = {
    "launch": _itself("as launched", "launch", weight.launch_y, weight.launch_x, centre_a,
                      centre_b, turn, turn_length),
    "service": Case("in service, gangway at rest (G0)", "service",
                    tuple(m / greatest(weight.service, own.least_weight)
                          for m in (moment_a, moment_b))),
    "flotation": _loaded("q_f even (G2)", "flotation", buoyancy.live_flotation, 0, 0),
    "capacity": _loaded("q_c even", "capacity", buoyancy.live_capacity, 0, 0),
    "half_across": _loaded("q_f on one half across (G3)", "half", half_load, half_y, 0),
    "half_along": _loaded("q_f on one half along (G3)", "half", half_load, 0, half_x),
    "edge": _loaded("P at mid edge", "point", sec.point_load, edge_y, 0),
    "end": _loaded("P at the end", "point", sec.point_load, 0, end_x),
    "corner": _loaded("P at the corner", "point", sec.point_load, edge_y, corner_x),
    "gangway": _loaded("gangway loaded (G1)", "gangway", gangway_more, sec.gangway_y,
                       sec.gangway_x),
    "lost": Case("one float lost", "lost", (_lost_a, _lost_b)),
    "snow": _loaded("snow on the worse half", "snow_half", snow_half_load, snow_y, snow_x),
}


def _each(title: str, label: str, symbol: str, unit: str, make, source=STATICS, digits=4):
    """Declare a block with a row for every case; ``make(key)`` gives its formula."""
    block(title)
    return {key: row(f"{label}: {case.name}", f"{symbol}[{key}]", unit, make(key), source, digits)
            for key, case in CASES.items()}


def of_weight(rows: dict[str, Row], key: str) -> Row:
    """Return the row of the weight that a case has."""
    return rows[CASES[key].weight]


arm_a = _each("Arm of the centre of gravity from F, axis a", "Arm, axis a", "y_a", "ft",
              lambda k: CASES[k].arms[0])
arm_b = _each("Arm of the centre of gravity from F, axis b", "Arm, axis b", "y_b", "ft",
              lambda k: CASES[k].arms[1])


def _tangent(key: str, axis: str, rise):
    """Return the tangent of the lean on an axis for a rise of the centre of buoyancy."""
    arms, heights = (arm_a, GM_a) if axis == "a" else (arm_b, GM_b)
    stiff = greatest(of_weight(heights, key), own.least_length)
    return arms[key] / (stiff if rise is None else stiff + rise)


def _rise(key: str, rise=None):
    """Return the rise of the centre of buoyancy that the lean at another rise would give."""
    return (of_weight(BM_a, key) * _tangent(key, "a", rise) ** 2
            + of_weight(BM_b, key) * _tangent(key, "b", rise) ** 2) / 2


def _settled(key: str):
    """Return the rise by Newton's rule in logarithms, from the first two passes."""
    first, stiff = rise_1[key], greatest(least(of_weight(GM_a, key), of_weight(GM_b, key)),
                                         own.least_length)
    return first * greatest(rise_2[key] / greatest(first, LEAST_RISE), LEAST_RATIO) ** (
        (stiff + first) / (stiff + 3 * first))


def _met_again(key: str):
    """Return where the line through passes 1–2 and 3–4 meets e = g(e)."""
    away = rise_3[key] - rise_4[key]
    return greatest(rise_3[key] - away * absolute(rise_3[key] - rise_1[key])
                    / greatest(absolute(away - rise_1[key] + rise_2[key]), LEAST_RISE), 0)


note("Passes: the centre of buoyancy rises as the section tilts, and the section stiffens.")
rise_1 = _each("Pass 1: rise at the straight-line angle", "Rise, pass 1", "e_1", "ft", _rise,
               digits=6)
rise_2 = _each("Pass 2", "Rise, pass 2", "e_2", "ft", lambda k: _rise(k, rise_1[k]), digits=6)
rise_3 = _each("Pass 3: Newton's rule in logarithms", "Rise, pass 3", "e_3", "ft", _settled,
               digits=6)
rise_4 = _each("Pass 4", "Rise, pass 4", "e_4", "ft", lambda k: _rise(k, rise_3[k]), digits=6)
rise_5 = _each("Pass 5: where the line through all four meets", "Rise, pass 5", "e_5", "ft",
               _met_again, digits=6)
rise = _each("Pass 6: the rise, on the side of more tilt", "Rise", "e", "ft",
             lambda k: least(rise_5[k], _rise(k, rise_5[k])), digits=6)


def _axes(key: str):
    return (lost_turn, lost_turn_length) if key == "lost" else (turn, turn_length)


def _stable(key: str):
    return least(of_weight(GM_a, key), of_weight(GM_b, key)) > 0


def _list(key: str):
    t, n = _axes(key)
    return when(_stable(key),
                (_tangent(key, "a", rise[key]) - t * _tangent(key, "b", rise[key])) / n, 0)


def _trim(key: str):
    t, n = _axes(key)
    return when(_stable(key),
                (_tangent(key, "b", rise[key]) + t * _tangent(key, "a", rise[key])) / n, 0)


tan_list = _each("Slope of list, working: 0 where there is none", "Slope of list", "tan φ",
                 "ft/ft", _list, "Archimedes; statics")
tan_trim = _each("Slope of trim, working: 0 where there is none", "Slope of trim", "tan θ",
                 "ft/ft", _trim, "Archimedes; statics")
tilt = _each("Tilt as it is judged, working: 0 where there is none", "Tilt, working", "τ_w", "deg",
             lambda k: degrees(arc_tangent(root(tan_list[k] ** 2 + tan_trim[k] ** 2))),
             digits=2)


def _dip(key: str):
    """Return how far the float corners go up or down from the mean draft [in]."""
    along, across = ((lost_reach_x, lost_reach_y) if key == "lost" else (reach_x, reach_y))
    return (absolute(tan_trim[key]) * along + absolute(tan_list[key]) * across).in_("in")


block("Range of the formulas")
band_low = row("Draft of a float corner, least: 0; round floats off the rim", "T_lo", "in",
               when(ROUND, parts.float_depth * (1 - 2 * own.round_band) / 2, 0), OURS)
band_high = row("Draft of a float corner, most: its depth; round floats off the rim", "T_hi",
                "in", when(ROUND, parts.float_depth * (1 + 2 * own.round_band) / 2,
                           parts.float_depth), OURS)


note("Below 0 a float corner is out, or a float top under. An unstable case is worked as if it "
     "stood upright, and shows no more than that.")


def _low(key: str):
    x, y = (lost_F_x, lost_F_y) if key == "lost" else (F_X, F_Y)
    b, c = tan_trim[key], tan_list[key]
    return when(of_weight(stable, key).is_(STABLE),
                afloat[CASES[key].weight].free
                - (absolute(b) * half_length + absolute(c) * half_width - b * x - c * y)
                .in_("in"), 0)


low = _each("Lowest deck corner above water, working: 0 where unstable", "Low corner", "F_c", "in",
            _low, digits=1)
wet = _each("Draft left at the float corner standing highest", "Draft left there", "T_o", "in",
            lambda k: afloat[CASES[k].weight].draft - _dip(k) - band_low, digits=1)
dry = _each("Height left at the float top lying lowest", "Height left there", "F_t", "in",
            lambda k: band_high - afloat[CASES[k].weight].draft - _dip(k), digits=1)
