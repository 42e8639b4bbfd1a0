"""The heat wanted, picked by name or typed: `bread`, `425-475`, `425`."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.key import RING
from cookstove_gui.gui.widgets.modest_field import ModestField
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import fix_width, set_role
from cookstove_gui.phrases.figures import band_text

_WIDE = 200  # px of the design, for the longest name with its degrees


class BandPicker(QWidget):
    """A list that can also be typed into; the desk decides what the text means."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("band_picker")
        self._build()
        self._show_bands()
        self._box.activated.connect(self._pick)
        self._line.returnPressed.connect(self._type)
        QShortcut(QKeySequence("Ctrl+B"), self).activated.connect(self.take_focus)
        link.changed.connect(self._show)

    def _build(self) -> None:
        self._caption = caption = QLabel("Wanted")
        set_role(caption, "soft")
        self._box = QComboBox()
        self._box.setObjectName("band")
        self._line = ModestField()
        self._line.setObjectName("band_line")
        self._box.setLineEdit(self._line)
        self._box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self._box.setMaxVisibleItems(14)
        fix_width(self._box, _WIDE)
        self._box.setAccessibleName("Heat wanted in the oven: a name, a range or a number")
        self._box.setToolTip("A name, a range such as 425-475, or one number (Ctrl+B)")
        caption.setBuddy(self._box)
        self._problem = QLabel()
        self._problem.setTextFormat(Qt.TextFormat.PlainText)
        self._problem.setObjectName("band_problem")
        set_role(self._problem, "problem")
        self._problem.setWordWrap(True)
        self._problem.hide()
        row = QHBoxLayout()
        row.setSpacing(STEP)
        row.addWidget(caption)
        row.addWidget(self._box)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, RING, 0, 0)
        column.setSpacing(STEP // 2)
        column.addLayout(row)
        column.addWidget(self._problem)

    def set_tight(self, wanted: bool) -> None:
        """Where it is narrow, the field alone."""
        self._caption.setVisible(not wanted)

    def take_focus(self) -> None:
        """Give the keyboard to the field, with its text selected."""
        self._box.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self._line.selectAll()

    def _show(self, changed: Changed) -> None:
        if changed.settings or changed.stove:
            self._show_bands()
        elif changed.band or changed.session:
            self._show_choice()

    def _show_bands(self) -> None:
        unit = self._desk.unit
        self._box.blockSignals(True)
        self._box.clear()
        for band in self._desk.bands:
            self._box.addItem(band_text(band, unit), band.name)
        self._box.blockSignals(False)
        self._show_choice()

    def _show_choice(self) -> None:
        band = self._desk.band
        self._box.blockSignals(True)
        place = self._box.findData(band.name)
        self._box.setCurrentIndex(place)
        if place < 0:
            self._box.setEditText(band_text(band, self._desk.unit))
        self._box.blockSignals(False)

    def _pick(self, place: int) -> None:
        self._choose(str(self._box.itemData(place)))

    def _type(self) -> None:
        text = self._box.currentText().strip()
        place = self._box.findText(text, Qt.MatchFlag.MatchFixedString)
        self._choose(str(self._box.itemData(place)) if place >= 0 else text)

    def _choose(self, text: str) -> None:
        try:
            self._desk.choose_band(text)
        except Problem as problem:
            self._problem.setText(problem.sentence)
            self._problem.show()
            return
        self._problem.hide()
