"""What one spot of the drawing shows."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Pot:
    """A pot drawn on a plate; it hides the lid, so the plate's number is written below it."""

    name: str
    lines: tuple[str, ...] = ()  # what it does there, and its chance
    is_later: bool = False  # it goes there later: dashed, the plate seen through it
    has_handle: bool = False  # a pan; without, it has two ears


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """What is shown on one spot; without a fill it is plain iron."""

    name: str = ""  # written above the number, or beside it
    number: str = "–"
    unit: str = ""  # smaller behind the number, where it is no heat
    is_sure: bool = False  # read a moment ago: bold, with a dot for its doubt
    is_strong: bool = False  # a number that is no heat: bold, without the dot
    doubt: float = 0.0  # pixels of the whisker to each side, on a stove drawn as designed
    captions: tuple[str, ...] = ()  # the first that fits is written
    struck: str = ""  # behind the caption, struck through
    is_answer: bool = False  # the caption is bold
    fill: str = ""
    ink: str = ""
    rim: str = ""  # a heavy ring in this colour: a pan, or the heat of a spot that does not fit
    pot: Pot | None = None
    is_lit: bool = False
    is_worth_reading: bool = False
