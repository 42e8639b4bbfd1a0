"""Which cautions are due at this moment of a session. Their words live in `resources/cautions.toml`.

A caution is never a permission: none is ever taken to mean that something else is safe, and each ends with who decides.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from cookstove_gui.cooking.fires.logged_fires import fraction_or_none, kelvin_or_none
from cookstove_gui.cooking.instruments.surface_readings import INFRARED, cooktop_is_shiny
from cookstove_gui.cooking.safety.chimney_watch import flue_limits
from cookstove_gui.cooking.safety.fats import fats_that_smoke, in_words
from cookstove_gui.cooking.safety.touch_watch import material_of, seconds_to_burn
from cookstove_gui.forecast.answers import Turn, TurnKind, Zone
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import Entry, Kind, door_is_open
from cookstove_gui.stove.stove import USUAL_ROOM, SpotKind, Stove
from cookstove_gui.units import kelvin

NEARLY_SHUT = 0.1  # fraction of the air or bypass
LIKELY = 0.5  # chance from which a turn of the fire counts
LASTING_TOUCH = 60.0  # s, as long as skin may rest on something before it is noticed; ASTM C1055 for consumer goods
_TOUCHED = {SpotKind.SIDE: "enamelled or painted metal", SpotKind.GLASS: "glass, tile or stone"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution in full words, ending with who decides."""

    key: str
    title: str
    text: str
    urgent: bool
    spot: str = ""  # the spot it is about, if about one


def due(
    stove: Stove,
    entries: Iterable[Entry],
    zones: Iterable[Zone] | Mapping[str, Zone],
    turns: Iterable[Turn],
    *,
    now: datetime | None = None,
    first_fires_done: bool = False,
) -> tuple[Caution, ...]:
    """The cautions that are due, the urgent ones first.

    Parameters
    ----------
    stove : Stove
    entries : entries
        The standing rows of the session, in order of time.
    zones : zones
        Every spot's heat now.
    turns : turns
        Turns of the fire.
    now : datetime, optional
        The moment asked about; the last row's if left out.
    first_fires_done : bool
        True ends the caution about fumes of a new stove.
    """
    moment = _moment(stove, tuple(entries), zones, turns, now, first_fires_done)
    rows = table("cautions.toml")["caution"]
    found = [
        Caution(
            key=row["key"],
            title=row["title"],
            text=f"{row['text'].format(spot=_label(stove, about.spot), **about.words)} {row['decides']}",
            urgent=row["urgent"],
            spot=about.spot,
        )
        for row in rows
        for about in _RULES[row["key"]](moment)
    ]
    return tuple(sorted(found, key=lambda caution: not caution.urgent))


@dataclass(frozen=True, slots=True, kw_only=True)
class _About:
    spot: str = ""
    words: dict[str, str] = field(default_factory=dict)  # for the text's other places


@dataclass(frozen=True, slots=True, kw_only=True)
class _Moment:
    stove: Stove
    rows: tuple[Entry, ...]
    zones: dict[str, Zone]
    turns: frozenset[TurnKind]
    at: datetime | None
    fumes: bool

    def latest(self, *kinds: Kind) -> Entry | None:
        return next((row for row in reversed(self.rows) if row.kind in kinds), None)

    def since(self, row: Entry) -> timedelta:
        return (self.at or row.at) - row.at

    def within(self, row: Entry | None, minutes_key: str) -> bool:
        """Whether a row is there and younger than one of the file's times."""
        return row is not None and self.since(row) <= timedelta(minutes=table("cautions.toml")["minutes"][minutes_key])

    def of_kind(self, kind: SpotKind) -> Iterator[Zone]:
        for name, zone in self.zones.items():
            if self.stove.kind_of(name) is kind:
                yield zone

    def flue(self) -> Zone | None:
        return next(self.of_kind(SpotKind.FLUE), None)

    def heat_to_heed(self, zone: Zone) -> float:
        """The belief [K], or what was just read if that is hotter: a number taken for a slip may be true."""
        age = zone.last_reading_age_min
        if zone.last_reading is None or age is None or age > table("cautions.toml")["minutes"]["just_now"]:
            return zone.p50
        return max(zone.p50, zone.last_reading)

    def flue_is_cooler(self, limit: float) -> bool | None:
        """Whether the flue was cooler than this [K] when last read, and still is; None where it was not read lately."""
        flue = self.flue()
        age = None if flue is None else flue.last_reading_age_min
        if flue is None or age is None or age > table("cautions.toml")["minutes"]["recent_reading"]:
            return None
        return max(flue.p50, flue.last_reading or 0.0) < limit

    def nearly_shut(self, kind: Kind) -> bool:
        row = self.latest(kind)
        fraction = None if row is None else fraction_or_none(row)
        return fraction is not None and fraction <= NEARLY_SHUT

    def has_fire(self) -> bool:
        return TurnKind.FIRE_OUT not in self.turns and self.within(self.latest(Kind.LIT, Kind.WOOD), "coals_last")


