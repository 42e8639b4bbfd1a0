"""The plot shows what was read, believed and projected, on the local clock, and what was done to the fire below it."""

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.fires.first_fires import progress
from cookstove_gui.desk import Changed, Desk, Memory, work_out
from cookstove_gui.forecast.answers import Action, ActionKind, Quantiles
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.time_axis.fire_lane import FireLane
from cookstove_gui.gui.time_axis.trend_plot import TrendPlot
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import degrees
from tests.gui.hands import control
from tests.held_clock import HeldClock


@pytest.fixture
def plot(link: DeskLink, look: Look, qtbot: QtBot) -> TrendPlot:
    made = TrendPlot(link, look)
    qtbot.addWidget(made)
    made.resize(560, 460)
    made.show()
    qtbot.waitExposed(made)
    return made


def stand(desk: Desk) -> None:
    assert desk.show(work_out(desk.inputs(), Memory()))
    QApplication.processEvents()


def test_oven_readings_stand_at_their_time_and_heat(stood_desk: Desk, plot: TrendPlot) -> None:
    x, y = plot._readings.oven.getData()
    assert list(x) == [9, 18, 27, 36]
    assert list(y) == pytest.approx([120, 175, 240, 300])


def test_the_shape_of_a_mark_tells_the_instrument(stood_desk: Desk, plot: TrendPlot) -> None:
    plot.show_cooktop(True)
    assert set(plot._readings.oven.data["symbol"]) == {"o"}
    assert set(plot._readings.elsewhere.data["symbol"]) == {"d"}


def test_the_cooktop_is_shown_only_when_asked_for(stood_desk: Desk, plot: TrendPlot) -> None:
    assert len(plot._readings.elsewhere.data) == 0
    plot.show_cooktop(True)
    assert len(plot._readings.elsewhere.data) == 4


def test_a_doubted_reading_is_struck_through(fired_desk: Desk, plot: TrendPlot, clock: HeldClock) -> None:
    clock.pass_minutes(2)
    fired_desk.read("620", spot="oven_centre")
    stand(fired_desk)
    _, y = plot._readings.strokes.getData()
    assert list(y) == pytest.approx([620])


def test_the_fan_starts_now_and_its_middle_is_the_median(stood_desk: Desk, plot: TrendPlot) -> None:
    assert stood_desk.standing is not None
    x, y = plot._ahead.middle.getData()
    assert x[0] == pytest.approx(36)
    futures = stood_desk.standing.projection.of("oven_centre")
    assert y[-1] == pytest.approx(degrees(float(np.median(futures[:, -1])), "F"))


def test_the_fan_holds_its_middle(stood_desk: Desk, plot: TrendPlot) -> None:
    low, middle, high = (curve.getData()[1] for curve in (plot._ahead.low, plot._ahead.middle, plot._ahead.high))
    assert (low <= middle).all()
    assert (middle <= high).all()


def test_the_band_is_drawn_where_it_was_chosen(plot: TrendPlot, desk: Desk, qtbot: QtBot) -> None:
    desk.choose_band("425-475")
    qtbot.waitUntil(lambda: plot._band.getRegion() == pytest.approx((425, 475)))


def show_arrival(desk: Desk, *, line: float | None, window: tuple[float | None, ...] = (20.0, 35.0, 60.0)) -> None:
    """Let the standing on the table have this arrival: minutes from now."""
    standing = desk.standing
    assert standing is not None
    enters = Quantiles(p10=window[0], p50=window[1], p90=window[2])
    band = replace(standing.outlook.band, enters_min=enters, line_enters_min=line)
    assert desk.show(replace(standing, outlook=replace(standing.outlook, band=band)))
    desk.announce(Changed(standing=True))
    QApplication.processEvents()


def tick(plot: TrendPlot) -> float:
    return float(plot._arrival._likely.getData()[0][0])


def test_likely_stands_where_the_drawn_middle_line_enters_the_band(stood_desk: Desk, plot: TrendPlot) -> None:
    low = degrees(stood_desk.band.low, "F")
    x, y = plot._ahead.middle.getData()
    place = int(np.argmax(y >= low))
    assert place > 0
    enters = x[place - 1] + (low - y[place - 1]) / (y[place] - y[place - 1]) * (x[place] - x[place - 1])
    assert tick(plot) == pytest.approx(enters, abs=0.01)


def test_the_mark_says_the_moment_that_the_headline_says(stood_desk: Desk, plot: TrendPlot) -> None:
    show_arrival(stood_desk, line=42.0)
    said = f"likely {stood_desk.edge.clock(42.0)}"
    assert plot._arrival._words.textItem.toPlainText() == said
    assert said in plot.accessibleDescription()
    box = plot._arrival._box.rect()
    assert (box.left(), box.right(), tick(plot)) == pytest.approx((36 + 20, 36 + 60, 36 + 42))


def test_a_line_that_never_enters_the_band_has_no_mark(stood_desk: Desk, plot: TrendPlot) -> None:
    show_arrival(stood_desk, line=42.0)
    assert plot._arrival._words.isVisible()
    show_arrival(stood_desk, line=None, window=(20.0, 35.0, None))  # half of the futures come, and no line
    assert not plot._arrival._words.isVisible()
    assert not plot._arrival._box.isVisible()
    assert "may touch" in plot.accessibleDescription()


def test_a_window_without_an_end_is_drawn_to_the_horizon(stood_desk: Desk, plot: TrendPlot) -> None:
    show_arrival(stood_desk, line=42.0, window=(20.0, 35.0, None))
    assert plot._arrival._box.rect().right() == pytest.approx(36 + 180)


