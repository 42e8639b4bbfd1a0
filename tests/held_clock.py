"""A clock that moves only when told."""

from datetime import datetime, timedelta


class HeldClock:
    """Stands at an instant until minutes are let pass."""

    def __init__(self, now: datetime) -> None:
        self.now = now

    def __call__(self) -> datetime:
        return self.now

    def pass_minutes(self, minutes: float) -> None:
        self.now += timedelta(minutes=minutes)
