"""Weight: what a section weighs, part by part, and where its centre of gravity lies.

Heights are above K, the underside of the floats; x along from the middle, y across from the
centreline.  As launched: dry floats, timber as delivered, fixed items mounted.  In service: timber
wet, growth, gangway at rest and the hanging chain besides.  Parts that lie evenly about the middle
have no arm and are left out of the sums for x and y.
"""

from __future__ import annotations

from builder.language import Series, Sheet, arc_tangent, bare, greatest, sum_over, when

from . import catalog, parts
from . import inputs as job
from . import sections as sec
from .reference import BOLTS, WOODS, own, practice, supplement

sheet = Sheet("Weight", "Dead weight and centre of gravity, part by part",
              about="What every part weighs, as launched, in service and aged, with its height.")
row, check, block, note = sheet.row, sheet.check, sheet.block, sheet.note

STATICS, OURS = "statics", "own judgement"
ACROSS, PANELS = parts.ACROSS, parts.PANELS
WOODEN = catalog.BOARDS.find(sec.board)["wood"] > 0


def _volume(thickness, depth, length):
    """Return the volume [ft³] of a piece from two sides [in] and a length [ft]."""
    return (thickness * depth).in_("ft²") * length


block("Density of the wood, a cross-check")
gravity = row("Specific gravity of the frame's wood", "G", "", WOODS.find(job.wood)["G"],
              "NDS Supplement 2018 Tables 4A, 4B")
moisture = row("Moisture, percent: the dry limit", "m", "", supplement.moisture_limit,
               "NDS Supplement 2018 4.1.4", digits=0)
density_moist = row("Weight of the wood at that moisture", "ρ_m", "pcf",
                    supplement.density_water * gravity
                    / (1 + supplement.density_swelling * gravity * moisture)
                    * (1 + moisture / supplement.density_percent),
                    "NDS Supplement 2018 3.1.3", digits=1)
density_check = check("Timber as delivered against its weight just dry", job.density_built,
                      at_least=density_moist, look_at=density_moist, worst="LOOK",
                      source="NDS Supplement 2018 3.1.3",
                      cure="Weigh a board: treated wood is seldom lighter than this.",
                      group="Weight")

block("Timber, volume")
rail_volume = row("Rail ply, each", "v_r", "ft³",
                  _volume(parts.rail_t, parts.rail_d, parts.rail_length), STATICS, digits=3)
header_volume = row("Header, each", "v_h", "ft³",
                    _volume(parts.header_t, parts.header_d, parts.header_length), STATICS,
                    digits=3)
stringer_volume = row("Stringer piece, each", "v_s", "ft³",
                      _volume(parts.stringer_t, parts.stringer_d, parts.stringer_length), STATICS,
                      digits=3)
cross_volume = row("Cross-beam, each", "v_c", "ft³",
                   _volume(parts.cross_t, parts.cross_d, parts.cross_length), STATICS, digits=3)
skirt_volume = row("Skirt, all sides", "v_k", "ft³",
                   _volume(parts.skirt_t, parts.skirt_d, parts.skirt_length_total), STATICS,
                   digits=3)
board_volume = row("Deck boards, all; 0 under panels", "v_b", "ft³",
                   when(PANELS, 0, parts.board_length * parts.deck_thickness.in_("ft")
                        * (parts.boards_over
                           - ((parts.boards - 1) * parts.board_gap).in_("ft"))),
                   STATICS, digits=3)

board_built = row("Deck boards as delivered", "ρ_b", "pcf",
                  when(WOODEN, job.density_built, parts.board_line["weight"]), OURS, digits=1)
board_wet = row("Deck boards in service", "ρ_bw", "pcf",
                when(WOODEN, job.density_deck, parts.board_line["weight"]), OURS, digits=1)

