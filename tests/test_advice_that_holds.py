"""Advice does not turn round from one minute to the next, nor speak as if nothing had been done yet."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.advice import Subject, advise
from cookstove_gui.cooking.baking.whole_bake import Leaving
from cookstove_gui.cooking.fires.steps import Alternative
from cookstove_gui.forecast.answers import Action, ActionKind, Trace
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import Kind
from tests.advice_cases import asked, standing, words
from tests.cooking.made import STOVE
from tests.once import stood
from tests.rows import RISING, rows_of


def mixed(hot: float, leaves_min: float | None = None) -> Standing:
    """An oven in its band of which a share gets too hot within a bake and the others too cool."""
    rises, falls = standing(410.0, 0.5), standing(380.0, -0.5)
    count = len(rises.projection.kelvin)
    futures = falls.projection.kelvin.copy()
    futures[: round(hot * count)] = rises.projection.kelvin[: round(hot * count)]
    band = replace(rises.outlook.band, line_leaves_min=leaves_min)
    projection = replace(rises.projection, kelvin=futures)
    return replace(
        rises,
        projection=projection,
        course=replace(rises.course, ahead=projection),
        outlook=replace(rises.outlook, band=band),
    )


@pytest.mark.parametrize(
    ("hot", "leaving", "told"),
    [
        (0.65, Leaving.HOT, "Shut the air down a little before you bake."),
        (0.55, Leaving.EITHER, "See how it holds before you bake."),
        (0.45, Leaving.EITHER, "See how it holds before you bake."),
        (0.35, Leaving.COOL, "Build the fire up before you bake."),
    ],
)
def test_the_air_is_shut_or_the_fire_built_up_only_where_that_is_clear(hot: float, leaving: Leaving, told: str) -> None:
    found = mixed(hot)
    assert advise(found).subject is Subject.TOO_SHORT
    assert advise(found).leaving is leaving
    assert told in words(found)


def test_which_way_it_leaves_is_told_by_the_latest_row_until_the_next() -> None:
    told, now = mixed(0.65), mixed(0.35)
    assert advise(replace(now, course=told.course)).leaving is Leaving.HOT
    assert advise(now).leaving is Leaving.COOL


@pytest.mark.parametrize(
    ("hot", "action", "is_told"),
    [
        (0.65, Action(kind=ActionKind.WOOD, value=2.2), False),
        (0.65, Action(kind=ActionKind.AIR, value=1.0), False),
        (0.65, Action(kind=ActionKind.BYPASS, value=0.0), False),
        (0.65, Action(kind=ActionKind.AIR, value=0.3), True),
        (0.5, Action(kind=ActionKind.AIR, value=0.3), True),
        (0.5, Action(kind=ActionKind.WOOD, value=2.2), True),
        (0.35, Action(kind=ActionKind.AIR, value=0.3), False),
        (0.35, Action(kind=ActionKind.WOOD, value=2.2), True),
        (0.35, Action(kind=ActionKind.BYPASS, value=0.0), True),
    ],
)
def test_a_step_works_against_the_way_the_oven_leaves(hot: float, action: Action, is_told: bool) -> None:
    found = mixed(hot)
    step = Alternative(action=action, outlook=found.outlook, projection=found.projection)
    assert (advise(replace(found, best_step=step)).step is step) is is_told


def test_where_the_drawn_line_leaves_it_says_which_way() -> None:
    assert advise(mixed(0.55, leaves_min=20.0)).leaving is Leaving.HOT
    assert advise(mixed(0.45, leaves_min=20.0)).leaving is Leaving.COOL
    assert advise(mixed(0.55, leaves_min=90.0)).leaving is Leaving.EITHER  # a bake is done by then


@pytest.mark.parametrize(("ago", "prepares"), [(59.0, False), (61.0, True)])
def test_dough_is_not_called_for_again_after_a_look_into_the_oven(ago: float, prepares: bool) -> None:
    found = standing(355.0, 0.5)
    heats = np.array([0.5 * (found.band.low + found.band.high)])
    was = Trace(at=(found.now - np.timedelta64(round(60 * ago), "s").item(),), p10=heats, p50=heats, p90=heats)
    assert advise(replace(found, trace=was)).prepares is prepares


@pytest.mark.parametrize(("ever", "prepares"), [(0.5, True), (0.49, False)])
def test_dough_is_called_for_only_where_its_bake_has_an_even_chance(ever: float, prepares: bool) -> None:
    found = standing(355.0, 0.5)
    fits = tuple(replace(fit, spots=tuple(replace(one, chance_ever=ever) for one in fit.spots)) for fit in found.fits)
    assert any(fit.task.key == "bread" for fit in fits)
    assert advise(replace(found, fits=fits)).prepares is prepares


def test_a_fire_that_is_lit_is_not_to_be_lit_but_read() -> None:
    lit = stood(asked(RISING[:3], 5))
    assert words(lit, 5) == "Fire lit at 7:00. Read the oven centre."
    assert words(stood(asked((), 5)), 5).startswith("Light the fire")


KINDLED = rows_of(
    (0, Kind.LIT, "", "", ""),
    (0, Kind.AIR, "", "1", ""),
    (8, Kind.READING, "top_back_right", "150", "F"),
    (16, Kind.READING, "top_back_right", "230", "F"),
    (28, Kind.READING, "top_back_right", "275", "F"),
    (29, Kind.READING, "oven_centre", "120", "F"),
)


@pytest.mark.parametrize("minute", [30, 50])
def test_a_stove_that_is_to_go_cold_is_drawn_going_cold(minute: float) -> None:
    new = stood(asked(KINDLED, minute, replace(STOVE, is_new=True)))
    fed = stood(asked(KINDLED, minute))
    assert advise(new).subject is Subject.LET_COOL
    ends = [float(np.median(found.projection.of("oven_centre")[:, -1])) for found in (new, fed)]
    assert ends[0] < float(np.median(new.projection.of("oven_centre")[:, 0]))
    assert ends[1] > ends[0] + 30.0  # where it may be fed, it is drawn fed
