"""Words in which no line ends between a number and its unit."""

import re

from PySide6.QtWidgets import QLabel

_NO_BREAK = "\N{NO-BREAK SPACE}"
_BEFORE_A_UNIT = re.compile(r"(?<=\d) (?=(?:°[FC]|lb|kg|min|h|ft|Pa|kW)\b)")


class Unbroken(QLabel):
    """A label that is told, and tells, its words with plain spaces."""

    def setText(self, text: str) -> None:
        """Other words."""
        super().setText(_BEFORE_A_UNIT.sub(_NO_BREAK, text))

    def text(self) -> str:
        """The words as they were given."""
        return super().text().replace(_NO_BREAK, " ")
