"""Writes calculation workbooks for builders of timber-framed floating docks."""
