"""The questions about entries: which one is on view, and what an answer does."""

from datetime import timedelta

from PySide6.QtCore import QObject, QTimer, Signal

from cookstove_gui.desk import Desk
from cookstove_gui.gui.cook.entry_block import EntryBlock
from cookstove_gui.phrases.entries import entry_words
from cookstove_gui.stove.entries import Entry

QUESTION_STANDS = 180_000  # ms for which a question may hide the fire keys
LEAST_STANDS = 20_000  # ms of that by the wall clock, when practice runs faster than life


class Questioning(QObject):
    """Puts the newest open question; what was answered by whatever way goes."""

    correction_wanted = Signal(int)  # number of the entry
    other_unit_meant = Signal(int)

    def __init__(self, block: EntryBlock, desk: Desk) -> None:
        super().__init__(block)
        self._block = block
        self._desk = desk
        self._seen = 0  # the newest entry whose question was shown
        self._patience = QTimer(self)
        self._patience.setObjectName("patience")
        self._patience.setSingleShot(True)
        self._patience.setInterval(QUESTION_STANDS)
        self._patience.timeout.connect(self.fold)
        line = block.question
        line.kept.connect(self.keep)
        line.correction_wanted.connect(self.correction_wanted)
        line.other_unit_meant.connect(self.other_unit_meant)
        block.rows.keep_wanted.connect(self.keep)

    def begin_again(self) -> None:
        """Another session is on the table."""
        self._seen = 0
        self.fold()

    def show_newest(self) -> None:
        """Put the newest question that was not shown yet."""
        asked, open_now = self._block.question.asked, self._desk.questions
        if asked is not None and asked not in open_now:
            self.fold()
        newest = max(open_now, key=lambda one: one.number, default=None)
        if newest is not None and newest.number > self._seen and self._desk.is_live:
            self._put(newest.number)
        elif self._stood_long():
            self.fold()

    def ask_again(self) -> None:
        """An answer was undone: put the newest open question again, as soon as it is known."""
        self._seen = 0
        self.show_newest()

    def make_way(self, entry: Entry) -> None:
        """The next entry was made: a question about another one folds, and stays open."""
        asked = self._block.question.asked
        if asked is not None and asked.number != entry.number:
            self.fold()

    def fold(self) -> None:
        """The fire keys come back; the entry stays marked, and Ctrl+K or Ctrl+M asks again."""
        self._patience.stop()
        self._block.question.ask(None)
        self._block.show_question(False)

    def answer(self, what: str) -> None:
        """Answer by key (`keep`, `correct`, `other_unit`); where no question is on view, the newest comes into view."""
        rows = self._block.rows
        marked = rows.marked if rows.isVisible() else None
        asked = self._block.question.asked
        open_now = [one.number for one in self._desk.questions]
        if marked is not None:
            self._take(what, marked)
        elif asked is not None:
            self._take(what, asked.number)
        elif open_now:
            self._put(max(open_now))
        else:
            self._block.heading.say("nothing is in question")

    def keep(self, number: int) -> None:
        """Let an entry in question stand as typed."""
        if all(one.number != number for one in self._desk.questions):
            return
        self._desk.keep(number)
        row = next(row for row in self._desk.entries if row.number == number)
        self.fold()
        self._block.heading.say("kept", entry_words(row, self._desk.stove))

    def _take(self, what: str, number: int) -> None:
        if what == "keep":
            self.keep(number)
        else:
            (self.correction_wanted if what == "correct" else self.other_unit_meant).emit(number)

    def _put(self, number: int) -> None:
        question = next(one for one in self._desk.questions if one.number == number)
        row = next(row for row in self._desk.entries if row.number == number)
        self._seen = max(self._seen, number)
        self._block.fire.say("")
        self._block.question.ask(question, row.value)
        self._block.show_question(True)
        if number == max(row.number for row in self._desk.entries):
            self._block.heading.say("", "saved, in question", in_question=True)
        self._patience.start()

    def _stood_long(self) -> bool:
        """By the session's clock, which in practice runs faster than the wall clock."""
        question = self._block.question.asked
        asked = next((row for row in self._desk.entries if question and row.number == question.number), None)
        if asked is None or not self._patience.isActive():
            return False
        stood = max(QUESTION_STANDS - self._patience.remainingTime(), 0)  # a coarse timer may begin with more
        return stood >= LEAST_STANDS and self._desk.clock() - asked.at > timedelta(milliseconds=QUESTION_STANDS)
