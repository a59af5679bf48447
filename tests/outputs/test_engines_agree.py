"""Five engines agree on every formula cell of every delivered workbook.

Each answer is held against the values stored in the file, which are what a reader sees.
"""

from __future__ import annotations

import pytest

from builder.engine.compare import differences
from builder.engine.formulas_engine import Ranges
from tests.outputs.reading import OUTPUTS, read
from tests.outputs.worked import PLANTED

pytestmark = pytest.mark.outputs
LIBREOFFICE = pytest.param("libreoffice", marks=pytest.mark.needs("soffice"))
GNUMERIC = pytest.param("gnumeric", marks=pytest.mark.needs("ssconvert"))
EACH = pytest.mark.parametrize("path", OUTPUTS, ids=lambda p: p.stem)


def check(stored, answer, path):
    assert set(answer) == set(read(path).formulas)
    found = differences(stored, answer)
    assert not found, f"{len(found)} cells: stored against worked out\n" + "\n".join(found[:40])


@EACH
@pytest.mark.parametrize("engine", ["ironcalc", LIBREOFFICE, GNUMERIC])
def test_engine_agrees_with_the_stored_values(engines, engine, path):
    check(engines.answer("stored", path), engines.answer(engine, path), path)


@pytest.mark.long
@EACH
def test_the_formulas_library_agrees_with_the_stored_values(engines, formulas_values, path):
    check(engines.answer("stored", path), formulas_values(path), path)


@pytest.mark.parametrize("engine", [LIBREOFFICE, GNUMERIC])
def test_a_planted_stored_value_is_caught(engines, engine):
    place, whole = engines.planted, OUTPUTS[-1]
    held = engines.answer("stored", engines.canary)
    assert held[place] == PLANTED
    assert differences(engines.answer(engine, whole), engines.answer(engine, engines.canary)) == []
    assert differences(held, engines.answer(engine, engines.canary), [place]) != []


def test_a_planted_stored_value_is_caught_by_the_formulas_library(engines):
    place = engines.planted
    found = Ranges(engines.canary, [place]).calculate()
    assert differences(engines.answer("stored", OUTPUTS[-1]), found, [place]) == []
    assert differences(engines.answer("stored", engines.canary), found, [place]) != []
