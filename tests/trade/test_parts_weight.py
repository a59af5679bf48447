"""Parts, Decking and Weight against counts and weights worked out by hand.

The cases here are for testing only.  Values are read with the Python meaning of the rows; that
the cells agree with it is tested elsewhere.
"""

from __future__ import annotations

import itertools
import math

import pytest

from builder.language.values import value_of
from builder.sheets import catalog, decking, parts, weight
from builder.sheets import inputs as job
from builder.sheets import sections as sec
from builder.sheets.reference import LUMBER
from tests.trade.filled import verdict, with_defaults

PANEL_24 = next(k for k, line in zip(catalog.PANELS.keys, catalog.PANELS.lines, strict=True)
                if line[:2] == (4, 2))
BOX_1648 = next(k for k, line in zip(catalog.FLOATS.keys, catalog.FLOATS.lines, strict=True)
                if line[:4] == (1, 48, 24, 16))

WALKWAY = {
    job.water: "fresh", job.use: "private", job.stays_in: "no", job.wood: "Southern Pine No.2",
    job.sawn: "dressed", job.incised: "no", job.longest_stock: 20.0,
    job.stringer_angle: catalog.ANGLES.keys[0], job.corner_inside: catalog.CORNERS.keys[0],
    job.corner_outside: catalog.CORNERS.keys[1], job.lag: "3/8",
    job.washer_plate: next(k for k, n in zip(catalog.PLATES.keys,
                                             catalog.PLATES.entries("holes"), strict=True)
                           if n == 2),
    sec.purpose: "walkway", sec.quantity: 1, sec.length: 20.0, sec.width: 6.0,
    sec.run: "across", sec.stringer_size: "2x8", sec.spacing: 16.0, sec.rail_size: "2x8",
    sec.rail_plies: 2, sec.header_size: "2x8", sec.deck: "panels", sec.panel: PANEL_24,
    sec.float_model: BOX_1648, sec.float_rows: 2, sec.floats_a_row: 4,
}
"""A 20 × 6 ft walkway: two-ply 2x8 rails, stringers across at 16 in, panels, eight floats."""

OPEN_PLATFORM = WALKWAY | {
    job.sawn: "rough", sec.purpose: "platform", sec.length: 12.0, sec.width: 8.0,
    sec.rail_plies: 1, sec.skirt: "hung", sec.skirt_size: "2x12", sec.floats_a_row: 3,
}
"""For the sanity test of weights only."""


def filled(given: dict, **change) -> dict:
    """Return what is known: the case, changes to it by row name, and the defaults."""
    known = dict(given)
    for name, value in change.items():
        known[getattr(sec if hasattr(sec, name) else job, name)] = value
    return with_defaults(known)


def read(row, given=WALKWAY, **change):
    """Return the value of a row for a case."""
    return value_of(row, filled(given, **change))


def test_lumber_grows_from_dressed_to_rough_to_full_sawn():
    for side in ("thickness", "width"):
        sizes = [LUMBER.entries(f"{side} {kind}") for kind in ("dressed", "rough", "sawn")]
        for dressed, rough, sawn in zip(*sizes, strict=True):
            assert dressed <= rough <= sawn


@pytest.mark.parametrize(("sawn", "size"), [("dressed", (1.5, 7.25)), ("rough", (1.625, 7.375)),
                                            ("full sawn", (2, 8))])
def test_actual_size_follows_how_the_lumber_is_sawn(sawn, size):
    known = filled(WALKWAY, sawn=sawn)
    assert (value_of(parts.rail_t, known), value_of(parts.rail_d, known)) == size


def test_walkway_geometry():
    known = filled(WALKWAY)
    for row, by_hand in {
        parts.clear_span: 6 - 4 * 1.5 / 12,
        parts.header_clear: 20 - 3 / 12,
        parts.deck_area: 120,
        parts.frame_underside: 16 / 12,
        parts.deck_top: (16 + 7.25 + 1.5) / 12,
        parts.row_y: 3 - 1,
        parts.end_x: 10 - 2,
        parts.float_y_pitch: 4,
        parts.float_x_pitch: 16 / 3,
    }.items():
        assert value_of(row, known) == pytest.approx(by_hand), row.label


