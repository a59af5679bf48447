"""Rules W: how the workbook is built of sheets, cells and references."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from builder.engine.values import address, row_col
from builder.rules import layout
from builder.rules.findings import Found, rule
from builder.rules.formulas import inside_guard
from builder.rules.looks import looks, typed
from builder.rules.reading import MAIN, File, functions, spots, tokens
from builder.workbook.limits import lawful_sheet_name

FOREIGN = re.compile("vba|externalLink|connections|queryTable|embeddings|activeX|ctrlProps|media/",
                     re.IGNORECASE)
TRIVIAL = 3
"""Operators and functions up to which a formula may stand twice (our judgement)."""
TALL = 50
"""Rows from which a range is a whole column of inputs and not what a result reads."""
CONTROL = ("Whole job", "What this workbook is", "How to use it", "Cautions",
           "What it does not cover", "Key", "Sheets", "Version")
"""What the first sheet must say, by the words in its column A."""


@rule("W01", "Move the row to the right of, or below, all it rests on.")
def left_and_up(file: File) -> Iterator[Found]:
    """Yield references to a sheet on the right, or to the same sheet below or to the right.

    A line of a ledger that goes on in banks below is read before the lines under it.
    """
    lines = {s.name: layout.first_rows(file, s.name) for s in file.sheets}
    for place, areas in file.areas.items():
        sheet, row, col = place
        line = lines[sheet]
        for on, _, _, bottom, right in areas:
            if file.order.get(on, 0) > file.order[sheet]:
                yield place, f"looks right to {address((on, bottom, right))}"
            elif on == sheet and (bottom, right) >= (row, col) and (
                    line.get(bottom, bottom), bottom, right) >= (line.get(row, row), row, col):
                yield place, f"looks down or right to {address((on, bottom, right))}"


@rule("W02", "Put it on the first sheet: purpose, scope, key, list of sheets, version.")
def first_sheet_is_the_control_sheet(file: File) -> Iterator[Found]:
    """Yield what the first sheet does not say."""
    first = file.sheets[0].name
    said = {h.value for (_, col), h in file.sheets[0].held.items()
            if col == 0 and isinstance(h.value, str)}
    for words in CONTROL:
        if words not in said:
            yield first, f"{words!r} is not said"
    for sheet in file.sheets[1:]:
        if sheet.name not in said:
            yield first, f"the sheet {sheet.name} is not in the list of sheets"
    version = properties(file).get("Tool version", "none")
    if not any(words.startswith(f"Version {version},") for words in said):
        yield first, f"the version {version} of the file's properties is not said"


def properties(file: File) -> dict[str, str]:
    """Return the workbook's own document properties by name."""
    root = file.xml("docProps/custom.xml")
    return {} if root is None else {
        e.get("name", ""): "".join(e.itertext()) for e in root}


@rule("W03", "Give the column the purpose its head says; keep the heads of its kind of sheet.")
def one_purpose_a_column(file: File) -> Iterator[Found]:
    """Yield heads that are none of the four, and typed numbers in columns of results."""
    for sheet in file.sheets:
        found = layout.head(file, sheet.name)
        if found[:2] == ("Item", "Symbol") and found not in layout.HEADS.values():
            yield (sheet.name, layout.HEAD, 0), f"the heads are {', '.join(found)}"
        if found == layout.SECTION:
            for (row, col), held in sheet.held.items():
                if row >= layout.TOP and col in layout.COLUMNS and held.formula is None:
                    yield (sheet.name, row, col), f"{held.value!r} stands in a column of results"


@rule("W04", "Take the merge off; let the text run over or wrap.")
def nothing_merged(file: File) -> Iterator[Found]:
    """Yield merged cells."""
    for sheet in file.sheets:
        for one in sheet.all("mergeCell"):
            top = row_col(one.get("ref", "A1").partition(":")[0])
            yield (sheet.name, *top), f"merged: {one.get('ref')}"


@rule("W05", "Show it.")
def nothing_hidden(file: File) -> Iterator[Found]:
    """Yield hidden sheets, rows, columns and names, and cells whose content cannot be seen."""
    for sheet in file.sheets:
        if sheet.state != "visible":
            yield sheet.name, f"the sheet is {sheet.state}"
        for row in sheet.rows:
            if row.get("hidden") == "1" or row.get("ht") == "0":
                yield (sheet.name, int(row["r"]) - 1, 0), "a hidden row"
        for col in sheet.all("col"):
            if col.get("hidden") == "1" or float(col.get("width", 9)) == 0:
                yield (sheet.name, 0, int(col.get("min", 1)) - 1), "a hidden column"
    wrong = {}
    for number, look in enumerate(looks(file)):
        if look.hidden or not look.number.strip(";"):
            wrong[number] = "hidden formula or value"
        elif look.ink == look.ground:
            wrong[number] = "letters in the ground's colour"
    for sheet in file.sheets if wrong else ():
        for at, number in sheet.look.items():
            if number in wrong:
                yield (sheet.name, *at), wrong[number]
    for name, target in file.names.items():
        if target.get("hidden") == "1":
            yield name, "a hidden name"


