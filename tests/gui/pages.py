"""Shared by the tests of the pages: a desk whose clock stands still, made-up sessions, a page on the screen."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from PySide6.QtWidgets import QApplication, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.gui.background.job import close_jobs
from cookstove_gui.gui.background.past_study import PastStudy
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import style_sheet
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Entry, Kind
from tests.held_clock import HeldClock

NOW = datetime(2026, 3, 14, 15, 0, tzinfo=UTC)


def held_desk(now: datetime = NOW) -> Desk:
    """A desk over an empty logbook in memory, its clock standing still."""
    return Desk(Logbook.in_memory(), clock=HeldClock(now))


def light(desk: Desk, clock: HeldClock) -> None:
    """Forty minutes of a fire, with the oven and one spot of the cooktop read four times."""
    desk.do(Kind.LIT)
    desk.do(Kind.AIR, value="1")
    desk.do(Kind.WOOD, note="two splits")
    for oven, top in ((120, 230), (175, 330), (240, 410), (300, 450)):
        clock.pass_minutes(9)
        desk.read(str(oven), spot="oven_centre")
        desk.read(str(top), spot="top_front_left")


def keep_session(desk: Desk, title: str, began: datetime, warmer_left: float = 30.0) -> int:
    """A made-up firing of an hour and a half whose cooktop runs hotter on the left; returns its number."""
    session = desk.logbook.start_session(desk.stove.name, title)
    rows = [_row(began, Kind.LIT)]
    for place in range(7):
        at = began + timedelta(minutes=5 + 14 * place)
        heat = 120 + 40 * place
        rows.append(_row(at, Kind.READING, spot="oven_centre", value=str(80 + 45 * place), unit="F"))
        for column, more in (("left", warmer_left), ("middle", 0.0), ("right", -warmer_left)):
            for depth, deeper in (("front", 4.0), ("back", -4.0)):
                value = f"{heat + more + deeper:.0f}"
                rows.append(_row(at, Kind.READING, spot=f"top_{depth}_{column}", value=value, unit="F"))
        rows.append(_row(at + timedelta(minutes=2), Kind.WOOD, value="2", unit="lb"))
    numbered = [replace(row, number=place) for place, row in enumerate(rows, start=1)]
    desk.logbook.append(session.number, numbered)
    return session.number


def _row(at: datetime, kind: Kind, spot: str = "", value: str = "", unit: str = "") -> Entry:
    return Entry(number=0, at=at, offset_minutes=-300, kind=kind, spot=spot, value=value, unit=unit)


def the_look(app: QApplication) -> Look:
    """The one look of all tests, as designed and by day: each look there is would be told of every change."""
    looks = app.findChildren(Look)
    look = looks[0] if looks else Look(app, "day")
    for other in looks[1:]:
        other.deleteLater()  # of a whole program
    look.set_still(False)
    look.set_mode("day")
    look.set_text_size(1.0)
    look.fit(1280, 750)
    if app.styleSheet() != style_sheet(look.theme):
        look._dress()
    return look


@contextmanager
def undressed(look: Look) -> Iterator[None]:
    """What is built inside is dressed once at the end; Qt would dress all below again for each parent it gets."""
    look._app.setStyleSheet("")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(look, "_dress", lambda: None)
        yield
    look._dress()


def shown(
    qtbot: object, desk: Desk, make: Callable[[DeskLink, Look], QWidget], size: tuple[int, int] = (1024, 640)
) -> tuple[QWidget, DeskLink]:
    """A page on the screen, with the link it listens to."""
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    look = the_look(app)
    link = DeskLink(desk)
    with undressed(look):
        page = make(link, look)
    # The link must outlive the page, and the page's threads end with it.
    link.setParent(page)
    qtbot.addWidget(page, before_close_func=lambda _page: _let_go(page, link))  # type: ignore[attr-defined]
    page.resize(*size)
    page.show()
    return page, link


def _let_go(page: QWidget, link: DeskLink) -> None:
    """End all threads, as the window does when it closes."""
    link.close()
    PastStudy.of(link).close()
    close_jobs(page)
