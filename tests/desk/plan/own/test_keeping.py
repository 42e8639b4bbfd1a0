"""What a cook adds and changes is kept in the data folder, checked before, and holds at once."""

from dataclasses import replace

import pytest
import tomlkit

from cookstove_gui.cooking.baking.catalogue import bake_of, bakes, foods
from cookstove_gui.cooking.fit.fit import fits
from cookstove_gui.cooking.fit.tasks import catalogue, task_of, usual_tasks
from cookstove_gui.cooking.own import own_sentences
from cookstove_gui.cooking.supper.dishes import Dish, Heat
from cookstove_gui.desk import Desk
from cookstove_gui.desk.plan.own.bakes import _CRUSTS
from cookstove_gui.desk.plan.own.keeping import SORTS, forget, keep, sort_of
from cookstove_gui.desk.plan.own.sorts import Filled
from cookstove_gui.desk.plan.own.words import moments
from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.resource_files import own_words, table, use_own_tables
from cookstove_gui.units import kelvin


@pytest.fixture
def desk(tmp_path):
    use_own_tables(tmp_path / "data")
    return Desk(Logbook.in_memory())


def filled(desk, sort: str, key: str = "", like: str = "", **said: str) -> Filled:
    """The form of one as it is, with some other words."""
    return Filled(said=sort_of(sort, desk.unit).words(key or like) | said, key=key, like=like)


def kept(desk, sort: str, key: str = "", like: str = "", **said: str) -> str:
    return keep(desk, sort_of(sort, desk.unit), filled(desk, sort, key, like, **said))


LARD = {"name": "render lard", "band": "240-300", "minutes": "90"}


def everything() -> tuple[object, ...]:
    """All that the cook may change, with every number."""
    made = [(food.name, food.composition, food.done, food.past_best) for food in foods()]
    return catalogue(), bakes(), made, [own_words(*key.split(".")) for key, _ in moments()]


@pytest.mark.parametrize("unit", ["F", "C"])
@pytest.mark.parametrize("sort", [sort.key for sort in SORTS if sort.changes])
def test_every_form_kept_as_it_is_changes_nothing(desk, sort, unit):
    desk.set_unit(unit)
    before = everything()
    lines = [line for line in sort_of(sort, desk.unit).lines() if line.cells[-1] != "–"]
    for line in lines[:: max(len(lines) // 8, 1)]:
        kept(desk, sort, line.key)
    assert everything() == before
    assert own_sentences() == ()


def test_a_new_task_is_offered_placed_and_read_again_at_the_next_start(desk, stands, tmp_path):
    key = kept(desk, "tasks", **LARD)
    assert key == "render_lard"
    stove, standing = stands
    (found,) = [fit for fit in fits(standing.projection, stove) if fit.task.key == key]
    assert found.spots
    use_own_tables(None)
    assert task_of(key) is None
    use_own_tables(tmp_path / "data")
    assert task_of(key).minutes == 90.0


def test_a_changed_band_is_the_heat_that_is_wanted_at_once(desk):
    told = []
    desk.subscribe(told.append)
    kept(desk, "tasks", "bread", band="375-400")
    assert desk.band.high == pytest.approx(kelvin(400.0, "F"))
    assert told[-1].settings
    assert told[-1].band


def test_degrees_lengths_and_differences_are_typed_in_the_unit_on_the_screen(desk):
    desk.set_unit("C")
    key = kept(desk, "tasks", name="render lard", band="120-150", minutes="90", evenness="50")
    assert task_of(key).low == pytest.approx(kelvin(120.0, "C"))
    assert task_of(key).evenness == pytest.approx(50.0)
    loaf = kept(desk, "bakes", like="bread_loaf", name="long tin", sizes="9 x 9 x 30", start="20")
    assert bake_of(loaf).sizes == pytest.approx((0.09, 0.09, 0.30))
    desk.set_unit("F")
    assert sort_of("bakes", desk.unit).words(loaf)["sizes"] == "3.5 x 3.5 x 11.8"


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ({"name": " "}, "Give the task a name"),
        ({"name": "simmer, lid on"}, "There is a task “simmer, lid on” already"),
        ({"band": "hot"}, "isn't a range of heat"),
        ({"band": "300-240"}, "isn't from a lower to a higher heat"),
        ({"minutes": "long"}, "isn't a number; say for how many minutes"),
        ({"evenness": "0"}, "evenness is 0"),
        ({"never_below": "290"}, "never done below 290"),
    ],
)
def test_a_slip_is_told_and_nothing_is_kept(desk, tmp_path, said, why):
    with pytest.raises(InputProblem, match=why):
        kept(desk, "tasks", **LARD | said)
    assert not (tmp_path / "data").exists()


def test_a_copy_of_a_bake_is_one_of_its_own_kind(desk):
    key = kept(desk, "bakes", like="bread_loaf", name="rye loaf")
    made = bake_of(key)
    assert (made.kind, made.cut) == ("rye loaf", "")
    assert replace(made, key="bread_loaf", name="loaf of bread", kind="loaf of bread", cut="tin") == bake_of(
        "bread_loaf"
    )


def test_three_sizes_are_needed(desk):
    with pytest.raises(InputProblem, match="isn't three sizes"):
        kept(desk, "bakes", like="bread_loaf", name="rye loaf", sizes="4 x 4")


def test_a_food_of_its_own_can_be_chosen_for_a_bake(desk):
    kept(desk, "foods", like="white bread dough", name="rye dough", water="50", carbohydrate="37")
    key = kept(desk, "bakes", like="bread_loaf", name="rye loaf", food="rye dough")
    assert bake_of(key).composition.water == 0.5
    assert "rye dough" in [option for option, _ in sort_of("bakes", desk.unit).blanks()[2].options]


