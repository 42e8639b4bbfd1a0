"""The fire lane of the session on the table."""

from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.lane import LaneRow, lane_rows_of


def lane_rows(desk: Desk) -> tuple[LaneRow, ...]:
    """The rows in force that stand in the lane."""
    return lane_rows_of(desk.entries, desk.stove)
