"""Hardware: published cells of every kind of dowel, worked examples, and what any builder knows.

The rows are worked in Python (``value_of``), apart from the engine that fills the workbook.
"""

from __future__ import annotations

import pytest

from builder.language import Calculated, Row
from builder.language.proofs import unit_fault
from builder.language.ranges import Ranges
from builder.language.values import value_of
from builder.sheets import (
    buoyancy,
    catalog,
    framing,
    hardware,
    parts,
    weight,
)
from builder.sheets import hardware_bolts as ends
from builder.sheets import hardware_corners as corners
from builder.sheets import hardware_floats as floats
from builder.sheets import hardware_lengths as lengths
from builder.sheets import inputs as job
from builder.sheets import sections as sec
from builder.sheets import site_loads as loads
from builder.sheets.proof import connections
from builder.sheets.reference import LAGS, SCREWS, nds
from tests.trade.filled import with_defaults

MODES = ("Im", "Is", "II", "IIIm", "IIIs", "IV")
WALKWAY = {
    job.water: "fresh", job.salt_distance: 100000.0, job.stays_in: "no", job.use: "private",
    job.wood: "Southern Pine No.2", job.sawn: "dressed", job.incised: "no",
    job.delivered: "dried after treatment", job.longest_stock: 16.0, job.low_water_depth: 6.0,
    job.finish: "hot-dip galvanized", job.stringer_angle: "Angle 6 1/4 high",
    job.corner_inside: "Corner inside 6 1/4 high",
    job.corner_outside: "Corner outside 6 1/4 high",
    job.washer_plate: "Plate 2 x 6, two holes", job.lag: "3/8", job.lag_length: 4.0,
    sec.purpose: "walkway", sec.quantity: 1, sec.length: 20.0, sec.width: 6.0,
    sec.run: "across", sec.stringer_size: "2x8", sec.spacing: 16.0, sec.rail_size: "2x8",
    sec.rail_plies: 1, sec.header_size: "2x8", sec.deck: "panels",
    sec.float_model: "Box float 24 x 48 x 16", sec.float_rows: 2, sec.floats_a_row: 4,
}


def dock(**changes) -> dict[Row, float | str]:
    """Return the values of all inputs of a 6 x 20 ft walkway, with some changed by name."""
    known = dict(WALKWAY)
    for name, value in changes.items():
        known[getattr(sec if hasattr(sec, name) else job, name)] = value
    return with_defaults(known)


def of(row: Row, **changes) -> float | str:
    """Return the value of a row on the walkway, with some inputs changed."""
    return value_of(row, dock(**changes))


def word(label: str, **changes) -> str:
    """Return the verdict of a check of the sheet on the walkway."""
    check = next(c for c in hardware.sheet.checks if c.label == label)
    known = dock(**changes)
    ratio, look = value_of(check.ratio, known), value_of(check.verdict.look, known)
    if ratio <= look:
        return "OK"
    return "LOOK" if ratio <= 1.000000001 else check.verdict.worst


def modes_at_least(rows: dict[str, Row], known) -> set[str]:
    """Return the names of the modes whose value is the least."""
    values = {n: value_of(rows[n], known) for n in MODES if n in rows}
    least = min(values.values())
    return {n for n, v in values.items() if v <= least + 1e-9}


def lines(name: str):
    """Return the lines of a check table as pytest parameters."""
    return [pytest.param(x, id=x["name"]) for x in connections.lines_of(name)]


# ------------------------------------------------------------------ published cells


def bolt_cell(x: dict) -> tuple[dict[str, Row], dict]:
    """Return the rows that work a bolt cell, and what it gives."""
    known = {ends.G: x["G"], ends.D: x["D"], ends.Fyb: nds.Fyb_bolt.value}
    if x["shear planes"] == 1 and not x["steel side"]:
        return corners.ply, known | {
            parts.rail_t: x["main length"], corners.l_side: x["side length"],
            corners.theta_main: x["angle main"], corners.theta_side: x["angle side"]}
    if x["shear planes"] == 1:
        return ends.leg, known | {ends.l_m: x["main length"], ends.t_p: x["side length"],
                                  ends.theta: x["angle main"]}
    known |= {corners.t_corner: x["main length"], corners.t_c: x["side length"]}
    if not x["steel side"]:
        side = known | {corners.theta_side: x["angle side"]}
        known[corners.Fe_bracket] = value_of(corners.Fe_side, side)
        main = known | {corners.theta_main: x["angle main"]}
        known[ends.Fe] = value_of(corners.Fe_main, main)
    known[ends.theta] = max(x["angle main"], x["angle side"])
    return corners.corner, known