@rule("W06", "Work it out once and refer to that cell.")
def each_quantity_once(file: File) -> Iterator[Found]:
    """Yield long formulas that stand a second time in another row of a section or job sheet."""
    first: dict[str, tuple] = {}
    for sheet in layout.of_kind(file, "section", "job"):
        for place, formula in file.sheet(sheet).formulas.items():
            if place[1] < layout.TOP or layout.verdict(formula):
                continue
            bare = inside_guard(formula)
            parts = tokens(bare)
            if sum(k == "OPERATOR-INFIX" or s == "OPEN" for _, k, s in parts) <= TRIVIAL:
                continue
            text = "".join(_fixed(v, sheet) if s == "RANGE" else v for v, _, s in parts)
            known = first.setdefault(text, place)
            if known[:2] != place[:2]:
                yield place, f"the same is worked out in {address(known)}"


def _fixed(reference: str, sheet: str) -> str:
    on, _, cells = reference.rpartition("!")
    return f"{on or sheet}!{cells.replace('$', '')}"


@rule("W07", "Take one of the references of the circle out; switch iteration off.")
def no_circle(file: File) -> Iterator[Found]:
    """Yield the cells that rest on themselves, or on cells that do; iteration that is on."""
    wants = {}
    for place in file.formulas:
        behind = {spot for area in file.areas[place] for spot in spots(area)}
        wants[place] = sum(p in file.formulas for p in behind)
    ready = [place for place, count in wants.items() if count == 0]
    while ready:
        for reader in file.readers.get(ready.pop(), ()):
            wants[reader] -= 1
            if wants[reader] == 0:
                ready.append(reader)
    for place, count in wants.items():
        if count > 0:
            yield place, "rests on a circle"
    if calculation(file).get("iterate") in ("1", "true"):
        yield "calculation", "iteration is on"


def calculation(file: File) -> dict[str, str]:
    """Return the calculation settings of the workbook."""
    found = file.book.find(MAIN + "calcPr")
    return {} if found is None else dict(found.attrib)


@rule("W08", "Take it out: the workbook stands alone, without macros and links to other files.")
def one_plain_workbook(file: File) -> Iterator[Found]:
    """Yield parts with macros, links, connections, pictures or objects, and targets outside."""
    for name in file.parts:
        if FOREIGN.search(name):
            yield name, "does not belong in a plain workbook"
        if name.endswith(".rels"):
            for one in file.xml(name):
                if one.get("TargetMode") == "External":
                    yield name, f"links out to {one.get('Target')}"
    if file.parts.get("[Content_Types].xml", b"").find(b"macroEnabled") >= 0:
        yield "[Content_Types].xml", "says that there are macros"


@rule("W09", "Name the sheet in letters, digits and underscores, at most 31, by what it holds.")
def sheet_names(file: File) -> Iterator[Found]:
    """Yield sheet names that need quotes, are not unique, or say nothing."""
    count = Counter(sheet.name.lower() for sheet in file.sheets)
    for sheet in file.sheets:
        why = lawful_sheet_name(sheet.name)
        if why or re.fullmatch(r"Sheet\d*", sheet.name) or len(sheet.name) < 2:
            yield sheet.name, why or "the name says nothing"
        if count[sheet.name.lower()] > 1:
            yield sheet.name, "two sheets of one name"


@rule("W10", "Use the value, or take it out; give a result that ends there its words.")
def everything_is_used(file: File) -> Iterator[Found]:
    """Yield inputs that nothing outside their own row reads, and ends that have no words.

    That a changed input changes a result is tried by the tests, with an engine.
    """
    for place in typed(file):
        sheet, row, _ = place
        if layout.kind(file, sheet) and not any(
                one[:2] != (sheet, row) and not _sums_up(file, one, row)
                for one in _beyond(file, place)):
            yield place, "an input that no result reads"
    for place, formula in file.formulas.items():
        if place not in file.readers and place[0] not in layout.OUTPUTS and place[1] >= layout.TOP:
            if not any(file.text(place[0], place[1], col) for col in range(4)):
                yield place, f"ends here and has no words: {formula[:40]}"


def _beyond(file: File, place) -> set:
    """Return who reads a typed cell, or what its own row makes of it."""
    row = place[:2]
    own = {p for p in file.after(place, lambda p: p[:2] == row or file.text(
        p[0], p[1]) == file.text(*row)) if p[0] == place[0]} | {place}
    return {reader for p in own for reader in file.readers.get(p, ())}


def _sums_up(file: File, reader, row: int) -> bool:
    """Say whether a reader is a head that counts what is typed in a whole column."""
    tall = any(top <= row <= bottom and bottom - top > TALL
               for _, top, _, bottom, _ in file.areas[reader])
    return tall and bool({"COUNTA", "SUMPRODUCT", "COUNTIF", "MATCH"}
                         & set(functions(file.formulas[reader])))
