"""Cautions are shown in full words with a sign, two lines at a time, the first one first, and folded once read."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QPushButton, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.desk import Desk
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame.heading import Heading
from cookstove_gui.gui.widgets.look import Look
from tests.gui.hands import click, control, words

HOT = Caution(
    key="hot",
    title="Flue too hot",
    text="Shut the air. The manual decides.",
    urgent=True,
    decides="The manual decides.",
)
FUMES = Caution(key="fumes", title="Fumes", text="Open a window. The manual decides.", urgent=False)


@pytest.fixture
def heading(link: DeskLink, look: Look, qtbot: QtBot) -> Iterator[Heading]:
    made = Heading(link, look)
    qtbot.addWidget(made)
    made.resize(1280, made.height())
    made.show()
    yield made
    look.set_scale(1.0)


def warn(desk: Desk, *cautions: Caution) -> None:
    assert desk.standing is not None
    assert desk.show(replace(desk.standing, cautions=cautions, serial=desk.inputs().serial))
    QApplication.processEvents()  # the link tells its listeners together, in the next turn of the loop


def folded(heading: Heading) -> str:
    key = control(heading, "caution_folded", QPushButton)
    return key.text() if key.isVisible() else ""


def test_a_caution_is_told_in_full_and_who_decides_last(stood_desk: Desk, heading: Heading, qtbot: QtBot) -> None:
    warn(stood_desk, HOT)
    qtbot.waitUntil(heading.cautions.isVisible)
    assert words(heading, "caution") == "Flue too hot. Shut the air. The manual decides."
    assert heading.cautions.lines == (("Shut the air.", "The manual decides."),)


def test_no_caution_takes_no_room(stood_desk: Desk, heading: Heading, qtbot: QtBot) -> None:
    warn(stood_desk)
    qtbot.waitUntil(lambda: not heading.cautions.isVisible())
    low = heading.height()
    warn(stood_desk, HOT)
    qtbot.waitUntil(heading.cautions.isVisible)
    assert low < heading.height() <= low + 26


def test_what_was_read_folds_to_its_title_and_stays(stood_desk: Desk, heading: Heading, qtbot: QtBot) -> None:
    warn(stood_desk, HOT, FUMES)
    qtbot.waitUntil(heading.cautions.isVisible)
    assert words(heading, "caution").startswith("Flue too hot.")
    click(heading, "caution_press")
    assert words(heading, "caution").startswith("Fumes. Open a window")
    assert folded(heading) == ""
    qtbot.keyClick(heading, Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    assert folded(heading) == "Flue too hot, Fumes"
    assert not heading.cautions.isVisible()


def test_the_keyboard_goes_from_a_caution_that_was_read_to_the_page_below(
    stood_desk: Desk, heading: Heading, qtbot: QtBot
) -> None:
    whole, below = QWidget(), QPushButton("below")
    column = QVBoxLayout(whole)
    for part in (heading, below):
        column.addWidget(part)
    qtbot.addWidget(whole)
    with qtbot.waitActive(whole):
        whole.show()
        whole.activateWindow()
    warn(stood_desk, HOT, FUMES)
    read = control(heading, "caution_press", QPushButton)
    QWidget.setTabOrder(read, control(heading, "page_cook", QPushButton))  # as in the window
    read.setFocus()
    qtbot.keyClick(read, Qt.Key.Key_Space)
    assert QApplication.focusWidget() is read  # there is another one
    qtbot.keyClick(read, Qt.Key.Key_Space)
    assert not heading.cautions.isVisible()
    assert QApplication.focusWidget() is below
    heading.setParent(None)


def test_more_than_two_read_ones_are_counted(stood_desk: Desk, heading: Heading, qtbot: QtBot) -> None:
    warn(stood_desk, HOT, FUMES, replace(FUMES, key="ash", title="Ash"))
    qtbot.waitUntil(heading.cautions.isVisible)
    for _ in range(3):
        click(heading, "caution_press")
    assert folded(heading) == "Flue too hot and 2 more"


def test_they_are_shown_in_full_again_on_request(stood_desk: Desk, heading: Heading, qtbot: QtBot) -> None:
    warn(stood_desk, HOT)
    qtbot.waitUntil(heading.cautions.isVisible)
    click(heading, "caution_press")
    assert not heading.cautions.isVisible()
    click(heading, "caution_folded")
    assert heading.cautions.isVisible()
    assert words(heading, "caution").endswith(HOT.text)


def test_a_caution_that_comes_back_is_told_again(stood_desk: Desk, heading: Heading, qtbot: QtBot) -> None:
    warn(stood_desk, HOT)
    qtbot.waitUntil(heading.cautions.isVisible)
    click(heading, "caution_press")
    warn(stood_desk)
    qtbot.waitUntil(lambda: folded(heading) == "")
    warn(stood_desk, HOT)
    qtbot.waitUntil(heading.cautions.isVisible)


def test_a_long_caution_is_read_on_two_lines_at_a_time_and_no_word_is_lost(
    stood_desk: Desk, heading: Heading, qtbot: QtBot
) -> None:
    long = replace(HOT, text=" ".join(f"word{number}" for number in range(70)) + " The manual decides.")
    warn(stood_desk, long)
    qtbot.waitUntil(heading.cautions.isVisible)
    pages = heading.cautions.lines
    assert len(pages) > 1
    assert all(len(page) <= 2 for page in pages)
    assert " ".join(line.removesuffix(" …") for page in pages for line in page) == long.text
    key = control(heading, "caution_press", QPushButton)
    for _ in pages[1:]:
        assert key.text() == "Read on"
        click(heading, "caution_press")
    assert key.text() == "I read it"
    click(heading, "caution_press")
    assert folded(heading) == "Flue too hot"


def test_what_is_read_first_ends_at_a_stop_and_shows_that_more_follows(
    stood_desk: Desk, heading: Heading, qtbot: QtBot
) -> None:
    text = "Paint smokes as a new stove cures. Open the windows, keep children and pets out, and cook nothing yet."
    warn(stood_desk, replace(HOT, text=text, decides=""))
    qtbot.waitUntil(heading.cautions.isVisible)
    ends = set()
    for wide in range(560, 1000, 40):
        heading.resize(wide, heading.height())
        first, *others = heading.cautions.lines
        if others:
            ends.add(first[-1].split()[-2:][0 if first[-1].endswith(" …") else 1])
            assert first[-1].endswith((". …", ", …", "."))
            assert " ".join(line.removesuffix(" …") for page in heading.cautions.lines for line in page) == text
    assert {"windows,", "out,"} <= ends


def test_a_sentence_that_only_begins_waits_for_the_next_lines(stood_desk: Desk, heading: Heading, qtbot: QtBot) -> None:
    text = "Wait until it brightens, then open the door slowly, a crack first, and stand aside. Only dry, good wood."
    warn(stood_desk, replace(HOT, text=text, decides=""))
    qtbot.waitUntil(heading.cautions.isVisible)
    cut = set()
    for wide in range(500, 900, 10):
        heading.resize(wide, heading.height())
        first, *others = heading.cautions.lines
        if others and "aside." in first[-1]:
            cut.add(first[-1].split()[-1])
    assert cut == {"aside."}


def test_the_word_on_the_key_breaks_no_line_otherwise(stood_desk: Desk, heading: Heading, qtbot: QtBot) -> None:
    long = replace(HOT, text=" ".join(f"word{number}" for number in range(52)) + " The manual decides.")
    warn(stood_desk, long)
    qtbot.waitUntil(heading.cautions.isVisible)
    for wide in range(1000, 1070, 3):
        heading.resize(wide, heading.height())
        QApplication.processEvents()
        read: list[str] = []
        for page in range(len(heading.cautions.lines)):
            read += [line.removesuffix(" …") for line in heading.cautions.lines[page]]
            click(heading, "caution_press")
            QApplication.processEvents()
        assert " ".join(read) == long.text, wide
        click(heading, "caution_folded")


def test_a_second_hot_pan_is_told_though_the_first_was_read(stood_desk: Desk, heading: Heading, qtbot: QtBot) -> None:
    first = replace(HOT, key="hot_fat", title="Fat may smoke", spot="top_front_left")
    warn(stood_desk, first)
    qtbot.waitUntil(heading.cautions.isVisible)
    click(heading, "caution_press")
    assert folded(heading) == "Fat may smoke"
    told_apart = replace(first, place="top front left")
    second = replace(first, spot="top_back_left", place="top back left", text="It too. The manual decides.")
    warn(stood_desk, told_apart, second)
    qtbot.waitUntil(heading.cautions.isVisible)
    assert words(heading, "caution") == "Fat may smoke: top back left. It too. The manual decides."
    click(heading, "caution_press")
    assert folded(heading) == "Fat may smoke: top front left, Fat may smoke: top back left"


def test_words_that_change_are_no_new_caution(stood_desk: Desk, heading: Heading, qtbot: QtBot) -> None:
    warn(stood_desk, HOT)
    qtbot.waitUntil(heading.cautions.isVisible)
    click(heading, "caution_press")
    warn(stood_desk, replace(HOT, text="12 minutes now. The manual decides."))
    assert folded(heading) == HOT.title
