"""Which session is on the table: begun cold or with the heat left over, carried on, looked at again, renamed."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING

from cookstove_gui.desk.changes import Changed
from cookstove_gui.desk.warm_start import WarmStart, carried_on_row, carried_row, warm_start
from cookstove_gui.units import local_offset_minutes

if TYPE_CHECKING:
    from cookstove_gui.desk.log.on_table import OnTable
    from cookstove_gui.desk.log.walk import LitSpot
    from cookstove_gui.desk.settings import Settings
    from cookstove_gui.desk.shown import Shown
    from cookstove_gui.situation import Inputs
    from cookstove_gui.stove.entries import Session
    from cookstove_gui.stove.stove import Stove


class Sessions:
    """Puts sessions on the table; with another one there nothing shown holds any more."""

    def __init__(
        self,
        table: OnTable,
        lit: LitSpot,
        shown: Shown,
        settings: Settings,
        clock: Callable[[], datetime],
        announce: Callable[[Changed], None],
        asked: Callable[[Stove, Session | None, datetime], Inputs],
    ) -> None:
        self._table = table
        self._lit = lit
        self._shown = shown
        self._settings = settings
        self._clock = clock
        self._announce = announce
        self._asked = asked
        self.warm: WarmStart | None = None  # what the cook is asked before a new session begins

    def start_session(self, title: str = "") -> None:
        """Begin a new session, as if the stove were cold."""
        self.warm = None
        self._table.start_session(title)
        self.begin_again(Changed(session=True, log=True, walk=True))

    def ask_new_session(self) -> None:
        """Begin a new session; on a stove still warm from the last one the cook is asked first, in `warm`."""
        self.warm = self._still_warm()
        if self.warm is None:
            self.start_session()
        else:
            self._announce(Changed(session=True))

    def leave_warm_start(self) -> None:
        """Begin no new session."""
        self.warm = None
        self._announce(Changed(session=True))

    def start_warm(self) -> None:
        """Begin a new session with the heat that is left of the last one."""
        found = self.warm or self._still_warm()
        self.start_session()
        if found is not None:
            now = self._clock()
            self._table.append([carried_row(found, now, local_offset_minutes(now), self._settings.unit)])
            self._announce(Changed(log=True))

    def carry_on(self) -> None:
        """Go on with the last session instead of a new one."""
        found, self.warm = self.warm, None
        if found is None:
            return
        self.open_session(found.session.number)
        if not self._table.is_live:
            now = self._clock()
            self._table.append([carried_on_row(now, local_offset_minutes(now))])
            self._announce(Changed(session=True, log=True))

    def open_session(self, number: int) -> None:
        """Put a session of the logbook on the table."""
        self.warm = None
        self._table.open_session(number)
        self.begin_again(Changed(stove=True, session=True, log=True, walk=True))

    def clear_table(self) -> None:
        """Take the session off the table; none is there until one is begun or opened."""
        self.warm = None
        self._table.clear()
        self.begin_again(Changed(session=True, log=True, walk=True))

    def rename_session(self, number: int, title: str) -> None:
        """Give a session another title."""
        self._table.rename_session(number, title)
        self._announce(Changed(session=True))

    def begin_again(self, changed: Changed) -> None:
        """Another session or stove is on the table: nothing shown holds any more."""
        self._lit.begin_again(self._table.stove)
        self._shown.forget()
        self._announce(changed)

    def _still_warm(self) -> WarmStart | None:
        latest = self._table.latest
        return warm_start(latest, self._asked(self._table.stove, latest, self._clock()))
