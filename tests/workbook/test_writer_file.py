"""The file as a whole: same bytes each time, written whole or not at all, the pinned library."""

from __future__ import annotations

import contextlib
import os
import subprocess
import sys
import warnings
import zipfile
from pathlib import Path
from xml.etree import ElementTree

import openpyxl
import pytest
import xlsxwriter
from xlsxwriter.packager import Packager
from xlsxwriter.worksheet import Worksheet

from builder.engine.stored import formulas_of
from builder.resolve.cells import Book, Cell, SheetPlan
from builder.workbook import WorkbookError, write, writer
from builder.workbook.writer import (
    SmallPackager,
    SmallSheet,
    SmallWorkbook,
    SmallZip,
    runs_of,
    to_bytes,
    write_link,
)
from tests.workbook.test_writer_sample import parts, sample

ROOT = Path(__file__).parents[2]


def test_v07_same_bytes_twice():
    assert to_bytes(*sample()) == to_bytes(*sample())


def test_v07_same_bytes_under_two_hash_seeds(tmp_path):
    program = (
        "import sys; sys.path.insert(0, sys.argv[1])\n"
        "from tests.workbook.test_writer_sample import sample\n"
        "from builder.workbook import write\n"
        "write(*sample(), sys.argv[2])\n"
    )
    files = []
    for seed in ("1", "2"):
        files.append(tmp_path / f"{seed}.xlsx")
        command = [sys.executable, "-c", program, str(ROOT)]
        environment = {**os.environ, "PYTHONHASHSEED": seed}
        subprocess.run([*command, str(files[-1])], check=True, env=environment)
    one, other = (file.read_bytes() for file in files)
    assert one == other == to_bytes(*sample())


def test_the_quick_sheet_leans_on_this_version():
    assert xlsxwriter.__version__ == "3.3.1"
    assert SmallSheet.__mro__[1] is Worksheet
    ours = [name for name in vars(SmallSheet) if not name.startswith("__")]
    assert ours == ["take", "_stored", "_get_range_data", "_kept", "_write_rows", "_text_of"]
    for ours, theirs in [(SmallSheet, Worksheet), (SmallWorkbook, xlsxwriter.Workbook),
                         (SmallPackager, Packager), (SmallZip, zipfile.ZipFile)]:
        methods = [m for m in vars(ours) if not m.startswith("__")
                   and m not in ("take", "_stored", "_kept", "_text_of")]
        assert methods and all(hasattr(theirs, m) for m in methods), ours


def said(content: bytes) -> dict[str, str]:
    """What the parts of a file say: attributes in order of name, no spans, numbers as numbers."""
    found = {}
    for name, text in parts(content).items():
        tree = ElementTree.fromstring(text)
        for element in tree.iter():
            element.attrib.pop("spans", None)
            if element.tag.endswith("}v") and element.text:
                with contextlib.suppress(ValueError):
                    element.text = repr(float(element.text))
        found[name] = ElementTree.canonicalize(ElementTree.tostring(tree, "unicode"))
    return found


class PlainSheet(Worksheet):
    """The library's worksheet, filled cell by cell with its own calls."""

    def take(self, sheet, cells, formats, values):
        write = {"text": self.write_string, "number": self.write_number}
        for cell in cells:
            spot, look = (cell.row, cell.col), formats[cell.style]
            if cell.kind == "formula":
                value = values[sheet.name, *spot]
                stored = value if isinstance(value, str) else float(f"{value:.12g}") + 0.0
                code = self.write_formula(*spot, cell.content, look, stored)
            elif cell.kind == "blank":
                code = self.write_blank(*spot, None, look)
            elif cell.kind == "link":
                code = write_link(self, cell, look)
            else:
                code = write[cell.kind](*spot, cell.content, look)
            assert not code, (sheet.name, cell)


def test_the_small_sheet_says_the_same_as_the_library_s():
    ours, theirs = to_bytes(*sample()), to_bytes(*sample(), sheet_class=PlainSheet)
    assert said(ours) == said(theirs)
    assert len(ours) < len(theirs)


