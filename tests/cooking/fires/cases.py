"""Made-up logs of first fires."""

from dataclasses import replace
from datetime import timedelta

from cookstove_gui.stove.entries import Session
from tests.cooking.made import START, STOVE, log, session

NEW = replace(STOVE, is_new=True)
DAY = timedelta(days=1)
KINDLING = (
    (0, "lit", "", "", ""),
    (10, "reading", "top_back_left", "170", "F"),
    (20, "reading", "top_back_left", "240", "F"),
    (32, "reading", "top_back_left", "225", "F"),
)
MEDIUM = (
    (0, "lit", "", "", ""),
    (20, "wood", "", "", ""),
    (60, "wood", "", "", ""),
    (90, "reading", "top_back_left", "420", "F"),
    (130, "reading", "top_back_left", "380", "F"),
)

FULL = (
    (0, "lit", "", "", ""),
    (10, "air", "", "1", ""),
    (40, "wood", "", "5", "kg"),
    (90, "reading", "top_back_left", "590", "F"),
    (100, "air", "", "0.2", ""),
    (230, "reading", "top_back_left", "400", "F"),
)


def made(*logs: tuple[tuple[float, str, str, str, str], ...]) -> list[Session]:
    return [session(number, log(*rows, start=START + number * DAY)) for number, rows in enumerate(logs, start=1)]
