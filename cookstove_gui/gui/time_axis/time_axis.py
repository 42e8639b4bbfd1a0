"""Plot, clock, fire lane and rows on one time axis; the plotting library is brought in after the first paint."""

from PySide6.QtGui import QGuiApplication, QKeySequence, QResizeEvent, QShortcut, QShowEvent
from PySide6.QtWidgets import QMenu, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.desk.cook.axis_values import values_text
from cookstove_gui.desk.cook.band_mark import arrival_to_come
from cookstove_gui.desk.cook.good_rows import GoodRow
from cookstove_gui.desk.cook.lane import lane_rows
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.time_axis.clock_strip import ClockStrip
from cookstove_gui.gui.time_axis.fire_lane import FireLane, LaneMark
from cookstove_gui.gui.time_axis.good_for import GoodFor
from cookstove_gui.gui.time_axis.span import TimeSpan
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.saving import save_picture
from cookstove_gui.gui.widgets.steps import px

_LEAST_PLOT = 120  # [px of the design]


class TimeAxis(QWidget):
    """Everything that stands on the clock."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._link, self._look = link, look
        self._desk: Desk = link.desk
        self._stale, self._was_live = True, True
        self._is_for_pan, self._pan_spot = False, ""  # it is asked where a pan goes; the spot marked for it
        self.span = TimeSpan(self)
        self.setObjectName("time_axis")
        self._build()
        link.changed.connect(self._show)
        link.time_passed.connect(self._see_whether_over)
        look.changed.connect(self._dress)
        self._show_everything()

    def _build(self) -> None:
        self._plot_place = QWidget()
        self._plot_place.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self._plot_box = QVBoxLayout(self._plot_place)
        self._plot_box.setContentsMargins(0, 0, 0, 0)
        self._clock = ClockStrip(self.span, self._look)
        self._lane = FireLane(self.span, self._look)
        self.good_for = GoodFor(self._link, self._look, self.span)
        self.good_for.by_spot_wanted.connect(self.show_of_stove)
        self._to_now = Key("To now", "Home")
        self._to_now.setObjectName("to_now")
        self._to_now.setAccessibleName("Back to now")
        self._to_now.setToolTip("The axis was moved; go back to now (Home on the plot, or a double click)")
        self._to_now.clicked.connect(self.span.return_to_now)
        self._more = Key("More", "Ctrl I")
        self._more.setObjectName("plot_more")
        self._more.setAccessibleName("More of the plot")
        self._more.setToolTip("What was believed then, readings of the whole stove, save or copy (Ctrl+I)")
        self._more.clicked.connect(self._open_menu)
        QShortcut(QKeySequence("Ctrl+I"), self).activated.connect(self._more.click)
        QShortcut(QKeySequence("Ctrl+G"), self).activated.connect(self.good_for.take_focus)
        self._menu = QMenu(self)
        self._menu.setObjectName("plot_menu")
        self._believed = self._menu.addAction("What was believed then")
        self._of_stove = self._menu.addAction("Readings of the whole stove")
        for action in (self._believed, self._of_stove):
            action.setCheckable(True)
        self._menu.addSeparator()
        self._menu.addAction("Copy the values").triggered.connect(self.copy_values)
        self._menu.addAction("Save a picture …").triggered.connect(lambda: save_picture(self, "oven"))
        self.good_for.put_keys(self._to_now, self._more)
        self.span.followed.connect(self._show_way_back)
        self._to_now.hide()
        self._more.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._plot_place, 1)
        column.addWidget(self._clock)
        column.addWidget(self._lane)
        column.addWidget(self.good_for)
        self._dress()

    def _dress(self) -> None:
        self._plot_place.setMinimumHeight(px(_LEAST_PLOT))
        self._share_height()

    def _share_height(self) -> None:
        """Rows first, then the plot, then more rows."""
        room = self.height() - self._clock.height() - self._lane.height()
        self.good_for.setFixedHeight(max(self.good_for.wanted_height(room), 0))

    def bring_plot(self) -> None:
        """Load the plotting library and draw with it; called once, after the first paint."""
        from cookstove_gui.gui.time_axis.trend_plot import TrendPlot

        plot = TrendPlot(self._link, self._look, self.span)
        self._plot_box.addWidget(plot)
        self._plot = plot
        self._believed.toggled.connect(plot.show_as_believed)
        self._of_stove.toggled.connect(plot.show_of_stove)
        plot.show_of_stove(self._of_stove.isChecked())
        self._more.show()
        self.good_for.place_parts()
        plot.show_pan(self._pan_row, self._pan_spot)

    @property
    def has_plot(self) -> bool:
        """Whether the plot has been loaded."""
        return self._plot_box.count() > 0

    def show_of_stove(self, wanted: bool) -> None:
        """Plot the readings of the whole stove, or of the oven alone."""
        self._of_stove.setChecked(wanted)

    def show_pan(self, wanted: bool, spot: str = "") -> None:
        """Plot the best spots for the task of the chosen row, the one marked among them, or the oven."""
        self._is_for_pan, self._pan_spot = wanted, spot
        if self.has_plot and self._plot.pan != (self._pan_row, spot):
            self._plot.show_pan(self._pan_row, spot)

    @property
    def _pan_row(self) -> GoodRow | None:
        return self.good_for.list.chosen() if self._is_for_pan else None

    def copy_values(self) -> None:
        """Put the lines of the plot on the clipboard, as a table."""
        QGuiApplication.clipboard().setText(values_text(self._desk, self._pan_row, self._pan_spot))

    def _show_way_back(self, follows: bool) -> None:
        self._to_now.setVisible(not follows)
        self.good_for.place_parts()

    def _open_menu(self) -> None:
        self._menu.popup(self._more.mapToGlobal(self._more.rect().bottomLeft()))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A wider axis looks further ahead."""
        super().resizeEvent(event)
        self.span.set_width(self.width())
        self._share_height()

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with changes made while it was hidden."""
        super().showEvent(event)
        if self._stale:
            self._show_everything()

    def _show(self, changed: Changed) -> None:
        if not self.isVisible():
            self._stale = True
            return
        if changed.log and not self.span.follows:
            self.span.return_to_now()
        if any((changed.standing, changed.band, changed.session, changed.stove, changed.settings)):
            self._show_everything()
        elif changed.log:  # what follows from it is worked out elsewhere, and comes with the standing
            self._show_log()
            if self.has_plot:
                self._plot.show_log()

    def _see_whether_over(self) -> None:
        """Minutes alone end a session."""
        if self._was_live is not self._desk.is_live:
            self._show_everything()

    def _show_everything(self) -> None:
        self._stale, self._was_live = False, self._desk.is_live
        self._show_log()
        self.good_for.show_rows()
        self._share_height()
        if self.has_plot:
            self._plot.show_pan(self._pan_row, self._pan_spot)

    def _show_log(self) -> None:
        """The stretch of time, and what was done in it."""
        desk, entries, standing = self._desk, self._desk.entries, self._desk.standing
        now = standing.now if standing is not None else desk.clock() if desk.is_live else desk.edge.now
        arrival = arrival_to_come(desk)
        self.span.show_session(
            min(entries[0].at, now) if entries else now,
            now,
            offset_minutes=desk.offset_minutes,
            is_live=desk.is_live,
            arrival=arrival.likely if arrival else None,
        )
        self._lane.show_marks(
            tuple(
                LaneMark(
                    place=self.span.place(row.at), kind=row.kind, words=row.words, said=row.said,
                    opening=row.opening, count=row.count,
                )
                for row in lane_rows(desk)
            )
        )  # fmt: skip
