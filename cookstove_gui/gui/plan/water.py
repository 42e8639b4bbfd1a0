"""Water and pans: where it boils first, when, and where it then holds a simmer."""

from PySide6.QtWidgets import QWidget

from cookstove_gui.cooking.pans.boiling_time import Goal
from cookstove_gui.cooking.pans.catalogue import COLD_WATER, pans
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.desk.plan import texts as plan_texts
from cookstove_gui.desk.plan.water import WaterChoice, WaterInputs, WaterPlan, bases, plan_water
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.part import CAPTION_WIDTH, CHOICE_WIDTH, PlanPart
from cookstove_gui.gui.widgets.form import Choice, Either, say, words
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.phrases.edge import span
from cookstove_gui.phrases.plan.water import (
    boiling_words,
    preheat_words,
    runs_words,
    simmer_words,
    water_headline,
    water_when,
)
from cookstove_gui.units import degrees, tidy

_HEADERS = ("spot", "now", "likely", "window", "then a simmer")
_USUAL_LITRES = 2.0
_USUAL_BASE = "as usual for it"


class WaterPart(PlanPart[WaterInputs, WaterPlan]):
    """A pan of water on every spot of the cooktop."""

    def __init__(self, link: DeskLink, past: PastSessions, parent: QWidget | None = None) -> None:
        super().__init__(link, "plan_water", "Water and pans", parent)
        self._unit_shown = ""
        self._past = past
        self._amount = self.field("Water", "water_amount", "How much water")
        self._start = self.field("Starts at", "water_start", "The water’s temperature when the pan goes on")
        self._pan = Choice("Pan", "water_pan", "Which pan", width=CHOICE_WIDTH, caption_width=CAPTION_WIDTH)
        self._pan.show_options([(pan.key, pan.key) for pan in pans()], "saucepan")
        self._base = Choice(
            "Its base", "water_base", "How well it meets the iron", width=CHOICE_WIDTH, caption_width=CAPTION_WIDTH
        )
        self._base.show_options([("", _USUAL_BASE), *((base, base) for base in bases())], "")
        self._lid = Either(
            "Lid", "water_lid", "A lid keeps the steam in", [("on", "on"), ("off", "off")], CAPTION_WIDTH
        )
        self._lid.show_key("on")
        self._goal = Choice(
            "Until it", "water_goal", "How hot the water is to be", width=CHOICE_WIDTH, caption_width=CAPTION_WIDTH
        )
        self._goal.show_options([(Goal.BOIL, "boils"), (Goal.SIMMER, "simmers"), (Goal.POACH, "poaches")], Goal.BOIL)
        choices: tuple[Choice | Either, ...] = (self._pan, self._base, self._lid, self._goal)
        for part in choices:
            part.chosen.connect(lambda _key: self.show_standing())
            self.form.addWidget(part)
        self._boiling = words(name="water_boiling")
        self._learned = words(role="soft", name="water_learned")
        self._preheat = words(name="water_preheat")
        for line in (self._boiling, self._preheat, self._learned):
            self.answer_lines.addWidget(line)
        self._table = RowTable(
            "water_table",
            "When the water gets there on each spot, the soonest first",
            _HEADERS,
            stretch=3,
            shown_rows=0,
        )
        self.column.addWidget(self._table)
        self.column.addStretch(1)
        self.show_nothing("")
        self.show_unit()

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
        self._amount.show_text(amount, plan_texts.volume_unit(unit))
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
        )

    def work_out(self, inputs: WaterInputs) -> WaterPlan:
        """The answer."""
        return plan_water(inputs)

    def show_answer(self, answer: WaterPlan) -> None:
        """Show the best spot in a sentence, and all of them as a list."""
        edge = self.edge
        if not answer.rows:
            self.show_nothing("This stove has no spot on its cooktop; add one on the page My stove.")
            return
        best = answer.rows[0]
        self.headline.setText(water_headline(best.label, best.answer, edge))
        say(self._boiling, boiling_words(answer.boiling, edge))
        say(self._learned, runs_words(answer.runs))
        heavy = answer.preheat_min is not None and answer.preheat_min >= 2
        say(self._preheat, preheat_words(answer.preheat_min or 0.0) if heavy else "")
        self._table.show_rows(
            [
                TableRow(
                    cells=(
                        row.label,
                        edge.heat(row.heat),
                        water_when(row.answer, edge),
                        span(row.answer.minutes, edge),
                        simmer_words(row.simmer),
                    )
                )
                for row in answer.rows
            ]
        )
        self._table.show()

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why."""
        super().show_nothing(why)
        self._table.hide()
        for line in (self._boiling, self._learned, self._preheat):
            say(line, "")

    def _choice(self) -> WaterChoice | None:
        unit = self.desk.unit
        litres = self.understood(self._amount, lambda text: plan_texts.litres(text, unit), _USUAL_LITRES)
        start = self.understood(self._start, lambda text: plan_texts.water_start(text, unit), COLD_WATER)
        if litres is None or start is None:
            return None
        return WaterChoice(
            litres=litres,
            start=start,
            pan_key=self._pan.key,
            base=self._base.key,
            lid=self._lid.key == "on",
            goal=Goal(self._goal.key),
        )
