"""Changes to sessions made in the Logbook: rows corrected and taken back, tags, the bin, sessions joined and split."""

from collections.abc import Iterable, Sequence

from cookstove_gui.desk.changes import Changed
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.log.correcting import Correction, corrected_row
from cookstove_gui.desk.log.open_log import OpenLog
from cookstove_gui.desk.logbook.photos import forget_photos
from cookstove_gui.stove.checking import check_place
from cookstove_gui.stove.entries import Entry, Session
from cookstove_gui.units import parse_wall_clock


def correct_row(desk: Desk, number: int, row: int, text: str, at_text: str) -> None:
    """Put what was typed in the place of a row of any session; what is left empty stays as it was."""
    if _is_on_table(desk, number):
        desk.correct(row, text, at_text=at_text)
        return
    log = _log(desk, number)
    old = log.row(row)
    at = parse_wall_clock(at_text, old.at, old.offset_minutes) if at_text.strip() else None
    new = corrected_row(old, Correction(text=text, at=at), desk.mass_unit)
    if new != old:
        check_place(new, desk.logbook.stove(log.session.stove))
        log.replace(old, new, desk.clock(), old.offset_minutes)
        desk.announce(Changed(session=True))


def take_back_row(desk: Desk, number: int, row: int) -> None:
    """Take back a row of any session."""
    if _is_on_table(desk, number):
        desk.take_back(row)
        return
    log = _log(desk, number)
    log.take_back(row, desk.clock(), log.row(row).offset_minutes)
    desk.announce(Changed(session=True))


def undo_row(desk: Desk, number: int) -> None:
    """Undo the latest thing done to any session."""
    if _is_on_table(desk, number):
        desk.undo()
        return
    log = _log(desk, number)
    log.undo(desk.clock(), log.rows[-1].offset_minutes if log.rows else desk.offset_minutes)
    desk.announce(Changed(session=True))


def set_tags(desk: Desk, number: int, text: str) -> None:
    """Give a session the tags typed, with commas between them."""
    desk.logbook.keeping.set_tags(number, text.split(","))
    desk.announce(Changed(session=True))


def put_in_bin(desk: Desk, numbers: Iterable[int]) -> None:
    """Put sessions into the bin; one on the table leaves it."""
    own = tuple(numbers)
    desk.logbook.keeping.put_in_bin(own, desk.clock())
    _after(desk, own)


def take_out(desk: Desk, numbers: Iterable[int]) -> None:
    """Bring sessions back from the bin."""
    desk.logbook.keeping.take_out(numbers)
    desk.announce(Changed(session=True, study=True))


def empty_bin(desk: Desk, numbers: Iterable[int]) -> None:
    """Delete sessions that lie in the bin, with their photos, for good."""
    own = tuple(numbers)
    desk.logbook.keeping.empty_bin(own)
    for number in own:
        forget_photos(desk.logbook, number)
    desk.announce(Changed(session=True))


def join(desk: Desk, numbers: Sequence[int]) -> Session:
    """One session of several, which go into the bin."""
    made = desk.logbook.keeping.join(numbers, desk.clock())
    _after(desk, tuple(numbers), made)
    return made


def split(desk: Desk, number: int, row: Entry) -> tuple[Session, Session]:
    """Two sessions of one, which goes into the bin; the second begins with a row."""
    first, second = desk.logbook.keeping.split(number, row.at, desk.clock())
    _after(desk, (number,), second)
    return first, second


def _after(desk: Desk, gone: Sequence[int], instead: Session | None = None) -> None:
    """Where a session that went into the bin is on the table, put the one made of it there, or none."""
    if desk.session is not None and desk.session.number in gone:
        if instead is not None:
            desk.open_session(instead.number)
        else:
            desk.clear_table()
    desk.announce(Changed(session=True, study=True))


def _is_on_table(desk: Desk, number: int) -> bool:
    return desk.session is not None and desk.session.number == number


def _log(desk: Desk, number: int) -> OpenLog:
    return OpenLog(desk.logbook, desk.logbook.session(number))