def test_the_small_workbook_says_the_same_but_for_the_list_of_names(monkeypatch):
    ours = to_bytes(*sample())
    monkeypatch.setattr(writer, "SmallWorkbook", xlsxwriter.Workbook)
    theirs = to_bytes(*sample())
    app = "docProps/app.xml"
    differ = {name for name, text in said(theirs).items() if said(ours)[name] != text}
    assert differ == {app} and said(ours).keys() == said(theirs).keys()
    assert "width_in" in parts(theirs)[app] and "width_in" not in parts(ours)[app]
    assert "width_in" in parts(ours)["xl/workbook.xml"]
    assert len(ours) < len(theirs)


def test_the_library_packs_as_it_did_afterwards():
    to_bytes(*sample())
    assert sys.modules["xlsxwriter.workbook"].ZipFile is zipfile.ZipFile


def run_of_three() -> tuple[Book, dict]:
    """A book whose second sheet holds one formula in three columns, two of them side by side."""
    book, values = sample()
    sheet = book.sheets[1]
    row = max(cell.row for cell in sheet.cells) + 1
    for col in "BCF":
        spot = ord(col) - ord("A")
        sheet.cells.append(Cell(row, spot, "formula", f'={col}$1&"B1"', "text", alike=col != "B"))
        values[sheet.name, row, spot] = "x"
    sheet.last = (row, max(sheet.last[1], 5))
    return book, values


def test_a_run_may_have_gaps_and_ends_with_its_row():
    def formula(row, col, alike):
        return Cell(row, col, "formula", "=A1", "text", alike)

    cells = [formula(0, 1, False), formula(0, 2, True), formula(0, 6, True),  # B1, C1, G1
             formula(1, 7, True), Cell(1, 8, "text", "x"), formula(1, 9, True)]
    runs = runs_of(SheetPlan("S", "S", cells))
    assert runs == {(0, 1): (0, "B1:G1"), (0, 2): (0, ""), (0, 6): (0, "")}


def test_a_run_of_formulas_is_held_once_and_reads_the_same(tmp_path):
    book, values = run_of_three()
    path = tmp_path / "run.xlsx"
    path.write_bytes(to_bytes(book, values))
    sheet = book.sheets[1].name
    row = book.sheets[1].last[0]
    with zipfile.ZipFile(path) as parts:
        text = parts.read("xl/worksheets/sheet2.xml").decode()
    assert text.count('t="shared"') == 3 and text.count("<f>B$1") == 0
    held = {place: f for place, f in formulas_of(path).items() if place[1] == row}
    assert held == {(sheet, row, k): f'={c}$1&"B1"' for k, c in [(1, "B"), (2, "C"), (5, "F")]}
    read = openpyxl.load_workbook(path)[sheet]
    assert [read.cell(row + 1, k).value for k in (2, 3, 6)] == list(held.values())


def test_that_comparison_can_fail():
    class Spoilt(PlainSheet):
        def _prepare_formula(self, formula, expand_future_functions=False):
            return formula.removeprefix("=") + " "

    plain = to_bytes(*sample(), sheet_class=PlainSheet)
    assert said(plain) != said(to_bytes(*sample(), sheet_class=Spoilt))
    # What the quick sheet leaves out, and why the formulas may hold no newer function.
    assert Worksheet()._prepare_formula("=SORT(A1:A2)") == "_xlfn._xlws.SORT(A1:A2)"


def test_charts_keep_the_same_of_their_cells_as_the_library_s():
    """Numbers, formulas, texts, blanks, links and cells that are not there."""
    book, values = sample()
    kept = []
    for kind in (SmallSheet, PlainSheet):
        shown = {}

        class Seen(kind):
            def _assemble_xml_file(self):
                shown[self.name] = [self._get_range_data(row, 0, row, 8)  # noqa: B023
                                    for row in range(40) if row in self.table]
                super()._assemble_xml_file()

        to_bytes(book, values, sheet_class=Seen)
        kept.append(shown)
    ours, theirs = kept
    assert ours == theirs and set(ours) == {sheet.name for sheet in book.sheets}
    found = [value for rows in ours.values() for row in rows for value in row]
    assert {type(value) for value in found} == {str, float, type(None)} and "" in found


