"""Launch: what a section weighs on the hook, and what its corners should read on the water.

Corners, sides and ends are named as on Readings: near and far end, left and right hand of a person
who walks out.  The corners of the deck are those of its overall size.  The predicted reading is
that of Stability as launched: dry timber, fixed items mounted, nobody aboard.
"""

from __future__ import annotations

from builder.language import (
    Row,
    Sheet,
    absolute,
    again,
    arc_tangent,
    degrees,
    greatest,
    least,
    radians,
    sine,
    when,
)

from . import parts, readings, weight
from . import stability as st
from .framing_lifting import lift_load, sling_a
from .readings import CORNERS, launch_own
from .reference import own
from .stability_group import (
    F_X,
    F_Y,
    along_axes,
    centre_a,
    centre_b,
    half_length,
    half_width,
    reach_x,
    reach_y,
    round_b,
    round_l,
    square_a,
    square_b,
    turn,
    turn_length,
)

sheet = Sheet("Launch", "Lifting, launching and what the corners should read",
              about="Weights to lift, sling tensions, predicted corner freeboards, and the drop "
              "under a test weight.")
row, check, block, note = sheet.row, sheet.check, sheet.block, sheet.note

ARCHIMEDES, STATICS, OURS = "Archimedes", "statics", "own judgement"
GROUP = "Launch"
AT = st.afloat["launch"]

sheet.caution("Nobody under a lifted section or between it and anything fixed. Life jackets on "
              "everyone near the water; cold water takes the strength of hands within minutes. "
              "Keep clear of power lines; tag lines at two corners.")

block("Weights to lift")
dry = row("With floats, timber as delivered", "W_d", "lb", weight.launch, STATICS, digits=0)
frame = row("Frame without floats, as delivered", "W_fr", "lb", weight.frame_only, STATICS,
            digits=0)
soaked = row("With floats, soaked, no gangway or chain", "W_so", "lb", weight.lifted, STATICS,
             digits=0)
note("Lifted out after a season it also holds trapped water and growth; a bottom stuck in mud "
     "cannot be worked out: break one edge free first.")

block("Slings")
note("Two slings under each rail; of the four legs two are taken to carry, since a frame does not "
     "share a load evenly. Tension is the load with its dynamic factor, halved, times 1/sin of the "
     "angle from the horizontal. Never flatter than the last angle; Framing checks the rails.")
pick = row("Sling from each end", "a_l", "ft", sling_a, OURS)
hook_x = row("Hook over this place: along, from the middle", "x_h", "ft", weight.launch_x, STATICS)
hook_y = row("Hook over this place: across, from the centreline", "y_h", "ft", weight.launch_y,
             STATICS)
hook_load = row("Load on the hook, with the dynamic factor", "W_k", "lb", greatest(lift_load, 0),
                OURS, digits=0)
ANGLES = {"steep": launch_own.angle_steep, "middle": launch_own.angle_middle,
          "flat": launch_own.angle_flat}
factor = {key: row(f"Sling angle factor at {angle.value:g}°", f"k_{angle.value:g}", "",
                   1 / greatest(sine(radians(angle)), own.least_share), STATICS, digits=3)
          for key, angle in ANGLES.items()}
tension = {key: row(f"Tension in a sling leg at {angle.value:g}°", f"T_{angle.value:g}", "lb",
                    hook_load / 2 * factor[key], STATICS, digits=0)
           for key, angle in ANGLES.items()}

gear = sheet.gate("Sling and machine are typed on Readings",
                  [readings.sling_limit, readings.machine_limit])
block("Lifting gear", gate=gear)
sling_check = check("Sling leg at the middle angle", tension["middle"],
                    at_most=readings.sling_limit,
                    source="own judgement; tag of the sling", group=GROUP,
                    cure="Stronger or longer slings, a spreader, or lift the floats apart from the "
                    "frame.")
machine_check = check("Load on the lifting machine", hook_load, at_most=readings.machine_limit,
                      source="own judgement; load chart of the machine", group=GROUP,
                      cure="A larger machine, a shorter reach, or lift the floats apart from the "
                      "frame.")

block("Predicted as launched")
state = row("State", "", "text", st.state["launch"], ARCHIMEDES, digits=0)
list_deg = row("List; the right side down is positive", "φ", "deg",
               degrees(arc_tangent(st.tan_list["launch"])), STATICS)
trim_deg = row("Trim; the far end down is positive", "θ", "deg",
               degrees(arc_tangent(st.tan_trim["launch"])), STATICS)


def _place(name: str) -> tuple[int, int]:
    """Return on which end and side a corner is: (far, right), each 1 or -1."""
    number = CORNERS.keys.index(name)
    return CORNERS.entries("far")[number], CORNERS.entries("right")[number]


corner: list[Row] = []
"""Deck above water at the corners, going round as on Readings [in]."""
for _i, _name in enumerate(CORNERS.keys, 1):
    _far, _right = _place(_name)
    corner.append(row(
        f"Deck above water: {_name}", f"p_{_i}", "in",
        AT.free - (st.tan_trim["launch"] * (_far * half_length - F_X)
                   + st.tan_list["launch"] * (_right * half_width - F_Y)).in_("in"),
        STATICS))
mean = row("Deck above water, mean of the four", "p", "in", sum(corner[1:], corner[0]) / 4,
           STATICS)

block("For the pencil")
note("Weight afloat is the weight above plus the pounds that sink it an inch times the inches by "
     "which the mean of the four corners is lower than predicted. Where floats stand askew "
     "(Stability turns the leaning axes) a weight for one also moves the other a little: AsBuilt "
     "works both out at once.")
