"""Nothing is cut, covered, out of reach or unnamed: on every page, in every state, at every size and size of text."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import timedelta
from itertools import product

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.desk import Desk
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame.heading import Heading
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.sections import Sections
from cookstove_gui.gui.widgets.steps import scale
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.phrases.ladder import ladder
from cookstove_gui.stove.entries import Kind
from tests.gui.clipping import faults, settle, unlit
from tests.gui.hands import control, press
from tests.gui.pages import keep_session, light, undressed
from tests.held_clock import HeldClock
from tests.once import stood

SIZES = ((1280, 750), (1024, 700), (1366, 718), (1920, 1000), (1000, 640), (2560, 1440))
TEXT = (1.0, 1.5, 0.8)
LEAST_STEP = 0.92  # smaller only where the cook wants smaller text, and with it smaller keys
PAGES = ("cook", "plan", "my_stove", "logbook", "large", "keys")

State = Callable[[Desk, HeldClock], None]


def nothing(_desk: Desk, _clock: HeldClock) -> None:
    """The first start."""


def fired(desk: Desk, clock: HeldClock) -> None:
    """A fire and four rounds of readings, and a session before it."""
    keep_session(desk, "Sunday bread", clock() - timedelta(days=4))
    light(desk, clock)


def questioned(desk: Desk, clock: HeldClock) -> None:
    """A number that looks like a slip."""
    fired(desk, clock)
    clock.pass_minutes(2)
    desk.read("38", spot="oven_centre")


def new_stove(desk: Desk, clock: HeldClock) -> None:
    """First fires."""
    desk.save_stove(replace(desk.stove, is_new=True))
    desk.do(Kind.LIT)
    clock.pass_minutes(12)
    desk.read("210", spot="top_back_left")


def lit(desk: Desk, clock: HeldClock) -> None:
    """A fire, and nothing read."""
    desk.do(Kind.LIT)
    clock.pass_minutes(3)


def out(desk: Desk, clock: HeldClock) -> None:
    """The fire is out, and a reading is long due, so that an alarm rings."""
    fired(desk, clock)
    desk.do(Kind.OUT)
    clock.pass_minutes(45)


def over(desk: Desk, clock: HeldClock) -> None:
    """An old session on the table."""
    fired(desk, clock)
    assert desk.session is not None
    number = desk.session.number
    clock.pass_minutes(60 * 24)
    desk.open_session(number)


STATES: tuple[State, ...] = (nothing, lit, fired, questioned, new_stove, out, over)
OF_COOK = (lit, questioned, out)  # states that the other pages show no otherwise
LONG = Caution(
    key="long",
    title="Wall or floor too hot",
    text=" ".join(["The wall behind the stove reads far above the room."] * 6) + " The manual decides.",
    urgent=True,
    decides="The manual decides.",
)


# In shares, each of half a minute; a key opens what takes the place of the fire keys.
EVERYTHING = [(state, page) for state, page in product(STATES, PAGES) if page == "cook" or state not in OF_COOK]
CHOICES = (Qt.Key.Key_F6, Qt.Key.Key_F7, Qt.Key.Key_F10, Qt.Key.Key_F11)


@pytest.fixture
def shown(
    desk: Desk, clock: HeldClock, look: Look, qtbot: QtBot, worked_out_once: None
) -> Iterator[Callable[[State], MainWindow]]:
    """The window in a state, its standing worked out."""

    def make(state: State) -> MainWindow:
        state(desk, clock)
        with undressed(look):
            window = MainWindow(desk, look)
        qtbot.addWidget(window)
        if desk.entries:
            assert desk.show(stood(desk.inputs()))
        with qtbot.waitSignal(window.painted, timeout=20_000):
            window.show()
        qtbot.waitUntil(lambda: not window.working.is_busy, timeout=20_000)
        return window

    yield make
    look.set_text_size(1.0)
    look.set_mode("day")


def looked_at(window: MainWindow, page: str) -> list[str]:
    """Faults of one page, part by part."""
    window.show_page(page)
    settle()
    sections = window.centralWidget().findChild(Sections) if page in ("plan", "my_stove", "logbook") else None
    current = window.findChildren(Sections)
    found: list[str] = []
    for part in [one for one in current if one.isVisible()] if sections is not None else []:
        for key in part.keys:
            part.choose(key)
            settle()
            found += [f"{page}, {key}: {fault}" for fault in faults(window)]
    if not found and (page == "cook" or sections is None):
        found = [f"{page}: {fault}" for fault in faults(window, targets=page == "cook" and scale() >= LEAST_STEP)]
    return found


def assert_nothing(found: list[str]) -> None:
    assert not found, "\n" + "\n".join(found)


def test_cook_as_it_is_used(shown: Callable[[State], MainWindow]) -> None:
    window, found = shown(fired), []
    for size in (*SIZES[:2], SIZES[-2]):
        window.resize(*size)
        assert window.size().toTuple() == size
        found += [f"{size} {fault}" for fault in looked_at(window, "cook")]
    assert_nothing(found)


def test_a_caution_that_is_read_and_one_that_is_not(shown: Callable[[State], MainWindow]) -> None:
    window = shown(fired)
    window.resize(1024, 700)
    standing = window.desk.standing
    assert standing is not None
    assert window.desk.show(replace(standing, cautions=(LONG,), serial=window.desk.inputs().serial))
    settle()
    heading = control(window, "next_line", Heading)
    assert heading.cautions.isVisible()
    while heading.cautions.isVisible():
        assert_nothing(looked_at(window, "cook"))
        heading.cautions.turn()
        settle()
    assert_nothing(looked_at(window, "cook"))


def test_the_other_pages(shown: Callable[[State], MainWindow]) -> None:
    window = shown(fired)
    window.resize(1024, 700)
    assert_nothing([fault for page in PAGES[1:] for fault in looked_at(window, page)])


@pytest.mark.slow
@pytest.mark.parametrize(("state", "page"), EVERYTHING, ids=lambda one: getattr(one, "__name__", str(one)))
def test_everything(shown: Callable[[State], MainWindow], look: Look, state: State, page: str) -> None:
    window = shown(state)
    found = []
    for size, text in product(SIZES, TEXT):
        look.set_text_size(text)
        window.resize(*size)
        settle()
        found += [f"{size} {text:.0%} {fault}" for fault in looked_at(window, page)]
    assert_nothing(found)


@pytest.mark.slow
@pytest.mark.parametrize("key", CHOICES, ids=lambda key: key.name)
def test_every_choice_of_the_fire_keys(shown: Callable[[State], MainWindow], look: Look, key: Qt.Key) -> None:
    window = shown(fired)
    window.activateWindow()
    press(window, key)
    found = []
    for size, text in product(SIZES, TEXT):
        look.set_text_size(text)
        window.resize(*size)
        settle()
        found += [f"{size} {text:.0%} {fault}" for fault in looked_at(window, "cook")]
    assert_nothing(found)


@pytest.mark.parametrize("size", [(1000, 640), (1280, 750)], ids=str)  # the narrowest of their steps
def test_every_heading_fits_every_window_in_one_line(
    desk: Desk, look: Look, qtbot: QtBot, size: tuple[int, int]
) -> None:
    from tests.phrases.test_ladder import ADVICES, EDGE, bands, standing_for

    link = DeskLink(desk)
    heading = Heading(link, look)
    qtbot.addWidget(heading)
    said = control(heading, "headline", OneLine)
    longest = max(bands(), key=lambda band: len(band.name))
    look.fit(*size)
    for text in TEXT[:2]:
        look.set_text_size(text)
        heading.resize(*size)
        heading.show()
        settle()
        for advice in ADVICES:
            said.show_rungs(ladder(advice, standing_for(advice, longest), EDGE))
            assert not said.is_squeezed, (text, said.text())
            assert said.shown_width <= said.width(), (text, said.text())
    look.set_text_size(1.0)
    look.set_scale(1.0)
    link.close()


@pytest.mark.slow
def test_what_has_the_keyboard_is_seen_on_cook(shown: Callable[[State], MainWindow], qtbot: QtBot) -> None:
    window = shown(fired)
    with qtbot.waitActive(window):
        window.activateWindow()
    assert_nothing(list(unlit(window)))


@pytest.mark.slow
@pytest.mark.parametrize("page", PAGES[1:4])
def test_what_has_the_keyboard_is_seen_on_other_pages(
    shown: Callable[[State], MainWindow], qtbot: QtBot, page: str
) -> None:
    window = shown(fired)
    with qtbot.waitActive(window):
        window.activateWindow()
    window.show_page(page)
    settle()
    found = []
    for part in [one for one in window.findChildren(Sections) if one.isVisible()]:
        for key in part.keys:
            part.choose(key)
            settle()
            found += [f"{page}, {key}: {fault}" for fault in unlit(window)]
    assert_nothing(found)
