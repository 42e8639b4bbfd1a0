"""What past sessions teach about one stove: its character, its hot side, the record of past projections.

Takes long with many sessions, so it runs off the screen's thread, tells its progress and can be given up.
"""

from collections.abc import Callable
from dataclasses import dataclass

from cookstove_gui.cooking.fires.first_fires import FirstFires, progress
from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.forecast import Character, learn, spot_pattern, track_record
from cookstove_gui.forecast.answers import SpotPattern, TrackRecord
from cookstove_gui.forecast.model.character import CORRECTION_MINUTES
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove

_RECORD_SESSIONS = 12  # the latest sessions that the record of projections looks at

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]


@dataclass(frozen=True, slots=True, kw_only=True)
class StudyInputs:
    """One stove and its past."""

    stove: Stove
    sessions: tuple[Session, ...]  # oldest first
    character: Character | None  # what was learned before from these same sessions, if it was kept
    fingerprint: str  # of the sessions


@dataclass(frozen=True, slots=True, kw_only=True)
class Study:
    """What the past says."""

    stove_name: str
    fingerprint: str
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
    sessions = meant_sessions(inputs.stove, inputs.sessions)
    character = inputs.character or learn(inputs.stove, sessions, progressed, cancelled)
    if cancelled is not None and cancelled():
        return None
    return Study(
        stove_name=inputs.stove.name,
        fingerprint=inputs.fingerprint,
        character=character,
        pattern=spot_pattern(inputs.stove, sessions),
        record=track_record(inputs.stove, sessions[-_RECORD_SESSIONS:]),
        first_fires=progress(inputs.stove, inputs.sessions),
    )
