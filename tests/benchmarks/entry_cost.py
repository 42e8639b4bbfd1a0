"""What one more entry costs in a long session, and what learning from many sessions costs.

    python -m tests.benchmarks.entry_cost [--sessions N]

Prints CPU milliseconds per entry (belief, outlook, zones and next reading) over a day of 8 hours with 300 readings,
the memory that the tracker holds, and CPU seconds for learning a stove's character. One core.
"""

import argparse
import os
import time
import tracemalloc
from dataclasses import replace
from datetime import timedelta

for _threads in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_threads, "1")

import numpy as np  # noqa: E402

from cookstove_gui.forecast.futures.next_reading import next_reading  # noqa: E402
from cookstove_gui.forecast.futures.outlook import outlook_of  # noqa: E402
from cookstove_gui.forecast.futures.projection import project  # noqa: E402
from cookstove_gui.forecast.futures.zones import zones  # noqa: E402
from cookstove_gui.forecast.learning.learn import learn  # noqa: E402
from cookstove_gui.forecast.tracking.tracker import Tracker  # noqa: E402
from cookstove_gui.stove.entries import Session  # noqa: E402
from tests.forecast.logs import MODERATE, STOVE, long_day  # noqa: E402


def entry_costs() -> list[float]:
    """CPU milliseconds of each entry of a long day."""
    entries, tracker, costs = long_day(), Tracker(STOVE), []
    for place in range(1, len(entries) + 1):
        began = time.process_time()
        belief = tracker.follow(entries[:place], entries[place - 1].at)
        projection = project(belief, band=MODERATE)
        outlook_of(projection, STOVE, MODERATE)
        zones(belief)
        next_reading(belief, projection, MODERATE)
        costs.append(1e3 * (time.process_time() - began))
    return costs


def back_dated_cost() -> float:
    """CPU milliseconds of an entry back-dated by ten minutes at the end of a long day."""
    entries, tracker = long_day(), Tracker(STOVE)
    tracker.follow(entries, entries[-1].at)
    late = replace(entries[-2], number=len(entries) + 1, at=entries[-1].at - timedelta(minutes=10))
    began = time.process_time()
    tracker.follow([*entries, late], entries[-1].at)
    return 1e3 * (time.process_time() - began)


def tracker_memory(readings: int) -> float:
    """Megabytes that a tracker holds after so many readings."""
    entries, tracker = long_day(readings), Tracker(STOVE)
    tracemalloc.start()
    tracker.follow(entries, entries[-1].at)
    held = tracemalloc.get_traced_memory()[0] / 1e6
    tracemalloc.stop()
    return held


def learning_cost(count: int) -> float:
    """CPU seconds of learning from so many sessions of sixty readings in four hours."""
    past = []
    for day in range(count):
        rows = tuple(replace(row, at=row.at - timedelta(days=count - day)) for row in long_day(60, 4.0))
        past.append(Session(number=day + 1, stove=STOVE.name, title=f"day {day + 1}", entries=rows))
    began = time.process_time()
    learn(STOVE, past)
    return time.process_time() - began


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--sessions", type=int, default=200)
    options = parser.parse_args()
    costs = np.array(entry_costs())
    print(f"one entry: median {np.median(costs):.1f} ms, 95 % under {np.quantile(costs, 0.95):.1f} ms (goal 40 ms)")
    print(f"  first fifty {np.median(costs[:50]):.1f} ms, last fifty {np.median(costs[-50:]):.1f} ms")
    print(f"back-dated by ten minutes: {back_dated_cost():.1f} ms for the belief")
    print(f"memory: {tracker_memory(150):.1f} MB after 150 readings, {tracker_memory(300):.1f} MB after 300")
    print(f"learning from 8 sessions: {learning_cost(8):.1f} s; from {options.sessions}: "
          f"{learning_cost(options.sessions):.1f} s (goal 20 s for 200)")  # fmt: skip


if __name__ == "__main__":
    main()
