"""The practice controls: a sample session played as if live, at the chosen pace."""

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QButtonGroup, QFrame, QHBoxLayout, QLabel, QWidget

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.practice import Practice
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.theme import SOFT, STEP
from cookstove_gui.gui.widgets.type import set_role

PACES = ((0.0, "Pause"), (1.0, "1 ×"), (20.0, "20 ×"), (60.0, "60 ×"), (240.0, "240 ×"))
_HIGH = 40  # of its keys [px of the design]
_TURN_MS = 250
_TURNS_PER_TICK = 6  # the outlook is worked out every second and a half


class PracticeBar(QFrame):
    """Plays each row when its time comes, and says that the cook's own logbook is not touched."""

    ticked = Signal()
    ended = Signal()  # the cook wants to leave it

    def __init__(self, desk: Desk, practice: Practice, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._practice = practice
        self._turns = 0
        self.setObjectName("practice_bar")
        set_role(self, "strip")
        what = QLabel("Practice, invented.")
        what.setTextFormat(Qt.TextFormat.PlainText)
        set_role(what, "strong")
        self._words = OneLine(colour=SOFT)
        self._words.setObjectName("practice_words")
        row = QHBoxLayout(self)
        row.setContentsMargins(2 * STEP, 0, STEP, 0)
        row.setSpacing(STEP)
        row.addWidget(what)
        row.addWidget(self._words, 1)
        group = QButtonGroup(self)
        for pace, text in PACES:
            button = Key(text, high=_HIGH)
            set_role(button, "quiet")
            button.setObjectName(f"pace_{pace:.0f}")
            button.setCheckable(True)
            button.setAutoDefault(False)
            button.setChecked(pace == practice.clock.pace)
            button.setAccessibleName("Pause" if pace == 0 else f"Play at {pace:.0f} times real speed")
            button.setToolTip(button.accessibleName())
            button.clicked.connect(lambda _checked=False, wanted=pace: practice.clock.set_pace(wanted))
            group.addButton(button)
            row.addWidget(button)
        end = Key("End", high=_HIGH)
        end.setObjectName("practice_end")
        end.setAccessibleName("Leave practice; nothing of it is kept")
        end.setToolTip(end.accessibleName())
        end.clicked.connect(self.ended)
        row.addWidget(end)
        self._timer = QTimer(self)
        self._timer.setInterval(_TURN_MS)
        self._timer.timeout.connect(self.play)
        self._timer.start()
        self._show_words()

    def stop(self) -> None:
        """Enter nothing any more."""
        self._timer.stop()

    def play(self) -> None:
        """Enter what is due."""
        due = self._practice.due()
        if due:
            self._desk.play(due)
            self._show_words()
        self._turns += 1
        if due or (self._practice.clock.pace and self._turns % _TURNS_PER_TICK == 0):
            self.ticked.emit()

    def _show_words(self) -> None:
        kept = "Your logbook is left alone."
        over = f"It has ended; carry on by hand. {kept}"
        self._words.show_rungs((over, "It has ended.") if self._practice.is_over else (kept, ""))
