"""Setout: dimensions to set a section out by, drill pattern, kits, and the way to the water.

The near end is the one a person walks out from, along +x; left and right are that person's hands.
Stringers that run across are marked along the rails from the outside of the near header; those
that run along are marked along the headers from the outside of the left rail.  Stringers are
counted from there.  Counts and sizes are those of Parts, places of bolts those of Hardware.
"""

from __future__ import annotations

from builder.language import Sheet, greatest, least, remainder, root, when

from . import hardware_bolts as ends
from . import hardware_corners as corners
from . import inputs as job
from . import inputs_yard as yard
from . import parts, weight
from . import sections as sec
from .framing_lifting import lift_weight
from .inputs_yard import ours
from .reference import nds, placement

sheet = Sheet("Setout", "Setting out, drill pattern, kits, road and crane",
              about="Dimensions of each type; Yard prints them for one type as read on a tape.")
row, check, block, note, caution = sheet.row, sheet.check, sheet.block, sheet.note, sheet.caution

GEOMETRY, OURS, PRACTICE = "statics", "own judgement", "common practice, no source"
CATALOG = "catalog"
GROUP = "Yard and road"
ACROSS = parts.ACROSS

block("Square")
note("A frame whose ends lean by an angle has diagonals that differ by twice length × width × that "
     "angle ÷ diagonal.")
diagonal = row("Frame diagonal, outside corner to outside corner", "D_f", "ft",
               root(sec.length ** 2 + sec.width ** 2), GEOMETRY, digits=4)
lean = row("End out of square, most", "φ_q", "", ours.square_out / ours.square_over.in_("in"),
           OURS, digits=5)
diagonals_apart = row("The two diagonals apart, most", "δ_q", "in",
                      (2 * sec.length * sec.width / diagonal * lean).in_("in"), OURS, digits=3)

block("Stringer marks")
note("Marks are centres, measured in one run from the outside of the first end member: mark k "
     "stands at k × spacing, and the last space takes what is left over.")
lines = row("Lines of stringers to mark", "n_m", "each", greatest(parts.stringer_lines, 0),
            GEOMETRY, digits=0)
first_space = row("First space: outside of the frame to the first mark", "s_1", "in", sec.spacing,
                  GEOMETRY)
last_mark = row("Last mark", "m_n", "in", lines * sec.spacing, GEOMETRY)
last_out = row("Last space: last mark to the outside of the frame", "s_n", "in",
               parts.layout_length.in_("in") - last_mark, GEOMETRY)
half_stringer = row("A stringer's faces stand off its mark by", "t_s/2", "in",
                    parts.stringer_t / 2, GEOMETRY)
odd_lines = row("Lines are an odd number: 1, even 0", "k_m", "", remainder(lines, 2), GEOMETRY,
                digits=0)
cross_piece = row("Clear between headers and cross-beams", "ℓ_x", "in",
                  greatest(parts.header_clear.in_("in") - sec.cross_beams * parts.cross_t, 0)
                  / (sec.cross_beams + 1), GEOMETRY)
beamed = row("Cross-beams: 1 with, 0 without", "k_b", "", when(sec.cross_beams > 0, 1, 0), GEOMETRY,
             digits=0)
cross_first = row("First cross-beam, centre from the outside of the near header", "x_c1", "in",
                  beamed * (parts.header_t + cross_piece + parts.cross_t / 2), GEOMETRY)
cross_step = row("Cross-beams, centre to centre", "p_c", "in",
                 beamed * (cross_piece + parts.cross_t), GEOMETRY)

block("Drill pattern: stringer ends")
note("Angles sit on opposite sides from stringer to stringer; the last one faces the space before "
     "it, which is never the short one. Legs are taken alike: mark through the angle's own holes. "
     "Frame tops are flush; heights are below the top edge.")
drill = row("Hole, bolt and 1/16 in", "d_h", "in", ends.D + nds.hole_over_most,
            "NDS 2018 12.1.3.2", digits=4)
