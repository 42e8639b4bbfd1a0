"""The Cook page: the drawn stove with the entry below it at the left; the heat wanted, the plot and what fits right."""

from dataclasses import replace
from itertools import pairwise

from PySide6.QtCore import QSize, Qt, QTimer
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.desk.cook.first_fire_course import limit_said
from cookstove_gui.desk.first_start import begin, is_first_start
from cookstove_gui.gui.cook.band_picker import BandPicker
from cookstove_gui.gui.cook.entry_panel import EntryPanel
from cookstove_gui.gui.cook.first_start import FirstStart
from cookstove_gui.gui.cook.what_if import WhatIf
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove.stove_drawing import StoveDrawing
from cookstove_gui.gui.time_axis.time_axis import TimeAxis
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.sections import scrolling
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.waiver import Waiver, waive_key

# Width of the left column [px] for the width of the page; between them in proportion.
_LEFT = ((1000, 394), (1024, 400), (1280, 456), (1920, 640), (2560, 850))
_MOST_LEFT = 0.5  # of the page
_ROOMY = 520  # of the right column, from which on its upper row has captions [px of the design]
# Height of what stands below the heading, which a lower window scrolls [px of the design]; with large text it is more,
# so that the words on the stove can be read.
_LEAST_HIGH, _LARGE_TEXT_HIGH = 440, 500
_NO_LIMIT = (1 << 24) - 1  # px, Qt's own
_SIDE, _BELOW, _GUTTER, _ABOVE_ENTRY = 16, 7, 28, 10  # px of the design


