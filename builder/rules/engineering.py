"""Rules E: what a checker of a calculation expects to find on it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from itertools import count, takewhile

from builder.engine.values import letters
from builder.language.units import UNITS
from builder.resolve.cells import Place
from builder.rules import layout
from builder.rules.findings import Found, rule
from builder.rules.formulas import inside_guard
from builder.rules.looks import print_area
from builder.rules.reading import MAIN, File, references, words
from builder.workbook.styles import FONT

OWN = ("own judgement", "common practice", "statics", "geometry", "invented", "maker", "catalog",
       "local rule first", "hinge maker", "anchor maker", "catenary", "dispersion relation",
       "within ", "length along ", "102 in from memory", "load chart of the machine",
       "tag of the sling")
"""Beginnings of what a source may say beside a key of Sources (our own words)."""
CONSTANTS = (4, "Source and clause; status")
"""Column in which a constant's source stands, and its head."""
_STATUS = ("(?:seen|memory|our judgement|our own words|common practice, no source|invented|"
           "definition|arithmetic)")
SOURCED = re.compile(rf"\S.*; {_STATUS}\b|^\d+: {_STATUS}\b")
"""Words that end in a status; a clause, or the table's own source, stands before it."""
FOOTNOTE = re.compile(r"(\d+): ")
_CELL = r"(?:\w+!)?[A-Z]+\$\d+"
AT_MOST = re.compile(rf"={_CELL}/({_CELL})")
AT_LEAST = re.compile(rf"=({_CELL})/MAX\({_CELL},\1/99\)")
OVER = re.compile(r"\(([A-Z]+\$\d+)>1\.000000001\)")
SLACK = 1.000000001
AMOUNT, RATIO, LOOK = ": ", ": ratio", ": LOOK above"


@rule("E01", "Give the row its label, formula in symbols, unit and source.")
def rows_are_whole(file: File) -> Iterator[Found]:
    """Yield calculation rows without label, formula in symbols, or source.

    That the symbols are those of the formula is proved on the resolved book.
    """
    for sheet in layout.of_kind(file, "section"):
        checked = {file.text(sheet, p[1]).removesuffix(": verdict")
                   for p in layout.verdict_cells(file) if p[0] == sheet}
        for row in layout.rows(file, sheet):
            place = sheet, row, layout.COLUMNS[0]
            label, shown = file.text(sheet, row), file.text(sheet, row, 2)
            if layout.verdict(file.formulas.get(place, "")):
                continue
            if not label or not shown:
                yield place, "no label" if not label else "no formula in symbols"
            elif not file.text(sheet, row, 10) and (
                    file.text(sheet, row, 1) or file.text(sheet, row, 3)) and not any(
                    label.startswith(c + AMOUNT) for c in checked):
                yield place, "no source"


@rule("E02", "Make the line a formula over the cells whose numbers it shows.")
def numbers_put_in_are_live(file: File) -> Iterator[Found]:
    """Yield lines with the numbers put in that are typed, or that rest on no cell."""
    for sheet in file.sheets:
        found = layout.head(file, sheet.name)
        if "With the numbers put in" not in found:
            continue
        col = found.index("With the numbers put in")
        for (row, at), held in sheet.held.items():
            if at == col and row >= layout.TOP and (
                    not held.formula or not references(held.formula)):
                yield (sheet.name, row, col), f"typed, not worked out: {held.value!r}"


def sources(file: File) -> list[str]:
    """Return the keys of the sheet of sources, longest first."""
    sheet = file.sheet("Sources")
    found = [] if sheet is None else [
        str(h.value) for (row, col), h in sheet.held.items() if col == 0 and row >= layout.LISTED]
    return sorted(found, key=len, reverse=True)


