"""What the plot says, ready to be painted: heats in the unit shown, moments as places on the time axis [min]."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class BandWords:
    """The heat wanted, in the unit shown."""

    low: float
    high: float
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """A heat that is not to be passed, or one that is to be reached once, in the unit shown."""

    value: float
    words: str
    is_most: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """Words at one edge of the band, with a bar from earliest to latest and a ring at the likely place [min]."""

    edge: float
    words: str
    more: str = ""
    window: tuple[float, float, float] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotNow:
    """A spot beside another: its mark, its line and its heat now."""

    name: str
    number: str
    is_round: bool  # its mark; else square
    dashes: tuple[float, float]  # of its line, drawn and left out [px of the design]


@dataclass(frozen=True, slots=True, kw_only=True)
class Pointed:
    """A place on the axis that is pointed at, the heat there, and what is said of it."""

    place: float
    value: float
    words: str
