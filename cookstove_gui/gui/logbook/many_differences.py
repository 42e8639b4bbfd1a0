"""The differences of more sessions than stand side by side: a row for each, by scrolling; Enter lets one stand out."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QWidget

from cookstove_gui.desk.logbook.comparing import Compared
from cookstove_gui.gui.widgets.picture import WaysOut
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import TARGET_PIXELS
from cookstove_gui.phrases.logbook.compare import difference_words, figure_name, figure_words

_STANDS_OUT = "yes"


def heads_of(found: Compared) -> tuple[str, ...]:
    """A column for each of their figures."""
    return ("Day", "In ink", *(figure_name(figure, found.band) for figure in found.found.figures), "Session")


class ManyDifferences(RowTable, WaysOut):
    """The first session in numbers, each other by what it differs."""

    def __init__(self, heads: Sequence[str]) -> None:
        super().__init__(
            "many_differences", "Differences, a row for each session; Enter lets one stand out", heads, stretch=0
        )
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self.setCornerWidget(QWidget())
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.heads = tuple(heads)
        self._said: tuple[TableRow, ...] = ()
        self.values = self._table
        self.setMinimumHeight(px(4 * TARGET_PIXELS))

    def show_compared(self, found: Compared, unit: str, strong: Sequence[int]) -> None:
        """Show the figures of these sessions, and which of them stand out."""
        self._said = tuple(
            TableRow(
                key=str(one.number),
                cells=(
                    one.name,
                    _STANDS_OUT if place in strong else "",
                    *(
                        difference_words(figure, values[0], values[place], unit)
                        if place
                        else figure_words(figure, values[0], unit, likely=figure in found.likely)
                        for figure, values in found.found.figures.items()
                    ),
                    one.title,
                ),
            )
            for place, one in enumerate(found.sessions)
        )
        self.show_rows(self._said)

    def _table(self) -> str:
        return "\n".join("\t".join(row) for row in (self.heads, *(row.cells for row in self._said))) + "\n"