@pytest.mark.parametrize("x", lines("checks_bolts"))
def test_nds_bolt_tables(x) -> None:
    rows, known = bolt_cell(x)
    assert value_of(rows["Z"], known) == pytest.approx(x["right"], abs=x["tolerance"])
    assert x["mode"] in modes_at_least(rows, known)


@pytest.mark.parametrize("x", lines("checks_lags"))
def test_nds_lag_tables_12j_12k(x) -> None:
    known = {job.lag: x["lag"], ends.G: x["G"], floats.l_flange: x["side thickness"],
             floats.p_g: x["penetration over D"] * connections.entry(LAGS, x["lag"], "D"),
             floats.theta_lag: x["angle main"], floats.theta_flange: x["angle side"]}
    if x["steel side"]:
        known[floats.Fe_flange] = nds.Fe_steel_gauge.value
    assert value_of(floats.sideways["Z"], known) == pytest.approx(x["right"], abs=x["tolerance"])
    assert x["mode"] in modes_at_least(floats.sideways, known)


@pytest.mark.parametrize("x", lines("checks_wood_screws"))
def test_nds_wood_screw_tables_12l_12m(x) -> None:
    D, Dr, Fyb = (connections.entry(SCREWS, x["screw"], c)
                  for c in ("D", "root diameter Dr", "Fyb"))
    known = {ends.G: x["G"], floats.D_g: D, floats.Dr: Dr, floats.Fyb_g: Fyb,
             floats.l_lag: x["penetration over D"] * D, floats.l_flange: x["side thickness"],
             floats.theta_lag: 0, floats.theta_flange: 0}
    if x["steel side"]:
        known[floats.Fe_flange] = nds.Fe_steel_gauge.value
    assert value_of(floats.sideways["Z"], known) == pytest.approx(x["right"], abs=x["tolerance"])
    assert x["mode"] in modes_at_least(floats.sideways, known)


@pytest.mark.parametrize("x", lines("checks_yield"))
def test_yield_equations_with_bearing_given(x) -> None:
    terms = floats.terms
    known = {floats.Dr: x["D"], floats.Fyb_g: x["Fyb"], floats.Fe_lag: x["Fe main"],
             floats.Fe_flange: x["Fe side"], floats.l_lag: x["length main"],
             floats.l_flange: x["length side"], terms["I"]: x["Rd I"], terms["II"]: x["Rd II"],
             terms["III"]: x["Rd III and IV"]}
    assert value_of(floats.sideways["Z"], known) == pytest.approx(x["right"], abs=x["tolerance"])
    assert x["mode"] in modes_at_least(floats.sideways, known)


@pytest.mark.parametrize("x", lines("checks_withdrawal"))
def test_nds_withdrawal_tables_12_2(x) -> None:
    D, W = {"lag": (floats.D_g, floats.W), "screw": (floats.D_s, floats.W_s)}[x["kind"]]
    found = value_of(W, {ends.G: x["G"], D: x["D"]})
    assert found == pytest.approx(x["right"], abs=x["tolerance"])


@pytest.mark.parametrize("one", connections.families, ids=lambda f: f.key)
def test_proof_families_agree(one) -> None:
    for case in one.cases:
        known = dict(case.given)
        for row, printed in case.printed.items():
            assert value_of(row, known) == pytest.approx(
                printed, abs=case.step[row] / 2 * 1.000001), case.name


# ------------------------------------------------------------------ worked examples


def test_example_11_steel_main_plate() -> None:
    """A 1/2 in bolt through a 1/4 in plate into 1-1/2 in Douglas Fir-Larch: mode II governs."""
    known = {ends.D: 0.5, ends.Fyb: 45000, corners.Fe_main: 87000, corners.Fe_side: 5600,
             parts.rail_t: 0.25, corners.l_side: 1.5, corners.theta_main: 0,
             corners.theta_side: 0}
    ply = corners.ply
    printed = {"Re": 15.5357, "Rt": 0.16667, "k1": 0.49964, "k2": 7.7925, "k3": 0.67350,
               "Im": 2718.75, "Is": 1050.00, "II": 582.92, "IIIm": 825.73, "IIIs": 783.15,
               "IV": 981.52, "Z": 582.92}
    for name, value in printed.items():
        assert value_of(ply[name], known) == pytest.approx(value, rel=3e-5), name
    assert modes_at_least(ply, known) == {"II"}


