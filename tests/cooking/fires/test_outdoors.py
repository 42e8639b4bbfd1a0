"""The air outdoors is taken from a note or a reading that names it, and from nothing else."""

import pytest

from cookstove_gui.cooking.fires.outdoors import outdoors_in, outdoors_of
from cookstove_gui.units import kelvin
from tests.cooking.made import log


@pytest.mark.parametrize(
    ("note", "heat"),
    [
        ("28 F outside, wind from the north", kelvin(28.0, "F")),
        ("Outside -5 °C and dry wood", kelvin(-5.0, "C")),
        ("outdoors: minus 12 C", kelvin(-12.0, "C")),
        ("cold, outside it is −3,5 °C", kelvin(-3.5, "C")),
        ("oven 350 F, door left open", None),
        ("brought in 20 logs from outside", None),
        ("went outside. 40 F oven gain", None),
        ("", None),
    ],
)
def test_notes(note: str, heat: float | None) -> None:
    assert outdoors_in(note) == (None if heat is None else pytest.approx(heat))


def test_a_bare_number_is_in_the_unit_that_the_session_reads_in() -> None:
    rows = log((0, "reading", "oven_centre", "20", "C"), (5, "note", "", "", ""))
    assert outdoors_in("outside 30", "C") == pytest.approx(kelvin(30.0, "C"))
    assert outdoors_in("outside 30") is None
    assert outdoors_of(rows) is None


def test_a_reading_named_outdoors_and_only_what_can_be_weather() -> None:
    assert outdoors_of(log((0, "reading", "outdoors", "14", "F"))) == pytest.approx(kelvin(14.0, "F"))
    assert outdoors_of(log((0, "reading", "outside", "400", "F"))) is None
