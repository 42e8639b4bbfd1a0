"""Several pots: each gets a spot of its own, keeps it, and is moved only for a stated gain."""

from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox, QLabel, QPushButton

from cookstove_gui.cooking.fit.fit import FitState, SpotFit, TaskFit
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.desk import Desk
from cookstove_gui.gui.plan.page import PlanPage
from cookstove_gui.gui.plan.part import PlanPart
from cookstove_gui.gui.plan.pot_rows import PotRows
from cookstove_gui.gui.plan.pots_on_top import PotsOnTop
from tests.gui.clipping import settle as laid_out
from tests.gui.hands import control, push, seen
from tests.gui.pages import NOW, held_desk, keep_session, shown
from tests.once import stood

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]


def fit(key: str, chances: dict[str, float], in_min: float | None = 0.0) -> TaskFit:
    task = task_of(key)
    assert task is not None
    spots = tuple(
        SpotFit(spot=spot, chance_now=chance, in_min=in_min, chance_then=max(chance, 0.8 if in_min else 0.0))
        for spot, chance in sorted(chances.items(), key=lambda pair: -pair[1])
    )
    return TaskFit(task=task, state=FitState.NOW if in_min is not None else FitState.NOT, spots=spots)


FITS = (
    fit("fry_eggs", {"top_front_left": 0.9, "top_front_right": 0.8}),
    fit("fry_bacon", {"top_front_left": 0.85, "top_front_right": 0.1}),
    fit("simmer", {"top_front_left": 0.0, "top_front_right": 0.0}, in_min=25.0),
    fit("bread", {"oven_centre": 0.7}),
    fit("boil", {"top_front_left": 0.9, "top_front_right": 0.0}),
    fit("sear", {"top_front_left": 0.1, "top_front_right": 0.0}, in_min=None),
)
TURNED = (fit("fry_eggs", {"top_front_right": 0.9, "top_front_left": 0.6}), *FITS[1:])


@pytest.fixture
def desk(monkeypatch: pytest.MonkeyPatch) -> Desk:
    """A desk whose tasks fit as said here, whatever the pots draw from the cooktop."""
    monkeypatch.setattr("cookstove_gui.desk.plan.pots.fits_together", lambda standing, _stove, _pots: standing.fits)
    monkeypatch.setattr("cookstove_gui.desk.plan.pots.oven_cost", lambda _standing, _stove, pots: 2.5 * len(pots))
    made = held_desk()
    made.open_session(keep_session(made, "Today", NOW - timedelta(minutes=95)))
    made.show(replace(stood(made.inputs()), fits=FITS))
    return made


@pytest.fixture
def page(qtbot, desk):
    made, _ = shown(qtbot, desk, PlanPage)
    push(made, "part_pots")
    return made


def choose_pots(page, *keys: str) -> None:
    for key in keys:
        box = control(page, "pots_add", QComboBox)
        box.setCurrentIndex(box.findData(key))
        box.activated.emit(box.currentIndex())


def put_on(qtbot, page, *keys: str) -> None:
    """Put a pot on the stove for each task."""
    choose_pots(page, *keys)
    part = control(page, "plan_pots", PlanPart)
    qtbot.waitUntil(lambda: len(table(page).pots) == len(part.kept.pots), timeout=10000)  # the answer to the last one
    settle(qtbot, page)


def settle(qtbot, page) -> None:
    part = control(page, "plan_pots", PlanPart)
    qtbot.waitUntil(lambda: not part.is_busy, timeout=10000)


def answers(page) -> dict[str, tuple[str, str]]:
    return {pot.name.lower(): (pot.line.where, pot.line.chance) for pot in table(page).pots}


def table(page) -> PotRows:
    return control(page, "pots_table", PotRows)


def headline(page) -> str:
    return control(page, "plan_pots_headline", QLabel).accessibleName()