def test_example_17_pair_of_ledger_bolts() -> None:
    """Two 1/2 in bolts, 2x8 to 2x8 Southern Pine, wet: 252.0 lb each before, mode II."""
    known = {ends.G: 0.55, ends.D: 0.5, ends.Fyb: 45000, parts.rail_t: 1.5, corners.l_side: 1.5}
    printed = {"Im": 547.5, "Is": 547.5, "II": 252.0, "IIIm": 364.1, "IIIs": 364.1, "IV": 462.5}
    for name, value in printed.items():
        assert value_of(corners.ply[name], known) == pytest.approx(value, abs=0.06), name
    # The published sum starts from the table's 250 lb; the equation gives 252.
    assert 2 * value_of(corners.Z_ply, known) == pytest.approx(350 * 252.0 / 250, abs=0.1)
    stiff = 1.4e6 * 1.5 * 1.5
    Cg = value_of(ends.group["Cg"], {ends.n: 2, ends.D: 0.5, ends.spacing: 2.0,
                                     ends.EA_m: stiff, ends.EA_s: stiff})
    assert Cg == pytest.approx(1.0, abs=5e-5)
    shear = {ends.Fv: 169.75, ends.t_m: 1.5, ends.d_m: 7.25, ends.d_hung: 5.25}
    assert value_of(ends.V_hung, shear) == pytest.approx(467, abs=0.5)


def test_example_18_plates_and_steel() -> None:
    """5/8 in bolt, plate to 3.5 in, across: 691.5; 1/2 in, plate to 1.5 in, along: 625.0."""
    across = {ends.G: 0.55, ends.D: 0.625, ends.Fyb: 45000, ends.l_m: 3.5, ends.t_p: 0.25}
    assert value_of(ends.leg["Z"], across) == pytest.approx(691.5, abs=0.05)
    along = {ends.G: 0.55, ends.D: 0.5, ends.Fyb: 45000, ends.l_m: 1.5, ends.t_p: 0.25,
             ends.theta: 0}
    assert value_of(ends.leg["Z"], along) == pytest.approx(625.0, abs=0.05)
    steel = {ends.D: 0.5, ends.t_p: 0.25, ends.clear_end: 0.7188, ends.long_grip: 1}
    assert value_of(ends.plate_bearing, steel) == pytest.approx(6250, abs=5)
    assert value_of(ends.bolt_shear, steel) == pytest.approx(2650, abs=5)
    assert value_of(ends.bolt_tension, steel) == pytest.approx(4420, abs=5)


@pytest.mark.parametrize(("rail", "left"), [(1.5, 1), (3.0, 0.85), (4.5, 0.61)])
def test_a_long_grip_takes_from_the_bolt(rail, left) -> None:
    """3 in of wood, 1/4 and 3/16 in plates: 15/16 in past 5 x 1/2 in, so 15 percent less."""
    known = dock() | {ends.D: 0.5, ends.t_p: 0.25, ends.t_m: 1.5, ends.t_n: rail,
                      ends.bolt_grip: 0.25 + rail + 0.1875}
    assert value_of(ends.long_grip, known) == pytest.approx(left)
    assert value_of(ends.bolt_shear, known) == pytest.approx(2651 * left, rel=1e-3)
    assert value_of(ends.bolt_tension, known) == pytest.approx(4418 * left, rel=1e-3)
    del known[ends.bolt_grip]
    plate = catalog.PLATES.find(job.washer_plate)["thickness"]
    assert value_of(ends.bolt_grip, known) == pytest.approx(0.25 + rail + value_of(plate, known))


def test_example_21_washers() -> None:
    """Cut washer 596 lb, Cb 1.2727, F'c 481.8 with Cb; 2 x 2 plate 1,686 lb."""
    cut = {ends.Fc_perp: 565, ends.plate_b: 1.375, ends.A_net: 1.236}
    assert value_of(ends.Cb, cut) == pytest.approx(1.2727, abs=5e-5)
    assert value_of(ends.Fc_adjusted, cut) * value_of(ends.Cb, cut) == pytest.approx(481.8, abs=.1)
    assert value_of(ends.pull_plate, cut) == pytest.approx(596, abs=0.6)
    plate = {ends.Fc_perp: 565, ends.plate_b: 2, ends.plate_h: 2, ends.plate_holes: 1,
             ends.plate_hole: 0.5625}
    assert value_of(ends.pull_plate, plate) == pytest.approx(1686, abs=1)


