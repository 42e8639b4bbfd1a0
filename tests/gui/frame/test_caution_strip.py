"""Cautions are shown in full words with a sign, the first one first, and the others by a key."""

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.safety.cautions import Caution
from cookstove_gui.desk import Desk
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame.caution_strip import CautionStrip
from cookstove_gui.gui.widgets.look import Look
from tests.gui.hands import click, words

HOT = Caution(key="hot", title="Flue too hot", text="Shut the air. The manual decides.", urgent=True)
FUMES = Caution(key="fumes", title="Fumes", text="Open a window. The manual decides.", urgent=False)


@pytest.fixture
def strip(link: DeskLink, look: Look, qtbot: QtBot) -> CautionStrip:
    made = CautionStrip(link)
    qtbot.addWidget(made)
    made.show()
    return made


def warn(desk: Desk, *cautions: Caution) -> None:
    assert desk.standing is not None
    assert desk.show(replace(desk.standing, cautions=cautions, serial=desk.inputs().serial))


def test_a_caution_is_told_in_full(stood_desk: Desk, strip: CautionStrip, qtbot: QtBot) -> None:
    warn(stood_desk, HOT)
    qtbot.waitUntil(lambda: words(strip, "caution") == "<b>⚠ Flue too hot.</b> Shut the air. The manual decides.")


def test_no_caution_takes_no_room(stood_desk: Desk, strip: CautionStrip, qtbot: QtBot) -> None:
    warn(stood_desk, HOT)
    qtbot.waitUntil(strip.isVisible)
    warn(stood_desk)
    qtbot.waitUntil(lambda: not strip.isVisible())


def test_what_was_read_folds_to_its_title_and_stays(stood_desk: Desk, strip: CautionStrip, qtbot: QtBot) -> None:
    warn(stood_desk, HOT, FUMES)
    qtbot.waitUntil(lambda: words(strip, "caution").startswith("<b>⚠ Flue too hot.</b>"))
    click(strip, "caution_press")
    assert words(strip, "caution").startswith("<b>⚠ Fumes.</b> Open a window")
    qtbot.keyClick(strip, Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    assert words(strip, "caution") == "<b>⚠ Flue too hot, Fumes</b>"
    assert strip.isVisible()


def test_they_are_shown_in_full_again_on_request(stood_desk: Desk, strip: CautionStrip, qtbot: QtBot) -> None:
    warn(stood_desk, HOT)
    qtbot.waitUntil(strip.isVisible)
    click(strip, "caution_press")
    click(strip, "caution_press")
    assert words(strip, "caution").endswith(HOT.text)


def test_a_caution_that_comes_back_is_told_again(stood_desk: Desk, strip: CautionStrip, qtbot: QtBot) -> None:
    warn(stood_desk, HOT)
    qtbot.waitUntil(strip.isVisible)
    click(strip, "caution_press")
    warn(stood_desk)
    qtbot.waitUntil(lambda: not strip.isVisible())
    warn(stood_desk, HOT)
    qtbot.waitUntil(lambda: words(strip, "caution").endswith(HOT.text))
