"""A new session on a stove that is still warm from the last one: carry that one on, begin warm, or begin cold."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from cookstove_gui.stove.carried import CarriedHeat, carried_text
from cookstove_gui.stove.entries import Entry, Kind, Session

if TYPE_CHECKING:
    from cookstove_gui.situation import Inputs
    from cookstove_gui.units import TemperatureUnit

LONGEST_WARM = timedelta(hours=24)  # after that no stove of iron and brick is asked about; common practice, no source
CARRIED_ON = "carried on"


@dataclass(frozen=True, slots=True, kw_only=True)
class WarmStart:
    """The last session, and what is left of its heat."""

    session: Session
    last_at: datetime
    heat: CarriedHeat


def warm_start(latest: Session | None, asked: Inputs) -> WarmStart | None:
    """Whether a session begun at the moment asked about begins on a stove still warm; `asked` is about the latest."""
    if latest is None or not latest.entries:
        return None
    last_at = max(row.at for row in latest.entries)
    if not timedelta(0) <= asked.now - last_at <= LONGEST_WARM:
        return None
    from cookstove_gui.one_road import left_warm  # brings every computation: not before the first paint

    heat = left_warm(asked)
    return None if heat is None else WarmStart(session=latest, last_at=last_at, heat=heat)


def carried_row(found: WarmStart, at: datetime, offset_minutes: int, unit: TemperatureUnit) -> Entry:
    """The row by which a session begins warm, so that its log alone gives the same belief again."""
    value, note = carried_text(found.heat, unit)
    return Entry(
        number=0, at=at, offset_minutes=offset_minutes, kind=Kind.CARRIED, value=value, unit=unit, note=note
    )  # fmt: skip


def carried_on_row(at: datetime, offset_minutes: int) -> Entry:
    """The row by which a session that seemed over goes on."""
    return Entry(number=0, at=at, offset_minutes=offset_minutes, kind=Kind.NOTE, note=CARRIED_ON)
