"""A workbook file as the rules read it: parts, cells, looks, and which cell reads which.

All of it comes from the file.  Nothing here asks the language what depends on what.  A part is
parsed once; ``File.changed`` gives a copy of a file with a part changed and keeps the others.
"""

from __future__ import annotations

import posixpath
import re
import zipfile
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache, cached_property, lru_cache
from io import BytesIO
from pathlib import Path
from xml.etree import ElementTree

from openpyxl.formula import Tokenizer

from builder.engine.stored import moved
from builder.engine.values import Value, row_col
from builder.resolve.cells import Place

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
LINK = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}"
PACKAGE = "{http://schemas.openxmlformats.org/package/2006/relationships}"
DASH = "–"
_ESCAPED = re.compile("_x([0-9A-Fa-f]{4})_")

Area = tuple[str, int, int, int, int]
"""Sheet, first row, first column, last row, last column, counted from 0."""


class NoWorkbook(Exception):
    """A file cannot be read as a workbook; the message is a sentence that says why."""


@dataclass(frozen=True, slots=True)
class Held:
    """What a cell holds: its formula with the leading ``=``, its value, and how.

    ``kind`` is the type as stored (``n``, ``s``, ``str``, ``b``, ``e``), ``run`` the number of
    the run of formulas that the file writes once, None for a formula of its own.
    """

    formula: str | None
    value: Value | None
    kind: str = "n"
    run: int | None = None


@dataclass
class Sheet:
    """One sheet: its part, its cells, and everything of it that is no cell (``root``)."""

    name: str
    part: str
    state: str
    root: ElementTree.Element
    held: dict[tuple[int, int], Held]
    look: dict[tuple[int, int], int]
    """Number of the look of every cell, blank ones too."""
    rows: list[Mapping[str, str]]
    """Attributes of every row."""
    plain: bool
    """Whether every formula is a plain one: no array, no data table."""

    @cached_property
    def formulas(self) -> dict[Place, str]:
        """Formula of every cell that has one."""
        return {(self.name, *at): h.formula for at, h in self.held.items() if h.formula}

    @cached_property
    def areas(self) -> dict[Place, list[Area]]:
        """What each formula refers to."""
        return {p: _areas(f, p[0]) for p, f in self.formulas.items()}

    def all(self, tag: str) -> list[ElementTree.Element]:
        """Return every element of a kind, outside the cells."""
        return list(self.root.iter(MAIN + tag))

    def first(self, tag: str) -> Mapping[str, str]:
        """Return the attributes of the first element of a kind; none if there is none."""
        found = self.root.find(f".//{MAIN}{tag}")
        return {} if found is None else found.attrib


@lru_cache(maxsize=200_000)
def tokens(formula: str) -> tuple[tuple[str, str, str], ...]:
    """Return (value, type, subtype) of the tokens of a formula."""
    return tuple((t.value, t.type, t.subtype) for t in Tokenizer(formula).items)


def references(formula: str) -> list[str]:
    """Return what a formula refers to, as it is written, in order."""
    return [value for value, kind, sub in tokens(formula) if (kind, sub) == ("OPERAND", "RANGE")]


@lru_cache(maxsize=200_000)
def area(reference: str, sheet: str) -> Area:
    """Return what a reference covers, for a formula that stands on ``sheet``.

    Raises ``ValueError`` if it is not a cell or a closed range of cells, a name for instance.
    """
    on, _, cells = reference.rpartition("!")
    first, _, last = cells.partition(":")
    top, left = row_col(first)
    bottom, right = row_col(last or first)
    return on.strip("'") or sheet, top, left, bottom, right


def _areas(formula: str, sheet: str) -> list[Area]:
    """Return what a formula refers to; a rule of its own finds what is no closed range."""
    found = []
    for reference in references(formula):
        try:
            found.append(area(reference, sheet))
        except ValueError:
            continue
    return found


def spots(where: Area) -> Iterator[Place]:
    """Yield the cells of an area."""
    sheet, top, left, bottom, right = where
    for row in range(top, bottom + 1):
        for col in range(left, right + 1):
            yield sheet, row, col


