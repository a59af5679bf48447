"""Setout, Tape and Yard: marks, diagonals, holes and kits against arithmetic of their own."""

from __future__ import annotations

import math
import random
import re
from fractions import Fraction

import numpy as np
import pytest

from builder.language.proofs import unit_fault
from builder.language.ranges import Ranges
from builder.language.rows import PageLine
from builder.language.values import value_of
from builder.sheets import catalog, decking, inputs_yard, parts, setout, weight, yard
from builder.sheets import hardware_corners as corners
from builder.sheets import inputs as job
from builder.sheets import reference as ref
from builder.sheets import sections as sec
from builder.sheets import yard_tape as tape
from builder.sheets.framing_lifting import lift_load
from tests.trade.filled import verdict, with_defaults

SIZES = ("2x6", "2x8", "2x10", "2x12")
JOB = {
    job.water: "fresh", job.low_water_depth: 8, job.stays_in: "no", job.salt_distance: 1e6,
    job.use: "private", job.wood: ref.WOOD_PAIRS.keys[0], job.sawn: "dressed", job.incised: "no",
    job.longest_stock: 16, job.finish: ref.FINISHES.keys[0], job.bolt: "1/2",
    job.stringer_angle: catalog.ANGLES.keys[0], job.corner_inside: catalog.CORNERS.keys[0],
    job.corner_outside: catalog.CORNERS.keys[1], job.washer_plate: "Plate 2 x 6, two holes",
    job.lag: ref.LAGS.keys[1], job.lag_length: 3,
}
SECTION = {
    sec.purpose: "walkway", sec.quantity: 3, sec.length: 20, sec.width: 6, sec.run: "across",
    sec.stringer_size: "2x8", sec.spacing: 12, sec.rail_size: "2x10", sec.rail_plies: 2,
    sec.header_size: "2x10", sec.deck: "panels", sec.float_model: "Box float 24 x 48 x 16",
    sec.float_rows: 2, sec.floats_a_row: 5,
}


def section(**typed) -> dict:
    """Return the values of all inputs: those typed, by name, and the defaults of the others."""
    known = {**JOB, **SECTION}
    for name, value in typed.items():
        where = next(m for m in (sec, inputs_yard, job) if hasattr(m, name))
        known[getattr(where, name)] = value
    return with_defaults(known)


def drawn(seed: int) -> dict:
    """Return a section drawn at random within what a builder would type."""
    r = random.Random(seed)
    run = r.choice(("across", "along"))
    return section(
        length=r.randint(32, 240) / 4, width=r.randint(16, 64) / 4, run=run,
        spacing=r.choice((8, 10.5, 12, 13.3, 16, 19.2, 24)), rail_plies=r.randint(1, 3),
        stringer_size=r.choice(SIZES), rail_size=r.choice(SIZES), header_size=r.choice(SIZES),
        cross_beams=r.randint(0, 5) if run == "along" else 0,
        bolt=r.choice(("3/8", "1/2", "5/8")), stringer_angle=r.choice(catalog.ANGLES.keys),
        corner_inside=r.choice([k for k in catalog.CORNERS.keys if "inside" in k]),
        float_rows=r.randint(1, 3), floats_a_row=r.randint(1, 6))


SEEDS = range(60)


def worth(row, known: dict) -> float:
    """Return a row's value."""
    return value_of(row, known)


def read(words: str) -> float:
    """Return a length in inches from words such as 12' 4 3/16" or 3 1/4"."""
    found = re.fullmatch(r"""(?:(\d+)' )?(\d+)?(?: (\d+)/(\d+))?\"""", words.replace(",", ""))
    assert found and words != '"', words
    feet, inches, over, under = found.groups()
    part = Fraction(int(over), int(under)) if over else 0
    assert part < 1
    return int(feet or 0) * 12 + int(inches or 0) + float(part)


def end_thickness(known: dict) -> float:
    """Return the thickness of the members that end the row of stringers [in]."""
    if known[sec.run] == "across":
        return 1.5
    return 1.5 * known[sec.rail_plies]


