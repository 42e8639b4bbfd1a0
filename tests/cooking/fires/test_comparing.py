"""Firings side by side: each figure from rows whose answer can be read off by eye."""

import pytest

from cookstove_gui.cooking.fires.comparing import Figure, comparison, differs_most
from cookstove_gui.stove.entries import Kind, Session
from cookstove_gui.units import kelvin

from .test_firing_facts import BREAD, STOVE, entry, oven, session


def firing(late: float = 0.0, wood: str = "2", tops: bool = True, room: float = 68.0) -> Session:
    spots = (
        [entry(60, Kind.READING, "500", "F", "top_front_left"), entry(60, Kind.READING, "440", "F", "top_back_right")]
        if tops
        else []
    )
    return session(
        entry(0, Kind.LIT), entry(1, Kind.AIR, "1"), entry(1, Kind.BYPASS, "1"), entry(5, Kind.WOOD, wood, "kg"),
        oven(2, 70), entry(20 + late, Kind.BYPASS, "0"), entry(30, Kind.AIR, "0.75"), entry(40 + late, Kind.AIR, "0.5"),
        entry(50, Kind.READING, f"{room:g}", "F", "room"), entry(50, Kind.READING, "300", "F", "flue"),
        entry(51, Kind.READING, "340", "F", "flue"), *spots, oven(80 + late, 365), oven(120 + late, 400),
        entry(130 + late, Kind.WOOD, "1", "kg"),
    )  # fmt: skip


def test_each_figure_is_read_off_the_log() -> None:
    found = comparison(STOVE, [firing(), firing(late=10, wood="3")], BREAD)
    figures = found.figures
    assert figures[Figure.RISE] == (pytest.approx(80.0), pytest.approx(90.0))
    assert figures[Figure.LOADS] == (1.0, 1.0)  # the last one came after the heat
    assert figures[Figure.WOOD] == (2.0, 3.0)
    assert figures[Figure.BYPASS] == (20.0, 30.0)
    assert figures[Figure.AIR] == (40.0, 50.0)
    assert figures[Figure.FLUE] == pytest.approx((kelvin(320.0, "F"),) * 2)
    assert figures[Figure.BEST] == pytest.approx((kelvin(400.0, "F"),) * 2)
    assert figures[Figure.SIDES] == pytest.approx((60 / 1.8,) * 2)
    assert figures[Figure.ROOM] == pytest.approx((kelvin(68.0, "F"),) * 2)


def test_sides_are_not_compared_where_hardly_a_spot_was_read_in_all() -> None:
    bare = session(entry(0, Kind.LIT), oven(2, 70), oven(80, 380))
    found = comparison(STOVE, [firing(), bare], BREAD)
    assert found.common == ("oven_centre",)
    assert Figure.SIDES not in found.figures
    assert found.figures[Figure.BYPASS] == (20.0, None)


def test_what_no_log_gives_is_no_row() -> None:
    bare = session(entry(0, Kind.LIT), oven(2, 70), oven(80, 380))
    assert set(comparison(STOVE, [bare, bare], BREAD).figures) == {Figure.RISE, Figure.BEST}


def test_wood_without_an_amount_is_counted_but_not_weighed() -> None:
    vague = session(entry(0, Kind.LIT), entry(3, Kind.WOOD, note="an armful"), oven(2, 70), oven(80, 380))
    figures = comparison(STOVE, [vague, firing()], BREAD).figures
    assert figures[Figure.LOADS] == (1.0, 1.0)
    assert figures[Figure.WOOD] == (None, 2.0)


@pytest.mark.parametrize(
    ("other", "most"),
    [
        (firing(), None),
        (firing(late=30), Figure.BYPASS),
        (firing(wood="6"), Figure.WOOD),
        (firing(room=50.0), Figure.ROOM),
        (firing(late=10, wood="6"), Figure.WOOD),
    ],
)
def test_what_differs_most(other: Session, most: Figure | None) -> None:
    assert differs_most(comparison(STOVE, [firing(), other], BREAD), 0, 1) is most
