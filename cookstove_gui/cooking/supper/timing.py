"""How long each bake of a meal takes in the oven as it is and will be, and when what is in it is done."""

from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.helping import SOON_MIN
from cookstove_gui.cooking.supper.jobs import SLOT_MIN
from cookstove_gui.cooking.supper.pace import LONGEST, baked, is_paced, lengths, usable_from
from cookstove_gui.cooking.supper.reading_back import Table
from cookstove_gui.forecast.answers import FloatArray, Projection

# How much the oven's heat as it is foreseen counts in the length of a bake that begins so soon [min], and from when on
# it does not: the further ahead, the more the cook can still do to have it right. A hot oven is sooner cooled than a
# cool one heated, so that less is counted on a quick bake. Judgement.
_COUNTS_MIN = (15.0, SOON_MIN)
_QUICK_COUNTS = 0.7
_HARDLY = 3.0  # min by which a bake may be longer or shorter than planned without being planned again; judgement


def timed(table: Table, ahead: Projection, since: datetime) -> Table:
    """The table with the lengths and ends of its bakes, by the middle of the futures, counted from `since`."""
    offset = (table.grid.base - since).total_seconds() / 60.0
    starts = np.maximum(SLOT_MIN * np.arange(table.grid.slots) + offset, 0.0)
    until = starts - (table.now - since).total_seconds() / 60.0
    counts = np.interp(until, _COUNTS_MIN, (1.0, 0.0))
    oven: FloatArray = np.median(ahead.of(table.fire.belief.stove.oven_spot), axis=0)
    found, ends, left = {}, {}, {}
    for key, heat in table.heats.items():
        began = table.supper.mark(key).began
        if began is not None and heat.bake in table.fire.ends:
            ends[key] = table.fire.ends[heat.bake]
        if not is_paced(heat):
            continue
        if began is not None:
            left[key] = max(heat.minutes - _baked_so_far(table, heat, began), 0.0)
            if key not in ends:
                ahead_min = float(lengths(ahead.minutes, oven, heat, np.zeros(1), left[key])[0])
                gone = (table.now - began).total_seconds() / 60.0
                ends[key] = table.now + timedelta(minutes=min(ahead_min, max(LONGEST * heat.minutes - gone, 0.0)))
            continue
        usable = usable_from(ahead.minutes, oven, heat, starts)
        usable = np.where(np.isfinite(usable), usable, starts)
        takes = usable - starts + lengths(ahead.minutes, oven, heat, usable, heat.minutes)
        more = takes - heat.minutes
        found[key] = _steady(table, key, heat.minutes + counts * np.where(more < 0.0, _QUICK_COUNTS, 1.0) * more)
    return replace(table, lengths=found, ends=ends, left=left)


def _steady(table: Table, key: str, takes: FloatArray) -> FloatArray:
    """The lengths (slots,) [min], off by what they hardly differ from the one that was planned."""
    steps = table.before.steps if table.before is not None else ()
    planned = next((one for one in steps if one.key == key), None)
    if planned is None:
        return takes
    slot = min(max(table.grid.nearest(planned.begin), 0), table.grid.slots - 1)
    off = (planned.end - planned.begin).total_seconds() / 60.0 - float(takes[slot])
    return takes + off if abs(off) <= _HARDLY else takes


def _baked_so_far(table: Table, heat: Heat, began: datetime) -> float:
    """Minutes of the usual bake that what went in at `began` has had, by what is believed of the oven since."""
    points = table.fire.belief.points
    if not points:
        return (table.now - began).total_seconds() / 60.0
    at: FloatArray = np.array([(point.at - began).total_seconds() / 60.0 for point in points])
    kelvin: FloatArray = np.array([point.p50 for point in points])
    gone = (table.now - began).total_seconds() / 60.0
    minutes = np.unique(np.concatenate(([0.0, gone], at[(at > 0.0) & (at < gone)])))
    return float(baked(minutes, np.interp(minutes, at, kelvin), heat)[-1])
