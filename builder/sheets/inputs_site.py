"""Inputs, continued: wind, waves, current and levels of the site, the gangway and the mooring."""

from __future__ import annotations

from builder.language import all_of, arc_tangent, root, when
from builder.language.expressions import lift

from . import inputs as job
from .reference import (
    YES_NO,
    constants,
    marina,
    own,
    practice,
    table,
    words,
)

asce = constants("asce_7")
aisc = constants("aisc_360_10")
ada = constants("ada_2010")
ufc_gangway = constants("ufc_4_152_01")
ufc_moorings = constants("ufc_4_159_03")
sea_grant = constants("sea_grant")
soil = constants("ibc_1807")
piles = constants("nds_piles")
ours = constants("own_site")
EXPOSURES = table("exposure")
CHAINS = table("chain")
BEDS = table("bed_friction")
WINDS = words("Kind of wind speed", "strength-level map", "older map")
MOORINGS = words("Kind of mooring", "chains and dead weights", "guide piles",
                 "shore arms or cables")
ARMS = words("Shore arm or line", "stiff arms", "wire rope", "synthetic line", "nylon line")

THIRD = lift(1) / 3

sheet = job.sheet
ask, choose, block = sheet.ask, sheet.choose, sheet.block

block("Wind, waves and current")
wind_speed = ask("Wind speed, 3-second gust of the map", "V", "mph", 40, 250,
                 "local code map; strength-level in ASCE 7-10 and later", digits=0)
wind_kind = choose("Kind of map wind speed", WINDS, "ASCE 7-10 and later are strength-level")
exposure = choose("Exposure", EXPOSURES, "D on open water unless shown otherwise", default="D")
terrain = ask("Wind speeds up over a hill or cape", "K_zt", "", 1, 3, "ASCE 7-10 26.8; 1 on a flat "
              "shore", default=1)
force_coefficient = ask("Force coefficient of dock sides and boats", "C_f", "", 1, 2.5,
                        "1.3 to 2.0 from memory; own judgement", default=ours.force_coefficient)
side_pressure = ask("Wind on sides and boats, not below", "p_min", "psf", 1, 60,
                    "Marina guidelines 2005", default=marina.side_pressure, digits=1)
line_pull = ask("Pull of a moored boat on its lines, where more than its wind", "P_b", "lb", 0,
                20000, "boat maker's rules; not added to its wind", default=0, digits=0)
fetch = ask("Fetch: longest straight open water", "F", "ft", 50, 500000, "chart or map", digits=0)
fetch_depth = ask("Mean depth along the fetch, at high water", "d_F", "ft", 1, 1000,
                  "chart", digits=1)
wind_mean = ask("Steady wind that raises waves", "U", "mph", 10, 200,
                "gust over a mean; own judgement",
                default=ours.gust_to_mean * wind_speed
                * when(wind_kind.is_(WINDS.keys[0]), root(asce.allowable), 1), digits=1)
wave_most = ask("Largest wave for this kind of dock", "H_max", "ft", 0.25, 5,
                "Sea Grant guide 3.1", default=sea_grant.wave_most, digits=1)
current = ask("Current, fastest; 0 on still water", "V_c", "ft/s", 0, 15, "measured on site")
current_coefficient = ask("Coefficient of current on the floats, deep water", "C_0", "", 0.5, 3,
                          "1.0 to 2.0 from memory; own judgement",
                          default=ours.current_coefficient)
hull_coefficient = ask("Coefficient of current on hulls of boats, deep water", "C_h0", "", 0.2, 3,
                       "UFC 4-159-03 Eq. 9-13 gives ship hulls less, from memory; own judgement",
                       default=ours.hull_coefficient)
wake = ask("Wake of passing boats at the dock, height", "H_wk", "ft", 0, 6,
           "watched on a busy day; own judgement", default=ours.wake, digits=1)

block("Levels")
high_water = ask("High water above low water", "h_H", "ft", 0, 40, "gauge, records or marks",
                 digits=1)
flood = ask("Highest water (flood, surge) above low water", "h_X", "ft", 0, 60,
            "records; not below high water", default=high_water, digits=1)

block("Gangway")
gangway_length = ask("Gangway, hinge to foot; 0 where there is none", "G", "ft", 0, 120,
                     "layout", default=0, digits=1)
gangway_width = ask("Gangway, clear width", "b_g", "in", 24, 96, "UFC 4-152-01 7-4.2",
                    default=ufc_gangway.gangway_width_one_way, digits=1)
gangway_width_least = ask("Gangway, clear width, least", "b_min", "in", 24, 96,
                          "UFC 4-152-01 7-4.2; 48 where people meet on it",
                          default=ufc_gangway.gangway_width_one_way, digits=1)
gangway_weight = ask("Gangway, whole weight", "W_g", "lb", 0, 12000, "maker; weigh it",
                     default=ours.gangway_dead * gangway_length * gangway_width.in_("ft"),
                     digits=0)
hinge_height = ask("Gangway hinge above low water", "z_g", "ft", 0, 60, "levelled on site",
                   default=high_water + ours.hinge_above, digits=1)
gangway_run = ask("Steepest gangway: run for one rise", "n_s", "", 1.5, 20,
                  "own judgement; 1.5 is UFC 4-152-01 7-4.1", default=own.gangway_run_3_1)
accessible = choose("Accessible route to the floats", YES_NO, "needed unless a private home",
                    default="no")