def test_walkway_counts():
    known = filled(WALKWAY)
    for row, by_hand in {
        parts.bays: 15,
        parts.stringers: 14,
        parts.rails: 4,
        parts.floats: 8,
        parts.corner_inside: 4,
        parts.corner_outside: 4,
        parts.angles: 28,
        parts.washer_plates: 56,
        parts.stringer_bolts: 28 * 2 * 2,
        parts.corner_bolts: 4 * 2 * 2,
        parts.ply_bolts: 2 * (15 + 1),
        parts.bolts: 112 + 16 + 32,
        parts.washers: 112 + 2 * 16 + 2 * 32,
        parts.panels: 5 * 3,
        parts.skirt_screws: 0,
        parts.boards: 0,
    }.items():
        assert value_of(row, known) == by_hand, row.label
    assert value_of(parts.lags, known) == 8 * catalog.FLOATS.entries("lags each")[
        catalog.FLOATS.keys.index(BOX_1648)]


def test_a_stringer_end_takes_one_angle_and_two_washer_plates():
    for spacing in (12.0, 16.0, 24.0):
        known = filled(WALKWAY, spacing=spacing)
        ends = 2 * value_of(parts.stringers, known)
        assert value_of(parts.angles, known) == ends
        assert value_of(parts.washer_plates, known) == 2 * ends


def test_a_corner_takes_one_bracket_inside_and_one_outside_through_bolted():
    known = filled(WALKWAY)
    known[parts.corner_bolts_a_leg] = 3
    assert value_of(parts.corner_inside, known) == value_of(parts.corner_outside, known) == 4
    assert value_of(parts.corner_bolts, known) == 4 * 2 * 3


def test_plates_with_one_hole_are_twice_as_many():
    one = next(k for k, n in zip(catalog.PLATES.keys, catalog.PLATES.entries("holes"),
                                 strict=True) if n == 1)
    assert read(parts.washer_plates, washer_plate=one) == 2 * read(parts.washer_plates)


def test_stringers_along_are_cut_between_cross_beams():
    known = filled(WALKWAY, run="along", cross_beams=3, cross_beam_size="2x8")
    assert value_of(parts.bays, known) == math.ceil((72 - 1.5) / 16)
    assert value_of(parts.stringers, known) == 4 * 4
    assert value_of(parts.stringer_length, known) == pytest.approx((20 - 0.25 - 3 * 0.125) / 4)
    assert value_of(parts.angles, known) == 2 * 16 + 2 * 3


def test_no_space_is_wider_than_the_spacing_and_the_spaces_fill_the_length():
    for length, spacing in itertools.product((8.0, 11.3, 20.0), (12.0, 16.0, 19.2)):
        known = filled(WALKWAY, length=length, spacing=spacing)
        last = value_of(parts.last_space, known)
        assert 0 < last <= spacing + 1e-6
        spans = spacing * (value_of(parts.bays, known) - 1) + last
        assert spans + 1.5 / 2 == pytest.approx(12 * length)


def test_last_stringer_on_top_of_the_header_is_found():
    assert read(parts.last_check.ratio, length=20 + 1 / 12) > 1
    assert read(parts.last_check.ratio) < 0.9


def test_stringers_left_over_at_one_end_move_the_centre_of_gravity():
    known = filled(WALKWAY, length=18.0)
    shift = (16 * 14 / 2 - 9 * 12) / 12
    assert value_of(parts.stringer_shift, known) == pytest.approx(shift)
    by_hand = shift * value_of(weight.launch_parts[2], known) / value_of(weight.launch, known)
    assert value_of(weight.launch_x, known) == pytest.approx(by_hand)


def test_floats_that_do_not_fit_are_found():
    assert read(parts.along_check.ratio) <= 1
    assert read(parts.along_check.ratio, floats_a_row=5) == pytest.approx(1)
    assert read(parts.along_check.ratio, floats_a_row=6) > 1
    assert read(parts.across_check.ratio, float_rows=4) > 1
    assert read(parts.across_check.ratio, float_rows=3) == pytest.approx(1)


def test_extra_float_outside_the_frame_is_found_only_when_it_is_fitted():
    far = {sec.extra_x[0]: 9.0}
    assert read(parts.inside_check.ratio, WALKWAY | far) == pytest.approx(1)
    assert read(parts.inside_check.ratio, WALKWAY | far, extra_floats=1) > 1
    assert read(parts.floats, WALKWAY | far, extra_floats=1) == 9


def test_rail_longer_than_stock_is_spliced():
    known = filled(WALKWAY, longest_stock=16.0)
    assert value_of(parts.rail_splices, known) == 4
    assert value_of(parts.stock_check.ratio, known) == pytest.approx(20 / 16)


def test_skirt_goes_round_the_outside():
    known = filled(OPEN_PLATFORM)
    t = 1.625 / 12
    assert value_of(parts.skirt_length_total, known) == pytest.approx(2 * (12 + 2 * t) + 2 * 8)
    assert value_of(parts.overall_length, known) == pytest.approx(12 + 2 * t)
    assert value_of(parts.skirt_screws, known) == 2 * math.ceil((40 + 4 * t) * 12 / 16)


