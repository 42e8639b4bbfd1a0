"""The picture of a bake says what its sentence says: the core's line crosses done where it is likely done."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.desk.plan.bake import BakeChoice, BakeInputs, plan_bake
from cookstove_gui.desk.plan.bake_lines import bake_lines
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
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
