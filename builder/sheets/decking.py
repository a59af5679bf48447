"""Decking: how panels or boards are laid, what holds them, and how much light they let through.

Pieces are counted on Parts.  Panels rest on the largest spacing their maker allows; wood boards
are figured on the flat besides.  Where a section has panels the rows of boards read 0, and the
other way round.
"""

from __future__ import annotations

from builder.language import (
    Sheet,
    absolute,
    all_of,
    greatest,
    least,
    nearest,
    when,
    whole_down,
    whole_up,
)

from . import catalog, parts
from . import inputs as job
from . import sections as sec
from .reference import (
    FLAT_USE,
    LUMBER,
    SIZE_FACTORS,
    SIZE_FACTORS_PINE,
    WOOD_PAIRS,
    WOODS,
    ada,
    nds,
    own,
    supplement,
)

sheet = Sheet("Decking", "Layout, support and open area of the deck",
              about="How panels or boards lie, and whether what holds them is close enough.")
row, check, block, note, caution = sheet.row, sheet.check, sheet.block, sheet.note, sheet.caution

STATICS, OURS = "statics", "own judgement"
ACROSS, PANELS = parts.ACROSS, parts.PANELS
_panel = catalog.PANELS.find(sec.panel)
_board = parts.board_line

block("Panels: layout")
note("Laid from one corner of the deck; what is left over is cut from whole panels.  A panel "
     "crosses the stringers with its length.")
columns_whole = row("Columns of uncut length", "c_w", "each",
                    when(PANELS, whole_down(parts.deck_length / parts.panel_x), 0), STATICS,
                    digits=0)
rows_whole = row("Rows of uncut width", "r_w", "each",
                 when(PANELS, whole_down(parts.deck_width / parts.panel_y), 0), STATICS,
                 digits=0)
panels_whole = row("Panels left whole", "N_0", "each", columns_whole * rows_whole, STATICS,
                   digits=0)
panels_cut_length = row("Panels cut along the section only", "N_1", "each",
                        rows_whole * (parts.panel_columns - columns_whole), STATICS, digits=0)
panels_cut_width = row("Panels cut across the section only", "N_2", "each",
                       columns_whole * (parts.panel_rows - rows_whole), STATICS, digits=0)
panels_cut_both = row("Panels cut both ways", "N_3", "each",
                      parts.panels - panels_whole - panels_cut_length - panels_cut_width,
                      STATICS, digits=0)
last_column = row("Last column, size along the section", "l_p", "in",
                  when(PANELS, (parts.deck_length
                                - (parts.panel_columns - 1) * parts.panel_x).in_("in"), 0),
                  STATICS)
last_row = row("Last row, size across the section", "b_p", "in",
               when(PANELS, (parts.deck_width
                             - (parts.panel_rows - 1) * parts.panel_y).in_("in"), 0), STATICS)
tabs_off = row("Tabs to cut off at the outer edges", "N_t", "each",
               when(PANELS, whole_up(_panel["tabs each"] * (parts.deck_length + parts.deck_width)
                                     / (parts.panel_x + parts.panel_y)), 0), OURS, digits=0)

block("Boards: layout")
note("Butt joints lie on stringers: a board ends at a whole number of spacings, see Parts.")
last_rip = row("Last board, ripped to", "b_e", "in",
               when(PANELS, 0, parts.boards_over.in_("in")
                    - (parts.boards - 1) * parts.board_pitch), STATICS)
narrowest = row("Narrowest cut piece", "b_0", "in",
                when(PANELS, least(last_column, last_row), last_rip), STATICS)
narrow_check = check("Narrowest deck piece", narrowest, at_least=own.rip_least,
                     worst="LOOK", source=OURS,
                     cure="Share the cut between both edges, or change the width or the gap.",
                     group="Decking")

block("Support")
panel_length = row("Panel, size across the stringers", "p", "in", _panel["length"].in_("in"),
                   STATICS)
joints = row("Panel joints across the stringers", "n_j", "each",
             when(ACROSS, parts.panel_columns, parts.panel_rows) - 1, STATICS, digits=0)
bays_a_panel = row("Bays under a panel, nearest whole number", "n_1", "each",
                   greatest(nearest(panel_length / sec.spacing, 1), 1), STATICS,
                   digits=0)
