"""A stove's character from its past sessions, each judged before it is learned from."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from cookstove_gui.forecast.answers import FloatArray, RecordRow
from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.learning.arrival_tail import Misses, arrival_misses, next_missed
from cookstove_gui.forecast.learning.hindsight import Hindcast, corrections_from, hindcasts, hindcasts_at, oven_past
from cookstove_gui.forecast.learning.track_record import settled, windows_at
from cookstove_gui.forecast.model import parameters
from cookstove_gui.forecast.model.character import RISES, Character
from cookstove_gui.forecast.model.ensemble import FIELD, LASTING
from cookstove_gui.forecast.model.habits import Habits
from cookstove_gui.forecast.model.merit import Merit
from cookstove_gui.forecast.model.plain import Rise
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.forecast.tracking.tracker import Tracker, rows_in_force
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import Stove, with_spots_named

# Of what was learned, this much is kept to the next firing, the rest goes back to what any stove is like: stoves and
# cooks change, and what no reading tells of, such as a spot that is never read, must not drift away over the years.
KEPT = 0.97
CLEARLY_WORSE = 1.15  # times the generic loss: a few sessions' losses say no more than that
JUDGED_SESSIONS = 30  # the latest ones, on which the learned and the generic character are compared
RECORD_SESSIONS = 20  # the latest ones, whose arrival windows the track record tells
TRIED_SESSIONS = 8  # the latest ones, in which plain forecasters and arrival windows are tried
LEARNED_SESSIONS = 100  # the latest ones, which a fresh pass begins at: of earlier ones less than a twentieth is kept


@dataclass(frozen=True, slots=True, kw_only=True)
class Looked:
    """One past session, projected as it was seen then, before it was learned from."""

    casts: tuple[Hindcast, ...]  # by what the sessions before had taught
    generic: tuple[Hindcast, ...]  # by what is believed of any stove
    asked: tuple[RecordRow, ...]  # the arrival windows that the cook was shown


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Lessons:
    """What a pass over a stove's past sessions found; a later pass can go on from here."""

    learned: Character  # after the latest session; whether it proved itself is not yet asked
    generic: Character
    looked: tuple[Looked, ...]  # the latest sessions, oldest first
    sessions: int

    @property
    def character(self) -> Character:
        """What is believed of the stove before its next firing."""
        return proven(self.learned, self.generic, self.looked)

    @property
    def record(self) -> tuple[RecordRow, ...]:
        """The arrival windows shown in the latest sessions, and what came true."""
        return tuple(row for one in self.looked[-RECORD_SESSIONS:] for row in one.asked)


