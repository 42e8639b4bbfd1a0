"""In the oven: when it will be done in this oven, what a falling oven costs, when to turn it, and when it is safe."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtWidgets import QWidget

from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.instruments.kitchen import room_heat
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.desk.plan import oven_rows
from cookstove_gui.desk.plan import texts as plan_texts
from cookstove_gui.desk.plan.bake import (
    BakeChoice,
    BakeInputs,
    bake_name,
    cuts_of,
    kind_options,
    plan_bake,
    sized,
    usual_mass,
    usual_start,
)
from cookstove_gui.desk.plan.bake_lines import bake_lines
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.bake_foot import BakeFoot
from cookstove_gui.gui.plan.bake_picture import BakePicture, BakeWords
from cookstove_gui.gui.plan.inside import InsideRows
from cookstove_gui.gui.plan.part import CAPTION_WIDTH, CHOICE_WIDTH, PlanPart, hairline
from cookstove_gui.gui.plan.shape_keys import ShapeKeys
from cookstove_gui.gui.widgets.caution_line import CautionLine
from cookstove_gui.gui.widgets.form import Choice, Field, button, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.theme import SOFT
from cookstove_gui.phrases.edge import capital
from cookstove_gui.phrases.in_oven import apart_words, window_words
from cookstove_gui.phrases.my_stove.air import altitude_hints
from cookstove_gui.phrases.plan.bake import (
    bake_rungs,
    core_words,
    danger_words,
    holding_words,
    learned_words,
    probe_words,
    safe_words,
    steady_rungs,
)
from cookstove_gui.units import TemperatureUnit, clock_text, degrees, mass_unit_beside, tidy

_LOGGED = "in the oven, row "  # before the number, in the key of a choice that is in the oven already


class BakePart(PlanPart[BakeInputs, UnderWay]):
    """One thing in the oven."""

    fills = True
    promise = "when it is done"

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(link, look, "plan_bake", "In the oven", parent)
        self._shown_for: tuple[str, str] = ("", "")
        self._seen: tuple[int, ...] = ()  # rows of what was in the oven when last shown
        self._kept = kind_options()[0][0]  # what was chosen before something in the oven was
        self._cut = ""  # the form chosen of a kind that has several
        self._what = Choice("What", "bake_what", "What goes in", width=CHOICE_WIDTH, caption_width=CAPTION_WIDTH)
        self._what.show_options(kind_options(), self._kept)
        self._what.chosen.connect(lambda _key: self._choose())
        self.form.addWidget(self._what)
        self._mass = self.field("Weight", "bake_mass", "Weight of one; empty for the usual one")
        self._start = self.field("Starts at", "bake_start", "Its temperature when it goes in")
        self._when = self.field("Goes in", "bake_when", "When: now, a clock such as 7:30, or +20 for in twenty minutes")
        self._when.show_text("now")
        self._core = self.field("Probe", "bake_core", "Its core temperature now, if a probe is in it")
        self._shapes = ShapeKeys("Shape", CAPTION_WIDTH)
        self._shapes.chosen.connect(self._choose_shape)
        self.form.addWidget(self._shapes)
        self._put_in = button("It is in the oven", "bake_put_in", "Write down that it is in the oven", role="main")
        self._put_in.clicked.connect(self._write_in)
        self.form.addWidget(self._put_in)
        self._inside = InsideRows(look)
        self._inside.probed.connect(lambda text: self._write(self._inside.probe, oven_rows.probe, text))
        self._inside.due.connect(lambda text: self._write(self._inside.look, oven_rows.look_at, text))
        self._inside.turned.connect(lambda: self._write(None, oven_rows.turned))
        self._inside.taken_out.connect(lambda: self._write(None, oven_rows.taken_out))
        self.form.addWidget(self._inside)
        self._learned = words(role="soft", name="bake_learned")
        self.form.addWidget(self._learned)
        self.form.addStretch(1)
        self._steady = OneLine(colour=SOFT)
        self._steady.setObjectName("bake_steady")
        self._picture, self._foot = BakePicture(look), BakeFoot(look)
        self._parting = hairline()
        self._core_words = words(role="soft", name="bake_core_words")
        self._safe = CautionLine(look, "bake_safe")
        self._holding = words(role="note", name="bake_holding")
        self._danger = CautionLine(look, "bake_danger")
        self._height = words(role="note", name="bake_height")
        self.answer_lines.addWidget(self._steady)
        self.answer_lines.addWidget(self._picture, 1)
        for part in (
            self._safe, self._danger, self._core_words, self._parting, self._foot, self._holding, self._height
        ):  # fmt: skip
            self.answer_lines.addWidget(part)
        self.show_nothing("")
        self.show_unit()

    def show_unit(self) -> None:
        """Show the usual weight and temperature of what was chosen, in the unit on the screen."""
        unit, key = self.desk.unit, self._bake_key
        self._inside.show_unit(unit)
        if (unit, key) == self._shown_for or self._logged() is not None:
            return
        old_unit, old_key = self._shown_for
        mass, start = usual_mass(key), usual_start(key)
        if key == old_key and old_unit in ("F", "C"):
            mass, start = self._converted(old_unit, mass, start)
        self._shown_for = (unit, key)
        self._mass.clear()
        self._start.clear()
        self._mass.show_text(plan_texts.kilograms_text(mass, unit), mass_unit_beside(unit))
        self._start.show_text(tidy(degrees(start, unit), 0), f"°{unit}")
        self._core.show_text("", f"°{unit}")

    def show_standing(self) -> None:
        """Offer what is in the oven by the log, then answer as the other parts do."""
        if self.isVisible():
            self._show_inside()
        super().show_standing()

    def _show_inside(self) -> None:
        """What is in the oven stands first among the choices; what has just gone in is chosen."""
        inside = oven_rows.inside_now(self.desk)
        numbers = tuple(one.number for one in inside)
        new = [number for number in numbers if number not in self._seen]
        self._seen = numbers
        key = f"{_LOGGED}{new[-1]}" if new else self._what.key
        if key.startswith(_LOGGED) and key not in {f"{_LOGGED}{number}" for number in numbers}:
            key = self._kept
        offset = self.desk.offset_minutes
        options = [(f"{_LOGGED}{one.number}", f"{one.name}, {clock_text(one.went_in, offset)}") for one in inside]
        self._what.show_options([*options, *kind_options()], key)
        logged = self._logged()
        for part in (self._mass, self._start, self._when, self._core):
            part.setVisible(logged is None)
        self._show_shapes()
        self._put_in.setVisible(logged is None and self.desk.is_live and bool(self.desk.entries))
        self._inside.setVisible(logged is not None)
        if logged is not None:
            self._inside.show_rows(logged, self.edge, can_write=self.desk.is_live)
        self.show_unit()

    def _show_shapes(self) -> None:
        """The forms of what is chosen to go in."""
        cuts = () if self._logged() is not None else cuts_of(self._what.key)
        self._shapes.show_shapes(cuts, self._cut if self._cut in dict(cuts) else self._what.key)

    def _choose_shape(self, key: str) -> None:
        self._cut = key
        self.show_standing()

    @property
    def _bake_key(self) -> str:
        """Key of the bake chosen, its form among others."""
        return self._cut if self._cut in dict(cuts_of(self._what.key)) else self._what.key

    def _logged(self) -> InOven | None:
        """What is chosen, if it is in the oven by the log."""
        key = self._what.key
        return next((one for one in oven_rows.inside_now(self.desk) if key == f"{_LOGGED}{one.number}"), None)

    def inputs(self) -> BakeInputs | None:
        """The question, or none while something typed is not understood."""
        standing, logged = self.desk.standing, self._logged()
        if standing is not None and logged is not None:
            if all(one.inside != logged for one in standing.bakes):
                return None  # the standing that knows of it is on its way
            return BakeInputs(
                standing=standing, stove=self.desk.stove, pressure=0.0, choice=BakeChoice(key=""), number=logged.number
            )
        choice = self._choice()
        if standing is None or choice is None:
            return None
        return BakeInputs(
            standing=standing,
            stove=self.desk.stove,
            pressure=site_here(self.desk).pressure,
            choice=choice,
            baked=self.desk.baked.of(self.desk.stove, bake_name(choice.key), self.desk.session),
        )

    def work_out(self, inputs: BakeInputs) -> UnderWay:
        """The answer."""
        return plan_bake(inputs)

    def show_answer(self, answer: UnderWay) -> None:
        """Show when it is done, and why then."""
        self.headline.show_rungs(bake_rungs(answer, self.edge))
        standing, found = self.desk.standing, answer.answer
        task = task_of(found.bake.task) if found is not None else None
        told = BakeWords(
            wants=f"{task.name} heat" if task is not None else "",
            between=window_words(answer, self.edge).removeprefix(", "),
            why_turn=capital(apart_words(answer, self.desk.stove, self.edge)),
        )
        self._picture.show_lines(bake_lines(answer, standing) if standing is not None else None, self.edge, told)
        if found is None:
            return
        edge = replace(self.edge, now=answer.asked_at)  # its minutes count from there
        self._steady.show_rungs(steady_rungs(found, task, edge))
        self._steady.setVisible(True)
        self._foot.show_answer(found, edge)
        self._parting.setVisible(not self._foot.isHidden())
        is_in = found.core_now is not None
        say(self._core_words, probe_words(answer, self.edge) or (core_words(found, edge) if is_in else ""))
        say(self._learned, learned_words(found))
        self._safe.say(safe_words(found, edge))
        say(self._holding, holding_words(edge) if found.safe else "")
        self._danger.say(danger_words(found, edge, self._room()))
        say(self._height, "\n".join(altitude_hints(site_here(self.desk), self.desk.unit)))

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why."""
        super().show_nothing(why)
        for part in (self._steady, self._picture, self._foot, self._parting):
            part.setVisible(False)
        for line in (self._core_words, self._holding, self._height, self._learned):
            say(line, "")
        for caution in (self._safe, self._danger):
            caution.say("")

    def _room(self) -> float:
        return room_heat(self.desk.stove, self.desk.standing.zones if self.desk.standing else {})

    def _choose(self) -> None:
        if self._logged() is None:
            self._kept = self._what.key
        self.show_standing()

    def _write_in(self) -> None:
        """Put it into the log; the form then shows it as in the oven."""
        choice = self._choice()
        if choice is None:
            return
        try:
            oven_rows.put_in(self.desk, choice)
        except InputProblem as problem:
            self._when.show_problem(problem.sentence)
            return
        self._when.show_text("now")
        self._core.clear()
        self.show_standing()

    def _write(self, field: Field | None, row: Callable[..., None], *typed: str) -> None:
        """Write a row about what is chosen; what is not understood is explained beside its field."""
        logged = self._logged()
        if logged is None:
            return
        if field is None:
            row(self.desk, logged)
        elif field.takes(lambda: row(self.desk, logged, *typed)):
            field.clear()
        self.show_standing()

    def _choice(self) -> BakeChoice | None:
        unit, key = self.desk.unit, self._bake_key
        standing = self.desk.standing
        now = standing.now if standing else self.desk.clock()
        mass = self.understood(self._mass, lambda text: plan_texts.kilograms_of(text, unit), usual_mass(key))
        start = self.understood(self._start, lambda text: plan_texts.food_start(text, unit), usual_start(key))
        went_in = self.understood(self._when, lambda text: plan_texts.moment(text, now, self.desk.offset_minutes), now)
        core = self.understood(self._core, lambda text: plan_texts.food_start(text, unit), 0.0)
        if mass is None or start is None or went_in is None or core is None:
            return None
        self._when.show_text(plan_texts.settled(self._when.text, went_in, self.desk.offset_minutes))
        choice = BakeChoice(key=key, mass=mass, start=start, went_in=went_in, core=core or None)
        try:
            sized(choice)
        except InputProblem as problem:
            self._mass.show_problem(problem.sentence)
            return None
        return choice

    def _converted(self, old_unit: str, mass: float, start: float) -> tuple[float, float]:
        """What was typed in the other unit, or the usual where it was not understood."""
        unit: TemperatureUnit = "F" if old_unit == "F" else "C"
        try:
            mass = plan_texts.kilograms_of(self._mass.text, unit)
            start = plan_texts.food_start(self._start.text, unit)
        except InputProblem:
            pass
        return mass, start
