"""The plot: the oven, or the spots for a pan, as it was and may be; what was read, the heat wanted, the arrival."""

import math

import pyqtgraph as pg
from PySide6.QtCore import QEvent, QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.first_fire_course import FirstFireCourse, first_fire_course
from cookstove_gui.desk.cook.good_rows import GoodRow
from cookstove_gui.desk.cook.oven_at import curve_said, oven_at, step_outcome
from cookstove_gui.desk.cook.pan_course import PanCourse, course_said, pan_course, spots_at
from cookstove_gui.desk.heading import shown_headline
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.time_axis.plot_lines import PlotLines
from cookstove_gui.gui.time_axis.plot_records import BandWords, Pointed
from cookstove_gui.gui.time_axis.plot_said import limits_of, oven_now, shown_mark, spot_now, spots_now
from cookstove_gui.gui.time_axis.plot_words import PlotWords
from cookstove_gui.gui.time_axis.reading_marks import ReadingMarks
from cookstove_gui.gui.time_axis.span import AXIS_WIDTH, TimeSpan
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.phrases.edge import heat_name
from cookstove_gui.phrases.plot import pointed_at
from cookstove_gui.stove.stove import USUAL_ROOM, SpotKind
from cookstove_gui.units import degrees

_ROOM = 0.09  # of the scale, left free above and below
_TICK_STEPS = (10, 20, 50, 100, 200)
_TICK_APART = 34  # [px of the design]
_STEP_MIN, _FAR_MIN = 5.0, 30.0  # of the arrow keys, and with Shift
_WHEEL_MIN = 15.0  # for a notch


