"""The sentences of a session's report. A clock on another day than the session's first says which."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from cookstove_gui.cooking.fires.rise_and_hold import rise_and_hold
from cookstove_gui.cooking.instruments.thermometers import give_or_take
from cookstove_gui.forecast.answers import RecordRow
from cookstove_gui.phrases.edge import (
    air_words,
    capital,
    heat_name,
    local_day,
    measured_time,
    spot_label,
)
from cookstove_gui.phrases.habits import USUAL, Habits, clock_words, date_words, day_words, weekday_words
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session, fraction_open, reading_kelvin, stated_mass
from cookstove_gui.stove.stove import Instrument, SpotKind, Stove
from cookstove_gui.units import (
    KILOGRAMS_PER_POUND,
    METRES_PER_FOOT,
    degrees,
    degrees_difference,
    iso_clock,
    kelvin,
    tidy,
)

_SHOWN_AT = kelvin(400.0, "F")  # K, a baking heat: where a thermometer's error is told


@dataclass(frozen=True, slots=True)
class ReportClock:
    """The wall clock of a session's first row, as its reader is used to it."""

    first: datetime
    offset_minutes: int
    habits: Habits = USUAL

    @property
    def zone(self) -> str:
        """`UTC-05:00`."""
        return f"UTC{iso_clock(self.first, self.offset_minutes)[-6:]}"

    @property
    def first_date(self) -> str:
        """The day of the first row."""
        return weekday_words(self._day(self.first), self.habits)

    def time(self, at: datetime) -> str:
        """`7:05`, or `0:10 on 6 January` where that is not the first day."""
        day, text = self._day(at), self.short(at)
        return text if day == self._day(self.first) else f"{text} on {day_words(day, self.habits)}"

    def moment(self, at: datetime) -> str:
        """Clock and day, in a report of many days."""
        return f"{self.short(at)} on {date_words(self._day(at), self.habits)}"

    def short(self, at: datetime) -> str:
        """The clock alone."""
        return clock_words(at, self.offset_minutes, self.habits)

    def _day(self, at: datetime) -> date:
        return local_day(at, self.offset_minutes)


def wood_fact(loads: int, weighed: Sequence[float]) -> str:
    """How often wood was put on, and how much of it was weighed [kg]."""
    if not loads:
        return "not logged"
    times = "1 time" if loads == 1 else f"{loads} times"
    if not weighed:
        return times
    some = "" if len(weighed) == loads else f", {len(weighed)} of them weighed"
    return f"{times}{some}, {tidy(sum(weighed) / KILOGRAMS_PER_POUND)} lb ({tidy(sum(weighed))} kg)"


def height_fact(altitude: float) -> str:
    """A height [m] in both units."""
    return f"{tidy(altitude / METRES_PER_FOOT, 0)} ft ({tidy(altitude, 0)} m)"


def heat_text(row: Entry, unit: str) -> str:
    """A reading in whole degrees of the report's unit."""
    return tidy(float(degrees(reading_kelvin(row), unit)), 0)


def reached(rows: Sequence[Entry], unit: str) -> str:
    """Lowest and highest of some readings, or the only one; empty without any."""
    heats = sorted({heat_text(row, unit) for row in rows}, key=float)
    return "–".join(dict.fromkeys((heats[0], heats[-1]))) if heats else ""


def event_words(row: Entry, stove: Stove) -> str:
    """What was done, without its remark."""
    shown = {
        Kind.CARRIED: f"still warm, cooktop about {row.value} °{row.unit}",
        Kind.LIT: "fire lit",
        Kind.OUT: "fire out",
        Kind.WOOD: f"wood {row.value} {row.unit}".strip(),
        Kind.AIR: f"air {_opening(row)}",
        Kind.BYPASS: f"bypass {_opening(row)}",
        Kind.OVEN_DOOR: f"oven door {row.value}",
        Kind.PAN: f"pan {row.value}, {spot_label(stove, row.spot)}",
        Kind.OVEN_IN: f"into the oven {row.value} {row.unit}".strip(),
        Kind.PROBE: f"probe in the oven {row.value} °{row.unit}",
        Kind.TURNED: "turned in the oven",
        Kind.DUE: f"to be looked at in {row.value} min",
        Kind.OVEN_OUT: "out of the oven",
        Kind.NOTE: row.value or "note",
    }
    return shown.get(row.kind, str(row.kind))


