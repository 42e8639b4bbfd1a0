"""A row of a catalogue by its name, or a sentence that lists the names there are."""

from collections.abc import Callable, Iterable
from typing import TypeVar

from cookstove_gui.errors import InputProblem

Row = TypeVar("Row")


def by_name(rows: Iterable[Row], name: str, what: str, name_of: Callable[[Row], str]) -> Row:
    """The row called `name`; `what` says in the sentence what the rows are.

    Raises
    ------
    InputProblem
        If there is none of that name.
    """
    known = {name_of(row): row for row in rows}
    if name not in known:
        raise InputProblem(f"“{name}” is not a known {what}; choose one of {', '.join(known)}.")
    return known[name]
