"""Hot surfaces and walls in words: by material, by what may well be now, and never a permission."""

import re
from dataclasses import replace

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove import surroundings
from cookstove_gui.errors import InputProblem
from cookstove_gui.phrases.my_stove.surroundings import ALWAYS, NO_HEAT, NO_WALL, clearance_decides, wall_lines
from cookstove_gui.stove.stove import SpotKind
from tests.desk.conftest import stand
from tests.held_clock import HeldClock


def texts(desk: Desk) -> dict[str, str]:
    return {line.part: line.text for line in surroundings.surface_lines(desk)}


def test_before_anything_is_read_there_is_nothing_to_tell(held_desk: Desk) -> None:
    assert surroundings.surface_lines(held_desk) == ()
    assert surroundings.walls_here(held_desk) == ()


def test_each_part_is_told_at_its_hottest_and_how_soon_it_burns(burning_desk: Desk) -> None:
    found = texts(stand(burning_desk))
    assert list(found) == ["Cooktop", "Sides", "Glass of the door"]
    assert re.match(r"Top \w+ \w+ about \d+ °F, perhaps \d+; bare metal\. Skin .* within a second", found["Cooktop"])
    assert "enamelled or painted metal" in found["Sides"]
    assert "glass, tile or stone" in found["Glass of the door"]


def test_the_heat_is_in_the_unit_on_the_screen(burning_desk: Desk) -> None:
    burning_desk.set_unit("C")
    assert all("°C" in text for text in texts(stand(burning_desk)).values())


def test_what_the_sides_are_of_is_kept_and_told(burning_desk: Desk) -> None:
    surroundings.choose_side_material(burning_desk, "soapstone")
    assert "soapstone" in texts(stand(burning_desk))["Sides"]
    with pytest.raises(InputProblem):
        surroundings.choose_side_material(burning_desk, "cheese")


# Rises that heaters are tested to: UL 127 as quoted, 117 °F exposed and 90 °F covered (touch.toml)
def test_a_wall_is_held_against_each_limit(burning_desk: Desk, held_clock: HeldClock) -> None:
    burning_desk.read("160", spot="wall_left")
    held_clock.pass_minutes(1)
    (wall, decides) = wall_lines(surroundings.walls_here(burning_desk), burning_desk.unit)
    head, exposed, absolute, covered = wall.split("\n")
    assert "90 °F above the room (160 against 70 °F)" in head
    assert "77 % of the 117 °F in tests of heaters. It nears" in exposed
    assert "160 of 185 °F, however warm the room. It nears" in absolute
    assert covered.startswith("⚠ ")
    assert not exposed.startswith("⚠")
    assert "100 % of the 90 °F in tests of heaters. It has reached what heaters are tested to" in covered
    assert decides == clearance_decides()


def test_the_hottest_wall_comes_first_by_its_latest_reading(burning_desk: Desk) -> None:
    for spot, heat in (("wall_left", 150), ("floor_front", 120), ("wall_left", 100)):
        burning_desk.read(str(heat), spot=spot)
    first, second, _decides = wall_lines(surroundings.walls_here(burning_desk), burning_desk.unit)
    assert first.startswith("Floor front")
    assert second.startswith("Wall left")


def test_a_slip_on_a_wall_is_told_not_hidden(burning_desk: Desk) -> None:
    burning_desk.read("900", spot="wall_left")
    assert "correct the reading" in wall_lines(surroundings.walls_here(burning_desk), burning_desk.unit)[0]


def test_no_word_of_it_says_safe(burning_desk: Desk) -> None:
    burning_desk.read("75", spot="wall_left")
    told = " ".join(
        (*texts(stand(burning_desk)).values(), *wall_lines(surroundings.walls_here(burning_desk), burning_desk.unit))
    )
    told += ALWAYS + NO_WALL + NO_HEAT
    assert re.search(r"\bsafe|\bharmless|enough distance", told, re.IGNORECASE) is None
    assert "permits nothing" in told


@pytest.mark.parametrize(
    ("surface", "told"),
    [
        ("soapstone", "soapstone"),
        ("enamel", "enamelled or painted metal"),
        ("stove paint", "enamelled or painted metal"),
        ("oxidised cast iron", "bare metal"),
        ("brass", "bare metal"),
    ],
)
def test_the_cooktop_burns_as_its_surface_does(burning_desk: Desk, surface: str, told: str) -> None:
    burning_desk.save_stove(replace(burning_desk.stove, cooktop_surface=surface))
    assert f"; {told}." in texts(stand(burning_desk))["Cooktop"]


def test_the_part_is_told_by_the_spot_that_may_be_hottest(burning_desk: Desk) -> None:
    standing = stand(burning_desk).standing
    assert standing is not None
    tops = [spot for spot in burning_desk.stove.spots if spot.kind is SpotKind.TOP]
    hottest = max(tops, key=lambda spot: standing.zones[spot.name].p90)
    assert texts(burning_desk)["Cooktop"].lower().startswith(hottest.label.lower())


def test_sides_may_be_of_all_that_burns_are_known_of_but_wood_and_plastic(held_desk: Desk) -> None:
    found = surroundings.side_materials()
    assert {"soapstone", "enamelled or painted metal"} <= set(found)
    assert not {"wood", "plastic"} & set(found)
    held_desk.save_stove(replace(held_desk.stove, sides="cheese"))
    assert surroundings.side_material(held_desk) in found


def test_a_part_without_a_spot_is_not_told(burning_desk: Desk) -> None:
    spots = tuple(spot for spot in burning_desk.stove.spots if spot.kind is not SpotKind.SIDE)
    burning_desk.save_stove(replace(burning_desk.stove, spots=spots))
    burning_desk.take_back(next(row.number for row in burning_desk.entries if row.spot == "side_left"))
    for row in [row for row in burning_desk.entries if row.spot == "side_left"]:
        burning_desk.take_back(row.number)
    burning_desk.save_stove(replace(burning_desk.stove, spots=spots))
    assert list(texts(stand(burning_desk))) == ["Cooktop", "Glass of the door"]