def told_words(row: Entry, stove: Stove) -> str:
    """The same for a visitor: a note needs no word before it."""
    return row.value if row.kind is Kind.NOTE else event_words(row, stove)


def _opening(row: Entry) -> str:
    if row.kind not in (Kind.AIR, Kind.BYPASS):
        return ""
    words = air_words(fraction_open(row))
    return words if row.kind is Kind.AIR else words.removeprefix("wide ")


def slip_words(row: Entry, expected: float, stove: Stove, unit: str, clock: ReportClock) -> str:
    """A reading that was taken for a slip; about `expected` [K] was."""
    return (
        f"{clock.time(row.at)}, {spot_label(stove, row.spot)}: {row.value} °{row.unit} was typed where about "
        f"{degrees(expected, unit):.0f} °{unit} was expected; left out of the tables."
    )


def thermometer_words(instrument: Instrument, habits: Habits) -> str:
    """A thermometer, its setting, and what its latest check showed."""
    setting = f", emissivity set to {tidy(instrument.emissivity, 2)}" if instrument.kind == "infrared" else ""
    if not instrument.checked_on:
        return f"{instrument.name} ({instrument.kind}{setting}): not checked."
    unit = habits.unit
    error = degrees_difference(instrument.error(_SHOWN_AT), unit)
    doubt = degrees_difference(give_or_take(instrument, _SHOWN_AT), unit)
    side = "high" if error >= 0 else "low"
    return (
        f"{instrument.name} ({instrument.kind}{setting}): at {degrees(_SHOWN_AT, unit):.0f} °{unit} it reads "
        f"{tidy(abs(error))} °{unit} too {side}, give or take {tidy(doubt)} °{unit}, as checked on "
        f"{date_words(date.fromisoformat(instrument.checked_on), habits)}."
    )


def chart_words(stove: Stove, oven: Sequence[Entry], unit: str, clock: ReportClock) -> str:
    """The chart for somebody who cannot see it, from the readings in the oven; empty without any."""
    if not oven:
        return ""
    first, last, highest = oven[0], oven[-1], max(oven, key=reading_kelvin)
    parts = (
        f"{heat_text(first, unit)} °{unit} at {clock.time(first.at)}",
        f"its highest {heat_text(highest, unit)} °{unit} at {clock.time(highest.at)}",
        f"{heat_text(last, unit)} °{unit} at {clock.time(last.at)}",
    )
    return f"The oven of {stove.name}: {', '.join(dict.fromkeys(parts))}."


def result_words(stove: Stove, band: HeatBand, sound: Sequence[Entry], unit: str, clock: ReportClock) -> str:
    """What came of the session, in one sentence: the heat wanted, after how long, and how long it held.

    By straight lines between the readings, which is what a visitor can check; the curve knows more.
    """
    session = Session(number=0, stove=stove.name, title="", entries=tuple(sound))
    found = rise_and_hold(stove, [session], band)
    if found.rises:
        hold = found.holds[0]
        held = (
            f"held for {measured_time(hold.minutes)} by the readings"
            if hold.ended
            else f"at it for {measured_time(hold.minutes)} by the readings when it ended"
        )
        came = f"{capital(heat_name(band))} after {measured_time(found.rises[0])}"
        return f"{came}{f', {held}' if hold.minutes >= 1.0 else ''}.{baked_words(sound, unit)}"
    oven = [row for row in sound if row.kind is Kind.READING and row.spot == stove.oven_spot]
    if not oven:
        return f"The oven was not read.{baked_words(sound, unit)}"
    highest = max(oven, key=reading_kelvin)
    told = f"The oven’s highest was {heat_text(highest, unit)} °{unit} at {clock.time(highest.at)}."
    return f"{told}{baked_words(sound, unit)}"


