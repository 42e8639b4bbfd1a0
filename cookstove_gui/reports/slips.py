"""Which readings a report leaves out of its tables: the doubted ones that their neighbours do not bear out either."""

from collections.abc import Sequence
from datetime import timedelta

from cookstove_gui.forecast.answers import DoubtedReading
from cookstove_gui.stove.entries import Entry, Kind, reading_kelvin

_NEAR = timedelta(minutes=45)  # readings of a spot so near in time speak for each other
_CLOSE = 15.0  # K, by hand


def slips(doubted: Sequence[DoubtedReading], standing: Sequence[Entry]) -> tuple[DoubtedReading, ...]:
    """The doubted readings that do not lie between the spot's readings before and after either.

    The forecast doubts a number that came as a surprise; with hindsight the next reading often shows that it was right.
    """
    readings = [row for row in standing if row.kind is Kind.READING]
    return tuple(slip for slip in doubted if not _is_borne_out(slip.number, readings))


def _is_borne_out(number: int, readings: Sequence[Entry]) -> bool:
    row = next(one for one in readings if one.number == number)
    alike = [one for one in readings if one.spot == row.spot and abs(one.at - row.at) <= _NEAR]
    place = alike.index(row)
    beside = [reading_kelvin(one) for one in alike[max(0, place - 1) : place] + alike[place + 1 : place + 2]]
    return bool(beside) and min(beside) - _CLOSE <= reading_kelvin(row) <= max(beside) + _CLOSE
