"""What past sessions teach about one stove: its character, its hot side, the record of past projections.

Takes long with many sessions, so it runs off the screen's thread, tells its progress and can be given up.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from cookstove_gui.cooking.fires.first_fires import FirstFires, progress
from cookstove_gui.cooking.fit.bands import band_tables
from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.forecast.answers import SpotPattern, TrackRecord
from cookstove_gui.forecast.learning.hot_side import spot_pattern
from cookstove_gui.forecast.learning.learn import Lessons, lessons
from cookstove_gui.forecast.learning.track_record import track_record
from cookstove_gui.forecast.model.character import CORRECTION_MINUTES, Character
from cookstove_gui.stove.entries import HeatBand, Session
from cookstove_gui.stove.stove import Stove

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]


@dataclass(frozen=True, slots=True, kw_only=True)
class StudyInputs:
    """One stove and its past."""

    stove: Stove
    sessions: tuple[Session, ...]  # oldest first
    fingerprint: str  # of the stove and its sessions
    known: Lessons | None = None  # what was found before in the first of these sessions


@dataclass(frozen=True, slots=True, kw_only=True)
class Study:
    """What the past says."""

    stove_name: str
    fingerprint: str
    lessons: Lessons
    character: Character
    pattern: tuple[SpotPattern, ...]
    record: TrackRecord
    first_fires: FirstFires

    @property
    def width_at_an_hour(self) -> float:
        """By what hindsight widens (above 1) or narrows the projection an hour ahead."""
        return self.character.corrections.width[CORRECTION_MINUTES.index(60.0)]


def study(inputs: StudyInputs, progressed: Progress | None = None, cancelled: Cancelled | None = None) -> Study | None:
    """Study a stove's past; None when it was given up."""
    found = past_lessons(inputs.stove, inputs.sessions, inputs.known, progressed, cancelled)
    if cancelled is not None and cancelled():
        return None
    return Study(
        stove_name=inputs.stove.name,
        fingerprint=inputs.fingerprint,
        lessons=found,
        character=found.character,
        pattern=spot_pattern(inputs.stove, meant_sessions(inputs.stove, inputs.sessions)),
        record=track_record(inputs.stove.name, found.sessions, found.record),
        first_fires=progress(inputs.stove, inputs.sessions),
    )


def past_lessons(
    stove: Stove,
    sessions: Sequence[Session],
    known: Lessons | None = None,
    progressed: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Lessons:
    """One pass over a stove's raw past sessions, for window and commands alike: character and track record."""
    return lessons(stove, meant_sessions(stove, sessions), record_bands(), known, progressed, cancelled)


def record_bands() -> tuple[HeatBand, ...]:
    """The heats that the track record asks about: those with a name in the first table, from slow to very hot."""
    return band_tables()[0].bands
