"""Drawing, second part: the plan of one section."""

from __future__ import annotations

from builder.language import (
    any_of,
    feet_inches,
    greatest,
    joined,
    least,
    remainder,
    shown,
    sixteenths,
    when,
    whole_down,
    whole_up,
)

from . import decking, parts
from . import sections as sec
from .drawing_base import (
    B,
    B_d,
    B_o,
    L,
    L_d,
    L_o,
    R,
    X,
    Y,
    across,
    b_f,
    bars,
    beams,
    block,
    box,
    header,
    l_f,
    level,
    lines,
    n_r,
    ours,
    p_x,
    p_y,
    panel_x,
    panel_y,
    panels,
    path,
    rail,
    row,
    sheet,
    step,
    stroke,
    upright,
)
from .reference import own
from .yard_tape import of, start, words

MOST_STRINGERS, MOST_FLOATS, MOST_BEAMS, MOST_COLUMNS, MOST_ROWS = 36, 30, 5, 16, 8
"""So many of a kind are drawn; the plan says so where there are more."""
MOST_BESIDE = 12
"""Most floats of a row drawn from the side."""
MOST_FIGURES = 8
"""Most stringers whose distance is written."""

block("Plan: feet in half the paper's width, and what is counted there")
plan = row("Plan", "S", "ft", greatest(
    L_o * 2 / 3, B_o * 3 / 2, 2 * ours.bar, of(parts.reach) * greatest(L, 2 * B) * 5 / 9))
grid = row("Floats in the rows, at least one", "n_g", "each", greatest(R * n_r, 1), digits=0)
a_row = row("Floats in a row, at least one", "n_1", "each", greatest(n_r, 1), digits=0)
half_l = row("Half a float along, on paper", "l_h", "", l_f / 2 / plan, digits=4)
half_b = row("Half a float across, on paper", "b_h", "", b_f / 2 / plan, digits=4)
more = row("More pieces than are drawn: 1, else 0", "k_m", "", when(any_of(
    lines > MOST_STRINGERS, R * n_r > MOST_FLOATS, n_r > MOST_BESIDE, beams > MOST_BEAMS,
    panels * L_d / MOST_COLUMNS > panel_x, panels * B_d / MOST_ROWS > panel_y), 1, 0), digits=0)

frame = sheet.shapes("Frame, plan", "frame", [
    box(plan, -L / 2, -B / 2, L / 2, B / 2),
    box(plan, -L / 2, rail - B / 2, L / 2, B / 2 - rail)])
headers = sheet.shapes("Headers, plan", "frame", [
    stroke(plan, header - L / 2, rail - B / 2, header - L / 2, B / 2 - rail),
    stroke(plan, L / 2 - header, rail - B / 2, L / 2 - header, B / 2 - rail)])
outline = sheet.shapes("Deck edge, plan", "skirt", [
    box(plan, -L_d / 2, -B_d / 2, L_d / 2, B_d / 2)])


def _stringer(k: int):
    """Return the line of a stringer; one past the last falls on the last."""
    at = least(k, lines) * step - when(across > 0, L, B) / 2
    return [((when(across > 0, at, header - L / 2)) / plan,
             (when(across > 0, rail - B / 2, at)) / plan),
            ((when(across > 0, at, L / 2 - header)) / plan,
             (when(across > 0, B / 2 - rail, at)) / plan)]


stringers = sheet.shapes("Stringers, plan", "member",
                         [_stringer(k) for k in range(1, MOST_STRINGERS + 1)])


def _beam(k: int):
    at = (L - 2 * header) * least(k, beams) / (beams + 1) - L / 2 + header
    return stroke(plan, at, rail - B / 2, at, B / 2 - rail)


cross = sheet.shapes("Cross-beams, plan", "frame", [_beam(k) for k in range(1, MOST_BEAMS + 1)])


def _centre(k: int):
    """Return the centre of a float, counted row by row; past the last it is the last."""
    number = least(k, grid) - 1
    return [((remainder(number, a_row) * p_x - X) / plan,
             (whole_down(number / a_row) * p_y - Y) / plan)]


centres = sheet.shapes("Float centres, plan", "centre",
                       [_centre(k) for k in range(1, MOST_FLOATS + 1)])


def _around(centre, share):
    """Return the outline of a float about its centre on paper; of no size where the share is 0."""
    ((x, y),) = centre
    l_h, b_h = half_l * share, half_b * share
    return [(x - l_h, y - b_h), (x + l_h, y - b_h), (x + l_h, y + b_h), (x - l_h, y + b_h),
            (x - l_h, y - b_h)]


