"""Undo takes back the latest thing done, whatever it was, and goes on backwards; redo goes forwards again."""

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.desk.log.undoing import CORRECTED, redo_rows, undo_rows, void
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Entry, Kind, fold, numbers_kept

AT = datetime(2026, 1, 5, 12, 2, tzinfo=UTC)


class Log:
    """A log as a cook writes it, by the values of its rows."""

    def __init__(self) -> None:
        self.rows: list[Entry] = []

    def append(self, *rows: Entry) -> None:
        self.rows += [replace(row, number=number) for number, row in enumerate(rows, start=len(self.rows) + 1)]

    def enter(self, value: str = "385") -> None:
        self.append(Entry(number=0, at=AT, offset_minutes=0, kind=Kind.NOTE, note=value))

    def correct(self, number: int, value: str) -> None:
        new = Entry(number=0, at=AT, offset_minutes=0, kind=Kind.NOTE, note=value)
        self.append(new, void(number, AT, 0, CORRECTED))

    def take_back(self, number: int) -> None:
        self.append(void(number, AT, 0))

    def keep(self, number: int) -> None:
        self.append(Entry(number=0, at=AT, offset_minutes=0, kind=Kind.KEPT, value=str(number)))

    def undo(self) -> None:
        self.append(*undo_rows(self.rows, AT, 0))

    def redo(self) -> None:
        self.append(*redo_rows(self.rows, AT, 0))

    def says(self) -> tuple[set[str], set[int]]:
        return {row.note for row in fold(self.rows)}, numbers_kept(self.rows)


@pytest.fixture
def log() -> Log:
    return Log()


def test_undo_of_a_taking_back_gives_the_row_back(log: Log) -> None:
    log.enter("first")
    log.enter("second")
    log.take_back(1)
    log.undo()
    assert log.says()[0] == {"first", "second"}
    log.undo()
    assert log.says()[0] == {"first"}


def test_undo_of_a_keep_questions_the_row_again(log: Log) -> None:
    log.enter()
    log.keep(1)
    log.undo()
    assert log.says() == ({"385"}, set())


def test_a_correction_is_undone_and_redone_whole(log: Log) -> None:
    log.enter("835")
    log.correct(1, "385")
    log.undo()
    assert log.says()[0] == {"835"}
    log.redo()
    assert log.says()[0] == {"385"}


def test_redo_ends_with_the_next_thing_done(log: Log) -> None:
    log.enter("first")
    log.undo()
    log.enter("second")
    with pytest.raises(InputProblem) as refused:
        log.redo()
    assert refused.value.sentence == (
        "There is nothing to bring back; something was done since, or nothing was undone."
    )


def test_an_empty_log_has_nothing_to_undo(log: Log) -> None:
    with pytest.raises(InputProblem) as refused:
        log.undo()
    assert refused.value.sentence == "There is nothing to undo in this session."


def test_a_void_noted_by_hand_is_a_taking_back(log: Log) -> None:
    log.enter("first")
    log.enter("second")
    log.append(void(1, AT, 0, "undone"))
    log.undo()
    assert log.says()[0] == {"first", "second"}


ACTS: tuple[Callable[[Log], None], ...] = (
    lambda log: log.enter(f"row {len(log.rows)}"),
    lambda log: log.correct(fold(log.rows)[-1].number, f"corrected {len(log.rows)}"),
    lambda log: log.take_back(fold(log.rows)[0].number),
    lambda log: log.keep(fold(log.rows)[-1].number),
)


@given(acts=st.lists(st.sampled_from(ACTS), min_size=1, max_size=8), again=st.integers(min_value=1, max_value=3))
def test_undoing_all_and_redoing_all_passes_the_same_states(acts: list[Callable[[Log], None]], again: int) -> None:
    log = Log()
    log.enter()
    states = [log.says()]
    for act in acts:
        if not fold(log.rows):
            log.enter("after all were taken back")
        else:
            act(log)
        states.append(log.says())
    for _ in range(again):
        for before in reversed(states[:-1]):
            log.undo()
            assert log.says() == before
        for after in states[1:]:
            log.redo()
            assert log.says() == after
