"""The parts of the Cook page tell each other: a row chosen under the plot shows its places on the stove."""

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPixmap
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QLineEdit, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.desk.cook.good_rows import GoodRow
from cookstove_gui.gui.cook.page import CookPage
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove.stove_drawing import StoveDrawing
from cookstove_gui.gui.time_axis.good_list import GoodList
from cookstove_gui.gui.time_axis.time_axis import TimeAxis
from cookstove_gui.gui.time_axis.trend_plot import TrendPlot
from cookstove_gui.gui.widgets.chooser import Chooser
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import font
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import degrees
from tests.gui.clipping import settle
from tests.gui.hands import click, control, push, seen
from tests.held_clock import HeldClock
from tests.once import stood


@pytest.fixture
def page(stood_desk: Desk, link: DeskLink, look: Look, qtbot: QtBot) -> CookPage:
    made = CookPage(link, look)
    qtbot.addWidget(made)
    made.resize(1280, 640)
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    return made


def answered(page: CookPage, desk: Desk) -> list[str]:
    drawing = control(page, "stove_drawing", StoveDrawing)
    return [spot.name for spot in desk.stove.spots if drawing.patch(spot.name).face.is_answer]


def test_a_row_of_the_cooktop_shows_its_places_as_long_as_the_rows_have_the_keyboard(
    page: CookPage, stood_desk: Desk
) -> None:
    rows = control(page, "good_for_rows", GoodList)
    place = next(number for number, row in enumerate(rows.rows()) if not row.is_oven)
    assert answered(page, stood_desk) == []
    rows.setFocus()
    rows.setCurrentRow(place)
    QApplication.processEvents()
    assert rows.rows()[place].spots[0] in answered(page, stood_desk)
    page.take_focus()
    QApplication.processEvents()
    assert answered(page, stood_desk) == []


def test_a_spot_pressed_on_the_stove_is_asked_for_and_shows_no_task(page: CookPage, stood_desk: Desk) -> None:
    drawing = control(page, "stove_drawing", StoveDrawing)
    QTest.mouseClick(drawing.patch("top_front_left"), Qt.MouseButton.LeftButton)
    QApplication.processEvents()
    assert stood_desk.walk.spot.name == "top_front_left"
    assert answered(page, stood_desk) == []
    assert isinstance(page.focusWidget(), QLineEdit)


def choose_row(page: CookPage, task: str) -> GoodList:
    rows = control(page, "good_for_rows", GoodList)
    rows.setFocus()
    rows.setCurrentRow(next(number for number, row in enumerate(rows.rows()) if row.task == task))
    return rows


def pans_on(desk: Desk) -> list[str]:
    return [row.spot for row in desk.entries if row.kind is Kind.PAN and row.value == "on"]


def pan_asked(page: CookPage) -> GoodRow:
    """Enter on a row of the cooktop that several spots would do for."""
    rows = control(page, "good_for_rows", GoodList)
    row = next(row for row in rows.rows() if not row.is_oven and len(row.spots) > 1)
    QTest.keyClick(choose_row(page, row.task), Qt.Key.Key_Return)
    QApplication.processEvents()
    return row


def lit_spots(page: CookPage, desk: Desk) -> list[str]:
    drawing = control(page, "stove_drawing", StoveDrawing)
    return [spot.name for spot in desk.stove.spots if drawing.patch(spot.name).face.is_lit]


def test_enter_on_a_row_of_the_cooktop_asks_where_its_pan_goes_and_enter_again_takes_the_best(
    page: CookPage, stood_desk: Desk
) -> None:
    row = pan_asked(page)
    assert pans_on(stood_desk) == []
    assert lit_spots(page, stood_desk) == [row.spots[0]]
    QTest.keyClick(page.focusWidget(), Qt.Key.Key_Return)
    assert pans_on(stood_desk) == [row.spots[0]]


