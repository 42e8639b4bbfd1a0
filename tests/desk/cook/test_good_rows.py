"""The rows of “Good for” say what the standing's fits say, in a cook's order, and nothing where nothing can be said."""

from dataclasses import replace

import pytest

from cookstove_gui.cooking.fires.first_fires import progress
from cookstove_gui.cooking.fit.fit import FitState
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.good_rows import good_for, want_heat_of
from cookstove_gui.desk.cook.oven_at import oven_number
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import degrees
from tests.desk.conftest import stand
from tests.held_clock import HeldClock


@pytest.fixture
def desk(burning_desk: Desk) -> Desk:
    return stand(burning_desk)


def test_good_now_then_by_time_then_what_may_be(desk: Desk) -> None:
    desk.choose_band("690-700")  # what no task wants, so that no row stands first for it
    found, standing = good_for(desk, by_spot=False), desk.standing
    assert found is not None
    assert standing is not None
    by_key = {fit.task.key: fit for fit in standing.fits}
    ranks = [
        (list(FitState).index(by_key[row.key].state), by_key[row.key].spots[0].chance_then < 0.6)
        for row in found.rows
        if not row.is_wanted
    ]  # fmt: skip
    assert ranks == sorted(ranks)
    times = [
        by_key[row.key].spots[0].in_min or 0.0 for row in found.rows if by_key[row.key].spots[0].chance_then >= 0.6
    ]
    assert times == sorted(times)


def test_every_task_is_a_row_or_named_as_not_with_this_fire(desk: Desk) -> None:
    found, standing = good_for(desk, by_spot=False), desk.standing
    assert found is not None
    assert standing is not None
    assert sorted([*(row.name for row in found.rows), *found.not_now]) == sorted(fit.task.name for fit in standing.fits)


def test_a_row_has_the_fits_own_chances(desk: Desk) -> None:
    found, standing = good_for(desk, by_spot=False), desk.standing
    assert found is not None
    assert standing is not None
    for row in found.rows:
        fit = next(one for one in standing.fits if one.task.key == row.key)
        assert [chance for _, chance in row.hill] == list(fit.spots[0].chances)
        assert [at for at, _ in row.hill] == list(fit.starts)
        assert row.spots[0] == fit.spots[0].spot


def test_the_oven_has_one_number_on_rows_and_plot(desk: Desk) -> None:
    found = good_for(desk, by_spot=False)
    assert found is not None
    oven = [row for row in found.rows if row.is_oven]
    assert oven
    assert {row.heat for row in oven} == {oven_number(desk)}
    assert {row.place for row in oven} == {"oven"}


def test_by_spot_every_row_is_a_spot_with_its_best_task(desk: Desk) -> None:
    found, standing = good_for(desk, by_spot=True), desk.standing
    assert found is not None
    assert standing is not None
    assert found.rows
    names = [spot.name for spot in desk.stove.spots]
    assert [row.key for row in found.rows] == [name for name in names if name in {row.key for row in found.rows}]
    for row in found.rows:
        here = [one for fit in standing.fits for one in fit.spots if one.spot == row.key and one.in_min is not None]
        soonest = min(one.in_min for one in here if one.in_min is not None)
        fit = next(fit for fit in standing.fits if fit.task.name == row.place)
        assert next(one for one in fit.spots if one.spot == row.key).in_min == soonest


def test_what_is_wanted_is_marked(desk: Desk) -> None:
    found, standing = good_for(desk, by_spot=False), desk.standing
    assert found is not None
    assert standing is not None
    oven = next(row for row in found.rows if row.is_oven)
    assert want_heat_of(desk, oven.key)
    task = next(fit.task for fit in standing.fits if fit.task.key == oven.key)
    assert (desk.band.low, desk.band.high) == pytest.approx((task.low, task.high), abs=0.6)
    after = good_for(desk, by_spot=False)
    assert after is not None
    assert oven.key in {row.key for row in after.rows if row.is_wanted}


