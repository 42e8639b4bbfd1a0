"""First fires of a new stove count from every session before; a stove that needs none has none."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.stove.entries import Kind
from tests.cooking.fires.cases import KINDLING, MEDIUM
from tests.held_clock import HeldClock
from tests.rows import rows_of


@pytest.fixture
def desk(held_desk: Desk, held_clock: HeldClock) -> Desk:
    """A new stove with a kindling fire three days ago and a medium one yesterday."""
    held_desk.save_stove(replace(held_desk.stove, is_new=True))
    for days, fire in ((3, KINDLING), (1, MEDIUM)):
        rows = rows_of(*fire, start=held_clock() - timedelta(days=days))
        held_desk.logbook.add_session(held_desk.stove.name, f"{days} days ago", rows)
    return held_desk


def test_the_fires_of_every_session_count(desk: Desk) -> None:
    assert [stage.done for stage in desk.first_fires.stages] == [True, True, False]


def test_a_stove_that_needs_none_or_whose_owner_waived_them_has_none_to_do(desk: Desk) -> None:
    for spared in (replace(desk.stove, is_new=False), replace(desk.stove, first_fires_waived=True)):
        desk.save_stove(spared)
        assert desk.first_fires.next is None
        assert desk.inputs().earlier == ()


def test_a_fire_is_asked_about_with_the_sessions_that_began_before_it(desk: Desk) -> None:
    kindling, medium = (row.number for row in sorted(desk.sessions, key=lambda row: row.number))
    desk.open_session(medium)
    assert [one.number for one in desk.inputs().earlier] == [kindling]
    desk.open_session(kindling)
    assert desk.inputs().earlier == ()
    desk.start_session()
    assert [one.number for one in desk.inputs().earlier] == [kindling, medium]
    desk.do(Kind.LIT)
    assert [one.number for one in desk.inputs().earlier] == [kindling, medium]