def test_bolted_skirt_takes_bolts_and_no_screws():
    known = filled(OPEN_PLATFORM, skirt="bolted to count")
    assert value_of(parts.skirt_screws, known) == 0
    assert value_of(parts.skirt_bolts, known) == 31


def test_six_panels_of_4_by_4_cover_8_by_12():
    known = filled(OPEN_PLATFORM)
    known |= {parts.panel_x: 4.0, parts.panel_y: 4.0}
    assert value_of(parts.panels, known) == 6
    assert value_of(decking.panels_whole, known) == 6


@pytest.mark.parametrize(("spacing", "off"), [(16.0, 0), (12.0, 0), (24.0, 0), (19.2, 9.6)])
def test_16_in_divides_a_panel_of_4_ft(spacing, off):
    known = filled(OPEN_PLATFORM, spacing=spacing)
    known[decking.panel_length] = 48.0
    joints = value_of(decking.joints, known)
    step = abs(value_of(decking.joint_step, known))
    assert step == pytest.approx(off)
    assert value_of(decking.joint_off, known) == pytest.approx(joints * off)
    assert (value_of(decking.joint_check.ratio, known) > 1) == (off > 0)


def test_deck_past_the_frame_moves_the_joints_off_their_stringers():
    assert read(decking.joint_off, deck_overhang=2.0) == pytest.approx(2)
    assert read(decking.joint_check.ratio, deck_overhang=2.0) > 1
    known = filled(WALKWAY, deck_overhang=2.0)
    known[decking.joint_step] = 0.5
    assert value_of(decking.joint_off, known) == pytest.approx(2 - 0.5)


def test_cut_panels_add_up_and_use_whole_ones():
    known = filled(WALKWAY, length=18.0, width=5.0)
    assert value_of(parts.panels, known) == 5 * 3
    assert value_of(decking.panels_whole, known) == 4 * 2
    assert value_of(decking.panels_cut_length, known) == 2
    assert value_of(decking.panels_cut_width, known) == 4
    assert value_of(decking.panels_cut_both, known) == 1
    assert value_of(decking.last_column, known) == pytest.approx(24)
    assert value_of(decking.last_row, known) == pytest.approx(12)


BOARDS = WALKWAY | {sec.deck: "boards", sec.board: "2x6 treated"}


def test_boards_of_a_walkway():
    known = filled(BOARDS)
    assert value_of(parts.panels, known) == value_of(decking.panels_cut_both, known) == 0
    assert value_of(parts.boards, known) == math.ceil((72 + 0.25) / 5.75)
    assert value_of(decking.last_rip, known) == pytest.approx(72 - 12 * 5.75)
    assert value_of(parts.crossings, known) == 13 * 16
    assert value_of(parts.board_butts, known) == 0
    assert value_of(parts.deck_screws, known) == 13 * 16 * 2


def test_boards_longer_than_stock_meet_on_stringers():
    known = filled(BOARDS, longest_stock=15.0)
    reach = value_of(parts.board_reach, known) * 12
    assert reach <= 15 * 12 and reach / 16 == int(reach / 16)
    assert value_of(parts.board_butts, known) == 13
    assert value_of(parts.deck_screws, known) == (13 * 16 + 13) * 2


def test_board_strength_by_hand():
    known = filled(BOARDS, spacing=24.0)
    S = 5.5 * 1.5**2 / 6
    own = 45 * 1.5 / 12 * 5.5 / 12 / 12
    point = 200 * 24 / 4 + own * 24**2 / 8
    assert value_of(decking.board_stress, known) == pytest.approx(point / S)
    assert value_of(decking.Fb_adjusted, known) == pytest.approx(1000 * 1.15)
    assert value_of(decking.CM, known) == 1


def test_snow_on_a_board_by_hand():
    """150 psf of snow for two months is as 150 / 1.15 for ten years; 60 psf of people is less."""
    S, width, dead = 5.5 * 1.5**2 / 6, 5.5 / 12, 45 * 1.5 / 12
    winter = {"spacing": 24.0, "ground_snow": 150.0, "stays_in": "yes"}
    moment = (150 + dead) / 1.15 * width / 12 * 24**2 / 8
    known = filled(BOARDS, **winter)
    assert value_of(decking.moment_uniform, known) == pytest.approx(moment)
    deep = filled(BOARDS, **winter | {"ground_snow": 300.0, "point_load": 200.0})
    heavy = (300 + dead) / 1.15 * width / 12 * 24**2 / 8
    assert value_of(decking.board_stress, deep) == pytest.approx(heavy / S)
    summer = filled(BOARDS, **winter | {"stays_in": "no"})
    people = (value_of(sec.strength_load, summer) + dead) * width / 12 * 24**2 / 8
    assert value_of(decking.moment_uniform, summer) == pytest.approx(people)
    assert people < moment


