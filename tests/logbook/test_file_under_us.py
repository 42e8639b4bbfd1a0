"""The file removed, replaced or emptied while it is open: what was entered is saved all the same, and it is told."""

import shutil
import sqlite3
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook.logbook import ChangedElsewhere, Logbook
from cookstove_gui.stove.stove import stove_with_default_spots

from .strategies import reading

NOON = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)


def _readings(path: Path) -> int:
    book = Logbook.open(path)
    count = sum(len(book.session(one.number).entries) for one in book.sessions())
    book.close()
    return count


@pytest.mark.parametrize("with_folder", [False, True])
def test_a_removed_logbook_is_written_again(tmp_path: Path, with_folder: bool) -> None:
    path = tmp_path / "home" / "logbook.sqlite"
    book = Logbook.open(path)
    told: list[str] = []
    book.on_file_trouble(told.append)
    book.save_stove(stove_with_default_spots("Kitchen"))
    book.start_session("Kitchen", "Bread")
    book.append(1, [reading(1)])
    if with_folder:
        shutil.rmtree(path.parent)
    else:
        path.unlink()
    for number in range(2, 17):
        book.append(1, [reading(number, number)])
    assert len(told) == 1
    assert "was removed while it was open" in told[0]
    book.close()
    assert _readings(path) == 16


def test_a_replaced_logbook_is_left_alone_and_ours_kept_beside_it(filed: Logbook, tmp_path: Path) -> None:
    assert filed.path is not None
    told: list[str] = []
    filed.on_file_trouble(told.append)
    filed.append(1, [reading(1)])
    path = filed.path
    other = tmp_path / "other" / "logbook.sqlite"
    Logbook.open(other).close()
    other.replace(path)
    before = path.read_bytes()
    for number in range(2, 17):
        filed.append(1, [reading(number, number)])
    (sentence,) = told
    kept = tmp_path / "logbook kept 1.sqlite"
    assert str(kept) in sentence
    assert filed.path == kept
    filed.close()
    assert path.read_bytes() == before
    assert _readings(kept) == 16


def test_what_nobody_heard_is_told_to_the_first_who_asks(filed: Logbook) -> None:
    assert filed.path is not None
    filed.path.unlink()
    filed.append(1, [reading(1)])
    told: list[str] = []
    filed.on_file_trouble(told.append)
    assert len(told) == 1


def test_the_file_alone_holds_everything_after_a_quiet_moment(filed: Logbook, tmp_path: Path) -> None:
    assert filed.path is not None
    filed.append(1, [reading(number, number) for number in range(1, 51)])
    filed.look_after_file()
    copy = tmp_path / "copy" / "logbook.sqlite"
    copy.parent.mkdir()
    shutil.copy(filed.path, copy)
    assert _readings(copy) == 50


@pytest.mark.parametrize("is_there", [False, True])
def test_a_missing_or_empty_file_beside_backups_is_no_first_start(filed: Logbook, is_there: bool) -> None:
    assert filed.path is not None
    filed.append(1, [reading(1)])
    filed.back_up(NOON)
    filed.close()
    filed.path.unlink()
    if is_there:
        filed.path.write_bytes(b"")
    with pytest.raises(SurroundingsProblem, match=r"(is empty|is missing), but there are backups"):
        Logbook.open(filed.path)


def test_another_programs_database_is_not_touched(tmp_path: Path) -> None:
    """Neither its journal mode nor a side file that its own program has not folded in yet."""
    path = tmp_path / "pantry.sqlite"
    theirs = sqlite3.connect(path)
    theirs.execute("PRAGMA journal_mode = WAL")
    theirs.execute("CREATE TABLE jam (jars)")
    theirs.commit()
    before = {one.name: one.read_bytes() for one in (path, tmp_path / "pantry.sqlite-wal")}
    with pytest.raises(SurroundingsProblem, match="another program"):
        Logbook.open(path)
    assert {one.name: one.read_bytes() for one in (path, tmp_path / "pantry.sqlite-wal")} == before
    theirs.close()
    plain = tmp_path / "plain.sqlite"
    theirs = sqlite3.connect(plain)
    theirs.execute("PRAGMA application_id = 7")
    theirs.execute("CREATE TABLE jam (jars)")
    theirs.commit()
    theirs.close()
    was = plain.read_bytes()
    with pytest.raises(SurroundingsProblem, match="another program"):
        Logbook.open(plain)
    assert plain.read_bytes() == was


def test_two_programs_at_once_on_a_new_logbook_both_open(tmp_path: Path) -> None:
    path = tmp_path / "logbook.sqlite"
    script = f"""
import pathlib, time
from cookstove_gui.logbook.logbook import Logbook
go = pathlib.Path({str(tmp_path / "go")!r})
print("ready", flush=True)
while not go.exists():
    time.sleep(0.001)
Logbook.open(pathlib.Path({str(path)!r})).close()
"""
    programs = [
        subprocess.Popen([sys.executable, "-c", script], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        for _ in range(3)
    ]
    for program in programs:
        assert program.stdout is not None
        assert program.stdout.readline() == "ready\n"
    (tmp_path / "go").touch()
    assert [program.communicate()[1] for program in programs] == ["", "", ""]


def test_another_windows_row_is_seen_and_not_taken_for_ones_own(filed: Logbook) -> None:
    other = Logbook.open(filed.path)
    filed.append(1, [reading(1)])
    filed.is_changed_elsewhere()
    assert not filed.is_changed_elsewhere()
    other.append(1, [reading(2, 5)], after=1)
    assert filed.is_changed_elsewhere()
    assert not filed.is_changed_elsewhere()
    with pytest.raises(ChangedElsewhere, match="Another window"):
        filed.append(1, [reading(2, 6)], after=1)
    assert [row.number for row in filed.append(1, [reading(3, 7)], after=2)] == [3]
    other.close()
