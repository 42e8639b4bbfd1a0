"""A doubted reading is left out only when the readings beside it do not bear it out."""

import pytest

from cookstove_gui.forecast.answers import DoubtedReading
from cookstove_gui.reports.slips import slips
from cookstove_gui.stove.entries import fold

from .conftest import Log


def _doubted(*numbers: int) -> tuple[DoubtedReading, ...]:
    return tuple(
        DoubtedReading(number=number, typed=480.0, expected_p10=400.0, expected_p50=410.0, expected_p90=420.0)
        for number in numbers
    )


@pytest.mark.parametrize(
    ("before", "doubted", "after", "is_slip"),
    [
        (300, 3000, 310, True),
        (300, 60, 310, True),
        (180, 380, 520, False),  # a fire that caught quickly: the next reading shows it
        (300, 325, 310, False),  # 25 °F is what a hand does
        (520, 380, 180, False),
    ],
)
def test_reading_between_its_neighbours_is_no_slip(
    log: Log, before: float, doubted: float, after: float, is_slip: bool
) -> None:
    log.read(0, "oven_centre", before).read(10, "oven_centre", doubted).read(12, "flue", 70)
    log.read(20, "oven_centre", after)
    assert [slip.number for slip in slips(_doubted(2), fold(log.rows))] == ([2] if is_slip else [])


def test_reading_with_nothing_near_to_bear_it_out_stays_doubted(log: Log) -> None:
    log.read(0, "flue", 300).read(100, "flue", 305).read(200, "flue", 310)
    assert [slip.number for slip in slips(_doubted(2), fold(log.rows))] == [2]


def test_reading_nobody_doubted_is_no_slip(log: Log) -> None:
    log.read(0, "flue", 300).read(10, "flue", 900).read(20, "flue", 310)
    assert slips((), fold(log.rows)) == ()
