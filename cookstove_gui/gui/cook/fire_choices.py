"""What each fire key enters, and what it asks before."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from cookstove_gui.cooking.safety.caution import loading_order
from cookstove_gui.desk import Desk, Receipt
from cookstove_gui.desk.cook.into_the_oven import named_bake, offered_in, offered_out
from cookstove_gui.desk.log.burning import burning_since
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.widgets.chooser import Answer, Choice
from cookstove_gui.stove.entries import Kind, pans_standing
from cookstove_gui.stove.stove import Spot, SpotKind
from cookstove_gui.stove.wood_text import typed_wood
from cookstove_gui.units import clock_text

Enter = Callable[[str, str], "Receipt | Ask | None"]  # an answer or a text, and its clock -> entered, or asked next
Put = Callable[[str, str, str], Receipt]  # a spot, what is noted of its pan, a clock


@dataclass(frozen=True, slots=True, kw_only=True)
class FireKey:
    """Something done at the stove."""

    kind: Kind
    word: str
    key: str
    what: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """A choice, and what comes of an answer or of a text."""

    choice: Choice
    enter: Enter
    enter_text: Enter
    put: Put | None = None  # where a pan goes: how it is entered


KEYS = (
    FireKey(kind=Kind.LIT, word="Lit", key="F5", what="The fire was lit, or went out"),
    FireKey(kind=Kind.WOOD, word="Wood", key="F6", what="Wood was added"),
    FireKey(kind=Kind.AIR, word="Air", key="F7", what="The air was set"),
    FireKey(kind=Kind.BYPASS, word="Bypass", key="F8", what="The bypass damper was set"),
    FireKey(
        kind=Kind.OVEN_DOOR,
        word="Door",
        key="F9",
        what="The oven door was moved, or food went through it",
    ),
    FireKey(kind=Kind.PAN, word="Pan", key="F10", what="A pan was put on the cooktop or taken off"),
    FireKey(kind=Kind.NOTE, word="Note", key="F11", what="Write a note"),
)

_COUNTS = ("one split", *(f"{word} splits" for word in ("two", "three", "four", "five", "six", "seven", "eight")))
_IN, _OUT = "in", "out"  # of the oven
_OPENINGS = (("shut", "0"), ("¼", "0.25"), ("½", "0.5"), ("¾", "0.75"), ("open", "1"))


def ask_of(key: FireKey, desk: Desk) -> Ask | None:
    """What a fire key asks; none where it enters at once."""

    def set_to(value: str, at: str) -> Receipt:
        return desk.do(key.kind, value=value, at_text=at)

    match key.kind:
        case Kind.LIT:
            return _lit_again(desk)
        case Kind.WOOD:
            return _wood(desk)
        case Kind.PAN:
            return _pan(desk)
        case Kind.NOTE:
            return _note(desk)
        case Kind.OVEN_DOOR:
            return _oven_door(desk)
        case Kind.BYPASS:
            return answers_to("Bypass", (("shut", "0"), ("half", "0.5"), ("open", "1")), set_to)
        case _:
            return answers_to("Air", _OPENINGS, set_to)


def spots_to_choose(question: str, spots: Sequence[Spot], enter: Enter) -> Ask:
    """Which of several spots is meant."""
    return answers_to(question, tuple((spot.label, spot.name) for spot in spots), enter)


def _lit_again(desk: Desk) -> Ask | None:
    since = burning_since(desk)
    if since is None:
        return None

    def enter(value: str, at: str) -> Receipt | None:
        return desk.do(Kind(value), at_text=at) if value else None

    return answers_to(
        f"Burning since {clock_text(since, desk.offset_minutes)}",
        (("lit again", str(Kind.LIT)), ("fire is out", str(Kind.OUT)), ("a slip", "")),
        enter,
    )


def _wood(desk: Desk) -> Ask:
    def counted(value: str, at: str) -> Receipt:
        return desk.do(Kind.WOOD, note=value, at_text=at)

    def typed(text: str, at: str) -> Receipt:
        value, unit, note = typed_wood(text, desk.mass_unit)
        return desk.do(Kind.WOOD, value=value, unit=unit, note=note, at_text=at)

    shown = tuple(
        Answer(key=str(count), words=words.removesuffix(" splits"), value=words)
        for count, words in enumerate(_COUNTS[:3], 1)
    )
    choice = Choice(
        question="Wood",
        answers=(*shown, Answer(key="K", words="kindling", value="kindling")),
        more={str(count): words for count, words in enumerate(_COUNTS, 1)},
        hint="or its weight",
        unit=desk.mass_unit,
        field_name=f"Any amount of wood: its weight in {desk.mass_unit}, or words such as 5 splits",
        first=loading_order(),
    )
    return Ask(choice=choice, enter=counted, enter_text=typed)


def _pan(desk: Desk) -> Ask:
    """Every place of the cooktop, as it is seen from the front; where a pan stands it is taken off."""
    taken = pans_standing(desk.entries)
    spots = sorted(desk.stove.spots_of(SpotKind.TOP), key=lambda spot: (-spot.y, spot.x))

    def put(spot: str, note: str, at: str) -> Receipt:
        is_off = spot in taken
        return desk.do(Kind.PAN, value="off" if is_off else "on", spot=spot, note="" if is_off else note, at_text=at)

    def words(spot: Spot) -> str:
        return f"{spot.label.removeprefix('top ')}{' off' if spot.name in taken else ''}"

    pairs = tuple((words(spot), spot.name) for spot in spots)
    ask = answers_to("Pan on, or off", pairs, lambda spot, at: put(spot, "", at))
    return replace(ask, choice=replace(ask.choice, says_more=True), put=put)


def _oven_door(desk: Desk) -> Ask:
    """The door, and what goes through it."""

    def enter(value: str, at: str) -> Receipt | Ask:
        if value == _IN:
            return _into_oven(desk)
        if value == _OUT:
            return _out_of_oven(desk, at)
        return desk.do(Kind.OVEN_DOOR, value=value, at_text=at)

    return answers_to("Oven door", (("open", "open"), ("shut", "closed"), ("food in", _IN), ("food out", _OUT)), enter)


def _into_oven(desk: Desk) -> Ask:
    def enter(name: str, at: str) -> Receipt:
        return desk.do(Kind.OVEN_IN, note=name, at_text=at)

    choice = answers_to("Into the oven", tuple((name, name) for name in offered_in(desk)), enter).choice
    return Ask(
        choice=replace(choice, hint="or its name", field_name="Name of what goes into the oven"),
        enter=enter,
        enter_text=lambda text, at: enter(named_bake(text), at),
    )


def _out_of_oven(desk: Desk, at: str) -> Receipt | Ask:
    """The one thing in the oven comes out without being asked for."""

    def enter(name: str, at: str) -> Receipt:
        return desk.do(Kind.OVEN_OUT, note=name, at_text=at)

    names = offered_out(desk)
    return enter(names[0], at) if len(names) == 1 else answers_to("Out of it", tuple((n, n) for n in names), enter)


def _note(desk: Desk) -> Ask:
    def typed(text: str, at: str) -> Receipt:
        if not text.strip():
            raise InputProblem("The note is empty; type what you want to remember, or press Escape.")
        return desk.do(Kind.NOTE, note=text.strip(), at_text=at)

    return Ask(choice=Choice(question="Note", hint="what to remember"), enter=typed, enter_text=typed)


def answers_to(question: str, pairs: Sequence[tuple[str, str]], enter: Enter) -> Ask:
    """A choice between answers, each with what it enters; a digit picks it."""
    answers = tuple(
        Answer(key=str(place) if place <= 9 else "", words=words, value=value)
        for place, (words, value) in enumerate(pairs, 1)
    )
    return Ask(choice=Choice(question=question, answers=answers), enter=enter, enter_text=enter)
