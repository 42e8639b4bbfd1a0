"""What is in the oven is written down on the page Plan, and is there again after a restart."""

from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtWidgets import QComboBox, QLabel, QLineEdit, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.gui.drawn_stove.lettering import advance
from cookstove_gui.gui.plan import bake_picture
from cookstove_gui.gui.plan.bake import BakePart
from cookstove_gui.gui.plan.bake_foot import BakeFoot
from cookstove_gui.gui.plan.bake_picture import BakePicture, BakeWords
from cookstove_gui.gui.plan.lane import Lane
from cookstove_gui.gui.plan.page import PlanPage
from cookstove_gui.stove.entries import Kind
from tests.gui.hands import control, push, seen, type_in
from tests.gui.pages import NOW, held_desk, keep_session, shown
from tests.once import stood

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]


@pytest.fixture
def desk() -> Desk:
    made = held_desk()
    made.open_session(keep_session(made, "Today", NOW - timedelta(minutes=95)))
    stand(made)
    return made


def stand(desk: Desk) -> None:
    desk.show(stood(desk.inputs()))


def settle(qtbot, page: QWidget) -> None:
    part = control(page, "plan_bake", BakePart)
    qtbot.waitUntil(lambda: not part.is_busy, timeout=30000)


def put_a_loaf_in(qtbot, desk: Desk, page: QWidget, when: str = "-20") -> None:
    type_in(page, "bake_when", when)
    push(page, "bake_put_in")
    stand(desk)
    qtbot.waitUntil(lambda: control(page, "bake_inside", QWidget).isVisibleTo(page), timeout=5000)
    settle(qtbot, page)


def written(desk: Desk) -> list[tuple[Kind, str, str, str]]:
    kinds = (Kind.OVEN_IN, Kind.PROBE, Kind.TURNED, Kind.DUE, Kind.OVEN_OUT)
    return [(row.kind, row.value, row.unit, row.note) for row in desk.rows if row.kind in kinds]


