"""Group of floats, second calculation: draft, buoyancy and lean from weight, and back.

One float is a box, or a round one by the table of the part-full circle, read in a straight line
between its entries.  The leaning axes a and b are turned from y and x by an angle of tangent t:
on them the mean squares have no product, so list and trim come apart.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np

from tests.second.given import Given, constants, table
from tests.second.trade_names import column


@dataclass
class Afloat:
    """A section afloat: weight [lb], draft [in], centre of buoyancy and T_e [ft], axes a and b."""

    weight: float
    kg: float
    draft: float
    share: float
    breadth: float
    KB: float
    depth: float
    square: tuple[float, float]

    @property
    def BM(self) -> tuple[float, float]:
        """Return the metacentric radii, axes a and b [ft]."""
        return tuple(k / self.depth for k in self.square)

    @property
    def GM(self) -> tuple[float, float]:
        """Return the metacentric heights, axes a and b [ft]."""
        return tuple(BM + self.KB - self.kg for BM in self.BM)


@cache
def _circle() -> dict[str, np.ndarray]:
    rows = table("circle_segments")
    return {name: np.array([float(column(row, name)) for row in rows])
            for name in ("T/d", "A/d²", "w/d", "z_B/d")}


def _read(place: float, of: str, name: str) -> float:
    """Return a column of the part-full circle at a place in another.

    Past the last line it goes straight on.
    """
    circle = _circle()
    k = int(np.clip(np.searchsorted(circle[of], place + 1e-12, side="right") - 1, 0,
                    len(circle[of]) - 2))
    x, y = circle[of], circle[name]
    return float(y[k] + (place - x[k]) / (x[k + 1] - x[k]) * (y[k + 1] - y[k]))


def inside() -> float:
    """Return how far the centre of a weight stands inside the edge of the deck [ft]."""
    return constants("own")["point_from_edge"] / 12


def water_of_a_foot(done: dict, breadth: float) -> float:
    """Return the water that a foot of draft takes [lb/ft] at a share of the floats' breadth."""
    return 12 * done["Buoyancy.box_water"] / done["Parts.float_depth"] * breadth


def share_at(g: Given, done: dict, draft: float) -> float:
    """Return the share of the floats' boxes under water at a draft [in]; a whole float at most."""
    part = min(max(draft / done["Parts.float_depth"], 0.0), 1.0)
    if not done["Parts.float_round"]:
        return part
    return _read(part, "T/d", "A/d²")


def afloat(g: Given, done: dict, weight: float, kg: float, share: float | None = None) -> Afloat:
    """Return how a weight floats upright; ``share`` of the boxes under water where known."""
    by_weight = share is None
    if by_weight:
        share = weight / done["Buoyancy.box_water"]
    D = done["Parts.float_depth"]
    squares = done["Stability.square_a"], done["Stability.square_b"]
    if not done["Parts.float_round"]:
        T = share * D / 12
        return Afloat(weight, kg, share * D, share, 1.0, T / 2, T, squares)
    # House choice: a round float by weight goes no deeper than the table.
    place = min(share, float(_circle()["A/d²"][-1])) if by_weight else share
    part, breadth, centre = (_read(place, "A/d²", name) for name in ("T/d", "w/d", "z_B/d"))
    own = done["Stability.round_b"], done["Stability.round_l"]
    squares = tuple(k + j * breadth ** 2 for k, j in zip(squares, own, strict=True))
    return Afloat(weight, kg, part * D, share, breadth, centre * D / 12,
                  share / max(breadth, constants("own")["least_share"]) * D / 12, squares)


def on_axes(done: dict, y: float, x: float) -> tuple[float, float]:
    """Return arms across and along as arms on the leaning axes a and b."""
    t, n = done["Stability.turn"], done["Stability.turn_length"]
    return (y + t * x) / n, (x - t * y) / n


def off_axes(done: dict, a: float, b: float) -> tuple[float, float]:
    """Return what stands on the leaning axes as across and along."""
    t, n = done["Stability.turn"], done["Stability.turn_length"]
    return (a - t * b) / n, (b + t * a) / n
