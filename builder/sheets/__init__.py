"""The trade: one module a sheet, read from top to bottom like a calculation book."""