@pytest.mark.parametrize(("given", "board", "snow", "word"), [
    (WALKWAY, "2x6 treated", 150.0, "LOOK"), (WALKWAY, "2x6 treated", 30.0, "OK"),
    (BOARDS, "5/4x6 treated", 150.0, "LOOK"), (BOARDS, "2x6 treated", 150.0, "OK")])
def test_snow_on_decking_that_rests_on_its_makers_figure(given, board, snow, word):
    known = filled(given, board=board, ground_snow=snow, stays_in="yes")
    assert verdict(decking.snow_check, known) == word


def test_board_strength_of_a_wood_with_its_own_size_factor():
    known = filled(BOARDS, wood="Douglas Fir-Larch No.2", incised="yes")
    assert value_of(decking.CF, known) == 1.3
    assert value_of(decking.CM, known) == 0.85
    assert value_of(decking.Fb_adjusted, known) == pytest.approx(
        900 * 1.3 * 1.15 * 0.85 * 0.8)


def test_every_wood_finds_its_own_line():
    for wood, lines in zip(decking.WOOD_PAIRS.keys, decking.WOOD_PAIRS.entries("lines"),
                           strict=True):
        for board, size in (("2x4 treated", 0), ("2x6 treated", 1)):
            known = filled(BOARDS, wood=wood, board=board)
            first = decking.WOODS.keys.index(wood)
            assert value_of(decking.wood_line, known) == first + 1 + (size if lines > 1 else 0)


@pytest.mark.parametrize("board", ["5/4x6 treated", "Composite 1x6"])
def test_thin_and_composite_boards_are_not_figured(board):
    known = filled(BOARDS, board=board, spacing=24.0)
    assert value_of(decking.board_stress, known) == 0
    assert value_of(decking.spacing_check.ratio, known) == pytest.approx(24 / 16)


def test_open_area_against_the_permit():
    assert read(decking.open_check.ratio, BOARDS, open_area_rule=0.6) > 1
    assert read(decking.open_check.ratio, BOARDS) < 0.9
    assert read(decking.open_share, BOARDS) == pytest.approx(0.25 / 5.75)


def test_sanity_weight_of_a_light_open_platform():
    """Said to weigh about 1,100 to 1,300 lb as launched and 1,250 to 1,450 lb in service."""
    for psf in (1.3, 1.9, 2.5):
        known = filled(OPEN_PLATFORM)
        known[weight.launch_parts[5]] = psf * 96
        about = 0.02
        assert 1100 * (1 - about) <= value_of(weight.launch, known) <= 1300 * (1 + about)
        assert 1250 * (1 - about) <= value_of(weight.service, known) <= 1450 * (1 + about)


def test_weights_of_the_walkway_by_hand():
    known = filled(WALKWAY)
    section = 1.5 * 7.25 / 144
    timber = {0: 4 * 20, 1: 2 * 5.5, 2: 14 * 5.5}
    for place, feet in timber.items():
        assert value_of(weight.launch_parts[place], known) == pytest.approx(40 * section * feet)
    feet = sum(timber.values())
    gain = value_of(weight.service, known) - value_of(weight.launch, known)
    assert gain == pytest.approx(10 * section * feet)
    assert value_of(weight.frame_volume, known) == pytest.approx(section * feet)
    floats = value_of(weight.launch, known) - value_of(weight.frame_only, known)
    assert floats == pytest.approx(8 * value_of(weight.float_weight, known))


def test_each_weight_stands_with_its_own_height():
    names = [row.label.split(",")[0] for row in weight.heights]
    assert [r.label.split(",")[0] for r in weight.launch_parts] == names[3:]
    assert [r.label.split(",")[0] for r in weight.gain_parts[3:]] == names[3:9]
    assert [n.split()[0] for n in names[:3]] == ["Chain", "Growth", "Gangway"]


