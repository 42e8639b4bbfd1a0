"""In which of the futures the heat serves a part of a dish, from each start on and on each spot.

A plan asks less than "is it right now": the heat may be `GIVES` off on average, which makes a bake slow or quick but
still supper. A pot need not stand in the middle of a spot: between one that is warm enough and one that is not too hot
the iron has the heat it wants, to which a cook slides it; a gentle heat is had on any warmer spot, half off it or on a
trivet. One that cooks for long is looked at every `LOOKS_MIN`, and its heat has to be found at `MOST_LOOKS` of the
looks. How even the place must be is not given way on.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.cooking.fit.evenness import differences, oven_spot_names, top_spot_names
from cookstove_gui.cooking.fit.fit import share_of, window_of
from cookstove_gui.cooking.fit.tasks import Place, Task, task_of
from cookstove_gui.cooking.fit.windows import WindowedHeat
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.forecast.answers import FloatArray, Projection
from cookstove_gui.stove.stove import Stove

GIVES = 25.0 / 1.8  # K, 25 °F: what a bake forgives by taking a little longer or shorter; common practice, no source
LOOKS_MIN = 30.0  # min after which a pot that cooks for long is looked at; common practice, no source
MOST_LOOKS = 0.75  # of the looks at which there must be a spot for the pot; judgement
GENTLE = 420.0  # K, 300 °F: of a cooktop's heat that is to be no more, as for a simmer; judgement
_USUAL_EVENNESS = 100.0 / 1.8  # K, of a heat that names no task; common practice, no source


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class HeatFit:
    """One part on heat."""

    spots: tuple[str, ...]
    minutes: FloatArray  # (starts,) from the projection's now, up to the last that can be judged
    warm: NDArray[np.bool_]  # (starts, spots, futures): warm enough throughout
    cool: NDArray[np.bool_]  # the same: never too hot
    even: NDArray[np.bool_]  # the same: even enough
    lasts: NDArray[np.bool_]  # (starts, futures): it finds its heat at most of the later looks
    slides: bool = False  # it may stand between spots

    @property
    def good(self) -> NDArray[np.bool_]:
        """Which serve it on each spot itself: (starts, spots, futures)."""
        return np.asarray(self.warm & self.cool & self.even & self.lasts[:, None])

    def right(self, rows: slice, spots: Sequence[int]) -> NDArray[np.bool_]:
        """In which futures (rows, futures) one of these spots, or a place between them, has its heat, however even."""
        warm, cool = self.warm[rows][:, spots], self.cool[rows][:, spots]
        if not self.slides:
            return np.asarray((warm & cool).any(axis=1))
        return np.asarray(warm.any(axis=1) & cool.any(axis=1))

    def served(self, rows: slice, spots: Sequence[int]) -> NDArray[np.bool_]:
        """The same, even enough for it and for as long as it cooks."""
        return np.asarray(self.right(rows, spots) & self.even[rows][:, spots].any(axis=1) & self.lasts[rows])

    def chances(self, starts: FloatArray) -> FloatArray:
        """The share of futures that serve it from each start [min] on: (spots, starts).

        A start beyond what can be judged is taken for as good as the last that can: the fire is kept. Of a pot that
        would have to be slid between spots half counts: a spot of its own is sought first.
        """
        share = share_of(self.good)  # (starts, spots)
        if self.slides:
            share = 0.5 * (share + share_of(self.served(slice(None), range(len(self.spots))))[:, None])
        return np.asarray(share[self.rows(starts)].T, dtype=np.float64)

    def rows(self, starts: FloatArray) -> NDArray[np.intp]:
        """The rows that judge these starts [min]."""
        found = np.searchsorted(self.minutes, np.asarray(starts) + 1e-9, side="right") - 1
        return np.clip(found, 0, len(self.minutes) - 1)


def task_for(heat: Heat) -> Task:
    """The heat that a part wants, as a task of its own length."""
    known = task_of(heat.task)
    if known is None:
        low, high = heat.low or 0.0, heat.high or 0.0
        known = Task(
            key="", name=heat.what, place=heat.place, low=low, high=high, minutes=0.0, evenness=_USUAL_EVENNESS
        )  # fmt: skip
    elif heat.low is not None and heat.high is not None:
        known = replace(known, low=heat.low, high=heat.high, never_below=None, never_above=None)
    evenness = known.evenness if heat.evenness is None else heat.evenness
    return replace(known, minutes=heat.minutes, evenness=evenness)


def planned_for(task: Task) -> Task:
    """The task as a plan counts on it, and as the food may go in; what it may never pass it still may not."""
    low, high = task.low - GIVES, task.high + GIVES
    low = low if task.never_below is None else max(low, task.never_below)
    high = high if task.never_above is None else min(high, task.never_above)
    return replace(task, low=low, high=high)


def heat_fits(projection: Projection, stove: Stove, heats: Sequence[Heat]) -> tuple[HeatFit | None, ...]:
    """Each part against all spots that it may be done on; None where the stove has none."""
    places: dict[Place, tuple[tuple[str, ...], WindowedHeat]] = {}
    for place in {heat.place for heat in heats}:
        find = top_spot_names if place is Place.TOP else oven_spot_names
        names = find(stove, projection)
        if names:
            across = differences(stove, projection, place, names)
            places[place] = (names, WindowedHeat(projection, names, across))
    known: dict[Task, HeatFit] = {}
    for heat in heats:
        task = task_for(heat)
        if heat.place in places and task not in known:
            known[task] = _fit(task, *places[heat.place])
    return tuple(known.get(task_for(heat)) for heat in heats)


def _fit(task: Task, names: tuple[str, ...], heat: WindowedHeat) -> HeatFit:
    asked = planned_for(task)
    stays = task.place is Place.OVEN or task.minutes <= LOOKS_MIN
    window = window_of(asked if stays else replace(asked, minutes=LOOKS_MIN), heat)
    warm, cool = window.holds(asked.low, np.inf), window.holds(-np.inf, asked.high)  # (starts, spots, futures)
    if task.place is Place.TOP and task.high <= GENTLE and task.never_above is None:
        cool = np.ones_like(cool)
    even = np.broadcast_to(window.even(asked.evenness), warm.shape)
    fit = HeatFit(
        spots=names, minutes=window.starts, warm=warm, cool=cool, even=even,
        lasts=np.broadcast_to(np.True_, (len(warm), warm.shape[2])), slides=task.place is Place.TOP,
    )  # fmt: skip
    if stays:
        return fit
    anywhere = fit.served(slice(None), range(len(names)))
    looks = np.arange(LOOKS_MIN, task.minutes - 1e-9, LOOKS_MIN)
    found = np.zeros(anywhere.shape)
    for look in looks:
        found += anywhere[np.clip(np.searchsorted(window.starts, window.starts + look), 0, len(window.starts) - 1)]
    return replace(fit, lasts=found >= MOST_LOOKS * len(looks))


def paced_by(projection: Projection, spot: str, heat: float, rises: FloatArray, fires: int) -> Projection:
    """The same futures run faster or slower, so that a spot reaches a heat [K] when `rises` [min] say.

    The quickest future gets the quickest rise. `rises` are equally likely, by so many `fires` that reached the heat.
    Each of those speaks as loud as all that is known of other stoves: of the futures that fall short one in `fires` + 1
    does so still, the coldest; the others are fires fed until they are at the heat, as the stove's own were.
    """
    paths = projection.of(spot)
    there = paths >= heat
    reached = np.where(there.any(axis=1), projection.minutes[there.argmax(axis=1)], np.inf)
    short = np.isinf(reached)
    by_speed = np.lexsort((-paths.max(axis=1), reached))  # of those that fall short the hottest first
    comes = by_speed[: len(paths) - round(short.sum() / (fires + 1.0))]
    comes = comes[reached[comes] > 0.0]
    if not len(comes):
        return projection
    fed = comes[short[comes]]
    excess = np.maximum(paths[fed].max(axis=1) - paths[fed, 0], 1.0)
    begun = projection.kelvin[:, :1]
    kelvin = projection.kelvin.copy()
    kelvin[fed] = begun[fed] + ((heat - paths[fed, 0]) / excess)[:, None, None] * (kelvin[fed] - begun[fed])
    reached[fed] = projection.minutes[paths[fed].argmax(axis=1)]
    wanted = np.quantile(rises, (np.arange(len(comes)) + 0.5) / len(comes))
    for future, speed in zip(comes, reached[comes] / np.maximum(wanted, 1.0), strict=True):
        at = np.clip(projection.minutes * speed, 0.0, projection.minutes[-1])
        row = np.minimum(np.searchsorted(projection.minutes, at, side="right") - 1, len(at) - 2)
        share = ((at - projection.minutes[row]) / (projection.minutes[row + 1] - projection.minutes[row]))[:, None]
        kelvin[future] = (1.0 - share) * kelvin[future, row] + share * kelvin[future, row + 1]
    return replace(projection, kelvin=kelvin)
