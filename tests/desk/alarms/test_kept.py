"""What was answered about alarms and how they are heard is kept in the logbook, and read back as it was."""

from datetime import time, timedelta
from pathlib import Path

import pytest

from cookstove_gui.cooking.supper.alarms import AlarmKind, QuietHours, done, put_off, silenced
from cookstove_gui.desk import Desk
from cookstove_gui.desk.alarms.kept import (
    AlarmSettings,
    alarm_settings,
    choose_bell,
    choose_kind,
    choose_quiet_hours,
    choose_voice,
    keep_answers,
    kept_answers,
    quiet_from_text,
    quiet_text,
    turn_sound,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from tests.held_clock import HeldClock


def test_answers_come_back_as_they_were_after_a_restart(tmp_path: Path, held_clock: HeldClock) -> None:
    logbook = Logbook.open(tmp_path / "logbook.sqlite")
    now = held_clock.now
    answers = silenced(put_off(done((), "a", now), "b", now + timedelta(seconds=1)), ["c"], now)
    keep_answers(Desk(logbook, held_clock), answers)
    logbook.close()
    again = Logbook.open(tmp_path / "logbook.sqlite")
    assert kept_answers(Desk(again, held_clock)) == answers
    again.close()


def test_kinds_of_alarms_are_left_out_each_alone_and_taken_up_again(held_desk: Desk) -> None:
    assert alarm_settings(held_desk).left_out == frozenset()
    choose_kind(held_desk, AlarmKind.NEXT_READING, False)
    choose_kind(held_desk, AlarmKind.RELOAD, False)
    assert alarm_settings(held_desk).left_out == {AlarmKind.NEXT_READING, AlarmKind.RELOAD}
    choose_kind(held_desk, AlarmKind.RELOAD, True)
    assert alarm_settings(held_desk).left_out == {AlarmKind.NEXT_READING}


def test_the_sound_of_one_alarm_goes_off_and_on(held_desk: Desk) -> None:
    turn_sound(held_desk, "a")
    assert [(one.key, one.silent) for one in kept_answers(held_desk)] == [("a", True)]
    turn_sound(held_desk, "a")
    assert kept_answers(held_desk) == ()


@pytest.mark.parametrize("text", ["", "nonsense", "{}", "[1, null]", '[{"key": "a"}]', '[{"key": "a", "at": "noon"}]'])
def test_answers_that_cannot_be_read_are_left_out(held_desk: Desk, text: str) -> None:
    held_desk.set_setting("alarm_answers", text)
    assert kept_answers(held_desk) == ()


def test_bell_and_voice_are_on_until_they_are_switched_off(held_desk: Desk) -> None:
    assert alarm_settings(held_desk) == AlarmSettings(bell=True, voice=True, quiet=None)
    choose_bell(held_desk, False)
    choose_voice(held_desk, False)
    assert alarm_settings(held_desk) == AlarmSettings(bell=False, voice=False, quiet=None)
    choose_bell(held_desk, True)
    assert alarm_settings(held_desk).bell


@pytest.mark.parametrize(
    ("text", "begin", "end"),
    [
        ("22:00-6:30", time(22), time(6, 30)),
        ("22-6", time(22), time(6)),
        (" 13:00 – 14:30 ", time(13), time(14, 30)),
        ("21:15 to 7", time(21, 15), time(7)),
    ],
)
def test_quiet_hours_as_they_may_be_typed(text: str, begin: time, end: time) -> None:
    found = quiet_from_text(text)
    assert found == QuietHours(begin=begin, end=end)
    assert quiet_from_text(quiet_text(found)) == found


@pytest.mark.parametrize("text", ["22", "22-", "25-6", "22:99-6", "22-6-7", "late-early", "6-6"])
def test_what_is_no_span_of_hours_is_refused_and_nothing_is_kept(held_desk: Desk, text: str) -> None:
    with pytest.raises(InputProblem):
        choose_quiet_hours(held_desk, text)
    assert alarm_settings(held_desk).quiet is None
