"""A caution comes to the screen at its moment: the log is typed, the standing worked out, the strip read."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.safety.caution import loading_order
from cookstove_gui.desk import Desk
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame.caution_strip import CautionStrip
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.stove.entries import Kind
from tests.gui.hands import click, control, press, words
from tests.held_clock import HeldClock
from tests.once import stood


@pytest.fixture
def strip(link: DeskLink, look: Look, qtbot: QtBot) -> CautionStrip:
    made = CautionStrip(link, look)
    qtbot.addWidget(made)
    made.show()
    return made


def told(desk: Desk, strip: CautionStrip) -> list[str]:
    """Every caution that the strip shows now in full, one after the other as they are read away."""
    assert desk.show(stood(desk.inputs()))
    QApplication.processEvents()  # the link tells its listeners together, in the next turn of the loop
    found = []
    while strip.isVisible():
        found.append(words(strip, "caution"))
        click(strip, "caution_press")
    return list(dict.fromkeys(found))


def coals(desk: Desk, clock: HeldClock) -> None:
    clock.pass_minutes(70)
    desk.do(Kind.AIR, value="0.25")


def wall(desk: Desk, clock: HeldClock) -> None:
    desk.read("100", spot="room")
    desk.read("208", spot="wall_left")


def fat(desk: Desk, clock: HeldClock) -> None:
    desk.do(Kind.PAN, value="on", spot="top_front_left")
    desk.do(Kind.NOTE, note="bacon")
    clock.pass_minutes(12)


def beans(desk: Desk, clock: HeldClock) -> None:
    desk.do(Kind.NOTE, note="kidney beans for supper")


def canning(desk: Desk, clock: HeldClock) -> None:
    desk.do(Kind.NOTE, note="canning seven jars of corn")


def gone(desk: Desk, clock: HeldClock) -> None:
    clock.pass_minutes(61)


def paraffin(desk: Desk, clock: HeldClock) -> None:
    desk.do(Kind.NOTE, note="a little kerosene to bring it on")


def smoke(desk: Desk, clock: HeldClock) -> None:
    desk.do(Kind.NOTE, note="smoke came back into the room")


@pytest.mark.parametrize(
    ("happens", "title"),
    [
        (coals, "Carbon monoxide"),
        (smoke, "Carbon monoxide"),
        (wall, "Wall or floor too hot"),
        (fat, "Fat may smoke"),
        (beans, "Beans"),
        (canning, "Canning"),
        (gone, "Stay with the fire"),
        (paraffin, "Not in this stove"),
    ],
    ids=lambda one: getattr(one, "__name__", ""),
)
def test_it_is_told_when_it_happens_and_not_before(
    fired_desk: Desk, clock: HeldClock, strip: CautionStrip, happens: Callable[[Desk, HeldClock], None], title: str
) -> None:
    start = f"{title}."
    assert not any(text.startswith(start) for text in told(fired_desk, strip))
    happens(fired_desk, clock)
    assert any(text.startswith(start) for text in told(fired_desk, strip))


def test_lighting_is_told_of_before_the_fire(desk: Desk, strip: CautionStrip) -> None:
    shown = " ".join(told(desk, strip))
    assert "flammable liquid" in shown
    assert "A cold flue draws badly" in shown


def test_the_wood_chooser_says_the_loading_order_before_anything_is_logged(
    window: MainWindow, desk: Desk, qtbot: QtBot
) -> None:
    click(window, "fire_wood")
    first = control(window, "chooser_first", QLabel)
    assert first.isVisible()
    assert first.text() == loading_order()
    assert not desk.entries
    press(window, Qt.Key.Key_Escape)
    click(window, "fire_air")
    assert not first.isVisible()


def test_a_second_wall_is_told_after_the_first_was_read_and_the_first_is_not_told_again(
    fired_desk: Desk, clock: HeldClock, strip: CautionStrip
) -> None:
    wall(fired_desk, clock)
    (first,) = (text for text in told(fired_desk, strip) if text.startswith("Wall or floor too hot"))
    assert "Wall left" in first
    fired_desk.read("210", spot="floor_front")
    (second,) = (text for text in told(fired_desk, strip) if text.startswith("Wall or floor too hot"))
    assert second.startswith("Wall or floor too hot: floor front.")
    assert "Wall or floor too hot: floor front" in strip.folded or "more" in strip.folded


def test_a_second_hot_pan_is_told_after_the_first_was_read(
    fired_desk: Desk, clock: HeldClock, strip: CautionStrip
) -> None:
    fat(fired_desk, clock)
    assert sum(text.startswith("Fat may smoke") for text in told(fired_desk, strip)) == 1
    fired_desk.do(Kind.PAN, value="on", spot="top_back_left")
    fired_desk.do(Kind.NOTE, note="lard", spot="top_back_left")
    clock.pass_minutes(12)
    again = [text for text in told(fired_desk, strip) if text.startswith("Fat may smoke")]
    assert len(again) == 1
    assert again[0].startswith("Fat may smoke: top back left.")
