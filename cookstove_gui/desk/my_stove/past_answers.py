"""What a stove's past answers on the page My stove; the caller runs these off the screen's thread."""

from collections.abc import Callable
from dataclasses import dataclass

from cookstove_gui.cooking.fires.burn_times import BurnSummary, MeasuredBurn, burn_times, summary
from cookstove_gui.cooking.fires.rise_and_hold import RiseAndHold, rise_and_hold, rise_quantiles, typical_hold
from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.forecast.answers import Quantiles, SpotPattern
from cookstove_gui.forecast.learning.hot_side import spot_pattern
from cookstove_gui.stove.entries import HeatBand, Session
from cookstove_gui.stove.stove import SpotKind, Stove

_WORTH_LISTING_MIN = 60.0  # a load whose end the log does not show is listed if it lasted at least so long

PastReader = Callable[[str], tuple[Session, ...]]  # a stove's name to its sessions


@dataclass(frozen=True, slots=True, kw_only=True)
class HotSide:
    """The patterns of one stove."""

    stove: str
    sessions: int
    pattern: tuple[SpotPattern, ...]  # the cooktop against its mean
    oven: tuple[SpotPattern, ...]  # against its centre


@dataclass(frozen=True, slots=True, kw_only=True)
class Firing:
    """How one stove fires."""

    stove: str
    rise: RiseAndHold
    rise_min: Quantiles  # from lighting to the heat
    typical_hold_min: float | None
    longest_hold_min: float | None
    burns: tuple[MeasuredBurn, ...]  # worth listing, the latest first
    summary: BurnSummary


def hot_side(stove: Stove, past: PastReader) -> HotSide:
    """How each spot runs over all sessions: the cooktop's against their mean, the oven's against its centre."""
    sessions = meant_sessions(stove, past(stove.name))
    return HotSide(
        stove=stove.name,
        sessions=len(sessions),
        pattern=spot_pattern(stove, sessions),
        oven=spot_pattern(stove, sessions, SpotKind.OVEN),
    )


def firing(stove: Stove, band: HeatBand, past: PastReader) -> Firing:
    """How long the stove takes to a heat, holds it, and how long its shut-down loads last."""
    sessions = past(stove.name)
    rise, burns = rise_and_hold(stove, sessions, band), burn_times(stove, sessions)
    return Firing(
        stove=stove.name,
        rise=rise,
        rise_min=rise_quantiles(rise),
        typical_hold_min=typical_hold(rise),
        longest_hold_min=max((hold.minutes for hold in rise.holds), default=None),
        burns=tuple(reversed([burn for burn in burns if burn.fell or burn.minutes >= _WORTH_LISTING_MIN])),
        summary=summary(burns),
    )
