"""“Good for” under the plot: heading with its two views, the rows, and what this fire will not do."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QLabel, QListWidgetItem, QSizePolicy, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.good_rows import GoodRow, good_for, want_heat_of
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.time_axis.first_fires import FirstFiresPane
from cookstove_gui.gui.time_axis.good_list import ROW, GoodList, names_width
from cookstove_gui.gui.time_axis.span import TimeSpan
from cookstove_gui.gui.time_axis.stem import paint_now, paint_stem
from cookstove_gui.gui.widgets.key import Word
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.gui.widgets.type import font, set_role
from cookstove_gui.phrases.good_for import more_words, not_words

HEADING, LAST = 44, 26  # px of the design
_SMALL = 18
_LEAST_ROWS, _USUAL_ROWS = 1, 6
_LEAST_PLOT, _TALL_PLOT = 200, 300  # px of the design: rows come first, then the plot, then more rows


class GoodFor(QWidget):
    """Rows that share the plot's time; while nothing can be said of food, why, or the first fires."""

    task_marked = Signal(str)  # key of the task whose row is chosen; empty for none
    by_spot_wanted = Signal(bool)
    pan_wanted = Signal(object)  # GoodRow
    rows_shown = Signal()

    def __init__(self, link: DeskLink, look: Look, span: TimeSpan, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._look, self._span = link.desk, look, span
        self._count = _USUAL_ROWS
        self._is_first = False  # first fires run
        self._before_pan: str | None = None  # key of the row that was chosen before a pan was asked for
        self.setObjectName("good_for")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._heading = QLabel("Good for", self)
        set_role(self._heading, "strong")
        self._by_task, self._by_spot = Word("by task", "", self), Word("by spot", "", self)
        self._group = QButtonGroup(self)
        for word, name in ((self._by_task, "good_by_task"), (self._by_spot, "good_by_spot")):
            word.setObjectName(name)
            word.setCheckable(True)
            word.setAccessibleName(f"Good for, {word.text()}")
            self._group.addButton(word)
        self._by_task.setChecked(True)
        self._group.buttonClicked.connect(self._switch)
        self.list = GoodList(span, look, self)
        self.list.marked.connect(self._mark)
        self.list.itemActivated.connect(self._take)
        self.list.verticalScrollBar().valueChanged.connect(lambda _place: self._show_more())
        self._not, self._more = QLabel("", self), QLabel("", self)
        self._rungs: tuple[str, ...] = ("",)
        for label, name in ((self._not, "good_for_not"), (self._more, "good_for_more")):
            label.setObjectName(name)
            label.setTextFormat(Qt.TextFormat.PlainText)
            set_role(label, "soft")
        self._more.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._more.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._why = QLabel("", self)
        self._why.setObjectName("good_for_why")
        self._why.setWordWrap(True)
        self._why.setAlignment(Qt.AlignmentFlag.AlignTop)
        set_role(self._why, "soft")
        self._keys: tuple[QWidget, ...] = ()
        self._stages = FirstFiresPane(link, look, self)
        self._manual = QLabel("the stove’s manual goes first", self)
        set_role(self._manual, "place")
        span.moved.connect(self.place_parts)
        look.changed.connect(self.place_parts)
        self.show_rows()

    def wanted_height(self, room: float) -> int:
        """How high it wants to be where plot and rows have so much room together [px]."""
        head, row = px(HEADING) + px(LAST), px(ROW)
        if not self._stages.isHidden():
            return min(max(px(HEADING) + self._stages.wanted_height(), round(room) - px(_TALL_PLOT)), round(room))
        if not self.list.count() and not self._desk.is_live:
            return head + row  # one line of words, and no rows will come
        usual = min((room - head - px(_LEAST_PLOT)) // row, _USUAL_ROWS)
        count = max(usual, (room - head - px(_TALL_PLOT)) // row, _LEAST_ROWS)
        if self.list.count():
            count = min(count, max(self.list.count(), _LEAST_ROWS))
        self._count = int(count)
        return head + self._count * row

    def show_rows(self) -> None:
        """Show what the desk says now."""
        found = good_for(self._desk, by_spot=self._by_spot.isChecked())
        standing, desk = self._desk.standing, self._desk
        is_first = desk.is_live and standing is not None and standing.first_fires.next is not None
        self._stages.setVisible(is_first)
        self._heading.setText("First fires" if is_first else "Good for")
        self._is_first = is_first
        for part in (self._by_task, self._by_spot, self.list, self._not, self._more):
            part.setVisible(found is not None)
        self._why.setVisible(found is None and not is_first)
        self._why.setText(_why_nothing(desk))
        self.list.show_rows(found.rows if found else ())
        self._rungs = not_words(found.not_now, is_out=found.is_out) if found else ("",)
        self._not.setToolTip(plain_tip(self._rungs[0]))
        self._not.setAccessibleName(self._rungs[0])
        self._show_more()
        self.place_parts()
        self.rows_shown.emit()

    def put_keys(self, *keys: QWidget) -> None:
        """Keys of the whole axis, at the right end of the heading; the last one outermost."""
        self._keys = keys[::-1]
        for key in keys:
            key.setParent(self)
        self.place_parts()

    def take_focus(self) -> None:
        """Give the keyboard to the rows, with one chosen."""
        self.list.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def choose_spot(self, name: str) -> None:
        """Choose the first row that may be done on a spot."""
        row = next((one for one in self.list.rows() if one.spots[:1] == (name,)), None)
        row = row or next((one for one in self.list.rows() if name in one.spots), None)
        self.list.choose(row.key if row else "")

    def choose_pan(self, wanted: bool) -> GoodRow | None:
        """While a pan is put on, a row of the cooktop is chosen: the cook's, else the first; then what was before."""
        before = self.list.chosen()
        if not wanted:
            if self._before_pan is not None:
                self.list.choose(self._before_pan)
            self._before_pan = None
            return None
        if before is not None and not before.is_oven:
            return before
        row = next((one for one in self.list.rows() if not one.is_oven), None)
        if row is not None:
            self._before_pan = before.key if before else ""
            self.list.choose(row.key)
        return row

    def _show_more(self) -> None:
        shown = max(self.list.height() // px(ROW), 1)
        left = self.list.count() - shown - self.list.verticalScrollBar().value()
        size = QFontMetricsF(font(_SMALL))
        self._more.setText(more_words(left))
        room = self.width() - size.horizontalAdvance(self._more.text()) - px(16)
        fitting = (rung for rung in self._rungs if size.horizontalAdvance(rung) <= room)
        self._not.setText(next(fitting, self._rungs[-1]))

    def _switch(self) -> None:
        self.show_rows()
        self.by_spot_wanted.emit(self._by_spot.isChecked())

    def _mark(self, row: GoodRow | None) -> None:
        self.task_marked.emit(row.task if row else "")

    def _take(self, item: QListWidgetItem) -> None:
        row = self.list.chosen()
        if row is not None and item.isSelected() and not want_heat_of(self._desk, row.task):
            self.pan_wanted.emit(row)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay it out along the axis."""
        super().resizeEvent(event)
        self.place_parts()

    def place_parts(self) -> None:
        """Lay everything out along the axis."""
        width, head, last, row = self.width(), px(HEADING), px(LAST), px(ROW)
        self._heading.setGeometry(0, 0, self._heading.sizeHint().width(), head)
        beside = self._heading.width() + px(14)
        self._manual.setGeometry(beside, 0, self._manual.sizeHint().width(), head)
        words = (self._by_task, self._by_spot)
        wide = sum(word.sizeHint().width() for word in words) + px(4)
        left = max(round(names_width(width)) - px(10) - wide, self._heading.width() + px(8))
        for word in words:
            size = word.sizeHint()
            word.setGeometry(left, (head - size.height()) // 2, size.width(), size.height())
            left += size.width() + px(4)
        right = width
        for key in self._keys:
            if not key.isHidden():
                size = key.sizeHint()
                right -= size.width()
                key.setGeometry(right, (head - size.height()) // 2, size.width(), size.height())
        self._manual.setVisible(self._is_first and beside + self._manual.width() <= right)
        rows = max((self.height() - head - last) // row, _LEAST_ROWS)
        self.list.setGeometry(0, head, width, rows * row)
        below = head + rows * row
        for label in (self._not, self._more):
            label.setFont(font(_SMALL))
        self._not.setGeometry(0, below, width, last)
        self._more.setGeometry(0, below, width, last)
        self._why.setGeometry(0, head, width, self.height() - head)
        self._stages.setGeometry(0, head, width, self.height() - head)
        self._show_more()
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Now and the stem run through the heading to the rows."""
        if self.list.isHidden() or self._by_spot.geometry().right() > names_width(self.width()):
            return  # nothing to run to, or no room beside the words
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint_stem(painter, self._span, self._look.theme, self.width(), px(HEADING))
        paint_now(painter, self._span, self._look.theme, self.width(), px(HEADING))
        painter.end()


def _why_nothing(desk: Desk) -> str:
    """What stands in the list's place."""
    if not desk.is_live:
        return "This session is over; there is no fire left to cook on."
    if desk.standing is None and desk.entries:
        return "Working out what the fire is good for."
    return "After the first readings you see here what the fire is good for."