def own_marks(known: dict) -> list[float]:
    """Return stringer centres [in], stepped off until the far end member is reached."""
    over = 12 * (known[sec.length] if known[sec.run] == "across" else known[sec.width])
    far = over - end_thickness(known) / 2
    found, at = [], known[sec.spacing]
    while at < far - 1e-9:
        found.append(at)
        at += known[sec.spacing]
    return found


@pytest.mark.parametrize("seed", SEEDS)
def test_the_marks_rise_by_the_spacing_and_end_a_last_space_before_the_outside(seed):
    known = drawn(seed)
    marks = own_marks(known)
    assert worth(setout.lines, known) == len(marks)
    said = [read(worth(row, known)) for row in tape.mark]
    shown = marks[:tape.MARKS]
    assert said[:len(shown)] == pytest.approx(shown, abs=1 / 32 + 1e-9)
    assert all(b > a for a, b in zip(said[:len(shown)], said[1:len(shown)], strict=False))
    assert all(x == 0 for x in said[len(shown):])
    on_page = [worth(row, known) for row in yard.mark]
    assert [x == "past the last" for x in on_page] == [
        k >= len(marks) for k in range(tape.MARKS)]
    over = worth(parts.layout_length, known) * 12
    last = marks[-1] if marks else 0
    assert worth(setout.last_mark, known) == pytest.approx(last)
    assert worth(setout.last_mark, known) == pytest.approx(over - worth(setout.last_out, known))
    assert worth(setout.last_out, known) == pytest.approx(
        worth(parts.last_space, known) + end_thickness(known) / 2)
    assert ("More follow" in worth(yard.more, known)) == (len(marks) > tape.MARKS)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_frame_that_leans_by_the_most_allowed_has_diagonals_so_far_apart(seed):
    known = drawn(seed)
    long, wide = 12 * known[sec.length], 12 * known[sec.width]
    lean = math.atan(0.125 / 96)
    shift = wide * math.tan(lean)
    one, other = math.dist((0, 0), (long + shift, wide)), math.dist((shift, 0), (long, wide))
    assert worth(setout.diagonals_apart, known) == pytest.approx(one - other, rel=1e-3)
    assert worth(setout.diagonal, known) * 12 == pytest.approx(math.hypot(long, wide))
    said = read(worth(tape.words["apart"], known))
    assert said <= one - other + 1e-6 and one - other - said < 1 / 16 + 1e-3
    assert read(worth(tape.words["diagonal"], known)) == pytest.approx(
        math.hypot(long, wide), abs=1 / 32 + 1e-9)


def heights(table, key: str, depth: float) -> list[float]:
    """Return holes below the top edge [in] of a plate centred on a depth."""
    line = dict(zip(table.columns, table.lines[table.keys.index(key)], strict=True))
    top = (depth - line["height"]) / 2 + line["top hole from its top"]
    return [top + k * line["hole spacing"] for k in range(int(line["bolts a leg"]))]


def depth_of(size: str) -> float:
    """Return the dressed depth of a size [in]."""
    return {"2x6": 5.5, "2x8": 7.25, "2x10": 9.25, "2x12": 11.25}[size]


