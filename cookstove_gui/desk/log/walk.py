"""The walk round the stove: which spot is lit up for the next number."""

from dataclasses import dataclass

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import Spot, Stove


@dataclass(frozen=True, slots=True)
class Walk:
    """The spots in walking order and the one that is lit up."""

    spots: tuple[Spot, ...]
    lit: int = 0

    @property
    def spot(self) -> Spot:
        """The spot that is lit up."""
        return self.spots[self.lit]

    def moved_on(self, steps: int = 1) -> "Walk":
        """The walk with the spot some steps further lit up, round and round."""
        return Walk(self.spots, (self.lit + steps) % len(self.spots))

    def at(self, name: str) -> "Walk":
        """The walk with the spot of that name lit up."""
        for number, spot in enumerate(self.spots):
            if spot.name == name:
                return Walk(self.spots, number)
        raise InputProblem(f"This stove has no spot “{name}”; add it on the page My stove.")


def walk_of(stove: Stove) -> Walk:
    """The walk round a stove, its first spot lit up."""
    return Walk(stove.spots)


class LitSpot:
    """The walk of the stove in use; the program lights the spot worth reading unless the cook has chosen."""

    def __init__(self, stove: Stove) -> None:
        self.walk = walk_of(stove)
        self._is_held = False  # the cook chose the spot that is lit up, or has begun to type its number

    def begin_again(self, stove: Stove) -> None:
        """Light the first spot of a stove."""
        self.walk = walk_of(stove)

    def keep_on(self, stove: Stove) -> None:
        """Take up a stove's changed spots; the lit one stays lit if it is still there."""
        lit = self.walk.spot.name
        self.walk = walk_of(stove)
        if stove.spot(lit) is not None:
            self.walk = self.walk.at(lit)

    def choose(self, walk: Walk) -> None:
        """Light up the spot that the cook chose."""
        self.walk = walk
        self._is_held = True

    def hold(self) -> None:
        """A number is being typed: the spot it is meant for stays lit."""
        self._is_held = True

    def was_read(self, spot: str) -> None:
        """Move on from the lit spot once it is read; the walk rests after a reading at any spot."""
        if spot == self.walk.spot.name:
            self.walk = self.walk.moved_on()
        self._is_held = False

    def suggest(self, spot: str) -> bool:
        """Light up the spot worth reading next, unless the cook chose one; whether another is lit now."""
        if self._is_held or spot == self.walk.spot.name or all(one.name != spot for one in self.walk.spots):
            return False
        self.walk = self.walk.at(spot)
        return True
