"""What fits: what is good now, what later and when, what not with this fire; by task or by spot."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import (
    QBoxLayout,
    QButtonGroup,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from cookstove_gui.cooking.fit.fit import FitState
from cookstove_gui.desk import Changed
from cookstove_gui.desk.cook.fit_rows import chances_now, fit_heading, rows_by_spot, rows_by_task, want_heat_of
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP, colour
from cookstove_gui.gui.widgets.type import set_role

_GROUPS = ((FitState.NOW, "good"), (FitState.LATER, "heading"), (FitState.NOT, "soft"))
_ANY = 16_777_215  # Qt's “no limit”
_WHERE = Qt.ItemDataRole.UserRole
_KEY = Qt.ItemDataRole.UserRole + 1
_BRIEF = Qt.ItemDataRole.UserRole + 2


class _TwoEnds(QStyledItemDelegate):
    """What on the left, where and when on the right."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Draw one line."""
        theme = self._look.theme
        box: QRect = option.rect
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(box, colour(theme.plate))
        inner = box.adjusted(4, 0, -4, 0)
        what, where = str(index.data(Qt.ItemDataRole.DisplayRole)), str(index.data(_WHERE) or "")
        size = option.fontMetrics
        room = inner.width() - size.horizontalAdvance(what) - 6
        painter.setFont(option.font)
        painter.setPen(colour(theme.ink))
        short = size.elidedText(what, Qt.TextElideMode.ElideRight, inner.width())
        painter.drawText(inner, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, short)
        painter.setPen(colour(theme.soft))
        if size.horizontalAdvance(where) > room:
            where = str(index.data(_BRIEF) or where)
        shown = size.elidedText(where, Qt.TextElideMode.ElideRight, room)
        painter.drawText(inner, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight, shown)

    def sizeHint(self, option: QStyleOptionViewItem, _index: QModelIndex | QPersistentModelIndex) -> QSize:
        """One line of type with a little air."""
        return QSize(120, option.fontMetrics.height() + 6)


