"""The walk changed by the cook, kept for the stove: the lit spot, or one named, read earlier, later or not at all."""

from dataclasses import replace

from cookstove_gui.desk.desk import Desk


def place_on_walk(desk: Desk, name: str = "") -> tuple[int, int]:
    """A spot's place on the walk, from 1 (0 where it is left out), and how many spots are on it."""
    names = [spot.name for spot in desk.walk.on_walk]
    wanted = name or desk.walk.spot.name
    return (names.index(wanted) + 1 if wanted in names else 0), len(names)


def read_sooner(desk: Desk, steps: int, name: str = "") -> None:
    """Read a spot so many places later on the walk, or earlier, below 0; the rest keep their order."""
    names = [spot.name for spot in desk.walk.on_walk]
    moved = name or desk.walk.spot.name
    if moved not in names:
        return
    place = names.index(moved)
    names.insert(min(max(place + steps, 0), len(names) - 1), names.pop(place))
    on_walk = (spot for name in names if (spot := desk.stove.spot(name)) is not None)
    spots = tuple(spot if spot.name in desk.stove.left_out else next(on_walk) for spot in desk.stove.spots)
    if spots != desk.stove.spots:
        desk.save_stove(replace(desk.stove, spots=spots))


def leave_out(desk: Desk, wanted: bool, name: str = "") -> None:
    """Leave a spot out of the walk, or take it up again; it can still be read by name or by a click."""
    left = name or desk.walk.spot.name
    names = tuple(one for one in desk.stove.left_out if one != left)
    desk.save_stove(replace(desk.stove, left_out=(*names, left) if wanted else names))
