"""Damage on the disk: each damaged logbook is refused at the start, told row by row, or gives what was entered."""

import random
import shutil
from dataclasses import dataclass
from pathlib import Path

from cookstove_gui.errors import Problem, SurroundingsProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.logbook.salvage import salvage


@dataclass(slots=True, kw_only=True)
class Damages:
    """What came of a number of damaged files."""

    files: int = 0
    refused: int = 0  # at the start, with a sentence
    told: int = 0  # opened, the damage listed
    harmless: int = 0  # opened, everything as it was
    silent: int = 0  # opened, something differs and nobody says so
    saved: int = 0  # of those refused, rescued with at least one entry
    wrong: int = 0  # rescued entries that differ from what was entered


def damage_files(whole: Path, work: Path, times: int, seed: int) -> Damages:
    """Damage copies of a closed logbook: single bits, runs of bytes, cut ends, zeroed pages."""
    chance = random.Random(seed)
    content = whole.read_bytes()
    truth = _read(whole)
    found = Damages()
    for number in range(times):
        folder = work / str(number)
        folder.mkdir()
        path = folder / "logbook.sqlite"
        path.write_bytes(_damaged(content, chance))
        found.files += 1
        try:
            book = Logbook.open(path)
        except SurroundingsProblem:
            found.refused += 1
            _rescue(path, truth, found)
        else:
            try:
                is_told = bool(book.damage())
            except Problem:
                is_told = True
            book.close()
            try:
                is_same = _read(path) == truth
            except Problem:
                is_told, is_same = True, False
            found.told += is_told
            found.harmless += is_same and not is_told
            found.silent += not is_same and not is_told
        shutil.rmtree(folder)
    return found


def _damaged(content: bytes, chance: random.Random) -> bytes:
    made = bytearray(content)
    at = chance.randrange(len(made))
    match chance.randrange(4):
        case 0:
            made[at] ^= 1 << chance.randrange(8)
        case 1:
            made[at : at + 40] = chance.randbytes(len(made[at : at + 40]))
        case 2:
            del made[at:]
        case _:
            page = at // 4096 * 4096
            made[page : page + 4096] = bytes(4096)
    return bytes(made)


def _read(path: Path) -> dict[int, tuple[object, ...]]:
    book = Logbook.open(path)
    try:
        return {one.number: book.session(one.number).entries for one in book.sessions()}
    finally:
        book.close()


def _rescue(path: Path, truth: dict[int, tuple[object, ...]], found: Damages) -> None:
    try:
        salvage(path)
        read = _read(path)
    except Problem:
        return
    found.saved += 1
    found.wrong += sum(len(set(rows) - set(truth.get(number, ()))) for number, rows in read.items())