def _moment(
    stove: Stove,
    rows: tuple[Entry, ...],
    zones: Iterable[Zone] | Mapping[str, Zone],
    turns: Iterable[Turn],
    now: datetime | None,
    first_fires_done: bool,
) -> _Moment:
    return _Moment(
        stove=stove,
        rows=rows,
        zones={zone.spot: zone for zone in (zones.values() if isinstance(zones, Mapping) else zones)},
        turns=frozenset(turn.kind for turn in turns if turn.chance >= LIKELY),
        at=now or max((row.at for row in rows), default=None),
        fumes=stove.is_new and not stove.first_fires_waived and not first_fires_done,
    )


# --- the rules: each yields once for every spot it is about, or once ------------------------------------------------


def _over_fired_flue(moment: _Moment) -> Iterator[_About]:
    _, hot = flue_limits()
    for zone in moment.of_kind(SpotKind.FLUE):
        if moment.heat_to_heed(zone) >= hot:
            yield _About(spot=zone.spot)


def _over_fired_top(moment: _Moment) -> Iterator[_About]:
    hottest = max(moment.of_kind(SpotKind.TOP), key=moment.heat_to_heed, default=None)
    if hottest is not None and moment.heat_to_heed(hottest) >= _limit("top_over_fired"):
        yield _About(spot=hottest.spot)


def _carbon_monoxide(moment: _Moment) -> Iterator[_About]:
    if moment.has_fire() and moment.nearly_shut(Kind.AIR):
        yield _About()


def _back_puff(moment: _Moment) -> Iterator[_About]:
    if moment.nearly_shut(Kind.AIR) and moment.within(moment.latest(Kind.WOOD), "just_now"):
        yield _About()


def _first_fire_fumes(moment: _Moment) -> Iterator[_About]:
    if moment.fumes:
        yield _About()


def _oven_steam(moment: _Moment) -> Iterator[_About]:
    door = moment.latest(Kind.OVEN_DOOR)
    opened = door is not None and door_is_open(door) and moment.within(door, "just_now")
    hot = any(zone.p50 >= _limit("oven_steam") for zone in moment.of_kind(SpotKind.OVEN))
    if hot and (opened or TurnKind.DOOR_OPEN in moment.turns):
        yield _About()


def _hot_fat(moment: _Moment) -> Iterator[_About]:
    last_word = {row.spot: row for row in moment.rows if row.kind is Kind.PAN}
    for spot, row in last_word.items():
        zone = moment.zones.get(spot)
        smoking = fats_that_smoke(zone.p50) if zone else ()
        if smoking and row.value == "on" and moment.within(row, "just_now"):
            yield _About(spot=spot, words={"fats": in_words(smoking)})


def _cold_flue(moment: _Moment) -> Iterator[_About]:
    lit = moment.latest(Kind.LIT)
    before_the_fire = moment.latest(Kind.LIT, Kind.WOOD) is None
    if (before_the_fire or moment.within(lit, "just_now")) and moment.flue_is_cooler(_limit("flue_draws")) is not False:
        yield _About()


def _bypass_early(moment: _Moment) -> Iterator[_About]:
    if moment.has_fire() and moment.nearly_shut(Kind.BYPASS) and moment.flue_is_cooler(_limit("flue_draws")):
        yield _About()


