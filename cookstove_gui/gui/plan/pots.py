"""Several pots: what goes on the stove at once, and the spot each one gets."""

from PySide6.QtWidgets import QWidget

from cookstove_gui.desk.plan.pots import PotRow, PotsInputs, place_words, plan_pots, pot_options
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.part import PlanPart
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.phrases.plan.pots import pot_chance, pot_later, pots_headline

_HEADERS = ("what", "where", "chance")
_SHOWN_TASKS = 8
_SETTING = "pots"


class PotsPart(PlanPart[PotsInputs, tuple[PotRow, ...]]):
    """Ticked tasks, each with its place."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(link, "plan_pots", "Several pots", parent)
        self._list = RowTable("pots_list", "What goes on the stove at once", shown_rows=_SHOWN_TASKS)
        self._list.setToolTip("Up and down mark a task, Space ticks it")
        kept = self.desk.setting(_SETTING).split()
        self._list.show_rows([TableRow(cells=(name,), key=key, is_ticked=key in kept) for key, name in pot_options()])
        self._list.ticked.connect(self._tick)
        self.form.addWidget(self._list)
        self._table = RowTable("pots_table", "The place of each", _HEADERS, stretch=1, shown_rows=0, wraps=True)
        self.answer_lines.addWidget(self._table)
        self.column.addStretch(1)
        self.show_nothing("")

    @property
    def ticked(self) -> tuple[str, ...]:
        """Keys of the tasks that are ticked, in the order of the list."""
        return self._list.ticked_keys

    def show_unit(self) -> None:
        """Nothing here has a unit of temperature."""

    def inputs(self) -> PotsInputs | None:
        """The question."""
        standing = self.desk.standing
        return None if standing is None else PotsInputs(standing=standing, stove=self.desk.stove, keys=self.ticked)

    def work_out(self, inputs: PotsInputs) -> tuple[PotRow, ...]:
        """The answer."""
        return plan_pots(inputs)

    def show_answer(self, answer: tuple[PotRow, ...]) -> None:
        """Show each pot's place."""
        without = [row.task.name for row in answer if not row.spot]
        self.headline.setText(pots_headline([row.task.name for row in answer], without))
        self._table.show_rows([TableRow(cells=(row.task.name, place_words(row), self._chance(row))) for row in answer])
        self._table.setVisible(bool(answer))

    def _chance(self, row: PotRow) -> str:
        return pot_chance(row.chance) if row.spot else pot_later(row.later_min, self.edge)

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why."""
        super().show_nothing(why)
        self._table.hide()

    def _tick(self) -> None:
        self.desk.logbook.set_setting(_SETTING, " ".join(self.ticked))
        self.show_standing()
