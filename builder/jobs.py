"""Starting jobs: TOML files that say what is typed in the input cells."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime


@dataclass(frozen=True)
class Job:
    """What is typed in the inputs of one workbook.

    ``inputs`` maps an input's name to its value; ``sections`` holds one such map for each
    section type, at most six; ``catalog`` maps table → key → column → value.
    """

    name: str
    title: str
    about: str
    created: datetime
    inputs: dict[str, float | str] = field(default_factory=dict)
    sections: tuple[dict[str, float | str], ...] = ()
    catalog: dict[str, dict[str, dict[str, float]]] = field(default_factory=dict)
