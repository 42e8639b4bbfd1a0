"""A pan's contact learned from this stove's own `pan` rows, so that the next answer is narrower.

A run counts if a `pan` row put the pan on a spot with its water (`on`, note “kettle, 2 litres, lid”), a later row of
that spot says what the water did (“boiled”, “simmers”), and the spot was read about then.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from functools import lru_cache
from math import hypot, log, sqrt

import numpy as np

from cookstove_gui.cooking.belief import next_one
from cookstove_gui.cooking.fires.logged_fires import minutes_between, readings_of, standing_rows
from cookstove_gui.cooking.pans.boiling_time import Goal, goal_temperature, water_time
from cookstove_gui.cooking.pans.catalogue import COLD_WATER, Contact, Pan, PanOfWater, pans, usual_contact
from cookstove_gui.cooking.pans.doubts import usual_doubts
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import HORIZON_MINUTES, FloatArray, Projection, Quantiles
from cookstove_gui.physics.boiling import conductance_from_time
from cookstove_gui.physics.pan_course import Cooktop
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import USUAL_ROOM, Stove
from cookstove_gui.units import LITRES_PER_QUART

# From one run's contact to the next on one stove: clock, water and reading are rough. Set where eight windows in ten
# hold (tests/benchmarks/water_windows.py); what this stove's own runs differ by takes its place as they come in.
RUN_LOG_SD = 0.2
_RUN_SD_WEIGHT = 4.0  # runs that the number above counts for; judgement
SPOT_SD = 10.0  # K, of a spot between and beyond its readings; judgement
_TELLS_NOTHING = 3.0  # of the logarithm
NEAR_MIN = 20.0  # a reading of the spot counts from this long before the pan went on; judgement
_DRAWS = 60  # of the contact, for one window
_LEAST, _MOST = 5.0, 2000.0  # W/(m2 K); outside them the note or the clock is wrong
_LITRES = {
    **dict.fromkeys(("l", "litre", "liter"), 1.0),
    "ml": 0.001,
    **dict.fromkeys(("gal", "gallon"), 4 * LITRES_PER_QUART),
    **dict.fromkeys(("qt", "quart"), LITRES_PER_QUART),
    **dict.fromkeys(("pt", "pint"), LITRES_PER_QUART / 2),
    "cup": LITRES_PER_QUART / 4,
}
_VOLUME = re.compile(
    r"(\d+(?:[.,]\d+)?)\s*(ml|litres?|liters?|l|quarts?|qt|pints?|pt|gallons?|gal|cups?)\b", re.IGNORECASE
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PanRun:
    """One pan of water brought to a goal on this stove."""

    spot: str
    on_at: datetime
    offset_minutes: int  # of its clock from UTC
    water: PanOfWater
    goal: Goal
    start: float  # K
    minutes: float  # that it took
    spot_minutes: FloatArray  # (readings,) min from when it went on
    spot_heats: FloatArray  # (readings,) K


def learned_contact(runs: Iterable[PanRun], pan: Pan) -> Contact:
    """The belief about the next contact of a pan, after the runs that tell of its kind of base."""
    usual = usual_contact(pan)
    telling = [run for run in runs if tells_of(run, pan)]
    shown, unclear = [contact_of(run) or usual.median for run in telling], [_unclear(run) for run in telling]
    run_sd = _run_log_sd([contact for contact, more in zip(shown, unclear, strict=True) if more <= RUN_LOG_SD])
    median, log_sd = next_one(
        usual.median, hypot(usual.log_sd, sqrt(max(run_sd**2 - RUN_LOG_SD**2, 0.0))), shown, run_sd, unclear
    )
    own, left = (sqrt(max(sd**2 - each**2, 0.0)) for sd, each in ((usual.log_sd, RUN_LOG_SD), (log_sd, run_sd)))
    return Contact(median=median, log_sd=log_sd, unlearned=min(left / own, 1.0) if own > 0.0 else 1.0)


def _unclear(run: PanRun) -> float:
    """How much the logarithm of its contact moves if the spot was a little cooler than read: much on a spot that boils
    only just.
    """
    as_read, cooler = contact_of(run), contact_of(replace(run, spot_heats=run.spot_heats - SPOT_SD))
    return _TELLS_NOTHING if as_read is None or cooler is None else abs(log(cooler / as_read))


def _run_log_sd(shown: Sequence[float]) -> float:
    """By how much runs differ, of the logarithm: as usual, and as these do (scaled inverse chi-squared, Gelman)."""
    if len(shown) < 2:
        return RUN_LOG_SD
    apart = np.log(shown) - np.mean(np.log(shown))
    squares = _RUN_SD_WEIGHT * RUN_LOG_SD**2 + float(apart @ apart)
    return sqrt(squares / (_RUN_SD_WEIGHT + len(shown) - 1))


def tells_of(run: PanRun, pan: Pan) -> bool:
    """Whether a run was with a base of the pan's kind and some contact explains it."""
    return run.water.pan.base == pan.base and contact_of(run) is not None


def contact_of(run: PanRun) -> float | None:
    """The contact [W/(m2 K)] with which the run takes as long as it took; None if none does."""
    return _contact(run.water, run.goal, run.start, run.minutes, _spot_meanwhile(run))


@lru_cache(maxsize=1024)  # each run is asked about anew with every pan it may tell of
def _contact(water: PanOfWater, goal: Goal, start: float, minutes: float, spot: float) -> float | None:
    """The same on a spot that would have had so many K all the while."""
    end = goal_temperature(goal, water.boiling)
    if spot <= end:
        return None
    seconds = minutes * 60.0
    through = conductance_from_time(water.physical(1.0), start, end, spot, seconds, water.kitchen)
    # that is from the iron as it was read, without the pan's own draw on it, which is in a course as a cooktop
    found = _without_draw(through * water.pan.base_area, seconds) / water.pan.base_area
    return found if _LEAST < found < _MOST else None


