"""The observer of the second and third world: nearer to the truth than the last reading, and the same each time."""

import numpy as np
import pytest

from tests.benchmarks.skill_questions import Question, questions_of
from tests.benchmarks.skill_worlds import WORLDS
from tests.world.log_observer import observed_by_log
from tests.world.other import OtherSession
from tests.world.third import ThirdSession


def _asked(world: str) -> tuple[OtherSession | ThirdSession, list[Question]]:
    session = WORLDS[world](510, [101])[0]
    assert isinstance(session, OtherSession | ThirdSession)
    return session, questions_of(session)[1::3]


@pytest.mark.parametrize("world", ["other", pytest.param("third", marks=pytest.mark.slow)])
def test_what_is_foretold_is_nearer_than_the_last_reading(world: str) -> None:
    session, asked = _asked(world)
    paths = observed_by_log(session, [question.minute for question in asked], 24)
    assert paths.shape == (len(asked), 24, 181)
    true = np.array([question.path for question in asked])
    last = np.array([question.readings[-1, 1] for question in asked])
    middle = np.median(paths, axis=1)
    assert np.abs(middle[:, 0] - true[:, 0]).max() < 15.0
    assert np.abs(middle[:, 30] - true[:, 30]).mean() < 0.7 * np.abs(last - true[:, 30]).mean()


def test_rows_yet_to_come_tell_nothing() -> None:
    session, asked = _asked("other")
    first = asked[0].minute
    alone = observed_by_log(session, [first], 8)
    with_later = observed_by_log(session, [first, asked[1].minute], 8)
    assert np.array_equal(alone[0, :, 0], with_later[0, :, 0])


def test_the_same_log_gives_the_same_futures() -> None:
    session, asked = _asked("other")
    minutes = [asked[0].minute]
    assert np.array_equal(observed_by_log(session, minutes, 8), observed_by_log(session, minutes, 8))
