"""Price, margin and payments worked by hand, beside the rows of Price.

No published example was found: the answers are plain arithmetic.
"""

from __future__ import annotations

from builder.language import Case, Row, family

from .. import price, rates
from ..reference import table

TOLERANCE = "half a cent; the markup to its last printed decimal"
WANTS: dict[str, Row] = {
    "contingency": price.contingency, "overhead": price.overhead, "break-even": price.breakeven,
    "price before rounding": price.exact, "markup": price.markup, "selling price": price.selling,
    "profit": price.profit,
    **{name: amount for name, (_, amount) in zip(
        ("deposit", "payment 1", "payment 2", "payment 3", "last payment"), price.stages,
        strict=True)},
}
"""Quantity of the check table → the row that works it out."""
GIVEN: dict[str, dict[str, Row]] = {
    "margin": {"break-even": price.breakeven, "margin": rates.margin},
    "price": {"direct": price.direct, "contingency share": rates.contingency,
              "overhead share": rates.overhead, "fees": price.fees_inside,
              "margin": rates.margin, "step": rates.price_step},
    "payments": {"total": price.client_total, "deposit share": rates.deposit_share,
                 "cap share": rates.deposit_cap_share, "cap": rates.deposit_cap,
                 **{f"share {k}": row for k, row in enumerate(rates.stage_shares, start=1)}},
}
"""Kind of case → the columns it is given, and their rows."""


def _lines(kind: str) -> list[dict]:
    """Return the lines of the check table of one kind."""
    of = table("checks_money")
    found = [{"row": key, **dict(zip(of.columns, line, strict=True)), "clause": notes[0],
              "note": notes[2]} for key, line, notes in zip(of.keys, of.lines, of.notes,
                                                            strict=True)]
    return [line for line in found if line["kind"] == kind]


def _family(kind: str, title: str):
    """Make the family of a kind: the lines of one example are one case."""
    cases: dict[str, dict] = {}
    for line in _lines(kind):
        name, row = line["row"].rpartition(": ")[0], WANTS[line["quantity"]]
        case = cases.setdefault(name, {
            "name": name, "given": {r: line[c] for c, r in GIVEN[kind].items()}, "printed": {},
            "step": {}, "wrong": {}, "source": f"arithmetic, {line['clause']}",
            "printed_by": line["printed by"], "note": line["note"]})
        case["printed"][row] = line["right"]
        case["step"][row] = 2 * line["tolerance"]
        if line["trap"]:
            case["wrong"][row] = line["printed"]
    wants = list(dict.fromkeys(row for case in cases.values() for row in case["printed"]))
    return family(f"money_{kind}", title, wants, [Case(**case) for case in cases.values()],
                  tolerance=TOLERANCE)


families = [
    _family("margin", "Price: margin on the selling price and markup on cost"),
    _family("price", "Price: from direct cost to the selling price"),
    _family("payments", "Price: deposit and payments to the cent"),
]
