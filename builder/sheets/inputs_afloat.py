"""Inputs, continued: limits of tilt and of the low corner, afloat."""

from __future__ import annotations

from . import inputs as job
from .reference import constants, own, ufc_piers

hsc = constants("hsc_code")
ours = constants("own_afloat")

sheet = job.sheet
ask, block = sheet.ask, sheet.block

OURS = "own judgement"

block("Limits of tilt and low corner")
tilt_rest_ok = ask("Tilt at rest, good", "τ_0", "deg", 0.1, 5, "Lake guidelines: 3/8 in per 3 ft",
                   default=own.tilt_gangway_ok)
tilt_rest_most = ask("Tilt at rest, most", "τ_0m", "deg", 0.2, 10,
                     "own judgement; 1:48 where an accessible route is claimed",
                     default=own.tilt_gangway_most)
tilt_point_ok = ask("Tilt under the point load, good", "τ_P", "deg", 0.5, 12, OURS,
                    default=own.tilt_point_ok, digits=1)
tilt_point_most = ask("Tilt under the point load, most", "τ_Pm", "deg", 1, 15,
                      "UFC 4-152-01 7-3.3", default=ufc_piers.landing_tilt, digits=1)
tilt_half_ok = ask("Tilt with one half loaded, good", "τ_h", "deg", 0.5, 12, OURS,
                   default=own.tilt_half_ok, digits=1)
tilt_half_most = ask("Tilt with one half loaded, most", "τ_hm", "deg", 1, 15, "HSC Code 2000 2.11",
                     default=hsc.heel_crowd, digits=1)
tilt_lost = ask("Tilt with one float lost, good", "τ_1", "deg", 0.5, 15, OURS,
                default=own.tilt_lost_float, digits=1)
corner_share = ask("Low corner over freeboard in service, good", "c_s", "", 0.1, 1, OURS,
                   default=own.corner_share)
corner_least = ask("Low corner above water, least", "c_2", "in", 0.5, 12, OURS,
                   default=own.corner_least, digits=1)
lost_ok = ask("Low corner with one float lost, good", "c_4", "in", 0.5, 24, OURS,
              default=own.lost_float_ok, digits=1)
lost_least = ask("Low corner with one float lost, least", "c_1", "in", 0.5, 24, OURS,
                 default=own.lost_float_least, digits=1)
snow_density = ask("Weight of settled snow", "ρ_s", "pcf", 3, 50,
                   "gives the height of its middle: own judgement", default=ours.snow_density,
                   digits=0)
