"""The longest words that expressions can come to, and the line with the numbers put in."""

from __future__ import annotations

import pytest

from builder.language import Sheet, Table, choose, joined, least, shown, when
from builder.language.longest import COUNT, FIGURE, FREE, WHOLE, longest_numbers, longest_words

WOODS = Table("woods", "Woods", "own", "wood", {"use": "text"}, ["oak", "western cedar"],
              [("frames and posts",), ("decks",)], [("", "own", "")] * 2)


@pytest.fixture
def sheet():
    return Sheet("Words", "Words")


def test_words_of_choices_tables_and_branches(sheet):
    wood = sheet.choose("Wood", WOODS, "own")
    line = WOODS.find(wood)
    size = sheet.row("Size", "s", "ft", 2.5, "own", digits=1)
    assert longest_words(wood) == "western cedar"
    assert longest_words(line["use"]) == "frames and posts"
    assert longest_words(line.key) == "western cedar"
    assert longest_words(when(size > 2, "yes", "not at all")) == "not at all"
    assert longest_words(choose(line.number, "a", "bcd")) == "bcd"
    assert longest_words(joined(wood, ", ", shown(size, 2), " ft")) == "western cedar, 000.00 ft"


def test_words_of_a_row_are_those_of_its_formula_and_free_words_have_an_end(sheet):
    note = sheet.write("Note", "own", 120)
    said = sheet.row("Said", "", "text", joined("It says: ", note), "own")
    assert longest_words(said) == "It says: " + "n" * FREE


def test_numbers_are_as_wide_as_most(sheet):
    count = sheet.row("Pieces", "n", "each", 3, "own", digits=0)
    load = sheet.row("Load", "W", "lb", 100, "own", digits=0)
    rise = sheet.row("Rise", "e", "ft", 0.001, "own", digits=6)
    size = sheet.row("Size", "s", "ft", 2.5, "own", digits=1)
    assert longest_numbers(count * load) == f"{COUNT} × {WHOLE}"
    assert longest_numbers(least(size, rise)) == f"least of ({FIGURE}, 0.00000000)"


def test_what_comes_to_no_words_is_an_error(sheet):
    with pytest.raises(TypeError, match="comes to no words"):
        longest_words(sheet.row("Size", "s", "ft", 2.5, "own").expr)
