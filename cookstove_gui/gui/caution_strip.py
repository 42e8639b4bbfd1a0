"""The cautions that are due, in full words and with a sign, the most urgent first."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from cookstove_gui.cooking.cautions import Caution
from cookstove_gui.desk import Changed
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.theme import STEP


class CautionStrip(QFrame):
    """The most urgent caution first; Ctrl+W shows the next one, and round again."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._cautions: tuple[Caution, ...] = ()
        self._shown = 0
        self.setObjectName("caution_strip")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self._words = QLabel()
        self._words.setObjectName("caution")
        self._words.setProperty("role", "caution")
        self._words.setWordWrap(True)
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._more = QPushButton()
        self._more.setObjectName("caution_more")
        self._more.setAutoDefault(False)
        self._more.setToolTip("The next caution (Ctrl+W)")
        self._more.clicked.connect(self._turn)
        QShortcut(QKeySequence("Ctrl+W"), self).activated.connect(self._turn)
        row = QHBoxLayout(self)
        row.setContentsMargins(2 * STEP, 0, 2 * STEP, 0)
        row.setSpacing(2 * STEP)
        row.addWidget(self._words, 1)
        row.addWidget(self._more, 0, Qt.AlignmentFlag.AlignTop)
        link.changed.connect(self._show)
        self._show_cautions()

    def _show(self, changed: Changed) -> None:
        if changed.standing or changed.session or changed.stove:
            self._show_cautions()

    def _show_cautions(self) -> None:
        standing = self._desk.standing
        cautions = standing.cautions if standing else ()
        if [caution.key for caution in cautions] != [caution.key for caution in self._cautions]:
            self._shown = 0
        self._cautions = cautions
        self._show_one()

    def _show_one(self) -> None:
        self.setVisible(bool(self._cautions))
        if not self._cautions:
            return
        caution = self._cautions[self._shown % len(self._cautions)]
        self._words.setText(f"⚠ {caution.title}. {caution.text}")
        self._more.setVisible(len(self._cautions) > 1)
        self._more.setText(f"{self._shown % len(self._cautions) + 1} of {len(self._cautions)}")
        self._more.setAccessibleName(f"Caution {self._more.text()}; show the next one")

    def _turn(self) -> None:
        self._shown += 1
        self._show_one()
