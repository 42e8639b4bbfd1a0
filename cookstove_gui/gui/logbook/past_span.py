"""The stretch of time of a session that is over: all of it is seen, and there is no now in it."""

from datetime import datetime

from cookstove_gui.gui.time_axis.span import TimeSpan

_MARGIN = 0.02  # of the session, left free at both ends
_LEAST_MIN = 30.0


class PastSpan(TimeSpan):
    """Minutes from a session's first entry."""

    def show_past(self, began: datetime, minutes: float, offset_minutes: int) -> None:
        """See all of a session of that length, and a little beyond its ends."""
        length = max(minutes, _LEAST_MIN)
        room = _MARGIN * length
        self.anchor, self.offset_minutes = began, offset_minutes
        self.low, self.high = -room, length + room
        self.now = self.high + 1.0  # beyond what is seen
        self.moved.emit()
