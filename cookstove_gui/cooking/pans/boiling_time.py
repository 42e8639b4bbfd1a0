"""Water on a spot: when it simmers or boils, whether it holds a simmer, and how far a heavy pan lags its spot.

Two things are uncertain: the spot's futures and the pan's contact. Each future is given one contact.
"""

from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from cookstove_gui.cooking.pans.catalogue import COLD_WATER, Contact, Pan, PanOfWater, usual_contact
from cookstove_gui.cooking.pans.doubts import (
    PanDoubts,
    PanDraws,
    WaterHang,
    course_water,
    hangs_on,
    pan_draws,
    usual_doubts,
)
from cookstove_gui.forecast.answers import FloatArray, Projection, Quantiles
from cookstove_gui.forecast.futures.goal_times import first_reach, late_quantiles
from cookstove_gui.physics.boiling import spot_to_hold
from cookstove_gui.physics.lumped import lumped_time
from cookstove_gui.physics.pan import pan_time_constant
from cookstove_gui.physics.pan_course import PanCourse, pan_course
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import USUAL_ROOM
from cookstove_gui.units import kelvin

STEP = 30.0  # s, between two moments of a course
BOILING_AT_SEA_LEVEL = kelvin(212.0, "F")
UPPER_LOSS = 25.0  # W/(m2 K), an empty pan to the room: section 14 of the handbook tables, convection and radiation


_NEARLY_ALL = 0.97  # of the water: what is left is no longer a pan of water


class Goal(StrEnum):
    """How hot the water is to be."""

    POACH = "poach"
    SIMMER = "simmer"
    BOIL = "boil"


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterTime:
    """When the water gets there, from the moment the pan goes on."""

    goal: Goal
    temperature: float  # K, what the goal means here
    minutes: Quantiles
    chance_reached: float  # within the projection
    dry_min: Quantiles | None = None  # when the water is gone, from the moment the pan goes on
    hangs_on: tuple[WaterHang, ...] = ()  # what the window hangs on, the widest first


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterCourse:
    """The water's temperature over time; arrays of one length. Eight in ten futures lie from p10 to p90."""

    minutes: FloatArray  # from the moment the pan goes on
    p10: FloatArray  # K
    p25: FloatArray
    p50: FloatArray
    p75: FloatArray
    p90: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class SimmerHold:
    """The chances that a simmer holds for some minutes."""

    chance: float  # that it stays between a simmer's low end and a boil
    chance_boils: float
    chance_falls: float  # that it falls below a simmer
    litres_lost: Quantiles


def goal_temperature(goal: Goal, boiling: float) -> float:
    """Temperature of a goal [K] where water boils at `boiling` [K]: the low end of a range that moves with the boil.

    The ranges at sea level, with their source, are in `resources/pans.toml`.
    """
    if goal is Goal.BOIL:
        return boiling
    low, _ = table("pans.toml")["water"][goal.value]
    return kelvin(float(low), "F") - (BOILING_AT_SEA_LEVEL - boiling)


def water_time(
    projection: Projection,
    spot: str,
    water: PanOfWater,
    goal: Goal = Goal.BOIL,
    *,
    start: float = COLD_WATER,
    contact: Contact | None = None,
    goes_on_min: float = 0.0,
    doubts: PanDoubts | None = None,
) -> WaterTime:
    """When a pan of water that goes on a spot gets to a simmer or a boil.

    Parameters
    ----------
    projection : Projection
        Futures of the spot.
    spot : str
        A spot of the projection.
    water : PanOfWater
    goal : Goal
    start : float
        The water's temperature when the pan goes on [K].
    contact : Contact, optional
        The belief about the pan's contact on this stove; the usual one if left out.
    goes_on_min : float
        When the pan goes on [min from now].
    doubts : PanDoubts, optional
        What is unsure besides the contact and the spot, and what the pan draws down; the usual if left out.

    Returns
    -------
    WaterTime

    Raises
    ------
    ValueError
        If the projection does not know the spot.
    """
    target = goal_temperature(goal, water.boiling)
    seconds, heats = _heats(projection, spot, goes_on_min)
    draws, course = _course(heats, water, start, contact, doubts or usual_doubts())
    reached = first_reach(seconds, _as_if_never_capped(course.temperature.T, water.boiling), target) / 60.0
    end = (seconds[-1] + STEP) / 60.0
    dry = first_reach(seconds, (course.boiled_away / course_water(water, draws)).T, _NEARLY_ALL) / 60.0
    return WaterTime(
        goal=goal,
        temperature=target,
        minutes=late_quantiles(reached, end),
        chance_reached=float(np.isfinite(reached).mean()),
        dry_min=late_quantiles(dry, end),
        hangs_on=hangs_on(draws, heats, reached),
    )


def water_course(
    projection: Projection,
    spot: str,
    water: PanOfWater,
    *,
    start: float = COLD_WATER,
    contact: Contact | None = None,
    doubts: PanDoubts | None = None,
) -> WaterCourse:
    """The way to the boil of a pan of water that goes on a spot now; `start` [K] is its temperature then."""
    seconds, heats = _heats(projection, spot, 0.0)
    _, course = _course(heats, water, start, contact, doubts or usual_doubts())
    each = course.temperature[: len(seconds)]
    p10, p25, p50, p75, p90 = np.quantile(each, (0.1, 0.25, 0.5, 0.75, 0.9), axis=1)
    return WaterCourse(minutes=seconds / 60.0, p10=p10, p25=p25, p50=p50, p75=p75, p90=p90)


