"""What every test may use: the mark ``needs``, for tests that need an installed program."""

from __future__ import annotations

import pytest

from builder.engine import applications


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> None:
    """Before a test marked ``needs(program, ...)``: skip it, or fail it with CI=true."""
    for mark in item.iter_markers("needs"):
        for name in mark.args:
            applications.needs(name)
