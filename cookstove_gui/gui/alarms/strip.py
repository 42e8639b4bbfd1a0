"""The alarm in a place of its own above the page, so that it covers nothing that is to be read."""

from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from cookstove_gui.gui.alarms.line import AlarmKeys, AlarmLine
from cookstove_gui.gui.alarms.ringer import Ringer
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP

_NEAR, _FAR = (27, 24), (44, 36, 30)  # as what is to be done now; from across the kitchen [px of the design]


class AlarmStrip(QWidget):
    """Line and keys side by side; it takes no room while no alarm rings."""

    def __init__(self, link: DeskLink, look: Look, ringer: Ringer, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("alarm_strip")
        self._line = AlarmLine(link, look, ringer, "alarm_line", _NEAR)
        self._line.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)  # as high as the keys
        row = QHBoxLayout(self)
        row.setContentsMargins(0, STEP // 2, 0, STEP // 2)
        row.setSpacing(STEP)
        row.addWidget(self._line, 1)
        row.addWidget(AlarmKeys(ringer, "alarm"))
        self._ringer = ringer
        ringer.changed.connect(self._show)
        self._show()

    def set_far(self, wanted: bool) -> None:
        """Whether it is to be read from across the kitchen."""
        self._line.set_sizes(_FAR if wanted else _NEAR)

    def _show(self) -> None:
        self.setVisible(bool(self._ringer.ringing))
