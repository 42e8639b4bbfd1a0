"""A disk that fills up: what is told as saved is there, what is refused is not, whatever was being done."""

import random
import subprocess
from dataclasses import dataclass, replace
from pathlib import Path

from cookstove_gui.desk import Desk
from cookstove_gui.errors import Problem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Entry, Kind, Session


@dataclass(slots=True, kw_only=True)
class Full:
    """What came of it."""

    saved: int = 0  # acts told as saved
    refused: int = 0  # acts told as refused
    differing: int = 0  # sessions that differed between screen and disk afterwards
    unclear: int = 0  # refusals that do not speak of the disk


def mounted(place: Path, kilobytes: int) -> bool:
    """Whether a small disk in memory could be mounted there; only root may."""
    done = subprocess.run(
        ["mount", "-t", "tmpfs", "-o", f"size={kilobytes}k", "tmpfs", str(place)], check=False, capture_output=True
    )
    return done.returncode == 0


def unmount(place: Path) -> None:
    """Take the small disk away."""
    subprocess.run(["umount", "-l", str(place)], check=False, capture_output=True)


def fill_up(place: Path, seed: int) -> Full:
    """Enter, correct and import on a small disk until nothing is taken any more, then make room and go on."""
    chance = random.Random(seed)
    found = Full()
    ballast = place / "ballast"
    book = Logbook.open(place / "logbook.sqlite")
    desk = Desk(book)
    first = desk.read("200", spot="oven_centre").entry
    ballast.write_bytes(bytes(60_000))
    in_a_row = 0
    while found.refused < 60:
        try:
            act = chance.random()
            if act < 0.5:
                desk.do(Kind.READING, spot="oven_centre", value="250", unit="F", note="x" * 2000)
            elif act < 0.7:
                last = desk.entries[-1].number if desk.entries else desk.read("240", spot="oven_centre").entry.number
                desk.correct(last, "260")
            elif act < 0.9:
                book.add_session(desk.stove.name, "Import", _many(first))
            else:
                desk.start_session()
                desk.read("80", spot="oven_centre")
            found.saved += 1
            in_a_row = 0
        except Problem as problem:
            found.refused += 1
            in_a_row += 1
            found.unclear += "disk" not in problem.sentence
            if in_a_row == 20:
                ballast.unlink(missing_ok=True)  # the cook makes room
    shown = desk.session
    book.close()
    book = Logbook.open(place / "logbook.sqlite")
    assert shown is not None
    kept = {one.number: book.session(one.number) for one in book.sessions()}
    found.differing += kept[shown.number].entries != shown.entries
    found.differing += sum(_is_half(session) for session in kept.values())
    found.differing += len(book.damage())
    book.close()
    return found


def _many(like: Entry) -> list[Entry]:
    return [replace(like, number=number, note="y" * 500) for number in range(1, 41)]


def _is_half(session: Session) -> bool:
    return session.title == "Import" and len(session.entries) != 40
