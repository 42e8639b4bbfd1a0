"""Water and pans: on every spot of the cooktop, when a pan of water simmers or boils there, and whether it holds."""

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from cookstove_gui.cooking.instruments.kitchen import room_heat
from cookstove_gui.cooking.pans.boiling_time import (
    Goal,
    SimmerHold,
    WaterTime,
    preheat_minutes,
    simmer_hold,
    water_time,
)
from cookstove_gui.cooking.pans.catalogue import COLD_WATER, Pan, PanOfWater, pans
from cookstove_gui.cooking.pans.learned_contact import learned_contact, pan_runs, tells_of
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.resource_files import table
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import SpotKind, Stove

SIMMER_MINUTES = 30.0  # how long a simmer is asked to hold
_COLDEST, _HOTTEST = 233.0, 1150.0  # K, what a cooktop can be; a future beyond it is cut there
# Pa, 200 m below the sea; in denser air water boils hotter than the pan's physics goes, by no more than half a degree
_DENSEST = float(standard_pressure(-200.0))
_COLDEST_ROOM = 275.0  # K, what the pan's physics takes


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterChoice:
    """What is to be heated in what."""

    litres: float
    start: float = COLD_WATER  # K
    pan_key: str = "saucepan"
    base: str = ""  # another base than the usual one of that pan; empty for the usual
    lid: bool = False
    goal: Goal = Goal.BOIL


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotWater:
    """One spot's answer."""

    spot: str
    label: str
    heat: float  # K, now
    answer: WaterTime
    simmer: SimmerHold


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterPlan:
    """The answers for all spots, the soonest first."""

    choice: WaterChoice
    boiling: float  # K, at this height
    rows: tuple[SpotWater, ...]
    runs: int  # of this kind of pan on this stove, that the answer learned from
    preheat_min: float | None  # for the empty pan on the hottest spot to come up to it


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterInputs:
    """The water, the pan, and the stove as it stands."""

    standing: Standing
    stove: Stove
    pressure: float  # Pa, of the air at the stove
    choice: WaterChoice
    past: Callable[[str], tuple[Session, ...]]  # a stove's name to its sessions


def bases() -> tuple[str, ...]:
    """Kinds of base a pan may have."""
    return tuple(str(row["key"]) for row in table("pans.toml")["base"])


def pan_of(choice: WaterChoice) -> Pan:
    """The chosen pan."""
    usual = next((pan for pan in pans() if pan.key == choice.pan_key), pans()[0])
    return replace(usual, base=choice.base or usual.base, lid=choice.lid)


def plan_water(inputs: WaterInputs) -> WaterPlan:
    """When the water gets there on each spot of the cooktop, if it goes on now."""
    choice = inputs.choice
    stove = inputs.stove
    projection = _possible(inputs.standing.projection)
    pan = pan_of(choice)
    room = max(room_heat(stove, inputs.standing.zones), _COLDEST_ROOM)
    water = PanOfWater(pan, choice.litres, room, min(inputs.pressure, _DENSEST))
    usual = min(float(standard_pressure(stove.altitude)), _DENSEST)  # the weather of the past is not known
    runs = tuple(run for run in pan_runs(stove, inputs.past(stove.name), pan, room, usual) if tells_of(run, pan))
    contact = learned_contact(runs, pan)
    rows = []
    for spot in stove.spots_of(SpotKind.TOP):
        if spot.name in projection.spots:
            answer = water_time(projection, spot.name, water, choice.goal, start=choice.start, contact=contact)
            simmer = simmer_hold(projection, spot.name, water, SIMMER_MINUTES, contact=contact)
            heat = float(np.median(projection.of(spot.name)[:, 0]))
            rows.append(SpotWater(spot=spot.name, label=spot.label, heat=heat, answer=answer, simmer=simmer))
    rows.sort(key=_soonest)
    hottest = max((row.heat for row in rows), default=None)
    return WaterPlan(
        choice=choice,
        boiling=water.boiling,
        rows=tuple(rows),
        runs=len(runs),
        preheat_min=None
        if hottest is None
        else preheat_minutes(pan, hottest, min(room, hottest), room=room, contact=contact.median),
    )


def _soonest(row: SpotWater) -> tuple[float, float, float]:
    middle = row.answer.minutes.p50
    return (float("inf") if middle is None else middle, -row.answer.chance_reached, -row.heat)


def _possible(projection: Projection) -> Projection:
    return replace(projection, kelvin=np.clip(projection.kelvin, _COLDEST, _HOTTEST))
