"""A cook adds and changes tasks, foods and words on the tab Tasks and foods, by keys and buttons."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QLabel, QLineEdit, QPushButton

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.gui.plan.page import PlanPage
from cookstove_gui.gui.widgets.row_table import RowTable
from cookstove_gui.resource_files import own_words, use_own_tables
from cookstove_gui.units import kelvin
from tests.gui.hands import control, press, push, seen
from tests.gui.hands import rows as shown_rows
from tests.gui.pages import held_desk, shown

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]


@pytest.fixture
def place(tmp_path):
    use_own_tables(tmp_path)
    return tmp_path


@pytest.fixture
def desk():
    return held_desk()


@pytest.fixture
def page(qtbot, desk, place):
    made, _ = shown(qtbot, desk, PlanPage)
    push(made, "part_own")
    return made


def fill(page, **said: str) -> None:
    for name, text in said.items():
        control(page, f"own_{name}", QLineEdit).setText(text)


def marked(page, sort: str, key: str) -> RowTable:
    table = control(page, f"own_{sort}", RowTable)
    table.choose(key)
    table.setFocus()
    return table


def names(page, sort: str) -> list[str]:
    model = control(page, f"own_{sort}", RowTable).model()
    return [model.index(row, 0).data() for row in range(model.rowCount())]


def test_a_new_task_is_kept_listed_and_offered_for_a_pot(page):
    push(page, "own_new")
    fill(page, name="render lard", band="240-300", minutes="90")
    push(page, "own_keep")
    assert names(page, "tasks")[-1] == "render lard (own)"
    assert control(page, "own_tasks", RowTable).key == "render_lard"
    assert "240–300 °F" in shown_rows(page, "own_tasks")[-1], "as every heat on a page"
    assert task_of("render_lard").minutes == 90.0


def test_a_new_food_is_offered_for_the_oven_without_another_start(qtbot, desk, page):
    push(page, "own_sort_bakes")
    marked(page, "bakes", "bread_loaf")
    push(page, "own_copy")
    assert control(page, "own_name", QLineEdit).text() == "loaf of bread 2"
    fill(page, name="rye loaf")
    push(page, "own_keep")
    assert bake_of("rye_loaf").name == "rye loaf"
    push(page, "part_bake")
    what = control(page, "bake_what", QComboBox)
    qtbot.waitUntil(lambda: what.findData("rye_loaf") >= 0)


def test_enter_changes_the_marked_one_and_escape_leaves_the_form(qtbot, page):
    table = marked(page, "tasks", "simmer")
    press(page, Qt.Key.Key_Return)
    assert seen(page, "own_title") == "Simmer, lid on"
    fill(page, band="225-265")
    push(page, "own_keep")
    assert table.isVisible()
    assert task_of("simmer").source.startswith("common practice")
    assert "simmer, lid on (own)" in names(page, "tasks")


def test_what_is_typed_and_not_kept_waits_in_the_form(page):
    marked(page, "tasks", "simmer")
    push(page, "own_change")
    fill(page, band="225-265")
    press(page, Qt.Key.Key_Escape)
    assert control(page, "own_tasks", RowTable).isVisible()
    assert task_of("simmer").name == "simmer, lid on"
    push(page, "own_change")
    assert control(page, "own_band", QLineEdit).text() == "225-265"
    assert "not kept yet" in seen(page, "own_told")
    push(page, "own_undo")
    assert control(page, "own_band", QLineEdit).text() == "220-260"
    assert control(page, "own_told", QLabel).isHidden()


def test_a_slip_is_explained_and_what_was_typed_stays(page):
    push(page, "own_new")
    fill(page, name="render lard", band="hot", minutes="90")
    push(page, "own_keep")
    assert "isn't a range of heat" in seen(page, "own_problem")
    assert control(page, "own_band", QLineEdit).text() == "hot"
    assert control(page, "own_minutes", QLineEdit).text() == "90"


def test_words_are_changed_and_forgotten(page):
    push(page, "own_sort_words")
    assert not control(page, "own_new", QPushButton).isVisible()
    marked(page, "words", "bands.bread.ready")
    push(page, "own_change")
    fill(page, words="In they go.")
    push(page, "own_keep")
    assert own_words("bands", "bread", "ready") == "In they go."
    push(page, "own_forget")
    assert own_words("bands", "bread", "ready") == "Put the loaves in."
    push(page, "own_forget")
    assert "only your own" in seen(page, "own_list_problem")


def test_a_bad_file_is_told_on_the_tab_and_the_usual_ones_are_there(qtbot, desk, place):
    (place / "tasks.toml").write_text("[[task", encoding="utf-8")
    use_own_tables(place)
    made, _ = shown(qtbot, desk, PlanPage)
    push(made, "part_own")
    assert "Your own tasks.toml" in seen(made, "own_list_problem")
    assert "bread" in names(made, "tasks")


def test_the_list_and_the_open_form_follow_the_unit(qtbot, desk, page):
    marked(page, "tasks", "bread")
    push(page, "own_change")
    desk.set_unit("C")
    qtbot.waitUntil(lambda: control(page, "own_band", QLineEdit).text() == "185-218")


def test_what_is_typed_goes_on_to_mean_what_it_meant_when_the_unit_changes(qtbot, desk, page):
    push(page, "own_new")
    fill(page, name="render lard", band="240-300", minutes="90")
    desk.set_unit("C")
    qtbot.waitUntil(lambda: "not kept yet" in control(page, "own_told", QLabel).text())
    push(page, "own_keep")
    assert task_of("render_lard").low == pytest.approx(kelvin(240.0, "F"))


def test_canning_times_are_there_to_read_with_who_decides(page):
    push(page, "own_sort_canning")
    assert not control(page, "own_change", QPushButton).isVisible()
    assert "extension office" in seen(page, "own_list_told")
    assert "peaches" in names(page, "canning")
    control(page, "own_canning", RowTable).setFocus()
    press(page, Qt.Key.Key_Return)
    assert control(page, "own_canning", RowTable).isVisible()
