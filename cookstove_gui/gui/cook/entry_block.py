"""The entry block as it is laid out: the heading, the fields, and below them keys, a question or a choice."""

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLayout, QStackedWidget, QVBoxLayout, QWidget

from cookstove_gui.gui.cook.entry_heading import EntryHeading
from cookstove_gui.gui.cook.fire_panel import FirePanel
from cookstove_gui.gui.cook.number_field import NumberField
from cookstove_gui.gui.cook.pan_line import PanLine
from cookstove_gui.gui.cook.question_line import QuestionLine
from cookstove_gui.gui.cook.recent_rows import RecentRows
from cookstove_gui.gui.cook.when_field import WhenField
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.chooser import Chooser
from cookstove_gui.gui.widgets.key import RING, Key
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role

HIGH = 201  # of the block [px of the design]
_FIELD_HIGH, _WHEN_WIDE, _ENTER_WIDE = 56, 92, 96
_APART = 2  # px, between its rows


class EntryBlock(QWidget):
    """Its parts, and their places; what they do is said elsewhere."""

    question_shown = Signal()

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.heading = EntryHeading()
        self.number = NumberField()
        self.unit = Key()
        self.unit.setObjectName("unit")
        set_role(self.unit, "unit")
        self.unit.setToolTip("The other unit of temperature (Ctrl+U)")
        self.when = WhenField()
        self.enter = Key("Enter", high=_FIELD_HIGH)
        self.enter.setObjectName("enter")
        set_role(self.enter, "main")
        self.enter.setAccessibleName("Record the number and light up the next spot")
        self.enter.setToolTip("Record the number and light up the next spot (Enter)")
        self.fire = FirePanel(self)
        self.question = QuestionLine()
        self.chooser_when = WhenField("chooser_when")
        self.pan_line = PanLine()
        self.chooser = Chooser(_after_at(self.chooser_when), self.pan_line)
        self._below = QStackedWidget()
        for part in (self.fire, self.question):
            self._below.addWidget(part)
        self._stack = QStackedWidget(self)
        for page in (self._entry(), self.chooser):
            self._stack.addWidget(page)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._stack)
        self.rows = RecentRows(link, self)
        self._size()

    def _entry(self) -> QWidget:
        made = QWidget()
        fields = QHBoxLayout()
        fields.setContentsMargins(RING, 0, 0, 0)
        fields.setSpacing(STEP // 2)
        fields.addWidget(self.number, 1)
        for part in (self.unit, _after_at(self.when), self.enter):
            fields.addWidget(part)
        self.heading.setContentsMargins(RING, 0, RING, 0)
        column = QVBoxLayout(made)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(_APART)
        column.addWidget(self.heading)
        column.addLayout(fields)
        column.addStretch(1)
        column.addWidget(self._below)
        return made

    def show_question(self, wanted: bool) -> None:
        """The question in the place of the fire keys, or the keys."""
        self._below.setCurrentWidget(self.question if wanted else self.fire)
        self._set_height()
        if wanted:
            self.question_shown.emit()

    def show_chooser(self, wanted: bool) -> None:
        """A choice in the place of the block, or the block."""
        self._stack.setCurrentIndex(1 if wanted else 0)
        self._set_height()
        if wanted:
            self.rows.hide()
            self.chooser.take_focus()

    def open_rows(self) -> None:
        """The list of entries over the fire keys, and as far up as six rows need."""
        room = self.parentWidget()
        if room is not None and self.rows.parentWidget() is not room:
            self.rows.setParent(room)
        self._place_rows()
        self.rows.open()

    def take_focus(self) -> None:
        """Give the keyboard to the number field, or to the choice in its place."""
        if self._stack.currentIndex():
            self.chooser.take_focus()
            return
        self.rows.hide()
        self.number.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def take_when(self) -> None:
        """Give the keyboard to the field for “when”, in the block or in the choice."""
        field = self.chooser_when if self._stack.currentIndex() else self.when
        field.setFocus(Qt.FocusReason.ShortcutFocusReason)
        field.selectAll()

    def changeEvent(self, event: QEvent) -> None:
        """Keep the sizes of the design when its step changes."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.StyleChange:
            self._size()

    def _set_height(self) -> None:
        """That of the design; a choice whose caution, or a question that, needs more room takes it."""
        needed = 0
        if self._stack.currentIndex() and (layout := self.chooser.layout()) is not None:
            needed = layout.totalHeightForWidth(self.width())
        elif self._below.currentWidget() is self.question and (layout := self.question.layout()) is not None:
            above = self.heading.sizeHint().height() + px(_FIELD_HIGH) + 3 * _APART
            needed = above + layout.totalHeightForWidth(self.width())
        self.setFixedHeight(max(px(HIGH), needed))

    def _size(self) -> None:
        for part in (self.fire, self.question, self.chooser):  # those hidden would keep the widths of before
            if (layout := part.layout()) is not None:
                _measure_again(layout)
        self._set_height()
        self.number.setFixedHeight(px(_FIELD_HIGH))
        self.enter.setMinimumWidth(px(_ENTER_WIDE) + 2 * RING)
        for field in (self.when, self.chooser_when):
            field.setFixedWidth(px(_WHEN_WIDE))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the list in its place, and the words of a choice whole at another width."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._set_height()
        self._place_rows()

    def _place_rows(self) -> None:
        room = self.rows.parentWidget() or self
        foot = self.rect().bottomLeft() if room is self else self.mapTo(room, self.rect().bottomLeft())
        top = max(foot.y() + 1 - self.rows.sizeHint().height(), 0)
        self.rows.setGeometry(foot.x(), top, self.width(), foot.y() + 1 - top)


def _measure_again(layout: QLayout) -> None:
    layout.invalidate()
    for place in range(layout.count()):
        item = layout.itemAt(place)
        if item is not None and (inner := item.layout()) is not None:
            _measure_again(inner)


def _after_at(field: WhenField) -> QWidget:
    made = QWidget()
    label = QLabel("at")
    set_role(label, "soft")
    label.setBuddy(field)
    row = QHBoxLayout(made)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(STEP // 2)
    row.addWidget(label)
    row.addWidget(field)
    return made
