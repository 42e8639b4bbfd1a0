"""The pots on the stove as they are kept between two answers, and over a restart: each with its place."""

import json
from dataclasses import asdict, dataclass, replace
from datetime import datetime, timedelta
from typing import Any

from cookstove_gui.cooking.fit.placement import Pot
from cookstove_gui.desk.desk import Desk
from cookstove_gui.situation import Standing

_SETTING = "pots"
LOOKED_AT_AFTER = timedelta(minutes=15)  # without a new row; judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPots:
    """The pots of one session, and when their places were last decided."""

    session: int = 0
    pots: tuple[Pot, ...] = ()
    decided_at: datetime | None = None
    of_rows: str = ""  # what the log held then
    gain: float = 0.0  # that the moves were worth then

    def is_due(self, standing: Standing) -> bool:
        """Whether places may change: only after something was read or done, or after a while."""
        if self.decided_at is None or self.of_rows != rows_known(standing):
            return True
        return not timedelta(0) <= standing.now - self.decided_at < LOOKED_AT_AFTER


def rows_known(standing: Standing) -> str:
    """What the log holds, in short: another row, or one taken back, makes it another."""
    return f"{len(standing.rows)} {max((row.number for row in standing.rows), default=0)}"


def kept_pots(desk: Desk) -> KeptPots:
    """The pots as kept; in another session they are the same, but none has a place yet."""
    kept = _from_text(desk.setting(_SETTING))
    number = desk.session.number if desk.session else 0
    if kept.session == number:
        return kept
    return KeptPots(session=number, pots=tuple(Pot(task=pot.task) for pot in kept.pots))


def keep_pots(desk: Desk, kept: KeptPots) -> None:
    """Keep them for the next answer and the next start."""
    if kept == kept_pots(desk):
        return
    at = kept.decided_at.isoformat() if kept.decided_at else ""
    desk.logbook.set_setting(_SETTING, json.dumps(asdict(replace(kept, decided_at=None)) | {"decided_at": at}))


def with_pot(kept: KeptPots, task: str) -> KeptPots:
    """One pot more; two of the same task are two pots."""
    return replace(kept, pots=(*kept.pots, Pot(task=task)), decided_at=None)


def without_pot(kept: KeptPots, number: int) -> KeptPots:
    """One pot less, by its place in the list; the others stay where they stand."""
    return replace(kept, pots=tuple(pot for place, pot in enumerate(kept.pots) if place != number))


def moved(kept: KeptPots) -> KeptPots:
    """The moves are done: each pot stands where it should."""
    return replace(kept, pots=tuple(replace(pot, spot=pot.to, to="") if pot.to else pot for pot in kept.pots), gain=0.0)


def put_on(kept: KeptPots, number: int, spot: str) -> KeptPots:
    """The cook gives a pot a spot, and what stood there is placed again; without a spot the choice is free again."""
    pots = [replace(pot, spot="", to="", is_own=False) if spot and spot in pot.takes else pot for pot in kept.pots]
    pots[number] = replace(kept.pots[number], spot=spot, to="", is_own=bool(spot))
    return replace(kept, pots=tuple(pots), decided_at=None)


def _from_text(text: str) -> KeptPots:
    """What is kept; a setting of an older version is a list of tasks, and what cannot be read is nothing."""
    try:
        found: dict[str, Any] = json.loads(text)
        at = found["decided_at"]
        return KeptPots(
            session=int(found["session"]),
            pots=tuple(Pot(**pot) for pot in found["pots"]),
            decided_at=datetime.fromisoformat(at) if at else None,
            of_rows=str(found["of_rows"]),
            gain=float(found["gain"]),
        )
    except (ValueError, TypeError, KeyError):
        return KeptPots(pots=tuple(Pot(task=key) for key in text.split() if key.isidentifier()))
