"""How long the program takes and how large it grows, against a bare program of the library.

Run as ``python -m tests.bench``.  Only ratios and sizes are judged: they hold on any machine.
"""
