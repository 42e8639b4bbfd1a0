"""The fire that a meal needs: what it is kept to, when it is lit, fed and let go."""

import math
from collections.abc import Callable, Iterable
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.cooking.fires.rise_and_hold import USUAL_RISE, RiseAndHold
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.heats import paced_by, task_for
from cookstove_gui.cooking.supper.marks import LET_GO
from cookstove_gui.cooking.supper.plan import FireStep, PlannedStep, StepKind
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind, FloatArray, KeptFire, Projection
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import FIRING
from cookstove_gui.forecast.model.habits import KINDLING_WAIT
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import SpotKind

BYPASS_SHUT_AFTER = 15.0  # min from lighting: the flue draws; common practice, no source
KINDLING_CATCHES = 8.0  # min from lighting; splits that are put on sooner smother it; common practice, no source
_SPREAD = 0.3  # of the logarithm of a rise, before any is known; 0.23 to 0.36 within stoves of the invented worlds
_SPREAD_WEIGHT = 3.0  # rises that this stands for; judgement
_RISES = 64  # equally likely rises
LONGEST_AHEAD = 8.0 * 60.0  # min that futures are run on for; beyond, the fire is taken to be as it is then
_AFTER_LAST = 10.0  # min that the futures see beyond the last part on heat
_LEAST_AHEAD = 60.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Fire:
    """The fire as it is, or where nothing burns as it would be just after lighting."""

    belief: Belief
    lit: bool
    band: HeatBand  # what the oven is kept to where no dish needs it
    kitchen: float  # K
    rises: Callable[[HeatBand], RiseAndHold]  # what the stove's own logs show, asked only where nothing burns
    bypass_open: bool = False
    reload_at: datetime | None = None  # when the next load is due, if that is known
    air: float | None = None  # its opening as it was logged, 0 to 1
    air_at: datetime | None = None  # when that was set
    against: frozenset[str] = frozenset()  # steps that a caution speaks against
    ends: dict[str, datetime] = field(default_factory=dict)  # bake to when it is likely done, for what is in the oven


@dataclass(frozen=True, slots=True, kw_only=True)
class OnHeat:
    """A part on heat as it is placed."""

    heat: Heat
    begin: datetime
    end: datetime
    began: datetime | None = None  # when it did; `begin` is now then
    left: float = 0.0  # of a bake: minutes at the middle of its heat that it wants from `begin` on
    by: datetime | None = None  # when it should be over for the dish to be in time


def kept_for(parts: Iterable[OnHeat], since: datetime, otherwise: HeatBand) -> KeptFire | None:
    """The fire that these parts need, fed from `since` on; None where nothing that is fed for is left.

    A part that wants the falling oven is not fed for. What only the cooktop needs keeps the oven's last heat.
    """
    heats: list[tuple[float, HeatBand]] = []
    fed = [part for part in parts if not part.heat.falling]
    for part in sorted((one for one in fed if one.heat.place is Place.OVEN), key=lambda one: (one.end, one.begin)):
        task = task_for(part.heat)
        until = (part.end - since).total_seconds() / 60.0
        if until > 0.0 and (not heats or until > heats[-1][0]):
            heats.append((until, HeatBand(name=task.name, low=task.low, high=task.high)))
    last = max(((one.end - since).total_seconds() / 60.0 for one in fed), default=0.0)
    if last > 0.0 and (not heats or last > heats[-1][0]):
        heats.append((last, heats[-1][1] if heats else otherwise))
    return KeptFire(heats=tuple(heats)) if heats else None


def futures(fire: Fire, kept: KeptFire | None, until: float, kinds: AbstractSet[SpotKind]) -> tuple[Projection, int]:
    """Futures from now, or from lighting where nothing burns, to `until` [min]; and the firings they are paced by.

    Of the oven, and of the other `kinds` of spots that are asked for.

    Where nothing burns the oven reaches the first heat wanted when this stove's own rises say; 0 firings: as common
    practice says.
    """
    horizon = 5.0 * math.ceil(min(max(until + _AFTER_LAST, _LEAST_AHEAD), LONGEST_AHEAD) / 5.0)
    stove = fire.belief.stove
    spots = [spot for spot in stove.spots if spot.kind in kinds or spot.kind is SpotKind.OVEN] or stove.spots
    ahead = project(fire.belief, band=fire.band, kept=kept, horizon=horizon, unfed=kept is None, spots=spots)
    if fire.lit:
        return ahead, 0
    band = kept.heats[0][1] if kept is not None else fire.band
    found = fire.rises(band)
    firings = len(found.rises)
    return paced_by(ahead, fire.belief.stove.oven_spot, band.low, rise_sample(found), firings), firings


def usual_lighting(fire: Fire, parts: Iterable[OnHeat], otherwise: datetime) -> datetime:
    """When to light for the first part's heat to be there in half of the fires."""
    first = min(parts, key=lambda part: part.begin, default=None)
    if first is None:
        return otherwise
    task = task_for(first.heat)
    in_oven = first.heat.place is Place.OVEN
    band = HeatBand(name=task.name, low=task.low, high=task.high) if in_oven else fire.band
    return first.begin - timedelta(minutes=float(np.median(rise_sample(fire.rises(band)))))


