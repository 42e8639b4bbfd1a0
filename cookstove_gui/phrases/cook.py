"""Every sentence with numbers in it, so that it can be tested, spoken and translated.

Quantiles come in as the forecast answers them (kelvin, minutes from `now`); clocks and degrees leave as text.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta

from cookstove_gui.forecast.answers import (
    Action,
    ActionKind,
    BandOutlook,
    DoubtedReading,
    NextReading,
    Outlook,
    Quantiles,
    RecordRow,
    SpotPattern,
    TrackRecord,
    Turn,
    TurnKind,
)
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Spot, SpotKind, Stove
from cookstove_gui.units import clock_text, degrees, degrees_difference, tidy

_LIKELY = 0.5  # a chance from which on we speak of what will happen
_SURE_OF_TURN = 0.6  # a turn of the fire is only spoken of from this chance on


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """How numbers leave: the unit, the instant the minutes count from and the local clock's offset."""

    unit: str
    now: datetime
    offset_minutes: int

    def clock(self, minutes: float) -> str:
        """Wall clock some minutes from now."""
        return clock_text(self.now + timedelta(minutes=minutes), self.offset_minutes)

    def heat(self, kelvin: float) -> str:
        """A temperature in whole degrees with its unit."""
        return f"{degrees(kelvin, self.unit):.0f} °{self.unit}"

    def range(self, low: float, high: float) -> str:
        """Two temperatures in whole degrees with one unit."""
        return f"{degrees(low, self.unit):.0f} to {degrees(high, self.unit):.0f} °{self.unit}"


def heat_name(band: HeatBand) -> str:
    """What a band is called inside a sentence: “bread heat”, or its degrees when it was typed."""
    return band.name if any(letter.isdigit() for letter in band.name) else f"{band.name} heat"


def arrival(band: HeatBand, enters: Quantiles, edge: Edge) -> str:
    """When the oven reaches the band, with its window."""
    if enters.p50 is None:
        earliest = f" It might by {edge.clock(enters.p10)}." if enters.p10 is not None else ""
        return f"With this fire the oven is not likely to reach {heat_name(band)} within three hours.{earliest}"
    if enters.p10 is None or enters.p50 < 1:
        return f"The oven is at {heat_name(band)} now."
    reaches = f"The oven reaches {heat_name(band)}"
    if enters.p90 is None:
        about, earliest = edge.clock(enters.p50), edge.clock(enters.p10)
        return f"The oven may reach {heat_name(band)} about {about}, not before {earliest}."
    if edge.clock(enters.p10) == edge.clock(enters.p90):
        return f"{reaches} at {edge.clock(enters.p50)}."
    return f"{reaches} between {edge.clock(enters.p10)} and {edge.clock(enters.p90)}, likely {edge.clock(enters.p50)}."


def stay(band: HeatBand, stays: Quantiles, edge: Edge) -> str:
    """How long the oven stays in the band it is in now."""
    if stays.p50 is None:
        return f"It likely stays there beyond {edge.clock(180)}."
    if stays.p50 < 5:
        return f"It is about to leave {heat_name(band)}."
    return f"It likely stays until {edge.clock(stays.p50)}."


def stay_length(stays: Quantiles) -> str:
    """How long the heat holds once reached, as a length of time."""
    if stays.p50 is None:
        return "Holds for hours once there."
    if stays.p10 is not None and stays.p10 < 10 and stays.p50 < 15:
        return "It may hold for only a few minutes."
    return f"Holds about {duration(stays.p50)} once there."


def duration(minutes: float) -> str:
    """A length of time as a cook says it."""
    rounded = max(1, round(minutes)) if minutes < 20 else 5 * round(minutes / 5)
    if rounded < 60:
        return f"{rounded} min"
    hours, rest = divmod(rounded, 60)
    return f"{hours} h" if rest == 0 else f"{hours} h {rest} min"


def next_reading(reading: NextReading | None, stove: Stove, edge: Edge) -> str:
    """Where to read next, and by when."""
    if reading is None:
        return ""
    spot = stove.spot(reading.spot)
    label = spot.label if spot else reading.spot.replace("_", " ")
    return f"Worth reading next: {label}, by {edge.clock(reading.in_min)}."


def doubted(reading: DoubtedReading, spot_label: str, edge: Edge, typed: float | None = None) -> str:
    """The question about a number that looks like a slip; `typed` [K] where the reading is a corrected one."""
    expected, meant = degrees(reading.expected_p50, edge.unit), f"{degrees(reading.typed, edge.unit):.0f}"
    shown = meant if typed is None else f"{degrees(typed, edge.unit):.0f}"
    corrected = "" if shown == meant else f", meant {meant},"
    return f"{spot_label}: {shown} typed{corrected} where about {expected:.0f} °{edge.unit} was expected. Keep or mend?"


