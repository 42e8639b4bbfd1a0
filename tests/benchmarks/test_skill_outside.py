"""What lies outside the goals of a skill study is told, and told apart from chance."""

from dataclasses import dataclass, replace
from typing import Any, cast

import numpy as np

from tests.benchmarks.skill_outside import LEAST_STOVES, outside_lines
from tests.benchmarks.skill_questions import HORIZON, Firing, Question
from tests.benchmarks.skill_table import Scores

STOVES, EACH = 12, 10


@dataclass(frozen=True)
class _Session:
    stove_seed: int
    family: str = "cast left"


def _questions() -> list[Question]:
    """Half of them before the band was reached, every one of a rising oven."""
    path = np.linspace(400.0, 500.0, HORIZON + 1)
    sessions = [_Session(stove) for stove in range(STOVES)]
    unused: dict[str, Any] = {"now": None, "readings": None, "band": None}
    return [
        Question(
            session=cast("Firing", session),
            minute=20.0,
            ahead=path[:3],
            path=path,
            arrival=30.0,
            reached_before=number % 2 == 0,
            **unused,
        )
        for session in sessions
        for number in range(EACH)
    ]


def _scores(loss: float, inside: np.ndarray | float = 0.8) -> Scores:
    count = STOVES * EACH
    held = np.random.default_rng(4).random((count, 3)) < inside
    return Scores(
        pinball=np.full((count, 3), loss), inside=held.astype(float), arrival_error=np.full(count, loss),
        arrival_if_came=np.full(count, loss), arrival_inside=held[:, 0].astype(float), brier=np.full(count, 0.1),
        width=np.ones((count, 3)), too_high=np.zeros((count, 3)),
    )  # fmt: skip


def _told(ours: Scores, *plain: Scores) -> list[str]:
    return outside_lines(_questions(), {f"plain {n}": one for n, one in enumerate(plain)}, {"ours": ours})[1:]


def test_within_the_goals_nothing_is_told() -> None:
    assert _told(_scores(1.02), _scores(1.0), _scores(2.0)) == []


def test_a_loss_above_that_of_the_best_plain_forecaster_is_told_for_every_part() -> None:
    told = _told(_scores(1.1), _scores(3.0), _scores(1.0))
    assert len(told) == 5 * 4  # all, the kind, both phases, rising; three leads and the arrival
    assert all("against plain 1" in line and "1.10 (1.10 to 1.10)" in line for line in told)
    assert all(line.endswith("beyond chance") for line in told)


def test_one_stove_that_is_off_may_be_chance_and_half_of_them_are_not() -> None:
    number = np.repeat(np.arange(STOVES), EACH)
    for off, word in ((number < 1, "may be chance"), (number < 8, "beyond chance")):
        ours = replace(_scores(1.0), pinball=np.where(off, 1.5 if word[0] == "m" else 1.2, 1.0)[:, None] * np.ones(3))
        assert {line[-13:] for line in _told(ours, _scores(1.0))} == {word}


def test_windows_that_hold_too_seldom_or_too_often_are_told() -> None:
    narrow, wide = _told(_scores(1.0, 0.55), _scores(1.0)), _told(_scores(1.0, 0.97), _scores(1.0))
    assert any("held at +60" in line for line in narrow)
    assert any("held, arrival" in line and "beyond chance" in line for line in wide)


def test_of_two_stoves_nothing_is_said() -> None:
    count = (LEAST_STOVES - 1) * EACH
    ours, plain = ({name: getattr(one, name)[:count] for name in one.__slots__} for one in (_scores(2.0), _scores(1.0)))
    assert len(outside_lines(_questions()[:count], {"plain": Scores(**plain)}, {"ours": Scores(**ours)})) == 1