def test_a_task_of_the_cooktop_asks_for_no_oven(desk: Desk) -> None:
    standing, before = desk.standing, desk.band
    assert standing is not None
    top = next(fit.task.key for fit in standing.fits if fit.task.place is Place.TOP)
    assert not want_heat_of(desk, top)
    assert desk.band == before


@pytest.mark.parametrize("state", ["old", "first fires", "nothing worked out"])
def test_nothing_is_said_where_nothing_can_be(desk: Desk, held_clock: HeldClock, state: str) -> None:
    assert good_for(desk, by_spot=False) is not None
    standing = desk.standing
    assert standing is not None
    if state == "old":
        held_clock.pass_minutes(24 * 60)
    elif state == "first fires":
        assert desk.show(replace(standing, first_fires=progress(replace(desk.stove, is_new=True), ())))
    else:
        desk.start_session("anew")
    assert good_for(desk, by_spot=False) is None


@pytest.mark.parametrize(("more", "is_wanted"), [(0, True), (1, True), (3, False)])
def test_a_heat_typed_within_a_kelvin_is_the_tasks(desk: Desk, more: int, is_wanted: bool) -> None:
    found, standing = good_for(desk, by_spot=False), desk.standing
    assert found is not None
    assert standing is not None
    key = next(row.key for row in found.rows if row.is_oven)
    task = next(fit.task for fit in standing.fits if fit.task.key == key)
    low, high = (round(degrees(end, "F")) for end in (task.low, task.high))
    desk.choose_band(f"{low + more}-{high + more}")  # 1 °F is 5/9 K
    after = good_for(desk, by_spot=False)
    assert after is not None
    assert (key in {row.key for row in after.rows if row.is_wanted}) is is_wanted


def test_a_heat_that_has_a_name_is_wanted_by_its_name(desk: Desk) -> None:
    standing = desk.standing
    assert standing is not None
    named = {(round(band.low, 1), round(band.high, 1)): band.name for band in desk.bands}
    ovens = [fit.task for fit in standing.fits if fit.task.place is Place.OVEN]
    task = next(task for task in ovens if (round(task.low, 1), round(task.high, 1)) in named)
    assert want_heat_of(desk, task.key)
    assert desk.band.name == named[round(task.low, 1), round(task.high, 1)]
    nameless = next(task for task in ovens if (round(task.low, 1), round(task.high, 1)) not in named)
    assert want_heat_of(desk, nameless.key)
    assert desk.band.name not in named.values()


def test_of_a_fire_that_is_out_only_the_hotter_tasks_are_gone(desk: Desk, held_clock: HeldClock) -> None:
    burning = good_for(desk, by_spot=False)
    assert burning is not None
    assert "set yogurt" in burning.not_now  # all is too hot for it with this fire
    desk.do(Kind.OUT)
    held_clock.pass_minutes(5)
    stand(desk)
    out = good_for(desk, by_spot=False)
    assert out is not None
    assert out.is_out
    assert "set yogurt" not in out.not_now  # it comes as the iron cools
    assert "griddle cakes" in out.not_now


def test_what_the_heat_is_wanted_for_has_the_first_row_even_where_this_fire_will_not_do_it(desk: Desk) -> None:
    standing = desk.standing
    assert standing is not None
    wanted = next(fit for fit in standing.fits if fit.task.place is Place.OVEN and fit.spots)
    none = tuple(
        replace(one, in_min=None, chance_ever=0.0, chances=tuple(0.0 for _ in one.chances)) for one in wanted.spots
    )
    never = replace(wanted, state=FitState.NOT, spots=none)
    others = tuple(fit for fit in standing.fits if abs(fit.task.low - wanted.task.low) > 1.0)
    assert desk.show(replace(standing, fits=(*others, never)))
    assert want_heat_of(desk, wanted.task.key)
    found = good_for(desk, by_spot=False)
    assert found is not None
    assert (found.rows[0].key, found.rows[0].is_wanted) == (wanted.task.key, True)
    assert found.rows[0].when == "not with this fire"
    assert wanted.task.name not in found.not_now
