"""Live entry: a number field for the walk round the stove, fire keys, corrections and questions, no mouse needed."""

from collections.abc import Callable

from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from cookstove_gui.desk import Changed, Receipt
from cookstove_gui.desk.cook.good_rows import GoodRow
from cookstove_gui.desk.cook.pan_course import pan_spots
from cookstove_gui.desk.log.named_spots import spots_named
from cookstove_gui.errors import Problem
from cookstove_gui.gui.cook.asking import Asking
from cookstove_gui.gui.cook.correction import Correction
from cookstove_gui.gui.cook.entry_block import EntryBlock
from cookstove_gui.gui.cook.fire_choices import KEYS, Ask, Enter, FireKey, ask_of, spots_to_choose
from cookstove_gui.gui.cook.number_field import name_and_number
from cookstove_gui.gui.cook.questioning import Questioning
from cookstove_gui.gui.cook.undoing import undone
from cookstove_gui.gui.cook.walk_choice import ask_walk
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.phrases.entries import entry_words, last_words, place_words
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import clock_text


class EntryPanel(EntryBlock):
    """Hands what is typed to the desk and shows what became of it."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(link, parent)
        self._link = link
        self._desk = link.desk
        self._session = self._session_number  # the one whose clock and questions are shown
        self._asking = Asking(self, self._desk)
        self.pan_asked, self.spot_marked = self._asking.pan_asked, self.chooser.marked
        self._correction = Correction(self, self._desk)
        self._questioning = Questioning(self, self._desk)
        self.setObjectName("entry_panel")
        self._connect()
        self._show_spot()
        self._questioning.show_newest()

    def _connect(self) -> None:
        self.number.returnPressed.connect(self._submit)
        self.number.textEdited.connect(self._preview)
        self.number.walked.connect(self._walk)
        self.number.left.connect(self._leave_correcting)
        self.when.returnPressed.connect(self._submit)
        self.when.left.connect(self.take_focus)
        self.enter.clicked.connect(self._submit)
        self.unit.clicked.connect(self._switch_unit)
        self.fire.pressed.connect(self._press)
        self.fire.undo_pressed.connect(lambda: self._undoing(self._desk.undo))
        self._asking.answered.connect(lambda enter: self._try(lambda: enter(self._at())))
        self._asking.left.connect(self.take_focus)
        self.rows.correction_wanted.connect(self._correct)
        self.rows.take_back_wanted.connect(lambda number: self._undoing(lambda: self._desk.take_back(number)))
        self.rows.left.connect(self.take_focus)
        self.heading.entries_wanted.connect(self.open_entries)
        self._questioning.correction_wanted.connect(self._correct)
        self._questioning.other_unit_meant.connect(self._take_other_unit)
        for keys, act in (
            ("Ctrl+Z", lambda: self._undoing(self._desk.undo)),
            ("Ctrl+Shift+Z", self.redo),
            ("Ctrl+R", self.open_entries),
            ("Ctrl+T", self.take_when),
            ("Ctrl+J", self.ask_walk),
            ("Ctrl+E", self.take_focus),
            ("Ctrl+K", lambda: self._questioning.answer("keep")),
            ("Ctrl+M", lambda: self._questioning.answer("correct")),
            ("Ctrl+O", lambda: self._questioning.answer("other_unit")),
            *((digit, lambda digit=digit: self._type_digit(digit)) for digit in "0123456789-"),
        ):
            QShortcut(QKeySequence(keys), self).activated.connect(act)
        self._link.changed.connect(self._show)

    def light(self, spot: str) -> None:
        """Light up a spot and wait for its number; while an entry is corrected, it belongs to that spot.

        While it is asked where a pan goes, mark it for the pan.
        """
        if self._asking.is_of_pan and self.chooser.mark(spot):
            return
        if self._correction.row is not None:
            self._correction.mean_spot(spot)
        else:
            self._desk.light(self._desk.walk.at(spot))
        self.take_focus()

    # --- showing -----------------------------------------------------------------------------------------------

    def _show(self, changed: Changed) -> None:
        if changed.session or changed.stove:
            self._leave_correcting()
        if self._session_number != self._session:
            self._session = self._session_number
            self._questioning.begin_again()
            self.when.release()
        if changed.walk or changed.stove or changed.settings or changed.session or changed.log:
            self._show_spot()
        if (changed.standing or changed.log or changed.session) and self._correction.row is None:
            self._questioning.show_newest()

    @property
    def _session_number(self) -> int:
        return self._desk.session.number if self._desk.session else 0

    def _show_spot(self) -> None:
        if self._correction.row is not None:
            return
        spot = self._desk.walk.spot
        self.heading.show_spot(spot.label, last_words(spot.name, self._desk.entries, self._desk.edge))
        self.unit.setText(f"°{self._desk.unit}")
        self.unit.setAccessibleName(f"Numbers are in °{self._desk.unit}; switch to the other unit")
        if not self._desk.rows:
            self.heading.say("type a number, then Enter")

    def _say_saved(self, entry: Entry) -> None:
        stove, entries = self._desk.stove, self._desk.entries
        where = place_words(entry, entries, stove)
        self.fire.say("")
        self.heading.say("saved", f"{entry_words(entry, stove)} {where}".strip(), where)
        self._questioning.make_way(entry)
        self._questioning.show_newest()

    def _refuse(self, sentence: str) -> None:
        self._questioning.fold()
        self.fire.say(sentence, "refused")

    # --- entering ----------------------------------------------------------------------------------------------

    def _submit(self) -> None:
        text = self.number.text().strip()
        name, number = name_and_number(text)
        row = self._correction.row
        if row is not None and row.kind is not Kind.READING:
            self._try(lambda: self._correction.save(text))
        elif name:
            self._try(lambda: self._named(name, number))
        elif row is not None:
            self._try(lambda: self._correction.save(number))
        elif number:
            self._try(lambda: self._desk.read(number, at_text=self._at()))
        else:
            self._set_clock()

    def _named(self, name: str, number: str) -> Receipt | Ask | None:
        """A number for the spot of a name; where the name fits several, the cook chooses."""
        enter: Enter = self._read_at
        if self._correction.row is not None:
            enter = lambda spot, _at: self._correction.save(number, spot)  # noqa: E731
        found = spots_named(self._desk.walk.spots, name)
        if len(found) == 1:
            return enter(found[0].name, self._at())
        question = f"{number} °{self._desk.unit}: where?" if number else "Which spot?"
        return spots_to_choose(question, found, enter)

    def _read_at(self, spot: str, at: str) -> Receipt | None:
        _, number = name_and_number(self.number.text())
        self._desk.light(self._desk.walk.at(spot))
        if number:
            return self._desk.read(number, at_text=at)
        self.number.clear()
        return None

    def _set_clock(self) -> None:
        """A clock alone is pinned for the entries to come; none is now again."""
        try:
            clock = self._at()
        except Problem as problem:
            self._refuse(problem.sentence)
            return
        if clock:
            self.when.pin(clock)
        else:
            self.when.release()
        self.take_focus()

    def _at(self) -> str:
        """The clock meant, of the choice or of the block."""
        return self._desk.clock_meant(self._asking.when.text())

    def _try(self, enter: Callable[[], Receipt | Ask | None]) -> None:
        """Do it or ask on, or show the desk's sentence and leave everything as typed."""
        is_new = self._correction.row is None
        try:
            receipt = enter()
        except Problem as problem:
            if self._asking.is_open:
                self.chooser.refuse(problem.sentence)
            else:
                self._refuse(problem.sentence)
                self.number.selectAll()
            return
        if isinstance(receipt, Ask):
            self._asking.show(receipt)
            return
        self._asking.close()
        if receipt is not None:
            entry = receipt.entry
            if entry.kind is Kind.READING:
                self.number.clear()
            if is_new:
                self._keep_clock(entry)
            # What is entered may begin a session; the clock typed with it belongs to that one.
            self._session = self._session_number
            self._say_saved(entry)
        self.take_focus()

    def _keep_clock(self, entry: Entry) -> None:
        """A walk keeps its clock; that of a single thing done is for it alone."""
        if entry.kind is Kind.READING and self._desk.clock_meant(self.when.text()):
            self.when.pin(clock_text(entry.at, entry.offset_minutes))
        elif not self.when.is_pinned:
            self.when.release()

    def _undoing(self, undo: Callable[[], None]) -> None:
        try:
            told = undone(self._desk, undo)
        except Problem as problem:
            self._refuse(problem.sentence)
            return
        self.fire.say("")
        self.heading.say(*told)
        if len(told) == 1:  # an answer to a question
            self._questioning.ask_again()
        if not self.rows.isVisible():
            self.take_focus()

    # --- choosing ----------------------------------------------------------------------------------------------

    def _press(self, key: FireKey) -> None:
        self._asking.close()
        self._try(lambda: ask_of(key, self._desk) or self._desk.do(key.kind, at_text=self._at()))

    def ask_pan(self) -> None:
        """Ask where a pan goes."""
        self._press(next(key for key in KEYS if key.kind is Kind.PAN))

    def suggest_pan(self, row: GoodRow) -> None:
        """While it is asked where a pan goes: word it for a task; the keyboard goes to its best free spot."""
        free = pan_spots(self._desk, row)
        rungs = (f"Pan on, or off: {row.name}", f"Pan: {row.name}", "Pan on, or off")
        self.chooser.suggest(rungs, free[0] if free else "")

    def _type_digit(self, digit: str) -> None:
        """A digit typed anywhere on the page picks an answer, or goes to the number field."""
        if self._asking.is_open:
            self.chooser.pick(digit)
            return
        self.rows.hide()
        self.number.type_digit(digit)

    # --- spots, corrections ------------------------------------------------------------------------------------

    def _switch_unit(self) -> None:
        self._desk.set_unit("C" if self._desk.unit == "F" else "F")
        self.take_focus()

    def _walk(self, steps: int) -> None:
        if self._correction.row is not None:
            self._correction.walk(steps)
        else:
            self._desk.light(self._desk.walk.moved_on(steps))

    def _preview(self, text: str) -> None:
        """While a name is typed, show which spot it means, or how many it may mean."""
        if self._correction.row is not None:
            return
        self._desk.hold_walk()
        self.fire.say("")
        name, _ = name_and_number(text)
        if not name:
            self._show_spot()
            return
        try:
            found = spots_named(self._desk.walk.spots, name)
            self.heading.show_spot(f"→ {found[0].label}" if len(found) == 1 else f"→ {len(found)} spots")
        except Problem:
            self.heading.show_spot("no such spot")

    def open_entries(self) -> None:
        """The list of entries, over the block."""
        self._asking.close()
        self.open_rows()

    def ask_walk(self) -> None:
        """Ask where the lit spot is to be read on the walk."""
        self._asking.show(ask_walk(self._desk))

    def redo(self) -> None:
        """Take back the latest undo."""
        self._undoing(self._desk.redo)

    def _correct(self, number: int) -> None:
        row = next((entry for entry in self._desk.entries if entry.number == number), None)
        if row is not None:
            self._questioning.fold()
            self._asking.close()
            self._correction.begin(row)

    def _take_other_unit(self, number: int) -> None:
        question = next((one for one in self._desk.questions if one.number == number), None)
        row = next((row for row in self._desk.entries if row.number == number), None)
        if question is not None and row is not None and question.other_unit:
            self._try(lambda: self._desk.correct(number, f"{row.value} {question.other_unit}"))

    def _leave_correcting(self) -> None:
        if self._correction.row is not None:
            self._correction.leave()
            self._show_spot()
