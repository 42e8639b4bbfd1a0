"""What this stove's own `pan` rows say about a pan's contact, so that the next answer is narrower.

A run counts when the pan was noted on a spot with how much water (`on`, note “kettle, 2 litres, lid”), off or noted
again with what it did (“boiled”, “simmers”), and the spot was read near that time.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

import numpy as np

from cookstove_gui.cooking.fires.fires import kelvin_or_none, standing_rows
from cookstove_gui.cooking.pans.boiling_time import COLD_WATER, Goal, goal_temperature
from cookstove_gui.cooking.pans.catalogue import Contact, Pan, PanOfWater, pans, usual_contact
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.physics.boiling import conductance_from_time
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import USUAL_ROOM, Stove

RUN_LOG_SD = 0.2  # of one run's contact: clock, water and reading are a cook's; common practice, no source
NEAR_MIN = 20.0  # readings of the spot so long before the pan went on still tell of it
_LEAST, _MOST = 5.0, 2000.0  # W/(m2 K); beyond them the note or the clock slipped
_LITRES = {
    "l": 1.0, "litre": 1.0, "liter": 1.0, "ml": 0.001, "qt": 0.946353, "quart": 0.946353, "pt": 0.473176,
    "pint": 0.473176, "gal": 3.785412, "gallon": 3.785412, "cup": 0.236588,
}  # fmt: skip  # US customary measures, exact to six figures
_VOLUME = re.compile(
    r"(\d+(?:[.,]\d+)?)\s*(ml|litres?|liters?|l|quarts?|qt|pints?|pt|gallons?|gal|cups?)\b", re.IGNORECASE
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PanRun:
    """One pan of water brought to a goal on this stove."""

    water: PanOfWater
    goal: Goal
    start: float  # K
    minutes: float  # that it took
    spot_minutes: FloatArray  # (readings,) min from when it went on
    spot_heats: FloatArray  # (readings,) K


def calibrate_contact(past: Iterable[PanRun], pan: Pan) -> Contact:
    """The belief about a pan's contact after some runs with pans of its kind of base.

    The usual belief is updated in the logarithm, each run being a reading with `RUN_LOG_SD`; runs that no contact
    explains are left out.

    Parameters
    ----------
    past : runs
    pan : Pan

    Returns
    -------
    Contact
    """
    belief = usual_contact(pan)
    precision = 1.0 / belief.log_sd**2
    weighed = np.log(belief.median) * precision
    for run in past:
        contact = contact_of(run) if run.water.pan.base == pan.base else None
        if contact is not None:
            weighed += np.log(contact) / RUN_LOG_SD**2
            precision += 1.0 / RUN_LOG_SD**2
    return Contact(median=float(np.exp(weighed / precision)), log_sd=float(precision**-0.5))


def contact_of(run: PanRun) -> float | None:
    """The contact [W/(m2 K)] with which the run takes as long as it took; None if none does."""
    water = run.water
    end = goal_temperature(run.goal, water.boiling)
    at = np.linspace(0.0, run.minutes, 25)
    spot = float(np.interp(at, run.spot_minutes, run.spot_heats).mean())
    if spot <= end:
        return None
    found = conductance_from_time(water.physical(1.0), run.start, end, spot, run.minutes * 60.0, water.kitchen)
    return found if _LEAST < found < _MOST else None


def pan_runs(
    stove: Stove, sessions: Iterable[Session], pan: Pan, room: float = USUAL_ROOM, pressure: float = STANDARD_PRESSURE
) -> tuple[PanRun, ...]:
    """The runs that a stove's sessions tell of; where a note names none of the usual pans it was with this one."""
    found = []
    for session in sessions:
        if session.stove != stove.name:
            continue
        rows = standing_rows(session.entries)
        for place, row in enumerate(rows):
            run = _run(rows, place, PanOfWater(pan_in(row.note) or pan, 1.0, room, pressure)) if _goes_on(row) else None
            if run is not None:
                found.append(run)
    return tuple(found)


def litres_in(note: str) -> float | None:
    """How much water a note speaks of [litres], or None."""
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
    """The usual pan that a note names, with its lid if it speaks of one; None if it names none."""
    lowered = note.casefold()
    named = max((pan for pan in pans() if pan.key in lowered), key=lambda pan: len(pan.key), default=None)
    return None if named is None else replace(named, lid="lid" in lowered and "no lid" not in lowered)


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
    minutes = (end.at - on.at).total_seconds() / 60.0
    readings = [
        (after, heat)
        for row in rows
        if row.spot == on.spot
        and (heat := kelvin_or_none(row)) is not None
        and -NEAR_MIN <= (after := (row.at - on.at).total_seconds() / 60.0) <= minutes
    ]
    if not readings or minutes <= 0:
        return None
    try:
        water = replace(one_litre, litres=litres)
    except InputProblem:  # a slip in the note: no pan holds that
        return None
    times, heats = zip(*readings, strict=True)
    return PanRun(
        water=water,
        goal=goal,
        start=COLD_WATER,
        minutes=minutes,
        spot_minutes=np.array(times),
        spot_heats=np.array(heats),
    )
