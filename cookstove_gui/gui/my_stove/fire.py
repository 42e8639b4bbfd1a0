"""How the stove fires, by its logs: from lighting to a heat, how long it holds it, how long a shut-down load lasts."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.cooking.fires.burn_times import FALL
from cookstove_gui.cooking.fit.bands import band_tables
from cookstove_gui.desk.my_stove.band_tables import band_table, choose_band_table, table_words
from cookstove_gui.desk.my_stove.past_answers import Firing, firing
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import Choice, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.my_stove.fire import burn_line, burns_words, hold_words, rise_words
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Stove

_SHOWN_BURNS = 8
_CAUTION = (
    "A fire with little air in a cool flue makes creosote, and a smouldering one makes carbon monoxide: keep the flue "
    "in its working range. The stove’s manual, your local code and a licensed sweep decide."
)


class FirePart(QWidget):
    """Rise, hold and burn times."""

    def __init__(self, link: DeskLink, past: PastSessions, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._past = past
        self.setObjectName("stove_fire")
        self._band = Choice("Heat", "fire_band", "The heat that is asked about", caption_width=100)
        self._band.chosen.connect(lambda _key: self.show_past())
        self._names = Choice(
            "Names", "band_table", "The published table that names the heats", width=340, caption_width=100
        )
        self._names.chosen.connect(self._choose_names)
        self._names_words = words(role="soft", name="band_table_words")
        self._rise = words(name="fire_rise", role="good")
        self._hold = words(name="fire_hold")
        self._burn = words(name="fire_burns", role="good")
        self._list = words(name="fire_burn_list", role="soft")
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("How long it takes, and how long it lasts", role="heading"))
        column.addWidget(self._band)
        column.addWidget(self._names)
        column.addWidget(self._names_words)
        column.addWidget(self._rise)
        column.addWidget(self._hold)
        column.addWidget(words("A full load with the air shut down", role="heading"))
        column.addWidget(self._burn)
        column.addWidget(self._list)
        column.addWidget(words(_CAUTION, role="caution", name="fire_caution"))
        column.addStretch(1)
        self._job = Job(self, self._question, lambda asked: firing(*asked, self._past), self._show)
        self.show_past()

    @property
    def is_busy(self) -> bool:
        """Whether past sessions are being searched."""
        return self._job.is_busy

    def show_past(self) -> None:
        """Search past sessions for the chosen heat."""
        options = [(band.name, band.name) for band in self._desk.bands]
        self._band.show_options(options, self._band.key or self._desk.band.name)
        tables = [(one.key, one.label) for one in band_tables()]
        self._names.show_options(tables, band_table(self._desk).key)
        self._names_words.setText(table_words(self._desk))
        if self.isVisible():
            self._job.ask()

    def _choose_names(self, key: str) -> None:
        choose_band_table(self._desk, key)
        self.show_past()

    def _question(self) -> tuple[Stove, HeatBand]:
        band = next((band for band in self._desk.bands if band.name == self._band.key), self._desk.band)
        return self._desk.stove, band

    def _show(self, found: Firing) -> None:
        rise, unit = found.rise, self._desk.unit
        self._rise.setText(rise_words(rise.band, found.rise_min, len(rise.rises)))
        say(self._hold, hold_words(rise.band, found.typical_hold_min, found.longest_hold_min, len(rise.holds)))
        self._burn.setText(burns_words(found.summary, unit, FALL))
        titles = {row.number: row.title for row in self._desk.sessions}
        lines = [burn_line(burn, titles.get(burn.session, ""), unit) for burn in found.burns[:_SHOWN_BURNS]]
        say(self._list, "\n".join(lines))
