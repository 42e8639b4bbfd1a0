"""Back from table time: type when to eat, and see when to light the fire and when it goes in."""

from contextlib import suppress

from PySide6.QtWidgets import QGridLayout, QWidget

from cookstove_gui.cooking.baking.table_time import TableTime
from cookstove_gui.desk.heading import first_fires_words
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.desk.plan import texts as plan_texts
from cookstove_gui.desk.plan.bake import BakeChoice, bake_options, sized, usual_mass
from cookstove_gui.desk.plan.table import TableInputs, plan_table, rest_of
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.part import CAPTION_WIDTH, CHOICE_WIDTH, PlanPart
from cookstove_gui.gui.widgets.form import Choice, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.table import table_headline, table_source, table_steps
from cookstove_gui.units import local_offset_minutes, mass_unit_beside, tidy

_MOST_STEPS = 5


class TablePart(PlanPart[TableInputs, TableTime]):
    """The moments of the day for one bake."""

    needs_fire = False

    def __init__(self, link: DeskLink, past: PastSessions, parent: QWidget | None = None) -> None:
        super().__init__(link, "plan_table", "Back from table time", parent)
        self._past = past
        self._shown_for: tuple[str, str] = ("", "")
        options = bake_options()
        self._what = Choice(
            "What", "table_what", "What you want to eat", width=CHOICE_WIDTH, caption_width=CAPTION_WIDTH
        )
        self._what.show_options(options, options[0][0])
        self._what.chosen.connect(lambda _key: self._choose())
        self.form.addWidget(self._what)
        self._table = self.field("Eat at", "table_at", "When you want to eat: a time such as 12:30")
        self._mass = self.field("Weight", "table_mass", "Weight of one; empty for the usual one")
        self._rest = self.field("Rests", "table_rest", "How long it rests or cools before you eat", "min")
        grid = QGridLayout()
        grid.setHorizontalSpacing(2 * STEP)
        grid.setColumnStretch(1, 1)
        self._steps = []
        for place in range(_MOST_STEPS):
            clock, text = words(role="heading", name=f"table_clock_{place}"), words(name=f"table_step_{place}")
            clock.setWordWrap(False)
            grid.addWidget(clock, place, 0)
            grid.addWidget(text, place, 1)
            self._steps.append((clock, text))
        self.answer_lines.addLayout(grid)
        self._source = words(role="soft", name="table_source")
        self.answer_lines.addWidget(self._source)
        self.column.addStretch(1)
        self.show_nothing("")
        self.show_unit()

    @property
    def edge(self) -> Edge:
        """Counted from now, on this computer's clock while no fire is lit."""
        now = self.desk.clock()
        offset = self.desk.offset_minutes if self.desk.is_live else local_offset_minutes(now)
        return Edge(unit=self.desk.unit, now=now, offset_minutes=offset)

    def show_unit(self) -> None:
        """Show the usual weight and rest of what was chosen, in the unit on the screen."""
        unit, key = self.desk.unit, self._what.key
        if (unit, key) == self._shown_for:
            return
        old_unit, old_key = self._shown_for
        mass = usual_mass(key)
        if key == old_key:
            # Not understood yet: the usual one stands there again in the new unit.
            with suppress(InputProblem):
                mass = plan_texts.kilograms_of(self._mass.text, "F" if old_unit == "F" else "C")
        else:
            self._rest.show_text(tidy(rest_of(key)))
        self._shown_for = (unit, key)
        self._mass.clear()
        self._mass.show_text(plan_texts.kilograms_text(mass, unit), mass_unit_beside(unit))

    def show_standing(self) -> None:
        """Ask again, once there is a time to ask about."""
        if self._table.text.strip() or first_fires_words(self.desk):
            super().show_standing()
        else:
            say(self.first_fires, "")
            self.show_nothing("Type when you want to eat.")

    def inputs(self) -> TableInputs | None:
        """The question, or none while something typed is not understood."""
        unit, key, edge = self.desk.unit, self._what.key, self.edge
        mass = self.understood(self._mass, lambda text: plan_texts.kilograms_of(text, unit), usual_mass(key))
        rest = self.understood(self._rest, plan_texts.rest_minutes, 0.0)
        at = self.understood(self._table, lambda text: plan_texts.coming(text, edge.now, edge.offset_minutes), edge.now)
        if mass is None or rest is None or at is None:
            return None
        self._table.show_text(plan_texts.settled(self._table.text, at, edge.offset_minutes))
        bake = BakeChoice(key=key, mass=mass)
        if self.understood(self._mass, lambda _text: sized(bake), sized(BakeChoice(key=key))) is None:
            return None
        burning = self.desk.is_live and bool(self.desk.entries)
        return TableInputs(
            stove=self.desk.stove,
            pressure=site_here(self.desk).pressure,
            bake=bake,
            table_at=at,
            rest_min=rest,
            standing=self.desk.standing if burning else None,
            past=self._past,
        )

    def work_out(self, inputs: TableInputs) -> TableTime:
        """The answer."""
        return plan_table(inputs)

    def show_answer(self, answer: TableTime) -> None:
        """Show what to do first, and the moments of the day."""
        edge = self.edge
        self.headline.setText(table_headline(answer, edge))
        steps = table_steps(answer, edge)
        for place, (clock, text) in enumerate(self._steps):
            say(clock, steps[place][0] if place < len(steps) else "")
            say(text, steps[place][1] if place < len(steps) else "")
        say(self._source, table_source(answer.firings))

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why."""
        super().show_nothing(why)
        for clock, text in self._steps:
            say(clock, "")
            say(text, "")
        say(self._source, "")

    def _choose(self) -> None:
        self.show_unit()
        self.show_standing()
