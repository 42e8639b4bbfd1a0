"""The logbook: every stove, session and entry that was ever typed, kept in one SQLite file.

Entries are only ever added, and deleted only with a whole session that lay in the bin. A method returns after its
transaction is on the disk, never before.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Self

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook import backups, migrations
from cookstove_gui.logbook.checksum import is_sound
from cookstove_gui.logbook.damage import Damage, check_pages, damaged_rows
from cookstove_gui.logbook.database import Database, Row
from cookstove_gui.logbook.file_header import holds_anything
from cookstove_gui.logbook.keeping import NOT_IN_BIN, Keeping, take_out_if_binned
from cookstove_gui.logbook.learned import Learned
from cookstove_gui.logbook.moving import Moving
from cookstove_gui.logbook.rows import SessionSummary, row_of, sound_entries, summary_of
from cookstove_gui.logbook.session_rows import (
    ENTRY_FIELDS,
    INSERT_ENTRY,
    SUMMARY_FIELDS,
    add_session,
    expect_session,
    next_number,
)
from cookstove_gui.logbook.stove_facts import StoveFacts, kept_stove, move_facts, write_stove
from cookstove_gui.logbook.suppers import Suppers
from cookstove_gui.stove.entries import ABOUT_A_ROW, Entry, Session, named_number
from cookstove_gui.stove.stove import Stove

__all__ = ["FILE_NAME", "ChangedElsewhere", "Logbook", "SessionSummary", "default_path"]

FILE_NAME = "logbook.sqlite"
_BACKED_UP = "backed up at"  # the state of the logbook when the last backup was made
_NEVER = 2**63 - 1  # later than any instant the store can hold


def default_path() -> Path:
    """Where the logbook lies when nobody chose another place."""
    from platformdirs import user_data_dir

    return Path(user_data_dir("cookstove-gui", appauthor=False)) / FILE_NAME


class Logbook:
    """An open logbook; reading from a worker thread is fine."""

    def __init__(self, database: Database) -> None:
        """For `open` and `in_memory`; brings an older logbook up to date after backing it up."""
        self._database = database
        self.facts = StoveFacts(database)
        self.keeping = Keeping(database)
        self.learned = Learned(database)
        self.suppers = Suppers(database)
        self.moving = Moving(database)
        try:
            check_pages(database)
            migrations.migrate(database, self._back_up_before_migration)
            self._data_version = database.data_version()
        except BaseException:
            database.close()
            raise

    @classmethod
    def open(cls, path: Path | None = None) -> Self:
        """The logbook in a file, made on first start; without a path the one in the platform's data folder.

        Raises SurroundingsProblem for a file that is damaged or another program's, and where the file is missing or
        empty though there are backups of it: that is no first start.
        """
        file = path or default_path()
        if not holds_anything(file) and backups.dated(file):
            what = "is empty" if file.exists() else "is missing"
            raise SurroundingsProblem(
                f"The logbook {file} {what}, but there are backups of it; restore one, or open another logbook."
            )
        try:
            file.parent.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise SurroundingsProblem(
                f"The folder {file.parent} for the logbook cannot be created ({error.strerror}); choose another place."
            ) from error
        return cls(Database(file))

    @classmethod
    def in_memory(cls) -> Self:
        """A logbook that is gone when it is closed."""
        return cls(Database(None))

    @property
    def path(self) -> Path | None:
        """The file, or none for one in memory."""
        return self._database.path

    def on_file_trouble(self, tell: Callable[[str], object]) -> None:
        """Who is told when the file is removed or replaced while it is open; told at once of what came before."""
        self._database.tell = tell
        for sentence in self._database.untold():
            tell(sentence)

    def look_after_file(self) -> None:
        """At quiet moments: see that the file is still there, and fold the side file into it."""
        self._database.look_after_file()
        self._database.fold_in()

    def is_changed_elsewhere(self) -> bool:
        """Whether anybody else has written to the file since this was last asked."""
        before, self._data_version = self._data_version, self._database.data_version()
        return before != self._data_version

    def damage(self) -> tuple[Damage, ...]:
        """Every row that is not as it was written; reads the whole logbook."""
        return damaged_rows(self._database)

    def close(self) -> None:
        """Close the file."""
        self._database.close()

    # Stoves

    def stoves(self) -> tuple[Stove, ...]:
        """All stoves by name."""
        return tuple(
            kept_stove(name, text)
            for name, text in self._database.rows("SELECT name, description FROM stove ORDER BY name")
        )

    def stove(self, name: str) -> Stove:
        """The stove of that name; raises InputProblem when there is none."""
        row = self._database.row("SELECT description FROM stove WHERE name = ?", (name,))
        if row is None:
            raise InputProblem(f"The logbook knows no stove “{name}”; describe it on the page My stove first.")
        return kept_stove(name, row[0])

    def save_stove(self, stove: Stove) -> None:
        """Keep a stove's description, new or changed."""
        with self._database.transaction() as connection:
            write_stove(connection, stove)

    def rename_stove(self, old: str, new: str) -> None:
        """Give a stove another name; its sessions and all that is known of it go with it, in one transaction."""
        stove = self.stove(old)
        with self._database.transaction() as connection:
            if connection.execute("SELECT 1 FROM stove WHERE name = ?", (new,)).fetchone() is not None:
                raise InputProblem(f"The logbook holds a stove “{new}” already; choose another name.")
            write_stove(connection, replace(stove, name=new))
            connection.execute("UPDATE session SET stove = ? WHERE stove = ?", (new, old))
            connection.execute("UPDATE character SET stove = ? WHERE stove = ?", (new, old))
            connection.execute("UPDATE setting SET value = ? WHERE key = 'stove' AND value = ?", (new, old))
            connection.execute("UPDATE supper SET stove = ? WHERE stove = ?", (new, old))
            move_facts(connection, old, new)
            connection.execute("DELETE FROM stove WHERE name = ?", (old,))

    # Sessions

    def sessions(self, stove: str | None = None) -> tuple[SessionSummary, ...]:
        """The list of sessions (of one stove) that aren't in the bin, the latest first."""
        rows = self._database.rows(
            f"SELECT {SUMMARY_FIELDS} FROM session WHERE {NOT_IN_BIN} AND (:stove IS NULL OR stove = :stove) "
            "ORDER BY coalesce(first_at, :never) DESC, number DESC",
            {"stove": stove, "never": _NEVER},
        )
        return tuple(map(summary_of, rows))

    def session(self, number: int) -> Session:
        """One session with all its entries but those that are damaged; `damage` lists them."""
        row = self._database.row("SELECT stove, title FROM session WHERE number = ?", (number,))
        if row is None:
            raise InputProblem(f"The logbook holds no session {number}; choose one from its list.")
        rows = self._database.rows(
            f"SELECT {ENTRY_FIELDS}, checksum FROM entry WHERE session = ? ORDER BY number", (number,)
        )
        return Session(number=number, stove=row[0], title=row[1], entries=sound_entries(rows))

    def past_sessions(self, stove: str, before: int | None = None) -> tuple[Session, ...]:
        """A stove's sessions with entries, oldest first; with `before`, those that began before that session did."""
        rows = self._database.rows(
            f"SELECT number FROM session WHERE {NOT_IN_BIN} AND stove = :stove AND entry_count > 0 AND "
            "(:before IS NULL OR number <> :before AND first_at "
            "< coalesce((SELECT first_at FROM session WHERE number = :before), :never)) "
            "ORDER BY first_at, number",
            {"stove": stove, "before": before, "never": _NEVER},
        )
        return tuple(self.session(number) for (number,) in rows)

    def sessions_that_baked(self, stove: str, name: str, before: int | None, at_most: int = 8) -> tuple[Session, ...]:
        """The latest of a stove's sessions before one in which something of that name was baked, oldest first."""
        rows = self._database.rows(
            f"SELECT number FROM session WHERE {NOT_IN_BIN} AND stove = :stove AND "
            "(:before IS NULL OR number <> :before AND first_at "
            "< coalesce((SELECT first_at FROM session WHERE number = :before), :never)) "
            "AND EXISTS (SELECT 1 FROM entry WHERE session = session.number "
            "AND kind = 'oven_in' AND lower(trim(note)) = lower(:name)) "
            "ORDER BY first_at DESC, number DESC LIMIT :most",
            {"stove": stove, "name": name, "before": before, "never": _NEVER, "most": at_most},
        )
        return tuple(self.session(number) for (number,) in reversed(rows))

    def start_session(self, stove: str, title: str) -> Session:
        """A new, empty session."""
        return self.add_session(stove, title, ())

    def add_session(self, stove: str, title: str, entries: Iterable[Entry]) -> Session:
        """A new session with the checked rows of another log: all of it or nothing."""
        (added,) = self.add_sessions([Session(number=0, stove=stove, title=title, entries=tuple(entries))])
        return added

    def add_sessions(self, sessions: Iterable[Session], new_stoves: Iterable[Stove] = ()) -> tuple[Session, ...]:
        """New sessions with the checked rows of other logs, and their stoves if new: all of it or nothing.

        The sessions' numbers are given by the logbook.
        """
        with self._database.transaction() as connection:
            for stove in new_stoves:
                write_stove(connection, stove)
            return tuple(add_session(connection, session) for session in sessions)

    def last_number(self, number: int) -> int:
        """Number of the last row of a session, damaged ones counted too; 0 for an empty one."""
        row = self._database.row("SELECT coalesce(max(number), 0) FROM entry WHERE session = ?", (number,))
        return int(row[0]) if row else 0

    def rename_session(self, number: int, title: str) -> None:
        """Give a session another title."""
        with self._database.transaction() as connection:
            expect_session(connection, number)
            connection.execute("UPDATE session SET title = ? WHERE number = ?", (title, number))

    # Entries

    def append(self, session_number: int, entries: Iterable[Entry], after: int | None = None) -> tuple[Entry, ...]:
        """Add checked entries to a session, all or none, numbered on from its last row; they come back so.

        A row about another names a row of this session that stands before it. With `after`, the number of the last row
        known, raises ChangedElsewhere if another window has added one since.
        """
        with self._database.transaction() as connection:
            first = next_number(connection, session_number)
            if after is not None and first != after + 1:
                raise ChangedElsewhere("Another window has added to this session; look at its rows and try again.")
            added = tuple(replace(entry, number=number) for number, entry in enumerate(entries, start=first))
            for entry in added:
                if entry.kind in ABOUT_A_ROW and not 1 <= named_number(entry) < entry.number:
                    raise InputProblem(f"There is no row {entry.value}; the last one is {entry.number - 1}.")
            connection.executemany(INSERT_ENTRY, [row_of(session_number, entry) for entry in added])
            take_out_if_binned(connection, session_number)
        return added

    # Settings

    def setting(self, key: str, default: str = "") -> str:
        """What the cook has chosen."""
        row = self._setting_row(key)
        return str(row[1]) if row is not None and is_sound(row) else default

    def _setting_row(self, key: str) -> Row | None:
        return self._database.row("SELECT key, value, checksum FROM setting WHERE key = ?", (key,))

    def set_setting(self, key: str, value: str) -> None:
        """Keep a choice of the cook; one that is kept already costs no wait for the disk."""
        row = self._setting_row(key)
        if row is not None and row[1] == value and is_sound(row):
            return
        with self._database.transaction() as connection:
            connection.execute(
                "INSERT INTO setting (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value",
                (key, value),
            )

    # Backups

    def back_up(self, at: datetime, folder: Path | None = None) -> Path:
        """A checked copy in the folder `backups` beside the logbook, or in another one; old ones are thinned."""
        return backups.back_up_dated(self._database, folder or self._backup_folder(), at, self.path)

    def backups(self) -> tuple[backups.Backup, ...]:
        """The dated backups, in the order in which they were made."""
        return backups.dated(self.path) if self.path else ()

    def back_up_if_due(self, at: datetime) -> Path | None:
        """A backup for the day, if entries were made since the last one or none was made yet; else none."""
        if self.path is None or self.entry_count() == 0:
            return None
        made = self.backups()
        if made and self.setting(_BACKED_UP) == self._state():
            return None
        path = self.back_up(at)
        self.set_setting(_BACKED_UP, self._state())
        return path

    def entry_count(self) -> int:
        """How many entries there are in all sessions."""
        row = self._database.row("SELECT coalesce(sum(entry_count), 0) FROM session")
        return int(row[0]) if row else 0

    def _state(self) -> str:
        """Changes with every entry, session and stove, with tags and the bin."""
        row = self._database.row(
            "SELECT (SELECT count(*) FROM session), (SELECT coalesce(sum(entry_count), 0) FROM session), "
            "(SELECT coalesce(sum(checksum), 0) FROM stove), (SELECT coalesce(sum(checksum), 0) FROM session), "
            "(SELECT coalesce(sum(checksum), 0) FROM tag), (SELECT coalesce(sum(checksum), 0) FROM bin)"
        )
        return " ".join(map(str, row or ()))

    def _backup_folder(self) -> Path:
        if self.path is None:
            raise SurroundingsProblem("A logbook in memory has no folder for backups; choose one.")
        return backups.folder_of(self.path)

    def _back_up_before_migration(self, version: int) -> None:
        if self.path is not None:
            backups.back_up(self._database, self._backup_folder(), f"before migration from version {version}")


class ChangedElsewhere(InputProblem):
    """Another window has written to the session since it was read."""
