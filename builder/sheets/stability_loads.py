"""Stability, before all else: loads on the deck, and how high their middles stand."""

from __future__ import annotations

from builder.language import greatest, when

from . import buoyancy, parts, site_loads
from . import inputs as job
from .inputs_afloat import snow_density
from .reference import own
from .stability_sheet import OURS, STATICS, block, row

YES = buoyancy.YES

block("Loads on the deck")
half_load = row("Flotation load on one half", "Q_h", "lb", buoyancy.live_flotation / 2, STATICS,
                digits=0)
people_z = row("Standing people above K", "z_pk", "ft", parts.deck_top + job.person_height,
               "IS Code 2008 3.5.2.7", digits=3)
fall = row("Righting moment lost a pound of people", "k", "ft",
           greatest(people_z - buoyancy.draft_service.in_("ft"), own.least_length), STATICS,
           digits=3)
gangway_more = row("Gangway loaded: more than at rest (G1)", "Q_g", "lb",
                   greatest(site_loads.gangway_25 - site_loads.gangway_dead, 0),
                   "UFC 4-152-01 7-4.4", digits=0)
snow_load = row("Snow, if it stays in", "Q_s", "lb",
                when(job.stays_in.is_(YES), job.ground_snow * parts.deck_area, 0), STATICS,
                digits=0)
snow_half_load = row("Snow on one half", "Q_s2", "lb", snow_load / 2, STATICS, digits=0)
snow_z = row("Middle of the snow above K", "z_s", "ft",
             parts.deck_top + job.ground_snow / snow_density / 2, OURS, digits=3)