@rule("E03", "Name a source of the sheet Sources, with its clause, table or page.")
def references_resolve(file: File) -> Iterator[Found]:
    """Yield sources whose key does not stand on Sources, and lines of Sources left blank."""
    keys = sources(file)
    sheets = tuple(file.order)
    for sheet in layout.of_kind(file, "section"):
        col = len(layout.head(file, sheet)) - 1
        for (row, at), held in file.sheet(sheet).held.items():
            if at != col or row < layout.TOP or not isinstance(held.value, str):
                continue
            for piece in held.value.split("; "):
                if not piece.startswith((*keys, *OWN, *sheets)):
                    yield (sheet, row, col), f"{piece!r} is no source that is listed"
    listed = file.sheet("Sources")
    for (row, col), held in listed.held.items() if listed else ():
        if col == 0 and row >= layout.LISTED and held.value and not (
                file.text("Sources", row, 1) and file.text("Sources", row, 5)):
            yield ("Sources", row, 0), "a source without title or status"


@rule("E04", "Write ratio and verdict by the one template; read the verdict off the ratio alone.")
def ratios_and_verdicts(file: File) -> Iterator[Found]:
    """Yield ratios of another form, and verdict words that their ratio does not give."""
    for place in layout.verdict_cells(file):
        found = OVER.search(file.formulas[place])
        if not found:
            yield place, "the verdict does not compare a ratio with 1"
            continue
        row = int(found[1].partition("$")[2]) - 1
        ratio = place[0], row, place[2]
        bare = inside_guard(file.formulas.get(ratio, ""))
        if not AT_MOST.fullmatch(bare) and not AT_LEAST.fullmatch(bare):
            yield ratio, f"the ratio is {bare}"
        value, word = file.value(*ratio), file.value(*place)
        if isinstance(value, float) and word in ("OK", "NOT OK"):
            if (word == "NOT OK") != (value > SLACK):
                yield place, f"{word} at a ratio of {value}"


@rule("E05", "Put each verdict on Checks once as a plain link, and the whole job's on every sheet.")
def each_verdict_once(file: File) -> Iterator[Found]:
    """Yield verdicts that do not stand on Checks exactly once, as plain links."""
    linked: Counter[Place] = Counter()
    checks = file.sheet("Checks")
    for place, formula in checks.formulas.items() if checks else ():
        if place[1] >= layout.TOP and place[2] in layout.COLUMNS:
            if not re.fullmatch(r"=\w+!\$?[A-Z]+\$?\d+", formula):
                yield place, f"no plain link: {formula}"
            elif file.areas[place]:
                linked[file.areas[place][0][:3]] += 1
    verdicts = set(layout.verdict_cells(file))
    for place in verdicts | set(linked):
        if linked[place] != 1 or place not in verdicts:
            yield place, f"{linked[place]} times on Checks"
    for sheet in file.sheets:
        at = 1, 1
        if sheet.name in layout.PAPER:
            area = print_area(file, sheet.name)
            at = 0, area[3] + 2 if area else 1
        if sheet.name != "Checks" and file.formulas.get((sheet.name, *at)) != "=Checks!$B$2":
            yield (sheet.name, *at), "no verdict of the whole job on top"


@rule("E06", "Let the verdict begin with the state of its column.")
def missing_is_never_ok(file: File) -> Iterator[Found]:
    """Yield lists of verdict words that are not ours, and verdicts beside what the state says.

    That no missing or wrong entry gives OK is tried by the tests, with an engine.
    """
    found = layout.verdict_words(file)
    if tuple(found) != layout.VERDICTS:
        yield "Data", f"the words of a verdict are {found}"
    for place in layout.verdict_cells(file):
        ready, word = layout.state(file, place), file.value(*place)
        meant = {0.0: ("not used",), 1.0: ("NEEDS INPUT",), 2.0: ("OK", "LOOK", "NOT OK")}
        own = layout.verdict(file.formulas[place])[1].replace("$", "")
        if own.rstrip("0123456789") != letters(place[2]):
            yield place, f"begins with the state in {own}, not of its column"
        elif own.lstrip("ABCDEFGHIJ") == str(layout.STATE + 1) and word not in meant.get(ready, ()):
            yield place, f"{word} at the state {ready}"


