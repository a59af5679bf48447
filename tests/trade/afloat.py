"""Exact equilibrium of box floats at any list and trim, for the tests: every float is clipped.

The part of a float under water is the box between its bottom and the water plane.  Its depth at a
point of the plan is the local draft, cut off at 0 and at the float's depth.  Integrals of it are
taken over the plan between the lines at which it is cut off.  There they are polynomials of at
most the third degree in x and in y, for which two Gauss points are exact.  Nothing of the sheets
is used.
"""

from __future__ import annotations

import numpy as np

NODES, WEIGHTS = np.polynomial.legendre.leggauss(2)


def _pieces(low, high, cuts):
    """Return Gauss points and weights between low and high, broken at the cuts (last axis)."""
    edges = np.concatenate([low[..., None], np.clip(cuts, low[..., None], high[..., None]),
                            high[..., None]], axis=-1)
    edges.sort(axis=-1)
    middle, half = (edges[..., 1:] + edges[..., :-1]) / 2, (edges[..., 1:] - edges[..., :-1]) / 2
    points = middle[..., None] + half[..., None] * NODES
    weights = half[..., None] * WEIGHTS
    shape = (*points.shape[:-2], -1)
    return points.reshape(shape), weights.reshape(shape)


def _cuts(slope, *values):
    """Return where a straight line of a slope crosses zero, 0 where it is level."""
    safe = np.where(np.abs(slope) < 1e-15, 1.0, slope)
    flat = np.abs(slope) < 1e-15
    return np.stack([np.where(flat, 0.0, -v / safe) for v in values], axis=-1)


def under_water(floats, plane):
    """Return volume and its first moments in x, y and z of the floats under a water plane.

    Args:
        floats: x, y, length, breadth, depth; arrays (layout, float), length 0 where none stands.
        plane: T, b, c: depth of the plane over the bottoms at the origin, slopes in x and y.
    """
    x0, y0, length, breadth, deep = floats
    draft, b, c = (p[:, None] for p in plane)
    lows = (y0 - breadth / 2, y0 + breadth / 2)
    ends = [draft + c * y - d for y in lows for d in (0.0, deep)]
    x, w_x = _pieces(x0 - length / 2, x0 + length / 2,
                     _cuts(np.broadcast_to(b, x0.shape), *ends))
    here = draft[..., None] + b[..., None] * x
    low, high = (np.broadcast_to(y[..., None], x.shape) for y in lows)
    y, w_y = _pieces(low, high, _cuts(np.broadcast_to(c[..., None], x.shape), here,
                                      here - deep[..., None]))
    depth = np.clip(here[..., None] + c[..., None, None] * y, 0, deep[..., None, None])
    w = w_x[..., None] * w_y * depth
    over = (1, 2, 3)
    return (w.sum(over), (w * x[..., None]).sum(over), (w * y).sum(over),
            (w * depth / 2).sum(over))


def residuals(floats, plane, volume, centre):
    """Return how far a plane is from equilibrium: volume, and the two moments about G."""
    v, mx, my, mz = under_water(floats, plane)
    x, y, z = centre
    lift = mz / v - z
    return np.stack([v / volume - 1, mx / v - x + plane[1] * lift, my / v - y + plane[2] * lift])


def equilibrium(floats, volume, centre, start, passes: int = 9):
    """Return T, b, c at rest and the residual left, by Newton's rule with measured slopes."""
    plane = np.array(start, dtype=float)
    for _ in range(passes):
        at = residuals(floats, plane, volume, centre)
        slopes = np.empty((at.shape[1], 3, 3))
        for k in range(3):
            step = np.zeros_like(plane)
            step[k] = 1e-7
            change = residuals(floats, plane + step, volume, centre) - at
            slopes[:, :, k] = change.T / 1e-7
        move = (np.linalg.pinv(slopes) @ at.T[..., None])[..., 0].T
        plane = plane - np.clip(move, -0.1, 0.1)
    return plane, np.abs(residuals(floats, plane, volume, centre)).max(axis=0)


def corner_range(floats, plane):
    """Return, for each layout, the least local draft at a float corner and the most over depth."""
    x0, y0, length, breadth, deep = floats
    drafts = np.stack([plane[0][:, None] + plane[1][:, None] * (x0 + i * length / 2)
                       + plane[2][:, None] * (y0 + j * breadth / 2)
                       for i in (-1, 1) for j in (-1, 1)])
    stands = length > 0
    return (np.where(stands, drafts, np.inf).min(axis=(0, 2)),
            np.where(stands, drafts - deep, -np.inf).max(axis=(0, 2)))


def deck_corners(length, width, deck, plane):
    """Return the heights of the deck's corners over the water [ft].

    In order: far right (+x, +y), far left (+x, −y), near right, near left.
    """
    draft, b, c = plane
    return np.array([deck - (draft + b * i * length / 2 + c * j * width / 2)
                     for i in (1, -1) for j in (1, -1)])
