"""The tab Supper: when to eat, the dishes, and the plan as one picture."""

from datetime import timedelta
from functools import partial

from PySide6.QtCore import QEvent, QObject, QPoint, QSize, Qt
from PySide6.QtGui import QKeySequence, QResizeEvent, QShortcut, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.cooking.supper.plan import Margin
from cookstove_gui.desk.alarms.kept import turn_sound
from cookstove_gui.desk.heading import first_fires_words, here
from cookstove_gui.desk.plan import texts as plan_texts
from cookstove_gui.desk.plan.supper_done import do_moment, take_back
from cookstove_gui.desk.plan.supper_shown import supper_shown
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.alarms.sound_key import SoundKey
from cookstove_gui.gui.background.supper_planning import SupperPlanning
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.supper.dish_list import DishList
from cookstove_gui.gui.plan.supper.dish_rows import ROW
from cookstove_gui.gui.plan.supper.first_step import FirstStep
from cookstove_gui.gui.plan.supper.next_steps import NextSteps
from cookstove_gui.gui.plan.supper.picture import AXIS, FIRE, OVEN, SupperPicture
from cookstove_gui.gui.plan.supper.save_key import SaveKey
from cookstove_gui.gui.widgets.caution_line import CautionLine
from cookstove_gui.gui.widgets.form import Choice, Field, button, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.sections import ScrollingUp
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.units import clock_text

_MARGINS = (("usual", "usual"), ("safe", "safe"))
_PLANNING = "Planning …"
_POLICY = QSizePolicy.Policy
_LEAST_SEEN = AXIS + OVEN + FIRE  # px of the design: below it the whole tab scrolls


