"""Terms, the sketches: what words alone say badly, drawn with the pens of the drawing.

A sketch is 200 wide and 100 high, its middle at 0, 0.  Nothing on it is to scale and nothing
follows the inputs: the points are our own, made to be read.
"""

from __future__ import annotations

from math import cos, radians, sin

from builder.resolve.sketch_sheet import Sketch

Points = list[tuple[float, float]]


def box(x1: float, y1: float, x2: float, y2: float) -> Points:
    """Return a rectangle given by two corners."""
    return [(x1, y1), (x2, y1), (x2, y2), (x1, y2), (x1, y1)]


def along(x1: float, x2: float, y: float) -> Points:
    """Return a dimension line along, with a stroke across each end."""
    return [(x1, y - 2), (x1, y + 2), (x1, y), (x2, y), (x2, y - 2), (x2, y + 2)]


def upright(x: float, y1: float, y2: float) -> Points:
    """Return a dimension line up, with a stroke across each end."""
    return [(x - 1, y1), (x + 1, y1), (x, y1), (x, y2), (x - 1, y2), (x + 1, y2)]


def arrow(x: float, y1: float, y2: float) -> Points:
    """Return an arrow straight down, its head at the second height."""
    return [(x, y1), (x, y2), (x - 2, y2 + 5), (x, y2), (x + 2, y2 + 5)]


def turned(points: Points, x0: float, y0: float, degrees: float) -> Points:
    """Return points turned about a point, the right side down."""
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return [(round(x0 + (x - x0) * c + (y - y0) * s, 2), round(y0 + (y - y0) * c - (x - x0) * s, 2))
            for x, y in points]


AFLOAT = Sketch(
    "Afloat, from the side", ("Freeboard", "Draft", "Afloat", "Waterplane", "Clearance"),
    "A section from the side: freeboard from water to deck, draft from water to the floats' "
    "underside, clearance from there to the bed.",
    {"frame": [box(-60, 10, 60, 22)], "member": [box(-62, 22, 62, 26)],
     "float": [box(-52, -14, -14, 10), box(14, -14, 52, 10)],
     "water": [[(-96, 0), (96, 0)]], "bed": [[(-96, -40), (96, -40)]],
     "measure": [upright(70, 0, 26), upright(70, -14, 0), upright(-70, -40, -14)]},
    (("deck", 0, 31), ("frame", 0, 16), ("float", -33, 5), ("float", 33, 5), ("water", -84, 5),
     ("freeboard", 85, 13), ("draft", 81, -7), ("clearance", -84, -27), ("bed", 0, -36)))

LEAN = Sketch(
    "List: one side lower. Trim: one end lower",
    ("List", "Trim", "Tilt"),
    "Left, a section from its end with one side lower: list. Right, one from the side with one "
    "end lower: trim.",
    {"frame": [turned(box(-78, 6, -22, 14), -50, 0, 9), turned(box(10, 6, 92, 14), 51, 0, 5)],
     "float": [turned(box(-76, -10, -54, 6), -50, 0, 9), turned(box(-46, -10, -24, 6), -50, 0, 9),
               turned(box(12, -10, 40, 6), 51, 0, 5), turned(box(62, -10, 90, 6), 51, 0, 5)],
     "water": [[(-98, 0), (-5, 0)], [(5, 0), (98, 0)]],
     "thing": [arrow(-24, 32, 11), arrow(90, 32, 12)]},
    (("load", -24, 37), ("load", 90, 37), ("list", -50, -28),
     ("trim", 50, -28)))

UPRIGHT = Sketch(
    "Why it stands up: G weight, B water, M metacentre, GZ righting arm",
    ("GM", "GZ", "BM", "KG", "Metacentre", "Centre of gravity", "Centre of buoyancy"),
    "A leaning section from its end: G the centre of gravity, B the centre of buoyancy moved to "
    "the low side, M the metacentre above both, GZ the righting arm between their lines.",
    {"frame": [turned(box(-62, -12, 62, 14), 0, 0, 16)], "water": [[(-96, 0), (96, 0)]],
     "measure": [[(-4, -13), (13, 45)], [(13, -6), (13, 45)], [(2, 7), (13, 7)]],
     "hole": [[(2, 7)], [(13, -6)], [(13, 45)]]},
    (("G", -3, 8), ("B", 19, -6), ("M", 19, 45), ("Z", 17, 9), ("K", -4, -20)))