def test_x04_a_refusal_or_warning_of_the_library_is_an_error(monkeypatch):
    monkeypatch.setattr(Worksheet, "data_validation", lambda *_: -2)
    with pytest.raises(RuntimeError, match="Inputs!C5, input rule: .* code -2"):
        to_bytes(*sample())

    def warn(*_):
        warnings.warn("left out", stacklevel=2)

    monkeypatch.setattr(Worksheet, "data_validation", warn)
    with pytest.raises(UserWarning, match="left out"):
        to_bytes(*sample())


@pytest.mark.parametrize(
    ("call", "words"),
    [
        ("write_url", "Inputs!E9: "),
        ("set_column", "Inputs, width of column 0: "),
        ("set_row", "Inputs, height of row 0: "),
        ("conditional_format", "Inputs, verdict colours: "),
    ],
)
def test_x04_every_call_s_return_code_is_heeded(monkeypatch, call, words):
    monkeypatch.setattr(Worksheet, call, lambda *_: -1)
    with pytest.raises(RuntimeError, match=words):
        to_bytes(*sample())


def test_x04_the_code_for_the_corners_of_a_sheet_is_heeded(monkeypatch):
    monkeypatch.setattr(Worksheet, "_check_dimensions", lambda self, *spot: -(spot == (0, 0)))
    with pytest.raises(RuntimeError, match="Inputs!A1: "):
        to_bytes(*sample())


def test_an_array_formula_is_refused():
    book, values = sample()
    book.sheets[2].cells.append(Cell(14, 3, "formula", "=SORT(A1:A2)", "num.0"))
    values["Checks", 14, 3] = 1
    with pytest.raises(RuntimeError, match="array formula"):
        to_bytes(book, values)


def test_write_leaves_one_whole_file(tmp_path):
    target = tmp_path / "book.xlsx"
    write(*sample(), target)
    assert os.listdir(tmp_path) == ["book.xlsx"]
    assert target.read_bytes() == to_bytes(*sample())
    assert "xl/workbook.xml" in parts(target.read_bytes())


def test_write_replaces_what_was_there(tmp_path):
    target = tmp_path / "book.xlsx"
    target.write_bytes(b"old")
    write(*sample(), str(target))
    assert target.read_bytes() == to_bytes(*sample())


def test_a_faulty_book_leaves_the_old_file(tmp_path):
    target = tmp_path / "book.xlsx"
    target.write_bytes(b"old")
    book, values = sample()
    values.popitem()
    with pytest.raises(WorkbookError):
        write(book, values, target)
    assert os.listdir(tmp_path) == ["book.xlsx"] and target.read_bytes() == b"old"


@pytest.mark.parametrize("step", ["fsync", "replace"])
@pytest.mark.parametrize("error", [OSError("disk full"), KeyboardInterrupt()])
def test_a_failure_while_writing_leaves_the_old_file(tmp_path, monkeypatch, step, error):
    target = tmp_path / "book.xlsx"
    target.write_bytes(b"old")

    def fail(*_):
        assert len(os.listdir(tmp_path)) == 2, "the new file is being written beside the old"
        raise error

    monkeypatch.setattr(os, step, fail)
    with pytest.raises(type(error)):
        write(*sample(), target)
    assert os.listdir(tmp_path) == ["book.xlsx"] and target.read_bytes() == b"old"


def test_a_folder_that_is_not_there_is_an_error(tmp_path):
    with pytest.raises(FileNotFoundError):
        write(*sample(), tmp_path / "no" / "book.xlsx")
    assert os.listdir(tmp_path) == []
