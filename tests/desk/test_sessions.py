"""Sessions begin, are left, looked at again and renamed; whoever listens is told what kinds of thing changed."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.desk.my_stove.describing import add_stove
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import Chimney, stove_with_default_spots
from tests.desk.conftest import stand
from tests.held_clock import HeldClock
from tests.once import stood
from tests.rows import RISING, START, rows_of

NEW_STOVE = stove_with_default_spots("Summer kitchen")


def again(desk: Desk) -> Desk:
    """The desk after a restart."""
    return Desk(desk.logbook, desk.clock)


# What is told


@pytest.mark.parametrize(
    ("act", "told"),
    [
        (lambda desk: desk.read("300"), Changed(log=True, walk=True)),
        (lambda desk: desk.do(Kind.WOOD), Changed(log=True)),
        (lambda desk: desk.undo(), Changed(log=True)),
        (lambda desk: desk.correct(1, "100"), Changed(log=True)),
        (lambda desk: desk.correct(1, at_text="-3"), Changed(log=True)),
        (lambda desk: desk.take_back(1), Changed(log=True)),
        (lambda desk: desk.keep(1), Changed(log=True)),
        (lambda desk: desk.light(desk.walk.moved_on()), Changed(walk=True)),
        (lambda desk: desk.start_session(), Changed(session=True, log=True, walk=True)),
        (lambda desk: desk.open_session(1), Changed(stove=True, session=True, log=True, walk=True)),
        (lambda desk: desk.rename_session(1, "Sunday"), Changed(session=True)),
        (
            lambda desk: desk.choose_stove(desk.stove.name),
            Changed(stove=True, session=True, log=True, walk=True, study=True),
        ),
        (lambda desk: desk.save_stove(NEW_STOVE), Changed(stove=True, session=True, log=True, walk=True, study=True)),
        (lambda desk: desk.save_stove(replace(desk.stove, sides="brick")), Changed(stove=True, walk=True, study=True)),
        (lambda desk: desk.choose_action(Action(kind=ActionKind.WOOD, value=1.0)), Changed(band=True)),
        (lambda desk: desk.set_setting("walls", "brick"), Changed(settings=True)),
    ],
)
def test_every_act_tells_what_kinds_of_thing_changed(
    held_desk: Desk, act: Callable[[Desk], object], told: Changed
) -> None:
    held_desk.read("70", spot="room")
    heard: list[Changed] = []
    held_desk.subscribe(heard.append)
    act(held_desk)
    assert heard == [told]


def test_a_redo_is_told_as_a_change_of_the_log(held_desk: Desk) -> None:
    held_desk.read("300")
    held_desk.undo()
    heard: list[Changed] = []
    held_desk.subscribe(heard.append)
    held_desk.redo()
    assert heard == [Changed(log=True)]


def test_changes_are_gathered_by_kind() -> None:
    both = Changed(log=True) | Changed(walk=True, standing=True) | Changed(band=True)
    assert both == Changed(log=True, walk=True, standing=True, band=True)
    rest = Changed(session=True) | Changed(stove=True) | Changed(settings=True) | Changed(study=True)
    assert both | rest == rest | both


def test_who_has_stopped_listening_hears_nothing_and_may_stop_twice(held_desk: Desk) -> None:
    heard: list[Changed] = []
    stop = held_desk.subscribe(heard.append)
    stop()
    stop()
    held_desk.read("300")
    assert heard == []


def test_a_standing_is_told_with_the_walk_only_when_another_spot_is_lit(
    burning_desk: Desk, held_clock: HeldClock
) -> None:
    held_clock.pass_minutes(5)
    heard: list[Changed] = []
    burning_desk.subscribe(heard.append)
    burning_desk.read("70", spot="room")  # not the cook's choice of a spot
    held_clock.pass_minutes(5)
    stand(burning_desk)
    stand(burning_desk)
    assert [change for change in heard if change.standing] == [
        Changed(standing=True, walk=True),
        Changed(standing=True, walk=False),
    ]


# Live, and over


@pytest.mark.parametrize(("minutes", "live"), [(360.0, True), (360.1, False)])
def test_a_session_is_written_on_for_six_hours(
    held_desk: Desk, held_clock: HeldClock, minutes: float, live: bool
) -> None:
    held_desk.do(Kind.LIT)
    held_clock.pass_minutes(minutes)
    assert held_desk.is_live is live
    assert (again(held_desk).session is not None) is live
    held_desk.do(Kind.WOOD)
    assert len(held_desk.sessions) == (1 if live else 2)


def test_without_a_session_the_next_entry_begins_one(held_desk: Desk) -> None:
    assert held_desk.is_live
    assert (held_desk.session, held_desk.rows, held_desk.entries) == (None, (), ())
    with pytest.raises(InputProblem, match="No session is open yet"):
        held_desk.undo()
    held_desk.do(Kind.LIT)
    assert held_desk.session is not None


def test_an_old_session_is_asked_about_at_its_end_by_its_own_clock(held_desk: Desk, held_clock: HeldClock) -> None:
    held_desk.open_session(held_desk.logbook.add_session(held_desk.stove.name, "January", RISING).number)
    assert held_desk.inputs().now == RISING[-1].at
    assert (held_desk.edge.now, held_desk.edge.offset_minutes) == (RISING[-1].at, -300)
    stand(held_desk)
    assert held_desk.edge.now == RISING[-1].at
    held_desk.start_session()
    assert held_desk.inputs().now == held_desk.edge.now == held_clock()


def test_a_session_bears_its_day_or_the_title_given(held_desk: Desk) -> None:
    held_desk.start_session()
    held_desk.start_session("Sunday bread")
    assert [row.title for row in sorted(held_desk.sessions, key=lambda row: row.number)] == [
        "Saturday 14 March 2026", "Sunday bread",
    ]  # fmt: skip


def test_a_session_is_renamed_where_it_stands(held_desk: Desk) -> None:
    held_desk.start_session("First")
    held_desk.start_session("Second")
    held_desk.rename_session(2, "  Bread  ")
    held_desk.rename_session(1, "Pies")
    assert held_desk.session is not None
    assert held_desk.session.title == "Bread"
    assert {row.title for row in held_desk.sessions} == {"Pies", "Bread"}
    with pytest.raises(InputProblem, match="The session has no title"):
        held_desk.rename_session(2, "  ")
    assert held_desk.session.title == "Bread"


def test_the_latest_session_that_is_warm_is_taken_up(held_desk: Desk) -> None:
    held_desk.do(Kind.LIT)
    held_desk.start_session("Second")
    held_desk.do(Kind.LIT)
    taken_up = again(held_desk).session
    assert taken_up is not None
    assert taken_up.title == "Second"


# Another stove


def test_a_session_of_another_stove_brings_its_stove(held_desk: Desk) -> None:
    first = held_desk.stove.name
    held_desk.do(Kind.LIT)
    add_stove(held_desk, "Summer kitchen")
    assert (held_desk.session, held_desk.stove.name) == (None, "Summer kitchen")
    held_desk.open_session(1)
    assert held_desk.stove.name == first
    assert again(held_desk).stove.name == first


def test_the_stove_in_use_is_the_same_after_a_restart(held_desk: Desk) -> None:
    add_stove(held_desk, "Summer kitchen")
    assert again(held_desk).stove.name == "Summer kitchen"
    held_desk.set_setting("stove", "one that is gone")
    assert again(held_desk).stove.name == held_desk.stoves[0].name


def test_going_back_to_a_stove_takes_up_its_warm_session(held_desk: Desk) -> None:
    first = held_desk.stove.name
    held_desk.do(Kind.LIT)
    add_stove(held_desk, "Summer kitchen")
    held_desk.choose_stove(first)
    assert [row.kind for row in held_desk.entries] == [Kind.LIT]


def test_what_was_worked_out_for_one_session_is_not_shown_over_another(burning_desk: Desk) -> None:
    late = stood(burning_desk.inputs())
    stand(burning_desk)
    burning_desk.choose_action(Action(kind=ActionKind.WOOD, value=1.0))
    burning_desk.start_session()
    assert (burning_desk.standing, burning_desk.action) == (None, LEAVE)
    assert not burning_desk.show(late)


def test_the_step_asked_about_goes_with_the_question(burning_desk: Desk) -> None:
    wood = Action(kind=ActionKind.WOOD, value=1.0)
    burning_desk.choose_action(wood)
    first, second = burning_desk.inputs(), burning_desk.inputs()
    assert (first.action, burning_desk.action) == (wood, wood)
    assert second.serial > first.serial
    assert first.band == burning_desk.band


def test_a_question_about_any_session_leaves_the_one_on_the_screen_standing(burning_desk: Desk) -> None:
    asked = burning_desk.inputs()
    burning_desk.inputs_about(burning_desk.stove, None, START)
    assert burning_desk.show(work_out(asked, Memory()))


def test_sides_and_chimney_leave_the_standing_and_the_firebox_does_not(burning_desk: Desk) -> None:
    stand(burning_desk)
    burning_desk.save_stove(replace(burning_desk.stove, chimney=Chimney(height=7.0)))
    assert burning_desk.standing is not None
    burning_desk.save_stove(replace(burning_desk.stove, altitude=1500.0))
    assert burning_desk.standing is None


# Rows of others


def test_spots_that_only_a_log_names_are_spots_of_the_stove(held_desk: Desk) -> None:
    shelf = rows_of((0, Kind.READING, "oven_shelf", "200", "F"))
    held_desk.open_session(held_desk.logbook.add_session(held_desk.stove.name, "January", shelf).number)
    assert held_desk.stove.spot("oven_shelf") is not None
    assert held_desk.walk.spots == held_desk.stove.spots


def test_a_practice_session_is_begun_once_and_its_rows_stand_as_they_are(held_desk: Desk) -> None:
    held_desk.play(())
    assert held_desk.session is None
    held_desk.play(RISING[:4])
    held_desk.play(RISING[4:])
    assert held_desk.session is not None
    assert held_desk.session.title == "Practice"
    assert [(row.at, row.kind, row.value) for row in held_desk.rows] == [
        (row.at, row.kind, row.value) for row in RISING
    ]


def test_the_clock_of_the_latest_row_is_the_sessions(held_desk: Desk) -> None:
    rows = (
        *rows_of((0, Kind.LIT, "", "", ""), offset_minutes=0),
        *rows_of((1, Kind.LIT, "", "", ""), offset_minutes=60, first=2),
    )
    held_desk.open_session(held_desk.logbook.add_session(held_desk.stove.name, "Moved", rows).number)
    assert held_desk.offset_minutes == 60


def test_a_fresh_logbook_gets_its_first_stove_and_one_that_has_stoves_no_other(held_clock: HeldClock) -> None:
    logbook = Logbook.in_memory()
    logbook.save_stove(NEW_STOVE)
    assert [stove.name for stove in Desk(logbook, held_clock).stoves] == ["Summer kitchen"]
    assert [stove.name for stove in Desk(Logbook.in_memory(), held_clock).stoves] == ["My stove"]
