"""What an owner is asked once, for the cautions: what the flue thermometer reads, and whether there is a water-back."""

from dataclasses import replace

from cookstove_gui.desk.desk import Desk
from cookstove_gui.stove.stove import FlueReading

FLUE_READINGS = tuple((str(kind), str(kind)) for kind in FlueReading)
WATER_BACKS = (("no", "none"), ("yes", "in or behind the firebox"))


def keep_flue_reading(desk: Desk, key: str) -> None:
    """Keep what a reading of the flue is of."""
    desk.save_stove(replace(desk.stove, flue_reading=FlueReading(key)))


def keep_water_back(desk: Desk, key: str) -> None:
    """Keep whether water is heated in or behind the firebox."""
    desk.save_stove(replace(desk.stove, has_water_back=key == "yes"))
