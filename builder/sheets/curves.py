"""Curves: what is better looked at than read, for the section type that is chosen."""

from __future__ import annotations

from builder.language import Curve, Series, Sheet, largest, picked, total

from . import buoyancy, price, stability_arm, weight
from . import inputs as job
from . import sections as sec
from .yard_tape import number as shown_number

sheet = Sheet("Curves", "Curves", scope="job",
              about="For the type chosen on Inputs. The charts follow the inputs.")
row, block, note = sheet.row, sheet.block, sheet.note


def _taken(label: str, symbol: str, unit: str, series, digits: int) -> Series:
    """Declare the rows of a section series for the chosen type."""
    return Series(symbol, [
        row(f"{label}, point {k}", f"{symbol}_{k}", unit, picked(x, shown_number), "", digits)
        for k, x in enumerate(series, start=1)])


block("Freeboard against live load")
live = _taken("Live load", "q", "psf", buoyancy.curve_load, 1)
free = _taken("Deck above water", "F", "in", buoyancy.curve_free, 1)
ends = Series("q_e", [row("Limit, from", "q_e1", "psf", 0, "", 1),
                      row("Limit, to", "q_e2", "psf", largest(live), "", 1)])
flotation = Series("F_f", [
    row("Least under the flotation load, from", "F_f1", "in",
        picked(sec.deck_flotation, shown_number), "Sections", 1),
    row("Least under the flotation load, to", "F_f2", "in",
        picked(sec.deck_flotation, shown_number), "Sections", 1)])
load = Series("q_f", [
    row("Load at which freeboard is judged, from", "q_f1", "psf", job.flotation_load, "Inputs", 1),
    row("Load at which freeboard is judged, to", "q_f2", "psf", job.flotation_load, "Inputs", 1)])
rise = Series("F_q", [row("Its line, from", "F_q1", "in", 0, "", 1),
                      row("Its line, to", "F_q2", "in", largest(free), "", 1)])
sheet.picture("Freeboard against live load", "curves", "Live load [psf]", "Deck above water [in]",
              [Curve("Deck above water", live, free),
               Curve("Least under flotation load", ends, flotation),
               Curve("Flotation load", load, rise)],
              "A falling line: the more live load, the lower the deck. A level line is the least "
              "freeboard under the flotation load, an upright one that load: where it meets the "
              "falling line the deck must stand above the level one.")

sheet.page_break()
block("Righting arm against list, the point load at mid edge")
note("Where the lever of the load crosses the righting arm the section comes to rest.")
angle = Series("φ", [row("List, point 0", "φ_0", "deg", 0, "", 1),
                     *_taken("List", "φ", "deg", stability_arm.arm_angle, 1)])
arm = Series("GZ", [row("Righting arm, point 0", "GZ_0", "ft", 0, "", 3),
                    *_taken("Righting arm", "GZ", "ft", stability_arm.arm_GZ, 3)])
steps = angle[1:]
lever = _taken("Lever of the load", "HZ", "ft", stability_arm.arm_load, 3)
sheet.page_break()
sheet.picture("Righting arm against list", "curves", "List [deg]", "Arm [ft]",
              [Curve("Righting arm", angle, arm), Curve("Lever of the load", Series("φ", steps),
                                                        lever)],
              "A rising line, the righting arm, and a nearly level one, the lever of a load at "
              "the edge.")

block("The whole dock")
all_weight = row("Weight of all sections as launched", "ΣW_L", "lb",
                 total(weight.launch, sec.quantity), "statics", 0)

sheet.page_break()
block("What the price is made of")
share = Series("share", [row(name, f"s_{k}", "", x, "Price", 3)
                         for k, (name, x) in enumerate(price.shares.items(), start=1)])
sheet.picture("Shares of the selling price", "bars", "Share of the price", "",
              [Curve("Share", share, share)],
              "One bar a group: its share of the selling price.", lines=24)
