"""Heat that soaks in: the full series, textbook examples, short times, and what must always hold."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.conduction import (
    biot_number,
    fourier_number,
    fourier_to_reach,
    heat_ratio,
    one_term_ratio,
    surface_layer_ratio,
    temperature_ratio,
)
from cookstove_gui.physics.eigenvalues import eigenvalues, mean_profile
from tests.physics.laws import biots, law, shapes
from tests.reference import Check, check, si

TIMED = [check(id) for id in ("5.11", "5.11-h12", "5.11-h30", "5.12", "5.14", "5.15")]


@pytest.mark.parametrize("row", TIMED, ids=lambda row: row.id)
def test_worked_examples_for_time(row: Check) -> None:
    given_values = {name: si(value) for name, value in row.inputs.items()}
    start, around = given_values["temperature_initial"], given_values["temperature_surroundings"]
    ratio = (given_values["temperature"] - around) / (start - around)
    biot = biot_number(given_values["heat_transfer_coefficient"], given_values["length"], given_values["conductivity"])
    time = fourier_to_reach(given_values["shape"], biot, ratio) * given_values["length"] ** 2
    assert time / given_values["diffusivity"] == pytest.approx(row.expected(), abs=row.allowed())


def test_rib_roast_of_the_textbook() -> None:
    """Row "5.13": one term reproduces the book at its chart's Biot number, the full series shows what that costs."""
    radius = (3.2 / 1200.0 * 3 / (4 * np.pi)) ** (1 / 3)
    fourier = fourier_number(9900.0, radius, 0.91e-7)
    cold, oven = 4.5, 163.0
    surface = oven + (cold - oven) * one_term_ratio("sphere", 30.0, fourier, 1.0)
    assert surface == pytest.approx(159.5, abs=0.1)
    centre_by_one_term = oven + (cold - oven) * one_term_ratio("sphere", 30.0, fourier)
    assert centre_by_one_term == pytest.approx(60.40, abs=0.05)
    centre = oven + (cold - oven) * temperature_ratio("sphere", 30.0, fourier)
    assert centre == pytest.approx(63.86, abs=0.02)
    root = eigenvalues("sphere", 30.0, 1)
    left = one_term_ratio("sphere", 30.0, fourier) * float(mean_profile("sphere", root)[0])
    assert 3.2 * 4100.0 * (oven - cold) * (1.0 - left) == pytest.approx(1629e3, rel=2e-3)


@law
@given(shapes, biots, st.floats(1e-4, 20.0), st.floats(0.0, 1.0))
def test_ratio_stays_between_start_and_end(shape, biot, fourier, position) -> None:  # type: ignore[no-untyped-def]
    ratio = temperature_ratio(shape, biot, fourier, position)
    assert -1e-9 <= ratio <= 1.0 + 1e-6


@law
@given(shapes, biots, st.floats(1e-3, 5.0), st.floats(1.05, 3.0))
def test_everything_only_warms(shape, biot, fourier, later) -> None:  # type: ignore[no-untyped-def]
    assert temperature_ratio(shape, biot, fourier * later) <= temperature_ratio(shape, biot, fourier) + 1e-12
    assert heat_ratio(shape, biot, fourier * later) >= heat_ratio(shape, biot, fourier) - 1e-9


@law
@given(shapes, biots, st.floats(0.01, 3.0))
def test_surface_is_ahead_of_the_middle(shape, biot, fourier) -> None:  # type: ignore[no-untyped-def]
    assert temperature_ratio(shape, biot, fourier, 1.0) <= temperature_ratio(shape, biot, fourier, 0.0) + 1e-9


@law
@given(biots, st.floats(0.02, 3.0))
def test_rounder_bodies_warm_sooner(biot: float, fourier: float) -> None:
    wall, cylinder, sphere = (temperature_ratio(shape, biot, fourier) for shape in ("wall", "cylinder", "sphere"))
    assert wall >= cylinder - 1e-9
    assert cylinder >= sphere - 1e-9


@law
@given(shapes, biots, st.floats(0.02, 0.98))
def test_fourier_number_is_found_again(shape, biot, ratio) -> None:  # type: ignore[no-untyped-def]
    assert temperature_ratio(shape, biot, fourier_to_reach(shape, biot, ratio)) == pytest.approx(ratio, abs=1e-6)


@law
@given(st.floats(0.3, 30.0), st.floats(1e-4, 0.01), st.floats(0.7, 1.0))
def test_short_times_are_a_thick_bodys(biot: float, fourier: float, position: float) -> None:
    layer = surface_layer_ratio(1.0 - position, fourier, biot, 1.0, 1.0)
    assert 1.0 - temperature_ratio("wall", biot, fourier, position) == pytest.approx(layer, abs=2e-6)


def test_heat_taken_up_is_the_mean_change() -> None:
    places = (np.arange(2000) + 0.5) / 2000
    for shape, power in (("wall", 0), ("cylinder", 1), ("sphere", 2)):
        ratio = np.asarray(temperature_ratio(shape, 2.0, 0.15, places))
        mean = (ratio * places**power).sum() / (places**power).sum()
        assert heat_ratio(shape, 2.0, 0.15) == pytest.approx(1.0 - mean, abs=1e-6)


def test_start_is_exact() -> None:
    assert temperature_ratio("sphere", 5.0, 0.0, 1.0) == 1.0
    assert heat_ratio("sphere", 5.0, np.array([0.0, 0.1]))[0] == 0.0


def test_a_whole_course_at_once() -> None:
    course = np.asarray(temperature_ratio("cylinder", 2.0, np.linspace(0.0, 1.0, 500)))
    assert course.shape == (500,)
    assert (np.diff(course) <= 1e-12).all()


@pytest.mark.parametrize(
    ("arguments", "named"),
    [(("wall", 1.0, 1e-6), "fourier"), (("wall", 1.0, -0.1), "fourier"), (("wall", 0.0, 1.0), "biot"),
     (("wall", 1.0, 1.0, 1.1), "position"), (("wall", [1.0, 2.0], 1.0), "biot must be one number")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(arguments, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        temperature_ratio(*arguments)


def test_a_share_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="ratio must be above 0"):
        fourier_to_reach("wall", 1.0, 0.0)