def test_left_right_pointer_and_a_press_on_the_stove_choose_among_the_spots_of_a_pan(
    page: CookPage, stood_desk: Desk
) -> None:
    page.bring_plot()
    row, plot = pan_asked(page), control(page, "trend_plot", TrendPlot)
    chooser = control(page, "chooser", Chooser)
    tops = [answer.value for answer in chooser._choice.answers]

    def shown() -> list[str]:
        QApplication.processEvents()
        return [one.spot for one in plot._course.spots] if plot._course else []

    assert shown()[0] == row.spots[0]
    for key, step in ((Qt.Key.Key_Right, 1), (Qt.Key.Key_Left, -1), (Qt.Key.Key_Down, 3)):
        at = tops.index(shown()[0])
        QTest.keyClick(page.focusWidget(), key)
        assert shown()[0] == tops[(at + step) % len(tops)]
        assert lit_spots(page, stood_desk) == shown()[:1]
    other = next(spot for spot in tops if spot != shown()[0])
    chooser._buttons[tops.index(other)].pointed_at.emit(True)
    assert shown()[0] == other
    chooser._buttons[tops.index(other)].pointed_at.emit(False)
    assert shown()[0] != other
    drawing = control(page, "stove_drawing", StoveDrawing)
    QTest.mouseClick(drawing.patch(other), Qt.MouseButton.LeftButton)
    assert shown()[0] == other
    control(page, "time_axis", TimeAxis).copy_values()
    copied = [line.split("\t")[1] for line in QApplication.clipboard().text().splitlines()[1:]]
    assert list(dict.fromkeys(copied)) == [f"top {one.name}" for one in plot._course.spots] if plot._course else False
    click(page, "pan_enter")
    assert pans_on(stood_desk) == [other]


def test_the_lid_and_the_water_of_a_pan_are_noted_as_the_cook_says_them(page: CookPage, stood_desk: Desk) -> None:
    def noted() -> str:
        return [row for row in stood_desk.entries if row.kind is Kind.PAN][-1].note

    pan_asked(page)
    QTest.keyClick(page.focusWidget(), Qt.Key.Key_Return)
    assert noted() == ""
    pan_asked(page)
    for _ in range(2):
        QTest.keyClick(page.focusWidget(), Qt.Key.Key_L)
    QTest.keyClick(page.focusWidget(), Qt.Key.Key_Return)
    assert noted() == "no lid"
    pan_asked(page)
    click(page, "lid_on")
    water = control(page, "pan_water", QLineEdit)
    water.setFocus()
    QTest.keyClicks(water, "2")
    QTest.keyClick(water, Qt.Key.Key_Return)
    assert noted() == "2 quarts, lid"
    taken = stood_desk.entries[-1].spot
    pan_asked(page)
    assert not control(page, "lid_on", QPushButton).isChecked()
    click(page, "lid_off")
    assert control(page, "chooser", Chooser).mark(taken)
    QTest.keyClick(page.focusWidget(), Qt.Key.Key_Return)
    assert [row for row in stood_desk.entries if row.kind is Kind.PAN][-1].value == "off"
    assert noted() == ""


def test_while_a_pan_is_put_on_the_stove_shows_the_places_of_a_task_and_enter_takes_the_best(
    page: CookPage, stood_desk: Desk
) -> None:
    rows = control(page, "good_for_rows", GoodList)
    row = next(row for row in rows.rows() if not row.is_oven)
    click(page, "fire_pan")
    QApplication.processEvents()
    assert rows.chosen() == row
    assert control(page, "chooser_question", QLabel).accessibleName().endswith(row.name)
    assert row.spots[0] in answered(page, stood_desk)
    QTest.keyClick(page.focusWidget(), Qt.Key.Key_Return)
    QApplication.processEvents()
    assert pans_on(stood_desk) == [row.spots[0]]
    assert rows.chosen() is None
    assert answered(page, stood_desk) == []


