"""Words that stay in one line: of several ways to say it the longest that fits is shown, never cut, never broken."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.gui.widgets.type import BODY, font

_LEAST = 12  # px of the design; below it the words would be of no use


class OneLine(QLabel):
    """Shows the first rung that fits at one of the sizes, in that order; its tooltip and spoken text are the whole."""

    def __init__(
        self,
        sizes: Sequence[float] = (BODY,),
        weight: int = 400,
        *,
        colour: QPalette.ColorRole = QPalette.ColorRole.WindowText,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._sizes = tuple(sizes)
        self._weight = weight
        self._colour = colour
        self._size = self._sizes[0]
        self._rungs: tuple[str, ...] = ()
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)

    @property
    def rungs(self) -> tuple[str, ...]:
        """Every way to say it, from long to short."""
        return self._rungs

    def show_rungs(self, rungs: Sequence[str]) -> None:
        """Show what can be said in these ways, from long to short."""
        self._rungs = tuple(rungs)
        whole = self._rungs[0] if self._rungs else ""
        self.setToolTip(plain_tip(whole))
        self.setAccessibleName(whole)
        self.fit()

    def set_sizes(self, sizes: Sequence[float]) -> None:
        """Sizes of type that are tried, the largest first."""
        self._sizes = tuple(sizes)
        self.updateGeometry()
        self.fit()

    def fit(self) -> None:
        """Choose again, for another width or another size of type."""
        chosen, self._size = self._chosen()
        if chosen != self.text():
            self.setText(chosen)
        self.update()

    @property
    def shown_width(self) -> float:
        """Pixels that the words shown take."""
        return self._width_of(self.text(), self._size)

    @property
    def is_squeezed(self) -> bool:
        """Whether no way to say it fits at any of its sizes, so that the type steps down."""
        return self._size < self._sizes[-1]

    def _width_of(self, words: str, size: float) -> float:
        return QFontMetricsF(font(size, self._weight)).horizontalAdvance(words) + self.lead(words)

    def lead(self, _words: str) -> float:
        """Pixels kept free before the words, for a sign."""
        return 0.0

    def _chosen(self) -> tuple[str, float]:
        for rung in self._rungs:
            for size in self._sizes:
                if self._width_of(rung, size) <= self.width():
                    return rung, size
        if not self._rungs:
            return "", self._sizes[0]
        # Words of a cook's own may be longer than any window: the type steps down rather than the words being cut.
        size = self._sizes[-1]
        while size > _LEAST and self._width_of(self._rungs[-1], size) > self.width():
            size -= 1
        return self._rungs[-1], size

    def sizeHint(self) -> QSize:
        """As wide as the longest way to say it, as high as its largest type."""
        metrics = QFontMetricsF(font(self._sizes[0], self._weight))
        wide = metrics.horizontalAdvance(self._rungs[0]) if self._rungs else 0.0
        return QSize(round(wide + 1), round(metrics.capHeight() * 1.9))

    def minimumSizeHint(self) -> QSize:
        """It takes what it is given."""
        return QSize(0, self.sizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width, another rung."""
        super().resizeEvent(event)
        self.fit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The words, by their capitals in the middle."""
        painter = QPainter(self)
        face = font(self._size, self._weight)
        line = QFontMetricsF(face)
        painter.setFont(face)
        painter.setPen(self.palette().color(self._colour))
        base = (self.height() + line.capHeight()) / 2
        painter.drawText(
            QRectF(self.lead(self.text()), base - line.ascent(), self.width() + 1, line.height()), 0, self.text()
        )
