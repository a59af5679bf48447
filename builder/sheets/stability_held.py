"""Stability, before all else: is a narrow section held in roll by a neighbour?

Two hinges on one level line make neighbour and section lean together.  A lean of the section by a
unit of slope then wakes the neighbour's own righting moment besides: its trim where it lies
across, its list where it lies in line.  It counts as if the floats of the section stood wider:
k over the water a foot of draft takes is added to their mean square across, in every case.

The pins carry the neighbour's share of the moment.  Where they do not, or the neighbour is not
there, the section stands alone and is judged so.
"""

from __future__ import annotations

from builder.language import absolute, all_of, greatest, picked, when
from builder.language.rows import SMALL_SHARE

from . import buoyancy, parts, weight
from . import inputs as job
from . import inputs_afloat as limits
from . import sections as sec
from . import sections_afloat as held
from .reference import own
from .stability_loads import fall, gangway_more, half_load, snow_half_load, snow_z
from .stability_sheet import ARCHIMEDES, GROUP, OURS, STATICS, block, check, note, row, sheet

HINGE = "statics; own judgement"

block("Held in roll by a neighbour")
note("Righting moments are in service, nobody aboard. The neighbour counts with its own floats "
     "alone, never with what holds it in its turn. The heights below have it in them; Buoyancy "
     "leaves it to this sheet whether it is stable. As launched it counts as hinged on.")
held_line = sheet.find("Neighbour: 1 none, 2 to 7 for A to F", held.HOLDERS, held.held_by)
held_number = row("Column of the neighbour; the first where there is none", "i_h", "",
                  greatest(held_line - 1, 1), STATICS, digits=0)


def _alone(way: str, symbol: str, inertia):
    """Declare the righting moment of the section by itself, a unit of slope [lb·ft]."""
    return row(f"Righting moment a unit of {way}, standing alone", symbol, "lb·ft",
               job.water_weight * inertia + weight.service * (buoyancy.KB - weight.service_kg),
               ARCHIMEDES, digits=0)


alone_list = _alone("list", "K_T", buoyancy.inertia_across)
alone_trim = _alone("trim", "K_L", buoyancy.inertia_along)
holder_trim = row("Righting moment of the neighbour in trim, all of it", "K_nL", "lb·ft",
                  picked(alone_trim, held_number), ARCHIMEDES, digits=0)
holder_stiff = row("Righting moment of the neighbour, this section's share of it", "K_n", "lb·ft",
                   when(held.holder_lies.is_("across"), holder_trim,
                        picked(alone_list, held_number)) / held.holder_holds, ARCHIMEDES,
                   digits=0)
holder_line = row("Line of that neighbour's own neighbour", "i_nn", "",
                  picked(held_line, held_number), STATICS, digits=0)
holder_there = row("A neighbour of another type is there: 1, else 0", "k_n", "",
                   when(all_of(held_line > 1, holder_stiff > 0,
                               absolute(holder_line - held_line) > 0), 1, 0), STATICS, digits=0)
note("No type is held by the type that it is itself held by, but one that names itself: so the "
     "neighbour's own entry tells it from this section.")
lists_alone = row("Moment that lists it by itself", "M_0", "lb·ft",
                  absolute(weight.service * (weight.service_y - buoyancy.flotation_y)), STATICS,
                  digits=0)
held_rights = row("Righting moment a unit of list while held, at rest", "K_h", "lb·ft",
                  alone_list + holder_stiff, ARCHIMEDES, digits=0)
lost_rights = row("The same that goes with an outer float", "K_1", "lb·ft",
                  job.water_weight * buoyancy.waterplane
                  * (parts.row_y ** 2 / greatest(parts.floats - 1, 1)
                     + parts.float_b ** 2 / 12 / parts.floats), ARCHIMEDES, digits=0)


def _leans(name: str, tag: str, moment, lost):
    """Declare the straight-line list under a moment, with so much of what rights it lost."""
    return row(f"List while held: {name}", f"u_r{tag}", "ft/ft", (lists_alone + moment)
               / greatest(held_rights - lost,
                          own.least_weight * own.least_length), ARCHIMEDES, digits=4)


held_point = _leans("point load at the edge", "P",
                    sec.point_load * (parts.overall_width / 2 - own.point_from_edge.in_("ft")),
                    sec.point_load * fall)
held_half = _leans("flotation load on one half", "h", half_load * parts.overall_width / 4,
                   half_load * fall)
held_snow = _leans("snow on one half", "s", snow_half_load * parts.overall_width / 4,
                   snow_half_load * (snow_z - buoyancy.draft_service.in_("ft")))
held_gangway = _leans("gangway loaded", "g",
                      gangway_more * absolute(sec.gangway_y - buoyancy.flotation_y),
                      gangway_more * fall)
held_lost = _leans("one float lost", "1", weight.service * parts.row_y
                   / greatest(parts.floats - 1, 1), lost_rights)
roll_share = row("Moment that goes through the hinges, the most of these", "M_t", "lb·ft",
                 greatest(holder_stiff, 0) * greatest(held_point, held_half, held_snow,
                                                      held_gangway, held_lost), HINGE, digits=0)
pin_load = row("Load up or down on one hinge; 0 where not held", "V_h", "lb",
               when(all_of(held_line > 1, holder_there < 1), SMALL_SHARE * limits.hinge_load,
                    holder_there * (greatest(sec.point_load, half_load / 4, gangway_more)
                                    + roll_share / held.hinge_apart)), HINGE, digits=0)
note("On one hinge: all of the upright force at the joint (the point load, an eighth of the "
     "flotation load, or the gangway's) and the couple of that moment. A neighbour that is not "
     "there reads 99 times what a hinge may carry.")
pin_check = check("Hinges and pins that hold it in roll", pin_load, at_most=limits.hinge_load,
                  source=HINGE, group=GROUP,
                  cure="Stronger hinges, or farther apart; the neighbour must be a type in use, "
                  "not its own. Until then it stands alone and is judged so.")
water_foot = row("Water a foot of draft takes", "γA", "lb/ft",
                 greatest((buoyancy.sinkage).in_("lb/ft"), own.one_pound_an_inch.in_("lb/ft")),
                 ARCHIMEDES, digits=0)
held_square = row("Mean square across that the neighbour stands for; 0 alone", "s_h", "ft²",
                  holder_there * holder_stiff * (pin_load <= limits.hinge_load) / water_foot, OURS,
                  digits=2)
