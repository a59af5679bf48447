"""Site loads, gangway and mooring: rows against other workings, properties, published cases."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.language import Ask, Verdict
from builder.language.expressions import Total, children
from builder.language.proofs import unit_fault
from builder.language.ranges import Ranges
from builder.language.rows import Note
from builder.language.values import value_of
from builder.sheets import (
    buoyancy,
    catalog,
    gangway,
    mooring,
    parts,
    reference,
    stability,
    weight,
)
from builder.sheets import hardware_corners as corners
from builder.sheets import inputs as job
from builder.sheets import inputs_site as site
from builder.sheets import sections as sec
from builder.sheets import sections_afloat as afloat
from builder.sheets import sections_site as held
from builder.sheets import site_loads as loads
from builder.sheets.proof import site as proof
from tests.trade.filled import with_defaults

SHEETS = [loads.sheet, gangway.sheet, mooring.sheet]
JOB = {
    job.water: "fresh", job.low_water_depth: 8, job.stays_in: "no", job.salt_distance: 1e6,
    job.use: "private", job.wood: reference.WOOD_PAIRS.keys[0], job.sawn: "dressed",
    job.incised: "no", job.longest_stock: 16, job.finish: reference.FINISHES.keys[0],
    job.stringer_angle: catalog.ANGLES.keys[0], job.corner_inside: catalog.CORNERS.keys[0],
    job.corner_outside: catalog.CORNERS.keys[0], job.washer_plate: catalog.PLATES.keys[0],
    job.lag: reference.LAGS.keys[1], job.lag_length: 3,
    site.wind_speed: 105, site.wind_kind: site.WINDS.keys[0], site.fetch: 2500,
    site.fetch_depth: 12, site.current: 0, site.high_water: 2,
    site.mooring: site.MOORINGS.keys[0],
}
SECTION = {
    sec.purpose: "walkway", sec.quantity: 1, sec.length: 16, sec.width: 8, sec.run: "across",
    sec.stringer_size: "2x8", sec.spacing: 16, sec.rail_size: "2x8", sec.rail_plies: 1,
    sec.header_size: "2x8", sec.deck: "panels", sec.float_model: "Box float 24 x 48 x 16",
    sec.float_rows: 2, sec.floats_a_row: 3, held.holds: 4,
}
BOAT = {held.boat_length[0]: 22, held.boat_height[0]: 4, held.boat_beam[0]: 8,
        held.boat_x[0]: 3, held.boat_y[0]: 9}
SECOND = {held.boat_length[1]: 18, held.boat_height[1]: 3, held.boat_beam[1]: 7,
          held.boat_x[1]: -5, held.boat_y[1]: -9}


def worked(*typed: dict) -> dict:
    """Return the values of all inputs: those typed, and the defaults of the others."""
    known = {**JOB, **SECTION}
    for more in typed:
        known.update(more)
    return with_defaults(known)


def found(row, *typed: dict) -> float:
    return value_of(row, worked(*typed))


def verdict(check, known: dict) -> str:
    """Return the word of a check, by the rule of the verdict's formula."""
    ratio = value_of(check.ratio, known)
    if ratio > 1.000000001:
        return check.verdict.worst
    return "LOOK" if ratio > value_of(check.verdict.look, known) + 1e-9 else "OK"


# ------------------------------------------------------------------ the sheets themselves


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda s: s.name)
def test_no_row_has_a_fault(sheet) -> None:
    ranges = Ranges()
    rows = [r for r in sheet.rows if getattr(r, "expr", None) is not None]
    assert len(rows) > 40
    assert [(r.label, unit_fault(r)) for r in rows if unit_fault(r)] == []
    for r in rows:
        ranges.of(r)
    assert ranges.faults == []
    for check in sheet.checks:
        assert ranges.of(check.limit)[0] > 0, check.label
        assert check.kind == "at least" or ranges.of(check.of)[0] >= 0, check.label
        assert check.source and check.cure and check.group


def test_every_section_input_of_the_site_may_stay_blank() -> None:
    own = [thing for name, thing in vars(held).items() if not name.startswith("_")]
    asks = [a for t in own for a in (t if isinstance(t, list) else [t]) if isinstance(a, Ask)]
    assert len(asks) == 15
    assert all(a.default is not None for a in asks)


def test_cautions_stand_on_the_sheets() -> None:
    text = " ".join(i.text for s in SHEETS for i in s.items if isinstance(i, Note))
    for words in ("engineer", "drift", "trees", "end stop", "Ice", "barge", "wake", "hangs up",
                  "authority", "life jackets"):
        assert words in text, words
    cures = " ".join(c.cure for s in SHEETS for c in s.checks)
    assert cures.count("Engineer required") >= 4


def test_engineer_is_called_where_the_book_cannot_judge() -> None:
    calm, fast = worked(), worked({site.current: 3.5})
    rough = worked({site.fetch: 60000, site.fetch_depth: 60})
    assert value_of(mooring.engineer, calm).startswith("yes")
    assert value_of(mooring.engineer, fast).startswith("ENGINEER REQUIRED")
    assert value_of(mooring.engineer, rough).startswith("ENGINEER REQUIRED")
    assert verdict(loads.current_check, fast) == "NOT OK"
    assert verdict(loads.wave_check, rough) == "NOT OK"
    assert value_of(mooring.ice, worked({job.stays_in: "yes"})).startswith("ENGINEER REQUIRED")
    assert verdict(mooring.deep_check, worked({mooring.embed: 13})) == "LOOK"


# ------------------------------------------------------------------ published examples


CASES = [(f, c, r) for f in proof.families for c in f.cases for r in c.printed]


@pytest.mark.parametrize(("one", "case", "row"), CASES,
                         ids=[f"{f.key}-{c.name}-{r.key or r.label}" for f, c, r in CASES])
