"""A backup counts only once it was opened and counted; restoring one never throws another away."""

import shutil
import sqlite3
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook import backups
from cookstove_gui.logbook.backups import Backup
from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.logbook.salvage import salvage

from .strategies import reading

NOON = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)


def _count(path: Path) -> tuple[int, int]:
    database = Database(path, read_only=True)
    found = backups.counts(database)
    database.close()
    return found


def test_backup_holds_what_still_stands_in_the_side_file(filed: Logbook) -> None:
    filed.append(1, [reading(1), reading(2, 5)])
    path = filed.back_up(NOON)
    assert path.name == "logbook 0001 2026-03-01 120000.sqlite"
    assert _count(path) == (1, 2)
    assert [(one.path, one.taken_at) for one in filed.backups()] == [(path, NOON)]
    assert [one.name for one in path.parent.iterdir()] == [path.name]


def test_two_backups_of_one_second_are_both_kept(filed: Logbook) -> None:
    assert filed.back_up(NOON) != filed.back_up(NOON)
    assert len(filed.backups()) == 2


def test_backup_goes_where_it_is_asked_to(filed: Logbook, tmp_path: Path) -> None:
    assert filed.back_up(NOON, tmp_path / "stick").parent == tmp_path / "stick"


def test_logbook_in_memory_needs_a_folder(logbook: Logbook, tmp_path: Path) -> None:
    with pytest.raises(SurroundingsProblem, match="in memory"):
        logbook.back_up(NOON)
    assert logbook.backups() == ()
    assert _count(logbook.back_up(NOON, tmp_path)) == (1, 0)


def test_folder_that_cannot_be_made_is_told(filed: Logbook, tmp_path: Path) -> None:
    (tmp_path / "stick").write_text("a file")
    with pytest.raises(SurroundingsProblem, match="cannot take the copy"):
        filed.back_up(NOON, tmp_path / "stick")


def test_copy_that_came_out_short_is_no_backup(filed: Logbook, monkeypatch: pytest.MonkeyPatch) -> None:
    copy_to = Database.copy_to

    def short(database: Database, side: Path) -> None:
        copy_to(database, side)
        connection = sqlite3.connect(side)
        connection.executescript("DROP TRIGGER entry_is_deleted_only_in_the_bin; DELETE FROM entry WHERE number = 2;")
        connection.close()

    filed.append(1, [reading(1), reading(2, 5)])
    monkeypatch.setattr(Database, "copy_to", short)
    with pytest.raises(SurroundingsProblem, match="does not hold what the logbook holds"):
        filed.back_up(NOON)
    assert filed.backups() == ()


def test_copy_with_a_changed_reading_is_no_backup(filed: Logbook, monkeypatch: pytest.MonkeyPatch) -> None:
    copy_to = Database.copy_to

    def changed(database: Database, side: Path) -> None:
        copy_to(database, side)
        content = side.read_bytes()
        assert content.count(b"oven_centre385F") == 1
        side.write_bytes(content.replace(b"oven_centre385F", b"oven_centre384F"))

    filed.append(1, [reading(1, value="385")])
    monkeypatch.setattr(Database, "copy_to", changed)
    with pytest.raises(SurroundingsProblem, match="does not hold what the logbook holds"):
        filed.back_up(NOON)


def test_backup_on_a_read_only_stick_opens(filed: Logbook, tmp_path: Path) -> None:
    made = filed.back_up(NOON, tmp_path / "stick")
    made.chmod(0o400)
    made.parent.chmod(0o500)
    try:
        assert backups.check_backup(made) == (1, 0)
        assert [one.name for one in made.parent.iterdir()] == [made.name]
    finally:
        made.parent.chmod(0o700)


def test_logbook_and_backups_are_for_their_owner_alone(filed: Logbook) -> None:
    assert filed.path is not None
    made = filed.back_up(NOON)
    assert {path.stat().st_mode & 0o777 for path in (filed.path, made)} == {0o600}


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


def _made(*moments: datetime) -> list[Backup]:
    return [
        Backup(serial=serial, taken_at=at, path=Path(f"{serial}.sqlite")) for serial, at in enumerate(moments, start=1)
    ]


def _days(count: int, step: int = 1) -> list[datetime]:
    return [NOON + timedelta(days=step * day) for day in range(count)]


def test_the_latest_thirty_stay_whatever_their_dates() -> None:
    assert backups.to_drop(_made(*[NOON] * 30)) == ()


