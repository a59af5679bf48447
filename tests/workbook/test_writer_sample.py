"""A small book made by hand, and what its file says when read back.

The job, the makers' words and the numbers are invented.  Other test files of the writer build
on ``sample`` and ``read``.
"""

from __future__ import annotations

import io
import warnings
import zipfile
from datetime import datetime

import openpyxl
import pytest

from builder.resolve.cells import Book, Cell, InputRule, SheetPlan
from builder.workbook.styles import DIGITS, STYLES
from builder.workbook.writer import to_bytes

TRAPS = ["=1+1", "+44", "-1", "@SUM(A1)", "https://example.org", "_x0041_", "{=1}", " a < b & c "]
"""Texts a careless writer turns into formulas or links, or spoils."""


def inputs_sheet() -> SheetPlan:
    """Return a sheet with one input of each kind."""
    cells = [
        Cell(0, 0, "text", "Inputs", "title"),
        Cell(1, 0, "text", "What is typed for the whole job", "subtitle"),
        Cell(2, 0, "text", "Whole job", "master"),
        Cell(2, 2, "formula", "=Checks!C5", "verdict"),
        Cell(3, 0, "text", "Item", "head"),
        Cell(3, 1, "text", "Symbol", "head.c"),
        Cell(3, 2, "text", "Value", "head.n"),
        Cell(3, 3, "text", "Unit", "head.c"),
        Cell(3, 4, "text", "Basis", "head"),
        Cell(4, 0, "text", "Width of the walkway", "label"),
        Cell(4, 1, "text", "b", "symbol"),
        Cell(4, 2, "number", 5.5, "input.2"),
        Cell(4, 3, "text", "ft", "unit"),
        Cell(4, 4, "text", "asked for by the owner", "source"),
        Cell(5, 0, "text", "Sections side by side", "label"),
        Cell(5, 1, "text", "n", "symbol"),
        Cell(5, 2, "number", 3, "input.0"),
        Cell(5, 3, "text", "–", "unit"),
        Cell(5, 4, "text", "site plan", "source"),
        Cell(6, 0, "text", "Live load, when it overrules the usual one", "label"),
        Cell(6, 1, "text", "q", "symbol"),
        Cell(6, 2, "blank", None, "input.1"),
        Cell(6, 3, "text", "psf", "unit"),
        Cell(6, 4, "text", "left empty: the usual one is taken", "source"),
        Cell(7, 0, "text", "Lumber", "label"),
        Cell(7, 1, "text", "–", "symbol"),
        Cell(7, 2, "text", "Pine", "input.list"),
        Cell(7, 3, "text", "–", "unit"),
        Cell(7, 4, "text", "invented for this sample", "source"),
        Cell(8, 0, "text", "Remark", "label"),
        Cell(8, 1, "text", "–", "symbol"),
        Cell(8, 2, "text", '=HYPERLINK("x")', "input.text"),
        Cell(8, 3, "text", "–", "unit"),
        Cell(8, 4, "link", "Checks!A5|See the verdict on Checks", "link"),
        *(Cell(10 + i, 0, "text", text, "text") for i, text in enumerate(TRAPS)),
    ]
    no = "Type a number within the range shown."
    rules = [
        InputRule(4, 2, "decimal", "Width", "Width of the walkway, 3 to 12 ft", no, 3, 12.25),
        InputRule(5, 2, "whole", "Sections", "How many, 1 to 6", no, 1, 6),
        InputRule(6, 2, "decimal", "Load", "Live load, 0.1 to 100 psf", no, 0.1, 100, blank=True),
        InputRule(7, 2, "list", "Lumber", "One of the list", "Choose.", source="=Data!$A$5:$A$6"),
        InputRule(8, 2, "text", "Remark", "Up to 40 letters", "Shorter.", most=40, blank=True),
    ]
    return SheetPlan(
        "Inputs",
        "Inputs",
        cells,
        rules,
        widths=[28, 8, 10, 7, 30],
        heights={0: 24},
        frozen=(4, 2),
        repeat_rows=(0, 3),
        last=(17, 4),
        landscape=False,
        verdicts=[(2, 2, 2, 2)],
    )


def data_sheet() -> SheetPlan:
    """Return a sheet with a table and one cell of each style."""
    cells = [
        Cell(0, 0, "text", "Data", "title"),
        Cell(2, 0, "text", "Lumber, invented for this sample", "block"),
        Cell(3, 0, "text", "Kind", "head"),
        Cell(3, 1, "text", "Weight, pcf", "head.n"),
        Cell(4, 0, "text", "Pine", "given.text"),
        Cell(4, 1, "number", 31.25, "given.2"),
        Cell(5, 0, "text", "Fir", "given.text"),
        Cell(5, 1, "number", 0.1 + 0.2, "given.2"),
    ]
    shown = [s for s in STYLES if not s.startswith("input.")]
    cells += [Cell(8 + i, 0, "text", f"style {s}", s) for i, s in enumerate(shown)]
    row = 9 + len(shown)
    cells += [Cell(row, d, "number", 1234.5, f"num.{d}") for d in DIGITS]
    return SheetPlan(
        "Data", "Data", cells, widths=[34] + [12] * 6, last=(row, 6), page_breaks=[8], frozen=(1, 0)
    )


WORDS = ["OK", "LOOK", "NOT OK", "NEEDS INPUT", "not used"]


