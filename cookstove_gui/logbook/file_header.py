"""Whose file it is, read from the first hundred bytes before SQLite touches anything.

Source of the layout: SQLite, Database File Format, section 1.3 (magic string at 0, page size at 16, application id at
68).
"""

from pathlib import Path

from cookstove_gui.errors import SurroundingsProblem

APPLICATION_ID = 0x434F4F4B  # “COOK”, SQLite's mark for whose file it is
_MAGIC = b"SQLite format 3\x00"
_HEADER = 100


def check_is_ours(path: Path) -> bool:
    """Whether there is a logbook (False: nothing there yet, or an empty file).

    Raises SurroundingsProblem for a file of another kind, another program's database, and a file that cannot be read.
    A database that carries no mark yet may be ours, killed while it was being made: its tables are looked at later.
    """
    try:
        with path.open("rb") as stream:
            header = stream.read(_HEADER)
    except FileNotFoundError:
        return False
    except OSError as error:
        raise SurroundingsProblem(
            f"The logbook {path} cannot be opened ({error.strerror}); check its permissions, or open another one."
        ) from error
    if not header:
        return False
    page_size = int.from_bytes(header[16:18], "big")
    is_power = page_size == 1 or (512 <= page_size <= 32768 and page_size & (page_size - 1) == 0)
    if not header.startswith(_MAGIC) or len(header) < _HEADER or not is_power:
        raise SurroundingsProblem(
            f"The logbook {path} is damaged or not a logbook at all; open a backup of it or another logbook."
        )
    mark = int.from_bytes(header[68:72], "big")
    if mark not in (0, APPLICATION_ID):
        raise another_programs(path)
    return True


def another_programs(path: Path | str) -> SurroundingsProblem:
    """The problem of a database that is not a logbook."""
    return SurroundingsProblem(f"The file {path} belongs to another program; open a logbook instead.")


def holds_anything(file: Path) -> bool:
    """Whether something was ever written to it, be it only to the side file."""
    try:
        return file.stat().st_size > 0 or file.with_name(f"{file.name}-wal").exists()
    except OSError:
        return False
