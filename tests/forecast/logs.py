"""Small invented logs for the forecast's tests."""

from datetime import UTC, datetime, timedelta

from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import Firebox, stove_with_default_spots
from cookstove_gui.units import kelvin

BEGAN = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)
STOVE = stove_with_default_spots("invented", Firebox.LEFT)
MODERATE = HeatBand(name="moderate", low=kelvin(350.0, "F"), high=kelvin(400.0, "F"))
TOP_SPOTS = tuple(spot.name for spot in STOVE.spots if spot.name.startswith("top"))


def at(minute: float) -> datetime:
    """An instant some minutes into the session."""
    return BEGAN + timedelta(minutes=minute)


class Log:
    """Collects rows and numbers them."""

    def __init__(self) -> None:
        self.entries: list[Entry] = []

    def add(self, minute: float, kind: Kind, spot: str = "", value: str = "", unit: str = "", note: str = "") -> "Log":
        """One row."""
        self.entries.append(
            Entry(
                number=len(self.entries) + 1, at=at(minute), offset_minutes=0, kind=kind, spot=spot,
                value=value, unit=unit, note=note,
            )
        )  # fmt: skip
        return self

    def reads(self, minute: float, spot: str, fahrenheit: float) -> "Log":
        """One reading in °F."""
        return self.add(minute, Kind.READING, spot, f"{fahrenheit:g}", "F")


def usual_morning(until: float = 70.0) -> list[Entry]:
    """An oven that warms to moderate heat in an hour and a half, fed every twenty-five minutes."""
    log = Log().add(0, Kind.LIT).add(0, Kind.AIR, value="1")
    warming = [(6, 75), (14, 100), (22, 140), (30, 180), (38, 222), (46, 258), (54, 288), (62, 312), (70, 333)]
    tops = [(14, 200), (30, 300), (46, 380), (62, 420)]
    for minute, heat in warming:
        log.reads(minute, "oven_centre", heat)
    for minute, heat in tops:
        for place, spot in enumerate(TOP_SPOTS):
            log.reads(minute + 0.2 * (place + 1), spot, heat + 30 - 12 * place)
    for minute in (10, 35, 60):
        log.add(minute, Kind.WOOD, value="1.3", unit="kg")
    log.add(50, Kind.AIR, value="0.5")
    kept = sorted((row for row in log.entries if row.at <= at(until)), key=lambda row: row.at)
    return [
        Entry(
            number=place + 1, at=row.at, offset_minutes=0, kind=row.kind, spot=row.spot, value=row.value,
            unit=row.unit, note=row.note,
        )
        for place, row in enumerate(kept)
    ]  # fmt: skip


def long_day(readings: int = 300, hours: float = 8.0) -> list[Entry]:
    """Many readings evenly over a day, the oven swinging slowly about moderate heat."""
    log = Log().add(0, Kind.LIT)
    spots = ("oven_centre", *TOP_SPOTS)
    step = hours * 60.0 / readings
    for place in range(readings):
        minute = 2.0 + place * step
        base = 375.0 * (1.0 - 2.718281828 ** (-minute / 40.0))
        swing = 15.0 * ((minute % 50.0) / 25.0 - 1.0)
        spot = spots[place % len(spots)]
        log.reads(minute, spot, round(70.0 + base * 0.8 + swing + (40.0 if spot != "oven_centre" else 0.0)))
        if place % 25 == 10:
            log.add(minute + 0.1, Kind.WOOD, value="1.2", unit="kg")
    return log.entries


def sessions(count: int) -> list[Session]:
    """Past sessions like the usual morning, one a day."""
    out = []
    for day in range(count):
        rows = [
            Entry(
                number=row.number, at=row.at - timedelta(days=count - day), offset_minutes=0, kind=row.kind,
                spot=row.spot, value=row.value, unit=row.unit, note=row.note,
            )
            for row in usual_morning()
        ]  # fmt: skip
        out.append(Session(number=day + 1, stove=STOVE.name, title=f"day {day + 1}", entries=tuple(rows)))
    return out
