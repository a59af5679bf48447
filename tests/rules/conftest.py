"""Reading workbooks makes millions of small records and no cycles worth collecting."""

from __future__ import annotations

import gc

import pytest


@pytest.fixture(autouse=True, scope="package")
def _no_collector():
    """Keep the collector from looking through all of them time and again."""
    gc.disable()
    yield
    gc.enable()
