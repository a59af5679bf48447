"""Run as ``python -m builder``."""

import gc
import sys

# A short run makes hundreds of thousands of small records and no cycles worth collecting; the
# collector would look through all of them time and again.
gc.disable()

from builder.cli import main  # noqa: E402

code = main()
# The interpreter collects once more as it ends, a tenth of the run; what is frozen it passes over.
gc.freeze()
sys.exit(code)
