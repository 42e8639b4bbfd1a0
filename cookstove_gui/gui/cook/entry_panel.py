"""Live entry: a number field for the walk round the stove, fire buttons, undo and corrections, no mouse needed."""

from collections.abc import Callable
from datetime import timedelta

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QLabel, QStackedWidget, QVBoxLayout, QWidget

from cookstove_gui.desk import Changed, Receipt
from cookstove_gui.desk.log.correcting import text_of
from cookstove_gui.desk.log.named_spots import spots_named
from cookstove_gui.errors import InputProblem, Problem
from cookstove_gui.gui.cook.answer_line import AnswerLine
from cookstove_gui.gui.cook.fire_panel import FirePanel
from cookstove_gui.gui.cook.number_field import NumberField, name_and_number
from cookstove_gui.gui.cook.recent_rows import RecentRows
from cookstove_gui.gui.cook.when_field import WhenField
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.phrases.edge import listed
from cookstove_gui.phrases.entries import entry_words, saved_words
from cookstove_gui.phrases.heading import question
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import clock_text

_HINT = "Type a number, then Enter. Arrow keys or a name choose the spot. Ctrl+H: all keys."
QUESTION_STANDS = 180_000  # ms for which a question may hide the fire buttons
LEAST_STANDS = 20_000  # ms of that by the wall clock, when practice runs faster than life


