"""How often each caution was due over the sessions of a season; every log is followed once, so it takes a while."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook.opened import asked_about
from cookstove_gui.reports.season_cautions import CautionCount, caution_titles, commonest


@dataclass(frozen=True, slots=True, kw_only=True)
class Counted:
    """Of so many sessions, in how many each caution was due, the commonest first."""

    sessions: int
    cautions: tuple[CautionCount, ...]


class CautionCounts:
    """Keeps what was found of each session until that grows; may run in a thread."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._kept: dict[tuple[int, int], tuple[str, ...]] = {}

    def counted(
        self, numbers: Sequence[int], progressed: Callable[[int, int], None], cancelled: Callable[[], bool]
    ) -> Counted | None:
        """The cautions of these sessions; none where it was given up."""
        found = []
        for place, number in enumerate(numbers):
            if cancelled():
                return None
            found.append(self._titles(number))
            progressed(place + 1, len(numbers))
        return Counted(sessions=len(numbers), cautions=commonest(found))

    def _titles(self, number: int) -> tuple[str, ...]:
        asked = asked_about(self._desk, number)
        if asked is None:
            return ()
        key = (number, len(asked.inputs.rows))
        if key not in self._kept:
            self._kept[key] = caution_titles(asked.inputs)
        return self._kept[key]
