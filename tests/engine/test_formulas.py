"""A few cells of a file worked out again for other inputs."""

from __future__ import annotations

import pytest

from builder.engine.formulas_engine import Ranges
from builder.engine.values import EngineError
from tests.engine import handmade

CASES = [
    ("SUM(Data!$A$1:$A$5)*Data!$G$1", 0),
    ("Work!$B$1*2", 0),
    ("ISBLANK(Data!$G$1)*1", 0),
    ("SUM(Data!$E$1:$E$10)", 0),
    ("Near!$B$2", 0),
]
FIRST, SECOND, THIRD, FOURTH = PLACES = [("Work", row, 1) for row in range(4)]


@pytest.fixture(scope="module")
def ranges(tmp_path_factory):
    path = tmp_path_factory.mktemp("odd cases") / "book.xlsx"
    book = handmade.made_book(CASES)
    handmade.write(book, path, dict.fromkeys([*PLACES, ("Work", 4, 1)], 0))
    return Ranges(path, [SECOND, THIRD, FOURTH])


def test_the_file_as_it_stands(ranges):
    assert ranges.calculate() == {SECOND: 21 * 7.25 * 2, THIRD: 0, FOURTH: 42}


def test_changes_of_a_cell_and_inside_a_range(ranges):
    assert ranges.calculate({("Data", 0, 6): 2.0})[SECOND] == 84
    assert ranges.calculate({("Data", 0, 0): 12.0, ("Data", 0, 6): 1.0})[SECOND] == 62
    assert ranges.calculate({("Data", 0, 6): None}) == {SECOND: 0, THIRD: 1, FOURTH: 42}
    assert ranges.calculate()[SECOND] == 21 * 7.25 * 2


def test_a_cell_empty_in_the_file_can_be_filled(ranges):
    assert ranges.calculate({("Data", 8, 4): 5.0})[FOURTH] == 47
    assert ranges.calculate({("Data", 8, 4): 5.0, ("Data", 0, 4): 1.0})[FOURTH] == 48


def test_a_text_in_place_of_a_number(ranges):
    assert ranges.calculate({("Data", 0, 0): "x", ("Data", 0, 6): 1.0})[SECOND] == 38
    assert ranges.calculate({("Data", 0, 6): "x"})[SECOND] == "#VALUE!"


def test_a_formula_can_be_overruled(ranges):
    assert ranges.calculate({FIRST: 4.0})[SECOND] == 8


def test_a_change_that_nothing_wanted_rests_on_is_an_error(ranges):
    with pytest.raises(EngineError, match="nothing wanted rests on Near!B2"):
        ranges.calculate({("Near", 1, 1): 2.0})
