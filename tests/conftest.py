"""What every test may use: the mark ``needs``, the delivered workbooks worked out once."""

from __future__ import annotations

import pytest

from builder.engine import applications

ENGINES = pytest.StashKey()


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add ``--long``, which tries every case where a test otherwise takes a fixed choice."""
    parser.addoption("--long", action="store_true",
                     help="try every case where a test otherwise takes a fixed choice")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put last what waits for the slow engine: it works while the other tests run."""
    items.sort(key=lambda item: "formulas_values" in getattr(item, "fixturenames", ()))


def pytest_collection_finish(session: pytest.Session) -> None:
    """Set the slow engine to work at once if a test will ask for its answers."""
    wanted = any("formulas_values" in getattr(item, "fixturenames", ()) for item in session.items)
    if wanted and not session.config.option.collectonly:
        _engines(session.config).begin()


def pytest_unconfigure(config: pytest.Config) -> None:
    """Stop the processes that were started for the session."""
    if ENGINES in config.stash:
        config.stash[ENGINES].end()


def _engines(config: pytest.Config):
    if ENGINES not in config.stash:
        from tests.outputs.worked import Engines

        config.stash[ENGINES] = Engines()
    return config.stash[ENGINES]


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> None:
    """Before a test marked ``needs(program, ...)``: skip it, or fail it with CI=true."""
    for mark in item.iter_markers("needs"):
        for name in mark.args:
            applications.needs(name)


@pytest.fixture(scope="session")
def engines(request, tmp_path_factory):
    """The answers of every engine for every delivered workbook, worked out once a session.

    Among the files is a copy of one workbook with a wrong stored value planted in it.
    """
    found = _engines(request.config)
    found.folder = tmp_path_factory.mktemp("recalculated")
    found.plant_one()
    return found


@pytest.fixture(scope="session")
def formulas_values(engines):
    """A function of (file): what the ``formulas`` library makes of a delivered workbook."""
    return lambda path: engines.answer("formulas", path)
