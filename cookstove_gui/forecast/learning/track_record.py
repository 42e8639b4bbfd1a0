"""How the arrival windows of a stove's sessions would have turned out: projected then, compared with what came true."""

from collections.abc import Sequence

import numpy as np

from cookstove_gui.forecast.answers import FloatArray, RecordRow, TrackRecord
from cookstove_gui.forecast.futures.outlook import outlook
from cookstove_gui.forecast.learning.hindsight import oven_readings, questions
from cookstove_gui.forecast.learning.learn import after_session, in_order
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.stove.entries import Entry, HeatBand, Session, fold
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import kelvin

LEAST_LEAD_MINUTES = 30.0
USUAL_BANDS = (
    HeatBand(name="slow", low=kelvin(250.0, "F"), high=kelvin(325.0, "F")),
    HeatBand(name="moderate", low=kelvin(325.0, "F"), high=kelvin(400.0, "F")),
    HeatBand(name="hot", low=kelvin(400.0, "F"), high=kelvin(450.0, "F")),
)


def track_record(stove: Stove, sessions: Sequence[Session], bands: Sequence[HeatBand] | None = None) -> TrackRecord:
    """Every arrival window given at least half an hour ahead, and what came true.

    Each session is projected with what the ones before it taught. A band is asked about in a session whose oven
    began below it; projections whose middle lies nearer than half an hour are left out. An arrival that did not come
    before the last reading is none, and counts as inside a window only if that window says it may never come or the
    session ended before the window closed.
    """
    character = Character.generic(stove)
    rows: list[RecordRow] = []
    ordered = in_order(sessions)
    for session in ordered:
        for band in bands or USUAL_BANDS:
            rows.extend(_session_rows(stove, session, band, character))
        character = after_session(character, Tracker(stove, character), session)
    settled = [row for row in rows if row.came_true_min is not None]
    inside = [row for row in settled if _inside(row)]
    misses = [abs(row.came_true_min - row.enters_min.p50) for row in settled
              if row.came_true_min is not None and row.enters_min.p50 is not None]  # fmt: skip
    return TrackRecord(
        stove=stove.name,
        sessions=len(ordered),
        projections=len(settled),
        inside_window=len(inside),
        typical_miss_min=float(np.median(misses)) if misses else None,
        rows=tuple(rows),
    )


def _session_rows(stove: Stove, session: Session, band: HeatBand, character: Character) -> list[RecordRow]:
    oven, values = oven_readings(stove, fold(session.entries), "oven_centre")
    if len(oven) < 3 or values[0] >= band.low or not np.any(values >= band.low):
        return []
    clock = _minutes(oven)
    came = arrival(clock, values, band.low)
    tracker = Tracker(stove, character)
    rows = []
    for place in questions(oven):
        if came is None or clock[place] >= came:
            break
        view = outlook(tracker.follow(session.entries, oven[place].at), band)
        middle = view.band.enters_min.p50
        if middle is not None and middle < LEAST_LEAD_MINUTES:
            continue
        rows.append(
            RecordRow(
                session=session.title,
                made_at=oven[place].at,
                band=band,
                enters_min=view.band.enters_min,
                came_true_min=came - float(clock[place]),
            )
        )
    return rows


def arrival(clock: FloatArray, values: FloatArray, low: float) -> float | None:
    """When readings joined by straight lines first rise through `low`, or none."""
    above = np.flatnonzero(values >= low)
    if not len(above):
        return None
    place = int(above[0])
    if place == 0:
        return float(clock[0])
    share = (low - values[place - 1]) / (values[place] - values[place - 1])
    return float(clock[place - 1] + share * (clock[place] - clock[place - 1]))


def _minutes(rows: Sequence[Entry]) -> FloatArray:
    return np.array([row.at.timestamp() / 60.0 for row in rows], dtype=np.float64)


def _inside(row: RecordRow) -> bool:
    if row.came_true_min is None:
        return False
    low, high = row.enters_min.p10, row.enters_min.p90
    return (low is not None and row.came_true_min >= low) and (high is None or row.came_true_min <= high)