class EntryPanel(QWidget):
    """Hands what is typed to the desk and shows the desk's answer."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._link = link
        self._desk = link.desk
        self._correcting: Entry | None = None
        self._is_low = False
        self._settled: set[int] = set()  # entries whose question was answered
        self._made_way: int | None = None  # entry whose question nobody answered in time
        self._patience = QTimer(self)
        self._patience.setObjectName("patience")
        self._patience.setSingleShot(True)
        self._patience.setInterval(QUESTION_STANDS)
        self._patience.timeout.connect(self._make_way)
        self.setObjectName("entry_panel")
        self._build()
        self._connect()
        self._show_answer(False)
        self._show_spot()

    def _build(self) -> None:
        self._spot = QLabel()
        self._spot.setObjectName("lit_spot")
        set_role(self._spot, "heading")
        self._when = WhenField()
        self._when.setFixedWidth(112)
        at = QLabel("at")
        set_role(at, "soft")
        at.setBuddy(self._when)
        self._number = NumberField()
        self._unit = Key()
        self._unit.setObjectName("unit")
        set_role(self._unit, "unit")
        self._unit.setToolTip("The other unit of temperature (Ctrl+U)")
        self._unit.setAutoDefault(False)
        self._enter = Key("Enter")
        self._enter.setObjectName("enter")
        set_role(self._enter, "main")
        self._enter.setAccessibleName("Record the number and light up the next spot")
        self._enter.setToolTip("Record the number and light up the next spot (Enter)")
        self._enter.setAutoDefault(False)
        self._answer = AnswerLine()
        self._fire = FirePanel(self._desk, self._when, self)
        self._rows = RecentRows(self._link)
        # The latest entries and the desk's answer share the place under the field.
        self._below = QStackedWidget()
        self._below.addWidget(self._rows)
        self._below.addWidget(self._answer)
        self._hint = QLabel(_HINT)
        self._hint.setObjectName("hint")
        set_role(self._hint, "soft")
        self._hint.setWordWrap(True)
        self._hint.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._below.addWidget(self._hint)

        spot_row = QHBoxLayout()
        spot_row.setSpacing(STEP)
        spot_row.addWidget(self._spot, 1)
        spot_row.addWidget(at)
        spot_row.addWidget(self._when)
        number_row = QHBoxLayout()
        number_row.setSpacing(STEP)
        number_row.addWidget(self._number, 1)
        number_row.addWidget(self._unit)
        number_row.addWidget(self._enter)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addLayout(spot_row)
        column.addLayout(number_row)
        column.addWidget(self._below)
        column.addWidget(self._fire)

    def _connect(self) -> None:
        self._number.returnPressed.connect(self._submit)
        self._number.textEdited.connect(self._preview)
        self._number.walked.connect(self._walk)
        self._number.left.connect(self._leave_correcting)
        self._when.returnPressed.connect(self._submit)
        self._enter.clicked.connect(self._submit)
        self._unit.clicked.connect(self._switch_unit)
        self._answer.correction_wanted.connect(self._correct)
        self._answer.kept.connect(self._settle)
        self._answer.told.connect(self._show_answer)
        self._fire.entered.connect(self._told)
        self._fire.refused.connect(self._answer.refuse)
        self._fire.asking.connect(lambda: self._show_answer(False))
        self._fire.left.connect(self.take_focus)
        self._rows.correction_wanted.connect(self._correct)
        self._rows.take_back_wanted.connect(lambda number: self._undoing(lambda: self._desk.take_back(number)))
        self._rows.left.connect(self.take_focus)
        for keys, act in (
            ("Ctrl+Z", lambda: self._undoing(self._desk.undo)),
            ("Ctrl+Shift+Z", lambda: self._undoing(self._desk.redo)),
            ("Ctrl+R", self._take_rows),
            ("Ctrl+T", self._take_when),
            ("Ctrl+E", self.take_focus),
        ):
            QShortcut(QKeySequence(keys), self).activated.connect(act)
        self._link.changed.connect(self._show)

    def take_focus(self) -> None:
        """Give the keyboard to the number field."""
        self._number.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def set_low(self, is_low: bool) -> None:
        """List fewer entries where there is little height."""
        self._is_low = is_low
        self._show_answer(self._answer.has_words)

    def light(self, spot: str) -> None:
        """Light up a spot and wait for its number."""
        self._desk.light(self._desk.walk.at(spot))
        self.take_focus()

    # --- showing -----------------------------------------------------------------------------------------------

    def _show(self, changed: Changed) -> None:
        if changed.walk or changed.stove or changed.settings or changed.session:
            self._show_spot()
        if changed.standing:
            self._show_question()
            if self._stood_long():
                self._make_way()
        if changed.session or changed.stove:
            self._leave_correcting()
        if changed.log or changed.session or changed.stove:
            self._show_answer(self._answer.has_words)

    def _show_spot(self) -> None:
        if self._correcting is None:
            self._spot.setText(self._desk.walk.spot.label)
            self._unit.setText(f"°{self._desk.unit}")
            self._unit.setAccessibleName(f"Numbers are in °{self._desk.unit}; switch to the other unit")

    def _show_question(self) -> None:
        """Question a slip that only the belief could show, as soon as it has been worked out."""
        standing = self._desk.standing
        asked = question(standing, self._desk.edge) if standing else ""
        if standing is None or not asked or self._correcting is not None:
            return
        newest = max(row.number for row in standing.doubted)
        if newest not in self._settled and self._answer.asked_about is None:
            self._answer.ask(asked, newest)

    # --- entering ----------------------------------------------------------------------------------------------

    def _submit(self) -> None:
        text = self._number.text().strip()
        if self._correcting is not None:
            self._try(lambda: self._corrected(text))
            return
        name, number = name_and_number(text)
        if name or number:
            self._try(lambda: self._read(name, number))

    def _read(self, name: str, number: str) -> Receipt | None:
        if name:
            found = spots_named(self._desk.walk.spots, name)
            if len(found) > 1:
                raise InputProblem(f"“{name}” may be {listed([spot.label for spot in found])}; type more of the name.")
            self._desk.light(self._desk.walk.at(found[0].name))
        if not number:
            self._number.clear()
            return None
        return self._desk.read(number, at_text=self._when.text())

    def _corrected(self, text: str) -> Receipt | None:
        """Replace the row being corrected with what is in the two fields."""
        row = self._correcting
        if row is None:
            return None
        at_text = self._when.text().strip()
        if at_text == clock_text(row.at, row.offset_minutes):
            at_text = ""
        receipt = self._desk.correct(row.number, text, at_text=at_text)
        self._leave_correcting()
        return receipt

    def _try(self, enter: Callable[[], Receipt | None]) -> None:
        """Do it, or show the desk's sentence and leave everything as typed."""
        try:
            receipt = enter()
        except Problem as problem:
            self._answer.refuse(problem.sentence)
            self._number.selectAll()
            return
        if receipt is not None:
            self._number.clear()
            self._when.clear()
            self._told(receipt)
        self.take_focus()

    def _told(self, receipt: Receipt) -> None:
        entry = receipt.entry
        if receipt.question:
            self._answer.ask(receipt.question, entry.number)
        else:
            is_latest = entry == self._desk.entries[-1]  # then it stands at the top of the list
            words = "" if is_latest else saved_words(entry, self._desk.entries, self._desk.stove)
            self._answer.say(f"Saved: {words}." if words else "")
        self.take_focus()

    def _undoing(self, undo: Callable[[], None]) -> None:
        before = {row.number: row for row in self._desk.entries}
        try:
            undo()
        except Problem as problem:
            self._answer.refuse(problem.sentence)
            return
        after = {row.number: row for row in self._desk.entries}
        gone = [entry_words(row, self._desk.stove) for number, row in before.items() if number not in after]
        back = [entry_words(row, self._desk.stove) for number, row in after.items() if number not in before]
        parts = [f"Taken back: {', '.join(gone)}." if gone else "", f"Put back: {', '.join(back)}." if back else ""]
        self._answer.say(" ".join(part for part in parts if part))
        self.take_focus()

    # --- spots, corrections ------------------------------------------------------------------------------------

    def _switch_unit(self) -> None:
        self._desk.set_unit("C" if self._desk.unit == "F" else "F")
        self.take_focus()

    def _walk(self, steps: int) -> None:
        if self._correcting is None:
            self._desk.light(self._desk.walk.moved_on(steps))

    def _preview(self, text: str) -> None:
        """While a name is typed, show which spot it means."""
        if self._correcting is not None:
            return
        self._desk.hold_walk()
        if self._answer.asked_about is None:
            self._answer.say("")
        name, _ = name_and_number(text)
        if not name:
            self._show_spot()
            return
        try:
            self._spot.setText(f"→ {listed([spot.label for spot in spots_named(self._desk.walk.spots, name)])}")
        except Problem:
            self._spot.setText("no such spot")

    def _show_answer(self, has_words: bool) -> None:
        asked = self._answer.asked_about
        has_words = has_words and (asked is None or asked != self._made_way)
        self._below.setCurrentWidget(self._answer if has_words else self._rows if self._desk.entries else self._hint)
        line = self._rows.fontMetrics().height() + 4
        rows = 2 if self._is_low else 3
        told = max(self._answer.heightForWidth(self._below.width()), 2 * line)
        self._below.setFixedHeight(told if has_words else rows * line + 4)
        # Where height is short the question takes the place of the fire buttons; their keys still work.
        in_the_way = self._is_low and has_words and asked is not None
        self._fire.setHidden(in_the_way)
        if not in_the_way:
            self._patience.stop()
        elif not self._patience.isActive():
            self._patience.start()

    def _stood_long(self) -> bool:
        """By the session's clock, which in practice runs faster than the wall clock."""
        asked = next((row for row in self._desk.entries if row.number == self._answer.asked_about), None)
        if asked is None or not self._patience.isActive():
            return False
        stood = max(QUESTION_STANDS - self._patience.remainingTime(), 0)  # a coarse timer may begin with more
        return stood >= LEAST_STANDS and self._desk.clock() - asked.at > timedelta(milliseconds=QUESTION_STANDS)

    def _make_way(self) -> None:
        """A question that stood unanswered makes way for the fire buttons; its row can still be corrected."""
        self._made_way = self._answer.asked_about
        self._show_answer(self._answer.has_words)

    def _take_rows(self) -> None:
        self._show_answer(False)
        self._rows.take_focus()

    def _take_when(self) -> None:
        self._when.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self._when.selectAll()

    def _settle(self, number: int) -> None:
        self._settled.add(number)
        self.take_focus()

    def _correct(self, number: int) -> None:
        row = next((entry for entry in self._desk.entries if entry.number == number), None)
        if row is None:
            return
        self._settled.add(number)
        self._correcting = row
        self._spot.setText(f"correct: {entry_words(row, self._desk.stove)}")
        self._unit.setText(f"°{row.unit}" if row.kind is Kind.READING else "")
        self._number.setText(text_of(row))
        self._when.setText(clock_text(row.at, row.offset_minutes))
        self._answer.say("Type another number, or another time (Ctrl+T), then Enter. Escape leaves the entry alone.")
        self.take_focus()
        self._number.selectAll()

    def _leave_correcting(self) -> None:
        if self._correcting is None:
            return
        self._correcting = None
        self._number.clear()
        self._when.clear()
        self._answer.say("")
        self._show_spot()
