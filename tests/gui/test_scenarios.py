"""Mornings at the stove, typed key by key into the window with a held clock; what the next line says about them."""

import re
from dataclasses import dataclass, replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.window import MainWindow
from tests.gui.hands import control, enter_number, press, type_text
from tests.gui.test_window import settled
from tests.held_clock import HeldClock

KEYS = {"lit": Qt.Key.Key_F5, "wood": Qt.Key.Key_F6, "air": Qt.Key.Key_F7, "door": Qt.Key.Key_F9}


@dataclass(frozen=True, slots=True)
class Morning:
    """What is done, each step a minute of the morning and what is typed then; and what the next line must say."""

    name: str
    steps: tuple[tuple[float, str], ...]
    says: str
    band: str = "bread"
    is_new: bool = False


MORNINGS = (
    Morning("nothing was read yet", ((0, "lit"),), "Fire lit at .* Read the oven centre"),
    Morning(
        "an oven on its way",
        ((0, "lit"), (0, "air 3"), (2, "wood 2"), (12, "oven 150"), (20, "oven 215"), (28, "wood 2"), (29, "oven 275")),
        r"bread heat .*\d:\d\d",
    ),
    Morning(
        "the air was forgotten wide open",
        ((0, "lit"), (0, "air 5"), (2, "wood 2"), (12, "oven 150"), (20, "oven 215"), (28, "wood 2"), (29, "oven 275")),
        "air has been wide open|bread heat",
    ),
    Morning(
        "an oven that is there",
        (
            *((0, "lit"), (0, "air 5"), (2, "wood 3"), (15, "oven 190"), (25, "oven 290"), (27, "wood 2")),
            *((28, "air 3"), (35, "oven 370"), (40, "oven 388"), (45, "oven 395"), (50, "oven 396")),
        ),
        "Put the loaves in|at bread heat|Add wood",
    ),
    Morning("another heat is wanted", ((0, "lit"), (2, "wood 2"), (15, "oven 160")), "480.520", band="480-520"),
    Morning("a new stove", ((0, "lit"), (3, "wood 1"), (10, "oven 90")), "First fire 1 of 3", is_new=True),
)


@pytest.mark.parametrize("morning", MORNINGS, ids=lambda morning: morning.name)
def test_the_next_line_says_what_to_do(window: MainWindow, clock: HeldClock, qtbot: QtBot, morning: Morning) -> None:
    if morning.is_new:
        window.desk.save_stove(replace(window.desk.stove, is_new=True))
    window.desk.choose_band(morning.band)
    minute = 0.0
    for at, typed in morning.steps:
        clock.pass_minutes(at - minute)
        minute = at
        what, _, how = typed.partition(" ")
        if what in KEYS:
            press(window, KEYS[what])
            type_text(window, how)
        else:
            enter_number(window, typed)
    qtbot.waitUntil(lambda: window.working.is_busy or window.desk.standing is not None)
    settled(window, qtbot)
    said = control(window, "headline", QLabel).accessibleName()
    assert re.search(morning.says, said), said
