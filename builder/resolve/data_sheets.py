"""Catalog, Data and Sources: tables, constants, words, and which input feeds which sheet."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from builder.language import Constant, Sheet, Table
from builder.language.rows import VERDICTS, Block, Note
from builder.language.units import TEXT

from .cells import InputRule, Place, SheetPlan
from .frame import DASH, HEAD, LISTED, SECTIONS, TOP, UNDER, Page, letter
from .graph import Graph
from .input_sheets import Part, Typing
from .places import Places, shown_constant

KEY_WIDTH, WIDTH = 32, 10
DATA_KEY_WIDTH, DATA_SECOND, DATA_WIDTH = 44, 17, 10
"""The second column shows a constant as formulas do, with all its digits."""
LETTER = 1.2
"""A bold letter of a sheet's name against a digit, at most on average (our judgement)."""
CONSTANT_HEADS = ["What", "Symbol", "Value", "Unit", "Source and clause; status"]
VALUE = 2
"""Column of a constant's value."""
SMALL = 1e-6
"""Below this a constant is left to the program, which shows a power of ten: 1E-09."""
BANK = 13
"""Sheets side by side in the marks of what feeds them: as many columns as the widest table."""


class Laid:
    """Where the tables of a sheet come to stand: first rows, in order."""

    def __init__(self, tables: Sequence[Table], sheet: str, top: int, places: Places,
                 head_rows: int, foot_rows: Callable[[Table], int] = lambda table: 0):
        self.first: dict[str, int] = {}
        y = top
        for table in tables:
            self.first[table.name] = y + head_rows
            places.tables[table.name] = (sheet, y + head_rows, 0)
            y += head_rows + len(table.keys) + foot_rows(table) + 2
        self.next = y


def footnotes(table: Table) -> list[str]:
    """Return clause, status and note of a table's lines, each wording once, in order of the lines.

    One wording holds for all lines; of several each line has the number of its own.
    """
    return list(dict.fromkeys(_words(line) for line in table.notes))


def _words(notes: Sequence[str]) -> str:
    return "; ".join(words for words in notes if words)


def _foot_rows(table: Table) -> int:
    """Return how many rows a table takes below its lines: a blank one, and one a wording."""
    return 1 + len(footnotes(table)) if len(footnotes(table)) > 1 else 0


def column_head(name: str, unit: str) -> str:
    """Return the head of a table's column, with its unit."""
    return f"{name} [{unit}]" if unit and unit != TEXT else name


CATALOG_HEAD = 5
"""Rows over a catalog table's lines: title, source, heads, least, most."""


CATALOG_WANTING = 4
"""Row of the count of lines that are not usable."""


def place_catalog(tables: Sequence[Table], places: Places, name: str) -> Laid:
    """Give the editable tables their places."""
    return Laid(tables, name, TOP, places, CATALOG_HEAD)


def state_column(table: Table) -> int:
    """Return the column in which the state of a catalog table's lines stands."""
    return 1 + len(table.columns)


def state_range(table: Table, places: Places) -> str:
    """Return the range of a catalog table's states, with its sheet."""
    sheet, first, _ = places.tables[table.name]
    col = letter(state_column(table))
    return f"{sheet}!${col}${first + 1}:${col}${first + len(table.keys)}"


def wanting_line(table: Table, places: Places) -> str:
    """Return the formula of the first line of a catalog table that is not usable, or a dash."""
    states = state_range(table, places)
    sheet, first, _ = places.tables[table.name]
    keys = f"{sheet}!$A${first + 1}:$A${first + len(table.keys)}"
    return f'IF(COUNTIF({states},0)>0,INDEX({keys},MATCH(0,{states},0)),"{DASH}")'