inch = row("Pounds that sink it an inch", "w_1", "lb/in",
           (weight.launch / st.depth["launch"]).in_("lb/in"), ARCHIMEDES, digits=0)
_inside = own.point_from_edge.in_("ft")
_GM = {"a": st.GM_a["launch"], "b": st.GM_b["launch"]}


def _upright(near: str, other: str):
    """Return the metacentric height against pure list (near axis a) or pure trim (b), from 0 up.

    The axes lean by the angle α with cos²α = 1/turn_length²: it is GM_a cos²α + GM_b sin²α.
    """
    return greatest(_GM[other] + (_GM[near] - _GM[other]) / turn_length ** 2, 0)


level_side = row("One side lower by an inch: pounds at the middle of the other", "w_y", "lb/in",
                 (weight.launch * _upright("a", "b")
                  / (parts.overall_width * (half_width - _inside))).in_("lb/in"), ARCHIMEDES,
                 digits=0)
level_end = row("One end lower by an inch: pounds at the middle of the other", "w_x", "lb/in",
                (weight.launch * _upright("b", "a")
                 / (parts.overall_length * (half_length - _inside))).in_("lb/in"), ARCHIMEDES,
                digits=0)

block("With the test weight aboard")
note("The weight lies on the deck, its centre 6 in inside the edge; the drop is read at the edge "
     "of the deck beside it. A rigid frame is assumed: one that twists drops more at the corner.")
test_total = row("Weight with the test weight", "W_t", "lb", weight.launch + readings.test_weight,
                 STATICS, digits=0)
test_kg = row("Centre of gravity above K", "KG_t", "ft",
              (weight.launch * weight.launch_kg + readings.test_weight * parts.deck_top)
              / greatest(test_total, own.least_weight), STATICS, digits=3)
_change: dict = {weight.launch: test_total, weight.launch_kg: test_kg,
                 **{r: r for r in (square_a, square_b, round_b, round_l)}}
_made: dict = {}
test_GM_a = again(sheet, st.GM_a["launch"], _change, "test", _made)
test_GM_b = again(sheet, st.GM_b["launch"], _change, "test", _made)
test_draft, test_BM_a, test_BM_b = (
    _made[r] for r in (AT.draft, st.BM_a["launch"], st.BM_b["launch"]))
test_state = row("Stable under the test weight", "", "text",
                 when(least(test_GM_a, test_GM_b) > 0, "yes", "NO: do not put it on"),
                 ARCHIMEDES, digits=0)
test_line = sheet.find("Corner loaded", CORNERS, readings.test_corner)
test_y = row("Test weight across, from the centreline", "y_t", "ft",
             test_line["right"] * (half_width - _inside), STATICS)
test_x = row("Test weight along at the corner, from the middle", "x_t", "ft",
             test_line["far"] * (half_length - _inside), STATICS)
read_y = row("Drop is read across, from F", "y_r", "ft", test_line["right"] * half_width - F_Y,
             STATICS)
read_x = row("Drop at the corner is read along, from F", "x_r", "ft",
             test_line["far"] * half_length - F_X, STATICS)


def _drop(key: str, name: str, x, read_along) -> tuple[Row, Row, Row]:
    """Declare list, trim and drop [in] with the test weight at one place; return them.

    The rise of the centre of buoyancy is that of the straight-line angle; Stability makes six
    passes, for angles far larger than a test weight should give.

    Args:
        key: tag of the symbols; name: of the place.
        x: the weight along, from the middle: a row, or 0.
        read_along: where the drop is read along, from F [ft].
    """
    on_a, on_b = along_axes(test_y, x, turn, turn_length)
    arm_a, arm_b = (
        row(f"{name}: arm of the whole, axis {axis}", f"y_{axis}{key}", "ft",
            (weight.launch * own_arm + readings.test_weight * (on - centre))
            / greatest(test_total, own.least_weight), STATICS, digits=4)
        for axis, own_arm, on, centre in (("a", st.arm_a["launch"], on_a, centre_a),
                                          ("b", st.arm_b["launch"], on_b, centre_b)))

    stiff_a, stiff_b = (greatest(gm, own.least_length) for gm in (test_GM_a, test_GM_b))
    rise = row(f"{name}: rise of the centre of buoyancy", f"e_{key}", "ft",
               (test_BM_a * (arm_a / stiff_a) ** 2 + test_BM_b * (arm_b / stiff_b) ** 2) / 2,
               STATICS, digits=6)
    a, b = arm_a / (stiff_a + rise), arm_b / (stiff_b + rise)
    tan_list = row(f"{name}: list, tangent", f"tan φ_{key}", "ft/ft",
                   (a - turn * b) / turn_length, STATICS, digits=4)
    tan_trim = row(f"{name}: trim, tangent", f"tan θ_{key}", "ft/ft",
                   (b + turn * a) / turn_length, STATICS, digits=4)
    drop = row(f"{name}: drop of the deck beside it", f"d_{key}", "in",
               test_draft - AT.draft
               + ((tan_trim - st.tan_trim["launch"]) * read_along
                  + (tan_list - st.tan_list["launch"]) * read_y).in_("in"), STATICS)
    return tan_list, tan_trim, drop


_, _, drop_side = _drop("s", "At the side", 0, 0 - F_X)
_list, _trim, drop_corner = _drop("c", "At the corner", test_x, read_x)
test_range = row("With it at the corner the formulas", "", "text",
                 when((absolute(_trim) * reach_x + absolute(_list) * reach_y).in_("in")
                      <= least(test_draft, parts.float_depth - test_draft), "hold",
                      "OUT OF RANGE: a float corner out or under; it drops more"), ARCHIMEDES,
                 digits=0)