class RecipeFit(QWidget):
    """Three lists, one below the other, or side by side where there is little height."""

    by_spot_wanted = Signal(bool)  # the plot then shows the whole stove

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._look = look
        self._by_spot = False
        self._lists: dict[FitState, QListWidget] = {}
        self._headings: dict[FitState, QLabel] = {}
        self.setObjectName("recipe_fit")
        self._build()
        link.changed.connect(self._show)
        look.changed.connect(self.update)
        self._show_fit()

    def _build(self) -> None:
        self._by_task_button, self._by_spot_button = Key("by task"), Key("by spot")
        group = QButtonGroup(self)
        self._switches = QWidget()
        switch_row = QHBoxLayout(self._switches)
        switch_row.setContentsMargins(0, 0, 0, 0)
        switch_row.setSpacing(STEP // 2)
        for button, name in ((self._by_task_button, "fit_by_task"), (self._by_spot_button, "fit_by_spot")):
            button.setObjectName(name)
            button.setCheckable(True)
            set_role(button, "fire")
            button.setAutoDefault(False)
            button.setAccessibleName(f"Show what fits {button.text()}")
            group.addButton(button)
            switch_row.addWidget(button, 1)
        self._by_task_button.setChecked(True)
        group.buttonClicked.connect(self._switch)
        self._groups = QBoxLayout(QBoxLayout.Direction.TopToBottom)
        self._groups.setSpacing(STEP)
        for state, role in _GROUPS:
            self._groups.addLayout(self._group(state, role), 1)
        self._told = QLabel()
        self._told.setTextFormat(Qt.TextFormat.PlainText)
        self._told.setObjectName("fit_told")
        set_role(self._told, "soft")
        self._told.setWordWrap(True)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(STEP)
        self._column.addWidget(self._switches)
        self._column.addLayout(self._groups, 1)
        self._column.addWidget(self._told)
        self._told.setAlignment(Qt.AlignmentFlag.AlignTop)

    def _group(self, state: FitState, role: str) -> QVBoxLayout:
        words = fit_heading(self._desk, (), state)
        heading = QLabel(words)
        set_role(heading, role)
        rows = QListWidget()
        rows.setObjectName(f"fit_{state.name.lower()}")
        rows.setAccessibleName(words)
        rows.setToolTip("Arrow keys show more about a task; Enter makes its oven heat the one wanted")
        rows.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        rows.setSizeAdjustPolicy(QListWidget.SizeAdjustPolicy.AdjustToContents)
        rows.setItemDelegate(_TwoEnds(self._look, rows))
        rows.currentItemChanged.connect(lambda item, _old: self._tell(item))
        rows.itemActivated.connect(self._ask_oven)
        self._lists[state], self._headings[state] = rows, heading
        column = QVBoxLayout()
        column.setSpacing(2)
        column.addWidget(heading)
        column.addWidget(rows, 1)
        self._last_group = column
        return column

    def set_side_by_side(self, wanted: bool) -> None:
        """Put the lists in a row instead of a column."""
        ways = QBoxLayout.Direction
        self._groups.setDirection(ways.LeftToRight if wanted else ways.TopToBottom)
        # Side by side leaves no row for the switches, so they go above the list that matters least.
        (self._last_group if wanted else self._column).insertWidget(0, self._switches)
        self._groups.setSpacing(2 * STEP if wanted else STEP)
        self._show_fit()

    def _show(self, changed: Changed) -> None:
        if changed.standing or changed.session or changed.stove:
            self._show_fit()

    def _show_fit(self) -> None:
        standing = self._desk.standing
        fits = standing.fits if standing and self._desk.entries else ()
        for place, (state, rows) in enumerate(self._lists.items()):
            found = (rows_by_spot if self._by_spot else rows_by_task)(self._desk, fits, state)
            rows.blockSignals(True)
            while rows.count() > len(found):
                rows.takeItem(rows.count() - 1)
            while rows.count() < len(found):
                rows.addItem(QListWidgetItem())
            for number, row in enumerate(found):
                item = rows.item(number)
                item.setText(row.what)
                item.setData(_WHERE, row.where)
                item.setData(_KEY, row.key)
                item.setData(_BRIEF, row.brief)
                item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{row.what}, {row.where}")
                item.setToolTip(f"{row.what}: {row.where}" if row.where else row.what)
            rows.blockSignals(False)
            self._give_room(place, rows, len(found))
        hidden = {*([FitState.NOT] if self._by_spot else []), *([] if self._desk.is_live else [FitState.LATER])}
        for state in self._lists:
            for part in (self._lists[state], self._headings[state]):
                part.setVisible(bool(fits) and state not in hidden)
            self._headings[state].setText(fit_heading(self._desk, fits, state))
        self._switches.setVisible(bool(fits))
        self._column.setStretchFactor(self._told, 0 if fits else 1)
        refused = any(fit.state is FitState.REFUSED for fit in fits)
        if not fits:
            self._told.setText("After the first readings you see here what the stove is good for.")
        elif refused:
            self._told.setText("A new stove's first fires come before food; see My stove (F3).")
        else:
            self._told.setText("")
        self._told.setVisible(bool(self._told.text()))

    def _give_room(self, place: int, rows: QListWidget, count: int) -> None:
        """Stacked, a list is as tall as its lines, and the last takes what is left."""
        line = rows.fontMetrics().height() + 6
        stacked = self._groups.direction() is QBoxLayout.Direction.TopToBottom
        last = place == len(_GROUPS) - 1
        rows.setMaximumHeight(_ANY if last or not stacked else count * line + 4)
        rows.setMinimumHeight(min(count, 3) * line + 4 if stacked else line)
        self._groups.setStretch(place, ((0, 0, 1) if stacked else (5, 6, 3))[place])

    def _switch(self) -> None:
        self._by_spot = self._by_spot_button.isChecked()
        self.by_spot_wanted.emit(self._by_spot)
        self._show_fit()

    def _tell(self, item: QListWidgetItem | None) -> None:
        """Say more about the marked line."""
        if item is None:
            return
        told = item.toolTip() if self._by_spot else chances_now(self._desk, str(item.data(_KEY)))
        if told:
            self._told.setText(told)
            self._told.show()

    def _ask_oven(self, item: QListWidgetItem) -> None:
        want_heat_of(self._desk, str(item.data(_KEY)))
