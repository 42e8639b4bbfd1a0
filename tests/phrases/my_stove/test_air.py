"""Height and weather in words: pressure, boiling in the unit on the screen, and the hints of thin air."""

from datetime import UTC, datetime

from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.instruments.site import Site, site_at
from cookstove_gui.phrases.my_stove.air import (
    ABOUT_BAROMETERS,
    ASK_HEIGHT,
    altitude_hints,
    boiling_line,
    read_pressure_line,
    stale_barometer,
    usual_pressure_line,
)

READ = datetime(2026, 1, 6, 1, 30, tzinfo=UTC)  # 20:30 on the 5th, five hours behind


# 5000 ft: water boils at 202.8 °F by IAPWS-IF97 at the standard atmosphere's 843 hPa
def test_boiling_in_both_units() -> None:
    assert boiling_line(site_at(1524.0), "F") == "Water boils at 202.8 °F here."
    assert boiling_line(site_at(1524.0), "C") == "Water boils at 94.9 °C here."


def test_hints_come_with_height() -> None:
    assert altitude_hints(site_at(0.0), "F") == ()
    low, high = altitude_hints(site_at(700.0), "F"), altitude_hints(site_at(2000.0), "F")
    assert 0 < len(low) < len(high)
    assert "200 °F" in high[0]  # reference 1.5: 93.315 °C
    assert "93 °C" in altitude_hints(site_at(2000.0), "C")[0]
    assert any("Yeast dough rises faster" in hint for hint in high)


# 1013.25 hPa is 29.92 inHg (conventional, 0 °C)
def test_the_pressure_says_where_it_comes_from() -> None:
    site = Site(altitude=0.0, pressure=101_325.0)
    assert usual_pressure_line(site) == (
        "The air pressure is taken as 29.92 inHg (1013 hPa), as usual at this height. "
        "Boiling, thermometer checks, baking and draught all go by it."
    )
    assert usual_pressure_line(site, "Why not.").endswith("as usual at this height. Why not.")
    assert read_pressure_line(site, READ, -300) == (
        "The air pressure is 29.92 inHg (1013 hPa), by the barometer read at 20:30."
    )


def test_an_old_barometer_is_dated_on_the_local_clock() -> None:
    assert stale_barometer(READ, -300, 24) == "The barometer was read more than 24 hours ago, at 20:30 on 5 January."


@given(st.floats(-400, 5000), st.sampled_from("FC"))
def test_no_hint_leaves_a_gap(altitude: float, unit: str) -> None:
    told = " ".join((boiling_line(site_at(altitude), unit), *altitude_hints(site_at(altitude), unit)))
    assert "{" not in told
    assert f"°{unit}" in told


def test_what_a_barometer_shows_is_asked() -> None:
    assert "sea level" in ABOUT_BAROMETERS
    assert "type its height" in ASK_HEIGHT
