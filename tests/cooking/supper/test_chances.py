"""The chance of each step on heat and of the whole meal, from heats made by hand."""

from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper import planning
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.heats import HeatFit
from cookstove_gui.cooking.supper.in_time import SUREST
from cookstove_gui.cooking.supper.marks import Supper
from cookstove_gui.cooking.supper.plan import Plan
from cookstove_gui.forecast.model.ensemble import MEMBERS
from tests.cooking.supper.made import NOW, burning, cold, dish, oven

TOPS = ("top_front_left", "top_back_left")
STARTS = np.arange(0.0, 121.0, 5.0)
POT = Heat(what="simmer", place=Place.TOP, minutes=20.0, low=380.0, high=420.0)
TABLE = NOW + timedelta(minutes=40)
HALF = np.arange(MEMBERS) % 2 == 0


def heats(right: np.ndarray, *, even: float = 1.0, cool: float = 1.0, since: float = 0.0) -> HeatFit:
    """Warm enough on the spots (spots, futures) from a minute on; cool and even enough in a share of the futures."""
    shape = (len(STARTS), len(TOPS), MEMBERS)
    in_order = np.arange(MEMBERS) / MEMBERS
    return HeatFit(
        spots=TOPS, minutes=STARTS, warm=np.broadcast_to(right, shape) & (since <= STARTS)[:, None, None],
        cool=np.broadcast_to(in_order < cool, shape), even=np.broadcast_to(in_order < even, shape),
        lasts=np.ones((len(STARTS), MEMBERS), dtype=bool), slides=True,
    )  # fmt: skip


def planned(monkeypatch: pytest.MonkeyPatch, fit: HeatFit, pots: int = 1) -> Plan:
    """Pots of twenty minutes, all wanted at once."""
    monkeypatch.setattr(planning, "heat_fits", lambda _, __, heats: (fit,) * len(heats))
    dishes = tuple(dish(f"pot{number}", POT, may_wait=0.0) for number in range(pots))
    return planning.plan_meal(Supper(table_at=TABLE, dishes=dishes), burning(), NOW)


def chances(plan: Plan) -> list[float]:
    return [step.chance for step in plan.steps if step.chance is not None]


def test_a_pot_goes_where_the_heat_is_right_then(monkeypatch: pytest.MonkeyPatch) -> None:
    either = np.stack((HALF, ~HALF))
    plan = planned(monkeypatch, heats(either))
    assert (chances(plan), plan.chance) == ([SUREST], SUREST)


def test_a_pot_does_not_go_where_another_stands(monkeypatch: pytest.MonkeyPatch) -> None:
    plan = planned(monkeypatch, heats(np.stack((HALF, ~HALF))), pots=2)
    assert len({step.spot for step in plan.steps if step.chance is not None}) == 2
    assert chances(plan) == [0.5, 0.5]
    assert plan.chance == 0.0  # what is right for one is wrong for the other


def test_nothing_is_told_as_surer_than_suppers_were_found_to_be(monkeypatch: pytest.MonkeyPatch) -> None:
    plan = planned(monkeypatch, heats(np.ones((2, MEMBERS), dtype=bool)))
    assert [*chances(plan), plan.chance] == [0.85, 0.85]


@pytest.mark.parametrize(("late", "in_time"), [(10.0, SUREST), (15.0, 0.0)])
def test_a_pot_too_may_be_ten_minutes_late(monkeypatch: pytest.MonkeyPatch, late: float, in_time: float) -> None:
    """The last start that is in time is 20 min from now; before `late` more no spot is hot."""
    fit = heats(np.ones((2, MEMBERS), dtype=bool), since=20.0 + late)
    monkeypatch.setattr(planning, "_offered", lambda table, *_: planning._all_good(table))
    plan = planned(monkeypatch, fit)
    assert chances(plan) == [0.0]
    assert plan.chance == in_time


def test_a_dish_that_is_planned_late_is_not_called_in_time() -> None:
    """Nothing burns and no fire can be there so soon: the bake as planned is likely, the table's time is not."""
    pie, fire = dish("pie", oven(45.0, 350.0, 400.0), may_wait=0.0), cold(60.0, 70.0, 80.0)
    soon, later = (
        planning.plan_meal(Supper(table_at=NOW + timedelta(minutes=minutes), dishes=(pie,)), fire, NOW)
        for minutes in (60.0, 240.0)
    )
    assert soon.clashes[0].late_min > 20.0
    assert soon.chance is not None
    assert later.chance is not None
    assert soon.chance < 0.1
    assert chances(soon)[0] > 0.5
    assert later.chance == chances(later)[0] > 0.6


@pytest.mark.parametrize(
    ("warm", "cool", "even", "why"),
    [
        (1.0, 1.0, 0.2, "uneven"),
        (1.0, 1.0, 0.4, ""),
        (0.2, 1.0, 1.0, ""),
        (0.2, 1.0, 0.2, ""),
        (1.0, 0.2, 1.0, "hot"),
        (0.2, 0.2, 1.0, ""),
    ],
)
def test_a_place_too_uneven_or_too_hot_is_told_from_one_without_heat(
    monkeypatch: pytest.MonkeyPatch, warm: float, cool: float, even: float, why: str
) -> None:
    hot = np.broadcast_to(np.arange(MEMBERS) < warm * MEMBERS, (2, MEMBERS))
    (step,) = (one for one in planned(monkeypatch, heats(hot, cool=cool, even=even)).steps if one.chance is not None)
    assert step.fails_by == why
