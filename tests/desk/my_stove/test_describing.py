"""A stove's description takes what its owner types, in the unit on the screen, and refuses with a sentence."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove import describing
from cookstove_gui.desk.studying import learning_is_due, study_is_due, study_reader
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import SpotKind, spot_kind_from_name, stove_with_default_spots
from cookstove_gui.study import study

NOW = datetime(2026, 3, 14, 15, 0, tzinfo=UTC)


@pytest.fixture
def desk() -> Desk:
    return Desk(Logbook.in_memory(), clock=lambda: NOW)


@pytest.mark.parametrize(
    ("unit", "typed", "metres"), [("F", "36", 0.9144), ("F", "35,5", 0.9017), ("C", "91.44", 0.9144)]
)
def test_width_by_the_international_inch(desk, unit, typed, metres):
    # The international inch is 25.4 mm exactly (agreement of 1959).
    desk.set_unit(unit)
    describing.set_size(desk, width_text=typed)
    assert desk.stove.cooktop_width == pytest.approx(metres, abs=1e-9)


@pytest.mark.parametrize("typed", ["", "wide", "1e3", "0", "900"])
def test_a_width_of_no_cooktop_is_refused(desk, typed):
    before = desk.stove
    with pytest.raises(InputProblem):
        describing.set_size(desk, width_text=typed)
    assert desk.stove == before


def test_a_width_of_no_cooktop_is_refused_with_what_is_one(desk):
    for unit, typed, sentence in (
        ("F", " 900 ", "900 in isn't a plausible width; type a number from 3.9 to 196.9."),
        ("C", "3", "3 cm isn't a plausible width; type a number from 10 to 500."),
    ):
        desk.set_unit(unit)
        with pytest.raises(InputProblem) as refused:
            describing.set_size(desk, width_text=typed)
        assert refused.value.sentence == sentence


def test_the_ends_of_what_a_cooktop_may_be_are_taken(desk):
    desk.set_unit("C")
    for typed in ("10", "500"):
        describing.set_size(desk, width_text=typed, depth_text=typed)
        assert (desk.stove.cooktop_width, desk.stove.cooktop_depth) == pytest.approx((float(typed) / 100,) * 2)


def test_width_and_depth_are_kept_apart(desk):
    before = desk.stove.cooktop_width
    describing.set_size(desk, depth_text="20")
    assert desk.stove.cooktop_depth == pytest.approx(0.508)
    assert desk.stove.cooktop_width == before
    with pytest.raises(InputProblem, match="plausible depth"):
        describing.set_size(desk, depth_text="900")


@pytest.mark.parametrize(
    ("metres", "unit", "text"),
    # The international foot is 0.3048 m exactly; small lengths have a decimal, heights none.
    [
        (0.9144, "in", "36"),
        (0.1, "cm", "10"),
        (0.1234, "cm", "12.3"),
        (1609.344, "ft", "5280"),
        (1609.344, "m", "1609"),
    ],
)
def test_lengths_are_shown_in_the_four_units(metres, unit, text):
    assert describing.length_text(metres, unit) == text


@pytest.mark.parametrize(("typed", "unit", "metres"), [("4", "in", 0.1016), ("1", "cm", 0.01), ("25", "cm", 0.25)])
def test_a_split_is_as_thick_as_typed(typed, unit, metres):
    assert describing.split_thickness(typed, unit) == pytest.approx(metres)


@pytest.mark.parametrize("typed", ["0.9", "25.1"])
def test_a_split_no_axe_makes_is_refused(typed):
    with pytest.raises(InputProblem, match="isn't a plausible split thickness"):
        describing.split_thickness(typed, "cm")


def test_the_units_go_with_the_screen(desk):
    assert (describing.short_unit(desk), describing.height_unit(desk)) == ("in", "ft")
    desk.set_unit("C")
    assert (describing.short_unit(desk), describing.height_unit(desk)) == ("cm", "m")


def test_a_shiny_cooktop_is_warned_of_and_a_dull_one_is_not(desk):
    shiny = replace(desk.stove, cooktop_surface="polished steel")
    assert "blacken or tape a spot" in describing.surface_warning(shiny)
    assert describing.surface_warning(replace(desk.stove, cooktop_surface="oxidised cast iron")) == ""


def test_a_stoves_own_word_for_its_surface_is_among_the_choices(desk):
    known = describing.surfaces(desk.stove)
    assert desk.stove.cooktop_surface in known
    assert describing.surfaces(replace(desk.stove, cooktop_surface="brass")) == ("brass", *known)


def test_length_shown_and_typed_again_is_the_same(desk):
    describing.set_size(desk, width_text="37.4")
    assert describing.length_text(desk.stove.cooktop_width, "in") == "37.4"


def test_names_of_new_spots_tell_their_kind_and_never_clash(desk):
    first = describing.add_spot(desk, "Warming shelf", SpotKind.SIDE)
    second = describing.add_spot(desk, "Grille-pain", SpotKind.TOP)
    third = describing.add_spot(desk, "grille pain", SpotKind.TOP)
    assert (first.name, second.name, third.name) == ("side_warming_shelf", "grille_pain", "grille_pain_2")


@pytest.mark.parametrize(
    ("label", "kind", "name"),
    [
        ("Floor in front", SpotKind.WALL, "floor_in_front"),
        ("Behind the pipe", SpotKind.WALL, "wall_behind_the_pipe"),
        ("Wall end", SpotKind.TOP, "top_wall_end"),
    ],
)
def test_a_spot_beside_the_stove_is_told_from_one_on_it_by_its_name_alone(desk, label, kind, name):
    spot = describing.add_spot(desk, label, kind)
    assert spot.name == name
    assert spot_kind_from_name(spot.name) is kind
    assert str(kind) in describing.kinds_to_add(stove_with_default_spots("any"))


@pytest.mark.parametrize("name", ["flue", "door_glass", "room"])
def test_a_part_that_is_read_at_one_place_is_offered_again_once_that_was_taken_off(desk, name):
    kind = desk.stove.kind_of(name)
    assert str(kind) not in describing.kinds_to_add(desk.stove)
    describing.remove_spot(desk, name)
    assert str(kind) in describing.kinds_to_add(desk.stove)
    added = describing.add_spot(desk, "mine", kind)
    assert spot_kind_from_name(added.name) is kind


def test_a_renamed_spot_keeps_its_name_in_the_log(desk):
    describing.rename_spot(desk, "top_back_left", "over the fire")
    spot = desk.stove.spot("top_back_left")
    assert spot is not None
    assert spot.label == "over the fire"


def test_a_label_in_use_is_refused(desk):
    with pytest.raises(InputProblem, match="already"):
        describing.rename_spot(desk, "top_back_left", "Top back right")


def test_a_spot_placed_at_its_shown_place_stays_there(desk):
    describing.place_spot(desk, "top_back_left", across_text="12", deep_text="6")
    spot = desk.stove.spot("top_back_left")
    assert spot is not None
    across, deep, unit = describing.span_of(desk, spot)
    assert (unit, spot.x * across, spot.y * deep) == ("in", pytest.approx(12), pytest.approx(6))


@pytest.mark.parametrize(
    ("field", "typed", "where"),
    [("across_text", "40", "left"), ("deep_text", "-1", "front"), ("deep_text", "31", "front")],
)
def test_a_place_off_the_cooktop_is_refused(desk, field, typed, where):
    describing.set_size(desk, width_text="36", depth_text="24")
    before = desk.stove
    with pytest.raises(InputProblem) as refused:
        describing.place_spot(desk, "top_back_left", **{field: f" {typed} "})
    most = 36 if where == "left" else 24
    assert refused.value.sentence == (
        f"{typed} in from the {where} is off the cooktop; type a number from 0 to {most}."
    )
    assert desk.stove == before


def test_a_place_in_the_oven_is_in_per_cent(desk):
    describing.place_spot(desk, "oven_left", across_text="25%")
    describing.place_spot(desk, "oven_left", deep_text="100")
    spot = desk.stove.spot("oven_left")
    assert describing.span_of(desk, spot) == (100.0, 100.0, "%")
    assert (spot.x, spot.y) == (0.25, 1.0)
    with pytest.raises(InputProblem, match="101 % from the left is off the oven"):
        describing.place_spot(desk, "oven_left", across_text="101")


def test_a_place_typed_for_one_way_leaves_the_other(desk):
    before = desk.stove.spot("top_back_left")
    describing.place_spot(desk, "top_back_left", deep_text="3")
    after = desk.stove.spot("top_back_left")
    assert after.x == before.x
    assert after.y == pytest.approx(3 * 0.0254 / desk.stove.cooktop_depth)


def test_a_plate_is_as_wide_and_as_deep_as_typed(desk):
    describing.size_spot(desk, "top_back_left", width_text="10")
    describing.size_spot(desk, "top_back_left", depth_text="8")
    assert describing.size_of(desk, desk.stove.spot("top_back_left")) == ("10", "8")
    before = desk.stove
    for field in ("width_text", "depth_text"):
        with pytest.raises(InputProblem, match="of a plate"):
            describing.size_spot(desk, "top_back_left", **{field: "200"})
    assert desk.stove == before


def size(desk, stove):
    return [float(text) for text in describing.size_of(desk, stove.spot("top_back_left"))]


def test_a_plate_grows_by_an_inch_or_a_centimetre_or_by_a_share(desk):
    describing.size_spot(desk, "top_back_left", width_text="10", depth_text="8")
    assert size(desk, describing.stretched(desk, "top_back_left", 1, -2)) == [11, 6]
    assert size(desk, describing.scaled(desk, "top_back_left", 1.1, 0.75)) == [11, 6]
    desk.set_unit("C")
    assert size(desk, describing.stretched(desk, "top_back_left", -1, 2)) == pytest.approx([24.4, 22.3])


def test_a_spot_is_nudged_by_an_inch_or_in_the_oven_by_one_in_a_hundred(desk):
    before = desk.stove.spot("top_back_left")
    after = describing.nudged(desk, "top_back_left", 1, -2).spot("top_back_left")
    assert (after.x - before.x) * desk.stove.cooktop_width == pytest.approx(0.0254)
    assert (after.y - before.y) * desk.stove.cooktop_depth == pytest.approx(-0.0508)
    oven = desk.stove.spot("oven_left")
    moved = describing.nudged(desk, "oven_left", -1, 2).spot("oven_left")
    assert (moved.x - oven.x, moved.y - oven.y) == pytest.approx((-0.01, 0.02))


def test_a_new_spot_gets_a_number_that_is_free(desk):
    assert describing.free_label(desk.stove) == "spot 1"
    describing.add_spot(desk, "Spot 1", SpotKind.TOP)
    describing.add_spot(desk, "spot 2", SpotKind.TOP)
    assert describing.free_label(desk.stove) == "spot 3"


def test_names_in_use_are_numbered_on(desk):
    names = [describing.add_spot(desk, f"{sign} rack", SpotKind.TOP).name for sign in ("!", "?", "+")]
    assert names == ["rack", "rack_2", "rack_3"]
    assert describing.add_spot(desk, "薪", SpotKind.TOP).name == "spot"


def test_a_new_spot_is_read_last(desk):
    spot = describing.add_spot(desk, "  warming   shelf ", SpotKind.TOP)
    assert spot.label == "warming shelf"
    assert desk.stove.spots[-1] == spot


@pytest.mark.parametrize(
    ("label", "taken"), [("x" * 30, True), ("x" * 31, False), ("  ", False), ("TOP back left", False)]
)
def test_a_spots_name_is_short_and_its_own(desk, label, taken):
    before = desk.stove
    if taken:
        assert describing.add_spot(desk, label, SpotKind.TOP).label == label
        return
    with pytest.raises(InputProblem) as refused:
        describing.add_spot(desk, label, SpotKind.TOP)
    assert refused.value.sentence in (
        "That name is too long to be read on the plan; use up to 30 letters.",
        "The spot has no name; type one, such as warming shelf.",
        "There is a spot “TOP back left” already; give this one another name.",
    )
    assert desk.stove == before


def test_a_spot_never_read_may_be_laid_elsewhere_and_one_read_may_not(desk):
    spot = describing.add_spot(desk, "warming shelf", SpotKind.TOP)
    assert describing.lay_spot(desk, spot.name, SpotKind.TOP) == spot
    laid = describing.lay_spot(desk, spot.name, SpotKind.WALL)
    assert (laid.kind, laid.label, desk.stove.spot(spot.name)) == (SpotKind.WALL, "warming shelf", None)
    desk.read("90", spot=laid.name)
    with pytest.raises(InputProblem) as refused:
        describing.lay_spot(desk, laid.name, SpotKind.SIDE)
    assert refused.value.sentence == "“warming shelf” has been read where it lies; add another spot instead."
    assert desk.stove.spot(laid.name) == laid


def test_the_same_label_again_changes_nothing(desk):
    before = desk.stove
    describing.rename_spot(desk, "top_back_left", f" {before.spot('top_back_left').label} ")
    assert desk.stove == before


def test_a_spot_that_is_gone_is_named(desk):
    before = describing.remove_spot(desk, "top_back_left")
    assert before.spot("top_back_left") is not None
    for change in (
        lambda: describing.remove_spot(desk, "top_back_left"),
        lambda: describing.place_spot(desk, "top_back_left", across_text="1"),
    ):
        with pytest.raises(InputProblem) as refused:
            change()
        assert refused.value.sentence == "This stove has no spot “top_back_left” any more; choose another one."


def test_the_last_oven_spot_is_not_removed(desk):
    names = [spot.name for spot in desk.stove.spots_of(SpotKind.OVEN)]
    for name in names[1:]:
        describing.remove_spot(desk, name)
    with pytest.raises(InputProblem) as refused:
        describing.remove_spot(desk, names[0])
    label = desk.stove.spot(names[0]).label
    assert (
        refused.value.sentence == f"“{label}” is the oven's only spot, and everything is worked out from it; keep it."
    )


def test_renaming_the_stove_keeps_the_session_on_the_table(desk):
    desk.do(Kind.LIT)
    session = desk.session
    describing.rename_stove(desk, "Kitchen stove")
    assert session is not None
    assert desk.session is not None
    assert (desk.session.number, desk.session.stove) == (session.number, "Kitchen stove")


def test_an_old_session_stays_on_the_table_under_the_stoves_new_name(desk):
    old = desk.logbook.start_session(desk.stove.name, "Old")
    desk.logbook.append(old.number, [check_entry(at=NOW - timedelta(days=3), offset_minutes=0, kind="lit")])
    desk.open_session(old.number)
    describing.rename_stove(desk, " Kitchen stove ")
    assert desk.session.number == old.number
    assert desk.stove.name == "Kitchen stove"


def test_a_stove_of_another_name_is_not_overwritten(desk):
    describing.add_stove(desk, " Hut ")
    assert desk.stove.name == "Hut"
    for change, name in ((describing.rename_stove, "My stove"), (describing.add_stove, " Hut ")):
        with pytest.raises(InputProblem) as refused:
            change(desk, name)
        assert refused.value.sentence == (f"There is a stove “{name.strip()}” already; give this one another name.")
        with pytest.raises(InputProblem) as refused:
            change(desk, "  ")
        assert refused.value.sentence == "The stove has no name; type one, such as Kitchen stove."
    assert len(desk.stoves) == 2


def test_a_stove_may_keep_its_name(desk):
    describing.rename_stove(desk, desk.stove.name)
    assert len(desk.stoves) == 1


def test_a_study_is_due_once_there_is_a_past_and_not_after_it(desk):
    assert not study_is_due(desk)
    session = desk.logbook.start_session(desk.stove.name, "Old")
    desk.logbook.append(session.number, [check_entry(at=NOW - timedelta(days=3), offset_minutes=0, kind="lit")])
    assert study_is_due(desk)
    inputs = study_reader(desk)()
    assert [one.number for one in inputs.sessions] == [session.number]


def test_the_live_session_makes_no_study_due(desk):
    desk.do(Kind.LIT)
    assert not study_is_due(desk)
    assert study_reader(desk)().sessions == ()


def test_learning_is_due_until_the_study_of_that_past_was_kept(desk):
    session = desk.logbook.start_session(desk.stove.name, "Old")
    desk.logbook.append(session.number, [check_entry(at=NOW - timedelta(days=3), offset_minutes=0, kind="lit")])
    assert learning_is_due(desk)
    found = study(study_reader(desk)())
    assert found is not None
    desk.show_study(found)
    assert not learning_is_due(desk)
    desk.logbook.append(
        session.number, [check_entry(at=NOW - timedelta(days=3), offset_minutes=0, kind="note", note="cold")]
    )
    assert learning_is_due(desk)