def test_published_cases(one, case, row) -> None:
    known = {r: v if isinstance(v, str) else v * one.units.get(r, ("", 1))[1]
             for r, v in case.given.items()}
    value = value_of(row, known) / one.units.get(row, ("", 1))[1]
    assert abs(value - case.printed[row]) <= case.step[row] / 2 + 1e-9
    if row in case.wrong:
        assert abs(value - case.wrong[row]) > case.step[row], "a trap must not be met"


def test_the_families_are_all_there() -> None:
    names = {c.name.split()[0] for f in proof.families for c in f.cases}
    assert names == {"C01", "C04", "C05", "C06", "D01", "E02", "E03", "E04", "E05", "E07", "F01",
                     "F02", "F04", "F05", "F07", "F08", "F10", "F13", "G01"}
    traps = [c.name for f in proof.families for c in f.cases if c.wrong]
    assert traps == ["C04 D 30 trap"]


# ------------------------------------------------------------------ wind and current


@pytest.mark.parametrize(("exposure", "printed"), [
    ("B", (0.57, 0.62, 0.66, 0.70)), ("C", (0.85, 0.90, 0.94, 0.98)),
    ("D", (1.03, 1.08, 1.12, 1.16))])
def test_exposure_table(exposure: str, printed) -> None:
    for height, kz in zip((15, 20, 25, 30), printed, strict=True):
        known = worked({site.exposure: exposure})
        known[loads.z_wind] = height
        assert value_of(loads.K_z, known) == pytest.approx(kz, abs=0.0075)


def test_air_density_gives_the_constant() -> None:
    """Half the density of standard air, mph to ft/s, is the 0.00256 of the standard (C02)."""
    density = 0.0765 / 32.174
    mph = value_of(loads.physics.mph_in_fps, {})
    assert density * mph**2 / 2 == pytest.approx(value_of(loads.asce.pressure, {}), rel=2e-3)


def test_wind_floor_and_kind_of_speed() -> None:
    assert found(loads.pressure, {site.wind_speed: 60}) == 15
    map_speed = found(loads.pressure_worked)
    older = found(loads.pressure_worked, {site.wind_kind: site.WINDS.keys[1]})
    assert map_speed == pytest.approx(0.6 * older)


def test_forces_by_hand() -> None:
    known = worked(BOAT, SECOND)
    p = value_of(loads.pressure, known)
    side = (value_of(buoyancy.free_launch, known)) / 12
    boats = 22 * 4 + 18 * 3
    assert value_of(loads.force_across, known) == pytest.approx(
        p * (value_of(parts.overall_length, known) * side + boats))
    assert value_of(loads.force_along, known) == pytest.approx(
        p * (value_of(parts.overall_width, known) * side + 8 * 4 + 7 * 3))
    one, two = p * 22 * 4 * 3, p * 18 * 3 * -5
    assert value_of(loads.yaw_across, known) == pytest.approx(max(one, -two, abs(one + two)))


def test_current_on_hulls_and_drift_by_hand() -> None:
    flow = {site.current: 2, held.debris: 30, held.boat_draft[0]: 2, held.boat_draft[1]: 1}
    known = worked(BOAT, SECOND, flow)
    p = 62.4 * 2**2 / (2 * 32.174)
    C = 1 + (3.2 - 1) * (2 / 8) ** 2
    assert value_of(loads.hull_C, known) == pytest.approx(C)
    assert value_of(loads.hull_across[0], known) == pytest.approx(p * C * 22 * 2)
    assert value_of(loads.hull_along[1], known) == pytest.approx(p * C * 7 * 1)
    draft = value_of(buoyancy.draft_flotation, known) / 12
    floats = 2 + 1.2 * (draft / 8) ** 2
    assert value_of(loads.drift_force, known) == pytest.approx(p * floats * 30)
    still = worked(BOAT, SECOND)
    gain = value_of(loads.force_across, known) - value_of(loads.force_across, still)
    assert gain == pytest.approx(p * (floats * (16 * draft + 30) + C * (22 * 2 + 18 * 1)))
    gain = value_of(loads.force_along, known) - value_of(loads.force_along, still)
    assert gain == pytest.approx(p * (floats * (8 * draft + 30) + C * (8 * 2 + 7 * 1)))
    wind = value_of(loads.pressure, known)
    one = (wind * 22 * 4 + p * C * 22 * 2) * 3
    two = (wind * 18 * 3 + p * C * 18 * 1) * -5
    assert value_of(loads.yaw_across, known) == pytest.approx(
        max(abs(one), abs(two), abs(one + two)))
    nobody = worked(flow)
    assert [value_of(r, nobody) for r in (*loads.hull_across, *loads.hull_along)] == [0] * 4
    assert value_of(loads.hull_C, worked({held.boat_draft[0]: 8, job.low_water_depth: 3})
                    ) == pytest.approx(3.2)


def test_a_fully_grown_sea_grows_no_more() -> None:
    """Past its fetch a steady wind raises 0.243 U²/g and no more; it needs 71500 U/g for it."""
    calm = {site.wind_mean: 10, site.fetch_depth: 1000, job.low_water_depth: 200}
    speed = 0.71 * (10 * 0.44704) ** 1.23 / 0.3048
    limit = (0.243 / 0.0016) ** 2 * speed**2 / 32.174
    assert found(loads.F_full, calm, {site.fetch: 1000}) == pytest.approx(limit)
    assert limit < 450000
    heights = [found(loads.H_deep, calm, {site.fetch: limit * k}) for k in (0.5, 0.999, 1.01, 1.1)]
    assert heights[0] < heights[1] < heights[2] == heights[3]
    assert heights[3] == pytest.approx(0.243 * speed**2 / 32.174)
    hours = found(loads.wind_time, calm, {site.fetch: limit * 1.1})
    assert hours == pytest.approx(71500 * speed / 32.174 / 3600)
    short = 68.8 * (32.174 * 2500 / speed**2) ** (2 / 3) * speed / 32.174 / 3600
    assert found(loads.wind_time, calm, {site.fetch: 2500}) == pytest.approx(short)


