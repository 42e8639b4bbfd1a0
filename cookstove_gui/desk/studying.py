"""When a stove's past is to be studied again, and its reading off the screen's thread."""

from collections.abc import Callable

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.past import Past, fingerprint
from cookstove_gui.desk.study import StudyInputs


def study_is_due(desk: Desk) -> bool:
    """Whether sessions were added or went on since the latest study, the live one left aside."""
    live = desk.session.number if desk.session is not None and desk.is_live else None
    rows = [row for row in desk.sessions if row.first_at is not None and row.number != live]
    rows.sort(key=lambda row: (row.first_at, row.number))
    made_of = fingerprint((row.number, row.entry_count) for row in rows)
    return bool(rows) and (desk.study is None or desk.study.fingerprint != made_of)


def study_reader(desk: Desk) -> Callable[[], StudyInputs]:
    """Reads the past of the desk's stove when it is called, in whatever thread."""
    stove, live = desk.stove, desk.session if desk.is_live else None
    return lambda: Past(desk.logbook).inputs(stove, without=live)
