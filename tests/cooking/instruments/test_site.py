"""Height and pressure against the standard atmosphere and the altimeter's relation."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.instruments.site import (
    height_from_text,
    pressure_from_text,
    site_at,
    site_with_barometer,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import ALTITUDES
from cookstove_gui.units import degrees


# reference 1.4, 1.5: ICAO standard atmosphere and IAPWS IF97
@pytest.mark.parametrize(
    ("text", "hectopascals", "celsius"),
    [("0 m", 1013.25, 99.974), ("1500 m", 845.56, 94.983), ("3000 m", 701.085, 89.972), ("5000 ft", 843.07, 94.90)],
)
def test_heights(text: str, hectopascals: float, celsius: float) -> None:
    site = site_at(height_from_text(text))
    assert site.pressure / 100 == pytest.approx(hectopascals, abs=0.05)
    assert degrees(site.boiling, "C") == pytest.approx(celsius, abs=0.02)


# reference 1.11: 5000 ft boils at 202.83 °F
@pytest.mark.parametrize("text", ["5000", "5,000", "5,000 ft", "5000'", "1,524 m", "1524,0 m"])
def test_a_bare_number_is_feet_and_a_comma_may_part_thousands(text: str) -> None:
    assert degrees(site_at(height_from_text(text)).boiling, "F") == pytest.approx(202.83, abs=0.02)


def test_a_bare_number_may_be_metres() -> None:
    assert height_from_text("1500", "m") == 1500.0
    assert height_from_text("1,5 m") == 1.5


# reference 1.8: 850 hPa is 1457 m of the standard atmosphere (published table)
def test_a_pressure_alone_gives_the_height() -> None:
    site = site_with_barometer(0.0, pressure_from_text("850 hPa"), as_at_sea=False)
    assert site.altitude == pytest.approx(1457, abs=1)
    assert degrees(site.boiling, "C") == pytest.approx(95.125, abs=0.005)  # reference 1.9


# reference 1.10: 26 inHg boils at 204.95 °F
def test_inches_of_mercury() -> None:
    site = site_with_barometer(0.0, pressure_from_text("26"), as_at_sea=True)
    assert degrees(site.boiling, "F") == pytest.approx(204.95, abs=0.02)


# reference 1.12 and its trap: reduced 1020 hPa at 1000 m is 904.871 hPa there, boils at 96.835 °C, not at 100.16 °C
def test_a_weather_reports_pressure_is_not_taken_as_the_kitchens() -> None:
    site = site_with_barometer(1000.0, pressure_from_text("1020 hPa"), as_at_sea=True)
    assert site.pressure / 100 == pytest.approx(904.871, abs=0.05)
    assert degrees(site.boiling, "C") == pytest.approx(96.835, abs=0.01)
    assert "sea level" in site.note


def test_a_pressure_that_fits_the_height_is_the_kitchens() -> None:
    site = site_with_barometer(1000.0, 89_000.0, as_at_sea=False)
    assert (site.pressure, site.note) == (89_000.0, "")


@pytest.mark.parametrize("text", ["high up", "", "12000 m", "-900 m", "850 hPa", "1e3 m"])
def test_what_is_no_height(text: str) -> None:
    with pytest.raises(InputProblem, match="height"):
        height_from_text(text)


@pytest.mark.parametrize("text", ["high", "", "30 hPa", "850 psi", "2000 hPa", "5000 ft"])
def test_what_is_no_pressure(text: str) -> None:
    with pytest.raises(InputProblem, match="air pressure"):
        pressure_from_text(text)


def test_a_pressure_that_fits_nothing_is_questioned() -> None:
    with pytest.raises(InputProblem, match="correct one of them"):
        site_with_barometer(3000.0, 85_000.0, as_at_sea=False)
    with pytest.raises(InputProblem, match="as at the sea"):
        site_with_barometer(3000.0, 101_000.0, as_at_sea=False)


@given(st.floats(*ALTITUDES), st.floats(1, 400))
def test_higher_boils_cooler(altitude: float, more: float) -> None:
    assert site_at(altitude + more).boiling < site_at(altitude).boiling
