"""Parts, continued: the feet of each lumber size, gathered from the pieces counted above."""

from __future__ import annotations

from builder.language import Series, sum_over

from . import parts
from . import sections as sec
from .parts import block, note, row
from .reference import LUMBER

sheet = parts.sheet
GEOMETRY = "geometry"

block("Lumber, by use")
note("Net lengths as cut; waste comes in Takeoff, where lengths are bought.")
uses = (
    ("Rails", sec.rail_size, "F_r", parts.rails * parts.rail_length),
    ("Headers", sec.header_size, "F_h", parts.headers * parts.header_length),
    ("Stringers", sec.stringer_size, "F_s", parts.stringers * parts.stringer_length),
    ("Cross-beams", sec.cross_beam_size, "F_c", sec.cross_beams * parts.cross_length),
    ("Skirts", sec.skirt_size, "F_k", parts.skirt_length_total),
)
sizes = Series("size", [row(f"{name}: size", "", "text", size, "Sections")
                        for name, size, _, _ in uses])
feet = Series("feet", [row(f"{name}: length in all", symbol, "ft", length, GEOMETRY, digits=1)
                       for name, _, symbol, length in uses])

block("Lumber, by size")
by_size = [row(f"{size}, all uses", f"F_{size}", "ft",
               sum_over(sizes.is_(LUMBER.key_of(k)) * feet), GEOMETRY, digits=1)
           for k, size in enumerate(LUMBER.keys)]

block("Deck boards, length")
board_feet = row("Boards, length in all; 0 under panels", "F_b", "ft",
                 parts.boards * parts.board_length, GEOMETRY, digits=1)
