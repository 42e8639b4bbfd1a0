"""A wood cookstove as its owner describes it: where the firebox lies and which spots are read."""

import math
from dataclasses import dataclass, field, replace
from enum import StrEnum

from cookstove_gui.units import ZERO_CELSIUS, kelvin

OVEN_CENTRE = "oven_centre"  # where an oven is read if only one of its spots is
MOST_SPOTS = 120  # of one stove; the walk round a large one has two dozen
USUAL_ROOM = kelvin(68.0, "F")  # K, a kitchen whose room was not read
USUAL_SIDES = "enamelled or painted metal"
INFRARED = "infrared"  # kind of thermometer that is pointed, not held
_UNCHECKED = {  # doubt of offset [K] and gain of a thermometer never checked, one standard deviation
    "oven thermometer": (2.5, 0.025),  # common practice, no source: 5.7 K at 400 °F
    INFRARED: (2.0, 0.011),  # common practice: makers state 2 K or 1.5 to 2 % of the reading as the limit
    "probe": (
        1.5,
        0.008,
    ),  # IEC 60584-1, class 2: a thermocouple's limit is 2.5 K or 0.75 %
    "flue thermometer": (5.0, 0.06),  # common practice, no source
}
THERMOMETERS = tuple(_UNCHECKED)

# The least and the most that a stove may be described by
COOKTOP_LENGTHS = (0.1, 5.0)  # m
ALTITUDES = (-500.0, 6000.0)  # m above the sea
COOKTOP_PLATES = (1, 4)  # rows or columns
PLATE_LENGTHS = (0.03, 2.0)  # m
CHIMNEY_HEIGHTS = (1.0, 30.0)  # m
FLUE_WIDTHS = (0.08, 0.40)  # m, inside


class Firebox(StrEnum):
    """Where the firebox lies, seen from where the cook stands."""

    LEFT = "left"
    RIGHT = "right"
    ABOVE = "above"  # above the oven
    BELOW = "below"  # below it


class FluePlace(StrEnum):
    """Where the pipe leaves the stove, seen from where the cook stands."""

    UNSAID = "not said"  # drawn away from the firebox
    LEFT = "left"
    MIDDLE = "middle"
    RIGHT = "right"


class TankPlace(StrEnum):
    """Where a tank for hot water hangs on the stove."""

    NONE = "none"
    LEFT = "left"
    RIGHT = "right"


class SpotKind(StrEnum):
    """What part of the stove a spot belongs to."""

    OVEN = "oven"
    TOP = "top"
    SIDE = "side"
    GLASS = "glass"
    FLUE = "flue"
    ROOM = "room"
    WALL = "wall"  # a wall, floor, ceiling or shelf near the stove, not the stove itself


class FlueReading(StrEnum):
    """What a reading of the flue is of; the limits of one kind say nothing about another."""

    UNSAID = "not said"
    SINGLE = "surface of single-wall pipe"
    DOUBLE = "surface of double-wall pipe"
    GAS = "probe in the gas"


