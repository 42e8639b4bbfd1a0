"""Keys in one row: those that do not fit go into a list behind the last key, so that a row never breaks."""

from collections.abc import Sequence

from PySide6.QtCore import QSize
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QMenu, QSizePolicy, QWidget

from cookstove_gui.gui.widgets.key import Key


class KeyRow(QWidget):
    """Shows its keys from the left as far as there is room; a chosen one always among them."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._keys: tuple[Key, ...] = ()
        self._more = Key("…", parent=self)
        self._more.setObjectName("more_steps")
        self._more.setAccessibleName("More steps")
        self._more.setToolTip("More steps")
        self._more.clicked.connect(self._open)
        self._more.hide()
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)

    def show_keys(self, keys: Sequence[Key]) -> None:
        """Other keys; those before are let go."""
        for old in self._keys:
            old.hide()
            old.deleteLater()
        self._keys = tuple(keys)
        for key in self._keys:
            key.setParent(self)
            key.toggled.connect(self.arrange)
        self.updateGeometry()
        self.arrange()

    def sizeHint(self) -> QSize:
        """All keys side by side."""
        wide = sum(key.sizeHint().width() for key in self._keys)
        return QSize(wide, self._more.sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        """The first key and the one that has the others."""
        first = self._keys[0].sizeHint().width() if self._keys else 0
        return QSize(first + self._more.sizeHint().width(), self._more.sizeHint().height())

    def arrange(self) -> None:
        """Place what fits, from the right end of the row."""
        widths = {key: key.sizeHint().width() for key in self._keys}
        shown = list(self._keys)
        if sum(widths.values()) > self.width():
            room = self.width() - self._more.sizeHint().width()
            order = sorted(self._keys, key=lambda key: (key is not self._keys[0], not key.isChecked()))
            shown = []
            for key in order:
                if sum(widths[one] for one in shown) + widths[key] <= room:
                    shown.append(key)
        placed = [key for key in self._keys if key in shown]
        if len(placed) < len(self._keys):
            placed.append(self._more)
        left = self.width() - sum(key.sizeHint().width() for key in placed)
        for key in (*self._keys, self._more):
            key.setVisible(key in placed)
        for key in placed:
            size = key.sizeHint()
            key.setGeometry(left, 0, size.width(), size.height())
            left += size.width()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width, other keys."""
        super().resizeEvent(event)
        self.arrange()

    def showEvent(self, event: QShowEvent) -> None:
        """The type is known now."""
        super().showEvent(event)
        self.arrange()

    def _open(self) -> None:
        menu = QMenu(self)
        for key in self._keys:
            if not key.isVisible():
                menu.addAction(key.text()).triggered.connect(lambda _checked=False, key=key: key.click())
        menu.popup(self._more.mapToGlobal(self._more.rect().bottomLeft()))
