"""The live session: takes an entry, saves it, keeps the belief, tells its listeners. Plain Python, no Qt."""

from cookstove_gui.desk.changes import Changed, Receipt
from cookstove_gui.desk.desk import Desk
from cookstove_gui.situation import Inputs, Memory, Standing, work_out
from cookstove_gui.study import Study, StudyInputs, study

__all__ = [
    "Changed",
    "Desk",
    "Inputs",
    "Memory",
    "Receipt",
    "Standing",
    "Study",
    "StudyInputs",
    "study",
    "work_out",
]
