"""Firings side by side: what the log of each gives in numbers, so that they can be told apart."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from cookstove_gui.cooking.fires.firing_facts import FiringFacts, firing_facts, mean_of_spot
from cookstove_gui.cooking.fires.logged_fires import fraction_or_none, minutes_between, standing_rows
from cookstove_gui.cooking.fires.wood_needs import kilograms_of
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import SpotKind, Stove

SHUT, HALF = 0.05, 0.5  # fraction open of the bypass and of the air
LEAST_COMMON = 3  # spots read in all firings, below which the stove's sides aren't compared


class Figure(StrEnum):
    """What is compared."""

    RISE = "to the heat"  # min
    LOADS = "loads by then"
    WOOD = "wood by then"  # kg
    BYPASS = "bypass shut"  # min
    AIR = "air to half"  # min
    FLUE = "flue, mean"  # K
    BEST = "oven at best"  # K
    SIDES = "left over right"  # K, of the cooktop
    ROOM = "room"  # K


# How large a difference of each is worth as much as one of ten minutes; judgement
WORTH: dict[Figure, float] = {
    Figure.WOOD: 1.0, Figure.BYPASS: 10.0, Figure.AIR: 10.0, Figure.FLUE: 25.0, Figure.ROOM: 5.0,
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """Several firings; the figures have a value for each, none where its log gives none."""

    facts: tuple[FiringFacts, ...]
    figures: dict[Figure, tuple[float | None, ...]]
    common: tuple[str, ...]  # names of the spots read in all of them


def comparison(stove: Stove, sessions: Sequence[Session], band: HeatBand) -> Comparison:
    """The firings of sessions with entries side by side; figures that no log gives are left out."""
    pairs = [(session, facts) for session in sessions if (facts := firing_facts(stove, session, band)) is not None]
    each = [_figures(stove, standing_rows(session.entries), facts) for session, facts in pairs]
    read = [{row.spot for row in session.entries if row.kind is Kind.READING and row.spot} for session, _ in pairs]
    common = tuple(spot.name for spot in stove.spots if read and all(spot.name in one for one in read))
    wanted = [figure for figure in Figure if any(one[figure] is not None for one in each)]
    if len(common) < LEAST_COMMON:
        wanted = [figure for figure in wanted if figure is not Figure.SIDES]
    return Comparison(
        facts=tuple(facts for _, facts in pairs),
        figures={figure: tuple(one[figure] for one in each) for figure in wanted},
        common=common,
    )


def differs_most(found: Comparison, one: int, other: int) -> Figure | None:
    """Of what was done and how it was around, the figure in which two firings differ most; none where none is told."""
    told = {
        figure: abs(found.figures[figure][other] - found.figures[figure][one]) / worth  # type: ignore[operator]
        for figure, worth in WORTH.items()
        if figure in found.figures and None not in (found.figures[figure][one], found.figures[figure][other])
    }
    most = max(told, key=lambda figure: told[figure], default=None)
    return most if most is not None and told[most] >= 0.5 else None


def _figures(stove: Stove, rows: tuple[Entry, ...], facts: FiringFacts) -> dict[Figure, float | None]:
    best = facts.hottest
    until = facts.rise_min if facts.rise_min is not None else best[0] if best else None
    wood = [row for row in rows if row.kind is Kind.WOOD and (until is None or _minute(facts, row) <= until)]
    masses = [kilograms_of(row) for row in wood]
    known = [mass for mass in masses if mass is not None]
    return {
        Figure.RISE: facts.rise_min,
        Figure.LOADS: float(len(wood)) if wood else None,
        Figure.WOOD: sum(known) if known and len(known) == len(masses) else None,
        Figure.BYPASS: _brought_to(facts, rows, Kind.BYPASS, SHUT),
        Figure.AIR: _brought_to(facts, rows, Kind.AIR, HALF),
        Figure.FLUE: _mean(rows, _names(stove, SpotKind.FLUE)),
        Figure.BEST: best[1] if best else None,
        Figure.SIDES: _left_over_right(stove, rows),
        Figure.ROOM: _mean(rows, _names(stove, SpotKind.ROOM)),
    }


def _minute(facts: FiringFacts, row: Entry) -> float:
    return minutes_between(facts.began, row.at)


def _brought_to(facts: FiringFacts, rows: Iterable[Entry], kind: Kind, most: float) -> float | None:
    """When something stood no further open than this for the first time since lighting; none if it never did."""
    for row in rows:
        if row.kind is kind and row.at >= facts.began:
            fraction = fraction_or_none(row)
            if fraction is not None and fraction <= most:
                return _minute(facts, row)
    return None


def _names(stove: Stove, kind: SpotKind) -> list[str]:
    return [spot.name for spot in stove.spots_of(kind)]


def _mean(rows: tuple[Entry, ...], spots: Iterable[str]) -> float | None:
    means = [mean for spot in spots if (mean := mean_of_spot(rows, spot)) is not None]
    return sum(means) / len(means) if means else None


def _left_over_right(stove: Stove, rows: tuple[Entry, ...]) -> float | None:
    tops = stove.spots_of(SpotKind.TOP)
    left = _mean(rows, [spot.name for spot in tops if spot.x < 0.4])
    right = _mean(rows, [spot.name for spot in tops if spot.x > 0.6])
    return None if left is None or right is None else left - right
