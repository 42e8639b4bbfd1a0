"""The words on the hills of first fires stand clear of limits and of what a fire is likely to do."""

from types import SimpleNamespace

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPixmap, QPolygonF
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.my_stove import fire_hills
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.units import kelvin

pytestmark = pytest.mark.gui
STAGE = SimpleNamespace(top_at_most=kelvin(640.0, "F"), top_reaches=kelvin(430.0, "F"))


@pytest.fixture
def drawn(look: Look, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch):
    """A drawing, and where its words come to stand."""
    written: dict[str, tuple[QRectF, int]] = {}

    def write(_painter, box, words, _ink, *, side, **_how) -> None:
        written[words] = (box, side)

    monkeypatch.setattr(fire_hills, "draw_words", write)
    paper = QPixmap(1000, 300)
    painter = QPainter(paper)
    made = fire_hills._Drawing(painter, look, "F", QRectF(0, 0, 1000, 300))
    made._stages = (STAGE,)
    yield made, written
    painter.end()


@pytest.mark.parametrize("hottest", [622.0, 636.0, 639.9])
def test_the_hottest_just_under_a_limit_is_written_below_it(drawn, hottest: float) -> None:
    made, written = drawn
    hill = SimpleNamespace(place=0, hottest_spot="top_front_middle", hottest=kelvin(hottest, "F"), missing=())
    peak = QPointF(400, made._level(hill.hottest))
    edge = [QPointF(100, 290), peak, QPointF(500, 290)]
    made._name_peak(hill, peak, edge)
    ((box, _),) = written.values()
    assert box.top() > made._level(STAGE.top_at_most)
    assert box.right() <= 400


def test_what_is_to_be_reached_is_named_where_neither_hill_nor_future_is(drawn) -> None:
    made, written = drawn
    for taken in (QRectF(700, 0, 300, 300), QRectF(0, 0, 600, 300), QRectF(0, 0, 1000, made._level(STAGE.top_reaches))):
        made._areas = [QPolygonF(taken)]
        made._draw_limits(STAGE, 0.0, 1000.0, done=False)
        box, _ = written["at least 430"]
        assert not box.intersects(taken)
    made._areas = []
    made._draw_limits(STAGE, 0.0, 1000.0, done=False)
    assert written["at least 430"][0].right() == 1000.0


@pytest.mark.parametrize(
    ("left", "plate", "said", "at"),
    [
        (0, 400, "Tue 16 December", 0),
        (360, 400, "Tue 16 December", None),
        (860, 880, "16 Dec", None),
        (20, 100, "16 Dec", 20),
    ],
)
def test_a_day_stands_whole_before_or_behind_the_clock_of_now(drawn, left, plate, said, at) -> None:
    made, _ = drawn
    box = QRectF(plate, 0, 60 if at != 20 else 890, 24)
    found, place = made._beside_plate(("Tue 16 December", "16 December", "16 Dec"), left, box)
    assert found == said
    assert place == (at if at is not None else box.right() + px(6))