# Beginnings of names of what is read near a stove
BESIDE = ("wall", "floor", "ceiling", "shelf", "mantel", "cupboard", "hearth")


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A place that is read.

    `x` runs from the stove's left (0) to its right (1), `y` from its front (0) to its back (1): on the cooktop for
    top spots, in the oven for oven spots.
    """

    name: str
    label: str
    kind: SpotKind
    x: float = 0.5
    y: float = 0.5
    width: float | None = None  # m, of a plate of the cooktop; none: as wide as its fellows
    depth: float | None = None  # m
    surface: str = ""  # a row of resources/surfaces.toml; empty: what such a part usually shows
    instrument: str = ""  # name of the thermometer that reads it; empty: the first of the kind that usually does


@dataclass(frozen=True, slots=True, kw_only=True)
class Instrument:
    """A thermometer and the straight line that its checks have shown: at a true heat T it shows
    T + offset + gain (T - 0 °C). Doubts are standard deviations.
    """

    name: str
    kind: str  # "infrared" | "oven thermometer" | "probe" | "flue thermometer"
    offset_doubt: float  # K
    gain_doubt: float  # K per K
    emissivity: float = 0.95  # its setting; infrared only
    offset: float = 0.0  # K, what it reads too high at the ice point
    gain: float = 0.0  # K per K, what it reads too high in addition for each kelvin above that
    correlation: float = 0.0  # of the errors of offset and gain, -1 to 1
    checked_on: str = ""  # ISO date of the latest check

    def error(self, true: float) -> float:
        """What it reads too high [K] at a true heat [K]."""
        return self.offset + self.gain * (true - ZERO_CELSIUS)

    def doubt(self, true: float) -> float:
        """Standard deviation [K] of that error; it grows away from the heats that it was checked at."""
        above = self.gain_doubt * (true - ZERO_CELSIUS)
        variance = self.offset_doubt**2 + above**2 + 2.0 * self.correlation * self.offset_doubt * above
        return math.sqrt(max(variance, 0.0))

    def true_heat(self, shown: float) -> float:
        """The heat [K] at which it shows this [K]."""
        return ZERO_CELSIUS + (shown - ZERO_CELSIUS - self.offset) / (1.0 + self.gain)


def unchecked(name: str, kind: str) -> Instrument:
    """A thermometer of some kind as it is before any check."""
    offset_doubt, gain_doubt = _UNCHECKED.get(kind, _UNCHECKED[INFRARED])
    return Instrument(name=name, kind=kind, offset_doubt=offset_doubt, gain_doubt=gain_doubt)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chimney:
    """The chimney a stove is joined to."""

    height: float = 5.0  # m, from the stove's outlet to the top
    diameter: float = 0.15  # m, inside
    loss: float = 4.0  # W/(m2 K): 2 lined and insulated, 4 masonry, 8 single pipe; common practice, no source


def default_spots() -> tuple[Spot, ...]:
    """The spots a stove has when its owner names no others, in the order of a walk round the stove."""

    def top(row: str, y: float) -> tuple[Spot, ...]:
        return tuple(
            Spot(name=f"top_{row}_{column}", label=f"top {row} {column}", kind=SpotKind.TOP, x=x, y=y)
            for column, x in (("left", 1 / 6), ("middle", 1 / 2), ("right", 5 / 6))
        )

    return (
        Spot(name=OVEN_CENTRE, label="oven centre", kind=SpotKind.OVEN),
        *top("front", 0.25),
        *reversed(top("back", 0.75)),
        Spot(name="oven_left", label="oven left", kind=SpotKind.OVEN, x=0.1),
        Spot(name="oven_right", label="oven right", kind=SpotKind.OVEN, x=0.9),
        Spot(name="oven_rear", label="oven rear", kind=SpotKind.OVEN, y=0.9),
        Spot(name="oven_floor", label="oven floor", kind=SpotKind.OVEN, y=0.3),
        Spot(name="side_left", label="left side", kind=SpotKind.SIDE, x=0.0),
        Spot(name="side_right", label="right side", kind=SpotKind.SIDE, x=1.0),
        Spot(name="door_glass", label="door glass", kind=SpotKind.GLASS, y=0.0),
        Spot(name="flue", label="flue pipe", kind=SpotKind.FLUE, y=1.0),
        Spot(name="room", label="room", kind=SpotKind.ROOM),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Stove:
    """One stove; lengths in metres."""

    name: str
    firebox: Firebox = Firebox.LEFT
    cooktop_width: float = 0.90  # m
    cooktop_depth: float = 0.60  # m
    cooktop_surface: str = "oxidised cast iron"  # a row of resources/surfaces.toml
    spots: tuple[Spot, ...] = ()  # in the order of the walk
    left_out: tuple[str, ...] = ()  # names of spots that the walk passes by
    instruments: tuple[Instrument, ...] = ()
    is_new: bool = False  # never fired before it came here: first fires come before food
    first_fires_waived: bool = False
    flue_reading: FlueReading = FlueReading.UNSAID
    flue_place: FluePlace = FluePlace.UNSAID
    water_tank: TankPlace = TankPlace.NONE
    has_warming_closet: bool = False  # above the cooktop at the back
    has_lids: bool = True  # in the cooktop's plates
    cooktop_rows: int = 0  # of plates, whether read or not; 0: as the spots lie
    cooktop_columns: int = 0
    has_water_back: bool = False  # water is heated in or behind the firebox
    altitude: float = 0.0  # m above the sea
    chimney: Chimney | None = None  # none while its owner has not described it
    sides: str = USUAL_SIDES  # a material of resources/touch.toml
    note: str = ""
    _kinds: dict[str, SpotKind] = field(init=False, repr=False, compare=False)  # asked for many times a row

    def __post_init__(self) -> None:
        object.__setattr__(self, "_kinds", {spot.name: spot.kind for spot in reversed(self.spots)})

    def spot(self, name: str) -> Spot | None:
        """The spot of that name, or none."""
        return next((spot for spot in self.spots if spot.name == name), None)

    def instrument_named(self, name: str) -> Instrument | None:
        """The thermometer of that name, or none."""
        return next((one for one in self.instruments if one.name == name), None)

    def kind_of(self, name: str) -> SpotKind:
        """The kind of the spot of that name; of one the stove does not know, what its name says."""
        kind = self._kinds.get(name)
        return spot_kind_from_name(name) if kind is None else kind

    @property
    def oven_spot(self) -> str:
        """Name of the spot that stands for the whole oven: its centre, or the first described if it has none."""
        names = [spot.name for spot in self.spots_of(SpotKind.OVEN)]
        return OVEN_CENTRE if OVEN_CENTRE in names or not names else names[0]

    def spots_of(self, kind: SpotKind) -> tuple[Spot, ...]:
        """All spots of one kind, in walking order."""
        return tuple(spot for spot in self.spots if spot.kind is kind)


def stove_with_default_spots(name: str, firebox: Firebox = Firebox.LEFT) -> Stove:
    """A stove described by no more than its name and its firebox."""
    return Stove(name=name, firebox=firebox, spots=default_spots())


def spot_kind_from_name(name: str) -> SpotKind:
    """The kind that a spot's name speaks of; a name that says nothing is a place on the cooktop."""
    for prefix, kind in (
        ("oven", SpotKind.OVEN),
        ("side", SpotKind.SIDE),
        ("door", SpotKind.GLASS),
        ("flue", SpotKind.FLUE),
        ("room", SpotKind.ROOM),
        *((word, SpotKind.WALL) for word in BESIDE),
    ):
        if name.startswith(prefix):
            return kind
    return SpotKind.TOP


def with_spots_named(stove: Stove, names: tuple[str, ...]) -> Stove:
    """The stove with a spot added for each unknown name, up to as many as any stove has."""
    known = {spot.name for spot in stove.spots}
    added = tuple(
        Spot(name=name, label=name.replace("_", " "), kind=spot_kind_from_name(name))
        for name in dict.fromkeys(names)
        if name and name not in known
    )
    return replace(stove, spots=(stove.spots + added)[: max(MOST_SPOTS, len(stove.spots))]) if added else stove
