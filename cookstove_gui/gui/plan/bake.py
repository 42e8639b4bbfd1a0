"""In the oven: when it will be done in this oven, what a falling oven costs, when to turn it, and when it is safe."""

from PySide6.QtWidgets import QWidget

from cookstove_gui.cooking.instruments.kitchen import room_heat
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.desk.plan import texts as plan_texts
from cookstove_gui.desk.plan.bake import (
    BakeChoice,
    BakeInputs,
    BakePlan,
    bake_options,
    plan_bake,
    sized,
    usual_mass,
    usual_start,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.part import CAPTION_WIDTH, CHOICE_WIDTH, PlanPart
from cookstove_gui.gui.widgets.form import Choice, say, words
from cookstove_gui.phrases.my_stove.air import altitude_hints
from cookstove_gui.phrases.plan.bake import (
    bake_against_steady,
    bake_headline,
    core_words,
    danger_words,
    holding_words,
    safe_words,
    turn_words,
)
from cookstove_gui.units import TemperatureUnit, degrees, mass_unit_beside, tidy


class BakePart(PlanPart[BakeInputs, BakePlan]):
    """One thing in the oven."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(link, "plan_bake", "In the oven", parent)
        self._shown_for: tuple[str, str] = ("", "")
        self._what = Choice("What", "bake_what", "What goes in", width=CHOICE_WIDTH, caption_width=CAPTION_WIDTH)
        options = bake_options()
        self._what.show_options(options, options[0][0])
        self._what.chosen.connect(lambda _key: self._choose())
        self.form.addWidget(self._what)
        self._mass = self.field("Weight", "bake_mass", "Weight of one; empty for the usual one")
        self._start = self.field("Starts at", "bake_start", "Its temperature when it goes in")
        self._when = self.field("Goes in", "bake_when", "When: now, a clock such as 7:30, or +20 for in twenty minutes")
        self._when.show_text("now")
        self._core = self.field("Probe", "bake_core", "Its core temperature now, if a probe is in it")
        self._steady = words(name="bake_steady")
        self._core_words = words(name="bake_core_words")
        self._turn = words(role="good", name="bake_turn")
        self._safe = words(role="caution", name="bake_safe")
        self._holding = words(role="soft", name="bake_holding")
        self._danger = words(role="caution", name="bake_danger")
        self._height = words(role="soft", name="bake_height")
        for line in (
            self._turn, self._steady, self._core_words, self._safe, self._danger, self._holding, self._height
        ):  # fmt: skip
            self.answer_lines.addWidget(line)
        self.column.addStretch(1)
        self.show_nothing("")
        self.show_unit()

    def show_unit(self) -> None:
        """Show the usual weight and temperature of what was chosen, in the unit on the screen."""
        unit, key = self.desk.unit, self._what.key
        if (unit, key) == self._shown_for:
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

    def inputs(self) -> BakeInputs | None:
        """The question, or none while something typed is not understood."""
        standing, choice = self.desk.standing, self._choice()
        if standing is None or choice is None:
            return None
        return BakeInputs(
            standing=standing, stove=self.desk.stove, pressure=site_here(self.desk).pressure, choice=choice
        )

    def work_out(self, inputs: BakeInputs) -> BakePlan:
        """The answer."""
        return plan_bake(inputs)

    def show_answer(self, answer: BakePlan) -> None:
        """Show when it is done, and why then."""
        edge, found = self.edge, answer.answer
        self.headline.setText(bake_headline(found.bake.name, found, answer.goes_in_min, edge))
        say(self._steady, bake_against_steady(found, answer.task, edge))
        say(self._core_words, core_words(found, edge))
        say(self._turn, turn_words(answer.turn, self.desk.stove, edge))
        say(self._safe, safe_words(found, edge))
        say(self._holding, holding_words(edge) if found.safe else "")
        say(self._danger, danger_words(found, edge, self._room()))
        say(self._height, "\n".join(altitude_hints(site_here(self.desk), self.desk.unit)))

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why."""
        super().show_nothing(why)
        for line in (
            self._steady, self._core_words, self._turn, self._safe, self._danger, self._holding, self._height
        ):  # fmt: skip
            say(line, "")

    def _room(self) -> float:
        return room_heat(self.desk.stove, self.desk.standing.zones if self.desk.standing else {})

    def _choose(self) -> None:
        self.show_unit()
        self.show_standing()

    def _choice(self) -> BakeChoice | None:
        unit, key = self.desk.unit, self._what.key
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
