"""The sessions: the list with what came of each, found by what is typed, and the one that is opened beside it."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QMessageBox, QVBoxLayout, QWidget

from cookstove_gui.desk.logbook import changing
from cookstove_gui.desk.logbook.cards import Card, CardInputs, Cards, card_inputs
from cookstove_gui.desk.logbook.finding import found, wanted
from cookstove_gui.errors import Problem
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.logbook.compare import CompareView
from cookstove_gui.gui.logbook.opened_session import OpenedSession
from cookstove_gui.gui.logbook.session_list import SessionList
from cookstove_gui.gui.widgets.form import button
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_at_a_time import OneAtATime
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.theme import SOFT, STEP
from cookstove_gui.phrases.logbook.sessions import empty_question, found_words

_FIND = "find: birch, 450"
_FIND_TIP = "Words of the title, tags, notes, wood, day or month; a number such as 450 finds ovens that were so hot"
_MARK_FIRST = (
    "Mark two or more sessions with Space in the list, or with Ctrl and a click; Ctrl A marks all that are shown. Then "
    "press this again."
)


class SessionsPart(QWidget):
    """The list on the left, the opened session on the right; sessions compared take the place of both."""

    opened = Signal()  # a session was put on the Cook page

    def __init__(self, link: DeskLink, look: Look, cards: Cards, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._cards = cards
        self._known: tuple[Card, ...] = ()
        self._shows_bin = False
        self._asks_above = False  # whether it was said that a question waits above
        self.setObjectName("sessions_part")
        self.reading = Job(self, lambda: card_inputs(self._desk), self._work_out, self._show_known)
        self._build(link, look)
        self._connect()
        self.show_sessions()

    def _build(self, link: DeskLink, look: Look) -> None:
        self._find = QLineEdit()
        self._find.setObjectName("session_find")
        self._find.setAccessibleName("Find sessions")
        self._find.setPlaceholderText(_FIND)
        self._find.setToolTip(_FIND_TIP)
        self._find.setClearButtonEnabled(True)
        self._new = button("New session", "session_new", "Start a new session")
        self.list = SessionList(look)
        self._count = OneLine((18, 16), colour=SOFT)
        self._count.setObjectName("session_count")
        self._bin = button("Bin", "session_bin", "Sessions that were deleted, until the bin is emptied", role="quiet")
        self._bin.setCheckable(True)
        top, low = QHBoxLayout(), QHBoxLayout()
        for line in (top, low):
            line.setSpacing(STEP)
        top.addWidget(self._find, 1)
        top.addWidget(self._new)
        low.addWidget(self._count, 1)
        low.addWidget(self._bin)
        left = QVBoxLayout()
        left.setSpacing(STEP)
        left.addLayout(top)
        left.addWidget(self.list, 1)
        left.addLayout(low)
        self.session = OpenedSession(link, look)
        listed = QWidget()
        both = QHBoxLayout(listed)
        both.setContentsMargins(0, 0, 0, 0)
        both.setSpacing(4 * STEP)
        both.addLayout(left, 13)
        both.addWidget(self.session, 20)
        self._compared = CompareView(self._desk, look)
        self._stack = OneAtATime()
        self._stack.addWidget(listed)
        self._stack.addWidget(self._compared)
        whole = QVBoxLayout(self)
        whole.addWidget(self._stack)

    def _connect(self) -> None:
        self._find.textChanged.connect(lambda _text: self._show_found())
        self.list.chosen.connect(self._show_chosen)
        self.list.opened.connect(self._put_on_table)
        self._new.clicked.connect(self._begin)
        self._bin.toggled.connect(self._show_bin)
        self.session.opened.connect(self._put_on_table)
        self.session.compare_wanted.connect(self._compare)
        self.session.join_wanted.connect(self._join)
        self.session.emptying_wanted.connect(self._ask_to_empty)
        self.session.went.connect(lambda sentence: self.session.say(told=sentence))
        self.session.followed.connect(self._follow)
        self._compared.left.connect(self._leave_comparing)
        self._compared.others_wanted.connect(self._choose_others)

    @property
    def number(self) -> int:
        """Number of the chosen session; 0 when there is none."""
        card = self.list.card
        return card.number if card else 0

    def show_sessions(self) -> None:
        """Show the sessions in the logbook, keeping the chosen one; what their logs say comes a moment later."""
        asked = card_inputs(self._desk)
        self._bin.setText(f"Bin {len(asked.binned)}" if asked.binned else "Bin")
        self._bin.setVisible(bool(asked.binned) or self._shows_bin)
        if self._shows_bin and not asked.binned:
            self._bin.setChecked(False)
        if not self._shows_bin:
            self._show_known(self._cards.plain(asked))
        if self._asks_above and self._desk.warm_start is None:
            self._asks_above = False
            self.session.say()
        self.show_standing()
        self.reading.ask()

    def show_standing(self) -> None:
        """Where sessions are compared, today's projection as it is now."""
        if self._stack.currentIndex() == 1:
            self._compared.show_sessions(self._beside_each_other())

    def _work_out(self, asked: CardInputs) -> tuple[Card, ...]:
        return self._cards.in_bin(asked) if self._shows_bin else self._cards.worked_out(asked)

    def _show_known(self, cards: tuple[Card, ...]) -> None:
        if any(card.is_binned is not self._shows_bin for card in cards):
            return  # asked before the bin was opened or closed
        self._known = cards
        self._show_found()

    def _show_found(self) -> None:
        asked = wanted(self._find.text(), self._desk.unit)
        shown = found(self._known, asked)
        self.list.show_cards(shown, self._desk.band)
        stove = self._desk.stove.name
        said = found_words(len(shown), len(self._known), asked.words, asked.least, asked.unit, stove)
        short = found_words(len(shown), len(self._known), (), None, asked.unit, stove)
        self._count.show_rungs((said, short) if len(said) > len(short) else (said,))
        self._show_chosen()

    def _show_chosen(self) -> None:
        self.session.show_card(self.list.card, is_searched=bool(self._find.text().strip()))

    def _show_bin(self, wanted_: bool) -> None:
        self._shows_bin = wanted_
        self._known = ()
        self.list.unmark()
        self.show_sessions()
        self._show_found()

    def _begin(self) -> None:
        latest = max(self._desk.sessions, key=lambda row: row.number, default=None)
        # An empty session started before is used again, so that pressing twice leaves no empty ones behind.
        if latest is not None and latest.entry_count == 0:
            self._desk.open_session(latest.number)
        else:
            self._desk.ask_new_session()
        self._asks_above = self._desk.warm_start is not None
        if self._asks_above:
            self.session.say(told="The stove is still warm: say above how the new session begins.")
            return
        self._find.clear()
        self._bin.setChecked(False)
        self._follow(self._desk.session.number if self._desk.session else 0)
        self.session.say(told="It is open. Give it a title if you like, and carry on at the Cook page.")
        self.session.name_it()

    def show_session(self, number: int) -> None:
        """Open a session, whatever was searched for or compared before."""
        self._find.clear()
        self._bin.setChecked(False)
        self._leave_comparing()
        self._follow(number)

    def _follow(self, number: int) -> None:
        self.show_sessions()
        self.list.choose(number)
        self._show_chosen()

    def _put_on_table(self) -> None:
        if not self.number or self._shows_bin:
            return
        try:
            self._desk.open_session(self.number)
        except Problem as problem:
            self.session.say(problem=problem.sentence)
            return
        self.show_sessions()
        self.session.say(told="It is open: the Cook page shows it.")
        self.opened.emit()

    def _compare(self) -> None:
        numbers = self._beside_each_other()
        if len(numbers) < 2:
            self.session.say(told=_MARK_FIRST)
            return
        self._compared.show_sessions(numbers)
        self._stack.setCurrentIndex(1)
        self._compared.setFocus()

    def _beside_each_other(self) -> list[int]:
        """Those marked; with none marked the session on the stove and the chosen one."""
        numbers = [one for one in self.list.marked_numbers if self._has_entries(one)]
        live = next((card.number for card in self._known if card.is_live), 0)
        chosen = [one for one in (live, self.number) if one and self._has_entries(one)]
        return list(dict.fromkeys(chosen)) if not numbers and live else numbers

    def _has_entries(self, number: int) -> bool:
        return any(card.number == number and card.summary.entry_count > 0 for card in self._known)

    def _leave_comparing(self) -> None:
        self._stack.setCurrentIndex(0)
        self.list.setFocus()

    def _choose_others(self) -> None:
        self.list.unmark()
        self._leave_comparing()
        self.session.say(told=_MARK_FIRST)

    def _join(self) -> None:
        numbers = self.list.marked_numbers
        if len(numbers) < 2:
            self.session.say(told=_MARK_FIRST)
            return
        try:
            made = changing.join(self._desk, numbers)
        except Problem as problem:
            self.session.say(problem=problem.sentence)
            return
        self.list.unmark()
        self._follow(made.number)
        self.session.say(told=f"Joined {len(numbers)} sessions; they lie in the bin as they were.")

    def _ask_to_empty(self, numbers: list[int]) -> None:
        own = numbers or [card.number for card in self._known]
        asked = QMessageBox(self)
        asked.setObjectName("empty_question")
        asked.setText(empty_question(len(own)))
        asked.setStandardButtons(QMessageBox.StandardButton.Yes | QMessageBox.StandardButton.Cancel)
        asked.setDefaultButton(QMessageBox.StandardButton.Cancel)
        asked.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        asked.accepted.connect(lambda: self._empty(own))
        asked.open()

    def _empty(self, numbers: list[int]) -> None:
        try:
            changing.empty_bin(self._desk, numbers)
        except Problem as problem:
            self.session.say(problem=problem.sentence)