@pytest.mark.parametrize("seed", SEEDS)
def test_the_holes_said_are_those_of_the_angle_and_lie_inside_where_the_pattern_says_yes(seed):
    known = drawn(seed)
    across = known[sec.run] == "across"
    mine = depth_of(known[sec.stringer_size])
    if known[sec.cross_beams]:
        mine = min(mine, depth_of(known[sec.cross_beam_size]))
    against = depth_of(known[sec.rail_size] if across else known[sec.header_size])
    holes = heights(catalog.ANGLES, known[job.stringer_angle], mine)
    assert worth(setout.hole_upper, known) == pytest.approx(holes[0])
    assert worth(setout.hole_lowest, known) == pytest.approx(holes[-1])
    frame = min(depth_of(known[sec.rail_size]), depth_of(known[sec.header_size]))
    bracket = heights(catalog.CORNERS, known[job.corner_inside], frame)
    assert worth(setout.corner_upper, known) == pytest.approx(bracket[0])
    assert worth(setout.corner_lowest, known) == pytest.approx(bracket[-1])

    bolt = float(Fraction(known[job.bolt]))
    edge = min(holes[0], min(mine, against) - holes[-1], bracket[0], frame - bracket[-1])
    apart = min(b - a for hs in (holes, bracket) for a, b in zip(hs, hs[1:], strict=False))
    end = min(worth(setout.hole_end, known), worth(setout.corner_header, known))
    keeps = edge >= 4 * bolt - 1e-9 and end >= 2 * bolt - 1e-9 and apart >= 3 * bolt - 1e-9
    assert (worth(setout.pattern, known) == "yes") == keeps
    if keeps:
        radius = worth(setout.drill, known) / 2
        for depth, pattern in ((mine, holes), (against, holes), (frame, bracket)):
            assert all(radius < y < depth - radius for y in pattern)
        for key, what in (("upper", holes[0]), ("lowest", holes[-1]), ("corner1", bracket[0]),
                          ("corner2", bracket[-1])):
            assert read(worth(tape.words[key], known)) == pytest.approx(what, abs=1 / 32 + 1e-9)


def test_the_patterns_drawn_hold_both_answers():
    said = {worth(setout.pattern, drawn(seed)) == "yes" for seed in SEEDS}
    assert said == {True, False}


def side_of(words: str) -> int:
    """Return 1 for the side toward the end of the run, -1 for that toward its start."""
    side = re.search(r"on the (\w+) side", words)[1]
    return {"far": 1, "right": 1, "near": -1, "left": -1}[side]


@pytest.mark.parametrize("seed", SEEDS)
def test_angles_alternate_and_no_two_pieces_of_hardware_are_nearer_than_said(seed):
    known = drawn(seed)
    marks = own_marks(known)
    labels = [item.words for item in yard.sheet.items if isinstance(item, PageLine)
              and item.value in yard.mark]
    sides = [side_of(worth(label, known)) for label in labels]
    assert all(a == -b for a, b in zip(sides, sides[1:], strict=False))
    if not marks:
        return
    first, second = sides[:2]
    turned = [first if k % 2 == 0 else second for k in range(len(marks))]
    assert turned[-1] == -1, "the last angle faces the whole space before it"
    step = 0.75 + worth(setout.hole_end, known)
    across = known[sec.run] == "across"
    over = 12 * (known[sec.length] if across else known[sec.width])
    inside = corners.inside
    out = (1.5 + worth(inside["corner to rail bolts"], known) if across
           else 1.5 * known[sec.rail_plies] + worth(inside["corner to header bolts"], known))
    columns = sorted([*(m + s * step for m, s in zip(marks, turned, strict=True))])
    ordered = [out, *columns, over - out]
    gaps = [b - a for a, b in zip(ordered, ordered[1:], strict=False)]
    if min(gaps) < known[sec.spacing] - 1e-9:
        assert worth(setout.holes_clear, known) == pytest.approx(min(gaps))
    else:
        assert len(marks) == 1
        assert worth(setout.holes_clear, known) == known[sec.spacing]
    bolt = float(Fraction(known[job.bolt]))
    tight = worth(setout.holes_clear, known) < 5 * bolt - 1e-9
    assert verdict(setout.clear_check, known) == ("LOOK" if tight else "OK")


def test_angles_six_inches_apart_say_look():
    assert verdict(setout.clear_check, section(spacing=6)) == "LOOK"
    assert verdict(setout.clear_check, section(spacing=12)) == "OK"


