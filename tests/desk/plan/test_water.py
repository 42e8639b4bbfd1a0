"""Water as the Plan page asks about it: which spot first, in which room, and what past pans have taught."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.desk.plan.water import WaterChoice, WaterInputs, WaterPlan, pan_of, plan_water
from cookstove_gui.physics.air import standard_pressure
from tests.cooking.made import START, log, projection, session
from tests.once import water_planned

HEATS = {"top_front_left": 420.0, "top_front_middle": 520.0, "top_back_left": 180.0, "top_back_right": 120.0}


def heating(standing, heats: dict[str, float], room: float | None = None):  # type: ignore[no-untyped-def]
    """The standing with steady spots [°F] and the room's zone read at some heat [K], or unread."""
    steady = projection({name: [heat] * 37 for name, heat in heats.items()}, futures=10)
    zone = replace(
        standing.zones["room"], p50=room or 280.0, last_reading=room, last_reading_age_min=None if room is None else 5.0
    )
    return replace(standing, projection=steady, zones={**standing.zones, "room": zone})


@pytest.fixture(autouse=True)
def alone(monkeypatch):
    """No other pot draws on the cooktop; what pots draw is asked in test_pots.py."""
    monkeypatch.setattr("cookstove_gui.desk.plan.water.beside_pots", lambda standing, *_: (standing.projection, 0.0))


@pytest.fixture
def plan(stands):
    stove, standing = stands

    def planned(heats=HEATS, room=None, sessions=(), altitude=0.0, **chosen) -> WaterPlan:
        choice = WaterChoice(**{"litres": 2.0, **chosen})
        return water_planned(
            WaterInputs(
                standing=heating(standing, heats, room),
                stove=replace(stove, altitude=altitude),
                pressure=float(standard_pressure(altitude)),
                choice=choice,
                past=lambda _name: sessions,
            )
        )

    return planned


def test_the_soonest_spot_comes_first_and_of_those_too_cool_the_hottest(plan):
    assert [row.spot for row in plan().rows] == [
        "top_front_middle", "top_front_left", "top_back_left", "top_back_right",
    ]  # fmt: skip
    assert plan().rows[0].label == "top front middle"


def test_only_spots_that_the_projection_knows_are_answered(plan):
    assert len(plan({"top_front_left": 420.0, "oven_centre": 500.0}).rows) == 1


def test_a_simmer_is_asked_to_hold_for_half_an_hour(plan):
    rows = {row.spot: row.simmer for row in plan(lid=True).rows}
    assert rows["top_front_middle"].chance_boils == 1.0
    assert rows["top_back_right"].chance_falls == 1.0


def test_the_room_is_as_it_was_read(plan):
    def minutes(room):
        return plan(room=room).rows[0].answer.minutes.p50

    assert minutes(280.0) > minutes(310.0)
    # a room that was not read is taken as 20 °C, one beyond what a kitchen can be as the nearest that can
    assert minutes(None) == minutes(293.15)
    assert minutes(340.0) == minutes(320.0)
    assert minutes(250.0) == minutes(275.0)


def test_water_boils_lower_high_up_and_no_higher_far_below_the_sea(plan):
    # reference 1.9: 93.315 °C at 2000 m of the standard atmosphere
    assert plan(altitude=2000.0).boiling == pytest.approx(93.315 + 273.15, abs=0.01)
    assert plan(altitude=-400.0).boiling == plan(altitude=-200.0).boiling


def boiled_in(stove, minutes: float, count: int = 1):
    """Sessions in which the saucepan boiled two litres under a lid in so many minutes on a top of 480 °F."""
    rows = log(
        (0, "reading", "top_front_left", "480", "F"),
        (5, "pan", "top_front_left", "on", ""),
        (5 + minutes, "pan", "top_front_left", "off", ""),
        start=START,
    )
    notes = ("", "saucepan, 2 litres, lid", "boiled")
    noted = tuple(replace(row, note=note) for row, note in zip(rows, notes, strict=True))
    return tuple(session(number, noted, stove) for number in range(1, count + 1))


def test_pans_that_boiled_sooner_than_usual_make_the_answer_sooner_and_narrower(plan, stands):
    stove, _ = stands
    usual = plan(lid=True)
    quick = plan(lid=True, sessions=boiled_in(stove, 10.0, count=4))
    assert (usual.runs, quick.runs) == (0, 4)
    before, after = usual.rows[0].answer.minutes, quick.rows[0].answer.minutes
    assert after.p50 < before.p50
    assert after.p90 - after.p10 < before.p90 - before.p10


