"""An invented firing, and rows of a log told in short."""

from datetime import UTC, datetime, timedelta

from cookstove_gui.stove.entries import Entry, Kind

START = datetime(2026, 1, 10, 12, 0, tzinfo=UTC)  # 7:00 by the clock of the rows


def rows_of(
    *told: tuple[float, str, str, str, str], first: int = 1, start: datetime = START, offset_minutes: int = -300
) -> tuple[Entry, ...]:
    """Rows from (minutes from the start, kind, spot, value, unit), numbered from `first`."""
    return tuple(
        Entry(
            number=number, at=start + timedelta(minutes=minute), offset_minutes=offset_minutes, kind=Kind(kind),
            spot=spot, value=value, unit=unit,
        )
        for number, (minute, kind, spot, value, unit) in enumerate(told, start=first)
    )  # fmt: skip


# An oven on its way to bread heat.
RISING = rows_of(
    (0, Kind.LIT, "", "", ""),
    (0, Kind.AIR, "", "1", ""),
    (2, Kind.WOOD, "", "3", "lb"),
    (20, Kind.WOOD, "", "6", "lb"),
    (22, Kind.READING, "oven_centre", "170", "F"),
    (23, Kind.READING, "top_back_right", "330", "F"),
    (35, Kind.READING, "oven_centre", "240", "F"),
    (36, Kind.WOOD, "", "5", "lb"),
    (45, Kind.READING, "oven_centre", "290", "F"),
    (46, Kind.READING, "top_back_right", "450", "F"),
)
