"""The stretch of time that is seen: one for the plot, the clock, the fire lane and the rows below them."""

from datetime import datetime, timedelta

from PySide6.QtCore import QObject, Signal

from cookstove_gui.gui.widgets.steps import px, scale

AXIS_WIDTH = 38  # left of the plot, for the words of its axis [px of the design]
NOW_SHARE = 0.45  # of the width that lies before now
_AHEAD, _MOST_AHEAD = 112.0, 180.0  # min
_AHEAD_WIDTH = 726.0  # of a plot that looks _AHEAD [px of the design]; a wider one looks further
_BEYOND = 20.0  # min seen beyond an arrival, if the axis may reach so far
_MARGIN = 0.02  # of an old session, left free at both ends


class TimeSpan(QObject):
    """Minutes from an anchor, seen from `low` to `high`; it follows now until it is moved by hand."""

    moved = Signal()  # what is seen, or now
    followed = Signal(bool)  # whether it follows now

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.anchor: datetime | None = None
        self.offset_minutes = 0
        self.now: float | None = None
        self.low, self.high = 0.0, 1.0
        self.follows = True
        self._first, self._end = 0.0, 1.0  # how far it may be moved
        self._ahead = _AHEAD
        self._width = _AHEAD_WIDTH
        self._is_live = True
        self.likely: float | None = None  # the moment that the plot marks
        self._arrival: float | None = None
        self._seen: tuple[object, ...] = ()

    def show_session(
        self, anchor: datetime, now: datetime, *, offset_minutes: int, is_live: bool, arrival: datetime | None
    ) -> None:
        """A session that began at the anchor; `now` is its end if it is over."""
        if anchor != self.anchor or is_live is not self._is_live:
            self.follows = True
        self.anchor, self.offset_minutes, self._is_live = anchor, offset_minutes, is_live
        self.now = self.place(now)
        self._arrival = None if arrival is None else self.place(arrival)
        self._lay_out()

    def set_width(self, width: float) -> None:
        """How wide the widget is that shows it [px], the axis' words included."""
        wanted = max(width - px(AXIS_WIDTH), 1.0) / scale()
        if wanted != self._width:
            self._width = wanted
            self._lay_out()

    def place(self, at: datetime) -> float:
        """Minutes of an instant from the anchor."""
        return 0.0 if self.anchor is None else (at - self.anchor).total_seconds() / 60.0

    def at(self, place: float) -> datetime:
        """The instant at a place."""
        assert self.anchor is not None
        return self.anchor + timedelta(minutes=place)

    def x(self, place: float, width: float) -> float:
        """Where a place lies [px] in a widget of that width."""
        left = px(AXIS_WIDTH)
        return left + (place - self.low) / max(self.high - self.low, 1e-9) * (width - left)

    def minute(self, x: float, width: float) -> float:
        """The place at a pixel."""
        left = px(AXIS_WIDTH)
        return self.low + (x - left) / max(width - left, 1.0) * (self.high - self.low)

    def move(self, minutes: float) -> None:
        """Look further back (below 0) or ahead; not beyond what there is."""
        length = self.high - self.low
        low = min(max(self.low + minutes, self._first - 0.5 * length), self._end - 0.5 * length)
        if low != self.low:
            self.low, self.high = low, low + length
            self._follow(False)
            self.moved.emit()

    def set_likely(self, place: float | None) -> None:
        """The moment whose stem runs down through all that is below the plot."""
        if place != self.likely:
            self.likely = place
            self.moved.emit()

    def return_to_now(self) -> None:
        """Follow now again."""
        self._follow(True)
        self._lay_out()

    def _follow(self, wanted: bool) -> None:
        if wanted is not self.follows:
            self.follows = wanted
            self.followed.emit(wanted)

    def _lay_out(self) -> None:
        if self.now is None:
            return
        before = self._seen
        self._first, self._end = 0.0, self.now + (_MOST_AHEAD if self._is_live else 0.0)
        if self.follows and not self._is_live:
            room = _MARGIN * max(self.now, 30.0)
            self.low, self.high = -room, max(self.now, 30.0) + room
        elif self.follows:
            ahead = max(_AHEAD * self._width / _AHEAD_WIDTH, _AHEAD)
            if self._arrival is not None and self._arrival - self.now > ahead - _BEYOND:
                ahead = self._arrival - self.now + _BEYOND
            ahead = min(ahead, _MOST_AHEAD)
            self.low, self.high = self.now - ahead * NOW_SHARE / (1.0 - NOW_SHARE), self.now + ahead
        self._seen = (self.anchor, self.offset_minutes, self.now, self.low, self.high, self._width)
        if self._seen != before:
            self.moved.emit()
