"""The whole trial: the books, the faults, what found them, and the report of it."""

from __future__ import annotations

import csv
import re
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from builder.sheets.book import model
from tests.second.drawn import LETTERS, random_jobs
from tests.seeded import drawn_faults
from tests.seeded.bench import Bench, Case, proof_entries
from tests.seeded.drawn_faults import Fault
from tests.seeded.judging import LAST_RESORT, ORDER, Judge, Verdict, on_file, shares
from tests.seeded.typed import edge_cases, wanting_cases, wide_job

BOOKS = {False: 4, True: 40}
"""Random jobs in which a fault may show, in the normal run and in the whole."""
WIDE = {False: 1, True: 8}
"""Jobs in which every list gives another word."""
FEWER = {False: (2,), True: (1, 2, 3)}
"""Jobs with so few section types."""
WANTING = {False: 1, True: 10}
"""Jobs with a few wrong entries."""
SEED = 606
REASONS = Path(__file__).with_name("survivors.csv")


def cases(bench: Bench, whole: bool = True) -> list[Case]:
    """Return the books in the order in which they are tried."""
    jobs = random_jobs(SEED, BOOKS[whole] + len(FEWER[whole]))
    jobs, few = jobs[:BOOKS[whole]], jobs[BOOKS[whole]:]
    jobs += [replace(job, sections=tuple(without_holder(s) for s in job.sections[:count]))
             for job, count in zip(few, FEWER[whole], strict=True)]
    jobs += [wide_job(job, number) for number, job in enumerate(jobs[:WIDE[whole]])]
    sound = []
    for number, job in enumerate(jobs):
        used = len(job.sections)
        chosen = {"worked_type": LETTERS[number % used], "yard_type": LETTERS[(number + 1) % used]}
        job = replace(job, inputs={**job.inputs, **free_words(), **chosen})
        sound.append(Case(f"random job {number}", job, proof_entries(number),
                          notes={"proof": number}))
    first = sound[0].job
    return [*sound, *edge_cases(first, whole), *wanting_cases(bench, first, WANTING[whole])]


def free_words() -> dict[str, str]:
    """Return words for every input that takes any words, each its own."""
    return {ask.key: f"word {k}" for k, ask in enumerate(model().job_inputs()) if ask.free}


def without_holder(section: dict) -> dict:
    """Return a section that names no neighbour: it may be one that is not there."""
    return {key: value for key, value in section.items() if key != "held_by"}


@dataclass(frozen=True)
class Reason:
    """Why faults of a kind cannot be found, or are not: which they are, and the reason."""

    sheet: str
    kind: str
    pattern: str
    reason: str

    def holds_for(self, fault: Fault) -> bool:
        """Say whether a fault is of this kind."""
        return (self.sheet in ("", fault.sheet) and self.kind in ("", fault.kind)
                and re.search(self.pattern, f"{fault.before} -> {fault.after}") is not None)


@cache
def reasons() -> list[Reason]:
    """Return the reasons on file."""
    lines = REASONS.read_text(encoding="utf-8").splitlines()
    return [Reason(*line) for line in csv.reader(x for x in lines[1:] if x)]


@dataclass
class Trial:
    """What came of it."""

    verdicts: list[Verdict]
    cases: list[Case]
    worked: int

    @property
    def sleeping(self) -> list[Verdict]:
        """The faults that alter no value in any book, and that no text of a file tells."""
        return [v for v in self.verdicts if not v.found_by and not v.shown_in]

    @property
    def survivors(self) -> list[Verdict]:
        """The faults that alter a value and that nothing found."""
        return [v for v in self.verdicts if not v.found_by and v.shown_in]

    @property
    def share(self) -> float:
        """Share of the faults that alter a value which were found."""
        return 1 - len(self.survivors) / (len(self.verdicts) - len(self.sleeping))

    @property
    def share_of_all(self) -> float:
        """Share of all faults that were found."""
        return sum(bool(v.found_by) for v in self.verdicts) / len(self.verdicts)

    @property
    def share_apart(self) -> float:
        """Share of those that alter a value found without the last resorts.

        These hold one part of the workbook against another, or Data against its files.
        """
        found = [v for v in self.verdicts if v.found_by - set(LAST_RESORT)]
        return len(found) / (len(self.verdicts) - len(self.sleeping))

    def report(self) -> str:
        """Return the report: by sheet, by finder, survivors with their reasons."""
        lines = [f"{len(self.verdicts)} faults in {self.worked} books worked out; "
                 f"{len(self.sleeping)} alter no value in any of {len(self.cases)}; of the others "
                 f"{self.share:.1%} are found, without the last resorts "
                 f"({', '.join(LAST_RESORT)}) {self.share_apart:.1%}; of all "
                 f"{self.share_of_all:.1%}", "", "by sheet:"]
        lines += [f"  {sheet:12} {a:4} of {b}" for sheet, (a, b) in shares(self.verdicts).items()]
        kinds = Counter(v.fault.kind for v in self.verdicts)
        found = Counter(v.fault.kind for v in self.verdicts if v.found_by)
        lines += ["", "by kind of change:"]
        lines += [f"  {kind:18} {found[kind]:4} of {count}" for kind, count in kinds.items()]
        first = Counter(v.first for v in self.verdicts if v.found_by)
        lines += ["", "counted under the first that found it, of several in this order:"]
        lines += [f"  {name:36} {first[name]:4}" for name in ORDER]
        lines += ["", f"alter a value and are not found: {len(self.survivors)}"]
        lines += [f"  {v.fault}\n      shows in {v.alive} books, tried in {v.shown_in}: "
                  f"{reason_for(v.fault) or 'NO REASON ON FILE'}" for v in self.survivors]
        lines += ["", f"alter no value in any book: {len(self.sleeping)}"]
        lines += [f"  {v.fault}" for v in self.sleeping]
        return "\n".join(lines)


def reason_for(fault: Fault) -> str:
    """Return the reason on file why a fault is not found; empty where there is none."""
    return next((r.reason for r in reasons() if r.holds_for(fault)), "")


def run(whole: bool, tell: Callable[[str], None] = lambda line: None) -> Trial:
    """Seed every fault, or the fixed choice of the normal run."""
    bench = Bench()
    faults = drawn_faults.all_faults(bench) if whole else drawn_faults.some_faults(bench)
    tried = cases(bench, whole)
    verdicts = Judge(bench, tell).run(faults, tried)
    on_file(verdicts)
    return Trial(verdicts, tried, bench.worked)
