"""The Cook page: live entry with the drawn stove, the trend plot, what if, and recipe fit, arranged for the width."""

from PySide6.QtCore import QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.gui.cook.band_picker import BandPicker
from cookstove_gui.gui.cook.entry_panel import EntryPanel
from cookstove_gui.gui.cook.what_if import WhatIf
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove.stove_drawing import StoveDrawing
from cookstove_gui.gui.time_axis.recipe_fit import RecipeFit
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP

_WIDE = 1200  # pixels from which on the recipe fit has a column of its own
_LEFT_WIDTH, _LEFT_SHARE, _LEFT_WIDEST = 448, 0.3, 640
_LOW = 620  # pixels of height below which fewer entries are listed
_FIT_WIDTH = 304
_FIT_HEIGHT = 150
_ANY = 16_777_215  # Qt's “no limit”


class CookPage(QWidget):
    """Live entry on the left, the oven's trend in the middle, what fits on the right."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._link = link
        self._look = look
        self._is_wide: bool | None = None
        self.setObjectName("cook_page")
        self._build()
        self._drawing.spot_chosen.connect(self._entry.light)

    def _build(self) -> None:
        self._drawing = StoveDrawing(self._link, self._look)
        self._entry = EntryPanel(self._link)
        self._fit = RecipeFit(self._link, self._look)
        self._left = QWidget()
        left = QVBoxLayout(self._left)
        left.setContentsMargins(0, 0, 0, 0)
        left.setSpacing(STEP)
        left.addWidget(self._drawing, 1)
        left.addWidget(self._entry)

        self._all_spots = Key("all spots")
        self._all_spots.setObjectName("plot_all_spots")
        self._all_spots.setCheckable(True)
        self._all_spots.setEnabled(False)
        self._all_spots.setAutoDefault(False)
        self._all_spots.setAccessibleName("Plot readings from the whole stove, not just the oven")
        self._all_spots.setToolTip("Plot readings from the whole stove, not just the oven")
        self._middle = QWidget()
        top = QHBoxLayout()
        top.setSpacing(2 * STEP)
        top.addWidget(BandPicker(self._link), 1)
        top.addWidget(self._all_spots)
        self._plot_place = QVBoxLayout()
        middle = QVBoxLayout(self._middle)
        middle.setContentsMargins(0, 0, 0, 0)
        middle.setSpacing(STEP)
        middle.addLayout(top)
        middle.addLayout(self._plot_place, 1)
        middle.addWidget(WhatIf(self._link))

        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(2 * STEP, STEP, 2 * STEP, STEP)
        self._grid.setHorizontalSpacing(2 * STEP)
        self._grid.setVerticalSpacing(STEP)
        self._arrange(wide=True)

    def bring_plot(self) -> None:
        """Load the plotting library and draw with it; called once, after the first paint."""
        from cookstove_gui.gui.time_axis.trend_plot import TrendPlot

        plot = TrendPlot(self._link, self._look)
        self._plot_place.addWidget(plot)
        self._all_spots.setEnabled(True)
        self._all_spots.toggled.connect(plot.show_cooktop)

    @property
    def has_plot(self) -> bool:
        """Whether the plot has been loaded."""
        return self._plot_place.count() > 0

    def take_focus(self) -> None:
        """Give the keyboard to the number field."""
        self._entry.take_focus()

    def minimumSizeHint(self) -> QSize:
        """Small enough that the other layout can be reached."""
        return QSize(980, 540)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Rearrange for the width."""
        super().resizeEvent(event)
        self._arrange(wide=self.width() >= _WIDE)
        self._left.setFixedWidth(min(max(_LEFT_WIDTH, round(_LEFT_SHARE * self.width())), _LEFT_WIDEST))
        self._entry.set_low(self.height() < _LOW)

    def _arrange(self, *, wide: bool) -> None:
        if wide is self._is_wide:
            return
        self._is_wide = wide
        for part in (self._left, self._middle, self._fit):
            self._grid.removeWidget(part)
        self._grid.addWidget(self._left, 0, 0, 1 if wide else 2, 1)
        self._grid.addWidget(self._middle, 0, 1)
        self._grid.addWidget(self._fit, 0 if wide else 1, 2 if wide else 1)
        self._grid.setColumnStretch(1, 1)
        self._grid.setRowStretch(0, 1)
        self._fit.set_side_by_side(not wide)
        self._fit.setMinimumSize(_FIT_WIDTH if wide else 0, 0 if wide else _FIT_HEIGHT)
        self._fit.setMaximumSize(_FIT_WIDTH if wide else _ANY, _ANY if wide else _FIT_HEIGHT)
