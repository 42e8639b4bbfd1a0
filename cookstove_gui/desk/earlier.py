"""The sessions that count as first fires of a new stove; a stove fired before needs none."""

from __future__ import annotations

from typing import TYPE_CHECKING

from cookstove_gui.cooking.fires.first_fires import FirstFires, progress

if TYPE_CHECKING:
    from cookstove_gui.logbook.logbook import Logbook
    from cookstove_gui.stove.entries import Session
    from cookstove_gui.stove.stove import Stove


def first_fires(logbook: Logbook, stove: Stove) -> FirstFires:
    """How far a stove is through its first fires."""
    return progress(stove, earlier_fires(logbook, stove, None))


def earlier_fires(logbook: Logbook, stove: Stove, session: Session | None) -> tuple[Session, ...]:
    """The sessions that began before one, or all."""
    if not stove.is_new or stove.first_fires_waived:
        return ()
    return logbook.past_sessions(stove.name, before=session.number if session else None)
