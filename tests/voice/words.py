"""Reading the program's sentences back: clocks, orders, what they claim of the oven."""

import re
from datetime import datetime, timedelta, timezone

CLOCK = re.compile(r"(?<![\d.])(\d{1,2}):(\d\d)(?!\d)")
_BY = re.compile(r"\bby (\d{1,2}:\d\d)")
_HEAT_COMES = re.compile(r"\breach(?:es)? |\bIt might\b|should have|heat by |^There by |\blikely \d|^No |^Not ")
LIKELY = re.compile(r"\b(?:likely|about) (\d{1,2}:\d\d)")
DONE = re.compile(r"\b(?:is|was likely) done\b|^Done |^Likely done")
UNTIL = re.compile(r"\b(?:likely stays (?:only )?until|holds until about) (\d{1,2}:\d\d)")
OF_A_STEP = re.compile(r": reaches ")  # “Add two splits: reaches bread heat about 13:05”
TOUCHES = re.compile(r"\b[Mm]ay touch\b")
UNLIKELY = re.compile(
    r"\b[Nn]ot likely to (?:reach|fall)|^No .* heat by|^Not hot enough by|not within 3 h|^Too hot for"
)
FALLS_OUT = re.compile(r"\bfalls? out of\b")
ASSUMES = re.compile(r"\b[Uu]nless\b|\bassumes?\b")
PAST_TENSE = re.compile(
    r"\b(?:was|were|had|should have|passed|ago|due since|since|lit at|went in|read at|before)\b", re.IGNORECASE
)
WOOD = re.compile(
    r"\b(?:add (?:wood|some|one split|two splits|[\d.]+ kg)|more wood|build the fire up|put (?:more )?wood)\b",
    re.IGNORECASE,
)


def sentences(text: str) -> list[str]:
    """The sentences of a text."""
    return [part for part in re.split(r"(?<=[.!?])\s+", text) if part]


def deadlines(text: str) -> list[tuple[str, str]]:
    """The sentences that ask for something by a clock, with that clock; when heat comes by a clock is no deadline."""
    found = ((sentence, _BY.search(sentence)) for sentence in sentences(text) if not _HEAT_COMES.search(sentence))
    return [(sentence, match[1]) for sentence, match in found if match]


def clock_of(text: str, now: datetime, offset_minutes: int) -> datetime:
    """The instant that a wall clock means, the nearest to now."""
    hours, minutes = (int(part) for part in text.split(":"))
    local = now.astimezone(timezone(timedelta(minutes=offset_minutes)))
    at = local.replace(hour=hours, minute=minutes, second=0, microsecond=0)
    if at - local > timedelta(hours=12):
        return at - timedelta(days=1)
    return at + timedelta(days=1) if local - at > timedelta(hours=12) else at


def minutes_to(text: str, now: datetime, offset_minutes: int) -> float:
    """Whole minutes from the present minute to a wall clock; below 0 it has gone."""
    present = now.replace(second=0, microsecond=0)
    return (clock_of(text, now, offset_minutes) - present).total_seconds() / 60.0
