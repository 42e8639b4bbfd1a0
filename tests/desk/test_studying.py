"""What the past teaches is kept, found again after a restart, and studied again once there is more of it."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.desk import Desk, kept_studies
from cookstove_gui.desk.kept_studies import KeptStudies, fingerprint
from cookstove_gui.desk.studying import PastSessions, learning_is_due, study_is_due, study_reader
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Kind, Session
from cookstove_gui.stove.stove import Firebox, unchecked
from cookstove_gui.study import Study, StudyInputs, study
from tests.forecast.logs import STOVE, sessions
from tests.held_clock import HeldClock

PAST = tuple(sessions(3))


@pytest.fixture(scope="module")
def found() -> Study:
    """What the first two sessions teach."""
    return _studied(*PAST[:2])


def _studied(*past: Session) -> Study:
    made_of = fingerprint(STOVE, ((session.number, len(session.entries)) for session in past))
    study_found = study(StudyInputs(stove=STOVE, sessions=past, fingerprint=made_of))
    assert study_found is not None
    return study_found


@pytest.fixture
def clock() -> HeldClock:
    return HeldClock(PAST[-1].entries[-1].at + timedelta(days=2))


@pytest.fixture
def desk(clock: HeldClock) -> Desk:
    """A stove with two sessions behind it, never studied."""
    logbook = Logbook.in_memory()
    logbook.save_stove(STOVE)
    for session in PAST[:2]:
        logbook.add_session(STOVE.name, session.title, session.entries)
    return Desk(logbook, clock)


def dues(desk: Desk) -> tuple[bool, bool]:
    return study_is_due(desk), learning_is_due(desk)


def test_without_a_past_there_is_nothing_to_study(clock: HeldClock) -> None:
    assert dues(Desk(Logbook.in_memory(), clock)) == (False, False)


def test_a_past_is_studied_until_it_is_known(desk: Desk, found: Study) -> None:
    assert dues(desk) == (True, True)
    assert desk.inputs().character is None
    desk.show_study(found)
    assert dues(desk) == (False, False)
    assert desk.study is found
    assert desk.inputs().character is found.character


def test_what_was_learned_is_found_again_after_a_restart(desk: Desk, found: Study) -> None:
    desk.show_study(found)
    again = Desk(desk.logbook, desk.clock)
    assert dues(again) == (True, False)  # the page's tables want a study, the forecast knows what it needs
    kept = again.inputs().character
    assert kept is not None
    assert kept.firings == found.character.firings
    assert again.inputs().character is kept
    known = study_reader(again)().known
    assert known is not None
    assert known.sessions == 2


def test_one_session_more_goes_on_from_what_is_known(desk: Desk, found: Study) -> None:
    desk.show_study(found)
    desk.logbook.add_session(STOVE.name, PAST[2].title, PAST[2].entries)
    assert dues(desk) == (True, True)
    asked = study_reader(desk)()
    assert len(asked.sessions) == 3
    assert asked.known is not None


def test_a_session_that_has_grown_is_another_past(desk: Desk, found: Study) -> None:
    desk.show_study(found)
    desk.open_session(1)
    desk.take_back(3)
    assert dues(desk) == (True, True)
    assert study_reader(desk)().known is None


def test_a_past_whose_last_session_had_the_first_digits_of_its_rows_is_not_known(desk: Desk, found: Study) -> None:
    # Two rows, and later twenty and more: the text of one count begins the other.
    short = replace(found, fingerprint=fingerprint(STOVE, [(1, len(PAST[0].entries)), (2, len(PAST[1].entries) // 10)]))
    desk.show_study(short)
    assert study_reader(desk)().known is None


def test_the_session_being_written_is_left_aside(desk: Desk, found: Study, clock: HeldClock) -> None:
    desk.show_study(found)
    desk.do(Kind.LIT)
    assert dues(desk) == (False, False)
    assert len(study_reader(desk)().sessions) == 2
    clock.pass_minutes(361)
    assert dues(desk) == (True, True)
    assert len(study_reader(desk)().sessions) == 3


@pytest.mark.parametrize(
    ("changed", "is_another"),
    [
        ({"firebox": Firebox.RIGHT}, True),
        ({"cooktop_surface": "stove paint"}, True),
        ({"instruments": (unchecked("gun", "infrared"),)}, True),
        ({"sides": "soapstone"}, False),
        ({"note": "under the window"}, False),
    ],
)
def test_what_changes_the_meaning_of_readings_makes_another_past(
    desk: Desk, found: Study, changed: dict[str, object], is_another: bool
) -> None:
    desk.show_study(found)
    desk.save_stove(replace(desk.stove, **changed))
    assert learning_is_due(desk) is is_another


def test_a_past_is_told_apart_by_its_sessions_and_their_rows() -> None:
    assert fingerprint(STOVE, [(1, 3), (2, 4)]) != fingerprint(STOVE, [(1, 3), (2, 5)])
    assert fingerprint(STOVE, [(1, 3)]) != fingerprint(STOVE, [(2, 3)])
    assert fingerprint(STOVE, [(1, 3), (2, 4)]).startswith(fingerprint(STOVE, [(1, 3)]))


@pytest.mark.parametrize("spoilt", [{}, {"learned": 3}, {"sessions": "two"}])
def test_what_cannot_be_read_any_more_is_computed_again(desk: Desk, found: Study, spoilt: dict[str, object]) -> None:
    desk.show_study(found)
    lesson = desk.logbook.learned.of(STOVE.name, kept_studies._MADE_BY)
    assert lesson is not None
    bad = lesson._replace(content={**lesson.content, **spoilt} if spoilt else {})
    desk.logbook.learned.keep(STOVE.name, kept_studies._MADE_BY, bad)
    again = KeptStudies(desk.logbook)
    assert again.character(STOVE) is None
    assert again.inputs(STOVE, without=None).known is None


def test_what_older_code_kept_is_not_used(desk: Desk, found: Study) -> None:
    desk.show_study(found)
    lesson = desk.logbook.learned.of(STOVE.name, kept_studies._MADE_BY)
    assert lesson is not None
    desk.logbook.learned.keep(STOVE.name, "what older code wrote", lesson)
    assert Desk(desk.logbook, desk.clock).inputs().character is None
    assert learning_is_due(desk)


def test_past_sessions_are_read_again_only_when_there_is_more_of_them(desk: Desk, monkeypatch) -> None:
    past, reads = PastSessions(desk), []
    read = desk.logbook.past_sessions
    monkeypatch.setattr(desk.logbook, "past_sessions", lambda stove: reads.append(stove) or read(stove))
    assert [len(past(STOVE.name)) for _ in range(2)] == [2, 2]
    assert len(reads) == 1
    desk.open_session(1)
    desk.take_back(3)
    assert len(past(STOVE.name)[0].entries) == len(PAST[0].entries) + 1
    assert past("another stove") == ()
    assert len(reads) == 3