def test_wake_counts_as_a_wave() -> None:
    calm, easy, rough = (worked({site.wake: wake}) for wake in (0.5, 1.3, 2.5))
    assert value_of(loads.rough, rough) == 2.5
    assert verdict(loads.wave_check, rough) == "NOT OK"
    assert verdict(loads.wave_check, easy) == "LOOK"
    assert value_of(loads.wave_force, rough) == "ENGINEER REQUIRED"
    assert value_of(mooring.engineer, rough).startswith("ENGINEER REQUIRED")
    assert value_of(loads.wave_force, calm).startswith("not worked")
    assert value_of(loads.rough, calm) == max(0.5, value_of(loads.wave_high, calm))


def test_line_pull_stands_in_place_of_wind() -> None:
    bare = found(loads.boat_across[0], BOAT)
    assert found(loads.boat_across[0], BOAT, {site.line_pull: bare - 1}) == bare
    assert found(loads.boat_across[0], BOAT, {site.line_pull: bare + 100}) == bare + 100
    assert found(loads.boat_along[0], BOAT, {site.line_pull: 5000}) == 5000
    assert found(loads.boat_across[0], {site.line_pull: 5000}) == 0
    assert found(loads.boat_along[0], {site.line_pull: 5000}) == 0


@settings(max_examples=60, deadline=None)
@given(st.floats(40, 240), st.floats(0, 10), st.sampled_from("BCD"))
def test_more_wind_never_less_force(speed: float, more: float, exposure: str) -> None:
    low = worked(BOAT, {site.wind_speed: speed, site.exposure: exposure})
    high = worked(BOAT, {site.wind_speed: speed + more, site.exposure: exposure})
    for row in (loads.force_across, loads.force_along, mooring.leg_H, loads.yaw_across,
                loads.wave_high):
        assert value_of(row, high) >= value_of(row, low) - 1e-9, row.label


def test_current_by_hand() -> None:
    known = worked({site.current: 2})
    draft = value_of(buoyancy.draft_flotation, known) / 12
    c = 2 + 1.2 * (draft / 8) ** 2
    assert value_of(loads.current_across, known) == pytest.approx(
        0.5 * 62.4 / 32.174 * 4 * c * 16 * draft)
    assert found(loads.current_across) == 0
    assert value_of(loads.force_across, known) > found(loads.force_across)


# ------------------------------------------------------------------ waves


def test_wave_length_solves_the_dispersion_relation() -> None:
    for period in (1, 1.5, 2, 3, 4):
        for depth in (1.5, 3, 6, 12, 40):
            known = {loads.period_high: period, loads.dock_depth: depth}
            low, high = 0.01, 400.0
            for _ in range(80):
                mid = (low + high) / 2
                far = 32.174 * period**2 / (2 * math.pi) * math.tanh(2 * math.pi * depth / mid)
                low, high = (mid, high) if far > mid else (low, mid)
            assert value_of(loads.wave_length, known) == pytest.approx(low, rel=1e-3)


def test_waves_stay_a_range_within_the_depth() -> None:
    known = worked()
    assert value_of(loads.wave_low, known) < value_of(loads.wave_high, known)
    shallow = worked({job.low_water_depth: 1, site.high_water: 0})
    assert value_of(loads.wave_high, shallow) == pytest.approx(0.78)
    longer = worked({site.fetch: 5000})
    assert value_of(loads.wave_high, longer) > value_of(loads.wave_high, known)


def test_service_wind_raises_the_waves() -> None:
    assert found(site.wind_mean) == pytest.approx(0.66 * 105 * math.sqrt(0.6))
    assert found(site.wind_mean, {site.wind_kind: site.WINDS.keys[1]}) == pytest.approx(69.3)


# ------------------------------------------------------------------ gangway

GANGWAY = {site.gangway_length: 20, sec.gangway_rest: 450, site.gangway_weight: 900,
           site.hinge_height: 5, sec.gangway_x: -5}


def test_gangway_reactions_by_hand() -> None:
    known = worked(GANGWAY)
    area = 20 * 3
    assert value_of(loads.gangway_dead, known) == 450
    assert value_of(loads.gangway_25, known) == (900 + 25 * area) / 2
    assert value_of(loads.gangway_75, known) == (900 + 75 * area) / 2
    assert value_of(loads.wheel, known) == (900 + 75 * area) / 4
    assert found(loads.gangway_75, GANGWAY, {sec.gangway_rest: 0}) == 0


def test_gangway_slope_and_travel_by_hand() -> None:
    known = worked(GANGWAY)
    low = 5 - value_of(buoyancy.free_flotation, known) / 12
    high = 3 - value_of(buoyancy.free_launch, known) / 12
    run_low, run_high = math.sqrt(400 - low**2), math.sqrt(400 - high**2)
    assert value_of(gangway.slope, known) == pytest.approx(low / run_low)
    assert value_of(gangway.travel, known) == pytest.approx(run_high - run_low)
    crossing = worked(GANGWAY, {site.high_water: 4.5})
    top = 0.5 - value_of(buoyancy.free_launch, crossing) / 12
    assert top < 0
    assert value_of(gangway.travel, crossing) == pytest.approx(
        20 - min(run_low, math.sqrt(400 - top**2)))
    assert verdict(gangway.slope_check, known) == "OK"
    steep = worked(GANGWAY, {site.hinge_height: 12})
    assert verdict(gangway.slope_check, steep) == "NOT OK"
    longer = value_of(gangway.slope_check.amount, steep)
    mended = worked(GANGWAY, {site.hinge_height: 12, site.gangway_length: 20 + longer + 1e-6})
    assert verdict(gangway.slope_check, mended) == "OK"


