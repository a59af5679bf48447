"""``python -m tests.seeded``: seed every fault and print what found it; ``few`` for some."""

from __future__ import annotations

import sys

from tests.seeded.trial import run

if __name__ == "__main__":
    print(run("few" not in sys.argv[1:], lambda line: print(line, flush=True)).report())
