"""A table of another program brought in: what its columns mean is guessed, chosen, shown, and kept for next time."""

import zlib
from dataclasses import dataclass, replace
from pathlib import Path

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.files import FileOffer, ImportOffer, is_known
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.sheet_mapping import NOTE, WOOD, Mapping, guessed_mapping, kept_mapping, sessions_of
from cookstove_gui.logbook.sheets import Sheet, read_sheet
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.phrases.entries import entry_words
from cookstove_gui.units import iso_clock

_SHOWN = 40  # rows of the preview


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetOffer:
    """What a table becomes by a mapping."""

    mapping: Mapping
    offer: ImportOffer
    rows: tuple[tuple[str, str], ...]  # the first of them: clock, and what was read or done
    entries: int


def open_sheet(desk: Desk, path: Path) -> tuple[Sheet, Mapping]:
    """A table, and what its columns mean: as kept from the last one like it, else by their names."""
    sheet = read_sheet(path)
    kept = kept_mapping(desk.setting(_key(sheet)), sheet)
    return sheet, kept or guessed_mapping(sheet, desk.stove, desk.unit)


def meanings(desk: Desk) -> tuple[tuple[str, str], ...]:
    """What a column may mean, with the words for it; the first leaves it out."""
    spots = tuple((spot.name, spot_label(desk.stove, spot.name)) for spot in desk.stove.spots)
    return (("", "left out"), *spots, (WOOD, "wood"), (NOTE, "note"))


def offer_sheet(desk: Desk, sheet: Sheet, mapping: Mapping) -> SheetOffer:
    """What a table becomes by this mapping; nothing is kept yet."""
    readings = sessions_of(sheet, mapping, desk.stove, desk.clock())
    problems = [problem.sentence for reading in readings for problem in reading.problems]
    files = []
    for reading in readings:
        if not reading.entries:
            continue
        first = reading.entries[0]
        day = iso_clock(first.at, first.offset_minutes)[:10]
        if is_known(desk, desk.stove.name, reading.entries):
            problems.append(f"The session of {day} is in the logbook already, row for row; it would not be kept twice.")
            continue
        title = sheet.path.stem if len(readings) == 1 else f"{sheet.path.stem}, {day}"
        files.append(FileOffer(path=sheet.path, title=title, stove=desk.stove, reading=reading))
    entries = [row for file in files for row in file.reading.entries]
    return SheetOffer(
        mapping=mapping,
        offer=ImportOffer(files=tuple(files), problems=tuple(problems)),
        rows=tuple(
            (iso_clock(row.at, row.offset_minutes)[:16].replace("T", " "), entry_words(row, desk.stove))
            for row in entries[:_SHOWN]
        ),
        entries=len(entries),
    )


def keep_mapping(desk: Desk, sheet: Sheet, mapping: Mapping) -> None:
    """Keep what the columns mean for the next table with the same ones, which is of another day."""
    if not mapping.meanings:
        raise InputProblem("No column means anything yet; choose at least one that is a spot, wood or a note.")
    desk.logbook.set_setting(_key(sheet), replace(mapping, first_day="").text())


def _key(sheet: Sheet) -> str:
    return f"table {zlib.crc32(repr(sheet.columns).encode()):08x}"
