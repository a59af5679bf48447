"""What sheets of ours look like, told from their heads: which kind each is, where columns stand.

The names and columns here are those of the written workbooks; a test fails when they move.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from builder.resolve.cells import Place
from builder.resolve.frame import DASH, FIRST, HEAD, LISTED, SECTIONS, STATE, TOP
from builder.rules.reading import File, spots

VERDICTS = ("not used", "NEEDS INPUT", "OK", "LOOK", "NOT OK")
LETTERS = tuple(SECTIONS)
COLUMNS = range(FIRST, FIRST + len(SECTIONS))
SECTION = ("Item", "Symbol", "Formula", "Unit", *LETTERS, "Source")
JOB = ("Item", "Symbol", "Formula", "Unit", "Value", "Source")
JOB_INPUTS = ("Item", "Symbol", "Type here", "Unit", "Least", "Most", "Default if blank", "State",
              "Value used", "Basis")
SECTION_INPUTS = ("Item", "Symbol", "Allowed", "Unit", *LETTERS, "Basis", "Least", "Most",
                  "Default if blank")
LEDGER = ("Item", "Specification")
WORKED = ("Item", "Symbol", "Formula", "With the numbers put in", "Result", "Unit", "Source")
HEADS = {"section": SECTION, "job": JOB, "job inputs": JOB_INPUTS,
         "section inputs": SECTION_INPUTS, "worked": WORKED}
BASIS = ("Inputs", "Sections", "Catalog", "Data")
"""Sheets of the design basis."""
TEXT_SHEETS = ("Worked", "Quote", "Yard", "Tape", "Upkeep", "SiteVisit", "LaunchForm")
"""Sheets whose formulas are words: they may be longer."""
PAPER = ("Quote", "Yard", "LaunchForm", "Upkeep", "SiteVisit", "Drawing")
"""Sheets that are paper for people: what is worked stands beside or below what is printed."""
BESIDE = (*PAPER, "Checks")
"""Sheets with something beside what is printed: what only other cells read."""
OUTPUTS = (*PAPER, "Start", "Checks", "Proof", "Worked", "Curves", "Takeoff", "Cutting", "CutList",
           "Orders", "Price", "Tape")
"""Sheets whose lines are results for a reader; a line there need not be read by another."""
FREE = "Free"
_VERDICT = re.compile(r"=INDEX\(Data!\$A\$\d+:\$A\$\d+,1\+([A-Z]+\$\d+)\+IF\(\1=2,(.+),0\)\)")


def head(file: File, sheet: str) -> tuple[str, ...]:
    """Return the words of the row of heads, up to the first empty one."""
    found: list[str] = []
    while word := file.text(sheet, HEAD, len(found)):
        found.append(word)
    return tuple(found)


def first_rows(file: File, sheet: str) -> dict[int, int]:
    """Return the first row with the same label, of each row of a ledger; of others, nothing."""
    if head(file, sheet)[:2] != LEDGER:
        return {}
    labels = {row: held.value for (row, col), held in file.sheet(sheet).held.items() if col == 0}
    first: dict[object, int] = {}
    for row in sorted(labels):
        first.setdefault(labels[row], row)
    return {row: first[label] for row, label in labels.items()}


def kind(file: File, sheet: str) -> str:
    """Return the kind of a sheet by its heads: a key of ``HEADS``, or nothing."""
    found = head(file, sheet)
    return next((k for k, words in HEADS.items() if found == words), "")


def of_kind(file: File, *kinds: str) -> list[str]:
    """Return the sheets of some kinds, in order."""
    return [s.name for s in file.sheets if kind(file, s.name) in kinds]


def rows(file: File, sheet: str) -> Iterator[int]:
    """Yield the rows of a section sheet that work something out, below its heads."""
    found = file.sheet(sheet)
    yield from sorted({p[1] for p in found.formulas if p[2] in COLUMNS and p[1] >= TOP})


def verdict(formula: str) -> re.Match | None:
    """Return the parts of a formula that is of the one form of a verdict: state, and the rest."""
    return _VERDICT.fullmatch(formula)


def verdict_cells(file: File) -> list[Place]:
    """Return the cells in which a verdict is worked out, by their formula."""
    if "verdicts" not in file.kept:
        file.kept["verdicts"] = [p for p, f in file.formulas.items()
                                 if f.startswith("=INDEX(Data!$A$") and verdict(f)]
    return file.kept["verdicts"]


def verdict_words(file: File) -> list[object]:
    """Return the list of words that verdicts take theirs from."""
    cells = verdict_cells(file)
    if not cells:
        return []
    return [file.value(*p) for p in spots(file.areas[cells[0]][0])]


def state(file: File, place: Place) -> object:
    """Return the state of the section column a cell stands in."""
    return file.value(place[0], STATE, place[2])


__all__ = ["BASIS", "COLUMNS", "DASH", "FREE", "HEAD", "HEADS", "LETTERS", "LISTED", "OUTPUTS",
           "PAPER", "STATE", "TEXT_SHEETS", "TOP", "VERDICTS", "first_rows", "head", "kind",
           "of_kind", "rows", "state", "verdict", "verdict_cells", "verdict_words"]
