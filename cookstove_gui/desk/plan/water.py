"""Water and pans: on every spot of the cooktop, when a pan of water simmers or boils there, and whether it holds."""

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from cookstove_gui.cooking.fit.placement import Pot
from cookstove_gui.cooking.instruments.kitchen import room_heat
from cookstove_gui.cooking.pans.boiling_time import (
    Goal,
    SimmerHold,
    WaterCourse,
    WaterTime,
    preheat_minutes,
    simmer_hold,
    water_course,
    water_time,
)
from cookstove_gui.cooking.pans.catalogue import COLD_WATER, Pan, PanOfWater, pans
from cookstove_gui.cooking.pans.doubts import PanDoubts, usual_doubts
from cookstove_gui.cooking.pans.learned_contact import PanRun, learned_contact, pan_runs, tells_of, window_before
from cookstove_gui.cooking.pans.shared_top import pans_counted
from cookstove_gui.desk.plan.pots_draw import beside_pots, pots_to_come
from cookstove_gui.forecast.answers import Projection, Quantiles
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.resource_files import table
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import SpotKind, Stove

RUNS_SHOWN = 6  # the latest
_FEW = 160  # futures are enough for pans that are only compared
SIMMER_MINUTES = 30.0  # how long a simmer is asked to hold
_COLDEST, _HOTTEST = 233.0, 1150.0  # K, what a cooktop can be; a future beyond it is cut there
# Pa, 200 m below the sea; in denser air water boils hotter than the pan's physics goes, by no more than half a degree
DENSEST = float(standard_pressure(-200.0))
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
    spot: str = ""  # the one asked about; empty for the soonest


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotWater:
    """One spot's answer."""

    spot: str
    label: str
    heat: float  # K, now
    answer: WaterTime
    simmer: SimmerHold


@dataclass(frozen=True, slots=True, kw_only=True)
class PanWater:
    """The same water in one pan on the spot asked about."""

    key: str
    minutes: Quantiles


@dataclass(frozen=True, slots=True, kw_only=True)
class RunSaid:
    """One pan of water by the log: what those before it would have said, and what came."""

    run: PanRun
    said: Quantiles  # min


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterPlan:
    """The answers for all spots, the soonest first, and more about the one asked about."""

    choice: WaterChoice
    boiling: float  # K, at this height
    rows: tuple[SpotWater, ...]
    asked: SpotWater | None  # none on a stove without a cooktop
    course: WaterCourse | None  # on the spot asked about
    pans: tuple[PanWater, ...]
    runs: int  # of this kind of pan on this stove, that the answer learned from
    said: tuple[RunSaid, ...]  # the latest of those
    guessed: Quantiles | None  # min on the spot asked about, had no pan taught anything
    preheat_min: float | None  # for the empty pan on the spot asked about to come up to it
    others: int = 0  # pots that are to be on the cooktop too, which draw on it
    oven_cost: float = 0.0  # K that one pan more takes from the oven at most


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterInputs:
    """The water, the pan, and the stove as it stands."""

    standing: Standing
    stove: Stove
    pressure: float  # Pa, of the air at the stove
    choice: WaterChoice
    past: Callable[[str], tuple[Session, ...]]  # a stove's name to its sessions
    pots: tuple[Pot, ...] = ()  # those that are to be on the stove at once, with their places


def bases() -> tuple[str, ...]:
    """Kinds of base a pan may have."""
    return tuple(str(row["key"]) for row in table("pans.toml")["base"])


def pan_of(choice: WaterChoice) -> Pan:
    """The chosen pan."""
    usual = next((pan for pan in pans() if pan.key == choice.pan_key), pans()[0])
    return replace(usual, base=choice.base or usual.base, lid=choice.lid)


def plan_water(inputs: WaterInputs) -> WaterPlan:
    """When the water gets there on each spot of the cooktop, if it goes on now."""
    choice, stove = inputs.choice, inputs.stove
    others = tuple(pot for pot in inputs.pots if (pot.to or pot.spot) and choice.spot not in pot.takes)
    beside, oven_cost = beside_pots(inputs.standing, stove, others)
    projection = _possible(beside)
    pan = pan_of(choice)
    room = max(room_heat(stove, inputs.standing.zones), _COLDEST_ROOM)
    water = PanOfWater(pan, choice.litres, room, min(inputs.pressure, DENSEST))
    usual = min(float(standard_pressure(stove.altitude)), DENSEST)  # the weather of the past is not known
    noted = pan_runs(stove, inputs.past(stove.name), pan, room, usual)
    runs = tuple(run for run in noted if tells_of(run, pan))
    contact = learned_contact(runs, pan)
    counted = pans_counted(inputs.standing.rows, inputs.standing.now)
    rows = []
    for spot in stove.spots_of(SpotKind.TOP):
        if spot.name in projection.spots:
            doubts = _doubts_on(spot.name, counted)
            answer = water_time(
                projection, spot.name, water, choice.goal, start=choice.start, contact=contact, doubts=doubts
            )
            simmer = simmer_hold(projection, spot.name, water, SIMMER_MINUTES, contact=contact, doubts=doubts)
            heat = float(np.median(projection.of(spot.name)[:, 0]))
            rows.append(SpotWater(spot=spot.name, label=spot.label, heat=heat, answer=answer, simmer=simmer))
    rows.sort(key=_soonest)
    asked = next((row for row in rows if row.spot == choice.spot), rows[0] if rows else None)
    plan = WaterPlan(
        choice=choice, boiling=water.boiling, rows=tuple(rows), asked=asked, course=None, pans=(), runs=len(runs),
        said=(), guessed=None, preheat_min=None,
        others=len(pots_to_come(inputs.standing, others)), oven_cost=oven_cost,
    )  # fmt: skip
    if asked is None:
        return plan

    few = replace(projection, kelvin=projection.kelvin[:: max(len(projection.kelvin) // _FEW, 1)])

    def minutes_in(other: Pan, taught: tuple[PanRun, ...]) -> Quantiles:
        held = replace(water, pan=replace(other, lid=choice.lid))
        shown = learned_contact(taught, other)
        doubts = _doubts_on(asked.spot, counted)
        return water_time(few, asked.spot, held, choice.goal, start=choice.start, contact=shown, doubts=doubts).minutes

    return replace(
        plan,
        course=water_course(
            projection, asked.spot, water, start=choice.start, contact=contact, doubts=_doubts_on(asked.spot, counted)
        ),
        pans=tuple(
            PanWater(
                key=one.key, minutes=asked.answer.minutes if one.key == choice.pan_key else minutes_in(one, noted)
            )
            for one in pans()
        ),
        said=tuple(
            RunSaid(run=run, said=window_before(run, runs[:place])) for place, run in enumerate(runs)
        )[-RUNS_SHOWN:],
        guessed=minutes_in(pan, ()) if runs else asked.answer.minutes,
        preheat_min=preheat_minutes(pan, asked.heat, min(room, asked.heat), room=room, contact=contact.median),
    )  # fmt: skip


def _doubts_on(spot: str, counted: frozenset[str]) -> PanDoubts:
    """Where a pan stands by the log, the projection has its draw in it: it is not taken off once more."""
    usual = usual_doubts()
    return replace(usual, cooktop=None) if spot in counted else usual


def _soonest(row: SpotWater) -> tuple[float, float, float]:
    middle = row.answer.minutes.p50
    return (float("inf") if middle is None else middle, -row.answer.chance_reached, -row.heat)


def _possible(projection: Projection) -> Projection:
    return replace(projection, kelvin=np.clip(projection.kelvin, _COLDEST, _HOTTEST))