def test_the_greedy_place_gives_way_to_the_better_whole(qtbot, page):
    put_on(qtbot, page, "fry_eggs", "fry_bacon")
    assert seen(page, "plan_pots_headline") == "Both have a place now."
    found = answers(page)
    assert found["fry bacon"] == ("front left, for long", "8 in 10")
    assert found["fry eggs"] == ("front right, for long", "8 in 10")


def test_a_pot_without_a_place_is_told_when_it_will_have_one(qtbot, page):
    put_on(qtbot, page, "fry_eggs", "simmer", "bread")
    assert headline(page) == "2 of 3 have a place now; “simmer, lid on” fits from 10:25."
    found = answers(page)
    assert found["simmer, lid on"] == ("front left, from 10:25", "then 8 in 10")
    assert found["bread"] == ("oven, for long", "7 in 10")


def test_a_place_that_hardly_serves_is_no_place(qtbot, page):
    put_on(qtbot, page, "sear", "fry_eggs")
    sear = task_of("sear")
    assert sear is not None
    assert answers(page)[sear.name] == ("nothing on the cooktop is hot enough", "no place")
    assert headline(page) == f"1 of 2 has a place now; “{sear.name}” has no place."


def test_a_late_answer_to_an_older_question_takes_no_pot_off(qtbot, page):
    part = control(page, "plan_pots", PlanPart)
    settle(qtbot, page)
    older = part._answer_to(part.inputs())
    choose_pots(page, "fry_eggs", "boil")
    part._take(older)  # as on a busy machine, where any answer is better than none for long
    assert [pot.task for pot in part.kept.pots] == ["fry_eggs", "boil"]


def test_a_pot_whose_spot_another_needs_more_is_told_so(qtbot, page):
    put_on(qtbot, page, "fry_bacon", "boil")
    assert answers(page) == {
        "fry bacon": ("its spots are taken", "no place"),
        "boil": ("front left, for long", "9 in 10"),
    }


def test_without_a_pot_it_asks_for_one(qtbot, page):
    qtbot.waitUntil(lambda: "Choose what" in seen(page, "plan_pots_headline"), timeout=10000)
    put_on(qtbot, page, "fry_eggs")
    press(page, Qt.Key.Key_Delete)
    qtbot.waitUntil(lambda: "Choose what" in seen(page, "plan_pots_headline"), timeout=10000)


def press(page, key: Qt.Key) -> None:
    row = control(page, f"pots_row_{table(page).key}", QPushButton)
    row.setFocus()
    QTest.keyClick(row, key)


def test_the_places_are_kept_over_a_restart(qtbot, page, desk):
    put_on(qtbot, page, "fry_eggs", "fry_eggs", "bread")
    before = [(pot.name, pot.place) for pot in table(page).pots]
    desk.show(replace(desk.standing, fits=TURNED, serial=desk.inputs().serial))
    again, _ = shown(qtbot, desk, PlanPage)
    push(again, "part_pots")
    qtbot.waitUntil(lambda: len(table(again).pots) == 3, timeout=10000)
    assert [(pot.name, pot.place) for pot in table(again).pots] == before


def test_a_worse_place_is_left_after_a_reading_and_the_cook_says_when(qtbot, page, desk):
    put_on(qtbot, page, "fry_eggs")
    desk.read("400", spot="oven_centre")
    now = replace(desk.standing, fits=TURNED, rows=desk.entries, serial=desk.inputs().serial)
    desk.show(now)
    qtbot.waitUntil(lambda: "Move “fry eggs” to the front right now" in headline(page), timeout=10000)
    assert "3 in 10 more chance" in headline(page)
    assert control(page, "pots_moved", QPushButton).text() == "“fry eggs” is moved"
    push(page, "pots_moved")
    qtbot.waitUntil(lambda: answers(page) == {"fry eggs": ("front right, for long", "9 in 10")}, timeout=10000)
    assert not control(page, "pots_moved", QPushButton).isVisibleTo(page)


