"""The drawing as it comes out on paper, measured in the picture: demo jobs and random ones.

The workbook works each job out; the sheet Drawing with those values, once a job, is printed by
LibreOffice in one go, and every view of every page is compared with its table of coordinates.
What is drawn has to stand where the numbers say, and nothing else may stand there.
"""

from __future__ import annotations

import re
import subprocess
from dataclasses import dataclass, replace
from datetime import datetime

import numpy as np
import pytest

from builder.engine import applications, libreoffice
from builder.engine.values import Values
from builder.jobs import read_job
from builder.language.rows import View
from builder.resolve.cells import Book, Cell, Figure, SheetPlan
from builder.sheets import drawing
from builder.sheets.book import model
from builder.workbook.charts import EDGE, PENS, SPOTS
from builder.workbook.writer import to_bytes
from tests.outputs.reading import DEMOS, ROOT
from tests.second.against import Workbook, random_jobs

pytestmark = [pytest.mark.outputs, pytest.mark.needs("soffice", "pdftotext", "pdftoppm")]
RANDOM = {False: 20, True: 100}
"""Random jobs that are printed, in the normal run and with --long."""
DPI = 100
INK, GREY = 150, 248
"""Greys below which a point of the picture is drawn, and below which it is not blank paper."""
OFF = 3
"""How far a line may stand off its place [px]: 0.3 % of the width of the plan."""
ROW = 17
"""Height of a row of the sheet [px of the sheet]."""
WORD = r'<word xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">(.*?)</word>'


@dataclass
class Printed:
    """One view on paper: its picture, its words, and its frame: left, top, right, bottom [px]."""

    name: str
    figure: Figure
    values: dict
    picture: np.ndarray
    box: tuple[float, float, float, float]
    words: list

    def spot(self, x: float, y: float) -> tuple[float, float]:
        """Return where a point of the drawing falls [px]."""
        left, top, right, bottom = self.box
        share = EDGE + (1 - 2 * EDGE) * (x + 1) / 2
        down = EDGE + (1 - 2 * EDGE) * (1 - y * self.figure.wide) / 2
        return left + share * (right - left), top + down * (bottom - top)

    def shapes(self):
        """Yield (look, points [px]) of every shape of the view."""
        for look, along, up in self.figure.lines:
            sheet, x, first, last = re.fullmatch(r"(\w+)!\$(\w+)\$(\d+):\$\w+\$(\d+)",
                                                 along).groups()
            column, points = _number(x), []
            assert up.startswith(f"{sheet}!$")
            for row in range(int(first) - 1, int(last) + 1):
                at = self.values.get((row, column))
                if at is not None and row < int(last):
                    points.append(self.spot(at, self.values[row, column + 1]))
                elif points:
                    yield look, points
                    points = []


def _number(letters: str) -> int:
    found = 0
    for letter in letters:
        found = 26 * found + ord(letter) - 64
    return found - 1


def jobs(count: int):
    """Return the demo jobs, and random ones."""
    m = model()
    given = [read_job(ROOT / "templates" / "jobs" / f"{name}.toml", m.job_inputs(),
                      m.section_inputs(), m.editable) for name in DEMOS]
    return given + random_jobs(5, count)


def one_sheet(values: Values, number: int) -> SheetPlan:
    """Return the sheet Drawing of a job under a name of its own, with values for formulas."""
    plan, name = next(p for p in model().fixed if p.name == "Drawing"), f"Drawing_{number}"

    def filled(cell: Cell) -> Cell:
        if cell.kind != "formula":
            return cell
        value = values["Drawing", cell.row, cell.col]
        kind = "text" if isinstance(value, str) else "number"
        return Cell(cell.row, cell.col, kind, value, cell.style)

    def renamed(things):
        return tuple(tuple(t.replace("Drawing!", f"{name}!") for t in thing) for thing in things)

    charts = [replace(c, lines=renamed(c.lines), marks=renamed(c.marks)) for c in plan.charts]
    return replace(plan, name=name, title=name, cells=[filled(c) for c in plan.cells],
                   charts=charts, verdicts=[])


@pytest.fixture(scope="module")
def views(tmp_path_factory, pytestconfig):
    """Every view of every job, printed."""
    folder = tmp_path_factory.mktemp("drawn")
    workbook = Workbook(unread=())
    plans = [one_sheet(workbook.values_of(job), number) for number, job in
             enumerate(jobs(RANDOM[pytestconfig.getoption("--long")]))]
    book = Book(plans, {}, "Drawn", "Drawn", "Drawn", datetime(2026, 1, 15), "0", "0")
    path = folder / "drawn.xlsx"
    path.write_bytes(to_bytes(book, {}))
    pdf = libreoffice.to_pdf(path, folder)
    pages = _pages(pdf)
    starts = sorted({v.top for v in drawing.sheet.items if isinstance(v, View) and
                     (v.new_page or v.top < 20)})
    assert len(pages) == len(plans) * len(starts), "a drawing takes more pages than it has views"
    found = []
    for number, plan in enumerate(plans):
        values = {(c.row, c.col): c.content for c in plan.cells if c.kind == "number"}
        for turn, start in enumerate(starts):
            after = [*starts, 10000][turn + 1]
            found += _views_of(plan, values, [c for c in plan.charts if start <= c.row < after],
                               *pages[number * len(starts) + turn])
    return found


