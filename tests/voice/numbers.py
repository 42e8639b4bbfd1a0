"""Which numbers of a sentence are in the record that it is said of."""

import re
from collections.abc import Iterator
from datetime import datetime

from cookstove_gui.cooking.fit.tasks import Task
from cookstove_gui.forecast.answers import HORIZON_MINUTES, Outlook, Quantiles
from cookstove_gui.stove.entries import Kind, reading_kelvin
from cookstove_gui.units import degrees, degrees_difference
from tests.voice.moment import Moment
from tests.voice.words import CLOCK, minutes_to

_HEAT = re.compile(r"(−?\d+)(?: to (−?\d+))? °F|\((−?\d+) to (−?\d+) °F\)")
_LENGTH = re.compile(r"\b(?:(\d+) h(?: (\d+) min)?|(\d+) min)\b")
_SHARE = re.compile(r"\b(\d+)%|\b(\d+) in 10\b")
_CLOCK_ROUNDS = 1.0  # min; a clock is cut to its minute
_TABLE_ROUNDS = 5.0  # min; planned clocks are rounded to five minutes


def unknown_numbers(moment: Moment, text: str) -> Iterator[str]:
    """The clocks, temperatures, lengths of time and chances that the record does not hold."""
    instants, heats = _instants(moment), _heats(moment)
    for match in CLOCK.finditer(text):
        said = minutes_to(match[0], moment.now, moment.edge.offset_minutes)
        if not any(-_CLOCK_ROUNDS <= known - said <= _TABLE_ROUNDS for known in instants):
            yield match[0]
    for match in _HEAT.finditer(text):
        for number in filter(None, match.groups()):
            value = float(number.replace("−", "-"))
            if not any(abs(value - known) <= 1.0 for known in heats):
                yield f"{number} °F"
    for match in _LENGTH.finditer(text):
        hours, rest, alone = (int(part) if part else 0 for part in match.groups())
        minutes = 60 * hours + rest + alone
        if not any(abs(minutes - max(known, 1.0)) <= (0.6 if minutes < 20 else 3.0) for known in _lengths(moment)):
            yield match[0]
    for match in _SHARE.finditer(text):
        share = float(match[1]) / 100 if match[1] else float(match[2]) / 10
        step, most = (0.006, 1.0) if match[1] else (0.051, 0.9)  # in tenths nothing is quite sure
        if not any(abs(share - min(known, most)) <= step for known in _shares(moment)):
            yield match[0]


def _instants(moment: Moment) -> list[float]:
    """Minutes from the present minute to everything that the record puts a time on."""
    standing = moment.standing
    found: list[float | None] = [0.0, float(HORIZON_MINUTES)]
    for quantiles in _spans(moment):
        found += [quantiles.p10, quantiles.p50, quantiles.p90]
    for outlook in _outlooks(moment):
        found += [outlook.band.line_enters_min, outlook.band.line_leaves_min]
    since = _until(moment, standing.course.asked_at)  # deadlines count from the latest row
    found += [since + turn.in_min for turn in standing.course.turns]
    found += [float(turn.in_min) for turn in standing.turns]
    found += [float(ahead.minutes) for ahead in standing.outlook.ahead]
    found += [since + standing.next_reading.in_min if standing.next_reading else None]
    found += [at for fit in standing.fits for spot in fit.spots for at in (spot.in_min, spot.until_min)]
    found += [row.later_min for row in moment.plan.pots]
    found += [_until(moment, at) for at in (*(row.at for row in standing.rows), *moment.plan.instants)]
    for bake in standing.bakes:
        found += [_until(moment, at) for at in (bake.earliest, bake.likely, bake.latest, bake.turn_at) if at]
    seconds = moment.now.second / 60.0
    return [seconds + one for one in found if one is not None]


def _lengths(moment: Moment) -> list[float]:
    found: list[float | None] = []
    for quantiles in _spans(moment):
        found += [quantiles.p10, quantiles.p50, quantiles.p90]
    for outlook in _outlooks(moment):
        enters, leaves = outlook.band.line_enters_min, outlook.band.line_leaves_min
        found.append(None if enters is None or leaves is None else leaves - enters)
    found += [fit.task.minutes for fit in moment.standing.fits]
    found += moment.plan.lengths
    return [one for one in found if one is not None]


def _spans(moment: Moment) -> list[Quantiles]:
    found = (span for outlook in _outlooks(moment) for span in (outlook.band.enters_min, outlook.band.stays_min))
    return [*found, *moment.plan.spans]


def _outlooks(moment: Moment) -> list[Outlook]:
    """Of the present course, and of the steps asked about."""
    standing = moment.standing
    return [standing.outlook, *(step.outlook for step in (standing.best_step, standing.alternative) if step)]


def _heats(moment: Moment) -> list[float]:
    """Degrees Fahrenheit of everything that the record puts a temperature on."""
    standing, band = moment.standing, moment.standing.band
    found: list[float | None] = [band.low, band.high]
    oven = standing.outlook.oven
    found += [oven.p10, oven.p50, oven.p90]
    for ahead in standing.outlook.ahead:
        found += [ahead.p10, ahead.p50, ahead.p90]
    for zone in standing.zones.values():
        found += [zone.p10, zone.p50, zone.p90, zone.last_reading]
    for row in standing.doubted:
        found += [row.typed, row.expected_p50]
    found += [reading_kelvin(row) for row in standing.rows if row.kind is Kind.READING]
    found += [heat for fit in standing.fits for heat in (fit.task.low, fit.task.high, _middle(fit.task))]
    found += [bake.answer.done_at for bake in standing.bakes if bake.answer]
    found += [probe.core for bake in standing.bakes for probe in bake.inside.probes]
    turns = [bake.turn for bake in standing.bakes if bake.turn]
    apart = [10.0 * round(degrees_difference(one, "F") / 10) for turn in turns for one in (turn.least, turn.most)]
    return [*(float(degrees(one, "F")) for one in found if one is not None), *apart]


def _shares(moment: Moment) -> list[float]:
    standing = moment.standing
    found = [ahead.chance_in_band for ahead in standing.outlook.ahead]
    found.append(moment.plan.gain)
    for fit in standing.fits:
        for spot in fit.spots:
            found += [spot.chance_now, spot.chance_then, spot.chance_ever, max(spot.chances, default=0.0)]
    return found


def _middle(task: Task) -> float:
    """A steady oven for a task [K]."""
    return 0.5 * (task.low + task.high)


def _until(moment: Moment, at: datetime) -> float:
    return (at - moment.now).total_seconds() / 60.0
