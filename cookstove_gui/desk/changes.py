"""What the desk tells: which kinds of thing changed, and what became of an entry."""

from dataclasses import dataclass

from cookstove_gui.stove.entries import Entry


@dataclass(frozen=True, slots=True, kw_only=True)
class Changed:
    """Which kinds of thing changed; a view redraws only for those that concern it."""

    log: bool = False
    standing: bool = False
    session: bool = False
    stove: bool = False
    band: bool = False
    walk: bool = False
    settings: bool = False
    study: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Receipt:
    """An entry that is on disk by now, and a question about it if its number is unlikely."""

    entry: Entry
    question: str = ""
