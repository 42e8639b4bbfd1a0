"""A thermometer's checks count where it is read: its error is taken off at that heat, its doubt is noise and spread."""

from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest

from cookstove_gui.forecast.model.character import Character
from cookstove_gui.forecast.model.ensemble import BAKING_HEAT, OFFSET, start
from cookstove_gui.forecast.model.observation import DOUBT_SHARE, Reading, read
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import Instrument, stove_with_default_spots, unchecked

PLAIN = stove_with_default_spots("Kitchen")
CENTRE = next(place for place, spot in enumerate(PLAIN.spots) if spot.name == "oven_centre")
SURE = replace(unchecked("dial", "oven thermometer"), offset_doubt=0.0, gain_doubt=0.0)
ROW = Entry(
    number=1,
    at=datetime(2026, 1, 5, 12, 0, tzinfo=UTC),
    offset_minutes=0,
    kind=Kind.READING,
    spot="oven_centre",
    value="210",
    unit="C",
)


def reading_of(instrument: Instrument) -> Reading:
    found = read(ROW, replace(PLAIN, instruments=(instrument,)), CENTRE, 0.0)
    assert found is not None
    return found


def test_the_error_is_taken_off_as_it_is_at_that_heat() -> None:
    # at 200 °C it shows 2 K and 0.04 of 200 K more: 210 °C
    assert reading_of(replace(SURE, offset=2.0, gain=0.04)).value == pytest.approx(473.15)


def test_the_doubt_at_that_heat_is_added_to_the_noise() -> None:
    # 3 K at the ice point and 0.02 of 210 K are 5.16 K there; a share of its square counts as noise
    more = reading_of(replace(SURE, offset_doubt=3.0, gain_doubt=0.02)).variance - reading_of(SURE).variance
    assert more == pytest.approx(DOUBT_SHARE * (9.0 + (0.02 * 210.0) ** 2))


def test_the_oven_thermometers_lasting_doubt_is_that_at_a_baking_heat() -> None:
    for gain_doubt in (0.0, 0.03):
        dial = replace(SURE, offset_doubt=0.5, gain_doubt=gain_doubt)
        stove = replace(PLAIN, instruments=(dial,))
        made = start(stove, Character.generic(stove), np.random.default_rng(1), 0.1)
        assert made.x[OFFSET].std() == pytest.approx(dial.doubt(BAKING_HEAT), rel=0.1)


def test_a_spot_is_read_by_the_thermometer_named_for_it_else_by_the_first_of_its_kind() -> None:
    first, second = replace(SURE, name="dial", offset=2.0), replace(SURE, name="wire", offset=7.0)
    both = replace(PLAIN, instruments=(first, second))
    named, unknown = (
        replace(
            both,
            spots=tuple(replace(spot, instrument=name) if spot.name == "oven_centre" else spot for spot in both.spots),
        )
        for name in ("wire", "one that is gone")
    )
    found = [read(ROW, one, CENTRE, 0.0) for one in (both, named, unknown)]
    assert [one.value for one in found if one is not None] == pytest.approx([481.15, 476.15, 481.15])
