"""Rows are chosen by keyboard, light up their spots, ask for an oven's heat, and their words keep clear of the hill."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.time_axis.good_list import GoodList, fitted
from cookstove_gui.gui.time_axis.hill_words import Stand, place_words, strong_parts
from cookstove_gui.gui.time_axis.time_axis import TimeAxis
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.type import BODY, font
from tests.gui.hands import click, control


@pytest.fixture
def axis(link: DeskLink, look: Look, qtbot: QtBot) -> TimeAxis:
    made = TimeAxis(link, look)
    qtbot.addWidget(made)
    made.resize(764, 600)
    made.show()
    return made


@pytest.fixture
def rows(axis: TimeAxis) -> GoodList:
    return control(axis, "good_for_rows", GoodList)


def test_before_any_reading_nothing_is_promised(axis: TimeAxis, rows: GoodList) -> None:
    assert rows.rows() == []
    assert not rows.isVisible()
    assert control(axis, "good_for_why", QLabel).text().startswith("After the first readings")


def test_up_and_down_choose_a_row_and_tell_its_task(
    stood_desk: Desk, axis: TimeAxis, rows: GoodList, qtbot: QtBot
) -> None:
    marked: list[str] = []
    axis.good_for.task_marked.connect(marked.append)
    axis.good_for.take_focus()
    qtbot.keyClick(rows, Qt.Key.Key_Down)
    assert marked == [row.task for row in rows.rows()[:2]]


def test_a_spot_chooses_the_row_that_may_be_done_there(stood_desk: Desk, axis: TimeAxis, rows: GoodList) -> None:
    axis.good_for.choose_spot("oven_centre")
    chosen = rows.chosen()
    assert chosen is not None
    assert chosen.spots == ("oven_centre",)
    axis.good_for.choose_spot("no_such_spot")
    assert rows.chosen() is None


def test_enter_on_an_oven_row_asks_for_its_heat(stood_desk: Desk, axis: TimeAxis, rows: GoodList, qtbot: QtBot) -> None:
    oven = next(row for row in rows.rows() if row.is_oven and not row.is_wanted)
    before = stood_desk.band
    axis.good_for.take_focus()
    rows.choose(oven.key)
    qtbot.keyClick(rows, Qt.Key.Key_Return)
    assert stood_desk.band != before
    qtbot.waitUntil(lambda: any(row.key == oven.key and row.is_wanted for row in rows.rows()))


def test_the_row_that_was_chosen_stays_chosen(stood_desk: Desk, axis: TimeAxis, rows: GoodList) -> None:
    rows.choose(rows.rows()[2].key)
    before = rows.chosen()
    stood_desk.choose_band("pie")
    QApplication.processEvents()
    assert before is not None
    after = rows.chosen()
    assert after is not None
    assert after.key == before.key


def test_by_spot_shows_spots_and_the_whole_stove_on_the_plot(stood_desk: Desk, axis: TimeAxis, rows: GoodList) -> None:
    told: list[bool] = []
    axis.good_for.by_spot_wanted.connect(told.append)
    click(axis, "good_by_spot")
    assert told == [True]
    names = {spot.name for spot in stood_desk.stove.spots}
    assert {row.key for row in rows.rows()} <= names
    assert rows.rows()


def test_a_row_is_read_out_whole(stood_desk: Desk, rows: GoodList) -> None:
    row = rows.rows()[0]
    said = rows.item(0).data(Qt.ItemDataRole.AccessibleTextRole)
    assert all(part in said for part in (row.name, row.place, row.when, row.chance))


def test_what_is_out_of_sight_is_counted(stood_desk: Desk, axis: TimeAxis, rows: GoodList) -> None:
    shown = rows.height() // 40
    assert control(axis, "good_for_more", QLabel).text() == f"{rows.count() - shown} more, by scrolling"


@pytest.mark.parametrize(("height", "least_plot"), [(480, 120), (600, 200), (760, 200), (1100, 290)])
def test_rows_come_first_then_the_plot_then_more_rows(
    stood_desk: Desk, axis: TimeAxis, height: int, least_plot: int
) -> None:
    axis.resize(764, height)
    QApplication.processEvents()
    assert axis._plot_place.height() >= least_plot
    assert axis.good_for.height() >= 44 + 26 + 40


def test_it_paints_by_night_and_while_moved(stood_desk: Desk, axis: TimeAxis, look: Look) -> None:
    look.set_mode("night")
    axis.span.move(-60)
    assert not axis.grab().isNull()
    look.set_mode("day")


# --- hills -----------------------------------------------------------------------------------------------------------


def test_a_hill_is_strong_from_where_it_crosses_six_in_ten() -> None:
    assert strong_parts([(0, 0.5), (10, 0.7), (20, 0.7), (30, 0.4)]) == [(5.0, pytest.approx(23.333, abs=1e-3))]
    assert strong_parts([(0, 0.9), (10, 0.8)]) == [(0, 10)]
    assert strong_parts([(0, 0.1), (10, 0.2)]) == []
    assert strong_parts([]) == []


hills = st.lists(st.floats(0, 1), min_size=3, max_size=25).map(
    lambda chances: [(100.0 + 12 * place, chance) for place, chance in enumerate(chances)]
)


@given(hills, st.floats(40, 200))
@settings(max_examples=80, deadline=None)
def test_words_do_not_cross_the_line_of_the_hill(points: list[tuple[float, float]], wide: float) -> None:
    x, stands = place_words(points, wide, (100.0, 400.0), 10.0)
    assert x >= 100.0
    if stands is Stand.INSIDE:
        assert any(start <= x and x + wide <= end for start, end in strong_parts(points))
    places, chances = zip(*points, strict=True)
    under = np.interp(np.linspace(x, x + wide, 50), places, chances)
    if stands is Stand.INSIDE:
        assert under.min() >= 0.77
    if stands is Stand.ABOVE:
        assert under.max() <= 0.49
    if stands is Stand.BELOW:
        assert under.min() >= 0.57


def test_words_stand_after_a_strong_part_that_is_too_short_where_the_hill_is_low() -> None:
    points = [(100.0, 0.9), (130.0, 0.7), (160.0, 0.5), (200.0, 0.3), (400.0, 0.1)]
    x, stands = place_words(points, 120, (100.0, 400.0), 10.0)
    assert stands is Stand.ABOVE
    assert x > 160
    assert x + 120 <= 400


def test_words_of_a_hill_that_is_nowhere_low_stand_below_its_line() -> None:
    points = [(100.0, 0.5), (150.0, 0.62), (170.0, 0.62), (200.0, 0.59), (400.0, 0.59)]
    x, stands = place_words(points, 120, (100.0, 400.0), 10.0)
    assert stands is Stand.BELOW
    assert x + 120 <= 400


def test_a_long_name_is_written_smaller_then_on_two_lines_before_it_is_cut(look: Look) -> None:
    name = "simmer or reduce, open"
    wide = QFontMetricsF(font(BODY, 400)).horizontalAdvance(name)
    found = [fitted(name, share * wide, 400) for share in (1.01, 0.93, 0.6)]
    assert [lines for _, lines in found] == [[name], [name], ["simmer or", "reduce, open"]]
    assert len({face.pixelSize() for face, _ in found}) == 3
    assert "…" in " ".join(fitted(name, 0.2 * wide, 400)[1])