class SupperPart(QWidget):
    """What is shown of the plan; it is made in the background."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk, self._link = link.desk, link
        self.setObjectName("plan_supper")
        self.setAccessibleName("Supper")
        self._planning = SupperPlanning.of(link)
        self._planning.changed.connect(self.show_standing)
        self._build(look)
        for key, act in (("Ins", self._toggle_list), ("F10", self._mark_done), ("Ctrl+Shift+F10", self._take_back)):
            for inside in (self, self.tools):
                shortcut = QShortcut(QKeySequence(key), inside, context=Qt.ShortcutContext.WidgetWithChildrenShortcut)
                shortcut.activated.connect(act)
        link.changed.connect(lambda changed: self.show_standing() if changed.supper or changed.settings else None)
        link.time_passed.connect(self.show_standing)
        self.show_standing()

    def _build(self, look: Look) -> None:
        self._table = Field("Table at", "supper_table", "When you want to eat, as 18:30", width=104, caption_width=78)
        self._table.entered.connect(self._set_table)
        self._margin = Choice("sure", "supper_margin", "How sure each heat should be", width=110, caption_width=44)
        self._margin.show_options(_MARGINS, "usual")
        self._margin.chosen.connect(lambda key: self.desk.supper.choose_margin(Margin(key)))
        self._done = button(
            "Done", "supper_done", "The next step is done (F10; with Ctrl+Shift: it is not)", keys="F10"
        )
        self._done.clicked.connect(self._mark_done)
        self._add = button("Add a dish", "supper_add", "Choose a dish to add (Insert)", keys="Ins")
        self._add.clicked.connect(self._toggle_list)
        self.tools = QWidget()  # beside the tabs; other things that are done with a plan find their keys there
        keys = QHBoxLayout(self.tools)
        keys.setContentsMargins(0, 0, 0, 0)
        keys.setSpacing(0)
        save = SaveKey(self.desk)
        for tool in (self._margin, self._done, self._add, save):
            keys.addWidget(tool)
        self._list = DishList(self.desk)
        self._list.setVisible(False)
        self._list.closed.connect(self._close_list)
        self._problem = words(role="problem", name="supper_problem")
        save.told.connect(partial(say, self._problem))
        self._first_fires = CautionLine(look, "supper_first_fires")
        self._told = words(role="place", name="supper_told")
        self._picture = SupperPicture(look, self._table)
        self._picture.moved.connect(self._move)
        self._picture.freed.connect(self.desk.supper.free_step)
        self._picture.removed.connect(self.desk.supper.remove)
        self._picture.bell_pressed.connect(partial(turn_sound, self.desk))
        self._scroll = _Seen(self._picture)
        self._picture.went_to.connect(self._bring_into_sight)
        self._next = NextSteps(look)
        self._next.bell_pressed.connect(partial(turn_sound, self.desk))
        column = QVBoxLayout(self)
        column.setSpacing(STEP // 2)
        for part in (self._first_fires, self._problem, self._list):
            column.addWidget(part)
        self._sounds = SoundKey(self._link, look)
        above = QHBoxLayout()
        above.setSpacing(0)
        above.addWidget(self._told, 1)
        above.addStretch()
        above.addWidget(self._sounds)
        column.addLayout(above)
        column.addWidget(self._scroll, 1)
        column.addWidget(self._next)
        self._first = FirstStep(self.desk, look)
        self._first.table_chosen.connect(self._set_table)
        self._first.dishes_changed.connect(self._take_chosen)
        self._first.list_wanted.connect(self._open_list)
        self._rest = QWidget()
        column.addWidget(self._first, 1)
        column.addWidget(self._rest, 1)
        self._column, self._is_scrolled = column, False
        look.changed.connect(self._fit)

    def showEvent(self, event: QShowEvent) -> None:
        """From now on it is known how high the page is that scrolls it."""
        super().showEvent(event)
        page = self._page
        if page is not None and not self._is_scrolled:
            self._is_scrolled = True
            page.verticalScrollBar().rangeChanged.connect(self._fit)
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What comes next may take another line."""
        super().resizeEvent(event)
        self._fit()

    @property
    def _page(self) -> QScrollArea | None:
        """What scrolls the tab where even the least of it has no room."""
        seen = self.parentWidget()
        page = seen.parentWidget() if seen is not None else None
        return page if isinstance(page, QScrollArea) else None

    def _fit(self) -> None:
        """The picture scrolls by itself while enough of it is in sight above what comes next; or else the tab does."""
        if self._page is None or not self._scroll.isVisibleTo(self):
            return
        room, column = self._page.maximumViewportSize(), self._column
        wide = room.width()
        whole = column.minimumHeightForWidth(wide) if column.hasHeightForWidth() else column.minimumSize().height()
        beside = whole - self._scroll.minimumHeight()
        self._scroll.show_at_least(room.height() - beside)

    def _bring_into_sight(self, y: float) -> None:
        self._scroll.ensureVisible(0, round(y), 0, px(ROW))
        if self._page is not None:
            self._page.ensureVisible(0, self._picture.mapTo(self, QPoint(0, round(y))).y(), 0, px(ROW))

    @property
    def is_busy(self) -> bool:
        """Whether a plan is being made."""
        return self._planning.is_busy

    def show_unit(self) -> None:
        """Degrees in the unit on the screen."""
        self.show_standing()

    def show_standing(self) -> None:
        """Show the meal and its plan as they are now."""
        kept = self.desk.supper.kept
        not_yet = first_fires_words(self.desk)
        self._first_fires.say(not_yet)
        if kept is not None and not self._table.edit.hasFocus():
            self._table.show_text(clock_text(kept.supper.table_at, here(self.desk)))
        if kept is not None and self._margin.key != str(kept.supper.margin):
            self._margin.show_options(_MARGINS, str(kept.supper.margin))
        choosing = self._list.isVisible()
        shown = None if not_yet or choosing else supper_shown(self.desk)
        say(self._problem, "" if not_yet else self._planning.problem)
        self._scroll.setVisible(not choosing)
        self._picture.show_supper(shown)
        # Without a plan only the field of the table's time stands in it.
        self._scroll.setSizePolicy(_POLICY.Expanding, _POLICY.Fixed if shown is None else _POLICY.Ignored)
        for below in (self._next, self._sounds):
            below.setVisible(shown is not None)
        is_empty = not choosing and not not_yet and (kept is None or not kept.supper.dishes)
        if is_empty:
            self._first.show_choices()
        self._first.setVisible(is_empty)
        self._rest.setVisible(shown is None and not is_empty)
        self._column.setStretchFactor(self._scroll, 0 if shown is None else 1)
        self._done.setEnabled(self.desk.supper.next is not None)
        if shown is not None:
            self._next.show_steps(shown.next)
            say(self._told, shown.moved or shown.source)
            for part in (self._next, self._told):
                part.setToolTip(plain_tip(f"{shown.source} {shown.chance}".strip()))
        else:
            is_planning = not (not_yet or choosing or is_empty or self._planning.problem)
            say(self._told, _PLANNING if is_planning else "")
        self._fit()

    # --- what the cook does

    def _set_table(self, text: str) -> None:
        now = self.desk.clock()
        try:
            at = plan_texts.coming(text, now, here(self.desk))
        except InputProblem as problem:
            self._table.show_problem(problem.sentence)
            return
        self._table.show_problem("")
        self.desk.supper.set_table(at)
        self._table.show_text(clock_text(at, here(self.desk)))
        self._take_chosen()
        supper = self.desk.supper.supper
        if supper is not None and not supper.dishes:
            self._open_list()

    def _take_chosen(self) -> None:
        """Plan the dishes that were pressed, once there is a time to eat."""
        if self.desk.supper.supper is None:
            return
        chosen = self._first.chosen
        self._first.let_go()
        for dish in self.desk.supper.dishes:
            if dish.key in chosen:
                self.desk.supper.add(dish)

    def _toggle_list(self) -> None:
        if self._list.isVisible():
            self._close_list()
        else:
            self._open_list()

    def _open_list(self) -> None:
        if self.desk.supper.supper is None:
            self._table.show_problem("Type first when you want to eat.")
            self._table.edit.setFocus()
            return
        self._list.open()
        self.show_standing()

    def _close_list(self) -> None:
        self._list.setVisible(False)
        self.show_standing()
        self._picture.setFocus(Qt.FocusReason.OtherFocusReason)

    def _move(self, step: str, minute: float) -> None:
        begin = self.desk.clock() + timedelta(minutes=minute)
        spare = timedelta(minutes=begin.minute % 5, seconds=begin.second, microseconds=begin.microsecond)
        rounded = begin - spare + (timedelta(minutes=5) if spare >= timedelta(minutes=2.5) else timedelta())
        self.desk.supper.set_step(step, rounded)

    def _mark_done(self) -> None:
        """What is due, or else what comes next, is done; of the fire it goes into the log."""
        moment = self.desk.supper.due or self.desk.supper.next
        if moment is not None:
            do_moment(self.desk, moment)

    def _take_back(self) -> None:
        take_back(self.desk)


class _Seen(ScrollingUp):
    """The picture alone scrolls, so that what comes next stays in sight below it."""

    def __init__(self, picture: SupperPicture) -> None:
        super().__init__(picture)
        self._picture = picture

    def sizeHint(self) -> QSize:
        """All of it, at the size it has now; Qt would keep the first."""
        return self._picture.sizeHint()

    def show_at_least(self, room: int) -> None:
        """Clocks, oven and fire, or what there is instead of a plan; all of it where there is less room [px]."""
        whole = self._picture.sizeHint().height()
        least = min(whole, px(_LEAST_SEEN))
        self.setMinimumHeight(least if least <= room else whole)

    def minimumSizeHint(self) -> QSize:
        """As `show_at_least` says, and no more."""
        return QSize(0, 0)

    def showEvent(self, event: QShowEvent) -> None:
        """While it is hidden nobody is told of another size."""
        super().showEvent(event)
        self.updateGeometry()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The picture has another size."""
        if event.type() is QEvent.Type.LayoutRequest:
            self.updateGeometry()
        return super().eventFilter(watched, event)
