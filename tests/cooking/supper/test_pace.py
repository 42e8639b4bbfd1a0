"""How long a bake takes at another heat: against published times, and what follows from its law."""

import numpy as np
import pytest

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.pace import BOIL, LONGEST, SHORTEST, baked, is_paced, lengths, paces
from cookstove_gui.units import kelvin
from tests.cooking.supper.made import oven
from tests.reference import check

BAKE = oven(45.0, 350.0, 400.0)
MIDDLE = kelvin(375.0, "F")
CLOCK = np.arange(0.0, 241.0, 5.0)
NOW = np.zeros(1)


def takes(heat: Heat, path: float | np.ndarray, start: float = 0.0, left: float | None = None) -> float:
    oven_path = np.broadcast_to(path, CLOCK.shape)
    return float(lengths(CLOCK, oven_path, heat, np.array([start]), heat.minutes if left is None else left)[0])


@pytest.mark.parametrize("at", [375, 350, 325])
def test_a_potato_takes_the_published_minutes_at_a_lower_heat(at: int) -> None:
    low, high = check("b.potato-400").value
    potato = oven(0.5 * (low + high), 390.0, 410.0)
    least, most = check(f"b.potato-{at}").value
    assert least <= takes(potato, kelvin(float(at), "F")) <= most


def test_in_the_middle_of_its_heat_it_takes_its_usual_minutes_wherever_it_begins() -> None:
    assert [takes(BAKE, MIDDLE, start) for start in (0.0, 17.0, 239.0, 400.0)] == pytest.approx([45.0] * 4)
    assert takes(BAKE, MIDDLE, left=12.0) == pytest.approx(12.0)


@pytest.mark.parametrize(("kelvin_oven", "share"), [(250.0, LONGEST), (MIDDLE + 300.0, SHORTEST)])
def test_a_cold_oven_and_a_furnace_have_bounds(kelvin_oven: float, share: float) -> None:
    assert takes(BAKE, kelvin_oven) == pytest.approx(share * 45.0)


def test_what_begins_later_is_never_done_sooner() -> None:
    path = MIDDLE + 30.0 * np.sin(CLOCK / 20.0)
    starts = np.arange(0.0, 200.0, 3.0)
    ends = starts + lengths(CLOCK, path, BAKE, starts, BAKE.minutes)
    assert (np.diff(ends) >= -1e-6).all()


def test_each_future_has_its_own_length() -> None:
    paths = np.array([MIDDLE, MIDDLE + 40.0, MIDDLE - 40.0])[:, None] + 5.0 * np.sin(CLOCK / 20.0)
    starts = np.array([0.0, 31.0, 238.0])
    alone = [takes(BAKE, path, start) for path, start in zip(paths, starts, strict=True)]
    assert lengths(CLOCK, paths, BAKE, starts, BAKE.minutes) == pytest.approx(alone)


def test_bake_that_was_had_is_the_integral_of_its_pace() -> None:
    rising = np.linspace(BOIL, MIDDLE, len(CLOCK))
    assert baked(CLOCK, rising, BAKE)[-1] == pytest.approx(120.0)  # half of the pace over four hours
    assert paces(np.array([300.0, MIDDLE]), BAKE) == pytest.approx([0.0, 1.0])


def test_pots_what_is_dried_and_the_falling_oven_keep_their_minutes() -> None:
    top = Heat(what="simmer", place=Place.TOP, minutes=60.0, task="simmer")
    assert is_paced(BAKE)
    assert not any(is_paced(one) for one in (top, oven(60.0, 140.0, 180.0), oven(60.0, 350.0, 400.0, falling=True)))
