"""What this stove can do: every figure with its range, and the firings behind the one that is asked about."""

from datetime import date

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.cooking.fires.abilities import Ability, Figure
from cookstove_gui.cooking.fit.bands import band_tables
from cookstove_gui.desk.my_stove.abilities import FALLS, Abilities, key_of
from cookstove_gui.desk.my_stove.band_tables import band_table, choose_band_table, table_words
from cookstove_gui.desk.my_stove.picture_values import cells_values
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.my_stove.ability_list import AbilityList
from cookstove_gui.gui.my_stove.known import KnownAbilities
from cookstove_gui.gui.my_stove.rises_picture import RisesPicture
from cookstove_gui.gui.my_stove.shown_picture import ShownPicture
from cookstove_gui.gui.my_stove.shown_scale import Against, marks, offered, scale
from cookstove_gui.gui.widgets.form import Answer, Choice, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.picture import WaysOut, ways_out_key
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.sections import scrolling
from cookstove_gui.gui.widgets.side_by_side import SideBySide
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import fix_width
from cookstove_gui.phrases.edge import capital, local_day, spot_label
from cookstove_gui.phrases.my_stove.abilities import (
    ability_name,
    behind_count,
    fall_words,
    figure_range,
    figure_sentence,
    figure_value,
    how_words,
    shown_cells,
)

_LIST = 396  # px of the design
_LIST_LEAST = 220
_CAPTION = 96
_RISES = "rises"
_AGAINST = {
    _RISES: "every rise, from the match",
    Against.DAY: "by day",
    Against.OUTDOORS: "by the air outdoors",
    Against.WOOD: "by the wood that went on",
}
_HEADS = ("Firing", "Shown", "Wood", "Outdoors")
_CAUTION = (
    "A fire with little air in a cool flue makes creosote, and a smouldering one makes carbon monoxide: keep the flue "
    "in its working range. The stove’s manual, your local code and a licensed sweep decide."
)


