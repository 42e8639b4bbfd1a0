"""Tooltips with typed words in them."""

import html


def plain_tip(text: str) -> str:
    """A tooltip that shows the words to the letter; Qt would read what looks like markup as such."""
    return f"<span>{html.escape(text)}</span>" if "<" in text else text
