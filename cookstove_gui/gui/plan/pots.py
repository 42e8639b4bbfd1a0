"""Several pots: what stands on the stove at once, the spot each one gets, and what is to be moved."""

from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.desk.plan.kept_pots import KeptPots, keep_pots, kept_pots, moved, put_on, with_pot, without_pot
from cookstove_gui.desk.plan.pots import (
    PotRow,
    PotsInputs,
    PotsPlan,
    headline_of,
    line_of,
    next_spot,
    plan_pots,
    pot_options,
    reasons_of,
)
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.part import PlanPart
from cookstove_gui.gui.plan.pot_rows import PotRows, ShownPot
from cookstove_gui.gui.plan.pots_on_top import PotsOnTop
from cookstove_gui.gui.widgets.form import Choice, say, words
from cookstove_gui.gui.widgets.key import named_key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import capital
from cookstove_gui.phrases.plan.pots import moved_words, oven_cost_words, places_words
from cookstove_gui.stove.stove import SpotKind

_ADD = "Add a pot"
_NOTHING = ("", _ADD)
_TOGETHER = "Why these spots: together they give the best chances now."
_KEYS = "Up and down mark a pot, Del takes it off; left and right give it another spot."


class PotsPart(PlanPart[PotsInputs, PotsPlan]):
    """The cooktop with its pots at the left, a row for each at the right."""

    fills = True

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        self._top, self._rows = PotsOnTop(look), PotRows(look)
        self._plan: PotsPlan | None = None
        self._nowhere = words("No place now", role="strong", name="pots_nowhere")
        self._why = words(name="pots_why")
        self._together = words(_TOGETHER, role="note", name="pots_together")
        self._on_stove = words("On the stove", role="strong", name="pots_on_stove")
        self._on_stove.setWordWrap(False)
        self._placed = words(role="soft", name="pots_placed")
        self._placed.setWordWrap(False)
        self._keys = words(_KEYS, role="note", name="pots_keys")
        self._add = Choice(_ADD, "pots_add", "One pot more on the stove (Insert)", width=None)
        self._add.show_options((_NOTHING, *pot_options()), "")
        self._moved = named_key(
            "Moved", "pots_moved", "The pots stand where they should now (F10)", keys="F10", role="main"
        )
        super().__init__(link, look, "plan_pots", "Several pots", parent)
        self._add.chosen.connect(self._add_pot)
        self._top.pressed.connect(self._mark)
        self._rows.taken_off.connect(self._take_off)
        self._moved.clicked.connect(self._move)
        for key, act in (
            ("Del", lambda: self._take_off(self._rows.key)),
            ("F10", self._move),
            ("Ins", self._open_list),
            ("Left", lambda: self._choose_spot(-1)),
            ("Right", lambda: self._choose_spot(1)),
        ):
            shortcut = QShortcut(QKeySequence(key), self, context=Qt.ShortcutContext.WidgetWithChildrenShortcut)
            shortcut.activated.connect(act)
        self.show_nothing("")

    def _side_by_side(self) -> QHBoxLayout:
        """The headline over both; the cooktop at the left, the rows at the right."""
        left, right = QVBoxLayout(), QVBoxLayout()
        for column in (left, right):
            column.setSpacing(STEP)
        left.addWidget(self._top, 100)
        for line in (self._nowhere, self._why, self._together):
            left.addWidget(line)
        left.addStretch(1)
        heading = QHBoxLayout()
        heading.setSpacing(2 * STEP)
        heading.addWidget(self._on_stove)
        heading.addWidget(self._placed)
        heading.addStretch(1)
        keys = QHBoxLayout()
        keys.setSpacing(STEP)
        keys.addWidget(self._add, 1)
        keys.addWidget(self._moved)
        right.addLayout(heading)
        right.addWidget(self._rows)
        right.addLayout(keys)
        right.addWidget(self._keys)
        right.addStretch(1)
        both = QHBoxLayout()
        both.setSpacing(4 * STEP)
        both.addLayout(left, 6)
        both.addLayout(right, 5)
        column = QVBoxLayout()
        column.setSpacing(STEP)
        column.addWidget(self._answer)
        column.addLayout(both, 1)
        whole = QHBoxLayout()
        whole.addLayout(column)
        return whole

    @property
    def kept(self) -> KeptPots:
        """The pots as kept."""
        return kept_pots(self.desk)

    def show_unit(self) -> None:
        """The heats on the cooktop are drawn in the unit on the screen."""
        self._top.update()

    def show_standing(self) -> None:
        """Work the places out again; until they are known the cooktop is shown as it is."""
        super().show_standing()
        standing = self.desk.standing
        waits = standing is not None and self.desk.is_live and self.first_fires.isHidden() and self._plan is None
        if self.isVisible() and waits and self.desk.entries:
            self._top.show_pots(self.desk.stove, spot_heats(self.desk), (), self.edge)
            self._top.show()

    def inputs(self) -> PotsInputs | None:
        """The question."""
        standing = self.desk.standing
        return None if standing is None else PotsInputs(standing=standing, stove=self.desk.stove, kept=self.kept)

    def work_out(self, inputs: PotsInputs) -> PotsPlan:
        """The answer."""
        return plan_pots(inputs)

    def show_answer(self, answer: PotsPlan) -> None:
        """Show each pot's place, and keep it, so that the next answer does not move it about."""
        standing = self.desk.standing
        if self._answered is None or self._answered.kept != self.kept or standing is None:
            return  # a pot was added, taken off or moved meanwhile; the answer to that is on its way
        self._plan = answer
        if self.desk.is_live:
            keep_pots(self.desk, answer.kept)
        self.headline.show_rungs(headline_of(answer, self.edge))
        self._rows.show_pots([self._shown(row) for row in answer.rows], self.edge)
        self._placed.setText(places_words(len(answer.rows), sum(bool(row.spot) for row in answer.rows)))
        for part in (self._on_stove, self._placed, self._rows, self._keys):
            part.setVisible(bool(answer.rows))
        moving = [row.task.name for row in answer.rows if row.moves]
        self._moved.setText(moved_words(moving))
        self._moved.setVisible(bool(moving))
        why = reasons_of(answer, standing, self.edge)
        say(self._why, "\n".join(why))
        self._nowhere.setVisible(bool(why))
        on_top = sum(bool(row.spot) and row.task.place is Place.TOP for row in answer.rows)
        costs = oven_cost_words(answer.oven_cost, on_top, self.edge)
        say(self._together, " ".join([*([_TOGETHER] if len(answer.rows) > 1 else []), *([costs] if costs else [])]))
        self._top.show_pots(self.desk.stove, spot_heats(self.desk), answer.rows, self.edge)
        self._top.show()
        spots = [self._top.patch(spot.name) for spot in self.desk.stove.spots_of(SpotKind.TOP)]
        for one, following in pairwise([*spots, *self._rows.controls, self._add.box, self._moved]):
            QWidget.setTabOrder(one, following)

    def _shown(self, row: PotRow) -> ShownPot:
        return ShownPot(
            number=row.number,
            name=capital(row.task.name),
            line=line_of(row, self.edge),
            moves=row.moves,
            from_min=row.later_min or 0.0,
            until_min=row.until_min,
            place=row.label or row.later_spot,
            heat=row.heat,
        )

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why."""
        super().show_nothing(why)
        self._rows.show_pots((), self.edge)
        for part in (
            self._on_stove, self._placed, self._rows, self._keys, self._moved, self._top, self._nowhere, self._together
        ):  # fmt: skip
            part.setVisible(False)
        self._add.setVisible(self.first_fires.isHidden())
        say(self._why, "")
        if not self.desk.entries:  # cold iron, as on Cook
            self._top.show_pots(self.desk.stove, spot_heats(self.desk), (), self.edge)
            self._top.show()

    def _open_list(self) -> None:
        self._add.box.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self._add.box.showPopup()

    def _add_pot(self, task: str) -> None:
        self._add.show_options((_NOTHING, *pot_options()), "")
        if task:
            self._keep(with_pot(self.kept, task))

    def _take_off(self, number: str) -> None:
        if number:
            self._keep(without_pot(self.kept, int(number)))

    def _move(self) -> None:
        self._keep(moved(self.kept))

    def _mark(self, spot: str) -> None:
        """Mark the row of the pot on a plate."""
        rows = self._plan.rows if self._plan is not None else ()
        here = [str(row.number) for row in rows if spot in (row.spot, row.stands, row.later_at)]
        if here:
            self._rows.choose(here[0])
            self._rows.take_focus()

    def _choose_spot(self, steps: int) -> None:
        """Give the marked pot the next spot, as the cook wants it."""
        standing, plan = self.desk.standing, self._plan
        if standing is None or plan is None or not self._rows.key:
            return
        number = int(self._rows.key)
        self._keep(put_on(self.kept, number, next_spot(plan, number, standing, steps)))

    def _keep(self, kept: KeptPots) -> None:
        keep_pots(self.desk, kept)
        self.show_standing()
