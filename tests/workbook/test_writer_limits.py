"""What cannot be written is refused with the cell's name, and every fault is told at once."""

from __future__ import annotations

import dataclasses

import pytest

from builder.resolve.cells import Cell, InputRule
from builder.workbook.limits import (
    ERROR,
    MESSAGE,
    TITLE,
    WorkbookError,
    address,
    column_name,
    column_number,
    faults,
    lawful_name,
    lawful_sheet_name,
    rule_faults,
    split_link,
    units16,
)
from builder.workbook.writer import to_bytes
from tests.workbook.test_writer_sample import sample

LAWFUL = [
    "width_in", "_x", "W", "x", "XFE1", "ABCD1", "A1048577", "A1_", "DCR1_in", "T_mean", "r_",
    "Rate_1", "c_1", "sum_1", "a" * 255, "ratio", "colour", "Radius",
]  # fmt: skip
UNLAWFUL = {
    "": "empty",
    "a" * 256: "more than 255",
    "1a": "begins",
    "a b": "begins",
    "a.b": "begins",
    "größe": "begins",
    "a-b": "begins",
    "DCR1": "cell",
    "GMT2": "cell",
    "b1": "cell",
    "x01": "cell",
    "XFD1048576": "cell",
    "xfd1": "cell",
    "A0": "cell",
    "R": "row",
    "c": "row",
    "RC": "row",
    "rc1": "cell",
    "R1C1": "row",
    "R99999999": "row",
    "C1_in": "row",
    "TRUE": "truth",
    "false": "truth",
    "SUM": "function",
    "Log10": "function",
    "n": "function",
    "T": "function",
    "_xlfn": "program",
    "Print_Area": "program",
}


@pytest.mark.parametrize("name", LAWFUL)
def test_lawful_names(name):
    assert lawful_name(name) is None


@pytest.mark.parametrize(("name", "word"), UNLAWFUL.items())
def test_unlawful_names(name, word):
    assert word in lawful_name(name)


@pytest.mark.parametrize("name", ["Start", "Site_1", "A" * 31, "Data"])
def test_lawful_sheet_names(name):
    assert lawful_sheet_name(name) is None


@pytest.mark.parametrize(
    "name", ["", "A" * 32, "Two words", "1st", "A1", "R1C1", "R", "TRUE", "a'b"]
)
def test_unlawful_sheet_names(name):
    assert lawful_sheet_name(name)


@pytest.mark.parametrize(("letters", "number"), [("A", 0), ("Z", 25), ("AA", 26), ("XFD", 16383)])
def test_column_letters(letters, number):
    assert column_name(number) == letters and column_number(letters) == number


def test_an_address_reads_as_in_the_program():
    assert address(("Checks", 11, 27)) == "Checks!AB12"


def test_length_is_counted_in_utf16_units():
    assert (units16("abc"), units16("½"), units16("\U0001f6f6")) == (3, 1, 2)


@pytest.mark.parametrize(
    "content", ["Checks!A1", "A1|x", "Checks!A1| ", "Checks!a1|x", "Two w!A1|x"]
)
def test_a_link_needs_sheet_cell_and_text(content):
    with pytest.raises(ValueError, match="Sheet!A1"):
        split_link(content)


def test_the_sample_is_without_fault():
    assert faults(*sample()) == []


def with_cell(cell: Cell, value=None):
    """Return the sample's faults with one more cell on Checks."""
    book, values = sample()
    book.sheets[2].cells.append(cell)
    if value is not None:
        values["Checks", cell.row, cell.col] = value
    return faults(book, values)


@pytest.mark.parametrize(
    ("cell", "value", "words"),
    [
        (Cell(14, 3, "formula", "=1"), None, "Checks!D15: the formula has no value"),
        (Cell(14, 3, "formula", "=1"), True, "True is no number"),
        (Cell(14, 3, "formula", "=1"), float("nan"), "nan cannot be written"),
        (Cell(14, 3, "formula", "=1"), float("inf"), "inf cannot be written"),
        (Cell(14, 3, "formula", "=1"), "", "the text is empty"),
        (Cell(14, 3, "formula", "=1/0"), "#DIV/0!", "is the error #DIV/0!"),
        (Cell(14, 3, "formula", "1+1"), 2, "begins with ="),
        (Cell(14, 3, "formula", "="), 2, "begins with ="),
        (Cell(14, 3, "formula", "=_xlfn.CONCAT(A1)"), 2, "newer programs"),
        (Cell(14, 3, "formula", "=" + "1+" * 4096 + "1"), 2, "longer than 8192"),
        (Cell(14, 3, "number", True), None, "True is no number"),
        (Cell(14, 3, "number", "4"), None, "'4' is no number"),
        (Cell(14, 3, "number", float("nan")), None, "nan cannot be written"),
        (Cell(14, 3, "text", 4), None, "which is no text"),
        (Cell(14, 3, "text", ""), None, "the text is empty"),
        (Cell(14, 3, "text", "a" * 32768), None, "longer than 32767"),
        (Cell(14, 3, "text", "\U0001f6f6" * 16384), None, "longer than 32767"),
        (Cell(14, 3, "text", "a\x07b"), None, "cannot be written"),
        (Cell(14, 3, "blank", 0), None, "a blank cell has contents"),
        (Cell(14, 3, "date", "x"), None, "no cell is of kind 'date'"),
        (Cell(14, 3, "text", "x", "bold"), None, "no style is called 'bold'"),
        (Cell(0, 0, "text", "x"), None, "Checks!A1: two cells stand in one place"),
        (Cell(-1, 0, "text", "x"), None, "off the sheet"),
        (Cell(0, 16384, "text", "x"), None, "off the sheet"),
        (Cell(14, 3, "link", "Gone!A1|there"), None, "leads to Gone!A1"),
        (Cell(14, 3, "link", "Checks!A1|Checks!A1"), None, "bare address"),
        (Cell(14, 3, "number", 1, "input.0"), None, "an input without an input rule"),
    ],
)
def test_a_cell_that_cannot_be_written(cell, value, words):
    found = with_cell(cell, value)
    assert len(found) == 1 and words in found[0], found


