"""A Sunday supper of four dishes cooked through in the window at speed, on a fire that misbehaves. Slow."""

import wave
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import numpy as np
import pytest
import vobject
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.supper.alarms import done
from cookstove_gui.cooking.supper.jobs import GRACE_MIN
from cookstove_gui.cooking.supper.plan import StepKind
from cookstove_gui.desk.alarms.kept import keep_answers, kept_answers
from cookstove_gui.desk.plan.supper_files import write_calendar
from cookstove_gui.gui.alarms.tones import Tone
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.phrases.plan.supper import turned_out_words
from tests.gui.plan.supper.sunday import DISHES, LOOKS_MIN, TABLE_H, Seen, Sunday

pytestmark = [pytest.mark.slow, pytest.mark.gui]


@pytest.fixture
def evening(qtbot: QtBot, look: Look, tmp_path: Path) -> Iterator[Sunday]:
    made = Sunday(folder=tmp_path, app_look=look)
    yield made
    made.close()


def _is_in_the_oven(evening: Sunday) -> bool:
    plan = evening.desk.supper.plan
    return plan is not None and any(step.begun and step.kind is StepKind.HEAT for step in plan.of_dish("bread"))


def _check(seen: Seen, evening: Sunday) -> None:
    """Nothing to do lies in the past, and whatever moved says from when to when, and why."""
    late = timedelta(minutes=GRACE_MIN + LOOKS_MIN)
    now = evening.clock()
    for step in seen.plan.steps:
        if step.kind in (StepKind.HANDS, StepKind.HEAT) and not (step.done or step.begun):
            assert step.begin >= now - late, f"{step.key} is still to begin at {step.begin}, now is {now}"
    for move in seen.plan.moved:
        assert move.why in ("late", "heat", "known", "dish", "own")
        assert abs(move.now - move.was) > timedelta(minutes=3)
    assert not seen.moved or (", was " in seen.moved and ": " in seen.moved)
    assert seen.headline


def test_a_sunday_supper_is_cooked_through(evening: Sunday, tmp_path: Path) -> None:
    evening.plan_it()
    restarted, last = False, int(60 * TABLE_H) + 60
    for seen in evening.cook(last):
        _check(seen, evening)
        if not restarted and _is_in_the_oven(evening):
            restarted = True
            _restart_in_mid_bake(evening)
            _calendar_is_read_by_another_library(evening, tmp_path / "supper.ics")
    assert restarted, "the bread never went in"
    supper = evening.desk.supper.supper
    assert supper is not None
    assert [dish.key for dish in supper.dishes] == list(DISHES)
    assert turned_out_words(supper, evening.desk.edge), "a dish was never done"
    _alarms_are_heard(evening, tmp_path / "alarms.wav")


def _restart_in_mid_bake(evening: Sunday) -> None:
    desk = evening.desk
    keep_answers(desk, done(kept_answers(desk), "plan/bread/4/put in", desk.clock()))
    supper, plan, answers, rows = desk.supper.supper, desk.supper.plan, kept_answers(desk), desk.rows
    assert plan is not None
    evening.restart()
    again = evening.desk
    assert again is not desk
    assert again.supper.supper == supper
    assert again.rows == rows
    assert kept_answers(again) == answers
    assert again.supper.plan is not None
    was = {step.key: (step.begin, step.done, step.begun) for step in plan.steps if step.dish}
    now = {step.key: (step.begin, step.done, step.begun) for step in again.supper.plan.steps if step.dish}
    assert now == was


def _calendar_is_read_by_another_library(evening: Sunday, path: Path) -> None:
    write_calendar(evening.desk, path)
    calendar = vobject.readOne(path.read_text("utf-8"))
    titles = [event.summary.value for event in calendar.vevent_list]
    assert titles[-1] == "Supper on the table"
    assert any(title.startswith("Apple pie: bake") for title in titles)
    assert calendar.vevent_list[-1].dtstart.value == evening.desk.supper.supper.table_at  # type: ignore[union-attr]


def _alarms_are_heard(evening: Sunday, path: Path) -> None:
    evening.bell.write(path)
    assert any("apple pie" in said.casefold() for said in evening.voice.heard)
    assert Tone.ACT in evening.bell.heard
    with wave.open(str(path)) as file:
        rate, count = file.getframerate(), file.getnframes()
        heard = np.frombuffer(file.readframes(count), dtype="<i2").astype(float)
    assert count / rate > 0.5 * len(evening.bell.heard)
    loud = np.abs(np.fft.rfft(heard))
    frequency = np.fft.rfftfreq(len(heard), 1.0 / rate)[np.argmax(loud)]
    assert min(abs(frequency - one) for one in (659.3, 880.0, 1174.7)) < 5.0
