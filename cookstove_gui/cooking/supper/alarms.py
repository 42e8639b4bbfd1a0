"""Alarms: which of them ring at an instant, given what the cook answered, put off and silenced.

Everything hangs on instants that are kept, never on counting, so that it is right after sleep and after a restart. A
clock that was set back is taken as it is: an answer or a snooze from “the future” holds no alarm back.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta
from enum import StrEnum


class AlarmKind(StrEnum):
    """What an alarm calls for, the most urgent first."""

    TAKE_OUT = "take out"
    TURN = "turn"
    PUT_IN = "put in"
    LOOK_AT = "look at"
    LEAVING_BAND = "leaving the heat"
    RELOAD = "reload"
    BAND_REACHED = "heat reached"
    STEP = "step"
    NEXT_READING = "next reading"


URGENCY = {kind: place for place, kind in enumerate(AlarmKind)}

# Minutes after which an alarm that nobody answered says nothing any more. All of these are judgement. Work for the
# hands is taken to be under way by then, and where it is not, the plan puts it to another time, which rings again; so
# late, a turn makes nothing even any more.
STALE_MIN = dict.fromkeys(AlarmKind, 60.0) | {
    AlarmKind.TAKE_OUT: 180.0,
    AlarmKind.STEP: 10.0,
    AlarmKind.TURN: 15.0,
    AlarmKind.LOOK_AT: 30.0,
    AlarmKind.LEAVING_BAND: 30.0,
    AlarmKind.BAND_REACHED: 30.0,
}
# An answered alarm of these kinds rings again once it is due so many minutes after the answer; others never do.
AGAIN_MIN = {
    AlarmKind.TAKE_OUT: 10.0,
    AlarmKind.LEAVING_BAND: 45.0,
    AlarmKind.RELOAD: 10.0,
    AlarmKind.BAND_REACHED: 45.0,
    AlarmKind.NEXT_READING: 5.0,
}
SNOOZE_MIN = 5.0
_AHEAD = timedelta(hours=12)  # so long before its time the sound of a planned alarm may be put off for good; judgement
_KEPT_FOR = timedelta(days=2)  # answers older than this are of another meal
_MOST_KEPT = 300
_REPEATS_S = (60.0, 60.0, 60.0, 60.0)  # seconds between the first sounds of an alarm, then
_THEN_S = 300.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Alarm:
    """One moment that calls for the cook. `key` stays the same while it means the same thing."""

    key: str
    kind: AlarmKind
    at: datetime
    about: str = ""  # a dish, a bake, a spot's name, a heat
    what: str = ""  # of a planned step, its own words
    spot: str = ""  # on the cooktop, of a planned step; empty for the oven
    splits: int = 0  # of a planned load of wood
    opening: float | None = None  # of the air, of a planned step that sets it
    heat: float | None = None  # K, of the oven from which a dish may go in
    is_planned: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What the cook did about an alarm: it is done (`until` none), or put off until an instant; or its sound is off."""

    key: str
    at: datetime
    until: datetime | None = None
    silent: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class QuietHours:
    """From one clock to another, over midnight where `begin` is later: no bell and no voice, the line stays."""

    begin: time
    end: time

    def hold(self, local: time) -> bool:
        """Whether they hold at a local clock; the end itself is loud again."""
        if self.begin <= self.end:
            return self.begin <= local < self.end
        return local >= self.begin or local < self.end


@dataclass(frozen=True, slots=True, kw_only=True)
class Ringing:
    """An alarm that rings now; one that was silenced is only seen."""

    alarm: Alarm
    is_silent: bool


def ringing(alarms: Iterable[Alarm], answers: Sequence[Answer], now: datetime) -> tuple[Ringing, ...]:
    """The alarms that call for the cook at an instant, the most urgent first."""
    found = [one for one in alarms if _calls(one, answers, now)]
    found.sort(key=lambda one: (URGENCY[one.kind], one.at, one.key))
    return tuple(Ringing(alarm=one, is_silent=_is_silenced(one, answers, now)) for one in found)


