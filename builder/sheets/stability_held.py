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
holder_there = row("A neighbour of another type is there: 1, else 0", "k_n", "",
                   when(all_of(held_line > 1, holder_stiff > 0,
                               absolute(holder_trim - alone_trim) > 0), 1, 0), STATICS,
                   digits=0)
_half = job.flotation_load * parts.deck_area / 2
roll_moment = row("Moment that lists it: a load at the edge or on one half, or a float lost",
                  "M_r", "lb·ft",
                  greatest(sec.point_load * (parts.overall_width / 2
                                             - own.point_from_edge.in_("ft")),
                           job.flotation_load * parts.deck_area * parts.overall_width / 8,
                           weight.service * parts.row_y / greatest(parts.floats - 1, 1)),
                  STATICS, digits=0)
loaded_list = row("Righting moment a unit of list, alone, the greater load aboard", "K_r", "lb·ft",
                  alone_list - greatest(sec.point_load, _half) * (
                      parts.deck_top + job.person_height - buoyancy.draft_service.in_("ft")),
                  ARCHIMEDES, digits=0)
roll_share = row("Moment that goes through the hinges, with what it has by itself", "M_t", "lb·ft",
                 (roll_moment
                  + absolute(weight.service * (weight.service_y - buoyancy.flotation_y)))
                 * greatest(holder_stiff, 0)
                 / greatest(loaded_list + holder_stiff, own.least_weight * own.least_length),
                 HINGE, digits=0)
pin_load = row("Load up or down on one hinge; 0 where not held", "V_h", "lb",
               when(all_of(held_line > 1, holder_there < 1), SMALL_SHARE * limits.hinge_load,
                    holder_there * (greatest(sec.point_load, _half / 4)
                                    + roll_share / held.hinge_apart)), HINGE, digits=0)
note("On one hinge: all of the upright force at the joint (the point load, or an eighth of the "
     "flotation load) and the couple of that moment. A neighbour that is not there reads 99 times "
     "what a hinge may carry.")
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