def test_a_loaf_that_went_in_is_in_the_log_and_the_page_asks_for_its_probe(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    put_a_loaf_in(qtbot, desk, page)
    assert written(desk) == [(Kind.OVEN_IN, "", "", "loaf of bread")]
    assert desk.rows[-1].at == NOW - timedelta(minutes=20)
    assert control(page, "bake_what", QComboBox).currentText().startswith("loaf of bread, ")
    type_in(page, "bake_probe", "140")
    assert written(desk)[-1] == (Kind.PROBE, "140", "F", "loaf of bread")
    stand(desk)
    probes = control(page, "bake_probes", QWidget)
    qtbot.waitUntil(lambda: "140 °F" in probes.accessibleName(), timeout=5000)
    assert probes.isVisibleTo(page)


def test_what_is_not_usual_about_it_is_written_down(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    type_in(page, "bake_mass", "3.5")
    type_in(page, "bake_start", "60")
    put_a_loaf_in(qtbot, desk, page, "-5")
    assert written(desk) == [
        (Kind.OVEN_IN, "3.5", "lb", "loaf of bread"),
        (Kind.PROBE, "60", "F", "loaf of bread"),
    ]


def test_it_is_turned_looked_at_and_taken_out(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    put_a_loaf_in(qtbot, desk, page)
    push(page, "bake_turned")
    type_in(page, "bake_look", "+15")
    push(page, "bake_out")
    assert written(desk)[1:] == [
        (Kind.TURNED, "", "", "loaf of bread"),
        (Kind.DUE, "15", "min", "loaf of bread"),
        (Kind.OVEN_OUT, "", "", "loaf of bread"),
    ]
    stand(desk)
    qtbot.waitUntil(lambda: not control(page, "bake_inside", QWidget).isVisibleTo(page), timeout=5000)


def test_the_bake_that_runs_after_a_restart_is_the_one_that_ran_before(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    put_a_loaf_in(qtbot, desk, page)
    before = seen(page, "plan_bake_headline")
    again = Desk(desk.logbook, desk.clock)
    stand(again)
    reopened, _ = shown(qtbot, again, PlanPage)
    push(reopened, "part_bake")
    settle(qtbot, reopened)
    assert control(page, "plan_bake_headline", QLabel).accessibleName().startswith("The loaf of bread")
    assert seen(reopened, "plan_bake_headline") == before
    assert control(reopened, "bake_inside", QWidget).isVisibleTo(reopened)


def test_what_goes_in_later_is_not_in_yet(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    type_in(page, "bake_when", "+20")
    push(page, "bake_put_in")
    assert "still to come" in seen(page, "bake_when_problem")
    assert written(desk) == []


def test_a_probe_that_is_no_food_is_explained_beside_the_field(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    put_a_loaf_in(qtbot, desk, page)
    type_in(page, "bake_probe", "900")
    assert "not a plausible temperature for food" in seen(page, "bake_probe_problem")
    assert len(written(desk)) == 1


def test_the_bake_is_drawn_beside_its_sentence(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    put_a_loaf_in(qtbot, desk, page)
    picture = control(page, "bake_picture", BakePicture)
    assert picture.isVisibleTo(page)
    image = picture.grab().toImage()
    assert len({image.pixel(x, y) for x in range(0, image.width(), 5) for y in range(0, image.height(), 5)}) > 3


def test_no_dotted_line_runs_through_the_words_at_the_foot_of_the_bake(qtbot, desk, monkeypatch):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    put_a_loaf_in(qtbot, desk, page)
    picture = control(page, "bake_picture", BakePicture)
    words: list[tuple[float, float, float]] = []  # left, right, middle
    stems: list[tuple[float, float]] = []  # place, foot

    def wrote(painter, x, y, text, pixels, weight=400):
        if text.startswith(("in ", "turn ")):
            words.append((x, x + advance(text, pixels, weight), y))
        return advance(text, pixels, weight)

    monkeypatch.setattr(bake_picture, "write", wrote)
    monkeypatch.setattr(Lane, "stem", lambda lane, minute, _top, foot, _shade: stems.append((lane.x(minute), foot)))
    lines = picture._lines
    assert lines is not None
    likely = lines.window[1]
    assert likely is not None
    for turn, wide in ((None, 130), (likely - 10.0, 300), (likely - 10.0, 420)):
        picture.show_lines(replace(lines, turn=turn), desk.edge, BakeWords())
        picture.resize(wide, 320)
        words.clear()
        stems.clear()
        picture.grab()
        left, right, middle = words[-1]
        place, foot = stems[-1]
        assert left < place < right  # it would run through them
        assert foot < middle - 8


def test_a_probe_that_is_not_in_the_core_is_questioned(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    put_a_loaf_in(qtbot, desk, page, "-5")
    type_in(page, "bake_probe", "195")
    stand(desk)
    qtbot.waitUntil(lambda: "is it in the middle" in seen(page, "bake_core_words"), timeout=10000)


def test_the_enter_key_beside_the_probe_writes_it_down(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    put_a_loaf_in(qtbot, desk, page)
    control(page, "bake_probe", QLineEdit).setText("120")
    push(page, "bake_probe_enter")
    assert [row for row in written(desk) if row[0] is Kind.PROBE] == [(Kind.PROBE, "120", "F", "loaf of bread")]


def test_another_shape_is_another_bake(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    settle(qtbot, page)
    part = control(page, "plan_bake", BakePart)
    assert part.inputs().choice.key == "bread_loaf"
    push(page, "bake_shape_bread_round")
    settle(qtbot, page)
    assert part.inputs().choice.key == "bread_round"
    put_a_loaf_in(qtbot, desk, page)
    assert written(desk)[0] == (Kind.OVEN_IN, "", "", "round hearth loaf")
    assert page.findChild(QWidget, "bake_shape_bread_round") is None or not control(
        page, "bake_shape_bread_round", QWidget
    ).isVisibleTo(page)


def test_what_the_window_hangs_on_is_told_below_it(qtbot, desk):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    put_a_loaf_in(qtbot, desk, page)
    foot = control(page, "bake_foot", BakeFoot)
    qtbot.waitUntil(lambda: foot.isVisibleTo(page), timeout=5000)
    assert "how it takes heat" in foot.accessibleName()
    assert "Together" in foot.accessibleName()
