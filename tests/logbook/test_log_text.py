"""Raw rows of a CSV file are those of RFC 4180, and what other readers of the standard see."""

import csv
import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.logbook.log_text import Header, raw_rows

COLUMNS = ("a", "b", "c")
HEADER = Header(separator=",", columns=COLUMNS)


def _cells(text: str) -> list[list[str]]:
    return [[row.fields[name] for name in COLUMNS] for row in raw_rows(f"a,b,c\r\n{text}", HEADER)]


@pytest.mark.parametrize(
    ("text", "rows"),
    [  # the examples of RFC 4180, section 2, rules 1 to 7
        ("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]),
        ("aaa,bbb,ccc\r\nzzz,yyy,xxx", [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]),
        ('"aaa","bbb","ccc"\r\nzzz,yyy,xxx', [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]),
        ('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx', [["aaa", "b\r\nbb", "ccc"], ["zzz", "yyy", "xxx"]]),
        ('"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]),
    ],
    ids=["1", "2", "5", "6", "7"],
)
def test_examples_of_the_standard(text: str, rows: list[list[str]]) -> None:
    assert _cells(text) == rows


def test_spaces_belong_to_a_field() -> None:
    assert _cells(" a , b ,c ") == [[" a ", " b ", "c "]]  # rule 4


_cell = st.text(st.characters(exclude_categories=("Cs",)), max_size=8)


@given(rows=st.lists(st.lists(_cell, min_size=3, max_size=3), max_size=6))
@settings(max_examples=150)
def test_whatever_pythons_own_writer_writes_is_read(rows: list[list[str]]) -> None:
    stream = io.StringIO(newline="")
    csv.writer(stream, quoting=csv.QUOTE_ALL).writerows(rows)
    assert _cells(stream.getvalue()) == rows


def test_numbers_and_lines_run_on_past_broken_and_blank_rows() -> None:
    text = 'a,b,c\n1,2,3\n\n4,"5\n5",6\n7,8"8,9\n"x"y,8,9\n10,11,12\n'
    found = [(row.number, row.line, bool(row.complaint)) for row in raw_rows(text, HEADER)]
    assert found == [(1, 2, False), (2, 4, False), (3, 6, False), (4, 7, True), (5, 8, False)]


def test_short_rows_are_filled_and_long_ones_told() -> None:
    short, blank_end, long = raw_rows("a,b,c\n1\n1,2,3,,\n1,2,3,4\n", HEADER)
    assert (dict(short.fields), dict(blank_end.fields)) == (
        {"a": "1", "b": "", "c": ""},
        {"a": "1", "b": "2", "c": "3"},
    )
    assert "4 fields where the header names 3" in long.complaint
