"""A session that begins on a warm stove believes what was believed of it, from its own log alone."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.forecast.tracking.carried import carried_heat, is_warm
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.stove.carried import About, CarriedHeat, carried_of, carried_text
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import degrees, kelvin
from tests.following import track
from tests.forecast.logs import STOVE, Log, at, usual_morning

PARTS = (heat.PLATE, heat.WALLS, heat.AIR, heat.LINING)


def carried_row(minute: float, carried: CarriedHeat, number: int = 1) -> Entry:
    value, note = carried_text(carried, "F")
    return replace(
        Log().add(minute, Kind.CARRIED, value=value, unit="F", note=note).entries[0], number=number
    )  # fmt: skip


def after_the_morning(minute: float) -> Belief:
    return track(STOVE, usual_morning(), at(minute))


@pytest.mark.parametrize("minute", [75.0, 200.0, 400.0])
def test_it_begins_where_the_last_one_ended(minute: float) -> None:
    before = after_the_morning(minute)
    new = track(STOVE, [carried_row(minute, carried_heat(before))], at(minute))
    for part in PARTS:
        expected, found = before.ensemble.x[part], new.ensemble.x[part]
        assert found.mean() == pytest.approx(expected.mean(), abs=0.2 * expected.std() + 1.0)
        assert found.std() == pytest.approx(expected.std(), rel=0.2, abs=1.0)


def test_it_cools_on_as_the_last_one_would_have() -> None:
    before, later = after_the_morning(300.0), after_the_morning(420.0)
    new = track(STOVE, [carried_row(300.0, carried_heat(before))], at(420.0))
    for part in PARTS:
        expected = later.ensemble.x[part]
        assert new.ensemble.x[part].mean() == pytest.approx(expected.mean(), abs=expected.std())


def test_a_stove_still_burning_goes_on_burning_and_one_gone_out_does_not() -> None:
    burning = carried_heat(after_the_morning(75.0))
    out = replace(burning, parts={**burning.parts, "flames": About(0.0, 0.0), "coals": About(0.02, 0.0)})
    assert track(STOVE, [carried_row(75.0, burning)], at(76.0)).controls.lit
    assert not track(STOVE, [carried_row(75.0, out)], at(76.0)).controls.lit


def test_it_is_warm_for_hours_and_cold_after_a_day() -> None:
    assert is_warm(carried_heat(after_the_morning(75.0)))
    assert is_warm(carried_heat(after_the_morning(75.0 + 3 * 60)))
    assert not is_warm(carried_heat(after_the_morning(75.0 + 30 * 60)))


def test_a_row_taken_back_leaves_a_cold_beginning() -> None:
    row = carried_row(300.0, carried_heat(after_the_morning(300.0)))
    lit = Log().add(301.0, Kind.LIT).entries[0]
    back = Log().add(302.0, Kind.VOID, value="1").entries[0]
    rows = [row, replace(lit, number=2), replace(back, number=3)]
    tracker = Tracker(STOVE)
    warm = tracker.follow(rows[:2], at(301.0))
    cold = tracker.follow(rows, at(302.0))
    fresh = track(STOVE, rows, at(302.0))
    assert warm.ensemble.x[heat.PLATE].mean() > cold.ensemble.x[heat.PLATE].mean() + 25.0
    assert np.array_equal(cold.ensemble.x, fresh.ensemble.x)


def test_a_row_taken_back_behind_an_older_reading_is_forgotten_too() -> None:
    carried = carried_row(300.0, carried_heat(after_the_morning(300.0)), number=1)
    read = replace(Log().reads(290.0, "oven_centre", 250).entries[0], number=2)
    back = replace(Log().add(302.0, Kind.VOID, value="1").entries[0], number=3)
    tracker = Tracker(STOVE)
    tracker.follow([carried, read], at(301.0))
    found = tracker.follow([carried, read, back], at(302.0))
    assert np.array_equal(found.ensemble.x, track(STOVE, [carried, read, back], at(302.0)).ensemble.x)


def test_far_into_a_session_it_says_nothing() -> None:
    late = Log().add(0, Kind.LIT).add(31, Kind.CARRIED, value="500", unit="F").entries
    soon = Log().add(0, Kind.LIT).add(30, Kind.CARRIED, value="500", unit="F").entries
    plain = track(STOVE, late[:1], at(31)).ensemble.x[heat.PLATE].mean()
    assert track(STOVE, late, at(31)).ensemble.x[heat.PLATE].mean() == pytest.approx(plain, abs=5.0)
    assert track(STOVE, soon, at(31)).ensemble.x[heat.PLATE].mean() > plain + 25.0


def test_a_row_written_by_hand_needs_only_the_cooktops_heat() -> None:
    belief = track(STOVE, Log().add(0, Kind.CARRIED, value="300", unit="F").entries, at(0))
    x = belief.ensemble.x
    assert x[heat.PLATE].mean() == pytest.approx(kelvin(300.0, "F"), abs=3.0)
    assert x[heat.ROOM].mean() + 30 < x[heat.WALLS].mean() < x[heat.PLATE].mean()
    assert not belief.controls.lit


def test_readings_go_on_from_it() -> None:
    carried = carried_heat(after_the_morning(120.0))
    shown = carried.parts["oven"].mean + 8.0
    row = carried_row(120.0, carried)
    read = replace(Log().reads(125.0, "oven_centre", round(degrees(shown, "F"))).entries[0], number=2)
    before, after = track(STOVE, [row], at(125.0)), track(STOVE, [row, read], at(125.0))
    miss = abs(after.ensemble.x[heat.DIAL].mean() - shown)
    assert miss < 0.6 * abs(before.ensemble.x[heat.DIAL].mean() - shown)
    assert not after.doubted


@pytest.mark.parametrize("unit", ["F", "C"])
def test_what_is_written_is_read_again(unit: str) -> None:
    heat_left = carried_heat(after_the_morning(200.0))
    value, note = carried_text(heat_left, unit)  # type: ignore[arg-type]
    read = carried_of(Log().add(0, Kind.CARRIED, value=value, unit=unit, note=note).entries[0])
    assert read.cooktop.mean == pytest.approx(heat_left.cooktop.mean, abs=0.06)
    assert read.cooktop.deviation == pytest.approx(heat_left.cooktop.deviation, abs=0.06)
    assert set(read.parts) == set(heat_left.parts)
    for name, about in heat_left.parts.items():
        assert (read.parts[name].mean, read.parts[name].deviation) == pytest.approx(
            (about.mean, about.deviation), abs=0.06
        )


@pytest.mark.parametrize(("value", "unit"), [("", "F"), ("300", "kg"), ("warm", "C")])
def test_a_carried_row_that_cannot_be_read_says_nothing(value: str, unit: str) -> None:
    said = Log().reads(0, "oven_centre", 70).add(0, Kind.CARRIED, value=value, unit=unit).entries
    silent = Log().reads(0, "oven_centre", 70).entries
    assert np.array_equal(track(STOVE, said, at(0)).ensemble.x, track(STOVE, silent, at(0)).ensemble.x)
