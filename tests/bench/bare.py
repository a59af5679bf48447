"""Writes a workbook from plain lists with XlsxWriter alone: what any program must do at least.

Run as ``python bare.py CELLS OUTPUT``; ``CELLS`` is a pickle made by ``tests.bench``.  The same
cells, formats, stored values, input rules, verdict colours, names and print set-up; nothing is
checked, nothing worked out.  It imports nothing of this project.
"""

from __future__ import annotations

import pickle
import sys


def main() -> None:
    """Read the lists, write the workbook."""
    import xlsxwriter

    with open(sys.argv[1], "rb") as stream:
        data = pickle.load(stream)
    book = xlsxwriter.Workbook(sys.argv[2], data["options"])
    book.set_properties(data["properties"])
    formats = {name: book.add_format(look) for name, look in data["styles"].items()}
    words = {word: book.add_format(look) for word, look in data["words"].items()}
    pages = [book.add_worksheet(sheet["name"]) for sheet in data["sheets"]]
    for page, sheet in zip(pages, data["sheets"], strict=True):
        for row, col, kind, content, style, value in sheet["cells"]:
            look = formats[style]
            if kind == "formula":
                page.write_formula(row, col, content, look, value)
            elif kind == "number":
                page.write_number(row, col, content, look)
            elif kind == "text":
                page.write_string(row, col, content, look)
            elif kind == "blank":
                page.write_blank(row, col, None, look)
            else:
                target, text = content
                page.write_url(row, col, f"internal:{target}", look, text)
        for col, width in enumerate(sheet["widths"]):
            page.set_column(col, col, width)
        for row, height in sheet["heights"].items():
            page.set_row(row, height)
        for span, rule in sheet["rules"]:
            page.data_validation(*span, rule)
        for span in sheet["verdicts"]:
            for word, look in words.items():
                page.conditional_format(*span, {"type": "cell", "criteria": "==",
                                                "value": f'"{word}"', "format": look})
        page.set_paper(1)
        page.set_landscape()
        page.fit_to_pages(1, 0)
        page.print_area(0, 0, *sheet["last"])
        page.repeat_rows(*sheet["repeat"])
        page.freeze_panes(*sheet["frozen"])
        if sheet["protect"]:
            page.protect()
    for name, target in data["names"].items():
        book.define_name(name, target)
    book.close()


if __name__ == "__main__":
    main()
