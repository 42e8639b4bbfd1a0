"""The chimney as typed, and its draught and heat in words, against the gas law's closed form.

Natural draught after EN 13384-1 with flue gas taken as air: g H p / R (1/T outdoors - 1/T gas), rows 13.5 and 13.6 of
the reference checks; bands of heat are common practice (rows 13.9 to 13.12).
"""

import re

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove import chimney as chimney_here
from cookstove_gui.desk.my_stove import describing, flue
from cookstove_gui.desk.my_stove.site import keep_height
from cookstove_gui.errors import InputProblem
from cookstove_gui.phrases.my_stove.flue import draught_caution
from cookstove_gui.units import kelvin
from tests.desk.conftest import stand
from tests.held_clock import HeldClock

G, R = 9.80665, 287.05287


def closed_form(height: float, outdoors: float, gas: float, pressure: float = 101_325.0) -> float:
    return G * height * pressure / R * (1 / outdoors - 1 / gas)


def describe(desk: Desk, height: str = "20", outdoors: str = "30") -> None:
    chimney_here.keep_height(desk, height)
    chimney_here.keep_outdoors(desk, outdoors)
    chimney_here.keep_wall(desk, "lined")


def pascals(desk: Desk) -> float:
    found = flue.draught_here(desk).pascals.p50
    assert found is not None
    return found


def test_a_cold_flue_draws_no_more_than_the_closed_form(held_desk: Desk) -> None:
    # row "13.cold-flue"
    describe(held_desk)
    most = closed_form(20 * 0.3048, kelvin(30.0, "F"), kelvin(68.0, "F"))
    assert 0.7 * most < pascals(held_desk) < most  # the wall lets some of the warmth out
    assert "at room temperature" in flue.draught_line(held_desk)


def test_thin_air_draws_less_in_proportion(held_desk: Desk) -> None:
    # row "13.6-kitchen"
    describe(held_desk)
    at_sea = pascals(held_desk)
    keep_height(held_desk, "1500 m")
    assert pascals(held_desk) / at_sea == pytest.approx(845.56 / 1013.25, rel=1e-4)


def test_a_hot_flue_draws_and_a_taller_one_more(burning_desk: Desk) -> None:
    describe(burning_desk)
    stand(burning_desk)
    shorter = pascals(burning_desk)
    assert shorter < closed_form(20 * 0.3048, kelvin(30.0, "F"), 1000.0)
    chimney_here.keep_height(burning_desk, "28")
    assert pascals(burning_desk) > 1.2 * shorter
    line = flue.draught_line(burning_desk)
    shown = re.search(r"about (\d+) Pa \((0\.\d+) in\. of water\)", line)
    assert shown is not None
    assert float(shown[2]) == pytest.approx(float(shown[1]) / 249.089, abs=0.003)
    assert line.startswith("The flue draws about ")  # not of a flue at room temperature
    assert "common practice" in line
    assert draught_caution(flue.draught_here(burning_desk)) == ""


def test_a_flue_colder_than_outdoors_warns_of_smoke(held_desk: Desk) -> None:
    describe(held_desk, outdoors="95")
    assert "the wrong way" in flue.draught_line(held_desk)
    caution = draught_caution(flue.draught_here(held_desk))
    assert "smoke comes into the room" in caution
    assert "licensed sweep" in caution


def test_a_weak_draught_says_how_to_start_a_cold_flue(held_desk: Desk) -> None:
    describe(held_desk, height="10", outdoors="60")
    assert "warm the flue" in draught_caution(flue.draught_here(held_desk))


def test_the_flue_is_named_by_its_band(burning_desk: Desk) -> None:
    assert "about 18 in." in flue.heat_line(burning_desk)  # nothing is worked out yet
    assert ": working." in flue.heat_line(stand(burning_desk))


@pytest.mark.parametrize(("read", "words"), [("170", "too cool. Smoke condenses"), ("560", "too hot. Over-fired")])
def test_too_cool_and_too_hot_say_why(burning_desk: Desk, held_clock: HeldClock, read: str, words: str) -> None:
    for _ in range(3):
        held_clock.pass_minutes(6)
        burning_desk.read(read, spot="flue")
    assert words in flue.heat_line(stand(burning_desk))


def test_what_is_no_chimney_or_weather_is_told(held_desk: Desk) -> None:
    for keep, text in (
        (chimney_here.keep_height, "200"), (chimney_here.keep_height, "tall"), (chimney_here.keep_diameter, "0"),
        (chimney_here.keep_outdoors, "400"),
    ):  # fmt: skip
        with pytest.raises(InputProblem):
            keep(held_desk, text)
    assert not chimney_here.chimney_here(held_desk).is_described
    assert "not described yet" in flue.draught_line(held_desk)


def test_the_chimney_is_kept_for_its_stove_and_goes_with_its_name(held_desk: Desk) -> None:
    chimney_here.keep_diameter(held_desk, "8")
    describing.rename_stove(held_desk, "Range")
    assert chimney_here.chimney_here(held_desk).chimney.diameter == pytest.approx(0.2032)
    describing.add_stove(held_desk, "Other")
    assert not chimney_here.chimney_here(held_desk).is_described


def test_the_air_outdoors_is_asked_for_again_when_it_is_old(held_desk: Desk, held_clock: HeldClock) -> None:
    chimney_here.keep_height(held_desk, "20")
    assert "Type how cold it is outdoors" in flue.draught_line(held_desk)
    chimney_here.keep_outdoors(held_desk, "30")
    assert "outdoors" not in flue.draught_line(held_desk)
    held_clock.pass_minutes(7 * 60)
    assert "typed long ago" in flue.draught_line(held_desk)


def test_wild_readings_of_the_flue_never_break_the_draught(burning_desk: Desk) -> None:
    for heat in ("1400", "-30"):
        burning_desk.read(heat, spot="flue")
        assert flue.draught_line(stand(burning_desk))
