"""What a stove can do is read off its log: from load to crossing, with what was not seen to its end said so."""

import numpy as np
import pytest
from statsmodels.duration.survfunc import SurvfuncRight

from cookstove_gui.cooking.fires import abilities
from cookstove_gui.cooking.fires.abilities import Ability, Shown, figure, heat_at, splits_in
from cookstove_gui.cooking.fires.logged_fires import Fire, fires
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import kelvin
from tests.cooking.made import START, STOVE, log, session

BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))
OVEN = "oven_centre"


def _fires(*rows: tuple[float, str, str, str, str]) -> tuple[Fire, ...]:
    return fires(STOVE, [session(1, log((0.0, "lit", "", "", ""), *rows))])


def _oven(*readings: tuple[float, float]) -> list[tuple[float, str, str, str, str]]:
    return [(minute, "reading", OVEN, str(heat), "F") for minute, heat in readings]


def _wood(minute: float, kilograms: float) -> tuple[float, str, str, str, str]:
    return (minute, "wood", "", str(kilograms), "kg")


def _shown(*values: tuple[float, bool]) -> list[Shown]:
    return [
        Shown(session=place, at=START, offset_minutes=0, value=value, ended=ended)
        for place, (value, ended) in enumerate(values)
    ]


def test_a_rise_knows_the_wood_that_was_on_by_then() -> None:
    found = abilities.rises(
        _fires(_wood(10, 2.0), _wood(50, 1.5), _wood(90, 9.0), *_oven((0, 70), (80, 425))), OVEN, BREAD
    )
    (one,) = found.shown
    assert one.value == pytest.approx(80.0 * 305.0 / 355.0)
    assert one.wood == pytest.approx(3.5)


def test_a_hold_counts_from_its_load_to_where_the_oven_falls_out_below() -> None:
    rows = [*_oven((0, 70), (60, 400)), _wood(70, 2.2), *_oven((80, 410), (100, 400), (140, 350))]
    found = abilities.holds(_fires(*rows), OVEN, BREAD, 2)
    # 400 to 350 °F in the 40 minutes after 100: 375 at 120, 50 after the load.
    assert [(one.value, one.ended) for one in found.shown] == [(pytest.approx(50.0), True)]
    assert abilities.holds(_fires(*rows), OVEN, BREAD, 1).shown == ()


def test_a_hold_that_the_next_load_ends_was_at_least_so_long() -> None:
    rows = [*_oven((0, 70), (60, 400)), _wood(70, 1.1), *_oven((80, 410)), _wood(95, 1.1), *_oven((100, 400))]
    found = abilities.holds(_fires(*rows), OVEN, BREAD, 1)
    assert (found.shown[0].value, found.shown[0].ended) == (pytest.approx(25.0), False)
    assert found.middle is None


def test_a_load_under_an_oven_below_the_heat_is_no_hold() -> None:
    rows = [*_oven((0, 70), (60, 300)), _wood(70, 2.2), *_oven((80, 310), (140, 350))]
    assert abilities.holds(_fires(*rows), OVEN, BREAD, 2).shown == ()


def test_a_fall_counts_from_the_hottest_after_the_last_load() -> None:
    rows = [_wood(10, 2.0), *_oven((20, 150), (60, 400)), _wood(70, 2.0), *_oven((90, 420), (150, 360), (190, 300))]
    found = abilities.falls(_fires(*rows), OVEN)
    # 420 less 100 is 320 °F: two thirds of the way from 360 to 300, at 176.7 min; hottest at 90.
    assert found.shown[0].value == pytest.approx(150.0 + 40.0 * 2 / 3 - 90.0)
    assert found.shown[0].ended
    short = abilities.falls(_fires(*rows[:-1]), OVEN)
    assert (short.shown[0].value, short.shown[0].ended) == (pytest.approx(60.0), False)


def test_a_dip_that_comes_back_within_minutes_is_a_slip_and_no_fall() -> None:
    rows = [_wood(10, 2.0), *_oven((60, 400), (64, 299), (70, 398), (90, 390))]
    found = abilities.falls(_fires(*rows), OVEN)
    assert [one.ended for one in found.shown] == [False]


def test_a_split_lifts_a_steady_oven_and_a_rising_one_tells_nothing() -> None:
    steady = [_wood(5, 3.0), *_oven((40, 348), (60, 352)), _wood(62, 1.1), *_oven((65, 352), (80, 376), (100, 360))]
    found = abilities.lifts(_fires(*steady), OVEN)
    assert found.shown[0].value == pytest.approx(24.0 / 1.8, abs=0.01)
    assert found.after_min == pytest.approx(18.0)
    rising = [_wood(5, 3.0), *_oven((40, 250), (60, 340)), _wood(62, 1.1), *_oven((65, 352), (80, 376), (100, 360))]
    assert abilities.lifts(_fires(*rising), OVEN).shown == ()