class FirePart(QWidget):
    """All figures at the left, one of them opened at the right."""

    def __init__(self, link: DeskLink, look: Look, known: KnownAbilities, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._link, self._desk, self._known = link, link.desk, known
        self._key = ""
        self._picture_kind = ""
        self.setObjectName("stove_fire")
        self._build(look)
        self._list.chosen.connect(self.open_figure)
        self._fall.chosen.connect(lambda key: known.set_fall(FALLS[int(key)]))
        self._names.chosen.connect(self._choose_names)
        self._against.chosen.connect(self._show_against)
        self._firings.opened.connect(lambda key: link.session_wanted.emit(int(key.partition(":")[0])))
        self._picture.opened.connect(link.session_wanted)
        known.changed.connect(self._show)
        self._show()

    def _build(self, look: Look) -> None:
        self._list = AbilityList(look, "abilities")
        self._area = scrolling(_topped(self._list))
        self._area.setObjectName("abilities_area")
        fix_width(self._area, _LIST)
        look.changed.connect(self._space)
        self._space()
        self._answer = Answer(name="figure_sentence")
        self._range = words(name="figure_range", role="strong")
        self._how = words(name="figure_how", role="soft")
        self._fall = Choice("Until it is", "fire_fall", "How far the oven falls", width=150, caption_width=_CAPTION)
        self._names = Choice("Names", "band_table", "The table that names the heats", width=300, caption_width=_CAPTION)
        self._names_words = words(role="note", name="band_table_words")
        self._against = Choice(
            "Drawn", "fire_against", "What they are drawn against", width=300, caption_width=_CAPTION
        )
        self._rises = RisesPicture(look, "fire_rises")
        self._picture = ShownPicture(look)
        self._picture.values = lambda: self._firings_as_table()
        self._more = ways_out_key("fire_more", self._pictures)
        self._firings = RowTable("firings", "Firings behind this figure", _HEADS, stretch=0)
        self._open = words("Enter, or a double click, opens a firing in the Logbook.", role="note", name="firings_open")
        self._caution = words(_CAUTION, role="small_caution", name="fire_caution")
        right = QVBoxLayout()
        right.setSpacing(STEP)
        ranged = QHBoxLayout()
        ranged.addWidget(self._range, 1)
        ranged.addWidget(self._more)
        right.addWidget(self._answer)
        right.addLayout(ranged)
        for part in (self._how, self._fall, self._names, self._names_words, self._against):
            right.addWidget(part)
        right.addWidget(self._rises, 3)
        right.addWidget(self._picture, 3)
        right.addWidget(self._firings, 2)
        right.addWidget(self._open)
        right.addWidget(self._caution)
        right.addStretch(0)
        left = QVBoxLayout()
        left.addWidget(self._area, 1)
        whole = QVBoxLayout(self)
        whole.addWidget(SideBySide(left, right, shares=(0, 1), apart=4 * STEP))

    def _space(self) -> None:
        self._area.setMinimumHeight(px(_LIST_LEAST))  # also where it stands above the answer

    def show_past(self) -> None:
        """Search the stove's past, and show what is known meanwhile."""
        self._show()
        if self.isVisible():
            self._known.ask()

    def open_figure(self, key: str) -> None:
        """Show the firings behind a figure."""
        self._key, self._picture_kind = key, ""
        self._show()

    def _choose_names(self, key: str) -> None:
        choose_band_table(self._desk, key)
        self._key = ""
        self.show_past()

    def _show_against(self, kind: str) -> None:
        self._picture_kind = kind
        self._show()

    def _show(self) -> None:
        found, unit = self._known.found, self._desk.unit
        figure = found.figure(self._key) or next(iter(found.figures), None)
        marked = key_of(figure) if figure else ""
        self._list.show_rows(
            [
                (
                    key_of(one), ability_name(one, unit, self._known.fall, self._spot(one)),
                    figure_value(one, unit), figure_range(one, unit, self._spot(one)),
                )
                for one in found.figures
            ],
            marked,
        )  # fmt: skip
        if figure is None:
            self._answer.setText("What this stove can do is read off its log.")
            say(self._range, "")
            say(self._how, "Light it, read the oven as it comes up, and its figures stand here.")
        else:
            self._show_figure(figure)
        for part, wanted in (
            (self._fall, figure is not None and figure.ability is Ability.BURN),
            (self._names, figure is not None and figure.ability is Ability.RISE),
            (self._names_words, figure is not None and figure.ability is Ability.RISE),
            (self._caution, figure is not None and figure.ability is Ability.BURN),
        ):
            part.setVisible(wanted)
        self._show_pictures(figure)

    def _show_figure(self, figure: Figure) -> None:
        unit = self._desk.unit
        spot = self._spot(figure)
        self._answer.setText(figure_sentence(figure, unit, self._known.fall, spot))
        say(self._range, capital(figure_range(figure, unit, spot)))
        say(self._how, how_words(figure))
        falls = [(str(place), fall_words(fall, unit)) for place, fall in enumerate(FALLS)]
        self._fall.show_options(falls, str(FALLS.index(self._known.fall)))
        tables = [(one.key, one.label) for one in band_tables()]
        self._names.show_options(tables, band_table(self._desk).key)
        self._names_words.setText(table_words(self._desk))

    def _show_pictures(self, figure: Figure | None) -> None:
        found, unit = self._known.found, self._desk.unit
        today = local_day(self._desk.clock(), self._desk.offset_minutes)
        is_rise = figure is not None and figure.ability is Ability.RISE and bool(found.rises)
        kinds = [_RISES] if is_rise else []
        if figure is not None and len(figure.shown) > 1:  # one alone is told by its row
            kinds += offered(figure, found)
        kind = self._picture_kind if self._picture_kind in kinds else kinds[0] if kinds else ""
        self._against.show_options([(one, _AGAINST[one]) for one in kinds], kind)
        self._against.setVisible(len(kinds) > 1)
        self._rises.setVisible(kind == _RISES)
        drawn = marks(figure, Against(kind), found, unit, today) if figure and kind not in ("", _RISES) else ()
        self._picture.setVisible(bool(drawn))
        if figure is not None and figure.band is not None and is_rise:
            self._rises.show_rises(found.rises, figure.band, unit)
        if figure is not None and drawn:
            said = f"{behind_count(figure)}: {'; '.join(mark.said for mark in drawn)}"
            self._picture.show_marks(drawn, scale(figure, drawn, Against(kind), unit, today), said)
        self._more.setVisible(bool(drawn) or kind == _RISES)
        rows = self._rows(figure, found, today) if figure is not None else []
        self._firings.show_rows(rows)
        for part in (self._firings, self._open):
            part.setVisible(bool(rows))

    def _pictures(self) -> dict[str, WaysOut]:
        """The one that is shown."""
        return {"Firings": self._picture} if self._picture.isVisibleTo(self) else {"Rises": self._rises}

    def _firings_as_table(self) -> str:
        figure = self._known.found.figure(self._key) or next(iter(self._known.found.figures), None)
        today = local_day(self._desk.clock(), self._desk.offset_minutes)
        rows = self._rows(figure, self._known.found, today) if figure is not None else []
        return cells_values(_HEADS, (row.cells for row in rows))

    def _rows(self, figure: Figure, found: Abilities, today: date) -> list[TableRow]:
        """The firings, the latest first."""
        return [
            TableRow(
                key=f"{one.session}:{place}",
                cells=shown_cells(figure, one, found.outdoors.get(one.session), self._desk.unit, today),
            )
            for place, one in enumerate(reversed(figure.shown))
        ]

    def _spot(self, figure: Figure) -> str:
        return spot_label(self._desk.stove, figure.spot).removeprefix("top ") if figure.spot else ""


def _topped(inside: QWidget) -> QWidget:
    """Rows from the top on, whatever room there is below."""
    made = QWidget()
    column = QVBoxLayout(made)
    column.setContentsMargins(0, 0, 0, 0)
    column.addWidget(inside)
    column.addStretch(1)
    return made
