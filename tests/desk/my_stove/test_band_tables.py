"""Names of oven heats are read in the table that was chosen (resources/bands.toml says where each was published)."""

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.band_tables import band_table, choose_band_table, table_words
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import degrees


def limits(desk: Desk) -> tuple[int, int]:
    return round(degrees(desk.band.low, "F")), round(degrees(desk.band.high, "F"))


def test_a_name_means_what_the_chosen_table_says(held_desk: Desk) -> None:
    held_desk.choose_band("hot")
    assert limits(held_desk) == (400, 450)
    choose_band_table(held_desk, "narrow")
    assert limits(held_desk) == (400, 425)
    assert "very slow" in {band.name for band in held_desk.bands}


def test_a_name_that_the_table_lacks_gives_way_to_bread(held_desk: Desk) -> None:
    choose_band_table(held_desk, "narrow")
    held_desk.choose_band("very slow")
    choose_band_table(held_desk, "points")
    assert held_desk.band.name == "bread"


def test_what_was_typed_in_degrees_stays(held_desk: Desk) -> None:
    held_desk.choose_band("410-440")
    choose_band_table(held_desk, "points")
    assert limits(held_desk) == (410, 440)


def test_the_choice_is_kept(held_desk: Desk) -> None:
    choose_band_table(held_desk, "narrow")
    held_desk.choose_band("slow")
    again = Desk(held_desk.logbook, held_desk.clock)
    assert band_table(again).key == "narrow"
    assert limits(again) == (300, 325)


def test_the_words_tell_heats_and_source(held_desk: Desk) -> None:
    told = table_words(held_desk)
    assert told.startswith("Slow 250 to 350, moderate 350 to 400")
    assert "1942" in told


def test_a_table_there_is_not_is_told(held_desk: Desk) -> None:
    with pytest.raises(InputProblem):
        choose_band_table(held_desk, "modern")