# Past the last float a point: its outline again would fill the gaps between the dashes.
floats = sheet.shapes("Floats, plan", "float", [
    _around(c, grid >= k) for k, c in enumerate(centres.shapes, start=1)])
here = [row(f"Extra float {k}: 1 there, 0 not", f"e_{k}", "", of(there), digits=0)
        for k, there in enumerate(parts.extra_here, start=1)]
# One that is not there lies on the first float of the rows: at the middle it would be a mark.
extra_centres = sheet.shapes("Extra float centres, plan", "centre", [
    [(when(e > 0, of(x), -X) / plan, when(e > 0, of(y), -Y) / plan)]
    for e, x, y in zip(here, sec.extra_x, sec.extra_y, strict=True)])
extras = sheet.shapes("Extra floats, plan", "float", [
    _around(c, e) for e, c in zip(here, extra_centres.shapes, strict=True)])

block("Deck panels; what is left over is cut from whole ones")
columns = row("Columns of panels", "n_x", "each", of(parts.panel_columns) * panels, digits=0)
rows = row("Rows of panels", "n_y", "each", of(parts.panel_rows) * panels, digits=0)
last_x = row("Last column, its near edge from the deck's", "x_l", "ft",
             greatest(columns - 1, 0) * panel_x)
last_y = row("Last row, its left edge from the deck's", "y_l", "ft",
             greatest(rows - 1, 0) * panel_y)
cut_x = row("Last column is cut: 1, else 0", "k_x", "",
            when(columns * panel_x > L_d, panels, 0), digits=0)
cut_y = row("Last row is cut: 1, else 0", "k_y", "", when(rows * panel_y > B_d, panels, 0),
            digits=0)


def _joint(k: int, size, whole, other, turned: bool):
    """Return a joint between panels, k sizes from the start; past the end it is the edge."""
    at = least(k * greatest(size, ours.least_panel), whole) * panels - whole / 2
    if turned:
        return stroke(plan, -other / 2, at, other / 2, at)
    return stroke(plan, at, -other / 2, at, other / 2)


joints = sheet.shapes("Panel joints, plan", "deck", [
    *(_joint(k, panel_x, L_d, B_d, False) for k in range(1, MOST_COLUMNS)),
    *(_joint(k, panel_y, B_d, L_d, True) for k in range(1, MOST_ROWS))])


def _slants(most: int, size, whole, count, near, far, cut):
    """Return pairs (along the line of panels, across it): one diagonal through each of them.

    The line runs to and fro between the near and the far edge of the panels, one panel further
    each time; where nothing is cut it stays where it begins.
    """
    return [(least(k * size, whole) * cut - whole / 2,
             far - (far - near) * cut * remainder(least(k, count), 2) - far / 2)
            for k in range(most + 1)]


cuts = sheet.shapes("Cut panels, plan", "cut", [
    path(plan, *((a, b) for b, a in _slants(MOST_ROWS, panel_y, B_d, rows, last_x, L_d, cut_x))),
    path(plan, *_slants(MOST_COLUMNS, panel_x, L_d, columns, last_y, B_d, cut_y))])

block("Things on it: half their drawn size is 4 in")
things = [(row(f"Fixed item {k}: 1 there, 0 not", f"w_{k}", "", when(of(w) > 0, 1, 0), digits=0),
           of(x), of(y))
          for k, w, x, y in zip(range(1, 5), sec.item_weight, sec.item_x, sec.item_y,
                                strict=True)]
foot = row("Gangway: 1 lands here, 0 not", "g", "", when(of(sec.gangway_rest) > 0, 1, 0),
           digits=0)
items = sheet.shapes("Fixed items, plan", "thing", [
    box(plan, (x - ours.item) * w, (y - ours.item) * w, (x + ours.item) * w, (y + ours.item) * w)
    for w, x, y in things])
gangway = sheet.shapes("Gangway foot, plan", "thing", [
    stroke(plan, (of(sec.gangway_x) - ours.cross) * foot, (of(sec.gangway_y) - ours.cross) * foot,
           (of(sec.gangway_x) + ours.cross) * foot, (of(sec.gangway_y) + ours.cross) * foot),
    stroke(plan, (of(sec.gangway_x) - ours.cross) * foot, (of(sec.gangway_y) + ours.cross) * foot,
           (of(sec.gangway_x) + ours.cross) * foot, (of(sec.gangway_y) - ours.cross) * foot)])

block("Running dimensions: stringers' centres from the outside of the first end member")
side = row("Half the side along which they are measured", "h", "ft", when(across > 0, L, B) / 2)
every = row("Figures at every so many stringers", "j", "each", greatest(
    1, whole_up(lines / MOST_FIGURES),
    whole_up(plan * when(across > 0, ours.figure_wide, ours.figure_high)
             / greatest(step, own.least_length))), digits=0)