def test_an_oven_in_its_band_has_no_arrival_to_come(stood_desk: Desk, plot: TrendPlot) -> None:
    show_arrival(stood_desk, line=0.0, window=(0.0, 0.0, 10.0))
    assert not plot._arrival._box.isVisible()


def test_an_old_session_has_no_arrival_to_come(stood_desk: Desk, plot: TrendPlot, clock: HeldClock) -> None:
    clock.pass_minutes(7 * 60)
    show_arrival(stood_desk, line=42.0)
    assert not plot._arrival._box.isVisible()


def test_no_heat_is_marked_while_first_fires_run(stood_desk: Desk, plot: TrendPlot) -> None:
    show_arrival(stood_desk, line=42.0)
    standing = stood_desk.standing
    assert standing is not None
    new = progress(replace(stood_desk.stove, is_new=True), ())
    assert stood_desk.show(replace(standing, first_fires=new))
    stood_desk.announce(Changed(standing=True))
    QApplication.processEvents()
    assert not plot._arrival._box.isVisible()


def test_a_step_is_drawn_beside_the_present_course(stood_desk: Desk, plot: TrendPlot) -> None:
    stood_desk.choose_action(Action(kind=ActionKind.WOOD, value=2.2))
    stand(stood_desk)
    assert len(plot._other.middle.getData()[0]) > 10
    assert len(plot._ahead.middle.getData()[0]) > 10


def test_numbers_switch_with_the_unit(stood_desk: Desk, plot: TrendPlot, qtbot: QtBot) -> None:
    stood_desk.set_unit("C")
    qtbot.waitUntil(lambda: plot._readings.oven.getData()[1][0] == pytest.approx(degrees(322.039, "C"), abs=0.01))


def test_fire_events_stand_in_the_lane(stood_desk: Desk, plot: TrendPlot) -> None:
    said = control(plot, "fire_lane", FireLane).accessibleName()
    assert "lit, air open, two splits" in said


def test_a_hidden_plot_catches_up_when_it_is_shown(plot: TrendPlot, desk: Desk, qtbot: QtBot) -> None:
    plot.hide()
    desk.do(Kind.LIT)
    desk.read("200", spot="oven_centre")
    QApplication.processEvents()
    assert len(plot._readings.oven.data) == 0
    plot.show()
    assert len(plot._readings.oven.data) == 1


def test_plot_items_are_kept_not_made_again(stood_desk: Desk, plot: TrendPlot) -> None:
    before = len(plot._plot.items())
    for unit in ("C", "F"):
        stood_desk.set_unit(unit)
        QApplication.processEvents()
    assert len(plot._plot.items()) == before


def test_the_view_stays_where_it_was_pulled_until_the_next_entry(
    stood_desk: Desk, plot: TrendPlot, clock: HeldClock, qtbot: QtBot
) -> None:
    box = plot._plot.getViewBox()
    box.setXRange(0, 20, padding=0)
    box.sigRangeChangedManually.emit([True, False])
    stand(stood_desk)
    assert box.viewRange()[0] == pytest.approx([0, 20])
    clock.pass_minutes(3)
    stood_desk.read("310", spot="oven_centre")
    qtbot.waitUntil(lambda: box.viewRange()[0][1] > 60)


def test_a_double_click_follows_the_session_again(stood_desk: Desk, plot: TrendPlot, qtbot: QtBot) -> None:
    box = plot._plot.getViewBox()
    box.setXRange(0, 20, padding=0)
    box.sigRangeChangedManually.emit([True, False])
    qtbot.mouseDClick(plot._plot.viewport(), Qt.MouseButton.LeftButton)
    assert box.viewRange()[0][1] > 60


def test_the_bands_name_stands_whole_above_the_band_on_a_low_plot(
    stood_desk: Desk, plot: TrendPlot, qtbot: QtBot
) -> None:
    plot.resize(420, 170)
    box = plot._plot.getViewBox()
    qtbot.waitUntil(lambda: 20 < box.height() < 130)
    qtbot.wait(20)
    bottom, top = box.viewRange()[1]
    above = (top - degrees(stood_desk.band.high, stood_desk.unit)) / (top - bottom) * box.height()
    assert above >= plot._band_name.boundingRect().height() - 1.0


def test_it_paints_by_night(stood_desk: Desk, plot: TrendPlot, look: Look) -> None:
    look.set_mode("night")
    assert plot._plot.backgroundBrush().color().name().upper() == look.theme.ground
    assert not plot.grab().isNull()
    look.set_mode("day")


def test_the_ovens_walls_are_marked_smaller_than_its_centre(stood_desk: Desk, plot: TrendPlot, qtbot: QtBot) -> None:
    stood_desk.read("350", spot="oven_left")
    qtbot.waitUntil(lambda: len(plot._readings.elsewhere.data) == 1)
    assert set(plot._readings.elsewhere.data["symbol"]) == {"o"}
    assert plot._readings.elsewhere.opts["size"] < plot._readings.oven.opts["size"]


@pytest.mark.parametrize("width", [500, 900, 1400])
def test_the_fire_lane_lines_up_with_the_plot_above_it(
    stood_desk: Desk, plot: TrendPlot, qtbot: QtBot, width: int
) -> None:
    plot.resize(width, 460)
    box = plot._plot.getViewBox()
    lane = control(plot, "fire_lane", FireLane)
    qtbot.waitUntil(lambda: lane.sides == (box.sceneBoundingRect().left(), box.sceneBoundingRect().right()))
    assert lane.sides[1] > width - 20