def test_gangway_at_the_highest_water() -> None:
    """In a flood the gangway stands up from the shore; too steep then reads LOOK."""
    known = worked(GANGWAY, {site.flood: 7})
    rise = value_of(site.hinge_height, known) - 7 - value_of(buoyancy.free_launch, known) / 12
    run = math.sqrt(20**2 - rise**2)
    assert rise < 0
    assert value_of(gangway.slope_flood, known) == pytest.approx(-rise / run)
    run_low = value_of(gangway.run_low, known)
    assert value_of(gangway.travel, known) == pytest.approx(20 - min(run_low, run))
    assert verdict(gangway.slope_check, known) == "OK"
    steep = worked(GANGWAY, {site.flood: 12})
    assert value_of(gangway.slope_flood, steep) > 1 / 3
    assert verdict(gangway.slope_check, steep) == "LOOK"
    low = worked(GANGWAY, {site.flood: 0})
    assert value_of(gangway.rise_flood, low) == value_of(gangway.rise_high, low)


FOOT = {**GANGWAY, site.hinge_height: 9, sec.gangway_x: -5,
        sec.float_model: "Box float 48 x 48 x 16", sec.floats_a_row: 4,
        job.flotation_load: 10}


@pytest.mark.parametrize("place", [
    {}, {sec.gangway_x: 0, sec.gangway_y: 2.5}, {sec.extra_floats: 1, sec.extra_x[0]: 5,
                                                 sec.extra_y[0]: 2}],
    ids=["along", "across", "extra float"])
def test_foot_at_the_ends_of_its_travel(place: dict) -> None:
    """Stability worked again with the foot moved never finds more than the Gangway sheet does."""
    known = worked(FOOT, place)
    off = value_of(gangway.travel, known) / 2
    assert off > 0.3
    moved = sec.gangway_y if sec.gangway_y in place else sec.gangway_x
    at = value_of(moved, known)
    ends = [worked(FOOT, place, {moved: at + way * off}) for way in (-1, 1)]
    states = {value_of(stability.state[c], known)
              for c in ("service", "gangway", "half_across", "half_along")}
    assert states <= {"holds", "CORNER OUT"} and "holds" in states
    for row, cases, greater in (
            (gangway.foot_rest, ("service",), max),
            (gangway.foot_tilt, ("gangway", "half_across", "half_along"), max)):
        true = greater(value_of(stability.tilt[c], e) for c in cases for e in ends)
        assert true - 1e-6 <= value_of(row, known) <= true + 0.35
    lowest = min(value_of(stability.low[c], e) for e in ends
                 for c in ("gangway", "flotation", "half_across", "half_along"))
    assert lowest - 1 <= value_of(gangway.foot_low, known) <= lowest + 1e-6


def test_foot_by_hand() -> None:
    known = worked(FOOT)
    off, R = value_of(gangway.travel, known) / 2, value_of(loads.gangway_25, known)
    W = value_of(stability.weight_afloat["gangway"], known)
    GM = value_of(stability.GM_b["gangway"], known)
    reach = value_of(parts.overall_length, known) / 2
    assert value_of(gangway.lean["gangway"], known) == pytest.approx(R * off / (W * GM))
    assert value_of(gangway.dip["gangway"], known) == pytest.approx(
        12 * R * off / (W * GM) * reach)
    assert value_of(loads.wheel_25, known) == R / 2
    assert value_of(loads.wheel_rest, known) == value_of(loads.gangway_dead, known) / 2
    nothing = worked(FOOT, {sec.gangway_rest: 0})
    assert value_of(gangway.foot_rest, nothing) == value_of(gangway.foot_tilt, nothing) == 0
    for check in (gangway.foot_rest_check, gangway.foot_tilt_check, gangway.foot_low_check,
                  gangway.foot_point_check):
        assert verdict(check, nothing) == "OK", check.label
    tender = worked(FOOT, {site.gangway_weight: 6000, sec.gangway_rest: 3000, sec.gangway_x: -7})
    assert verdict(gangway.foot_rest_check, tender) == "NOT OK"
    assert verdict(gangway.foot_low_check, tender) == "NOT OK"


def test_wheels_against_a_beam() -> None:
    """One load in the middle bends a stringer as much as both halves of two wheels on it."""
    known = worked(FOOT)
    span, apart = value_of(parts.clear_span, known), 3
    each = value_of(loads.gangway_75, known) / 2 / 2
    x = np.linspace(0, span, 10_001)
    places = (span - apart) / 2, (span + apart) / 2
    moment = each * x - sum(each * np.clip(x - at, 0, None) for at in places)
    assert value_of(gangway.foot_point, known) * span / 4 == pytest.approx(moment.max(), rel=1e-6)
    assert verdict(gangway.foot_point_check, known) == "LOOK"
    more = value_of(gangway.foot_point_check.amount, known)
    cured = worked(FOOT, {site.plate_stringers: math.ceil(more)})
    assert verdict(gangway.foot_point_check, cured) == "OK"
    wide = worked(FOOT, {site.gangway_width: 96})
    assert value_of(gangway.foot_point, wide) == pytest.approx(
        value_of(loads.gangway_75, wide) / 4)