class TrendPlot(QWidget):
    """Draws what the desk knows of the oven over the stretch of time that is seen; wheel and drag move that stretch."""

    pointed = Signal(str)  # what stands where the pointer or the arrow keys are; empty for nowhere

    def __init__(self, link: DeskLink, look: Look, span: TimeSpan, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk: Desk = link.desk
        self._look, self._span = look, span
        self._of_stove, self._as_believed = False, False
        self.pan: tuple[GoodRow | None, str] = (None, "")  # for which a spot is sought, and the spot marked
        self._course: PanCourse | None = None  # of its spots
        self._held: float | None = None  # where a drag began [px]
        self.setObjectName("trend_plot")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self._build()
        self._dress()
        look.changed.connect(self._dress)
        span.moved.connect(self.show_range)

    def _build(self) -> None:
        self._plot = pg.PlotWidget(parent=self)
        self._plot.setObjectName("trend_view")
        self._plot.setMenuEnabled(False)
        self._plot.hideButtons()
        self._plot.setMouseEnabled(x=False, y=False)
        self._plot.setAntialiasing(True)
        self._plot.setFrameShape(self._plot.Shape.NoFrame)
        self._plot.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._plot.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._plot.hideAxis("left")
        self._plot.hideAxis("bottom")
        self._plot.getPlotItem().layout.setContentsMargins(0, 0, 0, 0)
        self._plot.centralWidget.layout.setContentsMargins(0, 0, 0, 0)
        self._band = pg.LinearRegionItem(orientation="horizontal", movable=False)
        self._band.setZValue(0)
        self._plot.addItem(self._band)
        self._lines = PlotLines(self._plot, self._span)
        self._readings = ReadingMarks(self._plot, 5)
        self._words = PlotWords(self._span, self._look, self._lines.middles, self._lines.fans, self)

    def _dress(self) -> None:
        theme = self._look.theme
        self._plot.setBackground(theme.ground)
        self._band.setBrush(pg.mkBrush(colour(theme.band)))
        for line in self._band.lines:
            line.setPen(pg.mkPen(theme.verdigris, width=1.2))
        self._lines.dress(theme)
        self._place_parts()
        self.show_everything()

    # --- what it shows -------------------------------------------------------------------------------------------

    def show_of_stove(self, wanted: bool) -> None:
        """Show the readings of the whole stove, or of the oven alone."""
        self._of_stove = wanted
        self.show_everything()

    def show_as_believed(self, wanted: bool) -> None:
        """Show besides what was believed at each moment."""
        self._as_believed = wanted
        self.show_everything()

    def show_pan(self, row: GoodRow | None, spot: str = "") -> None:
        """Show the best spots for the task of a row, the one marked first, or the oven."""
        if (row, spot) != self.pan:
            self.point_at(None)
        self.pan = (row, spot)
        self.show_everything()

    def show_everything(self) -> None:
        """Draw what the desk knows now."""
        first = first_fire_course(self._desk)
        row, spot = self.pan
        self._course = pan_course(self._desk, row, spot) if row is not None and first is None else None
        self._show_readings(first)
        if self._course is not None:
            self._lines.show_spots(self._desk, self._course)
        else:
            self._lines.show(self._desk, first, as_believed=self._as_believed)
        self._show_words(first)
        self.show_range()

    def show_log(self) -> None:
        """Draw what was read, at once; the lines follow with the standing."""
        self._show_readings(first_fire_course(self._desk))
        self.show_range()

    def _show_readings(self, first: FirstFireCourse | None) -> None:
        standing = self._desk.standing
        kinds = {SpotKind.TOP} if first else {SpotKind.OVEN}
        if self._of_stove:
            kinds = set(SpotKind) - {SpotKind.ROOM, SpotKind.WALL}
        centre, beside = first.spot if first else self._desk.stove.oven_spot, ""
        if self._course is not None:
            kinds = set()
            centre, beside = (*(one.spot for one in self._course.spots), "")[:2]
        self._readings.show(
            self._desk.entries,
            self._desk.stove,
            self._look.theme,
            unit=self._desk.unit,
            place=self._span.place,
            doubted={row.number for row in standing.doubted} if standing else (),
            of=kinds,
            centre=centre,
            beside=beside,
        )

    def _show_words(self, first: FirstFireCourse | None) -> None:
        desk, words, course = self._desk, self._words, self._course
        unit, band = desk.unit, course.band if course else desk.band
        low, high = float(degrees(band.low, unit)), float(degrees(band.high, unit))
        words.unit = f"°{unit}"
        words.band = None if first else BandWords(low=low, high=high, name=band.name if course else heat_name(band))
        words.limits = limits_of(desk, first) if first else ()
        words.oven_now = oven_now(desk) if first is None else spot_now(desk, first) if first.ahead else None
        if course is not None:
            words.oven_now = None
        words.spots_now = spots_now(course) if course else ()
        self._band.setVisible(first is None)
        words.show_mark(None if course else shown_mark(desk, self._span))
        words.what_if = "" if course else step_outcome(desk)
        self._band.setRegion((low, high))
        about = " and ".join(one.name for one in course.spots) if course else "oven"
        self.setAccessibleName(f"The {about} over time")
        said = course_said(desk, course) if course else curve_said(desk)
        self.setAccessibleDescription(f"{said} {shown_headline(desk)}".strip())

    # --- where it shows it ---------------------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay the words over the plot."""
        super().resizeEvent(event)
        self._place_parts()
        self.show_range()

    def _place_parts(self) -> None:
        left = px(AXIS_WIDTH)
        self._plot.setGeometry(left, 0, max(self.width() - left, 1), self.height())
        self._words.setGeometry(0, 0, self.width(), self.height())

    def show_range(self) -> None:
        """See the stretch of time that the span names, and every heat in it."""
        span, band = self._span, self._words.band
        heats = [limit.value for limit in self._words.limits] + ([band.low, band.high] if band else [])
        known = [*self._lines.extent(), *self._readings.heats()]
        heats += known or [float(degrees(USUAL_ROOM, self._desk.unit))]  # nothing known: the way from a cold stove
        low, high = min(heats), max(heats)
        room = _ROOM * (high - low) + 6.0
        low, high = low - room, high + room
        self._words.scale = (low, high)
        self._words.ticks = _ticks(low, high, self.height() / px(_TICK_APART))
        self._readings.strike(low, high)
        self._words.marked = self._readings.spots()
        self._plot.setRange(xRange=(span.low, span.high), yRange=(low, high), padding=0, update=False)
        self._plot.scene().prepareForPaint()  # else items move while they are painted, and are painted a second time
        self._words.update()

    # --- pointing and moving ---------------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of the time axis."""
        self._held = event.position().x()
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag the axis, or read out what is under the pointer."""
        x, span = event.position().x(), self._span
        if self._held is not None and event.buttons() & Qt.MouseButton.LeftButton:
            moved = span.minute(self._held, self.width()) - span.minute(x, self.width())
            self._held = x
            span.move(moved)
        self.point_at(span.minute(x, self.width()) if x >= px(AXIS_WIDTH) else None)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go of it."""
        self._held = None
        super().mouseReleaseEvent(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Follow now again."""
        super().mouseDoubleClickEvent(event)
        self._span.return_to_now()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """A notch is a quarter of an hour; up looks back."""
        turned = event.angleDelta().y() or event.angleDelta().x()
        self._span.move(-_WHEEL_MIN * turned / 120.0)
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is pointed at any more."""
        super().leaveEvent(event)
        self.point_at(None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and Right read out along the axis, with Shift faster; Home goes back to now, Esc stops reading out."""
        step = _FAR_MIN if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else _STEP_MIN
        here = self._words.pointed.place if self._words.pointed else self._span.now
        if event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right) and here is not None:
            there = here + (step if event.key() == Qt.Key.Key_Right else -step)
            if not self._span.low <= there <= self._span.high:
                self._span.move(there - here)
            self.point_at(there)
        elif event.key() == Qt.Key.Key_Home:
            self._span.return_to_now()
            self.point_at(self._span.now)
        elif event.key() == Qt.Key.Key_Escape and self._words.pointed is not None:
            self.point_at(None)
        else:
            super().keyPressEvent(event)

    def point_at(self, place: float | None) -> None:
        """Read out the oven, or the spots for a pan, at a place on the axis; none for nowhere."""
        pointed = self._pointed_spots(place) if self._course is not None else self._pointed_oven(place)
        if pointed != self._words.pointed:
            self._words.pointed = pointed
            self._words.update()
            self.pointed.emit(pointed.words if pointed else "")

    def _pointed_spots(self, place: float | None) -> Pointed | None:
        course = self._course
        found = None if place is None or course is None else spots_at(self._desk, course, self._span.at(place))
        if found is None or place is None:
            return None
        return Pointed(place=place, value=float(degrees(found[0], self._desk.unit)), words=found[1])

    def _pointed_oven(self, place: float | None) -> Pointed | None:
        span, desk = self._span, self._desk
        found = None if place is None or span.anchor is None or not self._words.band else oven_at(desk, span.at(place))
        if found is None or place is None:
            return None
        words = pointed_at(desk.edge.at(found.at), found.p10, found.p50, found.p90, found.in_band, desk.band, desk.edge)
        return Pointed(place=place, value=float(degrees(found.p50, desk.unit)), words=words)

    def spot_of(self, place: float, value: float) -> QPointF:
        """Where a value at a place is drawn, in this widget [px]."""
        return QPointF(self._span.x(place, self.width()), self._words.height_of(value))


def _ticks(low: float, high: float, most: float) -> tuple[float, ...]:
    """Round heats between two ends, at most so many."""
    step = next((one for one in _TICK_STEPS if (high - low) / one <= max(most, 1.0)), _TICK_STEPS[-1])
    first = math.ceil(low / step)
    return tuple(float(step * number) for number in range(first, math.floor(high / step) + 1))