def test_centre_of_gravity_is_the_sum_of_moments():
    item = {sec.item_weight[1]: 120.0, sec.item_x[1]: 4.0, sec.item_y[1]: -2.0,
            sec.item_z[1]: 1.5, sec.chain_weight: 60.0, sec.gangway_rest: 150.0,
            sec.gangway_x: -9.0}
    bare, known = filled(WALKWAY), filled(WALKWAY | item)
    W0, W = value_of(weight.service, bare), value_of(weight.service, known)
    assert W - W0 == pytest.approx(330)
    top, under = value_of(parts.deck_top, known), value_of(parts.frame_underside, known)
    moment = W0 * value_of(weight.service_kg, bare) + 120 * (top + 1.5) + 60 * under + 150 * top
    assert value_of(weight.service_kg, known) == pytest.approx(moment / W)
    assert value_of(weight.service_x, known) == pytest.approx((120 * 4 - 150 * 9) / W)
    assert value_of(weight.launch_y, known) == pytest.approx(
        -240 / value_of(weight.launch, known))
    assert value_of(weight.lifted, known) == pytest.approx(W - 210)


def test_extra_float_pulls_the_centre_of_gravity_to_its_side():
    side = {sec.extra_floats: 1, sec.extra_y[0]: 2.0, sec.extra_y[1]: -2.0}
    known = filled(WALKWAY | side)
    own = value_of(weight.float_weight, known)
    assert value_of(weight.launch_y, known) == pytest.approx(
        2 * own / value_of(weight.launch, known))


def test_closer_stringers_weigh_more():
    loads = [read(weight.launch, spacing=s) for s in (24.0, 19.2, 16.0, 12.0)]
    assert loads == sorted(loads) and len(set(loads)) == len(loads)


@pytest.mark.parametrize(("sawn", "deck", "run", "skirt"), list(itertools.product(
    ("dressed", "full sawn"), ("panels", "boards"), ("across", "along"), ("none", "hung"))))
def test_centre_of_gravity_lies_between_keel_and_deck(sawn, deck, run, skirt):
    known = filled(WALKWAY, sawn=sawn, deck=deck, run=run, skirt=skirt)
    for height in (weight.launch_kg, weight.service_kg):
        assert 0 < value_of(height, known) < value_of(parts.deck_top, known)
    assert value_of(weight.launch, known) < value_of(weight.service, known) \
        < value_of(weight.aged, known)


def test_dead_load_on_the_members_is_deck_stringers_and_fixed_items():
    known = filled(WALKWAY | {sec.item_weight[0]: 240.0})
    psf = catalog.PANELS.entries("weight")[catalog.PANELS.keys.index(PANEL_24)]
    stringers = 14 * 5.5 * 1.5 * 7.25 / 144 * 50
    assert value_of(weight.deck_dead, known) == pytest.approx(psf + (stringers + 240) / 120)


def test_dead_load_counts_wet_boards_and_leaves_the_skirt_out():
    known = filled(BOARDS, skirt="hung", skirt_size="2x10")
    boards = 20 * 1.5 / 12 * (6 - 12 * 0.25 / 12) * 45
    stringers = 14 * 5.5 * 1.5 * 7.25 / 144 * 50
    assert value_of(weight.deck_dead, known) == pytest.approx((boards + stringers) / 120)


def test_height_of_the_centre_of_gravity_part_by_part():
    known = filled(BOARDS, skirt="hung", skirt_size="2x10", run="along", cross_beams=2,
                   cross_beam_size="2x6", header_size="2x10", stringer_size="2x6")
    top = (16 + 9.25) / 12
    middle = {"Rails": 7.25, "Headers": 9.25, "Stringers": 5.5, "Cross-beams": 5.5,
              "Skirt": 9.25, "Decking": -1.5, "Corner brackets": 7.25, "Framing angles": 5.5,
              "Washer plates": 5.5, "Bolts of stringer ends": 5.5, "Bolts of corners": 7.25,
              "Bolts and screws of plies and skirt": 7.25, "Deck screws": 0}
    heights = {name: top - depth / 24 for name, depth in middle.items()}
    heights |= {"Float lags": 16 / 12, "Floats": 8 / 12}
    heights |= {name: top for name, _, _ in weight.FITTINGS}
    moment = sum(heights[r.label.split(",")[0]] * value_of(r, known)
                 for r in weight.launch_parts)
    assert value_of(weight.launch_kg, known) == pytest.approx(
        moment / value_of(weight.launch, known))


def test_aged_weight_by_hand():
    """Frame timber 50 to 52, boards 45 to 52, floats take up 3 lb/ft³ of their volume."""
    known = filled(BOARDS, density_aged=52.0)
    frame = value_of(weight.frame_volume, known)
    boards = 20 * 1.5 / 12 * (6 - 12 * 0.25 / 12)
    fullness = catalog.FLOATS.entries("fullness")[catalog.FLOATS.keys.index(BOX_1648)]
    floats = 8 * 4 * 2 * 16 / 12 * fullness
    assert value_of(weight.aged, known) - value_of(weight.service, known) == pytest.approx(
        2 * frame + 7 * boards + 3 * floats)
