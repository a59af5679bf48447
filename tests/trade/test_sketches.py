"""Terms and their sketches: every term drawn is defined, every word on a sketch can be read."""

from __future__ import annotations

from itertools import combinations

import pytest

from builder.resolve.sketch_sheet import HALF, WIDE
from builder.sheets.reference import TERMS
from builder.sheets.terms_sketches import SKETCHES
from builder.workbook.charts import PENS, SPOTS
from builder.workbook.heights import text_width

POINTS = 9
"""Size of the letters on a sketch [pt]."""
PIXELS = 512
"""Width of a sketch [px]."""
WRAPS = 0.19
"""Share of a chart's width beyond which a label is broken in lines (LibreOffice; seen)."""
EACH = pytest.mark.parametrize("sketch", SKETCHES, ids=lambda s: s.title.partition(":")[0])


def boxes(sketch):
    """Return each word with its box in points of the sketch."""
    unit = 2 * HALF / PIXELS
    found = []
    for words, x, y in sketch.words:
        wide, high = text_width(words, POINTS) * unit, POINTS * 96 / 72 * unit
        found.append((words, x - wide / 2, y - high / 2, x + wide / 2, y + high / 2))
    return found


@EACH
def test_what_a_sketch_shows_is_on_terms(sketch):
    assert sketch.shows and set(sketch.shows) <= set(TERMS.keys)
    assert 10 <= len(sketch.about) <= 250


@EACH
def test_words_stay_on_the_sketch_on_one_line_and_off_one_another(sketch):
    for words, x1, y1, x2, y2 in boxes(sketch):
        assert x1 >= -HALF and x2 <= HALF, words
        assert y1 >= -HALF / WIDE and y2 <= HALF / WIDE, words
        assert x2 - x1 <= WRAPS * 2 * HALF, f"{words} is broken in two lines"
    for one, other in combinations(boxes(sketch), 2):
        apart = (one[1] >= other[3] or other[1] >= one[3] or one[2] >= other[4]
                 or other[2] >= one[4])
        assert apart, (one[0], other[0])


@EACH
def test_lines_stay_on_the_sketch_and_have_a_pen(sketch):
    for look, shapes in sketch.lines.items():
        assert look in PENS or look in SPOTS
        for shape in shapes:
            assert len(shape) > 1 or look in SPOTS
            assert all(abs(x) <= HALF and abs(y) <= HALF / WIDE for x, y in shape), look


def test_a_term_is_drawn_once():
    drawn = [term for sketch in SKETCHES for term in sketch.shows]
    assert len(drawn) == len(set(drawn)) > 25
