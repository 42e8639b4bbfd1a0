"""What is said about the drawing of a stove while its owner edits it."""

from collections.abc import Sequence
from datetime import date

from cookstove_gui.phrases.edge import full_date, listed, readings_count
from cookstove_gui.stove.stove import SpotKind, Stove

_KINDS = {
    SpotKind.TOP: "on the top",
    SpotKind.OVEN: "in the oven",
    SpotKind.SIDE: "on a side",
    SpotKind.GLASS: "on the firebox door",
    SpotKind.FLUE: "on the pipe",
    SpotKind.ROOM: "in the room",
    SpotKind.WALL: "outside the stove",
}


def kind_words(kind: SpotKind) -> str:
    """Where a spot of a kind lies."""
    return _KINDS[kind]


def place_words(place: int, of: int) -> str:
    """`10th of 14`; 0 for a spot that is left out."""
    if not place:
        return "left out"
    last = "th" if place % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(place % 10, "th")
    return f"{place}{last} of {of}"


def plates_question(labels: Sequence[str], readings: int) -> str:
    """Asked before plates are left out whose spots were read."""
    verb = "has" if len(labels) == 1 else "have"
    return (
        f"{listed(labels)} {verb} {readings_count(readings)}. Take {'it' if len(labels) == 1 else 'them'} off the "
        "drawing? The readings stay in the log."
    )


def taken_words(taken: str, on_table: str) -> str:
    """After a stove was taken in from a file: that it is there, and that nothing else has changed."""
    if taken == on_table:
        return f"“{taken}” is just as it is here already."
    return f"“{taken}” is among your stoves now; “{on_table}” is still the one on the table."


def foot_words(stove: Stove, first: date | None) -> str:
    """Below a stove's name: since when its fires are logged, and how long its walk is."""
    since = f"fired since {full_date(first)}" if first is not None else "no fire logged yet"
    walked = len([spot for spot in stove.spots if spot.name not in stove.left_out])
    return f"{since}, {'1 spot' if walked == 1 else f'{walked} spots'} on the walk"
