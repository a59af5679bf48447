"""Stringers, cross-beams and headers: hung at their ends, and hogging over floats far in."""

from __future__ import annotations

from tests.second.framing_basis import INCHES, SLACK, Results, at_most, nds, own
from tests.second.framing_loads import Beam, Loads
from tests.second.framing_wood import Member, Stability, member
from tests.second.given import Given


def across(g: Given) -> bool:
    """Return whether stringers run across, from rail to rail."""
    return g.sec["run"] == "across"


def held_span(g: Given, done: Results) -> float:
    """Return the span of a stringer that runs along: the clear part between lines [ft].

    Headers and evenly spaced cross-beams hold it; house choice: floats never count as lines.
    """
    beams = g.sec["cross_beams"]
    clear = done["Parts.header_clear"] - beams * done["Parts.cross_t"] / INCHES
    return clear / (beams + 1)


def repetitive(g: Given, done: Results, stringer: Member) -> float:
    """Return Cr of the stringers: only under boards, 24 in apart at most, three or more."""
    shared = (g.sec["deck"] == "boards" and not stringer.is_timber
              and g.sec["spacing"] <= nds("Cr_spacing_most")
              and done["Parts.stringer_lines"] >= nds("Cr_members_least"))
    return nds("Cr") if shared else 1


def stringers(g: Given, done: Results, load: Loads) -> Beam:
    """Return the stringers' beam: the inner or the outermost, whichever carries more deck."""
    piece = member(g, "stringer", "stringer_size", done, "stringer")
    span = done["Parts.clear_span"] if across(g) else held_span(g, done)
    spacing = g.sec["spacing"]
    outermost = spacing / 2 + g.sec["deck_overhang"]
    return Beam(piece, span, max(spacing, outermost) / INCHES, load, load.point)


def cross_beams(g: Given, done: Results, load: Loads) -> Beam:
    """Return the cross-beams' beam.

    House choice: among stringers that run across, a cross-beam carries as much as a stringer.
    """
    piece = member(g, "cross", "cross_beam_size", done, "cross")
    here = g.sec["cross_beams"] > 0
    width = (g.sec["spacing"] / INCHES if across(g)
             else held_span(g, done) + done["Parts.cross_t"] / INCHES)
    return Beam(piece, done["Parts.clear_span"], width if here else 0, load,
                load.point if here else 0)


def headers(g: Given, done: Results, load: Loads) -> Beam:
    """Return the headers' beam: half the space beside it, and the deck past the frame.

    House choice: what lies on the header's own thickness is left out.
    """
    piece = member(g, "header", "header_size", done, "header")
    space = g.sec["spacing"] / INCHES if across(g) else held_span(g, done)
    width = space / 2 + g.sec["deck_overhang"] / INCHES
    return Beam(piece, done["Parts.clear_span"], width, load, load.point)


def deflections(g: Given, name: str, beam: Beam) -> Results:
    """Return the two deflection checks of a beam."""
    span = beam.span * INCHES
    return (at_most(f"Framing.{name}_live_check", beam.sag_live, span / g.job["deflection_live"])
            | at_most(f"Framing.{name}_total_check", beam.sag_total,
                      span / g.job["deflection_total"]))


def shear(name: str, beam: Beam) -> Results:
    """Return the shear check of a beam."""
    return at_most(f"Framing.{name}_shear_check", beam.shear_stress, beam.member.shear)


def arm(g: Given, done: Results) -> float:
    """Return how far the frame's side lies past the outer float row [ft], not below 0."""
    return max(0, g.sec["width"] / 2 - done["Parts.row_y"])


def far_in(g: Given, done: Results) -> bool:
    """Return whether the outer row lies inside the quarter of the width: members hog."""
    return done["Parts.row_y"] < g.sec["width"] / 4


def hogging(g: Given, done: Results, beam: Beam, counts: bool) -> Results:
    """Return the hogging rows and check of a beam that hangs out past the floats."""
    name, reach, half = beam.member.name, arm(g, done), g.sec["width"] / 2
    counts = counts and far_in(g, done)
    spread = beam.line * half * (half / 2 - done["Parts.row_y"]) if counts else 0
    point = beam.point * (reach - beam.edge) + beam.dead * reach ** 2 / 2 if counts else 0
    deep, free = beam.member.deep, reach * INCHES
    if free / deep < nds("le_ratio_limit") - SLACK:
        length = nds("le_cantilever_point_short") * free
    else:
        length = nds("le_cantilever_point_long") * free + nds("le_cantilever_depths") * deep
    held = Stability(max(length, deep), beam.member.thick, deep, beam.member.least_stiffness,
                     beam.member.bending)
    stress = beam.stress(max(spread, point))
    return ({f"Framing.{name}_hog_spread": spread, f"Framing.{name}_hog_point": point,
             f"Framing.{name}_hog_length": held.length, f"Framing.{name}_hog_stress": stress}
            | held.rows(f"{name}_hogging")
            | at_most(f"Framing.{name}_hog_check", stress, held.star * held.factor))


def work_stringers(g: Given, done: Results, beam: Beam) -> Results:
    """Return the rows of the stringers."""
    piece = beam.member
    shared = repetitive(g, done, piece)
    stress_spread, stress_point = map(beam.stress, (beam.moment_spread, beam.moment_point))
    bears = beam.reaction / (piece.thick * own("end_bearing"))
    found = piece.rows(bears=True) | beam.rows() | {
        "Framing.stringer_Cr": shared, "Framing.stringer_Fb_adj": piece.bending * shared,
        "Framing.stringer_fb_spread": stress_spread, "Framing.stringer_fb_point": stress_point,
        "Framing.stringer_fc": bears, "Framing.far_in": int(far_in(g, done)),
        "Framing.arm": arm(g, done)}
    found |= at_most("Framing.spread_check", stress_spread, piece.bending * shared)
    found |= at_most("Framing.point_check", stress_point, piece.bending)
    found |= at_most("Framing.bearing_check", bears, piece.bearing, worst="LOOK")
    return (found | shear("stringer", beam) | deflections(g, "stringer", beam)
            | hogging(g, done, beam, across(g)))


def work_ends(g: Given, done: Results, beam: Beam) -> Results:
    """Return the rows of cross-beams or headers."""
    piece, name = beam.member, beam.member.name
    stress = beam.stress(max(beam.moment_spread, beam.moment_point))
    found = piece.rows(bears=False) | beam.rows() | {f"Framing.{name}_fb": stress}
    return (found | at_most(f"Framing.{name}_bending_check", stress, piece.bending)
            | shear(name, beam) | deflections(g, name, beam) | hogging(g, done, beam, True))


def work(g: Given, done: Results, load: Loads) -> Results:
    """Return the rows of stringers, cross-beams and headers."""
    beam, cross = stringers(g, done, load), cross_beams(g, done, load)
    found = work_stringers(g, done, beam) | work_ends(g, done, cross)
    found |= work_ends(g, done, headers(g, done, load))
    found |= {"Framing.cross_point": cross.point,
              "Framing.end_Fv": min(end.member.shear for end in (beam, cross)
                                    if end is beam or g.sec["cross_beams"] > 0)}
    return found
