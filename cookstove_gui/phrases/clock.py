"""What is said of this computer's own clock when it cannot be right."""

from datetime import datetime, timedelta

from cookstove_gui.phrases.edge import local_moment

_SLACK = timedelta(minutes=6)  # a typed time may lie five minutes ahead
_FIRST_YEAR, _LAST_YEAR = 2025, 2080  # the program is no older, and hardly used so long


def clock_words(now: datetime, latest: datetime | None, latest_of_all: datetime | None) -> str:
    """A sentence for a clock that is behind the log or in an impossible year, empty for one that may be right.

    Parameters
    ----------
    now : datetime
        What the clock says.
    latest, latest_of_all : datetime or None
        The latest entry of the session on the table, and of the whole logbook.
    """
    says = f"This computer's clock says {local_moment(now)}"
    if not _FIRST_YEAR <= now.year <= _LAST_YEAR:
        return f"{says}. Entries are dated by it, so set it right before you go on."
    if latest is not None and now < latest - _SLACK:
        return (
            f"{says}, but the latest entry is from {local_moment(latest)}. If the clock was set back, set it right; "
            "if that entry is wrong, correct it."
        )
    if latest_of_all is not None and now < latest_of_all - timedelta(days=1):
        return f"{says}, but the logbook has entries up to {local_moment(latest_of_all)}. One of the two is wrong."
    return ""
