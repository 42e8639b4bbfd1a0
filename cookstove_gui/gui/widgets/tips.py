"""Tooltips with typed words in them."""


def plain_tip(text: str) -> str:
    """A tooltip that shows the words to the letter; Qt would read what looks like markup as such."""
    if "<" not in text:
        return text
    from html import escape  # rarely wanted, and its table of entities is slow to load

    return f"<span>{escape(text)}</span>"
