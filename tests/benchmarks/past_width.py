"""Whether the past that is drawn holds about what it says, and how far a reading moves it: eight times in ten each.

Run by hand: `python -m tests.benchmarks.past_width [STOVES] [WORLD ...]`, on design stoves of the invented worlds. At
every oven reading the past as it is known then is held against the true air of the oven, by age; and against the past
that was drawn before the reading came: where that is honest, the new middle lies within it at least as often.
"""

import sys
from collections import defaultdict
from datetime import timedelta

import numpy as np

from cookstove_gui.forecast.answers import FloatArray, Trace
from cookstove_gui.forecast.tracking.belief import trace
from cookstove_gui.forecast.tracking.tracker import Tracker
from tests.benchmarks.skill_questions import Firing
from tests.benchmarks.skill_worlds import WORLDS

FIRST = 530  # of the design stoves that widths are set on
AGES = ((0, 2), (2, 5), (5, 10), (10, 20), (20, 40), (40, 80), (80, 400))  # min ago
_WARMED = 5.0  # min from lighting, before which nothing is known yet
_BEFORE = timedelta(seconds=1)


def off(drawn: Trace, at: FloatArray, truth: FloatArray, start: float) -> tuple[FloatArray, FloatArray]:
    """How far the truth is from the middle at the moments drawn, in half widths of the eight in ten; and their ages."""
    minutes = np.array([one.timestamp() for one in drawn.at]) / 60.0 - start
    true = np.interp(minutes, at, truth)
    half = np.where(true > drawn.p50, drawn.p90 - drawn.p50, drawn.p50 - drawn.p10)
    seen = minutes >= _WARMED
    return (np.abs(true - drawn.p50) / np.maximum(half, 1e-6))[seen], (minutes[-1] - minutes)[seen]


def moved(before: Trace, after: Trace) -> tuple[FloatArray, FloatArray]:
    """How far a reading moved the middle, in half widths of what was drawn before it; and the ages."""
    times = np.array([one.timestamp() for one in before.at])
    new = np.interp(times, [one.timestamp() for one in after.at], after.p50)
    half = np.where(new > before.p50, before.p90 - before.p50, before.p50 - before.p10)
    return np.abs(new - before.p50) / np.maximum(half, 1e-6), (times[-1] - times) / 60.0


def of_firing(session: Firing, shares: dict[str, list[tuple[FloatArray, FloatArray]]]) -> None:
    """Add what one firing shows."""
    tracker = Tracker(session.stove)
    truth = session.truth[:, session.spots.index("oven_centre")]
    start = session.start.timestamp() / 60.0
    asked = [row.at for row in session.entries if row.spot == "oven_centre"][1:]
    for at in asked:
        before = trace(tracker.follow(session.entries, at - _BEFORE))
        after = trace(tracker.follow(session.entries, at))
        if len(before.p50) > 1:
            shares["moved"].append(moved(before, after))
        if len(after.p50) > 1:
            shares["held"].append(off(after, session.times, truth, start))


def main(stoves: int, worlds: list[str]) -> None:
    """Measure and print."""
    for world in worlds or [name for name in WORLDS if name != "tidy"]:
        shares: dict[str, list[tuple[FloatArray, FloatArray]]] = defaultdict(list)
        for seed in range(FIRST, FIRST + stoves):
            for session in WORLDS[world](seed, [101]):
                of_firing(session.without_moments(), shares)
        for name, parts in shares.items():
            far, age = (np.concatenate(column) for column in zip(*parts, strict=True))
            print(
                f"{world}, {name}: {np.mean(far <= 1):.0%} within, would be eight in ten at {np.quantile(far, 0.8):.2f}"
            )
            for low, high in AGES:
                some = far[(age >= low) & (age < high)]
                if len(some):
                    print(
                        f"    {low:3d} to {high:3d} min ago: {np.mean(some <= 1):4.0%}, eight in ten at"
                        f" {np.quantile(some, 0.8):.2f}, ({len(some)} points)"
                    )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 12, sys.argv[2:])
