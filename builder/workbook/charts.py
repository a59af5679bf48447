"""Charts: lines that are told apart in grey print, with words for who cannot see them."""

from __future__ import annotations

from collections.abc import Iterable

from xlsxwriter import Workbook
from xlsxwriter.worksheet import Worksheet

from builder.resolve.cells import Chart, Figure, SheetPlan
from builder.workbook.styles import BRICK, DEEP, FONT, INK, LINE, SAND, SLATE

ROW = 17
"""Height of a default row [px at 96 px an inch]."""
WIDTH = 900
"""Width of a chart [px]: the printed width of a sheet with one value column."""
INSIDE = {"x": 0.09, "y": 0.13, "width": 0.68, "height": 0.68}
"""The plot area as shares of the chart."""

LOOKS = (
    {"line": {"color": INK, "width": 2.25},
     "marker": {"type": "circle", "size": 6, "fill": {"color": INK}, "border": {"color": INK}}},
    {"line": {"color": DEEP, "width": 2.25, "dash_type": "dash"},
     "marker": {"type": "square", "size": 6, "fill": {"color": SAND}, "border": {"color": DEEP}}},
    {"line": {"color": BRICK, "width": 1.75, "dash_type": "long_dash_dot"},
     "marker": {"type": "none"}},
    {"line": {"color": SLATE, "width": 1.75, "dash_type": "round_dot"},
     "marker": {"type": "none"}},
)
"""Looks of lines in order: they differ in dashes and marks, not in colour alone."""


def add_charts(workbook: Workbook, sheet: SheetPlan, page: Worksheet) -> None:
    """Put the charts of a sheet.

    Raises:
        RuntimeError: the library refuses one.
    """
    for chart in sheet.charts:
        if isinstance(chart, Figure):
            _add_figure(workbook, sheet, page, chart)
            continue
        kind = {"type": "scatter", "subtype": "straight_with_markers"}
        if chart.kind == "bars":
            kind = {"type": "bar"}
        made = workbook.add_chart(kind)
        for line, look in zip(chart.lines, _looks(chart), strict=False):
            made.add_series({"name": line.name, "categories": f"={line.along}",
                             "values": f"={line.up}", **look})
        _set_axes(made, chart)
        made.set_size({"width": WIDTH, "height": chart.rows * ROW - 8})
        placed = {"description": chart.about, "object_position": 2, "x_offset": 4, "y_offset": 4}
        if page.insert_chart(chart.row, chart.col, made, placed) not in (0, None):
            raise RuntimeError(f"{sheet.name}: the chart '{chart.title}' was refused")


def _looks(chart: Chart) -> Iterable[dict]:
    if chart.kind == "bars":
        return [{"fill": {"color": DEEP}, "border": {"color": INK}, "gap": 60}]
    return LOOKS


def _set_axes(made, chart: Chart) -> None:
    letters = {"name": FONT, "size": 10, "color": INK, "bold": False}
    made.set_title({"name": chart.title, "overlay": False,
                    "name_font": {**letters, "size": 12, "bold": True, "color": DEEP}})
    axis = {"name_font": letters, "num_font": letters, "line": {"color": INK},
            "major_gridlines": {"visible": True, "line": {"color": LINE, "width": 0.75}}}
    if chart.kind == "bars":
        if chart.most:
            axis["num_font"] = {**letters, "size": 9}
        made.set_x_axis({"name": chart.along, **axis, "min": 0, "max": chart.most,
                         **({"major_unit": 0.5, "num_format": "0.0"} if chart.most else {})})
        made.set_y_axis({"name": chart.up, **axis, "reverse": True, "interval_unit": 1,
                         "major_gridlines": {"visible": False}})
        made.set_legend({"none": True})
    else:
        made.set_x_axis({"name": chart.along, **axis, "min": 0})
        made.set_y_axis({"name": chart.up, **axis})
        made.set_legend({"position": "right", "font": letters})
        made.set_plotarea({"layout": INSIDE})


PENS = {
    "frame": {"color": INK, "width": 2.0},
    "member": {"color": INK, "width": 0.75},
    "deck": {"color": SLATE, "width": 0.5},
    "cut": {"color": BRICK, "width": 1.0, "dash_type": "long_dash_dot"},
    "float": {"color": DEEP, "width": 2.25, "dash_type": "dash"},
    "skirt": {"color": SLATE, "width": 1.0},
    "water": {"color": DEEP, "width": 1.5},
    "loaded": {"color": DEEP, "width": 1.5, "dash_type": "long_dash"},
    "bed": {"color": INK, "width": 1.5, "dash_type": "round_dot"},
    "measure": {"color": SLATE, "width": 0.75},
    "thing": {"color": BRICK, "width": 1.5},
    "plate": {"color": DEEP, "width": 1.5},
    "bolt": {"color": INK, "width": 1.0},
    "hatch": {"color": SLATE, "width": 0.5},
}
"""Pens by what is drawn: weights and dashes differ, so that grey print keeps them apart."""
SPOTS = {
    "centre": {"type": "x", "size": 7, "border": {"color": DEEP, "width": 1.0},
               "fill": {"none": True}},
    "hole": {"type": "circle", "size": 7, "border": {"color": INK, "width": 1.0},
             "fill": {"none": True}},
}
"""Marks at points that no line joins: their size on paper is fixed and says nothing."""
EDGE = 0.02
"""What is left free at each edge of a drawing, as a share of it."""


def _add_figure(workbook: Workbook, sheet: SheetPlan, page: Worksheet, figure: Figure) -> None:
    """Put a drawing: the plot area keeps the shape of the whole, so that scales are equal."""
    made = workbook.add_chart({"type": "scatter", "subtype": "straight"})
    for look, along, up in figure.lines:
        line, spot = PENS.get(look, {"none": True}), SPOTS.get(look, {"type": "none"})
        if look not in PENS and look not in SPOTS:
            raise RuntimeError(f"{sheet.name}: no pen is called '{look}'")
        made.add_series({"name": look, "categories": f"={along}", "values": f"={up}",
                         "line": line, "marker": spot})
    for words, along, up in figure.marks:
        made.add_series({
            "name": f"={words}", "categories": f"={along}", "values": f"={up}",
            "line": {"none": True}, "marker": {"type": "none"},
            "data_labels": {"series_name": True, "value": False, "position": "center",
                            "font": {"name": FONT, "size": 9, "color": INK}}})
    hidden = {"visible": False, "major_gridlines": {"visible": False}}
    made.set_x_axis({"min": -1, "max": 1, **hidden})
    made.set_y_axis({"min": -1 / figure.wide, "max": 1 / figure.wide, **hidden})
    made.set_legend({"none": True})
    made.set_title({"none": True})
    made.set_plotarea({"layout": {"x": EDGE, "y": EDGE, "width": 1 - 2 * EDGE,
                                  "height": 1 - 2 * EDGE}})
    made.set_chartarea({"border": {"color": LINE}})
    made.show_blanks_as("gap")
    made.set_size({"width": figure.width, "height": figure.height})
    # Not moved or sized with cells: a changed row would spoil the scale.
    placed = {"description": figure.about, "object_position": 3}
    if page.insert_chart(figure.row, figure.col, made, placed) not in (0, None):
        raise RuntimeError(f"{sheet.name}: the drawing '{figure.title}' was refused")
