"""Readings as the forecast takes them: infrared ones corrected for a wrong emissivity setting. The log is unchanged.

A setting within the range of emissivities that the surface may have is not known to be wrong, so nothing is corrected
then; nor on a shiny surface, which no correction makes good, nor where no infrared thermometer is described.
"""

from collections.abc import Iterable
from dataclasses import replace

from cookstove_gui.cooking.fires.logged_fires import kelvin_or_none
from cookstove_gui.cooking.instruments.surface_readings import corrected_reading, surface_at, surfaces
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import INFRARED, Instrument, Spot, SpotKind, Stove
from cookstove_gui.units import degrees, tidy

_POINTED_AT = (SpotKind.TOP, SpotKind.SIDE, SpotKind.GLASS)


def meant_rows(stove: Stove, rows: Iterable[Entry]) -> tuple[Entry, ...]:
    """The rows with every infrared reading corrected for its surface.

    The instrument's error is left in: the forecast takes it off together with its doubt.
    """
    if all(one.kind != INFRARED for one in stove.instruments):
        return tuple(rows)
    return tuple(_meant(stove, row) for row in rows)


def meant_sessions(stove: Stove, sessions: Iterable[Session]) -> tuple[Session, ...]:
    """Past sessions with their infrared readings corrected."""
    return tuple(replace(session, entries=meant_rows(stove, session.entries)) for session in sessions)


def meant_kelvin(stove: Stove, row: Entry) -> float | None:
    """A reading as corrected [K]; None if it stays as typed."""
    meant = meant_rows(stove, (row,))[0]
    return kelvin_or_none(meant) if meant is not row else None


def infrared_at(stove: Stove, spot: Spot) -> Instrument | None:
    """The infrared thermometer that a spot is read with: its own, or the first for parts that are pointed at."""
    own = stove.instrument_named(spot.instrument)
    if own is not None:
        return own if own.kind == INFRARED else None
    if spot.kind not in _POINTED_AT:
        return None
    return next((one for one in stove.instruments if one.kind == INFRARED), None)


def _meant(stove: Stove, row: Entry) -> Entry:
    spot = stove.spot(row.spot) if row.kind is Kind.READING else None
    typed = kelvin_or_none(row)
    instrument = infrared_at(stove, spot) if spot is not None else None
    if spot is None or instrument is None or typed is None or not _is_set_wrong(stove, instrument, spot):
        return row
    true = corrected_reading(typed, instrument, surface_at(stove, spot)).corrected
    corrected = true + instrument.error(true)
    if abs(corrected - typed) < 0.5:
        return row
    return replace(row, value=tidy(degrees(corrected, row.unit), 2))


def _is_set_wrong(stove: Stove, instrument: Instrument, spot: Spot) -> bool:
    said = spot.surface or (stove.cooktop_surface if spot.kind is SpotKind.TOP else "")
    if said and all(surface.name != said for surface in surfaces()):
        return False
    surface = surface_at(stove, spot)
    return not surface.shiny and not surface.low <= instrument.emissivity <= surface.high
