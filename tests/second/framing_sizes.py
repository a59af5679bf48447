"""What would do: the largest span and spacing of stringers, the smallest sizes."""

from __future__ import annotations

from math import sqrt

from tests.second.framing_basis import INCHES, Results, line_of, nds, own
from tests.second.framing_loads import Beam
from tests.second.framing_water import Rail
from tests.second.framing_wood import Member
from tests.second.given import Given

TRIED = ("2x6", "2x8", "2x10", "2x12")
NONE = "none of these"
SAWN = {"dressed": "dressed", "rough": "rough", "full sawn": "sawn"}
"""How lumber is sawn → name of its columns in the table of sizes."""


def moment_carried(piece: Member) -> float:
    """Return the moment a piece carries alone [lb·ft]."""
    return piece.bending * piece.modulus / INCHES


def shear_carried(piece: Member) -> float:
    """Return the shear a piece carries [lb]."""
    return piece.shear * piece.area / nds("shear_rectangle")


def rigidity(piece: Member) -> float:
    """Return E′ I [lb·ft²]."""
    return piece.stiffness * piece.inertia / INCHES ** 2


def spans(g: Given, beam: Beam, shared: float) -> Results:
    """Return the largest stringer span, each way of failing by itself [ft]."""
    piece, span = beam.member, beam.span
    carries, sheared = moment_carried(piece), shear_carried(piece)
    allowed_live = span * INCHES / g.job["deflection_live"]
    allowed_total = span * INCHES / g.job["deflection_total"]
    spare_live = allowed_live / beam.sag(beam.live)
    spare_total = allowed_total / (beam.sag(beam.live)
                                   + nds("long_term_wet") * beam.sag(beam.dead))
    # Pℓ/4 + wℓ²/8 = M: the positive root.
    a, b = beam.dead / 8, beam.point / 4
    by_point = 2 * carries / (b + sqrt(b * b + 4 * a * carries))
    # V + w d = P(1 - e/ℓ) + wℓ/2 at the limit: the positive root, in the stable form.
    left = sheared + beam.dead * beam.deep - beam.point
    reach = sqrt(left ** 2 + 2 * beam.dead * beam.point * beam.edge)
    sheared_at = ((left + reach) / beam.dead if left > 0
                  else 2 * beam.point * beam.edge / (reach - left))
    in_time = allowed_total / (beam.sag_point + nds("long_term_wet") * beam.sag(beam.dead))
    by = {"span_bending": sqrt(8 * carries * shared / beam.line), "span_point": by_point,
          "span_shear": 2 * (sheared / beam.line + beam.deep),
          "span_live": span * spare_live ** (1 / 3), "span_total": span * spare_total ** (1 / 3),
          "span_live_point": span * sqrt(allowed_live / beam.sag_point),
          "span_shear_point": sheared_at,
          # House choice: a cubic's answer bounded from the safe side, by power 2 or 3 alone.
          "span_total_point": span * in_time ** (1 / 2 if in_time < 1 else 1 / 3)}
    by["span_spread"] = min(by["span_bending"], by["span_shear"], by["span_live"],
                            g.job["longest_stock"])
    by["largest_span"] = min(by["span_spread"], by["span_point"], by["span_total"],
                             by["span_live_point"], by["span_shear_point"],
                             by["span_total_point"])
    spare = min(carries * shared / beam.moment_spread, sheared / (beam.line * span / 2),
                spare_live, spare_total)
    spaced = g.sec["spacing"] * spare
    if shared > 1:
        spaced = min(spaced, nds("Cr_spacing_most"))
    rooms = point_rooms(beam, carries, sheared, allowed_total)
    beside = g.sec["spacing"] * max(0.0, min(rooms.values()))
    stiff = by["span_live_point"] >= span
    return {f"Framing.{key}": value for key, value in (by | {
        "capacity_single": carries, "shear_capacity": sheared, "live_spare": spare_live,
        "total_spare": spare_total, "spare": spare, "spacing_spread": spaced,
        "dead_line": beam.dead, "shear_left": left, "point_spare": in_time,
        **rooms, "spacing_point": beside,
        "largest_spacing": min(spaced, beside) if stiff else 0}).items()}


def point_rooms(beam: Beam, carries: float, sheared: float, sag: float) -> Results:
    """Return how many times the dead load a stringer carries beside its point load."""
    span = beam.span
    at_end = max(1 - beam.edge / span, 0)
    near = max(span / 2 - beam.deep, own("least_length"))
    return {"bend_room": (carries - beam.point * span / 4) / (beam.dead * span ** 2 / 8),
            "shear_room": (sheared - beam.point * at_end) / (beam.dead * near),
            "sag_room": (sag - beam.sag_point) / (nds("long_term_wet") * beam.sag(beam.dead))}


def tried(g: Given, size: str) -> Member:
    """Return a stringer of another size in the wood 2 to 4 in thick."""
    line, sawn = line_of("lumber_sizes", size), SAWN[g.job["sawn"]]
    return Member("stringer", g, size, line[f"thickness {sawn}"], line[f"width {sawn}"])


def ladder(g: Given, beam: Beam, shared: float, rail: Rail, found: Results) -> Results:
    """Return what each size tried carries, and the smallest that does for stringers and rails."""
    pieces = [tried(g, size) for size in TRIED]
    moment = max(beam.moment_spread / shared, beam.moment_point)
    span = beam.span * INCHES
    stiff = rigidity(beam.member) * max(g.job["deflection_live"] * beam.sag_live,
                                        g.job["deflection_total"] * beam.sag_total) / span
    turned = found["Framing.hogging_moment"] / found["Framing.water_hogging_CL"]
    rail_moment = max(found["Framing.sagging"], turned, found["Framing.local_moment"]) / rail.plies
    rail_shear = max(found["Framing.water_shear"], found["Framing.local_shear"]) / rail.plies
    passes = {
        "stringer_sizes": [moment_carried(p) >= moment and shear_carried(p) >= beam.reaction
                           and rigidity(p) >= stiff for p in pieces],
        "rail_sizes": [moment_carried(p) >= rail_moment and shear_carried(p) >= rail_shear
                       for p in pieces]}
    rows = {"stringer_moment": moment, "stringer_stiffness": stiff, "rail_moment": rail_moment,
            "rail_shear": rail_shear, "stiffness": rigidity(beam.member),
            "ladder_shear_value": pieces[0].shear, "ladder_modulus": pieces[0].stiffness}
    for n, piece in enumerate(pieces, start=1):
        rows |= {f"rungs_{n}_M": moment_carried(piece), f"rungs_{n}_V": shear_carried(piece),
                 f"rungs_{n}_EI": rigidity(piece)}
    for name, passed in passes.items():
        for n, least in enumerate(reversed(range(len(TRIED))), start=1):
            doing = [size for size, does in zip(TRIED[least:], passed[least:], strict=True) if does]
            rows[f"{name}_{n}"] = doing[0] if doing else NONE
    return {f"Framing.{key}": value for key, value in rows.items()}
