"""A resolved workbook and its values, written as a file.

Everything is checked first, then written once; a warning or a refusal of the library is an
error, because it otherwise leaves things out in silence.
"""

from __future__ import annotations

import os
import re
import sys
import warnings
from collections.abc import Mapping
from io import BytesIO
from pathlib import Path
from zipfile import ZipFile

from xlsxwriter import Workbook
from xlsxwriter.format import Format
from xlsxwriter.packager import Packager
from xlsxwriter.worksheet import Worksheet, re_dynamic_function

from builder.resolve.cells import Book, Cell, Place, SheetPlan
from builder.workbook.charts import add_charts
from builder.workbook.heights import row_heights
from builder.workbook.limits import WorkbookError, address, column_name, faults, split_link
from builder.workbook.page import set_up
from builder.workbook.rules_in_cells import validation
from builder.workbook.styles import ACROSS, DEFAULT, STYLES, VERDICT_LOOKS

Values = Mapping[Place, float | str]

# Arial 10 has digits 7 px wide and rows of 17 px at 96 px an inch (measured by the library's
# author for its old style; seen).  With these the widths asked for are the widths shown.
OPTIONS = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_urls": False,
    "strings_to_numbers": False,
    "default_row_height": 17,
    "default_column_width": 64,
    "default_format_properties": DEFAULT,
}

STORED = 12
"""Digits of a stored result.  Engines and machines differ in the last ones, which carry nothing:
two results are the same within 1e-9, and a program that opens the file works them out anew."""

LEVEL = 7
"""How hard the file is packed.  It is 2 % smaller than with the usual 6 for a hundredth of the
time; levels 8 and 9 take another 1 % off and a tenth of the time (measured)."""


class SmallZip(ZipFile):
    """A zip file whose parts are packed as hard as ``LEVEL`` says."""

    def writestr(self, zinfo_or_arcname, data, compress_type=None, compresslevel=None) -> None:
        """Write one part."""
        super().writestr(zinfo_or_arcname, data, compress_type, compresslevel or LEVEL)


class SmallPackager(Packager):
    """Packs the parts of a file; the list of names in the properties is left out."""

    def _write_app_file(self) -> None:
        """Write the properties without the workbook's names, which stand in the workbook part."""
        self.named_ranges = []
        super()._write_app_file()


class SmallWorkbook(Workbook):
    """A workbook that is packed harder than the library does.  Leans on XlsxWriter 3.3.1."""

    def _get_packager(self) -> Packager:
        return SmallPackager()

    def _store_workbook(self) -> None:
        # The library has no option for it, so its own name for the packing class is lent.
        library = sys.modules[Workbook.__module__]
        library.ZipFile = SmallZip
        try:
            super()._store_workbook()
        finally:
            library.ZipFile = ZipFile
        # Workbook and sheets hold each other to the end of the run; what they wrote need not stay.
        for page in self.worksheets():
            page.fh, page.values = None, {}


