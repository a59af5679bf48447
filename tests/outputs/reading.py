"""A delivered workbook as a checker reads it: its cells, and which cell reads which."""

from __future__ import annotations

import warnings
from functools import cache
from pathlib import Path

from openpyxl import Workbook, load_workbook

from builder.rules.reading import DASH, Area, area, read, references, spots, tokens
from builder.rules.reading import File as Read

__all__ = ["DASH", "DEMOS", "NAMES", "OUTPUTS", "ROOT", "Area", "Read", "area", "delivered",
           "opened", "read", "references", "spots", "tokens"]

ROOT = Path(__file__).resolve().parents[2]
OUTPUTS = sorted((ROOT / "outputs").glob("*.xlsx"))
NAMES = [path.stem for path in OUTPUTS]
DEMOS = [name for name in NAMES if name != "blank_start"]


@cache
def opened(path: Path) -> Workbook:
    """Open a workbook file with openpyxl, once a session; its warnings are errors."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        return load_workbook(path)


def delivered(name: str) -> Path:
    """Return the delivered workbook of a starting job."""
    return next(path for path in OUTPUTS if path.stem == name)
