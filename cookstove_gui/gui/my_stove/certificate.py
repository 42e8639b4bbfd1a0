"""The certificate of the first fires: a small sheet that fills line by line, and goes to paper when it is full."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QGridLayout, QHBoxLayout, QWidget

from cookstove_gui.gui.widgets.form import Field, words
from cookstove_gui.gui.widgets.key import named_key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.my_stove.first_fires import Certificate

_WIDEST = 460  # px


class CertificateSheet(QFrame):
    """One line for each stage: its name, the day, the hottest; dots where it is still to come."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._lines = 0
        self.setObjectName("certificate")
        self.setMaximumWidth(_WIDEST)
        self._title = words(name="certificate_title", role="strong")
        self._foot = words(name="certificate_foot", role="note")
        self.write = named_key(
            "Save it …", "certificate_write", "As a page to keep or hand on: .pdf or .html", said="Save the certificate"
        )
        self.print = named_key(
            "Print it …", "certificate_print", "On paper, to be signed", said="Print the certificate"
        )
        self.name = Field(
            "Signed by", "certificate_name", "Your name on the certificate, if you wish", width=190, caption_width=84
        )
        self._keys = QWidget()
        keys = QHBoxLayout(self._keys)
        keys.setContentsMargins(0, 0, 0, 0)
        keys.setSpacing(0)
        keys.addStretch(1)
        for key in (self.print, self.write):
            keys.addWidget(key)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(2 * STEP, 2 * STEP, 2 * STEP, STEP)
        self._grid.setVerticalSpacing(2)
        self._grid.setColumnStretch(1, 1)
        self._grid.addWidget(self._title, 0, 0, 1, 3)
        look.changed.connect(self.update)

    def show_certificate(self, found: Certificate) -> None:
        """Fill what the log shows."""
        self._title.setText(found.title)
        self._foot.setText(found.foot)
        for place, line in enumerate(found.lines, start=1):
            if place > self._lines:
                self._add_line(place)
            for column, text in enumerate((line.stage, line.day, line.hottest)):
                item = self._grid.itemAtPosition(place, column)
                label = item.widget() if item else None
                if label is not None:
                    label.setText(text)  # type: ignore[attr-defined]
        self._grid.addWidget(self._foot, len(found.lines) + 1, 0, 1, 3)
        self.name.show_text(found.signed)
        self._grid.addWidget(self.name, len(found.lines) + 2, 0, 1, 3)
        self._grid.addWidget(self._keys, len(found.lines) + 3, 0, 1, 3)
        for part in (self.name, self._keys):
            part.setVisible(found.is_full)

    def _add_line(self, place: int) -> None:
        for column in range(3):
            label = words(name=f"certificate_{place}_{column}", role="note" if column < 2 else "small")
            if column == 2:
                label.setAlignment(Qt.AlignmentFlag.AlignRight)
            self._grid.addWidget(label, place, column)
        self._lines = place

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paper with a double edge."""
        painter = QPainter(self)
        whole = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        painter.setBrush(QColor(self._look.theme.raised))
        painter.setPen(QPen(QColor(self._look.theme.line), 1))
        painter.drawRoundedRect(whole, 3, 3)
        painter.setPen(QPen(QColor(self._look.theme.faint), 1))
        painter.drawRect(whole.adjusted(px(5), px(5), -px(5), -px(5)))
