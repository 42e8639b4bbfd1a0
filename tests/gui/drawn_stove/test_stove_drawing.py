"""The drawn stove shows every spot's number, age and doubt, the spot lit and the one worth reading, how it is set."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QStyle
from pytestqt.qtbot import QtBot

from cookstove_gui.advice import advise
from cookstove_gui.desk import Changed, Desk
from cookstove_gui.desk.cook.task_places import TaskPlace
from cookstove_gui.forecast.answers import DoubtedReading
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove import stove_drawing
from cookstove_gui.gui.drawn_stove.stove_drawing import StoveDrawing
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.stove.drawn.contrast import relative_luminance
from cookstove_gui.stove.drawn.heat_colours import heat_colour
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import Firebox, stove_with_default_spots
from cookstove_gui.units import degrees, kelvin
from tests.held_clock import HeldClock
from tests.once import stood


@pytest.fixture
def drawing(link: DeskLink, look: Look, qtbot: QtBot) -> StoveDrawing:
    made = StoveDrawing(link, look)
    qtbot.addWidget(made)
    made.resize(456, 440)
    made.show()
    return made


def middle(drawing: StoveDrawing, name: str) -> QPoint:
    x, y = drawing.drawn.places[name].words.centre
    return QPoint(round(x), round(y))


def fill_at(drawing: StoveDrawing, name: str) -> str:
    """The colour beside the words of a spot, as painted."""
    box = drawing.drawn.places[name].words
    return QColor(drawing.grab().toImage().pixel(round(box.x + 3), round(box.centre[1]))).name().upper()


def number(drawing: StoveDrawing, name: str) -> str:
    return drawing.patch(name).face.number


def test_every_spot_of_the_stove_is_drawn(drawing: StoveDrawing, desk: Desk) -> None:
    assert all(drawing.patch(spot.name).isVisible() for spot in desk.stove.spots)


def test_what_is_not_known_is_plain_iron(drawing: StoveDrawing) -> None:
    face = drawing.patch("top_front_left").face
    assert (face.number, face.fill, face.captions) == ("–", "", ())


def test_a_number_just_typed_is_shown_before_anything_is_worked_out(
    drawing: StoveDrawing, desk: Desk, qtbot: QtBot
) -> None:
    desk.read("385", spot="oven_centre")
    qtbot.waitUntil(lambda: number(drawing, "oven_centre") == "385")


def test_a_number_just_read_is_sure_and_has_no_whisker(stood_desk: Desk, drawing: StoveDrawing) -> None:
    face = drawing.patch("top_front_left").face
    assert (face.number, face.is_sure, face.doubt) == ("450", True, 0.0)


def test_a_belief_has_a_whisker_as_long_as_its_doubt(
    stood_desk: Desk, drawing: StoveDrawing, clock: HeldClock, qtbot: QtBot
) -> None:
    assert stood_desk.standing is not None
    clock.pass_minutes(6)
    stood_desk.announce(Changed(settings=True))
    zone = stood_desk.standing.zones["top_front_left"]
    qtbot.waitUntil(lambda: not drawing.patch("top_front_left").face.is_sure)
    face = drawing.patch("top_front_left").face
    half = (zone.p90 - zone.p10) / 2 * 1.8  # °F to each side
    assert face.number == f"≈{5 * round(degrees(zone.p50, 'F') / 5):.0f}"
    assert face.doubt == pytest.approx(0.8 * half)
    assert face.captions[0].endswith(f"±{5 * round(half / 5) if half >= 10 else round(half)}")


def test_a_spot_never_read_says_so(stood_desk: Desk, drawing: StoveDrawing) -> None:
    face = drawing.patch("top_back_right").face
    assert face.number.startswith("≈")
    assert face.captions[0].startswith("unread ±")
    assert "not read yet" in drawing.patch("top_back_right").accessibleName()


def test_the_patch_has_the_colour_of_its_heat(stood_desk: Desk, drawing: StoveDrawing) -> None:
    assert drawing.patch("top_front_left").face.fill == heat_colour(kelvin(450.0, "F"))
    assert fill_at(drawing, "top_front_left") == heat_colour(kelvin(450.0, "F"))


def test_a_click_chooses_the_spot_under_it(drawing: StoveDrawing, qtbot: QtBot) -> None:
    for name in ("flue", "oven_floor", "oven_left", "top_back_left", "room"):
        point = middle(drawing, name)
        patch = drawing.childAt(point)
        assert patch is drawing.patch(name)
        with qtbot.waitSignal(drawing.spot_chosen) as chosen:
            QTest.mouseClick(patch, Qt.MouseButton.LeftButton, pos=patch.mapFrom(drawing, point))
        assert chosen.args == [name]


def test_only_the_outline_of_a_spot_is_pressed(drawing: StoveDrawing) -> None:
    # The oven's left wall narrows towards the back: the lower right corner of its box belongs to the floor.
    wall = drawing.patch("oven_left").geometry()
    assert drawing.childAt(wall.right() - 8, wall.bottom() - 6) is drawing.patch("oven_floor")


def test_a_gap_between_plates_presses_nothing(drawing: StoveDrawing) -> None:
    left, right = (drawing.drawn.places[name].shape for name in ("top_back_left", "top_back_middle"))
    x = (left.upper_right[0] + right.upper_left[0]) / 2
    assert drawing.childAt(round(x), round(left.upper_right[1]) - 4) is None


@pytest.mark.parametrize(
    ("start", "key", "expected"),
    [
        ("top_front_left", Qt.Key.Key_Right, "top_front_middle"),
        ("top_front_left", Qt.Key.Key_Up, "top_back_left"),
        ("top_front_middle", Qt.Key.Key_Down, "oven_rear"),
        ("oven_left", Qt.Key.Key_Left, "door_glass"),
    ],
)
def test_arrow_keys_move_the_keyboard_and_the_light_to_the_neighbour(
    drawing: StoveDrawing, desk: Desk, start: str, key: Qt.Key, expected: str
) -> None:
    drawing.patch(start).setFocus()
    QTest.keyClick(drawing.patch(start), key)
    assert drawing.focusWidget() is drawing.patch(expected)
    assert desk.walk.spot.name == expected


def test_tab_goes_round_in_the_order_of_the_walk(drawing: StoveDrawing, desk: Desk) -> None:
    walk = [drawing.patch(spot.name) for spot in desk.stove.spots]
    assert [patch.nextInFocusChain() for patch in walk[:-1]] == walk[1:]


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Space])
def test_a_key_presses_the_spot(drawing: StoveDrawing, qtbot: QtBot, key: Qt.Key) -> None:
    with qtbot.waitSignal(drawing.spot_chosen) as chosen:
        QTest.keyClick(drawing.patch("flue"), key)
    assert chosen.args == ["flue"]


def test_a_digit_typed_on_a_spot_chooses_it(drawing: StoveDrawing, qtbot: QtBot) -> None:
    with qtbot.waitSignal(drawing.spot_chosen) as chosen:
        QTest.keyClicks(drawing.patch("oven_left"), "3")
    assert chosen.args == ["oven_left"]


def test_the_spot_with_the_keyboard_looks_so(drawing: StoveDrawing) -> None:
    drawing.patch("flue").setFocus()
    before = drawing.patch("oven_left").grab().toImage()
    drawing.patch("oven_left").setFocus()
    assert drawing.patch("oven_left").grab().toImage() != before


def test_the_lit_spot_is_marked_and_said(drawing: StoveDrawing, desk: Desk, qtbot: QtBot) -> None:
    desk.light(desk.walk.at("flue"))
    flue = drawing.patch("flue")
    qtbot.waitUntil(lambda: "the next number goes here" in flue.accessibleDescription())
    assert flue.face.is_lit
    assert not drawing.patch("oven_centre").face.is_lit
    assert "the next number" in flue.toolTip()


def marked_as_worth_reading(drawing: StoveDrawing, desk: Desk) -> list[str]:
    names = [spot.name for spot in desk.stove.spots]
    return [name for name in names if "worth reading" in drawing.patch(name).accessibleDescription()]


def test_the_reading_that_tells_most_is_marked(stood_desk: Desk, drawing: StoveDrawing, clock: HeldClock) -> None:
    clock.pass_minutes(8)
    assert stood_desk.show(stood(stood_desk.inputs()))
    assert stood_desk.standing is not None
    wanted = advise(stood_desk.standing).reading
    assert wanted is not None
    QApplication.processEvents()
    assert marked_as_worth_reading(drawing, stood_desk) == [wanted.spot]
    assert drawing.patch(wanted.spot).face.is_worth_reading


def test_nothing_is_worth_reading_while_the_walk_goes_on(stood_desk: Desk, drawing: StoveDrawing) -> None:
    assert marked_as_worth_reading(drawing, stood_desk) == []


def test_nothing_is_worth_reading_once_the_session_is_over(
    stood_desk: Desk, drawing: StoveDrawing, clock: HeldClock
) -> None:
    clock.pass_minutes(8)
    standing = stood(stood_desk.inputs())
    assert stood_desk.show(standing)
    QApplication.processEvents()
    assert marked_as_worth_reading(drawing, stood_desk)
    clock.pass_minutes(7 * 60)
    assert not stood_desk.is_live
    stood_desk.announce(Changed(standing=True))
    QApplication.processEvents()
    assert stood_desk.standing == standing  # it still names a reading; only the session is over
    assert marked_as_worth_reading(drawing, stood_desk) == []


def test_a_number_in_question_is_struck_below_the_belief(stood_desk: Desk, drawing: StoveDrawing, qtbot: QtBot) -> None:
    row = next(row for row in reversed(stood_desk.entries) if row.spot == "top_front_left")
    assert stood_desk.standing is not None
    slip = DoubtedReading(number=row.number, typed=500.0, expected_p10=380.0, expected_p50=400.0, expected_p90=420.0)
    stood_desk._shown.standing = replace(stood_desk.standing, doubted=(slip,))
    stood_desk.announce(Changed(standing=True))
    patch = drawing.patch("top_front_left")
    qtbot.waitUntil(lambda: "in question" in patch.accessibleDescription())
    assert patch.face.number.startswith("≈")
    assert (patch.face.captions, patch.face.struck) == (("typed",), "450")
    assert "question" not in drawing.patch("oven_centre").accessibleDescription()


def test_another_stove_is_drawn_when_it_is_chosen(drawing: StoveDrawing, desk: Desk, qtbot: QtBot) -> None:
    glass = drawing.patch("door_glass").x()
    desk.save_stove(stove_with_default_spots("Summer kitchen", Firebox.RIGHT))
    qtbot.waitUntil(lambda: drawing.patch("door_glass").x() > glass)


def test_units_switch_every_number(stood_desk: Desk, drawing: StoveDrawing, qtbot: QtBot) -> None:
    stood_desk.set_unit("C")
    qtbot.waitUntil(lambda: number(drawing, "oven_centre") == "149")  # 300 °F


def test_the_stove_is_drawn_as_it_is_set(stood_desk: Desk, drawing: StoveDrawing, qtbot: QtBot) -> None:
    plain = drawing.grab().toImage()
    for kind, value in ((Kind.AIR, "0.25"), (Kind.BYPASS, "1"), (Kind.OVEN_DOOR, "open")):
        stood_desk.do(kind, value=value)
        QApplication.processEvents()
        changed = drawing.grab().toImage()
        assert changed != plain
        plain = changed


def test_a_pan_is_drawn_where_it_stands_and_said(stood_desk: Desk, drawing: StoveDrawing, qtbot: QtBot) -> None:
    stood_desk.do(Kind.PAN, value="on", spot="top_front_left")
    patch = drawing.patch("top_front_left")
    qtbot.waitUntil(lambda: bool(patch.face.rim))
    assert "a pan stands here" in patch.accessibleDescription()
    stood_desk.do(Kind.PAN, value="off", spot="top_front_left")
    qtbot.waitUntil(lambda: not patch.face.rim)


def test_a_patch_just_read_goes_over_to_its_colour(
    stood_desk: Desk, drawing: StoveDrawing, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    _motion(monkeypatch, 200)
    before = fill_at(drawing, "flue")
    stood_desk.read("700", spot="flue")
    QApplication.processEvents()
    assert fill_at(drawing, "flue") != heat_colour(kelvin(700.0, "F"))
    qtbot.waitUntil(lambda: fill_at(drawing, "flue") == heat_colour(kelvin(700.0, "F")))
    assert before != heat_colour(kelvin(700.0, "F"))


def test_with_reduced_motion_it_has_its_colour_at_once(
    stood_desk: Desk, drawing: StoveDrawing, monkeypatch: pytest.MonkeyPatch
) -> None:
    _motion(monkeypatch, 0)
    stood_desk.read("700", spot="flue")
    QApplication.processEvents()
    assert fill_at(drawing, "flue") == heat_colour(kelvin(700.0, "F"))


def _motion(monkeypatch: pytest.MonkeyPatch, milliseconds: int) -> None:
    style = type(QApplication.style())
    answer = style.styleHint
    hint = QStyle.StyleHint.SH_Widget_Animation_Duration
    monkeypatch.setattr(
        style, "styleHint", lambda self, asked, *rest: milliseconds if asked is hint else answer(self, asked, *rest)
    )


def test_it_paints_in_every_state(stood_desk: Desk, drawing: StoveDrawing, look: Look, qtbot: QtBot) -> None:
    stood_desk.do(Kind.OVEN_DOOR, value="open")
    QApplication.processEvents()
    drawing.patch("oven_centre").setFocus()
    look.set_mode("night")
    assert not drawing.grab().isNull()
    look.set_mode("day")


def test_a_task_leaves_its_heat_to_the_spots_that_fit(
    stood_desk: Desk, drawing: StoveDrawing, monkeypatch: pytest.MonkeyPatch
) -> None:
    places = {
        "top_front_left": TaskPlace(will_do=True, words="8 in 10"),
        "top_front_right": TaskPlace(will_do=False, words="too cool"),
    }
    monkeypatch.setattr(stove_drawing, "task_places", lambda _desk, key: places if key == "simmer" else {})
    before = {name: drawing.patch(name).face for name in (*places, "oven_centre")}
    drawing.show_task("simmer")
    fits, fails = (drawing.patch(name) for name in places)
    assert (fits.face.fill, fits.face.captions, fits.face.is_answer) == (
        before["top_front_left"].fill,
        ("8 in 10",),
        True,
    )
    assert (fails.face.fill, fails.face.rim) == ("", before["top_front_right"].fill)
    assert fails.face.number == before["top_front_right"].number
    assert fails.accessibleDescription().startswith("too cool")
    assert drawing.patch("oven_centre").face == before["oven_centre"]
    drawing.show_task("")
    assert {name: drawing.patch(name).face for name in before} == before


def test_the_legend_goes_from_cool_to_hot_in_the_colours_of_the_heats(drawing: StoveDrawing) -> None:
    words = [word for word, _ in drawing._legend.marks]
    lightness = [relative_luminance(shade) for _, shade in drawing._legend.marks]
    assert words == ["warm", "simmer", "boil", "sear"]
    assert lightness == sorted(lightness)
    assert len(set(lightness)) == 4
