"""Framing, third part: the rails between floats, and which of their plies count."""

from __future__ import annotations

from builder.language import greatest, when

from . import inputs as job
from . import parts
from . import sections as sec
from .framing_spans import stringer
from .framing_wood import (
    GROUP,
    NDS,
    OURS,
    STATICS,
    across,
    block,
    check,
    member_wood,
    note,
    row,
    uniform,
)
from .reference import nds

rail = member_wood("Rails", "r", parts.rail_line, parts.rail_t, parts.rail_d, bears=True,
                   slender=True)

block("Rails: what resists")
note("A ply with a joint inside the middle third does not count. One ply has to be jointed there "
     "when the longest stock is shorter than two thirds of the section; joints of the plies stand "
     "apart, so one ply at most is lost. The joint of a rail of one ply needs plates by a design "
     "of its own: see the stock check in Parts. A skirt counts when it is bolted to count and no "
     "deeper than the rail: a deeper one is itself overstressed first; give it the rail's grade. "
     "Stringers along are left out.")
joint_inside = row("A joint falls in the middle third: 1, else 0", "k_j", "",
                   when(job.longest_stock < 2 * parts.rail_length / 3, 1, 0), OURS, digits=0)
plies = row("Plies that count", "n_e", "each", greatest(1, sec.rail_plies - joint_inside), OURS,
            digits=0)
I_skirt = row("Skirt that counts, moment of inertia", "I_k", "in⁴",
              sec.skirt.is_("bolted to count") * (parts.skirt_d <= rail.d) * parts.skirt_t
              * parts.skirt_d**3 / 12, STATICS)
I_all = row("Rail plies and skirt that count, moment of inertia", "ΣI", "in⁴",
            plies * rail.I + I_skirt, STATICS)
S_all = row("The same, section modulus to the rail's edge", "ΣS", "in³", 2 * I_all / rail.d,
            STATICS)

block("Rails between floats (spread load)")
rail_w = row("Rail: line load", "w_r", "lb/ft", uniform * parts.deck_width / 2, STATICS, digits=1)
gap = row("Gap between floats of a row", "c", "ft",
          when(sec.floats_a_row > 1, greatest(parts.float_x_pitch - parts.float_l, 0), 0), STATICS)
overhang = row("Rail past the last float", "o", "ft",
               greatest(sec.length / 2 - parts.end_x - parts.float_l / 2, 0), STATICS)
local_moment = row("Rail: moment between or past floats", "M_r", "lb·ft",
              greatest(rail_w * gap * (gap + parts.float_l) / 8, rail_w * overhang**2 / 2),
              STATICS, digits=0)
local_shear = row("Rail: shear at d from a float", "V_r", "lb",
              rail_w * greatest(gap / 2 - rail.d.in_("ft"), overhang - rail.d.in_("ft"), 0),
              f"{NDS} 3.4.3.1", digits=0)
local_fb = row("Rail: bending stress between floats", "f_b,r", "psi",
               local_moment.in_("lb·in") / (plies * rail.S), f"{NDS} 3.3.2", digits=0)
local_fv = row("Rail: shear stress between floats", "f_v,r", "psi",
               nds.shear_rectangle * local_shear / (plies * rail.t * rail.d), f"{NDS} 3.4.2",
               digits=1)
local_fc = row("Rail: bearing stress on a float", "f_c,r", "psi",
               rail_w.in_("lb/in") * (gap + parts.float_l + overhang) / parts.float_l
               / (sec.rail_plies * rail.t), f"{NDS} 3.10.2", digits=1)
local_check = check("Rails: bending between floats", local_fb, at_most=rail.Fb_single,
                    source=f"{NDS} 3.3.1", group=GROUP,
                    cure="Closer floats, one more ply, or a deeper size.")
local_shear_check = check("Rails: shear between floats", local_fv, at_most=rail.Fv_adj,
                          source=f"{NDS} 3.4.1", group=GROUP,
                          cure="Closer floats, one more ply, or a deeper size.")
local_bearing_check = check("Rails: bearing on floats", local_fc, at_most=rail.Fc_adj,
                            source=f"{NDS} 3.10.2", group=GROUP,
                            cure="More floats in a row, or one more ply.")

held = row("Rail: lower edge held every", "l_u", "in",
           when(across > 0, sec.spacing, stringer.span.in_("in")), OURS, digits=1)
