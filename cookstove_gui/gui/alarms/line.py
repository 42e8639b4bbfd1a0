"""An alarm as it is seen: one large line with a bell, and a key each for done, later and silence."""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QApplication, QHBoxLayout, QWidget

from cookstove_gui.gui.alarms.ringer import Ringer
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.key import RING, Key, named_key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.signs import paint_bell
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.phrases.alarms import alarm_rungs, more_alarms_words

DONE, LATER, SILENCE = "Ctrl+Space", "Ctrl+S", "Ctrl+L"
_SIGN, _LEFT, _AFTER = 28, 10, 10  # px of the design: the bell, before and after it
_CORNER = 4


class AlarmLine(OneLine):
    """The most urgent alarm, on ink, so that it is seen from across the kitchen; hidden while none rings."""

    def __init__(self, link: DeskLink, look: Look, ringer: Ringer, name: str, sizes: Sequence[float]) -> None:
        super().__init__(sizes, 600, colour=QPalette.ColorRole.Window)
        self._desk, self._look, self._ringer = link.desk, look, ringer
        self._keys: frozenset[str] = frozenset()
        self.setObjectName(name)
        ringer.changed.connect(self._show)
        link.time_passed.connect(self._show)
        self._show()

    def lead(self, _words: str) -> float:
        """Room for the bell."""
        return px(_LEFT + _SIGN + _AFTER)

    def _show(self) -> None:
        found = self._ringer.ringing
        if found:
            edge = replace(self._desk.edge, now=self._desk.clock())
            rungs = alarm_rungs(found[0].alarm, self._desk.stove, edge)
            more = more_alarms_words(len(found) - 1)
            self.show_rungs(tuple(dict.fromkeys([*(f"{one}{more}" for one in rungs), rungs[-1]])))
        keys = frozenset(one.alarm.key for one in found)
        if keys - self._keys:
            QApplication.alert(self.window())
        self._keys = keys
        self.setVisible(bool(found))

    def paintEvent(self, event: QPaintEvent) -> None:
        """The plate, the bell, the words."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, side = self._look.theme, px(_SIGN)
        painter.setPen(QColor(theme.ink))
        painter.setBrush(QColor(theme.ink))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, RING, -0.5, -RING), _CORNER, _CORNER)
        paint_bell(painter, QRectF(px(_LEFT), (self.height() - side) / 2, side, side), QColor(theme.ground))
        painter.end()
        super().paintEvent(event)


class AlarmKeys(QWidget):
    """Done, in five minutes, silence; hidden while no alarm rings."""

    def __init__(self, ringer: Ringer, name: str) -> None:
        super().__init__()
        self._ringer = ringer
        self.setObjectName(name)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        self._silence = _key("Silence", f"{name}_silence", SILENCE, "No sound any more; the line stays")
        for key, act in (
            (_key("Done", f"{name}_done", DONE, "The alarm is done"), ringer.done),
            (_key("In 5 minutes", f"{name}_later", LATER, "Ring again in five minutes"), ringer.put_off),
            (self._silence, ringer.silence),
        ):
            key.clicked.connect(act)
            row.addWidget(key)
        ringer.changed.connect(self._show)
        self._show()

    def _show(self) -> None:
        found = self._ringer.ringing
        self._silence.setEnabled(any(not one.is_silent for one in found))
        self.setVisible(bool(found))


def _key(text: str, name: str, keys: str, what: str) -> Key:
    return named_key(text, name, f"{what} ({keys})", keys=keys.replace("+", " "), said=what)
