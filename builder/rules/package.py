"""What the package format asks (ECMA-376 Parts 1 and 2): what would bring a repair prompt."""

from __future__ import annotations

import posixpath
import re
from collections import Counter
from collections.abc import Iterator

from builder.rules.findings import Found
from builder.rules.reading import MAIN, File, NoWorkbook
from builder.workbook.limits import COLUMNS, FORMULA, ROWS, TEXT, units16

TYPES = "{http://schemas.openxmlformats.org/package/2006/content-types}"
ORDER = (
    "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection "
    "protectedRanges scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells "
    "phoneticPr conditionalFormatting dataValidations hyperlinks printOptions pageMargins "
    "pageSetup headerFooter rowBreaks colBreaks customProperties cellWatches ignoredErrors "
    "smartTags drawing legacyDrawing legacyDrawingHF drawingHF picture oleObjects controls "
    "webPublishItems tableParts extLst").split()
"""Order of the elements of a sheet (ECMA-376 Part 1, 18.3.1.99 worksheet; memory)."""
BOOK = ("fileVersion fileSharing workbookPr workbookProtection bookViews sheets functionGroups "
        "externalReferences definedNames calcPr oleSize customWorkbookViews pivotCaches "
        "smartTagPr smartTagTypes webPublishing fileRecoveryPr webPublishObjects extLst").split()
"""Order of the elements of the workbook part (ECMA-376 Part 1, 18.2.27 workbook; memory)."""


def faults(file: File) -> Iterator[Found]:
    """Yield every breach of the package rules."""
    yield from _parts(file)
    yield from _types(file)
    yield from _relations(file)
    yield from _sheets(file)
    yield from _order("xl/workbook.xml", file.book, BOOK)


def _parts(file: File) -> Iterator[Found]:
    for name, count in Counter(n.lower() for n in file.parts).items():
        if count > 1:
            yield name, "two parts whose names differ in case alone"
    for name, count in Counter(one.filename for one in file.zipped).items():
        if count > 1:
            yield name, "stands in the package twice"
    for name in file.parts:
        if name.endswith((".xml", ".rels")):
            try:
                file.xml(name)
            except NoWorkbook as fault:
                yield name, str(fault)


def _types(file: File) -> Iterator[Found]:
    root = file.xml("[Content_Types].xml")
    if root is None:
        yield "[Content_Types].xml", "is missing"
        return
    ends = {e.get("Extension") for e in root.iter(TYPES + "Default")}
    named = [e.get("PartName", "")[1:] for e in root.iter(TYPES + "Override")]
    for name in file.parts:
        if name != "[Content_Types].xml" and name not in named and (
                name.rpartition(".")[2] not in ends or not name.endswith(".rels")):
            yield name, "no content type"
    for name in named:
        if name not in file.parts or named.count(name) > 1:
            yield name, "a content type without its part, or two"


def _relations(file: File) -> Iterator[Found]:
    for name in file.parts:
        if not name.endswith(".rels"):
            continue
        folder, base = posixpath.split(name)
        of = posixpath.join(posixpath.dirname(folder), base.removesuffix(".rels"))
        if of and of not in file.parts:
            yield name, "relations of a part that is not there"
        root = file.xml(name)
        if len({e.get("Id") for e in root}) != len(root):
            yield name, "two relations of one number"
        inside = [t for _, t in file.targets(of).values()]
        for e, target in zip(root, inside, strict=False):
            if e.get("TargetMode") != "External" and target not in file.parts:
                yield name, f"its target {target} is not there"


def _sheets(file: File) -> Iterator[Found]:
    numbers = [e.get("sheetId") for e in file.book.iter(MAIN + "sheet")]
    if len(set(numbers)) != len(numbers):
        yield "xl/workbook.xml", "two sheets of one number"
    styles = file.xml("xl/styles.xml")
    looks = 0 if styles is None else len(styles.findall(f"{MAIN}cellXfs/{MAIN}xf"))
    for sheet in file.sheets:
        yield from _order(sheet.part, sheet.root, ORDER)
        for at, held in sheet.held.items():
            if isinstance(held.value, str) and units16(held.value) > TEXT:
                yield (sheet.name, *at), f"a text of {units16(held.value)} letters"
            if held.formula and len(held.formula) > FORMULA:
                yield (sheet.name, *at), f"a formula of {len(held.formula)} letters"
        for at, look in sheet.look.items():
            if look >= looks or at[0] >= ROWS or at[1] >= COLUMNS:
                yield (sheet.name, *at), "a look that is not defined, or a cell past the last"
        told = {"dataValidations": "dataValidation", "hyperlinks": "hyperlink"}
        for many, one in told.items():
            found = sheet.root.find(MAIN + many)
            count = None if found is None else found.get("count")
            if found is not None and (len(found) == 0 or count not in (None, str(len(found)))):
                yield sheet.part, f"{many} says {count} and holds {len(found)} {one}"


def _order(part: str, root, order: list[str]) -> Iterator[Found]:
    tags = [re.sub("{.*}", "", e.tag) for e in root]
    known = [order.index(tag) for tag in tags if tag in order]
    for tag in tags:
        if tag not in order:
            yield part, f"the element {tag} has no place in it"
    if known != sorted(known):
        yield part, "its elements are out of order"
