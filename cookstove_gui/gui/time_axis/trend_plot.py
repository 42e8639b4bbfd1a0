"""The trend plot: readings, belief, target band, projection and arrival on one time axis, the fire lane below."""

from datetime import datetime, timedelta

import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtGui import QMouseEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.advice import Arrival, arrival_of
from cookstove_gui.desk import Changed, Standing
from cookstove_gui.desk.cook.oven_lines import oven_fan
from cookstove_gui.desk.heading import shown_headline
from cookstove_gui.forecast.answers import HORIZON_MINUTES, FloatArray, Projection
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.time_axis.arrival_mark import ArrivalMark
from cookstove_gui.gui.time_axis.clock_axis import clock_ticks
from cookstove_gui.gui.time_axis.fan import Fan
from cookstove_gui.gui.time_axis.fire_lane import FIRE_KINDS, FireLane, LaneMark
from cookstove_gui.gui.time_axis.reading_marks import ReadingMarks
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import SMALL, font
from cookstove_gui.phrases import cook
from cookstove_gui.phrases.advice import likely_words
from cookstove_gui.phrases.entries import entry_words
from cookstove_gui.phrases.figures import band_text
from cookstove_gui.units import degrees

_LOOK_BACK = 180.0  # min of a live session seen at once
_LEAST_AHEAD, _MOST_AHEAD = 75.0, 180.0  # min
_LABEL_WIDTH = 78  # pixels for one clock time
_AXIS_WIDTH = 58
_MOST_NAME_SHARE = 0.4  # of the plot's height for the band's name above the band
_TALL = 320  # pixels from which on the fire lane has two rows of words


