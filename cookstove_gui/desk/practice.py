"""A sample session played as if live: its own clock, faster on request, each row entered when its time comes."""

from collections.abc import Callable
from datetime import datetime, timedelta

from cookstove_gui.stove.entries import Entry

_LEAD_IN = timedelta(minutes=1)  # the clock starts a little before the first row


class PracticeClock:
    """A clock that starts at a moment of the past and runs at a chosen pace."""

    def __init__(self, start: datetime, seconds: Callable[[], float], pace: float = 60.0) -> None:
        self._seconds = seconds
        self._base = start
        self._since = seconds()
        self._pace = pace

    def __call__(self) -> datetime:
        """The moment it shows."""
        return self._base + timedelta(seconds=(self._seconds() - self._since) * self._pace)

    @property
    def pace(self) -> float:
        """Seconds shown for each second gone; 0 when it stands still."""
        return self._pace

    def set_pace(self, pace: float) -> None:
        """Run at another pace from now on."""
        self._base, self._since, self._pace = self(), self._seconds(), pace


class Practice:
    """The rows of a sample session that have not had their turn yet."""

    def __init__(self, entries: tuple[Entry, ...], seconds: Callable[[], float], pace: float = 60.0) -> None:
        self._waiting = sorted(entries, key=lambda row: (row.at, row.number))
        self.clock = PracticeClock(self._waiting[0].at - _LEAD_IN, seconds, pace)

    @property
    def is_over(self) -> bool:
        """Whether every row has had its turn."""
        return not self._waiting

    def due(self) -> tuple[Entry, ...]:
        """The rows whose time has come since the last call."""
        now = self.clock()
        ready = tuple(row for row in self._waiting if row.at <= now)
        self._waiting = self._waiting[len(ready) :]
        return ready
