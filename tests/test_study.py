"""What is studied: every session of the past, or those alone that came after the kept lessons."""

import pytest

from cookstove_gui.study import Study, StudyInputs, past_lessons, record_bands, study
from tests.forecast.logs import STOVE, sessions


def _study(count: int, **given) -> Study | None:
    return study(StudyInputs(stove=STOVE, sessions=tuple(sessions(count)), fingerprint="of these"), **given)


def test_every_session_is_learned_from_and_told():
    told: list[tuple[int, int]] = []
    found = _study(2, progressed=lambda done, total: told.append((done, total)))
    assert found is not None
    assert (found.stove_name, found.fingerprint) == (STOVE.name, "of these")
    assert (found.character.firings, found.record.sessions) == (2, 2)
    assert told == [(1, 2), (2, 2)]
    assert found.pattern[0].readings == 8  # four rounds a morning


def test_sessions_already_known_are_not_followed_again():
    past = tuple(sessions(2))
    known = past_lessons(STOVE, past[:1])
    told: list[tuple[int, int]] = []
    study(StudyInputs(stove=STOVE, sessions=past, fingerprint="x", known=known), lambda *done: told.append(done))
    assert told == [(2, 2)]


@pytest.mark.parametrize(("given_up", "says_nothing"), [(True, True), (False, False)])
def test_a_study_given_up_says_nothing(given_up, says_nothing):
    assert (_study(1, cancelled=lambda: given_up) is None) is says_nothing


def test_width_at_an_hour_is_that_of_the_hour():
    found = _study(1)
    assert found is not None
    assert found.width_at_an_hour == found.character.corrections.width[3]


def test_the_record_asks_about_the_named_heats_from_slow_to_very_hot():
    bands = record_bands()
    assert [band.low for band in bands] == sorted(band.low for band in bands)
    assert len(bands) > 3