def test_example_23_deck_screw() -> None:
    """No.10 x 3 in, 2x deck on a 2x joist, Southern Pine, wet: 163.8 lb/in, 172 lb."""
    known = {ends.G: 0.55, floats.D_s: 0.19, job.deck_screw_length: 3.0, floats.p_s: 1.5}
    assert value_of(floats.W_s, known) == pytest.approx(163.8, abs=0.05)
    assert value_of(floats.W_screw, known) == pytest.approx(172, abs=0.5)


def test_lag_example_e2_3() -> None:
    """1/2 x 4 in lag, 1-1/2 in side: thread 2.1875 in, 955 lb dry, 668 wet, 1,070 wet and wind."""
    lag = {ends.G: 0.55, job.lag: "1/2", job.lag_length: 4.0, job.lag_grip: 1.5}
    for CM, CD, printed in ((1, 1, 955), (0.7, 1, 668), (0.7, 1.6, 1070)):
        known = lag | {floats.CM_pull: CM, floats.CD_lift: CD}
        assert value_of(floats.p_thread, known) == 2.1875
        assert value_of(floats.W_lag, known) == pytest.approx(printed, abs=1)


# ------------------------------------------------------------------ trade facts


def test_wet_service_takes_three_tenths() -> None:
    dry = value_of(ends.Z_leg, dock() | {ends.CM: 1})
    assert of(ends.Z_leg) == pytest.approx(0.7 * dry)
    pull = value_of(floats.W_lag, dock() | {floats.CM_pull: 1})
    assert of(floats.W_lag) == pytest.approx(0.7 * pull)


def test_both_directions_count() -> None:
    """The end carries the greater of the two forces; the shear check looks at each."""
    known = dock()
    hung, pulled = value_of(ends.R_hung, known), value_of(ends.R_floats, known)
    assert value_of(ends.V, known) == max(hung, pulled)
    assert hung == value_of(framing.stringer_R, known)
    weaker = value_of(ends.shear_share, dock() | {ends.y_1: 4.0, ends.y_2: 7.0})
    assert weaker == pytest.approx(
        pulled / value_of(ends.end_shear(ends.Fv, ends.t_m, ends.d_m, ends.d_floats),
                          dock() | {ends.y_1: 4.0}))


def test_edges_of_the_centred_angle() -> None:
    """A 6-1/4 in angle on a 2x8 leaves the bolts 2 in from both edges: 4 D of 1/2 in, no more."""
    known = dock()
    assert value_of(ends.y_1, known) == 2.0
    assert value_of(parts.stringer_d, known) - value_of(ends.y_2, known) == 2.0
    assert word("Edge distance, either edge loaded") == "OK"
    assert word("Edge distance, either edge loaded", bolt="5/8") == "NOT OK"


def test_thin_wood_and_thin_plate_carry_less() -> None:
    known = dock()
    thick = value_of(ends.leg["Z"], known | {ends.l_m: 3.5})
    assert value_of(ends.leg["Z"], known) < thick
    gauge = of(ends.Fe_steel, stringer_angle="Angle 6 1/4 high, light")
    assert gauge < of(ends.Fe_steel)


def test_two_shear_planes_carry_more_than_one() -> None:
    known = dock()
    assert value_of(ends.leg["Z"], known) < value_of(corners.corner["Z"], known)
    assert value_of(corners.corner["Z"], known) <= 2 * value_of(ends.leg["Z"], known)


def test_group_action_only_takes_away() -> None:
    for bolts in (1, 2, 4, 6):
        Cg = value_of(ends.group["Cg"], dock() | {parts.bolts_a_leg: bolts})
        assert Cg <= 1.0 + 1e-12
        assert (bolts > 1) or Cg == pytest.approx(1.0)


def test_end_distance_below_4d_lowers_the_value() -> None:
    near = value_of(ends.C_delta, dock() | {ends.end_distance: 1.0})
    assert near == 0.5
    assert of(ends.C_delta) == 1


