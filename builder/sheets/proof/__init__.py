"""Families of published examples, worked by the rows of the sheets."""
