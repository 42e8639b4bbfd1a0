"""Small things kept for each stove beside its description: its barometer, its chimney, what its sides are made of."""

import json

from cookstove_gui.desk.desk import Desk

BAROMETER, CHIMNEY, SIDES = "barometer", "chimney", "sides"
_KEYS = (BAROMETER, CHIMNEY, SIDES)
Row = dict[str, str | float | bool]


def kept_row(desk: Desk, key: str) -> Row | None:
    """What is kept under a key for the stove in use."""
    return _all(desk, key).get(desk.stove.name)


def keep_row(desk: Desk, key: str, row: Row | None) -> None:
    """Keep a row for the stove in use, or forget the one there is."""
    rows = _all(desk, key)
    rows.pop(desk.stove.name, None)
    if row is not None:
        rows[desk.stove.name] = row
    desk.set_setting(key, json.dumps(rows))


def move_rows(desk: Desk, old: str, new: str) -> None:
    """What is kept for a stove that got another name goes with it."""
    for key in _KEYS:
        rows = _all(desk, key)
        if old in rows:
            rows[new] = rows.pop(old)
            desk.logbook.set_setting(key, json.dumps(rows))


def _all(desk: Desk, key: str) -> dict[str, Row]:
    text = desk.setting(key)
    rows: dict[str, Row] = json.loads(text) if text else {}
    return rows
