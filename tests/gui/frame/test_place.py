"""The window comes back where it was, as large as it was, on the page that was open; never larger than the screen."""

from PySide6.QtWidgets import QMainWindow
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.frame.place import Place
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import LEAST, MainWindow
from cookstove_gui.logbook.logbook import Logbook


def opened(logbook: Logbook, qtbot: QtBot) -> tuple[QMainWindow, Place]:
    window = QMainWindow()
    qtbot.addWidget(window)
    place = Place(window, logbook)
    place.restore()
    return window, place


def test_size_place_and_page_are_kept(qtbot: QtBot) -> None:
    logbook = Logbook.in_memory()
    window, place = opened(logbook, qtbot)
    window.setGeometry(20, 30, 500, 400)
    place.keep("plan")
    again, other = opened(logbook, qtbot)
    assert (again.width(), again.height()) == (500, 400)
    assert (again.pos().x(), again.pos().y()) == (20, 30)
    assert other.page == "plan"
    logbook.close()


def test_a_framed_window_does_not_creep_from_start_to_start(qtbot: QtBot) -> None:
    logbook = Logbook.in_memory()
    found = []
    for _ in range(3):
        window, place = opened(logbook, qtbot)
        window.show()
        assert window.frameGeometry().topLeft() != window.geometry().topLeft()  # a frame stands round it
        place.keep("cook")
        found.append(logbook.setting("window"))
        window.close()
    assert len(set(found)) == 1
    logbook.close()


def test_a_window_kept_on_a_larger_screen_comes_back_whole(qtbot: QtBot) -> None:
    logbook = Logbook.in_memory()
    logbook.set_setting("window", "4000 3000 5000 4000")
    window, _ = opened(logbook, qtbot)
    room = window.screen().availableGeometry()
    assert room.contains(window.geometry())
    logbook.close()


def test_a_setting_that_makes_no_sense_is_left_alone(qtbot: QtBot) -> None:
    logbook = Logbook.in_memory()
    logbook.set_setting("window", "wide")
    logbook.set_setting("page", "nowhere")
    window, place = opened(logbook, qtbot)
    assert window.width() > 0
    assert place.page == "cook"
    logbook.close()


def test_the_window_opens_on_the_page_that_was_open(desk: Desk, look: Look, qtbot: QtBot) -> None:
    for page in ("logbook", "cook"):
        window = MainWindow(desk, look)
        qtbot.addWidget(window)
        with qtbot.waitSignal(window.painted, timeout=10_000):
            window.show()
        window.show_page(page)
        window.close()
        assert desk.setting("page") == page


def test_the_least_window_is_small_enough_for_a_small_laptop(window: MainWindow) -> None:
    window.resize(*LEAST)
    assert (window.width(), window.height()) == LEAST
