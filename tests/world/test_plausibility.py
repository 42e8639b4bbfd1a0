"""Fires of the usual sizes bring the invented stoves to the usual heats; common practice, no source."""

import numpy as np
import pytest

from tests.world.parts import FloatArray
from tests.world.sessions import WorldSession, make_sessions
from tests.world.stoves import FAMILIES, make_stove

STOVES = [make_stove(800 + number, FAMILIES[number % 9]) for number in range(18)]


def fahrenheit(kelvin: FloatArray) -> FloatArray:
    """°F from kelvin."""
    return np.asarray((kelvin - 273.15) * 1.8 + 32.0)


def fired(purpose: str, hours: float) -> list[WorldSession]:
    """One firing of every stove."""
    return make_sessions([(stove, 1) for stove in STOVES], purpose=purpose, hours=hours)


@pytest.fixture(scope="module")
def medium() -> list[WorldSession]:
    """Medium fires of three hours."""
    return fired("medium", 3.0)


@pytest.fixture(scope="module")
def full() -> list[WorldSession]:
    """Full loads with the air wide open."""
    return fired("full", 3.0)


def typical(sessions: list[WorldSession], columns: slice, minutes: slice) -> FloatArray:
    """Median heat [°F] of each stove over some spots and minutes."""
    return np.array([np.median(fahrenheit(session.truth[minutes, columns])) for session in sessions])


TOPS, WALLS, SIDES = slice(1, 7), slice(7, 11), slice(11, 13)


def test_half_an_hour_of_kindling_warms_the_cooktop_to_220_to_260() -> None:
    tops = np.array([fahrenheit(session.truth[30, TOPS]).mean() for session in fired("kindling", 0.6)])
    assert 220 <= np.median(tops) <= 260
    assert ((tops > 150) & (tops < 340)).all()


def test_a_medium_fire_holds_the_cooktop_at_390_to_450(medium: list[WorldSession]) -> None:
    tops = np.array([np.median(fahrenheit(session.truth[60:180, TOPS]).mean(1)) for session in medium])
    assert 390 <= np.median(tops) <= 450


def test_a_medium_fire_holds_the_oven_at_330_to_425(medium: list[WorldSession]) -> None:
    assert 330 <= np.median(typical(medium, slice(0, 1), slice(75, 180))) <= 425


def test_a_full_load_drives_the_cooktop_to_480_to_670(full: list[WorldSession]) -> None:
    hottest = np.array([fahrenheit(session.truth[:180, TOPS]).mean(1).max() for session in full])
    assert 480 <= np.median(hottest) <= 670


def test_a_full_load_drives_the_oven_to_380_to_480(full: list[WorldSession]) -> None:
    assert 380 <= np.median(typical(full, slice(0, 1), slice(75, 180))) <= 480


def test_side_panels_read_130_to_315(medium: list[WorldSession]) -> None:
    sides = np.array([np.median(fahrenheit(session.truth[60:180, SIDES]), axis=0) for session in medium])
    assert 130 <= np.median(sides.min(1)) <= 200
    assert 200 <= np.median(sides.max(1)) <= 315


def test_oven_walls_differ_by_up_to_about_100(medium: list[WorldSession]) -> None:
    spread = np.array([np.median(np.ptp(fahrenheit(session.truth[75:180, WALLS]), axis=1)) for session in medium])
    assert 40 <= np.median(spread) <= 110
    assert spread.max() < 180


def test_heavy_stoves_are_slower_than_light_ones(medium: list[WorldSession]) -> None:
    rise = {
        build: np.median([s.true_oven(45.0) - s.true_oven(0.0) for s in medium if s.family.startswith(build)])
        for build in ("light", "cast", "heavy")
    }
    assert rise["light"] > rise["cast"] > rise["heavy"]