def test_abutment_bolts_in_steel_and_concrete() -> None:
    known = worked(GANGWAY)
    pull = math.hypot(value_of(gangway.shore, known), value_of(loads.gangway_push, known)) / 4
    assert value_of(gangway.shore_bolt, known) == pytest.approx(pull)
    assert value_of(gangway.bolt_holds, known) == pytest.approx(27000 * math.pi * 0.5**2 / 4 / 2)
    assert verdict(gangway.shore_check, known) == "LOOK"
    for limit, word in ((pull * 0.95, "NOT OK"), (pull * 1.05, "LOOK"), (pull * 1.2, "OK")):
        mine = worked(GANGWAY, {site.anchor_limit: limit})
        assert verdict(gangway.shore_check, mine) == word
    assert verdict(gangway.shore_check, worked(GANGWAY, {sec.gangway_rest: 0})) == "OK"


@pytest.mark.parametrize(("length", "slips", "word"), [
    (29.9, 10, "NOT OK"), (30, 10, "OK"), (30, 25, "NOT OK"), (79.9, 30, "NOT OK"),
    (80, 30, "OK")])
def test_accessible_route_and_its_exceptions(length: float, slips: int, word: str) -> None:
    known = worked(GANGWAY, {site.accessible: "yes", site.gangway_length: length,
                             site.slips: slips, site.hinge_height: 14})
    assert verdict(gangway.access_check, known) == word
    gentle = worked(GANGWAY, {site.accessible: "yes", site.slips: 200, site.hinge_height: 2,
                              site.gangway_length: 40})
    assert verdict(gangway.access_check, gentle) == "OK"


def test_gangway_weight_must_match_sections() -> None:
    assert verdict(gangway.match_check, worked(GANGWAY)) == "OK"
    assert verdict(gangway.match_check, worked(GANGWAY, {sec.gangway_rest: 300})) == "LOOK"
    assert verdict(gangway.match_check, worked({sec.gangway_rest: 300})) == "LOOK"
    forgotten = {sec.gangway_rest: 0, sec.purpose: "landing"}
    assert verdict(gangway.match_check, worked(GANGWAY, forgotten)) == "LOOK"
    assert verdict(gangway.match_check, worked()) == "OK"


# ------------------------------------------------------------------ chains and dead weights

CHAIN = {site.chain_length: 120, site.block_weight: 6000, site.crossed: "yes"}


def hung(H: float, w: float, length: float, steps: int = 200_000) -> tuple[float, float]:
    """Return reach and height of a chain lying flat at its lower end, piece by piece."""
    s = (np.arange(steps) + 0.5) * length / steps
    tension = np.hypot(H, w * s)
    return float(np.sum(H / tension) * length / steps), float(
        np.sum(w * s / tension) * length / steps)


@pytest.mark.parametrize("boats", [{}, BOAT], ids=["bare", "boat"])
def test_catenary_against_pieces(boats: dict) -> None:
    known = worked(CHAIN, boats)
    H, w, s = (value_of(r, known) for r in (mooring.leg_pull, mooring.w, mooring.s))
    reach, height = hung(H, w, s)
    assert height == pytest.approx(value_of(mooring.height, known), rel=1e-6)
    assert reach == pytest.approx(value_of(mooring.x_s, known), rel=1e-6)
    assert value_of(mooring.T_max, known) == pytest.approx(math.hypot(H, w * s), rel=1e-9)


@settings(max_examples=60, deadline=None)
@given(st.floats(1, 60), st.floats(0, 10), st.floats(0, 10))
def test_deeper_water_longer_chain(depth: float, more: float, flood: float) -> None:
    low = worked(CHAIN, {job.low_water_depth: depth, site.flood: flood})
    high = worked(CHAIN, {job.low_water_depth: depth + more, site.flood: flood})
    known = value_of(mooring.s, low), value_of(mooring.s, high)
    assert known[1] >= known[0] - 1e-9
    assert known[0] >= value_of(mooring.height, low) - 1e-9


def test_legs_balance_the_force() -> None:
    """Two legs of the pull found, at the plan angle, hold force and turn together."""
    known = worked(CHAIN, BOAT, {site.leg_angle: 35})
    angle = math.radians(35)
    lever = 16 / 2 * math.sin(angle) + 8 / 2 * math.cos(angle)
    assert value_of(mooring.lever, known) == pytest.approx(lever)
    held_pull = value_of(mooring.pull_y, known)
    straight = held_pull - value_of(mooring.turn_y, known) / lever / 2
    assert 2 * straight * math.sin(angle) == pytest.approx(value_of(mooring.carried_y, known))
    out = worked(BOAT, {site.leg_angle: 35})
    assert value_of(mooring.lever, out) == pytest.approx(
        abs(8 * math.sin(angle) - 4 * math.cos(angle)))


def test_chain_cure_mends() -> None:
    known = worked(BOAT, {site.chain_length: 20, site.crossed: "yes"})
    assert verdict(mooring.chain_check, known) == "NOT OK"
    more = value_of(mooring.chain_check.amount, known)
    mended = worked(BOAT, {site.chain_length: 20 + more + 1e-6, site.crossed: "yes"})
    assert verdict(mooring.chain_check, mended) in ("OK", "LOOK")


def test_dead_weight_cure_mends_and_factors() -> None:
    known = worked(BOAT, {site.block_weight: 100, site.crossed: "yes"})
    assert verdict(mooring.slide_check, known) == "NOT OK"
    needed = value_of(mooring.block_needed, known)
    mended = worked(BOAT, {site.block_weight: needed * 1.0001, site.crossed: "yes"})
    assert verdict(mooring.slide_check, mended) == "OK"
    H = value_of(mooring.leg_H, mended)
    assert value_of(mooring.sliding, mended) / H == pytest.approx(2, rel=1e-3)
    swim = {sec.purpose: "platform", site.crossed: "yes"}
    factors = (0.95, "NOT OK"), (1.2, "LOOK"), (1.6, "OK")
    for factor, word in factors:
        mine = worked(BOAT, swim)
        mine[site.block_weight] = factor * H / (0.3 * (1 - 62.4 / 150))
        assert verdict(mooring.slide_check, mine) == word, factor
    far = worked(BOAT, swim, {site.fetch: 6000})
    far[site.block_weight] = 1.6 * H / (0.3 * (1 - 62.4 / 150))
    assert verdict(mooring.slide_check, far) == "NOT OK"


