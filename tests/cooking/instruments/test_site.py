"""Height and pressure against the standard atmosphere and the altimeter's relation."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.instruments.site import site_at, site_from_text
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import degrees


# reference 1.4, 1.5: ICAO standard atmosphere and IAPWS IF97
@pytest.mark.parametrize(
    ("text", "hectopascals", "celsius"),
    [("0 m", 1013.25, 99.974), ("1500 m", 845.56, 94.983), ("3000 m", 701.085, 89.972), ("5000 ft", 843.07, 94.90)],
)
def test_heights(text: str, hectopascals: float, celsius: float) -> None:
    site = site_from_text(text)
    assert site.pressure / 100 == pytest.approx(hectopascals, abs=0.05)
    assert degrees(site.boiling, "C") == pytest.approx(celsius, abs=0.02)


# reference 1.11: 5000 ft boils at 202.83 °F
def test_a_bare_number_is_feet() -> None:
    assert degrees(site_from_text("5000").boiling, "F") == pytest.approx(202.83, abs=0.02)


# reference 1.8: 850 hPa is 1457 m of the standard atmosphere (published table)
def test_a_pressure_alone_gives_the_height() -> None:
    site = site_from_text("850 hPa")
    assert site.altitude == pytest.approx(1457, abs=1)
    assert degrees(site.boiling, "C") == pytest.approx(95.125, abs=0.005)  # reference 1.9


# reference 1.10: 26 inHg boils at 204.95 °F
def test_inches_of_mercury() -> None:
    assert degrees(site_from_text("26 inHg").boiling, "F") == pytest.approx(204.95, abs=0.02)


# reference 1.12 and its trap: reduced 1020 hPa at 1000 m is 904.871 hPa there, boils at 96.835 °C, not at 100.16 °C
def test_a_weather_reports_pressure_is_not_taken_as_the_kitchens() -> None:
    site = site_from_text("1020 hPa", altitude=1000.0)
    assert site.pressure / 100 == pytest.approx(904.871, abs=0.05)
    assert degrees(site.boiling, "C") == pytest.approx(96.835, abs=0.01)
    assert "sea level" in site.note


def test_a_pressure_that_fits_the_height_is_the_kitchens() -> None:
    site = site_from_text("890 hPa", altitude=1000.0)
    assert site.pressure == 89_000.0
    assert site.note == ""


@pytest.mark.parametrize("text", ["high up", "", "12000 m", "-900 m", "30 hPa", "850 psi", "2000 hPa", "1e3 m"])
def test_what_is_no_site(text: str) -> None:
    with pytest.raises(InputProblem):
        site_from_text(text)


def test_a_pressure_that_fits_nothing_is_questioned() -> None:
    with pytest.raises(InputProblem, match="mend one of them"):
        site_at(3000.0, 85_000.0)


@given(st.floats(-400, 5000), st.floats(1, 400))
def test_higher_boils_cooler(altitude: float, more: float) -> None:
    assert site_at(altitude + more).boiling < site_at(altitude).boiling