joint_step = row("A panel longer than its bays", "δ", "in",
                 panel_length - bays_a_panel * sec.spacing, STATICS, digits=3)
joint_off = row("Panel joint furthest off its stringer's middle", "δ_j", "in",
                when(PANELS, 1, 0) * (joints > 0)
                * greatest(absolute(joint_step - sec.deck_overhang),
                           absolute(joints * joint_step - sec.deck_overhang)), STATICS, digits=3)
joint_check = check("Panel joints on a stringer", joint_off, at_most=parts.stringer_t / 2,
                    look_at=own.joint_tolerance, source=OURS,
                    cure="Choose a spacing that divides the panel's length, and no deck past "
                    "the frame under panels.",
                    amount=("spacing that divides the panel", "in",
                            panel_length / whole_up(panel_length / sec.spacing)),
                    group="Decking")
largest_spacing = row("Maker's largest spacing", "s_max", "in",
                      when(PANELS, _panel["largest spacing"], _board["largest spacing"]),
                      STATICS)
spacing_check = check("Stringer spacing under the deck", sec.spacing, at_most=largest_spacing,
                      look_at=largest_spacing, source="invented, the maker's figure",
                      cure="Bring the stringers closer, or choose stiffer decking.",
                      amount=("inches closer", "in", greatest(sec.spacing - largest_spacing, 0)),
                      group="Decking")

block("Open area and gaps")
open_share = row("Open area of the deck", "o", "",
                 greatest(when(PANELS, _panel["open share"],
                               parts.board_gap / parts.board_pitch), own.least_share), STATICS)
open_check = check("Open area against the permit", open_share,
                   at_least=greatest(job.open_area_rule, own.least_share),
                   source=OURS, cure="A more open panel, or a wider gap.", group="Decking")
gap_public = row("Gap between boards where the public walks", "g_p", "in",
                 when(all_of(job.use.is_("public"), sec.deck.is_("boards")), parts.board_gap, 0),
                 STATICS, digits=3)
gap_check = check("Gap between boards, public", gap_public, at_most=ada.gap_most,
                  worst="LOOK", source="ADA 2010 302.3, memory",
                  cure="Close the gap, or claim no accessible route.", group="Decking")

block("Wood boards on the flat: loads")
note("Figured for wood boards of at least 2 in nominal; thinner boards and composite rest on "
     "the maker's largest spacing alone.  One simple span, no sharing with the next board.  Snow "
     "counts where the dock stays in, brought to the duration of people's load.")
caution("The design value is that of the frame's wood and grade on Inputs.  Boards of a weaker "
        "wood or a lower grade need their own value.")
figured = row("Board figured: 1 yes, 0 no", "k_b", "",
              when(sec.deck.is_("boards"), 1, 0) * (_board["wood"] > 0)
              * (_board["thickness"] >= LUMBER.find("2x6")["thickness dressed"]), OURS, digits=0)
board_dead = row("Board, own weight in service", "q_b", "psf",
                 _board["thickness"].in_("ft")
                 * when(_board["wood"] > 0, job.density_deck, _board["weight"]), STATICS)
snow = row("Snow, if the dock stays in", "q_sn", "psf",
           when(job.stays_in.is_("yes"), job.ground_snow, 0), OURS, digits=1)
board_load = row("Load on a board, as of people's duration", "w", "lb/ft",
                 greatest(sec.strength_load + board_dead,
                          (snow + board_dead) * nds.CD_live / nds.CD_snow)
                 * _board["width"].in_("ft"), "NDS 2018 2.3.2", digits=1)
moment_uniform = row("Moment, uniform load", "M_w", "lb·in",
                     board_load.in_("lb/in") * sec.spacing ** 2 / 8, STATICS, digits=0)
board_point = row("Point load on one board", "P_b", "lb",
                  sec.point_load * when(_board["width"] >= own.wide_board, 1,
                                        own.two_boards_share), OURS, digits=0)
moment_point = row("Moment, point load at mid-span", "M_P", "lb·in",
                   board_point * sec.spacing / 4
                   + (board_dead * _board["width"].in_("ft")).in_("lb/in") * sec.spacing ** 2
                   / 8, STATICS, digits=0)
section_modulus = row("Section modulus on the flat", "S", "in³",
              _board["width"] * _board["thickness"] ** 2 / 6, STATICS)