def checks_sheet() -> SheetPlan:
    """Return a sheet of formulas: numbers, the dash, every verdict word."""
    note = "One line a check. The word is what counts; colour and border only help to find it."
    caution = "CAUTION  A section that is not finished is counted with the unfinished ones."
    cells = [
        Cell(0, 0, "text", "Checks", "title"),
        Cell(1, 0, "text", "Every verdict of the job", "subtitle"),
        Cell(3, 0, "text", "Verdicts", "block"),
        *(Cell(4, 1 + i, "formula", f"=INDEX(A6:A10,{i + 1})", "verdict") for i in range(5)),
        *(Cell(5 + i, 0, "text", word, "label") for i, word in enumerate(WORDS)),
        *(Cell(5 + i, 1, "text", "w/L", "symbol") for i in range(5)),
        *(Cell(5 + i, 2, "formula", "=Inputs!C5*2", "num.3") for i in range(5)),
        *(Cell(5 + i, 3, "formula", '=IF(B12=2,C6,"–")', "num.2") for i in range(5)),
        *(Cell(5 + i, 4, "formula", "=1/3", "num.6") for i in range(5)),
        *(Cell(5 + i, 5, "formula", "=1*1", "state") for i in range(5)),
        Cell(11, 0, "text", caution, "caution.line"),
        Cell(12, 0, "text", note, "note"),
        Cell(13, 0, "text", "a" + "b" * 300, "wrap"),
        Cell(14, 0, "formula", '="Whole job: "&B5&" < & >"', "text"),
    ]
    return SheetPlan(
        "Checks",
        "Checks",
        cells,
        widths=[30, 8, 12, 12, 12, 12],
        frozen=(2, 1),
        repeat_rows=(0, 1),
        last=(14, 5),
        verdicts=[(4, 1, 4, 5)],
    )


def free_sheet() -> SheetPlan:
    """Return the page left free: not protected, its cells unlocked."""
    cells = [Cell(0, 0, "text", "Free", "title"), Cell(1, 0, "blank", None, "input.text")]
    rule = InputRule(
        1, 0, "text", "Free", "Anything, 200 letters", "Shorter.", most=200, blank=True
    )
    return SheetPlan("Free", "Free page", cells, [rule], last=(40, 5), protect=False)


def sample() -> tuple[Book, dict]:
    """Return a lawful book and a value for each of its formulas."""
    book = Book(
        sheets=[inputs_sheet(), data_sheet(), checks_sheet(), free_sheet()],
        names={"width_in": ("Inputs", 4, 2), "sections": ("Inputs", 5, 2)},
        title="Floating walkway, sample R&G job",
        subject="Job S-01 (invented) & co., revision 2",
        author="Sample builder (invented)",
        created=datetime(2026, 3, 1, 12, 0, 0),
        version="0.1",
        inputs_hash="0" * 64,
    )
    values = {("Inputs", 2, 2): "OK"}
    for i, word in enumerate(WORDS):
        values["Checks", 4, 1 + i] = word
        values["Checks", 5 + i, 2] = 0.1 + 0.2
        values["Checks", 5 + i, 3] = "–"
        values["Checks", 5 + i, 4] = 1 / 3
        values["Checks", 5 + i, 5] = -0.0
    values["Checks", 14, 0] = "Whole job: OK < & >"
    return book, values


def read(content: bytes, values: bool = False) -> openpyxl.Workbook:
    """Return the file as openpyxl reads it; any warning is an error."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        return openpyxl.load_workbook(io.BytesIO(content), data_only=values)


def parts(content: bytes) -> dict[str, str]:
    """Return every part of the file by name, as text."""
    with zipfile.ZipFile(io.BytesIO(content)) as file:
        return {name: file.read(name).decode("utf-8") for name in file.namelist()}


@pytest.fixture(scope="module")
def content() -> bytes:
    return to_bytes(*sample())


def test_every_cell_reads_back_with_its_content(content):
    book, _ = sample()
    found = read(content)
    assert found.sheetnames == ["Inputs", "Data", "Checks", "Free"]
    for (sheet, row, col), cell in book.cells():
        got = found[sheet].cell(row + 1, col + 1)
        if cell.kind == "number":
            assert (got.data_type, got.value) == ("n", pytest.approx(cell.content, rel=1e-15))
        elif cell.kind == "formula":
            assert (got.data_type, got.value) == ("f", cell.content)
        elif cell.kind == "blank":
            assert got.value is None and got.has_style
        else:
            assert got.value == cell.content.split("|")[-1]


def test_every_formula_stores_its_value(content):
    """V01, V04: a number where the result is a number, text where it is text."""
    _, values = sample()
    found = read(content, values=True)
    for (sheet, row, col), value in values.items():
        got = found[sheet].cell(row + 1, col + 1)
        if isinstance(value, str):
            assert (got.data_type, got.value) == ("s", value)
        else:
            assert (got.data_type, got.value) == ("n", float(f"{value:.12g}"))


def test_results_are_stored_with_the_digits_that_count(content):
    sheet = parts(content)["xl/worksheets/sheet3.xml"]
    assert "<f>Inputs!C5*2</f><v>0.3</v>" in sheet
    assert "<f>1/3</f><v>0.333333333333</v>" in sheet
    assert "<f>1*1</f><v>0</v>" in sheet
    assert "<v>0.3</v>" in parts(content)["xl/worksheets/sheet2.xml"]


def test_text_that_looks_live_stays_text(content):
    """X01: only the book's formulas are formulas, only its links are links."""
    book, _ = sample()
    found = read(content)
    page = found["Inputs"]
    # openpyxl itself types a shared string beginning with = as text only when the file says so.
    for i, text in enumerate(TRAPS):
        assert page.cell(11 + i, 1).value == text
    for number, sheet in enumerate(book.sheets, start=1):
        xml = parts(content)[f"xl/worksheets/sheet{number}.xml"]
        assert xml.count("<f>") == sum(c.kind == "formula" for c in sheet.cells)
        assert xml.count("<hyperlink ") == sum(c.kind == "link" for c in sheet.cells)