class SmallSheet(Worksheet):
    """A worksheet that says the same as the library's in fewer bytes, and sooner.

    * Cells are taken as they are resolved, without a record of the library's own for each, and
      become text when the file is put together.
    * Formulas are taken as they are, but for the leading ``=``: the library looks through every
      one for some hundred newer functions, most of its time.  Ours use none, which ``limits`` and
      the rules see to.
    * A formula that is repeated along its row is held once.
    * Attributes stand in the order in which neighbours differ least, so that they pack well, and
      rows do without ``spans``, which only help a reader to make room.

    Leans on XlsxWriter 3.3.1; a test holds what both say together.
    """

    def take(self, sheet: SheetPlan, cells: list[Cell], formats: dict[str, Format],
             values: Values) -> None:
        """Take the cells of a sheet, of which ``limits`` has found that they can be written."""
        self.sheet, self.looks, self.values = sheet, formats, values
        # The library puts another in its place before the sheets are written.
        self.strings = self.str_table.string_table
        table, place_of_string = self.table, self.str_table._get_shared_string_index
        for cell in cells:
            if cell.kind == "text":
                place_of_string(cell.content)
            elif cell.kind == "link":
                write_link(self, cell, formats[cell.style])
            table[cell.row][cell.col] = cell
        for far in (min, max):
            row, col = far(table), far(far(columns) for columns in table.values())
            _done(self._check_dimensions(row, col), address((sheet.name, row, col)))
        texts = (cell.content for cell in cells if cell.kind == "formula" and not cell.alike)
        called = set(_CALLED.findall("\n".join(texts)))
        self.has_dynamic_arrays = bool(re_dynamic_function.search(" ".join(called)))

    def _stored(self, cell: Cell) -> float | str:
        value = self.values[self.sheet.name, cell.row, cell.col]
        return value if isinstance(value, str) else float(f"{value:.{STORED}g}") + 0.0

    def _get_range_data(self, row_start: int, col_start: int, row_end: int, col_end: int) -> list:
        """Return what a chart keeps of the cells it shows; None where there is no cell."""
        found = []
        for row in range(row_start, row_end + 1):
            for col in range(col_start, col_end + 1):
                cell = self.table[row].get(col) if row in self.table else None
                found.append(None if cell is None else self._kept(cell))
        return found

    def _kept(self, cell: Cell) -> float | str:
        """Return a cell as a chart keeps it: what a formula comes to, a number in digits, words."""
        if cell.kind == "formula":
            return self._stored(cell)
        if cell.kind == "number":
            return f"{cell.content + 0.0:.16g}"
        return "" if cell.kind == "blank" else _words(cell)

    def _write_rows(self) -> None:
        """Write the rows that hold something or have a height."""
        runs = runs_of(self.sheet)
        styles = _Styles(self.looks)
        for row in sorted({*self.table, *self.row_info}):
            cells, info = self.table.get(row), self.row_info.get(row)
            if not cells:
                self._write_empty_row(row, None, info)
                continue
            self._write_row(row, None, info)
            self.fh.write("".join([
                self._text_of(cells[col], f'{styles[cells[col].style]} r="{column_name(col)}'
                                          f'{row + 1}"', runs.get((row, col)))
                for col in sorted(cells)]))
            self.fh.write("</row>")
        self.table.clear()

    def _text_of(self, cell: Cell, rest: str, run: tuple[int, str] | None) -> str:
        """Return a cell as the file holds it; ``rest`` are the attributes that all have."""
        if cell.kind == "formula":
            value = self._stored(cell)
            formula = _formula(cell.content, run)
            if isinstance(value, str):
                return f'<c t="str"{rest}>{formula}<v>{_escaped(value)}</v></c>'
            return f"<c{rest}>{formula}<v>{value:.16g}</v></c>"
        if cell.kind == "blank":
            return f"<c{rest}/>"
        if cell.kind == "number":
            return f"<c{rest}><v>{float(f'{cell.content:.16g}') + 0.0:.16G}</v></c>"
        return f'<c t="s"{rest}><v>{self.strings[_words(cell)]}</v></c>'


class _Styles(dict):
    """The attribute of each style in use; formats are counted in the order of their first use."""

    def __init__(self, looks: dict[str, Format]):
        self.looks = looks

    def __missing__(self, style: str) -> str:
        self[style] = text = f' s="{self.looks[style]._get_xf_index()}"'
        return text


_CALLED = re.compile(r"\b[A-Z]+\(")
"""A function that is called, among those the library may take for array functions."""


def _words(cell: Cell) -> str:
    """Return what a text or a link shows."""
    return cell.content if cell.kind == "text" else split_link(cell.content)[2]


def _escaped(text: str) -> str:
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def _formula(content: str, run: tuple[int, str] | None) -> str:
    """Return a formula's element; those of a run share the first's text (ECMA-376 18.3.1.40)."""
    if run is None:
        return f"<f>{_escaped(content[1:])}</f>"
    number, extent = run
    if extent:
        return f'<f t="shared" si="{number}" ref="{extent}">{_escaped(content[1:])}</f>'
    return f'<f t="shared" si="{number}"/>'


