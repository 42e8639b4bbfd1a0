"""Beside the drawing: what a spot shows, which thermometer reads it, and the photo of the stove."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QComboBox, QFileDialog, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.checks import add_instrument
from cookstove_gui.desk.my_stove.photo import stove_photo
from cookstove_gui.gui.my_stove.draw.part import DrawPart
from cookstove_gui.gui.my_stove.draw.spot_rings import SpotRings
from cookstove_gui.logbook.logbook import Logbook
from tests.gui.hands import control, push, seen, type_in
from tests.gui.pages import NOW, held_desk, keep_session, shown
from tests.held_clock import HeldClock

pytestmark = pytest.mark.gui


def _choose(part: QWidget, name: str, key: str) -> None:
    box = control(part, name, QComboBox)
    assert box.findData(key) >= 0, [box.itemData(place) for place in range(box.count())]
    box.setCurrentIndex(box.findData(key))
    box.activated.emit(box.currentIndex())


def test_a_spot_has_a_surface_of_its_own_until_the_usual_is_chosen_again(qtbot):
    desk = held_desk()
    part, _ = shown(qtbot, desk, DrawPart, (1040, 720))
    part.select("top_front_left")
    assert control(part, "spot_surface", QComboBox).currentText() == "the top’s own"
    _choose(part, "spot_surface", "enamel")
    assert desk.stove.spot("top_front_left").surface == "enamel"
    assert desk.stove.spot("top_front_right").surface == ""
    part.show_stove()
    push(part, "stove_take_back")
    assert desk.stove.spot("top_front_left").surface == ""


def test_a_spot_is_read_with_a_thermometer_of_its_own(qtbot):
    desk = held_desk()
    part, _ = shown(qtbot, desk, DrawPart, (1040, 720))
    part.select("oven_rear")
    assert not control(part, "spot_instrument", QComboBox).isVisibleTo(part)  # none is described yet
    add_instrument(desk, "long probe", "probe")
    part.show_stove()
    _choose(part, "spot_instrument", "long probe")
    assert desk.stove.spot("oven_rear").instrument == "long probe"
    part.select("room")
    assert not control(part, "spot_surface", QComboBox).isVisibleTo(part)  # air has none


def test_a_photo_stands_beside_the_drawing_and_goes_with_the_stoves_name(qtbot, tmp_path: Path, monkeypatch):
    logbook = Logbook.open(tmp_path / "logbook.sqlite")
    desk = Desk(logbook, HeldClock(datetime(2026, 3, 14, 15, 0, tzinfo=UTC)))
    picture = QImage(40, 30, QImage.Format.Format_RGB32)
    picture.fill(0x884422)
    assert picture.save(str(tmp_path / "kitchen.png"))
    part, _ = shown(qtbot, desk, DrawPart, (1040, 720))
    shown_picture = control(part, "stove_photo_picture", QWidget)
    assert not shown_picture.isVisibleTo(part)
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_args: (str(tmp_path / "kitchen.png"), ""))
    push(part, "stove_photo_choose")
    kept = stove_photo(desk)
    assert kept is not None
    assert kept.parent == tmp_path / "photos" / "stoves"
    assert shown_picture.isVisibleTo(part)
    assert not shown_picture.grab().isNull()
    type_in(part, "stove_name", "Brown stove")
    assert stove_photo(desk) == kept
    push(part, "stove_photo_drop")
    assert not kept.exists()
    assert (tmp_path / "kitchen.png").exists()
    assert not shown_picture.isVisibleTo(part)
    logbook.close()


def test_a_file_that_is_no_picture_is_refused(qtbot, tmp_path: Path, monkeypatch):
    logbook = Logbook.open(tmp_path / "logbook.sqlite")
    desk = Desk(logbook, HeldClock(datetime(2026, 3, 14, 15, 0, tzinfo=UTC)))
    (tmp_path / "notes.txt").write_text("no picture")
    part, _ = shown(qtbot, desk, DrawPart, (1040, 720))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_args: (str(tmp_path / "notes.txt"), ""))
    push(part, "stove_photo_choose")
    assert "isn't a picture" in seen(part, "stove_photo_problem")
    assert stove_photo(desk) is None
    logbook.close()


def test_the_readings_of_a_spot_stand_below_it(qtbot):
    desk = held_desk()
    keep_session(desk, "Sunday", NOW - timedelta(days=1))
    part, _ = shown(qtbot, desk, DrawPart, (1040, 720))
    part.select("top_front_left")
    rings = control(part, "spot_rings", SpotRings)
    qtbot.waitUntil(lambda: bool(rings.rings), timeout=20000)
    assert len(rings.rings) == 7
    assert seen(part, "spot_usual").startswith("usually ")
    assert "over the top’s mean" in seen(part, "spot_usual")
    assert not rings.grab().isNull()
    part.select("flue")
    assert seen(part, "spot_usual") == ""
    assert not rings.isVisibleTo(part)
