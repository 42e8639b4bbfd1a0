"""Draw my stove: the drawing with its plates and places, and beside it the stove or the spot that is selected."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove import describing
from cookstove_gui.desk.my_stove.redrawing import Redrawing
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.my_stove.draw.counter import Counter
from cookstove_gui.gui.my_stove.draw.editor import StoveEditor
from cookstove_gui.gui.my_stove.draw.six_questions import LAST, SixQuestions
from cookstove_gui.gui.my_stove.draw.spot_column import SpotColumn
from cookstove_gui.gui.my_stove.draw.stove_column import StoveColumn
from cookstove_gui.gui.my_stove.draw.stove_words import FIREBOX
from cookstove_gui.gui.widgets.flow_row import FlowRow
from cookstove_gui.gui.widgets.form import Either, button, row, words
from cookstove_gui.gui.widgets.giving_way import GivingWay
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_at_a_time import OneAtATime
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.my_stove.drawing import plates_question
from cookstove_gui.stove.added import Addition, with_added
from cookstove_gui.stove.redrawn import left_out, mirrored, moved, plates_of, swapped, with_plates
from cookstove_gui.stove.stove import COOKTOP_PLATES, Firebox, SpotKind, Stove

_HELP = (
    "Drag a spot or a handle, press a + to add; or: Tab next spot, then the +, arrows move, with Shift they size. Ins "
    "adds, Del takes off, M mirrors, Ctrl Z takes back, Esc selects the stove. Readings stay with their spot."
)
_COLUMN = 350  # px of the design, the bar that scrolls it among them


class DrawPart(QWidget):
    """The stove as its owner draws it; every change is kept at once."""

    def __init__(
        self, link: DeskLink, look: Look, past: PastSessions | None = None, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._redrawing = Redrawing(link.desk)
        self._chosen = ""
        self._asked: Stove | None = None  # drawn so once its owner agrees that readings leave the drawing
        self.setObjectName("draw_stove")
        self._editor = StoveEditor(look)
        self._rows = Counter("rows", "Rows of plates")
        self._columns = Counter("columns", "Columns of plates")
        self._mirror = button("Mirror", "stove_mirror", "Left and right change places (M)", keys="M")
        self._add = button("Add a spot", "spot_add", "A spot of your own on the top (Ins)", keys="Ins")
        self._back = button("Take back", "stove_take_back", "Draw it as it was before (Ctrl Z)", keys="Ctrl Z")
        self._firebox = Either("Firebox", "firebox", "Seen from where you stand to cook", FIREBOX, 64)
        self._question = words(role="caution", name="plates_question")
        self._agree = button("Take them off", "plates_agree", "Draw it so; the readings stay in the log")
        self._leave = button("Leave it", "plates_leave", "Keep the plates as they are")
        self._whole = StoveColumn(link, self._redrawing)
        self._spot = SpotColumn(link, look, self._redrawing, past or PastSessions(link.desk))
        self._six = SixQuestions(link, self._redrawing)
        self._is_asking, self._is_scrolled = False, False
        self._stack = OneAtATime()
        for shown in (self._whole, self._spot, self._six):
            self._stack.addWidget(shown)
        self._column = column = GivingWay(self._stack, _COLUMN)  # by itself, so that the drawing stays in sight
        column.setObjectName("draw_column")
        asks = QVBoxLayout()
        asks.addWidget(self._question)
        asks.addLayout(row(self._agree, self._leave))
        self._left = left = QVBoxLayout()
        left.setSpacing(STEP)
        self._above = FlowRow(STEP, self._rows, self._columns, self._mirror, self._add)
        self._below = FlowRow(STEP, self._firebox, self._back)
        self._help = words(_HELP, role="note")
        left.addWidget(self._above)
        left.addLayout(asks)
        left.addWidget(self._editor, 1)
        left.addWidget(self._below)
        left.addWidget(self._help)
        whole = QHBoxLayout(self)
        whole.setSpacing(STEP)
        whole.addLayout(left, 1)
        whole.addWidget(column)
        self._connect()
        self._ask(None)
        self.show_stove()

    def _connect(self) -> None:
        self._rows.stepped.connect(lambda more: self._plates(more, 0))
        self._columns.stepped.connect(lambda more: self._plates(0, more))
        self._mirror.clicked.connect(lambda: self._do("mirror"))
        self._add.clicked.connect(lambda: self._do("add"))
        self._back.clicked.connect(lambda: self._do("take_back"))
        self._agree.clicked.connect(self._agreed)
        self._leave.clicked.connect(lambda: self._ask(None))
        self._firebox.chosen.connect(lambda key: self._draw(firebox=Firebox(key)))
        self._whole.questions_wanted.connect(self.ask)
        self._six.plates.connect(self._plates)
        self._six.asked.connect(lambda place: self._editor.offer(place == LAST))
        self._six.ended.connect(self._end_asking)
        self._spot.laid.connect(self.select)
        self._spot.removed.connect(lambda: self._do("remove"))
        editor = self._editor
        editor.selected.connect(self.select)
        editor.asked.connect(self._do)
        editor.added.connect(self._add_there)
        editor.dropped_on.connect(lambda one, other: self._keep(swapped(self._desk.stove, one, other)))
        editor.dropped_at.connect(lambda name, x, y: self._keep(moved(self._desk.stove, name, x, y)))
        editor.nudged.connect(lambda name, right, back: self._keep(describing.nudged(self._desk, name, right, back)))
        editor.stretched.connect(
            lambda name, wider, deeper: self._keep(describing.stretched(self._desk, name, wider, deeper))
        )
        editor.sized_to.connect(lambda name, wide, deep: self._keep(describing.scaled(self._desk, name, wide, deep)))

    def showEvent(self, event: QShowEvent) -> None:
        """From now on it is known how high the page is that scrolls it."""
        super().showEvent(event)
        seen = self.parentWidget()
        page = seen.parentWidget() if seen is not None else None
        if isinstance(page, QScrollArea) and not self._is_scrolled:
            self._is_scrolled = True
            page.verticalScrollBar().rangeChanged.connect(self._fit_column)
        self._fit_column()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The keys above and below the drawing may take another line."""
        super().resizeEvent(event)
        self._fit_column()

    def _fit_column(self) -> None:
        """The column scrolls by itself as long as the drawing is in sight without scrolling the page."""
        left, page = self._left, self.parentWidget()
        needed = left.heightForWidth(left.geometry().width()) if left.hasHeightForWidth() else left.sizeHint().height()
        self._column.stand_whole(page is not None and needed > page.height())

    def show_stove(self) -> None:
        """Show the stove as kept."""
        stove = self._desk.stove
        if stove.spot(self._chosen) is None:
            self._chosen = ""
        rows, columns = plates_of(stove)
        self._rows.show_number(rows)
        self._columns.show_number(columns)
        self._firebox.show_key(stove.firebox)
        self._back.setEnabled(self._redrawing.can_take_back)
        self._editor.show_edited(stove, self._chosen)
        self._whole.show_stove()
        self._spot.show_spot(self._chosen)
        self._six.show_stove()
        self._stack.setCurrentIndex(2 if self._is_asking else 1 if self._chosen else 0)
        self._fit_column()

    def select(self, name: str) -> None:
        """Select a spot, or the stove itself with an empty name; while questions are asked nothing is selected."""
        if name != self._chosen and not self._is_asking:
            self._chosen = name
            self.show_stove()
            self._column.verticalScrollBar().setValue(0)

    def ask(self) -> None:
        """Ask the six questions about the stove in use."""
        self.select("")
        self._show_asking(True)
        self._six.start()

    def _end_asking(self) -> None:
        self._show_asking(False)
        self._editor.offer(True)
        self._whole.say_drawn()
        self._editor.setFocus()

    def _show_asking(self, is_asking: bool) -> None:
        self._is_asking = is_asking
        for part in (self._above, self._below, self._help):
            part.setVisible(not is_asking)
        self.show_stove()

    def select_first(self) -> None:
        """Select the first spot of the walk, if none is selected."""
        if not self._chosen and self._desk.stove.spots:
            self.select(self._desk.stove.spots[0].name)

    def _do(self, what: str) -> None:
        stove = self._desk.stove
        if what == "mirror":
            self._keep(mirrored(stove))
        elif what == "take_back":
            self._redrawing.take_back()
            self.show_stove()
        elif what == "add":
            self._try(self._added)
            self._spot.name_it()
        elif what == "remove" and self._chosen:
            self._try(self._removed)

    def _add_there(self, wanted: Addition) -> None:
        """What a plus stands for; a spot that is added is selected."""
        before = {spot.name for spot in self._desk.stove.spots}
        self._keep(with_added(self._desk.stove, wanted))
        new = next((spot.name for spot in self._desk.stove.spots if spot.name not in before), "")
        if new:
            self.select(new)
            self._editor.patch(new).setFocus()
        elif not self._editor.focusWidget():
            self._editor.setFocus()

    def _added(self) -> None:
        spot = describing.add_spot(self._desk, describing.free_label(self._desk.stove), SpotKind.TOP)
        self._chosen = spot.name

    def _removed(self) -> None:
        """Take the selected spot off; the next on the walk is selected."""
        names = [spot.name for spot in self._desk.stove.spots]
        place = names.index(self._chosen)
        describing.remove_spot(self._desk, self._chosen)
        names.remove(self._chosen)
        self._chosen = names[min(place, len(names) - 1)]

    def _plates(self, more_rows: int, more_columns: int) -> None:
        rows, columns = plates_of(self._desk.stove)
        rows, columns = rows + more_rows, columns + more_columns
        least, most = COOKTOP_PLATES
        if not (least <= rows <= most and least <= columns <= most):
            return
        drawn = with_plates(self._desk.stove, rows, columns)
        if self._redrawing.readings_lost(drawn):
            self._ask(drawn)
        else:
            self._keep(drawn)

    def _ask(self, drawn: Stove | None) -> None:
        self._asked = drawn
        if drawn is not None:
            lost = self._redrawing.readings_lost(drawn)
            labels = [spot.label for spot in left_out(self._desk.stove, drawn)]
            self._question.setText(plates_question(labels, lost))
            self._agree.setFocus()
        for part in (self._question, self._agree, self._leave):
            part.setVisible(drawn is not None)

    def _agreed(self) -> None:
        drawn = self._asked
        self._ask(None)
        if drawn is not None:
            self._keep(drawn)

    def _draw(self, **changed: object) -> None:
        self._keep(replace(self._desk.stove, **changed))  # type: ignore[arg-type]

    def _keep(self, stove: Stove) -> None:
        self._try(lambda: self._desk.save_stove(stove) if stove != self._desk.stove else None)

    def _try(self, change: Callable[[], object]) -> None:
        try:
            self._redrawing.change(change)
        except Problem as problem:
            self._spot.say_problem(problem.sentence)
        else:
            self.show_stove()
