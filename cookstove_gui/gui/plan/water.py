"""Water and pans: where it boils first, when, and where it then holds a simmer."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from cookstove_gui.cooking.pans.boiling_time import Goal
from cookstove_gui.cooking.pans.catalogue import COLD_WATER, pans
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.desk.plan import texts as plan_texts
from cookstove_gui.desk.plan.kept_pots import kept_pots
from cookstove_gui.desk.plan.water import WaterChoice, WaterInputs, WaterPlan, bases, plan_water
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.pan_rows import PanRows
from cookstove_gui.gui.plan.part import CAPTION_WIDTH, CHOICE_WIDTH, PlanPart, hairline
from cookstove_gui.gui.plan.water_curve import WaterCurve
from cookstove_gui.gui.plan.water_on_top import WaterOnTop
from cookstove_gui.gui.plan.water_runs import WaterRuns
from cookstove_gui.gui.widgets.form import Choice, Either, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.theme import SOFT, STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.phrases.edge import place_words
from cookstove_gui.phrases.plan.water import draw_words, reason_rungs, runs_words, water_rungs
from cookstove_gui.units import degrees, tidy, volume_unit

_USUAL_LITRES = 2.0
_USUAL_BASE = "as usual for it"
_GOALS = ((Goal.BOIL, "boil"), (Goal.SIMMER, "simmer"), (Goal.POACH, "poach"))
_ASKS = "The ring is the spot asked about; arrows and Enter ask for another."


class WaterPart(PlanPart[WaterInputs, WaterPlan]):
    """A pan of water on every spot of the cooktop."""

    fills = True
    promise = "when it boils"

    def __init__(self, link: DeskLink, past: PastSessions, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(link, look, "plan_water", "Water and pans", parent)
        self._unit_shown = ""
        self._past = past
        self._spot = ""
        self.form.setSpacing(STEP // 2)
        self._amount = self.field("Water", "water_amount", "How much water")
        self._start = self.field("Starts at", "water_start", "The water’s temperature when the pan goes on")
        self._goal = Either("Make it", "water_goal", "How hot the water is to be", _GOALS, CAPTION_WIDTH)
        self._goal.show_key(Goal.BOIL)
        lids = [("on", "on"), ("off", "off")]
        self._lid = Either("Lid", "water_lid", "A lid keeps the steam in", lids, CAPTION_WIDTH)
        self._lid.show_key("on")
        self._base = Choice(
            "Its base", "water_base", "How well it meets the iron", width=CHOICE_WIDTH, caption_width=CAPTION_WIDTH
        )
        self._base.show_options([("", _USUAL_BASE), *((base, base) for base in bases())], "")
        self._pans = PanRows(look, [pan.key for pan in pans()])
        self._pans.show_key("saucepan")
        for part in (self._goal, self._lid, self._base, self._pans):
            part.chosen.connect(lambda _key: self.show_standing())
        for part in (self._goal, self._lid, self._base):
            self.form.addWidget(part)
        self._on = words("Pan", role="strong", name="water_on")
        self._on.setWordWrap(False)
        self._minutes = words("minutes", role="small")
        heading = QHBoxLayout()
        heading.addWidget(self._on)
        heading.addStretch(1)
        heading.addWidget(self._minutes)
        self.form.addWidget(hairline())
        self.form.addLayout(heading)
        self.form.addWidget(self._pans, 1)
        self._boiling = OneLine(colour=SOFT)
        self._boiling.setObjectName("water_boiling")
        self._top, self._curve, self._runs = WaterOnTop(look), WaterCurve(look), WaterRuns(look)
        self._top.pressed.connect(self._ask_for)
        self._caption = words(_ASKS, role="note")
        self._said_and_come = words("minutes, on the spot as it was read", role="note")
        self._said_and_come.setWordWrap(False)
        self._learned = words(role="strong", name="water_learned")
        self._show_columns()
        self.show_nothing("")
        self.show_unit()

    def _show_columns(self) -> None:
        """Cooktop and curve beside each other, below them what pans of the past made of it."""
        under = QVBoxLayout()
        under.setSpacing(STEP // 2)
        under.addWidget(self._top, 1)
        under.addWidget(self._caption)
        both = QHBoxLayout()
        both.setSpacing(3 * STEP)
        both.addLayout(under, 10)
        both.addWidget(self._curve, 9)
        heading = QHBoxLayout()
        heading.addWidget(self._learned, 1)
        heading.addWidget(self._said_and_come, 0, Qt.AlignmentFlag.AlignTop)
        self.answer_lines.addWidget(self._boiling)
        self.answer_lines.addLayout(both, 1)
        self._rule = hairline()
        self.answer_lines.addWidget(self._rule)
        self.answer_lines.addLayout(heading)
        self.answer_lines.addWidget(self._runs)

    def show_unit(self) -> None:
        """Show amounts and temperatures in the unit on the screen, what was typed converted."""
        unit = self.desk.unit
        if unit == self._unit_shown:
            return
        old = self._unit_shown
        amount, start = tidy(_USUAL_LITRES), plan_texts.well_water_text(unit)
        if old in ("F", "C"):
            try:
                litres = plan_texts.litres(self._amount.text, "F" if old == "F" else "C")
                amount = plan_texts.litres_text(litres, unit)
                start = tidy(degrees(plan_texts.water_start(self._start.text, "F" if old == "F" else "C"), unit), 0)
            except InputProblem:
                amount, start = self._amount.text, self._start.text  # not understood yet: left as it was typed
        self._unit_shown = unit
        self._amount.show_text(amount, volume_unit(unit))
        self._start.show_text(start, f"°{unit}")

    def inputs(self) -> WaterInputs | None:
        """The question, or none while something typed is not understood."""
        standing = self.desk.standing
        choice = self._choice()
        if standing is None or choice is None:
            return None
        return WaterInputs(
            standing=standing,
            stove=self.desk.stove,
            pressure=site_here(self.desk).pressure,
            choice=choice,
            past=self._past,
            pots=kept_pots(self.desk).pots,
        )

    def work_out(self, inputs: WaterInputs) -> WaterPlan:
        """The answer."""
        return plan_water(inputs)

    def show_answer(self, answer: WaterPlan) -> None:
        """Show the spot asked about in a sentence and a curve, all spots on the cooktop, all pans in their list."""
        for part in self._parts_of_the_answer():
            part.setVisible(True)
        edge, asked = self.edge, answer.asked
        if asked is None:
            self.show_nothing("This stove has no spot on its cooktop; add one on the page My stove.")
            return
        self.headline.show_rungs(
            water_rungs(asked.label, asked.answer, edge, is_soonest=asked.spot == answer.rows[0].spot)
        )
        simmers = [(row.label, row.simmer) for row in answer.rows]
        self._boiling.show_rungs(reason_rungs(asked.answer, simmers, answer.preheat_min, edge))
        say(self._on, f"Pan, on {place_words(asked.label)}")
        self._pans.show_pans(answer.pans)
        drawn = draw_words(answer.others, answer.oven_cost, edge)
        self._caption.setText(f"{drawn} {_ASKS}".strip())
        self._top.show_water(self.desk.stove, answer, edge)
        self._curve.show_water(answer, edge)
        set_role(self._learned, "strong" if answer.said else "place")
        say(self._learned, runs_words(answer.runs))
        self._runs.show_runs(answer, edge)
        for part in (self._runs, self._said_and_come):
            part.setVisible(bool(answer.said))

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why."""
        super().show_nothing(why)
        for part in self._parts_of_the_answer():
            part.setVisible(False)
        self._pans.show_pans(())

    def _parts_of_the_answer(self) -> tuple[QWidget, ...]:
        labels: tuple[QLabel, ...] = (self._boiling, self._caption, self._said_and_come, self._learned)
        return (*labels, self._top, self._curve, self._runs, self._rule, self._minutes)

    def _ask_for(self, spot: str) -> None:
        self._spot = spot
        self.show_standing()

    def _choice(self) -> WaterChoice | None:
        unit = self.desk.unit
        litres = self.understood(self._amount, lambda text: plan_texts.litres(text, unit), _USUAL_LITRES)
        start = self.understood(self._start, lambda text: plan_texts.water_start(text, unit), COLD_WATER)
        if litres is None or start is None:
            return None
        return WaterChoice(
            litres=litres,
            start=start,
            pan_key=self._pans.key,
            base=self._base.key,
            lid=self._lid.key == "on",
            goal=Goal(self._goal.key),
            spot=self._spot,
        )
