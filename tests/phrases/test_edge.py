"""Units, clocks, lengths of time and counts as every page says them."""

from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import (
    Edge,
    ago,
    air_words,
    as_it_stood,
    capital,
    day_and_month,
    duration,
    entries_count,
    full_date,
    heat_name,
    listed,
    local_day,
    mass_text,
    readings_count,
    session_day,
    sessions_count,
    short_date,
    span,
    spot_label,
    weekday,
)
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import stove_with_default_spots
from tests.phrases.facts import EDGE, HORIZON, NOW, ahead, edges, is_plain, numbers, of, quantiles


def test_degrees_in_the_unit_on_the_screen() -> None:
    celsius = Edge(unit="C", now=NOW, offset_minutes=-240)
    assert (EDGE.heat(473.15), EDGE.range(453.15, 473.15)) == ("392 °F", "356 to 392 °F")
    assert (celsius.heat(473.15), celsius.range(453.15, 473.15)) == ("200 °C", "180 to 200 °C")


def test_cold_has_a_minus_sign_and_nothing_a_doubled_range() -> None:
    celsius = Edge(unit="C", now=NOW, offset_minutes=-240)
    assert (celsius.heat(263.15), celsius.heat(272.9)) == ("−10 °C", "0 °C")
    assert celsius.range(400.0, 400.2) == "127 °C"


def test_the_clock_is_the_cooks_own() -> None:
    assert EDGE.clock(0.0) == "8:03"
    assert Edge(unit="F", now=NOW, offset_minutes=345).clock(20.0) == "18:08"  # a quarter-hour zone


@pytest.mark.parametrize(
    ("minutes", "said"),
    [(0.3, "1 min"), (7.4, "7 min"), (19.6, "20 min"), (33, "35 min"), (58, "1 h"), (89, "1 h 30 min"), (180, "3 h")],
)
def test_duration(minutes: float, said: str) -> None:
    assert duration(minutes) == said


@given(st.floats(0, 2000))
def test_a_length_of_time_is_true_to_what_a_cook_would_round_to(minutes: float) -> None:
    said = duration(minutes)
    hours, rest = (said.split(" h")[0], said.split(" h")[1]) if " h" in said else ("0", said)
    told = 60 * int(hours) + (int(rest.removesuffix(" min")) if rest else 0)
    assert abs(told - minutes) <= (1.0 if minutes < 20 else 2.5)
    assert is_plain(said)


@pytest.mark.parametrize(
    ("minutes", "said"),
    [
        (of(20, 30, 45), "between 8:23 and 8:48"),
        (of(20, 20, 20), "at 8:23"),
        (of(20, 90, None), "8:23 at the soonest, perhaps not at all"),
        (of(None, None, None), "not within three hours"),
    ],
)
def test_windows(minutes: Quantiles, said: str) -> None:
    assert span(minutes, EDGE) == said


@given(quantiles(), edges())
def test_a_window_lies_ahead_and_in_order(minutes: Quantiles, edge: Edge) -> None:
    said = span(minutes, edge)
    found = ahead(said, edge)
    assert is_plain(said)
    assert found == sorted(found)
    assert all(minute <= HORIZON + 1 for minute in found)
    assert (minutes.p10 is None) is (found == [])


@pytest.mark.parametrize(
    ("after", "said"),
    [
        (timedelta(seconds=50), "just now"),
        (timedelta(minutes=25), "25 minutes ago"),
        (timedelta(hours=3), "3 hours ago"),
        (timedelta(days=9), "9 days ago"),
    ],
)
def test_ages(after: timedelta, said: str) -> None:
    assert ago(NOW - after, NOW) == said


@given(st.floats(0, 100_000))
def test_no_age_is_one_of_many(minutes: float) -> None:
    assert is_plain(ago(NOW - timedelta(minutes=minutes), NOW))


# 14 March 2026 was a Saturday, 29 February 2028 will be a Tuesday (calendar)
def test_dates_are_in_english_and_on_the_local_day() -> None:
    assert weekday(date(2026, 3, 14)) == "Saturday"
    assert weekday(date(2028, 2, 29)) == "Tuesday"
    assert (short_date(date(2026, 1, 5)), day_and_month(date(2026, 1, 5))) == ("5 Jan", "5 January")
    assert full_date(date(2026, 12, 31)) == "31 December 2026"
    late = datetime(2026, 1, 5, 23, 30, tzinfo=UTC)
    assert (local_day(late, 60), local_day(late, -60)) == (date(2026, 1, 6), date(2026, 1, 5))


def test_a_session_is_named_by_its_day_and_clock() -> None:
    assert session_day(NOW, -240) == "Sat 14 Mar 2026, 8:03"
    assert session_day(None, -240) == "nothing entered yet"
    assert as_it_stood(NOW, -240).endswith("at the end of this session, Sat 14 Mar 2026, 8:03.")


def test_counts() -> None:
    assert [entries_count(number) for number in (0, 1, 2)] == ["no entries", "1 entry", "2 entries"]
    assert [sessions_count(number) for number in (1, 2)] == ["1 session", "2 sessions"]
    assert [readings_count(number) for number in (1, 2)] == ["1 reading", "2 readings"]


def test_names_in_a_row() -> None:
    assert listed(["soup"]) == "soup"
    assert listed(["soup", "eggs"]) == "soup and eggs"
    assert listed(["soup", "eggs", "bacon"]) == "soup, eggs and bacon"
    assert capital("oven centre") == "Oven centre"
    assert capital("") == ""


def test_a_spot_by_its_label_or_its_name_in_the_log() -> None:
    stove = stove_with_default_spots("range")
    assert spot_label(stove, "top_back_left") == "top back left"
    assert spot_label(stove, "own_corner") == "own corner"


def test_a_typed_band_is_named_by_its_degrees() -> None:
    assert heat_name(HeatBand(name="bread", low=464.0, high=491.0)) == "bread heat"
    assert heat_name(HeatBand(name="425–475 °F", low=491.0, high=519.0)) == "425–475 °F"


# The pound is 0.45359237 kg (international, exact)
@given(st.floats(0, 60))
def test_wood_in_whole_pounds_and_half_kilograms(kilograms: float) -> None:
    assert numbers(mass_text(kilograms, "F"))[0] == pytest.approx(kilograms / 0.45359237, abs=0.51)
    assert numbers(mass_text(kilograms, "C"))[0] == pytest.approx(kilograms, abs=0.26)


@pytest.mark.parametrize(
    ("air", "said"), [(0.0, "shut"), (0.3, "a quarter open"), (0.5, "half open"), (1.0, "wide open")]
)
def test_air(air: float, said: str) -> None:
    assert air_words(air) == said
