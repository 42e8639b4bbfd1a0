"""Pots to spots: assignment against published and brute-forced tables, then on fits."""

from itertools import permutations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.fit.fit import FitState, SpotFit, TaskFit, fits
from cookstove_gui.cooking.fit.placement import (
    LEAST_CHANCE,
    WORTH_MOVING,
    Pot,
    assign,
    chance_at,
    place_pots,
    total_chance,
)
from cookstove_gui.cooking.fit.tasks import Place, Task
from tests.cooking.made import STOVE, projection

# reference 12.6 to 12.8, computed with scipy's linear_sum_assignment; the first two minimise costs
TABLES = [
    pytest.param([[4, 1, 3], [2, 0, 5], [3, 2, 2]], -1, 5.0, (1, 0, 2), id="12.6"),
    pytest.param(
        [[82, 83, 69, 92], [77, 37, 49, 92], [11, 69, 5, 86], [8, 9, 98, 23]], -1, 140.0, (2, 1, 0, 3), id="12.7"
    ),
    pytest.param([[0.9, 0.2, 0.1, 0.4], [0.8, 0.7, 0.1, 0.3], [0.2, 0.6, 0.5, 0.1]], 1, 2.1, (0, 1, 2), id="12.8"),
]


@pytest.mark.parametrize(("table", "sign", "total", "columns"), TABLES)
def test_known_tables(table: list[list[float]], sign: int, total: float, columns: tuple[int, ...]) -> None:
    gains = np.array(table, dtype=float)
    assert assign(sign * gains) == columns
    assert sum(gains[row, column] for row, column in enumerate(columns)) == pytest.approx(total)


@pytest.mark.parametrize("seed", range(8))
def test_no_permutation_does_better(seed: int) -> None:
    gains = np.random.default_rng(seed).random((5, 6))
    chosen = assign(gains)
    best = max(sum(gains[row, column] for row, column in enumerate(trial)) for trial in permutations(range(6), 5))
    assert sum(gains[row, column] for row, column in enumerate(chosen) if column is not None) == pytest.approx(best)


def test_rows_left_over_have_no_column() -> None:
    chosen = assign(np.array([[0.2], [0.9]]))
    assert chosen == (None, 0)


def made_fit(key: str, chances: dict[str, float], place: Place = Place.TOP) -> TaskFit:
    task = Task(key=key, name=key, place=place, low=400, high=450, minutes=10, evenness=50)
    spots = tuple(SpotFit(spot=spot, chance_now=c, in_min=0.0, chance_then=c) for spot, c in chances.items())
    return TaskFit(task=task, state=FitState.NOW, spots=spots)


def spots_of(*fits: TaskFit, before: tuple[Pot, ...] = (), may_move: bool = True) -> list[tuple[str, str]]:
    pots = before or tuple(Pot(task=fit.task.key) for fit in fits)
    return [(pot.spot, pot.to) for pot in place_pots(fits, pots, may_move=may_move)]


def test_the_greedy_choice_gives_way_to_the_better_whole() -> None:
    # both like the left best; eggs can go to the right nearly as well, bacon cannot
    eggs, bacon = made_fit("eggs", {"left": 0.9, "right": 0.8}), made_fit("bacon", {"left": 0.85, "right": 0.1})
    assert spots_of(eggs, bacon) == [("right", ""), ("left", "")]


def test_a_pot_that_no_spot_suits_has_no_spot() -> None:
    eggs = made_fit("eggs", {"left": 0.0, "right": 0.49})
    assert spots_of(eggs, before=(Pot(task="eggs"), Pot(task="unheard of"))) == [("", ""), ("", "")]


def test_two_pots_of_the_same_task_stand_on_two_spots() -> None:
    eggs = made_fit("eggs", {"left": 0.9, "right": 0.8})
    assert sorted(spots_of(eggs, before=(Pot(task="eggs"),) * 2)) == [("left", ""), ("right", "")]


def test_the_oven_is_shared() -> None:
    both = [made_fit("bread", {"oven_centre": 0.8}, Place.OVEN), made_fit("pie", {"oven_centre": 0.7}, Place.OVEN)]
    assert spots_of(*both) == [("oven_centre", "")] * 2


