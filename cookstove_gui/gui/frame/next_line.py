"""The next line across the top: the clock, the one thing to do now, and why."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QSizePolicy, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.desk.heading import shown_detail, shown_headline
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame.page_buttons import PageButtons
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.units import clock_text

_WIDE = 1200  # pixels from which on the buttons stand beside the sentence


class NextLine(QWidget):
    """One sentence in large type, beside the page buttons or below them."""

    def __init__(self, link: DeskLink, buttons: PageButtons, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._buttons = buttons
        self._is_wide: bool | None = None
        self._is_brief = False
        self.setObjectName("next_line")
        self._clock = _label("clock", "next", wraps=False)
        self._clock.setAccessibleDescription("The time of day")
        self._headline = _label("headline", "next")
        self._detail = _label("detail", "soft")
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(2 * STEP, STEP, 2 * STEP, STEP)
        self._grid.setHorizontalSpacing(2 * STEP)
        self._grid.setVerticalSpacing(2)
        self._arrange(wide=True)
        link.changed.connect(self._show)
        link.time_passed.connect(self._show_clock)
        self._show_clock()
        self._show_words()

    def set_brief(self, wanted: bool) -> None:
        """Where space is short, leave the detail out while a caution needs the room."""
        self._is_brief = wanted
        self._detail.setVisible(not (wanted and not self._is_wide))

    def _show_clock(self) -> None:
        self._clock.setText(clock_text(self._desk.clock(), self._desk.offset_minutes))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Rearrange for the width."""
        super().resizeEvent(event)
        self._arrange(wide=self.width() >= _WIDE)

    def _arrange(self, *, wide: bool) -> None:
        if wide is self._is_wide:
            return
        self._is_wide = wide
        top, right = Qt.AlignmentFlag.AlignTop, Qt.AlignmentFlag.AlignRight
        for part in (self._clock, self._headline, self._detail, self._buttons):
            self._grid.removeWidget(part)
        self._buttons.set_in_row(not wide)
        self._grid.addWidget(self._clock, 0, 0, top)
        if wide:
            self._grid.addWidget(self._headline, 0, 1, top)
            self._grid.addWidget(self._detail, 1, 0, 1, 2, top)
            self._grid.addWidget(self._buttons, 0, 2, 2, 1, top)
        else:
            self._grid.addWidget(self._buttons, 0, 1, top | right)
            self._grid.addWidget(self._headline, 1, 0, 1, 2, top)
            self._grid.addWidget(self._detail, 2, 0, 1, 2, top)
        self._grid.setColumnStretch(1, 1)
        self.set_brief(self._is_brief)

    def _show(self, changed: Changed) -> None:
        if changed.standing or changed.session or changed.stove:
            self._show_words()
        self._show_clock()

    def _show_words(self) -> None:
        self._headline.setText(shown_headline(self._desk))
        self._detail.setText(shown_detail(self._desk))


def _label(name: str, role: str, *, wraps: bool = True) -> QLabel:
    made = QLabel()
    made.setObjectName(name)
    set_role(made, role)
    made.setWordWrap(wraps)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setSizePolicy(QSizePolicy.Policy.Expanding if wraps else QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Minimum)
    made.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
    return made
