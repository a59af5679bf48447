"""Inputs: what holds for the whole job.  A cell left blank takes the default beside it."""

from __future__ import annotations

from builder.language import Sheet, when

from . import catalog
from .reference import (
    ANSWERS,
    BOLTS,
    DELIVERED,
    FINISHES,
    LAGS,
    SAWN,
    SCREWS,
    TIMBER_PAIRS,
    USES,
    WATERS,
    WOOD_PAIRS,
    YES_NO,
    cfr,
    foam_law,
    irc,
    is_code,
    lake,
    own,
    practice,
)

sheet = Sheet("Inputs", "Job, site, materials and limits", scope="job",
              about="What holds for the whole job: fill in the framed cells.")
ask, choose, write, block = sheet.ask, sheet.choose, sheet.write, sheet.block

block("Job")
job_name = write("Job")
client = write("Client")
site = write("Site")
water_body = write("Water body")
authority = write("Who controls the water")
permit = write("Permit numbers")
designer = write("Designed by")
checker = write("Checked by")
job_date = write("Date")
revision = write("Revision")

block("Site")
water = choose("Water", WATERS, "fresh, sea or brackish")
water_weight = ask("Weight of water", "γ", "pcf", 62, 65, "by the water chosen; weigh brackish",
                   default=WATERS.find(water)["weight"], digits=1)
low_water_depth = ask("Depth at low water, shallowest place", "d_w", "ft", 0.5, 200,
                      "sounded on site", digits=1)
stays_in = choose("Stays in over winter", YES_NO, "owner's plan")
ground_snow = ask("Ground snow load", "p_g", "psf", 0, 300, "local code", default=0, digits=0)
salt_distance = ask("Distance to salt water", "", "ft", 0, 1000000,
                    "measured; 0 when the dock floats in it", digits=0)

block("Use and loads")
use = choose("Private or public", USES, "who may walk on it")
flotation_load = ask("Live load for freeboard", "q_f", "psf", 10, 100,
                     "Lake guidelines, loads", default=lake.live_uniform, digits=0)
person_weight = ask("Weight of a standing person", "w_p", "lb", 120, 400,
                    "46 CFR 170.090(d)", default=cfr.person_weight, digits=0)
person_height = ask("Centre of a standing person above the deck", "z_p", "ft", 2, 5,
                    "IS Code 2008 3.5.2.7", default=is_code.person_height)

block("Timber")
wood = choose("Wood and grade, 2 to 4 in thick", WOOD_PAIRS, "grade stamp")
timber_wood = choose("Wood and grade, 5 x 5 in and larger", TIMBER_PAIRS, "grade stamp",
                     default=TIMBER_PAIRS.keys[0])
sawn = choose("How the lumber is sawn", SAWN, "yard")
incised = choose("Incised for treatment", YES_NO, "most western species are")
delivered = choose("How treated wood arrives", DELIVERED, "yard", default=DELIVERED.keys[0])
density_built = ask("Timber as delivered", "ρ_0", "pcf", 20, 80, "own judgement",
                    default=when(delivered.is_(DELIVERED.keys[0]), own.density_dry,
                                 own.density_green), digits=1)
density_frame = ask("Timber in service, below deck", "ρ_f", "pcf", 20, 80, "own judgement",
                    default=own.density_below_deck, digits=1)
density_deck = ask("Wood decking in service", "ρ_d", "pcf", 20, 80, "own judgement",
                   default=own.density_deck, digits=1)
density_aged = ask("All timber, aged test", "ρ_a", "pcf", 20, 80, "own judgement",
                   default=own.density_aged, digits=1)
longest_stock = ask("Longest stock length the yard sells", "L_st", "ft", 6, 40, "yard", digits=0)

block("Hardware")
finish = choose("Finish of fasteners and connectors", FINISHES, "one metal a joint: IRC R317.3")
bolt = choose("Bolt diameter", BOLTS, "frame bolts", default="1/2")
stringer_angle = choose("Stringer-end angle", catalog.ANGLES, "catalog")
corner_inside = choose("Corner bracket, inside", catalog.CORNERS, "catalog")
corner_outside = choose("Corner bracket, outside", catalog.CORNERS, "catalog")
washer_plate = choose("Washer plate", catalog.PLATES, "catalog")
lag = choose("Float lag diameter", LAGS, "float maker")
lag_length = ask("Float lag length", "L_g", "in", 1, 12, "float maker")
lag_grip = ask("Float flange thickness under the lag head", "t_fl", "in", 0, 2, "float maker",
               default=own.float_flange)