def turn(found: Turn, edge: Edge) -> str:
    """What a turn of the fire asks for."""
    if found.kind is TurnKind.RELOAD_DUE:
        when = "now" if found.in_min <= 2 else f"by {edge.clock(found.in_min)}"
        return f"Add wood {when}, or the oven falls out of its heat."
    if found.kind is TurnKind.FIRE_OUT:
        return "The fire looks out. Look in, and relight on a little kindling if you still need heat."
    if found.kind is TurnKind.DOOR_OPEN:
        return "The oven loses heat as if its door stood open. Close it."
    return "The air has been wide open for a while. Shut it down, unless the fire is still catching."


def fire_is_out(turns: tuple[Turn, ...]) -> bool:
    """Whether the headline says that the fire is out; wood put on it would not burn then."""
    return any(item.kind is TurnKind.FIRE_OUT and item.chance >= _SURE_OF_TURN for item in turns)


def fuel_needed(in_band: bool, turns: tuple[Turn, ...], edge: Edge) -> str:
    """That the oven needs more wood to get to its band, when what burns now does not carry it there."""
    due = next((item for item in turns if item.kind is TurnKind.RELOAD_DUE and item.chance >= _SURE_OF_TURN), None)
    if in_band or due is None or due.in_min > 10:
        return ""
    when = "now" if due.in_min <= 2 else f"by {edge.clock(due.in_min)}"
    return f"It takes more wood to get there: add some {when}."


def action_words(action: Action) -> str:
    """A what-if as an order: “Add two splits”."""
    if action.kind is ActionKind.WOOD:
        splits = round(action.value / float(table("phrases.toml")["split_kg"]))
        return {1: "Add one split", 2: "Add two splits"}.get(splits, f"Add {tidy(action.value)} kg of wood")
    if action.kind is ActionKind.AIR:
        if action.value >= 0.95:
            return "Open the air wide"
        return "Shut the air" if action.value <= 0.05 else f"Set the air to {tidy(100 * action.value, 0)} % open"
    if action.kind is ActionKind.BYPASS:
        return "Close the bypass" if action.value <= 0.05 else "Open the bypass"
    return "Leave it"


def step_to_take(action: Action, outlook: Outlook, band: HeatBand, edge: Edge) -> str:
    """One step and what it brings."""
    if action.kind is ActionKind.LEAVE:
        return ""
    enters, stays = outlook.band.enters_min, outlook.band.stays_min
    if enters.p50 is None:
        return f"{action_words(action)}: the best chance of {heat_name(band)}."
    when = "" if enters.p50 < 1 else f"reaches {heat_name(band)} about {edge.clock(enters.p50)}, "
    held = "holds it for hours" if stays.p50 is None else f"holds it about {duration(stays.p50)}"
    return f"{action_words(action)}: {when}{held}."


def headline(band: HeatBand, found: BandOutlook, in_band: bool, turns: tuple[Turn, ...], edge: Edge) -> str:
    """The one thing to do now, and why."""
    told = table("phrases.toml")
    urgent = [item for item in turns if item.chance >= _SURE_OF_TURN and item.in_min <= 10]
    if not in_band:  # on the way up wood is part of the course, not an alarm: `fuel_needed` says it beside
        urgent = [item for item in urgent if item.kind is not TurnKind.RELOAD_DUE]
    if urgent:
        return turn(urgent[0], edge)
    words = told["bands"].get(band.name, {})
    if in_band:
        lead = words.get("ready", "")
        return f"{lead} The oven is at {heat_name(band)}. {stay(band, found.stays_min, edge)}".strip()
    enters = found.enters_min
    lead = words.get("prepare", "") if enters.p50 is not None and 3 <= enters.p50 <= 45 else ""
    return f"{lead} {arrival(band, enters, edge)}".strip()


def hot_side(stove: Stove, pattern: tuple[SpotPattern, ...], unit: str) -> str:
    """Left against right and front against back, in one sentence."""
    sides = {
        name: _mean_offset(stove, pattern, pick)
        for name, pick in (
            ("left", lambda spot: spot.x < 0.4),
            ("right", lambda spot: spot.x > 0.6),
            ("front", lambda spot: spot.y < 0.4),
            ("back", lambda spot: spot.y > 0.6),
        )
    }
    if any(value is None for value in sides.values()):
        return "Read the cooktop on both sides, front and back, and its hot side will show here."
    across = degrees_difference((sides["left"] or 0.0) - (sides["right"] or 0.0), unit)
    deep = degrees_difference((sides["front"] or 0.0) - (sides["back"] or 0.0), unit)
    return (
        f"The {'left' if across > 0 else 'right'} runs about {abs(across):.0f} °{unit} hotter than the "
        f"{'right' if across > 0 else 'left'}, and the {'front' if deep > 0 else 'back'} about "
        f"{abs(deep):.0f} °{unit} hotter than the {'back' if deep > 0 else 'front'}."
    )