hole_upper = row("Upper hole below the top edge", "h_1", "in", ends.y_1, GEOMETRY)
hole_lowest = row("Lowest hole below the top edge", "h_2", "in", ends.y_2, GEOMETRY)
hole_step = row("Holes apart", "s_h", "in", ends.spacing, CATALOG)
hole_end = row("Holes from the end of the stringer; from its face on the rail", "e_h", "in",
               ends.end_distance, CATALOG)
stringer_below = row("Lowest hole to the bottom edge of the stringer", "b_s", "in",
                     parts.stringer_d - hole_lowest, GEOMETRY)
against_below = row("Lowest hole to the bottom edge of what it stands against", "b_n", "in",
                    ends.d_n - hole_lowest, GEOMETRY)

block("Drill pattern: corners")
corner_upper = row("Corner: upper hole below the top edge", "h_c1", "in", corners.y_c1, GEOMETRY)
corner_lowest = row("Corner: lowest hole below the top edge", "h_c2", "in", corners.y_c2, GEOMETRY)
corner_step = row("Corner: holes apart", "s_c", "in", corners.inside["hole spacing"], CATALOG)
corner_rail = row("Holes in the rail from the end of the frame", "x_r", "in",
                  parts.header_t + corners.inside["corner to rail bolts"], CATALOG)
corner_header = row("Holes in the header from its end", "x_h", "in", corners.corner_end, CATALOG)

block("Drill pattern: rules")
edge_rule = row("To an edge, least", "e_r", "in", placement.edge_loaded * ends.D,
                "NDS 2018 Table 12.5.1C")
end_rule = row("To an end, least", "e_n", "in", placement.end_perp_least * ends.D,
               "NDS 2018 Table 12.5.1A")
apart_rule = row("Holes in a leg apart, least", "s_r", "in", placement.spacing_perp_least * ends.D,
                 "NDS 2018 Table 12.5.1B")
row_rule = row("Holes of two pieces of hardware apart, least", "s_w", "in",
               ours.row_apart * ends.D, OURS)
stringer_room = row("Stringer end: least room over the rules", "Δ_s", "in",
                    least(ends.edge_least - edge_rule, hole_end - end_rule,
                          hole_step - apart_rule), GEOMETRY)
corner_room = row("Corner: least room over the rules", "Δ_c", "in",
                  least(corners.corner_edge - edge_rule, corner_header - end_rule,
                        corner_step - apart_rule), GEOMETRY)
pattern = row("Pattern keeps its distances", "", "text",
              when(least(stringer_room, corner_room) >= 0, "yes",
                   "NO: see Hardware before drilling"), "NDS 2018 12.5.1", digits=0)
off_mark = row("Angle's holes off the stringer's mark", "g_m", "in", half_stringer + hole_end,
               CATALOG)
corner_out = row("Corner's holes from the outside, in the member marked", "c_o", "in",
                 when(ACROSS, corner_rail,
                      sec.rail_plies * parts.rail_t + corner_header), CATALOG)
start_gap = row("Corner's holes to those of the first angle", "g_1", "in",
                first_space + (1 - 2 * odd_lines) * off_mark - corner_out, GEOMETRY)
pair_gap = row("Holes of two angles that face one another", "g_2", "in",
               when(lines >= 2, sec.spacing - 2 * off_mark, sec.spacing), GEOMETRY)
end_gap = row("Last angle's holes to those of the far corner", "g_n", "in",
              last_out + off_mark - corner_out, GEOMETRY)
holes_clear = row("Holes of two pieces of hardware apart, least found", "g_0", "in",
                  when(lines >= 1, least(start_gap, pair_gap, end_gap), row_rule), GEOMETRY)
clear_check = check("Holes of angles and corners apart in one member", holes_clear,
                    at_least=row_rule, source=OURS, worst="LOOK", group=GROUP,
                    cure="Put the angles that stand too close on the other side of their "
                    "stringers, or space the stringers wider.",
                    amount=("inches missing", "in", greatest(row_rule - holes_clear, 0)))

