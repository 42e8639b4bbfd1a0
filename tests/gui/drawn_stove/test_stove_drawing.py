"""The drawn stove shows a number on every spot, its age and doubt, the spot lit up and the one worth reading."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from cookstove_gui.advice import advise
from cookstove_gui.desk import Changed, Desk, Memory, work_out
from cookstove_gui.forecast.answers import DoubtedReading
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove.spot_patch import SpotPatch, hatch_spacing
from cookstove_gui.gui.drawn_stove.stove_drawing import StoveDrawing
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import Firebox, stove_with_default_spots
from cookstove_gui.units import degrees
from tests.held_clock import HeldClock


@pytest.fixture
def drawing(link: DeskLink, look: Look, qtbot: QtBot) -> StoveDrawing:
    made = StoveDrawing(link, look)
    qtbot.addWidget(made)
    made.resize(448, 300)
    made.bring_colours()
    made.show()
    return made


def test_every_spot_of_the_stove_is_drawn(drawing: StoveDrawing, desk: Desk) -> None:
    assert all(drawing.patch(spot.name).isVisible() for spot in desk.stove.spots)


def test_what_is_not_known_has_no_number(drawing: StoveDrawing) -> None:
    assert drawing.patch("top_front_left").number_text() == "–"


def test_a_number_just_typed_is_shown_before_anything_is_worked_out(
    drawing: StoveDrawing, desk: Desk, qtbot: QtBot
) -> None:
    desk.read("385", spot="oven_centre")
    qtbot.waitUntil(lambda: drawing.patch("oven_centre").number_text() == "385")


def test_a_number_just_read_is_shown_as_it_was_read(stood_desk: Desk, drawing: StoveDrawing) -> None:
    assert drawing.patch("top_front_left").number_text() == "450"


def test_later_the_heat_is_that_of_the_zone(
    stood_desk: Desk, drawing: StoveDrawing, clock: HeldClock, qtbot: QtBot
) -> None:
    assert stood_desk.standing is not None
    clock.pass_minutes(4)
    stood_desk.announce(Changed(settings=True))
    expected = f"≈{5 * round(degrees(stood_desk.standing.zones['top_front_left'].p50, 'F') / 5):.0f}"
    qtbot.waitUntil(lambda: drawing.patch("top_front_left").number_text() == expected)


def test_an_estimate_says_that_it_is_one(stood_desk: Desk, drawing: StoveDrawing) -> None:
    assert drawing.patch("top_back_right").number_text().startswith("≈")
    assert "not read yet" in drawing.patch("top_back_right").accessibleName()


def test_an_old_reading_becomes_an_estimate(
    stood_desk: Desk, drawing: StoveDrawing, clock: HeldClock, qtbot: QtBot
) -> None:
    clock.pass_minutes(30)
    stood_desk.announce(Changed(settings=True))
    qtbot.waitUntil(lambda: drawing.patch("top_front_left").number_text().startswith("≈"))


def test_a_click_chooses_a_spot(drawing: StoveDrawing, qtbot: QtBot) -> None:
    with qtbot.waitSignal(drawing.spot_chosen) as chosen:
        qtbot.mouseClick(drawing.patch("flue"), Qt.MouseButton.LeftButton)
    assert chosen.args == ["flue"]


@pytest.mark.parametrize(
    ("start", "key", "expected"),
    [
        ("top_front_left", Qt.Key.Key_Right, "top_front_middle"),
        ("top_front_left", Qt.Key.Key_Up, "top_back_left"),
        ("top_front_middle", Qt.Key.Key_Down, "oven_rear"),
        ("top_back_left", Qt.Key.Key_Left, "side_left"),
    ],
)
def test_arrow_keys_go_to_the_neighbour(
    drawing: StoveDrawing, desk: Desk, qtbot: QtBot, start: str, key: Qt.Key, expected: str
) -> None:
    desk.light(desk.walk.at(start))
    with qtbot.waitSignal(drawing.spot_chosen) as chosen:
        qtbot.keyClick(drawing, key)
    assert chosen.args == [expected]


def test_the_lit_spot_is_marked_and_said(drawing: StoveDrawing, desk: Desk, qtbot: QtBot) -> None:
    desk.light(desk.walk.at("flue"))
    qtbot.waitUntil(lambda: "the next number goes here" in drawing.patch("flue").accessibleName())
    assert "the next number" not in drawing.patch("oven_centre").accessibleName()


def marked_as_worth_reading(drawing: StoveDrawing) -> list[str]:
    names = [spot.name for spot in drawing._desk.stove.spots]
    return [name for name in names if "worth reading" in drawing.patch(name).accessibleName()]


def test_the_reading_that_tells_most_is_marked(stood_desk: Desk, drawing: StoveDrawing, clock: HeldClock) -> None:
    clock.pass_minutes(8)
    assert stood_desk.show(work_out(stood_desk.inputs(), Memory()))
    assert stood_desk.standing is not None
    wanted = advise(stood_desk.standing).reading
    assert wanted is not None
    QApplication.processEvents()
    assert marked_as_worth_reading(drawing) == [wanted.spot]


def test_nothing_is_worth_reading_while_the_walk_goes_on_or_when_the_session_is_over(
    stood_desk: Desk, drawing: StoveDrawing, clock: HeldClock
) -> None:
    assert marked_as_worth_reading(drawing) == []
    clock.pass_minutes(7 * 60)
    stood_desk.announce(Changed(standing=True))
    QApplication.processEvents()
    assert marked_as_worth_reading(drawing) == []


def test_what_is_in_doubt_is_marked_on_its_spot(stood_desk: Desk, drawing: StoveDrawing, qtbot: QtBot) -> None:
    patch = drawing.patch("top_front_left")
    plain = patch.grab().toImage()
    row = next(row for row in stood_desk.entries if row.spot == "top_front_left")
    assert stood_desk.standing is not None
    slip = DoubtedReading(number=row.number, typed=500.0, expected_p10=380.0, expected_p50=400.0, expected_p90=420.0)
    assert stood_desk.show(replace(stood_desk.standing, doubted=(slip,)))
    stood_desk.announce(Changed(standing=True))
    qtbot.waitUntil(lambda: "a reading here is in doubt" in patch.accessibleName())
    assert "doubt" not in drawing.patch("oven_centre").accessibleName()
    assert patch.grab().toImage() != plain


def test_another_stove_is_drawn_when_it_is_chosen(drawing: StoveDrawing, desk: Desk, qtbot: QtBot) -> None:
    left = drawing.patch("top_front_left").x()
    desk.save_stove(stove_with_default_spots("Summer kitchen", Firebox.RIGHT))
    qtbot.waitUntil(lambda: drawing.patch("top_front_left").x() < left)


def test_units_switch_every_number(stood_desk: Desk, drawing: StoveDrawing, qtbot: QtBot) -> None:
    stood_desk.set_unit("C")
    qtbot.waitUntil(lambda: drawing.patch("oven_centre").number_text() == "149")  # 300 °F


def test_it_paints_in_every_state(stood_desk: Desk, drawing: StoveDrawing, look: Look, qtbot: QtBot) -> None:
    stood_desk.do(Kind.OVEN_DOOR, value="open")
    QApplication.processEvents()
    drawing.setFocus()
    look.set_mode("night")
    assert not drawing.grab().isNull()
    look.set_mode("day")


@given(st.floats(0, 400), st.floats(0, 400))
def test_more_doubt_is_never_hatched_more_thinly(one: float, other: float) -> None:
    sure, unsure = sorted((one, other))
    thin, dense = hatch_spacing(sure), hatch_spacing(unsure)
    assert thin is None or (dense is not None and dense <= thin)


@pytest.mark.parametrize(("width", "height"), [(448, 300), (448, 130), (640, 500)])
def test_the_number_is_written_however_small_the_patch(
    stood_desk: Desk, drawing: StoveDrawing, monkeypatch: pytest.MonkeyPatch, width: int, height: int
) -> None:
    written: list[str] = []
    plate = SpotPatch._plate
    monkeypatch.setattr(
        SpotPatch,
        "_plate",
        staticmethod(lambda painter, box, text, *rest: (written.append(text), plate(painter, box, text, *rest))[1]),
    )
    drawing.resize(width, height)
    drawing.grab()
    numbers = [drawing.patch(spot.name).number_text() for spot in stood_desk.stove.spots]
    assert [number for number in numbers if number not in written] == []
