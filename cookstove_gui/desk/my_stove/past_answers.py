"""What a stove's past answers on the page My stove; the caller runs these off the screen's thread."""

from collections.abc import Callable
from dataclasses import dataclass

from cookstove_gui.cooking.fires.burn_times import BurnSummary, MeasuredBurn, burn_times, summary
from cookstove_gui.cooking.fires.rise_and_hold import RiseAndHold, rise_and_hold
from cookstove_gui.forecast import spot_pattern
from cookstove_gui.forecast.answers import SpotPattern
from cookstove_gui.stove.entries import HeatBand, Session
from cookstove_gui.stove.stove import Stove

PastReader = Callable[[str], tuple[Session, ...]]  # a stove's name to its sessions


@dataclass(frozen=True, slots=True, kw_only=True)
class HotSide:
    """The pattern of one stove's cooktop."""

    stove: str
    pattern: tuple[SpotPattern, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Firing:
    """How one stove fires."""

    stove: str
    rise: RiseAndHold
    burns: tuple[MeasuredBurn, ...]
    summary: BurnSummary


def hot_side(stove: Stove, past: PastReader) -> HotSide:
    """How much hotter or cooler than the cooktop's mean each spot runs over all sessions."""
    return HotSide(stove=stove.name, pattern=spot_pattern(stove, past(stove.name)))


def firing(stove: Stove, band: HeatBand, past: PastReader) -> Firing:
    """How long the stove takes to a heat, holds it, and how long its shut-down loads last."""
    sessions = past(stove.name)
    burns = burn_times(stove, sessions)
    return Firing(stove=stove.name, rise=rise_and_hold(stove, sessions, band), burns=burns, summary=summary(burns))
