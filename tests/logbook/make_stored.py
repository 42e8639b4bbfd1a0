"""Makes the stored logbook of each older version that has none yet: `python -m tests.logbook.make_stored`.

Run it after a new migration is added; files that are there are never made again, so that they stay as old as they are.
"""

from pathlib import Path

from cookstove_gui.logbook import migrations
from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.stove_file import stove_text
from cookstove_gui.stove.stove import stove_with_default_spots

STORED = Path(__file__).parent / "stored"
_MINUTE = 60_000_000  # microseconds
_NOON = 1_767_614_400_000_000  # 2026-01-05 12:00 UTC
_ROWS = (
    (1, 1, 0, "lit", "", "", ""),
    (1, 2, 30, "reading", "oven_centre", "385", "F"),
    (2, 1, 1440, "lit", "", "", ""),
    (2, 2, 1450, "wood", "", "2", "kg"),
    (2, 3, 1460, "reading", "oven_centre", "180", "C"),
)


def make_stored(path: Path, version: int) -> None:
    """A logbook of an older version with one stove, two sessions and five entries, all made up."""
    database = Database(path)
    migrations.migrate(database, lambda _: None, up_to=version)
    with database.transaction() as connection:
        text = stove_text(stove_with_default_spots("Kitchen"))
        connection.execute("INSERT INTO stove (name, description) VALUES ('Kitchen', ?)", (text,))
        for title in ("Bread", "Stew"):
            connection.execute("INSERT INTO session (stove, title) VALUES ('Kitchen', ?)", (title,))
        for session, number, minute, kind, spot, value, unit in _ROWS:
            connection.execute(
                "INSERT INTO entry (session, number, at, offset_minutes, kind, spot, value, unit, note) "
                "VALUES (?, ?, ?, -300, ?, ?, ?, ?, 'made up')",
                (session, number, _NOON + minute * _MINUTE, kind, spot, value, unit),
            )
    database.rows("PRAGMA journal_mode = DELETE")  # one plain file
    database.close()


def main() -> None:
    """Make what is missing."""
    for version in range(1, len(migrations.steps())):
        path = STORED / f"version_{version}.sqlite"
        if not path.exists():
            make_stored(path, version)


if __name__ == "__main__":
    main()
