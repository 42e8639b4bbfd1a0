"""What a stove can do, gathered from its past: each figure where the log shows it, with the air outdoors beside it."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.cooking.fires.abilities import Ability
from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.abilities import FALLS, UNASKED, Abilities, abilities_asked, key_of, stove_abilities
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.stove.weather import WeatherKind, WeatherReading
from cookstove_gui.units import kelvin
from tests.rows import rows_of

TOP = "top_front_left"


def _firing(desk: Desk, days_ago: float, *, wood: str = "6", note: str = "") -> int:
    """A firing that comes to bread heat in an hour and falls below it two hours after; returns its session."""
    began = desk.clock() - timedelta(days=days_ago)
    rows = rows_of(
        (0, "lit", "", "", ""), (1, "note", "", "", ""), (5, "reading", "oven_centre", "75", "F"),
        (15, "wood", "", wood, "lb"), (60, "reading", "oven_centre", "375", "F"),
        *((minute, "reading", TOP, "600", "F") for minute in (35, 45, 55, 65, 75)),
        (90, "reading", "oven_centre", "420", "F"), (180, "reading", "oven_centre", "310", "F"),
        start=began, offset_minutes=0,
    )  # fmt: skip
    told = (rows[0], replace(rows[1], note=note), *rows[2:])
    return desk.logbook.add_session(desk.stove.name, f"{days_ago} days ago", told).number


def _found(desk: Desk, fall: float = FALLS[1]) -> Abilities:
    return stove_abilities(abilities_asked(desk, fall), PastSessions(desk))


def test_every_figure_stands_there_before_anything_was_fired(held_desk: Desk) -> None:
    found = _found(held_desk)
    assert {figure.ability for figure in found.figures} == set(Ability) - {Ability.BOIL}
    assert all(figure.middle is None and not figure.shown for figure in found.figures)
    assert (found.firings, found.rises) == (0, ())
    assert UNASKED.figure("rise:bread") is None


def test_the_heat_wanted_comes_first_and_each_named_heat_has_its_rise(held_desk: Desk) -> None:
    for days in (9, 6, 3):
        _firing(held_desk, days)
    found = _found(held_desk)
    rises = [figure for figure in found.figures if figure.ability is Ability.RISE]
    assert rises[0].band == held_desk.band
    assert key_of(rises[0]) == "rise:bread"
    assert [figure.band.low for figure in rises[1:] if figure.band] == sorted(
        figure.band.low for figure in rises[1:] if figure.band
    )
    assert rises[0].middle == pytest.approx(5.0 + 55.0 * 290.0 / 300.0)  # bread heat begins at 365 °F
    assert len(found.rises) == found.firings == 3
    wood = found.figure("wood_bake:bread")
    assert wood is not None
    assert wood.middle == pytest.approx(6 * 0.45359237)


def test_water_boils_where_the_spot_was_hot_enough_in_so_many_minutes(held_desk: Desk) -> None:
    _firing(held_desk, 3)
    boils = [figure for figure in _found(held_desk).figures if figure.ability is Ability.BOIL]
    assert [(figure.spot, figure.readings) for figure in boils] == [(TOP, 5)]
    assert boils[0].low < boils[0].middle  # type: ignore[operator]
    assert 4.0 < boils[0].middle < 30.0  # type: ignore[operator]


def test_a_month_that_is_not_over_counts_only_while_there_is_no_other(held_desk: Desk) -> None:
    _firing(held_desk, 0.5, wood="8")
    assert _found(held_desk).figure("wood_month:").middle == pytest.approx(8 * 0.45359237)  # type: ignore[union-attr]
    _firing(held_desk, 40.0, wood="20")
    assert _found(held_desk).figure("wood_month:").middle == pytest.approx(20 * 0.45359237)  # type: ignore[union-attr]


def test_the_air_outdoors_is_that_of_a_note_else_what_was_typed_that_day(held_desk: Desk) -> None:
    noted, typed, unknown = _firing(held_desk, 9, note="28 F outside"), _firing(held_desk, 6), _firing(held_desk, 3)
    at = held_desk.clock() - timedelta(days=6, hours=2)
    reading = WeatherReading(kind=WeatherKind.OUTDOORS, value=kelvin(14.0, "F"), at=at, offset_minutes=0)
    held_desk.logbook.facts.add_weather(held_desk.stove, reading)
    outdoors = _found(held_desk).outdoors
    assert outdoors == {noted: pytest.approx(kelvin(28.0, "F")), typed: pytest.approx(kelvin(14.0, "F"))}
    assert unknown not in outdoors


def test_another_fall_asks_for_other_times(held_desk: Desk) -> None:
    began = held_desk.clock() - timedelta(days=2)
    rows = rows_of(
        (0, "lit", "", "", ""), (10, "wood", "", "12", "lb"), (20, "air", "", "0.1", ""),
        (60, "reading", "oven_centre", "440", "F"), (252, "reading", "oven_centre", "280", "F"),
        start=began, offset_minutes=0,
    )  # fmt: skip
    held_desk.logbook.add_session(held_desk.stove.name, "shut down", rows)
    times = [_found(held_desk, fall).figure("burn:").middle for fall in FALLS]  # type: ignore[union-attr]
    # 160 °F in 192 minutes from 60: 30 minutes for each 25 °F, and the load went on at 10.
    assert times == [pytest.approx(50.0 + 30.0 * number) for number in (1, 2, 4, 6)]
