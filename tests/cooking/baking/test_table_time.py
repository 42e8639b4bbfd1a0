"""Working back from the table adds up, and learns from this stove how long the fire takes."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.baking.catalogue import bake_of, scaled
from cookstove_gui.cooking.baking.doneness import steady_minutes
from cookstove_gui.cooking.baking.table_time import usual_rest, work_back
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin

TABLE = datetime(2026, 1, 5, 17, 30, tzinfo=UTC)
STOVE = stove_with_default_spots("Kitchen stove")
LOAF = bake_of("bread_loaf")


def firing(number: int, minutes_to_450: float) -> Session:
    """A firing whose oven goes straight from 75 °F to 450 °F."""
    lit = TABLE - timedelta(days=number)

    def reading(place: int, minutes: float, heat: int) -> Entry:
        at = lit + timedelta(minutes=minutes)
        return Entry(
            number=place, at=at, offset_minutes=0, kind=Kind.READING, spot="oven_centre", value=str(heat), unit="F"
        )

    rows = (
        Entry(number=1, at=lit, offset_minutes=0, kind=Kind.LIT),
        reading(2, 0, 75),
        reading(3, minutes_to_450, 450),
    )
    return Session(number=number, stove=STOVE.name, title="", entries=rows)


def test_the_moments_of_the_day_add_up():
    plan = work_back(STOVE, LOAF, TABLE, 60, ())
    task = task_of("bread")
    assert task is not None
    minutes = steady_minutes(LOAF, 0.5 * (task.low + task.high))
    assert plan.bake_min == pytest.approx(minutes)
    assert TABLE - plan.out_at == timedelta(minutes=60)
    assert (plan.out_at - plan.goes_in_at).total_seconds() / 60 == pytest.approx(plan.bake_min)


def test_without_a_past_the_usual_rise_is_taken_and_said_to_be_none_of_its_own():
    plan = work_back(STOVE, LOAF, TABLE, 60, ())
    assert plan.firings == 0
    # an hour and a quarter, nine times in ten an hour and a half: common practice, no source
    assert plan.goes_in_at - plan.light_likely_at == timedelta(minutes=75)
    assert plan.goes_in_at - plan.light_surely_at == timedelta(minutes=90)
    assert not plan.burns_now
    assert plan.arrival_min is None


def test_a_quick_stove_is_lit_later():
    quick = work_back(STOVE, LOAF, TABLE, 60, [firing(day, 40) for day in (1, 2, 3)])
    slow = work_back(STOVE, LOAF, TABLE, 60, [firing(day, 120) for day in (1, 2, 3)])
    assert quick.firings == slow.firings == 3
    assert slow.light_likely_at < quick.light_likely_at


def test_three_firings_give_a_middle_and_nine_in_ten():
    # bread heat begins at 365 °F, 290 of the 375 °F from 75 to 450: firings of 60, 75 and 150 min to 450 °F are there
    # after 46.4, 58 and 116 min; nine in ten, between the last two at 0.9 * 2 = 1.8: 58 + 0.8 * 58 = 104.4 min
    plan = work_back(STOVE, LOAF, TABLE, 60, [firing(day, rise) for day, rise in enumerate((60, 75, 150), start=1)])
    assert (plan.goes_in_at - plan.light_likely_at).total_seconds() / 60 == pytest.approx(58.0)
    assert (plan.goes_in_at - plan.light_surely_at).total_seconds() / 60 == pytest.approx(104.4)


def test_other_stoves_firings_teach_nothing():
    others = [replace(firing(day, 40), stove="another") for day in (1, 2, 3)]
    assert work_back(STOVE, LOAF, TABLE, 60, others).firings == 0


def test_what_is_never_done_is_refused_with_a_sentence():
    huge = replace(LOAF, sizes=(0.9, 0.9, 0.9))
    with pytest.raises(InputProblem, match="choose a smaller one"):
        work_back(STOVE, huge, TABLE, 60, ())


def test_height_above_the_sea_counts():
    # potatoes bake longer high up (common practice, no source): where water boils at 90 °C, drying keeps them cooler
    potato = bake_of("potatoes")
    high = work_back(STOVE, potato, TABLE, 10, (), pressure=float(standard_pressure(3000.0)))
    assert high.bake_min > work_back(STOVE, potato, TABLE, 10, ()).bake_min + 5


def test_one_firing_is_not_taken_for_sure():
    plan = work_back(STOVE, LOAF, TABLE, 60, [firing(1, 80)])
    likely = (plan.goes_in_at - plan.light_likely_at).total_seconds()
    surely = (plan.goes_in_at - plan.light_surely_at).total_seconds()
    assert likely == pytest.approx(80 * 60 * 290 / 375)  # 365 °F lies 290 of the 375 °F up from 75
    assert surely == pytest.approx(1.25 * likely, abs=1e-3)


def test_a_heavier_loaf_goes_in_earlier():
    assert (
        work_back(STOVE, scaled(LOAF, 2), TABLE, 60, ()).goes_in_at < work_back(STOVE, LOAF, TABLE, 60, ()).goes_in_at
    )


def rising(now: datetime, kelvin_at_start: float, kelvin_at_end: float) -> Projection:
    """One future that rises in a straight line over three hours."""
    minutes = np.linspace(0.0, 180.0, 37)
    heat = np.linspace(kelvin_at_start, kelvin_at_end, 37)
    return Projection(now=now, minutes=minutes, spots=("oven_centre",), kelvin=heat[None, :, None])


def test_a_fire_that_burns_is_held_against_the_moment_it_is_needed():
    task = task_of("bread")
    assert task is not None
    now = TABLE - timedelta(hours=4)
    plan = work_back(STOVE, LOAF, TABLE, 60, (), rising(now, task.low - 90.0, task.low + 90.0))
    assert plan.burns_now
    assert plan.arrival_min is not None
    assert plan.arrival_min.p50 == pytest.approx(90.0)


def test_a_fire_that_does_not_get_there_has_no_arrival_in_time():
    task = task_of("bread")
    assert task is not None
    plan = work_back(STOVE, LOAF, TABLE, 60, (), rising(TABLE - timedelta(hours=4), task.low - 90.0, task.low - 1.0))
    assert plan.arrival_min is not None
    assert plan.arrival_min.p50 is None


def test_a_fire_that_burns_in_the_morning_says_nothing_of_the_evening():
    now = TABLE - timedelta(hours=12)
    assert work_back(STOVE, LOAF, TABLE, 60, (), rising(now, 350.0, 500.0)).arrival_min is None


@pytest.mark.parametrize(("key", "minutes"), [("bread_round", 60), ("beef_roast", 15), ("fruit_pie", 10)])
def test_bread_cools_an_hour_and_a_roast_rests_a_quarter(key, minutes):
    assert usual_rest(bake_of(key)) == minutes  # common practice, no source


@pytest.mark.parametrize(("wait_min", "stays"), [(0.0, 1.0), (60.0, 0.0), (200.0, None)])
def test_the_oven_is_asked_about_when_the_bake_goes_in(wait_min, stays):
    # The oven of every future stays at 390 °F for 90 min and is cold after; bread takes less than an hour and a half.
    minutes = np.arange(0.0, 181.0, 5.0)
    oven = np.where(minutes <= 90.0, kelvin(390.0, "F"), kelvin(100.0, "F"))
    now = TABLE - timedelta(minutes=work_back(STOVE, LOAF, TABLE, 0, ()).bake_min + wait_min)
    futures = Projection(now=now, minutes=minutes, spots=("oven_centre",), kelvin=np.tile(oven, (4, 1))[:, :, None])
    found = work_back(STOVE, LOAF, TABLE, 0, (), futures).bake_then
    assert (found.stays if found else None) == stays
