"""Thermometers are described and checked; a check too far off is asked about, and the latest can be taken back.

Fixed points: ice water at 0 °C, and 100 °C for water boiling at the standard atmosphere (99.97 °C by IAPWS IF97).
"""

from dataclasses import replace
from datetime import date

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove import checks
from cookstove_gui.desk.my_stove.checks import add_instrument, checks_of, record_check, take_back_latest
from cookstove_gui.desk.my_stove.describing import add_stove
from cookstove_gui.desk.my_stove.site import keep_height
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.checks import CheckPoint
from cookstove_gui.stove.stove import Instrument
from cookstove_gui.units import kelvin
from tests.held_clock import HeldClock

DAY = 24.0 * 60.0


@pytest.fixture
def desk(held_desk: Desk) -> Desk:
    add_instrument(held_desk, "oven dial", "oven thermometer")
    add_instrument(held_desk, "gun", "infrared")
    return held_desk


def thermometer(desk: Desk, name: str = "oven dial") -> Instrument:
    return next(one for one in desk.stove.instruments if one.name == name)


@pytest.mark.parametrize(
    ("name", "kind", "problem"),
    [
        ("  ", "probe", "has no name"),
        ("Oven  DIAL", "probe", "a thermometer “Oven DIAL” already"),
        ("stick", "clinical", "“clinical” is not a kind of thermometer; choose one of"),
    ],
)
def test_a_thermometer_has_a_name_of_its_own_and_a_known_kind(desk: Desk, name: str, kind: str, problem: str) -> None:
    with pytest.raises(InputProblem, match=problem):
        add_instrument(desk, name, kind)
    assert [one.name for one in desk.stove.instruments] == ["oven dial", "gun"]


def test_a_name_is_tidied_and_the_thermometers_before_it_stay(desk: Desk) -> None:
    assert add_instrument(desk, "  meat   stick ", "probe").name == "meat stick"
    assert [one.name for one in desk.stove.instruments] == ["oven dial", "gun", "meat stick"]


@pytest.mark.parametrize(("text", "fits"), [("0.1", True), ("0.09", False), ("1", True), ("1.01", False)])
def test_an_emissivity_lies_between_a_tenth_and_one(desk: Desk, text: str, fits: bool) -> None:
    before = thermometer(desk, "gun").emissivity
    if fits:
        checks.set_emissivity(desk, "gun", text)
        assert thermometer(desk, "gun").emissivity == float(text)
        assert thermometer(desk).emissivity == before
        return
    with pytest.raises(InputProblem, match=f"{text} isn't an emissivity setting"):
        checks.set_emissivity(desk, "gun", text)
    assert thermometer(desk, "gun").emissivity == before


def test_a_right_thermometer_shows_freezing_and_the_boil_of_the_air_here(desk: Desk) -> None:
    assert checks.right_reading(desk, CheckPoint.ICE) == 273.15
    assert checks.right_reading(desk, CheckPoint.BOIL) == pytest.approx(373.12, abs=0.02)
    keep_height(desk, "1500 m")
    assert checks.right_reading(desk, CheckPoint.BOIL) == pytest.approx(273.15 + 94.98, abs=0.02)


def test_the_heat_cooked_with_is_the_middle_of_the_band(desk: Desk) -> None:
    desk.choose_band("300-400")
    assert checks.heat_cooked_with(desk) == pytest.approx(kelvin(350.0, "F"))


def test_a_check_is_kept_with_its_day_and_corrects_from_then_on(desk: Desk, held_clock: HeldClock) -> None:
    assert record_check(desk, "oven dial", CheckPoint.ICE, "36") == ""
    (made,) = checks_of(desk)
    assert (made.instrument, made.point, made.on) == ("oven dial", CheckPoint.ICE, date(2026, 3, 14))
    assert made.shown == pytest.approx(kelvin(36.0, "F"))
    # 2.5 K of doubt before, 1.55 K of such a check: 0.722 of what it shows
    assert thermometer(desk).error(273.15) == pytest.approx(0.722 * 4.0 / 1.8, rel=0.01)
    assert thermometer(desk, "gun").offset == 0.0
    assert thermometer(Desk(desk.logbook, held_clock)).checked_on == "2026-03-14"


