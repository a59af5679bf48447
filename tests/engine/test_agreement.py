"""All engines give the answers worked out by hand, and none believes a stored value."""

from __future__ import annotations

import pytest

from builder.engine.compare import differences
from tests.engine import handmade
from tests.engine.conftest import PLANTED

LIBREOFFICE = pytest.param("libreoffice", marks=pytest.mark.needs("soffice"))
GNUMERIC = pytest.param("gnumeric", marks=pytest.mark.needs("ssconvert"))
RECALCULATING = ["formulas", LIBREOFFICE, GNUMERIC]


@pytest.mark.parametrize("engine", ["ironcalc", "stored", *RECALCULATING])
def test_every_function_and_form_as_worked_out_by_hand(answer, engine):
    found = answer(engine)
    assert set(found) == set(handmade.PLACES)
    wrong = [
        f"{line}  ={handmade.CASES[place[1]][0]}"
        for place in handmade.PLACES
        for line in differences(found, handmade.EXPECTED, [place])
    ]
    assert wrong == []


def test_a_planted_stored_value_is_believed_where_nothing_is_recalculated(answer):
    assert answer("stored", "canary")[PLANTED] == 999.0


@pytest.mark.parametrize("engine", RECALCULATING)
def test_a_planted_stored_value_is_caught(answer, engine):
    against_file = differences(answer("stored", "canary"), answer(engine, "canary"))
    assert against_file == ["Work!B2: 999.0 against 9.0"]
