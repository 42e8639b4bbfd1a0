"""Pictures of every page in every state, four sizes to a sheet: `python -m tests.contact_sheets FOLDER [STATE ...]`.

Run by hand, into a folder outside the repository, when the look of the window changes; then look at each sheet. Each
state, page and part has one sheet by day and by night, at 100 and at 150 % text.
"""

import os
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import product
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton

from cookstove_gui.desk import Desk
from cookstove_gui.desk.first_start import begin
from cookstove_gui.desk.practice import Practice
from cookstove_gui.desk.practice_session import practice_desk
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.logbook.sessions import SessionsPart
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.sections import Sections
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.resource_files import folder
from cookstove_gui.stove.entries import Kind
from tests.gui.pages import held_desk, light
from tests.held_clock import HeldClock
from tests.pictures import SAMPLE, desk_at, plan_supper, rest, settle

SIZES = ((1280, 750), (1024, 700), (1366, 718), (1920, 1000))
COLOURS, TEXT = ("day", "night"), (1.0, 1.5)
COOK = ("cook",)
ALL = ("cook", "plan", "my_stove", "logbook", "large", "keys")
_CELL = (960, 562)  # px of a picture on its sheet
_QUIET_MS = 30


@dataclass(frozen=True, slots=True)
class State:
    """What the cook has done so far, the pages worth a look then, and what is pressed once the window is there."""

    make: Callable[[], Desk]
    pages: tuple[str, ...] = COOK
    press: Callable[[MainWindow], object] = lambda _window: None


def _clock(desk: Desk) -> HeldClock:
    assert isinstance(desk.clock, HeldClock)
    return desk.clock


def _lit() -> Desk:
    desk = held_desk()
    begin(desk)
    desk.do(Kind.LIT)
    desk.do(Kind.AIR, value="1")
    _clock(desk).pass_minutes(4)
    return desk


def _learning() -> Desk:
    desk = held_desk()
    begin(desk)
    light(desk, _clock(desk))
    return desk


def _new_stove() -> Desk:
    desk = held_desk()
    desk.save_stove(replace(desk.stove, is_new=True))
    desk.do(Kind.LIT)
    for minutes, heat in ((12, "140"), (9, "210"), (8, "255")):
        _clock(desk).pass_minutes(minutes)
        desk.read(heat, spot="top_back_left")
    return desk


def _sample(minutes: float = 88.0) -> Desk:
    return desk_at(minutes)


def _supper() -> Desk:
    desk = _sample()
    plan_supper(desk)
    return desk


def _questioned() -> Desk:
    desk = _sample()
    _clock(desk).pass_minutes(1)
    desk.read("38", spot="oven_centre")
    return desk


def _cautioned() -> Desk:
    """A flue that is read too cool twice."""
    desk = _sample()
    _clock(desk).pass_minutes(6)
    desk.read("165", spot="flue")
    return desk


def _out() -> Desk:
    desk = _sample()
    _clock(desk).pass_minutes(25)
    desk.do(Kind.OUT)
    _clock(desk).pass_minutes(5)
    return desk


def _over() -> Desk:
    desk = _sample()
    assert desk.session is not None
    number = desk.session.number
    _clock(desk).pass_minutes(60 * 30)
    desk.open_session(number)
    return desk


def _overdue() -> Desk:
    desk = _sample()
    _clock(desk).pass_minutes(42)
    return desk


def _pan(window: MainWindow) -> None:
    _read_cautions(window)
    at = window.focusWidget()
    assert at is not None
    QTest.keyClick(at, Qt.Key.Key_F10)


def _read_cautions(window: MainWindow) -> None:
    press = window.findChild(QPushButton, "caution_press")
    while press is not None and press.isVisible():
        press.click()


def _open_session(window: MainWindow) -> None:
    window.show_page("logbook")
    sessions = window.findChild(SessionsPart)
    assert sessions is not None
    sessions.show_session(window.desk.sessions[1].number)