board_stress = row("Bending stress, the larger; 0 where not figured", "f_b", "psi",
                   figured * greatest(moment_uniform, moment_point) / section_modulus,
                   STATICS, digits=0)

block("Wood boards on the flat: strength")
_width_of = {size: LUMBER.at(LUMBER.keys.index(size) + 1)["width dressed"]
             for size in ("2x6", "2x8", "2x10", "2x12")}
narrow_steps = row("Size class: 6 in, 8 in reached", "n_68", "each",
                   (_board["width"] >= _width_of["2x6"]) + (_board["width"] >= _width_of["2x8"]),
                   "NDS Supplement 2018 Table 1B", digits=0)
wide_steps = row("Size class: 10 in, 12 in reached", "n_1012", "each",
                 (_board["width"] >= _width_of["2x10"]) + (_board["width"] >= _width_of["2x12"]),
                 "NDS Supplement 2018 Table 1B", digits=0)
size_line = sheet.line("Size whose class the board has", LUMBER, 1 + narrow_steps + wide_steps)
wood_first = sheet.find("Wood, first line of its grade", WOODS, job.wood)
wood_line = sheet.line("Wood, line of its size class", WOODS,
                       least(wood_first + least(size_line["width class"],
                                                WOOD_PAIRS.find(job.wood)["lines"]) - 1,
                             len(WOODS.keys)))
Fb = row("Reference bending value", "F_b", "psi", wood_line["Fb"],
         "NDS Supplement 2018 Tables 4A, 4B", digits=0)
CF_other = row("Size factor, other woods than Southern Pine", "C_F0", "",
               when(wood_line["stud"] > 0,
                    SIZE_FACTORS.at(size_line["width class"])["stud Fb"],
                    SIZE_FACTORS.at(size_line["width class"])["Fb 2 and 3 in thick"]),
               "NDS Supplement 2018 Table 4A")
CF = row("Size factor", "C_F", "",
         when(wood_line["by width"] > 0,
              SIZE_FACTORS_PINE.at(size_line["width class"])["Fb 2 and 3 in thick"], CF_other),
         "NDS Supplement 2018 Tables 4A, 4B")
CD = row("Load duration factor, ten years", "C_D", "", nds.CD_live, "NDS 2018 Table 2.3.2")
CM = row("Wet service factor", "C_M", "",
         when(Fb * CF <= supplement.CM_Fb_limit, 1, supplement.CM_Fb),
         "NDS Supplement 2018 Tables 4A, 4B")
Ct = row("Temperature factor", "C_t", "", nds.Ct_normal, "NDS 2018 Table 2.3.3")
CL = row("Beam stability factor: wider than deep", "C_L", "", 1, "NDS 2018 3.3.3.1")
Cfu = row("Flat use factor", "C_fu", "",
          FLAT_USE.at(size_line["flat use row"])["2 and 3 in thick"],
          "NDS Supplement 2018 Tables 4A, 4B")
Ci = row("Incising factor", "C_i", "",
         when(job.incised.is_("yes"), supplement.Ci_strength, 1), "NDS 2018 4.3.8")
Cr = row("Repetitive member factor: none on one board", "C_r", "", nds.Cr_single,
         "NDS 2018 4.3.9")
Fb_part = row("Bending value × CD CM Ct CL", "F_b1", "psi", Fb * CD * CM * Ct * CL,
              "NDS 2018 Table 4.3.1", digits=0)
Fb_adjusted = row("Adjusted bending value", "F'_b", "psi", Fb_part * CF * Cfu * Ci * Cr,
                  "NDS 2018 Table 4.3.1", digits=0)
board_check = check("Bending of a deck board", board_stress, at_most=Fb_adjusted,
                    source="NDS 2018 3.3.1", cure="Closer stringers or thicker boards.",
                    amount=("inches closer", "in",
                            sec.spacing * greatest(board_stress - Fb_adjusted, 0)
                            / greatest(board_stress, Fb_adjusted)), group="Decking")
snow_not_figured = row("Snow on a deck that is not figured", "q_sn,0", "psf",
                       (1 - figured) * snow, STATICS, digits=1)
snow_check = check("Snow on panels and on boards not figured", snow_not_figured,
                   at_most=sec.strength_load, worst="LOOK", source=OURS,
                   cure="Ask the decking's maker for the spacing under that snow, or take the "
                   "dock out for the winter.", group="Decking")
