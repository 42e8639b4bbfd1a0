"""One sentence of the program, and the page, plot or command that it stands on."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A sentence and where it stands."""

    place: str  # headline, rung, detail, question, plot, large, lane, caution; outlook, fit (commands); Plan's parts
    text: str
