"""Readers of tables and constants: a bad file tells all its faults at once, with file and line."""

from __future__ import annotations

import pytest

from builder.language import Fault, Faults, Table, read_constants, read_table, tally
from builder.language.units import TEXT

GOOD = """# title: Bolts, a sample
# source: own
diameter,D [in],tensile area [in²],name {text},washers,clause,status,note
1/2,0.5,0.142,half,2,Table 1,seen,
"3/4",0.75,0.334,"three quarters, coarse",2,Table 1,memory,to be checked
"""
CONSTANTS = """# title: Figures
# source: own
key,symbol,value,unit,clause,status,what
wet,C_M,0.97,,Table 5,seen,Wet use
gap,,2,in,,our judgement,"Gap, least"
area,A,1.50,in²,1.2,memory,Area
"""


@pytest.fixture
def put(tmp_path):
    """A function that writes a file of some name and returns its path."""

    def write(text, name="sample.csv"):
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        return path

    return write


def faults(read, path):
    with pytest.raises(Faults) as told:
        read(path)
    return told.value.found


def test_a_good_table(put):
    table = read_table(put(GOOD, "bolts_sample.csv"))
    assert (table.name, table.title, table.source) == ("bolts_sample", "Bolts, a sample", "own")
    assert table.key == "diameter"
    assert table.columns == {"D": "in", "tensile area": "in²", "name": TEXT, "washers": ""}
    assert table.keys == ["1/2", "3/4"]
    assert table.lines[1] == (0.75, 0.334, "three quarters, coarse", 2)
    assert table.notes[1] == ("Table 1", "memory", "to be checked")
    assert table.entries("D") == [0.5, 0.75]


def test_good_constants(put):
    read = read_constants(put(CONSTANTS))
    assert (read.wet.value, read.wet.symbol, read.wet.unit, read.wet.plain) == (0.97, "C_M", "",
                                                                              False)
    assert (read.gap.value, read.gap.symbol, read.gap.plain) == (2, "2 in", True)
    assert read.wet.source == "own Table 5"
    assert read.gap.status == "our judgement"
    with pytest.raises(AttributeError, match="constants of own have no 'dry'"):
        _ = read.dry


def test_a_bad_table_tells_all_at_once(put):
    path = put("""# source: own
size,D [furlong],area [in²],name {text},area [in²],,clause
a,1,2,word,3,4,c
b,one,,word,nan,5,c
c,1,2,3
d*,inf,1e400,w,1,1,c
""", "bad.csv")
    assert faults(read_table, path) == [
        "bad.csv: no '# title:' line",
        "bad.csv line 5: 4 fields, the header has 7",
        "bad.csv: column 'D' has unit 'furlong', not in the list",
        "bad.csv: column 'area' is given twice",
        "bad.csv: a column has no name",
    ]
    path = put("""# source: own
size,D [furlong],area [in²],name {text}
a,1,2,word
b,one,,word
c,1,2
d*,inf,1e400,w
e?,nan,-,w
""", "bad.csv")
    assert faults(read_table, path) == [
        "bad.csv: no '# title:' line",
        "bad.csv line 5: 3 fields, the header has 4",
        "bad.csv: column 'D' has unit 'furlong', not in the list",
        "bad.csv line 4, D: 'one' is no number",
        "bad.csv line 4, area: '' is no number",
        "bad.csv line 6: key 'd*' holds a wildcard: * ? ~",
        "bad.csv line 6, D: 'inf' is no number",
        "bad.csv line 6, area: '1e400' is no number",
        "bad.csv line 7: key 'e?' holds a wildcard: * ? ~",
        "bad.csv line 7, D: 'nan' is no number",
        "bad.csv line 7, area: '-' is no number",
    ]


def test_bad_constants_tell_all_at_once(put):
    path = put("""# title: Figures
key,symbol,value,unit,clause,status,what
wet,C_M,high,,Table 5,seen,Wet use
2nd,,nan,furlong,,seen,Second
wet,C_M,1,,,seen
gap,,2,in,,seen,Gap
gap,,3,in,,seen,Gap again
""")
    assert faults(read_constants, path) == [
        "sample.csv: no '# source:' line",
        "sample.csv line 5: 6 fields, the header has 7",
        "sample.csv line 3, value: 'high' is no number",
        "sample.csv line 4: unit 'furlong' is not in the list",
        "sample.csv line 4: key '2nd' is no name",
        "sample.csv line 4, value: 'nan' is no number",
        "sample.csv line 7: key 'gap' is given twice",
    ]


def test_constants_without_a_column_tell_which(put):
    path = put("# title: F\n# source: own\nkey,value,unit\na,1,in\n")
    assert faults(read_constants, path) == [
        f"sample.csv: no column '{c}'" for c in ("symbol", "clause", "status", "what")]


@pytest.mark.parametrize("read", [read_table, read_constants])
@pytest.mark.parametrize("text", ["", "# title: T\n# source: own\n", "\n\n"])
def test_a_file_without_a_header_is_a_fault(put, read, text):
    assert faults(read, put(text))[-1] == "sample.csv: no header line"


