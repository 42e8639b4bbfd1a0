"""Back from the table: the moments asked for are those of the bake as it was sized, in the air at the stove."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.desk.plan.bake import BakeChoice, usual_mass
from cookstove_gui.desk.plan.table import TableInputs, plan_table, rest_of
from cookstove_gui.situation import Standing
from cookstove_gui.stove.stove import Stove
from tests.cooking.fires.cases import made
from tests.desk.plan.conftest import NOW

TABLE_AT = NOW + timedelta(hours=9)
# Firings of this stove that are in bread heat two hours after lighting.
SLOW_RISE = (
    (0, "lit", "", "", ""),
    (1, "reading", "oven_centre", "80", "F"),
    (120, "reading", "oven_centre", "420", "F"),
)


@pytest.fixture
def asked(stands: tuple[Stove, Standing]) -> TableInputs:
    stove, _ = stands
    return TableInputs(
        stove=stove, pressure=101_325.0, bake=BakeChoice(key="bread_loaf"), table_at=TABLE_AT, rest_min=60.0,
        standing=None, past=lambda _: (),
    )  # fmt: skip


def test_bread_cools_for_an_hour_and_a_roast_rests_a_quarter() -> None:
    assert rest_of("bread_loaf") == 60.0
    assert rest_of("beef_roast") == 15.0


def test_the_day_runs_from_lighting_to_the_table(asked: TableInputs) -> None:
    found = plan_table(asked)
    assert found.out_at == TABLE_AT - timedelta(minutes=60)
    assert found.light_surely_at <= found.light_likely_at < found.goes_in_at < found.out_at
    assert not found.burns_now


def test_a_heavier_loaf_goes_in_sooner(asked: TableInputs) -> None:
    heavy = replace(asked, bake=BakeChoice(key="bread_loaf", mass=1.5 * usual_mass("bread_loaf")))
    assert plan_table(heavy).goes_in_at < plan_table(asked).goes_in_at
    assert plan_table(heavy).out_at == plan_table(asked).out_at


def test_a_longer_rest_moves_all_of_it(asked: TableInputs) -> None:
    later = plan_table(replace(asked, rest_min=90.0))
    assert plan_table(asked).goes_in_at - later.goes_in_at == timedelta(minutes=30)


def test_high_up_what_is_done_by_its_core_takes_another_time(asked: TableInputs) -> None:
    assert plan_table(replace(asked, pressure=75_000.0)).bake_min != plan_table(asked).bake_min


def test_what_the_stove_took_before_is_asked_of_that_stove(asked: TableInputs) -> None:
    names: list[str] = []

    def past(stove: str):
        names.append(stove)
        return tuple(replace(one, stove=stove) for one in made(SLOW_RISE, SLOW_RISE, SLOW_RISE))

    found = plan_table(replace(asked, past=past))
    assert (names, found.firings) == ([asked.stove.name], 3)
    assert plan_table(asked).firings == 0


def test_a_fire_that_burns_is_taken_into_account(asked: TableInputs, stands: tuple[Stove, Standing]) -> None:
    _, standing = stands
    assert plan_table(replace(asked, standing=standing)).burns_now
