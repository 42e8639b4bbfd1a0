"""Marks of the wall clock along a time axis in minutes: pure functions."""

import math
from datetime import datetime, timedelta

from cookstove_gui.units import clock_text

_DAY = 1440
_STEPS_MINUTES = (5, 10, 15, 30, 60, 120, 240, 720)


def clock_ticks(anchor: datetime, offset_minutes: int, low: float, high: float, most: int) -> list[tuple[float, str]]:
    """Round clock times between two places on an axis.

    Parameters
    ----------
    anchor : datetime
        Aware instant at 0 on the axis.
    offset_minutes : int
        Offset of the local clock from UTC [min].
    low, high : float
        Ends of what is seen [min].
    most : int
        How many labels there is room for.
    """
    if not high > low or most < 1:
        return []
    days = _DAY * math.ceil((high - low) / most / _DAY)
    step = next((one for one in _STEPS_MINUTES if (high - low) / one <= most), days)
    local = anchor + timedelta(minutes=offset_minutes)
    past_midnight = local.hour * 60 + local.minute + local.second / 60 + local.microsecond / 6e7
    first = math.ceil((past_midnight + low) / step) * step - past_midnight
    count = int((high - first) // step) + 1 if first <= high else 0
    return [
        (place, clock_text(anchor + timedelta(minutes=place, seconds=1e-3), offset_minutes))
        for place in (first + number * step for number in range(count))
    ]
