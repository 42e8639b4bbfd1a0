"""A program that is killed while it writes: what it told as saved is there, and no act is half done.

The child is forked from a process that has everything loaded, so that hundreds of kills take minutes.
"""

import os
import random
import signal
import sys
import time
from dataclasses import dataclass
from pathlib import Path

from cookstove_gui.desk import Desk
from cookstove_gui.desk.log.undoing import CORRECTED
from cookstove_gui.logbook import backups
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Kind, named_number

_LONGEST_S = 0.25  # until the kill


@dataclass(slots=True, kw_only=True)
class Kills:
    """What came of a number of kills."""

    kills: int = 0
    told: int = 0  # entries that were told as saved
    lost: int = 0  # of those, not there afterwards
    half_done: int = 0  # corrections of which only one row was there
    damaged: int = 0  # rows with a wrong checksum, and backups that do not open


def kill_while_writing(place: Path, times: int, seed: int) -> Kills:
    """Kill a program `times` times at random moments on one logbook, and look at it after each."""
    chance = random.Random(seed)
    found = Kills()
    for number in range(times):
        reader, writer = os.pipe()
        child = os.fork()
        if child == 0:  # pragma: no cover
            os.close(reader)
            _write_on(place, writer, random.Random(seed * 1000 + number))
        os.close(writer)
        time.sleep(chance.uniform(0.005, _LONGEST_S))
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        with os.fdopen(reader) as stream:
            told = [int(line) for line in stream.read().split("\n") if line.isdecimal()]
        _look(place, told[-1] if told else 0, found)
        found.kills += 1
    return found


def _write_on(place: Path, writer: int, chance: random.Random) -> None:  # pragma: no cover
    """Enter, correct, take back, begin sessions and back up, telling the entries in the logbook after each act."""
    try:
        book = Logbook.open(place)
        desk = Desk(book)
        desk.read("200", spot="oven_centre")
        while True:
            act = chance.random()
            if act < 0.6:
                desk.read(str(chance.randint(60, 600)), spot="oven_centre")
            elif act < 0.8:
                desk.correct(desk.entries[-1].number, str(chance.randint(60, 600)))
            elif act < 0.9 and len(desk.entries) > 1:
                desk.undo()
            elif act < 0.95:
                desk.start_session()
                desk.read("80", spot="oven_centre")
            else:
                book.back_up(desk.clock())
                book.look_after_file()
            os.write(writer, f"{book.entry_count()}\n".encode())
    except BaseException:
        sys.stderr.write("the child ended by itself\n")
        raise
    finally:
        os._exit(1)


def _look(place: Path, told: int, found: Kills) -> None:
    if not place.exists():
        return
    book = Logbook.open(place)
    found.told = max(found.told, told)
    found.lost += max(0, told - book.entry_count())
    found.damaged += len(book.damage())
    for summary in book.sessions():
        rows = {row.number: row for row in book.session(summary.number).entries}
        for row in rows.values():
            is_correction = row.kind is Kind.VOID and row.note == CORRECTED
            if is_correction and (row.number - 1 not in rows or named_number(row) not in rows):
                found.half_done += 1
    for one in book.backups():
        backups.check_backup(one.path)
    book.close()
