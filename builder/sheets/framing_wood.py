"""Framing, first part: loads on the members, factors common to all, and the wood of a member.

The wood of stringers, cross-beams, headers and rails is declared by one function, so that every
member is adjusted alike: reference value, then each factor on a row of its own, then the
adjusted value.  CD 1.0 and CL 1.0 stand in the adjusted bending value; where a load lasts less
long or an edge is not held, the row says so.
"""

from __future__ import annotations

from builder.language import Sheet, greatest, least, root, when

from . import inputs as job
from . import sections as sec
from . import weight
from .reference import SIZE_FACTORS, SIZE_FACTORS_PINE, WOODS, nds, own, supplement

sheet = Sheet("Framing", "Stringers, cross-beams, headers and rails",
              about="Strength and stiffness of every member, and the sizes that would do.")
row, check, block, find, note = sheet.row, sheet.check, sheet.block, sheet.find, sheet.note

NDS = "NDS 2018"
TABLES_4 = "NDS Supplement 2018 Tables 4A, 4B, 4D"
STATICS, OURS = "statics", "own judgement"
GROUP = "Framing"


class Member(dict):
    """The rows of one member by name: ``stringer.Fb``."""

    def __getattr__(self, name: str):
        """Return a row by its name."""
        try:
            return self[name]
        except KeyError:
            raise AttributeError(f"this member has no row '{name}'") from None


block("A timber frame at all")
timber_asked = row("Timber frames: 2 allowed, 1 not asked yet, 0 forbidden", "n_a", "each",
                   2 - job.timber_rule.is_("not asked yet") - 2 * job.timber_rule.is_("no"), OURS,
                   digits=0)
timber_check = check(
    "Timber frames are allowed here", timber_asked, at_least=1, look_at=2,
    source="Lake guidelines, material", group=GROUP,
    cure="Ask who controls the water before you quote, and type the answer on Inputs. Where "
         "timber frames are forbidden this workbook's frame cannot be built.")

block("Loads on the members")
note("Members are checked under people or snow spread out (S1, S4), under one point load (S2) "
     "and, for the rails, under a crowd gathered in the middle or at the ends (S3). Spread and "
     "point load never stand together.")
across = row("Stringers run: 1 across, 0 along", "k_a", "", when(sec.run.is_("across"), 1, 0),
             STATICS, digits=0)
snow = row("Snow, if the dock stays in", "q_sn", "psf",
           when(job.stays_in.is_("yes"), job.ground_snow, 0), OURS, digits=1)
dead = row("Dead load the members carry", "q_Dm", "psf",
           greatest(weight.deck_dead, 0), STATICS)
live = row("Live load, people or snow", "q_ℓ", "psf", greatest(sec.strength_load, snow), OURS,
           digits=1)
duration_live = row("Load duration, people", "C_D", "", nds.CD_live, f"{NDS} Table 2.3.2")
duration_snow = row("Load duration, snow", "C_D,sn", "", nds.CD_snow, f"{NDS} Table 2.3.2")
uniform = row("Spread load for strength, as of people's duration", "q_u", "psf",
              greatest(dead + sec.strength_load, (dead + snow) * duration_live / duration_snow),
              f"{NDS} 2.3.2", digits=1)
point_edge = row("Point load, nearest to an edge", "e_P", "ft", own.point_from_edge.in_("ft"), OURS)

block("Factors common to all members")
note("Docks are wet service. Rough and full-sawn lumber takes its actual section with the values "
     "of the nearest dressed size class. Cfu is for boards laid flat: see Decking. Incised "
     "timbers take the factors of dimension lumber, on the safe side.")
temperature = row("Temperature", "C_t", "", nds.Ct_normal, f"{NDS} Table 2.3.3")
incising = row("Incising, strength", "C_i", "",
               when(job.incised.is_("yes"), supplement.Ci_strength, 1), f"{NDS} 4.3.8")
incising_stiff = row("Incising, stiffness", "C_iE", "",
                 when(job.incised.is_("yes"), supplement.Ci_E, 1), f"{NDS} 4.3.8")
