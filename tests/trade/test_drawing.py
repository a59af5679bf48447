"""Drawing: the table of coordinates against plane geometry worked out from what is typed."""

from __future__ import annotations

import math
from dataclasses import dataclass

import pytest
from shapely import LineString, Polygon, box

from builder.engine.ironcalc_engine import Live
from builder.jobs import read_job
from builder.language.rows import Shapes, View
from builder.sheets import drawing, inputs_yard
from builder.sheets import sections as sec
from builder.sheets.book import model
from tests.outputs.reading import ROOT

CHOICES = [("swim_platform", "A"), ("walkway_t_head", "A"), ("walkway_t_head", "B"),
           ("walkway_t_head", "C"), ("tidal_finger", "A"), ("tidal_finger", "B")]


@dataclass
class Drawn:
    """The drawing of one type: what its cells show."""

    live: Live
    typed: dict

    def __getitem__(self, row):
        return self.live.value(model().places.rows[row])

    def points(self, thing: Shapes, scale=1.0) -> list[list[tuple[float, float]]]:
        return [[(self[x] * scale, self[y] * scale) for x, y in shape] for shape in thing.shapes]


@pytest.fixture(scope="module", params=CHOICES, ids=lambda c: f"{c[0]} {c[1]}")
def drawn(request):
    name, letter = request.param
    m = model()
    job = read_job(ROOT / "templates" / "jobs" / f"{name}.toml", m.job_inputs(),
                   m.section_inputs(), m.editable)
    live = Live(m.book(job), names=False)
    live.set(m.typing.typed[inputs_yard.yard_type], letter)
    live.evaluate()
    return Drawn(live, dict(job.sections["ABCDEF".index(letter)]))


def test_no_point_leaves_the_paper(drawn):
    for view in (i for i in drawing.sheet.items if isinstance(i, View)):
        for thing in view.things:
            for shape in drawn.points(thing):
                for x, y in shape:
                    assert abs(x) <= 1 + 1e-9, thing.name
                    assert abs(y) <= 1 / view.wide + 1e-9, thing.name


def test_the_frame_is_as_long_and_wide_as_typed(drawn):
    scale = drawn[drawing.plan]
    outer, inner = (Polygon(p) for p in drawn.points(drawing.frame, scale))
    length, width = drawn.typed["length"], drawn.typed["width"]
    assert outer.symmetric_difference(
        box(-length / 2, -width / 2, length / 2, width / 2)).area < 1e-9
    assert outer.contains(inner) and inner.bounds[2] == pytest.approx(length / 2)


def test_floats_drawn_are_floats_counted(drawn):
    scale = drawn[drawing.plan]
    shapes = {tuple(round(c, 6) for c in Polygon(p).bounds): Polygon(p)
              for p in drawn.points(drawing.floats, scale)}
    assert len(shapes) == drawn.typed["float_rows"] * drawn.typed["floats_a_row"]
    one = drawn[drawing.l_f] * drawn[drawing.b_f]
    for number, a in enumerate(shapes.values()):
        assert a.area == pytest.approx(one)
        for b in list(shapes.values())[:number]:
            assert a.intersection(b).area < 1e-6
    middle = sum(p.centroid.x for p in shapes.values()) / len(shapes)
    assert middle == pytest.approx(0, abs=1e-9)


def test_stringers_lie_inside_the_frame_at_the_spacing(drawn):
    scale = drawn[drawing.plan]
    frame = Polygon(drawn.points(drawing.frame, scale)[0])
    lines = [LineString(p) for p in drawn.points(drawing.stringers, scale)]
    across = drawn.typed["run"] == "across"
    places = sorted({round(line.coords[0][0 if across else 1], 6) for line in lines})
    count = min(drawn[drawing.lines], drawing.MOST_STRINGERS)
    assert len(places) == count
    for a, b in zip(places, places[1:], strict=False):
        assert b - a == pytest.approx(drawn.typed["spacing"] / 12, abs=1e-5)
    whole = drawn.typed["length" if across else "width"]
    assert places[0] + whole / 2 == pytest.approx(drawn.typed["spacing"] / 12, abs=1e-5)
    assert all(frame.buffer(1e-9).contains(line) for line in lines)


