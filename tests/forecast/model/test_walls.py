"""Walls beside the stove: no word about the fire, and a heat that is their own."""

import numpy as np
import pytest

from cookstove_gui.forecast.answers import Zone
from cookstove_gui.forecast.futures.next_reading import next_reading
from cookstove_gui.forecast.futures.outlook import outlook
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.futures.zones import zones
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import SpotKind, Stove, with_spots_named
from cookstove_gui.units import kelvin
from tests.following import track
from tests.forecast.logs import MODERATE, STOVE, at, usual_morning

WALLED = with_spots_named(STOVE, ("wall_left",))


def wall_row(minute: float, fahrenheit: float) -> Entry:
    return Entry(
        number=900, at=at(minute), offset_minutes=0, kind=Kind.READING, spot="wall_left",
        value=f"{fahrenheit:g}", unit="F",
    )  # fmt: skip


def wall_zone(rows: list[Entry], minute: float) -> Zone:
    return next(zone for zone in zones(track(WALLED, rows, at(minute))) if zone.spot == "wall_left")


def test_a_wall_tells_nothing_of_the_fire():
    rows = usual_morning()
    silent = track(WALLED, rows, at(75))
    for place, heat in ((0, 60.0), (9, 140.0), (len(rows), 190.0)):
        told = track(WALLED, [*rows[:place], wall_row(40, heat), *rows[place:]], at(75))
        assert outlook(told, MODERATE) == outlook(silent, MODERATE)
        assert not told.doubted
        assert np.array_equal(told.ensemble.x, silent.ensemble.x)


def test_a_wall_alone_does_not_light_a_fire():
    only_wall = track(WALLED, [wall_row(0, 150)], at(5))
    assert outlook(only_wall, MODERATE) == outlook(track(WALLED, [], at(5)), MODERATE)


def test_a_wall_is_as_hot_as_it_was_just_read():
    zone = wall_zone([*usual_morning(), wall_row(70, 150)], 70)
    assert zone.p50 == pytest.approx(kelvin(150.0, "F"), abs=1.0)
    assert zone.last_reading == pytest.approx(kelvin(150.0, "F"))
    assert zone.p90 - zone.p10 < 15.0


def test_an_old_wall_reading_drifts_to_the_room_with_growing_doubt():
    rows = [*usual_morning(), wall_row(10, 150)]
    found = [wall_zone(rows, minute) for minute in (10, 60, 180, 900)]
    middles = [zone.p50 for zone in found]
    spreads = [zone.p90 - zone.p10 for zone in found]
    assert middles == sorted(middles, reverse=True)
    assert spreads == sorted(spreads)
    room = next(zone for zone in zones(track(WALLED, rows, at(900))) if zone.spot == "room")
    assert middles[-1] == pytest.approx(room.p50, abs=3.0)


def test_a_wall_never_read_is_about_the_room_however_hot_the_stove():
    zone = wall_zone(usual_morning(), 70)
    room = next(zone for zone in zones(track(WALLED, usual_morning(), at(70))) if zone.spot == "room")
    assert zone.last_reading is None
    assert zone.p50 == pytest.approx(room.p50, abs=3.0)
    assert zone.p90 - zone.p10 > 25.0


def test_a_wall_is_never_asked_for_to_know_the_oven_better():
    stove = Stove(name="bare", spots=tuple(s for s in WALLED.spots if s.kind in (SpotKind.WALL, SpotKind.ROOM)))
    belief = track(stove, [wall_row(0, 150)], at(10))
    assert next_reading(belief, project(belief, band=MODERATE), MODERATE).spot == "oven_centre"


def test_the_projection_of_a_wall_goes_on_from_its_zone():
    belief = track(WALLED, [*usual_morning(), wall_row(60, 160)], at(70))
    now = project(belief).of("wall_left")[:, 0]
    zone = next(zone for zone in zones(belief) if zone.spot == "wall_left")
    assert float(np.median(now)) == pytest.approx(zone.p50, abs=2.0)
