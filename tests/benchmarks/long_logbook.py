"""A logbook as it looks after years: 200 past sessions, and one of today with 500 readings. All invented."""

import math
import random
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import stove_with_default_spots

PAST_SESSIONS = 200
READINGS = 500
STOVE = "Invented stove"
_HOURS = 8.0


def long_logbook(path: Path, now: datetime | None = None) -> None:
    """Write it; the session of today ends a minute before `now`."""
    moment = now or datetime.now(UTC)
    chance = random.Random(7)
    logbook = Logbook.open(path)
    logbook.save_stove(stove_with_default_spots(STOVE))
    for days in range(PAST_SESSIONS, 0, -1):
        began = moment - timedelta(days=days)
        logbook.add_session(STOVE, f"{days} days ago", fire(began, 40, 3.0, chance))
    began = moment - timedelta(hours=_HOURS, minutes=1)
    logbook.add_session(STOVE, "Today", fire(began, READINGS, _HOURS, chance))
    logbook.set_setting("stove", STOVE)
    logbook.close()


def fire(began: datetime, readings: int, hours: float, chance: random.Random) -> tuple[Entry, ...]:
    """A made-up firing: lit, fed every forty minutes, its spots read in turn."""
    spots = ("oven_centre", "top_front_left", "top_front_right", "top_back_left", "top_back_right", "oven_left")
    rows = [_row(began, Kind.LIT), _row(began, Kind.AIR, value="1")]
    rows += [
        _row(began + timedelta(minutes=minute), Kind.WOOD, note="two splits")
        for minute in range(4, round(60 * hours), 40)
    ]
    for number in range(readings):
        share = number / readings
        at = began + timedelta(hours=hours * share)
        spot = spots[number % len(spots)]
        hottest = 420.0 if spot.startswith("oven") else 520.0
        warm = 70 + (hottest - 70) * (1 - math.exp(-5 * share)) + 20 * math.sin(9 * math.pi * share)
        rows.append(_row(at, Kind.READING, spot=spot, value=f"{warm + chance.gauss(0, 4):.0f}", unit="F"))
    rows.sort(key=lambda row: row.at)
    return tuple(replace(row, number=number) for number, row in enumerate(rows, start=1))


def _row(at: datetime, kind: Kind, spot: str = "", value: str = "", unit: str = "", note: str = "") -> Entry:
    return Entry(number=0, at=at, offset_minutes=-300, kind=kind, spot=spot, value=value, unit=unit, note=note)
