"""A damaged logbook: every changed row is found, none is used, and what can be read is saved with the rest listed."""

import random
import shutil
import sqlite3
import zlib
from datetime import UTC, datetime
from pathlib import Path

import pytest

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook.checksum import row_checksum
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.logbook.salvage import _sound, salvage

from .strategies import reading

NOON = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)
_ROWS = 400


@pytest.fixture
def closed(filed: Logbook) -> Path:
    """A closed logbook in one file, its second session long."""
    assert filed.path is not None
    filed.append(1, [reading(1, value="385"), reading(2, 5, value="390")])
    filed.start_session("Kitchen", "Rye")
    filed.append(2, [reading(number, number, value=str(300 + number)) for number in range(1, _ROWS + 1)])
    filed.look_after_file()
    filed.close()
    return filed.path


def test_the_checksum_is_the_one_of_the_standard() -> None:
    """CRC-32 (ISO 3309) of “123456789” is CBF43926, the check value of every catalogue of such sums (from memory)."""
    assert zlib.crc32(b"123456789") == 0xCBF43926
    assert row_checksum("123456789") == zlib.crc32(b"('123456789',)")


@pytest.mark.parametrize(
    ("was", "became", "what"),
    [
        (b"oven_centre385F", b"oven_centre384F", "Entry session 1 row 1"),
        (b"oven_centre390F", b"oven_centre390C", "Entry session 1 row 2"),
        (b"readingoven_centre385", b"woodingoven_centre385", "Entry"),
    ],
)
def test_a_changed_row_is_listed_and_not_used(closed: Path, was: bytes, became: bytes, what: str) -> None:
    content = closed.read_bytes()
    at = content.index(was)
    closed.write_bytes(content[:at] + became + content[at + len(was) :])
    book = Logbook.open(closed)  # SQLite's own check sees nothing
    (damage,) = book.damage()
    assert damage.sentence.startswith(what)
    assert len(book.session(1).entries) + len(book.session(2).entries) == 2 + _ROWS - 1
    book.close()


def test_a_row_that_vanished_is_listed(closed: Path) -> None:
    connection = sqlite3.connect(closed)
    connection.execute("DROP TRIGGER entry_is_deleted_only_in_the_bin")
    connection.execute("DELETE FROM entry WHERE session = 1 AND number = 2")
    connection.commit()
    connection.close()
    book = Logbook.open(closed)
    assert [one.sentence for one in book.damage()] == ["Session 1 (1 rows are missing) is damaged and is left out."]
    book.close()


def test_an_undamaged_logbook_has_nothing_to_list(closed: Path) -> None:
    book = Logbook.open(closed)
    assert book.damage() == ()
    book.close()


def test_a_stove_that_cannot_be_read_still_lets_its_log_open(closed: Path) -> None:
    connection = sqlite3.connect(closed)
    connection.execute("UPDATE stove SET description = 'nam = [[['")
    connection.commit()
    connection.close()
    book = Logbook.open(closed)
    assert [stove.name for stove in book.stoves()] == ["Kitchen"]
    assert len(book.session(1).entries) == 2
    book.close()


def _ruin_a_page(path: Path, holding: bytes) -> None:
    content = bytearray(path.read_bytes())
    page = content.index(holding) // 4096 * 4096
    content[page : page + 4096] = b"\xa5" * 4096
    path.write_bytes(content)


def test_what_can_be_read_is_saved_and_the_rest_listed(closed: Path) -> None:
    _ruin_a_page(closed, b"oven_centre500F")
    with pytest.raises(SurroundingsProblem, match="damaged"):
        Logbook.open(closed)
    found = salvage(closed)
    book = Logbook.open(closed)
    there = {row.number for row in book.session(2).entries}
    assert len(book.session(1).entries) == 2
    assert 200 not in there
    assert len(there) > _ROWS / 2
    assert all(row.value == str(300 + row.number) for row in book.session(2).entries)
    assert found.entries == 2 + len(there)
    (line,) = found.lost
    assert line.startswith("Session 2, Rye: rows ")
    assert found.damaged.exists()
    assert book.damage() == ()
    book.close()


def test_a_backup_gives_what_the_damaged_file_does_not(closed: Path) -> None:
    book = Logbook.open(closed)
    book.back_up(NOON)
    book.append(2, [reading(_ROWS + 1, 900)])
    book.look_after_file()
    book.close()
    _ruin_a_page(closed, b"oven_centre500F")
    found = salvage(closed)
    assert (found.entries, found.lost) == (2 + _ROWS + 1, ())


def test_where_nothing_can_be_read_everything_stays_as_it_was(closed: Path) -> None:
    closed.write_bytes(b"SQLite format 3\x00" + b"\xa5" * 8000)
    before = closed.read_bytes()
    with pytest.raises(SurroundingsProblem, match="No entry can be read"):
        salvage(closed)
    assert closed.read_bytes() == before
    assert [one.name for one in closed.parent.iterdir() if one.is_file()] == [closed.name]


def test_no_flipped_bit_changes_a_reading_in_silence(closed: Path, tmp_path: Path) -> None:
    """Sixty single bits: each is refused at the start, listed as damage, or changes no entry."""
    was = Logbook.open(closed)
    expected = {number: was.session(number).entries for number in (1, 2)}
    was.close()
    whole = closed.read_bytes()
    random.seed(20261126)
    for trial in range(60):
        content = bytearray(whole)
        content[random.randrange(100, len(content))] ^= 1 << random.randrange(8)
        path = tmp_path / f"trial {trial}" / "logbook.sqlite"
        path.parent.mkdir()
        path.write_bytes(content)
        try:
            book = Logbook.open(path)
        except SurroundingsProblem:
            continue
        try:
            read = {number: book.session(number).entries for number in (1, 2)}
            is_told = bool(book.damage())
        except SurroundingsProblem:
            is_told = True
        else:
            assert is_told or read == expected
            assert all(set(read[number]) <= set(expected[number]) for number in read)
        book.close()
        shutil.rmtree(path.parent)


def test_rows_of_any_type_are_no_entries() -> None:
    """A damaged page may give None or a text for a number."""
    rows = iter([(None,) * 10, ("x", "y", b"z", 1.5, None, "", "", "", "", 0), (1, 2, 3)])
    assert list(_sound("entry", rows)) == []
