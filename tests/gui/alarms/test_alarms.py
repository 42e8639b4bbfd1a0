"""An alarm is seen on every page, heard as the cook wants it, answered by one key, and kept over a restart."""

import subprocess
import sys
from collections.abc import Callable, Iterator
from datetime import timedelta

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QApplication, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.supper.dishes import Dish, Heat, Part, Place
from cookstove_gui.cooking.supper.plan import Margin, Plan, PlannedStep, StepKind
from cookstove_gui.desk import Desk
from cookstove_gui.desk.alarms.kept import choose_bell, choose_quiet_hours, choose_voice
from cookstove_gui.gui.alarms import bell as bell_file
from cookstove_gui.gui.alarms import voice as voice_file
from cookstove_gui.gui.alarms.bell import Bell
from cookstove_gui.gui.alarms.choices import AlarmChoices
from cookstove_gui.gui.alarms.line import AlarmLine
from cookstove_gui.gui.alarms.ringer import Ringer
from cookstove_gui.gui.alarms.sound_key import SoundKey
from cookstove_gui.gui.alarms.tones import Tone
from cookstove_gui.gui.alarms.voice import Voice
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.phrases.alarms import TRIED, heard_words
from tests.gui.alarms.heard import HeardBell, HeardVoice
from tests.gui.clipping import overlapping, settle
from tests.gui.hands import click, control, ctrl, type_in, words
from tests.held_clock import HeldClock


def plan_pie(desk: Desk, in_min: float, out_min: float) -> None:
    """Plan a pie that goes in and comes out so many minutes from now."""
    now = desk.clock()
    parts: tuple[Part, ...] = (Heat(what="bake", place=Place.OVEN, minutes=40, task="pie"),)
    step = PlannedStep(
        key="pie/0",
        kind=StepKind.HEAT,
        what="bake",
        dish="pie",
        begin=now + timedelta(minutes=in_min),
        end=now + timedelta(minutes=out_min),
    )
    dish = Dish(key="pie", name="Apple pie", parts=parts)
    table = now + timedelta(hours=2)
    desk.supper.set_table(table)
    desk.supper.add(dish)
    plan = Plan(table_at=table, made_at=now, margin=Margin.USUAL, dishes=(dish,), steps=(step,), chance=None)
    supper = desk.supper.supper
    assert supper is not None
    assert desk.supper.take(supper, plan)


@pytest.fixture
def bell() -> HeardBell:
    return HeardBell()


@pytest.fixture
def voice() -> HeardVoice:
    return HeardVoice()


@pytest.fixture
def ringer(desk: Desk, link: DeskLink, bell: HeardBell, voice: HeardVoice, qtbot: QtBot) -> Iterator[Ringer]:
    plan_pie(desk, 10, 50)
    made = Ringer(link, bell, voice)
    made.start()
    yield made
    made.close()


def test_nothing_rings_before_its_time(ringer: Ringer, bell: HeardBell) -> None:
    assert ringer.ringing == ()
    assert bell.heard == []


def test_at_its_time_it_is_seen_heard_and_spoken_once(
    ringer: Ringer, link: DeskLink, look: Look, bell: HeardBell, voice: HeardVoice, clock: HeldClock, qtbot: QtBot
) -> None:
    line = AlarmLine(link, look, ringer, "alarm_line", (27, 24))
    line.resize(1200, 44)
    qtbot.addWidget(line)
    assert line.isHidden()
    clock.pass_minutes(10)
    link.time_passed.emit()
    link.time_passed.emit()
    assert not line.isHidden()
    assert line.text() == "Put the apple pie in, if the oven is at 360 °F."
    assert (bell.heard, voice.heard) == ([Tone.ACT], ["Put the apple pie in, if the oven is at 360 degrees."])


def test_it_is_heard_again_each_minute_until_it_is_answered(ringer: Ringer, bell: HeardBell, clock: HeldClock) -> None:
    clock.pass_minutes(10)
    for _ in range(3):
        ringer.look()
        clock.pass_minutes(1)
    ringer.look()
    assert len(bell.heard) == 4
    ringer.done()
    clock.pass_minutes(5)
    ringer.look()
    assert len(bell.heard) == 4


