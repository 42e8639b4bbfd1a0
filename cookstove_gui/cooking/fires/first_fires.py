"""The first fires of a new stove: which of them the logs show done, which is next, and what to watch.

Common practice, no source; the stove's manual goes first. A stage counts only by what the log shows, never on a guess;
a cook who knows better waives the rest.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum, auto
from functools import cache

from cookstove_gui.cooking.fires.logged_fires import Fire, fires
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import kelvin


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """One of the first fires, and what its log must show."""

    key: str
    title: str
    line: str  # the fire in half a sentence
    doing: str
    watch: str
    minutes: float
    top_reaches: float  # K
    top_at_most: float | None  # K
    loads: int
    air_open_then_shut: bool


class Lack(Enum):
    """Why a logged fire does not count as a stage."""

    TOO_SHORT = auto()  # min
    NOT_READ = auto()
    TOO_COOL = auto()  # K
    TOO_HOT = auto()  # K
    TOO_LITTLE_WOOD = auto()  # loads
    AIR_NOT_SHUT = auto()


@dataclass(frozen=True, slots=True)
class Shortfall:
    """What a fire lacks for its stage: what the log shows and what it takes, in the unit of the lack."""

    lack: Lack
    shown: float = 0.0
    wanted: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class StageProgress:
    """A stage, and whether a logged fire has done it."""

    stage: Stage
    done: bool
    session: int | None  # the session that did it, or the latest that tried
    missing: tuple[Shortfall, ...]  # why the latest try does not count; empty if done or not tried yet


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstFires:
    """How far a stove has got with its first fires."""

    needed: bool  # a stove that was fired before needs none
    waived: bool
    stages: tuple[StageProgress, ...]
    just_done: StageProgress | None = None  # by the latest fire of the session at hand

    @property
    def done(self) -> bool:
        """Whether nothing is left to do."""
        return not self.needed or all(stage.done for stage in self.stages)

    @property
    def next(self) -> StageProgress | None:
        """The next stage; None when done or waived."""
        if self.done or self.waived:
            return None
        return next(stage for stage in self.stages if not stage.done)

    @property
    def is_to_go_cold(self) -> bool:
        """Whether the latest fire of the session at hand has done its stage, and the next waits for a cold stove."""
        return self.next is not None and self.just_done is not None


@cache
def stages() -> tuple[Stage, ...]:
    """The stages of `resources/first_fires.toml`, in order."""
    return tuple(
        Stage(
            key=row["key"],
            title=row["title"],
            line=row["line"],
            doing=row["doing"],
            watch=row["watch"],
            minutes=float(row["minutes"]),
            top_reaches=kelvin(float(row["top_reaches"]), "F"),
            top_at_most=kelvin(float(row["top_at_most"]), "F") if "top_at_most" in row else None,
            loads=row["loads"],
            air_open_then_shut=row["air_open_then_shut"],
        )
        for row in table("first_fires.toml")["stage"]
    )


def cold_below() -> float:
    """Heat of the cooktop [K] below which a stove has gone cold between its first fires."""
    return kelvin(float(table("first_fires.toml")["cold_below"]), "F")


@dataclass(frozen=True, slots=True, kw_only=True)
class Try:
    """A logged fire held against the stage that was next when it was lit."""

    place: int  # of the stage
    fire: Fire
    missing: tuple[Shortfall, ...]  # empty if it counts


def tries(stove: Stove, sessions: Iterable[Session]) -> tuple[Try, ...]:
    """Every fire until the last stage is done, oldest first; in order, one fire to a stage."""
    found: list[Try] = []
    place = 0
    for fire in fires(stove, sessions):
        if place == len(stages()):
            break
        missing = shortfalls(stages()[place], fire)
        found.append(Try(place=place, fire=fire, missing=missing))
        place += not missing
    return tuple(found)


def progress(stove: Stove, sessions: Iterable[Session]) -> FirstFires:
    """Which of the first fires a stove's sessions have done."""
    tried = tries(stove, sessions) if stove.is_new else ()  # an old stove has many a fire
    latest = {one.place: one for one in tried}
    found = tuple(
        StageProgress(
            stage=stage,
            done=place in latest and not latest[place].missing,
            session=latest[place].fire.session if place in latest else None,
            missing=latest[place].missing if place in latest else (),
        )
        for place, stage in enumerate(stages())
    )
    counts_now = bool(tried) and tried[-1].fire.session == 0 and not tried[-1].missing
    return FirstFires(
        needed=stove.is_new,
        waived=stove.first_fires_waived,
        stages=found,
        just_done=found[tried[-1].place] if counts_now else None,
    )


def shortfalls(stage: Stage, fire: Fire) -> tuple[Shortfall, ...]:
    """Why a fire does not count as a stage; none if it does."""
    found = []
    if fire.minutes < stage.minutes:
        found.append(Shortfall(Lack.TOO_SHORT, fire.minutes, stage.minutes))
    if fire.hottest is None:
        found.append(Shortfall(Lack.NOT_READ))
    elif fire.hottest < stage.top_reaches:
        found.append(Shortfall(Lack.TOO_COOL, fire.hottest, stage.top_reaches))
    elif stage.top_at_most is not None and fire.hottest > stage.top_at_most:
        found.append(Shortfall(Lack.TOO_HOT, fire.hottest, stage.top_at_most))
    if fire.loads < stage.loads:
        found.append(Shortfall(Lack.TOO_LITTLE_WOOD, fire.loads, stage.loads))
    if stage.air_open_then_shut and not fire.air_open_then_shut:
        found.append(Shortfall(Lack.AIR_NOT_SHUT))
    return tuple(found)
