"""The formulas and values a workbook file holds, read as they stand.

Nothing is worked out here: what is read is what a previewer or a protected view would show.
The reader is our own and small, so that an empty stored value and a missing one stay apart.
"""

from __future__ import annotations

import posixpath
import re
import zipfile
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree

from builder.engine.values import EngineError, Value, Values, address, letters, row_col
from builder.resolve.cells import Place

_MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
_LINK = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"
_REFERENCE = re.compile(r"(?<![A-Za-z0-9_$.])(?P<fixed_col>\$?)(?P<col>[A-Z]{1,3})"
                        r"(?P<fixed_row>\$?)(?P<row>[0-9]+)(?![A-Za-z0-9_(!])")
_ESCAPED = re.compile("_x([0-9A-Fa-f]{4})_")


@dataclass(frozen=True, slots=True)
class StoredCell:
    """One cell of a file: its formula with the leading ``=`` (None if none), its value.

    ``value`` is None if the file holds none.  A formula that the file holds once for several
    cells is given to each as it reads there.
    """

    formula: str | None
    value: Value | None


def read_cells(path: str | Path) -> dict[Place, StoredCell]:
    """Return every cell of an .xlsx file that holds a formula or a value.

    Raises ``EngineError`` if the file is not a workbook.
    """
    found: dict[Place, StoredCell] = {}
    try:
        with zipfile.ZipFile(path) as parts:
            texts = _shared_texts(parts)
            for sheet, part in _sheet_parts(parts):
                shared: dict[str, tuple[str, int, int]] = {}
                with parts.open(part) as stream:
                    for _, element in ElementTree.iterparse(stream):
                        if element.tag == _MAIN + "c":
                            cell = _cell(element, texts, shared)
                            if cell.formula is not None or cell.value is not None:
                                found[sheet, *row_col(element.attrib["r"])] = cell
                        elif element.tag == _MAIN + "row":
                            element.clear()
    except (zipfile.BadZipFile, KeyError, ElementTree.ParseError) as fault:
        raise EngineError(f"{path} cannot be read as a workbook: {fault}") from fault
    return found


def stored_values(path: str | Path) -> Values:
    """Return the stored value of every formula cell of an .xlsx file, and of no other cell.

    Raises ``EngineError`` if a formula cell holds no value.
    """
    values: Values = {}
    for place, cell in read_cells(path).items():
        if cell.formula is None:
            continue
        if cell.value is None:
            raise EngineError(f"{path}: {address(place)} holds a formula and no value")
        values[place] = cell.value
    return values


def formulas_of(path: str | Path) -> dict[Place, str]:
    """Return the formula of every formula cell of an .xlsx file, with the leading ``=``."""
    return {p: c.formula for p, c in read_cells(path).items() if c.formula is not None}


def sheet_names(path: str | Path) -> list[str]:
    """Return the names of the sheets of an .xlsx file, from left to right."""
    with zipfile.ZipFile(path) as parts:
        return [name for name, _ in _sheet_parts(parts)]


def moved(formula: str, rows: int, cols: int) -> str:
    """Return a formula as it reads so many rows down and columns to the right.

    References without ``$`` move; texts in quotes stay.
    """
    def shift(found: re.Match) -> str:
        col, row = found["col"], found["row"]
        if not found["fixed_col"]:
            col = letters(row_col(f"{col}1")[1] + cols)
        if not found["fixed_row"]:
            row = str(int(row) + rows)
        return f"{found['fixed_col']}{col}{found['fixed_row']}{row}"

    pieces = formula.split('"')
    return '"'.join(piece if i % 2 else _REFERENCE.sub(shift, piece)
                    for i, piece in enumerate(pieces))


def _sheet_parts(parts: zipfile.ZipFile) -> list[tuple[str, str]]:
    """Return (sheet name, part name) from left to right."""
    relations = ElementTree.fromstring(parts.read("xl/_rels/workbook.xml.rels"))
    targets = {r.attrib["Id"]: r.attrib["Target"] for r in relations}
    book = ElementTree.fromstring(parts.read("xl/workbook.xml"))
    return [
        (s.attrib["name"], posixpath.normpath(posixpath.join("/xl", targets[s.attrib[_LINK]]))[1:])
        for s in book.iter(_MAIN + "sheet")
    ]


def _shared_texts(parts: zipfile.ZipFile) -> list[str]:
    if "xl/sharedStrings.xml" not in parts.namelist():
        return []
    root = ElementTree.fromstring(parts.read("xl/sharedStrings.xml"))
    return [_text(item) for item in root.iter(_MAIN + "si")]


def _text(item: ElementTree.Element) -> str:
    """Return a text with its runs joined, without the reading aids some programs add."""
    runs = [item, *item.findall(_MAIN + "r")]
    text = "".join(t.text or "" for run in runs for t in run.findall(_MAIN + "t"))
    return _ESCAPED.sub(lambda m: chr(int(m[1], 16)), text)


def _formula(element: ElementTree.Element, shared: dict[str, tuple[str, int, int]]) -> str | None:
    """Return a cell's formula; a shared one is kept at its first cell and moved to the others."""
    found = element.find(_MAIN + "f")
    if found is None:
        return None
    if found.get("t") != "shared":
        return "=" + (found.text or "")
    row, col = row_col(element.attrib["r"])
    if found.text:
        shared[found.attrib["si"]] = (found.text, row, col)
    text, first_row, first_col = shared[found.attrib["si"]]
    return "=" + moved(text, row - first_row, col - first_col)


def _cell(element: ElementTree.Element, texts: list[str],
          shared: dict[str, tuple[str, int, int]]) -> StoredCell:
    held = element.find(_MAIN + "v")
    kind = element.get("t", "n")
    raw = None if held is None else held.text or ""
    value: Value | None
    if kind == "inlineStr":
        inline = element.find(_MAIN + "is")
        value = None if inline is None else _text(inline)
    elif kind == "str":
        # A formula whose text is empty: some programs write the empty value, some leave it out.
        value = raw or ""
    elif not raw:
        value = None
    elif kind == "s":
        value = texts[int(raw)]
    elif kind == "b":
        value = raw == "1"
    else:
        value = raw if kind == "e" else float(raw)
    return StoredCell(_formula(element, shared), value)
