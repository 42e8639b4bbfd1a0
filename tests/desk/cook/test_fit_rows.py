"""Lines of what fits: the soonest first, each with place and clock; by spot only what has a good chance."""

from dataclasses import replace

import pytest

from cookstove_gui.cooking.fit.fit import GOOD_CHANCE, FitState, SpotFit, TaskFit
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.fit_rows import chances_now, rows_by_spot, rows_by_task, want_heat_of
from cookstove_gui.units import degrees
from tests.desk.conftest import stand

_JUST, _NOT_QUITE = GOOD_CHANCE, GOOD_CHANCE - 0.01


def fit(key: str, state: FitState, *spots: tuple[str, float, float | None, float]) -> TaskFit:
    task = task_of(key)
    assert task is not None
    found = tuple(SpotFit(spot=name, chance_now=now, in_min=at, chance_then=then) for name, now, at, then in spots)
    return TaskFit(task=task, state=state, spots=found)


FITS = (
    fit("bread", FitState.LATER, ("oven_centre", 0.1, 40.0, 0.8)),
    fit("simmer", FitState.LATER, ("top_front_left", 0.1, 20.0, _JUST), ("top_front_right", 0.1, 20.0, _NOT_QUITE)),
    fit("fry_eggs", FitState.NOW, ("top_front_left", _JUST, 0.0, 0.9), ("top_back_left", _NOT_QUITE, 0.0, 0.9)),
    fit("sear", FitState.NOT, ("top_front_left", 0.0, None, 0.0)),
    fit("boil", FitState.REFUSED, ("top_front_left", 0.9, 0.0, 0.9)),
)


@pytest.fixture
def desk(burning_desk: Desk) -> Desk:
    standing = stand(burning_desk).standing
    assert standing is not None
    assert burning_desk.show(replace(standing, fits=FITS))
    return burning_desk


def test_what_is_good_later_comes_the_soonest_first_with_its_clock(desk: Desk) -> None:
    rows = rows_by_task(desk, FITS, FitState.LATER)
    assert [row.key for row in rows] == ["simmer", "bread"]
    assert [row.where.split(" ")[0] for row in rows] == ["front", "oven"]
    assert all(row.brief and row.where.endswith(row.brief) for row in rows)


def test_what_is_good_now_has_a_place_and_no_clock(desk: Desk) -> None:
    [row] = rows_by_task(desk, FITS, FitState.NOW)
    assert (row.where, row.brief) == ("front left", "")


def test_what_is_refused_stands_with_what_does_not_fit(desk: Desk) -> None:
    assert {row.key for row in rows_by_task(desk, FITS, FitState.NOT)} == {"sear", "boil"}


def test_by_spot_only_good_chances_are_named_and_nothing_refused(desk: Desk) -> None:
    def named(state: FitState) -> dict[str, str]:
        return {row.key: row.where for row in rows_by_spot(desk, FITS, state)}

    assert named(FitState.NOW) == {"top_front_left": "fry eggs"}
    assert named(FitState.LATER) == {"oven_centre": FITS[0].task.name, "top_front_left": "simmer"}
    assert named(FitState.NOT) == {}


def test_chances_are_told_to_the_nearest_tenth_and_not_for_what_is_refused(desk: Desk) -> None:
    assert chances_now(desk, "simmer") == "simmer, chance now: front left 10 %, front right 10 %."
    assert chances_now(desk, "boil") == ""
    assert chances_now(desk, "unknown") == ""


def test_only_an_oven_task_changes_the_heat_wanted(desk: Desk) -> None:
    before = desk.band
    want_heat_of(desk, "simmer")
    assert desk.band == before
    want_heat_of(desk, "bread")
    task = FITS[0].task
    ends = [round(float(degrees(end, "F"))) for end in (desk.band.low, desk.band.high)]
    assert ends == [round(float(degrees(end, "F"))) for end in (task.low, task.high)]