def test_panels_do_not_hold_a_frame_square() -> None:
    assert word("Frame held square") == "LOOK"
    assert word("Frame held square", squaring="boards, two screws a crossing") == "LOOK"
    assert word("Frame held square", squaring="boards, two screws a crossing",
                deck="boards") == "OK"
    assert word("Frame held square", squaring="diagonal brace") == "OK"


def test_plies_share_and_a_single_ply_asks_nothing() -> None:
    assert of(corners.ply_force) == 0
    two = of(corners.ply_force, rail_plies=2)
    assert 0 < two < of(ends.V, rail_plies=2) / 2


def test_skirt_takes_load_only_when_bolted_to_count() -> None:
    assert of(corners.skirt_force) == of(corners.skirt_force, skirt="hung") == 0
    force = of(corners.skirt_force, skirt="bolted to count", skirt_size="2x8")
    V = of(ends.V, skirt="bolted to count", skirt_size="2x8")
    assert force == pytest.approx(V / 2)  # skirt and single rail alike, 16 in bolts and stringers


def test_lag_in_a_narrow_edge_holds_one_way() -> None:
    """Stringers across: rail lags hold along, stringer lags across; 2x rails no other way."""
    known = dock()
    assert value_of(floats.hold_along, known) == value_of(floats.in_rail, known) == 4
    assert value_of(floats.hold_across, known) == value_of(floats.in_stringers, known) == 3
    assert word("Floats held both ways") == "OK"
    assert of(floats.hold_across, run="along") == 0
    assert word("Floats held both ways", run="along") == "LOOK"
    assert of(floats.hold_across, run="along", rail_size="4x8") == 4


def test_longer_lag_holds_more_and_short_one_is_refused() -> None:
    assert of(floats.W_lag, lag_length=3.0) < of(floats.W_lag, lag_length=5.0)
    assert word("Float lags' depth in the wood", lag_length=1.5) == "NOT OK"


def test_pull_on_lags_grows_with_the_lifting_factor() -> None:
    assert of(floats.U, lift_factor=1.5) == pytest.approx(1.2 * of(floats.U, lift_factor=1.25))


STOCKED = {D: sorted(length for d, length, *_ in catalog.BOLT_STOCK.lines if d == D)
           for D in {line[0] for line in catalog.BOLT_STOCK.lines}}


@pytest.mark.parametrize("bolt, D", [("3/8", 0.375), ("1/2", 0.5), ("5/8", 0.625), ("3/4", 0.75),
                                     ("1", 1)])
@pytest.mark.parametrize("plies", [1, 2, 3])
@pytest.mark.parametrize("need, ordered", [
    (lengths.leg_need, lengths.leg_bolt), (lengths.rail_need, lengths.rail_bolt),
    (lengths.header_need, lengths.header_bolt), (lengths.corner_need, lengths.corner_bolt),
    (lengths.ply_need, lengths.ply_bolt), (lengths.skirt_need, lengths.skirt_bolt)])
def test_bolt_is_the_next_stocked_length(bolt, D, plies, need, ordered) -> None:
    known = dock(bolt=bolt, rail_plies=plies, skirt="bolted to count")
    wanted, got = value_of(need, known), value_of(ordered, known)
    assert got == next(x for x in STOCKED[D] if x >= wanted)


def test_bolt_length_is_the_sum_of_what_it_passes() -> None:
    """1/4 plate, 1-1/2 wood, 1/4 washer plate, cut washer, nut and 1/4 in past it."""
    assert of(lengths.leg_need) == pytest.approx(0.25 + 1.5 + 0.25 + 0.109 + 0.4375 + 0.25)
    assert of(lengths.leg_bolt) == 3


def test_corner_bolt_passes_both_brackets() -> None:
    """3/16 and 1/4 in plates, 1-1/2 in wood, two cut washers, nut and 1/4 in past it."""
    plates = {corners.inside: 1, corners.outside: 2}
    line = catalog.CORNERS.lines
    column = list(catalog.CORNERS.columns).index("plate thickness")
    thick = [line[0][column], line[1][column]]
    known = dock() | plates | {lengths.brackets: 0.1875 + 0.25}
    assert value_of(lengths.brackets, dock() | plates) == pytest.approx(sum(thick))
    assert value_of(lengths.header_need, known) == pytest.approx(
        0.1875 + 0.25 + 1.5 + 2 * 0.109 + 0.4375 + 0.25)