@dataclass
class File:
    """A workbook file: its parts, its sheets in order, its cells, names and texts."""

    path: Path
    parts: dict[str, bytes]
    zipped: list[zipfile.ZipInfo]
    texts: list[str]
    sheets: list[Sheet]
    book: ElementTree.Element
    kept: dict[str, object] = field(default_factory=dict, repr=False)
    """What rules worked out and may use again."""

    @cached_property
    def cells(self) -> dict[Place, Held]:
        """Every cell that holds a formula or a value."""
        return {(s.name, *at): h for s in self.sheets for at, h in s.held.items()}

    @cached_property
    def formulas(self) -> dict[Place, str]:
        """Formula of every cell that has one."""
        return {p: f for s in self.sheets for p, f in s.formulas.items()}

    @cached_property
    def areas(self) -> dict[Place, list[Area]]:
        """What each formula refers to."""
        return {p: a for s in self.sheets for p, a in s.areas.items()}

    @cached_property
    def readers(self) -> dict[Place, list[Place]]:
        """For each cell the formulas that read it."""
        found: dict[Place, list[Place]] = {}
        for place, read_there in self.areas.items():
            for one in dict.fromkeys(read_there):
                for spot in spots(one):
                    found.setdefault(spot, []).append(place)
        return found

    @cached_property
    def names(self) -> dict[str, ElementTree.Element]:
        """Names of the workbook, without those a program keeps for print areas and titles."""
        return {e.get("name", ""): e for e in self.book.iter(MAIN + "definedName")
                if not e.get("name", "").startswith("_xlnm.")}

    @cached_property
    def order(self) -> dict[str, int]:
        """Number of each sheet from the left."""
        return {sheet.name: number for number, sheet in enumerate(self.sheets)}

    def sheet(self, name: str) -> Sheet | None:
        """Return the sheet of a name, None if there is none."""
        return next((sheet for sheet in self.sheets if sheet.name == name), None)

    def text(self, sheet: str, row: int, col: int = 0) -> str:
        """Return the words that stand in a cell, or nothing."""
        held = self.cells.get((sheet, row, col))
        return held.value if held is not None and isinstance(held.value, str) else ""

    def value(self, sheet: str, row: int, col: int) -> Value | None:
        """Return what a cell shows; None where it is empty."""
        held = self.cells.get((sheet, row, col))
        return None if held is None else held.value

    def after(self, start: Place, passes: Callable[[Place], bool]) -> set[Place]:
        """Return the formula cells that rest on a cell, by way of cells that ``passes`` lets by."""
        found: set[Place] = set()
        todo = [start]
        while todo:
            for reader in self.readers.get(todo.pop(), ()):
                if reader not in found and passes(reader):
                    found.add(reader)
                    todo.append(reader)
        return found

    def xml(self, name: str) -> ElementTree.Element | None:
        """Return a part as XML, None if there is none.  Raises ``NoWorkbook`` if it is broken."""
        if name not in self.parts:
            return None
        if name not in self.kept:
            self.kept[name] = _parsed(name, self.parts[name])
        return self.kept[name]

    def targets(self, part: str) -> dict[str, tuple[str, str]]:
        """Return the relations of a part: id → (type, path of the part or address outside)."""
        folder, name = posixpath.split(part)
        root = self.xml(f"{folder}/_rels/{name}.rels")
        return {} if root is None else {
            e.get("Id", ""): (e.get("Type", ""), _joined(folder, e)) for e in root}

    def changed(self, parts: Mapping[str, bytes | None]) -> File:
        """Return the file as it would be with these parts in place of its own; None takes one out.

        Parts that are not named are not parsed again.
        """
        kept = {s.part: s for s in self.sheets if s.part not in parts}
        texts: list[str] | None = self.texts
        if "xl/sharedStrings.xml" in parts:
            kept, texts = {}, None
        new = {n: c for n, c in {**self.parts, **parts}.items() if c is not None}
        return _assembled(self.path, new, self.zipped, kept, texts)


def _joined(folder: str, relation: ElementTree.Element) -> str:
    target = relation.get("Target", "")
    if relation.get("TargetMode") == "External":
        return target
    return posixpath.normpath(posixpath.join("/" + folder, target))[1:]


def _parsed(name: str, content: bytes) -> ElementTree.Element:
    try:
        return ElementTree.fromstring(content)
    except ElementTree.ParseError as fault:
        raise NoWorkbook(f"the part {name} is no XML: {fault}") from fault


def _text(item: ElementTree.Element) -> str:
    """Return a text with its runs joined, without the reading aids some programs add."""
    runs = [item, *item.findall(MAIN + "r")]
    text = "".join(t.text or "" for run in runs for t in run.findall(MAIN + "t"))
    return _ESCAPED.sub(lambda m: chr(int(m[1], 16)), text)