def test_a_food_whose_parts_do_not_make_a_whole_is_refused(desk):
    with pytest.raises(InputProblem, match="come to 75 % together"):
        kept(desk, "foods", like="white bread dough", name="rye dough", water="20")
    with pytest.raises(InputProblem, match="keeps its name"):
        kept(desk, "foods", "white bread dough", name="dough")


def test_words_are_said_as_the_cook_has_them_and_come_back_when_forgotten(desk):
    kept(desk, "words", "bands.bread.ready", words="In they go.")
    assert own_words("bands", "bread", "ready") == "In they go."
    forget(desk, sort_of("words", desk.unit), "bands.bread.ready")
    assert own_words("bands", "bread", "ready") == "Put the loaves in."


def test_words_have_room_and_are_not_empty(desk):
    with pytest.raises(InputProblem, match="say it in 90"):
        kept(desk, "words", "session_over", words="x" * 91)
    with pytest.raises(InputProblem, match="Type what is to be said"):
        kept(desk, "words", "session_over", words=" ")


def test_every_sentence_of_the_program_can_be_changed(desk):
    bands = table("phrases.toml")["bands"]
    of_bands = {f"bands.{name}.{key}" for name, said in bands.items() for key in said}
    alone = {key for key, said in table("phrases.toml").items() if isinstance(said, str)}
    assert alone | of_bands <= {key for key, _ in moments()}


def test_what_is_forgotten_is_as_it_was(desk):
    key = kept(desk, "tasks", **LARD)
    kept(desk, "tasks", "bread", band="375-400")
    forget(desk, sort_of("tasks", desk.unit), key)
    forget(desk, sort_of("tasks", desk.unit), "bread")
    assert catalogue() == usual_tasks()
    with pytest.raises(InputProblem, match="only your own"):
        forget(desk, sort_of("tasks", desk.unit), "bread")


def test_what_is_needed_is_not_forgotten(desk):
    oven = kept(desk, "tasks", name="rye bread heat", place="oven", band="350-400", minutes="60")
    kept(desk, "foods", like="white bread dough", name="rye dough")
    loaf = kept(desk, "bakes", like="bread_loaf", name="rye loaf", food="rye dough", task=oven)
    heat = Heat(what="bake", place=task_of(oven).place, minutes=60.0, task=oven, bake=loaf)
    desk.supper.keep_dish(Dish(key="rye", name="rye bread", parts=(heat,)))
    for sort, key, user in (
        ("tasks", oven, "rye loaf"),
        ("foods", "rye dough", "rye loaf"),
        ("bakes", loaf, "rye bread"),
    ):
        with pytest.raises(InputProblem, match=f"{user} needs it"):
            forget(desk, sort_of(sort, desk.unit), key)


def test_what_a_cook_wrote_into_the_file_stays_there(desk, tmp_path):
    place = tmp_path / "data" / "tasks.toml"
    place.parent.mkdir()
    place.write_text("# my own\n[[task]]\nkey = 'half'\nname = 'half done'\n", encoding="utf-8")
    use_own_tables(place.parent)
    kept(desk, "tasks", **LARD)
    kept(desk, "tasks", "render_lard", minutes="60")
    text = place.read_text(encoding="utf-8")
    assert text.startswith("# my own")
    assert [row["key"] for row in tomlkit.parse(text)["task"]] == ["half", "render_lard"]
    assert "“half”" in own_sentences()[0]


@pytest.mark.parametrize("content", [b"[[task", b"\xff\xfe", b"task = 3"])
def test_a_file_that_cannot_be_read_is_put_aside_and_nothing_of_it_lost(desk, tmp_path, content):
    place = tmp_path / "data" / "tasks.toml"
    place.parent.mkdir()
    place.write_bytes(content)
    use_own_tables(place.parent)
    kept(desk, "tasks", **LARD)
    assert place.with_name("tasks.toml.1").read_bytes() == content
    assert task_of("render_lard") is not None
    assert own_sentences() == ()


def test_without_a_data_folder_or_a_disk_it_is_told(desk, tmp_path):
    (tmp_path / "file").write_text("", encoding="utf-8")
    use_own_tables(tmp_path / "file" / "data")
    with pytest.raises(SurroundingsProblem, match="cannot be created"):
        kept(desk, "tasks", **LARD)
    use_own_tables(None)
    with pytest.raises(SurroundingsProblem, match="no data folder"):
        kept(desk, "tasks", **LARD)


def test_the_form_names_every_crust_and_every_shape_that_is_used(desk):
    assert list(_CRUSTS) == [row["key"] for row in table("bakes.toml")["crust"]]
    shapes = dict(next(blank.options for blank in sort_of("bakes", desk.unit).blanks() if blank.key == "shape"))
    assert {bake.form for bake in bakes()} <= set(shapes)
    assert len(foods()) == len(sort_of("foods", desk.unit).lines())


def test_published_canning_times_are_quoted_and_cannot_be_changed(desk):
    sort = sort_of("canning", desk.unit)
    rows = table("food_safety.toml")["water_bath"]["row"]
    assert [line.cells[3:] for line in sort.lines()] == [tuple(str(each) for each in row["minutes"]) for row in rows]
    assert "decides" in sort.told
    with pytest.raises(InputProblem, match="quoted as they are"):
        keep(desk, sort, Filled(said={}, key="0"))
    with pytest.raises(InputProblem, match="only your own"):
        forget(desk, sort, "0")
