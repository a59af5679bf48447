"""Seeds faults in a book, works it out and asks every finder; tells which found what.

Faults that do not rest on one another are worked out together.  One that is not found for
certain in company is tried again alone, and then in other books.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from builder.engine.values import Values
from builder.resolve.cells import Place
from tests.seeded import filed, finders, typed
from tests.seeded.bench import Bench, Case
from tests.seeded.changes import elsewhere
from tests.seeded.drawn_faults import Fault, head_or_typed
from tests.seeded.papers import Papers
from tests.seeded.summed import is_alike
from tests.seeded.summed_start import Summed

TRIES = 3
"""Books in which a fault that shows is tried before it counts as not found."""
NUMBERS_IN = 8
"""Sound books in which a changed number is tried."""
TOGETHER = 12
"""Most faults worked out at once."""
ERRORS = ("#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!", "#ERROR!",
          "#CIRC!", "#N/IMPL!", "#SPILL!", "#CALC!")
ANYWHERE: Place = ("", -1, -1)
"""Found wrong, with no place to it."""
LOOKS_AT = {
    "second calculation of the trade": {"Takeoff", "Cutting", "CutList", "Orders", "Price", "Data",
                                        "Inputs", "Rates", "Catalog"},
    "boards sawn": {"Cutting", "CutList", "Data"}, "plane geometry": {"Drawing"},
    "papers again": {"Drawing", "Quote", "Tape", "Yard", "LaunchForm", "Upkeep", "SiteVisit",
                     "Curves"},
    "worked page": {"Worked"}, "printed answers": {"Proof", "Data"}, "twin column": {"Proof"}}
"""Finders that take time, and the sheets for whose faults they are asked in company."""
LAST_RESORT = ("worked page", "twin column", "file read again")
"""Finders that hold one part of the workbook against another part, or against its own file."""


@dataclass
class Verdict:
    """What became of a fault: which finders found it; in how many books it changed
    a value and was tried, and in how many it changes the value of its cell at all."""

    fault: Fault
    found_by: set[str] = field(default_factory=set)
    case: str = ""
    shown_in: int = 0
    alive: int = 0

    @property
    def first(self) -> str:
        """The finder it is counted under: the first in the order of the list."""
        return next((name for name in ORDER if name in self.found_by), "")


def error_values(case: Case, values: Values) -> Iterable[Place]:
    """Where an error value shows."""
    return (place for place, value in values.items() if value in ERRORS)


ORDER = ("second calculation", "second calculation of the trade", "printed answers",
         "plane geometry", "boards sawn", "entries by rule", "waits for entries", "summed again",
         "papers again", "error value", *LAST_RESORT)


class Judge:
    """A bench, the finders, and which sheets each of them can say something of."""

    def __init__(self, bench: Bench, tell: Callable[[str], None] = lambda line: None):
        self.bench, self.tell = bench, tell
        self._after: dict[Place, set[Place]] = {}
        self.finders: dict[str, list[Callable]] = {
            "second calculation": [finders.second],
            "second calculation of the trade": [finders.ledgers],
            "printed answers": [finders.printed],
            "plane geometry": [finders.drawing],
            "boards sawn": [finders.boards],
            "entries by rule": [typed.states, typed.in_use],
            "waits for entries": [lambda c, v: typed.waits(bench, c, v)],
            "summed again": [Summed(bench)],
            "papers again": [Papers(bench)],
            "error value": [error_values],
            "worked page": [finders.multiplied_out, finders.shown_again],
            "twin column": [finders.twin],
        }
        self.inputs = {"Inputs", "Sections", "Rates", "Readings", "Catalog", "Orders"}

    def find(self, case: Case, values: Values, sheets: set[str] | None = None,
             ) -> dict[str, set[Place]]:
        """Return what each finder finds, without what it finds in the sound book.

        With ``sheets`` only those are asked that look at one of them.
        """
        found: dict[str, set[Place]] = {}
        for name, several in self.finders.items():
            if sheets is not None and name in LOOKS_AT and not LOOKS_AT[name] & sheets:
                found[name] = set()
                continue
            found[name] = {place for one in several for place in _asked(one, case, values)}
        if values is not case.values:
            sound = self.sound(case)
            found = {name: places - sound[name] for name, places in found.items()}
        return found

    def sound(self, case: Case) -> dict[str, set[Place]]:
        """Return what the finders find in a book with no fault in it: next to nothing."""
        if "sound" not in case.notes:
            case.notes["sound"] = self.find(case, case.values)
        return case.notes["sound"]

    def run(self, faults: list[Fault], cases: list[Case]) -> list[Verdict]:
        """Try every fault in books in which it shows until it is found, or a few have been tried.

        A formula that stands in several section columns is changed in one in which the change
        shows: the fault is that of the line, whatever the column.
        """
        verdicts = [Verdict(fault) for fault in faults]
        self._on_file(verdicts)
        shows = self.scan(verdicts, cases)
        for number, case in enumerate(cases):
            left = []
            for verdict in verdicts:
                able = shows[id(verdict)].get(number)
                if not verdict.found_by and able and (
                        verdict.shown_in < TRIES or case.kind != "sound"):
                    left.append((verdict, able))
            if not left:
                continue
            self.bench.type_in(case)
            packs = self.packs(left)
            self.tell(f"{case.name}: {len(left)} faults in {len(packs)} books")
            for pack in packs:
                self._together(pack, case)
        return verdicts

    def scan(self, verdicts: list[Verdict], cases: list[Case]) -> dict[int, dict[int, list[Fault]]]:
        """Return for each fault the books in which it changes the value of its cell, and where.

        All changed formulas are worked out beside the sound book, so that one working-out of a
        book serves them all.  Of a number that is changed, every book may show it.
        """
        tried = [(v, fault) for v in verdicts if str(v.fault.after).startswith("=")
                 for fault in v.fault.across(self.bench.cells)]
        shows: dict[int, dict[int, list[Fault]]] = {id(v): {} for v in verdicts}
        self.bench.try_out([elsewhere(str(f.after), f.sheet) for _, f in tried])
        for number, case in enumerate(cases):
            self.bench.type_in(case)
            for (verdict, fault), value in zip(tried, self.bench.tried(), strict=True):
                if self._may_show(fault, case) and not is_alike(value, case.values[fault.place]):
                    shows[id(verdict)].setdefault(number, []).append(fault)
            for verdict in verdicts:
                if not str(verdict.fault.after).startswith("=") and verdict.fault.kind != "mark" \
                        and self._may_show(verdict.fault, case) and (
                            number < NUMBERS_IN or case.kind != "sound"):
                    shows[id(verdict)][number] = [verdict.fault]
        self.bench.clear_tried()
        for verdict in verdicts:
            verdict.alive = len(shows[id(verdict)])
        return shows

    def _may_show(self, fault: Fault, case: Case) -> bool:
        return case.kind == "sound" or head_or_typed(fault, self.inputs)

    def _on_file(self, verdicts: list[Verdict]) -> None:
        """Judge marks, which need no working out, by the text of the formulas."""
        expected = typed.expected_marks(self.bench)
        for verdict in verdicts:
            if verdict.fault.kind == "mark":
                due = verdict.fault.place in expected
                if due != (verdict.fault.after == 1.0):
                    verdict.found_by.add("waits for entries")

    def packs(self, left: list[tuple[Verdict, list[Fault]]]) -> list[list[Verdict]]:
        """Return the faults in groups of which none rests on another of its group.

        Each takes the first of its columns that fits a group.
        """
        packs: list[list[Verdict]] = []
        for verdict, able in left:
            for pack in packs:
                fits = [f for f in able if len(pack) < TOGETHER and self._apart(f, pack)]
                if fits:
                    verdict.fault = fits[0]
                    pack.append(verdict)
                    break
            else:
                verdict.fault = able[0]
                packs.append([verdict])
        return packs

    def _apart(self, fault: Fault, pack: list[Verdict]) -> bool:
        after = self.after(fault)
        return not any(other.fault.place in after or fault.place == other.fault.place
                       or fault.place in self.after(other.fault) for other in pack)

    def after(self, fault: Fault) -> set[Place]:
        """Return what rests on the place of a fault."""
        if fault.place not in self._after:
            self._after[fault.place] = self.bench.resting.after(fault.place)
        return self._after[fault.place]

    def _together(self, pack: list[Verdict], case: Case) -> None:
        values = self._seeded(pack)
        on = {verdict.fault.sheet for verdict in pack}
        found = self.find(case, values, on if len(pack) > 1 else None)
        touched: Counter[str] = Counter()
        for verdict in pack:
            touched.update({p[0] for p in self.after(verdict.fault)} | {verdict.fault.sheet})
        again = []
        for verdict in pack:
            own = self.after(verdict.fault) | {verdict.fault.place}
            for other in pack:
                if other is not verdict:
                    own = own - self.after(other.fault) - {other.fault.place}
            if not self._shows(verdict.fault, own, case, values):
                continue
            verdict.shown_in += 1
            for name, places in found.items():
                if any(p in own or (p[1] < 0 and touched[p[0]] == 1)
                       or (p == ANYWHERE and len(pack) == 1) for p in places):
                    verdict.found_by.add(name)
            verdict.case = case.name
            if not verdict.found_by:
                again.append(verdict)
        for verdict in again if len(pack) > 1 else ():
            found = self.find(case, self._seeded([verdict]))
            verdict.found_by |= {name for name, places in found.items() if places}

    def _seeded(self, pack: list[Verdict]) -> Values:
        """Return the values with some faults in place; they are put right again."""
        for verdict in pack:
            self.bench.put(verdict.fault.place, verdict.fault.after)
        values = self.bench.work()
        for verdict in pack:
            self.bench.restore(verdict.fault.place)
        return values

    def _shows(self, fault: Fault, own: set[Place], case: Case, values: Values) -> bool:
        """Say whether a fault changes a value at all in this book."""
        if fault.place in values:
            return not is_alike(values[fault.place], case.values[fault.place])
        if fault.kind == "published example":
            return True
        return any(p in values and not is_alike(values[p], case.values[p])
                   for p in self.after(fault))


def _asked(finder: Callable, case: Case, values: Values) -> list[Place]:
    """Return what a finder finds; where a word stands for a number it finds the book unfit."""
    try:
        return list(finder(case, values))
    except (TypeError, ValueError, KeyError, IndexError, ZeroDivisionError):
        if values is case.values:
            raise
        return [ANYWHERE]


def on_file(verdicts: list[Verdict]) -> None:
    """Count as found what the files of published values say, for values not found otherwise."""
    for verdict in verdicts:
        fault = verdict.fault
        if fault.kind == "published value" and not filed.on_file(fault.place, fault.after):
            verdict.found_by.add("file read again")
        if fault.kind == "published example" and not filed.is_example(fault.place, fault.after):
            verdict.found_by.add("file read again")


def shares(verdicts: list[Verdict]) -> dict[str, tuple[int, int]]:
    """Return sheet → (found, seeded)."""
    found: dict[str, list[int]] = defaultdict(lambda: [0, 0])
    for verdict in verdicts:
        found[verdict.fault.sheet][0] += bool(verdict.found_by)
        found[verdict.fault.sheet][1] += 1
    return {sheet: (a, b) for sheet, (a, b) in found.items()}
