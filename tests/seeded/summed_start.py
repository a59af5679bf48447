"""Start, put together a second time from Checks and the states of what is typed."""

from __future__ import annotations

from collections.abc import Iterable

from builder.engine.values import Value, Values
from builder.resolve.cells import Place
from builder.resolve.frame import FIRST, STATE
from builder.sheets.book import model
from tests.seeded.bench import Bench, Case
from tests.seeded.summed import (
    COLUMNS,
    DASH,
    MASTER,
    ORDER,
    across,
    checks,
    differing,
    heads,
    judged,
    master,
)

RANK, LINE, CUT = FIRST + 4, FIRST + 5, FIRST + 6
HEAD_OF_CHECKS = 6
"""Line of Checks from which the places of its checks are counted, from 0."""


class StartPage:
    """Where the lines of Start stand, by their labels, and what they must show."""

    def __init__(self, bench: Bench):
        self.at: dict[str, list[int]] = {}
        for (sheet, y, x), cell in bench.cells.items():
            if sheet == "Start" and x == 0 and cell.kind == "text":
                self.at.setdefault(str(cell.content), []).append(y)

    def due(self, values: Values) -> dict[Place, Value]:
        """Return what Start must show."""
        front = model().declared.front
        due: dict[Place, Value] = {("Start", 1, 1): values[MASTER]}
        for label, row in front.headline:
            y = self.at[label][-1]
            due |= {("Start", y, x): v for x, v in zip(COLUMNS, across(row, values), strict=True)}
        for label, row in front.whole:
            due["Start", self.at[label][0], 1] = values[model().places.rows[row]]
        shown = checks(values)
        return (due | self._failing(values, shown) | self._groups(values, shown)
                | self._wanting(values))

    def _failing(self, values: Values, shown: dict[Place, Value]) -> dict[Place, Value]:
        failing = [(y, check) for group, lines in model().checks.groups.items()
                   for y, (_, check) in enumerate(lines, model().checks.rows[group][0])
                   if "NOT OK" in across(check.verdict, values)]
        top = self.at["What is wrong, and where: the first three"][0] + 2
        due: dict[Place, Value] = {}
        for k in range(3):
            hidden = self.at[f"NOT OK number {k + 1}, its line on Checks"][0]
            if k < len(failing):
                y, check = failing[k]
                cure = sentence(check.cure)
                told = (check.label, shown["Checks", y, 3], cure)
                due |= {("Start", hidden, LINE): y - HEAD_OF_CHECKS,
                        ("Start", hidden, CUT): letters_of(check.cure)}
            else:
                told = (DASH if k else "None: no check reads NOT OK", DASH, DASH)
                due |= {("Start", hidden, LINE): 0, ("Start", hidden, CUT): 0}
            due |= {("Start", top + k, x): word for x, word in enumerate(told)}
        return due

    def _groups(self, values: Values, shown: dict[Place, Value]) -> dict[Place, Value]:
        due: dict[Place, Value] = {}
        top = self.at["Checks by group"][0] + 2
        counted = self.at["How many read which, all section types"][0] + 2
        ranks: dict[str, int] = {}
        for k, (group, lines) in enumerate(model().checks.groups.items()):
            words = [across(check.verdict, values) for _, check in lines]
            counts = [sum(w.count(word) for w in words) for word in ORDER]
            rank = next((n for n in range(3) if counts[n]), 3)
            first = model().checks.rows[group][0]
            ratios = [shown["Checks", first + n, 2] for n in range(len(lines))]
            due |= {("Start", counted + k, FIRST + n): c for n, c in enumerate(counts)}
            due["Start", counted + k, RANK] = 1 + rank
            due["Start", top + k, 1] = ORDER[rank] if any(counts) else "not used"
            due["Start", top + k, 2] = (
                max((r for r in ratios if not isinstance(r, str)), default=0)
                if any(counts) else DASH)
            cure, long = "", 0
            if rank in (0, 2):
                at = next(n for n, w in enumerate(words) if ORDER[rank] in w)
                cure, long = sentence(lines[at][1].cure), letters_of(lines[at][1].cure)
                due["Start", counted + k, LINE] = 1 + at
            due |= {("Start", counted + k, CUT): long, ("Start", top + k, FIRST): cure or DASH}
            ranks[group] = rank if any(counts) else 9
        for words, groups in model().declared.front.questions:
            worst = min(ranks[g] for g in groups if g in ranks)
            due["Start", self.at[words][0], 1] = ORDER[worst] if worst < 9 else "not used"
        return due

    def _wanting(self, values: Values) -> dict[Place, Value]:
        due: dict[Place, Value] = {}
        wanting = False
        for part in model().typing.parts:
            y = self.at[f"{part.sheet.name}: first input wanted"][0]
            states = {a: model().typing.states[a] for a in part.sheet.inputs
                      if a in model().typing.states}
            if part.sections:
                due |= {("Start", y, x): values[part.sheet.name, STATE - 1, x] for x in COLUMNS}
                wanting |= any(values[part.sheet.name, STATE - 1, x] != DASH for x in COLUMNS)
            else:
                first = next((a.label for a, p in states.items() if values.get(p) == 0), DASH)
                due["Start", y, 1] = first
                wanting |= first != DASH
        due |= self._counted(values)
        counts = sum(float(v) for v in due.values() if isinstance(v, int | float)
                     and not isinstance(v, bool))
        due["Start", self.at["Is an input still wanted?"][0], 1] = (
            "see below" if wanting or counts else "none")
        return due

    def _counted(self, values: Values) -> dict[Place, Value]:
        """Return how many prices and lines of the catalog are not usable, and the first."""
        due: dict[Place, Value] = {}
        orders = {p for place, p in ledger_states(values).items()}
        wrong = sorted(p for p in orders if values[p] == 0)
        due["Start", self.at["Orders: prices that are not usable"][0], 1] = len(wrong)
        due["Start", self.at["Orders: first price wanted"][0], 1] = (
            f"row {wrong[0][1] + 1}" if wrong else DASH)
        for row in model().declared.none_left:
            label = f"{row.sheet.name}: {row.label.partition(':')[0]}"
            due["Start", self.at[label][0], 1] = values[model().places.rows[row]]
        total = 0
        for table in model().editable:
            unfit = [key for key, p in zip(table.keys, states_of(table), strict=True)
                     if values[p] == 0]
            total += len(unfit)
            y = self.at[f"Catalog, {table.title}: first line wanted"][0]
            due["Start", y, 1] = unfit[0] if unfit else DASH
        due["Start", self.at["Catalog lines that are not usable"][0], 1] = total
        return due


