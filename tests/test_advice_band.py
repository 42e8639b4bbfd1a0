"""An oven on its way, in its heat, past it: what is called for, what lacks, what helps."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.advice import Deadline, Subject, advise
from cookstove_gui.cooking.baking.whole_bake import WholeBake
from cookstove_gui.cooking.fires.steps import Alternative
from cookstove_gui.forecast.answers import (
    Action,
    ActionKind,
    Quantiles,
    TurnKind,
)
from cookstove_gui.forecast.futures.arrival import arrival_of
from tests.advice_cases import BREAD, rising, standing, turn, words


def test_a_bake_is_called_for_when_all_of_it_stays_in_its_heat():
    found = advise(standing(390.0))
    assert found.subject is Subject.PUT_IN
    assert found.bake is not None
    assert found.bake.stays == 1.0
    assert words(standing(390.0)).startswith("Put the loaves in.")


def test_no_bake_is_called_for_that_the_oven_will_not_see_through():
    # 378 °F falling by half a kelvin a minute leaves 365 °F after some 15 min; bread takes 50.
    found = advise(standing(378.0, -0.5))
    assert found.subject is Subject.TOO_SHORT
    assert found.bake == WholeBake(stays=0.0, too_hot=0.0, too_cool=1.0)
    said = words(standing(378.0, -0.5))
    assert "Put the loaves in" not in said
    assert "It likely stays only until" in said
    assert "a bake takes about 50 min" in said
    assert "Build the fire up" in said


def test_an_oven_that_climbs_out_of_its_heat_wants_less_air_and_not_more_fire():
    said = words(standing(410.0, 0.5))
    assert "Shut the air down" in said
    assert "Build" not in said


def test_half_the_futures_are_enough_to_call_for_a_bake_and_fewer_are_not():
    steady, falling = standing(390.0), standing(378.0, -0.5)
    count = len(steady.projection.kelvin)
    for stay, subject in ((count // 2, Subject.PUT_IN), (count // 2 - 1, Subject.TOO_SHORT)):
        mixed = falling.projection.kelvin.copy()
        mixed[:stay] = steady.projection.kelvin[:stay]
        found = advise(replace(steady, projection=replace(steady.projection, kelvin=mixed)))
        assert found.subject is subject


def test_likely_is_where_the_line_enters():
    found = advise(standing(320.0, 0.5))
    assert found.arrival is not None
    assert found.subject is Subject.COMING
    assert (found.arrival.likely - rising().now).total_seconds() / 60.0 == pytest.approx(50.0)


def test_the_window_of_an_arrival_never_leaves_out_where_the_line_enters():
    def window(enters: Quantiles, line: float | None) -> tuple[float, float, float | None] | None:
        outlook = standing(320.0, 0.5).outlook
        band = replace(outlook.band, enters_min=enters, line_enters_min=line)
        found = arrival_of(replace(outlook, band=band))
        if found is None:
            return None
        minutes = [None if at is None else (at - outlook.now).total_seconds() / 60.0 for at in (
            found.earliest, found.likely, found.latest)]  # fmt: skip
        return minutes[0], minutes[1], minutes[2]

    assert window(Quantiles(p10=20.0, p50=30.0, p90=50.0), 32.0) == (20.0, 32.0, 50.0)
    assert window(Quantiles(p10=20.0, p50=30.0, p90=50.0), 15.0) == (15.0, 15.0, 50.0)
    assert window(Quantiles(p10=20.0, p50=30.0, p90=50.0), 55.0) == (20.0, 55.0, 55.0)
    assert window(Quantiles(p10=20.0, p50=None, p90=None), 40.0) == (20.0, 40.0, None)
    assert window(Quantiles(p10=None, p50=None, p90=None), 40.0) == (40.0, 40.0, None)
    assert window(Quantiles(p10=20.0, p50=30.0, p90=50.0), None) is None


def test_an_oven_in_its_heat_is_told_until_when_and_for_which_bake():
    # 378 °F falling by half a kelvin a minute is under 365 °F at the step after 14.4 min.
    found = advise(standing(378.0, -0.5))
    assert found.leaves == rising().now + timedelta(minutes=15)
    assert found.bake_min == 50.0
    assert advise(standing(390.0)).leaves is None


def test_a_heat_that_no_bake_is_named_for_is_only_told_to_be_there():
    some = replace(BREAD, name="some")
    found = advise(replace(standing(378.0, -0.5), band=some))
    assert found.subject is Subject.PUT_IN
    assert (found.bake_min, found.bake) == (0.0, None)


STEP = Alternative(
    action=Action(kind=ActionKind.WOOD, value=2.2), outlook=standing(390.0).outlook, projection=rising().projection
)
WOOD_LATER = (turn(TurnKind.RELOAD_DUE, 40),)


def test_a_step_is_told_where_it_helps_and_not_beside_a_bake_that_is_called_for():
    assert advise(standing(390.0, step=STEP)).step is None
    for oven_f, slope in ((378.0, -0.5), (320.0, 0.5), (300.0, 0.0), (450.0, -0.5), (450.0, 0.0)):
        assert advise(standing(oven_f, slope, step=STEP)).step is STEP


def test_wood_to_come_stands_beside_the_heading_unless_a_step_says_it_or_the_oven_is_too_hot():
    at = rising().course.asked_at + timedelta(minutes=40)
    for oven_f, slope in ((390.0, 0.0), (378.0, -0.5), (320.0, 0.5)):
        assert advise(standing(oven_f, slope, turns=WOOD_LATER)).wood_by == Deadline(at=at, passed=False)
    assert advise(standing(450.0, -0.5, turns=WOOD_LATER)).wood_by is None
    assert advise(standing(320.0, 0.5, turns=WOOD_LATER, step=STEP)).wood_by is None


def test_wood_near_its_time_is_no_heading_on_the_way_up():
    found = advise(standing(320.0, 0.5, turns=(turn(TurnKind.RELOAD_DUE, 5),)))
    assert found.subject is Subject.COMING
    assert found.wood_by is not None


@pytest.mark.parametrize(("wait", "prepares"), [(2.0, False), (3.0, True), (45.0, True), (46.0, False)])
def test_dough_is_made_ready_from_three_quarters_of_an_hour_to_three_minutes_ahead(wait, prepares):
    found = standing(320.0, 0.5)
    band = replace(found.outlook.band, line_enters_min=wait)
    assert advise(replace(found, outlook=replace(found.outlook, band=band))).prepares is prepares


@pytest.mark.parametrize(
    ("oven", "subject"),
    [(BREAD.low - 0.1, Subject.NOT_COMING), (BREAD.low, Subject.PUT_IN), (BREAD.high, Subject.PUT_IN),
     (BREAD.high + 0.1, Subject.TOO_HOT)],
)  # fmt: skip
def test_the_ends_of_a_heat_belong_to_it(oven, subject):
    found = standing(300.0)
    at_heat = standing(390.0).projection
    outlook = replace(found.outlook, oven=Quantiles(p10=oven, p50=oven, p90=oven))
    assert advise(replace(found, outlook=outlook, projection=at_heat)).subject is subject


def test_no_line_that_enters_no_likely():
    found = standing(300.0)
    assert advise(found).subject is Subject.NOT_COMING
    assert "likely to reach bread heat within three hours" in words(found)
    assert "might" not in words(found)


def test_dough_is_made_ready_while_the_heat_comes_and_not_when_the_oven_falls_out():
    assert words(standing(335.0, 0.5)).startswith("Shape the loaves.")
    assert "Shape" not in words(standing(360.0, -0.5))
    assert "Shape" not in words(standing(250.0, 0.5))


def test_an_oven_above_the_band_cools_into_it():
    assert advise(standing(450.0, -0.5)).subject is Subject.COOLING_IN
    assert advise(standing(450.0, 0.0)).subject is Subject.TOO_HOT
