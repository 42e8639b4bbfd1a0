"""Units and the wanted band are kept as they were chosen, and mean the same after a restart."""

import pytest

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import kelvin


def again(desk: Desk) -> Desk:
    """The desk after a restart."""
    return Desk(desk.logbook, desk.clock)


def test_a_unit_is_kept_and_told(held_desk: Desk) -> None:
    told: list[Changed] = []
    held_desk.subscribe(told.append)
    assert held_desk.unit == "F"
    held_desk.set_unit("C")
    assert told == [Changed(settings=True)]
    assert (again(held_desk).unit, again(held_desk).mass_unit) == ("C", "kg")


def test_a_band_typed_in_celsius_is_the_same_band_once_fahrenheit_is_on(held_desk: Desk) -> None:
    held_desk.set_unit("C")
    held_desk.choose_band("200-220")
    held_desk.set_unit("F")
    band = again(held_desk).band
    assert band.low == pytest.approx(kelvin(200.0, "C"))
    assert band.high == pytest.approx(kelvin(220.0, "C"))


def test_a_band_that_means_nothing_is_refused_and_the_old_one_stays(held_desk: Desk) -> None:
    held_desk.choose_band("pie")
    with pytest.raises(InputProblem):
        held_desk.choose_band("as hot as you like")
    assert held_desk.band.name == "pie"
    assert again(held_desk).band.name == "pie"


def test_a_kept_band_that_means_nothing_any_more_is_bread(held_desk: Desk) -> None:
    held_desk.set_setting("band", "a name that no table has")
    assert again(held_desk).band.name == "bread"


def test_the_named_bands_are_those_of_the_table_chosen(held_desk: Desk) -> None:
    names = {band.name for band in held_desk.bands}
    assert "bread" in names
    assert {"slow", "moderate", "hot"} <= names


def test_other_settings_are_kept_by_name(held_desk: Desk) -> None:
    assert held_desk.setting("walls", "unsaid") == "unsaid"
    held_desk.set_setting("walls", "brick")
    assert again(held_desk).setting("walls", "unsaid") == "brick"
