"""Makes the pictures in `resources/screenshots` from an invented session: `python -m tests.pictures`.

Run it when the look of the window changes, and look at what it made.
"""

import os
import sys
from dataclasses import dataclass, replace
from datetime import timedelta

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop, QTimer
from PySide6.QtWidgets import QApplication, QPushButton

from cookstove_gui.desk import Desk
from cookstove_gui.desk.studying import study_reader
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.logbook.folder import read_folder, stove_for, title_of
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.resource_files import folder
from cookstove_gui.stove.entries import fold
from cookstove_gui.study import study
from tests.held_clock import HeldClock

SAMPLE = "brown_cast_stove"
BAND = "bread"
MEAL = ("bread", "beef_and_barley", "apple_pie", "greens")


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture: its name, the window's size, the colours and the page."""

    name: str
    width: int
    height: int
    colours: str
    page: str


PICTURES = (
    Picture("cook_day_1280", 1280, 750, "day", "cook"),
    Picture("cook_night_1280", 1280, 750, "night", "cook"),
    Picture("cook_day_1024", 1024, 700, "day", "cook"),
    Picture("large_night_1280", 1280, 750, "night", "large"),
    Picture("my_stove_day_1280", 1280, 750, "day", "my_stove"),
    Picture("logbook_day_1280", 1280, 750, "day", "logbook"),
    Picture("plan_day_1280", 1280, 750, "day", "plan"),
)


def desk_at(minutes: float) -> Desk:
    """A desk some minutes into the sample's last session, its earlier ones studied."""
    past = read_folder(folder("sample_sessions") / SAMPLE)
    *earlier, last = past.sessions
    stove = stove_for(folder("sample_sessions") / SAMPLE, past.sessions, past.stove)
    logbook = Logbook.in_memory()
    logbook.save_stove(stove)
    for session in earlier:
        logbook.add_session(stove.name, title_of(session.title), session.entries)
    now = min(row.at for row in last.entries) + timedelta(minutes=minutes)
    desk = Desk(logbook, HeldClock(now))
    found = study(study_reader(desk)())
    assert found is not None
    desk.show_study(found)
    seen = fold(last.entries, now)
    desk.start_session("Bread day")
    desk.play(tuple(replace(row, number=number) for number, row in enumerate(seen, start=1)))
    desk.choose_band(BAND)
    return desk


def plan_supper(desk: Desk) -> None:
    """A meal of four dishes for the late afternoon."""
    desk.supper.set_table(desk.clock() + timedelta(hours=5, minutes=17))
    for dish in desk.supper.dishes:
        if dish.key in MEAL:
            desk.supper.add(dish)


def rest(milliseconds: int) -> None:
    """Let the window and its threads work; QTest.qWait would keep the threads from it."""
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def settle(window: MainWindow) -> None:
    """Until everything is worked out and painted, however busy the machine is."""
    rest(250)
    while window.desk.entries and window.desk.standing is None:
        rest(50)
    while any(job.is_busy for job in window.findChildren(Job)):
        rest(50)
    rest(400)


def main(minutes: float) -> None:
    """Make them all."""
    app = QApplication([])
    look = Look(app, "day")
    desk = desk_at(minutes)
    for picture in PICTURES:
        look.set_mode(picture.colours)
        if picture.page == "plan":
            plan_supper(desk)
        window = MainWindow(desk, look)
        window.resize(picture.width, picture.height)
        window.show()
        settle(window)
        if picture.page == "large":
            window.toggle_page("large")
        else:
            window.show_page(picture.page)
        settle(window)
        for _ in window.ringer.ringing:
            window.ringer.done()
        press = window.findChild(QPushButton, "caution_press")
        while press is not None and press.isVisible() and press.text().startswith(("Read", "I read")):
            press.click()
        settle(window)
        window.grab().save(str(folder("resources") / "screenshots" / f"{picture.name}.png"))
        window.close()
        window.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    desk.logbook.close()


if __name__ == "__main__":
    main(float(sys.argv[1]) if len(sys.argv) > 1 else 88.0)
