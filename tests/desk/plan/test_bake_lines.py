"""The picture of a bake says what its sentence says: the core's line crosses done where it is likely done."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.desk.plan.bake import BakeChoice, BakeInputs, plan_bake
from cookstove_gui.desk.plan.bake_lines import bake_lines
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.units import kelvin
from tests.desk.plan.test_bake import plan  # noqa: F401 - the fixture


@pytest.mark.parametrize("in_min", [-20.0, 0.0, 30.0])
def test_the_cores_line_crosses_done_where_it_is_likely_done(plan, stands, in_min):  # noqa: F811
    _, standing = stands
    lines = bake_lines(plan(in_min), standing)
    earliest, likely, latest = lines.window
    assert earliest <= likely <= latest
    assert np.interp(likely, lines.core.minutes, lines.core.p50) == pytest.approx(lines.done_at, abs=2.0)
    assert lines.core.minutes[0] == pytest.approx(in_min)
    assert lines.start < lines.goes_in < likely < lines.end


def test_an_answer_of_a_while_ago_keeps_its_clocks(plan, stands):  # noqa: F811
    _, standing = stands
    found = plan(-20.0)
    at_once = bake_lines(found, standing)
    later = bake_lines(found, replace(standing, now=standing.now + timedelta(minutes=10)))
    assert later.window[1] == pytest.approx(at_once.window[1] - 10.0)
    assert later.turn == pytest.approx(at_once.turn - 10.0)
    assert later.core.minutes[0] == pytest.approx(at_once.core.minutes[0] - 10.0)
    assert later.goes_in == pytest.approx(-30.0)


def test_what_the_catalogue_does_not_know_has_no_lines(stands):
    stove, standing = stands
    found = plan_bake(
        BakeInputs(standing=standing, stove=stove, pressure=STANDARD_PRESSURE, choice=BakeChoice(key="bread_loaf"))
    )
    assert bake_lines(replace(found, answer=None), standing) is None


def test_the_window_is_the_answers_and_an_end_beyond_the_futures_stays_open(plan, stands):  # noqa: F811
    _, standing = stands
    found = plan(-20.0)
    done = found.answer.done_min
    assert bake_lines(found, standing).window == pytest.approx((done.p10, done.p50, done.p90))
    late = replace(found, answer=replace(found.answer, done_min=replace(done, p50=None, p90=None)))
    first, likely, latest = bake_lines(late, standing).window
    assert first == pytest.approx(done.p10)
    assert (likely, latest) == (None, None)


def test_the_picture_shows_the_bake_and_some_minutes_to_either_side(plan, stands):  # noqa: F811
    _, standing = stands
    lines = bake_lines(plan(-20.0), standing)
    assert lines.start == pytest.approx(lines.goes_in - 5.0)
    assert lines.end == pytest.approx(max(lines.window[2] + 13.0, lines.start + 60.0))
    soon = plan(0.0)
    nearly = replace(
        soon, answer=replace(soon.answer, done_min=replace(soon.answer.done_min, p10=1.0, p50=2.0, p90=3.0))
    )
    short = bake_lines(nearly, standing)
    assert short.end - short.start == pytest.approx(60.0)  # never less than an hour


def test_the_oven_is_drawn_as_it_was_known_read_and_projected(plan, stands):  # noqa: F811
    stove, standing = stands
    lines = bake_lines(plan(-20.0), standing)
    trace = standing.trace
    assert lines.oven_past.minutes == pytest.approx([(at - standing.now).total_seconds() / 60 for at in trace.at])
    for name in ("p10", "p50", "p90"):
        assert getattr(lines.oven_past, name) == pytest.approx(getattr(trace, name))
    middle = np.median(standing.projection.of(stove.oven_spot), axis=0)
    assert lines.oven_ahead.p50 == pytest.approx(middle)
    read = [row for row in standing.rows if row.spot == stove.oven_spot]
    assert [minute for minute, _ in lines.oven_read] == [(row.at - standing.now).total_seconds() / 60 for row in read]
    assert [heat for _, heat in lines.oven_read] == pytest.approx([kelvin(float(row.value), "F") for row in read])


def test_the_core_its_probes_and_what_is_done_and_safe_are_drawn(plan, stands):  # noqa: F811
    _, standing = stands
    found = plan(-20.0, core=330.0)
    lines = bake_lines(found, standing)
    core = found.answer.core
    assert lines.core.p10 == pytest.approx(core.p10)
    assert lines.core.p90 == pytest.approx(core.p90)
    assert lines.probes == ((0.0, 330.0),)
    assert lines.done_at == found.answer.done_at
    assert lines.safe_at is None  # bread is done long before it is a question of safety
    assert lines.task == task_of(found.answer.bake.task)
