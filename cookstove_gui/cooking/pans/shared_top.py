"""Which pans on the cooktop the heat model counts: what they draw is in its futures already."""

from collections.abc import Iterable
from datetime import datetime, timedelta

from cookstove_gui.forecast.model.heat import PAN_STAYS
from cookstove_gui.stove.entries import Entry, pans_standing


def pans_counted(rows: Iterable[Entry], now: datetime) -> frozenset[str]:
    """Spots where a pan stands by the log, as the heat model counts them: one that nobody took off not for ever."""
    recent = [row for row in rows if row.at <= now and now - row.at < timedelta(minutes=PAN_STAYS)]
    return frozenset(pans_standing(recent))
