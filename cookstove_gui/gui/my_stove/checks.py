"""Thermometers: what each one's checks have shown and how sure that is, a check made now, and new thermometers."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove import checks
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.my_stove.check_form import CheckForm
from cookstove_gui.gui.my_stove.check_plot import CheckPlot
from cookstove_gui.gui.my_stove.infrared_panel import InfraredPanel
from cookstove_gui.gui.my_stove.thermometer_row import RowContent, ThermometerRow
from cookstove_gui.gui.widgets.flow_row import FlowRow
from cookstove_gui.gui.widgets.form import Choice, Field, say, words
from cookstove_gui.gui.widgets.key import named_key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.picture import ways_out_key
from cookstove_gui.gui.widgets.side_by_side import SideBySide
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import heat_name
from cookstove_gui.phrases.my_stove.checks import check_line, doubt_words, drifted, gain_words, instrument_words
from cookstove_gui.stove.stove import INFRARED, THERMOMETERS, Instrument

_NONE = "No thermometer is described yet. Add the one that hangs in the oven, and the one you point."
_HOW_TO = {INFRARED: "check it in ice water", "flue thermometer": "set it beside a checked one"}
_USUAL_HOW_TO = "check it in ice and boiling water"
_LEAST_SCALE = 2.0  # K of error that the drifts are at least drawn for


class ChecksPart(QWidget):
    """One thermometer against right at the left, all of them at the right."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._look = link.desk, look
        self._chosen = ""
        self._rows: dict[str, ThermometerRow] = {}
        self.setObjectName("stove_checks")
        self._build()
        self._connect()
        self.show_stove()

    def _build(self) -> None:
        self._standing = words(name="check_standing", role="heading")
        self._then = words(name="check_drift", role="soft")
        self._plot = CheckPlot(self._look)
        self._gain = words(name="check_gain")
        self._form = CheckForm(self._desk)
        self._latest = words(name="check_list", role="note")
        self._undo = named_key("Take back", "check_undo", "Take back the latest check of this thermometer")
        one = QVBoxLayout()
        one.setSpacing(STEP)
        one.addWidget(self._plot)
        for part in (self._gain, self._form, self._latest):
            one.addWidget(part)
        one.addStretch(1)
        self._left = QWidget()
        self._left.setLayout(one)
        one.setContentsMargins(0, 0, 0, 0)
        self._list = QVBoxLayout()
        self._list.setSpacing(0)
        self._group = QButtonGroup(self)
        self._heads = QWidget()
        heads = QHBoxLayout(self._heads)
        heads.setContentsMargins(0, 0, 0, STEP)
        heads.addWidget(words("How each has drifted", role="strong"), 1)
        doubt = words("doubt of a reading", role="soft")
        doubt.setAlignment(Qt.AlignmentFlag.AlignRight)
        heads.addWidget(doubt, 1)
        self._doubt = words(name="check_doubt", role="note")
        self._add = named_key("Add one", "check_add", "Describe one more thermometer")
        self._compare = named_key("Compare", "check_compare", "Emissivity, and a contact thermometer beside it")
        for key in (self._add, self._compare):
            key.setCheckable(True)
        self._more = ways_out_key("checks_more", lambda: {"Checks": self._plot})
        self._infrared = InfraredPanel(self._desk)
        self._kind = Choice("Kind", "new_instrument_kind", "What kind of thermometer it is", caption_width=80)
        self._kind.show_options([(kind, kind) for kind in THERMOMETERS], THERMOMETERS[0])
        self._new = Field("Name", "new_instrument", "Type its name and press Enter to add it", caption_width=80)
        self._new.edit.setPlaceholderText("its name, then Enter")
        self._adding = QWidget()
        adding = QVBoxLayout(self._adding)
        adding.setContentsMargins(0, 0, 0, 0)
        adding.addWidget(self._kind)
        adding.addWidget(self._new)
        every = QVBoxLayout()
        every.setSpacing(STEP)
        every.addWidget(self._heads)
        every.addLayout(self._list)
        every.addWidget(self._doubt)
        every.addWidget(FlowRow(STEP, self._add, self._compare, self._undo, self._more))
        for panel in (self._adding, self._infrared):
            every.addWidget(panel)
        every.addStretch(1)
        plotted = QVBoxLayout()
        plotted.addWidget(self._left)
        column = QVBoxLayout(self)
        column.setSpacing(STEP)
        column.addWidget(self._standing)
        column.addWidget(self._then)
        column.addWidget(SideBySide(plotted, every, shares=(4, 5), apart=3 * STEP), 1)

    def _connect(self) -> None:
        self._form.kept.connect(self.show_stove)
        self._infrared.kept.connect(self.show_stove)
        self._undo.clicked.connect(self._take_back)
        self._add.toggled.connect(self._open)
        self._compare.toggled.connect(self._open)
        self._new.entered.connect(self._add_one)

    def show_stove(self) -> None:
        """Show the thermometers as kept."""
        instruments = self._desk.stove.instruments
        for part in (self._left, self._heads, self._more, self._add):
            part.setVisible(bool(instruments))
        if self._chosen not in [one.name for one in instruments]:
            self._chosen = instruments[0].name if instruments else ""
        self._show_rows(instruments)
        if not instruments:
            self._standing.setText(_NONE)
            self._undo.hide()
            self._compare.hide()
            self._add.setChecked(True)
            for part in (self._then, self._doubt):
                say(part, "")
        else:
            self._show_one(next(one for one in instruments if one.name == self._chosen))
        self._open()

    def _show_one(self, chosen: Instrument) -> None:
        desk, unit = self._desk, self._desk.unit
        where = heat_name(desk.band)
        own = [check for check in checks.checks_of(desk) if check.instrument == chosen.name]
        self._standing.setText(instrument_words(chosen, checks.heat_cooked_with(desk), where, unit))
        changed = checks.drift(desk, chosen.name)
        say(self._then, drifted(changed, unit) if changed else "")
        say(self._gain, gain_words(chosen, own, unit))
        self._plot.show_checks(checks.check_picture(desk, chosen.name), where, unit, self._standing.text())
        self._form.show_instrument(chosen)
        say(self._latest, f"Latest: {check_line(own[-1], unit)}." if own else "")
        self._undo.setVisible(bool(own))
        say(self._doubt, doubt_words(chosen, checks.cooktop_surface(desk.stove)))
        self._compare.setVisible(chosen.kind == INFRARED)
        if chosen.kind == INFRARED:
            self._infrared.show_instrument(chosen)

    def _show_rows(self, instruments: tuple[Instrument, ...]) -> None:
        rings = {one.name: checks.drift_rings(self._desk, one.name) for one in instruments}
        doubts = {one.name: checks.doubt_of_a_reading(self._desk, one) for one in instruments}
        errors = [abs(ring.error) for own in rings.values() for ring in own]
        for gone in self._rows.keys() - rings.keys():
            row_gone = self._rows.pop(gone)
            self._group.removeButton(row_gone)
            row_gone.setParent(None)
            row_gone.deleteLater()
        for one in instruments:
            content = RowContent(
                instrument=one,
                rings=rings[one.name],
                doubt=doubts[one.name],
                most_error=max([_LEAST_SCALE, *errors]),
                most_doubt=max(doubts.values()),
                how=_HOW_TO.get(one.kind, _USUAL_HOW_TO),
            )
            if one.name in self._rows:
                self._rows[one.name].show_content(content, self._desk.unit)
            else:
                self._add_row(content)
            self._rows[one.name].setChecked(one.name == self._chosen)

    def _add_row(self, content: RowContent) -> None:
        made = ThermometerRow(self._look, content, self._desk.unit)
        made.clicked.connect(lambda: self._choose(content.instrument.name))
        self._group.addButton(made)
        self._list.addWidget(made)
        self._rows[content.instrument.name] = made

    def _choose(self, name: str) -> None:
        self._chosen = name
        self._show_one(next(one for one in self._desk.stove.instruments if one.name == name))
        self._open()

    def _open(self) -> None:
        self._adding.setVisible(self._add.isChecked())
        self._infrared.setVisible(self._compare.isChecked() and not self._compare.isHidden())

    def _take_back(self) -> None:
        checks.take_back_latest(self._desk, self._chosen)
        self.show_stove()

    def _add_one(self, text: str) -> None:
        if not text.strip():
            return
        if self._new.takes(lambda: checks.add_instrument(self._desk, text, self._kind.key)):
            self._new.clear()
            self._chosen = self._desk.stove.instruments[-1].name
            self._add.setChecked(False)
            self.show_stove()