def test_the_cook_gives_a_pot_another_spot(qtbot, page):
    put_on(qtbot, page, "fry_eggs")
    press(page, Qt.Key.Key_Right)
    qtbot.waitUntil(lambda: answers(page) == {"fry eggs": ("front right, your choice", "8 in 10")}, timeout=10000)


def test_the_cooktop_is_drawn_with_its_pots_by_day_and_by_night(qtbot, page):
    put_on(qtbot, page, "fry_eggs", "fry_bacon", "sear")
    drawing = control(page, "pots_on_top", PotsOnTop)
    assert not drawing.grab().toImage().isNull()
    pots = {name: drawing.patch(name).face.pot for name in ("top_front_left", "top_front_right", "top_back_middle")}
    assert {pot.name for pot in pots.values() if pot} == {"fry eggs", "fry bacon"}
    assert all(pot.lines == ("for long", "8 in 10") and not pot.is_later for pot in pots.values() if pot)
    free = drawing.patch("top_back_middle")
    assert free.face.captions == ("free",)
    assert free.accessibleDescription() == "free"


def test_a_pot_that_has_to_wait_is_drawn_dashed_with_its_clock(qtbot, page):
    put_on(qtbot, page, "simmer")
    waiting = control(page, "pots_on_top", PotsOnTop).patch("top_front_left")
    assert waiting.face.pot is not None
    assert (waiting.face.pot.name, waiting.face.pot.lines, waiting.face.pot.is_later) == (
        "simmer, lid on", ("from 10:25", "then 8 in 10"), True,
    )  # fmt: skip
    assert waiting.accessibleDescription() == "simmer, lid on, from 10:25, then 8 in 10"


def test_a_press_on_a_pot_marks_its_row(qtbot, page):
    put_on(qtbot, page, "fry_eggs", "fry_bacon")
    drawing = control(page, "pots_on_top", PotsOnTop)
    for name in ("top_front_left", "top_front_right"):
        QTest.mouseClick(drawing.patch(name), Qt.MouseButton.LeftButton)
        pot = drawing.patch(name).face.pot
        assert pot is not None
        assert table(page).pots[int(table(page).key)].name.lower() == pot.name


def test_in_a_narrow_window_plates_are_whole_and_not_drawn_taller_than_wide(qtbot, look):
    look.set_text_size(1.5)
    made, _ = shown(qtbot, held_desk(), PlanPage)
    made.resize(1024, 590)
    push(made, "part_pots")
    laid_out()
    drawing = control(made, "pots_on_top", PotsOnTop)
    high, wide = drawing.height(), drawing.width()
    lowest = max(drawing.drawn.places[name].words.bottom for name in drawing.drawn.places)
    look.set_text_size(1.0)
    assert high <= 0.62 * wide + 1
    assert 0.6 * high < lowest < high


def test_no_pot_is_placed_before_the_first_fires(qtbot):
    desk = held_desk()
    desk.save_stove(replace(desk.stove, is_new=True))
    made, _ = shown(qtbot, desk, PlanPage)
    push(made, "part_pots")
    assert seen(made, "pots_first_fires") != ""
    assert answers(made) == {}


def test_a_pan_is_drawn_with_its_handle_and_a_pot_with_ears(qtbot, page):
    put_on(qtbot, page, "fry_eggs", "boil")
    drawing = control(page, "pots_on_top", PotsOnTop)
    pots = [drawing.patch(name).face.pot for name in ("top_front_left", "top_front_right")]
    assert {pot.name: pot.has_handle for pot in pots if pot} == {"fry eggs": True, "boil": False}


def test_the_key_beside_a_row_takes_that_pot_off(qtbot, page):
    put_on(qtbot, page, "fry_eggs", "fry_bacon")
    push(page, "pots_off_1")
    settle(qtbot, page)
    assert list(answers(page)) == ["fry eggs"]


def test_up_and_down_mark_a_row(qtbot, page):
    put_on(qtbot, page, "fry_eggs", "fry_bacon")
    assert table(page).key == "0"
    press(page, Qt.Key.Key_Down)
    assert table(page).key == "1"
