"""The heading stays in one line at every width and tells the whole sentence to whoever asks."""

import pytest
from PySide6.QtGui import QFontMetricsF
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.desk.heading import shown_headline
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame.heading import Heading
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.type import font
from tests.gui.hands import control

RUNGS = (
    "Shape the loaves. Bread heat between 4:26 and 4:44, likely 4:31.",
    "Shape the loaves. Bread heat 4:26–4:44, likely 4:31.",
    "Bread heat 4:26–4:44, likely 4:31.",
)


@pytest.fixture
def line(look: Look, qtbot: QtBot) -> OneLine:
    made = OneLine((27, 24), 600)
    qtbot.addWidget(made)
    made.show_rungs(RUNGS)
    made.show()
    return made


def width_at(size: float, words: str) -> float:
    return QFontMetricsF(font(size, 600)).horizontalAdvance(words)


@pytest.mark.parametrize(
    ("room", "rung"),
    [(760, 0), (700, 0), (640, 1), (586, 1), (520, 2), (360, 2)],
)
def test_the_longest_rung_that_fits_is_shown(line: OneLine, room: int, rung: int) -> None:
    line.resize(room, 40)
    assert line.text() == RUNGS[rung]
    assert line.shown_width <= room


def test_type_gets_smaller_before_words_are_left_out(line: OneLine) -> None:
    line.resize(round(width_at(24, RUNGS[0])) + 2, 40)
    assert line.text() == RUNGS[0]


@pytest.mark.parametrize("room", [300, 250, 200])
def test_the_last_rung_is_never_cut(line: OneLine, room: int) -> None:
    line.resize(room, 40)
    assert line.text() == RUNGS[-1]
    assert line.shown_width <= room


def test_the_whole_sentence_is_the_tooltip_and_what_is_read_out(
    stood_desk: Desk, link: DeskLink, look: Look, qtbot: QtBot
) -> None:
    heading = Heading(link, look)
    qtbot.addWidget(heading)
    headline = control(heading, "headline", OneLine)
    for width in (1000, 1280, 1920):
        heading.resize(width, heading.height())
        heading.show()
        assert headline.toolTip() == headline.accessibleName() == shown_headline(stood_desk)
        assert headline.shown_width <= headline.width()
