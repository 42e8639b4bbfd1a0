"""The alarm above a page that has no heading: the large view, the list of keys."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from cookstove_gui.gui.alarms.line import AlarmKeys, AlarmLine
from cookstove_gui.gui.alarms.ringer import Ringer
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP

_SIZES = (44, 36, 30)  # to be read from across the kitchen [px of the design]


class AlarmStrip(QWidget):
    """Line and keys side by side; it takes no room while no alarm rings."""

    def __init__(self, link: DeskLink, look: Look, ringer: Ringer, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("alarm_strip")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, STEP // 2, 0, STEP // 2)
        row.setSpacing(STEP)
        row.addWidget(AlarmLine(link, look, ringer, "strip_alarm_line", _SIZES), 1)
        row.addWidget(AlarmKeys(ringer, "strip_alarm"))
        self._is_wanted = False
        self._ringer = ringer
        ringer.changed.connect(self._show)
        self._show()

    def set_wanted(self, wanted: bool) -> None:
        """Whether the page shown has no heading that would show the alarm."""
        self._is_wanted = wanted
        self._show()

    def _show(self) -> None:
        self.setVisible(self._is_wanted and bool(self._ringer.ringing))
