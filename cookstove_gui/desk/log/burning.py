"""Whether a fire burns by the log, and since when."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from cookstove_gui.situation import fire_is_out
from cookstove_gui.stove.entries import Kind

if TYPE_CHECKING:
    from cookstove_gui.desk.desk import Desk


def burning_since(desk: Desk) -> datetime | None:
    """When the fire that burns now was lit; none where no lit row stands, or the fire is out by log or belief."""
    if not desk.is_live or (desk.standing is not None and fire_is_out(desk.standing.turns)):
        return None
    latest = next((row for row in reversed(desk.entries) if row.kind in (Kind.LIT, Kind.OUT)), None)
    return latest.at if latest is not None and latest.kind is Kind.LIT else None
