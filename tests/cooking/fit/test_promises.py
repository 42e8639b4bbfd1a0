"""A time at which a spot will be good stands still until a row comes, and is kept when it comes."""

import pytest

from cookstove_gui.cooking.fit.fit import FitState, SpotFit, TaskFit, ranked
from cookstove_gui.cooking.fit.promises import as_told
from cookstove_gui.cooking.fit.tasks import Task, task_of


def bread() -> Task:
    found = task_of("bread")
    assert found is not None
    return found


def fit(*spots: SpotFit) -> TaskFit:
    return ranked(TaskFit(task=bread(), state=FitState.NOT, spots=spots))


def spot(name: str, now: float, in_min: float | None, until: float | None = None) -> SpotFit:
    return SpotFit(spot=name, chance_now=now, in_min=in_min, chance_then=0.7 if in_min else now, until_min=until)


def shown(present: TaskFit, told: TaskFit, since: float) -> TaskFit:
    (found,) = as_told((present,), (told,), since)
    return found


@pytest.mark.parametrize("again", [9.0, 60.0, None])
def test_the_time_told_at_the_row_stands_whatever_is_worked_out_since(again: float | None) -> None:
    found = shown(fit(spot("a", 0.3, again)), fit(spot("a", 0.2, 10.0, until=40.0)), 3.0)
    assert found.state is FitState.LATER
    assert (found.spots[0].in_min, found.spots[0].chance_then, found.spots[0].until_min) == (7.0, 0.7, 37.0)
    assert found.spots[0].chance_now == 0.3


@pytest.mark.parametrize(("chance", "state"), [(0.5, FitState.NOW), (0.49, FitState.LATER), (0.1, FitState.LATER)])
def test_when_the_time_has_come_it_is_now_and_good_if_it_is_even(chance: float, state: FitState) -> None:
    found = shown(fit(spot("a", chance, 12.0)), fit(spot("a", 0.2, 10.0)), 10.0)
    assert found.state is state
    assert found.spots[0].in_min == 0.0


def test_when_the_time_has_come_no_later_spot_takes_its_place() -> None:
    told = fit(spot("a", 0.2, 10.0), spot("b", 0.1, 25.0))
    for since, first, in_min in ((9.0, "a", 1.0), (10.0, "a", 0.0), (14.9, "a", 0.0), (15.0, "b", 10.0)):
        best = shown(fit(spot("a", 0.4, 5.0), spot("b", 0.1, 60.0)), told, since).spots[0]
        assert (best.spot, best.in_min) == (first, pytest.approx(in_min))


def test_what_was_good_stays_good_while_it_is_even_and_is_dropped_after_the_clocks_step() -> None:
    told = fit(spot("a", 0.65, 0.0))
    assert shown(fit(spot("a", 0.55, 8.0)), told, 4.0).state is FitState.NOW
    assert shown(fit(spot("a", 0.55, 8.0)), told, 40.0).state is FitState.NOW
    assert shown(fit(spot("a", 0.45, 8.0)), told, 4.0).state is FitState.LATER
    assert shown(fit(spot("a", 0.45, 8.0)), told, 5.0).state is FitState.NOT


def test_nothing_new_is_promised_without_a_row() -> None:
    assert shown(fit(spot("a", 0.3, 5.0)), fit(spot("a", 0.2, None)), 4.0).state is FitState.NOT
    assert shown(fit(spot("b", 0.3, 5.0)), fit(spot("a", 0.2, 9.0)), 4.0).state is FitState.NOT


def test_good_now_comes_before_every_promise() -> None:
    found = shown(fit(spot("a", 0.3, 5.0), spot("b", 0.8, 0.0)), fit(spot("a", 0.2, 9.0), spot("b", 0.1, None)), 4.0)
    assert [one.spot for one in found.spots] == ["b", "a"]
    assert found.state is FitState.NOW


def test_what_is_refused_stays_refused() -> None:
    refused = TaskFit(task=bread(), state=FitState.REFUSED, spots=(spot("a", 0.0, None),))
    assert shown(refused, fit(spot("a", 0.2, 9.0)), 4.0) == refused