def test_while_a_pan_is_put_on_the_plot_shows_its_two_best_spots_and_then_the_oven_again(
    page: CookPage, stood_desk: Desk
) -> None:
    page.bring_plot()
    standing, plot = stood_desk.standing, control(page, "trend_plot", TrendPlot)
    assert standing is not None
    rows = control(page, "good_for_rows", GoodList)
    row = next(row for row in rows.rows() if not row.is_oven and len(row.spots) > 1)
    task = next(fit.task for fit in standing.fits if fit.task.key == row.task)
    choose_row(page, row.task)
    QTest.keyClick(rows, Qt.Key.Key_F10)
    QApplication.processEvents()
    assert [one.spot for one in plot._course.spots] == list(row.spots[:2]) if plot._course else False
    for fan, spot in ((plot._lines.ahead, row.spots[0]), (plot._lines.beside, row.spots[1])):
        futures = standing.projection.of(spot)[:, -1]
        assert fan.middle.getData()[1][-1] == pytest.approx(degrees(float(np.median(futures)), "F"))
    assert plot._band.getRegion() == pytest.approx((degrees(task.low, "F"), degrees(task.high, "F")))
    for marks, spot in ((plot._readings.oven, row.spots[0]), (plot._readings.beside, row.spots[1])):
        read = [float(one.value) for one in stood_desk.entries if one.kind is Kind.READING and one.spot == spot]
        assert list(marks.getData()[1]) == pytest.approx(read)
    assert len(plot._lines.past.middle.getData()[0]) == 0  # nothing is known of a spot's past but its readings
    drawing = control(page, "stove_drawing", StoveDrawing)
    for one, spot in zip(plot._words.spots_now, row.spots, strict=False):
        assert one.number == drawing.patch(spot).face.number
    plot.setFocus()
    QTest.keyClick(plot, Qt.Key.Key_Right)
    assert plot._words.pointed is not None
    assert all(one.name in plot._words.pointed.words for one in plot._words.spots_now)
    page.take_focus()
    QTest.keyClick(page.focusWidget(), Qt.Key.Key_Escape)
    QApplication.processEvents()
    oven = standing.projection.of("oven_centre")[:, -1]
    assert plot._lines.ahead.middle.getData()[1][-1] == pytest.approx(degrees(float(np.median(oven)), "F"))
    assert len(plot._lines.beside.middle.getData()[0]) == 0
    assert plot._words.spots_now == ()
    assert plot._words.pointed is None
    assert plot._band.getRegion() == pytest.approx(
        (degrees(stood_desk.band.low, "F"), degrees(stood_desk.band.high, "F"))
    )


def test_whoever_comes_back_to_where_a_pan_goes_stands_at_its_best_spot_still(page: CookPage, stood_desk: Desk) -> None:
    rows = control(page, "good_for_rows", GoodList)
    row = next(row for row in rows.rows() if not row.is_oven and row.spots[0] != "top_back_left")
    choose_row(page, row.task)
    click(page, "fire_pan")
    rows.setFocus()
    page.take_focus()
    QTest.keyClick(page.focusWidget(), Qt.Key.Key_Return)
    assert pans_on(stood_desk) == [row.spots[0]]


def test_the_plot_of_a_pan_goes_with_the_row_that_is_chosen(page: CookPage, stood_desk: Desk) -> None:
    page.bring_plot()
    plot, rows = control(page, "trend_plot", TrendPlot), control(page, "good_for_rows", GoodList)
    tops = [row for row in rows.rows() if not row.is_oven]
    click(page, "fire_pan")
    for row in (tops[1], tops[0]):
        choose_row(page, row.task)
        QApplication.processEvents()
        assert plot._words.band is not None
        assert plot._words.band.name == row.name
    choose_row(page, next(row for row in rows.rows() if row.is_oven).task)
    QApplication.processEvents()
    assert plot._words.spots_now == ()


def test_the_name_of_a_task_stands_beside_the_line_of_now_not_across_it(page: CookPage, stood_desk: Desk) -> None:
    page.bring_plot()
    plot = control(page, "trend_plot", TrendPlot)
    words = plot._words
    assert words.band is not None
    now = words._span.x(words._span.now or 0.0, words.width())
    size = QFontMetricsF(font(18, 600))
    long = next(name for name in ("m" * count for count in range(99)) if size.horizontalAdvance(name) > now - px(40))
    for name, is_left in (("boil", True), (long, False)):
        words.band = replace(words.band, name=name)
        words._room.clear(words._plot_box(), [], ())
        picture = QPixmap(words.size())
        painter = QPainter(picture)
        words._paint_band_name(painter)
        painter.end()
        (box,) = words._room.taken
        assert box.right() < now if is_left else box.left() > now


