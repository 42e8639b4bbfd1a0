"""What is asked of something in the oven: what a probe shows, when to look at it, turned, taken out."""

from PySide6.QtCore import QPointF, QSize, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.gui.drawn_stove.lettering import write
from cookstove_gui.gui.plan.part import CAPTION_WIDTH, FIELD_WIDTH, hairline
from cookstove_gui.gui.widgets.form import Field, button, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import PLACE, set_role
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.in_oven import inside_rows, probe_rows
from cookstove_gui.phrases.plan.bake import inside_words

_PROBE_WIDTH = 132  # px of the design
_HOW = "Into the middle, from the side, clear of tin and bone."


class InsideRows(QWidget):
    """The fields and keys of one thing that is in the oven by the log; the probe's is the main one."""

    probed = Signal(str)
    due = Signal(str)
    turned = Signal()
    taken_out = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("bake_inside")
        self._since = words(role="soft", name="bake_since")
        enter = button("Enter", "bake_probe_enter", "Write down what the probe shows (Enter)", role="main")
        self.probe = Field(
            "Probe in it", "bake_probe", "What a probe in its core shows now", width=_PROBE_WIDTH, above=True,
            beside=[enter],
        )  # fmt: skip
        set_role(self.probe.edit, "number")
        enter.clicked.connect(self.probe.enter)
        self._probes = _Probes(look)
        self._rows = words(role="soft", name="bake_rows")
        self.look = Field(
            "Look at it", "bake_look", "When you want to look at it: a clock such as 5:30, or +20", width=FIELD_WIDTH,
            caption_width=CAPTION_WIDTH,
        )  # fmt: skip
        self._turn = button("Turned", "bake_turned", "Write down that it was turned")
        self._out = button("It is out", "bake_out", "Write down that it is out of the oven", role="strong_main")
        self.probe.entered.connect(lambda text: self.probed.emit(text) if text.strip() else None)
        self.look.entered.connect(lambda text: self.due.emit(text) if text.strip() else None)
        self._turn.clicked.connect(self.turned)
        self._out.clicked.connect(self.taken_out)
        self._parts = (self.probe, enter, self.look, self._turn, self._out)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        how = words(_HOW, role="note")
        for part in (self._since, hairline(), self.probe, self._probes, how, hairline(), self.look, self._rows):
            column.addWidget(part)
        keys = QHBoxLayout()
        keys.setSpacing(0)
        for key in (self._turn, self._out):
            keys.addWidget(key)
        keys.addStretch(1)
        column.addLayout(keys)

    def show_unit(self, unit: str) -> None:
        """The unit that a probe is typed in."""
        self.probe.show_text("", f"°{unit}")

    def show_rows(self, inside: InOven, edge: Edge, *, can_write: bool) -> None:
        """What the log says of it so far; of a session that is over nothing can be written any more."""
        say(self._since, inside_words(inside, edge))
        self._probes.show_probes(probe_rows(inside, edge))
        say(self._rows, inside_rows(inside, edge))
        for part in self._parts:
            part.setEnabled(can_write)


class _Probes(QWidget):
    """Readings of the probe, as the rings that stand for them in the picture; two in a row."""

    _ROW, _COLUMN = 26, 160  # px of the design

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._probes: tuple[tuple[str, str], ...] = ()
        self.setObjectName("bake_probes")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)

    def sizeHint(self) -> QSize:
        return QSize(px(2 * self._COLUMN), px(self._ROW) * ((len(self._probes) + 1) // 2))

    def show_probes(self, probes: tuple[tuple[str, str], ...]) -> None:
        self._probes = probes
        self.setAccessibleName("; ".join(f"{clock} {heat}" for clock, heat in probes))
        self.setVisible(bool(probes))
        self.updateGeometry()
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme = self._look.theme
        for place, (clock, heat) in enumerate(self._probes):
            x, y = px(self._COLUMN) * (place % 2), px(self._ROW) * (place // 2 + 0.5)
            painter.setPen(QPen(QColor(theme.ink), px(2)))
            painter.setBrush(QColor(theme.ground))
            painter.drawEllipse(QPointF(x + px(6), y), px(5), px(5))
            painter.setPen(QColor(theme.soft))
            after = x + px(20) + write(painter, x + px(20), y, clock, px(PLACE)) + px(12)
            painter.setPen(QColor(theme.ink))
            write(painter, after, y, heat, px(PLACE), 600)
        painter.end()