ABOVE = Sketch(
    "Frame from above: stringers across, and along",
    ("Rail", "Header", "Stringer", "Cross-beam", "On centre", "Pitch"),
    "Two frames from above: left, stringers run across between the rails; right, they run along "
    "between headers and a cross-beam. On centre is from middle to middle.",
    {"frame": [box(-95, -25, -5, 25), box(-95, -22, -5, 22), [(-92, -22), (-92, 22)],
               [(-8, -22), (-8, 22)], box(5, -25, 95, 25), box(5, -22, 95, 22),
               [(8, -22), (8, 22)], [(92, -22), (92, 22)], box(49, -22, 52, 22)],
     "member": [*([(x, -22), (x, 22)] for x in (-80, -65, -50, -35, -20)),
                *([(8, y), (49, y)] for y in (-11, 0, 11)),
                *([(52, y), (92, y)] for y in (-11, 0, 11))],
     "measure": [along(-65, -50, -31), [(-94, 28), (-94, 20)], [(50, -29), (50, -20)],
                 [(-20, -29), (-20, -24)]]},
    (("header", -88, 32), ("stringers", -45, 32), ("stringers", 50, 32),
     ("on centre", -57, -37), ("rail", -20, -34), ("cross-beam", 50, -34)))

CUT = Sketch(
    "Cut across the dock", ("Skirt", "Ply", "Inset", "Panel"),
    "The dock cut across: deck panel on a stringer between rails of two plies, skirts outside, "
    "floats below, set in from the outside of the rail.",
    {"member": [box(-80, 20, 80, 25)], "frame": [
        box(-68, 8, 68, 20), box(-71, 4, -68, 20), box(-74, 4, -71, 20), box(68, 4, 71, 20),
        box(71, 4, 74, 20)],
     "skirt": [box(-78, -3, -74, 20), box(74, -3, 78, 20)],
     "float": [box(-64, -20, -26, 4), box(26, -20, 64, 4)], "water": [[(-96, -12), (96, -12)]],
     "measure": [along(64, 74, -28), [(-71, 33), (-71, 21)], [(-85, 4), (-79, 4)]]},
    (("deck panel", 0, 30), ("stringer", 0, 14), ("rail of two plies", -62, 37),
     ("skirt", -91, 4), ("float", 45, -4), ("float", -45, -4), ("inset", 69, -34)))

JOINT = Sketch(
    "Stringer end, from above", ("Framing angle", "Grip", "Washer plate"),
    "A stringer end bolted to the rail through a framing angle, a washer plate under each nut; "
    "the grip is all that a bolt clamps.",
    {"frame": [box(-64, -20, 64, -8), [(-7, 36), (-7, -8)], [(7, 36), (7, -8)]],
     "plate": [[(7, -8), (36, -8), (36, -6), (9, -6), (9, 24), (7, 24), (7, -8)],
               box(17, -22, 31, -20), box(-9, 5, -7, 19)],
     "bolt": [[(24, -27), (24, 0)], [(21, 0), (27, 0)], [(-14, 12), (15, 12)],
              [(15, 10), (15, 14)]],
     "measure": [upright(-74, -22, -6), [(40, 6), (10, 6)], [(40, -28), (31, -22)]]},
    (("stringer", 0, 41), ("rail", -44, -14), ("grip", -84, -14), ("framing angle", 58, 6),
     ("washer plate", 58, -30)))

SAW = Sketch(
    "Saw and splice", ("Kerf", "Splice", "Offcut"),
    "Above, a board cut in two pieces: the saw takes the kerf, the rest is an offcut. Below, a "
    "member longer than the stock, joined over a splice.",
    {"frame": [box(-92, 10, 92, 20), box(-92, -28, 0, -18), box(0, -28, 92, -18)],
     "hatch": [box(-23, 10, -20, 20), box(51, 10, 54, 20), [(-23, 10), (-20, 20)],
               [(51, 10), (54, 20)]],
     "plate": [box(-34, -36, 34, -28)], "measure": [along(-23, -20, 25)],
     "bolt": [*([(x, -40), (x, -14)] for x in (-25, -12, 12, 25))]},
    (("kerf", -21, 31), ("piece", -58, 15), ("piece", 16, 15), ("offcut", 73, 15),
     ("splice", 52, -33), ("joint", 0, -10)))

