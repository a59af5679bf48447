"""Working out cells or files: several engines, one small interface.

Every engine answers with the same thing, ``dict[Place, Value]``: for each formula cell, by
sheet name, row and column counted from 0, the number, text or truth value it shows.  A check
takes such a mapping and need not know where it came from.

* ``ironcalc_engine``: resolved cells, in memory, quick: the values stored in the file.
* ``stored``: the values a file holds, as a reader shows them before any recalculation.
* ``formulas_engine``, ``libreoffice``, ``gnumeric``: a file, recalculated by others.
* ``compare``: where two answers differ.
* ``applications``: where the programs are that some of these need.

Modules are imported one by one, so that the quick path never loads the slow libraries.
"""
