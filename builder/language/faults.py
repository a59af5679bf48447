"""What can be wrong with a declaration, said so that it can be mended."""

from __future__ import annotations


class Fault(Exception):
    """One thing wrong: what, where, what was given, what is allowed."""


class Faults(Exception):
    """All that is wrong at once, one line each."""

    def __init__(self, found: list[str]):
        self.found = list(found)
        super().__init__("\n".join(self.found))