block("One piece, as launched")
rail_weight = row("Rail ply", "u_r", "lb", rail_volume * job.density_built, STATICS, digits=1)
header_weight = row("Header", "u_h", "lb", header_volume * job.density_built, STATICS, digits=1)
stringer_weight = row("Stringer piece", "u_s", "lb", stringer_volume * job.density_built,
                      STATICS, digits=1)
cross_weight = row("Cross-beam", "u_c", "lb", cross_volume * job.density_built, STATICS,
                   digits=1)
panel_weight = row("Deck panel, whole", "u_p", "lb",
                   catalog.PANELS.find(sec.panel)["weight"] * parts.panel_x * parts.panel_y,
                   STATICS, digits=1)
float_weight = row("Float", "u_f", "lb", parts.float_line["own weight"], STATICS, digits=1)
corner_weight = row("Brackets of a corner, inside and outside", "u_b", "lb",
                    catalog.CORNERS.find(job.corner_inside)["weight"]
                    + catalog.CORNERS.find(job.corner_outside)["weight"], STATICS)
angle_weight = row("Framing angle", "u_a", "lb",
                   catalog.ANGLES.find(job.stringer_angle)["weight"], STATICS)
plate_weight = row("Washer plate", "u_w", "lb", catalog.PLATES.find(job.washer_plate)["weight"],
                   STATICS)
screw_weight = row("Deck screw", "u_d", "lb",
                   catalog.SUNDRIES.find("Deck screw ", job.deck_screw)["weight"], STATICS,
                   digits=3)
lag_weight = row("Float lag and a 3/8 washer", "u_g", "lb",
                 catalog.SUNDRIES.find("Lag ", job.lag)["weight"]
                 + catalog.SUNDRIES.find("Washer 3/8")["weight"], STATICS)
heaviest_piece = row("Heaviest single piece to handle", "u_max", "lb",
                     greatest(rail_weight, header_weight, stringer_weight, cross_weight,
                              panel_weight, float_weight), STATICS, digits=0)

block("Bolts, by the length they need")
note("A quarter of π times D squared is the shank; the head is taken as heavy as the nut.")
bolt_foot = row("Shank of a bolt", "u_D", "lb/ft",
                practice.steel * (arc_tangent(1) * BOLTS.find(job.bolt)["D"] ** 2).in_("ft²"),
                STATICS, digits=3)
bolt_stack = row("Nut and projection past the wood", "h_n", "in",
                 BOLTS.find(job.bolt)["nut height"] + own.stack_projection, OURS, digits=3)
head_nut = row("Head and nut of a bolt", "u_n", "lb",
               2 * catalog.SUNDRIES.find("Nut ", job.bolt)["weight"], STATICS, digits=3)
washer_weight = row("Round washer", "u_o", "lb",
                    catalog.SUNDRIES.find("Washer ", job.bolt)["weight"], STATICS, digits=3)
rail_thick = row("Rail, all plies", "t_R", "in", sec.rail_plies * parts.rail_t, STATICS)
hung_on = row("Member that stringers hang on, thickness", "t_H", "in",
              when(ACROSS, rail_thick, parts.header_t), STATICS)
end_grip = row("Grip at stringer ends, middle of the two legs", "g_a", "in",
               (parts.stringer_t + hung_on) / 2
               + catalog.ANGLES.find(job.stringer_angle)["plate thickness"]
               + catalog.PLATES.find(job.washer_plate)["thickness"], STATICS)
corner_grip = row("Grip at corners, middle of the two legs", "g_c", "in",
                  (parts.header_t + rail_thick) / 2
                  + catalog.CORNERS.find(job.corner_inside)["plate thickness"]
                  + catalog.CORNERS.find(job.corner_outside)["plate thickness"], STATICS)
end_bolt_weight = row("Bolt of a stringer end, one washer", "u_1", "lb",
                      bolt_foot * (end_grip + bolt_stack).in_("ft") + head_nut + washer_weight,
                      STATICS)
corner_bolt_weight = row("Bolt of a corner, two washers", "u_2", "lb",
                         bolt_foot * (corner_grip + bolt_stack).in_("ft") + head_nut
                         + 2 * washer_weight, STATICS)
