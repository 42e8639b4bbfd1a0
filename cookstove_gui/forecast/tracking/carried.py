"""Heat carried from one session to the next: what is left of a belief, and the belief that begins with it.

Each part is carried by its mean and standard deviation; what ties the parts together is not, nor what the firing was
like, for the next firing is another one.
"""

from datetime import timedelta

import numpy as np

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import (
    MEMBERS,
    START_AIR,
    START_DIAL,
    START_LINING,
    START_WALLS,
    Ensemble,
    keep_possible,
)
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.carried import FUELS, OPENINGS, About, CarriedHeat

STILL_WARM = 20.0  # K over the room, of cooktop, oven or lining: less is a cold stove to whoever lights it
STILL_BURNING = 0.05  # kg
_ROWS = {
    "oven": heat.AIR, "walls": heat.WALLS, "lining": heat.LINING, "room": heat.ROOM, "flames": heat.FLAMING,
    "coals": heat.COALS, "air": heat.INLET, "bypass": heat.BYPASS, "fed": heat.SINCE_FED,
}  # fmt: skip


def carried_heat(belief: Belief) -> CarriedHeat:
    """What a stove still holds by a belief."""
    x = belief.ensemble.x
    rows = {name: x[row] for name, row in _ROWS.items()}
    rows["flames"] = x[heat.FLAMING] + x[heat.FRESH]
    if not belief.controls.lit:
        rows["flames"] = rows["coals"] = np.zeros(MEMBERS)
    parts = {name: _about(values) for name, values in rows.items()}
    parts["lit"] = About(belief.minutes_since_lit, 0.0)
    return CarriedHeat(cooktop=_about(x[heat.PLATE]), parts=parts)


def is_warm(carried: CarriedHeat) -> bool:
    """Whether the stove is warm enough that a session begun now does not begin cold."""
    room = carried.parts["room"].mean
    hottest = max(carried.cooktop.mean, *(carried.parts[name].mean for name in ("oven", "lining")))
    return hottest - room >= STILL_WARM or burns(carried)


def burns(carried: CarriedHeat) -> bool:
    """Whether anything is still alight."""
    return sum(carried.parts[name].mean for name in FUELS if name in carried.parts) >= STILL_BURNING


def lit_ago(carried: CarriedHeat) -> timedelta:
    """How long before the session its fire was lit."""
    return timedelta(minutes=carried.parts["lit"].mean if "lit" in carried.parts else 0.0)


def set_carried(ensemble: Ensemble, carried: CarriedHeat, random: np.random.Generator) -> None:
    """Let a cold beginning hold what was carried, in place; a part that is not told is as usual in a warm stove."""
    x, parts = ensemble.x, carried.parts
    draws = iter(random.standard_normal((len(_ROWS) + 2, MEMBERS)))  # for each part, the cooktop and the thermometer
    if "room" in parts:
        x[heat.ROOM] = _drawn(parts["room"], next(draws))
    x[heat.PLATE] = _drawn(carried.cooktop, next(draws))
    rise = np.maximum(x[heat.PLATE] - x[heat.ROOM], 0.0)
    for part, row, (share, spread) in (("walls", heat.WALLS, START_WALLS), ("lining", heat.LINING, START_LINING)):
        draw = next(draws)
        usual = x[heat.ROOM] + rise * share * np.exp(spread * draw)
        x[row] = _drawn(parts[part], draw) if part in parts else usual
    draw = next(draws)
    x[heat.AIR] = _drawn(parts["oven"], draw) if "oven" in parts else x[heat.WALLS] + START_AIR * rise * draw
    x[heat.DIAL] = x[heat.AIR] + START_DIAL * next(draws)
    for part in (*FUELS, *OPENINGS, "fed"):
        if part in parts:
            x[_ROWS[part]] = np.maximum(_drawn(parts[part], next(draws)), 0.0)
    keep_possible(ensemble)


def _about(values: FloatArray) -> About:
    return About(float(values.mean()), float(values.std()))


def _drawn(about: About, normal: FloatArray) -> FloatArray:
    return np.asarray(about.mean + about.deviation * normal, dtype=np.float64)
