"""What a rule finds in a workbook file, and what is waived with a reason."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from builder.engine.values import address
from builder.resolve.cells import Place
from tests.outputs.reading import Read

WAIVERS = Path(__file__).with_name("waivers.csv")


@dataclass(frozen=True)
class Finding:
    """A breach of a rule: where, in which row, and what was found."""

    rule: str
    place: Place
    label: str
    what: str

    def __str__(self) -> str:
        return f"{self.rule} {address(self.place)} ({self.label}): {self.what}"


@dataclass(frozen=True)
class Waiver:
    """A breach that is meant: patterns for sheet, row label and finding, and the reason."""

    rule: str
    sheet: str
    row: str
    what: str
    reason: str

    def covers(self, finding: Finding) -> bool:
        """Say whether a finding is one of those that are meant."""
        return (finding.rule == self.rule
                and re.fullmatch(self.sheet, finding.place[0]) is not None
                and re.match(self.row, finding.label) is not None
                and re.search(self.what, finding.what) is not None)


def waivers() -> list[Waiver]:
    """Return what is waived, from ``waivers.csv``."""
    with WAIVERS.open(encoding="utf-8", newline="") as stream:
        return [Waiver(**line) for line in csv.DictReader(stream)]


def found_at(file: Read, rule: str, place: Place, what: str) -> Finding:
    """Return a finding with the label of its row: the first words in it."""
    label = file.text(place[0], place[1]) or "no label"
    return Finding(rule, place, label, what)


def not_waived(findings: Iterable[Finding]) -> list[Finding]:
    """Return the findings that no waiver covers."""
    given = waivers()
    return [one for one in findings if not any(w.covers(one) for w in given)]
