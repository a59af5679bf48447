"""Defaults, second calculation: what is used where a cell of Inputs or Sections is left blank."""

from __future__ import annotations

from math import pi, sqrt

from tests.second.given import Given, Results, constants, line_of, table

OWN = (
    "immersed_most reserve_ok reserve_least aged_ok aged_most snow_most density_aged "
    "density_deck corner_share corner_least sliding_factor board_gap lumber_waste deck_waste "
    "hardware_spare bumper_length tilt_point_ok tilt_half_ok deck_screw_length").split()
"""Judgements of the project that have the name of the input."""
OWN_AS = {
    "density_frame": "density_below_deck", "lag_grip": "float_flange", "gm_least": "GM_least",
    "clearance_least": "bed_clearance", "lift_factor": "lift_impact",
    "sling_share": "lift_point_share", "tilt_rest_ok": "tilt_gangway_ok",
    "tilt_rest_most": "tilt_gangway_most", "tilt_lost": "tilt_lost_float",
    "lost_ok": "lost_float_ok", "lost_least": "lost_float_least",
    "gangway_run": "gangway_run_3_1"}
SITE = ("force_coefficient current_coefficient hull_coefficient wake abutment_bolts "
        "plate_stringers leg_angle set_pull pile_diameter scour hinge_pin hinge_planes").split()
YARD = ("road_width trailer_length trailer_overhang trailer_payload crane_limit "
        "crane_reach").split()
PUBLISHED = {
    "flotation_load": ("lake_guidelines", "live_uniform"),
    "person_weight": ("cfr_46_170", "person_weight"),
    "person_height": ("is_code", "person_height"), "shell_rule": ("foam_law", "shell_least"),
    "float_water": ("lake_guidelines", "foam_absorption"),
    "frame_least": ("lake_guidelines", "frame_freeboard"),
    "deflection_live": ("irc_2015", "deflection_live"),
    "deflection_total": ("irc_2015", "deflection_total"),
    "screws_a_crossing": ("practice", "board_screws"),
    "tilt_point_most": ("ufc_4_152_01", "landing_tilt"),
    "tilt_half_most": ("hsc_code", "heel_crowd"),
    "finger_most": ("lake_guidelines", "finger_loss"),
    "side_pressure": ("marina_guidelines", "side_pressure"),
    "wave_most": ("sea_grant", "wave_most"),
    "gangway_width": ("ufc_4_152_01", "gangway_width_one_way"),
    "gangway_width_least": ("ufc_4_152_01", "gangway_width_one_way"),
    "chain_factor": ("ufc_4_159_03", "chain_bend"), "pile_Fb": ("nds_piles", "Fb_pine"),
    "soil_bearing": ("ibc_1807", "soil_default"), "hoop_play": ("practice", "pile_play_least"),
    "snow_density": ("own_afloat", "snow_density"), "even_least": ("own_afloat", "above_water"),
    "hinge_load": ("own_afloat", "hinge_load"), "kerf": ("own_buying", "kerf"),
    "end_trim": ("own_buying", "end_trim")}
NOTHING = ("ground_snow open_area_rule growth_load line_pull gangway_length slips anchor_limit "
           "chain_length block_weight pile_embedded pile_top line_break setback_asked setback "
           "offshore_most offshore").split()
"""Blank is none."""
NO = ("frame_rule finger_rule accessible crossed isolated slab swim_float railings "
      "services").split()
WORDS = {"delivered": "dried after treatment", "bolt": "1/2", "deck_screw": "No.10",
         "timber_rule": "not asked yet", "exposure": "D", "terrain": 1, "chain": "1/2",
         "arm_kind": "stiff arms", "yard_type": "A", "worked_type": "A",
         "carried": "whole", "permit_by": "the owner"}
