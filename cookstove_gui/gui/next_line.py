"""The next line across the top: the clock, the one thing to do now and why, and the cautions that are due."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.cooking.cautions import Caution
from cookstove_gui.desk import Changed
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.theme import STEP
from cookstove_gui.resource_files import table
from cookstove_gui.units import clock_text, local_offset_minutes


class NextLine(QWidget):
    """One sentence in large type."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._link = link
        self._desk = link.desk
        self.setObjectName("next_line")
        self._build()
        link.changed.connect(self._show)
        self.show_clock()
        self._show_words()

    def _build(self) -> None:
        self._clock = _label("clock", "next", wraps=False)
        self._clock.setAccessibleDescription("The time of day")
        self._headline = _label("headline", "next")
        self._headline.setMinimumHeight(2 * self._headline.fontMetrics().height())
        self._detail = _label("detail", "soft")
        self._cautions = QVBoxLayout()
        self._cautions.setSpacing(2)
        self._caution_labels: list[QLabel] = []
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * STEP)
        grid.setVerticalSpacing(0)
        grid.addWidget(self._clock, 0, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self._headline, 0, 1)
        grid.addWidget(self._detail, 1, 1)
        grid.addLayout(self._cautions, 2, 1)
        grid.setColumnStretch(1, 1)
        grid.setRowStretch(3, 1)

    def show_clock(self) -> None:
        """Show the time of day."""
        now = self._desk.clock()
        rows = self._desk.rows
        offset = rows[-1].offset_minutes if rows else local_offset_minutes(now)
        self._clock.setText(clock_text(now, offset))

    def _show(self, changed: Changed) -> None:
        if changed.standing or changed.session or changed.stove:
            self._show_words()
        self.show_clock()

    def _show_words(self) -> None:
        standing = self._desk.standing
        self._headline.setText(standing.headline if standing else table("phrases.toml")["no_readings"])
        self._detail.setText(standing.detail if standing else "")
        self._show_cautions(standing.cautions if standing else ())

    def _show_cautions(self, cautions: tuple[Caution, ...]) -> None:
        while len(self._caution_labels) < len(cautions):
            label = _label(f"caution_{len(self._caution_labels)}", "caution")
            self._caution_labels.append(label)
            self._cautions.addWidget(label)
        for number, label in enumerate(self._caution_labels):
            label.setVisible(number < len(cautions))
            label.setText(f"⚠ {cautions[number].title}: {cautions[number].text}" if number < len(cautions) else "")


def _label(name: str, role: str, *, wraps: bool = True) -> QLabel:
    made = QLabel()
    made.setObjectName(name)
    made.setProperty("role", role)
    made.setWordWrap(wraps)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setSizePolicy(QSizePolicy.Policy.Expanding if wraps else QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Minimum)
    made.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
    return made