def test_a_hinge_comes_down_on_the_corner() -> None:
    """Header reaction 370 lb and one of two hinges of a joint with 400 lb: 370 + 200."""
    known = dock() | {framing.header_R: 370.0, corners.joined: 1, corners.hinge_up: 400.0}
    hinged = known | {corners.one_up: 200.0}
    assert value_of(corners.V_corner, hinged) == 570
    assert value_of(corners.corner_check.ratio, hinged) == pytest.approx(
        570 / 370 * value_of(corners.corner_check.ratio, known | {corners.one_up: 0.0}))
    assert value_of(corners.corner_shear_check.ratio, hinged) == pytest.approx(
        570 / 370 * value_of(corners.corner_shear_check.ratio, known | {corners.one_up: 0.0}))


def test_lags_carry_growth_and_water_too() -> None:
    """A 47 lb float with 30 lb of growth and water on it, factor 1.25, 8 lags: 12.03 lb."""
    known = dock() | {parts.floats: 10, weight.growth: 100.0, weight.aged_floats: 200.0,
                      floats.float_weight: 47.0, floats.lags_each: 8, job.lift_factor: 1.25}
    assert value_of(floats.U, known) == pytest.approx(1.25 * (47 + 30) / 8)


def test_the_current_pushes_lags_where_it_is_more_than_the_drag_ashore() -> None:
    """2 ft/s on 4 ft of float 0.5 ft deep, C 1.2: 62.4 x 4 / 64.35 x 1.2 x 2 = 9.3 lb."""
    known = dock() | {loads.current_pressure: 62.4 * 4 / 64.35, loads.current_C: 1.2,
                      parts.float_l: 4.0, parts.float_b: 2.0, buoyancy.draft_flotation: 6.0,
                      floats.hold_along: 4, floats.hold_across: 3}
    assert value_of(floats.stream, known) == pytest.approx(9.31, abs=0.01)
    for weight_of_float, push in ((10.0, 9.31), (47.0, 23.5)):
        heavy = known | {floats.float_weight: weight_of_float}
        assert value_of(floats.lag_push, heavy) == pytest.approx(push / 3, abs=0.01)


def test_bolt_too_long_for_the_stock_is_refused() -> None:
    known = dock() | {lengths.rail_need: 12.5}
    check = lengths.length_check
    assert value_of(check.ratio, known) > 1
    assert word("A bolt that long is stocked") == "OK"


def test_zinc_in_salt_water_is_refused() -> None:
    name = "Finish suits the water"
    assert word(name) == "OK"
    assert word(name, salt_distance=200.0) == "LOOK"
    assert word(name, water="sea", salt_distance=0.0) == "NOT OK"
    assert word(name, water="sea", salt_distance=0.0, finish="stainless steel 316") == "OK"
    assert of(lengths.treat_below, water="sea") == "UC5"
    assert of(lengths.treat_above, salt_distance=200.0) == "UC4B"
    assert of(lengths.treat_below) == of(lengths.treat_above) == "UC4A"


def test_washer_plate_must_pass_the_bolt() -> None:
    assert word("Washer plate passes the bolt") == "OK"
    assert word("Washer plate passes the bolt", bolt="5/8") == "NOT OK"


def test_weaker_wood_lowers_every_joint() -> None:
    for row in (ends.Z_leg, corners.Z_corner, corners.Z_ply, floats.Z_lag, floats.W_lag,
                floats.W_screw, ends.pull_plate):
        assert of(row, wood="Spruce-Pine-Fir No.1/No.2") < of(row), row.label


# ------------------------------------------------------------------ the sheet itself


def test_units_come_out() -> None:
    found = [f for r in hardware.sheet.rows if isinstance(r, Calculated)
             and (f := unit_fault(r))]
    assert not found


def test_nothing_divides_by_zero_for_any_input() -> None:
    ranges = Ranges()
    for r in hardware.sheet.rows:
        ranges.of(r)
    assert not [f for f in ranges.faults if f.startswith("Hardware")]
    for check in hardware.sheet.checks:
        assert ranges.of(check.limit)[0] > 0, check.label


def test_every_check_has_cure_and_source() -> None:
    for check in hardware.sheet.checks:
        assert check.cure and check.source and check.group, check.label