def catalog_sheet(sheet: Sheet, tables: Sequence[Table], places: Places,
                  typed: dict) -> SheetPlan:
    """Build the catalog: every number of a product may be typed over, within limits shown."""
    widest = max(state_column(t) for t in tables)
    page = Page(sheet.name, sheet.title, [KEY_WIDTH, *[WIDTH] * widest, 42], sheet.about,
                UNDER)
    page.text(3, 0, "Framed cells may be changed. State 1: the line is usable; 0: a number is "
                    "missing or outside least and most.", "subtitle")
    page.text(CATALOG_WANTING, 0, "Lines that are not usable", "label")
    page.formula(CATALOG_WANTING, 1, "+".join(
        f"COUNTIF({state_range(t, places).rpartition('!')[2].replace('$', '')},0)"
        for t in tables), "num.0")
    for table in tables:
        _catalog_table(page, table, places, typed.get(table.name, {}))
    return page.done(widest + 1, frozen=(3, 1), repeat=(0, 2), whole_blocks=True)


def _catalog_table(page: Page, table: Table, places: Places, typed: dict) -> None:
    first = places.tables[table.name][1]

    page.text(first - 5, 0, table.title, "block")
    page.text(first - 4, 0, "Invented products and prices.", "subtitle")
    page.text(first - 3, 0, table.key.capitalize(), "head")
    page.text(first - 2, 0, "Least", "label")
    page.text(first - 1, 0, "Most", "label")
    for x, (name, unit) in enumerate(table.columns.items(), start=1):
        page.text(first - 3, x, column_head(name, unit), "head.n")
        entries = table.entries(name)
        low, high = table.allowed.get(name, (min(entries), max(entries)))
        page.number(first - 2, x, low, "limit")
        page.number(first - 1, x, high, "limit")
        if name in table.allowed:
            page.plan.rules.append(_catalog_rule(table, name, unit, first, x))
    end = state_column(table)
    page.text(first - 3, end, "State", "head.c")
    page.text(first - 3, end + 1, "Note", "head.source")
    for k, key in enumerate(table.keys):
        y = first + k
        page.text(y, 0, key, "label")
        for x, name in enumerate(table.columns, start=1):
            value = typed.get(key, {}).get(name, table.lines[k][x - 1])
            page.number(y, x, value, _number_style(table, name))
        cells, least, most = (
            f"B{r}:{letter(end - 1)}{r}" for r in (y + 1, f"${first - 1}", f"${first}"))
        # A sum that is no number holds an error value, which no compare may reach.
        page.formula(y, end, f"IF(ISNUMBER(SUM({cells})),(COUNTA({cells})=COLUMNS({cells}))*"
                             f"(SUMPRODUCT(({cells}>={least})*({cells}<={most}))"
                             f"=COLUMNS({cells})),0)", "state")
        page.text(y, end + 1, table.notes[k][2], "source.line")



def _number_style(table: Table, name: str) -> str:
    stem = "input" if name in table.allowed else "given"
    digits = max(min(4, len(f"{v:.6f}".rstrip("0").partition(".")[2])) for v in table.entries(name))
    return f"{stem}.{digits}"


def _catalog_rule(table: Table, name: str, unit: str, first: int, x: int) -> InputRule:
    low, high = table.allowed[name]
    allowed = f"{low:g} to {high:g}" + (f" {unit}." if unit else ".")
    title = f"{table.title}: {name}"
    return InputRule(first, x, "decimal", title if len(title) <= 32 else name[:32],
                     f"{table.title}, {name}. Allowed: {allowed} Invented: put your own in.",
                     f"{name}: allowed is {allowed}", low, high, rows=len(table.keys))