dimension_line = find("First line of the wood, 2 to 4 in thick", WOODS, job.wood)
timber_line = find("Line of the wood, 5 x 5 in and larger", WOODS, job.timber_wood)
by_width = row("Values by width: 1 Southern Pine, 0 others", "k_w", "",
               dimension_line["by width"], TABLES_4, digits=0)
stud = row("Stud grade: 1, else 0", "k_st", "", dimension_line["stud"], TABLES_4, digits=0)


def bending_wood(name: str, tag: str, size, t, d) -> Member:
    """Declare how a size finds its reference values, and its bending value with every factor.

    Args:
        name: the member, in words.
        tag: its index in symbols.
        size: the line of its size in the table of lumber sizes.
        t, d: actual thickness and depth [in].
    """
    m = Member(name=name, tag=tag, size=size, t=t, d=d)
    m["S"] = row(f"{name}: section modulus", f"S_{tag}", "in³", t * d**2 / 6, STATICS)
    m["I"] = row(f"{name}: moment of inertia", f"I_{tag}", "in⁴", t * d**3 / 12, STATICS)
    m["width_class"] = row(f"{name}: width class", f"j_{tag}", "", size["width class"], TABLES_4,
                           digits=0)
    m["thick"] = row(f"{name}: thickness class", f"h_{tag}", "", size["thick class"], TABLES_4,
                     digits=0)
    m["timber"] = row(f"{name}: 1 timber, 0 dimension lumber", f"k_t{tag}", "", size["timber"],
                      TABLES_4, digits=0)
    j = m.width_class
    # Southern Pine has a line a width class, up to the fifth; a stud of 8 in and more takes the
    # line above its own, that of No.3.
    m["line"] = sheet.line(
        f"{name}: line of its design values", WOODS,
        greatest(1, least(len(WOODS.keys), m.timber * timber_line + (1 - m.timber) * (
            dimension_line + by_width * (least(j, 5) - 1) - stud * (j >= 3)))))
    size_factor(m)
    m["Fb"] = row(f"{name}: Fb, table", f"F_b,{tag}", "psi", m.line["Fb"], TABLES_4, digits=0)
    m["CM_b"] = row(f"{name}: wet service, Fb", f"C_M,b{tag}", "",
                    when(m.timber > 0, supplement.CM_timber_Fb,
                         wet_bending(m.Fb * m.CF <= supplement.CM_Fb_limit)), TABLES_4)
    m["Fb_single"] = row(f"{name}: F′b, one member alone", f"F′_b,{tag}", "psi",
                         m.Fb * duration_live * m.CM_b * temperature * m.CF * incising,
                         f"{NDS} Table 4.3.1", digits=0)
    return m


def size_factor(m: Member) -> None:
    """Declare CF of a member: by table, or by depth for timbers."""
    name, tag, d, j = m.name, m.tag, m.d, m.width_class
    pine, other = SIZE_FACTORS_PINE, SIZE_FACTORS
    thin, thick = "Fb 2 and 3 in thick", "Fb 4 in thick"
    m["CF_table"] = row(
        f"{name}: size factor by table", f"C_F0,{tag}", "",
        when(m.thick >= 4,
             pine.at(j)[thick] * by_width + other.at(j)[thick] * (1 - by_width),
             pine.at(j)[thin] * by_width + other.at(j)[thin] * (1 - by_width)), TABLES_4)
    m["CF"] = row(
        f"{name}: size factor", f"C_F,{tag}", "",
        when(m.timber > 0,
             least(1, (nds.timber_size_depth / d) ** (1 / nds.timber_size_exponent_root)),
             least(greatest(m.CF_table, own.least_share), other.at(j)["stud Fb"] + 1 - stud)),
        f"{NDS} 4.3.6")


def wet_bending(low):
    """Return CM on Fb of dimension lumber: 1 where Fb CF is low, without a second when()."""
    return 1 - (1 - supplement.CM_Fb) * (1 - low)


