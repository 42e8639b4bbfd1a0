"""Dishes and suppers are kept over a restart, go with their stove, and survive a damaged file."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.logbook.salvage import salvage
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import stove_with_default_spots

SIX = datetime(2026, 1, 10, 18, 0, tzinfo=UTC)


def _book(path: Path) -> Logbook:
    book = Logbook.open(path)
    book.save_stove(stove_with_default_spots("Kitchen"))
    return book


def test_a_dish_is_kept_changed_and_left(tmp_path: Path) -> None:
    book = _book(tmp_path / "logbook.sqlite")
    book.suppers.keep_dish("rolls", "one")
    book.suppers.keep_dish("stew", "two")
    book.suppers.keep_dish("rolls", "three")
    book.close()
    again = Logbook.open(tmp_path / "logbook.sqlite")
    assert again.suppers.dishes() == {"rolls": "three", "stew": "two"}
    again.suppers.leave_dish("rolls")
    assert again.suppers.dishes() == {"stew": "two"}
    again.close()


def test_suppers_come_back_the_latest_first_and_go_with_their_stove(tmp_path: Path) -> None:
    book = _book(tmp_path / "logbook.sqlite")
    first = book.suppers.add("Kitchen", SIX, "sunday")
    second = book.suppers.add("Kitchen", SIX + timedelta(days=7), "the next")
    book.suppers.change(first, SIX + timedelta(minutes=30), "sunday, later")
    book.rename_stove("Kitchen", "Cabin")
    book.close()
    again = Logbook.open(tmp_path / "logbook.sqlite")
    assert again.suppers.of("Kitchen") == ()
    assert [(row.number, row.content) for row in again.suppers.of("Cabin")] == [
        (second, "the next"),
        (first, "sunday, later"),
    ]
    assert again.suppers.of("Cabin")[1].table_at == SIX + timedelta(minutes=30)
    assert not again.damage()
    again.suppers.remove(second)
    assert len(again.suppers.of("Cabin")) == 1
    again.close()


def test_a_rescued_logbook_still_has_them(tmp_path: Path) -> None:
    path = tmp_path / "logbook.sqlite"
    book = _book(path)
    lit = Entry(number=1, at=SIX, offset_minutes=0, kind=Kind.LIT, spot="", value="", unit="")
    book.add_session("Kitchen", "Sunday", (lit,))
    book.suppers.keep_dish("rolls", "one")
    book.suppers.add("Kitchen", SIX, "sunday")
    book.close()
    salvage(path)
    again = Logbook.open(path)
    assert again.suppers.dishes() == {"rolls": "one"}
    assert [row.content for row in again.suppers.of("Kitchen")] == ["sunday"]
    again.close()
