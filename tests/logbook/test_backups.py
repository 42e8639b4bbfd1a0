"""A backup counts only once it was opened and counted; restoring one never throws another away."""

import shutil
import sqlite3
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook import backups
from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.logbook import Logbook

from .strategies import reading

NOON = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)


def _count(path: Path) -> tuple[int, int]:
    database = Database(path)
    found = backups.counts(database)
    database.close()
    return found


def test_backup_holds_what_still_stands_in_the_side_file(filed: Logbook) -> None:
    filed.append(1, [reading(1), reading(2, 5)])
    path = filed.back_up(NOON)
    assert path.name == "logbook 2026-03-01 120000.sqlite"
    assert _count(path) == (1, 2)
    assert filed.backups() == {path: NOON}
    assert [one.name for one in path.parent.iterdir()] == [path.name]


def test_two_backups_of_one_second_are_both_kept(filed: Logbook) -> None:
    assert filed.back_up(NOON) != filed.back_up(NOON)
    assert len(filed.backups()) == 2


def test_backup_goes_where_it_is_asked_to(filed: Logbook, tmp_path: Path) -> None:
    assert filed.back_up(NOON, tmp_path / "stick").parent == tmp_path / "stick"


def test_logbook_in_memory_needs_a_folder(logbook: Logbook, tmp_path: Path) -> None:
    with pytest.raises(SurroundingsProblem, match="in memory"):
        logbook.back_up(NOON)
    assert logbook.backups() == {}
    assert _count(logbook.back_up(NOON, tmp_path)) == (1, 0)


def test_folder_that_cannot_be_made_is_told(filed: Logbook, tmp_path: Path) -> None:
    (tmp_path / "stick").write_text("a file")
    with pytest.raises(SurroundingsProblem, match="cannot take the copy"):
        filed.back_up(NOON, tmp_path / "stick")


def test_copy_that_came_out_short_is_no_backup(filed: Logbook, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    filed.append(1, [reading(1), reading(2, 5)])

    def short(_: Database, side: Path) -> None:
        connection = sqlite3.connect(side)
        connection.executescript("CREATE TABLE session (x); CREATE TABLE entry (x);")
        connection.close()

    monkeypatch.setattr(Database, "copy_to", short)
    with pytest.raises(SurroundingsProblem, match="shorter"):
        filed.back_up(NOON)
    assert filed.backups() == {}


def test_restoring_brings_back_what_was_and_keeps_what_is(filed: Logbook) -> None:
    assert filed.path is not None
    filed.append(1, [reading(1)])
    path = filed.back_up(NOON)
    filed.append(1, [reading(2, 5)])
    filed.close()
    kept = backups.restore(path, filed.path)
    assert kept is not None
    assert (_count(filed.path), _count(kept), _count(path)) == ((1, 1), (1, 2), (1, 1))


def test_restoring_thins_nothing(filed: Logbook) -> None:
    assert filed.path is not None
    folder = backups.folder_of(filed.path)
    made = [backups.back_up(filed._database, folder, f"logbook 2020-01-01 00000{n}") for n in range(5)]
    filed.close()
    backups.restore(made[0], filed.path)
    assert all(path.exists() for path in made)


def test_damaged_logbook_is_kept_when_a_backup_takes_its_place(filed: Logbook) -> None:
    assert filed.path is not None
    path = filed.back_up(NOON)
    filed.close()
    filed.path.write_bytes(b"ruined" * 1000)
    kept = backups.restore(path, filed.path)
    assert kept is not None
    assert kept.read_bytes() == b"ruined" * 1000
    assert _count(filed.path) == (1, 0)


def test_side_file_of_a_killed_program_is_kept_and_not_taken_for_the_backups(filed: Logbook, tmp_path: Path) -> None:
    assert filed.path is not None
    path = filed.back_up(NOON)
    filed.append(1, [reading(1), reading(2, 5)])
    crashed = tmp_path / "crashed" / "logbook.sqlite"
    crashed.parent.mkdir()
    for ending in ("", "-wal"):  # what a killed program leaves: the entries stand only in the side file
        shutil.copy(f"{filed.path}{ending}", f"{crashed}{ending}")
    kept = backups.restore(path, crashed)
    assert kept is not None
    assert (_count(crashed), _count(kept)) == ((1, 0), (1, 2))


def test_damaged_or_missing_backup_does_not_take_the_logbooks_place(filed: Logbook, tmp_path: Path) -> None:
    assert filed.path is not None
    filed.close()
    (tmp_path / "bad.sqlite").write_bytes(b"ruined" * 1000)
    for backup in (tmp_path / "bad.sqlite", tmp_path / "none.sqlite"):
        with pytest.raises(SurroundingsProblem):
            backups.restore(backup, filed.path)
    assert _count(filed.path) == (1, 0)


def test_restoring_where_no_logbook_is(filed: Logbook, tmp_path: Path) -> None:
    path = filed.back_up(NOON)
    assert backups.restore(path, tmp_path / "new.sqlite") is None
    assert _count(tmp_path / "new.sqlite") == (1, 0)


@pytest.mark.parametrize(
    ("ages_in_hours", "dropped"),
    [
        ([], []),
        ([1, 2, 3, 40], []),
        ([50, 51, 52], [51, 52]),  # one day: the last of it stays
        ([24 * 5, 24 * 6, 24 * 7], []),
        ([24 * 17, 24 * 18, 24 * 19], [24 * 18, 24 * 19]),  # one ISO week, 10 to 12 February
        ([24 * 20, 24 * 27], []),
        ([24 * 100, 24 * 101], [24 * 101]),
        ([24 * 100, 24 * 130, 24 * 4000], []),
    ],
)
def test_thinning_keeps_days_then_weeks_then_months(ages_in_hours: list[int], dropped: list[int]) -> None:
    moments = [NOON - timedelta(hours=age) for age in ages_in_hours]
    assert backups.to_drop(moments, NOON) == tuple(sorted(NOON - timedelta(hours=age) for age in dropped))


def test_a_new_backup_thins_old_ones_but_not_those_of_migrations(filed: Logbook) -> None:
    assert filed.path is not None
    folder = backups.folder_of(filed.path)
    for name in ("logbook 2026-02-20 080000", "logbook 2026-02-20 090000", "before migration from version 1"):
        backups.back_up(filed._database, folder, name)
    filed.back_up(NOON)
    assert sorted(path.stem for path in folder.iterdir()) == [
        "before migration from version 1",
        "logbook 2026-02-20 090000",
        "logbook 2026-03-01 120000",
    ]
