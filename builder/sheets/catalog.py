"""Catalog: products and prices.  All are invented; the builder types his own over them."""

from __future__ import annotations

from builder.language import Sheet, read_table

from .reference import TEMPLATES

sheet = Sheet("Catalog", "Products and prices", scope="catalog",
              about="Invented products and prices: type your own over them.")

MONEY = (0, 100000)


def _products(name: str):
    return read_table(TEMPLATES / "catalog" / f"{name}.csv")


FLOATS = _products("floats").editable(
    shape=(1, 2), length=(6, 480), width=(6, 240), depth=(4, 60), own_weight=(1, 5000),
    rated_buoyancy=(0, 60000), rating_is_net=(0, 1), fullness=(0.5, 1), shell=(0.01, 4),
    lags_each=(2, 40), price=MONEY)
PANELS = _products("panels").editable(
    length=(0.5, 12), width=(0.5, 6), thickness=(0.25, 6), open_share=(0, 0.9), weight=(0.5, 30),
    largest_spacing=(4, 48), screws_each=(1, 60), tabs_each=(0, 60), tab_width=(0, 6),
    price=MONEY)
BOARDS = _products("boards").editable(
    thickness=(0.5, 4), width=(2, 12), weight=(15, 120), wood=(0, 1), largest_spacing=(4, 48),
    gap=(0, 1), screws_a_crossing=(1, 4), price_per_foot=MONEY)
ANGLES = _products("angles").editable(
    height=(2, 16), plate_thickness=(0.05, 1), bolts_a_leg=(1, 6), top_hole_from_its_top=(0.25, 8),
    hole_spacing=(0.5, 12), rail_face_to_stringer_bolts=(0.5, 8), upper_hole_to_lower_edge=(1, 16),
    weight=(0.1, 60), price=MONEY)
CORNERS = _products("corner_brackets").editable(
    height=(2, 16), plate_thickness=(0.05, 1), bolts_a_leg=(1, 6), top_hole_from_its_top=(0.25, 8),
    hole_spacing=(0.5, 12), corner_to_header_bolts=(0.5, 16),
    corner_to_rail_bolts=(0.5, 16), weight=(0.1, 80), price=MONEY)
PLATES = _products("washer_plates").editable(
    length=(1, 16), width=(1, 16), thickness=(0.05, 1), holes=(1, 6), hole=(0.25, 1.25),
    weight=(0.05, 30), price=MONEY)
BOLT_STOCK = _products("bolt_stock").editable(
    weight=(0.01, 20), price=MONEY)
SUNDRIES = _products("sundries").editable(
    weight=(0.001, 200), pack=(1, 10000), price_a_pack=MONEY)
LUMBER_PRICES = _products("lumber_prices").editable(price_per_foot=MONEY, waste_share=(0, 0.5))

tables = [FLOATS, PANELS, BOARDS, ANGLES, CORNERS, PLATES, BOLT_STOCK, SUNDRIES, LUMBER_PRICES]