def test_hanging_chain_is_asked_for() -> None:
    known = worked(CHAIN)
    weight = value_of(mooring.hanging, known)
    assert weight > 50
    assert verdict(mooring.hanging_check, known) == "LOOK"
    assert verdict(mooring.hanging_check, worked(CHAIN, {sec.chain_weight: weight * 1.05})) == "OK"


def test_drift_grows_with_the_range_of_water() -> None:
    small = found(mooring.drift, CHAIN, {site.high_water: 1, site.flood: 1})
    large = found(mooring.drift, CHAIN, {site.high_water: 8, site.flood: 8})
    assert 0 < small < large


def test_only_the_kind_chosen_carries_a_demand() -> None:
    demands = {site.MOORINGS.keys[0]: mooring.leg_H, site.MOORINGS.keys[1]: mooring.pile_P,
               site.MOORINGS.keys[2]: mooring.arm}
    for kind in demands:
        known = worked(BOAT, {site.mooring: kind})
        for other, row in demands.items():
            assert (value_of(row, known) > 0) == (other == kind), (kind, row.label)
    idle = {site.MOORINGS.keys[0]: (mooring.pile_check, mooring.embed_check, mooring.top_check,
                                    mooring.hoop_check, mooring.arm_check),
            site.MOORINGS.keys[1]: (mooring.chain_check, mooring.chain_strength_check,
                                    mooring.slide_check, mooring.drift_check, mooring.arm_check)}
    for kind, checks in idle.items():
        known = worked(BOAT, {site.mooring: kind, site.flood: 9})
        assert [value_of(check.of, known) for check in checks] == [0] * len(checks)
    none = worked(BOAT, {held.holds: 0})
    assert value_of(mooring.leg_H, none) == 0
    assert verdict(mooring.held_check, none) == "LOOK"


def test_force_held_nowhere_is_caught() -> None:
    known = worked(BOAT)
    known |= {mooring.all_y: 1000, mooring.all_x: 500, mooring.held_y: 900, mooring.held_x: 500}
    assert verdict(mooring.unheld_check, known) == "NOT OK"
    known = worked(BOAT)
    known |= {mooring.all_y: 1000, mooring.all_x: 500, mooring.held_y: 1000, mooring.held_x: 500}
    assert verdict(mooring.unheld_check, known) == "OK"
    totals = [r for r in (mooring.all_y, mooring.all_x, mooring.held_y, mooring.held_x)
              if isinstance(r.expr, Total)]
    assert len(totals) == 4
    assert all(sec.quantity in (t.expr.by,) for t in totals)
    assert {t.expr.a for t in totals} == {loads.force_across, loads.force_along,
                                          mooring.carried_y, mooring.carried_x}


# ------------------------------------------------------------------ piles and arms


def test_cubic_against_a_root_finder() -> None:
    chance = random.Random(3)
    branches = set()
    for _ in range(300):
        P, h = 10 ** chance.uniform(0, 4.5), chance.uniform(0.5, 45)
        b, s, m = chance.uniform(0.5, 3), chance.uniform(10, 400), chance.choice((1, 2))
        if chance.random() < 0.3:
            h = chance.uniform(0.01, 0.4)
        known = {mooring.pile_P: P, mooring.pile_h: h, mooring.pile_b: b,
                 site.soil_bearing: s, mooring.soil_m: m}
        k = 3 * 2.34 * P / (m * s * b)
        roots = np.roots([1, 0, -k, -4.36 / 4 * k * h])
        best = max(r.real for r in roots if abs(r.imag) < 1e-9 * max(1, abs(r)))
        assert value_of(mooring.embed, known) == pytest.approx(best, rel=1e-8)
        if best > 0.2:
            assert value_of(mooring.embed_code, known) == pytest.approx(best, rel=1e-6)
        branches.add(value_of(mooring.cubic_u, known) > 0)
    assert branches == {True, False}


PILES = {site.mooring: site.MOORINGS.keys[1]}


def test_no_push_no_depth() -> None:
    known = worked()
    assert value_of(mooring.embed, known) == 0
    assert value_of(mooring.embed_code, known) == 0
    assert value_of(mooring.pile_f, known) == 0


def test_pile_bending_by_pieces() -> None:
    """The moment found is the largest of the pile's own diagram under the bed's push."""
    known = worked(BOAT, PILES)
    P, h, rate = (value_of(r, known) for r in (mooring.pile_P, mooring.pile_h, mooring.bed_rate))
    depth = np.linspace(0, 30, 300_001)
    moment = P * (h + depth) - rate * depth**3 / 6
    assert value_of(mooring.pile_M, known) == pytest.approx(moment.max(), rel=1e-6)
    stress = moment.max() * 12 / (math.pi * 12**3 / 32)
    assert value_of(mooring.pile_f, known) == pytest.approx(stress, rel=1e-6)


def test_pile_top_cure_mends() -> None:
    known = worked(PILES, {site.flood: 4, site.pile_top: 5})
    assert verdict(mooring.top_check, known) == "NOT OK"
    more = value_of(mooring.top_check.amount, known)
    assert 5 + more == pytest.approx(4 + 2 + value_of(buoyancy.free_launch, known) / 12)
    assert verdict(mooring.top_check,
                   worked(PILES, {site.flood: 4, site.pile_top: 5 + more + 1e-6})) == "OK"


