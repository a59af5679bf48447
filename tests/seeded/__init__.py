"""Seeded faults: one change at a time in the resolved workbook, and which test finds it."""
