"""What is damaged in a logbook: pages by SQLite's own check, rows by their checksums, gaps by each session's count."""

from dataclasses import dataclass

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook.checksum import KEYS, SUMMED, is_sound, summed_tables
from cookstove_gui.logbook.database import Database, Row

_NAMES = {"thermometer_check": "thermometer check", "character": "what was learned of", "entry": "entry"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Damage:
    """One row that is not as it was written, or that is missing."""

    table: str
    key: str

    @property
    def sentence(self) -> str:
        """Which row, and what became of it."""
        what = f"{_NAMES.get(self.table, self.table)} {self.key}"
        return f"{what[:1].upper()}{what[1:]} is damaged and is left out."


def check_pages(database: Database) -> None:
    """Raises SurroundingsProblem where SQLite finds a page that cannot be right; 26 ms for 160,000 entries."""
    if database.row("PRAGMA quick_check(1)") != ("ok",):
        raise SurroundingsProblem(f"The logbook {database.path} is damaged; open a backup of it or another logbook.")


def damaged_rows(database: Database) -> tuple[Damage, ...]:
    """Every row whose checksum does not fit its content, and every session that has lost rows."""
    found: list[Damage] = []
    version = database.row("PRAGMA user_version") or (0,)
    for table in summed_tables(int(version[0])):
        columns, keys = SUMMED[table], KEYS[table]
        for row in database.rows(f"SELECT {', '.join((*keys, *columns))}, checksum FROM {table}"):
            if not is_sound(row[len(keys) :]):
                found.append(Damage(table=table, key=_key(table, row[: len(keys)])))
    lost = database.rows(
        "SELECT session.number, entry_count - (SELECT count(*) FROM entry WHERE session = session.number) AS gone "
        "FROM session WHERE gone <> 0"
    )
    found.extend(Damage(table="session", key=f"{number} ({gone} rows are missing)") for number, gone in lost)
    return tuple(found)


def _key(table: str, values: Row) -> str:
    return f"session {values[0]} row {values[1]}" if table == "entry" else " ".join(map(str, values))