def test_every_fault_is_told_at_once():
    book, values = sample()
    del values["Checks", 5, 2], values["Inputs", 2, 2]
    book.names["DCR1"] = ("Inputs", 4, 2)
    book.names["gone"] = ("Inputs", 99, 2)
    book.names["Width_in"] = ("Inputs", 4, 2)
    book.author = ""
    with pytest.raises(WorkbookError) as caught:
        to_bytes(book, values)
    assert caught.value.faults == [
        "the workbook's author is empty",
        "name 'DCR1': the name reads as a cell address",
        "name 'gone': Inputs!C100 holds no cell",
        "name 'Width_in': it is given twice but for capitals",
        "Inputs!C3: the formula has no value",
        "Checks!C6: the formula has no value",
    ]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"name": "Two words"}, "Two words"),
        ({"name": "inputs"}, "given twice"),
        ({"title": " "}, "title is empty"),
        ({"cells": []}, "A1 does not hold"),
        ({"frozen": (7, 0)}, "7 rows are frozen"),
        ({"repeat_rows": (3, 1)}, "run backwards"),
        ({"last": (0, 0)}, "no print area"),
        ({"widths": [10, 0]}, "hidden"),
        ({"heights": {3: 0}}, "hidden"),
        ({"page_breaks": [0]}, "page break"),
        ({"verdicts": [(4, 5, 4, 1)]}, "verdicts"),
    ],
)
def test_a_sheet_that_cannot_be_written(change, words):
    book, values = sample()
    book.sheets[1] = dataclasses.replace(book.sheets[1], **change)
    book.sheets[0].rules.clear()
    book.sheets[0].cells[:] = [c for c in book.sheets[0].cells if not c.style.startswith("input")]
    found = [f for f in faults(book, values) if "name '" not in f]
    assert any(words in fault for fault in found), found


@pytest.mark.parametrize("room", [0, 1])
@pytest.mark.parametrize(
    ("what", "most"), [("title", TITLE), ("message", MESSAGE), ("error", ERROR)]
)
def test_i03_lengths_of_the_words(what, most, room):
    rule = InputRule(0, 0, "decimal", "a", "b", "c", 0, 1)
    rule = dataclasses.replace(rule, **{what: "x" * (most + room)})
    assert len(list(rule_faults(rule, set()))) == room


def test_i03_error_text_of_225_which_the_library_lets_through():
    book, values = sample()
    rule = book.sheets[0].rules[0]
    book.sheets[0].rules[0] = dataclasses.replace(rule, error="x" * 225)
    with pytest.raises(WorkbookError, match=r"Inputs!C5: .*225 characters, more than 224"):
        to_bytes(book, values)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"least": None}, "lacks a limit"),
        ({"most": float("inf")}, "lacks a limit"),
        ({"least": 2, "most": 1}, "run backwards"),
        ({"kind": "whole", "most": 1.5}, "fraction"),
        ({"kind": "date"}, "of kind 'date'"),
        ({"kind": "text", "most": None}, "largest length"),
        ({"kind": "list"}, "no absolute range"),
        ({"kind": "list", "source": "=Data!A1:A2"}, "no absolute range"),
        ({"kind": "list", "source": "=Gone!$A$1:$A$2"}, "no absolute range"),
        ({"kind": "list", "source": "=Data!$A$1:$B$2"}, "one column"),
        ({"kind": "list", "source": "=Data!$A$3:$A$2"}, "one column"),
        ({"title": ""}, "title is empty"),
        ({"message": "\x00"}, "cannot be written"),
    ],
)
def test_a_rule_that_cannot_be_written(change, words):
    rule = dataclasses.replace(InputRule(0, 0, "decimal", "a", "b", "c", 0, 1), **change)
    found = list(rule_faults(rule, {"Data"}))
    assert len(found) == 1 and words in found[0], found


def test_a_rule_stands_on_an_input_and_only_once():
    book, values = sample()
    rules = book.sheets[0].rules
    rules += [rules[0], dataclasses.replace(rules[0], row=0, col=0)]
    assert faults(book, values) == [
        "Inputs!C5: two input rules on one cell",
        "Inputs!A1: an input rule on a cell that is no input",
    ]


def test_p03_a_header_too_long_is_a_fault():
    book, values = sample()
    book.title = "t" * 250
    with pytest.raises(WorkbookError, match="sheet Inputs: the header has .* more than 255"):
        to_bytes(book, values)