rail_bolt_weight = row("Bolt through rail and skirt, two washers", "u_3", "lb",
                       bolt_foot * (rail_thick + parts.skirt_t + bolt_stack).in_("ft") + head_nut
                       + 2 * washer_weight, STATICS)

FITTINGS = (
    ("Section hinges and pins", sec.hinges, ("Section hinge", "Hinge pin 3/4")),
    ("Mooring brackets", sec.mooring_brackets, ("Mooring bracket",)),
    ("Cleats and backing plates", sec.cleats, ("Cleat 10 in", "Cleat backing plate")),
    ("Bumper", bare(sec.bumper, "ft"), ("Bumper, a foot",)),
    ("Corner wheels", sec.corner_wheels, ("Corner wheel",)),
    ("Ladders", sec.ladders, ("Ladder, 4 steps",)),
)
"""Fittings: name, how many, and the catalog's items that make one."""

block("As launched, part by part")
note("Count on Parts × one piece above.  Fixed items stand on Sections.")
launch_parts = [
    row("Rails", "W_1", "lb", parts.rails * rail_weight, STATICS, digits=1),
    row("Headers", "W_2", "lb", parts.headers * header_weight, STATICS, digits=1),
    row("Stringers", "W_3", "lb", parts.stringers * stringer_weight, STATICS, digits=1),
    row("Cross-beams", "W_4", "lb", sec.cross_beams * cross_weight, STATICS, digits=1),
    row("Skirt", "W_5", "lb", skirt_volume * job.density_built, STATICS, digits=1),
    row("Decking, without screws", "W_6", "lb",
        when(PANELS, catalog.PANELS.find(sec.panel)["weight"] * parts.deck_area,
             board_volume * board_built), STATICS, digits=1),
    row("Corner brackets", "W_7", "lb", parts.corner_inside * corner_weight, STATICS, digits=1),
    row("Framing angles", "W_8", "lb", parts.angles * angle_weight, STATICS, digits=1),
    row("Washer plates", "W_9", "lb", parts.washer_plates * plate_weight, STATICS, digits=1),
    row("Bolts of stringer ends", "W_10", "lb", parts.stringer_bolts * end_bolt_weight, STATICS,
        digits=1),
    row("Bolts of corners", "W_11", "lb", parts.corner_bolts * corner_bolt_weight, STATICS,
        digits=1),
    row("Bolts and screws of plies and skirt", "W_12", "lb",
        (parts.ply_bolts + parts.skirt_bolts) * rail_bolt_weight
        + parts.skirt_screws * catalog.SUNDRIES.find("Skirt screw No.14")["weight"], STATICS,
        digits=1),
    row("Deck screws", "W_13", "lb", parts.deck_screws * screw_weight, STATICS, digits=1),
    row("Float lags", "W_14", "lb", parts.lags * lag_weight, STATICS, digits=1),
    row("Floats", "W_15", "lb", parts.floats * float_weight, STATICS, digits=1),
    *(row(name, f"W_{i}", "lb",
          count * sum(catalog.SUNDRIES.find(key)["weight"] for key in keys), STATICS, digits=1)
      for i, (name, count, keys) in enumerate(FITTINGS, 16)),
]
launch_series = Series("W_i", launch_parts)

block("Put on or taken up in service")
note("What wet timber weighs more than as delivered, and what comes on after launching.")
soak = row("Timber below deck takes up", "Δρ", "pcf", job.density_frame - job.density_built, OURS,
           digits=1)
chain = row("Mooring chain that hangs on it", "ΔW_1", "lb", sec.chain_weight, STATICS, digits=1)
growth = row("Growth on the floats", "ΔW_2", "lb",
             job.growth_load * parts.floats * parts.float_l * parts.float_b, OURS, digits=1)
