"""Wood for the bake: how much, the heat it gives, how long a load lasts."""

from PySide6.QtWidgets import QWidget

from cookstove_gui.cooking.fires.burn_times import FALL
from cookstove_gui.desk.my_stove import describing
from cookstove_gui.desk.plan import texts as plan_texts
from cookstove_gui.desk.plan.wood import (
    LONGEST_BAKE_MIN,
    WoodChoice,
    WoodInputs,
    WoodPlan,
    moisture_options,
    plan_wood,
    wood_examples,
    wood_options,
)
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.part import CAPTION_WIDTH, CHOICE_WIDTH, PlanPart
from cookstove_gui.gui.plan.wood_picture import WoodPicture
from cookstove_gui.gui.widgets.form import Choice, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.theme import SOFT
from cookstove_gui.phrases.edge import heat_name
from cookstove_gui.phrases.my_stove.fire import burns_words
from cookstove_gui.phrases.plan.wood import heat_words, load_words, rate_words, spans_rungs, wood_rungs
from cookstove_gui.stove.entries import USUAL_SPLIT
from cookstove_gui.units import mass_unit_beside

_AS_LOGGED = ""
_AIRS = ((_AS_LOGGED, "as the log says"), ("0", "shut"), ("0.25", "¼ open"), ("0.5", "half open"), ("1", "wide open"))
_THICKNESS = 0.08  # m, a usual split


class WoodPart(PlanPart[WoodInputs, WoodPlan]):
    """Wood for warming up and for the stay at the band chosen on the Cook page."""

    needs_fire = False
    fills = True

    def __init__(self, link: DeskLink, past: PastSessions, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(link, look, "plan_wood", "Wood for the bake", parent)
        self._past = past
        self._unit_shown = ""
        self._wood = Choice("Wood", "wood_class", "Kind of wood", width=CHOICE_WIDTH, caption_width=CAPTION_WIDTH)
        self._wood.show_options(wood_options(), "dense hardwood")
        self._examples = words(role="soft", name="wood_examples")
        self._moisture = Choice(
            "It is", "wood_moisture", "How dry it is", width=CHOICE_WIDTH, caption_width=CAPTION_WIDTH
        )
        self._moisture.show_options(moisture_options(), "seasoned")
        self._air = Choice("Air", "wood_air", "While it burns", width=CHOICE_WIDTH, caption_width=CAPTION_WIDTH)
        self._air.show_options(_AIRS, _AS_LOGGED)
        for part in (self._wood, self._moisture, self._air):
            part.chosen.connect(lambda _key: self.show_standing())
        self.form.addWidget(self._wood)
        self.form.addWidget(self._examples)
        self.form.addWidget(self._moisture)
        self.form.addWidget(self._air)
        self._split = self.field("One split", "wood_split", "What one split weighs")
        self._thickness = self.field("Thickness", "wood_thickness", "Thickness of a split, across its smaller side")
        self._minutes = self.field("Hot for", "wood_minutes", "How long the oven should stay hot", "min")
        self._minutes.show_text("60")
        self.form.addStretch(1)
        self._spans = OneLine(colour=SOFT)
        self._spans.setObjectName("wood_spans")
        self._picture = WoodPicture(look)
        self._heat = words(name="wood_heat")
        self._load = words(name="wood_load")
        self._burns = words(name="wood_burns")
        self._rate = words(role="soft", name="wood_rate")
        self.answer_lines.addWidget(self._spans)
        self.answer_lines.addWidget(self._picture, 1)
        for line in (self._load, self._burns, self._heat, self._rate):
            self.answer_lines.addWidget(line)
        self.show_nothing("")
        self.show_unit()

    def show_unit(self) -> None:
        """Show weights and lengths in the unit on the screen, what was typed converted."""
        unit = self.desk.unit
        if unit == self._unit_shown:
            return
        split, thickness = USUAL_SPLIT, _THICKNESS
        try:
            if self._unit_shown in ("F", "C"):
                split = plan_texts.kilograms_of(self._split.text, "F" if self._unit_shown == "F" else "C")
                thickness = self._thickness_typed(self._unit_shown)
        except InputProblem:
            pass  # not understood yet: the usual one stands there again in the new unit
        self._unit_shown = unit
        short = describing.short_unit(self.desk)
        self._split.show_text(plan_texts.kilograms_text(split, unit), mass_unit_beside(unit))
        self._thickness.show_text(describing.length_text(thickness, short), short)

    def inputs(self) -> WoodInputs | None:
        """The question, or none while something typed is not understood."""
        self._examples.setText(wood_examples(self._wood.key))
        choice = self._choice()
        if choice is None:
            return None
        desk = self.desk
        burning = desk.is_live and bool(desk.entries)
        return WoodInputs(
            stove=desk.stove,
            band=desk.band,
            standing=desk.standing if burning else None,
            entries=desk.entries if burning else (),
            choice=choice,
            past=self._past,
        )

    def work_out(self, inputs: WoodInputs) -> WoodPlan:
        """The answer."""
        return plan_wood(inputs)

    def show_answer(self, answer: WoodPlan) -> None:
        """Show how much, and how it was worked out."""
        unit, choice = self.desk.unit, answer.choice
        self.headline.show_rungs(wood_rungs(answer.mass, answer.splits, unit))
        self._spans.show_rungs(spans_rungs(answer.warm_up_min, answer.warm_up_from, choice.at_heat_min, self.desk.band))
        is_lit = self.desk.is_live and bool(self.desk.entries)
        self._picture.show_wood(answer, heat_name(self.desk.band), self.edge, is_lit=is_lit)
        for part in (self._spans, self._picture):
            part.setVisible(True)
        say(self._heat, heat_words(answer.heat.kilowatts, answer.heat.btu_per_hour))
        say(self._load, load_words(answer.load.to_coals_min, answer.air))
        say(self._burns, burns_words(answer.measured, unit, FALL))
        say(self._rate, rate_words(answer.rate.fires))

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why."""
        super().show_nothing(why)
        for line in (self._heat, self._load, self._burns, self._rate):
            say(line, "")
        for part in (self._spans, self._picture):
            part.setVisible(False)

    def _choice(self) -> WoodChoice | None:
        unit = self.desk.unit
        split = self.understood(self._split, lambda text: plan_texts.kilograms_of(text, unit), USUAL_SPLIT)
        thickness = self.understood(self._thickness, lambda _text: self._thickness_typed(unit), _THICKNESS)
        minutes = self.understood(self._minutes, lambda text: plan_texts.minutes_at_heat(text, LONGEST_BAKE_MIN), 60.0)
        if split is None or thickness is None or minutes is None:
            return None
        return WoodChoice(
            wood=self._wood.key,
            moisture=self._moisture.key,
            split=split,
            thickness=thickness,
            at_heat_min=minutes,
            air=None if self._air.key == _AS_LOGGED else float(self._air.key),
        )

    def _thickness_typed(self, unit: str) -> float:
        return describing.split_thickness(self._thickness.text, "in" if unit == "F" else "cm")
