"""Several pots: what is to be on the stove at once, and the spot that each one gets."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QListWidget,
    QListWidgetItem,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from cookstove_gui.desk.plan.pots import PotRow, PotsInputs, place_words, plan_pots, pot_options
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.part import PlanPart
from cookstove_gui.gui.widgets.form import say, words
from cookstove_gui.gui.widgets.theme import TARGET_PIXELS
from cookstove_gui.phrases.plan.pots import pot_chance, pot_later, pots_headline

_HEADERS = ("what", "where", "chance")
_SHOWN_TASKS = 8
_KEY = Qt.ItemDataRole.UserRole
_SETTING = "pots"


class PotsPart(PlanPart[PotsInputs, tuple[PotRow, ...]]):
    """Tasks that are ticked, each with its place."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(link, "plan_pots", "Several pots", parent)
        self._fires = words(role="caution", name="pots_first_fires")
        self.column.insertWidget(1, self._fires)
        self._list = QListWidget()
        self._list.setObjectName("pots_list")
        self._list.setAccessibleName("What is to be on the stove at once")
        self._list.setToolTip("Up and down mark a task, Space ticks it")
        self._list.setFixedHeight(_SHOWN_TASKS * TARGET_PIXELS)
        ticked = self.desk.setting(_SETTING).split()
        for key, name in pot_options():
            item = QListWidgetItem(name)
            item.setSizeHint(QSize(0, TARGET_PIXELS))
            item.setData(_KEY, key)
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            item.setCheckState(Qt.CheckState.Checked if key in ticked else Qt.CheckState.Unchecked)
            self._list.addItem(item)
        self._list.setCurrentRow(0)
        self._list.itemChanged.connect(self._tick)
        self.form.addWidget(self._list)
        self._table = QTableWidget(0, len(_HEADERS))
        self._table.setObjectName("pots_table")
        self._table.setAccessibleName("The place of each")
        self._table.setHorizontalHeaderLabels(list(_HEADERS))
        self._table.verticalHeader().hide()
        self._table.verticalHeader().setDefaultSectionSize(TARGET_PIXELS)
        self._table.setShowGrid(False)
        self._table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self._table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self._table.setTabKeyNavigation(False)
        header = self._table.horizontalHeader()
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(len(_HEADERS) - 1, QHeaderView.ResizeMode.Stretch)
        header.setSectionsClickable(False)
        header.setHighlightSections(False)
        self.answer_lines.addWidget(self._table)
        self.column.addStretch(1)
        self.show_nothing("")

    @property
    def ticked(self) -> tuple[str, ...]:
        """Keys of the tasks that are ticked, in the order of the list."""
        items = (self._list.item(place) for place in range(self._list.count()))
        return tuple(str(item.data(_KEY)) for item in items if item.checkState() is Qt.CheckState.Checked)

    def show_unit(self) -> None:
        """Nothing here has a unit."""

    def show_standing(self) -> None:
        """Ask again; while first fires are to be done there is no food to place."""
        fires = self.desk.first_fires
        say(self._fires, fires.line if fires.next is not None else "")
        if fires.next is not None:
            self.show_nothing("")
            return
        super().show_standing()

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
        self._table.setRowCount(len(answer))
        for place, row in enumerate(answer):
            for column, text in enumerate((row.task.name, place_words(row), self._chance(row))):
                self._table.setItem(place, column, QTableWidgetItem(text))
        self._table.setVisible(bool(answer))
        self._table.setFixedHeight(len(answer) * TARGET_PIXELS + self._table.horizontalHeader().sizeHint().height() + 8)

    def _chance(self, row: PotRow) -> str:
        return pot_chance(row.chance) if row.spot else pot_later(row.later_min, self.edge)

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why."""
        super().show_nothing(why)
        self._table.hide()

    def _tick(self, _item: QListWidgetItem) -> None:
        self.desk.logbook.set_setting(_SETTING, " ".join(self.ticked))
        self.show_standing()