def _creosote(moment: _Moment) -> Iterator[_About]:
    lit = moment.latest(Kind.LIT)
    warming = moment.within(lit, "draws_by")
    if moment.has_fire() and not warming and moment.flue_is_cooler(flue_limits()[0]):
        yield _About()


def _air_open(moment: _Moment) -> Iterator[_About]:
    if TurnKind.AIR_OPEN in moment.turns:
        yield _About()


def _wall(moment: _Moment, *, urgent: bool) -> Iterator[_About]:
    limits = sorted(float(row["limit"]) for row in table("touch.toml")["rise"])  # K
    for spot, rise in _rises(moment):
        if rise >= limits[0] and (rise >= limits[-1]) is urgent:
            yield _About(spot=spot, words={"rise": f"{rise * 1.8:.0f} °F ({rise:.0f} °C)"})


def _hot_surface(moment: _Moment) -> Iterator[_About]:
    for spot, (row, heat) in _last_readings(moment).items():
        material = _TOUCHED.get(moment.stove.kind_of(spot))
        if material is None or not moment.within(row, "just_now"):
            continue
        seconds = seconds_to_burn(heat, material_of(material))
        if seconds is not None and seconds <= LASTING_TOUCH:
            yield _About(spot=spot)


def _shiny_cooktop(moment: _Moment) -> Iterator[_About]:
    """Once a session, when the cooktop is first read."""
    kinds = {instrument.kind for instrument in moment.stove.instruments}
    if kinds and INFRARED not in kinds:
        return
    readings = (row for row in moment.rows if row.kind is Kind.READING)
    first = next((row for row in readings if moment.stove.kind_of(row.spot) is SpotKind.TOP), None)
    if cooktop_is_shiny(moment.stove) and moment.within(first, "just_now"):
        yield _About()


def _ash(moment: _Moment) -> Iterator[_About]:
    fed = moment.latest(Kind.LIT, Kind.WOOD)
    if TurnKind.FIRE_OUT in moment.turns or (fed is not None and not moment.within(fed, "coals_last")):
        yield _About()


_RULES: dict[str, Callable[[_Moment], Iterator[_About]]] = {
    "over_fired_flue": _over_fired_flue,
    "over_fired_top": _over_fired_top,
    "wall_urgent": lambda moment: _wall(moment, urgent=True),
    "carbon_monoxide": _carbon_monoxide,
    "back_puff": _back_puff,
    "first_fire_fumes": _first_fire_fumes,
    "oven_steam": _oven_steam,
    "hot_fat": _hot_fat,
    "cold_flue": _cold_flue,
    "bypass_early": _bypass_early,
    "creosote": _creosote,
    "air_open": _air_open,
    "wall": lambda moment: _wall(moment, urgent=False),
    "hot_surface": _hot_surface,
    "shiny_cooktop": _shiny_cooktop,
    "ash": _ash,
}


def _last_readings(moment: _Moment) -> dict[str, tuple[Entry, float]]:
    return {row.spot: (row, heat) for row in moment.rows if (heat := kelvin_or_none(row)) is not None}


def _rises(moment: _Moment) -> Iterator[tuple[str, float]]:
    """Rise above the room [K] of what was lately read beside the stove."""
    readings = _last_readings(moment)
    room = next(moment.of_kind(SpotKind.ROOM), None)
    room_heat = next(
        (heat for spot, (_, heat) in readings.items() if moment.stove.kind_of(spot) is SpotKind.ROOM), None
    )
    ambient = room_heat if room_heat is not None else room.p50 if room is not None else USUAL_ROOM
    for spot, (row, heat) in readings.items():
        if moment.stove.kind_of(spot) is SpotKind.WALL and moment.within(row, "recent_reading"):
            yield spot, heat - ambient


def _label(stove: Stove, name: str) -> str:
    spot = stove.spot(name)
    label = spot.label if spot else name.replace("_", " ")
    return label[:1].upper() + label[1:]


def _limit(key: str) -> float:
    return kelvin(float(table("cautions.toml")["limits"][key]), "F")