def test_of_older_ones_the_last_of_each_week_and_month_stays() -> None:
    made = _made(*_days(60))
    dropped = {one.serial for one in backups.to_drop(made)}
    kept = [one for one in made[:30] if one.serial not in dropped]
    # 1 March 2026 is a Sunday: of 1 to 30 March the four Sundays after it end their weeks, the first day its own, the
    # 30th is the last of what is old in its week and its month.
    assert [one.taken_at.day for one in kept] == [1, 8, 15, 22, 29, 30]


def test_weeks_give_way_to_months() -> None:
    made = _made(*_days(100, step=7))
    dropped = {one.serial for one in backups.to_drop(made)}
    kept = [one.taken_at for one in made if one.serial not in dropped]
    assert kept[-60:] == [one.taken_at for one in made[-60:]]
    months = [(at.year, at.month) for at in kept[:-60]]
    assert len(months) == len(set(months)) == 9  # March to November 2026, before the sixty weeks that stay


def test_a_clock_far_ahead_loses_no_backup() -> None:
    """A computer whose clock stood at 2100 for a while, and is right again."""
    wrong = [datetime(2100, 1, 1, hour, tzinfo=UTC) for hour in range(5)]
    made = _made(*_days(10), *wrong, *_days(10))
    assert backups.to_drop(made) == ()
    many = _made(*wrong * 8, *_days(20))
    assert not set(backups.to_drop(many)) & set(many[-30:])


def test_new_backups_thin_old_ones_but_not_those_of_migrations(filed: Logbook) -> None:
    assert filed.path is not None
    folder = backups.folder_of(filed.path)
    backups.back_up(filed._database, folder, "before migration from version 1")
    for _ in range(33):
        filed.back_up(NOON)
    made = filed.backups()
    assert [one.serial for one in made] == list(range(3, 34))
    assert (folder / "before migration from version 1.sqlite").exists()


def test_a_backup_is_due_once_something_was_entered(filed: Logbook) -> None:
    assert filed.back_up_if_due(NOON) is None  # nothing to lose yet
    filed.append(1, [reading(1)])
    assert filed.back_up_if_due(NOON) is not None
    assert filed.back_up_if_due(NOON) is None
    filed.append(1, [reading(2, 5)])
    assert filed.back_up_if_due(NOON) is not None
    filed.rename_session(1, "Rye")
    assert filed.back_up_if_due(NOON) is not None


def test_two_logbooks_in_a_folder_have_each_their_own_backups(filed: Logbook) -> None:
    assert filed.path is not None
    filed.append(1, [reading(1)])
    own = filed.back_up(NOON)
    other = Logbook.open(filed.path.with_name("cabin.sqlite"))  # new, though backups lie there already
    assert other.backups() == ()
    made = other.back_up(NOON)
    assert made.name == "cabin 0001 2026-03-01 120000.sqlite"
    assert [one.path for one in other.backups()] == [made]
    assert [one.path for one in filed.backups()] == [own]
    other.close()


def test_a_logbook_thins_no_backups_but_its_own(filed: Logbook, tmp_path: Path) -> None:
    with closing(Logbook.open(tmp_path / "cabin.sqlite")) as other:
        theirs = {other.back_up(NOON, tmp_path / "stick") for _ in range(2)}
        for _ in range(33):
            filed.back_up(NOON, tmp_path / "stick")
    left = set((tmp_path / "stick").iterdir())
    assert theirs <= left
    assert len(left) == 2 + 31


def test_a_name_that_begins_like_another_is_not_taken_for_it(tmp_path: Path) -> None:
    books = [Logbook.open(tmp_path / name) for name in ("cabin.sqlite", "cabin 0001.sqlite", "cabin.db")]
    made = [book.back_up(NOON) for book in books]
    assert [[one.path for one in book.backups()] for book in books] == [[path] for path in made]
    for book in books:
        book.close()


def test_backups_that_were_all_named_alike_are_still_found(tmp_path: Path) -> None:
    cabin = tmp_path / "cabin.sqlite"
    book = Logbook.open(cabin)
    older = backups.back_up_dated(book._database, backups.folder_of(cabin), NOON)
    newer = book.back_up(NOON - timedelta(days=1))
    assert older.name.startswith("logbook ")
    assert [one.path for one in book.backups()] == [older, newer]
    Logbook.open(tmp_path / "house.sqlite").close()  # now nobody knows whose the older one is
    assert [one.path for one in book.backups()] == [newer]
    book.close()


def test_what_another_logbook_backed_up_is_not_saved_into_a_damaged_one(filed: Logbook, tmp_path: Path) -> None:
    filed.append(1, [reading(1)])
    filed.back_up(NOON)
    cabin = tmp_path / "cabin.sqlite"
    cabin.write_bytes(b"not a logbook at all" * 100)
    with pytest.raises(SurroundingsProblem, match="No entry can be read"):
        salvage(cabin)
