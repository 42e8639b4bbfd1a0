"""While first fires run the plot is about the hottest spot of the top; what the log must show is counted."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.first_fire_course import first_fire_course, limit_said
from cookstove_gui.desk.cook.stages import stage_rows
from cookstove_gui.stove.stove import SpotKind
from tests.desk.conftest import stand
from tests.held_clock import HeldClock


@pytest.fixture
def desk(burning_desk: Desk) -> Desk:
    burning_desk.save_stove(replace(burning_desk.stove, is_new=True))
    return stand(burning_desk)


def test_it_is_of_the_hottest_spot_of_the_top_and_of_nothing_more_put_on(desk: Desk) -> None:
    course, standing = first_fire_course(desk), desk.standing
    assert course is not None
    assert standing is not None
    assert standing.unfed is not None
    tops = [spot.name for spot in desk.stove.spots_of(SpotKind.TOP)]
    assert course.spot in tops
    assert course.ahead is not None
    hottest = np.max([standing.unfed.of(name) for name in tops], axis=0)
    assert course.ahead.p50 == pytest.approx(np.median(hottest, axis=0))
    assert course.ahead.p50[-1] < np.median(np.max([standing.projection.of(name) for name in tops], axis=0)[:, -1])


def test_a_stove_fired_before_has_none(burning_desk: Desk) -> None:
    stand(burning_desk)
    assert burning_desk.standing is not None
    assert burning_desk.standing.unfed is None
    assert first_fire_course(burning_desk) is None
    assert limit_said(burning_desk) == ()
    assert stage_rows(burning_desk) == ()


def test_an_old_session_has_none(desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(24 * 60)
    assert first_fire_course(desk) is None


def test_the_limit_stands_in_the_place_of_the_heat_wanted(desk: Desk) -> None:
    assert limit_said(desk)[0] == "Limit of this fire: 400 °F, hottest spot of the top"


def test_what_the_log_must_show_is_counted_from_the_log(desk: Desk) -> None:
    rows = stage_rows(desk)
    assert [row.title for row in rows] == ["Kindling fire", "Medium fire", "Full fire"]
    assert [row.is_next for row in rows] == [True, False, False]
    first = desk.entries[0].at
    minutes = (max(row.at for row in desk.entries) - first).total_seconds() / 60
    by_wanted = {measure.wanted: measure for measure in rows[0].measures}
    lit = by_wanted["25 minutes lit"]
    assert lit.shown == f"{minutes:.0f} so far"
    assert lit.share == pytest.approx(min(minutes / 25, 1.0))
    assert by_wanted["at most 400 °F"].is_limit
    assert not by_wanted["180 °F on the top"].is_limit
    assert rows[1].measures == ()