CHAIN = Sketch(
    "Scope: length of chain over depth; it hangs in a catenary",
    ("Scope", "Catenary", "Dead-weight anchor"),
    "A dock held by a chain that hangs in a curve to a heavy block on the bed; scope is the "
    "chain's length over the depth.",
    {"frame": [box(-92, 26, -52, 36)], "water": [[(-96, 30), (96, 30)]],
     "bed": [[(-96, -32), (96, -32)]], "thing": [box(66, -32, 86, -20)],
     "bolt": [[(-52, 27), (-36, 6), (-18, -11), (2, -23), (22, -29), (42, -31), (66, -28)]],
     "measure": [upright(-76, -32, 30)]},
    (("dock", -72, 42), ("depth", -66, 0), ("chain", 0, -8),
     ("anchor", 76, -14), ("bed", 0, -38)))

LOADS = Sketch(
    "Load on a member", ("Live load", "Point load", "Deflection", "Bearing", "Span"),
    "A member on two supports under a spread load and a point load, sagging between them: span, "
    "bearing and deflection.",
    {"frame": [box(-80, 4, 80, 12)], "thing": [
        *(arrow(x, 28, 14) for x in (-70, -58, -46, -34, -22)), arrow(40, 38, 14)],
     "loaded": [[(-76, 4), (-50, -4), (-20, -10), (10, -11), (40, -8), (60, -3), (76, 4)]],
     "plate": [box(-80, -6, -72, 4), box(72, -6, 80, 4)],
     "measure": [along(-76, 76, -30), upright(0, -11, 4)]},
    (("spread load", -46, 33), ("point load", 40, 43), ("deflection", 19, -4),
     ("bearing", -82, -12), ("bearing", 82, -12), ("span", 0, -36)))

STRIP = Sketch(
    "What one member carries", ("Tributary width",),
    "Four stringers from above; the hatched strip, half way to the neighbours on both sides, is "
    "what one of them carries.",
    {"frame": [box(-84, -24, 84, 24)], "member": [
        *([(x, -24), (x, 24)] for x in (-63, -21, 21, 63))],
     "hatch": [[(0, -24), (0, 24)], [(42, -24), (42, 24)],
               *([(0, y), (42, y + 12)] for y in range(-24, 13, 6))],
     "measure": [along(0, 42, -31)]},
    (("stringer", 21, 30), ("stringer", -21, 30), ("tributary width", 21, -38)))

SECTIONS = Sketch(
    "Sections of a dock; fingers are held in roll by the walkway",
    ("Section", "Landing", "Finger", "Gangway", "Hinge", "Held in roll"),
    "A dock from above: gangway from the shore to a landing, a walkway with two fingers held in "
    "roll by it, a platform across its end; hinges between.",
    {"bed": [[(-96, -38), (96, -38)]], "thing": [box(-5, -40, 5, -20)],
     "frame": [box(-20, -26, 20, -10), box(-8, -8, 8, 26), box(10, -4, 56, 4),
               box(10, 14, 56, 22), box(-36, 28, 36, 42)],
     "hole": [[(-6, -9)], [(6, -9)], [(-6, 27)], [(6, 27)], [(9, -2)], [(9, 2)], [(9, 16)],
              [(9, 20)]],
     "measure": [[(-28, -4), (-8, -8)]]},
    (("shore", -60, -43), ("gangway", 20, -32), ("landing", -36, -18), ("hinges", -38, -2),
     ("walkway", -22, 14), ("finger", 66, 0), ("finger", 66, 18),
     ("platform", 0, 35)))

LIFT = Sketch(
    "Lifting", ("Sling",),
    "A section hanging from a crane's hook by slings, each at a slant to the frame.",
    {"frame": [box(-70, -26, 70, -14)], "float": [box(-60, -42, -20, -26), box(20, -42, 60, -26)],
     "bolt": [[(-42, -14), (0, 32), (42, -14)], [(0, 32), (0, 40)]],
     "measure": [[(-30, 14), (-18, 11)]]},
    (("hook", 0, 45), ("sling", -40, 15), ("section", 0, -20)))

SKETCHES = (AFLOAT, LEAN, UPRIGHT, ABOVE, CUT, JOINT, SAW, LOADS, STRIP, CHAIN, SECTIONS, LIFT)
