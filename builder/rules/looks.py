"""How cells look, from the styles of the file; which cells may be typed in; input rules."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from xml.etree import ElementTree

from builder.engine.values import row_col
from builder.resolve.cells import Place
from builder.rules.reading import MAIN, Area, File, spots

STYLES = "xl/styles.xml"
PLAIN = {0: "General", 1: "0", 2: "0.00", 3: "#,##0", 4: "#,##0.00", 9: "0%", 10: "0.00%",
         49: "@"}
"""Number formats the file format itself numbers (ECMA-376 Part 1, 18.8.30; memory)."""
BLACK, WHITE = "000000", "FFFFFF"


@dataclass(frozen=True)
class Look:
    """A look: letters, ground, number format, and whether it is locked and hidden.

    Colours are six hexadecimal digits, ``None`` for one that is given by a theme or an index.
    """

    font: str
    size: float
    bold: bool
    italic: bool
    ink: str | None
    ground: str | None
    filled: bool
    border: bool
    number: str
    locked: bool
    hidden: bool
    wrap: bool
    shrink: bool


def _colour(element: ElementTree.Element | None, default: str) -> str | None:
    if element is None or element.get("auto"):
        return default
    rgb = element.get("rgb")
    return rgb[-6:].upper() if rgb else None


def _ruled(border: ElementTree.Element | None) -> bool:
    sides = ("left", "right", "top", "bottom")
    return border is not None and all(
        (side := border.find(MAIN + s)) is not None and side.get("style") for s in sides)


def looks(file: File) -> list[Look]:
    """Return the looks of the file, by their number."""
    if "looks" not in file.kept:
        root = file.xml(STYLES)
        file.kept["looks"] = [] if root is None else _looks(root)
    return file.kept["looks"]


def _looks(root: ElementTree.Element) -> list[Look]:
    formats = dict(PLAIN) | {int(e.get("numFmtId", 0)): e.get("formatCode", "")
                             for e in root.iter(MAIN + "numFmt")}
    fonts = root.findall(f"{MAIN}fonts/{MAIN}font")
    fills = root.findall(f"{MAIN}fills/{MAIN}fill")
    borders = root.findall(f"{MAIN}borders/{MAIN}border")
    found = []
    for xf in root.findall(f"{MAIN}cellXfs/{MAIN}xf"):
        font = fonts[int(xf.get("fontId", 0))]
        pattern = fills[int(xf.get("fillId", 0))].find(MAIN + "patternFill")
        filled = pattern is not None and pattern.get("patternType") not in (None, "none")
        guard, lie = xf.find(MAIN + "protection"), xf.find(MAIN + "alignment")
        found.append(Look(
            font=_value(font, "name", ""), size=float(_value(font, "sz", "11")),
            bold=font.find(MAIN + "b") is not None, italic=font.find(MAIN + "i") is not None,
            ink=_colour(font.find(MAIN + "color"), BLACK),
            ground=_colour(pattern.find(MAIN + "fgColor"), WHITE) if filled else WHITE,
            filled=filled, border=_ruled(borders[int(xf.get("borderId", 0))]),
            number=formats.get(int(xf.get("numFmtId", 0)), "?"),
            locked=guard is None or guard.get("locked") not in ("0", "false"),
            hidden=guard is not None and guard.get("hidden") == "1",
            wrap=lie is not None and lie.get("wrapText") == "1",
            shrink=lie is not None and lie.get("shrinkToFit") == "1"))
    return found


def _value(font: ElementTree.Element, tag: str, default: str) -> str:
    found = font.find(MAIN + tag)
    return default if found is None else found.get("val", default)


@dataclass(frozen=True)
class Conditional:
    """A conditional look: the colours and whether it has a border on all sides."""

    ink: str | None
    ground: str | None
    border: bool


def conditionals(file: File) -> list[Conditional]:
    """Return the conditional looks of the file, by their number."""
    root = file.xml(STYLES)
    found = []
    for one in [] if root is None else root.findall(f"{MAIN}dxfs/{MAIN}dxf"):
        ground = one.find(f"{MAIN}fill/{MAIN}patternFill/{MAIN}bgColor")
        found.append(Conditional(_colour(one.find(f"{MAIN}font/{MAIN}color"), BLACK),
                                 _colour(ground, WHITE), _ruled(one.find(MAIN + "border"))))
    return found


def used(file: File) -> dict[int, Place]:
    """Return the looks that stand on some cell, each with the first cell that has it."""
    found: dict[int, Place] = {}
    for sheet in file.sheets:
        for at, number in sheet.look.items():
            found.setdefault(number, (sheet.name, *at))
    return found


def typed(file: File) -> list[Place]:
    """Return the cells that may be typed in on the protected sheets."""
    if "typed" not in file.kept:
        free = {n for n, look in enumerate(looks(file)) if not look.locked}
        file.kept["typed"] = [
            (s.name, *at) for s in file.sheets if s.first("sheetProtection").get("sheet") == "1"
            for at, number in s.look.items() if number in free]
    return file.kept["typed"]


@dataclass(frozen=True)
class Entry:
    """An input rule as stored: its attributes and its two limits."""

    given: Mapping[str, str]
    first: str | None
    second: str | None

    @property
    def kind(self) -> str:
        """Kind of the rule: decimal, whole, list, textLength …"""
        return self.given.get("type", "none")


def box(span: str) -> tuple[int, int, int, int]:
    """Return first row and column, last row and column of a range such as ``A1:B3``.

    Raises ``ValueError`` if it is none.
    """
    first, _, last = span.replace("$", "").partition(":")
    return *row_col(first), *row_col(last or first)


def entries(file: File) -> tuple[dict[Place, Entry], list[Place]]:
    """Return the input rule of every cell that has one, and the cells that have two."""
    if "entries" not in file.kept:
        found: dict[Place, Entry] = {}
        double = []
        for sheet in file.sheets:
            for one in sheet.all("dataValidation"):
                entry = Entry(one.attrib, one.findtext(MAIN + "formula1"),
                              one.findtext(MAIN + "formula2"))
                for span in one.get("sqref", "").split():
                    for spot in spots(_area(sheet.name, span)):
                        if spot in found:
                            double.append(spot)
                        found[spot] = entry
        file.kept["entries"] = found, double
    return file.kept["entries"]


def _area(sheet: str, span: str) -> Area:
    return (sheet, *box(span))


def print_area(file: File, sheet: str) -> tuple[int, int, int, int] | None:
    """Return the print area of a sheet, None if it has none."""
    text = kept_name(file, sheet, "_xlnm.Print_Area")
    try:
        return box(text.rpartition("!")[2]) if text else None
    except ValueError:
        return None


def kept_name(file: File, sheet: str, name: str) -> str:
    """Return what a name kept by the program stands for on a sheet; empty if it is not given."""
    for one in file.book.iter(MAIN + "definedName"):
        if one.get("name") == name and one.get("localSheetId") == str(file.order[sheet]):
            return one.text or ""
    return ""