block("Floats")
row_first = row("Left row of floats, centre from the outside of the left rail", "y_f", "ft",
                sec.width / 2 - parts.row_y, GEOMETRY)
column_first = row("Near floats, centre from the outside of the near header", "x_f", "ft",
                   sec.length / 2 - parts.end_x, GEOMETRY)

block("Kits: one bag a corner, one a stringer end")
note("A corner: one bracket inside, one outside, a washer under head and nut of each bolt. A "
     "stringer end: one angle, a washer plate behind each leg, a washer on each bolt.")
corner_nuts = row("Corner: bolts, both legs, a nut each", "k_c", "each",
                  2 * parts.corner_bolts_a_leg, PRACTICE, digits=0)
corner_washers = row("Corner: washers", "k_w", "each", 2 * corner_nuts, PRACTICE, digits=0)
end_nuts = row("Stringer end: bolts, both legs, a nut and a washer each", "k_e", "each",
               2 * parts.bolts_a_leg, PRACTICE, digits=0)
end_plates = row("Stringer end: washer plates", "k_p", "each",
                 parts.washer_plates / greatest(parts.stringer_ends, 1), PRACTICE, digits=0)

block("Road and yard")
note("A section travels lengthwise. In pieces, the widest thing on the trailer is a float and the "
     "longest a board of the frame; the trailer still carries the weight of the section. The "
     "limits stand in until yours are typed on Inputs, so a breach says LOOK; a machine typed on "
     "Readings is held to on Launch.")
caution("Nobody under a lifted section or between it and anything fixed. A section is a sail on "
        "the road: strap it down at four places and stop after ten miles to look.")
WHOLE = yard.carried.is_(yard.CARRIED.keys[0])
piece_width = row("Widest thing on the road", "b_w", "ft",
                  when(WHOLE, least(parts.overall_length, parts.overall_width),
                       least(parts.float_l, parts.float_b)), GEOMETRY)
piece_length = row("Longest thing on the road", "ℓ_w", "ft",
                   when(WHOLE, greatest(parts.overall_length, parts.overall_width),
                        parts.longest_piece), GEOMETRY)
load = row("Weight of a section on the trailer, dry", "W_y", "lb", greatest(weight.launch, 0),
           GEOMETRY, digits=0)
hook = row("Load on the hook, with the dynamic factor", "W_k", "lb",
           job.lift_factor * greatest(when(WHOLE, lift_weight, weight.heaviest_piece), 0), OURS,
           digits=0)
road_check = check("Width on the road", piece_width,
                   at_most=yard.road_width.in_("ft"),
                   source="own judgement; 102 in from memory", worst="LOOK", group=GROUP,
                   cure="An oversize permit, a narrower section, two that are joined on the "
                   "water, or carry it in pieces.",
                   amount=("feet too wide", "ft",
                           greatest(piece_width - yard.road_width.in_("ft"), 0)))
access_check = check("Width on the way in", piece_width,
                     at_most=yard.access_width.in_("ft"),
                     source=OURS, worst="LOOK", group=GROUP,
                     cure="Another way in, over the water, or put it together at the water.")
long_limit = row("Trailer and what may stand past it", "L_lim", "ft",
                 yard.trailer_length + yard.trailer_overhang, OURS)
long_check = check("Length on the trailer", piece_length, at_most=long_limit,
                   source=OURS, worst="LOOK", group=GROUP,
                   cure="A longer trailer, shorter sections hinged on the water, or carry it in "
                   "pieces.")
payload_check = check("Weight on the trailer", load, at_most=yard.trailer_payload,
                      source=OURS, worst="LOOK", group=GROUP,
                      cure="A trailer that may carry more, or two trips: floats apart.")
crane_check = check("Lifting machine at its reach", hook, at_most=yard.crane_limit,
                    source="own judgement; load chart of the machine", worst="LOOK", group=GROUP,
                    cure="A larger machine, a shorter reach, or lift the floats apart from the "
                    "frame.")
