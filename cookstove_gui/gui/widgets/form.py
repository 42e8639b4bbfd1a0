"""The plain parts that the pages are made of: words, fields with the sentence about a mistake beside them, choices."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetricsF, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QComboBox,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from cookstove_gui.errors import Problem
from cookstove_gui.gui.widgets.key import RING, named_key
from cookstove_gui.gui.widgets.steps import scale
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import ROLES, fix_width, font, set_role
from cookstove_gui.gui.widgets.unbroken import Unbroken

CAPTION_WIDTH = 200  # px of the design, as all here; the captions of one form stand in a column
_EDITOR_WIDTH = 260
_ARROW, _MOST_WIDER = 70, 1.4  # beside the words of a list's choice; how much wider than usual it gets for its words


def words(text: str = "", *, role: str = "", name: str = "") -> QLabel:
    """A label that breaks its lines and can be read out and copied."""
    made = Unbroken()
    made.setText(text)
    made.setWordWrap(True)
    made.setTextFormat(Qt.TextFormat.PlainText)
    if role:
        set_role(made, role)
    if name:
        made.setObjectName(name)
    made.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return made


class Answer(QLabel):
    """The one sentence a page is about: the longest way to say it that stands in one line, large or a little smaller.

    Where none does, the shortest goes on in a second line.
    """

    def __init__(self, text: str = "", *, name: str = "") -> None:
        super().__init__(text)
        self._rungs: tuple[str, ...] = (text,)
        self.setObjectName(name)
        self.setWordWrap(True)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        set_role(self, "answer")

    def setText(self, text: str) -> None:
        """Other words."""
        self.show_rungs((text,))

    def show_rungs(self, rungs: Sequence[str]) -> None:
        """Words that can be said in these ways, from long to short; what is read out is the longest."""
        self._rungs = tuple(rungs) or ("",)
        self.setAccessibleName(self._rungs[0])
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may want another size."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        ways = ((text, role) for text in self._rungs for role in ("answer", "long_answer"))
        text, role = next((way for way in ways if self._fits(*way)), (self._rungs[-1], "long_answer"))
        if text != self.text():
            super().setText(text)
        set_role(self, role)

    def _fits(self, text: str, role: str) -> bool:
        return QFontMetricsF(font(*ROLES[role])).horizontalAdvance(text) < self.width()


def say(label: QLabel, text: str) -> None:
    """Set a label's words; one without words takes no room."""
    label.setText(text)
    label.setVisible(bool(text))


_BESIDE, _NARROW = 12, 6  # room beside the word of a key, and where keys must stand close


def button(text: str, name: str, tip: str, *, role: str = "", keys: str = "", beside: float = _BESIDE) -> QPushButton:
    """A push button that the keyboard reaches; `keys` names the key that presses it."""
    made = named_key(text, name, tip, keys=keys, role=role, beside=beside)
    made.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
    return made


def row(*parts: QWidget, stretch: bool = True) -> QHBoxLayout:
    """Widgets side by side."""
    made = QHBoxLayout()
    made.setSpacing(STEP)
    for part in parts:
        made.addWidget(part)
    if stretch:
        made.addStretch(1)
    return made


class Field(QWidget):
    """A caption beside or above a line to type in, its unit, and below it what is wrong with what was typed.

    What was typed stays there until it is understood.
    """

    entered = Signal(str)

    def __init__(
        self,
        caption: str,
        name: str,
        tip: str,
        *,
        unit: str = "",
        width: int = _EDITOR_WIDTH,
        caption_width: int = CAPTION_WIDTH,
        above: bool = False,
        beside: Sequence[QWidget] = (),
    ) -> None:
        super().__init__()
        self._kept = ""  # what the desk has
        self._sent = ""  # what was handed on last, so that leaving the field does not hand it on again
        self.setObjectName(f"{name}_row")
        self.edit = QLineEdit()
        self.edit.setObjectName(name)
        self.edit.setAccessibleName(caption)
        self.edit.setToolTip(tip)
        fix_width(self.edit, width)
        self._caption = words(caption, role="strong" if above else "soft")
        if not above:
            fix_width(self._caption, caption_width)
        self._caption.setBuddy(self.edit)
        self._unit = words(unit, role="soft")
        self._unit.setWordWrap(False)
        self._problem = words(role="problem", name=f"{name}_problem")
        if caption_width == CAPTION_WIDTH:  # in a narrow form the sentence needs the whole width
            self._problem.setContentsMargins(caption_width + STEP, 0, 0, 0)
        self._problem.hide()
        line = row(*(() if above else (self._caption,)), self.edit, self._unit)
        for part in beside:
            line.addWidget(part)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        if above:
            column.addWidget(self._caption)
        column.addLayout(line)
        self._unit.setHidden(not unit)  # without words it takes no room
        column.addWidget(self._problem)
        self.edit.returnPressed.connect(self.enter)
        self.edit.editingFinished.connect(self._leave)

    @property
    def text(self) -> str:
        """What stands there."""
        return self.edit.text()

    def show_text(self, text: str, unit: str | None = None) -> None:
        """Show what is kept; what was typed and not understood stays until something else is kept."""
        if unit is not None and unit != self._unit.text():
            self._unit.setText(unit)
            self._unit.setHidden(not unit)
            self._kept = ""
        if self._problem.isHidden() or text != self._kept:
            self._kept = self._sent = text
            self._say("")
            if self.edit.text() != text:
                self.edit.setText(text)
                self.edit.setCursorPosition(0)  # a long one is read from its beginning

    def show_problem(self, sentence: str) -> None:
        """Say what is wrong; what was typed stays."""
        self._say(sentence)

    def takes(self, change: Callable[[], object]) -> bool:
        """Make a change that was typed here; one that is refused is explained beside the field and returns False."""
        try:
            change()
        except Problem as problem:
            self._say(problem.sentence)
            return False
        self._say("")
        return True

    def clear(self) -> None:
        """Empty the line for the next entry."""
        self._kept = self._sent = ""
        self._say("")
        self.edit.clear()

    def _say(self, sentence: str) -> None:
        say(self._problem, sentence)
        self.edit.setAccessibleDescription(sentence)

    def enter(self) -> None:
        """Hand on what stands there, as the Enter key does."""
        self._sent = self.edit.text()
        self.entered.emit(self.edit.text())

    def _leave(self) -> None:
        if self.edit.text() != self._sent:
            self.enter()


