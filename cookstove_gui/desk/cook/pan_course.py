"""While a pan is put on, the plot is about the two best spots for its task, not about the oven."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

import numpy as np

from cookstove_gui.desk.cook.oven_lines import OvenFan, fan_of
from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.desk.cook.task_places import task_places
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.phrases.figures import spot_number
from cookstove_gui.phrases.plot import spot_ahead, spots_then
from cookstove_gui.stove.entries import HeatBand, pans_standing

if TYPE_CHECKING:
    from cookstove_gui.desk.cook.good_rows import GoodRow
    from cookstove_gui.desk.desk import Desk

_MOST_SPOTS = 2  # more lines are hard to tell apart


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotCourse:
    """A spot now, as the stove's drawing says it, and where it is going."""

    spot: str
    name: str
    number: str
    ahead: OvenFan


@dataclass(frozen=True, slots=True, kw_only=True)
class PanCourse:
    """The heat that a task wants, and the spots for it, the best first."""

    band: HeatBand
    spots: tuple[SpotCourse, ...]


def pan_spots(desk: Desk, row: GoodRow) -> tuple[str, ...]:
    """Where a pan for a row's task may be put: free spots that will do now, else those that will later; best first."""
    taken, places = pans_standing(desk.entries), task_places(desk, row.task)
    free = tuple(spot for spot in row.spots if spot not in taken)
    return tuple(spot for spot in free if spot in places and places[spot].will_do) or free


def pan_course(desk: Desk, row: GoodRow, marked: str = "") -> PanCourse | None:
    """The course of a row's two best free spots, or of the one marked and the best other.

    None for a task of the oven, or where no spot is free.
    """
    standing = desk.standing
    fit = next((fit for fit in standing.fits if fit.task.key == row.task), None) if standing is not None else None
    if standing is None or fit is None or row.is_oven or not desk.is_live:
        return None
    projection, heats = standing.projection, spot_heats(desk)
    spots = tuple(
        SpotCourse(
            spot=spot,
            name=spot_label(desk.stove, spot).removeprefix("top "),
            number=spot_number(heats[spot].kelvin, heats[spot].typed, desk.unit),
            ahead=fan_of(projection.minutes, projection.of(spot)),
        )
        for spot in dict.fromkeys((marked, *pan_spots(desk, row)))
        if spot in projection.spots
    )[:_MOST_SPOTS]
    band = HeatBand(name=fit.task.name, low=fit.task.low, high=fit.task.high)
    return PanCourse(band=band, spots=spots) if spots else None


def spots_at(desk: Desk, course: PanCourse, at: datetime) -> tuple[float, str] | None:
    """The best spot at a moment to come [K] and both in words; none for a moment that is past or too far ahead."""
    standing = desk.standing
    minutes = (at - standing.now).total_seconds() / 60.0 if standing is not None else -1.0
    ahead = course.spots[0].ahead.minutes
    if not ahead[0] <= minutes <= ahead[-1]:
        return None
    heats = [float(np.interp(minutes, ahead, one.ahead.p50)) for one in course.spots]
    named = tuple((one.name, heat) for one, heat in zip(course.spots, heats, strict=True))
    return heats[0], spots_then(desk.edge.at(at), named, desk.unit)


def course_said(desk: Desk, course: PanCourse) -> str:
    """The spots and where they are going in a sentence each, for whoever cannot see them."""
    standing = desk.standing
    if standing is None:
        return ""
    return " ".join(
        spot_ahead(
            one.name,
            one.number,
            (standing.now + timedelta(minutes=float(one.ahead.minutes[-1])), float(one.ahead.p50[-1])),
            desk.edge,
        )
        for one in course.spots
    )
