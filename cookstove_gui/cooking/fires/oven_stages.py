"""The stages of the oven over one firing: catching, rising, at the heat wanted, above it, falling."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby

from cookstove_gui.stove.entries import HeatBand

CAUGHT = 0.2  # share of the whole rise from which the fire has caught; judgement
LEAST_MIN = 4.0  # a stage shorter than this joins the one before it; judgement


class Stage(StrEnum):
    """What the oven was doing."""

    CATCHING = "catching"
    RISING = "rising"
    AT_HEAT = "at heat"
    ABOVE = "above"
    FALLING = "falling"


@dataclass(frozen=True, slots=True, kw_only=True)
class OvenStage:
    """One stretch of a firing [min]."""

    stage: Stage
    start: float
    end: float

    @property
    def minutes(self) -> float:
        """How long it took."""
        return self.end - self.start


def oven_stages(minutes: Sequence[float], heats: Sequence[float], band: HeatBand) -> tuple[OvenStage, ...]:
    """The stages of an oven's curve (minutes, K), one after the other without gaps; none for fewer than two points."""
    if len(minutes) < 2:
        return ()
    peak = max(range(len(heats)), key=lambda place: heats[place])
    caught = heats[0] + CAUGHT * (heats[peak] - heats[0])
    last_cold = max((place for place in range(peak + 1) if heats[place] < caught), default=-1)

    def stage_at(place: int) -> Stage:
        if heats[place] > band.high:
            return Stage.ABOVE
        if heats[place] >= band.low:
            return Stage.AT_HEAT
        if place > peak:
            return Stage.FALLING
        return Stage.CATCHING if place <= last_cold else Stage.RISING

    runs = [(stage, list(places)) for stage, places in groupby(range(len(minutes)), key=stage_at)]
    edges = [minutes[0], *(0.5 * (minutes[run[0] - 1] + minutes[run[0]]) for _, run in runs[1:]), minutes[-1]]
    found: list[OvenStage] = []
    for (stage, _), start, end in zip(runs, edges, edges[1:], strict=False):
        if found and (end - start < LEAST_MIN or found[-1].stage is stage):
            found[-1] = OvenStage(stage=found[-1].stage, start=found[-1].start, end=end)
        else:
            found.append(OvenStage(stage=stage, start=start, end=end))
    return tuple(found)
