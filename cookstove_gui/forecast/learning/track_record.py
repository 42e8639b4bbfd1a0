"""How the arrival windows that a cook was shown turned out."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

import numpy as np

from cookstove_gui.forecast.answers import FloatArray, RecordRow, TrackRecord, Verdict
from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.futures.outlook import outlook
from cookstove_gui.forecast.learning.hindsight import OvenPast
from cookstove_gui.forecast.tracking.belief import doubted_readings
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.stove.entries import HeatBand, Session

LEAST_LEAD_MINUTES = 30.0


def windows_at(
    teller: Forecaster, session: Session, past: OvenPast, place: int, bands: Sequence[HeatBand]
) -> list[RecordRow]:
    """The windows shown at one of a session's readings, for each band that no reading so far has reached.

    `teller` follows the session with the character of that day. What came true is not settled yet. A window whose
    middle lies nearer than LEAST_LEAD_MINUTES is left out.
    """
    if not bands:
        return []
    belief = teller.follow(session.entries, past.rows[place].at)
    slips = {row.number for row in doubted_readings(belief)}
    so_far = [value for row, value in zip(past.rows, past.kelvin[: place + 1], strict=False) if row.number not in slips]
    made = []
    for band in bands:
        if not so_far or max(so_far) >= band.low:
            continue
        found = outlook(belief, band).band
        enters = found.enters_min
        if enters.p50 is None or enters.p50 >= LEAST_LEAD_MINUTES:
            made.append(
                RecordRow(
                    session=session.title,
                    made_at=belief.now,
                    offset_minutes=past.rows[place].offset_minutes,
                    band=band,
                    enters_min=enters,
                    likely_min=found.line_enters_min,
                    came_true_min=None,
                    watched_min=float(past.minutes[-1] - past.minutes[place]),
                )
            )
    return made


def settled(windows: Sequence[RecordRow], tracker: Tracker, session: Session, past: OvenPast) -> tuple[RecordRow, ...]:
    """The same with what came true by the session's sound readings, slips left out."""
    if not windows:
        return ()
    slips = {row.number for row in doubted_readings(tracker.follow(session.entries, past.rows[-1].at))}
    sound = np.array([row.number not in slips for row in past.rows])
    clock, values = past.minutes[sound], past.kelvin[sound]
    return tuple(_with_what_came_true(row, clock, values) for row in windows)


def _with_what_came_true(row: RecordRow, clock: FloatArray, values: FloatArray) -> RecordRow:
    came = arrival(clock, values, row.band.low)
    return row if came is None else replace(row, came_true_min=came - row.made_at.timestamp() / 60.0)


def track_record(stove: str, sessions: int, rows: Iterable[RecordRow]) -> TrackRecord:
    """The windows that claimed something and were put to the test, and how many held."""
    told = tuple(rows)
    held = [verdict for row in told if (verdict := held_true(row)) is not None]
    misses = [
        abs(row.came_true_min - row.likely_min)
        for row in told
        if row.came_true_min is not None and row.likely_min is not None
    ]
    return TrackRecord(
        stove=stove,
        sessions=sessions,
        projections=len(held),
        inside_window=sum(held),
        typical_miss_min=float(np.median(misses)) if misses else None,
        rows=told,
    )


def verdict(row: RecordRow) -> Verdict:
    """What came of a window; its ends belong to it."""
    low, high, came = row.enters_min.p10, row.enters_min.p90, row.came_true_min
    if came is not None:
        if low is None or came < low:
            return Verdict.EARLIER
        return Verdict.LATER if high is not None and came > high else Verdict.INSIDE
    if low is None:
        return Verdict.NO_CLAIM
    if high is None:
        return Verdict.NEVER_AS_SAID
    return Verdict.NOT_REACHED if high < row.watched_min else Verdict.OPEN


def held_true(row: RecordRow) -> bool | None:
    """Whether a window held; None where nobody can say."""
    found = verdict(row)
    if found in (Verdict.NO_CLAIM, Verdict.OPEN):
        return None
    return found in (Verdict.INSIDE, Verdict.NEVER_AS_SAID)


def arrival(clock: FloatArray, values: FloatArray, low: float) -> float | None:
    """When readings joined by straight lines first rise through `low`, or none.

    Parameters
    ----------
    clock : array, shape (readings,)
        [min]
    values : array, shape (readings,)
        [K]
    low : float
        [K]
    """
    above = np.flatnonzero(values >= low)
    if not len(above):
        return None
    place = int(above[0])
    if place == 0:
        return float(clock[0])
    share = (low - values[place - 1]) / (values[place] - values[place - 1])
    return float(clock[place - 1] + share * (clock[place] - clock[place - 1]))
