"""The foot of the tab: what to do now, and the steps to come, each under its clock and the bell that rings then."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QSizePolicy, QWidget

from cookstove_gui.desk.plan.supper_next import Bell, NextStep
from cookstove_gui.gui.plan.supper.dish_rows import paint_planned_bell
from cookstove_gui.gui.widgets.form import say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.phrases.alarms import bell_words

_MOST = 6
_BELL = 18  # px of the design


class _Bell(QWidget):
    """A bell beside a clock, struck through where its sound is off; a click turns it."""

    pressed = Signal(str)  # key of the alarm

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self._look = look
        self._bell: Bell | None = None
        self.setObjectName(name)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)

    def show_bell(self, bell: Bell | None) -> None:
        """Show it; none leaves the place empty."""
        self._bell = bell
        said = "" if bell is None else bell_words(bell.is_silent)
        self.setToolTip(said)
        self.setAccessibleName(said)
        self.update()

    def sizeHint(self) -> QSize:
        """Room for it, to be pressed by a finger."""
        return QSize(px(2 * _BELL), px(_BELL))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The bell."""
        if self._bell is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        side = px(_BELL)
        box = QRectF(px(2), (self.height() - side) / 2, side, side)
        paint_planned_bell(painter, box, self._bell, self._look.theme)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Its sound off, or on again."""
        if self._bell is not None and event.button() is Qt.MouseButton.LeftButton:
            self.pressed.emit(self._bell.key)


class NextSteps(QWidget):
    """Clocks over words, side by side, as many as there are."""

    bell_pressed = Signal(str)  # key of an alarm whose sound is to go off, or on again

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("supper_next")
        self.setAccessibleName("The next steps")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, px(4), 0, 0)
        grid.setHorizontalSpacing(px(14))
        grid.setVerticalSpacing(0)
        self._cells = []
        for place in range(_MOST):
            clock, text = words(role="unit", name=f"next_clock_{place}"), words(role="place", name=f"next_step_{place}")
            set_role(text, "said")
            clock.setWordWrap(False)
            bell = _Bell(look, f"next_bell_{place}")
            bell.pressed.connect(self.bell_pressed)
            above = QHBoxLayout()
            above.setSpacing(px(4))
            above.addWidget(clock)
            above.addWidget(bell)
            above.addStretch(1)
            grid.addLayout(above, 0, place)
            grid.addWidget(text, 1, place, Qt.AlignmentFlag.AlignTop)
            grid.setColumnStretch(place, 1)
            self._cells.append((clock, bell, text))

    def show_steps(self, steps: tuple[NextStep, ...]) -> None:
        """Show these, the soonest first."""
        for place, (clock, bell, text) in enumerate(self._cells):
            step = steps[place] if place < len(steps) else NextStep(clock="", words="", bell=None)
            say(clock, step.clock)
            bell.show_bell(step.bell)
            say(text, step.words)
        self.setAccessibleDescription("; ".join(f"{one.clock} {one.words}" for one in steps))
