"""What was learned of each stove: a cache beside the log, which can be worked out from it again."""

import json
from typing import Any, NamedTuple

from cookstove_gui.logbook.checksum import is_sound
from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.session_rows import expect_stove


class Lesson(NamedTuple):
    """What was learned, and from which past."""

    made_of: str  # fingerprint of the sessions
    content: dict[str, Any]


class Learned:
    """Keeps one lesson a stove; the latest replaces the one before."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def of(self, stove: str, made_by: str) -> Lesson | None:
        """What was learned of a stove; none when other code made it, or it is damaged or cannot be read."""
        row = self._database.row(
            "SELECT stove, made_by, of_sessions, content, checksum FROM character WHERE stove = ?", (stove,)
        )
        if row is None or row[1] != made_by or not is_sound(row):
            return None
        try:
            content = json.loads(row[3])
        except ValueError:
            return None
        return Lesson(made_of=str(row[2]), content=content) if isinstance(content, dict) else None

    def keep(self, stove: str, made_by: str, lesson: Lesson) -> None:
        """Keep what was learned of a stove."""
        text = json.dumps(lesson.content)
        with self._database.transaction() as connection:
            expect_stove(connection, stove)
            connection.execute(
                "INSERT OR REPLACE INTO character (stove, made_by, of_sessions, content) VALUES (?, ?, ?, ?)",
                (stove, made_by, lesson.made_of, text),
            )
