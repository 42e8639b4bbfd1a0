"""What was learned is kept for its stove and for the code that made it; what is damaged is nothing."""

import pytest

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.learned import Lesson
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.stove import stove_with_default_spots

LESSON = Lesson(made_of="1:40", content={"lag": 12.5})


@pytest.fixture
def kitchen() -> Logbook:
    logbook = Logbook.in_memory()
    logbook.save_stove(stove_with_default_spots("Kitchen"))
    return logbook


def test_the_latest_lesson_of_a_stove_is_kept(kitchen: Logbook) -> None:
    kitchen.learned.keep("Kitchen", "2", Lesson(made_of="1:39", content={}))
    kitchen.learned.keep("Kitchen", "2", LESSON)
    assert kitchen.learned.of("Kitchen", "2") == LESSON
    assert kitchen.learned.of("Barn", "2") is None


def test_what_other_code_made_is_none(kitchen: Logbook) -> None:
    kitchen.learned.keep("Kitchen", "2", LESSON)
    assert kitchen.learned.of("Kitchen", "3") is None


def test_nothing_is_learned_of_a_stove_that_is_not_there(kitchen: Logbook) -> None:
    with pytest.raises(InputProblem, match="Barn"):
        kitchen.learned.keep("Barn", "2", LESSON)


@pytest.mark.parametrize("column", ["content", "of_sessions"])
def test_a_damaged_lesson_is_none(kitchen: Logbook, column: str) -> None:
    kitchen.learned.keep("Kitchen", "2", LESSON)
    with kitchen._database.transaction() as connection:
        (sound,) = connection.execute("SELECT checksum FROM character").fetchone()
        connection.execute(f"UPDATE character SET {column} = '{{}}'")
        connection.execute("UPDATE character SET checksum = ?", (sound,))
    assert kitchen.learned.of("Kitchen", "2") is None


@pytest.mark.parametrize("content", ["{broken", "[1]"])
def test_a_lesson_that_cannot_be_read_is_none(kitchen: Logbook, content: str) -> None:
    kitchen.learned.keep("Kitchen", "2", LESSON)
    with kitchen._database.transaction() as connection:
        connection.execute("UPDATE character SET content = ?", (content,))
    assert kitchen.learned.of("Kitchen", "2") is None