def simmer_hold(
    projection: Projection,
    spot: str,
    water: PanOfWater,
    minutes: float,
    *,
    contact: Contact | None = None,
    doubts: PanDoubts | None = None,
) -> SimmerHold:
    """Whether water that simmers now still simmers, without boiling, all through the next minutes on a spot."""
    seconds, heats = _heats(projection, spot, 0.0)
    low = goal_temperature(Goal.SIMMER, water.boiling)
    kept = seconds <= minutes * 60.0 + 1e-6
    start = 0.5 * (low + water.boiling)
    _, course = _course(heats[:, kept], water, start, contact, doubts or usual_doubts())
    boils = (course.temperature >= water.boiling).any(axis=0)
    falls = (course.temperature < low).any(axis=0)
    return SimmerHold(
        chance=float(np.mean(~boils & ~falls)),
        chance_boils=float(boils.mean()),
        chance_falls=float(falls.mean()),
        litres_lost=Quantiles.of(np.minimum(course.boiled_away[-1], water.litres)),
    )


def simmer_range(water: PanOfWater, contact: float | None = None) -> tuple[float, float]:
    """Heat of the spot [K] that keeps a simmer: above the first it does not fall below, above the second it boils.

    The steady state of the pan's balance: the spot is hotter than the water by loss over conductance.
    """
    physical = water.physical(usual_contact(water.pan).median if contact is None else contact)
    low = goal_temperature(Goal.SIMMER, water.boiling)
    return (
        float(spot_to_hold(physical, low, water.kitchen)),
        float(spot_to_hold(physical, water.boiling, water.kitchen)),
    )


def pan_lag(pan: Pan, contact: float | None = None) -> float:
    """Time constant with which an empty pan follows its spot [min]."""
    passed = usual_contact(pan).median if contact is None else contact
    return float(pan_time_constant(pan.heat_capacity, passed + UPPER_LOSS, pan.base_area)) / 60.0


def preheat_minutes(
    pan: Pan,
    spot_heat: float,
    start: float,
    *,
    short_of: float = 10.0,
    room: float = USUAL_ROOM,
    contact: float | None = None,
) -> float:
    """Minutes until an empty pan on a steady spot is within `short_of` [K] of where it will settle.

    `spot_heat`, `start` and `room` are temperatures [K] of the spot, of the pan when it goes on, and of the room;
    `contact` [W/(m2 K)] is the usual one if left out.
    """
    settles = settled_heat(pan, spot_heat, room=room, contact=contact)
    gap = settles - start
    if abs(gap) <= short_of:
        return 0.0
    target = settles - float(np.sign(gap)) * short_of
    return float(lumped_time(target, start, settles, pan_lag(pan, contact) * 60.0)) / 60.0


def settled_heat(pan: Pan, spot_heat: float, *, room: float = USUAL_ROOM, contact: float | None = None) -> float:
    """Where an empty pan settles on a steady spot [K]: a little below it, for its upper side faces the room."""
    passed = usual_contact(pan).median if contact is None else contact
    return (passed * spot_heat + UPPER_LOSS * room) / (passed + UPPER_LOSS)


# --- courses ---------------------------------------------------------------------------------------------------------


def _course(
    heats: FloatArray, water: PanOfWater, start: float, contact: Contact | None, doubts: PanDoubts
) -> tuple[PanDraws, PanCourse]:
    """What is in doubt in each future, and what the water does in it; `heats` (futures, steps) of the spot [K]."""
    draws = pan_draws(contact or usual_contact(water.pan), doubts, len(heats))
    physical = water.physical(draws.contact, draws.amount, draws.evaporation)
    return draws, pan_course(physical, min(start, water.boiling), heats.T, STEP, water.kitchen, draws.cooktop)


def _heats(projection: Projection, spot: str, begins_min: float) -> tuple[FloatArray, FloatArray]:
    """Seconds from when the pan goes on, (steps,), and the spot's heat then, (futures, steps)."""
    futures = projection.of(spot)
    minutes = projection.minutes
    seconds = np.arange(0.0, (minutes[-1] - begins_min) * 60.0 + 1e-6, STEP)
    if len(seconds) == 0:
        raise ValueError("goes_on_min must lie within the projection")
    at = begins_min + seconds / 60.0
    upper = np.clip(np.searchsorted(minutes, at, side="right"), 1, max(len(minutes) - 1, 1))
    if len(minutes) == 1:
        return seconds, np.repeat(futures, len(seconds), axis=1)
    lower = upper - 1
    share = np.clip((at - minutes[lower]) / (minutes[upper] - minutes[lower]), 0.0, 1.0)
    return seconds, futures[:, lower] * (1.0 - share) + futures[:, upper] * share


def _as_if_never_capped(path: FloatArray, boiling: float) -> FloatArray:
    """The path (futures, steps) with its first moment at the boil extrapolated at the pace before it.

    A course stops at boiling, so the step in which it gets there would otherwise seem to take its whole length.
    """
    first = (path >= boiling).argmax(axis=1)
    rows = np.flatnonzero((first >= 2) & (path[:, -1] >= boiling))
    carried = path.copy()
    at = first[rows]
    carried[rows, at] = np.maximum(2 * path[rows, at - 1] - path[rows, at - 2], boiling)
    return carried
