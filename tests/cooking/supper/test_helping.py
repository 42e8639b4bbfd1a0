"""What a planned meal asks of the fire: only where a heat is missed, the right way, never against a caution."""

import math
from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.fire import Fire, OnHeat
from cookstove_gui.cooking.supper.helping import (
    FOOD_TAKES,
    SETTLES,
    SOON_MIN,
    _outcomes,
    _steps,
    heat_wanted,
    helping_step,
    next_in_oven,
)
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind, KeptFire
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import degrees
from tests.cooking.supper.made import MODERATE, NOW, burning, cold, oven

COOL, RIGHT, HOT = (150.0, 190.0), (330.0, 390.0), (520.0, 560.0)  # °F, for an oven at some 340 and rising


def part(band: tuple[float, float], begin: float = 10.0, minutes: float = 40.0, **more: object) -> OnHeat:
    start = NOW + timedelta(minutes=begin)
    return OnHeat(heat=oven(minutes, *band, **more), begin=start, end=start + timedelta(minutes=minutes))


def asked(fire: Fire, *parts: OnHeat, now: datetime = NOW) -> Action:
    low, high = parts[0].heat.low, parts[0].heat.high
    assert low is not None
    assert high is not None
    kept = KeptFire(heats=((120.0, HeatBand(name="wanted", low=low, high=high)),))
    return helping_step(fire, parts, kept, now)


def test_an_oven_that_will_be_too_hot_wants_less_air_and_one_that_will_be_too_cool_wants_air_or_wood() -> None:
    down = asked(burning(), part(COOL))
    assert (down.kind, down.value) == (ActionKind.AIR, 0.3)
    up = asked(replace(burning(), air=0.3), part(HOT))
    assert up.kind is ActionKind.WOOD or up.value > 0.5


def test_just_after_food_went_in_no_oven_is_too_hot_and_before_it_a_hotter_one_is_wanted() -> None:
    def begun(ago: float) -> OnHeat:
        return replace(part(COOL, 0.0), began=NOW - timedelta(minutes=ago))

    minutes = SETTLES.total_seconds() / 60.0
    assert asked(burning(), begun(minutes - 1)) == LEAVE
    assert asked(burning(), begun(minutes + 1)).value == 0.3
    kept = KeptFire(heats=((120.0, MODERATE),))
    ahead, inside = (
        _outcomes(burning(), one, kept, [LEAVE], NOW)[0].lean
        for one in (part(RIGHT, 0.0), replace(begun(0), heat=part(RIGHT).heat))
    )
    assert inside - ahead == pytest.approx(FOOD_TAKES)


def test_an_oven_that_is_right_is_left_alone() -> None:
    assert asked(burning(), part(RIGHT)) == LEAVE


@pytest.mark.parametrize(
    ("fire", "wanted"),
    [
        (replace(burning(), air=0.3), part(COOL)),
        (replace(burning(), against=frozenset({"shut air"})), part(COOL)),
        (replace(burning(), against=frozenset({"open air", "wood"})), part(HOT)),
        (cold(60.0), part(HOT)),
    ],
    ids=["shut already", "a caution against less air", "a caution against more fire", "nothing lit"],
)
def test_no_step_is_asked_for_that_is_done_already_or_that_a_caution_speaks_against(fire: Fire, wanted: OnHeat) -> None:
    assert asked(fire, wanted) == LEAVE


def test_the_air_is_not_opened_to_what_it_is() -> None:
    up = asked(replace(burning(), air=1.0, against=frozenset({"wood"})), part(HOT))
    assert up == LEAVE


def test_without_a_fire_to_keep_nothing_is_asked_for() -> None:
    assert helping_step(burning(), [part(COOL)], None, NOW) == LEAVE


@pytest.mark.parametrize(
    ("parts", "expected"),
    [
        ([part(RIGHT, 30), part(COOL, 10)], 1),
        ([part(RIGHT, -20), part(COOL, 10)], 0),
        ([part(RIGHT, SOON_MIN + 1)], None),
        ([part(RIGHT, SOON_MIN - 1)], 0),
        ([part(RIGHT, -38)], None),  # two minutes are left of it
        ([part(RIGHT, 5, falling=True)], None),
    ],
)
def test_it_is_for_what_is_in_the_oven_or_goes_in_next_and_soon(parts: list[OnHeat], expected: int | None) -> None:
    found = next_in_oven(parts, NOW)
    assert found == (None if expected is None else parts[expected])


def wanted_at(left: float, minutes: float, begun: bool = True) -> float:
    """°F steered to for a bake of 45 minutes at 350 to 400 that wants so much more of it within so many minutes."""
    one = part((350.0, 400.0), 0.0, 45.0)
    return float(
        degrees(
            heat_wanted(
                replace(one, left=left, by=one.begin + timedelta(minutes=minutes), began=NOW if begun else None)
            ),
            "F",
        )
    )


def test_it_steers_to_the_middle_and_while_it_bakes_to_what_has_it_done_in_time_within_its_heat() -> None:
    assert wanted_at(45.0, 45.0) == pytest.approx(375.0)
    assert wanted_at(20.0, 19.0) == pytest.approx(212.0 + 163.0 * 20.0 / 19.0)
    assert wanted_at(20.0, 22.0) == pytest.approx(212.0 + 163.0 * 20.0 / 22.0)
    assert (wanted_at(20.0, 10.0), wanted_at(20.0, 60.0)) == pytest.approx((400.0, 350.0))


def test_what_may_still_begin_earlier_wants_no_cooler_oven() -> None:
    assert wanted_at(45.0, 60.0, begun=False) == pytest.approx(375.0)
    assert wanted_at(45.0, 42.0, begun=False) > 380.0


def test_a_fire_that_lacks_little_is_not_given_a_whole_load() -> None:
    load = math.exp(burning().belief.habits.mass_log)
    tried = sorted(action.value for action in _steps(replace(burning(), air=1.0), -20.0, False))
    assert tried == pytest.approx([0.5 * load, load])


@pytest.mark.parametrize(("ago", "is_asked"), [(14.0, False), (16.0, True)])
def test_wood_that_has_not_caught_yet_gets_no_more_on_top(ago: float, is_asked: bool) -> None:
    fed = replace(burning().belief, last_load=NOW - timedelta(minutes=ago))
    fire = replace(burning(), belief=fed, air=1.0)
    assert (asked(fire, part((460.0, 520.0))).kind is ActionKind.WOOD) is is_asked


@pytest.mark.parametrize(("ago", "is_asked"), [(9.0, False), (10.0, True)])
def test_air_that_was_set_just_now_is_not_set_again_before_the_fire_has_answered(ago: float, is_asked: bool) -> None:
    fire = replace(burning(), air=1.0, air_at=NOW - timedelta(minutes=ago))
    assert (asked(fire, part(COOL)).kind is ActionKind.AIR) is is_asked


def test_in_an_oven_that_will_be_too_hot_a_load_that_is_due_is_left_out_or_halved() -> None:
    fire = replace(burning(), air=0.3)  # shut down already
    load = math.exp(fire.belief.habits.mass_log)
    assert [action.value for action in _steps(fire, 20.0, True)] == pytest.approx([0.0, 0.5 * load])
    assert [action.value for action in _steps(replace(fire, against=frozenset({"wood"})), 20.0, True)] == [0.0]
    assert _steps(fire, 20.0, False) == []


def test_a_pot_on_the_cooktop_is_not_steered_for() -> None:
    on_top = replace(part(RIGHT), heat=replace(part(RIGHT).heat, place=Place.TOP))
    assert next_in_oven([on_top], NOW) is None