last = row("Last stringer with a figure", "j_n", "each", every * whole_down(lines / every),
           digits=0)
y_t = row("Line of the figures below the plan", "y_t", "ft", -B_o / 2 - plan / 32)
x_t = row("Line of the figures beside the plan", "x_t", "ft", -L_o / 2 - plan / 32)


def _witness(k: int):
    """Return a stroke from the edge across the line of the figures, at a figured stringer."""
    at = least(k * every, last) * step - side
    return [(when(across > 0, at, -L_o / 2) / plan, when(across > 0, -B_o / 2, at) / plan),
            (when(across > 0, at, x_t - plan / 100) / plan,
             when(across > 0, y_t - plan / 100, at) / plan)]


running = sheet.shapes("Running dimensions, plan", "measure", [
    [(when(across > 0, -L / 2, x_t) / plan, when(across > 0, y_t, -B / 2) / plan),
     (when(across > 0, L / 2, x_t) / plan, when(across > 0, y_t, B / 2) / plan)],
    *(_witness(k) for k in range(1, MOST_FIGURES + 1))])
figures = []
for _k in range(1, MOST_FIGURES + 1):
    _n = row(f"Figure {_k} in sixteenths", f"q_{_k}", "",
             sixteenths((least(_k * every, last) * step).in_("in")), digits=0)
    _at = least(_k * every, last) * step - side
    figures.append(sheet.mark(
        when(_k * every <= lines, feet_inches(_n), " "),
        when(across > 0, _at, x_t - plan * ours.figure_wide / 2) / plan,
        when(across > 0, y_t - plan * ours.figure_high, _at) / plan))

block("Overall dimensions, scale bars, legend")
below = row("Dimension line below the plan", "y_m", "ft", -B_o / 2 - plan / 9)
beside = row("Dimension line beside the plan", "x_m", "ft", L_o / 2 + plan / 24)
corner_x, corner_y = plan * 31 / 32, -plan * 31 / 64
top = row("Line of the legend", "y_g", "ft", plan * 13 / 32)
measures = sheet.shapes("Dimension lines, plan", "measure", [
    level(plan, -L / 2, L / 2, below),
    upright(plan, beside, -B / 2, B / 2),
    bars(plan, corner_x, corner_y, ours.bar)])


def _sample(look: str, at: int):
    """Return a short stroke of a kind of line, so many sixteenths of the paper along."""
    return sheet.shapes(f"Legend: {look}", look, [
        stroke(plan, plan * at / 16, top, plan * (at + 2) / 16, top)])


samples = [_sample("float", -10), _sample("deck", -5), _sample("cut", 1)]
n_L = row("Length in sixteenths", "n_L", "", sixteenths(L.in_("in")), digits=0)
n_B = row("Width in sixteenths", "n_B", "", sixteenths(B.in_("in")), digits=0)
n_s = row("Spacing in sixteenths", "n_16", "", sixteenths(step.in_("in")), digits=0)


def _legend(words, at):
    """Put words on the line of the legend, so many thirty-seconds of the paper along."""
    return sheet.mark(words, plan * at / 32 / plan, top / plan)


plan_marks = [
    sheet.mark(feet_inches(n_L), 0, (below - plan / 40) / plan),
    sheet.mark(feet_inches(n_B), (beside + plan / 15) / plan, 0),
    sheet.mark("5 ft", (corner_x - ours.bar / 2) / plan, (corner_y + plan / 50) / plan),
    _legend("float", -15), _legend("panel joint", -4), _legend("cut panel", 9),
    *figures,
]
said = row("Words over the plan", "", "text", joined(
    "Stringers every ", feet_inches(n_s), ", centres from the outside of ", start, ", last space ",
    words["out"], when(panels > 0, joined("; ", shown(of(parts.panels) - of(
        decking.panels_whole)), " of ", shown(of(parts.panels)), " panels cut"), ""),
    when(more > 0, "; THERE ARE MORE PIECES THAN ARE DRAWN", "")))
sheet.view("Plan; squares: fixed items; cross: gangway's foot",
           "Plan of one section: outer frame, headers, stringers, floats dashed with their "
           "centres crossed, panel joints, cut panels with a diagonal, fixed items, gangway foot, "
           "running and overall dimensions, bars of 5 ft.",
           [outline, joints, cuts, floats, extras, centres, extra_centres, stringers, headers,
            frame, cross, items, gangway, running, measures, *samples], plan_marks,
           wide=2, top=7)
