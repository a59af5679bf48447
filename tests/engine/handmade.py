"""A small workbook made by hand: each function the project uses, with the answer beside it.

The answers are worked out here in plain Python, by no engine.
"""

from __future__ import annotations

import math
from datetime import datetime

import xlsxwriter

from builder.resolve.cells import Book, Cell, SheetPlan

DASH = "–"
A = [2.0, 3.0, 3.0, 5.0, 8.0]
B = [10.0, DASH, 20.0, 30.0, DASH]
C = [1.0, 2.5, 3.0, 3.9, 4.0]
D = ["OK", "NOT OK", "LOOK", "NOT OK", "OK", "NEEDS INPUT"]
E = [0.0, 1.5, 3.0, 4.5, 6.0, 7.5, 9.0, 10.5, None, None]
F = [2.0, 5.0, 0.0, 4.0, 1.0, 3.0, 6.0, 2.5, None, None]
G = [7.25, 1.2, 0.05, 2.0, -0.0041, 1234.565, None, "Cedar", 0.3, -3.0]
H = ["2x6 * No. 2", "2x6 A No. 2", "what?", "5/4~x6", "2x6 AB No. 2", "whats", "2X6 A NO. 2"]
COLUMNS = [A, B, C, D, E, F, G, H]
X, T, TH, STATE, MINUS, BIG, BLANK, CEDAR, SMALL, LOW = (f"Data!$G${n}" for n in range(1, 11))
x, t, th, state, minus, big, _, _, small, low = G

_numbers = [b for b in B if b != DASH]
_moments = sum(
    f * ((t + th * e) * (x - e) ** 2 / 2 + th * (x - e) ** 3 / 6)
    for e, f in zip(E, F, strict=True)
    if e is not None and x > e
)

FUNCTIONS: list[tuple[str, float | str | bool]] = [
    (f"{X}+{T}*{TH}-{X}/{T}", x + t * th - x / t),
    (f"({LOW})^(2)", low**2),
    (f"-({LOW})^2", low**2),  # a spreadsheet takes the sign before the power
    (f"0-{LOW}^2", -(low**2)),
    (f"({X}>7)+({X}>=7.25)+({X}<7)+({X}<=7.25)+({X}=7.25)+({X}<>7)", 5),
    (f"{X}>7", True),
    ("SUM(Data!$A$1:$A$5)", sum(A)),
    ("MIN(Data!$A$1:$A$5,1)", 1),
    ("MAX(Data!$A$1:$A$5)", 8),
    (f"ABS({LOW})", 3),
    (f"SIGN({LOW})+SIGN({X})*10+SIGN({LOW}+3)*100", 9),
    (f"INT({LOW}+0.5)", -3),
    (f"INT({X})", 7),
    (f"ROUNDUP({X}-0.000000001,0)", 8),
    ("ROUNDUP(27.0000000001-0.000000001,0)", 27),
    (f"SQRT({X})", math.sqrt(x)),
    (f"EXP({T})", math.exp(t)),
    (f"LN({X})", math.log(x)),
    (f"LOG10({X})", math.log10(x)),
    (f"SIN({X})+COS({X})+TAN({X})", math.sin(x) + math.cos(x) + math.tan(x)),
    (f"ASIN({SMALL})+ACOS({SMALL})*10", math.asin(small) + math.acos(small) * 10),
    (f"ATAN({X})", math.atan(x)),
    (f"SINH({T})+COSH({T})+TANH({T})", math.sinh(t) + math.cosh(t) + math.tanh(t)),
    (f"ASINH({X})", math.asinh(x)),
    ("PI()", math.pi),
    (f"RADIANS({X})+DEGREES({T})", math.radians(x) + math.degrees(t)),
    (f"POWER({X},1.5)", x**1.5),
    (f'IF({X}>7,"more","less")', "more"),
    (f'IF({STATE}=2,{X}*2,"–")', x * 2),
    (f'IF({STATE}=1,{X}*2,"–")', DASH),
    (f"AND({X}>7,{T}>1)", True),
    (f"OR({X}<7,{T}<1)", False),
    (f"NOT({X}<7)", True),
    (f"ISNUMBER({X})*1+ISNUMBER({CEDAR})*10+ISNUMBER({BLANK})*100", 1),
    (f"ISTEXT({X})*1+ISTEXT({CEDAR})*10+ISTEXT({BLANK})*100", 10),
    (f"ISBLANK({X})*1+ISBLANK({CEDAR})*10+ISBLANK({BLANK})*100", 100),
    ("INDEX(Data!$A$1:$A$5,4)", 5),
    ("INDEX(Data!$A$2:$C$2,1,3)", 2.5),
    ("MATCH(3,Data!$A$1:$A$5,0)", 2),
    ('MATCH("LOOK",Data!$D$1:$D$6,0)', 3),
    ("INDEX(Data!$D$1:$D$6,MATCH(20,Data!$B$1:$B$5,0))", "LOOK"),
    (f'CHOOSE({STATE},"one","two","three")', "two"),
    ("COUNTA(Data!$E$1:$E$10)", 8),
    ('COUNTIF(Data!$D$1:$D$6,"NOT OK")', 2),
    ('COUNTIF(Data!$A$1:$A$5,">2.5")', 4),
    ('COUNTIFS(Data!$A$1:$A$5,">2.5",Data!$C$1:$C$5,"<3.5")', 2),
    ("SUMIF(Data!$A$1:$A$5,3,Data!$C$1:$C$5)", 5.5),
    ('SUMIFS(Data!$C$1:$C$5,Data!$A$1:$A$5,">2.5",Data!$C$1:$C$5,"<4")', 9.4),
    ("SUMPRODUCT(Data!$A$1:$A$5,Data!$C$1:$C$5)", sum(p * q for p, q in zip(A, C, strict=True))),
    ("LARGE(Data!$A$1:$A$5,2)+SMALL(Data!$A$1:$A$5,1)*10", 25),
    ("RANK(Data!$A$4,Data!$A$1:$A$5)", 2),
    ("AVERAGE(Data!$A$1:$A$5)", sum(A) / 5),
    (f"LEN({CEDAR})", 5),
    (f'LEFT({CEDAR},2)&"-"&RIGHT({CEDAR},3)&"-"&MID({CEDAR},2,3)', "Ce-dar-eda"),
    (f'FIND("d",{CEDAR})', 3),
    (f'SUBSTITUTE({CEDAR},"e","o")', "Codar"),
    (f"UPPER({CEDAR})", "CEDAR"),
    ('REPT("–",3)', DASH * 3),
    (f"FIXED({X}+0.000000001,2)", "7.25"),
    (f"FIXED({BIG}+0.000000001,2)", "1,234.57"),
    (f"FIXED({MINUS}+0.000000001,2)", "0.00"),
    (f"FIXED({LOW}+0.000000001,1)", "-3.0"),
    (f"FIXED({X}+0.000000001,0)", "7"),
    ("ROWS(Data!$A$1:$A$5)+COLUMNS(Data!$A$1:$C$5)*10", 35),
    (f"{X}/{BLANK}", "#DIV/0!"),
]

