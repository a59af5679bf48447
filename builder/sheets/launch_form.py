"""LaunchForm: the form taken to the water, for the pencil: what to expect, and blanks.

One block for each section type; a dash stands where a type is not used.  What is written here is
typed on Readings afterwards, or worked out on the form itself.
"""

from __future__ import annotations

from builder.language import Row, Sheet, of_type, or_dash

from . import launch
from . import sections as sec
from .readings import CORNERS

TYPES = "ABCDEF"
A_PAGE = 2
"""Section types on a page."""

sheet = Sheet("LaunchForm", "Launch: what to expect, and blanks for the pencil", scope="page",
              large=True, about="Print it and take it along.")
block, say, show = sheet.block, sheet.say, sheet.show

block("Before the lift")
sheet.caution("Nobody under a lifted section, or between it and anything fixed. Nobody rides on "
              "it. Keep clear of power lines.")
sheet.caution("Life jackets on everyone near the water. Cold water takes the strength of hands "
              "within minutes: have a ladder and a boat or a ring ready.")
for _words in ("Who gives the signals is agreed; one person only",
               "Tags of slings and shackles read, no cuts, no flat spots",
               "Machine stands level and firm; load chart read at the longest reach",
               "Slings at the marks, hook over the mark; two tag lines on",
               "Depth at the launching place sounded; nothing sharp on the bottom",
               "Float lags, bolts and hinges looked over; a photograph of the underside"):
    show(_words, tick=True)
show("Date", blank=True)
show("Read by", blank=True)
show("Wind, ripples, water level at the gauge", blank=True)

block("How to read, and how to level")
say("The near end is the one you walk out from; right and left are your hands walking out. In calm "
    "water, nobody aboard, read from the water up to the top of the deck at the four corners.")
say("Weight afloat = the weight shown + pounds an inch × (mean predicted − mean read).")
say("Twist = (near left + far right − near right − far left) ÷ 2. Over 1/2 in, either way: "
    "twisted or misread, measure again.")
say("One side lower: inches × the pounds shown, at the middle of the higher side. One end lower: "
    "the same with the pounds for the ends. A corner counts for its side and its end at once.")
say("Weight test: the weight's centre 6 in inside the edge; read the drop of the deck edge beside "
    "it. A drop at the corner well past that shown: the frame twists; brace it.")

LINES: tuple[tuple[str, Row, str, int, bool], ...] = (
    ("weight dry, with floats", launch.dry, "lb", 0, True),
    ("weight soaked, to lift it out", launch.soaked, "lb", 0, False),
    ("slings from each end", launch.pick, "ft", 1, False),
    ("hook along from the middle, to the far end", launch.hook_x, "ft", 1, False),
    ("tension in a sling leg at 45°", launch.tension["middle"], "lb", 0, False),
    *((f"water to deck top, {name}", row, "in", 1, True)
      for name, row in zip(CORNERS.keys, launch.corner, strict=True)),
    ("mean of the four", launch.mean, "in", 1, True),
    ("pounds that sink it an inch", launch.inch, "lb/in", 0, False),
    ("one side lower by an inch: pounds", launch.level_side, "lb/in", 0, False),
    ("one end lower by an inch: pounds", launch.level_end, "lb/in", 0, False),
    ("weight test, drop at the side", launch.drop_side, "in", 1, True),
    ("weight test, drop at the corner", launch.drop_corner, "in", 1, True),
)
"""Words, quantity, unit, decimals, whether a blank is left beside it."""

for _n, _letter in enumerate(TYPES):
    if _n % A_PAGE == 0:
        sheet.page_break()
    block(f"Type {_letter}: expected, and as read")
    for _words, _row, _unit, _digits, _blank in LINES:
        show(f"{_letter}: {_words}", or_dash(of_type(sec.quantity, _letter) > 0,
                                             of_type(_row, _letter)), _unit, _digits, blank=_blank)
    show(f"{_letter}: twist, either way at most 1/2 in", blank=True)
    show(f"{_letter}: weights added or shifted, and where", blank=True)

sheet.page_break()
block("As-built record, one line a section")
for _words in ("Float serial numbers", "Anchor positions, bearing and distance",
               "Chain lengths as set, and the water level of the day",
               "Photographs: frame, floats, corners, anchors"):
    for _ in range(4):
        show(_words, blank=True)
        _words = ""
show("Second reading, after a month: date", blank=True)
for _name in CORNERS.keys:
    show(f"Second reading: {_name}, in", blank=True)
