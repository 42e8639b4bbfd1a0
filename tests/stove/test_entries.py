"""The fold of a log: what holds after corrections, in order of time."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import (
    Entry,
    HeatBand,
    Kind,
    door_is_open,
    fold,
    fraction_open,
    numbers_kept,
    reading_kelvin,
    stated_mass,
    wood_count,
)

SEVEN = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)


def _row(number: int, kind: Kind = Kind.NOTE, minute: float = 0.0, **fields: str) -> Entry:
    return Entry(number=number, at=SEVEN + timedelta(minutes=minute), offset_minutes=0, kind=kind, **fields)


def _numbers(*rows: Entry, until: datetime | None = None) -> list[int]:
    return [row.number for row in fold(rows, until)]


def test_rows_come_in_order_of_time_then_of_number() -> None:
    assert _numbers(_row(1, minute=5), _row(2), _row(3, minute=5)) == [2, 1, 3]


def test_void_takes_a_row_back() -> None:
    assert _numbers(_row(1), _row(2), _row(3, Kind.VOID, value="1")) == [2]


def test_void_of_a_void_gives_the_row_back() -> None:
    voids = [_row(2, Kind.VOID, value="1"), _row(3, Kind.VOID, value="2")]
    assert _numbers(_row(1), *voids) == [1]
    assert _numbers(_row(1), *voids, _row(4, Kind.VOID, value="3")) == []


def test_void_later_than_the_moment_asked_about_does_not_count_yet() -> None:
    rows = (_row(1), _row(2, Kind.VOID, minute=10, value="1"))
    assert _numbers(*rows, until=SEVEN + timedelta(minutes=9)) == [1]
    assert _numbers(*rows, until=SEVEN + timedelta(minutes=10)) == []


def test_a_kept_row_is_nothing_done_at_the_stove_and_may_be_taken_back() -> None:
    rows = (_row(1), _row(2), _row(3, Kind.KEPT, value="1"))
    assert (_numbers(*rows), numbers_kept(rows)) == ([1, 2], {1})
    assert numbers_kept((*rows, _row(4, Kind.VOID, value="3"))) == set()


def test_void_of_no_row_takes_nothing_back() -> None:
    assert _numbers(_row(1), _row(2, Kind.VOID, value="77")) == [1]


def test_void_with_words_for_its_row_is_told() -> None:
    with pytest.raises(InputProblem, match="not a row number"):
        fold([_row(1, Kind.VOID, value="the last")])


@given(rows=st.permutations([_row(n, minute=n % 3) for n in range(1, 6)] + [_row(6, Kind.VOID, value="2")]))
@settings(max_examples=50)
def test_order_in_the_file_does_not_matter(rows: list[Entry]) -> None:
    assert _numbers(*rows) == [3, 1, 4, 5]


def test_values_are_read_in_si() -> None:
    assert reading_kelvin(_row(1, Kind.READING, value="212", unit="F")) == pytest.approx(373.15)
    assert reading_kelvin(_row(1, Kind.READING, value="100,0", unit="C")) == pytest.approx(373.15)
    assert fraction_open(_row(1, Kind.AIR, value=".5")) == 0.5
    assert stated_mass(_row(1, Kind.WOOD, value="10", unit="lb")) == pytest.approx(4.5359237)
    assert stated_mass(_row(1, Kind.WOOD, note="two splits")) is None
    assert door_is_open(_row(1, Kind.OVEN_DOOR, value="open"))
    assert not door_is_open(_row(1, Kind.OVEN_DOOR, value="closed"))


@pytest.mark.parametrize(
    ("note", "count"),
    [("two splits", 2.0), ("A big oak log", 1.0), ("3 splits", 3.0), ("1.5", 1.5), ("some kindling", None), ("", None)],
)
def test_splits_are_counted_from_the_note(note: str, count: float | None) -> None:
    assert wood_count(_row(1, Kind.WOOD, note=note)) == count


def test_band_holds_both_its_ends() -> None:
    band = HeatBand(name="bread", low=470.0, high=500.0)
    assert [band.holds(t) for t in (469.9, 470.0, 485.0, 500.0, 500.1)] == [False, True, True, True, False]