deck_screw = choose("Deck screw", SCREWS, "decking maker", default="No.10")
deck_screw_length = ask("Deck screw length", "L_sc", "in", 1, 6, "decking maker",
                        default=own.deck_screw_length)

block("Authority's own rules")
frame_rule = choose("7 in under the frame is required", YES_NO, "Lake guidelines, dead load",
                    default="no")
timber_rule = choose("Timber frames are allowed here", ANSWERS,
                     "ask before quoting: some lakes forbid them", default="not asked yet")
open_area_rule = ask("Open area the permit asks of the deck", "o_min", "", 0, 0.9,
                     "permit; share of the deck", default=0)
shell_rule = ask("Least shell of plastic floats", "t_sh", "in", 0, 1,
                 "satisfies the strictest state seen", default=foam_law.shell_least, digits=3)

block("Limits and allowances")
growth_load = ask("Growth on floats and frame", "g_w", "psf", 0, 10,
             "per ft² of float plan; weigh a fouled float", default=0)
immersed_most = ask("Share of usable volume under the capacity load", "i_c", "", 0.5, 1,
                    "own judgement", default=own.immersed_most)
reserve_ok = ask("Live load to sink the floats ÷ capacity load, good", "f_ok", "", 1, 3,
                 "own judgement", default=own.reserve_ok)
reserve_least = ask("The same, least", "f_min", "", 1, 3, "own judgement",
                    default=own.reserve_least)
aged_ok = ask("Aged test: share of usable volume, good", "a_ok", "", 0.5, 1, "own judgement",
              default=own.aged_ok)
aged_most = ask("The same, most", "a_max", "", 0.5, 1, "own judgement", default=own.aged_most)
float_water = ask("Water taken up by floats, aged test", "w_ab", "pcf", 0, 10,
                  "Lake guidelines, flotation", default=lake.foam_absorption)
snow_most = ask("Share of usable volume under snow, most", "a_s,max", "", 0.5, 1,
                "own judgement", default=own.snow_most)
frame_least = ask("Frame above water, empty, least", "F_u,min", "in", 1, 24,
                  "Lake guidelines, dead load", default=lake.frame_freeboard, digits=1)
clearance_least = ask("Clearance over the bed at low water", "c_min", "ft", 0.1, 10,
                      "own judgement; local rule first", default=own.bed_clearance)
gm_least = ask("Metacentric height under a standing crowd", "GM_ok", "ft", 0.1, 10,
               "own judgement", default=own.GM_least)
deflection_live = ask("Span over live deflection", "n_Δ", "", 120, 1000, "IRC Table R301.7",
                      default=irc.deflection_live, digits=0)
deflection_total = ask("Span over total deflection", "n_Δt", "", 120, 1000, "IRC Table R301.7",
                       default=irc.deflection_total, digits=0)
lift_factor = ask("Dynamic factor in lifting", "k_i", "", 1, 3, "own judgement",
                  default=own.lift_impact)
sling_share = ask("Sling point from the end, share of length", "a_s", "", 0.05, 0.45,
                  "own judgement", default=own.lift_point_share)

block("Purchasing")
bumper_length = ask("Bumper is sold by", "L_b", "ft", 1, 100, "catalog", default=own.bumper_length,
                    digits=0)
lumber_waste = ask("Spare lumber for culls and miscuts", "", "", 0, 0.5,
                   "own judgement; on top of the cut list", default=own.lumber_waste)
deck_waste = ask("Spare decking", "", "", 0, 0.5,
                 "own judgement; on top of whole panels and the cut list",
                 default=own.deck_waste)
hardware_spare = ask("Spare fasteners", "", "", 0, 0.5, "own judgement",
                     default=own.hardware_spare)
screws_a_crossing = ask("Screws per board at each crossing", "n_sc", "each", 1, 4,
                        "common practice, no source", default=practice.board_screws, whole=True)
board_gap = ask("Gap between boards", "g_b", "in", 0, 1, "own judgement", default=own.board_gap,
                digits=3)