def test_pans_with_another_base_do_not_count(plan, stands):
    stove, _ = stands
    assert plan(sessions=boiled_in(stove, 10.0), base="warped or ringed").runs == 0


def test_an_empty_pan_preheats_on_the_spot_asked_about(plan):
    iron = plan(pan_key="iron pot")
    skillet = plan(pan_key="iron skillet")
    assert iron.preheat_min > skillet.preheat_min > 1.0
    assert plan(pan_key="iron pot", spot="top_front_left").preheat_min != iron.preheat_min
    assert plan({"top_front_left": 69.0}).preheat_min == 0.0  # it is there already
    assert plan({"oven_centre": 400.0}).preheat_min is None


def test_the_chosen_pan_base_and_lid_are_taken():
    assert (pan_of(WaterChoice(litres=1.0, pan_key="kettle")).key, pan_of(WaterChoice(litres=1.0)).key) == (
        "kettle", "saucepan",
    )  # fmt: skip
    other = pan_of(WaterChoice(litres=1.0, base="warped or ringed", lid=True))
    assert (other.base, other.lid) == ("warped or ringed", True)
    assert pan_of(WaterChoice(litres=1.0)).base == "flat and heavy"


def test_a_spot_beyond_what_a_cooktop_can_be_is_cut_off(plan, stands):
    wild, most = (plan({"top_front_left": heat}) for heat in (5000.0, 1610.33))
    assert wild.rows[0].heat == pytest.approx(1150.0)
    assert np.isclose(wild.rows[0].answer.minutes.p50, most.rows[0].answer.minutes.p50)


def test_the_soonest_spot_is_asked_about_until_another_is(plan):
    assert plan().asked.spot == "top_front_middle"
    other = plan(spot="top_front_left")
    assert other.asked.spot == "top_front_left"
    assert other.rows == plan().rows
    assert other.course.p50[20] < plan().course.p50[20]
    assert plan(spot="no_such_spot").asked.spot == "top_front_middle"


def test_a_stove_without_a_cooktop_has_nothing_to_ask_about(plan):
    none = plan({"oven_centre": 500.0})
    assert (none.asked, none.course, none.pans) == (None, None, ())


def test_every_pan_is_answered_and_the_chosen_one_as_in_the_sentence(plan, stands):
    stove, _ = stands
    found = plan(pan_key="kettle", base="warped or ringed", lid=True, sessions=boiled_in(stove, 10.0, count=2))
    minutes = {one.key: one.minutes for one in found.pans}
    assert len(minutes) == 6
    assert minutes["kettle"] == found.asked.answer.minutes
    # the pans of the log were saucepans with a flat, heavy base: they tell of the stock pot, not of the enamel pot
    usual = {one.key: one.minutes for one in plan(pan_key="kettle", lid=True).pans}
    assert minutes["stock pot"].p50 < usual["stock pot"].p50
    assert minutes["enamel pot"] == usual["enamel pot"]


def test_each_pan_of_the_log_is_shown_with_what_those_before_it_said(plan, stands):
    stove, _ = stands
    found = plan(lid=True, sessions=boiled_in(stove, 10.0, count=9))
    assert found.runs == 9
    assert [one.run.minutes for one in found.said] == [10.0] * 6
    widths = [one.said.p90 - one.said.p10 for one in found.said]
    assert widths == sorted(widths, reverse=True)
    assert found.guessed.p50 > found.asked.answer.minutes.p50
    first = plan(sessions=boiled_in(stove, 10.0)).said[0].said
    assert first.p90 - first.p10 > widths[0]  # nothing had been learned before it


def test_where_a_pan_stands_by_the_log_its_draw_is_not_taken_off_once_more(stands):
    """The projection has it already: that water is as soon as on iron that nothing cools, the others are slower."""
    stove, standing = stands
    steady = heating(standing, {"top_front_left": 520.0, "top_front_middle": 520.0})
    on = replace(log((0.0, "pan", "top_front_left", "on", ""))[0], at=standing.now)
    asked = WaterInputs(
        standing=replace(steady, rows=(*steady.rows, on)), stove=stove, pressure=float(standard_pressure(0.0)),
        choice=WaterChoice(litres=2.0), past=lambda _name: (),
    )  # fmt: skip
    found = {row.spot: row.answer.minutes.p50 for row in plan_water(asked).rows}
    assert found["top_front_left"] < 0.97 * found["top_front_middle"]
