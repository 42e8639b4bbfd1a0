"""A small chooser in place, never a dialog: a question, a few answers with a key each, perhaps a field."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QEnterEvent, QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.modest_field import ModestField
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role

_MOST_IN_ROW = 5
_IN_LONG_ROWS = 3
_LOW = 36  # of a key [px of the design]

_ARROWS = (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down)


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """One answer: the key that picks it, its word, and what it stands for."""

    key: str
    words: str
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """What is asked."""

    question: str
    answers: tuple[Answer, ...] = ()
    more: Mapping[str, str] = field(default_factory=dict)  # keys that pick without a button, and their values
    hint: str = ""  # in the field; empty where there is no field
    unit: str = ""  # behind the field
    field_name: str = ""  # for those who cannot see it
    first: str = ""  # a caution that is shown with it
    is_dated: bool = True  # what is answered has a clock
    says_more: bool = False  # the line below the answers is there


class _AnswerKey(Key):
    reached = Signal()  # by the keyboard
    pointed_at = Signal(bool)  # the pointer came, or went

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.reached.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in _ARROWS:  # the chooser knows what lies below an answer
            event.ignore()
        else:
            super().keyPressEvent(event)

    def enterEvent(self, event: QEnterEvent) -> None:
        super().enterEvent(event)
        self.pointed_at.emit(True)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self.pointed_at.emit(False)


class Chooser(QWidget):
    """Keys pick, arrows move, letters and Tab go to the field, Escape leaves."""

    chosen = Signal(str)  # the value of an answer
    typed = Signal(str)  # what stands in the field
    left = Signal()
    marked = Signal(str)  # the value of the answer that the keyboard or the pointer is at

    def __init__(
        self, beside: QWidget | None = None, below: QWidget | None = None, parent: QWidget | None = None
    ) -> None:
        """`beside` stands beside the question, `below` under the answers of a choice that says more."""
        super().__init__(parent)
        self.setObjectName("chooser")
        self._choice = Choice(question="")
        self._suggested = 0  # place of the answer that has the keyboard, first or again
        self._beside, self._below = beside, below
        self._columns = 1
        self._buttons: list[QPushButton] = []
        self._question = OneLine((22, 20, 18), 600)
        self._question.setObjectName("chooser_question")
        self._field = ModestField()
        self._field.setObjectName("chooser_field")
        self._field.returnPressed.connect(self._take_field)
        self._unit = _label("chooser_unit", "soft")
        self._enter = Key("Enter", high=_LOW)
        self._enter.setObjectName("chooser_enter")
        self._enter.setAccessibleName("Enter what stands in the field")
        self._enter.setToolTip("Enter what stands in the field (Enter)")
        set_role(self._enter, "main")
        self._enter.clicked.connect(self._take_field)
        self._cancel = Key("Esc", high=_LOW)
        self._cancel.setObjectName("chooser_cancel")
        self._cancel.setAccessibleName("Leave without entering anything")
        self._cancel.setToolTip("Leave without entering anything (Escape)")
        set_role(self._cancel, "quiet")
        self._cancel.clicked.connect(self.left)
        top = QHBoxLayout()
        top.setSpacing(STEP)
        top.addWidget(self._question, 1)
        if beside is not None:
            top.addWidget(beside)
        top.addWidget(self._cancel)
        self._grid = QGridLayout()
        self._grid.setSpacing(0)
        bottom = QHBoxLayout()
        bottom.setSpacing(STEP)
        bottom.addWidget(self._field, 1)
        bottom.addWidget(self._unit)
        bottom.addWidget(self._enter)
        self._first = _label("chooser_first", "small_caution")
        self._problem = _label("chooser_problem", "problem")
        for sentence in (self._first, self._problem):
            sentence.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(1)
        column.addLayout(top)
        column.addLayout(self._grid)
        column.addLayout(bottom)
        if below is not None:
            column.addWidget(below)
        column.addWidget(self._problem)
        column.addWidget(self._first)
        column.addStretch(1)

    def ask(self, choice: Choice) -> None:
        """Put a question."""
        self._choice, self._suggested = choice, 0
        self._question.show_rungs((choice.question,))
        if self._beside is not None:
            self._beside.setVisible(choice.is_dated)
        if self._below is not None:
            self._below.setVisible(choice.says_more)
        before = self._before()
        self._show_answers()
        chain = [before, *self._buttons, self._field, self._enter, self._cancel]
        for one, following in pairwise(chain):
            self.setTabOrder(one, following)
        self._field.clear()
        self._field.setPlaceholderText(choice.hint)
        self._field.setAccessibleName(choice.field_name or choice.question)
        self._unit.setText(choice.unit)
        for part in (self._field, self._unit, self._enter):
            part.setVisible(bool(choice.hint))
        self._first.setText(choice.first)
        self.refuse("")

    def suggest(self, rungs: Sequence[str], value: str) -> None:
        """Word the question otherwise, and give the keyboard to the answer that stands for a value, if it is there."""
        self._question.show_rungs(rungs)
        self._suggested = 0
        self.mark(value)

    def mark(self, value: str) -> bool:
        """Give the keyboard to the answer that stands for a value; whether there is one."""
        place = next((place for place, one in enumerate(self._choice.answers) if one.value == value), None)
        if place is not None:
            self._suggested = place
            self.take_focus()
        return place is not None

    def choose_marked(self) -> None:
        """As if the answer that the keyboard is or was at were pressed."""
        self.chosen.emit(self._choice.answers[self._suggested].value)

    def _before(self) -> QWidget:
        """What the keyboard comes from by Tab: the answers, made anew, take their place after it."""
        at: QWidget | None = self._field.previousInFocusChain()
        while at is not None and at is not self._field:
            if at not in self._buttons and at.focusPolicy() is not Qt.FocusPolicy.NoFocus:
                return at
            at = at.previousInFocusChain()
        return self._field

    def refuse(self, sentence: str) -> None:
        """Say why an answer was not taken; it stands in the place of the caution."""
        self._problem.setText(sentence)
        self._problem.setVisible(bool(sentence))
        self._first.setVisible(bool(self._choice.first) and not sentence)

    def take_focus(self) -> None:
        """Give the keyboard to the answer suggested, else the first, or to the field where there are none."""
        (self._buttons[self._suggested] if self._buttons else self._field).setFocus(Qt.FocusReason.ShortcutFocusReason)

    def pick(self, key: str) -> bool:
        """Choose by a key; whether it stands for an answer."""
        value = next((answer.value for answer in self._choice.answers if answer.key.lower() == key.lower()), None)
        value = self._choice.more.get(key, value)
        if value is not None:
            self.chosen.emit(value)
        return value is not None

    def _show_answers(self) -> None:
        for old in self._buttons:
            old.blockSignals(True)  # the keyboard goes from one that is hidden to the next
        for old in self._buttons:
            self._grid.removeWidget(old)
            old.hide()
            old.deleteLater()
        answers = self._choice.answers
        self._columns = columns = len(answers) if len(answers) <= _MOST_IN_ROW else _IN_LONG_ROWS
        self._buttons = []
        for place, answer in enumerate(answers):
            button = _AnswerKey(answer.words, answer.key, high=_LOW)
            button.setObjectName(f"choice_{answer.key}")
            button.setAccessibleName(f"{self._choice.question}: {answer.words}")
            button.setToolTip(f"{answer.words} (key {answer.key})")
            button.clicked.connect(lambda _checked=False, value=answer.value: self.chosen.emit(value))
            button.reached.connect(lambda at=place: self._reach(at))
            button.pointed_at.connect(lambda over, at=place: self._point_at(at if over else self._suggested))
            self._grid.addWidget(button, place // columns, place % columns)
            button.show()  # so that it can take the keyboard at once, also where a question follows on another
            self._buttons.append(button)

    def _reach(self, place: int) -> None:
        self._suggested = place
        self._point_at(place)

    def _point_at(self, place: int) -> None:
        self.marked.emit(self._choice.answers[place].value)

    def _take_field(self) -> None:
        self.typed.emit(self._field.text())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys of answers, arrows, Enter and Escape."""
        down = self._columns if len(self._buttons) > self._columns else 1
        steps = {Qt.Key.Key_Right: 1, Qt.Key.Key_Down: down, Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -down}
        focused = self.focusWidget()
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        elif focused is self._field:
            super().keyPressEvent(event)
        elif event.text() and self.pick(event.text()):
            pass
        elif event.key() in steps and isinstance(focused, QPushButton) and focused in self._buttons:
            at = self._buttons.index(focused) + steps[Qt.Key(event.key())]
            self._buttons[at % len(self._buttons)].setFocus(Qt.FocusReason.TabFocusReason)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and isinstance(focused, QPushButton):
            focused.click()
        elif self._field.isVisible() and event.text().strip():
            self._field.setFocus(Qt.FocusReason.OtherFocusReason)
            self._field.setText(event.text())
        else:
            super().keyPressEvent(event)


def _label(name: str, role: str) -> QLabel:
    made = QLabel()
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setObjectName(name)
    set_role(made, role)
    return made
