"""Where every row, table and constant stands, and how a formula refers to it from elsewhere."""

from __future__ import annotations

from dataclasses import dataclass, field

from builder.language import Constant, Fault, Row, Series, Table
from builder.language.units import TEXT

from .cells import Place
from .frame import COLUMN, FIRST, SECTION_LETTERS, letter


@dataclass
class Places:
    """The map from what is declared to where it stands.

    ``rows`` holds sheet, row and column of each row; a section row's column is that of type A.
    ``sections`` are the rows that have six columns.  ``tables`` holds sheet, first line and
    first column of each table's values; ``type_numbers`` where the first of the numbers of the
    section types stands.
    """

    rows: dict[Row, Place] = field(default_factory=dict)
    sections: set[Row] = field(default_factory=set)
    tables: dict[str, Place] = field(default_factory=dict)
    words: Place = ("Data", 0, 0)
    type_numbers: Place = ("Data", 0, 1)

    def table_range(self, table: Table, column: str | None) -> tuple[str, int, int, int]:
        """Return sheet, column, first and last row of a table's column, or of its keys."""
        sheet, row, col = self.tables[table.name]
        if column is not None:
            col += 1 + list(table.columns).index(column)
        return sheet, col, row, row + len(table.keys) - 1


class Where:
    """Addresses as seen from one sheet; ``moved`` rows stand elsewhere for this formula.

    ``section`` says whether the formula stands in a section column.
    """

    def __init__(self, places: Places, sheet: str, section: bool = True,
                 moved: dict[Row, str] | None = None):
        self.places, self.sheet, self.section = places, sheet, section
        self.moved = {} if moved is None else moved

    def _on(self, sheet: str) -> str:
        return "" if sheet == self.sheet else f"{sheet}!"

    def row(self, row: Row) -> str:
        """Return the address of a row.

        Raises:
            Fault: the row stands nowhere, or is a section's while the formula is the job's.
        """
        if row in self.moved:
            return self.moved[row]
        try:
            sheet, y, x = self.places.rows[row]
        except KeyError:
            raise Fault(f"{row.where} stands on no sheet of the workbook") from None
        if row in self.places.sections:
            if not self.section:
                raise Fault(f"{row.where} differs by section; take its total()")
            return f"{self._on(sheet)}{COLUMN}${y + 1}"
        return f"{self._on(sheet)}${letter(x)}${y + 1}"

    def series(self, series: Series) -> str:
        """Return the range of a series.

        Raises:
            Fault: its rows do not stand one below the other.
        """
        first = self.row(series.rows[0])
        spots = [self.places.rows[r] for r in series.rows] if not self.moved else []
        if any(b != (a[0], a[1] + 1, a[2]) for a, b in zip(spots, spots[1:], strict=False)):
            raise Fault(f"series {series.symbol}: its rows do not stand one below the other")
        last = self.row(series.rows[-1]).rpartition("!")[2]
        return f"{first}:{last}"

    def across(self, row: Row) -> str:
        """Return the range of a section row over all six columns."""
        sheet, y, _ = self.places.rows[row]
        return f"{self._on(sheet)}${SECTION_LETTERS[0]}${y + 1}:${SECTION_LETTERS[-1]}${y + 1}"

    def type_numbers(self) -> str:
        """Return the range of the numbers of the section types."""
        sheet, y, x = self.places.type_numbers
        last = letter(x + len(SECTION_LETTERS) - 1)
        return f"{self._on(sheet)}${letter(x)}${y + 1}:${last}${y + 1}"

    def of_type(self, row: Row, letter: str) -> str:
        """Return the address of a section row in the column of one type."""
        sheet, y, _ = self.places.rows[row]
        return f"{self._on(sheet)}${SECTION_LETTERS[ord(letter) - ord('A')]}${y + 1}"

    def key(self, table: Table, number: int) -> str:
        """Return the cell of a table's key, counted from 0."""
        sheet, col, first, _ = self.places.table_range(table, None)
        return f"{self._on(sheet)}${letter(col)}${first + number + 1}"

    def column(self, table: Table, column: str | None) -> str:
        """Return the range of a table's column; None is its key column."""
        sheet, col, first, last = self.places.table_range(table, column)
        return f"{self._on(sheet)}${letter(col)}${first + 1}:${letter(col)}${last + 1}"


def style_of(row: Row) -> str:
    """Return the style of a row's value."""
    return "text.c" if row.unit == TEXT else f"num.{min(row.digits, 6)}"


def address(place: Place) -> str:
    """Return sheet and cell of a place, as a link or a name refers to it."""
    sheet, row, col = place
    return f"{sheet}!${letter(col)}${row + 1}"


def section_place(place: Place, number: int) -> Place:
    """Return the place of a section row in the column of one section type."""
    return place[0], place[1], FIRST + number


def shown_constant(constant: Constant) -> int:
    """Return how many decimals show a constant whole."""
    return min(6, len(f"{constant.value:.9f}".rstrip("0").partition(".")[2]))
