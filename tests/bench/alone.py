"""Runs a program to its end and prints how it went: ``python alone.py COMMAND ...``.

A process counts into its peak memory what the one held that started it, so a small one stands
between.  Prints seconds on the clock, processor seconds, peak memory [MB], exit code.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time


def main() -> None:
    """Run the command that follows."""
    begun = time.perf_counter()
    process = subprocess.Popen(sys.argv[1:], stdout=subprocess.DEVNULL)
    _, status, used = os.wait4(process.pid, 0)
    seconds = time.perf_counter() - begun
    process.returncode = os.waitstatus_to_exitcode(status)
    print(json.dumps([seconds, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024,
                      process.returncode]))


if __name__ == "__main__":
    main()
