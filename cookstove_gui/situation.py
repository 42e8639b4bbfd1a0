"""How the stove stands: one whole computation from the log, run off the screen's thread.

Whole frozen inputs go in, a whole frozen result comes out; `Memory` belongs to the one worker that calls.
"""

from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.cooking.fit.fit import TaskFit, fits
from cookstove_gui.cooking.instruments.meant_rows import meant_rows
from cookstove_gui.cooking.safety.cautions import Caution, due
from cookstove_gui.forecast import (
    Belief,
    Character,
    Tracker,
    doubted_readings,
    next_reading,
    outlook_of,
    project,
    trace,
    turns,
    zones,
)
from cookstove_gui.forecast.answers import (
    LEAVE,
    Action,
    ActionKind,
    DoubtedReading,
    NextReading,
    Outlook,
    Projection,
    Trace,
    Turn,
    Zone,
)
from cookstove_gui.phrases.cook import (
    action_words,
    doubted_words,
    fire_is_out,
    fuel_needed,
    headline,
    next_reading_words,
    step_to_take,
)
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, fold, fraction_open, reading_kelvin
from cookstove_gui.stove.stove import Stove

_SHORT_OF_BAND = 0.5  # below this chance of reaching the band a step to take is looked for
_SHORT_STAY_MIN = 30.0  # a stay shorter than this asks for a step to take
_LONGEST_DELAY_MIN = 15.0  # a step that makes the heat come so much later is no help, however long it then holds


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """Everything one computation needs."""

    serial: int  # a newer one makes an older one's result stale
    stove: Stove
    rows: tuple[Entry, ...]  # the raw log
    now: datetime
    offset_minutes: int
    unit: str
    band: HeatBand
    character: Character | None
    first_fires_done: bool
    first_fires_line: str  # what the first fires ask for now; empty once they are done
    action: Action  # what-if beside the present outlook; LEAVE for none


@dataclass(frozen=True, slots=True, kw_only=True)
class Alternative:
    """What one step would bring."""

    action: Action
    words: str
    outlook: Outlook
    projection: Projection


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """The result: belief, outlook, zones, fit and the words for them."""

    serial: int
    now: datetime
    band: HeatBand
    headline: str
    detail: str
    question: str  # about a reading that looks like a slip; empty when there is none
    cautions: tuple[Caution, ...]
    outlook: Outlook
    projection: Projection
    trace: Trace
    zones: dict[str, Zone]
    fits: tuple[TaskFit, ...]
    next_reading: NextReading | None
    turns: tuple[Turn, ...]
    doubted: tuple[DoubtedReading, ...]
    alternative: Alternative | None


class Memory:
    """The tracker of the stove last asked about, with its checkpoints."""

    def __init__(self) -> None:
        self._stove: Stove | None = None
        self._character: Character | None = None
        self._tracker: Tracker | None = None

    def tracker(self, stove: Stove, character: Character | None) -> Tracker:
        """The tracker for a stove and its character, kept while both stay the same."""
        if self._tracker is None or stove != self._stove or character is not self._character:
            self._stove, self._character = stove, character
            self._tracker = Tracker(stove, character)
        return self._tracker


def work_out(inputs: Inputs, memory: Memory) -> Standing:
    """Compute how the stove stands."""
    rows = meant_rows(inputs.stove, inputs.rows)
    belief = memory.tracker(inputs.stove, inputs.character).follow(rows, inputs.now)
    projection = project(belief, band=inputs.band)  # the fan on the screen and the arrival are of the same futures
    found = outlook_of(projection, belief.stove, inputs.band)
    zone_rows = zones(belief)
    turn_rows = turns(belief, inputs.band)
    standing_rows = fold(inputs.rows, inputs.now)
    has_readings = any(entry.kind is Kind.READING for entry in standing_rows)
    reading = next_reading(belief, inputs.band) if has_readings else None
    doubted = doubted_readings(belief)
    edge = Edge(unit=inputs.unit, now=inputs.now, offset_minutes=inputs.offset_minutes)
    headline, step = _words(inputs, belief, found, turn_rows, edge, has_readings)
    detail = " ".join(part for part in (step, next_reading_words(reading, inputs.stove, edge)) if part)
    return Standing(
        serial=inputs.serial,
        now=inputs.now,
        band=inputs.band,
        headline=headline,
        detail=detail,
        question=_question(doubted, standing_rows, inputs.stove, edge),
        cautions=due(
            inputs.stove,
            standing_rows,
            zone_rows,
            turn_rows,
            now=inputs.now,
            first_fires_done=inputs.first_fires_done,
        ),
        outlook=found,
        projection=projection,
        trace=trace(belief),
        zones={zone.spot: zone for zone in zone_rows},
        fits=fits(projection, inputs.stove, first_fires_done=inputs.first_fires_done),
        next_reading=reading,
        turns=turn_rows,
        doubted=doubted,
        alternative=_alternative(belief, inputs.band, inputs.action),
    )


