"""Windows against a plain loop over every start, spot and future, at uneven times; and the trapezoidal mean by hand."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.fit.windows import WindowedHeat
from tests.cooking.made import fahrenheit, projection


def last_seen(minutes: np.ndarray, first: int, duration: float) -> int:
    """The first time at or after the window's end, or the last time there is."""
    return next((i for i, at in enumerate(minutes) if at >= minutes[first] + duration - 1e-9), len(minutes) - 1)


def mean_of(minutes: np.ndarray, values: np.ndarray) -> float:
    return float(np.trapezoid(values, minutes) / (minutes[-1] - minutes[0])) if len(values) > 1 else float(values[0])


@given(
    seed=st.integers(0, 10_000),
    count=st.integers(1, 14),
    duration=st.sampled_from([0.0, 3.0, 7.0, 20.0, 35.0, 90.0, 500.0]),
    even=st.booleans(),
    judged_share=st.sampled_from([0.0, 0.5, 1.0]),
)
def test_every_window_is_what_a_plain_loop_finds(
    seed: int, count: int, duration: float, even: bool, judged_share: float
) -> None:
    random = np.random.default_rng(seed)
    steps = np.full(count - 1, 5.0) if even else random.uniform(2.0, 20.0, count - 1)
    minutes = np.concatenate([[0.0], np.cumsum(steps)])
    heats = {name: random.uniform(250.0, 450.0, (3, count)) for name in ("one", "two")}
    difference = random.uniform(0.0, 40.0, (3, count, 2))
    projected = projection(heats, minutes)
    window = WindowedHeat(projected, ("one", "two"), difference).window(
        duration, below=20.0, above=8.0, judged_share=judged_share
    )
    expected = [0, *(i for i in range(1, count) if minutes[-1] - minutes[i] >= judged_share * duration - 1e-9)]
    assert list(window.starts) == [minutes[i] for i in expected]
    assert window.difference is not None
    for row, first in enumerate(expected):
        seen = slice(first, last_seen(minutes, first, duration) + 1)
        for column, name in enumerate(("one", "two")):
            for future in range(3):
                heat = projected.of(name)[future, seen]
                mean = mean_of(minutes[seen], heat)
                # the band's low end may be no higher than the start, the mean and 20 K above the coldest
                low = min(heat[0], mean, heat.min() + 20.0)
                high = max(heat[0], mean, heat.max() - 8.0)
                for shift, holds in ((-0.01, True), (0.01, False)):
                    assert window.holds(low + shift, 900.0)[row, column, future] == holds
                    assert window.holds(0.0, high - shift)[row, column, future] == holds
                apart = mean_of(minutes[seen], difference[future, seen, column])
                assert window.difference[row, column, future] == pytest.approx(apart, abs=2e-3)


def test_a_mean_is_weighed_by_time() -> None:
    # 10 min at 400 °F, then 30 min in a straight line to 440 °F: (10 * 400 + 30 * 420) / 40 = 415 °F
    heats = projection({"one": [400.0, 400.0, 440.0]}, [0.0, 10.0, 40.0])
    window = WindowedHeat(heats, ("one",), None).window(40.0, below=100.0, above=100.0, judged_share=0.5)
    assert window.holds(fahrenheit(390), fahrenheit(415.1))[0, 0, 0]
    assert not window.holds(fahrenheit(390), fahrenheit(414.9))[0, 0, 0]


def test_where_nothing_tells_of_a_difference_any_task_may_be_done() -> None:
    heats = projection({"one": [400.0, 400.0]})
    window = WindowedHeat(heats, ("one",), None).window(5.0, below=1.0, above=1.0, judged_share=0.5)
    assert bool(np.all(window.even(0.0)))