class CookPage(QWidget):
    """One arrangement at every size."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._link = link
        self._look = look
        self._is_for_pan = False  # it is asked where a pan goes
        self._pan_spot = ""  # where it may go, of those to choose among
        self.setObjectName("cook_page")
        self._build()
        self._drawing.spot_chosen.connect(self._entry.light)
        self._drawing.spot_chosen.connect(self._axis.good_for.choose_spot)
        self._axis.good_for.task_marked.connect(self._show_task)
        self._axis.good_for.pan_wanted.connect(self._entry.ask_pan)
        self._entry.pan_asked.connect(self._show_pan)
        self._entry.spot_marked.connect(self._mark_spot)
        self._axis.good_for.rows_shown.connect(self._see_rows)
        self._entry.question_shown.connect(lambda: QTimer.singleShot(0, self, self._see_question))
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._show_task)
        look.changed.connect(self._space)
        link.changed.connect(self._show_right)
        self._space()
        self._show_right()

    def _build(self) -> None:
        self._drawing = StoveDrawing(self._link, self._look)
        self._entry = EntryPanel(self._link)
        self._what_if = WhatIf(self._link)
        self._left = QWidget()
        self._left_column = QVBoxLayout(self._left)
        self._left_column.setContentsMargins(0, 0, 0, 0)
        self._left_column.addWidget(self._drawing, 1)
        self._left_column.addWidget(self._entry)
        self._wanted = QHBoxLayout()
        self._band = BandPicker(self._link)
        self._limit = OneLine(weight=600)  # while first fires run, in the place of the heat wanted
        self._limit.setObjectName("first_fire_limit")
        self._waive, self._waiver = waive_key("cook_waive"), Waiver()
        self._waive.clicked.connect(self._ask_waiver)
        self._waiver.answered.connect(self._answer_waiver)
        self._wanted.addWidget(self._limit, 1)
        self._wanted.addWidget(self._waive)
        self._wanted.addWidget(self._band, 0, Qt.AlignmentFlag.AlignTop)
        self._wanted.addWidget(self._what_if, 1, Qt.AlignmentFlag.AlignTop)
        self._axis = TimeAxis(self._link, self._look)
        self._right = QWidget()
        self._right_column = QVBoxLayout(self._right)
        self._right_column.setContentsMargins(0, 0, 0, 0)
        self._right_column.addLayout(self._wanted)
        self._right_column.addWidget(self._waiver)
        self._right_column.addWidget(self._axis, 1)
        self.first_start = FirstStart(self._look)
        self.first_start.chosen.connect(self._begin)
        self._inside = _Inside(self._look, self._left, self.first_start)
        self._area = scrolling(self._inside)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._area)
        self._columns = QHBoxLayout(self._inside)
        self._columns.addWidget(self._left)
        self._columns.addWidget(self._right, 1)
        self._columns.addWidget(self.first_start, 1)

    def bring_plot(self) -> None:
        """Load the plotting library and draw with it; called once, after the first paint."""
        self._axis.bring_plot()

    @property
    def has_plot(self) -> bool:
        """Whether the plot has been loaded."""
        return self._axis.has_plot

    def take_focus(self) -> None:
        """Give the keyboard to the number field; at the very first start to the ways to begin."""
        if is_first_start(self._link.desk):
            self.first_start.take_focus()
        else:
            self._entry.take_focus()

    def open_entries(self) -> None:
        """The list of entries, for whoever has no keyboard at hand."""
        self._entry.open_entries()

    def ask_walk(self) -> None:
        """Where the lit spot is read on the walk, likewise."""
        self._entry.ask_walk()

    def redo(self) -> None:
        """Take back the latest undo, likewise."""
        self._entry.redo()

    def _show_right(self) -> None:
        first, at = is_first_start(self._link.desk), QApplication.focusWidget()
        leaves = not first and at is not None and self.first_start.isAncestorOf(at)
        self.first_start.setVisible(first)
        self._right.setVisible(not first)
        self._columns.setAlignment(self._left, Qt.AlignmentFlag.AlignTop if first else Qt.AlignmentFlag(0))
        self._set_left()
        limit = limit_said(self._link.desk)
        self._limit.show_rungs(limit)
        self._limit.setVisible(bool(limit))
        if not limit:
            self._waiver.hide()
        self._waive.setVisible(bool(limit) and self._waiver.isHidden())
        for part in (self._band, self._what_if):
            part.setVisible(not limit)
        if leaves:
            self.take_focus()  # the keyboard is not left on what is no longer seen

    def _ask_waiver(self) -> None:
        self._waive.hide()
        self._waiver.ask()

    def _answer_waiver(self, waived: bool) -> None:
        if waived:
            self._link.desk.save_stove(replace(self._link.desk.stove, first_fires_waived=True))
        self._waive.setVisible(not waived)
        self.take_focus()

    def _begin(self, way: str) -> None:
        if way == "light":
            begin(self._link.desk)
            self._show_right()
            self._entry.take_focus()

    def minimumSizeHint(self) -> QSize:
        """It makes do with any window that the program allows."""
        return QSize(0, 0)

    def _show_task(self, *_event: object) -> None:
        """The stove shows which spots fit the task of a row: while the rows have the keyboard, or a pan is put on."""
        self._see_focus()
        rows = self._axis.good_for.list
        row = rows.chosen() if rows.hasFocus() or self._is_for_pan else None
        self._drawing.show_task(row.task if row is not None else "", self._pan_spot)
        self._axis.show_pan(self._is_for_pan, self._pan_spot)

    def _mark_spot(self, spot: str) -> None:
        if self._is_for_pan and spot != self._pan_spot:
            self._pan_spot = spot
            self._show_task()

    def _show_pan(self, wanted: bool) -> None:
        if wanted == self._is_for_pan:
            return
        self._is_for_pan, self._pan_spot = wanted, ""
        if wanted:
            self._choose_pan()
        else:
            self._axis.good_for.choose_pan(False)
        self._show_task()

    def _choose_pan(self) -> None:
        row = self._axis.good_for.choose_pan(True)
        if row is not None:
            self._entry.suggest_pan(row)

    def _see_rows(self) -> None:
        """A pan may be asked for before it is known what it may be good for."""
        if self._is_for_pan and self._axis.good_for.list.chosen() is None:
            self._choose_pan()
            self._show_task()

    def _see_focus(self) -> None:
        """Scroll to what has the keyboard."""
        at = QApplication.focusWidget()
        if at is not None and self._inside.isAncestorOf(at) and self._area.verticalScrollBar().maximum() > 0:
            self._area.ensureWidgetVisible(at, 0, px(8))

    def _see_question(self) -> None:
        self._area.ensureWidgetVisible(self._entry.question, 0, px(8))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The left column goes with the width; what has the keyboard stays in sight."""
        super().resizeEvent(event)
        self._set_left()
        QTimer.singleShot(0, self, self._settle)

    def _settle(self) -> None:
        """Once all parts know the size of type that came with the width."""
        self._set_left()
        self._see_focus()

    def _set_left(self) -> None:
        wanted = max(left_width(self.width()), self._entry.minimumSizeHint().width())
        left = min(wanted, round(_MOST_LEFT * self.width()))
        self._left.setFixedWidth(left)
        tight = self.width() - left - px(2 * _SIDE + _GUTTER) < px(_ROOMY)
        self._band.set_tight(tight)
        self._what_if.set_tight(tight)
        if self.first_start.isHidden():
            self._left.setMinimumHeight(0)
            self._left.setMaximumHeight(_NO_LIMIT)
        else:  # the ways to begin may be longer: the page scrolls them, and the stove stays as high as it always is
            self._left.setFixedHeight(max(self._inside.least, self._area.height()) - px(_BELOW))

    def _space(self) -> None:
        self._columns.setContentsMargins(px(_SIDE), 0, px(_SIDE), px(_BELOW))
        self._columns.setSpacing(px(_GUTTER))
        self._left_column.setSpacing(px(_ABOVE_ENTRY))
        self._right_column.setSpacing(px(8))
        self._wanted.setSpacing(px(16))
        self._set_left()


class _Inside(QWidget):
    """What stands on the page; lower than this it is scrolled, higher it makes do with the room there is."""

    def __init__(self, look: Look, left: QWidget, first: FirstStart) -> None:
        super().__init__()
        self._look, self._left, self._first = look, left, first

    @property
    def least(self) -> int:
        """The height at which all that is there in a session can be read [px]."""
        return px(_LARGE_TEXT_HIGH if self._look.text_size > 1.0 else _LEAST_HIGH)

    def heightForWidth(self, width: int) -> int:
        """No more than the least, whatever its parts ask for; only the ways to begin are shown whole."""
        if self._first.isHidden():
            return self.least
        beside = self._left.width() + px(2 * _SIDE + _GUTTER)
        return max(self.least, self._first.heightForWidth(width - beside) + px(_BELOW))

    def minimumSizeHint(self) -> QSize:
        """The same, before there is a width."""
        return QSize(0, self.least)


def left_width(width: int) -> int:
    """Width of the column of the stove for the width of a page [px]."""
    for (narrow, less), (wide, more) in pairwise(_LEFT):
        if width <= wide or wide == _LEFT[-1][0]:
            return round(less + (more - less) * (width - narrow) / (wide - narrow))
    return _LEFT[-1][1]
