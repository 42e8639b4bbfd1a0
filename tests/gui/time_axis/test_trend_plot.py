"""The plot shows what was read, known and projected, on the local clock; it can be moved, and read out by keyboard."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QObject, QPoint, Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.fires.first_fires import progress
from cookstove_gui.desk import Changed, Desk
from cookstove_gui.forecast.answers import Action, ActionKind, Quantiles
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.time_axis.fire_lane import FireLane
from cookstove_gui.gui.time_axis.time_axis import TimeAxis
from cookstove_gui.gui.time_axis.trend_plot import TrendPlot
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import NUMBER, font
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import degrees
from tests.gui.hands import control
from tests.held_clock import HeldClock
from tests.once import stood


@pytest.fixture
def axis(link: DeskLink, look: Look, qtbot: QtBot) -> TimeAxis:
    made = TimeAxis(link, look)
    qtbot.addWidget(made)
    made.bring_plot()
    made.resize(764, 600)
    made.show()
    qtbot.waitExposed(made)
    return made


@pytest.fixture
def plot(axis: TimeAxis) -> TrendPlot:
    return control(axis, "trend_plot", TrendPlot)


def stand(desk: Desk) -> None:
    assert desk.show(stood(desk.inputs()))
    QApplication.processEvents()


# --- what is drawn --------------------------------------------------------------------------------------------------


def test_oven_readings_stand_at_their_time_and_heat(stood_desk: Desk, plot: TrendPlot) -> None:
    x, y = plot._readings.oven.getData()
    assert list(x) == [9, 18, 27, 36]
    assert list(y) == pytest.approx([120, 175, 240, 300])


def test_with_nothing_read_the_scale_begins_at_a_cold_stove(desk: Desk, plot: TrendPlot) -> None:
    bottom, top = plot._words.scale
    assert plot._words.band is not None
    assert bottom < 68, "a kitchen"
    assert plot._words.band.high < top < plot._words.band.high + 100
    desk.do(Kind.LIT)
    QApplication.processEvents()
    assert plot._words.scale == (bottom, top)


def test_the_shape_of_a_mark_tells_the_oven_from_any_other_place(stood_desk: Desk, plot: TrendPlot) -> None:
    plot.show_of_stove(True)
    assert plot._readings.oven.opts["symbol"] == "o"
    assert plot._readings.elsewhere.opts["symbol"] == "d"


def test_the_cooktop_is_shown_only_when_asked_for(stood_desk: Desk, plot: TrendPlot) -> None:
    assert len(plot._readings.elsewhere.data) == 0
    plot.show_of_stove(True)
    assert len(plot._readings.elsewhere.data) == 4


def test_a_doubted_reading_is_struck_and_widens_no_scale(fired_desk: Desk, plot: TrendPlot, clock: HeldClock) -> None:
    clock.pass_minutes(2)
    fired_desk.read("620", spot="oven_centre")
    stand(fired_desk)
    _, top = plot._words.scale
    assert top < 560
    _, y = plot._readings.strokes.getData()
    assert list(y) == pytest.approx([top], rel=0.03)
    assert 620 not in list(plot._readings.oven.getData()[1])


def test_the_fan_starts_now_and_its_middle_is_the_median(stood_desk: Desk, plot: TrendPlot) -> None:
    assert stood_desk.standing is not None
    x, y = plot._lines.ahead.middle.getData()
    assert x[0] == pytest.approx(36)
    futures = stood_desk.standing.projection.of("oven_centre")
    assert y[-1] == pytest.approx(degrees(float(np.median(futures[:, -1])), "F"))


def test_five_in_ten_lie_within_eight_in_ten(stood_desk: Desk, plot: TrendPlot) -> None:
    (p10, p90), (p25, p75) = (tuple(line.getData()[1] for line in pair) for pair in plot._lines.ahead.pairs)
    middle = plot._lines.ahead.middle.getData()[1]
    for lower, higher in ((p10, p25), (p25, middle), (middle, p75), (p75, p90)):
        assert (lower <= higher).all()
    futures = degrees(stood_desk.standing.projection.of("oven_centre"), "F") if stood_desk.standing else None
    assert np.mean((futures >= p10) & (futures <= p90)) == pytest.approx(0.8, abs=0.01)
    assert np.mean((futures >= p25) & (futures <= p75)) == pytest.approx(0.5, abs=0.01)


def test_the_past_is_what_is_known_now_and_a_switch_shows_what_was_believed(stood_desk: Desk, axis: TimeAxis) -> None:
    plot, standing = control(axis, "trend_plot", TrendPlot), stood_desk.standing
    assert standing is not None
    assert list(plot._lines.past.middle.getData()[1]) == pytest.approx(list(degrees(standing.trace.p50, "F")))
    assert len(plot._lines.then.middle.getData()[0]) == 0
    axis._believed.trigger()
    assert list(plot._lines.then.middle.getData()[1]) == pytest.approx(list(degrees(standing.believed.p50, "F")))


def test_the_band_is_drawn_where_it_was_chosen(plot: TrendPlot, desk: Desk, qtbot: QtBot) -> None:
    desk.choose_band("425-475")
    qtbot.waitUntil(lambda: plot._band.getRegion() == pytest.approx((425, 475)))


def test_a_step_is_drawn_beside_the_present_course_and_said(stood_desk: Desk, plot: TrendPlot) -> None:
    stood_desk.choose_action(Action(kind=ActionKind.WOOD, value=2.2))
    stand(stood_desk)
    assert len(plot._lines.other.middle.getData()[0]) > 10
    assert len(plot._lines.ahead.middle.getData()[0]) > 10
    assert plot._words.what_if.startswith("Two splits: ")


def test_numbers_switch_with_the_unit(stood_desk: Desk, plot: TrendPlot, qtbot: QtBot) -> None:
    stood_desk.set_unit("C")
    qtbot.waitUntil(lambda: plot._readings.oven.getData()[1][0] == pytest.approx(degrees(322.039, "C"), abs=0.01))
    assert plot._words.unit == "°C"


def test_an_old_session_is_seen_whole_with_nothing_ahead(stood_desk: Desk, plot: TrendPlot, clock: HeldClock) -> None:
    clock.pass_minutes(7 * 60)
    stood_desk.announce(Changed(standing=True))
    QApplication.processEvents()
    assert len(plot._lines.past.middle.getData()[0]) > 5
    assert len(plot._lines.ahead.middle.getData()[0]) == 0
    assert plot._words.oven_now is None
    assert plot._span.high < 60


def test_it_paints_by_night(stood_desk: Desk, plot: TrendPlot, look: Look) -> None:
    look.set_mode("night")
    assert plot._plot.backgroundBrush().color().name().upper() == look.theme.ground
    assert not plot.grab().isNull()
    look.set_mode("day")


def test_plot_items_are_kept_not_made_again(stood_desk: Desk, plot: TrendPlot) -> None:
    before = len(plot._plot.items())
    for unit in ("C", "F"):
        stood_desk.set_unit(unit)
        QApplication.processEvents()
    assert len(plot._plot.items()) == before


def test_a_hidden_axis_catches_up_when_it_is_shown(axis: TimeAxis, desk: Desk, qtbot: QtBot) -> None:
    plot = control(axis, "trend_plot", TrendPlot)
    axis.hide()
    desk.do(Kind.LIT)
    desk.read("200", spot="oven_centre")
    QApplication.processEvents()
    assert len(plot._readings.oven.data) == 0
    axis.show()
    assert len(plot._readings.oven.data) == 1


def test_fire_events_stand_in_the_lane(stood_desk: Desk, axis: TimeAxis) -> None:
    said = control(axis, "fire_lane", FireLane).accessibleName()
    assert said.startswith("Done to the fire: lit at ")
    assert "air open at " in said
    assert "two splits at " in said


@pytest.mark.parametrize("width", [500, 900, 1400])
def test_lines_and_words_share_one_axis(stood_desk: Desk, axis: TimeAxis, width: int) -> None:
    """Where the plotting library draws a moment is where the words, the clock and the lane below have it."""
    axis.resize(width, 600)
    QApplication.processEvents()
    plot = control(axis, "trend_plot", TrendPlot)
    for place in (10.0, 36.0, 90.0):
        drawn = plot._plot.getViewBox().mapViewToScene(pg_point(place, 300.0))
        ours = plot.spot_of(place, 300.0)
        assert drawn.x() + plot._plot.x() == pytest.approx(ours.x(), abs=1.0)
        assert drawn.y() == pytest.approx(ours.y(), abs=1.0)


def pg_point(x: float, y: float) -> object:
    import pyqtgraph as pg

    return pg.Point(x, y)


# --- the arrival ----------------------------------------------------------------------------------------------------


def show_arrival(desk: Desk, *, line: float | None, window: tuple[float | None, ...] = (20.0, 35.0, 60.0)) -> None:
    """Let the standing on the table have this arrival: minutes from now."""
    standing = desk.standing
    assert standing is not None
    enters = Quantiles(p10=window[0], p50=window[1], p90=window[2])
    band = replace(standing.outlook.band, enters_min=enters, line_enters_min=line)
    assert desk.show(replace(standing, outlook=replace(standing.outlook, band=band)))
    desk.announce(Changed(standing=True))
    QApplication.processEvents()


def test_the_ring_stands_where_the_drawn_middle_line_enters_the_band(stood_desk: Desk, plot: TrendPlot) -> None:
    low = degrees(stood_desk.band.low, "F")
    x, y = plot._lines.ahead.middle.getData()
    place = int(np.argmax(y >= low))
    assert place > 0
    enters = x[place - 1] + (low - y[place - 1]) / (y[place] - y[place - 1]) * (x[place] - x[place - 1])
    mark = plot._words.mark
    assert mark is not None
    assert mark.window is not None
    assert mark.window[1] == pytest.approx(enters, abs=0.01)
    assert mark.edge == pytest.approx(low)


def test_the_mark_says_the_moment_that_the_headline_says(stood_desk: Desk, plot: TrendPlot) -> None:
    show_arrival(stood_desk, line=42.0)
    mark, edge = plot._words.mark, stood_desk.edge
    assert mark is not None
    assert mark.words == f"likely {edge.clock(42.0)}"
    assert mark.words in plot.accessibleDescription()
    assert mark.more == f"between {edge.clock(20.0)} and {edge.clock(60.0)}"
    assert mark.window == pytest.approx((36 + 20, 36 + 42, 36 + 60))
    assert plot._span.likely == pytest.approx(36 + 42)


def test_a_line_that_never_enters_the_band_has_words_and_no_ring(stood_desk: Desk, plot: TrendPlot) -> None:
    show_arrival(stood_desk, line=None, window=(20.0, 35.0, None))  # half of the futures come, and no line
    mark = plot._words.mark
    assert mark is not None
    assert mark.window is None
    assert mark.words == f"may touch it {stood_desk.edge.clock(35.0)}"
    assert f"may touch bread heat about {stood_desk.edge.clock(35.0)}" in plot.accessibleDescription()
    show_arrival(stood_desk, line=None, window=(None, None, None))
    assert plot._words.mark is not None
    assert plot._words.mark.words == f"not likely by {stood_desk.edge.clock(180.0)}"
    assert plot._span.likely is None


def test_a_window_without_an_end_is_drawn_to_the_horizon(stood_desk: Desk, plot: TrendPlot) -> None:
    show_arrival(stood_desk, line=42.0, window=(20.0, 35.0, None))
    mark = plot._words.mark
    assert mark is not None
    assert mark.window is not None
    assert mark.window[2] == pytest.approx(36 + 180)
    assert mark.more == "perhaps much later"


def test_the_ring_slides_to_its_new_place(stood_desk: Desk, plot: TrendPlot, qtbot: QtBot) -> None:
    show_arrival(stood_desk, line=42.0)
    qtbot.waitUntil(lambda: plot._words._shown is not None and plot._words._shown[1] == pytest.approx(36 + 42))
    show_arrival(stood_desk, line=50.0)
    qtbot.waitUntil(lambda: plot._words._shown is not None and plot._words._shown[1] == pytest.approx(36 + 50))


@pytest.mark.parametrize("state", ["old", "first fires"])
def test_nothing_is_marked_of_an_old_session_or_while_first_fires_run(
    stood_desk: Desk, plot: TrendPlot, clock: HeldClock, state: str
) -> None:
    show_arrival(stood_desk, line=42.0)
    assert plot._words.mark is not None
    if state == "old":
        clock.pass_minutes(7 * 60)
    else:
        standing = stood_desk.standing
        assert standing is not None
        new = progress(replace(stood_desk.stove, is_new=True), ())
        assert stood_desk.show(replace(standing, first_fires=new))
    stood_desk.announce(Changed(standing=True))
    QApplication.processEvents()
    assert plot._words.mark is None
    assert plot._span.likely is None


# --- words keep clear -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("size", [(570, 560), (764, 600), (1200, 820)])
def test_words_stand_within_the_plot_and_clear_of_one_another(
    stood_desk: Desk, axis: TimeAxis, size: tuple[int, int]
) -> None:
    axis.resize(*size)
    stood_desk.choose_action(Action(kind=ActionKind.WOOD, value=2.2))
    stand(stood_desk)
    plot = control(axis, "trend_plot", TrendPlot)
    plot.grab()
    boxes = plot._words._room.taken
    assert len(boxes) >= 4
    assert not any(one.intersects(other) for one in boxes for other in boxes if one is not other)
    assert all(plot._words._plot_box().adjusted(-1, -1, 1, 1).contains(box) for box in boxes[1:])


@pytest.mark.parametrize("size", [(764, 600), (480, 420), (400, 420)])
def test_the_heat_of_the_oven_now_is_written_clear_of_its_line(
    stood_desk: Desk, axis: TimeAxis, size: tuple[int, int]
) -> None:
    axis.resize(*size)
    plot = control(axis, "trend_plot", TrendPlot)
    plot.grab()
    words = plot._words
    high = QFontMetricsF(font(NUMBER, 600)).capHeight() + px(10)
    [box] = [box for box in words._room.taken if box.height() == high]
    ends = [plot._span.minute(x, plot.width()) for x in np.linspace(box.left(), box.right(), 9)]
    for start, end in pairwise(ends):
        for low, top in plot._lines.middles(start, end):
            assert words.height_of(low) <= box.top() or words.height_of(top) >= box.bottom()


# --- moving and reading out -----------------------------------------------------------------------------------------


def test_the_wheel_moves_the_axis_and_a_key_returns_to_now(stood_desk: Desk, axis: TimeAxis, qtbot: QtBot) -> None:
    plot, back = control(axis, "trend_plot", TrendPlot), control(axis, "to_now", Key)
    before = plot._span.low
    assert not back.isVisible()
    plot._span.move(-30)
    assert plot._span.low == pytest.approx(before - 30)
    assert back.isVisible()
    qtbot.mouseClick(back, Qt.MouseButton.LeftButton)
    assert plot._span.low == pytest.approx(before)
    assert not back.isVisible()


def test_dragging_moves_what_is_seen(stood_desk: Desk, plot: TrendPlot, qtbot: QtBot) -> None:
    under = plot._span.minute(400, plot.width())
    qtbot.mousePress(plot, Qt.MouseButton.LeftButton, pos=QPoint(400, 60))
    qtbot.mouseMove(plot, QPoint(460, 60))
    plot.mouseMoveEvent(_moved(460, 60))
    qtbot.mouseRelease(plot, Qt.MouseButton.LeftButton, pos=QPoint(460, 60))
    assert plot._span.minute(460, plot.width()) == pytest.approx(under, abs=0.5)


def _moved(x: float, y: float) -> object:
    from PySide6.QtCore import QEvent, QPointF
    from PySide6.QtGui import QMouseEvent

    here, left = QPointF(x, y), Qt.MouseButton.LeftButton
    return QMouseEvent(QEvent.Type.MouseMove, here, here, left, left, Qt.KeyboardModifier.NoModifier)


def test_a_movement_paints_the_plot_once(stood_desk: Desk, axis: TimeAxis, plot: TrendPlot, qtbot: QtBot) -> None:
    class Paints(QObject):
        count = 0

        def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
            self.count += event.type() == QEvent.Type.Paint
            return False

    paints = Paints(axis)
    plot._plot.viewport().installEventFilter(paints)
    for moved in range(1, 4):
        axis.span.move(-7.0)
        qtbot.waitUntil(lambda moved=moved: paints.count >= moved)
        for _ in range(5):
            QApplication.processEvents()
    assert paints.count == 3


def test_the_view_stays_where_it_was_moved_until_the_next_entry(
    stood_desk: Desk, plot: TrendPlot, clock: HeldClock, qtbot: QtBot
) -> None:
    plot._span.move(-40)
    seen = plot._span.low
    stand(stood_desk)
    assert plot._span.low == seen
    clock.pass_minutes(3)
    stood_desk.read("310", spot="oven_centre")
    qtbot.waitUntil(lambda: plot._span.follows)


def test_a_double_click_follows_now_again(stood_desk: Desk, plot: TrendPlot, qtbot: QtBot) -> None:
    plot._span.move(-40)
    qtbot.mouseDClick(plot, Qt.MouseButton.LeftButton, pos=QPoint(300, 50))
    assert plot._span.follows


def test_arrow_keys_read_out_time_oven_and_chance(stood_desk: Desk, plot: TrendPlot, qtbot: QtBot) -> None:
    said: list[str] = []
    plot.pointed.connect(said.append)
    plot.setFocus()
    for _ in range(9):
        qtbot.keyClick(plot, Qt.Key.Key_Right)
    standing = stood_desk.standing
    assert standing is not None
    futures = degrees(standing.projection.of("oven_centre")[:, 9], "F")
    band = degrees(np.array([stood_desk.band.low, stood_desk.band.high]), "F")
    share = np.mean((futures >= band[0]) & (futures <= band[1]))
    assert said[-1].startswith(f"{stood_desk.edge.clock(45.0)}  oven about {np.median(futures):.0f}, ")
    assert f" {round(10 * share)} in 10" in said[-1] or "under 1 in 10" in said[-1]
    qtbot.keyClick(plot, Qt.Key.Key_Escape)
    assert said[-1] == ""


def test_of_the_past_it_reads_out_what_is_known_and_no_chance(stood_desk: Desk, plot: TrendPlot, qtbot: QtBot) -> None:
    plot.setFocus()
    for _ in range(3):
        qtbot.keyClick(plot, Qt.Key.Key_Left)
    assert plot._words.pointed is not None
    assert plot._words.pointed.words.startswith(f"{stood_desk.edge.clock(-15.0)}  oven about ")
    assert "in 10" not in plot._words.pointed.words


def test_values_are_copied_as_a_table(stood_desk: Desk, axis: TimeAxis) -> None:
    axis.copy_values()
    head, *rows = QApplication.clipboard().text().splitlines()
    assert head.split("\t") == ["clock", "spot", "what", "p10 °F", "p50 °F", "p90 °F"]
    assert {row.split("\t")[2] for row in rows} == {"known", "projected"}
    standing = stood_desk.standing
    assert standing is not None
    last = float(rows[-1].split("\t")[4])
    assert last == pytest.approx(degrees(float(np.median(standing.projection.of("oven_centre")[:, -1])), "F"), abs=0.06)
