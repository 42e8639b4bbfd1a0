"""A stove's description takes what its owner types, in the unit on the screen, and refuses with a sentence."""

from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove import describing
from cookstove_gui.desk.studying import learning_is_due, study_is_due, study_reader
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import SpotKind, spot_kind_from_name
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
    assert str(kind) in describing.kinds_to_add()


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


def test_the_last_oven_spot_is_not_removed(desk):
    names = [spot.name for spot in desk.stove.spots_of(SpotKind.OVEN)]
    for name in names[1:]:
        describing.remove_spot(desk, name)
    with pytest.raises(InputProblem, match="only spot"):
        describing.remove_spot(desk, names[0])


def test_renaming_the_stove_keeps_the_session_on_the_table(desk):
    desk.do(Kind.LIT)
    session = desk.session
    describing.rename_stove(desk, "Kitchen stove")
    assert session is not None
    assert desk.session is not None
    assert (desk.session.number, desk.session.stove) == (session.number, "Kitchen stove")


def test_a_stove_of_another_name_is_not_overwritten(desk):
    describing.add_stove(desk, "Hut")
    with pytest.raises(InputProblem, match="already"):
        describing.rename_stove(desk, "My stove")
    assert len(desk.stoves) == 2


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
