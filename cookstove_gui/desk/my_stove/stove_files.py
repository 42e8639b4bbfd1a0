"""A stove's description given to somebody else as a file, and one taken in from such a file."""

from dataclasses import replace
from pathlib import Path

from cookstove_gui.desk.changes import Changed
from cookstove_gui.desk.desk import Desk
from cookstove_gui.logbook.stove_file import FILE_NAME, read_stove, write_stove

USUAL_NAME = FILE_NAME


def give_stove(desk: Desk, path: Path) -> None:
    """Write the desk's stove to a file; raises SurroundingsProblem where that cannot be done."""
    write_stove(path, desk.stove)


def take_stove(desk: Desk, path: Path) -> str:
    """Keep the stove that a file describes beside the others; returns its name, numbered where another stove has it.

    The stove on the table stays there until another one is chosen.

    Raises InputProblem for a file that cannot be understood, SurroundingsProblem for one that cannot be read.
    """
    given = read_stove(path)
    known = {stove.name: stove for stove in desk.stoves}
    name, number = given.name, 2
    while name in known and known[name] != replace(given, name=name):
        name, number = f"{given.name} {number}", number + 1
    desk.logbook.save_stove(replace(given, name=name))
    desk.announce(Changed(settings=True))  # there is another one to choose
    return name
