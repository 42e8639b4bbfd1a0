"""What the cook chose and answered about alarms, kept in the logbook's settings."""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta, timezone

from cookstove_gui.cooking.supper.alarms import AlarmKind, Answer, QuietHours, heard_again, is_silent, silenced
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.heading import here
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import parse_iso_clock

_ANSWERS, _BELL, _VOICE, _QUIET = "alarm_answers", "alarm_bell", "alarm_voice", "alarm_quiet"
_LEFT_OUT = "alarm_left_out"
_OFF = "off"


@dataclass(frozen=True, slots=True, kw_only=True)
class AlarmSettings:
    """How alarms are heard."""

    bell: bool = True
    voice: bool = True
    quiet: QuietHours | None = None
    left_out: frozenset[AlarmKind] = frozenset()  # kinds that call for nobody


def alarm_settings(desk: Desk) -> AlarmSettings:
    """As the logbook has them; a text that cannot be read counts as no quiet hours."""
    try:
        quiet = quiet_from_text(desk.setting(_QUIET))
    except InputProblem:
        quiet = None
    return AlarmSettings(
        bell=desk.setting(_BELL) != _OFF, voice=desk.setting(_VOICE) != _OFF, quiet=quiet, left_out=_left_out(desk)
    )


def is_quiet(desk: Desk, now: datetime) -> bool:
    """Whether the quiet hours hold, by the clock the cook reads."""
    quiet = alarm_settings(desk).quiet
    return quiet is not None and quiet.hold(now.astimezone(timezone(timedelta(minutes=here(desk)))).time())


def _left_out(desk: Desk) -> frozenset[AlarmKind]:
    named = set(desk.setting(_LEFT_OUT).split(","))
    return frozenset(kind for kind in AlarmKind if kind in named)


def choose_kind(desk: Desk, kind: AlarmKind, wanted: bool) -> None:
    """Whether alarms of a kind call for the cook at all."""
    left_out = _left_out(desk) - {kind} if wanted else _left_out(desk) | {kind}
    desk.set_setting(_LEFT_OUT, ",".join(one for one in AlarmKind if one in left_out))


def choose_bell(desk: Desk, wanted: bool) -> None:
    """The bell on or off."""
    desk.set_setting(_BELL, "" if wanted else _OFF)


def choose_voice(desk: Desk, wanted: bool) -> None:
    """The voice on or off."""
    desk.set_setting(_VOICE, "" if wanted else _OFF)


def choose_quiet_hours(desk: Desk, text: str) -> None:
    """Quiet hours as typed: `22:00-6:30`; empty for none. Raises InputProblem for anything else."""
    quiet_from_text(text)
    desk.set_setting(_QUIET, text.strip())


def quiet_from_text(text: str) -> QuietHours | None:
    """Quiet hours that a text means; none for an empty one."""
    if not text.strip():
        return None
    try:
        begin, end = (_clock(one) for one in text.replace("–", "-").replace(" to ", "-").split("-"))
    except ValueError:
        raise InputProblem(
            f"“{text.strip()}” is not a span of quiet hours; type both clocks, such as 22:00-6:30, or leave it empty."
        ) from None
    if begin == end:
        raise InputProblem("Quiet hours begin and end at the same clock; type two, such as 22:00-6:30.")
    return QuietHours(begin=begin, end=end)


def _clock(text: str) -> time:
    hour, _, minute = text.strip().partition(":")
    return time(int(hour), int(minute or 0))


def quiet_text(quiet: QuietHours | None) -> str:
    """The text that means these quiet hours."""
    return "" if quiet is None else f"{quiet.begin:%H:%M}-{quiet.end:%H:%M}"


def kept_answers(desk: Desk) -> tuple[Answer, ...]:
    """What was answered, as the logbook has it; rows that cannot be read are left out."""
    try:
        rows = json.loads(desk.setting(_ANSWERS) or "[]")
    except ValueError:
        return ()
    return tuple(one for row in rows if (one := _answer(row))) if isinstance(rows, list) else ()


def turn_sound(desk: Desk, key: str) -> None:
    """The sound of one alarm off, or on again."""
    answers = kept_answers(desk)
    keep_answers(
        desk, heard_again(answers, key) if is_silent(answers, key) else silenced(answers, (key,), desk.clock())
    )


def keep_answers(desk: Desk, answers: Sequence[Answer]) -> None:
    """Keep them."""
    rows = [
        {"key": one.key, "at": one.at.astimezone(UTC).isoformat()}
        | ({"until": one.until.astimezone(UTC).isoformat()} if one.until else {})
        | ({"silent": True} if one.silent else {})
        for one in answers
    ]
    desk.set_setting(_ANSWERS, json.dumps(rows))


def _answer(row: object) -> Answer | None:
    if not isinstance(row, dict):
        return None
    try:
        until = _instant(row["until"]) if row.get("until") else None
        return Answer(key=str(row["key"]), at=_instant(row["at"]), until=until, silent=bool(row.get("silent")))
    except (KeyError, InputProblem):
        return None


def _instant(text: object) -> datetime:
    return parse_iso_clock(str(text))[0]
