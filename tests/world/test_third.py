"""The third world gives what the skill study asks for, and is not the first two in disguise."""

import numpy as np

from cookstove_gui.stove.entries import Kind
from tests.world.third import make_third_sessions
from tests.world.third_hands import SPOTS


def test_the_same_seeds_give_the_same_firing() -> None:
    first, second = make_third_sessions(4, [1, 2])[0], make_third_sessions(4, [1])[0]
    shortest = min(len(first.truth), len(second.truth))
    assert np.allclose(first.truth[:shortest], second.truth[:shortest])
    assert first.start == second.start


def test_ovens_and_cooktops_reach_cooking_heat() -> None:
    sessions = [session for seed in range(4, 9) for session in make_third_sessions(seed, [1])]
    ovens = np.array([session.truth[60 : int(session.until), 0].max() for session in sessions])
    tops = np.array([session.truth[60 : int(session.until), 1:7].mean(1).max() for session in sessions])
    assert 430 < np.median(ovens) < 520  # K; 315 to 475 °F
    assert 430 < np.median(tops) < 680


def test_the_log_knows_only_what_was_written() -> None:
    session = make_third_sessions(5, [3])[0]
    kinds = {row.kind for row in session.entries}
    assert {Kind.READING, Kind.LIT, Kind.WOOD} <= kinds
    assert {row.spot for row in session.entries if row.kind is Kind.READING} <= set(SPOTS)
    assert [row.number for row in session.entries] == list(range(1, len(session.entries) + 1))


def test_futures_start_from_the_truth() -> None:
    session = make_third_sessions(6, [1])[0]
    paths = session.ceiling([50.0, 90.5], 16)
    assert paths.shape == (2, 16, 181)
    assert np.allclose(paths[0, :, 0], session.truth[50, 0])
    assert abs(np.median(paths[1, :, 0]) - session.truth[90:92, 0].mean()) < 1.5  # a door may open at once
    assert paths[:, :, 90].std() > 1.0
