"""The very first start: nothing was ever logged here, and the cook has not chosen how to begin."""

from cookstove_gui.desk.desk import Desk

_BEGUN = "begun"


def is_first_start(desk: Desk) -> bool:
    """Whether the three ways to begin are offered."""
    if desk.entries or desk.setting(_BEGUN) == "yes" or desk.first_fires.next is not None:
        return False
    return not desk.logbook.sessions()


def begin(desk: Desk) -> None:
    """The cook has chosen to light the fire; what holds for an empty stove holds from now on."""
    desk.set_setting(_BEGUN, "yes")


def greeting(desk: Desk) -> str:
    """By the clock of the kitchen."""
    hour = (desk.clock().hour + desk.offset_minutes / 60) % 24
    part = "morning" if 4 <= hour < 12 else "afternoon" if 12 <= hour < 18 else "evening"
    return f"Good {part}. No fire is lit yet."
