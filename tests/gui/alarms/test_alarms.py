"""An alarm is seen on every page, heard as the cook wants it, answered by one key, and kept over a restart."""

import subprocess
import sys
from collections.abc import Callable
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
from cookstove_gui.gui.alarms.tones import Tone
from cookstove_gui.gui.alarms.voice import Voice
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.window import MainWindow
from tests.gui.clipping import overlapping, settle
from tests.gui.hands import click, control, ctrl, type_in, words
from tests.held_clock import HeldClock


class HeardBell(Bell):
    def __init__(self) -> None:
        super().__init__()
        self.heard: list[Tone] = []

    def ring(self, tone: Tone) -> bool:
        self.heard.append(tone)
        return True


class HeardVoice(Voice):
    def __init__(self) -> None:
        super().__init__()
        self.heard: list[str] = []

    def say(self, words: str) -> bool:
        self.heard.append(words)
        return True


def plan_pie(desk: Desk, in_min: float, out_min: float) -> None:
    """Plan a pie that goes in and comes out so many minutes from now."""
    now = desk.clock()
    parts: tuple[Part, ...] = (Heat(what="bake", place=Place.OVEN, minutes=40),)
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
def ringer(desk: Desk, link: DeskLink, bell: HeardBell, voice: HeardVoice, qtbot: QtBot) -> Ringer:
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
    assert line.text() == "Put the apple pie in."
    assert (bell.heard, voice.heard) == ([Tone.ACT], ["Put the apple pie in."])


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


def test_without_multimedia_or_a_loudspeaker_the_system_beeps(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    beeps: list[int] = []
    monkeypatch.setattr(bell_file, "_output", lambda: None)
    monkeypatch.setattr(QApplication, "beep", lambda: beeps.append(1))
    assert not Bell().ring(Tone.ACT)
    assert beeps == [1]


def test_without_a_voice_nothing_is_said_and_nothing_fails(qapp: QApplication, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(voice_file, "_speech", lambda _engine: None)
    voice = Voice()
    assert not voice.say("Turn the bread.")
    voice.stop()


def test_missing_libraries_of_the_machine_are_no_failure(qapp: QApplication, monkeypatch: pytest.MonkeyPatch) -> None:
    """As on a machine without the sound server's library, where the import itself fails."""
    monkeypatch.setitem(sys.modules, "PySide6.QtMultimedia", None)
    monkeypatch.setitem(sys.modules, "PySide6.QtTextToSpeech", None)
    assert bell_file._output() is None
    assert not Voice().say("Turn the bread.")


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
    assert list(overlapping(window)) == []


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
