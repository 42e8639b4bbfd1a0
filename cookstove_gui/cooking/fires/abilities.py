"""What a stove has shown that it can do: for each figure the firings that show it, and what they come to together."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from cookstove_gui.cooking.fires.burn_times import burns_of, loads_of, mass_of, time_to_fall
from cookstove_gui.cooking.fires.firing_facts import LONE, sound_curve
from cookstove_gui.cooking.fires.logged_fires import Fire, minutes_between
from cookstove_gui.cooking.fires.rise_and_hold import LEAST_FIRES, Hold, hold_from, rise_of, typical_hold
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.stove.entries import USUAL_SPLIT, Entry, HeatBand, Kind
from cookstove_gui.stove.stove import SpotKind, Stove

WITHOUT_WOOD_FALL = 100.0 / 1.8  # K, 100 °F: from baking heat to the next heat down; common practice, no source
# All judgement, no source:
_STEADY = 25.0 / 1.8  # K; an oven that changed by less in `_STEADY_MIN` neither came up nor fell when wood went on
_STEADY_MIN = 20.0
_SPLIT_SHOWS_MIN = 60.0  # what a split gives has shown by then
_LEAST_SHOWS_MIN = 15.0  # and not sooner: another load before that hides it
_SOON_MIN = 10.0
_LONGEST_GAP_MIN = 40.0  # between two readings, beyond which a straight line says nothing about the heat between them


class Ability(StrEnum):
    """What a stove may be asked about."""

    RISE = "rise"  # min, from lighting a cold oven to a heat
    HOLD_ONE = "hold on one split"  # min above the low end of a heat, from the load on
    HOLD_TWO = "hold on two splits"
    FALL = "fall without wood"  # min, from the hottest after the last load
    LIFT = "lift of a split"  # K, of a steady oven
    BOIL = "boil"  # min, of two quarts
    HOTTEST_TOP = "hottest of the top"  # K
    HOTTEST_OVEN = "hottest of the oven"  # K
    BURN = "full load shut down"  # min, from the load until the oven has fallen
    WOOD_BAKE = "wood a bake"  # kg
    WOOD_MONTH = "wood a month"  # kg


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """One firing's showing of a figure."""

    session: int
    at: datetime  # when its fire was lit
    offset_minutes: int  # of its clock from UTC
    value: float
    ended: bool = True  # False: at least so long, by the log
    after_min: float | None = None  # when it came, for what comes with a delay
    wood: float | None = None  # kg that went on for it
    spot: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """What one ability comes to; the range is that of eight firings in ten, of two firings both."""

    ability: Ability
    band: HeatBand | None = None
    spot: str = ""
    shown: tuple[Shown, ...] = ()  # oldest first
    middle: float | None = None
    low: float | None = None
    high: float | None = None
    after_min: float | None = None
    readings: int = 0  # that it was worked out from, where no firing shows it by itself


def rises(fires: Sequence[Fire], oven: str, band: HeatBand) -> Figure:
    """From lighting a cold oven to a heat [min]."""
    found = []
    for fire in fires:
        rise = rise_of(fire, oven, band.low)
        if rise is not None:
            by_then = [row for row in fire.rows if row.kind is Kind.WOOD and _minute(fire, row) <= rise[0]]
            found.append(_shown(fire, rise[0], wood=mass_of(by_then) if by_then else None))
    return figure(Ability.RISE, found, band)


def holds(fires: Sequence[Fire], oven: str, band: HeatBand, splits: int) -> Figure:
    """How long an oven at a heat stayed above its low end on a load of so many splits [min], with no more wood."""
    found = []
    for fire in fires:
        readings = _curve(fire, oven)
        for load, began, until in _loads(fire):
            heat = heat_at(readings, began)
            if splits_in(load) != splits or heat is None or heat < band.low:
                continue
            after = [(began, heat), *((minute, one) for minute, one in readings if began < minute <= until)]
            last = heat_at(readings, until)
            if last is not None and after[-1][0] < until:
                after.append((until, last))
            stay = hold_from(after, band.low, began)
            if stay.minutes > 0.0:
                found.append(_shown(fire, stay.minutes, ended=stay.ended, wood=mass_of(load)))
    return figure(Ability.HOLD_ONE if splits == 1 else Ability.HOLD_TWO, found, band)


def falls(fires: Sequence[Fire], oven: str, fall: float = WITHOUT_WOOD_FALL) -> Figure:
    """How long the oven took to fall so far [K] from its hottest after the last load [min]."""
    found = []
    for fire in fires:
        loads = _loads(fire)
        if not loads:
            continue
        last, began, _ = loads[-1]
        readings = [(minute, heat) for minute, heat in _curve(fire, oven) if minute >= began]
        if len(readings) < 2:
            continue
        hottest, _ = max(readings, key=lambda reading: reading[1])
        end, fell = time_to_fall(readings, fall)
        if end > hottest:
            found.append(_shown(fire, end - hottest, ended=fell, wood=mass_of(last)))
    return figure(Ability.FALL, found)


def lifts(fires: Sequence[Fire], oven: str) -> Figure:
    """How much hotter a steady oven became on one split [K], and after how long it was hottest [min]."""
    found = []
    for fire in fires:
        readings = _curve(fire, oven)
        for load, began, until in _loads(fire):
            now, before = heat_at(readings, began), heat_at(readings, began - _STEADY_MIN)
            until = min(until, began + _SPLIT_SHOWS_MIN)
            after = [reading for reading in readings if began < reading[0] <= until]
            if splits_in(load) != 1 or now is None or before is None or abs(now - before) > _STEADY:
                continue
            if after and after[-1][0] - began >= _LEAST_SHOWS_MIN:
                minute, hottest = max(after, key=lambda reading: reading[1])
                found.append(_shown(fire, hottest - now, wood=mass_of(load), after_min=minute - began))
    return figure(Ability.LIFT, found)


