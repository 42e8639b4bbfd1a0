"""Clock marks stand at round local times, inside what is seen, and never more than there is room for."""

from datetime import UTC, datetime

from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.gui.time_axis.clock_axis import clock_ticks

ANCHOR = datetime(2026, 1, 5, 12, 2, 30, tzinfo=UTC)


def test_half_hours_of_the_local_clock() -> None:
    # 12:02:30 UTC is 7:02:30 on a clock five hours behind.
    assert [words for _, words in clock_ticks(ANCHOR, -300, 0.0, 90.0, 3)] == ["7:30", "8:00", "8:30"]


def test_half_past_is_where_it_is() -> None:
    assert clock_ticks(ANCHOR, -300, 0.0, 60.0, 2)[0][0] == 27.5


def test_a_quarter_hour_zone_keeps_round_local_times() -> None:
    words = [words for _, words in clock_ticks(ANCHOR, 345, 0.0, 90.0, 3)]
    assert all(word.endswith((":00", ":30")) for word in words)


def test_nothing_seen_has_no_marks() -> None:
    assert clock_ticks(ANCHOR, 0, 5.0, 5.0, 4) == []


@given(low=st.floats(-600, 600), span=st.floats(1, 2000), most=st.integers(1, 20), offset=st.integers(-840, 840))
def test_marks_fit_and_lie_inside(low: float, span: float, most: int, offset: int) -> None:
    ticks = clock_ticks(ANCHOR, offset, low, low + span, most)
    assert len(ticks) <= most + 1
    assert all(low - 1e-6 <= place <= low + span + 1e-6 for place, _ in ticks)
