"""Run as ``python -m builder``."""

import gc
import sys

# A short run makes hundreds of thousands of small records and no cycles worth collecting; the
# collector would look through all of them time and again.
gc.disable()

from builder.cli import main  # noqa: E402

sys.exit(main())