OF_SECTION = {
    "deck_overhang": 0, "cross_beams": 0, "cross_beam_size": "2x8", "skirt": "none",
    "skirt_size": "2x12", "squaring": "nothing more", "float_turned": "along", "inset_side": 0,
    "inset_end": 0, "extra_floats": 0, "hinges": 0, "mooring_brackets": 0, "cleats": 0,
    "bumper": 0, "corner_wheels": 0, "ladders": 0, "gangway_rest": 0, "gangway_x": 0,
    "gangway_y": 0, "chain_weight": 0, "held_by": "none", "holder_lies": "across",
    "holder_holds": 1, "debris": 0, "holds": 0, "carried": 1,
    **{f"extra_{axis}_{k}": 0 for axis in "xy" for k in range(1, 5)},
    **{f"item_{what}_{k}": 0 for what in ("weight", "x", "y", "z") for k in range(1, 5)},
    **{f"boat_{what}_{k}": 0 for what in ("length", "height", "beam", "x", "y")
       for k in (1, 2)}}


def work(g: Given, done: Results) -> Results:
    """Return the value used of every input of Inputs and Sections that may be left blank."""
    found = {f"Inputs.{key}": g.entered_job.get(key, value)
             for key, value in (whole_job(g) | derived(g)).items()}
    return found | {f"Sections.{key}": g.entered_sec.get(key, value)
                    for key, value in of_section(g).items()}


def whole_job(g: Given) -> Results:
    """Return the defaults of the whole job that rest on no other entry."""
    own = constants("own")
    found: Results = {key: own[key] for key in OWN}
    found |= {key: own[name] for key, name in OWN_AS.items()}
    found |= {key: constants("own_site")[key] for key in SITE}
    found |= {key: constants("own_yard")[key] for key in YARD}
    found |= {key: constants(source)[name] for key, (source, name) in PUBLISHED.items()}
    found |= {f"sold_{length.replace(' ', '_')}": "yes" for length in g.catalog["stock_lengths"]}
    found |= {"timber_wood": table("timbers_pairs")[0]["wood"],
              "bed": next(iter(table("bed_friction")[-1].values()))}
    return found | dict.fromkeys(NOTHING, 0) | dict.fromkeys(NO, "no") | WORDS


def derived(g: Given) -> Results:
    """Return the defaults of the whole job that rest on what else is used."""
    own, site, moorings = constants("own"), constants("own_site"), constants("ufc_4_159_03")
    steel, job = constants("aisc_360_10"), g.job
    gust = job["wind_speed"]
    if job["wind_kind"] == "strength-level map":
        # Pressures go with the square of the speed.
        gust *= sqrt(constants("asce_7")["allowable"])
    line = moorings["wire"] if job["arm_kind"] == "wire rope" else own["synthetic_wet"]
    if job["arm_kind"] == "nylon line":
        line /= 1 - moorings["nylon_wet_loss"]
    pin = pi * job["hinge_pin"] ** 2 / 4
    dry = job["delivered"] == "dried after treatment"
    return {
        "water_weight": line_of("waters", job["water"])["weight"],
        "density_built": own["density_dry" if dry else "density_green"],
        "wind_mean": site["gust_to_mean"] * gust, "flood": job["high_water"],
        "gangway_weight": site["gangway_dead"] * job["gangway_length"] * job["gangway_width"] / 12,
        "hinge_height": job["high_water"] + site["hinge_above"], "line_factor": line,
        "hinge_limit": job["hinge_planes"] * steel["Fnv_A307"] * pin / steel["omega"],
        "access_width": job["road_width"]}


def of_section(g: Given) -> Results:
    """Return the defaults of a section type: loads and heights are those of its purpose."""
    purpose, own = line_of("purposes", g.sec["purpose"]), constants("own_afloat")
    public = g.job["use"] == "public"
    users = "public" if public else "private"
    point = (constants("ufc_4_152_01")["landing_point"] if public
             else constants("lake_guidelines")["live_point"])
    return OF_SECTION | {
        "panel": next(iter(g.catalog["panels"])), "board": next(iter(g.catalog["boards"])),
        "float_gap": constants("own")["float_top_gap"], "hinge_apart": own["hinge_apart"],
        **{f"boat_draft_{k}": constants("own_site")["boat_draft"] for k in (1, 2)},
        "capacity_load": purpose[f"capacity {users}"],
        "strength_load": purpose[f"strength {users}"], "point_load": point,
        "deck_low": purpose["deck low"], "deck_high": purpose["deck high"],
        "deck_flotation": purpose["deck at flotation load"],
        "deck_capacity": purpose["deck at capacity load"]}