FORMS: list[tuple[str, float | str | bool]] = [
    (f"SUMPRODUCT((Data!$A$1:$A$5={LOW}+6)*1)", 2),
    ("SUMPRODUCT((Data!$C$1:$C$5>2)*(Data!$C$1:$C$5<4)*(Data!$C$1:$C$5)^2)",
     sum(c**2 for c in C if 2 < c < 4)),
    (f"SUMPRODUCT(({X}>Data!$E$1:$E$10)*Data!$F$1:$F$10*(({T}+{TH}*Data!$E$1:$E$10)"
     f"*({X}-Data!$E$1:$E$10)^2/2+{TH}*({X}-Data!$E$1:$E$10)^3/6))", _moments),
    ("SUMPRODUCT(Data!$A$1:$A$5,Data!$B$1:$B$5)",
     sum(p * q for p, q in zip(A, B, strict=True) if q != DASH)),
    ("MAX(Data!$B$1:$B$5)", max(_numbers)),
    ("MIN(Data!$B$1:$B$5)", min(_numbers)),
    ("SUM(Data!$B$1:$B$5)", sum(_numbers)),
    ("AVERAGE(Data!$B$1:$B$5)", sum(_numbers) / 3),
    ('COUNTIF(Data!$B$1:$B$5,"–")', 2),
    # Inside SUMPRODUCT stand operators only: Gnumeric takes a function of a range, such as
    # ABS(A1:A5), for the function of one cell of it, and gives a wrong sum without a word.
    (f"SUMPRODUCT((Data!$A$1:$A$5-4)*((Data!$A$1:$A$5>4)-(Data!$A$1:$A$5<4))"
     f"*({X}>Data!$A$1:$A$5))", sum(abs(a - 4) for a in A if x > a)),
    ("SUMPRODUCT((Data!$A$1:$A$5)^0.5*((Data!$A$1:$A$5>3)-(Data!$A$1:$A$5<3)))",
     sum(math.sqrt(a) * ((a > 3) - (a < 3)) for a in A)),
    ("SUMPRODUCT((Data!$A$1:$A$5>2)*1,Data!$B$1:$B$5)",
     sum(q for p, q in zip(A, B, strict=True) if p > 2 and q != DASH)),
    ('SUMPRODUCT((Data!$A$1:$A$5>2)*(Data!$D$1:$D$5="OK")*Data!$C$1:$C$5)', 4),
    ("SUM(Data!$B$2:$B$2)+MAX(Data!$B$2:$B$2)+MIN(Data!$B$2:$B$2)", 0),
    *[(f"SUMPRODUCT((Data!$H$1:$H$7=Data!$H${n})*1)", count)
      for n, count in [(1, 1), (3, 1), (4, 1), (5, 1)]],
    # Not told apart by case, like every comparison of texts in a spreadsheet.
    ("SUMPRODUCT((Data!$H$1:$H$7=Data!$H$2)*1)", 2),
    # A verdict where the ratio is a dash: a text is more than any number, the state keeps it out.
    ("INDEX(Data!$D$1:$D$6,1+0+IF(0=2,(Data!$B$2>0.9)+(Data!$B$2>1.000000001),0))", "OK"),
    (f"INDEX(Data!$D$1:$D$6,1+{STATE}+IF({STATE}=2,(Data!$C$2>0.9)+(Data!$C$2>1.000000001),0))",
     "OK"),
    (f"INT({X}/{TH}+0.500000001)*{TH}", 7.25),
    (f"INT({X}*100+0.500001)/100", 7.25),
    (f"ROUNDUP({BIG}-0.000000001,0)", 1235),
    (f"{X}-{T}*INT({X}/{T}+0.000000001)", x - t * 6),
    (f'"R = "&FIXED({X}*{BIG}+0.000000001,1)&" lb at "&{STATE}&" in: "&{CEDAR}',
     f"R = {x * big:,.1f} lb at 2 in: Cedar"),
    (f"ACOS(1-{SMALL})*180/PI()", math.degrees(math.acos(1 - small))),
    (f"{LOW}/MAX({X},{LOW}/99)", low / x),
    ("Data!$A$1+Near!$B$2", 2 + 42.5),
]