class Either(QWidget):
    """A caption and a few buttons side by side, one of them pressed."""

    chosen = Signal(str)

    def __init__(
        self,
        caption: str,
        name: str,
        tip: str,
        options: Sequence[tuple[str, str]],
        caption_width: int = CAPTION_WIDTH,
    ) -> None:
        super().__init__()
        self.setObjectName(name)
        self._caption = words(caption, role="soft")
        fix_width(self._caption, caption_width)
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        self._buttons: dict[str, QPushButton] = {}
        for key, text in options:
            made = button(text, f"{name}_{key}", tip, beside=_NARROW if len(options) > 2 else _BESIDE)
            made.setAccessibleName(f"{caption}: {text}")
            made.setCheckable(True)
            made.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)  # its sides give way to its word
            made.clicked.connect(lambda _checked=False, wanted=key: self.chosen.emit(wanted))
            self._group.addButton(made)
            self._buttons[key] = made
        keys = row(*self._buttons.values(), stretch=False)
        keys.setSpacing(0)
        line = row(self._caption)
        line.setSpacing(STEP - RING)  # the room for the ring does not move the plate
        line.insertLayout(1, keys)
        line.setContentsMargins(0, 0, 0, 0)
        self.setLayout(line)

    @property
    def key(self) -> str:
        """Key of what is pressed."""
        return next((key for key, made in self._buttons.items() if made.isChecked()), "")

    def show_key(self, key: str) -> None:
        """Show what is chosen."""
        self._buttons[key].setChecked(True)


class _CalmBox(QComboBox):
    """Leaves the wheel to the page unless it has the focus, so that scrolling never chooses."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Choose only where the keyboard would."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


class Choice(QWidget):
    """A caption and one of several things to choose from, each with its key; `beside` goes to the right of it.

    Without a width the box is as wide as there is room, and says by itself what it is for.
    """

    chosen = Signal(str)

    def __init__(
        self,
        caption: str,
        name: str,
        tip: str,
        *,
        width: int | None = _EDITOR_WIDTH,
        caption_width: int = CAPTION_WIDTH,
        beside: Sequence[QWidget] = (),
    ) -> None:
        super().__init__()
        self.setObjectName(f"{name}_row")
        self._width = width
        self.box = _CalmBox()
        self.box.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.box.setObjectName(name)
        self.box.setAccessibleName(caption)
        self.box.setToolTip(tip)
        line = row(self.box, *beside, stretch=width is not None)
        if width is not None:
            fix_width(self.box, width)
            shown = words(caption, role="soft")
            fix_width(shown, caption_width)
            shown.setBuddy(self.box)
            line.insertWidget(0, shown)
        line.setContentsMargins(0, 0, 0, 0)
        self.setLayout(line)
        self.box.activated.connect(lambda index: self.chosen.emit(str(self.box.itemData(index))))
        self.box.currentIndexChanged.connect(self._fit)

    @property
    def key(self) -> str:
        """Key of what is chosen."""
        return str(self.box.currentData() or "")

    def show_key(self, key: str) -> None:
        """Choose another one; the first where none has that key."""
        self.box.setCurrentIndex(max(self.box.findData(key), 0))

    def show_options(self, options: Sequence[tuple[str, str]], current: str) -> None:
        """Show `(key, words)` pairs, the one with the key `current` chosen."""
        kept = [(str(self.box.itemData(index)), self.box.itemText(index)) for index in range(self.box.count())]
        self.box.blockSignals(True)
        if kept != list(options):
            self.box.clear()
            for key, text in options:
                self.box.addItem(text, key)
        self.box.setCurrentIndex(max(self.box.findData(current), 0))
        self.box.blockSignals(False)
        self._fit()

    def _fit(self) -> None:
        """As wide as what is chosen, if that is longer than usual."""
        if self._width is not None:
            wanted = QFontMetricsF(font()).horizontalAdvance(self.box.currentText()) / scale() + _ARROW
            fix_width(self.box, min(max(self._width, wanted), _MOST_WIDER * self._width))