def hottest_tops(fires: Sequence[Fire], stove: Stove) -> Figure:
    """The hottest reading of the cooktop in each fire [K], as that of the oven; its figure is the hottest of all."""
    tops = [spot.name for spot in stove.spots_of(SpotKind.TOP)]
    found = []
    for fire in fires:
        heats = [(heat, spot) for spot in tops for _, heat in _curve(fire, spot)]
        if heats:
            heat, spot = max(heats)
            found.append(_shown(fire, heat, spot=spot))
    return _greatest(Ability.HOTTEST_TOP, found)


def hottest_ovens(fires: Sequence[Fire], oven: str) -> Figure:
    """The hottest of the oven in each fire [K]; its figure is the hottest of all."""
    curves = [(fire, _curve(fire, oven)) for fire in fires]
    found = [_shown(fire, max(heat for _, heat in curve)) for fire, curve in curves if curve]
    return _greatest(Ability.HOTTEST_OVEN, found)


def shut_down(fires: Sequence[Fire], oven: str, fall: float) -> Figure:
    """From a load whose air was shut down until the oven had fallen so far [K] [min]."""
    found = [
        _shown(fire, burn.minutes, ended=burn.fell, wood=burn.mass)
        for fire in fires
        for burn in burns_of(fire, oven, fall)
        if burn.minutes > 0.0
    ]
    return figure(Ability.BURN, found)


def figure(ability: Ability, found: Iterable[Shown], band: HeatBand | None = None, spot: str = "") -> Figure:
    """What firings come to: median and eight in ten of them; of two both; stays without an end as at least so long."""
    shown = tuple(sorted(found, key=lambda one: (one.at, one.session)))
    values = [one.value for one in shown]
    middle = low = high = None
    if all(one.ended for one in shown):
        if len(values) >= LEAST_FIRES:
            quantiles = Quantiles.of(values)
            low, middle, high = quantiles.p10, quantiles.p50, quantiles.p90
        elif values:
            middle = sum(values) / len(values)
            low, high = (min(values), max(values)) if len(values) > 1 else (None, None)
    else:
        stays = [Hold(minutes=one.value, ended=one.ended) for one in shown]
        low, middle, high = (typical_hold(stays, share) for share in (0.1, 0.5, 0.9))
    delays = [one.after_min for one in shown if one.after_min is not None]
    return Figure(
        ability=ability, band=band, spot=spot, shown=shown, middle=middle, low=low, high=high,
        after_min=Quantiles.of(delays).p50 if delays else None,
    )  # fmt: skip


def heat_at(readings: Sequence[tuple[float, float]], minute: float) -> float | None:
    """The heat [K] at a minute, on the straight line between the readings before and after; none beyond them."""
    before = max((reading for reading in readings if reading[0] <= minute), default=None)
    after = min((reading for reading in readings if reading[0] >= minute), default=None)
    if before is None or after is None or after[0] - before[0] > _LONGEST_GAP_MIN:
        return None
    if after[0] == before[0]:
        return before[1]
    return before[1] + (after[1] - before[1]) * (minute - before[0]) / (after[0] - before[0])


def splits_in(load: Sequence[Entry]) -> int | None:
    """How many usual splits a load was, by its weight or as counted; none where the log does not say."""
    mass = mass_of(load)
    return None if mass is None else round(mass / USUAL_SPLIT)


def _curve(fire: Fire, spot: str) -> tuple[tuple[float, float], ...]:
    """A spot's readings without slips: none that no iron can come to and leave again so soon, nor such a last one."""
    curve = sound_curve(fire.readings_of(spot))
    if len(curve) > 1 and abs(curve[-1][1] - curve[-2][1]) > LONE and curve[-1][0] - curve[-2][0] < _SOON_MIN:
        curve = curve[:-1]
    middles = zip(curve, curve[1:], curve[2:], strict=False)
    slips = {
        own
        for before, own, after in middles
        if after[0] - before[0] < 2 * _SOON_MIN and min(before[1], after[1]) - own[1] > LONE / 2
    }
    return tuple(reading for reading in curve if reading not in slips)


def _loads(fire: Fire) -> list[tuple[list[Entry], float, float]]:
    """Each load, when its last wood went on, and when the next load did or the log ends [min since lighting]."""
    loads = loads_of(fire)
    began = [_minute(fire, load[-1]) for load in loads]
    ends = [*(_minute(fire, load[0]) for load in loads[1:]), fire.minutes]
    return list(zip(loads, began, ends, strict=False))


def _greatest(ability: Ability, found: Iterable[Shown]) -> Figure:
    shown = tuple(sorted(found, key=lambda one: (one.at, one.session)))
    most = max(shown, key=lambda one: one.value, default=None)
    return Figure(
        ability=ability,
        shown=shown,
        middle=most.value if most else None,
        spot=most.spot if most else "",
    )


def _shown(
    fire: Fire, value: float, *, ended: bool = True, wood: float | None = None, spot: str = "",
    after_min: float | None = None,
) -> Shown:  # fmt: skip
    return Shown(
        session=fire.session, at=fire.began, offset_minutes=fire.rows[0].offset_minutes, value=value, ended=ended,
        wood=wood, spot=spot, after_min=after_min,
    )  # fmt: skip


def _minute(fire: Fire, row: Entry) -> float:
    return minutes_between(fire.began, row.at)