def _mean_offset(stove: Stove, pattern: tuple[SpotPattern, ...], pick: Callable[[Spot], bool]) -> float | None:
    offsets = [
        row.mean
        for row in pattern
        if (spot := stove.spot(row.spot)) is not None and spot.kind is SpotKind.TOP and row.readings and pick(spot)
    ]
    return sum(offsets) / len(offsets) if offsets else None


def track_record(record: TrackRecord) -> str:
    """How past projections turned out, in one sentence."""
    if record.projections == 0:
        return "No projection given at least 30 minutes ahead has run its course yet."
    sentence = (
        f"Of {record.projections} projections given at least 30 minutes ahead, "
        f"{record.inside_window} came true inside their window"
    )
    if record.typical_miss_min is None:
        return sentence + "."
    return f"{sentence}; typical miss {duration(record.typical_miss_min)}."


def session_span(first_at: datetime | None, last_at: datetime | None, offset_minutes: int) -> str:
    """When a session was: its day and its clocks."""
    if first_at is None or last_at is None:
        return "nothing entered yet"
    day = first_at + timedelta(minutes=offset_minutes)
    began, ended = clock_text(first_at, offset_minutes), clock_text(last_at, offset_minutes)
    return f"{day:%A} {day.day} {day:%B} {day.year}, {began}" + (f" to {ended}" if ended != began else "")


def session_day(first_at: datetime | None, offset_minutes: int) -> str:
    """The day and clock a session began, short."""
    if first_at is None:
        return "nothing entered yet"
    day = first_at + timedelta(minutes=offset_minutes)
    return f"{day:%a} {day.day} {day:%b} {day.year}, {clock_text(first_at, offset_minutes)}"


def dated(title: str, at: datetime, offset_minutes: int) -> str:
    """A session's title behind its day, which is what is left of it where there is little width."""
    day = at + timedelta(minutes=offset_minutes)
    return f"{day.day} {day:%b}, {title}"


def entries_count(number: int) -> str:
    """How many entries a session holds."""
    return {0: "no entries", 1: "1 entry"}.get(number, f"{number} entries")


def sessions_count(number: int) -> str:
    """How many sessions."""
    return "1 session" if number == 1 else f"{number} sessions"


def ago(then: datetime, now: datetime) -> str:
    """How long ago something was, roughly."""
    minutes = (now - then).total_seconds() / 60
    if minutes < 2:
        return "just now"
    if minutes < 120:
        return f"{minutes:.0f} minutes ago"
    hours = minutes / 60
    if hours < 48:
        return f"{hours:.0f} hours ago"
    return f"{hours / 24:.0f} days ago"


def window(enters: Quantiles, edge: Edge) -> str:
    """An arrival window as a pair of clocks."""
    if enters.p10 is None:
        return "not within three hours"
    latest = "later than 3 h" if enters.p90 is None else edge.clock(enters.p90)
    return f"{edge.clock(enters.p10)} to {latest}"


def came_true(row: RecordRow, edge: Edge) -> str:
    """What came of a projection."""
    if row.came_true_min is None:
        return "not seen to come"
    at, enters = edge.clock(row.came_true_min), row.enters_min
    if enters.p10 is not None and row.came_true_min < enters.p10 - 0.5:
        return f"{at}, earlier"
    if enters.p90 is not None and row.came_true_min > enters.p90 + 0.5:
        return f"{at}, later"
    return f"{at}, inside"


def import_question(problems: int, rows: int, files: int) -> str:
    """What an import would bring, and what is wrong with it."""
    wrong = "One thing is wrong" if problems == 1 else f"{problems} things are wrong"
    if files == 0:
        return f"{wrong}, and there is nothing that could be kept."
    return f"{wrong} or doubtful. {entries_count(rows).capitalize()} in {sessions_count(files)} can be kept."


def record_behind(record: TrackRecord) -> str:
    """What a track record was made from."""
    return (
        f"From {sessions_count(record.sessions)}: each projected as it would have been then, with what the ones "
        "before it had taught; eight in ten should come true inside their window."
    )


def as_it_stood(at: datetime, offset_minutes: int) -> str:
    """That an answer is about an old session."""
    return f"Answered as the stove stood at the end of this session, {session_day(at, offset_minutes)}."


def recalibrated(factor: float) -> str:
    """What past sessions did to the doubt of a projection an hour ahead; empty if nothing."""
    if abs(factor - 1.0) < 0.05:
        return ""
    often = "less" if factor > 1 else "more"
    return (
        f"An hour ahead the oven was inside its range {often} often than eight times in ten, so that range is "
        f"now made {factor:.1f} times as wide."
    )