def _words(
    inputs: Inputs,
    belief: Belief,
    found: Outlook,
    turn_rows: tuple[Turn, ...],
    edge: Edge,
    has_readings: bool,
) -> tuple[str, str]:
    if inputs.first_fires_line:
        return inputs.first_fires_line, ""
    if not has_readings:
        return table("phrases.toml")["no_readings"], ""
    arrives = found.band.enters_min.p50
    in_band = arrives is not None and arrives < 1.0  # minutes; as `arrival` has it
    words = headline(inputs.band, found.band, in_band, turn_rows, edge)
    if fire_is_out(turn_rows):
        return words, ""
    best = _best_step(belief, inputs, found)
    if best is not None:
        return words, step_to_take(best.action, best.outlook, inputs.band, edge)
    return words, fuel_needed(in_band, turn_rows, edge)


def _best_step(belief: Belief, inputs: Inputs, found: Outlook) -> Alternative | None:
    """The step that holds the band longest, looked for only when the present course falls short of it."""
    now = found.band
    stays = now.stays_min.p50
    if now.chance_reached_3h >= _SHORT_OF_BAND and (stays is None or stays >= _SHORT_STAY_MIN):
        return None
    tried = [_alternative(belief, inputs.band, action) for action in steps(inputs.rows, inputs.now)]
    better = [
        step
        for step in tried
        if step is not None and _worth(step.outlook) > _worth(found) + 5.0 and not _delays(step.outlook, found)
    ]
    return max(better, key=lambda step: _worth(step.outlook), default=None)


def _delays(step: Outlook, present: Outlook) -> bool:
    """Whether a step makes the cook wait much longer for the heat than the present course does."""
    before, after = present.band.enters_min.p50, step.band.enters_min.p50
    return before is not None and (after is None or after > before + _LONGEST_DELAY_MIN)


def _worth(found: Outlook) -> float:
    """Minutes in the band to be expected, roughly: the chance of reaching it times the stay."""
    stays = found.band.stays_min.p50
    return found.band.chance_reached_3h * (180.0 if stays is None else stays)


def steps(rows: tuple[Entry, ...], now: datetime) -> tuple[Action, ...]:
    """What a cook might do now: more wood, the air the other way, the bypass closed."""
    standing_rows = fold(rows, now)
    air = next((fraction_open(row) for row in reversed(standing_rows) if row.kind is Kind.AIR), 0.5)
    bypass = next((fraction_open(row) for row in reversed(standing_rows) if row.kind is Kind.BYPASS), 0.0)
    split = float(table("phrases.toml")["split_kg"])
    found = [Action(kind=ActionKind.WOOD, value=2 * split)]
    if air < 0.95:
        found.append(Action(kind=ActionKind.AIR, value=1.0))
    if air > 0.15:
        found.append(Action(kind=ActionKind.AIR, value=0.1))
    if bypass > 0.05:
        found.append(Action(kind=ActionKind.BYPASS, value=0.0))
    return tuple(found)


def _alternative(belief: Belief, band: HeatBand, action: Action) -> Alternative | None:
    if action == LEAVE:
        return None
    projection = project(belief, action, band)
    return Alternative(
        action=action,
        words=action_words(action),
        outlook=outlook_of(projection, belief.stove, band),
        projection=projection,
    )


def _question(doubted: tuple[DoubtedReading, ...], standing_rows: tuple[Entry, ...], stove: Stove, edge: Edge) -> str:
    latest = max((row.number for row in standing_rows), default=0)
    asked = next((row for row in doubted if row.number == latest), None)
    if asked is None:
        return ""
    entry = next(row for row in standing_rows if row.number == asked.number)
    spot = stove.spot(entry.spot)
    return doubted_words(asked, spot.label if spot else entry.spot, edge, reading_kelvin(entry))