def test_put_off_it_comes_again_after_five_minutes_and_done_it_does_not(ringer: Ringer, clock: HeldClock) -> None:
    clock.pass_minutes(10)
    ringer.look()
    ringer.put_off()
    assert ringer.ringing == ()
    clock.pass_minutes(5)
    ringer.look()
    assert [one.alarm.key for one in ringer.ringing] == ["plan/pie/0/put in"]
    ringer.done()
    clock.pass_minutes(30)
    ringer.look()
    assert ringer.ringing == ()


def test_silenced_it_stays_on_the_screen(ringer: Ringer, bell: HeardBell, clock: HeldClock) -> None:
    clock.pass_minutes(10)
    ringer.look()
    ringer.silence()
    clock.pass_minutes(3)
    ringer.look()
    assert len(bell.heard) == 1
    assert [one.is_silent for one in ringer.ringing] == [True]


def test_answers_hold_over_a_restart(ringer: Ringer, link: DeskLink, desk: Desk, clock: HeldClock) -> None:
    clock.pass_minutes(10)
    ringer.look()
    ringer.done()
    bell = HeardBell()
    again = Ringer(link, bell, HeardVoice())
    again.start()
    again.close()
    assert again.ringing == ()
    assert bell.heard == []


def test_after_a_sleep_what_is_overdue_rings_at_once_and_says_since_when(
    ringer: Ringer, link: DeskLink, look: Look, clock: HeldClock, qtbot: QtBot
) -> None:
    line = AlarmLine(link, look, ringer, "alarm_line", (27, 24))
    line.resize(1200, 44)
    qtbot.addWidget(line)
    clock.pass_minutes(95)
    link.time_passed.emit()
    assert [one.alarm.key for one in ringer.ringing] == ["plan/pie/0/take out"]
    assert "It was due at" in line.text()


def test_quiet_hours_hold_the_sound_back_but_not_the_line(
    ringer: Ringer, desk: Desk, bell: HeardBell, clock: HeldClock
) -> None:
    local = clock.now + timedelta(minutes=desk.offset_minutes)
    choose_quiet_hours(desk, f"{local:%H:%M}-{local + timedelta(minutes=20):%H:%M}")
    clock.pass_minutes(10)
    ringer.look()
    assert len(ringer.ringing) == 1
    assert bell.heard == []
    clock.pass_minutes(10)
    ringer.look()
    assert bell.heard == [Tone.ACT]


@pytest.mark.parametrize(("choose", "rang", "spoke"), [(choose_bell, 0, 1), (choose_voice, 1, 0)])
def test_bell_and_voice_are_chosen_each_alone(
    choose: Callable[[Desk, bool], None],
    rang: int,
    spoke: int,
    ringer: Ringer,
    desk: Desk,
    bell: HeardBell,
    voice: HeardVoice,
    clock: HeldClock,
) -> None:
    choose(desk, False)
    clock.pass_minutes(10)
    ringer.look()
    assert (len(bell.heard), len(voice.heard)) == (rang, spoke)


def test_a_kind_that_is_left_out_calls_for_nobody(
    ringer: Ringer, link: DeskLink, bell: HeardBell, clock: HeldClock, qtbot: QtBot
) -> None:
    choices = AlarmChoices(link, ringer)
    qtbot.addWidget(choices)
    choices.show()
    click(choices, "alarm_kind_put_in")
    clock.pass_minutes(10)
    ringer.look()
    assert (ringer.ringing, bell.heard) == ((), [])
    click(choices, "alarm_kind_put_in")
    qtbot.waitUntil(lambda: len(ringer.ringing) == 1)
    assert bell.heard == [Tone.ACT]


def test_the_choices_are_kept_and_a_wrong_span_is_explained(
    ringer: Ringer, link: DeskLink, desk: Desk, qtbot: QtBot
) -> None:
    choices = AlarmChoices(link, ringer)
    qtbot.addWidget(choices)
    choices.show()
    click(choices, "alarm_bell")
    type_in(choices, "alarm_quiet", "late")
    assert "22:00-6:30" in words(choices, "alarm_quiet_problem")
    type_in(choices, "alarm_quiet", "22-6:30")
    assert desk.setting("alarm_bell") == "off"
    assert desk.setting("alarm_quiet") == "22-6:30"
    qtbot.waitUntil(lambda: choices._quiet.text == "22:00-06:30")


