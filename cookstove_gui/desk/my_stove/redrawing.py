"""Changes made on the drawing of a stove: each is kept at once, and can be taken back as long as the page is open."""

from collections.abc import Callable

from cookstove_gui.desk.desk import Desk
from cookstove_gui.stove.redrawn import left_out
from cookstove_gui.stove.stove import Stove

_MOST = 100  # changes that can be taken back


class Redrawing:
    """The desk's stove, changed on its drawing, with the way back."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._before: list[Stove] = []

    @property
    def can_take_back(self) -> bool:
        """Whether there is a change of this stove to take back."""
        return bool(self._before) and self._before[-1].name == self._desk.stove.name

    def draw(self, stove: Stove) -> None:
        """Keep a stove drawn otherwise."""
        if stove != self._desk.stove:
            self.change(lambda: self._desk.save_stove(stove))

    def change(self, make: Callable[[], object]) -> None:
        """Make a change that keeps itself; one that is refused leaves nothing to take back."""
        before = self._desk.stove
        make()
        if self._desk.stove != before:
            self._before = [*self._before[-_MOST + 1 :], before]

    def take_back(self) -> None:
        """Draw the stove as it was before the latest change."""
        if self.can_take_back:
            self._desk.save_stove(self._before.pop())

    def readings_of(self, name: str) -> int:
        """How many readings the log holds of a spot."""
        return self._desk.logbook.facts.readings_by_spot(self._desk.stove.name).get(name, 0)

    def readings_lost(self, after: Stove) -> int:
        """How many readings the spots hold that a change would leave out; the log keeps them all the same."""
        counts = self._desk.logbook.facts.readings_by_spot(self._desk.stove.name)
        return sum(counts.get(spot.name, 0) for spot in left_out(self._desk.stove, after))
