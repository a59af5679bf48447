"""The published tables and constants every sheet draws on, by name.

Each is a CSV file under ``templates/tables`` (published, locked on the Data sheet) or
``templates/catalog`` (invented products, editable on the Catalog sheet).
"""

from __future__ import annotations

from pathlib import Path

from builder.language import Sheet, Table, read_constants, read_table

TEMPLATES = Path(__file__).resolve().parents[2] / "templates"


def table(name: str) -> Table:
    """Return a published table."""
    return read_table(TEMPLATES / "tables" / f"{name}.csv")


def constants(name: str):
    """Return the constants of a source."""
    return read_constants(TEMPLATES / "tables" / f"{name}.csv")


def words(title: str, *keys: str) -> Table:
    """Return a list of words to choose from."""
    name = title.lower().replace(" ", "_").replace(",", "")
    return Table(name, title, "own", title, {}, list(keys), [() for _ in keys],
                 [("", "our own words", "") for _ in keys])


nds = constants("nds_2018")
supplement = constants("nds_supplement_2018")
placement = constants("placement")
wood_handbook = constants("wood_handbook")
aisc = constants("aisc_360_10")
water = constants("water")
lake = constants("lake_guidelines")
marina = constants("marina_guidelines")
ufc_piers = constants("ufc_4_152_01")
irc = constants("irc_2015")
ibc = constants("ibc_2015")
is_code = constants("is_code")
cfr = constants("cfr_46_170")
foam_law = constants("foam_law")
practice = constants("practice")
ada = constants("ada_2010")
own = constants("own")
Sheet.look = own.look_from

LUMBER = table("lumber_sizes")
WOODS = table("woods")
WOOD_PAIRS = table("woods_pairs")
TIMBER_PAIRS = table("timbers_pairs")
SIZE_FACTORS = table("size_factors")
SIZE_FACTORS_PINE = table("size_factors_pine")
FLAT_USE = table("flat_use_factors")
BOLTS = table("bolts")
LAGS = table("lags")
LAG_THREADS = table("lag_threads")
SCREWS = table("wood_screws")
SEGMENTS = table("circle_segments")
PURPOSES = table("purposes")
WATERS = table("waters")
FINISHES = table("finishes")
SOURCES = table("sources")
TERMS = table("terms")

YES_NO = words("Yes or no", "no", "yes")
ANSWERS = words("What the authority said", "not asked yet", "no", "yes")
USES = words("Private or public", "private", "public")
SAWN = words("How lumber is sawn", "dressed", "rough", "full sawn")
DELIVERED = words("How treated wood arrives", "dried after treatment", "wet from treatment")
RUNS = words("Which way a member runs", "across", "along")
DECKS = words("Kind of decking", "panels", "boards")
SKIRTS = words("Skirt board", "none", "hung", "bolted to count")
SQUARING = words("What holds the frame square", "nothing more", "boards, two screws a crossing",
                 "diagonal brace", "corner plates")
