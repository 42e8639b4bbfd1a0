"""What an undo took back or put back, as the entry block says it."""

from collections.abc import Callable

from cookstove_gui.desk import Desk
from cookstove_gui.phrases.edge import listed
from cookstove_gui.phrases.entries import entry_words


def undone(desk: Desk, undo: Callable[[], None]) -> tuple[str, ...]:
    """Undo, and tell it: a verb, and the entries concerned, also in short; the verb alone where no entry changed."""
    before = {row.number: row for row in desk.entries}
    undo()
    after = {row.number: row for row in desk.entries}
    gone = [entry_words(row, desk.stove) for number, row in before.items() if number not in after]
    back = [entry_words(row, desk.stove) for number, row in after.items() if number not in before]
    if back:
        return "put back", listed(back) + (f" for {listed(gone)}" if gone else ""), listed(back)
    return ("taken back", listed(gone)) if gone else ("undone",)
