"""For a task each spot of the cooktop has its chance, or the reason why it is no place for it."""

from dataclasses import replace

import pytest

from cookstove_gui.cooking.fit.fit import FitState, SpotFit, TaskFit
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.task_places import TaskPlace, task_places
from tests.desk.conftest import stand


def ask(desk: Desk, key: str, spot: SpotFit, heat: float, state: FitState = FitState.NOW) -> dict[str, TaskPlace]:
    """A desk whose spot has a heat [K], and a task that may be done there."""
    task = task_of(key)
    assert task is not None
    stand(desk)
    standing = desk.standing
    assert standing is not None
    zones = standing.zones | {spot.spot: replace(standing.zones[spot.spot], p50=heat)}
    desk._shown.standing = replace(standing, zones=zones, fits=(TaskFit(task=task, state=state, spots=(spot,)),))
    return task_places(desk, key)


def fit(chance: float, uneven: float = 0.0) -> SpotFit:
    return SpotFit(spot="top_front_left", chance_now=chance, in_min=None, chance_then=0.0, uneven_now=uneven)


@pytest.mark.parametrize(
    ("chance", "uneven", "beyond", "will_do", "words"),
    [
        (0.8, 0.0, 0.0, True, "8 in 10"),
        (0.5, 0.0, 0.0, True, "5 in 10"),
        (0.4, 0.0, 60.0, False, "too hot"),
        (0.4, 0.0, -60.0, False, "too cool"),
        (0.1, 0.6, 0.0, False, "too uneven"),
        (0.1, 0.1, 0.0, False, "not steady"),
    ],
)
def test_a_spot_says_its_chance_or_why_not(
    burning_desk: Desk, chance: float, uneven: float, beyond: float, will_do: bool, words: str
) -> None:
    task = task_of("simmer")
    assert task is not None
    heat = task.middle + (beyond + (task.high - task.low) / 2 * (1 if beyond > 0 else -1) if beyond else 0.0)
    found = ask(burning_desk, "simmer", fit(chance, uneven), heat)
    assert found == {"top_front_left": TaskPlace(will_do=will_do, words=words)}


def test_the_oven_and_what_is_refused_have_no_place_on_the_cooktop(burning_desk: Desk) -> None:
    assert ask(burning_desk, "bread", replace(fit(0.9), spot="oven_centre"), 450.0) == {}
    assert ask(burning_desk, "simmer", fit(0.9), 420.0, FitState.REFUSED) == {}
    assert task_places(burning_desk, "no such task") == {}
