"""The large view, read from across the kitchen: next line, clock, the oven now, and when it arrives."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.desk.heading import shown_headline
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.phrases.figures import temperature_text, window_text
from cookstove_gui.units import clock_text

_NEVER = Quantiles(p10=None, p50=None, p90=None)


class LargeView(QWidget):
    """Only what is needed from two metres away."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("large_view")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._clock = _label("large_clock", "large")
        self._oven = _label("large_oven", "huge")
        self._arrival = _label("large_arrival", "large")
        self._headline = _label("large_headline", "large")
        numbers = QHBoxLayout()
        numbers.addWidget(self._oven)
        numbers.addStretch(1)
        numbers.addWidget(self._arrival)
        hint = _label("large_hint", "soft")
        hint.setText("F12 or Escape: back")
        column = QVBoxLayout(self)
        column.setContentsMargins(6 * STEP, 4 * STEP, 6 * STEP, 2 * STEP)
        column.setSpacing(2 * STEP)
        column.addWidget(self._clock)
        column.addStretch(1)
        column.addLayout(numbers)
        column.addStretch(1)
        column.addWidget(self._headline)
        column.addStretch(1)
        column.addWidget(hint)
        link.changed.connect(self._show)
        link.time_passed.connect(self._show_clock)
        self._show_all()

    def _show(self, changed: Changed) -> None:
        if changed.standing or changed.session or changed.settings or changed.stove:
            self._show_all()
        else:
            self._show_clock()

    def _show_clock(self) -> None:
        self._clock.setText(clock_text(self._desk.clock(), self._desk.offset_minutes))

    def _show_all(self) -> None:
        self._show_clock()
        standing, unit = self._desk.standing, self._desk.unit
        if standing is None or not self._desk.entries or standing.outlook.oven.p50 is None:
            self._headline.setText(shown_headline(self._desk))
            self._oven.setText(f"– °{unit}")
            self._arrival.setText("")
            return
        self._headline.setText(shown_headline(self._desk))
        self._oven.setText(f"{temperature_text(standing.outlook.oven.p50, unit)} °{unit}")
        band, found = standing.band, standing.outlook.band
        comes = found.enters_min if found.line_enters_min is not None else _NEVER  # as the plot draws it
        window = window_text(standing.now, comes, self._desk.offset_minutes)
        when = "now" if band.holds(standing.outlook.oven.p50) else window
        self._arrival.setText(f"{band.name}\n{when}" if self._desk.is_live else "")


def _label(name: str, role: str) -> QLabel:
    made = QLabel()
    made.setObjectName(name)
    set_role(made, role)
    made.setWordWrap(name == "large_headline")
    made.setTextFormat(Qt.TextFormat.PlainText)
    return made