@pytest.mark.parametrize(("read", "told"), [(70, False), (78, True)])
def test_a_split_that_another_load_follows_before_it_shows_tells_nothing(read: float, told: bool) -> None:
    rows = [
        _wood(5, 3.0), *_oven((40, 350), (60, 350)), _wood(62, 1.1), *_oven((read, 360)), _wood(80, 3.3),
        *_oven((95, 410)),
    ]  # fmt: skip
    assert bool(abilities.lifts(_fires(*rows), OVEN).shown) is told


def test_the_hottest_of_all_is_named_with_its_spot() -> None:
    rows = [(10, "reading", "top_front_left", "500", "F"), (20, "reading", "top_back_left", "742", "F")]
    found = abilities.hottest_tops(_fires(*rows), STOVE)
    assert (found.middle, found.spot) == (pytest.approx(kelvin(742.0, "F")), "top_back_left")
    assert abilities.hottest_ovens(_fires(*_oven((5, 300), (30, 515), (60, 480))), OVEN).middle == pytest.approx(
        kelvin(515.0, "F")
    )


def test_the_hottest_is_what_was_read_and_a_slip_between_cool_readings_is_not() -> None:
    def top(*heats: int) -> float | None:
        rows = [(10.0 * place, "reading", "top_front_left", str(heat), "F") for place, heat in enumerate(heats, 1)]
        return abilities.hottest_tops(_fires(*rows), STOVE).middle

    assert top(180, 195, 205, 215, 190) == pytest.approx(kelvin(215.0, "F"))
    assert top(180, 195, 705, 215, 190) == pytest.approx(kelvin(215.0, "F"))


def test_a_shut_down_load_lasts_longer_to_a_deeper_fall() -> None:
    rows = [_wood(10, 6.0), (20, "air", "", "0.1", ""), *_oven((30, 300), (60, 440), (240, 350), (300, 300))]
    shallow, deep = (abilities.shut_down(_fires(*rows), OVEN, fall / 1.8).middle for fall in (25.0, 100.0))
    assert shallow == pytest.approx(100.0)  # 415 °F: 25 of the 90 degrees that fall in three hours after 60 min
    assert deep == pytest.approx(242.0)  # 340 °F: 10 of the 50 degrees that fall in the hour after 240 min


def test_the_range_is_that_of_eight_firings_in_ten_and_of_two_firings_both() -> None:
    values = [61.0, 75.0, 80.0, 95.0, 112.0]
    found = figure(Ability.RISE, _shown(*((value, True) for value in values)))
    assert (found.low, found.middle, found.high) == pytest.approx(tuple(np.quantile(values, (0.1, 0.5, 0.9))))
    two = figure(Ability.RISE, _shown((60.0, True), (80.0, True)))
    assert (two.low, two.middle, two.high) == (60.0, 70.0, 80.0)
    one = figure(Ability.RISE, _shown((60.0, True)))
    assert (one.low, one.middle, one.high) == (None, 60.0, None)


def test_what_was_not_seen_to_its_end_is_weighed_as_statsmodels_does() -> None:
    chance = np.random.default_rng(8)
    minutes, ended = chance.integers(10, 200, size=11).astype(float), chance.random(11) < 0.7
    found = figure(Ability.FALL, _shown(*((float(m), bool(e)) for m, e in zip(minutes, ended, strict=True))))
    reference = SurvfuncRight(minutes, ended.astype(int))
    for value, share in ((found.low, 0.1), (found.middle, 0.5), (found.high, 0.9)):
        over = reference.surv_times[reference.surv_prob <= 1.0 - share + 1e-12]
        assert value == (pytest.approx(over[0]) if len(over) else None)


def test_heat_between_readings_lies_on_a_line_and_beyond_them_nowhere() -> None:
    readings = [(10.0, 400.0), (30.0, 420.0), (120.0, 500.0)]
    assert heat_at(readings, 20.0) == pytest.approx(410.0)
    assert heat_at(readings, 30.0) == 420.0
    assert heat_at(readings, 60.0) is None  # too long a gap
    assert heat_at(readings, 130.0) is None


def test_splits_are_counted_by_weight() -> None:
    (fire,) = _fires(_wood(1, 1.0), _wood(50, 2.4))
    assert [splits_in([row]) for row in fire.rows if row.kind.value == "wood"] == [1, 2]
