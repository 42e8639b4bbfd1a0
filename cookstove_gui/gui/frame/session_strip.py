"""Warns that the open session is an old one, so that nobody takes its heat for the stove's heat now."""

from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role


class SessionStrip(QFrame):
    """Shown only while an old session is open; a button starts a new one."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("session_strip")
        set_role(self, "strip")
        self._words = QLabel()
        self._words.setObjectName("session_words")
        self._words.setWordWrap(True)
        begin = Key("New session")
        begin.setObjectName("new_session")
        begin.setAccessibleName("Close the old session and start a new one")
        begin.setToolTip(begin.accessibleName())
        begin.setAutoDefault(False)
        begin.clicked.connect(lambda: self._desk.start_session())
        row = QHBoxLayout(self)
        row.setContentsMargins(2 * STEP, STEP // 2, 2 * STEP, STEP // 2)
        row.setSpacing(2 * STEP)
        row.addWidget(self._words, 1)
        row.addWidget(begin)
        link.changed.connect(self._show)
        link.time_passed.connect(self._show_session)
        self._show_session()

    def _show(self, changed: Changed) -> None:
        if changed.session or changed.log or changed.stove:
            self._show_session()

    def _show_session(self) -> None:
        """Show it for an old session, hide it for a live one."""
        session = self._desk.session
        self.setVisible(session is not None and not self._desk.is_live)
        if session is not None:
            self._words.setText(
                f"This is an old session, “{session.title}”, as it ended. The next number you type starts a new one."
            )
