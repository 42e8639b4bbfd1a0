"""Bands of oven heat by name, range and number."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.fit.bands import band_from_text, band_tables, oven_bands
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import degrees
from tests.cooking.made import fahrenheit


# reference 9.1: Be an Artist at the Gas Range (1935), The Co-op Cook Book (1942); 9.2: Better Homes and Gardens New
# Cook Book (1976); 9.3: The Fannie Farmer Cookbook (1961) gives points, which must be the middles. All looked up as
# quoted.
@pytest.mark.parametrize(
    ("table_key", "name", "low", "high"),
    [
        ("wide", "slow", 250, 350),
        ("wide", "moderate", 350, 400),
        ("wide", "hot", 400, 450),
        ("wide", "very hot", 450, 550),
        ("narrow", "very slow", 250, 275),
        ("narrow", "slow", 300, 325),
        ("narrow", "moderate", 350, 375),
        ("narrow", "hot", 400, 425),
        ("narrow", "very hot", 450, 475),
    ],
)
def test_published_tables_are_kept(table_key: str, name: str, low: float, high: float) -> None:
    band = band_from_text(name, "F", table_key)
    assert (degrees(band.low, "F"), degrees(band.high, "F")) == pytest.approx((low, high))


@pytest.mark.parametrize(("name", "middle"), [("slow", 300), ("medium", 350), ("hot", 400)])
def test_three_marks_are_the_middles_of_their_bands(name: str, middle: float) -> None:
    """Row "9.3" of tests/reference."""
    band = band_from_text(name, "F", "points")
    assert degrees((band.low + band.high) / 2, "F") == pytest.approx(middle)


def test_a_name_is_read_in_one_table_only() -> None:
    # pinned conflict: the tables disagree on “slow”, so it may not be read across tables
    assert band_from_text("slow", "F", "wide") != band_from_text("slow", "F", "narrow")


def test_conversions_of_the_edges() -> None:
    # reference 9.4, closed form
    expected = {250: 121.1, 350: 176.7, 400: 204.4, 450: 232.2, 550: 287.8}
    for fahrenheit_edge, celsius in expected.items():
        assert degrees(fahrenheit(fahrenheit_edge), "C") == pytest.approx(celsius, abs=0.05)


def test_bakes_go_with_every_table() -> None:
    for table in band_tables():
        names = [band.name for band in oven_bands(table.key)]
        assert names[:5] == ["bread", "biscuit", "pie", "cake", "roast"]
        assert len(names) == len(set(names))
        assert table.source


@pytest.mark.parametrize(
    ("text", "unit", "low_f", "high_f"),
    [
        ("425-475", "F", 425, 475),
        (" 425 – 475 ", "F", 425, 475),
        ("425 to 475 F", "F", 425, 475),
        ("425F-475F", "C", 425, 475),
        ("425 to 475f", "C", 425, 475),
        ("425", "F", 400, 450),
        ("425 °F", "C", 400, 450),
        ("200-230", "C", 392, 446),
        ("200 °C", "F", 367, 417),
        ("Very  HOT", "F", 450, 550),
        ("bread", "C", 365, 425),
        ("212,5 - 250", "F", 212.5, 250),
    ],
)
def test_what_may_be_typed(text: str, unit: str, low_f: float, high_f: float) -> None:
    band = band_from_text(text, unit)  # type: ignore[arg-type]
    assert (degrees(band.low, "F"), degrees(band.high, "F")) == pytest.approx((low_f, high_f))
    assert band.name


@pytest.mark.parametrize(
    ("text", "unit", "word"),
    [
        ("blazing", "F", "moderate"),  # names are listed
        ("", "F", "bread"),
        ("475-425", "F", "425-475"),
        ("425-425", "F", "425"),
        ("415", "C", "F"),  # °F typed with °C on
        ("5000", "F", "oven"),
        ("-40", "F", "oven heat"),
        ("0-20", "C", "oven"),
        ("425F-220C", "F", "units"),
        ("425-", "F", "range"),
    ],
)
def test_what_may_not_be_typed_is_told_in_one_sentence(text: str, unit: str, word: str) -> None:
    with pytest.raises(InputProblem) as problem:
        band_from_text(text, unit)  # type: ignore[arg-type]
    assert word in problem.value.sentence
    assert problem.value.sentence.count(". ") == 0


def test_an_unknown_table_lists_the_tables() -> None:
    with pytest.raises(InputProblem, match="wide, narrow, points"):
        oven_bands("grandmother's")


@pytest.mark.parametrize(
    ("text", "possible"),
    [("60-100", True), ("59-100", False), ("650-700", True), ("650-701", False), ("85", True), ("84", False)],
)
def test_an_oven_lies_between_60_and_700_degrees(text: str, possible: bool) -> None:
    if possible:
        assert band_from_text(text, "F").low >= fahrenheit(60) - 1e-9
    else:
        with pytest.raises(InputProblem, match="beyond what an oven reaches"):
            band_from_text(text, "F")


@pytest.mark.parametrize(
    ("text", "unit", "name"),
    [
        ("425-475", "F", "425–475 °F"),
        ("200-230", "C", "200–230 °C"),
        ("425F to 475", "C", "425–475 °F"),
        ("212.5", "F", "about 212.5 °F"),
        ("Very  HOT", "F", "very hot"),
    ],
)
def test_a_band_is_called_what_was_typed(text: str, unit: str, name: str) -> None:
    assert band_from_text(text, unit).name == name  # type: ignore[arg-type]


def test_the_wide_table_is_read_when_none_is_chosen() -> None:
    assert band_from_text("moderate", "F") == band_from_text("moderate", "F", "wide")
    assert oven_bands() == oven_bands("wide")


def test_a_band_of_the_wrong_way_round_is_offered_the_right_way_round() -> None:
    with pytest.raises(InputProblem, match="425-475"):
        band_from_text("475-425", "F")


@given(st.integers(100, 600), st.integers(1, 90))
def test_a_typed_range_is_exact_in_both_units(low: int, width: int) -> None:
    band = band_from_text(f"{low}-{low + width}", "F")
    assert degrees(band.low, "F") == pytest.approx(low)
    assert degrees(band.high, "F") == pytest.approx(low + width)
    assert band.holds(band.low)
    assert band.holds(band.high)


@given(st.text(max_size=12))
def test_any_text_is_a_band_or_a_clear_problem(text: str) -> None:
    try:
        band = band_from_text(text, "F")
    except InputProblem as problem:
        ended = problem.sentence.endswith(".")
    else:
        ended = band.low < band.high
    assert ended