@rule("E07", "Name workbook, sheet, job and page of pages in head and foot; the job in cells too.")
def every_page_says_what_it_is(file: File) -> Iterator[Found]:
    """Yield sheets whose header, footer or top cells do not say job, sheet and page."""
    for sheet in file.sheets:
        head, foot = header(sheet, "oddHeader"), header(sheet, "oddFooter")
        if not ("&L" in head and "&R" in head and "&L" in foot):
            yield sheet.name, f"the header reads {head!r}, the footer {foot!r}"
        if "&P" not in foot or "&N" not in foot:
            yield sheet.name, "the footer does not count the pages"
        tops = [w for p, f in sheet.formulas.items() if p[1] < 3 for w in words(f)]
        if sheet is not file.sheets[0] and not any(w.startswith("Job: ") for w in tops):
            yield (sheet.name, 0, 0), "the job is not named on top"


def header(sheet, tag: str) -> str:
    """Return the header or footer of a sheet, without the codes of its font."""
    found = sheet.root.find(f".//{MAIN}{tag}")
    return "" if found is None else (found.text or "").replace(f'&"{FONT},Regular"', "")


@rule("E08", "Put inputs, products and data to the left of the calculation.")
def basis_first(file: File) -> Iterator[Found]:
    """Yield sheets of the design basis that are missing, or stand right of a calculation."""
    worked = [file.order[s] for s in layout.of_kind(file, "section", "job")]
    for name in layout.BASIS:
        if name not in file.order:
            yield name, "the sheet is missing"
        elif worked and file.order[name] > min(worked):
            yield name, "stands right of a calculation"
    if "Sources" not in file.order:
        yield "Sources", "the sheet is missing"


@rule("E09", "Use a unit of the list, in its own column.")
def units_of_the_list(file: File) -> Iterator[Found]:
    """Yield units that are not of the closed list.

    That every formula is sound in its units is proved before a file is written.
    """
    for sheet in file.sheets:
        found = layout.head(file, sheet.name)
        if "Unit" not in found or sheet.name in ("Proof", "Names"):
            continue
        col = found.index("Unit")
        for (row, at), held in sheet.held.items():
            if at == col and row >= layout.TOP and isinstance(held.value, str):
                if held.value not in UNITS and held.value != "Unit":
                    yield (sheet.name, row, col), f"the unit {held.value!r} is not on the list"


@rule("E10", "Let tables hold constants only, with source and status.")
def tables_are_constants(file: File) -> Iterator[Found]:
    """Yield formulas among published data, and lines of data without source or status.

    That the values are those of the packaged tables is tried by the tests.
    """
    data = file.sheet("Data")
    for place in data.formulas if data else ():
        if place[1] >= layout.TOP - 2:
            yield place, "a formula among published data"
    last = max((at[0] for at in data.held), default=0) if data else 0
    texts = {row: file.text("Data", row) for row in range(layout.TOP, last + 2)}
    for row, said in texts.items():
        if said.startswith("Source: "):
            yield from _lines_without_source(file, texts, row)
        elif file.text("Data", row, CONSTANTS[0]) == CONSTANTS[1]:
            for line in _block(texts, row + 1):
                if not SOURCED.search(file.text("Data", line, CONSTANTS[0])):
                    yield ("Data", line, 0), "no source and status"


def _block(texts: dict[int, str], first: int) -> list[int]:
    """Return the rows from a first one on down to the next blank in column A."""
    return list(takewhile(lambda row: texts.get(row), count(first)))


def _lines_without_source(file: File, texts: dict[int, str], title: int) -> Iterator[Found]:
    """Yield the lines of a table that neither its title nor a numbered line below gives a source.

    ``title`` is the row of the line that names the table's source.
    """
    heads = next((col for col in range(30)
                  if file.text("Data", title + 1, col).startswith("Source, ")), None)
    lines = _block(texts, title + 2)
    below = {float(FOOTNOTE.match(texts[row])[1]): texts[row]
             for row in _block(texts, lines[-1] + 2 if lines else title)
             if FOOTNOTE.match(texts[row])}
    for row in lines:
        held = file.sheet("Data").held.get((row, heads)) if heads is not None else None
        words = texts[title] if heads is None else below.get(held and held.value, "")
        if not SOURCED.search(words):
            yield ("Data", row, 0), "no source and status"
