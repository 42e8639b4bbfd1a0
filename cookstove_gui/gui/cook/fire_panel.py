"""The fire keys, four in a row; a sentence of the desk stands in the place of the second row."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QStackedWidget, QVBoxLayout, QWidget

from cookstove_gui.gui.cook.fire_choices import KEYS, FireKey
from cookstove_gui.gui.widgets.key import RING, Key
from cookstove_gui.gui.widgets.type import set_role

_HIGH = 45  # of a key [px of the design]
_IN_ROW = 4


class FirePanel(QWidget):
    """Tells which key was pressed; the keys work wherever the keyboard is."""

    pressed = Signal(object)  # FireKey
    undo_pressed = Signal()

    def __init__(self, keys_on: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("fire_panel")
        made = [self._key(key, keys_on) for key in KEYS]
        undo = Key("Undo", "Ctrl Z", high=_HIGH)
        undo.setObjectName("undo")
        undo.setAccessibleName("Undo the latest thing done")
        undo.setToolTip("Undo the latest thing done, whatever it was (Ctrl+Z); Ctrl+Shift+Z brings it back")
        undo.clicked.connect(self.undo_pressed)
        made.append(undo)
        self._said = QLabel()
        self._said.setObjectName("answer")
        self._said.setWordWrap(True)
        self._said.setContentsMargins(RING, 0, RING, 0)
        self._said.setTextFormat(Qt.TextFormat.PlainText)
        self._said.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)
        self._second = QStackedWidget()
        self._second.addWidget(_row(made[_IN_ROW:]))
        self._second.addWidget(self._said)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(_row(made[:_IN_ROW]))
        column.addWidget(self._second)

    def _key(self, key: FireKey, keys_on: QWidget) -> Key:
        made = Key(key.word, key.key, high=_HIGH)
        made.setObjectName(f"fire_{key.kind}")
        made.setAccessibleName(key.what)
        made.setToolTip(f"{key.what} ({key.key})")
        made.clicked.connect(lambda: self.pressed.emit(key))
        # On the surrounding panel, because this one may be hidden while a question is open.
        QShortcut(QKeySequence(key.key), keys_on).activated.connect(lambda: self.pressed.emit(key))
        return made

    def say(self, sentence: str, role: str = "told") -> None:
        """Show a sentence in the place of the second row; an empty one gives the keys back."""
        self._said.setText(sentence)
        set_role(self._said, role)
        self._second.setCurrentIndex(1 if sentence else 0)


def _row(keys: list[Key]) -> QWidget:
    made = QWidget()
    row = QHBoxLayout(made)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(0)
    for key in keys:
        row.addWidget(key, 1)
    return made
