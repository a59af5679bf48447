"""Breaches planted in a copy of a delivered workbook: one thing changed in one of its parts."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from xml.sax.saxutils import escape

from builder.engine.values import a1, row_col
from builder.rules.checking import RULES
from builder.rules.findings import Finding
from builder.rules.reading import File, read

ROOT = Path(__file__).resolve().parents[2]
OUTPUTS = sorted((ROOT / "outputs").glob("*.xlsx"))
BASE = next(path for path in OUTPUTS if path.stem == "swim_platform")


@cache
def findings(number: str, path: Path) -> tuple[Finding, ...]:
    """Return what a rule finds in a delivered file, worked out once."""
    return tuple(RULES[number].findings(read(path)))


def new(number: str, file: File) -> list[Finding]:
    """Return what a rule finds in a changed file and not in the file it came from."""
    before = set(findings(number, BASE))
    return [one for one in RULES[number].findings(file) if one not in before]


@dataclass(frozen=True)
class Plant:
    """A copy of the base workbook that may be changed part by part."""

    file: File

    def part(self, name: str, old: str, fresh: str, pattern: bool = False) -> Plant:
        """Put one text in place of another in a part; it must be there."""
        text = self.file.parts[name].decode()
        done = re.sub(old, lambda m: m.expand(fresh), text, count=1, flags=re.DOTALL) if pattern \
            else text.replace(old, fresh, 1)
        assert done != text, f"{old} is not in {name}"
        return replace(self, file=self.file.changed({name: done.encode()}))

    def sheet(self, sheet: str, old: str, fresh: str, pattern: bool = False) -> Plant:
        """Put one text in place of another in the part of a sheet."""
        return self.part(self.file.sheet(sheet).part, old, fresh, pattern)

    def add(self, name: str, content: bytes) -> Plant:
        """Put a part in."""
        return replace(self, file=self.file.changed({name: content}))

    def cell(self, at: str, formula: str | None = None, value: str | float | None = None,
             error: bool = False) -> Plant:
        """Put a formula, a value, or both in a cell that is there; nothing empties it."""
        sheet, _, cell = at.partition("!")
        found = self.file.sheet(sheet)
        look = found.look[row_col(cell)]
        text = isinstance(value, str)
        held = "" if formula is None else f"<f>{escape(formula)}</f>"
        kind = "e" if error else "str" if text and formula else "inlineStr" if text else "n"
        if value is not None:
            given = escape(str(value))
            held += f"<is><t>{given}</t></is>" if kind == "inlineStr" else f"<v>{given}</v>"
        return self.sheet(sheet, rf'<c (?:t="\w+" )?(?:s="\d+" )?r="{cell}"(?:/>|>.*?</c>)',
                          f'<c t="{kind}" s="{look}" r="{cell}">{held}</c>'.replace("\\", r"\\"),
                          True)

    def row_of(self, sheet: str, label: str) -> int:
        """Return the number of the row that begins with some words, counted from 1."""
        return 1 + next(row for (row, col), held in self.file.sheet(sheet).held.items()
                        if col == 0 and held.value == label)


def base() -> Plant:
    """Return a copy of the base workbook."""
    return Plant(read(BASE))


def first(file: File, sheet: str, wanted) -> str:
    """Return the first cell of a sheet whose (place, held) is wanted, with its sheet."""
    for at, held in file.sheet(sheet).held.items():
        if wanted((sheet, *at), held):
            return f"{sheet}!{a1(*at)}"
    raise AssertionError(f"no such cell on {sheet}")
