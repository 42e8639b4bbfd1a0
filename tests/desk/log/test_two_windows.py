"""Two windows on one logbook: each takes up the other's rows, and no row is taken for another."""

import pytest

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock


@pytest.fixture
def other(held_desk: Desk, held_clock: HeldClock) -> Desk:
    """A second window, opened on the session that the first has begun."""
    held_desk.do(Kind.LIT)
    return Desk(held_desk.logbook, held_clock)


def kinds(desk: Desk) -> list[Kind]:
    return [row.kind for row in desk.rows]


def test_a_reading_is_kept_beside_what_the_other_window_wrote(held_desk: Desk, other: Desk) -> None:
    other.do(Kind.OUT)
    held_desk.read("300", spot="oven_centre")
    assert kinds(held_desk) == [Kind.LIT, Kind.OUT, Kind.READING]
    assert held_desk.rows[-1].number == 3


def test_a_row_about_another_is_refused_until_the_cook_has_seen_the_rest(held_desk: Desk, other: Desk) -> None:
    other.do(Kind.OUT)
    with pytest.raises(InputProblem, match="Another window has added to this session"):
        held_desk.take_back(1)
    assert kinds(held_desk) == [Kind.LIT, Kind.OUT]
    held_desk.take_back(2)
    assert [row.kind for row in held_desk.entries] == [Kind.LIT]


def test_what_the_other_wrote_is_taken_up_when_looked_for(held_desk: Desk, other: Desk) -> None:
    held_desk.read("300", spot="top_shelf")
    heard: list[Changed] = []
    other.subscribe(heard.append)
    # One logbook stands for both windows here, so the desk is asked itself.
    assert other._table.read_log_again()
    assert kinds(other) == [Kind.LIT, Kind.READING]
    assert other.stove.spot("top_shelf") is not None
    assert not other._table.read_log_again()


def test_undo_in_one_window_undoes_what_was_done_last_in_either(held_desk: Desk, other: Desk) -> None:
    other.do(Kind.OUT)
    other._table.read_log_again()
    held_desk._table.read_log_again()
    held_desk.undo()
    assert [row.kind for row in held_desk.entries] == [Kind.LIT]


def test_a_row_that_is_not_there_is_refused_by_its_number(held_desk: Desk) -> None:
    held_desk.do(Kind.LIT)
    with pytest.raises(InputProblem) as refused:
        held_desk.take_back(7)
    assert refused.value.sentence == "Row 7 is not in this session's log, or was taken back already."
