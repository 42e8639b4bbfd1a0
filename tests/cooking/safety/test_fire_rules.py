"""Cautions about tending the fire come before the hand is on the door, not after."""

from dataclasses import replace
from typing import Any

import pytest

from cookstove_gui.forecast.answers import TurnKind
from tests.cooking.made import STOVE, log, zone
from tests.cooking.safety.asking import LIT, WARM_FLUE, cautions, estimated, noted, turn

LONG_LIT = log(LIT, (60, "wood", "", "", ""), (100, "reading", "oven_centre", "350", "F"))


def test_what_to_light_with_is_said_before_the_fire_and_when_it_is_out() -> None:
    assert "kindling" in cautions()
    assert "kindling" not in cautions(log(LIT), after=5)
    assert "kindling" in cautions(LONG_LIT, turns=[turn(TurnKind.FIRE_OUT)])
    assert "flammable liquid" in cautions()["kindling"].text


@pytest.mark.parametrize(
    ("text", "told"),
    [("lit with Kerosene", True), ("treated boards", True), ("two splits of oak", False), ("untreated pine", False)],
)
def test_what_never_belongs_in_the_stove_is_told_when_a_note_names_it(text: str, told: bool) -> None:
    assert ("not_firewood" in cautions((*LONG_LIT, noted(110, text)))) is told


def test_what_was_burned_long_ago_is_not_told_of() -> None:
    assert "not_firewood" not in cautions((*LONG_LIT, noted(110, "kerosene")), after=175)


@pytest.mark.parametrize(
    ("has_one", "room", "told"),
    [(True, None, True), (False, None, False), (False, zone("room", 35), True), (False, zone("room", 40), False)],
    ids=["described", "not described", "may have frozen", "cold but not so cold"],
)
def test_a_water_back_is_told_of_before_lighting(has_one: bool, room: Any, told: bool) -> None:
    """Row "13.water-back" of tests/reference."""
    stove, zones = replace(STOVE, has_water_back=has_one), [room] if room else []
    for rows in ((), log(LIT)):
        assert ("water_back" in cautions(rows, zones, stove=stove)) is told
    assert "water_back" not in cautions(log(LIT), zones, stove=stove, after=20)


def test_a_cold_room_that_nobody_read_says_nothing_of_frozen_water() -> None:
    assert "water_back" not in cautions((), [estimated("room", 20)])


@pytest.mark.parametrize(("in_min", "told"), [(0, True), (10, True), (11, False), (60, False)])
def test_the_loading_order_is_said_before_the_door_is_opened(in_min: int, told: bool) -> None:
    rows = log(LIT, (60, "reading", "oven_centre", "350", "F"))
    assert ("loading" in cautions(rows, turns=[turn(TurnKind.RELOAD_DUE, in_min=in_min)])) is told


def test_the_loading_order_is_said_before_the_first_reload_and_not_where_the_fire_is_out() -> None:
    due = turn(TurnKind.RELOAD_DUE)
    lit_with_wood = log(LIT, (14, "wood", "", "", ""))
    assert "loading" not in cautions(lit_with_wood, turns=[due], after=20)
    assert "loading" in cautions(lit_with_wood, turns=[due], after=60)
    assert "loading" not in cautions(log(LIT, (16, "wood", "", "", "")), turns=[due], after=60)
    again = log(LIT, (60, "wood", "", "", ""), (200, "lit", "", "", ""))
    assert "loading" in cautions(again, turns=[due], after=240)
    assert "loading" not in cautions(lit_with_wood, turns=[due, turn(TurnKind.FIRE_OUT)], after=60)
    assert "loading" not in cautions(lit_with_wood, turns=[turn(TurnKind.RELOAD_DUE, chance=0.4)], after=60)
    assert "loading" not in cautions(lit_with_wood, after=60)


def test_fresh_wood_with_the_air_nearly_shut() -> None:
    rows = log(LIT, (60, "air", "", "0.05", ""), (70, "wood", "", "", ""))
    assert "back_puff" in cautions(rows)
    assert "back_puff" not in cautions(rows, after=100)
    assert "back_puff" not in cautions(log(LIT, (60, "air", "", "0.5", ""), (70, "wood", "", "", "")))


def test_air_forgotten_open() -> None:
    assert "air_open" in cautions(log(LIT), [WARM_FLUE], turns=[turn(TurnKind.AIR_OPEN)])
    assert "air_open" not in cautions(log(LIT), [WARM_FLUE])
    opened, wide = log(LIT, (60, "air", "", "1", "")), [turn(TurnKind.AIR_OPEN)]
    assert "air_open" not in cautions(opened, [WARM_FLUE], turns=wide, after=74)
    assert "air_open" in cautions(opened, [WARM_FLUE], turns=wide, after=76)


@pytest.mark.parametrize(("after", "told"), [(159, False), (161, True), (560, False)])
def test_a_fire_of_which_nothing_is_heard_is_left_unattended(after: float, told: bool) -> None:
    assert ("unattended" in cautions(LONG_LIT, after=after)) is told  # 480 minutes after the wood the coals are gone


def test_a_note_of_leaving_is_told_at_once_and_only_while_it_burns() -> None:
    """Row "13.unattended" of tests/reference."""
    rows = (*LONG_LIT, noted(110, "leaving for town"))
    assert "unattended" in cautions(rows)
    assert "unattended" not in cautions(rows, after=130)
    assert "unattended" not in cautions(rows, turns=[turn(TurnKind.FIRE_OUT)])
    assert "unattended" not in cautions((noted(0, "off to bed"),))


def test_fumes_until_the_first_fires_are_done_or_waived() -> None:
    new = replace(STOVE, is_new=True)
    assert "first_fire_fumes" in cautions(stove=new)
    assert "first_fire_fumes" not in cautions(stove=new, first_fires_done=True)
    assert "first_fire_fumes" not in cautions(stove=replace(new, first_fires_waived=True))
    assert "first_fire_fumes" not in cautions()


def test_ash_when_the_fire_is_out() -> None:
    """Row "13.ash" of tests/reference."""
    found = cautions(log(LIT), turns=[turn(TurnKind.FIRE_OUT)])["ash"]
    assert "metal pail with a tight lid" in found.text
    assert "10 ft" in found.text
    assert "ash" not in cautions(log(LIT), turns=[turn(TurnKind.FIRE_OUT, chance=0.3)])
    assert "ash" in cautions(log(LIT), after=600)
    assert "ash" not in cautions()


def test_a_fire_that_burns_well_and_is_tended_has_no_caution() -> None:
    assert cautions(LONG_LIT, [WARM_FLUE]) == {}