def write(book: Book, values: Values, path: str | os.PathLike[str]) -> None:
    """Write a workbook to ``path``; on any failure what stood there stays as it was.

    ``values`` holds the result of every formula.  Raises WorkbookError with all faults of the
    book, RuntimeError when the library refuses a call, a Warning it gives, or OSError.
    """
    content = to_bytes(book, values)
    target = Path(path)
    beside = target.with_name(f".{target.name}.{os.getpid()}.part")
    try:
        with open(beside, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.replace(beside, target)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise


def to_bytes(book: Book, values: Values, sheet_class: type[Worksheet] = SmallSheet) -> bytes:
    """Return the finished file as bytes: the same book and values give the same bytes.

    ``sheet_class`` is a worksheet that takes cells as ``SmallSheet`` does; a test has another.
    """
    if found := faults(book, values):
        raise WorkbookError(found)
    out = BytesIO()
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        # The library keeps and changes the dictionary it is given.
        options = {**OPTIONS, "default_format_properties": dict(DEFAULT)}
        workbook = SmallWorkbook(out, options)
        _fill(workbook, book, values, sheet_class)
        workbook.close()
    return out.getvalue()


def _fill(workbook: Workbook, book: Book, values: Values, sheet_class: type[Worksheet]) -> None:
    _set_properties(workbook, book)
    formats = {name: workbook.add_format(look) for name, look in STYLES.items()}
    words = {word: workbook.add_format(look) for word, look in VERDICT_LOOKS.items()}
    pages = [workbook.add_worksheet(sheet.name, sheet_class) for sheet in book.sheets]
    for sheet, page in zip(book.sheets, pages, strict=True):
        page.take(sheet, [*sheet.cells, *run_across(sheet)], formats, values)
        heights = row_heights(sheet, values)
        _set_sizes(sheet, page, heights)
        _write_rules(sheet, page)
        add_charts(workbook, sheet, page)
        _colour_verdicts(sheet, page, words)
        set_up(book, sheet, page, heights)
    for name, (sheet_name, row, col) in book.names.items():
        target = f"={sheet_name}!${column_name(col)}${row + 1}"
        _done(workbook.define_name(name, target), f"name {name}")
    pages[0].activate()
    pages[0].set_first_sheet()
    if any(page.has_dynamic_arrays for page in pages):
        raise RuntimeError("a formula became an array formula")


def runs_of(sheet: SheetPlan) -> dict[tuple[int, int], tuple[int, str]]:
    """Return the formulas that share a text: place → number of the run, range for its first.

    A run is a formula and the cells to its right that are marked alike, with gaps or without;
    the range is that from the first to the last of them.
    """
    found: dict[tuple[int, int], tuple[int, str]] = {}
    run: list[tuple[int, int]] = []
    count = 0
    for cell in [*sheet.cells, None]:
        if cell is not None and cell.alike and run and _stands_after(cell, run[-1]):
            run.append((cell.row, cell.col))
            continue
        if len(run) > 1:
            (row, first), (_, last) = run[0], run[-1]
            extent = f"{column_name(first)}{row + 1}:{column_name(last)}{row + 1}"
            found |= {spot: (count, "") for spot in run[1:]} | {run[0]: (count, extent)}
            count += 1
        run = [(cell.row, cell.col)] if cell is not None and cell.kind == "formula" else []
    return found


def _stands_after(cell: Cell, place: tuple[int, int]) -> bool:
    """Return whether a cell stands to the right of a place in the same row."""
    return cell.row == place[0] and cell.col > place[1]


def _done(code: int | None, what: str) -> None:
    """Raise RuntimeError unless the library's return code says that it did its work."""
    if code:
        raise RuntimeError(f"{what}: the writer refused it with code {code}")


def _set_properties(workbook: Workbook, book: Book) -> None:
    properties = {"title": book.title, "subject": book.subject, "author": book.author}
    workbook.set_properties({**properties, "created": book.created})
    for name, text in (("Tool version", book.version), ("Inputs hash", book.inputs_hash)):
        _done(workbook.set_custom_property(name, text, "text"), name)


def write_link(page: Worksheet, cell: Cell, look: Format) -> None:
    """Write a link and what is said of it."""
    sheet, spot, text = split_link(cell.content)
    tip = f"Go to sheet {sheet}, cell {spot}"
    code = page.write_url(cell.row, cell.col, f"internal:'{sheet}'!{spot}", look, text, tip)
    _done(code, address((page.name, cell.row, cell.col)))


def run_across(sheet: SheetPlan) -> list[Cell]:
    """Return blanks that carry the ground and rule of headings on to the print area's edge."""
    headings = [cell for cell in sheet.cells if cell.style in ACROSS]
    rows = {cell.row for cell in headings}
    taken = {(cell.row, cell.col) for cell in sheet.cells if cell.row in rows}
    found = []
    for cell in headings:
        for col in range(cell.col + 1, sheet.last[1] + 1):
            if (cell.row, col) not in taken:
                taken.add((cell.row, col))
                found.append(Cell(cell.row, col, "blank", None, cell.style))
    return found


def _set_sizes(sheet: SheetPlan, page: Worksheet, heights: Mapping[int, float]) -> None:
    for col, width in enumerate(sheet.widths):
        _done(page.set_column(col, col, width), f"{sheet.name}, width of column {col}")
    for row, height in sorted(heights.items()):
        _done(page.set_row(row, height), f"{sheet.name}, height of row {row}")


def _write_rules(sheet: SheetPlan, page: Worksheet) -> None:
    for rule in sheet.rules:
        last = (rule.row + rule.rows - 1, rule.col + rule.cols - 1)
        code = page.data_validation(rule.row, rule.col, *last, validation(rule))
        _done(code, f"{address((sheet.name, rule.row, rule.col))}, input rule")


def _colour_verdicts(sheet: SheetPlan, page: Worksheet, words: dict[str, Format]) -> None:
    """Give the verdict ranges of a sheet their colours: one rule a word for all of them."""
    if not sheet.verdicts:
        return
    ranges = " ".join(f"{column_name(left)}{top + 1}:{column_name(right)}{bottom + 1}"
                      for top, left, bottom, right in sheet.verdicts)
    for word, look in words.items():
        rule = {"type": "cell", "criteria": "==", "value": f'"{word}"', "format": look,
                "multi_range": ranges}
        code = page.conditional_format(*sheet.verdicts[0], rule)
        _done(code, f"{sheet.name}, verdict colours")
