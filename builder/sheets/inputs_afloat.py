"""Inputs, continued: limits of tilt and of the low corner, afloat."""

from __future__ import annotations

from . import inputs as job
from .reference import YES_NO, constants, lake, own, ufc_piers

hsc = constants("hsc_code")
ours = constants("own_afloat")

sheet = job.sheet
ask, choose, block = sheet.ask, sheet.choose, sheet.block

OURS = "own judgement"

block("Limits of tilt and low corner: a source named is published, own judgement is ours")
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
even_least = ask("Low corner under even loads, and under snow, least", "c_0", "in", 0.01, 12,
                 "own judgement: above water", default=ours.above_water)
finger_rule = choose("Finger rule is required: end of a finger, 400 lb 2 ft from it", YES_NO,
                     "Lake guidelines, loads", default="no")
finger_most = ask("Freeboard lost at the end of a finger under it, most", "Δ_F", "in", 0.5, 24,
                  "Lake guidelines, loads", default=lake.finger_loss, digits=1)
hinge_load = ask("Load up or down that one hinge carries", "V_0", "lb", 50, 20000,
                 "maker; else own judgement", default=ours.hinge_load, digits=0)
