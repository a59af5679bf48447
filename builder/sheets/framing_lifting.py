"""Framing, fifth part: the section hung from two slings, floats, wet timber and all."""

from __future__ import annotations

from builder.language import absolute, cosine, greatest, radians, sine, when

from . import (
     framing_water,  # noqa: F401  the part before this one
     weight,
)
from . import inputs as job
from . import sections as sec
from .framing_rails import plies, rail
from .framing_wood import GROUP, NDS, OURS, STATICS, block, check, note, row, stability
from .reference import nds, own

block("Lifting")
note("Two slings under each rail, one near each end; nothing holds the rails' edges in the air. "
     "Type 1.5 as the dynamic factor to break a section out of mud or ice. A joint in a rail "
     "counts as on the water.")
lift_weight = row("Weight lifted, the larger of new and wet", "W_h", "lb",
                  greatest(weight.launch, weight.lifted), STATICS, digits=0)
lift_load = row("Weight with the dynamic factor", "k_i W_h", "lb", job.lift_factor * lift_weight,
                OURS, digits=0)
lift_w = row("Line load on one rail", "w_h", "lb/ft", lift_load / (2 * sec.length), STATICS,
             digits=1)
sling_a = row("Sling from the end", "a", "ft", job.sling_share * sec.length, OURS)
lift_over = row("Moment over a sling", "M_o", "lb·ft", lift_w * sling_a**2 / 2, STATICS, digits=0)
lift_middle = row("Moment in the middle", "M_c", "lb·ft",
                  lift_w * sec.length * (sec.length - 4 * sling_a) / 8, STATICS, digits=0)
lift_fb = row("Bending stress, lifting", "f_b,h", "psi",
              greatest(lift_over, absolute(lift_middle)).in_("lb·in") / (plies * rail.S),
              f"{NDS} 3.3.2", digits=0)
lift_duration = row("Load duration, lifting", "C_D,h", "", own.CD_lifting, OURS)
lift_star = row("F′b, lifting, all factors but CL", "F*_b,h", "psi",
                rail.Fb_single * lift_duration, f"{NDS} Table 4.3.1", digits=0)
lift_free = row("Free length of edge", "l_uh", "in",
                greatest(sec.length - 2 * sling_a, sling_a).in_("in"), OURS, digits=1)
le_short = row("Effective length, times lu, short", "k_1", "", nds.le_uniform_short,
               f"{NDS} Table 3.3.3")
le_long = row("Effective length, times lu, long", "k_2", "", nds.le_uniform_long,
              f"{NDS} Table 3.3.3")
lift_length = row("Effective length", "le_l", "in",
                  when(lift_free / rail.d < nds.le_ratio_limit, le_short * lift_free,
                       le_long * lift_free + nds.le_uniform_depths * rail.d),
                  f"{NDS} Table 3.3.3", digits=2)
lifted = stability(rail, "Rail lifted", "l", lift_length, lift_star)
lift_check = check("Lifting: bending of the rails", lift_fb, at_most=lifted.Fb,
                   source=f"{NDS} 3.3.3", group=GROUP,
                   cure="Slings a fifth of the length from the ends, a spreader, four slings, or "
                   "lift the floats apart from the frame.")
slender_check = check("Lifting: slenderness of the rails", lifted.RB, at_most=nds.RB_most,
                      source=f"{NDS} 3.3.3.7", group=GROUP,
                      cure="A thicker rail, or hold the rails' edges while lifting.")
sling_angle = row("Sling angle from the horizontal, least", "α", "deg", own.sling_angle_least,
                  OURS, digits=0)
sling_sine = row("Its sine", "sin α", "", greatest(sine(radians(sling_angle)), own.least_share),
                 STATICS, digits=4)
sling_tension = row("Tension in one leg of two", "T_s", "lb", lift_load / (2 * sling_sine),
                    STATICS, digits=0)
sling_push = row("Push into the frame without a spreader", "H_s", "lb",
                 sling_tension * cosine(radians(sling_angle)), STATICS, digits=0)