def test_pile_depth_cure_mends() -> None:
    known = worked(BOAT, PILES, {site.pile_embedded: 2})
    assert verdict(mooring.embed_check, known) == "NOT OK"
    more = value_of(mooring.embed_check.amount, known)
    assert verdict(mooring.embed_check,
                   worked(BOAT, PILES, {site.pile_embedded: 2.001 + more})) != "NOT OK"


def test_hoop_bolt_by_hand() -> None:
    known = worked(BOAT, PILES)
    P = value_of(mooring.pile_P, known)
    turn = P * (6 + 1 + 3)
    squares = 4 * (3**2 + 2**2)
    assert value_of(mooring.hoop_bolt, known) == pytest.approx(
        math.hypot(P / 4 + turn * 2 / squares, turn * 3 / squares))


def test_arm_by_hand() -> None:
    known = worked(BOAT, {site.mooring: site.MOORINGS.keys[2], site.leg_angle: 60})
    angle = math.radians(60)
    F, N = value_of(loads.force_across, known), value_of(loads.force_along, known)
    M, T = value_of(loads.yaw_across, known), value_of(loads.yaw_along, known)
    assert value_of(mooring.arm, known) == pytest.approx(
        max((F + 2 * M / 16) / math.sin(angle), (N + 2 * T / 8) / math.cos(angle)) / 4)
    high = worked({site.mooring: site.MOORINGS.keys[2], site.flood: 6})
    assert verdict(mooring.range_check, high) == "LOOK"
    assert value_of(mooring.line_needed, known) == 0
    assert verdict(mooring.line_check, known) == "OK"


@pytest.mark.parametrize(("kind", "factor"), [
    ("wire rope", 3), ("synthetic line", 5), ("nylon line", 5 / 0.85)])
def test_lines_pull_only_and_have_their_own_factor(kind: str, factor: float) -> None:
    arms = {site.mooring: site.MOORINGS.keys[2]}
    stiff = found(mooring.arm, BOAT, arms)
    known = worked(BOAT, arms, {site.arm_kind: kind})
    assert value_of(mooring.arm, known) == pytest.approx(2 * stiff)
    assert value_of(mooring.line_needed, known) == pytest.approx(2 * stiff * factor)
    assert verdict(mooring.line_check, known) == "NOT OK"
    strong = worked(BOAT, arms, {site.arm_kind: kind, site.line_break: 2.3 * stiff * factor})
    assert verdict(mooring.line_check, strong) == "OK"
    odd = worked(BOAT, arms, {site.arm_kind: kind, held.holds: 3})
    assert value_of(mooring.arm, odd) == pytest.approx(stiff * 4)
    idle = worked(BOAT, {site.arm_kind: kind})
    assert value_of(mooring.line_needed, idle) == 0


def test_slab_at_the_bed_against_a_search() -> None:
    """The depth closes the code's equation, the bearing growing down to 12 ft and no further."""
    chance = random.Random(7)
    deep = set()
    for _ in range(200):
        P, h = 10 ** chance.uniform(1, 4.7), chance.uniform(1, 45)
        b, s, m = chance.uniform(0.5, 3), chance.uniform(20, 400), chance.choice((1, 2))
        known = {mooring.pile_P: P, mooring.pile_h: h, mooring.pile_b: b,
                 site.soil_bearing: s, mooring.soil_m: m}
        low, high = 1e-6, 1e4
        for _ in range(100):
            d = (low + high) / 2
            enough = m * s * min(d, 12) * b * d**2 > 4.25 * P * h
            low, high = (low, d) if enough else (d, high)
        assert value_of(mooring.embed_held, known) == pytest.approx(high, rel=1e-8)
        assert value_of(mooring.S_3, known) == pytest.approx(m * s * min(high, 12), rel=1e-8)
        deep.add(high > 12)
    assert deep == {True, False}


def test_slab_takes_the_shorter_depth_and_moment() -> None:
    free = worked(BOAT, PILES)
    known = worked(BOAT, PILES, {site.slab: "yes"})
    P, h = value_of(mooring.pile_P, known), value_of(mooring.pile_h, known)
    assert value_of(mooring.pile_M, known) == pytest.approx(P * h)
    assert value_of(mooring.pile_M, free) > P * h
    assert value_of(mooring.embed_asked, known) == value_of(mooring.embed_held, known)
    assert value_of(mooring.embed_asked, free) == value_of(mooring.embed, free)
    assert value_of(mooring.embed_asked, known) < value_of(mooring.embed_asked, free)
    short = worked(BOAT, PILES, {site.slab: "yes", site.pile_embedded: 1})
    assert verdict(mooring.embed_check, short) == "NOT OK"
    more = value_of(mooring.embed_check.amount, short)
    assert verdict(mooring.embed_check, worked(
        BOAT, PILES, {site.slab: "yes", site.pile_embedded: 1.001 + more})) != "NOT OK"


# ------------------------------------------------------------------ the wind case afloat


def test_wind_case_by_hand() -> None:
    """A pull at the corner sinks the section and leans it, on the axis where the corner goes."""
    known = worked(CHAIN, BOAT, {sec.chain_weight: 100})
    typed = 100 * 2 / 4
    down = 2 * value_of(mooring.w, known) * value_of(mooring.s, known) - typed
    assert down > 50
    assert value_of(mooring.pulled_down, known) == pytest.approx(down)
    W = value_of(weight.service, known)
    half_b = value_of(parts.overall_width, known) / 2
    half_l = value_of(parts.overall_length, known) / 2
    lean = max(half_b**2 / value_of(stability.GM_a["service"], known),
               half_l**2 / value_of(stability.GM_b["service"], known))
    dip = down / value_of(buoyancy.sinkage, known) + 12 * down / W * lean
    assert value_of(mooring.wind_corner, known) == pytest.approx(
        value_of(stability.low["service"], known) - dip)
    assert verdict(mooring.wind_check, known) == "OK"
    heavy = worked(CHAIN, BOAT, {site.chain: "3/4", site.line_pull: 9000})
    assert value_of(mooring.wind_corner, heavy) < value_of(mooring.wind_corner, known)
    assert verdict(mooring.wind_check, heavy) != "OK"