def learn(
    stove: Stove,
    sessions: Sequence[Session],
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Character:
    """What past sessions teach about a stove; the arguments are those of `lessons`."""
    return lessons(stove, sessions, progress=progress, cancelled=cancelled).character


def lessons(
    stove: Stove,
    sessions: Sequence[Session],
    bands: Sequence[HeatBand] = (),
    known: Lessons | None = None,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Lessons:
    """One pass over the past: each session is projected with what the ones before it taught, then learned from.

    Parameters
    ----------
    sessions : sequence of Session
        In any order; those without a usable row are passed over.
    bands : sequence of HeatBand
        The heats whose arrival windows go into the track record.
    known : Lessons, optional
        What an earlier pass found in the first of these sessions; only the rest are passed over.
    progress : callable, optional
        Told (done, total) after each session.
    cancelled : callable, optional
        Asked before each session; if it says yes, what was learned so far is returned.

    Notes
    -----
    What was learned must prove itself: its parameters are kept unless they predicted the latest sessions, unseen,
    clearly worse than any stove's would have. Of more than LEARNED_SESSIONS sessions a fresh pass leaves out the
    earliest, which count as firings all the same.
    """
    ordered = in_order(sessions)
    names = tuple(row.spot for session in ordered for row in session.entries if row.kind is Kind.READING and row.spot)
    stove = with_spots_named(stove, names)
    generic = Character.generic(stove)
    if known is None or known.generic.spots != generic.spots:
        faded = max(len(ordered) - LEARNED_SESSIONS, 0)
        known = Lessons(learned=replace(generic, firings=faded), generic=generic, looked=(), sessions=faded)
    found = known
    judged_from = JUDGED_SESSIONS + (RECORD_SESSIONS if bands else TRIED_SESSIONS)  # those shown are judged by earlier
    for place in range(found.sessions, len(ordered)):
        if cancelled is not None and cancelled():
            break
        left = len(ordered) - place
        asked = bands if left <= RECORD_SESSIONS else ()
        found = _one_more(
            stove,
            found,
            ordered[place],
            asked,
            is_looked_at=left <= judged_from,
            is_tried=left <= TRIED_SESSIONS,
        )
        if progress is not None:
            progress(place + 1, len(ordered))
    return found


def _one_more(
    stove: Stove, before: Lessons, session: Session, bands: Sequence[HeatBand], *, is_looked_at: bool, is_tried: bool
) -> Lessons:
    """The lessons with one more session, which is followed once for all of them."""
    looked, merit = before.looked, Merit()
    misses: Misses = ([], [])
    if is_looked_at:
        shown = before.character
        teller = Forecaster(stove, shown, keeps_past=False)
        tracker = teller.tracker if shown.mean is before.learned.mean else _follower(stove, before.learned)
        past = oven_past(stove, session)
        casts: list[Hindcast] = []
        windows: list[RecordRow] = []
        for place in past.places:
            casts.extend(hindcasts_at(tracker, session, past, place))
            windows.extend(windows_at(teller, session, past, place, bands))
        generic = (
            casts
            if before.learned.mean is before.generic.mean
            else hindcasts(_follower(stove, before.generic), session)
        )
        one = Looked(casts=tuple(casts), generic=tuple(generic), asked=settled(windows, teller.tracker, session, past))
        looked = (*looked, one)[-(JUDGED_SESSIONS + RECORD_SESSIONS) :]
        if is_tried:
            merit = teller.merit(session.entries, max(row.at for row in session.entries))
            misses = arrival_misses(teller, session, past)
    else:
        tracker = _follower(stove, before.learned)
    learned = after_session(before.learned, tracker, session, merit)
    learned = replace(learned, arrival_missed=next_missed(learned.arrival_missed, misses))
    return Lessons(learned=learned, generic=before.generic, looked=looked, sessions=before.sessions + 1)


def _follower(stove: Stove, character: Character) -> Tracker:
    return Tracker(stove, character, keeps_past=False)  # nobody looks at the past drawn


def proven(learned: Character, generic: Character, looked: Sequence[Looked]) -> Character:
    """The learned parameters, unless they predicted sessions clearly worse; then generic ones with the rest learned."""
    latest = looked[-JUDGED_SESSIONS:]
    casts = [cast for one in latest for cast in one.casts]
    plain = [cast for one in latest for cast in one.generic]
    if sum(cast.loss for cast in casts) > CLEARLY_WORSE * sum(cast.loss for cast in plain):
        kept = replace(learned, mean=generic.mean, covariance=generic.covariance)
        return replace(kept, corrections=corrections_from(plain))
    return replace(learned, corrections=corrections_from(casts))


def in_order(sessions: Sequence[Session]) -> list[Session]:
    """Sessions with entries, the earliest first."""
    return sorted((session for session in sessions if session.entries), key=_began)


def after_session(character: Character, tracker: Tracker, session: Session, merit: Merit | None = None) -> Character:
    """The character with one more session learned, by a tracker that began with that character.

    `merit` is what the session proved of the plain forecasters, if they were tried in it.
    """
    standing = rows_in_force(session.entries, max(row.at for row in session.entries))
    if not standing:
        return character
    belief = tracker.follow(standing, standing[-1].at)  # not what was taken back after the last of them
    spots = len(belief.stove.spots)
    lasting = belief.ensemble.x[LASTING]
    shares = belief.ensemble.x[FIELD : FIELD + spots]
    generic = Character.generic(belief.stove)
    spread = np.cov(shares) + belief.ensemble.remainder[:spots, :spots]
    mean, covariance = _with_a_usual_thermometer(
        *_partly_forgotten(
            lasting.mean(axis=1), np.cov(lasting), parameters.prior_mean(), parameters.prior_covariance()
        )
    )
    spot_share, spot_covariance = _partly_forgotten(
        shares.mean(axis=1), spread, generic.spot_share, generic.spot_covariance
    )
    return replace(
        character,
        firings=character.firings + 1,
        mean=mean,
        covariance=covariance,
        spots=tuple(spot.name for spot in belief.stove.spots),
        spot_share=spot_share,
        spot_covariance=spot_covariance,
        spot_width=belief.spot_width,
        habits=_habits_after(belief, standing),
        merit=character.merit.after(merit or Merit()),
        rises=(*character.rises, _rise(belief, session))[-RISES:],
    )


def _rise(belief: Belief, session: Session) -> Rise:
    """The oven over a session, slips left out."""
    past = oven_past(belief.stove, session)
    slips = {doubted.number for doubted in belief.doubted}
    sound = np.array([row.number not in slips for row in past.rows], dtype=bool)
    began = belief.now.timestamp() / 60.0 - belief.minutes_since_lit
    return Rise(past.minutes[sound] - began, past.kelvin[sound])


def _partly_forgotten(
    mean: FloatArray, covariance: FloatArray, prior_mean: FloatArray, prior_covariance: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """What is left of a normal belief by the next firing: a stationary first-order process about the prior."""
    return (
        prior_mean + KEPT * (mean - prior_mean),
        KEPT**2 * covariance + (1.0 - KEPT**2) * prior_covariance,
    )


def _with_a_usual_thermometer(mean: FloatArray, covariance: FloatArray) -> tuple[FloatArray, FloatArray]:
    """What was learned, given that the oven's thermometer lags as usual; of its lag no more is believed than at first.

    Readings alone cannot tell a slow thermometer from a slow oven, so each firing would drift further into the one that
    happens to suit it, and the oven would be believed hotter than it is whenever it warms.
    """
    lag = parameters.NAMES.index("dial_lag")
    slope = covariance[:, lag] / covariance[lag, lag]
    usual = parameters.prior_mean()[lag]
    given = mean + slope * (usual - mean[lag])
    rest = covariance - np.outer(slope, slope) * covariance[lag, lag]
    rest[lag, lag] = parameters.prior_covariance()[lag, lag]
    return given, rest


def _habits_after(belief: Belief, standing: tuple[Entry, ...]) -> Habits:
    """Habits with this firing's end: half a usual interval after its last load."""
    loads = [row.at for row in standing if row.kind is Kind.WOOD]
    if not loads:
        return belief.habits
    tended = (max(loads) - standing[0].at).total_seconds() / 60.0 + 0.5 * math.exp(belief.habits.interval_log)
    return belief.habits.after_firing(len(loads), tended)


def _began(session: Session) -> float:
    return min(entry.at.timestamp() for entry in session.entries)
