"""Inputs as the workbook fills them: what is typed, and the defaults of the rest."""

from __future__ import annotations

from builder.language import Fault
from builder.language.values import value_of
from builder.sheets import inputs as job
from builder.sheets import sections as sec


def with_defaults(known: dict) -> dict:
    """Add the default of every input that has one; one that rests on a blank stays out."""
    for ask in (*job.sheet.inputs, *sec.sheet.inputs):
        if ask not in known and ask.default is not None:
            try:
                known[ask] = value_of(ask.default, known)
            except Fault:
                continue
    return known


def verdict(check, known: dict) -> str:
    """Return the word of a check, by the rule of the verdict's formula."""
    ratio = value_of(check.ratio, known)
    if check.verdict.worst == "LOOK":
        return "LOOK" if ratio > 1.000000001 else "OK"
    if ratio > 1.000000001:
        return "NOT OK"
    return "LOOK" if ratio > value_of(check.verdict.look, known) else "OK"
