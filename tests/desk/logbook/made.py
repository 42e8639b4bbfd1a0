"""Made-up sessions in a desk's logbook."""

from dataclasses import replace
from datetime import datetime, timedelta

from cookstove_gui.desk import Desk
from cookstove_gui.stove.entries import Entry, Kind


def keep(
    desk: Desk,
    title: str,
    began: datetime,
    heats: tuple[float, ...] = (80, 200, 330, 400),
    note: str = "",
    step: int = 25,
) -> int:
    """A firing whose oven was read every so many minutes; returns its number."""
    rows = [_row(began, Kind.LIT), _row(began + timedelta(minutes=2), Kind.WOOD, note="two splits birch")]
    for place, heat in enumerate(heats):
        at = began + timedelta(minutes=3 + step * place)
        rows.append(_row(at, Kind.READING, spot="oven_centre", value=f"{heat:g}", unit="F"))
    if note:
        rows.append(_row(rows[-1].at + timedelta(minutes=1), Kind.NOTE, note=note))
    numbered = [replace(row, number=place) for place, row in enumerate(rows, start=1)]
    return desk.logbook.add_session(desk.stove.name, title, numbered).number


def _row(at: datetime, kind: Kind, spot: str = "", value: str = "", unit: str = "", note: str = "") -> Entry:
    return Entry(number=0, at=at, offset_minutes=-300, kind=kind, spot=spot, value=value, unit=unit, note=note)
