"""Rules X: nothing in the file can do harm, and every program opens it."""

from __future__ import annotations

import re
import warnings
from collections.abc import Iterator
from io import BytesIO
from string import ascii_uppercase
from zipfile import ZIP_STORED, ZipFile

from openpyxl import load_workbook

from builder.engine.values import a1, letters
from builder.resolve.frame import FIRST, SECTIONS
from builder.rules.findings import Found, rule
from builder.rules.formulas import called
from builder.rules.layout import LISTED
from builder.rules.looks import STYLES, looks, typed
from builder.rules.package import faults
from builder.rules.reading import File

REACHING = ("HYPERLINK", "WEBSERVICE", "RTD", "CALL", "REGISTER", "REGISTER.ID", "DDE",
            "IMPORTXML", "IMPORTDATA", "FILTERXML", "ENCODEURL", "SQL.REQUEST", "EXEC")
SIZE, FORMULAS = 1_200_000, 38_000
"""Largest file [bytes] and most formulas.  The first issue kept to 600,000 and 20,000; the sheets
of stability, mooring, cut list, price, yard, launch and drawing came on top.
The bench holds the core sheets alone to 500 KB."""
LEFT = re.compile("comments|printerSettings|customXml|persons|threadedComment", re.IGNORECASE)
PRIVATE = re.compile(rb"absPath|[A-Za-z]:\\|/home/|/Users/|/root/|/tmp/|/private/|file://"
                     rb"|mailto:|[\w.]+@[\w-]+\.[a-z]{2,}")
_SIGNS = re.compile(r"[|\[{@;]")


@rule("X01", "Write what people typed as text; keep formulas in locked cells.")
def typed_is_never_a_formula(file: File) -> Iterator[Found]:
    """Yield formulas in cells that are typed in, and links made of what was typed."""
    for place in typed(file):
        if place in file.formulas:
            yield place, f"an input holds the formula {file.formulas[place][:60]}"
    linked = {(s.name, one.get("ref")) for s in file.sheets for one in s.all("hyperlink")}
    if linked:
        for sheet, row, col in typed(file):
            if (sheet, a1(row, col)) in linked:
                yield (sheet, row, col), "an input is a link"
    for place, held in file.cells.items():
        if held.formula is None and held.kind == "str" and str(held.value)[:1] in "=+-@":
            yield place, "a text that a program may take for a formula"


@rule("X03", "Take the call out; the workbook reads nothing outside itself.")
def nothing_reaches_out(file: File) -> Iterator[Found]:
    """Yield functions that reach out of the workbook, and signs that are no part of a formula."""
    for place, name in called(file):
        if name in REACHING or name.startswith("IMPORT"):
            yield place, f"{name} reaches out"
    for place, formula in file.formulas.items():
        if _SIGNS.search(formula) and (found := _SIGNS.search(re.sub(r'"[^"]*"', "", formula))):
            yield place, f"the sign {found[0]} is no part of a formula"


@rule("X04", "Find the warning of the writer; it left out what is missing.")
def nothing_left_out(file: File) -> Iterator[Found]:
    """Yield names that the sheet of names lists and the file lacks, or the other way round.

    A refusal of the writer is an error of the build; the tests of the writer see to that.
    """
    sheet = file.sheet("Names")
    if sheet is None:
        yield "Names", "the sheet is missing"
        return
    listed = {}
    for (row, col), held in sheet.held.items():
        if col == 0 and row >= LISTED:
            for name, cell in _spelt_out(str(held.value), file.text("Names", row, 2)):
                listed[name] = row, cell
    for name, (row, cell) in listed.items():
        target = file.names.get(name)
        if target is None:
            yield ("Names", row, 0), f"the name {name} is not defined"
        elif (target.text or "").replace("$", "").replace("'", "") != cell:
            yield ("Names", row, 2), f"{name} stands for {target.text}"
    for name in file.names:
        if name not in listed:
            yield name, "does not stand on the sheet of names"


def _spelt_out(name: str, cell: str) -> list[tuple[str, str]]:
    """Return (name, cell) of each section column where a line stands for ``x_A to x_F``."""
    stem, several, _ = name.partition("_A to ")
    on, _, first = cell.partition("!")
    row = first.partition(" ")[0].lstrip(ascii_uppercase)
    if not several:
        return [(name, cell)]
    return [(f"{stem}_{letter}", f"{on}!{letters(FIRST + step)}{row}")
            for step, letter in enumerate(SECTIONS)]


@rule("X05", "Write the file again; a program would offer to repair this one.")
def sound_package(file: File) -> Iterator[Found]:
    """Yield what breaks the rules of the package, and what openpyxl warns of or refuses."""
    yield from faults(file)
    look = len(looks(file))
    if look >= 65_490:
        yield STYLES, f"{look} looks"
    yield from _opened(file)


def _opened(file: File) -> Iterator[Found]:
    held = BytesIO()
    with ZipFile(held, "w", ZIP_STORED) as packed:
        for name, content in file.parts.items():
            packed.writestr(name, content)
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        try:
            load_workbook(held)
        # Whatever it is that openpyxl stumbles over: the file is not sound.
        except Exception as fault:  # noqa: BLE001
            yield "workbook", f"openpyxl: {type(fault).__name__}: {fault}"


@rule("X06", "Take it out: the file goes to clients and officials.")
def nothing_private(file: File) -> Iterator[Found]:
    """Yield comments, printer settings, paths and addresses of mail."""
    for name, content in file.parts.items():
        if LEFT.search(name):
            yield name, "does not belong in a file that is given away"
        for found in set(PRIVATE.findall(content)):
            yield name, f"holds {found.decode(errors='replace')!r}"


@rule("X08", "Take rows out, or set the limit higher with a reason.")
def small_enough(file: File) -> Iterator[Found]:
    """Yield files that are too large, and books of too many formulas."""
    size = sum(one.compress_size for one in file.zipped) + _directory(file)
    if size >= SIZE:
        yield "workbook", f"{size:,} bytes, limit {SIZE:,}"
    if len(file.formulas) >= FORMULAS:
        yield "workbook", f"{len(file.formulas):,} formulas, limit {FORMULAS:,}"


def _directory(file: File) -> int:
    """Return what the zip format adds to the parts [bytes]: two headers a part and an end."""
    return sum(76 + 2 * len(one.filename) for one in file.zipped) + 22
