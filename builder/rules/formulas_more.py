"""Rules F09 to F13: errors swallowed, rounding, chains of links, empty cells, warnings."""

from __future__ import annotations

import re
from collections.abc import Iterator

from builder.engine.values import address
from builder.rules import layout
from builder.rules.findings import Found, rule
from builder.rules.formulas import called
from builder.rules.looks import looks, typed
from builder.rules.reading import File, functions, spots

ROUNDING = ("INT", "ROUND", "ROUNDUP", "ROUNDDOWN", "CEILING", "FLOOR", "MROUND", "TRUNC", "FIXED")
COUNTED = ("Parts", "Decking", "Takeoff", "Cutting", "CutList", "Orders", "Price", "Rates",
           "Hardware", "Setout", "Tape", "Yard", "Quote", "Upkeep", "Drawing", "Proof", "Worked")
"""Sheets on which pieces are counted, bought, cut, paid or put in words."""
_LINK = re.compile(r"=(\w+!)?\$?[A-Z]+\$?\d+")


@rule("F09", "Check what is looked up before it is used; let the state say NEEDS INPUT.")
def nothing_swallowed(file: File) -> Iterator[Found]:
    """Yield functions that turn an error into something else."""
    for place, name in called(file):
        if name in ("IFERROR", "IFNA", "ISERROR", "ISERR", "ISNA"):
            yield place, f"{name} swallows an error"


@rule("F10", "Keep the figure as it is; round where pieces are counted, cut, bought or paid.")
def no_rounding_on_the_way(file: File) -> Iterator[Found]:
    """Yield rounding on sheets of calculation."""
    for place, name in called(file):
        if name in ROUNDING and place[0] not in COUNTED:
            yield place, f"{name} rounds"


@rule("F11", "Link to the source itself.")
def no_chain_of_links(file: File) -> Iterator[Found]:
    """Yield links to a cell that is itself a link.

    That the symbols shown are those of the formula follows from the one declaration of both; the
    tests of the language prove it on the resolved book.
    """
    bare = {p: file.areas[p][0][:3] for p, f in file.formulas.items()
            if _LINK.fullmatch(f) and file.areas[p]}
    for place, target in bare.items():
        if target in bare:
            yield place, f"links to {address(target)}, which is a link"


@rule("F12", "Refer to filled cells of labelled rows, and to the whole of a series.")
def nothing_empty(file: File) -> Iterator[Found]:
    """Yield references to empty cells, to rows without a label, and sums that leave a row out."""
    may = set(typed(file))
    labelled = {(s, r) for (s, r, c), held in file.cells.items()
                if c <= 1 and isinstance(held.value, str)}
    known: dict[tuple, str] = {}
    for place, areas in file.areas.items():
        for where in dict.fromkeys(areas):
            if where not in known:
                known[where] = _lacks(file, where, may, labelled)
            if known[where]:
                yield place, known[where]
    yield from _left_out(file)


def _lacks(file: File, where, may: set, labelled: set) -> str:
    for spot in spots(where):
        if spot not in file.cells and spot not in may:
            return f"{address(spot)} is empty"
        if spot[:2] not in labelled:
            return f"{address(spot)} has no label"
    return ""


def _left_out(file: File) -> Iterator[Found]:
    """Yield sums that leave out a row like those they take: of the same words but for numbers."""
    for place, formula in file.formulas.items():
        if not {"SUM", "SUMPRODUCT", "MAX", "MIN"} & set(functions(formula)):
            continue
        for sheet, top, _, bottom, _ in dict.fromkeys(file.areas[place]):
            if top == bottom or sheet in ("Data", "Catalog"):
                continue
            taken = {_stem(file.text(sheet, row)) for row in range(top, bottom + 1)}
            for row in (top - 1, bottom + 1):
                if len(taken) == 1 and _stem(file.text(sheet, row)) in taken:
                    yield place, f"leaves out {sheet} row {row + 1}"


def _stem(label: str) -> str:
    return re.sub(r"[\d.,]+", "#", label)


@rule("F13", "Mend what the warning is about; do not mask it.")
def no_warnings(file: File) -> Iterator[Found]:
    """Yield masked warnings, numbers kept as text, and formulas that are not locked."""
    for sheet in file.sheets:
        for one in sheet.all("ignoredError"):
            yield sheet.name, f"warnings are masked in {one.get('sqref')}"
    free = {n for n, look in enumerate(looks(file)) if not look.locked}
    text = {n for n, look in enumerate(looks(file)) if look.number == "@"}
    for sheet in file.sheets:
        for at, held in sheet.held.items():
            if held.formula is not None and sheet.look.get(at) in free:
                yield (sheet.name, *at), "a formula that is not locked"
            elif held.kind == "s" and sheet.look.get(at) not in text and at[0] >= layout.TOP \
                    and at[1] > 0 and re.fullmatch(r"-?\d+(\.\d+)?", str(held.value)):
                yield (sheet.name, *at), f"the number {held.value} is kept as text"
