"""The opened session: its name and what can be done with it, then its picture, its entries or its photos."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QMenu, QVBoxLayout, QWidget

from cookstove_gui.desk.logbook import changing
from cookstove_gui.desk.logbook.cards import Card
from cookstove_gui.desk.logbook.opened import Asked, Opened, asked_about, opened, values_text
from cookstove_gui.desk.logbook.reporting import About
from cookstove_gui.errors import Problem
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.logbook.entries import EntriesView
from cookstove_gui.gui.logbook.oven_picture import OvenPicture
from cookstove_gui.gui.logbook.past_span import PastSpan
from cookstove_gui.gui.logbook.photos import PhotosView
from cookstove_gui.gui.logbook.report_panel import ReportPanel
from cookstove_gui.gui.logbook.writing import Writing
from cookstove_gui.gui.time_axis.fire_lane import FireLane, LaneMark
from cookstove_gui.gui.widgets.flow_row import FlowRow
from cookstove_gui.gui.widgets.form import Field, button, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_at_a_time import OneAtATime
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.theme import SOFT, STEP
from cookstove_gui.phrases.edge import local_day, short_date
from cookstove_gui.phrases.logbook.sessions import came_of_it, put_away_words, session_facts, session_span
from cookstove_gui.stove.entries import fold

_CAPTION, _WIDE = 80, 300
_DRAWN, _ROWS, _PHOTOS, _REPORT = range(4)  # what is shown of the session
_NOTES = 6  # shown under the picture; all stand among the entries
_NO_SESSION_SHORT = "No session yet: light the fire, or bring in logs under Files."
_NONE_FOUND = "No session has all of these words and that heat; take a word away, or look into the bin."
_NONE_FOUND_SHORT = "No session has all of this; take a word away."
_NO_SESSION = "No session yet: light the fire and enter it on the Cook page, or bring in logs under Files."


class OpenedSession(QWidget):
    """One session of the list."""

    opened = Signal()  # put on the Cook page
    compare_wanted = Signal()
    join_wanted = Signal()
    went = Signal(str)  # into the bin; the sentence about it
    emptying_wanted = Signal(list)  # numbers to delete for good; none: all that lie in the bin
    followed = Signal(int)  # number of the session that took this one's place

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._card: Card | None = None
        self._asked: Asked | None = None
        self._found: Opened | None = None
        self.setObjectName("opened_session")
        self.following = Job(self, lambda: self._asked, opened, self._show_found)
        self.writing = Writing(self._desk, self)
        self._build(look)
        self._connect()

    def _build(self, look: Look) -> None:
        self._title = OneLine((27, 24, 20), 600)
        self._title.setObjectName("opened_title")
        self._facts = OneLine((20, 18), colour=SOFT)
        self._facts.setObjectName("session_facts")
        self._report = button("Report …", "session_report", "A dated page to hand on, as PDF or HTML")
        self._export = button("Write as CSV …", "session_export", "Write its log to a CSV file")
        self._beside = button("Beside another …", "session_beside", "Compare the sessions marked with Space")
        self._rows = button("Entries", "session_rows", "List its entries and correct them", role="quiet")
        self._rows.setCheckable(True)
        self._rename = button("Rename", "session_rename", "Its title and its tags", role="quiet")
        self._rename.setCheckable(True)
        self._more = button("More …", "session_more", "Open, table, photos, join, copy, save, delete")
        self._return = button("Bring it back", "session_return", "Out of the bin, back to the list")
        self._gone = button("Delete it for good …", "session_gone", "With its entries and photos")
        self._empty = button("Empty the bin …", "bin_empty", "Delete everything in the bin for good")
        self._keys = FlowRow(
            0, self._report, self._export, self._beside, self._more, self._return, self._gone, self._empty
        )
        self._name = Field(
            "Title", "session_title", "Type a new title, then Enter", caption_width=_CAPTION, width=_WIDE
        )
        self._tags = Field(
            "Tags", "session_tags", "Words to find it by, with commas between", caption_width=_CAPTION, width=_WIDE
        )
        self._told = words(role="good", name="session_told")
        self._problem = words(role="problem", name="session_problem")
        self._span = PastSpan(self)
        self._picture = OvenPicture(self._span, look)
        self._picture.values = lambda: values_text(self._found, self._desk.unit) if self._found else ""
        self._lane = FireLane(self._span, look)
        self._notes = (words(role="place", name="session_notes"), words(role="place"))
        notes = QHBoxLayout()
        notes.setSpacing(2 * STEP)
        for part in self._notes:
            notes.addWidget(part, 1)
        drawn = QWidget()
        column = QVBoxLayout(drawn)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._picture, 1)
        column.addWidget(self._lane)
        column.addSpacing(STEP)
        column.addLayout(notes)
        self._entries = EntriesView(self._desk)
        self._photos = PhotosView(self._desk)
        self._stack = OneAtATime()
        self._reporting = ReportPanel("session", self._desk)
        for view in (drawn, self._entries, self._photos, self._reporting):
            self._stack.addWidget(view)
        self._record = OneLine((18, 16), colour=SOFT)
        self._record.setObjectName("session_record")
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(STEP)
        named = QHBoxLayout()
        named.addWidget(self._title, 1)
        named.setSpacing(0)
        named.addWidget(self._rows)
        named.addWidget(self._rename)
        whole.addLayout(named)
        whole.addWidget(self._facts)
        whole.addWidget(self._keys)
        for below in (self._name, self._tags, self._told, self._problem):
            whole.addWidget(below)
        whole.addWidget(self._stack, 1)
        whole.addWidget(self._record)
        self._name.hide()
        self._tags.hide()
        self.say()

    def _connect(self) -> None:
        self._report.clicked.connect(self._open_report)
        self._reporting.closed.connect(lambda: self._show_view(_DRAWN))
        self._export.clicked.connect(lambda: self._write(self.writing.log))
        self._beside.clicked.connect(self.compare_wanted)
        self._rows.toggled.connect(lambda on: self._show_view(_ROWS if on else _DRAWN))
        self._rename.toggled.connect(self._show_naming)
        self._more.clicked.connect(self._open_menu)
        self._return.clicked.connect(self._bring_back)
        self._gone.clicked.connect(lambda: self.emptying_wanted.emit([self._card.number] if self._card else []))
        self._empty.clicked.connect(lambda: self.emptying_wanted.emit([]))
        self._name.entered.connect(self._take_name)
        self._tags.entered.connect(lambda text: self._tags.takes(lambda: self._take_tags(text)))
        self._entries.was_split.connect(self.followed)
        self.writing.told.connect(lambda text: self.say(told=text))
        self.writing.failed.connect(lambda text: self.say(problem=text))

    def say(self, *, told: str = "", problem: str = "") -> None:
        """Say what was done, or why it was not."""
        say(self._told, told)
        say(self._problem, problem)

    def show_card(self, card: Card | None, *, is_searched: bool = False) -> None:
        """Open a session of the list; nothing happens where it is the one that is open and has not changed.

        Where there is none, it is said why: nothing was found, or there is nothing yet.
        """
        before, self._card = self._card, card
        for key in (self._report, self._export, self._beside, self._rows, self._more, self._rename):
            key.setVisible(card is not None and not card.is_binned)
        for key in (self._return, self._gone, self._empty):
            key.setVisible(card is not None and card.is_binned)
        if card is None:
            self._title.show_rungs(("Nothing found" if is_searched else "Logbook",))
            found, none = (_NONE_FOUND, _NONE_FOUND_SHORT), (_NO_SESSION, _NO_SESSION_SHORT)
            self._facts.show_rungs(found if is_searched else none)
            self._show_none()
            return
        one = card.summary
        self._title.show_rungs((one.title,))
        session = self._desk.logbook.session(card.number)
        facts = session_facts(one.first_at, one.last_at, one.offset_minutes, len(fold(session.entries)))
        span = session_span(one.first_at, one.last_at, one.offset_minutes)
        day = short_date(local_day(one.first_at, one.offset_minutes)) if one.first_at else ""
        self._facts.show_rungs(tuple(rung for rung in (facts, span, day) if rung))
        self._name.show_text(one.title)
        self._tags.show_text(", ".join(card.tags))
        for key in (self._report, self._export):
            key.setEnabled(one.entry_count > 0)
        if before is None or before.number != card.number:
            self._rows.setChecked(False)
            self._show_view(_DRAWN)
            self._rename.setChecked(False)
            self._show_none()
        self._entries.show_session(session, self._desk.stove)
        self._photos.show_session(card.number)
        self._asked = asked_about(self._desk, card.number)
        if self._asked is None:
            self._show_none()
        else:
            self.following.ask()

    def _show_none(self) -> None:
        self._found = None
        self._picture.show_session(None, self._desk.unit, "")
        self._lane.show_marks(())
        for part in self._notes:
            say(part, "")
        self._picture.hide()
        self._lane.hide()
        self._record.show_rungs(("",))

    def _show_found(self, found: Opened) -> None:
        card = self._card
        if card is None or found.number != card.number:
            return
        self._found = found
        self._span.show_past(found.began, found.minutes, found.offset_minutes)
        said = f"Oven in {found.title}: {came_of_it(found.facts, found.band, self._desk.unit)}"
        self._picture.show_session(found, self._desk.unit, said)
        self._picture.show()
        self._lane.show()
        self._lane.show_marks(
            tuple(
                LaneMark(
                    place=found.place(row.at), kind=row.kind, words=row.words, said=row.said,
                    opening=row.opening, count=row.count,
                )
                for row in found.lane
            )
        )  # fmt: skip
        lines = [f"{clock}  {text}" for clock, text in found.notes[:_NOTES]]
        if len(found.notes) > _NOTES:
            lines[-1] = f"and {len(found.notes) - _NOTES + 1} more among the entries"
        half = (len(lines) + 1) // 2
        for part, own in zip(self._notes, (lines[:half], lines[half:]), strict=True):
            say(part, "\n".join(own))
        said = found.record_words
        self._record.show_rungs((said, f"{said.partition(', typical')[0].removesuffix('.')}.") if said else ("",))

    def _show_naming(self, wanted: bool) -> None:
        for part in (self._name, self._tags):
            part.setVisible(wanted)
        if wanted:
            self._name.edit.setFocus()
            self._name.edit.selectAll()

    def name_it(self) -> None:
        """Ask for a title."""
        self._rename.setChecked(True)

    def _take_name(self, text: str) -> None:
        card = self._card
        if card is not None:
            self._name.takes(lambda: self._desk.rename_session(card.number, text))

    def _take_tags(self, text: str) -> None:
        if self._card is not None:
            changing.set_tags(self._desk, self._card.number, text)

    def _write(self, way: Callable[[int, str], None]) -> None:
        if self._card is not None:
            way(self._card.number, self._card.summary.title)

    def _show_view(self, view: int) -> None:
        self._stack.setCurrentIndex(view)
        self._rows.blockSignals(True)
        self._rows.setChecked(view == _ROWS)
        self._rows.blockSignals(False)

    def _open_report(self) -> None:
        card = self._card
        if card is None or self._stack.currentIndex() == _REPORT:
            self._show_view(_DRAWN)
            return
        self._reporting.show_about(((card.summary.title, About(session=card.number)),))
        self._show_view(_REPORT)
        self._reporting.take_focus()

    def _open_menu(self) -> None:
        card = self._card
        if card is None:
            return
        menu = QMenu(self)
        menu.setObjectName("session_menu")
        for text, act in self.ways(card):
            if not text:
                menu.addSeparator()
            else:
                menu.addAction(text).triggered.connect(lambda _on=False, act=act: self._try(act))
        menu.popup(self._more.mapToGlobal(self._more.rect().bottomLeft()))

    def ways(self, card: Card) -> list[tuple[str, Callable[[], object]]]:
        """What the menu offers for a session; words without letters part it."""
        number, title = card.number, card.summary.title
        on_table = self._desk.session is not None and self._desk.session.number == number
        return [
            *([] if on_table else [("Open on the Cook page", self.opened.emit)]),
            ("Photos", lambda: self._show_view(_PHOTOS)),
            ("Write as a table …", lambda: self.writing.table(number, title)),
            ("Join the marked sessions", self.join_wanted.emit),
            ("", lambda: None),
            ("Copy the picture", self._picture.copy_picture),
            ("Copy the values", self._picture.copy_values),
            ("Save the picture …", self._picture.save),
            ("", lambda: None),
            ("Delete", lambda: self._put_away(card)),
        ]

    def _bring_back(self) -> None:
        card = self._card
        if card is not None:
            self.say()
            self._try(lambda: changing.take_out(self._desk, [card.number]))

    def _put_away(self, card: Card) -> None:
        changing.put_in_bin(self._desk, [card.number])
        self.went.emit(put_away_words(card.summary.title))

    def _try(self, act: Callable[[], object]) -> None:
        try:
            act()
        except Problem as problem:
            self.say(problem=problem.sentence)