def test_panels_between_the_joints_make_up_the_deck(drawn):
    scale = drawn[drawing.plan]
    deck = Polygon(drawn.points(drawing.outline, scale)[0])
    assert deck.area == pytest.approx(drawn[drawing.L_d] * drawn[drawing.B_d])
    if drawn.typed["deck"] != "panels":
        return
    from shapely.ops import split, unary_union
    pieces = [deck]
    for points in drawn.points(drawing.joints, scale):
        line = LineString(points)
        grown = LineString([(points[0][0] * (1 + 1e-9), points[0][1] * (1 + 1e-9)), points[1]])
        if line.length > 0 and deck.buffer(-1e-6).intersects(line):
            pieces = [q for p in pieces for q in split(p, grown.buffer(0) if grown.is_empty
                                                       else grown).geoms]
    assert sum(p.area for p in pieces) == pytest.approx(deck.area)
    assert unary_union(pieces).area == pytest.approx(deck.area)
    columns = math.ceil(drawn[drawing.L_d] / drawn[drawing.panel_x] - 1e-9)
    rows = math.ceil(drawn[drawing.B_d] / drawn[drawing.panel_y] - 1e-9)
    assert len(pieces) == columns * rows


def test_bars_along_and_up_are_five_feet_on_every_view(drawn):
    for thing, scale in ((drawing.measures, drawing.plan), (drawing.side_measures, drawing.side),
                         (drawing.end_bars, drawing.end), (drawing.type_bars, drawing.types)):
        strokes = [LineString(p) for p in drawn.points(thing, drawn[scale])]
        lengths = [s.length for s in strokes[-6:]]
        assert lengths[0] == pytest.approx(5) and lengths[3] == pytest.approx(5)


def test_the_side_stands_in_the_water_by_its_draft(drawn):
    scale = drawn[drawing.side]
    bottom = min(y for shape in drawn.points(drawing.side_floats, scale) for _, y in shape)
    assert -bottom == pytest.approx(drawn[drawing.T])
    top = max(y for shape in drawn.points(drawing.side_deck, scale) for _, y in shape)
    assert top == pytest.approx(drawn[drawing.z_d] - drawn[drawing.T])
    places = {tuple(round(c, 6) for c in Polygon(p).bounds)
              for p in drawn.points(drawing.side_floats, scale)}
    assert len(places) == drawn.typed["floats_a_row"]


def test_the_end_leans_by_the_list_and_keeps_its_shape(drawn):
    scale = drawn[drawing.end]
    frame = Polygon(drawn.points(drawing.end_frame, scale)[0])
    assert frame.area == pytest.approx(
        drawn.typed["width"] * (drawn[drawing.z_t] - drawn[drawing.z_u]))
    (x1, y1), (x2, y2) = drawn.points(drawing.end_frame, scale)[0][:2]
    assert -(y2 - y1) / (x2 - x1) == pytest.approx(drawn[drawing.turned])
    # It leans to the side on which the load stands, whose edge lies lower than the other.
    assert drawn[drawing.turned] * drawn[drawing.hand] > 0
    (low,) = drawn.points(drawing.end_load, scale)
    deck = [y for _, y in drawn.points(drawing.end_deck, scale)[0][2:4]]
    assert low[0][1] == pytest.approx(min(deck))


def test_a_type_that_is_not_used_draws_nothing_and_no_error():
    m = model()
    job = read_job(ROOT / "templates" / "jobs" / "swim_platform.toml", m.job_inputs(),
                   m.section_inputs(), m.editable)
    live = Live(m.book(job), names=False)
    live.set(m.typing.typed[inputs_yard.yard_type], "F")
    live.evaluate()
    shown = [live.value(m.places.rows[row]) for row in drawing.sheet.rows]
    assert {v for v in shown if not isinstance(v, str)} == {0}
    assert {v for v in shown if isinstance(v, str)} == {" "}


def test_a_section_that_turns_over_is_drawn_with_no_angle():
    m = model()
    job = read_job(ROOT / "templates" / "jobs" / "walkway_t_head.toml", m.job_inputs(),
                   m.section_inputs(), m.editable)
    live = Live(m.book(job), names=False)
    words = m.places.rows[drawing.end_marks[1].words]
    live.evaluate()
    assert live.value(words).startswith("list ")
    sheet, y, x = m.typing.typed[sec.width]
    live.set((sheet, y, x), 2.5)
    sheet, y, x = m.typing.typed[sec.float_rows]
    live.set((sheet, y, x), 1)
    live.evaluate()
    assert live.value(m.places.rows[drawing.upright]) == 0
    assert live.value(words) == "UNSTABLE: it turns over"
