"""Watches the clock for the desk: which alarms ring, when they are heard, and what the cook answered."""

from collections.abc import Callable
from datetime import datetime

from PySide6.QtCore import QObject, QTimer, Signal

from cookstove_gui.cooking.supper.alarms import (
    Alarm,
    AlarmKind,
    Answer,
    Ringing,
    done,
    next_at,
    pause_after,
    put_off,
    ringing,
    silenced,
)
from cookstove_gui.desk import Desk
from cookstove_gui.desk.alarms.kept import alarm_settings, is_quiet, keep_answers, kept_answers
from cookstove_gui.gui.alarms.bell import Bell
from cookstove_gui.gui.alarms.tones import Tone
from cookstove_gui.gui.alarms.voice import Voice
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.phrases.alarms import TRIED, spoken_words

_SOFT = (AlarmKind.NEXT_READING, AlarmKind.BAND_REACHED)
_LONGEST_WAIT_S = 60.0  # a changed clock or a machine that slept is noticed within this time


class Ringer(QObject):
    """`ringing` are the alarms that call now; `changed` tells that they are others."""

    changed = Signal()
    voice_lost = Signal()

    def __init__(
        self,
        link: DeskLink,
        bell: Bell | None = None,
        voice: Voice | None = None,
    ) -> None:
        super().__init__(link)
        self._desk: Desk = link.desk
        self._bell, self._voice = bell or Bell(), voice or Voice()
        self._is_running = False
        self._heard: dict[tuple[str, datetime], tuple[int, datetime]] = {}  # alarm: how often, and when last
        self.alarms: tuple[Alarm, ...] = ()
        self.ringing: tuple[Ringing, ...] = ()
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self.look)
        self._to_say: tuple[str, str] = ("", "")  # an alarm's key, empty for a try, and its words
        self._after_bell = QTimer(self)
        self._after_bell.setSingleShot(True)
        self._after_bell.timeout.connect(self._speak)
        self._voice.lost.connect(self.voice_lost)
        link.changed.connect(lambda _changed: self.look())
        link.time_passed.connect(self.look)

    def start(self) -> None:
        """Begin; before the window is painted nothing rings and nothing for sound is imported."""
        self._is_running = True
        self.look()

    def close(self) -> None:
        """No alarm any more."""
        self._is_running = False
        self._timer.stop()
        self._hush()
        self._voice.close()

    # --- answering ---------------------------------------------------------------------------------------------

    def done(self) -> None:
        """The alarm shown is done; of a planned one the plan is told too."""
        first, plan = (self.ringing[0].alarm if self.ringing else None), self._desk.supper.plan
        self._answer(done)
        if first is not None and first.is_planned and plan is not None:
            from cookstove_gui.cooking.supper.moments import moments
            from cookstove_gui.desk.alarms.moments import key_of

            for moment in moments(plan):
                if key_of(moment) == first.key:
                    self._desk.supper.mark(moment)

    def put_off(self) -> None:
        """The alarm shown rings again in five minutes."""
        self._answer(put_off)

    def silence(self) -> None:
        """No sound for what rings now; the line stays."""
        self._hush()
        if self.ringing:
            keys = [one.alarm.key for one in self.ringing]
            keep_answers(self._desk, silenced(kept_answers(self._desk), keys, self._desk.clock()))
            self.look()

    def _answer(self, how: Callable[[tuple[Answer, ...], str, datetime], tuple[Answer, ...]]) -> None:
        self._hush()
        if self.ringing:
            key = self.ringing[0].alarm.key
            keep_answers(self._desk, how(kept_answers(self._desk), key, self._desk.clock()))
            self.look()

    def try_out(self) -> tuple[bool, bool]:
        """Let an alarm be heard now: whether it is more than a beep, and whether it is spoken."""
        rings = self._let_hear(Tone.ACT, "", TRIED)
        return rings, alarm_settings(self._desk).voice and self._voice.is_there

    def _let_hear(self, tone: Tone, key: str, words: str) -> bool:
        """The bell, and after it the voice, so that neither drowns the other; whether the bell is more than a beep."""
        settings = alarm_settings(self._desk)
        if settings.voice:
            self._voice.get_ready()
        rings_s = self._bell.ring(tone) if settings.bell else 0.0
        if settings.voice:
            self._to_say = (key, words)
            if rings_s:
                self._after_bell.start(round(1000 * rings_s))
            else:
                self._speak()
        return rings_s > 0.0

    def _speak(self) -> None:
        """Say what the bell rang for, unless nobody need do it any more."""
        key, words = self._to_say
        if not key or any(one.alarm.key == key and not one.is_silent for one in self.ringing):
            self._voice.say(words)

    def _hush(self) -> None:
        self._after_bell.stop()
        self._bell.stop()
        self._voice.stop()

    # --- looking -----------------------------------------------------------------------------------------------

    def look(self) -> None:
        """See what rings now, let it be heard where it is due, and wait for the next moment."""
        if not self._is_running:
            return
        from cookstove_gui.desk.alarms.moments import alarms_of  # brings the meals: not before the first paint

        now = self._desk.clock()
        answers = kept_answers(self._desk)
        standing = self._desk.standing if self._desk.is_live else None
        left_out = alarm_settings(self._desk).left_out
        self.alarms = tuple(one for one in alarms_of(standing, self._desk.supper.plan) if one.kind not in left_out)
        found = ringing(self.alarms, answers, now)
        if found != self.ringing:
            self.ringing = found
            self.changed.emit()
        self._sound(now)
        self._wait(next_at(self.alarms, answers, now), now)

    def _sound(self, now: datetime) -> None:
        """The most urgent alarm whose sound is due; one sound at a time."""
        calling = {(one.alarm.key, one.alarm.at): one for one in self.ringing if not one.is_silent}
        self._heard = {name: heard for name, heard in self._heard.items() if name in calling}
        due = [name for name in calling if self._is_due(name, now)]
        if not due or is_quiet(self._desk, now):
            return
        for name in due:
            self._heard[name] = (self._heard.get(name, (0, now))[0] + 1, now)
        first = calling[due[0]].alarm
        tone = Tone.NOTE if first.kind in _SOFT else Tone.ACT
        self._let_hear(tone, first.key, spoken_words(first, self._desk.stove, self._desk.unit))

    def _is_due(self, name: tuple[str, datetime], now: datetime) -> bool:
        sounds, last = self._heard.get(name, (0, now))
        return not sounds or now < last or (now - last).total_seconds() >= pause_after(sounds)

    def _wait(self, following: datetime | None, now: datetime) -> None:
        sounds = [pause_after(sounds) - (now - last).total_seconds() for sounds, last in self._heard.values()]
        waits = [_LONGEST_WAIT_S, *sounds]
        if following is not None:
            waits.append((following - now).total_seconds())
        self._timer.start(round(1000 * min(max(min(waits), 0.2), _LONGEST_WAIT_S)))
