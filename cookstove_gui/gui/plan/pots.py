"""Several pots: what stands on the stove at once, the spot each one gets, and what is to be moved."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.desk.plan.kept_pots import KeptPots, keep_pots, kept_pots, moved, put_on, with_pot, without_pot
from cookstove_gui.desk.plan.pots import (
    PotRow,
    PotsInputs,
    PotsPlan,
    headline_of,
    next_spot,
    place_words,
    plan_pots,
    pot_options,
    reasons_of,
)
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.part import PlanPart
from cookstove_gui.gui.plan.pots_on_top import PotsOnTop
from cookstove_gui.gui.widgets.form import Choice, say, words
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.plan.pots import pot_chance, pot_later

_HEADERS = ("what", "where", "chance")
_NOTHING = ("", "choose")


class PotsPart(PlanPart[PotsInputs, PotsPlan]):
    """The cooktop with its pots at the left, a row for each at the right."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        self._top = PotsOnTop(look)
        self._plan: PotsPlan | None = None
        self._why = words(role="soft", name="pots_why")
        super().__init__(link, "plan_pots", "Several pots", parent)
        self._add = Choice("Add a pot", "pots_add", "One pot more on the stove (Insert)", width=230, caption_width=100)
        self._add.show_options((_NOTHING, *pot_options()), "")
        self._add.chosen.connect(self._add_pot)
        self._top.pressed.connect(self._mark)
        self._table = RowTable(
            "pots_table", "The pots and the place of each", _HEADERS, stretch=1, shown_rows=0, wraps=True
        )
        self._table.setToolTip("Up and down mark a pot, Delete takes it off, left and right give it another spot")
        self._off = Key("Take it off", "Del")
        self._off.setObjectName("pots_off")
        self._off.setToolTip("Take the marked pot off the stove (Delete)")
        self._off.clicked.connect(self._take_off)
        self._moved = Key("Moved", "F10")
        self._moved.setObjectName("pots_moved")
        self._moved.setToolTip("The pots stand where they should now (F10)")
        self._moved.clicked.connect(self._move)
        keys = QHBoxLayout()
        keys.addWidget(self._off)
        keys.addWidget(self._moved)
        keys.addStretch(1)
        for part in (self._table, self._add):
            self._side.addWidget(part)
        self._side.addLayout(keys)
        self._side.addStretch(1)
        for key, act in (
            ("Del", self._take_off),
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
        self._side = QVBoxLayout()
        self._side.setSpacing(STEP)
        left = QVBoxLayout()
        left.addWidget(self._top, 1)
        left.addWidget(self._why)
        both = QHBoxLayout()
        both.setSpacing(3 * STEP)
        both.addLayout(left, 6)
        both.addLayout(self._side, 5)
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
        waits = standing is not None and self.desk.is_live and not self.first_fires.text() and self._plan is None
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
        if self._asked is None or self._asked.kept != self.kept or standing is None:
            return  # a pot was added, taken off or moved meanwhile; the answer to that is on its way
        self._plan = answer
        if self.desk.is_live:
            keep_pots(self.desk, answer.kept)
        self.headline.setText(headline_of(answer))
        marked = self._table.key
        self._table.show_rows(
            [
                TableRow(cells=(row.task.name, place_words(row), self._chance(row)), key=str(row.number))
                for row in answer.rows
            ]
        )
        self._table.choose(marked)
        self._table.setVisible(bool(answer.rows))
        self._off.setVisible(bool(answer.rows))
        self._moved.setVisible(any(row.moves for row in answer.rows))
        say(self._why, "\n".join(reasons_of(answer, standing, self.edge)))
        self._top.show_pots(self.desk.stove, spot_heats(self.desk), answer.rows, self.edge)
        self._top.show()

    def _chance(self, row: PotRow) -> str:
        return pot_chance(row.chance) if row.spot else pot_later(row.later_min, self.edge)

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why."""
        super().show_nothing(why)
        for part in (self._table, self._off, self._moved, self._top):
            part.hide()
        self._add.setVisible(not self.first_fires.text())
        say(self._why, "")

    def _open_list(self) -> None:
        self._add.box.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self._add.box.showPopup()

    def _add_pot(self, task: str) -> None:
        self._add.show_options((_NOTHING, *pot_options()), "")
        if task:
            self._keep(with_pot(self.kept, task))

    def _take_off(self) -> None:
        if self._table.key:
            self._keep(without_pot(self.kept, int(self._table.key)))

    def _move(self) -> None:
        self._keep(moved(self.kept))

    def _mark(self, spot: str) -> None:
        """Mark the row of the pot on a plate."""
        rows = self._plan.rows if self._plan is not None else ()
        here = [str(row.number) for row in rows if spot in (row.spot, row.stands, row.later_at)]
        if here:
            self._table.choose(here[0])
            self._table.setFocus()

    def _choose_spot(self, steps: int) -> None:
        """Give the marked pot the next spot, as the cook wants it."""
        standing, plan = self.desk.standing, self._plan
        if standing is None or plan is None or not self._table.key:
            return
        number = int(self._table.key)
        self._keep(put_on(self.kept, number, next_spot(plan, number, standing, steps)))

    def _keep(self, kept: KeptPots) -> None:
        keep_pots(self.desk, kept)
        self.show_standing()
