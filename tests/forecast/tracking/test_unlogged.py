"""What was done without a row: loads due but not written, and a bypass shut in passing."""

import numpy as np
import pytest
from scipy import stats

from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import MEMBERS
from cookstove_gui.forecast.model.habits import Habits
from cookstove_gui.forecast.tracking import unlogged
from cookstove_gui.stove.entries import Kind
from tests.following import track
from tests.forecast.logs import STOVE, Log, at

_WAIT, _SPREAD = 30.0, 0.4  # min and of its logarithm
_TIMES = np.arange(2.5, 90.0, 2.5)


def _stepped(until: float, done: float) -> float:
    """Chance of an unlogged load by a time, step after step."""
    waits = stats.lognorm(_SPREAD, scale=_WAIT)
    none = 1.0
    for end in _TIMES[until >= _TIMES]:
        before, after = np.array([waits.sf(end - 2.5)]), np.array([waits.sf(end)])
        none *= 1.0 - float(unlogged.unlogged_chance(before, after, done)[0])
    return 1.0 - none


@pytest.mark.parametrize("done", [0.0, 0.3])
@pytest.mark.parametrize("until", [20.0, 30.0, 45.0, 70.0])
def test_chance_of_a_missing_row_is_what_bayes_says(until, done):
    # Outside check: Bayes' theorem with scipy.stats.lognorm. Steps of 2.5 min cost a little.
    fed = stats.lognorm(_SPREAD, scale=_WAIT).cdf(until)
    missed = unlogged.LOADS_SHARE * (1.0 - done) * fed
    silent = missed + (1.0 - done) * (1.0 - fed) + done
    assert _stepped(until, done) == pytest.approx(missed / silent, abs=0.02)


def test_chance_of_a_missing_row_is_what_counting_cooks_says():
    # Outside check: a hundred thousand cooks drawn by numpy, those with a row thrown out.
    random = np.random.default_rng(3)
    waits = _WAIT * np.exp(_SPREAD * random.standard_normal(100_000))
    writes = random.random(100_000) > unlogged.LOADS_SHARE
    silent = ~((waits <= 45.0) & writes)
    assert _stepped(45.0, 0.0) == pytest.approx(np.mean(waits[silent] <= 45.0), abs=0.02)


def _overdue(minutes: float, *, done: float = 185.0) -> np.ndarray:
    state = np.zeros((heat.STATE_ROWS, 4000))
    habits = Habits(interval_log=np.log(25.0), interval_deviation=0.3, tending_log=np.log(done), tending_deviation=0.3)
    random = np.random.default_rng(1)
    for step in range(round(minutes / 2.5)):
        state[heat.SINCE_FED] += 2.5
        unlogged.let_pass(state, habits, 2.5 * (step + 1), 1, 2.5, random)
    return state


def test_few_loads_are_missing_before_one_is_due_and_most_long_after():
    assert np.mean(_overdue(15.0)[heat.FRESH] > 0.0) < 0.03
    late = _overdue(75.0)
    assert np.mean(late[heat.FRESH] > 0.0) > 0.8
    fed = late[heat.FRESH] > 0.0
    assert late[heat.SINCE_FED][fed].max() < late[heat.SINCE_FED][~fed].min()


def test_a_cook_who_is_done_puts_nothing_in():
    assert np.mean(_overdue(75.0, done=20.0)[heat.FRESH] > 0.0) < 0.15


def test_heat_that_stays_up_tells_of_the_load_that_was_not_written():
    def fed(late: tuple[float, ...]) -> float:
        log = Log().add(0, Kind.LIT).add(0, Kind.AIR, value="0.6")
        for minute in (10, 30, 50):
            log.add(minute, Kind.WOOD, value="1.5", unit="kg")
        for place, top in enumerate((250, 340, 400, 430, 440, *late)):
            log.reads(20 + 10 * place, "top_front_middle", top)
        belief = track(STOVE, sorted(log.entries, key=lambda row: row.at), at(110))
        return float(np.median(belief.ensemble.x[list(range(*heat.FUELS.indices(99)))].sum(axis=0)))

    assert fed((435, 440, 450, 455, 460)) > fed((420, 380, 340, 310, 280)) + 0.2


def test_an_open_bypass_that_no_row_shuts_is_shut_by_most_in_time():
    log = Log().add(0, Kind.LIT).add(0, Kind.BYPASS, value="1")
    early = np.mean(track(STOVE, log.entries, at(5)).ensemble.x[heat.BYPASS])
    late = np.mean(track(STOVE, log.entries, at(100)).ensemble.x[heat.BYPASS])
    assert early == pytest.approx(np.exp(-5.0 / unlogged.BYPASS_MINUTES), abs=3.5 / np.sqrt(MEMBERS))
    assert late == pytest.approx(np.exp(-100.0 / unlogged.BYPASS_MINUTES), abs=3.5 * 0.5 / np.sqrt(MEMBERS))


def test_a_row_about_the_bypass_stands_for_all():
    log = Log().add(0, Kind.LIT).add(0, Kind.BYPASS, value="1").add(30, Kind.BYPASS, value="0")
    assert not track(STOVE, log.entries, at(31)).ensemble.x[heat.BYPASS].any()