def test_several_checks_weigh_together(desk: Desk) -> None:
    record_check(desk, "oven dial", CheckPoint.ICE, "36")
    doubt = thermometer(desk).offset_doubt
    record_check(desk, "oven dial", CheckPoint.ICE, "34")
    # two such checks: 0.839 of their mean
    assert thermometer(desk).error(273.15) == pytest.approx(0.839 * 3.0 / 1.8, rel=0.01)
    assert thermometer(desk).offset_doubt < doubt


def test_a_check_far_off_is_asked_about_first(desk: Desk) -> None:
    assert record_check(desk, "oven dial", CheckPoint.ICE, "62")
    assert checks_of(desk) == ()
    assert record_check(desk, "oven dial", CheckPoint.ICE, "62", sure=True) == ""
    assert len(checks_of(desk)) == 1


def test_steam_blinds_an_infrared_thermometer(desk: Desk) -> None:
    assert checks.points(desk, "gun") == (CheckPoint.ICE,)
    assert checks.points(desk, "oven dial") == (CheckPoint.ICE, CheckPoint.BOIL)
    with pytest.raises(InputProblem, match="never checked like that"):
        record_check(desk, "gun", CheckPoint.BOIL, "212")
    assert checks_of(desk) == ()


def test_a_thermometer_that_is_gone_is_not_checked(desk: Desk) -> None:
    with pytest.raises(InputProblem, match="no thermometer “stick” any more"):
        record_check(desk, "stick", CheckPoint.ICE, "32")


def test_a_change_since_the_check_before_is_drift(desk: Desk, held_clock: HeldClock) -> None:
    record_check(desk, "oven dial", CheckPoint.ICE, "32")
    assert checks.drift(desk, "oven dial") is None
    held_clock.pass_minutes(30 * DAY)
    record_check(desk, "oven dial", CheckPoint.ICE, "42")
    found = checks.drift(desk, "oven dial")
    assert found is not None
    assert (found.instrument, found.since) == ("oven dial", date(2026, 3, 14))
    assert found.change == pytest.approx(10.0 / 1.8, rel=0.1)


def test_the_latest_check_of_one_thermometer_is_taken_back(desk: Desk) -> None:
    record_check(desk, "oven dial", CheckPoint.ICE, "36")
    once = thermometer(desk)
    record_check(desk, "oven dial", CheckPoint.BOIL, "220")
    record_check(desk, "gun", CheckPoint.ICE, "33")
    take_back_latest(desk, "oven dial")
    assert [(check.instrument, check.point) for check in checks_of(desk)] == [
        ("oven dial", CheckPoint.ICE), ("gun", CheckPoint.ICE),
    ]  # fmt: skip
    assert thermometer(desk) == once


def test_a_thermometer_without_a_check_is_as_if_never_checked_and_keeps_its_setting(desk: Desk) -> None:
    checks.set_emissivity(desk, "gun", "0.8")
    fresh = thermometer(desk, "gun")
    record_check(desk, "gun", CheckPoint.ICE, "36")
    take_back_latest(desk, "gun")
    assert thermometer(desk, "gun") == fresh
    with pytest.raises(InputProblem, match="“gun” was never checked"):
        take_back_latest(desk, "gun")