def member_wood(name: str, tag: str, size, t, d, *, bears=False, slender=False) -> Member:
    """Declare all adjusted values of a member.

    Args:
        name, tag, size, t, d: as in :func:`bending_wood`.
        bears: it bears on something, so that Fc perpendicular is wanted.
        slender: an edge may be free, so that Emin is wanted.
    """
    block(f"{name}: wood")
    m = bending_wood(name, tag, size, t, d)
    m["Fv"] = row(f"{name}: Fv, table", f"F_v,{tag}", "psi", m.line["Fv"], TABLES_4, digits=0)
    m["CM_v"] = row(f"{name}: wet service, Fv", f"C_M,v{tag}", "",
                    when(m.timber > 0, supplement.CM_timber_Fv, supplement.CM_Fv), TABLES_4)
    m["Fv_adj"] = row(f"{name}: F′v", f"F′_v,{tag}", "psi",
                      m.Fv * duration_live * m.CM_v * temperature * incising,
                      f"{NDS} Table 4.3.1", digits=1)
    m["E"] = row(f"{name}: E, table", f"E_{tag}", "psi", m.line["E"], TABLES_4, digits=0)
    m["CM_E"] = row(f"{name}: wet service, E", f"C_M,E{tag}", "",
                    when(m.timber > 0, supplement.CM_timber_E, supplement.CM_E), TABLES_4)
    m["E_adj"] = row(f"{name}: E′", f"E′_{tag}", "psi",
                     m.E * m.CM_E * temperature * incising_stiff, f"{NDS} Table 4.3.1", digits=0)
    if bears:
        m["Fc"] = row(f"{name}: Fc⊥, table", f"F_c,{tag}", "psi", m.line["Fc_perp"], TABLES_4,
                      digits=0)
        # A timber keeps its value in the wet where its table says so (Southern Pine).
        wet = m.line["wet timber"]
        m["CM_c"] = row(f"{name}: wet service, Fc⊥", f"C_M,c{tag}", "",
                        when(m.timber > 0, 1 - (1 - supplement.CM_timber_Fc_perp) * wet,
                             supplement.CM_Fc_perp), TABLES_4)
        m["Fc_adj"] = row(f"{name}: F′c⊥, Cb 1 at an end", f"F′_c,{tag}", "psi",
                          m.Fc * m.CM_c * temperature * supplement.Ci_Fc_perp,
                          f"{NDS} Table 4.3.1", digits=1)
    if slender:
        m["Emin_adj"] = row(f"{name}: E′min", f"E′_min,{tag}", "psi",
                            m.line["Emin"] * m.CM_E * temperature * incising_stiff,
                            f"{NDS} Table 4.3.1", digits=0)
    return m


def stability(m: Member, what: str, tag: str, length, Fb_star) -> Member:
    """Declare the beam stability factor of a member with a free compression edge.

    Args:
        m: the member; it carries E'min.
        what: when the edge is free, in words.
        tag: index in symbols.
        length: effective length le [in], a row.
        Fb_star: bending value with every factor but CL [psi], a row.

    Returns:
        rows RB, FbE, CL and Fb.
    """
    s = Member()
    s["RB"] = row(f"{what}: slenderness RB", f"R_B,{tag}", "", root(length * m.d / m.t**2),
                  f"{NDS} 3.3.3.6")
    s["FbE"] = row(f"{what}: FbE", f"F_bE,{tag}", "psi", nds.CL_FbE * m.Emin_adj / s.RB**2,
                   f"{NDS} 3.3.3.8", digits=0)
    s["mean"] = row(f"{what}: (1 + FbE/Fb*) / 1.9", f"μ_{tag}", "",
                    (1 + s.FbE / Fb_star) / nds.CL_b, f"{NDS} 3.3.3.8", digits=3)
    # The root is of a number that cannot fall below 0, and CL is above 0: the floors prove it.
    s["CL"] = row(f"{what}: CL", f"C_L,{tag}", "",
                  greatest(s["mean"] - root(greatest(
                      0, s["mean"] ** 2 - s.FbE / Fb_star / nds.CL_c)), own.least_share),
                  f"{NDS} 3.3.3.8", digits=4)
    s["Fb"] = row(f"{what}: F′b", f"F′_bL,{tag}", "psi", Fb_star * s.CL, f"{NDS} Table 4.3.1",
                  digits=0)
    return s