def _sheet(name: str, part: str, state: str, content: bytes, texts: list[str]) -> Sheet:
    root = _parsed(part, content)
    held: dict[tuple[int, int], Held] = {}
    look: dict[tuple[int, int], int] = {}
    runs: dict[str, tuple[str, int, int]] = {}
    rows, plain = [], b" cm=" not in content
    data = root.find(MAIN + "sheetData")
    for row in data if data is not None else ():
        rows.append(row.attrib)
        for cell in row:
            at = row_col(cell.attrib["r"])
            look[at] = int(cell.get("s", 0))
            if len(cell):
                one = _held(cell, at, texts, runs)
                plain = plain and one is not None
                if one is not None and (one.formula is not None or one.value is not None):
                    held[at] = one
    if data is not None:
        data.clear()
    return Sheet(name, part, state, root, held, look, rows, plain)


def _held(cell: ElementTree.Element, at: tuple[int, int], texts: list[str],
          runs: dict[str, tuple[str, int, int]]) -> Held | None:
    """Return what a cell holds; None for a formula of a kind that has no place here."""
    kind, formula, run = cell.get("t", "n"), None, None
    found, stored = cell.find(MAIN + "f"), cell.find(MAIN + "v")
    if found is not None:
        if found.get("t") == "shared":
            run = int(found.attrib["si"])
            if found.text:
                runs[found.attrib["si"]] = (found.text, *at)
            text, row, col = runs[found.attrib["si"]]
            formula = "=" + moved(text, at[0] - row, at[1] - col)
        elif found.get("t") not in (None, "normal"):
            return None
        else:
            formula = "=" + (found.text or "")
    raw = None if stored is None else stored.text or ""
    if kind == "inlineStr":
        inside = cell.find(MAIN + "is")
        value: Value | None = None if inside is None else _text(inside)
    elif kind == "str":
        value = raw
    elif not raw:
        value = None
    elif kind == "s":
        value = texts[int(raw)]
    elif kind == "b":
        value = raw == "1"
    else:
        value = raw if kind == "e" else float(raw)
    return Held(formula, value, kind, run)


def _assembled(path: Path, parts: dict[str, bytes], zipped: list[zipfile.ZipInfo],
               kept: Mapping[str, Sheet], texts: list[str] | None = None) -> File:
    try:
        book = _parsed("xl/workbook.xml", parts["xl/workbook.xml"])
        rels = _parsed("xl/_rels/workbook.xml.rels", parts["xl/_rels/workbook.xml.rels"])
        where = {r.attrib["Id"]: _joined("xl", r) for r in rels}
        if texts is None:
            strings = parts.get("xl/sharedStrings.xml")
            texts = [] if strings is None else [
                _text(e) for e in _parsed("xl/sharedStrings.xml", strings).iter(MAIN + "si")]
        sheets = []
        for one in book.iter(MAIN + "sheet"):
            name, part = one.attrib["name"], where[one.attrib[LINK + "id"]]
            state, old = one.get("state", "visible"), kept.get(part)
            if old is not None and (old.name, old.state) == (name, state):
                sheets.append(old)
            else:
                sheets.append(_sheet(name, part, state, parts[part], texts))
    except (KeyError, IndexError, ValueError) as fault:
        raise NoWorkbook(f"a part or mark is missing or wrong: {fault}") from fault
    if not sheets:
        raise NoWorkbook("there is no sheet in it")
    return File(path, parts, zipped, texts, sheets, book)


def read_bytes(path: Path, content: bytes) -> File:
    """Read the content of a workbook file; ``path`` is its name.  Raises ``NoWorkbook``."""
    try:
        with zipfile.ZipFile(BytesIO(content)) as held:
            zipped = held.infolist()
            parts = {one.filename: held.read(one) for one in zipped}
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, OSError) as fault:
        raise NoWorkbook(f"it is no zip file as a workbook is: {fault}") from fault
    return _assembled(path, parts, zipped, {})


@cache
def read(path: Path) -> File:
    """Read a workbook file, once.  Raises ``NoWorkbook``, or ``OSError`` if it is not there."""
    return read_bytes(path, path.read_bytes())


@lru_cache(maxsize=200_000)
def functions(formula: str) -> tuple[str, ...]:
    """Return the names of the functions a formula calls, in order."""
    return tuple(v[:-1].upper() for v, kind, sub in tokens(formula)
                 if (kind, sub) == ("FUNC", "OPEN"))


def words(formula: str) -> Iterable[str]:
    """Return the texts in quotes of a formula, without their quotes."""
    return [v[1:-1].replace('""', '"') for v, kind, sub in tokens(formula)
            if (kind, sub) == ("OPERAND", "TEXT")]