def baked_words(sound: Sequence[Entry], unit: str) -> str:
    """What was in the oven and for how long, with a space before it: ` Loaves 48 min in the oven, core 203 °F.`"""
    told, inside, probes = [], dict[str, Entry](), dict[str, Entry]()
    for row in sound:
        latest = next(reversed(inside), "")
        if row.kind is Kind.OVEN_IN:
            inside[row.note] = row
        elif row.kind is Kind.PROBE:
            probes[row.note or latest] = row
        elif row.kind is Kind.OVEN_OUT and (name := row.note or latest) in inside:
            minutes = (row.at - inside.pop(name).at).total_seconds() / 60.0
            probe = probes.pop(name, None)
            core = "" if probe is None else f", core {heat_text(probe, unit)} °{unit}"
            told.append(f" {capital(name or 'bake')} {measured_time(minutes)} in the oven{core}.")
    return "".join(told)


def came_at(row: RecordRow, clock: ReportClock) -> str:
    """When a heat that was foretold came."""
    return f"came {clock.short(row.made_at + timedelta(minutes=row.came_true_min or 0.0))}"


def said_lines(row: RecordRow, clock: ReportClock) -> tuple[str, str]:
    """What was said of it, and when."""

    def at(minutes: float) -> str:
        return clock.short(row.made_at + timedelta(minutes=minutes))

    first, last = row.enters_min.p10 or 0.0, row.enters_min.p90
    window = f"{at(first)} at the soonest" if last is None else f"between {at(first)} and {at(last)}"
    return f"{heat_name(row.band)} said at {at(0.0)}: about {at(row.likely_min or 0.0)},", window


def caution_span(begins: datetime, ends: datetime, clock: ReportClock) -> str:
    """From when to when a caution was due: `1:46 to 2:20`."""
    return clock.time(begins) if begins == ends else f"{clock.time(begins)} to {clock.time(ends)}"


def glance_words(
    stove: Stove, standing: Sequence[Entry], readings: Sequence[Entry], unit: str, clock: ReportClock
) -> tuple[tuple[str, str], ...]:
    """The facts at the head of the first page: wood, how long it burned, what was read, the hottest, the flue."""
    told = []
    loads = [row for row in standing if row.kind is Kind.WOOD]
    masses = [mass for row in loads if (mass := stated_mass(row)) is not None]
    if loads:
        count = "1 load" if len(loads) == 1 else f"{len(loads)} loads"
        weighed = sum(masses) / KILOGRAMS_PER_POUND if unit == "F" else sum(masses)
        all_weighed = masses and len(masses) == len(loads)
        told.append(("wood", f"{weighed:.1f} {'lb' if unit == 'F' else 'kg'}, {count}" if all_weighed else count))
    lit = next((row for row in standing if row.kind is Kind.LIT), None)
    if lit is not None:
        out = next((row for row in standing if row.kind is Kind.OUT and row.at > lit.at), standing[-1])
        told.append(
            (
                "burned" if out.kind is Kind.OUT else "lit to the last entry",
                measured_time((out.at - lit.at).total_seconds() / 60.0),
            )
        )
    told.append(("readings", f"{len(readings)} of {len(standing)} entries"))
    tops = [row for row in readings if stove.kind_of(row.spot) is SpotKind.TOP]
    if tops:
        hottest = max(tops, key=reading_kelvin)
        where = spot_label(stove, hottest.spot).removeprefix("top ")
        told.append(("hottest on the top", f"{where} {heat_text(hottest, unit)} °{unit}, {clock.time(hottest.at)}"))
    flue = sorted((row for row in readings if stove.kind_of(row.spot) is SpotKind.FLUE), key=reading_kelvin)
    if flue:
        low, high = heat_text(flue[0], unit), heat_text(flue[-1], unit)
        told.append(("flue", f"{low} to {high} °{unit}" if low != high else f"{low} °{unit}"))
    return tuple(told)


def stage_stove_words(stove: Stove, stage: str, heats: Mapping[str, float], unit: str) -> str:
    """A stove at one stage, read out."""
    told = ", ".join(f"{spot_label(stove, name)} {degrees(heat, unit):.0f}" for name, heat in heats.items())
    return f"The stove in the stage “{stage}”, highest readings in °{unit}: {told}"