def _pages(pdf) -> list[tuple[np.ndarray, list]]:
    """Return picture and words of each page; a word is (text, left, top, right, bottom) [px]."""
    said = applications.run([applications.find("pdftotext"), "-bbox", str(pdf), "-"], 120).stdout
    words = [[(text, *(float(v) * DPI / 72 for v in edges)) for *edges, text in
              re.findall(WORD, page)] for page in said.split("<page ")[1:]]
    made = subprocess.run([applications.find("pdftoppm"), "-r", str(DPI), "-gray", str(pdf)],
                          capture_output=True, check=True, timeout=120).stdout
    pictures = []
    while made:
        kind, size, _, rest = made.split(b"\n", 3)
        wide, high = map(int, size.split())
        assert kind == b"P5"
        pictures.append(np.frombuffer(rest[:wide * high], np.uint8).reshape(high, wide))
        made = rest[wide * high:]
    return list(zip(pictures, words, strict=True))


def _views_of(plan, values, figures, picture, words) -> list[Printed]:
    """Find the views of a page by the frames round them, the first one's first."""
    light = (picture > INK) & (picture < GREY)
    across = np.flatnonzero(light.mean(axis=1) > 0.7)
    assert across.size, f"{plan.name}: no frame round the first view"
    top = int(across[0])
    sides = np.flatnonzero(light[top])
    px = (sides[-1] - sides[0]) / figures[0].width
    found = []
    for figure in figures:
        left = sides[0] + px * (figure.col - figures[0].col) * 64
        right, down = left + px * figure.width, top + px * (figure.row - figures[0].row) * ROW
        span = slice(int(left) + 5, int(right) - 5)
        y1, y2 = (_edge(light[:, span], at) for at in (down, down + px * figure.height))
        x1, x2 = (_edge(light[y1 + 5:y2 - 5].T, at) for at in (left, right))
        assert (x2 - x1) / (y2 - y1) == pytest.approx(figure.wide, rel=0.01), plan.name
        found.append(Printed(
            f"{plan.name} {figure.title[:12]}", figure, values, picture, (x1, y1, x2, y2),
            [w for w in words if x1 - 2 < (w[1] + w[3]) / 2 < x2 + 2
             and y1 - 2 < (w[2] + w[4]) / 2 < y2 + 2]))
    return found


def _edge(light: np.ndarray, guess: float) -> int:
    """Return the row of a frame's edge, not more than 8 pixels from a guess."""
    rows = np.arange(round(guess) - 8, min(round(guess) + 9, len(light)))
    share = light[rows].mean(axis=1)
    assert share.max() > 0.7, f"no edge of a frame near {guess:.0f}"
    good = rows[share > 0.7]
    return int(good[np.abs(good - guess).argmin()])


def along(points) -> np.ndarray:
    """Return points along a line, half a pixel apart: rows of (x, y)."""
    parts = []
    for (x1, y1), (x2, y2) in zip(points, points[1:], strict=False):
        count = max(2, int(2 * np.hypot(x2 - x1, y2 - y1)))
        parts.append(np.column_stack([np.linspace(x1, x2, count), np.linspace(y1, y2, count)]))
    return np.vstack(parts)


def near(dark: np.ndarray, far: int) -> np.ndarray:
    """Return where something is drawn not more than ``far`` pixels away, along or up."""
    grown = dark.copy()
    for axis in (0, 1):
        one = grown.copy()
        for step in range(1, far + 1):
            grown |= np.roll(one, step, axis) | np.roll(one, -step, axis)
    return grown


def taken(mask: np.ndarray, points: np.ndarray) -> np.ndarray:
    """Return what a mask says at some points (x, y)."""
    at = np.rint(points).astype(int)
    return mask[at[:, 1].clip(0, mask.shape[0] - 1), at[:, 0].clip(0, mask.shape[1] - 1)]


