"""Warns that the open session is an old one, and asks about a new one that would begin on a stove still warm."""

from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.key import Key, named_key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.phrases.warm_start import still_warm_words


class SessionStrip(QFrame):
    """Shown while an old session is open, with a key for a new one, and while a new one is asked about."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("session_strip")
        set_role(self, "strip")
        self._words = QLabel()
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._words.setObjectName("session_words")
        self._words.setWordWrap(True)
        self._begin = self._key("New session", "new_session", "Close the old session and start a new one")
        self._begin.clicked.connect(self._desk.ask_new_session)
        self._answers = (
            self._key("Carry it on", "warm_carry_on", "Go on with that session"),
            self._key("New, still warm", "warm_new", "Start a new session from the heat that is left"),
            self._key("It was cold", "warm_cold", "Start a new session on a cold stove"),
            self._key("Leave it", "warm_leave", "Start no new session"),
        )
        acts = (self._desk.carry_on, self._desk.start_warm, self._desk.start_session, self._desk.leave_warm_start)
        for key, act in zip(self._answers, acts, strict=True):
            key.clicked.connect(lambda _checked=False, act=act: act())
        row = QHBoxLayout(self)
        row.setContentsMargins(2 * STEP, STEP // 2, 2 * STEP, STEP // 2)
        row.setSpacing(STEP)
        row.addWidget(self._words, 1)
        for key in (self._begin, *self._answers):
            row.addWidget(key)
        link.changed.connect(self._show)
        link.time_passed.connect(self._show_session)
        self._show_session()

    def _show(self, changed: Changed) -> None:
        if changed.session or changed.log or changed.stove:
            self._show_session()

    def _show_session(self) -> None:
        """Show it for an old session and while something is asked, hide it for a live one."""
        session, warm = self._desk.session, self._desk.warm_start
        was_asking = self._answers[0].isVisibleTo(self)
        self._begin.setVisible(warm is None)
        for key in self._answers:
            key.setVisible(warm is not None)
        self.setVisible(warm is not None or (session is not None and not self._desk.is_live))
        if warm is not None:
            edge = replace(self._desk.edge, now=self._desk.clock())
            self._words.setText(still_warm_words(warm.session.title, warm.last_at, warm.heat, edge))
            if not was_asking:
                self._answers[0].setFocus(Qt.FocusReason.OtherFocusReason)
        elif session is not None:
            self._words.setText(
                f"This is an old session, “{session.title}”, as it ended. The next number you type starts a new one."
            )

    @staticmethod
    def _key(text: str, name: str, tip: str) -> Key:
        return named_key(text, name, tip, said=tip)
