"""What the plot marks on the band: when the oven comes to it or leaves it, in the headline's own words and moments."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from cookstove_gui.forecast.answers import HORIZON_MINUTES
from cookstove_gui.forecast.futures.arrival import Arrival, arrival_of, leaves_upward, leaving_of, touching_of
from cookstove_gui.phrases.advice import between_words, likely_words, until_words
from cookstove_gui.situation import Standing, was_read

if TYPE_CHECKING:
    from cookstove_gui.desk.desk import Desk


@dataclass(frozen=True, slots=True, kw_only=True)
class BandMark:
    """Words at an edge of the band, and the stretch of time that they are about if there is one."""

    words: str
    more: str = ""  # in smaller type
    kelvin: float  # the edge
    window: tuple[datetime, datetime, datetime] | None = None  # earliest, likely, latest


def band_mark(desk: Desk) -> BandMark | None:
    """The mark for the standing on the table; none of an old session, before any reading or while first fires run."""
    standing = desk.standing
    if standing is None or standing.band != desk.band or not desk.is_live or not was_read(desk.entries):
        return None
    oven = standing.outlook.oven.p50
    if oven is None or standing.first_fires.next is not None:
        return None
    if desk.band.holds(oven):
        return _leaving(standing, desk)
    nearer = desk.band.high if oven > desk.band.high else desk.band.low
    arrival = arrival_of(standing.outlook)
    if arrival is None:
        touches = touching_of(standing.outlook)
        said = f"not likely by {desk.edge.clock(HORIZON_MINUTES)}"
        return BandMark(words=said if touches is None else f"may touch it {desk.edge.at(touches)}", kelvin=nearer)
    latest = arrival.latest or standing.now + timedelta(minutes=HORIZON_MINUTES)
    return BandMark(
        words=likely_words(arrival, desk.edge),
        more=between_words(arrival, desk.edge),
        kelvin=nearer,
        window=(arrival.earliest, arrival.likely, latest),
    )


def arrival_to_come(desk: Desk) -> Arrival | None:
    """The arrival that the mark is about; none if the oven is there or is not likely to come."""
    mark, standing = band_mark(desk), desk.standing
    return arrival_of(standing.outlook) if mark and mark.more and standing else None


def _leaving(standing: Standing, desk: Desk) -> BandMark:
    leaves = leaving_of(standing.outlook)
    if leaves is None:
        return BandMark(words="for hours", kelvin=standing.band.low)
    stays = standing.outlook.band.stays_min
    first, last = (
        leaves if minutes is None else standing.now + timedelta(minutes=minutes) for minutes in (stays.p10, stays.p90)
    )
    if stays.p90 is None:
        last = standing.now + timedelta(minutes=HORIZON_MINUTES)
    upward = leaves_upward(standing.outlook, standing.projection, standing.stove)
    return BandMark(
        words=until_words(leaves, desk.edge),
        kelvin=standing.band.high if upward else standing.band.low,
        window=(min(first, leaves), leaves, max(last, leaves)),
    )
