"""What the rules of the cautions ask of a moment of a session: rows, heats, pans, words noted."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from cookstove_gui.cooking.fires.logged_fires import fraction_or_none
from cookstove_gui.cooking.safety.chimney_watch import draws_from
from cookstove_gui.forecast.answers import Turn, TurnKind, Zone
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import kelvin

LIKELY = 0.5  # chance from which a turn of the fire counts
_NOTED_BESIDE = timedelta(minutes=5)  # a note so near a pan's row tells what is in it; common practice, no source


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingPan:
    """A pan that stands on the cooktop."""

    spot: str
    minutes: float  # since it was put there
    words: frozenset[str]  # that were noted of it, in small letters


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """A stove, what was logged so far, and what is believed now."""

    stove: Stove
    rows: tuple[Entry, ...]  # in force, in order of time
    of: Mapping[Kind, tuple[Entry, ...]]  # the same by their kind; a kind that has none is left out
    zones: dict[str, Zone]
    turns: dict[TurnKind, Turn]  # the likely ones
    at: datetime | None
    fumes: bool  # a new stove whose first fires are not done

    def latest(self, *kinds: Kind) -> Entry | None:
        """The latest row of any of some kinds."""
        last = [self.of[kind][-1] for kind in kinds if kind in self.of]
        return max(last, key=lambda row: (row.at, row.number), default=None)

    def readings(self, kind: SpotKind) -> Iterator[Entry]:
        """The readings of all spots of one kind."""
        spots = {row.spot for row in self.of.get(Kind.READING, ())}
        names = {name for name in spots if self.stove.kind_of(name) is kind}
        return (row for row in self.of.get(Kind.READING, ()) if row.spot in names)

    def minutes_since(self, row: Entry) -> float:
        """Minutes from a row to now."""
        return ((self.at or row.at) - row.at).total_seconds() / 60.0

    def within(self, row: Entry | None, key: str) -> bool:
        """Whether a row is there and no older than one of the times in the file."""
        return row is not None and self.minutes_since(row) <= minutes(key)

    def of_kind(self, kind: SpotKind) -> Iterator[Zone]:
        """The heats of all spots of one kind."""
        return (zone for name, zone in self.zones.items() if self.stove.kind_of(name) is kind)

    def heat_to_heed(self, zone: Zone) -> float:
        """The belief [K], or what was just read if that is hotter: a number taken for a slip may be true."""
        age = zone.last_reading_age_min
        if zone.last_reading is None or age is None or age > minutes("just_now"):
            return zone.p50
        return max(zone.p50, zone.last_reading)

    def flue_is_cooler(self, limit: float | None) -> bool | None:
        """Whether the flue was cooler than this [K] when last read, and still is; None where nothing tells of it."""
        flue = next(self.of_kind(SpotKind.FLUE), None)
        age = None if flue is None else flue.last_reading_age_min
        if flue is None or limit is None or age is None or age > minutes("recent_reading"):
            return None
        return max(flue.p50, flue.last_reading or 0.0) < limit

    def flue_draws(self) -> bool | None:
        """Whether the flue is warm enough to draw by itself; None where nothing tells of it."""
        cool = self.flue_is_cooler(draws_from(self.stove.flue_reading))
        return None if cool is None else not cool

    def open_at_most(self, kind: Kind, fraction: float) -> bool:
        """Whether the air or the bypass was last set this far open or less."""
        row = self.latest(kind)
        opened = None if row is None else fraction_or_none(row)
        return opened is not None and opened <= fraction

    def was_lit(self) -> bool:
        """Whether the log knows of a fire at all."""
        return self.latest(Kind.LIT, Kind.WOOD) is not None

    def was_reloaded(self) -> bool:
        """Whether wood was put on the fire since it was lit, later than what it was lit with."""
        lit, wood = self.latest(Kind.LIT), self.latest(Kind.WOOD)
        if wood is None:
            return False
        return lit is None or self.minutes_since(lit) - self.minutes_since(wood) > minutes("just_now")

    def fire_is_out(self) -> bool:
        """Whether the fire is likely out."""
        return TurnKind.FIRE_OUT in self.turns

    def has_fire(self) -> bool:
        """Whether wood burns or coals glow."""
        return not self.fire_is_out() and self.within(self.latest(Kind.LIT, Kind.WOOD), "coals_last")

    def said(self, key: str, within: str, *kinds: Kind) -> bool:
        """Whether a row's note used one of the words that the file lists, no longer ago than one of its times."""
        known = listed(key)
        return any(
            words_in(row.note) & known and self.within(row, within)
            for kind in kinds or (Kind.NOTE, Kind.PAN, Kind.WOOD, Kind.LIT)
            for row in self.of.get(kind, ())
        )

    def pans(self) -> Iterator[StandingPan]:
        """The pans that stand on the cooktop, each with the words noted of it."""
        last = {row.spot: row for row in self.of.get(Kind.PAN, ())}
        for spot, row in last.items():
            if row.value == "on":
                noted = [
                    other.note
                    for other in self.of.get(Kind.NOTE, ())
                    if other.spot == spot or (not other.spot and abs(other.at - row.at) <= _NOTED_BESIDE)
                ]
                yield StandingPan(
                    spot=spot, minutes=self.minutes_since(row), words=words_in(" ".join([row.note, *noted]))
                )


def moment_of(
    stove: Stove,
    rows: tuple[Entry, ...],
    zones: Iterable[Zone] | Mapping[str, Zone],
    turns: Iterable[Turn],
    now: datetime | None,
    first_fires_done: bool,
) -> Moment:
    """The moment asked about; the last row's if `now` is left out."""
    of: dict[Kind, list[Entry]] = {}
    for row in rows:
        of.setdefault(row.kind, []).append(row)
    return Moment(
        stove=stove,
        rows=rows,
        of={kind: tuple(found) for kind, found in of.items()},
        zones={zone.spot: zone for zone in (zones.values() if isinstance(zones, Mapping) else zones)},
        turns={turn.kind: turn for turn in turns if turn.chance >= LIKELY},
        at=now or max((row.at for row in rows), default=None),
        fumes=stove.is_new and not stove.first_fires_waived and not first_fires_done,
    )


def minutes(key: str) -> float:
    """One of the times of `resources/cautions.toml` [min]."""
    return float(table("cautions.toml")["minutes"][key])


def limit(key: str) -> float:
    """One of the limits of heat of `resources/cautions.toml` [K]."""
    return kelvin(float(table("cautions.toml")["limits"][key]), "F")


def listed(key: str) -> frozenset[str]:
    """One of the lists of words of `resources/cautions.toml`."""
    return frozenset(table("cautions.toml")["words"][key])


def words_in(text: str) -> frozenset[str]:
    """The words of a text, in small letters."""
    return frozenset(re.findall(r"[a-z]+", text.casefold()))
