"""The hot side of a stove, as the page My stove asks for it."""

from dataclasses import replace

import pytest

from cookstove_gui.desk.my_stove.hot_side import BypassPlace, FireStage, HotSideAsked, hot_side
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import INFRARED, SpotKind, unchecked
from cookstove_gui.units import kelvin
from tests.cooking.made import STOVE, log, session

TOPS = [spot.name for spot in STOVE.spots_of(SpotKind.TOP)]


def past(*logs: tuple[tuple[float, str, str, str, str], ...]):
    """Reads the sessions of the made-up stove, and none of any other."""
    sessions = tuple(session(number, log(*rows)) for number, rows in enumerate(logs, start=1))

    def read(stove: str) -> tuple[Session, ...]:
        return sessions if stove == STOVE.name else ()

    return read


def test_the_cooktop_is_told_against_its_mean_and_the_oven_against_its_centre() -> None:
    rows = [
        (20.0 + later, "reading", top, str(300 + 40 * place), "F")
        for later in (0, 30, 60)
        for place, top in enumerate(TOPS[:3])
    ]
    found = hot_side(HotSideAsked(stove=STOVE), past(((0, "lit", "", "", ""), *rows), ((5, "note", "", "", ""),)))
    assert found.sessions == 1  # one of the two reads anything
    cooktop = {row.spot: row for row in found.pattern}
    assert cooktop.keys() == set(TOPS)
    assert cooktop[TOPS[0]].mean < 0.0 < cooktop[TOPS[2]].mean
    assert [cooktop[top].readings for top in TOPS] == [3, 3, 3, 0, 0, 0]
    assert {row.spot for row in found.oven} <= {spot.name for spot in STOVE.spots_of(SpotKind.OVEN)}


def _round(minute: float, more: float) -> list[tuple[float, str, str, str, str]]:
    return [(minute, "reading", name, str(300 + more * place), "F") for place, name in enumerate(TOPS)]


def test_readings_are_told_by_the_stage_of_the_fire_and_by_the_bypass() -> None:
    # Kindling first with the bypass open, then two splits on half air and the bypass shut, then nothing more for hours.
    found = past(
        (
            (0, "lit", "", "", ""), (1, "bypass", "", "1", ""), *_round(10, 5.0),
            (20, "air", "", "0.5", ""), (21, "wood", "", "2", "kg"), (30, "bypass", "", "0", ""), *_round(40, 20.0),
            *_round(150, 0.0),
        )
    )  # fmt: skip

    def spread(**wanted: object) -> float:
        rows = hot_side(HotSideAsked(stove=STOVE, **wanted), found).pattern  # type: ignore[arg-type]
        means = [row.mean for row in rows]
        return max(means) - min(means)

    kindling, steady, dying = (spread(stage=one) for one in (FireStage.KINDLING, FireStage.STEADY, FireStage.DYING))
    assert steady > kindling > dying
    assert spread(bypass=BypassPlace.OPEN) == pytest.approx(kindling)
    whole = hot_side(HotSideAsked(stove=STOVE), found)
    assert whole.stages == {FireStage.KINDLING, FireStage.STEADY, FireStage.DYING}
    assert whole.bypasses == {BypassPlace.OPEN, BypassPlace.SHUT}
    none = hot_side(HotSideAsked(stove=STOVE, stage=FireStage.FULL), found)
    assert (none.sessions, none.sides.across) == (0, None)
    assert all(row.readings == 0 for row in none.pattern)


def test_a_stove_without_a_past_asks_for_a_first_round() -> None:
    found = hot_side(HotSideAsked(stove=STOVE), past())
    assert (found.sessions, found.sides.across, found.stages) == (0, None, frozenset())
    assert found.next_round is not None
    assert len(found.next_round.spots) == 3


def test_the_hot_side_is_that_of_corrected_readings() -> None:
    gun = replace(unchecked("gun", INFRARED), emissivity=0.70)
    painted = replace(STOVE, cooktop_surface="stove paint")
    rows = [(20.0 + turn, "reading", top, "450", "F") for turn in (0, 30, 60) for top in TOPS]
    plain, meant = (
        hot_side(HotSideAsked(stove=replace(painted, instruments=instruments)), past(tuple(rows))).pattern[0].usual
        for instruments in ((), (gun,))
    )
    assert plain == pytest.approx(kelvin(450.0, "F"), abs=0.1)
    assert meant is not None
    assert plain is not None
    assert meant < plain - 5  # paint of 0.94 gives off more than a thermometer set to 0.70 takes it for