def _calls(alarm: Alarm, answers: Sequence[Answer], now: datetime) -> bool:
    own = [answer for answer in answers if answer.key == alarm.key]
    since = max([alarm.at, *(one.until for one in own if one.until is not None and one.at >= alarm.at)])
    if not alarm.at <= now <= since + timedelta(minutes=STALE_MIN[alarm.kind]):
        return False
    return not any(_holds_back(alarm, answer, now) for answer in own)


def _holds_back(alarm: Alarm, answer: Answer, now: datetime) -> bool:
    if answer.silent:
        return False
    if answer.until is not None:
        return now < answer.until and answer.at <= now
    again = AGAIN_MIN.get(alarm.kind)
    if again is None:
        return True
    return answer.at <= now and alarm.at <= answer.at + timedelta(minutes=again)


def _is_silenced(alarm: Alarm, answers: Sequence[Answer], now: datetime) -> bool:
    """Whether its sound is off: since it rang, or in good time before where it is of a plan."""
    ahead = _AHEAD if alarm.is_planned else timedelta()
    return any(one.silent and one.key == alarm.key and alarm.at - ahead <= one.at <= now for one in answers)


def done(answers: Sequence[Answer], key: str, now: datetime) -> tuple[Answer, ...]:
    """The answers once this one is done."""
    return _with(answers, Answer(key=key, at=now), now)


def put_off(answers: Sequence[Answer], key: str, now: datetime, minutes: float = SNOOZE_MIN) -> tuple[Answer, ...]:
    """The answers once this one is put off."""
    return _with(answers, Answer(key=key, at=now, until=now + timedelta(minutes=minutes)), now)


def silenced(answers: Sequence[Answer], keys: Iterable[str], now: datetime) -> tuple[Answer, ...]:
    """The answers once the sound of these is off; they are still seen."""
    found = tuple(answers)
    for key in keys:
        found = _with(found, Answer(key=key, at=now, silent=True), now)
    return found


def heard_again(answers: Sequence[Answer], key: str) -> tuple[Answer, ...]:
    """The answers once the sound of this one is on again."""
    return tuple(one for one in answers if not (one.silent and one.key == key))


def is_silent(answers: Iterable[Answer], key: str) -> bool:
    """Whether the sound of an alarm was put off."""
    return any(one.silent and one.key == key for one in answers)


def _with(answers: Sequence[Answer], new: Answer, now: datetime) -> tuple[Answer, ...]:
    kept = [one for one in answers if one.key != new.key and abs(now - one.at) <= _KEPT_FOR]
    return (*kept[-_MOST_KEPT + 1 :], new)


def next_at(alarms: Iterable[Alarm], answers: Sequence[Answer], now: datetime) -> datetime | None:
    """The next instant at which another alarm may begin to call; none where nothing is to come."""
    coming = [one.at for one in alarms if one.at > now]
    coming += [one.until for one in answers if one.until is not None and one.until > now]
    return min(coming, default=None)


def pause_after(sounds: int) -> float:
    """Seconds from one sound of an alarm to the next, after so many."""
    return _REPEATS_S[sounds - 1] if 1 <= sounds <= len(_REPEATS_S) else _THEN_S if sounds else 0.0


def without_doubles(alarms: Iterable[Alarm], near: timedelta = timedelta(minutes=10)) -> tuple[Alarm, ...]:
    """The alarms in order of time; what a plan and the fire itself call for at nearly the same time is one alarm.

    Of the two the planned one stays, at the earlier of the two times.
    """
    kept: list[Alarm] = []
    for one in sorted(alarms, key=lambda alarm: (not alarm.is_planned, alarm.at)):
        same = next(
            (place for place, other in enumerate(kept) if _same(other, one) and abs(other.at - one.at) <= near), None
        )
        if same is None:
            kept.append(one)
        elif one.at < kept[same].at:
            kept[same] = replace(kept[same], at=one.at)
    return tuple(sorted(kept, key=lambda alarm: (alarm.at, URGENCY[alarm.kind], alarm.key)))


def _same(planned: Alarm, other: Alarm) -> bool:
    if planned.kind is not other.kind or planned.is_planned is other.is_planned:
        return False
    return planned.kind is AlarmKind.RELOAD or planned.about.casefold() == other.about.casefold()
