"""Start: every group of checks answers one of the questions, and none two."""

from __future__ import annotations

from builder.sheets.book import model
from builder.sheets.start import PACKS, QUESTIONS


def test_every_group_of_checks_answers_one_question():
    named = [group for _, groups in QUESTIONS for group in groups]
    assert sorted(named) == sorted(model().checks.rows)


def test_what_is_printed_are_sheets():
    names = {"Start", "Inputs", "Sections", "Catalog"} | {plan.name for plan in model().fixed}
    for title, sheets in PACKS:
        assert set(sheets) <= names, title
