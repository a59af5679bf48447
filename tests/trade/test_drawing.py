"""Drawing: the table of coordinates against plane geometry worked out from what is typed."""

from __future__ import annotations

import math
from dataclasses import dataclass

import pytest
from shapely import LineString, Point, Polygon, box

from builder.engine.ironcalc_engine import Live, evaluate
from builder.jobs import read_job
from builder.language.rows import Mark, Shapes, View
from builder.resolve.frame import FIRST
from builder.sheets import decking, drawing, hardware_lengths, inputs_yard, parts, setout
from builder.sheets import sections as sec
from builder.sheets.book import model
from tests.outputs.reading import ROOT
from tests.second.drawn import random_jobs

CHOICES = [("swim_platform", "A"), ("walkway_t_head", "A"), ("walkway_t_head", "B"),
           ("walkway_t_head", "C"), ("tidal_finger", "A"), ("tidal_finger", "B"),
           *((number, "") for number in range(12))]
"""Demo jobs with a type; random jobs by their number."""
base, plan, side, joints = drawing.base, drawing.plan, drawing.afloat, drawing.joints


@dataclass
class Drawn:
    """The drawing of one type: what its cells show, and what the job gives for that type."""

    values: dict
    letter: str
    typed: dict

    def __getitem__(self, row):
        return self.values[model().places.rows[row]]

    def of(self, row) -> float:
        """Return a section quantity of the type drawn."""
        sheet, y, _ = model().places.rows[row]
        return self.values[sheet, y, FIRST + "ABCDEF".index(self.letter)]

    def points(self, thing: Shapes, scale=1.0) -> list[list[tuple[float, float]]]:
        return [[(self[x] * scale, self[y] * scale) for x, y in shape] for shape in thing.shapes]

    def kept(self, count: float, most: int) -> int:
        """Return how many of some pieces are drawn."""
        return min(int(count), most)


@pytest.fixture(scope="module", params=CHOICES, ids=lambda c: f"{c[0]} {c[1]}".strip())
def drawn(request):
    name, letter = request.param
    if isinstance(name, int):
        job = random_jobs(11, 12)[name]
        letter = job.inputs.get("yard_type", "A")
    else:
        job = _demo(name)
        job.inputs["yard_type"] = letter
    return Drawn(evaluate(model().book(job), names=False), letter,
                 dict(job.sections["ABCDEF".index(letter)]))


def _demo(name: str):
    m = model()
    return read_job(ROOT / "templates" / "jobs" / f"{name}.toml", m.job_inputs(),
                    m.section_inputs(), m.editable)


def different(shapes) -> list:
    """Return shapes without those that are a point or lie on one before them."""
    found = {}
    for points in shapes:
        if len({(round(x, 9), round(y, 9)) for x, y in points}) == 1:
            continue
        found.setdefault(tuple((round(x, 6), round(y, 6)) for x, y in points), points)
    return list(found.values())


def test_no_point_leaves_the_paper(drawn):
    for view in (i for i in drawing.sheet.items if isinstance(i, View)):
        for thing in view.things:
            for shape in drawn.points(thing):
                for x, y in shape:
                    assert abs(x) <= 1 + 1e-9, (view.title, thing.name)
                    assert abs(y) <= 1 / view.wide + 1e-9, (view.title, thing.name)


def test_the_frame_is_as_long_and_wide_as_typed(drawn):
    scale = drawn[plan.plan]
    outer, inner = (Polygon(p) for p in drawn.points(plan.frame, scale))
    length, width = drawn.typed["length"], drawn.typed["width"]
    assert outer.symmetric_difference(
        box(-length / 2, -width / 2, length / 2, width / 2)).area < 1e-6
    assert outer.contains(inner) and inner.bounds[2] == pytest.approx(length / 2)


