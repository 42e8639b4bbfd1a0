"""The program's face answers to its weights, its figures are of one width, and without it there is another."""

import sys

import pytest
from PySide6.QtGui import QFontInfo, QFontMetricsF
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.widgets import type as face
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px, step

SENTENCE = "Shape the loaves. Bread heat between 4:26 and 4:44, likely 4:31."

pytestmark = pytest.mark.usefixtures("look")


def width(size: float, weight: int, words: str = SENTENCE) -> float:
    return QFontMetricsF(face.font(size, weight)).horizontalAdvance(words)


def test_the_programs_own_face_is_in_use(qapp: QApplication) -> None:
    assert QFontInfo(face.font()).family() == "Source Sans 3"


def test_heavier_is_wider_at_every_weight_used() -> None:
    assert width(27, 400) < width(27, 600) - 10 < width(27, 700) - 20


def test_figures_are_of_one_width() -> None:
    for weight in (400, 600, 700):
        assert len({width(30, weight, figure) for figure in "0123456789"}) == 1


def test_a_label_keeps_the_weight_of_its_role_under_the_style_sheet(qapp: QApplication) -> None:
    label = QLabel(SENTENCE)
    face.set_role(label, "next")
    label.ensurePolished()
    assert label.sizeHint().width() == pytest.approx(width(27, 600), abs=4)
    face.set_role(label, "soft")
    assert label.sizeHint().width() == pytest.approx(width(20, 400), abs=4)


def test_a_missing_face_stops_nothing(monkeypatch: pytest.MonkeyPatch, qapp: QApplication) -> None:
    monkeypatch.setitem(sys.modules, "fontpkg_source_sans_3", None)
    assert "Source Sans 3" not in face.families.__wrapped__()


def test_words_whose_role_has_changed_keep_the_new_weight_when_the_window_is_dressed_again(
    look: Look, qtbot: QtBot
) -> None:
    label = QLabel(SENTENCE)
    qtbot.addWidget(label)
    face.set_role(label, "strong")
    label.show()
    face.set_role(label, "place")
    try:
        look.set_scale(1.5)
        assert label.sizeHint().width() == pytest.approx(width(18, 400), abs=4)
        look.set_mode("night")
        assert label.sizeHint().width() == pytest.approx(width(18, 400), abs=4)
    finally:
        look.set_scale(1.0)
        look.set_mode("day")


def test_a_change_of_scale_reaches_words_already_on_the_screen(look: Look) -> None:
    look.set_scale(1.0)  # a small window may have gone before
    label = QLabel(SENTENCE)
    face.set_role(label, "next")
    before = label.sizeHint().width()
    look.set_scale(1.5)
    try:
        assert label.sizeHint().width() == pytest.approx(1.5 * before, rel=0.03)
        assert px(40) == 60
        look.set_mode("night")
        assert label.sizeHint().width() == pytest.approx(1.5 * before, rel=0.03)
    finally:
        look.set_scale(1.0)
        look.set_mode("day")
    assert label.sizeHint().width() == before


@pytest.mark.parametrize(
    ("inside", "expected"),
    [((1024, 700), 0.92), ((1280, 750), 1.0), ((1499, 1000), 1.0), ((1920, 800), 1.0),
     ((1920, 1000), 1.28), ((2560, 1440), 1.5)],
)  # fmt: skip
def test_type_goes_in_steps_with_the_window(inside: tuple[int, int], expected: float) -> None:
    assert step(*inside) == expected