def test_lines_are_counted_as_an_editor_counts_them(put):
    path = put("""# title: T
# source: own
# note: first
# note: second
size,D [in]
a,1

"b","two"
""")
    assert faults(read_table, path) == [
        "sample.csv line 7: 0 fields, the header has 2",
        "sample.csv line 8, D: 'two' is no number",
    ]


def made():
    return Table("rails", "Rails", "own", "size", {"depth": "in", "edge gap": "in", "kind": TEXT},
                 ["a", "b"], [(3, 0.5, "x"), (9, 2, "y")])


def test_editable_columns():
    table = made().editable(depth=(1, 12), edge_gap=(0, 2))
    assert table.allowed == {"depth": (1, 12), "edge gap": (0, 2)}


def test_editable_tells_all_at_once():
    with pytest.raises(Faults) as told:
        made().editable(depth=(4, 8), edge_gap=(1, 2), kind=(0, 1), width=(0, 1))
    assert told.value.found == [
        "table rails, a: depth is 3; allowed is 4 to 8",
        "table rails, a: edge gap is 0.5; allowed is 1 to 2",
        "table rails, b: depth is 9; allowed is 4 to 8",
        "table rails: no number column 'kind'",
        "table rails: no number column 'width'",
    ]


def test_an_unknown_column_is_a_fault():
    table = made()
    with pytest.raises(Fault, match="table rails has no column 'width'; it has depth, edge gap, "):
        _ = table.find("a")["width"]
    with pytest.raises(Fault, match="table rails has no column 'width'"):
        tally(table, width_below=1)


def test_a_key_can_be_taken_by_its_number():
    table = made()
    assert table.key_of(1).number == 1
    assert table.key_of(1).table is table


FLOATS_FILE = b"# title: Floats\n# source: own\nfloat,depth [in],kind {text}\nA,16,a\nB,20,b\n"


@pytest.mark.parametrize(("content", "says"), [
    (FLOATS_FILE + b"C,1,\xe9\n", "is not UTF-8; save the file as CSV in UTF-8"),
    (FLOATS_FILE.decode().encode("utf-16"), "byte 0 is not UTF-8"),
    (FLOATS_FILE + b"C,1\0,c\n", "line 6, depth: '1\\x00' is no number"),
    (FLOATS_FILE + b'C,"1,5",c\n', "line 6, depth: '1,5' is no number"),
    (FLOATS_FILE + b"C,1e400,c\n", "line 6, depth: '1e400' is no number"),
    (FLOATS_FILE + b"C,nan,c\n", "line 6, depth: 'nan' is no number"),
    (FLOATS_FILE + b"C,=1+1,c\n", "line 6, depth: '=1+1' is no number"),
    (FLOATS_FILE + b"C,25%,c\n", "line 6, depth: '25%' is no number"),
    (FLOATS_FILE + b"C,,c\n", "line 6, depth: '' is no number"),
    (FLOATS_FILE + b"C,1\n", "line 6: 2 fields, the header has 3"),
    (FLOATS_FILE + b'"C,1,c\n', "line 6: 1 fields, the header has 3"),
    (FLOATS_FILE + b"C," + b"x" * 100_000 + b",c\n", "…"),
    (FLOATS_FILE + b"C," + b"x" * 10_000_000 + b",c\n", "line 6: field larger than field limit"),
    (FLOATS_FILE + b",1,c\n", "line 6: the line has no key"),
    (FLOATS_FILE + b"A,17,a\n", "line 6: key 'A' is given twice, with others between"),
    (FLOATS_FILE[:FLOATS_FILE.index(b"A,")], "no line below the header"),
    (b"", "no header line"),
])
def test_a_spoilt_table_is_told_in_short(tmp_path, content, says):
    path = tmp_path / "floats.csv"
    path.write_bytes(content)
    with pytest.raises(Faults) as told:
        read_table(path)
    assert any(says in fault for fault in told.value.found)
    assert all(fault.startswith("floats.csv") and len(fault) < 120 for fault in told.value.found)


def test_a_byte_order_mark_and_other_line_ends_change_nothing(tmp_path):
    path = tmp_path / "floats.csv"
    for content in (FLOATS_FILE, b"\xef\xbb\xbf" + FLOATS_FILE,
                    FLOATS_FILE.replace(b"\n", b"\r\n")):
        path.write_bytes(content)
        found = read_table(path)
        assert (found.keys, found.lines) == (["A", "B"], [(16, "a"), (20, "b")])


@pytest.mark.parametrize("read", [read_table, read_constants])
def test_a_table_that_is_not_there_is_told(tmp_path, read):
    for path, says in ((tmp_path / "none.csv", "No such file"), (tmp_path, "directory")):
        with pytest.raises(Faults, match=f"cannot be read: .*{says}"):
            read(path)


def test_two_lines_of_one_product_are_told(tmp_path):
    path = tmp_path / "floats.csv"
    path.write_bytes(FLOATS_FILE + b"B,21,b\n")
    with pytest.raises(Faults, match="table floats: B is given twice"):
        read_table(path).editable(depth=(1, 100))