def test_real_fits_are_placed_on_different_spots() -> None:
    heats = {"top_front_left": [300.0] * 37, "top_front_right": [500.0] * 37, "top_back_left": [240.0] * 37}
    pots = [Pot(task=key) for key in ("boil", "fry_eggs", "simmer")]
    boil, eggs, simmer = place_pots(fits(projection(heats), STOVE), pots)
    assert boil.spot == "top_front_right"
    assert (eggs.spot, simmer.spot) == ("top_front_left", "top_back_left")


def test_nothing_chosen_places_nothing() -> None:
    assert place_pots([], []) == ()


@pytest.mark.parametrize(("there", "moves"), [(0.69, False), (0.7, True), (0.9, True)])
def test_a_pot_that_stands_moves_only_for_a_tenth_more_chance(there: float, moves: bool) -> None:
    eggs = made_fit("eggs", {"left": 0.6, "right": there})
    assert spots_of(eggs, before=(Pot(task="eggs", spot="left"),)) == [("left", "right" if moves else "")]


def test_a_pot_that_stands_badly_stays_where_nothing_is_better() -> None:
    eggs = made_fit("eggs", {"left": 0.3, "right": 0.35})
    assert spots_of(eggs, before=(Pot(task="eggs", spot="left"),)) == [("left", "")]


def test_a_pot_without_a_place_makes_way_for_one_that_has_it() -> None:
    eggs, bacon = made_fit("eggs", {"left": 0.3}), made_fit("bacon", {"left": 0.8})
    before = (Pot(task="eggs", spot="left"), Pot(task="bacon"))
    assert spots_of(eggs, bacon, before=before) == [("", ""), ("left", "")]


def test_a_spot_that_the_cook_chose_is_kept() -> None:
    eggs, bacon = made_fit("eggs", {"left": 0.2, "right": 0.9}), made_fit("bacon", {"left": 0.9, "right": 0.6})
    before = (Pot(task="eggs", spot="left", is_own=True), Pot(task="bacon"))
    assert spots_of(eggs, bacon, before=before) == [("left", ""), ("right", "")]


chances = st.integers(0, 20).map(lambda twentieth: twentieth / 20)
NAMES = ("a", "b", "c", "d")
CHANCES = st.lists(st.lists(chances, min_size=4, max_size=4), min_size=1, max_size=4)


def fits_of(rows: list[list[float]]) -> list[TaskFit]:
    return [made_fit(str(task), dict(zip(NAMES, row, strict=True))) for task, row in enumerate(rows)]


@given(CHANCES, CHANCES)
def test_laws_of_places(first: list[list[float]], later: list[list[float]]) -> None:
    rows = min(len(first), len(later))
    now = fits_of(later[:rows])
    before = place_pots(fits_of(first[:rows]), [Pot(task=str(task)) for task in range(rows)])
    after, resting = place_pots(now, before), place_pots(now, before, may_move=False)
    taken = [spot for pot in after for spot in pot.takes]
    assert len(taken) == len(set(taken)), "two pots on one spot"
    moves = [pot for pot in after if pot.to]
    if moves:
        gain = total_chance(now, after) - total_chance(now, resting)
        assert gain >= WORTH_MOVING * len(moves) - 1e-6, "moved for nothing"
    for pot, was, fit in zip(after, before, now, strict=True):
        makes_way = was.spot and chance_at(fit, was.spot) < LEAST_CHANCE
        assert pot.spot == was.spot or not was.spot or (makes_way and not pot.spot), "moved by itself"
    assert all(pot == was for pot, was in zip(resting, before, strict=True) if was.spot), "not at rest"
    again = place_pots(now, after, may_move=False)
    assert all(pot == was for pot, was in zip(again, after, strict=True) if was.spot), "swaps without a reading"


@given(CHANCES)
def test_first_places_are_the_best_of_all(rows: list[list[float]]) -> None:
    placed = place_pots(fits_of(rows), [Pot(task=str(task)) for task in range(len(rows))])
    best = max(
        sum(row[spot] for row, spot in zip(rows, trial, strict=True) if row[spot] >= LEAST_CHANCE)
        for trial in permutations(range(4), len(rows))
    )
    assert total_chance(fits_of(rows), placed) == pytest.approx(best)


@given(CHANCES)
def test_what_is_moved_has_nothing_more_to_gain(rows: list[list[float]]) -> None:
    now = fits_of(rows)
    pots = place_pots(now, [Pot(task=str(task), spot=NAMES[task]) for task in range(len(rows))])
    done = [Pot(task=pot.task, spot=pot.to or pot.spot) for pot in pots]
    assert not any(pot.to for pot in place_pots(now, done))
