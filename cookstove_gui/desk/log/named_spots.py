"""Which spots a typed name may mean: all that fit, so that the cook chooses and nothing is guessed."""

from collections.abc import Sequence

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import OVEN_CENTRE, Spot

MOST_SHOWN = 9  # each is chosen by a digit


def spots_named(spots: Sequence[Spot], text: str) -> tuple[Spot, ...]:
    """The spots that a typed name fits, in the order of the walk, at least one.

    The whole name fits its spot only, and “oven” is the oven's centre, as on every page. Otherwise a spot fits when
    each word typed begins one of its words (`back ri`), or when the letters typed are the last initials of its name
    (`tbr`, `br`). Raises InputProblem when none fits, or more than can be chosen from.
    """
    words = text.lower().replace("_", " ").split()
    whole = " ".join(words)
    fitting = [spot for spot in spots if whole in _names(spot)]
    fitting = fitting or [spot for spot in spots if _begins(words, spot) or _is_initials("".join(words), spot)]
    if not fitting:
        raise InputProblem(
            f"No spot of this stove is called “{text.strip()}”; type part of its name, as “centre” or “back right”."
        )
    if len(fitting) > MOST_SHOWN:
        raise InputProblem(f"“{text.strip()}” fits {len(fitting)} spots; type more of the name.")
    return tuple(fitting)


def _names(spot: Spot) -> set[str]:
    names = {spot.label.lower(), spot.name.lower().replace("_", " ")}
    return names | {"oven"} if spot.name == OVEN_CENTRE else names


def _begins(words: Sequence[str], spot: Spot) -> bool:
    own = {*spot.label.lower().split(), *spot.name.lower().split("_")}
    return all(any(one.startswith(word) for one in own) for word in words)


def _is_initials(letters: str, spot: Spot) -> bool:
    if len(letters) < 2:
        return False
    return any("".join(part[0] for part in name.split()).endswith(letters) for name in _names(spot))