@pytest.mark.parametrize("seed", SEEDS)
def test_floats_stand_where_the_rows_and_the_steps_say(seed):
    known = drawn(seed)
    wide, long = known[sec.width], known[sec.length]
    y, x = worth(parts.row_y, known), worth(parts.end_x, known)
    rows, each = known[sec.float_rows], known[sec.floats_a_row]
    for row_1, step, row_n, half, count, key in (
            (setout.row_first, parts.float_y_pitch, y, wide / 2, rows, "row1"),
            (setout.column_first, parts.float_x_pitch, x, long / 2, each, "col1")):
        places = np.linspace(-row_n, row_n, count) + half if count > 1 else np.array([half])
        found = [worth(row_1, known) + k * worth(step, known) for k in range(count)]
        assert found == pytest.approx(list(places))
        if places[0] >= 0:
            assert read(worth(tape.words[key], known)) == pytest.approx(
                12 * places[0], abs=1 / 32 + 1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_cross_beams_part_the_length_in_equal_pieces(seed):
    known = drawn(seed)
    n = known[sec.cross_beams]
    if not n:
        assert worth(setout.cross_first, known) == worth(setout.cross_step, known) == 0
        return
    thick = 1.5
    centres = [worth(setout.cross_first, known) + k * worth(setout.cross_step, known)
               for k in range(n)]
    faces = [thick, *(c + s * thick / 2 for c in centres for s in (-1, 1)),
             12 * known[sec.length] - thick]
    clear = [b - a for a, b in zip(faces[::2], faces[1::2], strict=True)]
    assert clear == pytest.approx([clear[0]] * (n + 1))
    assert clear[0] == pytest.approx(12 * worth(parts.stringer_length, known))


@pytest.mark.parametrize("seed", SEEDS)
def test_the_bags_hold_what_parts_counts(seed):
    known = drawn(seed)
    bags, corner_bags = worth(parts.stringer_ends, known), worth(parts.corner_inside, known)
    assert bags * worth(setout.end_nuts, known) == worth(parts.stringer_bolts, known)
    assert bags * worth(setout.end_plates, known) == worth(parts.washer_plates, known)
    assert corner_bags * worth(setout.corner_nuts, known) == worth(parts.corner_bolts, known)
    in_bags = (bags * worth(setout.end_nuts, known)
               + corner_bags * worth(setout.corner_washers, known))
    loose = worth(parts.ply_bolts, known) + worth(parts.skirt_bolts, known)
    assert in_bags + 2 * loose == worth(parts.washers, known)


@pytest.mark.parametrize("seed", range(20))
def test_panels_fill_the_deck_with_the_last_ones_cut(seed):
    known = drawn(seed)
    for pieces, size, last, over in (
            (tape.columns, "panel_x", "column", parts.deck_length),
            (tape.rows, "panel_y", "rowp", parts.deck_width)):
        n = worth(pieces, known)
        filled = (n - 1) * read(worth(tape.words[size], known)) + read(
            worth(tape.words[last], known))
        assert filled == pytest.approx(12 * worth(over, known), abs=1 / 16)
    assert str(int(worth(decking.tabs_off, known))) in worth(yard.tabs, known)


def test_a_wide_section_says_look_on_the_road_and_none_in_pieces():
    wide = section(width=10, length=30)
    for check in (setout.road_check, setout.access_check, setout.long_check):
        assert verdict(check, wide) == "LOOK"
    pieces = section(width=10, length=16, carried="in pieces")
    for check in (setout.road_check, setout.access_check, setout.long_check):
        assert verdict(check, pieces) == "OK"
    assert worth(setout.piece_width, pieces) == 2
    assert verdict(setout.road_check, section(width=8.5)) == "OK"
    assert verdict(setout.road_check, section(width=8.75)) == "LOOK"
    assert verdict(setout.access_check, section(access_width=71)) == "LOOK"
    assert verdict(setout.long_check, section(trailer_length=17)) == "OK"
    assert verdict(setout.long_check, section(trailer_length=16)) == "LOOK"


def test_a_section_wider_than_long_travels_lengthwise():
    one, other = section(length=8, width=12), section(length=12, width=8)
    for known in (one, other):
        assert 8 <= worth(setout.piece_width, known) < 8.5
        assert 12 <= worth(setout.piece_length, known) < 12.5
        assert verdict(setout.road_check, known) == "OK"
        assert verdict(setout.long_check, known) == "OK"
    assert verdict(setout.long_check, section(length=8, width=12, trailer_length=8,
                                              trailer_overhang=2)) == "LOOK"


def test_weight_against_trailer_and_machine():
    known = section()
    dry = worth(weight.launch, known)
    assert worth(setout.load, known) == dry
    assert worth(setout.hook, known) == pytest.approx(worth(lift_load, known))
    for name, check, load in (("trailer_payload", setout.payload_check, dry),
                              ("crane_limit", setout.crane_check, worth(lift_load, known))):
        assert verdict(check, section(**{name: load + 1})) == "OK"
        assert verdict(check, section(**{name: load - 1})) == "LOOK"
    apart = section(carried="in pieces", lift_factor=1.5)
    assert worth(setout.hook, apart) == pytest.approx(1.5 * worth(weight.heaviest_piece, apart))


def test_every_limit_of_the_road_is_above_zero_for_whatever_is_typed():
    ranges = Ranges()
    for check in setout.sheet.checks:
        assert ranges.of(check.limit)[0] > 0, check.label
        assert check.group == "Yard and road" and check.source and check.cure


def test_steps_are_numbered_in_order_and_each_has_a_box():
    known = section()
    numbers = []
    for item in yard.sheet.items:
        if isinstance(item, PageLine):
            words = item.words if isinstance(item.words, str) else worth(item.words, known)
            found = re.match(r"(\d+)   ", words)
            if found:
                assert item.tick, words
                numbers.append(int(found[1]))
    assert numbers == list(range(1, len(numbers) + 1)) and len(numbers) > 25


@pytest.mark.parametrize("typed", [
    {}, {"deck": "boards"}, {"run": "along", "cross_beams": 2}, {"rail_plies": 1},
    {"skirt": "hung"}, {"skirt": "bolted to count"}, {"extra_floats": 2}, {"float_rows": 1}])
def test_every_line_of_the_page_can_be_said(typed):
    known = section(**typed)
    for row in yard.sheet.rows:
        said = worth(row, known)
        assert said != "" and "nan" not in str(said)
        if row.unit != "text":
            assert said >= 0, row.where
    assert worth(yard.title, known).startswith('Type A: 20\' 0" × 6\' 0"')


def test_the_page_speaks_of_what_the_section_has():
    panels, boards = section(), section(deck="boards")
    first = dict(zip(catalog.PANELS.columns, catalog.PANELS.lines[0], strict=True))
    along, across = math.ceil(20 / first["length"]), math.ceil(6 / first["width"])
    assert worth(yard.order, panels).endswith(
        f"Panels: {along} along × {across} across, begun at the near left corner")
    assert "Boards" in worth(yard.order, boards) and worth(yard.panel_x, boards) == "boards"
    assert "no tabs" in worth(yard.tabs, boards).lower()
    along = section(run="along", cross_beams=2)
    assert "left rail" in worth(yard.hook, along)
    assert "other side" in worth(yard.beyond, along)
    assert "near header" in worth(yard.hook, panels)
    assert "2 cross-beams" in worth(yard.beams, along)
    assert "none" in worth(yard.beams, panels)
    assert worth(yard.extra[0], panels) == "none"
    two = section(extra_floats=1) | {sec.extra_x[0]: -3.25, sec.extra_y[0]: 1}
    assert worth(yard.extra[0], two) == '6\' 9"' and worth(yard.extra[1], two) == '4\' 0"'


@pytest.mark.parametrize("letter", "ABCDEF")
def test_the_type_chosen_is_found_by_its_letter(letter):
    assert worth(tape.number, section(yard_type=letter)) == "ABCDEF".index(letter) + 1


def test_units_and_ranges_of_all_rows_are_proved():
    ranges = Ranges()
    for module in (setout, tape, yard):
        for row in module.sheet.rows:
            if getattr(row, "expr", None) is None:
                continue
            assert unit_fault(row) is None, row.where
            ranges.of(row)
    assert ranges.faults == []


def test_what_stands_in_until_typed_says_so():
    for key, constant in inputs_yard.ours.rows.items():
        assert constant.status == ("memory" if key == "road_width" else "our judgement")
        assert constant.value > 0