def _without_draw(path: float, seconds: float) -> float:
    """A conductance [W/K] with the iron's own taken out of the chain, as far as it is drawn down in that time [s]."""
    top = usual_doubts().cooktop
    if top is None:
        return path
    given, lag = _iron(top)
    down = 1.0 - lag / seconds * -np.expm1(-seconds / lag)  # mean over the run
    return 1.0 / max(1.0 / path - float(down) / given, 1e-4)


def window_before(run: PanRun, earlier: Iterable[PanRun]) -> Quantiles:
    """Minutes that a run should have taken by what earlier runs taught, on a spot as hot as it was meanwhile."""
    at = np.array([0.0, HORIZON_MINUTES])
    heats = np.full((_DRAWS, len(at), 1), _spot_meanwhile(run))
    as_read = Projection(now=run.on_at, minutes=at, spots=(run.spot,), kelvin=heats)
    contact = learned_contact(earlier, run.water.pan)
    return water_time(as_read, run.spot, run.water, run.goal, start=run.start, contact=contact).minutes


def pan_runs(
    stove: Stove, sessions: Iterable[Session], pan: Pan, room: float = USUAL_ROOM, pressure: float = STANDARD_PRESSURE
) -> tuple[PanRun, ...]:
    """The runs in a stove's sessions; where a note names none of the usual pans, `pan` is assumed."""
    found = []
    for session in sessions:
        if session.stove != stove.name:
            continue
        rows = standing_rows(session.entries)
        for place, row in enumerate(rows):
            noted = _with_lid(pan_in(row.note) or pan, row.note)
            run = _run(rows, place, PanOfWater(noted, 1.0, room, pressure)) if _goes_on(row) else None
            if run is not None:
                found.append(run)
    return tuple(found)


def litres_in(note: str) -> float | None:
    """How much water a note names [litres], or None."""
    match = _VOLUME.search(note)
    if match is None:
        return None
    unit = match[2].lower()
    return float(match[1].replace(",", ".")) * _LITRES[unit.rstrip("s") if unit not in _LITRES else unit]


def goal_in(note: str) -> Goal | None:
    """What a note says the water did: boil, simmer or poach; None if none of them."""
    lowered = note.casefold()
    return next((goal for goal in (Goal.BOIL, Goal.SIMMER, Goal.POACH) if goal.value in lowered), None)


def pan_in(note: str) -> Pan | None:
    """The usual pan that a note names, with a lid if the note says so; None if it names none."""
    lowered = note.casefold()
    named = max((pan for pan in pans() if pan.key in lowered), key=lambda pan: len(pan.key), default=None)
    return None if named is None else _with_lid(named, note)


def _with_lid(pan: Pan, note: str) -> Pan:
    """The pan with or without a lid as a note says; as it is where the note says nothing."""
    lowered = note.casefold()
    return replace(pan, lid="no lid" not in lowered) if "lid" in lowered else pan


def _spot_meanwhile(run: PanRun) -> float:
    """Mean heat [K] that the spot would have had without the pan, straight between its readings.

    What was read while the pan stood there is drawn down by it already, which is put back so that it is not taken off
    twice.
    """
    at = np.linspace(0.0, run.minutes, 25)
    heats = run.spot_heats + _draw_of(run) * np.maximum(run.spot_heats - 0.5 * (run.start + run.water.boiling), 0.0)
    return float(np.interp(at, run.spot_minutes, heats).mean())


def _draw_of(run: PanRun) -> FloatArray:
    """How far the usual contact has drawn the iron down at each reading, as a share of what it is over the water."""
    top = usual_doubts().cooktop
    if top is None:
        return np.zeros(len(run.spot_minutes))
    given, lag = _iron(top)
    path = usual_contact(run.water.pan).median * run.water.pan.base_area
    return np.asarray(path / given * -np.expm1(-60.0 * np.maximum(run.spot_minutes, 0.0) / lag))


def _iron(top: Cooktop) -> tuple[float, float]:
    """What a cooktop gives up for each kelvin that it is drawn down [W/K], and its lag [s]; the oven held as it is."""
    given = float(np.asarray(top.conductance) + np.asarray(top.to_oven))
    return given, float(np.asarray(top.heat_capacity)) / given


def _goes_on(row: Entry) -> bool:
    return row.kind is Kind.PAN and row.value == "on" and litres_in(row.note) is not None


def _run(rows: tuple[Entry, ...], place: int, one_litre: PanOfWater) -> PanRun | None:
    on = rows[place]
    end = next(
        (
            row
            for row in rows[place + 1 :]
            if row.spot == on.spot and row.kind in (Kind.PAN, Kind.NOTE) and (row.value != "on" or goal_in(row.note))
        ),
        None,
    )
    goal = goal_in(end.note) if end else None
    litres = litres_in(on.note)
    if end is None or goal is None or litres is None:
        return None
    minutes = minutes_between(on.at, end.at)
    readings = [(at, heat) for at, heat in readings_of(rows, on.spot, on.at) if -NEAR_MIN <= at <= minutes]
    if not readings or minutes <= 0:
        return None
    try:
        water = replace(one_litre, litres=litres)
    except InputProblem:  # a slip in the note: no pan holds that much
        return None
    times, heats = zip(*readings, strict=True)
    return PanRun(
        spot=on.spot,
        on_at=on.at,
        offset_minutes=on.offset_minutes,
        water=water,
        goal=goal,
        start=COLD_WATER,
        minutes=minutes,
        spot_minutes=np.array(times),
        spot_heats=np.array(heats),
    )
