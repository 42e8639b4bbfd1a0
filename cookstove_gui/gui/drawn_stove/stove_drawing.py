"""The cook's own stove as it is now: every spot with its heat, what is lit, what is worth reading, how it is set."""

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from cookstove_gui.advice import advise
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.desk import Changed
from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.desk.cook.stove_set import stove_set
from cookstove_gui.desk.cook.task_places import task_places
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove.face import Face
from cookstove_gui.gui.drawn_stove.heat_face import heat_face, task_face
from cookstove_gui.gui.drawn_stove.iron import Settings
from cookstove_gui.gui.drawn_stove.legend import Legend
from cookstove_gui.gui.drawn_stove.stove_view import StoveView
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.phrases.entries import opening_words
from cookstove_gui.phrases.spots import heat_said, signs_said
from cookstove_gui.stove.drawn.heat_colours import HOTTEST_AT_LEAST, heat_colour
from cookstove_gui.stove.stove import SpotKind

_LEGEND = (("warm", "keep_warm"), ("simmer", "simmer"), ("boil", "boil"), ("sear", "sear"))  # word, task


class StoveDrawing(StoveView):
    """The drawing on the Cook page; a press asks for a spot's number, an arrow key moves the light."""

    spot_chosen = Signal(str)

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, "stove_drawing", parent)
        self._desk = link.desk
        self._task, self._pan_spot = "", ""
        self.setAccessibleName("Drawing of the stove")
        self.pressed.connect(self.spot_chosen)
        self.stepped_to.connect(lambda name: self._desk.light(self._desk.walk.at(name)))
        link.changed.connect(self._show)
        self._show(Changed(stove=True))

    def show_task(self, key: str, pan_spot: str = "") -> None:
        """Show which spots fit a task, by its key: the others fall back to iron; empty for every heat again.

        `pan_spot` is where a pan may go now, which is lit in the place of the next spot to read.
        """
        if (key, pan_spot) != (self._task, self._pan_spot):
            is_other = key != self._task
            self._task, self._pan_spot = key, pan_spot
            self._show_heats(slowly=is_other)

    def _show(self, changed: Changed) -> None:
        if changed.stove:
            self.show_stove(self._desk.stove)
        if any((changed.stove, changed.log, changed.standing, changed.settings, changed.session, changed.walk)):
            self._show_heats()
            self._show_settings()

    def _show_heats(self, *, slowly: bool = False) -> None:
        desk, standing = self._desk, self._desk.standing
        heats = spot_heats(desk)
        hottest = max([HOTTEST_AT_LEAST, *(heat.kelvin for heat in heats.values() if heat.kelvin is not None)])
        wanted = advise(standing).reading if standing is not None and desk.is_live else None
        places = task_places(desk, self._task) if self._task else {}
        faces: dict[str, Face] = {}
        for spot in desk.stove.spots:
            heat = heats[spot.name]
            is_lit = spot.name == (self._pan_spot or desk.walk.spot.name)
            is_worth = wanted is not None and wanted.spot == spot.name
            face, place = heat_face(spot, heat, desk.unit, hottest), places.get(spot.name)
            if place is not None:
                face = task_face(face, place.words, will_do=place.will_do)
            faces[spot.name] = replace(face, is_lit=is_lit, is_worth_reading=is_worth and not places)
            signs = signs_said(heat, desk.unit, is_lit=is_lit, is_worth_reading=is_worth)
            said = ", ".join(part for part in (place.words if place else "", signs) if part)
            self.patch(spot.name).say(heat_said(spot, heat, desk.unit), said)
        just_read = frozenset(
            name for name, face in faces.items() if face.is_sure and self.patch(name).face.number != face.number
        )
        self.show_faces(faces, slowly=frozenset(faces) if slowly else just_read)
        self.show_legend(_legend(hottest))

    def _show_settings(self) -> None:
        has_glass = bool(self._desk.stove.spots_of(SpotKind.GLASS))
        found = stove_set(self._desk)
        self.show_settings(
            Settings(
                air=found.air,
                air_words="air" if found.air is None else f"air {opening_words(found.air)}",
                bypass=found.bypass,
                bypass_words="" if found.bypass is None else f"bypass {opening_words(found.bypass)}",
                door_is_open=found.door_is_open,
                firebox_words="" if has_glass else "firebox",
            )
        )


def _legend(hottest: float) -> Legend:
    """Each word in the middle of its band, but a boil where it begins: what is hotter boils harder."""
    marks = []
    for word, key in _LEGEND:
        task = task_of(key)
        if task is not None:
            marks.append((word, heat_colour(task.low if key == "boil" else task.middle, hottest)))
    return Legend(tuple(marks))
