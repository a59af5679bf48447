"""Parts, Decking, Weight and Buoyancy, second calculation, for one section type."""

from __future__ import annotations

from tests.second import (
    balanced,
    decked,
    floated,
    parts_counts,
    parts_frame,
    parts_lumber,
    weighed,
)
from tests.second.given import Given, Results


def work(g: Given, done: Results) -> Results:
    """Return the results of Parts, Decking, Weight and Buoyancy."""
    p = parts(g)
    w = weighed.work(g, p)
    f = floated.work(g, p, w)
    f |= balanced.work(g, p, w, f)
    return (_named("Parts", p) | _named("Decking", decked.work(g, p)) | _named("Weight", w)
            | _named("Buoyancy", f))


def parts(g: Given) -> Results:
    """Return the rows of Parts."""
    found = parts_frame.work(g)
    found |= parts_lumber.work(g, found)
    return found | parts_counts.work(g, found)


def _named(sheet: str, rows: Results) -> Results:
    return {f"{sheet}.{key}": value for key, value in rows.items()}