def rise_sample(found: RiseAndHold) -> FloatArray:
    """Equally likely minutes from lighting to a heat in the next fire: lognormal, by the rises seen.

    The next fire may be quicker or slower than all of a few: the spread of the rises seen is joined with a usual one,
    and their middle has a doubt of its own.
    """
    logs = np.log(found.rises) if found.rises else np.log([USUAL_RISE.p50 or 1.0])
    count = len(logs)
    own = float(((logs - logs.mean()) ** 2).sum())
    variance = (_SPREAD_WEIGHT * _SPREAD**2 + own) / (_SPREAD_WEIGHT + count - 1)
    levels = (np.arange(_RISES) + 0.5) / _RISES
    deviates = np.sqrt(2.0) * _inverse_error(2.0 * levels - 1.0)
    return np.asarray(np.exp(logs.mean() + np.sqrt(variance * (1.0 + 1.0 / count)) * deviates), dtype=np.float64)


def _inverse_error(values: FloatArray) -> FloatArray:
    """Inverse of the error function, to 0.005 (Winitzki, A handy approximation for the error function, 2008)."""
    a = 0.147
    log = np.log(1.0 - values**2)
    first = 2.0 / (np.pi * a) + 0.5 * log
    return np.asarray(np.sign(values) * np.sqrt(np.sqrt(first**2 - log / a) - first), dtype=np.float64)


def fire_steps(
    fire: Fire, lit_at: datetime, let_go_at: datetime | None, now: datetime, helps: Action = LEAVE
) -> tuple[PlannedStep, ...]:
    """What is done to the fire until it is let go, by this cook's own pace and size of loads; `lit_at` may be past.

    `helps` is what is to be done now, because else a heat is likely missed.
    """
    if let_go_at is None:
        return ()
    wood, split = math.exp(fire.belief.habits.mass_log), float(np.median(_splits_of(fire.belief)))
    every = math.exp(fire.belief.habits.interval_log)
    steps: list[PlannedStep] = []
    if not fire.lit:
        steps.append(_step("fire/light", FireStep.LIGHT, lit_at))
        steps.append(_step("fire/bypass", FireStep.BYPASS_SHUT, lit_at + timedelta(minutes=BYPASS_SHUT_AFTER)))
        load = lit_at + timedelta(minutes=KINDLING_WAIT * every)
    else:
        if fire.bypass_open:
            steps.append(_step("fire/bypass", FireStep.BYPASS_SHUT, max(now, _shut_at(fire, now))))
        load = max(next_load(fire, now), now)
        if helps.kind is ActionKind.AIR:
            steps.append(_air_step(helps.value, now))
        elif helps.kind is ActionKind.WOOD:
            load = now if helps.value > 0.0 else now + timedelta(minutes=every)
    number = fire.belief.loads + 1
    # What is put on burns for as long as until the next: the last load is the one that lasts to the end.
    while load < let_go_at - timedelta(minutes=0.5 * every):
        step = _step(f"fire/wood/{number}", FireStep.WOOD, _rounded(load))
        helping = helps.kind is ActionKind.WOOD and load == now
        put = helps.value if helping else wood
        steps.append(replace(step, wood=put, splits=max(round(put / split), 1), helps=helping))
        number, load = number + 1, load + timedelta(minutes=every)
    steps.append(_step(LET_GO, FireStep.LET_GO, let_go_at))
    return tuple(steps)


def next_load(fire: Fire, now: datetime) -> datetime:
    """When the next load is due; the kindling has a while to catch first, whatever the fire lacks."""
    every = math.exp(fire.belief.habits.interval_log)
    if fire.belief.loads or fire.belief.lit_at is None:
        return fire.reload_at or (fire.belief.last_load or fire.belief.lit_at or now) + timedelta(minutes=every)
    usual = fire.belief.lit_at + timedelta(minutes=KINDLING_WAIT * every)
    catches = fire.belief.lit_at + timedelta(minutes=KINDLING_CATCHES)
    return usual if fire.reload_at is None else min(max(fire.reload_at, catches), usual)


def _air_step(opening: float, now: datetime) -> PlannedStep:
    """Its key names the opening: another one is another step."""
    step = _step(f"fire/air/{round(100 * opening)}", FireStep.AIR, now)
    return replace(step, opening=opening, helps=True)


def _splits_of(belief: Belief) -> FloatArray:
    """What a split weighs here (members,) [kg]."""
    return heat.positive(belief.ensemble.x[FIRING])["split_mass"]


def _shut_at(fire: Fire, now: datetime) -> datetime:
    return (fire.belief.lit_at or now) + timedelta(minutes=BYPASS_SHUT_AFTER)


def _rounded(at: datetime) -> datetime:
    """To a round minute."""
    return at - timedelta(seconds=at.second, microseconds=at.microsecond)


def _step(key: str, what: FireStep, at: datetime) -> PlannedStep:
    return PlannedStep(key=key, kind=StepKind.FIRE, what=str(what), begin=at, end=at)
