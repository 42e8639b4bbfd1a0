"""How the cooks of the third world write: rows left out, weights left blank, blunders, the room now and then."""

from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import degrees, tidy
from tests.world.parts import FloatArray

TOPS = ("top_front_left", "top_front_middle", "top_front_right", "top_back_left", "top_back_middle", "top_back_right")
SPOTS = (
    "oven_centre", *TOPS, "oven_left", "oven_right", "oven_rear", "oven_floor", "side_left", "side_right", "flue",
    "room",
)  # fmt: skip
Happened = list[tuple[float, str, float]]  # minute, what, how much
_Row = tuple[float, Kind, str, str, str]


def written(
    rng: np.random.Generator, start: datetime, last: float, log: Happened, times: FloatArray, truth: FloatArray,
    bulb: FloatArray,
) -> tuple[Entry, ...]:  # fmt: skip
    """What one cook of one firing leaves on paper; of 5 to 15 rows in a hundred nothing."""
    left_out = rng.uniform(0.05, 0.15)
    rows = [row for row in _readings(rng, last, times, truth, bulb) if rng.random() >= left_out]
    blank = rng.choice([0.0, 0.4, 1.0])
    for minute, kind, value in log:
        if minute > last or (kind != "lit" and rng.random() < left_out):
            continue
        late = minute + rng.exponential(1.0)
        if kind == "lit":
            rows.append((minute, Kind.LIT, "", "", ""))
        elif kind == "wood":
            weight = "" if rng.random() < blank else tidy(value * rng.uniform(0.7, 1.3) * 2.2, 1)
            rows.append((late, Kind.WOOD, "", weight, "lb" if weight else ""))
        elif kind == "oven_door":
            if rng.random() < 0.5:
                rows.append((minute, Kind.OVEN_DOOR, "", "open", ""))
                rows.append((minute + value, Kind.OVEN_DOOR, "", "closed", ""))
        elif rng.random() < 0.8:
            rows.append((late, Kind(kind), "", tidy(round(value * 10) / 10, 2), ""))
    rows.sort(key=lambda row: row[0])
    return tuple(
        Entry(
            number=number, at=start + timedelta(seconds=round(minute * 60)), offset_minutes=-300, kind=kind, spot=spot,
            value=value, unit=unit, note="",
        )
        for number, (minute, kind, spot, value, unit) in enumerate(rows, start=1)
    )  # fmt: skip


def _readings(
    rng: np.random.Generator, last: float, times: FloatArray, truth: FloatArray, bulb: FloatArray
) -> list[_Row]:
    every, offset, bias = rng.uniform(5, 15), rng.normal(0, 5), rng.normal(0, 0.012)
    rounding, walks, feels_room = int(rng.choice([1, 5, 10])), rng.uniform(0.1, 0.9), rng.uniform(0.0, 0.1)
    rows: list[_Row] = []
    at = rng.uniform(3.0, 9.0)
    while at < last:
        others = list(SPOTS[1:7]) if rng.random() < walks else [str(rng.choice(SPOTS[1:-1]))]
        spots = ["oven_centre", *others, *(["room"] if rng.random() < feels_room else [])]
        for number, spot in enumerate(spots):
            minute = at + 0.2 * number
            if spot == "oven_centre":
                kelvin = float(np.interp(minute, times, bulb)) + offset + rng.normal(0, 1.5)
            else:
                kelvin = float(np.interp(minute, times, truth[:, SPOTS.index(spot)]))
                kelvin += 0.0 if spot == "room" else (kelvin - 273.0) * (bias + 0.013 * rng.standard_t(4))
            shown = float(degrees(kelvin, "F"))
            if rng.random() < 0.01:
                shown *= rng.choice([0.1, 10.0, 0.6, 1.4])
            step = 1 if spot == "room" else rounding
            rows.append((minute, Kind.READING, spot, tidy(round(shown / step) * step), "F"))
        at += max(2.0, rng.gamma(4.0, every / 4.0)) + (rng.uniform(10, 30) if rng.random() < 0.05 else 0.0)
    return rows
