"""A logbook that cannot be opened comes to a pane with ways out; a restore from the window brings back what was."""

from datetime import UTC, datetime
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QComboBox, QMessageBox, QPushButton
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.fault_log import FaultLog
from cookstove_gui.gui.start import Program, parse_arguments
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.stove import stove_with_default_spots
from tests.gui.hands import click, control, words
from tests.logbook.strategies import reading

pytestmark = pytest.mark.usefixtures("worked_out_once")
NOON = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """A closed logbook of two readings with a backup of one of them."""
    path = tmp_path / "logbook.sqlite"
    book = Logbook.open(path)
    book.save_stove(stove_with_default_spots("Kitchen"))
    book.start_session("Kitchen", "Bread")
    book.append(1, [reading(1)])
    book.back_up(NOON)
    book.append(1, [reading(2, 5)])
    book.look_after_file()
    book.close()
    return path


def _opened(place: Path, qapp: QApplication, qtbot: QtBot) -> Program:
    program = Program(qapp, parse_arguments(["--logbook", str(place)]))
    program.open()
    for part in (program.pane, program.window):
        if part is not None:
            qtbot.addWidget(part)
    return program


def _entries(place: Path) -> int:
    book = Logbook.open(place)
    count = book.entry_count()
    book.close()
    return count


@pytest.mark.parametrize("content", [None, b"", b"ruined" * 2000])
def test_the_latest_backup_is_restored_from_the_pane(
    place: Path, content: bytes | None, qapp: QApplication, qtbot: QtBot
) -> None:
    place.unlink()
    if content is not None:
        place.write_bytes(content)
    program = _opened(place, qapp, qtbot)
    assert program.window is None
    assert program.pane is not None
    click(program.pane, "way_restore")
    assert program.window is not None
    qtbot.addWidget(program.window)
    assert "was restored" in words(program.window, "fault_words")
    assert program.window.desk.logbook.entry_count() == 1
    program.close()


def test_what_can_be_read_is_saved_from_the_pane(place: Path, qapp: QApplication, qtbot: QtBot) -> None:
    content = bytearray(place.read_bytes())
    page = content.index(b"CREATE TRIGGER weather_is_never_deleted") // 4096 * 4096
    content[page + 16 : page + 4096] = b"\xa5" * 4080
    place.write_bytes(content)
    program = _opened(place, qapp, qtbot)
    assert program.pane is not None
    click(program.pane, "way_save")
    assert program.window is not None
    qtbot.addWidget(program.window)
    assert "were saved" in words(program.window, "fault_words")
    program.close()


def test_details_can_be_copied_for_whoever_helps(place: Path, qapp: QApplication, qtbot: QtBot) -> None:
    place.write_bytes(b"ruined" * 2000)
    program = _opened(place, qapp, qtbot)
    assert program.pane is not None
    click(program.pane, "way_copy")
    assert str(place) in qapp.clipboard().text()
    assert "12000 bytes" in qapp.clipboard().text()
    assert program.pane.isVisible()


def test_an_error_of_our_own_at_the_start_comes_to_the_pane(
    place: Path, qapp: QApplication, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(_: object) -> None:
        raise KeyError("made up")

    monkeypatch.setattr("cookstove_gui.gui.start.Desk", fail)
    program = _opened(place, qapp, qtbot)
    assert program.window is None
    assert "made up" in words(program.pane, "problem_words")


def test_a_backup_is_restored_from_the_window(place: Path, qapp: QApplication, qtbot: QtBot) -> None:
    program = _opened(place, qapp, qtbot)
    window = program.window
    assert window is not None
    window.show_page("logbook")
    assert control(window, "backup_which", QComboBox).count() == 1
    control(window, "backup_restore", QPushButton).click()
    asked = control(window, "restore_question", QMessageBox)
    assert asked.text() == "Go back to 1 session with 1 entry?"
    asked.button(QMessageBox.StandardButton.Yes).click()
    after = program.window
    assert after is not None
    assert after is not window
    qtbot.addWidget(after)
    assert after.desk.logbook.entry_count() == 1
    assert "is kept as" in words(after, "fault_words")
    program.close()
    assert {_entries(one) for one in (place.parent / "backups").glob("replaced*.sqlite")} == {2}


def test_a_session_that_ends_is_backed_up_once(place: Path, qapp: QApplication, qtbot: QtBot) -> None:
    for _ in range(2):
        program = _opened(place, qapp, qtbot)
        program.close()
    assert sorted(_entries(one) for one in (place.parent / "backups").glob("logbook *.sqlite")) == [1, 2]


def test_damaged_rows_are_told_after_the_start(place: Path, qapp: QApplication, qtbot: QtBot) -> None:
    content = place.read_bytes()
    assert content.count(b"oven_centre385F") == 2
    place.write_bytes(content.replace(b"oven_centre385F", b"oven_centre386F", 1))
    program = _opened(place, qapp, qtbot)
    window = program.window
    assert window is not None
    window._keeping.start()
    qtbot.waitUntil(lambda: not window._keeping._job.is_busy)
    assert "is damaged and is left out" in words(window, "fault_words")
    program.close()


def test_another_windows_rows_are_taken_up_at_the_next_quiet_moment(
    place: Path, qapp: QApplication, qtbot: QtBot
) -> None:
    program = _opened(place, qapp, qtbot)
    window = program.window
    assert window is not None
    window.desk.open_session(1)
    other = Logbook.open(place)
    other.append(1, [reading(3, 9, value="401")])
    window._keeping.quiet_moment()
    assert [row.value for row in window.desk.entries][-1] == "401"
    other.close()
    program.close()


def test_a_second_window_and_a_bad_end_are_told(tmp_path: Path) -> None:
    first, second = FaultLog(tmp_path), FaultLog(tmp_path)
    assert first.lock() == ""
    assert "open in another window" in second.lock()
    second.close()
    first.close()
    third = FaultLog(tmp_path)
    assert third.lock() == ""
    third.close()


def test_a_lock_left_behind_by_a_killed_window_is_told(tmp_path: Path) -> None:
    (tmp_path / "window.lock").write_text("999999999\ncookstove-gui\nnowhere\n")  # no such process
    log = FaultLog(tmp_path)
    told = log.lock()
    log.close()
    assert "did not end properly" in told or "another window" in told


def test_the_fault_log_begins_anew_when_it_is_large(tmp_path: Path) -> None:
    (tmp_path / "faults.log").write_text("x" * 300_000)
    log = FaultLog(tmp_path)
    log.open()
    log.write("ValueError: made up")
    log.close()
    assert "made up" in (tmp_path / "faults.log").read_text()
    assert (tmp_path / "faults.old.log").stat().st_size == 300_000


def test_a_closed_terminal_harms_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    stream = (tmp_path / "gone").open("w")
    stream.close()
    monkeypatch.setattr("sys.stderr", stream)
    FaultLog(tmp_path).write("made up")
    monkeypatch.setattr("sys.stderr", None)
    FaultLog(tmp_path).write("made up")
