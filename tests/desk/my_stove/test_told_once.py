"""What the owner is asked once is kept with the stove, also over a restart."""

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.told_once import FLUE_READINGS, WATER_BACKS, keep_flue_reading, keep_water_back


@pytest.mark.parametrize("key", [key for key, _ in FLUE_READINGS])
def test_what_the_flue_thermometer_reads_is_kept(held_desk: Desk, key: str) -> None:
    keep_flue_reading(held_desk, key)
    assert str(Desk(held_desk.logbook, held_desk.clock).stove.flue_reading) == key


def test_a_water_back_is_there_or_not(held_desk: Desk) -> None:
    kept = []
    for key, _ in reversed(WATER_BACKS):
        keep_water_back(held_desk, key)
        kept.append(Desk(held_desk.logbook, held_desk.clock).stove.has_water_back)
    assert kept == [True, False]