slips = ask("Boat slips of the whole facility", "n_b", "each", 0, 2000, "ADA 2010 1003.2.1",
            default=0, whole=True)
abutment_bolts = ask("Bolts of the gangway hinge to the abutment", "n_a", "each", 2, 24,
                     "layout", default=ours.abutment_bolts, whole=True)
anchor_limit = ask("What one of them carries in its concrete; 0 when not known", "T_a", "lb", 0,
                   50000, "anchor maker's table, for its concrete, depth and edge", default=0,
                   digits=0)
plate_stringers = ask("Stringers under the plate of a gangway wheel", "n_pl", "each", 1, 12,
                      "own judgement: 3 at least", default=ours.plate_stringers, whole=True)

block("Mooring")
mooring = choose("What holds the dock", MOORINGS, "Mooring")
leg_angle = ask("Legs or arms, angle in plan from the length of the dock", "α", "deg", 10, 80,
                "layout", default=ours.leg_angle, digits=0)
crossed = choose("Chains cross under the dock", YES_NO, "crossed chains hold it from turning",
                 default="no")
bed = choose("Bed", BEDS, "probe it; soft mud is for an engineer", default=BEDS.keys[-1])
chain = choose("Chain, Grade 30, size", CHAINS, "Mooring", default="1/2")
chain_length = ask("Chain of one leg; 0 when none is chosen yet", "L_c", "ft", 0, 1000, "Mooring",
                   default=0, digits=0)
chain_factor = ask("Breaking force of chain over its pull, least", "f_c", "", 2, 10,
                   "UFC 4-159-03 Table 3-7: 4 round bends, 3 straight",
                   default=ufc_moorings.chain_bend)
set_pull = ask("Pull at which a leg is set, at high water", "H_0", "lb", 5, 2000,
               "own judgement", default=ours.set_pull, digits=0)
block_weight = ask("Dead weight of one leg, dry; 0 when none is chosen yet", "W_a", "lb", 0,
                   100000, "concrete, weighed in air", default=0, digits=0)
sliding_factor = ask("Factor on the sliding of a dead weight", "f_s", "", 1, 5, "own judgement",
                     default=own.sliding_factor)
pile_diameter = ask("Guide pile, diameter at the bed", "D_p", "in", 6, 36, "solid round timber",
                    default=ours.pile_diameter, digits=1)
pile_Fb = ask("Guide pile, bending stress allowed, ten-year load", "F_b,p", "psi", 300, 4000,
              "NDS 2018 Table 6A, from memory", default=piles.Fb_pine, digits=0)
pile_embedded = ask("Guide pile, depth in the bed; 0 when none is chosen yet", "d_e", "ft", 0, 80,
                    "Mooring", default=0, digits=1)
pile_top = ask("Guide pile, top above low water; 0 when none is chosen yet", "z_t", "ft", 0, 80,
               "Mooring", default=0, digits=1)
soil_bearing = ask("Sideways bearing of the bed, for each foot of depth", "s_b", "pcf", 10, 400,
                   "IBC Table 1806.2; soft mud has none", default=soil.soil_default, digits=0)
isolated = choose("Piles stand alone and may move ½ in at the bed", YES_NO, "IBC 1806.3.4, from "
                  "memory: twice the bearing", default="no")
scour = ask("Bed washed out round a pile", "h_s", "ft", 0, 15, "own judgement",
            default=ours.scour, digits=1)
hoop_play = ask("Play of a pile hoop, each side", "g_h", "in", 0.5, 6,
                "common practice, no source: 1 in at least", default=practice.pile_play_least)
slab = choose("Piles stand through a stiff slab at the bed", YES_NO,
              "IBC 1807.3.2.2: a concrete ramp or floor, not riprap", default="no")
arm_kind = choose("Shore arms, or lines in their place", ARMS, "a line pulls only",
                  default=ARMS.keys[0])
line_factor = ask("Breaking force of such a line over its pull, least", "f_li", "", 2, 12,
                  "UFC 4-159-03 Table 3-7: 3; own judgement: 5 for line; nylon weaker wet",
                  default=when(arm_kind.is_(ARMS.keys[1]), ufc_moorings.wire, own.synthetic_wet)
                  / (1 - ufc_moorings.nylon_wet_loss * arm_kind.is_(ARMS.keys[3])))
line_break = ask("Breaking force of such a line, new; 0 when none is chosen yet", "T_b", "lb", 0,
                 500000, "maker", default=0, digits=0)
hinge_pin = ask("Section hinge, diameter of its pin", "D_hi", "in", 0.25, 3, "catalog",
                default=ours.hinge_pin)
hinge_planes = ask("Section hinge, places where its pin is sheared", "n_sh", "each", 1, 4,
                   "2 where a lug stands between two; own judgement: 1 until looked at",
                   default=ours.hinge_planes, whole=True)
hinge_limit = ask("Section hinge, working load: its maker's, else of the pin alone", "T_hi", "lb",
                  50, 100000, "AISC 360-10 J3.6, A307 steel or better",
                  default=hinge_planes * aisc.Fnv_A307 * arc_tangent(1) * hinge_pin ** 2
                  / aisc.omega, digits=0)
sheltered = all_of(job.use.is_("private"), fetch < ours.swim_fetch)
"""A private dock on a short fetch, where a platform's anchor may have a lower factor."""