def sentence(words: str) -> str:
    """Return the first sentence of a cure."""
    first, stop, _ = words.partition(". ")
    return first + "." if stop else words


def letters_of(words: str) -> int:
    """Return where the first sentence of a cure ends; one past the end where there is but one."""
    first, _, _ = words.partition(". ")
    return len(first) + 1


def ledger_states(values: Values) -> dict[Place, Place]:
    """Return typed cell → state, of the prices typed on Orders."""
    return {typed: (typed[0], typed[1], typed[2] + 1)
            for ask, typed in model().typing.typed.items() if ask.sheet.name == "Orders"
            if (typed[0], typed[1], typed[2] + 1) in values}


def states_of(table) -> list[Place]:
    """Return where the states of a catalog table's lines stand."""
    sheet, y, x = model().places.tables[table.name]
    return [(sheet, y + k, x + 1 + len(table.columns)) for k in range(len(table.keys))]


class Summed:
    """The finder of what is summed up wrongly; it knows where the lines of Start stand."""

    def __init__(self, bench: Bench):
        self.bench, self.start = bench, StartPage(bench)

    def __call__(self, case: Case, values: Values) -> Iterable[Place]:
        """Yield where Checks, Start or the head of a sheet shows something else than is due."""
        yield from differing(checks(values) | master(values), values)
        yield from differing(judged(values), values)
        yield from differing(self.start.due(values), values)
        yield from differing(heads(self.bench, values), values)