CASES = [*FUNCTIONS, *FORMS]
PLACES = [("Work", row, 1) for row in range(len(CASES))]
EXPECTED = dict(zip(PLACES, (answer for _, answer in CASES), strict=True))


def made_book(cases: list[tuple[str, float | str | bool]] = CASES) -> Book:
    """Return the workbook as resolved cells: sheets Data, Near and Work."""
    data = SheetPlan("Data", "Data")
    for col, column in enumerate(COLUMNS):
        for row, held in enumerate(column):
            kind = "blank" if held is None else "text" if isinstance(held, str) else "number"
            data.cells.append(Cell(row, col, kind, held))
    near = SheetPlan("Near", "Near")
    near.cells += [
        Cell(0, 0, "link", "Work!A1|to the work"),
        Cell(0, 1, "text", "=1+1"),
        Cell(1, 1, "number", 42.5),
    ]
    work = SheetPlan("Work", "Work")
    for row, (formula, _) in enumerate(cases):
        work.cells += [Cell(row, 0, "text", formula), Cell(row, 1, "formula", "=" + formula)]
    return Book(
        sheets=[data, near, work],
        names={"x_in": ("Data", 0, 6)},
        title="Handmade",
        subject="",
        author="",
        created=datetime(2026, 1, 1),
        version="",
        inputs_hash="",
    )


def write(book: Book, path, values) -> None:
    """Write the book with ``values`` stored in its formula cells, as plainly as can be."""
    options = {"strings_to_formulas": False, "strings_to_urls": False}
    with xlsxwriter.Workbook(path, options) as file:
        unlocked = file.add_format({"locked": False})
        sheets = {plan.name: file.add_worksheet(plan.name) for plan in book.sheets}
        for (sheet, row, col), cell in book.cells():
            page = sheets[sheet]
            if cell.kind == "formula":
                page.write_formula(row, col, cell.content, None, values[sheet, row, col])
            elif cell.kind == "number":
                page.write_number(row, col, cell.content, unlocked)
            elif cell.kind == "text":
                page.write_string(row, col, cell.content)
            elif cell.kind == "link":
                target, _, text = cell.content.partition("|")
                page.write_url(row, col, f"internal:{target}", string=text)
            else:
                page.write_blank(row, col, None, unlocked)
        for page in sheets.values():
            page.protect()