class DataLayout:
    """The Data sheet: verdict words, the marks of the inputs, constants, tables."""

    def __init__(self, graph: Graph, calculation: Sequence[Sheet], typing: Typing,
                 places: Places, editable: Sequence[Table], name: str):
        self.name, self.calculation, self.typing = name, calculation, typing
        self.graph, self.places = graph, places
        self.words = TOP + 1
        places.words = (name, self.words, 0)
        self.weights = self.words + len(VERDICTS) + 1
        places.type_numbers = (name, self.weights + 1, 1)
        y = self.weights + 5
        self._marked: dict[tuple[int, int], int] = {}
        for bank in range(-(-len(calculation) // BANK)):
            for number, part in enumerate(typing.parts):
                self._marked[bank, number] = y
                y += len(part.lines) + 2
            y += 2
        self.constants = graph.constants()
        y += 1
        self.constant_heads: dict[str, int] = {}
        for constant in self.constants:
            places.rows[constant] = (name, y, VALUE)
            y += 1
        self.constants_end = y
        named = {t.name for t in editable}
        self.tables = [t for t in graph.tables() if t.name not in named]
        self.laid = Laid(self.tables, name, y + 2, places, 3, _foot_rows)

    def words_range(self) -> str:
        """Return the range of the verdict words."""
        return f"{self.name}!$A${self.words + 1}:$A${self.words + len(VERDICTS)}"

    def weights_range(self) -> str:
        """Return the range of the weights that tell which of six columns is the first."""
        last = letter(len(SECTIONS))
        return f"{self.name}!$B${self.weights + 1}:${last}${self.weights + 1}"

    def marks(self, sheet: Sheet, part: Part) -> str | None:
        """Return the range of a sheet's marks over the lines of an input sheet; None: no mark."""
        feeds = self.graph.feeds(sheet)
        if not any(line in feeds for line in part.lines):
            return None
        _, first, x = self.mark(sheet, part, 0)
        col = letter(x)
        return f"{self.name}!${col}${first + 1}:${col}${first + len(part.lines)}"

    def mark(self, sheet: Sheet, part: Part, line: int) -> Place:
        """Return the cell that says whether a line of an input sheet, from 0, feeds a sheet."""
        bank, x = divmod(self.calculation.index(sheet), BANK)
        return self.name, self._marked[bank, self.typing.parts.index(part)] + line, 1 + x

    def plan(self, title: str, about: str) -> SheetPlan:
        """Build the sheet."""
        widest = max([min(BANK, len(self.calculation)), len(CONSTANT_HEADS) - 1,
                      *(len(t.columns) + 1 for t in self.tables)])
        widths = [DATA_KEY_WIDTH, DATA_SECOND, *[DATA_WIDTH] * (widest - 1)]
        for k, sheet in enumerate(self.calculation):  # their names are heads
            x = 1 + k % BANK
            widths[x] = max(widths[x], LETTER * len(sheet.name))
        page = Page(self.name, title, widths, about, UNDER)
        page.text(self.words - 1, 0, "Words of a verdict", "block")
        for k, word in enumerate(VERDICTS):
            page.text(self.words + k, 0, word, "given.text")
        page.text(self.weights, 0, "Weights that tell the first of six columns", "label")
        for k in range(len(SECTIONS)):
            page.number(self.weights, 1 + k, 2 ** (len(SECTIONS) - 1 - k), "given.0")
        page.text(self.weights + 1, 0, "Numbers of the section types", "label")
        for k in range(len(SECTIONS)):
            page.number(self.weights + 1, 1 + k, 1 + k, "given.0")
        self._marks(page)
        self._constants(page)
        for table in self.tables:
            self._table(page, table)
        return page.done(widest, frozen=(3, 1), repeat=(0, 2), whole_blocks=True)

    def _marks(self, page: Page) -> None:
        for (bank, number), first in self._marked.items():
            part, sheets = self.typing.parts[number], self._bank(bank)
            if number == 0:
                page.text(first - 2, 0, "Which input feeds which sheet: 1 feeds it, blank does not"
                                        + (" (continued)" if bank else ""), "block")
            page.text(first - 1, 0, f"Input on {part.sheet.name}", "head")
            for x, sheet in enumerate(sheets, start=1):
                page.text(first - 1, x, sheet.name, "head.c")
            fed = [self.graph.feeds(sheet) for sheet in sheets]
            for y, item in enumerate(part.lines, start=first):
                if isinstance(item, Note):
                    continue
                page.text(y, 0, item.title if isinstance(item, Block) else item.label, "label")
                for x, feeds in enumerate(fed, start=1):
                    # A blank counts as 0; ten thousand zeros would only make the file larger.
                    if item in feeds:
                        page.number(y, x, 1, "state")

    def _bank(self, bank: int) -> Sequence[Sheet]:
        return self.calculation[bank * BANK:(bank + 1) * BANK]

    def _constants(self, page: Page) -> None:
        if not self.constants:
            return
        first = self.places.rows[self.constants[0]][1]
        page.text(first - 2, 0, "Constants", "block")
        page.heads(first - 1, CONSTANT_HEADS)
        for constant in self.constants:
            y = self.places.rows[constant][1]
            self._constant(page, y, constant)

    def _constant(self, page: Page, y: int, constant: Constant) -> None:
        page.text(y, 0, constant.label, "label")
        page.text(y, 1, constant.symbol, "symbol")
        small = 0 < abs(constant.value) < SMALL
        page.number(y, VALUE, constant.value,
                    "given.small" if small else f"given.{shown_constant(constant)}")
        page.text(y, 3, constant.unit, "unit")
        page.text(y, 4, f"{constant.source}; {constant.status}", "source.line")

    def _table(self, page: Page, table: Table) -> None:
        first = self.laid.first[table.name]
        page.text(first - 3, 0, table.title, "block")
        said = footnotes(table)
        several = len(said) > 1
        page.text(first - 2, 0, f"Source: {table.source}"
                                + ("" if several or not said[0] else f"; {said[0]}"), "subtitle")
        heads = [column_head(n, u) for n, u in table.columns.items()]
        page.text(first - 1, 0, table.key, "head")
        for x, (head, unit) in enumerate(zip(heads, table.columns.values(), strict=True), start=1):
            page.text(first - 1, x, head, "head" if unit == TEXT else "head.n")
        if several:
            page.text(first - 1, 1 + len(heads), "Source, see below", "head.c")
        digits = [0 if u == TEXT else _digits(table.entries(n)) for n, u in table.columns.items()]
        for k, key in enumerate(table.keys):
            page.text(first + k, 0, key, "given.text")
            for x, value in enumerate(table.lines[k], start=1):
                if isinstance(value, str):
                    # At the end of its line a text needs no second one.
                    last = x == len(table.columns) and not several
                    page.text(first + k, x, value or DASH, "source.line" if last else "given.text")
                else:
                    page.number(first + k, x, value, f"given.{digits[x - 1]}")
            if several:
                page.number(first + k, 1 + len(table.columns),
                            1 + said.index(_words(table.notes[k])), "state")
        for number, words in enumerate(said if several else (), start=1):
            page.text(first + len(table.keys) + number, 0, f"{number}: {words}", "subtitle")


def _digits(entries: list[float]) -> int:
    return max(min(6, len(f"{v:.9f}".rstrip("0").partition(".")[2])) for v in entries)


def sources_sheet(table: Table, name: str) -> SheetPlan:
    """Build the list of sources: key, title, edition, publisher, use, seen or from memory."""
    page = Page(name, "Sources", [20, 44, 24, 24, 28, 14, 30],
                "Where every published value comes from; a value from memory says so.",
                LISTED - 1)
    page.heads(HEAD, ["Key", *[c.capitalize() for c in table.columns], "Status", "Note"])
    for y, (key, line, notes) in enumerate(
            zip(table.keys, table.lines, table.notes, strict=True), start=LISTED):
        page.text(y, 0, key, "given.text")
        for x, words in enumerate(line, start=1):
            page.text(y, x, words, "source")
        page.text(y, 1 + len(line), notes[1], "source")
        page.text(y, 2 + len(line), notes[2], "source")
    return page.done(2 + len(table.columns))


