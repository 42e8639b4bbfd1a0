"""A Sunday supper cooked through at speed in the window, on a fire that misbehaves; every step that moves is looked at.

    python -m tests.gui.plan.supper.sunday FOLDER

writes a picture of the tab at each plan in which a step moved, and at least every half hour.
"""

import sys
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path

import numpy as np
from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop, QTimer
from PySide6.QtWidgets import QApplication, QPushButton

from cookstove_gui.cooking.fires.steps import AIR_DOWN
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.heats import planned_for, task_for
from cookstove_gui.cooking.supper.moments import MomentKind, part_of_step
from cookstove_gui.cooking.supper.plan import FireStep, Plan
from cookstove_gui.desk import Desk
from cookstove_gui.gui.background.supper_planning import SupperPlanning
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import degrees, kelvin, tidy
from tests.gui.alarms.heard import HeardBell, HeardVoice
from tests.held_clock import HeldClock
from tests.world.kitchens import MainKitchen

DISHES = ("bread", "beef_and_barley", "greens", "apple_pie")
BEGINS = datetime(2026, 1, 11, 13, 0, tzinfo=UTC)
TABLE_H = 5.5
LOOKS_MIN, ROUND_MIN = 2, 8
CALLED_AWAY = (205, 235)  # minutes from the beginning in which nobody feeds the fire
TOO_MUCH = 262  # minute at which far too much wood goes on
DOOR_LEFT = 285
_SEED, _FIRING = 423, 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What stood in the window at one moment."""

    minute: int
    headline: str
    moved: str
    next: tuple[str, ...]
    plan: Plan


@dataclass
class Sunday:
    """One evening: a logbook on the disk, a stove that burns, and the window over both."""

    folder: Path
    app_look: Look
    clock: HeldClock = field(default_factory=lambda: HeldClock(BEGINS))
    bell: HeardBell = field(default_factory=HeardBell)
    voice: HeardVoice = field(default_factory=HeardVoice)
    minute: int = 0
    looks: list[Seen] = field(default_factory=list)
    pictures: int = 0
    lit_at: int | None = None

    def __post_init__(self) -> None:
        band = (float(kelvin(365.0, "F")), float(kelvin(425.0, "F")))
        self.kitchen = MainKitchen(_SEED, _FIRING, band)
        self.random = np.random.default_rng(11)
        self.next_round = 3
        self.heard_events = 0
        self.helped_at = -99
        self.answers_at: dict[str, int] = {}
        self._open(first=True)

    def _open(self, *, first: bool = False) -> None:
        self.logbook = Logbook.open(self.folder / "logbook.sqlite")
        if first:
            self.logbook.save_stove(self.kitchen.stove)
            self.logbook.set_setting("stove", self.kitchen.stove.name)
        self.desk = Desk(self.logbook, self.clock)
        self.window = MainWindow(self.desk, self.app_look)
        self.window.resize(1280, 750)
        self.window.ringer._bell, self.window.ringer._voice = self.bell, self.voice
        self.window.show()
        self.settle()
        self.window.show_page("plan")
        self.settle()

    def restart(self) -> None:
        """The program ends, whatever it is at, and is begun again."""
        self.close()
        self._open()

    def close(self) -> None:
        """Close the window and the logbook."""
        self.window.close()
        self.window.deleteLater()  # it would follow the look that the next window shares
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
        self.logbook.close()

    def settle(self) -> None:
        """Wait until everything that was asked for is worked out and shown."""
        planning = SupperPlanning.of(self.window.link)
        still = 0
        while still < 3:
            loop = QEventLoop()
            QTimer.singleShot(15, loop.quit)
            loop.exec()
            still = 0 if self.window.working.is_busy or planning.is_busy else still + 1

    # --- the evening

    def plan_it(self) -> None:
        """Set the table and choose the dishes."""
        self.desk.supper.set_table(BEGINS + timedelta(hours=TABLE_H))
        known = {dish.key: dish for dish in self.desk.supper.dishes}
        for key in DISHES:
            self.desk.supper.add(known[key])
        self.settle()

    def cook(self, until: int) -> Iterator[Seen]:
        """Go on cooking; what stands in the window after each round that changed something."""
        while self.minute < until:
            if self._acts() or self.minute % 10 == 0:
                self.window._tick()
                self.settle()
                seen = self._seen()
                self.looks.append(seen)
                yield seen
            self.minute += LOOKS_MIN
            self.clock.pass_minutes(LOOKS_MIN)
            for _ in range(LOOKS_MIN if self.lit_at is not None else 0):
                self._misbehave()
                self.kitchen.live()

    def _misbehave(self) -> None:
        begin, end = CALLED_AWAY
        self.kitchen.leaves_wood = begin <= self.minute < end
        if self.minute == TOO_MUCH and self.kitchen.minute - self.kitchen.loaded_at > 1:
            self.kitchen.load(3.2)
        if self.minute == DOOR_LEFT:
            self.kitchen.food(goes_in=True)

    def _acts(self) -> bool:
        """Whatever the cook does and writes down in these minutes."""
        did = self._writes()
        if self.desk.supper.plan is not None:
            did = self._follows(self.desk.supper.plan) or did
        return did

    def _writes(self) -> bool:
        if self.lit_at is None:
            return False
        events = self.kitchen.happened[self.heard_events :]
        self.heard_events = len(self.kitchen.happened)
        for event in events:
            match event.kind:
                case "wood":
                    self.desk.do(Kind.WOOD, value=tidy(event.value / 0.45359237, 1), unit="lb")
                case "air":
                    self.desk.do(Kind.AIR, value=tidy(round(event.value * 20) / 20, 2))
                case "bypass":
                    self.desk.do(Kind.BYPASS, value=tidy(event.value))
        reads = self.minute >= self.next_round
        if reads:
            shown = float(degrees(self.kitchen.dial() + self.random.normal(0.0, 1.0), "F"))
            self.desk.read(str(5 * round(shown / 5)), spot="oven_centre")
            top = float(degrees(self.kitchen.spot("top_back_right"), "F"))
            self.desk.read(str(round(top)), spot="top_back_right")
            self.next_round = self.minute + ROUND_MIN
        return bool(events) or reads

    def _follows(self, plan: Plan) -> bool:
        """Do what is due of the plan; light, and what the meal wants of the fire."""
        now = self.clock()
        light = next((step for step in plan.steps if step.what == FireStep.LIGHT), None)
        if light is not None and self.lit_at is None:
            if light.begin > now:
                return self._done(plan)
            self.lit_at = self.minute
            self.desk.do(Kind.LIT)
            self.kitchen.live()
            self.heard_events = len(self.kitchen.happened)
            return True
        helped = False
        for step in plan.steps:
            if step.helps and self.minute - self.helped_at >= 12:
                self.helped_at, helped = self.minute, True
                if step.opening is not None:
                    self.kitchen.set_air(step.opening)
                else:
                    self.kitchen.load(step.wood or 1.0)
            elif step.what == FireStep.BYPASS_SHUT and step.begin <= now and self.lit_at is not None:
                self.kitchen.shut_bypass()
        asks = {one for caution in (self.desk.standing.cautions if self.desk.standing else ()) for one in caution.asks}
        if "shut air" in asks and self.minute - self.helped_at >= 12:
            self.helped_at = self.minute
            self.kitchen.set_air(AIR_DOWN)
        return self._done(plan) or helped

    def _done(self, plan: Plan) -> bool:
        """Press Done for what is due, a minute or two late as people are; food only into a right oven."""
        due = self.desk.supper.due
        if due is None or due.kind is MomentKind.FIRE or due.at > self.clock() + timedelta(minutes=1):
            return False
        part = part_of_step(plan, due.step)
        if due.kind is MomentKind.BEGIN and self.clock() < due.step.end:
            return False  # at work
        if due.kind is MomentKind.PUT_IN and isinstance(part, Heat):
            if self.kitchen.dial() < planned_for(task_for(part)).low:
                return False
            self.kitchen.food(goes_in=True)
        elif due.kind is MomentKind.TAKE_OUT:
            self.kitchen.food(goes_in=False)
        key = self.window.findChild(QPushButton, "supper_done")
        assert key is not None
        key.click()
        return True

    # --- what is seen

    def _seen(self) -> Seen:
        from cookstove_gui.desk.heading import shown_rungs
        from cookstove_gui.desk.plan.supper_shown import supper_shown

        shown, plan = supper_shown(self.desk), self.desk.supper.plan
        assert shown is not None
        assert plan is not None
        return Seen(
            minute=self.minute,
            headline=shown_rungs(self.desk)[0],
            moved=shown.moved,
            next=tuple(f"{one.clock} {one.words}" for one in shown.next),
            plan=plan,
        )

    def grab(self, folder: Path) -> None:
        """A picture of the window."""
        self.pictures += 1
        name = f"{self.pictures:02d}_minute_{self.minute:03d}.png"
        self.window.grab().save(str(folder / name))


def main() -> None:
    """The evening in pictures."""
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "logbook.sqlite").unlink(missing_ok=True)
    app = QApplication.instance() or QApplication([])
    assert isinstance(app, QApplication)
    evening = Sunday(folder=folder, app_look=Look(app, "day"))
    evening.plan_it()
    evening.grab(folder)
    last, told = -99, ""
    for seen in evening.cook(int(60 * TABLE_H) + 20):
        print(seen.minute, seen.headline, "|", seen.moved, "|", " ; ".join(seen.next), flush=True)
        if (seen.moved and seen.moved != told) or seen.minute - last >= 30:
            evening.grab(folder)
            last, told = seen.minute, seen.moved
    evening.bell.write(folder / "alarms.wav")
    print(len(evening.bell.heard), "sounds;", evening.voice.heard)
    evening.close()


if __name__ == "__main__":
    main()