def test_typed_chain_weight_lightens_the_wind_case() -> None:
    known = worked(CHAIN, BOAT, {sec.chain_weight: 60})
    legs = 2 * value_of(mooring.T_v, known)
    assert value_of(mooring.pulled_down, known) == pytest.approx(legs - 60 * 2 / 4)
    assert found(mooring.pulled_down, CHAIN, BOAT) == pytest.approx(legs, rel=0.01)
    assert found(mooring.pulled_down, CHAIN, BOAT, {sec.chain_weight: 3000}) == 0


def test_hoops_rub_down_on_one_side() -> None:
    known = worked(BOAT, PILES)
    assert value_of(mooring.pulled_down, known) == pytest.approx(
        2 * 0.3 * value_of(mooring.pile_P, known))


def test_joints_by_hand() -> None:
    known = worked(BOAT, {held.carried: 3, afloat.hinge_apart: 5})
    F, N = 3 * value_of(loads.force_across, known), 3 * value_of(loads.force_along, known)
    turn = 3 * max(value_of(loads.yaw_across, known), value_of(loads.yaw_along, known))
    assert turn > 0
    span = 3 * 16
    moment = F * span / 8 + turn / 2
    assert value_of(mooring.plan_M, known) == pytest.approx(moment)
    assert value_of(mooring.hinge_pull, known) == pytest.approx(N / 2 + moment / 5)
    assert value_of(mooring.hinge_shear, known) == pytest.approx((F / 2 + turn / span) / 2)


def test_plan_bending_by_pieces() -> None:
    """The moment found bounds that of a span under its force and a couple in its middle."""
    known = worked(BOAT, {held.carried: 2})
    F = 2 * value_of(loads.force_across, known)
    turn = 2 * max(value_of(loads.yaw_across, known), value_of(loads.yaw_along, known))
    span = 2 * 16
    x = np.linspace(0, span, 4001)
    shear = F / 2 + turn / span - F * x / span
    moment = (F / 2 + turn / span) * x - F * x**2 / span / 2 - np.where(x > span / 2, turn, 0)
    assert value_of(mooring.plan_M, known) == pytest.approx(abs(moment).max(), rel=2e-3)
    assert 2 * value_of(mooring.hinge_shear, known) == pytest.approx(abs(shear).max(), rel=1e-9)


def test_hinge_and_its_pin() -> None:
    hinged = {corners.joined: 1, corners.one_up: 200, held.carried: 2, afloat.hinge_apart: 7}
    known = worked(BOAT, hinged)
    pull, side = value_of(mooring.hinge_pull, known), value_of(mooring.hinge_shear, known)
    assert value_of(corners.hinge_up, known) == max(400, 20 * 16 * 8 / 8)
    assert value_of(corners.shore_up, known) == pytest.approx(20 * 16 * 8 / 4, rel=0.05)
    whole = math.hypot(pull, side, 200)
    assert value_of(mooring.hinge_all, known) == pytest.approx(whole)
    assert value_of(site.hinge_limit, known) == pytest.approx(27000 * math.pi * 0.75**2 / 4 / 2)
    assert verdict(mooring.hinge_check, known) in ("OK", "LOOK")
    pin = math.sqrt(whole / (27000 / 2 * math.pi / 4))
    for share, words in ((0.98, ("NOT OK",)), (1.02, ("OK", "LOOK"))):
        mine = worked(BOAT, hinged, {site.hinge_pin: pin * share})
        assert verdict(mooring.hinge_check, mine) in words
    two = worked({site.hinge_planes: 2})
    assert value_of(site.hinge_limit, two) == pytest.approx(
        2 * value_of(site.hinge_limit, known))
    weak = worked(BOAT, hinged, {site.hinge_limit: whole / 2})
    assert verdict(mooring.hinge_check, weak) == "NOT OK"
    assert value_of(mooring.hinge_all, worked(BOAT, {corners.joined: 0, corners.one_up: 0})) == 0


def test_every_way_to_be_joined_tells_of_a_joint() -> None:
    """Hinges typed, neighbours held, or one named that holds it in roll; else there is none."""
    alone = {sec.hinges: 0, held.carried: 1, afloat.held_by: "none"}
    assert value_of(corners.tied, worked(alone)) == 0
    for row, value in ((sec.hinges, 2), (held.carried, 1.5), (afloat.held_by, "B")):
        assert value_of(corners.tied, worked(alone, {row: value})) == 1, row.label


def test_formulas_are_small() -> None:
    """At most ten operators a formula, and no choice inside a choice."""
    def operators(e) -> int:
        return (type(e).__name__ in ("Op", "Negative", "Convert")) + sum(map(operators,
                                                                             children(e)))

    def nested(e, inside: bool = False) -> bool:
        mine = getattr(e, "name", "") == "when" and type(e).__name__ == "Call"
        return (mine and inside) or any(nested(c, inside or mine) for c in children(e))

    for sheet in SHEETS:
        for row in sheet.rows:
            if getattr(row, "expr", None) is not None and not isinstance(row, Verdict):
                assert operators(row.expr) <= 10, (row.label, operators(row.expr))
                assert not nested(row.expr), row.label
