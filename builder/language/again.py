"""The same rows once more: with some replaced, or with published values put in.

``again`` makes load cases, ladders of sizes, cures and high and low water out of rows that stand
already; ``family`` works published examples by the sheets' own rows on the proof sheet.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from .expressions import Expr, dependencies, rebuilt
from .faults import Fault
from .rows import Ask, Calculated, Constant, Find, Row, Series, Sheet, Verdict


def rests_on(row: Row, changed: Mapping[Row, object], known: dict[Row, bool]) -> bool:
    """Return whether a row depends, at any depth, on one of the changed rows."""
    if row in changed:
        return True
    if row not in known:
        known[row] = False
        expr = getattr(row, "expr", None)
        expr = getattr(row, "default", None) if expr is None else expr
        needs = [] if expr is None else dependencies(expr)
        if isinstance(row, Verdict):
            needs = [r for r in (row.ratio, row.look) if r is not None]
        known[row] = any(rests_on(d, changed, known) for d in needs)
    return known[row]


def swapped(e: Expr, new: Mapping[Row, Expr]) -> Expr:
    """Return an expression with rows, and rows inside series, replaced."""

    def swap(leaf):
        if isinstance(leaf, Series):
            if any(r in new for r in leaf.rows):
                return Series(leaf.symbol, [new.get(r, r) for r in leaf.rows])
            return leaf
        return new.get(leaf, leaf) if isinstance(leaf, Row) else leaf

    return rebuilt(e, swap)


def again(sheet: Sheet, want: Row, change: Mapping[Row, Expr], tag: str,
          made: dict[Row, Expr] | None = None) -> Row:
    """Declare once more, on ``sheet``, the rows between the changed ones and the one wanted.

    Args:
        sheet: where the new rows stand, below what is there.
        want: the row whose value under the change is wanted.
        change: row → what stands in its place (a row, or an expression).
        tag: words added to labels and, in brackets, to symbols.
        made: rows made by earlier calls with the same change, to be shared; it is added to.

    Returns:
        the new row for ``want``, or ``want`` itself where it does not rest on the change.

    Raises:
        Fault: an input or a verdict would have to be copied.
    """
    known: dict[Row, bool] = {}
    new: dict[Row, Expr] = made if made is not None else {}
    for row, other in change.items():
        new.setdefault(row, other)

    def copy(row: Row) -> Expr:
        if row in new:
            return new[row]
        if not rests_on(row, change, known):
            return row
        if not isinstance(row, Calculated):
            what = "a verdict" if isinstance(row, Verdict) else "an input"
            raise Fault(f"again({tag}): {row.where} is {what} that rests on the change")
        for d in dependencies(row.expr):
            copy(d)
        expr = swapped(row.expr, new)
        label, symbol = f"{row.label} ({tag})", f"{row.symbol}[{tag}]" if row.symbol else ""
        if isinstance(row, Find):
            twin = Find(sheet, label, row.table, expr)
        else:
            twin = Calculated(sheet, label, symbol, row.unit, expr, row.source, row.digits)
        twin.origin, twin.key = row.origin, f"{row.key}_{tag}" if row.key else ""
        sheet.items.append(twin)
        new[row] = twin
        return twin

    return copy(want)


@dataclass(frozen=True)
class Case:
    """A published example: what is given, what is printed, where.

    ``given`` and ``printed`` map rows to numbers in the units of the family.  ``step`` is the
    rounding step of the print; ``wrong`` holds a printed value known to be wrong, whose right
    value stands in ``printed``; ``printed_by`` is ``published``, ``own`` or ``reconstructed``.
    """

    name: str
    given: Mapping[Row, float | str]
    printed: Mapping[Row, float]
    source: str
    step: Mapping[Row, float] = field(default_factory=dict)
    wrong: Mapping[Row, float] = field(default_factory=dict)
    printed_by: str = "published"
    note: str = ""


@dataclass(frozen=True)
class Family:
    """Published examples of one kind of formula, worked by the sheets' own rows.

    ``rows`` are the calculated rows in order; ``given`` the rows whose values each case gives.
    ``units`` maps a given or wanted row to (unit of the source, factor to the row's own unit).
    """

    key: str
    title: str
    want: tuple[Row, ...]
    given: tuple[Row, ...]
    rows: tuple[Row, ...]
    cases: tuple[Case, ...]
    units: Mapping[Row, tuple[str, float]]
    tolerance: str


def family(key: str, title: str, want: Sequence[Row], cases: Sequence[Case], *,
           units: Mapping[Row, tuple[str, float]] | None = None, tolerance: str = "") -> Family:
    """Gather the rows that lead from what the cases give to what they print.

    Raises:
        Fault: no case, cases that give different rows, or a row that is neither given nor
            calculated.
    """
    if not cases:
        raise Fault(f"family {key}: no cases")
    given = tuple(cases[0].given)
    for case in cases:
        if set(case.given) != set(given):
            raise Fault(f"family {key}, {case.name}: gives other rows than the first case")
    order: list[Row] = []

    def need(row: Row) -> None:
        if row in given or row in order or isinstance(row, Constant):
            return
        if isinstance(row, Ask) or getattr(row, "expr", None) is None:
            raise Fault(f"family {key}: {row.where} is neither given nor calculated")
        for d in dependencies(row.expr):
            need(d)
        order.append(row)

    for row in want:
        need(row)
    for case in cases:
        for row in {**case.printed, **case.wrong, **case.step}:
            if row not in want:
                raise Fault(f"family {key}, {case.name}: {row.where} is printed but not wanted")
        for row in case.wrong:
            if row not in case.printed:
                raise Fault(f"family {key}, {case.name}: {row.where} has no right value")
    for row in want:
        if not any(row in case.printed for case in cases):
            raise Fault(f"family {key}: {row.where} is wanted, no case prints it")
    return Family(key, title, tuple(want), given, tuple(order), tuple(cases), dict(units or {}),
                  tolerance)
