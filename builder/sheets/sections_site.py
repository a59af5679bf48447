"""Sections, continued: boats that lie at a section, and what holds it."""

from __future__ import annotations

from . import sections as sec
from .reference import constants

ours = constants("own_site")
sheet = sec.sheet
ask, block = sheet.ask, sheet.block

block("Boats and mooring")
boat_length = [ask(f"Boat {i}: length; 0 where none lies", f"l_b{i}", "ft", 0, 60,
                   "largest that fits", default=0, digits=1) for i in (1, 2)]
boat_height = [ask(f"Boat {i}: height of its profile above water", f"h_b{i}", "ft", 0, 20,
                   "mean, cabin and top included", default=0, digits=1) for i in (1, 2)]
boat_beam = [ask(f"Boat {i}: beam", f"b_b{i}", "ft", 0, 20, "maker", default=0, digits=1)
             for i in (1, 2)]
boat_draft = [ask(f"Boat {i}: draft, where one lies", f"T_b{i}", "ft", 0, 8,
                  "maker; own judgement until known", default=ours.boat_draft, digits=1)
              for i in (1, 2)]
boat_x = [ask(f"Boat {i}: middle, along, from the middle", f"x_b{i}", "ft", -40, 40, "layout",
              default=0, digits=1) for i in (1, 2)]
boat_y = [ask(f"Boat {i}: middle, across, from the centreline", f"y_b{i}", "ft", -30, 30,
              "layout", default=0, digits=1) for i in (1, 2)]
debris = ask("Drift lodged against it, area under water", "A_db", "ft²", 0, 500,
             "seen on site; 0 on still water", default=0, digits=0)
holds = ask("Legs, piles or arms on this section; 0 where neighbours hold it", "n_m", "each", 0,
            12, "layout", default=0, whole=True)
carried = ask("Sections whose force they take, itself included", "k_m", "", 1, 20,
              "the neighbours it holds", default=1, digits=1)
