"""What the delivered workbooks must be beside the rules that a file alone can be checked by.

The rules of the list are in ``builder/rules``, and held against these files in ``tests/rules``.
"""

from __future__ import annotations

import pytest

from builder.resolve.cells import Book
from builder.rules import layout
from builder.rules.inputs import usable_as_delivered
from builder.rules.looks import entries
from builder.rules.safety import FORMULAS, SIZE
from builder.rules.structure import properties
from tests.outputs.reading import OUTPUTS, read
from tests.outputs.worked import resolved

pytestmark = pytest.mark.outputs
EACH = pytest.mark.parametrize("path", OUTPUTS, ids=lambda p: p.stem)


@EACH
def test_x08_small_enough(path):
    assert path.stat().st_size < SIZE
    assert 1000 < len(read(path).formulas) < FORMULAS


@EACH
def test_x01_every_formula_of_the_file_is_one_of_the_model_and_the_other_way_round(path):
    book: Book = resolved(path.stem)
    meant = {place: cell.content for place, cell in book.cells() if cell.kind == "formula"}
    assert read(path).formulas == meant


@EACH
def test_i07_a_delivered_workbook_needs_no_input_but_for_the_blank_start(path):
    file = read(path)
    shown = {file.value(*p) for p in layout.verdict_cells(file)}
    if path.stem == "blank_start":
        assert shown == {"not used"} and file.value("Checks", 1, 1) == "NEEDS INPUT"
    else:
        assert "NEEDS INPUT" not in shown and "OK" in shown
    assert list(usable_as_delivered(file)) == [] and len(entries(file)[0]) > 300


@EACH
def test_a05_document_properties_are_those_of_the_job(path):
    file, book = read(path), resolved(path.stem)
    told = {e.tag.rpartition("}")[2]: e.text for e in file.xml("docProps/core.xml")}
    assert (told["title"], told["subject"], told["creator"]) == (
        book.title, book.subject, book.author)
    assert told["created"].startswith(f"{book.created:%Y-%m-%d}")
    assert properties(file) == {"Tool version": book.version, "Inputs hash": book.inputs_hash}