gangway = row("Gangway at rest", "ΔW_3", "lb", sec.gangway_rest, STATICS, digits=1)
gain_parts = [
    chain, growth, gangway,
    *(row(f"{name}, taken up", f"ΔW_{i}", "lb", part * soak / job.density_built, STATICS,
          digits=1)
      for i, (name, part) in enumerate(
          zip(("Rails", "Headers", "Stringers", "Cross-beams", "Skirt"), launch_parts[:5],
              strict=True), 4)),
    row("Decking, taken up", "ΔW_9", "lb", board_volume * (board_wet - board_built), STATICS,
        digits=1),
]
gain_series = Series("ΔW_i", gain_parts)

block("Heights of the parts above K")
note("In the order of the two lists above: the first nine go with what is put on or taken up, "
     "all after the gangway with the parts as launched.")
_rail_mid = parts.frame_top - (parts.rail_d / 2).in_("ft")
_stringer_mid = parts.frame_top - (parts.stringer_d / 2).in_("ft")
heights = [
    row(f"{name}, height", f"z_{i}", "ft", z, source, digits=3)
    for i, (name, z, source) in enumerate([
        ("Chain, where it is fixed", parts.frame_underside, OURS),
        ("Growth, middle of the floats", (parts.float_depth / 2).in_("ft"), OURS),
        ("Gangway foot", parts.deck_top, STATICS),
        ("Rails", _rail_mid, STATICS),
        ("Headers", parts.frame_top - (parts.header_d / 2).in_("ft"), STATICS),
        ("Stringers", _stringer_mid, STATICS),
        ("Cross-beams", parts.frame_top - (parts.cross_d / 2).in_("ft"), STATICS),
        ("Skirt, top flush with the frame", parts.frame_top - (parts.skirt_d / 2).in_("ft"),
         STATICS),
        ("Decking", parts.frame_top + (parts.deck_thickness / 2).in_("ft"), STATICS),
        ("Corner brackets", _rail_mid, OURS),
        ("Framing angles", _stringer_mid, OURS),
        ("Washer plates", _stringer_mid, OURS),
        ("Bolts of stringer ends", _stringer_mid, OURS),
        ("Bolts of corners", _rail_mid, OURS),
        ("Bolts and screws of plies and skirt", _rail_mid, OURS),
        ("Deck screws", parts.frame_top, OURS),
        ("Float lags", parts.frame_underside, OURS),
        ("Floats", (parts.float_depth / 2).in_("ft"), OURS),
        *((name, parts.frame_top, OURS) for name, _, _ in FITTINGS),
    ], 1)
]
launch_heights = Series("z_i", heights[3:])
gain_heights = Series("z_j", heights[:9])

block("Fixed items and arms")
_items = Series("w_i", sec.item_weight)
items = row("Fixed items, all", "W_w", "lb", sum_over(_items), STATICS, digits=1)
items_moment = row("Fixed items: weight × height", "Σw·z", "lb·ft",
                   sum_over(_items * (parts.deck_top + Series("z_wi", sec.item_z))), STATICS,
                   digits=0)
items_x = row("Fixed items: weight × arm along", "Σw·x", "lb·ft",
              sum_over(_items * Series("x_wi", sec.item_x)), STATICS, digits=0)
items_y = row("Fixed items: weight × arm across", "Σw·y", "lb·ft",
              sum_over(_items * Series("y_wi", sec.item_y)), STATICS, digits=0)
_extras = Series("e_i", parts.extra_here)
extras_x = row("Extra floats: weight × arm along", "Σf·x", "lb·ft",
               float_weight * sum_over(_extras * Series("x_i", sec.extra_x)), STATICS, digits=0)
extras_y = row("Extra floats: weight × arm across", "Σf·y", "lb·ft",
               float_weight * sum_over(_extras * Series("y_i", sec.extra_y)), STATICS, digits=0)
stringers_x = row("Stringers off the middle, along", "e_x", "ft",
                  when(ACROSS, parts.stringer_shift, 0), STATICS, digits=3)
