"""How one spot of the cooktop or the oven ran in each round so far, against what it is told against."""

from dataclasses import dataclass

from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.desk.my_stove.hot_side import PastReader
from cookstove_gui.forecast.answers import SpotPattern
from cookstove_gui.forecast.learning.hot_side import spot_pattern, walks
from cookstove_gui.stove.entries import fold
from cookstove_gui.stove.stove import SpotKind, Stove

MOST_RINGS = 40  # the latest


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotPast:
    """One spot: how it usually runs, and each of its latest readings less what the others of its round say."""

    stove: str
    spot: str
    usual: SpotPattern | None  # none of a part that is not told so
    rings: tuple[float, ...]  # K against the mean, or the centre; oldest first


def spot_past(asked: tuple[Stove, str], past: PastReader) -> SpotPast:
    """The past of a spot; run off the screen's thread."""
    stove, name = asked
    kind = stove.kind_of(name)
    if kind not in (SpotKind.TOP, SpotKind.OVEN) or name == stove.oven_spot:  # the others are told against that
        return SpotPast(stove=stove.name, spot=name, usual=None, rings=())
    sessions = meant_sessions(stove, past(stove.name))
    pattern = {row.spot: row for row in spot_pattern(stove, sessions, kind)}
    names = [spot.name for spot in stove.spots_of(kind)]
    own = names.index(name)
    rings = []
    for session in sessions:
        for indices, values in walks(fold(session.entries), names):
            read = list(zip(indices, values.tolist(), strict=True))
            others = [value - pattern[names[index]].mean for index, value in read if index != own]
            if others:
                level = sum(others) / len(others)
                rings += [value - level for index, value in read if index == own]
    return SpotPast(stove=stove.name, spot=name, usual=pattern[name], rings=tuple(rings[-MOST_RINGS:]))
