"""Every rule run on a file; the command that says what was found."""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Sequence
from pathlib import Path

from builder.rules import (  # noqa: F401  each enters its rules in the table
    accessibility,
    engineering,
    formulas,
    formulas_more,
    inputs,
    paper,
    safety,
    structure,
    values,
)
from builder.rules.findings import RULES, Finding, not_waived
from builder.rules.reading import File, NoWorkbook, read_bytes

NOT_BY_PROGRAM = {
    "V05": "a rule for the tests and not for a file: they recalculate with a profile that always "
           "does, and a planted wrong value must be found",
    "X02": "the program writes no CSV",
    "X07": "a rule for the rules: the tests plant a breach for each one and must see it found",
}
"""Rules that no function on a file can check, with the reason."""


def check(file: File) -> list[Finding]:
    """Return every breach of every rule in a file, in the order of the rules."""
    return [one for number in sorted(RULES) for one in RULES[number].findings(file)]


def told(findings: Sequence[Finding]) -> list[str]:
    """Return a line and how to mend it for each row, not for each of its six section columns."""
    rows = Counter(one.row for one in findings)
    lines = []
    for one in findings:
        count = rows.pop(one.row, 0)
        if count:
            more = f"  (and {count - 1} more in the row)" if count > 1 and one.cell else ""
            lines += [f"  {one}{more}", f"       mend: {one.mend}"]
    return lines


def command(paths: Sequence[Path]) -> int:
    """Check files and print what was found; return 0, or 1 if a breach stands or none was read."""
    bad = False
    for path in paths:
        try:
            file = read_bytes(path, path.read_bytes())
        except NoWorkbook as fault:
            print(f"{path.name}: cannot be checked: {fault}", file=sys.stderr)
            bad = True
            continue
        except OSError as fault:
            print(f"{path}: cannot be read: {fault.strerror}", file=sys.stderr)
            bad = True
            continue
        found = check(file)
        stand = not_waived(found)
        for line in told(stand):
            print(line)
        print(f"{path.name}: {len(stand)} findings, {len(found) - len(stand)} waived with a "
              f"reason; {len(RULES)} rules checked, {len(NOT_BY_PROGRAM)} not by program",
              flush=True)
        bad = bad or bool(stand)
    return 1 if bad else 0