def test_every_line_stands_where_the_table_says(views):
    """All of a full line is drawn there, and of a dashed one a fair share of it."""
    tried, wrong = 0, []
    for view in views:
        dark = near(view.picture < GREY, 2)
        for look, points in view.shapes():
            pen = PENS.get(look)
            if pen is None or len(points) < 2:
                continue
            line = along(points)
            if len(line) < 20:
                continue
            tried += 1
            share = taken(dark, line).mean()
            if share < (0.35 if "dash_type" in pen else 0.98):
                wrong.append((view.name, look, round(share, 2), points[:2]))
    assert not wrong, (len(wrong), wrong[:5])
    assert tried > 60 * len(views) / 5


def test_nothing_is_drawn_that_the_table_does_not_have(views):
    """Every dark point is that of a line, a spot or a word; so nothing leaves the plot area."""
    wrong = []
    for view in views:
        mask = np.zeros(view.picture.shape, bool)
        for look, points in view.shapes():
            line = along(points) if len(points) > 1 else np.array(points)
            at = np.rint(line).astype(int)
            mask[at[:, 1], at[:, 0]] = True
            if look in SPOTS:
                for x, y in np.rint(points).astype(int):
                    mask[y - 4:y + 5, x - 4:x + 5] = True
        mask = near(mask, OFF)
        for _, x1, y1, x2, y2 in view.words:
            mask[int(y1) - 1:int(y2) + 2, int(x1) - 1:int(x2) + 2] = True
        left, top, right, bottom = (round(v) for v in view.box)
        inside = (slice(top + 3, bottom - 2), slice(left + 3, right - 2))
        stray = (view.picture[inside] < INK) & ~mask[inside]
        if stray.sum() > 2:
            y, x = (int(v[0]) for v in np.nonzero(stray))
            wrong.append((view.name, int(stray.sum()), x + left, y + top))
    assert not wrong, (len(wrong), wrong[:8])


def test_words_stay_in_their_view_and_off_one_another(views):
    wrong = []
    for view in views:
        left, top, right, bottom = view.box
        for number, (text, x1, y1, x2, y2) in enumerate(view.words):
            if x1 < left - 1 or x2 > right + 1 or y1 < top - 1 or y2 > bottom + 1:
                wrong.append((view.name, "leaves", text))
            for other, a1, b1, a2, b2 in view.words[:number]:
                wide, high = min(x2, a2) - max(x1, a1), min(y2, b2) - max(y1, b1)
                if wide > 2 and high > 3:
                    wrong.append((view.name, other, "meets", text))
    assert not wrong, (len(wrong), wrong[:12])


def middle(view: Printed, x: float, y: float, axis: int) -> float:
    """Return where the line that passes a point is drawn, measured across it [px]."""
    column, row = round(x), round(y)
    cut = (view.picture[row, column - 2:column + 3] if axis == 0 else
           view.picture[row - 2:row + 3, column])
    ink = 255.0 - cut
    return float((ink * np.arange(5)).sum() / ink.sum()) - 2 + (column if axis == 0 else row)


def run(cut: np.ndarray) -> int:
    """Return how far the first and the last dark point of a row or column stand apart [px]."""
    dark = np.flatnonzero(cut < GREY)
    return int(dark[-1] - dark[0])


def test_bars_along_and_up_measure_the_same(views):
    """A square on the paper is a square: the two scale bars agree to 1 % and a pixel."""
    tried = 0
    for view in views:
        bar = [points for look, points in view.shapes()
               if look == "measure" and len(points) == 7][-1]
        (x1, _), (x2, y1), (_, y2) = ((round(x), round(y)) for x, y in bar[2:5])
        lie = run(view.picture[y1 - 1:y1 + 2, x1 - 5:x2 + 6].min(axis=0))
        stand = run(view.picture[y2 - 5:y1 + 6, x2 - 1:x2 + 2].min(axis=1))
        tried += lie > 60
        assert lie == pytest.approx(stand, abs=1 + 0.01 * stand), view.name
    assert tried > len(views) / 3


def test_frame_is_as_long_to_wide_as_the_numbers_say(views):
    plans = [v for v in views if v.figure.title.startswith("Plan")]
    rows = model().places.rows
    for view in plans:
        box = next(points for look, points in view.shapes()
                   if look == "frame" and len(points) == 5)
        (x1, y1), (x2, _), (_, y2) = box[0], box[1], box[2]
        x, y = x1 + (x2 - x1) * 0.37, y1 + (y2 - y1) * 0.41
        long = middle(view, x2, y, 0) - middle(view, x1, y, 0)
        wide = middle(view, x, y1, 1) - middle(view, x, y2, 1)
        length, width = (view.values[rows[r][1], rows[r][2]]
                         for r in (drawing.base.L, drawing.base.B))
        off = 0.01 + 1.5 / wide  # lines of the deck's edge and the rail stand close by
        assert long / wide == pytest.approx(length / width, rel=off), view.name
    assert len(plans) == len(views) / 5