def test_a_pan_asked_for_before_the_first_rows_shows_its_places_with_them(page: CookPage, stood_desk: Desk) -> None:
    rows = control(page, "good_for_rows", GoodList)
    rows.show_rows(())
    click(page, "fire_pan")
    assert answered(page, stood_desk) == []
    stood_desk.announce(Changed(standing=True))
    QApplication.processEvents()
    chosen = rows.chosen()
    assert chosen is not None
    assert chosen.spots[0] in answered(page, stood_desk)
    QTest.keyClick(page.focusWidget(), Qt.Key.Key_Return)
    assert pans_on(stood_desk) == [chosen.spots[0]]


def test_a_pan_that_is_not_put_on_leaves_the_row_chosen_that_was(page: CookPage, stood_desk: Desk) -> None:
    rows = control(page, "good_for_rows", GoodList)
    oven = next(row for row in rows.rows() if row.is_oven)
    choose_row(page, oven.task)
    click(page, "fire_pan")
    assert rows.chosen() != oven
    QTest.keyClick(page.focusWidget(), Qt.Key.Key_Escape)
    QApplication.processEvents()
    assert rows.chosen() == oven
    assert answered(page, stood_desk) == []


def test_the_row_of_the_heat_wanted_stands_first(page: CookPage, stood_desk: Desk) -> None:
    rows = control(page, "good_for_rows", GoodList)
    last = [row for row in rows.rows() if row.is_oven][-1]
    QTest.keyClick(choose_row(page, last.task), Qt.Key.Key_Return)
    QApplication.processEvents()
    assert rows.rows()[0].is_wanted


def test_first_fires_are_waived_on_cook_after_the_manuals_word(page: CookPage, stood_desk: Desk, qtbot: QtBot) -> None:
    def fires() -> None:
        stood_desk.show(work_out(stood_desk.inputs(), Memory()))
        settle()

    stood_desk.save_stove(replace(stood_desk.stove, is_new=True))
    fires()
    push(page, "cook_waive")
    assert "The manual comes first" in seen(page, "first_fires_waive_words")
    push(page, "first_fires_keep")
    assert not stood_desk.stove.first_fires_waived
    assert control(page, "cook_waive", QPushButton).isVisible()
    push(page, "cook_waive")
    push(page, "first_fires_sure")
    assert stood_desk.stove.first_fires_waived
    fires()
    assert not control(page, "cook_waive", QPushButton).isVisible()
    assert control(page, "good_for_rows", GoodList).isVisible()


def test_the_field_that_is_typed_into_stays_in_sight_as_the_page_gets_lower(
    page: CookPage, look: Look, qtbot: QtBot
) -> None:
    field = control(page, "number_field", QLineEdit)
    field.setFocus()
    page.resize(1280, 300)
    qtbot.waitUntil(lambda: page.rect().contains(field.mapTo(page, field.rect().bottomLeft())))


def test_a_question_comes_into_sight_and_makes_no_usual_window_scroll(
    page: CookPage, stood_desk: Desk, clock: HeldClock
) -> None:
    page.resize(1366, 380)
    settle()
    clock.pass_minutes(2)
    stood_desk.read("38", spot="oven_centre")
    assert stood_desk.show(stood(stood_desk.inputs()))
    settle()
    line = control(page, "question_line", QWidget)
    assert line.isVisible()
    assert page._area.verticalScrollBar().maximum() > 0
    assert page.rect().contains(line.mapTo(page, line.rect().bottomLeft()))
    page.resize(1366, 626)  # of a window of 718, below the heading
    settle()
    assert page._area.verticalScrollBar().maximum() == 0
