"""Typed words that a spreadsheet would run as a formula, made plain in a CSV file and read back to the letter.

A cell that begins with `=`, `+`, `-`, `@`, a tab or a return gets an apostrophe in front, as OWASP's page on CSV
injection advises; one that begins with apostrophes and then such a sign gets one more, so that reading takes off what
writing put on. Plain numbers, such as -5, run nothing and stay.
"""

import re

_RUNS = re.compile(r"'*[=+\-@\t\r]")
_GUARDED = re.compile(r"'+[=+\-@\t\r]")
_NUMBER = re.compile(r"[+-]?\d+(?:[.,]\d+)?")


def guarded(text: str) -> str:
    """The text as it goes into a CSV file."""
    return f"'{text}" if _RUNS.match(text) and not _NUMBER.fullmatch(text) else text


def unguarded(text: str) -> str:
    """The text that was typed, from a cell of a CSV file."""
    return text[1:] if _GUARDED.match(text) else text
