"""The earlier sessions in which the same things were baked, for what they teach of the next."""

from __future__ import annotations

from typing import TYPE_CHECKING

from cookstove_gui.stove.entries import Kind, Session

if TYPE_CHECKING:
    from cookstove_gui.logbook.logbook import Logbook
    from cookstove_gui.stove.stove import Stove


class Baked:
    """Looks each name up once for a session: the past before it doesn't change while it is written."""

    def __init__(self, logbook: Logbook) -> None:
        self._logbook = logbook
        self._found: dict[tuple[str, str, int | None], tuple[Session, ...]] = {}

    def of(self, stove: Stove, name: str, session: Session | None) -> tuple[Session, ...]:
        """The sessions of a stove before this one in which something of that name went into the oven."""
        key = (stove.name, name.strip().casefold(), session.number if session else None)
        if key not in self._found:
            self._found[key] = self._logbook.sessions_that_baked(stove.name, name.strip(), key[2])
        return self._found[key]

    def of_inside(self, stove: Stove, session: Session | None) -> tuple[Session, ...]:
        """The same of everything that went into the oven in this session."""
        put_in = {row.note for row in (session.entries if session else ()) if row.kind is Kind.OVEN_IN}
        found = {one.number: one for name in put_in for one in self.of(stove, name, session)}
        return tuple(found[number] for number in sorted(found))
