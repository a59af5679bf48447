"""What a rule finds in a workbook file, how rules are listed, and what is waived with a reason."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from builder.engine.values import a1
from builder.resolve.cells import Place
from builder.rules.reading import File

WAIVERS = Path(__file__).with_name("waivers.csv")

Found = tuple[Place | str, str]
"""Where (a cell; or a sheet, name or part by its name) and what, as a rule yields it."""


@dataclass(frozen=True)
class Finding:
    """A breach of a rule: the rule, where, what was found, and how it is mended.

    ``sheet`` is the sheet, or the name or part where it is no sheet; ``cell`` is empty where no
    one cell is meant; ``label`` is the first words of the row.
    """

    rule: str
    sheet: str
    cell: str
    what: str
    mend: str
    label: str = ""

    @property
    def row(self) -> tuple[str, str, str]:
        """Rule, sheet and row: the findings of six section columns are one of these."""
        return self.rule, self.sheet, self.cell.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ")

    def __str__(self) -> str:
        where = f"{self.sheet}!{self.cell}" if self.cell else self.sheet
        label = f" ({self.label})" if self.label else ""
        return f"{self.rule} {where}{label}: {self.what}"


@dataclass(frozen=True)
class Rule:
    """A rule of the list: its number, its function, how a breach is mended."""

    id: str
    check: Callable[[File], Iterator[Found]]
    mend: str

    def findings(self, file: File) -> Iterator[Finding]:
        """Yield every breach of the rule in a file."""
        for where, what in self.check(file):
            if isinstance(where, str):
                yield Finding(self.id, where, "", what, self.mend)
            else:
                sheet, row, col = where
                yield Finding(self.id, sheet, a1(row, col), what, self.mend,
                              file.text(sheet, row) or "no label")


RULES: dict[str, Rule] = {}
"""Every rule that a program checks, by its number."""


def rule(number: str, mend: str) -> Callable:
    """Enter a function in the table of rules; ``mend`` says how a breach is mended.

    Raises ``ValueError`` if the number has a function already.
    """
    def enter(check: Callable[[File], Iterator[Found]]) -> Callable:
        if number in RULES:
            raise ValueError(f"two functions for the rule {number}")
        RULES[number] = Rule(number, check, mend)
        return check

    return enter


@dataclass(frozen=True)
class Waiver:
    """A breach that is meant: patterns for sheet, row label and finding, and the reason.

    An empty pattern for label or finding takes all: a waiver may name a whole sheet.
    """

    rule: str
    sheet: str
    row: str
    what: str
    reason: str

    def covers(self, finding: Finding) -> bool:
        """Say whether a finding is one of those that are meant."""
        return (finding.rule == self.rule
                and re.fullmatch(self.sheet, finding.sheet) is not None
                and re.match(self.row, finding.label) is not None
                and re.search(self.what, finding.what) is not None)


@cache
def waivers() -> tuple[Waiver, ...]:
    """Return what is waived, from ``waivers.csv``."""
    with WAIVERS.open(encoding="utf-8", newline="") as stream:
        return tuple(Waiver(**line) for line in csv.DictReader(stream))


def not_waived(findings: Iterable[Finding]) -> list[Finding]:
    """Return the findings that no waiver covers."""
    return [one for one in findings if not any(w.covers(one) for w in waivers())]