STATES: dict[str, State] = {
    "first_start": State(held_desk, ALL[:4]),
    "lit": State(_lit),
    "learning": State(_learning, ("cook", "my_stove", "logbook")),
    "first_fires": State(_new_stove, ("cook", "large")),
    "sample": State(_sample, ALL, _read_cautions),
    "caution": State(_cautioned),
    "supper": State(_supper, ("plan",), _read_cautions),
    "question": State(_questioned, COOK, _read_cautions),
    "out": State(_out, ("cook", "large"), _read_cautions),
    "pan": State(_sample, COOK, _pan),
    "alarm": State(_overdue, ("cook", "plan", "large")),
    "over": State(_over, ("cook", "plan")),
    "opened": State(_sample, ("logbook",), _open_session),
    "practice": State(held_desk),
}


def shown_parts(window: MainWindow, pages: Sequence[str]) -> Iterator[str]:
    """Bring each part of each page to the front in turn; what it is called."""
    for page in pages:
        window.show_page(page)
        shown = [one for one in window.centralWidget().findChildren(Sections) if one.isVisible()]
        if not shown:
            yield page
            continue
        for key in shown[0].keys:
            shown[0].choose(key)
            yield f"{page}_{key}"


def sheets(window: MainWindow, state: State, *, opened: bool) -> dict[str, QPixmap]:
    """Each part of each page at all sizes, two by two; in this order since each new size dresses all that is built."""
    made: dict[str, QPixmap] = {}
    for place, size in enumerate(SIZES):
        window.resize(*size)
        for part in state.pages if opened else shown_parts(window, state.pages):
            painted(window)
            if part not in made:
                made[part] = QPixmap(2 * _CELL[0], (len(SIZES) + 1) // 2 * _CELL[1])
                made[part].fill(Qt.GlobalColor.gray)
            shown = window.grab().scaled(
                _CELL[0] - 8,
                _CELL[1] - 8,
                Qt.AspectRatioMode.KeepAspectRatio,
                Qt.TransformationMode.SmoothTransformation,
            )
            painter = QPainter(made[part])
            painter.drawPixmap(place % 2 * _CELL[0] + 4, place // 2 * _CELL[1] + 4, shown)
            painter.end()
    return made


def painted(window: MainWindow) -> None:
    """Until what is at the front is worked out and laid out."""
    rest(_QUIET_MS)
    while any(job.is_busy for job in window.findChildren(Job)):
        rest(_QUIET_MS)
    rest(_QUIET_MS)


def window_in(state: State, look: Look, name: str) -> MainWindow:
    """The window as it is in a state, everything worked out."""
    practice: Practice | None = None
    if name == "practice":
        seconds = [0.0]
        desk, practice = practice_desk(folder("sample_sessions") / SAMPLE, 60.0, lambda: seconds[0])
        seconds[0] = 60.0 * 95 / practice.clock.pace
        desk.play(practice.due())
    else:
        desk = state.make()
    window = MainWindow(desk, look, practice)
    window.resize(*SIZES[0])
    window.show()
    settle(window)
    state.press(window)
    return window


def main(out: Path, names: list[str]) -> None:
    """Make the sheets of these states, or of all."""
    out.mkdir(parents=True, exist_ok=True)
    app = QApplication([])
    look = Look(app, "day")
    look.set_still(True)
    for name in names or list(STATES):
        state = STATES[name]
        window = window_in(state, look, name)
        for _ in () if name == "opened" else shown_parts(window, state.pages):
            settle(window)  # builds it, and works out what it asks
        for colours, text in product(COLOURS, TEXT):
            look.set_mode(colours)
            look.set_text_size(text)
            for part, picture in sheets(window, state, opened=name == "opened").items():
                picture.save(str(out / f"{name}_{part}_{colours}_{round(100 * text)}.png"))
        look.set_text_size(1.0)
        window.close()
        window.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
        window.desk.logbook.close()
        look.set_mode("day")


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2:])