def test_floats_drawn_are_floats_counted(drawn):
    scale = drawn[plan.plan]
    count = drawn.typed["float_rows"] * drawn.typed["floats_a_row"]
    shapes = [Polygon(p) for p in different(drawn.points(plan.floats, scale))]
    extras = [p for p in (Polygon(q) for q in drawn.points(plan.extras, scale)) if p.area > 0]
    assert len(shapes) == drawn.kept(count, plan.MOST_FLOATS)
    assert len(extras) == drawn.typed.get("extra_floats", 0)
    if count <= plan.MOST_FLOATS:
        assert len(shapes) + len(extras) == drawn.of(parts.floats)
        assert sum(p.centroid.x for p in shapes) == pytest.approx(0, abs=1e-6)
        assert sum(p.centroid.y for p in shapes) == pytest.approx(0, abs=1e-6)
    one = drawn.of(parts.float_l) * drawn.of(parts.float_b)
    for number, a in enumerate(shapes):
        assert a.area == pytest.approx(one)
        if "NOT OK" not in [drawn.of(c.verdict) for c in (parts.across_check, parts.along_check)]:
            assert all(a.intersection(b).area < 1e-6 for b in shapes[:number])


def test_each_float_has_its_centre_marked(drawn):
    scale = drawn[plan.plan]
    for centres, outlines in ((plan.centres, plan.floats), (plan.extra_centres, plan.extras)):
        for (centre,), points in zip(drawn.points(centres, scale), drawn.points(outlines, scale),
                                     strict=True):
            (x1, y1), (x2, y2) = points[0], points[2]
            assert centre == pytest.approx(((x1 + x2) / 2, (y1 + y2) / 2))
    marked, there = set(), set()
    for centres, outlines in ((plan.centres, plan.floats), (plan.extra_centres, plan.extras)):
        marked |= {(round(x, 6), round(y, 6)) for ((x, y),) in drawn.points(centres, scale)}
        shapes = [Polygon(p) for p in drawn.points(outlines, scale)]
        there |= {(round(p.centroid.x, 6), round(p.centroid.y, 6)) for p in shapes if p.area > 1e-6}
    assert marked == there, "a mark stands where no float is"
    a_row = int(drawn.typed["floats_a_row"])
    places = [c for (c,) in drawn.points(plan.centres, scale)]
    for (x1, y1), (x2, y2) in zip(places[:a_row], places[1:a_row], strict=False):
        assert (x2 - x1, y2) == (pytest.approx(drawn.of(parts.float_x_pitch)), pytest.approx(y1))
    assert places[0] == pytest.approx((-drawn.of(parts.end_x), -drawn.of(parts.row_y)))


def test_stringers_lie_inside_the_frame_at_the_spacing(drawn):
    scale = drawn[plan.plan]
    frame = Polygon(drawn.points(plan.frame, scale)[0])
    lines = [LineString(p) for p in drawn.points(plan.stringers, scale)]
    across = drawn.typed["run"] == "across"
    places = sorted({round(line.coords[0][0 if across else 1], 6) for line in lines})
    assert len(places) == drawn.kept(drawn.of(setout.lines), plan.MOST_STRINGERS)
    for a, b in zip(places, places[1:], strict=False):
        assert b - a == pytest.approx(drawn.typed["spacing"] / 12, abs=1e-5)
    whole = drawn.typed["length" if across else "width"]
    assert places[0] + whole / 2 == pytest.approx(drawn.typed["spacing"] / 12, abs=1e-5)
    assert all(frame.buffer(1e-6).contains(line) for line in lines)
    clear = drawn.of(parts.clear_span if across else parts.header_clear)
    assert all(line.length == pytest.approx(clear, abs=1e-6) for line in lines)


