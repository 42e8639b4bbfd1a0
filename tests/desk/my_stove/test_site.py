"""One setting, height or barometer, behind boiling, checks, baking and draught.

Expected pressures and boiling points: rows 1.4, 1.5, 1.9, 1.10 and 1.12 of the reference checks (ICAO standard
atmosphere, altimeter-setting relation, IAPWS IF97).
"""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove import air, checks, describing
from cookstove_gui.desk.my_stove.site import (
    HOLDS_FOR,
    barometer_of,
    keep_barometer,
    keep_height,
    site_here,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.stove.checks import CheckPoint
from cookstove_gui.units import degrees

NOW = datetime(2026, 3, 14, 15, 0, tzinfo=UTC)


class Clock:
    def __init__(self) -> None:
        self.now = NOW

    def __call__(self) -> datetime:
        return self.now


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def desk(clock: Clock) -> Iterator[Desk]:
    logbook = Logbook.in_memory()
    yield Desk(logbook, clock)
    logbook.close()


def boils_celsius(desk: Desk) -> float:
    return float(degrees(site_here(desk).boiling, "C"))


@pytest.mark.parametrize(("text", "celsius"), [("1500 m", 94.983), ("5000 ft", 94.90), ("10000", 89.81)])
def test_a_height_gives_the_usual_air_there(desk: Desk, text: str, celsius: float) -> None:
    keep_height(desk, text)
    assert boils_celsius(desk) == pytest.approx(celsius, abs=0.02)


def test_a_bare_height_is_in_the_unit_on_the_screen(desk: Desk) -> None:
    desk.set_unit("C")
    keep_height(desk, "1500")
    assert desk.stove.altitude == pytest.approx(1500.0)


def test_a_weather_reports_pressure_is_brought_to_the_height(desk: Desk) -> None:
    # row "1.12-kitchen"
    keep_height(desk, "1000 m")
    site = keep_barometer(desk, "1020 hPa", as_at_sea=True)
    assert site.pressure / 100 == pytest.approx(904.871, abs=0.05)
    assert boils_celsius(desk) == pytest.approx(96.835, abs=0.01)  # and not 100.16


def test_even_low_down_it_is_not_taken_as_the_kitchens_air(desk: Desk) -> None:
    keep_height(desk, "200 m")
    keep_barometer(desk, "1030", as_at_sea=True)
    assert boils_celsius(desk) == pytest.approx(99.770, abs=0.01)
    keep_barometer(desk, "1000", as_at_sea=False)
    assert boils_celsius(desk) == pytest.approx(99.606, abs=0.01)


def test_the_airs_own_pressure_taken_for_the_seas_is_questioned(desk: Desk) -> None:
    keep_height(desk, "1500 m")
    with pytest.raises(InputProblem, match="as at the sea"):
        keep_barometer(desk, "30.1 inHg", as_at_sea=False)
    assert barometer_of(desk) is None


def test_a_pressure_that_the_sea_never_has_is_the_airs_own_and_gives_the_height(desk: Desk) -> None:
    keep_barometer(desk, "26 inHg", as_at_sea=True)
    assert degrees(site_here(desk).boiling, "F") == pytest.approx(204.95, abs=0.02)
    assert float(standard_pressure(desk.stove.altitude)) / 3386.389 == pytest.approx(26.0, abs=0.001)
    kept = barometer_of(desk)
    assert kept is not None
    assert not kept.as_at_sea


@pytest.mark.parametrize("text", ["850 psi", "3 inHg", "high", "4000 ft"])
def test_what_is_no_pressure_is_told_and_nothing_is_kept(desk: Desk, text: str) -> None:
    with pytest.raises(InputProblem, match="isn't a plausible air pressure"):
        keep_barometer(desk, text, as_at_sea=False)
    assert barometer_of(desk) is None


def test_after_a_day_the_weather_has_moved_on(desk: Desk, clock: Clock) -> None:
    keep_barometer(desk, "990 hPa", as_at_sea=True)
    assert boils_celsius(desk) < 99.5
    clock.now += HOLDS_FOR
    assert boils_celsius(desk) < 99.5
    clock.now += timedelta(minutes=1)
    assert boils_celsius(desk) == pytest.approx(99.974, abs=0.005)
    assert "more than 24 hours ago" in air.pressure_line(desk)


def test_blank_forgets_the_barometer(desk: Desk) -> None:
    keep_barometer(desk, "990 hPa", as_at_sea=True)
    keep_barometer(desk, "", as_at_sea=True)
    assert barometer_of(desk) is None
    assert boils_celsius(desk) == pytest.approx(99.974, abs=0.005)


def test_a_height_changed_under_the_barometer_is_said_not_guessed(desk: Desk) -> None:
    keep_barometer(desk, "1000 hPa", as_at_sea=False)
    keep_height(desk, "2000 m")
    assert site_here(desk).pressure / 100 == pytest.approx(794.952, abs=0.05)
    assert "type it again" in air.pressure_line(desk)


def test_checks_of_thermometers_go_by_the_weather(desk: Desk) -> None:
    keep_barometer(desk, "990 hPa", as_at_sea=True)
    right = checks.right_reading(desk, CheckPoint.BOIL)
    assert right == pytest.approx(site_here(desk).boiling, abs=1e-6)
    checks.add_instrument(desk, "dial", "probe")
    checks.record_check(desk, "dial", CheckPoint.BOIL, "211")
    made = checks.checks_of(desk)[0]
    assert made.pressure == pytest.approx(99_000.0)


def test_barometer_goes_with_a_renamed_stove(desk: Desk) -> None:
    keep_barometer(desk, "990 hPa", as_at_sea=True)
    describing.rename_stove(desk, "Range")
    assert barometer_of(desk) is not None


def test_the_height_is_asked_for_where_a_report_needs_it(desk: Desk) -> None:
    assert air.height_question(desk) == ""
    keep_barometer(desk, "1013 hPa", as_at_sea=True)
    assert "type its height" in air.height_question(desk)
    keep_height(desk, "300 m")
    assert air.height_question(desk) == ""
