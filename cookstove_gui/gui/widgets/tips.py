"""Tooltips with typed words in them."""

import html

from PySide6.QtCore import Qt


def plain_tip(text: str) -> str:
    """A tooltip that shows the words to the letter; Qt would read what looks like markup as such."""
    return html.escape(text) if Qt.mightBeRichText(text) else text
