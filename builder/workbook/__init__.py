"""From a resolved workbook and its values to a file; no trade in it.

``write`` is the public entry.  ``styles`` holds the looks as data, ``limits`` what the file
format allows, ``page`` the screen and print set-up, ``rules_in_cells`` what may be typed,
``writer`` puts them together.
"""

from __future__ import annotations

from builder.workbook.limits import WorkbookError
from builder.workbook.writer import write

__all__ = ["WorkbookError", "write"]
