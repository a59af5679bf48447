"""The proof of a row's unit: what its formula comes out in must be what the row declares."""

from __future__ import annotations

from .expressions import (
    AtPlace,
    Bare,
    Call,
    Column,
    Convert,
    Expr,
    Extreme,
    Joined,
    Key,
    Match,
    Negative,
    Num,
    OfType,
    Op,
    OrDash,
    Picked,
    PlaceOf,
    Ranked,
    Rules,
    Shown,
    SumOver,
    Tally,
    Text,
    Total,
)
from .faults import Fault
from .functions import FUNCTIONS, same_unit
from .rows import Constant, Row, Series, series_in
from .units import NONE, TEXT, Dimension, conversion, dimension, power, spelled, times

COMPARISONS = ("<", "<=", ">", ">=")


def unit_of(e: Expr) -> Dimension | str | None:
    """Return the dimension an expression comes out in.

    Returns:
        exponents of the base units; ``text`` for a word; None for a bare 0, which fits any unit.

    Raises:
        Fault: two units that cannot stand together.
    """
    return _RULES[type(e)](e)


def _declared(e: Row | Series) -> Dimension | str:
    return TEXT if e.unit == TEXT else dimension(e.unit)


def _of_whole(e: Negative | SumOver | OfType) -> Dimension | str | None:
    return unit_of(e.a)


def _converted(e: Convert) -> Dimension:
    conversion(_number(e.a), e.unit)
    return dimension(e.unit)


def _bare(e: Bare) -> Dimension:
    found = _number(e.a)
    if found != dimension(e.unit):
        raise Fault(f"its bare number is asked in {e.unit}, it is in {spelled(found)}")
    return NONE


def _entry(e: Column) -> Dimension | str:
    if _number(e.line) != NONE:
        raise Fault(f"a line number is in {spelled(_number(e.line))}")
    unit = TEXT if e.column is None else e.table.columns[e.column]
    return TEXT if unit == TEXT else dimension(unit)


def _at_number(e: Picked | Ranked | AtPlace) -> Dimension | str | None:
    """Return the dimension of what stands in one column or place of several."""
    if _number(e.number) != NONE:
        raise Fault(f"a number of a place is in {spelled(_number(e.number))}")
    return unit_of(e.a if isinstance(e, Picked) else e.series)


def _place_of(e: PlaceOf) -> Dimension:
    _one_kind(e.series.unit, e.x, f"the series {e.series.symbol}")
    return NONE


def _shown(e: Shown) -> str:
    _number(e.a)
    return TEXT


def _joined(e: Joined) -> str:
    for part in e.parts:
        if unit_of(part) != TEXT:
            raise Fault("a number stands among joined words; take its shown()")
    return TEXT


def _or_dash(e: OrDash) -> Dimension:
    if unit_of(e.test) not in (None, NONE):
        raise Fault("the test of or_dash() is no test")
    return _number(e.a)


def _unknown(e: object):
    raise Fault(f"{type(e).__name__} has no unit rule")


def _searched(e: Match | Tally) -> Dimension:
    """Prove that what is looked for is in the unit of the column it is looked for in."""
    if isinstance(e, Tally):
        for column, _, value in e.tests:
            _one_kind(e.table.columns[column], value, f"column {column} of table {e.table.name}")
    elif e.below:
        _one_kind(e.table.columns[e.column], e.parts[0],
                  f"column {e.column} of table {e.table.name}")
    else:
        for part in e.parts:
            _one_kind(TEXT, part, f"the key of table {e.table.name}")
    return NONE


def _one_kind(unit: str, e: Expr, what: str) -> None:
    found = unit_of(e)
    if found is not None and found != (TEXT if unit == TEXT else dimension(unit)):
        given = "a word" if found == TEXT else f"a number in {spelled(found)}"
        raise Fault(f"{what} is in {unit or 'bare numbers'}, {given} is looked for")
    if found is None and unit == TEXT:
        raise Fault(f"{what} is in words, a number is looked for")


def _number(e: Expr) -> Dimension:
    found = unit_of(e)
    if found == TEXT:
        raise Fault("a word stands where a number is due")
    return NONE if found is None else found


def _operation(e: Op) -> Dimension | None:
    if e.op == "=":
        a, b = unit_of(e.a), unit_of(e.b)
        if TEXT in (a, b) and a != b:
            raise Fault("a word is compared with a number")
        if a != TEXT:
            same_unit([a, b])
        return NONE
    if e.op in ("+", "-"):
        return same_unit([_checked(e.a), _checked(e.b)])
    if e.op in COMPARISONS:
        same_unit([_checked(e.a), _checked(e.b)])
        return NONE
    a, b = _number(e.a), _number(e.b)
    if e.op == "*":
        return times(a, b)
    if e.op == "/":
        return times(a, power(b, -1))
    if b != NONE:
        raise Fault(f"an exponent is in {spelled(b)}")
    if a == NONE:
        return NONE
    exponent = e.b.value if isinstance(e.b, Num | Constant) else None
    if exponent is None or exponent != int(exponent):
        raise Fault(f"{spelled(a)} to a power that is no whole number")
    return power(a, int(exponent))


def _checked(e: Expr):
    found = unit_of(e)
    if found == TEXT:
        raise Fault("a word stands where a number is due")
    return found


def _function(e: Call):
    units = [unit_of(a) for a in e.args]
    if e.name == "when" and TEXT in units[1:]:
        if units[1:] != [TEXT, TEXT]:
            raise Fault("one arm of when() is a word, the other is not")
        if units[0] not in (None, NONE):
            raise Fault("the test of when() is no test")
        return TEXT
    if TEXT in units:
        raise Fault("a word stands where a number is due")
    return FUNCTIONS[e.name].unit(units)


_RULES = Rules({
    Row: _declared, Series: _declared, Num: lambda e: None if e.value == 0 else NONE,
    Text: lambda e: TEXT, Key: lambda e: TEXT, Op: _operation, Negative: _of_whole,
    SumOver: _of_whole, Convert: _converted, Bare: _bare, Call: _function, Column: _entry,
    Match: _searched, Tally: _searched, Extreme: lambda e: unit_of(e.series),
    Total: lambda e: times(_number(e.a), _number(e.by)), OfType: _of_whole, Picked: _at_number,
    Ranked: _at_number, AtPlace: _at_number, PlaceOf: _place_of, Shown: _shown, Joined: _joined,
    OrDash: _or_dash, object: _unknown,
})


def _prove_series_taken(e: Expr) -> None:
    """Prove that every series stands in sum_over(), largest() or smallest().

    Raises:
        Fault: one that stands alone, of which a spreadsheet would take any one row.
    """
    for series in series_in(e):
        raise Fault(f"the series {series.symbol} stands alone; take its sum_over() or largest()")


def unit_fault(row: Row) -> str | None:
    """Return what is wrong with the unit of a calculated row, or None."""
    try:
        _prove_series_taken(row.expr)
        found = unit_of(row.expr)
        wanted = TEXT if row.unit == TEXT else dimension(row.unit)
    except Fault as fault:
        return str(fault)
    if found is None or found == wanted:
        return None
    name = found if found == TEXT else spelled(found)
    return f"its formula comes out in {name}, declared is {row.unit or 'a bare number'}"
