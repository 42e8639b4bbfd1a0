"""A sample session plays on its own clock, each row once and in order of time."""

from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.desk.practice import Practice, PracticeClock
from cookstove_gui.stove.entries import Entry, Kind

START = datetime(2026, 1, 10, 12, 0, tzinfo=UTC)


class Seconds:
    """Seconds that pass only when told."""

    def __init__(self) -> None:
        self.gone = 0.0

    def __call__(self) -> float:
        return self.gone


def notes(*minutes: float) -> tuple[Entry, ...]:
    return tuple(
        Entry(number=number, at=START + timedelta(minutes=minute), offset_minutes=0, kind=Kind.NOTE, note="x")
        for number, minute in enumerate(minutes, start=1)
    )


def test_rows_come_when_their_time_has_come() -> None:
    seconds = Seconds()
    practice = Practice(notes(0, 10, 5), seconds, pace=60.0)
    seconds.gone = 6.5  # the clock starts a minute before the first row: 5.5 minutes into the session
    assert [row.number for row in practice.due()] == [1, 3]
    assert not practice.is_over


def test_each_row_comes_once() -> None:
    seconds = Seconds()
    practice = Practice(notes(0, 10), seconds)
    seconds.gone = 1e4
    practice.due()
    assert (practice.due(), practice.is_over) == ((), True)


@pytest.mark.parametrize("pace", [0.0, 1.0, 60.0, 600.0])
def test_another_pace_does_not_make_the_clock_jump(pace: float) -> None:
    seconds = Seconds()
    clock = PracticeClock(START, seconds, pace=30.0)
    seconds.gone = 20.0
    before = clock()
    clock.set_pace(pace)
    assert clock() == before
    seconds.gone = 30.0
    assert clock() == before + timedelta(seconds=10.0 * pace)
