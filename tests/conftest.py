"""What every test may use: the mark ``needs``, the delivered workbooks worked out once."""

from __future__ import annotations

import gc

import pytest

from builder.engine import applications

ENGINES = pytest.StashKey()
SLOW = {"random_answers": "random", "formulas_values": "formulas",
        "formulas_random": "formulas", "formulas_cases": "cases"}
"""Fixtures that wait for slow work, and what is to be done for them, in this order."""


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add ``--long``, which tries every case where a test otherwise takes a fixed choice."""
    parser.addoption("--long", action="store_true",
                     help="try every case where a test otherwise takes a fixed choice")


def pytest_configure() -> None:
    """Look for rubbish seldom: millions of small things are kept, and each look goes over all."""
    gc.set_threshold(200_000, 50, 1000)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put last what waits for slow work: it is done while the other tests run."""
    order = {name: number for number, name in enumerate(SLOW, start=1)}
    items.sort(key=lambda item: max((order[name] for name in _waits_for(item)), default=0))


def pytest_collection_finish(session: pytest.Session) -> None:
    """Begin at once with the slow work that a test will ask for."""
    wanted = {name for item in session.items for name in _waits_for(item)}
    for name, what in SLOW.items():
        if name in wanted and not session.config.option.collectonly:
            _engines(session.config).begin(what)


def pytest_unconfigure(config: pytest.Config) -> None:
    """Stop the processes that were started for the session."""
    if ENGINES in config.stash:
        config.stash[ENGINES].end()


def _waits_for(item: pytest.Item) -> list[str]:
    """Return the fixtures of a test that wait for slow work."""
    return [name for name in SLOW if name in getattr(item, "fixturenames", ())]


def _engines(config: pytest.Config):
    if ENGINES not in config.stash:
        from tests.outputs.worked import Engines

        config.stash[ENGINES] = Engines(config.getoption("--long"))
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


@pytest.fixture(scope="session")
def random_answers(request):
    """How each engine's values compare for the workbooks of random jobs, by engine."""
    return _engines(request.config).slow("random")


@pytest.fixture(scope="session")
def formulas_random(request):
    """Stored values, and those of the ``formulas`` library, of some random jobs."""
    return _engines(request.config).slow("formulas")["random"]


@pytest.fixture(scope="session")
def formulas_cases(engines):
    """What the ``formulas`` library answers to every published case."""
    return engines.slow("cases")
