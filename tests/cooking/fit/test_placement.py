"""Pots to spots: assignment against published and brute-forced tables, then on fits."""

from itertools import permutations

import numpy as np
import pytest

from cookstove_gui.cooking.fit.fit import FitState, SpotFit, TaskFit, fits
from cookstove_gui.cooking.fit.placement import assign, place_pots
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


def test_the_greedy_choice_gives_way_to_the_better_whole() -> None:
    # both like the left best; eggs can go to the right nearly as well, bacon cannot
    placed = place_pots(
        [made_fit("eggs", {"left": 0.9, "right": 0.8}), made_fit("bacon", {"left": 0.85, "right": 0.1})],
        ["eggs", "bacon"],
    )
    assert placed == {"eggs": "right", "bacon": "left"}


def test_a_pot_that_no_spot_suits_has_no_spot() -> None:
    placed = place_pots([made_fit("eggs", {"left": 0.0, "right": 0.0})], ["eggs", "unheard of"])
    assert placed == {"eggs": None, "unheard of": None}


def test_the_oven_is_shared() -> None:
    both = [made_fit("bread", {"oven_centre": 0.8}, Place.OVEN), made_fit("pie", {"oven_centre": 0.7}, Place.OVEN)]
    assert place_pots(both, ["bread", "pie"]) == {"bread": "oven_centre", "pie": "oven_centre"}


def test_real_fits_are_placed_on_different_spots() -> None:
    heats = {"top_front_left": [300.0] * 37, "top_front_right": [500.0] * 37, "top_back_left": [310.0] * 37}
    placed = place_pots(fits(projection(heats), STOVE), ["boil", "fry_eggs", "simmer"])
    assert placed["boil"] == "top_front_right"
    assert {placed["fry_eggs"], placed["simmer"]} == {"top_front_left", "top_back_left"}


def test_nothing_chosen_places_nothing() -> None:
    assert place_pots([], []) == {}
