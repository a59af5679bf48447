"""The rules of a trustworthy workbook, each a small function on a written file.

They work from the file alone.  ``builder.rules.checking.check`` runs them all; the list of the
rules with their sources is ``templates/tables/workbook_rules.csv``; what breaks a rule on purpose
stands in ``waivers.csv`` with the reason.  Needs openpyxl, which a written workbook does not.
"""
