"""Editing and printing: what a builder does with the delivered file."""

from __future__ import annotations

import subprocess

import pytest

from builder.engine.applications import find
from builder.engine.libreoffice import edit_and_read, edit_steps, evaluate_files, to_pdf
from builder.engine.values import EngineError
from tests.engine import handmade

pytestmark = pytest.mark.needs("soffice")

X, CEDAR = ("Data", 0, 6), ("Data", 7, 6)
DOUBLE, EMPTY, TEXT, ERROR = (("Work", row, 1) for row in range(4))
CASES = [
    ("Data!$G$1*2", 0),
    ("ISBLANK(Data!$G$1)*1", 0),
    ('Data!$G$1&"!"', "stored"),
    ("1/Data!$G$1", 0),
]


@pytest.fixture(scope="module")
def path(tmp_path_factory):
    path = tmp_path_factory.mktemp("edited") / "book.xlsx"
    stored = {DOUBLE: 999.0, EMPTY: 0.0, TEXT: "stored", ERROR: 0.0}
    handmade.write(handmade.made_book(CASES), path, stored)
    return path


@pytest.mark.needs("uno")
def test_steps_of_edits_are_followed_and_timed(path):
    wanted = [DOUBLE, EMPTY, TEXT, ERROR, X]
    readings = edit_steps(path, [{}, {X: 4}, {X: None}, {X: "=1"}], wanted)
    assert [list(reading.values.values()) for reading in readings] == [
        [14.5, 0.0, "7.25!", pytest.approx(1 / 7.25, abs=1e-12), 7.25],
        [8.0, 0.0, "4!", 0.25, 4.0],
        [0.0, 1.0, "!", "#DIV/0!", None],
        ["#VALUE!", 0.0, "=1!", "#VALUE!", "=1"],
    ]
    assert all(0 < r.change_ms < 60_000 and 0 < r.all_ms < 60_000 for r in readings)


@pytest.mark.needs("uno")
def test_an_edit_of_a_locked_cell_is_refused(path):
    with pytest.raises(EngineError, match="refused"):
        edit_and_read(path, {CEDAR: "Pine"}, [DOUBLE])


@pytest.mark.needs("pdftotext")
def test_printing_shows_every_sheet_as_stored(path, tmp_path):
    printed = to_pdf(path, tmp_path)
    text = subprocess.run(
        [find("pdftotext"), "-layout", str(printed), "-"],
        capture_output=True,
        text=True,
        check=True,
    ).stdout
    assert "Cedar" in text
    assert "to the work" in text
    assert "999" in text


def test_a_file_that_is_no_workbook_is_an_error(tmp_path):
    missing = tmp_path / "nothing.xlsx"
    missing.write_bytes(b"PK nothing")
    with pytest.raises(EngineError):
        evaluate_files([missing], tmp_path / "work")
