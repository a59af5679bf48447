"""The trade: one module a sheet, read from top to bottom like a calculation book."""

# Modules that add blocks to Inputs and Sections, in the order their blocks stand there: whatever
# is imported first, the reader finds the same sheet.
from . import (  # noqa: F401, I001
    inputs,
    sections,
    sections_afloat,
    inputs_afloat,
    inputs_site,
    sections_site,
    inputs_buying,
    inputs_yard,
    inputs_pages,
)
