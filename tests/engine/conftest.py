"""The handmade workbook and the planted canary, each worked out once by each engine."""

from __future__ import annotations

import pytest

from builder.engine import formulas_engine, gnumeric, ironcalc_engine, libreoffice, stored
from tests.engine import handmade

PLANTED = ("Work", 1, 1)


@pytest.fixture(scope="session")
def book():
    return handmade.made_book()


@pytest.fixture(scope="session")
def paths(book, tmp_path_factory):
    """Two files of one name: the workbook as it should be, and one with a wrong stored value."""
    values = ironcalc_engine.evaluate(book)
    found = {}
    for name, held in {"right": values, "canary": values | {PLANTED: 999.0}}.items():
        found[name] = tmp_path_factory.mktemp(name) / "book.xlsx"
        handmade.write(book, found[name], held)
    return found


@pytest.fixture(scope="session")
def answer(book, paths, tmp_path_factory):
    """A function of (engine, file) that gives the values, worked out once a session."""
    known = {}

    def many(module):
        given = module.evaluate_files(paths.values(), tmp_path_factory.mktemp("recalculated"))
        return {name: given[path] for name, path in paths.items()}

    def each(function):
        return {name: function(path) for name, path in paths.items()}

    makers = {
        "ironcalc": lambda: {"right": ironcalc_engine.evaluate(book)},
        "stored": lambda: each(stored.stored_values),
        "formulas": lambda: each(formulas_engine.evaluate_file),
        "libreoffice": lambda: many(libreoffice),
        "gnumeric": lambda: many(gnumeric),
    }

    def give(engine, name="right"):
        if engine not in known:
            known[engine] = makers[engine]()
        return known[engine][name]

    return give