def test_figures_stand_at_the_stringers_and_name_their_distance(drawn):
    scale, across = drawn[plan.plan], drawn.typed["run"] == "across"
    part, spacing = (0, drawn.typed["spacing"]) if across else (1, drawn.typed["spacing"])
    half = drawn.typed["length" if across else "width"] / 2
    lines, every = drawn.of(setout.lines), drawn[plan.every]
    assert every == int(every) >= 1
    strokes = drawn.points(plan.running, scale)[1:]
    said = 0
    for k, (mark, stroke) in enumerate(zip(plan.figures, strokes, strict=True), start=1):
        words = drawn[mark.words]
        at = drawn[mark.along if across else mark.up] * scale + half
        assert stroke[0][part] == pytest.approx(stroke[1][part])
        assert stroke[0][part] + half == pytest.approx(at)
        if k * every > lines:
            assert words == " "
            continue
        said += 1
        feet, rest = words.split("' ")
        inches, _, share = rest.rstrip('"').partition(" ")
        top, _, bottom = share.partition("/")
        told = int(feet) * 12 + int(inches) + (int(top) / int(bottom) if share else 0)
        assert told == pytest.approx(k * every * spacing, abs=1 / 32 + 1e-6)
        assert at * 12 == pytest.approx(k * every * spacing)
    assert said == min(plan.MOST_FIGURES, lines // every)


def pieces_of(drawn) -> list[Polygon]:
    """Return the deck cut along the joints drawn, in feet."""
    from shapely.ops import split
    scale = drawn[plan.plan]
    deck = Polygon(drawn.points(plan.outline, scale)[0])
    pieces = [deck]
    for points in drawn.points(plan.joints, scale):
        line = LineString(points)
        if line.length > 0 and deck.buffer(-1e-6).intersects(line):
            (x1, y1), (x2, y2) = points
            longer = LineString([(x1 - (x2 - x1), y1 - (y2 - y1)), (x2 + x2 - x1, y2 + y2 - y1)])
            pieces = [q for p in pieces for q in split(p, longer).geoms]
    return pieces


def fits(drawn) -> bool:
    """Say whether the deck has no more panels than are drawn."""
    return drawn.typed["deck"] == "boards" or (
        drawn.of(parts.panel_columns) <= plan.MOST_COLUMNS
        and drawn.of(parts.panel_rows) <= plan.MOST_ROWS)


def test_panels_between_the_joints_make_up_the_deck(drawn):
    pieces = pieces_of(drawn)
    assert sum(p.area for p in pieces) == pytest.approx(drawn.of(parts.deck_area))
    if drawn.typed["deck"] != "panels":
        assert len(pieces) == 1
    elif fits(drawn):
        columns = math.ceil(drawn[base.L_d] / drawn[base.panel_x] - 1e-9)
        rows = math.ceil(drawn[base.B_d] / drawn[base.panel_y] - 1e-9)
        assert len(pieces) == columns * rows == drawn.of(parts.panels)


def test_cut_panels_marked_are_cut_panels_counted(drawn):
    """A panel is marked by a diagonal from corner to corner; a whole one by none."""
    scale, marked = drawn[plan.plan], set()
    pieces = pieces_of(drawn)
    whole = drawn[base.panel_x] * drawn[base.panel_y]
    for points in drawn.points(plan.cuts, scale):
        for a, b in zip(points, points[1:], strict=False):
            line = LineString([a, b])
            if line.length < 1e-6:
                continue
            number, piece = min(enumerate(pieces), key=lambda p: p[1].distance(line.centroid))
            x1, y1, x2, y2 = piece.bounds
            if fits(drawn):
                assert line.length == pytest.approx(math.hypot(x2 - x1, y2 - y1), abs=1e-4)
                assert piece.buffer(1e-4).contains(line)
                assert piece.area < whole - 1e-6
            marked.add(number)
    if not fits(drawn):
        assert drawn[plan.more] == 1
        return
    counted = sum(drawn.of(r) for r in (decking.panels_cut_length, decking.panels_cut_width,
                                        decking.panels_cut_both))
    assert len(marked) == (counted if drawn.typed["deck"] == "panels" else 0)


def test_the_plan_says_where_there_are_more_pieces_than_are_drawn(drawn):
    more = (drawn.of(setout.lines) > plan.MOST_STRINGERS
            or drawn.of(parts.grid_floats) > plan.MOST_FLOATS
            or drawn.typed["floats_a_row"] > plan.MOST_BESIDE
            or drawn.of(sec.cross_beams) > plan.MOST_BEAMS
            or not fits(drawn))
    assert drawn[plan.more] == more
    assert ("MORE PIECES" in drawn[plan.said]) == more


def test_bars_along_and_up_are_as_long_as_is_written(drawn):
    five, two = 5, 2
    for thing, scale, length in (
            (plan.measures, plan.plan, five), (side.side_measures, side.side, two),
            (side.end_bars, side.end, two), (drawing.types.type_bars, drawing.types.types, five),
            (joints.joint_bars, joints.joints_scale, 6)):
        bar = drawn.points(thing, drawn[scale])[-1]
        assert bar[3][0] - bar[2][0] == pytest.approx(length)
        assert bar[4][1] - bar[3][1] == pytest.approx(length)
        assert bar[2][1] == bar[3][1] and bar[3][0] == bar[4][0]


def test_the_side_stands_in_the_water_by_its_draft(drawn):
    scale, draft = drawn[side.side], drawn[base.T]
    boxes = different(drawn.points(side.side_floats, scale))
    assert -min(y for shape in boxes for _, y in shape) == pytest.approx(draft)
    top = max(y for shape in drawn.points(side.side_deck, scale) for _, y in shape)
    assert top == pytest.approx(drawn.of(parts.deck_top) - draft)
    if drawn.typed["floats_a_row"] <= plan.MOST_BESIDE:
        assert len(boxes) == drawn.typed["floats_a_row"]
    empty, loaded, water = drawn.points(side.side_measures, scale)[:3]
    assert abs(empty[3][1] - empty[2][1]) == pytest.approx(top)
    assert abs(loaded[3][1] - loaded[2][1]) == pytest.approx(
        abs(top - (drawn[base.T_f] - draft)))
    depth = abs(water[3][1] - water[2][1])
    told = drawn[side.side_marks[3].words]
    if told == " ":
        assert depth == pytest.approx(drawn[base.depth])
    else:
        assert told == "not to scale" and depth < drawn[base.depth]


def test_the_end_leans_by_the_list_and_keeps_its_shape(drawn):
    scale = drawn[side.end]
    frame = Polygon(drawn.points(side.end_frame, scale)[0])
    assert frame.area == pytest.approx(
        drawn.typed["width"] * (drawn[base.z_t] - drawn[base.z_u]))
    (x1, y1), (x2, y2) = drawn.points(side.end_frame, scale)[0][:2]
    assert -(y2 - y1) / (x2 - x1) == pytest.approx(drawn[side.turned], abs=1e-9)
    # It leans to the side on which the load stands, whose edge lies lower than the other.
    assert drawn[side.turned] * drawn[side.hand] >= 0
    assert (drawn[side.turned] == 0) == (drawn[side.stays] == 0)
    (low,) = drawn.points(side.end_load, scale)
    deck = [y for _, y in drawn.points(side.end_deck, scale)[0][2:4]]
    assert low[0][1] == pytest.approx(min(deck))


def bolt_of(points, nut):
    """Return length under the head and grip of a bolt drawn."""
    head, end = points[2], points[3]
    length = math.dist(head, end)
    grip = Point(*nut[0]).distance(LineString(points[:2]))
    return length, grip


def test_bolts_are_drawn_to_their_length_and_their_grip_is_what_they_clamp(drawn):
    scale = drawn[joints.joints_scale]
    ends, corner = (drawn.points(t, scale) for t in (joints.end_bolts, joints.corner_bolts))
    bolts = [bolt_of(*pair) for pair in ((ends[0], ends[1]), (ends[2], ends[3]),
                                         (corner[0], corner[1]), (corner[2], corner[3]))]
    washer = drawn[joints.t_c]
    rail, header = drawn[base.rail] * 12, drawn[base.header] * 12
    at_end = drawn[joints.t_p] + drawn[joints.t_w] + washer
    at_corner = drawn[joints.t_i] + drawn[joints.t_o] + 2 * washer
    against = rail if drawn.typed["run"] == "across" else header
    clamped = (drawn[joints.t_m] + at_end, against + at_end, header + at_corner, rail + at_corner)
    stock = [drawn.of(r) for r in (hardware_lengths.leg_bolt, hardware_lengths.rail_bolt,
                                   hardware_lengths.header_bolt, hardware_lengths.corner_bolt)]
    for (length, grip), want, under_head in zip(bolts, clamped, stock, strict=True):
        assert length == pytest.approx(under_head)
        assert grip == pytest.approx(want)


def test_holes_and_wood_of_the_joints_stand_where_setout_says(drawn):
    scale = drawn[joints.joints_scale]
    x, y = drawn[joints.x_2], drawn[joints.y_2]
    (holes,) = drawn.points(joints.holes, scale)
    heights = sorted({round(y - v, 6) for _, v in holes})
    assert heights[0] == pytest.approx(drawn.of(setout.hole_upper), abs=1e-5)
    if drawn.of(parts.bolts_a_leg) <= joints.BOLTS:
        assert heights[-1] == pytest.approx(drawn.of(setout.hole_lowest), abs=1e-5)
        assert len(heights) == drawn.of(parts.bolts_a_leg)
    assert all(h - x == pytest.approx(drawn.of(setout.hole_end)) for h, _ in holes)
    wood = Polygon(drawn.points(joints.cut_wood, scale)[0])
    assert wood.area == pytest.approx(drawn[joints.t_n] * drawn[joints.d_n])
    for points in drawn.points(joints.hatch, scale):
        assert wood.buffer(1e-6).contains(LineString(points))
        (x1, y1), (x2, y2) = points
        assert (y2 - y1) / (x2 - x1) == pytest.approx(1) or drawn[joints.t_n] > drawn[joints.d_n]
    rail_bolt, header_bolt = (drawn.points(joints.corner_bolts, scale)[k] for k in (2, 0))
    assert rail_bolt[2][0] - drawn[joints.x_3] - drawn[joints.d_b] / 2 == pytest.approx(
        drawn.of(setout.corner_rail))
    assert (header_bolt[2][1] - drawn[joints.d_b] / 2 - drawn[joints.y_3]
            - drawn[base.rail] * 12) == pytest.approx(drawn.of(setout.corner_header))


def test_a_type_that_is_not_used_draws_nothing_and_no_error():
    job = _demo("swim_platform")
    live = Live(model().book(job), names=False)
    live.set(model().typing.typed[inputs_yard.yard_type], "F")
    live.evaluate()
    points = {row for item in drawing.sheet.items if isinstance(item, Shapes | Mark)
              for row in item.rows}
    shown = {row: live.value(model().places.rows[row]) for row in drawing.sheet.rows}
    assert {v for row, v in shown.items() if isinstance(v, str)} == {" "}
    off = {v for row, v in shown.items() if row in points and not isinstance(v, str)}
    assert len(off) == 1 and min(off) > 1, "points stand off the paper"
    rest = {v for row, v in shown.items() if row not in points and not isinstance(v, str)}
    assert rest == {0}


def test_a_section_that_turns_over_is_drawn_with_no_angle():
    job = _demo("walkway_t_head")
    live = Live(model().book(job), names=False)
    words = model().places.rows[side.end_marks[1].words]
    live.evaluate()
    assert live.value(words).startswith("list ")
    sheet, y, x = model().typing.typed[sec.width]
    live.set((sheet, y, x), 2.5)
    sheet, y, x = model().typing.typed[sec.float_rows]
    live.set((sheet, y, x), 1)
    live.evaluate()
    assert live.value(model().places.rows[side.stays]) == 0
    assert live.value(words) == "UNSTABLE: it turns over"
