"""The chimney and the air outdoors are kept as typed, in the unit on the screen, and refused if implausible."""

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.chimney import chimney_here, keep_diameter, keep_height, keep_outdoors, keep_wall
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import Chimney
from tests.held_clock import HeldClock


def test_a_chimney_never_described_is_the_usual_one_on_a_cool_day(held_desk: Desk) -> None:
    found = chimney_here(held_desk)
    assert (found.chimney, found.is_described, found.outdoors_at) == (Chimney(), False, None)
    assert found.outdoors == pytest.approx(277.594, abs=1e-3)  # 40 °F


def test_lengths_are_typed_in_feet_and_inches_or_metres_and_centimetres(held_desk: Desk) -> None:
    keep_height(held_desk, "20")
    keep_diameter(held_desk, "6")
    assert chimney_here(held_desk).is_described
    assert chimney_here(held_desk).chimney.height == pytest.approx(6.096)  # the foot is 0.3048 m by definition
    assert chimney_here(held_desk).chimney.diameter == pytest.approx(0.1524)
    held_desk.set_unit("C")
    keep_height(held_desk, "7.5")
    keep_diameter(held_desk, "18")
    assert chimney_here(held_desk).chimney.height == pytest.approx(7.5)
    assert chimney_here(held_desk).chimney.diameter == pytest.approx(0.18)


@pytest.mark.parametrize(
    ("keep", "text"), [(keep_height, "0.9"), (keep_height, "31"), (keep_diameter, "7"), (keep_diameter, "41")]
)
def test_an_implausible_length_is_refused_and_leaves_what_was_known(held_desk: Desk, keep, text: str) -> None:
    held_desk.set_unit("C")
    keep_height(held_desk, "8")
    with pytest.raises(InputProblem, match=r"isn't a plausible (chimney height|flue width)"):
        keep(held_desk, text)
    assert chimney_here(held_desk).chimney.height == 8.0


@pytest.mark.parametrize("key", ["lined", "masonry", "pipe"])
def test_a_wall_chosen_is_the_wall_shown(held_desk: Desk, key: str) -> None:
    keep_height(held_desk, "20")
    keep_wall(held_desk, key)
    assert chimney_here(held_desk).wall == key
    assert chimney_here(held_desk).chimney.height == pytest.approx(6.096)


def test_the_better_the_wall_holds_the_heat_the_less_it_loses(held_desk: Desk) -> None:
    losses = []
    for key in ("lined", "masonry", "pipe"):
        keep_wall(held_desk, key)
        losses.append(chimney_here(held_desk).chimney.loss)
    assert losses == sorted(set(losses))


def test_air_outdoors_is_kept_with_its_clock(held_desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(20)
    keep_outdoors(held_desk, "14")
    found = chimney_here(held_desk)
    assert found.outdoors == pytest.approx(263.15)  # 14 °F is -10 °C
    assert found.outdoors_at == held_clock()
    assert not found.is_described
    keep_outdoors(held_desk, "-5C")
    assert chimney_here(held_desk).outdoors == pytest.approx(268.15)


@pytest.mark.parametrize(("text", "fits"), [("-60", True), ("-61", False), ("125", True), ("126", False)])
def test_outdoors_is_somewhere_between_the_coldest_and_the_hottest_places(
    held_desk: Desk, text: str, fits: bool
) -> None:
    if fits:
        keep_outdoors(held_desk, text)
        assert chimney_here(held_desk).outdoors_at is not None
        return
    with pytest.raises(InputProblem, match=rf"{text} °F isn't a plausible outdoor temperature"):
        keep_outdoors(held_desk, text)
    assert chimney_here(held_desk).outdoors_at is None
