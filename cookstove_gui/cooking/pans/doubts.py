"""What the time of a pan of water hangs on besides its spot: contact, cooktop, steam and how much water there is."""

from dataclasses import dataclass, fields
from enum import StrEnum

import numpy as np

from cookstove_gui.cooking.belief import normal_rows
from cookstove_gui.cooking.pans.catalogue import Contact, PanOfWater
from cookstove_gui.forecast.answers import NORMAL_P90, FloatArray
from cookstove_gui.physics.pan_course import Cooktop
from cookstove_gui.resource_files import table

_SOON = 60  # steps of a course whose mean tells a hot spot from a cool one


class WaterSource(StrEnum):
    """What a cook would call the doubts."""

    SPOT = "spot"
    CONTACT = "contact"
    COOKTOP = "cooktop"  # how much heat it gives up
    STEAM = "steam"
    AMOUNT = "amount"


@dataclass(frozen=True, slots=True, kw_only=True)
class PanDoubts:
    """Standard deviations of logarithms, and the cooktop that the pan draws down; none: an endless one."""

    cooktop: Cooktop | None
    cooktop_log_sd: float
    evaporation_log_sd: float
    amount_log_sd: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PanDraws:
    """Equally likely pans, in an order unrelated to that of the futures; arrays of shape (count,)."""

    rows: FloatArray  # (count, 4) standard normal: contact, cooktop, steam, amount
    contact: FloatArray  # W/(m2 K)
    cooktop: Cooktop | None
    evaporation: FloatArray
    amount: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterHang:
    """How long the window would be if this alone were in doubt."""

    source: WaterSource
    window_min: float


def usual_doubts() -> PanDoubts:
    """Those of `resources/pans.toml`."""
    top, doubt = table("pans.toml")["cooktop"], table("pans.toml")["doubt"]
    return PanDoubts(
        cooktop=Cooktop(**{name: float(value) for name, value in top.items()}),
        cooktop_log_sd=float(doubt["cooktop"]),
        evaporation_log_sd=float(doubt["evaporation"]),
        amount_log_sd=float(doubt["amount"]),
    )


def pan_draws(contact: Contact, doubts: PanDoubts, count: int) -> PanDraws:
    """So many pans, evenly spread over what is in doubt.

    A timed pan tells of contact, cooktop and steam together: what it has taught of one is in doubt of none.
    """
    rows = normal_rows(count, 4) if count > 1 else np.zeros((1, 4))
    top = doubts.cooktop
    if top is not None:
        factor = np.exp(contact.unlearned * doubts.cooktop_log_sd * rows[:, 1])
        top = Cooktop(**{one.name: getattr(top, one.name) * factor for one in fields(top)})
    return PanDraws(
        rows=rows,
        contact=contact.median * np.exp(contact.log_sd * rows[:, 0]),
        cooktop=top,
        evaporation=np.exp(contact.unlearned * doubts.evaporation_log_sd * rows[:, 2]),
        amount=np.exp(doubts.amount_log_sd * rows[:, 3]),
    )


def course_water(water: PanOfWater, draws: PanDraws) -> FloatArray:
    """Mass of water of each pan at the start [kg], (count,)."""
    return np.asarray(water.physical(draws.contact, draws.amount).water)


def hangs_on(draws: PanDraws, heats: FloatArray, reached: FloatArray) -> tuple[WaterHang, ...]:
    """The doubts behind the times at which the futures get there [min], the greatest first; none where many never do.

    First-order shares by a linear fit; `heats` (futures, steps) of the spot [K].
    """
    ever = np.isfinite(reached)
    if len(reached) < 8 or ever.mean() < 0.9:
        return ()
    spot = heats[:, :_SOON].mean(axis=1)
    apart = np.column_stack([spot, draws.rows])[ever]
    apart = apart - apart.mean(axis=0)
    slopes, *_ = np.linalg.lstsq(apart, reached[ever] - reached[ever].mean(), rcond=None)
    widths = 2 * NORMAL_P90 * np.abs(slopes) * apart.std(axis=0)
    sources = (WaterSource.SPOT, WaterSource.CONTACT, WaterSource.COOKTOP, WaterSource.STEAM, WaterSource.AMOUNT)
    found = [WaterHang(source=source, window_min=float(width)) for source, width in zip(sources, widths, strict=True)]
    return tuple(sorted(found, key=lambda one: -one.window_min))
