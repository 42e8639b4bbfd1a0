"""What the skill study asks: at every oven reading after the second, knowing only the rows up to then."""

import hashlib
import pickle
import tempfile
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, Protocol

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.stove.entries import Entry, HeatBand, Kind, reading_kelvin
from cookstove_gui.stove.stove import Stove

FloatArray = NDArray[np.float64]
AHEAD = (15, 30, 60)  # minutes
HORIZON = 180  # minutes; what happens later counts as never
LEADS = np.arange(0, HORIZON + 1, 5)


class Firing(Protocol):
    """What the study needs of an invented session, of whichever world."""

    @property
    def start(self) -> datetime: ...
    @property
    def entries(self) -> tuple[Entry, ...]: ...
    @property
    def times(self) -> FloatArray: ...
    @property
    def spots(self) -> tuple[str, ...]: ...
    @property
    def truth(self) -> FloatArray: ...
    @property
    def family(self) -> str: ...
    @property
    def stove(self) -> Stove: ...
    @property
    def stove_seed(self) -> int: ...
    @property
    def band(self) -> tuple[float, float]: ...
    def without_moments(self) -> "Firing":
        """The same, without what the ceiling needs."""

    def ceiling(self, minutes: Sequence[float], futures: int) -> FloatArray: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One moment at which the cook looks at the outlook; temperatures in kelvin, minutes from lighting."""

    session: Firing
    minute: float
    now: datetime
    readings: FloatArray  # (n, 2) minute and written oven reading, up to now
    band: HeatBand
    ahead: FloatArray  # (3,) true oven at AHEAD
    path: FloatArray  # (HORIZON + 1,) true oven each minute from now
    arrival: float | None  # minutes until the oven is first in the band; HORIZON if never; none if it is in now
    reached_before: bool  # whether the oven has been in the band by now

    @property
    def in_band_30(self) -> bool:
        """Whether the oven is truly in the band in half an hour."""
        return self.band.holds(float(self.ahead[1]))

    @property
    def entries(self) -> tuple[Entry, ...]:
        """The rows that the cook has written by now."""
        return tuple(entry for entry in self.session.entries if entry.at <= self.now)


def questions_of(session: Firing) -> list[Question]:
    """All questions of one session."""
    oven = [
        (entry, (entry.at - session.start).total_seconds() / 60.0)
        for entry in session.entries
        if entry.kind is Kind.READING and entry.spot == "oven_centre"
    ]
    low, high = session.band
    band = HeatBand(name="study", low=low, high=high)
    times, truth = session.times, session.truth[:, session.spots.index("oven_centre")]
    values = np.array([[minute, reading_kelvin(entry)] for entry, minute in oven])
    asked: list[Question] = []
    for index in range(2, len(oven)):
        minute = oven[index][1]
        path = np.interp(minute + np.arange(HORIZON + 1), times, truth)
        if minute + HORIZON > times[-1]:
            raise ValueError(f"the truth of a session ends {times[-1]:.0f} min after lighting, too early to judge by")
        inside = (path >= low) & (path <= high)
        past = truth[times <= minute]
        asked.append(
            Question(
                session=session,
                minute=minute,
                now=oven[index][0].at + timedelta(0),
                readings=values[: index + 1],
                band=band,
                ahead=path[list(AHEAD)],
                path=path,
                arrival=None if inside[0] else float(np.argmax(inside)) if inside.any() else float(HORIZON),
                reached_before=bool(((past >= low) & (past <= high)).any()),
            )
        )
    return asked


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What a forecaster says to one question."""

    quantiles: FloatArray  # (3, 3) p10, p50, p90 [K] at AHEAD
    chance_30: float  # of being in the band in 30 min
    enters: FloatArray  # (3,) p10, p50, p90 [min]; HORIZON stands for later or never
    now: FloatArray | None = None  # (3,) p10, p50, p90 [K]; none where nothing is said of it
    instants: Mapping[str, float] = field(default_factory=dict)  # other arrivals to shape loaves by [min]; inf: never


def answer_from_paths(paths: FloatArray, band: HeatBand, minutes: FloatArray) -> Answer:
    """Answer of equally likely futures (futures, times) [K] at `minutes` (times,) from now."""
    columns = [int(np.argmin(np.abs(minutes - ahead))) for ahead in AHEAD]
    inside = (paths >= band.low) & (paths <= band.high)
    # a path that jumps over the band between two times has been in it
    crossed = (paths[:, :-1] < band.low) & (paths[:, 1:] > band.high)
    crossed |= (paths[:, :-1] > band.high) & (paths[:, 1:] < band.low)
    inside[:, 1:] |= crossed
    enters = np.where(inside.any(1), minutes[np.argmax(inside, axis=1)], np.inf)
    return Answer(
        quantiles=np.quantile(paths[:, columns], [0.1, 0.5, 0.9], axis=0, method="hazen").T,
        chance_30=float(((paths[:, columns[1]] >= band.low) & (paths[:, columns[1]] <= band.high)).mean()),
        enters=np.minimum(np.quantile(enters, [0.1, 0.5, 0.9], method="inverted_cdf"), HORIZON),
    )


def cached(name: str, key: Sequence[object], make: Callable[[], Any]) -> Any:
    """What `make` gives, kept between runs until the sources that it depends on change."""
    here = Path(__file__).resolve().parent
    names = ("skill_questions", "skill_baselines", "skill_worlds")
    sources = [here / f"{name}.py" for name in names]
    sources += [
        path for path in sorted((here.parent / "world").glob("*.py")) if path.name[:5] not in ("test_", "make_")
    ]
    digest = hashlib.sha256(repr(list(key)).encode())
    for source in sources:
        digest.update(source.read_bytes())
    place = Path(tempfile.gettempdir()) / "cookstove-skill" / f"{name}-{digest.hexdigest()[:20]}.pickle"
    if place.exists():
        return pickle.loads(place.read_bytes())
    made = make()
    place.parent.mkdir(parents=True, exist_ok=True)
    place.write_bytes(pickle.dumps(made))
    return made