class TrendPlot(QWidget):
    """Readings, belief and projection; the view follows the session until it is dragged."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._link = link
        self._desk = link.desk
        self._look = look
        self._anchor = self._desk.clock()
        self._shows_cooktop = False
        self._follows = True
        self._stale = True
        self.setObjectName("trend_plot")
        self.setAccessibleName("Trend of the oven")
        self._build()
        self._dress()
        link.changed.connect(self._show)
        look.changed.connect(self._dress)
        self._show_everything()

    def show_cooktop(self, wanted: bool) -> None:
        """Show the readings of the whole stove, or of the oven alone."""
        self._shows_cooktop = wanted
        self._show_everything()

    def _build(self) -> None:
        self._plot = pg.PlotWidget(parent=self)
        self._plot.setObjectName("trend_view")
        self._plot.setMenuEnabled(False)
        self._plot.hideButtons()
        self._plot.setMouseEnabled(x=True, y=False)
        self._plot.setAntialiasing(True)
        self._plot.setFrameShape(self._plot.Shape.NoFrame)
        self._plot.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._left, self._bottom = self._plot.getAxis("left"), self._plot.getAxis("bottom")
        self._left.setWidth(_AXIS_WIDTH)
        for axis in (self._left, self._bottom):
            axis.setStyle(tickFont=font(SMALL), tickLength=-5, autoExpandTextSpace=False, hideOverlappingLabels=True)
        self._left.enableAutoSIPrefix(False)
        self._bottom.setHeight(30)
        self._lane = FireLane(self._look, self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._plot, 1)
        column.addWidget(self._lane)

        self._band = pg.LinearRegionItem(orientation="horizontal", movable=False)
        self._band_name = pg.TextItem(anchor=(0, 1))
        self._past, self._ahead, self._other = (Fan(self._plot, depth) for depth in (1, 2, 3))
        self._other_name = pg.TextItem(anchor=(1, 0))
        self._now = pg.InfiniteLine(angle=90)
        self._readings = ReadingMarks(self._plot, 8)
        self._arrival = ArrivalMark(self._plot)
        marks = (self._now, self._band_name, self._other_name)
        for depth, item in enumerate((self._band, *marks)):
            item.setZValue(depth + 6 if depth else 0)
            self._plot.addItem(item)
        self._plot.getViewBox().sigRangeChangedManually.connect(lambda *_: self._follow(False))
        self._plot.getViewBox().sigXRangeChanged.connect(self._show_clock)
        self._plot.getViewBox().sigResized.connect(self._show_range)
        self._plot.getViewBox().sigResized.connect(self._show_clock)

    def _dress(self) -> None:
        theme = self._look.theme
        self._plot.setBackground(theme.ground)
        for axis in (self._left, self._bottom):
            axis.setPen(pg.mkPen(theme.faint))
            axis.setTextPen(pg.mkPen(theme.soft))
        self._band.setBrush(pg.mkBrush(colour(theme.verdigris, 34)))
        for line in self._band.lines:
            line.setPen(pg.mkPen(theme.verdigris, width=1))
        self._band_name.setColor(colour(theme.verdigris))
        self._band_name.setFont(font(SMALL))
        solid, dashed, dotted = Qt.PenStyle.SolidLine, Qt.PenStyle.DashLine, Qt.PenStyle.DotLine
        self._past.dress(theme.ink, style=solid, width=3, fill=60)
        self._ahead.dress(theme.ink, style=dashed, width=2.5, edge=dashed, fill=46)
        self._other.dress(theme.ember, style=dotted, width=2.5, edge=dotted)
        self._other_name.setColor(colour(theme.ember))
        self._other_name.setFont(font(SMALL))
        self._now.setPen(pg.mkPen(theme.soft, width=1))
        self._arrival.dress(theme)
        self._show_readings()

    def _show(self, changed: Changed) -> None:
        if not self.isVisible():
            self._stale = True
        elif changed.settings or changed.session or changed.stove:
            self._show_everything()
        else:
            self._follows = self._follows or changed.log
            if changed.log or changed.standing:
                self._show_readings()
            if changed.standing:
                self._show_standing()
            if changed.band or changed.standing:
                self._show_band()
            self._show_range()

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with changes made while it was hidden."""
        super().showEvent(event)
        if self._stale:
            self._show_everything()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the clock's labels apart, and the lane small where there is little height."""
        super().resizeEvent(event)
        self._lane.set_rows(2 if self.height() >= _TALL else 1)
        self._show_clock()

    def _show_everything(self) -> None:
        self._stale, self._follows = False, True
        entries = self._desk.entries
        self._anchor = entries[0].at if entries else self._desk.clock()
        self._show_readings()
        self._show_standing()
        self._show_band()
        self._show_range()
        self._show_clock()

    def _show_readings(self) -> None:
        entries, stove = self._desk.entries, self._desk.stove
        self._readings.show(
            entries,
            stove,
            self._look.theme,
            unit=self._desk.unit,
            place=self._place,
            doubted={asked.number for asked in self._desk.questions},
            with_cooktop=self._shows_cooktop,
        )
        self._lane.show_marks(
            tuple(
                LaneMark(self._place(entry.at), entry_words(entry, stove))
                for entry in entries
                if entry.kind in FIRE_KINDS
            )
        )

    def _show_standing(self) -> None:
        standing, unit = self._desk.standing, self._desk.unit
        if standing is None:
            self._past.clear()
            self._ahead.clear()
            self._show_alternative(None)
            self._now.hide()
            return
        trace = standing.trace
        past = [self._place(at) for at in trace.at]
        self._past.set(past, *(degrees(kelvin, unit) for kelvin in (trace.p10, trace.p50, trace.p90)))
        self._ahead.set(*self._fan(standing.projection))
        self.setAccessibleDescription(shown_headline(self._desk))
        self._show_alternative(standing)
        self._now.setPos(self._place(standing.now))
        self._now.show()

    def _show_alternative(self, standing: Standing | None) -> None:
        other = standing.alternative if standing else None
        self._other_name.setVisible(other is not None)
        if other is None:
            self._other.clear()
            return
        self._other.set(*self._fan(other.projection))
        self._other_name.setText(cook.action_words(other.action))

    def _fan(self, projection: Projection) -> tuple[FloatArray, FloatArray, FloatArray, FloatArray]:
        """Places on the axis, and the oven's fan in the unit shown."""
        fan, unit = oven_fan(projection, self._desk.stove.oven_spot), self._desk.unit
        low, middle, high = (degrees(line, unit) for line in (fan.p10, fan.p50, fan.p90))
        return fan.minutes + self._place(projection.now), low, middle, high

    def _show_band(self) -> None:
        band, unit, standing = self._desk.band, self._desk.unit, self._desk.standing
        self._band.setRegion((degrees(band.low, unit), degrees(band.high, unit)))
        self._band_name.setText(band_text(band, unit))
        arrival = self._arrival_to_come()
        if standing is None or arrival is None:
            self._arrival.hide()
            return
        latest = arrival.latest or standing.now + timedelta(minutes=HORIZON_MINUTES)
        self._arrival.show_window(
            likely_words(arrival, self._desk.edge),
            start=self._place(arrival.earliest),
            likely=self._place(arrival.likely),
            end=self._place(latest),
            low=degrees(band.low, unit),
            high=degrees(band.high, unit),
        )

    def _arrival_to_come(self) -> Arrival | None:
        """Where the line that is drawn will enter the band; none if it is there, and for a session that is over."""
        standing = self._desk.standing
        if standing is None or standing.band != self._desk.band or not self._desk.entries or not self._desk.is_live:
            return None
        if standing.first_fires.next is not None:  # nothing is baked before they are done
            return None
        found = arrival_of(standing.outlook)
        return found if found is not None and found.likely > standing.now else None

    def _follow(self, wanted: bool) -> None:
        """Keep now in sight, or leave the view where it was dragged until a double click or the next entry."""
        self._follows = wanted
        if wanted:
            self._show_range()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Follow the session again."""
        super().mouseDoubleClickEvent(event)
        self._follow(True)

    def _show_range(self) -> None:
        if not self._follows:
            return
        unit, band, standing = self._desk.unit, self._desk.band, self._desk.standing
        now = self._place(self._desk.clock() if standing is None else standing.now)
        start = max(now - _LOOK_BACK, 0.0) if self._desk.is_live else 0.0
        end = self._ahead_end()
        heats = [degrees(band.low, unit), degrees(band.high, unit)]
        heats += self._past.extent(start, end, middle_only=True)
        heats += self._ahead.extent(start, end) + self._other.extent(start, end)
        heats += self._readings.heats()
        low, high = min(heats), max(heats)
        room = 0.06 * (high - low) + 4
        self._plot.setXRange(start - 4, end, padding=0)
        bottom, top = low - room, self._above_name(low - room, high + 2 * room)
        self._plot.setYRange(bottom, top, padding=0)
        self._other_name.setPos(end, top)

    def _above_name(self, bottom: float, top: float) -> float:
        """The top of the scale, high enough to fit the band's name above the band."""
        height = max(float(self._plot.getViewBox().height()), 1.0)
        share = min(float(self._band_name.boundingRect().height()) / height, _MOST_NAME_SHARE)
        return max(top, (float(degrees(self._desk.band.high, self._desk.unit)) - share * bottom) / (1.0 - share))

    def _ahead_end(self) -> float:
        standing, arrival = self._desk.standing, self._arrival_to_come()
        now = self._place(self._desk.clock() if standing is None else standing.now)
        wanted = 0.0 if arrival is None else self._place(arrival.latest or arrival.likely) - now
        return now + min(max(wanted + 30.0, _LEAST_AHEAD), _MOST_AHEAD)

    def _show_clock(self) -> None:
        low, high = self._plot.getViewBox().viewRange()[0]
        room = max((self._plot.width() - _AXIS_WIDTH) // _LABEL_WIDTH, 1)
        self._bottom.setTicks([clock_ticks(self._anchor, self._desk.offset_minutes, low, high, room)])
        box = self._plot.getViewBox().sceneBoundingRect()
        self._lane.show_span((low, high), (box.left(), box.right()))
        self._band_name.setPos(low + (high - low) * 0.01, degrees(self._desk.band.high, self._desk.unit))

    def _place(self, at: datetime) -> float:
        """Minutes from the start of the time axis."""
        return (at - self._anchor).total_seconds() / 60