stringers_y = row("Stringers off the middle, across", "e_y", "ft",
                  when(ACROSS, 0, parts.stringer_shift), STATICS, digits=3)

block("As launched")
launch = row("Weight as launched", "W_L", "lb", sum_over(launch_series) + items, STATICS,
             digits=0, chief=True)
launch_moment = row("Weight × height, as launched", "M_zL", "lb·ft",
                    sum_over(launch_series * launch_heights) + items_moment, STATICS, digits=0)
launch_kg = row("Centre of gravity above K, as launched", "KG_L", "ft",
                launch_moment / greatest(launch, own.least_weight), STATICS, digits=3)
launch_moment_x = row("Weight × arm along, as launched", "M_xL", "lb·ft",
                      items_x + extras_x + launch_parts[2] * stringers_x, STATICS, digits=0)
launch_moment_y = row("Weight × arm across, as launched", "M_yL", "lb·ft",
                      items_y + extras_y + launch_parts[2] * stringers_y, STATICS, digits=0)
launch_x = row("Centre of gravity along, as launched", "LCG_L", "ft",
               launch_moment_x / greatest(launch, own.least_weight), STATICS, digits=3)
launch_y = row("Centre of gravity across, as launched", "TCG_L", "ft",
               launch_moment_y / greatest(launch, own.least_weight), STATICS, digits=3)
frame_only = row("Weight as launched without floats", "W_0", "lb", launch - launch_parts[14],
                 STATICS, digits=0)

block("In service")
service = row("Weight in service", "W_S", "lb", launch + sum_over(gain_series), STATICS,
              digits=0, chief=True)
service_moment = row("Weight × height, in service", "M_zS", "lb·ft",
                     launch_moment + sum_over(gain_series * gain_heights), STATICS, digits=0)
service_kg = row("Centre of gravity above K, in service", "KG_S", "ft",
                 service_moment / greatest(service, own.least_weight), STATICS, digits=3,
                 chief=True)
service_x = row("Centre of gravity along, in service", "LCG_S", "ft",
                (launch_moment_x + gain_parts[5] * stringers_x + gangway * sec.gangway_x)
                / greatest(service, own.least_weight), STATICS, digits=3)
service_y = row("Centre of gravity across, in service", "TCG_S", "ft",
                (launch_moment_y + gain_parts[5] * stringers_y + gangway * sec.gangway_y)
                / greatest(service, own.least_weight), STATICS, digits=3)
lifted = row("Weight lifted out: wet, without gangway and chain", "W_X", "lb",
             service - gangway - chain, STATICS, digits=0)
deck_dead = row("Dead load that members carry", "q_D", "psf",
                (launch_parts[5] + gain_parts[8] + launch_parts[2] + gain_parts[5] + items)
                / parts.deck_area, STATICS)

block("Aged")
frame_volume = row("Timber below deck, volume", "v_t", "ft³",
                   sum_over(Series("W_j", launch_parts[:5])) / job.density_built, STATICS)
float_volume = row("Floats, volume of all", "v_f", "ft³",
                   parts.floats * parts.float_l * parts.float_b * parts.float_depth.in_("ft")
                   * when(parts.float_round > 0, arc_tangent(1), parts.float_line["fullness"]),
                   STATICS)
aged_timber = row("Timber below deck to the aged density", "ΔW_a", "lb",
                  frame_volume * (job.density_aged - job.density_frame), OURS, digits=0)
aged_deck = row("Wood decking to the aged density", "ΔW_b", "lb",
                board_volume * when(WOODEN, job.density_aged - job.density_deck, 0), OURS,
                digits=0)
aged_floats = row("Water taken up by the floats", "ΔW_f", "lb", job.float_water * float_volume,
                  "Lake guidelines, flotation", digits=0)
aged = row("Weight, aged", "W_A", "lb", service + aged_timber + aged_deck + aged_floats, STATICS,
           digits=0)
