"""The cautions that are due: each in full until it has been read, then folded to its title."""

from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QSizePolicy, QWidget

from cookstove_gui.cooking.safety.cautions import Caution
from cookstove_gui.desk import Changed
from cookstove_gui.desk.heading import shown_cautions
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role


class CautionStrip(QFrame):
    """The most urgent unread caution first; Ctrl+W marks it as read, or shows them all again."""

    unfolded = Signal(bool)  # whether a caution is shown in full

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._read: set[str] = set()  # keys of the cautions that were read
        self.setObjectName("caution_strip")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self._words = QLabel()
        self._words.setObjectName("caution")
        set_role(self._words, "caution")
        self._words.setWordWrap(True)
        self._words.setTextFormat(Qt.TextFormat.RichText)
        self._press = Key()
        self._press.setObjectName("caution_press")
        self._press.setAutoDefault(False)
        self._press.clicked.connect(self._turn)
        QShortcut(QKeySequence("Ctrl+W"), self).activated.connect(self._turn)
        row = QHBoxLayout(self)
        row.setContentsMargins(2 * STEP, 0, 2 * STEP, 0)
        row.setSpacing(2 * STEP)
        row.addWidget(self._words, 1)
        row.addWidget(self._press, 0, Qt.AlignmentFlag.AlignTop)
        link.changed.connect(self._show)
        self._show_cautions()

    @property
    def _cautions(self) -> tuple[Caution, ...]:
        return shown_cautions(self._desk)

    def _show(self, changed: Changed) -> None:
        if changed.standing or changed.session or changed.stove:
            self._show_cautions()

    def _show_cautions(self) -> None:
        cautions = self._cautions
        self._read &= {caution.key for caution in cautions}  # one that comes back is shown again
        unread = [caution for caution in cautions if caution.key not in self._read]
        self.setVisible(bool(cautions))
        if unread:
            first = unread[0]
            self._words.setText(f"<b>⚠ {escape(first.title)}.</b> {escape(first.text)}")
            self._words.setAccessibleName(f"Caution: {first.title}. {first.text}")
            self._press.setText("Read Ctrl+W")
            self._press.setAccessibleName(f"I have read the caution {first.title}")
        else:
            titles = ", ".join(caution.title for caution in cautions)
            self._words.setText(f"<b>⚠ {escape(titles)}</b>")
            self._words.setAccessibleName(f"Cautions that still hold: {titles}")
            self._press.setText("Show Ctrl+W")
            self._press.setAccessibleName("Show the cautions in full again")
        self._press.setToolTip(f"{self._press.accessibleName()} (Ctrl+W)")
        self.unfolded.emit(bool(unread))

    def _turn(self) -> None:
        unread = next((caution.key for caution in self._cautions if caution.key not in self._read), None)
        if unread is None:
            self._read.clear()
        else:
            self._read.add(unread)
        self._show_cautions()
