"""The walk round the stove: which spot is lit up for the next number."""

from dataclasses import dataclass, replace

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import Spot, Stove


@dataclass(frozen=True, slots=True)
class Walk:
    """The spots in walking order and the one that is lit up; those left out are passed by, but may be lit by name."""

    spots: tuple[Spot, ...]
    lit: int = 0
    left_out: frozenset[str] = frozenset()

    @property
    def spot(self) -> Spot:
        """The spot that is lit up."""
        return self.spots[self.lit]

    def moved_on(self, steps: int = 1) -> "Walk":
        """The walk with the spot some steps further lit up, round and round."""
        numbers = [number for number, spot in enumerate(self.spots) if spot.name not in self.left_out]
        numbers = numbers or list(range(len(self.spots)))
        place = sum(number < self.lit for number in numbers) + steps
        if self.lit not in numbers and steps > 0:  # from beside the walk its next spot is one step on
            place -= 1
        return replace(self, lit=numbers[place % len(numbers)])

    @property
    def on_walk(self) -> tuple[Spot, ...]:
        """The spots that are walked to, in their order."""
        return tuple(spot for spot in self.spots if spot.name not in self.left_out)

    def at(self, name: str) -> "Walk":
        """The walk with the spot of that name lit up."""
        for number, spot in enumerate(self.spots):
            if spot.name == name:
                return replace(self, lit=number)
        raise InputProblem(f"This stove has no spot “{name}”; add it on the page My stove.")


def walk_of(stove: Stove) -> Walk:
    """The walk round a stove, its first spot lit up."""
    walk = Walk(stove.spots, left_out=frozenset(stove.left_out))
    return walk.at(walk.on_walk[0].name) if walk.on_walk else walk


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
        if self._is_held or spot == self.walk.spot.name or all(one.name != spot for one in self.walk.on_walk):
            return False
        self.walk = self.walk.at(spot)
        return True
