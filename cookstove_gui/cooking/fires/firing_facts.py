"""What one session's log shows of its fires, by plain arithmetic: when, how long, how much wood, how hot the oven."""

from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.cooking.fires.logged_fires import (
    Fire,
    fires,
    kelvin_or_none,
    minutes_between,
    readings_of,
    standing_rows,
)
from cookstove_gui.cooking.fires.rise_and_hold import Hold, rise_and_hold
from cookstove_gui.cooking.fires.wood_needs import kilograms_of
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import Stove

LONE = 100.0 / 1.8  # K; an oven reading so far above or below both its neighbours is a slip of the pen; judgement

Reading = tuple[float, float]  # minutes since the fire was lit, K


@dataclass(frozen=True, slots=True, kw_only=True)
class FiringFacts:
    """One session in numbers."""

    session: int
    began: datetime  # the first lighting or load; the first entry where the log has neither
    ended: datetime  # the last entry
    offset_minutes: int  # of the local clock when it began
    lit: tuple[tuple[datetime, datetime], ...]  # each fire, until its last entry or until it went out
    loads: int
    weighed: int  # loads whose amount the log tells
    wood: float  # kg, of those
    curve: tuple[Reading, ...]  # of the oven
    hottest: Reading | None  # of the oven
    rise_min: float | None  # from lighting a cold oven to the heat asked about
    hold: Hold | None  # of that heat

    @property
    def lit_minutes(self) -> float:
        """How long a fire burnt, by the log."""
        return sum(minutes_between(start, end) for start, end in self.lit)


def firing_facts(stove: Stove, session: Session, band: HeatBand) -> FiringFacts | None:
    """A session in numbers, its rise and hold those of the band; none for a session without entries in force."""
    rows = standing_rows(session.entries)
    if not rows:
        return None
    found = fires(stove, (session,))
    began = found[0].began if found else rows[0].at
    wood = [row for row in rows if row.kind is Kind.WOOD]
    masses = [mass for row in wood if (mass := kilograms_of(row)) is not None]
    curve = sound_curve(readings_of(rows, stove.oven_spot, began))
    rise = rise_and_hold(stove, (session,), band)
    return FiringFacts(
        session=session.number,
        began=began,
        ended=rows[-1].at,
        offset_minutes=rows[0].offset_minutes,
        lit=tuple((fire.began, _until(fire)) for fire in found),
        loads=len(wood),
        weighed=len(masses),
        wood=sum(masses),
        curve=curve,
        hottest=max(curve, key=lambda reading: reading[1], default=None),
        rise_min=rise.rises[0] if rise.rises else None,
        hold=rise.holds[0] if rise.holds else None,
    )


def sound_curve(readings: list[Reading]) -> tuple[Reading, ...]:
    """Readings in order of time without those that stand alone, far above or far below both their neighbours."""
    ends = range(1, len(readings) - 1)
    lone = {place for place in ends if _is_lone(*(readings[place + step][1] for step in (-1, 0, 1)))}
    return tuple(reading for place, reading in enumerate(readings) if place not in lone)


def mean_of_spot(rows: tuple[Entry, ...], spot: str) -> float | None:
    """Mean [K] of a spot's usable readings; none without any."""
    heats = [heat for row in rows if row.spot == spot and (heat := kelvin_or_none(row)) is not None]
    return sum(heats) / len(heats) if heats else None


def _is_lone(before: float, heat: float, after: float) -> bool:
    return min(heat - before, heat - after) > LONE or min(before - heat, after - heat) > LONE


def _until(fire: Fire) -> datetime:
    return next((row.at for row in fire.rows if row.kind is Kind.OUT), fire.rows[-1].at)
