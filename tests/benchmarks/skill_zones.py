"""Scores every cooktop spot's estimate at random moments against the truth."""

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime, timedelta

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import Zone
from cookstove_gui.stove.entries import Entry, Kind, reading_kelvin
from tests.benchmarks.skill_questions import Firing, FloatArray
from tests.benchmarks.skill_scores import over_stoves

Estimator = Callable[[Firing, tuple[Entry, ...], datetime], tuple[Zone, ...]]
MOMENTS = 6


def moments_of(session: Firing) -> FloatArray:
    """Random minutes from lighting, between the first quarter of an hour and the last row."""
    last = (session.entries[-1].at - session.start).total_seconds() / 60.0
    rng = np.random.default_rng([77, session.stove_seed, len(session.entries)])
    return np.sort(rng.uniform(15.0, last, MOMENTS))


def zone_lines(sessions: Sequence[Firing], estimators: Mapping[str, Estimator]) -> list[str]:
    """Lines of the table: mean absolute error and coverage, and the error's share of the last reading's."""
    lines = [
        f"{'':26}{'error [°F]':>12}{'last reading':>14}{'share':>24}{'coverage':>10}{'never read: error, coverage':>30}"
    ]
    for name, estimate in estimators.items():
        rows = np.array([row for session in sessions for row in _rows(session, estimate)])
        read = ~np.isnan(rows[:, 2])

        def share(chosen: NDArray[np.intp], rows: FloatArray = rows[read]) -> float:
            return float(rows[chosen, 1].mean() / rows[chosen, 2].mean())

        low, high = over_stoves(share, rows[read, 0].astype(int).tolist())
        total = rows[read, 1].mean() / rows[read, 2].mean()
        unread = (
            f"{rows[~read, 1].mean() * 1.8:.1f}, {rows[~read, 3].mean():.0%} of {(~read).sum()}"
            if (~read).any()
            else ""
        )
        lines.append(
            f"{name:26}{rows[read, 1].mean() * 1.8:12.1f}{rows[read, 2].mean() * 1.8:14.1f}"
            f"{f'{total:.2f} ({low:.2f} to {high:.2f})':>24}{rows[read, 3].mean():10.1%}{unread:>30}"
        )
    return lines


def _rows(session: Firing, estimate: Estimator) -> list[tuple[float, float, float, float]]:
    """(stove, error [K], error of the last reading [K] or NaN, inside) for every cooktop spot at every moment."""
    rows = []
    for minute in moments_of(session):
        now = session.start + timedelta(minutes=float(minute))
        entries = tuple(entry for entry in session.entries if entry.at <= now)
        said = {zone.spot: zone for zone in estimate(session, entries, now)}
        last = {entry.spot: reading_kelvin(entry) for entry in entries if entry.kind is Kind.READING}
        for column, spot in enumerate(session.spots):
            if not spot.startswith("top_"):
                continue
            true = float(np.interp(minute, session.times, session.truth[:, column]))
            zone = said[spot]
            rows.append(
                (
                    float(session.stove_seed),
                    abs(zone.p50 - true),
                    abs(last[spot] - true) if spot in last else np.nan,
                    float(zone.p10 <= true <= zone.p90),
                )
            )
    return rows
