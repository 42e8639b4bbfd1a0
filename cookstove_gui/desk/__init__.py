"""The live session: takes an entry, saves it, keeps the belief, tells its listeners. Plain Python, no Qt."""

from cookstove_gui.desk.changes import Changed, Receipt
from cookstove_gui.desk.desk import Desk

__all__ = ["Changed", "Desk", "Receipt"]
