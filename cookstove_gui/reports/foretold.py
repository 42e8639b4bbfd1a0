"""Which of a session's projections is shown against what came."""

from collections.abc import Sequence

from cookstove_gui.forecast.answers import RecordRow
from cookstove_gui.stove.entries import HeatBand

_AN_HOUR = 60.0  # min ahead: of several projections of one heat the one given about then is shown


def shown_projection(rows: Sequence[RecordRow], band: HeatBand) -> RecordRow | None:
    """Of the heat wanted, else of the hottest heat that came, the projection given about an hour ahead."""
    came = [row for row in rows if row.came_true_min is not None and row.likely_min is not None]
    wanted = [row for row in came if row.band.low == band.low]
    hottest = max((row.band.low for row in came), default=None)
    own = wanted or [row for row in came if row.band.low == hottest]
    return min(own, key=lambda row: abs((row.likely_min or 0.0) - _AN_HOUR), default=None)