def test_the_day_of_a_check_is_the_local_one(desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(8 * 60)  # 23:00 in UTC, and 1:00 of the next day where the session's clock is
    row = check_entry(at=held_clock(), offset_minutes=120, kind="lit")
    desk.open_session(desk.logbook.add_session(desk.stove.name, "Further east", [row]).number)
    record_check(desk, "oven dial", CheckPoint.ICE, "32")
    assert checks_of(desk)[0].on == date(2026, 3, 15)


def test_the_checks_of_another_stove_are_its_own(desk: Desk) -> None:
    record_check(desk, "oven dial", CheckPoint.ICE, "36")
    add_stove(desk, "Summer kitchen")
    assert checks_of(desk) == ()


def test_an_infrared_reading_is_corrected_for_the_surface_the_table_knows(desk: Desk) -> None:
    gun = thermometer(desk, "gun")
    painted = replace(desk.stove, cooktop_surface="stove paint")
    found = checks.reading_at(painted, replace(gun, emissivity=0.6), 450.0)
    assert found is not None
    assert found.corrected < 450.0  # set too low it shows too hot
    assert checks.reading_at(replace(painted, cooktop_surface="something else"), gun, 450.0) is None


def test_the_emissivity_of_the_cooktop_is_measured_beside_a_contact_thermometer(desk: Desk) -> None:
    # Set to the surface's own emissivity, both show the same.
    checks.set_emissivity(desk, "gun", "0.9")
    found = checks.measured_emissivity(desk, "gun", "400", "400")
    assert found.usual == pytest.approx(0.9, abs=0.01)
    darker = checks.measured_emissivity(desk, "gun", "400", "370")
    assert darker.usual < found.usual - 0.05


# --- as they are drawn


def boiling(desk: Desk) -> float:
    return checks.right_reading(desk, CheckPoint.BOIL)


def test_checks_are_drawn_where_they_were_made_with_what_was_shown_too_high(desk: Desk, held_clock: HeldClock) -> None:
    record_check(desk, "oven dial", CheckPoint.ICE, "36")
    record_check(desk, "gun", CheckPoint.ICE, "33")
    held_clock.pass_minutes(DAY)
    record_check(desk, "oven dial", CheckPoint.BOIL, "222")
    record_check(desk, "oven dial", CheckPoint.ICE, "35")
    found = checks.check_picture(desk, "oven dial")
    assert found.instrument == thermometer(desk)
    assert found.cooked == checks.heat_cooked_with(desk)
    assert found.marks == {CheckPoint.ICE: 273.15, CheckPoint.BOIL: boiling(desk)}
    first, boil, second = found.rings
    assert [ring.heat for ring in found.rings] == [273.15, boiling(desk), 273.15]
    assert (first.error, second.error) == pytest.approx((4 / 1.8, 3 / 1.8))
    assert boil.error == pytest.approx(kelvin(222.0, "F") - boiling(desk))
    assert [ring.latest for ring in found.rings] == [False, True, True]
    assert [ring.on for ring in found.rings] == [date(2026, 3, 14), date(2026, 3, 15), date(2026, 3, 15)]


def test_where_the_clock_was_set_back_the_latest_check_is_still_that_of_the_latest_day(
    desk: Desk, held_clock: HeldClock
) -> None:
    record_check(desk, "oven dial", CheckPoint.ICE, "36")
    held_clock.pass_minutes(-2 * DAY)
    record_check(desk, "oven dial", CheckPoint.ICE, "34")
    assert [ring.latest for ring in checks.check_picture(desk, "oven dial").rings] == [True, False]
    drift = checks.drift_rings(desk, "gun")
    assert drift == ()


def test_drift_is_drawn_at_the_hottest_point_by_date(desk: Desk, held_clock: HeldClock) -> None:
    record_check(desk, "oven dial", CheckPoint.BOIL, "215")
    record_check(desk, "oven dial", CheckPoint.ICE, "33")
    held_clock.pass_minutes(-3 * DAY)
    record_check(desk, "oven dial", CheckPoint.BOIL, "213")
    keep_height(desk, "5000")  # where it boils at 203 °F, and a check of that boil is still one of the same point
    record_check(desk, "oven dial", CheckPoint.BOIL, "204")
    found = checks.drift_rings(desk, "oven dial")
    assert [ring.on for ring in found] == [date(2026, 3, 11), date(2026, 3, 11), date(2026, 3, 14)]
    assert all(ring.heat > kelvin(200.0, "F") for ring in found)
    record_check(desk, "gun", CheckPoint.ICE, "33")
    assert [ring.heat for ring in checks.drift_rings(desk, "gun")] == [273.15]


def test_a_reading_is_doubted_at_the_heat_that_is_cooked_with(desk: Desk) -> None:
    record_check(desk, "oven dial", CheckPoint.ICE, "32")
    desk.choose_band("175-200")
    near = checks.doubt_of_a_reading(desk, thermometer(desk))
    desk.choose_band("475-500")
    assert checks.doubt_of_a_reading(desk, thermometer(desk)) > near > 0


def test_an_infrared_reading_is_doubted_by_the_surface_too(desk: Desk) -> None:
    doubts = {}
    for surface in ("stove paint", "polished steel", "brass"):
        desk.save_stove(replace(desk.stove, cooktop_surface=surface))
        doubts[surface] = checks.doubt_of_a_reading(desk, thermometer(desk, "gun"))
    assert doubts["brass"] < doubts["stove paint"] < doubts["polished steel"]


def test_a_flue_thermometer_is_checked_in_nothing(desk: Desk) -> None:
    add_instrument(desk, "pipe", "flue thermometer")
    assert checks.points(desk, "pipe") == ()
    assert checks.drift_rings(desk, "pipe") == ()
    with pytest.raises(InputProblem, match="never checked like that"):
        record_check(desk, "pipe", CheckPoint.ICE, "32")
