"""The reader of files gives what the file holds, and says so when it holds nothing."""

from __future__ import annotations

import zipfile

import openpyxl
import pytest
import xlsxwriter

from builder.engine.stored import formulas_of, moved, read_cells, stored_values
from builder.engine.values import EngineError, a1, absolute, row_col
from tests.engine import handmade


def test_the_reader_agrees_with_an_independent_one(paths):
    cells = read_cells(paths["right"])
    for data_only in (False, True):
        seen = {}
        for sheet in openpyxl.load_workbook(paths["right"], data_only=data_only):
            for row in sheet.iter_rows():
                for cell in row:
                    if cell.value is not None:
                        seen[sheet.title, cell.row - 1, cell.column - 1] = cell.value
        if data_only:
            assert seen == {place: cell.value for place, cell in cells.items()}
        else:
            kept = {place: cell.formula or cell.value for place, cell in cells.items()}
            assert seen == kept


def test_formulas_are_given_as_written(paths):
    assert formulas_of(paths["right"]) == {
        place: "=" + formula
        for place, (formula, _) in zip(handmade.PLACES, handmade.CASES, strict=True)
    }


@pytest.mark.parametrize("nothing", [None, ""])
def test_a_formula_without_a_value_is_an_error(tmp_path, nothing):
    path = tmp_path / "book.xlsx"
    if nothing is None:
        book = openpyxl.Workbook()
        book.active["C2"] = "=1+1"
        book.active.title = "Sheet1"
        book.save(path)
    else:
        with xlsxwriter.Workbook(path) as file:
            file.add_worksheet().write_formula("C2", "=1+1", None, nothing)
    assert formulas_of(path) == {("Sheet1", 1, 2): "=1+1"}
    with pytest.raises(EngineError, match="Sheet1!C2 holds a formula and no value"):
        stored_values(path)


def test_texts_in_runs_and_with_escapes(tmp_path):
    path = tmp_path / "book.xlsx"
    with xlsxwriter.Workbook(path) as file:
        sheet = file.add_worksheet("Two words")
        sheet.write_rich_string("A1", "deck ", file.add_format({"bold": True}), "load")
        sheet.write_string("A2", "a\x01b  ")
    assert [cell.value for cell in read_cells(path).values()] == ["deck load", "a\x01b  "]


def test_a_file_that_is_no_workbook_is_an_error(tmp_path):
    path = tmp_path / "book.xlsx"
    path.write_text("nothing")
    with pytest.raises(EngineError, match="cannot be read as a workbook"):
        stored_values(path)
    with zipfile.ZipFile(path, "w") as parts:
        parts.writestr("a.txt", "nothing")
    with pytest.raises(EngineError, match="cannot be read as a workbook"):
        stored_values(path)


def test_a_formula_held_once_is_read_for_every_cell(tmp_path):
    path = tmp_path / "book.xlsx"
    with xlsxwriter.Workbook(path) as file:
        sheet = file.add_worksheet()
        sheet.write_formula("C1", "=A1+$A1+A$1+Data!A1", None, 2)
        sheet.write_formula("D2", "=2+1", None, 3)
    shared = tmp_path / "shared.xlsx"
    with zipfile.ZipFile(path) as old, zipfile.ZipFile(shared, "w") as new:
        for part in old.namelist():
            content = old.read(part)
            content = content.replace(b"<f>A1", b'<f t="shared" ref="C1:D2" si="0">A1')
            new.writestr(part, content.replace(b"<f>2+1</f>", b'<f t="shared" si="0"/>'))
    assert stored_values(shared)["Sheet1", 1, 3] == 3.0
    assert formulas_of(shared)["Sheet1", 1, 3] == "=B2+$A2+B$1+Data!B2"


@pytest.mark.parametrize(
    ("formula", "there"),
    [("=SUM(A1:B$2)", "=SUM(B1:C$2)"), ('="A1"&A1', '="A1"&B1'), ("=LOG10(A1)", "=LOG10(B1)"),
     ("=Sheet1!E$5*1E-9", "=Sheet1!F$5*1E-9"), ("=$Z$9+Z9", "=$Z$9+AA9")])
def test_only_references_move(formula, there):
    assert moved(formula, 0, 1) == there


@pytest.mark.parametrize(
    ("name", "place"), [("A1", (0, 0)), ("Z9", (8, 25)), ("AA10", (9, 26)), ("XFD1", (0, 16383))]
)
def test_addresses(name, place):
    assert a1(*place) == name
    assert row_col(name) == place
    assert row_col(absolute(("S", *place)).partition("!")[2]) == place


@pytest.mark.parametrize("name", ["", "A", "7", "a1", "A1:B2", "É1"])
def test_what_is_no_address_is_an_error(name):
    with pytest.raises(ValueError, match="not the address of one cell"):
        row_col(name)