def test_beside_a_plan_stands_how_alarms_are_heard_and_a_press_asks_for_the_choices(
    link: DeskLink, desk: Desk, look: Look, clock: HeldClock, qtbot: QtBot
) -> None:
    sounds = SoundKey(link, look)
    qtbot.addWidget(sounds)
    key = control(sounds, "sound_key", QPushButton)
    assert key.text() == "bell and voice"
    choose_voice(desk, False)
    qtbot.waitUntil(lambda: key.text() == "bell")
    choose_bell(desk, False)
    qtbot.waitUntil(lambda: key.text() == "no sound")
    local = clock.now + timedelta(minutes=desk.offset_minutes)
    choose_quiet_hours(desk, f"{local:%H:%M}-{local + timedelta(minutes=20):%H:%M}")
    qtbot.waitUntil(lambda: key.text() == "quiet now")
    clock.pass_minutes(20)
    link.time_passed.emit()
    assert key.text() == "no sound"
    with qtbot.waitSignal(link.alarm_choices_wanted):
        key.click()


def test_without_multimedia_or_a_loudspeaker_the_system_beeps(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    beeps: list[int] = []
    monkeypatch.setattr(bell_file, "_output", lambda: None)
    monkeypatch.setattr(QApplication, "beep", lambda: beeps.append(1))
    assert Bell().ring(Tone.ACT) == 0.0
    assert beeps == [1]


def test_without_a_voice_nothing_is_said_and_nothing_fails(qapp: QApplication, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(voice_file, "_first_engine", lambda: "")
    voice = Voice()
    voice.say("Turn the bread.")
    voice.stop()
    voice.close()
    assert not voice.is_there


def test_missing_libraries_of_the_machine_are_no_failure(qapp: QApplication, monkeypatch: pytest.MonkeyPatch) -> None:
    """As on a machine without the sound server's library, where the import itself fails."""
    monkeypatch.undo()  # so that the machine itself is asked
    monkeypatch.setitem(sys.modules, "PySide6.QtMultimedia", None)
    monkeypatch.setitem(sys.modules, "PySide6.QtTextToSpeech", None)
    assert bell_file._output() is None
    assert not Voice().is_there


@pytest.fixture
def spoken_by(qtbot: QtBot) -> Iterator[Voice]:
    """Qt's own engine for tests, which takes its time and makes no sound."""
    pytest.importorskip("PySide6.QtTextToSpeech", exc_type=ImportError)
    voice = Voice("mock")
    yield voice
    voice.close()


def test_a_voice_speaks_in_a_thread_of_its_own_until_it_is_told_to_stop(spoken_by: Voice, qtbot: QtBot) -> None:
    spoken_by.say("Turn the bread.")
    spoken_by.say("Add 1 split.")
    speech = spoken_by._speech
    assert speech is not None
    assert speech.thread() is not spoken_by.thread()
    speaking, ready = type(speech).State.Speaking, type(speech).State.Ready
    qtbot.waitUntil(lambda: speech.engine() == "mock" and speech.state() == speaking)
    spoken_by.stop()
    qtbot.waitUntil(lambda: speech.state() == ready)
    assert spoken_by.is_there


def test_an_engine_that_fails_is_told_of_and_left_alone(spoken_by: Voice, qtbot: QtBot) -> None:
    spoken_by.say("Turn the bread.")
    speech = spoken_by._speech
    assert speech is not None
    assert spoken_by.is_there
    with qtbot.waitSignal(spoken_by.lost):
        speech.errorOccurred.emit(type(speech).ErrorReason.Initialization, "no sound server")
    assert not spoken_by.is_there


def test_the_voice_waits_for_the_bell_and_says_nothing_that_is_done(
    ringer: Ringer, bell: HeardBell, voice: HeardVoice, clock: HeldClock, qtbot: QtBot
) -> None:
    bell.lasts_s = 0.02
    clock.pass_minutes(10)
    ringer.look()
    assert (bell.heard, voice.heard) == ([Tone.ACT], [])
    assert voice.is_ready  # begins while the bell rings
    qtbot.waitUntil(lambda: voice.heard == ["Put the apple pie in, if the oven is at 360 degrees."])
    clock.pass_minutes(1)
    ringer.look()
    ringer.done()  # while the bell still rings
    assert not ringer._after_bell.isActive()
    assert (len(bell.heard), len(voice.heard)) == (2, 1)


def test_what_is_no_more_to_be_done_when_the_bell_ends_is_not_said(
    ringer: Ringer, desk: Desk, bell: HeardBell, voice: HeardVoice, clock: HeldClock, qtbot: QtBot
) -> None:
    bell.lasts_s = 30.0
    clock.pass_minutes(10)
    ringer.look()
    desk.supper.clear()
    qtbot.waitUntil(lambda: ringer.ringing == ())
    ringer._after_bell.timeout.emit()
    assert voice.heard == []


def test_a_voice_that_turns_out_to_be_none_is_told_beside_the_try(
    ringer: Ringer, link: DeskLink, bell: HeardBell, voice: HeardVoice, qtbot: QtBot
) -> None:
    choices = AlarmChoices(link, ringer)
    qtbot.addWidget(choices)
    bell.lasts_s = 0.01
    voice.lost.emit()
    assert words(choices, "alarm_heard") == ""
    click(choices, "alarm_try")
    assert words(choices, "alarm_heard") == heard_words(True, True)
    qtbot.waitUntil(lambda: voice.heard == [TRIED])
    voice.lost.emit()
    assert words(choices, "alarm_heard") == heard_words(True, False)


def test_the_window_rings_and_one_key_each_answers(
    window: MainWindow, desk: Desk, clock: HeldClock, qtbot: QtBot
) -> None:
    plan_pie(desk, 10, 50)
    clock.pass_minutes(10)
    window.ringer.look()
    line = control(window, "alarm_line", AlarmLine)
    assert line.isVisible()
    ctrl(window, Qt.Key.Key_S)
    assert not line.isVisible()
    clock.pass_minutes(5)
    window.ringer.look()
    assert line.isVisible()
    ctrl(window, Qt.Key.Key_L)
    assert line.isVisible()
    assert not control(window, "alarm_silence", QPushButton).isEnabled()
    ctrl(window, Qt.Key.Key_Space)
    assert not line.isVisible()


def test_it_is_seen_on_every_page_and_answered_with_the_mouse(
    window: MainWindow, desk: Desk, clock: HeldClock, qtbot: QtBot
) -> None:
    window.link.alarm_choices_wanted.emit()
    assert control(window, "alarm_choices", AlarmChoices).isVisible()
    plan_pie(desk, 10, 50)
    clock.pass_minutes(10)
    window.ringer.look()
    line = control(window, "alarm_line", AlarmLine)
    for page in ("plan", "my_stove", "logbook", "keys", "large", "cook"):
        window.show_page(page)
        assert line.isVisible(), page
    click(window, "alarm_done")
    assert not line.isVisible()


def test_an_alarm_covers_neither_what_to_do_nor_the_line_behind_it(
    window: MainWindow, desk: Desk, clock: HeldClock, qtbot: QtBot
) -> None:
    said = [control(window, name, OneLine) for name in ("headline", "detail")]
    plan_pie(desk, 10, 50)
    clock.pass_minutes(10)
    window.ringer.look()
    settle()
    line = control(window, "alarm_line", AlarmLine)
    seen = [part for part in said if part.isVisible()]  # the second line gives way to a caution that is unread
    assert said[0] in seen
    for part in seen:
        assert not _in_window(part).intersects(_in_window(line))
    qtbot.waitUntil(lambda: list(overlapping(window)) == [])  # once the window has made room


def _in_window(part: QWidget) -> QRect:
    return QRect(part.mapTo(part.window(), QPoint(0, 0)), part.size())


def test_nothing_rings_before_the_window_is_painted(
    desk: Desk, look: Look, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    window = MainWindow(desk, look)
    qtbot.addWidget(window)
    plan_pie(desk, -1, 50)
    monkeypatch.setattr(type(desk.supper), "take", lambda *_: False)  # planned anew, the pie might go in later
    window.ringer.look()
    assert window.ringer.ringing == ()
    with qtbot.waitSignal(window.painted, timeout=10_000):
        window.show()
    qtbot.waitUntil(lambda: bool(window.ringer.ringing))


def test_the_window_is_imported_without_sound_and_without_the_calendar() -> None:
    program = "import sys, cookstove_gui.gui.window; print(*sys.modules)"
    found = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True).stdout.split()
    assert "cookstove_gui.gui.alarms.bell" in found
    assert not {"PySide6.QtMultimedia", "PySide6.QtTextToSpeech", "icalendar"} & set(found)
